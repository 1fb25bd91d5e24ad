//! Counts what the catalogue knows, and how well.

use super::check::{decimal, origins};
use super::extra::Column;
use super::{EXTRA_TABLES, Lined, Tables};
use crate::property::{Basis, Property};
use std::collections::BTreeMap;

/// What a value is: something that can be looked up, or what makers do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Sort {
    /// Identity, function by the law's inventory, composition, physical constant, law: someone outside has published it,
    /// or could have.
    Fact,
    /// Dose, window, heat limit, shelf life: nobody publishes these as tables, and they stay marked as common practice.
    Practice,
}

/// How many values there are, and how many of them were read in the source they name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Count {
    /// All values.
    pub values: usize,
    /// Those with basis `published`.
    pub published: usize,
}

impl Count {
    fn add(&mut self, values: usize, basis: Basis) {
        self.values += values;
        if basis == Basis::Published {
            self.published += values;
        }
    }

    /// The published share in tenths of a percent, rounded down: no value counts as published that is not.
    #[must_use]
    pub fn tenths(&self) -> usize {
        (self.published * 1000).checked_div(self.values).unwrap_or(0)
    }
}

/// The values of one sort, in all and apart.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Share {
    /// All of them.
    pub all: Count,
    /// By property, or by file and column of a larger table.
    pub by_property: BTreeMap<String, Count>,
    /// By source.
    pub by_source: BTreeMap<String, Count>,
}

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
    /// What can be looked up.
    pub facts: Share,
    /// What makers do.
    pub practice: Share,
}

impl Property {
    /// Whether a value of it is what makers do, and not something that can be looked up.
    const fn is_practice(self) -> bool {
        matches!(
            self,
            Self::UsualPercent | Self::UsualPh | Self::MaxAddTemperature | Self::HeatSensitive | Self::ShelfLife
        )
    }
}

/// Counts. A value is a figure or a chosen word: a range counts once, and so do the registry numbers of a constituent, its
/// functions, the percent of a part in a composite, and each figure of a row of the larger tables. Names, classes and
/// conditions are not counted.
#[must_use]
pub fn report(tables: &Tables) -> Report {
    let mut report = Report {
        materials: tables.materials.len(),
        constituents: tables.constituents.len(),
        composites: tables.materials.iter().filter(|material| material.row.constituent.is_empty()).count(),
        sources: tables.sources.len(),
        ..Report::default()
    };
    for Lined { row, .. } in &tables.constituents {
        let values = usize::from(!row.cas.is_empty());
        report.count("constituents.csv", "cas", Sort::Fact, &row.source, &row.basis, values);
    }
    for (file, Lined { row, .. }) in tables.values() {
        let practice = Property::from_slug(&row.property).is_some_and(Property::is_practice);
        let sort = if practice { Sort::Practice } else { Sort::Fact };
        report.count(file, &row.property, sort, &row.source, &row.basis, 1);
    }
    for Lined { row, .. } in &tables.composites {
        let values = usize::from(decimal(&row.percent).is_some());
        report.count("composites.csv", "part of a blend", Sort::Fact, &row.source, &row.basis, values);
    }
    for Lined { row, .. } in &tables.functions {
        report.count("functions.csv", "functions", Sort::Fact, &row.source, &row.basis, 1);
    }
    for table in EXTRA_TABLES {
        for Lined { row, .. } in tables.extra.get(table.file).into_iter().flatten() {
            let cell = |name: &str| row.get(name).map_or("", String::as_str);
            for (name, column) in table.columns {
                let figure = matches!(column, Column::Figure(..) | Column::FigureOrEmpty(..)) && !cell(name).is_empty();
                // Of the practice of preservation one column is a constant of the substance.
                let practice = table.file == "preservative-practice.csv" && *name != "pka";
                let sort = if practice { Sort::Practice } else { Sort::Fact };
                let property = format!("{}/{name}", table.file.trim_end_matches(".csv"));
                report.count(table.file, &property, sort, cell("source"), cell("basis"), usize::from(figure));
            }
        }
    }
    let known = |source: &str| tables.sources.iter().any(|row| row.row.source == source);
    report.without_source = origins(tables).iter().filter(|(_, _, source, _)| !known(source)).count();
    report
}

impl Report {
    fn count(&mut self, file: &'static str, property: &str, sort: Sort, source: &str, basis: &str, values: usize) {
        let Some(basis) = Basis::from_slug(basis) else {
            return;
        };
        if source.is_empty() || values == 0 {
            return;
        }
        self.values += values;
        if basis == Basis::Published {
            self.published += values;
        }
        *self.by_file.entry(file).or_default().entry(basis).or_default() += values;
        let share = match sort {
            Sort::Fact => &mut self.facts,
            Sort::Practice => &mut self.practice,
        };
        share.all.add(values, basis);
        share.by_property.entry(property.to_owned()).or_default().add(values, basis);
        share.by_source.entry(source.to_owned()).or_default().add(values, basis);
    }
}
