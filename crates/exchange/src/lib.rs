//! Ways in and out of Stillroom: records kept on a device now; links, backups and tables as they come.
//!
//! **Owns** the written form of everything that leaves memory, and its versions: what a released version wrote is read
//! for ever.
//!
//! **Must not know** where a record is kept or how an error is worded. It never panics on what it reads.
#![forbid(unsafe_code)]

pub mod archive;
pub mod backup;
pub mod batch;
pub mod extract;
pub mod holding;
pub mod json;
pub mod label;
pub mod link;
pub mod parcel;
pub mod prices;
pub mod recipe;
pub mod record;
#[cfg(test)]
mod schema;
pub mod table;
pub mod versions;
