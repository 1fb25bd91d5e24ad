//! Labels on a printed sheet.

use super::layout::Outline;

/// Paper to print on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Paper {
    /// 210 by 297 mm. *Source*: ISO 216.
    A4,
    /// 8.5 by 11 inches. *Source*: ANSI/ASME Y14.1 size A.
    Letter,
}

impl Paper {
    /// Width and height in millimetres.
    #[must_use]
    pub const fn size(self) -> (f64, f64) {
        match self {
            Self::A4 => (210.0, 297.0),
            Self::Letter => (215.9, 279.4),
        }
    }
}

/// What printers leave white along the edge, in millimetres: common practice.
const EDGE: f64 = 8.0;
/// Room between labels, to cut in.
const GAP: f64 = 2.0;
/// Most labels printed at once.
pub const MOST_LABELS: u32 = 500;

/// Where labels stand on their sheets.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// Upper left corners of the labels of a full sheet, row by row.
    pub places: Vec<(f64, f64)>,
    /// How many sheets.
    pub sheets: u32,
    /// How many labels on the last.
    pub on_last: u32,
}

/// Sheets of so many labels. `None` where one is larger than the paper, or none is asked for or too many.
///
/// ```
/// use stillroom_core::label::{Outline, Paper, Shape, lay_sheets};
/// let label = Outline::new(Shape::Flat, 60.0, 90.0).unwrap();
/// let sheets = lay_sheets(label, Paper::A4, 12).unwrap();
/// // Three beside each other in 194 mm, three below each other in 281.
/// assert_eq!((sheets.places.len(), sheets.sheets, sheets.on_last), (9, 2, 3));
/// ```
#[must_use]
pub fn lay_sheets(label: Outline, paper: Paper, count: u32) -> Option<Sheet> {
    let (width, height) = paper.size();
    let along = |paper: f64, side: f64| ((paper - 2.0 * EDGE + GAP) / (side + GAP)).floor().max(0.0);
    // Whole numbers, no larger than a sheet of the smallest labels has.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number from 0 to 40")]
    let (across, down) = (along(width, label.width) as u32, along(height, label.height) as u32);
    let each = across * down;
    if each == 0 || count == 0 || count > MOST_LABELS {
        return None;
    }
    let place = |at: u32| {
        let (column, row) = (f64::from(at % across), f64::from(at / across));
        (EDGE + column * (label.width + GAP), EDGE + row * (label.height + GAP))
    };
    let sheets = count.div_ceil(each);
    Some(Sheet { places: (0..each).map(place).collect(), sheets, on_last: count - (sheets - 1) * each })
}
