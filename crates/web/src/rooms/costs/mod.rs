//! What a batch of the open formula costs, what has to be bought for it, and the containers it fills.

pub mod command;
mod containers;
mod edit;
mod fields;
mod kinds;
mod needs;
mod present;
mod prices;
pub(crate) mod sentences;
mod shopping;
pub mod view;
