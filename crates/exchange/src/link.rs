//! A formula as the fragment of an address: what a maker publishes and a reader opens, without a server that sees it.
//!
//! # The form
//! After `#f=` stands unpadded base64url (RFC 4648 section 5) of
//!
//! | bytes | what |
//! |---|---|
//! | 1 | version, 1 to 3 |
//! | 1 to 3 | length of the body, seven bits to a byte, lowest first |
//! | length | the body, as its version says |
//! | 4 | CRC-32 (ISO-HDLC) of everything before it, lowest byte first |
//!
//! Every version keeps this frame, so that a link of a later one is told from a damaged one. The body of version 1 is the
//! length of its numbers, the numbers (`body.rs`: catalogue materials by their number, decimals as digits and
//! the place of their point), then the texts (`text.rs`: compressed where that is shorter).
//!
//! # Limits
//! What is larger is refused both when written and when read: [`LONGEST_LINK`] characters, [`LONGEST_TEXT`] bytes of text
//! once unpacked, and the counts [`MOST_LINES`], [`MOST_PHASES`], [`MOST_MATERIALS`], [`MOST_PARTS`], [`MOST_STEPS`].
//! References are numbers of a table, so nothing nests while it is read.

mod body;
mod bytes;
mod text;

use crate::parcel::Parcel;
use base64::Engine as _;
use base64::engine::{GeneralPurpose, GeneralPurposeConfig};
use bytes::Unpacking;

/// Latest version written and read. What says nothing that a later version brought is written as
/// the earlier one, which every Stillroom reads.
pub const VERSION: u8 = 3;
/// What stands between `#` and the formula.
pub const FRAGMENT: &str = "f=";
/// Longest link, in characters of its base64url.
pub const LONGEST_LINK: usize = 60_000;
/// Most text in all, in bytes of UTF-8.
pub const LONGEST_TEXT: usize = 200_000;
/// Most lines of one formula.
pub const MOST_LINES: usize = 1_000;
/// Most phases of one formula.
pub const MOST_PHASES: usize = 100;
/// Most own materials, most other formulas, and most references to what did not come along.
pub const MOST_MATERIALS: usize = 500;
/// Most parts of one own material.
pub const MOST_PARTS: usize = 500;
/// Most steps of one formula; also most entries of what is at hand, and most findings set aside.
pub const MOST_STEPS: usize = 500;

/// Whatever a link counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// Characters of the link.
    Characters,
    /// Bytes of text.
    Text,
    /// Lines of a formula.
    Lines,
    /// Phases of a formula.
    Phases,
    /// Own materials and formulas.
    Materials,
    /// Parts of an own material.
    Parts,
    /// Steps, materials at hand, findings set aside.
    Steps,
}

/// Why a link cannot be read, or a formula not be made one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum LinkError {
    /// It is no link of Stillroom, or a character of it changed.
    #[error("damaged")]
    Damaged,
    /// Its end is missing.
    #[error("cut off")]
    CutOff,
    /// A later version of Stillroom wrote it.
    #[error("version {version} is newer than {VERSION}")]
    Newer {
        /// Its version.
        version: u8,
    },
    /// It holds more than a link may.
    #[error("more than {most} {part:?}")]
    TooLarge {
        /// Of what it holds too much.
        part: Part,
        /// Most accepted.
        most: usize,
    },
}

impl LinkError {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Damaged => "link.damaged",
            Self::CutOff => "link.cut-off",
            Self::Newer { .. } => "link.newer",
            Self::TooLarge { .. } => "link.too-large",
        }
    }

    pub(crate) const fn too_much_text() -> Self {
        Self::TooLarge { part: Part::Text, most: LONGEST_TEXT }
    }
}

/// A link that lost its last characters often ends amidst a byte: that is told from damage by the frame.
const LETTERS: GeneralPurpose = GeneralPurpose::new(
    &base64::alphabet::URL_SAFE,
    GeneralPurposeConfig::new()
        .with_encode_padding(false)
        .with_decode_padding_mode(base64::engine::DecodePaddingMode::RequireNone)
        .with_decode_allow_trailing_bits(true),
);

/// Writes a formula as the fragment of an address, with [`FRAGMENT`] and without `#`.
///
/// # Errors
/// `link.too-large` past the limits of this module.
pub fn write(parcel: &Parcel) -> Result<String, LinkError> {
    let body = body::write(parcel)?;
    let mut bytes = vec![body::least_version(parcel)];
    bytes::put_whole(&mut bytes, body.len() as u128);
    bytes.extend(body);
    bytes.extend(crc32fast::hash(&bytes).to_le_bytes());
    let letters = LETTERS.encode(bytes);
    if letters.len() > LONGEST_LINK {
        return Err(LinkError::TooLarge { part: Part::Characters, most: LONGEST_LINK });
    }
    Ok(format!("{FRAGMENT}{letters}"))
}

/// Whether a text looks like a link at all, so that it is worth reading.
#[must_use]
pub fn is_link(text: &str) -> bool {
    text.rsplit('#').next().is_some_and(|fragment| fragment.trim_start().starts_with(FRAGMENT))
}

/// Reads a link: a whole address, its fragment, or what stands behind [`FRAGMENT`]. Spaces and line breaks that a letter
/// or message put into it do not matter; anything else that was not written does.
///
/// # Errors
/// `link.damaged`, `link.cut-off`, `link.newer`, `link.too-large`.
pub fn read(text: &str) -> Result<Parcel, LinkError> {
    // Spaces are worth no more than the letters between them.
    if text.len() > 2 * LONGEST_LINK {
        return Err(LinkError::TooLarge { part: Part::Characters, most: LONGEST_LINK });
    }
    let fragment = text.rsplit('#').next().unwrap_or_default();
    let letters: String = fragment.chars().filter(|character| !character.is_whitespace()).collect();
    let letters = letters.strip_prefix(FRAGMENT).unwrap_or(&letters);
    if letters.len() > LONGEST_LINK {
        return Err(LinkError::TooLarge { part: Part::Characters, most: LONGEST_LINK });
    }
    if !letters.bytes().all(|letter| letter.is_ascii_alphanumeric() || b"-_".contains(&letter)) {
        return Err(LinkError::Damaged);
    }
    let bytes = match LETTERS.decode(letters) {
        Ok(bytes) => bytes,
        // One letter of four is left over: no end of ours.
        Err(base64::DecodeError::InvalidLength(_)) => return Err(LinkError::CutOff),
        Err(_) => return Err(LinkError::Damaged),
    };
    let (version, body) = open_frame(&bytes)?;
    if LETTERS.encode(&bytes) != letters {
        return Err(LinkError::Damaged);
    }
    body::read(body, version)
}

/// Version and body of a whole and undamaged link of a version this one reads.
fn open_frame(bytes: &[u8]) -> Result<(u8, &[u8]), LinkError> {
    let mut frame = Unpacking { bytes, texts: "" };
    let cut_off = |_| LinkError::CutOff;
    let version = frame.byte().map_err(cut_off)?;
    let length: usize =
        frame.whole().map_err(|error| if frame.bytes.is_empty() { LinkError::CutOff } else { error })?;
    let body = frame.take(length).map_err(cut_off)?;
    let sum = frame.take(4).map_err(cut_off)?;
    let summed = &bytes[..bytes.len() - frame.bytes.len() - 4];
    if !frame.bytes.is_empty() || sum != crc32fast::hash(summed).to_le_bytes() {
        return Err(LinkError::Damaged);
    }
    match version {
        1..=VERSION => Ok((version, body)),
        0 => Err(LinkError::Damaged),
        version => Err(LinkError::Newer { version }),
    }
}

#[cfg(test)]
mod tests;
