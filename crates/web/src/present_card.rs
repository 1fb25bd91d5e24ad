//! The card of a step: one thing to do, in large type.

use crate::edit_run::{ALL_IN_BEAKER, SCALE_READS};
use crate::present_run::{name_of_line, phase_of};
use crate::run_facts::WATER;
use crate::sentences_card as card;
use crate::sentences_run as sentences;
use crate::session::Session;
use crate::view_extract::FigureView;
use crate::view_run::{CardField, CardView, ChoiceAct, RemarkView, TimerView};
use stillroom_core::evaluation::evaluate;
use stillroom_core::number::write_between;
use stillroom_core::run::filling::{plan_filling, work_out_yield};
use stillroom_core::run::recipe::PourError;
use stillroom_core::run::state::{Cure, LineStatus, Offered, RunLine, RunState, Timer, replay};
use stillroom_core::run::steps::{Step, is_heated, order_of_phases};
use stillroom_core::run::{Deed, Event};
use stillroom_core::{Grams, LineId, MaterialId, PhaseId};
use stillroom_exchange::batch::Batch;

/// Minutes a blend takes if nobody says otherwise. Common practice with a hand blender.
const USUAL_BLEND: &str = "3";

impl Session {
    pub(crate) fn present_card(&mut self, batch: &Batch, state: &RunState, step: Step) -> CardView {
        let mut view = match step {
            Step::Prepare => self.card_of_prepare(batch, state),
            Step::Beaker(phase) => self.card_of_beaker(state, phase),
            Step::Weigh(line) => self.card_of_weigh(batch, state, line),
            Step::Heat(phase) => self.card_of_heat(batch, state, phase),
            Step::Replace(phase) => self.card_of_replace(batch, state, phase),
            Step::Combine => self.card_of_combine(batch, state),
            Step::Blend => self.card_of_blend(batch, state),
            Step::Cool => self.card_of_cool(batch, state),
            Step::Temper(phase) => self.card_of_temper(batch, state, phase),
            Step::Add(phase) => self.card_of_add(batch, state, phase),
            Step::TopUp => self.card_of_top_up(batch, state),
            Step::Ph => self.card_of_ph(batch, state),
            Step::Fill => self.card_of_fill(batch, state),
            Step::Finish => self.card_of_finish(batch, state),
        };
        let phase = phase_of(&batch.plan.formula, step);
        view.step = step.to_string();
        view.kind = kind_of(step);
        view.phase = phase.map(|phase| sentences::phase_margin(phase.kind).to_owned()).unwrap_or_default();
        if view.eyebrow.is_empty() {
            view.eyebrow = phase.map_or_else(|| batch.plan.formula.name.clone(), |phase| phase.name.clone());
        }
        // A step that is done with was only looked at; the large area leads back.
        if self.at_bench.focus == Some(step) && state.is_done(step) && step != state.current() {
            view.next = ChoiceAct { label: card::NEXT_BACK.to_owned(), act: "focus", ..ChoiceAct::default() };
            for field in &mut view.fields {
                field.with_next = false;
            }
        }
        view
    }

    fn card_of_prepare(&self, batch: &Batch, state: &RunState) -> CardView {
        let formula = &batch.plan.formula;
        let phases = order_of_phases(formula, &state.first);
        let heated: Vec<_> = phases.iter().filter(|phase| is_heated(phase.kind)).collect();
        let choices = heated.iter().skip(1).map(|phase| ChoiceAct {
            label: card::weigh_first(&phase.name),
            act: "first",
            on: phase.id.0.to_string(),
            ..ChoiceAct::default()
        });
        let room = state.last_reading(stillroom_core::run::Held::Room);
        let mut fields = vec![
            CardField {
                field: "run.lot".into(),
                label: card::LOT.into(),
                text: batch.lot.clone(),
                keyboard: "text",
                act: "lot",
                ..CardField::default()
            },
            CardField {
                field: "run.temperature:room".into(),
                label: card::ROOM.into(),
                unit: "°C".into(),
                text: room.map(|room| write_between(room.value(), 0, 1, self.mark())).unwrap_or_default(),
                keyboard: "decimal",
                act: "temperature",
                on: "room".into(),
                ..CardField::default()
            },
        ];
        fields.extend(["weighed-by", "cleaning", "equipment", "water"].map(|name| said_field(state, name)));
        CardView {
            title: card::PREPARE.into(),
            about: card::PREPARE_ABOUT.iter().map(ToString::to_string).collect(),
            warnings: vec![RemarkView { tone: "note", text: card::CAUSTICS.into() }],
            fields,
            choices: choices.collect(),
            next: next(card::NEXT_BEGIN, "start", ""),
            ..CardView::default()
        }
    }

    fn card_of_beaker(&self, state: &RunState, phase: PhaseId) -> CardView {
        let on = phase.0.to_string();
        let known = state.beakers.get(&phase).and_then(|beaker| beaker.empty);
        CardView {
            title: card::BEAKER.into(),
            about: vec![card::BEAKER_ABOUT.into()],
            fields: vec![self.mass_field("empty-beaker", &on, card::BEAKER_FIELD, known)],
            next: next(card::NEXT_DONE, "empty-beaker", &on),
            ..CardView::default()
        }
    }

    // ---- weighing -----------------------------------------------------------------------------------------------

    fn card_of_weigh(&mut self, batch: &Batch, state: &RunState, id: LineId) -> CardView {
        let formula = &batch.plan.formula;
        let (Some(line), Some(phase)) = (state.line(id), phase_of(formula, Step::Weigh(id))) else {
            return CardView::default();
        };
        let at = phase.lines.iter().position(|each| each.id == id).map_or(1, |at| at + 1);
        let scale = batch.plan.scales.as_slice().get(line.scale).map(|scale| scale.name.as_str()).unwrap_or_default();
        let missing = line.target.checked_sub(line.poured).unwrap_or(Grams::ZERO);
        let settled = line.status.is_settled();
        let over = matches!(line.status, LineStatus::Over(_));
        let before = state.poured_into(formula, phase.id);
        let after = before.checked_add(missing).unwrap_or(before);
        let step = line.tolerance;
        let used = batch.materials.iter().find(|used| used.line == id);
        let note = formula.line(id).map(|line| line.note.clone()).unwrap_or_default();
        let mut about = vec![sentences::tolerance(&self.weight(step, step), scale)];
        if !settled && !over {
            about.push(sentences::running_total(&self.weight(before, step), &self.weight(after, step)));
        }
        about.extend(used.map(|used| sentences::lot_and_day(&used.lot, &used.expiry)));
        about.push(note);
        about.retain(|line| !line.is_empty());

        let shown = if settled || over { line.poured } else { missing };
        let on = id.0.to_string();
        // What is missing is poured with the large area; of the other ways out only those that are open are of use then.
        let helps = |offered: &&Offered| over || matches!(offered, Ok(cure) if !matches!(cure, Cure::AddMore(_)));
        let cures = state.cures(id);
        let mut choices: Vec<ChoiceAct> =
            cures.iter().filter(helps).map(|offered| self.present_cure(batch, state, line, offered)).collect();
        if matches!(line.status, LineStatus::Waiting) {
            let label = card::LEAVE_OUT.into();
            choices.push(ChoiceAct { label, act: "leave-out", on: on.clone(), ..ChoiceAct::default() });
        }
        if !settled && !over {
            choices.push(way_of_reading(state));
        }
        let fields = if settled || over { Vec::new() } else { self.pour_fields(state, &on, line, before, missing) };
        let mut warnings = self.warn_of_pour(batch, state, line);
        warnings.extend(self.check_if_it_stays(batch, state, line));
        let next = match line.status {
            LineStatus::Over(_) => {
                ChoiceAct { label: card::NEXT_CHOOSE.into(), act: "focus", refused: true, ..ChoiceAct::default() }
            }
            _ => next(&card::next_pour(&self.weight(missing, step)), "pour", &on),
        };
        CardView {
            eyebrow: sentences::place_in_phase(&phase.name, at, phase.lines.len()),
            title: name_of_line(batch, id).to_owned(),
            big: self.weight_number(shown, step),
            unit: self.settings.mass_unit.symbol().to_owned(),
            about,
            warnings,
            fields,
            choices,
            next,
            ..CardView::default()
        }
    }

    /// What the checks find if a pour that missed its mark stays as it is, and all else is weighed as planned.
    fn check_if_it_stays(&mut self, batch: &Batch, state: &RunState, line: &RunLine) -> Vec<RemarkView> {
        let missed = match line.status {
            LineStatus::Over(_) | LineStatus::Accepted => true,
            LineStatus::Short(_) => !line.poured.is_zero(),
            LineStatus::Done | LineStatus::Waiting | LineStatus::LeftOut => false,
        };
        if !missed {
            return Vec::new();
        }
        let deeds = state.lines.iter().map(|each| {
            let stays = each.line == line.line || each.status.is_settled();
            Deed::Poured(each.line, if stays { each.poured } else { each.target })
        });
        let events: Vec<Event> = deeds.map(|deed| Event { at: 0, deed }).collect();
        let formula = &batch.plan.formula;
        let made = replay(&batch.plan, &events).and_then(|made| made.as_made(formula, WATER, |id| self.is_water(id)));
        made.map(|made| self.findings_beside(formula, &made)).unwrap_or_default()
    }

    fn warn_of_pour(&self, batch: &Batch, state: &RunState, line: &RunLine) -> Vec<RemarkView> {
        let step = line.tolerance;
        let mut warnings = Vec::new();
        let used = batch.materials.iter().find(|used| used.line == line.line);
        for past in
            self.expired_in(batch, state).iter().filter(|past| used.is_some_and(|used| used.material == past.material))
        {
            let name = name_of_line(batch, line.line);
            let text = sentences::expired(name, &sentences::day(past.last_day), past.days);
            warnings.push(RemarkView { tone: "stop", text });
        }
        let (poured, target) = (self.weight(line.poured, step), self.weight(line.target, step));
        match line.status {
            LineStatus::Over(over) => {
                let text = sentences::too_much(&self.weight(over, step), &poured, &target);
                warnings.push(RemarkView { tone: "caution", text });
            }
            LineStatus::Short(_) if !line.poured.is_zero() => {
                warnings.push(RemarkView { tone: "note", text: sentences::too_little(&poured, &target) });
            }
            LineStatus::Done | LineStatus::Accepted => {
                warnings.push(RemarkView { tone: "note", text: card::already_in(&poured) });
            }
            LineStatus::LeftOut => warnings.push(RemarkView { tone: "note", text: card::LEFT_OUT.into() }),
            LineStatus::Short(_) | LineStatus::Waiting => {}
        }
        warnings
    }

    fn pour_fields(&self, state: &RunState, on: &str, line: &RunLine, before: Grams, missing: Grams) -> Vec<CardField> {
        let all = state.said.get(SCALE_READS).is_some_and(|reads| reads == ALL_IN_BEAKER);
        let shown = if all { before.checked_add(missing).unwrap_or(missing) } else { missing };
        vec![CardField {
            field: format!("run.pour:{on}"),
            label: card::POUR_FIELD.into(),
            unit: self.settings.mass_unit.symbol().to_owned(),
            placeholder: self.weight_number(shown, line.tolerance),
            keyboard: "decimal",
            with_next: true,
            act: "pour",
            on: on.to_owned(),
            ..CardField::default()
        }]
    }

    fn present_cure(&self, batch: &Batch, state: &RunState, line: &RunLine, offered: &Offered) -> ChoiceAct {
        let on = line.line.0.to_string();
        let step = line.tolerance;
        let choice =
            |label: String, about: String, act| ChoiceAct { label, about, act, on: on.clone(), ..ChoiceAct::default() };
        match offered {
            Ok(Cure::AddMore(mass)) => choice(sentences::cure_add(&self.weight(*mass, step)), String::new(), "pour"),
            Ok(Cure::Rescale(mass, more)) => {
                let items: Vec<String> = more
                    .iter()
                    .map(|(other, mass)| {
                        let step = state.line(*other).map_or(step, |other| other.tolerance);
                        sentences::more_of(&self.weight(*mass, step), name_of_line(batch, *other))
                    })
                    .collect();
                let label = sentences::cure_rescale(&self.mass(Grams::new(mass.value().round_dp(2)).unwrap_or(*mass)));
                choice(label, sentences::add_more(&items), "rescale")
            }
            Ok(Cure::TakeFromRest(rest, mass)) => {
                let step = state.line(*rest).map_or(step, |rest| rest.tolerance);
                let label = sentences::cure_rest(name_of_line(batch, *rest));
                choice(label, sentences::rest_becomes(&self.weight(*mass, step)), "take-from-rest")
            }
            Ok(Cure::Accept(percent)) => {
                let planned = state.recipe.percent_of(line.line).map(|planned| self.short_percent(planned, 2));
                let about = sentences::percent_becomes(&self.short_percent(*percent, 2), &planned.unwrap_or_default());
                choice(sentences::cure_accept().to_owned(), about, "accept")
            }
            Err(error) => {
                let other = match error {
                    PourError::OtherTooMuch { line } => name_of_line(batch, *line),
                    _ => "",
                };
                // Of the cures only these two can be refused.
                let about_scale =
                    matches!(error, PourError::OtherTooMuch { .. } | PourError::TooLarge | PourError::NoSuchLine);
                let rest = state.recipe.rest().map(|rest| name_of_line(batch, rest)).unwrap_or_default();
                let label = if about_scale {
                    sentences::cure_rescale(&self.weight(line.poured, step))
                } else {
                    sentences::cure_rest(rest)
                };
                ChoiceAct { refused: true, ..choice(label, sentences::pour_error(*error, other), "focus") }
            }
        }
    }

    // ---- blending, pH, filling, the end -------------------------------------------------------------------------

    fn card_of_blend(&self, batch: &Batch, state: &RunState) -> CardView {
        let oil = batch.plan.formula.phases.iter().any(|phase| phase.kind == stillroom_core::PhaseKind::HeatedOil);
        let mut view = CardView {
            title: if oil { card::BLEND } else { card::STIR }.into(),
            next: next(card::NEXT_DONE, "done", "blend"),
            ..CardView::default()
        };
        self.add_timer(&mut view, state, Step::Blend, USUAL_BLEND);
        view.about.push(card::BLEND_ABOUT.into());
        view
    }

    /// A timer, or the field that starts one.
    pub(crate) fn add_timer(&self, view: &mut CardView, state: &RunState, step: Step, minutes: &str) {
        let on = step.to_string();
        if let Some(timer) = state.timers.get(&step) {
            view.timer = Some(self.present_timer(timer));
            return;
        }
        view.fields.push(CardField {
            field: format!("run.timer:{on}"),
            label: card::MINUTES.into(),
            unit: "min".into(),
            text: minutes.into(),
            keyboard: "decimal",
            button: card::TIMER_GO.into(),
            act: "timer",
            on,
            ..CardField::default()
        });
    }

    fn present_timer(&self, timer: &Timer) -> TimerView {
        let now = self.around.now();
        let ran = timer.ran_at(now);
        let stop = timer.next_stop();
        let whole = u64::from(timer.seconds) * 1000;
        let over = timer.is_over(now);
        let running = timer.since.is_some() && ran < stop;
        let last = stop >= whole;
        TimerView {
            step: timer.step.to_string(),
            running,
            clock: sentences::clock(stop.saturating_sub(ran).div_ceil(1000)),
            share: share_of(ran, whole),
            at_stop: match (last, timer.step) {
                (false, _) => card::SCRAPE,
                (true, Step::Blend) => card::BLEND_OVER,
                (true, _) => card::HEAT_OVER,
            }
            .into(),
            over,
            at_pause: !over && !running && timer.stops.iter().any(|pause| u64::from(*pause) * 1000 == ran),
        }
    }

    fn card_of_ph(&self, batch: &Batch, state: &RunState) -> CardView {
        let mark = self.mark();
        let wanted = batch.plan.formula.target_ph.map(|ph| card::ph_wanted(&write_between(ph.value(), 1, 2, mark)));
        let field = CardField {
            field: "run.ph:".into(),
            label: card::PH_FIELD.into(),
            text: state.ph.map(|ph| write_between(ph.value(), 1, 2, mark)).unwrap_or_default(),
            keyboard: "decimal",
            with_next: true,
            act: "ph",
            ..CardField::default()
        };
        CardView {
            title: card::PH.into(),
            about: wanted.into_iter().chain([card::PH_ABOUT.to_owned()]).collect(),
            fields: vec![field, said_field(state, "ph-method")],
            next: next(card::NEXT_DONE, "ph", ""),
            ..CardView::default()
        }
    }

    fn card_of_fill(&mut self, batch: &Batch, state: &RunState) -> CardView {
        let formula = &batch.plan.formula;
        let evaluation = evaluate(formula, &self.bench, &self.materials, &mut self.makeups);
        let containers = formula.batch.containers;
        let measured = containers.density;
        let density = measured.or(evaluation.density.map(|estimate| estimate.density));
        let filled = state.filled_mass().unwrap_or(Grams::ZERO);
        let there = batch_there(state);
        let left = there.checked_sub(filled).unwrap_or(Grams::ZERO);
        let step = self.settings.main_scale().step;
        let mut about: Vec<String> =
            state.filled.iter().map(|(count, each)| card::filled(*count, &self.weight(*each, step))).collect();
        let field = |name: &'static str, label: &str, unit: String, placeholder: String, keyboard| CardField {
            field: if name == "count" { "run.fill:".into() } else { "run.fill:each".into() },
            label: label.into(),
            unit,
            placeholder,
            keyboard,
            with_next: true,
            act: "fill",
            ..CardField::default()
        };
        let plan = density.and_then(|density| plan_filling(left, &containers, density, step).ok());
        let mut suggestion = (String::new(), String::new());
        let mut choices = Vec::new();
        if let Some(plan) = plan {
            about.push(card::fill_plan(plan.full, &self.weight(plan.each, step), &self.weight(plan.left, step)));
            suggestion = (plan.full.to_string(), self.weight_number(plan.each, step));
            let mut offer = |count: u32, each: Grams| {
                choices.push(ChoiceAct {
                    label: card::filled(count, &self.weight(each, step)),
                    act: "fill",
                    text: format!("{count}\n{}", self.weight_number(each, step)),
                    ..ChoiceAct::default()
                });
            };
            if plan.full > 0 {
                offer(plan.full, plan.each);
            }
            if let Some(alike) = plan.alike.filter(|alike| !alike.is_zero() && state.filled.is_empty()) {
                about.push(card::fill_alike(containers.count, &self.weight(alike, step)));
                suggestion = (containers.count.to_string(), self.weight_number(alike, step));
                offer(containers.count, alike);
            }
            about.push(if measured.is_some() { card::FILL_DENSITY_MEASURED } else { card::FILL_DENSITY }.into());
        } else {
            about.push(card::FILL_NO_DENSITY.into());
        }
        let unit = self.settings.mass_unit.symbol().to_owned();
        let fields = vec![
            field("count", card::COUNT_FIELD, String::new(), suggestion.0, "numeric"),
            field("each", card::EACH_FIELD, unit.clone(), suggestion.1, "decimal"),
            said_field(state, "packaging"),
            said_field(state, "net-content"),
        ];
        let label = if state.filled.is_empty() { card::NEXT_SKIP } else { card::NEXT_DONE };
        CardView {
            title: card::FILL.into(),
            big: self.weight_number(left, step),
            unit,
            about,
            fields,
            choices,
            next: next(label, "fill", ""),
            ..CardView::default()
        }
    }

    fn card_of_finish(&self, batch: &Batch, state: &RunState) -> CardView {
        let mut warnings = Vec::new();
        let mut figures = Vec::new();
        if let Some(found) =
            state.filled_mass().filter(|mass| !mass.is_zero()).and_then(|mass| work_out_yield(state.poured(), mass))
        {
            let step = self.settings.main_scale().step;
            figures.push(FigureView {
                label: card::YIELD.into(),
                value: card::yield_value(
                    &self.short_percent(found.percent, 1),
                    &self.weight(found.filled, step),
                    &self.weight(found.weighed_in, step),
                ),
                range: String::new(),
                how: card::YIELD_HOW.into(),
                source: card::BY_WEIGHT.into(),
            });
            if found.to_explain {
                warnings.push(RemarkView { tone: "caution", text: card::EXPLAIN_LOSS.into() });
            }
        }
        let mut names = vec!["look", "viscosity"];
        if !warnings.is_empty() {
            names.push("loss");
        }
        names.extend(["retained", "durability", "released", "released-by"]);
        let items = self.stock_to_draw(batch, state);
        let about = if items.is_empty() { Vec::new() } else { vec![card::will_draw(&items.join(", "))] };
        CardView {
            title: card::FINISH.into(),
            about,
            warnings,
            fields: names.into_iter().map(|name| said_field(state, name)).collect(),
            figures,
            next: next(card::NEXT_FINISH, "finish", ""),
            ..CardView::default()
        }
    }

    fn stock_to_draw(&self, batch: &Batch, state: &RunState) -> Vec<String> {
        let known = |id: MaterialId| self.materials.holding(id).is_some_and(|holding| holding.stock.is_some());
        batch
            .plan
            .formula
            .lines()
            .filter(|line| known(line.material))
            .filter_map(|line| state.line(line.id))
            .filter(|line| !line.poured.is_zero())
            .map(|line| sentences::more_of(&self.weight(line.poured, line.tolerance), name_of_line(batch, line.line)))
            .collect()
    }

    pub(crate) fn mass_field(&self, act: &'static str, on: &str, label: &str, known: Option<Grams>) -> CardField {
        CardField {
            field: format!("run.{act}:{on}"),
            label: label.into(),
            unit: self.settings.mass_unit.symbol().to_owned(),
            text: known.map(|mass| self.mass_number(mass)).unwrap_or_default(),
            keyboard: "decimal",
            with_next: true,
            act,
            on: on.to_owned(),
            ..CardField::default()
        }
    }
}

/// How much of a whole has run, in percent.
fn share_of(ran: u64, whole: u64) -> f64 {
    // A timer counts to ten hours at most: the thousandths of a percent fit a u32.
    let thousandths = (ran * 100_000).checked_div(whole).and_then(|share| u32::try_from(share).ok());
    thousandths.map_or(0.0, |thousandths| f64::from(thousandths) / 1000.0)
}

/// What there is of the batch: as weighed at the end with what was put in after that, or all that was poured.
pub(crate) fn batch_there(state: &RunState) -> Grams {
    let weighed = state.batch_mass().and_then(|mass| mass.checked_add(state.water_added));
    weighed.unwrap_or_else(|| state.poured())
}

/// What the large area does.
pub(crate) fn next(label: &str, act: &'static str, on: &str) -> ChoiceAct {
    ChoiceAct { label: label.to_owned(), act, on: on.to_owned(), ..ChoiceAct::default() }
}

/// Says that the scale is read the other way.
fn way_of_reading(state: &RunState) -> ChoiceAct {
    let all = state.said.get(SCALE_READS).is_some_and(|reads| reads == ALL_IN_BEAKER);
    let (label, text) = if all { (card::READS_LINE, "line") } else { (card::READS_BEAKER, ALL_IN_BEAKER) };
    let (label, text) = (label.to_owned(), text.to_owned());
    ChoiceAct { label, text, act: "say", on: SCALE_READS.to_owned(), ..ChoiceAct::default() }
}

/// A field of the record, sent when it is left.
pub(crate) fn said_field(state: &RunState, name: &str) -> CardField {
    let label = card::RECORD_FIELDS.iter().find(|(key, _)| *key == name).map_or("", |(_, label)| label);
    CardField {
        field: format!("run.say:{name}"),
        label: label.to_owned(),
        text: state.said.get(name).cloned().unwrap_or_default(),
        keyboard: "text",
        act: "say",
        on: name.to_owned(),
        ..CardField::default()
    }
}

const fn kind_of(step: Step) -> &'static str {
    match step {
        Step::Prepare => "prepare",
        Step::Beaker(_) => "beaker",
        Step::Weigh(_) => "weigh",
        Step::Heat(_) => "heat",
        Step::Replace(_) => "replace",
        Step::Combine => "combine",
        Step::Blend => "blend",
        Step::Cool => "cool",
        Step::Temper(_) => "temper",
        Step::Add(_) => "add",
        Step::TopUp => "top-up",
        Step::Ph => "ph",
        Step::Fill => "fill",
        Step::Finish => "finish",
    }
}
