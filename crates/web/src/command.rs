//! What the page can ask for.

use crate::settings::SettingName;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use stillroom_core::scaling::BatchWay;
use stillroom_core::{Class, FormulaId, LineId, MaterialId, PhaseId, PhaseKind, Purpose, WrittenIn};
use stillroom_exchange::extract::{ExtractId, ExtractKind};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// Declares [`Command`] once: its variants, their type on the page's side and how they are read from it. Reading goes
/// field by field, since a derived reader of a tagged enum would weigh more than the rest of the session.
macro_rules! commands {
    ($(
        $(#[$about:meta])*
        $name:literal $variant:ident { $( $(#[$field_about:meta])* $field:ident: $type:ty as $shown:literal, )* },
    )*) => {
        /// One act of the maker. Text fields carry what was typed, as it was typed.
        #[derive(Debug, Clone, PartialEq, Eq, Tsify)]
        #[serde(tag = "do")]
        pub enum Command {
            $(
                $(#[$about])*
                #[serde(rename = $name)]
                $variant { $( $(#[$field_about])* #[tsify(type = $shown)] $field: $type, )* },
            )*
        }

        impl Command {
            /// Reads a command from the page.
            ///
            /// # Errors
            /// If it is none, or a field is not what its type says.
            #[allow(unused_doc_comments, reason = "a variant that is not built is not read either")]
            pub fn from_page(page: &JsValue) -> Result<Self, serde_wasm_bindgen::Error> {
                let name: String = field_of(page, "do")?;
                match name.as_str() {
                    $( $(#[$about])* $name => Ok(Self::$variant { $( $field: field_of(page, stringify!($field))?, )* }), )*
                    _ => Err(serde_wasm_bindgen::Error::new("no such command")),
                }
            }
        }
    };
}

/// Reads one field of an object.
fn field_of<T: DeserializeOwned>(page: &JsValue, name: &str) -> Result<T, serde_wasm_bindgen::Error> {
    let value = js_sys::Reflect::get(page, &JsValue::from_str(name))?;
    serde_wasm_bindgen::from_value(value)
}

commands! {
    /// Put an empty formula on the shelf and open it.
    "new-formula" NewFormula {
        /// Whether its numbers will be grams of an old batch.
        basis: WrittenIn as "\"percent\" | \"grams\"",
    },
    /// Open a formula.
    "open-formula" OpenFormula {
        /// Which.
        formula: FormulaId as "string",
    },
    /// Put a copy of a formula on the shelf and open it.
    "duplicate-formula" DuplicateFormula {
        /// Which.
        formula: FormulaId as "string",
    },
    /// Give a formula another name.
    "rename-formula" RenameFormula {
        /// Which.
        formula: FormulaId as "string",
        /// Its name.
        name: String as "string",
    },
    /// Take a formula off the shelf.
    "delete-formula" DeleteFormula {
        /// Which.
        formula: FormulaId as "string",
    },
    /// Put the invented example back on the shelf.
    "restore-example" RestoreExample {},

    /// Look at the shelf, or away from it: it is worked out only while somebody looks.
    "look-at-shelf" LookAtShelf {
        /// Whether the page shows it.
        looking: bool as "boolean",
    },

    /// Look further along the shelf.
    "look-further" LookFurther {},

    /// Take back the last change.
    "undo" Undo {},
    /// Take back one change, if it is the last one.
    "undo-act" UndoAct {
        /// Its number.
        change: u32 as "number",
    },
    /// Make the change that was taken back.
    "redo" Redo {},

    /// Say how the product is used.
    "set-purpose" SetPurpose {
        /// How.
        purpose: Purpose as "\"leave-on\" | \"rinse-off\"",
    },
    /// Say which pH is aimed at or was measured.
    "set-target-ph" SetTargetPh {
        /// As typed; empty for none.
        text: String as "string",
    },
    /// Note something about the formula.
    "set-notes" SetNotes {
        /// The notes.
        text: String as "string",
    },
    /// Write the method.
    "set-steps" SetSteps {
        /// One step a line.
        text: String as "string",
    },
    /// Turn percent into grams of the batch, or grams into percent.
    "write-in" WriteIn {
        /// Which.
        basis: WrittenIn as "\"percent\" | \"grams\"",
    },
    /// Append a phase.
    "add-phase" AddPhase {
        /// What is done with it.
        kind: PhaseKind as "PhaseKind",
    },
    /// Give a phase another name.
    "rename-phase" RenamePhase {
        /// Which.
        phase: PhaseId as "number",
        /// Its name.
        name: String as "string",
    },
    /// Say what is done with a phase.
    "set-phase-kind" SetPhaseKind {
        /// Which.
        phase: PhaseId as "number",
        /// What.
        kind: PhaseKind as "PhaseKind",
    },
    /// Say to which temperature a phase is brought.
    "set-phase-temperature" SetPhaseTemperature {
        /// Which.
        phase: PhaseId as "number",
        /// As typed; empty for none.
        text: String as "string",
    },
    /// Move a phase.
    "move-phase" MovePhase {
        /// Which.
        phase: PhaseId as "number",
        /// Its new position.
        position: usize as "number",
    },
    /// Take a phase and its lines out.
    "remove-phase" RemovePhase {
        /// Which.
        phase: PhaseId as "number",
    },
    /// Append a line to a phase.
    "add-line" AddLine {
        /// To which.
        phase: PhaseId as "number",
        /// What is weighed.
        material: MaterialId as "string",
    },
    /// Say how much of a line's material goes in: a percent, grams in an old batch, or `q.s.`.
    "set-amount" SetAmount {
        /// Which line.
        line: LineId as "number",
        /// As typed.
        text: String as "string",
    },
    /// Make a line the q.s. line; the line that was it keeps its percent.
    "set-quantum-satis" SetQuantumSatis {
        /// Which line.
        line: LineId as "number",
    },
    /// Note something beside a line.
    "set-line-note" SetLineNote {
        /// Which line.
        line: LineId as "number",
        /// The note.
        text: String as "string",
    },
    /// Weigh another material in a line.
    "replace-material" ReplaceMaterial {
        /// Which line.
        line: LineId as "number",
        /// What is weighed instead.
        material: MaterialId as "string",
    },
    /// Move a line to a position in a phase.
    "move-line" MoveLine {
        /// Which line.
        line: LineId as "number",
        /// Into which phase.
        phase: PhaseId as "number",
        /// At which position.
        position: usize as "number",
    },
    /// Move a line one place up or down, across phases too.
    "step-line" StepLine {
        /// Which line.
        line: LineId as "number",
        /// Down rather than up.
        down: bool as "boolean",
    },
    /// Take a line out.
    "remove-line" RemoveLine {
        /// Which line.
        line: LineId as "number",
    },
    /// Apply a computed cure.
    "apply-cure" ApplyCure {
        /// Code of the problem, as a check that it still stands.
        code: String as "string",
        /// Position of the problem.
        problem: usize as "number",
        /// Position of the cure.
        cure: usize as "number",
    },

    /// Choose how the batch is asked for.
    "set-batch-way" SetBatchWay {
        /// Which way.
        way: BatchWay as "\"mass\" | \"containers\" | \"stock\"",
    },
    /// Ask for a batch by mass.
    "set-batch-mass" SetBatchMass {
        /// As typed.
        text: String as "string",
    },
    /// Say how many containers.
    "set-container-count" SetContainerCount {
        /// As typed.
        text: String as "string",
    },
    /// Say what a container holds.
    "set-container-volume" SetContainerVolume {
        /// As typed.
        text: String as "string",
    },
    /// Say how much of a container stays empty.
    "set-headspace" SetHeadspace {
        /// As typed.
        text: String as "string",
    },
    /// Say how much of the batch is lost.
    "set-loss" SetLoss {
        /// As typed.
        text: String as "string",
    },
    /// Give the measured density of the product.
    "set-density" SetDensity {
        /// As typed; empty to estimate it.
        text: String as "string",
    },
    /// Say how much of a material is left.
    "set-stock" SetStock {
        /// Which material.
        material: MaterialId as "string",
        /// As typed.
        text: String as "string",
    },
    /// Leave a material out of what is at hand.
    "remove-stock" RemoveStock {
        /// Which material.
        material: MaterialId as "string",
    },

    /// Change a setting of this device.
    "set-setting" SetSetting {
        /// Which.
        name: SettingName as "SettingName",
        /// As typed or chosen.
        text: String as "string",
    },

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
    /// Do something at the bench, or write into a journal.
    "act-on-batch" ActOnBatch {
        /// What.
        act: String as "BatchAct",
        /// On what: a batch, step, phase, line, field or entry.
        on: String as "string",
        /// As typed, a line for each field; empty for what was planned.
        text: String as "string",
    },
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

    /// Put the formula of a link on the shelf, with all it is made of, and open it.
    "keep-copy" KeepCopy {
        /// The link.
        link: String as "string",
    },

    /// Put the records of the backup that was read on this device.
    "restore-backup" RestoreBackup {
        /// What becomes of records that are here already and read differently.
        differing: String as "\"both\" | \"theirs\"",
    },
    /// Put an earlier version of a formula on the shelf as a copy and open it.
    "restore-version" RestoreVersion {
        /// Of which formula.
        formula: FormulaId as "string",
        /// Which version.
        version: String as "string",
    },

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

/// [`PhaseKind`] and [`Class`] as the page writes them.
#[wasm_bindgen(typescript_custom_section)]
const SHARED_NAMES: &str = r#"
export type BatchAct = "look" | "look-away" | "new" | "open" | "close" | "delete" | "lot" | "focus" | "start" | "first" | "empty-beaker" | "pour" | "leave-out" | "accept" | "rescale" | "take-from-rest" | "cold" | "hot" | "water" | "temperature" | "timer" | "stop" | "resume" | "temper" | "weigh-batch" | "ph" | "fill" | "say" | "done" | "finish" | "take-back" | "entry-new" | "entry" | "entry-photo" | "entry-remove";
export type ExtractKind = "glycerite" | "solution" | "alcohol";
export type ExtractOffer = "shelve" | "use" | "solve" | "adjust" | "evaporated" | "verify" | "blend";
export type PhaseKind = "heated-water" | "heated-oil" | "cool-down" | "room-temperature";
export type Layer = "water" | "humectants" | "thickeners" | "oils" | "solids" | "emulsifiers" | "surfactants" | "actives" | "preservatives" | "fragrance" | "minerals" | "helpers";
export type Class = "water" | "humectant" | "solvent" | "thickener" | "oil" | "butter" | "emollient" | "wax" | "fatty-alcohol" | "fatty-acid" | "emulsifier" | "surfactant" | "active" | "extract" | "protein" | "preservative" | "chelator" | "antioxidant" | "ph-adjuster" | "salt" | "essential-oil" | "fragrance" | "colourant" | "mineral" | "exfoliant" | "other";
"#;
