//! What the page can ask for.

use crate::settings::SettingName;
use serde::{Deserialize, Serialize};
use stillroom_core::scaling::BatchWay;
use stillroom_core::{Class, FormulaId, LineId, MaterialId, PhaseId, PhaseKind, Purpose, WrittenIn};
use tsify::Tsify;

/// One act of the maker. Text fields carry what was typed, as it was typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, Tsify)]
#[serde(tag = "do", rename_all = "kebab-case", rename_all_fields = "camelCase")]
pub enum Command {
    /// Put an empty formula on the shelf and open it.
    NewFormula {
        /// Whether its numbers will be grams of an old batch.
        #[tsify(type = "\"percent\" | \"grams\"")]
        written_in: WrittenIn,
    },
    /// Open a formula.
    OpenFormula {
        /// Which.
        #[tsify(type = "string")]
        formula: FormulaId,
    },
    /// Put a copy of a formula on the shelf and open it.
    DuplicateFormula {
        /// Which.
        #[tsify(type = "string")]
        formula: FormulaId,
    },
    /// Give a formula another name.
    RenameFormula {
        /// Which.
        #[tsify(type = "string")]
        formula: FormulaId,
        /// Its name.
        name: String,
    },
    /// Take a formula off the shelf.
    DeleteFormula {
        /// Which.
        #[tsify(type = "string")]
        formula: FormulaId,
    },
    /// Put the invented example back on the shelf.
    RestoreExample,

    /// Look at the shelf, or away from it: it is worked out only while somebody looks.
    LookAtShelf {
        /// Whether the page shows it.
        looking: bool,
    },

    /// Take back the last change.
    Undo,
    /// Make the change that was taken back.
    Redo,

    /// Say how the product is used.
    SetPurpose {
        /// How.
        #[tsify(type = "\"leave-on\" | \"rinse-off\"")]
        purpose: Purpose,
    },
    /// Say which pH is aimed at or was measured.
    SetTargetPh {
        /// As typed; empty for none.
        text: String,
    },
    /// Note something about the formula.
    SetNotes {
        /// The notes.
        text: String,
    },
    /// Write the method.
    SetSteps {
        /// One step a line.
        text: String,
    },
    /// Turn percent into grams of the batch, or grams into percent.
    WriteIn {
        /// Which.
        #[tsify(type = "\"percent\" | \"grams\"")]
        written_in: WrittenIn,
    },
    /// Append a phase.
    AddPhase {
        /// What is done with it.
        #[tsify(type = "PhaseKind")]
        phase_kind: PhaseKind,
    },
    /// Give a phase another name.
    RenamePhase {
        /// Which.
        #[tsify(type = "number")]
        phase: PhaseId,
        /// Its name.
        name: String,
    },
    /// Say what is done with a phase.
    SetPhaseKind {
        /// Which.
        #[tsify(type = "number")]
        phase: PhaseId,
        /// What.
        #[tsify(type = "PhaseKind")]
        phase_kind: PhaseKind,
    },
    /// Say to which temperature a phase is brought.
    SetPhaseTemperature {
        /// Which.
        #[tsify(type = "number")]
        phase: PhaseId,
        /// As typed; empty for none.
        text: String,
    },
    /// Move a phase.
    MovePhase {
        /// Which.
        #[tsify(type = "number")]
        phase: PhaseId,
        /// Its new position.
        position: usize,
    },
    /// Take a phase and its lines out.
    RemovePhase {
        /// Which.
        #[tsify(type = "number")]
        phase: PhaseId,
    },
    /// Append a line to a phase.
    AddLine {
        /// To which.
        #[tsify(type = "number")]
        phase: PhaseId,
        /// What is weighed.
        #[tsify(type = "string")]
        material: MaterialId,
    },
    /// Say how much of a line's material goes in: a percent, grams in an old batch, or `q.s.`.
    SetAmount {
        /// Which line.
        #[tsify(type = "number")]
        line: LineId,
        /// As typed.
        text: String,
    },
    /// Make a line the q.s. line; the line that was it keeps its percent.
    SetQuantumSatis {
        /// Which line.
        #[tsify(type = "number")]
        line: LineId,
    },
    /// Note something beside a line.
    SetLineNote {
        /// Which line.
        #[tsify(type = "number")]
        line: LineId,
        /// The note.
        text: String,
    },
    /// Weigh another material in a line.
    ReplaceMaterial {
        /// Which line.
        #[tsify(type = "number")]
        line: LineId,
        /// What is weighed instead.
        #[tsify(type = "string")]
        material: MaterialId,
    },
    /// Move a line to a position in a phase.
    MoveLine {
        /// Which line.
        #[tsify(type = "number")]
        line: LineId,
        /// Into which phase.
        #[tsify(type = "number")]
        phase: PhaseId,
        /// At which position.
        position: usize,
    },
    /// Move a line one place up or down, across phases too.
    StepLine {
        /// Which line.
        #[tsify(type = "number")]
        line: LineId,
        /// Down rather than up.
        down: bool,
    },
    /// Take a line out.
    RemoveLine {
        /// Which line.
        #[tsify(type = "number")]
        line: LineId,
    },
    /// Apply a computed cure.
    ApplyCure {
        /// Code of the problem, as a check that it still stands.
        code: String,
        /// Position of the problem.
        problem: usize,
        /// Position of the cure.
        cure: usize,
    },

    /// Choose how the batch is asked for.
    SetBatchWay {
        /// Which way.
        #[tsify(type = "\"mass\" | \"containers\" | \"stock\"")]
        way: BatchWay,
    },
    /// Ask for a batch by mass.
    SetBatchMass {
        /// As typed.
        text: String,
    },
    /// Say how many containers.
    SetContainerCount {
        /// As typed.
        text: String,
    },
    /// Say what a container holds.
    SetContainerVolume {
        /// As typed.
        text: String,
    },
    /// Say how much of a container stays empty.
    SetHeadspace {
        /// As typed.
        text: String,
    },
    /// Say how much of the batch is lost.
    SetLoss {
        /// As typed.
        text: String,
    },
    /// Give the measured density of the product.
    SetDensity {
        /// As typed; empty to estimate it.
        text: String,
    },
    /// Say how much of a material is left.
    SetStock {
        /// Which material.
        #[tsify(type = "string")]
        material: MaterialId,
        /// As typed.
        text: String,
    },
    /// Leave a material out of what is at hand.
    RemoveStock {
        /// Which material.
        #[tsify(type = "string")]
        material: MaterialId,
    },

    /// Change a setting of this device.
    SetSetting {
        /// Which.
        name: SettingName,
        /// As typed or chosen.
        text: String,
    },

    /// Describe a material of one's own and open it.
    NewMaterial {
        /// Whether it is made of others.
        composite: bool,
        /// Its name.
        name: String,
    },
    /// Describe an own material from a catalogue composite, to change it.
    CopyMaterial {
        /// Which.
        #[tsify(type = "string")]
        material: MaterialId,
    },
    /// Open a material's card.
    OpenMaterial {
        /// Which.
        #[tsify(type = "string")]
        material: MaterialId,
    },
    /// Close the card.
    CloseMaterial,
    /// Change a text of the open material.
    SetMaterialText {
        /// Which text.
        field: MaterialField,
        /// As typed.
        text: String,
    },
    /// Say what the open material is.
    SetMaterialClass {
        /// What.
        #[tsify(type = "Class")]
        class: Class,
    },
    /// Say which phase the open material usually goes into.
    SetMaterialPhase {
        /// Which.
        #[tsify(type = "PhaseKind")]
        phase_kind: PhaseKind,
    },
    /// Put a part into the open composite.
    AddPart {
        /// Which material.
        #[tsify(type = "string")]
        material: MaterialId,
    },
    /// Say how much of a part goes in.
    SetPartAmount {
        /// Position of the part.
        part: usize,
        /// As typed.
        text: String,
    },
    /// Take a part out of the open composite.
    RemovePart {
        /// Position of the part.
        part: usize,
    },
    /// Delete the open material.
    DeleteMaterial {
        /// Which.
        #[tsify(type = "string")]
        material: MaterialId,
    },

    /// Another page of this browser changed a record.
    ChangedElsewhere {
        /// Key of the record.
        key: String,
    },
    /// Of two versions of the same record, take the one written elsewhere.
    TakeTheirs {
        /// Key of the record.
        key: String,
    },
    /// Of two versions of the same record, keep both: this one becomes a copy.
    KeepBoth {
        /// Key of the record.
        key: String,
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

/// [`PhaseKind`] and [`Class`] as the page writes them.
#[wasm_bindgen::prelude::wasm_bindgen(typescript_custom_section)]
const SHARED_NAMES: &str = r#"
export type PhaseKind = "heated-water" | "heated-oil" | "cool-down" | "room-temperature";
export type Layer = "water" | "humectants" | "thickeners" | "oils" | "solids" | "emulsifiers" | "surfactants" | "actives" | "preservatives" | "fragrance" | "minerals" | "helpers";
export type Class = "water" | "humectant" | "solvent" | "thickener" | "oil" | "butter" | "emollient" | "wax" | "fatty-alcohol" | "fatty-acid" | "emulsifier" | "surfactant" | "active" | "extract" | "protein" | "preservative" | "chelator" | "antioxidant" | "ph-adjuster" | "salt" | "essential-oil" | "fragrance" | "colourant" | "mineral" | "exfoliant" | "other";
"#;
