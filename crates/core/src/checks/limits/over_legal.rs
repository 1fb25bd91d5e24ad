//! More of a restricted substance than the law or advice allows for this use, over all lines and inside essential oils.
//!
//! A law that is broken with what such oils typically hold is a stop; one that may be broken with the most they hold, and
//! advice, is a caution; advice that only the most would exceed is a note. Zero means that it is not allowed. Vitamin A, fruit
//! acids and pressed citrus oils have findings of their own. Cured by less of it.

use super::{all_have, count, describe, is_of_fruit_acid, keep, tolerated};
use crate::checks::contents::{Contents, Present};
use crate::checks::facts::{Authority, Limit, Trait};
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "limits.over-legal";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    for limit in contents.touched.iter().copied().filter(|limit| !limit.preservative) {
        let Some(bound) = contents.bound_of(limit) else { continue };
        let counted = count(contents, limit);
        let most_allowed = tolerated(limit, bound);
        if counted.most <= most_allowed
            || is_of_fruit_acid(contents, limit)
            || all_have(contents, limit, Trait::Retinoid)
            || all_have(contents, limit, Trait::Phototoxic)
            || is_of_pressed_oils(contents, limit)
        {
            continue;
        }
        let surely = counted.typical > most_allowed;
        let severity = match (limit.authority, surely && limit.from.is_empty()) {
            (Authority::Law, true) => Severity::Stop,
            (Authority::Law, false) | (Authority::Advice, true) => Severity::Caution,
            (Authority::Advice, false) => Severity::Note,
        };
        let finding = Finding::new(CODE, severity, limit.subject);
        let mut finding = describe(finding, contents, limit, counted, bound);
        if !limit.from.is_empty() {
            finding = finding.with("from", Value::Name(limit.from));
        }
        if bound <= 0.0 {
            finding = finding.with("banned", Value::Word("limit.none"));
        }
        if !surely {
            finding = finding.with("most", Value::Percent(counted.most));
        }
        found.push(finding.cured_by(keep(contents, limit, counted, bound)));
    }
}

/// Whether what counts, by advice, is only what pressed citrus oils hold.
fn is_of_pressed_oils(contents: &Contents<'_>, limit: &Limit) -> bool {
    let holds = |oil: &&Present<'_>| oil.facts.inside.iter().any(|inside| limit.inside_oils.contains(&inside.name));
    limit.authority == Authority::Advice
        && limit.members.is_empty()
        && contents.present.iter().filter(holds).all(|oil| oil.facts.has(Trait::Phototoxic).is_some())
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::{Severity, Value};

    #[test]
    fn more_than_the_law_allows_is_a_stop() {
        let bench = Bench::new();
        let formula = bench.water_with(&[("Kojic Acid", "1.2")]);
        assert_eq!(find(&bench.check(&formula), super::CODE).severity, Severity::Stop);
        bench.every_cure_cures(&formula, super::CODE);
        assert!(!codes(&bench.check(&bench.water_with(&[("Kojic Acid", "1")]))).contains(&super::CODE));
    }

    #[test]
    fn what_an_essential_oil_holds_counts() {
        let bench = Bench::new();
        // 0.1 % of an oil that is nearly all methyl salicylate, of which 0.06 % is allowed.
        let formula = bench.oil_with(&[("Gaultheria Procumbens Leaf Oil", "0.1")]);
        let findings = bench.check(&formula);
        let over = find(&findings, super::CODE);
        assert_eq!((over.severity, over.subject.as_str()), (Severity::Stop, "Methyl Salicylate"));
        let Some(Value::Percent(present)) = over.value("present") else { panic!() };
        assert!((present - 0.0985).abs() < 1e-9);
        bench.every_cure_cures(&formula, super::CODE);
        // 0.0605 %: typically within the limit, at most over it.
        let perhaps = bench.oil_with(&[("Gaultheria Procumbens Leaf Oil", "0.0605")]);
        assert_eq!(find(&bench.check(&perhaps), super::CODE).severity, Severity::Caution);
        bench.every_cure_cures(&perhaps, super::CODE);
        let within = bench.oil_with(&[("Gaultheria Procumbens Leaf Oil", "0.06")]);
        assert!(!codes(&bench.check(&within)).contains(&super::CODE));
    }
}
