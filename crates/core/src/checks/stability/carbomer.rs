//! A polymer of acid groups with no base beside it: it does not open, and the gel stays a thin, acid, cloudy liquid.
//!
//! A caution where the pH is below 5 or not stated, a note where another pH is aimed at though nothing that brings it there
//! stands among the lines. Neutralised with about four parts of sodium hydroxide to ten of carbomer (common practice).

use super::TRACE;
use crate::checks::contents::{Contents, PhKnown, Present};
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};
use crate::source::Citation;

pub(super) const CODE: &str = "stability.carbomer";

/// From this pH such a polymer is open.
const OPENS: f64 = 5.0;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let polymers: Vec<&Present<'_>> = contents.with(Trait::NeedsBase).filter(|each| each.percent >= TRACE).collect();
    if polymers.is_empty() || contents.is_dry() {
        return;
    }
    let base = contents.with(Trait::Base).next().is_some();
    let severity = match contents.ph() {
        Some(ph) if ph.high() < OPENS => Severity::Caution,
        Some(ph) if base || ph.known != PhKnown::AimedAt => return,
        Some(_) => Severity::Note,
        None if base => return,
        None => Severity::Caution,
    };
    let mut finding = Finding::new(CODE, severity, "formula")
        .with("substances", Value::Substances(polymers.iter().map(|each| each.id).collect()))
        .fed_by(polymers.iter().flat_map(|each| each.lines()))
        .cite(polymers.iter().filter_map(|each| each.facts.has(Trait::NeedsBase)))
        .cite([Citation::COMMON_PRACTICE]);
    if let Some(ph) = contents.ph() {
        finding = finding.with("ph", Value::Ph(ph.value));
    }
    found.push(finding);
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn carbomer_wants_a_base() {
        let bench = Bench::new();
        assert!(codes(&bench.check(&bench.water_with(&[("Carbomer", "0.5")]))).contains(&super::CODE));
        let opened = bench.water_with(&[("Carbomer", "0.5"), ("Triethanolamine", "0.5")]);
        assert!(!codes(&bench.check(&opened)).contains(&super::CODE));
        let mut acid = opened;
        acid.target_ph = Some(bench.ph("4"));
        assert!(codes(&bench.check(&acid)).contains(&super::CODE));
    }
}
