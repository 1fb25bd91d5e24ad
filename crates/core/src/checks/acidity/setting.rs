//! Bringing a formula to a pH: how much of which material, with the q.s. line giving way, and rounded as it is weighed.
//!
//! The amounts of a formula mix in straight lines: the formula without the line and the formula with all of it that there
//! is room for are two solutions, and every percent between is a mixture of both. The equilibrium is solved for such
//! mixtures, so that what the q.s. line brings, and what leaves with it, is counted to the last digit.

use crate::checks::contents::Contents;
use crate::checks::cure::{Change, giving_way};
use crate::checks::facts::Trait;
use crate::chemistry::ph::predict::{self, Prediction};
use crate::chemistry::ph::{PhError, Solver};
use crate::composition::Makeups;
use crate::evaluation::{Bench, evaluate};
use crate::formula::LineId;
use crate::material::MaterialId;
use crate::quantity::{Grams, Percent, Ph};
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use stillroom_terms::PhaseKind;

/// How near a rounded percent has to bring the pH to the target.
pub const NEAR: f64 = 0.01;
/// Most decimals of a percent: beyond that no dilution at a bench reaches.
const MOST_DECIMALS: u32 = 6;
/// Share of the line that gives way that may be used up: water has to be left.
const MOST_OF_REST: Decimal = Decimal::from_parts(5, 0, 0, false, 1);
/// Mass of a mole of carbon dioxide, in g.
const CARBON_DIOXIDE: f64 = 44.009;
/// Litres of a mole of gas at 25 °C and 101.325 kPa: the ideal gas.
const MOLAR_VOLUME: f64 = 24.465;
/// From this pH carbonate keeps its carbon dioxide: the pH of bicarbonate in water.
const KEEPS_GAS: f64 = 8.3;

/// Why no amount is offered.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum SetError {
    /// Nothing is known of what the material brings to the pH, or there is no such material.
    #[error("nothing is known of what the material brings to the pH")]
    NoData,
    /// No line can give way, or it is too small.
    #[error("no line can give way")]
    NothingGivesWay,
    /// The solution is so weak that there is no room for it.
    #[error("there is no room for so much of the solution")]
    TooMuch,
    /// The equilibrium has no answer.
    #[error("{0}")]
    Ph(#[from] PhError),
}

impl SetError {
    /// Every code of this error beside those of [`PhError`].
    pub const CODES: [&'static str; 3] = ["set.no-data", "set.nothing-gives-way", "set.too-much"];

    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoData => "set.no-data",
            Self::NothingGivesWay => "set.nothing-gives-way",
            Self::TooMuch => "set.too-much",
            Self::Ph(error) => error.code(),
        }
    }
}

/// Carbon dioxide that a carbonate gives off, at most.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gas {
    /// In g of 100 g of product.
    pub grams: f64,
    /// In litres at 25 °C and 1013 hPa, of 100 g of product.
    pub litres: f64,
}

/// What brings a formula to a pH.
#[derive(Debug, Clone, PartialEq)]
pub struct Setting {
    /// What is weighed.
    pub material: MaterialId,
    /// The line that changes; `None` where one is added.
    pub line: Option<LineId>,
    /// Percent of the line before.
    pub before: Percent,
    /// Percent of the line after, rounded.
    pub percent: Percent,
    /// To how many decimals: as few as keep the pH within [`NEAR`] of the target.
    pub decimals: u32,
    /// The same before it was rounded.
    pub exact: f64,
    /// The pH once it is in, by the rounded percent.
    pub reached: Prediction,
    /// Carbon dioxide that is given off.
    pub gas: Option<Gas>,
    /// Whether it is caustic as it is handled.
    pub caustic: bool,
    /// The changes to the formula; they aim at the target, too.
    pub changes: Vec<Change>,
}

impl Setting {
    /// What the line takes more of the material (less: nothing), as a solution of a strength in mass percent, its water in
    /// the place of water of the line that gives way.
    ///
    /// # Errors
    /// `set.too-much` if it is no strength, or the solution would be more than the formula.
    pub fn as_solution(&self, strength: Percent) -> Result<Percent, SetError> {
        let more = self.percent.checked_sub(self.before).unwrap_or(Percent::ZERO);
        let scaled = more.value().checked_mul(Decimal::ONE_HUNDRED).and_then(|all| all.checked_div(strength.value()));
        let percent = scaled.and_then(|all| Percent::new(all.round_dp(self.decimals + 1)).ok());
        percent.filter(|percent| *percent < Percent::HUNDRED).ok_or(SetError::TooMuch)
    }

    /// The same in grams of a batch.
    ///
    /// # Errors
    /// As [`Setting::as_solution`].
    pub fn grams_of_solution(&self, strength: Percent, batch: Grams) -> Result<Grams, SetError> {
        self.as_solution(strength)?.of(batch).ok_or(SetError::TooMuch)
    }
}

/// How much of a material brings a formula to a pH, by what was measured or else as it is written.
///
/// A line of the material that is there changes, and may become less; otherwise one is added. Set and then predicted, the
/// pH is the target within [`NEAR`].
///
/// # Errors
/// `set.no-data`, `set.nothing-gives-way`; `ph.unreachable` with where it ends; else as [`Solver::solve_mix`].
pub fn set(
    contents: &Contents<'_>,
    makeups: &mut Makeups,
    material: MaterialId,
    target: f64,
) -> Result<Setting, SetError> {
    let aim = ph_of(target)?;
    let line = line_of(contents, material);
    let before = line.map_or(Percent::ZERO, |line| share(contents, line));
    let most = room(contents, line)?.checked_add(before).ok_or(SetError::NothingGivesWay)?;
    let unaccounted = contents.calibrated()?.unaccounted;
    let mut at = |percent: Percent| after(contents, makeups, &[(line, material, percent)], unaccounted);
    let (none, all) = (at(Percent::ZERO)?, at(most)?);
    if all.contents.known == none.contents.known {
        return Err(SetError::NoData);
    }
    let (none, all) = (none.contents.solution()?, all.contents.solution()?);
    let mut solver = Solver::new(&[&none, &all], contents.conditions.room)?;
    let whole = most.to_physics();
    let mut ph = |percent: f64| {
        let share = (percent / whole).clamp(0.0, 1.0);
        solver.solve_mix(&[1.0 - share, share]).map(|solved| solved.ph)
    };
    let exact = find(&mut ph, before.to_physics(), whole, target)?;
    let rounded = (1..=MOST_DECIMALS).find_map(|decimals| {
        let percent = Percent::new(Decimal::from_f64(exact)?.round_dp(decimals)).ok()?;
        let near = ph(percent.to_physics()).is_ok_and(|there| (there - target).abs() <= NEAR);
        (near || decimals == MOST_DECIMALS).then_some((percent, decimals))
    });
    let (percent, decimals) = rounded.ok_or(SetError::NothingGivesWay)?;
    let After { mut changes, contents: there } = after(contents, makeups, &[(line, material, percent)], unaccounted)?;
    changes.push(Change::SetTargetPh { ph: aim });
    let inside = inside(contents, makeups, material);
    let moles_of_gas = inside.iter().filter_map(|(id, share)| {
        let facts = contents.knowledge.facts(*id)?;
        facts.has(Trait::Carbonate)?;
        Some(share / 100.0 * (percent.to_physics() - before.to_physics()).max(0.0) / facts.molar_mass?.value)
    });
    let moles: f64 = moles_of_gas.sum();
    let caustic = inside
        .iter()
        .any(|(id, _)| contents.knowledge.facts(*id).is_some_and(|facts| facts.has(Trait::Caustic).is_some()));
    Ok(Setting {
        material,
        line,
        before,
        percent,
        decimals,
        exact,
        reached: predict::predict(&there)?,
        gas: (moles > 0.0 && target < KEEPS_GAS).then(|| gas(moles)),
        caustic,
        changes,
    })
}

/// So many mol of carbon dioxide.
pub(super) const fn gas(moles: f64) -> Gas {
    Gas { grams: moles * CARBON_DIOXIDE, litres: moles * MOLAR_VOLUME }
}

/// A buffer in a formula.
#[derive(Debug, Clone, PartialEq)]
pub struct Buffer {
    /// The acid, base or ampholyte, and its percent of the product.
    pub acid: (MaterialId, Percent),
    /// What sets it, and its percent.
    pub setter: (MaterialId, Percent),
    /// Buffer capacity of the whole product, in mol/kg water per unit of pH.
    pub capacity: f64,
    /// The pH once both are in.
    pub reached: Prediction,
    /// The changes to the formula; they aim at the target, too.
    pub changes: Vec<Change>,
}

/// How much of two materials, an acid and a base or its salt, brings the whole formula to a pH and lets it hold it with a
/// capacity, in mol/kg water per unit of pH. Lines of either that are there count and change.
///
/// # Errors
/// As [`set`]; `ph.too-strong` if the acid's constants lie too far from the pH for such a capacity.
pub fn buffer(
    contents: &Contents<'_>,
    makeups: &mut Makeups,
    [acid, setter]: [MaterialId; 2],
    target: f64,
    capacity: f64,
) -> Result<Buffer, SetError> {
    let aim = ph_of(target)?;
    if !(1e-6..=1.0).contains(&capacity) {
        return Err(PhError::Amount.into());
    }
    let lines = [line_of(contents, acid), line_of(contents, setter)];
    let unaccounted = contents.calibrated()?.unaccounted;
    let half = Percent::new(room(contents, None)?.value() / Decimal::TWO).map_err(|_| SetError::NothingGivesWay)?;
    let mut at = |first: Percent, second: Percent| {
        let new = [(lines[0], acid, first), (lines[1], setter, second)];
        after(contents, makeups, &new, unaccounted)
    };
    let none = at(Percent::ZERO, Percent::ZERO)?.contents;
    let (one, other) = (at(half, Percent::ZERO)?.contents, at(Percent::ZERO, half)?.contents);
    if one.known == none.known || other.known == none.known {
        return Err(SetError::NoData);
    }
    let (none, one, other) = (none.solution()?, one.solution()?, other.solution()?);
    let mut solver = Solver::new(&[&none, &one, &other], contents.conditions.room)?;
    // Shares of the half of what may give way, from nothing to all of it.
    let mut made = |first: f64| -> Result<(f64, f64), PhError> {
        let mut ph = |second: f64| solver.solve_mix(&[1.0 - first - second, first, second]).map(|solved| solved.ph);
        let second = find(&mut ph, 0.0, 1.0 - first, target)?;
        Ok((second, solver.solve_mix(&[1.0 - first - second, first, second])?.capacity))
    };
    let (mut low, mut high) = (0.0, 1e-5);
    // What was found is kept: at the least amount that sets the pH at all, the last digit decides whether it is found anew.
    let (mut second, mut there) = loop {
        match made(high) {
            Ok((_, there)) if there < capacity && high < 0.5 => {
                low = high;
                high *= 2.0;
            }
            Ok((_, there)) if there < capacity => return Err(SetError::TooMuch),
            Ok(found) => break found,
            // So little of it does not set a pH that the rest already has.
            Err(PhError::Unreachable { .. }) if high < 0.25 => {
                low = high;
                high *= 2.0;
            }
            Err(error) => return Err(error.into()),
        }
    };
    for _ in 0..40 {
        let middle = f64::midpoint(low, high);
        match made(middle) {
            Ok(found) if found.1 >= capacity => (high, (second, there)) = (middle, found),
            _ => low = middle,
        }
    }
    let percent = |share: f64| {
        let exact = Decimal::from_f64(share)?.checked_mul(half.value())?;
        Percent::new(exact.round_dp(4)).ok()
    };
    let both = percent(high).zip(percent(second)).ok_or(SetError::NothingGivesWay)?;
    let new = [(lines[0], acid, both.0), (lines[1], setter, both.1)];
    let After { mut changes, contents: with } = after(contents, makeups, &new, unaccounted)?;
    changes.push(Change::SetTargetPh { ph: aim });
    Ok(Buffer {
        acid: (acid, both.0),
        setter: (setter, both.1),
        capacity: there,
        reached: predict::predict(&with)?,
        changes,
    })
}

/// The formula with other amounts, as far as its pH goes.
pub(super) struct After {
    pub changes: Vec<Change>,
    pub contents: predict::Contents<'static>,
}

/// What a line is to be: itself or a new one, of which material, and how much.
pub(super) type NewAmount = (Option<LineId>, MaterialId, Percent);

pub(super) fn after(
    contents: &Contents<'_>,
    makeups: &mut Makeups,
    new: &[NewAmount],
    unaccounted: Option<f64>,
) -> Result<After, SetError> {
    let changes = changes(contents, new).ok_or(SetError::NothingGivesWay)?;
    let mut formula = contents.formula.clone();
    formula.make_changes(&changes, |_| String::new());
    let evaluation = evaluate(&formula, &Bench::default(), contents.source, makeups);
    let there = Contents::new(&formula, &evaluation, contents.source, contents.knowledge, contents.conditions);
    let mut dissolved = there.dissolved();
    dissolved.unaccounted = unaccounted;
    Ok(After { changes, contents: dissolved })
}

/// The changes that make new amounts of lines, the q.s. line or else the water giving way.
fn changes(contents: &Contents<'_>, new: &[NewAmount]) -> Option<Vec<Change>> {
    let changed: Vec<LineId> = new.iter().filter_map(|(line, ..)| *line).collect();
    let (rest, quantum_satis, left) = giving_way(contents, &changed)?;
    if changed.contains(&rest) {
        return None;
    }
    let mut left = left.value();
    let mut changes = Vec::with_capacity(new.len() + 2);
    for (line, material, percent) in new {
        let now = line.map_or(Percent::ZERO, |line| share(contents, line));
        left = left.checked_add(now.value())?.checked_sub(percent.value())?;
        match line {
            Some(line) => changes.push(Change::SetPercent { line: *line, percent: *percent }),
            None if percent.is_zero() => {}
            None => {
                changes.push(Change::AddLine { material: *material, percent: *percent, kind: phase_for(contents) });
            }
        }
    }
    if left <= Decimal::ZERO {
        return None;
    }
    if !quantum_satis {
        changes.push(Change::SetPercent { line: rest, percent: Percent::new(left).ok()? });
    }
    Some(changes)
}

/// Where a pH is set: once the batch is cool, or with the rest where nothing is heated.
fn phase_for(contents: &Contents<'_>) -> PhaseKind {
    let has = |kind| contents.formula.phases.iter().any(|phase| phase.kind == kind);
    if has(PhaseKind::RoomTemperature) && !has(PhaseKind::CoolDown) && !has(PhaseKind::HeatedWater) {
        PhaseKind::RoomTemperature
    } else {
        PhaseKind::CoolDown
    }
}

/// The line of a material that states its own amount, the largest of several.
pub(super) fn line_of(contents: &Contents<'_>, material: MaterialId) -> Option<LineId> {
    let lines = contents.evaluation.lines.iter();
    let own = lines.filter(|(share, each)| *each == material && !share.quantum_satis);
    own.max_by_key(|(share, _)| share.percent).map(|(share, _)| share.line)
}

pub(super) fn share(contents: &Contents<'_>, line: LineId) -> Percent {
    let mut lines = contents.evaluation.lines.iter();
    lines.find(|(share, _)| share.line == line).map_or(Percent::ZERO, |(share, _)| share.percent)
}

/// How much may give way.
fn room(contents: &Contents<'_>, line: Option<LineId>) -> Result<Percent, SetError> {
    let changed: Vec<LineId> = line.into_iter().collect();
    let (.., left) = giving_way(contents, &changed).ok_or(SetError::NothingGivesWay)?;
    let most = left.value().checked_mul(MOST_OF_REST).and_then(|most| Percent::new(most.round_dp(6)).ok());
    most.filter(|most| !most.is_zero()).ok_or(SetError::NothingGivesWay)
}

/// Percent of each constituent in a material.
pub(super) fn inside(
    contents: &Contents<'_>,
    makeups: &mut Makeups,
    material: MaterialId,
) -> Vec<(crate::material::ConstituentId, f64)> {
    use rust_decimal::prelude::ToPrimitive;
    let Ok(inside) = makeups.see_through(material, contents.source) else { return Vec::new() };
    inside.constituents.iter().map(|(id, share)| (*id, share.to_f64().unwrap_or(0.0))).collect()
}

fn ph_of(target: f64) -> Result<Ph, SetError> {
    let ph = Decimal::from_f64(target).and_then(|ph| Ph::new(ph.round_dp(2)).ok());
    ph.ok_or(SetError::Ph(PhError::Amount))
}

/// The amount from nothing to `most` at which a pH is the target, starting from the one that is there. The pH only rises,
/// or only falls, with the amount.
fn find(ph: &mut impl FnMut(f64) -> Result<f64, PhError>, from: f64, most: f64, target: f64) -> Result<f64, PhError> {
    let start = ph(from)?;
    let miss = target - start;
    if miss.abs() < 1e-6 {
        return Ok(from);
    }
    // Which way it goes: a little more moves towards the target, or less has to do it.
    let little = (most * 1e-6).min((most - from) / 2.0);
    let more = ph(from + little)?;
    let upwards = (more - start) * miss > 0.0;
    if !upwards && from <= 0.0 {
        return Err(PhError::Unreachable { ends_at: start });
    }
    let (mut near, mut far) = (from, from);
    let mut step = little;
    loop {
        far = if upwards { (far + step).min(most) } else { (far - step).max(0.0) };
        match ph(far) {
            Ok(there) if (target - there) * miss <= 0.0 => break,
            Ok(there) if far >= most || far <= 0.0 => return Err(PhError::Unreachable { ends_at: there }),
            Ok(_) => near = far,
            // Beyond the model: the target may lie before that.
            Err(PhError::TooStrong { about }) => {
                far = before_too_strong(ph, near, far, target, miss).ok_or(PhError::TooStrong { about })?;
                break;
            }
            Err(other) => return Err(other),
        }
        step *= 2.0;
    }
    for _ in 0..60 {
        let middle = f64::midpoint(near, far);
        if (target - ph(middle)?) * miss <= 0.0 { far = middle } else { near = middle }
    }
    Ok(f64::midpoint(near, far))
}

/// An amount past the target at which the model still holds, if there is one.
fn before_too_strong(
    ph: &mut impl FnMut(f64) -> Result<f64, PhError>,
    mut near: f64,
    mut beyond: f64,
    target: f64,
    miss: f64,
) -> Option<f64> {
    for _ in 0..30 {
        let middle = f64::midpoint(near, beyond);
        match ph(middle) {
            Ok(there) if (target - there) * miss <= 0.0 => return Some(middle),
            Ok(_) => near = middle,
            Err(_) => beyond = middle,
        }
    }
    None
}
