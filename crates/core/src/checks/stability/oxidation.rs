//! Oils with many double bonds and nothing that keeps them from turning rancid.
//!
//! Noted where they make a tenth of the oil at least. Tocopherol slows it; cool and dark does, too. Cured by 0.3 % tocopherol
//! (common practice).

use crate::checks::contents::{Contents, Present};
use crate::checks::cure::add;
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};
use crate::quantity::Percent;
use crate::source::Citation;
use rust_decimal::Decimal;
use stillroom_terms::PhaseKind;

pub(super) const CODE: &str = "stability.oxidation";

/// Share of the oil from which it matters, and percent of the product.
const MATTERS: f64 = 0.1;
const LITTLE: f64 = 2.0;
/// Less antioxidant than this, in percent of the oil, protects nothing.
const PROTECTS: f64 = 0.05;

/// Whether unsaturated oils stand there without protection.
#[must_use]
pub fn is_unprotected(contents: &Contents<'_>) -> bool {
    let sum = |wanted| contents.with(wanted).map(|each: &Present<'_>| each.percent).sum::<f64>();
    let delicate = sum(Trait::Unsaturated);
    delicate >= LITTLE && delicate >= contents.oil * MATTERS && sum(Trait::OilAntioxidant) < delicate * PROTECTS / 100.0
}

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if !is_unprotected(contents) {
        return;
    }
    let oils: Vec<&Present<'_>> = contents.with(Trait::Unsaturated).collect();
    // Three tenths of a percent.
    let percent = Percent::new(Decimal::new(3, 1)).ok();
    let remedy = contents.knowledge.remedies().oil_antioxidant.zip(percent);
    found.push(
        Finding::new(CODE, Severity::Note, "formula")
            .with("substances", Value::Substances(oils.iter().map(|each| each.id).collect()))
            .fed_by(oils.iter().flat_map(|each| each.lines()))
            .cured_by(remedy.and_then(|remedy| add(contents, &[remedy], PhaseKind::CoolDown)))
            .cite(oils.iter().filter_map(|each| each.facts.has(Trait::Unsaturated)))
            .cite([Citation::COMMON_PRACTICE]),
    );
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn a_delicate_oil_wants_an_antioxidant() {
        let bench = Bench::new();
        let formula = bench.oil_with(&[("Rosa Canina Seed Oil", "30")]);
        bench.every_cure_cures(&formula, super::CODE);
        let kept = bench.oil_with(&[("Rosa Canina Seed Oil", "30"), ("Tocopherol", "0.3")]);
        assert!(!codes(&bench.check(&kept)).contains(&super::CODE));
    }
}
