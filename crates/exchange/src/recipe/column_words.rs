//! What columns are called in the heads of tables, in three languages.

use super::Column;
use super::amount::{Unit, Written, amount_alone, amounts_in, unit_alone};
use stillroom_catalogue::folded;
use stillroom_core::number::DecimalMark;
use stillroom_core::unit::MassUnit;

pub(super) fn has_currency(cell: &str) -> bool {
    cell.contains(['€', '$', '£', '¥'])
        || cell
            .split(|letter: char| !letter.is_ascii_alphabetic())
            .any(|word| matches!(word, "EUR" | "USD" | "GBP" | "CHF" | "CAD" | "AUD"))
}

/// The unit that a heading names: `Weight (oz)`, `Menge in kg`.
pub(super) fn unit_in_head(heading: &str) -> Option<Unit> {
    let words =
        heading.split(|letter: char| letter.is_whitespace() || matches!(letter, '(' | ')' | '[' | ']' | ',' | '/'));
    words
        .filter(|word| !word.is_empty())
        .filter_map(unit_alone)
        .find(|unit| matches!(unit, Unit::Mass(_) | Unit::Volume(_) | Unit::Parts))
}

pub(super) fn speaks_for_itself(heading: &str) -> bool {
    has_word(&folded(heading), &PLAIN_NOTES)
}

fn has_word(words: &str, list: &[&str]) -> bool {
    list.iter().any(|word| format!(" {words} ").contains(&format!(" {word} ")))
}

// Words that stand above columns in three languages, folded; common practice.
const PRICES: [&str; 19] = [
    "price",
    "prices",
    "cost",
    "costs",
    "preis",
    "preise",
    "kosten",
    "einkaufspreis",
    "stuckpreis",
    "prix",
    "cout",
    "couts",
    "tarif",
    "per kg",
    "per kilo",
    "pro kg",
    "au kilo",
    "value",
    "betrag",
];
const LIMITS: [&str; 27] = [
    "usage",
    "use rate",
    "max",
    "maximum",
    "min",
    "minimum",
    "recommended",
    "range",
    "limit",
    "allowed",
    "permitted",
    "guideline",
    "einsatz",
    "einsatzkonzentration",
    "empfohlen",
    "hochst",
    "hochstmenge",
    "bereich",
    "grenze",
    "erlaubt",
    "dosierung",
    "recommande",
    "conseille",
    "plage",
    "limite",
    "autorise",
    "dosage",
];
const PERCENTS: [&str; 9] =
    ["percent", "percentage", "pct", "prozent", "prozentsatz", "prozentanteil", "pourcentage", "pourcent", "pour cent"];
const COUNTS: [&str; 10] = ["no", "nr", "nummer", "number", "numero", "n", "pos", "position", "step", "schritt"];
const PHASES: [&str; 6] = ["phase", "phasen", "phases", "part", "teil", "partie"];
const GRAMS: [&str; 6] = ["gram", "grams", "gramm", "grammes", "gramme", "g"];
const UNITS: [&str; 6] = ["unit", "units", "einheit", "einheiten", "unite", "unites"];
const AMOUNTS: [&str; 26] = [
    "amount",
    "amounts",
    "quantity",
    "qty",
    "weight",
    "mass",
    "menge",
    "mengen",
    "gewicht",
    "masse",
    "einwaage",
    "quantite",
    "quantites",
    "poids",
    "anteil",
    "anteile",
    "dose",
    "ounces",
    "oz",
    "lb",
    "kg",
    "mg",
    "ml",
    "batch",
    "ansatz",
    "share",
];
const NAMES: [&str; 30] = [
    "ingredient",
    "ingredients",
    "material",
    "materials",
    "raw material",
    "raw materials",
    "name",
    "item",
    "product",
    "trade name",
    "common name",
    "rohstoff",
    "rohstoffe",
    "zutat",
    "zutaten",
    "inhaltsstoff",
    "inhaltsstoffe",
    "stoff",
    "bezeichnung",
    "handelsname",
    "matiere",
    "matieres",
    "matiere premiere",
    "matieres premieres",
    "nom",
    "substance",
    "component",
    "composant",
    "designation",
    "produit",
];
const PLAIN_NOTES: [&str; 18] = [
    "note",
    "notes",
    "remark",
    "remarks",
    "comment",
    "comments",
    "function",
    "purpose",
    "funktion",
    "zweck",
    "fonction",
    "role",
    "bemerkung",
    "bemerkungen",
    "notiz",
    "kommentar",
    "remarque",
    "remarques",
];
const NOTES: [&str; 14] = [
    "lot",
    "batch no",
    "charge",
    "supplier",
    "lieferant",
    "fournisseur",
    "vendor",
    "source",
    "herkunft",
    "origine",
    "cas",
    "stock",
    "bestand",
    "expiry",
];

/// The column that a cell of a table's head names.
pub(super) fn column_of(cell: &str, mark: DecimalMark) -> Option<Column> {
    let words = folded(cell);
    if cell.chars().count() > 60 {
        return None;
    }
    let has = |list: &[&str]| has_word(&words, list);
    if has_currency(cell) || has(&PRICES) {
        return Some(Column::Price);
    }
    let is_of_a_batch =
        matches!(amount_alone(cell, mark), Written::Number { to: None, unit: Some(Unit::Mass(MassUnit::Gram)), .. });
    if is_of_a_batch {
        return Some(Column::Grams);
    }
    let has_amount = amounts_in(cell, mark).iter().any(|found| matches!(found.written, Written::Number { .. }));
    let is_percent = (cell.contains('%') && !has_amount) || has(&PERCENTS);
    if has(&LIMITS) {
        return Some(Column::Note);
    }
    if is_percent {
        return Some(Column::Percent);
    }
    if has(&["inci"]) {
        return Some(Column::Inci);
    }
    if has(&PHASES) {
        return Some(Column::Phase);
    }
    if has(&GRAMS) {
        return Some(Column::Grams);
    }
    if has(&UNITS) {
        return Some(Column::Unit);
    }
    if has(&PLAIN_NOTES) || has(&NOTES) {
        return Some(Column::Note);
    }
    if has(&AMOUNTS) {
        return Some(Column::Amount);
    }
    if has(&NAMES) {
        return Some(Column::Name);
    }
    if cell.trim() == "#" || COUNTS.contains(&words.as_str()) {
        return Some(Column::LeftOut);
    }
    None
}
