//! Two substances that undo each other: a positive charge meets a negative one and both precipitate, formaldehyde is taken up
//! by amines, iron turns acids brown, benzoate and ascorbic acid can make
//! traces of benzene. Cured, where it is the preservative's doing, by another preservative.

use super::replace;
use crate::checks::contents::{Contents, Present};
use crate::checks::facts::{Charge, Trait};
use crate::checks::finding::{Finding, Severity, Value, subject_of};
use crate::source::Citation;

pub(super) const CODE: &str = "preservation.incompatible";

/// What a pair is made of, how serious it is and what happens.
struct Pair {
    first: fn(&Present<'_>) -> Option<Citation>,
    second: fn(&Present<'_>) -> Option<Citation>,
    severity: Severity,
    what: &'static str,
}

const PAIRS: [Pair; 4] = [
    Pair {
        first: |each| each.facts.has(Trait::CationicActive).filter(|_| !is_meant_to_meet(each)),
        second: |each| each.facts.charge.filter(|charge| charge.value == Charge::Anionic).map(|charge| charge.citation),
        severity: Severity::Caution,
        what: "pair.charges",
    },
    Pair {
        first: |each| each.facts.has(Trait::FormaldehydeReleaser),
        second: |each| each.facts.has(Trait::TakesFormaldehyde),
        severity: Severity::Caution,
        what: "pair.formaldehyde",
    },
    Pair {
        first: |each| each.facts.has(Trait::Benzoate),
        second: |each| each.facts.has(Trait::Ascorbate),
        severity: Severity::Caution,
        what: "pair.benzene",
    },
    Pair {
        first: |each| each.facts.has(Trait::IronSensitive),
        second: |each| each.facts.has(Trait::Iron),
        severity: Severity::Caution,
        what: "pair.iron",
    },
];

/// Conditioning polymers settle on skin and hair together with cleansing surfactants: that is what they are for.
fn is_meant_to_meet(each: &Present<'_>) -> bool {
    each.facts.has(Trait::ConditioningPolymer).is_some()
}

/// Less than this, in percent, does no harm.
const TRACE: f64 = 0.01;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    for pair in &PAIRS {
        let those = |which: fn(&Present<'_>) -> Option<Citation>| {
            contents
                .present
                .iter()
                .filter(|each| each.percent > TRACE)
                .filter_map(move |each| Some((each, which(each)?)))
        };
        for (first, citation) in those(pair.first) {
            let partners: Vec<_> = those(pair.second).filter(|(each, _)| each.id != first.id).collect();
            if partners.is_empty() {
                continue;
            }
            let cure = first.facts.preservative.is_some().then(|| replace(contents, first)).flatten();
            // A conditioning quaternary that clumps is no lost preservative.
            let lost = pair.what == "pair.charges" && first.facts.preservative.is_some_and(|each| each.carries);
            let lines = partners.iter().flat_map(|(each, _)| each.lines());
            found.push(
                Finding::new(CODE, pair.severity, format!("{} {}", pair.what, subject_of(first.id)))
                    .with("substance", Value::Substance(first.id))
                    .with("partners", Value::Substances(partners.iter().map(|(each, _)| each.id).collect()))
                    .with("what", Value::Word(if lost { "pair.charges-lost" } else { pair.what }))
                    .fed_by(first.lines().chain(lines))
                    .cured_by(cure)
                    .cite([citation])
                    .cite(partners.iter().map(|(_, citation)| *citation)),
            );
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};

    #[test]
    fn opposite_charges_are_found_and_cured_by_another_preservative() {
        let bench = Bench::new();
        let formula = bench.water_with(&[("Benzalkonium Chloride", "0.1"), ("Sodium Laureth Sulfate", "8")]);
        assert!(find(&bench.check(&formula), super::CODE).subject.starts_with("pair.charges"));
        bench.every_cure_cures(&formula, super::CODE);
        let alone = bench.water_with(&[("Benzalkonium Chloride", "0.1")]);
        assert!(!codes(&bench.check(&alone)).contains(&super::CODE));
    }

    #[test]
    fn amines_take_formaldehyde() {
        let bench = Bench::new();
        let formula = bench.water_with(&[("DMDM Hydantoin", "0.3"), ("Hydrolyzed Oats", "1")]);
        assert!(codes(&bench.check(&formula)).contains(&super::CODE));
    }
}
