//! A product that holds water in which only few yeasts and moulds grow, and those slowly: low risk, but not none.
//!
//! The same verdict as an extract of the same water activity gets. Clean work and a clean container are asked for.

use super::{ISO_29621, meant, needs, water_activity};
use crate::checks::contents::Contents;
use crate::checks::finding::{Finding, Severity, Value};
use crate::checks::limits::skin_ph;
use crate::extract::keeping::Spectrum;

pub(super) const CODE: &str = "preservation.slow";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    // Where the pH hurts, that it keeps is no comfort.
    if needs(contents) != Spectrum::FewAndSlow || meant(contents).next().is_some() || skin_ph::hurts(contents) {
        return;
    }
    found.push(
        Finding::new(CODE, Severity::Note, "formula")
            .with("water", Value::Percent(contents.water))
            .with("activity", Value::Number(water_activity(contents).high))
            .cite([ISO_29621]),
    );
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn a_glycerite_of_65_percent_keeps_slowly_and_one_of_85_without_more() {
        let bench = Bench::new();
        let of = |percent| codes(&bench.check(&bench.water_with(&[("Glycerin", percent)])));
        assert!(of("65").contains(&super::CODE));
        assert!(!of("85").contains(&super::CODE));
        assert!(!of("40").contains(&super::CODE));
    }
}
