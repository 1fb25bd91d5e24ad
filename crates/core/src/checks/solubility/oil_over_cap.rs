//! More of a substance than the oil dissolves in a product without water: it falls out of the balm or the oil.
//!
//! Cured by less of it, or by saying that it is meant to stay solid.

use crate::checks::contents::Contents;
use crate::checks::cure::lower;
use crate::checks::finding::{Finding, Severity, Step, Value};
use crate::chemistry::solubility::REACH;

pub(super) const CODE: &str = "solubility.oil-over-cap";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if contents.water > 0.0 || contents.oil <= 0.0 {
        return;
    }
    let room = contents.conditions.room.celsius();
    for each in &contents.present {
        let near = each.facts.oil_solubility.iter().filter(|figure| (figure.temperature - room).abs() <= REACH);
        let Some(lowest) = near.min_by(|a, b| a.grams_per_100_g.total_cmp(&b.grams_per_100_g)) else { continue };
        let cap = lowest.grams_per_100_g * contents.oil / 100.0;
        if each.is_oil() || each.dissolving <= cap {
            continue;
        }
        let values = vec![
            ("oil", Value::Percent(contents.oil)),
            ("solubility", Value::GramsPerHundred(lowest.grams_per_100_g)),
            ("cap", Value::Percent(cap)),
        ];
        let mut finding = Finding::about(CODE, Severity::Caution, each.id)
            .with("present", Value::Percent(each.dissolving))
            .with("cap", Value::Percent(cap))
            .with("temperature", Value::Celsius(room))
            .with("oil", Value::Name(lowest.oil))
            .fed_by(each.lines())
            .cured_by(lower(contents, &[(each.id, 1.0)], each.dissolving, cap))
            .cite([lowest.citation]);
        finding.working = vec![Step { template: "work.oil", values }];
        found.push(finding);
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};

    #[test]
    fn more_than_the_oil_dissolves_is_found_and_cured() {
        let bench = Bench::new();
        let formula = bench.oil_with(&[("Salicylic Acid", "3")]);
        let findings = bench.check(&formula);
        let over = find(&findings, super::CODE);
        assert!(over.cures.iter().all(|cure| !codes(&bench.check(&bench.cure(&formula, cure))).contains(&super::CODE)));
        assert!(!codes(&bench.check(&bench.oil_with(&[("Salicylic Acid", "1")]))).contains(&super::CODE));
    }
}
