//! What the catalogue calls things in the language of the page. Where it does not say, the English name stands.

use std::cell::RefCell;

/// Number, name and other names of a material.
type Named = (u32, &'static str, &'static str);

thread_local! {
    static NAMES: RefCell<Vec<Named>> = const { RefCell::new(Vec::new()) };
    static WORDS: RefCell<Vec<(&'static str, &'static str)>> = const { RefCell::new(Vec::new()) };
}

/// Takes in the names of materials, in the order of their numbers.
pub(super) fn take_names(table: &'static str) {
    NAMES.set(
        table
            .lines()
            .filter_map(|line| {
                let mut columns = line.split('\t');
                Some((columns.next()?.parse().ok()?, columns.next()?, columns.next().unwrap_or_default()))
            })
            .collect(),
    );
}

/// Takes in the texts of the catalogue's tables, in the order of the English ones.
pub(super) fn take_words(table: &'static str) {
    WORDS.set(table.lines().filter_map(|line| line.split_once('\t')).collect());
}

/// The name of a material of the catalogue, and its other names, `; ` between them.
pub(crate) fn of_material(number: u32) -> Option<(&'static str, &'static str)> {
    NAMES.with_borrow(|names| {
        let at = names.binary_search_by_key(&number, |(number, ..)| *number).ok()?;
        Some((names[at].1, names[at].2))
    })
}

/// A text of the catalogue's tables.
pub(crate) fn word(english: &str) -> &str {
    WORDS.with_borrow(|words| {
        let at = words.binary_search_by(|(each, _)| (*each).cmp(english)).ok();
        at.map_or(english, |at| words[at].1)
    })
}
