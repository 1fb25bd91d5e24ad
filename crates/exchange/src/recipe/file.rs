//! The text of a file that somebody chose or dropped: in whatever letters it is written, and told apart from what is no text.

use super::LONGEST_TEXT;

/// Largest file looked at, in bytes: the longest text in the widest letters.
pub const LARGEST_FILE: usize = 2 * LONGEST_TEXT + 2;

/// How the letters of a file are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Letters {
    /// UTF-8.
    Utf8,
    /// UTF-16, in either order of bytes.
    Utf16,
    /// One byte a letter: Windows-1252, which holds Latin-1. A guess, since such a file does not say so.
    Latin1,
}

/// The text of a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FileText {
    /// What it says.
    pub text: String,
    /// How it was written.
    pub letters: Letters,
}

/// Why a file is not read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum FileError {
    /// It is larger than a recipe is.
    #[error("{bytes} bytes")]
    TooLarge {
        /// Its size.
        bytes: usize,
    },
    /// It is packed: a workbook, a document.
    #[error("a workbook or a packed document")]
    Packed,
    /// It holds no text: a picture, a program, a PDF.
    #[error("no text")]
    NoText,
    /// There is nothing in it.
    #[error("empty")]
    Empty,
}

impl FileError {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::TooLarge { .. } => "recipe.file-too-large",
            Self::Packed => "recipe.file-packed",
            Self::NoText => "recipe.file-no-text",
            Self::Empty => "recipe.file-empty",
        }
    }
}

/// Reads the text of a file.
///
/// # Errors
/// `recipe.file-too-large`, `recipe.file-packed`, `recipe.file-no-text`, `recipe.file-empty`.
pub fn text_of(bytes: &[u8]) -> Result<FileText, FileError> {
    if bytes.len() > LARGEST_FILE {
        return Err(FileError::TooLarge { bytes: bytes.len() });
    }
    // The first bytes of a zip and of the older container of documents: both hold workbooks.
    if bytes.starts_with(b"PK\x03\x04") || bytes.starts_with(&[0xd0, 0xcf, 0x11, 0xe0]) {
        return Err(FileError::Packed);
    }
    if bytes.starts_with(b"%PDF") {
        return Err(FileError::NoText);
    }
    let (text, letters) = decoded(bytes)?;
    let text = text.strip_prefix('\u{feff}').map(str::to_owned).unwrap_or(text);
    if text.trim().is_empty() {
        return Err(FileError::Empty);
    }
    // A text has line ends and tabs; other signs that steer a machine, or letters that could not be read, it has none of.
    let odd = |letter: &char| {
        *letter == char::REPLACEMENT_CHARACTER
            || (letter.is_control() && !matches!(letter, '\n' | '\r' | '\t' | '\u{c}'))
    };
    if text.chars().filter(odd).count() * 50 > text.chars().count() || text.contains('\0') {
        return Err(FileError::NoText);
    }
    if text.len() > LONGEST_TEXT {
        return Err(FileError::TooLarge { bytes: text.len() });
    }
    Ok(FileText { text, letters })
}

fn decoded(bytes: &[u8]) -> Result<(String, Letters), FileError> {
    let zeros = |first: usize| bytes.iter().skip(first).step_by(2).filter(|byte| **byte == 0).count();
    let half = bytes.len() / 2;
    let in_pairs = |from: &[u8], of: fn([u8; 2]) -> u16| {
        let units = from.chunks_exact(2).filter_map(|pair| Some(of(pair.try_into().ok()?)));
        char::decode_utf16(units).map(|letter| letter.unwrap_or(char::REPLACEMENT_CHARACTER)).collect::<String>()
    };
    // Half of the bytes of a text in our letters are zeros, even where no mark stands before it.
    if bytes.starts_with(&[0xff, 0xfe]) || (half > 3 && zeros(1) * 10 > half * 4 && zeros(0) == 0) {
        return Ok((in_pairs(bytes, u16::from_le_bytes), Letters::Utf16));
    }
    if bytes.starts_with(&[0xfe, 0xff]) || (half > 3 && zeros(0) * 10 > half * 4 && zeros(1) == 0) {
        return Ok((in_pairs(bytes, u16::from_be_bytes), Letters::Utf16));
    }
    if bytes.contains(&0) {
        return Err(FileError::NoText);
    }
    match core::str::from_utf8(bytes) {
        Ok(text) => Ok((text.to_owned(), Letters::Utf8)),
        Err(_) => Ok((bytes.iter().map(|byte| letter_of(*byte)).collect(), Letters::Latin1)),
    }
}

/// The letter of a byte in Windows-1252. *Source*: WHATWG Encoding Standard, index windows-1252 (from memory); all bytes but
/// 0x80 to 0x9f are those of ISO 8859-1.
fn letter_of(byte: u8) -> char {
    const MIDDLE: [char; 32] = [
        '€', '\u{81}', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\u{8d}', 'Ž', '\u{8f}', '\u{90}', '‘',
        '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', '\u{9d}', 'ž', 'Ÿ',
    ];
    let place = usize::from(byte).checked_sub(0x80);
    place.and_then(|place| MIDDLE.get(place)).copied().unwrap_or(char::from(byte))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const RECIPE: &str = "Mandelöl;20 €\nEau de fleur d’oranger;70\n";

    #[test]
    fn letters_are_read_however_they_are_written() {
        let wide = |of: fn(u16) -> [u8; 2]| RECIPE.encode_utf16().flat_map(of).collect::<Vec<u8>>();
        let with = |mark: &[u8], bytes: Vec<u8>| [mark, &bytes].concat();
        let cases = [
            (RECIPE.as_bytes().to_vec(), Letters::Utf8),
            (with(&[0xef, 0xbb, 0xbf], RECIPE.as_bytes().to_vec()), Letters::Utf8),
            (with(&[0xff, 0xfe], wide(u16::to_le_bytes)), Letters::Utf16),
            (with(&[0xfe, 0xff], wide(u16::to_be_bytes)), Letters::Utf16),
            (wide(u16::to_le_bytes), Letters::Utf16),
            (wide(u16::to_be_bytes), Letters::Utf16),
            // ö, € and ’ in Windows-1252.
            ([b"Mandel\xf6l;20 \x80\nEau de fleur d\x92oranger;70\n".as_slice()].concat(), Letters::Latin1),
        ];
        for (bytes, letters) in cases {
            assert_eq!(text_of(&bytes), Ok(FileText { text: RECIPE.to_owned(), letters }), "{bytes:?}");
        }
    }

    #[test]
    fn what_is_no_text_is_refused_by_what_it_is() {
        let picture = [0x89, b'P', b'N', b'G', 13, 10, 26, 10, 0, 0, 0, 13, b'I', b'H', b'D', b'R', 0, 0, 1, 0];
        assert_eq!(text_of(&picture), Err(FileError::NoText));
        assert_eq!(text_of(b"%PDF-1.7 and so on"), Err(FileError::NoText));
        assert_eq!(text_of(b"PK\x03\x04\x14\x00\x06"), Err(FileError::Packed));
        assert_eq!(text_of(&[0xd0, 0xcf, 0x11, 0xe0, 0xa1]), Err(FileError::Packed));
        assert_eq!(text_of(b""), Err(FileError::Empty));
        assert_eq!(text_of(b"\xef\xbb\xbf \r\n"), Err(FileError::Empty));
        let noise: Vec<u8> = (0..400_u16).map(|at| u8::try_from(1 + at * 7 % 31).unwrap_or(1)).collect();
        assert_eq!(text_of(&noise), Err(FileError::NoText));
        assert_eq!(text_of(&vec![b'a'; LARGEST_FILE + 1]), Err(FileError::TooLarge { bytes: LARGEST_FILE + 1 }));
        assert_eq!(text_of(&vec![b'a'; LONGEST_TEXT + 1]), Err(FileError::TooLarge { bytes: LONGEST_TEXT + 1 }));
    }

    proptest! {
        #[test]
        fn any_bytes_are_read_or_refused(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
            if let Ok(read) = text_of(&bytes) {
                prop_assert!(!read.text.contains('\0'));
            }
        }
    }
}
