//! What kind of product a formula makes: where it goes, how it is used and by whom. Limits and what skin bears hang on it.

use serde::{Deserialize, Serialize};
use stillroom_terms::Purpose;

/// What kind of product a formula makes. Whether it stays on or is rinsed off follows from it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "&'static str")]
pub enum ProductKind {
    /// Stays on the face.
    Face,
    /// Is rinsed off the face: a wash, a mask, a scrub.
    FaceWash,
    /// Stays around the eyes.
    Eyes,
    /// Stays on the lips.
    Lips,
    /// Stays on the body.
    Body,
    /// Is rinsed off the body.
    BodyWash,
    /// Stays on the hands.
    Hand,
    /// Is rinsed off the hands.
    HandWash,
    /// Goes into the bath.
    Bath,
    /// Stays in the hair.
    Hair,
    /// Washes the hair.
    Shampoo,
    /// Is rinsed out of the hair.
    Conditioner,
    /// Deodorant as a stick, balm, cream or roll-on.
    Deodorant,
    /// Deodorant that is sprayed.
    DeodorantSpray,
    /// Is sprayed and stays on skin.
    Mist,
    /// Goes into the mouth and is spat out.
    Oral,
    /// Stays on the skin of a child under three.
    Child,
    /// Is rinsed off a child under three.
    ChildWash,
}

/// A word that names no kind of product.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("no kind of product")]
pub struct NoSuchKind;

#[cfg(feature = "schema")]
impl schemars::JsonSchema for ProductKind {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "ProductKind".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "description": "What kind of product a formula makes. Whether it stays on or is rinsed off follows from it.",
            "type": "string",
            "enum": Self::ALL.map(Self::slug),
        })
    }
}

impl TryFrom<String> for ProductKind {
    type Error = NoSuchKind;
    fn try_from(word: String) -> Result<Self, NoSuchKind> {
        Self::from_slug(&word).ok_or(NoSuchKind)
    }
}

impl From<ProductKind> for &'static str {
    fn from(kind: ProductKind) -> Self {
        kind.slug()
    }
}

impl ProductKind {
    /// Every kind, in the order they are offered. Links number them by it: only ever appended to.
    pub const ALL: [Self; 18] = [
        Self::Face,
        Self::FaceWash,
        Self::Eyes,
        Self::Lips,
        Self::Body,
        Self::BodyWash,
        Self::Hand,
        Self::HandWash,
        Self::Bath,
        Self::Hair,
        Self::Shampoo,
        Self::Conditioner,
        Self::Deodorant,
        Self::DeodorantSpray,
        Self::Mist,
        Self::Oral,
        Self::Child,
        Self::ChildWash,
    ];

    /// Whether it stays on or is rinsed off.
    #[must_use]
    pub const fn purpose(self) -> Purpose {
        match self {
            Self::FaceWash
            | Self::BodyWash
            | Self::HandWash
            | Self::Bath
            | Self::Shampoo
            | Self::Conditioner
            | Self::Oral
            | Self::ChildWash => Purpose::RinseOff,
            _ => Purpose::LeaveOn,
        }
    }

    /// The word of it in records and data files.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Face => "face",
            Self::FaceWash => "face-wash",
            Self::Eyes => "eyes",
            Self::Lips => "lips",
            Self::Body => "body",
            Self::BodyWash => "body-wash",
            Self::Hand => "hand",
            Self::HandWash => "hand-wash",
            Self::Bath => "bath",
            Self::Hair => "hair",
            Self::Shampoo => "shampoo",
            Self::Conditioner => "conditioner",
            Self::Deodorant => "deodorant",
            Self::DeodorantSpray => "deodorant-spray",
            Self::Mist => "mist",
            Self::Oral => "oral",
            Self::Child => "child",
            Self::ChildWash => "child-wash",
        }
    }

    /// The kind of a word, where there is one.
    #[must_use]
    pub fn from_slug(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.slug() == word)
    }

    /// Whether it is sprayed, so that some of it is breathed in.
    #[must_use]
    pub const fn is_sprayed(self) -> bool {
        matches!(self, Self::Mist | Self::DeodorantSpray)
    }

    /// Whether it is for children under three.
    #[must_use]
    pub const fn is_for_small_children(self) -> bool {
        matches!(self, Self::Child | Self::ChildWash)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_has_a_word_of_its_own_that_records_use_too() {
        for kind in ProductKind::ALL {
            assert_eq!(serde_json::to_value(kind).unwrap(), kind.slug());
            assert_eq!(ProductKind::from_slug(kind.slug()), Some(kind));
        }
        assert_eq!(ProductKind::from_slug("cream"), None);
    }
}
