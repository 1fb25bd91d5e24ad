//! Extracts: a glycerite or solution planned, made, verified and used.

pub(crate) mod brewing;
pub mod command;
mod edit;
mod offer;
mod present;
pub(crate) mod sentences;
pub mod view;
