//! Something that sensitises skin: cinnamon bark and leaf, clove, and their kin. Once sensitised, a person reacts for life.
//!
//! A note from a trace on; a caution from a tenth of a percent in what stays on (common practice). Cured by leaving it out.

use super::{naming, traced};
use crate::checks::contents::Contents;
use crate::checks::cure::{LAST_DIGITS, lower};
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};
use stillroom_terms::Purpose;

pub(super) const CODE: &str = "limits.sensitiser";

/// Less than this, in percent, is a trace.
const TRACE: f64 = 0.01;
/// More than this in what stays on is a caution.
const MUCH: f64 = 0.1;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let (substances, citations) = traced(contents, Trait::Sensitiser);
    let total: f64 = substances.iter().map(|each| each.percent).sum();
    if total < TRACE {
        return;
    }
    let much = contents.formula.purpose == Purpose::LeaveOn && total > MUCH + LAST_DIGITS;
    let members: Vec<_> = substances.iter().map(|each| (each.id, 1.0)).collect();
    let severity = if much { Severity::Caution } else { Severity::Note };
    found.push(naming(CODE, severity, &substances, citations).with("limit", Value::Percent(MUCH)).cured_by(if much {
        lower(contents, &members, total, 0.0)
    } else {
        None
    }));
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Severity;

    #[test]
    fn cinnamon_bark_is_a_caution_in_what_stays_on() {
        let bench = Bench::new();
        let formula = bench.oil_with(&[("Cinnamomum Zeylanicum Bark Oil", "0.5")]);
        assert_eq!(find(&bench.check(&formula), super::CODE).severity, Severity::Caution);
        bench.every_cure_cures(&formula, super::CODE);
        let little = bench.oil_with(&[("Cinnamomum Zeylanicum Bark Oil", "0.05")]);
        assert_eq!(find(&bench.check(&little), super::CODE).severity, Severity::Note);
        assert!(!codes(&bench.check(&bench.oil_with(&[]))).contains(&super::CODE));
    }
}
