//! Where records are kept, and what can go wrong there.

use litemap::LiteMap;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use stillroom_core::day::Day;

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
