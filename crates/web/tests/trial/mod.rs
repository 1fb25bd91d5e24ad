//! Any acts of a maker over several records, drawn from bytes, with what must hold after each: undo restores exactly the
//! state before, redo the state after, a page that opens again finds what was kept, and nothing panics.

use super::hands::at_bench;
use std::collections::{BTreeMap, HashMap};
use stillroom_core::batch_plan::BatchWay;
use stillroom_core::number::DecimalMark;
use stillroom_core::{Class, Formula, LineId, MaterialId, PhaseId, PhaseKind, Purpose, WrittenIn};
use stillroom_exchange::extract::ExtractKind;
use stillroom_web::lazy::{Piece, set_here};
use stillroom_web::rooms::bench::command::BenchCommand;
use stillroom_web::rooms::command::Command;
use stillroom_web::rooms::command::DeskCommand;
use stillroom_web::rooms::extracts::command::ExtractsCommand;
use stillroom_web::rooms::formula::command::FormulaCommand;
use stillroom_web::rooms::materials::command::MaterialsCommand;
use stillroom_web::rooms::materials::command::{HoldingField, MaterialField};
use stillroom_web::rooms::shelf::command::ShelfCommand;
use stillroom_web::rooms::update::Update;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom};
use stillroom_web::session::settings::SettingName;

/// 27 November 2026, eight o'clock.
const MORNING: u64 = 1_795_766_400_000;
/// Texts as people type them, and as they should not.
const TEXTS: [&str; 16] = [
    "",
    "5",
    "12.5",
    "0,25",
    "q.s.",
    "100",
    "1.234,5",
    "-3",
    "72",
    "5.4",
    "Rose cream",
    "2 oz",
    "α\u{202e}β",
    "1e3",
    "2027-05-01",
    "a note\nin two lines",
];
/// What the room of batches is asked for.
const AT_BENCH: [&str; 26] = [
    "look",
    "new",
    "open",
    "close",
    "delete",
    "lot",
    "focus",
    "start",
    "first",
    "empty-beaker",
    "pour",
    "leave-out",
    "accept",
    "rescale",
    "cold",
    "hot",
    "water",
    "temperature",
    "timer",
    "ph",
    "fill",
    "done",
    "finish",
    "take-back",
    "entry-new",
    "entry-remove",
];
const EXTRACT_FIELDS: [&str; 6] = ["name", "plant", "glycerin", "water", "strength", "note"];

/// Chance, from bytes.
pub struct Chance<'a> {
    bytes: std::slice::Iter<'a, u8>,
}

impl Chance<'_> {
    fn next(&mut self) -> Option<usize> {
        self.bytes.next().map(|byte| usize::from(*byte))
    }

    fn one<T: Clone>(&mut self, of: &[T]) -> Option<T> {
        let at = self.next()?;
        if of.is_empty() { None } else { Some(of[at % of.len()].clone()) }
    }

    fn text(&mut self) -> Option<String> {
        self.one(&TEXTS).map(str::to_owned)
    }
}

/// What is compared: every record, and the formula that is open.
#[derive(Debug, Clone, PartialEq)]
struct State {
    records: BTreeMap<String, String>,
    /// Key of the open formula.
    open: Option<String>,
}

struct Trial {
    store: MemoryStore,
    room: QuietRoom,
    session: Session,
    /// Change that undo would take back, as the page was told.
    undoes: Option<u32>,
    /// States before and after each change.
    states: HashMap<u32, (State, State)>,
    undone: Vec<u32>,
    /// Another page changed a record: some of what was taken back can no longer be made again, and which is not shown.
    elsewhere: bool,
}

/// What a trial came to.
#[derive(Debug, Default, Clone, Copy)]
pub struct Tally {
    /// Commands given.
    pub commands: usize,
    /// Changes taken back.
    pub undone: usize,
    /// Changes made again.
    pub redone: usize,
    /// Pages opened again.
    pub reopened: usize,
    /// Records changed by another page.
    pub elsewhere: usize,
}

/// Runs the acts that some bytes stand for.
///
/// # Panics
/// Where something does not hold.
pub fn run(bytes: &[u8]) -> Tally {
    let mut chance = Chance { bytes: bytes.iter() };
    let everything = chance.next().is_none_or(|byte| byte % 2 == 0);
    for piece in Piece::BEYOND_DESK {
        set_here(piece, everything);
    }
    let store = MemoryStore::default();
    let room = QuietRoom::at(MORNING, 500);
    let session = open(&store, &room);
    let mut trial =
        Trial { store, room, session, undoes: None, states: HashMap::new(), undone: Vec::new(), elsewhere: false };
    let mut tally = Tally::default();
    trial.session.apply(ShelfCommand::NewFormula { basis: WrittenIn::Percent });
    trial.session.apply(ExtractsCommand::RestoreExtractExample {});
    let all = trial.session.show_everything();
    trial.hear(&all);
    trial.states.clear();
    while let Some(kind) = chance.next() {
        tally.commands += 1;
        match kind % 64 {
            0..=9 => tally.undone += usize::from(trial.undo()),
            10..=15 => tally.redone += usize::from(trial.redo()),
            16 => {
                trial.reopen();
                tally.reopened += 1;
            }
            17 => tally.elsewhere += usize::from(trial.change_elsewhere(&mut chance)),
            18 => trial.arrive(),
            // Time passes: typing on is a new change.
            19 => trial.room.wait(5_000),
            kind => {
                let Some(command) = trial.command(kind, &mut chance) else { continue };
                trial.act(command);
            }
        }
    }
    for piece in Piece::BEYOND_DESK {
        set_here(piece, true);
    }
    tally
}

fn open(store: &MemoryStore, room: &QuietRoom) -> Session {
    Session::open(Box::new(store.clone()), Box::new(room.clone()), DecimalMark::Point)
}

/// Fails with what differs, and no more: whole notebooks are long.
fn hold(found: &State, wanted: &State, about: &str) {
    let keys = found.records.keys().chain(wanted.records.keys());
    let other: Vec<String> = keys
        .filter(|key| found.records.get(*key) != wanted.records.get(*key))
        .map(|key| format!("{key}: {:?} instead of {:?}", found.records.get(key), wanted.records.get(key)))
        .collect();
    assert!(other.is_empty(), "{about}: {}", other.join("\n"));
    assert_eq!(found.open, wanted.open, "{about}: which formula is open");
}

impl Trial {
    fn state(&self) -> State {
        let open = self.session.open_formula().map(|id| id.to_string());
        State { records: self.session.written_records(0), open }
    }

    fn hear(&mut self, update: &Update) {
        if let Some(history) = &update.history {
            self.undoes = history.undoes;
        }
    }

    fn act(&mut self, command: Command) {
        let (before, undid) = (self.state(), self.undoes);
        let said = format!("{command:?}");
        let update = self.session.apply(command);
        self.hear(&update);
        let after = self.state();
        if before.records == after.records {
            return;
        }
        if update.answer.is_some_and(|answer| answer.error.is_some()) {
            // What was typed up to what is not understood counts no more than that.
            if let Some((was, _)) = undid.and_then(|number| self.states.remove(&number)) {
                hold(&after, &was, &format!("{said}, which is not understood"));
            }
            return;
        }
        let number = self.undoes.unwrap_or_else(|| panic!("{said} changed a record and cannot be taken back"));
        if undid == Some(number) {
            if let Some(states) = self.states.get_mut(&number) {
                states.1 = after;
            }
        } else {
            self.states.insert(number, (before, after));
        }
        self.undone.clear();
        self.elsewhere = false;
    }

    fn undo(&mut self) -> bool {
        let before = self.state();
        let undoes = self.undoes;
        let update = self.session.apply(DeskCommand::Undo {});
        self.hear(&update);
        let Some(number) = undoes else {
            assert_eq!(self.state(), before, "there was nothing to take back");
            return false;
        };
        self.undone.push(number);
        if let Some((wanted, _)) = self.states.get(&number) {
            hold(&self.state(), wanted, &format!("undo of change {number}"));
        }
        true
    }

    fn redo(&mut self) -> bool {
        let before = self.state();
        let update = self.session.apply(DeskCommand::Redo {});
        self.hear(&update);
        let Some(number) = self.undone.pop() else {
            assert!(self.elsewhere || self.state() == before, "there was nothing to make again");
            return false;
        };
        if let Some((_, wanted)) = self.states.get(&number) {
            hold(&self.state(), wanted, &format!("redo of change {number}"));
        }
        true
    }

    /// Another page of the browser opens, and this one is closed.
    fn reopen(&mut self) {
        self.session.keep();
        assert!(!self.session.has_unkept());
        let before = self.state().records;
        self.session = open(&self.store, &self.room);
        assert_eq!(self.state().records, before, "what was kept is found again");
        let all = self.session.show_everything();
        assert!(all.status.as_ref().is_some_and(|status| status.unreadable.is_empty()));
        self.undoes = None;
        self.hear(&all);
        self.states.clear();
        self.undone.clear();
    }

    /// What lies beyond the main job is fetched.
    fn arrive(&mut self) {
        let before = self.state();
        for piece in Piece::BEYOND_DESK {
            set_here(piece, true);
        }
        self.session.whole_arrived();
        let all = self.session.show_everything();
        self.hear(&all);
        let after = self.state();
        assert!(before.records.iter().all(|(key, text)| after.records.get(key) == Some(text)));
        // Records of batches that were not read before stand in every state there was.
        for (was, is) in self.states.values_mut() {
            for state in [was, is] {
                for (key, text) in &after.records {
                    if !before.records.contains_key(key) {
                        state.records.insert(key.clone(), text.clone());
                    }
                }
            }
        }
    }

    /// A second page changes a formula that this one knows, and this one is told.
    fn change_elsewhere(&mut self, chance: &mut Chance) -> bool {
        self.session.keep();
        let mut other = open(&self.store, &self.room);
        let Some(text) = chance.text() else { return false };
        let (_, formulas) = ids(&other, "stillroom.formula.");
        let Some(formula) = chance.one(&formulas) else { return false };
        let key = format!("stillroom.formula.{formula}");
        let Ok(id) = formula.try_into() else { return false };
        other.apply(ShelfCommand::OpenFormula { formula: id });
        other.apply(FormulaCommand::SetNotes { text });
        other.keep();
        let update = self.session.apply(DeskCommand::ChangedElsewhere { key: key.clone() });
        self.hear(&update);
        let now = self.state();
        let Some(theirs) = now.records.get(&key).cloned() else { return false };
        // What can still be taken back did not touch that record: in every state it stands as the other page left it.
        for (was, is) in self.states.values_mut() {
            for state in [was, is] {
                state.records.insert(key.clone(), theirs.clone());
            }
        }
        self.undone.clear();
        self.elsewhere = true;
        true
    }

    fn command(&self, kind: usize, chance: &mut Chance) -> Option<Command> {
        let (_, formulas) = ids(&self.session, "stillroom.formula.");
        let (_, own) = ids(&self.session, "stillroom.material.");
        let own: Vec<MaterialId> =
            own.iter().filter_map(|id| u64::from_str_radix(id, 16).ok()).map(MaterialId::Own).collect();
        let (_, extracts) = ids(&self.session, "stillroom.extract.");
        let (_, batches) = ids(&self.session, "stillroom.batch.");
        let lines: Vec<LineId> =
            self.session.formula().into_iter().flat_map(Formula::lines).map(|line| line.id).collect();
        let phases: Vec<PhaseId> =
            self.session.formula().into_iter().flat_map(|formula| &formula.phases).map(|phase| phase.id).collect();
        let mut materials = own.clone();
        materials.extend((1..40).map(MaterialId::Catalogue));
        materials.extend(formulas.iter().filter_map(|id| u64::from_str_radix(id, 16).ok()).map(MaterialId::Formula));
        let formula = |chance: &mut Chance| chance.one(&formulas).and_then(|id| id.try_into().ok());
        Some(match kind {
            20..=22 => ShelfCommand::OpenFormula { formula: formula(chance)? }.into(),
            23 => ShelfCommand::NewFormula { basis: chance.one(&[WrittenIn::Percent, WrittenIn::Grams])? }.into(),
            24 => ShelfCommand::DuplicateFormula { formula: formula(chance)? }.into(),
            25 => ShelfCommand::DeleteFormula { formula: formula(chance)? }.into(),
            26 => ShelfCommand::RenameFormula { formula: formula(chance)?, name: chance.text()? }.into(),
            27..=29 => FormulaCommand::SetNotes { text: chance.text()? }.into(),
            30 => FormulaCommand::SetSteps { text: chance.text()? }.into(),
            31 => FormulaCommand::SetTargetPh { text: chance.text()? }.into(),
            32 => FormulaCommand::SetPurpose { purpose: chance.one(&[Purpose::LeaveOn, Purpose::RinseOff])? }.into(),
            33 => FormulaCommand::AddPhase { kind: chance.one(&[PhaseKind::HeatedOil, PhaseKind::CoolDown])? }.into(),
            34 => FormulaCommand::RemovePhase { phase: chance.one(&phases)? }.into(),
            35..=36 => {
                FormulaCommand::AddLine { phase: chance.one(&phases)?, material: chance.one(&materials)? }.into()
            }
            37..=39 => FormulaCommand::SetAmount { line: chance.one(&lines)?, text: chance.text()? }.into(),
            40 => FormulaCommand::SetQuantumSatis { line: chance.one(&lines)? }.into(),
            41 => FormulaCommand::MoveLine {
                line: chance.one(&lines)?,
                phase: chance.one(&phases)?,
                position: chance.next()? % 6,
            }
            .into(),
            42 => FormulaCommand::RemoveLine { line: chance.one(&lines)? }.into(),
            43 => {
                FormulaCommand::ReplaceMaterial { line: chance.one(&lines)?, material: chance.one(&materials)? }.into()
            }
            44 => FormulaCommand::WriteIn { basis: chance.one(&[WrittenIn::Percent, WrittenIn::Grams])? }.into(),
            45 => BenchCommand::SetBatchMass { text: chance.text()? }.into(),
            46 => {
                BenchCommand::SetBatchWay { way: chance.one(&[BatchWay::Mass, BatchWay::Containers, BatchWay::Stock])? }
                    .into()
            }
            47 => BenchCommand::SetSetting {
                name: chance.one(&[SettingName::MainStep, SettingName::FineStep, SettingName::DecimalMark])?,
                text: chance.text()?,
            }
            .into(),
            48 => MaterialsCommand::NewMaterial { composite: chance.next()? % 2 == 0, name: chance.text()? }.into(),
            49..=50 => MaterialsCommand::OpenMaterial { material: chance.one(&own)? }.into(),
            51..=52 => MaterialsCommand::SetMaterialText {
                field: chance.one(&[MaterialField::Name, MaterialField::Inci, MaterialField::Note])?,
                text: chance.text()?,
            }
            .into(),
            53 => MaterialsCommand::SetMaterialClass { class: chance.one(&[Class::Oil, Class::Active])? }.into(),
            54 => MaterialsCommand::AddPart { material: chance.one(&materials)? }.into(),
            55 => MaterialsCommand::SetPartAmount { part: chance.next()? % 3, text: chance.text()? }.into(),
            56 => MaterialsCommand::DeleteMaterial { material: chance.one(&own)? }.into(),
            57..=58 => MaterialsCommand::SetHolding {
                material: chance.one(&materials)?,
                field: chance.one(&[
                    HoldingField::Stock,
                    HoldingField::Lot,
                    HoldingField::Note,
                    HoldingField::Density,
                ])?,
                text: chance.text()?,
            }
            .into(),
            59 => match chance.next()? % 4 {
                0 => {
                    ExtractsCommand::NewExtract { kind: chance.one(&[ExtractKind::Glycerite, ExtractKind::Solution])? }
                        .into()
                }
                1 => ExtractsCommand::OpenExtract { extract: chance.one(&extracts)?.try_into().ok()? }.into(),
                2 => ExtractsCommand::DeleteExtract { extract: chance.one(&extracts)?.try_into().ok()? }.into(),
                _ => ExtractsCommand::TakeExtractOffer { offer: chance.one(&["shelve", "use", "solve"])?.to_owned() }
                    .into(),
            },
            60 => ExtractsCommand::SetExtract { field: chance.one(&EXTRACT_FIELDS)?.to_owned(), text: chance.text()? }
                .into(),
            _ => {
                let act = chance.one(&AT_BENCH)?.to_owned();
                let on = match act.as_str() {
                    "open" | "delete" => chance.one(&batches)?,
                    "new" => chance.one(&formulas)?,
                    "first" | "empty-beaker" | "cold" | "hot" | "water" | "temperature" => {
                        chance.one(&phases)?.0.to_string()
                    }
                    "pour" | "leave-out" | "accept" | "rescale" => chance.one(&lines)?.0.to_string(),
                    _ => chance.one(&["", "0", "ph", "blend", "fill"])?.to_owned(),
                };
                at_bench(&act, &on, &chance.text()?)?.into()
            }
        })
    }
}

/// What stands behind a beginning in the keys of the records there are.
fn ids(session: &Session, kind: &str) -> (usize, Vec<String>) {
    let records = session.written_records(0);
    let ids: Vec<String> = records.keys().filter_map(|key| key.strip_prefix(kind)).map(str::to_owned).collect();
    (ids.len(), ids)
}
