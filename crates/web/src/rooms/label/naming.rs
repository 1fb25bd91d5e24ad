//! By what name an ingredient stands on a label.

use crate::messages::label as says;
use crate::session::Session;
use stillroom_catalogue::reference::us_names;
use stillroom_core::ConstituentId;
use stillroom_core::label::{Declaration, Declared, Group, Market, Name};

impl Session {
    /// The name of an ingredient in a market; empty where it has none.
    pub(crate) fn label_name(&self, id: ConstituentId, market: Market) -> String {
        let us = (market == Market::UnitedStates).then(|| us_names().iter().find(|row| row.constituent == Some(id)));
        us.flatten().map_or_else(|| self.materials.inci(id).to_owned(), |row| row.name.to_owned())
    }

    /// A name of the list as it is written.
    pub(crate) fn declared_name(&self, declared: &Declared, market: Market) -> String {
        let is_us = market == Market::UnitedStates;
        let name = match declared.name {
            Name::Own(id) => self.label_name(id, market),
            Name::Perfume => if is_us { "Fragrance" } else { "Parfum" }.to_owned(),
            Name::Aroma => if is_us { "Flavor" } else { "Aroma" }.to_owned(),
            Name::Allergen(name) => name.to_owned(),
        };
        let name = if name.is_empty() { says::unnamed().to_owned() } else { name };
        if declared.is_nano { format!("{name} (nano)") } else { name }
    }

    /// The list as it is written.
    pub(crate) fn declaration_text(&self, list: &Declaration, market: Market) -> String {
        list.names.iter().map(|each| self.declared_name(each, market)).collect::<Vec<_>>().join(", ")
    }
}

/// The word of a place in the list.
pub(crate) const fn place_of(group: Group) -> &'static str {
    match group {
        Group::ByWeight => "weight",
        Group::AnyOrder => "any",
        Group::Colourants => "colour",
    }
}
