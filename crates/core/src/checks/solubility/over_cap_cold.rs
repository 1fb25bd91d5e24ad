//! Dissolves in a room, but not in the cold: crystals grow in a cold bathroom, in the post, in a refrigerator.
//!
//! Says at which temperature they begin. Cured by less of it.

use super::over_cap::{MARGIN, picture};
use super::{describe, solutes};
use crate::checks::contents::Contents;
use crate::checks::cure::lower;
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "solubility.over-cap-cold";

/// A solution bears about so much more than saturation before crystals begin by themselves: common practice.
const METASTABLE: f64 = 1.25;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let (room, cold) = (contents.conditions.room, contents.conditions.cold);
    if cold >= room {
        return;
    }
    for solute in solutes(contents) {
        let Ok(capacity) = solute.capacity(contents, cold) else { continue };
        let too_much_already = solute.capacity(contents, room).is_ok_and(|warm| solute.present > warm.cap);
        if too_much_already || solute.present <= capacity.cap {
            continue;
        }
        let cure = lower(contents, &solute.members, solute.present, capacity.cap / MARGIN);
        // An estimate that leaves room is only a note, and so is what stays in solution for want of a first crystal.
        let severity = if solute.present > capacity.at_best * METASTABLE { Severity::Caution } else { Severity::Note };
        let begins = solute.crystallises_at(contents);
        let mut finding =
            describe(Finding::about(CODE, severity, solute.id), contents, &solute, capacity, cold).cured_by(cure);
        // A liquid separates all along; only crystals begin somewhere.
        let begins = begins.filter(|_| !solute.liquid);
        finding.values.extend(begins.map(|begins| ("begins", Value::Celsius(begins))));
        finding.chart = contents.charts.then(|| picture(contents, &solute)).flatten();
        found.push(finding);
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Value;

    #[test]
    fn what_only_a_room_dissolves_is_told_with_the_temperature_at_which_it_begins() {
        let bench = Bench::new();
        // Benzoic acid at pH 3: 0.34 g in 100 g at 25 °C, 0.18 g at 5 °C, and 6 % more as benzoate.
        let mut formula = bench.water_with(&[("Benzoic Acid", "0.28")]);
        formula.target_ph = Some(bench.ph("3.0"));
        let findings = bench.check(&formula);
        assert!(!codes(&findings).contains(&"solubility.over-cap"));
        let over = find(&findings, super::CODE);
        let Some(Value::Celsius(begins)) = over.value("begins") else { panic!() };
        assert!((5.0..25.0).contains(begins), "{begins}");
        let cured = bench.cure(&formula, &over.cures[0]);
        assert!(!codes(&bench.check(&cured)).contains(&super::CODE));
    }
}
