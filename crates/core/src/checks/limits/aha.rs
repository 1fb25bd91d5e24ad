//! More fruit acid (alpha hydroxy acid), counted as acid with its salts, than published advice bears: it peels and burns.
//!
//! Advice differs. More than the most lenient bears is a stop, more than a stricter one a caution. Cured by less of it.

use super::{describe, is_of_fruit_acid, keep, limits_of, tolerated};
use crate::checks::contents::Contents;
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "limits.aha";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let limits = limits_of(contents, |limit| is_of_fruit_acid(contents, limit));
    let lenient = limits.iter().map(|(_, bound, _)| *bound).fold(0.0, f64::max);
    for (limit, bound, counted) in limits {
        if counted.most <= tolerated(limit, bound) {
            continue;
        }
        let severity = if bound >= lenient { Severity::Stop } else { Severity::Caution };
        let finding = describe(Finding::new(CODE, severity, limit.subject), contents, limit, counted, bound)
            .cured_by(keep(contents, limit, counted, bound));
        found.push(match limit.least_ph {
            Some(ph) => finding.with("least_ph", Value::Ph(ph)),
            None => finding,
        });
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, has};
    use crate::checks::finding::Severity;

    #[test]
    fn acids_and_their_salts_add_up() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Lactic Acid", "8"), ("Sodium Lactate", "4")]);
        formula.target_ph = Some(bench.ph("4"));
        // 8 + 4 × 0.804 = 11.2 %.
        bench.every_cure_cures(&formula, super::CODE);
        let findings = bench.check(&formula);
        assert!(findings.iter().any(|each| each.code == super::CODE && each.severity == Severity::Stop));
        formula = bench.water_with(&[("Lactic Acid", "8"), ("Sodium Lactate", "2")]);
        formula.target_ph = Some(bench.ph("4"));
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
    }

    #[test]
    fn stricter_advice_is_a_caution() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Glycolic Acid", "6")]);
        formula.target_ph = Some(bench.ph("4"));
        let findings = bench.check(&formula);
        assert!(has(&findings, super::CODE, "Glycolic acid"));
        assert!(findings.iter().all(|each| each.code != super::CODE || each.severity == Severity::Caution));
    }
}
