//! What a record and its texts may hold. What is larger is refused before anything changes: nothing is cut unseen, and
//! nothing is written that could not be read again.

use crate::session::history::Slot;
use crate::session::write_slot;
use stillroom_core::Formula;
use stillroom_core::run::{Deed, Event, LONGEST_TEXT as LONGEST_AT_BENCH};
use stillroom_exchange::record::LONGEST_RECORD;

/// Longest name, in characters.
pub(crate) const LONGEST_NAME: usize = 200;
/// Longest note and method, in characters.
pub(crate) const LONGEST_TEXT: usize = 20_000;
/// Longest reason for setting a finding aside, in characters.
pub(crate) const LONGEST_REASON: usize = 400;
/// Longest text said at the bench, in characters: as many as always fit what a record of a run may hold.
pub(crate) const LONGEST_SAID: usize = LONGEST_AT_BENCH / 4;

/// Longest written record, in bytes: room is left for what keeping adds, and for the record of earlier versions that one
/// of a formula stands in.
const LARGEST_RECORD: usize = LONGEST_RECORD - 10_000;

/// Whether a record can be written so that it can be read again. Most are far smaller, which is seen without writing
/// them.
pub(crate) fn fits(slot: &Slot) -> bool {
    // A character of a text takes at most six bytes, and what stands between texts is counted in full.
    if 6 * length_of_texts(slot) + 400 * count_of_parts(slot) < LARGEST_RECORD {
        return true;
    }
    write_slot(slot, 0, 0).is_none_or(|text| text.len() <= LARGEST_RECORD)
}

fn texts_of_formula(formula: &Formula) -> usize {
    let phases = formula.phases.iter().map(|phase| phase.name.len());
    let aside = formula.set_aside.iter().map(|each| each.code.len() + each.subject.len() + each.reason.len());
    let steps: usize = formula.steps.iter().map(|step| step.len() + 3).sum();
    let notes: usize = formula.lines().map(|line| line.note.len() + line.substitution.len()).sum();
    formula.name.len()
        + formula.notes.len()
        + formula.label.len()
        + formula.costs.len()
        + formula.tags.len()
        + steps
        + notes
        + phases.sum::<usize>()
        + aside.sum::<usize>()
}

fn parts_of_formula(formula: &Formula) -> usize {
    3 + formula.phases.len() + formula.lines().count() + formula.set_aside.len() + formula.batch.stock.len()
}

fn length_of_texts(slot: &Slot) -> usize {
    match slot {
        Slot::Formula(_, Some(record)) => texts_of_formula(&record.formula),
        Slot::Material(_, Some(own)) => {
            own.material.name.len() + own.note.len() + own.constituent.as_ref().map_or(0, |it| it.inci.len())
        }
        Slot::Extract(_, Some(record)) => {
            record.extract.name.len()
                + record.extract.values.iter().map(|(key, value)| key.len() + value.len()).sum::<usize>()
        }
        Slot::Holding(_, Some(holding)) => {
            holding.lot.len() + holding.note.len() + holding.usual.len() + holding.prices.len()
        }
        Slot::Batch(_, Some(record)) => {
            let said = |event: &Event| match &event.deed {
                Deed::Said(name, text) => name.len() + text.len(),
                _ => 0,
            };
            let materials = record.batch.materials.iter().map(|used| used.lot.len() + used.expiry.len());
            texts_of_formula(&record.batch.plan.formula)
                + record.batch.lot.len()
                + record.batch.events.iter().map(said).sum::<usize>()
                + materials.sum::<usize>()
        }
        Slot::Journal(_, Some(record)) => {
            let entries = record.journal.entries.iter();
            entries
                .map(|entry| {
                    let texts = entry.texts.iter().map(|(name, text)| name.len() + text.len());
                    texts.sum::<usize>() + entry.photos.iter().map(String::len).sum::<usize>()
                })
                .sum()
        }
        _ => 0,
    }
}

fn count_of_parts(slot: &Slot) -> usize {
    match slot {
        Slot::Formula(_, Some(record)) => parts_of_formula(&record.formula),
        Slot::Material(_, Some(own)) => match &own.material.makeup {
            stillroom_core::Makeup::Composite(parts) => 3 + parts.len(),
            stillroom_core::Makeup::Simple(_) => 3,
        },
        Slot::Extract(_, Some(record)) => 3 + record.extract.values.len() + record.extract.steps.len(),
        Slot::Batch(_, Some(record)) => {
            parts_of_formula(&record.batch.plan.formula) + record.batch.events.len() + record.batch.materials.len()
        }
        Slot::Journal(_, Some(record)) => 3 + 8 * record.journal.entries.len(),
        _ => 3,
    }
}
