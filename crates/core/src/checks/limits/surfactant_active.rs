//! Cleansing surfactant in all, as active matter: what solutions bring counts without their water.
//!
//! Common practice: up to a quarter in a liquid that is rinsed off (bars and powders hold more, so only noted), and hardly any
//! in what stays on: more than two percent dries and irritates, a caution. Cured by less of them.

use super::naming;
use crate::checks::contents::{Contents, Present};
use crate::checks::cure::{LAST_DIGITS, lower};
use crate::checks::finding::{Finding, Severity, Value};
use crate::material::ConstituentId;
use crate::source::Citation;
use stillroom_terms::Class;

pub(super) const CODE: &str = "limits.surfactant-active";

/// Most that is usual in a liquid cleanser, in percent.
const RINSED_OFF: f64 = 25.0;
/// Most that is usual where it stays on, in percent.
const LEFT_ON: f64 = 2.0;
/// What has less balance than this gives pearl, not foam.
const PEARL: f64 = 3.0;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let foams = |each: &&Present<'_>| {
        let pearl = each.facts.hlb.is_some_and(|hlb| hlb.value < PEARL);
        each.percent > 0.0 && each.class == Class::Surfactant && !pearl
    };
    let total: f64 = contents.present.iter().filter(foams).map(|each| each.percent).sum();
    let most = contents.by_purpose(LEFT_ON, RINSED_OFF);
    if total <= most + LAST_DIGITS {
        return;
    }
    let surfactants: Vec<&Present<'_>> = contents.present.iter().filter(foams).collect();
    let weights: Vec<(ConstituentId, f64)> = surfactants.iter().map(|each| (each.id, 1.0)).collect();
    let severity = contents.by_purpose(Severity::Caution, Severity::Note);
    found.push(
        naming(CODE, severity, &surfactants, [Citation::COMMON_PRACTICE])
            .with("limit", Value::Percent(most))
            .with("use", Value::Word(contents.by_purpose("use.leave-on", "use.rinse-off")))
            .cured_by(lower(contents, &weights, total, most)),
    );
}

#[cfg(test)]
mod tests {
    use crate::Purpose;
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Severity;

    #[test]
    fn active_matter_is_summed_and_held_against_the_use() {
        let bench = Bench::new();
        let lines = [("Sodium Laureth Sulfate", "14"), ("Cocamidopropyl Betaine", "6")];
        let mut formula = bench.water_with(&lines);
        formula.purpose = Purpose::RinseOff;
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
        formula.purpose = Purpose::LeaveOn;
        assert_eq!(find(&bench.check(&formula), super::CODE).severity, Severity::Caution);
        bench.every_cure_cures(&formula, super::CODE);
    }
}
