//! Two substances that undo each other whether or not one of them preserves: copper burns ascorbic acid, a carbonate foams
//! with acid in water, calcium sets alginate to lumps. Pairs with a preservative are in its family.
//!
//! A carbonate and an acid that meet dry are meant to meet in the tub. Nothing to cure but leaving one of them out.

use super::TRACE;
use crate::checks::contents::{Contents, Present};
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value, subject_of};
use crate::source::Citation;

pub(super) const CODE: &str = "stability.pair";

/// Both of a carbonate and an acid, in percent, from which gas is seen.
const FOAMS: f64 = 0.2;

/// What a pair is made of, and from how much of each it matters.
struct Pair {
    first: Trait,
    second: Trait,
    least: f64,
    what: &'static str,
    /// Whether it is named after its first substance rather than the formula.
    by_substance: bool,
}

const PAIRS: [Pair; 3] = [
    Pair { first: Trait::Copper, second: Trait::Ascorbate, least: 0.001, what: "pair.copper", by_substance: true },
    Pair {
        first: Trait::Carbonate,
        second: Trait::AcidOfCarbonate,
        least: FOAMS,
        what: "pair.gas",
        by_substance: false,
    },
    Pair {
        first: Trait::SetByCalcium,
        second: Trait::Calcium,
        least: TRACE,
        what: "pair.alginate",
        by_substance: true,
    },
];

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if contents.is_dry() {
        return;
    }
    for pair in &PAIRS {
        let those = |wanted: Trait| -> Vec<&Present<'_>> {
            contents.with(wanted).filter(|each| each.percent >= pair.least && each.dissolving > 0.0).collect()
        };
        let (firsts, seconds) = (those(pair.first), those(pair.second));
        let Some(first) = firsts.first().filter(|_| !seconds.is_empty()) else { continue };
        let about = if pair.by_substance { subject_of(first.id) } else { "formula".to_owned() };
        found.push(
            Finding::new(CODE, Severity::Caution, format!("{} {about}", pair.what))
                .with("substances", Value::Substances(firsts.iter().map(|each| each.id).collect()))
                .with("partners", Value::Substances(seconds.iter().map(|each| each.id).collect()))
                .with("what", Value::Word(pair.what))
                .fed_by(firsts.iter().chain(&seconds).flat_map(|each| each.lines()))
                .cite(firsts.iter().filter_map(|each| each.facts.has(pair.first)))
                .cite([Citation::COMMON_PRACTICE]),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, has};

    #[test]
    fn a_carbonate_foams_with_acid_in_water_and_not_dry() {
        let bench = Bench::new();
        let lines = [("Sodium Bicarbonate", "2"), ("Citric Acid", "2")];
        assert!(has(&bench.check(&bench.water_with(&lines)), super::CODE, "pair.gas formula"));
        assert!(!codes(&bench.check(&bench.oil_with(&lines))).contains(&super::CODE));
        assert!(!codes(&bench.check(&bench.water_with(&lines[..1]))).contains(&super::CODE));
    }
}
