//! Numbers as few bytes: seven bits of a whole number to a byte, a decimal as its digits and where its point stands.

use super::{LinkError, Part};
use rust_decimal::Decimal;

/// Most digits after the point that a decimal holds.
const MOST_DECIMALS: u8 = 28;
/// Set on the scale of a decimal below zero.
const NEGATIVE: u8 = 0x80;

/// Writes numbers, and collects texts apart so that they can be compressed together.
#[derive(Debug, Default)]
pub(super) struct Packing {
    pub(super) bytes: Vec<u8>,
    pub(super) texts: String,
}

impl Packing {
    pub(super) fn byte(&mut self, byte: u8) {
        self.bytes.push(byte);
    }

    pub(super) fn whole(&mut self, number: impl Into<u128>) {
        put_whole(&mut self.bytes, number.into());
    }

    /// How many there are of something.
    pub(super) fn count(&mut self, count: usize, most: usize, part: Part) -> Result<(), LinkError> {
        if count > most {
            return Err(LinkError::TooLarge { part, most });
        }
        self.whole(count as u128);
        Ok(())
    }

    /// A number that names something: its length in bytes, then the bytes that are not zero, lowest first.
    pub(super) fn name(&mut self, number: u64) {
        let length = 8 - usize::try_from(number.leading_zeros() / 8).unwrap_or(0);
        self.bytes.push(u8::try_from(length).unwrap_or(8));
        self.bytes.extend_from_slice(&number.to_le_bytes()[..length]);
    }

    pub(super) fn digits(&mut self, value: Decimal) {
        self.whole(value.mantissa().unsigned_abs());
    }

    pub(super) fn decimal(&mut self, value: Decimal) {
        let sign = if value.is_sign_negative() { NEGATIVE } else { 0 };
        self.byte(sign | scale_of(value));
        self.digits(value);
    }

    pub(super) fn text(&mut self, text: &str) -> Result<(), LinkError> {
        if self.texts.len() + text.len() > super::LONGEST_TEXT {
            return Err(LinkError::TooLarge { part: Part::Text, most: super::LONGEST_TEXT });
        }
        self.whole(text.len() as u128);
        self.texts.push_str(text);
        Ok(())
    }
}

pub(super) fn put_whole(bytes: &mut Vec<u8>, mut number: u128) {
    loop {
        let [lowest, ..] = number.to_le_bytes();
        number >>= 7;
        if number == 0 {
            bytes.push(lowest & 0x7f);
            break;
        }
        bytes.push(lowest | 0x80);
    }
}

pub(super) fn scale_of(value: Decimal) -> u8 {
    u8::try_from(value.scale()).unwrap_or(MOST_DECIMALS)
}

/// Reads what [`Packing`] wrote. Every step is checked: what is not there, or could not have been written, is damage.
#[derive(Debug)]
pub(super) struct Unpacking<'a> {
    pub(super) bytes: &'a [u8],
    pub(super) texts: &'a str,
}

impl<'a> Unpacking<'a> {
    pub(super) fn byte(&mut self) -> Result<u8, LinkError> {
        let (&first, rest) = self.bytes.split_first().ok_or(LinkError::Damaged)?;
        self.bytes = rest;
        Ok(first)
    }

    pub(super) fn take(&mut self, length: usize) -> Result<&'a [u8], LinkError> {
        let (taken, rest) = self.bytes.split_at_checked(length).ok_or(LinkError::Damaged)?;
        self.bytes = rest;
        Ok(taken)
    }

    /// A whole number in its shortest form.
    pub(super) fn whole<T: TryFrom<u128>>(&mut self) -> Result<T, LinkError> {
        let mut number = 0u128;
        for shift in (0..).step_by(7) {
            let byte = self.byte()?;
            let bits = u128::from(byte & 0x7f);
            // Nothing written here is longer than the 96 bits of a decimal.
            if shift >= 98 || (shift > 0 && byte == 0) {
                return Err(LinkError::Damaged);
            }
            number |= bits << shift;
            if byte < 0x80 {
                break;
            }
        }
        T::try_from(number).map_err(|_| LinkError::Damaged)
    }

    pub(super) fn count(&mut self, most: usize, part: Part) -> Result<usize, LinkError> {
        let count: u128 = self.whole()?;
        usize::try_from(count).ok().filter(|count| *count <= most).ok_or(LinkError::TooLarge { part, most })
    }

    pub(super) fn name(&mut self) -> Result<u64, LinkError> {
        let length = usize::from(self.byte()?);
        let mut number = [0; 8];
        let into = number.get_mut(..length).ok_or(LinkError::Damaged)?;
        let bytes = self.take(length)?;
        if bytes.last() == Some(&0) {
            return Err(LinkError::Damaged);
        }
        into.copy_from_slice(bytes);
        Ok(u64::from_le_bytes(number))
    }

    pub(super) fn digits(&mut self, scale: u8, negative: bool) -> Result<Decimal, LinkError> {
        let digits: u128 = self.whole()?;
        let digits = i128::try_from(digits).map_err(|_| LinkError::Damaged)?;
        let signed = if negative { -digits } else { digits };
        Decimal::try_from_i128_with_scale(signed, u32::from(scale)).map_err(|_| LinkError::Damaged)
    }

    pub(super) fn decimal(&mut self) -> Result<Decimal, LinkError> {
        let head = self.byte()?;
        self.digits(head & !NEGATIVE, head & NEGATIVE != 0)
    }

    pub(super) fn text(&mut self) -> Result<String, LinkError> {
        let length = self.whole()?;
        let (text, rest) = self.texts.split_at_checked(length).ok_or(LinkError::Damaged)?;
        self.texts = rest;
        Ok(text.to_owned())
    }
}
