//! Glycerol (INCI Glycerin) and water.

use super::interpolation::{Table, interpolate_linear, interpolate_smooth, solve_rising};
use super::{MassFraction, PhysicsError, Range, Temperature, mixture};
use core::f64::consts::PI;

/// Molar mass of glycerol in g/mol.
pub const MOLAR_MASS: f64 = 92.093_82;

/// Where [`density`] and [`refractive_index`] hold.
pub const DENSITY_TEMPERATURE: Range = Range::temperature("glycerol.density", 15.0, 30.0);
/// Where [`viscosity`] holds.
pub const VISCOSITY_TEMPERATURE: Range = Range::temperature("glycerol.viscosity", 0.0, 100.0);
/// Where [`specific_heat`] holds.
pub const SPECIFIC_HEAT_TEMPERATURE: Range = Range::temperature("glycerol.specific-heat", 15.0, 32.0);
/// Where [`freezing_point`] holds: at 98.2 % the measurements end.
pub const FREEZING_FRACTION: Range = Range::fraction("glycerol.freezing-point", "glycerol", 0.0, 0.982);
/// The strength that freezes last.
pub const EUTECTIC: f64 = 0.667;

/// Density in g/mL.
///
/// *Valid for* every strength, 15 to 30 °C, within 0.1 % of the published tables.
///
/// *Source:* Volk A and Kähler CJ, Exp. Fluids 59:75 (2018).
///
/// # Errors
/// `physics.out-of-range` outside 15 to 30 °C.
///
/// ```
/// use stillroom_core::chemistry::{Temperature, MassFraction, glycerol};
/// let half = glycerol::density(MassFraction::new(0.5)?, Temperature::TWENTY)?;
/// assert!((half - 1.1263).abs() < 0.0011);
/// let error = glycerol::density(MassFraction::new(0.5)?, Temperature::new(70.0)?).unwrap_err();
/// assert_eq!(error.code(), "physics.out-of-range");
/// # Ok::<(), stillroom_core::chemistry::PhysicsError>(())
/// ```
pub fn density(glycerol: MassFraction, temperature: Temperature) -> Result<f64, PhysicsError> {
    let (w, t) = (glycerol.value(), DENSITY_TEMPERATURE.check(temperature.celsius())?);
    let pure = 1273.3 - 0.6121 * t;
    let water = 1000.0 * (1.0 - ((t - 3.98).abs() / 615.0).powf(1.71));
    let unmixed = 1.0 / (w / pure + (1.0 - w) / water);
    let amplitude = 1.78e-6 * t * t - 1.82e-4 * t + 1.41e-2;
    // Rounding can make the sine a hair negative at full strength, and a power of that is no number.
    let contraction = 1.0 + amplitude * (PI * w.powf(1.31)).sin().max(0.0).powf(0.81);
    Ok(contraction * unmixed / 1000.0)
}

/// Strength of a density in g/mL: the way back from [`density`].
///
/// # Errors
/// `physics.out-of-range` outside 15 to 30 °C, or if no strength has this density at this temperature; the error then
/// names the least and the greatest density there.
pub fn fraction_from_density(density: f64, temperature: Temperature) -> Result<MassFraction, PhysicsError> {
    let at = |w: f64| self::density(MassFraction::new(w)?, temperature);
    let bounds = (at(0.0)?, at(1.0)?);
    invert("glycerol.density", "density", "g/mL", bounds, density, |w| at(w).ok())
}

/// Dynamic viscosity in mPa·s.
///
/// *Valid for* every strength, 0 to 100 °C, within 5 % of the published tables.
///
/// *Source:* Cheng N-S, Ind. Eng. Chem. Res. 47:3285 (2008).
///
/// # Errors
/// `physics.out-of-range` outside 0 to 100 °C.
pub fn viscosity(glycerol: MassFraction, temperature: Temperature) -> Result<f64, PhysicsError> {
    let (w, t) = (glycerol.value(), VISCOSITY_TEMPERATURE.check(temperature.celsius())?);
    let water = 1.790 * ((-1230.0 - t) * t / (36100.0 + 360.0 * t)).exp();
    let pure = 12100.0 * ((-1233.0 + t) * t / (9900.0 + 70.0 * t)).exp();
    let a = 0.705 - 0.0017 * t;
    let b = (4.9 + 0.036 * t) * a.powf(2.5);
    let share_of_water = 1.0 - w + a * b * w * (1.0 - w) / (a * w + b * (1.0 - w));
    Ok(water.powf(share_of_water) * pure.powf(1.0 - share_of_water))
}

/// Refractive index at 20 °C, sodium light: Hoyt LF, Oil & Soap 10:43 (1933) and Ind. Eng. Chem. 26:329 (1934). The rows
/// at 30, 35 and 70 % are from memory.
const INDEX_AT_20: Table = &[
    (0.00, 1.333_03),
    (0.05, 1.338_80),
    (0.10, 1.344_81),
    (0.15, 1.351_06),
    (0.20, 1.357_49),
    (0.25, 1.364_04),
    (0.30, 1.370_70),
    (0.35, 1.377_40),
    (0.40, 1.384_13),
    (0.45, 1.390_89),
    (0.50, 1.398_09),
    (0.55, 1.405_54),
    (0.60, 1.412_99),
    (0.65, 1.420_44),
    (0.70, 1.427_89),
    (0.75, 1.435_34),
    (0.80, 1.442_90),
    (0.85, 1.450_85),
    (0.90, 1.458_39),
    (0.95, 1.465_97),
    (1.00, 1.473_99),
];

/// Refractive index for sodium light at 20 °C.
///
/// *Valid for* every strength, within 0.0005 of the published tables (which differ by as much at full strength).
///
/// *Source:* Hoyt LF, Oil & Soap 10:43 (1933), smooth between its rows.
#[must_use]
pub fn refractive_index_at_20(glycerol: MassFraction) -> f64 {
    // A mass fraction always lies in the table.
    interpolate_smooth(INDEX_AT_20, glycerol.value()).unwrap_or(f64::NAN)
}

/// Refractive index for sodium light at another temperature.
///
/// The specific refraction (Lorentz and Lorenz) is that of 20 °C; the density carries the temperature.
///
/// *Valid for* every strength, 15 to 30 °C; the change with temperature is within 0.0005 of measurements from 20 to
/// 30 °C.
///
/// *Source:* as [`refractive_index_at_20`] and [`density`].
///
/// # Errors
/// `physics.out-of-range` outside 15 to 30 °C.
pub fn refractive_index(glycerol: MassFraction, temperature: Temperature) -> Result<f64, PhysicsError> {
    let refraction =
        mixture::specific_refraction(refractive_index_at_20(glycerol), density(glycerol, Temperature::TWENTY)?);
    Ok(mixture::index_from_refraction(refraction, density(glycerol, temperature)?))
}

/// Strength of a refractive index: the way back from [`refractive_index`].
///
/// # Errors
/// `physics.out-of-range` outside 15 to 30 °C, or if no strength has this index at this temperature.
pub fn fraction_from_refractive_index(index: f64, temperature: Temperature) -> Result<MassFraction, PhysicsError> {
    let at = |w: f64| refractive_index(MassFraction::new(w)?, temperature);
    let bounds = (at(0.0)?, at(1.0)?);
    invert("glycerol.refractive-index", "refractive index", "1", bounds, index, |w| at(w).ok())
}

fn invert(
    equation: &'static str,
    quantity: &'static str,
    unit: &'static str,
    (minimum, maximum): (f64, f64),
    value: f64,
    rising: impl FnMut(f64) -> Option<f64>,
) -> Result<MassFraction, PhysicsError> {
    let range = Range { equation, quantity, unit, minimum, maximum };
    let value = range.check(value)?;
    let outside = PhysicsError::OutOfRange { equation, quantity, value, minimum, maximum, unit };
    MassFraction::new(solve_rising(0.0, 1.0, value, rising).ok_or(outside)?)
}

/// Freezing points in °C. To 40 %: CRC Handbook, 102nd ed., Concentrative Properties of Aqueous Solutions. At 45 to 60 %:
/// the mean of Lange's Handbook, 15th ed., Table 5.13, Lane LB, Ind. Eng. Chem. 17:924 (1925) and Melinder (2010), which
/// differ by up to 1.3 °C there. From the eutectic on: Lane (memory).
const FREEZING_POINTS: Table = &[
    (0.0, 0.0),
    (0.01, -0.18),
    (0.02, -0.41),
    (0.03, -0.63),
    (0.04, -0.85),
    (0.05, -1.08),
    (0.06, -1.32),
    (0.07, -1.56),
    (0.08, -1.81),
    (0.09, -2.06),
    (0.10, -2.32),
    (0.12, -2.88),
    (0.14, -3.47),
    (0.16, -4.09),
    (0.18, -4.76),
    (0.20, -5.46),
    (0.24, -7.01),
    (0.28, -8.77),
    (0.32, -10.74),
    (0.36, -12.96),
    (0.40, -15.50),
    (0.45, -18.9),
    (0.50, -22.7),
    (0.55, -28.3),
    (0.60, -34.3),
    (EUTECTIC, -46.5),
    (0.671, -45.5),
    (0.673, -44.5),
    (0.680, -44.0),
    (0.709, -37.5),
    (0.754, -28.5),
    (0.790, -22.0),
    (0.848, -10.5),
    (0.903, -1.0),
    (0.953, 7.5),
    (0.982, 13.5),
];

/// Temperature in °C at which ice, or above the eutectic glycerol, begins to form.
///
/// *Valid for* 0 to 98.2 %, within 1 °C of the published tables up to the eutectic (66.7 %) and 2 °C above it. Strong
/// mixtures often stay liquid below this point.
///
/// *Source:* CRC Handbook, Lange's Handbook, Lane (1925); see the table.
///
/// # Errors
/// `physics.out-of-range` above 98.2 %.
pub fn freezing_point(glycerol: MassFraction) -> Result<f64, PhysicsError> {
    let w = FREEZING_FRACTION.check(glycerol.value())?;
    Ok(interpolate_linear(FREEZING_POINTS, w).unwrap_or(f64::NAN))
}

/// Specific heat in kJ/(kg·K).
///
/// *Valid for* every strength, 15 to 32 °C, within 2 %.
///
/// *Source:* least squares through the glycerol rows of Perry's Chemical Engineers' Handbook.
///
/// # Errors
/// `physics.out-of-range` outside 15 to 32 °C.
pub fn specific_heat(glycerol: MassFraction, temperature: Temperature) -> Result<f64, PhysicsError> {
    let (w, t) = (glycerol.value(), SPECIFIC_HEAT_TEMPERATURE.check(temperature.celsius())?);
    Ok(4.1705 - 1.4402 * w - 0.3922 * w * w + 0.001_481_2 * w * t)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn fractions() -> impl Strategy<Value = MassFraction> {
        (0.0..=1.0_f64).prop_map(|w| MassFraction::new(w).unwrap())
    }

    fn temperatures(range: Range) -> impl Strategy<Value = Temperature> {
        (range.minimum..=range.maximum).prop_map(|t| Temperature::new(t).unwrap())
    }

    proptest! {
        #[test]
        fn a_strength_comes_back_from_its_density(w in fractions(), t in temperatures(DENSITY_TEMPERATURE)) {
            let back = fraction_from_density(density(w, t).unwrap(), t).unwrap();
            prop_assert!((back.value() - w.value()).abs() < 1e-9);
        }

        #[test]
        fn a_strength_comes_back_from_its_refractive_index(w in fractions(), t in temperatures(DENSITY_TEMPERATURE)) {
            let back = fraction_from_refractive_index(refractive_index(w, t).unwrap(), t).unwrap();
            prop_assert!((back.value() - w.value()).abs() < 1e-9);
        }

        #[test]
        fn more_glycerol_is_denser_thicker_and_bends_light_more(
            w in 0.0..0.99_f64, t in temperatures(DENSITY_TEMPERATURE),
        ) {
            let [weaker, stronger] = [w, w + 0.01].map(|w| MassFraction::new(w).unwrap());
            prop_assert!(density(weaker, t).unwrap() < density(stronger, t).unwrap());
            prop_assert!(viscosity(weaker, t).unwrap() < viscosity(stronger, t).unwrap());
            prop_assert!(refractive_index(weaker, t).unwrap() < refractive_index(stronger, t).unwrap());
        }

        #[test]
        fn inside_the_ranges_every_answer_is_a_number_and_outside_an_error(w in 0.0..=1.0_f64, t in -100.0..150.0_f64) {
            let (w, celsius) = (MassFraction::new(w).unwrap(), Temperature::new(t).unwrap());
            for (answer, range) in [
                (density(w, celsius), DENSITY_TEMPERATURE),
                (refractive_index(w, celsius), DENSITY_TEMPERATURE),
                (viscosity(w, celsius), VISCOSITY_TEMPERATURE),
                (specific_heat(w, celsius), SPECIFIC_HEAT_TEMPERATURE),
            ] {
                let inside = (range.minimum..=range.maximum).contains(&t);
                prop_assert_eq!(answer.is_ok_and(f64::is_finite), inside);
            }
        }
    }

    #[test]
    fn beyond_the_measured_freezing_points_there_is_an_error() {
        assert!((freezing_point(MassFraction::NONE).unwrap()).abs() < 1e-12);
        assert!(freezing_point(MassFraction::ALL).is_err());
    }
}
