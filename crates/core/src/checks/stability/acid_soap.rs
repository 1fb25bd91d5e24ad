//! A soap below pH 8 turns back into fatty acid; a surfactant of an amino acid below about 4.8 comes out as its acid. Both
//! cloud, thin and stop foaming.
//!
//! Cured by the lowest pH they bear.

use super::TRACE;
use crate::checks::contents::Contents;
use crate::checks::cure::{Round, set_ph};
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};
use crate::source::Citation;

pub(super) const CODE: &str = "stability.acid-soap";

/// The lowest pH that each bears: common practice.
const BEARS: [(Trait, f64); 2] = [(Trait::Soap, 8.0), (Trait::AcylAminoAcid, 4.8)];

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(ph) = contents.ph().filter(|_| !contents.is_dry()) else { return };
    for (wanted, least) in BEARS.into_iter().filter(|(_, least)| ph.high() < *least) {
        for each in contents.with(wanted).filter(|each| each.percent >= TRACE) {
            found.push(
                Finding::about(CODE, Severity::Caution, each.id)
                    .with("ph", Value::Ph(ph.value))
                    .with("least", Value::Ph(least))
                    .fed_by(each.lines())
                    .cured_by(set_ph(least, Round::Up))
                    .cite([Citation::COMMON_PRACTICE]),
            );
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn soap_in_acid_is_soap_no_more() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Potassium Cocoate", "15"), ("Phenoxyethanol", "0.9")]);
        formula.target_ph = Some(bench.ph("6"));
        bench.every_cure_cures(&formula, super::CODE);
        formula.target_ph = Some(bench.ph("9.5"));
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
    }
}
