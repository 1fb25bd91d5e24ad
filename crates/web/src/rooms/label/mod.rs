//! The label of the open formula: its ingredients in order, what else it has to say, and how it stands on it.

pub mod command;
mod contents;
mod dates;
mod declared;
mod edit;
mod fields;
mod naming;
mod present;
mod print;
mod remarks;
pub(crate) mod sentences;
pub mod view;
