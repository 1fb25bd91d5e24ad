//! Oil and water with nothing that keeps them together: they part within minutes, and whoever takes the top gets the essential
//! oils undiluted.
//!
//! Gums and clays slow this down and do not prevent it: a stop with neither, a caution with one. A little essential oil needs
//! no emulsion, only a solubiliser; in strong alcohol it needs neither. Cured by the pair of common emulsifiers that meets what
//! the oil asks for, a fifth of the oil (common practice), or by four parts of solubiliser to one of essential oil (common
//! practice).

use super::{
    BY_MASS, ENOUGH_KNOWN, Kind, LITTLE_WATER, TRACE, is_only_scent, is_scent, is_strong_alcohol, required, work_of,
};
use crate::checks::contents::{Contents, Present};
use crate::checks::cure::{Cure, Round, add, weighable};
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};
use crate::chemistry::hlb::share_of_higher;
use crate::source::Citation;
use stillroom_terms::Class;
use stillroom_terms::PhaseKind;

pub(super) const CODE: &str = "emulsion.no-emulsifier";

/// Gum or clay, in percent, that slows creaming.
const SLOWS: f64 = 0.2;
/// Emulsifier to oil, and solubiliser to essential oil: common practice.
const EMULSIFIER_TO_OIL: f64 = 0.2;
const SOLUBILISER_TO_SCENT: f64 = 4.0;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let oil = contents.oil;
    if contents.water < LITTLE_WATER || oil <= TRACE {
        return;
    }
    let emulsified = contents.present.iter().any(|each| each.percent > 0.0 && work_of(each).is_some());
    let base = contents.present.iter().any(super::makes_soap);
    let soap = base && contents.present.iter().any(|each| each.class == Class::FattyAcid && each.percent > 0.0);
    if emulsified || soap || contents.with(Trait::WaterInOilEmulsifier).next().is_some() {
        return;
    }
    let oils = || contents.present.iter().filter(|each| each.is_oil() && each.percent > 0.0);
    let only_scent = is_only_scent(contents);
    if only_scent && is_strong_alcohol(contents) {
        return;
    }
    let slowing: Vec<&Present<'_>> =
        contents.present.iter().filter(|each| each.percent >= SLOWS && slows(each)).collect();
    let severity = if only_scent || !slowing.is_empty() { Severity::Caution } else { Severity::Stop };
    let subject = if only_scent { "scent" } else { "oil" };
    let cure = if only_scent { solubilise(contents) } else { emulsify(contents) };
    found.push(
        Finding::new(CODE, severity, subject)
            .with("oil", Value::Percent(oil))
            .with("water", Value::Percent(contents.water))
            .with("oils", Value::Substances(oils().map(|each| each.id).collect()))
            .with("stabilisers", Value::Substances(slowing.iter().map(|each| each.id).collect()))
            .with("what", Value::Word(if only_scent { "oil.scent" } else { "oil.oil" }))
            .fed_by(oils().flat_map(Present::lines))
            .cured_by(cure)
            .cite([Citation::COMMON_PRACTICE, BY_MASS]),
    );
}

fn slows(each: &Present<'_>) -> bool {
    each.class == Class::Thickener || each.facts.has(Trait::Insoluble).is_some()
}

/// Solubiliser into the phase of the essential oil.
fn solubilise(contents: &Contents<'_>) -> Option<Cure> {
    let solubiliser = contents.knowledge.remedies().solubiliser?;
    let percent = weighable(contents.oil * SOLUBILISER_TO_SCENT, Round::Up)?;
    let line = contents.present.iter().find(|each| is_scent(each)).and_then(|each| each.lines().next());
    let kind = line.and_then(|line| contents.phase_of(line)).map_or(PhaseKind::RoomTemperature, |phase| phase.kind);
    add(contents, &[(solubiliser, percent)], kind)
}

/// The pair of common emulsifiers that meets what the oil asks for; where that is not known, a lamellar emulsifier.
fn emulsify(contents: &Contents<'_>) -> Option<Cure> {
    let remedies = contents.knowledge.remedies();
    let together = (contents.oil * EMULSIFIER_TO_OIL).max(0.5);
    let wanted = required(contents, Kind::OilInWater).filter(|required| required.known >= ENOUGH_KNOWN);
    let Some(wanted) = wanted else {
        let percent = weighable(together, Round::Up)?;
        return add(contents, &[(remedies.lamellar_emulsifier?, percent)], PhaseKind::HeatedOil);
    };
    let balance = |place: usize| {
        let id = *remedies.emulsifiers.get(place)?;
        Some((id, contents.knowledge.facts(id)?.hlb?.value))
    };
    let (first, second) = (balance(0)?, balance(1)?);
    let (higher, lower) = if first.1 >= second.1 { (first, second) } else { (second, first) };
    let share = share_of_higher(wanted.balance, higher.1, lower.1);
    // Beyond the pair the nearer of the two comes closest.
    let share = share.unwrap_or(if wanted.balance > higher.1 { 1.0 } else { 0.0 });
    let parts = [(higher.0, share), (lower.0, 1.0 - share)];
    let parts = parts.into_iter().filter(|(_, share)| *share > 0.02);
    let parts: Option<Vec<_>> = parts.map(|(id, share)| Some((id, weighable(together * share, Round::Up)?))).collect();
    add(contents, &parts?, PhaseKind::HeatedOil)
}

#[cfg(test)]
mod tests {
    use crate::PhaseKind::{CoolDown, HeatedOil, HeatedWater};
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Severity;

    #[test]
    fn oil_and_water_alone_are_a_stop_with_a_pair_that_meets_the_oil() {
        let bench = Bench::new();
        let oil = [("Helianthus Annuus Seed Oil", "20")];
        let formula = bench.formula(&[(HeatedWater, &[("Aqua", "qs")]), (HeatedOil, &oil)]);
        let findings = bench.check(&formula);
        assert_eq!(find(&findings, super::CODE).severity, Severity::Stop);
        bench.every_cure_cures(&formula, super::CODE);
        let cured = bench.check(&bench.cure(&formula, &find(&findings, super::CODE).cures[0]));
        assert!(!codes(&cured).contains(&"emulsion.hlb-off"), "{cured:#?}");
        assert!(!codes(&cured).contains(&"emulsion.emulsifier-short"));
    }

    #[test]
    fn an_oil_that_states_nothing_is_given_an_emulsifier_that_asks_for_nothing() {
        let bench = Bench::new();
        bench.every_cure_cures(&bench.water_with(&[("Argania Spinosa Kernel Oil", "15")]), super::CODE);
    }

    #[test]
    fn a_gum_slows_it_and_does_not_prevent_it() {
        let bench = Bench::new();
        let formula = bench.water_with(&[("Helianthus Annuus Seed Oil", "5"), ("Xanthan Gum", "0.5")]);
        assert_eq!(find(&bench.check(&formula), super::CODE).severity, Severity::Caution);
    }

    #[test]
    fn a_little_essential_oil_wants_a_solubiliser_and_alcohol_spares_it() {
        let bench = Bench::new();
        let formula =
            bench.formula(&[(HeatedWater, &[("Aqua", "qs")]), (CoolDown, &[("Lavandula Angustifolia Oil", "0.5")])]);
        let findings = bench.check(&formula);
        assert_eq!(
            (find(&findings, super::CODE).severity, find(&findings, super::CODE).cures.len()),
            (Severity::Caution, 1)
        );
        bench.every_cure_cures(&formula, super::CODE);
        for sound in [
            bench.water_with(&[("Lavandula Angustifolia Oil", "0.02")]),
            bench.water_with(&[("Lavandula Angustifolia Oil", "1"), ("Alcohol", "70")]),
            bench.water_with(&[("Helianthus Annuus Seed Oil", "5"), ("Polysorbate 60", "1")]),
            bench.water_with(&[("Stearic Acid", "10"), ("Triethanolamine", "1")]),
            bench.oil_with(&[("Cera Alba", "10")]),
        ] {
            assert!(!codes(&bench.check(&sound)).contains(&super::CODE));
        }
    }
}
