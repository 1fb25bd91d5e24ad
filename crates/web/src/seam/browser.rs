//! The browser: its storage, its clock and its dice. The only module beside the seam that knows of it.

use crate::session::keeping::{Store, StoreError, Surroundings};
use js_sys::Uint8Array;
use js_sys::{Date, Math};
use std::io::{self, Read, Seek, SeekFrom};
use web_sys::Storage;

/// Local storage of this page.
#[derive(Debug, Clone)]
pub struct LocalStorage {
    /// Absent where the browser allows none, or where there is no browser.
    storage: Option<Storage>,
}

impl LocalStorage {
    /// Asks the browser for it. A browser that refuses is no error here: every later call answers `Blocked`.
    #[must_use]
    pub fn open() -> Self {
        let storage = web_sys::window().and_then(|window| window.local_storage().ok().flatten());
        Self { storage }
    }

    fn storage(&self) -> Result<&Storage, StoreError> {
        self.storage.as_ref().ok_or(StoreError::Blocked)
    }
}

impl Store for LocalStorage {
    fn get(&self, key: &str) -> Result<Option<String>, StoreError> {
        self.storage()?.get_item(key).map_err(|_| StoreError::Blocked)
    }

    fn set(&self, key: &str, text: &str) -> Result<(), StoreError> {
        let storage = self.storage()?;
        // A store that answers reading but refuses writing is full: browsers name no other reason.
        storage.set_item(key, text).map_err(|_| match storage.length() {
            Ok(_) => StoreError::Full,
            Err(_) => StoreError::Blocked,
        })
    }

    fn remove(&self, key: &str) -> Result<(), StoreError> {
        self.storage()?.remove_item(key).map_err(|_| StoreError::Blocked)
    }

    fn keys(&self) -> Result<Vec<String>, StoreError> {
        let storage = self.storage()?;
        let length = storage.length().map_err(|_| StoreError::Blocked)?;
        let mut keys = Vec::new();
        for at in 0..length {
            keys.extend(storage.key(at).map_err(|_| StoreError::Blocked)?);
        }
        Ok(keys)
    }
}

/// Clock and dice of the browser.
#[derive(Debug, Clone, Copy, Default)]
pub struct BrowserSurroundings;

impl Surroundings for BrowserSurroundings {
    fn now(&self) -> u64 {
        // Milliseconds since 1970 are a whole number far below 2⁵³.
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number above zero")]
        let now = Date::now() as u64;
        now
    }

    fn minutes_ahead(&self) -> i64 {
        #[expect(clippy::cast_possible_truncation, reason = "whole minutes within a day")]
        let behind = Date::new_0().get_timezone_offset() as i64;
        -behind
    }

    fn today(&self) -> String {
        let now = Date::new_0();
        format!("{:04}-{:02}-{:02}", now.get_full_year(), now.get_month() + 1, now.get_date())
    }

    fn random(&self) -> u64 {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "32 bits at a time")]
        let half = || (Math::random() * 4_294_967_296.0) as u64;
        half() << 32 | half()
    }
}

/// A file that the page holds, read where it lies: a large one is not copied as a whole.
#[derive(Debug)]
pub struct PageFile {
    bytes: Uint8Array,
    at: u64,
}

impl PageFile {
    /// Reads from the beginning.
    #[must_use]
    pub const fn new(bytes: Uint8Array) -> Self {
        Self { bytes, at: 0 }
    }
}

impl Read for PageFile {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let length = self.bytes.length();
        let from = u32::try_from(self.at).unwrap_or(length).min(length);
        let count = u32::try_from(into.len()).unwrap_or(u32::MAX).min(length - from);
        let Some(into) = into.get_mut(..count as usize) else { return Ok(0) };
        self.bytes.subarray(from, from + count).copy_to(into);
        self.at += u64::from(count);
        Ok(into.len())
    }
}

impl Seek for PageFile {
    fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
        let to = match to {
            SeekFrom::Start(at) => Some(at),
            SeekFrom::End(by) => u64::from(self.bytes.length()).checked_add_signed(by),
            SeekFrom::Current(by) => self.at.checked_add_signed(by),
        };
        self.at = to.ok_or_else(|| io::Error::from(io::ErrorKind::InvalidInput))?;
        Ok(self.at)
    }
}

/// The plural category of a count, by the browser's own rules for the language of the page.
#[must_use]
pub fn plural_category(count: usize) -> &'static str {
    const CATEGORIES: [&str; 5] = ["one", "many", "few", "two", "zero"];
    let locales = js_sys::Array::of1(&wasm_bindgen::JsValue::from_str(crate::messages::language().tag()));
    // Counts are of things a person has: they fit a double.
    #[expect(clippy::cast_precision_loss, reason = "far below 2⁵³")]
    let category = js_sys::Intl::PluralRules::new(&locales, &js_sys::Object::new()).select(count as f64);
    CATEGORIES.into_iter().find(|known| category == *known).unwrap_or("other")
}
