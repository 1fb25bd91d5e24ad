//! Quantities as newtypes over [`Decimal`]: percent, mass, volume, density and money.
//!
//! A quantity is checked once, when it is made; afterwards it is known to lie in its range. Each type offers only the
//! operations that mean something, and every operation that could leave the range returns `Option`.

use core::fmt;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::de::{Error as _, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// Why a number is not a quantity.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum QuantityError {
    /// The number lies outside what this quantity can be.
    #[error("{value} {unit} is outside {minimum} to {maximum} {unit}")]
    OutOfRange {
        /// The number that was offered.
        value: Decimal,
        /// Smallest value accepted.
        minimum: Decimal,
        /// Largest value accepted.
        maximum: Decimal,
        /// Unit of all three.
        unit: &'static str,
    },
    /// A currency is three capital letters (ISO 4217).
    #[error("a currency code is three capital letters")]
    NotACurrency,
}

impl QuantityError {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::OutOfRange { .. } => "quantity.out-of-range",
            Self::NotACurrency => "quantity.not-a-currency",
        }
    }
}

/// Reads a decimal from text, exactly or not at all: no binary fraction crosses a seam or a record.
struct ExactText;

impl Visitor<'_> for ExactText {
    type Value = Decimal;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a decimal number as text")
    }

    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Decimal, E> {
        Decimal::from_str_exact(text).map_err(E::custom)
    }
}

macro_rules! quantity {
    ($(#[$about:meta])* $name:ident, $unit:literal, $minimum:expr, $maximum:expr) => {
        $(#[$about])*
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(Decimal);

        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.collect_str(&self.0)
            }
        }

        #[cfg(feature = "schema")]
        impl schemars::JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }

            fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                let about = format!("in {}, {} to {}", $unit, Self::MINIMUM, Self::MAXIMUM);
                schemars::json_schema!({ "type": "string", "pattern": "^-?[0-9]+(\\.[0-9]+)?$", "description": about })
            }
        }

        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                Self::new(deserializer.deserialize_str(ExactText)?).map_err(D::Error::custom)
            }
        }

        impl $name {
            /// Unit the value is in.
            pub const UNIT: &'static str = $unit;
            /// Smallest value this quantity can have.
            pub const MINIMUM: Decimal = $minimum;
            /// Largest value this quantity can have.
            pub const MAXIMUM: Decimal = $maximum;
            /// Nothing of it.
            pub const ZERO: Self = Self(Decimal::ZERO);

            /// Checks `value` against the range.
            ///
            /// # Errors
            /// `quantity.out-of-range` outside [`Self::MINIMUM`] to [`Self::MAXIMUM`].
            pub fn new(value: Decimal) -> Result<Self, QuantityError> {
                if value < Self::MINIMUM || value > Self::MAXIMUM {
                    return Err(QuantityError::OutOfRange {
                        value,
                        minimum: Self::MINIMUM,
                        maximum: Self::MAXIMUM,
                        unit: Self::UNIT,
                    });
                }
                Ok(Self(value))
            }

            /// So many hundredths of the unit; for constants, which lie in range.
            #[allow(dead_code, reason = "every quantity offers the same constructors")]
            pub(crate) const fn from_hundredths(hundredths: u32) -> Self {
                Self(Decimal::from_parts(hundredths, 0, 0, false, 2))
            }

            /// The number, in [`Self::UNIT`].
            #[must_use]
            pub const fn value(self) -> Decimal {
                self.0
            }

            /// The number for physics, in [`Self::UNIT`]: the nearest `f64`.
            #[must_use]
            pub fn to_physics(self) -> f64 {
                // Every value in range has a nearest f64; the conversion of a Decimal cannot fail.
                self.0.to_f64().unwrap_or(f64::NAN)
            }

            /// Whether this is exactly nothing.
            #[must_use]
            pub const fn is_zero(self) -> bool {
                self.0.is_zero()
            }

            /// The sum, or `None` outside the range.
            #[must_use]
            pub fn checked_add(self, other: Self) -> Option<Self> {
                Self::new(self.0.checked_add(other.0)?).ok()
            }

            /// The difference, or `None` outside the range.
            #[must_use]
            pub fn checked_sub(self, other: Self) -> Option<Self> {
                Self::new(self.0.checked_sub(other.0)?).ok()
            }
        }

        impl TryFrom<Decimal> for $name {
            type Error = QuantityError;
            fn try_from(value: Decimal) -> Result<Self, QuantityError> {
                Self::new(value)
            }
        }

        impl From<$name> for Decimal {
            fn from(quantity: $name) -> Decimal {
                quantity.0
            }
        }

        /// For developers; what people read is written by [`crate::number`].
        impl fmt::Debug for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "{} {}", self.0, $unit)
            }
        }
    };
}

quantity!(
    /// A share in percent by mass. Negative for a difference or a relative error.
    ///
    /// ```
    /// use rust_decimal::dec;
    /// use stillroom_core::{Grams, Percent};
    /// let zinc_oxide = Percent::new(dec!(4))?;
    /// assert_eq!(zinc_oxide.of(Grams::new(dec!(240))?), Some(Grams::new(dec!(9.6))?));
    /// assert!(Percent::new(dec!(2_000_000)).is_err());
    /// # Ok::<(), stillroom_core::QuantityError>(())
    /// ```
    Percent, "%", Decimal::from_parts(1_000_000, 0, 0, true, 0), Decimal::from_parts(1_000_000, 0, 0, false, 0)
);
quantity!(
    /// A mass in grams, from nothing to a thousand tonnes.
    Grams, "g", Decimal::ZERO, Decimal::from_parts(1_000_000_000, 0, 0, false, 0)
);
quantity!(
    /// A volume in millilitres.
    Millilitres, "mL", Decimal::ZERO, Decimal::from_parts(1_000_000_000, 0, 0, false, 0)
);
quantity!(
    /// Mass per volume in grams per millilitre at room temperature (20 to 25 °C), for liquids, powders and solids a
    /// maker handles.
    Density, "g/mL", Decimal::from_parts(1, 0, 0, false, 2), Decimal::from_parts(20, 0, 0, false, 0)
);

quantity!(
    /// A temperature in degrees Celsius, from the coldest freezer to the hottest oil a bench sees.
    Celsius, "°C", Decimal::from_parts(100, 0, 0, true, 0), Decimal::from_parts(300, 0, 0, false, 0)
);
quantity!(
    /// A pH.
    Ph, "pH", Decimal::ZERO, Decimal::from_parts(14, 0, 0, false, 0)
);

impl Percent {
    /// The whole.
    pub const HUNDRED: Self = Self(Decimal::ONE_HUNDRED);

    /// This share of a mass. `None` if the share is negative or the result leaves the range of [`Grams`].
    #[must_use]
    pub fn of(self, whole: Grams) -> Option<Grams> {
        Grams::new(self.0.checked_mul(whole.0)?.checked_div(Decimal::ONE_HUNDRED)?).ok()
    }

    /// What share `part` is of `whole`. `None` if the whole is nothing or the share leaves the range.
    #[must_use]
    pub fn from_share(part: Grams, whole: Grams) -> Option<Self> {
        Self::new(part.0.checked_mul(Decimal::ONE_HUNDRED)?.checked_div(whole.0)?).ok()
    }
}

impl Millilitres {
    /// What this volume weighs at a density. `None` outside the range of [`Grams`].
    #[must_use]
    pub fn mass_at(self, density: Density) -> Option<Grams> {
        Grams::new(self.0.checked_mul(density.0)?).ok()
    }
}

impl Grams {
    /// What room this mass takes at a density. `None` outside the range of [`Millilitres`].
    #[must_use]
    pub fn volume_at(self, density: Density) -> Option<Millilitres> {
        Millilitres::new(self.0.checked_div(density.0)?).ok()
    }
}

mod exact_text {
    use super::{Decimal, Deserializer, ExactText, Serializer};

    pub(super) fn serialize<S: Serializer>(value: &Decimal, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(value)
    }

    pub(super) fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Decimal, D::Error> {
        deserializer.deserialize_str(ExactText)
    }
}

/// An amount of money in one currency. Two currencies never add up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Money {
    #[serde(with = "exact_text")]
    amount: Decimal,
    currency: Currency,
}

/// A currency by its ISO 4217 code.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Currency([u8; 3]);

impl Currency {
    /// Reads a three-letter code.
    ///
    /// # Errors
    /// `quantity.not-a-currency` unless `code` is three capital letters A to Z.
    pub fn new(code: &str) -> Result<Self, QuantityError> {
        match code.as_bytes() {
            [a, b, c] if [a, b, c].iter().all(|letter| letter.is_ascii_uppercase()) => Ok(Self([*a, *b, *c])),
            _ => Err(QuantityError::NotACurrency),
        }
    }

    /// The three letters.
    #[must_use]
    pub fn code(&self) -> &str {
        core::str::from_utf8(&self.0).unwrap_or("???")
    }
}

impl TryFrom<String> for Currency {
    type Error = QuantityError;
    fn try_from(code: String) -> Result<Self, QuantityError> {
        Self::new(&code)
    }
}

impl From<Currency> for String {
    fn from(currency: Currency) -> Self {
        currency.code().to_owned()
    }
}

impl Money {
    /// An amount in a currency.
    #[must_use]
    pub const fn new(amount: Decimal, currency: Currency) -> Self {
        Self { amount, currency }
    }

    /// The amount, in units of the currency.
    #[must_use]
    pub const fn amount(self) -> Decimal {
        self.amount
    }

    /// The currency.
    #[must_use]
    pub const fn currency(self) -> Currency {
        self.currency
    }

    /// The sum, or `None` for two currencies or past the largest decimal.
    #[must_use]
    pub fn checked_add(self, other: Self) -> Option<Self> {
        if self.currency != other.currency {
            return None;
        }
        Some(Self::new(self.amount.checked_add(other.amount)?, self.currency))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use rust_decimal::dec;

    #[test]
    fn a_quantity_refuses_what_lies_outside_its_range_and_names_the_range() {
        let error = Grams::new(dec!(-1)).unwrap_err();
        assert_eq!(error.code(), "quantity.out-of-range");
        assert_eq!(error.to_string(), "-1 g is outside 0 to 1000000000 g");
        assert!(Density::new(Decimal::ZERO).is_err(), "a division by density must never be by zero");
    }

    #[test]
    fn quantities_cross_the_seam_as_exact_text() {
        let percent = Percent::new(dec!(0.1)).unwrap();
        assert_eq!(serde_json::to_string(&percent).unwrap(), "\"0.1\"");
        assert_eq!(serde_json::from_str::<Percent>("\"0.1\"").unwrap(), percent);
        assert!(serde_json::from_str::<Grams>("\"-3\"").is_err());
    }

    #[test]
    fn two_currencies_do_not_add_up() {
        let euro = Money::new(dec!(2.50), Currency::new("EUR").unwrap());
        let franc = Money::new(dec!(2.50), Currency::new("CHF").unwrap());
        assert_eq!(euro.checked_add(euro).map(Money::amount), Some(dec!(5.00)));
        assert_eq!(euro.checked_add(franc), None);
        assert_eq!(Currency::new("eur"), Err(QuantityError::NotACurrency));
    }
}
