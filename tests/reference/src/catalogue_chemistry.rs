//! Molar masses, acid constants and solubilities of the catalogue against tables it was not made from.

use crate::{EvidenceSet, Worst, count_bases, rows};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Deserialize;
use std::collections::BTreeMap;
use stillroom_catalogue::reference::{acid_constants, preservative_limits, water_solubilities};
use stillroom_catalogue::{Basis, Catalogue, Property};

const WEIGHTS: &str = include_str!("../data/atomic_weights.csv");
const CONSTANTS: &str = include_str!("../data/acid_constants.csv");
const DATASET: &str = include_str!("../data/aqsoldb.csv");
const SALTS: &str = include_str!("../data/salt_solubility.csv");

#[derive(Debug, Deserialize)]
struct WeightRow {
    element: String,
    weight: f64,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

#[derive(Debug, Deserialize)]
struct ConstantRow {
    inci: String,
    step: usize,
    pka: f64,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

#[derive(Debug, Deserialize)]
struct DatasetRow {
    inci: String,
    molar_mass: f64,
    /// Decimal logarithm of the solubility in mol/L.
    log_s: f64,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

#[derive(Debug, Deserialize)]
struct SaltRow {
    inci: String,
    temperature: f64,
    grams_per_100_g_water: f64,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

/// Molar masses by atomic weights, acid constants by handbooks, solubilities by an open dataset.
///
/// # Panics
/// If a row cannot be read.
#[must_use]
pub fn evidence() -> Vec<EvidenceSet> {
    vec![molar_masses(), dissociation(), solubilities()]
}

/// Every molar mass of a constituent, and every molar mass in the table of preservative limits, against the sum of
/// the atomic weights in the constituent's formula.
fn molar_masses() -> EvidenceSet {
    let table: Vec<WeightRow> = rows("atomic_weights.csv", WEIGHTS);
    let weights: BTreeMap<&str, f64> = table.iter().map(|row| (row.element.as_str(), row.weight)).collect();
    let catalogue = Catalogue::get();
    let mut worst = Worst::default();
    for constituent in catalogue.constituents() {
        let Some(formula) = catalogue.molecular_formula(constituent.id) else { continue };
        let expected = mass_of_formula(formula, &weights);
        let own = catalogue.constituent_values(constituent.id);
        let own = own.filter(|value| value.property == Property::MolarMass).filter_map(|value| value.value);
        let limits = preservative_limits().iter().filter(|row| row.constituent == Some(constituent.id));
        for mass in own.chain(limits.filter_map(|row| row.molar_mass)) {
            worst.see((to_physics(mass) / expected - 1.0) * 100.0);
        }
    }
    EvidenceSet {
        set: "catalogue.molar-mass",
        source: format!(
            "IUPAC abridged standard atomic weights 2021, summed over each formula ({})",
            count_bases(table.iter().map(|row| row.basis.as_str()))
        ),
        cases: worst.cases,
        worst: worst.deviation,
        // Two figures after the point in a molar mass of a hundred, and older atomic weights.
        tolerance: 0.02,
        unit: "%",
    }
}

/// Sums the atomic weights of a formula in Hill order, as `C3H8O3`.
fn mass_of_formula(formula: &str, weights: &BTreeMap<&str, f64>) -> f64 {
    let mut mass = 0.0;
    let mut rest = formula;
    while let Some(first) = rest.chars().next() {
        assert!(first.is_ascii_uppercase(), "{formula} is no formula in Hill order");
        let symbol_end = 1 + rest[1..].chars().take_while(char::is_ascii_lowercase).count();
        let count_end = symbol_end + rest[symbol_end..].chars().take_while(char::is_ascii_digit).count();
        let count: f64 = rest[symbol_end..count_end].parse().unwrap_or(1.0);
        let symbol = &rest[..symbol_end];
        mass += count * weights.get(symbol).unwrap_or_else(|| panic!("{formula}: no weight of {symbol}"));
        rest = &rest[count_end..];
    }
    mass
}

/// The first row of each acid at 20 to 25 °C, step by step, against handbook tables.
fn dissociation() -> EvidenceSet {
    let table: Vec<ConstantRow> = rows("acid_constants.csv", CONSTANTS);
    let mut worst = Worst::default();
    for row in &table {
        let room = [Decimal::from(20), Decimal::from(25)];
        let acid = acid_constants()
            .iter()
            .find(|acid| acid.inci == row.inci && acid.temperature.is_some_and(|at| room.contains(&at)))
            .unwrap_or_else(|| panic!("the catalogue has no constants of {}", row.inci));
        let steps = [acid.pka_1, acid.pka_2, acid.pka_3, acid.pka_4];
        let stated = steps[row.step - 1].unwrap_or_else(|| panic!("{} has no step {}", row.inci, row.step));
        worst.see(to_physics(stated) - row.pka);
    }
    EvidenceSet {
        set: "catalogue.acid-constants",
        source: format!(
            "Martell and Smith (1976) and Robinson and Stokes (1970) as tabulated by LibreTexts and by Kaye and Laby; \
             textbook tables ({})",
            count_bases(table.iter().map(|row| row.basis.as_str()))
        ),
        cases: worst.cases,
        worst: worst.deviation,
        // What good tables differ by among themselves.
        tolerance: 0.15,
        unit: "pKa",
    }
}

/// Published solubilities against three tables they were not taken from: an open dataset at 25 °C, a public table of
/// salts and sugars at many temperatures, and saturation as a reference program computes it.
///
/// Of the dataset only values below 100 g/L are compared: above, it mixes "per litre of water" with "per litre of
/// solution" and holds lower bounds. Recalled figures of the catalogue are not compared; they are marked as such.
fn solubilities() -> EvidenceSet {
    let dataset: Vec<DatasetRow> = rows("aqsoldb.csv", DATASET);
    let salts: Vec<SaltRow> = rows("salt_solubility.csv", SALTS);
    let mut worst = Worst::default();
    let mut compare = |own: f64, other: f64| worst.see((own / other).max(other / own));
    for row in &dataset {
        let grams_per_litre = 10_f64.powf(row.log_s) * row.molar_mass;
        if grams_per_litre >= 100.0 {
            continue;
        }
        let mut stated = published_solubilities(&row.inci, "aqsoldb");
        stated.retain(|(temperature, _)| (20.0..=30.0).contains(temperature));
        stated.sort_by(|a, b| (a.0 - 25.0).abs().total_cmp(&(b.0 - 25.0).abs()));
        if let Some((_, grams_per_100_g)) = stated.first() {
            // At these dilutions a litre of solution holds a litre of water within the spread of the data.
            compare(grams_per_100_g * 10.0, grams_per_litre);
        }
    }
    for row in &salts {
        let mut stated = published_solubilities(&row.inci, "wikipedia-solubility");
        stated.sort_by(|a, b| a.0.total_cmp(&b.0));
        if let Some(own) = on_the_line(&stated, row.temperature) {
            compare(own, row.grams_per_100_g_water);
        }
    }
    let bases = dataset.iter().map(|row| row.basis.as_str()).chain(salts.iter().map(|row| row.basis.as_str()));
    EvidenceSet {
        set: "solubility.water",
        source: format!(
            "AqSolDB (Sorkun, Khetan and Er, Sci. Data 6 (2019) 143), values below 100 g/L at 25 ± 5 °C; Wikipedia, \
             Solubility table; PHREEQC with pitzer.dat ({})",
            count_bases(bases)
        ),
        cases: worst.cases,
        worst: worst.deviation,
        // The dataset's own sub-datasets differ by up to this factor.
        tolerance: 1.5,
        unit: "times",
    }
}

/// Temperature and grams per 100 g of water of every published solubility that does not come from one source.
fn published_solubilities(inci: &str, other_than: &str) -> Vec<(f64, f64)> {
    let own = water_solubilities().iter().filter(|own| own.inci == inci && own.origin.basis == Basis::Published);
    own.filter(|own| own.origin.source.slug != other_than)
        .filter_map(|own| Some((to_physics(own.temperature?), to_physics(own.grams_per_100_g_water?))))
        .collect()
}

/// The figure at a temperature: stated there, or on the line between two that are ten degrees apart at most.
fn on_the_line(stated: &[(f64, f64)], temperature: f64) -> Option<f64> {
    let exact = stated.iter().find(|(at, _)| (at - temperature).abs() < 0.01).map(|(_, grams)| *grams);
    exact.or_else(|| {
        stated.windows(2).find_map(|pair| {
            let [(a, from), (b, to)] = pair else { return None };
            let between = *a < temperature && temperature < *b && b - a <= 10.0;
            between.then(|| from + (to - from) * (temperature - a) / (b - a))
        })
    })
}

fn to_physics(value: Decimal) -> f64 {
    value.to_f64().expect("a number of the catalogue")
}

#[cfg(test)]
mod tests {
    use super::mass_of_formula;
    use std::collections::BTreeMap;

    #[test]
    fn the_chemistry_of_the_catalogue_agrees_with_outside_tables() {
        crate::hold(
            &super::evidence(),
            &[("catalogue.molar-mass", 100), ("catalogue.acid-constants", 40), ("solubility.water", 60)],
        );
    }

    #[test]
    fn a_formula_is_summed_element_by_element() {
        let weights = BTreeMap::from([("C", 12.0), ("H", 1.0), ("Cl", 35.5)]);
        assert!((mass_of_formula("C2H5Cl", &weights) - 64.5).abs() < 1e-9);
    }

    #[test]
    #[should_panic(expected = "no weight of Xx")]
    fn an_unknown_element_is_not_weightless() {
        let _ = mass_of_formula("HXx", &BTreeMap::from([("H", 1.0)]));
    }
}
