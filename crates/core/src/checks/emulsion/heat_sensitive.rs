//! Something that heat spoils stands in a heated phase: vitamins break down, delicate oils go rancid sooner, scent is lost.
//!
//! A caution where heat is stated to spoil it or where it is far too hot, a note where it is a little hotter than is usual or
//! only scent is lost. Preservatives have a finding of their own. Cured by adding it once the batch has cooled, unless so much
//! of the batch would come in cold that the rest would set.

use crate::checks::contents::Contents;
use crate::checks::cure::move_lines;
use crate::checks::finding::{Finding, Severity, Value};
use crate::formula::LineId;
use crate::source::Citation;
use stillroom_terms::Class;
use stillroom_terms::PhaseKind;

pub(super) const CODE: &str = "emulsion.heat-sensitive";

/// Temperature up to which something is added of which only that heat spoils it is known: common practice.
const USUAL_MOST: f64 = 40.0;
/// Degrees too hot from which it is a caution in any case.
const FAR_TOO_HOT: f64 = 15.0;
/// What is carried in, as an antioxidant in an oil, in percent of the product.
const TRACE: f64 = 0.02;
/// Share of the product that can be added cold.
const ADDED_COLD: f64 = 25.0;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    for each in contents.present.iter().filter(|each| each.facts.preservative.is_none() && each.percent >= TRACE) {
        let stated = each.facts.max_add_temperature;
        let spoils = each.facts.heat_sensitive;
        let (most, citation) = match (stated, spoils) {
            (Some(stated), _) => (stated.value, stated.citation),
            (None, Some(citation)) => (USUAL_MOST, citation),
            (None, None) => continue,
        };
        let (mut lines, mut hottest) = (Vec::<LineId>::new(), f64::NEG_INFINITY);
        for line in each.lines() {
            let phase =
                contents.phase_of(line).filter(|phase| !is_powder(each.class) || phase.kind == PhaseKind::HeatedWater);
            let heat = phase.and_then(|phase| contents.heat_of(phase));
            if let Some(heat) = heat.filter(|heat| *heat > most) {
                lines.push(line);
                hottest = hottest.max(heat);
            }
        }
        if lines.is_empty() {
            continue;
        }
        // A hydrosol loses scent; an extract of a plant was boiled or steeped before.
        let only_scent = matches!(each.class, Class::Water | Class::Extract);
        let severe = (spoils.is_some() || hottest - most > FAR_TOO_HOT) && !only_scent;
        let share: f64 = lines.iter().map(|line| contents.share_of(*line)).sum();
        let cure = if share <= ADDED_COLD { move_lines(contents, &lines, PhaseKind::CoolDown) } else { None };
        found.push(
            Finding::about(CODE, if severe { Severity::Caution } else { Severity::Note }, each.id)
                .with("heat", Value::Celsius(hottest))
                .with("most", Value::Celsius(most))
                .with("basis", Value::Word(if stated.is_some() { "heat.stated" } else { "heat.usual" }))
                .fed_by(lines)
                .cured_by(cure)
                .cite([citation])
                .cite(stated.is_none().then_some(Citation::COMMON_PRACTICE)),
        );
    }
}

/// Whether heat does something to it only where it meets water: a starch swells there and nowhere else.
const fn is_powder(class: Class) -> bool {
    matches!(class, Class::Mineral | Class::Thickener | Class::Exfoliant)
}

#[cfg(test)]
mod tests {
    use crate::PhaseKind::{CoolDown, HeatedOil};
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Severity;

    #[test]
    fn retinol_in_hot_oil_is_found_and_moved() {
        let bench = Bench::new();
        let oil = ("Helianthus Annuus Seed Oil", "qs");
        let formula = bench.formula(&[(HeatedOil, &[oil, ("Retinol", "0.1"), ("Rosa Canina Seed Oil", "10")])]);
        let findings = bench.check(&formula);
        assert_eq!(findings.iter().filter(|each| each.code == super::CODE).count(), 2);
        assert_eq!(find(&findings, super::CODE).severity, Severity::Caution);
        bench.every_cure_cures(&formula, super::CODE);
        let sound = bench.formula(&[(HeatedOil, &[oil]), (CoolDown, &[("Retinol", "0.1")])]);
        assert!(!codes(&bench.check(&sound)).contains(&super::CODE));
    }
}
