//! Units of mass and volume. Grams and millilitres inside; others only where people read or type.
//!
//! *Source* of every factor: NIST Special Publication 811 (2008), Appendix B, and NIST Handbook 44, Appendix C, where
//! these are exact by definition.

use crate::quantity::{Grams, Millilitres};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// A unit of mass.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MassUnit {
    /// Milligram.
    Milligram,
    /// Gram.
    #[default]
    Gram,
    /// Kilogram.
    Kilogram,
    /// Avoirdupois ounce, 28.349 523 125 g.
    Ounce,
    /// Avoirdupois pound, 453.592 37 g.
    Pound,
}

/// A unit of volume.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum VolumeUnit {
    /// Millilitre.
    #[default]
    Millilitre,
    /// Litre.
    Litre,
    /// US fluid ounce, 29.573 529 562 5 mL.
    FluidOunceUs,
    /// Imperial fluid ounce, 28.413 062 5 mL.
    FluidOunceUk,
}

/// A unit of temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum TemperatureUnit {
    /// Degree Celsius.
    #[default]
    Celsius,
    /// Degree Fahrenheit: `t/°F = 1.8 t/°C + 32`, exact (NIST SP 811, table B.9).
    Fahrenheit,
}

const fn decimal(mantissa: u64, scale: u32) -> Decimal {
    #[expect(clippy::cast_possible_truncation, reason = "the two halves of a 64-bit number")]
    Decimal::from_parts(mantissa as u32, (mantissa >> 32) as u32, 0, false, scale)
}

impl MassUnit {
    /// Every unit, in the order a list shows them.
    pub const ALL: [Self; 5] = [Self::Milligram, Self::Gram, Self::Kilogram, Self::Ounce, Self::Pound];

    /// Grams in one of this unit, exact.
    #[must_use]
    pub const fn grams(self) -> Decimal {
        match self {
            Self::Milligram => decimal(1, 3),
            Self::Gram => Decimal::ONE,
            Self::Kilogram => Decimal::ONE_THOUSAND,
            Self::Ounce => decimal(28_349_523_125, 9),
            Self::Pound => decimal(45_359_237, 5),
        }
    }

    /// What stands behind a number.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Milligram => "mg",
            Self::Gram => "g",
            Self::Kilogram => "kg",
            Self::Ounce => "oz",
            Self::Pound => "lb",
        }
    }

    /// Reads a symbol or name, in any case.
    #[must_use]
    pub fn from_text(text: &str) -> Option<Self> {
        let text = text.to_ascii_lowercase();
        Some(match text.trim_end_matches('.') {
            "mg" | "milligram" | "milligrams" => Self::Milligram,
            "g" | "gram" | "grams" | "gramme" | "grammes" => Self::Gram,
            "kg" | "kilo" | "kilogram" | "kilograms" => Self::Kilogram,
            "oz" | "ounce" | "ounces" => Self::Ounce,
            "lb" | "lbs" | "pound" | "pounds" => Self::Pound,
            _ => return None,
        })
    }

    /// A number of this unit as grams. `None` outside the range of [`Grams`].
    #[must_use]
    pub fn to_grams(self, value: Decimal) -> Option<Grams> {
        Grams::new(value.checked_mul(self.grams())?).ok()
    }

    /// Grams as a number of this unit, rounded to what a decimal holds.
    #[must_use]
    pub fn from_grams(self, mass: Grams) -> Decimal {
        // The divisor is a constant above zero and the dividend at most 10⁹.
        mass.value().checked_div(self.grams()).unwrap_or_default()
    }
}

impl TemperatureUnit {
    /// What stands behind a number.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Celsius => "°C",
            Self::Fahrenheit => "°F",
        }
    }

    /// Reads a symbol, in any case and with or without the degree sign.
    #[must_use]
    pub fn from_text(text: &str) -> Option<Self> {
        match text.trim_start_matches(['°', 'º']).trim_start() {
            "C" | "c" => Some(Self::Celsius),
            "F" | "f" => Some(Self::Fahrenheit),
            _ => None,
        }
    }

    /// A number of this unit in degrees Celsius, rounded to what a decimal holds.
    ///
    /// ```
    /// use rust_decimal::dec;
    /// use stillroom_core::unit::TemperatureUnit::{Celsius, Fahrenheit};
    /// assert_eq!(Fahrenheit.to_celsius(dec!(158)), dec!(70));
    /// assert_eq!((Fahrenheit.from_celsius(dec!(-40)), Celsius.from_celsius(dec!(5))), (dec!(-40), dec!(5)));
    /// ```
    #[must_use]
    pub fn to_celsius(self, value: Decimal) -> Decimal {
        match self {
            Self::Celsius => value,
            Self::Fahrenheit => value
                .checked_sub(Decimal::from(32))
                .and_then(|above| above.checked_mul(decimal(5, 0))?.checked_div(decimal(9, 0)))
                .unwrap_or_default(),
        }
    }

    /// Degrees Celsius as a physical number of this unit.
    #[must_use]
    pub fn of_celsius(self, celsius: f64) -> f64 {
        match self {
            Self::Celsius => celsius,
            Self::Fahrenheit => 1.8 * celsius + 32.0,
        }
    }

    /// Degrees Celsius as a number of this unit.
    #[must_use]
    pub fn from_celsius(self, celsius: Decimal) -> Decimal {
        match self {
            Self::Celsius => celsius,
            Self::Fahrenheit => celsius
                .checked_mul(decimal(18, 1))
                .and_then(|scaled| scaled.checked_add(Decimal::from(32)))
                .unwrap_or_default()
                .normalize(),
        }
    }
}

impl VolumeUnit {
    /// Every unit, in the order a list shows them.
    pub const ALL: [Self; 4] = [Self::Millilitre, Self::Litre, Self::FluidOunceUs, Self::FluidOunceUk];

    /// Millilitres in one of this unit, exact.
    #[must_use]
    pub const fn millilitres(self) -> Decimal {
        match self {
            Self::Millilitre => Decimal::ONE,
            Self::Litre => Decimal::ONE_THOUSAND,
            Self::FluidOunceUs => decimal(295_735_295_625, 10),
            Self::FluidOunceUk => decimal(284_130_625, 7),
        }
    }

    /// What stands behind a number.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Millilitre => "mL",
            Self::Litre => "L",
            Self::FluidOunceUs => "US fl oz",
            Self::FluidOunceUk => "UK fl oz",
        }
    }

    /// Reads a symbol or name, in any case. A fluid ounce of no stated country is the US one.
    #[must_use]
    pub fn from_text(text: &str) -> Option<Self> {
        let text: String = text.to_ascii_lowercase().chars().filter(|c| !c.is_whitespace() && *c != '.').collect();
        Some(match text.as_str() {
            "ml" | "cc" | "millilitre" | "millilitres" | "milliliter" | "milliliters" => Self::Millilitre,
            "l" | "litre" | "litres" | "liter" | "liters" => Self::Litre,
            "floz" | "usfloz" | "fluidounce" | "fluidounces" | "usfluidounce" | "usfluidounces" => Self::FluidOunceUs,
            "ukfloz" | "impfloz" | "imperialfluidounce" | "ukfluidounce" | "ukfluidounces" => Self::FluidOunceUk,
            _ => return None,
        })
    }

    /// A number of this unit as millilitres. `None` outside the range of [`Millilitres`].
    #[must_use]
    pub fn to_millilitres(self, value: Decimal) -> Option<Millilitres> {
        Millilitres::new(value.checked_mul(self.millilitres())?).ok()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use rust_decimal::dec;

    #[test]
    fn factors_are_those_of_nist_sp_811() {
        assert_eq!(MassUnit::Ounce.grams(), dec!(28.349523125));
        assert_eq!(MassUnit::Pound.grams(), dec!(453.59237));
        assert_eq!(VolumeUnit::FluidOunceUs.millilitres(), dec!(29.5735295625));
        assert_eq!(VolumeUnit::FluidOunceUk.millilitres(), dec!(28.4130625));
        assert_eq!(MassUnit::Pound.grams(), MassUnit::Ounce.grams() * dec!(16));
    }

    #[test]
    fn every_symbol_reads_back() {
        for unit in MassUnit::ALL {
            assert_eq!(MassUnit::from_text(unit.symbol()), Some(unit));
        }
        for unit in VolumeUnit::ALL {
            assert_eq!(VolumeUnit::from_text(unit.symbol()), Some(unit));
        }
    }
}
