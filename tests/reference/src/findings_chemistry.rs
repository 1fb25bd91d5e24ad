//! The chemistry behind findings against published tables: cosolvency, curves, dissociation, partition.

use crate::{EvidenceSet, Worst, count_bases, rows};
use serde::Deserialize;
use stillroom_catalogue::{Catalogue, knowledge};
use stillroom_core::checks::facts::{Cosolvent, Facts, Knowledge, WaterSolubility};
use stillroom_core::checks::solubility::power_of;
use stillroom_core::chemistry::Temperature;
use stillroom_core::chemistry::dissociation::undissociated;
use stillroom_core::chemistry::partition::in_water;
use stillroom_core::chemistry::solubility::{Curve, cosolvency};

const COSOLVENCY: &str = include_str!("../data/cosolvency.csv");
const PARTITION: &str = include_str!("../data/emulsion_partition.csv");
const UNDISSOCIATED: &str = include_str!("../data/undissociated.csv");

#[derive(Debug, Deserialize)]
struct CosolvencyRow {
    inci: String,
    cosolvent: String,
    percent: f64,
    temperature: f64,
    grams_per_100_g: f64,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

#[derive(Debug, Deserialize)]
struct PartitionRow {
    overall: f64,
    coefficient: f64,
    oil_to_water: f64,
    in_water: f64,
    capped_at: Option<f64>,
    doubt: String,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

#[derive(Debug, Deserialize)]
struct UndissociatedRow {
    inci: String,
    ph: f64,
    percent: f64,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

/// Cosolvency, solubility curves, partition and dissociation.
///
/// # Panics
/// If a row cannot be read or computed.
#[must_use]
pub fn evidence() -> Vec<EvidenceSet> {
    vec![mixtures(), curves(), emulsions(), acids()]
}

fn facts_of(inci: &str) -> &'static Facts {
    let constituent = Catalogue::get().constituents().find(|each| each.inci == inci);
    let id = constituent.unwrap_or_else(|| panic!("the catalogue has no {inci}")).id;
    knowledge().facts(id).unwrap_or_else(|| panic!("nothing is known of {inci}"))
}

fn curve_of(facts: &'static Facts) -> Option<&'static Curve> {
    match facts.water_solubility.as_ref()? {
        WaterSolubility::Limited(curve) => Some(curve),
        WaterSolubility::Miscible(_) => None,
    }
}

/// The logarithm of what a mixture dissolves by the log-linear rule, less that of the printed figure.
fn deviation(row: &CosolvencyRow) -> f64 {
    let facts = facts_of(&row.inci);
    let (kind, density) = match row.cosolvent.as_str() {
        "ethanol" => (Cosolvent::Ethanol, 0.785),
        "propylene glycol" => (Cosolvent::Glycol, 1.033),
        other => panic!("{other} is not a cosolvent"),
    };
    let volume = row.percent / density;
    let share = volume / (volume + (100.0 - row.percent) / 0.997);
    let power = power_of(facts, kind).unwrap_or_else(|| panic!("{}: no power of {}", row.inci, row.cosolvent)).value;
    let curve = curve_of(facts).unwrap_or_else(|| panic!("{}: no curve", row.inci));
    let water = Temperature::new(row.temperature).and_then(|at| curve.at(at)).expect("the curve reaches a room");
    (water * cosolvency(&[(power, share)]) / row.grams_per_100_g).log10()
}

/// Printed solubilities in mixtures with water: propylene glycol up to a half, ethanol up to a fifth. At a half of ethanol
/// the printed figures lie far above the straight line; the rule is on the cautious side there, which a test below holds.
fn mixtures() -> EvidenceSet {
    let table: Vec<CosolvencyRow> = rows("cosolvency.csv", COSOLVENCY);
    let mut worst = Worst::default();
    for row in table.iter().filter(|row| !is_beyond(row)) {
        worst.see(deviation(row));
    }
    EvidenceSet::of(
        "solubility.cosolvent",
        format!(
            "Smith and Hong-Shum (eds), Food Additives Data Book (2003): solubilities in mixtures with water ({})",
            count_bases(table.iter().filter(|row| !is_beyond(row)).map(|row| row.basis.as_str()))
        ),
        worst,
        // What is usually said of the rule, and no worse than the reference file's own reading of it.
        0.5,
        "log10",
    )
}

/// Where the straight line is known not to serve.
fn is_beyond(row: &CosolvencyRow) -> bool {
    row.cosolvent == "ethanol" && row.percent > 20.0
}

/// Salts whose solid becomes another hydrate, with the temperature in °C: there the curve has a corner that no line between
/// its neighbours can follow (CRC Handbook; recalled). In use, both sides of the corner have points of their own.
const CORNERS: [(&str, f64); 3] =
    [("Disodium Phosphate", 35.2), ("Disodium Phosphate", 48.3), ("Sodium Carbonate", 32.0)];

/// Each published point between two others, left out and computed from the rest.
fn curves() -> EvidenceSet {
    let (mut worst, mut bases) = (Worst::default(), Vec::new());
    for constituent in Catalogue::get().constituents() {
        let Some(curve) = knowledge().facts(constituent.id).and_then(curve_of) else { continue };
        let points = curve.points();
        for at in 1..points.len().saturating_sub(1) {
            let left_out = points[at];
            // Neighbours far apart or from another laboratory test the data, not the line between them.
            let (before, after) = (points[at - 1], points[at + 1]);
            let near = after.temperature - before.temperature <= 40.0;
            if !near
                || before.citation.source != after.citation.source
                || before.citation.source != left_out.citation.source
            {
                continue;
            }
            let corner = |(inci, at): &(&str, f64)| {
                *inci == constituent.inci && (before.temperature..after.temperature).contains(at)
            };
            if CORNERS.iter().any(corner) {
                continue;
            }
            let rest: Vec<_> =
                points.iter().enumerate().filter(|(other, _)| *other != at).map(|(_, point)| *point).collect();
            let rest = Curve::through(rest).expect("two points are left");
            let computed = Temperature::new(left_out.temperature).and_then(|at| rest.at(at)).expect("it lies between");
            worst.see((computed / left_out.grams).log10());
            bases.push(left_out.citation.basis.slug());
        }
    }
    EvidenceSet::of(
        "solubility.curve",
        format!(
            "BigSolDB 2.0, CRC Handbook and others: each published point, left out, from its neighbours, but for corners where a salt changes its \
             hydrate ({})",
            count_bases(bases.into_iter())
        ),
        worst,
        // A quarter: what repeated measurements of one laboratory are apart at worst.
        0.1,
        "log10",
    )
}

/// Printed tables of preservatives in emulsions without emulsifier.
fn emulsions() -> EvidenceSet {
    let table: Vec<PartitionRow> = rows("emulsion_partition.csv", PARTITION);
    let mut worst = Worst::default();
    for row in table.iter().filter(|row| row.doubt.is_empty()) {
        let computed = in_water(row.overall, row.coefficient, row.oil_to_water);
        let computed = row.capped_at.map_or(computed, |cap| computed.min(cap));
        worst.see((computed / row.in_water - 1.0) * 100.0);
    }
    EvidenceSet::of(
        "preservation.partition",
        format!(
            "J. Soc. Cosmet. Chem. 16 (1965) 18 and 23 (1972) 716, tables of Bean and co-workers ({}; one misprint left out)",
            count_bases(table.iter().filter(|row| row.doubt.is_empty()).map(|row| row.basis.as_str()))
        ),
        worst,
        // Printed with one or two figures: half of the last is up to eight percent of the smallest.
        8.0,
        "%",
    )
}

/// Undissociated shares by the catalogue's constants against printed tables.
fn acids() -> EvidenceSet {
    let table: Vec<UndissociatedRow> = rows("undissociated.csv", UNDISSOCIATED);
    let mut worst = Worst::default();
    for row in &table {
        let acid = facts_of(&row.inci).acid.as_ref().unwrap_or_else(|| panic!("{} is no acid", row.inci));
        worst.see(undissociated(&acid.steps, row.ph) * 100.0 - row.percent);
    }
    EvidenceSet::of(
        "preservation.undissociated",
        format!(
            "ICMSF, Microbial Ecology of Foods 1 (1980); J. Soc. Cosmet. Chem. 18 (1967) 211 ({})",
            count_bases(table.iter().map(|row| row.basis.as_str()))
        ),
        worst,
        // Constants in the literature are apart by 0.15, which is so much at the middle of the curve.
        8.6,
        "points of percent",
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_chemistry_of_findings_agrees_with_printed_tables() {
        crate::hold(
            &evidence(),
            &[
                ("solubility.cosolvent", 8),
                ("solubility.curve", 40),
                ("preservation.partition", 16),
                ("preservation.undissociated", 22),
            ],
        );
    }

    #[test]
    fn where_the_rule_does_not_serve_it_says_too_little_rather_than_too_much() {
        let table: Vec<CosolvencyRow> = rows("cosolvency.csv", COSOLVENCY);
        let beyond: Vec<_> = table.iter().filter(|row| is_beyond(row)).collect();
        assert!(beyond.len() >= 3);
        assert!(beyond.iter().all(|row| deviation(row) < 0.0));
    }
}
