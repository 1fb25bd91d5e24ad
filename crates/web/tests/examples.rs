//! The invented examples: each makes a whole, says that it is invented, and raises what a chemist would say of it.
//!
//! What is expected was written down before the checks were run; all of it is common practice of formulating.
#![allow(clippy::unwrap_used)]

use stillroom_core::number::DecimalMark;
use stillroom_web::rooms::shelf::command::{Example, ShelfCommand};
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom};

fn open() -> Session {
    Session::open(Box::new(MemoryStore::default()), Box::new(QuietRoom::at(1_700_000_000_000, 0)), DecimalMark::Point)
}

/// The stops and cautions that each example should raise; notes may be of any kind.
const EXPECTED: [(Example, &[&str]); 4] = [
    // Preserved by two weak acids at a pH at which they act, emulsified by a pair that carries its oil.
    (Example::GelCream, &[]),
    // Nothing for water to do: no microbes, no emulsion; an antioxidant stands against air.
    (Example::Balm, &[]),
    // Benzoate and sorbate at pH 4.6 with a glycol beside them, everything soluble in so much water.
    (Example::Toner, &[]),
    // Under ten percent of mild surfactants, rinsed off, benzoate and sorbate at pH 4.8. It was composed with 0.3 % of sorbate
    // at first, and a caution said that some of it comes out in the cold: 0.2 % is what it holds now.
    (Example::CleansingGel, &[]),
];

#[test]
fn each_example_raises_what_a_chemist_would_say_and_nothing_worse() {
    assert_eq!(EXPECTED.map(|(example, _)| example), Example::ALL);
    for (example, expected) in EXPECTED {
        let mut session = open();
        session.apply(ShelfCommand::SeeExample { example });
        let shown = session.show_everything();
        let formula = session.formula().unwrap();
        assert!(formula.balance().is_sound(), "{example:?}");
        assert!(formula.notes.to_lowercase().contains("invented"), "{example:?}");
        assert!(formula.steps.len() >= 3, "{example:?}");
        let findings = shown.findings.unwrap();
        for item in &findings.items {
            println!("{example:?}: {} {}: {}", item.severity, item.key, item.text);
        }
        let graver: Vec<&str> = findings
            .items
            .iter()
            .filter(|item| item.severity != "note")
            .map(|item| item.key.split('/').next().unwrap())
            .collect();
        assert_eq!(graver, expected, "{example:?}");
    }
}

#[test]
fn an_example_that_stands_on_the_shelf_is_opened_as_it_is() {
    let mut session = open();
    for example in Example::ALL {
        session.apply(ShelfCommand::SeeExample { example });
    }
    let all = session.show_everything().shelf.unwrap().all;
    assert_eq!(all, Example::ALL.len());
    let id = session.open_formula().unwrap();
    session.apply(ShelfCommand::RenameFormula { formula: id, name: "mine now".to_owned() });
    session.apply(ShelfCommand::SeeExample { example: Example::Balm });
    assert_ne!(session.formula().unwrap().name, "mine now");
    session.apply(ShelfCommand::SeeExample { example: Example::CleansingGel });
    assert_eq!(session.formula().unwrap().name, "mine now");
    assert_eq!(session.show_everything().shelf.unwrap().all, all);
}
