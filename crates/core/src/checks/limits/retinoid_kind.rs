//! More vitamin A, counted as retinol, than the law allows in some kinds of product, though not more than in others: whether it
//! is a body lotion or a face cream decides. Cured by the lower limit.

use super::{all_have, broken_by_another_kind, describe, keep, limits_of};
use crate::checks::contents::Contents;
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "limits.retinoid-kind";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    for (limit, bound, _) in limits_of(contents, |limit| all_have(contents, limit, Trait::Retinoid)) {
        let Some((stricter, least, counted)) = broken_by_another_kind(contents, limit) else { continue };
        found.push(
            describe(Finding::new(CODE, Severity::Caution, "retinoids"), contents, stricter, counted, least)
                .with("other", Value::Name(limit.subject))
                .with("other_limit", Value::Percent(bound))
                .cured_by(keep(contents, stricter, counted, least)),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn what_a_face_cream_may_have_a_body_lotion_may_not() {
        let bench = Bench::new();
        let formula = bench.oil_with(&[("Retinol", "0.2")]);
        bench.every_cure_cures(&formula, super::CODE);
        assert!(!codes(&bench.check(&bench.oil_with(&[("Retinol", "0.05")]))).contains(&super::CODE));
        assert!(!codes(&bench.check(&bench.oil_with(&[("Retinol", "0.4")]))).contains(&super::CODE));
    }
}
