//! What the page shows of the pH.

use crate::rooms::batches::view::RemarkView;
use crate::rooms::extracts::view::{ChoiceView, FigureView};
use crate::rooms::findings::view::TickView;
use serde::Serialize;
use tsify::Tsify;

/// The pH of the open formula.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct PhView {
    /// Why there is nothing to say; then all below is empty.
    pub problem: String,
    /// What is aimed at, as its field holds it.
    pub target: String,
    /// What was measured, as its field holds it.
    pub measured: String,
    /// What it comes to as it is written.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub predicted: Option<FigureView>,
    /// Which pH the checks read.
    pub counts: String,
    /// What decides it, the one that moves it most first.
    pub deciders: Vec<FigureView>,
    /// What is not known, with what it can move.
    pub unknown: Vec<FigureView>,
    /// What else the prediction rests on.
    pub rests: Vec<String>,
    /// What can be put into the formula.
    pub offers: Vec<PhOfferView>,
    /// What of fruit acids and salicylic acid is free.
    pub free_acids: Vec<FigureView>,
    /// How much it buffers.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capacity: Option<FigureView>,
    /// How it moves in the jar.
    pub drifts: Vec<DriftView>,
    /// Pictures.
    pub plots: Vec<PlotView>,
    /// Which acid's forms are drawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub species: Option<PhFieldView>,
}

/// Something worked out that can be put into the formula.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct PhOfferView {
    /// Which.
    #[tsify(type = "PhOffer")]
    pub offer: &'static str,
    /// What it hangs on.
    pub fields: Vec<PhFieldView>,
    /// What it comes to, a line each.
    pub lines: Vec<String>,
    /// How what is weighed is handled.
    pub cautions: Vec<String>,
    /// What the button says; empty where there is nothing to put in.
    pub label: String,
    /// Why not.
    pub problem: String,
}

/// A field, or a choice where there are choices.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct PhFieldView {
    /// Its name.
    pub field: String,
    /// What it is called.
    pub label: String,
    /// Unit behind it; may be empty.
    pub unit: String,
    /// What it holds: a text, or the key of what is chosen.
    pub text: String,
    /// What can be chosen; empty where it is typed.
    pub choices: Vec<ChoiceView>,
}

/// How the pH moves.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct DriftView {
    /// By what.
    pub label: String,
    /// From where to where.
    pub value: String,
    /// Which findings come or go.
    pub changes: Vec<RemarkView>,
}

/// A picture with several curves. Places are in shares of its width and height from the lower left.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct PlotView {
    /// Names it.
    #[tsify(type = "\"added\" | \"species\" | \"acts\"")]
    pub plot: &'static str,
    /// What it shows.
    pub title: String,
    /// The picture in words, for those who do not see it.
    pub description: String,
    /// What runs along.
    pub across: String,
    /// What runs up.
    pub up: String,
    /// Marks along.
    pub across_ticks: Vec<TickView>,
    /// Marks up.
    pub up_ticks: Vec<TickView>,
    /// The curves.
    pub curves: Vec<PlotCurve>,
    /// Ranges to be in.
    pub bands: Vec<PlotBand>,
    /// Lines across the picture.
    pub lines: Vec<PlotLine>,
    /// What was measured.
    pub points: Vec<(f64, f64)>,
}

/// One curve.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
pub struct PlotCurve {
    /// What it is of.
    pub label: String,
    /// Its points.
    pub points: Vec<(f64, f64)>,
}

/// A range.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
pub struct PlotBand {
    /// Whether it runs along the picture, between two heights; otherwise it stands upright.
    pub level: bool,
    /// From where.
    pub from: f64,
    /// To where.
    pub to: f64,
    /// What it is.
    pub label: String,
}

/// A line across.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
pub struct PlotLine {
    /// Whether it runs along the picture at a height; otherwise it stands upright.
    pub level: bool,
    /// Where.
    pub at: f64,
    /// What it is.
    pub label: String,
}
