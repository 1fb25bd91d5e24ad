//! Acts of a maker over several records: what is taken back is exactly what was done, whatever came before.
#![no_main]

#[path = "../../../crates/web/tests/hands/mod.rs"]
mod hands;
#[path = "../../../crates/web/tests/trial/mod.rs"]
mod trial;

use libfuzzer_sys::fuzz_target;
use stillroom_fuzz as _;

fuzz_target!(|input: &[u8]| {
    let _ = trial::run(input);
});
