//! The post: the page that a maker publishes about a formula, made in one act. What it may say is worked out in a session
//! that holds the formula and nothing else of the maker's (`public`), so that no price, lot, stock or record can be in it.

mod block;
mod card;
pub mod command;
mod edit;
mod gather;
mod how_to;
mod larger;
mod links;
mod method;
mod parts;
mod present;
mod public;
mod titles;
pub mod view;
mod written;
