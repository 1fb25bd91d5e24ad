//! A preservative that works by releasing formaldehyde: people who are sensitised react to it, and above a threshold the label
//! has to say so.

use super::acting;
use crate::checks::contents::Contents;
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "preservation.releases-formaldehyde";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    for held in acting(contents) {
        let Some(citation) = held.present.facts.has(Trait::FormaldehydeReleaser) else { continue };
        found.push(
            Finding::about(CODE, Severity::Note, held.present.id)
                .with("present", Value::Percent(held.present.percent))
                .fed_by(held.present.lines())
                .cite([citation]),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn a_releaser_is_named() {
        let bench = Bench::new();
        assert!(codes(&bench.check(&bench.water_with(&[("DMDM Hydantoin", "0.3")]))).contains(&super::CODE));
        assert!(!codes(&bench.check(&bench.water_with(&[("Phenoxyethanol", "0.9")]))).contains(&super::CODE));
    }
}
