//! A link as a reader's page gets it. The first byte says whether the rest is the link itself or only its body, which is
//! then framed with a right checksum: otherwise hardly any input would come past the frame.
#![no_main]

use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use libfuzzer_sys::fuzz_target;
use stillroom_exchange::link;
use stillroom_fuzz as _;
use stillroom_web::rooms::share::reading::read_shared;
use stillroom_web::rooms::share::view::ReadingOptions;

fuzz_target!(|input: &[u8]| {
    let Some((&form, rest)) = input.split_first() else { return };
    let text = match form % 4 {
        0 => String::from_utf8_lossy(rest).into_owned(),
        1 => URL_SAFE_NO_PAD.encode(rest),
        _ => framed(rest),
    };
    let Ok(parcel) = link::read(&text) else { return };
    let again = link::write(&parcel).expect("what a link held fits into one");
    assert_eq!(link::read(&again), Ok(parcel));
    // What a reader's page does with it costs more: every eighth input goes through.
    if form % 8 == 7 {
        let _ = read_shared(&text, &ReadingOptions { batch: Some("50 g".to_owned()), ..ReadingOptions::default() });
    }
});

/// A body of version 1 in its frame.
fn framed(body: &[u8]) -> String {
    let mut bytes = vec![1];
    let mut length = body.len();
    while length > 0x7f {
        bytes.push((length & 0x7f) as u8 | 0x80);
        length >>= 7;
    }
    bytes.push(length as u8);
    bytes.extend(body);
    bytes.extend(crc32fast::hash(&bytes).to_le_bytes());
    URL_SAFE_NO_PAD.encode(bytes)
}
