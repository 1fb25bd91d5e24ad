//! What the maker has of a material, as the page shows it.

use crate::contract::ValueView;
use crate::messages::materials as says;
use crate::rooms::materials::sentences as sentences_material;
use crate::rooms::materials::view::HoldingView;
use crate::session::Session;
use rust_decimal::Decimal;
use stillroom_catalogue::Property;
use stillroom_core::number::write_between;
use stillroom_core::{Density, MaterialId, Money};

/// Earlier prices that are told; more are kept.
const MOST_BEFORE: usize = 5;

/// A day as it is read, or as it was noted where it is none.
fn day_of(day: &str) -> String {
    day.parse().map_or_else(|_| day.to_owned(), crate::rooms::batches::sentences::day)
}

impl Session {
    pub(crate) fn present_holding(&self, id: MaterialId) -> HoldingView {
        let Some(holding) = self.materials.holding(id) else { return HoldingView::default() };
        let mark = self.mark();
        let money = |amount: Decimal| write_between(amount, 2, 4, mark);
        let mut remarks = Vec::new();
        if let (Some(price), Some(pack)) = (holding.price, holding.pack) {
            let per_hundred = price
                .amount()
                .checked_mul(Decimal::ONE_HUNDRED)
                .and_then(|scaled| scaled.checked_div(pack.value()))
                .map(|each| each.round_dp(2));
            remarks
                .extend(per_hundred.map(|each| says::price_per_hundred_grams(&money(each), price.currency().code())));
        }
        // When the price was noted, and what it was before: a price of last year says little of the next order.
        let noted = holding.noted_prices();
        let mut latest = noted.iter().rev();
        remarks.extend(latest.next().map(|last| says::price_noted(&day_of(&last.day))));
        for before in latest.take(MOST_BEFORE) {
            let price = says::price_with_currency(&money(before.price.amount()), before.price.currency().code());
            let text = match before.pack {
                Some(pack) => says::price_before_pack(&price, &self.mass(pack), &day_of(&before.day)),
                None => says::price_before(&price, &day_of(&before.day)),
            };
            remarks.push(text);
        }
        // Days written year first sort as texts do.
        if !holding.expiry.is_empty() && holding.expiry < self.around.today() {
            remarks.push(sentences_material::past_its_date(&holding.expiry));
        }
        HoldingView {
            price: holding.price.map(Money::amount).map(money).unwrap_or_default(),
            currency: holding.price.map(|price| price.currency().code().to_owned()).unwrap_or_default(),
            shipping: holding.shipping.map(money).unwrap_or_default(),
            pack: holding.pack.map(|pack| self.mass_number(pack)).unwrap_or_default(),
            stock: holding.stock.map(|stock| self.mass_number(stock)).unwrap_or_default(),
            lot: holding.lot.clone(),
            expiry: holding.expiry.clone(),
            density: holding.density.map(|density| write_between(density.value(), 2, 4, mark)).unwrap_or_default(),
            usual: holding.usual.clone(),
            note: holding.note.clone(),
            remarks,
        }
    }

    /// The catalogue's values with the maker's own before them, marked as such.
    pub(crate) fn present_own_values(&self, id: MaterialId, mut values: Vec<ValueView>) -> Vec<ValueView> {
        let Some(holding) = self.materials.holding(id) else { return values };
        let own = |property: Property, value: String| ValueView {
            label: sentences_material::property(property),
            value,
            source: says::your_own_source().to_owned(),
            basis: says::your_own_basis().to_owned(),
        };
        if !holding.usual.is_empty() {
            values.insert(0, own(Property::UsualPercent, holding.usual.clone()));
        }
        if let Some(density) = holding.density {
            let number = write_between(density.value(), 2, 4, self.mark());
            values.insert(0, own(Property::Density, sentences_material::with_unit(&number, Density::UNIT)));
        }
        values
    }
}
