//! Storage that fails: pages that end between two writes, texts that are damaged, a browser that clears what it kept, and
//! backups.
#![cfg(not(target_arch = "wasm32"))]
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::similar_names,
    reason = "what goes wrong in a test is to be seen at once"
)]

mod hands;

use hands::at_bench;
use std::cell::Cell;
use std::io::Cursor;
use std::rc::Rc;
use stillroom_core::number::DecimalMark;
use stillroom_core::{FormulaId, LineId};
use stillroom_web::contract::KeepState;
use stillroom_web::rooms::command::DeskCommand;
use stillroom_web::rooms::formula::command::FormulaCommand;
use stillroom_web::rooms::materials::command::MaterialsCommand;
use stillroom_web::rooms::share::command::ShareCommand;
use stillroom_web::rooms::share::view_backup::{BackupView, Fate};
use stillroom_web::rooms::share::write_up::WrittenForm;
use stillroom_web::rooms::shelf::command::ShelfCommand;
use stillroom_web::rooms::update::Update;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{LoggedStore, MemoryStore, QuietRoom, Store, StoreError, Written};

fn room() -> QuietRoom {
    QuietRoom::at(1_764_000_000_000, 10_000)
}

fn open_with(store: impl Store + 'static, around: &QuietRoom) -> Session {
    Session::open(Box::new(store), Box::new(around.clone()), DecimalMark::Point)
}

fn read(page: &mut Session, file: &[u8]) -> BackupView {
    page.read_backup(Box::new(Cursor::new(file.to_vec())), &[])
}

fn open_on(store: &MemoryStore) -> Session {
    open_with(store.clone(), &room())
}

/// A page that ends after so many writes: whatever it does after that reaches nobody.
#[derive(Clone)]
struct Mortal {
    store: MemoryStore,
    writes_left: Rc<Cell<usize>>,
}

impl Mortal {
    fn on(store: &MemoryStore, writes: usize) -> Self {
        Self { store: store.clone(), writes_left: Rc::new(Cell::new(writes)) }
    }
    fn writes(&self) -> bool {
        let left = self.writes_left.get();
        self.writes_left.set(left.saturating_sub(1));
        left > 0
    }
}

impl Store for Mortal {
    fn get(&self, key: &str) -> Result<Option<String>, StoreError> {
        self.store.get(key)
    }
    fn set(&self, key: &str, text: &str) -> Result<(), StoreError> {
        if self.writes() { self.store.set(key, text) } else { Ok(()) }
    }
    fn remove(&self, key: &str) -> Result<(), StoreError> {
        if self.writes() { self.store.remove(key) } else { Ok(()) }
    }
    fn keys(&self) -> Result<Vec<String>, StoreError> {
        self.store.keys()
    }
}

/// A small generator of numbers for choosing what happens; any seed does (Marsaglia's xorshift).
struct Dice(u64);

impl Dice {
    fn below(&mut self, most: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        usize::try_from(self.0 % most as u64).unwrap()
    }
}

/// What a page shows, without what only says when.
fn shown(session: &mut Session) -> (Option<String>, String, Vec<String>) {
    let view = session.show_everything();
    let lines = view.lines.iter().map(|line| format!("{}={}", line.name, line.amount)).collect();
    let own = view.own_materials.unwrap_or_default().into_iter().map(|own| own.name).collect::<Vec<_>>().join(",");
    (view.formula.map(|formula| formula.notes), own, lines)
}

/// One act of a maker that changes one record or several at once.
fn act(session: &mut Session, dice: &mut Dice, turn: usize) {
    let view = session.show_everything();
    match dice.below(4) {
        0 => drop(session.apply(FormulaCommand::SetNotes { text: format!("note {turn}") })),
        1 => {
            if let Some(line) = view.lines.get(dice.below(view.lines.len().max(1))) {
                session.apply(FormulaCommand::SetAmount { line: LineId(line.id), text: format!("{}.5", turn % 3) });
            }
        }
        2 => {
            drop(session.apply(MaterialsCommand::NewMaterial {
                composite: turn.is_multiple_of(2),
                name: format!("own {turn}"),
            }));
        }
        _ => {
            // Several records in one act: a copy and all it is made of.
            let Some(id) = view.formula.and_then(|formula| formula.id) else {
                session.apply(ShelfCommand::SeeExample {
                    example: stillroom_web::rooms::shelf::command::Example::GelCream,
                });
                return;
            };
            let link =
                session.link_of(FormulaId::try_from(id.clone()).unwrap(), "https://maker.example/", false).fragment;
            session.apply(ShelfCommand::DeleteFormula { formula: FormulaId::try_from(id).unwrap() });
            let own = session.show_everything().own_materials.unwrap_or_default();
            for material in own.iter().take(1) {
                session.apply(MaterialsCommand::DeleteMaterial { material: material.id.parse().unwrap() });
            }
            session.apply(ShareCommand::KeepCopy { link });
        }
    }
}

/// What a browser that is killed finds of its storage again: everything as it was some time before, while the log is as it
/// was last confirmed.
#[test]
fn three_hundred_browsers_are_killed_with_a_storage_that_reaches_the_disk_late_and_nothing_confirmed_is_lost() {
    let on_disk = MemoryStore::default();
    let mut log: Vec<Written> = Vec::new();
    let around = room();
    let mut dice = Dice(0x5eed_cafe_5eed_cafe);
    let mut acts = 0;
    for turn in 0..300 {
        // The browser has in memory what was on the disk.
        let store = MemoryStore::default();
        for key in on_disk.keys().unwrap() {
            store.set(&key, &on_disk.get(&key).unwrap().unwrap()).unwrap();
        }
        let mut page =
            Session::open_logged(LoggedStore::new(store.clone(), &log), Box::new(around.clone()), DecimalMark::Point);
        let mut confirmed = page.written_records(0);
        for _ in 0..=dice.below(4) {
            act(&mut page, &mut dice, turn);
            if dice.below(4) == 0 {
                page.apply(DeskCommand::Undo {});
            }
            acts += 1;
            page.keep();
            let said_to_be_kept = page.show_everything().status.unwrap().state == KeepState::Kept;
            let written = page.take_written();
            assert_eq!(said_to_be_kept, written.is_empty(), "nothing is called kept before it is on the disk");
            for written in written {
                log.retain(|earlier| earlier.key != written.key);
                log.push(written);
            }
            page.committed(true);
            assert_eq!(page.show_everything().status.unwrap().state, KeepState::Kept);
            confirmed = page.written_records(0);
            // Now and then the browser gets round to it.
            if dice.below(6) == 0 {
                for key in on_disk.keys().unwrap() {
                    on_disk.remove(&key).unwrap();
                }
                for key in store.keys().unwrap() {
                    on_disk.set(&key, &store.get(&key).unwrap().unwrap()).unwrap();
                }
            }
        }
        drop(page);
        let store = MemoryStore::default();
        for key in on_disk.keys().unwrap() {
            store.set(&key, &on_disk.get(&key).unwrap().unwrap()).unwrap();
        }
        let mut next =
            Session::open_logged(LoggedStore::new(store, &log), Box::new(around.clone()), DecimalMark::Point);
        let found = next.written_records(0);
        let lost: Vec<&String> = confirmed.keys().filter(|key| found.get(*key) != confirmed.get(*key)).collect();
        assert!(lost.is_empty() && found.len() == confirmed.len(), "turn {turn}: {lost:?}");
        assert!(next.show_everything().status.unwrap().unreadable.is_empty());
    }
    println!("300 browsers killed after {acts} acts");
}

#[test]
fn a_log_that_cannot_be_written_is_said() {
    let store = LoggedStore::new(MemoryStore::default(), &[]);
    let mut page = Session::open_logged(store, Box::new(room()), DecimalMark::Point);
    page.apply(FormulaCommand::SetNotes { text: "kept?".into() });
    page.keep();
    assert!(!page.take_written().is_empty() && page.take_written().is_empty());
    let status = page.committed(false).status.unwrap();
    assert_eq!(status.state, KeepState::Kept);
    assert!(status.text.contains("the last minute may be lost"), "{}", status.text);
}

#[test]
fn a_thousand_pages_end_between_two_writes_and_nothing_is_lost() {
    let store = MemoryStore::default();
    let around = room();
    let mut dice = Dice(0x5eed_5eed_5eed_5eed);
    let mut first = open_with(store.clone(), &around);
    first.keep();
    let (mut old_seen, mut new_seen) = (0, 0);
    for turn in 0..1_000 {
        let mortal = Mortal::on(&store, usize::MAX);
        let mut page = open_with(mortal.clone(), &around);
        let old = shown(&mut page);
        act(&mut page, &mut dice, turn);
        let new = shown(&mut page);
        mortal.writes_left.set(dice.below(9));
        page.keep();
        drop(page);
        // Whoever opens next may end while it puts things right, too.
        drop(open_with(Mortal::on(&store, dice.below(3)), &around));
        let mut next = open_with(store.clone(), &around);
        let found = shown(&mut next);
        assert!(next.show_everything().status.unwrap().unreadable.is_empty());
        assert!(found == old || found == new, "turn {turn}: {found:?} is neither {old:?} nor {new:?}");
        if found == new { new_seen += 1 } else { old_seen += 1 }
    }
    println!("1000 pages ended: {old_seen} left the old state, {new_seen} the new one");
    assert!(old_seen > 50 && new_seen > 200, "both must have been seen: {old_seen}, {new_seen}");
}

#[test]
fn a_text_the_browser_damaged_is_reported_and_left_alone() {
    let store = MemoryStore::default();
    let mut page = open_on(&store);
    page.keep();
    let key = store.keys().unwrap().into_iter().find(|key| key.starts_with("stillroom.formula.")).unwrap();
    // Still JSON, still a formula: only the sum tells.
    let damaged = store.get(&key).unwrap().unwrap().replacen("\"percent\":\"12\"", "\"percent\":\"72\"", 1);
    store.set(&key, &damaged).unwrap();
    let mut next = open_on(&store);
    let status = next.show_everything().status.unwrap();
    assert_eq!(status.unreadable.len(), 1);
    assert!(status.unreadable[0].contains("damaged"), "{}", status.unreadable[0]);
    next.keep();
    assert_eq!(store.get(&key).unwrap(), Some(damaged));
}

#[test]
fn what_was_kept_before_there_were_sums_is_read() {
    let store = MemoryStore::default();
    store
        .set("stillroom.formula.000000000000feed", include_str!("../../exchange/golden/formula-1.json").trim_end())
        .unwrap();
    let view = open_on(&store).show_everything();
    assert_eq!(view.formula.unwrap().name, "Cucumber and oat gel cream");
    assert!(view.status.unwrap().unreadable.is_empty());
}

#[test]
fn storage_that_was_cleared_under_an_open_page_is_filled_again_and_said() {
    let store = MemoryStore::default();
    let mut page = open_on(&store);
    page.keep();
    let before = store.keys().unwrap();
    for key in &before {
        store.remove(key).unwrap();
    }
    page.apply(FormulaCommand::SetNotes { text: "still here".to_owned() });
    let update = page.keep();
    assert!(update.notices.iter().any(|notice| notice.code == "storage.cleared"));
    // What the first pass did not know of, the next one keeps.
    page.keep();
    assert!(!page.has_unkept());
    assert_eq!(store.keys().unwrap(), before);
    assert_eq!(open_on(&store).show_everything().formula.unwrap().notes, "still here");
}

/// Two records gone, the settings among them, look like storage that was cleared. What is still there is no other page's.
#[test]
fn settings_that_are_missing_beside_one_other_raise_no_false_conflicts() {
    let store = MemoryStore::default();
    let mut page = open_on(&store);
    page.apply(MaterialsCommand::NewMaterial { composite: true, name: "own".to_owned() });
    page.apply(ShelfCommand::NewFormula { basis: stillroom_core::WrittenIn::Percent });
    page.keep();
    let before = store.keys().unwrap();
    assert!(before.len() > 3, "{before:?}");
    let open = format!("stillroom.formula.{}", open_id(&mut page));
    store.remove("stillroom.settings").unwrap();
    store.remove(&open).unwrap();
    page.apply(FormulaCommand::SetNotes { text: "still here".to_owned() });
    let mut update = page.keep();
    for _ in 0..3 {
        assert_eq!(update.status.as_ref().map_or(0, |status| status.conflicts.len()), 0, "{update:?}");
        update = page.keep();
    }
    assert!(!page.has_unkept());
    assert_eq!(store.keys().unwrap(), before);
    assert_eq!(page.show_everything().status.unwrap().state, KeepState::Kept);
    assert_eq!(open_on(&store).show_everything().formula.unwrap().notes, "still here");
}

/// A browser tells other tabs of a storage that was cleared with an event that names no key.
#[test]
fn storage_that_another_tab_cleared_is_noticed_at_once() {
    let store = MemoryStore::default();
    let mut page = open_on(&store);
    page.apply(MaterialsCommand::NewMaterial { composite: true, name: "own".to_owned() });
    page.apply(FormulaCommand::SetNotes { text: "still here".to_owned() });
    page.keep();
    let before = store.keys().unwrap();
    for key in &before {
        store.remove(key).unwrap();
    }
    let update = page.apply(DeskCommand::ChangedElsewhere { key: String::new() });
    assert!(update.notices.iter().any(|notice| notice.code == "storage.cleared"));
    assert!(page.has_unkept());
    page.keep();
    assert_eq!(store.keys().unwrap(), before);
    assert_eq!(open_on(&store).show_everything().formula.unwrap().notes, "still here");
    // Where nothing is missing, an event without a key says nothing.
    let update = page.apply(DeskCommand::ChangedElsewhere { key: String::new() });
    assert!(update.notices.is_empty() && !page.has_unkept());
}

#[test]
fn a_full_storage_keeps_nothing_by_halves() {
    let store = MemoryStore::default();
    let mut page = open_on(&store);
    page.keep();
    let old = shown(&mut open_on(&store));
    page.apply(FormulaCommand::SetNotes { text: "new".to_owned() });
    page.apply(MaterialsCommand::NewMaterial { composite: true, name: "own".to_owned() });
    store.fail_with(Some(StoreError::Full));
    assert_eq!(page.keep().status.unwrap().state, KeepState::Full);
    assert_eq!(shown(&mut open_on(&store)), old);
    store.fail_with(None);
    assert_eq!(page.keep().status.unwrap().state, KeepState::Kept);
    assert_eq!(open_on(&store).show_everything().formula.unwrap().notes, "new");
}

#[test]
fn a_clock_that_went_back_is_said() {
    let store = MemoryStore::default();
    let around = room();
    open_with(store.clone(), &around).keep();
    assert_eq!(open_with(store.clone(), &around).storage_remarks(), Vec::<String>::new());
    around.set_clock(1_700_000_000_000);
    let remarks = open_with(store, &around).storage_remarks();
    assert!(remarks[0].contains("clock") && remarks[0].contains("2025-11-24"), "{remarks:?}");
}

// ---- versions ---------------------------------------------------------------------------------------------------------

fn open_id(session: &mut Session) -> FormulaId {
    FormulaId::try_from(session.show_everything().formula.unwrap().id.unwrap()).unwrap()
}

fn squalane(view: &Update) -> LineId {
    LineId(view.lines.iter().find(|line| line.name.starts_with("Squalane")).unwrap().id)
}

#[test]
fn a_version_is_kept_when_the_maker_comes_back_and_compared_in_percent_and_composition() {
    let store = MemoryStore::default();
    let around = room();
    let mut page = open_with(store.clone(), &around);
    page.keep();
    let id = open_id(&mut page);
    let line = squalane(&page.show_everything());
    page.apply(FormulaCommand::SetAmount { line, text: "4.5".to_owned() });
    page.keep();
    assert!(page.versions_of(id).is_empty(), "typing on is no version");
    around.wait(3_600_000);
    page.apply(FormulaCommand::SetAmount { line, text: "6".to_owned() });
    page.keep();
    page.apply(FormulaCommand::SetNotes { text: "richer".to_owned() });
    page.keep();
    let versions = page.versions_of(id);
    assert_eq!(versions.len(), 1, "{versions:?}");
    let comparison = page.compare_version(id, &versions[0].version).unwrap();
    let change = comparison.lines.iter().find(|change| change.name.starts_with("Squalane")).unwrap();
    assert_eq!((&*change.before, &*change.after), ("4.50", "6.00"));
    assert!(comparison.composition.iter().any(|change| change.name == "Aqua" && change.difference == "\u{2212}1.50"));
    assert_eq!(comparison.others, ["The notes read differently."]);
    let restored = page.apply(ShareCommand::RestoreVersion { formula: id, version: versions[0].version.clone() });
    assert!(restored.answer.unwrap().made.is_some());
    let view = page.show_everything();
    let line = view.lines.iter().find(|line| line.name.starts_with("Squalane")).unwrap();
    assert_eq!(line.amount, "4.50");
    // The versions lie beside the records and trouble nobody who reads those.
    assert!(open_with(store, &around).show_everything().status.unwrap().unreadable.is_empty());
}

/// What a batch was made from is a version, however soon the formula changes, and both call it by the same number.
#[test]
fn the_version_that_was_made_is_in_the_list_and_named_in_the_record() {
    let around = room();
    let mut page = open_with(MemoryStore::default(), &around);
    page.keep();
    let id = open_id(&mut page);
    page.apply(at_bench("look", "", "").unwrap());
    let lot = page.apply(at_bench("new", "", "").unwrap());
    assert!(lot.answer.unwrap().error.is_none());
    let run = page.show_everything().run.unwrap();
    let line = squalane(&page.show_everything());
    page.apply(FormulaCommand::SetAmount { line, text: "4.5".to_owned() });
    page.keep();
    let versions = page.versions_of(id);
    assert_eq!(versions.len(), 1, "{versions:?}");
    assert!(versions[0].text.starts_with("No. 1, ") && versions[0].text.ends_with(&run.lot), "{versions:?}");
    let comparison = page.compare_version(id, &versions[0].version).unwrap();
    assert!(comparison.lines.iter().any(|change| change.name.starts_with("Squalane")));
    let record = page.show_everything().run.unwrap().record;
    assert!(record.head.iter().any(|pair| pair.label == "Version" && pair.value == "1"), "{:?}", record.head);
}

#[test]
fn versions_come_along_in_a_backup() {
    let around = room();
    let mut page = open_with(MemoryStore::default(), &around);
    page.keep();
    let id = open_id(&mut page);
    let line = squalane(&page.show_everything());
    for amount in ["4.5", "6"] {
        around.wait(3_600_000);
        page.apply(FormulaCommand::SetAmount { line, text: amount.to_owned() });
        page.keep();
    }
    assert!(!page.versions_of(id).is_empty());
    let mut other = open_on(&MemoryStore::default());
    read(&mut other, page.write_backup("https://maker.example/").as_bytes());
    assert!(other.versions_of(id).is_empty(), "a preview changes nothing");
    other.apply(ShareCommand::RestoreBackup { differing: "theirs".to_owned() });
    assert_eq!(other.versions_of(id), page.versions_of(id));
}

// ---- backup -----------------------------------------------------------------------------------------------------------

#[test]
fn a_backup_puts_everything_on_another_device() {
    let mut page = open_on(&MemoryStore::default());
    page.apply(FormulaCommand::SetNotes { text: "<script>alert(1)</script> \u{202e}".to_owned() });
    let backup = page.write_backup("https://maker.example/");
    let store = MemoryStore::default();
    let mut other = open_on(&store);
    let id = open_id(&mut other);
    other.apply(ShelfCommand::DeleteFormula { formula: id });
    let own = other.show_everything().own_materials.unwrap();
    other.apply(MaterialsCommand::DeleteMaterial { material: own[0].id.parse().unwrap() });
    let view = read(&mut other, backup.as_bytes());
    assert_eq!(view.error, None);
    let fates: Vec<_> = view.items.iter().map(|item| (item.kind.as_str(), item.fate)).collect();
    assert!(fates.contains(&("Formula", Fate::New)) && fates.contains(&("Material", Fate::New)), "{fates:?}");
    assert!(fates.contains(&("Extract", Fate::Same)), "{fates:?}");
    other.apply(ShareCommand::RestoreBackup { differing: "both".to_owned() });
    other.keep();
    assert_eq!(shown(&mut open_on(&store)), shown(&mut page));
    other.apply(DeskCommand::Undo {});
    assert!(other.show_everything().own_materials.unwrap().is_empty(), "a restore can be taken back");
}

#[test]
fn what_differs_stands_beside_what_is_here_or_takes_its_place() {
    let mut page = open_on(&MemoryStore::default());
    let line = squalane(&page.show_everything());
    page.apply(FormulaCommand::SetAmount { line, text: "6".to_owned() });
    let own = page.show_everything().own_materials.unwrap()[0].id.clone();
    page.apply(MaterialsCommand::OpenMaterial { material: own.parse().unwrap() });
    page.apply(MaterialsCommand::SetPartAmount { part: 0, text: "50".to_owned() });
    let backup = page.write_backup("https://maker.example/");
    let theirs = page.show_everything();

    let mut here = open_on(&MemoryStore::default());
    let ours = here.show_everything();
    let view = read(&mut here, backup.as_bytes());
    let fate = |kind: &str| view.items.iter().find(|item| item.kind == kind).unwrap().fate;
    assert_eq!((fate("Formula"), fate("Material")), (Fate::Differs, Fate::Differs));
    here.apply(ShareCommand::RestoreBackup { differing: "both".to_owned() });
    let now = here.show_everything();
    assert_eq!((now.lines.clone(), now.constituents.clone()), (ours.lines, ours.constituents), "ours is as it was");
    let cards = now.shelf.unwrap().cards;
    assert_eq!(cards.len(), 2);
    let added = cards.iter().find(|card| card.name.ends_with("(from the backup)")).unwrap();
    here.apply(ShelfCommand::OpenFormula { formula: FormulaId::try_from(added.id.clone()).unwrap() });
    let percents = |view: &Update| {
        view.constituents.iter().map(|each| (each.inci.clone(), each.percent.clone())).collect::<Vec<_>>()
    };
    assert_eq!(percents(&here.show_everything()), percents(&theirs), "the added one is what the file says");

    let mut taking = open_on(&MemoryStore::default());
    assert_eq!(read(&mut taking, backup.as_bytes()).error, None);
    taking.apply(ShareCommand::RestoreBackup { differing: "theirs".to_owned() });
    assert_eq!(percents(&taking.show_everything()), percents(&theirs));
}

#[test]
fn a_backup_goes_on_past_what_it_cannot_read() {
    let mut page = open_on(&MemoryStore::default());
    let backup = page.write_backup("https://maker.example/");
    let spoiled = backup.replacen("\"heated-water\"", "\"cold-fire\"", 1).replacen(
        "\"records\":{",
        "\"records\":{\"stillroom.formula.0000000000000001\":{\"schema\":9},\"stillroom.moon.1\":{\"schema\":1},",
        1,
    );
    let view = read(&mut page, spoiled.as_bytes());
    assert_eq!(view.items.iter().filter(|item| item.fate == Fate::Unreadable).count(), 3, "{:?}", view.items);
    assert!(view.summary.contains("3 cannot be read"), "{}", view.summary);
    let before = page.show_everything();
    for (file, code) in [(&b"\xff\xd8\xff"[..], "backup.not-one"), (&backup.as_bytes()[..200], "backup.damaged")] {
        assert_eq!(read(&mut page, file).code, Some(code));
    }
    page.apply(ShareCommand::RestoreBackup { differing: "theirs".to_owned() });
    assert_eq!(page.show_everything().formula, before.formula, "nothing waits after a file that cannot be read");
}

/// A batch of the open formula with a journal that has one photo.
fn with_photo(page: &mut Session, photo: &str) -> String {
    let mut act = |act: &str, on: &str, text: &str| {
        page.apply(at_bench(act, on, text).unwrap()).answer.and_then(|answer| answer.made).unwrap_or_default()
    };
    let batch = act("new", "", "");
    let entry = act("entry-new", "", "2026-11-25");
    act("entry-photo", &entry, photo);
    batch
}

#[test]
fn photos_come_back_with_their_journal() {
    const PHOTO: &[u8] = &[0xff, 0xd8, 0xff, 0xe0, 1, 2, 3];
    let mut page = open_on(&MemoryStore::default());
    with_photo(&mut page, "cafe-1");
    let mut writer = page.begin_backup();
    let mut file = writer.records(&page.write_backup("https://maker.example/"));
    for name in ["cafe-1", "cafe-2"] {
        file.extend(writer.photo(name, 1_764_000_000_000, PHOTO));
    }
    file.extend(writer.finish());

    let mut other = open_on(&MemoryStore::default());
    let view = other.read_backup(Box::new(Cursor::new(file.clone())), &["cafe-2".to_owned()]);
    assert_eq!(view.error, None);
    assert_eq!(view.photos, "2 photos are in it, 1 of them not on this device yet.");
    assert_eq!(view.new_photos, ["cafe-1"]);
    let journal = view.items.iter().find(|item| item.kind == "Journal").unwrap();
    assert_eq!(journal.name, "Cucumber and oat gel cream", "it is called after its batch");
    let photo = other.photo_of_backup("cafe-1").unwrap();
    assert_eq!((photo.taken_at, photo.bytes.as_slice()), (1_764_000_000_000, PHOTO));
    assert_eq!(other.photo_of_backup("cafe-9"), None);
    let update = other.apply(ShareCommand::RestoreBackup { differing: "both".to_owned() });
    let said = &update.notices[0].text;
    assert!(said.contains("One photo is on this device now. One photo is damaged or found no room."), "{said}");
    assert_eq!(other.stray_photos(&["cafe-1".to_owned()]).names, [""; 0], "its journal came along");

    let last = file.windows(PHOTO.len()).rposition(|window| window == PHOTO).unwrap();
    file[last + 5] ^= 1;
    let view = read(&mut other, &file);
    assert_eq!(view.new_photos.len(), 2);
    assert_eq!(other.photo_of_backup("cafe-2"), None, "the damaged one");
    assert!(other.photo_of_backup("cafe-1").is_some(), "and not the other");
    assert_eq!(read(&mut other, &file[..file.len() - 9]).code, Some("backup.zip-damaged"));
}

#[test]
fn a_photo_is_stray_once_nothing_can_bring_its_batch_back() {
    let store = MemoryStore::default();
    let mut page = open_on(&store);
    let here = ["cafe-1".to_owned(), "cafe-2".to_owned()];
    let batch = with_photo(&mut page, "cafe-1");
    assert_eq!(page.stray_photos(&here).names, ["cafe-2"]);
    page.apply(at_bench("delete", &batch, "").unwrap());
    assert_eq!(page.stray_photos(&here).names, ["cafe-2"], "undoing brings it back");
    page.keep();
    assert_eq!(open_on(&store).stray_photos(&here).names, here);
    store.set("stillroom.journal.00000000000000aa", "{\"schema\":9,\"of\":\"a later version\"}").unwrap();
    assert!(open_on(&store).stray_photos(&here).names.is_empty(), "a record that cannot be read may have them");
}

#[test]
fn a_record_that_cannot_be_read_here_goes_along_in_the_backup() {
    let store = MemoryStore::default();
    store.set("stillroom.formula.00000000000000aa", "{\"schema\":9,\"of\":\"a later version\"}").unwrap();
    let backup = open_on(&store).write_backup("https://maker.example/");
    assert!(backup.contains("a later version"));
}

#[test]
fn a_formula_is_written_out_for_people() {
    let mut page = open_on(&MemoryStore::default());
    let id = open_id(&mut page);
    page.apply(FormulaCommand::SetNotes { text: "<img src=x onerror=alert(1)>".to_owned() });
    let before = page.show_everything();
    let markdown = page.write_up(id, WrittenForm::Markdown);
    assert!(
        markdown.starts_with("# Cucumber and oat gel cream\n") && markdown.contains(" | 4.00 | 8.4 |\n"),
        "{markdown}"
    );
    assert!(markdown.contains("\n\\<img src=x onerror=alert(1)\\>\n"), "{markdown}");
    let csv = page.write_up(id, WrittenForm::Csv);
    assert!(csv.contains(",\"4.00\",\"8.4\",") && csv.starts_with('\u{feff}'), "{csv}");
    let text = page.write_up(id, WrittenForm::Text);
    assert!(text.contains("1. Scatter the xanthan gum") && text.contains("challenge test"), "{text}");
    assert_eq!(page.show_everything(), before);
}
