//! Imported values against tables they were not imported from.
//!
//! The tolerances are those with which the import itself tells agreement from disagreement, and were set before any of
//! these tables was looked at. A figure of the second table that was looked into and found wrong, or to be of another
//! substance, carries its doubt in the fixture and is set aside; the source text of the set says how many are.

use crate::{EvidenceSet, Worst, rows};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Deserialize;
use stillroom_catalogue::reference::{imported_solubilities, water_solubilities};
use stillroom_catalogue::{Basis, Catalogue, Property};

const SECOND: &str = include_str!("../data/second_table.csv");

#[derive(Debug, Deserialize)]
struct SecondRow {
    inci: String,
    property: String,
    value: f64,
    conditions: String,
    source: String,
    #[allow(dead_code, reason = "a row without its basis must not parse")]
    basis: String,
    /// Why it is set aside; empty for a figure that is compared.
    doubt: String,
}

/// How two figures of a property are compared.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Deviation {
    Difference,
    Percent,
    Times,
}

/// Melting point, density, refractive index, molar mass, log P and solubility.
///
/// # Panics
/// If a row cannot be read or is of no known property.
#[must_use]
pub fn evidence() -> Vec<EvidenceSet> {
    let second: Vec<SecondRow> = rows("second_table.csv", SECOND);
    let of = |property: &str| second.iter().filter(move |row| row.property == property).collect::<Vec<_>>();
    let known = [
        (Property::MeltingPoint, "data.second-table.melting-point", Deviation::Difference, 5.0, "K"),
        (Property::Density, "data.second-table.density", Deviation::Difference, 0.01, "g/mL"),
        (Property::RefractiveIndex, "data.second-table.refractive-index", Deviation::Difference, 0.004, ""),
        (Property::MolarMass, "data.second-table.molar-mass", Deviation::Percent, 0.02, "%"),
        (Property::LogKow, "data.second-table.log-p", Deviation::Difference, 0.5, "log units"),
        // Half a unit of the logarithm: how the dataset itself grades figures that agree.
        (Property::WaterSolubility, "data.second-table.solubility", Deviation::Times, 3.2, "times"),
    ];
    let named = |row: &SecondRow| known.iter().any(|(property, ..)| property.slug() == row.property);
    assert!(second.iter().all(named), "every row is of a known property");
    known
        .into_iter()
        .map(|(property, set, deviation, tolerance, unit)| {
            compare(&of(property.slug()), property, set, deviation, tolerance, unit)
        })
        .collect()
}

fn compare(
    second: &[&SecondRow],
    property: Property,
    set: &'static str,
    deviation: Deviation,
    tolerance: f64,
    unit: &'static str,
) -> EvidenceSet {
    let mut worst = Worst::default();
    let mut sources: Vec<&str> = Vec::new();
    let mut aside = 0;
    for row in second {
        let own = if property == Property::WaterSolubility { solubilities(row) } else { published(row, property) };
        // Where the catalogue shows two figures that differ, the nearer one is held.
        let nearest = own.into_iter().map(|own| deviation.between(own, row.value)).min_by(f64::total_cmp);
        let Some(nearest) = nearest else { continue };
        if !row.doubt.is_empty() {
            aside += 1;
            continue;
        }
        if nearest > tolerance {
            eprintln!("{set}: {} is {} off {}", row.inci, nearest, row.value);
        }
        worst.see(nearest);
        if !sources.contains(&row.source.as_str()) {
            sources.push(&row.source);
        }
    }
    let doubted = if aside == 0 { String::new() } else { format!("; {aside} set aside, each with its reason") };
    EvidenceSet::of(set, format!("{}{doubted}", sources.join("; ")), worst, tolerance, unit)
}

impl Deviation {
    fn between(self, own: f64, other: f64) -> f64 {
        match self {
            Self::Difference => (own - other).abs(),
            Self::Percent => (own / other - 1.0).abs() * 100.0,
            Self::Times => (own / other).max(other / own),
        }
    }
}

/// Published figures of a constituent that do not rest on the second table.
fn published(row: &SecondRow, property: Property) -> Vec<f64> {
    let catalogue = Catalogue::get();
    let constituent = catalogue.constituents().find(|constituent| constituent.inci == row.inci);
    let values = constituent.into_iter().flat_map(|constituent| catalogue.constituent_values(constituent.id));
    values
        .filter(|value| value.property == property && value.origin.basis == Basis::Published)
        .filter(|value| !same_table(value.origin.source.slug, &row.source))
        .filter(|value| {
            // A refractive index holds at its temperature; the second table gives none and is taken as at 20 °C.
            let at = if row.conditions.is_empty() { "20 °C" } else { &row.conditions };
            property != Property::RefractiveIndex || value.conditions == at
        })
        .filter_map(|value| to_physics(value.value?))
        .collect()
}

fn same_table(slug: &str, source: &str) -> bool {
    (slug == "wikidata-constants" && source.starts_with("Wikidata"))
        || (slug == "crc-logp" && source.starts_with("CRC Handbook"))
}

/// Solubilities that the catalogue has of the dataset, at room temperature.
fn solubilities(row: &SecondRow) -> Vec<f64> {
    let gathered = water_solubilities().iter().map(|own| (own.inci, own.origin.source.slug, own.grams_per_100_g_water));
    let imported = imported_solubilities().iter();
    gathered
        .chain(imported.map(|own| (own.inci, own.origin.source.slug, own.grams_per_100_g_water)))
        .filter(|(inci, source, _)| *inci == row.inci && *source == "aqsoldb")
        .filter_map(|(_, _, grams)| to_physics(grams?))
        .collect()
}

fn to_physics(value: Decimal) -> Option<f64> {
    value.to_f64()
}

#[cfg(test)]
mod tests {
    #[test]
    fn imported_values_agree_with_a_table_they_were_not_taken_from() {
        crate::hold(
            &super::evidence(),
            &[
                ("data.second-table.melting-point", 60),
                ("data.second-table.density", 10),
                ("data.second-table.refractive-index", 10),
                ("data.second-table.molar-mass", 120),
                ("data.second-table.log-p", 15),
                ("data.second-table.solubility", 30),
            ],
        );
    }
}
