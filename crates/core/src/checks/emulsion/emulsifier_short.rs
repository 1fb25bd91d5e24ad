//! Too little emulsifier for the oil: drops stay bare, run together and cream.
//!
//! How much oil a gram holds differs by kind: about 7 g for simple non-ionic and lamellar emulsifiers (15 % of the oil), 10 g for
//! those of water in oil, 25 g for charged ones, 100 g for polymers, 4 g for gums; fatty alcohol counts as emulsifier where both
//! build a gel of liquid crystals, up to four and a half times the true emulsifier. All of this
//! is common practice, and a maker's own figure for an emulsifier comes first. A little essential oil in water asks for twice
//! as much solubiliser at least (common practice), else it clouds and floats: a note. Cured by more of it.

use super::{LITTLE_WATER, MOST_BUILDERS, System, TRACE, Work, is_only_scent, is_strong_alcohol, work_of};
use crate::checks::contents::{Contents, Present};
use crate::checks::cure::{Cure, LAST_DIGITS, raise};
use crate::checks::finding::{Finding, Severity, Value};
use crate::material::ConstituentId;
use crate::source::Citation;

pub(super) const CODE: &str = "emulsion.emulsifier-short";

/// Solubiliser to essential oil, at least.
const SOLUBILISER_TO_SCENT: f64 = 2.0;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    check_scent(contents, found);
    let Some(system) = System::of(contents).filter(|system| system.total > 0.0) else { return };
    let mut holds: f64 = system.emulsifiers.iter().map(|(each, work)| each.percent * work.holds()).sum();
    let mut oil = contents.oil;
    if system.is_gel_network() {
        // Without a least amount of a true emulsifier fatty alcohol is oil.
        let builds = system.fatty_alcohol().min(system.total * MOST_BUILDERS);
        holds += builds * Work::Lamellar.holds();
        oil -= builds;
    }
    if holds >= oil - LAST_DIGITS {
        return;
    }
    let mut finding = Finding::new(CODE, Severity::Caution, "formula")
        .with("emulsifier", Value::Percent(system.total))
        .with("oil", Value::Percent(oil))
        .with("holds", Value::Percent(holds))
        .with("substances", Value::Substances(system.emulsifiers.iter().map(|(each, _)| each.id).collect()))
        .fed_by(system.emulsifiers.iter().flat_map(|(each, _)| each.lines()))
        .cured_by(cure(contents, &system, holds - oil))
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

/// More of what holds oil, less the oil it brings itself. In a gel of liquid crystals more of the true emulsifier where it is
/// what lacks, else more of the fatty alcohol with what emulsifier comes with it: it stays one.
fn cure(contents: &Contents<'_>, system: &System<'_, '_>, now: f64) -> Option<Cure> {
    let gel = system.is_gel_network() && system.fatty_alcohol() <= system.total * MOST_BUILDERS;
    let builds = |each: &Present<'_>| gel && system.builders.iter().any(|builder| builder.id == each.id);
    let oils = contents.present.iter().filter(|each| each.is_oil() && !builds(each)).map(|each| (each.id, -1.0));
    let mut weights: Vec<(ConstituentId, f64)> = oils.collect();
    if gel {
        weights.extend(system.builders.iter().map(|each| (each.id, Work::Lamellar.holds())));
        return raise(contents, &weights, now, 0.0);
    }
    weights.extend(system.emulsifiers.iter().map(|(each, work)| (each.id, work.holds())));
    let now: f64 = weights.iter().map(|(id, weight)| contents.percent_of(*id) * weight).sum();
    raise(contents, &weights, now, 0.0)
}

/// A little essential oil in water with too little solubiliser.
fn check_scent(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let scent = contents.oil;
    if contents.water < LITTLE_WATER || scent <= TRACE || !is_only_scent(contents) || is_strong_alcohol(contents) {
        return;
    }
    let solubilisers = contents.present.iter().filter(|each| each.percent > 0.0 && work_of(each).is_some());
    let weights: Vec<(ConstituentId, f64)> = solubilisers.map(|each| (each.id, 1.0)).collect();
    let now: f64 = weights.iter().map(|(id, _)| contents.percent_of(*id)).sum();
    let wanted = scent * SOLUBILISER_TO_SCENT;
    if weights.is_empty() || now >= wanted - LAST_DIGITS {
        return;
    }
    found.push(
        Finding::new(CODE, Severity::Note, "scent")
            .with("emulsifier", Value::Percent(now))
            .with("oil", Value::Percent(scent))
            .with("holds", Value::Percent(now / SOLUBILISER_TO_SCENT))
            .with("substances", Value::Substances(weights.iter().map(|(id, _)| *id).collect()))
            .fed_by(weights.iter().filter_map(|(id, _)| contents.find(*id)).flat_map(Present::lines))
            .cured_by(raise(contents, &weights, now, wanted))
            .cite([Citation::COMMON_PRACTICE]),
    );
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
            [("Helianthus Annuus Seed Oil", "20"), ("Cetearyl Olivate", "3")],
            [("Helianthus Annuus Seed Oil", "20"), ("Sodium Stearoyl Glutamate", "1")],
            [("Helianthus Annuus Seed Oil", "20"), ("Polyacrylate Crosspolymer-6", "0.3")],
        ] {
            assert!(!codes(&bench.check(&bench.water_with(&sound))).contains(&super::CODE), "{sound:?}");
        }
    }

    #[test]
    fn a_little_essential_oil_asks_for_twice_as_much_solubiliser() {
        let bench = Bench::new();
        let formula = bench.water_with(&[("Lavandula Angustifolia Oil", "0.5"), ("Polysorbate 20", "0.5")]);
        bench.every_cure_cures(&formula, super::CODE);
        let sound = bench.water_with(&[("Lavandula Angustifolia Oil", "0.5"), ("Polysorbate 20", "1")]);
        assert!(!codes(&bench.check(&sound)).contains(&super::CODE));
    }

    #[test]
    fn fatty_alcohol_counts_in_a_gel_of_liquid_crystals() {
        let bench = Bench::new();
        let wax = [("Helianthus Annuus Seed Oil", "20"), ("Polysorbate 60", "1.25"), ("Cetearyl Alcohol", "3.75")];
        assert!(!codes(&bench.check(&bench.water_with(&wax))).contains(&super::CODE));
        let without = [("Helianthus Annuus Seed Oil", "20"), ("Polysorbate 60", "1.25")];
        assert!(codes(&bench.check(&bench.water_with(&without))).contains(&super::CODE));
        // Fatty alcohol with a trace of emulsifier holds nothing.
        let trace = [("Helianthus Annuus Seed Oil", "20"), ("Polysorbate 60", "0.1"), ("Cetearyl Alcohol", "6")];
        bench.every_cure_cures(&bench.water_with(&trace), super::CODE);
    }
}
