//! A table of materials or prices as a spreadsheet writes it, and a recipe in a file.
#![no_main]

use libfuzzer_sys::fuzz_target;
use stillroom_core::number::DecimalMark;
use stillroom_exchange::recipe::file::text_of;
use stillroom_exchange::{prices, recipe, table};
use stillroom_fuzz as _;

fuzz_target!(|input: &[u8]| {
    let Some((&form, rest)) = input.split_first() else { return };
    let mark = if form % 2 == 0 { DecimalMark::Point } else { DecimalMark::Comma };
    let _ = table::read_materials(rest, mark);
    let _ = prices::read_prices(rest, mark);
    if let Ok(file) = text_of(rest) {
        let _ = recipe::read(&file.text, mark);
    }
});
