//! What the page can ask of the batches: beginning one, what is weighed and done, the journal.

use crate::contract::commands::commands;
use crate::session::limits::{LONGEST_NAME, LONGEST_SAID, LONGEST_TEXT};
use serde::{Deserialize, Serialize};
use stillroom_core::run::Held;
use stillroom_core::run::steps::Step;
use stillroom_core::{FormulaId, LineId, PhaseId};
use stillroom_exchange::batch::BatchId;

commands! {
    /// What the page can ask of the batches. Text fields carry what was typed, as it was typed; where nothing was typed,
    /// what was planned is meant. A card hands out the command of each of its fields and choices; the page puts what was typed
    /// into it and sends it back.
    pub enum BatchesCommand;

    /// Look at the batches, or away from them: they are worked out only while somebody looks.
    "look-at-batches" LookAtBatches {
        /// Whether the page shows them.
        looking: bool as "boolean",
    },
    /// Begin a batch.
    "begin-batch" BeginBatch {
        /// Of which formula; of the open one where none is named.
        formula: Option<FormulaId> as "string | undefined",
    },
    /// Open a batch.
    "open-batch" OpenBatch {
        /// Which.
        batch: BatchId as "string",
    },
    /// Close the open batch.
    "close-batch" CloseBatch {},
    /// Delete a batch with its journal.
    "delete-batch" DeleteBatch {
        /// Which.
        batch: BatchId as "string",
    },
    /// Give the batch another number.
    "set-lot" SetLot {
        /// The number.
        text: String as "string",
    },
    /// Look at a step other than the next one.
    "look-at-step" LookAtStep {
        /// Which; the next one where none is named.
        step: Option<StepName> as "string | undefined",
    },
    /// Begin weighing.
    "start-run" StartRun {},
    /// Say which heated phase is weighed first.
    "begin-with-phase" BeginWithPhase {
        /// Which.
        phase: PhaseId as "number",
    },
    /// Say what the empty beaker of a phase weighs.
    "weigh-empty-beaker" WeighEmptyBeaker {
        /// Of which phase.
        phase: PhaseId as "number",
        /// What the scale showed; empty where it was not weighed.
        text: String as "string",
    },
    /// Note what was weighed of a line.
    "pour" Pour {
        /// Which line.
        line: LineId as "number",
        /// What the scale showed.
        text: String as "string",
    },
    /// Leave a line out.
    "leave-out" LeaveOut {
        /// Which line.
        line: LineId as "number",
    },
    /// Leave a missed pour as it is.
    "accept-pour" AcceptPour {
        /// Of which line.
        line: LineId as "number",
    },
    /// Make the batch as large as a missed pour asks for.
    "rescale-to-pour" RescaleToPour {
        /// Of which line.
        line: LineId as "number",
    },
    /// Take a missed pour from the q.s. line.
    "take-from-rest" TakeFromRest {
        /// Of which line.
        line: LineId as "number",
    },
    /// Note the beaker of a phase before it is heated.
    "weigh-cold" WeighCold {
        /// Of which phase.
        phase: PhaseId as "number",
        /// What the scale showed.
        text: String as "string",
    },
    /// Note the beaker of a phase after it was heated.
    "weigh-hot" WeighHot {
        /// Of which phase.
        phase: PhaseId as "number",
        /// What the scale showed.
        text: String as "string",
    },
    /// Note water that was put back.
    "put-back-water" PutBackWater {
        /// Into which phase; into the batch where none is named.
        phase: Option<PhaseId> as "number | undefined",
        /// How much.
        text: String as "string",
    },
    /// Note a temperature.
    "note-temperature" NoteTemperature {
        /// Of a phase by its number, of the `batch` or of the `room`.
        of: HeldName as "string",
        /// In °C.
        text: String as "string",
    },
    /// Start the timer of a step.
    "start-timer" StartTimer {
        /// Which step.
        step: StepName as "string",
        /// Minutes.
        text: String as "string",
    },
    /// Stop it.
    "stop-timer" StopTimer {
        /// Which step.
        step: StepName as "string",
    },
    /// Let it go on.
    "resume-timer" ResumeTimer {
        /// Which step.
        step: StepName as "string",
    },
    /// Note what was taken to temper a phase.
    "temper" Temper {
        /// Which phase.
        phase: PhaseId as "number",
        /// How much.
        text: String as "string",
    },
    /// Weigh the batch.
    "weigh-batch" WeighBatch {
        /// With its beaker.
        gross: String as "string",
        /// The empty beaker.
        empty: String as "string",
    },
    /// Note the pH.
    "note-ph" NotePh {
        /// What was read; empty where it was not measured.
        text: String as "string",
    },
    /// Say what is meant to be added for the pH: `material`, `strength`, `drop-mass`, or the `water` of the next sample.
    "plan-titration" PlanTitration {
        /// What of it.
        name: String as "string",
        /// As typed or chosen.
        text: String as "string",
    },
    /// Weigh a sample out of the batch, to titrate.
    "take-ph-sample" TakePhSample {
        /// What it weighs.
        text: String as "string",
    },
    /// Drops of the solution went into the sample.
    "add-drops" AddDrops {
        /// How many.
        text: String as "string",
    },
    /// So much of the solution went into the sample.
    "add-to-sample" AddToSample {
        /// What the scale showed.
        text: String as "string",
    },
    /// Note the pH of the sample.
    "read-sample" ReadSample {
        /// What was read.
        text: String as "string",
    },
    /// So much of the solution went into the batch; what was worked out where nothing was typed.
    "correct-ph" CorrectPh {
        /// What the scale showed.
        text: String as "string",
    },
    /// Leave the pH as it was read, as a deviation.
    "accept-ph" AcceptPh {},
    /// Note containers that were filled.
    "fill" Fill {
        /// How many.
        count: String as "string",
        /// With how much each.
        each: String as "string",
    },
    /// Note something in words.
    "say" Say {
        /// Under which name.
        name: String as "string",
        /// What.
        text: String as "string",
    },
    /// Close a step.
    "close-step" CloseStep {
        /// Which.
        step: StepName as "string",
    },
    /// Finish the batch and draw its materials from what there is of them.
    "finish-run" FinishRun {},
    /// Take back the last thing that was noted.
    "take-back" TakeBack {},
    /// Begin a day of the journal.
    "begin-entry" BeginEntry {
        /// Which day; today where nothing was typed.
        text: String as "string",
    },
    /// Note something on a day.
    "note-entry" NoteEntry {
        /// Position of the day.
        entry: usize as "number",
        /// What is noted.
        name: String as "string",
        /// As typed.
        text: String as "string",
    },
    /// Put a photo beside a day.
    "add-photo" AddPhoto {
        /// Position of the day.
        entry: usize as "number",
        /// Name of the photo.
        name: String as "string",
    },
    /// Take a day out of the journal.
    "remove-entry" RemoveEntry {
        /// Position of the day.
        entry: usize as "number",
    },
}

/// A step as the page names it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct StepName(pub Step);

impl TryFrom<String> for StepName {
    type Error = &'static str;

    fn try_from(name: String) -> Result<Self, Self::Error> {
        name.parse().map(Self).map_err(|_| "no such step")
    }
}

impl From<StepName> for String {
    fn from(StepName(step): StepName) -> Self {
        step.to_string()
    }
}

/// What a temperature is read in, as the page names it: `batch`, `room`, or a phase by its number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct HeldName(pub Held);

impl TryFrom<String> for HeldName {
    type Error = &'static str;

    fn try_from(name: String) -> Result<Self, Self::Error> {
        Ok(Self(match name.as_str() {
            "batch" => Held::Batch,
            "room" => Held::Room,
            phase => Held::Phase(PhaseId(phase.parse().map_err(|_| "nothing a thermometer stands in")?)),
        }))
    }
}

impl From<HeldName> for String {
    fn from(HeldName(held): HeldName) -> Self {
        match held {
            Held::Batch => "batch".to_owned(),
            Held::Room => "room".to_owned(),
            Held::Phase(phase) => phase.0.to_string(),
        }
    }
}

impl BatchesCommand {
    /// Name of the field it comes from; what is wrong with its text comes back under this name.
    pub(crate) fn field(&self) -> Option<String> {
        Some(match self {
            Self::SetLot { .. } => "run.lot".to_owned(),
            Self::WeighEmptyBeaker { phase, .. } => format!("run.empty-beaker:{}", phase.0),
            Self::Pour { line, .. } => format!("run.pour:{}", line.0),
            Self::WeighCold { phase, .. } => format!("run.cold:{}", phase.0),
            Self::WeighHot { phase, .. } => format!("run.hot:{}", phase.0),
            Self::PutBackWater { phase: Some(phase), .. } => format!("run.water:{}", phase.0),
            Self::PutBackWater { phase: None, .. } => "run.water:batch".to_owned(),
            Self::NoteTemperature { of, .. } => format!("run.temperature:{}", String::from(*of)),
            Self::StartTimer { step, .. } => format!("run.timer:{}", String::from(*step)),
            Self::Temper { phase, .. } => format!("run.temper:{}", phase.0),
            Self::WeighBatch { .. } => "run.weigh-batch:".to_owned(),
            Self::NotePh { .. } => "run.ph:".to_owned(),
            Self::PlanTitration { name, .. } => format!("run.titrate:{name}"),
            Self::TakePhSample { .. } => "run.titrate:sample".to_owned(),
            Self::AddDrops { .. } => "run.titrate:drops".to_owned(),
            Self::AddToSample { .. } => "run.titrate:grams".to_owned(),
            Self::ReadSample { .. } => "run.titrate:reading".to_owned(),
            Self::CorrectPh { .. } => "run.titrate:correct".to_owned(),
            Self::Fill { .. } => "run.fill:".to_owned(),
            Self::Say { name, .. } => format!("run.say:{name}"),
            Self::BeginEntry { .. } => "run.entry-new".to_owned(),
            Self::NoteEntry { entry, name, .. } => format!("run.entry:{entry}:{name}"),
            Self::AddPhoto { entry, .. } => format!("run.entry-photo:{entry}"),
            _ => return None,
        })
    }

    /// Whether it is about the pH of the batch.
    pub(crate) const fn is_about_ph(&self) -> bool {
        matches!(
            self,
            Self::NotePh { .. }
                | Self::TakePhSample { .. }
                | Self::AddDrops { .. }
                | Self::AddToSample { .. }
                | Self::ReadSample { .. }
                | Self::CorrectPh { .. }
                | Self::AcceptPh {}
        )
    }

    /// Its text and how long that may be. Numbers are judged where they are read.
    pub(crate) fn text(&self) -> Option<(&str, usize)> {
        match self {
            Self::SetLot { text } | Self::PlanTitration { text, .. } => Some((text, LONGEST_NAME)),
            Self::Say { text, .. } => Some((text, LONGEST_SAID)),
            Self::NoteEntry { text, .. } => Some((text, LONGEST_TEXT)),
            _ => None,
        }
    }
}
