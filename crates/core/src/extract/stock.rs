//! Stock solutions: what goes in, what they bring, and alcohol with its contraction.

use super::{ExtractError, Reason, Result, check_share, scale_mass, share_of, take};
use crate::arithmetic::ArithmeticError;
use crate::chemistry::interpolation::solve_rising;
use crate::chemistry::{MassFraction, Range, Temperature, ethanol};
use crate::quantity::{Grams, Percent};
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use serde::{Deserialize, Serialize};

/// A solution kept in stock, in percent by mass.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct StockSolution {
    /// Strength of the active substance.
    pub strength: Percent,
    /// How much of the raw material is the substance; the rest counts as solvent (an acid sold at 80 % brings water).
    pub purity: Percent,
    /// Preservative it needs itself.
    pub preservative: Percent,
}

/// What to weigh for a stock solution; the three sum to its mass exactly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct StockRecipe {
    /// Raw material: powder, or acid as it is sold.
    pub raw_material: Grams,
    /// Preservative.
    pub preservative: Grams,
    /// Solvent that makes it up.
    pub solvent: Grams,
}

/// What some of a stock solution brings into a product; the three sum to its mass exactly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Brought {
    /// Active substance.
    pub substance: Grams,
    /// Preservative.
    pub preservative: Grams,
    /// Solvent, with what the raw material brought of it.
    pub solvent: Grams,
}

impl StockSolution {
    fn check(&self) -> Result<()> {
        check_share("strength", self.strength, Decimal::ZERO)?;
        check_share("purity", self.purity, Decimal::ONE)?;
        check_share("preservative", self.preservative, Decimal::ZERO)?;
        Ok(())
    }

    /// What to weigh for so much of it.
    ///
    /// # Errors
    /// `extract.not-a-share` for a percent that is none, `extract.out-of-reach` if raw material and preservative exceed
    /// the whole (nearest: the strongest there can be).
    ///
    /// ```
    /// use rust_decimal::dec;
    /// use stillroom_core::extract::stock::StockSolution;
    /// use stillroom_core::{Grams, Percent};
    /// let percent = |value| Percent::new(value);
    /// let stock = StockSolution { strength: percent(dec!(1))?, purity: percent(dec!(100))?, preservative: percent(dec!(0.8))? };
    /// let recipe = stock.make(Grams::new(dec!(250))?)?;
    /// assert_eq!(recipe.raw_material, Grams::new(dec!(2.5))?);
    /// assert_eq!(recipe.solvent, Grams::new(dec!(245.5))?);
    /// let too_strong = StockSolution { strength: percent(dec!(90))?, purity: percent(dec!(80))?, ..stock };
    /// assert_eq!(too_strong.make(Grams::new(dec!(250))?).unwrap_err().code(), "extract.out-of-reach");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn make(&self, total: Grams) -> Result<StockRecipe> {
        self.check()?;
        let raw_material = scale_mass(total, self.strength.value(), self.purity.value())?;
        let preservative = share_of(total, self.preservative.value())?;
        let strongest = (Decimal::ONE_HUNDRED - self.preservative.value()) * self.purity.value() / Decimal::ONE_HUNDRED;
        if self.strength.value() > strongest {
            return Err(ExtractError::OutOfReach {
                target: self.strength.value(),
                nearest: strongest,
                unit: Percent::UNIT,
                reason: Reason::NothingStronger,
            });
        }
        let rest = take("stock solution", total, raw_material)?;
        Ok(StockRecipe { raw_material, preservative, solvent: take("stock solution", rest, preservative)? })
    }

    /// What so much of it brings.
    ///
    /// # Errors
    /// `extract.not-a-share` for a percent that is none, `extract.nothing-left` if substance and preservative exceed the
    /// whole.
    pub fn bring(&self, mass: Grams) -> Result<Brought> {
        self.check()?;
        let substance = share_of(mass, self.strength.value())?;
        let preservative = share_of(mass, self.preservative.value())?;
        let rest = take("stock solution", mass, substance)?;
        Ok(Brought { substance, preservative, solvent: take("stock solution", rest, preservative)? })
    }

    /// How much of it gives a batch so many percent of the substance.
    ///
    /// # Errors
    /// `extract.not-a-share` for a percent that is none, `extract.out-of-reach` if the stock is weaker than that
    /// (nearest: its own strength).
    pub fn portion_for(&self, wanted: Percent, batch: Grams) -> Result<Grams> {
        self.check()?;
        let percent = check_share("wanted", wanted, Decimal::ZERO)?;
        if wanted > self.strength {
            return Err(ExtractError::OutOfReach {
                target: percent,
                nearest: self.strength.value(),
                unit: Percent::UNIT,
                reason: Reason::NothingStronger,
            });
        }
        if percent.is_zero() {
            return Ok(Grams::ZERO);
        }
        scale_mass(batch, percent, self.strength.value())
    }
}

/// How much alcohol is made.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum AlcoholAmount {
    /// So many millilitres at 20 °C of the mixture.
    Mixture(f64),
    /// All of so many millilitres at 20 °C of the stronger one.
    Strong(f64),
    /// All of so many millilitres at 20 °C of the weaker one.
    Weak(f64),
}

/// Two strengths of alcohol mixed: volumes at 20 °C, which do not add up, and masses, which do.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct AlcoholMixture {
    /// Of the stronger, in mL.
    pub strong_volume: f64,
    /// Of the stronger, in g.
    pub strong_mass: f64,
    /// Of the weaker or water, in mL.
    pub weak_volume: f64,
    /// Of the weaker or water, in g.
    pub weak_mass: f64,
    /// Of the mixture, in mL.
    pub volume: f64,
    /// By how much the mixture takes less room than its parts, in mL.
    pub contraction: f64,
}

/// What a volume of alcohol can be, in mL.
const VOLUME: Range = Range { equation: "extract.alcohol", quantity: "volume", unit: "mL", minimum: 0.0, maximum: 1e9 };

/// Mixes two strengths of ethanol by volume at 20 °C to one between them; water is 0 %.
///
/// By mass through the densities, because on mixing the volume shrinks: two volumes rarely make their sum.
///
/// *Valid for* 0 to 100 % by volume.
///
/// *Source:* OIML R 22 (1975).
///
/// # Errors
/// `extract.out-of-reach` unless the target lies between the two (nearest: the closer of the two);
/// `physics.out-of-range` for a strength or a volume that is none.
///
/// ```
/// use stillroom_core::extract::stock::{AlcoholAmount, mix_alcohol};
/// // A litre of 70 % from 96 % and water.
/// let mixture = mix_alcohol(96.0, 0.0, 70.0, AlcoholAmount::Mixture(1000.0))?;
/// assert!((mixture.strong_volume - 729.2).abs() < 0.1);
/// assert!((mixture.weak_volume - 297.3).abs() < 0.1 && mixture.contraction > 26.0);
/// assert_eq!(mix_alcohol(40.0, 0.0, 70.0, AlcoholAmount::Strong(100.0)).unwrap_err().code(), "extract.out-of-reach");
/// # Ok::<(), stillroom_core::extract::ExtractError>(())
/// ```
pub fn mix_alcohol(strong: f64, weak: f64, target: f64, amount: AlcoholAmount) -> Result<AlcoholMixture> {
    let [high, low, wanted] = [strong, weak, target].map(ethanol::fraction_from_volume_percent);
    let [high, low, wanted] = [high?, low?, wanted?];
    if !(weak <= target && target <= strong && weak < strong) {
        let nearest = if (target - strong).abs() < (target - weak).abs() { strong } else { weak };
        let decimal = |value| Decimal::from_f64(value).ok_or(ArithmeticError::TooLarge);
        return Err(ExtractError::OutOfReach {
            target: decimal(target)?,
            nearest: decimal(nearest)?,
            unit: ethanol::VOLUME_PERCENT.unit,
            reason: if target > nearest { Reason::NothingStronger } else { Reason::NothingWeaker },
        });
    }
    let density = |strength: MassFraction| ethanol::density(strength, Temperature::TWENTY);
    let share_of_strong = (wanted.value() - low.value()) / (high.value() - low.value());
    let whole = match amount {
        AlcoholAmount::Mixture(volume) => VOLUME.check(volume)? * density(wanted)?,
        AlcoholAmount::Strong(volume) => VOLUME.check(volume)? * density(high)? / share_of_strong,
        AlcoholAmount::Weak(volume) => VOLUME.check(volume)? * density(low)? / (1.0 - share_of_strong),
    };
    // Weakening to the weaker strength itself would need no end of it.
    let endless = Range { quantity: "mass", unit: "g", ..VOLUME };
    let whole = endless.check(whole)?;
    let (strong_mass, weak_mass) = (whole * share_of_strong, whole * (1.0 - share_of_strong));
    let (strong_volume, weak_volume) = (strong_mass / density(high)?, weak_mass / density(low)?);
    let volume = whole / density(wanted)?;
    let contraction = strong_volume + weak_volume - volume;
    Ok(AlcoholMixture { strong_volume, strong_mass, weak_volume, weak_mass, volume, contraction })
}

/// Strength by volume at 20 °C of ethanol read with a hydrometer as density in g/mL at another temperature.
///
/// *Valid for* -20 to 40 °C.
///
/// *Source:* OIML R 22 (1975), solved by halving.
///
/// # Errors
/// `physics.out-of-range` for a density no strength has at this temperature.
pub fn alcohol_from_density(density: f64, temperature: Temperature) -> Result<f64> {
    let at = |w: f64| ethanol::density(MassFraction::new(w)?, temperature);
    let range =
        Range { equation: "ethanol.density", quantity: "density", unit: "g/mL", minimum: at(1.0)?, maximum: at(0.0)? };
    let density = range.check(density)?;
    let w = solve_rising(0.0, 1.0, -density, |w| at(w).ok().map(|density| -density));
    Ok(ethanol::volume_percent(MassFraction::new(w.unwrap_or(f64::NAN))?))
}

#[cfg(test)]
mod tests {
    use super::super::liquid::tests::grams;
    use super::super::plan::tests::percents;
    use super::*;
    use proptest::prelude::*;
    use rust_decimal::dec;

    proptest! {
        #[test]
        fn a_stock_holds_what_was_weighed(
            strength in percents(1, 60), purity in percents(65, 100), preservative in percents(0, 2), total in grams(),
        ) {
            let stock = StockSolution { strength, purity, preservative };
            let (recipe, brought) = (stock.make(total).unwrap(), stock.bring(total).unwrap());
            let sum = |parts: [Grams; 3]| parts.iter().map(|part| part.value()).sum::<Decimal>();
            prop_assert_eq!(sum([recipe.raw_material, recipe.preservative, recipe.solvent]), total.value());
            prop_assert_eq!(sum([brought.substance, brought.preservative, brought.solvent]), total.value());
            let pure = recipe.raw_material.value() * purity.value() / Decimal::ONE_HUNDRED;
            prop_assert!((pure - brought.substance.value()).abs() < dec!(0.000000000001));
        }

        #[test]
        fn a_portion_brings_what_is_wanted(strength in percents(1, 60), part in 0_i64..=100, batch in grams()) {
            let stock = StockSolution { strength, purity: Percent::HUNDRED, preservative: Percent::ZERO };
            let wanted = Percent::new(strength.value() * Decimal::new(part, 2)).unwrap();
            let portion = stock.portion_for(wanted, batch).unwrap();
            let brought = stock.bring(portion).unwrap().substance.value();
            prop_assert!((brought - batch.value() * wanted.value() / Decimal::ONE_HUNDRED).abs() < dec!(0.000000000001));
        }

        #[test]
        fn mixed_alcohol_keeps_its_ethanol(weak in 0.0..60.0_f64, step in 5.0..40.0_f64, part in 0.05..0.95_f64, volume in 1.0..5_000.0_f64) {
            let (strong, target) = (weak + step, weak + step * part);
            let mixture = mix_alcohol(strong, weak, target, AlcoholAmount::Mixture(volume)).unwrap();
            let pure = |volume: f64, percent: f64| volume * percent;
            let parts = pure(mixture.strong_volume, strong) + pure(mixture.weak_volume, weak);
            // The scale by volume is read to a ten-thousandth of a percent.
            prop_assert!((parts / pure(mixture.volume, target) - 1.0).abs() < 1e-4);
            for amount in [AlcoholAmount::Strong(mixture.strong_volume), AlcoholAmount::Weak(mixture.weak_volume)] {
                let again = mix_alcohol(strong, weak, target, amount).unwrap();
                prop_assert!((again.volume / volume - 1.0).abs() < 1e-6);
            }
        }

        #[test]
        fn a_strength_comes_back_from_its_density(percent in 0.0..=100.0_f64, t in 10.0..=30.0_f64) {
            let temperature = Temperature::new(t).unwrap();
            let density = ethanol::density(ethanol::fraction_from_volume_percent(percent).unwrap(), temperature).unwrap();
            prop_assert!((alcohol_from_density(density, temperature).unwrap() - percent).abs() < 1e-4);
        }

        #[test]
        fn no_strength_panics(a in -50.0..150.0_f64, b in -50.0..150.0_f64, c in -50.0..150.0_f64, volume in -1.0..1e12_f64) {
            for amount in [AlcoholAmount::Mixture(volume), AlcoholAmount::Strong(volume), AlcoholAmount::Weak(volume)] {
                if let Ok(mixture) = mix_alcohol(a, b, c, amount) {
                    prop_assert!(mixture.volume.is_finite() && mixture.contraction > -1e-3 * mixture.volume);
                }
            }
        }
    }
}
