//! The formula does not come to the pH that is aimed at: measured, or computed from what is in it.
//!
//! A measured pH that misses is a caution. A predicted one is said only where its whole band, with all that unknown
//! constituents may bring, lies clear of the target. It is a caution where something that sets the pH stands among the lines
//! and does not do it, or where the pH as it is written would hurt skin; where nothing sets the pH yet it is a note. Cured by
//! the amount that reaches the target.

use crate::checks::acidity::setting;
use crate::checks::contents::{Contents, Present};
use crate::checks::cure::Cure;
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};
use crate::checks::limits::aha_ph::ACTS;
use crate::checks::limits::skin_ph;
use crate::chemistry::ph::predict::Caveat;
use crate::composition::Makeups;
use crate::material::{ConstituentId, MaterialId};
use crate::source::Citation;

pub(super) const CODE: &str = "stability.ph-off-target";

/// What is aimed at may be off by so much.
const AIMED: f64 = 0.2;
/// What is measured may be off by so much.
const MEASURED: f64 = 0.1;
/// A prediction misses clearly if it misses by more than this, too: a choice of ours.
const CLEARLY: f64 = 0.3;
/// A constituent decides the pH if it moves it by this at least.
const DECIDES: f64 = 0.5;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(target) = contents.formula.target_ph.map(crate::Ph::to_physics) else { return };
    if contents.is_dry() {
        return;
    }
    match contents.formula.measured_ph {
        Some(measured) => found.extend(by_measure(contents, measured.to_physics(), target)),
        None => found.extend(by_prediction(contents, target)),
    }
}

fn by_measure(contents: &Contents<'_>, measured: f64, target: f64) -> Option<Finding> {
    // The last digits of a difference are none.
    if (measured - target).abs() <= AIMED + MEASURED + 1e-9 {
        return None;
    }
    Some(
        Finding::new(CODE, Severity::Caution, "formula")
            .with("ph", Value::Ph(measured))
            .with("known", Value::Word("ph.measured"))
            .with("target", Value::Ph(target))
            .with("direction", Value::Word(direction(measured, target)))
            .cured_by(reach(contents, measured, target)),
    )
}

fn by_prediction(contents: &Contents<'_>, target: f64) -> Option<Finding> {
    let prediction = contents.prediction().ok()?;
    let band = prediction.ph;
    if (band.low - target).max(target - band.high) <= AIMED + CLEARLY {
        return None;
    }
    let deciders = contents.deciders().ok()?;
    let decided: Vec<ConstituentId> =
        deciders.iter().filter(|each| each.moves.abs() >= DECIDES).take(3).map(|each| each.id).collect();
    let sets_it = contents.present.iter().any(|each| each.percent > 0.0 && each.sets_ph());
    let severity =
        if sets_it || skin_ph::hurts_throughout(contents, band) { Severity::Caution } else { Severity::Note };
    let present = |id: &ConstituentId| contents.find(*id);
    let mut finding = Finding::new(CODE, severity, "formula")
        .with("low", Value::Ph(band.low))
        .with("high", Value::Ph(band.high))
        .with("ph", Value::Ph(band.estimate))
        .with("known", Value::Word("ph.predicted"))
        .with("target", Value::Ph(target))
        .with("direction", Value::Word(direction(band.estimate, target)))
        .fed_by(decided.iter().filter_map(present).flat_map(Present::lines))
        .step(
            "work.ph-predicted",
            vec![
                ("ph", Value::Ph(band.estimate)),
                ("strength", Value::Number(prediction.equilibrium.ionic_strength)),
                ("capacity", Value::Number(prediction.equilibrium.capacity)),
            ],
        )
        .cured_by(reach(contents, band.estimate, target))
        .cite(decided.iter().filter_map(|id| present(id)?.facts.brings.as_ref()?.citation))
        .cite([DAVIES]);
    if !decided.is_empty() {
        finding = finding.with("decided", Value::Substances(decided));
    }
    for each in deciders.iter().filter(|each| each.moves.abs() >= DECIDES) {
        let values = vec![("substance", Value::Substance(each.id)), ("moves", Value::Number(each.moves))];
        finding = finding.step("work.ph-moves", values);
    }
    for each in contents.moves().unwrap_or_default().iter().take(3) {
        let values = vec![
            ("substance", Value::Substance(each.id)),
            ("low", Value::Ph(each.lowest)),
            ("high", Value::Ph(each.highest)),
        ];
        finding = finding.step("work.ph-unknown", values);
    }
    for caveat in &prediction.caveats {
        finding = match *caveat {
            Caveat::Cosolvent(share) => {
                finding.step("work.ph-cosolvent", vec![("share", Value::Percent(share * 100.0))])
            }
            Caveat::HardlyBuffered(_) => finding.step("work.ph-hardly-buffered", Vec::new()),
            Caveat::TooStrong(about) => finding.step("work.ph-too-strong", vec![("strength", Value::Number(about))]),
            Caveat::Calibrated => finding,
        };
    }
    Some(finding)
}

const DAVIES: Citation =
    Citation::recalled("Davies, Ion Association (1962): activity coefficients to an ionic strength of 0.5 mol/kg");

/// Which way the target lies.
fn direction(now: f64, target: f64) -> &'static str {
    if now > target { "ph.above" } else { "ph.below" }
}

/// The amount that reaches the target: of what sets the pH already, or else of what is in common use and not caustic.
fn reach(contents: &Contents<'_>, now: f64, target: f64) -> Option<Cure> {
    let mut makeups = Makeups::default();
    // A fruit acid is in for what it does on skin: nobody takes it out for the pH.
    let sets = |id: &ConstituentId| {
        let sets_only = |each: &Present<'_>| each.facts.has(Trait::AlphaHydroxyAcid).is_none();
        contents.find(*id).is_some_and(|each| each.sets_ph() && (sets_only(each) || each.percent < ACTS))
    };
    let mut lines: Vec<MaterialId> = Vec::new();
    for (share, material) in contents.evaluation.lines.iter().filter(|(share, _)| !share.quantum_satis) {
        let brought = contents.present.iter().filter(|each| each.lines().any(|line| line == share.line));
        if brought.clone().any(|each| sets(&each.id)) && brought.clone().all(|each| sets(&each.id) || is_water(each)) {
            lines.push(*material);
        }
    }
    let remedies = contents.knowledge.remedies();
    let other = if now > target { remedies.acid } else { remedies.base };
    lines.extend(other.and_then(|id| contents.knowledge.material_of(id)));
    lines.into_iter().find_map(|material| {
        let setting = setting::set(contents, &mut makeups, material, target).ok()?;
        let reached = setting.reached.ph.estimate;
        // Taking a line out altogether is another cure than setting it.
        if setting.percent.is_zero() || (reached - target).abs() > 0.1 {
            return None;
        }
        let values = vec![
            ("material", Value::Material(material)),
            ("to", Value::Exact(setting.percent)),
            ("ph", Value::Ph(target)),
        ];
        Some(Cure::of("cure.reach-ph", values, setting.changes))
    })
}

fn is_water(each: &Present<'_>) -> bool {
    each.class == stillroom_terms::Class::Water || each.facts.has(Trait::Insoluble).is_some()
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find, has};
    use crate::checks::finding::{Severity, Value};

    /// 0.4 % of sodium benzoate and 0.2 % of citric acid come to about pH 3.7 by the half-neutralised acids.
    #[test]
    fn an_acid_that_stands_among_the_lines_and_misses_is_a_caution_with_its_cure() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Citric Acid", "0.2")]);
        formula.target_ph = Some(bench.ph("5.0"));
        let findings = bench.check(&formula);
        let off = find(&findings, super::CODE);
        assert_eq!(off.severity, Severity::Caution);
        assert_eq!(off.value("direction"), Some(&Value::Word("ph.below")));
        let Some(Value::Substances(decided)) = off.value("decided") else { panic!("{off:#?}") };
        assert_eq!(decided[0], bench.constituent("Citric Acid"));
        bench.every_cure_cures(&formula, super::CODE);
        // Little enough of it and the target is reached.
        let mut formula = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Citric Acid", "0.05")]);
        formula.target_ph = Some(bench.ph("4.9"));
        assert!(!has(&bench.check(&formula), super::CODE, "formula"), "{:?}", codes(&bench.check(&formula)));
    }

    #[test]
    fn what_nobody_set_yet_is_a_note_and_what_would_sting_a_caution() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Glycerin", "3")]);
        formula.target_ph = Some(bench.ph("4.8"));
        assert_eq!(find(&bench.check(&formula), super::CODE).severity, Severity::Note);
        bench.every_cure_cures(&formula, super::CODE);
        let mut formula = bench.water_with(&[("Glycolic Acid", "5"), ("Phenoxyethanol", "0.9")]);
        formula.target_ph = Some(bench.ph("3.8"));
        assert_eq!(find(&bench.check(&formula), super::CODE).severity, Severity::Caution);
    }

    #[test]
    fn what_is_not_known_may_explain_it() {
        let bench = Bench::new();
        let mut formula =
            bench.water_with(&[("Sodium Benzoate", "0.4"), ("Citric Acid", "0.02"), ("Hydrolyzed Oats", "3")]);
        formula.target_ph = Some(bench.ph("4.8"));
        assert!(!has(&bench.check(&formula), super::CODE, "formula"));
    }

    #[test]
    fn a_measured_ph_that_misses_is_a_caution() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Citric Acid", "0.05")]);
        (formula.target_ph, formula.measured_ph) = (Some(bench.ph("5.0")), Some(bench.ph("6.4")));
        let findings = bench.check(&formula);
        let off = find(&findings, super::CODE);
        assert_eq!((off.severity, off.value("ph")), (Severity::Caution, Some(&Value::Ph(6.4))));
        bench.every_cure_cures(&formula, super::CODE);
        formula.measured_ph = Some(bench.ph("5.3"));
        assert!(!has(&bench.check(&formula), super::CODE, "formula"));
    }
}
