//! Words on a label that would make of a cosmetic something else in the eyes of the law: a medicine, a biocide; or that
//! promise what has to be shown.

/// A word or a phrase to look for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Loaded<'a> {
    /// In small letters; with a star behind it whatever goes on from there counts, too, and with one before it whatever
    /// leads up to it, as words are put together in German.
    pub phrase: &'a str,
    /// What it makes of the product: a key.
    pub kind: &'a str,
}

/// A word that was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Flagged<'a> {
    /// As it stands in the text.
    pub found: String,
    /// Which phrase it is, by its place in the list.
    pub place: usize,
    /// What it makes of the product.
    pub kind: &'a str,
}

/// The phrases that stand in a text, each once, in the order of the text.
///
/// A phrase is found wherever its words stand behind one another, whatever their case. It is found in a denial as well:
/// whether `does not heal` may stand there is for a person to say.
///
/// ```
/// use stillroom_core::label::{Loaded, flag};
/// let list = [Loaded { phrase: "healing", kind: "medicine" }, Loaded { phrase: "kills germs", kind: "biocide" }];
/// let found = flag("Healing balm. It KILLS  germs, and is healthy.", &list);
/// let words: Vec<&str> = found.iter().map(|each| each.found.as_str()).collect();
/// assert_eq!(words, ["Healing", "KILLS germs"]);
/// // What is elided before a word is no part of it.
/// let list = [Loaded { phrase: "eczéma", kind: "medicine" }];
/// assert_eq!(flag("Soulage l’eczéma.", &list)[0].found, "l'eczéma");
/// ```
#[must_use]
pub fn flag<'a>(text: &str, list: &[Loaded<'a>]) -> Vec<Flagged<'a>> {
    // Both apostrophes count alike.
    let text = text.replace('’', "'");
    let is_inside = |letter: char| letter.is_alphanumeric() || letter == '\'' || letter == '-';
    let words: Vec<&str> = text.split(|letter: char| !is_inside(letter)).filter(|word| !word.is_empty()).collect();
    let folded: Vec<String> = words.iter().map(|word| word.to_lowercase()).collect();
    let mut found: Vec<(usize, Flagged<'a>)> = Vec::new();
    for (place, loaded) in list.iter().enumerate() {
        let parts: Vec<&str> = loaded.phrase.split(' ').collect();
        let is_it = |word: &str, part: &str| match (part.strip_prefix('*'), part.strip_suffix('*')) {
            (Some(rest), Some(_)) => word.contains(rest.trim_end_matches('*')),
            (Some(end), None) => word.ends_with(end),
            (None, Some(begin)) => word.starts_with(begin),
            (None, None) => word == part,
        };
        // As in `l'eczéma` a word may begin with what is elided before it.
        let elided =
            |word: &str| word.split_once('\'').filter(|(before, _)| before.chars().count() <= 2).map(|it| it.1.len());
        let fits = |word: &String, part: &str| {
            is_it(word, part) || elided(word).is_some_and(|after| is_it(&word[word.len() - after..], part))
        };
        let at =
            folded.windows(parts.len()).position(|those| those.iter().zip(&parts).all(|(word, part)| fits(word, part)));
        if let Some(at) = at {
            let found_here = words.get(at..at + parts.len()).unwrap_or_default().join(" ");
            found.push((at, Flagged { found: found_here, place, kind: loaded.kind }));
        }
    }
    found.sort_by_key(|(at, each)| (*at, each.place));
    found.into_iter().map(|(_, each)| each).collect()
}
