//! So much that binds water that the product turns sticky: more than a fifth of glycerin and its kin in what stays on (common
//! practice). Only noted; where they are what keeps microbes away, not even that. Cured by less of them.

use super::naming;
use crate::checks::contents::{Contents, Present};
use crate::checks::cure::{LAST_DIGITS, lower};
use crate::checks::facts::Cosolvent;
use crate::checks::finding::{Finding, Severity, Value};
use crate::checks::preservation::keeps_by_bound_water;
use crate::material::ConstituentId;
use crate::source::Citation;
use stillroom_terms::Class;
use stillroom_terms::Purpose;

pub(super) const CODE: &str = "limits.humectants";

/// More than this feels sticky, in percent of the product.
const STICKY: f64 = 20.0;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if contents.formula.purpose == Purpose::RinseOff {
        return;
    }
    let binds = |each: &&Present<'_>| {
        let glycol = || contents.knowledge.cosolvent(each.id).is_some_and(|(kind, _)| kind != Cosolvent::Ethanol);
        each.percent > 0.0 && (each.class == Class::Humectant || each.class == Class::Solvent && glycol())
    };
    let total: f64 = contents.present.iter().filter(binds).map(|each| each.percent).sum();
    // Where they are what keeps it, less of them is no cure.
    if total <= STICKY + LAST_DIGITS || keeps_by_bound_water(contents) {
        return;
    }
    let humectants: Vec<&Present<'_>> = contents.present.iter().filter(binds).collect();
    let weights: Vec<(ConstituentId, f64)> = humectants.iter().map(|each| (each.id, 1.0)).collect();
    found.push(
        naming(CODE, Severity::Note, &humectants, [Citation::COMMON_PRACTICE])
            .with("limit", Value::Percent(STICKY))
            .cured_by(lower(contents, &weights, total, STICKY)),
    );
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn more_than_a_fifth_is_noted() {
        let bench = Bench::new();
        let lines = [("Glycerin", "15"), ("Propylene Glycol", "5"), ("Betaine", "4")];
        bench.every_cure_cures(&bench.water_with(&lines), super::CODE);
        assert!(!codes(&bench.check(&bench.water_with(&[("Glycerin", "20")]))).contains(&super::CODE));
    }
}
