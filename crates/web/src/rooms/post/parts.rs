//! The parts of a post, which of them the maker leaves out, and the batches it is written for.

use rust_decimal::Decimal;
use stillroom_core::Grams;
use stillroom_exchange::label::LabelFields;

/// How the fields of a post begin among what was filled in for a formula.
pub(crate) const POST: &str = "post:";

/// A part of a post.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Part {
    /// What the maker notes about the formula.
    Notes,
    /// Percent and grams.
    Formula,
    /// Three sizes of batch side by side.
    Sizes,
    /// What is done, with temperatures.
    Method,
    /// What each material is there for.
    Why,
    /// What can be taken instead.
    Instead,
    /// How long it keeps, and why.
    Keeping,
    /// What the checks found.
    Findings,
    /// The ingredients as a label lists them.
    Ingredients,
    /// What changes in the large batch.
    Larger,
    /// What can hurt: never left out.
    Cautions,
    /// The link.
    Link,
    /// The link as a code.
    Code,
    /// The lines that put the formula on a page.
    Embed,
}

impl Part {
    /// Every part, in the order of the page.
    pub(crate) const ALL: [Self; 14] = [
        Self::Notes,
        Self::Formula,
        Self::Sizes,
        Self::Method,
        Self::Cautions,
        Self::Why,
        Self::Instead,
        Self::Keeping,
        Self::Findings,
        Self::Ingredients,
        Self::Larger,
        Self::Link,
        Self::Code,
        Self::Embed,
    ];

    /// Its word.
    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Notes => "notes",
            Self::Formula => "formula",
            Self::Sizes => "sizes",
            Self::Method => "method",
            Self::Why => "why",
            Self::Instead => "instead",
            Self::Keeping => "keeping",
            Self::Findings => "findings",
            Self::Ingredients => "ingredients",
            Self::Larger => "larger",
            Self::Cautions => "cautions",
            Self::Link => "link",
            Self::Code => "code",
            Self::Embed => "embed",
        }
    }

    /// The part of a word.
    pub(crate) fn from_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|part| part.word() == word)
    }
}

/// The batches a post is written for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Size {
    /// A small one to try it.
    Small,
    /// The one that all masses are written for.
    Usual,
    /// Ten times that.
    Large,
}

impl Size {
    pub(crate) const ALL: [Self; 3] = [Self::Small, Self::Usual, Self::Large];

    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Small => "small",
            Self::Usual => "batch",
            Self::Large => "large",
        }
    }

    pub(crate) fn from_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|size| size.word() == word)
    }
}

/// Where the choice is kept whether the picture carries the link.
pub(crate) const PICTURE_LINK: &str = "picture-link";
/// A batch that nobody asked for otherwise, in grams.
const USUAL_BATCH: u32 = 100;

/// What the maker chose for the post of a formula.
pub(crate) struct Chosen(LabelFields);

impl Chosen {
    /// Reads it from what was filled in for a formula.
    pub(crate) fn read(label: &str) -> Self {
        Self(LabelFields::read(label))
    }

    fn get(&self, name: &str) -> &str {
        self.0.get(&format!("{POST}{name}")).unwrap_or_default()
    }

    /// Whether a part is in the post. Cautions always are.
    pub(crate) fn has(&self, part: Part) -> bool {
        part == Part::Cautions || self.get(part.word()) != "no"
    }

    /// Whether the picture carries the link: only where somebody said so.
    pub(crate) fn link_in_picture(&self) -> bool {
        self.get(PICTURE_LINK) == "yes"
    }

    /// A size of batch: what was typed, or half of the usual one and ten times it. `asked` is the batch of the formula.
    pub(crate) fn size(&self, size: Size, asked: Option<Grams>) -> Grams {
        let typed = |size: Size| {
            let grams: Option<Decimal> = self.get(size.word()).parse().ok();
            grams.and_then(|grams| Grams::new(grams).ok()).filter(|mass| !mass.is_zero())
        };
        let usual = typed(Size::Usual)
            .or(asked.filter(|mass| !mass.is_zero()))
            .or_else(|| Grams::new(Decimal::from(USUAL_BATCH)).ok())
            .unwrap_or(Grams::ZERO);
        let times = |tenths: i64| {
            let mass = usual.value().checked_mul(Decimal::new(tenths, 1));
            mass.and_then(|mass| Grams::new(mass.normalize()).ok()).unwrap_or(usual)
        };
        match size {
            Size::Usual => usual,
            Size::Small => typed(size).unwrap_or_else(|| times(5)),
            Size::Large => typed(size).unwrap_or_else(|| times(100)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cautions_stay_whatever_was_chosen_and_the_picture_carries_no_link_unless_chosen() {
        let chosen = Chosen::read("post:cautions=no\npost:why=no");
        assert!(chosen.has(Part::Cautions) && !chosen.has(Part::Why) && chosen.has(Part::Method));
        assert!(!chosen.link_in_picture());
        assert!(Chosen::read("post:picture-link=yes").link_in_picture());
        for part in Part::ALL {
            assert_eq!(Part::from_word(part.word()), Some(part));
        }
    }

    #[test]
    fn sizes_follow_the_batch_until_they_are_typed() {
        let grams = |mass: i64| Grams::new(Decimal::from(mass)).unwrap();
        let sizes = |text: &str, asked: Option<i64>| {
            let chosen = Chosen::read(text);
            Size::ALL.map(|size| chosen.size(size, asked.map(grams)))
        };
        assert_eq!(sizes("", Some(210)), [grams(105), grams(210), grams(2_100)]);
        assert_eq!(sizes("", None), [grams(50), grams(100), grams(1_000)]);
        assert_eq!(sizes("post:batch=40\npost:small=10", Some(210)), [grams(10), grams(40), grams(400)]);
        // What is no mass is as if it were not there.
        assert_eq!(sizes("post:batch=0\npost:large=much", Some(210)), [grams(105), grams(210), grams(2_100)]);
    }
}
