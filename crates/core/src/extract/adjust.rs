//! What stands on the shelf: strengthen, dilute, blend, and account for what evaporated.

use super::liquid::Liquid;
use super::{ExtractError, MASS_PLACES, Reason, Result, check_share, scale_mass, share_of, take};
use crate::arithmetic::ArithmeticError;
use crate::chemistry::PhysicsError;
use crate::quantity::{Grams, Percent};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// What is poured in to change a strength.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Addition {
    /// Glycerin of this purity.
    Glycerin(Percent),
    /// Water.
    Water,
}

impl Addition {
    /// So many grams of it.
    fn pour(self, mass: Grams) -> Result<Liquid> {
        match self {
            Self::Water => Ok(Liquid::of_glycerin_and_water(Grams::ZERO, mass)),
            Self::Glycerin(purity) => {
                let glycerin = share_of(mass, check_share("purity of the glycerin", purity, Decimal::ZERO)?)?;
                Ok(Liquid::of_glycerin_and_water(glycerin, take("glycerin", mass, glycerin)?))
            }
        }
    }

    const fn strength(self) -> Percent {
        match self {
            Self::Water => Percent::ZERO,
            Self::Glycerin(purity) => purity,
        }
    }
}

/// A liquid with something poured in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Adjusted {
    /// How much was poured in.
    pub added: Grams,
    /// What stands there now.
    pub liquid: Liquid,
}

/// How much of an addition brings a liquid to a glycerin percent.
///
/// *Source:* alligation ([`crate::arithmetic::fortify`]), on exact masses.
///
/// # Errors
/// `extract.out-of-reach` if the addition pulls the other way or is no stronger than the target;
/// `extract.not-a-share` for a percent that is none.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::extract::{Addition, Liquid, adjust::bring_to};
/// use stillroom_core::{Grams, Percent};
/// let weak = Liquid::of_glycerin_and_water(Grams::new(dec!(50))?, Grams::new(dec!(50))?);
/// let target = Percent::new(dec!(75))?;
/// assert_eq!(bring_to(&weak, target, Addition::Glycerin(Percent::HUNDRED))?.added, Grams::new(dec!(100))?);
/// assert_eq!(bring_to(&weak, target, Addition::Water).unwrap_err().code(), "extract.out-of-reach");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn bring_to(liquid: &Liquid, target: Percent, addition: Addition) -> Result<Adjusted> {
    let percent = check_share("glycerin", target, Decimal::ZERO)?;
    let strength = check_share("purity of the glycerin", addition.strength(), Decimal::ZERO)?;
    let now = liquid.glycerin_percent()?;
    let excess = excess_over(liquid, percent)?;
    if excess.is_zero() {
        return Ok(Adjusted { added: Grams::ZERO, liquid: *liquid });
    }
    let pull = strength - percent;
    if pull.is_zero() || pull.is_sign_negative() == excess.is_sign_negative() {
        // What an addition on the wrong side does is only move further away; one on the right side that is not strong
        // enough comes as near as its own strength, of which no amount is enough.
        let towards = (strength - now.value()).is_sign_positive() == (percent - now.value()).is_sign_positive();
        return Err(ExtractError::OutOfReach {
            target: percent,
            nearest: if towards { strength } else { now.value() },
            unit: Percent::UNIT,
            reason: if excess.is_sign_negative() { Reason::NothingStronger } else { Reason::NothingWeaker },
        });
    }
    let added = excess.abs().checked_div(pull.abs()).ok_or(ArithmeticError::TooLarge)?;
    let added = Grams::new(added.round_dp(MASS_PLACES))?;
    Ok(Adjusted { added, liquid: liquid.checked_add(&addition.pour(added)?)? })
}

/// By how many gram-percent a liquid holds more glycerin than the target asks: exact, negative where it holds less.
fn excess_over(liquid: &Liquid, percent: Decimal) -> Result<Decimal> {
    let held = liquid.glycerin.value().checked_mul(Decimal::ONE_HUNDRED);
    let asked = liquid.mass()?.value().checked_mul(percent);
    held.zip(asked)
        .and_then(|(held, asked)| held.checked_sub(asked))
        .ok_or(ExtractError::Arithmetic(ArithmeticError::TooLarge))
}

/// All batches together.
///
/// # Errors
/// `arithmetic.too-large` past the largest mass.
pub fn pour_together(batches: &[Liquid]) -> Result<Liquid> {
    batches.iter().try_fold(Liquid::EMPTY, |sum, batch| sum.checked_add(batch))
}

/// A blend and what it leaves.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Blend {
    /// How much of each batch goes in, in their order.
    pub amounts: Vec<Grams>,
    /// What comes of it.
    pub liquid: Liquid,
    /// What is left of each batch.
    pub rest: Vec<Liquid>,
}

/// As much as can be blended to a glycerin percent from batches, or exactly `total` of it.
///
/// For the most, everything on the scarcer side of the target goes in whole, and of the other side the batches nearest to
/// the target come first. For less, every amount is taken down by the same share.
///
/// *Source:* alligation of any number of portions; the greedy order is optimal because one balance has to be met.
///
/// # Errors
/// `extract.out-of-reach` if all batches lie on one side of the target (nearest: the closest batch), or if there is less
/// than `total` (nearest: how much there is, in g).
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::extract::{Liquid, adjust::blend_to};
/// use stillroom_core::{Grams, Percent};
/// let batch = |glycerin, water| -> Result<Liquid, Box<dyn std::error::Error>> {
///     Ok(Liquid::of_glycerin_and_water(Grams::new(glycerin)?, Grams::new(water)?))
/// };
/// let batches = [batch(dec!(80), dec!(20))?, batch(dec!(50), dec!(50))?, batch(dec!(30), dec!(70))?];
/// let blend = blend_to(&batches, Percent::new(dec!(65))?, None)?;
/// assert_eq!(blend.liquid.glycerin_percent()?, Percent::new(dec!(65))?);
/// // The weakest batch stays on the shelf.
/// assert_eq!(blend.amounts[1..], [Grams::new(dec!(100))?, Grams::ZERO]);
/// assert_eq!(blend_to(&batches, Percent::new(dec!(85))?, None).unwrap_err().code(), "extract.out-of-reach");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn blend_to(batches: &[Liquid], target: Percent, total: Option<Grams>) -> Result<Blend> {
    let percent = check_share("glycerin", target, Decimal::ZERO)?;
    let most = pour(batches, choose_most(batches, percent)?)?;
    let Some(total) = total else { return Ok(most) };
    let whole = most.liquid.mass()?;
    if total > whole {
        return Err(ExtractError::OutOfReach {
            target: total.value(),
            nearest: whole.value(),
            unit: Grams::UNIT,
            reason: Reason::NotEnough,
        });
    }
    let amounts: Result<Vec<_>> =
        most.amounts.iter().map(|amount| scale_mass(*amount, total.value(), whole.value())).collect();
    pour(batches, amounts?)
}

/// Pours so much of each batch together.
fn pour(batches: &[Liquid], amounts: Vec<Grams>) -> Result<Blend> {
    let mut liquid = Liquid::EMPTY;
    let mut rest = Vec::with_capacity(batches.len());
    for (batch, amount) in batches.iter().zip(&amounts) {
        let (poured, left) = batch.split(*amount)?;
        liquid = liquid.checked_add(&poured)?;
        rest.push(left);
    }
    Ok(Blend { amounts, liquid, rest })
}

/// How much of each batch makes the most at the target.
fn choose_most(batches: &[Liquid], percent: Decimal) -> Result<Vec<Grams>> {
    struct Batch {
        index: usize,
        mass: Grams,
        excess: Decimal,
        percent: Decimal,
    }
    let mut amounts = vec![Grams::ZERO; batches.len()];
    let (mut above, mut below) = (Vec::new(), Vec::new());
    let mut on_target = false;
    for (index, liquid) in batches.iter().enumerate() {
        let mass = liquid.mass()?;
        if mass.is_zero() {
            continue;
        }
        let (excess, strength) = (excess_over(liquid, percent)?, liquid.glycerin_percent()?.value());
        if excess.is_zero() {
            amounts[index] = mass;
            on_target = true;
        } else {
            let side = if excess.is_sign_negative() { &mut below } else { &mut above };
            side.push(Batch { index, mass, excess: excess.abs(), percent: strength });
        }
    }
    if above.is_empty() && below.is_empty() && !on_target {
        return Err(ArithmeticError::NothingToMix.into());
    }
    if !on_target && (above.is_empty() || below.is_empty()) {
        let reason = if above.is_empty() { Reason::NothingStronger } else { Reason::NothingWeaker };
        let side = above.iter().chain(&below);
        let nearest = side.map(|batch| batch.percent).min_by_key(|strength| (*strength - percent).abs());
        return Err(ExtractError::OutOfReach {
            target: percent,
            nearest: nearest.unwrap_or(percent),
            unit: Percent::UNIT,
            reason,
        });
    }
    let sum = |side: &[Batch]| {
        side.iter()
            .try_fold(Decimal::ZERO, |sum, batch| sum.checked_add(batch.excess))
            .ok_or(ExtractError::Arithmetic(ArithmeticError::TooLarge))
    };
    let balance = sum(&above)?.min(sum(&below)?);
    for side in [&mut above, &mut below] {
        side.sort_by_key(|batch| ((batch.percent - percent).abs(), batch.index));
        let mut left = balance;
        for batch in side {
            let used = left.min(batch.excess);
            amounts[batch.index] =
                if used == batch.excess { batch.mass } else { scale_mass(batch.mass, used, batch.excess)? };
            left -= used;
        }
    }
    Ok(amounts)
}

/// A liquid that stood open.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Evaporated {
    /// Water that is gone; adding it back restores the liquid.
    pub lost_water: Grams,
    /// What stands there now.
    pub liquid: Liquid,
}

/// What is in a liquid that weighed its mass before and weighs `mass_now`: only water is taken to have left.
///
/// # Errors
/// `extract.gained-mass` if it weighs more now, `extract.nothing-left` if more is gone than there was water,
/// `physics.no-data` with ethanol in it, which leaves with the water in unknown parts.
pub fn account_for_evaporation(before: &Liquid, mass_now: Grams) -> Result<Evaporated> {
    if !before.ethanol.is_zero() {
        return Err(PhysicsError::NoData { quantity: "evaporation", with: "ethanol" }.into());
    }
    let mass = before.mass()?;
    let lost_water = mass.checked_sub(mass_now).ok_or(ExtractError::GainedMass { before: mass, now: mass_now })?;
    let water = take("water", before.water, lost_water)?;
    Ok(Evaporated { lost_water, liquid: Liquid { water, ..*before } })
}

#[cfg(test)]
mod tests {
    use super::super::liquid::Part;
    use super::super::liquid::tests::{grams, liquids};
    use super::super::plan::tests::{percents, plans};
    use super::*;
    use proptest::prelude::*;

    /// What rounding masses to fifteen places is worth in a percent of a few grams.
    const HAIR: Decimal = Decimal::from_parts(1, 0, 0, false, 11);

    fn mass_of_all(liquids: &[Liquid], part: Part) -> Decimal {
        liquids.iter().map(|liquid| liquid.mass_of(part).value()).sum()
    }

    const PARTS: [Part; 6] =
        [Part::Glycerin, Part::Water, Part::PropyleneGlycol, Part::Propanediol, Part::Ethanol, Part::PlantSolids];

    proptest! {
        #[test]
        fn from_plan_through_adjustment_to_blend_every_part_is_conserved(
            first in plans(), second in plans(), target in percents(1, 95), shelf in liquids(),
        ) {
            let pressed = [first, second].map(|plan| plan.press().unwrap());
            let extracts = pressed.map(|pressed| pressed.liquid);
            let addition =
                if extracts[0].glycerin_percent().unwrap() < target { Addition::Glycerin(Percent::HUNDRED) } else { Addition::Water };
            let adjusted = bring_to(&extracts[0], target, addition).unwrap();
            for part in PARTS {
                let poured = addition.pour(adjusted.added).unwrap().mass_of(part).value();
                prop_assert_eq!(adjusted.liquid.mass_of(part).value(), extracts[0].mass_of(part).value() + poured);
            }
            let batches = [adjusted.liquid, extracts[1], shelf];
            if let Ok(blend) = blend_to(&batches, target, None) {
                for part in PARTS {
                    let after = blend.liquid.mass_of(part).value() + mass_of_all(&blend.rest, part);
                    prop_assert_eq!(mass_of_all(&batches, part), after);
                }
            }
        }

        #[test]
        fn an_adjusted_liquid_has_the_target_strength(liquid in liquids(), target in percents(1, 95)) {
            let weak = liquid.glycerin_percent().unwrap() < target;
            let addition = if weak { Addition::Glycerin(Percent::HUNDRED) } else { Addition::Water };
            let met = bring_to(&liquid, target, addition).unwrap().liquid.glycerin_percent().unwrap();
            prop_assert!((met.value() - target.value()).abs() < HAIR, "{met:?} for {target:?}");
        }

        #[test]
        fn a_blend_has_the_target_strength_and_the_total_asked_for(
            batches in prop::collection::vec(liquids(), 1..6), target in percents(1, 80), share in 1_i64..=100,
        ) {
            match blend_to(&batches, target, None) {
                Ok(most) => {
                    let met = most.liquid.glycerin_percent().unwrap();
                    prop_assert!((met.value() - target.value()).abs() < HAIR, "{met:?} for {target:?}");
                    let whole = most.liquid.mass().unwrap();
                    let total = Grams::new(whole.value() * Decimal::new(share, 2)).unwrap();
                    let some = blend_to(&batches, target, Some(total)).unwrap();
                    prop_assert!((some.liquid.mass().unwrap().value() - total.value()).abs() < HAIR);
                    let met = some.liquid.glycerin_percent().unwrap();
                    prop_assert!((met.value() - target.value()).abs() < HAIR, "{met:?} for {target:?}");
                    let more = Grams::new(whole.value() + Decimal::ONE).unwrap();
                    prop_assert_eq!(blend_to(&batches, target, Some(more)).unwrap_err().code(), "extract.out-of-reach");
                }
                Err(ExtractError::OutOfReach { nearest, .. }) => {
                    let strengths: Vec<_> =
                        batches.iter().map(|batch| batch.glycerin_percent().unwrap().value()).collect();
                    prop_assert!(strengths.contains(&nearest));
                    let above = strengths.iter().all(|strength| *strength > target.value());
                    let below = strengths.iter().all(|strength| *strength < target.value());
                    prop_assert!(above || below);
                }
                Err(other) => prop_assert!(false, "{other}"),
            }
        }

        #[test]
        fn adding_the_lost_water_back_restores_the_liquid(liquid in liquids(), share in 0_i64..=1000) {
            let liquid = Liquid { ethanol: Grams::ZERO, ..liquid };
            let gone = liquid.water.value() * Decimal::new(share, 3);
            let now = Grams::new(liquid.mass().unwrap().value() - gone).unwrap();
            let found = account_for_evaporation(&liquid, now).unwrap();
            prop_assert_eq!(found.lost_water.value(), gone);
            let restored = found.liquid.checked_add(&Addition::Water.pour(found.lost_water).unwrap()).unwrap();
            prop_assert_eq!(restored, liquid);
        }

        #[test]
        fn no_adjustment_panics(liquid in liquids(), target in percents(-20, 150), purity in percents(-20, 150), mass in grams()) {
            let _ = bring_to(&liquid, target, Addition::Glycerin(purity));
            let _ = bring_to(&Liquid::EMPTY, target, Addition::Water);
            let _ = blend_to(&[liquid, Liquid::EMPTY], target, Some(mass));
            let _ = account_for_evaporation(&liquid, mass);
        }
    }

    #[test]
    fn glycerin_weaker_than_the_target_comes_no_nearer_than_itself() {
        let gram = |value: i64| Grams::new(Decimal::from(value)).unwrap();
        let weak = Liquid::of_glycerin_and_water(gram(50), gram(50));
        let percent = |value: i64| Percent::new(Decimal::from(value)).unwrap();
        let error = bring_to(&weak, percent(90), Addition::Glycerin(percent(86))).unwrap_err();
        let ExtractError::OutOfReach { nearest, reason, .. } = error else { panic!("{error}") };
        assert_eq!((nearest, reason), (Decimal::from(86), Reason::NothingStronger));
    }
}
