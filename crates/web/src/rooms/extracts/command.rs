//! What the page can ask of the extracts.

use crate::contract::commands::commands;
use stillroom_exchange::extract::{ExtractId, ExtractKind};

commands! {
    /// What the page can ask of the extracts. Text fields carry what was typed, as it was typed.
    pub enum ExtractsCommand;

    /// Look at the extracts, or away from them: they are worked out only while somebody looks.
    "look-at-extracts" LookAtExtracts {
        /// Whether the page shows them.
        looking: bool as "boolean",
    },
    /// Begin an extract or a solution and open it.
    "new-extract" NewExtract {
        /// What is made.
        kind: ExtractKind as "ExtractKind",
    },
    /// Open an extract.
    "open-extract" OpenExtract {
        /// Which.
        extract: ExtractId as "string",
    },
    /// Delete an extract.
    "delete-extract" DeleteExtract {
        /// Which.
        extract: ExtractId as "string",
    },
    /// Put the invented example among the extracts.
    "restore-extract-example" RestoreExtractExample {},
    /// Fill in a field of the open extract.
    "set-extract" SetExtract {
        /// Which; `blend:` and the key of a batch puts that batch into the blend.
        field: String as "string",
        /// As typed or chosen.
        text: String as "string",
    },
    /// Leave a batch out of the blend.
    "remove-from-blend" RemoveFromBlend {
        /// Its field.
        field: String as "string",
    },
    /// Take back something that was done to the open extract.
    "remove-extract-step" RemoveExtractStep {
        /// Its position.
        step: usize as "number",
    },
    /// Do what an offer says.
    "take-extract-offer" TakeExtractOffer {
        /// Which.
        offer: String as "ExtractOffer",
    },
}
