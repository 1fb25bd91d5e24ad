//! A heated phase that stays below the melting point of something in it: grains in the cream, and a drift in what was weighed.
//!
//! Waxes dissolve in hot oil a little below their melting point: up to five degrees is a note, more a caution (common
//! practice). A phase of which no temperature is stated counts as heated to the usual one. Cured by a temperature five degrees
//! above the highest melting point.

use crate::checks::contents::Contents;
use crate::checks::cure::{Round, set_phase_temperature};
use crate::checks::finding::{Finding, Severity, Value};
use crate::formula::{LineId, Phase, PhaseId};
use crate::material::ConstituentId;
use crate::source::Citation;
use stillroom_terms::Class;

pub(super) const CODE: &str = "emulsion.melting";

/// What is taken up by the rest whatever it melts at, in percent of the product.
pub(super) const TRACE: f64 = 0.2;
/// Degrees below its melting point at which hot oil still takes a wax up.
const TAKEN_UP: f64 = 5.0;
/// Degrees above the melting point that are usual.
const ABOVE: f64 = 5.0;
/// Water boils away beyond this.
const HOTTEST: f64 = 95.0;

/// A heated phase with what does not melt in it.
struct Cold {
    phase: PhaseId,
    stated: bool,
    heat: f64,
    highest: f64,
    substance: ConstituentId,
    all: Vec<ConstituentId>,
    lines: Vec<LineId>,
    citation: Citation,
}

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    for phase in &contents.formula.phases {
        let Some(heat) = contents.heat_of(phase) else { continue };
        let Some(cold) = unmelted_in(contents, phase, heat) else { continue };
        let severity = if cold.highest - cold.heat > TAKEN_UP { Severity::Caution } else { Severity::Note };
        let to = (cold.highest + ABOVE).min(HOTTEST);
        let cure = if to >= cold.highest { set_phase_temperature(cold.phase, to, Round::Up) } else { None };
        let finding = Finding::about(CODE, severity, cold.substance)
            .with("phase", Value::Phase(cold.phase))
            .with("heat", Value::Celsius(cold.heat))
            .with("stated", Value::Word(if cold.stated { "heat.stated" } else { "heat.usual" }))
            .with("melting", Value::Celsius(cold.highest))
            .with("substances", Value::Substances(cold.all))
            .fed_by(cold.lines)
            .cured_by(cure)
            .cite([cold.citation]);
        // The same substance in two phases that are too cold is one finding: of the colder.
        match found.iter_mut().find(|other| other.code == CODE && other.subject == finding.subject) {
            Some(other) if heat_in(other) > heat => *other = finding,
            Some(_) => {}
            None => found.push(finding),
        }
    }
}

fn heat_in(finding: &Finding) -> f64 {
    match finding.value("heat") {
        Some(Value::Celsius(heat)) => *heat,
        _ => f64::NAN,
    }
}

fn unmelted_in(contents: &Contents<'_>, phase: &Phase, heat: f64) -> Option<Cold> {
    let mut cold: Option<Cold> = None;
    for each in contents.present.iter().filter(|each| melts(each.class)) {
        let Some(melting) = each.facts.melting_point.filter(|melting| melting.value > heat) else { continue };
        let here: Vec<LineId> = each
            .trail
            .iter()
            .filter(|part| phase.lines.iter().any(|line| line.id == part.line && !line.suspended))
            .filter(|part| !part.percent.is_zero())
            .map(|part| part.line)
            .collect();
        if here.is_empty() || each.percent < TRACE {
            continue;
        }
        let known = cold.get_or_insert_with(|| Cold {
            phase: phase.id,
            stated: phase.temperature.is_some(),
            heat,
            highest: melting.value,
            substance: each.id,
            all: Vec::new(),
            lines: Vec::new(),
            citation: melting.citation,
        });
        if melting.value > known.highest {
            (known.highest, known.substance, known.citation) = (melting.value, each.id, melting.citation);
        }
        known.all.push(each.id);
        known.lines.extend(here);
    }
    cold
}

/// Whether a class melts into an oil phase rather than dissolves in water.
const fn melts(class: Class) -> bool {
    matches!(
        class,
        Class::Oil
            | Class::Butter
            | Class::Wax
            | Class::FattyAlcohol
            | Class::FattyAcid
            | Class::Emollient
            | Class::Emulsifier
    )
}

#[cfg(test)]
mod tests {
    use crate::PhaseKind::HeatedOil;
    use crate::checks::bench::{Bench, celsius, codes, find};
    use crate::checks::finding::{Severity, Value};

    #[test]
    fn a_wax_that_does_not_melt_is_found_and_the_phase_made_hotter() {
        let bench = Bench::new();
        let lines = [("Helianthus Annuus Seed Oil", "qs"), ("Copernicia Cerifera Cera", "5"), ("Cera Alba", "5")];
        let mut formula = bench.formula(&[(HeatedOil, &lines)]);
        let findings = bench.check(&formula);
        let cold = find(&findings, super::CODE);
        assert_eq!(cold.severity, Severity::Caution);
        assert_eq!(cold.subject, bench.subject("Copernicia Cerifera Cera"));
        assert_eq!(cold.value("stated"), Some(&Value::Word("heat.usual")));
        bench.every_cure_cures(&formula, super::CODE);
        formula.phases[0].temperature = Some(celsius("90"));
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
        formula.phases[0].temperature = Some(celsius("82"));
        assert_eq!(find(&bench.check(&formula), super::CODE).severity, Severity::Note);
    }
}
