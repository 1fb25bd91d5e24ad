//! Water, and densities measured against it.

use super::{PhysicsError, Range, Temperature};

/// Molar mass of water in g/mol (IUPAC).
pub const MOLAR_MASS: f64 = 18.015_28;

/// Density of air that weighings in air are corrected with, in g/mL, as handbooks do.
const AIR: f64 = 0.0012;

/// How much the glass of a hydrometer swells per kelvin, by volume (soda-lime glass; common practice).
const GLASS_EXPANSION: f64 = 25e-6;

/// Where [`density`] holds.
pub const DENSITY_TEMPERATURE: Range = Range::temperature("water.density", 0.0, 40.0);

/// Density of air-free water in g/mL.
///
/// *Valid for* 0 to 40 °C, within 0.000 001 g/mL.
///
/// *Source:* Tanaka M et al., Metrologia 38:301 (2001), recommended by the CIPM; constants from memory, held to the OIML
/// R 22 values of water by a test.
///
/// # Errors
/// `physics.out-of-range` outside 0 to 40 °C.
///
/// ```
/// use stillroom_core::chemistry::{Temperature, water};
/// assert!((water::density(Temperature::TWENTY)? - 0.998_207).abs() < 1e-6);
/// assert!(water::density(Temperature::new(60.0)?).is_err());
/// # Ok::<(), stillroom_core::chemistry::PhysicsError>(())
/// ```
pub fn density(temperature: Temperature) -> Result<f64, PhysicsError> {
    let t = DENSITY_TEMPERATURE.check(temperature.celsius())?;
    let from_maximum = t - 3.983_035;
    Ok(0.999_974_95 * (1.0 - from_maximum.powi(2) * (t + 301.797) / (522_528.9 * (t + 69.348_81))))
}

/// What a glass hydrometer shows in a liquid of `density` g/mL at `temperature`, if its scale is specific gravity
/// against water at the temperature `calibrated` for.
///
/// Only the swelling of the glass is corrected; a liquid at another temperature also has another density.
///
/// # Errors
/// `physics.out-of-range` if `calibrated` lies outside [`DENSITY_TEMPERATURE`].
pub fn read_hydrometer(density: f64, temperature: Temperature, calibrated: Temperature) -> Result<f64, PhysicsError> {
    let glass = 1.0 + GLASS_EXPANSION * (temperature.celsius() - calibrated.celsius());
    Ok(density * glass / self::density(calibrated)?)
}

/// True density in g/mL of an apparent specific gravity: liquid and water weighed in air, both at `temperature`.
///
/// Handbook columns headed "specific gravity t/t" are apparent; taking them for true is wrong by up to 0.0003.
///
/// # Errors
/// `physics.out-of-range` outside [`DENSITY_TEMPERATURE`].
pub fn density_from_apparent_gravity(specific_gravity: f64, temperature: Temperature) -> Result<f64, PhysicsError> {
    Ok(specific_gravity * (density(temperature)? - AIR) + AIR)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn water_has_the_density_of_the_alcoholometric_tables() {
        // OIML R 22 (1975) general formula at no alcohol.
        for (temperature, expected) in [(0.0, 0.999_836_93), (10.0, 0.999_695), (15.0, 0.999_096), (20.0, 0.998_201)] {
            let computed = density(Temperature::new(temperature).unwrap()).unwrap();
            assert!((computed - expected).abs() < 1e-5, "{computed} at {temperature}");
        }
    }

    #[test]
    fn a_hydrometer_shows_one_in_water_at_its_own_temperature() {
        let water = density(Temperature::TWENTY).unwrap();
        assert!((read_hydrometer(water, Temperature::TWENTY, Temperature::TWENTY).unwrap() - 1.0).abs() < 1e-12);
    }
}
