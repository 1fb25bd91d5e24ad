//! Search over materials as one types: prefixes first, then typing errors; accents and case do not matter.
//!
//! All words of all materials are folded once into a vocabulary. A query visits each distinct word once, so that its
//! cost grows with the vocabulary and not with the number of materials that share a word.

use crate::catalogue::class_words;
use crate::fold::{belongs_to_word, each_word};
use std::borrow::Cow;
use std::cmp::Ordering;
use stillroom_core::{Class, MaterialId, PhaseKind};

/// What a text of a material is. The order is no rank; see [`Field::weight`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Field {
    /// Common name.
    Name,
    /// Another name.
    OtherName,
    /// A name in another language or in a kitchen, searched and not shown.
    FurtherName,
    /// INCI name of the one constituent.
    Inci,
    /// INCI name of something inside a composite.
    Inside,
    /// CAS registry number.
    Cas,
    /// What it is used for.
    Function,
    /// Class. Added by the index itself.
    Class,
}

impl Field {
    /// How much a match in this field counts.
    pub(crate) const fn weight(self) -> u16 {
        match self {
            Self::Name => 10,
            Self::Cas => 9,
            Self::OtherName | Self::FurtherName => 8,
            Self::Inci => 7,
            Self::Inside => 4,
            Self::Function | Self::Class => 3,
        }
    }
}

/// What an index needs to know of a material.
#[derive(Debug, Clone)]
pub struct IndexEntry<'a> {
    /// The material.
    pub id: MaterialId,
    /// Its class, for the filter.
    pub class: Class,
    /// Its usual phase, for the filter.
    pub usual_phase: PhaseKind,
    /// Its texts. The first [`Field::Name`] is the one it is sorted by.
    pub texts: Vec<(Field, Cow<'a, str>)>,
}

/// Which materials a search may return.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Filter {
    /// Only these classes; all when empty.
    pub classes: Vec<Class>,
    /// Only these phases; all when empty.
    pub phases: Vec<PhaseKind>,
}

/// What a maker is likely to mean: lifts materials among those that answer, and adds none.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Favour {
    /// Materials used before.
    pub used: Vec<MaterialId>,
    /// Phase of the line that is being filled.
    pub phase: Option<PhaseKind>,
}

/// A material that answers a query.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Hit {
    /// The material.
    pub id: MaterialId,
    /// How well it answers; only comparable within one answer. 0 for an empty query.
    pub score: u32,
    /// Where the first word of the query was found best; the name for an empty query.
    pub field: Field,
}

#[derive(Debug, Clone, Copy)]
pub(crate) struct Posting {
    pub(crate) entry: u32,
    pub(crate) field: Field,
    /// What its place in its text is worth.
    place: u8,
}

#[derive(Debug)]
pub(crate) struct Entry {
    pub(crate) id: MaterialId,
    class: Class,
    usual_phase: PhaseKind,
}

/// A search index over materials: those of the catalogue, the maker's own, or both.
///
/// ```
/// use stillroom_catalogue::{Catalogue, Field, Filter, IndexEntry, MaterialIndex};
/// use stillroom_core::{Class, MaterialId, PhaseKind};
/// let own = IndexEntry {
///     id: MaterialId::Own(1),
///     class: Class::Extract,
///     usual_phase: PhaseKind::CoolDown,
///     texts: vec![(Field::Name, "Quince mucilage".into())],
/// };
/// let index = MaterialIndex::build([own].into_iter().chain(Catalogue::get().index_entries()));
/// assert_eq!(index.search("quinse", &Filter::default())[0].id, MaterialId::Own(1));
/// assert!(index.search("quince", &Filter { classes: vec![Class::Oil], phases: vec![] }).is_empty());
/// ```
#[derive(Debug, Default)]
pub struct MaterialIndex {
    pub(crate) entries: Vec<Entry>,
    by_name: Vec<u32>,
    letters: Vec<char>,
    /// End in `letters` and end in `postings` of each word of the vocabulary; it begins where the last one ended.
    words: Vec<(u32, u32)>,
    postings: Vec<Posting>,
    /// Every name in whole: the hash of its letters, its entry, its field.
    pub(crate) wholes: Vec<(u32, u32, Field)>,
}

/// A word that is all of its text, one that opens its text, and one further on.
const ALONE: u8 = 6;
const OPENS: u8 = 5;
const INSIDE: u8 = 4;

/// Marks an entry whose name was typed in whole.
const WHOLE: u32 = u32::MAX;

/// Longest word whose typing errors are forgiven.
const LONGEST_FORGIVEN: usize = 30;

/// The distinct words found so far, and where each was found.
struct Found {
    letters: Vec<char>,
    /// Begin and end of each distinct word in `letters`.
    words: Vec<(usize, usize)>,
    /// Word and place, in the order found.
    postings: Vec<(u32, Posting)>,
    /// Numbers of words by the hash of their letters, each at the first free slot from there on. At most half full;
    /// the length is a power of two. The library's map would do the same in several times the program.
    slots: Vec<u32>,
    wholes: Vec<(u32, u32, Field)>,
}

/// Where a hash of letters begins (FNV-1a, 32 bits).
pub(crate) const HASH: u32 = 0x811c_9dc5;

/// Carries a hash on over the letters of a word.
pub(crate) fn hashed(hash: u32, word: &[char]) -> u32 {
    word.iter().fold(hash, |hash, letter| (hash ^ *letter as u32).wrapping_mul(0x0100_0193))
}

/// An empty slot.
const FREE: u32 = u32::MAX;

impl Found {
    fn new() -> Self {
        Self {
            letters: Vec::new(),
            words: Vec::new(),
            postings: Vec::new(),
            slots: vec![FREE; 1 << 13],
            wholes: Vec::new(),
        }
    }

    /// Adds the words of a text.
    fn collect(&mut self, text: &str, field: Field, entry: u32, scratch: &mut Vec<char>) {
        if matches!(field, Field::Name | Field::OtherName | Field::FurtherName | Field::Inci) {
            let mut hash = HASH;
            each_word(text, scratch, |word| hash = hashed(hash, word));
            self.wholes.push((hash, entry, field));
        }
        if field == Field::Cas {
            // A registry number is one word with its hyphens.
            let number: Vec<char> = text.chars().collect();
            self.post(&number, Posting { entry, field, place: ALONE });
            return;
        }
        let joins = matches!(field, Field::Name | Field::OtherName | Field::FurtherName | Field::Inci);
        let mut place = if text.chars().all(belongs_to_word) { ALONE } else { OPENS };
        let mut pair: Vec<char> = Vec::new();
        let mut length_before = 0;
        each_word(text, scratch, |word| {
            self.post(word, Posting { entry, field, place });
            if joins {
                // Two words written as one are found as well: `betaglucan`.
                pair.drain(..pair.len() - length_before);
                pair.extend_from_slice(word);
                if length_before > 0 {
                    self.post(&pair, Posting { entry, field, place: INSIDE });
                }
                length_before = word.len();
            }
            place = INSIDE;
        });
    }

    fn post(&mut self, word: &[char], posting: Posting) {
        let number = self.number_of(word);
        self.postings.push((number, posting));
    }

    /// The number of a word, which is added if it is new.
    fn number_of(&mut self, word: &[char]) -> u32 {
        let slot = self.slot_of(word);
        let number = self.slots.get(slot).copied().unwrap_or(FREE);
        if number != FREE {
            return number;
        }
        let number = count(self.words.len());
        let begin = self.letters.len();
        self.letters.extend_from_slice(word);
        self.words.push((begin, self.letters.len()));
        if let Some(slot) = self.slots.get_mut(slot) {
            *slot = number;
        }
        if self.words.len() * 2 > self.slots.len() {
            self.slots = vec![FREE; self.slots.len() * 2];
            for number in 0..count(self.words.len()) {
                let slot = self.slot_of(self.word(number));
                if let Some(slot) = self.slots.get_mut(slot) {
                    *slot = number;
                }
            }
        }
        number
    }

    /// The slot that holds a word, or the free one where it belongs.
    fn slot_of(&self, word: &[char]) -> usize {
        let hash = hashed(HASH, word);
        let mask = self.slots.len() - 1;
        let mut slot = hash as usize & mask;
        while let Some(number) = self.slots.get(slot).copied().filter(|number| *number != FREE) {
            if self.word(number) == word {
                break;
            }
            slot = (slot + 1) & mask;
        }
        slot
    }

    fn word(&self, number: u32) -> &[char] {
        let (begin, end) = self.words.get(number as usize).copied().unwrap_or_default();
        self.letters.get(begin..end).unwrap_or_default()
    }

    /// Writes the words with the postings of each side by side.
    fn move_into(self, index: &mut MaterialIndex) {
        let mut ends = vec![0_u32; self.words.len()];
        for (word, _) in &self.postings {
            if let Some(end) = ends.get_mut(*word as usize) {
                *end += 1;
            }
        }
        // First where the postings of each word begin; then, as each is written, where the next one goes.
        let mut begin = 0;
        for end in &mut ends {
            begin += std::mem::replace(end, begin);
        }
        index.postings = vec![Posting { entry: 0, field: Field::Name, place: 0 }; self.postings.len()];
        for (word, posting) in self.postings {
            let Some(end) = ends.get_mut(word as usize) else { continue };
            if let Some(place) = index.postings.get_mut(*end as usize) {
                *place = posting;
            }
            *end += 1;
        }
        index.words = self.words.iter().zip(ends).map(|((_, letters), postings)| (count(*letters), postings)).collect();
        index.letters = self.letters;
        index.wholes = self.wholes;
    }
}

fn count(length: usize) -> u32 {
    u32::try_from(length).unwrap_or(u32::MAX)
}

/// Sorts places; equal ones keep their order. Merges from runs of one upwards: the library's sort would take nine
/// kilobytes of program for each type it sorts.
fn sort(places: &mut Vec<u32>, order: &dyn Fn(u32, u32) -> Ordering) {
    let mut merged = Vec::with_capacity(places.len());
    let mut run = 1;
    while run < places.len() {
        for pair in places.chunks(run * 2) {
            let (mut left, mut right) = pair.split_at(run.min(pair.len()));
            while let ([a, after_a @ ..], [b, after_b @ ..]) = (left, right) {
                if order(*a, *b) == Ordering::Greater {
                    merged.push(*b);
                    right = after_b;
                } else {
                    merged.push(*a);
                    left = after_a;
                }
            }
            merged.extend_from_slice(left);
            merged.extend_from_slice(right);
        }
        std::mem::swap(places, &mut merged);
        merged.clear();
        run *= 2;
    }
}

impl MaterialIndex {
    /// Builds an index. Of two materials that answer a query equally well, the one put in first comes first: put the
    /// maker's own before the catalogue.
    pub fn build<'a>(materials: impl IntoIterator<Item = IndexEntry<'a>>) -> Self {
        let mut index = Self::default();
        let mut names: Vec<Vec<char>> = Vec::new();
        let mut found = Found::new();
        let mut scratch = Vec::new();
        for (place, material) in (0_u32..).zip(materials) {
            let class = [(Field::Class, Cow::Borrowed(class_words(material.class)))];
            for (field, text) in material.texts.iter().chain(&class) {
                found.collect(text, *field, place, &mut scratch);
            }
            let name = material.texts.iter().find(|(field, _)| *field == Field::Name);
            let mut sorted_by = Vec::new();
            each_word(name.map_or("", |(_, name)| name), &mut scratch, |word| {
                sorted_by.extend_from_slice(word);
                sorted_by.push(' ');
            });
            names.push(sorted_by);
            index.entries.push(Entry { id: material.id, class: material.class, usual_phase: material.usual_phase });
        }
        index.by_name = (0..count(names.len())).collect();
        sort(&mut index.by_name, &|a, b| names.get(a as usize).cmp(&names.get(b as usize)));
        found.move_into(&mut index);
        index
    }

    /// How many materials are in the index.
    #[must_use]
    pub fn len(&self) -> usize {
        self.entries.len()
    }

    /// Whether the index is empty.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// Finds the materials in which every word of `query` occurs, the best first.
    ///
    /// A word is found at the start of a word of the material, or inside it from three letters on. Where nothing is
    /// found so, one wrong, missing, doubled or swapped letter is forgiven from four letters on, two from eight.
    /// An empty query returns every material the filter lets through, by name.
    #[must_use]
    pub fn search(&self, query: &str, filter: &Filter) -> Vec<Hit> {
        self.search_favouring(query, filter, &Favour::default())
    }

    /// [`Self::search`] with the materials first that this maker is likely to mean: of those that answer a query about
    /// equally well, the one used before and the one whose usual phase is that of the line.
    #[must_use]
    pub fn search_favouring(&self, query: &str, filter: &Filter, favour: &Favour) -> Vec<Hit> {
        let words = query_words(query);
        if words.is_empty() {
            let places = self.by_name.iter().filter_map(|place| self.entries.get(*place as usize));
            let open: Vec<&Entry> = places.filter(|entry| passes(entry, filter)).collect();
            // Before anything is typed, what is likely stands first; the rest stays in the order of its names.
            let lifts: Vec<u32> = open.iter().map(|entry| lift(entry, favour)).collect();
            let of =
                |level: u32| open.iter().zip(&lifts).filter(move |(_, lift)| **lift == level).map(|(entry, _)| *entry);
            let typical = favour.phase.map_or(&[][..], typical_of);
            let is_typical = |entry: &Entry| typical.iter().any(|number| MaterialId::Catalogue(*number) == entry.id);
            let with_typical =
                |number: &u32| open.iter().find(|entry| entry.id == MaterialId::Catalogue(*number)).copied();
            let first = of(USED + OF_ITS_PHASE + TYPICAL).chain(of(USED + OF_ITS_PHASE)).chain(of(USED));
            // What most formulas have there follows in the order in which it is reached for.
            let usual = typical.iter().filter_map(with_typical).filter(|entry| !favour.used.contains(&entry.id));
            let rest = of(OF_ITS_PHASE).chain(of(0)).filter(|entry| !is_typical(entry));
            let hit = |entry: &Entry| Hit { id: entry.id, score: 0, field: Field::Name };
            return first.chain(usual).chain(rest).map(hit).collect();
        }
        let strict = self.search_words(&words, filter, favour, false);
        if strict.is_empty() { self.search_words(&words, filter, favour, true) } else { strict }
    }

    fn search_words(&self, words: &[Vec<char>], filter: &Filter, favour: &Favour, forgive_all: bool) -> Vec<Hit> {
        let mut totals: Vec<u32> = vec![0; self.entries.len()];
        let mut fields: Vec<Field> = vec![Field::Name; self.entries.len()];
        let mut best: Vec<u32> = vec![0; self.entries.len()];
        for (place, word) in words.iter().enumerate() {
            best.fill(0);
            let mut found = self.score(word, false, &mut best, if place == 0 { Some(&mut fields) } else { None });
            if !found || forgive_all {
                found |= self.score(word, true, &mut best, if place == 0 { Some(&mut fields) } else { None });
            }
            if !found {
                return Vec::new();
            }
            for (total, best) in totals.iter_mut().zip(&best) {
                // An entry that missed an earlier word stays out.
                *total = if *best == 0 || (place > 0 && *total == 0) { 0 } else { *total + *best };
            }
        }
        // Who types a name in whole means it: `tea` is not the beginning of tea tree.
        let typed = words.iter().fold(HASH, |hash, word| hashed(hash, word));
        for (hash, entry, field) in &self.wholes {
            if let Some(total) = totals.get_mut(*entry as usize).filter(|total| *hash == typed && **total > 0) {
                let best = best.get_mut(*entry as usize);
                // Two names of a material that are the same count once: `best` is free by now and remembers.
                if let Some(seen) = best.filter(|seen| **seen != WHOLE) {
                    *seen = WHOLE;
                    *total += u32::from(field.weight()) * 300;
                }
            }
        }
        for (total, entry) in totals.iter_mut().zip(&self.entries) {
            *total += *total * lift(entry, favour) / 100;
        }
        let passing = |place: &u32| {
            let found = totals.get(*place as usize).is_some_and(|total| *total > 0);
            found && self.entries.get(*place as usize).is_some_and(|entry| passes(entry, filter))
        };
        let mut places: Vec<u32> = (0..count(self.entries.len())).filter(passing).collect();
        // Of two that answer equally well, the one that was put in first comes first.
        sort(&mut places, &|a, b| totals.get(b as usize).cmp(&totals.get(a as usize)));
        let hit = |place: u32| {
            let id = self.entries.get(place as usize)?.id;
            Some(Hit { id, score: *totals.get(place as usize)?, field: *fields.get(place as usize)? })
        };
        places.into_iter().filter_map(hit).collect()
    }

    /// Hands out every word of the vocabulary with where it was found.
    pub(crate) fn each_word_with_postings<'a>(&'a self, mut hear: impl FnMut(&'a [char], &'a [Posting])) {
        let (mut letters_from, mut postings_from) = (0, 0);
        for (letters_to, postings_to) in &self.words {
            let known = self.letters.get(letters_from as usize..*letters_to as usize).unwrap_or_default();
            hear(known, self.postings.get(postings_from as usize..*postings_to as usize).unwrap_or_default());
            (letters_from, postings_from) = (*letters_to, *postings_to);
        }
    }

    /// Whether a search answers without forgiving anything.
    pub(crate) fn search_strictly(&self, query: &str) -> bool {
        !self.search_words(&query_words(query), &Filter::default(), &Favour::default(), false).is_empty()
    }

    /// Raises `best` of every entry that `word` is found in. Returns whether it was found anywhere.
    fn score(&self, word: &[char], forgive: bool, best: &mut [u32], mut fields: Option<&mut Vec<Field>>) -> bool {
        let one = singular(word);
        let mut found = false;
        let (mut letters_from, mut postings_from) = (0, 0);
        for (letters_to, postings_to) in &self.words {
            let known = self.letters.get(letters_from as usize..*letters_to as usize).unwrap_or_default();
            let quality = if forgive {
                forgiven(word, known)
            } else if known == one && one.len() < word.len() {
                95
            } else {
                strict(word, known)
            };
            if quality > 0 {
                let postings = self.postings.get(postings_from as usize..*postings_to as usize);
                for posting in postings.unwrap_or_default() {
                    let Some(so_far) = best.get_mut(posting.entry as usize) else {
                        continue;
                    };
                    let place = u32::from(posting.place);
                    let score = u32::from(quality) * u32::from(posting.field.weight()) * place;
                    if score > *so_far {
                        *so_far = score;
                        found = true;
                        let field = fields.as_mut().and_then(|fields| fields.get_mut(posting.entry as usize));
                        if let Some(field) = field {
                            *field = posting.field;
                        }
                    }
                }
            }
            (letters_from, postings_from) = (*letters_to, *postings_to);
        }
        found
    }
}

/// By how many percent what was used before is lifted, and what usually goes into the phase.
const USED: u32 = 12;
const OF_ITS_PHASE: u32 = 6;
/// And what most formulas have in that phase: more than what parts a name that is typed whole but for its end from one
/// that goes on, so that `glyc` is glycerin before it is glycine.
const TYPICAL: u32 = 20;

/// What is reached for in a phase, by its number in the catalogue, the commonest first: common practice.
const fn typical_of(phase: PhaseKind) -> &'static [u32] {
    match phase {
        // Water, glycerin, propanediol, xanthan gum, betaine, aloe juice, rose hydrosol, allantoin, sodium lactate, chelator,
        // sodium benzoate, potassium sorbate.
        PhaseKind::HeatedWater => &[1, 2, 38, 22, 3, 110, 40, 5, 125, 86, 26, 27],
        // Sunflower, sweet almond, jojoba, triglyceride, shea, cocoa butter, emulsifying wax, olivates, glyceryl stearate, cetyl
        // and cetearyl alcohol, beeswax.
        PhaseKind::HeatedOil => &[8, 46, 11, 51, 12, 53, 121, 119, 19, 13, 14, 55],
        // Vitamin E, panthenol, niacinamide, preservatives, rosehip oil, lavender, hyaluronate, fragrance, citric and lactic acid.
        PhaseKind::CoolDown => &[36, 6, 7, 140, 139, 30, 10, 113, 23, 115, 32, 35],
        PhaseKind::RoomTemperature => &[1, 2, 94, 917, 40, 36],
    }
}

/// By how many percent a material is lifted: less than what parts a match at the start of a name from one inside it.
fn lift(entry: &Entry, favour: &Favour) -> u32 {
    let used = if favour.used.contains(&entry.id) { USED } else { 0 };
    let typical = favour.phase.is_some_and(|phase| {
        phase == entry.usual_phase && typical_of(phase).iter().any(|number| MaterialId::Catalogue(*number) == entry.id)
    });
    used + if favour.phase == Some(entry.usual_phase) { OF_ITS_PHASE } else { 0 } + if typical { TYPICAL } else { 0 }
}

fn passes(entry: &Entry, filter: &Filter) -> bool {
    (filter.classes.is_empty() || filter.classes.contains(&entry.class))
        && (filter.phases.is_empty() || filter.phases.contains(&entry.usual_phase))
}

fn query_words(query: &str) -> Vec<Vec<char>> {
    let trimmed = query.trim();
    let number_like = |character: char| character.is_ascii_digit() || character == '-';
    // A registry number begins with two digits at least; `3-` begins a name.
    let first = trimmed.find('-').unwrap_or(0);
    if first >= 2 && trimmed.chars().all(number_like) && !trimmed.starts_with('-') {
        return vec![trimmed.chars().collect()];
    }
    let mut words = Vec::new();
    each_word(query, &mut Vec::new(), |word| words.push(word.to_vec()));
    // A pasted page is no query: what follows the twelfth word does not matter.
    words.truncate(12);
    words
}

/// The word without the ending of a plural: `oils` is `oil`, `waxes` is `wax`. Itself if it is short or no plural.
fn singular(word: &[char]) -> &[char] {
    match word {
        [stem @ .., 'x' | 's' | 'h', 'e', 's'] if stem.len() > 1 => &word[..word.len() - 2],
        [.., 's', 's'] | [] => word,
        [stem @ .., 's'] if stem.len() > 2 => stem,
        _ => word,
    }
}

/// How well `word` is found in `known` without forgiving anything; 0 for not at all.
fn strict(word: &[char], known: &[char]) -> u16 {
    if known.starts_with(word) {
        if known.len() == word.len() { 100 } else { 80 }
    } else if word.len() >= 3 && known.len() > word.len() && known.windows(word.len()).any(|window| window == word) {
        35
    } else {
        0
    }
}

/// How well `word` is found in `known` or at its start when typing errors are forgiven; 0 for not at all.
fn forgiven(word: &[char], known: &[char]) -> u16 {
    let allowed: usize = match word.len() {
        0..=3 => return 0,
        4..=7 => 1,
        8..=LONGEST_FORGIVEN => 2,
        _ => return 0,
    };
    if known.len() + allowed < word.len() {
        return 0;
    }
    let known = known.get(..word.len() + allowed + 1).unwrap_or(known);
    let (whole, prefix) = distances(word, known, allowed);
    if whole <= allowed {
        // 60, 45 or 30
        60 - 15 * u16::try_from(whole).unwrap_or(4)
    } else if prefix <= allowed {
        45 - 15 * u16::try_from(prefix).unwrap_or(3)
    } else {
        0
    }
}

/// Edits (wrong, missing, extra or swapped neighbouring letters) from `word` to `known`, and to the nearest start of
/// `known`. Both come out above `allowed` when they are.
pub(crate) fn distances(word: &[char], known: &[char], allowed: usize) -> (usize, usize) {
    const WIDTH: usize = LONGEST_FORGIVEN + 4;
    let mut before_last = [0_usize; WIDTH];
    let mut last = [0_usize; WIDTH];
    let mut current = [0_usize; WIDTH];
    let columns = known.len().min(WIDTH - 1);
    for (place, cell) in last.iter_mut().enumerate() {
        *cell = place;
    }
    for (row, letter) in word.iter().enumerate() {
        current[0] = row + 1;
        let mut least = current[0];
        for column in 1..=columns {
            let same = *letter == known[column - 1];
            let mut cost = (last[column - 1] + usize::from(!same)).min(last[column] + 1).min(current[column - 1] + 1);
            let swapped = row > 0 && column > 1 && *letter == known[column - 2] && word[row - 1] == known[column - 1];
            if swapped {
                cost = cost.min(before_last[column - 2] + 1);
            }
            current[column] = cost;
            least = least.min(cost);
        }
        if least > allowed {
            return (usize::MAX, usize::MAX);
        }
        before_last = last;
        last = current;
    }
    let whole = if columns == known.len() { last[columns] } else { usize::MAX };
    (whole, last[..=columns].iter().copied().min().unwrap_or(usize::MAX))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn edits(word: &str, known: &str) -> (usize, usize) {
        let letters = |text: &str| text.chars().collect::<Vec<_>>();
        distances(&letters(word), &letters(known), 9)
    }

    #[test]
    fn edits_count_wrong_missing_extra_and_swapped_letters() {
        assert_eq!(edits("glycerin", "glycerin"), (0, 0));
        assert_eq!(edits("glicerin", "glycerin").0, 1);
        assert_eq!(edits("glycrin", "glycerin").0, 1);
        assert_eq!(edits("glyccerin", "glycerin").0, 1);
        assert_eq!(edits("glycrein", "glycerin").0, 1);
        assert_eq!(edits("glicer", "glycerin").1, 1, "a start with one wrong letter");
    }

    #[test]
    fn a_sort_orders_and_keeps_the_order_of_equals() {
        for length in [0, 1, 2, 3, 7, 8, 9, 100] {
            let tens: Vec<u32> = (0..length).map(|place| place * 7919 % 31 / 10).collect();
            let mut places: Vec<u32> = (0..length).collect();
            sort(&mut places, &|a, b| tens[a as usize].cmp(&tens[b as usize]));
            let mut expected: Vec<u32> = (0..length).collect();
            expected.sort_by_key(|place| tens[*place as usize]);
            assert_eq!(places, expected);
        }
    }

    #[test]
    fn a_plural_finds_the_singular() {
        for (many, one) in [("oils", "oil"), ("waxes", "wax"), ("gas", "gas"), ("glass", "glass"), ("s", "s"), ("", "")]
        {
            let letters: Vec<char> = many.chars().collect();
            assert_eq!(singular(&letters), one.chars().collect::<Vec<_>>());
        }
    }

    #[test]
    fn short_words_are_taken_as_typed() {
        let letters = |text: &str| text.chars().collect::<Vec<_>>();
        assert_eq!(forgiven(&letters("sea"), &letters("shea")), 0);
        assert!(forgiven(&letters("shee"), &letters("shea")) > 0);
    }
}
