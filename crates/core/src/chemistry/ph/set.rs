//! Reaching a pH: how much to add, what buffer to make, and the curve on the way.

use super::{AcidBase, Activity, Cation, Equilibrium, Medium, PhError, Solution, Solver};
use crate::chemistry::Temperature;

/// How near to the target an amount is found, in pH: far below what is asked of it, 0.01.
const NEAR: f64 = 1e-6;
/// How many times as much is tried next at most.
const MOST_STRIDE: f64 = 32.0;
/// Greatest share tried: so many times the whole of what is added, before it is called unreachable.
const MOST_SHARE: f64 = 1e6;

/// What is added to reach a pH.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dose {
    /// How much of what is added: 1 is all of the solution that was handed in.
    pub share: f64,
    /// The equilibrium once it is in.
    pub reached: Equilibrium,
}

/// How much of `added` brings `base` to a pH.
///
/// `added` is any solution: a kilogram of one of given strength, a mol of a solid (in no water), a buffer. The answer
/// is a share of it; [`Solver::solve_mix`] with `[1, share]` returns the target within 0.01.
///
/// # Errors
/// `ph.unreachable` if no amount reaches the target, with where it ends; `ph.too-strong` if the way leads beyond an
/// ionic strength of 0.5 mol/kg; else as [`Solver::solve_mix`].
///
/// ```
/// use stillroom_core::chemistry::{Temperature, ph::{AcidBase, Cation, Solution, set}};
/// // Sodium hydroxide for 0.1 mol/kg lactic acid to pH 4: more than half is neutralised.
/// let lactic = AcidBase::at_25(0, &[3.86])?;
/// let acid = Solution::in_water(1.0).with(&lactic, 0.1);
/// let lye = Solution::in_water(0.0).with_cation(Cation::Sodium, 1.0);
/// let dose = set::reach(&acid, &lye, 4.0, Temperature::TWENTY_FIVE)?;
/// assert!((dose.share - 0.062).abs() < 0.002);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn reach(base: &Solution<'_>, added: &Solution<'_>, target: f64, at: Temperature) -> Result<Dose, PhError> {
    reach_in(base, added, target, at, Activity::Davies, &Medium::standard())
}

/// The same in a medium of one's own.
///
/// # Errors
/// As [`reach`].
pub fn reach_in(
    base: &Solution<'_>,
    added: &Solution<'_>,
    target: f64,
    at: Temperature,
    activity: Activity,
    medium: &Medium,
) -> Result<Dose, PhError> {
    if !(-1.0..=15.0).contains(&target) {
        return Err(PhError::Amount);
    }
    let mut solver = Solver::in_medium(&[base, added], at, activity, medium)?;
    let mut miss = |share: f64| solver.solve_mix(&[1.0, share]).map(|reached| (reached.ph - target, reached));
    let (start, found) = miss(0.0)?;
    if start.abs() <= NEAR {
        return Ok(Dose { share: 0.0, reached: found });
    }
    // Ever more of it, as far as the slope says and at least twice as much, until the pH has crossed the target.
    let (mut low, mut low_miss) = (0.0, start);
    let mut high = 1e-6;
    let (mut high_miss, mut last) = miss(high)?;
    while high_miss * start > 0.0 {
        let slope = (high_miss - low_miss) / (high - low);
        // What moves away from the target will not come back: a titrant pulls towards its own pH.
        if high >= MOST_SHARE || ((last.ph - target).abs() > start.abs() + 0.5 && high > 1.0) {
            return Err(PhError::Unreachable { ends_at: last.ph });
        }
        (low, low_miss) = (high, high_miss);
        let asked = high - 1.2 * high_miss / slope;
        high = if asked.is_finite() { asked.clamp(2.0 * high, MOST_STRIDE * high) } else { 2.0 * high };
        match miss(high) {
            Ok(next) => (high_miss, last) = next,
            // Where the titrant has carried the mixture out of validity, the target may lie just before that.
            Err(PhError::TooStrong { about }) => {
                return squeeze(&mut miss, (low, low_miss), high, PhError::TooStrong { about });
            }
            Err(other) => return Err(other),
        }
        if (high_miss - low_miss).abs() < 1e-9 && high > 1e4 {
            return Err(PhError::Unreachable { ends_at: last.ph });
        }
    }
    between(&mut miss, (low, low_miss), (high, high_miss))
}

type Reached = Result<(f64, Equilibrium), PhError>;

/// Looks for the target before the share at which the model no longer holds.
fn squeeze(
    miss: &mut impl FnMut(f64) -> Reached,
    mut low: (f64, f64),
    mut beyond: f64,
    error: PhError,
) -> Result<Dose, PhError> {
    for _ in 0..30 {
        let middle = f64::midpoint(low.0, beyond);
        match miss(middle) {
            Ok((missed, _)) if missed * low.1 <= 0.0 => return between(miss, low, (middle, missed)),
            Ok((missed, _)) => low = (middle, missed),
            Err(PhError::TooStrong { .. }) => beyond = middle,
            Err(other) => return Err(other),
        }
    }
    Err(error)
}

/// The share between two at which the miss is nothing: regula falsi after Illinois (Dowell & Jarratt, BIT 11 (1971)
/// 168), with a bisection wherever it does not halve the bracket in three steps.
fn between(
    miss: &mut impl FnMut(f64) -> Reached,
    (mut low, mut low_miss): (f64, f64),
    (mut high, mut high_miss): (f64, f64),
) -> Result<Dose, PhError> {
    let mut width = high - low;
    // Which end stayed last: one that stays twice is given half its weight.
    let mut high_stayed = None;
    for turn in 1..=200 {
        let secant = (low * high_miss - high * low_miss) / (high_miss - low_miss);
        let slow = turn % 3 == 0 && high - low > width / 2.0;
        if turn % 3 == 0 {
            width = high - low;
        }
        let share = if slow || !(secant > low && secant < high) { f64::midpoint(low, high) } else { secant };
        let (missed, reached) = miss(share)?;
        if missed.abs() <= NEAR || high - low <= 1e-15 * high {
            return Ok(Dose { share, reached });
        }
        let high_stays = missed * low_miss > 0.0;
        let again = high_stayed == Some(high_stays);
        high_stayed = Some(high_stays);
        if high_stays {
            (low, low_miss) = (share, missed);
            if again {
                high_miss /= 2.0;
            }
        } else {
            (high, high_miss) = (share, missed);
            if again {
                low_miss /= 2.0;
            }
        }
    }
    Err(PhError::Unsolved)
}

/// A point of a titration curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// How much was added: 1 is all of the solution that was handed in.
    pub share: f64,
    /// The equilibrium, or why there is none.
    pub reached: Result<Equilibrium, PhError>,
}

/// The pH over shares of what is added.
///
/// # Errors
/// As [`Solver::new`]; a point that cannot be computed says so by itself.
pub fn curve(
    base: &Solution<'_>,
    added: &Solution<'_>,
    shares: &[f64],
    at: Temperature,
) -> Result<Vec<Point>, PhError> {
    let mut solver = Solver::new(&[base, added], at)?;
    Ok(shares.iter().map(|&share| Point { share, reached: solver.solve_mix(&[1.0, share]) }).collect())
}

/// How far the pH moves if something is released or taken up: ester that falls into its acid, carbon dioxide of the
/// air.
///
/// Negative: it falls.
///
/// # Errors
/// As [`Solver::solve_mix`].
pub fn shift(base: &Solution<'_>, released: &Solution<'_>, at: Temperature) -> Result<f64, PhError> {
    let mut solver = Solver::new(&[base, released], at)?;
    let before = solver.solve_mix(&[1.0, 0.0])?.ph;
    Ok(solver.solve_mix(&[1.0, 1.0])?.ph - before)
}

/// A buffer of a chosen capacity at a chosen pH.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Buffer {
    /// Acid, base or ampholyte, in mol/kg water.
    pub acid: f64,
    /// What sets it: sodium (or another cation, as hydroxide) if positive, strong acid if negative, in equivalents per
    /// kg water.
    pub equivalents: f64,
    /// The equilibrium of the buffer alone.
    pub reached: Equilibrium,
}

/// The buffer of an acid that has a capacity (mol/kg water per unit of pH) at a pH, set with a cation's hydroxide or a
/// strong acid.
///
/// # Errors
/// `ph.unreachable` if water alone holds the pH better than was asked for; `ph.too-strong` if so much of this acid
/// would be needed that the ionic strength passes 0.5 mol/kg: its pKa then lies too far from the pH.
pub fn design_buffer(
    acid: &AcidBase,
    cation: Cation,
    target: f64,
    capacity: f64,
    at: Temperature,
) -> Result<Buffer, PhError> {
    if !(1e-6..=1.0).contains(&capacity) {
        return Err(PhError::Amount);
    }
    let make = |amount: f64| -> Result<Buffer, PhError> {
        let base = Solution::in_water(1.0).with(acid, amount);
        let unset = Solver::new(&[&base], at)?.solve()?;
        let rises = unset.ph < target;
        let setting = Solution::in_water(0.0);
        let per_cation = f64::from(cation.charge());
        let setting = if rises { setting.with_cation(cation, 1.0 / per_cation) } else { setting.with_anion(1.0) };
        let dose = reach(&base, &setting, target, at)?;
        Ok(Buffer { acid: amount, equivalents: if rises { dose.share } else { -dose.share }, reached: dose.reached })
    };
    let (mut low, mut high) = (1e-7, 1e-6);
    let least = make(low)?;
    if least.reached.capacity >= capacity {
        return Err(PhError::Unreachable { ends_at: least.reached.ph });
    }
    let mut found = make(high)?;
    while found.reached.capacity < capacity {
        low = high;
        high *= 2.0;
        found = match make(high) {
            Ok(found) => found,
            Err(PhError::TooStrong { about }) => {
                return narrow(&make, low, high, capacity, PhError::TooStrong { about });
            }
            Err(other) => return Err(other),
        };
    }
    narrow(&make, low, high, capacity, PhError::Unsolved)
}

/// Bisection on the amount; more of it holds better. `otherwise` if the model ends before the capacity is reached.
fn narrow(
    make: &impl Fn(f64) -> Result<Buffer, PhError>,
    mut low: f64,
    mut high: f64,
    capacity: f64,
    otherwise: PhError,
) -> Result<Buffer, PhError> {
    let mut best = None;
    for _ in 0..45 {
        let middle = f64::midpoint(low, high);
        match make(middle) {
            Ok(buffer) if buffer.reached.capacity < capacity => low = middle,
            Ok(buffer) => {
                high = middle;
                best = Some(buffer);
            }
            Err(PhError::TooStrong { .. }) => high = middle,
            Err(other) => return Err(other),
        }
    }
    best.ok_or(otherwise)
}

#[cfg(test)]
mod tests {
    use super::*;

    const AT: Temperature = Temperature::TWENTY_FIVE;

    fn citric() -> AcidBase {
        AcidBase::at_25(0, &[3.128, 4.761, 6.396]).unwrap()
    }

    #[test]
    fn a_buffer_has_the_capacity_it_was_designed_for() {
        let citric = citric();
        for (target, capacity) in [(4.0, 0.02), (5.0, 0.05), (6.0, 0.01)] {
            let buffer = design_buffer(&citric, Cation::Sodium, target, capacity, AT).unwrap();
            assert!((buffer.reached.ph - target).abs() < 0.01);
            // Proven by adding a little base: the pH must rise by as much as the capacity says, within 10 % for the
            // capacity holds the ionic strength.
            let made =
                Solution::in_water(1.0).with(&citric, buffer.acid).with_cation(Cation::Sodium, buffer.equivalents);
            let lye = Solution::in_water(0.0).with_cation(Cation::Sodium, 1e-4);
            let rise = shift(&made, &lye, AT).unwrap();
            assert!((1e-4 / rise / capacity - 1.0).abs() < 0.1, "{target}: {}", 1e-4 / rise);
        }
    }

    #[test]
    fn an_acid_whose_constants_are_far_from_the_ph_makes_no_buffer() {
        let lactic = AcidBase::at_25(0, &[3.86]).unwrap();
        let none = design_buffer(&lactic, Cation::Sodium, 7.5, 0.05, AT).unwrap_err();
        assert_eq!(none.code(), "ph.too-strong");
    }

    #[test]
    fn a_base_is_set_with_acid() {
        let tris = AcidBase::at_25(1, &[8.072]).unwrap();
        let buffer = design_buffer(&tris, Cation::Sodium, 8.0, 0.02, AT).unwrap();
        assert!(buffer.equivalents < 0.0 && (buffer.reached.ph - 8.0).abs() < 0.01);
    }

    #[test]
    fn what_cannot_be_reached_says_where_it_ends() {
        let base = Solution::in_water(1.0).with_cation(Cation::Sodium, 0.01);
        let weak = AcidBase::at_25(0, &[9.24]).unwrap();
        let boric = Solution::in_water(1.0).with(&weak, 0.1);
        match reach(&base, &boric, 4.0, AT) {
            Err(PhError::Unreachable { ends_at }) => assert!((5.0..7.0).contains(&ends_at), "{ends_at}"),
            other => panic!("{other:?}"),
        }
        // More base never lowers the pH.
        let lye = Solution::in_water(1.0).with_cation(Cation::Sodium, 0.1);
        assert!(matches!(reach(&base, &lye, 5.0, AT), Err(PhError::Unreachable { .. })));
        assert_eq!(reach(&base, &lye, f64::NAN, AT).unwrap_err(), PhError::Amount);
    }

    #[test]
    fn a_curve_rises_with_base_and_says_where_it_cannot_be_computed() {
        let citric = citric();
        let acid = Solution::in_water(1.0).with(&citric, 0.05);
        let lye = Solution::in_water(0.0).with_cation(Cation::Sodium, 1.0);
        let points = curve(&acid, &lye, &[0.0, 0.05, 0.1, 0.15, 0.2, 5.0], AT).unwrap();
        let phs: Vec<f64> = points.iter().filter_map(|point| point.reached.ok()).map(|reached| reached.ph).collect();
        assert!(phs.len() == 5 && phs.windows(2).all(|pair| pair[0] < pair[1]));
        assert_eq!(points[5].reached.unwrap_err().code(), "ph.too-strong");
    }

    #[test]
    fn a_little_acid_released_moves_what_is_unbuffered_most() {
        let benzoic = AcidBase::at_25(0, &[4.204]).unwrap();
        let citric = citric();
        let released = Solution::in_water(0.0).with(&benzoic, 0.001 / 0.122_12);
        let plain = Solution::in_water(1.0);
        let held = Solution::in_water(1.0).with(&citric, 0.05).with_cation(Cation::Sodium, 0.09);
        let (free, kept) = (shift(&plain, &released, AT).unwrap(), shift(&held, &released, AT).unwrap());
        assert!(free < -3.0 && (-0.3..0.0).contains(&kept), "{free} {kept}");
    }
}
