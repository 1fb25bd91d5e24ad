//! The sentences of materials, in English: what there is of them, what is known of them, and tables of them.

use crate::sentences;
use stillroom_catalogue::{Basis, Property};
use stillroom_core::number::DecimalMark;
use stillroom_exchange::table::{LineProblem, TableError, TableProblem};

/// A space that does not break, between a number and what it counts.
const NB: char = '\u{a0}';

/// A text that is no currency.
pub(crate) const fn not_a_currency() -> &'static str {
    "A currency is three letters, such as EUR, USD or GBP."
}

/// A text that is no day.
pub(crate) const fn not_a_day() -> &'static str {
    "That is not a day of the calendar. Type it as year-month-day, such as 2027-05-31, or nothing."
}

/// What a hundred grams cost.
pub(crate) fn price_per_hundred_grams(amount: &str, currency: &str) -> String {
    format!("{amount}{NB}{currency} for 100{NB}g")
}

/// A material past its date.
pub(crate) fn past_its_date(day: &str) -> String {
    format!("Past its date: it should have been used by {day}.")
}

/// Where a value of the maker's own comes from.
pub(crate) const fn your_own_source() -> &'static str {
    "typed on this device, in place of the catalogue's"
}

/// How far a value of the maker's own may be trusted.
pub(crate) const fn your_own_basis() -> &'static str {
    "yours"
}

/// Why a file is no table.
pub(crate) fn table_error(error: &TableError) -> String {
    match error {
        TableError::TooLarge { .. } => "The file is larger than any table of materials; at most 2 MB are read.".to_owned(),
        TableError::NotUtf8 { line } => {
            format!("Line {line} is not written in UTF-8. Save the table as “CSV UTF-8” and try again.")
        }
        TableError::NoNameColumn => {
            "The first line must name the columns, and one of them must be “name”. The others may be inci, class, phase, density, parts and note.".to_owned()
        }
        TableError::TooManyLines { most } => format!("The table has more than {most} lines. Nothing was read."),
    }
}

/// What was read of a table.
pub(crate) fn table_read(rows: usize, problems: usize) -> String {
    match (rows, problems) {
        (0, _) => "The table has no material in it.".to_owned(),
        (rows, 0) => format!("{rows} materials were read and nothing is wrong with them."),
        (_, 1) => "One thing is wrong, so nothing can be taken in yet.".to_owned(),
        (_, problems) => format!("{problems} things are wrong, so nothing can be taken in yet."),
    }
}

/// What is wrong with a line of a table.
pub(crate) fn line_problem(problem: &LineProblem, mark: DecimalMark) -> String {
    let LineProblem { line, column, problem } = problem;
    let what = match problem {
        TableProblem::NoName => "the name is missing".to_owned(),
        TableProblem::NameTwice { first } => format!("the same name stands on line {first}"),
        TableProblem::TooLong { most } => format!("the text is longer than {most} characters"),
        TableProblem::SpreadsheetFormula => {
            "the text begins like a formula of a spreadsheet; write it without that sign".to_owned()
        }
        TableProblem::UnknownClass { text } => {
            format!("“{text}” is no kind of material; use a word such as oil, humectant, emulsifier or active")
        }
        TableProblem::UnknownPhase { text } => {
            format!("“{text}” is no phase; use heated-water, heated-oil, cool-down or room-temperature")
        }
        TableProblem::Number(error) => {
            sentences::number_error(error, if *column == "parts" { "part" } else { "material.density" }, mark)
        }
        TableProblem::UnknownMaterial { name } => {
            format!(
                "no material is called “{name}”; parts are written such as “65 % Glycerin, vegetable; q.s. Water, distilled”"
            )
        }
        TableProblem::PartsOutOfBalance => "the parts do not make 100 %".to_owned(),
        TableProblem::TooManyCells => "there are more cells than columns".to_owned(),
    };
    format!("Line {line}, {column}: {what}")
}

/// Materials taken in from a table.
pub(crate) fn materials_imported(count: usize) -> String {
    if count == 1 { "One material is taken in.".to_owned() } else { format!("{count} materials are taken in.") }
}

/// What a source is, and to which day it was valid.
pub(crate) fn about_source(kind: &str, as_of: &str) -> String {
    if as_of.is_empty() { kind.to_owned() } else { format!("{kind}, {as_of}") }
}

/// A figure with its range.
pub(crate) fn figure_in_range(figure: &str, low: &str, high: &str) -> String {
    format!("{figure} ({low} to {high})")
}

/// A range.
pub(crate) fn range(low: &str, high: &str) -> String {
    format!("{low} to {high}")
}

/// A value with its conditions and remark.
pub(crate) fn value_with_conditions(value: &str, conditions: &str, note: &str) -> String {
    match (conditions.is_empty(), note.is_empty()) {
        (true, true) => value.to_owned(),
        (false, true) => format!("{value}, {conditions}"),
        (true, false) => format!("{value} ({note})"),
        (false, false) => format!("{value}, {conditions} ({note})"),
    }
}

/// A source with the spot in it.
pub(crate) fn source(citation: &str, locator: &str) -> String {
    if locator.is_empty() { citation.to_owned() } else { format!("{citation}, {locator}") }
}

/// How far a value may be trusted.
pub(crate) const fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::Published => "published",
        Basis::Computed => "computed",
        Basis::SupplierTypical => "typical of suppliers",
        Basis::Memory => "from memory, to be checked",
    }
}

/// Source of what is computed from the fatty acids of a fat.
pub(crate) const FROM_FATTY_ACIDS: &str =
    "computed from its fatty acids; what does not saponify is left out of account";
/// What the class of oxidation is called.
pub(crate) const TAKES_UP_OXYGEN: &str = "Goes rancid";

/// How a fat keeps by its fatty acids alone.
pub(crate) const fn oxidation(class: stillroom_core::chemistry::fat::OxidationClass) -> &'static str {
    use stillroom_core::chemistry::fat::OxidationClass;
    match class {
        OxidationClass::Slow => "slowly, by its fatty acids; light, air and metals hasten it",
        OxidationClass::Moderate => "not fast, by its fatty acids; light, air and metals hasten it",
        OxidationClass::Fast => "fast, by its fatty acids; keep it cool, dark and closed",
        OxidationClass::VeryFast => "very fast, by its fatty acids; keep it cold and use it soon",
    }
}

/// What a property is called.
pub(crate) const fn property(property: Property) -> &'static str {
    match property {
        Property::UsualPercent => "Usual use",
        Property::UsualPh => "pH window",
        Property::MaxAddTemperature => "Add at most at",
        Property::HeatSensitive => "Spoilt by heat",
        Property::Charge => "Charge",
        Property::Density => "Density",
        Property::MeltingPoint => "Melting point",
        Property::RefractiveIndex => "Refractive index",
        Property::SpecificHeat => "Specific heat",
        Property::BoilingPoint => "Boiling point",
        Property::FlashPoint => "Flash point",
        Property::LowerFlammableLimit => "Vapour burns from",
        Property::HeatOfVaporization => "Heat of vaporization",
        Property::HeatOfFusion => "Heat of fusion",
        Property::Permittivity => "Relative permittivity",
        Property::HansenDispersion => "Hansen parameter, dispersion",
        Property::HansenPolar => "Hansen parameter, polar",
        Property::HansenHydrogen => "Hansen parameter, hydrogen bonds",
        Property::Hlb => "HLB",
        Property::RequiredHlb => "Required HLB, oil in water",
        Property::RequiredHlbWaterInOil => "Required HLB, water in oil",
        Property::SaponificationValue => "Saponification value",
        Property::IodineValue => "Iodine value",
        Property::MolarMass => "Molar mass",
        Property::WaterSolubility => "Dissolves in water",
        Property::LogKow => "log P (octanol/water)",
        Property::Pka1 => "pKa 1",
        Property::Pka2 => "pKa 2",
        Property::Pka3 => "pKa 3",
        Property::Pka4 => "pKa 4",
        Property::WaterContent => "Water in it",
        Property::ShelfLife => "Keeps unopened",
        _ => "Value",
    }
}
