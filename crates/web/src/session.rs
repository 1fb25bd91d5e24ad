//! What the maker is doing: formulas, materials and settings on this device, which are open, what can be undone, and
//! where it is kept.

use crate::command::Command;
use crate::history::{Change, History, Slot};
use crate::keeping::{Store, StoreError, Surroundings};
use crate::materials::Materials;
use crate::sentences;
use crate::settings::{Settings, SettingsRecord};
use crate::view::{
    Answer, ConflictView, HistoryView, KeepState, LastView, Notice, ShelfCard, StatusView, Update, if_changed,
};
use litemap::LiteMap;
use std::rc::Rc;
use stillroom_catalogue::Filter;
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::{Bench, Evaluation, evaluate};
use stillroom_core::number::DecimalMark;
use stillroom_core::{Formula, FormulaId, Makeup, MaterialId};
use stillroom_exchange::extract::{ExtractId, ExtractRecord};
use stillroom_exchange::holding::HoldingRecord;
use stillroom_exchange::record::{self, FormulaRecord, Kept, MaterialRecord, OwnMaterial, RecordError};

pub(crate) const FORMULA_KEY: &str = "stillroom.formula.";
pub(crate) const MATERIAL_KEY: &str = "stillroom.material.";
const HOLDING_KEY: &str = "stillroom.holding.";
const EXTRACT_KEY: &str = "stillroom.extract.";
const SETTINGS_KEY: &str = "stillroom.settings";

/// What the maker is doing.
pub struct Session {
    pub(crate) around: Box<dyn Surroundings>,
    store: Box<dyn Store>,
    /// Decimal mark of the browser, where the settings follow it.
    browser_mark: DecimalMark,
    pub(crate) settings: Rc<Settings>,
    pub(crate) bench: Bench,
    pub(crate) shelf: LiteMap<FormulaId, Rc<FormulaRecord>>,
    pub(crate) open: Option<FormulaId>,
    pub(crate) open_material: Option<MaterialId>,
    pub(crate) extracts: LiteMap<ExtractId, Rc<ExtractRecord>>,
    pub(crate) open_extract: Option<ExtractId>,
    #[cfg(feature = "whole")]
    pub(crate) looking_at_extracts: bool,
    pub(crate) materials: Materials,
    pub(crate) makeups: Makeups,
    /// How often each formula is a material of something.
    formula_uses: LiteMap<u64, usize>,
    history: History,
    pub(crate) looking_at_shelf: bool,
    /// Cards worked out, with the record they were worked out from.
    pub(crate) cards: LiteMap<FormulaId, (Rc<FormulaRecord>, Rc<ShelfCard>)>,
    unkept: LiteMap<String, ()>,
    /// Revision of each record as this page last read or wrote it.
    revisions: LiteMap<String, u64>,
    conflicts: LiteMap<String, String>,
    pub(crate) unreadable: LiteMap<String, RecordError>,
    keep_state: KeepState,
    kept_at: Option<u64>,
    notices: Vec<Notice>,
    /// Materials of a table that was read and waits to be taken in.
    pub(crate) waiting: Vec<OwnMaterial>,
    pub(crate) last: LastView,
}

impl Session {
    /// Reads everything a store keeps. On an empty store the invented example is put on the shelf.
    #[must_use]
    pub fn open(store: Box<dyn Store>, around: Box<dyn Surroundings>, browser_mark: DecimalMark) -> Self {
        let mut session = Self {
            around,
            store,
            browser_mark,
            settings: Rc::default(),
            bench: Bench::default(),
            shelf: LiteMap::new(),
            open: None,
            open_material: None,
            extracts: LiteMap::new(),
            open_extract: None,
            #[cfg(feature = "whole")]
            looking_at_extracts: false,
            materials: Materials::new(),
            makeups: Makeups::default(),
            formula_uses: LiteMap::new(),
            history: History::default(),
            looking_at_shelf: true,
            cards: LiteMap::new(),
            unkept: LiteMap::new(),
            revisions: LiteMap::new(),
            conflicts: LiteMap::new(),
            unreadable: LiteMap::new(),
            keep_state: KeepState::Kept,
            kept_at: None,
            notices: Vec::new(),
            waiting: Vec::new(),
            last: LastView::default(),
        };
        session.read_everything();
        if !session.settings.example_shown && session.shelf.is_empty() && session.unreadable.is_empty() {
            session.put_example();
            // Nobody did this, so there is nothing to take back.
            session.history.clear();
        }
        session.open = session.last_changed();
        session
    }

    fn read_everything(&mut self) {
        let Ok(keys) = self.store.keys() else {
            self.keep_state = KeepState::Blocked;
            return;
        };
        for key in keys {
            if key == SETTINGS_KEY
                || [FORMULA_KEY, MATERIAL_KEY, HOLDING_KEY, EXTRACT_KEY].iter().any(|kind| key.starts_with(kind))
            {
                self.read_record(&key);
            }
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
        let slot = if key == SETTINGS_KEY {
            self.decode::<SettingsRecord>(key, text).map(|record| {
                self.revisions.insert(key.to_owned(), record.revision);
                Slot::Settings(Rc::new(record.settings))
            })
        } else if key.starts_with(FORMULA_KEY) {
            self.decode::<FormulaRecord>(key, text).map(|record| {
                self.revisions.insert(key.to_owned(), record.revision);
                Slot::Formula(record.id, Some(Rc::new(record)))
            })
        } else if key.starts_with(EXTRACT_KEY) {
            self.decode::<ExtractRecord>(key, text).map(|record| {
                self.revisions.insert(key.to_owned(), record.revision);
                Slot::Extract(record.id, Some(Rc::new(record)))
            })
        } else if key.starts_with(HOLDING_KEY) {
            self.decode::<HoldingRecord>(key, text).map(|record| {
                self.revisions.insert(key.to_owned(), record.revision);
                Slot::Holding(record.material, Some(Rc::new(record.holding)))
            })
        } else {
            self.decode::<MaterialRecord>(key, text).and_then(|record| {
                self.revisions.insert(key.to_owned(), record.revision);
                match record.own.material.id {
                    MaterialId::Own(number) => Some(Slot::Material(number, Some(Rc::new(record.own)))),
                    MaterialId::Catalogue(_) | MaterialId::Formula(_) => None,
                }
            })
        };
        if let Some(slot) = slot {
            self.place(slot);
        }
    }

    fn decode<T: Kept>(&mut self, key: &str, text: &str) -> Option<T> {
        match record::read(text) {
            Ok(body) => {
                self.unreadable.remove(key);
                Some(body)
            }
            Err(error) => {
                self.unreadable.insert(key.to_owned(), error);
                None
            }
        }
    }

    /// Acts, and says what of the view changed.
    pub fn apply(&mut self, command: Command) -> Update {
        let answer = self.act(command);
        self.present(Some(answer))
    }

    /// Everything there is to show, for a page that shows nothing yet.
    pub fn show_everything(&mut self) -> Update {
        self.last = LastView::default();
        self.present(None)
    }

    pub(crate) fn act(&mut self, command: Command) -> Answer {
        match command {
            Command::Undo {} => self.undo(),
            Command::Redo {} => self.redo(),
            Command::LookAtShelf { looking } => {
                self.looking_at_shelf = looking;
                Answer::default()
            }
            Command::ChangedElsewhere { key } => self.changed_elsewhere(&key),
            Command::TakeTheirs { key } => self.take_theirs(&key),
            Command::KeepBoth { key } => self.keep_both(&key),
            Command::SetBatchWay { .. }
            | Command::SetBatchMass { .. }
            | Command::SetContainerCount { .. }
            | Command::SetContainerVolume { .. }
            | Command::SetHeadspace { .. }
            | Command::SetLoss { .. }
            | Command::SetDensity { .. }
            | Command::SetStock { .. }
            | Command::RemoveStock { .. }
            | Command::SetSetting { .. } => self.act_on_batch(command),
            Command::NewMaterial { .. }
            | Command::CopyMaterial { .. }
            | Command::OpenMaterial { .. }
            | Command::CloseMaterial {}
            | Command::SetMaterialText { .. }
            | Command::SetMaterialClass { .. }
            | Command::SetMaterialPhase { .. }
            | Command::AddPart { .. }
            | Command::SetPartAmount { .. }
            | Command::RemovePart { .. }
            | Command::DeleteMaterial { .. } => self.act_on_material(command),
            #[cfg(feature = "whole")]
            Command::LookAtExtracts { .. }
            | Command::NewExtract { .. }
            | Command::OpenExtract { .. }
            | Command::DeleteExtract { .. }
            | Command::RestoreExtractExample {}
            | Command::SetExtract { .. }
            | Command::RemoveFromBlend { .. }
            | Command::RemoveExtractStep { .. }
            | Command::TakeExtractOffer { .. } => self.act_on_extract_if_whole(command),
            Command::SetHolding { material, field, text } => self.set_holding(material, field, &text),
            Command::ImportTable {} => self.import_table(),
            Command::NewFormula { .. }
            | Command::OpenFormula { .. }
            | Command::DuplicateFormula { .. }
            | Command::RenameFormula { .. }
            | Command::DeleteFormula { .. }
            | Command::RestoreExample {} => self.act_on_shelf(command),
            other => self.act_on_formula(other),
        }
    }

    /// Extracts are a room beyond the main job: without the whole seam, nothing of them is worked out.
    fn act_on_extract_if_whole(&mut self, command: Command) -> Answer {
        #[cfg(feature = "whole")]
        let answer = self.act_on_extract(command);
        #[cfg(not(feature = "whole"))]
        let answer = {
            drop(command);
            Answer::default()
        };
        answer
    }

    // ---- changing records -------------------------------------------------------------------------------------

    /// Mark between whole and fraction, as this maker reads it.
    #[must_use]
    pub fn mark(&self) -> DecimalMark {
        self.settings.decimal_mark.unwrap_or(self.browser_mark)
    }

    /// The open formula.
    #[must_use]
    pub fn formula(&self) -> Option<&Formula> {
        self.open.and_then(|id| self.shelf.get(&id)).map(|record| &record.formula)
    }

    /// The open formula and what it comes to.
    pub(crate) fn evaluate_open(&mut self) -> Option<(Rc<FormulaRecord>, Evaluation)> {
        let record = self.open.and_then(|id| self.shelf.get(&id)).map(Rc::clone)?;
        let evaluation = evaluate(&record.formula, &self.bench, &self.materials, &mut self.makeups);
        Some((record, evaluation))
    }

    /// Changes the open formula as one act that can be undone. Typing on in the same `field` is the same act.
    pub(crate) fn change_formula(&mut self, act: &'static str, field: Option<&str>, edit: impl FnOnce(&mut Formula)) {
        if let Some(id) = self.open {
            self.change_formula_of(id, act, field, edit);
        }
    }

    /// Changes any formula on the shelf.
    pub(crate) fn change_formula_of(
        &mut self,
        id: FormulaId,
        act: &'static str,
        field: Option<&str>,
        edit: impl FnOnce(&mut Formula),
    ) {
        let Some(before) = self.shelf.get(&id).map(Rc::clone) else { return };
        let mut after = (*before).clone();
        edit(&mut after.formula);
        if after.formula == before.formula {
            return;
        }
        after.changed_at = self.around.now();
        let open = self.open;
        self.commit(
            act,
            field,
            open,
            vec![Slot::Formula(id, Some(before))],
            vec![Slot::Formula(id, Some(Rc::new(after)))],
        );
    }

    /// Puts records in place as one act that can be undone.
    pub(crate) fn commit(
        &mut self,
        act: &'static str,
        field: Option<&str>,
        open_after: Option<FormulaId>,
        before: Vec<Slot>,
        after: Vec<Slot>,
    ) {
        let open_before = self.open;
        for slot in &after {
            self.put(slot.clone());
        }
        self.open = open_after;
        let field = field.map(str::to_owned);
        let at = self.around.now();
        self.history.remember(Change { act, field, at, open_before, open_after, before, after });
    }

    fn undo(&mut self) -> Answer {
        if let Some(change) = self.history.undo() {
            self.put_back(change.before, change.open_before);
        }
        Answer::default()
    }

    fn redo(&mut self) -> Answer {
        if let Some(change) = self.history.redo() {
            self.put_back(change.after, change.open_after);
        }
        Answer::default()
    }

    fn put_back(&mut self, slots: Vec<Slot>, open: Option<FormulaId>) {
        for slot in slots {
            self.put(slot);
        }
        self.open = open.filter(|id| self.shelf.contains_key(id)).or_else(|| self.last_changed());
        if let Some(material) = self.open_material
            && self.materials_has_not(material)
        {
            self.open_material = None;
        }
    }

    fn materials_has_not(&self, id: MaterialId) -> bool {
        use stillroom_core::MaterialSource as _;
        self.materials.material(id).is_none()
    }

    /// Puts a record in place and remembers that it is to be kept.
    fn put(&mut self, slot: Slot) {
        self.unkept.insert(key_of(&slot), ());
        self.place(slot);
    }

    /// Puts a record in place.
    fn place(&mut self, slot: Slot) {
        match slot {
            Slot::Formula(id, record) => {
                if let Some(before) = self.shelf.get(&id).map(Rc::clone) {
                    self.count_uses(before.formula.lines().map(|line| line.material), false);
                }
                let used = self.formula_uses.get(&id.0).is_some_and(|uses| *uses > 0);
                self.materials.set_formula(id, record.as_ref().map(|record| &record.formula));
                if let Some(record) = record {
                    self.count_uses(record.formula.lines().map(|line| line.material), true);
                    self.shelf.insert(id, record);
                } else {
                    self.shelf.remove(&id);
                    self.cards.remove(&id);
                }
                if used {
                    self.forget_makeups();
                } else {
                    self.makeups.forget(id.as_material());
                }
            }
            Slot::Material(number, own) => {
                if let Some(before) = self.materials.own_material(number).map(Rc::clone) {
                    self.count_uses(parts_of(&before), false);
                }
                if let Some(own) = &own {
                    self.count_uses(parts_of(own), true);
                }
                self.materials.set_own(number, own);
                self.last.own_materials_stale = true;
                self.forget_makeups();
            }
            Slot::Extract(id, record) => {
                match record {
                    Some(record) => self.extracts.insert(id, record),
                    None => self.extracts.remove(&id),
                };
                self.open_extract = self.open_extract.filter(|id| self.extracts.contains_key(id));
            }
            Slot::Holding(material, holding) => {
                self.materials.set_holding(material, holding);
                self.forget_makeups();
            }
            Slot::Settings(settings) => {
                self.bench = settings.bench();
                self.settings = settings;
                self.cards.clear();
                self.last.forget_inputs();
            }
        }
    }

    fn forget_makeups(&mut self) {
        self.makeups.clear();
        self.cards.clear();
        // Names may have changed.
        self.last.forget_inputs();
    }

    fn count_uses(&mut self, materials: impl Iterator<Item = MaterialId>, up: bool) {
        for material in materials {
            if let MaterialId::Formula(number) = material {
                let uses = self.formula_uses.entry(number).or_insert(0);
                *uses = if up { *uses + 1 } else { uses.saturating_sub(1) };
            }
        }
    }

    pub(crate) fn last_changed(&self) -> Option<FormulaId> {
        self.shelf.values().max_by_key(|record| record.changed_at).map(|record| record.id)
    }

    pub(crate) fn fresh_formula_id(&self) -> FormulaId {
        FormulaId(self.around.random())
    }

    pub(crate) fn notice(&mut self, code: &'static str, text: String, undo: bool) {
        self.notices.push(Notice { code, text, undo });
    }

    // ---- keeping ----------------------------------------------------------------------------------------------

    /// Keeps what is not kept yet, and says how that went. Called once the page has drawn a change.
    pub fn keep(&mut self) -> Update {
        let keys: Vec<String> = self.unkept.keys().cloned().collect();
        let mut failure = None;
        for key in keys {
            if self.conflicts.contains_key(&key) {
                continue;
            }
            match self.keep_one(&key) {
                Ok(true) => {
                    self.unkept.remove(&key);
                    self.kept_at = Some(self.around.now());
                }
                Ok(false) => {
                    let name = self.name_of(&key);
                    self.conflicts.insert(key, name);
                }
                Err(error) => failure = Some(error),
            }
        }
        self.keep_state = match failure {
            Some(StoreError::Full) => KeepState::Full,
            Some(StoreError::Blocked) => KeepState::Blocked,
            None if !self.conflicts.is_empty() => KeepState::Conflict,
            // A store that cannot even be listed keeps nothing, whether or not there was something to keep.
            None if self.keep_state == KeepState::Blocked && self.store.keys().is_err() => KeepState::Blocked,
            None => KeepState::Kept,
        };
        let status = self.present_status();
        Update { status: if_changed(&mut self.last.status, status), ..Update::default() }
    }

    /// Whether something is still to be kept.
    #[must_use]
    pub fn has_unkept(&self) -> bool {
        !self.unkept.is_empty()
    }

    /// Keeps one record. `Ok(false)` if another page changed it since this one read it: then nothing is written.
    fn keep_one(&mut self, key: &str) -> Result<bool, StoreError> {
        let known = self.revisions.get(key).copied().unwrap_or(0);
        let elsewhere = self.store.get(key)?.map(|text| record::read_revision(&text));
        match elsewhere {
            Some(Ok(revision)) if revision != known => return Ok(false),
            // What cannot be read is not ours to overwrite.
            Some(Err(_)) => return Ok(false),
            Some(Ok(_)) | None => {}
        }
        let revision = known + 1;
        let text = self.text_of(key, revision);
        if let Some(text) = text {
            self.store.set(key, &text)?;
            self.revisions.insert(key.to_owned(), revision);
        } else {
            self.store.remove(key)?;
            self.revisions.remove(key);
        }
        Ok(true)
    }

    /// A record as it is kept; nothing where it was deleted.
    fn text_of(&self, key: &str, revision: u64) -> Option<String> {
        if key == SETTINGS_KEY {
            Some(record::write(&SettingsRecord { revision, settings: (*self.settings).clone() }))
        } else if let Some(id) = formula_of(key) {
            self.shelf.get(&id).map(|record| record::write(&FormulaRecord { revision, ..(**record).clone() }))
        } else if let Some(material) = holding_of(key) {
            self.materials
                .holding(material)
                .map(|holding| record::write(&HoldingRecord { revision, material, holding: (**holding).clone() }))
        } else if let Some(id) = extract_of(key) {
            self.extracts.get(&id).map(|record| record::write(&ExtractRecord { revision, ..(**record).clone() }))
        } else {
            material_of(key).and_then(|number| self.materials.own_material(number)).map(|own| {
                record::write(&MaterialRecord { revision, changed_at: self.around.now(), own: (**own).clone() })
            })
        }
    }

    /// Records that are not kept yet, as key and text in turn; an empty text for one that was deleted.
    #[must_use]
    pub fn hand_over(&self) -> Vec<String> {
        let revision = |key: &str| self.revisions.get(key).copied().unwrap_or(0);
        self.unkept.keys().flat_map(|key| [key.clone(), self.text_of(key, revision(key)).unwrap_or_default()]).collect()
    }

    /// Takes records that another session of this page has not kept.
    pub fn take_over(&mut self, records: Vec<String>) {
        let mut records = records.into_iter();
        while let (Some(key), Some(text)) = (records.next(), records.next()) {
            if text.is_empty() {
                self.take_out(&key);
            } else {
                self.read_text(&key, &text);
            }
            self.unkept.insert(key, ());
        }
    }

    /// Takes the record under a key out of the session.
    fn take_out(&mut self, key: &str) {
        if let Some(id) = formula_of(key) {
            self.place(Slot::Formula(id, None));
        } else if let Some(number) = material_of(key) {
            self.place(Slot::Material(number, None));
        } else if let Some(material) = holding_of(key) {
            self.place(Slot::Holding(material, None));
        } else if let Some(id) = extract_of(key) {
            self.place(Slot::Extract(id, None));
        }
    }

    /// Another page wrote a record: take it, unless this page has changed it too.
    fn changed_elsewhere(&mut self, key: &str) -> Answer {
        let ours = key == SETTINGS_KEY
            || formula_of(key).is_some()
            || material_of(key).is_some()
            || holding_of(key).is_some()
            || extract_of(key).is_some();
        if ours && !self.unkept.contains_key(key) {
            self.take_from_store(key);
        }
        Answer::default()
    }

    fn take_theirs(&mut self, key: &str) -> Answer {
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
        // Undo would bring back records that are no longer what they were.
        self.history.clear();
        self.open = self.open.filter(|id| self.shelf.contains_key(id)).or_else(|| self.last_changed());
    }

    fn keep_both(&mut self, key: &str) -> Answer {
        if let Some(id) = formula_of(key)
            && let Some(ours) = self.shelf.get(&id).map(Rc::clone)
        {
            let copy_id = self.fresh_formula_id();
            let mut copy = FormulaRecord { id: copy_id, revision: 0, ..(*ours).clone() };
            copy.formula.name = sentences::this_pages_version(&ours.formula.name);
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
        let material = material_of(key).map(MaterialId::Own).or_else(|| holding_of(key));
        material.map(|material| self.materials.name(material)).unwrap_or_default()
    }

    // ---- showing ----------------------------------------------------------------------------------------------

    fn present(&mut self, answer: Option<Answer>) -> Update {
        if !self.unkept.is_empty() && self.keep_state == KeepState::Kept {
            self.keep_state = KeepState::Keeping;
        }
        let mut update = Update { answer, notices: std::mem::take(&mut self.notices), ..Update::default() };
        self.present_formula(&mut update);
        if self.last.own_materials_stale || self.last.own_materials.is_none() {
            self.last.own_materials_stale = false;
            let own = self.present_own_materials();
            update.own_materials = if_changed(&mut self.last.own_materials, own);
        }
        let material = self.present_open_material();
        update.material = if_changed(&mut self.last.material, material);
        let settings = self.present_settings();
        update.settings = if_changed(&mut self.last.settings, settings);
        if self.looking_at_shelf {
            let cards = self.present_shelf();
            update.shelf = if_changed(&mut self.last.shelf, cards);
        }
        #[cfg(feature = "whole")]
        if self.looking_at_extracts {
            let extracts = self.present_extracts();
            update.extracts = if_changed(&mut self.last.extracts, extracts);
            let extract = self.present_open_extract();
            update.extract = if_changed(&mut self.last.extract, extract);
        }
        let history = HistoryView {
            undo: self.history.next_undo().map(sentences::undo_label),
            redo: self.history.next_redo().map(sentences::redo_label),
        };
        update.history = if_changed(&mut self.last.history, history);
        let status = self.present_status();
        update.status = if_changed(&mut self.last.status, status);
        update
    }

    pub(crate) fn present_status(&self) -> StatusView {
        let text = sentences::keep_state(self.keep_state, self.kept_at, self.around.minutes_ahead());
        let conflict = |(key, name): (&String, &String)| ConflictView {
            key: key.clone(),
            text: sentences::changed_elsewhere(name),
        };
        StatusView {
            state: self.keep_state,
            text,
            conflicts: self.conflicts.iter().map(conflict).collect(),
            unreadable: self.unreadable.iter().map(|(key, error)| sentences::unreadable(key, error)).collect(),
        }
    }

    /// Materials that answer a query, for the page to choose from.
    pub fn search(&mut self, query: &str, filter: &Filter) -> Vec<crate::view::MaterialHit> {
        let found = self.materials.search(query, filter);
        found.into_iter().map(|id| self.present_hit(id)).collect()
    }
}

fn parts_of(own: &OwnMaterial) -> impl Iterator<Item = MaterialId> {
    let parts = match &own.material.makeup {
        Makeup::Composite(parts) => parts.as_slice(),
        Makeup::Simple(_) => &[],
    };
    parts.iter().map(|part| part.material)
}

fn key_of(slot: &Slot) -> String {
    match slot {
        Slot::Formula(id, _) => format!("{FORMULA_KEY}{id}"),
        Slot::Material(number, _) => format!("{MATERIAL_KEY}{number:016x}"),
        Slot::Extract(id, _) => format!("{EXTRACT_KEY}{id}"),
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
