//! Microbes that what acts in the jar holds weakly or not: a preservative that stops bacteria may let moulds through, and the
//! other way round.
//!
//! A caution where a kind is hardly held at all, or Gram-negative bacteria are held weakly: they are the ones that hurt. A
//! note where coverage is only thin, with a challenge test advised. Cured by a preservative that closes the gap.

use super::acting::{HELD, WEAKLY};
use super::missing::{explain, is_missing};
use super::{Acting, CHALLENGE_TEST, acting, asks_for_one, below, closing_gaps, is_serious, sum};
use crate::checks::contents::Contents;
use crate::checks::cure::add;
use crate::checks::facts::Microbe;
use crate::checks::finding::{Finding, Severity, Value};
use stillroom_terms::PhaseKind;

pub(super) const CODE: &str = "preservation.gap";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let acting = acting(contents);
    let scores = sum(&acting);
    // Without any preservative the finding is that there is none.
    if !asks_for_one(contents) || is_missing(contents, &acting) {
        return;
    }
    let short = below(contents, scores, HELD);
    if short.is_empty() {
        return;
    }
    let hardly = below(contents, scores, WEAKLY);
    let serious = is_serious(contents, scores);
    let counted: Vec<Acting<'_>> =
        acting.into_iter().filter(|each| each.scores.iter().any(|score| *score > 0.0)).collect();
    let cure = closing_gaps(contents, scores).and_then(|new| add(contents, &new, PhaseKind::CoolDown));
    let names = counted.iter().map(|each| each.present.id).collect();
    let mut finding = Finding::new(CODE, if serious { Severity::Caution } else { Severity::Note }, "formula")
        .with("microbes", Value::Words(short.into_iter().map(Microbe::word).collect()))
        .with("substances", Value::Substances(names))
        .with("how", Value::Word(if hardly.is_empty() { "held.weakly" } else { "held.hardly" }))
        .cured_by(cure);
    if let Some(ph) = contents.ph() {
        finding = finding.with("ph", Value::Ph(ph.value)).with("known", Value::Word(ph.word()));
    }
    found.push(explain(finding, &counted).cite([CHALLENGE_TEST]));
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::{Severity, Value};

    #[test]
    fn what_is_held_weakly_is_a_note_and_what_is_not_a_caution() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Phenoxyethanol", "0.9")]);
        formula.target_ph = Some(bench.ph("5.5"));
        let findings = bench.check(&formula);
        let gap = find(&findings, super::CODE);
        assert_eq!(gap.value("microbes"), Some(&Value::Words(vec!["microbe.yeast", "microbe.mould"])));
        assert_eq!(gap.severity, Severity::Note);
        bench.every_cure_cures(&formula, super::CODE);
        let mut covered = bench.water_with(&[("Phenoxyethanol", "0.9"), ("Potassium Sorbate", "0.3")]);
        covered.target_ph = Some(bench.ph("5.0"));
        assert!(!codes(&bench.check(&covered)).contains(&super::CODE));
        let mut sorbate = bench.water_with(&[("Potassium Sorbate", "0.3")]);
        sorbate.target_ph = Some(bench.ph("4.6"));
        assert_eq!(find(&bench.check(&sorbate), super::CODE).severity, Severity::Caution);
    }

    #[test]
    fn what_acts_counts_and_not_what_is_in() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Phenoxyethanol", "0.9"), ("Potassium Sorbate", "0.3")]);
        formula.target_ph = Some(bench.ph("7.5"));
        assert!(codes(&bench.check(&formula)).contains(&super::CODE));
    }
}
