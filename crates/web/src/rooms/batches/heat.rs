//! The cards of heat and water: heating, what evaporated, combining, cooling, tempering, the last water.

use crate::messages::batches as says;
use crate::messages::common;
use crate::messages::sentences::list;
use crate::rooms::batches::card::{close, next};
use crate::rooms::batches::command::{BatchesCommand, HeldName};
use crate::rooms::batches::facts::{WATER, grams_of};
use crate::rooms::batches::present::name_of_line;
use crate::rooms::batches::sentences;
use crate::rooms::batches::view::{CardField, CardView, CurveTick, CurveView, RemarkView};
use crate::rooms::extracts::view::FigureView;
use crate::session::Session;
use rust_decimal::Decimal;
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};
use stillroom_core::chemistry::Band;
use stillroom_core::decay::{Decay, ReadingAt};
use stillroom_core::evaluation::evaluate;
use stillroom_core::number::{write_between, write_fixed};
use stillroom_core::run::evaporation::{Contents, USUAL_LOSS};
use stillroom_core::run::heat::{
    Warm, mass_to_temper, mixing_temperature, mixing_temperature_with_fusion, predict_cooling, specific_heat_of,
};
use stillroom_core::run::state::{RunState, replay};
use stillroom_core::run::steps::{Step, is_heated};
use stillroom_core::run::{Deed, Event, Held};
use stillroom_core::{Class, Formula, Grams, MaterialSource, Percent, Phase, PhaseId, PhaseKind};
use stillroom_exchange::batch::Batch;

/// Temperature of a room in °C if nobody reads it.
const USUAL_ROOM: f64 = 21.0;
/// Temperature in °C under which a cool-down phase goes in if neither formula nor material says. Common practice.
const USUAL_COOL: f64 = 40.0;
/// Temperature in °C to which phases are heated if the formula does not say. Common practice.
const USUAL_HOT: f64 = 70.0;
/// Minutes a heated phase is held. Common practice.
const USUAL_HOLD: &str = "20";
/// Constituents named in a forecast.
const MOST_FORECAST: usize = 6;
/// Points of a drawn curve.
const CURVE_POINTS: u32 = 40;

impl Session {
    pub(crate) fn card_of_heat(&self, batch: &Batch, state: &RunState, id: PhaseId) -> CardView {
        let formula = &batch.plan.formula;
        let Some(phase) = phase_by(formula, id) else { return CardView::default() };
        let wanted = phase.temperature.map(stillroom_core::Celsius::to_physics);
        let mut view = CardView {
            title: wanted
                .map_or_else(|| says::card_heat().into(), |wanted| says::card_heat_to(&self.degrees(wanted, 1))),
            about: vec![says::card_heat_about().into()],
            fields: vec![self.temperature_field(Held::Phase(id), says::card_thermometer())],
            next: next(says::next_done(), close(Step::Heat(id))),
            ..CardView::default()
        };
        if let Some(read) = state.last_reading(Held::Phase(id)) {
            self.show_degrees(&mut view, read.value(), 1);
        }
        if phase.kind == PhaseKind::HeatedOil {
            self.add_melting(&mut view, batch);
        }
        self.add_timer(&mut view, state, Step::Heat(id), USUAL_HOLD);
        if view.timer.is_none() {
            view.about.push(says::card_hold().into());
        }
        view
    }

    fn add_melting(&self, view: &mut CardView, batch: &Batch) {
        let (last, unknown) = self.last_to_melt(&batch.plan.formula);
        view.about
            .extend(last.map(|(line, melts)| says::melts_last(name_of_line(batch, line.id), &self.degrees(melts, 1))));
        if !unknown.is_empty() {
            let names: Vec<String> = unknown.iter().map(|line| name_of_line(batch, line.id).to_owned()).collect();
            view.warnings.push(RemarkView { tone: "note", text: says::melting_unknown(&list(&names)) });
        }
    }

    // ---- what evaporated ----------------------------------------------------------------------------------------

    pub(crate) fn card_of_replace(&mut self, batch: &Batch, state: &RunState, id: PhaseId) -> CardView {
        let formula = &batch.plan.formula;
        let step = self.settings.main_scale().step;
        let cold = state.cold_mass(formula, id);
        let hot = state.beakers.get(&id).and_then(|beaker| beaker.hot);
        let mut hot_field =
            self.mass_field(&BatchesCommand::WeighHot { phase: id, text: String::new() }, says::card_hot_field(), hot);
        let mut cold_field = self.mass_field(
            &BatchesCommand::WeighCold { phase: id, text: String::new() },
            says::card_cold_field(),
            cold,
        );
        for field in [&mut hot_field, &mut cold_field] {
            field.with_next = false;
            field.button = says::next_note().into();
        }
        let mut view = CardView {
            title: says::card_replace().into(),
            fields: vec![cold_field, hot_field],
            next: next(says::next_skip(), close(Step::Replace(id))),
            ..CardView::default()
        };
        if let (Some(Ok(loss)), Some(owed)) = (state.loss_of(formula, id), state.water_owed(formula, id)) {
            view.figures.push(FigureView {
                label: says::card_evaporated().into(),
                value: self.weight(loss, step),
                range: String::new(),
                how: says::card_evaporated_how().into(),
                source: says::card_by_weight().into(),
            });
            if owed.is_zero() {
                view.next.label = says::next_done().into();
            } else {
                view.title = says::card_put_back(&self.weight(owed, step));
                view.big = self.weight_number(owed, step);
                self.settings.mass_unit.symbol().clone_into(&mut view.unit);
                view.next = next(
                    &says::next_water(&self.weight(owed, step)),
                    BatchesCommand::PutBackWater { phase: Some(id), text: String::new() },
                );
            }
        } else {
            let water: Grams = self.water_poured(state, formula, id);
            if let Some(loss) = USUAL_LOSS.of(water).filter(|loss| !loss.is_zero()) {
                self.add_forecast(&mut view, batch, state, loss);
            }
        }
        if self.has_alcohol(formula) {
            view.warnings.push(RemarkView { tone: "caution", text: says::card_alcohol().into() });
        }
        view
    }

    fn water_poured(&self, state: &RunState, formula: &Formula, id: PhaseId) -> Grams {
        let lines = phase_by(formula, id).map(|phase| phase.lines.as_slice()).unwrap_or_default();
        lines
            .iter()
            .filter(|line| self.is_water(line.material))
            .filter_map(|line| state.line(line.id))
            .fold(Grams::ZERO, |sum, line| sum.checked_add(line.poured).unwrap_or(sum))
    }

    /// Whether a formula holds an alcohol that evaporates. INCI names are the same in every language.
    fn has_alcohol(&mut self, formula: &Formula) -> bool {
        formula.lines().any(|line| {
            let Ok(inside) = self.makeups.see_through(line.material, &self.materials) else { return false };
            inside.constituents.iter().any(|(id, _)| {
                self.materials.constituent(*id).is_some_and(|constituent| {
                    constituent.class == Class::Solvent && constituent.inci.to_lowercase().contains("alcohol")
                })
            })
        })
    }

    /// What a loss of water would do to every percent, preservatives first.
    fn add_forecast(&mut self, view: &mut CardView, batch: &Batch, state: &RunState, loss: Grams) {
        let evaluation = evaluate(&batch.plan.formula, &self.bench, &self.materials, &mut self.makeups);
        let Some(mass) = state.recipe.batch() else { return };
        let planned = Contents::of(&evaluation.composition, mass, |id| self.is_water_constituent(id));
        let Some((before, after)) =
            planned.as_ref().and_then(|planned| Some((planned.percents()?, planned.evaporate(loss).ok()?.percents()?)))
        else {
            return;
        };
        if let Some(made) = self.concentrated(batch, loss) {
            view.warnings.extend(self.findings_beside(&batch.plan.formula, &made));
        }
        let mut rows: Vec<_> = before.iter().zip(&after).collect();
        let class = |id| self.materials.constituent(id).map(|constituent| constituent.class);
        rows.sort_by_key(|((id, percent), _)| (class(*id) != Some(Class::Preservative), core::cmp::Reverse(*percent)));
        let mass = self.mass(Grams::new(loss.value().round_dp(1)).unwrap_or(loss));
        view.about.push(says::card_forecast(&self.short_percent(USUAL_LOSS, 0), &mass));
        let changed = rows.into_iter().filter_map(|((id, from), (_, to))| {
            let (from, to) = (self.fixed_percent(*from), self.fixed_percent(*to));
            (from != to).then(|| FigureView {
                label: self.materials.inci(*id).to_owned(),
                value: says::card_from_to(&from, &to),
                range: String::new(),
                how: says::card_forecast_how().into(),
                source: says::common_practice().into(),
            })
        });
        view.figures.extend(changed.take(MOST_FORECAST));
    }

    /// The formula as it would be if all were weighed as planned and so much water went.
    fn concentrated(&self, batch: &Batch, loss: Grams) -> Option<Formula> {
        let planned = replay(&batch.plan, &[])?;
        let mut deeds: Vec<Deed> = planned.lines.iter().map(|line| Deed::Poured(line.line, line.target)).collect();
        let whole = planned.recipe.batch()?;
        deeds.push(Deed::BatchWeighed(whole.checked_sub(loss)?, Grams::ZERO));
        let events: Vec<Event> = deeds.into_iter().map(|deed| Event { at: 0, deed }).collect();
        replay(&batch.plan, &events)?.as_made(&batch.plan.formula, WATER, |id| self.is_water(id))
    }

    pub(crate) fn fixed_percent(&self, percent: Percent) -> String {
        let decimals = if percent.value() < Decimal::ONE { 3 } else { 2 };
        write_fixed(percent.value(), decimals, self.mark())
    }

    // ---- combining ----------------------------------------------------------------------------------------------

    pub(crate) fn card_of_combine(&self, batch: &Batch, state: &RunState) -> CardView {
        let formula = &batch.plan.formula;
        let heated: Vec<&Phase> = formula.phases.iter().filter(|phase| is_heated(phase.kind)).collect();
        let mut view = CardView {
            title: if heated.is_empty() { says::card_combine_cold() } else { says::card_combine() }.into(),
            next: next(says::next_done(), close(Step::Combine)),
            ..CardView::default()
        };
        if heated.is_empty() {
            return view;
        }
        let mut parts = Vec::new();
        let mut fusing = Vec::new();
        let mut lines = Vec::new();
        let mut assumed = false;
        for phase in &heated {
            let read = state.last_reading(Held::Phase(phase.id)).or(phase.temperature);
            assumed |= state.last_reading(Held::Phase(phase.id)).is_none();
            let temperature = read.map_or(USUAL_HOT, stillroom_core::Celsius::to_physics);
            let fusions = phase.lines.iter().filter(|line| state.line(line.id).is_some());
            let fusions = fusions.map(|line| self.fusion(line.material));
            for ((part, how), fusion) in self.warm_parts(batch, state, phase, temperature).into_iter().zip(fusions) {
                fusing.push((part, fusion));
                parts.push(part);
                lines.push(how);
            }
            view.fields.push(self.temperature_field(Held::Phase(phase.id), &phase.name));
        }
        if let Ok(together) = mixing_temperature(&parts) {
            self.show_degrees(&mut view, Decimal::from_f64(together).unwrap_or_default(), 0);
            view.figures.push(FigureView {
                label: says::card_together().into(),
                value: self.degrees(together, 1),
                // Dissolved in an oil a fat sets later than alone: what setting would give is the most it can be.
                range: mixing_temperature_with_fusion(&fusing)
                    .ok()
                    .filter(|set| (set - together).abs() > 0.5)
                    .map_or_else(String::new, |set| says::card_if_it_sets(&self.degrees(set, 1))),
                how: says::card_together_how(&lines.join(common::list_of_lists_separator())),
                source: says::card_together_source().into(),
            });
            if let (Some((line, melts)), _) = self.last_to_melt(formula)
                && together < melts
            {
                let name = name_of_line(batch, line.id);
                let text = says::under_melting(&self.degrees(together, 1), name, &self.degrees(melts, 1));
                view.warnings.push(RemarkView { tone: "caution", text });
            }
        }
        if assumed {
            view.about.push(says::card_assumed().into());
        }
        view
    }

    /// What each line of a phase brings to a mixture, and what its specific heat rests on.
    fn warm_parts(&self, batch: &Batch, state: &RunState, phase: &Phase, temperature: f64) -> Vec<(Warm, String)> {
        phase
            .lines
            .iter()
            .filter_map(|line| {
                let run = state.line(line.id)?;
                let mass = if run.poured.is_zero() { run.target } else { run.poured };
                let (specific_heat, basis) = self.specific_heat(line.material);
                let heat = write_between(Decimal::from_f64(specific_heat)?.round_dp(2), 1, 2, self.mark());
                let how = sentences::heat_of_line(name_of_line(batch, line.id), &heat, basis);
                Some((Warm { mass, specific_heat, temperature }, how))
            })
            .collect()
    }

    // ---- cooling ------------------------------------------------------------------------------------------------

    /// Temperature at which the cool-down phase may go in: what its most sensitive line bears, or less if the formula says.
    fn cool_enough(&self, formula: &Formula) -> f64 {
        let said = formula.phases.iter().filter(|phase| phase.kind == PhaseKind::CoolDown && !phase.lines.is_empty());
        let said = said.filter_map(|phase| phase.temperature).map(stillroom_core::Celsius::to_physics);
        let bears = self.most_sensitive(formula).0.map(|(_, bears)| bears);
        let least = said.chain(bears).fold(f64::INFINITY, f64::min);
        if least.is_finite() { least } else { USUAL_COOL }
    }

    pub(crate) fn card_of_cool(&self, batch: &Batch, state: &RunState) -> CardView {
        let formula = &batch.plan.formula;
        let wanted = self.cool_enough(formula);
        let room = state.last_reading(Held::Room).map_or(USUAL_ROOM, stillroom_core::Celsius::to_physics);
        let mut view = CardView {
            title: says::card_cool_to(&self.degrees(wanted, 1)),
            fields: vec![
                self.temperature_field(Held::Batch, says::card_batch_field()),
                self.temperature_field(Held::Room, says::card_room()),
            ],
            next: next(says::next_done(), close(Step::Cool)),
            ..CardView::default()
        };
        let (least, unknown) = self.most_sensitive(formula);
        view.about.extend(
            least.map(|(line, bears)| says::most_sensitive(name_of_line(batch, line.id), &self.degrees(bears, 1))),
        );
        if !unknown.is_empty() {
            let names: Vec<String> = unknown.iter().map(|line| name_of_line(batch, line.id).to_owned()).collect();
            view.about.push(says::sensitivity_unknown(&list(&names)));
        }
        if state.last_reading(Held::Room).is_none() {
            view.about.push(says::card_room_assumed(&self.degrees(USUAL_ROOM, 0)));
        }
        let (readings, first) = state.cooling_readings();
        if let Some(last) = readings.last() {
            self.show_degrees(&mut view, Decimal::from_f64(last.value).unwrap_or_default(), 1);
            if last.value <= wanted {
                view.warnings.push(RemarkView { tone: "note", text: says::card_cool_now().into() });
            }
        }
        match predict_cooling(&readings, room, wanted) {
            Ok(cooling) => {
                let moment = |minutes: f64| first.saturating_add((minutes.max(0.0) * 60_000.0).to_u64().unwrap_or(0));
                let in_words = |minutes: f64| self.clock_in_words(moment(minutes));
                let half = core::f64::consts::LN_2 / cooling.curve.rate;
                let half = write_between(Decimal::from_f64(half).unwrap_or_default().round_dp(0), 0, 0, self.mark());
                view.figures.push(FigureView {
                    label: says::card_cool_enough().into(),
                    value: says::reached_at(
                        &in_words(cooling.reached.estimate),
                        &in_words(cooling.reached.low),
                        &in_words(cooling.reached.high),
                    ),
                    range: String::new(),
                    how: says::card_cool_how(&self.degrees(room, 1), &half),
                    source: says::card_cool_source().into(),
                });
                let time = |minutes: f64| self.clock(moment(minutes));
                let description = says::card_cool_curve(readings.len(), &self.degrees(wanted, 1));
                view.curve =
                    Some(self.draw_decay(&cooling.curve, &readings, wanted, cooling.reached, description, &time));
            }
            Err(error) => view.about.push(sentences::cooling_error(error).to_owned()),
        }
        view
    }

    /// Draws a curve that dies away, with its readings and a level it reaches.
    pub(crate) fn draw_decay(
        &self,
        curve: &Decay,
        readings: &[ReadingAt],
        level: f64,
        reached: Band,
        description: String,
        time: &dyn Fn(f64) -> String,
    ) -> CurveView {
        let last = readings.iter().map(|each| each.time).fold(0.0, f64::max);
        let end = (last.max(reached.estimate) * 1.15).max(1e-6);
        let top = readings.iter().map(|each| each.value).fold(curve.at(0.0), f64::max);
        let bottom = level.min(readings.iter().map(|each| each.value).fold(f64::INFINITY, f64::min));
        let margin = ((top - bottom) * 0.08).max(0.5);
        let (top, bottom) = (top + margin, bottom - margin);
        let height = |value: f64| ((top - value) / (top - bottom) * 100.0).clamp(0.0, 100.0);
        let along = |time: f64| (time / end * 100.0).clamp(0.0, 100.0);
        let line = (0..=CURVE_POINTS)
            .map(|at| f64::from(at) / f64::from(CURVE_POINTS) * end)
            .map(|time| (along(time), height(curve.at(time))))
            .collect();
        let number =
            |value: f64| write_between(Decimal::from_f64(value).unwrap_or_default().round_dp(0), 0, 0, self.mark());
        CurveView {
            description,
            line,
            points: readings.iter().map(|each| (along(each.time), height(each.value))).collect(),
            level: height(level),
            level_label: number(level),
            band: Some((along(reached.low), along(reached.high))),
            across: vec![
                CurveTick { at: 0.0, label: time(0.0) },
                CurveTick { at: along(reached.estimate), label: time(reached.estimate) },
            ],
            up: vec![CurveTick { at: height(top - margin), label: number(top - margin) }],
        }
    }

    // ---- adding what goes in cool -------------------------------------------------------------------------------

    pub(crate) fn card_of_temper(&self, batch: &Batch, state: &RunState, id: PhaseId) -> CardView {
        let temper = BatchesCommand::Temper { phase: id, text: String::new() };
        let mut view = CardView {
            title: says::card_temper().into(),
            fields: vec![self.mass_field(&temper, says::card_temper_field(), state.tempered.get(&id).copied())],
            next: next(says::next_done(), temper),
            ..CardView::default()
        };
        match self.temper(batch, state, id) {
            Some((mass, wanted)) => {
                let step = self.settings.main_scale().step;
                view.big = self.weight_number(mass, step);
                self.settings.mass_unit.symbol().clone_into(&mut view.unit);
                view.about.push(says::card_temper_about(&self.weight(mass, step), &self.degrees(wanted, 0)));
                view.figures.push(FigureView {
                    label: says::card_temper_take().into(),
                    value: self.weight(mass, step),
                    range: String::new(),
                    how: says::card_temper_how().into(),
                    source: says::card_together_source().into(),
                });
            }
            None => view.about.push(says::card_temper_unknown().into()),
        }
        view
    }

    /// How much of the batch tempers a dish, and to what.
    fn temper(&self, batch: &Batch, state: &RunState, id: PhaseId) -> Option<(Grams, f64)> {
        let formula = &batch.plan.formula;
        let room = state.last_reading(Held::Room).map_or(USUAL_ROOM, stillroom_core::Celsius::to_physics);
        let hot = state
            .last_reading(Held::Batch)
            .map_or_else(|| self.cool_enough(formula), stillroom_core::Celsius::to_physics);
        let parts = |phase: &Phase, temperature: f64| -> Vec<Warm> {
            self.warm_parts(batch, state, phase, temperature).into_iter().map(|(part, _)| part).collect()
        };
        let dish = parts(phase_by(formula, id)?, room);
        let rest: Vec<Warm> =
            formula.phases.iter().filter(|phase| is_heated(phase.kind)).flat_map(|phase| parts(phase, hot)).collect();
        let mass = dish.iter().try_fold(Grams::ZERO, |sum, part| sum.checked_add(part.mass))?;
        let dish = Warm { mass, specific_heat: specific_heat_of(&dish).ok()?, temperature: room };
        let wanted = f64::midpoint(room, hot);
        let taken = mass_to_temper(dish, specific_heat_of(&rest).ok()?, hot, wanted).ok()?;
        Some((grams_of(taken)?, wanted))
    }

    pub(crate) fn card_of_add(&self, batch: &Batch, state: &RunState, id: PhaseId) -> CardView {
        let formula = &batch.plan.formula;
        let mut view = CardView {
            title: says::card_add().into(),
            next: next(says::next_done(), close(Step::Add(id))),
            ..CardView::default()
        };
        if formula.phases.iter().any(|phase| is_heated(phase.kind)) {
            view.fields.push(self.temperature_field(Held::Batch, says::card_batch_field()));
            let read = state.last_reading(Held::Batch).map(stillroom_core::Celsius::to_physics);
            if let (Some(read), (Some((line, bears)), _)) = (read, self.most_sensitive(formula))
                && read > bears
            {
                let name = name_of_line(batch, line.id);
                let text = says::card_too_warm(&self.degrees(read, 1), name, &self.degrees(bears, 1));
                view.warnings.push(RemarkView { tone: "caution", text });
            }
        }
        view
    }

    pub(crate) fn card_of_top_up(&self, batch: &Batch, state: &RunState) -> CardView {
        let formula = &batch.plan.formula;
        let step = self.settings.main_scale().step;
        let known =
            state.main_beaker(formula).and_then(|phase| state.beakers.get(&phase)).and_then(|beaker| beaker.empty);
        let weighed = state.batch_weighed;
        let weigh = BatchesCommand::WeighBatch { gross: String::new(), empty: String::new() };
        let gross = CardField {
            key: "gross",
            ..self.mass_field(&weigh, says::card_gross_field(), weighed.map(|(gross, _)| gross))
        };
        let empty = CardField {
            field: "run.weigh-batch:beaker".into(),
            key: "empty",
            ..self.mass_field(&weigh, says::card_empty_field(), weighed.map(|(_, empty)| empty).or(known))
        };
        let mut view = CardView {
            title: says::card_top_up().into(),
            about: vec![says::card_missing_about().into()],
            fields: vec![gross, empty],
            next: next(says::next_done(), weigh),
            ..CardView::default()
        };
        let (Some(missing), Some(mass)) = (state.water_missing(), state.batch_mass()) else { return view };
        view.fields.clear();
        view.figures.push(FigureView {
            label: says::card_missing().into(),
            value: self.weight(missing, step),
            range: String::new(),
            how: says::card_missing_how().into(),
            source: says::card_by_weight().into(),
        });
        let owed = missing.checked_sub(state.water_added).unwrap_or(Grams::ZERO);
        if owed.is_zero() {
            if mass.value() > state.due_on_the_scale {
                view.about.push(says::card_heavier_about().into());
            }
            view.next = next(says::next_done(), close(Step::TopUp));
        } else {
            view.title = says::card_put_back_warm(&self.weight(owed, step));
            view.big = self.weight_number(owed, step);
            self.settings.mass_unit.symbol().clone_into(&mut view.unit);
            view.next = next(
                &says::next_water(&self.weight(owed, step)),
                BatchesCommand::PutBackWater { phase: None, text: String::new() },
            );
        }
        view
    }

    /// A temperature in large figures.
    fn show_degrees(&self, view: &mut CardView, celsius: Decimal, decimals: u32) {
        let unit = self.settings.temperature_unit;
        view.big = write_between(unit.from_celsius(celsius).round_dp(decimals), 0, decimals, self.mark());
        view.unit = unit.symbol().into();
    }

    pub(crate) fn temperature_field(&self, held: Held, label: &str) -> CardField {
        let command = BatchesCommand::NoteTemperature { of: HeldName(held), text: String::new() };
        CardField {
            field: command.field().unwrap_or_default(),
            label: label.to_owned(),
            unit: self.settings.temperature_unit.symbol().into(),
            keyboard: "decimal",
            button: says::next_note().into(),
            command: Some(command),
            ..CardField::default()
        }
    }
}

fn phase_by(formula: &Formula, id: PhaseId) -> Option<&Phase> {
    formula.phases.iter().find(|phase| phase.id == id)
}
