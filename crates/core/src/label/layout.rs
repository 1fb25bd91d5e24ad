//! A label laid out in millimetres: which line of text stands where, in letters as large as fit.

use super::lettering::Lettering;
use super::typeface::{ABOVE, BELOW, FIGURE, SMALL_LETTER, width_of};

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

/// A label that was laid out.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Layout {
    /// Every run, in the order in which it is read: name, text, contents.
    pub runs: Vec<Run>,
    /// The open jar.
    pub open_jar: Option<OpenJar>,
    /// Height of a small letter of the text.
    pub small_letter: f64,
    /// Height of a figure of the contents.
    pub figure: f64,
}

/// Room left free along the edge.
const MARGIN: f64 = 1.5;
/// Room between columns.
const GUTTER: f64 = 3.0;
/// From one line to the next, in parts of the size.
const LEADING: f64 = 1.16;
/// Room between paragraphs, in parts of the size.
const BETWEEN: f64 = 0.3;
/// Sizes are tried in steps of this.
const STEP: f64 = 0.05;
/// The text is never larger than this, unless it has to be.
const LARGEST_TEXT: f64 = 3.6;
/// Nor the name.
const LARGEST_NAME: f64 = 7.0;
/// A column of text is no narrower than this many times its size.
const NARROWEST: f64 = 16.0;
/// Side of the open jar, in parts of the size of the text in it.
const JAR: f64 = 3.4;

/// Lays a label out in letters as large as fit, none smaller than they have to be.
///
/// `None` where even the smallest letters do not fit.
#[must_use]
pub fn lay_out(outline: Outline, text: &LabelText, lettering: &Lettering) -> Option<Layout> {
    let least = round_up(lettering.text.millimetres / SMALL_LETTER);
    let contents = round_up(lettering.contents.millimetres / FIGURE).max(least);
    let mut size = least.max(LARGEST_TEXT);
    loop {
        if let Some(layout) = try_size(outline, text, size, contents.max(size)) {
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

/// A place for lines: where each may begin and how wide it may be.
struct Area {
    outline: Outline,
    left: f64,
    width: f64,
    bottom: f64,
    centred: bool,
}

impl Area {
    /// Left end and width of a line between two heights.
    fn span(&self, top: f64, bottom: f64) -> (f64, f64) {
        if self.outline.shape != Shape::Round {
            return (self.left, self.width);
        }
        let radius = self.outline.width / 2.0;
        let inner = radius - MARGIN;
        let half = |y: f64| (inner * inner - (y - radius) * (y - radius)).max(0.0).sqrt();
        let half = half(top).min(half(bottom));
        (radius - half, 2.0 * half)
    }
}

/// A word and whether it is bold.
type Word<'a> = (&'a str, bool);

struct Setter<'a> {
    area: &'a Area,
    y: f64,
    runs: Vec<Run>,
}

impl<'a> Setter<'a> {
    const fn new(area: &'a Area, top: f64) -> Self {
        Self { area, y: top, runs: Vec::new() }
    }

    /// Sets words line by line; what does not fit into the area any more is handed back. `None` where a word is wider than
    /// any line.
    fn set<'w>(&mut self, words: &[Word<'w>], size: f64) -> Option<Vec<Word<'w>>> {
        let mut rest = words;
        while !rest.is_empty() {
            let bottom = self.y + size * (ABOVE + BELOW);
            if bottom > self.area.bottom + 1e-9 {
                break;
            }
            let (left, width) = self.area.span(self.y, bottom);
            let mut taken = 0;
            let mut wide = 0.0;
            for (word, bold) in rest {
                let space = if taken > 0 { width_of(" ", size, *bold) } else { 0.0 };
                let with = wide + space + width_of(word, size, *bold);
                if with > width + 1e-9 {
                    break;
                }
                wide = with;
                taken += 1;
            }
            if taken == 0 {
                if self.area.outline.shape == Shape::Round && self.y < self.area.outline.height / 2.0 {
                    // Further down a circle is wider.
                    self.y += size * 0.25;
                    continue;
                }
                return None;
            }
            let (line, after) = rest.split_at(taken);
            let begin = if self.area.centred { left + (width - wide) / 2.0 } else { left };
            self.put(line, begin, size);
            self.y += size * LEADING;
            rest = after;
        }
        Some(rest.to_vec())
    }

    /// Puts a line down, words alike in one run.
    fn put(&mut self, line: &[Word<'_>], mut x: f64, size: f64) {
        let y = self.y + size * ABOVE;
        for alike in line.chunk_by(|one, other| one.1 == other.1) {
            let bold = alike.first().is_some_and(|(_, bold)| *bold);
            let text = alike.iter().map(|(word, _)| *word).collect::<Vec<_>>().join(" ");
            let width = width_of(&text, size, bold);
            self.runs.push(Run { x, y, size, width, bold, text });
            x += width + width_of(" ", size, bold);
        }
    }
}

fn words(text: &str, bold: bool) -> impl Iterator<Item = Word<'_>> {
    // A space that does not break keeps its words together.
    text.split([' ', '\n', '\t']).filter(|word| !word.is_empty()).map(move |word| (word, bold))
}

/// Sets paragraphs into areas, one after the other. `None` where they do not fit.
fn flow(areas: &[Area], tops: &[f64], paragraphs: &[Paragraph], size: f64) -> Option<Vec<Run>> {
    let mut setters: Vec<Setter<'_>> = areas.iter().zip(tops).map(|(area, top)| Setter::new(area, *top)).collect();
    let mut at = 0;
    for paragraph in paragraphs {
        let mut rest: Vec<Word<'_>> = words(&paragraph.lead, true).chain(words(&paragraph.text, false)).collect();
        while !rest.is_empty() {
            rest = setters.get_mut(at)?.set(&rest, size)?;
            if !rest.is_empty() {
                at += 1;
            }
        }
        setters.get_mut(at)?.y += size * BETWEEN;
    }
    Some(setters.into_iter().flat_map(|setter| setter.runs).collect())
}

/// The contents, and the open jar beside them, at the foot of an area.
struct Foot {
    runs: Vec<Run>,
    open_jar: Option<OpenJar>,
    top: f64,
}

fn foot(area: &Area, text: &LabelText, size: f64, contents: f64) -> Option<Foot> {
    let jar = if text.opening.is_empty() { 0.0 } else { (JAR * size).max(width_of(&text.opening, size, false) + size) };
    let line = if text.contents.is_empty() { 0.0 } else { contents * (ABOVE + BELOW) };
    let high = line.max(jar);
    let top = area.bottom - high;
    let (left, width) = area.span(top, area.bottom);
    let wide = width_of(&text.contents, contents, true);
    let gap = if jar > 0.0 && wide > 0.0 { size } else { 0.0 };
    if wide + gap + jar > width + 1e-9 {
        return None;
    }
    let begin = if area.centred { left + (width - wide - gap - jar) / 2.0 } else { left };
    let mut runs = Vec::new();
    if wide > 0.0 {
        let y = area.bottom - (high - line) / 2.0 - contents * BELOW;
        runs.push(Run { x: begin, y, size: contents, width: wide, bold: true, text: text.contents.clone() });
    }
    let mut open_jar = None;
    if jar > 0.0 {
        let x = if area.centred { begin + wide + gap } else { left + width - jar };
        let y = area.bottom - (high - jar) / 2.0 - jar;
        open_jar = Some(OpenJar { x, y, side: jar });
        let inside = width_of(&text.opening, size, false);
        let (x, y) = (x + (jar - inside) / 2.0, y + jar * 0.86);
        runs.push(Run { x, y, size, width: inside, bold: false, text: text.opening.clone() });
    }
    Some(Foot { runs, open_jar, top })
}

/// Name and function at the head of an area, in a name as large as fits above `bottom`; how far down they reach.
fn head(area: &Area, top: f64, bottom: f64, text: &LabelText, size: f64) -> Option<(Vec<Run>, f64)> {
    let mut name = LARGEST_NAME.min(size * 2.2).max(size);
    let within = Area { bottom, ..*area };
    loop {
        let mut setter = Setter::new(&within, top);
        let set = |setter: &mut Setter<'_>| {
            let rest = setter.set(&words(&text.name, true).collect::<Vec<_>>(), name)?;
            let function = setter.set(&words(&text.function, false).collect::<Vec<_>>(), size)?;
            (rest.is_empty() && function.is_empty()).then_some(())
        };
        if set(&mut setter).is_some() {
            return Some((setter.runs, setter.y + size * BETWEEN));
        }
        if name <= size {
            return None;
        }
        name = (name - 0.1).max(size);
    }
}

fn try_size(outline: Outline, text: &LabelText, size: f64, contents: f64) -> Option<Layout> {
    let Outline { shape, width, height } = outline;
    let done = |runs: Vec<Run>, open_jar| {
        // In the order in which it is read.
        Layout { runs, open_jar, small_letter: size * SMALL_LETTER, figure: contents * FIGURE }
    };
    if shape == Shape::Wrap {
        // Name and contents stand in front, everything else in columns beside them.
        let front = (width * 0.3).clamp(18.0, 60.0).min(width / 2.0);
        let panel = Area { outline, left: MARGIN, width: front - MARGIN, bottom: height - MARGIN, centred: true };
        let foot = foot(&panel, text, size, contents)?;
        let (mut runs, _) = head(&panel, MARGIN, foot.top, text, size)?;
        let beside = width - front - GUTTER - MARGIN;
        let most = ((beside + GUTTER) / (NARROWEST * size + GUTTER)).floor().clamp(1.0, 6.0);
        // As many columns as there is room for: short lines are read more easily.
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number from 1 to 6")]
        let columns = most as u32;
        let column = (beside - GUTTER * (most - 1.0)) / most;
        let areas: Vec<Area> = (0..columns)
            .map(|at| {
                let left = front + GUTTER + f64::from(at) * (column + GUTTER);
                Area { outline, left, width: column, bottom: height - MARGIN, centred: false }
            })
            .collect();
        runs.extend(flow(&areas, &vec![MARGIN; areas.len()], &text.paragraphs, size)?);
        runs.extend(foot.runs);
        return Some(done(runs, foot.open_jar));
    }
    let is_round = shape == Shape::Round;
    // In a circle nothing stands where a line would be too short to be read.
    let (top, bottom) = if is_round { (height * 0.08, height * 0.92) } else { (MARGIN, height - MARGIN) };
    let area = Area { outline, left: MARGIN, width: width - 2.0 * MARGIN, bottom, centred: is_round };
    let foot = foot(&area, text, size, contents)?;
    let (mut runs, below) = head(&area, top, foot.top, text, size)?;
    let body = Area { bottom: foot.top - size * BETWEEN, ..area };
    runs.extend(flow(&[body], &[below], &text.paragraphs, size)?);
    runs.extend(foot.runs);
    Some(done(runs, foot.open_jar))
}
