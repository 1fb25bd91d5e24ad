//! Fruit acid at a lower pH than published advice bears: more of it is undissociated, goes into the skin, and stings.
//!
//! Below the pH of the most lenient advice a stop, below a stricter one a note. Less than one percent only sets the pH and is
//! left out (common practice). Cured by the pH that the advice asks for.

use super::{describe, is_of_fruit_acid, limits_of};
use crate::checks::contents::Contents;
use crate::checks::cure::{Cure, Round, set_ph};
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "limits.aha-ph";

/// From this percent it acts on skin rather than on the pH: common practice.
pub(in crate::checks) const ACTS: f64 = 1.0;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(ph) = contents.ph() else { return };
    let limits = limits_of(contents, |limit| is_of_fruit_acid(contents, limit));
    let lenient = limits.iter().filter_map(|(limit, ..)| limit.least_ph).fold(f64::INFINITY, f64::min);
    for (limit, bound, counted) in limits {
        let Some(least) = limit.least_ph.filter(|least| ph.at_least() < *least && counted.most >= ACTS) else {
            continue;
        };
        // Stricter advice is worth a word only where the most lenient is kept.
        if least > lenient && ph.at_least() < lenient {
            continue;
        }
        let severity = if least <= lenient { Severity::Stop } else { Severity::Note };
        found.push(
            describe(Finding::new(CODE, severity, limit.subject), contents, limit, counted, bound)
                .with("ph", Value::Ph(ph.value))
                .with("least_ph", Value::Ph(least))
                .cured_by(raise_ph(contents, least)),
        );
    }
}

/// The pH that the advice asks for. Not where nothing but the low pH keeps microbes from growing.
fn raise_ph(contents: &Contents<'_>, least: f64) -> Option<Cure> {
    let preserved = contents.present.iter().any(|each| each.percent > 0.0 && each.facts.preservative.is_some());
    if preserved || contents.water <= 0.0 { set_ph(least, Round::Up) } else { None }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};
    use crate::checks::finding::Severity;

    #[test]
    fn a_fruit_acid_below_the_ph_of_all_advice_is_a_stop() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Glycolic Acid", "3"), ("Phenoxyethanol", "0.9")]);
        formula.target_ph = Some(bench.ph("3"));
        let findings = bench.check(&formula);
        assert!(findings.iter().any(|each| each.code == super::CODE && each.severity == Severity::Stop));
        let cure = &findings.iter().find(|each| each.code == super::CODE).unwrap().cures[0];
        assert_eq!(cure.code, "cure.set-ph");
        formula.target_ph = Some(bench.ph("3.8"));
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
        let mut little = bench.water_with(&[("Lactic Acid", "0.3")]);
        little.target_ph = Some(bench.ph("3"));
        assert!(!codes(&bench.check(&little)).contains(&super::CODE));
    }

    #[test]
    fn each_cure_removes_its_own_finding() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Lactic Acid", "3"), ("Phenoxyethanol", "0.9")]);
        formula.target_ph = Some(bench.ph("3"));
        bench.every_cure_cures(&formula, super::CODE);
    }
}
