//! Where records are kept, and what can go wrong there.

use litemap::LiteMap;
use std::cell::RefCell;
use std::rc::Rc;

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
