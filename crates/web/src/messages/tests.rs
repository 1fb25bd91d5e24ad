//! What holds for the message files.

use super::{Language, common, desk, extracts, formula, named, sentences, shelf, speak_natively};
use std::path::Path;
use stillroom_core::extract::keeping::ORGANISMS;
use stillroom_messages::{Catalogue, Part, Pattern};

fn catalogue() -> Catalogue {
    stillroom_messages::read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("messages")).unwrap()
}

/// Every text of a message, each variant by itself, an argument as `{}`.
fn texts_of(pattern: &Pattern) -> Vec<String> {
    let mut texts = vec![String::new()];
    for part in &pattern.0 {
        let endings = match part {
            Part::Text(text) => vec![text.clone()],
            Part::Argument(_) => vec!["{}".to_owned()],
            Part::Selection { variants, .. } => variants.iter().flat_map(|(_, pattern)| texts_of(pattern)).collect(),
        };
        texts = texts.iter().flat_map(|text| endings.iter().map(move |ending| format!("{text}{ending}"))).collect();
    }
    texts
}

#[test]
fn every_language_says_every_message_and_takes_the_same_arguments() {
    let catalogue = catalogue();
    let many = catalogue.disagreements.len();
    assert!(many == 0, "{many} disagreements, first {:#?}", catalogue.disagreements.iter().take(5).collect::<Vec<_>>());
}

#[test]
fn a_message_is_filled_and_its_plural_chosen_by_the_rules_of_its_language() {
    assert_eq!(shelf::about(1, "leave-on"), "1 line · leave-on");
    assert_eq!(shelf::about(0, "rinse-off"), "0 lines · rinse-off");
    speak_natively(Language::French);
    assert_eq!(shelf::about(0, "rinse-off"), "0 ligne · à rincer");
    assert_eq!(common::percent("2,5"), "2,5\u{202f}%");
    speak_natively(Language::German);
    assert_eq!(common::material_deleted(0, "Glycerit"), "„Glycerit“ ist gelöscht.");
    assert_eq!(
        common::material_deleted(3, "Glycerit"),
        "„Glycerit“ ist gelöscht und fehlt jetzt in 3 Rezepturen oder Mischungen."
    );
    assert_eq!(desk::undo(desk::act_line_add()), "Rückgängig: neue Zeile");
    let missing = named::find(formula::BY_NAME, formula::PIECE, "problem-missing").unwrap();
    let said = missing.filled(&|name| Some(format!("<{name}>")));
    assert_eq!(said.as_deref(), Some("Summe <total>: noch <missing>."));
    assert_eq!(missing.filled(&|_| None), None);
    assert!(named::find(formula::BY_NAME, formula::PIECE, "no-such").is_none());
    speak_natively(Language::English);
}

/// Spaces and quotation marks as each language sets them: the Imprimerie nationale for French, DIN 5008 for
/// German (both from memory).
#[test]
fn every_language_sets_its_signs_as_it_does() {
    let mut wrong = Vec::new();
    for (room, messages) in &catalogue().rooms {
        for message in messages {
            for (language, pattern) in &message.patterns {
                for text in texts_of(pattern) {
                    let lower = text.to_lowercase();
                    // A plain space may break, and leaves a sign alone at the beginning of a line.
                    let spaced: &[&str] = match language.as_str() {
                        "fr" => &[" ;", " :", " !", " ?", " %", "\u{a0}%", "« ", " »", "\u{a0}?", "\u{a0};", "'"],
                        "de" => &[" %", "\u{202f}%", " ;", " :", " !", " ?", "'", "„ ", " “"],
                        _ => &[],
                    };
                    let quoted: &[&str] = match language.as_str() {
                        "fr" => &["“", "”", "„", "\""],
                        "de" => &["”", "«", "»", "\""],
                        _ => &["„", "«", "\""],
                    };
                    // No product is ever called so.
                    let safe: &[&str] = match language.as_str() {
                        "fr" => &[" sûr ", " sûre ", " sûrs ", "inoffensi"],
                        "de" => &[" sicher ", " sicheres ", " sichere ", "unbedenklich"],
                        _ => &[" safe ", " safely "],
                    };
                    let found = spaced.iter().chain(quoted).find(|sign| text.contains(**sign));
                    let found = found.or_else(|| safe.iter().find(|word| lower.contains(**word)));
                    // Separators of lists are nothing but signs and spaces.
                    if let Some(sign) = found.filter(|_| text.contains(char::is_alphabetic)) {
                        wrong.push(format!("{language}/{room}.ftl: {}: {sign:?} in {text}", message.id));
                    }
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{} wrong, first {:#?}", wrong.len(), wrong.iter().take(20).collect::<Vec<_>>());
}

/// What the core names by a word of its own is said in the words of the language.
#[test]
fn what_the_core_calls_something_is_said_in_every_language() {
    for language in [Language::German, Language::French] {
        speak_natively(language);
        for quantity in [
            "temperature",
            "Brix",
            "ethanol by volume",
            "water activity",
            "mass",
            "volume",
            "density",
            "share",
            "resolution",
            "refractive index",
            "viscosity",
            "freezing point",
            "evaporation",
            "mass fraction",
            "glycerol",
            "dissolved solids",
            "purity of the glycerin",
            "purity of the solvent",
            "purity",
            "strength",
            "glycerin",
            "water of the plant",
            "liquid left in the marc",
            "liquid per dry marc",
            "other solvent",
            "headspace",
            "preservative",
            "wanted",
            "soluble share, least",
            "soluble share, typical",
            "soluble share, most",
        ] {
            assert_ne!(extracts::quantity(&sentences::key_of_word(quantity), ""), "", "{quantity}");
        }
        for substance in [
            "glycerin",
            "plant",
            "solvent",
            "liquid",
            "menstruum",
            "water",
            "stock solution",
            "propylene glycol",
            "propanediol",
            "ethanol",
        ] {
            assert_ne!(extracts::substance(&sentences::key_of_word(substance), ""), "", "{substance}");
        }
        for organism in &ORGANISMS {
            let source = extracts::organism_source(&sentences::key_of_word(organism.source), "");
            // A paper is cited by author, journal and year alone.
            assert!(!source.is_empty() || organism.source.starts_with("Beuchat LR"), "{}", organism.source);
        }
    }
    speak_natively(Language::English);
}

#[test]
fn a_day_is_written_as_each_language_writes_it() {
    let days = || [desk::day("1", 12, "2025"), desk::day("2", 12, "2025")].map(|day| day.replace('\u{a0}', " "));
    assert_eq!(days(), ["1 December 2025", "2 December 2025"]);
    speak_natively(Language::German);
    assert_eq!(days(), ["1. Dezember 2025", "2. Dezember 2025"]);
    speak_natively(Language::French);
    assert_eq!(days(), ["1er décembre 2025", "2 décembre 2025"]);
    speak_natively(Language::English);
}
