//! Microbes that nothing in the jar holds: a preservative that stops bacteria may let moulds through, and the other way
//! round. Cured by a preservative that closes the gap.

use super::{CHALLENGE_TEST, carriers, closing_gaps, covered, held, is_covered, spared, uncovered};
use crate::checks::contents::Contents;
use crate::checks::cure::add;
use crate::checks::facts::Microbe;
use crate::checks::finding::{Finding, Severity, Value};
use crate::formula::PhaseKind;

pub(super) const CODE: &str = "preservation.gap";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let covered = covered(contents);
    // Without any preservative the finding is that there is none.
    if spared(contents).is_some() || is_covered(covered) || carriers(contents).next().is_none() {
        return;
    }
    let counted = held(contents).filter(super::Held::counts);
    let (mut names, mut lines, mut sources) = (Vec::new(), Vec::new(), Vec::new());
    for held in counted {
        names.push(held.present.id);
        lines.extend(held.present.lines());
        sources.push(held.preservative.citation);
    }
    let cure = closing_gaps(contents, covered).and_then(|new| add(contents, &new, PhaseKind::CoolDown));
    let mut finding = Finding::new(CODE, Severity::Caution, "formula")
        .with("microbes", Value::Words(uncovered(covered).map(Microbe::word).collect()))
        .with("substances", Value::Substances(names))
        .fed_by(lines)
        .cured_by(cure)
        .cite(sources)
        .cite([CHALLENGE_TEST]);
    for held in held(contents).filter(super::Held::counts) {
        let words = held.preservative.spectrum.map(super::Strength::word);
        finding = finding.step(
            "work.spectrum",
            vec![
                ("substance", Value::Substance(held.present.id)),
                ("positive", Value::Word(words[0])),
                ("negative", Value::Word(words[1])),
                ("yeast", Value::Word(words[2])),
                ("mould", Value::Word(words[3])),
            ],
        );
    }
    found.push(finding);
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Value;

    #[test]
    fn what_nothing_holds_is_named() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Phenoxyethanol", "0.9")]);
        formula.target_ph = Some(bench.ph("5.5"));
        let findings = bench.check(&formula);
        let gap = find(&findings, super::CODE);
        assert_eq!(gap.value("microbes"), Some(&Value::Words(vec!["microbe.yeast", "microbe.mould"])));
        bench.every_cure_cures(&formula, super::CODE);
        let mut covered = bench.water_with(&[("Phenoxyethanol", "0.9"), ("Potassium Sorbate", "0.3")]);
        covered.target_ph = Some(bench.ph("5.0"));
        assert!(!codes(&bench.check(&covered)).contains(&super::CODE));
    }
}
