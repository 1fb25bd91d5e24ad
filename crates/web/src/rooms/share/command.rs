//! What the page can ask of sharing and keeping.

use crate::contract::commands::commands;
use stillroom_core::FormulaId;

commands! {
    /// What the page can ask of sharing and keeping. Text fields carry what was typed, as it was typed.
    pub enum ShareCommand;

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
}
