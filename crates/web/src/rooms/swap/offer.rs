//! What is asked, worked out: one version of the open formula, or why there is none.

use crate::rooms::swap::edit::{SwapDesk, Use};
use crate::rooms::swap::ways::{Way, take_texts};
use crate::session::Session;
use std::rc::Rc;
use stillroom_core::evaluation::Evaluation;
use stillroom_core::rebuild::substitutes::Difference;
use stillroom_core::rebuild::{NoAnswer, Version};
use stillroom_exchange::record::FormulaRecord;

/// What came of a question.
#[derive(Debug, Default)]
pub(crate) struct Worked {
    /// The version, or what is in the way; nothing while nothing is asked.
    pub(crate) answer: Option<Result<Version, NoAnswer>>,
    /// What is to be said of the shelf.
    pub(crate) said: Vec<String>,
    /// What becomes different with what was taken instead.
    pub(crate) feel: Vec<Difference>,
}

impl Session {
    /// Works out what is asked of the open formula.
    pub(crate) fn work_out_swap(
        &mut self,
        desk: &SwapDesk,
        record: &Rc<FormulaRecord>,
        evaluation: &Evaluation,
    ) -> Worked {
        let formula = &record.formula;
        if desk.wanted == Use::Line {
            let Some(line) = desk.line else { return Worked::default() };
            let ways = self.ways_now(record, evaluation, line);
            let chosen = desk.way.as_deref().and_then(|key| ways.iter().find(|it| it.way.key() == key));
            let Some(chosen) = chosen else { return Worked::default() };
            let feel = match &chosen.way {
                Way::Material(substitute) => substitute.differences.clone(),
                Way::Apart | Way::Together { .. } => Vec::new(),
            };
            let mut answer = chosen.answer.clone();
            if let Ok(version) = &mut answer {
                take_texts(&mut version.formula, formula);
            }
            return Worked { answer: Some(answer), feel, ..Worked::default() };
        }
        let mut makeups = core::mem::take(&mut self.makeups);
        let worked = if desk.wanted == Use::Figure {
            let answer = self.work_out_figure(formula, evaluation, desk, &mut makeups);
            Worked { answer, ..Worked::default() }
        } else {
            self.work_out_shelf(formula, evaluation, desk, &mut makeups)
        };
        self.makeups = makeups;
        worked
    }
}
