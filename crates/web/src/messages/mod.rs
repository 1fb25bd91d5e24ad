//! Every text the session says, in the language of the page.
//!
//! The texts lie in `crates/web/messages`, a folder a language and a file a room; each message is a function here that takes
//! what it says it about. The page fetches the table of its language for each piece of the seam and hands it in; natively
//! every language is there. A message whose table is not there yet is empty.

use std::cell::{Cell, RefCell};

mod generated {
    use super::{Argument, filled, text};
    include!(concat!(env!("OUT_DIR"), "/messages.rs"));
}

pub(crate) mod names;
pub mod sentences;
#[cfg(test)]
mod tests;
pub use generated::*;

/// What a message is filled with.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Argument<'a> {
    /// A text.
    Text(&'a str),
    /// A number whose plural category may select.
    Count(usize),
}

/// A language that the texts are written in.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Language {
    /// English.
    #[default]
    English,
    /// German.
    German,
    /// French.
    French,
}

impl Language {
    /// Every language.
    pub const ALL: [Self; 3] = [Self::English, Self::German, Self::French];

    /// Its tag, as a browser names it.
    #[must_use]
    pub const fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
            Self::French => "fr",
        }
    }

    /// The language of a tag, whatever its region.
    #[must_use]
    pub fn from_tag(tag: &str) -> Option<Self> {
        let tag = tag.split('-').next().unwrap_or_default();
        Self::ALL.into_iter().find(|language| language.tag().eq_ignore_ascii_case(tag))
    }
}

/// How many pieces have tables of their own.
const PIECES: usize = 4;

macro_rules! tables {
    ($language:literal) => {
        [
            include_str!(concat!(env!("OUT_DIR"), "/", $language, "-main.txt")),
            include_str!(concat!(env!("OUT_DIR"), "/", $language, "-share.txt")),
            include_str!(concat!(env!("OUT_DIR"), "/", $language, "-whole.txt")),
            include_str!(concat!(env!("OUT_DIR"), "/", $language, "-swap.txt")),
        ]
    };
}

#[cfg(not(target_arch = "wasm32"))]
macro_rules! beside {
    ($language:literal) => {
        [
            include_str!(concat!(env!("OUT_DIR"), "/", $language, "-names.txt")),
            include_str!(concat!(env!("OUT_DIR"), "/", $language, "-words.txt")),
        ]
    };
}

type Table = &'static [&'static str];

thread_local! {
    static LANGUAGE: Cell<Language> = const { Cell::new(Language::English) };
    static TABLES: RefCell<[Table; PIECES]> = RefCell::new(at_the_start());
    static CATEGORY: Cell<fn(usize) -> &'static str> = const { Cell::new(usual_category) };
}

/// Natively the first language is there; a page hands in what it fetched.
fn at_the_start() -> [Table; PIECES] {
    if cfg!(target_arch = "wasm32") { [&[]; PIECES] } else { tables!("en").map(split) }
}

/// The messages of a table. They stay for as long as the page is open: a page has one language.
fn split(table: &'static str) -> Table {
    table.split('\0').collect::<Vec<_>>().leak()
}

/// The language of the page.
#[must_use]
pub fn language() -> Language {
    LANGUAGE.get()
}

/// Says which language the page is in, and how it tells the plural category of a count: a page asks its browser.
pub fn speak(language: Language, category: fn(usize) -> &'static str) {
    LANGUAGE.set(language);
    CATEGORY.set(category);
}

/// Takes in the table of a piece, as the page fetched it; behind the pieces stand the names of materials and the texts of the
/// catalogue's tables.
pub fn take_table(piece: usize, table: String) {
    match piece {
        4 => return names::take_names(table.leak()),
        5 => return names::take_words(table.leak()),
        _ => {}
    }
    TABLES.with_borrow_mut(|tables| {
        if let Some(place) = tables.get_mut(piece) {
            *place = split(table.leak());
        }
    });
}

/// Speaks a language natively, where all of them are there.
#[cfg(not(target_arch = "wasm32"))]
pub fn speak_natively(language: Language) {
    speak(language, usual_category);
    let tables = match language {
        Language::English => tables!("en"),
        Language::German => tables!("de"),
        Language::French => tables!("fr"),
    };
    TABLES.set(tables.map(split));
    let beside = match language {
        Language::English => ["", ""],
        Language::German => beside!("de"),
        Language::French => beside!("fr"),
    };
    names::take_names(beside[0]);
    names::take_words(beside[1]);
}

/// The plural category of a count in the languages there are (CLDR plural rules, for whole numbers below a million).
#[must_use]
pub fn usual_category(count: usize) -> &'static str {
    match (language(), count) {
        (_, 1) | (Language::French, 0) => "one",
        _ => "other",
    }
}

/// The message at a place of a piece.
pub(crate) fn text(piece: usize, index: usize) -> &'static str {
    TABLES.with_borrow(|tables| tables.get(piece).and_then(|table| table.get(index)).copied().unwrap_or_default())
}

/// The message at a place of a piece, filled.
pub(crate) fn filled(piece: usize, index: usize, arguments: &[Argument<'_>]) -> String {
    let mut said = String::new();
    fill(&mut text(piece, index).chars(), &|at| arguments.get(at).copied(), &mut said, true);
    said
}

/// Messages that are looked up by what a check says, not by who wrote the code.
pub(crate) mod named {
    use super::{Argument, fill, text};

    /// A message found by its name.
    pub(crate) struct Message {
        piece: usize,
        index: usize,
        arguments: &'static [&'static str],
    }

    /// The message of a name, if there is one.
    pub(crate) fn find(
        messages: &'static [(&'static str, u16, &'static [&'static str])],
        piece: usize,
        name: &str,
    ) -> Option<Message> {
        let at = messages.binary_search_by(|(each, ..)| (*each).cmp(name)).ok()?;
        let (_, index, arguments) = messages[at];
        Some(Message { piece, index: usize::from(index), arguments })
    }

    impl Message {
        /// The message, if all it says something about is there.
        pub(crate) fn filled(&self, argument: &dyn Fn(&str) -> Option<String>) -> Option<String> {
            let values: Vec<String> = self.arguments.iter().map(|name| argument(name)).collect::<Option<_>>()?;
            let mut said = String::new();
            let value = |at: usize| values.get(at).map(|value| Argument::Text(value));
            fill(&mut self.text().chars(), &value, &mut said, true);
            Some(said)
        }

        /// The message as it stands in its table.
        pub(crate) fn text(&self) -> &'static str {
            text(self.piece, self.index)
        }
    }
}

/// Fills a packed pattern up to the end of its variant, or of all; `said` grows only where it is wanted.
fn fill<'a>(
    pattern: &mut std::str::Chars<'_>,
    argument: &dyn Fn(usize) -> Option<Argument<'a>>,
    said: &mut String,
    wanted: bool,
) {
    let position = |mark: Option<char>| mark.map_or(usize::MAX, |mark| (mark as usize).wrapping_sub('0' as usize));
    while let Some(character) = pattern.next() {
        match character {
            '\u{1}' => match argument(position(pattern.next())) {
                Some(Argument::Text(text)) if wanted => said.push_str(text),
                Some(Argument::Count(count)) if wanted => said.push_str(&count.to_string()),
                _ => {}
            },
            '\u{2}' => {
                let on = argument(position(pattern.next()));
                let mut chosen = !wanted;
                // Variants until the mark behind the last; that one is for all that is not named.
                while !pattern.as_str().starts_with('\u{5}') && !pattern.as_str().is_empty() {
                    let key: String = pattern.by_ref().take_while(|mark| *mark != '\u{3}').collect();
                    let is_last = variant_is_last(pattern.as_str());
                    let here = !chosen && (is_last || is_it(&key, on));
                    chosen |= here;
                    fill(pattern, argument, said, here);
                }
                pattern.next();
            }
            '\u{4}' => return,
            other if wanted => said.push(other),
            _ => {}
        }
    }
}

/// Whether behind the variant that begins here no other follows.
fn variant_is_last(rest: &str) -> bool {
    let mut depth = 0;
    let mut marks = rest.chars();
    while let Some(mark) = marks.next() {
        match mark {
            '\u{2}' => depth += 1,
            '\u{5}' => depth -= 1,
            '\u{4}' if depth == 0 => return marks.as_str().starts_with('\u{5}'),
            _ => {}
        }
    }
    true
}

fn is_it(key: &str, on: Option<Argument<'_>>) -> bool {
    match on {
        Some(Argument::Text(text)) => text == key || text.parse().is_ok_and(|count| CATEGORY.get()(count) == key),
        Some(Argument::Count(count)) => {
            key.parse().map_or_else(|_| CATEGORY.get()(count) == key, |number: usize| number == count)
        }
        None => false,
    }
}
