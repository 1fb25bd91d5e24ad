//! What the checks found in the open formula, and its cures.

pub mod command;
pub(crate) mod present;
pub(crate) mod sentences;
pub mod view;
