//! How large a batch: by mass, by containers to fill, or by what is left of a material.

use crate::balance::LineShare;
use crate::batch_plan::{Containers, LARGEST_ALLOWANCE, Stock};
use crate::material::MaterialId;
use crate::quantity::{Density, Grams};
use crate::weigh_sheet::Scales;
use rust_decimal::Decimal;

/// Why no batch can be computed.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ScalingError {
    /// Nothing is asked for.
    #[error("a batch of nothing")]
    NoBatch,
    /// Neither a measured nor an estimated density is known.
    #[error("no density is known")]
    DensityUnknown,
    /// A share left empty or lost is out of range.
    #[error("an allowance of {value} % is outside 0 to {largest} %")]
    Allowance {
        /// The share.
        value: Decimal,
        /// Largest accepted.
        largest: Decimal,
    },
    /// No material at hand is in the formula.
    #[error("no material at hand is in the formula")]
    NothingAtHand,
    /// The batch is too large to be weighed in grams.
    #[error("the batch is too large")]
    TooLarge,
}

impl ScalingError {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoBatch => "batch.nothing",
            Self::DensityUnknown => "batch.density-unknown",
            Self::Allowance { .. } => "batch.allowance",
            Self::NothingAtHand => "batch.nothing-at-hand",
            Self::TooLarge => "batch.too-large",
        }
    }
}

/// The batch that fills containers.
///
/// mass = count × volume × (1 − headspace) × density ÷ (1 − loss).
///
/// *Units*: mL, g/mL, percent in; grams out, exact to the 28 digits of a decimal. *Source*: mass = volume × density;
/// loss is a share of what is made.
///
/// # Errors
/// `batch.nothing` for no container or volume, `batch.allowance` outside 0 to 90 %, `batch.too-large`.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::batch_plan::Containers;
/// use stillroom_core::scaling::mass_to_fill;
/// use stillroom_core::{Density, Millilitres, Percent};
/// let bottles = Containers {
///     count: 7,
///     volume: Millilitres::new(dec!(30))?,
///     headspace: Percent::ZERO,
///     loss: Percent::new(dec!(4))?,
///     density: None,
/// };
/// assert_eq!(mass_to_fill(&bottles, Density::new(dec!(1))?).unwrap().value(), dec!(218.75));
/// # Ok::<(), stillroom_core::QuantityError>(())
/// ```
pub fn mass_to_fill(containers: &Containers, density: Density) -> Result<Grams, ScalingError> {
    for share in [containers.headspace, containers.loss] {
        if share.value() < Decimal::ZERO || share.value() > LARGEST_ALLOWANCE {
            return Err(ScalingError::Allowance { value: share.value(), largest: LARGEST_ALLOWANCE });
        }
    }
    if containers.count == 0 || containers.volume.is_zero() {
        return Err(ScalingError::NoBatch);
    }
    let filled = Decimal::ONE_HUNDRED - containers.headspace.value();
    let kept = Decimal::ONE_HUNDRED - containers.loss.value();
    let mass = Decimal::from(containers.count)
        .checked_mul(containers.volume.value())
        .and_then(|volume| volume.checked_mul(filled))
        .and_then(|volume| volume.checked_mul(density.value()))
        .and_then(|mass| mass.checked_div(kept));
    mass.and_then(|mass| Grams::new(mass).ok()).ok_or(ScalingError::TooLarge)
}

/// The largest batch that materials at hand allow.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StockAnswer {
    /// The batch.
    pub batch: Grams,
    /// The material that runs out first.
    pub limiting: MaterialId,
    /// What is left of every material afterwards, in the order given. Materials the formula does not use keep all.
    pub left_over: Vec<Stock>,
}

/// The most that can be made from what is left of one or several materials.
///
/// Each material at hand allows available ÷ share; the smallest of these is the batch. A material in several lines
/// counts with all of them. What is available is first rounded down to the step of the scale it is weighed on, so
/// that rounding the sheet never asks for more than there is.
///
/// *Units*: grams.
///
/// # Errors
/// `batch.nothing-at-hand` where no material at hand has a share, `batch.nothing` where one is used up,
/// `batch.too-large`.
pub fn most_from_stock(
    lines: &[(LineShare, MaterialId)],
    stock: &[Stock],
    scales: &Scales,
) -> Result<StockAnswer, ScalingError> {
    let mut answer: Option<(Decimal, MaterialId)> = None;
    for each in stock {
        let share = total_share(lines, each.material);
        if share <= Decimal::ZERO {
            continue;
        }
        let line_count = lines.iter().filter(|(_, material)| *material == each.material).count();
        let step = scales.as_slice()[scales.position_for(each.available)].step.value();
        // Each further line of the same material may round up by a step of its own.
        let spare = step.checked_mul(Decimal::from(line_count.saturating_sub(1))).ok_or(ScalingError::TooLarge)?;
        let whole_steps = each.available.value() - each.available.value() % step;
        let usable = whole_steps.checked_sub(spare).unwrap_or_default().max(Decimal::ZERO);
        let allows = usable
            .checked_mul(Decimal::ONE_HUNDRED)
            .and_then(|scaled| scaled.checked_div(share))
            .ok_or(ScalingError::TooLarge)?;
        if answer.is_none_or(|(least, _)| allows < least) {
            answer = Some((allows, each.material));
        }
    }
    let (allows, limiting) = answer.ok_or(ScalingError::NothingAtHand)?;
    // Down to what the coarsest scale shows, so that the batch on the sheet is the batch that was computed.
    let step = scales.coarsest_step().value();
    let rounded = allows - allows % step;
    if rounded.is_zero() {
        return Err(ScalingError::NoBatch);
    }
    let batch = Grams::new(rounded).map_err(|_| ScalingError::TooLarge)?;
    let left_over = stock
        .iter()
        .map(|each| {
            let used = total_share(lines, each.material) * batch.value() / Decimal::ONE_HUNDRED;
            let left = (each.available.value() - used).max(Decimal::ZERO);
            Stock { material: each.material, available: Grams::new(left).unwrap_or(Grams::ZERO) }
        })
        .collect();
    Ok(StockAnswer { batch, limiting, left_over })
}

/// Percent of the formula that is one material, over all its lines.
fn total_share(lines: &[(LineShare, MaterialId)], material: MaterialId) -> Decimal {
    lines.iter().filter(|(_, each)| *each == material).map(|(share, _)| share.percent.value()).sum()
}

/// Raises a mass to the next step of the coarsest scale, so that a batch meant to fill containers is never short.
#[must_use]
pub fn round_up_to_scale(mass: Grams, scales: &Scales) -> Option<Grams> {
    let step = scales.coarsest_step().value();
    Grams::new(mass.value().checked_div(step)?.ceil().checked_mul(step)?).ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::batch_plan::BatchPlan;
    use crate::formula::LineId;
    use crate::quantity::Percent;
    use crate::weigh_sheet::lay_out;
    use proptest::prelude::*;
    use rust_decimal::dec;

    fn lines(percents: &[(u32, Decimal)]) -> Vec<(LineShare, MaterialId)> {
        (0u32..)
            .zip(percents)
            .map(|(at, (material, percent))| {
                let percent = Percent::new(*percent).unwrap();
                (LineShare { line: LineId(at), percent, quantum_satis: false }, MaterialId::Catalogue(*material))
            })
            .collect()
    }

    fn stock(material: u32, available: Decimal) -> Stock {
        Stock { material: MaterialId::Catalogue(material), available: Grams::new(available).unwrap() }
    }

    #[test]
    fn headspace_leaves_room_and_loss_is_a_share_of_what_is_made() {
        let mut containers = BatchPlan::default().containers;
        containers.headspace = Percent::new(dec!(10)).unwrap();
        let density = Density::new(dec!(0.98)).unwrap();
        // 4 × 30 mL × 0.9 × 0.98 g/mL ÷ 0.96
        assert_eq!(mass_to_fill(&containers, density).unwrap().value(), dec!(110.25));
        containers.loss = Percent::new(dec!(100)).unwrap();
        assert_eq!(mass_to_fill(&containers, density).unwrap_err().code(), "batch.allowance");
        containers.loss = Percent::ZERO;
        containers.count = 0;
        assert_eq!(mass_to_fill(&containers, density).unwrap_err().code(), "batch.nothing");
    }

    #[test]
    fn the_bottle_that_runs_out_first_sets_the_batch() {
        let lines = lines(&[(1, dec!(90)), (2, dec!(6)), (3, dec!(4))]);
        let at_hand = [stock(2, dec!(12.3)), stock(3, dec!(6.1)), stock(9, dec!(50))];
        let answer = most_from_stock(&lines, &at_hand, &Scales::default()).unwrap();
        assert_eq!(answer.limiting, MaterialId::Catalogue(3));
        assert_eq!(answer.batch.value(), dec!(152.5));
        let left: Vec<Decimal> = answer.left_over.iter().map(|each| each.available.value()).collect();
        assert_eq!(left, [dec!(3.15), dec!(0), dec!(50)]);
        let none = most_from_stock(&lines, &[stock(9, dec!(50))], &Scales::default());
        assert_eq!(none.unwrap_err().code(), "batch.nothing-at-hand");
    }

    proptest! {
        #[test]
        fn a_batch_from_stock_never_asks_for_more_than_there_is(
            weights in prop::collection::vec(1i64..1000, 2..12),
            twice: bool,
            available in prop::collection::vec(1i64..100_000, 1..4),
        ) {
            let whole: i64 = weights.iter().sum();
            let exact: Vec<Decimal> = weights.iter().map(|weight| Decimal::from(*weight) * dec!(100) / Decimal::from(whole)).collect();
            let rounded = crate::apportion::round_to_total(&exact, dec!(100), 2).unwrap();
            let percents: Vec<(u32, Decimal)> = (0u32..).zip(rounded).map(|(at, share)| (if twice { at / 2 } else { at }, share)).collect();
            let lines = lines(&percents);
            let at_hand: Vec<Stock> = (0u32..).zip(&available).map(|(at, mass)| stock(at, Decimal::new(*mass, 2))).collect();
            let scales = Scales::default();
            if let Ok(answer) = most_from_stock(&lines, &at_hand, &scales) {
                let shares: Vec<LineShare> = lines.iter().map(|(share, _)| *share).collect();
                let sheet = lay_out(&shares, answer.batch, &scales).unwrap();
                for each in &at_hand {
                    let used: Decimal = sheet.lines.iter().zip(&lines)
                        .filter(|(_, (_, material))| *material == each.material)
                        .map(|(line, _)| line.target.value()).sum();
                    prop_assert!(used <= each.available.value(), "{} of {}", used, each.available.value());
                }
            }
        }

        #[test]
        fn scaling_up_and_back_returns_the_percent(percent in 1i64..10_000_000, batch in 1i64..100_000_000) {
            let percent = Percent::new(Decimal::new(percent, 5)).unwrap();
            let batch = Grams::new(Decimal::new(batch, 2)).unwrap();
            let mass = percent.of(batch).unwrap();
            prop_assert_eq!(Percent::from_share(mass, batch).unwrap(), percent);
        }
    }
}
