//! What the page shows of findings.

use serde::Serialize;
use std::rc::Rc;
use tsify::Tsify;

/// Everything the checks found in the open formula.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct FindingsView {
    /// Whether the amounts make no whole yet, so that nothing is checked; what was found before may stay in sight.
    pub waiting: bool,
    /// How many of each, in a sentence.
    pub summary: String,
    /// The most serious: `stop`, `caution`, `note`, or empty.
    pub worst: String,
    /// The findings, most serious first.
    #[tsify(type = "FindingView[]")]
    pub items: Vec<Rc<FindingView>>,
    /// Findings set aside.
    pub set_aside: Vec<SetAsideView>,
    /// Lines meant to stay solid.
    pub suspended: Vec<SuspendedView>,
    /// Word of the kind of product; empty where it is not stated.
    pub kind: String,
    /// Measured pH, as the field holds it.
    pub measured_ph: String,
    /// Temperature of cold storage, as the field holds it.
    pub cold_storage: String,
}

/// One finding.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct FindingView {
    /// Names it while the formula changes.
    pub key: String,
    /// `stop`, `caution` or `note`.
    #[tsify(type = "\"stop\" | \"caution\" | \"note\"")]
    pub severity: &'static str,
    /// The sentence.
    pub text: String,
    /// What it is a matter of: solubility, preservation.
    pub family: String,
    /// The lines behind it.
    pub lines: Vec<u32>,
    /// What would remove it.
    pub cures: Vec<String>,
    /// Its arithmetic, sources and picture, if it is open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub open: Option<FindingDetail>,
}

/// The inside of a finding.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct FindingDetail {
    /// What it means and why it matters.
    pub meaning: String,
    /// The arithmetic, line by line.
    pub working: Vec<String>,
    /// Where limit and equation come from.
    pub sources: Vec<FindingSource>,
    /// A picture.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub chart: Option<ChartView>,
}

/// A source and how far to trust it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct FindingSource {
    /// The citation.
    pub text: String,
    /// How far to trust it.
    pub basis: String,
}

/// A finding set aside.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct SetAsideView {
    /// Names it.
    pub key: String,
    /// Its sentence; empty while it is not found.
    pub text: String,
    /// Why it was set aside.
    pub reason: String,
}

/// A line meant to stay solid.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct SuspendedView {
    /// The line.
    pub line: u32,
    /// What is weighed in it.
    pub name: String,
}

/// A picture, in shares of its width and height from the lower left.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ChartView {
    /// The picture in a sentence, for those who do not see it.
    pub description: String,
    /// What the first axis measures.
    pub across: String,
    /// What the second axis measures; empty where there is none.
    pub up: String,
    /// Marks along the first axis.
    pub across_ticks: Vec<TickView>,
    /// Marks along the second axis.
    pub up_ticks: Vec<TickView>,
    /// The curve.
    pub curve: Vec<(f64, f64)>,
    /// Where on the first axis it is as it should be.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub band: Option<(f64, f64)>,
    /// Points and lines to look at.
    pub marks: Vec<MarkView>,
}

/// A mark along an axis.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct TickView {
    /// Where.
    pub at: f64,
    /// Its number.
    pub text: String,
}

/// A point, or a line across.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct MarkView {
    /// Along the first axis.
    pub x: f64,
    /// Along the second axis; absent for a line across the picture.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub y: Option<f64>,
    /// What it is.
    pub text: String,
}
