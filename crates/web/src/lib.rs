//! The session behind the page.
use wasm_bindgen::prelude::*;

/// The version of this build.
#[wasm_bindgen]
#[must_use]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}
