//! What the page can ask of the open formula.

use crate::contract::commands::commands;
use stillroom_core::{LineId, MaterialId, PhaseId, PhaseKind, Purpose, WrittenIn};

commands! {
    /// What the page can ask of the open formula. Text fields carry what was typed, as it was typed.
    pub enum FormulaCommand;

    /// Say how the product is used.
    "set-purpose" SetPurpose {
        /// How.
        purpose: Purpose as "\"leave-on\" | \"rinse-off\"",
    },
    /// Say which pH is aimed at.
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
}
