//! What crosses the seam whatever the room: what became of a command, what is kept, what can be undone, and the shapes that
//! several rooms show.

pub(crate) mod commands;
pub(crate) mod shown;

use serde::Serialize;
use tsify::Tsify;

/// What became of a command.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct Answer {
    /// The field the command came from.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub field: Option<String>,
    /// Why its text was not understood; absent if it was. The last good value stays.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub error: Option<String>,
    /// Stable code of the error.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[tsify(type = "string")]
    pub code: Option<&'static str>,
    /// What the command made, for the page to go to: a formula, line, phase or material.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub made: Option<String>,
}

/// Something the maker should hear once.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct Notice {
    /// Stable code.
    #[tsify(type = "string")]
    pub code: &'static str,
    /// The sentence.
    pub text: String,
    /// The change that [`UndoAct`](crate::rooms::command::DeskCommand::UndoAct) takes back from here, while nothing was done since.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub undo: Option<u32>,
}

/// What is kept where.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct StatusView {
    /// How it stands.
    pub state: KeepState,
    /// In a sentence.
    pub text: String,
    /// Records that were changed elsewhere too.
    pub conflicts: Vec<ConflictView>,
    /// Records that could not be read, and why.
    pub unreadable: Vec<String>,
}

/// How keeping stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum KeepState {
    /// All is kept.
    Kept,
    /// Something is still to be kept.
    Keeping,
    /// The storage is full.
    Full,
    /// The browser allows no storage.
    Blocked,
    /// Another page changed the same record.
    Conflict,
}

/// One record changed in two places.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ConflictView {
    /// Key of the record.
    pub key: String,
    /// In a sentence.
    pub text: String,
}

/// What can be undone.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct HistoryView {
    /// Label of undo, if there is something to undo.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub undo: Option<String>,
    /// Number of the change that undo takes back.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub undoes: Option<u32>,
    /// Label of redo, if there is something to redo.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub redo: Option<String>,
}

/// One known value of a material.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ValueView {
    /// What it is.
    pub label: String,
    /// The value with its unit and conditions.
    pub value: String,
    /// Where it comes from.
    pub source: String,
    /// How sure: published, supplier-typical, memory.
    pub basis: String,
}
