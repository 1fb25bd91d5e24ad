//! Preservatives of which nothing is known: what the maker described, or what the tables lack. They are not counted.

use crate::checks::contents::Contents;
use crate::checks::finding::{Finding, Severity, Value};
use stillroom_terms::Class;

pub(super) const CODE: &str = "preservation.no-data";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let unknown = contents
        .present
        .iter()
        .filter(|each| each.class == Class::Preservative && each.percent > 0.0 && each.facts.preservative.is_none());
    let (names, lines): (Vec<_>, Vec<Vec<_>>) = unknown.map(|each| (each.id, each.lines().collect())).unzip();
    if !names.is_empty() {
        found.push(
            Finding::new(CODE, Severity::Note, "formula")
                .with("substances", Value::Substances(names))
                .fed_by(lines.into_iter().flatten()),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn a_preservative_without_data_is_named() {
        let bench = Bench::new();
        assert!(codes(&bench.check(&bench.water_with(&[("Sorbic Acid", "0.1")]))).contains(&super::CODE));
    }
}
