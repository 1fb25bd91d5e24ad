//! What preserves and what stays dissolved in the cold, against published inhibitory concentrations, free concentrations in
//! emulsions and micelles, and cold solubilities.

use crate::{EvidenceSet, Worst, count_bases, rows};
use serde::Deserialize;
use stillroom_catalogue::{Catalogue, knowledge};
use stillroom_core::checks::Facts;
use stillroom_core::checks::facts::{Knowledge as _, WaterSolubility};
use stillroom_core::chemistry::Temperature;
use stillroom_core::chemistry::dissociation::undissociated;
use stillroom_core::chemistry::partition::{Losses, free_and_undissociated};

#[derive(Debug, Deserialize)]
struct InhibitoryRow {
    inci: String,
    organism: String,
    group: String,
    total_percent: f64,
    ph: Option<f64>,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

#[derive(Debug, Deserialize)]
struct FreeRow {
    id: String,
    overall: f64,
    oil_to_water: f64,
    coefficient: f64,
    /// Total over free in the water.
    held: f64,
    ph: Option<f64>,
    pka: Option<f64>,
    water_solubility: Option<f64>,
    expected: f64,
    /// Half the last printed digit, or what the source itself is off its own formula by.
    tolerance: f64,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

#[derive(Debug, Deserialize)]
struct ColdRow {
    inci: String,
    temperature: f64,
    grams_per_100_g_water: f64,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

/// What the checks know of a substance.
fn facts(inci: &str) -> &'static Facts {
    let constituent = Catalogue::get().constituents().find(|each| each.inci == inci);
    let facts = constituent.and_then(|each| knowledge().facts(each.id));
    facts.unwrap_or_else(|| panic!("nothing is known of {inci}"))
}

/// The concentration in all that stops a kind of microbe at a pH, as the checks count it.
fn stops(row: &InhibitoryRow) -> Option<f64> {
    let facts = facts(&row.inci);
    let kind = ["gram-positive", "gram-negative", "yeast", "mould"].iter().position(|group| *group == row.group)?;
    let inhibition = facts.preservative.as_ref()?.inhibits[kind]?;
    let share = match (&facts.acid, row.ph) {
        (Some(acid), Some(ph)) => undissociated(&acid.steps, ph),
        _ => 1.0,
    };
    Some(inhibition.percent / share)
}

/// The three sets.
///
/// # Panics
/// If a row cannot be read or computed.
#[must_use]
pub fn evidence() -> Vec<EvidenceSet> {
    vec![inhibitory(), free(), cold()]
}

fn inhibitory() -> EvidenceSet {
    let table: Vec<InhibitoryRow> =
        rows("inhibitory_concentrations.csv", include_str!("../data/inhibitory_concentrations.csv"));
    let mut worst = Worst::default();
    for row in &table {
        let found = stops(row).unwrap_or_else(|| panic!("{} on {}: no figure", row.inci, row.organism));
        worst.see((found / row.total_percent).max(row.total_percent / found));
    }
    let source = format!(
        "minimum inhibitory concentrations as totals at their pH: Anderson and Chow 1967, Handbook of Pharmaceutical \
         Excipients 2009, Fraud 2003, J. Food Prot. 2001, J. Soc. Cosmet. Chem. 1975 ({}); left out: sorbic acid at pH 6, which \
         contradicts all others five- to a hundredfold, and two misprints",
        count_bases(table.iter().map(|row| row.basis.as_str()))
    );
    // Broths of two laboratories differ two- to tenfold; of two bacteria of one kind the hardier counts.
    EvidenceSet::of("preservation.mic", source, worst, 10.0, "times")
}

fn free() -> EvidenceSet {
    let table: Vec<FreeRow> = rows("free_preservative.csv", include_str!("../data/free_preservative.csv"));
    let mut worst = Worst::default();
    for row in &table {
        let share = row.pka.zip(row.ph).map_or(1.0, |(pka, ph)| undissociated(&[pka], ph));
        let losses = Losses {
            undissociated: share,
            oil_to_water: row.oil_to_water,
            coefficient: row.coefficient,
            surfactant: 1.0,
            binding: row.held - 1.0,
        };
        let found = free_and_undissociated(row.overall, losses).min(row.water_solubility.unwrap_or(f64::INFINITY));
        assert!(found.is_finite(), "{}", row.id);
        worst.see((found - row.expected) / row.tolerance);
    }
    let source = format!(
        "free preservative in emulsions, micelles and acids: J. Soc. Cosmet. Chem. 16 (1965) 18 and 23 (1972) 716, Anderson and \
         Chow 1967, Patel and Kostenbauder 1958 ({}); left out: one printed figure that disagrees with its own formula",
        count_bases(table.iter().map(|row| row.basis.as_str()))
    );
    EvidenceSet::of("preservation.free", source, worst, 1.0, "of the tolerance of its row")
}

fn cold() -> EvidenceSet {
    let table: Vec<ColdRow> = rows("cold_solubility.csv", include_str!("../data/cold_solubility.csv"));
    let mut worst = Worst::default();
    for row in &table {
        let Some(WaterSolubility::Limited(curve)) = &facts(&row.inci).water_solubility else {
            panic!("{} has no curve", row.inci)
        };
        let at = Temperature::new(row.temperature).expect("a temperature");
        let found = curve.at(at).unwrap_or_else(|error| panic!("{} at {}: {error}", row.inci, row.temperature));
        worst.see((found / row.grams_per_100_g_water - 1.0) * 100.0);
    }
    let source = format!(
        "measured solubilities at 0 to 12 °C: BigSolDB 2.0, CRC Handbook, Food Additives Data Book and others ({})",
        count_bases(table.iter().map(|row| row.basis.as_str()))
    );
    // Tables of one salt differ by an eighth at 0 °C.
    EvidenceSet::of("solubility.cold", source, worst, 20.0, "%")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_acts_and_what_stays_dissolved_in_the_cold_is_what_was_published() {
        for set in evidence() {
            println!("{}: {} cases, worst {} {}", set.set, set.cases, set.worst, set.unit);
        }
        crate::hold(&evidence(), &[("preservation.mic", 35), ("preservation.free", 33), ("solubility.cold", 25)]);
    }
}
