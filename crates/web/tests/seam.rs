//! The seam as a page meets it: in a browser, through the generated bindings.
#![cfg(target_arch = "wasm32")]

use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
fn the_version_is_that_of_the_workspace() {
    assert_eq!(stillroom_web::version(), env!("CARGO_PKG_VERSION"));
}
