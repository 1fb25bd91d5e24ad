//! The materials: the catalogue, the maker's own, and what there is of each.

pub mod command;
mod edit;
mod edit_holding;
mod present;
mod present_held;
mod present_holding;
pub(crate) mod sentences;
pub mod view;
