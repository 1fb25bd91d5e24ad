//! The batches: what is weighed and done at the bench, the record of it, and the journal of what became of it.

mod acidity;
pub mod calendar;
mod card;
pub mod command;
pub(crate) mod edit;
mod edit_journal;
mod facts;
mod heat;
mod present;
mod present_acidity;
mod present_journal;
mod record;
pub(crate) mod sentences;
pub mod view;
