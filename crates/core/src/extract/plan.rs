//! From plant and glycerin to the pressed liquid.

use super::liquid::{Liquid, Solids, Solvent};
use super::{ExtractError, Result, add, check_share, scale_mass, share_of, take};
use crate::arithmetic::ArithmeticError;
use crate::quantity::{Grams, Percent};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// How much of a plant's dry matter goes into the liquid, in percent of the dry matter.
///
/// Nobody knows it for a given lot: it is a range, and everything that depends on it is shown as one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct SolubleShare {
    /// Least.
    pub low: Percent,
    /// What is counted.
    pub typical: Percent,
    /// Most.
    pub high: Percent,
}

impl SolubleShare {
    /// A fifth to seven tenths of the dry matter, two fifths counted (common practice; juicy fruit gives most, leaves and
    /// flowers less).
    ///
    /// # Errors
    /// None in practice: the three are quantities.
    pub fn usual() -> Result<Self> {
        let percent = |value: i64| Percent::new(Decimal::from(value));
        Ok(Self { low: percent(20)?, typical: percent(40)?, high: percent(70)? })
    }

    /// Nothing dissolves.
    pub const NONE: Self = Self { low: Percent::ZERO, typical: Percent::ZERO, high: Percent::ZERO };
}

/// The plant that goes in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Plant {
    /// Mass as it goes in, fresh or dried.
    pub mass: Grams,
    /// Water in percent of that mass.
    pub water: Percent,
    /// What dissolves of the rest.
    pub soluble: SolubleShare,
}

/// Water of a plant in percent, from a sample weighed fresh and again when it no longer loses mass.
///
/// # Errors
/// `extract.gained-mass` if it weighs more dried, `arithmetic.nothing-to-mix` for no sample.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::{Grams, Percent, extract::plan::measure_plant_water};
/// let water = measure_plant_water(Grams::new(dec!(20))?, Grams::new(dec!(0.9))?)?;
/// assert_eq!(water, Percent::new(dec!(95.5))?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn measure_plant_water(fresh: Grams, dried: Grams) -> Result<Percent> {
    let lost = fresh.checked_sub(dried).ok_or(ExtractError::GainedMass { before: fresh, now: dried })?;
    Percent::from_share(lost, fresh).ok_or(ExtractError::Arithmetic(ArithmeticError::NothingToMix))
}

/// Another solvent that goes in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct AddedSolvent {
    /// Which.
    pub solvent: Solvent,
    /// Mass as it goes in.
    pub mass: Grams,
    /// How much of that mass is the solvent; the rest is water.
    pub purity: Percent,
}

/// Liquid that pressing leaves in the marc.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MarcRetention {
    /// So many grams of liquid per gram of dry marc. By hand about 1.5, with a press about 0.7 (common practice).
    GramsPerGram(Decimal),
    /// So much of the liquid, in percent.
    ShareOfLiquid(Percent),
}

/// What is put into the jar and what happens to it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Plan {
    /// The plant.
    pub plant: Plant,
    /// Glycerin as it is weighed.
    pub glycerin: Grams,
    /// How much of that is glycerin; the rest is water.
    pub glycerin_purity: Percent,
    /// Water that is added.
    pub added_water: Grams,
    /// Another solvent.
    pub solvent: Option<AddedSolvent>,
    /// What the marc holds back.
    pub marc: MarcRetention,
    /// Water that evaporates before pressing.
    pub evaporation: Grams,
}

/// What comes out of the press.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Pressed {
    /// The extract.
    pub liquid: Liquid,
    /// The same liquid, left in the marc.
    pub held_back: Liquid,
    /// What did not dissolve, dry; with the typical solids.
    pub dry_marc: Grams,
}

impl Plan {
    /// The liquid in the jar before pressing, once everything has evened out.
    ///
    /// # Errors
    /// `extract.not-a-share` for a purity, a water content or a soluble share that is none; `extract.nothing-left` if
    /// more evaporates than there is water.
    pub fn steep(&self) -> Result<Liquid> {
        let purity = check_share("purity of the glycerin", self.glycerin_purity, Decimal::ZERO)?;
        let plant_water = check_share("water of the plant", self.plant.water, Decimal::ZERO)?;
        let glycerin = share_of(self.glycerin, purity)?;
        let mut liquid = Liquid { glycerin, ..Liquid::EMPTY };
        let from_plant = share_of(self.plant.mass, plant_water)?;
        let dry = take("plant", self.plant.mass, from_plant)?;
        let mut water = add(add(from_plant, self.added_water)?, take("glycerin", self.glycerin, glycerin)?)?;
        if let Some(added) = self.solvent {
            let purity = check_share("purity of the solvent", added.purity, Decimal::ZERO)?;
            let pure = share_of(added.mass, purity)?;
            water = add(water, take("solvent", added.mass, pure)?)?;
            match added.solvent {
                Solvent::PropyleneGlycol => liquid.propylene_glycol = pure,
                Solvent::Propanediol => liquid.propanediol = pure,
                Solvent::Ethanol => liquid.ethanol = pure,
            }
        }
        liquid.water = take("water", water, self.evaporation)?;
        liquid.solids = self.plant.soluble.of(dry)?;
        Ok(liquid)
    }

    /// Presses it off.
    ///
    /// *Source:* mass balance. The liquid in the marc is taken to be the same as what runs off (common practice).
    ///
    /// # Errors
    /// As [`Self::steep`]; `extract.nothing-left` if the marc holds all of it, `arithmetic.negative` for a negative
    /// retention.
    ///
    /// ```
    /// use rust_decimal::dec;
    /// use stillroom_core::extract::{MarcRetention, Plan, Plant, SolubleShare};
    /// use stillroom_core::{Grams, Percent};
    /// // 200 g of cucumber bring 190 g of water into 600 g of glycerin.
    /// let plan = Plan {
    ///     plant: Plant { mass: Grams::new(dec!(200))?, water: Percent::new(dec!(95))?, soluble: SolubleShare::usual()? },
    ///     glycerin: Grams::new(dec!(600))?,
    ///     glycerin_purity: Percent::new(dec!(99.5))?,
    ///     added_water: Grams::ZERO,
    ///     solvent: None,
    ///     marc: MarcRetention::GramsPerGram(dec!(1.5)),
    ///     evaporation: Grams::ZERO,
    /// };
    /// let pressed = plan.press()?;
    /// assert_eq!(pressed.liquid.glycerin_percent()?.value().round_dp(1), dec!(75.2));
    /// let all_evaporates = Plan { evaporation: Grams::new(dec!(500))?, ..plan };
    /// assert_eq!(all_evaporates.press().unwrap_err().code(), "extract.nothing-left");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn press(&self) -> Result<Pressed> {
        let steeped = self.steep()?;
        let plant_water = share_of(self.plant.mass, self.plant.water.value())?;
        let dry = take("plant", self.plant.mass, plant_water)?;
        let dry_marc = take("plant", dry, steeped.solids.typical)?;
        let held = match self.marc {
            MarcRetention::GramsPerGram(ratio) => {
                if ratio.is_sign_negative() && !ratio.is_zero() {
                    let quantity = "liquid per dry marc";
                    return Err(ArithmeticError::Negative { quantity, value: ratio }.into());
                }
                scale_mass(dry_marc, ratio, Decimal::ONE)?
            }
            MarcRetention::ShareOfLiquid(share) => {
                share_of(steeped.mass()?, check_share("liquid left in the marc", share, Decimal::ZERO)?)?
            }
        };
        let (held_back, liquid) = steeped.split(held)?;
        Ok(Pressed { liquid, held_back, dry_marc })
    }
}

impl SolubleShare {
    /// What dissolves of so much dry matter.
    fn of(&self, dry: Grams) -> Result<Solids> {
        let [low, typical, high] = [self.low, self.typical, self.high];
        check_share("soluble share, least", low, Decimal::ZERO)?;
        check_share("soluble share, typical", typical, low.value())?;
        check_share("soluble share, most", high, typical.value())?;
        Ok(Solids {
            low: share_of(dry, low.value())?,
            typical: share_of(dry, typical.value())?,
            high: share_of(dry, high.value())?,
        })
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::super::liquid::tests::grams;
    use super::*;
    use proptest::prelude::*;

    /// A percent between two whole ones, one place.
    pub fn percents(low: i64, high: i64) -> impl Strategy<Value = Percent> {
        (low * 10..=high * 10).prop_map(|number| Percent::new(Decimal::new(number, 1)).unwrap())
    }

    prop_compose! {
        /// A plan with more liquid than the marc can hold.
        pub fn plans()(
            plant in 1_i64..50_000, water in percents(5, 98), glycerin in grams(), purity in percents(85, 100),
            added in grams(), solvent_mass in grams(), which in 0..4_usize, ratio in 0_i64..20, evaporation in 0_i64..100,
        ) -> Plan {
            let mass = Grams::new(Decimal::new(plant, 2)).unwrap();
            let solvent: Option<Solvent> = [None, Some(Solvent::PropyleneGlycol), Some(Solvent::Propanediol), Some(Solvent::Ethanol)][which];
            let generous = Grams::new(added.value() + mass.value() * Decimal::TWO).unwrap();
            Plan {
                plant: Plant { mass, water, soluble: SolubleShare::usual().unwrap() },
                glycerin,
                glycerin_purity: purity,
                added_water: generous,
                solvent: solvent.map(|solvent| AddedSolvent { solvent, mass: solvent_mass, purity }),
                marc: MarcRetention::GramsPerGram(Decimal::new(ratio, 1)),
                evaporation: Grams::new(generous.value() * Decimal::new(evaporation, 3)).unwrap(),
            }
        }
    }

    proptest! {
        #[test]
        fn what_goes_in_comes_out(plan in plans()) {
            let pressed = plan.press().unwrap();
            let solvent = plan.solvent.map_or(Decimal::ZERO, |added| added.mass.value());
            let inward = plan.plant.mass.value() + plan.glycerin.value() + plan.added_water.value() + solvent;
            let outward = pressed.liquid.mass().unwrap().value()
                + pressed.held_back.mass().unwrap().value()
                + pressed.dry_marc.value()
                + plan.evaporation.value();
            prop_assert_eq!(inward, outward);
            let glycerin = pressed.liquid.glycerin.value() + pressed.held_back.glycerin.value();
            prop_assert_eq!(glycerin, plan.glycerin.value() * plan.glycerin_purity.value() / Decimal::ONE_HUNDRED);
        }

        #[test]
        fn pressing_does_not_change_the_strength(plan in plans()) {
            let before = plan.steep().unwrap().glycerin_percent().unwrap().value();
            let after = plan.press().unwrap().liquid.glycerin_percent().unwrap().value();
            prop_assert!((before - after).abs() < Decimal::new(1, 12));
        }
    }
}
