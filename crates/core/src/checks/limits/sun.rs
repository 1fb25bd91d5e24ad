//! Fruit acids, vitamin A and pressed citrus oils make skin more sensitive to the sun: the label says so, and to wear sun
//! protection.
//!
//! From one percent of fruit acid in all, and for any vitamin A and pressed citrus oil in what stays on. A caution for the
//! person; nothing to cure.

use super::aha_ph::ACTS;
use super::{naming, traced};
use crate::checks::contents::Contents;
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity};
use crate::source::Citation;
use stillroom_terms::Purpose;

pub(super) const CODE: &str = "limits.sun";

const SUNBURN_ALERT: Citation = Citation {
    source: "FDA, guidance on labelling for cosmetics containing alpha hydroxy acids (sunburn alert)",
    locator: "",
    as_of: "2005",
    basis: crate::source::Basis::Published,
};

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let (mut substances, mut citations) = traced(contents, Trait::AlphaHydroxyAcid);
    // What is stirred into a bath acts on no skin by itself.
    if contents.is_dry() || substances.iter().map(|each| each.percent).sum::<f64>() < ACTS {
        substances.clear();
        citations.clear();
    } else {
        citations.push(SUNBURN_ALERT);
    }
    if contents.formula.purpose == Purpose::LeaveOn {
        for wanted in [Trait::Retinoid, Trait::Phototoxic] {
            let (more, found_in) = traced(contents, wanted);
            substances.extend(more);
            citations.extend(found_in);
        }
    }
    if !substances.is_empty() {
        found.push(naming(CODE, Severity::Note, &substances, citations));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn fruit_acid_and_vitamin_a_ask_for_sun_protection() {
        let bench = Bench::new();
        for lines in [[("Glycolic Acid", "3")], [("Retinol", "0.1")]] {
            assert!(codes(&bench.check(&bench.water_with(&lines))).contains(&super::CODE));
        }
        assert!(!codes(&bench.check(&bench.water_with(&[("Lactic Acid", "0.3")]))).contains(&super::CODE));
    }
}
