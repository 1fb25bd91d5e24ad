//! Where a run stands: the replay of its events, and what to make of a pour that missed its mark.

use super::recipe::{PourError, Recipe};
use super::steps::{Step, early_and_late, order_of_phases, steps_of};
use super::titration::PhLog;
use super::{Deed, Event, Held, RunPlan, evaporation, standing};
use crate::amount::Amount;
use crate::decay::ReadingAt;
use crate::formula::{Formula, LineId, PhaseId};
use crate::material::MaterialId;
use crate::quantity::{Celsius, Grams, Percent, Ph};
use litemap::LiteMap;
use rust_decimal::Decimal;
use stillroom_terms::{PhaseKind, WrittenIn};

/// How a line stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LineStatus {
    /// Nothing has gone in yet.
    Waiting,
    /// So much is missing.
    Short(Grams),
    /// What is in is within a step of the scale.
    Done,
    /// So much too much is in.
    Over(Grams),
    /// The maker keeps it as it is, as a deviation.
    Accepted,
    /// It was left out.
    LeftOut,
}

impl LineStatus {
    /// Whether nothing is left to do or to decide.
    #[must_use]
    pub const fn is_settled(self) -> bool {
        matches!(self, Self::Done | Self::Accepted | Self::LeftOut)
    }
}

/// A line of a run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RunLine {
    /// The line of the formula.
    pub line: LineId,
    /// Mass to weigh, rounded to its scale.
    pub target: Grams,
    /// What has gone in.
    pub poured: Grams,
    /// Step of the scale it goes on: what it may be off.
    pub tolerance: Grams,
    /// Position of the scale.
    pub scale: usize,
    /// How it stands.
    pub status: LineStatus,
}

/// A timer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Timer {
    /// Its step.
    pub step: Step,
    /// How long it runs in all, in seconds.
    pub seconds: u32,
    /// Seconds after which it stops for something to be done.
    pub stops: Vec<u32>,
    /// Milliseconds it ran before it was last stopped.
    pub ran: u64,
    /// When it was set going; `None` while it stands.
    pub since: Option<u64>,
}

impl Timer {
    /// Milliseconds of running at which it next stops by itself: at a pause, or at its end.
    #[must_use]
    pub fn next_stop(&self) -> u64 {
        let ends = u64::from(self.seconds) * 1000;
        self.stops
            .iter()
            .map(|stop| u64::from(*stop) * 1000)
            .filter(|stop| *stop > self.ran)
            .min()
            .unwrap_or(ends)
            .min(ends)
    }

    /// Milliseconds it has run at a moment; never past its next stop, whatever happened to the page.
    #[must_use]
    pub fn ran_at(&self, now: u64) -> u64 {
        match self.since {
            Some(since) => (self.ran + now.saturating_sub(since)).min(self.next_stop()),
            None => self.ran,
        }
    }

    /// Whether it has run to its end.
    #[must_use]
    pub fn is_over(&self, now: u64) -> bool {
        self.ran_at(now) >= u64::from(self.seconds) * 1000
    }
}

/// A reading of a thermometer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Thermometer {
    /// When, in milliseconds since 1970.
    pub at: u64,
    /// Where it was held.
    pub held: Held,
    /// What it showed.
    pub celsius: Celsius,
}

/// Water lost and put back in a phase.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Beaker {
    /// The empty beaker.
    pub empty: Option<Grams>,
    /// Beaker and contents before heating, as weighed.
    pub cold: Option<Grams>,
    /// Beaker and contents after heating.
    pub hot: Option<Grams>,
    /// Water put back.
    pub water_added: Option<Grams>,
}

/// Where a run stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RunState {
    /// When it began.
    pub started_at: Option<u64>,
    /// When it was finished.
    pub finished_at: Option<u64>,
    /// Phases the maker put first, in the order they did.
    pub first: Vec<PhaseId>,
    /// The masses it aims at now.
    pub recipe: Recipe,
    /// Every line, in the order of the formula.
    pub lines: Vec<RunLine>,
    /// The beakers by phase.
    pub beakers: LiteMap<PhaseId, Beaker>,
    /// Water put back into the batch.
    pub water_added: Grams,
    /// Every reading of a thermometer.
    pub readings: Vec<Thermometer>,
    /// The timers by step.
    pub timers: LiteMap<Step, Timer>,
    /// What was stirred into cool-down dishes, by phase.
    pub tempered: LiteMap<PhaseId, Grams>,
    /// The batch with its beaker, and that beaker empty, as last weighed.
    pub batch_weighed: Option<(Grams, Grams)>,
    /// The pH of the batch as last measured.
    pub ph: Option<Ph>,
    /// Everything about the pH.
    pub ph_log: PhLog,
    /// Containers filled, and with how much.
    pub filled: Vec<(u32, Grams)>,
    /// What was said, by name.
    pub said: LiteMap<String, String>,
    /// Steps that were closed.
    pub closed: LiteMap<Step, u64>,
    /// What was taken from stock at the end.
    pub drawn: Vec<(MaterialId, Grams)>,
    /// The steps, in order.
    pub steps: Vec<Step>,
    /// What should have been on the scale when the batch was last weighed: the lines that were in it, what went in for its
    /// pH, less the samples.
    pub due_on_the_scale: Decimal,
    /// The lines that were in it then.
    poured_before_weighing: Grams,
}

/// What to make of a pour that missed its mark, worked out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Cure {
    /// Pour what is missing.
    AddMore(Grams),
    /// Bring every line to it: the new batch, and what lines that were weighed already then lack.
    Rescale(Grams, Vec<(LineId, Grams)>),
    /// Let the q.s. line give way: it and its new mass.
    TakeFromRest(LineId, Grams),
    /// Keep it: the percent it becomes if all else is weighed as planned.
    Accept(Percent),
}

/// A cure, or why it is none here.
pub type Offered = Result<Cure, PourError>;

/// Plays a run from its events.
///
/// The same plan and events always make the same state; an event that makes no sense where it stands (of a line that is
/// not there, say) changes nothing. `None` if the plan itself is no plan.
#[must_use]
pub fn replay(plan: &RunPlan, events: &[Event]) -> Option<RunState> {
    let recipe = Recipe::of(&plan.shares()?, plan.asked)?;
    let mut state = RunState {
        started_at: None,
        finished_at: None,
        first: Vec::new(),
        recipe,
        lines: Vec::new(),
        beakers: LiteMap::new(),
        water_added: Grams::ZERO,
        readings: Vec::new(),
        timers: LiteMap::new(),
        tempered: LiteMap::new(),
        batch_weighed: None,
        ph: None,
        ph_log: PhLog::aiming_at(plan.formula.target_ph),
        due_on_the_scale: Decimal::ZERO,
        poured_before_weighing: Grams::ZERO,
        filled: Vec::new(),
        said: LiteMap::new(),
        closed: LiteMap::new(),
        drawn: Vec::new(),
        steps: Vec::new(),
    };
    state.aim(plan)?;
    let standing = standing(events);
    for (_, event) in standing {
        state.play(plan, event);
    }
    state.steps = steps_of(&plan.formula, &state.first);
    Some(state)
}

impl RunState {
    /// Sets the targets by the recipe. What was decided and poured stays.
    fn aim(&mut self, plan: &RunPlan) -> Option<()> {
        let sheet = self.recipe.lay_out(&plan.scales)?;
        let mut lines = Vec::with_capacity(sheet.lines.len());
        for weighed in sheet.lines {
            let before = self.lines.iter().find(|line| line.line == weighed.line);
            let mut line = RunLine {
                line: weighed.line,
                target: weighed.target,
                poured: before.map_or(Grams::ZERO, |line| line.poured),
                tolerance: plan.scales.as_slice().get(weighed.scale)?.step,
                scale: weighed.scale,
                status: LineStatus::Waiting,
            };
            let decided = before
                .map(|line| line.status)
                .filter(|status| matches!(status, LineStatus::Accepted | LineStatus::LeftOut));
            line.status = decided.unwrap_or_else(|| line.judge());
            lines.push(line);
        }
        self.lines = lines;
        Some(())
    }

    /// The line of that number.
    #[must_use]
    pub fn line(&self, id: LineId) -> Option<&RunLine> {
        self.lines.iter().find(|line| line.line == id)
    }

    fn line_mut(&mut self, id: LineId) -> Option<&mut RunLine> {
        self.lines.iter_mut().find(|line| line.line == id)
    }

    fn play(&mut self, plan: &RunPlan, event: &Event) {
        match &event.deed {
            Deed::Started => {
                let _ = self.started_at.get_or_insert(event.at);
            }
            Deed::PhaseFirst(phase) => {
                self.first.retain(|each| each != phase);
                self.first.push(*phase);
            }
            Deed::EmptyBeaker(phase, mass) => self.beaker(*phase).empty = Some(*mass),
            Deed::WeighedCold(phase, mass) => self.beaker(*phase).cold = Some(*mass),
            Deed::WeighedHot(phase, mass) => {
                let beaker = self.beaker(*phase);
                beaker.hot = Some(*mass);
                // Weighed anew: what was put back before is in that weight.
                beaker.water_added = None;
            }
            Deed::WaterAdded(Some(phase), mass) => {
                let beaker = self.beaker(*phase);
                beaker.water_added = beaker.water_added.unwrap_or(Grams::ZERO).checked_add(*mass);
            }
            Deed::WaterAdded(None, mass) => {
                self.water_added = self.water_added.checked_add(*mass).unwrap_or(self.water_added);
            }
            Deed::Poured(..) | Deed::LeftOut(_) | Deed::Accepted(_) | Deed::Rescaled(_) | Deed::TakenFromRest(_) => {
                self.play_pour(plan, &event.deed);
            }
            Deed::Temperature(held, celsius) => {
                self.readings.push(Thermometer { at: event.at, held: *held, celsius: *celsius });
            }
            Deed::TimerStarted(step, seconds, stops) => {
                let timer =
                    Timer { step: *step, seconds: *seconds, stops: stops.clone(), ran: 0, since: Some(event.at) };
                self.timers.insert(*step, timer);
            }
            Deed::TimerStopped(step) => {
                if let Some(timer) = self.timers.get_mut(step) {
                    timer.ran = timer.ran_at(event.at);
                    timer.since = None;
                }
            }
            Deed::TimerResumed(step) => {
                if let Some(timer) = self.timers.get_mut(step) {
                    timer.ran = timer.ran_at(event.at);
                    timer.since = Some(event.at);
                }
            }
            Deed::Tempered(phase, mass) => {
                self.tempered.insert(*phase, *mass);
            }
            Deed::BatchWeighed(gross, empty) => {
                self.batch_weighed = Some((*gross, *empty));
                self.poured_before_weighing = self.poured_into_batch(&plan.formula);
                self.due_on_the_scale =
                    self.poured_before_weighing.value() + self.ph_log.corrected().value() - self.ph_log.taken.value();
                // What was put back before is in that weight.
                self.water_added = Grams::ZERO;
            }
            Deed::PhMeasured(ph) => {
                self.ph = Some(*ph);
                self.ph_log.read_batch(event.at, *ph);
            }
            Deed::Ph(deed) => {
                self.ph_log.play(event.at, deed);
                self.ph = self.ph_log.last_of_batch().map(|reading| reading.ph);
            }
            Deed::Filled(count, each) => self.filled.push((*count, *each)),
            Deed::Said(name, text) => {
                self.said.insert(name.clone(), text.clone());
            }
            Deed::Closed(step) => {
                self.closed.insert(*step, event.at);
            }
            Deed::Finished(drawn) => {
                self.finished_at = Some(event.at);
                self.drawn.clone_from(drawn);
            }
            // Fell out before.
            Deed::TakenBack => {}
        }
    }

    fn play_pour(&mut self, plan: &RunPlan, deed: &Deed) {
        match *deed {
            Deed::Poured(id, mass) => {
                if let Some(line) = self.line_mut(id)
                    && let Some(poured) = line.poured.checked_add(mass)
                {
                    line.poured = poured;
                    line.status = line.judge();
                }
            }
            Deed::LeftOut(id) => {
                if let Some(line) = self.line_mut(id) {
                    line.status = LineStatus::LeftOut;
                }
            }
            Deed::Accepted(id) => {
                if let Some(line) = self.line_mut(id) {
                    line.status = LineStatus::Accepted;
                }
            }
            Deed::Rescaled(id) => {
                if let Some(recipe) = self.line(id).and_then(|line| self.recipe.rescale(id, line.poured).ok()) {
                    self.recipe = recipe;
                    let _ = self.aim(plan);
                }
            }
            Deed::TakenFromRest(id) => {
                if let Some(recipe) = self.line(id).and_then(|line| self.recipe.take_from_rest(id, line.poured).ok()) {
                    self.recipe = recipe;
                    let _ = self.aim(plan);
                }
            }
            _ => {}
        }
    }

    fn beaker(&mut self, phase: PhaseId) -> &mut Beaker {
        self.beakers.entry(phase).or_default()
    }

    /// Whether a step is done with.
    #[must_use]
    pub fn is_done(&self, step: Step) -> bool {
        let closed = self.closed.contains_key(&step);
        match step {
            Step::Prepare => self.started_at.is_some(),
            Step::Weigh(line) => self.line(line).is_some_and(|line| line.status.is_settled()),
            Step::Beaker(phase) => closed || self.beakers.get(&phase).is_some_and(|beaker| beaker.empty.is_some()),
            Step::Finish => self.finished_at.is_some(),
            Step::Ph => closed && !self.ph_log.asks_for_an_answer(),
            _ => closed,
        }
    }

    /// The first step that is not done with; the last one when all are.
    #[must_use]
    pub fn current(&self) -> Step {
        self.steps.iter().copied().find(|step| !self.is_done(*step)).unwrap_or(Step::Finish)
    }

    /// What a pour can be answered with. Empty while nothing has gone in, and once it is on its mark.
    #[must_use]
    pub fn cures(&self, id: LineId) -> Vec<Offered> {
        let Some(line) = self.line(id) else { return Vec::new() };
        let mut cures = Vec::new();
        match line.status {
            LineStatus::Short(missing) if !line.poured.is_zero() => cures.push(Ok(Cure::AddMore(missing))),
            LineStatus::Over(_) => {}
            _ => return cures,
        }
        cures.push(self.offer_rescale(line));
        cures.push(self.offer_rest(line));
        cures.push(self.offer_accept(line));
        cures
    }

    fn offer_rescale(&self, line: &RunLine) -> Offered {
        let recipe = self.recipe.rescale(line.line, line.poured)?;
        let mut more = Vec::new();
        for other in self.lines.iter().filter(|other| other.line != line.line && !other.poured.is_zero()) {
            let wanted = recipe.mass_of(other.line).ok_or(PourError::TooLarge)?;
            if let Some(lacking) = wanted.checked_sub(other.poured) {
                if lacking >= other.tolerance {
                    more.push((other.line, lacking));
                }
            } else if other.poured.value() - wanted.value() > other.tolerance.value() {
                return Err(PourError::OtherTooMuch { line: other.line });
            }
        }
        Ok(Cure::Rescale(recipe.batch().ok_or(PourError::TooLarge)?, more))
    }

    fn offer_rest(&self, line: &RunLine) -> Offered {
        let recipe = self.recipe.take_from_rest(line.line, line.poured)?;
        let rest = recipe.rest().and_then(|rest| self.line(rest)).ok_or(PourError::NoRest)?;
        let wanted = recipe.mass_of(rest.line).ok_or(PourError::TooLarge)?;
        if rest.poured.value() > wanted.value() + rest.tolerance.value() {
            return Err(PourError::RestIsPoured);
        }
        Ok(Cure::TakeFromRest(rest.line, wanted))
    }

    fn offer_accept(&self, line: &RunLine) -> Offered {
        let batch = self.recipe.batch().ok_or(PourError::TooLarge)?;
        let planned = self.recipe.mass_of(line.line).ok_or(PourError::NoSuchLine)?;
        let whole = batch.checked_add(line.poured).and_then(|sum| sum.checked_sub(planned));
        let percent = whole.and_then(|whole| Percent::from_share(line.poured, whole));
        percent.map(Cure::Accept).ok_or(PourError::TooLarge)
    }

    /// What has gone into the lines of a phase.
    #[must_use]
    pub fn poured_into(&self, formula: &Formula, phase: PhaseId) -> Grams {
        let lines = formula.phases.iter().filter(|each| each.id == phase).flat_map(|phase| &phase.lines);
        lines
            .filter_map(|line| self.line(line.id))
            .fold(Grams::ZERO, |sum, line| sum.checked_add(line.poured).unwrap_or(sum))
    }

    /// What has gone in of all lines.
    #[must_use]
    pub fn poured(&self) -> Grams {
        self.lines.iter().fold(Grams::ZERO, |sum, line| sum.checked_add(line.poured).unwrap_or(sum))
    }

    /// Beaker and contents before heating: as weighed, or the empty beaker and all that went in.
    #[must_use]
    pub fn cold_mass(&self, formula: &Formula, phase: PhaseId) -> Option<Grams> {
        let beaker = self.beakers.get(&phase)?;
        beaker.cold.or_else(|| beaker.empty?.checked_add(self.poured_into(formula, phase)))
    }

    /// Water that a phase lost while it was heated; `None` if it was not weighed before and after.
    ///
    /// # Errors
    /// `evaporation.heavier`, `evaporation.lighter-than-beaker`.
    #[must_use]
    pub fn loss_of(&self, formula: &Formula, phase: PhaseId) -> Option<Result<Grams, evaporation::EvaporationError>> {
        let beaker = self.beakers.get(&phase)?;
        let (cold, hot) = (self.cold_mass(formula, phase)?, beaker.hot?);
        if beaker.empty.is_some_and(|empty| hot < empty) {
            return Some(Err(evaporation::EvaporationError::LighterThanBeaker));
        }
        Some(evaporation::loss_between(cold, hot))
    }

    /// Water still to be put back into a phase.
    #[must_use]
    pub fn water_owed(&self, formula: &Formula, phase: PhaseId) -> Option<Grams> {
        let loss = self.loss_of(formula, phase)?.ok()?;
        let added = self.beakers.get(&phase).and_then(|beaker| beaker.water_added).unwrap_or(Grams::ZERO);
        Some(loss.checked_sub(added).unwrap_or(Grams::ZERO))
    }

    /// The batch as last weighed, without its beaker.
    #[must_use]
    pub fn batch_mass(&self) -> Option<Grams> {
        let (gross, empty) = self.batch_weighed?;
        gross.checked_sub(empty)
    }

    /// Water missing from the batch as last weighed: all that was in it, less what is there. What stuck to walls and
    /// tools is missing too. `None` if it was not weighed; nothing if it weighs more than was poured.
    #[must_use]
    pub fn water_missing(&self) -> Option<Grams> {
        let missing = self.due_on_the_scale - self.batch_mass()?.value();
        Some(Grams::new(missing).unwrap_or(Grams::ZERO))
    }

    /// What has gone into the batch itself: a cool-down phase stands in its dish until it is added.
    fn poured_into_batch(&self, formula: &Formula) -> Grams {
        let (early, late) = early_and_late(formula, &self.first);
        let added = late.into_iter().filter(|phase| self.closed.contains_key(&Step::Add(phase.id)));
        early
            .into_iter()
            .chain(added)
            .fold(Grams::ZERO, |sum, phase| sum.checked_add(self.poured_into(formula, phase.id)).unwrap_or(sum))
    }

    /// What there is of the batch, as far as it is known: as last weighed with the water and the lines put in since, or all
    /// that was poured.
    #[must_use]
    pub fn batch_there(&self) -> Grams {
        let since = self.poured().checked_sub(self.poured_before_weighing).unwrap_or(Grams::ZERO);
        let weighed = self.batch_mass().and_then(|mass| mass.checked_add(self.water_added)?.checked_add(since));
        weighed.unwrap_or_else(|| self.poured())
    }

    /// Readings of the batch in minutes since the first one that is none before it fell: what a cooling curve is fitted to.
    /// The second number is the moment of that first reading.
    #[must_use]
    pub fn cooling_readings(&self) -> (Vec<ReadingAt>, u64) {
        let of_batch: Vec<&Thermometer> = self.readings.iter().filter(|each| each.held == Held::Batch).collect();
        let Some(first) = of_batch.first() else { return (Vec::new(), 0) };
        #[expect(clippy::cast_precision_loss, reason = "a run lasts hours, not ages")]
        let minutes = |at: u64| at.saturating_sub(first.at) as f64 / 60_000.0;
        let readings = of_batch
            .iter()
            .map(|each| ReadingAt { time: minutes(each.at), value: each.celsius.to_physics() })
            .collect();
        (readings, first.at)
    }

    /// The last reading of a thermometer held somewhere.
    #[must_use]
    pub fn last_reading(&self, held: Held) -> Option<Celsius> {
        self.readings.iter().rev().find(|each| each.held == held).map(|each| each.celsius)
    }

    /// What went into containers.
    #[must_use]
    pub fn filled_mass(&self) -> Option<Grams> {
        self.filled.iter().try_fold(Grams::ZERO, |sum, (count, each)| {
            let mass = each.value().checked_mul(Decimal::from(*count))?;
            sum.checked_add(Grams::new(mass).ok()?)
        })
    }

    /// Net water put into the batch beyond what lines brought: negative where more was lost than put back, as far as it was
    /// weighed. A batch weighed at the end knows best; before that, the beakers do.
    #[must_use]
    pub fn net_water(&self, formula: &Formula) -> Decimal {
        if let Some(mass) = self.batch_mass() {
            return mass.value() + self.water_added.value() - self.due_on_the_scale;
        }
        let of_phases = formula.phases.iter().map(|phase| {
            let added = self.beakers.get(&phase.id).and_then(|beaker| beaker.water_added).unwrap_or(Grams::ZERO);
            let lost = self.loss_of(formula, phase.id).and_then(Result::ok).unwrap_or(Grams::ZERO);
            added.value() - lost.value()
        });
        of_phases.sum::<Decimal>() + self.water_added.value()
    }

    /// The formula of what is really in the beaker, written in grams: what was poured, and the water that went or came on
    /// top. Lines nothing went into fall out.
    ///
    /// `is_water` says which materials are water. `None` if nothing is in, or more water was lost than such lines hold.
    #[must_use]
    pub fn as_made(
        &self,
        formula: &Formula,
        water: MaterialId,
        is_water: impl Fn(MaterialId) -> bool,
    ) -> Option<Formula> {
        let mut made = formula.clone();
        made.written_in = WrittenIn::Grams;
        for phase in &mut made.phases {
            phase.lines.retain_mut(|line| {
                let poured = self.line(line.id).map_or(Grams::ZERO, |line| line.poured);
                line.amount = Amount::Grams(poured);
                !poured.is_zero()
            });
        }
        let first = made.phases.iter().find(|phase| !phase.lines.is_empty()).map(|phase| phase.id)?;
        let mut net = self.net_water(formula);
        for correction in &self.ph_log.corrections {
            let of_material = correction.titrant.strength.of(correction.mass)?;
            net += correction.mass.value() - of_material.value();
            made.add_line(first, correction.titrant.material, Amount::Grams(of_material))?;
        }
        if net > Decimal::ZERO {
            let phase = made.phases.iter().find(|phase| !phase.lines.is_empty()).map(|phase| phase.id)?;
            made.add_line(phase, water, Amount::Grams(Grams::new(net).ok()?));
        } else {
            // Of several waters the largest gives way first.
            let mut waters: Vec<(LineId, Decimal)> = made
                .lines()
                .filter(|line| is_water(line.material))
                .filter_map(|line| match line.amount {
                    Amount::Grams(mass) => Some((line.id, mass.value())),
                    Amount::Percent(_) | Amount::QuantumSatis => None,
                })
                .collect();
            waters.sort_by_key(|(_, mass)| core::cmp::Reverse(*mass));
            for (id, mass) in waters {
                let taken = mass.min(-net);
                net += taken;
                if let Some(line) = made.line_mut(id) {
                    line.amount = Amount::Grams(Grams::new(mass - taken).ok()?);
                }
            }
            if net < Decimal::ZERO {
                return None;
            }
        }
        Some(made)
    }

    /// The beaker the batch ends in: that of the phase the others are poured into.
    #[must_use]
    pub fn main_beaker(&self, formula: &Formula) -> Option<PhaseId> {
        let phases = order_of_phases(formula, &self.first);
        let water = phases.iter().find(|phase| phase.kind == PhaseKind::HeatedWater);
        water.or(phases.first()).map(|phase| phase.id)
    }
}

impl RunLine {
    /// How the line stands by its masses alone.
    fn judge(&self) -> LineStatus {
        if self.poured.is_zero() && !self.target.is_zero() {
            return LineStatus::Waiting;
        }
        let difference = self.poured.value() - self.target.value();
        let size = Grams::new(difference.abs()).unwrap_or(Grams::ZERO);
        if size <= self.tolerance {
            LineStatus::Done
        } else if difference > Decimal::ZERO {
            LineStatus::Over(size)
        } else {
            LineStatus::Short(size)
        }
    }

    /// How far what was poured is from the target, in percent of it; `None` for a target of nothing.
    #[must_use]
    pub fn deviation(&self) -> Option<Percent> {
        let difference = self.poured.value() - self.target.value();
        let share = difference.checked_mul(Decimal::ONE_HUNDRED)?.checked_div(self.target.value())?;
        Percent::new(share.round_dp(4)).ok()
    }
}

#[cfg(test)]
mod tests;
