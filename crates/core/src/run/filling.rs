//! Filling with what really came out, and the yield.

use crate::batch_plan::{Containers, LARGEST_ALLOWANCE};
use crate::quantity::{Density, Grams, Percent};
use crate::scaling::ScalingError;
use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};

/// Loss in percent of the batch above which a record asks for its cause. *Source*: common practice in records after
/// ISO 22716 (from memory); the standard asks for a yield and for deviations, not for this figure.
pub const LOSS_TO_EXPLAIN: Percent = Percent::from_hundredths(500);

/// How a batch goes into containers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FillPlan {
    /// What a full container takes.
    pub each: Grams,
    /// Containers that become full.
    pub full: u32,
    /// What is left for one more.
    pub left: Grams,
    /// What goes into each if all that were wanted are filled alike; `None` where full ones suffice.
    pub alike: Option<Grams>,
}

/// Plans the filling of what is there.
///
/// A container takes volume × (1 − headspace) × density. *Units*: g, mL, g/mL. `alike` is rounded down to `step`, so that
/// it never asks for more than there is.
///
/// # Errors
/// `batch.nothing` without a container, `batch.allowance`, `batch.too-large`.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::run::filling::plan_filling;
/// use stillroom_core::batch_plan::Containers;
/// use stillroom_core::{Density, Grams, Millilitres, Percent};
/// let jars = Containers {
///     count: 7,
///     volume: Millilitres::new(dec!(30))?,
///     headspace: Percent::ZERO,
///     loss: Percent::ZERO,
///     density: None,
/// };
/// let plan = plan_filling(Grams::new(dec!(203.7))?, &jars, Density::new(dec!(1))?, Grams::new(dec!(0.1))?).unwrap();
/// assert_eq!((plan.full, plan.left), (6, Grams::new(dec!(23.7))?));
/// assert_eq!(plan.alike, Some(Grams::new(dec!(29.1))?));
/// # Ok::<(), stillroom_core::QuantityError>(())
/// ```
pub fn plan_filling(
    available: Grams,
    containers: &Containers,
    density: Density,
    step: Grams,
) -> Result<FillPlan, ScalingError> {
    let headspace = containers.headspace.value();
    if headspace < Decimal::ZERO || headspace > LARGEST_ALLOWANCE {
        return Err(ScalingError::Allowance { value: headspace, largest: LARGEST_ALLOWANCE });
    }
    if containers.count == 0 || containers.volume.is_zero() {
        return Err(ScalingError::NoBatch);
    }
    let each = containers
        .volume
        .value()
        .checked_mul(Decimal::ONE_HUNDRED - headspace)
        .and_then(|volume| volume.checked_mul(density.value()))
        .and_then(|mass| mass.checked_div(Decimal::ONE_HUNDRED))
        .filter(|each| !each.is_zero())
        .ok_or(ScalingError::TooLarge)?;
    let full = available.value().checked_div(each).map(|count| count.floor()).ok_or(ScalingError::TooLarge)?;
    let full = full.min(Decimal::from(u32::MAX));
    let left = available.value() - full * each;
    let count = Decimal::from(containers.count);
    let alike = (full < count)
        .then(|| available.value().checked_div(count)?.checked_div(step.value()))
        .flatten()
        .map(|steps| steps.round_dp_with_strategy(0, RoundingStrategy::ToZero) * step.value());
    let grams = |mass: Decimal| Grams::new(mass).map_err(|_| ScalingError::TooLarge);
    Ok(FillPlan {
        each: grams(each)?,
        full: full.to_u32().ok_or(ScalingError::TooLarge)?,
        left: grams(left)?,
        alike: alike.map(grams).transpose()?,
    })
}

/// What came of what was weighed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Yield {
    /// What went in, water put back included.
    pub weighed_in: Grams,
    /// What came out into containers.
    pub filled: Grams,
    /// One in percent of the other.
    pub percent: Percent,
    /// Whether so much is missing that a record asks for the cause.
    pub to_explain: bool,
}

/// The yield of a batch. `None` if nothing went in.
#[must_use]
pub fn work_out_yield(weighed_in: Grams, filled: Grams) -> Option<Yield> {
    let percent = Percent::from_share(filled, weighed_in)?;
    let to_explain = Decimal::ONE_HUNDRED - percent.value() > LOSS_TO_EXPLAIN.value();
    Some(Yield { weighed_in, filled, percent, to_explain })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Millilitres;
    use proptest::prelude::*;
    use rust_decimal::dec;

    fn jars(count: u32, volume: Decimal, headspace: Decimal) -> Containers {
        Containers {
            count,
            volume: Millilitres::new(volume).unwrap(),
            headspace: Percent::new(headspace).unwrap(),
            loss: Percent::ZERO,
            density: None,
        }
    }

    #[test]
    fn a_yield_under_ninety_five_percent_asks_for_its_cause() {
        let grams = |value| Grams::new(value).unwrap();
        assert!(!work_out_yield(grams(dec!(200)), grams(dec!(190))).unwrap().to_explain);
        assert!(work_out_yield(grams(dec!(200)), grams(dec!(189.9))).unwrap().to_explain);
        assert_eq!(work_out_yield(Grams::ZERO, grams(dec!(1))), None);
    }

    proptest! {
        #[test]
        fn filling_never_asks_for_more_than_there_is(
            available in 0i64..10_000_000, count in 1u32..60, volume in 1i64..100_000, headspace in 0i64..90, density in 50i64..200,
        ) {
            let available = Grams::new(Decimal::new(available, 2)).unwrap();
            let containers = jars(count, Decimal::new(volume, 2), Decimal::from(headspace));
            let density = Density::new(Decimal::new(density, 2)).unwrap();
            let step = dec!(0.1);
            let plan = plan_filling(available, &containers, density, Grams::new(step).unwrap()).unwrap();
            let full = plan.each.value() * Decimal::from(plan.full);
            prop_assert_eq!(full + plan.left.value(), available.value());
            prop_assert!(plan.left < plan.each);
            if let Some(alike) = plan.alike {
                let missing = available.value() - alike.value() * Decimal::from(count);
                prop_assert!(missing >= Decimal::ZERO && missing < step * Decimal::from(count));
                prop_assert!(alike <= plan.each);
            }
        }
    }
}
