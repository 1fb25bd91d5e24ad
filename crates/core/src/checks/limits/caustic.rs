//! A caustic is weighed: it blinds and burns. Goggles and gloves; the caustic goes into the water, never the water onto it. A
//! caution for the bench; nothing to cure.

use super::{naming, traced};
use crate::checks::contents::Contents;
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity};

pub(super) const CODE: &str = "limits.caustic";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let (substances, citations) = traced(contents, Trait::Caustic);
    if !substances.is_empty() {
        found.push(naming(CODE, Severity::Caution, &substances, citations));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn lye_asks_for_goggles() {
        let bench = Bench::new();
        assert!(codes(&bench.check(&bench.water_with(&[("Sodium Hydroxide", "0.1")]))).contains(&super::CODE));
        assert!(!codes(&bench.check(&bench.water_with(&[("Glycerin", "5")]))).contains(&super::CODE));
    }
}
