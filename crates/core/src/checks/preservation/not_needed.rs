//! A product that holds water and yet needs no preservative, and why.
//!
//! Clean work and a clean container are still asked for, and water that gets in (a wet finger, a drop from the shower)
//! undoes the reason. Never said of a product whose pH burns.

use super::{DRY, ISO_29621, LowRisk, alcohol, meant, needs, water_activity};
use crate::checks::contents::Contents;
use crate::checks::finding::{Finding, Severity, Value};
use crate::checks::limits::skin_ph;
use crate::extract::keeping::Spectrum;

pub(super) const CODE: &str = "preservation.not-needed";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let dry = contents.water <= DRY;
    if needs(contents) != Spectrum::Nothing
        || dry && contents.water <= 0.0
        || meant(contents).next().is_some()
        || skin_ph::hurts(contents)
    {
        return;
    }
    let why = match (dry, alcohol(contents) > LowRisk::ALCOHOL_PERCENT) {
        (true, _) => "spared.dry",
        (false, true) => "spared.alcohol",
        (false, false) => "spared.bound",
    };
    found.push(
        Finding::new(CODE, Severity::Note, "formula")
            .with("why", Value::Word(why))
            .with("water", Value::Percent(contents.water))
            .with("activity", Value::Number(water_activity(contents).high))
            .cite([ISO_29621]),
    );
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Value;

    #[test]
    fn the_reason_is_given() {
        let bench = Bench::new();
        let findings = bench.check(&bench.water_with(&[("Glycerin", "85")]));
        assert_eq!(find(&findings, super::CODE).value("why"), Some(&Value::Word("spared.bound")));
        let findings = bench.check(&bench.water_with(&[("Alcohol", "40")]));
        assert_eq!(find(&findings, super::CODE).value("why"), Some(&Value::Word("spared.alcohol")));
        assert!(!codes(&bench.check(&bench.water_with(&[]))).contains(&super::CODE));
        assert!(!codes(&bench.check(&bench.oil_with(&[]))).contains(&super::CODE));
    }

    #[test]
    fn it_never_stands_beside_a_ph_that_burns() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Glycerin", "5")]);
        for ph in ["1.5", "12"] {
            formula.target_ph = Some(bench.ph(ph));
            let codes = codes(&bench.check(&formula));
            assert!(codes.contains(&"limits.skin-ph") && !codes.contains(&super::CODE), "{ph}: {codes:?}");
        }
    }
}
