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

// Without the whole, rooms beyond the main job are not reached, and the linker leaves them out.
#![cfg_attr(not(feature = "whole"), allow(dead_code))]

#[cfg(feature = "whole")]
mod backup;
#[cfg(any(feature = "whole", not(feature = "reader")))]
pub mod browser;
#[cfg(feature = "whole")]
pub mod calendar;
pub mod command;
#[cfg(feature = "whole")]
mod compare;
mod demo;
mod edit_batch;
#[cfg(feature = "whole")]
mod edit_extract;
mod edit_formula;
mod edit_holding;
#[cfg(feature = "whole")]
mod edit_journal;
mod edit_material;
#[cfg(feature = "whole")]
mod edit_run;
#[cfg(feature = "whole")]
pub mod evaluate;
#[cfg(feature = "whole")]
mod extracts;
#[cfg(feature = "whole")]
mod findings;
mod history;
pub mod keeping;
mod materials;
#[cfg(feature = "whole")]
mod offer_extract;
mod present_batch;
#[cfg(feature = "whole")]
mod present_card;
#[cfg(feature = "whole")]
mod present_extract;
mod present_formula;
#[cfg(feature = "whole")]
mod present_heat;
mod present_holding;
mod present_jar;
#[cfg(feature = "whole")]
mod present_journal;
mod present_material;
#[cfg(feature = "whole")]
mod present_record;
#[cfg(feature = "whole")]
mod present_run;
mod present_shelf;
#[cfg(feature = "whole")]
mod qr;
#[cfg(feature = "reader")]
mod reading;
#[cfg(feature = "whole")]
mod run_facts;
#[cfg(any(feature = "whole", not(feature = "reader")))]
pub mod seam;
#[cfg(feature = "reader")]
pub mod seam_reader;
pub mod sentences;
#[cfg(feature = "whole")]
mod sentences_card;
#[cfg(feature = "whole")]
mod sentences_extract;
#[cfg(feature = "whole")]
mod sentences_findings;
#[cfg(feature = "whole")]
mod sentences_findings_words;
mod sentences_material;
#[cfg(feature = "whole")]
mod sentences_run;
#[cfg(feature = "reader")]
mod sentences_shared;
pub mod session;
pub mod settings;
#[cfg(feature = "whole")]
pub mod shared;
#[cfg(feature = "whole")]
mod versions;
pub mod view;
#[cfg(feature = "whole")]
pub mod view_backup;
#[cfg(feature = "whole")]
pub mod view_extract;
#[cfg(feature = "whole")]
pub mod view_findings;
#[cfg(feature = "whole")]
pub mod view_run;
#[cfg(feature = "reader")]
pub mod view_shared;
#[cfg(feature = "whole")]
pub mod write_up;
