//! A gum or polymer that clumps goes straight into water: lumps with dry hearts that no stirring dissolves.
//!
//! Noted where its phase holds nothing to wet the powder with: glycerin, a glycol, alcohol or oil, twice as much as powder
//! (common practice). A bought or kept solution of it is hydrated already. Cured by moving the powder to a phase that has such
//! a liquid, or by glycerin beside it.

use crate::checks::contents::{Contents, Present};
use crate::checks::cure::{Cure, Round, add, move_lines, weighable};
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};
use crate::formula::{LineId, Phase};
use crate::source::Citation;
use stillroom_terms::PhaseKind;

pub(super) const CODE: &str = "emulsion.disperse-first";

/// Liquid to powder that is enough to wet it, and what a cure adds.
const ENOUGH: f64 = 2.0;
const ADDED: f64 = 3.0;
/// Water to powder from which a line is a solution.
const HYDRATED: f64 = 5.0;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if contents.water <= 0.0 {
        return;
    }
    for each in contents.with(Trait::ClumpingPowder) {
        let (mut lines, mut powder) = (Vec::<LineId>::new(), 0.0);
        for phase in &contents.formula.phases {
            let here = each.trail.iter().filter(|part| phase.lines.iter().any(|line| line.id == part.line));
            let dry: Vec<(LineId, f64)> = here
                .map(|part| (part.line, part.percent.to_physics()))
                .filter(|(line, percent)| *percent > 0.0 && water_from(contents, *line) < percent * HYDRATED)
                .collect();
            let whole: f64 = dry.iter().map(|(_, percent)| percent).sum();
            if wetting_in(contents, phase) < whole * ENOUGH {
                lines.extend(dry.iter().map(|(line, _)| *line));
                powder += whole;
            }
        }
        if lines.is_empty() {
            continue;
        }
        let citation = each.facts.has(Trait::ClumpingPowder);
        found.push(
            Finding::about(CODE, Severity::Note, each.id)
                .with("percent", Value::Percent(powder))
                .with("liquid", Value::Percent(powder * ADDED))
                .cured_by(move_to_liquid(contents, &lines, each.percent))
                .cured_by(add_liquid(contents, &lines, powder))
                .fed_by(lines)
                .cite(citation.into_iter().chain([Citation::COMMON_PRACTICE])),
        );
    }
}

/// Water that a line brings.
fn water_from(contents: &Contents<'_>, line: LineId) -> f64 {
    let waters = contents.present.iter().filter(|each| each.class == crate::Class::Water);
    waters.flat_map(|each| each.trail).filter(|part| part.line == line).map(|part| part.percent.to_physics()).sum()
}

/// What a phase holds that wets a powder without swelling it, in percent of the product.
fn wetting_in(contents: &Contents<'_>, phase: &Phase) -> f64 {
    let liquid = |each: &&Present<'_>| each.is_oil() || contents.knowledge.cosolvent(each.id).is_some();
    let parts = contents.present.iter().filter(liquid).flat_map(|each| each.trail);
    let here = parts.filter(|part| phase.lines.iter().any(|line| line.id == part.line));
    here.map(|part| part.percent.to_physics()).sum()
}

fn first_of<'a>(contents: &Contents<'a>, kind: PhaseKind) -> Option<&'a Phase> {
    contents.formula.phases.iter().find(|phase| phase.kind == kind)
}

/// Moves the powder where enough liquid is for all of it that the product holds.
fn move_to_liquid(contents: &Contents<'_>, lines: &[LineId], powder: f64) -> Option<Cure> {
    let kinds = [PhaseKind::HeatedOil, PhaseKind::HeatedWater, PhaseKind::RoomTemperature];
    let enough = |kind: &PhaseKind| {
        first_of(contents, *kind).is_some_and(|phase| wetting_in(contents, phase) >= powder * ENOUGH)
    };
    let kind = kinds.into_iter().find(enough)?;
    move_lines(contents, lines, kind)
}

fn add_liquid(contents: &Contents<'_>, lines: &[LineId], powder: f64) -> Option<Cure> {
    let phase = contents.phase_of(*lines.first()?)?;
    let together = lines.iter().all(|line| contents.phase_of(*line).is_some_and(|other| other.id == phase.id));
    if !together || first_of(contents, phase.kind)?.id != phase.id {
        return None;
    }
    let glycerin = contents.knowledge.remedies().dispersant?;
    add(contents, &[(glycerin, weighable(powder * ADDED, Round::Up)?)], phase.kind)
}

#[cfg(test)]
mod tests {
    use crate::PhaseKind::{HeatedOil, HeatedWater};
    use crate::checks::bench::{Bench, codes, find};

    #[test]
    fn gum_straight_into_water_is_noted() {
        let bench = Bench::new();
        let formula = bench.formula(&[
            (HeatedWater, &[("Aqua", "qs"), ("Xanthan Gum", "0.3")]),
            (HeatedOil, &[("Helianthus Annuus Seed Oil", "10"), ("Cetearyl Olivate", "3")]),
        ]);
        assert_eq!(find(&bench.check(&formula), super::CODE).cures.len(), 2);
        bench.every_cure_cures(&formula, super::CODE);
        let sound = bench.formula(&[(HeatedWater, &[("Aqua", "qs"), ("Glycerin", "3"), ("Xanthan Gum", "0.3")])]);
        assert!(!codes(&bench.check(&sound)).contains(&super::CODE));
    }
}
