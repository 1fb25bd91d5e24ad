//! Making it with what one has: a line swapped, the formula rebuilt from a shelf, lines brought to a figure; before and after.

pub mod command;
mod compare;
mod edit;
mod figure;
pub(crate) mod measured;
mod offer;
mod present;
pub mod reading;
pub(crate) mod sentences;
mod shelf;
pub(crate) mod table;
pub mod view;
mod ways;
