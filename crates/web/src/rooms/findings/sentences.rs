//! Which message says what was found, what it means, how it was worked out and what would cure it.
//!
//! A check names its sentence by a code and its numbers by names; the messages lie in `messages/*/findings.ftl` under those
//! names. Of several messages for one code the first counts whose numbers are all there.

use crate::messages::{common, findings as says, named, names};
use crate::rooms::findings::view::MarkView;
use stillroom_core::checks::{Axis, Value, Values};
use stillroom_core::source::{Basis, Citation};

/// What stands for a number in a sentence.
pub(crate) enum Words {
    /// One text.
    One(String),
    /// A list.
    Several(Vec<String>),
}

/// The message of a name.
fn message(name: &str) -> Option<named::Message> {
    named::find(says::BY_NAME, says::PIECE, name)
}

/// Name of a message for a code.
fn name_of(code: &str) -> String {
    code.replace('.', "-")
}

/// Fills the sentence of a code with its numbers.
pub(crate) fn say(code: &str, values: &Values, write: &dyn Fn(&Value) -> Words) -> String {
    let name = name_of(code);
    let further = (2..).map(|number| format!("{name}-{number}"));
    let sentences = std::iter::once(name.clone()).chain(further).map_while(|name| message(&name));
    let argument = |name: &str| {
        let (_, value) = values.iter().find(|(each, _)| *each == name)?;
        match write(value) {
            Words::One(text) => Some(text),
            // An empty list is not there.
            Words::Several(texts) => (!texts.is_empty()).then(|| list(&texts)),
        }
    };
    sentences.into_iter().find_map(|sentence| sentence.filled(&argument)).unwrap_or_else(|| code.to_owned())
}

/// A list as it is spoken.
fn list(texts: &[String]) -> String {
    match texts {
        [] => String::new(),
        [only] => only.clone(),
        [first @ .., last] => common::list_and(&first.join(common::list_separator()), last),
    }
}

/// What a finding means and why it matters.
pub(crate) fn meaning(code: &str) -> &'static str {
    message(&format!("meaning-{}", name_of(code))).map_or("", |message| message.text())
}

/// A word in a sentence.
pub(crate) fn word(key: &str) -> &'static str {
    message(&format!("word-{}", name_of(key))).map_or("", |message| message.text())
}

/// What a finding is a matter of.
pub(crate) fn family(code: &str) -> &'static str {
    match code.split_once('.').map_or(code, |(family, _)| family) {
        // What heat does to a material is no matter of the emulsion, though it is found where phases are looked at.
        _ if code == "emulsion.heat-sensitive" || code == "preservation.too-hot" => says::family_heat(),
        "solubility" => says::family_solubility(),
        "preservation" => says::family_preservation(),
        "emulsion" => says::family_emulsion(),
        "stability" => says::family_stability(),
        "checks" => says::family_checks(),
        _ => says::family_limits(),
    }
}

/// How many findings there are, most serious first.
pub(crate) fn summary([stops, cautions, notes]: [usize; 3], waiting: bool) -> String {
    if waiting {
        return says::summary_waiting().to_owned();
    }
    let (of_stops, of_cautions, of_notes) = (stops.to_string(), cautions.to_string(), notes.to_string());
    match (stops, cautions, notes) {
        (0, 0, 0) => says::summary_none().to_owned(),
        (0, 0, _) => says::summary_notes(&of_notes),
        (0, ..) => says::summary_cautions(&of_cautions, &of_notes),
        _ => says::summary_stops(&of_stops, &of_cautions, &of_notes),
    }
}

/// A source as a line.
pub(crate) fn citation(citation: &Citation) -> String {
    let Citation { source, locator, as_of, .. } = citation;
    // What is no publication, and no date, has its words in each language.
    let (source, as_of) = (names::word(source), names::word(as_of));
    match (locator.is_empty(), as_of.is_empty()) {
        (true, true) => source.to_owned(),
        (false, true) => says::citation_place(source, locator),
        (true, false) => says::citation_as_of(source, as_of),
        (false, false) => says::citation_place_as_of(source, locator, as_of),
    }
}

/// How far a source may be trusted.
pub(crate) fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::Published => says::basis_published(),
        Basis::Computed => says::basis_computed(),
        Basis::SupplierTypical => says::basis_supplier_typical(),
        Basis::Memory => says::basis_memory(),
    }
}

/// What an axis measures.
pub(crate) fn axis(axis: Axis) -> &'static str {
    match axis {
        Axis::Temperature => says::axis_temperature(),
        Axis::Percent => says::axis_percent(),
        Axis::Ph => says::axis_ph(),
        Axis::Undissociated => says::axis_undissociated(),
        Axis::Hlb => says::axis_hlb(),
    }
}

/// A picture for those who do not see it.
pub(crate) fn chart(across: Axis, up: Option<Axis>, marks: &[MarkView]) -> String {
    let points = marks.iter().map(|mark| mark.text.as_str()).collect::<Vec<_>>().join("; ");
    match up {
        Some(up) => says::chart_over(axis(up), axis(across), &points),
        None => says::chart_along(axis(across), &points),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::messages::{Language, speak_natively};
    use stillroom_core::checks::FAMILIES;

    #[test]
    fn every_finding_has_a_sentence_and_a_meaning() {
        for registered in FAMILIES.iter().copied().flatten() {
            assert!(message(&name_of(registered.code)).is_some(), "{} has no sentence", registered.code);
            assert!(!meaning(registered.code).is_empty(), "{} has no meaning", registered.code);
        }
    }

    #[test]
    fn a_sentence_without_its_numbers_gives_way_to_the_next() {
        let write = |value: &Value| match value {
            Value::Name(name) => Words::One((*name).to_owned()),
            _ => Words::Several(vec!["a".to_owned(), "b".to_owned()]),
        };
        let values = vec![("material", Value::Name("Allantoin")), ("to", Value::Names(Vec::new()))];
        assert_eq!(say("cure.lower", &values, &write), "Lower Allantoin to a and b");
        assert_eq!(say("cure.lower", &Vec::new(), &write), "cure.lower");
    }

    #[test]
    fn no_sentence_says_that_something_is_safe() {
        let never = ["safe", "sicher ", "sûr ", "sûre "];
        for language in Language::ALL {
            speak_natively(language);
            for (name, ..) in says::BY_NAME {
                let text = message(name).map_or("", |message| message.text()).to_lowercase();
                let text = text.replace("safety assessment", "");
                assert!(!never.iter().any(|word| text.contains(word)), "{name}: {text}");
            }
        }
        speak_natively(Language::English);
    }
}
