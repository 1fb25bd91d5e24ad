//! What the maker is doing: formulas, materials and settings on this device, which are open, what can be undone, and
//! where it is kept.

use crate::contract::shown::Shown;
use crate::contract::{Answer, KeepState, Notice};
use crate::session::history::{Change, History, Slot};
use crate::session::keeping::{LoggedStore, Store, Surroundings, WriteLog};
use crate::session::limits::fits;
use crate::session::materials::Materials;
use crate::session::settings::Settings;
use litemap::LiteMap;
use std::rc::Rc;
use stillroom_core::checks::Finding;
use stillroom_core::composition::{Inside, Makeups};
use stillroom_core::evaluation::{Bench, Evaluation, evaluate};
use stillroom_core::number::DecimalMark;
use stillroom_core::{Formula, FormulaId, Makeup, MaterialId};
use stillroom_exchange::batch::{BatchId, BatchRecord, JournalRecord};
use stillroom_exchange::extract::{ExtractId, ExtractRecord};
use stillroom_exchange::record::{FormulaRecord, OwnMaterial, RecordError};

pub(crate) use records::key_of;
pub(crate) use records::{FORMULA_KEY, MATERIAL_KEY};
pub(crate) use records::{absent, read_slot, write_slot};

pub(crate) mod history;
mod journal;
pub mod keeping;
pub(crate) mod limits;
pub(crate) mod materials;
mod records;
pub mod settings;

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
#[derive(Debug, Clone, Default)]
pub(crate) struct InSight {
    /// Whether it shows the shelf.
    pub(crate) shelf: bool,
    /// How often somebody came to look at it.
    pub(crate) visits: usize,
    /// How often somebody looked further along the shelf.
    pub(crate) further: usize,
    /// What is looked for on the shelf, in small letters.
    pub(crate) sought: String,
    /// The tag that every card shown has; empty where none is asked for.
    pub(crate) tag: String,
    /// In which order the shelf stands.
    pub(crate) order: crate::rooms::shelf::command::ShelfOrder,
    /// Whether it shows the extracts.
    pub(crate) extracts: bool,
}

/// A formula worked out, and of what: as long as neither changes it stands.
struct Evaluated {
    of: Rc<FormulaRecord>,
    within: u64,
    evaluation: Rc<Evaluation>,
}

/// How what was written gets onto the disk at once.
#[derive(Debug, Default)]
pub(crate) struct Logging {
    /// What was written and not handed out yet, where the page keeps a log of it.
    log: Option<WriteLog>,
    /// Whether the page is writing to its log.
    committing: bool,
    /// Whether the page could not write to its log.
    pub(crate) failed: bool,
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
    /// Whether a material is caustic, beside what that was seen of: asked of every line at each key.
    pub(crate) caustic: LiteMap<MaterialId, (Rc<Inside>, bool)>,
    /// How often each formula is a material of something.
    formula_uses: LiteMap<u64, usize>,
    pub(crate) history: History,
    pub(crate) in_sight: InSight,
    /// How often something changed that views and evaluations of records that stand as they were hang on: names, units, marks,
    /// materials.
    pub(crate) surroundings_changed: u64,
    /// The open formula as it was worked out last.
    evaluated: Option<Evaluated>,
    pub(crate) unkept: LiteMap<String, ()>,
    /// Revision of each record as this page last read or wrote it.
    revisions: LiteMap<String, u64>,
    pub(crate) conflicts: LiteMap<String, String>,
    pub(crate) unreadable: LiteMap<String, RecordError>,
    pub(crate) keep_state: KeepState,
    pub(crate) logging: Logging,
    pub(crate) kept_at: Option<u64>,
    pub(crate) notices: Vec<Notice>,
    /// Whether what was asked for would have made a record too large to be kept.
    pub(crate) too_large: bool,
    /// What was read and waits for the maker to take it in.
    pub(crate) waiting: Shown,
    /// Whether every constituent is handed out with its trail, for a page that cannot ask.
    pub(crate) hands_out_trails: bool,
    /// What the page shows.
    pub(crate) shown: Shown,
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
            caustic: LiteMap::new(),
            formula_uses: LiteMap::new(),
            history: History::default(),
            in_sight: InSight { shelf: true, ..InSight::default() },
            surroundings_changed: 0,
            evaluated: None,
            unkept: LiteMap::new(),
            revisions: LiteMap::new(),
            conflicts: LiteMap::new(),
            unreadable: LiteMap::new(),
            keep_state: KeepState::Kept,
            logging: Logging::default(),
            kept_at: None,
            notices: Vec::new(),
            too_large: false,
            waiting: Shown::default(),
            hands_out_trails: false,
            shown: Shown::default(),
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
    pub(crate) fn evaluate_open(&mut self) -> Option<(Rc<FormulaRecord>, Rc<Evaluation>)> {
        let record = self.open.and_then(|id| self.shelf.get(&id)).map(Rc::clone)?;
        let evaluation = match &self.evaluated {
            Some(last) if Rc::ptr_eq(&last.of, &record) && last.within == self.surroundings_changed => {
                Rc::clone(&last.evaluation)
            }
            _ => {
                let evaluation = Rc::new(evaluate(&record.formula, &self.bench, &self.materials, &mut self.makeups));
                let (of, within) = (Rc::clone(&record), self.surroundings_changed);
                self.evaluated = Some(Evaluated { of, within, evaluation: Rc::clone(&evaluation) });
                evaluation
            }
        };
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

    pub(crate) fn undo(&mut self) -> Answer {
        if let Some(change) = self.history.undo() {
            self.put_back(change.before, change.open_before);
        }
        Answer::default()
    }

    pub(crate) fn redo(&mut self) -> Answer {
        if let Some(change) = self.history.redo() {
            self.put_back(change.after, change.open_after);
        }
        Answer::default()
    }

    /// What was typed in a field up to something that is not understood counts no more than that: `1.234,5` begins with
    /// 1.234, which nobody meant.
    pub(crate) fn take_back_typing(&mut self, field: &str) {
        if let Some(change) = self.history.unsay(field, self.around.now()) {
            self.put_back(change.before, change.open_before);
        }
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
                self.surroundings_changed += 1;
            }
        }
    }

    fn forget_makeups(&mut self) {
        self.makeups.clear();
        self.surroundings_changed += 1;
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
}

fn parts_of(own: &OwnMaterial) -> impl Iterator<Item = MaterialId> {
    let parts = match &own.material.makeup {
        Makeup::Composite(parts) => parts.as_slice(),
        Makeup::Simple(_) => &[],
    };
    parts.iter().map(|part| part.material)
}
