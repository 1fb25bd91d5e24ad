//! The extract room: plan a plant extract in glycerin, adjust it, verify it, judge whether it keeps, and make up
//! solutions.
//!
//! ```text
//! Plan ── press ──▶ Liquid ── describe ──▶ readings to expect, water activity
//!  ▲                 │  ▲
//!  └─ solve ─ wanted │  └─ adjust: strengthen, dilute, blend, evaporated
//!                    └─ verify: a reading ──▶ glycerin percent
//! ```
//!
//! Masses are [`Decimal`] and conserved: what goes in comes out, as liquid or held back. Physics is `f64`, entered through
//! [`Liquid::masses`].

pub mod adjust;
pub mod describe;
pub mod keeping;
pub mod liquid;
pub mod plan;
pub mod solve;
pub mod stock;
pub mod verify;

pub use adjust::{Addition, Adjusted, Blend, Evaporated};
pub use describe::Description;
pub use keeping::{Keeping, judge_keeping};
pub use liquid::{Level, Liquid, Part, Solids, Solvent};
pub use plan::{MarcRetention, Plan, Plant, Pressed, SolubleShare};
pub use solve::{Basis, Size, Strength};
pub use verify::{Reading, Scale, Verified};

use crate::arithmetic::ArithmeticError;
use crate::chemistry::PhysicsError;
use crate::quantity::{Grams, Percent, QuantityError};
use rust_decimal::Decimal;

/// Why the extract room has no answer.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ExtractError {
    /// A result is no quantity any more.
    #[error(transparent)]
    Quantity(#[from] QuantityError),
    /// A sum has no answer.
    #[error(transparent)]
    Arithmetic(#[from] ArithmeticError),
    /// An equation does not reach there.
    #[error(transparent)]
    Physics(#[from] PhysicsError),
    /// A share must lie between nothing and the whole.
    #[error("{quantity} is {value} %, outside {minimum} to {maximum} %")]
    NotAShare {
        /// Which share.
        quantity: &'static str,
        /// What was given.
        value: Decimal,
        /// Least it may be.
        minimum: Decimal,
        /// Most it may be.
        maximum: Decimal,
    },
    /// The marc or the air takes all the liquid there is.
    #[error("{taken:?} are taken from {available:?} of {what}")]
    NothingLeft {
        /// Of what.
        what: &'static str,
        /// How much is taken.
        taken: Grams,
        /// How much there is.
        available: Grams,
    },
    /// The target cannot be reached with what there is.
    #[error("{target} {unit} cannot be reached ({reason:?}); nearest possible is {nearest} {unit}")]
    OutOfReach {
        /// What was asked for.
        target: Decimal,
        /// The nearest that can be had.
        nearest: Decimal,
        /// Unit of both.
        unit: &'static str,
        /// What stands in the way.
        reason: Reason,
    },
    /// A liquid that stood open cannot weigh more than before.
    #[error("{now:?} now is more than {before:?} before")]
    GainedMass {
        /// Mass before.
        before: Grams,
        /// Mass now.
        now: Grams,
    },
    /// No such liquid shows this reading.
    #[error("the reading {reading} lies outside {minimum} to {maximum}, which such a liquid can show")]
    ReadingOutside {
        /// What was read.
        reading: f64,
        /// Least reading such a liquid shows.
        minimum: f64,
        /// Greatest reading such a liquid shows.
        maximum: f64,
    },
    /// Two readings are needed from two kinds of instrument.
    #[error("{count} readings of {kinds} kinds; one reading, or one of each kind, is wanted")]
    UnusableReadings {
        /// How many readings were given.
        count: usize,
        /// Of how many kinds.
        kinds: usize,
    },
}

/// What stands in the way of a target.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reason {
    /// The plant's own water dilutes more than that, even if none is added.
    PlantWater,
    /// Nothing here is strong enough.
    NothingStronger,
    /// Nothing here is weak enough.
    NothingWeaker,
    /// There is not enough of it.
    NotEnough,
}

impl Reason {
    /// Stable code of this reason.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::PlantWater => "plant-water",
            Self::NothingStronger => "nothing-stronger",
            Self::NothingWeaker => "nothing-weaker",
            Self::NotEnough => "not-enough",
        }
    }
}

impl ExtractError {
    /// Every code of this module's own; those of quantity, arithmetic and physics pass through.
    pub const CODES: [&'static str; 6] = [
        "extract.not-a-share",
        "extract.nothing-left",
        "extract.out-of-reach",
        "extract.gained-mass",
        "extract.reading-outside",
        "extract.unusable-readings",
    ];

    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Quantity(error) => error.code(),
            Self::Arithmetic(error) => error.code(),
            Self::Physics(error) => error.code(),
            Self::NotAShare { .. } => "extract.not-a-share",
            Self::NothingLeft { .. } => "extract.nothing-left",
            Self::OutOfReach { .. } => "extract.out-of-reach",
            Self::GainedMass { .. } => "extract.gained-mass",
            Self::ReadingOutside { .. } => "extract.reading-outside",
            Self::UnusableReadings { .. } => "extract.unusable-readings",
        }
    }
}

type Result<T> = core::result::Result<T, ExtractError>;

/// A share between `minimum` and the whole.
fn check_share(quantity: &'static str, share: Percent, minimum: Decimal) -> Result<Decimal> {
    let (value, maximum) = (share.value(), Decimal::ONE_HUNDRED);
    if value < minimum || value > maximum {
        return Err(ExtractError::NotAShare { quantity, value, minimum, maximum });
    }
    Ok(value)
}

/// A share of a mass; the share is known to lie in 0 to 100 %.
fn share_of(mass: Grams, percent: Decimal) -> Result<Grams> {
    scale_mass(mass, percent, Decimal::ONE_HUNDRED)
}

/// Decimal places a computed mass is kept to: with these every sum of masses fits into a decimal, and is exact.
const MASS_PLACES: u32 = 15;

/// `mass · numerator / denominator`, to [`MASS_PLACES`].
fn scale_mass(mass: Grams, numerator: Decimal, denominator: Decimal) -> Result<Grams> {
    let scaled = mass.value().checked_mul(numerator).and_then(|product| product.checked_div(denominator));
    Ok(Grams::new(scaled.ok_or(ArithmeticError::TooLarge)?.round_dp(MASS_PLACES))?)
}

fn add(a: Grams, b: Grams) -> Result<Grams> {
    a.checked_add(b).ok_or(ExtractError::Arithmetic(ArithmeticError::TooLarge))
}

/// What is left of `available` when `taken` goes.
fn take(what: &'static str, available: Grams, taken: Grams) -> Result<Grams> {
    available.checked_sub(taken).ok_or(ExtractError::NothingLeft { what, taken, available })
}
