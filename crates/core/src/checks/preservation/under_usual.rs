//! Less of a preservative than is known to work. Traces carried in by an extract or a blend are not meant to preserve and
//! are passed over.

use super::{held, spared};
use crate::checks::contents::Contents;
use crate::checks::cure::raise;
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "preservation.under-usual";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if spared(contents).is_some() {
        return;
    }
    for held in held(contents).filter(|held| held.preservative.carries) {
        let Some(usual) = held.preservative.usual else { continue };
        let (id, percent) = (held.present.id, held.present.percent);
        if percent >= usual.value.low || percent < usual.value.low * TRACE {
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

/// Less than this share of the lower end is a trace that came along with something else.
const TRACE: f64 = 0.2;

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
