//! What the maker is doing: formulas, materials and settings on this device, which are open, what can be undone, and
//! where it is kept.

use crate::command::Command;
use crate::history::{Change, History, Slot};
use crate::keeping::{Store, Surroundings};
use crate::materials::Materials;
use crate::sentences;
use crate::settings::Settings;
use crate::view::{
    Answer, ConflictView, HistoryView, KeepState, LastView, Notice, ShelfCard, StatusView, Update, if_changed,
};
use litemap::LiteMap;
use std::rc::Rc;
use stillroom_catalogue::Filter;
#[cfg(feature = "whole")]
use stillroom_core::checks::Finding;
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::{Bench, Evaluation, evaluate};
use stillroom_core::number::DecimalMark;
use stillroom_core::{Formula, FormulaId, Makeup, MaterialId};
#[cfg(feature = "whole")]
use stillroom_exchange::batch::{BatchId, BatchRecord, JournalRecord};
use stillroom_exchange::extract::{ExtractId, ExtractRecord};
use stillroom_exchange::record::{FormulaRecord, OwnMaterial, RecordError};

pub(crate) use records::key_of;
#[cfg(feature = "whole")]
pub(crate) use records::{FORMULA_KEY, MATERIAL_KEY};
#[cfg(feature = "whole")]
pub(crate) use records::{absent, read_slot, write_slot};

#[cfg(feature = "whole")]
mod journal;
mod records;

/// What is in sight of the batches.
#[cfg(feature = "whole")]
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct AtBench {
    /// Whether the page shows them: they are worked out only then.
    pub(crate) looking: bool,
    /// The open one.
    pub(crate) open: Option<BatchId>,
    /// The step the maker looks at, where it is not the one to do next.
    pub(crate) focus: Option<stillroom_core::run::steps::Step>,
}

/// The checks of the open formula.
#[cfg(feature = "whole")]
#[derive(Debug, Default)]
pub(crate) struct Checking {
    /// What they found.
    pub(crate) found: Vec<Finding>,
    /// Keys of the findings that are open.
    pub(crate) opened: Vec<String>,
    /// Whether they follow at rest, so that what was typed is drawn first.
    pub(crate) at_rest: bool,
    /// Whether the formula changed since they were made.
    pub(crate) behind: bool,
    /// Whether the next update waits for them, because it is about them.
    pub(crate) prompt: bool,
}

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
    #[cfg(feature = "whole")]
    pub(crate) batches: LiteMap<BatchId, Rc<BatchRecord>>,
    #[cfg(feature = "whole")]
    pub(crate) journals: LiteMap<BatchId, Rc<JournalRecord>>,
    #[cfg(feature = "whole")]
    pub(crate) at_bench: AtBench,
    #[cfg(feature = "whole")]
    pub(crate) checking: Checking,
    pub(crate) materials: Materials,
    pub(crate) makeups: Makeups,
    /// How often each formula is a material of something.
    formula_uses: LiteMap<u64, usize>,
    pub(crate) history: History,
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
    /// A backup that was read and waits to be restored.
    #[cfg(feature = "whole")]
    pub(crate) waiting_backup: crate::backup::Waiting,
    /// Whether every constituent is handed out with its trail, for a page that cannot ask.
    pub(crate) hands_out_trails: bool,
    pub(crate) last: LastView,
}

impl Session {
    /// Reads everything a store keeps. On an empty store the invented example is put on the shelf.
    #[must_use]
    pub fn open(store: Box<dyn Store>, around: Box<dyn Surroundings>, browser_mark: DecimalMark) -> Self {
        let mut session = Self::empty(store, around, browser_mark);
        session.read_everything();
        if !session.settings.example_shown && session.shelf.is_empty() && session.unreadable.is_empty() {
            session.put_example();
            // Nobody did this, so there is nothing to take back.
            session.history.clear();
        }
        session.open = session.last_changed();
        session
    }

    /// A session that has read nothing yet.
    pub(crate) fn empty(store: Box<dyn Store>, around: Box<dyn Surroundings>, browser_mark: DecimalMark) -> Self {
        Self {
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
            #[cfg(feature = "whole")]
            batches: LiteMap::new(),
            #[cfg(feature = "whole")]
            journals: LiteMap::new(),
            #[cfg(feature = "whole")]
            at_bench: AtBench::default(),
            #[cfg(feature = "whole")]
            checking: Checking::default(),
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
            #[cfg(feature = "whole")]
            waiting_backup: crate::backup::Waiting::default(),
            hands_out_trails: false,
            last: LastView::default(),
        }
    }

    /// Acts, and says what of the view changed.
    pub fn apply(&mut self, command: Command) -> Update {
        let answer = self.act(command);
        self.present(Some(answer))
    }

    /// Says what became of something, and what of the view changed.
    #[cfg(feature = "whole")]
    pub(crate) fn present_answer(&mut self, answer: Answer) -> Update {
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
            #[cfg(feature = "whole")]
            Command::ActOnBatch { act, on, text } => self.act_on_batches(&act, &on, &text),
            #[cfg(feature = "whole")]
            Command::KeepCopy { link } => self.keep_copy(&link),
            #[cfg(feature = "whole")]
            Command::RestoreBackup { differing } => self.restore_backup(differing == "theirs"),
            #[cfg(feature = "whole")]
            Command::RestoreVersion { formula, version } => self.restore_version(formula, &version),
            #[cfg(feature = "whole")]
            Command::OpenFinding { .. }
            | Command::CureFinding { .. }
            | Command::SetAsideFinding { .. }
            | Command::TakeFindingBack { .. }
            | Command::SetSuspended { .. }
            | Command::SetKind { .. }
            | Command::SetMeasuredPh { .. }
            | Command::SetColdStorage { .. } => self.act_on_finding(command),
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
        self.history.remember(Change { act: act.into(), field, at, open_before, open_after, before, after });
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
    pub(crate) fn place(&mut self, slot: Slot) {
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
            #[cfg(feature = "whole")]
            Slot::Batch(id, record) => {
                match record {
                    Some(record) => self.batches.insert(id, record),
                    None => self.batches.remove(&id),
                };
                self.at_bench.open = self.at_bench.open.filter(|id| self.batches.contains_key(id));
            }
            #[cfg(feature = "whole")]
            Slot::Journal(id, record) => {
                match record {
                    Some(record) => self.journals.insert(id, record),
                    None => self.journals.remove(&id),
                };
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
        #[cfg(feature = "whole")]
        self.present_at_bench(&mut update);
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
