//! What the page sees of a pasted recipe.

use serde::Serialize;
use tsify::Tsify;

/// A recipe that was read. Nothing of it is kept yet.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RecipeView {
    /// Why it was not read at all.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub error: Option<String>,
    /// Name of the formula to be.
    pub name: String,
    /// How many of its lines are found, in a sentence; empty without any.
    pub summary: String,
    /// How many are to be chosen, in a sentence; empty where none is.
    pub to_choose: String,
    /// Sum of the percents.
    pub total: String,
    /// What the whole weighs; empty where nothing says so.
    pub size: String,
    /// What numbers without a unit are taken for.
    #[tsify(type = "\"percent\" | \"grams\" | \"parts\"")]
    pub meaning: &'static str,
    /// Whether any number has no unit, so that this can be asked.
    pub has_bare: bool,
    /// Lines of which somebody has to say what they mean.
    pub asked: Vec<RecipeLineView>,
    /// Phases with the lines that are plain.
    pub phases: Vec<RecipePhaseView>,
    /// Lines that name no material, with what they were taken for.
    pub others: Vec<RecipeOtherView>,
    /// What becomes of lines left open, in a sentence; empty where none is.
    pub left_open: String,
    /// Whether it can be made a formula.
    pub ready: bool,
    /// The columns of the table it is; none where it is none.
    pub columns: Vec<RecipeColumnView>,
    /// What of a table does not get into the formula, in sentences.
    pub left_out: Vec<String>,
}

/// A column of a table.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RecipeColumnView {
    /// Its place, counted from 0.
    pub place: usize,
    /// What stands above it, or its number.
    pub name: String,
    /// The first of what stands in it.
    pub sample: String,
    /// What it holds.
    #[tsify(
        type = "\"name\" | \"percent\" | \"grams\" | \"amount\" | \"unit\" | \"phase\" | \"inci\" | \"note\" | \"price\" | \"left-out\""
    )]
    pub holds: &'static str,
}

/// The text of a file, or why it has none.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RecipeFileView {
    /// What it says; none where it could not be read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub text: Option<String>,
    /// What has to be known about it, or why it was not read, in a sentence; may be empty.
    pub said: String,
}

/// A phase of the formula to be.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RecipePhaseView {
    /// Its name.
    pub name: String,
    /// How it is handled, in words; empty where the name says it.
    pub about: String,
    /// Its lines.
    pub lines: Vec<RecipeLineView>,
}

/// A line that names a material.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RecipeLineView {
    /// Its place among the materials of the recipe.
    pub key: usize,
    /// As it is written.
    pub raw: String,
    /// The name it gives.
    pub written: String,
    /// What the material is called; empty where none is chosen.
    pub name: String,
    /// Its percent; empty where none can be given.
    pub percent: String,
    /// Layer of the jar it belongs to.
    #[tsify(type = "Layer")]
    pub layer: &'static str,
    /// What has to be looked at, in a sentence; may be empty.
    pub remark: String,
    /// Which materials it may mean, the likeliest first.
    pub choices: Vec<RecipeChoiceView>,
    /// The chosen one of them, `own` for a material of the maker's own, empty where nothing is chosen.
    pub chosen: String,
}

/// A material that a line may mean.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RecipeChoiceView {
    /// The material.
    pub id: String,
    /// What it is called.
    pub name: String,
}

/// A line that names no material.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RecipeOtherView {
    /// As it is written.
    pub raw: String,
    /// What it was taken for.
    pub taken_for: String,
}
