//! The rooms: one folder each with what it edits, how it presents it, what the page sees of it and what it says.

pub mod command;
mod desk;
mod long_text;
pub(crate) mod said;
pub mod update;

pub mod batches;
pub mod bench;
pub mod costs;
pub mod extracts;
pub mod findings;
pub mod formula;
pub mod jar;
pub mod label;
pub mod materials;
pub mod paste;
pub mod ph;
pub mod post;
pub mod share;
pub mod shelf;
pub mod swap;
