//! The closed words: columns of the data files in which only the words of a list may stand.
//!
//! A word that code compares, or that a card shows as a kind, must not be misspelt: a typo would silently take a row out
//! of a check. Here every such column has its list, and what is not on it fails the build.

use super::check::decimal;
use super::row::{FUNCTIONS, SOURCES};
use super::{Findings, Lined, Tables};
use std::collections::{BTreeMap, BTreeSet};
use stillroom_terms::FattyAcid;

/// Terms under which figures of a source may be used. None of them forbids commercial use: a source whose terms do is
/// not cited.
///
/// `cited-facts` is a work whose text and tables are not copied: single figures are cited from it. `eu-reuse` is the
/// European Commission's decision 2011/833/EU. `own-words` is common practice, written down here.
pub const LICENCES: &[&str] =
    &["public-domain", "CC0-1.0", "CC-BY-4.0", "MIT", "BSD-3-Clause", "eu-reuse", "cited-facts", "own-words"];

/// Kinds of source.
const SOURCE_KINDS: &[&str] =
    &["law", "standard", "pharmacopoeia", "handbook", "dataset", "paper", "nomenclature", "practice"];

/// Whose law or guidance.
const JURISDICTIONS: &[&str] = &["EU", "UK", "US", "US guidance", "US and EU", "industry guidance", "national advice"];

/// A column of a larger table and the words that may stand in it, or nothing.
const COLUMNS: &[(&str, &str, &[&str])] = &[
    (
        "solubility-cosolvent.csv",
        "record",
        &["solubility", "salting-out", "log-linear intercept", "log-linear slope", "sigma derived", "sigma half range"],
    ),
    (
        "solubility-cosolvent.csv",
        "unit",
        &[
            "% as printed (treat as g/100 mL or g/100 g)",
            "g/100 g solvent",
            "g/100 g",
            "g/100 mL",
            "g/100 parts",
            "g/100 mL solvent (from 1 in N)",
            "sigma intercept N (log10 units, volume fraction basis)",
            "sigma slope M",
            "sigma slope s",
            "sigma intercept t",
            "log10(S in pure cosolvent / S in water)",
            "log10(S at 50 %/S water)/0.5",
        ],
    ),
    (
        "solubility-cosolvent.csv",
        "cosolvent",
        &[
            "ethanol",
            "propylene glycol",
            "glycerin",
            "PEG-400",
            "ethylene glycol",
            "methanol",
            "peanut oil",
            "olive oil",
            "vegetable oil",
            "sodium chloride",
            "sucrose",
        ],
    ),
    ("solubility-water.csv", "described", &["very soluble", "miscible"]),
    ("partition.csv", "record", &["logKow", "oil_water_K", "solubility_ratio", "bean_example", "ionisation_example"]),
    (
        "partition.csv",
        "phases",
        &[
            "octanol-water",
            "water",
            "liquid paraffin/water",
            "soya oil/water",
            "soybean oil/water",
            "arachis oil/water",
            "peanut oil/water",
            "mineral oil/water",
            "almond oil/water",
            "castor oil/water",
            "corn oil/water",
            "olive oil/water",
            "vegetable oil/water",
            "lanolin/water",
            "diethyl adipate/water",
            "isopropyl myristate/water",
            "isopropyl palmitate/water",
        ],
    ),
    ("preservative-limits.csv", "jurisdiction", JURISDICTIONS),
    ("preservative-limits.csv", "status", &["annex_v", "prohibited", "not_annexed", "not_a_preservative"]),
    ("restricted.csv", "jurisdiction", JURISDICTIONS),
    ("fragrance-allergens.csv", "jurisdiction", JURISDICTIONS),
    ("label-wording.csv", "language", &["en", "de", "fr"]),
    ("label-wording.csv", "kind", &["medicine", "function", "biocide", "sun", "claim"]),
    ("substitutes.csv", "feel", &["very-light", "light", "medium", "rich", "heavy", "waxy", "sticky"]),
    ("plants.csv", "state", &["fresh", "dried", "dried (ground)", "blanched"]),
];

/// Functions a constituent may have: those of the European Commission's inventory, in lower case.
const FUNCTIONS_OF_THE_INVENTORY: &[&str] = &[
    "abrasive",
    "absorbent",
    "anti-sebum",
    "anti-seborrheic",
    "anticaking",
    "anticorrosive",
    "antidandruff",
    "antifoaming",
    "antimicrobial",
    "antioxidant",
    "antiperspirant",
    "antiplaque",
    "antistatic",
    "astringent",
    "binding",
    "bleaching",
    "buffering",
    "bulking",
    "chelating",
    "cleansing",
    "colorant",
    "denaturant",
    "deodorant",
    "depilatory",
    "emollient",
    "emulsion stabilising",
    "epilating",
    "exfoliating",
    "film forming",
    "flavouring",
    "foam boosting",
    "foaming",
    "fragrance",
    "gel forming",
    "hair conditioning",
    "hair dyeing",
    "hair fixing",
    "hair waving or straightening",
    "humectant",
    "keratolytic",
    "light stabilizer",
    "moisturising",
    "nail conditioning",
    "opacifying",
    "oral care",
    "oxidising",
    "pearlescent",
    "perfuming",
    "ph adjusters",
    "plasticiser",
    "preservative",
    "propellant",
    "reducing",
    "refatting",
    "refreshing",
    "skin conditioning",
    "skin conditioning - emollient",
    "skin conditioning - humectant",
    "skin conditioning - miscellaneous",
    "skin conditioning - occlusive",
    "skin protecting",
    "slip modifier",
    "smoothing",
    "solvent",
    "soothing",
    "surfactant - cleansing",
    "surfactant - dispersing",
    "surfactant - emulsifying",
    "surfactant - foam boosting",
    "surfactant - hydrotrope",
    "tanning",
    "tonic",
    "uv absorber",
    "uv filter",
    "viscosity controlling",
];

/// What a value may hold at beside a temperature.
const CONDITIONS: &[&str] =
    &["unopened, cool and dark", "mineral oil", "mineral oil, light", "mineral oil, heavy", "mineral oil, paraffinic"];

/// Checks every closed column.
pub fn check(tables: &Tables, findings: &mut Findings) {
    for Lined { line, row } in &tables.sources {
        if !SOURCE_KINDS.contains(&row.kind.as_str()) {
            findings.add(SOURCES, *line, "data.source-kind", format!("`{}` is no kind of source", row.kind));
        }
        if row.licence.is_empty() {
            findings.add(SOURCES, *line, "data.no-licence", format!("source `{}` names no licence", row.source));
        } else if !LICENCES.contains(&row.licence.as_str()) {
            let message = format!("`{}` is none of {}", row.licence, LICENCES.join(", "));
            findings.add(SOURCES, *line, "data.licence", message);
        }
    }
    for Lined { line, row } in &tables.functions {
        for function in super::check::listed(&row.functions) {
            if !FUNCTIONS_OF_THE_INVENTORY.contains(&function) {
                findings.add(FUNCTIONS, *line, "data.word", format!("`{function}` is no function of the inventory"));
            }
        }
    }
    for (file, Lined { line, row }) in tables.values() {
        if !is_condition(&row.conditions) {
            findings.add(file, *line, "data.word", format!("`{}` is no condition", row.conditions));
        }
    }
    for (file, column, words) in COLUMNS {
        for Lined { line, row } in tables.extra.get(file).into_iter().flatten() {
            let word = row.get(*column).map_or("", String::as_str);
            if !word.is_empty() && !words.contains(&word) {
                findings.add(file, *line, "data.word", format!("`{column}` is `{word}`, none of {}", words.join(", ")));
            }
        }
    }
    references(tables, findings);
}

/// Nothing, a temperature (`20 °C`, `20 °C to 25 °C`) or one of the other conditions.
fn is_condition(text: &str) -> bool {
    let is_temperature = |text: &str| text.strip_suffix(" °C").and_then(decimal).is_some();
    text.is_empty() || CONDITIONS.contains(&text) || text.split(" to ").all(is_temperature)
}

/// Names that repeat what stands in another table: an INCI name beside its number, an allergen, a day. That a
/// member of a limit belongs to one is seen where limits are.
fn references(tables: &Tables, findings: &mut Findings) {
    let names = |file: &str, column: &str| -> BTreeSet<String> {
        let rows = tables.extra.get(file).into_iter().flatten();
        rows.filter_map(|row| row.row.get(column).cloned()).collect()
    };
    let allergens = names("fragrance-allergens.csv", "name");
    let constituents: BTreeMap<&str, &str> =
        tables.constituents.iter().map(|own| (own.row.number.as_str(), own.row.inci.as_str())).collect();
    let materials: BTreeMap<&str, &str> =
        tables.materials.iter().map(|own| (own.row.number.as_str(), own.row.name.as_str())).collect();
    for (file, rows) in &tables.extra {
        for Lined { line, row } in rows {
            let cell = |name: &str| row.get(name).map_or("", String::as_str);
            let mut problem = |message| findings.add(file, *line, "data.word", message);
            for (number, name) in [("constituent", "inci"), ("constituent", "oil"), ("acid", "acid_inci")] {
                let known = constituents.get(cell(number)).copied();
                // A common name may stand beside it in brackets: `Alcohol (ethanol)`.
                let agrees = |inci: &str| cell(name).split(['(', ')']).any(|part| part.trim() == inci);
                // Where a preservative is shared between water and an oil, the oil is another substance.
                let is_other = *file == "oil-partition.csv" && name == "oil";
                if let Some(known) = known.filter(|known| !is_other && !cell(name).is_empty() && !agrees(known)) {
                    problem(format!("constituent {} is {}, not `{}`", cell(number), known, cell(name)));
                }
            }
            if *file == "essential-oil-constituents.csv"
                && !cell("allergen").is_empty()
                && !allergens.contains(cell("allergen"))
            {
                problem(format!("`{}` is no allergen that the law lists", cell("allergen")));
            }
            if *file == "fatty-acids.csv" && FattyAcid::parse(cell("acid")).is_none() {
                problem(format!("`{}` is no fatty acid", cell("acid")));
            }
            if *file == "substitutes.csv" && materials.get(cell("material")).copied() != Some(cell("name")) {
                problem(format!("material {} is not `{}`", cell("material"), cell("name")));
            }
            if !cell("as_of").is_empty() && !is_day(cell("as_of")) {
                problem(format!("`{}` is no year, month or day", cell("as_of")));
            }
        }
    }
}

/// `2024`, `2024-02` or `2024-02-29`.
fn is_day(text: &str) -> bool {
    let lengths: Vec<usize> = text.split('-').map(str::len).collect();
    matches!(lengths.as_slice(), [4] | [4, 2] | [4, 2, 2]) && text.chars().all(|c| c.is_ascii_digit() || c == '-')
}

#[cfg(test)]
mod tests {
    use super::{is_condition, is_day};

    #[test]
    fn conditions_and_days_have_a_form() {
        assert!(["", "20 °C", "-5 °C", "20 °C to 25 °C", "mineral oil"].iter().all(|text| is_condition(text)));
        assert!(!["20", "20°C", "warm", "20 °C to"].iter().any(|text| is_condition(text)));
        assert!(["2024", "2024-02", "2024-02-29"].iter().all(|text| is_day(text)));
        assert!(!["24", "2024-2", "Feb 2024", "2024-02-29-1"].iter().any(|text| is_day(text)));
    }
}
