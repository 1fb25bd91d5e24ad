//! Liquids of several things at once: room, density and refractive index from what each brings.
//!
//! Glycerol and water are taken together from their own equations. Everything else adds its apparent volume and its
//! specific refraction (Lorentz and Lorenz, which is nearly the same in every mixture). With nothing but glycerol and
//! water the answers are those of [`super::glycerol`] exactly.
//!
//! *Accuracy:* no measurements of such liquids with three or more parts were found to test against. With water alone,
//! sucrose is met within 0.0005 in refractive index; with glycerol as well, expect 0.3 % in density.

use super::glycerol;
use super::propanediol::Diol;
use super::{MassFraction, PhysicsError, Range, Temperature, ethanol, sucrose};

/// Up to which share of solids in solids and water and glycerol the sugar data reach.
pub const SOLIDS: Range = Range::fraction("mixture", "dissolved solids", 0.0, 0.65);

/// What is in a liquid, in grams.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Masses {
    /// Water.
    pub water: f64,
    /// Glycerol.
    pub glycerol: f64,
    /// 1,2-propanediol.
    pub propylene_glycol: f64,
    /// 1,3-propanediol.
    pub propanediol: f64,
    /// Ethanol.
    pub ethanol: f64,
    /// Dissolved solids, taken for sucrose: most of what water draws from a plant is sugar.
    pub solids: f64,
}

/// Specific refraction in mL/g of a refractive index and a density in g/mL.
pub(super) fn specific_refraction(index: f64, density: f64) -> f64 {
    let square = index * index;
    (square - 1.0) / (square + 2.0) / density
}

/// Refractive index of a specific refraction in mL/g and a density in g/mL.
pub(super) fn index_from_refraction(refraction: f64, density: f64) -> f64 {
    let product = refraction * density;
    ((1.0 + 2.0 * product) / (1.0 - product)).sqrt()
}

impl Masses {
    /// Mass in grams of all together.
    #[must_use]
    pub fn total(&self) -> f64 {
        self.water + self.glycerol + self.propylene_glycol + self.propanediol + self.ethanol + self.solids
    }

    fn diols(&self) -> [(Diol, f64); 2] {
        [(Diol::PropyleneGlycol, self.propylene_glycol), (Diol::Propanediol, self.propanediol)]
    }

    fn strength_of_solids(&self) -> Result<MassFraction, PhysicsError> {
        if self.solids == 0.0 {
            return Ok(MassFraction::NONE);
        }
        MassFraction::new(SOLIDS.check(self.solids / (self.solids + self.water + self.glycerol))?)
    }

    /// Room in mL that the liquid takes.
    ///
    /// *Valid for* 15 to 30 °C, dissolved solids up to 65 % of themselves with water and glycerol.
    ///
    /// # Errors
    /// `physics.out-of-range` outside these ranges, for a negative mass, or for nothing at all.
    pub fn volume(&self, temperature: Temperature) -> Result<f64, PhysicsError> {
        let mut volume = 0.0;
        if self.water + self.glycerol > 0.0 {
            let strength = MassFraction::of(self.glycerol, self.water)?;
            volume += (self.water + self.glycerol) / glycerol::density(strength, temperature)?;
        }
        for (diol, mass) in self.diols().into_iter().filter(|(_, mass)| *mass != 0.0) {
            volume += mass * diol.specific_volume(MassFraction::of(mass, self.water)?);
        }
        if self.ethanol > 0.0 {
            let p = MassFraction::of(self.ethanol, self.water)?;
            let mixed = 1.0 / ethanol::density(p, temperature)?;
            let water = 1.0 / ethanol::density(MassFraction::NONE, temperature)?;
            volume += self.ethanol * (mixed - (1.0 - p.value()) * water) / p.value();
        }
        if self.solids > 0.0 {
            volume += self.solids * sucrose::specific_volume(self.strength_of_solids()?);
        }
        let positive = Range {
            equation: "mixture",
            quantity: "volume",
            unit: "mL",
            minimum: f64::MIN_POSITIVE,
            maximum: f64::MAX,
        };
        positive.check(volume)
    }

    /// Density in g/mL.
    ///
    /// # Errors
    /// As [`Self::volume`].
    ///
    /// ```
    /// use stillroom_core::chemistry::{Temperature, mixture::Masses};
    /// let glycerite = Masses { water: 40.0, glycerol: 55.0, solids: 5.0, ..Masses::default() };
    /// let density = glycerite.density(Temperature::TWENTY)?;
    /// assert!((1.15..1.20).contains(&density));
    /// assert!(glycerite.density(Temperature::new(5.0)?).is_err());
    /// # Ok::<(), stillroom_core::chemistry::PhysicsError>(())
    /// ```
    pub fn density(&self, temperature: Temperature) -> Result<f64, PhysicsError> {
        Ok(self.total() / self.volume(temperature)?)
    }

    /// Refractive index for sodium light.
    ///
    /// # Errors
    /// As [`Self::volume`].
    pub fn refractive_index(&self, temperature: Temperature) -> Result<f64, PhysicsError> {
        let density = self.density(temperature)?;
        let mut refraction = 0.0;
        if self.water + self.glycerol > 0.0 {
            let strength = MassFraction::of(self.glycerol, self.water)?;
            let index = glycerol::refractive_index_at_20(strength);
            refraction += (self.water + self.glycerol)
                * specific_refraction(index, glycerol::density(strength, Temperature::TWENTY)?);
        }
        for (diol, mass) in self.diols() {
            refraction += mass * diol.specific_refraction();
        }
        if self.ethanol > 0.0 {
            // From the refractive indices and densities of the CRC Handbook, 20 °C; the strength matters little.
            refraction += self.ethanol * (0.2770 + 0.0036 * MassFraction::of(self.ethanol, self.water)?.value());
        }
        if self.solids > 0.0 {
            refraction += self.solids * sucrose::specific_refraction(self.strength_of_solids()?);
        }
        Ok(index_from_refraction(refraction / self.total(), density))
    }

    /// Brix that a refractometer shows. One that corrects for temperature adds the correction of sucrose.
    ///
    /// # Errors
    /// As [`Self::volume`]; `physics.out-of-range` past the ends of the sugar scale.
    pub fn brix(&self, temperature: Temperature, corrects_temperature: bool) -> Result<f64, PhysicsError> {
        let shown = sucrose::brix_from_index(self.refractive_index(temperature)?)?;
        if !corrects_temperature {
            return Ok(shown);
        }
        Ok(shown + sucrose::temperature_correction(shown, temperature)?)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn celsius() -> impl Strategy<Value = Temperature> {
        (15.0..=30.0_f64).prop_map(|t| Temperature::new(t).unwrap())
    }

    proptest! {
        #[test]
        fn glycerol_and_water_alone_are_as_their_own_equations_say(w in 0.0..=1.0_f64, t in celsius()) {
            let strength = MassFraction::new(w).unwrap();
            let liquid = Masses { water: 1.0 - w, glycerol: w, ..Masses::default() };
            prop_assert!((liquid.density(t).unwrap() - glycerol::density(strength, t).unwrap()).abs() < 1e-12);
            let index = glycerol::refractive_index(strength, t).unwrap();
            prop_assert!((liquid.refractive_index(t).unwrap() - index).abs() < 1e-12);
        }

        #[test]
        fn no_masses_panic(
            water in -1.0..1e9_f64, glycerol in -1.0..1e9_f64, diol in -1.0..1e9_f64, ethanol in -1.0..1e9_f64,
            solids in -1.0..1e9_f64, t in -50.0..120.0_f64,
        ) {
            let liquid = Masses { water, glycerol, propylene_glycol: diol, propanediol: diol, ethanol, solids };
            let temperature = Temperature::new(t).unwrap();
            let _ = (liquid.density(temperature), liquid.brix(temperature, true), liquid.brix(temperature, false));
        }
    }

    #[test]
    fn ethanol_and_water_alone_are_as_the_alcoholometric_tables_say() {
        let liquid = Masses { water: 50.0, ethanol: 50.0, ..Masses::default() };
        let expected = ethanol::density(MassFraction::new(0.5).unwrap(), Temperature::TWENTY).unwrap();
        assert!((liquid.density(Temperature::TWENTY).unwrap() / expected - 1.0).abs() < 2e-4);
    }

    #[test]
    fn nothing_has_no_density() {
        assert!(Masses::default().density(Temperature::TWENTY).is_err());
    }
}
