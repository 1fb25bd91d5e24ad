//! The inner drops fill so much of the emulsion that they touch: at 64 % by volume spheres of one size lie as close as they
//! fall at random, at 74 % as close as they can. Beyond that they are pressed flat, and an ordinary emulsion turns over.
//!
//! Computed from the volumes of oil and of water with what mixes with it. Above 64 % a note, above 74 % a caution. Cured by
//! less oil, or in water in oil by more of it.

use super::System;
use crate::checks::contents::{Contents, Present, USUAL_OIL_DENSITY};
use crate::checks::cure::{Cure, lower, raise};
use crate::checks::finding::{Finding, Severity, Value};
use crate::material::ConstituentId;
use crate::source::{Basis, Citation};
use stillroom_terms::Class;

pub(super) const CODE: &str = "emulsion.close-packing";

/// Equal spheres packed at random.
const RANDOM: f64 = 0.64;
/// Equal spheres packed as close as can be: π/√18.
const CLOSE: f64 = 0.7405;
/// A hair less than the bound, so that rounding the cure stays on the right side.
const WITHIN: f64 = 0.998;

const PACKING: Citation = Citation::recalled(
    "Scott and Kilgour, J. Phys. D 2 (1969) 863: random close packing 0.637; densest packing π/√18 = 0.7405",
);
const VOLUMES: Citation =
    Citation { source: "Mass divided by density", locator: "", as_of: "", basis: Basis::Computed };

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(system) = System::of(contents).filter(|system| system.total > 0.0) else { return };
    let Some(ratio) = contents.oil_to_water() else { return };
    let oil = ratio / (1.0 + ratio);
    let inner = match system.kind {
        super::Kind::OilInWater => oil,
        super::Kind::WaterInOil => 1.0 - oil,
    };
    if inner <= RANDOM {
        return;
    }
    let severity = if inner > CLOSE { Severity::Caution } else { Severity::Note };
    let oils = contents.present.iter().filter(|each| each.is_oil());
    found.push(
        Finding::new(CODE, severity, "formula")
            .with("inner", Value::Percent(inner * 100.0))
            .with("random", Value::Percent(RANDOM * 100.0))
            .with("close", Value::Percent(CLOSE * 100.0))
            .with("kind", Value::Word(system.kind.word()))
            .fed_by(oils.flat_map(Present::lines))
            .step(
                "work.volumes",
                vec![
                    ("ratio", Value::Times(ratio)),
                    ("oil", Value::Percent(oil * 100.0)),
                    ("inner", Value::Percent(inner * 100.0)),
                ],
            )
            .cured_by(cure(contents, system.kind))
            .cite([PACKING, VOLUMES]),
    );
}

/// Volumes as one weighted sum that is zero where the inner volume is just what random packing allows.
fn cure(contents: &Contents<'_>, kind: super::Kind) -> Option<Cure> {
    let bound = RANDOM * WITHIN;
    // Oil volume less this many times the water volume.
    let times = match kind {
        super::Kind::OilInWater => bound / (1.0 - bound),
        super::Kind::WaterInOil => (1.0 - bound) / bound,
    };
    let density = |id: ConstituentId| contents.knowledge.cosolvent(id).map(|(_, density)| density);
    let mut weights: Vec<(ConstituentId, f64)> = Vec::new();
    let mut now = 0.0;
    for each in contents.present.iter().filter(|each| each.percent > 0.0) {
        let weight = if each.is_oil() {
            1.0 / each.facts.density.map_or(USUAL_OIL_DENSITY, |density| density.value)
        } else if let Some(density) = density(each.id) {
            -times / density
        } else if let Some(water) = each.facts.water_content {
            -times * water.value / 100.0
        } else if each.class == Class::Water {
            -times
        } else {
            continue;
        };
        now += weight * each.percent;
        weights.push((each.id, weight));
    }
    match kind {
        // Nothing left over is what an amount "allowed" of zero would take for "take it out".
        super::Kind::OilInWater => lower(contents, &weights, now, f64::MIN_POSITIVE),
        super::Kind::WaterInOil => raise(contents, &weights, now, 0.0),
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Severity;

    #[test]
    fn too_much_oil_in_water_is_found_and_cured() {
        let bench = Bench::new();
        let formula = bench.water_with(&[("Helianthus Annuus Seed Oil", "75"), ("Polysorbate 60", "8")]);
        let findings = bench.check(&formula);
        assert_eq!(find(&findings, super::CODE).severity, Severity::Caution);
        bench.every_cure_cures(&formula, super::CODE);
        let sound = bench.water_with(&[("Helianthus Annuus Seed Oil", "40"), ("Polysorbate 60", "5")]);
        assert!(!codes(&bench.check(&sound)).contains(&super::CODE));
    }

    #[test]
    fn water_in_oil_is_packed_by_its_water() {
        let bench = Bench::new();
        let formula =
            bench.water_with(&[("Helianthus Annuus Seed Oil", "20"), ("Polyglyceryl-3 Polyricinoleate", "4")]);
        assert_eq!(find(&bench.check(&formula), super::CODE).severity, Severity::Caution);
        bench.every_cure_cures(&formula, super::CODE);
    }
}
