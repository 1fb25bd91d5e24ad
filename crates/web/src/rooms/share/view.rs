//! What the page shows of a formula that comes from elsewhere or goes there.

use crate::rooms::update::Update;
use serde::{Deserialize, Serialize};
use stillroom_core::number::DecimalMark;
use tsify::Tsify;

/// How a reader wants a shared formula worked out and written.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, Tsify)]
#[serde(rename_all = "camelCase", default)]
pub struct ReadingOptions {
    /// Mark between whole and fraction; a point unless another is asked for.
    #[tsify(type = "\"point\" | \"comma\"")]
    pub decimal_mark: DecimalMark,
    /// A batch by mass, as typed, instead of the one the maker asked for.
    pub batch: Option<String>,
    /// Unit of mass: `g`, `oz`, …
    pub mass_unit: Option<String>,
    /// Unit of temperature: `°C` or `°F`.
    pub temperature_unit: Option<String>,
    /// Step of the reader's scale, as typed.
    pub scale_step: Option<String>,
}

/// A shared formula, for reading: nothing of it is kept.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ReadingView {
    /// Why the link cannot be read, in a sentence.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub error: Option<String>,
    /// Stable code of the error.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[tsify(type = "string")]
    pub code: Option<&'static str>,
    /// The formula worked out: head, lines, jar, constituents, batch. A batch that is not understood is its answer.
    pub update: Update,
    /// The method, a step each.
    pub steps: Vec<String>,
    /// Use, pH and size in a few words.
    pub about: String,
    /// Own materials that come along, each in a sentence.
    pub materials: Vec<String>,
    /// How it stands to what this device keeps.
    pub standing: Standing,
    /// What is different in the version this device keeps, if there is another one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub comparison: Option<ComparisonView>,
}

/// How a shared formula stands to what this device keeps.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// This device has none of it.
    #[default]
    New,
    /// This device keeps the very same.
    Same,
    /// This device keeps another version.
    Differs,
}

/// What is different between two versions of a formula.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ComparisonView {
    /// In a sentence.
    pub summary: String,
    /// Materials whose percent is different.
    pub lines: Vec<ChangeView>,
    /// Constituents of the finished product whose percent is different, largest difference first.
    pub composition: Vec<ChangeView>,
    /// What else is different, a sentence each.
    pub others: Vec<String>,
}

/// One number that is different.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ChangeView {
    /// Of what.
    pub name: String,
    /// Its percent before; empty where it was not there.
    pub before: String,
    /// Its percent after; empty where it is not there any more.
    pub after: String,
    /// The difference, with its sign.
    pub difference: String,
}

/// A formula as a link.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LinkView {
    /// Why there is none, in a sentence.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub error: Option<String>,
    /// Name of the formula.
    pub name: String,
    /// The whole address.
    pub address: String,
    /// What stands behind `#` in it.
    pub fragment: String,
    /// How long it is, in a sentence.
    pub about: String,
    /// What of it is for its maker alone, and whether it is in the link; empty where there is nothing of the kind.
    pub kept_back: String,
    /// The same as a picture.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub code: Option<CodeView>,
    /// Why there is no picture, in a sentence.
    pub code_problem: String,
}

/// A QR code.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CodeView {
    /// Modules along a side, with the empty margin of four around it.
    pub side: u32,
    /// Its dark modules as the path of a drawing in modules.
    pub path: String,
    /// How wide it has to be on paper, in a sentence.
    pub about: String,
    /// That width in millimetres.
    pub millimetres: u32,
}
