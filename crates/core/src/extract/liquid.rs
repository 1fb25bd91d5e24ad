//! What is in the bottle: masses of glycerin, water, other solvents and what the plant gave.

use super::{ExtractError, Result, add, scale_mass, take};
use crate::arithmetic::ArithmeticError;
use crate::chemistry::mixture::Masses;
use crate::quantity::{Grams, Percent};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// Another solvent beside glycerin and water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Solvent {
    /// 1,2-propanediol (INCI Propylene Glycol).
    PropyleneGlycol,
    /// 1,3-propanediol (INCI Propanediol).
    Propanediol,
    /// Ethanol (INCI Alcohol).
    Ethanol,
}

/// One part of a liquid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Part {
    /// Glycerin.
    Glycerin,
    /// Water from every source.
    Water,
    /// 1,2-propanediol.
    PropyleneGlycol,
    /// 1,3-propanediol.
    Propanediol,
    /// Ethanol.
    Ethanol,
    /// What the plant gave beside water: mostly sugars.
    PlantSolids,
}

/// Dissolved plant solids: nobody weighs them, so they are a range.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Solids {
    /// Least there may be.
    pub low: Grams,
    /// What is counted as being there.
    pub typical: Grams,
    /// Most there may be.
    pub high: Grams,
}

/// Which end of the range of solids.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Level {
    /// Least.
    Low,
    /// Counted.
    Typical,
    /// Most.
    High,
}

impl Level {
    /// All three.
    pub const ALL: [Self; 3] = [Self::Low, Self::Typical, Self::High];
}

impl Solids {
    /// None at all.
    pub const NONE: Self = Self { low: Grams::ZERO, typical: Grams::ZERO, high: Grams::ZERO };

    /// One end of the range.
    #[must_use]
    pub const fn at(&self, level: Level) -> Grams {
        match level {
            Level::Low => self.low,
            Level::Typical => self.typical,
            Level::High => self.high,
        }
    }

    fn try_map(&self, mut change: impl FnMut(Level, Grams) -> Result<Grams>) -> Result<Self> {
        Ok(Self {
            low: change(Level::Low, self.low)?,
            typical: change(Level::Typical, self.typical)?,
            high: change(Level::High, self.high)?,
        })
    }
}

/// A liquid by what is in it. Its mass counts the typical solids.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Liquid {
    /// Glycerin, without the water that came with it.
    pub glycerin: Grams,
    /// Water from every source.
    pub water: Grams,
    /// 1,2-propanediol.
    pub propylene_glycol: Grams,
    /// 1,3-propanediol.
    pub propanediol: Grams,
    /// Ethanol, without the water that came with it.
    pub ethanol: Grams,
    /// Dissolved plant solids.
    pub solids: Solids,
}

impl Liquid {
    /// Nothing.
    pub const EMPTY: Self = Self {
        glycerin: Grams::ZERO,
        water: Grams::ZERO,
        propylene_glycol: Grams::ZERO,
        propanediol: Grams::ZERO,
        ethanol: Grams::ZERO,
        solids: Solids::NONE,
    };

    /// Glycerin and water.
    #[must_use]
    pub const fn of_glycerin_and_water(glycerin: Grams, water: Grams) -> Self {
        Self { glycerin, water, ..Self::EMPTY }
    }

    /// Every part with its mass, typical solids.
    #[must_use]
    pub const fn parts(&self) -> [(Part, Grams); 6] {
        [
            (Part::Glycerin, self.glycerin),
            (Part::Water, self.water),
            (Part::PropyleneGlycol, self.propylene_glycol),
            (Part::Propanediol, self.propanediol),
            (Part::Ethanol, self.ethanol),
            (Part::PlantSolids, self.solids.typical),
        ]
    }

    /// Mass of all together.
    ///
    /// # Errors
    /// `arithmetic.too-large` past the largest mass.
    pub fn mass(&self) -> Result<Grams> {
        self.parts().into_iter().try_fold(Grams::ZERO, |sum, (_, mass)| add(sum, mass))
    }

    /// Mass of one part.
    #[must_use]
    pub fn mass_of(&self, part: Part) -> Grams {
        self.parts().into_iter().find(|(candidate, _)| *candidate == part).map_or(Grams::ZERO, |(_, mass)| mass)
    }

    /// Glycerin in percent by mass.
    ///
    /// # Errors
    /// `arithmetic.nothing-to-mix` for an empty liquid.
    pub fn glycerin_percent(&self) -> Result<Percent> {
        self.percent_of(Part::Glycerin)
    }

    /// A part in percent by mass.
    ///
    /// # Errors
    /// `arithmetic.nothing-to-mix` for an empty liquid.
    pub fn percent_of(&self, part: Part) -> Result<Percent> {
        Percent::from_share(self.mass_of(part), self.mass()?)
            .ok_or(ExtractError::Arithmetic(ArithmeticError::NothingToMix))
    }

    /// Every part that is there in percent by mass, for the shelf of materials: they sum to 100 exactly, the largest part
    /// taking up what the last digit leaves.
    ///
    /// # Errors
    /// `arithmetic.nothing-to-mix` for an empty liquid.
    ///
    /// ```
    /// use rust_decimal::{Decimal, dec};
    /// use stillroom_core::Grams;
    /// use stillroom_core::extract::Liquid;
    /// let glycerite = Liquid::of_glycerin_and_water(Grams::new(dec!(2))?, Grams::new(dec!(1))?);
    /// let shares = glycerite.composition()?;
    /// assert_eq!(shares.iter().map(|(_, share)| share.value()).sum::<Decimal>(), dec!(100));
    /// assert!(Liquid::EMPTY.composition().is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn composition(&self) -> Result<Vec<(Part, Percent)>> {
        // Six places of a percent are far below what any scale shows.
        const PLACES: u32 = 6;
        let mut shares = Vec::new();
        for (part, mass) in self.parts() {
            if !mass.is_zero() {
                shares.push((part, self.percent_of(part)?.value().round_dp(PLACES)));
            }
        }
        let sum: Decimal = shares.iter().map(|(_, share)| *share).sum();
        if let Some((_, largest)) = shares.iter_mut().max_by_key(|(_, share)| *share) {
            *largest += Decimal::ONE_HUNDRED - sum;
        }
        if shares.is_empty() {
            return Err(ExtractError::Arithmetic(ArithmeticError::NothingToMix));
        }
        shares.into_iter().map(|(part, share)| Ok((part, Percent::new(share)?))).collect()
    }

    /// Both together.
    ///
    /// # Errors
    /// `arithmetic.too-large` past the largest mass.
    pub fn checked_add(&self, other: &Self) -> Result<Self> {
        Ok(Self {
            glycerin: add(self.glycerin, other.glycerin)?,
            water: add(self.water, other.water)?,
            propylene_glycol: add(self.propylene_glycol, other.propylene_glycol)?,
            propanediol: add(self.propanediol, other.propanediol)?,
            ethanol: add(self.ethanol, other.ethanol)?,
            solids: self.solids.try_map(|level, mass| add(mass, other.solids.at(level)))?,
        })
    }

    /// The first so many grams, and the rest: together they are the whole, part by part.
    ///
    /// # Errors
    /// `extract.nothing-left` if there is less than that.
    pub fn split(&self, mass: Grams) -> Result<(Self, Self)> {
        let whole = self.mass()?;
        take("liquid", whole, mass)?;
        if whole.is_zero() {
            return Ok((Self::EMPTY, Self::EMPTY));
        }
        let share = |part: Grams| Ok::<_, ExtractError>(scale_mass(part, mass.value(), whole.value())?.min(part));
        let poured = Self {
            glycerin: share(self.glycerin)?,
            water: share(self.water)?,
            propylene_glycol: share(self.propylene_glycol)?,
            propanediol: share(self.propanediol)?,
            ethanol: share(self.ethanol)?,
            solids: self.solids.try_map(|_, part| share(part))?,
        };
        let rest = Self {
            glycerin: take("liquid", self.glycerin, poured.glycerin)?,
            water: take("liquid", self.water, poured.water)?,
            propylene_glycol: take("liquid", self.propylene_glycol, poured.propylene_glycol)?,
            propanediol: take("liquid", self.propanediol, poured.propanediol)?,
            ethanol: take("liquid", self.ethanol, poured.ethanol)?,
            solids: self.solids.try_map(|level, part| take("liquid", part, poured.solids.at(level)))?,
        };
        Ok((poured, rest))
    }

    /// The masses for physics, in grams, with so many solids.
    #[must_use]
    pub fn masses(&self, level: Level) -> Masses {
        Masses {
            water: self.water.to_physics(),
            glycerol: self.glycerin.to_physics(),
            propylene_glycol: self.propylene_glycol.to_physics(),
            propanediol: self.propanediol.to_physics(),
            ethanol: self.ethanol.to_physics(),
            solids: self.solids.at(level).to_physics(),
        }
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use proptest::prelude::*;

    /// A mass as typed: up to ten kilograms, two places.
    pub fn grams() -> impl Strategy<Value = Grams> {
        (0_i64..1_000_000).prop_map(|number| Grams::new(Decimal::new(number, 2)).unwrap())
    }

    /// Any liquid with something in it.
    pub fn liquids() -> impl Strategy<Value = Liquid> {
        let solids = (grams(), grams(), grams()).prop_map(|(a, b, c)| {
            let mut levels = [a, b, c].map(|mass| Grams::new(mass.value() / Decimal::TEN).unwrap());
            levels.sort();
            Solids { low: levels[0], typical: levels[1], high: levels[2] }
        });
        (grams(), grams(), grams(), grams(), grams(), solids).prop_map(
            |(glycerin, water, propylene_glycol, propanediol, ethanol, solids)| Liquid {
                glycerin,
                water: add(water, Grams::new(Decimal::ONE).unwrap()).unwrap(),
                propylene_glycol,
                propanediol,
                ethanol,
                solids,
            },
        )
    }

    proptest! {
        #[test]
        fn what_is_split_is_whole_again(liquid in liquids(), share in 0_i64..=1000) {
            let mass = Grams::new(liquid.mass().unwrap().value() * Decimal::new(share, 3)).unwrap();
            let (poured, rest) = liquid.split(mass).unwrap();
            prop_assert_eq!(poured.checked_add(&rest).unwrap(), liquid);
            let off = (poured.mass().unwrap().value() - mass.value()).abs();
            prop_assert!(off < Decimal::new(1, 14), "{off}");
        }

        #[test]
        fn a_composition_sums_to_the_whole(liquid in liquids()) {
            let sum: Decimal = liquid.composition().unwrap().iter().map(|(_, share)| share.value()).sum();
            prop_assert_eq!(sum, Decimal::ONE_HUNDRED);
        }
    }

    #[test]
    fn no_more_can_be_poured_than_there_is() {
        let bottle = Liquid::of_glycerin_and_water(Grams::new(Decimal::ONE).unwrap(), Grams::ZERO);
        let error = bottle.split(Grams::new(Decimal::TWO).unwrap()).unwrap_err();
        assert_eq!(error.code(), "extract.nothing-left");
    }
}
