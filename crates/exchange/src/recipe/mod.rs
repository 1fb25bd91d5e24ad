//! Recipes as people write and send them, read line by line: a text with a material to a line, a list, a table, a few columns of
//! a spreadsheet.
//!
//! **Owns** what a line says: heading, material, amount, remark. Nothing is dropped: every line with something in it comes back
//! as one of them. **Must not know** what becomes of it. What cannot be told by the text alone, [`matching`] tells by the
//! catalogue.

mod amount;
mod cells;
mod column_words;
mod columns;
pub mod file;
pub mod heading;
pub mod matching;
mod mention;
mod reader;
pub mod shares;

pub use amount::{Household, Unit, Written};
use cells::{cleaned, parted, rows};
use columns::columns_in;
pub use columns::{Column, ColumnFound, MOST_COLUMNS};
pub use heading::Heading;
use heading::is_rule;
use reader::Reader;
use std::collections::BTreeMap;
use stillroom_core::Grams;
use stillroom_core::number::DecimalMark;

/// Longest text read, in bytes.
pub const LONGEST_TEXT: usize = 100_000;
/// Most lines read. No formula has more than some dozens.
pub const MOST_LINES: usize = 400;

/// Why a text is not read at all.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum RecipeError {
    /// It is longer than is read.
    #[error("{bytes} bytes")]
    TooLong {
        /// Its length.
        bytes: usize,
    },
    /// It has more lines than are read.
    #[error("{lines} lines")]
    TooManyLines {
        /// How many.
        lines: usize,
    },
}

impl RecipeError {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::TooLong { .. } => "recipe.too-long",
            Self::TooManyLines { .. } => "recipe.too-many-lines",
        }
    }
}

/// A line of a recipe, or a part of one that names several materials.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// Its line in the text, counted from 1.
    pub line: usize,
    /// As it is written.
    pub raw: String,
    /// What it says.
    pub what: What,
}

/// What a line says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum What {
    /// What the recipe is called, with what it makes.
    Title {
        /// The name.
        name: String,
        /// The mass it makes, where it says one.
        size: Option<Grams>,
    },
    /// How much it makes, and no name.
    Size(Grams),
    /// The name of a part.
    Heading(Heading),
    /// The head of a table.
    Head,
    /// Signs that part.
    Rule,
    /// A sum.
    Total,
    /// A sentence, or what is not understood.
    Note,
    /// A step of the method.
    Step,
    /// A material.
    Material(Mentioned),
}

/// A material as a line mentions it: the ways to read the line, the likeliest first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mentioned {
    /// The ways to read it; never empty.
    pub readings: Vec<Reading>,
    /// Letter or name of the phase, where a column or the line itself says one.
    pub phase: Option<String>,
    /// Whether it is the first line and may be the name of the recipe.
    pub may_be_title: bool,
}

/// One way to read a line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reading {
    /// Name of the material.
    pub name: String,
    /// Other names of it: what stands in brackets, or in the column for INCI names.
    pub also: Vec<String>,
    /// How much of it.
    pub amount: Written,
    /// What else the line says.
    pub remark: String,
    /// Where its amount ends: readings that end alike differ in where the name does.
    pub(super) until: usize,
}

/// A recipe as its lines say it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Recipe {
    /// Every line with something in it, in order.
    pub entries: Vec<Entry>,
    /// The columns of the table it is; none where it is none.
    pub columns: Vec<ColumnFound>,
    /// Sum of a column of grams that stands beside one of percents.
    pub grams_beside: Option<Grams>,
}

/// Reads a recipe.
///
/// # Errors
/// `recipe.too-long`, `recipe.too-many-lines`.
pub fn read(text: &str, mark: DecimalMark) -> Result<Recipe, RecipeError> {
    read_columns(text, mark, &BTreeMap::new())
}

/// Reads a recipe, where a maker says what some columns of the table hold.
///
/// # Errors
/// `recipe.too-long`, `recipe.too-many-lines`.
pub fn read_columns(text: &str, mark: DecimalMark, chosen: &BTreeMap<usize, Column>) -> Result<Recipe, RecipeError> {
    if text.len() > LONGEST_TEXT {
        return Err(RecipeError::TooLong { bytes: text.len() });
    }
    let raw = rows(text);
    let lines = raw.last().map_or(0, |(number, last)| number + last.matches('\n').count());
    if lines > MOST_LINES {
        return Err(RecipeError::TooManyLines { lines });
    }
    let clean: Vec<String> = raw.iter().map(|(_, line)| cleaned(line)).collect();
    let table = parted(&clean.iter().map(String::as_str).collect::<Vec<_>>(), mark);
    let sheet = table.map(|parting| {
        let parts = clean.iter().enumerate().filter(|(_, line)| !is_rule(line));
        let cells = parts.map(|(place, line)| (place, cells::cells(line, parting)));
        let rows: Vec<(usize, Vec<String>)> =
            cells.filter(|(_, cells)| cells.iter().filter(|cell| !cell.is_empty()).count() > 1).collect();
        columns_in(&rows, mark, chosen)
    });
    let mut reader = Reader::new(&clean, mark, table.zip(sheet));
    let mut recipe = Recipe::default();
    for (place, ((number, raw), line)) in raw.iter().zip(&clean).enumerate() {
        if line.trim().is_empty() {
            // What nobody sees is no line, but anything else is.
            continue;
        }
        for what in reader.read_line(place, line) {
            recipe.entries.push(Entry { line: *number, raw: raw.trim().to_owned(), what });
        }
    }
    recipe.grams_beside = reader.grams_beside();
    recipe.columns = reader.into_columns();
    Ok(recipe)
}
