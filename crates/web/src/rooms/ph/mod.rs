//! The pH of the open formula: what it comes to, what brings it to a target, how it drifts, in words and pictures.

pub mod command;
pub(crate) mod edit;
pub(crate) mod offer;
mod plots;
mod present;
pub(crate) mod sentences;
pub mod view;
