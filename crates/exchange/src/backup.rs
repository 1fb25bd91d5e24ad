//! A backup: one JSON file with every record of a device, each as it is kept there.
//!
//! ```json
//! {"format":"stillroom-backup","version":1,"made_at":1764000000000,"records":{"stillroom.formula.…":{…},…}}
//! ```
//! The names of the records are the keys they are kept under; `schema/backup-1.json` says what each holds. With photos it
//! lies in a zip beside them: [`crate::archive`].

use crate::json::Writer;
use crate::record::LONGEST_RECORD;
use serde::Deserialize;
use serde::de::IgnoredAny;

/// What a backup says it is.
pub const FORMAT: &str = "stillroom-backup";
/// Version written today.
pub const VERSION: u32 = 1;
/// Largest file read, in bytes. A browser keeps about 10 MB of records.
pub const LARGEST_BACKUP: usize = 40_000_000;
/// Most records read.
pub const MOST_RECORDS: usize = 20_000;
/// Largest photo taken in or out, in bytes. One that is kept has some 100 kB.
pub const LARGEST_PHOTO: u64 = 8_000_000;
/// Most photos read.
pub const MOST_PHOTOS: usize = 20_000;
/// Longest key of a record, in bytes.
pub const LONGEST_KEY: usize = 200;

/// Why a file is no backup that can be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum BackupError {
    /// It is something else.
    #[error("no backup")]
    NotABackup,
    /// It is damaged.
    #[error("line {line}, column {column}")]
    Damaged {
        /// Line at which reading stopped, from 1.
        line: usize,
        /// Column at which reading stopped, from 1.
        column: usize,
    },
    /// It is a zip that is damaged.
    #[error("damaged zip")]
    ZipDamaged,
    /// A later version of Stillroom wrote it.
    #[error("version {version} is newer than {VERSION}")]
    Newer {
        /// Its version.
        version: u32,
    },
    /// It holds more than a backup may.
    #[error("too large")]
    TooLarge,
}

impl BackupError {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NotABackup => "backup.not-one",
            Self::Damaged { .. } => "backup.damaged",
            Self::ZipDamaged => "backup.zip-damaged",
            Self::Newer { .. } => "backup.newer",
            Self::TooLarge => "backup.too-large",
        }
    }
}

/// A backup that was read.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Backup {
    /// When it was made, in milliseconds since 1970.
    pub made_at: u64,
    /// Each record as text, with the key it was kept under.
    pub records: Vec<(String, String)>,
}

/// Where the description of what is written lies, below the address of a built site.
const SCHEMA: &str = "schema/backup-1.json";

/// Writes a backup. Every record must be JSON. Where a site wrote it, its address leads to the description of the file.
#[must_use]
pub fn write(backup: &Backup, site: Option<&str>) -> String {
    let mut writer = Writer::default();
    writer.object(|writer| {
        if let Some(site) = site {
            writer.field("$schema").text(&format!("{site}{SCHEMA}"));
        }
        writer.field("format").text(FORMAT);
        writer.field("version").whole(u64::from(VERSION));
        writer.field("made_at").whole(backup.made_at);
        writer.field("records").object(|writer| {
            for (key, record) in &backup.records {
                writer.field(key).written(record);
            }
        });
    });
    writer.finish()
}

/// Reads a backup. Records are checked to be JSON, and no further: each is read on its own, so that one that is damaged or
/// of a later version does not take the others along.
///
/// # Errors
/// `backup.not-one`, `backup.damaged`, `backup.newer`, `backup.too-large`.
pub fn read(bytes: &[u8]) -> Result<Backup, BackupError> {
    if bytes.len() > LARGEST_BACKUP {
        return Err(BackupError::TooLarge);
    }
    let text = std::str::from_utf8(bytes).map_err(|_| BackupError::NotABackup)?;
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    // The head first: a later version may hold what this one cannot read, and that is not damage.
    let head: Head = serde_json::from_str(text).map_err(|error| damage(&error))?;
    if head.format.as_deref() != Some(FORMAT) {
        return Err(BackupError::NotABackup);
    }
    let version = head.version.ok_or(BackupError::NotABackup)?;
    if version > VERSION {
        return Err(BackupError::Newer { version });
    }
    let records = spans(text).ok_or(BackupError::NotABackup)?;
    if records.len() > MOST_RECORDS {
        return Err(BackupError::TooLarge);
    }
    let records = records.into_iter().filter(|(key, text)| key.len() <= LONGEST_KEY && text.len() <= LONGEST_RECORD);
    let records = records.map(|(key, text)| (key, text.to_owned())).collect();
    Ok(Backup { made_at: head.made_at.unwrap_or(0), records })
}

/// Each record as it stands in the file, with its key. `None` where there is no object of records. The file is sound JSON.
fn spans(text: &str) -> Option<Vec<(String, &str)>> {
    let mut file = Span(text);
    let mut found = None;
    file.fields(|key, value| {
        if key == "records" {
            let mut records = Vec::new();
            let whole = Span(value).fields(|key, record| {
                // One more than there may be is enough to refuse them all.
                if records.len() <= MOST_RECORDS {
                    records.push((key, record));
                }
            });
            found = whole.map(|()| records);
        }
    })?;
    found
}

/// What of a JSON text is still to be read.
struct Span<'a>(&'a str);

impl<'a> Span<'a> {
    fn sign(&mut self, sign: char) -> Option<()> {
        self.0 = self.0.trim_start().strip_prefix(sign)?;
        Some(())
    }

    /// The next value, whatever it is. Nested values are passed over without going down into them.
    fn value(&mut self) -> Option<&'a str> {
        let rest = self.0.trim_start();
        let mut values = serde_json::Deserializer::from_str(rest).into_iter::<IgnoredAny>();
        values.next()?.ok()?;
        let (value, rest) = rest.split_at_checked(values.byte_offset())?;
        self.0 = rest;
        Some(value)
    }

    /// Hands out every field of the object that comes next.
    fn fields(&mut self, mut each: impl FnMut(String, &'a str)) -> Option<()> {
        self.sign('{')?;
        if self.sign('}').is_some() {
            return Some(());
        }
        loop {
            let key = serde_json::from_str(self.value()?).ok()?;
            self.sign(':')?;
            each(key, self.value()?);
            if self.sign(',').is_none() {
                return self.sign('}');
            }
        }
    }
}

fn damage(error: &serde_json::Error) -> BackupError {
    if error.is_data() {
        return BackupError::NotABackup;
    }
    BackupError::Damaged { line: error.line(), column: error.column() }
}

#[derive(Deserialize)]
struct Head {
    format: Option<String>,
    version: Option<u32>,
    made_at: Option<u64>,
    #[serde(rename = "records")]
    _records: Option<IgnoredAny>,
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn backup() -> Backup {
        let formula = include_str!("../golden/formula-1.json").trim_end();
        let extract = include_str!("../golden/extract-1.json").trim_end();
        let records = vec![
            ("stillroom.formula.000000000000feed".to_owned(), formula.to_owned()),
            ("stillroom.extract.000000000cc00e71".to_owned(), extract.to_owned()),
        ];
        Backup { made_at: 1_764_000_000_000, records }
    }

    #[test]
    fn a_backup_reads_back_as_it_was_written() {
        assert_eq!(read(write(&backup(), None).as_bytes()), Ok(backup()));
        let empty = Backup::default();
        assert_eq!(read(write(&empty, None).as_bytes()), Ok(empty));
    }

    #[test]
    fn a_backup_names_its_description_and_reads_back_all_the_same() {
        let written = write(&backup(), Some("https://maker.example/bench/"));
        assert!(written.starts_with(r#"{"$schema":"https://maker.example/bench/schema/backup-1.json","format":"#));
        assert_eq!(
            SCHEMA,
            format!("schema/backup-{VERSION}.json"),
            "the description is of the version that is written"
        );
        assert_eq!(read(written.as_bytes()), Ok(backup()));
    }

    #[test]
    fn what_is_no_backup_is_told_from_a_damaged_one() {
        let code = |text: &str| read(text.as_bytes()).unwrap_err().code();
        assert_eq!(code("{}"), "backup.not-one");
        assert_eq!(code("[1,2]"), "backup.not-one");
        assert_eq!(code("\"words\""), "backup.not-one");
        assert_eq!(read(&[0xff, 0xd8, 0xff]).unwrap_err().code(), "backup.not-one");
        let whole = write(&backup(), None);
        assert_eq!(code(&whole[..whole.len() - 5]), "backup.damaged");
        assert_eq!(code(""), "backup.damaged");
        assert_eq!(code(r#"{"format":"stillroom-backup","version":1,"records":7}"#), "backup.not-one");
    }

    /// A record nested without end is passed over by the backup and refused when it is read itself.
    #[test]
    fn deep_nesting_breaks_nothing() {
        let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
        let text = write(&Backup { made_at: 0, records: vec![("k".to_owned(), deep.clone())] }, None);
        let read_back = read(text.as_bytes()).unwrap();
        assert_eq!(read_back.records, [("k".to_owned(), deep.clone())]);
        let error = crate::record::read::<crate::record::FormulaRecord>(&deep).unwrap_err();
        assert_eq!(error.code(), "record.damaged");
        assert!(read(deep.as_bytes()).is_err() && read("[".repeat(100_000).as_bytes()).is_err());
    }

    #[test]
    fn a_backup_of_a_later_version_is_named() {
        let later = r#"{"format":"stillroom-backup","version":7,"records":["in another form"]}"#;
        assert_eq!(read(later.as_bytes()), Err(BackupError::Newer { version: 7 }));
    }

    #[test]
    fn huge_counts_and_keys_are_refused() {
        let many: Vec<String> = (0..=MOST_RECORDS).map(|at| format!("\"k{at}\":0")).collect();
        let text = format!("{{\"format\":\"stillroom-backup\",\"version\":1,\"records\":{{{}}}}}", many.join(","));
        assert_eq!(read(text.as_bytes()), Err(BackupError::TooLarge));
        assert_eq!(read(&vec![b' '; LARGEST_BACKUP + 1]), Err(BackupError::TooLarge));
        let long = Backup { made_at: 0, records: vec![("k".repeat(LONGEST_KEY + 1), "0".to_owned())] };
        assert_eq!(read(write(&long, None).as_bytes()), Ok(Backup::default()), "no record of ours has such a key");
    }

    proptest! {
        #[test]
        fn whatever_a_file_holds_is_read_or_refused(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
            let _ = read(&bytes);
        }
    }
}
