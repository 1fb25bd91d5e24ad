//! What the page can ask of the pH of the open formula. The target and the measured pH are asked of the formula and of the
//! findings.

use crate::contract::commands::commands;

commands! {
    /// What the page can ask of the pH. Text fields carry what was typed, as it was typed.
    pub enum PhCommand;

    /// Look at the pH, or away from it: it is worked out only while somebody looks.
    "look-at-ph" LookAtPh {
        /// Whether the page shows it.
        looking: bool as "boolean",
    },
    /// Fill in a field of what is worked out.
    "set-ph-field" SetPhField {
        /// Which.
        field: String as "string",
        /// As typed or chosen.
        text: String as "string",
    },
    /// Put into the formula what was worked out.
    "take-ph-offer" TakePhOffer {
        /// Which.
        offer: String as "PhOffer",
        /// Its first line as it was shown: what changed meanwhile is not taken unseen.
        text: String as "string",
    },
}
