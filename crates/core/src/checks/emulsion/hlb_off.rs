//! The emulsifiers supply another balance than the oil asks for: the emulsion comes out coarse and parts sooner.
//!
//! What an oil asks for, and what a blend supplies, is the mean of the balances weighted by mass (Griffin, 1949). Published
//! figures for one oil and for one emulsifier each spread by about one unit either way: up to two units off is no finding, up to
//! four a note, more a caution (common practice). Where the emulsifiers are those of a blend of the trade it is only a note:
//! what was made to be used together works by more than its balance. It is computed only where the balance speaks of the emulsion, and only for oils of
//! which at least three quarters state what they ask for. Cured by another proportion of the emulsifiers at the same total.

use super::{BY_MASS, ENOUGH_KNOWN, GRIFFIN, Kind, Required, System, required, required_of};
use crate::checks::chart::{Axis, Chart, Mark};
use crate::checks::contents::{Contents, Present};
use crate::checks::cure::{Cure, Round, add, share_out, share_with, weighable};
use crate::checks::finding::{Finding, Severity, Value};
use crate::chemistry::hlb::{pair_for_target, share_of_higher};
use crate::formula::LineId;
use crate::material::{ConstituentId, Makeup};
use stillroom_terms::PhaseKind;

pub(super) const CODE: &str = "emulsion.hlb-off";

/// Published balances of an oil and of an emulsifier together spread by this much.
pub(super) const SPREAD: f64 = 2.0;
/// Further off than this an emulsion is likely to fail.
const FAR: f64 = 4.0;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(system) = System::of(contents).filter(System::balance_speaks) else { return };
    if system.unknown() > system.total * (1.0 - ENOUGH_KNOWN) {
        return;
    }
    let Some(supplied) = system.supplied() else { return };
    let required = required(contents, system.kind).filter(|required| required.known >= ENOUGH_KNOWN);
    let Some(required) = required else { return };
    let off = (supplied - required.balance).abs();
    // The last digits of a mean are no difference.
    if off <= SPREAD + 1e-9 {
        return;
    }
    let mut together: Vec<ConstituentId> = system.with_balance().map(|(each, _)| each.id).collect();
    together.sort_unstable();
    let ready = contents.knowledge.remedies().ready_systems.contains(&together);
    let severity = if off > FAR && !ready { Severity::Caution } else { Severity::Note };
    let mut finding = Finding::new(CODE, severity, "formula")
        .with("required", Value::Number(required.balance))
        .with("supplied", Value::Number(supplied))
        .with("off", Value::Number(off))
        .with("direction", Value::Word(if supplied > required.balance { "hlb.too-high" } else { "hlb.too-low" }))
        .with("kind", Value::Word(system.kind.word()))
        .with("oil", Value::Percent(contents.oil))
        .fed_by(system.with_balance().flat_map(|(each, _)| each.lines()))
        .cured_by(cure(contents, &system, &required))
        .cite([GRIFFIN, BY_MASS]);
    finding = explain(finding, contents, &system, &required, supplied);
    if contents.charts {
        finding.chart = Some(picture(&system, &required, supplied));
    }
    found.push(finding);
}

fn explain(
    mut finding: Finding,
    contents: &Contents<'_>,
    system: &System<'_, '_>,
    required: &Required,
    supplied: f64,
) -> Finding {
    let part = |each: &Present<'_>, balance: f64| {
        vec![
            ("substance", Value::Substance(each.id)),
            ("percent", Value::Percent(each.percent)),
            ("hlb", Value::Number(balance)),
        ]
    };
    for each in contents.present.iter().filter(|each| each.is_oil()) {
        if let Some(balance) = required_of(each, system.kind) {
            finding = finding.step("work.hlb-of-oil", part(each, balance));
            let cited = match system.kind {
                Kind::OilInWater => each.facts.required_hlb,
                Kind::WaterInOil => each.facts.required_hlb_water_in_oil,
            };
            finding = finding.cite(cited.map(|cited| cited.citation));
        }
    }
    finding = finding.step(
        "work.hlb-required",
        vec![("required", Value::Number(required.balance)), ("known", Value::Percent(required.known * 100.0))],
    );
    for (each, balance) in system.with_balance() {
        finding = finding.step("work.hlb-of-emulsifier", part(each, balance));
        finding = finding.cite(each.facts.hlb.map(|cited| cited.citation));
    }
    finding.step("work.hlb-supplied", vec![("supplied", Value::Number(supplied))])
}

/// A line that brings one emulsifier and nothing else: the largest there is.
fn line_of(contents: &Contents<'_>, each: &Present<'_>) -> Option<LineId> {
    let lines = each.trail.iter().filter(|part| {
        let material = contents.formula.line(part.line).and_then(|line| contents.material_of(line));
        material.is_some_and(|material| matches!(material.makeup, Makeup::Simple(_)))
    });
    let largest = lines.max_by(|a, b| a.percent.cmp(&b.percent).then(b.line.cmp(&a.line)))?;
    let quantum_satis =
        contents.evaluation.lines.iter().any(|(share, _)| share.line == largest.line && share.quantum_satis);
    (!quantum_satis && !largest.percent.is_zero()).then_some(largest.line)
}

fn cure(contents: &Contents<'_>, system: &System<'_, '_>, required: &Required) -> Option<Cure> {
    let movable = system.with_balance().filter_map(|(each, hlb)| Some((line_of(contents, each)?, hlb)));
    let mut movable: Vec<(LineId, f64)> = movable.collect();
    movable.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    let target = required.balance;
    // What the other emulsifiers bring, as mass and mean balance.
    let others = |lines: &[(LineId, f64)]| {
        let mass: f64 = lines.iter().map(|(line, _)| contents.share_of(*line)).sum();
        let sum: f64 = lines.iter().map(|(line, hlb)| contents.share_of(*line) * hlb).sum();
        let all: f64 = system.with_balance().map(|(each, hlb)| each.percent * hlb).sum();
        let rest = (system.balanced - mass).max(0.0);
        (mass, (rest, if rest > 1e-9 { (all - sum) / rest } else { 0.0 }))
    };
    if let [first, .., last] = movable.as_slice() {
        let (together, rest) = others(&[*first, *last]);
        if let Some((high, low)) = pair_for_target(target, (first.1, last.1), together, rest)
            && high.min(low) > together * 0.02
        {
            return share_out(contents, [first.0, last.0], high);
        }
    }
    let companions =
        || contents.knowledge.remedies().emulsifiers.iter().filter_map(|id| Some((*id, hlb_of(contents, *id)?)));
    for line in &movable {
        let (together, rest) = others(&[*line]);
        for (companion, hlb) in companions() {
            let (higher, lower) = if hlb > line.1 { (hlb, line.1) } else { (line.1, hlb) };
            let Some((high, low)) = pair_for_target(target, (higher, lower), together, rest) else { continue };
            let added = if hlb > line.1 { high } else { low };
            if added > together * 0.02 && added < together * 0.98 {
                return share_with(contents, line.0, companion, added, PhaseKind::HeatedOil);
            }
        }
    }
    companions().find_map(|(companion, hlb)| beside(contents, system, target, companion, hlb))
}

fn hlb_of(contents: &Contents<'_>, id: ConstituentId) -> Option<f64> {
    Some(contents.knowledge.facts(id)?.hlb?.value)
}

/// A companion added beside emulsifiers that come in a blend and cannot be parted.
fn beside(
    contents: &Contents<'_>,
    system: &System<'_, '_>,
    target: f64,
    companion: ConstituentId,
    hlb: f64,
) -> Option<Cure> {
    let supplied = system.supplied()?;
    let (higher, lower) = if hlb > supplied { (hlb, supplied) } else { (supplied, hlb) };
    let share = share_of_higher(target, higher, lower)?;
    let own = if hlb > supplied { share } else { 1.0 - share };
    // No more than half of all the emulsifier: else another emulsifier is the better advice.
    if own > 0.5 {
        return None;
    }
    let percent = weighable(system.balanced * own / (1.0 - own), Round::Up)?;
    add(contents, &[(companion, percent)], PhaseKind::HeatedOil)
}

/// What is asked for, with its band, against what is supplied and by what.
fn picture(system: &System<'_, '_>, required: &Required, supplied: f64) -> Chart {
    let mark = |x: f64, label, value| Mark { x, y: None, label, value };
    let mut marks = vec![
        mark(required.balance, "mark.hlb-required", Value::Number(required.balance)),
        mark(supplied, "mark.hlb-supplied", Value::Number(supplied)),
    ];
    marks.extend(system.with_balance().map(|(each, hlb)| mark(hlb, "mark.emulsifier", Value::Substance(each.id))));
    Chart {
        x: (Axis::Hlb, 0.0, 20.0),
        y: None,
        curve: Vec::new(),
        band: Some((required.balance - SPREAD, required.balance + SPREAD)),
        marks,
    }
}

#[cfg(test)]
mod tests {
    use crate::Formula;
    use crate::PhaseKind::{HeatedOil, HeatedWater};
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::{Severity, Value};

    fn lotion(bench: &Bench, oils: &[(&str, &str)]) -> Formula {
        bench.formula(&[(HeatedWater, &[("Aqua", "qs")]), (HeatedOil, oils)])
    }

    #[test]
    fn a_hydrophilic_emulsifier_alone_is_too_high_for_sunflower_oil() {
        let bench = Bench::new();
        let oils = [("Helianthus Annuus Seed Oil", "20"), ("Polysorbate 60", "4")];
        let formula = lotion(&bench, &oils);
        let findings = bench.check(&formula);
        let off = find(&findings, super::CODE);
        let (Some(Value::Number(required)), Some(Value::Number(supplied))) =
            (off.value("required"), off.value("supplied"))
        else {
            panic!()
        };
        assert!((required - 7.0).abs() < 1e-9 && (supplied - 14.9).abs() < 1e-9);
        assert_eq!(off.severity, Severity::Caution);
        assert!(off.chart.is_some());
        // 4 % in all: (7 - 4.7) / (14.9 - 4.7) of it polysorbate.
        assert_eq!(off.cures[0].code, "cure.blend-with");
        bench.every_cure_cures(&formula, super::CODE);
    }

    #[test]
    fn a_pair_in_the_wrong_proportion_is_put_right_at_the_same_total() {
        let bench = Bench::new();
        let oils = [("Helianthus Annuus Seed Oil", "20"), ("Polysorbate 60", "3"), ("Sorbitan Stearate", "1")];
        let formula = lotion(&bench, &oils);
        let findings = bench.check(&formula);
        assert_eq!(find(&findings, super::CODE).cures[0].code, "cure.blend");
        bench.every_cure_cures(&formula, super::CODE);
    }

    #[test]
    fn what_meets_the_oil_is_no_finding() {
        let bench = Bench::new();
        // Polysorbate 60 and sorbitan stearate 1 : 2.2 make 7.9.
        let oils = [("Helianthus Annuus Seed Oil", "20"), ("Polysorbate 60", "1.25"), ("Sorbitan Stearate", "2.75")];
        assert!(!codes(&bench.check(&lotion(&bench, &oils))).contains(&super::CODE));
    }

    #[test]
    fn it_is_silent_where_the_balance_does_not_speak() {
        let bench = Bench::new();
        let oil = ("Helianthus Annuus Seed Oil", "20");
        for oils in [
            vec![oil, ("Cetearyl Olivate", "4")],
            vec![oil, ("Polysorbate 60", "4"), ("Polyacrylate Crosspolymer-6", "0.3")],
            vec![oil, ("Polysorbate 60", "1"), ("Cetearyl Alcohol", "4")],
            vec![("Argania Spinosa Kernel Oil", "20"), ("Polysorbate 60", "4")],
        ] {
            assert!(!codes(&bench.check(&lotion(&bench, &oils))).contains(&super::CODE), "{oils:?}");
        }
    }
}
