//! Something that only oil dissolves in a product of water with nothing to carry it: it floats up as drops or settles.
//!
//! Oil, alcohol or twice as much of a solubiliser carries it (common practice). Cured by a solubiliser.

use super::TRACE;
use crate::checks::contents::{Contents, Present};
use crate::checks::cure::{Round, add, weighable};
use crate::checks::facts::{Cosolvent, Trait};
use crate::checks::finding::{Finding, Severity, Value};
use crate::source::Citation;
use stillroom_terms::Class;
use stillroom_terms::PhaseKind;

pub(super) const CODE: &str = "stability.no-carrier";

/// Oil or solubiliser that a part of it asks for.
const CARRIES: f64 = 2.0;
/// What a cure adds to a part of it: common practice for a clear solution.
const ADDED: f64 = 4.0;
/// Ethanol in the solvent that carries it, in percent of the product.
const ALCOHOL: f64 = 30.0;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let wanting: Vec<&Present<'_>> =
        contents.with(Trait::OilSoluble).filter(|each| each.percent >= TRACE * 2.0).collect();
    let alcohol =
        contents.cosolvents.iter().any(|(kind, percent, _)| *kind == Cosolvent::Ethanol && *percent > ALCOHOL);
    if wanting.is_empty() || contents.water <= contents.oil || alcohol {
        return;
    }
    let total: f64 = wanting.iter().map(|each| each.percent).sum();
    let itself: f64 = wanting.iter().filter(|each| each.is_oil()).map(|each| each.percent).sum();
    let solubilises = |each: &&Present<'_>| matches!(each.class, Class::Emulsifier | Class::Surfactant);
    let solubiliser: f64 = contents.present.iter().filter(solubilises).map(|each| each.percent).sum();
    let polymer = contents.with(Trait::PolymericEmulsifier).next().is_some();
    if contents.oil - itself >= total * CARRIES || solubiliser >= total * CARRIES || polymer {
        return;
    }
    let remedy = contents.knowledge.remedies().solubiliser.zip(weighable(total * ADDED, Round::Up));
    for each in &wanting {
        let cure = remedy.and_then(|remedy| add(contents, &[remedy], PhaseKind::CoolDown));
        found.push(
            Finding::about(CODE, Severity::Caution, each.id)
                .with("present", Value::Percent(each.percent))
                .fed_by(each.lines())
                .cured_by(cure)
                .cite(each.facts.has(Trait::OilSoluble))
                .cite([Citation::COMMON_PRACTICE]),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn retinol_in_a_gel_of_water_has_nothing_to_carry_it() {
        let bench = Bench::new();
        let formula = bench.water_with(&[("Retinol", "0.2"), ("Phenoxyethanol", "0.9")]);
        bench.every_cure_cures(&formula, super::CODE);
        let carried =
            bench.water_with(&[("Retinol", "0.2"), ("Helianthus Annuus Seed Oil", "5"), ("Polysorbate 60", "1")]);
        assert!(!codes(&bench.check(&carried)).contains(&super::CODE));
    }
}
