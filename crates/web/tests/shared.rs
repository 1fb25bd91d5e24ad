//! Formulas as links: what a maker publishes and a reader opens, without a browser.
#![cfg(not(target_arch = "wasm32"))]
#![expect(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::similar_names,
    reason = "what goes wrong in a test is to be seen at once"
)]

use stillroom_core::number::DecimalMark;
use stillroom_core::{FormulaId, LineId};
use stillroom_web::rooms::command::Command;
use stillroom_web::rooms::command::DeskCommand;
use stillroom_web::rooms::formula::command::FormulaCommand;
use stillroom_web::rooms::materials::command::MaterialField;
use stillroom_web::rooms::materials::command::MaterialsCommand;
use stillroom_web::rooms::share::command::ShareCommand;
use stillroom_web::rooms::share::reading::read_shared;
use stillroom_web::rooms::share::view::{ReadingOptions, Standing};
use stillroom_web::rooms::shelf::command::ShelfCommand;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom, Store};

const ADDRESS: &str = "https://maker.example/stillroom/";

fn open_on(store: &MemoryStore) -> Session {
    Session::open(Box::new(store.clone()), Box::new(QuietRoom::at(1_764_000_000_000, 10_000)), DecimalMark::Point)
}

fn open() -> Session {
    open_on(&MemoryStore::default())
}

/// A maker's session with the example open, and its number.
fn maker() -> (Session, FormulaId) {
    let mut session = open();
    let id = session.show_everything().formula.and_then(|formula| formula.id).unwrap();
    (session, FormulaId::try_from(id).unwrap())
}

/// A reader who has put the example away, materials and all.
fn reader() -> Session {
    let (mut session, id) = maker();
    session.apply(ShelfCommand::DeleteFormula { formula: id });
    let own = session.show_everything().own_materials.unwrap();
    for material in own {
        session.apply(MaterialsCommand::DeleteMaterial { material: material.id.parse().unwrap() });
    }
    session
}

fn made(session: &mut Session, command: impl Into<Command>) -> String {
    session.apply(command).answer.and_then(|answer| answer.made).expect("something is made")
}

#[test]
fn a_reader_sees_what_the_maker_sees() {
    let (mut session, id) = maker();
    let ours = session.show_everything();
    let link = session.link_of(id, ADDRESS, false);
    assert_eq!(link.error, None);
    let reading = reader().read_link(&link.address, None);
    assert_eq!((reading.error, reading.standing), (None, Standing::New));
    assert_eq!(reading.update.formula, ours.formula);
    assert_eq!(reading.update.lines, ours.lines);
    assert_eq!(reading.update.jar, ours.jar);
    assert_eq!(reading.update.constituents, ours.constituents);
    assert_eq!(reading.steps.len(), 5);
    assert!(reading.materials[0].starts_with("Cucumber glycerite, lot 7 (invented): "), "{:?}", reading.materials);
}

#[test]
fn the_link_of_the_example_is_short_and_has_a_code() {
    let (session, id) = maker();
    let link = session.link_of(id, ADDRESS, false);
    println!("the example: {} characters", link.fragment.len());
    assert!(link.fragment.len() <= 300, "{} characters: {}", link.fragment.len(), link.fragment);
    let code = link.code.unwrap();
    println!("its code: {} modules, {} mm", code.side, code.millimetres);
    assert!(code.millimetres <= 50 && code.path.starts_with('M'));
}

/// Forty lines and two own composites, with notes and steps that nobody wrote down beforehand.
#[test]
fn the_link_of_a_long_formula_is_short_enough() {
    let mut session = open();
    let hits = |session: &mut Session, query: &str| {
        let found = session.search(query, &stillroom_catalogue::Filter::default());
        found.into_iter().map(|hit| hit.id).filter(|id| id.starts_with('c')).collect::<Vec<_>>()
    };
    let mut materials: Vec<String> = Vec::new();
    for query in ["oil", "acid", "extract", "sodium", "butter", "glyc", "alcohol", "gum"] {
        for id in hits(&mut session, query) {
            if !materials.contains(&id) {
                materials.push(id);
            }
        }
    }
    let mut composites = Vec::new();
    for (at, name) in ["Quince seed gel, winter batch", "Three-oil blend of the orchard"].into_iter().enumerate() {
        let material = made(&mut session, MaterialsCommand::NewMaterial { composite: true, name: name.to_owned() });
        for part in 0..4 {
            let id = materials.remove(0);
            made(&mut session, MaterialsCommand::AddPart { material: id.parse().unwrap() });
            let text = if part == 0 { "q.s.".to_owned() } else { format!("{}.{at}", part * 7) };
            session.apply(MaterialsCommand::SetPartAmount { part, text });
        }
        session.apply(MaterialsCommand::SetMaterialText {
            field: MaterialField::Note,
            text: "Left to swell in cold well water, then wrung through linen.".to_owned(),
        });
        session.apply(MaterialsCommand::CloseMaterial {});
        composites.push(material);
    }
    let id = made(&mut session, ShelfCommand::NewFormula { basis: stillroom_core::WrittenIn::Percent });
    session.apply(ShelfCommand::RenameFormula {
        formula: FormulaId::try_from(id.clone()).unwrap(),
        name: "Orchard night balm no. 14".to_owned(),
    });
    let phases: Vec<_> = session.show_everything().formula.unwrap().phases.iter().map(|phase| phase.id).collect();
    let chosen: Vec<String> = composites.into_iter().chain(materials).take(40).collect();
    assert_eq!(chosen.len(), 40);
    for (at, material) in chosen.iter().enumerate() {
        let phase = stillroom_core::PhaseId(phases[at % 3]);
        let line = made(&mut session, FormulaCommand::AddLine { phase, material: material.parse().unwrap() });
        let line = LineId(line.parse().unwrap());
        if at == 0 {
            session.apply(FormulaCommand::SetQuantumSatis { line });
        } else {
            session.apply(FormulaCommand::SetAmount { line, text: format!("{}.{:02}", at % 4, 5 + at * 7 % 90) });
        }
    }
    session.apply(FormulaCommand::SetSteps {
        text:
            "Warm both beakers slowly to 72 °C.\nCombine them under the stick blender, one minute on, one minute off.\n\
               Below 38 °C fold in what the heat would spoil.\nFill while it still pours."
                .to_owned(),
    });
    session.apply(FormulaCommand::SetNotes {
        text: "Third trial of the winter; the second one grew grainy in the cellar.".to_owned(),
    });
    let link = session.link_of(FormulaId::try_from(id).unwrap(), ADDRESS, false);
    println!("forty lines: {} characters", link.fragment.len());
    assert!(link.fragment.len() <= 900, "{} characters", link.fragment.len());
    let reading = reader().read_link(&link.fragment, None);
    assert_eq!(reading.update.lines.len(), 40);
    assert_eq!(reading.update.lines, session.show_everything().lines);
}

#[test]
fn reading_changes_nothing_that_is_kept() {
    let (maker, id) = maker();
    let link = maker.link_of(id, ADDRESS, false).address;
    let store = MemoryStore::default();
    let mut reader = open_on(&store);
    reader.keep();
    let texts = |store: &MemoryStore| {
        let keys = store.keys().unwrap();
        keys.into_iter().map(|key| (store.get(&key).unwrap(), key)).collect::<Vec<_>>()
    };
    let before = texts(&store);
    assert_eq!(reader.read_link(&link, Some("1 kg")).error, None);
    assert!(!reader.has_unkept());
    reader.keep();
    assert_eq!(texts(&store), before);
}

#[test]
fn a_reader_asks_for_another_batch() {
    let (maker, id) = maker();
    let link = maker.link_of(id, ADDRESS, false).fragment;
    let options = ReadingOptions { batch: Some("50 g".to_owned()), ..ReadingOptions::default() };
    let reading = read_shared(&link, &options);
    let glycerite = reading.update.lines.iter().find(|line| line.name.contains("glycerite")).unwrap();
    // 12 % of 50 g.
    assert_eq!(glycerite.mass.trim(), "6.0");
    let options = ReadingOptions {
        batch: Some("2 oz".to_owned()),
        mass_unit: Some("oz".to_owned()),
        decimal_mark: DecimalMark::Comma,
        ..ReadingOptions::default()
    };
    let reading = read_shared(&link, &options);
    assert_eq!(reading.update.formula.unwrap().mass_unit, "oz");
    let options = ReadingOptions { batch: Some("a bowlful".to_owned()), ..ReadingOptions::default() };
    let answer = read_shared(&link, &options).update.answer.unwrap();
    assert!(answer.error.is_some());
}

#[test]
fn a_copy_is_kept_with_all_it_is_made_of_and_can_be_taken_back() {
    let (mut maker, id) = maker();
    let link = maker.link_of(id, ADDRESS, false).address;
    let mut reader = reader();
    let before = reader.show_everything();
    let copy = made(&mut reader, ShareCommand::KeepCopy { link: link.clone() });
    assert_eq!(copy, id.to_string());
    let kept = reader.show_everything();
    assert_eq!(kept.lines, maker.show_everything().lines);
    assert_eq!(kept.jar.unwrap().unresolved, Vec::<String>::new());
    assert_eq!(reader.read_link(&link, None).standing, Standing::Same);
    reader.apply(DeskCommand::Undo {});
    let after = reader.show_everything();
    assert_eq!(after.own_materials, before.own_materials);
    assert_eq!(after.shelf, before.shelf);
}

#[test]
fn another_version_is_compared_and_never_overwritten() {
    let (mut maker, id) = maker();
    let view = maker.show_everything();
    let line = view.lines.iter().find(|line| line.name.starts_with("Squalane")).unwrap();
    maker.apply(FormulaCommand::SetAmount { line: LineId(line.id), text: "5.5".to_owned() });
    maker.apply(FormulaCommand::SetTargetPh { text: "5.2".to_owned() });
    let link = maker.link_of(id, ADDRESS, false).address;
    let mut reader = open();
    let reading = reader.read_link(&link, None);
    assert_eq!(reading.standing, Standing::Differs);
    let comparison = reading.comparison.unwrap();
    let squalane = comparison.lines.iter().find(|change| change.name.starts_with("Squalane")).unwrap();
    assert_eq!((&*squalane.before, &*squalane.after, &*squalane.difference), ("4.00", "5.50", "+1.50"));
    // The water gives way.
    let water = comparison.composition.iter().find(|change| change.name == "Aqua").unwrap();
    assert_eq!(water.difference, "\u{2212}1.50");
    assert_eq!(comparison.others, ["pH: 4.8 → 5.2"]);

    let ours = reader.show_everything().lines;
    let copy = made(&mut reader, ShareCommand::KeepCopy { link });
    assert_ne!(copy, id.to_string());
    let view = reader.show_everything();
    assert_eq!(view.formula.unwrap().name, "Cucumber and oat gel cream (from a link)");
    reader.apply(ShelfCommand::OpenFormula { formula: id });
    assert_eq!(reader.show_everything().lines, ours, "the reader's own version is as it was");
}

#[test]
fn an_own_material_of_the_same_name_and_another_content_gets_another_number() {
    let (maker, id) = maker();
    let link = maker.link_of(id, ADDRESS, false).address;
    let mut reader = open();
    let own = reader.show_everything().own_materials.unwrap()[0].id.clone();
    reader.apply(MaterialsCommand::OpenMaterial { material: own.parse().unwrap() });
    reader.apply(MaterialsCommand::SetPartAmount { part: 0, text: "40".to_owned() });
    reader.apply(MaterialsCommand::CloseMaterial {});
    let published = reader.read_link(&link, None);
    assert_eq!(published.standing, Standing::Differs);
    assert!(published.comparison.unwrap().composition.iter().any(|change| change.name == "Glycerin"));
    made(&mut reader, ShareCommand::KeepCopy { link });
    let view = reader.show_everything();
    assert_eq!(view.own_materials.unwrap().len(), 2);
    assert_eq!(view.constituents, published.update.constituents, "the copy holds what was published");
}

#[test]
fn a_link_that_cannot_be_read_leaves_the_shelf_as_it_is() {
    let (maker, id) = maker();
    let link = maker.link_of(id, ADDRESS, false).fragment;
    let mut reader = open();
    let before = reader.show_everything();
    for (text, code) in [
        (&link[..link.len() - 3], "link.cut-off"),
        ("f=AAAA-this-is-nothing", "link.damaged"),
        (&*format!("{}x", &link[..link.len() - 1]), "link.damaged"),
    ] {
        let reading = reader.read_link(text, None);
        assert_eq!(reading.code, Some(code), "{text}");
        assert!(reading.error.unwrap().contains("Nothing"));
        let answer = reader.apply(ShareCommand::KeepCopy { link: text.to_owned() }).answer.unwrap();
        assert_eq!(answer.code, Some(code));
    }
    assert_eq!(reader.show_everything(), before);
}
