//! What the maker has, as a list: what should be used first stands first.

use crate::messages::materials as says;
use crate::rooms::batches::sentences::day;
use crate::rooms::materials::view::HeldView;
use crate::session::Session;
use stillroom_catalogue::folded;
use stillroom_core::day::Day;
use stillroom_core::{Layer, MaterialSource};
use stillroom_exchange::holding::Holding;

/// Days before its date from which on a material is said to be due. Common practice.
pub(crate) const SOON: i64 = 30;

impl Session {
    /// Days until what there is of a material should be used; less than nothing once that is past.
    pub(crate) fn days_left(&self, holding: &Holding) -> Option<i64> {
        let (until, today): (Day, Day) = (holding.expiry.parse().ok()?, self.around.today().parse().ok()?);
        Some(until.since(today))
    }

    pub(crate) fn present_held(&self) -> Vec<HeldView> {
        let mut held: Vec<(String, HeldView)> = self
            .materials
            .kept_holdings()
            .map(|(id, holding)| {
                let until: Option<Day> = holding.expiry.parse().ok();
                let left = self.days_left(holding);
                let view = HeldView {
                    id: id.to_string(),
                    name: self.materials.name(id),
                    layer: self.materials.material(id).map_or(Layer::Helpers, |material| material.class.layer()),
                    about: if holding.lot.is_empty() { String::new() } else { says::held_lot(&holding.lot) },
                    stock: holding.stock.map_or_else(String::new, |stock| self.mass(stock)),
                    until: match (until, left) {
                        (Some(until), Some(..0)) => says::held_past(&day(until)),
                        (Some(until), _) => says::held_until(&day(until)),
                        (None, _) => String::new(),
                    },
                    late: left.is_some_and(|left| left <= SOON),
                };
                (holding.expiry.clone(), view)
            })
            .collect();
        // Days written year first sort as texts do; what has no day comes last, by name.
        held.sort_by_key(|(expiry, view)| (expiry.is_empty(), expiry.clone(), folded(&view.name)));
        held.into_iter().map(|(_, view)| view).collect()
    }
}
