//! Acts at the bench: beginning a batch, what is weighed and done, taking back, finishing.

use crate::contract::Answer;
use crate::messages::batches as says;
use crate::rooms::batches::command::{BatchesCommand, HeldName, StepName};
use crate::rooms::batches::sentences;
use crate::rooms::formula::edit::{about, made};
use crate::session::Session;
use crate::session::history::Slot;
use litemap::LiteMap;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use std::rc::Rc;
use stillroom_core::batch_plan::MOST_CONTAINERS;
use stillroom_core::number::{NumberError, read_mass, read_plain, read_temperature};
use stillroom_core::run::state::{RunState, replay};
use stillroom_core::run::steps::Step;
use stillroom_core::run::{Deed, Event, Held, MOST_EVENTS, RunPlan, standing};
use stillroom_core::{Celsius, FormulaId, Grams, LineId, MaterialId, PhaseId};
use stillroom_exchange::batch::{Batch, BatchId, BatchRecord};
use stillroom_exchange::holding::Holding;

/// Most batches on one device: each takes some 10 kB.
const MOST_BATCHES: usize = 300;
/// How a scale is read, kept among what was said.
pub(crate) const SCALE_READS: &str = "scale-reads";
/// That the scale shows all that is in the beaker.
pub(crate) const ALL_IN_BEAKER: &str = "beaker";
/// Longest timer, in minutes.
const LONGEST_TIMER: u32 = 600;

/// Why a text at the bench was not understood.
pub(crate) enum Refusal {
    Number(NumberError),
    Sentence(&'static str, String),
    /// Nothing to do, and nothing to say of it.
    Nothing,
}

impl From<NumberError> for Refusal {
    fn from(error: NumberError) -> Self {
        Self::Number(error)
    }
}

pub(crate) type Read<T> = Result<T, Refusal>;

impl Session {
    /// The batch begun last that is not finished.
    fn running_batch(&self) -> Option<BatchId> {
        let running = |record: &&Rc<BatchRecord>| !is_finished(&record.batch.events);
        self.batches.values().filter(running).max_by_key(|record| record.changed_at).map(|record| record.id)
    }

    pub(crate) fn act_on_batches(&mut self, command: BatchesCommand) -> Answer {
        let field = command.field();
        match command {
            BatchesCommand::LookAtBatches { looking } => {
                self.at_bench.looking = looking;
                if looking {
                    // Whoever comes back to a run that was broken off finds it as they left it.
                    self.at_bench.open = self.at_bench.open.or_else(|| self.running_batch());
                }
                Answer::default()
            }
            BatchesCommand::BeginBatch { formula } => self.begin_batch(formula),
            BatchesCommand::OpenBatch { batch } => {
                self.at_bench.open = Some(batch).filter(|id| self.batches.contains_key(id));
                self.at_bench.focus = None;
                Answer::default()
            }
            BatchesCommand::CloseBatch {} => {
                self.at_bench.open = None;
                self.at_bench.focus = None;
                Answer::default()
            }
            BatchesCommand::DeleteBatch { batch } => self.delete_batch(batch),
            BatchesCommand::SetLot { text } => {
                let lot = text.trim().to_owned();
                self.change_batch("run.lot", field.as_deref(), |batch| batch.lot = lot);
                Answer { field, ..Answer::default() }
            }
            BatchesCommand::LookAtStep { step } => {
                self.at_bench.focus = step.map(|StepName(step)| step);
                Answer::default()
            }
            BatchesCommand::PlanTitration { name, text } => {
                let planned = self.plan_titration(&name, &text);
                about(&field.unwrap_or_default(), planned, self.mark())
            }
            BatchesCommand::FinishRun {} => self.finish_batch(),
            BatchesCommand::TakeBack {} => self.take_back(),
            BatchesCommand::BeginEntry { text } => self.begin_entry(&text),
            BatchesCommand::NoteEntry { entry, name, text } => self.note_entry(entry, &name, &text),
            BatchesCommand::AddPhoto { entry, name } => self.add_photo(entry, &name),
            BatchesCommand::RemoveEntry { entry } => self.remove_entry(entry),
            at_bench => self.do_at_bench(at_bench),
        }
    }

    // ---- records ------------------------------------------------------------------------------------------------

    fn begin_batch(&mut self, formula: Option<FormulaId>) -> Answer {
        // The version that is run is the one that is kept.
        self.keep_unkept();
        let Some(record) = formula.or(self.open).and_then(|id| self.shelf.get(&id)).map(Rc::clone) else {
            return Answer::default();
        };
        let refused = |error: String, code| Answer { error: Some(error), code: Some(code), ..Answer::default() };
        if self.batches.len() >= MOST_BATCHES {
            return refused(says::too_many_batches(&MOST_BATCHES.to_string()), "run.too-many");
        }
        let asked = {
            let formula = &record.formula;
            let evaluation =
                stillroom_core::evaluation::evaluate(formula, &self.bench, &self.materials, &mut self.makeups);
            evaluation.batch.map_or(Grams::ZERO, |batch| batch.mass)
        };
        let plan = match RunPlan::new(record.formula.clone(), asked, self.bench.scales.clone()) {
            Ok(plan) => plan,
            Err(error) => return refused(sentences::run_error(error).to_owned(), error.code()),
        };
        self.keep_version_made(&record);
        let batch = Batch {
            lot: self.fresh_lot(),
            of: record.id,
            version: self.revision_of(record.id),
            materials: self.materials_to_use(&record.formula),
            plan,
            events: Vec::new(),
        };
        let id = BatchId(self.around.random());
        let record = BatchRecord { id, revision: 0, changed_at: self.around.now(), batch };
        self.commit(
            "run.new",
            None,
            self.open,
            vec![Slot::Batch(id, None)],
            vec![Slot::Batch(id, Some(Rc::new(record)))],
        );
        self.keep_unkept();
        self.at_bench.open = Some(id);
        self.at_bench.focus = None;
        made(&id)
    }

    /// The day and a letter, as no batch has it yet.
    fn fresh_lot(&self) -> String {
        let today = self.around.today();
        let taken = |lot: &str| self.batches.values().any(|record| record.batch.lot == lot);
        let letters = ('A'..='Z').map(|letter| format!("{today} {letter}"));
        letters.into_iter().find(|lot| !taken(lot)).unwrap_or(today)
    }

    fn delete_batch(&mut self, id: BatchId) -> Answer {
        let Some(record) = self.batches.get(&id).map(Rc::clone) else { return Answer::default() };
        let name = record.batch.lot.clone();
        let mut before = vec![Slot::Batch(id, Some(record))];
        let mut after = vec![Slot::Batch(id, None)];
        if let Some(journal) = self.journals.get(&id).map(Rc::clone) {
            before.push(Slot::Journal(id, Some(journal)));
            after.push(Slot::Journal(id, None));
        }
        self.commit("run.delete", None, self.open, before, after);
        self.keep_unkept();
        self.notice("run.deleted", says::batch_deleted(&name), true);
        Answer::default()
    }

    /// The open batch.
    pub(crate) fn open_batch(&self) -> Option<Rc<BatchRecord>> {
        self.at_bench.open.and_then(|id| self.batches.get(&id)).map(Rc::clone)
    }

    /// The open batch before and after a change; `None` where nothing changes.
    fn changed_batch(&self, edit: impl FnOnce(&mut Batch)) -> Option<(Slot, Slot)> {
        let before = self.open_batch()?;
        let mut after = (*before).clone();
        edit(&mut after.batch);
        if after.batch == before.batch {
            return None;
        }
        after.changed_at = self.around.now();
        Some((Slot::Batch(before.id, Some(before)), Slot::Batch(after.id, Some(Rc::new(after)))))
    }

    /// Changes the open batch as one act, and keeps it there and then: a run may end with any second.
    fn change_batch(&mut self, act: &'static str, field: Option<&str>, edit: impl FnOnce(&mut Batch)) {
        let Some((before, after)) = self.changed_batch(edit) else { return };
        self.commit(act, field, self.open, vec![before], vec![after]);
        self.keep_unkept();
    }

    // ---- the run ------------------------------------------------------------------------------------------------

    fn do_at_bench(&mut self, command: BatchesCommand) -> Answer {
        let Some(record) = self.open_batch() else { return Answer::default() };
        let Some(state) = replay(&record.batch.plan, &record.batch.events) else { return Answer::default() };
        let field = command.field();
        let read = if command.is_about_ph() {
            self.read_ph_deeds(&record.batch, &state, command)
        } else {
            self.read_deeds(&record.batch, &state, command)
        };
        match read {
            // The last place is for finishing.
            Ok(deeds) if record.batch.events.len() + deeds.len() >= MOST_EVENTS => Answer { field, ..run_is_full() },
            Ok(deeds) => {
                self.add_deeds(deeds);
                Answer { field, ..Answer::default() }
            }
            Err(Refusal::Nothing) => Answer::default(),
            Err(Refusal::Number(error)) => about(&field.unwrap_or_default(), Err(error), self.mark()),
            Err(Refusal::Sentence(code, sentence)) => {
                Answer { field, error: Some(sentence), code: Some(code), made: None }
            }
        }
    }

    fn add_deeds(&mut self, deeds: Vec<Deed>) {
        let at = self.around.now();
        if deeds.is_empty() {
            return;
        }
        let focus = self.at_bench.focus;
        let was_done = focus.is_some_and(|step| self.is_step_done(step));
        self.change_batch("run.deed", None, |batch| {
            batch.events.extend(deeds.into_iter().map(|deed| Event { at, deed }));
        });
        // What was in sight is done with: on to what comes next.
        if focus.is_some_and(|step| !was_done && self.is_step_done(step)) {
            self.at_bench.focus = None;
        }
    }

    fn is_step_done(&self, step: Step) -> bool {
        let state = self.open_batch().and_then(|record| replay(&record.batch.plan, &record.batch.events));
        state.is_some_and(|state| state.is_done(step))
    }

    fn read_deeds(&self, batch: &Batch, state: &RunState, command: BatchesCommand) -> Read<Vec<Deed>> {
        let line = |id: LineId| state.line(id).map(|_| id).ok_or(Refusal::Nothing);
        let phase = |id: PhaseId| {
            let known = batch.plan.formula.phases.iter().any(|phase| phase.id == id);
            if known { Ok(id) } else { Err(Refusal::Nothing) }
        };
        let is_empty = |text: &str| text.trim().is_empty();
        let deed = match command {
            BatchesCommand::StartRun {} => Deed::Started,
            BatchesCommand::BeginWithPhase { phase: id } => Deed::PhaseFirst(phase(id)?),
            BatchesCommand::WeighEmptyBeaker { phase: id, text } if is_empty(&text) => {
                Deed::Closed(Step::Beaker(phase(id)?))
            }
            BatchesCommand::WeighEmptyBeaker { phase: id, text } => {
                Deed::EmptyBeaker(phase(id)?, self.read_grams(&text)?)
            }
            BatchesCommand::Pour { line: id, text } => self.read_pour(batch, state, line(id)?, &text)?,
            BatchesCommand::LeaveOut { line: id } => Deed::LeftOut(line(id)?),
            BatchesCommand::AcceptPour { line: id } => Deed::Accepted(line(id)?),
            BatchesCommand::RescaleToPour { line: id } => Deed::Rescaled(line(id)?),
            BatchesCommand::TakeFromRest { line: id } => Deed::TakenFromRest(line(id)?),
            BatchesCommand::WeighCold { phase: id, text } => Deed::WeighedCold(phase(id)?, self.read_grams(&text)?),
            BatchesCommand::WeighHot { phase: id, text } => self.read_hot(batch, state, phase(id)?, &text)?,
            BatchesCommand::PutBackWater { phase, text } => return self.read_water(batch, state, phase, &text),
            BatchesCommand::NoteTemperature { of: HeldName(held), text } => self.read_temperature(held, &text)?,
            BatchesCommand::StartTimer { step: StepName(step), text } => self.read_timer(step, &text)?,
            BatchesCommand::StopTimer { step: StepName(step) } => Deed::TimerStopped(step),
            BatchesCommand::ResumeTimer { step: StepName(step) } => Deed::TimerResumed(step),
            BatchesCommand::Temper { phase: id, text } if is_empty(&text) => Deed::Closed(Step::Temper(phase(id)?)),
            BatchesCommand::Temper { phase: id, text } => {
                let id = phase(id)?;
                return Ok(vec![Deed::Tempered(id, self.read_grams(&text)?), Deed::Closed(Step::Temper(id))]);
            }
            BatchesCommand::WeighBatch { gross, .. } if is_empty(&gross) => Deed::Closed(Step::TopUp),
            BatchesCommand::WeighBatch { gross, empty } => self.read_batch_mass(batch, state, &gross, &empty)?,
            BatchesCommand::Fill { count, each } => self.read_filling(&count, &each)?,
            BatchesCommand::Say { name, text } => {
                let said = text.trim();
                let known = state.said.get(&name).map_or("", String::as_str);
                if name.is_empty() || name.len() > 60 || said == known {
                    return Err(Refusal::Nothing);
                }
                Deed::Said(name, said.to_owned())
            }
            BatchesCommand::CloseStep { step: StepName(step) } => Deed::Closed(step),
            _ => return Err(Refusal::Nothing),
        };
        Ok(vec![deed])
    }

    pub(crate) fn read_grams(&self, text: &str) -> Read<Grams> {
        Ok(read_mass(text, self.mark(), self.settings.mass_unit, None)?)
    }

    /// What a scale shows becomes what went in: all of it where the scale was set to zero, the difference where it shows the
    /// whole beaker. Nothing typed means what was wanted went in.
    fn read_pour(&self, batch: &Batch, state: &RunState, id: LineId, text: &str) -> Read<Deed> {
        let line = state.line(id).ok_or(Refusal::Nothing)?;
        if text.trim().is_empty() {
            let missing = line.target.checked_sub(line.poured).filter(|missing| !missing.is_zero());
            return missing.map(|missing| Deed::Poured(id, missing)).ok_or(Refusal::Nothing);
        }
        let shown = self.read_grams(text)?;
        let mass = if state.said.get(SCALE_READS).is_some_and(|reads| reads == ALL_IN_BEAKER) {
            let place = batch.plan.formula.place_of(id).ok_or(Refusal::Nothing)?;
            let phase = batch.plan.formula.phases.get(place.phase).ok_or(Refusal::Nothing)?.id;
            let before = state.poured_into(&batch.plan.formula, phase);
            shown.checked_sub(before).ok_or_else(|| {
                Refusal::Sentence("run.less-than-before", says::less_than_before(&self.mass(before), &self.mass(shown)))
            })?
        } else {
            shown
        };
        if mass.is_zero() {
            return Err(Refusal::Sentence("run.nothing-poured", says::nothing_poured().to_owned()));
        }
        Ok(Deed::Poured(id, mass))
    }

    fn read_hot(&self, batch: &Batch, state: &RunState, phase: PhaseId, text: &str) -> Read<Deed> {
        let hot = self.read_grams(text)?;
        if let Some(cold) = state.cold_mass(&batch.plan.formula, phase)
            && hot > cold
        {
            let error = says::heavier_than_before(&self.mass(hot), &self.mass(cold));
            return Err(Refusal::Sentence("evaporation.heavier", error));
        }
        if let Some(empty) = state.beakers.get(&phase).and_then(|beaker| beaker.empty)
            && hot < empty
        {
            let error = says::lighter_than_beaker(&self.mass(hot), &self.mass(empty));
            return Err(Refusal::Sentence("evaporation.lighter-than-beaker", error));
        }
        Ok(Deed::WeighedHot(phase, hot))
    }

    /// Water put back: what is owed where nothing was typed. It closes the step once nothing more is owed.
    fn read_water(&self, batch: &Batch, state: &RunState, phase: Option<PhaseId>, text: &str) -> Read<Vec<Deed>> {
        let owed = match phase {
            Some(phase) => state.water_owed(&batch.plan.formula, phase),
            None => state.water_missing().map(|missing| missing.checked_sub(state.water_added).unwrap_or(Grams::ZERO)),
        };
        let step = phase.map_or(Step::TopUp, Step::Replace);
        let mass = if text.trim().is_empty() { owed.ok_or(Refusal::Nothing)? } else { self.read_grams(text)? };
        let mut deeds = Vec::new();
        if !mass.is_zero() {
            deeds.push(Deed::WaterAdded(phase, mass));
        }
        deeds.push(Deed::Closed(step));
        Ok(deeds)
    }

    fn read_temperature(&self, held: Held, text: &str) -> Read<Deed> {
        const COLDEST: Decimal = Decimal::from_parts(20, 0, 0, true, 0);
        const HOTTEST: Decimal = Decimal::from_parts(150, 0, 0, false, 0);
        let value = read_temperature(text, self.mark(), self.settings.temperature_unit, (COLDEST, HOTTEST))?;
        Celsius::new(value).map(|celsius| Deed::Temperature(held, celsius)).map_err(|_| Refusal::Nothing)
    }

    /// Minutes; blending stops half-way to scrape the walls.
    fn read_timer(&self, step: Step, text: &str) -> Read<Deed> {
        const SHORTEST: Decimal = Decimal::from_parts(1, 0, 0, false, 1);
        let minutes = read_plain(text.trim(), self.mark(), SHORTEST, Decimal::from(LONGEST_TIMER))?;
        let seconds = (minutes * Decimal::from(60)).round().to_u32().ok_or(Refusal::Nothing)?;
        let stops = if step == Step::Blend { vec![seconds / 2] } else { Vec::new() };
        Ok(Deed::TimerStarted(step, seconds, stops))
    }

    fn read_batch_mass(&self, batch: &Batch, state: &RunState, gross: &str, typed: &str) -> Read<Deed> {
        let gross = self.read_grams(gross)?;
        let known = state
            .main_beaker(&batch.plan.formula)
            .and_then(|phase| state.beakers.get(&phase))
            .and_then(|beaker| beaker.empty);
        let empty = match (typed.trim().is_empty(), known) {
            (true, Some(known)) => known,
            (true, None) => Grams::ZERO,
            (false, _) => self.read_grams(typed)?,
        };
        if gross < empty {
            let error = says::lighter_than_beaker(&self.mass(gross), &self.mass(empty));
            return Err(Refusal::Sentence("evaporation.lighter-than-beaker", error));
        }
        Ok(Deed::BatchWeighed(gross, empty))
    }

    fn read_filling(&self, count: &str, each: &str) -> Read<Deed> {
        if count.trim().is_empty() && each.trim().is_empty() {
            return Ok(Deed::Closed(Step::Fill));
        }
        let value = read_plain(count.trim(), self.mark(), Decimal::ONE, Decimal::from(MOST_CONTAINERS))?;
        if !value.is_integer() {
            return Err(NumberError::NotWhole { value }.into());
        }
        let count = value.to_u32().ok_or(Refusal::Nothing)?;
        Ok(Deed::Filled(count, self.read_grams(each)?))
    }

    // ---- the end ------------------------------------------------------------------------------------------------

    /// Finishes the open batch and draws its materials from what there is of them, as one act.
    fn finish_batch(&mut self) -> Answer {
        let Some(record) = self.open_batch() else { return Answer::default() };
        let Some(state) = replay(&record.batch.plan, &record.batch.events) else { return Answer::default() };
        if state.finished_at.is_some() {
            return Answer::default();
        }
        if record.batch.events.len() >= MOST_EVENTS {
            return self.as_notice_without_field(run_is_full());
        }
        let (drawn, mut before, mut after) = self.draw_stock(&record.batch, &state);
        let at = self.around.now();
        let event = Event { at, deed: Deed::Finished(drawn.clone()) };
        let Some((was, is)) = self.changed_batch(|batch| batch.events.push(event)) else { return Answer::default() };
        before.push(was);
        after.push(is);
        self.commit("run.finish", None, self.open, before, after);
        self.keep_unkept();
        self.at_bench.focus = None;
        self.notice("run.finished", says::finished(drawn.len()), true);
        Answer::default()
    }

    /// What a batch takes from stock: as much as was poured and no more than there is.
    fn draw_stock(&self, batch: &Batch, state: &RunState) -> (Vec<(MaterialId, Grams)>, Vec<Slot>, Vec<Slot>) {
        let mut used: LiteMap<MaterialId, Grams> = LiteMap::new();
        for line in batch.plan.formula.lines() {
            let poured = state.line(line.id).map_or(Grams::ZERO, |line| line.poured);
            let sum = used.entry(line.material).or_insert(Grams::ZERO);
            *sum = sum.checked_add(poured).unwrap_or(*sum);
        }
        let (mut drawn, mut before, mut after) = (Vec::new(), Vec::new(), Vec::new());
        for (material, mass) in used.iter().filter(|(_, mass)| !mass.is_zero()) {
            let Some(holding) = self.materials.holding(*material) else { continue };
            let Some(stock) = holding.stock else { continue };
            let taken = (*mass).min(stock);
            let Some(left) = stock.checked_sub(taken) else { continue };
            drawn.push((*material, taken));
            before.push(Slot::Holding(*material, Some(Rc::clone(holding))));
            let held = Holding { stock: Some(left), ..(**holding).clone() };
            after.push(Slot::Holding(*material, Some(Rc::new(held))));
        }
        (drawn, before, after)
    }

    /// Takes back the last thing that still stands. What was drawn from stock goes back.
    fn take_back(&mut self) -> Answer {
        let Some(record) = self.open_batch() else { return Answer::default() };
        let Some(last) = standing(&record.batch.events).last().map(|(_, event)| event.deed.clone()) else {
            return Answer::default();
        };
        if record.batch.events.len() + 1 >= MOST_EVENTS {
            return self.as_notice_without_field(run_is_full());
        }
        let (mut before, mut after) = (Vec::new(), Vec::new());
        if let Deed::Finished(drawn) = &last {
            for (material, mass) in drawn {
                let held = self.materials.holding(*material).map(Rc::clone);
                let mut back = held.as_deref().cloned().unwrap_or_default();
                back.stock = back.stock.unwrap_or(Grams::ZERO).checked_add(*mass);
                before.push(Slot::Holding(*material, held));
                after.push(Slot::Holding(*material, Some(Rc::new(back))));
            }
        }
        let event = Event { at: self.around.now(), deed: Deed::TakenBack };
        let Some((was, is)) = self.changed_batch(|batch| batch.events.push(event)) else { return Answer::default() };
        before.push(was);
        after.push(is);
        self.commit("run.take-back", None, self.open, before, after);
        self.keep_unkept();
        self.at_bench.focus = None;
        Answer::default()
    }
}

/// An entry more than a record of a run could be read with.
fn run_is_full() -> Answer {
    Answer {
        error: Some(says::too_many_deeds(&MOST_EVENTS.to_string())),
        code: Some("run.too-many-deeds"),
        ..Answer::default()
    }
}

/// Whether a run has come to its end.
pub(crate) fn is_finished(events: &[Event]) -> bool {
    standing(events).iter().any(|(_, event)| matches!(event.deed, Deed::Finished(_)))
}
