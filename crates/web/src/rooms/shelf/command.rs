//! What the page can ask of the shelf.

use crate::contract::commands::commands;
use serde::{Deserialize, Serialize};
use stillroom_core::{FormulaId, WrittenIn};

/// In which order the shelf stands.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ShelfOrder {
    /// The last changed first.
    #[default]
    Changed,
    /// By name.
    Name,
}

/// An invented formula that teaches one thing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Example {
    /// What a composite brings is counted.
    GelCream,
    /// Without water there is nothing to preserve.
    Balm,
    /// The pH decides how much of a preservative acts.
    Toner,
    /// Of a surfactant what counts is the active matter.
    CleansingGel,
}

impl Example {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 4] = [Self::GelCream, Self::Balm, Self::Toner, Self::CleansingGel];
}

commands! {
    /// What the page can ask of the shelf. Text fields carry what was typed, as it was typed.
    pub enum ShelfCommand;

    /// Put an empty formula on the shelf and open it.
    "new-formula" NewFormula {
        /// Whether its numbers will be grams of an old batch.
        basis: WrittenIn as "\"percent\" | \"grams\"",
    },
    /// Open a formula.
    "open-formula" OpenFormula {
        /// Which.
        formula: FormulaId as "string",
    },
    /// Put a copy of a formula on the shelf and open it.
    "duplicate-formula" DuplicateFormula {
        /// Which.
        formula: FormulaId as "string",
    },
    /// Give a formula another name.
    "rename-formula" RenameFormula {
        /// Which.
        formula: FormulaId as "string",
        /// Its name.
        name: String as "string",
    },
    /// File a formula under words of the maker's own.
    "tag-formula" TagFormula {
        /// Which.
        formula: FormulaId as "string",
        /// Its tags, with commas between.
        text: String as "string",
    },
    /// Show what is filed under a tag, and no more of what is not; empty for everything.
    "show-tag" ShowTag {
        /// The tag.
        tag: String as "string",
    },
    /// Take a formula off the shelf.
    "delete-formula" DeleteFormula {
        /// Which.
        formula: FormulaId as "string",
    },
    /// Open an invented example, and put it on the shelf where it is not there.
    "see-example" SeeExample {
        /// Which.
        example: Example as "Example",
    },
    /// Look for formulas by a part of their name.
    "search-shelf" SearchShelf {
        /// What was typed.
        text: String as "string",
    },
    /// Put the shelf into another order.
    "sort-shelf" SortShelf {
        /// By name, or the last changed first.
        order: ShelfOrder as "\"changed\" | \"name\"",
    },
    /// Look at the shelf, or away from it: it is worked out only while somebody looks.
    "look-at-shelf" LookAtShelf {
        /// Whether the page shows it.
        looking: bool as "boolean",
    },
    /// Look further along the shelf.
    "look-further" LookFurther {},
}
