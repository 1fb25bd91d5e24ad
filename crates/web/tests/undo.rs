//! Undo and redo over several records: what is taken back is what was done, where it was done, and nothing else.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, reason = "what goes wrong in a test is to be seen at once")]

mod hands;
mod trial;

use stillroom_core::number::DecimalMark;
use stillroom_core::{FormulaId, MaterialId, WrittenIn};
use stillroom_web::rooms::command::DeskCommand;
use stillroom_web::rooms::formula::command::FormulaCommand;
use stillroom_web::rooms::materials::command::MaterialField;
use stillroom_web::rooms::materials::command::MaterialsCommand;
use stillroom_web::rooms::shelf::command::ShelfCommand;
use stillroom_web::rooms::update::Update;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom};

/// 27 November 2026, eight o'clock, in a room where a tenth of a second passes between two acts.
fn open() -> Session {
    let room = QuietRoom::at(1_795_766_400_000, 100);
    Session::open(Box::new(MemoryStore::default()), Box::new(room), DecimalMark::Point)
}

fn new_formula(session: &mut Session) -> FormulaId {
    let made = session.apply(ShelfCommand::NewFormula { basis: WrittenIn::Percent }).answer.unwrap().made.unwrap();
    FormulaId::try_from(made).unwrap()
}

fn notes(session: &mut Session, formula: FormulaId) -> String {
    session.apply(ShelfCommand::OpenFormula { formula });
    session.show_everything().formula.unwrap().notes
}

fn write(session: &mut Session, text: &str) {
    session.apply(FormulaCommand::SetNotes { text: text.to_owned() });
}

#[test]
fn notes_typed_in_one_formula_right_after_another_are_two_changes() {
    let mut session = open();
    let (a, b) = (new_formula(&mut session), new_formula(&mut session));
    session.apply(ShelfCommand::OpenFormula { formula: a });
    write(&mut session, "of a");
    session.apply(ShelfCommand::OpenFormula { formula: b });
    write(&mut session, "of b");
    session.apply(DeskCommand::Undo {});
    assert_eq!(notes(&mut session, a), "of a");
    assert_eq!(notes(&mut session, b), "");
    session.apply(DeskCommand::Redo {});
    assert_eq!(notes(&mut session, a), "of a");
    assert_eq!(notes(&mut session, b), "of b");
    session.apply(DeskCommand::Undo {});
    session.apply(DeskCommand::Undo {});
    assert_eq!(notes(&mut session, a), "");
    session.apply(DeskCommand::Redo {});
    session.apply(DeskCommand::Redo {});
    assert_eq!((notes(&mut session, a), notes(&mut session, b)), ("of a".to_owned(), "of b".to_owned()));
}

#[test]
fn typing_on_in_one_field_stays_one_change() {
    let mut session = open();
    let a = new_formula(&mut session);
    for text in ["o", "on", "one"] {
        write(&mut session, text);
    }
    session.apply(DeskCommand::Undo {});
    assert_eq!(notes(&mut session, a), "");
}

#[test]
fn own_materials_typed_in_one_right_after_another_are_two_changes() {
    let mut session = open();
    let mut made = || {
        let name = "mine".to_owned();
        let made =
            session.apply(MaterialsCommand::NewMaterial { composite: false, name }).answer.unwrap().made.unwrap();
        made.parse::<MaterialId>().unwrap()
    };
    let (a, b) = (made(), made());
    let inci = |session: &mut Session, material, text: &str| {
        session.apply(MaterialsCommand::OpenMaterial { material });
        session.apply(MaterialsCommand::SetMaterialText { field: MaterialField::Inci, text: text.to_owned() });
    };
    inci(&mut session, a, "Aqua A");
    inci(&mut session, b, "Aqua B");
    session.apply(DeskCommand::Undo {});
    let shown = |session: &mut Session, material| {
        session.apply(MaterialsCommand::OpenMaterial { material });
        format!("{:?}", session.show_everything().material.unwrap())
    };
    assert!(shown(&mut session, a).contains("Aqua A"));
    assert!(!shown(&mut session, b).contains("Aqua B"));
}

/// The number by which the undo of a notice takes back its own act.
fn undo_of(update: &Update) -> u32 {
    update.notices.iter().find_map(|notice| notice.undo).unwrap()
}

#[test]
fn the_undo_of_a_notice_takes_back_its_own_act_or_nothing() {
    let mut session = open();
    let (a, b) = (new_formula(&mut session), new_formula(&mut session));
    let first = undo_of(&session.apply(ShelfCommand::DeleteFormula { formula: a }));
    let second = undo_of(&session.apply(ShelfCommand::DeleteFormula { formula: b }));
    let here = |session: &mut Session| {
        session.show_everything().shelf.unwrap().cards.iter().map(|card| card.id.clone()).collect::<Vec<_>>()
    };
    let before = here(&mut session);
    let update = session.apply(DeskCommand::UndoAct { change: first });
    assert_eq!(here(&mut session), before, "the second act stands in between");
    assert_eq!(update.history.and_then(|history| history.undoes).unwrap_or(second), second);
    session.apply(DeskCommand::UndoAct { change: second });
    assert!(here(&mut session).contains(&b.to_string()) && !here(&mut session).contains(&a.to_string()));
    session.apply(DeskCommand::UndoAct { change: first });
    assert!(here(&mut session).contains(&a.to_string()));
    let before = here(&mut session);
    session.apply(DeskCommand::UndoAct { change: first });
    assert_eq!(here(&mut session), before, "what is taken back is not taken back again");
}

/// A generator of bytes for choosing what happens (Marsaglia's xorshift); the seed is printed where something fails.
fn bytes(seed: u64, count: usize) -> Vec<u8> {
    let mut state = seed;
    let mut next = || {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        state.to_le_bytes()[2]
    };
    (0..count).map(|_| next()).collect()
}

#[test]
fn any_acts_over_several_records_can_be_taken_back_and_made_again() {
    // `STILLROOM_TRIALS=800 cargo test --release` gives more than a hundred thousand commands.
    let trials = std::env::var("STILLROOM_TRIALS").ok().and_then(|trials| trials.parse().ok()).unwrap_or(40_u64);
    let mut all = trial::Tally::default();
    for seed in 1..=trials {
        println!("seed {seed}");
        let tally = trial::run(&bytes(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15), 400));
        all.commands += tally.commands;
        all.undone += tally.undone;
        all.redone += tally.redone;
        all.reopened += tally.reopened;
        all.elsewhere += tally.elsewhere;
    }
    println!("{all:?}");
    assert!(all.undone > 200 && all.redone > 50 && all.reopened > 20 && all.elsewhere > 5, "{all:?}");
}

/// What was typed up to a text that is not understood counts nothing: the last good value is the one before it was begun.
#[test]
fn the_beginning_of_what_is_not_understood_counts_nothing() {
    let mut session = open();
    let line = session.show_everything().lines.into_iter().find(|line| line.name.starts_with("Betaine")).unwrap();
    let undo = session.show_everything().history.unwrap().undo;
    let id = stillroom_core::LineId(line.id);
    let amount = |session: &mut Session| {
        let lines = session.show_everything().lines;
        lines.into_iter().find(|each| each.id == line.id).unwrap().amount.clone()
    };
    let text = "1.234,5";
    for end in 1..=text.len() {
        session.apply(FormulaCommand::SetAmount { line: id, text: text[..end].to_owned() });
    }
    assert_eq!(amount(&mut session), line.amount);
    assert_eq!(session.show_everything().history.unwrap().undo, undo, "nothing was done");
    // Mended while it is typed, it counts again, and is one act.
    session.apply(FormulaCommand::SetAmount { line: id, text: "1.234".to_owned() });
    assert_eq!(amount(&mut session), "1.234");
    session.apply(FormulaCommand::SetAmount { line: id, text: "1.234,".to_owned() });
    assert_eq!(amount(&mut session), line.amount);
    // Later, it is another beginning: what was settled stays.
    session.apply(FormulaCommand::SetAmount { line: id, text: "3".to_owned() });
    for _ in 0..60 {
        let other = stillroom_core::LineId(line.id + 1);
        session.apply(FormulaCommand::SetAmount { line: other, text: "x".to_owned() });
    }
    session.apply(FormulaCommand::SetAmount { line: id, text: "x".to_owned() });
    assert_eq!(amount(&mut session), "3.00");
}

/// A formula is open whenever the shelf holds one; taking something back opens none where it holds none.
#[test]
fn what_is_taken_back_while_no_formula_is_there_opens_none() {
    let mut session = open();
    while let Some(formula) = session.open_formula() {
        session.apply(ShelfCommand::DeleteFormula { formula });
    }
    session.apply(MaterialsCommand::NewMaterial { composite: false, name: "mine".to_owned() });
    session.apply(DeskCommand::Undo {});
    assert_eq!(session.open_formula(), None);
    session.apply(DeskCommand::Redo {});
    assert_eq!(session.open_formula(), None);
    let made = new_formula(&mut session);
    session.apply(DeskCommand::Undo {});
    assert_eq!(session.open_formula(), None);
    session.apply(DeskCommand::Redo {});
    assert_eq!(session.open_formula(), Some(made));
}
