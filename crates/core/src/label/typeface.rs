//! How wide text is: advance widths of the sans-serif typeface that every system has, or another of the same widths.
//!
//! *Source*: Adobe Core 14 font metrics, Helvetica and Helvetica-Bold (from memory). Letters with accents are as wide as those
//! without in these faces.

/// Height of small letters without strokes above or below their line, in parts of the size: the least among the faces that
/// stand in for one another (0.519 to 0.547).
pub const SMALL_LETTER: f64 = 0.519;
/// Height of a figure, in parts of the size, likewise.
pub const FIGURE: f64 = 0.703;
/// Height of what rises highest above the line, in parts of the size.
pub const ABOVE: f64 = 0.76;
/// Depth of what hangs lowest below it.
pub const BELOW: f64 = 0.22;

/// Thousandths of the size, from the space to the tilde.
const REGULAR: [u16; 95] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
    556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833,
    722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556,
    556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334,
    260, 334, 584,
];
/// The same, bold.
const BOLD: [u16; 95] = [
    278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
    556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833,
    722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556, 333, 556, 611, 556, 611,
    556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389,
    280, 389, 584,
];
/// A letter that is none of these: as wide as the widest usual one, so that text is never wider than reckoned.
const OTHER: u16 = 1000;

/// Width of a text at a size, in the unit of the size.
///
/// ```
/// use stillroom_core::label::width_of;
/// assert!((width_of("Aqua", 10.0, false) - 23.35).abs() < 1e-9);
/// // Accents add nothing, and bold letters are wider.
/// assert_eq!(width_of("crème", 3.0, false), width_of("creme", 3.0, false));
/// assert!(width_of("Aqua", 10.0, true) > 23.35);
/// ```
#[must_use]
pub fn width_of(text: &str, size: f64, bold: bool) -> f64 {
    let table = if bold { &BOLD } else { &REGULAR };
    text.chars().map(|letter| f64::from(advance(letter, table))).sum::<f64>() * size / 1000.0
}

fn advance(letter: char, table: &[u16; 95]) -> u16 {
    let plain = match letter {
        '\u{a0}' | '\u{202f}' => ' ',
        'à' | 'á' | 'â' | 'ã' | 'ä' | 'å' => 'a',
        'è' | 'é' | 'ê' | 'ë' => 'e',
        'ì' | 'í' | 'î' | 'ï' => 'i',
        'ò' | 'ó' | 'ô' | 'õ' | 'ö' => 'o',
        'ù' | 'ú' | 'û' | 'ü' => 'u',
        'À' | 'Á' | 'Â' | 'Ã' | 'Ä' | 'Å' => 'A',
        'È' | 'É' | 'Ê' | 'Ë' => 'E',
        'Ì' | 'Í' | 'Î' | 'Ï' => 'I',
        'Ò' | 'Ó' | 'Ô' | 'Õ' | 'Ö' => 'O',
        'Ù' | 'Ú' | 'Û' | 'Ü' => 'U',
        'ç' => 'c',
        'Ç' => 'C',
        'ñ' => 'n',
        'ß' => 'b',
        '’' | '‘' => '\'',
        '–' => '0',
        '“' | '”' | '«' | '»' => '"',
        '·' | '°' => '*',
        other => other,
    };
    let place = (plain as usize).checked_sub(' ' as usize);
    place.and_then(|place| table.get(place)).copied().unwrap_or(OTHER)
}
