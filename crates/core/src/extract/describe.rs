//! What to expect of a liquid: room, readings, flow, frost, water activity.

use super::liquid::{Level, Liquid, Part};
use super::{ExtractError, Result};
use crate::chemistry::water_activity::{self, HEXOSE};
use crate::chemistry::{Band, MassFraction, PhysicsError, Temperature, glycerol, sucrose, water};
use crate::quantity::{Grams, Percent};

/// How well a computed density is known, as a share: that of the equation for glycerin and water.
pub const DENSITY_ACCURACY: f64 = 0.001;
/// How well a computed refractive index is known.
pub const INDEX_ACCURACY: f64 = 0.0005;

type Answer<T> = core::result::Result<T, PhysicsError>;

/// What to expect of a liquid. What an equation does not reach is an error in its own field, and nothing else is lost.
///
/// Bands reach from the least to the most plant solids, and in density and readings also over the accuracy of the
/// equations; their middle counts the typical solids.
#[derive(Debug, Clone, PartialEq)]
pub struct Description {
    /// Mass.
    pub mass: Grams,
    /// Glycerin in percent by mass.
    pub glycerin_percent: Percent,
    /// Every part in percent by mass, summing to 100.
    pub composition: Vec<(Part, Percent)>,
    /// Density in g/mL at the temperature asked for.
    pub density: Answer<Band>,
    /// Volume in mL at that temperature, of the mass with typical solids.
    pub volume: Answer<Band>,
    /// What a hydrometer calibrated at 20 °C shows.
    pub specific_gravity: Answer<Band>,
    /// Refractive index for sodium light at that temperature.
    pub refractive_index: Answer<Band>,
    /// What a refractometer in Brix shows that does not correct for temperature.
    pub brix: Answer<Band>,
    /// What one shows that does.
    pub brix_corrected: Answer<Band>,
    /// Viscosity in mPa·s of the glycerin and water in it; plant solids make it thicker.
    pub viscosity: Answer<f64>,
    /// Temperature in °C at which the glycerin and water in it begin to freeze; plant solids lower it a little.
    pub freezing_point: Answer<f64>,
    /// Water activity at 25 °C.
    pub water_activity: Answer<Band>,
}

/// Describes a liquid at a temperature.
///
/// *Source:* [`crate::chemistry`]; each field says what it rests on.
///
/// # Errors
/// `arithmetic.nothing-to-mix` for an empty liquid. What an equation does not reach is an error of its field.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::Grams;
/// use stillroom_core::chemistry::Temperature;
/// use stillroom_core::extract::{Liquid, describe::describe};
/// let bottle = Liquid::of_glycerin_and_water(Grams::new(dec!(65))?, Grams::new(dec!(35))?);
/// let expected = describe(&bottle, Temperature::TWENTY)?;
/// assert!((expected.brix?.estimate - 50.2).abs() < 0.1);
/// assert!((expected.specific_gravity?.estimate - 1.170).abs() < 0.001);
/// assert!(describe(&bottle, Temperature::new(60.0)?)?.density.is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn describe(liquid: &Liquid, temperature: Temperature) -> Result<Description> {
    let density = over_solids(liquid, |level| liquid.masses(level).density(temperature)).map(|band| Band {
        low: band.low * (1.0 - DENSITY_ACCURACY),
        high: band.high * (1.0 + DENSITY_ACCURACY),
        ..band
    });
    let index = over_solids(liquid, |level| liquid.masses(level).refractive_index(temperature)).map(|band| Band {
        low: band.low - INDEX_ACCURACY,
        high: band.high + INDEX_ACCURACY,
        ..band
    });
    let mass = liquid.mass()?;
    let grams = mass.to_physics();
    Ok(Description {
        mass,
        glycerin_percent: liquid.glycerin_percent()?,
        composition: liquid.composition()?,
        volume: density.map(|band| Band {
            low: grams / band.high,
            estimate: grams / band.estimate,
            high: grams / band.low,
        }),
        specific_gravity: density.and_then(|band| {
            let read = |density| water::read_hydrometer(density, temperature, Temperature::TWENTY);
            Ok(Band { low: read(band.low)?, estimate: read(band.estimate)?, high: read(band.high)? })
        }),
        density,
        refractive_index: index,
        brix: index.and_then(|band| show_brix(band, temperature, false)),
        brix_corrected: index.and_then(|band| show_brix(band, temperature, true)),
        viscosity: binary_strength(liquid, "viscosity").and_then(|w| glycerol::viscosity(w, temperature)),
        freezing_point: binary_strength(liquid, "freezing point").and_then(glycerol::freezing_point),
        water_activity: estimate_water_activity(liquid),
    })
}

/// A refractive index as a refractometer in Brix shows it; its scale begins at water.
fn show_brix(index: Band, temperature: Temperature, corrects_temperature: bool) -> Answer<Band> {
    let show = |index: f64| {
        let brix = sucrose::brix_from_index(index.max(sucrose::index_from_brix(0.0)?))?;
        Ok(brix + if corrects_temperature { sucrose::temperature_correction(brix, temperature)? } else { 0.0 })
    };
    Ok(Band { low: show(index.low)?, estimate: show(index.estimate)?, high: show(index.high)? })
}

/// The band of an answer over the range of plant solids.
fn over_solids(liquid: &Liquid, answer: impl Fn(Level) -> Answer<f64>) -> Answer<Band> {
    let estimate = answer(Level::Typical)?;
    if liquid.solids.low == liquid.solids.high {
        return Ok(Band::exact(estimate));
    }
    Ok(Band::around(estimate, &[answer(Level::Low)?, answer(Level::High)?]))
}

/// Strength of the glycerin in its own water, where there is no other solvent.
fn binary_strength(liquid: &Liquid, quantity: &'static str) -> Answer<MassFraction> {
    for (part, with) in
        [(Part::PropyleneGlycol, "propylene glycol"), (Part::Propanediol, "propanediol"), (Part::Ethanol, "ethanol")]
    {
        if !liquid.mass_of(part).is_zero() {
            return Err(PhysicsError::NoData { quantity, with });
        }
    }
    let masses = liquid.masses(Level::Typical);
    MassFraction::of(masses.glycerol, masses.water)
}

/// Water activity at 25 °C.
///
/// Glycerin, each other solvent and the plant solids are taken as if alone in all the water and multiplied (Ross). The
/// upper end, which judgements use, counts no effect of plant solids at all: what they are is unknown, and gums bind
/// little water. The estimate takes them for simple sugars.
///
/// *Source:* [`water_activity::glycerol_band`], [`water_activity::propanediol_band`],
/// [`water_activity::ethanol_band`], [`water_activity::norrish`].
///
/// # Errors
/// `physics.out-of-range` for a liquid without glycerin and without water.
pub fn estimate_water_activity(liquid: &Liquid) -> Answer<Band> {
    let masses = liquid.masses(Level::Typical);
    let mut bands = vec![water_activity::glycerol_band(MassFraction::of(masses.glycerol, masses.water)?)];
    for diol in [masses.propylene_glycol, masses.propanediol] {
        if diol > 0.0 {
            bands.push(water_activity::propanediol_band(diol, masses.water)?);
        }
    }
    if masses.ethanol > 0.0 {
        bands.push(water_activity::ethanol_band(masses.ethanol, masses.water)?);
    }
    let [typical, high] = [Level::Typical, Level::High].map(|level| liquid.solids.at(level).to_physics());
    if high > 0.0 {
        // Where the sugars outgrow what their constant was fitted over, nothing is claimed for them.
        let of_sugars = |mass| water_activity::norrish_one(&HEXOSE, mass, masses.water);
        let estimate = of_sugars(typical).unwrap_or(1.0);
        bands.push(Band { low: of_sugars(high).unwrap_or(0.0), estimate, high: 1.0 });
    }
    Ok(water_activity::combine(&bands))
}

/// Ethanol in percent by volume at 20 °C.
///
/// # Errors
/// `physics.out-of-range` where density has none, `arithmetic.nothing-to-mix` for an empty liquid.
pub fn alcohol_by_volume(liquid: &Liquid) -> Result<f64> {
    if liquid.ethanol.is_zero() {
        liquid.glycerin_percent()?;
        return Ok(0.0);
    }
    let masses = liquid.masses(Level::Typical);
    let volume = masses.volume(Temperature::TWENTY).map_err(ExtractError::from)?;
    Ok(100.0 * masses.ethanol / crate::chemistry::ethanol::PURE_DENSITY_AT_20 / volume)
}

#[cfg(test)]
mod tests {
    use super::super::liquid::Solids;
    use super::super::liquid::tests::liquids;
    use super::*;
    use proptest::prelude::*;
    use rust_decimal::dec;

    proptest! {
        #[test]
        fn every_band_holds_its_estimate(liquid in liquids(), t in 15.0..=30.0_f64) {
            let expected = describe(&liquid, Temperature::new(t).unwrap()).unwrap();
            for band in [
                expected.density, expected.volume, expected.specific_gravity, expected.refractive_index, expected.brix,
                expected.water_activity,
            ].into_iter().flatten() {
                prop_assert!(band.low <= band.estimate && band.estimate <= band.high, "{band:?}");
            }
            let activity = expected.water_activity.unwrap();
            prop_assert!(activity.low >= 0.0 && activity.high <= 1.0);
        }
    }

    fn cucumber_glycerite() -> Liquid {
        let grams = |value| Grams::new(value).unwrap();
        Liquid {
            solids: Solids { low: grams(dec!(1)), typical: grams(dec!(2)), high: grams(dec!(4)) },
            ..Liquid::of_glycerin_and_water(grams(dec!(60)), grams(dec!(38)))
        }
    }

    #[test]
    fn plant_solids_raise_readings_and_never_lower_the_upper_end_of_water_activity() {
        let with = cucumber_glycerite();
        let without = Liquid { solids: Solids::NONE, ..with };
        let [with, without] = [with, without].map(|liquid| describe(&liquid, Temperature::TWENTY).unwrap());
        assert!(with.brix.unwrap().estimate > without.brix.unwrap().estimate + 0.3);
        assert!(with.water_activity.unwrap().high >= without.water_activity.unwrap().high);
        assert!(with.water_activity.unwrap().estimate < without.water_activity.unwrap().estimate);
    }

    #[test]
    fn what_no_source_covers_is_said_and_the_rest_is_still_told() {
        let with_alcohol = Liquid { ethanol: Grams::new(dec!(20)).unwrap(), ..cucumber_glycerite() };
        let expected = describe(&with_alcohol, Temperature::TWENTY).unwrap();
        assert_eq!(expected.viscosity.unwrap_err().code(), "physics.no-data");
        assert!(expected.density.is_ok());
        assert!((15.0..25.0).contains(&alcohol_by_volume(&with_alcohol).unwrap()));
        assert_eq!(describe(&Liquid::EMPTY, Temperature::TWENTY).unwrap_err().code(), "arithmetic.nothing-to-mix");
    }
}
