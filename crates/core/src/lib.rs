//! What is really in the jar: quantities, formulas, composition, scaling, chemistry.
//!
//! **Owns** every computation Stillroom makes and every rule about when an answer may be given.
//!
//! **Must not know** where materials are stored (it is handed a [`MaterialSource`]), how text is worded for a
//! person (it returns codes and values), or that a browser exists. It does no input or output, reads no clock and
//! draws no random number: what it needs of these is passed in.
//!
//! # Invariants
//! - A percent, a mass or a price is a [`rust_decimal::Decimal`] in a newtype; nothing is compared with an epsilon.
//! - Only `checked_` arithmetic touches a number a person typed: no input panics.
//! - Physics is `f64`, entered and left through named conversions; outside an equation's valid range the answer is an
//!   error, never an extrapolated number.
#![forbid(unsafe_code)]

pub mod amount;
pub mod apportion;
pub mod arithmetic;
pub mod balance;
pub mod batch_plan;
pub mod checks;
pub mod chemistry;
pub mod colour;
pub mod composition;
pub mod cost;
pub mod day;
pub mod decay;
pub mod evaluation;
pub mod extract;
pub mod formula;
pub mod label;
pub mod material;
pub mod number;
pub mod packaging;
pub mod product;
pub mod quantity;
pub mod rebuild;
pub mod run;
pub mod scale_up;
pub mod scaling;
pub mod shelf_life;
pub mod source;
pub mod unit;
pub mod weigh_sheet;

pub use amount::Amount;
pub use formula::{Formula, FormulaId, Line, LineId, Phase, PhaseId, Place, SetAside};
pub use material::{Constituent, ConstituentId, Makeup, Material, MaterialId, MaterialSource, Part};
pub use product::ProductKind;
pub use quantity::{Celsius, Currency, Density, Grams, Millilitres, Money, Percent, Ph, QuantityError};
pub use stillroom_terms::{Class, Layer, PhaseKind, Purpose, WrittenIn};
