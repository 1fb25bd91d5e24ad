//! The label drawn and its sheets.

use crate::messages::label as says;
use crate::rooms::extracts::view::FigureView;
use crate::rooms::findings::sentences as sentences_findings;
use crate::rooms::label::contents::Held;
use crate::rooms::label::fields::Filled;
use crate::rooms::label::view::{LabelArtView, LabelJarView, LabelRunView, LabelSheetView, LabelView};
use crate::session::Session;
use stillroom_core::label::{LabelText, Least, Outline, Shape, lay_out, lay_sheets, lettering};
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
        let Some(layout) = lay_out(outline, text, &letters) else {
            view.too_small = says::too_small(&size, &mm(letters.text.millimetres, 2));
            return;
        };
        view.lettering = vec![
            self.show_letters(says::letters_text(), layout.small_letter, letters.text),
            self.show_letters(says::letters_contents(), layout.figure, letters.contents),
        ];
        view.art = Some(LabelArtView {
            shape,
            width: outline.width,
            height: outline.height,
            description: says::art(&size, &text.name),
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
        });
        view.sheet = show_sheet(filled, outline);
        if view.sheet.is_none() {
            view.too_small = says::larger_than_paper(&size);
        }
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
