//! A number as a person types it, with either decimal mark.
#![no_main]

use libfuzzer_sys::fuzz_target;
use rust_decimal::Decimal;
use stillroom_core::number::{self, DecimalMark};
use stillroom_core::unit::{MassUnit, VolumeUnit};
use stillroom_fuzz as _;

fuzz_target!(|input: &[u8]| {
    let text = String::from_utf8_lossy(input);
    for mark in [DecimalMark::Point, DecimalMark::Comma] {
        let _ = number::read(&text, mark);
        let _ = number::read_volume(&text, mark, VolumeUnit::default());
        if let Ok(mass) = number::read_mass(&text, mark, MassUnit::default(), None) {
            assert!(mass.value() >= Decimal::ZERO);
        }
        if let Ok(value) = number::read_plain(&text, mark, Decimal::ZERO, Decimal::from(1_000_000)) {
            assert!(value >= Decimal::ZERO && value <= Decimal::from(1_000_000));
            let written = number::write_between(value, 0, 28, mark);
            assert_eq!(number::read_plain(&written, mark, Decimal::ZERO, Decimal::from(1_000_000)), Ok(value), "{written}");
        }
    }
});
