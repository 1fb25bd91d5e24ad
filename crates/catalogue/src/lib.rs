//! The materials a maker buys, each value with its source.
//!
//! **Owns** the data files, the rules they obey, their packed form, and the search over materials.
//!
//! **Must not know** how a formula is computed (it answers [`MaterialSource`] and nothing more), what language a page
//! speaks, or that a browser exists. It reads no file while running: everything is packed in by the build.
//!
//! # Invariants
//! - A number of a material or constituent is never taken back: links that people have shared depend on it.
//! - Every value names a source of the bibliography and a [`Basis`].
//! - A page pays only for the tables it asks for: the larger ones are separate, behind their own functions.
#![forbid(unsafe_code)]

pub mod acids;
mod catalogue;
mod fold;
pub mod kinship;
pub mod knowledge;
mod packed;
#[cfg(feature = "tables")]
mod packing;
pub mod property;
mod recognise;
pub mod reference;
mod search;
mod stored;
#[cfg(feature = "tables")]
pub mod tables;

pub use catalogue::{
    Catalogue, ComponentOfComposite, MaterialCard, MaterialDetails, Origin, Source, Value, catalogue_bytes,
};
pub use fold::folded;
pub use kinship::groups;
pub use knowledge::knowledge;
pub use property::{Basis, Kind, Property};
pub use recognise::{Confidence, Recognised};
pub use search::{Favour, Field, Filter, Hit, IndexEntry, MaterialIndex};
pub use stillroom_core::MaterialSource;
