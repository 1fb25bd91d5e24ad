//! Everything on this device as one file, and back: a restore merges, and shows first what it would do.

use crate::contract::Answer;
use crate::messages::share as says;
use crate::rooms::share::edit::{InFull, names_taken};
use crate::rooms::share::sentences;
use crate::rooms::share::versions::VERSIONS_KEY;
use crate::rooms::share::view_backup::{BackupItem, BackupView, Fate, StrayPhotos};
use crate::session::history::Slot;
use crate::session::{Session, absent, key_of, read_slot, write_slot};
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;
use stillroom_core::{Formula, FormulaId, MaterialId};
use stillroom_exchange::archive::{self, ArchiveWriter, Photo, Photos, Source};
use stillroom_exchange::backup::{self, Backup, LARGEST_BACKUP, MOST_RECORDS};
use stillroom_exchange::batch::BatchId;
use stillroom_exchange::extract::{ExtractId, ExtractRecord};
use stillroom_exchange::parcel::Parcel;
use stillroom_exchange::record::{self, FormulaRecord, RecordError};
use stillroom_exchange::versions::VersionsRecord;

/// What the key of every record begins with.
const OURS: &str = "stillroom.";

/// What was read of a backup and is not put anywhere yet.
#[derive(Debug, Default)]
pub(crate) struct Waiting {
    records: Vec<(Slot, Fate)>,
    /// Earlier versions, each formula's as it is kept.
    versions: Vec<(FormulaId, String)>,
    photos: Photos,
    /// Photos that the page has put on this device meanwhile, and those it could not.
    kept_photos: usize,
    lost_photos: usize,
}

impl Session {
    /// Everything on this device as one file, written by the site at an address. A record this version cannot read goes
    /// along as it is.
    ///
    /// Nothing where that is more than a backup is read with: one that cannot be restored is worse than none.
    #[must_use]
    pub fn write_backup(&self, site: &str) -> String {
        let mut records: BTreeMap<String, String> = BTreeMap::new();
        for key in self.store_keys().into_iter().filter(|key| key.starts_with(OURS)) {
            if let Some(text) = self.stored_text(&key).filter(|text| is_json(text)) {
                records.insert(key, text);
            }
        }
        // What is on screen counts, kept or not.
        records.extend(self.written_records(self.around.now()));
        if records.len() > MOST_RECORDS {
            return String::new();
        }
        let backup = Backup { made_at: self.around.now(), records: records.into_iter().collect() };
        let text = backup::write(&backup, Some(site));
        if text.len() > LARGEST_BACKUP { String::new() } else { text }
    }

    /// Every record as it stands on screen, by its key, written as if at a moment.
    #[must_use]
    pub fn written_records(&self, moment: u64) -> BTreeMap<String, String> {
        let slots = self.every_slot();
        slots.iter().filter_map(|slot| Some((key_of(slot), write_slot(slot, 0, moment)?))).collect()
    }

    /// Begins the file for everything on this device and its photos.
    #[must_use]
    pub fn begin_backup(&self) -> ArchiveWriter {
        ArchiveWriter::new(self.around.now())
    }

    /// Reads a backup and says what restoring it would do, on a device that has photos of these names. Nothing is put
    /// anywhere yet.
    pub fn read_backup(&mut self, source: Box<dyn Source>, photos_here: &[String]) -> BackupView {
        *self.waiting.of() = Waiting::default();
        let (backup, photos) = match archive::open(source) {
            Ok(read) => read,
            Err(error) => {
                let code = Some(error.code());
                return BackupView { error: Some(sentences::unreadable_backup(&error)), code, ..BackupView::default() };
            }
        };
        let mut items = Vec::new();
        let mut waiting = Waiting::default();
        let by_key: BTreeMap<&str, &str> =
            backup.records.iter().map(|(key, text)| (key.as_str(), text.as_str())).collect();
        for (key, text) in &backup.records {
            match read_slot(key, text) {
                Ok(Some((_, slot))) => {
                    let fate = self.fate_of(&slot);
                    items.push(BackupItem {
                        kind: sentences::kind_of_record(&slot).to_owned(),
                        name: self.name_in(&slot, &by_key),
                        fate,
                        text: String::new(),
                    });
                    waiting.records.push((slot, fate));
                }
                // They come along with their formula, and are no business of the maker's.
                Ok(None) if key.starts_with(VERSIONS_KEY) => waiting.versions.extend(versions_in(key, text)),
                Ok(None) => items.push(unreadable(key, says::record_unknown().to_owned())),
                Err(error) => {
                    let newer = matches!(error, RecordError::Newer { .. });
                    let text = if newer { says::record_newer() } else { says::record_damaged() };
                    items.push(unreadable(key, text.to_owned()));
                }
            }
        }
        let here: BTreeSet<&str> = photos_here.iter().map(String::as_str).collect();
        let new_photos: Vec<String> = photos.names().filter(|name| !here.contains(name)).map(str::to_owned).collect();
        let all_photos = photos.names().count();
        *self.waiting.of() = Waiting { photos, ..waiting };
        let count = |fate| items.iter().filter(|item| item.fate == fate).count();
        let made = sentences::day_and_time(backup.made_at, self.around.minutes_ahead());
        let summary = sentences::what_a_backup_holds(
            &made,
            [count(Fate::New), count(Fate::Same), count(Fate::Differs), count(Fate::Unreadable)],
        );
        let photos = (all_photos > 0).then(|| sentences::photos_of_backup(all_photos, new_photos.len()));
        BackupView { summary, items, photos: photos.unwrap_or_default(), new_photos, ..BackupView::default() }
    }

    /// A photo of the backup that was read, for the page to keep. `None` if it is damaged.
    pub fn photo_of_backup(&mut self, name: &str) -> Option<Photo> {
        let photo = self.waiting.of::<Waiting>().photos.read(name);
        let waiting: &mut Waiting = self.waiting.of();
        if photo.is_some() {
            waiting.kept_photos += 1;
        } else {
            waiting.lost_photos += 1;
        }
        photo
    }

    /// Says that the photo handed out last could not be kept.
    pub fn photo_was_lost(&mut self) {
        let waiting: &mut Waiting = self.waiting.of();
        waiting.kept_photos = waiting.kept_photos.saturating_sub(1);
        waiting.lost_photos += 1;
    }

    /// Puts the backup that was read away: nothing of it is restored.
    pub fn forget_backup(&mut self) {
        *self.waiting.of() = Waiting::default();
    }

    /// Which of the photos on this device no batch has any more, not even one that can be brought back by undoing. None
    /// while a record cannot be read: it may have them.
    #[must_use]
    pub fn stray_photos(&self, photos_here: &[String]) -> StrayPhotos {
        if !self.unreadable.is_empty() {
            return StrayPhotos::default();
        }
        let journals = self.journals.values().map(|record| &record.journal);
        let undoable = self.history.slots().filter_map(|slot| match slot {
            Slot::Journal(_, Some(record)) => Some(&record.journal),
            _ => None,
        });
        let entries = journals.chain(undoable).flat_map(|journal| &journal.entries);
        let known: BTreeSet<&str> = entries.flat_map(|entry| &entry.photos).map(String::as_str).collect();
        let names: Vec<String> = photos_here.iter().filter(|name| !known.contains(name.as_str())).cloned().collect();
        let text = if names.is_empty() { String::new() } else { says::stray_photos(names.len()) };
        StrayPhotos { text, names }
    }

    /// Puts the records of the backup that was read on this device, as one act that can be taken back. Of what differs,
    /// both are kept or the backup's is taken.
    pub(crate) fn restore_backup(&mut self, take_theirs: bool) -> Answer {
        let Waiting { records, versions, kept_photos, lost_photos, photos: _ } = std::mem::take(self.waiting.of());
        let chosen = if take_theirs {
            records.into_iter().filter(|(_, fate)| *fate != Fate::Same).map(|(slot, _)| slot).collect()
        } else {
            self.beside_ours(records)
        };
        let before: Vec<Slot> =
            chosen.iter().map(|slot| self.slot_at(&key_of(slot)).unwrap_or_else(|| slot.clone())).collect();
        let count = chosen.len();
        if !chosen.is_empty() {
            let open = self.open;
            self.commit("backup.restore", None, open, before, chosen);
            self.open = self.open.or_else(|| self.last_changed());
        }
        for (id, text) in versions {
            let key = format!("{VERSIONS_KEY}{id}");
            if self.shelf.contains_key(&id) && self.stored_text(&key).is_none() {
                self.store_beside(&key, &text);
            }
        }
        if count + kept_photos + lost_photos == 0 {
            self.notice("backup.nothing-new", says::nothing_to_restore().to_owned(), false);
        } else {
            self.notice("backup.restored", sentences::restored(count, kept_photos, lost_photos), count > 0);
        }
        Answer::default()
    }

    /// What a backup adds when nothing here may change: whatever differs, directly or through what it is made of, gets a
    /// name of its own.
    fn beside_ours(&self, records: Vec<(Slot, Fate)>) -> Vec<Slot> {
        let mut parcel =
            Parcel { id: FormulaId(0), formula: Formula::default(), materials: Vec::new(), formulas: Vec::new() };
        let mut changed: BTreeMap<u64, u64> = BTreeMap::new();
        let mut others = Vec::new();
        for (slot, fate) in records {
            match slot {
                Slot::Formula(id, Some(record)) => {
                    changed.insert(id.0, record.changed_at);
                    parcel.formulas.push((id, record.formula.clone()));
                }
                Slot::Material(_, Some(own)) => parcel.materials.push((*own).clone()),
                other => others.push((other, fate)),
            }
        }
        let renamed = names_taken(self, &parcel.materials, &parcel.formulas, &InFull);
        let former: BTreeMap<MaterialId, MaterialId> = renamed.iter().map(|(was, is)| (*is, *was)).collect();
        let parcel = parcel.with_other_names(&renamed);
        let mut chosen = Vec::new();
        for own in parcel.materials {
            if let MaterialId::Own(number) = own.material.id {
                let slot = Slot::Material(number, Some(Rc::new(own)));
                chosen.extend(Some(slot).filter(|slot| self.fate_of(slot) == Fate::New));
            }
        }
        for (id, mut formula) in parcel.formulas {
            let was = former.get(&id.as_material());
            if was.is_some() {
                formula.name = says::name_from_backup(&formula.name);
            }
            let number = match was {
                Some(MaterialId::Formula(number)) => *number,
                _ => id.0,
            };
            let changed_at = changed.get(&number).copied().unwrap_or(0);
            let slot = Slot::Formula(id, Some(Rc::new(FormulaRecord { id, revision: 0, changed_at, formula })));
            chosen.extend(Some(slot).filter(|slot| self.fate_of(slot) == Fate::New));
        }
        chosen.extend(others.into_iter().filter_map(|(slot, fate)| self.other_beside_ours(slot, fate, &renamed)));
        chosen
    }

    /// An extract that differs stands beside ours; what there is of a material and the settings stay ours.
    fn other_beside_ours(&self, slot: Slot, fate: Fate, renamed: &BTreeMap<MaterialId, MaterialId>) -> Option<Slot> {
        match (slot, fate) {
            (Slot::Extract(id, Some(record)), Fate::New | Fate::Differs) => {
                let mut record: ExtractRecord = (*record).clone();
                if let Some(material) = record.extract.values.get_mut("material")
                    && let Some(is) = material.parse().ok().and_then(|was: MaterialId| renamed.get(&was))
                {
                    *material = is.to_string();
                }
                if fate == Fate::Differs {
                    record.extract.name = says::name_from_backup(&record.extract.name);
                }
                let id = if fate == Fate::New { id } else { ExtractId(self.around.random()) };
                Some(Slot::Extract(id, Some(Rc::new(ExtractRecord { id, ..record }))))
            }
            (Slot::Holding(material, holding), Fate::New) => {
                Some(Slot::Holding(renamed.get(&material).copied().unwrap_or(material), holding))
            }
            // What was made and seen is history: ours stays where both have it.
            (slot @ (Slot::Batch(..) | Slot::Journal(..)), Fate::New) => Some(slot),
            _ => None,
        }
    }

    fn fate_of(&self, slot: &Slot) -> Fate {
        let same = match slot {
            Slot::Formula(id, Some(record)) => self.shelf.get(id).map(|ours| ours.formula == record.formula),
            Slot::Material(number, Some(own)) => self.materials.own_material(*number).map(|ours| ours == own),
            Slot::Extract(id, Some(record)) => self.extracts.get(id).map(|ours| ours.extract == record.extract),
            Slot::Holding(material, Some(holding)) => self.materials.holding(*material).map(|ours| ours == holding),
            Slot::Batch(id, Some(record)) => self.batches.get(id).map(|ours| ours.batch == record.batch),
            Slot::Journal(id, Some(record)) => self.journals.get(id).map(|ours| ours.journal == record.journal),
            Slot::Settings(settings) => Some(self.settings == *settings),
            Slot::Formula(_, None)
            | Slot::Material(_, None)
            | Slot::Extract(_, None)
            | Slot::Batch(_, None)
            | Slot::Journal(_, None)
            | Slot::Holding(_, None) => Some(true),
        };
        match same {
            None => Fate::New,
            Some(true) => Fate::Same,
            Some(false) => Fate::Differs,
        }
    }

    /// What the maker calls a record of a backup.
    fn name_in(&self, slot: &Slot, backup: &BTreeMap<&str, &str>) -> String {
        match slot {
            Slot::Formula(_, Some(record)) => record.formula.name.clone(),
            Slot::Material(_, Some(own)) => own.material.name.clone(),
            Slot::Extract(_, Some(record)) => record.extract.name.clone(),
            Slot::Holding(material, _) => self.name_of_material_in(*material, backup),
            Slot::Batch(_, Some(record)) => record.batch.plan.formula.name.clone(),
            Slot::Journal(id, _) => self.name_of_batch_in(*id, backup),
            Slot::Formula(_, None)
            | Slot::Material(_, None)
            | Slot::Extract(_, None)
            | Slot::Batch(_, None)
            | Slot::Settings(_) => String::new(),
        }
    }

    fn name_of_batch_in(&self, id: BatchId, backup: &BTreeMap<&str, &str>) -> String {
        let key = key_of(&Slot::Batch(id, None));
        let theirs = backup.get(key.as_str()).and_then(|text| read_slot(&key, text).ok().flatten());
        match (theirs, self.batches.get(&id)) {
            (Some((_, Slot::Batch(_, Some(record)))), _) => record.batch.plan.formula.name.clone(),
            (_, Some(record)) => record.batch.plan.formula.name.clone(),
            _ => String::new(),
        }
    }

    fn name_of_material_in(&self, material: MaterialId, backup: &BTreeMap<&str, &str>) -> String {
        let of = Slot::Material(if let MaterialId::Own(number) = material { number } else { 0 }, None);
        let key = key_of(&of);
        match backup.get(key.as_str()).and_then(|text| read_slot(&key, text).ok().flatten()) {
            Some((_, Slot::Material(_, Some(own)))) if own.material.id == material => own.material.name.clone(),
            _ => self.materials.name(material),
        }
    }

    /// Every record of this session.
    pub(crate) fn every_slot(&self) -> Vec<Slot> {
        let mut slots = vec![Slot::Settings(Rc::clone(&self.settings))];
        slots.extend(self.shelf.iter().map(|(id, record)| Slot::Formula(*id, Some(Rc::clone(record)))));
        slots.extend(self.materials.own().map(|(number, own)| Slot::Material(number, Some(Rc::clone(own)))));
        slots.extend(self.extracts.iter().map(|(id, record)| Slot::Extract(*id, Some(Rc::clone(record)))));
        slots.extend(self.batches.iter().map(|(id, record)| Slot::Batch(*id, Some(Rc::clone(record)))));
        slots.extend(self.journals.iter().map(|(id, record)| Slot::Journal(*id, Some(Rc::clone(record)))));
        let holdings = self.materials.kept_holdings();
        slots.extend(holdings.map(|(material, holding)| Slot::Holding(material, Some(Rc::clone(holding)))));
        slots
    }
}

fn unreadable(key: &str, text: String) -> BackupItem {
    let kind = absent(key).map_or("", |slot| sentences::kind_of_record(&slot));
    BackupItem { kind: kind.to_owned(), name: key.to_owned(), fate: Fate::Unreadable, text }
}

/// The versions a backup has of a formula, if they can be read.
fn versions_in(key: &str, text: &str) -> Option<(FormulaId, String)> {
    let id = FormulaId::try_from(key.strip_prefix(VERSIONS_KEY)?.to_owned()).ok()?;
    record::read::<VersionsRecord>(text).ok()?;
    Some((id, text.to_owned()))
}

/// Whether a text is JSON: the only thing a backup can hold.
fn is_json(text: &str) -> bool {
    stillroom_exchange::json::Document::read(text).is_ok()
}
