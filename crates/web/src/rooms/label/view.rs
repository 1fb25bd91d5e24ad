//! What the page shows of the label.

use crate::rooms::batches::view::RemarkView;
use crate::rooms::extracts::view::{ChoiceView, FigureView};
use serde::Serialize;
use tsify::Tsify;

/// The label of the open formula.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LabelView {
    /// Why there is none; then all below is empty.
    pub problem: String,
    /// What can be filled in.
    pub fields: Vec<LabelFieldView>,
    /// The ingredients as the label lists them.
    pub declaration: String,
    /// The same name by name.
    pub names: Vec<LabelNameView>,
    /// What is not certain of them, and what is to be known.
    pub said: Vec<RemarkView>,
    /// Allergens in it, those to be named first.
    pub allergens: Vec<LabelAllergenView>,
    /// What is above the table of allergens, or stands in its place.
    pub allergens_about: String,
    /// Sentences the label carries or could.
    pub statements: Vec<LabelStatementView>,
    /// What is still missing on it.
    pub missing: Vec<RemarkView>,
    /// Words on it that would make something else of the product, or promise too much.
    pub wording: Vec<RemarkView>,
    /// The label, drawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub art: Option<LabelArtView>,
    /// Why it is not drawn.
    pub too_small: String,
    /// What is to be said of the address on it.
    pub link: Vec<RemarkView>,
    /// How large its letters are and have to be.
    pub lettering: Vec<FigureView>,
    /// Sheets of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sheet: Option<LabelSheetView>,
}

/// A field of the label.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LabelFieldView {
    /// Its name.
    pub field: String,
    /// Where it stands: what is made, who makes it, the address on it, how it is printed, what is fine matter.
    #[tsify(type = "\"product\" | \"maker\" | \"link\" | \"print\" | \"nano\"")]
    pub group: &'static str,
    /// How it is filled in: a choice, a number, a line or several lines of text.
    #[tsify(type = "\"choice\" | \"number\" | \"line\" | \"lines\"")]
    pub kind: &'static str,
    /// What it is called.
    pub label: String,
    /// Unit behind it; may be empty.
    pub unit: String,
    /// What it holds: a text, or the key of what is chosen.
    pub text: String,
    /// What can be chosen.
    pub choices: Vec<ChoiceView>,
}

/// A name in the list of ingredients.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LabelNameView {
    /// As the label writes it.
    pub name: String,
    /// How much of it there is.
    pub percent: String,
    /// Where it stands: by weight, in any order behind those, among the colourants.
    #[tsify(type = "\"weight\" | \"any\" | \"colour\"")]
    pub place: &'static str,
    /// Whether its place is not certain.
    pub doubtful: bool,
}

/// An allergen that is in the product.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LabelAllergenView {
    /// Its name in the law.
    pub name: String,
    /// How much of it there usually is, and at most.
    pub amount: String,
    /// What is done with it on this label.
    pub fate: String,
    /// Whether it is named.
    pub named: bool,
}

/// A sentence of the label.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LabelStatementView {
    /// The field that leaves it off.
    pub field: String,
    /// The sentence.
    pub text: String,
    /// What asks for it.
    pub why: String,
    /// Whether it stands on the label.
    pub there: bool,
}

/// A label drawn, in millimetres from its upper left corner.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LabelArtView {
    /// Its outline.
    #[tsify(type = "\"flat\" | \"wrap\" | \"round\"")]
    pub shape: &'static str,
    /// How wide it is.
    pub width: f64,
    /// How high.
    pub height: f64,
    /// In a sentence, for those who do not see it.
    pub description: String,
    /// Its lines of text.
    pub runs: Vec<LabelRunView>,
    /// The open jar of the period after opening.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub open_jar: Option<LabelJarView>,
    /// The code of an address.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub code: Option<LabelCodeView>,
}

/// A code, and where it stands.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
pub struct LabelCodeView {
    /// Left end of its empty edge.
    pub x: f64,
    /// Upper end of its empty edge.
    pub y: f64,
    /// How wide and high it is with its empty edge.
    pub side: f64,
    /// Modules along a side, those of the empty edge among them.
    pub modules: u32,
    /// Its dark modules as the path of a drawing in modules.
    pub path: String,
}

/// Letters in one line.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
pub struct LabelRunView {
    /// Left end.
    pub x: f64,
    /// The line they stand on.
    pub y: f64,
    /// Size of the letters.
    pub size: f64,
    /// How wide they are.
    pub width: f64,
    /// Whether they are bold.
    pub bold: bool,
    /// What they say.
    pub text: String,
}

/// Where the open jar stands.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Tsify)]
pub struct LabelJarView {
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// How wide and high it is.
    pub side: f64,
}

/// Sheets to print, in millimetres.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LabelSheetView {
    /// The paper.
    #[tsify(type = "\"a4\" | \"letter\"")]
    pub paper: &'static str,
    /// How wide it is.
    pub width: f64,
    /// How high.
    pub height: f64,
    /// Upper left corners of the labels of a full sheet.
    pub places: Vec<(f64, f64)>,
    /// How many sheets.
    pub sheets: u32,
    /// How many labels are on the last.
    pub on_last: u32,
    /// All that in a sentence.
    pub about: String,
}
