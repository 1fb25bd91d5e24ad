//! Where records are kept, and what can go wrong there.

use litemap::LiteMap;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use stillroom_core::day::Day;
use stillroom_exchange::record;

/// Why a record was not kept or not found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StoreError {
    /// There is no room.
    Full,
    /// The browser allows no storage.
    Blocked,
}

/// A place that keeps texts by key.
pub trait Store {
    /// The text under a key.
    ///
    /// # Errors
    /// [`StoreError::Blocked`].
    fn get(&self, key: &str) -> Result<Option<String>, StoreError>;
    /// Keeps a text under a key, whole or not at all.
    ///
    /// # Errors
    /// [`StoreError::Full`], [`StoreError::Blocked`].
    fn set(&self, key: &str, text: &str) -> Result<(), StoreError>;
    /// Forgets a key.
    ///
    /// # Errors
    /// [`StoreError::Blocked`].
    fn remove(&self, key: &str) -> Result<(), StoreError>;
    /// Every key.
    ///
    /// # Errors
    /// [`StoreError::Blocked`].
    fn keys(&self) -> Result<Vec<String>, StoreError>;
}

/// A store in memory, for tests and for callers without a browser. Clones share what they keep, like two pages of one
/// browser.
#[derive(Debug, Clone, Default)]
pub struct MemoryStore {
    texts: Rc<RefCell<LiteMap<String, String>>>,
    /// What writing answers, if not success.
    failure: Rc<RefCell<Option<StoreError>>>,
}

impl MemoryStore {
    /// Makes writing fail, or succeed again.
    pub fn fail_with(&self, failure: Option<StoreError>) {
        *self.failure.borrow_mut() = failure;
    }

    fn check(&self) -> Result<(), StoreError> {
        self.failure.borrow().map_or(Ok(()), Err)
    }

    /// A full store can still be read and emptied.
    fn check_reading(&self) -> Result<(), StoreError> {
        self.check().or_else(|failure| if failure == StoreError::Full { Ok(()) } else { Err(failure) })
    }
}

impl Store for MemoryStore {
    fn get(&self, key: &str) -> Result<Option<String>, StoreError> {
        self.check_reading()?;
        Ok(self.texts.borrow().get(key).cloned())
    }

    fn set(&self, key: &str, text: &str) -> Result<(), StoreError> {
        self.check()?;
        self.texts.borrow_mut().insert(key.to_owned(), text.to_owned());
        Ok(())
    }

    fn remove(&self, key: &str) -> Result<(), StoreError> {
        self.check_reading()?;
        self.texts.borrow_mut().remove(key);
        Ok(())
    }

    fn keys(&self) -> Result<Vec<String>, StoreError> {
        self.check_reading()?;
        Ok(self.texts.borrow().keys().cloned().collect())
    }
}

/// A record as it was written, for a log that is on the disk sooner than the store.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Written {
    /// Key of the record.
    pub key: String,
    /// How often the record was written, with this; of one that is gone, how often before.
    pub revision: u64,
    /// Its text; nothing where it was removed.
    pub text: Option<String>,
}

/// A store that also hands out what is written to it. A browser puts its local storage on the disk seconds later, and a
/// process that is killed takes those seconds along; the page writes what it gets from here to where it stays at once.
#[derive(Debug)]
pub struct LoggedStore<S> {
    store: S,
    log: WriteLog,
    /// Records that earlier pages removed, and how often each had been written.
    gone: Vec<(String, u64)>,
}

/// What was written to a [`LoggedStore`] and not handed out yet. Clones share it.
#[derive(Debug, Clone, Default)]
pub struct WriteLog(Rc<RefCell<Vec<Written>>>);

impl WriteLog {
    /// Hands out what was written since the last time, in order.
    #[must_use]
    pub fn take(&self) -> Vec<Written> {
        self.0.take()
    }

    /// Whether there is something to hand out.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.borrow().is_empty()
    }

    fn add(&self, key: &str, revision: u64, text: Option<&str>) {
        self.0.borrow_mut().push(Written { key: key.to_owned(), revision, text: text.map(str::to_owned) });
    }
}

impl<S: Store> LoggedStore<S> {
    /// A store whose log goes on from what a log of earlier pages holds: what never reached the store is put there.
    pub fn new(store: S, earlier: &[Written]) -> Self {
        for Written { key, revision, text } in earlier {
            let stored = store.get(key).ok().flatten();
            // What cannot be read is no version of it.
            let known = stored.as_deref().and_then(|text| record::read_revision(text).ok());
            let _ = match text {
                Some(text) if known.is_none_or(|known| known < *revision) => store.set(key, text),
                None if known.is_some_and(|known| known <= *revision) => store.remove(key),
                _ => Ok(()),
            };
        }
        let gone = earlier.iter().filter(|written| written.text.is_none());
        let gone = gone.map(|written| (written.key.clone(), written.revision)).collect();
        Self { store, log: WriteLog::default(), gone }
    }

    /// What is written from now on.
    pub fn log(&self) -> WriteLog {
        self.log.clone()
    }

    /// Records that earlier pages removed, and how often each had been written: one that comes back goes on from there, or
    /// what the disk still has of it would be taken for newer.
    pub fn gone(&self) -> Vec<(String, u64)> {
        self.gone.clone()
    }
}

impl<S: Store> Store for LoggedStore<S> {
    fn get(&self, key: &str) -> Result<Option<String>, StoreError> {
        self.store.get(key)
    }

    fn set(&self, key: &str, text: &str) -> Result<(), StoreError> {
        self.store.set(key, text)?;
        // Of texts without a revision, such as the one that belongs together is written to first, nothing is logged.
        if let Ok(revision) = record::read_revision(text) {
            self.log.add(key, revision, Some(text));
        }
        Ok(())
    }

    fn remove(&self, key: &str) -> Result<(), StoreError> {
        let stored = self.store.get(key)?;
        self.store.remove(key)?;
        if let Some(revision) = stored.and_then(|text| record::read_revision(&text).ok()) {
            self.log.add(key, revision, None);
        }
        Ok(())
    }

    fn keys(&self) -> Result<Vec<String>, StoreError> {
        self.store.keys()
    }
}

/// What the session needs of its surroundings beside a store.
pub trait Surroundings {
    /// Milliseconds since 1970.
    fn now(&self) -> u64;
    /// Minutes that local time is ahead of universal time.
    fn minutes_ahead(&self) -> i64;
    /// The day it is here, as `2026-11-25`.
    fn today(&self) -> String;
    /// A number nobody else has drawn.
    fn random(&self) -> u64;
}

/// Surroundings for tests and for callers without a browser: a clock that goes on by itself, and dice that count. Clones
/// share both, like two pages of one browser.
#[derive(Debug, Clone)]
pub struct QuietRoom {
    time: Rc<Cell<u64>>,
    drawn: Rc<Cell<u64>>,
    step: u64,
    minutes_ahead: i64,
}

impl QuietRoom {
    /// A room at a moment, in milliseconds since 1970. Every look at the clock is so many milliseconds after the last.
    #[must_use]
    pub fn at(moment: u64, step: u64) -> Self {
        Self { time: Rc::new(Cell::new(moment)), drawn: Rc::default(), step, minutes_ahead: 0 }
    }

    /// The same room where local time is so many minutes ahead of universal time.
    #[must_use]
    pub fn ahead(self, minutes: i64) -> Self {
        Self { minutes_ahead: minutes, ..self }
    }

    /// Lets time pass.
    pub fn wait(&self, milliseconds: u64) {
        self.time.set(self.time.get() + milliseconds);
    }

    /// Sets the clock.
    pub fn set_clock(&self, moment: u64) {
        self.time.set(moment);
    }
}

impl Surroundings for QuietRoom {
    fn now(&self) -> u64 {
        self.wait(self.step);
        self.time.get()
    }

    fn minutes_ahead(&self) -> i64 {
        self.minutes_ahead
    }

    fn today(&self) -> String {
        Day::from_moment(self.time.get(), self.minutes_ahead).map_or_else(String::new, |day| day.to_string())
    }

    fn random(&self) -> u64 {
        self.drawn.set(self.drawn.get() + 1);
        // As large as what a browser draws, and another number each time.
        (self.drawn.get() + 7).wrapping_mul(0x9e37_79b9_7f4a_7c15)
    }
}
