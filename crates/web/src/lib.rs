//! The session behind the page: state, undo, storage and the typed seam.
//!
//! **Owns** what the maker is doing: the formulas and materials on this device, which of them is open, what can be
//! undone, where it is kept, and every text and number the page shows, already formatted for the reader.
//!
//! **Must not know** how anything is drawn. Only [`seam`] knows that a browser exists; everything else is
//! tested natively with a store in memory and a clock that is told the time.
//!
//! # The seam
//! A [`Command`](rooms::command::Command) goes in, an [`Update`](contract::view::Update) comes out: the parts of the view that changed.
//! What a person typed never throws; a text that is not understood is an entry in [`Answer`](contract::view::Answer).

pub mod contract;
pub mod lazy;
pub mod messages;
pub mod rooms;
pub mod seam;
pub mod session;
