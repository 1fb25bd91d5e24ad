//! Where a fact comes from and how far it may be trusted.

pub use stillroom_terms::Basis;

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
