//! Batches as the page shows them: the list, the run and its steps.

use crate::messages::batches as says;
use crate::messages::sentences::with_unit;
use crate::rooms::batches::edit::is_finished;
use crate::rooms::batches::sentences;
use crate::rooms::batches::view::{BatchCard, BatchesView, RemarkView, RunView, StepView};
use crate::rooms::formula::present::step_decimals;
use crate::rooms::update::Update;
use crate::session::Session;
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use std::rc::Rc;
use stillroom_core::day::Day;
use stillroom_core::number::{write_between, write_fixed};
use stillroom_core::run::state::{LineStatus, RunState, replay};
use stillroom_core::run::steps::Step;
use stillroom_core::run::{RunPlan, standing};
use stillroom_core::shelf_life::{Expired, expired};
use stillroom_core::{Formula, Grams, LineId, MaterialId, Percent, PhaseId};
use stillroom_exchange::batch::{Batch, BatchRecord};

impl Session {
    /// Batches, the open run and its journal, where they changed.
    pub(crate) fn present_at_bench(&mut self, update: &mut Update) {
        if !self.at_bench.looking {
            return;
        }
        let batches = self.present_batches();
        update.batches = self.shown.changed(batches);
        let record = self.open_batch();
        let run = record.as_ref().and_then(|record| self.present_run(record)).unwrap_or_default();
        update.run = self.shown.changed(run);
        let journal = record.as_ref().map(|record| self.present_journal(record)).unwrap_or_default();
        update.journal = self.shown.changed(journal);
    }

    fn present_batches(&mut self) -> BatchesView {
        let mut records: Vec<Rc<BatchRecord>> = self.batches.values().map(Rc::clone).collect();
        records.sort_by(|a, b| b.changed_at.cmp(&a.changed_at).then(a.id.cmp(&b.id)));
        let cards = records.iter().map(|record| self.present_batch_card(record)).collect();
        let (offer, problem) = self.offer_batch();
        BatchesView { cards, offer, problem }
    }

    fn present_batch_card(&self, record: &BatchRecord) -> BatchCard {
        let batch = &record.batch;
        let state = replay(&batch.plan, &batch.events);
        let mass = state.as_ref().and_then(|state| state.recipe.batch()).unwrap_or(batch.plan.asked);
        let mass = self.mass(rounded(mass));
        let about = match state.as_ref().map(|state| (state, state.finished_at)) {
            Some((_, Some(at))) => {
                says::about_finished(&batch.lot, &mass, &self.day_at(at).map(sentences::day).unwrap_or_default())
            }
            Some((state, None)) => {
                let (done, of) = progress(state);
                says::about_running(&batch.lot, &mass, &(done + 1).to_string(), &of.to_string())
            }
            None => says::about_batch(&batch.lot, &mass),
        };
        BatchCard {
            id: record.id.to_string(),
            name: batch.plan.formula.name.clone(),
            about,
            running: !is_finished(&batch.events),
            asks: is_finished(&batch.events) || !self.journal_of(record.id).entries.is_empty(),
        }
    }

    /// What a batch of the open formula would be, or why there can be none.
    fn offer_batch(&mut self) -> (String, String) {
        let Some((record, evaluation)) = self.evaluate_open() else { return Default::default() };
        let asked = evaluation.batch.as_ref().map_or(Grams::ZERO, |batch| batch.mass);
        match RunPlan::new(record.formula.clone(), asked, self.bench.scales.clone()) {
            Ok(plan) => (says::offer_batch(&self.mass(plan.asked), &plan.formula.name), String::new()),
            Err(error) => (String::new(), sentences::run_error(error).to_owned()),
        }
    }

    fn present_run(&mut self, record: &BatchRecord) -> Option<RunView> {
        let batch = &record.batch;
        let state = replay(&batch.plan, &batch.events)?;
        let (done, of) = progress(&state);
        let focus = self.at_bench.focus.filter(|step| state.steps.contains(step));
        let here = focus.unwrap_or_else(|| state.current());
        let steps = state.steps.iter().map(|step| self.present_run_step(batch, &state, *step, here)).collect();
        let take_back =
            standing(&batch.events).last().map(|(_, event)| self.deed_in_words(batch, &event.deed)).unwrap_or_default();
        Some(RunView {
            id: Some(record.id.to_string()),
            name: batch.plan.formula.name.clone(),
            lot: batch.lot.clone(),
            finished: state.finished_at.is_some(),
            done,
            of,
            warnings: self.warn_of_expired(batch, &state),
            steps,
            card: self.present_card(batch, &state, here),
            take_back,
            record: self.present_record(record, &state),
        })
    }

    fn present_run_step(&self, batch: &Batch, state: &RunState, step: Step, here: Step) -> StepView {
        let formula = &batch.plan.formula;
        let phase = phase_of(formula, step);
        let about = match step {
            Step::Weigh(id) => state.line(id).map_or_else(String::new, |line| {
                let mass = if line.status.is_settled() && line.status != LineStatus::LeftOut {
                    line.poured
                } else {
                    line.target
                };
                self.weight(mass, line.tolerance)
            }),
            _ => String::new(),
        };
        StepView {
            step: step.to_string(),
            label: sentences::step_label(step, &name_at(batch, step)),
            about,
            done: state.is_done(step),
            here: step == here,
            phase: phase.map(|phase| sentences::phase_margin(phase.kind).to_owned()).unwrap_or_default(),
        }
    }

    /// The materials of a batch that were past their day when it began, or are today.
    pub(crate) fn expired_in(&self, batch: &Batch, state: &RunState) -> Vec<Expired> {
        let begun = state.started_at.and_then(|at| self.day_at(at));
        let Some(day) = begun.or_else(|| self.around.today().parse().ok()) else { return Vec::new() };
        expired(batch.materials.iter().map(|used| (used.material, used.expiry.parse::<Day>().ok())), day)
    }

    fn warn_of_expired(&self, batch: &Batch, state: &RunState) -> Vec<RemarkView> {
        let name = |id: MaterialId| {
            batch.materials.iter().find(|used| used.material == id).map(|used| used.name.as_str()).unwrap_or_default()
        };
        let warn = |past: &Expired| RemarkView {
            tone: "stop",
            text: sentences::expired(name(past.material), past.last_day, past.days),
        };
        self.expired_in(batch, state).iter().map(warn).collect()
    }

    // ---- writing numbers ----------------------------------------------------------------------------------------

    /// A mass as a scale of that step shows it.
    pub(crate) fn weight(&self, mass: Grams, step: Grams) -> String {
        with_unit(&self.weight_number(mass, step), self.settings.mass_unit.symbol())
    }

    pub(crate) fn weight_number(&self, mass: Grams, step: Grams) -> String {
        let unit = self.settings.mass_unit;
        write_fixed(unit.from_grams(mass), step_decimals(step, unit), self.mark())
    }

    pub(crate) fn degrees(&self, celsius: f64, decimals: u32) -> String {
        let unit = self.settings.temperature_unit;
        let value = unit.from_celsius(Decimal::from_f64(celsius).unwrap_or_default()).round_dp(decimals);
        with_unit(&write_between(value, 0, decimals, self.mark()), unit.symbol())
    }

    pub(crate) fn short_percent(&self, percent: Percent, decimals: u32) -> String {
        write_between(percent.value().round_dp(decimals), 0, decimals, self.mark())
    }

    /// The time of day at a moment, as it stands in a table and on a chart.
    pub(crate) fn clock(&self, at: u64) -> String {
        let (hours, minutes) = self.time_of_day(at);
        format!("{hours}:{minutes}")
    }

    /// The time of day at a moment, as it stands in a sentence.
    pub(crate) fn clock_in_words(&self, at: u64) -> String {
        let (hours, minutes) = self.time_of_day(at);
        says::time_of_day(&hours, &minutes)
    }

    fn time_of_day(&self, at: u64) -> (String, String) {
        let minutes = i64::try_from(at / 60_000).unwrap_or(0).saturating_add(self.around.minutes_ahead());
        let minutes = minutes.rem_euclid(24 * 60);
        (format!("{:02}", minutes / 60), format!("{:02}", minutes % 60))
    }

    /// The day it is here at a moment.
    pub(crate) fn day_at(&self, at: u64) -> Option<Day> {
        Day::from_moment(at, self.around.minutes_ahead())
    }
}

/// How many steps are done with, and how many there are.
fn progress(state: &RunState) -> (usize, usize) {
    (state.steps.iter().filter(|step| state.is_done(**step)).count(), state.steps.len())
}

/// A mass without digits that no scale shows.
fn rounded(mass: Grams) -> Grams {
    Grams::new(mass.value().round_dp(2)).unwrap_or(mass)
}

/// What a step is about: a material or a phase.
pub(crate) fn name_at(batch: &Batch, step: Step) -> String {
    match step {
        Step::Weigh(id) => name_of_line(batch, id).to_owned(),
        step => phase_of(&batch.plan.formula, step).map(|phase| phase.name.clone()).unwrap_or_default(),
    }
}

/// The phase a step belongs to.
pub(crate) fn phase_of(formula: &Formula, step: Step) -> Option<&stillroom_core::Phase> {
    let by_id = |id: PhaseId| formula.phases.iter().find(|phase| phase.id == id);
    match step {
        Step::Weigh(line) => formula.place_of(line).and_then(|place| formula.phases.get(place.phase)),
        Step::Beaker(phase) | Step::Heat(phase) | Step::Replace(phase) | Step::Temper(phase) | Step::Add(phase) => {
            by_id(phase)
        }
        _ => None,
    }
}

/// The name a material had when the run began.
pub(crate) fn name_of_line(batch: &Batch, line: LineId) -> &str {
    batch.materials.iter().find(|used| used.line == line).map(|used| used.name.as_str()).unwrap_or_default()
}
