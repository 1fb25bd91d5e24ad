//! What of a formula may leave: the formula with all it is made of, without what its maker keeps to himself.
//!
//! Whatever a post says is worked out in a session that holds this and nothing else: no price, lot, stock, batch or journal
//! is within its reach.

use crate::lazy::lazy;
use crate::rooms::share::edit::write_link;
use crate::rooms::share::public::{formula_for_others, parcel_for_others};
use crate::rooms::share::reading::open_parcel;
use crate::rooms::share::view::LinkView;
use crate::session::Session;
use crate::session::settings::Settings;
use stillroom_core::batch_plan::{BatchPlan, BatchWay};
use stillroom_core::number::DecimalMark;
use stillroom_core::{Formula, FormulaId, Grams};
use stillroom_exchange::label::{LabelFields, for_another_batch};
use stillroom_exchange::parcel::{Parcel, Shelf};

/// A formula for a batch of that mass without what its maker keeps to himself, and what is true of one batch only.
fn for_others(formula: &Formula, batch: Grams) -> Formula {
    let mut copy = formula_for_others(formula);
    copy.batch = BatchPlan { way: BatchWay::Mass, mass: batch, ..BatchPlan::default() };
    copy.batch.containers.density = formula.batch.containers.density;
    copy.label = for_another_batch(&formula.label);
    copy
}

/// What of a formula, and of all it is made of, may be seen in a batch of that mass.
pub(crate) fn public_parcel(id: FormulaId, shelf: &impl Shelf, batch: Grams) -> Option<Parcel> {
    parcel_for_others(id, shelf, |formula| for_others(formula, batch))
}

/// The settings by which a post is worked out: how its maker writes numbers, and where the product is sold.
fn settings_for_others(settings: &Settings) -> Settings {
    let mut market = LabelFields::default();
    market.set("market", LabelFields::read(&settings.maker).get("market").unwrap_or_default());
    Settings { maker: market.write(), ..settings.clone() }
}

/// A session that holds a parcel and nothing else.
pub(crate) fn open_for_others(parcel: &Parcel, settings: &Settings, mark: DecimalMark) -> Session {
    let mut reading = open_parcel(parcel, settings_for_others(settings), mark);
    // What materials are for stands in the whole catalogue.
    reading.whole_arrived();
    reading
}

lazy! {
    share "3b" pub(crate) fn link_for_others(parcel: &Parcel, address: &str) -> LinkView {
        write_link(parcel, address)
    } else { LinkView::default() }
}
