//! Liquid lecithin as the only emulsifier in a product of much water: by itself it makes water in oil, and parts in so much
//! water.
//!
//! Hydrogenated lecithin and lysolecithin do otherwise. Cured by a lamellar emulsifier beside it.

use super::{MUCH_OIL, System};
use crate::checks::contents::{Contents, Present};
use crate::checks::cure::{Round, add, weighable};
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};
use crate::source::Citation;
use stillroom_terms::PhaseKind;

pub(super) const CODE: &str = "emulsion.lecithin";

/// Share of the emulsifiers from which lecithin decides.
const DECIDES: f64 = 0.7;
/// Emulsifier to oil that a cure adds: common practice.
const ADDED: f64 = 0.2;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(system) = System::of(contents).filter(|system| system.total > 0.0) else { return };
    let lecithin: f64 = contents.with(Trait::PlainLecithin).map(|each| each.percent).sum();
    let share = contents.oil / (contents.oil + contents.solvent());
    if lecithin < system.total * DECIDES || share >= MUCH_OIL {
        return;
    }
    let percent = weighable(contents.oil * ADDED, Round::Up);
    let remedy = contents.knowledge.remedies().lamellar_emulsifier.zip(percent);
    let lecithins = || contents.with(Trait::PlainLecithin);
    found.push(
        Finding::new(CODE, Severity::Caution, "formula")
            .with("lecithin", Value::Percent(lecithin))
            .with("water", Value::Percent(contents.water))
            .fed_by(lecithins().flat_map(Present::lines))
            .cured_by(remedy.and_then(|remedy| add(contents, &[remedy], PhaseKind::HeatedOil)))
            .cite(lecithins().filter_map(|each| each.facts.has(Trait::PlainLecithin)))
            .cite([Citation::COMMON_PRACTICE]),
    );
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn lecithin_alone_does_not_hold_oil_in_much_water() {
        let bench = Bench::new();
        let formula = bench.water_with(&[("Helianthus Annuus Seed Oil", "15"), ("Lecithin", "2.5")]);
        bench.every_cure_cures(&formula, super::CODE);
        let sound =
            bench.water_with(&[("Helianthus Annuus Seed Oil", "15"), ("Lecithin", "0.5"), ("Cetearyl Olivate", "3")]);
        assert!(!codes(&bench.check(&sound)).contains(&super::CODE));
    }
}
