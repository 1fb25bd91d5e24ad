//! The label drawn and its sheets.

use crate::messages::label as says;
use crate::rooms::extracts::view::FigureView;
use crate::rooms::findings::sentences as sentences_findings;
use crate::rooms::label::contents::Held;
use crate::rooms::label::fields::{Filled, LinkAs};
use crate::rooms::label::remarks::{caution, note};
use crate::rooms::label::view::{LabelArtView, LabelCodeView, LabelJarView, LabelRunView, LabelSheetView, LabelView};
use crate::rooms::share::qr;
use crate::rooms::share::view::CodeView;
use crate::session::Session;
use stillroom_core::label::{
    LEAST_MODULE, LabelText, Least, Outline, Paragraph, Shape, lay_out, lay_sheets, lettering, read_link,
};
use stillroom_core::number::with_unit;

impl Session {
    /// Lays the label out and puts the drawing, its letters and its sheets into the view, or why there is none.
    pub(crate) fn draw_label(&self, filled: &Filled, held: &Held, text: &LabelText, view: &mut LabelView) {
        let (shape, outline) = filled.outline();
        let Some(outline) = outline else { return };
        let letters = lettering(filled.market(), outline.area(), outline.panel(), held.amount);
        let mm = |length: f64, decimals: u32| with_unit(&self.rounded(length, decimals), "mm");
        let size = match outline.shape {
            Shape::Round => says::size_round(&mm(outline.width, 1)),
            Shape::Flat | Shape::Wrap => says::size_flat(&self.rounded(outline.width, 1), &mm(outline.height, 1)),
        };
        let code = Self::code_of_link(filled, view);
        let with_link = with_link(filled, text, code.as_ref());
        let layout = lay_out(outline, &with_link, &letters).or_else(|| {
            // What the law asks for stands there before an address does.
            let layout = lay_out(outline, text, &letters)?;
            view.link.push(caution(says::link_too_long()));
            Some(layout)
        });
        let Some(layout) = layout else {
            view.too_small = says::too_small(&size, &mm(letters.text.millimetres, 2));
            return;
        };
        let code = code.and_then(|code| {
            let Some(square) = layout.code else {
                view.link.push(caution(says::code_too_large(
                    &mm(f64::from(code.side) * LEAST_MODULE, 1),
                    &mm(LEAST_MODULE, 2),
                )));
                return None;
            };
            view.link.push(note(says::code_there(&mm(square.side, 1), &mm(square.module, 2), &mm(LEAST_MODULE, 2))));
            Some(LabelCodeView { x: square.x, y: square.y, side: square.side, modules: code.side, path: code.path })
        });
        view.lettering = vec![
            self.show_letters(says::letters_text(), layout.small_letter, letters.text),
            self.show_letters(says::letters_contents(), layout.figure, letters.contents),
        ];
        view.art = Some(LabelArtView {
            shape,
            width: outline.width,
            height: outline.height,
            description: match &code {
                Some(_) => says::art_with_code(&size, &text.name, filled.text("site")),
                None => says::art(&size, &text.name),
            },
            runs: layout
                .runs
                .into_iter()
                .map(|run| LabelRunView {
                    x: run.x,
                    y: run.y,
                    size: run.size,
                    width: run.width,
                    bold: run.bold,
                    text: run.text,
                })
                .collect(),
            open_jar: layout.open_jar.map(|jar| LabelJarView { x: jar.x, y: jar.y, side: jar.side }),
            code,
        });
        view.sheet = show_sheet(filled, outline);
        if view.sheet.is_none() {
            view.too_small = says::larger_than_paper(&size);
        }
    }

    /// The code of the address, where one is wished; what is missing for it is said.
    fn code_of_link(filled: &Filled, view: &mut LabelView) -> Option<CodeView> {
        if filled.link_as() == LinkAs::Nothing {
            return None;
        }
        let Ok(address) = read_link(filled.text("site")) else {
            view.link.push(caution(says::missing_link()));
            return None;
        };
        if filled.link_as() == LinkAs::Text { None } else { qr::draw(&address) }
    }

    fn show_letters(&self, label: &str, height: f64, least: Least) -> FigureView {
        let mm = |length: f64| with_unit(&self.rounded(length, 2), "mm");
        FigureView {
            label: label.to_owned(),
            // Rounded down: a height that is just reached must not be said to be more.
            value: mm((height * 100.0 + 1e-6).floor() / 100.0),
            range: says::letters_least(&mm((least.millimetres * 100.0 - 1e-6).ceil() / 100.0)),
            how: if least.is_law { says::letters_law() } else { says::letters_yardstick() }.to_owned(),
            source: sentences_findings::citation(&least.citation),
        }
    }
}

/// What stands on the label, with the address on it as the maker wishes.
fn with_link(filled: &Filled, text: &LabelText, code: Option<&CodeView>) -> LabelText {
    let mut with_link = LabelText { code: code.map(|code| code.side), ..text.clone() };
    let site = filled.text("site");
    if filled.link_as() == LinkAs::Text && !site.is_empty() {
        with_link.paragraphs.push(Paragraph { lead: String::new(), text: site.to_owned() });
    }
    with_link
}

fn show_sheet(filled: &Filled, outline: Outline) -> Option<LabelSheetView> {
    let (word, paper) = filled.paper();
    let (width, height) = paper.size();
    let sheet = lay_sheets(outline, paper, filled.count())?;
    let name = if word == "a4" { says::paper_a4() } else { says::paper_letter() };
    let each = sheet.places.len().to_string();
    let about = says::sheets(usize::try_from(sheet.sheets).unwrap_or(1), &filled.count().to_string(), name, &each);
    Some(LabelSheetView {
        paper: word,
        width,
        height,
        places: sheet.places,
        sheets: sheet.sheets,
        on_last: sheet.on_last,
        about,
    })
}
