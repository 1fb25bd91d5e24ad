//! What the page can ask of the costs.

use crate::contract::commands::commands;

commands! {
    /// What the page can ask of the costs. Text fields carry what was typed, as it was typed.
    pub enum CostsCommand;

    /// Look at the costs, or away from them: they are worked out only while somebody looks.
    "look-at-costs" LookAtCosts {
        /// Whether the page shows them.
        looking: bool as "boolean",
    },
    /// Fill in a field of them.
    "set-cost-field" SetCostField {
        /// Which.
        field: String as "string",
        /// As typed or chosen; empty for what is worked out or not counted.
        text: String as "string",
    },
    /// List another kind of container.
    "add-container-kind" AddContainerKind {},
    /// Take a kind of container off the list.
    "remove-container-kind" RemoveContainerKind {
        /// Its key.
        kind: String as "string",
    },
    /// Plan the batch that fills as many of each kind as are wanted.
    "plan-container-kinds" PlanContainerKinds {},
    /// Take in the prices of the table that was read.
    "take-prices" TakePrices {},
}
