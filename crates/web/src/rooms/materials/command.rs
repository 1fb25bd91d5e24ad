//! What the page can ask of the materials.

use crate::contract::commands::commands;
use serde::{Deserialize, Serialize};
use stillroom_core::{Class, MaterialId, PhaseKind};
use tsify::Tsify;

commands! {
    /// What the page can ask of the materials. Text fields carry what was typed, as it was typed.
    pub enum MaterialsCommand;

    /// Describe a material of one's own and open it.
    "new-material" NewMaterial {
        /// Whether it is made of others.
        composite: bool as "boolean",
        /// Its name.
        name: String as "string",
    },
    /// Describe an own material from a catalogue composite, to change it.
    "copy-material" CopyMaterial {
        /// Which.
        material: MaterialId as "string",
    },
    /// Open a material's card.
    "open-material" OpenMaterial {
        /// Which.
        material: MaterialId as "string",
    },
    /// Close the card.
    "close-material" CloseMaterial {},
    /// Change a text of the open material.
    "set-material-text" SetMaterialText {
        /// Which text.
        field: MaterialField as "MaterialField",
        /// As typed.
        text: String as "string",
    },
    /// Say what the open material is.
    "set-material-class" SetMaterialClass {
        /// What.
        class: Class as "Class",
    },
    /// Say which phase the open material usually goes into.
    "set-material-phase" SetMaterialPhase {
        /// Which.
        kind: PhaseKind as "PhaseKind",
    },
    /// Put a part into the open composite.
    "add-part" AddPart {
        /// Which material.
        material: MaterialId as "string",
    },
    /// Say how much of a part goes in.
    "set-part-amount" SetPartAmount {
        /// Position of the part.
        part: usize as "number",
        /// As typed.
        text: String as "string",
    },
    /// Take a part out of the open composite.
    "remove-part" RemovePart {
        /// Position of the part.
        part: usize as "number",
    },
    /// Delete the open material.
    "delete-material" DeleteMaterial {
        /// Which.
        material: MaterialId as "string",
    },
    /// Say what there is of a material, or a value known better than the catalogue does.
    "set-holding" SetHolding {
        /// Which material.
        material: MaterialId as "string",
        /// What is said.
        field: HoldingField as "HoldingField",
        /// As typed; empty for nothing.
        text: String as "string",
    },
    /// Take in the materials of the table that was read.
    "import-table" ImportTable {},
}

/// The texts of an own material.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum MaterialField {
    /// Common name.
    Name,
    /// INCI name of a simple material.
    Inci,
    /// Density.
    Density,
    /// Notes.
    Note,
}

/// What a maker says of what they have of a material.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum HoldingField {
    /// Price of a pack.
    Price,
    /// Currency of the price.
    Currency,
    /// What a pack holds.
    Pack,
    /// What getting a pack here adds.
    Shipping,
    /// How much is there.
    Stock,
    /// Lot number.
    Lot,
    /// Last day it should be used.
    Expiry,
    /// Density as measured.
    Density,
    /// Usual percent by experience.
    Usual,
    /// Notes.
    Note,
}
