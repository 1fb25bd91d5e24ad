//! The pH of a solution: every acid, base, ampholyte and salt in the water really present.
//!
//! [`Solution`] says what is dissolved, [`Solver`] finds the equilibrium, [`set`] the amount that reaches a pH,
//! [`predict::predict`] the pH of a formula as a band; [`titration`] reads a sample at the bench.
//!
//! # The model
//! - pH is `-log10 a(H+)`. Amounts are mol per kg of water.
//! - Activity coefficients by Davies (*Ion Association*, 1962): `log γ = -A z² (√I / (1 + √I) - 0.3 I)`; of neutral
//!   species and of water 1. A over temperature from the dielectric constant of water (Malmberg & Maryott, J. Res. NBS
//!   56 (1956) 1) and its density. Valid to an ionic strength of 0.5 mol/kg ([`MOST_IONIC_STRENGTH`]); beyond it the
//!   answer is `ph.too-strong`.
//! - Constants at zero ionic strength, moved to 0–50 °C by reaction enthalpy and heat capacity where known.
//! - Ion pairs of sodium, potassium, magnesium, calcium and zinc where data are handed in.
//!
//! # What it leaves out
//! Solids that form (calcium phosphate, potassium bitartrate), gas that leaves (carbon dioxide), micelles and polymers
//! that hold ions, and what alcohol and glycols do to the constants: with much of them the pKa of carboxylic acids
//! rises, and [`predict::predict`] says so and widens its band.

pub mod constants;
#[cfg(test)]
mod laws;
pub mod predict;
pub mod set;
pub mod solution;
pub mod solve;
pub mod titration;

pub use constants::{AcidBase, Cation, Constant, Medium, Pair};
pub use solution::Solution;
pub use solve::{Activity, Equilibrium, Solver};

use crate::chemistry::{Range, Temperature};

/// Greatest ionic strength, in mol/kg water, to which the activity model is trusted.
pub const MOST_IONIC_STRENGTH: f64 = 0.5;

/// Temperatures at which an equilibrium may be asked for.
pub const TEMPERATURES: Range = Range::temperature("acid-base equilibrium", 0.0, 50.0);

/// Why there is no pH.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum PhError {
    /// An amount or a target is not a number, or negative.
    #[error("an amount is negative or not a number")]
    Amount,
    /// Constants of an acid are missing, too many or beyond belief.
    #[error("the constants of an acid cannot be used")]
    Constants,
    /// Outside 0 to 50 °C.
    #[error("{celsius} °C is outside 0 to 50 °C")]
    Temperature {
        /// What was asked for, in °C.
        celsius: f64,
    },
    /// The ionic strength is beyond the activity model.
    #[error("the ionic strength, about {about} mol/kg, is beyond 0.5 mol/kg")]
    TooStrong {
        /// About how much, in mol/kg water; 1.0 stands for 1.0 or more.
        about: f64,
    },
    /// Too little water for an aqueous equilibrium to mean anything.
    #[error("there is too little water")]
    HardlyAnyWater,
    /// No amount of what is added brings the pH there.
    #[error("what is added cannot bring the pH there; it ends at {ends_at}")]
    Unreachable {
        /// The pH of the limit it tends to.
        ends_at: f64,
    },
    /// The equations were not solved.
    #[error("the equilibrium was not found")]
    Unsolved,
}

impl PhError {
    /// Every code this module can answer with.
    pub const CODES: [&'static str; 7] = [
        "ph.amount",
        "ph.constants",
        "ph.temperature",
        "ph.too-strong",
        "ph.hardly-any-water",
        "ph.unreachable",
        "ph.unsolved",
    ];

    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Amount => "ph.amount",
            Self::Constants => "ph.constants",
            Self::Temperature { .. } => "ph.temperature",
            Self::TooStrong { .. } => "ph.too-strong",
            Self::HardlyAnyWater => "ph.hardly-any-water",
            Self::Unreachable { .. } => "ph.unreachable",
            Self::Unsolved => "ph.unsolved",
        }
    }
}

/// A of Debye and Hückel in (kg/mol)^½, from the dielectric constant of water (Malmberg & Maryott, J. Res. NBS 56
/// (1956) 1: 0–100 °C, ±0.05) and its density (a parabola about 4 °C, within 0.1 % of published densities from 0 to
/// 50 °C).
#[must_use]
pub fn debye_huckel(temperature: Temperature) -> f64 {
    let t = temperature.celsius();
    let dielectric = 87.740 - 0.400_08 * t + 9.398e-4 * t * t - 1.410e-6 * t * t * t;
    let density = 0.999_97 - 5.6e-6 * (t - 4.0) * (t - 4.0);
    1.824_83e6 * density.sqrt() / (dielectric * temperature.kelvin()).powf(1.5)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_slope_of_debye_and_huckel_is_the_published_one() {
        // Robinson & Stokes, Electrolyte Solutions (1959), appendix 7.1: 0.4918 (0), 0.5115 (25), 0.5262 (40 °C) per
        // litre^½; on molality within 0.003 of these (memory).
        for (degrees, published) in [(0.0, 0.4918), (25.0, 0.5115), (40.0, 0.5262)] {
            let a = debye_huckel(Temperature::new(degrees).unwrap());
            assert!((a - published).abs() < 0.004, "{degrees}: {a}");
        }
    }
}
