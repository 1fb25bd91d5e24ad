//! What the page shows of extracts.

use serde::Serialize;
use tsify::Tsify;

/// The maker's extracts and solutions.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ExtractsView {
    /// Each of them, last changed first.
    pub cards: Vec<ExtractCard>,
    /// Plants the catalogue knows the water of.
    pub plants: Vec<ChoiceView>,
}

/// One extract in the list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ExtractCard {
    /// Names it.
    pub id: String,
    /// What the maker calls it.
    pub name: String,
    /// What it is in a few words.
    pub about: String,
    /// Whether it is the open one.
    pub open: bool,
}

/// Something to choose.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
pub struct ChoiceView {
    /// Names it.
    pub key: String,
    /// What it is called.
    pub label: String,
}

/// The open extract.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ExtractView {
    /// Names it; absent when none is open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub id: Option<String>,
    /// What it is.
    #[tsify(type = "ExtractKind")]
    pub kind: &'static str,
    /// What the maker calls it.
    pub name: String,
    /// Whether it was blended, so that there is no plan.
    pub blended: bool,
    /// What each field holds.
    pub fields: Vec<FieldText>,
    /// Sentences beside fields that depend on them.
    pub plant: String,
    /// Why there is nothing to predict.
    pub problem: String,
    /// What it is made of.
    pub parts: Vec<FigureView>,
    /// What to expect of it.
    pub figures: Vec<FigureView>,
    /// What was done to it after pressing.
    pub steps: Vec<String>,
    /// Where it stands between water and pure glycerin.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub scale: Option<ScaleView>,
    /// Whether it keeps.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub keeping: Option<KeepingView>,
    /// What can be done, worked out.
    pub offers: Vec<OfferView>,
    /// Batches chosen for a blend.
    pub blend: Vec<ChoiceView>,
    /// Other extracts a blend could take.
    pub others: Vec<ChoiceView>,
    /// The open formula with it, and with glycerin and water in its place.
    pub comparison: Vec<ComparedView>,
    /// What is compared, or why nothing is.
    pub compared: String,
}

/// What a field holds.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
pub struct FieldText {
    /// Its name.
    pub field: String,
    /// Its text.
    pub text: String,
}

/// A figure and how it was come by.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
pub struct FigureView {
    /// What it is.
    pub label: String,
    /// The figure; empty where there is none.
    pub value: String,
    /// Its range, or why there is no figure.
    pub range: String,
    /// Arithmetic or equation.
    pub how: String,
    /// Where that was published.
    pub source: String,
}

impl FigureView {
    /// A figure that rests on nothing published.
    pub(crate) fn worked_out(label: &str, value: String, range: String, how: String) -> Self {
        Self { label: label.to_owned(), value, range, how, source: String::new() }
    }
}

/// The scale from water to pure glycerin. Places are in percent of its height, from the top.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ScaleView {
    /// The scale in words.
    pub description: String,
    /// Steps at which more can multiply.
    pub marks: Vec<MarkView>,
    /// Where organisms begin to multiply.
    pub ticks: Vec<f64>,
    /// The glycerin in percent along it.
    pub percents: Vec<MarkView>,
    /// Where this liquid stands.
    pub here: MarkView,
    /// Where its band ends on the strong side.
    pub top: f64,
    /// How long the band is.
    pub height: f64,
}

/// A mark of the scale.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
pub struct MarkView {
    /// Its place.
    pub at: f64,
    /// What stands beside it.
    pub label: String,
    /// Whether the low-risk criterion of ISO 29621 stands here.
    pub criterion: bool,
}

/// Whether it keeps.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct KeepingView {
    /// In a sentence.
    pub verdict: String,
    /// Tone of the verdict.
    #[tsify(type = "\"stop\" | \"caution\" | \"note\"")]
    pub tone: &'static str,
    /// When to throw it away at the latest.
    pub use_by: String,
    /// What else is to be said.
    pub remarks: Vec<String>,
    /// Organisms that can multiply, the hardiest first.
    pub multiply: Vec<ChoiceView>,
    /// Organisms that cannot, the nearest first.
    pub held_back: Vec<ChoiceView>,
}

/// Something that can be done, worked out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
pub struct OfferView {
    /// Which.
    #[tsify(type = "ExtractOffer")]
    pub offer: &'static str,
    /// What it comes to, a line each.
    pub lines: Vec<String>,
    /// Why it cannot be done.
    pub problem: String,
    /// What its button says; empty where it cannot be done.
    pub label: String,
}

/// One constituent of two jars.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
pub struct ComparedView {
    /// Its INCI name.
    pub inci: String,
    /// Percent with the extract.
    pub with: String,
    /// Percent with glycerin and water in its place.
    pub without: String,
}
