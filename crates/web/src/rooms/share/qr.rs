//! A link as a QR code (ISO/IEC 18004), for a label or a page.

use crate::messages::share as says;
use crate::rooms::share::view::CodeView;
use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};
use std::fmt::Write as _;
use stillroom_core::label::{QUIET_ZONE, USUAL_MODULE};

/// Largest version used: 117 modules a side.
///
/// A phone at reading distance needs modules of about 0.4 mm (common practice for printed codes is 0.33 mm and more). 117
/// modules and the margin of four on each side are then 50 mm, the width of a usual label; a larger version would need
/// smaller modules.
const LARGEST_VERSION: u8 = 25;
/// A label gets wet, and a jar is round: up to 15 % of the code may be lost.
const CORRECTION: QrCodeEcc = QrCodeEcc::Medium;
/// Most bytes that the largest version holds at that correction (ISO/IEC 18004, table 7).
pub(crate) const MOST_BYTES: usize = 997;

/// Draws a text. `None` if it is too long for a label.
pub(crate) fn draw(text: &str) -> Option<CodeView> {
    let segments = QrSegment::make_segments(text);
    let code = QrCode::encode_segments_advanced(
        &segments,
        CORRECTION,
        Version::MIN,
        Version::new(LARGEST_VERSION),
        None,
        true,
    )
    .ok()?;
    let side = u32::try_from(code.size()).ok()? + 2 * QUIET_ZONE;
    let exact = f64::from(side) * USUAL_MODULE;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "at most 125 modules of 0.4 mm")]
    let millimetres = exact.ceil() as u32;
    Some(CodeView {
        side,
        path: path_of(&code, QUIET_ZONE.cast_signed()),
        about: says::code_width(&millimetres.to_string()),
        millimetres,
    })
}

/// The dark modules, each run of a row as one bar.
fn path_of(code: &QrCode, margin: i32) -> String {
    let mut path = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let begin = x;
            while x < code.size() && code.get_module(x, y) {
                x += 1;
            }
            if x > begin {
                // Writing to a text cannot fail.
                let _ = write!(path, "M{} {}h{}v1h-{}z", begin + margin, y + margin, x - begin, x - begin);
            } else {
                x += 1;
            }
        }
    }
    path
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Paints the path like a browser would, several pixels a module, and reads it with a library of other people.
    fn read_back(view: &CodeView) -> String {
        const SCALE: usize = 3;
        let side = view.side as usize;
        let mut dark = vec![false; side * side];
        for bar in view.path.split('M').filter(|bar| !bar.is_empty()) {
            let numbers: Vec<usize> = bar
                .split(|character: char| !character.is_ascii_digit())
                .filter(|number| !number.is_empty())
                .map(|number| number.parse().unwrap())
                .collect();
            let [x, y, width, height, back] = numbers[..] else { panic!("{bar} is no bar") };
            assert_eq!((height, back), (1, width));
            dark[y * side + x..y * side + x + width].fill(true);
        }
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(side * SCALE, side * SCALE, |x, y| {
            if dark[y / SCALE * side + x / SCALE] { 0 } else { 255 }
        });
        let grids = image.detect_grids();
        assert_eq!(grids.len(), 1);
        grids[0].decode().unwrap().1
    }

    #[test]
    fn another_library_reads_what_is_drawn() {
        for length in [1, 60, 300, 600, MOST_BYTES - 26] {
            let text = format!("https://maker.example/#f={}", "aZ09-_".repeat(170)).split_at(25 + length).0.to_owned();
            let view = draw(&text).unwrap();
            assert_eq!(read_back(&view), text, "{length}");
        }
    }

    #[test]
    fn a_code_stays_within_a_label() {
        let largest = draw(&"a".repeat(MOST_BYTES)).unwrap();
        assert_eq!((largest.side, largest.millimetres), (125, 50));
        assert_eq!(draw(&"a".repeat(MOST_BYTES + 1)), None);
    }
}
