//! Physical chemistry of what makers pour: glycerin, water, alcohol, glycols and sugar.
//!
//! Everything is `f64` in the unit its name says. Each equation has a [`Range`] in which its source vouches for it;
//! outside it the answer is [`PhysicsError::OutOfRange`], never an extrapolated number. Accuracies are stated beside each
//! function and held by the evidence sets `glycerol.*`, `ethanol.*` and `sucrose.*`.

// Names of authors and journals are not code.
#![allow(clippy::doc_markdown)]

pub mod dissociation;
pub mod ethanol;
pub mod fat;
pub mod glycerol;
pub mod hlb;
pub mod interpolation;
pub mod mixture;
pub mod partition;
pub mod ph;
pub mod propanediol;
pub mod solubility;
pub mod sucrose;
pub mod water;
pub mod water_activity;

use serde::{Deserialize, Serialize};

/// Why physics has no answer.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum PhysicsError {
    /// A quantity lies outside what the source of the equation vouches for.
    #[error("{equation}: {quantity} {value} {unit} is outside {minimum} to {maximum} {unit}")]
    OutOfRange {
        /// Which equation.
        equation: &'static str,
        /// Which quantity.
        quantity: &'static str,
        /// What was given.
        value: f64,
        /// Least value the equation holds for.
        minimum: f64,
        /// Greatest value the equation holds for.
        maximum: f64,
        /// Unit of all three.
        unit: &'static str,
    },
    /// No trustworthy published data were found for this quantity of this liquid.
    #[error("{quantity}: no data for a liquid with {with}")]
    NoData {
        /// Which quantity.
        quantity: &'static str,
        /// What in the liquid stands in the way.
        with: &'static str,
    },
}

impl PhysicsError {
    /// Every code this module can answer with.
    pub const CODES: [&'static str; 2] = ["physics.out-of-range", "physics.no-data"];

    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::OutOfRange { .. } => "physics.out-of-range",
            Self::NoData { .. } => "physics.no-data",
        }
    }
}

/// Where an equation holds, for one of its quantities. Declared once; feeds the check, the error and the tests.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// Which equation.
    pub equation: &'static str,
    /// Which quantity.
    pub quantity: &'static str,
    /// Unit of the bounds.
    pub unit: &'static str,
    /// Least value the equation holds for.
    pub minimum: f64,
    /// Greatest value the equation holds for.
    pub maximum: f64,
}

impl Range {
    /// A range of a temperature in degrees Celsius.
    pub(crate) const fn temperature(equation: &'static str, minimum: f64, maximum: f64) -> Self {
        Self { equation, quantity: "temperature", unit: "°C", minimum, maximum }
    }

    /// A range of a mass fraction.
    pub(crate) const fn fraction(equation: &'static str, quantity: &'static str, minimum: f64, maximum: f64) -> Self {
        Self { equation, quantity, unit: "g/g", minimum, maximum }
    }

    /// The value, if it lies in the range.
    ///
    /// # Errors
    /// `physics.out-of-range` otherwise, and for what is not a number.
    pub fn check(&self, value: f64) -> Result<f64, PhysicsError> {
        if value >= self.minimum && value <= self.maximum {
            return Ok(value);
        }
        Err(PhysicsError::OutOfRange {
            equation: self.equation,
            quantity: self.quantity,
            value,
            minimum: self.minimum,
            maximum: self.maximum,
            unit: self.unit,
        })
    }
}

/// A share by mass, 0 to 1.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct MassFraction(f64);

impl MassFraction {
    /// What a mass fraction can be.
    pub const RANGE: Range = Range::fraction("mass fraction", "mass fraction", 0.0, 1.0);
    /// Nothing of it.
    pub const NONE: Self = Self(0.0);
    /// Nothing else.
    pub const ALL: Self = Self(1.0);

    /// A share by mass.
    ///
    /// # Errors
    /// `physics.out-of-range` outside 0 to 1.
    pub fn new(fraction: f64) -> Result<Self, PhysicsError> {
        Self::RANGE.check(fraction).map(Self)
    }

    /// A share by mass given in percent.
    ///
    /// # Errors
    /// `physics.out-of-range` outside 0 to 100 %.
    pub fn from_percent(percent: f64) -> Result<Self, PhysicsError> {
        Self::new(percent / 100.0)
    }

    /// The share of `part` in `part + rest`, both in the same unit of mass.
    ///
    /// # Errors
    /// `physics.out-of-range` if either is negative or both are nothing.
    pub fn of(part: f64, rest: f64) -> Result<Self, PhysicsError> {
        if rest < 0.0 {
            return Self::new(f64::NAN);
        }
        Self::new(part / (part + rest))
    }

    /// The share, 0 to 1.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }

    /// The share in percent.
    #[must_use]
    pub fn percent(self) -> f64 {
        self.0 * 100.0
    }
}

/// A temperature, for physics.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Temperature(f64);

impl Temperature {
    /// What a temperature at the bench can be: from absolute zero to where everything here has long boiled.
    pub const RANGE: Range = Range::temperature("temperature", -273.15, 1000.0);
    /// Reference temperature of refractometers and hydrometers.
    pub const TWENTY: Self = Self(20.0);
    /// Reference temperature of water activity.
    pub const TWENTY_FIVE: Self = Self(25.0);

    /// A temperature in degrees Celsius.
    ///
    /// # Errors
    /// `physics.out-of-range` below absolute zero or above 1000 °C.
    pub fn new(degrees: f64) -> Result<Self, PhysicsError> {
        Self::RANGE.check(degrees).map(Self)
    }

    /// Degrees Celsius.
    #[must_use]
    pub const fn celsius(self) -> f64 {
        self.0
    }

    /// Kelvin.
    #[must_use]
    pub fn kelvin(self) -> f64 {
        self.0 + 273.15
    }
}

impl From<crate::Celsius> for Temperature {
    /// The temperature a person typed; its range lies inside this one.
    fn from(typed: crate::Celsius) -> Self {
        Self(typed.to_physics())
    }
}

/// An estimate and how far off it may be.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Band {
    /// Least it may be.
    pub low: f64,
    /// What is most likely.
    pub estimate: f64,
    /// Most it may be.
    pub high: f64,
}

impl Band {
    /// The band that holds every value given; `estimate` is held too.
    #[must_use]
    pub fn around(estimate: f64, values: &[f64]) -> Self {
        let low = values.iter().copied().fold(estimate, f64::min);
        let high = values.iter().copied().fold(estimate, f64::max);
        Self { low, estimate, high }
    }

    /// A value known without a band.
    #[must_use]
    pub const fn exact(value: f64) -> Self {
        Self { low: value, estimate: value, high: value }
    }

    /// All three through an increasing function.
    #[must_use]
    pub fn map(self, increasing: impl Fn(f64) -> f64) -> Self {
        Self { low: increasing(self.low), estimate: increasing(self.estimate), high: increasing(self.high) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_lies_outside_a_range_is_an_error_that_names_the_range() {
        let error = MassFraction::new(1.2).unwrap_err();
        assert_eq!(error.code(), "physics.out-of-range");
        assert_eq!(error.to_string(), "mass fraction: mass fraction 1.2 g/g is outside 0 to 1 g/g");
        assert!(MassFraction::new(f64::NAN).is_err());
        assert!(MassFraction::of(0.0, 0.0).is_err());
        assert!(MassFraction::of(5.0, -1.0).is_err());
        assert!(Temperature::new(-300.0).is_err());
    }
}
