//! Acts on the shelf: new formulas, copies, names, what is taken off.

use crate::contract::Answer;
use crate::messages::sentences;
use crate::rooms::formula::edit::{cut_name, made};
use crate::rooms::shelf::command::ShelfCommand;
use crate::session::Session;
use crate::session::history::Slot;
use rust_decimal::Decimal;
use std::rc::Rc;
use stillroom_catalogue::folded;
use stillroom_core::{Celsius, Formula, PhaseKind};
use stillroom_exchange::label::for_another_batch;
use stillroom_exchange::record::FormulaRecord;

/// Most tags of a formula, and their longest, in characters.
const MOST_TAGS: usize = 12;
const LONGEST_TAG: usize = 40;

/// The tags of a formula.
pub(super) fn tags_in(tags: &str) -> impl Iterator<Item = &str> {
    tags.split(", ").filter(|tag| !tag.is_empty())
}

/// Tags as they are kept, of what somebody typed: each once; `None` where they are too many or too long.
fn read_tags(text: &str) -> Option<String> {
    let mut tags: Vec<String> = Vec::new();
    for tag in text.split([',', ';', '\n']) {
        let tag = tag.split_whitespace().collect::<Vec<_>>().join(" ");
        if !tag.is_empty() && !tags.contains(&tag) {
            tags.push(tag);
        }
    }
    let fits = tags.len() <= MOST_TAGS && tags.iter().all(|tag| tag.chars().count() <= LONGEST_TAG);
    fits.then(|| tags.join(", "))
}

impl Session {
    pub(crate) fn act_on_shelf(&mut self, command: ShelfCommand) -> Answer {
        match command {
            ShelfCommand::NewFormula { basis: written_in } => {
                let mut formula = Formula::with_name(sentences::name_of_new_formula(written_in));
                formula.written_in = written_in;
                for (kind, temperature) in [
                    (PhaseKind::HeatedWater, Some(Decimal::from(70))),
                    (PhaseKind::HeatedOil, Some(Decimal::from(70))),
                    (PhaseKind::CoolDown, Some(Decimal::from(40))),
                ] {
                    let temperature = temperature.and_then(|temperature| Celsius::new(temperature).ok());
                    formula.add_phase(sentences::phase_name(kind), kind, temperature);
                }
                self.put_formula("formula.new", formula)
            }
            ShelfCommand::OpenFormula { formula } => {
                if self.shelf.contains_key(&formula) {
                    self.open = Some(formula);
                }
                Answer::default()
            }
            ShelfCommand::DuplicateFormula { formula } => {
                let Some(record) = self.shelf.get(&formula) else { return Answer::default() };
                let mut copy = record.formula.clone();
                // A lot on two labels would lead a recall astray.
                copy.label = for_another_batch(&copy.label);
                copy.name = cut_name(&crate::messages::common::name_of_copy(&copy.name));
                self.put_formula("formula.duplicate", copy)
            }
            ShelfCommand::RenameFormula { formula, name } => {
                let field = format!("formula.name:{formula}");
                self.change_formula_of(formula, "formula.rename", Some(&field), |formula| {
                    formula.name = name;
                });
                Answer { field: Some(field), ..Answer::default() }
            }
            ShelfCommand::TagFormula { formula, text } => {
                let field = format!("formula.tags:{formula}");
                let tags = read_tags(&text);
                let error = tags.is_none().then(|| crate::messages::shelf::takes_tags().to_owned());
                if let Some(tags) = tags {
                    self.change_formula_of(formula, "formula.tags", Some(&field), |formula| formula.tags = tags);
                }
                Answer { field: Some(field), error, ..Answer::default() }
            }
            ShelfCommand::ShowTag { tag } => {
                self.in_sight.tag = tag;
                self.in_sight.further = 0;
                Answer::default()
            }
            ShelfCommand::DeleteFormula { formula } => {
                let Some(record) = self.shelf.get(&formula).map(Rc::clone) else { return Answer::default() };
                let name = record.formula.name.clone();
                let before = vec![Slot::Formula(formula, Some(record))];
                let open = self.open.filter(|open| *open != formula);
                self.commit("formula.delete", None, open, before, vec![Slot::Formula(formula, None)]);
                self.open = open.or_else(|| self.last_changed());
                self.notice("formula.deleted", crate::messages::shelf::deleted(&name), true);
                Answer::default()
            }
            ShelfCommand::SeeExample { example } => self.see_example(example),
            ShelfCommand::SearchShelf { text } => {
                self.in_sight.sought = folded(&text);
                self.in_sight.further = 0;
                Answer::default()
            }
            ShelfCommand::SortShelf { order } => {
                self.in_sight.order = order;
                self.in_sight.further = 0;
                Answer::default()
            }
            ShelfCommand::LookAtShelf { looking } => {
                self.in_sight.shelf = looking;
                self.in_sight.visits += usize::from(looking);
                Answer::default()
            }
            ShelfCommand::LookFurther {} => {
                self.in_sight.further += 1;
                Answer::default()
            }
        }
    }

    /// Puts a formula on the shelf and opens it.
    fn put_formula(&mut self, act: &'static str, formula: Formula) -> Answer {
        let id = self.fresh_formula_id();
        let record = FormulaRecord { id, revision: 0, changed_at: self.around.now(), formula };
        self.commit(act, None, Some(id), vec![Slot::Formula(id, None)], vec![Slot::Formula(id, Some(Rc::new(record)))]);
        made(&id)
    }
}
