//! Every limit of a record, tried at and around it with any content: what is taken is found again, what is refused changes
//! nothing and is said.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, reason = "what goes wrong in a test is to be seen at once")]

mod hands;

use proptest::prelude::*;
use stillroom_core::number::DecimalMark;
use stillroom_core::{LineId, MaterialId, PhaseId, WrittenIn};
use stillroom_web::rooms::command::Command;
use stillroom_web::rooms::formula::command::FormulaCommand;
use stillroom_web::rooms::materials::command::MaterialsCommand;
use stillroom_web::rooms::materials::command::{HoldingField, MaterialField};
use stillroom_web::rooms::shelf::command::ShelfCommand;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom, Store as _};

struct Page {
    store: MemoryStore,
    room: QuietRoom,
    session: Session,
}

impl Page {
    fn open() -> Self {
        let (store, room) = (MemoryStore::default(), QuietRoom::at(1_795_766_400_000, 10_000));
        let session = Session::open(Box::new(store.clone()), Box::new(room.clone()), DecimalMark::Point);
        Self { store, room, session }
    }

    /// Gives a command; says whether it was taken.
    fn takes(&mut self, command: impl Into<Command>) -> bool {
        let before = self.session.written_records(0);
        let update = self.session.apply(command);
        let refusals =
            ["text.too-long", "record.too-large", "run.too-many-deeds", "run.too-many-photos", "run.too-many-days"];
        let answer = update.answer.unwrap();
        let refused = answer.code.is_some_and(|code| refusals.contains(&code));
        if refused {
            let said = answer.field.is_some() || update.notices.iter().any(|notice| Some(notice.code) == answer.code);
            assert!(said && answer.error.is_some_and(|error| error.len() > 10), "a refusal is said");
            assert_eq!(self.session.written_records(0), before, "a refusal changes nothing");
        }
        !refused
    }

    /// Keeps everything and opens it again: nothing may have become unreadable or other than it was.
    fn is_found_again(&mut self) {
        self.session.keep();
        let before = self.session.written_records(0);
        let mut next = Session::open(Box::new(self.store.clone()), Box::new(self.room.clone()), DecimalMark::Point);
        assert_eq!(next.show_everything().status.unwrap().unreadable, Vec::<String>::new());
        assert_eq!(next.written_records(0), before);
        self.session = next;
    }

    fn at_bench(act: &str, on: &str, text: &str) -> Command {
        hands::at_bench(act, on, text).unwrap().into()
    }
}

/// A text of so many characters, all of a kind that is hard to keep.
fn hard(count: usize, kind: usize) -> String {
    let character = ['a', '"', '\\', '\u{1}', 'é', '€', '😀', '\n'][kind % 8];
    std::iter::repeat_n(character, count).collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 16, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn texts_at_their_limit_are_taken_and_one_character_more_is_refused(kind in 0_usize..8, off in -2_isize..3) {
        let length = |limit: usize| limit.saturating_add_signed(off);
        let fits = off <= 0;
        let mut page = Page::open();
        prop_assert_eq!(page.takes(FormulaCommand::SetNotes { text: hard(length(20_000), kind) }), fits);
        prop_assert_eq!(page.takes(FormulaCommand::SetSteps { text: hard(length(20_000), kind) }), fits);
        let formula = page.session.open_formula().unwrap();
        prop_assert_eq!(page.takes(ShelfCommand::RenameFormula { formula, name: hard(length(200), kind) }), fits);
        prop_assert_eq!(page.takes(FormulaCommand::RenamePhase { phase: PhaseId(1), name: hard(length(200), kind) }), fits);
        prop_assert_eq!(page.takes(FormulaCommand::SetLineNote { line: LineId(1), text: hard(length(20_000), kind) }), fits);
        prop_assert_eq!(page.takes(MaterialsCommand::NewMaterial { composite: false, name: hard(length(200), kind) }), fits);
        page.session.apply(MaterialsCommand::NewMaterial { composite: false, name: "mine".into() });
        for (field, limit) in [(MaterialField::Name, 200), (MaterialField::Inci, 200), (MaterialField::Note, 20_000)] {
            prop_assert_eq!(page.takes(MaterialsCommand::SetMaterialText { field, text: hard(length(limit), kind) }), fits);
        }
        for (field, limit) in [(HoldingField::Lot, 200), (HoldingField::Note, 20_000)] {
            let material = MaterialId::Catalogue(2);
            prop_assert_eq!(page.takes(MaterialsCommand::SetHolding { material, field, text: hard(length(limit), kind) }), fits);
        }
        page.session.apply(Page::at_bench("look", "", ""));
        page.session.apply(Page::at_bench("new", "", ""));
        prop_assert_eq!(page.takes(Page::at_bench("lot", "", &hard(length(200), kind))), fits);
        prop_assert_eq!(page.takes(Page::at_bench("say", "cleaning", &hard(length(1_000), kind))), fits);
        let made = page.session.apply(Page::at_bench("entry-new", "", "2026-11-27")).answer.unwrap().made.unwrap();
        prop_assert_eq!(page.takes(Page::at_bench("entry", &format!("{made}:note"), &hard(length(20_000), kind))), fits);
        page.is_found_again();
    }
}

#[test]
fn a_record_that_would_be_too_large_is_refused_and_what_was_there_stays() {
    for kind in 0..8 {
        let mut page = Page::open();
        page.session.apply(ShelfCommand::NewFormula { basis: WrittenIn::Percent });
        let note = hard(20_000, kind);
        let (mut taken, mut refused) = (0, 0);
        for line in 1..60 {
            page.session.apply(FormulaCommand::AddLine { phase: PhaseId(1), material: MaterialId::Catalogue(line) });
            let id = page.session.formula().unwrap().lines().last().unwrap().id;
            if page.takes(FormulaCommand::SetLineNote { line: id, text: note.clone() }) {
                taken += 1;
            } else {
                refused += 1;
            }
        }
        assert!(
            taken > 5 && refused > 0 || kind == 0 || kind == 7 && taken > 5,
            "kind {kind}: {taken} taken, {refused} refused"
        );
        page.is_found_again();
        // The record of its earlier versions holds one of that size, too.
        page.room.wait(60 * 60 * 1000);
        page.session.apply(FormulaCommand::SetNotes { text: "later".into() });
        page.is_found_again();
        let formula = page.session.open_formula().unwrap();
        assert_eq!(page.session.versions_of(formula).len(), 1, "kind {kind}");
        // A batch of it, which carries the formula along, is begun or refused aloud.
        page.session.apply(Page::at_bench("look", "", ""));
        page.takes(Page::at_bench("new", "", ""));
        page.is_found_again();
    }
}

#[test]
fn a_journal_takes_six_photos_a_day_and_says_so() {
    let mut page = Page::open();
    page.session.apply(Page::at_bench("look", "", ""));
    page.session.apply(Page::at_bench("new", "", ""));
    let day = page.session.apply(Page::at_bench("entry-new", "", "2026-11-27")).answer.unwrap().made.unwrap();
    for photo in 0..8 {
        assert_eq!(page.takes(Page::at_bench("entry-photo", &day, &format!("p{photo}"))), photo < 6, "photo {photo}");
    }
    assert!(!page.takes(Page::at_bench("entry-photo", &day, &"x".repeat(81))));
    page.is_found_again();
}

#[test]
fn a_journal_of_many_long_days_is_refused_before_it_cannot_be_read() {
    let mut page = Page::open();
    page.session.apply(Page::at_bench("look", "", ""));
    page.session.apply(Page::at_bench("new", "", ""));
    let mut refused = 0;
    for day in 1..=28 {
        for month in ["01", "02", "03"] {
            let typed = format!("2027-{month}-{day:02}");
            let made = page.session.apply(Page::at_bench("entry-new", "", &typed)).answer.unwrap().made.unwrap();
            refused += usize::from(!page.takes(Page::at_bench("entry", &format!("{made}:note"), &hard(20_000, 0))));
        }
    }
    assert!(refused > 0);
    page.is_found_again();
}

#[test]
fn a_run_of_very_many_entries_is_refused_before_it_cannot_be_read() {
    let mut page = Page::open();
    page.session.apply(Page::at_bench("look", "", ""));
    page.session.apply(Page::at_bench("new", "", ""));
    page.session.apply(Page::at_bench("start", "", ""));
    page.session.apply(Page::at_bench("temperature", "room", "20"));
    page.session.keep();
    // A record of a run with as many entries as nobody types in a test.
    let key = page.store.keys().unwrap().into_iter().find(|key| key.starts_with("stillroom.batch.")).unwrap();
    let mut record: serde_json::Value = serde_json::from_str(&page.store.get(&key).unwrap().unwrap()).unwrap();
    record.as_object_mut().unwrap().remove("check");
    let events = record["batch"]["events"].as_array_mut().unwrap();
    let last = events.last().unwrap().clone();
    events.resize(4_995, last);
    page.store.set(&key, &record.to_string()).unwrap();
    page.session = Session::open(Box::new(page.store.clone()), Box::new(page.room.clone()), DecimalMark::Point);
    page.session.apply(Page::at_bench("look", "", ""));
    let mut taken = 0;
    while page.takes(Page::at_bench("temperature", "room", if taken % 2 == 0 { "20" } else { "21" })) {
        taken += 1;
        assert!(taken < 10);
    }
    assert_eq!(taken, 4);
    assert!(!page.takes(Page::at_bench("take-back", "", "")));
    page.is_found_again();
    assert!(page.takes(Page::at_bench("finish", "", "")), "the last place is for finishing");
    page.is_found_again();
}

#[test]
fn a_backup_that_could_not_be_restored_is_not_written() {
    let page = Page::open();
    let record = page
        .session
        .written_records(0)
        .into_iter()
        .find(|(key, _)| key.starts_with("stillroom.holding.") || key.starts_with("stillroom.material."))
        .unwrap()
        .1;
    for (count, fits) in [(19_000, true), (20_001, false)] {
        let store = MemoryStore::default();
        for at in 0..count {
            store.set(&format!("stillroom.material.{:016x}", 0x9000_0000_u64 + at), &record).unwrap();
        }
        let session = Session::open(Box::new(store), Box::new(page.room.clone()), DecimalMark::Point);
        assert_eq!(!session.write_backup("https://maker.example/").is_empty(), fits, "{count} records");
    }
}
