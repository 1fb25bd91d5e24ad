//! A wax, fatty alcohol or fatty acid in a phase that is not heated: it stays a lump.
//!
//! A cool-down phase is taken to be at 40 °C, one at room temperature at what a room has. Butters are left out: soft ones are
//! whipped cold. Cured by moving the lines to the heated oil.

use super::melting::TRACE;
use crate::checks::contents::{Contents, Present};
use crate::checks::cure::move_lines;
use crate::checks::finding::{Finding, Severity, Value};
use crate::formula::LineId;
use stillroom_terms::Class;
use stillroom_terms::PhaseKind;

pub(super) const CODE: &str = "emulsion.unmelted";

/// Temperature of a cool-down phase, in degrees Celsius: common practice.
const COOLED: f64 = 40.0;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let solid = |each: &&Present<'_>| matches!(each.class, Class::Wax | Class::FattyAlcohol | Class::FattyAcid);
    for each in contents.present.iter().filter(solid) {
        let Some(melting) = each.facts.melting_point else { continue };
        let (mut lines, mut percent, mut warmest) = (Vec::<LineId>::new(), 0.0, f64::NEG_INFINITY);
        for part in each.trail {
            let Some(phase) = contents.phase_of(part.line) else { continue };
            let temperature = match phase.kind {
                PhaseKind::CoolDown => COOLED,
                PhaseKind::RoomTemperature => contents.conditions.room.celsius(),
                PhaseKind::HeatedOil | PhaseKind::HeatedWater => continue,
            };
            let suspended = contents.formula.line(part.line).is_some_and(|line| line.suspended);
            if melting.value > temperature && !suspended && !part.percent.is_zero() {
                lines.push(part.line);
                percent += part.percent.to_physics();
                warmest = temperature.max(warmest);
            }
        }
        if percent < TRACE {
            continue;
        }
        found.push(
            Finding::about(CODE, Severity::Caution, each.id)
                .with("percent", Value::Percent(percent))
                .with("melting", Value::Celsius(melting.value))
                .with("temperature", Value::Celsius(warmest))
                .cured_by(move_lines(contents, &lines, PhaseKind::HeatedOil))
                .fed_by(lines)
                .cite([melting.citation]),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::PhaseKind::{CoolDown, HeatedOil};
    use crate::checks::bench::{Bench, codes, find, line_of};

    #[test]
    fn a_wax_in_the_cool_down_is_found_and_moved() {
        let bench = Bench::new();
        let oil = ("Helianthus Annuus Seed Oil", "qs");
        let formula = bench.formula(&[(HeatedOil, &[oil]), (CoolDown, &[("Cera Alba", "3")])]);
        let wax = line_of(&formula, bench.material("Cera Alba"));
        assert_eq!(find(&bench.check(&formula), super::CODE).lines, [wax]);
        bench.every_cure_cures(&formula, super::CODE);
        let sound = bench.formula(&[(HeatedOil, &[oil, ("Cera Alba", "3")])]);
        assert!(!codes(&bench.check(&sound)).contains(&super::CODE));
    }
}
