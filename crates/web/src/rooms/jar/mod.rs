//! What is really in the jar.

mod present;
pub mod view;
