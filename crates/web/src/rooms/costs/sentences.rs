//! What is said of costs: what their fields take, what does not go with a container.

use crate::messages::{common, costs as says};
use stillroom_core::packaging::{Misfit, Walls};

/// What a field takes.
pub(crate) fn what_field_takes(field: &str) -> String {
    // What a field of a further kind of container takes, that of the first takes, too.
    match field.split_once(':').map_or_else(|| field.to_owned(), |(_, name)| format!("cost.{name}")).as_str() {
        "cost.volume" => common::takes_volume(),
        "cost.count" => says::takes_kind_count(),
        "cost.price" | "cost.further" | "cost.hour" => common::takes_price(),
        "cost.minutes" => says::takes_minutes(),
        "cost.margin" => says::takes_margin(),
        "cost.batches" => says::takes_batches(),
        _ => common::takes_allowance(),
    }
    .to_owned()
}

/// What a container is made of.
pub(crate) fn walls(walls: Walls) -> &'static str {
    match walls {
        Walls::Glass => says::walls_glass(),
        Walls::Polyethylene => says::walls_polyethylene(),
        Walls::Polypropylene => says::walls_polypropylene(),
        Walls::Polyester => says::walls_polyester(),
        Walls::Polystyrene => says::walls_polystyrene(),
        Walls::BareAluminium => says::walls_bare_aluminium(),
        Walls::LacqueredMetal => says::walls_lacquered_metal(),
    }
}

/// What of a product does not go with its container.
pub(crate) fn misfit(misfit: Misfit, source: &str) -> String {
    match misfit {
        Misfit::ScentInPolystyrene => says::misfit_scent(source),
        Misfit::AcidOnAluminium => says::misfit_acid(source),
        Misfit::AlkaliOnAluminium => says::misfit_alkali(source),
        Misfit::AlkaliOnPolyester => says::misfit_polyester(source),
        Misfit::LacquerUntested => says::misfit_lacquer(source),
        Misfit::PhNotKnown => says::misfit_ph(source),
    }
}
