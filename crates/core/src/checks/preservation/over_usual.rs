//! More of a preservative than is usual, though within the law: it irritates sooner and rarely preserves better.

use super::acting;
use crate::checks::contents::Contents;
use crate::checks::cure::lower;
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "preservation.over-usual";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    for each in acting(contents).iter().filter(|each| each.preservative.carries) {
        let Some(usual) = each.preservative.usual else { continue };
        let percent = each.present.percent;
        // What is in for another purpose has a usual amount of its own.
        if percent <= usual.value.high || each.present.facts.usual_percent.is_some() {
            continue;
        }
        let id = each.present.id;
        found.push(
            Finding::about(CODE, Severity::Note, id)
                .with("present", Value::Percent(percent))
                .with("low", Value::Percent(usual.value.low))
                .with("high", Value::Percent(usual.value.high))
                .fed_by(each.present.lines())
                .cured_by(lower(contents, &[(id, 1.0)], percent, usual.value.high))
                .cite([usual.citation]),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn more_than_usual_is_noted() {
        let bench = Bench::new();
        bench.every_cure_cures(&bench.water_with(&[("Methylparaben", "0.42")]), super::CODE);
        assert!(!codes(&bench.check(&bench.water_with(&[("Methylparaben", "0.4")]))).contains(&super::CODE));
    }
}
