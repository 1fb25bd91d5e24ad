//! A scrub of sugar or salt that dissolves in the water of its own formula: what is meant to stay grains becomes a syrup.
//!
//! Said of what is meant to stay solid and dissolves well, where there is water for a fifth of it at least.

use crate::checks::contents::Contents;
use crate::checks::facts::WaterSolubility;
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "stability.scrub-dissolves";

/// What dissolves less than this, in grams in 100 g of water, stays grains for all that matters.
const DISSOLVES_WELL: f64 = 5.0;
/// Share of it that has to dissolve for it to matter.
const MATTERS: f64 = 0.2;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    for each in &contents.present {
        let solid = each.percent - each.dissolving;
        let Some(WaterSolubility::Limited(curve)) = each.facts.water_solubility.as_ref().filter(|_| solid > 0.0) else {
            continue;
        };
        let Ok(grams) = curve.at(contents.conditions.room) else { continue };
        let dissolves = (grams * contents.water / 100.0).min(solid);
        if grams < DISSOLVES_WELL || dissolves < solid * MATTERS {
            continue;
        }
        found.push(
            Finding::about(CODE, Severity::Caution, each.id)
                .with("solid", Value::Percent(solid))
                .with("dissolves", Value::Percent(dissolves))
                .with("water", Value::Percent(contents.water))
                .fed_by(each.lines())
                .cite(curve.citations(contents.conditions.room.celsius())),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn salt_grains_dissolve_in_water_and_not_in_oil() {
        let bench = Bench::new();
        let solid = |mut formula: crate::Formula| {
            let salt = bench.material("Sodium Chloride");
            for line in formula.phases.iter_mut().flat_map(|phase| &mut phase.lines) {
                line.suspended = line.material == salt;
            }
            formula
        };
        let lines = [("Sodium Chloride", "20")];
        assert!(codes(&bench.check(&solid(bench.water_with(&lines)))).contains(&super::CODE));
        assert!(!codes(&bench.check(&solid(bench.oil_with(&lines)))).contains(&super::CODE));
    }
}
