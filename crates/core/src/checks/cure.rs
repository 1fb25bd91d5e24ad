//! Computed changes that remove a finding.

use super::contents::{Contents, water_share};
use super::finding::{Value, Values};
use crate::amount::Amount;
use crate::formula::{Formula, LineId, PhaseId};
use crate::material::{ConstituentId, MaterialId};
use crate::quantity::{Celsius, Grams, Percent, Ph};
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};
use rust_decimal::{Decimal, RoundingStrategy};
use stillroom_terms::Class;
use stillroom_terms::{PhaseKind, WrittenIn};

/// One change to a formula.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Change {
    /// A line states another percent.
    SetPercent {
        /// The line.
        line: LineId,
        /// Its percent.
        percent: Percent,
    },
    /// A line goes.
    RemoveLine {
        /// The line.
        line: LineId,
    },
    /// A line comes.
    AddLine {
        /// What is weighed out.
        material: MaterialId,
        /// How much.
        percent: Percent,
        /// Into the first phase of this kind; one is made if there is none.
        kind: PhaseKind,
    },
    /// A line moves to the end of the first phase of a kind; one is made if there is none.
    MoveLine {
        /// The line.
        line: LineId,
        /// The kind.
        kind: PhaseKind,
    },
    /// The pH aimed at.
    SetTargetPh {
        /// The pH.
        ph: Ph,
    },
    /// The temperature a phase is brought to.
    SetPhaseTemperature {
        /// The phase.
        phase: PhaseId,
        /// The temperature.
        temperature: Celsius,
    },
    /// A line is meant to stay solid.
    Suspend {
        /// The line.
        line: LineId,
    },
}

/// What would remove a finding.
#[derive(Debug, Clone, PartialEq)]
pub struct Cure {
    /// Stable code; names its sentence.
    pub code: &'static str,
    /// The numbers of its sentence.
    pub values: Values,
    /// What it changes, in order.
    pub changes: Vec<Change>,
}

impl Cure {
    /// A cure of these changes.
    #[must_use]
    pub fn of(code: &'static str, values: Values, changes: Vec<Change>) -> Self {
        Self { code, values, changes }
    }
}

impl Formula {
    /// Makes the changes of a cure. `phase_name` names a phase that has to be made.
    pub fn make_changes(&mut self, changes: &[Change], phase_name: impl Fn(PhaseKind) -> String) {
        // In a formula written in grams a percent is a percent of what its numbers make now.
        let whole = self.lines().fold(Decimal::ZERO, |sum, line| match line.amount {
            Amount::Grams(mass) => sum.checked_add(mass.value()).unwrap_or(sum),
            Amount::Percent(_) | Amount::QuantumSatis => sum,
        });
        let written_in = self.written_in;
        let amount = |percent: Percent| match written_in {
            WrittenIn::Percent => Amount::Percent(percent),
            WrittenIn::Grams => {
                let mass = percent.value().checked_mul(whole).map(|mass| (mass / Decimal::ONE_HUNDRED).round_dp(4));
                Amount::Grams(mass.and_then(|mass| Grams::new(mass).ok()).unwrap_or(Grams::ZERO))
            }
        };
        for change in changes {
            match change {
                Change::SetPercent { line, percent } => {
                    if let Some(line) = self.line_mut(*line) {
                        line.amount = amount(*percent);
                    }
                }
                Change::RemoveLine { line } => {
                    self.remove_line(*line);
                }
                Change::AddLine { material, percent, kind } => {
                    let phase = self.phase_for(*kind, &phase_name);
                    self.add_line(phase, *material, amount(*percent));
                }
                Change::MoveLine { line, kind } => {
                    let phase = self.phase_for(*kind, &phase_name);
                    self.move_line(*line, phase, usize::MAX);
                }
                Change::SetTargetPh { ph } => {
                    self.target_ph = Some(*ph);
                    // What was measured was another product.
                    self.measured_ph = None;
                }
                Change::SetPhaseTemperature { phase, temperature } => {
                    if let Some(phase) = self.phase_mut(*phase) {
                        phase.temperature = Some(*temperature);
                    }
                }
                Change::Suspend { line } => {
                    if let Some(line) = self.line_mut(*line) {
                        line.suspended = true;
                    }
                }
            }
        }
    }

    fn phase_for(&mut self, kind: PhaseKind, name: impl Fn(PhaseKind) -> String) -> PhaseId {
        match self.phases.iter().find(|phase| phase.kind == kind) {
            Some(phase) => phase.id,
            None => self.add_phase(name(kind), kind, None),
        }
    }
}

/// Which way a computed percent is rounded so that the cure still cures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Round {
    /// Never more.
    Down,
    /// Never less.
    Up,
}

/// So little water, or oil, in percent, is no phase of its own.
const NO_WATER: f64 = 0.5;
const NO_OIL: f64 = 0.05;

/// What a computation leaves in the last digits, in percent: less than this over or under a bound is no difference.
pub const LAST_DIGITS: f64 = 1e-8;

/// A percent with as many decimals as a maker weighs: two, or more where two figures ask for it.
#[must_use]
pub fn weighable(percent: f64, round: Round) -> Option<Percent> {
    if !(0.0..=100.0).contains(&percent) {
        return None;
    }
    let decimals = match percent {
        percent if percent >= 0.1 => 2,
        percent if percent >= 0.01 => 3,
        percent if percent >= 0.001 => 4,
        _ => 6,
    };
    // What a computation leaves in the last digits must not push an exact figure over the edge.
    let nudge = match round {
        Round::Down => 1e-9,
        Round::Up => -1e-9,
    };
    let strategy = match round {
        Round::Down => RoundingStrategy::ToZero,
        Round::Up => RoundingStrategy::AwayFromZero,
    };
    let exact = Decimal::from_f64((percent + nudge).max(0.0))?;
    Percent::new(exact.round_dp_with_strategy(decimals, strategy)).ok()
}

/// The line that gives way when another changes: the q.s. line, or the largest line of water.
pub(super) fn giving_way(contents: &Contents<'_>, changed: &[LineId]) -> Option<(LineId, bool, Percent)> {
    let lines = &contents.evaluation.lines;
    if let Some((share, _)) = lines.iter().find(|(share, _)| share.quantum_satis) {
        return Some((share.line, true, share.percent));
    }
    let waters = contents.formula.lines().filter(|line| {
        let material = contents.source.material(line.material);
        material.is_some_and(|material| material.class == Class::Water) && !changed.contains(&line.id)
    });
    let share = |line: LineId| lines.iter().find(|(share, _)| share.line == line).map(|(share, _)| share.percent);
    let largest = waters.max_by_key(|line| share(line.id))?;
    Some((largest.id, false, share(largest.id)?))
}

/// The changes that give lines new percents and let the q.s. line, or else the water, take up the difference. `None` where
/// nothing can give way.
#[must_use]
pub fn set_percents(contents: &Contents<'_>, new: &[(LineId, Percent)]) -> Option<Vec<Change>> {
    let changed: Vec<LineId> = new.iter().map(|(line, _)| *line).collect();
    let (rest, quantum_satis, left) = giving_way(contents, &changed)?;
    if changed.contains(&rest) {
        return None;
    }
    let mut left = left.value();
    for (line, percent) in new {
        let now = contents.evaluation.lines.iter().find(|(share, _)| share.line == *line)?.0.percent;
        left = left.checked_add(now.value())?.checked_sub(percent.value())?;
    }
    if left <= Decimal::ZERO {
        return None;
    }
    let mut changes: Vec<Change> =
        new.iter().map(|(line, percent)| Change::SetPercent { line: *line, percent: *percent }).collect();
    if !quantum_satis {
        changes.push(Change::SetPercent { line: rest, percent: Percent::new(left).ok()? });
    }
    Some(changes)
}

/// What a line brings to a weighted sum of substances, in percent of the product.
fn brought(contents: &Contents<'_>, members: &[(ConstituentId, f64)], line: LineId) -> f64 {
    let of_line = |(id, weight): &(ConstituentId, f64)| {
        let present = contents.find(*id)?;
        let brought = present.trail.iter().find(|each| each.line == line)?;
        Some(brought.percent.to_physics() * weight)
    };
    members.iter().filter_map(of_line).sum()
}

/// Lines that bring something of a weighted sum, most first: the line, what it brings, its percent.
fn bringers(contents: &Contents<'_>, members: &[(ConstituentId, f64)]) -> Vec<(LineId, f64, f64)> {
    let mut lines: Vec<(LineId, f64, f64)> = contents
        .evaluation
        .lines
        .iter()
        .filter(|(share, _)| !share.quantum_satis)
        .map(|(share, _)| (share.line, brought(contents, members, share.line), share.percent.to_physics()))
        .filter(|(_, brought, percent)| *brought > 0.0 && *percent > 0.0)
        .collect();
    lines.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    lines
}

/// Brings a weighted sum of substances from `now` down to at most `allowed` percent: by the line that brings most, or where
/// that is not enough by all of them in proportion. With nothing allowed the lines go.
#[must_use]
pub fn lower(contents: &Contents<'_>, members: &[(ConstituentId, f64)], now: f64, allowed: f64) -> Option<Cure> {
    let lines = bringers(contents, members);
    let &(first, most, percent) = lines.first()?;
    if allowed <= 0.0 {
        return remove(contents, &lines.iter().map(|(line, ..)| *line).collect::<Vec<_>>());
    }
    // What gives way may bring some of the same, too.
    let (rest, _, rest_percent) = giving_way(contents, &[first])?;
    let rest_rate = brought(contents, members, rest) / rest_percent.to_physics().max(f64::MIN_POSITIVE);
    let too_much = now - allowed;
    let alone = percent - too_much / (most / percent - rest_rate);
    if alone > 0.0 && most / percent > rest_rate {
        let to = weighable(alone, Round::Down).filter(|to| !to.is_zero())?;
        let changes = set_percents(contents, &[(first, to)])?;
        let material = contents.formula.line(first)?.material;
        return Some(Cure::of(
            "cure.lower",
            vec![("material", Value::Material(material)), ("to", Value::Exact(to))],
            changes,
        ));
    }
    let (all, sum): (f64, f64) = lines.iter().fold((0.0, 0.0), |(all, sum), (_, b, p)| (all + b, sum + p));
    let keep = 1.0 - too_much / (all - rest_rate * sum);
    if !(keep > 0.0 && keep < 1.0) {
        return None;
    }
    let new: Option<Vec<(LineId, Percent)>> =
        lines.iter().map(|(line, _, percent)| Some((*line, weighable(percent * keep, Round::Down)?))).collect();
    let new = new?;
    if new.iter().any(|(_, percent)| percent.is_zero()) {
        return None;
    }
    let changes = set_percents(contents, &new)?;
    let named = new.iter().filter_map(|(line, to)| Some((contents.formula.line(*line)?.material, *to)));
    Some(Cure::of("cure.lower-all", vec![("lines", Value::Amounts(named.collect()))], changes))
}

/// Brings a weighted sum of substances from `now` up to at least `wanted` percent, by the line that brings most.
#[must_use]
pub fn raise(contents: &Contents<'_>, members: &[(ConstituentId, f64)], now: f64, wanted: f64) -> Option<Cure> {
    let &(line, most, percent) = bringers(contents, members).first()?;
    let (rest, _, rest_percent) = giving_way(contents, &[line])?;
    let rest_rate = brought(contents, members, rest) / rest_percent.to_physics().max(f64::MIN_POSITIVE);
    let rate = most / percent - rest_rate;
    if rate <= 0.0 {
        return None;
    }
    let to = weighable(percent + (wanted - now) / rate, Round::Up)?;
    let times = to.to_physics() / percent;
    if breaks_a_limit(contents, line, times) || brings_a_phase(contents, line, times) {
        return None;
    }
    let changes = set_percents(contents, &[(line, to)])?;
    let material = contents.formula.line(line)?.material;
    Some(Cure::of("cure.raise", vec![("material", Value::Material(material)), ("to", Value::Exact(to))], changes))
}

/// Whether a line that grows so many times brings something over a limit that is kept now.
fn breaks_a_limit(contents: &Contents<'_>, line: LineId, times: f64) -> bool {
    contents.touched.iter().any(|limit| {
        let Some(most) = contents.bound_of(limit) else { return false };
        let more = brought(contents, &limit.members, line) * (times - 1.0);
        let now: f64 = limit.members.iter().map(|(id, factor)| contents.percent_of(*id) * factor).sum();
        more > 0.0 && now <= most && now + more > most
    })
}

/// Whether a line that grows so many times brings water into a dry product, oil into one without, or more of either than is
/// there: another product then.
fn brings_a_phase(contents: &Contents<'_>, line: LineId, times: f64) -> bool {
    let (mut water, mut oil) = (0.0, 0.0);
    for each in &contents.present {
        for part in each.trail.iter().filter(|part| part.line == line) {
            let more = part.percent.to_physics() * (times - 1.0);
            water += more * water_share(each);
            oil += if each.is_oil() { more } else { 0.0 };
        }
    }
    let newly = |now: f64, more: f64, none: f64| now + more > none && (now <= none || more > now);
    newly(contents.water, water, NO_WATER) || newly(contents.oil, oil, NO_OIL)
}

/// Takes lines out and lets the q.s. line, or else the water, take their place.
#[must_use]
pub fn remove(contents: &Contents<'_>, lines: &[LineId]) -> Option<Cure> {
    let nothing: Vec<(LineId, Percent)> = lines.iter().map(|line| (*line, Percent::ZERO)).collect();
    let mut changes: Vec<Change> = set_percents(contents, &nothing)?;
    for change in &mut changes {
        if let Change::SetPercent { line, percent } = change
            && percent.is_zero()
        {
            *change = Change::RemoveLine { line: *line };
        }
    }
    let material = contents.formula.line(*lines.first()?)?.material;
    let (code, values) = if lines.len() == 1 {
        ("cure.remove", vec![("material", Value::Material(material))])
    } else {
        let count = lines.len().to_f64().unwrap_or(f64::NAN);
        ("cure.remove-lines", vec![("count", Value::Number(count))])
    };
    Some(Cure::of(code, values, changes))
}

/// Adds a substance by the material that brings it; the q.s. line, or else the water, gives way.
#[must_use]
pub fn add(contents: &Contents<'_>, substances: &[(ConstituentId, Percent)], kind: PhaseKind) -> Option<Cure> {
    let (rest, quantum_satis, left) = giving_way(contents, &[])?;
    let mut left = left.value();
    let mut changes = Vec::with_capacity(substances.len() + 1);
    for (substance, percent) in substances {
        let material = contents.knowledge.material_of(*substance)?;
        left = left.checked_sub(percent.value())?;
        changes.push(Change::AddLine { material, percent: *percent, kind });
    }
    if left <= Decimal::ZERO {
        return None;
    }
    if !quantum_satis {
        changes.push(Change::SetPercent { line: rest, percent: Percent::new(left).ok()? });
    }
    let names = substances.iter().map(|(substance, _)| *substance).collect();
    let (code, values) = match substances {
        [(substance, percent)] => {
            ("cure.add", vec![("substance", Value::Substance(*substance)), ("to", Value::Exact(*percent))])
        }
        _ => ("cure.add-several", vec![("substances", Value::Substances(names))]),
    };
    Some(Cure::of(code, values, changes))
}

/// Aims at another pH.
#[must_use]
pub fn set_ph(ph: f64, round: Round) -> Option<Cure> {
    let strategy = match round {
        Round::Down => RoundingStrategy::ToNegativeInfinity,
        Round::Up => RoundingStrategy::ToPositiveInfinity,
    };
    let nudge = if round == Round::Down { 1e-9 } else { -1e-9 };
    let ph = Ph::new(Decimal::from_f64(ph + nudge)?.round_dp_with_strategy(1, strategy)).ok()?;
    Some(Cure::of("cure.set-ph", vec![("ph", Value::Ph(ph.to_physics()))], vec![Change::SetTargetPh { ph }]))
}

/// Moves lines to the phase of a kind.
#[must_use]
pub fn move_lines(contents: &Contents<'_>, lines: &[LineId], kind: PhaseKind) -> Option<Cure> {
    let material = contents.formula.line(*lines.first()?)?.material;
    let changes = lines.iter().map(|line| Change::MoveLine { line: *line, kind }).collect();
    let code = match kind {
        PhaseKind::CoolDown => "cure.move-to-cool-down",
        PhaseKind::HeatedOil => "cure.move-to-oil",
        PhaseKind::HeatedWater => "cure.move-to-water",
        PhaseKind::RoomTemperature => "cure.move-to-room",
    };
    Some(Cure::of(code, vec![("material", Value::Material(material))], changes))
}

/// Brings a phase to another temperature, in whole degrees.
#[must_use]
pub fn set_phase_temperature(phase: PhaseId, celsius: f64, round: Round) -> Option<Cure> {
    let whole = match round {
        Round::Down => (celsius + 1e-9).floor(),
        Round::Up => (celsius - 1e-9).ceil(),
    };
    let temperature = Celsius::new(Decimal::from_f64(whole)?).ok()?;
    Some(Cure::of(
        "cure.set-phase-temperature",
        vec![("phase", Value::Phase(phase)), ("temperature", Value::Celsius(whole))],
        vec![Change::SetPhaseTemperature { phase, temperature }],
    ))
}

/// Lets two lines share what they make together in another proportion; nothing else changes. `first` is what the first of
/// them then makes.
#[must_use]
pub fn share_out(contents: &Contents<'_>, [first, second]: [LineId; 2], first_percent: f64) -> Option<Cure> {
    let percent = |line: LineId| {
        let mut lines = contents.evaluation.lines.iter();
        lines.find(|(share, _)| share.line == line && !share.quantum_satis).map(|(share, _)| share.percent.value())
    };
    let together = percent(first)?.checked_add(percent(second)?)?;
    let one = Decimal::from_f64(first_percent)?.round_dp(if together < Decimal::ONE { 3 } else { 2 });
    let (one, other) = (Percent::new(one).ok()?, Percent::new(together.checked_sub(one)?).ok()?);
    let material = |line: LineId| contents.formula.line(line).map(|line| Value::Material(line.material));
    Some(Cure::of(
        "cure.blend",
        vec![
            ("first", material(first)?),
            ("first_percent", Value::Exact(one)),
            ("second", material(second)?),
            ("second_percent", Value::Exact(other)),
        ],
        vec![Change::SetPercent { line: first, percent: one }, Change::SetPercent { line: second, percent: other }],
    ))
}

/// Lets a line give a part of itself up to a substance that is added; together they stay what the line was.
#[must_use]
pub fn share_with(
    contents: &Contents<'_>,
    line: LineId,
    substance: ConstituentId,
    added: f64,
    kind: PhaseKind,
) -> Option<Cure> {
    let mut lines = contents.evaluation.lines.iter();
    let together = lines.find(|(share, _)| share.line == line && !share.quantum_satis)?.0.percent.value();
    let added = Decimal::from_f64(added)?.round_dp(if together < Decimal::ONE { 3 } else { 2 });
    let (kept, added) = (Percent::new(together.checked_sub(added)?).ok()?, Percent::new(added).ok()?);
    let material = contents.knowledge.material_of(substance)?;
    Some(Cure::of(
        "cure.blend-with",
        vec![
            ("material", Value::Material(contents.formula.line(line)?.material)),
            ("to", Value::Exact(kept)),
            ("substance", Value::Substance(substance)),
            ("added", Value::Exact(added)),
        ],
        vec![Change::SetPercent { line, percent: kept }, Change::AddLine { material, percent: added, kind }],
    ))
}

/// Takes lines out and adds as much of one substance in their place, in the phase of the first.
#[must_use]
pub fn replace(contents: &Contents<'_>, lines: &[LineId], substance: ConstituentId) -> Option<Cure> {
    let first = *lines.first()?;
    let mut together = Decimal::ZERO;
    for line in lines {
        let mut shares = contents.evaluation.lines.iter();
        let (share, _) = shares.find(|(share, _)| share.line == *line && !share.quantum_satis)?;
        together = together.checked_add(share.percent.value())?;
    }
    let percent = Percent::new(together).ok()?;
    let material = contents.knowledge.material_of(substance)?;
    let kind = contents.phase_of(first)?.kind;
    let mut changes: Vec<Change> = lines.iter().map(|line| Change::RemoveLine { line: *line }).collect();
    changes.push(Change::AddLine { material, percent, kind });
    Some(Cure::of(
        "cure.put-in-place",
        vec![
            ("material", Value::Material(contents.formula.line(first)?.material)),
            ("substance", Value::Substance(substance)),
            ("to", Value::Exact(percent)),
        ],
        changes,
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_computed_percent_is_rounded_to_the_side_that_cures() {
        let text = |percent, round| weighable(percent, round).map(|percent| percent.value().to_string());
        assert_eq!(text(0.3789, Round::Down).as_deref(), Some("0.37"));
        assert_eq!(text(0.3711, Round::Up).as_deref(), Some("0.38"));
        assert_eq!(text(0.37, Round::Down).as_deref(), Some("0.37"));
        assert_eq!(text(0.37, Round::Up).as_deref(), Some("0.37"));
        assert_eq!(text(0.01234, Round::Down).as_deref(), Some("0.012"));
        assert_eq!(text(-1.0, Round::Up), None);
        assert_eq!(text(f64::NAN, Round::Up), None);
    }
}
