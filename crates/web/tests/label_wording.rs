//! Words on a label against what somebody who judges labels would say of them: `tests/reference/data/label_wording.csv`, whose
//! judgements were written down before any of it was run. *Source* of the judgements: Regulation (EC) No 1223/2009 Art. 2 and 20,
//! Regulation (EU) No 655/2013, Directive 2001/83/EC Art. 1(2), Regulation (EU) No 528/2012 Art. 3, from memory.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used)]

use stillroom_core::number::DecimalMark;
use stillroom_web::messages::{Language, speak_natively};
use stillroom_web::rooms::command::Command;
use stillroom_web::rooms::formula::command::FormulaCommand;
use stillroom_web::rooms::label::command::LabelCommand;
use stillroom_web::rooms::shelf::command::ShelfCommand;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom};

const TABLE: &str = include_str!("../../../tests/reference/data/label_wording.csv");

/// What a remark says of a kind, in each language.
const SAYS: [(&str, [&str; 3]); 5] = [
    ("medicine", ["illness or healing", "Krankheit oder Heilung", "maladie ou de guérison"]),
    ("function", ["body’s functions", "Körperfunktionen", "fonctions du corps"]),
    ("biocide", ["germs or pests", "Keime oder Schädlinge", "germes ou des nuisibles"]),
    ("sun", ["claims sun protection", "verspricht Sonnenschutz", "protection solaire"]),
    ("claim", ["true and provable", "wahr und belegbar", "vrai et prouvé"]),
];

fn session() -> Session {
    let room = QuietRoom::at(1_795_824_000_000, 1_000);
    let mut session = Session::open(Box::new(MemoryStore::default()), Box::new(room), DecimalMark::Point);
    session.apply(LabelCommand::LookAtLabel { looking: true });
    session
}

#[test]
fn words_are_judged_as_somebody_who_judges_labels_would() {
    let mut rows = csv::Reader::from_reader(TABLE.as_bytes());
    let mut wrong = Vec::new();
    let mut counted = [[0; 2]; 3];
    for row in rows.records() {
        let row = row.unwrap();
        let cell = |at: usize| row.get(at).unwrap().to_owned();
        let (place, language) = match &row[0] {
            "en" => (0, Language::English),
            "de" => (1, Language::German),
            _ => (2, Language::French),
        };
        speak_natively(language);
        let mut desk = session();
        let formula = desk.open_formula().unwrap();
        let mut send = |command: Command| {
            desk.apply(command);
        };
        send(ShelfCommand::RenameFormula { formula, name: cell(1) }.into());
        send(LabelCommand::SetLabelField { field: "label.claims".into(), text: cell(2) }.into());
        send(LabelCommand::SetLabelField { field: "label.caution".into(), text: cell(3) }.into());
        send(FormulaCommand::SetNotes { text: cell(4) }.into());
        let said: Vec<String> =
            desk.show_everything().label.unwrap().wording.into_iter().map(|each| each.text).collect();
        let judgement = &row[5];
        let kind = SAYS.iter().find(|(kind, _)| *kind == judgement);
        assert!(kind.is_some() || judgement == "sound", "{judgement}");
        let fits = kind.map_or(said.is_empty(), |(_, words)| said.iter().any(|each| each.contains(words[place])));
        counted[place][usize::from(judgement != "sound")] += 1;
        if !fits {
            wrong.push(format!("{} is {judgement}: {said:?}", cell(1)));
        }
    }
    speak_natively(Language::English);
    assert_eq!(counted, [[16, 21]; 3]);
    assert!(wrong.is_empty(), "{} of 111:\n{}", wrong.len(), wrong.join("\n"));
}
