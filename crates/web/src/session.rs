//! What the maker is doing: formulas, materials and settings on this device, which are open, what can be undone, and
//! where it is kept.

use crate::command::Command;
use crate::history::{Change, History, Slot};
use crate::keeping::{LoggedStore, Store, Surroundings, WriteLog};
use crate::lazy::lazy;
use crate::limits::{fits, refuse_long_text};
use crate::materials::Materials;
use crate::present_shelf::CARDS_AT_ONCE;
use crate::sentences;
use crate::settings::Settings;
use crate::view::{
    Answer, ConflictView, HistoryView, KeepState, LastView, Notice, ShelfCard, StatusView, Update, if_changed,
};
use litemap::LiteMap;
use std::rc::Rc;
use stillroom_catalogue::{Favour, Filter};
use stillroom_core::checks::Finding;
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::{Bench, Evaluation, evaluate};
use stillroom_core::number::DecimalMark;
use stillroom_core::{Formula, FormulaId, Makeup, MaterialId, PhaseKind};
use stillroom_exchange::batch::{BatchId, BatchRecord, JournalRecord};
use stillroom_exchange::extract::{ExtractId, ExtractRecord};
use stillroom_exchange::record::{FormulaRecord, OwnMaterial, RecordError};

pub(crate) use records::key_of;
pub(crate) use records::{FORMULA_KEY, MATERIAL_KEY};
pub(crate) use records::{absent, read_slot, write_slot};

mod journal;
mod records;

/// How many of the formulas that changed last say what a maker uses.
const USED_LATELY: usize = 20;

/// What is in sight of the batches.
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

/// What the page shows: the rest is worked out once somebody looks.
#[derive(Debug, Clone, Copy)]
pub(crate) struct InSight {
    /// Whether it shows the shelf.
    pub(crate) shelf: bool,
    /// How many cards of the shelf.
    pub(crate) cards: usize,
    /// Whether it shows the extracts.
    pub(crate) extracts: bool,
}

/// How what was written gets onto the disk at once.
#[derive(Debug, Default)]
struct Logging {
    /// What was written and not handed out yet, where the page keeps a log of it.
    log: Option<WriteLog>,
    /// Whether the page is writing to its log.
    committing: bool,
    /// Whether the page could not write to its log.
    failed: bool,
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
    pub(crate) batches: LiteMap<BatchId, Rc<BatchRecord>>,
    pub(crate) journals: LiteMap<BatchId, Rc<JournalRecord>>,
    pub(crate) at_bench: AtBench,
    pub(crate) checking: Checking,
    pub(crate) materials: Materials,
    pub(crate) makeups: Makeups,
    /// How often each formula is a material of something.
    formula_uses: LiteMap<u64, usize>,
    pub(crate) history: History,
    pub(crate) in_sight: InSight,
    /// Cards worked out, with the record they were worked out from.
    pub(crate) cards: LiteMap<FormulaId, (Rc<FormulaRecord>, Rc<ShelfCard>)>,
    unkept: LiteMap<String, ()>,
    /// Revision of each record as this page last read or wrote it.
    revisions: LiteMap<String, u64>,
    conflicts: LiteMap<String, String>,
    pub(crate) unreadable: LiteMap<String, RecordError>,
    keep_state: KeepState,
    logging: Logging,
    kept_at: Option<u64>,
    notices: Vec<Notice>,
    /// Whether what was asked for would have made a record too large to be kept.
    too_large: bool,
    /// Materials of a table that was read and waits to be taken in.
    pub(crate) waiting: Vec<OwnMaterial>,
    /// A backup that was read and waits to be restored.
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

    /// The same on a store whose writing is logged: what is written counts as kept once the log is on the disk
    /// ([`Session::committed`]).
    #[must_use]
    pub fn open_logged<S: Store + 'static>(
        store: LoggedStore<S>,
        around: Box<dyn Surroundings>,
        browser_mark: DecimalMark,
    ) -> Self {
        let (log, gone) = (store.log(), store.gone());
        let mut session = Self::open(Box::new(store), around, browser_mark);
        session.logging.log = Some(log);
        for (key, revision) in gone {
            session.revisions.entry(key).or_insert(revision);
        }
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
            batches: LiteMap::new(),
            journals: LiteMap::new(),
            at_bench: AtBench::default(),
            checking: Checking::default(),
            materials: Materials::new(),
            makeups: Makeups::default(),
            formula_uses: LiteMap::new(),
            history: History::default(),
            in_sight: InSight { shelf: true, cards: CARDS_AT_ONCE, extracts: false },
            cards: LiteMap::new(),
            unkept: LiteMap::new(),
            revisions: LiteMap::new(),
            conflicts: LiteMap::new(),
            unreadable: LiteMap::new(),
            keep_state: KeepState::Kept,
            logging: Logging::default(),
            kept_at: None,
            notices: Vec::new(),
            too_large: false,
            waiting: Vec::new(),
            waiting_backup: crate::backup::Waiting::default(),
            hands_out_trails: false,
            last: LastView::default(),
        }
    }

    /// Acts, and says what of the view changed.
    pub fn apply(&mut self, command: Command) -> Update {
        let answer = self.act_or_refuse(command);
        self.present(Some(answer))
    }

    /// Says what became of something, and what of the view changed.
    pub(crate) fn present_answer(&mut self, answer: Answer) -> Update {
        self.present(Some(answer))
    }

    /// Shows what changed without anybody having acted.
    pub fn show_changes(&mut self) -> Update {
        self.present(None)
    }

    /// Everything there is to show, for a page that shows nothing yet.
    pub fn show_everything(&mut self) -> Update {
        self.last = LastView::default();
        self.present(None)
    }

    /// Acts, unless that would make something larger than can be kept: then nothing changes, and the answer says why.
    fn act_or_refuse(&mut self, command: Command) -> Answer {
        if let Some(refusal) = refuse_long_text(&command) {
            return self.as_notice_without_field(refusal);
        }
        let said = self.notices.len();
        let answer = self.act(command);
        if !std::mem::take(&mut self.too_large) {
            return answer;
        }
        // What was to be said of it did not come about.
        self.notices.truncate(said);
        let error = Some(sentences::record_too_large().to_owned());
        self.as_notice_without_field(Answer { error, code: Some("record.too-large"), made: None, ..answer })
    }

    /// An error that belongs beside no field is said as a notice.
    pub(crate) fn as_notice_without_field(&mut self, answer: Answer) -> Answer {
        if let (None, Some(error), Some(code)) = (&answer.field, &answer.error, answer.code) {
            self.notice(code, error.clone(), false);
        }
        answer
    }

    pub(crate) fn act(&mut self, command: Command) -> Answer {
        match command {
            Command::Undo {} => self.undo(),
            Command::UndoAct { change } => {
                if self.history.next_undo().is_some_and(|next| next.number == change) {
                    self.undo()
                } else {
                    Answer::default()
                }
            }
            Command::Redo {} => self.redo(),
            Command::LookAtShelf { looking } => {
                self.in_sight.shelf = looking;
                Answer::default()
            }
            Command::LookFurther {} => {
                self.in_sight.cards =
                    self.in_sight.cards.saturating_add(CARDS_AT_ONCE).min(self.shelf.len().max(CARDS_AT_ONCE));
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
            | Command::DeleteMaterial { .. }
            | Command::SetHolding { .. } => act_on_material(self, command),
            Command::LookAtExtracts { .. }
            | Command::NewExtract { .. }
            | Command::OpenExtract { .. }
            | Command::DeleteExtract { .. }
            | Command::RestoreExtractExample {}
            | Command::SetExtract { .. }
            | Command::RemoveFromBlend { .. }
            | Command::RemoveExtractStep { .. }
            | Command::TakeExtractOffer { .. }
            | Command::ActOnBatch { .. }
            | Command::ImportTable {}
            | Command::RestoreBackup { .. }
            | Command::OpenFinding { .. }
            | Command::CureFinding { .. }
            | Command::SetAsideFinding { .. }
            | Command::TakeFindingBack { .. }
            | Command::SetSuspended { .. }
            | Command::SetKind { .. }
            | Command::SetMeasuredPh { .. }
            | Command::SetColdStorage { .. } => act_beyond(self, command),
            Command::KeepCopy { .. } | Command::RestoreVersion { .. } => act_on_shared(self, command),
            Command::NewFormula { .. }
            | Command::OpenFormula { .. }
            | Command::DuplicateFormula { .. }
            | Command::RenameFormula { .. }
            | Command::DeleteFormula { .. }
            | Command::RestoreExample {} => self.act_on_shelf(command),
            other => self.act_on_formula(other),
        }
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

    /// Which formula is open.
    #[must_use]
    pub fn open_formula(&self) -> Option<FormulaId> {
        self.open
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

    /// Puts records in place as one act that can be undone. Where one would be too large to be kept nothing changes, and
    /// the answer to the command will say so.
    pub(crate) fn commit(
        &mut self,
        act: &'static str,
        field: Option<&str>,
        open_after: Option<FormulaId>,
        before: Vec<Slot>,
        after: Vec<Slot>,
    ) {
        if !after.iter().all(fits) {
            self.too_large = true;
            return;
        }
        let open_before = self.open;
        for slot in &after {
            self.put(slot.clone());
        }
        self.open = open_after;
        let field = field.map(str::to_owned);
        let at = self.around.now();
        self.history.remember(Change { number: 0, act, field, at, open_before, open_after, before, after });
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
            Slot::Batch(id, record) => {
                match record {
                    Some(record) => self.batches.insert(id, record),
                    None => self.batches.remove(&id),
                };
                self.at_bench.open = self.at_bench.open.filter(|id| self.batches.contains_key(id));
            }
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

    /// Says something once. With `undo` it offers to take back the change that was made last, and none but that.
    pub(crate) fn notice(&mut self, code: &'static str, text: String, undo: bool) {
        let undo = self.history.next_undo().filter(|_| undo).map(|change| change.number);
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
        present_material(self, &mut update);
        let settings = self.present_settings();
        update.settings = if_changed(&mut self.last.settings, settings);
        if self.in_sight.shelf {
            let cards = self.present_shelf();
            update.shelf = if_changed(&mut self.last.shelf, cards);
        }
        present_beyond(self, &mut update);
        let history = HistoryView {
            undo: self.history.next_undo().map(|change| sentences::undo_label(change.act)),
            undoes: self.history.next_undo().map(|change| change.number),
            redo: self.history.next_redo().map(|change| sentences::redo_label(change.act)),
        };
        update.history = if_changed(&mut self.last.history, history);
        let status = self.present_status();
        update.status = if_changed(&mut self.last.status, status);
        update
    }

    pub(crate) fn present_status(&self) -> StatusView {
        let mut text = sentences::keep_state(self.keep_state, self.kept_at, self.around.minutes_ahead());
        if self.keep_state == KeepState::Kept && self.logging.failed {
            text = sentences::kept_loosely(&text);
        }
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
        self.search_for(query, filter, None)
    }

    /// The same for a line of a phase: of what answers about equally well, what this maker has or used lately and what
    /// usually goes into that phase stand first.
    pub fn search_for(
        &mut self,
        query: &str,
        filter: &Filter,
        phase: Option<PhaseKind>,
    ) -> Vec<crate::view::MaterialHit> {
        // Where it is for no line, the order is that of the answers alone.
        let favour =
            phase.map_or_else(Favour::default, |phase| Favour { used: self.used_lately(), phase: Some(phase) });
        let found = self.materials.search(query, filter, &favour);
        found.into_iter().map(|id| self.present_hit(id)).collect()
    }

    /// What is in the formulas that changed last, and what the maker has.
    fn used_lately(&self) -> Vec<MaterialId> {
        let lately = self.records_by_change();
        let lines = lately.iter().take(USED_LATELY).flat_map(|record| record.formula.lines().map(|line| line.material));
        lines.chain(self.materials.kept_holdings().map(|(material, _)| material)).collect()
    }
}

lazy! {
    whole "01" fn act_beyond(session: &mut Session, command: Command) -> Answer {
        match command {
            Command::ActOnBatch { act, on, text } => session.act_on_batches(&act, &on, &text),
            Command::ImportTable {} => session.import_table(),
            Command::RestoreBackup { differing } => session.restore_backup(differing == "theirs"),
            Command::OpenFinding { .. }
            | Command::CureFinding { .. }
            | Command::SetAsideFinding { .. }
            | Command::TakeFindingBack { .. }
            | Command::SetSuspended { .. }
            | Command::SetKind { .. }
            | Command::SetMeasuredPh { .. }
            | Command::SetColdStorage { .. } => session.act_on_finding(command),
            of_an_extract => session.act_on_extract(of_an_extract),
        }
    } else { Answer::default() }
}

lazy! {
    share "02" fn act_on_shared(session: &mut Session, command: Command) -> Answer {
        match command {
            Command::KeepCopy { link } => session.keep_copy(&link),
            Command::RestoreVersion { formula, version } => session.restore_version(formula, &version),
            _ => Answer::default(),
        }
    } else { Answer::default() }
}

lazy! {
    whole "16" fn act_on_material(session: &mut Session, command: Command) -> Answer {
        match command {
            Command::SetHolding { material, field, text } => session.set_holding(material, field, &text),
            of_own => session.act_on_material(of_own),
        }
    } else { Answer::default() }
}

lazy! {
    whole "17" fn present_material(session: &mut Session, update: &mut Update) {
        let material = session.present_open_material();
        update.material = if_changed(&mut session.last.material, material);
    } else {}
}

lazy! {
    whole "03" fn present_beyond(session: &mut Session, update: &mut Update) {
        if session.in_sight.extracts {
            let extracts = session.present_extracts();
            update.extracts = if_changed(&mut session.last.extracts, extracts);
            let extract = session.present_open_extract();
            update.extract = if_changed(&mut session.last.extract, extract);
        }
        session.present_at_bench(update);
    } else {}
}

fn parts_of(own: &OwnMaterial) -> impl Iterator<Item = MaterialId> {
    let parts = match &own.material.makeup {
        Makeup::Composite(parts) => parts.as_slice(),
        Makeup::Simple(_) => &[],
    };
    parts.iter().map(|part| part.material)
}
