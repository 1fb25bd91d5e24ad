//! What stands on the shelf, and how it is found there.

use crate::{open, open_on, seen};
use stillroom_catalogue::Filter;
use stillroom_core::{FormulaId, MaterialId, PhaseKind, WrittenIn};
use stillroom_web::lazy::{Piece, set_here};
use stillroom_web::rooms::command::DeskCommand;
use stillroom_web::rooms::formula::command::FormulaCommand;
use stillroom_web::rooms::materials::command::{HoldingField, MaterialsCommand};
use stillroom_web::rooms::shelf::command::{ShelfCommand, ShelfOrder};
use stillroom_web::rooms::update::Update;
use stillroom_web::session::keeping::MemoryStore;
#[test]
fn the_example_stands_on_the_shelf_at_the_first_visit_and_is_sound() {
    let mut session = open();
    let view = session.show_everything();
    let formula = view.formula.unwrap();
    assert_eq!(formula.name, "Cucumber and oat gel cream");
    assert!(formula.sound);
    assert_eq!(formula.total, "100.00");
    assert!(formula.notes.contains("invented"));
    let shelf = view.shelf.unwrap();
    assert_eq!(shelf.cards.len(), 1);
    assert_eq!(view.history.unwrap().undo, None, "nobody did this, so there is nothing to take back");
    let jar = view.jar.unwrap();
    assert!(jar.unresolved.is_empty());
    let drawn: f64 = jar.layers.iter().map(|layer| layer.height).sum();
    assert!((drawn - 1.0).abs() < 1e-9, "the layers fill the jar");
}

#[test]
fn a_shelf_that_was_emptied_stays_empty() {
    let store = MemoryStore::default();
    let mut session = open_on(&store);
    let id = session.show_everything().shelf.unwrap().cards[0].id.clone();
    session.apply(ShelfCommand::DeleteFormula { formula: id.try_into().unwrap() });
    session.keep();
    let view = open_on(&store).show_everything();
    assert!(view.shelf.unwrap().cards.is_empty());
    assert_eq!(view.formula.unwrap().id, None);
}

#[test]
fn the_shelf_is_searched_and_sorted() {
    let mut session = open();
    for name in ["Balm of the evening", "cream of the morning"] {
        let made = session.apply(ShelfCommand::NewFormula { basis: WrittenIn::Percent });
        let formula = FormulaId::try_from(made.formula.unwrap().id.unwrap()).unwrap();
        session.apply(ShelfCommand::RenameFormula { formula, name: name.to_owned() });
    }
    let names = |view: Update| view.shelf.unwrap().cards.iter().map(|card| card.name.clone()).collect::<Vec<_>>();
    let shelf = session.show_everything().shelf.unwrap();
    assert_eq!((shelf.all, shelf.total.as_str()), (3, "3 formulas"));
    assert!(shelf.cards.iter().any(|card| card.name == "Cucumber and oat gel cream"));
    assert_eq!(shelf.cards[0].name, "cream of the morning", "the last changed first");
    let by_name = session.apply(ShelfCommand::SortShelf { order: ShelfOrder::Name });
    assert_eq!(names(by_name)[0], "Balm of the evening");
    let found = session.apply(ShelfCommand::SearchShelf { text: " CREAM ".into() });
    assert_eq!(names(found), ["cream of the morning", "Cucumber and oat gel cream"]);
    let nothing = session.apply(ShelfCommand::SearchShelf { text: "soap".into() }).shelf.unwrap();
    assert_eq!((nothing.cards.len(), nothing.more, nothing.all), (0, 0, 3), "how many there are is said even so");
}

#[test]
fn formulas_are_filed_under_tags_that_stay_on_the_device() {
    let mut session = open();
    let gel = session.open_formula().unwrap();
    let made = session.apply(ShelfCommand::NewFormula { basis: WrittenIn::Percent });
    let balm = FormulaId::try_from(made.formula.unwrap().id.unwrap()).unwrap();
    let tag = |formula, text: &str| ShelfCommand::TagFormula { formula, text: text.to_owned() };
    session.apply(tag(gel, " summer;  gifts , summer,"));
    let view = session.apply(tag(balm, "Gifts, winter")).shelf.unwrap();
    let card = view.cards.iter().find(|card| card.id == gel.to_string()).unwrap();
    assert_eq!(card.tags, "summer, gifts");
    assert_eq!((view.tags.join("|").to_lowercase(), view.tag.as_str()), ("gifts|summer|winter".to_owned(), ""));
    // What is filed under it is shown, whatever its letters.
    let shown = session.apply(ShelfCommand::ShowTag { tag: view.tags[0].clone() }).shelf.unwrap();
    assert_eq!((shown.cards.len(), shown.all, &shown.tag), (2, 2, &view.tags[0]));
    let shown = session.apply(ShelfCommand::ShowTag { tag: "winter".into() }).shelf.unwrap();
    assert_eq!(shown.cards.iter().map(|card| card.id.clone()).collect::<Vec<_>>(), [balm.to_string()]);
    // A tag that is gone hides nothing, and a change is taken back.
    let all = session.apply(tag(balm, "")).shelf.unwrap();
    assert_eq!((all.cards.len(), all.tag.as_str(), all.tags.len()), (2, "", 2));
    assert!(session.apply(DeskCommand::Undo {}).shelf.unwrap().tags.contains(&"winter".to_owned()));
    let found = session.apply(ShelfCommand::SearchShelf { text: "winter".into() }).shelf.unwrap();
    assert_eq!(found.cards.len(), 1);
    // Too many, or too long: said beside the field, and nothing changes.
    let many = (0..13).map(|at| at.to_string()).collect::<Vec<_>>().join(",");
    for text in [many.as_str(), &"x".repeat(41)] {
        let answer = session.apply(tag(gel, text)).answer.unwrap();
        assert_eq!(answer.field, Some(format!("formula.tags:{gel}")));
        assert!(answer.error.unwrap().contains("12 tags"));
    }
    let record = session.written_records(0).values().find(|text| text.contains("gifts")).unwrap().clone();
    assert!(record.contains(r#""tags":"summer, gifts""#), "{record}");
    // No link carries them, not even one to another device of the maker's.
    for with_notes in [false, true] {
        let link = session.link_of(gel, "https://example.org/", with_notes);
        let parcel = stillroom_exchange::link::read(&link.fragment).unwrap();
        assert_eq!(parcel.formula.tags, "");
    }
}

#[test]
fn what_the_maker_has_stands_by_its_day_and_what_is_past_it_is_due() {
    let mut session = open();
    let mut note = |number, field, text: &str| {
        session.apply(MaterialsCommand::SetHolding {
            material: MaterialId::Catalogue(number),
            field,
            text: text.to_owned(),
        })
    };
    note(9, HoldingField::Expiry, "2027-11-30");
    note(10, HoldingField::Expiry, "2026-11-20");
    note(10, HoldingField::Lot, "22");
    note(10, HoldingField::Stock, "38");
    note(3, HoldingField::Stock, "5");
    let view = session.show_everything();
    let held = view.held.unwrap();
    assert_eq!(
        held.iter().map(|each| each.name.as_str()).collect::<Vec<_>>(),
        ["Rosehip seed oil", "Squalane", "Betaine"]
    );
    assert_eq!((held[0].about.as_str(), held[0].late, held[1].late), ("Lot 22", true, false));
    assert!(held[0].stock.starts_with("38") && held[0].until.starts_with("Past"));
    // It is said at the next look at the shelf.
    session.apply(ShelfCommand::LookAtShelf { looking: false });
    let due = session.apply(ShelfCommand::LookAtShelf { looking: true }).due;
    let due = due.or_else(|| session.show_everything().due).unwrap();
    assert_eq!(
        due.iter().map(|each| (each.act, each.name.as_str())).collect::<Vec<_>>(),
        [("use", "Rosehip seed oil")]
    );
}

#[test]
fn a_shelf_stands_before_the_desk_was_fetched_and_the_desk_shows_what_was_made_meanwhile() {
    for piece in Piece::ALL {
        set_here(piece, false);
    }
    let mut session = open();
    let first = session.show_everything();
    let cards = first.shelf.unwrap().cards;
    assert!(!cards.is_empty() && first.formula.is_none() && first.lines.is_empty());
    session.apply(ShelfCommand::NewFormula { basis: WrittenIn::Percent });
    // What the page cannot send yet, since no field of it is there, changes nothing.
    let before = seen(&mut session);
    session.apply(FormulaCommand::AddPhase { kind: PhaseKind::CoolDown });
    assert!(session.search("water", &Filter::default()).is_empty());
    assert_eq!(seen(&mut session), before);
    set_here(Piece::Desk, true);
    let desk = session.show_changes();
    assert_eq!(desk.formula.map(|formula| formula.name), session.show_everything().formula.map(|formula| formula.name));
    assert!(!session.search("water", &Filter::default()).is_empty());
    for piece in Piece::ALL {
        set_here(piece, true);
    }
}
