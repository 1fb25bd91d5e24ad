//! More of something than is usual: it is wasted, it feels wrong, or it irritates.
//!
//! Usual ranges are what sellers state and makers keep to. A caution for what acts on skin (actives, essential oils, perfume)
//! and beyond twice the usual, else a note; what makes the body of a product (oil, butter, humectant, solvent) may fill all of
//! it, and is only mentioned. Preservatives have a finding of their own. What sets a stated pH takes what it takes; of water,
//! and of oil in a product without water, there is no too much. Cured by the upper end of the range.

use crate::checks::contents::{Contents, Present};
use crate::checks::cure::{LAST_DIGITS, lower};
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};
use crate::checks::preservation::keeps_by_bound_water;
use stillroom_terms::Class;

pub(super) const CODE: &str = "limits.over-usual";

/// Less water than this, in percent, makes no emulsion.
const LITTLE_WATER: f64 = 1.0;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    for each in contents.present.iter().filter(|each| is_bounded(contents, each)) {
        let Some(usual) = each.facts.usual_percent.filter(|usual| each.percent > usual.value.high + LAST_DIGITS) else {
            continue;
        };
        let acts = matches!(each.class, Class::Active | Class::EssentialOil | Class::Fragrance);
        let body = makes_the_body(each);
        let severity =
            if acts || !body && each.percent > usual.value.high * 2.0 { Severity::Caution } else { Severity::Note };
        found.push(
            Finding::about(CODE, severity, each.id)
                .with("present", Value::Percent(each.percent))
                .with("low", Value::Percent(usual.value.low))
                .with("high", Value::Percent(usual.value.high))
                .fed_by(each.lines())
                .cured_by(if body { None } else { lower(contents, &[(each.id, 1.0)], each.percent, usual.value.high) })
                .cite([usual.citation]),
        );
    }
}

/// Whether it makes the body of a product and may fill all of it.
pub(in super::super) const fn makes_the_body(each: &Present<'_>) -> bool {
    each.is_oil() || matches!(each.class, Class::Humectant | Class::Solvent | Class::Mineral)
}

/// Whether more of it than usual is too much here.
pub(in super::super) fn is_bounded(contents: &Contents<'_>, each: &Present<'_>) -> bool {
    let acts = matches!(each.class, Class::Active | Class::EssentialOil | Class::Fragrance);
    // Usual amounts are those of creams and gels: a bath salt is salt.
    let powder = each.facts.has(Trait::Insoluble).is_some();
    if contents.is_dry() && (!acts || powder) {
        return false;
    }
    // Of what keeps the product there is as much as it takes.
    if matches!(each.class, Class::Humectant | Class::Solvent) && keeps_by_bound_water(contents) {
        return false;
    }
    let fat = each.is_oil() && !matches!(each.class, Class::EssentialOil | Class::Fragrance);
    each.facts.preservative.is_none()
        && each.class != Class::Water
        && !(each.class == Class::PhAdjuster && contents.ph().is_some())
        && !(fat && contents.water < LITTLE_WATER)
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn more_than_usual_is_found_and_lowered() {
        let bench = Bench::new();
        bench.every_cure_cures(&bench.water_with(&[("Kojic Acid", "1.1")]), super::CODE);
        assert!(!codes(&bench.check(&bench.water_with(&[("Kojic Acid", "1")]))).contains(&super::CODE));
    }
}
