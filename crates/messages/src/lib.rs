//! Compiles the message files of every language: what a person reads, in Fluent syntax, one file a room.
//!
//! **Owns** how a message file becomes code. For the session that is a function a message, which fills a pattern of a packed
//! table; for the page, a script of its fixed texts, of messages whose name begins with `page-`. A table and a script are
//! made for each language and each piece of the seam, so that a page fetches one language and what it needs of it.
//!
//! **Must not know** what the messages say. It runs at build time only and is no part of what a page downloads.
//!
//! A message whose name begins with `default-` is a name that is kept though nobody chose it; beside its function there is one
//! with `_anywhere` behind its name that knows it in every language.
//!
//! Of Fluent it takes messages with text, variables and selections. A variable that is selected on by plural category is a
//! count; every other is a text that was formatted already.

#![forbid(unsafe_code)]

mod code;
mod names;
mod pattern;
mod read;
mod script;

pub use code::write_code;
pub use names::{pack_names, pack_words};
pub use pattern::{Argument, Kind, Part, Pattern};
pub use read::{Catalogue, Message, MessageError, read};
pub use script::{rooms_of_page, write_script, write_script_types};

/// The languages there are, the one that every other is held to first.
pub const LANGUAGES: [&str; 3] = ["en", "de", "fr"];

/// A part of the seam that is fetched by itself, with the rooms whose messages go along with it.
pub struct Piece {
    /// Its name, as in the name of its table.
    pub name: &'static str,
    /// Message files, without their ending.
    pub rooms: &'static [&'static str],
}

/// What is packed beside the messages, for every language but the first: the names of materials, and the texts of the
/// catalogue's tables.
pub const BESIDE: [&str; 2] = ["names", "words"];

/// Every piece.
pub const PIECES: [Piece; 4] = [
    Piece { name: "main", rooms: &["common", "desk", "shelf", "formula", "jar", "bench", "embed", "html", "docs"] },
    Piece { name: "share", rooms: &["share"] },
    Piece {
        name: "whole",
        rooms: &[
            "materials",
            "findings",
            "extracts",
            "batches",
            "ph",
            "label",
            "post",
            "costs",
            "settings",
            "paste",
            "about",
            "examples",
            "terms",
        ],
    },
    Piece { name: "swap", rooms: &["swap"] },
];
