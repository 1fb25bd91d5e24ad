//! Records as they are kept on a device: JSON with a schema version.
//!
//! A record of a newer schema is reported, never guessed at and never overwritten by what could not read it.

use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use stillroom_core::{Constituent, Formula, FormulaId, Material};

/// Schema version written today.
pub const SCHEMA: u32 = 1;

/// Longest record read, in bytes. A formula of a hundred lines with notes takes about 20 000.
pub const LONGEST_RECORD: usize = 1_000_000;

/// A formula on the shelf.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FormulaRecord {
    /// Names it on this device.
    pub id: FormulaId,
    /// Counts the times it was written, so that two open pages notice each other.
    pub revision: u64,
    /// When it was last changed, in milliseconds since 1970.
    pub changed_at: u64,
    /// The formula.
    pub formula: Formula,
}

/// A material the maker described.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct MaterialRecord {
    /// Counts the times it was written.
    pub revision: u64,
    /// When it was last changed, in milliseconds since 1970.
    pub changed_at: u64,
    /// The material.
    pub own: OwnMaterial,
}

/// A material of the maker's own, with the substance it is where the catalogue has none.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct OwnMaterial {
    /// The material.
    pub material: Material,
    /// The constituent of a simple material that the catalogue does not know.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub constituent: Option<Constituent>,
    /// What the maker notes about it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
}

/// Why a record cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum RecordError {
    /// It is longer than any record this version writes.
    #[error("a record of {length} bytes")]
    TooLong {
        /// Its length.
        length: usize,
    },
    /// It is no record, or a damaged one.
    #[error("damaged at line {line}, column {column}")]
    Damaged {
        /// Line at which reading stopped.
        line: usize,
        /// Column at which reading stopped.
        column: usize,
    },
    /// A later version of Stillroom wrote it.
    #[error("schema {schema} is newer than {SCHEMA}")]
    Newer {
        /// Its schema.
        schema: u32,
    },
}

impl RecordError {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::TooLong { .. } => "record.too-long",
            Self::Damaged { .. } => "record.damaged",
            Self::Newer { .. } => "record.newer",
        }
    }
}

#[derive(Serialize)]
struct Writing<'a, T> {
    schema: u32,
    #[serde(flatten)]
    body: &'a T,
}

#[derive(Deserialize)]
struct SchemaOnly {
    schema: u32,
}

/// Writes a record.
///
/// # Errors
/// Never for the records of this crate: they hold no map with keys that are not text. The error is passed on all the
/// same, since it is `serde_json`'s to say.
pub fn write<T: Serialize>(body: &T) -> Result<String, serde_json::Error> {
    serde_json::to_string(&Writing { schema: SCHEMA, body })
}

/// Reads a record.
///
/// # Errors
/// `record.too-long`, `record.damaged`, `record.newer`.
pub fn read<T: DeserializeOwned>(text: &str) -> Result<T, RecordError> {
    if text.len() > LONGEST_RECORD {
        return Err(RecordError::TooLong { length: text.len() });
    }
    let damaged = |error: serde_json::Error| RecordError::Damaged { line: error.line(), column: error.column() };
    // The schema first: a newer record may hold what this version cannot read, and that is not damage.
    let SchemaOnly { schema } = serde_json::from_str(text).map_err(damaged)?;
    if schema > SCHEMA {
        return Err(RecordError::Newer { schema });
    }
    serde_json::from_str(text).map_err(damaged)
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillroom_core::{Amount, MaterialId, PhaseKind};

    fn record() -> FormulaRecord {
        let mut formula = Formula::with_name("Gel \u{1f952} \"quoted\"");
        let phase = formula.add_phase("water", PhaseKind::HeatedWater, None);
        formula.add_line(phase, MaterialId::Catalogue(1), Amount::QuantumSatis);
        FormulaRecord { id: FormulaId(0xfeed), revision: 3, changed_at: 1_700_000_000_000, formula }
    }

    #[test]
    fn a_record_reads_back_as_it_was_written() {
        let text = write(&record()).unwrap();
        assert_eq!(read::<FormulaRecord>(&text), Ok(record()));
    }

    #[test]
    fn what_a_later_version_wrote_is_named_and_not_called_damaged() {
        let text = write(&record()).unwrap().replacen("\"schema\":1", "\"schema\":2", 1);
        assert_eq!(read::<FormulaRecord>(&text), Err(RecordError::Newer { schema: 2 }));
        let unreadable = r#"{"schema": 9, "formula": "in another form"}"#;
        assert_eq!(read::<FormulaRecord>(unreadable), Err(RecordError::Newer { schema: 9 }));
    }

    #[test]
    fn damage_is_reported_with_its_place() {
        for text in ["", "{", "[]", "null", "{\"schema\":1}", "{\"schema\":1,\"id\":\"zz\"}"] {
            let error = read::<FormulaRecord>(text).unwrap_err();
            assert_eq!(error.code(), "record.damaged", "{text}");
        }
        let long = " ".repeat(LONGEST_RECORD + 1);
        assert_eq!(read::<FormulaRecord>(&long).unwrap_err().code(), "record.too-long");
    }

    #[test]
    fn the_first_schema_is_read_for_ever() {
        let golden = include_str!("../golden/formula-1.json");
        let record: FormulaRecord = read(golden).unwrap();
        assert_eq!(record.formula.name, "Cucumber and oat gel cream");
        assert_eq!(record.formula.lines().count(), 2);
    }
}
