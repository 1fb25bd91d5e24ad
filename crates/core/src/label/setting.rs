//! Text set line by line into the parts of a label: its head, its foot, its columns.

use super::layout::{CodeSquare, LabelText, OpenJar, Outline, Paragraph, Run, Shape};
use super::typeface::{ABOVE, BELOW, width_of};

/// Room left free along the edge.
pub(super) const MARGIN: f64 = 1.5;
/// From one line to the next, in parts of the size.
const LEADING: f64 = 1.16;
/// Room between paragraphs, in parts of the size.
pub(super) const BETWEEN: f64 = 0.3;
/// The name is not set larger, whatever room there is.
const LARGEST_NAME: f64 = 7.0;
/// Side of the open jar, in parts of the size of the text in it.
const JAR: f64 = 3.4;

/// Where a code stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Place {
    /// Beside what else stands there: behind the columns of a strip, or in the line of the contents.
    Beside,
    /// Below the last column of a strip, or above the line of the contents.
    Below,
}

/// A code that is to stand somewhere.
#[derive(Debug, Clone, Copy)]
pub(super) struct Wished {
    /// How wide and high it is with its empty edge.
    pub(super) side: f64,
    /// How wide one of its modules is.
    pub(super) module: f64,
    /// Where it is to stand.
    pub(super) place: Place,
}

/// A place for lines: where each may begin and how wide it may be.
#[derive(Clone, Copy)]
pub(super) struct Area {
    pub(super) outline: Outline,
    pub(super) left: f64,
    pub(super) width: f64,
    pub(super) bottom: f64,
    pub(super) centred: bool,
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
pub(super) fn flow(areas: &[Area], top: f64, paragraphs: &[Paragraph], size: f64) -> Option<Vec<Run>> {
    let mut setters: Vec<Setter<'_>> = areas.iter().map(|area| Setter::new(area, top)).collect();
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

/// The contents, and the open jar and perhaps a code beside or above them, at the foot of an area.
pub(super) struct Foot {
    pub(super) runs: Vec<Run>,
    pub(super) open_jar: Option<OpenJar>,
    pub(super) code: Option<CodeSquare>,
    /// How far up they reach.
    pub(super) top: f64,
}

/// `code` is its side, its module, and whether it stands beside the contents or above them.
pub(super) fn foot(area: &Area, text: &LabelText, size: f64, contents: f64, code: Option<Wished>) -> Option<Foot> {
    let jar = if text.opening.is_empty() { 0.0 } else { (JAR * size).max(width_of(&text.opening, size, false) + size) };
    let line = if text.contents.is_empty() { 0.0 } else { contents * (ABOVE + BELOW) };
    let square = code.filter(|code| code.place == Place::Beside).map_or(0.0, |code| code.side);
    let high = line.max(jar).max(square);
    let mut top = area.bottom - high;
    let (left, width) = area.span(top, area.bottom);
    let wide = width_of(&text.contents, contents, true);
    // What stands in the line, from the left, each with the room before it.
    let parts = [wide, jar, square];
    let count = parts.iter().filter(|part| **part > 0.0).count();
    #[expect(clippy::cast_precision_loss, reason = "at most three")]
    let total = parts.iter().sum::<f64>() + size * count.saturating_sub(1) as f64;
    if total > width + 1e-9 {
        return None;
    }
    let begin = if area.centred { left + (width - total) / 2.0 } else { left };
    let middle = |high_here: f64| area.bottom - f64::midpoint(high, high_here);
    let mut runs = Vec::new();
    if wide > 0.0 {
        let y = middle(line) + line - contents * BELOW;
        runs.push(Run { x: begin, y, size: contents, width: wide, bold: true, text: text.contents.clone() });
    }
    // The others stand at the other end, unless all stand in the middle.
    let end = if area.centred { begin + total } else { left + width };
    let of_code = end - square;
    let mut open_jar = None;
    if jar > 0.0 {
        let x = if square > 0.0 { of_code - size - jar } else { end - jar };
        let y = middle(jar);
        open_jar = Some(OpenJar { x, y, side: jar });
        let inside = width_of(&text.opening, size, false);
        let (x, y) = (x + (jar - inside) / 2.0, y + jar * 0.86);
        runs.push(Run { x, y, size, width: inside, bold: false, text: text.opening.clone() });
    }
    let code = match code {
        Some(Wished { side, module, place: Place::Beside }) => {
            Some(CodeSquare { x: of_code, y: middle(side), side, module })
        }
        Some(Wished { side, module, place: Place::Below }) => {
            let bottom = top - size * BETWEEN;
            top = bottom - side;
            let (left, width) = area.span(top, bottom);
            if top < 0.0 || side > width + 1e-9 {
                return None;
            }
            let x = if area.centred { left + (width - side) / 2.0 } else { left };
            Some(CodeSquare { x, y: top, side, module })
        }
        None => None,
    };
    Some(Foot { runs, open_jar, code, top })
}

/// Name and function at the head of an area, in a name as large as fits above `bottom`; how far down they reach.
pub(super) fn head(area: &Area, top: f64, bottom: f64, text: &LabelText, size: f64) -> Option<(Vec<Run>, f64)> {
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
