//! More of a substance than the solvent dissolves at room temperature: it stays behind as crystals or comes out of solution.
//!
//! A stop where it is too much at the best the estimate allows, a caution where the estimate leaves room. Cured by less of
//! it, by a pH at which more of an acid dissociates, or by saying that it is meant to stay solid.

use super::{Solute, describe, solutes};
use crate::checks::chart::{Axis, Chart, Mark};
use crate::checks::contents::{Contents, PhBand};
use crate::checks::cure::{Change, Cure, Round, lower, set_ph};
use crate::checks::finding::{Finding, Severity, Value};
use crate::chemistry::Temperature;
use crate::chemistry::dissociation::undissociated;

pub(super) const CODE: &str = "solubility.over-cap";

/// A cure lands so far below what dissolves: saturated is no place to stay.
pub(super) const MARGIN: f64 = 1.08;
/// Highest pH a cure offers: above it skin and most preservatives suffer.
const HIGHEST_PH: f64 = 7.0;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let room = contents.conditions.room;
    for solute in solutes(contents) {
        let Ok(capacity) = solute.capacity(contents, room) else { continue };
        if solute.present <= capacity.cap {
            continue;
        }
        let severity = if solute.present > capacity.at_best { Severity::Stop } else { Severity::Caution };
        let cap = capacity.cap;
        let cures = [
            lower(contents, &solute.members, solute.present, cap / MARGIN),
            by_ph(contents, &solute, cap),
            suspend(contents, &solute),
        ];
        let finding = Finding::about(CODE, severity, solute.id);
        let mut finding = describe(finding, contents, &solute, capacity, room).cured_by(cures.into_iter().flatten());
        finding.chart = contents.charts.then(|| picture(contents, &solute)).flatten();
        found.push(finding);
    }
}

/// A pH at which enough of an acid dissociates. Only upwards, and only where the acid decides.
fn by_ph(contents: &Contents<'_>, solute: &Solute<'_>, cap: f64) -> Option<Cure> {
    let (steps, _) = solute.acid?;
    let ph = contents.ph()?;
    let needed = solute.present / cap * MARGIN;
    let now = undissociated(steps, ph.low());
    // A tenth of a pH at a time: more than one step of dissociation has no closed form.
    let higher = (1_u8..=80).map(|tenth| ph.value + f64::from(tenth) / 10.0).take_while(|ph| *ph <= HIGHEST_PH);
    let enough = higher.into_iter().find(|ph| now / undissociated(steps, PhBand::aimed_at(*ph).low()) >= needed)?;
    let most = solute.salt.and_then(|(salt, factor)| Some(salt.at(contents.conditions.room).ok()? * factor));
    if most.is_some_and(|most| most * contents.solvent() / 100.0 <= solute.present) {
        return None;
    }
    set_ph(enough, Round::Up)
}

/// Says that it is meant to stay solid, where lines bring nothing else.
fn suspend(contents: &Contents<'_>, solute: &Solute<'_>) -> Option<Cure> {
    let present = contents.find(solute.id)?;
    let lines: Vec<_> = present.lines().collect();
    let simple = |line: &crate::LineId| {
        let material = contents.formula.line(*line).and_then(|line| contents.material_of(line));
        material.is_some_and(|material| matches!(material.makeup, crate::Makeup::Simple(_)))
    };
    if solute.liquid || solute.members.len() > 1 || !lines.iter().all(simple) {
        return None;
    }
    let changes = lines.into_iter().map(|line| Change::Suspend { line }).collect();
    Some(Cure::of("cure.suspend", vec![("substance", Value::Substance(solute.id))], changes))
}

/// The cap of this formula over the temperature, with this formula's point.
pub(super) fn picture(contents: &Contents<'_>, solute: &Solute<'_>) -> Option<Chart> {
    let cap = |celsius: f64| {
        let temperature = Temperature::new(celsius).ok()?;
        Some((celsius, solute.capacity(contents, temperature).ok()?.cap))
    };
    let curve: Vec<(f64, f64)> = (-5_i8..=45).map(f64::from).filter_map(cap).collect();
    let (first, last) = (curve.first()?.0, curve.last()?.0);
    if curve.len() < 2 {
        return None;
    }
    let highest = curve.iter().map(|(_, cap)| *cap).fold(solute.present, f64::max);
    let (room, cold) = (contents.conditions.room.celsius(), contents.conditions.cold.celsius());
    let mark = |label, x: f64, y| Mark { x, y, label, value: Value::Celsius(x) };
    let mut marks = vec![Mark {
        x: room,
        y: Some(solute.present),
        label: "mark.this-formula",
        value: Value::Percent(solute.present),
    }];
    marks.extend([(room, "mark.room"), (cold, "mark.cold")].map(|(x, label)| mark(label, x, None)));
    marks.retain(|mark| mark.x >= first && mark.x <= last);
    Some(Chart {
        x: (Axis::Temperature, first, last),
        y: Some((Axis::Percent, 0.0, highest * 1.1)),
        curve,
        band: None,
        marks,
    })
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::{Severity, Value};

    #[test]
    fn more_than_water_dissolves_is_a_stop_with_a_cure() {
        let bench = Bench::new();
        let formula = bench.water_with(&[("Allantoin", "0.6")]);
        let findings = bench.check(&formula);
        let over = find(&findings, super::CODE);
        assert_eq!(over.severity, Severity::Stop);
        // 0.5 g in 100 g of water, of which there are 99.4 g.
        let Some(Value::Percent(cap)) = over.value("cap") else { panic!() };
        assert!((cap - 0.497).abs() < 0.001, "{cap}");
        let cured = bench.cure(&formula, &over.cures[0]);
        assert!(!codes(&bench.check(&cured)).contains(&super::CODE));
    }

    #[test]
    fn what_dissolves_and_what_is_meant_to_stay_solid_is_no_finding() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Allantoin", "0.4")]);
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
        formula = bench.water_with(&[("Allantoin", "0.6")]);
        for line in &mut formula.phases[0].lines {
            line.suspended = true;
        }
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
    }

    #[test]
    fn an_acid_dissolves_better_the_higher_the_ph() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Salicylic Acid", "1")]);
        formula.target_ph = Some(bench.ph("3.0"));
        let findings = bench.check(&formula);
        let over = find(&findings, super::CODE);
        assert!(over.cures.iter().any(|cure| cure.code == "cure.set-ph"));
        formula.target_ph = Some(bench.ph("5.0"));
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
    }

    #[test]
    fn a_salt_comes_out_as_its_acid_when_the_ph_is_low() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Sodium Benzoate", "1")]);
        formula.target_ph = Some(bench.ph("3.0"));
        let findings = bench.check(&formula);
        assert_eq!(find(&findings, super::CODE).subject, bench.subject("Benzoic Acid"));
        formula.target_ph = Some(bench.ph("5.0"));
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
    }
}
