//! Fruit acid in a product whose pH nobody stated: how strongly it acts cannot be told.
//!
//! Cured by aiming at the pH that published advice asks for, and measuring it.

use super::aha_ph::ACTS;
use super::{describe, is_of_fruit_acid, limits_of};
use crate::checks::contents::Contents;
use crate::checks::cure::{Round, set_ph};
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "limits.aha-no-ph";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if contents.ph().is_some() || contents.water <= 0.0 {
        return;
    }
    let limits = limits_of(contents, |limit| is_of_fruit_acid(contents, limit));
    let lenient =
        limits.into_iter().filter_map(|(limit, bound, counted)| Some((limit.least_ph?, limit, bound, counted)));
    let lenient = lenient.min_by(|a, b| a.0.total_cmp(&b.0).then(b.2.total_cmp(&a.2)));
    let Some((least, limit, bound, counted)) = lenient.filter(|(.., counted)| counted.most >= ACTS) else { return };
    found.push(
        describe(Finding::new(CODE, Severity::Caution, "formula"), contents, limit, counted, bound)
            .with("least_ph", Value::Ph(least))
            .cured_by(set_ph(least, Round::Up)),
    );
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn a_ph_that_nobody_stated_is_asked_for() {
        let bench = Bench::new();
        let formula = bench.water_with(&[("Lactic Acid", "5")]);
        bench.every_cure_cures(&formula, super::CODE);
        assert!(!codes(&bench.check(&bench.water_with(&[("Lactic Acid", "0.3")]))).contains(&super::CODE));
    }
}
