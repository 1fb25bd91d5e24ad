//! The cards of heat and water: heating, what evaporated, combining, cooling, tempering, the last water.

use crate::present_card::next;
use crate::present_run::name_of_line;
use crate::run_facts::{WATER, grams_of};
use crate::sentences_card as card;
use crate::sentences_run as sentences;
use crate::session::Session;
use crate::view_extract::FigureView;
use crate::view_run::{CardField, CardView, CurveTick, CurveView, RemarkView};
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
        let on = id.0.to_string();
        let mut view = CardView {
            title: wanted.map_or_else(|| card::HEAT.into(), |wanted| card::heat_to(&self.degrees(wanted, 1))),
            about: vec![card::HEAT_ABOUT.into()],
            fields: vec![temperature_field(&on, card::THERMOMETER)],
            next: next(card::NEXT_DONE, "done", &Step::Heat(id).to_string()),
            ..CardView::default()
        };
        if let Some(read) = state.last_reading(Held::Phase(id)) {
            view.big = write_between(read.value(), 0, 1, self.mark());
            view.unit = "°C".into();
        }
        if phase.kind == PhaseKind::HeatedOil {
            self.add_melting(&mut view, batch);
        }
        self.add_timer(&mut view, state, Step::Heat(id), USUAL_HOLD);
        if view.timer.is_none() {
            view.about.push(card::HOLD.into());
        }
        view
    }

    fn add_melting(&self, view: &mut CardView, batch: &Batch) {
        let (last, unknown) = self.last_to_melt(&batch.plan.formula);
        view.about.extend(
            last.map(|(line, melts)| sentences::melts_last(name_of_line(batch, line.id), &self.degrees(melts, 1))),
        );
        if !unknown.is_empty() {
            let names: Vec<String> = unknown.iter().map(|line| name_of_line(batch, line.id).to_owned()).collect();
            view.warnings.push(RemarkView { tone: "note", text: sentences::melting_unknown(&names) });
        }
    }

    // ---- what evaporated ----------------------------------------------------------------------------------------

    pub(crate) fn card_of_replace(&mut self, batch: &Batch, state: &RunState, id: PhaseId) -> CardView {
        let formula = &batch.plan.formula;
        let step = self.settings.main_scale().step;
        let on = id.0.to_string();
        let cold = state.cold_mass(formula, id);
        let hot = state.beakers.get(&id).and_then(|beaker| beaker.hot);
        let mut hot_field = self.mass_field("hot", &on, card::HOT_FIELD, hot);
        let mut cold_field = self.mass_field("cold", &on, card::COLD_FIELD, cold);
        for field in [&mut hot_field, &mut cold_field] {
            field.with_next = false;
            field.button = card::NEXT_NOTE.into();
        }
        let mut view = CardView {
            title: card::REPLACE.into(),
            fields: vec![cold_field, hot_field],
            next: next(card::NEXT_SKIP, "done", &Step::Replace(id).to_string()),
            ..CardView::default()
        };
        if let (Some(Ok(loss)), Some(owed)) = (state.loss_of(formula, id), state.water_owed(formula, id)) {
            view.figures.push(FigureView {
                label: card::EVAPORATED.into(),
                value: self.weight(loss, step),
                range: String::new(),
                how: card::EVAPORATED_HOW.into(),
                source: card::BY_WEIGHT.into(),
            });
            if owed.is_zero() {
                view.next.label = card::NEXT_DONE.into();
            } else {
                view.title = card::put_back(&self.weight(owed, step));
                view.big = self.weight_number(owed, step);
                self.settings.mass_unit.symbol().clone_into(&mut view.unit);
                view.next = next(&card::water_is_in(&self.weight(owed, step)), "water", &on);
            }
        } else {
            let water: Grams = self.water_poured(state, formula, id);
            if let Some(loss) = USUAL_LOSS.of(water).filter(|loss| !loss.is_zero()) {
                self.add_forecast(&mut view, batch, state, loss);
            }
        }
        if self.has_alcohol(formula) {
            view.warnings.push(RemarkView { tone: "caution", text: card::ALCOHOL.into() });
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

    fn has_alcohol(&self, formula: &Formula) -> bool {
        formula.lines().any(|line| {
            self.materials.material(line.material).is_some_and(|material| {
                material.class == Class::Solvent && material.name.to_lowercase().contains("alcohol")
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
        view.about.push(card::forecast(&mass, &self.short_percent(USUAL_LOSS, 0)));
        let changed = rows.into_iter().filter_map(|((id, from), (_, to))| {
            let (from, to) = (self.fixed_percent(*from), self.fixed_percent(*to));
            (from != to).then(|| FigureView {
                label: self.materials.inci(*id).to_owned(),
                value: card::from_to(&from, &to),
                range: String::new(),
                how: card::FORECAST_HOW.into(),
                source: card::TRADE.into(),
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
            title: if heated.is_empty() { card::COMBINE_COLD } else { card::COMBINE }.into(),
            next: next(card::NEXT_DONE, "done", "combine"),
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
            view.fields.push(temperature_field(&phase.id.0.to_string(), &phase.name));
        }
        if let Ok(together) = mixing_temperature(&parts) {
            view.big = write_fixed(Decimal::from_f64(together).unwrap_or_default(), 0, self.mark());
            view.unit = "°C".into();
            view.figures.push(FigureView {
                label: card::TOGETHER.into(),
                value: self.degrees(together, 1),
                // Dissolved in an oil a fat sets later than alone: what setting would give is the most it can be.
                range: mixing_temperature_with_fusion(&fusing)
                    .ok()
                    .filter(|set| (set - together).abs() > 0.5)
                    .map_or_else(String::new, |set| card::if_it_sets(&self.degrees(set, 1))),
                how: card::mixing_how(&lines.join("; ")),
                source: card::TOGETHER_SOURCE.into(),
            });
            if let (Some((line, melts)), _) = self.last_to_melt(formula)
                && together < melts
            {
                let name = name_of_line(batch, line.id);
                let text = sentences::under_melting(&self.degrees(together, 1), name, &self.degrees(melts, 1));
                view.warnings.push(RemarkView { tone: "caution", text });
            }
        }
        if assumed {
            view.about.push(card::ASSUMED.into());
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
                let how = card::heat_of_line(name_of_line(batch, line.id), &heat, sentences::heat_basis(basis));
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
            title: card::cool_to(&self.degrees(wanted, 1)),
            fields: vec![temperature_field("batch", card::BATCH_FIELD), temperature_field("room", card::ROOM)],
            next: next(card::NEXT_DONE, "done", "cool"),
            ..CardView::default()
        };
        let (least, unknown) = self.most_sensitive(formula);
        view.about.extend(
            least.map(|(line, bears)| sentences::most_sensitive(name_of_line(batch, line.id), &self.degrees(bears, 1))),
        );
        if !unknown.is_empty() {
            let names: Vec<String> = unknown.iter().map(|line| name_of_line(batch, line.id).to_owned()).collect();
            view.about.push(sentences::sensitivity_unknown(&names));
        }
        if state.last_reading(Held::Room).is_none() {
            view.about.push(card::ROOM_ASSUMED.into());
        }
        let (readings, first) = state.cooling_readings();
        if let Some(last) = readings.last() {
            view.big = write_between(Decimal::from_f64(last.value).unwrap_or_default().round_dp(1), 0, 1, self.mark());
            view.unit = "°C".into();
            if last.value <= wanted {
                view.warnings.push(RemarkView { tone: "note", text: card::COOL_NOW.into() });
            }
        }
        match predict_cooling(&readings, room, wanted) {
            Ok(cooling) => {
                let time = |minutes: f64| {
                    self.clock(first.saturating_add((minutes.max(0.0) * 60_000.0).to_u64().unwrap_or(0)))
                };
                let half = core::f64::consts::LN_2 / cooling.curve.rate;
                let half = write_between(Decimal::from_f64(half).unwrap_or_default().round_dp(0), 0, 0, self.mark());
                view.figures.push(FigureView {
                    label: card::COOL_ENOUGH.into(),
                    value: sentences::reached_at(
                        &time(cooling.reached.estimate),
                        &time(cooling.reached.low),
                        &time(cooling.reached.high),
                    ),
                    range: String::new(),
                    how: card::cooling_how(&self.degrees(room, 1), &half),
                    source: card::COOL_SOURCE.into(),
                });
                let description = card::cooling_curve(readings.len(), &self.degrees(wanted, 1));
                view.curve =
                    Some(self.draw_decay(&cooling.curve, &readings, wanted, cooling.reached, description, &time));
            }
            Err(error) => view.about.push(sentences::decay_error(error).to_owned()),
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
        let on = id.0.to_string();
        let mut view = CardView {
            title: card::TEMPER.into(),
            fields: vec![self.mass_field("temper", &on, card::TEMPER_FIELD, state.tempered.get(&id).copied())],
            next: next(card::NEXT_DONE, "temper", &on),
            ..CardView::default()
        };
        match self.temper(batch, state, id) {
            Some((mass, wanted)) => {
                let step = self.settings.main_scale().step;
                view.big = self.weight_number(mass, step);
                self.settings.mass_unit.symbol().clone_into(&mut view.unit);
                view.about.push(card::temper_about(&self.weight(mass, step), &self.degrees(wanted, 0)));
                view.figures.push(FigureView {
                    label: card::TEMPER_LABEL.into(),
                    value: self.weight(mass, step),
                    range: String::new(),
                    how: card::TEMPER_HOW.into(),
                    source: card::TOGETHER_SOURCE.into(),
                });
            }
            None => view.about.push(card::TEMPER_UNKNOWN.into()),
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
            title: card::ADD.into(),
            next: next(card::NEXT_DONE, "done", &Step::Add(id).to_string()),
            ..CardView::default()
        };
        if formula.phases.iter().any(|phase| is_heated(phase.kind)) {
            view.fields.push(temperature_field("batch", card::BATCH_FIELD));
            let read = state.last_reading(Held::Batch).map(stillroom_core::Celsius::to_physics);
            if let (Some(read), (Some((line, bears)), _)) = (read, self.most_sensitive(formula))
                && read > bears
            {
                let name = name_of_line(batch, line.id);
                let text = card::too_warm(&self.degrees(read, 1), &self.degrees(bears, 1), name);
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
        let gross = self.mass_field("weigh-batch", "", card::GROSS_FIELD, weighed.map(|(gross, _)| gross));
        let empty = CardField {
            field: "run.weigh-batch:beaker".into(),
            ..self.mass_field("weigh-batch", "", card::EMPTY_FIELD, weighed.map(|(_, empty)| empty).or(known))
        };
        let mut view = CardView {
            title: card::TOP_UP.into(),
            about: vec![card::MISSING_ABOUT.into()],
            fields: vec![gross, empty],
            next: next(card::NEXT_DONE, "weigh-batch", ""),
            ..CardView::default()
        };
        let (Some(missing), Some(mass)) = (state.water_missing(), state.batch_mass()) else { return view };
        view.fields.clear();
        view.figures.push(FigureView {
            label: card::MISSING.into(),
            value: self.weight(missing, step),
            range: String::new(),
            how: card::MISSING_HOW.into(),
            source: card::BY_WEIGHT.into(),
        });
        let owed = missing.checked_sub(state.water_added).unwrap_or(Grams::ZERO);
        if owed.is_zero() {
            if mass > state.poured() {
                view.about.push(card::HEAVIER_ABOUT.into());
            }
            view.next = next(card::NEXT_DONE, "done", "top-up");
        } else {
            view.title = card::put_back(&self.weight(owed, step));
            view.big = self.weight_number(owed, step);
            self.settings.mass_unit.symbol().clone_into(&mut view.unit);
            view.next = next(&card::water_is_in(&self.weight(owed, step)), "water", "batch");
        }
        view
    }
}

fn phase_by(formula: &Formula, id: PhaseId) -> Option<&Phase> {
    formula.phases.iter().find(|phase| phase.id == id)
}

fn temperature_field(on: &str, label: &str) -> CardField {
    CardField {
        field: format!("run.temperature:{on}"),
        label: label.to_owned(),
        unit: "°C".into(),
        keyboard: "decimal",
        button: card::NEXT_NOTE.into(),
        act: "temperature",
        on: on.to_owned(),
        ..CardField::default()
    }
}
