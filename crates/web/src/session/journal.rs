//! Writing several records so that a crash at any moment leaves all of them old or all of them new.
//!
//! A browser's storage writes one text whole or not at all. What belongs together is therefore first written as one text,
//! the journal, then record by record; the journal goes last. A page that opens and finds one finishes it.
//!
//! Each record also carries a check sum, so that a text the browser damaged is told from one that is only old.

use crate::session::keeping::{Store, StoreError};
use stillroom_exchange::json::Damage;
use stillroom_exchange::record::{self, RecordError};

/// Key of the journal.
const JOURNAL_KEY: &str = "stillroom.journal";
/// What stands before the check sum of a record, as its last field.
const CHECK: &str = ",\"check\":\"";
/// Digits of a check sum.
const CHECK_DIGITS: usize = 8;

/// One record to be written: its key, the revision it has in the store, and its new text; without one it is removed.
pub(super) struct Entry {
    pub(super) key: String,
    pub(super) known: u64,
    pub(super) text: Option<String>,
}

/// Puts several records into the store. `Err` with those that are not there, in order, where writing failed half-way.
pub(super) fn write_all(store: &dyn Store, entries: Vec<Entry>) -> Result<(), (StoreError, Vec<Entry>)> {
    // One record needs no journal: its text is written whole or not at all.
    let journalled = entries.len() > 1 && {
        finish(store);
        // Without room for the journal, what can be kept singly is kept all the same.
        store.set(JOURNAL_KEY, &write_journal(&entries)).is_ok()
    };
    let mut entries = entries.into_iter();
    let mut failed = None;
    for entry in entries.by_ref() {
        if let Err(error) = write_one(store, &entry) {
            failed = Some((error, entry));
            break;
        }
    }
    if journalled {
        let _ = store.remove(JOURNAL_KEY);
    }
    match failed {
        None => Ok(()),
        Some((error, entry)) => Err((error, std::iter::once(entry).chain(entries).collect())),
    }
}

fn write_one(store: &dyn Store, entry: &Entry) -> Result<(), StoreError> {
    match &entry.text {
        Some(text) => store.set(&entry.key, text),
        None => store.remove(&entry.key),
    }
}

/// Finishes what a page that ended suddenly had begun to write.
pub(super) fn finish(store: &dyn Store) {
    let Ok(Some(journal)) = store.get(JOURNAL_KEY) else { return };
    for entry in read_journal(&journal).unwrap_or_default() {
        let revision = match store.get(&entry.key) {
            Ok(None) => Some(0),
            Ok(Some(text)) => record::read_revision(&text).ok(),
            Err(_) => return,
        };
        // Another revision: it was written already, or somebody has changed it since.
        if revision == Some(entry.known) && write_one(store, &entry).is_err() {
            return;
        }
    }
    let _ = store.remove(JOURNAL_KEY);
}

/// A journal: its sum, then key, known revision and text of each record, a line each. Records hold no line break.
fn write_journal(entries: &[Entry]) -> String {
    let mut lines = String::new();
    for Entry { key, known, text } in entries {
        for part in [key, &known.to_string(), text.as_deref().unwrap_or_default()] {
            lines.push_str(part);
            lines.push('\n');
        }
    }
    format!("{:08x}\n{lines}", sum_of(&lines))
}

/// Reads a journal that is whole; one that is not was never begun.
fn read_journal(text: &str) -> Option<Vec<Entry>> {
    let (sum, lines) = text.split_once('\n')?;
    if sum != format!("{:08x}", sum_of(lines)) {
        return None;
    }
    let mut lines = lines.lines();
    let mut entries = Vec::new();
    while let Some(key) = lines.next() {
        let known = lines.next()?.parse().ok()?;
        let text = Some(lines.next()?.to_owned()).filter(|text| !text.is_empty());
        entries.push(Entry { key: key.to_owned(), known, text });
    }
    Some(entries)
}

/// A record with its check sum as the last field, which versions before this one pass over.
pub(super) fn with_check(record: String) -> String {
    match record.strip_suffix('}') {
        Some(head) => format!("{head}{CHECK}{:08x}\"}}", sum_of(head)),
        None => record,
    }
}

/// Whether a record is as it was written. One without a sum was written before there were any.
pub(super) fn check(text: &str) -> Result<(), RecordError> {
    let tail = CHECK.len() + CHECK_DIGITS + 2;
    let Some((head, tail)) = text.len().checked_sub(tail).and_then(|at| text.split_at_checked(at)) else {
        return Ok(());
    };
    let Some(sum) = tail.strip_prefix(CHECK).and_then(|tail| tail.strip_suffix("\"}")) else { return Ok(()) };
    if sum == format!("{:08x}", sum_of(head)) {
        Ok(())
    } else {
        Err(RecordError::Damaged { place: Damage::Field("check") })
    }
}

/// FNV-1a with 32 bits: every step can be undone, so that no change of one byte leaves the sum as it was.
/// *Source*: RFC 9923.
fn sum_of(text: &str) -> u32 {
    text.bytes().fold(0x811c_9dc5, |sum, byte| (sum ^ u32::from(byte)).wrapping_mul(0x0100_0193))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::session::keeping::MemoryStore;
    use std::cell::Cell;

    /// A page that is ended after so many writes: nothing it does after that reaches the store.
    struct Mortal {
        store: MemoryStore,
        writes_left: Cell<usize>,
    }

    impl Mortal {
        fn dies(&self) -> bool {
            let left = self.writes_left.get();
            self.writes_left.set(left.saturating_sub(1));
            left == 0
        }
    }

    impl Store for Mortal {
        fn get(&self, key: &str) -> Result<Option<String>, StoreError> {
            self.store.get(key)
        }
        fn set(&self, key: &str, text: &str) -> Result<(), StoreError> {
            if self.dies() { Ok(()) } else { self.store.set(key, text) }
        }
        fn remove(&self, key: &str) -> Result<(), StoreError> {
            if self.dies() { Ok(()) } else { self.store.remove(key) }
        }
        fn keys(&self) -> Result<Vec<String>, StoreError> {
            self.store.keys()
        }
    }

    fn record(revision: u64) -> String {
        with_check(format!("{{\"schema\":1,\"revision\":{revision}}}"))
    }

    fn entries() -> Vec<Entry> {
        let entry = |key: &str, known, text| Entry { key: key.to_owned(), known, text };
        vec![entry("a", 1, Some(record(2))), entry("b", 1, None), entry("c", 0, Some(record(1)))]
    }

    fn before() -> MemoryStore {
        let store = MemoryStore::default();
        for key in ["a", "b"] {
            store.set(key, &record(1)).unwrap();
        }
        store
    }

    fn texts(store: &MemoryStore) -> Vec<(String, Option<String>)> {
        store.keys().unwrap().into_iter().map(|key| (key.clone(), store.get(&key).unwrap())).collect()
    }

    #[test]
    fn a_crash_at_any_moment_leaves_all_old_or_all_new() {
        let (old, new) = (texts(&before()), {
            let store = before();
            assert!(write_all(&store, entries()).is_ok());
            texts(&store)
        });
        assert_ne!(old, new);
        let mut seen = Vec::new();
        for writes_left in 0..=5 {
            let store = before();
            let mortal = Mortal { store: store.clone(), writes_left: Cell::new(writes_left) };
            let _ = write_all(&mortal, entries());
            // The next page may die while it finishes, too, and the one after that finishes it.
            for again in 0..=3 {
                finish(&Mortal { store: store.clone(), writes_left: Cell::new(again) });
            }
            finish(&store);
            let now = texts(&store);
            assert!(now == old || now == new, "after {writes_left} writes: {now:?}");
            seen.push(now == new);
        }
        assert_eq!(seen, [false, true, true, true, true, true]);
    }

    #[test]
    fn what_changed_since_is_not_written_over() {
        let store = before();
        let mortal = Mortal { store: store.clone(), writes_left: Cell::new(1) };
        let _ = write_all(&mortal, entries());
        store.set("a", &record(7)).unwrap();
        finish(&store);
        assert_eq!(store.get("a").unwrap(), Some(record(7)));
        assert_eq!(store.get("b").unwrap(), None);
        assert_eq!(store.get("stillroom.journal").unwrap(), None);
    }

    #[test]
    fn a_damaged_journal_is_put_away_and_changes_nothing() {
        let store = before();
        store.set("stillroom.journal", &write_journal(&entries()).replace("\"revision\":2", "\"revision\":3")).unwrap();
        finish(&store);
        assert_eq!(texts(&store), texts(&before()));
    }

    #[test]
    fn no_changed_byte_of_a_record_goes_unnoticed() {
        let sound = record(41);
        assert_eq!(check(&sound), Ok(()));
        let head = sound.find(CHECK).unwrap();
        for at in 0..head {
            let mut bytes = sound.clone().into_bytes();
            bytes[at] ^= 1;
            let text = String::from_utf8(bytes).unwrap();
            assert_eq!(check(&text).unwrap_err().code(), "record.damaged", "{text}");
        }
        assert_eq!(check("{\"schema\":1}"), Ok(()), "what was written before there were sums");
        assert_eq!(check(""), Ok(()));
    }
}
