//! What the page shows of the costs.

use crate::rooms::batches::view::RemarkView;
use crate::rooms::extracts::view::{ChoiceView, FigureView};
use crate::rooms::materials::view::HoldingView;
use serde::Serialize;
use stillroom_core::Layer;
use tsify::Tsify;

/// What a batch of the open formula costs.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CostsView {
    /// Why there is nothing to show; then all below is empty.
    pub problem: String,
    /// Name of the formula, as a printed sheet is headed.
    pub name: String,
    /// What is reckoned, in a sentence.
    pub about: String,
    /// What matters most: a unit, or 100 g where no units are known. Empty where nothing has a price.
    pub headline: String,
    /// What that is.
    pub headline_about: String,
    /// Batch, unit, 100 g and what they are made of.
    pub figures: Vec<FigureView>,
    /// What is missing from the sums, and what is to be known of them.
    pub said: Vec<RemarkView>,
    /// What each line costs, and what making it adds; they sum to the batch.
    pub lines: Vec<CostLineView>,
    /// What can be filled in.
    pub fields: Vec<CostFieldView>,
    /// How the containers come out.
    pub filling: Vec<FigureView>,
    /// Further kinds of containers.
    pub kinds: Vec<CostKindView>,
    /// Whether another kind can be listed.
    pub more_kinds: bool,
    /// What the act says that plans a batch for as many of each kind as are wanted; empty where there is none.
    pub plan_kinds: String,
    /// What is short of the kinds, and what nobody takes.
    pub kinds_said: Vec<RemarkView>,
    /// How many of each usual size could be filled.
    pub sizes: Vec<CostSizeView>,
    /// What does not go with the containers.
    pub misfits: Vec<RemarkView>,
    /// What is needed of each material, and whole packs to buy.
    pub buy: Vec<CostBuyView>,
    /// The containers to buy.
    pub buy_containers: Vec<CostPiecesView>,
    /// What all of them cost.
    pub buy_about: String,
    /// What has to be bought, as text.
    pub buy_text: String,
    /// The same as a table for a spreadsheet.
    pub buy_table: String,
}

/// A further kind of container.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CostKindView {
    /// Its key.
    pub key: String,
    /// What it is called.
    pub name: String,
    /// What can be filled in of it.
    pub fields: Vec<CostFieldView>,
}

/// A field of the costs.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CostFieldView {
    /// Its name.
    pub field: String,
    /// Where it stands: how much is made, its containers, the work, the list of what to buy.
    #[tsify(type = "\"batch\" | \"container\" | \"kind\" | \"work\" | \"buy\"")]
    pub group: &'static str,
    /// How it is filled in.
    #[tsify(type = "\"choice\" | \"number\" | \"line\"")]
    pub kind: &'static str,
    /// What it is called.
    pub label: String,
    /// Unit behind it; may be empty.
    pub unit: String,
    /// What it holds: a text, or the key of what is chosen.
    pub text: String,
    /// What can be chosen.
    pub choices: Vec<ChoiceView>,
}

/// What a line of the formula costs, or what making it adds.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CostLineView {
    /// What it is.
    pub name: String,
    /// How much of it goes in, or what it is counted by.
    pub about: String,
    /// What it costs, or that no price is known.
    pub cost: String,
    /// Its share of the batch, as text; empty where no price is known.
    pub share: String,
    /// The same from 0 to 1, for a bar.
    pub fraction: f64,
    /// The layer its colour is of.
    #[tsify(type = "Layer")]
    pub layer: Layer,
    /// Whether its price, or that of a part of it, is not known.
    pub unknown: bool,
}

/// How many containers of a usual size could be filled.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CostSizeView {
    /// The size.
    pub size: String,
    /// How many, and what is left over.
    pub count: String,
    /// How many at least and at most; empty where that is the same.
    pub range: String,
}

/// A material that is needed.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CostBuyView {
    /// The material.
    pub material: String,
    /// Its name.
    pub name: String,
    /// What is needed and what is there, in a sentence.
    pub about: String,
    /// Packs to buy, and what is left of them.
    pub packs: String,
    /// What they cost; may be empty.
    pub cost: String,
    /// Whether something of it has to be bought.
    pub lacking: bool,
    /// What its fields hold.
    pub holding: HoldingView,
}

/// Containers to buy.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
pub struct CostPiecesView {
    /// What they are called.
    pub name: String,
    /// How many.
    pub about: String,
    /// What they cost, or that no price is known.
    pub cost: String,
}

/// A table of prices that was read.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct PricesView {
    /// What was read, in a sentence.
    pub summary: String,
    /// What is wrong, line by line, in sentences.
    pub problems: Vec<String>,
    /// What would change, a sentence a material.
    pub changes: Vec<String>,
    /// How many materials would change; none if anything is wrong.
    pub ready: usize,
}
