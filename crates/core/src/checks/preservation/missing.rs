//! Water that microbes can grow in, and nothing that keeps them from it.
//!
//! Antioxidants, extracts and boosters do not count, nor do traces of a preservative carried in. Cured by one or two
//! preservatives that together hold bacteria, yeasts and moulds at this pH.

use super::{CHALLENGE_TEST, ISO_29621, carriers, closing_gaps, covered, held, spared, water_activity};
use crate::checks::contents::Contents;
use crate::checks::cure::add;
use crate::checks::finding::{Finding, Severity, Value};
use crate::formula::PhaseKind;

pub(super) const CODE: &str = "preservation.missing";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if spared(contents).is_some() || carriers(contents).next().is_some() {
        return;
    }
    let activity = water_activity(contents);
    let new = closing_gaps(contents, covered(contents));
    let cure = new.and_then(|new| add(contents, &new, PhaseKind::CoolDown));
    let weak: Vec<_> = held(contents).map(|held| held.present.id).collect();
    let mut finding = Finding::new(CODE, Severity::Stop, "formula")
        .with("water", Value::Percent(contents.water))
        .with("activity", Value::Number(activity.high))
        .step(
            "work.water-activity",
            vec![("water", Value::Percent(contents.water)), ("activity", Value::Number(activity.high))],
        )
        .cured_by(cure)
        .cite([ISO_29621, CHALLENGE_TEST]);
    if !weak.is_empty() {
        finding = finding.step("work.not-carrying", vec![("substances", Value::Substances(weak))]);
    }
    found.push(finding);
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn water_without_a_preservative_is_a_stop() {
        let bench = Bench::new();
        bench.every_cure_cures(&bench.water_with(&[("Glycerin", "5")]), super::CODE);
        bench.every_cure_cures(&bench.water_with(&[("Tocopherol", "1")]), super::CODE);
        bench.every_cure_cures(&bench.water_with(&[("Phenoxyethanol", "0.05")]), super::CODE);
    }

    #[test]
    fn what_is_preserved_dry_or_bound_is_not() {
        let bench = Bench::new();
        for formula in [
            bench.water_with(&[("Phenoxyethanol", "0.9")]),
            bench.oil_with(&[("Tocopherol", "1")]),
            bench.water_with(&[("Glycerin", "70")]),
            bench.water_with(&[("Alcohol", "30")]),
        ] {
            assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
        }
    }
}
