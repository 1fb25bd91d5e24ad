//! Too little of an acid preservative is undissociated at this pH: only that part passes into a cell and acts.
//!
//! Asked for is what published inhibitory concentrations say of the undissociated acid. Equation: share = 1 / (1 + 10^(pH -
//! pKa)), at the alkaline end of the pH. A note where others hold the product. Cured by a lower pH, or by more of it where the
//! limit allows.

use super::acting::{HELD, HENDERSON};
use super::{Acting, MARGIN, acting, asks_for_one, is_allowed, is_serious, meant, raise_preservative, sum};
use crate::checks::chart::{Axis, Chart, Mark};
use crate::checks::contents::{Contents, PhBand};
use crate::checks::cure::{Cure, Round, set_ph};
use crate::checks::facts::{Preservative, Strength};
use crate::checks::finding::{Finding, Severity, Value};
use crate::chemistry::dissociation::undissociated;

pub(super) const CODE: &str = "preservation.undissociated";

/// Lowest pH that a cure aims at: below it skin suffers.
const LOWEST_AIM: f64 = 4.0;

/// The best of what a preservative reaches against the kinds it is good for.
fn best(preservative: &Preservative, scores: [f64; 4]) -> f64 {
    let useful = preservative.spectrum.iter().zip(scores).filter(|(strength, _)| **strength >= Strength::Fair);
    useful.map(|(_, score)| score).fold(0.0, f64::max)
}

/// Whether it would do if only it were undissociated.
pub(super) fn fails_by_ph(contents: &Contents<'_>, each: &Acting<'_>) -> bool {
    let acid = each.acid.is_some_and(|acid| acid.steps.first().is_some_and(|pka| *pka < super::LATE_ACID));
    let at_best = || Acting::at(contents, each.present, each.preservative, Some(2.0)).undisturbed_scores;
    acid && best(each.preservative, each.undisturbed_scores) < HELD && best(each.preservative, at_best()) >= HELD
}

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(ph) = contents.ph() else { return };
    if !asks_for_one(contents) {
        return;
    }
    let held = !is_serious(contents, sum(&acting(contents)));
    for each in meant(contents).filter(|each| fails_by_ph(contents, each)) {
        let Some(acid) = each.acid else { continue };
        let pka = acid.steps.first().copied().unwrap_or(f64::NAN);
        let id = each.present.id;
        let mut finding = Finding::about(CODE, if held { Severity::Note } else { Severity::Caution }, id)
            .with("share", Value::Percent(each.losses.undissociated * 100.0))
            .with("ph", Value::Ph(ph.value))
            .with("known", Value::Word(ph.word()))
            .with("acts", Value::Percent(each.undisturbed))
            .with("reached", Value::Percent(best(each.preservative, each.undisturbed_scores) * 100.0))
            .fed_by(each.present.lines())
            .step(
                "work.undissociated",
                vec![
                    ("substance", Value::Substance(id)),
                    ("ph", Value::Ph(ph.high())),
                    ("pka", Value::Ph(pka)),
                    ("share", Value::Percent(each.losses.undissociated * 100.0)),
                ],
            )
            .cured_by(lower_ph(contents, &each, ph))
            .cured_by(more(contents, &each))
            .cite(each.citations())
            .cite([HENDERSON]);
        finding.chart = contents.charts.then(|| picture(&acid.steps, ph.value, each.preservative));
        found.push(finding);
    }
}

/// The highest pH at which enough of it acts, with a margin.
fn lower_ph(contents: &Contents<'_>, each: &Acting<'_>, ph: PhBand) -> Option<Cure> {
    let enough = |aim: f64| {
        let aimed = PhBand::aimed_at(aim);
        let scores = Acting::at(contents, each.present, each.preservative, Some(aimed.high())).undisturbed_scores;
        best(each.preservative, scores) >= HELD * MARGIN
    };
    let first = (ph.value * 10.0).floor() / 10.0;
    let aims = (0_u8..=100).map(|tenth| first - f64::from(tenth) / 10.0).take_while(|aim| *aim >= LOWEST_AIM);
    aims.into_iter().find(|aim| enough(*aim)).and_then(|aim| set_ph(aim, Round::Down))
}

fn more(contents: &Contents<'_>, each: &Acting<'_>) -> Option<Cure> {
    let reached = best(each.preservative, each.undisturbed_scores);
    let percent = each.present.percent;
    let wanted = percent * HELD * MARGIN / reached;
    let usual = each.preservative.usual.is_some_and(|usual| wanted <= usual.value.high);
    (usual && is_allowed(contents, each.present.id, wanted))
        .then(|| raise_preservative(contents, each, wanted))
        .flatten()
}

/// Share that is undissociated over the pH, with the window and this formula's point.
fn picture(steps: &[f64], ph: f64, preservative: &Preservative) -> Chart {
    let share = |ph: f64| undissociated(steps, ph) * 100.0;
    let curve = (8_u8..=40).map(|quarter| f64::from(quarter) / 4.0).map(|ph| (ph, share(ph))).collect();
    Chart {
        x: (Axis::Ph, 2.0, 10.0),
        y: Some((Axis::Undissociated, 0.0, 100.0)),
        curve,
        band: preservative.ph.map(|window| (window.value.low, window.value.high)),
        marks: vec![Mark { x: ph, y: Some(share(ph)), label: "mark.this-formula", value: Value::Ph(ph) }],
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Value;

    #[test]
    fn an_acid_at_too_high_a_ph_acts_too_little() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Phenoxyethanol", "0.9")]);
        formula.target_ph = Some(bench.ph("6.5"));
        let findings = bench.check(&formula);
        let Some(Value::Percent(share)) = find(&findings, super::CODE).value("share") else { panic!() };
        // 1 / (1 + 10^(6.5 + 0.2 - 4.2)): at the alkaline end of what is aimed at.
        assert!((share - 0.315).abs() < 0.001, "{share}");
        bench.every_cure_cures(&formula, super::CODE);
        formula.target_ph = Some(bench.ph("4.8"));
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
    }

    #[test]
    fn a_measured_ph_is_nearer_than_one_aimed_at() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Sodium Benzoate", "0.4")]);
        let share = |formula: &crate::Formula| match find(&bench.check(formula), super::CODE).value("share") {
            Some(Value::Percent(share)) => *share,
            _ => f64::NAN,
        };
        formula.target_ph = Some(bench.ph("6.5"));
        let aimed_at = share(&formula);
        formula.measured_ph = Some(bench.ph("6.5"));
        assert!(share(&formula) > aimed_at);
    }
}
