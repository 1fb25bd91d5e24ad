//! The weigh sheet: masses rounded to what the maker's scales can show, that still sum to the batch.

use crate::apportion::largest_remainder;
use crate::balance::LineShare;
use crate::formula::LineId;
use crate::quantity::{Grams, Percent};
use rust_decimal::{Decimal, RoundingStrategy};
use serde::{Deserialize, Serialize};

/// Relative error a line may have before the sheet warns, unless the maker chooses another.
pub const USUAL_TOLERANCE: Percent = Percent::from_hundredths(500);

/// Finest and coarsest step of a scale that is understood.
const STEPS: (Decimal, Decimal) = (Decimal::from_parts(1, 0, 0, false, 4), Decimal::from_parts(100, 0, 0, false, 0));

/// A scale on the bench.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Scale {
    /// What the maker calls it.
    pub name: String,
    /// Smallest step it shows.
    pub step: Grams,
    /// Masses under this go on it; the last scale takes all that is left.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub below: Option<Grams>,
}

/// The scales on the bench, finest first.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "Vec<Scale>", into = "Vec<Scale>")]
pub struct Scales(Vec<Scale>);

/// Why scales cannot be used together.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ScaleError {
    /// There is none.
    #[error("no scale")]
    NoScale,
    /// A step is too fine or too coarse.
    #[error("a step of {step} g is outside {finest} to {coarsest} g")]
    Step {
        /// The step.
        step: Decimal,
        /// Finest accepted.
        finest: Decimal,
        /// Coarsest accepted.
        coarsest: Decimal,
    },
    /// A scale takes masses that a finer one before it takes already.
    #[error("the limits do not rise")]
    LimitsDoNotRise,
}

impl ScaleError {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoScale => "scale.none",
            Self::Step { .. } => "scale.step",
            Self::LimitsDoNotRise => "scale.limits-do-not-rise",
        }
    }
}

impl Scales {
    /// Checks the scales of a bench. The limit of the last is dropped: it takes all that is left.
    ///
    /// # Errors
    /// `scale.none` for an empty list, `scale.step` outside 0.0001 to 100 g, `scale.limits-do-not-rise` where limits or
    /// steps do not rise from one scale to the next.
    pub fn new(mut scales: Vec<Scale>) -> Result<Self, ScaleError> {
        let last = scales.last_mut().ok_or(ScaleError::NoScale)?;
        last.below = None;
        let (finest, coarsest) = STEPS;
        for scale in &scales {
            let step = scale.step.value();
            if step < finest || step > coarsest {
                return Err(ScaleError::Step { step, finest, coarsest });
            }
        }
        for pair in scales.windows(2) {
            let limit = pair[0].below.ok_or(ScaleError::LimitsDoNotRise)?;
            let falls = pair[1].below.is_some_and(|next| next <= limit);
            if falls || pair[0].step >= pair[1].step || limit.is_zero() {
                return Err(ScaleError::LimitsDoNotRise);
            }
        }
        Ok(Self(scales))
    }

    /// The scales, finest first.
    #[must_use]
    pub fn as_slice(&self) -> &[Scale] {
        &self.0
    }

    /// Position of the scale a mass goes on.
    #[must_use]
    pub fn position_for(&self, mass: Grams) -> usize {
        let coarsest = self.0.len() - 1;
        self.0.iter().position(|scale| scale.below.is_none_or(|below| mass < below)).unwrap_or(coarsest)
    }

    /// The step of the coarsest scale.
    #[must_use]
    pub fn coarsest_step(&self) -> Grams {
        self.0[self.0.len() - 1].step
    }
}

impl TryFrom<Vec<Scale>> for Scales {
    type Error = ScaleError;
    fn try_from(scales: Vec<Scale>) -> Result<Self, ScaleError> {
        Self::new(scales)
    }
}

impl From<Scales> for Vec<Scale> {
    fn from(scales: Scales) -> Self {
        scales.0
    }
}

impl Default for Scales {
    /// A kitchen scale of 0.1 g and a fine one of 0.01 g for everything under 2 g.
    fn default() -> Self {
        let scale = |name: &str, step, below| Scale { name: name.to_owned(), step, below };
        Self(vec![
            scale("Fine scale", Grams::from_hundredths(1), Some(Grams::from_hundredths(200))),
            scale("Kitchen scale", Grams::from_hundredths(10), None),
        ])
    }
}

/// One line of a weigh sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WeighedLine {
    /// The line of the formula.
    pub line: LineId,
    /// Mass by the formula, before rounding.
    pub exact: Grams,
    /// Mass to weigh.
    pub target: Grams,
    /// Position of the scale in [`Scales::as_slice`].
    pub scale: usize,
    /// How far rounding moves the mass, in percent of it.
    pub relative_error: Percent,
}

/// Masses to weigh.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WeighSheet {
    /// Batch that was asked for.
    pub asked: Grams,
    /// Batch that the sheet makes: exactly the sum of its lines. With one scale, the batch asked for to that scale's
    /// step; with several, within half a step of the coarsest used.
    pub batch: Grams,
    /// The lines, in the order of the formula.
    pub lines: Vec<WeighedLine>,
}

/// Lays out a weigh sheet for a batch.
///
/// Each line goes on the scale its mass belongs to. On every scale the masses are rounded by largest remainder: each
/// stays within one step of its exact mass, and the whole comes as near to the batch asked for as the coarsest scale
/// in use allows. The finer scales are settled first and the coarsest takes up the difference, which it does not show.
///
/// *Units*: grams. *Valid for* shares that make 100 % (a sound [`crate::balance::Balance`]). `None` if the masses
/// are too large to be counted in steps.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::balance::LineShare;
/// use stillroom_core::weigh_sheet::{Scales, lay_out};
/// use stillroom_core::{Grams, LineId, Percent};
/// let share = |line, percent| LineShare { line: LineId(line), percent, quantum_satis: false };
/// let shares = [share(1, Percent::new(dec!(99.5))?), share(2, Percent::new(dec!(0.5))?)];
/// let sheet = lay_out(&shares, Grams::new(dec!(210))?, &Scales::default()).unwrap();
/// assert_eq!(sheet.lines[0].target.value(), dec!(209.0)); // kitchen scale
/// assert_eq!(sheet.lines[1].target.value(), dec!(1.05)); // fine scale
/// assert_eq!(sheet.batch.value(), dec!(210.05));
/// # Ok::<(), stillroom_core::QuantityError>(())
/// ```
#[must_use]
pub fn lay_out(shares: &[LineShare], asked: Grams, scales: &Scales) -> Option<WeighSheet> {
    let exact = shares.iter().map(|share| Some((share.line, share.percent.of(asked)?)));
    lay_out_masses(&exact.collect::<Option<Vec<_>>>()?, asked, scales)
}

/// Lays out a weigh sheet for masses that are known already, as [`lay_out`] does for shares.
///
/// *Units*: grams. *Valid for* masses that make the batch asked for. `None` if they are too large to be counted in steps.
#[must_use]
pub fn lay_out_masses(masses: &[(LineId, Grams)], asked: Grams, scales: &Scales) -> Option<WeighSheet> {
    let mut lines: Vec<WeighedLine> = masses
        .iter()
        .map(|&(line, exact)| {
            let scale = scales.position_for(exact);
            WeighedLine { line, exact, target: exact, scale, relative_error: Percent::ZERO }
        })
        .collect();
    let coarsest = lines.iter().map(|line| line.scale).max().unwrap_or(0);
    let mut weighed = Decimal::ZERO;
    for (position, scale) in scales.as_slice().iter().enumerate().take(coarsest + 1) {
        let step = scale.step.value();
        let group: Vec<usize> = (0..lines.len()).filter(|&at| lines[at].scale == position).collect();
        let quotas: Option<Vec<Decimal>> = group.iter().map(|&at| lines[at].exact.value().checked_div(step)).collect();
        let quotas = quotas?;
        let wanted = if position == coarsest {
            asked.value().checked_sub(weighed)?.checked_div(step)?
        } else {
            quotas.iter().try_fold(Decimal::ZERO, |sum, quota| sum.checked_add(*quota))?
        };
        let units = wanted.round_dp_with_strategy(0, RoundingStrategy::MidpointAwayFromZero);
        for (&at, count) in group.iter().zip(largest_remainder(&quotas, units)) {
            let target = count.checked_mul(step)?;
            weighed = weighed.checked_add(target)?;
            lines[at].target = Grams::new(target).ok()?;
            lines[at].relative_error = relative_error(lines[at].exact, lines[at].target);
        }
    }
    Some(WeighSheet { asked, batch: Grams::new(weighed).ok()?, lines })
}

/// How far a mass is from the exact one, in percent of the exact one. Nothing where nothing is wanted.
fn relative_error(exact: Grams, target: Grams) -> Percent {
    let difference = target.value() - exact.value();
    difference
        .checked_mul(Decimal::ONE_HUNDRED)
        .and_then(|scaled| scaled.checked_div(exact.value()))
        .and_then(|error| Percent::new(error.round_dp(6)).ok())
        .unwrap_or(Percent::ZERO)
}

/// The smallest batch these scales can make with every line within a relative error.
///
/// Rounding by largest remainder moves a line by less than one step, so a line is within the error once one step is
/// no more than that share of it. The answer is rounded up to the coarsest scale's step.
///
/// *Units*: grams; error in percent. `None` if the error is not positive, no line has a share, or no batch fits.
/// *Source*: follows from the rounding rule. For the repeatability a pharmacy asks of a balance see
/// [`crate::arithmetic`] (USP general chapter 41), which is stricter.
#[must_use]
pub fn smallest_batch(shares: &[LineShare], scales: &Scales, error: Percent) -> Option<Grams> {
    if error.value() <= Decimal::ZERO {
        return None;
    }
    let smallest = shares.iter().map(|share| share.percent).filter(|percent| percent.value() > Decimal::ZERO).min()?;
    // Mass ranges in which a scale weighs well enough: from a step over the error to where the next scale takes over.
    let mut ranges: Vec<(Decimal, Option<Decimal>)> = Vec::with_capacity(scales.as_slice().len());
    let mut from = Decimal::ZERO;
    for scale in scales.as_slice() {
        let enough = scale.step.value().checked_mul(Decimal::ONE_HUNDRED)?.checked_div(error.value())?;
        let below = scale.below.map(Grams::value);
        let start = enough.max(from);
        if below.is_none_or(|below| start < below) {
            ranges.push((start, below));
        }
        from = below.unwrap_or(from);
    }
    let fits = |batch: Decimal| {
        shares.iter().filter(|share| share.percent.value() > Decimal::ZERO).all(|share| {
            let mass = batch * share.percent.value() / Decimal::ONE_HUNDRED;
            ranges.iter().any(|(start, below)| mass >= *start && below.is_none_or(|below| mass < below))
        })
    };
    let batch_for =
        |mass: Decimal, percent: Percent| mass.checked_mul(Decimal::ONE_HUNDRED)?.checked_div(percent.value());
    let round_up = |batch: Decimal| {
        let step = scales.coarsest_step().value();
        batch.checked_div(step)?.ceil().checked_mul(step)
    };
    // The smallest share decides, unless another line falls between two scales: then some line is just at a start.
    let first = batch_for(ranges.first()?.0, smallest).and_then(round_up)?;
    if fits(first) {
        return Grams::new(first).ok();
    }
    let mut candidates: Vec<Decimal> = shares
        .iter()
        .filter(|share| share.percent.value() > Decimal::ZERO)
        .flat_map(|share| ranges.iter().filter_map(|(start, _)| batch_for(*start, share.percent)).collect::<Vec<_>>())
        .filter_map(round_up)
        .filter(|batch| *batch > first)
        .collect();
    candidates.sort_unstable();
    candidates.into_iter().find(|batch| fits(*batch)).and_then(|batch| Grams::new(batch).ok())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use rust_decimal::dec;

    fn shares(percents: &[Decimal]) -> Vec<LineShare> {
        let share = |(at, percent): (u32, &Decimal)| LineShare {
            line: LineId(at),
            percent: Percent::new(*percent).unwrap(),
            quantum_satis: false,
        };
        (0u32..).zip(percents).map(share).collect()
    }

    fn one_scale(step: Decimal) -> Scales {
        Scales::new(vec![Scale { name: "scale".into(), step: Grams::new(step).unwrap(), below: None }]).unwrap()
    }

    #[test]
    fn scales_are_checked() {
        let scale = |step, below: Option<Decimal>| Scale {
            name: String::new(),
            step: Grams::new(step).unwrap(),
            below: below.map(|below| Grams::new(below).unwrap()),
        };
        let code = |scales| Scales::new(scales).unwrap_err().code();
        assert_eq!(code(vec![]), "scale.none");
        assert_eq!(code(vec![scale(dec!(0), None)]), "scale.step");
        assert_eq!(code(vec![scale(dec!(500), None)]), "scale.step");
        assert_eq!(code(vec![scale(dec!(0.01), None), scale(dec!(1), None)]), "scale.limits-do-not-rise");
        assert_eq!(code(vec![scale(dec!(1), Some(dec!(5))), scale(dec!(0.1), None)]), "scale.limits-do-not-rise");
        assert!(Scales::new(vec![scale(dec!(0.01), Some(dec!(2))), scale(dec!(1), Some(dec!(9)))]).is_ok());
    }

    #[test]
    fn a_line_too_small_for_the_scale_shows_its_error() {
        let sheet =
            lay_out(&shares(&[dec!(99.9), dec!(0.1)]), Grams::new(dec!(50)).unwrap(), &one_scale(dec!(1))).unwrap();
        assert_eq!(sheet.lines[1].target, Grams::ZERO);
        assert_eq!(sheet.lines[1].relative_error.value(), dec!(-100));
        assert_eq!(sheet.batch.value(), dec!(50));
    }

    #[test]
    fn the_smallest_batch_is_set_by_the_smallest_line() {
        // 0.5 % on a fine scale of 0.01 g: 0.2 g is 20 steps, so one step is 5 %.
        let shares = shares(&[dec!(99.5), dec!(0.5)]);
        assert_eq!(smallest_batch(&shares, &Scales::default(), USUAL_TOLERANCE).unwrap().value(), dec!(40.0));
        assert_eq!(smallest_batch(&shares, &one_scale(dec!(1)), USUAL_TOLERANCE).unwrap().value(), dec!(4000));
        assert_eq!(smallest_batch(&shares, &Scales::default(), Percent::ZERO), None);
    }

    fn any_shares() -> impl Strategy<Value = Vec<LineShare>> {
        prop::collection::vec(1i64..1_000_000, 1..40).prop_map(|weights| {
            let whole: i64 = weights.iter().sum();
            let exact: Vec<Decimal> =
                weights.iter().map(|weight| Decimal::from(*weight) * dec!(100) / Decimal::from(whole)).collect();
            let rounded = crate::apportion::round_to_total(&exact, dec!(100), 3).unwrap();
            shares(&rounded.into_iter().filter(|share| !share.is_zero()).collect::<Vec<_>>())
        })
    }

    fn any_step() -> impl Strategy<Value = Decimal> {
        prop::sample::select(vec![
            dec!(0.001),
            dec!(0.005),
            dec!(0.01),
            dec!(0.05),
            dec!(0.1),
            dec!(0.5),
            dec!(1),
            dec!(2),
            dec!(5),
        ])
    }

    fn any_scales() -> impl Strategy<Value = Scales> {
        (any_step(), any_step(), 1i64..500).prop_map(|(a, b, below)| {
            if a == b {
                return one_scale(a);
            }
            let scale = |step: Decimal, below: Option<Decimal>| Scale {
                name: String::new(),
                step: Grams::new(step).unwrap(),
                below: below.map(|below| Grams::new(below).unwrap()),
            };
            let fine = a.min(b);
            Scales::new(vec![scale(fine, Some(fine * Decimal::from(below))), scale(a.max(b), None)]).unwrap()
        })
    }

    proptest! {
        #[test]
        fn on_one_scale_the_sheet_sums_to_the_batch(shares in any_shares(), step in any_step(), steps in 1i64..200_000) {
            let batch = Grams::new(step * Decimal::from(steps)).unwrap();
            let sheet = lay_out(&shares, batch, &one_scale(step)).unwrap();
            let sum: Decimal = sheet.lines.iter().map(|line| line.target.value()).sum();
            prop_assert_eq!(sum, batch.value());
            prop_assert_eq!(sheet.batch, batch);
        }

        #[test]
        fn on_any_scales_lines_are_whole_steps_within_one_step_and_sum_to_the_batch_of_the_sheet(
            shares in any_shares(), scales in any_scales(), batch in 1i64..2_000_000
        ) {
            let asked = Grams::new(Decimal::new(batch, 2)).unwrap();
            let sheet = lay_out(&shares, asked, &scales).unwrap();
            let sum: Decimal = sheet.lines.iter().map(|line| line.target.value()).sum();
            prop_assert_eq!(sum, sheet.batch.value());
            let mut coarsest = Decimal::ZERO;
            for line in &sheet.lines {
                let step = scales.as_slice()[line.scale].step.value();
                coarsest = coarsest.max(step);
                prop_assert!((line.target.value() / step).fract().is_zero());
                prop_assert!((line.target.value() - line.exact.value()).abs() < step);
            }
            let off = (sheet.batch.value() - asked.value()).abs();
            let coarse_lines = sheet.lines.iter().filter(|line| scales.as_slice()[line.scale].step.value() == coarsest);
            // The coarsest scale can take up a difference only as far as its own lines have steps to give.
            let reachable = coarse_lines.clone().any(|line| !(line.exact.value() / coarsest).fract().is_zero());
            if reachable && coarse_lines.count() == sheet.lines.len() {
                prop_assert!(off * dec!(2) <= coarsest, "{} off by {}", asked.value(), off);
            } else {
                prop_assert!(off < coarsest * dec!(2));
            }
        }

        #[test]
        fn the_smallest_batch_keeps_every_line_within_the_error(shares in any_shares(), scales in any_scales(), error in 1i64..200) {
            let error = Percent::new(Decimal::new(error, 1)).unwrap();
            if let Some(batch) = smallest_batch(&shares, &scales, error) {
                let sheet = lay_out(&shares, batch, &scales).unwrap();
                for line in &sheet.lines {
                    prop_assert!(line.relative_error.value().abs() <= error.value());
                }
            }
        }
    }
}
