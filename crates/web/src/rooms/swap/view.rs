//! What the page shows of making it with what one has.

use crate::rooms::batches::view::RemarkView;
use crate::rooms::ph::view::PhFieldView;
use serde::Serialize;
use stillroom_core::Layer;
use tsify::Tsify;

/// The open formula made with what one has.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct SwapView {
    /// Why there is nothing to work out; then all below is empty.
    pub problem: String,
    /// What is asked.
    #[tsify(type = "SwapUse")]
    pub wanted: &'static str,
    /// Lines of the formula.
    pub lines: Vec<SwapLineView>,
    /// The line that is swapped.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub line: Option<u32>,
    /// What is weighed in it.
    pub name: String,
    /// What its author says to take instead, as the field holds it.
    pub note: String,
    /// Ways to do without the line, worked out.
    pub ways: Vec<SwapWayView>,
    /// What is asked hangs on these.
    pub fields: Vec<PhFieldView>,
    /// What is to be said of the shelf: what is past its date, what has no price.
    pub said: Vec<String>,
    /// Why there is no answer, and the least that would help.
    pub refused: Vec<String>,
    /// What was worked out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub version: Option<SwapVersionView>,
}

/// A line of the formula, to choose or to mark.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct SwapLineView {
    /// Which.
    pub line: u32,
    /// What is weighed in it.
    pub name: String,
    /// Its percent.
    pub percent: String,
    /// Whether it is the chosen one, is missing, or may vary.
    pub marked: bool,
    /// What there is of it.
    pub remark: String,
}

/// One way to do without a line.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct SwapWayView {
    /// Names it.
    pub key: String,
    /// `same` for another strength, `parts` for what it is made of or makes, `other` for what does its job.
    #[tsify(type = "\"same\" | \"parts\" | \"other\"")]
    pub kind: &'static str,
    /// What is taken instead.
    pub name: String,
    /// What is weighed then.
    pub takes: String,
    /// Whether it is on the shelf.
    pub at_hand: bool,
    /// Whether it is looked at.
    pub chosen: bool,
    /// Why it is offered.
    pub reasons: Vec<String>,
    /// What becomes different.
    pub differences: Vec<String>,
    /// What the checks find then, or find no longer.
    pub findings: Vec<RemarkView>,
    /// Where the figures were found.
    pub sources: Vec<String>,
    /// Why it cannot be done.
    pub problem: String,
}

/// The formula before and after.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct SwapVersionView {
    /// What changes, in a sentence.
    pub summary: String,
    /// Line by line.
    pub lines: Vec<SwapPairView>,
    /// What is in the jar by layer.
    pub layers: Vec<SwapPairView>,
    /// The layers as a bar.
    pub before: BarView,
    /// The layers of the version as a bar.
    pub after: BarView,
    /// What the checks no longer find.
    pub gone: Vec<RemarkView>,
    /// What they find then.
    pub new: Vec<RemarkView>,
    /// What it costs, or what has no price; may be empty.
    pub cost: String,
    /// What to expect on skin.
    pub expect: Vec<String>,
    /// What of the formula is missed, and by how much.
    pub missed: Vec<String>,
    /// What the button says; empty where nothing changes.
    pub label: String,
}

/// Something before and after.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct SwapPairView {
    /// What.
    pub name: String,
    /// Its layer, for a layer.
    #[tsify(type = "Layer", optional)]
    #[serde(skip_serializing_if = "Option::is_none")]
    pub layer: Option<Layer>,
    /// Percent before; empty where it was not there.
    pub before: String,
    /// Percent after; empty where it is gone.
    pub after: String,
    /// Mass to weigh in the batch after; empty for a layer.
    pub mass: String,
    /// `same`, `changed`, `new` or `gone`.
    #[tsify(type = "\"same\" | \"changed\" | \"new\" | \"gone\"")]
    pub fate: &'static str,
}

/// Layers side by side.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct BarView {
    /// In a sentence, for those who do not see it.
    pub description: String,
    /// From the left.
    pub bands: Vec<BandView>,
}

/// A layer of a bar, in shares of its length.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct BandView {
    /// Which.
    #[tsify(type = "Layer")]
    pub layer: Layer,
    /// Where it begins.
    pub from: f64,
    /// How long it is.
    pub length: f64,
}
