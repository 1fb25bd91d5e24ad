//! The session behind the page: state, undo, storage and the typed seam.
//!
//! **Owns** what the maker is doing: the formulas and materials on this device, which of them is open, what can be
//! undone, where it is kept, and every text and number the page shows, already formatted for the reader.
//!
//! **Must not know** how anything is drawn. Only [`browser`] and [`seam`] know that a browser exists; everything else is
//! tested natively with a store in memory and a clock that is told the time.
//!
//! # The seam
//! A [`Command`](command::Command) goes in, an [`Update`](view::Update) comes out: the parts of the view that changed.
//! What a person typed never throws; a text that is not understood is an entry in [`Answer`](view::Answer).

mod backup;
pub mod browser;
pub mod calendar;
pub mod command;
mod compare;
mod demo;
mod edit_batch;
mod edit_extract;
mod edit_formula;
mod edit_holding;
mod edit_journal;
mod edit_material;
mod edit_run;
pub mod evaluate;
mod extracts;
mod findings;
mod history;
pub mod keeping;
pub mod lazy;
mod limits;
mod materials;
mod offer_extract;
mod present_batch;
mod present_card;
mod present_extract;
mod present_formula;
mod present_heat;
mod present_holding;
mod present_jar;
mod present_journal;
mod present_material;
mod present_record;
mod present_run;
mod present_shelf;
mod qr;
mod reading;
mod run_facts;
pub mod seam;
pub mod sentences;
mod sentences_card;
mod sentences_extract;
mod sentences_findings;
mod sentences_material;
mod sentences_run;
mod sentences_shared;
pub mod session;
pub mod settings;
pub mod shared;
mod versions;
pub mod view;
pub mod view_backup;
pub mod view_extract;
pub mod view_findings;
pub mod view_run;
pub mod view_shared;
pub mod write_up;
