//! The seam as a page meets it: in a browser, through the generated bindings.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::unwrap_used, reason = "a test may fail by panicking; these are not marked so that clippy sees it")]

use js_sys::{Array, JSON, Reflect};
use stillroom_core::number::DecimalMark;
use stillroom_web::seam::{Reader, Stillroom, version};
use tsify::{Ts, Tsify};
use wasm_bindgen::JsValue;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

/// A session that keeps nothing behind the tests.
fn open() -> Stillroom {
    let reader = Reader { decimal_mark: DecimalMark::Comma, keep_nothing: true };
    Stillroom::open(reader.into_ts().unwrap()).unwrap()
}

/// A field of an object that crossed the seam.
fn field(object: &JsValue, name: &str) -> JsValue {
    Reflect::get(object, &name.into()).unwrap()
}

#[wasm_bindgen_test]
fn the_version_is_that_of_the_workspace() {
    assert_eq!(version(), env!("CARGO_PKG_VERSION"));
}

#[wasm_bindgen_test]
fn a_first_visit_finds_a_formula_on_the_shelf() {
    let everything = open().show_everything().unwrap();
    let shelf = field(&everything.js_value(), "shelf");
    let cards = Array::from(&field(&shelf, "cards"));
    assert!(cards.length() >= 1, "the shelf is empty: {:?}", JSON::stringify(&shelf));
}

#[wasm_bindgen_test]
fn what_is_no_command_is_refused_and_changes_nothing() {
    let mut session = open();
    let before = JSON::stringify(&session.show_everything().unwrap().js_value()).unwrap();
    for text in ["{\"do\":\"no such thing\"}", "{}", "[]", "null", "7"] {
        let command = Ts::new_unchecked(JSON::parse(text).unwrap());
        assert!(session.apply(command).is_err(), "{text} was taken for a command");
    }
    let after = JSON::stringify(&session.show_everything().unwrap().js_value()).unwrap();
    assert_eq!(String::from(before), String::from(after));
}
