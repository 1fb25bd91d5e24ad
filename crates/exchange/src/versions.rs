//! Earlier versions of a formula, as they are kept on a device.

use crate::json::{Damage, Value, Writer};
use crate::record::{FormulaRecord, Kept};

/// Most versions kept of one formula.
pub const MOST_VERSIONS: usize = 20;
/// Most that the versions of one formula take, in bytes: twenty of a usual formula, fewer of a very long one.
pub const MOST_BYTES: usize = 120_000;

/// Earlier versions of one formula, oldest first.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct VersionsRecord {
    /// Counts the times it was written.
    pub revision: u64,
    /// The versions.
    pub versions: Vec<FormulaRecord>,
}

impl VersionsRecord {
    /// Puts a version behind the others, and drops the oldest where they become too many or too long.
    pub fn add(&mut self, version: FormulaRecord) {
        self.versions.push(version);
        while self.versions.len() > MOST_VERSIONS || (self.versions.len() > 1 && self.length() > MOST_BYTES) {
            self.versions.remove(0);
        }
    }

    fn length(&self) -> usize {
        crate::record::write(self).len()
    }
}

impl Kept for VersionsRecord {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        let versions = value.need("versions")?.list()?.map(|version| FormulaRecord::read(&version));
        Ok(Self { revision: value.need("revision")?.whole()?, versions: versions.collect::<Result<_, _>>()? })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("revision").whole(self.revision);
        writer.field("versions").list(&self.versions, |writer, version| writer.object(|writer| version.write(writer)));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{read, write};
    use stillroom_core::{Formula, FormulaId};

    fn version(at: u64, notes: &str) -> FormulaRecord {
        let formula = Formula { notes: notes.to_owned(), ..Formula::with_name("Gel") };
        FormulaRecord { id: FormulaId(7), revision: at, changed_at: at, formula }
    }

    #[test]
    fn the_first_schema_is_read_for_ever() {
        let record: VersionsRecord = read(include_str!("../golden/versions-1.json")).unwrap();
        assert_eq!(record.versions.len(), 2);
        assert_eq!(record.versions[1].formula.name, "Gel");
        assert_eq!(read(&write(&record)), Ok(record));
    }

    #[test]
    fn the_oldest_give_way() {
        let mut record = VersionsRecord::default();
        for at in 0..50 {
            record.add(version(at, ""));
        }
        assert_eq!(record.versions.len(), MOST_VERSIONS);
        assert_eq!(record.versions.last().map(|last| last.changed_at), Some(49));
        let long = "x".repeat(MOST_BYTES / 3);
        for at in 50..60 {
            record.add(version(at, &long));
        }
        assert!(record.versions.len() < 4 && write(&record).len() <= MOST_BYTES);
        record.add(version(60, &"x".repeat(2 * MOST_BYTES)));
        assert_eq!(record.versions.len(), 1, "the last version is kept however long it is");
    }
}
