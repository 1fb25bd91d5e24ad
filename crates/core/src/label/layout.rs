//! A label laid out in millimetres: which line of text stands where, in letters as large as fit.

use super::lettering::Lettering;
use super::link::{LEAST_MODULE, USUAL_MODULE};
use super::setting::{Area, BETWEEN, MARGIN, Place, Wished, flow, foot, head};
use super::typeface::{FIGURE, SMALL_LETTER};

/// What a label is stuck on, by its outline.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shape {
    /// A rectangle on a flat side.
    Flat,
    /// A strip around a jar or a bottle: what a buyer sees first is a part of it.
    Wrap,
    /// A circle on a lid.
    Round,
}

/// Outline of a label, in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outline {
    /// Its shape.
    pub shape: Shape,
    /// How wide, or the diameter of a circle.
    pub width: f64,
    /// How high; of a circle the same.
    pub height: f64,
}

impl Outline {
    /// Smallest and largest side of a label, in millimetres.
    pub const SIDES: core::ops::RangeInclusive<f64> = 10.0..=400.0;

    /// An outline. `None` where a side is outside [`Outline::SIDES`].
    #[must_use]
    pub fn new(shape: Shape, width: f64, height: f64) -> Option<Self> {
        let height = if shape == Shape::Round { width } else { height };
        let fits = |side: &f64| Self::SIDES.contains(side);
        (fits(&width) && fits(&height)).then_some(Self { shape, width, height })
    }

    /// Area in square millimetres.
    #[must_use]
    pub fn area(&self) -> f64 {
        match self.shape {
            Shape::Flat | Shape::Wrap => self.width * self.height,
            Shape::Round => core::f64::consts::FRAC_PI_4 * self.width * self.width,
        }
    }

    /// Area of the part a buyer sees first: of a strip around a cylinder 40 % of it.
    ///
    /// *Source*: 21 CFR 701.10 (from memory).
    #[must_use]
    pub fn panel(&self) -> f64 {
        if self.shape == Shape::Wrap { 0.4 * self.area() } else { self.area() }
    }
}

/// A paragraph: what it begins with in bold, and the rest.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Paragraph {
    /// In bold; may be empty.
    pub lead: String,
    /// The text.
    pub text: String,
}

/// What stands on a label.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct LabelText {
    /// Name of the product.
    pub name: String,
    /// What it is for.
    pub function: String,
    /// What it holds.
    pub contents: String,
    /// What stands in the open jar: months after opening.
    pub opening: String,
    /// Everything else, in its order.
    pub paragraphs: Vec<Paragraph>,
    /// Modules along a side of a code that is to stand on it, its empty edge among them.
    pub code: Option<u32>,
}

/// A run of letters in one line.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// Its left end.
    pub x: f64,
    /// Its line, from above.
    pub y: f64,
    /// Size of its letters.
    pub size: f64,
    /// How wide it is to be.
    pub width: f64,
    /// Whether it is bold.
    pub bold: bool,
    /// What it says.
    pub text: String,
}

/// The open jar with the months in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OpenJar {
    /// Its left edge.
    pub x: f64,
    /// Its upper edge.
    pub y: f64,
    /// How wide and high it is.
    pub side: f64,
}

/// Where a QR code stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CodeSquare {
    /// Left end of its empty edge.
    pub x: f64,
    /// Upper end of its empty edge.
    pub y: f64,
    /// How wide and high it is with its empty edge.
    pub side: f64,
    /// How wide one of its modules is.
    pub module: f64,
}

/// A label that was laid out.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Layout {
    /// Every run, in the order in which it is read: name, text, contents.
    pub runs: Vec<Run>,
    /// The open jar.
    pub open_jar: Option<OpenJar>,
    /// The code; not there where none is asked for, and where it does not fit in modules as large as they have to be.
    pub code: Option<CodeSquare>,
    /// Height of a small letter of the text.
    pub small_letter: f64,
    /// Height of a figure of the contents.
    pub figure: f64,
}

/// Room between columns.
const GUTTER: f64 = 3.0;
/// Sizes are tried in steps of this.
const STEP: f64 = 0.05;
/// The text is never larger than this, unless it has to be.
const LARGEST_TEXT: f64 = 3.6;
/// A column of text is no narrower than this many times its size.
const NARROWEST: f64 = 16.0;

/// Lays a label out in letters as large as fit, none smaller than they have to be.
///
/// A code that is asked for stands there in modules that are read with ease, or else in the smallest ones, or not at all: what
/// the law asks for comes first. `None` where even the smallest letters do not fit.
#[must_use]
pub fn lay_out(outline: Outline, text: &LabelText, lettering: &Lettering) -> Option<Layout> {
    let codes = text.code.into_iter().flat_map(|modules| [(modules, USUAL_MODULE), (modules, LEAST_MODULE)]);
    let wishes = codes.map(|(modules, module)| {
        let in_place = |place| Some(Wished { side: f64::from(modules) * module, module, place });
        vec![in_place(Place::Beside), in_place(Place::Below)]
    });
    wishes.chain([vec![None]]).find_map(|places| in_largest_letters(outline, text, lettering, &places))
}

/// The same, with the code in the place that lets the letters be largest.
fn in_largest_letters(
    outline: Outline,
    text: &LabelText,
    lettering: &Lettering,
    places: &[Option<Wished>],
) -> Option<Layout> {
    let least = round_up(lettering.text.millimetres / SMALL_LETTER);
    let contents = round_up(lettering.contents.millimetres / FIGURE).max(least);
    let mut size = least.max(LARGEST_TEXT);
    loop {
        let set = |code: &Option<Wished>| try_size(outline, text, size, contents.max(size), *code);
        if let Some(layout) = places.iter().find_map(set) {
            return Some(layout);
        }
        if size <= least {
            return None;
        }
        size = (size - STEP).max(least);
    }
}

/// A size with two decimals that is not smaller.
fn round_up(size: f64) -> f64 {
    (size * 100.0).ceil() / 100.0
}

fn try_size(outline: Outline, text: &LabelText, size: f64, contents: f64, code: Option<Wished>) -> Option<Layout> {
    if outline.shape == Shape::Wrap {
        return strip(outline, text, size, contents, code);
    }
    let Outline { shape, width, height } = outline;
    let is_round = shape == Shape::Round;
    // In a circle nothing stands where a line would be too short to be read.
    let (top, bottom) = if is_round { (height * 0.08, height * 0.92) } else { (MARGIN, height - MARGIN) };
    let area = Area { outline, left: MARGIN, width: width - 2.0 * MARGIN, bottom, centred: is_round };
    let foot = foot(&area, text, size, contents, code)?;
    let (mut runs, below) = head(&area, top, foot.top, text, size)?;
    let body = Area { bottom: foot.top - size * BETWEEN, ..area };
    runs.extend(flow(&[body], below, &text.paragraphs, size)?);
    runs.extend(foot.runs);
    Some(done(runs, foot.open_jar, foot.code, size, contents))
}

/// Runs in the order in which they are read, with how high their letters are.
fn done(runs: Vec<Run>, open_jar: Option<OpenJar>, code: Option<CodeSquare>, size: f64, contents: f64) -> Layout {
    Layout { runs, open_jar, code, small_letter: size * SMALL_LETTER, figure: contents * FIGURE }
}

/// A strip: name and contents stand in front, everything else in columns beside them.
fn strip(outline: Outline, text: &LabelText, size: f64, contents: f64, code: Option<Wished>) -> Option<Layout> {
    let Outline { width, height, .. } = outline;
    let front = (width * 0.3).clamp(18.0, 60.0).min(width / 2.0);
    let bottom = height - MARGIN;
    let panel = Area { outline, left: MARGIN, width: front - MARGIN, bottom, centred: true };
    let foot = foot(&panel, text, size, contents, None)?;
    let (mut runs, _) = head(&panel, MARGIN, foot.top, text, size)?;
    let aside = code.filter(|code| code.place == Place::Beside).map_or(0.0, |code| code.side + GUTTER);
    let beside = width - front - GUTTER - MARGIN - aside;
    let most = ((beside + GUTTER) / (NARROWEST * size + GUTTER)).floor().clamp(1.0, 6.0);
    // As many columns as there is room for: short lines are read more easily.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number from 1 to 6")]
    let columns = most as u32;
    let column = (beside - GUTTER * (most - 1.0)) / most;
    let mut areas: Vec<Area> = (0..columns)
        .map(|at| {
            let left = front + GUTTER + f64::from(at) * (column + GUTTER);
            Area { outline, left, width: column, bottom, centred: false }
        })
        .collect();
    let square = code.map(|Wished { side, module, place }| {
        let y = if place == Place::Beside { MARGIN } else { bottom - side };
        CodeSquare { x: width - MARGIN - side, y, side, module }
    });
    if let Some(square) = square {
        let is_wide_enough = aside > 0.0 || square.side <= column;
        if square.y < MARGIN || square.y + square.side > bottom + 1e-9 || !is_wide_enough || column <= 0.0 {
            return None;
        }
        if let Some(last) = areas.last_mut().filter(|_| aside == 0.0) {
            last.bottom = square.y - size * BETWEEN;
        }
    }
    runs.extend(flow(&areas, MARGIN, &text.paragraphs, size)?);
    runs.extend(foot.runs);
    Some(done(runs, foot.open_jar, square, size, contents))
}
