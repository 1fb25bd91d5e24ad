//! Which material a name in a recipe means, and how sure that is.
//!
//! A search answers while somebody types and looks on; here nobody does, so that a near miss has to be told from a match.
//! A name that is written in whole is a match; one whose words all stand in one name, or that is one slip away from it, is
//! likely; everything else is asked.

use crate::fold::each_word;
use crate::search::{Field, Filter, HASH, MaterialIndex, distances, hashed};
use stillroom_core::MaterialId;

/// How sure it is what a name means.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Confidence {
    /// Nothing is called so.
    Unknown,
    /// Several could be meant, or something is called nearly so: to be asked.
    Unsure,
    /// One material is meant, unless the writer was careless.
    Likely,
    /// The name is one of the material's own.
    Sure,
}

/// What a name may mean.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Recognised {
    /// How sure the first of them is.
    pub confidence: Confidence,
    /// The materials, the likeliest first; none where it is unknown.
    pub materials: Vec<MaterialId>,
}

impl Recognised {
    const UNKNOWN: Self = Self { confidence: Confidence::Unknown, materials: Vec::new() };
}

/// Most materials offered where one has to be chosen.
const MOST_OFFERED: usize = 6;
/// Most words of a name that are looked at.
const MOST_WORDS: usize = 12;
/// Letters from which what one material alone answers to is taken for it.
const ALONE_FROM: usize = 6;
/// Shortest word whose spelling is forgiven, and the shortest one in which two slips are.
const FORGIVEN_FROM: usize = 4;
const TWICE_FORGIVEN_FROM: usize = 8;

/// What makers shorten, and what they write another way: `word,means,language,basis`, without quotes.
const EVERYDAY_WORDS: &str = include_str!("../data/everyday-words.csv");

/// Words about how a material was made or bought: they part no materials of the catalogue. Common practice.
const QUALIFIERS: [&str; 63] = [
    "organic",
    "raw",
    "unrefined",
    "virgin",
    "extra",
    "cold",
    "pressed",
    "coldpressed",
    "natural",
    "pure",
    "fresh",
    "cosmetic",
    "grade",
    "food",
    "certified",
    "fine",
    "good",
    "quality",
    "melted",
    "grated",
    "chopped",
    "sifted",
    "warm",
    "your",
    "my",
    "homemade",
    "plain",
    "of",
    "the",
    "a",
    "some",
    "bio",
    "nativ",
    "natives",
    "kaltgepresst",
    "kaltgepresstes",
    "reines",
    "rein",
    "naturreines",
    "frisches",
    "frischer",
    "gerieben",
    "geschmolzen",
    "etwas",
    "vom",
    "aus",
    "biologique",
    "vierge",
    "pur",
    "pure",
    "brute",
    "brut",
    "raffine",
    "frais",
    "fraiche",
    "fondue",
    "rapee",
    "liquide",
    "de",
    "d",
    "du",
    "des",
    "la",
];

/// Words that name a kind and no material. Common practice.
const KINDS: [&str; 47] = [
    "preservative",
    "preservatives",
    "emulsifier",
    "emulsifiers",
    "thickener",
    "gum",
    "oil",
    "oils",
    "carrier",
    "butter",
    "wax",
    "clay",
    "extract",
    "hydrosol",
    "surfactant",
    "humectant",
    "active",
    "actives",
    "essential",
    "colour",
    "color",
    "colorant",
    "antioxidant",
    "chelator",
    "solvent",
    "acid",
    "konservierer",
    "konservierungsmittel",
    "konservierung",
    "emulgator",
    "ol",
    "wachs",
    "tensid",
    "extrakt",
    "verdicker",
    "atherisches",
    "conservateur",
    "emulsifiant",
    "huile",
    "beurre",
    "cire",
    "argile",
    "tensioactif",
    "essentielle",
    "extrait",
    "epaississant",
    "mineral",
];

/// Words by which a recipe leaves the choice open.
const OPEN: [&str; 14] = [
    "of",
    "your",
    "choice",
    "any",
    "other",
    "favourite",
    "favorite",
    "light",
    "nach",
    "wahl",
    "au",
    "choix",
    "de",
    "liquid",
];

impl MaterialIndex {
    /// Says which material a name means. `name_of` gives what a material is called: of several that answer as well, the
    /// one whose name is part of the others' is the plain one, and is meant where nothing else is said.
    ///
    /// ```
    /// use stillroom_catalogue::{Catalogue, Confidence, MaterialIndex, MaterialSource};
    /// let catalogue = Catalogue::get();
    /// let index = MaterialIndex::build(catalogue.index_entries());
    /// let called = |id| catalogue.material(id).map_or(String::new(), |material| material.name.clone());
    /// let found = index.recognise("organic lavander EO", &called);
    /// assert_eq!(found.confidence, Confidence::Likely);
    /// assert_eq!(called(found.materials[0]), "Lavender essential oil");
    /// assert_eq!(index.recognise("preservative", &called).confidence, Confidence::Unsure);
    /// ```
    #[must_use]
    pub fn recognise(&self, written: &str, name_of: &dyn Fn(MaterialId) -> String) -> Recognised {
        let mut words = words_of(written);
        words.truncate(MOST_WORDS);
        if words.is_empty() {
            return Recognised::UNKNOWN;
        }
        let said = said_in_full(&words);
        let bare: Vec<String> = said.iter().filter(|word| !QUALIFIERS.contains(&word.as_str())).cloned().collect();
        let bare = if bare.is_empty() { said.clone() } else { bare };
        for words in [&words, &said, &bare] {
            if let Some(found) = self.called_so(words, name_of) {
                return found;
            }
        }
        let is_open = |word: &String| OPEN.contains(&word.as_str()) || KINDS.contains(&word.as_str());
        if bare.iter().all(is_open) {
            let kind: Vec<&str> =
                bare.iter().map(String::as_str).filter(|word| !OPEN.contains(word) || bare.len() == 1).collect();
            return self.offered(&kind.join(" "));
        }
        let spelt = self.spelt(&bare);
        if let Some(found) = spelt.as_ref().and_then(|words| self.called_so(words, name_of)) {
            return Recognised { confidence: found.confidence.min(Confidence::Likely), ..found };
        }
        for words in [Some(&said), Some(&bare), spelt.as_ref()].into_iter().flatten() {
            if let Some(found) = self.holding_all(words, name_of) {
                return found;
            }
        }
        let begun = self.offered(&bare.join(" "));
        if begun.confidence != Confidence::Unknown && self.search_strictly(&bare.join(" ")) {
            // One thing alone answers to all that is written: nearly its name.
            let alone = begun.materials.len() == 1 && bare.iter().map(String::len).sum::<usize>() >= ALONE_FROM;
            return if alone { Recognised { confidence: Confidence::Likely, ..begun } } else { begun };
        }
        self.called_nearly_so(spelt.as_ref().unwrap_or(&bare), name_of)
    }

    /// The materials with that name in whole.
    fn called_so(&self, words: &[String], name_of: &dyn Fn(MaterialId) -> String) -> Option<Recognised> {
        let hash = words.iter().fold(HASH, |hash, word| hashed(hash, &word.chars().collect::<Vec<_>>()));
        let named = self.wholes.iter().filter(|(whole, ..)| *whole == hash);
        let mut found: Vec<(MaterialId, Field)> = Vec::new();
        for (_, entry, field) in named {
            let Some(entry) = self.entries.get(*entry as usize) else { continue };
            match found.iter_mut().find(|(id, _)| *id == entry.id) {
                Some((_, best)) if best.weight() < field.weight() => *best = *field,
                Some(_) => {}
                None => found.push((entry.id, *field)),
            }
        }
        let best = found.iter().map(|(_, field)| field.weight()).max()?;
        let mut materials: Vec<MaterialId> =
            found.iter().filter(|(_, field)| field.weight() == best).map(|(id, _)| *id).collect();
        let is_own = |id: &MaterialId| !matches!(id, MaterialId::Catalogue(_));
        let decided =
            materials.len() == 1 || materials.first().is_some_and(is_own) || plainest_first(&mut materials, name_of);
        materials.truncate(MOST_OFFERED);
        Some(Recognised { confidence: if decided { Confidence::Sure } else { Confidence::Unsure }, materials })
    }

    /// The materials one of whose texts holds every word in whole.
    fn holding_all(&self, words: &[String], name_of: &dyn Fn(MaterialId) -> String) -> Option<Recognised> {
        let mut counts: Vec<usize> = vec![0; self.entries.len()];
        for (place, word) in words.iter().enumerate() {
            let letters: Vec<char> = word.chars().collect();
            self.each_word_with_postings(|known, postings| {
                if known != letters {
                    return;
                }
                for posting in postings.iter().filter(|posting| is_name(posting.field)) {
                    if let Some(count) = counts.get_mut(posting.entry as usize).filter(|count| **count == place) {
                        *count = place + 1;
                    }
                }
            });
        }
        // In the order in which a search would give them.
        let holds = |id: MaterialId| {
            let place = self.entries.iter().position(|entry| entry.id == id);
            place.and_then(|place| counts.get(place)) == Some(&words.len())
        };
        let hits = self.search(&words.join(" "), &Filter::default());
        let mut materials: Vec<MaterialId> = hits.into_iter().map(|hit| hit.id).filter(|id| holds(*id)).collect();
        let first = *materials.first()?;
        let plain = materials.len() == 1 || plainest_first(&mut materials, name_of);
        // Most of the name has to be there: one word of a long name says little.
        let name = words_of(&name_of(*materials.first().unwrap_or(&first)));
        let letters = |words: &[String]| words.iter().map(|word| word.chars().count()).sum::<usize>();
        let there: Vec<String> = name.iter().filter(|word| words.contains(word)).cloned().collect();
        let is_most = letters(&there) * 2 >= letters(&name);
        materials.truncate(MOST_OFFERED);
        Some(Recognised {
            confidence: if plain && is_most { Confidence::Likely } else { Confidence::Unsure },
            materials,
        })
    }

    /// What a search finds, to choose from.
    fn offered(&self, query: &str) -> Recognised {
        let hits = self.search(query, &Filter::default());
        let materials: Vec<MaterialId> = hits.into_iter().take(MOST_OFFERED).map(|hit| hit.id).collect();
        let confidence = if materials.is_empty() { Confidence::Unknown } else { Confidence::Unsure };
        Recognised { confidence, materials }
    }

    /// Materials whose whole name is left when one word is taken away.
    fn called_nearly_so(&self, words: &[String], name_of: &dyn Fn(MaterialId) -> String) -> Recognised {
        let mut materials: Vec<MaterialId> = Vec::new();
        for left_out in 0..words.len() {
            let rest: Vec<String> = words
                .iter()
                .enumerate()
                .filter(|(place, _)| *place != left_out)
                .map(|(_, word)| word.clone())
                .collect();
            let is_kind = rest.iter().all(|word| KINDS.contains(&word.as_str()) || OPEN.contains(&word.as_str()));
            let found = if rest.is_empty() || is_kind { None } else { self.called_so(&rest, name_of) };
            for id in found.into_iter().flat_map(|found| found.materials) {
                if !materials.contains(&id) {
                    materials.push(id);
                }
            }
        }
        materials.truncate(MOST_OFFERED);
        let confidence = if materials.is_empty() { Confidence::Unknown } else { Confidence::Unsure };
        Recognised { confidence, materials }
    }

    /// The words with slips mended, where every one of them is known then; nothing if none was mended.
    fn spelt(&self, words: &[String]) -> Option<Vec<String>> {
        let mut mended = false;
        let spelt: Option<Vec<String>> = words
            .iter()
            .map(|word| {
                let letters: Vec<char> = word.chars().collect();
                let allowed = match letters.len() {
                    _ if word.chars().any(|letter| letter.is_ascii_digit()) => 0,
                    0..FORGIVEN_FROM => 0,
                    FORGIVEN_FROM..TWICE_FORGIVEN_FROM => 1,
                    _ => 2,
                };
                let mut nearest: (usize, Vec<&[char]>) = (allowed + 1, Vec::new());
                let mut known = false;
                self.each_word_with_postings(|other, postings| {
                    if !postings.iter().any(|posting| is_name(posting.field)) {
                        return;
                    }
                    known |= other == letters;
                    if known || allowed == 0 || other.len().abs_diff(letters.len()) > allowed {
                        return;
                    }
                    let (distance, _) = distances(&letters, other, allowed);
                    if distance < nearest.0 {
                        nearest = (distance, vec![other]);
                    } else if distance == nearest.0 && distance <= allowed {
                        nearest.1.push(other);
                    }
                });
                if known {
                    return Some(word.clone());
                }
                // Of two that are as near, the one as long: a wrong letter is commoner than one too many or too few.
                if nearest.1.len() > 1 {
                    nearest.1.retain(|other| other.len() == letters.len());
                }
                match nearest.1.as_slice() {
                    [one] => {
                        mended = true;
                        Some(one.iter().collect())
                    }
                    _ => None,
                }
            })
            .collect();
        spelt.filter(|_| mended)
    }
}

/// Whether a field holds a name.
const fn is_name(field: Field) -> bool {
    matches!(field, Field::Name | Field::OtherName | Field::FurtherName | Field::Inci)
}

/// Puts the material first whose name is part of the names of all the others; whether there is one.
fn plainest_first(materials: &mut [MaterialId], name_of: &dyn Fn(MaterialId) -> String) -> bool {
    let names: Vec<Vec<String>> = materials.iter().map(|id| words_of(&name_of(*id))).collect();
    let is_part = |one: &[String], other: &[String]| one.iter().all(|word| other.contains(word));
    let plain = names.iter().position(|one| names.iter().all(|other| is_part(one, other)));
    if let Some(at) = plain {
        materials[..=at].rotate_right(1);
    }
    plain.is_some()
}

fn words_of(text: &str) -> Vec<String> {
    let mut words = Vec::new();
    each_word(text, &mut Vec::new(), |word| words.push(word.iter().collect()));
    words
}

/// The words with what makers shorten written out.
fn said_in_full(words: &[String]) -> Vec<String> {
    let rows = || EVERYDAY_WORDS.lines().skip(1).filter_map(|row| row.split_once(','));
    let meaning = |short: &[String]| {
        let means = rows().find(|(word, _)| words_of(word) == short)?.1;
        Some(words_of(means.split(',').next().unwrap_or_default()))
    };
    let mut said = Vec::new();
    let mut rest = words;
    while let Some((first, others)) = rest.split_first() {
        let pair = rest.get(..2).and_then(&meaning);
        if let Some(means) = pair {
            said.extend(means);
            rest = rest.get(2..).unwrap_or_default();
            continue;
        }
        match meaning(std::slice::from_ref(first)) {
            Some(means) => said.extend(means),
            None => said.push(first.clone()),
        }
        rest = others;
    }
    said
}
