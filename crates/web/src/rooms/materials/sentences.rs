//! Which message says what of materials: what there is of them, what is known of them, and tables of them.

use crate::messages::materials as says;
use crate::messages::names::word;
use crate::messages::sentences;
use stillroom_catalogue::{Basis, Property};
use stillroom_core::number::DecimalMark;
use stillroom_exchange::table::{LineProblem, TableError, TableProblem};

/// That what there is of a material should have been used by now.
pub(crate) fn past_its_date(day: &str) -> String {
    let day = day.parse().map_or_else(|_| day.to_owned(), crate::rooms::batches::sentences::day);
    says::past_its_date(&day)
}

// ---- tables --------------------------------------------------------------------------------------------------------

/// Why a file is no table.
pub(crate) fn table_error(error: &TableError) -> String {
    match error {
        TableError::TooLarge { .. } => says::table_too_large().to_owned(),
        TableError::NotUtf8 { line } => says::table_not_utf8(&line.to_string()),
        TableError::NoNameColumn => says::table_no_name_column().to_owned(),
        TableError::TooManyLines { most } => says::table_too_many_lines(&most.to_string()),
    }
}

/// What was read of a table.
pub(crate) fn table_read(rows: usize, problems: usize) -> String {
    match (rows, problems) {
        (0, _) => says::table_empty().to_owned(),
        (rows, 0) => says::table_sound(rows),
        (_, problems) => says::table_wrong(problems),
    }
}

/// What is wrong with a line of a table.
pub(crate) fn line_problem(problem: &LineProblem, mark: DecimalMark) -> String {
    let LineProblem { line, column, problem } = problem;
    let what = match problem {
        TableProblem::NoName => says::cell_no_name().to_owned(),
        TableProblem::NameTwice { first } => says::cell_name_twice(&first.to_string()),
        TableProblem::TooLong { most } => says::cell_too_long(&most.to_string()),
        TableProblem::SpreadsheetFormula => says::cell_spreadsheet_formula().to_owned(),
        TableProblem::UnknownClass { text } => says::cell_unknown_class(text),
        TableProblem::UnknownPhase { text } => says::cell_unknown_phase(text),
        TableProblem::Number(error) if ["pack_g", "stock_g", "price", "shipping"].contains(column) => {
            let field = if column.ends_with("_g") { "holding.stock" } else { "holding.price" };
            sentences::number_error(error, &crate::rooms::said::what_field_takes(field, mark), mark)
        }
        TableProblem::Number(error) => {
            let field = if *column == "parts" { "part" } else { "material.density" };
            sentences::number_error(error, &crate::rooms::said::what_field_takes(field, mark), mark)
        }
        TableProblem::UnknownCurrency { .. } => says::not_a_currency().to_owned(),
        TableProblem::Incomplete => says::cell_incomplete().to_owned(),
        TableProblem::UnknownMaterial { name } => says::cell_unknown_material(name),
        TableProblem::PartsOutOfBalance => says::cell_parts_out_of_balance().to_owned(),
        TableProblem::TooManyCells => says::cell_too_many_cells().to_owned(),
    };
    says::cell_problem(&line.to_string(), column, &what)
}

// ---- what is known of a material -----------------------------------------------------------------------------------

/// What a source is, and its edition.
pub(crate) fn about_source(kind: &str, edition: &str) -> String {
    if edition.is_empty() { word(kind).to_owned() } else { says::source_of(word(kind), word(edition)) }
}

/// A figure with its unit.
pub(crate) fn with_unit(figure: &str, unit: &str) -> String {
    match unit {
        "% by volume" => says::unit_percent_by_volume(figure),
        "g/100 g water" => says::unit_grams_in_water(figure),
        "months" => says::unit_months(figure),
        "pH" => says::unit_ph(figure),
        unit => sentences::with_unit(figure, unit),
    }
}

/// A value with its conditions and remark.
pub(crate) fn value_with_conditions(value: &str, conditions: &str, note: &str) -> String {
    let (conditions, note) = (word(conditions), word(note));
    match (conditions.is_empty(), note.is_empty()) {
        (true, true) => value.to_owned(),
        (false, true) => says::value_with_conditions(value, conditions),
        (true, false) => says::value_with_note(value, note),
        (false, false) => says::value_with_conditions_and_note(value, conditions, note),
    }
}

/// A source with the spot in it.
pub(crate) fn source(citation: &str, locator: &str) -> String {
    let citation = word(citation);
    if locator.is_empty() { citation.to_owned() } else { says::source(citation, locator) }
}

/// How far a value may be trusted.
pub(crate) fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::Published => says::basis_published(),
        Basis::Computed => says::basis_computed(),
        Basis::SupplierTypical => says::basis_supplier_typical(),
        Basis::Memory => says::basis_memory(),
    }
}

/// How a fat keeps by its fatty acids alone.
pub(crate) fn oxidation(class: stillroom_core::chemistry::fat::OxidationClass) -> &'static str {
    use stillroom_core::chemistry::fat::OxidationClass;
    match class {
        OxidationClass::Slow => says::oxidation_slow(),
        OxidationClass::Moderate => says::oxidation_moderate(),
        OxidationClass::Fast => says::oxidation_fast(),
        OxidationClass::VeryFast => says::oxidation_very_fast(),
    }
}

/// What a property is called.
pub(crate) fn property(property: Property) -> String {
    says::property(property.slug())
}
