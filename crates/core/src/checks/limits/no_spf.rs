//! A filter of ultraviolet light, or a sun protection factor in the name: none can be computed or claimed at a bench.
//!
//! A factor is measured on people or in a laboratory by a standard; how a filter is spread decides more than how much there
//! is. A caution where the name claims one, else a note. Nothing to cure.

use super::{naming, traced};
use crate::checks::contents::Contents;
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};
use crate::source::Citation;

pub(super) const CODE: &str = "limits.no-spf";

/// Less of all filters than this, in percent, is colour.
const COLOUR: f64 = 1.0;

const SUN: [Citation; 2] = [
    Citation::recalled(
        "Commission Recommendation 2006/647/EC; ISO 24444 and ISO 24443: how sun protection is measured",
    ),
    Citation::recalled("21 CFR 700.35 and the sunscreen monograph: a sunscreen is a drug in the United States"),
];

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let (filters, citations) = traced(contents, Trait::UvFilter);
    let total: f64 = filters.iter().map(|each| each.percent).sum();
    let claimed = claims(&contents.formula.name);
    if total < COLOUR && !claimed {
        return;
    }
    let mut finding =
        naming(CODE, if claimed { Severity::Caution } else { Severity::Note }, &filters, citations).cite(SUN);
    if claimed {
        finding = finding.with("claimed", Value::Word("spf.claimed"));
    }
    found.push(finding);
}

/// Whether a name claims a sun protection factor.
fn claims(name: &str) -> bool {
    let words = name.split(|letter: char| !letter.is_alphanumeric());
    words
        .map(str::to_uppercase)
        .any(|word| word.strip_prefix("SPF").is_some_and(|rest| rest.chars().all(char::is_numeric)))
}

#[cfg(test)]
mod tests {
    use super::claims;
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Severity;

    #[test]
    fn a_filter_is_noted_and_a_claim_is_a_caution() {
        let bench = Bench::new();
        let mut formula = bench.oil_with(&[("Zinc Oxide", "15")]);
        assert_eq!(find(&bench.check(&formula), super::CODE).severity, Severity::Note);
        formula.name = "Day cream SPF30".to_owned();
        assert_eq!(find(&bench.check(&formula), super::CODE).severity, Severity::Caution);
        assert!(!codes(&bench.check(&bench.oil_with(&[]))).contains(&super::CODE));
        assert!(claims("spf 50 gel") && !claims("spfresh") && !claims("Sunday cream"));
    }
}
