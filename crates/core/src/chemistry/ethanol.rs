//! Ethanol (INCI Alcohol) and water: the alcoholometric formula.

use super::interpolation::solve_rising;
use super::{MassFraction, PhysicsError, Range, Temperature};

/// Molar mass of ethanol in g/mol.
pub const MOLAR_MASS: f64 = 46.068_44;
/// Density in g/mL of pure ethanol at 20 °C, by which strength by volume is defined (OIML R 22).
pub const PURE_DENSITY_AT_20: f64 = 0.789_239_1;

/// Where [`density`] holds.
pub const DENSITY_TEMPERATURE: Range = Range::temperature("ethanol.density", -20.0, 40.0);
/// Where [`contraction`] holds: water is liquid.
pub const CONTRACTION_TEMPERATURE: Range = Range::temperature("ethanol.contraction", 0.0, 40.0);
/// What a strength by volume can be.
pub const VOLUME_PERCENT: Range = Range {
    equation: "ethanol.strength-by-volume",
    quantity: "ethanol by volume",
    unit: "% v/v",
    minimum: 0.0,
    maximum: 100.0,
};

/// Coefficients of OIML R 22 (1975), after Wagenbreth H and Blanke W, PTB-Mitt. 81:412 (1971): powers of the mass
/// fraction at 20 °C.
const A: [f64; 12] = [
    998.201_23,
    -192.976_949_5,
    389.123_895_8,
    -1_668.103_923,
    13_522.154_41,
    -88_292.783_88,
    306_287.404_2,
    -613_838.123_4,
    747_017.299_8,
    -547_846.135_4,
    223_446.033_4,
    -39_032.854_26,
];
/// Powers of the temperature above 20 °C, from the first.
const B: [f64; 6] = [-0.206_185_13, -0.005_268_254_2, 3.613_001_3e-5, -3.895_770_2e-7, 7.169_354e-9, -9.973_923_1e-11];
/// For each power of the temperature above 20 °C, from the first: powers of the mass fraction, from the first.
const C: [&[f64]; 5] = [
    &[
        0.169_344_346_153_008_7,
        -10.469_147_434_551_69,
        71.963_534_695_465_23,
        -704.747_805_427_279_2,
        3_924.090_430_035_045,
        -12_101.646_590_687_47,
        22_486.465_504_007_88,
        -26_055.629_821_881_64,
        18_523.739_220_694_67,
        -7_420.201_433_430_137,
        1_285.617_841_998_974,
    ],
    &[
        -0.011_930_130_050_570_1,
        0.251_739_963_380_346_1,
        -2.170_575_700_536_993,
        13.530_349_888_430_29,
        -50.299_887_585_470_14,
        109.635_566_657_757,
        -142.275_394_642_115_5,
        108.043_594_285_623,
        -44.141_532_368_173_92,
        7.442_971_530_188_783,
    ],
    &[
        -0.000_680_299_573_350_380_3,
        0.018_768_377_902_896_64,
        -0.200_256_181_373_415_6,
        1.022_992_966_719_22,
        -2.895_696_483_903_638,
        4.810_060_584_300_675,
        -4.672_147_440_794_683,
        2.458_043_105_903_461,
        -0.541_122_762_143_681_2,
    ],
    &[4.075_376_675_622_027e-6, -8.763_058_573_471_11e-6, 6.515_031_360_099_368e-6, -1.515_784_836_987_21e-6],
    &[-2.788_074_354_782_409e-8, 1.345_612_883_493_354e-8],
];

/// The polynomial with these coefficients, from power zero.
fn evaluate(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, coefficient| sum * x + coefficient)
}

/// Density in g/mL.
///
/// *Valid for* every strength, -20 to 40 °C (where it is liquid). The formula is the legal definition of the
/// alcoholometric tables; handbook values differ from it by up to 0.03 %.
///
/// *Source:* OIML R 22 (1975), International Alcoholometric Tables.
///
/// # Errors
/// `physics.out-of-range` outside -20 to 40 °C.
///
/// ```
/// use stillroom_core::chemistry::{Temperature, MassFraction, ethanol};
/// let half = ethanol::density(MassFraction::new(0.5)?, Temperature::TWENTY)?;
/// assert!((half - 0.913_770_6).abs() < 1e-7);
/// assert!(ethanol::density(MassFraction::new(0.5)?, Temperature::new(50.0)?).is_err());
/// # Ok::<(), stillroom_core::chemistry::PhysicsError>(())
/// ```
pub fn density(ethanol: MassFraction, temperature: Temperature) -> Result<f64, PhysicsError> {
    let p = ethanol.value();
    let above_20 = DENSITY_TEMPERATURE.check(temperature.celsius())? - 20.0;
    let mixed = C.iter().rev().fold(0.0, |sum, powers| (sum + p * evaluate(powers, p)) * above_20);
    Ok((evaluate(&A, p) + above_20 * evaluate(&B, above_20) + mixed) / 1000.0)
}

/// Strength by volume at 20 °C, in percent, of a strength by mass.
///
/// *Source:* OIML R 22 (1975).
#[must_use]
pub fn volume_percent(ethanol: MassFraction) -> f64 {
    ethanol.percent() * evaluate(&A, ethanol.value()) / 1000.0 / PURE_DENSITY_AT_20
}

/// Strength by mass of a strength by volume at 20 °C, in percent: the way back from [`volume_percent`].
///
/// # Errors
/// `physics.out-of-range` outside 0 to 100 %.
///
/// ```
/// use stillroom_core::chemistry::ethanol;
/// // 70 % by volume is 62.4 % by mass.
/// assert!((ethanol::fraction_from_volume_percent(70.0)?.percent() - 62.4).abs() < 0.05);
/// # Ok::<(), stillroom_core::chemistry::PhysicsError>(())
/// ```
pub fn fraction_from_volume_percent(percent: f64) -> Result<MassFraction, PhysicsError> {
    let percent = VOLUME_PERCENT.check(percent)?;
    // The ends of the scale differ from 0 and 100 by the rounding of the constants.
    let at = |w: f64| MassFraction::new(w).ok().map(volume_percent);
    let full = volume_percent(MassFraction::ALL);
    MassFraction::new(solve_rising(0.0, 1.0, percent.min(full), at).unwrap_or(1.0))
}

/// Millilitres that vanish when masses in grams of ethanol and water at `temperature` are mixed.
///
/// # Errors
/// `physics.out-of-range` outside 0 to 40 °C, for negative masses or none at all.
pub fn contraction(ethanol: f64, water: f64, temperature: Temperature) -> Result<f64, PhysicsError> {
    CONTRACTION_TEMPERATURE.check(temperature.celsius())?;
    let mixed = (ethanol + water) / density(MassFraction::of(ethanol, water)?, temperature)?;
    let unmixed =
        ethanol / density(MassFraction::ALL, temperature)? + water / density(MassFraction::NONE, temperature)?;
    Ok(unmixed - mixed)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn strength_by_volume_and_by_mass_are_inverse(percent in 0.0..=100.0_f64) {
            let back = volume_percent(fraction_from_volume_percent(percent).unwrap());
            prop_assert!((back - percent).abs() < 1e-4, "{back} for {percent}");
        }

        #[test]
        fn mixing_contracts(share in 0.01..0.99_f64, t in 0.0..=40.0_f64) {
            let lost = contraction(share, 1.0 - share, Temperature::new(t).unwrap()).unwrap();
            prop_assert!(lost > 0.0 && lost < 0.05, "{lost}");
        }
    }

    #[test]
    fn the_formula_gives_its_own_check_values() {
        for (p, t, expected) in [(0.5, 20.0, 0.913_770_60), (1.0, 0.0, 0.806_215_12), (0.0, 0.0, 0.999_836_93)] {
            let computed = density(MassFraction::new(p).unwrap(), Temperature::new(t).unwrap()).unwrap();
            assert!((computed - expected).abs() < 1e-8, "{computed} for {expected}");
        }
    }
}
