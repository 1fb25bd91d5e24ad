//! Counts what the catalogue knows, and how well.

use super::check::{decimal, origins};
use super::extra::Column;
use super::{EXTRA_TABLES, Lined, Tables};
use crate::property::Basis;
use std::collections::BTreeMap;

/// What the catalogue knows.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Report {
    /// Materials.
    pub materials: usize,
    /// Constituents.
    pub constituents: usize,
    /// Composites among the materials.
    pub composites: usize,
    /// Sources in the bibliography.
    pub sources: usize,
    /// Values with a source, in all tables.
    pub values: usize,
    /// Of these, with basis `published`.
    pub published: usize,
    /// Rows that name no known source.
    pub without_source: usize,
    /// Values by file and basis.
    pub by_file: BTreeMap<&'static str, BTreeMap<Basis, usize>>,
}

/// Counts. A value is a figure or a chosen word: a range counts once, and so do the percent of a part in a composite,
/// the list of functions of a constituent and each figure of a row of the larger tables. Names, classes and conditions
/// are not counted.
#[must_use]
pub fn report(tables: &Tables) -> Report {
    let mut report = Report {
        materials: tables.materials.len(),
        constituents: tables.constituents.len(),
        composites: tables.materials.iter().filter(|material| material.row.constituent.is_empty()).count(),
        sources: tables.sources.len(),
        ..Report::default()
    };
    for Lined { row, .. } in &tables.properties {
        report.count("properties.csv", &row.source, &row.basis, 1);
    }
    for Lined { row, .. } in &tables.composites {
        report.count("composites.csv", &row.source, &row.basis, usize::from(decimal(&row.percent).is_some()));
    }
    for Lined { row, .. } in &tables.functions {
        report.count("functions.csv", &row.source, &row.basis, 1);
    }
    for table in EXTRA_TABLES {
        for Lined { row, .. } in tables.extra.get(table.file).into_iter().flatten() {
            let cell = |name: &str| row.get(name).map_or("", String::as_str);
            let figures = table.columns.iter().filter(|(name, column)| {
                matches!(column, Column::Figure(..) | Column::FigureOrEmpty(..)) && !cell(name).is_empty()
            });
            report.count(table.file, cell("source"), cell("basis"), figures.count());
        }
    }
    let known = |source: &str| tables.sources.iter().any(|row| row.row.source == source);
    report.without_source = origins(tables).iter().filter(|(_, _, source, _)| !known(source)).count();
    report
}

impl Report {
    fn count(&mut self, file: &'static str, source: &str, basis: &str, values: usize) {
        let Some(basis) = Basis::from_slug(basis) else {
            return;
        };
        if source.is_empty() {
            return;
        }
        self.values += values;
        if basis == Basis::Published {
            self.published += values;
        }
        *self.by_file.entry(file).or_default().entry(basis).or_default() += values;
    }
}
