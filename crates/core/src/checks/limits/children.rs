//! Something that is kept from small children: salicylates, menthol, camphor, eucalyptus and their kin. A caution for the
//! label; nothing to cure.

use super::{naming, traced};
use crate::checks::contents::Contents;
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity};

pub(super) const CODE: &str = "limits.children";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let (substances, citations) = traced(contents, Trait::NotForSmallChildren);
    if !substances.is_empty() {
        found.push(naming(CODE, Severity::Note, &substances, citations));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn what_is_kept_from_small_children_is_told() {
        let bench = Bench::new();
        assert!(codes(&bench.check(&bench.water_with(&[("Salicylic Acid", "0.1")]))).contains(&super::CODE));
        assert!(!codes(&bench.check(&bench.water_with(&[("Glycerin", "5")]))).contains(&super::CODE));
    }
}
