//! More of a preservative than is usual, though within the law: it irritates sooner and rarely preserves better.

use super::held;
use crate::checks::contents::Contents;
use crate::checks::cure::lower;
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "preservation.over-usual";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    for held in held(contents).filter(|held| held.preservative.carries) {
        let Some(usual) = held.preservative.usual else { continue };
        let percent = held.present.percent;
        if percent <= usual.value.high {
            continue;
        }
        let id = held.present.id;
        found.push(
            Finding::about(CODE, Severity::Note, id)
                .with("present", Value::Percent(percent))
                .with("low", Value::Percent(usual.value.low))
                .with("high", Value::Percent(usual.value.high))
                .fed_by(held.present.lines())
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
