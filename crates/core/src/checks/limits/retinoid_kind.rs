//! More vitamin A, counted as retinol, than the law allows in some kinds of product, though not more than in others: whether it
//! is a body lotion or a face cream decides. Cured by the lower limit.

use super::{all_have, describe, keep, limits_of, tolerated};
use crate::checks::contents::Contents;
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "limits.retinoid-kind";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let mut limits = limits_of(contents, |limit| all_have(contents, limit, Trait::Retinoid));
    limits.sort_by(|a, b| a.1.total_cmp(&b.1));
    let [(limit, bound, counted), .., (other, highest, _)] = limits.as_slice() else { return };
    if counted.most <= tolerated(limit, *bound) || counted.most > tolerated(other, *highest) {
        return;
    }
    found.push(
        describe(Finding::new(CODE, Severity::Caution, "retinoids"), contents, limit, *counted, *bound)
            .with("other", Value::Name(other.subject))
            .with("other_limit", Value::Percent(*highest))
            .cured_by(keep(contents, limit, *counted, *bound)),
    );
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
