//! The open formula: phases, lines, amounts.

pub mod command;
pub(crate) mod edit;
pub(crate) mod present;
pub mod view;
