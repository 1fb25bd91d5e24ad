//! What the page can ask: the commands of every room.

use crate::contract::commands::{ReadCommand, commands, field_of};
use crate::lazy::lazy;
use crate::rooms::batches::command::BatchesCommand;
use crate::rooms::bench::command::BenchCommand;
use crate::rooms::costs::command::CostsCommand;
use crate::rooms::extracts::command::ExtractsCommand;
use crate::rooms::findings::command::FindingsCommand;
use crate::rooms::formula::command::FormulaCommand;
use crate::rooms::label::command::LabelCommand;
use crate::rooms::materials::command::MaterialsCommand;
use crate::rooms::paste::command::PasteCommand;
use crate::rooms::ph::command::PhCommand;
use crate::rooms::post::command::PostCommand;
use crate::rooms::share::command::ShareCommand;
use crate::rooms::shelf::command::ShelfCommand;
use crate::rooms::swap::command::SwapCommand;
use serde::Serialize;
use tsify::Tsify;
use wasm_bindgen::prelude::*;

commands! {
    /// What the page can ask whatever the room: taking back, and what another page changed. Text fields carry what was typed, as it was typed.
    pub enum DeskCommand;

    /// Take back the last change.
    "undo" Undo {},
    /// Take back one change, if it is the last one.
    "undo-act" UndoAct {
        /// Its number.
        change: u32 as "number",
    },
    /// Make the change that was taken back.
    "redo" Redo {},
    /// Another page of this browser changed a record.
    "changed-elsewhere" ChangedElsewhere {
        /// Key of the record.
        key: String as "string",
    },
    /// Of two versions of the same record, take the one written elsewhere.
    "take-theirs" TakeTheirs {
        /// Key of the record.
        key: String as "string",
    },
    /// Of two versions of the same record, keep both: this one becomes a copy.
    "keep-both" KeepBoth {
        /// Key of the record.
        key: String as "string",
    },
}

macro_rules! rooms {
    ($($(#[$about:meta])* $variant:ident($command:ident),)*) => {
        /// One act of the maker, in one of the rooms.
        #[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
        #[serde(untagged)]
        pub enum Command { $( $(#[$about])* $variant($command), )* }

        $( impl From<$command> for Command {
            fn from(command: $command) -> Self {
                Self::$variant(command)
            }
        } )*
    };
}

rooms! {
    /// Whatever the room.
    Desk(DeskCommand),
    /// On the shelf.
    Shelf(ShelfCommand),
    /// In the open formula.
    Formula(FormulaCommand),
    /// On the bench.
    Bench(BenchCommand),
    /// Among the materials.
    Materials(MaterialsCommand),
    /// Among the extracts.
    Extracts(ExtractsCommand),
    /// On the findings.
    Findings(FindingsCommand),
    /// On the pH.
    Ph(PhCommand),
    /// Among the batches.
    Batches(BatchesCommand),
    /// On a pasted recipe.
    Paste(PasteCommand),
    /// Sharing and keeping.
    Share(ShareCommand),
    /// Making it with what one has.
    Swap(SwapCommand),
    /// On the label.
    Label(LabelCommand),
    /// On the post.
    Post(PostCommand),
    /// On the costs.
    Costs(CostsCommand),
}

impl Command {
    /// Reads a command from the page.
    ///
    /// # Errors
    /// If it is none, or a field is not what its type says.
    pub fn from_page(page: &JsValue) -> ReadCommand<Self> {
        fn into<C: Into<Command>>(read: ReadCommand<C>) -> ReadCommand<Command> {
            read.map(Into::into)
        }
        let name: String = field_of(page, "do")?;
        FormulaCommand::from_page(&name, page)
            .map(into)
            .or_else(|| BenchCommand::from_page(&name, page).map(into))
            .or_else(|| ShelfCommand::from_page(&name, page).map(into))
            .or_else(|| DeskCommand::from_page(&name, page).map(into))
            .or_else(|| read_shared(&name, page).map(into))
            .or_else(|| read_beyond(&name, page))
            .or_else(|| read_swap(&name, page))
            .unwrap_or_else(|| Err(serde_wasm_bindgen::Error::new("no such command")))
    }
}

lazy! {
    share "39" fn read_shared(name: &str, page: &JsValue) -> Option<ReadCommand<ShareCommand>> {
        ShareCommand::from_page(name, page)
    } else { None }
}

lazy! {
    whole "3a" fn read_beyond(name: &str, page: &JsValue) -> Option<ReadCommand<Command>> {
        MaterialsCommand::from_page(name, page)
            .map(|read| read.map(Into::into))
            .or_else(|| ExtractsCommand::from_page(name, page).map(|read| read.map(Into::into)))
            .or_else(|| FindingsCommand::from_page(name, page).map(|read| read.map(Into::into)))
            .or_else(|| PhCommand::from_page(name, page).map(|read| read.map(Into::into)))
            .or_else(|| BatchesCommand::from_page(name, page).map(|read| read.map(Into::into)))
            .or_else(|| LabelCommand::from_page(name, page).map(|read| read.map(Into::into)))
            .or_else(|| PostCommand::from_page(name, page).map(|read| read.map(Into::into)))
            .or_else(|| CostsCommand::from_page(name, page).map(|read| read.map(Into::into)))
            .or_else(|| PasteCommand::from_page(name, page).map(|read| read.map(Into::into)))
    } else { None }
}

lazy! {
    swap "b0" fn read_swap(name: &str, page: &JsValue) -> Option<ReadCommand<Command>> {
        SwapCommand::from_page(name, page).map(|read| read.map(Into::into))
    } else { None }
}

/// What core and exchange name, as the page writes it.
#[wasm_bindgen(typescript_custom_section)]
const SHARED_NAMES: &str = r#"
export type Example = "gel-cream" | "balm" | "toner" | "cleansing-gel";
export type ExtractKind = "glycerite" | "solution" | "alcohol";
export type ExtractOffer = "shelve" | "use" | "solve" | "adjust" | "evaporated" | "verify" | "blend";
export type PhOffer = "set" | "buffer" | "neutralise";
export type SwapUse = "line" | "shelf" | "expiring" | "cheapest" | "figure";
export type PhaseKind = "heated-water" | "heated-oil" | "cool-down" | "room-temperature";
export type Layer = "water" | "humectants" | "thickeners" | "oils" | "solids" | "emulsifiers" | "surfactants" | "actives" | "preservatives" | "fragrance" | "minerals" | "helpers";
export type Class = "water" | "humectant" | "solvent" | "thickener" | "oil" | "butter" | "emollient" | "wax" | "fatty-alcohol" | "fatty-acid" | "emulsifier" | "surfactant" | "active" | "extract" | "protein" | "preservative" | "chelator" | "antioxidant" | "ph-adjuster" | "salt" | "essential-oil" | "fragrance" | "colourant" | "mineral" | "exfoliant" | "other";
"#;
