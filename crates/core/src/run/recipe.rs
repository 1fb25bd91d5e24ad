//! The masses a run aims at, as exact ratios, so that changing the batch in the middle of it changes no percent.

use crate::balance::LineShare;
use crate::formula::LineId;
use crate::quantity::{Grams, Percent};
use crate::weigh_sheet::{Scales, WeighSheet, lay_out_masses};
use rust_decimal::Decimal;

/// The masses of a batch as numerators over one denominator. A mass is only divided out when it is shown: until then
/// every change is exact, to the 28 digits of a decimal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Recipe {
    parts: Vec<(LineId, Decimal)>,
    denominator: Decimal,
    rest: Option<LineId>,
}

/// Why a pour cannot be answered so.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum PourError {
    /// The line is none of this batch, or has no share in it.
    #[error("no such line")]
    NoSuchLine,
    /// No line takes the rest.
    #[error("no line is q.s.")]
    NoRest,
    /// The line that takes the rest is the one that was poured.
    #[error("the line is the q.s. line itself")]
    IsTheRest,
    /// The line that takes the rest is in the beaker already.
    #[error("the q.s. line is weighed already")]
    RestIsPoured,
    /// More was poured than the rest can give.
    #[error("the q.s. line cannot give that much")]
    RestTooSmall,
    /// A line that is in the beaker already would be too much for the smaller batch.
    #[error("line {} is in the beaker already and would be too much", .line.0)]
    OtherTooMuch {
        /// That line.
        line: LineId,
    },
    /// The batch grows past what can be weighed.
    #[error("the batch is too large")]
    TooLarge,
}

impl PourError {
    /// Every code of this error.
    pub const CODES: [&'static str; 7] = [
        "pour.no-such-line",
        "pour.no-rest",
        "pour.is-the-rest",
        "pour.rest-is-poured",
        "pour.rest-too-small",
        "pour.other-too-much",
        "pour.too-large",
    ];

    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoSuchLine => "pour.no-such-line",
            Self::NoRest => "pour.no-rest",
            Self::IsTheRest => "pour.is-the-rest",
            Self::RestIsPoured => "pour.rest-is-poured",
            Self::RestTooSmall => "pour.rest-too-small",
            Self::OtherTooMuch { .. } => "pour.other-too-much",
            Self::TooLarge => "pour.too-large",
        }
    }
}

impl Recipe {
    /// The masses of a sound formula in a batch. `None` if the batch is too large.
    #[must_use]
    pub fn of(shares: &[LineShare], batch: Grams) -> Option<Self> {
        let parts = shares.iter().map(|share| Some((share.line, share.percent.value().checked_mul(batch.value())?)));
        let rest = shares.iter().find(|share| share.quantum_satis).map(|share| share.line);
        Some(Self { parts: parts.collect::<Option<_>>()?, denominator: Decimal::ONE_HUNDRED, rest })
    }

    /// The line that takes the rest.
    #[must_use]
    pub const fn rest(&self) -> Option<LineId> {
        self.rest
    }

    /// The lines with their numerators over [`Self::denominator`].
    #[must_use]
    pub fn parts(&self) -> &[(LineId, Decimal)] {
        &self.parts
    }

    /// What the numerators are to be divided by.
    #[must_use]
    pub const fn denominator(&self) -> Decimal {
        self.denominator
    }

    fn numerator(&self, line: LineId) -> Option<Decimal> {
        self.parts.iter().find(|(each, _)| *each == line).map(|(_, numerator)| *numerator)
    }

    fn total(&self) -> Option<Decimal> {
        self.parts.iter().try_fold(Decimal::ZERO, |sum, (_, numerator)| sum.checked_add(*numerator))
    }

    /// Mass of a line.
    #[must_use]
    pub fn mass_of(&self, line: LineId) -> Option<Grams> {
        Grams::new(self.numerator(line)?.checked_div(self.denominator)?).ok()
    }

    /// Mass of the batch.
    #[must_use]
    pub fn batch(&self) -> Option<Grams> {
        Grams::new(self.total()?.checked_div(self.denominator)?).ok()
    }

    /// Share of a line.
    #[must_use]
    pub fn percent_of(&self, line: LineId) -> Option<Percent> {
        let scaled = self.numerator(line)?.checked_mul(Decimal::ONE_HUNDRED)?;
        Percent::new(scaled.checked_div(self.total()?)?).ok()
    }

    /// Lines whose share is no longer the one a plan set out with: the line, that share, and its share now.
    #[must_use]
    pub fn moved_shares(&self, plan: &super::RunPlan) -> Vec<(LineId, Percent, Percent)> {
        // Rescaling divides: past this digit a share that stayed the same may differ.
        const DIGITS: u32 = 12;
        let shares = plan.shares().unwrap_or_default();
        let moved = shares.iter().filter_map(|share| Some((share.line, share.percent, self.percent_of(share.line)?)));
        moved.filter(|(_, was, is)| was.value().round_dp(DIGITS) != is.value().round_dp(DIGITS)).collect()
    }

    /// The masses rounded to the scales, still summing to the batch.
    #[must_use]
    pub fn lay_out(&self, scales: &Scales) -> Option<WeighSheet> {
        let masses = self.parts.iter().map(|(line, _)| Some((*line, self.mass_of(*line)?)));
        lay_out_masses(&masses.collect::<Option<Vec<_>>>()?, self.batch()?, scales)
    }

    /// The same percents in the batch in which `line` weighs exactly `mass`.
    ///
    /// # Errors
    /// `pour.no-such-line`, `pour.too-large`.
    ///
    /// ```
    /// use rust_decimal::dec;
    /// use stillroom_core::balance::LineShare;
    /// use stillroom_core::run::recipe::Recipe;
    /// use stillroom_core::{Grams, LineId, Percent};
    /// let share = |line, percent| LineShare { line: LineId(line), percent, quantum_satis: false };
    /// let shares = [share(1, Percent::new(dec!(97))?), share(2, Percent::new(dec!(3))?)];
    /// let recipe = Recipe::of(&shares, Grams::new(dec!(100))?).unwrap();
    /// // 3.12 g instead of 3 g: everything becomes 4 % more.
    /// let larger = recipe.rescale(LineId(2), Grams::new(dec!(3.12))?).unwrap();
    /// assert_eq!(larger.batch(), Some(Grams::new(dec!(104))?));
    /// assert_eq!(larger.mass_of(LineId(1)), Some(Grams::new(dec!(100.88))?));
    /// # Ok::<(), stillroom_core::QuantityError>(())
    /// ```
    pub fn rescale(&self, line: LineId, mass: Grams) -> Result<Self, PourError> {
        let own = self.numerator(line).filter(|own| !own.is_zero()).ok_or(PourError::NoSuchLine)?;
        // n ÷ d × mass ÷ (own ÷ d): the old denominator falls out.
        let parts = self.parts.iter().map(|(line, numerator)| Some((*line, numerator.checked_mul(mass.value())?)));
        let parts = parts.collect::<Option<Vec<_>>>().ok_or(PourError::TooLarge)?;
        let scaled = Self { parts, denominator: own, rest: self.rest }.shorten();
        if scaled.batch().is_some() { Ok(scaled) } else { Err(PourError::TooLarge) }
    }

    /// The batch of the same mass in which `line` weighs `mass` and the q.s. line gives way.
    ///
    /// # Errors
    /// `pour.no-such-line`, `pour.no-rest`, `pour.is-the-rest`, `pour.rest-too-small`, `pour.too-large`.
    pub fn take_from_rest(&self, line: LineId, mass: Grams) -> Result<Self, PourError> {
        let rest = self.rest.ok_or(PourError::NoRest)?;
        if rest == line {
            return Err(PourError::IsTheRest);
        }
        let own = self.numerator(line).ok_or(PourError::NoSuchLine)?;
        let now = mass.value().checked_mul(self.denominator).ok_or(PourError::TooLarge)?;
        let mut after = self.clone();
        for (each, numerator) in &mut after.parts {
            if *each == line {
                *numerator = now;
            } else if *each == rest {
                *numerator =
                    numerator.checked_add(own).and_then(|sum| sum.checked_sub(now)).ok_or(PourError::TooLarge)?;
                if numerator.is_sign_negative() {
                    return Err(PourError::RestTooSmall);
                }
            }
        }
        Ok(after)
    }

    /// Takes zeros off the ends of all numbers, so that digits are left for the next change.
    fn shorten(mut self) -> Self {
        for (_, numerator) in &mut self.parts {
            *numerator = numerator.normalize();
        }
        self.denominator = self.denominator.normalize();
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use rust_decimal::dec;

    fn shares(percents: &[Decimal]) -> Vec<LineShare> {
        let share = |(line, percent): (u32, &Decimal)| LineShare {
            line: LineId(line),
            percent: Percent::new(*percent).unwrap(),
            quantum_satis: line == 0,
        };
        (0u32..).zip(percents).map(share).collect()
    }

    fn grams(value: Decimal) -> Grams {
        Grams::new(value).unwrap()
    }

    #[test]
    fn what_cannot_be_answered_says_why() {
        let recipe = Recipe::of(&shares(&[dec!(90), dec!(10), dec!(0)]), grams(dec!(100))).unwrap();
        assert_eq!(recipe.rescale(LineId(7), grams(dec!(1))).unwrap_err().code(), "pour.no-such-line");
        assert_eq!(recipe.rescale(LineId(2), grams(dec!(1))).unwrap_err().code(), "pour.no-such-line");
        assert_eq!(recipe.take_from_rest(LineId(0), grams(dec!(1))).unwrap_err().code(), "pour.is-the-rest");
        assert_eq!(recipe.take_from_rest(LineId(1), grams(dec!(200))).unwrap_err().code(), "pour.rest-too-small");
        let mut without = shares(&[dec!(90), dec!(10)]);
        without[0].quantum_satis = false;
        let recipe = Recipe::of(&without, grams(dec!(100))).unwrap();
        assert_eq!(recipe.take_from_rest(LineId(1), grams(dec!(11))).unwrap_err().code(), "pour.no-rest");
        assert_eq!(
            recipe.rescale(LineId(1), Grams::new(Grams::MAXIMUM).unwrap()).unwrap_err().code(),
            "pour.too-large"
        );
    }

    /// Exact whole numbers behind decimals, all brought to the same scale.
    fn whole(value: Decimal, scale: u32) -> i128 {
        value.mantissa() * 10i128.pow(scale - value.scale())
    }

    proptest! {
        /// The law of rescaling: no percent changes, not by one digit, and what was poured is exactly in place. Checked by
        /// multiplying out in whole numbers, without any division.
        #[test]
        fn rescaling_keeps_every_percent_exact(
            weights in prop::collection::vec(1i64..1000, 2..9), at in 0usize..8,
            batch in 100i64..100_000, poured in 1i64..100_000,
        ) {
            let sum: i64 = weights.iter().sum();
            // Percents with two decimals, the last taking what is left: what a maker types.
            let mut percents: Vec<Decimal> = weights.iter()
                .map(|weight| (Decimal::from(*weight) * dec!(100) / Decimal::from(sum)).round_dp(2)).collect();
            let typed: Decimal = percents.iter().skip(1).sum();
            percents[0] = dec!(100) - typed;
            prop_assume!(percents.iter().all(|percent| *percent > dec!(0)));
            let at = at % percents.len();
            let line = LineId(u32::try_from(at).unwrap());
            let before = Recipe::of(&shares(&percents), grams(Decimal::new(batch, 1))).unwrap();
            let mass = grams(Decimal::new(poured, 2));
            let after = before.rescale(line, mass).unwrap();
            // numerator ÷ total is the same share: cross-multiplied.
            let total = after.parts().iter().map(|(_, numerator)| whole(*numerator, 6)).sum::<i128>();
            for ((_, numerator), percent) in after.parts().iter().zip(&percents) {
                prop_assert_eq!(whole(*numerator, 6) * 10_000, whole(*percent, 2) * total);
            }
            // The line that was poured weighs exactly what was poured: numerator = mass × denominator.
            prop_assert_eq!(
                whole(after.parts()[at].1, 6),
                whole(mass.value(), 2) * whole(after.denominator(), 4)
            );
        }

        #[test]
        fn taking_it_out_of_the_rest_keeps_the_batch(batch in 100i64..100_000, poured in 0i64..3000) {
            let before = Recipe::of(&shares(&[dec!(60), dec!(30), dec!(10)]), grams(Decimal::new(batch, 1))).unwrap();
            let mass = grams(Decimal::new(poured, 2));
            if let Ok(after) = before.take_from_rest(LineId(1), mass) {
                prop_assert_eq!(after.batch(), before.batch());
                prop_assert_eq!(after.mass_of(LineId(1)), Some(mass));
                prop_assert_eq!(after.mass_of(LineId(2)), before.mass_of(LineId(2)));
            }
        }
    }
}
