//! Pictures of a finding as numbers; how they are drawn is the page's business.

use super::finding::Value;

/// What an axis measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Axis {
    /// Temperature in degrees Celsius.
    Temperature,
    /// Percent of the product.
    Percent,
    /// pH.
    Ph,
    /// Share of an acid that is not dissociated, in percent.
    Undissociated,
    /// Hydrophilic-lipophilic balance.
    Hlb,
}

/// A point to look at, with a word for it.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// Along the first axis.
    pub x: f64,
    /// Along the second axis; nothing for a line across the chart.
    pub y: Option<f64>,
    /// Key of its label.
    pub label: &'static str,
    /// The number in its label.
    pub value: Value,
}

/// A curve, the formula's own point, and a band to be in.
#[derive(Debug, Clone, PartialEq)]
pub struct Chart {
    /// First axis, and where it begins and ends.
    pub x: (Axis, f64, f64),
    /// Second axis, and where it begins and ends; nothing where there is only one.
    pub y: Option<(Axis, f64, f64)>,
    /// The curve.
    pub curve: Vec<(f64, f64)>,
    /// Where on the first axis it is as it should be.
    pub band: Option<(f64, f64)>,
    /// Points and lines to look at.
    pub marks: Vec<Mark>,
}
