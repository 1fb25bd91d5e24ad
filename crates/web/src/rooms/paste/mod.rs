//! A recipe that a maker already has, read from text or a table and made a formula.

pub mod command;
pub(crate) mod edit;
mod present;
pub mod view;
