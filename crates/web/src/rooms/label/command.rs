//! What the page can ask of the label.

use crate::contract::commands::commands;

commands! {
    /// What the page can ask of the label. Text fields carry what was typed, as it was typed.
    pub enum LabelCommand;

    /// Look at the label, or away from it: it is worked out only while somebody looks.
    "look-at-label" LookAtLabel {
        /// Whether the page shows it.
        looking: bool as "boolean",
    },
    /// Fill in a field of it.
    "set-label-field" SetLabelField {
        /// Which.
        field: String as "string",
        /// As typed or chosen; empty for what is worked out or usual.
        text: String as "string",
    },
}
