//! Less of a preservative than is known to work, in a product that nothing else holds. Traces carried in by an extract or a
//! blend are not meant to preserve and are passed over, and parts of a blend that together hold the product are judged as
//! the blend.

use super::{acting, asks_for_one, is_held, is_serious, raise_preservative, sum};
use crate::checks::contents::Contents;
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "preservation.under-usual";

/// Less than this share of the lower end is a trace that came along with something else.
const TRACE: f64 = 0.2;
/// Usual ranges are round figures: 0.499 % is what they call 0.5 %.
const ROUND: f64 = 0.98;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let all = acting(contents);
    if !asks_for_one(contents) || is_held(contents, sum(&all)) {
        return;
    }
    let severity = if is_serious(contents, sum(&all)) { Severity::Caution } else { Severity::Note };
    for each in all.iter().filter(|each| each.preservative.carries) {
        let Some(usual) = each.preservative.usual else { continue };
        let (id, percent) = (each.present.id, each.present.percent);
        if percent >= usual.value.low * ROUND || percent < usual.value.low * TRACE {
            continue;
        }
        found.push(
            Finding::about(CODE, severity, id)
                .with("present", Value::Percent(percent))
                .with("low", Value::Percent(usual.value.low))
                .with("high", Value::Percent(usual.value.high))
                .fed_by(each.present.lines())
                .cured_by(raise_preservative(contents, each, usual.value.low))
                .cite([usual.citation]),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn less_than_is_known_to_work_is_a_caution() {
        let bench = Bench::new();
        bench.every_cure_cures(&bench.water_with(&[("Phenoxyethanol", "0.3")]), super::CODE);
        assert!(!codes(&bench.check(&bench.water_with(&[("Phenoxyethanol", "0.499")]))).contains(&super::CODE));
    }
}
