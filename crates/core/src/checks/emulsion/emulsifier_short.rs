//! Too little emulsifier for the oil: drops stay bare, run together and cream.
//!
//! How much oil a gram holds differs by kind: about 10 g for simple non-ionic and lamellar emulsifiers, 25 g for charged ones,
//! 100 g for polymers, 4 g for gums; fatty alcohol counts as emulsifier where both build a gel of liquid crystals. All of this
//! is common practice, and a maker's own figure for an emulsifier comes first. Cured by more of it.

use super::{System, Work};
use crate::checks::contents::Contents;
use crate::checks::cure::raise;
use crate::checks::finding::{Finding, Severity, Value};
use crate::material::ConstituentId;
use crate::source::Citation;

pub(super) const CODE: &str = "emulsion.emulsifier-short";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(system) = System::of(contents).filter(|system| system.total > 0.0) else { return };
    let mut weights: Vec<(ConstituentId, f64)> = Vec::with_capacity(system.emulsifiers.len() + 1);
    for (each, work) in &system.emulsifiers {
        weights.push((each.id, work.holds()));
    }
    let mut holds: f64 = system.emulsifiers.iter().map(|(each, work)| each.percent * work.holds()).sum();
    let mut oil = contents.oil;
    if system.is_gel_network() {
        holds += system.builders * Work::Lamellar.holds();
        oil -= system.builders;
    }
    if holds >= oil {
        return;
    }
    let mut finding = Finding::new(CODE, Severity::Caution, "formula")
        .with("emulsifier", Value::Percent(system.total))
        .with("oil", Value::Percent(oil))
        .with("holds", Value::Percent(holds))
        .with("substances", Value::Substances(weights.iter().map(|(id, _)| *id).collect()))
        .fed_by(system.emulsifiers.iter().flat_map(|(each, _)| each.lines()))
        .cured_by(raise(contents, &weights, holds, oil))
        .cite([Citation::COMMON_PRACTICE]);
    for (each, work) in &system.emulsifiers {
        finding = finding.step(
            "work.holds-oil",
            vec![
                ("substance", Value::Substance(each.id)),
                ("percent", Value::Percent(each.percent)),
                ("per_gram", Value::Number(work.holds())),
                ("works_by", Value::Word(work.word())),
                ("holds", Value::Percent(each.percent * work.holds())),
            ],
        );
    }
    found.push(finding);
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn one_percent_does_not_hold_twenty() {
        let bench = Bench::new();
        let formula = bench.water_with(&[("Helianthus Annuus Seed Oil", "20"), ("Cetearyl Olivate", "1")]);
        bench.every_cure_cures(&formula, super::CODE);
        for sound in [
            [("Helianthus Annuus Seed Oil", "20"), ("Cetearyl Olivate", "2")],
            [("Helianthus Annuus Seed Oil", "20"), ("Sodium Stearoyl Glutamate", "1")],
            [("Helianthus Annuus Seed Oil", "20"), ("Polyacrylate Crosspolymer-6", "0.3")],
        ] {
            assert!(!codes(&bench.check(&bench.water_with(&sound))).contains(&super::CODE), "{sound:?}");
        }
    }

    #[test]
    fn fatty_alcohol_counts_in_a_gel_of_liquid_crystals() {
        let bench = Bench::new();
        let wax = [("Helianthus Annuus Seed Oil", "20"), ("Polysorbate 60", "1.25"), ("Cetearyl Alcohol", "3.75")];
        assert!(!codes(&bench.check(&bench.water_with(&wax))).contains(&super::CODE));
        let without = [("Helianthus Annuus Seed Oil", "20"), ("Polysorbate 60", "1.25")];
        assert!(codes(&bench.check(&bench.water_with(&without))).contains(&super::CODE));
    }
}
