//! What the page can ask of making it with what one has.

use crate::contract::commands::commands;
use stillroom_core::LineId;

commands! {
    /// What the page can ask of making it with what one has. Text fields carry what was typed, as it was typed.
    pub enum SwapCommand;

    /// Look at it, or away from it: it is worked out only while somebody looks.
    "look-at-swap" LookAtSwap {
        /// Whether the page shows it.
        looking: bool as "boolean",
    },
    /// Say what is asked.
    "choose-swap-use" ChooseSwapUse {
        /// What.
        wanted: String as "SwapUse",
    },
    /// Ask what could take the place of a line.
    "swap-line" SwapLine {
        /// Which line.
        line: LineId as "number",
    },
    /// Look at one of the ways to do without the line.
    "choose-way" ChooseWay {
        /// Which.
        way: String as "string",
    },
    /// Say what readers can take instead of a line.
    "set-substitution" SetSubstitution {
        /// Which line.
        line: LineId as "number",
        /// In the author's words.
        text: String as "string",
    },
    /// Say whether a line is missing on the shelf, or may vary: which of both says what is asked.
    "mark-line" MarkLine {
        /// Which line.
        line: LineId as "number",
        /// Whether it does.
        marked: bool as "boolean",
    },
    /// Fill in a field of what is asked.
    "set-swap-field" SetSwapField {
        /// Which.
        field: String as "string",
        /// As typed or chosen.
        text: String as "string",
    },
    /// Put into the formula what was worked out.
    "take-swap" TakeSwap {
        /// Its summary as it was shown: what changed meanwhile is not taken unseen.
        text: String as "string",
    },
}
