//! The session without a browser: a store in memory, a clock that is told the time, dice that count.
#![cfg(not(target_arch = "wasm32"))]

mod laws;
mod shelf;

use stillroom_catalogue::Filter;
use stillroom_core::batch_plan::BatchWay;
use stillroom_core::number::DecimalMark;
use stillroom_core::{LineId, MaterialId, PhaseId, PhaseKind, WrittenIn};
use stillroom_web::contract::KeepState;
use stillroom_web::rooms::bench::command::BenchCommand;
use stillroom_web::rooms::command::{Command, DeskCommand};
use stillroom_web::rooms::formula::command::FormulaCommand;
use stillroom_web::rooms::formula::view::LineView;
use stillroom_web::rooms::materials::command::{HoldingField, MaterialsCommand};
use stillroom_web::rooms::shelf::command::ShelfCommand;
use stillroom_web::rooms::update::Update;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom, Store, StoreError};
use stillroom_web::session::settings::SettingName;

/// 25 November 2026, eight o'clock. Every look at the clock is ten seconds later, so that no two acts melt into one.
const MORNING: u64 = 1_795_593_600_000;

fn open_on(store: &MemoryStore) -> Session {
    Session::open(Box::new(store.clone()), Box::new(QuietRoom::at(MORNING, 10_000).ahead(60)), DecimalMark::Point)
}

fn open() -> Session {
    open_on(&MemoryStore::default())
}

fn line<'a>(view: &'a Update, name: &str) -> &'a LineView {
    view.lines.iter().find(|line| line.name.starts_with(name)).unwrap_or_else(|| panic!("no line of {name}"))
}

fn set(line: u32, text: &str) -> Command {
    FormulaCommand::SetAmount { line: LineId(line), text: text.to_owned() }.into()
}

/// What a maker sees of the shelf and of each formula on it. Which of them lies open is no act that is taken back.
fn seen(session: &mut Session) -> Vec<String> {
    let cards = session.show_everything().shelf.map(|shelf| shelf.cards).unwrap_or_default();
    let formulas = cards.into_iter().map(|card| {
        if let Ok(formula) = card.id.clone().try_into() {
            session.apply(ShelfCommand::OpenFormula { formula });
        }
        let mut all = session.show_everything();
        all.status = None;
        all.history = None;
        all.notices.clear();
        // Nor is which material's card lies open.
        all.material = None;
        format!("{all:?}")
    });
    formulas.collect()
}

#[test]
fn a_material_past_its_date_is_said_beside_its_line() {
    let mut session = open();
    let everything = session.show_everything();
    let rosehip = line(&everything, "Rosehip").material.parse().unwrap();
    assert_eq!(line(&everything, "Rosehip").problem, "");
    let set = |text: &str| MaterialsCommand::SetHolding {
        material: rosehip,
        field: HoldingField::Expiry,
        text: text.to_owned(),
    };
    // It is 25 November 2026.
    let update = session.apply(set("2026-11-24"));
    assert!(line(&update, "Rosehip").problem.contains("24\u{a0}November\u{a0}2026"), "{:?}", update.lines);
    let update = session.apply(set("2026-11-25"));
    assert_eq!(line(&update, "Rosehip").problem, "");
}

#[test]
fn only_what_changed_is_handed_out() {
    let mut session = open();
    let all = session.show_everything();
    let betaine = line(&all, "Betaine").id;
    let update = session.apply(set(betaine, "2.5"));
    let names: Vec<&str> = update.lines.iter().map(|line| line.name.as_str()).collect();
    assert_eq!(names, ["Water, distilled", "Betaine"]);
    assert_eq!(line(&update, "Water").amount, "61.90");
    let constituents: Vec<&str> = update.constituents.iter().map(|each| each.inci.as_str()).collect();
    assert_eq!(constituents, ["Aqua", "Betaine"]);
    assert!(update.shelf.is_some() && update.settings.is_none() && update.own_materials.is_none());
}

#[test]
fn a_text_that_is_not_understood_changes_nothing() {
    let mut session = open();
    let all = session.show_everything();
    let betaine = line(&all, "Betaine").id;
    let update = session.apply(set(betaine, "a pinch"));
    let answer = update.answer.unwrap();
    assert_eq!(answer.code, Some("number.not-a-number"));
    assert_eq!(answer.field.as_deref(), Some(format!("amount:{betaine}").as_str()));
    assert!(update.lines.is_empty() && update.formula.is_none() && update.history.is_none());
}

#[test]
fn the_scaled_sheet_sums_to_the_batch_it_shows() {
    let mut session = open();
    session.show_everything();
    session.apply(BenchCommand::SetBatchWay { way: BatchWay::Containers });
    session.apply(BenchCommand::SetContainerCount { text: "7".into() });
    session.apply(BenchCommand::SetContainerVolume { text: "30 ml".into() });
    session.apply(BenchCommand::SetLoss { text: "4".into() });
    let view = session.show_everything();
    let batch = view.batch.unwrap();
    assert!(batch.arithmetic[0].starts_with("7 \u{d7} 30\u{a0}mL"), "{:?}", batch.arithmetic);
    let hundredths = |text: &str| -> i64 {
        let digits: String = text.chars().filter(|c| c.is_ascii_digit() || *c == '.').collect();
        let (whole, fraction) = digits.split_once('.').unwrap_or((&digits, ""));
        whole.parse::<i64>().unwrap() * 100 + format!("{fraction:0<2}").parse::<i64>().unwrap()
    };
    let sum: i64 = view.lines.iter().map(|line| hundredths(&line.mass)).sum();
    assert_eq!(sum, hundredths(&view.formula.unwrap().total_mass));
    assert_eq!(sum, hundredths(&batch.batch));
}

#[test]
fn typing_on_in_one_field_is_one_act_to_take_back() {
    let mut session =
        Session::open(Box::new(MemoryStore::default()), Box::new(QuietRoom::at(MORNING, 100)), DecimalMark::Point);
    let all = session.show_everything();
    let betaine = line(&all, "Betaine").id;
    for text in ["3", "3.", "3.1", "3.15"] {
        session.apply(set(betaine, text));
    }
    let update = session.apply(DeskCommand::Undo {});
    assert_eq!(line(&update, "Betaine").amount, "2.00");
    assert_eq!(update.history.unwrap().undo, None);
    let update = session.apply(DeskCommand::Redo {});
    assert_eq!(line(&update, "Betaine").amount, "3.15");
}

#[test]
fn what_is_kept_is_found_again() {
    let store = MemoryStore::default();
    let mut session = open_on(&store);
    session.show_everything();
    session.apply(FormulaCommand::SetNotes { text: "keeps \u{201c}quotes\u{201d} and \u{1f952}".into() });
    session.apply(BenchCommand::SetSetting { name: SettingName::MainStep, text: "1".into() });
    session.apply(MaterialsCommand::NewMaterial { composite: true, name: "Stock".into() });
    assert!(session.has_unkept());
    let status = session.keep().status.unwrap();
    assert_eq!(status.state, KeepState::Kept);
    assert!(!session.has_unkept());
    let mut again = open_on(&store);
    let (was, is) = (session.show_everything(), again.show_everything());
    assert_eq!(was.formula, is.formula);
    assert_eq!(was.lines, is.lines);
    assert_eq!(was.settings, is.settings);
    assert_eq!(was.own_materials, is.own_materials);
}

#[test]
fn a_full_store_is_said_and_tried_again() {
    let store = MemoryStore::default();
    let mut session = open_on(&store);
    session.keep();
    store.fail_with(Some(StoreError::Full));
    session.apply(FormulaCommand::SetNotes { text: "more".into() });
    assert_eq!(session.keep().status.unwrap().state, KeepState::Full);
    assert!(session.has_unkept());
    store.fail_with(None);
    assert_eq!(session.keep().status.unwrap().state, KeepState::Kept);
    assert_eq!(open_on(&store).formula().unwrap().notes, "more");
}

#[test]
fn two_pages_on_one_store_do_not_overwrite_each_other() {
    let store = MemoryStore::default();
    let mut one = open_on(&store);
    one.keep();
    let mut other = open_on(&store);
    one.apply(FormulaCommand::SetNotes { text: "one".into() });
    one.keep();
    other.apply(FormulaCommand::SetNotes { text: "other".into() });
    let status = other.keep().status.unwrap();
    assert_eq!(status.state, KeepState::Conflict);
    assert_eq!(open_on(&store).formula().unwrap().notes, "one");

    // Keeping both: the version of the other page stays under its own name.
    let key = status.conflicts[0].key.clone();
    other.apply(DeskCommand::KeepBoth { key });
    assert_eq!(other.keep().status.unwrap().state, KeepState::Kept);
    let shelf = open_on(&store).show_everything().shelf.unwrap();
    assert_eq!(shelf.cards.len(), 2);

    // A page that has changed nothing takes over what another kept.
    one.apply(FormulaCommand::SetNotes { text: "one again".into() });
    one.keep();
    let key =
        store.keys().unwrap().into_iter().find(|key| key.contains("formula") && key.ends_with("cc00a7e")).unwrap();
    other.apply(DeskCommand::ChangedElsewhere { key });
    assert_eq!(other.formula_of(stillroom_core::FormulaId(0x0cc0_0a7e)).unwrap().notes, "one again");
}

#[test]
fn a_copy_shows_every_line_although_none_of_them_differs() {
    let mut session = open();
    let id = session.show_everything().formula.unwrap().id.unwrap();
    let update = session.apply(ShelfCommand::DuplicateFormula { formula: id.try_into().unwrap() });
    assert_eq!(update.lines.len(), 13);
}

#[test]
fn deleting_a_material_in_use_is_said_and_can_be_taken_back() {
    let mut session = open();
    let all = session.show_everything();
    let glycerite = all.own_materials.unwrap()[0].id.parse::<MaterialId>().unwrap();
    let update = session.apply(MaterialsCommand::DeleteMaterial { material: glycerite });
    assert!(update.notices[0].text.contains("misses it now"));
    assert_eq!(update.jar.unwrap().unresolved.len(), 1);
    let update = session.apply(DeskCommand::Undo {});
    assert!(update.jar.unwrap().unresolved.is_empty());
}

#[test]
fn a_density_of_ones_own_takes_the_place_of_the_catalogues_and_is_marked() {
    let mut session = open();
    session.show_everything();
    let rosehip = MaterialId::Catalogue(10);
    session.apply(MaterialsCommand::OpenMaterial { material: rosehip });
    let set = |field, text: &str| MaterialsCommand::SetHolding { material: rosehip, field, text: text.to_owned() };
    let update = session.apply(set(HoldingField::Density, "0,5"));
    let values = update.material.unwrap().values;
    assert_eq!((values[0].value.as_str(), values[0].basis.as_str()), ("0.50\u{a0}g/mL", "yours"));
    assert!(update.jar.unwrap().density.contains("0.99"), "the lighter oil makes the product lighter");
    let update = session.apply(set(HoldingField::Expiry, "2026-11-24"));
    assert!(update.material.unwrap().holding.remarks[0].starts_with("Past its date"));
    let update = session.apply(set(HoldingField::Expiry, "2026-02-30"));
    assert_eq!(update.answer.unwrap().code, Some("holding.not-a-day"));
    session.apply(set(HoldingField::Price, "12,90"));
    let update = session.apply(set(HoldingField::Pack, "50"));
    assert!(update.material.unwrap().holding.remarks[0].starts_with("25.80\u{a0}EUR"));
    let update = session.apply(set(HoldingField::Currency, "euros"));
    assert_eq!(update.answer.unwrap().code, Some("quantity.not-a-currency"));
}

#[test]
fn a_table_is_taken_in_whole_or_not_at_all_and_comes_out_again() {
    let mut session = open();
    session.show_everything();
    let bad = session.read_table(b"name,parts\nA,2 % Unobtainium; q.s. Glycerin\nB,50 % Caffeine\n");
    assert_eq!(bad.ready, 0);
    assert_eq!(bad.problems.len(), 3, "{:?}", bad.problems);
    let update = session.apply(MaterialsCommand::ImportTable {});
    assert_eq!(update.own_materials, None);
    let good = session.read_table(
        "name,inci,class,parts\nA,,active,\"2 % b; q.s. Water, distilled\"\nB,Baz Extract,extract,\n".as_bytes(),
    );
    assert_eq!((good.ready, good.problems.len()), (2, 0));
    let update = session.apply(MaterialsCommand::ImportTable {});
    let names: Vec<String> = update.own_materials.unwrap().into_iter().map(|hit| hit.name).collect();
    assert_eq!(names, ["A", "B", "Cucumber glycerite, lot 7 (invented)"]);
    let table = session.write_table();
    assert!(table.contains("A,,active,heated-water,,\"2 % B; q.s. Water, distilled\","), "{table}");
    let update = session.apply(DeskCommand::Undo {});
    assert_eq!(update.own_materials.unwrap().len(), 1);
}

#[test]
fn a_formula_can_be_a_material_and_follows_its_changes() {
    let mut session = open();
    let all = session.show_everything();
    let betaine = line(&all, "Betaine").id;
    let example = all.formula.unwrap().id.unwrap();
    session.apply(ShelfCommand::NewFormula { basis: WrittenIn::Percent });
    let phase = session.show_everything().formula.unwrap().phases[0].id;
    let material = MaterialId::Formula(u64::from_str_radix(&example, 16).unwrap());
    session.apply(FormulaCommand::AddLine { phase: PhaseId(phase), material });
    let amount = |session: &mut Session| {
        let view = session.show_everything();
        view.constituents.iter().find(|each| each.inci == "Betaine").map(|each| each.percent.clone())
    };
    assert_eq!(amount(&mut session).as_deref(), Some("2.000"));
    let second = session.show_everything().formula.unwrap().id.unwrap();
    session.apply(ShelfCommand::OpenFormula { formula: example.try_into().unwrap() });
    session.apply(set(betaine, "4"));
    session.apply(ShelfCommand::OpenFormula { formula: second.try_into().unwrap() });
    assert_eq!(amount(&mut session).as_deref(), Some("4.000"));
}

#[test]
fn ounces_are_read_shown_and_weighed() {
    let mut session = open();
    session.show_everything();
    session.apply(BenchCommand::SetSetting { name: SettingName::MassUnit, text: "oz".into() });
    session.apply(BenchCommand::SetSetting { name: SettingName::MainStep, text: "0.1 oz".into() });
    session.apply(BenchCommand::SetSetting { name: SettingName::FineScale, text: "no".into() });
    session.apply(BenchCommand::SetBatchMass { text: "8".into() });
    let view = session.show_everything();
    assert_eq!(view.formula.unwrap().total_mass, "8.0");
    assert_eq!(view.batch.unwrap().batch, "8\u{a0}oz");
    // A tenth of a gram is 0.0035 oz: three decimals tell two steps of it apart, and a fourth would be noise.
    session.apply(BenchCommand::SetSetting { name: SettingName::MainStep, text: "0.1 g".into() });
    let view = session.show_everything();
    let decimals: Vec<usize> =
        view.lines.iter().filter_map(|line| Some(line.mass.trim().split_once('.')?.1.len())).collect();
    assert!(!decimals.is_empty() && decimals.iter().all(|each| *each == 3), "{:?}", view.lines);
    assert_eq!(view.settings.unwrap().main_step, "0.1\u{a0}g");
}

#[test]
fn what_is_recorded_as_stock_is_what_is_left() {
    let mut session = open();
    session.apply(BenchCommand::SetBatchWay { way: BatchWay::Stock });
    let squalane = line(&session.show_everything(), "Squalane").material.parse().unwrap();
    let set = |text: &str| MaterialsCommand::SetHolding {
        material: squalane,
        field: HoldingField::Stock,
        text: text.to_owned(),
    };
    session.apply(set("12"));
    let batch = session.show_everything().batch.unwrap();
    let offered = batch.at_hand.iter().find(|each| each.name == "Squalane").unwrap();
    assert_eq!(offered.recorded, "12\u{a0}g");
    assert!(batch.at_hand.iter().all(|each| each.name == "Squalane" || each.recorded.is_empty()));
    let taken = |session: &mut Session, text: &str| {
        session.apply(BenchCommand::SetStock { material: squalane, text: text.to_owned() });
        let batch = session.show_everything().batch.unwrap();
        assert!(batch.at_hand.iter().all(|each| each.name != "Squalane"));
        batch.stock.into_iter().find(|each| each.name == "Squalane").unwrap().available
    };
    assert_eq!(taken(&mut session, ""), "12");
    // What was said is not put back by emptying the field.
    assert_eq!(taken(&mut session, "7"), "7");
    assert_eq!(taken(&mut session, ""), "0");
}

/// 158 °F is 70 °C exactly (NIST SP 811, table B.9: t/°C = (t/°F − 32)/1.8).
#[test]
fn fahrenheit_is_read_shown_and_kept_as_celsius() {
    let mut session = open();
    let phase = |session: &mut Session| session.show_everything().formula.unwrap().phases[0].clone();
    let before = phase(&mut session);
    assert_eq!((before.temperature.as_str(), before.temperature_unit), ("70", "°C"));
    session.apply(BenchCommand::SetSetting { name: SettingName::TemperatureUnit, text: "°F".into() });
    let shown = phase(&mut session);
    assert_eq!((shown.temperature.as_str(), shown.temperature_unit), ("158", "°F"));
    let set = |text: &str| FormulaCommand::SetPhaseTemperature { phase: PhaseId(before.id), text: text.into() };
    for (text, reads) in [("165", "165"), ("75 °C", "167"), ("70°F", "70"), ("165.5 f", "165.5")] {
        assert_eq!(session.apply(set(text)).answer.unwrap().error, None, "{text}");
        assert_eq!(phase(&mut session).temperature, reads, "{text}");
    }
    let refused = session.apply(set("600")).answer.unwrap().error.unwrap();
    assert!(refused.contains("-148 to 572") || refused.contains("\u{2212}148 to 572"), "{refused}");
    session.apply(set("158"));
    session.apply(BenchCommand::SetSetting { name: SettingName::TemperatureUnit, text: "°C".into() });
    assert_eq!(phase(&mut session).temperature, "70");
}

#[test]
fn the_search_for_a_line_begins_with_what_is_used_and_what_goes_into_its_phase() {
    let mut session = open();
    let first =
        |session: &mut Session, query: &str, phase| session.search_for(query, &Filter::default(), phase).remove(0);
    // Before anything is typed: what the example is made of, and of that what goes into an oil phase.
    let hit = first(&mut session, "", Some(PhaseKind::HeatedOil));
    let used: Vec<String> = session.formula().unwrap().lines().map(|line| line.material.to_string()).collect();
    assert!(used.contains(&hit.id), "{hit:?}");
    let in_oil = session.formula().unwrap().phases.iter().find(|phase| phase.kind == PhaseKind::HeatedOil).unwrap();
    let in_oil: Vec<String> = in_oil.lines.iter().map(|line| line.material.to_string()).collect();
    assert!(in_oil.contains(&hit.id), "{hit:?}");
    // A butter that was used stands before others that answer as well.
    let before = first(&mut session, "butter", Some(PhaseKind::HeatedOil)).id;
    let other = session
        .search("butter", &Filter::default())
        .into_iter()
        .find(|hit| hit.id != before && hit.name.contains("butter"))
        .unwrap();
    let phase = session.formula().unwrap().phases[1].id;
    session.apply(FormulaCommand::AddLine { phase, material: other.id.parse().unwrap() });
    assert_eq!(first(&mut session, "butter", Some(PhaseKind::HeatedOil)).id, other.id);
}
