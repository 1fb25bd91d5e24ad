//! What the page sees of the bench.

use serde::Serialize;
use stillroom_core::batch_plan::BatchWay;
use tsify::Tsify;

/// Settings of this device.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct SettingsView {
    /// `point`, `comma` or `browser`.
    pub decimal_mark: String,
    /// Unit of mass, by its symbol.
    pub mass_unit: String,
    /// Unit of volume, by its symbol.
    pub volume_unit: String,
    /// Unit of temperature.
    pub temperature_unit: String,
    /// Step of the main scale.
    pub main_step: String,
    /// Whether there is a fine scale.
    pub fine_scale: bool,
    /// Step of the fine scale.
    pub fine_step: String,
    /// Mass under which the fine scale is used.
    pub fine_below: String,
    /// Relative error a line may have.
    pub tolerance: String,
}

/// The batch and how it was come by.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct BatchView {
    /// Which way counts.
    #[tsify(type = "\"mass\" | \"containers\" | \"stock\"")]
    pub way: BatchWay,
    /// Batch mass asked for.
    pub mass: String,
    /// How many containers.
    pub count: String,
    /// What each holds.
    pub volume: String,
    /// Share left empty.
    pub headspace: String,
    /// Share lost.
    pub loss: String,
    /// Measured density; empty if it is estimated.
    pub density: String,
    /// The estimate, for the empty field.
    pub density_estimate: String,
    /// What is left of materials.
    pub stock: Vec<StockView>,
    /// Materials of the formula of which it is not said how much is left.
    pub at_hand: Vec<AtHandView>,
    /// The batch the sheet makes.
    pub batch: String,
    /// How it was come by, a line each.
    pub arithmetic: Vec<String>,
    /// What the maker should know about it.
    pub remarks: Vec<String>,
    /// Why there is no batch or no sheet.
    pub problem: String,
    /// Whether there is a sheet.
    pub has_sheet: bool,
    /// Smallest batch with every line within the tolerance, in a sentence.
    pub smallest: String,
    /// How what is on the sheet is handled, where something on it is caustic.
    pub handling: Vec<String>,
    /// Lines whose rounding error is larger than the maker accepts, in a sentence.
    pub warning: String,
}

/// A material that may run short.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct AtHandView {
    /// The material.
    pub material: String,
    /// Its name.
    pub name: String,
    /// How much is there by the maker's own record; empty where nothing is recorded.
    pub recorded: String,
}

/// What is left of a material.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct StockView {
    /// The material.
    pub material: String,
    /// Its name.
    pub name: String,
    /// How much is there.
    pub available: String,
    /// What the batch leaves of it, or why it does not count.
    pub left: String,
    /// Whether it sets the batch.
    pub limiting: bool,
}
