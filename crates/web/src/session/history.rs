//! What can be undone: every change as the records before and after it.

use std::rc::Rc;
use stillroom_core::{FormulaId, MaterialId};
use stillroom_exchange::batch::{BatchId, BatchRecord, JournalRecord};
use stillroom_exchange::extract::{ExtractId, ExtractRecord};
use stillroom_exchange::holding::Holding;
use stillroom_exchange::record::{FormulaRecord, OwnMaterial};

use crate::session::settings::Settings;

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

impl Slot {
    /// Whether there is a record.
    pub(crate) fn is_there(&self) -> bool {
        match self {
            Self::Formula(_, record) => record.is_some(),
            Self::Material(_, record) => record.is_some(),
            Self::Extract(_, record) => record.is_some(),
            Self::Holding(_, record) => record.is_some(),
            Self::Batch(_, record) => record.is_some(),
            Self::Journal(_, record) => record.is_some(),
            Self::Settings(_) => true,
        }
    }

    /// Whether two are the very same state of the same record. What a session puts in place it shares, so that nothing
    /// need be compared.
    pub(crate) fn is(&self, other: &Self) -> bool {
        fn same<T>(one: Option<&Rc<T>>, other: Option<&Rc<T>>) -> bool {
            match (one, other) {
                (Some(one), Some(other)) => Rc::ptr_eq(one, other),
                (one, other) => one.is_none() && other.is_none(),
            }
        }
        match (self, other) {
            (Self::Formula(id, one), Self::Formula(other_id, other)) => {
                id == other_id && same(one.as_ref(), other.as_ref())
            }
            (Self::Material(id, one), Self::Material(other_id, other)) => {
                id == other_id && same(one.as_ref(), other.as_ref())
            }
            (Self::Extract(id, one), Self::Extract(other_id, other)) => {
                id == other_id && same(one.as_ref(), other.as_ref())
            }
            (Self::Holding(id, one), Self::Holding(other_id, other)) => {
                id == other_id && same(one.as_ref(), other.as_ref())
            }
            (Self::Batch(id, one), Self::Batch(other_id, other)) => {
                id == other_id && same(one.as_ref(), other.as_ref())
            }
            (Self::Journal(id, one), Self::Journal(other_id, other)) => {
                id == other_id && same(one.as_ref(), other.as_ref())
            }
            (Self::Settings(one), Self::Settings(other)) => Rc::ptr_eq(one, other),
            _ => false,
        }
    }

    /// Whether both are states of the same record.
    fn is_of(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Formula(id, _), Self::Formula(other, _)) => id == other,
            (Self::Material(id, _), Self::Material(other, _)) => id == other,
            (Self::Extract(id, _), Self::Extract(other, _)) => id == other,
            (Self::Holding(id, _), Self::Holding(other, _)) => id == other,
            (Self::Batch(id, _), Self::Batch(other, _)) | (Self::Journal(id, _), Self::Journal(other, _)) => {
                id == other
            }
            (Self::Settings(_), Self::Settings(_)) => true,
            _ => false,
        }
    }
}

/// One change.
#[derive(Debug, Clone)]
pub(crate) struct Change {
    /// Tells it from every other of this page; the history gives it.
    pub(crate) number: u32,
    /// What the maker did, as a code for its sentence.
    pub(crate) act: &'static str,
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
    /// Number of the newest change there ever was.
    newest: u32,
}

impl History {
    /// Remembers a change, as part of the last one if that was typing in the same field of the same record just before.
    pub(crate) fn remember(&mut self, change: Change) {
        self.undone.clear();
        if let Some(last) = self.done.last_mut()
            && change.field.is_some()
            && last.field == change.field
            && last.act == change.act
            && last.open_after == change.open_before
            && change.at.saturating_sub(last.at) < ONE_CHANGE_MS
            // It goes on from where the last one ended, and from nowhere else: then the two are one, whatever they changed.
            && last.after.len() == change.before.len()
            && last.after.iter().zip(&change.before).all(|(ended, begins)| ended.is(begins))
        {
            last.at = change.at;
            last.open_after = change.open_after;
            last.after = change.after;
            return;
        }
        self.newest += 1;
        self.done.push(Change { number: self.newest, ..change });
        if self.done.len() > MOST_CHANGES {
            self.done.remove(0);
        }
    }

    /// Takes back what was typed in a field just now, as if it had not been: it was the beginning of something that is not
    /// understood.
    pub(crate) fn unsay(&mut self, field: &str, now: u64) -> Option<Change> {
        let is_typing = |last: &mut Change| {
            // What was taken back since then was typed in it earlier.
            self.undone.is_empty()
                && last.field.as_deref() == Some(field)
                && now.saturating_sub(last.at) < ONE_CHANGE_MS
        };
        self.done.pop_if(is_typing)
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
    pub(crate) fn next_undo(&self) -> Option<&Change> {
        self.done.last()
    }

    /// What the next redo makes again.
    pub(crate) fn next_redo(&self) -> Option<&Change> {
        self.undone.last()
    }

    /// Every record as it was before or after a change.
    pub(crate) fn slots(&self) -> impl Iterator<Item = &Slot> {
        let changes = self.done.iter().chain(&self.undone);
        changes.flat_map(|change| change.before.iter().chain(&change.after))
    }

    /// Forgets what cannot be taken back exactly any more because a record changed by another hand: every change of that
    /// record, and of what was changed together with it before.
    pub(crate) fn forget(&mut self, record: &Slot) {
        for changes in [&mut self.done, &mut self.undone] {
            let mut changed: Vec<Slot> = vec![record.clone()];
            // The next to be taken back, or made again, stands last.
            for at in (0..changes.len()).rev() {
                let touches = |change: &Change| {
                    let mut slots = change.before.iter();
                    slots.any(|slot| changed.iter().any(|record| record.is_of(slot)))
                };
                if touches(&changes[at]) {
                    changed.extend(changes.remove(at).before);
                }
            }
        }
    }

    /// Forgets everything.
    pub(crate) fn clear(&mut self) {
        self.done.clear();
        self.undone.clear();
    }
}
