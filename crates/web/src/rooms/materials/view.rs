//! What the page sees of materials.

use crate::contract::ValueView;
use serde::Serialize;
use stillroom_core::{Class, Layer, PhaseKind};
use tsify::Tsify;

/// One answer of a search.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct MaterialHit {
    /// The material.
    pub id: String,
    /// Its name.
    pub name: String,
    /// INCI, class and phase in a few words.
    pub about: String,
    /// Whether it is the maker's own, a formula, or of the catalogue.
    pub origin: Origin,
}

/// What the maker has of a material.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct HeldView {
    /// The material.
    pub id: String,
    /// Its name.
    pub name: String,
    /// The layer it goes into.
    #[tsify(type = "Layer")]
    pub layer: Layer,
    /// Its lot, where one is noted.
    pub about: String,
    /// How much there is, with its unit; empty where that is not noted.
    pub stock: String,
    /// By when it should be used, in words; empty where no day is noted.
    pub until: String,
    /// Whether that day is past, or comes soon.
    pub late: bool,
}

/// Where a material comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum Origin {
    /// The catalogue.
    Catalogue,
    /// The maker's own.
    Own,
    /// Another formula on the shelf.
    Formula,
}

/// The open material.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct MaterialView {
    /// The material; absent when none is open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub id: Option<String>,
    /// Whether the maker can change it.
    pub own: bool,
    /// Whether it is made of others.
    pub composite: bool,
    /// Its name.
    pub name: String,
    /// Its INCI name, where it is simple.
    pub inci: String,
    /// What it is.
    #[tsify(type = "Class")]
    #[serde(skip_serializing_if = "Option::is_none")]
    pub class: Option<Class>,
    /// What that is called.
    pub class_label: String,
    /// Phase it usually goes into.
    #[tsify(type = "PhaseKind")]
    #[serde(skip_serializing_if = "Option::is_none")]
    pub phase_kind: Option<PhaseKind>,
    /// What that is called.
    pub phase_label: String,
    /// Its density.
    pub density: String,
    /// The maker's note.
    pub note: String,
    /// Its parts.
    pub parts: Vec<PartView>,
    /// Sum of the parts.
    pub parts_total: String,
    /// What is wrong with it.
    pub problems: Vec<String>,
    /// What it brings, most first.
    pub constituents: Vec<BringsView>,
    /// Known values, each with its source.
    pub values: Vec<ValueView>,
    /// Formulas that use it.
    pub used_in: Vec<String>,
    /// What the maker has of it.
    pub holding: HoldingView,
}

/// What the maker has of a material, as its fields hold it.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct HoldingView {
    /// Price of a pack.
    pub price: String,
    /// Its currency.
    pub currency: String,
    /// What a pack holds.
    pub pack: String,
    /// What getting a pack here adds.
    pub shipping: String,
    /// How much is there.
    pub stock: String,
    /// Lot number.
    pub lot: String,
    /// Last day it should be used, as `2027-05-31`.
    pub expiry: String,
    /// Density as measured.
    pub density: String,
    /// Usual percent by experience.
    pub usual: String,
    /// Notes.
    pub note: String,
    /// Price per 100 of the maker's unit and whether the material is past its date, in sentences.
    pub remarks: Vec<String>,
}

/// One part of a composite.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct PartView {
    /// The material.
    pub material: String,
    /// Its name.
    pub name: String,
    /// What the field holds.
    pub amount: String,
    /// Its percent.
    pub percent: String,
    /// Whether it is the q.s. part.
    pub quantum_satis: bool,
}

/// One constituent of a material.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct BringsView {
    /// INCI name.
    pub inci: String,
    /// Percent of the material.
    pub percent: String,
}

/// A table of materials that was read.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct TableView {
    /// What was read, in a sentence.
    pub summary: String,
    /// What is wrong, line by line, in sentences.
    pub problems: Vec<String>,
    /// How many materials can be taken in; none if anything is wrong.
    pub ready: usize,
}

/// A row of the bibliography.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct SourceView {
    /// Citation.
    pub citation: String,
    /// What it is, and to which day it was valid.
    pub about: String,
}
