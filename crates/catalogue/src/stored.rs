//! The catalogue as rows: made by the build from the data files, and again from the packed form while running.

use crate::property::{Basis, Property};
use rust_decimal::Decimal;
use std::borrow::Cow;
use stillroom_terms::{Class, PhaseKind};

/// A decimal number as digits and the place of its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Figure {
    /// The digits without the point.
    pub digits: i64,
    /// How many of them stand after the point.
    pub places: u8,
}

impl Figure {
    /// The number.
    pub fn unpack(self) -> Decimal {
        Decimal::try_new(self.digits, u32::from(self.places)).unwrap_or_default()
    }
}

/// Where a fact was found: the source's place in the list, the spot in it, and the basis.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StoredOrigin<'a> {
    pub source: u16,
    pub locator: &'a str,
    pub basis: Basis,
}

/// A row of the bibliography.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StoredSource<'a> {
    pub slug: &'a str,
    pub citation: &'a str,
    pub as_of: &'a str,
    pub kind: &'a str,
}

/// A constituent.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StoredConstituent<'a> {
    pub number: u32,
    pub inci: &'a str,
    /// Registry numbers without hyphens.
    pub cas: Vec<u32>,
    pub class: Class,
    pub formula: &'a str,
    /// Places in the list of functions.
    pub functions: Vec<u8>,
    pub origin: StoredOrigin<'a>,
}

/// A material.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StoredMaterial<'a> {
    pub number: u32,
    pub name: &'a str,
    /// Parted by `;`.
    pub other_names: &'a str,
    /// Parted by `;`: names in other languages and in kitchens, for the search alone.
    pub further_names: Cow<'a, str>,
    pub class: Class,
    pub phase: PhaseKind,
    /// The constituent of a simple material; nothing for a composite.
    pub constituent: Option<u32>,
    pub origin: StoredOrigin<'a>,
}

/// One part of a composite.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StoredPart<'a> {
    pub material: u32,
    pub part: u32,
    /// Nothing for quantum satis.
    pub percent: Option<Figure>,
    pub note: &'a str,
    pub origin: StoredOrigin<'a>,
}

/// What a property belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Subject {
    /// A material, as it is sold.
    Material(u32),
    /// A constituent, wherever it comes from.
    Constituent(u32),
}

/// One value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StoredValue<'a> {
    pub subject: Subject,
    pub property: Property,
    pub value: Option<Figure>,
    pub minimum: Option<Figure>,
    pub maximum: Option<Figure>,
    pub conditions: &'a str,
    pub note: &'a str,
    pub origin: StoredOrigin<'a>,
}

impl StoredValue<'_> {
    /// Whether it was read at the temperature of a room, as a density to compute with has to be.
    pub fn is_at_room_temperature(&self) -> bool {
        ["20 °C", "25 °C"].iter().any(|room| self.conditions.starts_with(room))
    }
}

/// Everything a page needs at once.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Stored<'a> {
    pub sources: Vec<StoredSource<'a>>,
    pub functions: Vec<&'a str>,
    pub constituents: Vec<StoredConstituent<'a>>,
    pub materials: Vec<StoredMaterial<'a>>,
    pub parts: Vec<StoredPart<'a>>,
    pub values: Vec<StoredValue<'a>>,
}
