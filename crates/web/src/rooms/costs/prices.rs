//! Prices of what is in the stores as a table, out and in: what would change is shown first.

use crate::contract::Answer;
use crate::messages::{common, costs as says};
use crate::rooms::costs::view::PricesView;
use crate::rooms::materials::sentences as sentences_material;
use crate::session::Session;
use crate::session::history::Slot;
use litemap::LiteMap;
use std::rc::Rc;
use stillroom_core::number::write_between;
use stillroom_core::{Grams, MaterialId, MaterialSource as _, Money};
use stillroom_exchange::holding::Holding;
use stillroom_exchange::prices::{PriceRow, PriceTable, read_prices, write_prices};
use stillroom_exchange::table::TableProblem;

/// Prices of a table that was read and wait to be taken in.
#[derive(Default)]
struct ReadPrices(Vec<(MaterialId, Holding)>);

impl Session {
    /// Prices and stock of what the maker has, and of what the open formula is made of, as a table for a spreadsheet.
    #[must_use]
    pub fn write_prices(&self) -> String {
        let mut materials: Vec<MaterialId> = self.materials.kept_holdings().map(|(id, _)| id).collect();
        for line in self.formula().into_iter().flat_map(stillroom_core::Formula::lines) {
            if !materials.contains(&line.material) {
                materials.push(line.material);
            }
        }
        let row = |id: MaterialId| {
            let holding = self.materials.holding(id).map_or_else(Holding::default, |holding| (**holding).clone());
            PriceRow {
                line: 0,
                material: id.to_string(),
                name: self.materials.name(id),
                pack: holding.pack,
                price: holding.price,
                shipping: holding.shipping,
                stock: holding.stock,
            }
        };
        let rows: Vec<PriceRow> = materials.into_iter().map(row).collect();
        write_prices(&rows, self.mark())
    }

    /// Reads a table of prices; what it would change waits for the maker's word.
    pub fn read_prices(&mut self, bytes: &[u8]) -> PricesView {
        self.waiting.of::<ReadPrices>().0.clear();
        let mark = self.mark();
        let mut table = match read_prices(bytes, mark) {
            Ok(table) => table,
            Err(error) => {
                return PricesView { summary: sentences_material::table_error(&error), ..PricesView::default() };
            }
        };
        let changed = self.changed_by(&mut table);
        let problems: Vec<String> =
            table.problems.iter().map(|problem| sentences_material::line_problem(problem, mark)).collect();
        let sentences: Vec<String> = changed.iter().map(|(id, after)| self.say_change(*id, after)).collect();
        let wrong = table.problems.len() + table.more_problems;
        let summary = match (wrong, changed.len()) {
            (0, 0) => says::prices_same().to_owned(),
            (0, count) => says::prices_read(count),
            (wrong, _) => says::prices_wrong(wrong),
        };
        // By halves nothing is taken in.
        let ready = if problems.is_empty() { changed.len() } else { 0 };
        if ready > 0 {
            self.waiting.of::<ReadPrices>().0 = changed;
        }
        PricesView { summary, problems, changes: sentences, ready }
    }

    /// The holdings that would be other ones, each material once.
    fn changed_by(&self, table: &mut PriceTable) -> Vec<(MaterialId, Holding)> {
        let mut by_name: LiteMap<String, MaterialId> = LiteMap::new();
        for material in self.materials.catalogue().materials() {
            by_name.insert(material.name.to_lowercase(), material.id);
            by_name.insert(self.materials.name(material.id).to_lowercase(), material.id);
        }
        for (_, own) in self.materials.own() {
            by_name.insert(own.material.name.to_lowercase(), own.material.id);
        }
        let day = self.around.today();
        let mut first_lines: LiteMap<MaterialId, u64> = LiteMap::new();
        let mut changed = Vec::new();
        for row in core::mem::take(&mut table.rows) {
            let by_key = row.material.parse().ok().filter(|id| self.materials.material(*id).is_some());
            let Some(id) = by_key.or_else(|| by_name.get(&row.name.to_lowercase()).copied()) else {
                let name = if row.name.is_empty() { row.material } else { row.name };
                if !name.is_empty() {
                    table.note(row.line, "name", TableProblem::UnknownMaterial { name });
                }
                continue;
            };
            if let Some(first) = first_lines.get(&id) {
                let first = *first;
                table.note(row.line, "name", TableProblem::NameTwice { first });
                continue;
            }
            first_lines.insert(id, row.line);
            let before = self.materials.holding(id).map_or_else(Holding::default, |holding| (**holding).clone());
            if row.shipping.is_some() && row.price.is_none() && before.price.is_none() {
                table.note(row.line, "shipping", TableProblem::Incomplete);
                continue;
            }
            let mut after = before.clone();
            // What a cell leaves empty is not said.
            after.price = row.price.or(before.price);
            after.pack = row.pack.or(before.pack);
            after.shipping = row.shipping.or(before.shipping);
            after.stock = row.stock.or(before.stock);
            if after != before {
                after.note_price(&day);
                changed.push((id, after));
            }
        }
        changed
    }

    fn say_change(&self, id: MaterialId, after: &Holding) -> String {
        let before = self.materials.holding(id).map_or_else(Holding::default, |holding| (**holding).clone());
        let nothing = || says::nothing_noted().to_owned();
        let money = |price: Option<Money>| price.map_or_else(nothing, |it| self.money(it.amount(), it.currency()));
        let mass = |mass: Option<Grams>| mass.map_or_else(nothing, |mass| self.mass(mass));
        let plain = |holding: &Holding| {
            holding.shipping.map_or_else(nothing, |amount| write_between(amount, 2, 4, self.mark()))
        };
        let mut parts = Vec::new();
        if before.price != after.price {
            parts.push(says::change_price(&money(before.price), &money(after.price)));
        }
        if before.pack != after.pack {
            parts.push(says::change_pack(&mass(before.pack), &mass(after.pack)));
        }
        if before.shipping != after.shipping {
            parts.push(says::change_shipping(&plain(&before), &plain(after)));
        }
        if before.stock != after.stock {
            parts.push(says::change_stock(&mass(before.stock), &mass(after.stock)));
        }
        says::change(&self.materials.name(id), &parts.join(common::list_of_lists_separator()))
    }

    /// Takes in the prices that wait, as one act.
    pub(crate) fn take_prices(&mut self) -> Answer {
        let waiting = core::mem::take(&mut self.waiting.of::<ReadPrices>().0);
        if waiting.is_empty() {
            return Answer::default();
        }
        let count = waiting.len();
        let slot = |id: &MaterialId| Slot::Holding(*id, self.materials.holding(*id).map(Rc::clone));
        let before = waiting.iter().map(|(id, _)| slot(id)).collect();
        let after = waiting.into_iter().map(|(id, holding)| Slot::Holding(id, Some(Rc::new(holding)))).collect();
        self.commit("cost.prices", None, self.open, before, after);
        self.notice("cost.prices", says::prices_taken(count), true);
        Answer::default()
    }
}
