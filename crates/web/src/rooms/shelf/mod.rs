//! The shelf of formulas, and the invented examples on it.

pub mod command;
mod due;
mod edit;
pub(crate) mod example;
mod further;
pub(crate) mod present;
pub mod view;
