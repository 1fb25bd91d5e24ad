//! The card of a step: one thing to do, in large type.

use crate::messages::batches as says;
use crate::messages::sentences::{list, scale_key};
use crate::rooms::batches::command::{BatchesCommand, StepName};
use crate::rooms::batches::edit::{ALL_IN_BEAKER, SCALE_READS};
use crate::rooms::batches::facts::WATER;
use crate::rooms::batches::present::{name_of_line, phase_of};
use crate::rooms::batches::sentences;
use crate::rooms::batches::view::{CardField, CardView, ChoiceAct, RemarkView, TimerView};
use crate::rooms::extracts::view::FigureView;
use crate::session::Session;
use stillroom_core::evaluation::evaluate;
use stillroom_core::run::Held;
use stillroom_core::run::filling::{plan_filling, work_out_yield};
use stillroom_core::run::recipe::PourError;
use stillroom_core::run::state::{Cure, LineStatus, Offered, RunLine, RunState, Timer, replay};
use stillroom_core::run::steps::{Step, is_heated, order_of_phases};
use stillroom_core::run::{Deed, Event};
use stillroom_core::{Grams, LineId, MaterialId, PhaseId};
use stillroom_exchange::batch::Batch;

/// Findings named beside a choice.
const MOST_FOUND: usize = 2;
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
        // The maker's own method, as it stood when the run began: the steps here follow from the phases, and may say less.
        if step == Step::Prepare && !batch.plan.formula.steps.is_empty() {
            view.about.push(says::own_method().to_owned());
            view.about.extend(sentences::numbered_steps(&batch.plan.formula.steps));
        }
        let phase = phase_of(&batch.plan.formula, step);
        view.step = step.to_string();
        view.kind = kind_of(step);
        view.phase = phase.map(|phase| sentences::phase_margin(phase.kind).to_owned()).unwrap_or_default();
        if view.eyebrow.is_empty() {
            view.eyebrow = phase.map_or_else(|| batch.plan.formula.name.clone(), |phase| phase.name.clone());
        }
        // A step that is done with was only looked at; the large area leads back.
        if self.at_bench.focus == Some(step) && state.is_done(step) && step != state.current() {
            view.next = ChoiceAct {
                label: says::next_back().to_owned(),
                command: Some(BatchesCommand::LookAtStep { step: None }),
                ..ChoiceAct::default()
            };
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
            label: says::card_weigh_first(&phase.name),
            command: Some(BatchesCommand::BeginWithPhase { phase: phase.id }),
            ..ChoiceAct::default()
        });
        let room = state.last_reading(Held::Room);
        let mut fields = vec![
            CardField {
                field: "run.lot".into(),
                label: says::card_lot().into(),
                text: batch.lot.clone(),
                keyboard: "text",
                command: Some(BatchesCommand::SetLot { text: String::new() }),
                ..CardField::default()
            },
            // It goes along with the large area: no button of its own.
            CardField {
                text: room.map(|room| self.temperature_number(room.value())).unwrap_or_default(),
                button: String::new(),
                ..self.temperature_field(Held::Room, says::card_room())
            },
        ];
        fields.extend(["weighed-by", "cleaning", "equipment", "water"].map(|name| said_field(state, name)));
        CardView {
            title: says::card_prepare().into(),
            about: vec![says::card_prepare_clear().into(), says::card_prepare_lay_out().into()],
            warnings: vec![RemarkView { tone: "note", text: says::card_caustics().into() }],
            fields,
            choices: choices.collect(),
            next: next(says::next_begin(), BatchesCommand::StartRun {}),
            ..CardView::default()
        }
    }

    fn card_of_beaker(&self, state: &RunState, phase: PhaseId) -> CardView {
        let weigh = BatchesCommand::WeighEmptyBeaker { phase, text: String::new() };
        let known = state.beakers.get(&phase).and_then(|beaker| beaker.empty);
        CardView {
            title: says::card_beaker().into(),
            about: vec![says::card_beaker_about().into()],
            fields: vec![self.mass_field(&weigh, says::card_beaker_field(), known)],
            next: next(says::next_done(), weigh),
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
        let mut about = vec![says::tolerance(scale_key(scale), &self.weight(step, step))];
        if !settled && !over {
            about.push(says::running_total(&self.weight(before, step), &self.weight(after, step)));
        }
        about.extend(used.map(|used| sentences::lot_and_day(&used.lot, &used.expiry)));
        about.push(note);
        about.retain(|line| !line.is_empty());

        let shown = if settled || over { line.poured } else { missing };
        // What is missing is poured with the large area; of the other ways out only those that are open are of use then.
        let helps = |offered: &&Offered| over || matches!(offered, Ok(cure) if !matches!(cure, Cure::AddMore(_)));
        let cures = state.cures(id);
        let mut choices: Vec<ChoiceAct> =
            cures.iter().filter(helps).map(|offered| self.present_cure(batch, state, line, offered)).collect();
        if matches!(line.status, LineStatus::Waiting) {
            let label = says::card_leave_out().into();
            let command = Some(BatchesCommand::LeaveOut { line: id });
            choices.push(ChoiceAct { label, command, ..ChoiceAct::default() });
        }
        if !settled && !over {
            choices.push(way_of_reading(state));
        }
        let fields = if settled || over { Vec::new() } else { self.pour_fields(state, line, before, missing) };
        let mut warnings = self.warn_of_pour(batch, state, line);
        let found = self.check_if_it_stays(batch, state, line);
        if matches!(line.status, LineStatus::Short(_)) {
            // What is missing will most likely be poured: what leaving it would do stands beside that choice.
            for choice in
                choices.iter_mut().filter(|choice| matches!(choice.command, Some(BatchesCommand::AcceptPour { .. })))
            {
                for remark in found.iter().take(MOST_FOUND) {
                    choice.about.push('\n');
                    choice.about.push_str(&remark.text);
                }
            }
        } else {
            warnings.extend(found);
        }
        let next = match line.status {
            LineStatus::Over(_) => {
                ChoiceAct { label: says::next_choose().into(), refused: true, ..ChoiceAct::default() }
            }
            _ => next(
                &says::next_pour(&self.weight(missing, step)),
                BatchesCommand::Pour { line: id, text: String::new() },
            ),
        };
        CardView {
            eyebrow: says::place_in_phase(&phase.name, &at.to_string(), &phase.lines.len().to_string()),
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
            let text = sentences::expired(name, past.last_day, past.days);
            warnings.push(RemarkView { tone: "stop", text });
        }
        let (poured, target) = (self.weight(line.poured, step), self.weight(line.target, step));
        match line.status {
            LineStatus::Over(over) => {
                let text = says::too_much(&self.weight(over, step), &poured, &target);
                warnings.push(RemarkView { tone: "caution", text });
            }
            LineStatus::Short(_) if !line.poured.is_zero() => {
                warnings.push(RemarkView { tone: "note", text: says::too_little(&poured, &target) });
            }
            LineStatus::Done | LineStatus::Accepted => {
                warnings.push(RemarkView { tone: "note", text: says::card_already_in(&poured) });
            }
            LineStatus::LeftOut => warnings.push(RemarkView { tone: "note", text: says::card_left_out().into() }),
            LineStatus::Short(_) | LineStatus::Waiting => {}
        }
        warnings
    }

    fn pour_fields(&self, state: &RunState, line: &RunLine, before: Grams, missing: Grams) -> Vec<CardField> {
        let all = state.said.get(SCALE_READS).is_some_and(|reads| reads == ALL_IN_BEAKER);
        let shown = if all { before.checked_add(missing).unwrap_or(missing) } else { missing };
        vec![CardField {
            field: format!("run.pour:{}", line.line.0),
            label: says::card_pour_field().into(),
            unit: self.settings.mass_unit.symbol().to_owned(),
            placeholder: self.weight_number(shown, line.tolerance),
            keyboard: "decimal",
            with_next: true,
            ..CardField::default()
        }]
    }

    fn present_cure(&self, batch: &Batch, state: &RunState, line: &RunLine, offered: &Offered) -> ChoiceAct {
        let step = line.tolerance;
        let choice = |label: String, about: String, command| ChoiceAct {
            label,
            about,
            command: Some(command),
            ..ChoiceAct::default()
        };
        let line_id = line.line;
        match offered {
            Ok(Cure::AddMore(mass)) => choice(
                says::cure_add(&self.weight(*mass, step)),
                String::new(),
                BatchesCommand::Pour { line: line_id, text: String::new() },
            ),
            Ok(Cure::Rescale(mass, more)) => {
                let items: Vec<String> = more
                    .iter()
                    .map(|(other, mass)| {
                        let step = state.line(*other).map_or(step, |other| other.tolerance);
                        says::mass_of_material(&self.weight(*mass, step), name_of_line(batch, *other))
                    })
                    .collect();
                let label = says::cure_rescale(&self.mass(Grams::new(mass.value().round_dp(2)).unwrap_or(*mass)));
                choice(label, sentences::add_more(&items), BatchesCommand::RescaleToPour { line: line_id })
            }
            Ok(Cure::TakeFromRest(rest, mass)) => {
                let step = state.line(*rest).map_or(step, |rest| rest.tolerance);
                let label = says::cure_take_from_rest(name_of_line(batch, *rest));
                choice(
                    label,
                    says::rest_becomes(&self.weight(*mass, step)),
                    BatchesCommand::TakeFromRest { line: line_id },
                )
            }
            Ok(Cure::Accept(percent)) => {
                let planned = state.recipe.percent_of(line.line).map(|planned| self.short_percent(planned, 2));
                let about = says::percent_becomes(&self.short_percent(*percent, 2), &planned.unwrap_or_default());
                choice(says::cure_accept().to_owned(), about, BatchesCommand::AcceptPour { line: line_id })
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
                    says::cure_rescale(&self.weight(line.poured, step))
                } else {
                    says::cure_take_from_rest(rest)
                };
                ChoiceAct { label, about: sentences::pour_error(*error, other), refused: true, ..ChoiceAct::default() }
            }
        }
    }

    // ---- blending, pH, filling, the end -------------------------------------------------------------------------

    fn card_of_blend(&self, batch: &Batch, state: &RunState) -> CardView {
        let oil = batch.plan.formula.phases.iter().any(|phase| phase.kind == stillroom_core::PhaseKind::HeatedOil);
        let mut view = CardView {
            title: if oil { says::card_blend() } else { says::card_stir() }.into(),
            next: next(says::next_done(), close(Step::Blend)),
            ..CardView::default()
        };
        self.add_timer(&mut view, state, Step::Blend, USUAL_BLEND);
        view.about.push(says::card_blend_about().into());
        view
    }

    /// A timer, or the field that starts one.
    pub(crate) fn add_timer(&self, view: &mut CardView, state: &RunState, step: Step, minutes: &str) {
        if let Some(timer) = state.timers.get(&step) {
            view.timer = Some(self.present_timer(timer));
            return;
        }
        view.fields.push(CardField {
            field: format!("run.timer:{step}"),
            label: says::card_minutes().into(),
            unit: "min".into(),
            text: minutes.into(),
            keyboard: "decimal",
            button: says::card_timer_go().into(),
            command: Some(BatchesCommand::StartTimer { step: StepName(step), text: String::new() }),
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
                (false, _) => says::card_scrape(),
                (true, Step::Blend) => says::card_blend_over(),
                (true, _) => says::card_heat_over(),
            }
            .into(),
            over,
            at_pause: !over && !running && timer.stops.iter().any(|pause| u64::from(*pause) * 1000 == ran),
        }
    }

    fn card_of_fill(&mut self, batch: &Batch, state: &RunState) -> CardView {
        let formula = &batch.plan.formula;
        let evaluation = evaluate(formula, &self.bench, &self.materials, &mut self.makeups);
        let containers = formula.batch.containers;
        let measured = containers.density;
        let density = measured.or(evaluation.density.map(|estimate| estimate.density));
        let filled = state.filled_mass().unwrap_or(Grams::ZERO);
        let there = state.batch_there();
        let left = there.checked_sub(filled).unwrap_or(Grams::ZERO);
        let step = self.settings.main_scale().step;
        let mut about: Vec<String> = state
            .filled
            .iter()
            .map(|(count, each)| says::card_filled(&count.to_string(), &self.weight(*each, step)))
            .collect();
        let field = |name: &'static str, label: &str, unit: String, placeholder: String, keyboard| CardField {
            field: if name == "count" { "run.fill:".into() } else { "run.fill:each".into() },
            label: label.into(),
            unit,
            placeholder,
            keyboard,
            with_next: true,
            command: Some(BatchesCommand::Fill { count: String::new(), each: String::new() }),
            key: name,
            ..CardField::default()
        };
        let plan = density.and_then(|density| plan_filling(left, &containers, density, step).ok());
        let mut suggestion = (String::new(), String::new());
        let mut choices = Vec::new();
        if let Some(plan) = plan {
            about.push(says::card_fill_plan(
                usize::try_from(plan.full).unwrap_or(usize::MAX),
                &self.weight(plan.each, step),
                &self.weight(plan.left, step),
            ));
            suggestion = (plan.full.to_string(), self.weight_number(plan.each, step));
            let mut offer = |count: u32, each: Grams| {
                choices.push(ChoiceAct {
                    label: says::card_filled(&count.to_string(), &self.weight(each, step)),
                    command: Some(BatchesCommand::Fill {
                        count: count.to_string(),
                        each: self.weight_number(each, step),
                    }),
                    ..ChoiceAct::default()
                });
            };
            if plan.full > 0 {
                offer(plan.full, plan.each);
            }
            if let Some(alike) = plan.alike.filter(|alike| !alike.is_zero() && state.filled.is_empty()) {
                about.push(says::card_fill_alike(&containers.count.to_string(), &self.weight(alike, step)));
                suggestion = (containers.count.to_string(), self.weight_number(alike, step));
                offer(containers.count, alike);
            }
            about.push(
                if measured.is_some() { says::card_fill_density_measured() } else { says::card_fill_density() }.into(),
            );
        } else {
            about.push(says::card_fill_no_density().into());
        }
        let unit = self.settings.mass_unit.symbol().to_owned();
        let fields = vec![
            field("count", says::card_count_field(), String::new(), suggestion.0, "numeric"),
            field("each", says::card_each_field(), unit.clone(), suggestion.1, "decimal"),
            said_field(state, "packaging"),
            said_field(state, "net-content"),
        ];
        let label = if state.filled.is_empty() { says::next_skip() } else { says::next_done() };
        CardView {
            title: says::card_fill().into(),
            big: self.weight_number(left, step),
            unit,
            about,
            fields,
            choices,
            next: next(label, BatchesCommand::Fill { count: String::new(), each: String::new() }),
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
                label: says::card_yield().into(),
                value: says::card_yield_value(
                    &self.short_percent(found.percent, 1),
                    &self.weight(found.filled, step),
                    &self.weight(found.weighed_in, step),
                ),
                range: String::new(),
                how: says::card_yield_how().into(),
                source: says::card_by_weight().into(),
            });
            if found.to_explain {
                warnings.push(RemarkView { tone: "caution", text: says::card_explain_loss().into() });
            }
        }
        let mut names = vec!["look", "viscosity"];
        if !warnings.is_empty() {
            names.push("loss");
        }
        names.extend(["retained", "durability", "released", "released-by"]);
        let items = self.stock_to_draw(batch, state);
        let about = if items.is_empty() { Vec::new() } else { vec![says::card_will_draw(&list(&items))] };
        CardView {
            title: says::card_finish().into(),
            about,
            warnings,
            fields: names.into_iter().map(|name| said_field(state, name)).collect(),
            figures,
            next: next(says::next_finish(), BatchesCommand::FinishRun {}),
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
            .map(|line| {
                says::mass_of_material(&self.weight(line.poured, line.tolerance), name_of_line(batch, line.line))
            })
            .collect()
    }

    pub(crate) fn mass_field(&self, command: &BatchesCommand, label: &str, known: Option<Grams>) -> CardField {
        CardField {
            field: command.field().unwrap_or_default(),
            label: label.into(),
            unit: self.settings.mass_unit.symbol().to_owned(),
            text: known.map(|mass| self.mass_number(mass)).unwrap_or_default(),
            keyboard: "decimal",
            with_next: true,
            command: Some(command.clone()),
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

/// What the large area does.
pub(crate) fn next(label: &str, command: BatchesCommand) -> ChoiceAct {
    ChoiceAct { label: label.to_owned(), command: Some(command), ..ChoiceAct::default() }
}

/// Closes a step.
pub(crate) fn close(step: Step) -> BatchesCommand {
    BatchesCommand::CloseStep { step: StepName(step) }
}

/// Says that the scale is read the other way.
fn way_of_reading(state: &RunState) -> ChoiceAct {
    let all = state.said.get(SCALE_READS).is_some_and(|reads| reads == ALL_IN_BEAKER);
    let (label, text) =
        if all { (says::card_reads_line(), "line") } else { (says::card_reads_beaker(), ALL_IN_BEAKER) };
    let command = BatchesCommand::Say { name: SCALE_READS.to_owned(), text: text.to_owned() };
    ChoiceAct { label: label.to_owned(), command: Some(command), ..ChoiceAct::default() }
}

/// A field of the record, sent when it is left.
pub(crate) fn said_field(state: &RunState, name: &str) -> CardField {
    let label = sentences::record_fields().iter().find(|(key, _)| *key == name).map_or("", |(_, label)| label);
    CardField {
        field: format!("run.say:{name}"),
        label: label.to_owned(),
        text: state.said.get(name).cloned().unwrap_or_default(),
        keyboard: "text",
        command: Some(BatchesCommand::Say { name: name.to_owned(), text: String::new() }),
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
