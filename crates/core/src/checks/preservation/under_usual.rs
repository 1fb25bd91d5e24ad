//! Less of a preservative than is known to work. Traces carried in by an extract or a blend are not meant to preserve and
//! are passed over.

use super::{held, spared};
use crate::checks::contents::Contents;
use crate::checks::cure::raise;
use crate::checks::finding::{Finding, Severity, Value};
use crate::material::Makeup;

pub(super) const CODE: &str = "preservation.under-usual";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if spared(contents).is_some() {
        return;
    }
    for held in held(contents).filter(|held| held.preservative.carries) {
        let Some(usual) = held.preservative.usual else { continue };
        let (id, percent) = (held.present.id, held.present.percent);
        if percent >= usual.value.low || !is_meant(contents, &held) {
            continue;
        }
        found.push(
            Finding::about(CODE, Severity::Caution, id)
                .with("present", Value::Percent(percent))
                .with("low", Value::Percent(usual.value.low))
                .with("high", Value::Percent(usual.value.high))
                .fed_by(held.present.lines())
                .cured_by(raise(contents, &[(id, 1.0)], percent, usual.value.low))
                .cite([usual.citation]),
        );
    }
}

/// Whether the maker put it in: it is weighed out as itself, or there is enough of it to count on.
fn is_meant(contents: &Contents<'_>, held: &super::Held<'_>) -> bool {
    held.counts()
        || held.present.lines().any(|line| {
            let material = contents.formula.line(line).and_then(|line| contents.material_of(line));
            material.is_some_and(|material| material.makeup == Makeup::Simple(held.present.id))
        })
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn less_than_is_known_to_work_is_a_caution() {
        let bench = Bench::new();
        bench.every_cure_cures(&bench.water_with(&[("Phenoxyethanol", "0.3")]), super::CODE);
        assert!(!codes(&bench.check(&bench.water_with(&[("Phenoxyethanol", "0.5")]))).contains(&super::CODE));
    }
}
