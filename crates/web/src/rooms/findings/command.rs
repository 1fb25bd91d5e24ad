//! What the page can ask of the findings.

use crate::contract::commands::commands;
use stillroom_core::LineId;

commands! {
    /// What the page can ask of the findings. Text fields carry what was typed, as it was typed.
    pub enum FindingsCommand;

    /// Open a finding to its arithmetic, or close it.
    "open-finding" OpenFinding {
        /// Which.
        key: String as "string",
        /// Whether it is open.
        open: bool as "boolean",
    },
    /// Apply a cure of a finding.
    "cure-finding" CureFinding {
        /// Which finding.
        key: String as "string",
        /// Position of the cure.
        cure: usize as "number",
        /// The cure as it was shown: one that reads otherwise by now is not applied.
        text: String as "string",
    },
    /// Set a finding aside.
    "set-aside-finding" SetAsideFinding {
        /// Which.
        key: String as "string",
        /// Why.
        text: String as "string",
    },
    /// Take a finding back that was set aside.
    "take-finding-back" TakeFindingBack {
        /// Which.
        key: String as "string",
    },
    /// Say whether what a line brings is meant to stay solid.
    "set-suspended" SetSuspended {
        /// The line.
        line: LineId as "number",
        /// Whether it is.
        suspended: bool as "boolean",
    },
    /// Say how cold products are kept.
    "set-cold-storage" SetColdStorage {
        /// As typed.
        text: String as "string",
    },
    /// Say what kind of product it is; whether it stays on follows.
    "set-kind" SetKind {
        /// Its word; empty where it is not stated.
        text: String as "string",
    },
    /// Say which pH was measured in the finished product.
    "set-measured-ph" SetMeasuredPh {
        /// As typed; empty for none.
        text: String as "string",
    },
}
