//! Materials and the constituents they bring.

use crate::amount::Amount;
use crate::quantity::Density;
use core::fmt;
use core::str::FromStr;
use serde::{Deserialize, Serialize};
use stillroom_terms::Class;
use stillroom_terms::PhaseKind;

/// A reference to something a maker can weigh out. Written `c101`, `o5f3a…` or `f9c01…`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(try_from = "String", into = "String")]
pub enum MaterialId {
    /// A material of the catalogue, by its number. Numbers are never reused.
    Catalogue(u32),
    /// A material the maker described on this device.
    Own(u64),
    /// Another formula, used as a material.
    Formula(u64),
}

/// A text that names no material.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("`{0}` is no material reference")]
pub struct UnknownReference(pub String);

impl fmt::Display for MaterialId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Catalogue(number) => write!(f, "c{number}"),
            Self::Own(number) => write!(f, "o{number:016x}"),
            Self::Formula(number) => write!(f, "f{number:016x}"),
        }
    }
}

impl FromStr for MaterialId {
    type Err = UnknownReference;
    fn from_str(text: &str) -> Result<Self, UnknownReference> {
        let unknown = || UnknownReference(text.chars().take(32).collect());
        let (kind, number) = text.split_at_checked(1).ok_or_else(unknown)?;
        let wide = |number: &str| u64::from_str_radix(number, 16).map_err(|_| unknown());
        match kind {
            "c" => number.parse().map(Self::Catalogue).map_err(|_| unknown()),
            "o" => wide(number).map(Self::Own),
            "f" => wide(number).map(Self::Formula),
            _ => Err(unknown()),
        }
    }
}

impl TryFrom<String> for MaterialId {
    type Error = UnknownReference;
    fn try_from(text: String) -> Result<Self, UnknownReference> {
        text.parse()
    }
}

impl From<MaterialId> for String {
    fn from(id: MaterialId) -> Self {
        id.to_string()
    }
}

/// A reference to one INCI-named substance.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum ConstituentId {
    /// A constituent of the catalogue, by its number. Numbers are never reused.
    Catalogue(u32),
    /// A substance the maker named on this device.
    Own(u64),
}

/// One INCI-named substance, as it ends up in the product.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Constituent {
    /// Stable reference.
    pub id: ConstituentId,
    /// Name by the International Nomenclature of Cosmetic Ingredients.
    pub inci: String,
    /// What it is, for the jar and for checks.
    pub class: Class,
}

/// What the maker weighs out: a simple substance, or a composite with a stated composition.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Material {
    /// Stable reference.
    pub id: MaterialId,
    /// Common name, as a maker says it.
    pub name: String,
    /// What it is, for search and filters.
    pub class: Class,
    /// Phase it usually goes into.
    pub usual_phase: PhaseKind,
    /// Mass per volume at room temperature, where known.
    pub density: Option<Density>,
    /// What it is made of.
    pub makeup: Makeup,
}

/// What a material is made of.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Makeup {
    /// One constituent and nothing else.
    Simple(ConstituentId),
    /// Other materials in stated amounts.
    Composite(Vec<Part>),
}

/// One part of a composite.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Part {
    /// The material that goes in.
    pub material: MaterialId,
    /// How much of it.
    pub amount: Amount,
}

/// Where materials and constituents are looked up. The catalogue, the maker's own shelf and a test's handful of
/// materials all answer this.
pub trait MaterialSource {
    /// The material behind a reference.
    fn material(&self, id: MaterialId) -> Option<&Material>;
    /// The constituent behind a reference.
    fn constituent(&self, id: ConstituentId) -> Option<&Constituent>;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reference_reads_back_as_it_was_written() {
        for id in [MaterialId::Catalogue(101), MaterialId::Own(u64::MAX), MaterialId::Formula(7)] {
            assert_eq!(id.to_string().parse(), Ok(id));
        }
        for wrong in ["", "c", "x1", "c-1", "ö1", "c99999999999"] {
            assert!(wrong.parse::<MaterialId>().is_err(), "{wrong}");
        }
    }
}
