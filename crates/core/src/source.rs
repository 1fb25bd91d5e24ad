//! Where a fact comes from and how far it may be trusted.

use serde::{Deserialize, Serialize};

/// How far a value may be trusted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Basis {
    /// The figure was read in a copy of the named source.
    Published,
    /// The figure was computed from a published equation or by a named program.
    Computed,
    /// What sellers of this material usually state; another lot may differ.
    SupplierTypical,
    /// Recalled from the named source and not read again: to be checked before it decides anything.
    Memory,
}

impl Basis {
    /// Every basis, the most trusted first.
    pub const ALL: [Self; 4] = [Self::Published, Self::Computed, Self::SupplierTypical, Self::Memory];

    /// The word used in the data files and on screen.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::Computed => "computed",
            Self::SupplierTypical => "supplier-typical",
            Self::Memory => "memory",
        }
    }

    /// The basis behind a word of the data files.
    #[must_use]
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|basis| basis.slug() == slug)
    }
}

/// Where a fact was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Citation {
    /// The source.
    pub source: &'static str,
    /// The spot in it. May be empty.
    pub locator: &'static str,
    /// Year, or the day to which it was valid. May be empty.
    pub as_of: &'static str,
    /// How far to trust it.
    pub basis: Basis,
}

impl Citation {
    /// A rule every workshop knows and nobody published.
    pub const COMMON_PRACTICE: Self = Self::recalled("Common practice");

    /// A source recalled and not read again.
    #[must_use]
    pub const fn recalled(source: &'static str) -> Self {
        Self { source, locator: "", as_of: "", basis: Basis::Memory }
    }

    /// A source that was read.
    #[must_use]
    pub const fn published(source: &'static str) -> Self {
        Self { source, locator: "", as_of: "", basis: Basis::Published }
    }
}

/// A value and where it was found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cited<T> {
    /// The value.
    pub value: T,
    /// Where it was found.
    pub citation: Citation,
}
