//! Something that hurts the eyes or does not belong near them. A caution for the label; nothing to cure.

use super::{naming, traced};
use crate::checks::contents::Contents;
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity};

pub(super) const CODE: &str = "limits.eyes";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let (substances, citations) = traced(contents, Trait::KeepFromEyes);
    if !substances.is_empty() {
        found.push(naming(CODE, Severity::Note, &substances, citations));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn what_acts_on_the_eyes_is_told() {
        let bench = Bench::new();
        assert!(codes(&bench.check(&bench.water_with(&[("Glycolic Acid", "2")]))).contains(&super::CODE));
        assert!(!codes(&bench.check(&bench.water_with(&[("Glycerin", "5")]))).contains(&super::CODE));
    }
}
