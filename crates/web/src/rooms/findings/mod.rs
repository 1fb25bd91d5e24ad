//! What the checks found in the open formula, and its cures.

pub mod command;
pub(crate) mod present;
mod reader;
pub(crate) mod sentences;
pub mod view;
