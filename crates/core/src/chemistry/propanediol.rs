//! The two propanediols a maker meets: 1,2 (INCI Propylene Glycol) and 1,3 (INCI Propanediol).
//!
//! Mixtures with water are published for the 1,2 isomer. For the 1,3 isomer only the pure liquid is; in mixtures it is
//! taken to shrink by the same share as the 1,2 isomer, which is an assumption and is said to be one.

use super::interpolation::{Table, interpolate_linear};
use super::{MassFraction, PhysicsError, Range, Temperature};
use serde::{Deserialize, Serialize};

/// Molar mass of both in g/mol.
pub const MOLAR_MASS: f64 = 76.094_42;

/// Where [`propylene_glycol_density`] holds.
pub const DENSITY_TEMPERATURE: Range = Range::temperature("propylene-glycol.density", 25.0, 35.0);

/// Which propanediol.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Diol {
    /// The 1,2 isomer (INCI Propylene Glycol).
    PropyleneGlycol,
    /// The 1,3 isomer (INCI Propanediol). Its behaviour in mixtures is taken from the 1,2 isomer.
    Propanediol,
}

impl Diol {
    /// Density in g/mL of the pure liquid at 25 °C.
    ///
    /// *Source:* 1,2: Nakanishi K et al., J. Phys. Chem. 71:814 (1967). 1,3: CRC Handbook (memory), 1.0538 at 20 °C, with
    /// the thermal expansion of the 1,2 isomer.
    const fn pure_density_at_25(self) -> f64 {
        match self {
            Self::PropyleneGlycol => 1.032_41,
            Self::Propanediol => 1.050_1,
        }
    }

    /// Millilitres that a gram adds to water, at a strength by mass in that water, at 25 °C.
    pub(super) fn specific_volume(self, diol: MassFraction) -> f64 {
        let w = diol.value().max(0.01);
        let mixed = interpolate_linear(DENSITY_AT_25, w).unwrap_or(f64::NAN);
        let in_water = (1.0 / mixed - (1.0 - w) / DENSITY_AT_25[0].1) / w;
        in_water * Self::PropyleneGlycol.pure_density_at_25() / self.pure_density_at_25()
    }

    /// Specific refraction in mL/g: 1,2 from MacBeth G and Thompson AR, Anal. Chem. 23:618 (1951), where it varies by
    /// 0.0006 with strength; 1,3 from 1.4398 at 20 °C (CRC Handbook, memory).
    pub(super) const fn specific_refraction(self) -> f64 {
        match self {
            Self::PropyleneGlycol => 0.250_4,
            Self::Propanediol => 0.250_0,
        }
    }
}

/// Density of 1,2-propanediol and water at 25 °C: Nakanishi K, Kato N, Maruyama M, J. Phys. Chem. 71:814 (1967).
const DENSITY_AT_25: Table = &[
    (0.0, 0.997_00),
    (0.036_17, 0.999_39),
    (0.080_3, 1.002_65),
    (0.143_9, 1.007_80),
    (0.159_49, 1.009_06),
    (0.180_81, 1.010_98),
    (0.198_46, 1.012_49),
    (0.217_82, 1.014_16),
    (0.285_54, 1.019_95),
    (0.357_98, 1.025_58),
    (0.402_6, 1.028_95),
    (0.446_49, 1.031_56),
    (0.470_54, 1.033_24),
    (0.541_21, 1.036_61),
    (0.568_79, 1.037_55),
    (0.604_53, 1.038_81),
    (0.640_32, 1.039_54),
    (0.698_97, 1.040_18),
    (0.806_88, 1.039_83),
    (0.825_36, 1.039_46),
    (0.908_9, 1.037_06),
    (1.0, 1.032_41),
];

/// Density of 1,2-propanediol and water at 35 °C: MacBeth G, Thompson AR, Anal. Chem. 23:618 (1951).
const DENSITY_AT_35: Table = &[
    (0.0, 0.994_06),
    (0.1, 1.000_89),
    (0.2, 1.008_52),
    (0.3, 1.016_15),
    (0.4, 1.022_95),
    (0.5, 1.028_18),
    (0.6, 1.031_54),
    (0.7, 1.032_99),
    (0.8, 1.032_40),
    (0.9, 1.029_82),
    (1.0, 1.025_10),
];

/// Density in g/mL of 1,2-propanediol (INCI Propylene Glycol) and water.
///
/// *Valid for* every strength, 25 to 35 °C: the two temperatures it was measured at, straight between them; within 0.1 %.
///
/// *Source:* Nakanishi K et al., J. Phys. Chem. 71:814 (1967); MacBeth G and Thompson AR, Anal. Chem. 23:618 (1951).
///
/// # Errors
/// `physics.out-of-range` outside 25 to 35 °C.
pub fn propylene_glycol_density(propylene_glycol: MassFraction, temperature: Temperature) -> Result<f64, PhysicsError> {
    let t = DENSITY_TEMPERATURE.check(temperature.celsius())?;
    let [cool, warm] = [DENSITY_AT_25, DENSITY_AT_35]
        .map(|table| interpolate_linear(table, propylene_glycol.value()).unwrap_or(f64::NAN));
    Ok(cool + (warm - cool) * (t - 25.0) / 10.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_pure_liquid_takes_its_own_room() {
        for diol in [Diol::PropyleneGlycol, Diol::Propanediol] {
            let room = diol.specific_volume(MassFraction::ALL);
            assert!((room * diol.pure_density_at_25() - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn outside_the_measured_temperatures_there_is_an_error() {
        assert!(propylene_glycol_density(MassFraction::ALL, Temperature::TWENTY).is_err());
        let warm = propylene_glycol_density(MassFraction::ALL, Temperature::new(35.0).unwrap()).unwrap();
        assert!((warm - 1.025_10).abs() < 1e-9);
    }
}
