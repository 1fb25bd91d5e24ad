//! Making it with what one has: the amounts of what is at hand that come nearest to what is wanted.
//!
//! A [`Question`] names what may go in, what is wanted and what has to hold; [`Question::solve`] answers amounts on the steps
//! of a scale with what they meet and miss, or what stands in the way. Everything that has to hold comes in as data: what the
//! checks ask from [`crate::checks::Contents::demands`]. Nothing here knows a limit or a rule of its own.

mod answer;
mod conflict;
mod formula;
pub mod program;
mod question;
mod solve;
mod stand_in;
pub mod substitutes;
#[cfg(test)]
mod tests;

pub use answer::{Answer, Bound, Conflict, GivingWay, Kept, Met, NoAnswer, Portion};
pub use conflict::METHOD;
pub use formula::{AtHand, Figure, Setting, Version};
pub use question::{Aim, Grid, MOST_OFFERS, Offer, Question, UNASKED, Wish};
pub use stand_in::StandIn;
