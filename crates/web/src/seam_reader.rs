//! The smallest seam: one call, for pages that embed a formula.

use crate::view_shared::{ReadingOptions, ReadingView};
use tsify::{Ts, Tsify as _};
use wasm_bindgen::prelude::*;

/// Works out the formula of a link beside any session: for a page that embeds it. Nothing is kept.
///
/// # Errors
/// If `options` is not what its type says. A link that cannot be read is an error in the view.
#[wasm_bindgen(js_name = readShared)]
#[expect(clippy::needless_pass_by_value, reason = "what crosses the seam is handed over")]
pub fn read_shared(link: &str, options: Ts<ReadingOptions>) -> Result<Ts<ReadingView>, JsError> {
    Ok(crate::reading::read_shared(link, &options.to_rust()?).into_ts()?)
}
