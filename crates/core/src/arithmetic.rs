//! Pharmaceutical arithmetic: alligation, dilution, percent and ratio strength, scaling, density, minimum weight.
//!
//! Everything is [`Decimal`]: sums and differences are exact, products and quotients are right to 28 significant
//! digits. Amounts are masses with mass percents or volumes with volume percents; the two are never mixed, and volumes
//! are taken not to shrink on mixing (for glycerin and ethanol by volume use [`crate::chemistry`] and weigh).
//!
//! *Source:* the sums are those of any textbook of pharmaceutical calculations; they are held to published worked
//! examples by the evidence set `arithmetic.worked-examples`.

use rust_decimal::Decimal;

/// Why a sum has no answer.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ArithmeticError {
    /// A number must be greater than nothing here.
    #[error("{quantity} is {value}, which is not above zero")]
    NotPositive {
        /// Which number.
        quantity: &'static str,
        /// What was given.
        value: Decimal,
    },
    /// A number must not be below nothing here.
    #[error("{quantity} is {value}, which is below zero")]
    Negative {
        /// Which number.
        quantity: &'static str,
        /// What was given.
        value: Decimal,
    },
    /// The target strength cannot be reached by mixing what there is.
    #[error("{target} does not lie between {low} and {high}")]
    TargetOutside {
        /// The strength asked for.
        target: Decimal,
        /// The weakest that can be reached.
        low: Decimal,
        /// The strongest that can be reached.
        high: Decimal,
    },
    /// Nothing was given to mix.
    #[error("there is nothing to mix")]
    NothingToMix,
    /// The result leaves the range of a decimal number.
    #[error("the result is too large")]
    TooLarge,
}

impl ArithmeticError {
    /// Every code this module can answer with.
    pub const CODES: [&'static str; 5] = [
        "arithmetic.not-positive",
        "arithmetic.negative",
        "arithmetic.target-outside",
        "arithmetic.nothing-to-mix",
        "arithmetic.too-large",
    ];

    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NotPositive { .. } => "arithmetic.not-positive",
            Self::Negative { .. } => "arithmetic.negative",
            Self::TargetOutside { .. } => "arithmetic.target-outside",
            Self::NothingToMix => "arithmetic.nothing-to-mix",
            Self::TooLarge => "arithmetic.too-large",
        }
    }
}

type Result<T> = core::result::Result<T, ArithmeticError>;

fn positive(quantity: &'static str, value: Decimal) -> Result<Decimal> {
    if value > Decimal::ZERO { Ok(value) } else { Err(ArithmeticError::NotPositive { quantity, value }) }
}

fn not_negative(quantity: &'static str, value: Decimal) -> Result<Decimal> {
    if value >= Decimal::ZERO { Ok(value) } else { Err(ArithmeticError::Negative { quantity, value }) }
}

fn times(a: Decimal, b: Decimal) -> Result<Decimal> {
    a.checked_mul(b).ok_or(ArithmeticError::TooLarge)
}

fn over(a: Decimal, b: Decimal) -> Result<Decimal> {
    a.checked_div(b).ok_or(ArithmeticError::TooLarge)
}

fn plus(a: Decimal, b: Decimal) -> Result<Decimal> {
    a.checked_add(b).ok_or(ArithmeticError::TooLarge)
}

fn minus(a: Decimal, b: Decimal) -> Result<Decimal> {
    a.checked_sub(b).ok_or(ArithmeticError::TooLarge)
}

/// `a · b / c`, dividing first where the product would be too large.
fn rule_of_three(a: Decimal, b: Decimal, c: Decimal) -> Result<Decimal> {
    match a.checked_mul(b) {
        Some(product) => over(product, c),
        None => times(over(a, c)?, b),
    }
}

/// So much of a mixture, and how strong it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Portion {
    /// Mass, or volume; the same unit for all portions of a sum.
    pub amount: Decimal,
    /// Strength in percent, by mass for masses and by volume for volumes.
    pub percent: Decimal,
}

/// Strength of several portions poured together (alligation medial).
///
/// # Errors
/// `arithmetic.nothing-to-mix` for no portions or a total of nothing, `arithmetic.negative` for a negative amount.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::arithmetic::{Portion, mix_strength};
/// let portions = [(3000, 40), (1000, 60), (1000, 70)]
///     .map(|(amount, percent)| Portion { amount: amount.into(), percent: percent.into() });
/// assert_eq!(mix_strength(&portions)?, dec!(50));
/// assert_eq!(mix_strength(&[]).unwrap_err().code(), "arithmetic.nothing-to-mix");
/// # Ok::<(), stillroom_core::arithmetic::ArithmeticError>(())
/// ```
pub fn mix_strength(portions: &[Portion]) -> Result<Decimal> {
    let mut total = Decimal::ZERO;
    let mut substance = Decimal::ZERO;
    for portion in portions {
        total = plus(total, not_negative("amount", portion.amount)?)?;
        substance = plus(substance, times(portion.amount, portion.percent)?)?;
    }
    if total.is_zero() {
        return Err(ArithmeticError::NothingToMix);
    }
    over(substance, total)
}

/// Parts of a strong and a weak mixture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Parts {
    /// Of the strong one.
    pub high: Decimal,
    /// Of the weak one.
    pub low: Decimal,
}

/// In what parts a strong and a weak mixture give the target (alligation alternate). Works for strengths in percent
/// and for specific gravities.
///
/// # Errors
/// `arithmetic.target-outside` unless `low ≤ target ≤ high` and `low < high`.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::arithmetic::{Parts, alligate};
/// assert_eq!(alligate(dec!(95), dec!(50), dec!(70))?, Parts { high: dec!(20), low: dec!(25) });
/// assert_eq!(alligate(dec!(50), dec!(20), dec!(70)).unwrap_err().code(), "arithmetic.target-outside");
/// # Ok::<(), stillroom_core::arithmetic::ArithmeticError>(())
/// ```
pub fn alligate(high: Decimal, low: Decimal, target: Decimal) -> Result<Parts> {
    if low >= high || target < low || target > high {
        return Err(ArithmeticError::TargetOutside { target, low, high });
    }
    Ok(Parts { high: minus(target, low)?, low: minus(high, target)? })
}

/// How much of a strong and a weak mixture make `total` at the target.
///
/// # Errors
/// As [`alligate`]; `arithmetic.negative` for a negative total.
pub fn alligate_to_total(high: Decimal, low: Decimal, target: Decimal, total: Decimal) -> Result<Parts> {
    let total = not_negative("total", total)?;
    let parts = alligate(high, low, target)?;
    let strong = rule_of_three(parts.high, total, plus(parts.high, parts.low)?)?;
    // What is left, not a second quotient: the two must sum to the total exactly.
    Ok(Parts { high: strong, low: minus(total, strong)? })
}

/// How much of something at `added_percent` brings `amount` from `percent` to `target`: strengthens with something
/// stronger, weakens with something weaker.
///
/// # Errors
/// `arithmetic.target-outside` if the target does not lie between `percent` and `added_percent`, or equals
/// `added_percent`; `arithmetic.negative` for a negative amount.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::arithmetic::fortify;
/// // 3200 g of a 5 % ointment to 20 % with the pure powder.
/// assert_eq!(fortify(dec!(3200), dec!(5), dec!(20), dec!(100))?, dec!(600));
/// # Ok::<(), stillroom_core::arithmetic::ArithmeticError>(())
/// ```
pub fn fortify(amount: Decimal, percent: Decimal, target: Decimal, added_percent: Decimal) -> Result<Decimal> {
    let amount = not_negative("amount", amount)?;
    if target == percent {
        return Ok(Decimal::ZERO);
    }
    let (low, high) = if percent < added_percent { (percent, added_percent) } else { (added_percent, percent) };
    if target <= low || target >= high {
        return Err(ArithmeticError::TargetOutside { target, low, high });
    }
    rule_of_three(amount, minus(target, percent)?, minus(added_percent, target)?)
}

/// Stock and what it is made up with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Dilution {
    /// How much of the stock.
    pub stock: Decimal,
    /// How much of the diluent.
    pub diluent: Decimal,
}

/// Stock and diluent for `total` at `target_percent`: `C₁V₁ = C₂V₂`, by volume or by mass.
///
/// # Errors
/// `arithmetic.target-outside` if the target is above the stock, `arithmetic.not-positive` for a stock of no strength,
/// `arithmetic.negative` for a negative target or total.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::arithmetic::{Dilution, dilute_stock};
/// let dilution = dilute_stock(dec!(5), dec!(0.5), dec!(24))?;
/// assert_eq!(dilution, Dilution { stock: dec!(2.4), diluent: dec!(21.6) });
/// # Ok::<(), stillroom_core::arithmetic::ArithmeticError>(())
/// ```
pub fn dilute_stock(stock_percent: Decimal, target_percent: Decimal, total: Decimal) -> Result<Dilution> {
    let stock_percent = positive("stock strength", stock_percent)?;
    let target = not_negative("target strength", target_percent)?;
    let total = not_negative("total", total)?;
    if target > stock_percent {
        return Err(ArithmeticError::TargetOutside { target, low: Decimal::ZERO, high: stock_percent });
    }
    let stock = rule_of_three(target, total, stock_percent)?;
    Ok(Dilution { stock, diluent: minus(total, stock)? })
}

/// How much at `target_percent` a given amount of stock makes.
///
/// # Errors
/// `arithmetic.target-outside` if the target is above the stock, `arithmetic.not-positive` for a target of nothing,
/// `arithmetic.negative` for a negative amount.
pub fn dilution_yield(stock_percent: Decimal, stock: Decimal, target_percent: Decimal) -> Result<Decimal> {
    let target = positive("target strength", target_percent)?;
    let stock = not_negative("stock", stock)?;
    if target > stock_percent {
        return Err(ArithmeticError::TargetOutside { target, low: Decimal::ZERO, high: stock_percent });
    }
    rule_of_three(stock_percent, stock, target)
}

/// Strength of a stock made up to `total`.
///
/// # Errors
/// `arithmetic.not-positive` for a total of nothing, `arithmetic.negative` for negative input.
pub fn diluted_strength(stock_percent: Decimal, stock: Decimal, total: Decimal) -> Result<Decimal> {
    rule_of_three(
        not_negative("stock strength", stock_percent)?,
        not_negative("stock", stock)?,
        positive("total", total)?,
    )
}

/// How much substance a total holds: percent of it.
///
/// # Errors
/// `arithmetic.negative` for negative input.
pub fn amount_in(total: Decimal, percent: Decimal) -> Result<Decimal> {
    rule_of_three(not_negative("total", total)?, not_negative("percent", percent)?, Decimal::ONE_HUNDRED)
}

/// The total in which `amount` is `percent`.
///
/// # Errors
/// `arithmetic.not-positive` for zero percent, `arithmetic.negative` for a negative amount.
pub fn total_holding(amount: Decimal, percent: Decimal) -> Result<Decimal> {
    rule_of_three(not_negative("amount", amount)?, Decimal::ONE_HUNDRED, positive("percent", percent)?)
}

/// Milligrams per millilitre of a percent by mass in volume (g in 100 mL).
///
/// # Errors
/// `arithmetic.negative` for a negative percent.
pub fn milligrams_per_millilitre(percent: Decimal) -> Result<Decimal> {
    times(not_negative("percent", percent)?, Decimal::TEN)
}

/// Percent of a ratio strength of one in `parts`.
///
/// # Errors
/// `arithmetic.not-positive` for no parts.
pub fn percent_from_ratio(parts: Decimal) -> Result<Decimal> {
    over(Decimal::ONE_HUNDRED, positive("parts", parts)?)
}

/// In how many parts a percent is one part.
///
/// # Errors
/// `arithmetic.not-positive` for zero percent.
pub fn ratio_from_percent(percent: Decimal) -> Result<Decimal> {
    over(Decimal::ONE_HUNDRED, positive("percent", percent)?)
}

/// By what a formula of `written_total` is multiplied to make `total`.
///
/// # Errors
/// `arithmetic.not-positive` for a formula of nothing, `arithmetic.negative` for a negative total.
pub fn scale_factor(written_total: Decimal, total: Decimal) -> Result<Decimal> {
    over(not_negative("total", total)?, positive("written total", written_total)?)
}

/// One amount of a formula of `written_total`, reduced or enlarged to `total`.
///
/// # Errors
/// As [`scale_factor`]; `arithmetic.negative` for a negative amount.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::arithmetic::rescale_amount;
/// // 75 g in a litre of lotion; make 250 mL.
/// assert_eq!(rescale_amount(dec!(75), dec!(1000), dec!(250))?, dec!(18.75));
/// # Ok::<(), stillroom_core::arithmetic::ArithmeticError>(())
/// ```
pub fn rescale_amount(amount: Decimal, written_total: Decimal, total: Decimal) -> Result<Decimal> {
    rule_of_three(
        not_negative("amount", amount)?,
        not_negative("total", total)?,
        positive("written total", written_total)?,
    )
}

/// What is still missing to a total: quantum satis.
///
/// # Errors
/// `arithmetic.target-outside` if the parts already exceed the total.
pub fn quantum_satis(total: Decimal, parts: &[Decimal]) -> Result<Decimal> {
    let sum = parts.iter().try_fold(Decimal::ZERO, |sum, part| plus(sum, not_negative("part", *part)?))?;
    if sum > total {
        return Err(ArithmeticError::TargetOutside { target: total, low: sum, high: Decimal::MAX });
    }
    minus(total, sum)
}

/// Specific gravity of a liquid of which `volume` millilitres weigh `mass` grams, taking water as 1 g/mL.
///
/// # Errors
/// `arithmetic.not-positive` for no volume, `arithmetic.negative` for a negative mass.
pub fn specific_gravity(mass: Decimal, volume: Decimal) -> Result<Decimal> {
    over(not_negative("mass", mass)?, positive("volume", volume)?)
}

/// Specific gravity from three weighings of one bottle: empty, full of water, full of the liquid.
///
/// # Errors
/// `arithmetic.not-positive` unless both full bottles weigh more than the empty one.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::arithmetic::weigh_pycnometer;
/// let specific_gravity = weigh_pycnometer(dec!(21.62), dec!(46.71), dec!(43.28))?;
/// assert_eq!(specific_gravity.round_dp(3), dec!(0.863));
/// # Ok::<(), stillroom_core::arithmetic::ArithmeticError>(())
/// ```
pub fn weigh_pycnometer(empty: Decimal, with_water: Decimal, with_liquid: Decimal) -> Result<Decimal> {
    over(
        positive("mass of the liquid", minus(with_liquid, empty)?)?,
        positive("mass of the water", minus(with_water, empty)?)?,
    )
}

/// Mass in grams of a volume in millilitres.
///
/// # Errors
/// `arithmetic.not-positive` for no specific gravity, `arithmetic.negative` for a negative volume.
pub fn mass_of_volume(volume: Decimal, specific_gravity: Decimal) -> Result<Decimal> {
    times(not_negative("volume", volume)?, positive("specific gravity", specific_gravity)?)
}

/// Volume in millilitres of a mass in grams.
///
/// # Errors
/// `arithmetic.not-positive` for no specific gravity, `arithmetic.negative` for a negative mass.
pub fn volume_of_mass(mass: Decimal, specific_gravity: Decimal) -> Result<Decimal> {
    over(not_negative("mass", mass)?, positive("specific gravity", specific_gravity)?)
}

/// Millilitres that one gram takes.
///
/// # Errors
/// `arithmetic.not-positive` for no specific gravity.
pub fn specific_volume(specific_gravity: Decimal) -> Result<Decimal> {
    over(Decimal::ONE, positive("specific gravity", specific_gravity)?)
}

/// The least mass in grams that a scale of `readability` grams weighs within `tolerated_percent`.
///
/// The standard deviation of repeated weighings is taken as the least the rule allows, 0.41 of the readability, so the
/// answer is the best case for that scale: `2 · 0.41 · readability / tolerated share`, which at 0.10 % is 820 times the
/// readability.
///
/// *Source:* USP general chapter <41>, Balances (0.10 %); other tolerances are the maker's own choice.
///
/// # Errors
/// `arithmetic.not-positive` for no readability or no tolerance.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::arithmetic::minimum_weight;
/// assert_eq!(minimum_weight(dec!(0.01), dec!(0.10))?, dec!(8.2));
/// assert_eq!(minimum_weight(dec!(0.01), dec!(5))?, dec!(0.164));
/// # Ok::<(), stillroom_core::arithmetic::ArithmeticError>(())
/// ```
pub fn minimum_weight(readability: Decimal, tolerated_percent: Decimal) -> Result<Decimal> {
    const TWO_DEVIATIONS_IN_PERCENT: Decimal = Decimal::from_parts(82, 0, 0, false, 0);
    rule_of_three(
        positive("readability", readability)?,
        TWO_DEVIATIONS_IN_PERCENT,
        positive("tolerated error", tolerated_percent)?,
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Any decimal at all, including the largest, the smallest and zero.
    fn any_decimal() -> impl Strategy<Value = Decimal> {
        prop_oneof![
            (any::<u32>(), any::<u32>(), any::<u32>(), any::<bool>(), 0_u32..=28).prop_map(
                |(low, middle, high, negative, scale)| Decimal::from_parts(low, middle, high, negative, scale)
            ),
            (-10_000_i64..10_000, 0_u32..4).prop_map(|(number, scale)| Decimal::new(number, scale)),
            Just(Decimal::MAX),
            Just(Decimal::MIN),
            Just(Decimal::ZERO),
        ]
    }

    /// A number a person would type: above nothing, up to ten thousand, three places.
    fn typed() -> impl Strategy<Value = Decimal> {
        (1_i64..10_000_000).prop_map(|number| Decimal::new(number, 3))
    }

    proptest! {
        #[test]
        fn no_input_panics(a in any_decimal(), b in any_decimal(), c in any_decimal(), d in any_decimal()) {
            let portions = [Portion { amount: a, percent: b }, Portion { amount: c, percent: d }];
            let _ = mix_strength(&portions);
            let _ = alligate(a, b, c);
            let _ = alligate_to_total(a, b, c, d);
            let _ = fortify(a, b, c, d);
            let _ = dilute_stock(a, b, c);
            let _ = dilution_yield(a, b, c);
            let _ = diluted_strength(a, b, c);
            let _ = (amount_in(a, b), total_holding(a, b), milligrams_per_millilitre(a));
            let _ = (percent_from_ratio(a), ratio_from_percent(a), scale_factor(a, b), rescale_amount(a, b, c));
            let _ = (quantum_satis(a, &[b, c, d]), specific_gravity(a, b), weigh_pycnometer(a, b, c));
            let _ = (mass_of_volume(a, b), volume_of_mass(a, b), specific_volume(a), minimum_weight(a, b));
        }

        #[test]
        fn alligated_parts_mix_to_the_target(low in typed(), step in typed(), share in 0_i64..=1000, total in typed()) {
            let high = low + step;
            let target = low + step * Decimal::new(share, 3);
            let parts = alligate_to_total(high, low, target, total).unwrap();
            prop_assert_eq!(parts.high + parts.low, total);
            let mixed = mix_strength(&[
                Portion { amount: parts.high, percent: high },
                Portion { amount: parts.low, percent: low },
            ]).unwrap();
            prop_assert!((mixed - target).abs() < Decimal::new(1, 12), "{mixed} for {target}");
        }

        #[test]
        fn what_fortifies_a_mixture_brings_it_to_the_target(
            amount in typed(), percent in 0_i64..50, rise in 1_i64..40, above in 1_i64..10,
        ) {
            let (percent, target) = (Decimal::from(percent), Decimal::from(percent + rise));
            let added_percent = target + Decimal::from(above);
            let added = fortify(amount, percent, target, added_percent).unwrap();
            let mixed =
                mix_strength(&[Portion { amount, percent }, Portion { amount: added, percent: added_percent }]).unwrap();
            prop_assert!((mixed - target).abs() < Decimal::new(1, 12), "{mixed} for {target}");
        }

        #[test]
        fn a_dilution_and_its_yield_are_inverse(stock in typed(), share in 1_i64..=1000, total in typed()) {
            let target = stock * Decimal::new(share, 3);
            let dilution = dilute_stock(stock, target, total).unwrap();
            prop_assert_eq!(dilution.stock + dilution.diluent, total);
            let back = dilution_yield(stock, dilution.stock, target).unwrap();
            prop_assert!((back - total).abs() < Decimal::new(1, 12));
        }
    }

    #[test]
    fn a_target_nothing_reaches_names_what_can_be_reached() {
        let error = fortify(Decimal::TEN, Decimal::TEN, Decimal::from(80), Decimal::from(70)).unwrap_err();
        let (low, high) = (Decimal::TEN, Decimal::from(70));
        assert_eq!(error, ArithmeticError::TargetOutside { target: Decimal::from(80), low, high });
    }
}
