//! What the page sees of the open formula.

use serde::Serialize;
use std::rc::Rc;
use stillroom_core::balance::LineShare;
use stillroom_core::weigh_sheet::WeighedLine;
use stillroom_core::{Layer, Line, PhaseKind, Purpose, WrittenIn};
use tsify::Tsify;

/// Head, phases and problems of the open formula.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct FormulaView {
    /// Names it; absent when no formula is open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub id: Option<String>,
    /// What the maker calls it.
    pub name: String,
    /// How the product is used.
    #[tsify(type = "\"leave-on\" | \"rinse-off\"")]
    pub purpose: Purpose,
    /// Target pH as text.
    pub target_ph: String,
    /// The maker's notes.
    pub notes: String,
    /// Method, one step a line.
    pub steps: String,
    /// Whether the numbers are percent or grams.
    #[tsify(type = "\"percent\" | \"grams\"")]
    pub written_in: WrittenIn,
    /// Unit behind the typed numbers.
    pub amount_unit: String,
    /// Unit behind the masses.
    pub mass_unit: String,
    /// Sum of the lines, in percent.
    pub total: String,
    /// Sum of the typed masses, in a formula written in grams.
    pub total_typed: String,
    /// Sum of the weigh sheet.
    pub total_mass: String,
    /// Whether the amounts make a formula.
    pub sound: bool,
    /// The phases.
    pub phases: Vec<PhaseView>,
    /// What keeps the amounts from being a formula.
    pub problems: Vec<ProblemView>,
}

/// One phase.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct PhaseView {
    /// Names it.
    pub id: u32,
    /// What the maker calls it.
    pub name: String,
    /// What is done with it.
    #[tsify(type = "PhaseKind")]
    pub kind: PhaseKind,
    /// What the temperature means here: `to` or `under`.
    pub temperature_word: String,
    /// Temperature as text.
    pub temperature: String,
    /// What stands behind it.
    pub temperature_unit: &'static str,
    /// Its share of the formula.
    pub percent: String,
    /// Its mass on the weigh sheet.
    pub mass: String,
    /// Its lines, in order.
    pub lines: Vec<u32>,
}

/// One line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LineView {
    /// Names it.
    pub id: u32,
    /// The material.
    pub material: String,
    /// Its name.
    pub name: String,
    /// The layer it goes into.
    #[tsify(type = "Layer")]
    pub layer: Layer,
    /// What a composite brings, in a few words.
    pub brings: String,
    /// What the field holds.
    pub amount: String,
    /// Whether it is the q.s. line.
    pub quantum_satis: bool,
    /// Its percent, aligned.
    pub percent: String,
    /// Mass to weigh, aligned.
    pub mass: String,
    /// Name of the scale, where it is not the main one.
    pub scale: String,
    /// How far rounding moves the mass.
    pub error: String,
    /// Whether that is more than the maker accepts.
    pub error_large: bool,
    /// The maker's note.
    pub note: String,
    /// What is wrong with the line.
    pub problem: String,
}

/// A problem and its cures.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ProblemView {
    /// Stable code.
    #[tsify(type = "string")]
    pub code: &'static str,
    /// In a sentence.
    pub text: String,
    /// What would remove it, computed.
    pub cures: Vec<String>,
}

/// The lines as they were handed out last.
#[derive(Debug, Default)]
pub(crate) struct LastLines {
    /// The formula they are of.
    pub(crate) of: String,
    pub(crate) lines: Vec<Rc<LineView>>,
    /// What each was written from; empty where they have to be written anew.
    pub(crate) inputs: Vec<LineInput>,
    /// Decimals of percents and masses they were written with, and [`Session::surroundings_changed`](crate::session::Session)
    /// then: names, units or marks may have changed since.
    pub(crate) written_with: (u32, u32, u64),
}

impl LastLines {
    /// Where what a line is written from stood, looking first where it stands now.
    pub(crate) fn position_of(&self, at: usize, input: &LineInput) -> Option<usize> {
        let before = &self.inputs;
        if before.get(at) == Some(input) { Some(at) } else { before.iter().position(|each| each == input) }
    }
}

/// What a line is written from, names and settings apart.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct LineInput {
    pub(crate) line: Line,
    pub(crate) share: LineShare,
    pub(crate) weighed: Option<WeighedLine>,
}
