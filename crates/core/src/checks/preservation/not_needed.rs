//! A product that holds water and yet needs no preservative, and why.
//!
//! Clean work and a clean container are still asked for, and water that gets in (a wet finger, a drop from the shower)
//! undoes the reason.

use super::{ISO_29621, Spared, carriers, spared, water_activity};
use crate::checks::contents::Contents;
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "preservation.not-needed";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(why) = spared(contents) else { return };
    if why == Spared::Dry && contents.water <= 0.0 || carriers(contents).next().is_some() {
        return;
    }
    found.push(
        Finding::new(CODE, Severity::Note, "formula")
            .with("why", Value::Word(why.word()))
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
        let findings = bench.check(&bench.water_with(&[("Glycerin", "70")]));
        assert_eq!(find(&findings, super::CODE).value("why"), Some(&Value::Word("spared.bound")));
        let findings = bench.check(&bench.water_with(&[("Alcohol", "40")]));
        assert_eq!(find(&findings, super::CODE).value("why"), Some(&Value::Word("spared.alcohol")));
        assert!(!codes(&bench.check(&bench.water_with(&[]))).contains(&super::CODE));
        assert!(!codes(&bench.check(&bench.oil_with(&[]))).contains(&super::CODE));
    }
}
