//! The shelf as the page shows it.

use crate::messages::sentences;
use crate::rooms::shelf::command::ShelfOrder;
use crate::rooms::shelf::edit::tags_in;
use crate::rooms::shelf::view::{ShelfCard, ShelfView};
use crate::session::Session;
use core::cmp::Reverse;
use litemap::LiteMap;
use std::rc::Rc;
use stillroom_catalogue::folded;
use stillroom_core::balance::LineShare;
use stillroom_core::composition::resolve_composition;
use stillroom_core::{FormulaId, MaterialId};

use stillroom_exchange::record::FormulaRecord;

/// Cards of the shelf that are shown at first, and that are added when somebody looks further.
const CARDS_AT_ONCE: usize = 24;

/// Cards worked out, with the record they were worked out from.
#[derive(Default)]
struct Cards {
    /// [`Session::surroundings_changed`] when they were.
    within: u64,
    cards: LiteMap<FormulaId, (Rc<FormulaRecord>, Rc<ShelfCard>)>,
}

impl Session {
    /// Every formula, last changed first.
    pub(crate) fn records_by_change(&self) -> Vec<Rc<FormulaRecord>> {
        let mut records: Vec<Rc<FormulaRecord>> = self.shelf.values().map(Rc::clone).collect();
        records.sort_unstable_by_key(|record| (Reverse(record.changed_at), record.id));
        records
    }

    pub(crate) fn present_shelf(&mut self) -> ShelfView {
        let mut records = self.records_by_change();
        let all = records.len();
        let mut tags: Vec<String> = Vec::new();
        for tag in records.iter().flat_map(|record| tags_in(&record.formula.tags)) {
            if !tags.iter().any(|other| folded(other) == folded(tag)) {
                tags.push(tag.to_owned());
            }
        }
        tags.sort_by_cached_key(|tag| folded(tag));
        // A tag that no formula has any more hides nothing.
        if !tags.contains(&self.in_sight.tag) {
            self.in_sight.tag.clear();
        }
        let tag = self.in_sight.tag.clone();
        let filed = folded(&tag);
        let sought = self.in_sight.sought.trim();
        records.retain(|record| {
            let formula = &record.formula;
            (sought.is_empty() || folded(&formula.name).contains(sought) || folded(&formula.tags).contains(sought))
                && (tag.is_empty() || tags_in(&formula.tags).any(|other| folded(other) == filed))
        });
        if self.in_sight.order == ShelfOrder::Name {
            records.sort_by_key(|record| folded(&record.formula.name));
        }
        // The whole shelf of a maker of many years is neither worked out nor drawn before somebody looks so far.
        let shown = CARDS_AT_ONCE.saturating_mul(self.in_sight.further + 1);
        let more = records.len().saturating_sub(shown);
        records.truncate(shown);
        let cards = records.iter().map(|record| self.card_of(record)).collect();
        let total = crate::messages::shelf::count(all);
        ShelfView { cards, more, all, total, tags, tag, open: self.open.map(|id| id.to_string()) }
    }

    /// The card of a record, worked out anew only when the record or a material changed.
    fn card_of(&mut self, record: &Rc<FormulaRecord>) -> Rc<ShelfCard> {
        let within = self.surroundings_changed;
        let known: &mut Cards = self.shown.of();
        if known.within != within {
            *known = Cards { within, ..Cards::default() };
        }
        if let Some((of, card)) = known.cards.get(&record.id)
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
            tags: formula.tags.clone(),
            sound: balance.is_sound() && composition.unresolved.is_empty(),
            layers: self.present_layers(&composition),
        });
        self.shown.of::<Cards>().cards.insert(record.id, (Rc::clone(record), Rc::clone(&card)));
        card
    }
}
