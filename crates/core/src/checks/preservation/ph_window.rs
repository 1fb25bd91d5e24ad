//! A pH outside the window in which a preservative works and keeps. Of an acid what acts is worked out instead, and is
//! another finding. Cured by the nearest pH inside.

use super::{LATE_ACID, asks_for_one, meant};
use crate::checks::contents::Contents;
use crate::checks::cure::{Round, set_ph};
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "preservation.ph-outside";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(ph) = contents.ph() else { return };
    if !asks_for_one(contents) {
        return;
    }
    for each in meant(contents) {
        let Some(window) = each.preservative.ph else { continue };
        let (low, high) = (window.value.low, window.value.high);
        let early = each.acid.is_some_and(|acid| acid.steps.first().is_some_and(|pka| *pka < LATE_ACID));
        if early || (ph.at_least() >= low && ph.at_most() <= high) {
            continue;
        }
        let cure = if ph.at_least() < low { set_ph(low, Round::Up) } else { set_ph(high, Round::Down) };
        found.push(
            Finding::about(CODE, Severity::Caution, each.present.id)
                .with("ph", Value::Ph(ph.value))
                .with("low", Value::Ph(low))
                .with("high", Value::Ph(high))
                .fed_by(each.present.lines())
                .cured_by(cure)
                .cite([window.citation]),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn a_ph_outside_the_window_is_a_caution() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Methylparaben", "0.15"), ("Phenoxyethanol", "0.9")]);
        formula.target_ph = Some(bench.ph("8.5"));
        bench.every_cure_cures(&formula, super::CODE);
        formula.target_ph = Some(bench.ph("8.0"));
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
    }
}
