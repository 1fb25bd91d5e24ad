//! A record as the browser's storage hands it out.
#![no_main]

use libfuzzer_sys::fuzz_target;
use stillroom_exchange::extract::ExtractRecord;
use stillroom_exchange::holding::HoldingRecord;
use stillroom_exchange::record::{self, FormulaRecord, Kept, MaterialRecord};
use stillroom_fuzz as _;
use stillroom_web::seam::evaluate::{EvaluationOptions, evaluate_record};

fuzz_target!(|input: &[u8]| {
    let Some((&form, rest)) = input.split_first() else { return };
    let text = String::from_utf8_lossy(rest);
    let _ = record::read_revision(&text);
    match form % 5 {
        0 => go_round::<FormulaRecord>(&text),
        1 => go_round::<MaterialRecord>(&text),
        2 => go_round::<HoldingRecord>(&text),
        3 => go_round::<ExtractRecord>(&text),
        _ => {
            let _ = evaluate_record(&text, &[], &EvaluationOptions::default());
        }
    }
});

fn go_round<T: Kept + PartialEq + core::fmt::Debug>(text: &str) {
    let Ok(record) = record::read::<T>(text) else { return };
    // Writing may need an escape where reading took the character itself: a record at the limit may outgrow it.
    let written = record::write(&record);
    if written.len() <= record::LONGEST_RECORD {
        assert_eq!(record::read::<T>(&written).as_ref(), Ok(&record));
    }
}
