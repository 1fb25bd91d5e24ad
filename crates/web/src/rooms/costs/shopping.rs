//! What has to be bought, on the page, as text and as a table.

use crate::messages::costs as says;
use crate::rooms::costs::kinds::Pieces;
use crate::rooms::costs::view::{CostBuyView, CostPiecesView, CostsView};
use crate::session::Session;
use stillroom_core::cost::{Buy, Cost, Need, rounded};
use stillroom_core::number::write_between;
use stillroom_core::{Currency, Grams};
use stillroom_exchange::prices::{ShoppingRow, write_shopping};

impl Session {
    pub(crate) fn show_shopping(
        &self,
        needs: &[Need],
        containers: &[Pieces],
        cost: &Cost,
        batches: u32,
        view: &mut CostsView,
    ) {
        let money = |amount| cost.currency.map_or_else(String::new, |currency| self.money(amount, currency));
        let mut rows = Vec::new();
        let mut text = vec![says::list_head(batches as usize, self.formula().map_or("", |it| it.name.as_str()))];
        for (need, line) in needs.iter().zip(&cost.lines) {
            // Water from the tap is not bought.
            if need.is_free && need.pack.is_none() {
                continue;
            }
            let name = self.materials.name(need.material);
            let lacking = !line.buy.missing.is_zero();
            let about = match need.stock {
                Some(stock) => says::needed_of_stock(&self.shown_mass(line.buy.needed), &self.shown_mass(stock)),
                None => says::needed_no_stock(&self.shown_mass(line.buy.needed)),
            };
            let packs = self.packs(need, &line.buy, lacking);
            let is_known = need.pack.is_some() || !lacking;
            let paid = line.buy.cost.filter(|_| lacking).map_or_else(String::new, money);
            if lacking {
                let entry = match (is_known, paid.is_empty()) {
                    (false, _) => says::list_entry_unknown(&name, &self.shown_mass(line.buy.missing)),
                    (true, true) => says::list_entry(&name, &packs),
                    (true, false) => says::list_entry_priced(&name, &packs, &paid),
                };
                text.push(entry);
                rows.push(Self::shopping_row(&name, need, &line.buy, cost.currency));
            }
            view.buy.push(CostBuyView {
                material: need.material.to_string(),
                name,
                about,
                packs,
                cost: paid,
                lacking,
                holding: self.present_holding(need.material),
            });
        }
        let materials = rows.len();
        let mut in_all = cost.to_buy;
        for Pieces { name, count, cost } in containers {
            let paid =
                cost.map_or_else(|| says::price_unknown().to_owned(), |(cost, currency)| self.money(cost, currency));
            in_all = cost.and_then(|(cost, _)| in_all.checked_add(cost)).unwrap_or(in_all);
            let about = says::pieces(*count as usize);
            text.push(match cost {
                Some(_) => says::list_entry_priced(name, &about, &paid),
                None => says::list_entry(name, &about),
            });
            rows.push(ShoppingRow {
                name: name.clone(),
                needed: None,
                stock: None,
                missing: None,
                packs: Some(*count),
                pack: None,
                cost: cost.map(|(cost, currency)| rounded(cost, currency)),
                currency: cost.map(|(_, currency)| currency),
            });
            view.buy_containers.push(CostPiecesView { name: name.clone(), about, cost: paid });
        }
        view.buy_about = match (rows.is_empty(), cost.currency) {
            (true, _) => says::nothing_to_buy().to_owned(),
            (false, Some(_)) if containers.is_empty() => says::to_buy_in_all(materials, &money(in_all)),
            (false, Some(_)) => says::to_buy_with_containers(materials, &money(in_all)),
            (false, None) => String::new(),
        };
        if !rows.is_empty() {
            if let Some(currency) = cost.currency {
                text.push(says::list_sum(&self.money(in_all, currency)));
            }
            view.buy_text = text.join("\n");
            view.buy_table = write_shopping(&rows, self.mark());
        }
    }

    fn packs(&self, need: &Need, buy: &Buy, lacking: bool) -> String {
        if !lacking {
            return says::enough_there().to_owned();
        }
        match (need.pack, buy.packs) {
            (Some(pack), Some(packs)) => {
                let left = buy.left.unwrap_or(Grams::ZERO);
                says::packs_to_buy(packs as usize, &self.shown_mass(pack.holds), &self.shown_mass(left))
            }
            _ => says::pack_unknown().to_owned(),
        }
    }

    fn shopping_row(name: &str, need: &Need, buy: &Buy, currency: Option<Currency>) -> ShoppingRow {
        ShoppingRow {
            name: name.to_owned(),
            needed: Some(buy.needed),
            stock: need.stock,
            missing: Some(buy.missing),
            packs: buy.packs,
            pack: need.pack.map(|pack| pack.holds),
            cost: buy.cost.zip(currency).map(|(cost, currency)| rounded(cost, currency)),
            currency: currency.filter(|_| buy.cost.is_some()),
        }
    }

    /// An amount as its currency writes it, with its code.
    pub(crate) fn money(&self, amount: rust_decimal::Decimal, currency: Currency) -> String {
        let decimals = stillroom_core::cost::decimals_of(currency);
        let number = write_between(rounded(amount, currency), decimals, decimals, self.mark());
        says::money(&number, currency.code())
    }
}
