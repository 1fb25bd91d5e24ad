//! The sugar scale: what Brix means, and how a refractometer is corrected for temperature.

use super::interpolation::solve_rising;
use super::{MassFraction, PhysicsError, Range, Temperature};

/// Where [`index_from_brix`] holds.
pub const BRIX: Range = Range { equation: "sucrose.brix", quantity: "Brix", unit: "°Bx", minimum: 0.0, maximum: 85.0 };
/// Where [`temperature_correction`] holds.
pub const CORRECTION_TEMPERATURE: Range = Range::temperature("sucrose.temperature-correction", 10.0, 30.0);
/// Where [`temperature_correction`] holds.
pub const CORRECTION_BRIX: Range =
    Range { equation: "sucrose.temperature-correction", quantity: "Brix", unit: "°Bx", minimum: 0.0, maximum: 70.0 };

/// Refractive index at 20 °C of so many grams of sucrose in 100 g of solution.
///
/// *Valid for* 0 to 85 °Bx, within 0.000 01 of the table.
///
/// *Source:* polynomial through the sucrose scale of ICUMSA SPS-3, as printed in OIV-MA-AS2-02.
///
/// # Errors
/// `physics.out-of-range` outside 0 to 85.
///
/// ```
/// use stillroom_core::chemistry::sucrose;
/// assert!((sucrose::index_from_brix(50.0)? - 1.420_09).abs() < 2e-5);
/// assert!((sucrose::brix_from_index(1.420_09)? - 50.0).abs() < 0.01);
/// # Ok::<(), stillroom_core::chemistry::PhysicsError>(())
/// ```
pub fn index_from_brix(brix: f64) -> Result<f64, PhysicsError> {
    Ok(polynomial(BRIX.check(brix)?))
}

fn polynomial(brix: f64) -> f64 {
    const COEFFICIENTS: [f64; 6] =
        [1.332_987_23, 1.427_532_85e-3, 5.474_397_84e-6, 1.200_009_3e-8, 1.340_274_54e-10, -9.613_969_46e-13];
    COEFFICIENTS.iter().rev().fold(0.0, |sum, coefficient| sum * brix + coefficient)
}

/// Brix of a refractive index at 20 °C: the way back from [`index_from_brix`].
///
/// # Errors
/// `physics.out-of-range` for an index below that of water or above that of 85 °Bx.
pub fn brix_from_index(index: f64) -> Result<f64, PhysicsError> {
    let (minimum, maximum) = (polynomial(BRIX.minimum), polynomial(BRIX.maximum));
    let (equation, quantity, unit) = (BRIX.equation, "refractive index", "1");
    let range = Range { equation, quantity, unit, minimum, maximum };
    let value = range.check(index)?;
    solve_rising(BRIX.minimum, BRIX.maximum, value, |brix| Some(polynomial(brix))).ok_or(PhysicsError::OutOfRange {
        equation,
        quantity,
        value,
        minimum,
        maximum,
        unit,
    })
}

/// Brix readings the columns of [`CORRECTIONS`] stand for.
const CORRECTION_COLUMNS: [f64; 11] = [0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 60.0, 70.0];

/// What is added to a reading at a temperature: International Temperature Correction Table 1936, sucrose, Abbe
/// refractometer, reference 20 °C (AOAC; from memory).
const CORRECTIONS: [(f64, [f64; 11]); 17] = [
    (10.0, [-0.50, -0.54, -0.58, -0.61, -0.64, -0.66, -0.68, -0.72, -0.74, -0.76, -0.79]),
    (15.0, [-0.27, -0.29, -0.31, -0.33, -0.34, -0.34, -0.35, -0.37, -0.38, -0.39, -0.40]),
    (16.0, [-0.22, -0.24, -0.25, -0.26, -0.27, -0.28, -0.28, -0.30, -0.30, -0.31, -0.32]),
    (17.0, [-0.17, -0.18, -0.19, -0.20, -0.21, -0.21, -0.21, -0.22, -0.23, -0.23, -0.24]),
    (18.0, [-0.12, -0.13, -0.13, -0.14, -0.14, -0.14, -0.14, -0.15, -0.15, -0.16, -0.16]),
    (19.0, [-0.06, -0.06, -0.06, -0.07, -0.07, -0.07, -0.07, -0.08, -0.08, -0.08, -0.08]),
    (20.0, [0.0; 11]),
    (21.0, [0.06, 0.07, 0.07, 0.07, 0.07, 0.08, 0.08, 0.08, 0.08, 0.08, 0.08]),
    (22.0, [0.13, 0.13, 0.14, 0.14, 0.15, 0.15, 0.15, 0.15, 0.16, 0.16, 0.16]),
    (23.0, [0.19, 0.20, 0.21, 0.22, 0.22, 0.23, 0.23, 0.23, 0.24, 0.24, 0.24]),
    (24.0, [0.26, 0.27, 0.28, 0.29, 0.30, 0.30, 0.31, 0.31, 0.31, 0.32, 0.32]),
    (25.0, [0.33, 0.35, 0.36, 0.37, 0.38, 0.38, 0.39, 0.40, 0.40, 0.40, 0.40]),
    (26.0, [0.40, 0.42, 0.43, 0.44, 0.45, 0.46, 0.47, 0.48, 0.48, 0.48, 0.48]),
    (27.0, [0.48, 0.50, 0.52, 0.53, 0.54, 0.55, 0.55, 0.56, 0.56, 0.56, 0.56]),
    (28.0, [0.56, 0.57, 0.60, 0.61, 0.62, 0.63, 0.63, 0.64, 0.64, 0.64, 0.64]),
    (29.0, [0.64, 0.66, 0.68, 0.69, 0.71, 0.72, 0.72, 0.73, 0.73, 0.73, 0.73]),
    (30.0, [0.72, 0.74, 0.77, 0.78, 0.79, 0.80, 0.80, 0.81, 0.81, 0.81, 0.81]),
];

/// What is added to a reading in Brix, taken at a temperature other than 20 °C, to have the sugar of a sucrose solution.
/// Refractometers that correct for temperature do the same, so for glycerin they are a little off: read at 20 °C.
///
/// *Valid for* 10 to 30 °C and 0 to 70 °Bx; nothing is added at 20 °C whatever the reading.
///
/// *Source:* International Temperature Correction Table 1936 (AOAC), straight between its rows and columns.
///
/// # Errors
/// `physics.out-of-range` outside these ranges.
pub fn temperature_correction(reading: f64, temperature: Temperature) -> Result<f64, PhysicsError> {
    let t = CORRECTION_TEMPERATURE.check(temperature.celsius())?;
    if (t - 20.0).abs() < f64::EPSILON {
        return Ok(0.0);
    }
    let brix = CORRECTION_BRIX.check(reading)?;
    let column = CORRECTION_COLUMNS.partition_point(|at| *at <= brix).clamp(1, CORRECTION_COLUMNS.len() - 1) - 1;
    let row = CORRECTIONS.partition_point(|(at, _)| *at <= t).clamp(1, CORRECTIONS.len() - 1) - 1;
    let across = (brix - CORRECTION_COLUMNS[column]) / (CORRECTION_COLUMNS[column + 1] - CORRECTION_COLUMNS[column]);
    let down = (t - CORRECTIONS[row].0) / (CORRECTIONS[row + 1].0 - CORRECTIONS[row].0);
    let in_row = |row: usize| {
        let (left, right) = (CORRECTIONS[row].1[column], CORRECTIONS[row].1[column + 1]);
        left + (right - left) * across
    };
    Ok(in_row(row) + (in_row(row + 1) - in_row(row)) * down)
}

/// Density in g/mL of a sucrose solution at 20 °C.
///
/// *Valid for* 0 to 65 %, within 0.02 %.
///
/// *Source:* partial specific volume fitted to the ICUMSA densities of sucrose solutions (from memory).
#[must_use]
pub fn density_at_20(sucrose: MassFraction) -> f64 {
    let w = sucrose.value();
    1.0 / ((1.0 - w) / 0.998_2 + w * specific_volume(sucrose))
}

/// Millilitres that a gram of dissolved sucrose adds to water, at a strength by mass in that water.
#[must_use]
pub(super) fn specific_volume(sucrose: MassFraction) -> f64 {
    let w = sucrose.value();
    0.6158 + 0.0085 * w + 0.0190 * w * w
}

/// Specific refraction of dissolved sucrose in mL/g, from its refractive indices and densities.
pub(super) fn specific_refraction(sucrose: MassFraction) -> f64 {
    0.2068 - 0.0023 * sucrose.value()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn brix_comes_back_from_its_index(brix in BRIX.minimum..=BRIX.maximum) {
            let back = brix_from_index(index_from_brix(brix).unwrap()).unwrap();
            prop_assert!((back - brix).abs() < 1e-6);
        }

        #[test]
        fn a_correction_is_given_inside_the_table_and_nowhere_else(brix in -10.0..90.0_f64, t in 0.0..40.0_f64) {
            let inside = (0.0..=70.0).contains(&brix) && (10.0..=30.0).contains(&t);
            prop_assert_eq!(temperature_correction(brix, Temperature::new(t).unwrap()).is_ok(), inside);
        }
    }
}
