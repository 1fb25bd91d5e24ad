//! The records of a session: reading them from the store, keeping them there, and what happens when another page of the
//! same browser changed one.

use super::Session;
use super::journal::{self, Entry};
use crate::contract::{Answer, KeepState};
use crate::lazy::{self, Piece, lazy};
use crate::session::history::Slot;
use crate::session::keeping::{StoreError, WriteLog, Written};
use crate::session::materials::Materials;
use crate::session::settings::SettingsRecord;
use std::rc::Rc;
use stillroom_core::{FormulaId, MaterialId};
use stillroom_exchange::batch::{BatchId, BatchRecord, JournalRecord};
use stillroom_exchange::extract::{ExtractId, ExtractRecord};
use stillroom_exchange::holding::HoldingRecord;
use stillroom_exchange::record::{self, FormulaRecord, MaterialRecord, RecordError};

pub(crate) const FORMULA_KEY: &str = "stillroom.formula.";
pub(crate) const MATERIAL_KEY: &str = "stillroom.material.";
const HOLDING_KEY: &str = "stillroom.holding.";
const EXTRACT_KEY: &str = "stillroom.extract.";
const BATCH_KEY: &str = "stillroom.batch.";
const JOURNAL_KEY: &str = "stillroom.journal.";
const SETTINGS_KEY: &str = "stillroom.settings";

/// How the keys of records begin. Of others the session knows nothing.
const FIRST_KINDS: [&str; 4] = [FORMULA_KEY, MATERIAL_KEY, HOLDING_KEY, EXTRACT_KEY];
/// Those that are read once what lies beyond the main job is there.
const LATER_KINDS: [&str; 2] = [BATCH_KEY, JOURNAL_KEY];

impl Session {
    pub(super) fn read_everything(&mut self) {
        journal::finish(&*self.store);
        self.read_kinds(|key| key == SETTINGS_KEY || FIRST_KINDS.iter().any(|kind| key.starts_with(kind)));
        if lazy::is_here(Piece::Whole) {
            self.whole_arrived();
        }
    }

    /// What lies beyond the main job is there: takes in the whole catalogue and reads the records of batches.
    pub fn whole_arrived(&mut self) {
        take_whole_catalogue(&mut self.materials);
        self.read_kinds(|key| LATER_KINDS.iter().any(|kind| key.starts_with(kind)));
        self.surroundings_changed += 1;
    }

    fn read_kinds(&mut self, is_wanted: impl Fn(&str) -> bool) {
        let Ok(keys) = self.store.keys() else {
            self.keep_state = KeepState::Blocked;
            return;
        };
        // What this page has read or changed already stands as it is.
        let is_known = |key: &String| self.revisions.contains_key(key) || self.unkept.contains_key(key);
        let wanted: Vec<String> = keys.into_iter().filter(|key| is_wanted(key) && !is_known(key)).collect();
        for key in wanted {
            self.read_record(&key);
        }
    }

    /// Reads the record under a key into the session. One that cannot be read is reported and left alone.
    fn read_record(&mut self, key: &str) {
        if let Ok(Some(text)) = self.store.get(key) {
            self.read_text(key, &text);
        }
    }

    /// Reads the text of a record into the session.
    fn read_text(&mut self, key: &str, text: &str) {
        let read = journal::check(text).and_then(|()| read_slot(key, text));
        match read {
            Ok(Some((revision, slot))) => {
                self.unreadable.remove(key);
                self.revisions.insert(key.to_owned(), revision);
                self.place(slot);
            }
            Ok(None) => {}
            Err(error) => {
                self.unreadable.insert(key.to_owned(), error);
            }
        }
    }

    /// Keeps what is not kept yet.
    pub(crate) fn keep_unkept(&mut self) {
        let keys: Vec<String> = self.unkept.keys().filter(|key| !self.conflicts.contains_key(*key)).cloned().collect();
        let failure = self.keep_all(keys);
        self.keep_state = match failure {
            Some(StoreError::Full) => KeepState::Full,
            Some(StoreError::Blocked) => KeepState::Blocked,
            None if !self.conflicts.is_empty() => KeepState::Conflict,
            // A store that cannot even be listed keeps nothing, whether or not there was something to keep.
            None if self.keep_state == KeepState::Blocked && self.store.keys().is_err() => KeepState::Blocked,
            None if self.awaits_commit() => KeepState::Keeping,
            None => KeepState::Kept,
        };
    }

    /// Whether something that was written is not on the disk yet, as far as this page knows.
    fn awaits_commit(&self) -> bool {
        self.logging.committing || self.logging.log.as_ref().is_some_and(|log| !log.is_empty())
    }

    /// Hands out what was written since the last time, for the page's log.
    pub fn take_written(&mut self) -> Vec<Written> {
        let written = self.logging.log.as_ref().map(WriteLog::take).unwrap_or_default();
        self.logging.committing |= !written.is_empty();
        written
    }

    /// All that was handed out is on the disk, or could not be put there: then the store alone has it.
    pub(crate) fn note_commit(&mut self, is_on_disk: bool) {
        self.logging.committing = false;
        self.logging.failed = !is_on_disk;
        if self.keep_state == KeepState::Keeping && self.unkept.is_empty() && !self.awaits_commit() {
            self.keep_state = KeepState::Kept;
            self.kept_at = Some(self.around.now());
        }
    }

    /// Keeps records so that a crash leaves all of them old or all of them new.
    fn keep_all(&mut self, keys: Vec<String>) -> Option<StoreError> {
        let mut entries = Vec::new();
        let mut failure = None;
        for key in keys {
            match self.is_ours_to_write(&key) {
                Ok(true) => entries.push(self.entry_of(key)),
                Ok(false) => {
                    let name = self.name_of(&key);
                    self.conflicts.insert(key, name);
                }
                Err(error) => failure = Some(error),
            }
        }
        let mut written: Vec<(String, bool)> =
            entries.iter().map(|entry| (entry.key.clone(), entry.text.is_some())).collect();
        if let Err((error, left)) = journal::write_all(&*self.store, entries) {
            failure = Some(error);
            written.truncate(written.len() - left.len());
        }
        for (key, there) in written {
            self.kept(&key, there);
        }
        failure
    }

    /// A record is in the store as it is here, or is gone from both.
    fn kept(&mut self, key: &str, there: bool) {
        self.unkept.remove(key);
        // One that is gone keeps its number: if it comes back, what is written then is newer than all before.
        let revision = self.revisions.entry(key.to_owned()).or_insert(0);
        if there {
            *revision += 1;
        }
        self.kept_at = Some(self.around.now());
    }

    /// How often a formula was written: its version.
    pub(crate) fn revision_of(&self, id: FormulaId) -> u64 {
        self.revisions.get(&key_of(&Slot::Formula(id, None))).copied().unwrap_or(0)
    }

    /// Whether something is still to be kept.
    #[must_use]
    pub fn has_unkept(&self) -> bool {
        !self.unkept.is_empty()
    }

    /// Every key of the store; none where it cannot be read.
    pub(crate) fn store_keys(&self) -> Vec<String> {
        self.store.keys().unwrap_or_default()
    }

    /// The text under a key of the store.
    pub(crate) fn stored_text(&self, key: &str) -> Option<String> {
        self.store.get(key).ok().flatten()
    }

    /// Whether a record in the store is the one this page read or wrote last. One that another page changed since, or that
    /// cannot be read, is not ours to overwrite.
    fn is_ours_to_write(&self, key: &str) -> Result<bool, StoreError> {
        let known = self.revisions.get(key).copied().unwrap_or(0);
        let stored = self.store.get(key)?;
        Ok(stored.is_none_or(|text| record::read_revision(&text) == Ok(known)))
    }

    /// What is to be written of one record.
    fn entry_of(&mut self, key: String) -> Entry {
        let stored = self.stored_text(&key);
        if stored.is_none() && self.revisions.contains_key(&key) && self.stored_text(SETTINGS_KEY).is_none() {
            self.look_for_lost_records();
        }
        if let (Some(id), Some(replaced)) = (formula_of(&key), &stored) {
            self.keep_version(id, replaced);
        }
        let known = self.revisions.get(&key).copied().unwrap_or(0);
        let text = self.text_of(&key, known + 1).map(journal::with_check);
        Entry { known: if stored.is_some() { known } else { 0 }, key, text }
    }

    /// What this page had kept and the storage no longer has is to be kept anew, and said. A record that is still there is
    /// left alone: of it nothing was lost.
    fn look_for_lost_records(&mut self) {
        let Ok(there) = self.store.keys() else { return };
        let there: std::collections::BTreeSet<String> = there.into_iter().collect();
        // Of what was deleted here only the number is left.
        let lost = self.revisions.keys().filter(|key| !there.contains(*key)).cloned();
        let lost: Vec<String> = lost.filter(|key| self.slot_at(key).is_some_and(|slot| slot.is_there())).collect();
        if lost.is_empty() {
            return;
        }
        for key in lost {
            self.unkept.insert(key, ());
        }
        self.notice("storage.cleared", crate::messages::desk::storage_cleared().to_owned(), false);
    }

    /// Puts a text beside the records, if there is room.
    pub(crate) fn store_beside(&self, key: &str, text: &str) {
        let _ = self.store.set(key, text);
    }

    /// What the maker should know about the storage of this device, a sentence each.
    #[must_use]
    pub fn storage_remarks(&self) -> Vec<String> {
        /// Clocks differ a little, and a day off is no harm.
        const DAY: u64 = 24 * 60 * 60 * 1000;
        let last = self.shelf.values().map(|record| record.changed_at).max().unwrap_or(0);
        let went_back = last > self.around.now().saturating_add(DAY);
        let when = || crate::rooms::share::sentences::day_and_time(last, self.around.minutes_ahead());
        went_back.then(|| crate::messages::desk::clock_went_back(&when())).into_iter().collect()
    }

    /// The record under a key as it stands now. `None` for a key that is none of ours.
    pub(crate) fn slot_at(&self, key: &str) -> Option<Slot> {
        Some(match absent(key) {
            None if key == SETTINGS_KEY => Slot::Settings(Rc::clone(&self.settings)),
            None => return None,
            Some(Slot::Formula(id, _)) => Slot::Formula(id, self.shelf.get(&id).map(Rc::clone)),
            Some(Slot::Material(number, _)) => {
                Slot::Material(number, self.materials.own_material(number).map(Rc::clone))
            }
            Some(Slot::Holding(material, _)) => {
                Slot::Holding(material, self.materials.holding(material).map(Rc::clone))
            }
            Some(Slot::Extract(id, _)) => Slot::Extract(id, self.extracts.get(&id).map(Rc::clone)),
            Some(Slot::Batch(id, _)) => Slot::Batch(id, self.batches.get(&id).map(Rc::clone)),
            Some(Slot::Journal(id, _)) => Slot::Journal(id, self.journals.get(&id).map(Rc::clone)),
            Some(settings @ Slot::Settings(_)) => settings,
        })
    }

    /// A record as it is kept; nothing where it was deleted.
    fn text_of(&self, key: &str, revision: u64) -> Option<String> {
        write_slot(&self.slot_at(key)?, revision, self.around.now())
    }

    /// Takes the record under a key out of the session.
    fn take_out(&mut self, key: &str) {
        if let Some(slot) = absent(key) {
            self.place(slot);
        }
    }

    /// Another page wrote a record: take it, unless this page has changed it too. Without a key, another page cleared the
    /// storage.
    pub(crate) fn changed_elsewhere(&mut self, key: &str) -> Answer {
        if key.is_empty() {
            self.look_for_lost_records();
        }
        let ours = key == SETTINGS_KEY || absent(key).is_some();
        if ours && !self.unkept.contains_key(key) {
            self.take_from_store(key);
        }
        Answer::default()
    }

    pub(crate) fn take_theirs(&mut self, key: &str) -> Answer {
        self.unkept.remove(key);
        self.conflicts.remove(key);
        self.take_from_store(key);
        self.keep_state = KeepState::Keeping;
        Answer::default()
    }

    fn take_from_store(&mut self, key: &str) {
        match self.store.get(key) {
            Ok(Some(_)) => self.read_record(key),
            Ok(None) => {
                self.revisions.remove(key);
                self.take_out(key);
            }
            Err(_) => return,
        }
        // Undo would bring back a record that is no longer what it was.
        if let Some(slot) = self.slot_at(key) {
            self.history.forget(&slot);
        }
        self.open = self.open.filter(|id| self.shelf.contains_key(id)).or_else(|| self.last_changed());
    }

    pub(crate) fn keep_both(&mut self, key: &str) -> Answer {
        if let Some(id) = formula_of(key)
            && let Some(ours) = self.shelf.get(&id).map(Rc::clone)
        {
            let copy_id = self.fresh_formula_id();
            let mut copy = FormulaRecord { id: copy_id, revision: 0, ..(*ours).clone() };
            copy.formula.name = crate::messages::shelf::this_pages_version(&ours.formula.name);
            let was_open = self.open == Some(id);
            self.take_theirs(key);
            self.put(Slot::Formula(copy_id, Some(Rc::new(copy))));
            if was_open {
                self.open = Some(copy_id);
            }
        } else {
            // Of settings and materials there is no second place to keep: this page's version is written anew.
            self.conflicts.remove(key);
            let elsewhere = self.store.get(key).ok().flatten();
            let revision = elsewhere.and_then(|text| record::read_revision(&text).ok());
            self.revisions.insert(key.to_owned(), revision.unwrap_or(0));
        }
        Answer::default()
    }

    fn name_of(&self, key: &str) -> String {
        if let Some(id) = formula_of(key) {
            return self.shelf.get(&id).map(|record| record.formula.name.clone()).unwrap_or_default();
        }
        if let Some(id) = extract_of(key) {
            return self.extracts.get(&id).map(|record| record.extract.name.clone()).unwrap_or_default();
        }
        if let Some(id) = batch_of(key).or_else(|| journal_of(key)) {
            return self.batches.get(&id).map(|record| record.batch.lot.clone()).unwrap_or_default();
        }
        let material = material_of(key).map(MaterialId::Own).or_else(|| holding_of(key));
        material.map(|material| self.materials.name(material)).unwrap_or_default()
    }
}

/// Key a record is kept under.
pub(crate) fn key_of(slot: &Slot) -> String {
    match slot {
        Slot::Formula(id, _) => format!("{FORMULA_KEY}{id}"),
        Slot::Material(number, _) => format!("{MATERIAL_KEY}{number:016x}"),
        Slot::Extract(id, _) => format!("{EXTRACT_KEY}{id}"),
        Slot::Batch(id, _) => format!("{BATCH_KEY}{id}"),
        Slot::Journal(id, _) => format!("{JOURNAL_KEY}{id}"),
        Slot::Holding(material, _) => format!("{HOLDING_KEY}{material}"),
        Slot::Settings(_) => SETTINGS_KEY.to_owned(),
    }
}

fn formula_of(key: &str) -> Option<FormulaId> {
    FormulaId::try_from(key.strip_prefix(FORMULA_KEY)?.to_owned()).ok()
}

fn holding_of(key: &str) -> Option<MaterialId> {
    key.strip_prefix(HOLDING_KEY)?.parse().ok()
}

fn material_of(key: &str) -> Option<u64> {
    u64::from_str_radix(key.strip_prefix(MATERIAL_KEY)?, 16).ok()
}

fn extract_of(key: &str) -> Option<ExtractId> {
    ExtractId::try_from(key.strip_prefix(EXTRACT_KEY)?.to_owned()).ok()
}

fn batch_of(key: &str) -> Option<BatchId> {
    BatchId::try_from(key.strip_prefix(BATCH_KEY)?.to_owned()).ok()
}

fn journal_of(key: &str) -> Option<BatchId> {
    BatchId::try_from(key.strip_prefix(JOURNAL_KEY)?.to_owned()).ok()
}

/// The record under a key that holds none; `None` for the settings, of which there always are some, and for other keys.
pub(crate) fn absent(key: &str) -> Option<Slot> {
    let formula = formula_of(key).map(|id| Slot::Formula(id, None));
    let material = || material_of(key).map(|number| Slot::Material(number, None));
    let holding = || holding_of(key).map(|material| Slot::Holding(material, None));
    let extract = || extract_of(key).map(|id| Slot::Extract(id, None));
    let known = formula.or_else(material).or_else(holding).or_else(extract);
    known
        .or_else(|| batch_of(key).map(|id| Slot::Batch(id, None)))
        .or_else(|| journal_of(key).map(|id| Slot::Journal(id, None)))
}

/// Reads a record with how often it was written. `Ok(None)` for a key that is none of ours.
pub(crate) fn read_slot(key: &str, text: &str) -> Result<Option<(u64, Slot)>, RecordError> {
    if key == SETTINGS_KEY {
        let record: SettingsRecord = record::read(text)?;
        return Ok(Some((record.revision, Slot::Settings(Rc::new(record.settings)))));
    }
    Ok(match absent(key) {
        None | Some(Slot::Settings(_)) => None,
        Some(Slot::Formula(..)) => {
            let record: FormulaRecord = record::read(text)?;
            Some((record.revision, Slot::Formula(record.id, Some(Rc::new(record)))))
        }
        Some(Slot::Material(..)) => {
            let record: MaterialRecord = record::read(text)?;
            // The record says what it is; a caller without a store may have numbered its keys as it liked.
            match record.own.material.id {
                MaterialId::Own(number) => Some((record.revision, Slot::Material(number, Some(Rc::new(record.own))))),
                MaterialId::Catalogue(_) | MaterialId::Formula(_) => None,
            }
        }
        Some(Slot::Holding(..)) => {
            let record: HoldingRecord = record::read(text)?;
            Some((record.revision, Slot::Holding(record.material, Some(Rc::new(record.holding)))))
        }
        Some(Slot::Extract(..)) => {
            let record: ExtractRecord = record::read(text)?;
            Some((record.revision, Slot::Extract(record.id, Some(Rc::new(record)))))
        }
        Some(Slot::Batch(..) | Slot::Journal(..)) => return read_of_batch(key, text),
    })
}

/// Writes a record; nothing where it is absent.
pub(crate) fn write_slot(slot: &Slot, revision: u64, changed_at: u64) -> Option<String> {
    Some(match slot {
        Slot::Settings(settings) => record::write(&SettingsRecord { revision, settings: (**settings).clone() }),
        Slot::Formula(_, record) => record::write(&FormulaRecord { revision, ..(**record.as_ref()?).clone() }),
        Slot::Material(_, own) => {
            record::write(&MaterialRecord { revision, changed_at, own: (**own.as_ref()?).clone() })
        }
        Slot::Holding(material, holding) => {
            record::write(&HoldingRecord { revision, material: *material, holding: (**holding.as_ref()?).clone() })
        }
        Slot::Extract(_, record) => record::write(&ExtractRecord { revision, ..(**record.as_ref()?).clone() }),
        Slot::Batch(..) | Slot::Journal(..) => return write_of_batch(slot, revision),
    })
}

lazy! {
    whole "08" fn read_of_batch(key: &str, text: &str) -> Result<Option<(u64, Slot)>, RecordError> {
        Ok(if batch_of(key).is_some() {
            let record: BatchRecord = record::read(text)?;
            Some((record.revision, Slot::Batch(record.id, Some(Rc::new(record)))))
        } else {
            let record: JournalRecord = record::read(text)?;
            Some((record.revision, Slot::Journal(record.batch, Some(Rc::new(record)))))
        })
    } else { Ok(None) }
}

lazy! {
    whole "09" fn write_of_batch(slot: &Slot, revision: u64) -> Option<String> {
        match slot {
            Slot::Batch(_, record) => {
                Some(record::write(&BatchRecord { revision, ..(**record.as_ref()?).clone() }))
            }
            Slot::Journal(_, record) => {
                Some(record::write(&JournalRecord { revision, ..(**record.as_ref()?).clone() }))
            }
            _ => None,
        }
    } else { None }
}

lazy! {
    whole "0a" fn take_whole_catalogue(materials: &mut Materials) {
        materials.take_whole_catalogue();
    } else {}
}
