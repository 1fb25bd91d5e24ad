//! How large a batch, on which scales: the weigh sheet and the settings of this device.

pub mod command;
mod edit;
mod present;
pub mod view;
