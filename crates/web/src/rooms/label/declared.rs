//! What a reader of the formula is told of its label: the list, what is not certain of it, its sentences.

use crate::messages::label as says;
use crate::rooms::label::sentences;
use crate::session::Session;
use stillroom_catalogue::knowledge::label_conditions;
use stillroom_core::Formula;
use stillroom_core::evaluation::Evaluation;
use stillroom_core::label::statements;

/// What a reader is told.
pub(crate) struct DeclaredForReader {
    /// The ingredients as a label lists them.
    pub(crate) declaration: String,
    /// What is not certain of them.
    pub(crate) said: Vec<String>,
    /// Sentences a label carries, or should.
    pub(crate) statements: Vec<String>,
}

impl Session {
    /// Declares a formula for somebody who reads it. A sentence that its maker leaves off a label is told all the same.
    pub(crate) fn declare_for_reader(&self, formula: &Formula, evaluation: &Evaluation) -> DeclaredForReader {
        let filled = self.label_filled(formula);
        let market = filled.market();
        let contents = self.contents_of(formula, evaluation);
        let (reading, list) = self.list_for_label(&contents, &filled);
        let said = self.say_of_list(&contents, &reading, &list, market);
        let stated = statements(&contents, market, label_conditions());
        let mut told: Vec<String> =
            stated.iter().map(|each| sentences::statement(each.statement, market).to_owned()).collect();
        told.extend(Some(filled.text("caution").to_owned()).filter(|text| !text.is_empty()));
        DeclaredForReader {
            declaration: says::declaration(&self.declaration_text(&list, market)),
            said: said.into_iter().map(|each| each.text).collect(),
            statements: told,
        }
    }
}
