//! A run at the bench: a plan, and what was done, as a log that is only ever added to.
//!
//! Everything a run knows follows from its plan and its events: [`replay`](state::replay) them and it stands where it
//! stood, whatever happened to the phone in between. Times come from outside; nothing here reads a clock.

pub mod evaporation;
pub mod filling;
pub mod heat;
pub mod recipe;
pub mod state;
pub mod steps;
pub mod titration;

use crate::balance::LineShare;
use crate::formula::{Formula, LineId, PhaseId};
use crate::material::MaterialId;
use crate::quantity::{Celsius, Grams, Ph};
use crate::weigh_sheet::Scales;
use steps::Step;
use titration::PhDeed;

/// Most events of one run: a long day at the bench has a few hundred.
pub const MOST_EVENTS: usize = 5_000;
/// Longest text that is said about a run, in bytes.
pub const LONGEST_TEXT: usize = 4_000;

/// What a run sets out to make.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RunPlan {
    /// The formula as it stood when the run began.
    pub formula: Formula,
    /// The batch that was asked for.
    pub asked: Grams,
    /// The scales on the bench.
    pub scales: Scales,
}

/// Why there is nothing to run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum RunError {
    /// The amounts do not make a formula.
    #[error("the amounts do not make 100 %")]
    UnsoundFormula,
    /// No batch is asked for, or one too large to weigh.
    #[error("no batch")]
    NoBatch,
}

impl RunError {
    /// Every code of this error.
    pub const CODES: [&'static str; 2] = ["run.unsound-formula", "run.no-batch"];

    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::UnsoundFormula => "run.unsound-formula",
            Self::NoBatch => "run.no-batch",
        }
    }
}

impl RunPlan {
    /// A plan, if there is something to weigh.
    ///
    /// # Errors
    /// `run.unsound-formula`, `run.no-batch`.
    pub fn new(formula: Formula, asked: Grams, scales: Scales) -> Result<Self, RunError> {
        let plan = Self { formula, asked, scales };
        let shares = plan.shares().ok_or(RunError::UnsoundFormula)?;
        let recipe = recipe::Recipe::of(&shares, asked).ok_or(RunError::NoBatch)?;
        if asked.is_zero() || recipe.lay_out(&plan.scales).is_none() {
            return Err(RunError::NoBatch);
        }
        Ok(plan)
    }

    /// The share of each line; `None` where the amounts do not make a formula.
    #[must_use]
    pub fn shares(&self) -> Option<Vec<LineShare>> {
        let balance = self.formula.balance();
        balance.is_sound().then_some(balance.shares)
    }
}

/// Where a thermometer is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Held {
    /// Into a phase that is being heated.
    Phase(PhaseId),
    /// Into the batch.
    Batch,
    /// Into the air.
    Room,
}

/// What was done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Deed {
    /// The bench is ready and the run begins.
    Started,
    /// A phase is weighed before the others.
    PhaseFirst(PhaseId),
    /// An empty beaker was weighed.
    EmptyBeaker(PhaseId, Grams),
    /// So much of a line went in, on top of what had gone in before.
    Poured(LineId, Grams),
    /// A line is left out.
    LeftOut(LineId),
    /// What was poured stays as it is, as a deviation.
    Accepted(LineId),
    /// Every line is brought to what was poured of this one.
    Rescaled(LineId),
    /// The q.s. line gives way to what was poured of this one.
    TakenFromRest(LineId),
    /// A beaker with its contents was weighed before it was heated.
    WeighedCold(PhaseId, Grams),
    /// A beaker with its contents was weighed after it was heated.
    WeighedHot(PhaseId, Grams),
    /// Water was put back into a phase, or into the batch.
    WaterAdded(Option<PhaseId>, Grams),
    /// A thermometer was read.
    Temperature(Held, Celsius),
    /// A timer was started: how many seconds, and after which it stops for something to be done.
    TimerStarted(Step, u32, Vec<u32>),
    /// A timer was stopped.
    TimerStopped(Step),
    /// A timer goes on.
    TimerResumed(Step),
    /// So much of the batch was stirred into a cool-down dish before all of it went back.
    Tempered(PhaseId, Grams),
    /// The batch was weighed with the beaker it is in, and what that weighs empty.
    BatchWeighed(Grams, Grams),
    /// The pH was measured.
    PhMeasured(Ph),
    /// Something was done about the pH.
    Ph(PhDeed),
    /// So many containers were filled, each with so much.
    Filled(u32, Grams),
    /// Something is noted under a name.
    Said(String, String),
    /// A step is done with, whether or not anything came of it.
    Closed(Step),
    /// All is done, and so much was taken from what there is of materials.
    Finished(Vec<(MaterialId, Grams)>),
    /// The last thing that still stood is taken back.
    TakenBack,
}

/// What was done, and when.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Event {
    /// When, in milliseconds since 1970.
    pub at: u64,
    /// What.
    pub deed: Deed,
}

/// The events that still stand, with their place in the log: one that takes back falls out together with what it takes
/// back.
#[must_use]
pub fn standing(events: &[Event]) -> Vec<(usize, &Event)> {
    let mut standing = Vec::with_capacity(events.len());
    for each in events.iter().enumerate() {
        if each.1.deed == Deed::TakenBack {
            standing.pop();
        } else {
            standing.push(each);
        }
    }
    standing
}
