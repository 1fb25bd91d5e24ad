//! Less of an active or a thickener than is usual: too little to do what it is there for.
//!
//! Only actives and thickeners are looked at; of everything else a little may be all that is wanted. Less than a tenth of the
//! lower end is taken to be carried in by something else. Cured by the lower end of the range.

use crate::checks::contents::Contents;
use crate::checks::cure::{LAST_DIGITS, raise};
use crate::checks::finding::{Finding, Severity, Value};
use stillroom_terms::Class;

pub(super) const CODE: &str = "limits.under-usual";

/// Share of the lower end below which something is carried in rather than meant: common practice.
const CARRIED_IN: f64 = 0.1;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    for each in contents.present.iter().filter(|each| each.facts.preservative.is_none() && each.percent > 0.0) {
        let Some(usual) = each.facts.usual_percent.filter(|usual| each.percent < usual.value.low - LAST_DIGITS) else {
            continue;
        };
        let meant = each.percent >= usual.value.low * CARRIED_IN;
        if !meant || !matches!(each.class, Class::Active | Class::Thickener) {
            continue;
        }
        found.push(
            Finding::about(CODE, Severity::Note, each.id)
                .with("present", Value::Percent(each.percent))
                .with("low", Value::Percent(usual.value.low))
                .with("high", Value::Percent(usual.value.high))
                .fed_by(each.lines())
                .cured_by(raise(contents, &[(each.id, 1.0)], each.percent, usual.value.low))
                .cite([usual.citation]),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn too_little_of_an_active_is_noted_and_raised() {
        let bench = Bench::new();
        bench.every_cure_cures(&bench.water_with(&[("Kojic Acid", "0.05")]), super::CODE);
        assert!(!codes(&bench.check(&bench.water_with(&[("Kojic Acid", "0.2")]))).contains(&super::CODE));
    }
}
