//! The texts of a link, compressed when that makes them shorter.
//!
//! A short text gains nothing from compression on its own. Both sides therefore know a page of a bench's usual phrases
//! beforehand (`words-1.txt`), and a text is written as what it has in common with that page and with itself: raw DEFLATE
//! (RFC 1951) with a preset dictionary. The page of a released version never changes; a better one gets a new number.

use super::{LONGEST_TEXT, LinkError};
use miniz_oxide::deflate::core::{
    CompressorOxide, TDEFLFlush, TDEFLStatus, compress, create_comp_flags_from_zip_params, deflate_flags,
};
use miniz_oxide::inflate::TINFLStatus;
use miniz_oxide::inflate::core::{DecompressorOxide, decompress, inflate_flags};

/// The phrases of version 1.
const WORDS: &[u8] = include_bytes!("words-1.txt");

/// Texts as they are.
const PLAIN: u8 = 0;
/// Texts compressed with the phrases of version 1.
const WITH_WORDS: u8 = 1;

/// Writes texts in whichever form is shorter: one byte that names the form, then the form.
pub(super) fn put_texts(bytes: &mut Vec<u8>, texts: &str) {
    if let Some(packed) = deflate(texts.as_bytes()).filter(|packed| packed.len() < texts.len()) {
        bytes.push(WITH_WORDS);
        bytes.extend(packed);
    } else {
        bytes.push(PLAIN);
        bytes.extend(texts.as_bytes());
    }
}

/// Reads texts that fill the rest of a link.
pub(super) fn take_texts(bytes: &[u8]) -> Result<String, LinkError> {
    let (&form, packed) = bytes.split_first().ok_or(LinkError::Damaged)?;
    let texts = match form {
        PLAIN if packed.len() > LONGEST_TEXT => return Err(LinkError::too_much_text()),
        PLAIN => packed.to_vec(),
        WITH_WORDS => inflate(packed)?,
        _ => return Err(LinkError::Damaged),
    };
    String::from_utf8(texts).map_err(|_| LinkError::Damaged)
}

/// Compresses behind the phrases. `None` if the compressor refuses, which only leaves the text longer.
fn deflate(text: &[u8]) -> Option<Vec<u8>> {
    // Codes fixed by the standard: a table of its own would be longer than most texts.
    let fixed = deflate_one(text, deflate_flags::TDEFL_FORCE_ALL_STATIC_BLOCKS);
    let fitted = deflate_one(text, 0);
    match (fixed, fitted) {
        (Some(fixed), Some(fitted)) if fitted.len() < fixed.len() => Some(fitted),
        (Some(fixed), _) => Some(fixed),
        (None, fitted) => fitted,
    }
}

fn deflate_one(text: &[u8], more_flags: u32) -> Option<Vec<u8>> {
    let flags = create_comp_flags_from_zip_params(10, 0, 0) | more_flags;
    let mut compressor = CompressorOxide::new(flags);
    // The phrases go first; what they compress to ends on a byte and is thrown away, so the text may refer back to them.
    let mut out = vec![0; WORDS.len() + text.len() + 1024];
    let (status, read, _) = compress(&mut compressor, WORDS, &mut out, TDEFLFlush::Sync);
    if status != TDEFLStatus::Okay || read != WORDS.len() {
        return None;
    }
    let (status, read, written) = compress(&mut compressor, text, &mut out, TDEFLFlush::Finish);
    if status != TDEFLStatus::Done || read != text.len() {
        return None;
    }
    out.truncate(written);
    Some(out)
}

/// Decompresses behind the phrases, into no more than the longest text.
fn inflate(packed: &[u8]) -> Result<Vec<u8>, LinkError> {
    // Room grows with need: what claims to be large must first be so.
    let mut room = 4 * packed.len() + 1024;
    loop {
        let room_now = room.min(LONGEST_TEXT);
        let mut out = vec![0; WORDS.len() + room_now];
        out[..WORDS.len()].copy_from_slice(WORDS);
        let mut decompressor = DecompressorOxide::new();
        let (status, read, written) = decompress(
            &mut decompressor,
            packed,
            &mut out,
            WORDS.len(),
            inflate_flags::TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF,
        );
        match status {
            TINFLStatus::Done if read == packed.len() => {
                out.drain(..WORDS.len());
                out.truncate(written);
                return Ok(out);
            }
            TINFLStatus::HasMoreOutput if room_now < LONGEST_TEXT => room *= 8,
            TINFLStatus::HasMoreOutput => return Err(LinkError::too_much_text()),
            _ => return Err(LinkError::Damaged),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn round_trip(texts: &str) -> usize {
        let mut bytes = Vec::new();
        put_texts(&mut bytes, texts);
        assert_eq!(take_texts(&bytes).unwrap(), texts);
        bytes.len()
    }

    #[test]
    fn texts_read_back_as_they_were_written() {
        assert_eq!(round_trip(""), 1);
        assert_eq!(round_trip("qj"), 3, "too short to gain anything");
        let steps = "Heat to 70 °C in the water bath. Stir while it cools; add the cool-down phase under 40 °C.";
        assert!(round_trip(steps) < steps.len() / 2);
        let own = "Zwölf Kilogramm Quittenkerne, über Nacht in kaltem Brunnenwasser gequollen \u{1f34f}\0\u{202e}";
        assert!(round_trip(own) <= own.len() + 1);
        round_trip(&"x".repeat(LONGEST_TEXT));
    }

    #[test]
    fn what_unpacks_without_end_is_refused() {
        let bomb = deflate(&vec![b'x'; LONGEST_TEXT + 1]).unwrap();
        assert!(bomb.len() < 2000);
        assert_eq!(inflate(&bomb), Err(LinkError::too_much_text()));
    }

    #[test]
    fn what_is_left_over_is_damage() {
        let mut bytes = Vec::new();
        put_texts(&mut bytes, &"stir while it cools ".repeat(4));
        bytes.push(0);
        assert_eq!(take_texts(&bytes), Err(LinkError::Damaged));
        assert_eq!(take_texts(&bytes[..4]), Err(LinkError::Damaged));
        assert_eq!(take_texts(&[9]), Err(LinkError::Damaged));
    }
}
