//! Vitamin A adds to what people take in with food: the label warns, and who is pregnant leaves it out. A caution for the
//! person; nothing to cure.

use super::{naming, traced};
use crate::checks::contents::Contents;
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity};

pub(super) const CODE: &str = "limits.pregnancy";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let (substances, citations) = traced(contents, Trait::Retinoid);
    if !substances.is_empty() {
        found.push(naming(CODE, Severity::Note, &substances, citations));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn vitamin_a_is_told() {
        let bench = Bench::new();
        assert!(codes(&bench.check(&bench.oil_with(&[("Retinyl Palmitate", "0.01")]))).contains(&super::CODE));
        assert!(!codes(&bench.check(&bench.oil_with(&[("Tocopherol", "0.1")]))).contains(&super::CODE));
    }
}
