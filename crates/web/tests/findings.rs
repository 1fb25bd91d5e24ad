//! Findings in the session: kept in place while typing, cured at one tap, set aside with a reason.
#![allow(clippy::unwrap_used)]

use rust_decimal::Decimal;
use stillroom_core::FormulaId;
use stillroom_core::number::DecimalMark;
use stillroom_core::{Amount, LineId, MaterialSource, Percent, PhaseKind, WrittenIn};
use stillroom_web::rooms::command::DeskCommand;
use stillroom_web::rooms::findings::command::FindingsCommand;
use stillroom_web::rooms::findings::view::{FindingView, FindingsView};
use stillroom_web::rooms::formula::command::FormulaCommand;
use stillroom_web::rooms::shelf::command::ShelfCommand;
use stillroom_web::rooms::update::Update;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom};

fn open() -> Session {
    Session::open(Box::new(MemoryStore::default()), Box::new(QuietRoom::at(1_700_000_000_000, 0)), DecimalMark::Point)
}

/// The line of the example that holds a catalogue material.
fn line_of(session: &Session, inci: &str) -> LineId {
    let catalogue = stillroom_catalogue::Catalogue::get();
    let is_it = |id| match catalogue.material(id).map(|material| &material.makeup) {
        Some(stillroom_core::Makeup::Simple(constituent)) => {
            catalogue.constituent(*constituent).is_some_and(|constituent| constituent.inci == inci)
        }
        _ => false,
    };
    session.formula().unwrap().lines().find(|line| is_it(line.material)).unwrap().id
}

fn found(update: &Update) -> &FindingsView {
    update.findings.as_ref().unwrap()
}

fn about<'a>(view: &'a FindingsView, key: &str) -> Option<&'a FindingView> {
    view.items.iter().find(|item| item.key.starts_with(key)).map(std::convert::AsRef::as_ref)
}

fn set(session: &mut Session, line: LineId, text: &str) -> Update {
    session.apply(FormulaCommand::SetAmount { line, text: text.to_owned() })
}

#[test]
fn below_a_hundred_percent_what_was_found_before_warns_of_nothing_and_cures_nothing() {
    let mut session = open();
    let allantoin = line_of(&session, "Allantoin");
    let update = set(&mut session, allantoin, "0.8");
    assert!(!about(found(&update), "solubility.over-cap/").unwrap().cures.is_empty());
    assert_ne!(found(&update).worst, "");
    // The line that fills up gets a number: the whole is no whole any more.
    let rest = session.formula().unwrap().lines().find(|line| line.amount == Amount::QuantumSatis).unwrap().id;
    let update = set(&mut session, rest, "10");
    let view = found(&update);
    assert!(view.waiting && view.worst.is_empty());
    assert!(view.items.iter().all(|item| item.cures.is_empty()), "{:?}", view.items);
}

#[test]
fn what_heat_spoils_is_filed_under_heat() {
    let mut session = open();
    let line = line_of(&session, "Rosa Canina Seed Oil");
    let formula = session.formula().unwrap();
    let hot = formula.phases.iter().find(|phase| phase.kind == PhaseKind::HeatedOil).unwrap().id;
    let update = session.apply(FormulaCommand::MoveLine { line, phase: hot, position: 0 });
    let finding = about(found(&update), "emulsion.heat-sensitive").unwrap();
    assert_eq!(finding.family, "Heat");
}

#[test]
fn a_cure_is_one_act_that_can_be_undone() {
    let mut session = open();
    let allantoin = line_of(&session, "Allantoin");
    let update = set(&mut session, allantoin, "0.8");
    let over = about(found(&update), "solubility.over-cap/").unwrap().clone();
    let before = session.formula().unwrap().clone();
    let cure = FindingsCommand::CureFinding { key: over.key.clone(), cure: 0, text: over.cures[0].clone() };
    let update = session.apply(cure);
    assert!(about(found(&update), &over.key).is_none());
    assert!(update.notices.iter().any(|notice| notice.code == "finding.cured" && notice.undo.is_some()));
    session.apply(DeskCommand::Undo {});
    assert_eq!(session.formula().unwrap(), &before);
}

#[test]
fn checks_that_follow_at_rest_find_the_same_and_never_lag_behind_an_act() {
    let mut prompt = open();
    let mut session = open();
    session.check_at_rest();
    assert!(session.show_everything().findings.is_none());
    assert_eq!(session.rest().findings, prompt.show_everything().findings);
    assert!(session.rest().findings.is_none(), "nothing changed since");

    let allantoin = line_of(&session, "Allantoin");
    assert!(set(&mut session, allantoin, "0.8").findings.is_none());
    let update = set(&mut prompt, allantoin, "0.8");
    assert_eq!(session.rest().findings, update.findings);

    // Acted on before the page came to rest: what is acted on is what stands now.
    let over = about(found(&update), "solubility.over-cap/").unwrap().clone();
    set(&mut session, allantoin, "0.05");
    session.apply(FindingsCommand::CureFinding { key: over.key.clone(), cure: 0, text: over.cures[0].clone() });
    assert_eq!(
        session.formula().unwrap().line(allantoin).unwrap().amount,
        Amount::Percent(Percent::new(Decimal::new(5, 2)).unwrap())
    );
    let update = session.apply(FindingsCommand::OpenFinding { key: over.key, open: true });
    assert!(update.findings.is_none_or(|view| about(&view, "solubility.over-cap/").is_none()));
}

#[test]
fn with_its_formula_off_the_shelf_nothing_stays_found() {
    let mut session = open();
    session.check_at_rest();
    session.show_everything();
    assert!(!found(&session.rest()).items.is_empty());
    let formula = FormulaId::try_from(session.show_everything().formula.unwrap().id.unwrap()).unwrap();
    session.rest();
    let update = session.apply(ShelfCommand::DeleteFormula { formula });
    let view = found(&update);
    assert!(view.items.is_empty() && view.worst.is_empty() && view.summary.is_empty());
    assert!(session.rest().findings.is_none());
    session.apply(DeskCommand::Undo {});
    assert!(!found(&session.rest()).items.is_empty());
}

#[test]
fn a_cure_that_reads_otherwise_by_now_is_not_applied() {
    let mut session = open();
    let allantoin = line_of(&session, "Allantoin");
    let update = set(&mut session, allantoin, "0.8");
    let over = about(found(&update), "solubility.over-cap/").unwrap().clone();
    let before = session.formula().unwrap().clone();
    for (cure, text) in [(0, "Lower Allantoin to 0.1 %"), (99, "anything")] {
        session.apply(FindingsCommand::CureFinding { key: over.key.clone(), cure, text: text.to_owned() });
        assert_eq!(session.formula().unwrap(), &before);
    }
}

#[test]
fn a_finding_keeps_its_key_and_place_while_its_numbers_change() {
    let mut session = open();
    let allantoin = line_of(&session, "Allantoin");
    let mut keys = Vec::new();
    for text in ["0.8", "0.81", "0.815", "0.9"] {
        let update = set(&mut session, allantoin, text);
        keys.push(found(&update).items.iter().map(|item| item.key.clone()).collect::<Vec<_>>());
    }
    assert!(keys.windows(2).all(|pair| pair[0] == pair[1]), "{keys:?}");
}

#[test]
fn what_is_set_aside_is_kept_with_its_reason_and_can_be_taken_back() {
    let mut session = open();
    let allantoin = line_of(&session, "Allantoin");
    let update = set(&mut session, allantoin, "0.8");
    let key = about(found(&update), "solubility.over-cap/").unwrap().key.clone();
    let aside = |text: &str| FindingsCommand::SetAsideFinding { key: key.clone(), text: text.to_owned() };
    let refused = session.apply(aside("   ")).answer.unwrap();
    assert_eq!(refused.code, Some("finding.no-reason"));
    let update = session.apply(aside(" a test batch "));
    assert!(about(found(&update), &key).is_none());
    assert_eq!(found(&update).set_aside[0].reason, "a test batch");
    assert_eq!(session.formula().unwrap().set_aside.len(), 1);
    // It stays set aside while its numbers change, and says so even when it is not found.
    let update = set(&mut session, allantoin, "0.9");
    assert!(found(&update).set_aside[0].text.contains("0.9"));
    let update = set(&mut session, allantoin, "0.1");
    assert!(found(&update).set_aside[0].text.is_empty());
    set(&mut session, allantoin, "0.8");
    let update = session.apply(FindingsCommand::TakeFindingBack { key: key.clone() });
    assert!(about(found(&update), &key).is_some() && found(&update).set_aside.is_empty());
}

#[test]
fn only_an_open_finding_is_handed_out_with_its_inside() {
    let mut session = open();
    let allantoin = line_of(&session, "Allantoin");
    let update = set(&mut session, allantoin, "0.8");
    let key = about(found(&update), "solubility.over-cap/").unwrap().key.clone();
    assert!(found(&update).items.iter().all(|item| item.open.is_none()));
    let update = session.apply(FindingsCommand::OpenFinding { key: key.clone(), open: true });
    let detail = about(found(&update), &key).unwrap().open.clone().unwrap();
    assert!(!detail.working.is_empty() && !detail.sources.is_empty() && !detail.meaning.is_empty());
    assert!(detail.working.iter().all(|step| !step.contains('{') && !step.starts_with("work.")), "{detail:?}");
    let update = session.apply(FindingsCommand::OpenFinding { key, open: false });
    assert!(found(&update).items.iter().all(|item| item.open.is_none()));
}

#[test]
fn the_cold_of_the_store_room_is_a_setting_that_the_checks_read() {
    let mut session = open();
    let cold = |text: &str| FindingsCommand::SetColdStorage { text: text.to_owned() };
    assert!(session.apply(cold("-40")).answer.unwrap().error.is_some());
    assert!(session.apply(cold("warm")).answer.unwrap().error.is_some());
    let update = session.apply(cold("8 °C"));
    assert_eq!(found(&update).cold_storage, "8");
    assert!(update.answer.unwrap().error.is_none());
}

#[test]
fn every_sentence_of_every_finding_has_all_its_numbers() {
    let mut session = open();
    let materials: Vec<_> = stillroom_catalogue::Catalogue::get().materials().map(|material| material.id).collect();
    session.apply(ShelfCommand::LookAtShelf { looking: false });
    let mut seen = std::collections::BTreeSet::new();
    let mut broken = std::collections::BTreeSet::new();
    for (turn, some) in materials.chunks(9).enumerate() {
        session.apply(ShelfCommand::NewFormula { basis: WrittenIn::Percent });
        let kind = PhaseKind::ALL[turn % 4];
        let made = session.apply(FormulaCommand::AddPhase { kind }).answer.unwrap().made.unwrap();
        let phase = stillroom_core::PhaseId(made.parse().unwrap());
        for (at, material) in std::iter::once(&materials[0]).chain(some).enumerate() {
            let made =
                session.apply(FormulaCommand::AddLine { phase, material: *material }).answer.unwrap().made.unwrap();
            if at > 0 {
                set(&mut session, LineId(made.parse().unwrap()), "3");
            }
        }
        if turn % 2 == 0 {
            session.apply(FormulaCommand::SetTargetPh { text: "6.5".to_owned() });
        }
        let everything = session.show_everything();
        for item in &found(&everything).items {
            seen.insert(item.key.split('/').next().unwrap().to_owned());
            let update = session.apply(FindingsCommand::OpenFinding { key: item.key.clone(), open: true });
            let item = about(found(&update), &item.key).unwrap();
            let detail = item.open.as_ref().unwrap();
            let code = item.key.split('/').next().unwrap();
            let texts = detail.working.iter().chain(&item.cures).chain([&item.text]);
            for text in texts.filter(|text| !text.contains(' ') || text.contains('{') || text.contains(" ,")) {
                broken.insert(format!("{code}: {text}"));
            }
            session.apply(FindingsCommand::OpenFinding { key: item.key.clone(), open: false });
        }
    }
    assert!(broken.is_empty(), "{broken:#?}");
    assert!(seen.len() >= 20, "{seen:?}");
}

#[test]
fn the_kind_of_product_says_how_it_is_used_and_a_measured_ph_comes_first() {
    let mut session = open();
    let update = session.apply(FindingsCommand::SetKind { text: "shampoo".to_owned() });
    assert_eq!(found(&update).kind, "shampoo");
    assert_eq!(update.formula.unwrap().purpose, stillroom_core::Purpose::RinseOff);
    let update = session.apply(FormulaCommand::SetPurpose { purpose: stillroom_core::Purpose::LeaveOn });
    assert!(found(&update).kind.is_empty(), "a shampoo does not stay on");
    let update = session.apply(FindingsCommand::SetMeasuredPh { text: "12".to_owned() });
    assert!(about(found(&update), "limits.skin-ph/").unwrap().text.starts_with("pH 12 (measured) burns skin."));
    assert_eq!(found(&update).measured_ph, "12.0");
    let refused = session.apply(FindingsCommand::SetMeasuredPh { text: "sour".to_owned() }).answer.unwrap();
    assert_eq!(refused.field.as_deref(), Some("formula.measured-ph"));
    assert!(refused.error.is_some());
    session.apply(DeskCommand::Undo {});
    assert!(session.formula().unwrap().measured_ph.is_none());
}

#[test]
fn all_that_was_not_checked_is_one_quiet_row() {
    let mut session = open();
    let update = session.show_everything();
    let rows: Vec<_> = found(&update).items.iter().filter(|item| item.family == "Not checked").collect();
    assert!(rows.len() <= 1 && found(&update).items.iter().all(|item| !item.key.contains("no-data")), "{rows:#?}");
    if let Some(row) = rows.first() {
        assert_eq!((row.severity, found(&update).items.last().map(|last| &last.key)), ("note", Some(&row.key)));
    }
}
