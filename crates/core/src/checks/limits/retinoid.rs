//! More vitamin A, counted as retinol, than the law allows in any product of this use. Cured by less of it.

use super::{all_have, describe, keep, limits_of, tolerated};
use crate::checks::contents::Contents;
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity};

pub(super) const CODE: &str = "limits.retinoid";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let limits = limits_of(contents, |limit| all_have(contents, limit, Trait::Retinoid));
    let over = limits.into_iter().find(|(limit, bound, counted)| counted.most > tolerated(limit, *bound));
    let Some((limit, bound, counted)) = over else { return };
    found.push(
        describe(Finding::new(CODE, Severity::Stop, "retinoids"), contents, limit, counted, bound)
            .cured_by(keep(contents, limit, counted, bound)),
    );
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Value;

    #[test]
    fn esters_count_as_retinol() {
        let bench = Bench::new();
        let formula = bench.oil_with(&[("Retinol", "0.2"), ("Retinyl Palmitate", "0.5")]);
        let findings = bench.check(&formula);
        let Some(Value::Percent(present)) = find(&findings, super::CODE).value("present") else { panic!() };
        assert!((present - 0.473).abs() < 1e-9);
        bench.every_cure_cures(&formula, super::CODE);
        let within = bench.oil_with(&[("Retinol", "0.1"), ("Retinyl Palmitate", "0.3")]);
        assert!(!codes(&bench.check(&within)).contains(&super::CODE));
    }
}
