//! What can be undone: every change as the records before and after it.

use std::borrow::Cow;
use std::rc::Rc;
use stillroom_core::{FormulaId, MaterialId};
use stillroom_exchange::batch::{BatchId, BatchRecord, JournalRecord};
use stillroom_exchange::extract::{ExtractId, ExtractRecord};
use stillroom_exchange::holding::Holding;
use stillroom_exchange::record::{FormulaRecord, OwnMaterial};

use crate::settings::Settings;

/// Most changes that can be taken back. A change holds the record before it, about 4 kB for a long formula.
const MOST_CHANGES: usize = 300;
/// Typing in one field within this time is one change.
const ONE_CHANGE_MS: u64 = 4_000;

/// A record that changes.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Slot {
    /// A formula, before or after; `None` where it is not there.
    Formula(FormulaId, Option<Rc<FormulaRecord>>),
    /// A material of the maker's own.
    Material(u64, Option<Rc<OwnMaterial>>),
    /// An extract.
    Extract(ExtractId, Option<Rc<ExtractRecord>>),
    /// What the maker has of a material.
    Holding(MaterialId, Option<Rc<Holding>>),
    /// A batch.
    Batch(BatchId, Option<Rc<BatchRecord>>),
    /// The journal of a batch.
    Journal(BatchId, Option<Rc<JournalRecord>>),
    /// The settings.
    Settings(Rc<Settings>),
}

/// One change.
#[derive(Debug, Clone)]
pub(crate) struct Change {
    /// What the maker did, as a code for its sentence.
    pub(crate) act: Cow<'static, str>,
    /// Field it was typed in; typing there again continues the change.
    pub(crate) field: Option<String>,
    /// When.
    pub(crate) at: u64,
    /// Formula that was open before it.
    pub(crate) open_before: Option<FormulaId>,
    /// Formula that is open after it.
    pub(crate) open_after: Option<FormulaId>,
    /// Records before it.
    pub(crate) before: Vec<Slot>,
    /// Records after it.
    pub(crate) after: Vec<Slot>,
}

/// Changes that can be taken back and made again.
#[derive(Debug, Default)]
pub(crate) struct History {
    done: Vec<Change>,
    undone: Vec<Change>,
}

impl History {
    /// Remembers a change, as part of the last one if that was typing in the same field just before.
    pub(crate) fn remember(&mut self, change: Change) {
        self.undone.clear();
        if let Some(last) = self.done.last_mut()
            && change.field.is_some()
            && last.field == change.field
            && last.act == change.act
            && change.at.saturating_sub(last.at) < ONE_CHANGE_MS
        {
            last.at = change.at;
            last.after = change.after;
            return;
        }
        self.done.push(change);
        if self.done.len() > MOST_CHANGES {
            self.done.remove(0);
        }
    }

    /// Takes the last change back.
    pub(crate) fn undo(&mut self) -> Option<Change> {
        let change = self.done.pop()?;
        self.undone.push(change.clone());
        Some(change)
    }

    /// Makes the last change that was taken back again.
    pub(crate) fn redo(&mut self) -> Option<Change> {
        let change = self.undone.pop()?;
        self.done.push(change.clone());
        Some(change)
    }

    /// What the next undo takes back.
    pub(crate) fn next_undo(&self) -> Option<&str> {
        self.done.last().map(|change| &*change.act)
    }

    /// What the next redo makes again.
    pub(crate) fn next_redo(&self) -> Option<&str> {
        self.undone.last().map(|change| &*change.act)
    }

    /// Every record as it was before or after a change.
    pub(crate) fn slots(&self) -> impl Iterator<Item = &Slot> {
        let changes = self.done.iter().chain(&self.undone);
        changes.flat_map(|change| change.before.iter().chain(&change.after))
    }

    /// Forgets everything, for when records changed under it.
    pub(crate) fn clear(&mut self) {
        self.done.clear();
        self.undone.clear();
    }
}
