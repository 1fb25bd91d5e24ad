//! A preservative in a phase that is heated above what it bears: it evaporates, breaks down or reacts. Cured by adding it once
//! the batch has cooled.

use super::acting;
use crate::checks::contents::Contents;
use crate::checks::cure::move_lines;
use crate::checks::finding::{Finding, Severity, Value};
use stillroom_terms::PhaseKind;

pub(super) const CODE: &str = "preservation.too-hot";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    for held in acting(contents).iter().filter(|held| held.preservative.carries) {
        let Some(most) = held.preservative.max_add_temperature else { continue };
        let too_hot = held.present.lines().filter_map(|line| {
            let heat = contents.heat_of(contents.phase_of(line)?)?;
            (heat > most.value).then_some((line, heat))
        });
        let too_hot: Vec<_> = too_hot.collect();
        let Some(hottest) = too_hot.iter().map(|(_, heat)| *heat).reduce(f64::max) else { continue };
        let lines: Vec<_> = too_hot.iter().map(|(line, _)| *line).collect();
        let cure = move_lines(contents, &lines, PhaseKind::CoolDown);
        found.push(
            Finding::about(CODE, Severity::Caution, held.present.id)
                .with("heat", Value::Celsius(hottest))
                .with("most", Value::Celsius(most.value))
                .fed_by(lines)
                .cured_by(cure)
                .cite([most.citation]),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::PhaseKind::{CoolDown, HeatedWater};
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn a_preservative_in_hot_water_is_a_caution() {
        let bench = Bench::new();
        let hot = bench.formula(&[(HeatedWater, &[("Aqua", "qs"), ("Phenoxyethanol", "0.9")])]);
        bench.every_cure_cures(&hot, super::CODE);
        let cool = bench.formula(&[(HeatedWater, &[("Aqua", "qs")]), (CoolDown, &[("Phenoxyethanol", "0.9")])]);
        assert!(!codes(&bench.check(&cool)).contains(&super::CODE));
    }
}
