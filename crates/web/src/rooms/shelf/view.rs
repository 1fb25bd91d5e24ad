//! What the page sees of the shelf.

use crate::rooms::jar::view::LayerView;
use serde::Serialize;
use std::rc::Rc;
use tsify::Tsify;

/// The shelf.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ShelfView {
    /// The formulas that are shown, last changed first.
    #[tsify(type = "ShelfCard[]")]
    pub cards: Vec<Rc<ShelfCard>>,
    /// How many more there are of those that are looked for.
    pub more: usize,
    /// How many stand on the shelf.
    pub all: usize,
    /// The same in words.
    pub total: String,
    /// Every tag there is, by name.
    pub tags: Vec<String>,
    /// The one that every card shown has; empty where none is asked for.
    pub tag: String,
    /// The one that is open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub open: Option<String>,
}

/// Something that is due.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct DueToday {
    /// What is to be done: `look` at a batch, or `use` a material.
    #[tsify(type = "\"look\" | \"use\"")]
    pub act: &'static str,
    /// Names the batch or the material.
    pub key: String,
    /// What it is about.
    pub name: String,
    /// What else is to be said of it.
    pub about: String,
    /// Whether its day is past, or close.
    pub late: bool,
}

/// One formula on the shelf.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ShelfCard {
    /// Names it.
    pub id: String,
    /// What the maker calls it.
    pub name: String,
    /// Lines, use and state in a few words.
    pub about: String,
    /// What it is filed under, with commas between.
    pub tags: String,
    /// Whether its amounts make a formula.
    pub sound: bool,
    /// Layers of its jar.
    pub layers: Vec<LayerView>,
}
