//! A pH outside the window in which a preservative works and keeps. An acid of which too little acts for that very reason is
//! another finding. Cured by the nearest pH inside.

use super::{held, spared, undissociated::acting};
use crate::checks::contents::Contents;
use crate::checks::cure::{Round, set_ph};
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "preservation.ph-outside";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(ph) = contents.ph() else { return };
    if spared(contents).is_some() {
        return;
    }
    for held in held(contents).filter(|held| held.preservative.carries && held.counts()) {
        let Some(window) = held.preservative.ph else { continue };
        let (low, high) = (window.value.low, window.value.high);
        if (low..=high).contains(&ph) || acting(contents, &held).is_some_and(|acting| acting.acts < acting.wanted) {
            continue;
        }
        let cure = if ph < low { set_ph(low, Round::Up) } else { set_ph(high, Round::Down) };
        found.push(
            Finding::about(CODE, Severity::Caution, held.present.id)
                .with("ph", Value::Ph(ph))
                .with("low", Value::Ph(low))
                .with("high", Value::Ph(high))
                .fed_by(held.present.lines())
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
        let mut formula = bench.water_with(&[("Methylparaben", "0.3"), ("Phenoxyethanol", "0.9")]);
        formula.target_ph = Some(bench.ph("8.5"));
        bench.every_cure_cures(&formula, super::CODE);
        formula.target_ph = Some(bench.ph("8.0"));
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
    }
}
