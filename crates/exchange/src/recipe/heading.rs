//! Lines that part a recipe: names of phases, heads of tables, totals, the beginning of the method.

use super::amount::{Written, amounts_in};
use stillroom_catalogue::folded;
use stillroom_core::PhaseKind;
use stillroom_core::number::DecimalMark;

/// The name of a part of a recipe.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Heading {
    /// As it is written, without signs around it.
    pub name: String,
    /// Its letter, where it has one.
    pub letter: Option<char>,
    /// How the phase is handled, where words say so.
    pub kind: Option<PhaseKind>,
    /// What follows it.
    pub opens: Opens,
}

/// What follows a heading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Opens {
    /// The materials of a phase.
    Phase,
    /// Materials.
    Materials,
    /// What is to be done with them.
    Method,
}

// Words of the trade in three languages, folded; common practice.
const COOL_DOWN: [&str; 21] = [
    "cool down",
    "cooldown",
    "cooling phase",
    "cooling down",
    "below 40",
    "below 45",
    "abkuhl",
    "abkuhlphase",
    "wirkstoffphase",
    "unter 40",
    "handwarm",
    "active phase",
    "actives phase",
    "hors feu",
    "a froid",
    "refroidissement",
    "refroidi",
    "phase active",
    "phase des actifs",
    "heat sensitive",
    "nach dem abkuhlen",
];
const ROOM_TEMPERATURE: [&str; 8] = [
    "room temperature",
    "cold phase",
    "unheated",
    "cold process",
    "raumtemperatur",
    "kaltphase",
    "kalte phase",
    "temperature ambiante",
];
const OIL: [&str; 11] = [
    "oil phase",
    "oily phase",
    "fat phase",
    "lipid phase",
    "heated oil",
    "fettphase",
    "olphase",
    "phase huileuse",
    "phase grasse",
    "phase b huileuse",
    "melted oils",
];
const WATER: [&str; 9] = [
    "water phase",
    "aqueous phase",
    "aqueous",
    "heated water",
    "wasserphase",
    "wassrige phase",
    "phase aqueuse",
    "aqueuse",
    "hydrolatphase",
];
const OIL_ALONE: [&str; 4] = ["huileuse", "grasse", "olig", "fett"];
const METHOD: [&str; 22] = [
    "method",
    "procedure",
    "process",
    "directions",
    "instructions",
    "how to make it",
    "how to make",
    "to make",
    "steps",
    "making",
    "preparation",
    "mode operatoire",
    "methode",
    "procede",
    "zubereitung",
    "herstellung",
    "anleitung",
    "arbeitsweise",
    "realisation",
    "notes",
    "notizen",
    "hinweise",
];
const MATERIALS: [&str; 12] = [
    "ingredients",
    "materials",
    "what you need",
    "you need",
    "you will need",
    "recipe",
    "zutaten",
    "rohstoffe",
    "rezept",
    "ingredient list",
    "ingredients list",
    "recette",
];
const TOTAL: [&str; 21] = [
    "total",
    "totals",
    "grand total",
    "sum",
    "summe",
    "gesamt",
    "gesamtmenge",
    "insgesamt",
    "somme",
    "in all",
    "zusammen",
    "total general",
    "subtotal",
    "sub total",
    "zwischensumme",
    "teilsumme",
    "sous total",
    "endsumme",
    "gesamtsumme",
    "total percent",
    "total gramm",
];

/// Reads a line as a heading; `None` for anything else.
pub(super) fn heading_of(text: &str, mark: DecimalMark) -> Option<Heading> {
    let is_marked = text.trim_start().starts_with('#');
    let name = bare(text);
    let words = folded(&name);
    let count = words.split(' ').count();
    if words.is_empty() || count > 9 {
        return None;
    }
    // A heading holds no amount; a temperature is none.
    if amounts_in(&name, mark).iter().any(|found| !matches!(found.written, Written::NotRead(_))) {
        return None;
    }
    let make = |letter, kind, opens| Some(Heading { name: name.clone(), letter, kind, opens });
    if METHOD.contains(&words.as_str()) {
        return make(None, None, Opens::Method);
    }
    if MATERIALS.contains(&words.as_str()) {
        return make(None, None, Opens::Materials);
    }
    let has = |list: &[&str]| list.iter().any(|phrase| holds(&words, phrase));
    let kind = if has(&COOL_DOWN) {
        Some(PhaseKind::CoolDown)
    } else if has(&ROOM_TEMPERATURE) {
        Some(PhaseKind::RoomTemperature)
    } else if has(&OIL) {
        Some(PhaseKind::HeatedOil)
    } else if has(&WATER) {
        Some(PhaseKind::HeatedWater)
    } else {
        None
    };
    let letter = letter_of(&words);
    let says_phase = words
        .split(' ')
        .any(|word| word.ends_with("phase") || word == "phases" || matches!(word, "part" | "teil" | "partie"));
    let kind = kind.or_else(|| (says_phase && has(&OIL_ALONE)).then_some(PhaseKind::HeatedOil));
    let ends_as_heading = text.trim_end().ends_with(':') || is_marked;
    let stands_alone = letter.is_some() && count == 1;
    let is_heading = stands_alone
        || (says_phase && (letter.is_some() || kind.is_some() || count <= 3))
        || (kind.is_some() && (count <= 6 || ends_as_heading));
    if is_heading { make(letter, kind, Opens::Phase) } else { None }
}

/// Whether a line sums up.
pub(super) fn is_total(text: &str) -> bool {
    let words =
        folded(&text.chars().map(|letter| if letter.is_ascii_digit() { ' ' } else { letter }).collect::<String>());
    let words =
        words.split(' ').filter(|word| !matches!(*word, "g" | "ml" | "oz" | "kg")).collect::<Vec<_>>().join(" ");
    TOTAL.contains(&words.as_str())
}

/// Whether a line holds nothing but signs.
pub(super) fn is_rule(text: &str) -> bool {
    !text.chars().any(char::is_alphanumeric)
}

/// A text without the signs that headings and lists have around them.
pub(super) fn bare(text: &str) -> String {
    let signs = |letter: char| {
        letter.is_whitespace()
            || matches!(letter, '#' | '*' | '_' | ':' | '=' | '-' | '–' | '—' | '|' | '.' | '>' | '~')
    };
    let name = text.trim_matches(signs);
    name.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The letter of a phase: alone, or beside the word.
fn letter_of(words: &str) -> Option<char> {
    let single = |word: &str| {
        let mut letters = word.chars();
        let first = letters.next().filter(char::is_ascii_lowercase)?;
        letters
            .all(|letter| letter.is_ascii_digit())
            .then_some(first.to_ascii_uppercase())
            .filter(|letter| *letter <= 'H')
    };
    let words: Vec<&str> = words.split(' ').collect();
    if let [word] = words.as_slice() {
        return single(word);
    }
    let named = |word: &str| matches!(word, "phase" | "part" | "teil" | "partie");
    let beside = words.windows(2).find_map(|pair| {
        let [one, other] = pair else { return None };
        if named(one) {
            single(other)
        } else if named(other) {
            single(one)
        } else {
            None
        }
    });
    // `A heated water phase`.
    beside.or_else(|| single(words.first()?).filter(|_| words.iter().any(|word| word.ends_with("phase"))))
}

/// Whether a phrase stands in words as words.
fn holds(words: &str, phrase: &str) -> bool {
    format!(" {words} ").contains(&format!(" {phrase} "))
        || (phrase.len() > 5 && !phrase.contains(' ') && words.split(' ').any(|word| word.starts_with(phrase)))
}
