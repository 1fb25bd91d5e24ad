//! The formula as a picture: a card with its name, the jar with its layers, and the lines with percent and grams.
//!
//! All of its geometry is here; the page shows it, saves it, and paints it into pixels. Text is set in whatever sans-serif
//! typeface there is, with the widths of `label::width_of` and room to spare.

use crate::rooms::jar::view::LayerView;
use crate::rooms::share::view::CodeView;
use crate::rooms::share::write_up::html;
use std::fmt::Write as _;
use stillroom_core::Layer;
use stillroom_core::label::width_of;

/// What is drawn.
pub(crate) struct Card<'a> {
    pub(crate) title: &'a str,
    pub(crate) about: &'a str,
    pub(crate) layers: &'a [LayerView],
    /// Head of the column of masses.
    pub(crate) unit: &'a str,
    pub(crate) rows: &'a [CardRow],
    /// What can hurt, in a sentence or two.
    pub(crate) caution: &'a str,
    /// The link, where the maker chose to have it in the picture.
    pub(crate) code: Option<(&'a CodeView, &'a str)>,
    /// In a sentence, for those who do not see it.
    pub(crate) description: &'a str,
}

/// A row beside the jar.
pub(crate) enum CardRow {
    /// The head of a phase.
    Phase(String),
    /// Name, percent, mass.
    Line([String; 3]),
    /// The sums.
    Total([String; 3]),
}

/// How wide the picture is.
pub(crate) const WIDTH: u32 = 1280;
const EDGE: f64 = 64.0;
/// The jar stands in a column of its own; the table begins where this ends.
const JAR_WIDTH: f64 = 280.0;
const LEFT: f64 = 380.0;
const JAR_HEIGHT: f64 = 380.0;
/// How much of the glass stays empty over what is in it, as a share of that.
const EMPTY: f64 = 0.075;
const LID: f64 = 26.0;
const ROW: f64 = 44.0;
const LEGEND_ROW: f64 = 34.0;
/// A typeface may be wider than the one the widths are of: the widest usual ones by a fifth.
const SPARE: f64 = 1.22;
/// Sizes a name is set in, until it fits.
const NAME_SIZES: [f64; 3] = [26.0, 23.0, 20.0];
const CODE_SIDE: f64 = 210.0;

const INK: &str = "#101b33";
const SOFT: &str = "#46546c";
const HAIR: &str = "#cfd9df";
const RIM: &str = "#1b3a86";

/// The glass of a layer by day and its edge, as `www/style/tokens.css` has them: a picture has to carry its colours along.
const fn colours(layer: Layer) -> (&'static str, &'static str) {
    match layer {
        Layer::Water => ("#cfe8ef", "#43889d"),
        Layer::Humectants => ("#9ccfd8", "#2c7684"),
        Layer::Thickeners => ("#c9e6d5", "#468563"),
        Layer::Surfactants => ("#d5d9ee", "#6570a8"),
        Layer::Oils => ("#f4e096", "#96760f"),
        Layer::Solids => ("#e6c07e", "#94661d"),
        Layer::Emulsifiers => ("#d0c7ec", "#6f5ca8"),
        Layer::Minerals => ("#dccfc3", "#846a55"),
        Layer::Actives => ("#f2bcb6", "#ae4a48"),
        Layer::Fragrance => ("#f2cade", "#a94f84"),
        Layer::Preservatives => ("#c8d89b", "#667c2c"),
        Layer::Helpers => ("#d6dadf", "#6d7684"),
    }
}

/// Draws it; says how high it is.
pub(crate) fn draw(card: &Card<'_>) -> (String, u32) {
    let mut pen = Pen::default();
    let right = f64::from(WIDTH) - EDGE;
    let mut y = EDGE + 34.0;
    for text in broken(card.title, 52.0, true, right - EDGE, 2) {
        pen.text(EDGE, y, 52.0, &text, Look { bold: true, ..Look::default() });
        y += 60.0;
    }
    for text in broken(card.about, 26.0, false, right - EDGE, 2) {
        pen.text(EDGE, y, 26.0, &text, Look { fill: SOFT, ..Look::default() });
        y += 34.0;
    }
    let top = y + 24.0;
    let mut left_end = pen.jar(card.layers, top);
    if let Some((code, _)) = card.code {
        left_end += 20.0;
        pen.code(code, left_end);
        left_end += CODE_SIDE;
    }
    let right_end = pen.rows(card, top, right);
    y = left_end.max(right_end) + 44.0;
    if let Some((_, address)) = card.code {
        for text in broken(address, 22.0, false, right - EDGE, 1) {
            pen.text(EDGE, y, 22.0, &text, Look { fill: SOFT, ..Look::default() });
            y += 34.0;
        }
    }
    for text in broken(card.caution, 22.0, false, right - EDGE, 3) {
        pen.text(EDGE, y, 22.0, &text, Look { fill: SOFT, ..Look::default() });
        y += 30.0;
    }
    // A whole number of pixels, for whoever paints it.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a height of some thousands")]
    let height = (y + EDGE - 30.0).ceil() as u32;
    let svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{WIDTH}\" height=\"{height}\" viewBox=\"0 0 {WIDTH} {height}\" \
         role=\"img\" font-family=\"sans-serif\"><title>{}</title>\
         <path fill=\"#fff\" d=\"M0 0h{WIDTH}v{height}H0z\"/>{}</svg>\n",
        xml(card.description),
        pen.0
    );
    (svg, height)
}

/// How a text is set.
#[derive(Clone, Copy)]
struct Look {
    fill: &'static str,
    bold: bool,
    /// Whether it ends where it is put.
    ends: bool,
}

impl Default for Look {
    fn default() -> Self {
        Self { fill: INK, bold: false, ends: false }
    }
}

#[derive(Default)]
struct Pen(String);

// Writing to a text cannot fail.
impl Pen {
    fn text(&mut self, x: f64, y: f64, size: f64, text: &str, look: Look) {
        let bold = if look.bold { " font-weight=\"700\"" } else { "" };
        let ends = if look.ends { " text-anchor=\"end\"" } else { "" };
        let fill = look.fill;
        let _ = write!(
            self.0,
            "<text x=\"{x:.1}\" y=\"{y:.1}\" font-size=\"{size}\" fill=\"{fill}\"{bold}{ends}>{}</text>",
            xml(text)
        );
    }

    fn rule(&mut self, from: f64, to: f64, y: f64, colour: &str, width: f64) {
        let _ = write!(self.0, "<path stroke=\"{colour}\" stroke-width=\"{width}\" d=\"M{from:.1} {y:.1}H{to:.1}\"/>");
    }

    /// The jar and what its layers are called; answers with where that ends.
    fn jar(&mut self, layers: &[LayerView], top: f64) -> f64 {
        let (x, body) = (EDGE + 10.0, top + LID);
        let filled = JAR_HEIGHT / (1.0 + EMPTY);
        let empty = JAR_HEIGHT - filled;
        let _ = write!(
            self.0,
            "<rect x=\"{:.1}\" y=\"{top:.1}\" width=\"{:.1}\" height=\"{LID}\" rx=\"6\" fill=\"{RIM}\"/>",
            x + 8.0,
            JAR_WIDTH - 16.0
        );
        for (at, layer) in layers.iter().enumerate() {
            let (fill, edge) = colours(layer.layer);
            let y = body + empty + layer.top * filled;
            let height = layer.height * filled;
            // The lowest layer fills the round foot of the glass.
            let foot = if at + 1 == layers.len() { 24.0_f64.min(height) } else { 0.0 };
            let _ = write!(
                self.0,
                "<path fill=\"{fill}\" d=\"M{x:.1} {y:.1}h{JAR_WIDTH}v{:.2}q0 {foot:.1} -{foot:.1} {foot:.1}h-{:.1}q-{foot:.1} 0 -{foot:.1} -{foot:.1}z\"/>",
                height - foot,
                2.0_f64.mul_add(-foot, JAR_WIDTH)
            );
            self.rule(x, x + JAR_WIDTH, y, edge, 1.5);
        }
        for part in 1..10_u8 {
            let y = body + empty + filled * f64::from(part) / 10.0;
            let length = if part == 5 { 34.0 } else { 20.0 };
            self.rule(x + JAR_WIDTH - length, x + JAR_WIDTH, y, RIM, 1.5);
        }
        let _ = write!(
            self.0,
            "<rect x=\"{x:.1}\" y=\"{body:.1}\" width=\"{JAR_WIDTH}\" height=\"{JAR_HEIGHT:.1}\" rx=\"24\" fill=\"none\" stroke=\"{RIM}\" stroke-width=\"4\"/>"
        );
        let mut y = body + JAR_HEIGHT + 46.0;
        for layer in layers {
            let (fill, edge) = colours(layer.layer);
            let _ = write!(
                self.0,
                "<rect x=\"{EDGE}\" y=\"{:.1}\" width=\"20\" height=\"20\" rx=\"4\" fill=\"{fill}\" stroke=\"{edge}\" stroke-width=\"1.5\"/>",
                y - 17.0
            );
            let name = fitting(&layer.label, 20.0, false, LEFT - 160.0);
            self.text(EDGE + 30.0, y, 20.0, &name, Look::default());
            let percent = format!("{}\u{a0}%", layer.percent);
            self.text(EDGE + LEFT - 50.0, y, 20.0, &percent, Look { fill: SOFT, ends: true, ..Look::default() });
            y += LEGEND_ROW;
        }
        y - LEGEND_ROW
    }

    fn code(&mut self, code: &CodeView, y: f64) {
        let scale = CODE_SIDE / f64::from(code.side);
        let _ = write!(
            self.0,
            "<path fill=\"#000\" shape-rendering=\"crispEdges\" transform=\"translate({EDGE} {y:.1}) scale({scale:.4})\" d=\"{}\"/>",
            code.path
        );
    }

    /// The lines beside the jar; answers with where they end.
    fn rows(&mut self, card: &Card<'_>, top: f64, right: f64) -> f64 {
        let from = EDGE + LEFT;
        let (mass, percent) = (right, right - 150.0);
        let mut y = top + 22.0;
        let head = Look { fill: SOFT, ends: true, ..Look::default() };
        self.text(percent, y, 22.0, "%", head);
        self.text(mass, y, 22.0, card.unit, head);
        y += 14.0;
        self.rule(from, right, y, INK, 2.0);
        for row in card.rows {
            y += ROW;
            match row {
                CardRow::Phase(name) => {
                    let look = Look { fill: RIM, bold: true, ..Look::default() };
                    self.text(from, y - 13.0, 22.0, &fitting(name, 22.0, true, right - from), look);
                }
                CardRow::Line(cells) | CardRow::Total(cells) => {
                    let bold = matches!(row, CardRow::Total(_));
                    let width = percent - 120.0 - from;
                    let fits = NAME_SIZES.into_iter().find(|size| is_within(&cells[0], *size, bold, width));
                    let size = fits.unwrap_or(NAME_SIZES[2]);
                    let name = fitting(&cells[0], size, bold, width);
                    self.text(from, y - 12.0, size, &name, Look { bold, ..Look::default() });
                    self.text(percent, y - 12.0, 26.0, &cells[1], Look { bold, ends: true, ..Look::default() });
                    self.text(mass, y - 12.0, 26.0, &cells[2], Look { bold, ends: true, ..Look::default() });
                }
            }
            self.rule(from, right, y, HAIR, 1.0);
        }
        y
    }
}

fn is_within(text: &str, size: f64, bold: bool, width: f64) -> bool {
    width_of(text, size, bold) * SPARE <= width
}

/// As much of a text as fits, with an ellipsis where some of it does not.
fn fitting(text: &str, size: f64, bold: bool, width: f64) -> String {
    if is_within(text, size, bold, width) {
        return text.to_owned();
    }
    let mut short = text.to_owned();
    while short.pop().is_some() {
        let cut = format!("{}\u{2026}", short.trim_end());
        if is_within(&cut, size, bold, width) {
            return cut;
        }
    }
    String::new()
}

/// A text in lines, at most so many; the last is cut where it goes on.
fn broken(text: &str, size: f64, bold: bool, width: f64, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut words = text.split_whitespace().peekable();
    while words.peek().is_some() && lines.len() < most {
        if lines.len() + 1 == most {
            let rest: Vec<&str> = words.by_ref().collect();
            lines.push(fitting(&rest.join(" "), size, bold, width));
            break;
        }
        let mut line = words.next().unwrap_or_default().to_owned();
        while let Some(word) = words.peek() {
            let longer = format!("{line} {word}");
            if !is_within(&longer, size, bold, width) {
                break;
            }
            line = longer;
            words.next();
        }
        lines.push(fitting(&line, size, bold, width));
    }
    lines
}

/// Text that XML takes as text: characters that it refuses fall out.
fn xml(text: &str) -> String {
    let taken = |letter: &char| !letter.is_control() && !matches!(letter, '\u{fffe}' | '\u{ffff}');
    html(&text.chars().filter(taken).collect::<String>())
}

#[cfg(test)]
mod tests {
    use super::*;

    const TOKENS: &str = include_str!("../../../../../www/style/tokens.css");

    #[test]
    fn a_layer_has_the_colours_it_has_on_the_page() {
        let day = TOKENS.split("@media").next().unwrap();
        for layer in crate::rooms::jar::present::FROM_BOTTOM {
            let name = serde_json::to_value(layer).unwrap().as_str().unwrap().to_owned();
            let (fill, edge) = colours(layer);
            assert!(day.contains(&format!("--{name}: {fill};")), "{name}");
            assert!(day.contains(&format!("--{name}-edge: {edge};")), "{name}");
        }
    }

    #[test]
    fn text_fits_or_is_cut() {
        let long = "Hydrolysed ".repeat(40);
        for most in 1..4 {
            let lines = broken(&long, 26.0, false, 400.0, most);
            assert_eq!(lines.len(), most);
            assert!(lines.iter().all(|line| width_of(line, 26.0, false) <= 400.0));
            assert!(lines[most - 1].ends_with('\u{2026}'));
        }
        assert_eq!(broken("two words", 26.0, false, 400.0, 3), ["two words"]);
        assert_eq!(fitting("a\u{301}", 26.0, false, 1.0), "");
    }

    #[test]
    fn nothing_in_a_name_becomes_markup() {
        assert_eq!(xml("<b>&\u{0}\"\u{7}x"), "&lt;b&gt;&amp;&quot;x");
    }
}
