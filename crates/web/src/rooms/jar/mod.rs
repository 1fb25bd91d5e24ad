//! What is really in the jar.

pub(crate) mod present;
pub mod view;
