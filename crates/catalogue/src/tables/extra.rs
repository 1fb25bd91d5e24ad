//! The larger tables, each with its columns declared once.

use super::{Findings, Lined};
use std::collections::BTreeMap;

/// A row of a larger table: text by column.
pub type ExtraRow = BTreeMap<String, String>;

/// What a column of a larger table holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Column {
    /// Text that may be empty.
    Text,
    /// Text that may not be empty.
    Named,
    /// A number within bounds; counts as one value.
    Figure(f64, f64),
    /// A number within bounds, or empty; counts as one value when there.
    FigureOrEmpty(f64, f64),
    /// A number within bounds that says under what conditions the row holds; no value by itself.
    Condition(f64, f64),
    /// The number of a constituent, or empty.
    Constituent,
    /// CAS registry numbers parted by ` / `, or empty.
    Cas,
}

/// One of the larger tables.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ExtraTable {
    /// File name.
    pub file: &'static str,
    /// Columns beside `source`, `locator` and `basis`, which every table has.
    pub columns: &'static [(&'static str, Column)],
}

/// Every larger table.
pub const EXTRA_TABLES: &[ExtraTable] = &[];

/// Checks the columns a table declares. Sources are checked with those of the other files.
pub fn check(
    table: &ExtraTable,
    rows: &[Lined<ExtraRow>],
    known_constituent: &dyn Fn(&str) -> bool,
    findings: &mut Findings,
) {
    for Lined { line, row } in rows {
        let mut problem = |code, message| findings.add(table.file, *line, code, message);
        for (name, column) in table.columns {
            let Some(text) = row.get(*name) else {
                problem("data.missing-column", format!("column `{name}` is missing"));
                continue;
            };
            let optional = !matches!(column, Column::Named | Column::Figure(..));
            if text.trim().is_empty() {
                if !optional {
                    problem("data.empty", format!("`{name}` is empty"));
                }
                continue;
            }
            match column {
                Column::Text | Column::Named => {}
                Column::Figure(low, high) | Column::FigureOrEmpty(low, high) | Column::Condition(low, high) => {
                    match text.parse::<f64>() {
                        Ok(value) if (*low..=*high).contains(&value) => {}
                        _ => problem("data.range", format!("`{name}` is `{text}`, not between {low} and {high}")),
                    }
                }
                Column::Constituent if known_constituent(text) => {}
                Column::Constituent => {
                    problem("data.dangling", format!("there is no constituent with number `{text}`"));
                }
                Column::Cas => {
                    super::check::cas_numbers(text, |message| problem("data.cas", message));
                }
            }
        }
        for name in row.keys() {
            let declared = table.columns.iter().any(|(column, _)| column == name);
            if !declared && !["source", "locator", "basis"].contains(&name.as_str()) {
                problem("data.unknown-column", format!("column `{name}` is not declared"));
            }
        }
    }
}
