//! What the page shows of backups and earlier versions.

use serde::Serialize;
use tsify::Tsify;

/// A backup that was read and waits to be put on this device.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct BackupView {
    /// Why it cannot be read, in a sentence.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub error: Option<String>,
    /// Stable code of the error.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[tsify(type = "string")]
    pub code: Option<&'static str>,
    /// What it holds, in a sentence.
    pub summary: String,
    /// Its records.
    pub items: Vec<BackupItem>,
    /// How many photos it holds, in a sentence; empty if none.
    pub photos: String,
    /// Names of its photos that are not on this device.
    pub new_photos: Vec<String>,
}

/// Photos on this device that no batch has any more.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct StrayPhotos {
    /// How many there are, in a sentence; empty if none.
    pub text: String,
    /// Their names.
    pub names: Vec<String>,
}

/// One record of a backup.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct BackupItem {
    /// What it is.
    pub kind: String,
    /// What the maker calls it.
    pub name: String,
    /// How it stands to what is here.
    pub fate: Fate,
    /// Why it cannot be read, in a sentence; else empty.
    pub text: String,
}

/// How a record of a backup stands to what this device keeps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum Fate {
    /// It is not here yet.
    New,
    /// It is here, the very same.
    Same,
    /// Another one is here under its name.
    Differs,
    /// This version cannot read it; it is left out.
    Unreadable,
}

/// An earlier version of a formula.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct VersionView {
    /// Names it among the versions of its formula: when it was last changed.
    pub version: String,
    /// When, and what it was called, in a few words.
    pub text: String,
    /// Whether it is another formula on the shelf, to compare with.
    pub is_other: bool,
}
