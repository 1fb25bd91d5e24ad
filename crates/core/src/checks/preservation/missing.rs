//! Water that microbes can grow in, and nothing that acts enough to keep them from it.
//!
//! What counts is what acts: benzoate at pH 8 is no preservative, nor is a trace carried in, nor an antioxidant. Cured by
//! preservatives that together hold bacteria, yeasts and moulds at this pH.

use super::acting::HELD;
use super::{
    Acting, CHALLENGE_TEST, ISO_29621, acting, asks_for_one, below_of, closing_gaps, needs_at_either_end, sum,
    water_activity,
};
use crate::checks::contents::Contents;
use crate::checks::cure::add;
use crate::checks::facts::Microbe;
use crate::checks::finding::{Finding, Severity, Value};
use crate::extract::keeping::Spectrum;
use stillroom_terms::PhaseKind;

pub(super) const CODE: &str = "preservation.missing";

/// Whether no kind of microbe is held of those that have to be, wherever the pH may be: what only yeasts and moulds could
/// grow in at one end of it is not kept by holding bacteria at the other.
pub(super) fn is_missing(contents: &Contents<'_>, acting: &[Acting<'_>]) -> bool {
    let is_missing = |needs: Spectrum| {
        let asked = below_of(needs, contents, [0.0; 4], HELD);
        below_of(needs, contents, sum(acting), HELD).len() == asked.len()
    };
    let asking = |needs: &Spectrum| matches!(needs, Spectrum::YeastsAndMoulds | Spectrum::BacteriaYeastsAndMoulds);
    needs_at_either_end(contents).into_iter().filter(asking).any(is_missing)
}

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let acting = acting(contents);
    if !asks_for_one(contents) || !is_missing(contents, &acting) {
        return;
    }
    let activity = water_activity(contents);
    let new = closing_gaps(contents, sum(&acting));
    let cure = new.and_then(|new| add(contents, &new, PhaseKind::CoolDown));
    let mut finding = Finding::new(CODE, Severity::Stop, "formula")
        .with("water", Value::Percent(contents.water))
        .with("activity", Value::Number(activity.high))
        .step(
            "work.water-activity",
            vec![("water", Value::Percent(contents.water)), ("activity", Value::Number(activity.high))],
        )
        .cured_by(cure);
    let weak: Vec<&Acting<'_>> = acting.iter().filter(|each| each.preservative.carries && each.is_meant()).collect();
    if !weak.is_empty() {
        finding = finding.with("weak", Value::Substances(weak.iter().map(|each| each.present.id).collect()));
        if let Some(ph) = contents.ph() {
            finding = finding.with("ph", Value::Ph(ph.value)).with("known", Value::Word(ph.word()));
        }
    }
    finding = explain(finding, &acting).cite([ISO_29621, CHALLENGE_TEST]);
    found.push(finding);
}

/// What of each acts, and how much of what is enough that is.
pub(super) fn explain(mut finding: Finding, acting: &[Acting<'_>]) -> Finding {
    for each in acting {
        let losses = each.losses;
        finding = finding
            .fed_by(each.present.lines())
            .step(
                "work.acts",
                vec![
                    ("substance", Value::Substance(each.present.id)),
                    ("present", Value::Percent(each.present.percent * each.makes)),
                    ("share", Value::Percent(losses.undissociated * 100.0)),
                    ("ratio", Value::Number(losses.oil_to_water)),
                    ("coefficient", Value::Number(losses.coefficient)),
                    ("held", Value::Number(1.0 + losses.binding * losses.surfactant)),
                    ("acts", Value::Percent(each.acts)),
                ],
            )
            .cite(each.citations());
        let [positive, negative, yeast, mould] = each.scores.map(|score| Value::Percent(score * 100.0));
        finding = finding.step(
            "work.spectrum",
            vec![
                ("substance", Value::Substance(each.present.id)),
                ("positive", positive),
                ("negative", negative),
                ("yeast", yeast),
                ("mould", mould),
            ],
        );
    }
    debug_assert_eq!(Microbe::ALL.len(), 4, "the sentence names four kinds");
    finding
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Severity;

    #[test]
    fn water_without_a_preservative_is_a_stop() {
        let bench = Bench::new();
        bench.every_cure_cures(&bench.water_with(&[("Glycerin", "5")]), super::CODE);
        bench.every_cure_cures(&bench.water_with(&[("Tocopherol", "1")]), super::CODE);
        bench.every_cure_cures(&bench.water_with(&[("Phenoxyethanol", "0.05")]), super::CODE);
    }

    #[test]
    fn an_acid_that_does_not_act_is_none() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Sodium Benzoate", "0.5")]);
        formula.target_ph = Some(bench.ph("8"));
        assert_eq!(find(&bench.check(&formula), super::CODE).severity, Severity::Stop);
        formula.target_ph = Some(bench.ph("4.5"));
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
    }

    #[test]
    fn what_is_preserved_dry_or_bound_is_not() {
        let bench = Bench::new();
        for formula in [
            bench.water_with(&[("Phenoxyethanol", "0.9")]),
            bench.oil_with(&[("Tocopherol", "1")]),
            bench.water_with(&[("Glycerin", "70")]),
            bench.water_with(&[("Alcohol", "30")]),
        ] {
            assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
        }
    }

    #[test]
    fn an_acid_product_still_grows_yeasts_and_moulds() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Glycerin", "5")]);
        formula.target_ph = Some(bench.ph("2.6"));
        assert!(codes(&bench.check(&formula)).contains(&super::CODE));
    }
}
