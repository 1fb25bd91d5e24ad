//! Short words for acts at the bench, shared by tests.

use stillroom_core::{LineId, PhaseId};
use stillroom_exchange::batch::BatchId;
use stillroom_web::rooms::batches::command::{BatchesCommand as Act, HeldName, StepName};

/// The act of a word on a line, phase, step, batch or day; `None` where there is no such thing.
pub fn at_bench(word: &str, on: &str, text: &str) -> Option<Act> {
    let line = || on.parse().map(LineId).ok();
    let phase = || on.parse().map(PhaseId).ok();
    let batch = || BatchId::try_from(on.to_owned()).ok();
    let step = || StepName::try_from(on.to_owned()).ok();
    let text = text.to_owned();
    let (first, second) = text.split_once('\n').unwrap_or((&text, ""));
    let (first, second) = (first.to_owned(), second.to_owned());
    Some(match word {
        "look" => Act::LookAtBatches { looking: true },
        "look-away" => Act::LookAtBatches { looking: false },
        "new" => Act::BeginBatch { formula: on.to_owned().try_into().ok() },
        "open" => Act::OpenBatch { batch: batch()? },
        "close" => Act::CloseBatch {},
        "delete" => Act::DeleteBatch { batch: batch()? },
        "lot" => Act::SetLot { text },
        "focus" => Act::LookAtStep { step: step() },
        "start" => Act::StartRun {},
        "first" => Act::BeginWithPhase { phase: phase()? },
        "empty-beaker" => Act::WeighEmptyBeaker { phase: phase()?, text },
        "pour" => Act::Pour { line: line()?, text },
        "leave-out" => Act::LeaveOut { line: line()? },
        "accept" => Act::AcceptPour { line: line()? },
        "rescale" => Act::RescaleToPour { line: line()? },
        "take-from-rest" => Act::TakeFromRest { line: line()? },
        "cold" => Act::WeighCold { phase: phase()?, text },
        "hot" => Act::WeighHot { phase: phase()?, text },
        "water" => Act::PutBackWater { phase: phase(), text },
        "temperature" => Act::NoteTemperature { of: HeldName::try_from(on.to_owned()).ok()?, text },
        "timer" => Act::StartTimer { step: step()?, text },
        "stop" => Act::StopTimer { step: step()? },
        "resume" => Act::ResumeTimer { step: step()? },
        "temper" => Act::Temper { phase: phase()?, text },
        "weigh-batch" => Act::WeighBatch { gross: first, empty: second },
        "ph" => Act::NotePh { text },
        "fill" => Act::Fill { count: first, each: second },
        "say" => Act::Say { name: on.to_owned(), text },
        "done" => Act::CloseStep { step: step()? },
        "finish" => Act::FinishRun {},
        "take-back" => Act::TakeBack {},
        "entry-new" => Act::BeginEntry { text },
        "entry" => {
            let (day, name) = on.split_once(':')?;
            Act::NoteEntry { entry: day.parse().ok()?, name: name.to_owned(), text }
        }
        "entry-photo" => Act::AddPhoto { entry: on.parse().ok()?, name: text },
        "entry-remove" => Act::RemoveEntry { entry: on.parse().ok()? },
        _ => return None,
    })
}
