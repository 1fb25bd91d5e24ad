//! The shelf as the page shows it.

use crate::sentences;
use crate::session::Session;
use crate::view::{ShelfCard, ShelfView};
use core::cmp::Reverse;
use std::rc::Rc;
use stillroom_core::MaterialId;
use stillroom_core::balance::LineShare;
use stillroom_core::composition::resolve_composition;

use stillroom_exchange::record::FormulaRecord;

/// Cards of the shelf that are shown at first, and that are added when somebody looks further.
pub(crate) const CARDS_AT_ONCE: usize = 24;

impl Session {
    /// Every formula, last changed first.
    pub(crate) fn records_by_change(&self) -> Vec<Rc<FormulaRecord>> {
        let mut records: Vec<Rc<FormulaRecord>> = self.shelf.values().map(Rc::clone).collect();
        records.sort_unstable_by_key(|record| (Reverse(record.changed_at), record.id));
        records
    }

    pub(crate) fn present_shelf(&mut self) -> ShelfView {
        let mut records = self.records_by_change();
        // The whole shelf of a maker of many years is neither worked out nor drawn before somebody looks so far.
        let more = records.len().saturating_sub(self.in_sight.cards);
        records.truncate(self.in_sight.cards);
        let cards = records.iter().map(|record| self.card_of(record)).collect();
        ShelfView { cards, more, open: self.open.map(|id| id.to_string()) }
    }

    /// The card of a record, worked out anew only when the record or a material changed.
    fn card_of(&mut self, record: &Rc<FormulaRecord>) -> Rc<ShelfCard> {
        if let Some((of, card)) = self.cards.get(&record.id)
            && Rc::ptr_eq(of, record)
        {
            return Rc::clone(card);
        }
        let formula = &record.formula;
        let balance = formula.balance();
        let lines: Vec<(LineShare, MaterialId)> =
            balance.shares.iter().copied().zip(formula.lines().map(|line| line.material)).collect();
        let composition = resolve_composition(&lines, &self.materials, &mut self.makeups);
        let card = Rc::new(ShelfCard {
            id: record.id.to_string(),
            name: formula.name.clone(),
            about: sentences::about_formula(formula, &balance, self.mark()),
            sound: balance.is_sound() && composition.unresolved.is_empty(),
            layers: self.present_layers(&composition),
        });
        self.cards.insert(record.id, (Rc::clone(record), Rc::clone(&card)));
        card
    }
}
