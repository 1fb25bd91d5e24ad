//! Numbers as people type and read them: the one place where text becomes a number and a number becomes text.
//!
//! Reading never guesses. `1,5` and `1.5` are the same number everywhere; `1,500` is refused as ambiguous where the
//! comma is not the reader's decimal mark, since a batch a thousand times too large is not a slip to make quietly.

use crate::quantity::{Density, Grams, Millilitres};
use crate::unit::{MassUnit, TemperatureUnit, VolumeUnit};
use rust_decimal::{Decimal, RoundingStrategy};
use serde::{Deserialize, Serialize};

/// Most digits before the decimal mark that are read.
pub const MOST_WHOLE_DIGITS: usize = 9;
/// Most digits after the decimal mark that are read.
pub const MOST_DECIMALS: usize = 10;
/// A no-break space, kept between a number and its unit.
const NO_BREAK: char = '\u{a0}';
/// As wide as a digit: fills a column where a number has fewer decimals than its neighbours.
const FIGURE_SPACE: char = '\u{2007}';
/// As wide as a decimal mark.
const PUNCTUATION_SPACE: char = '\u{2008}';
/// The minus sign of typeset numbers.
const MINUS: char = '\u{2212}';

/// The mark between whole and fraction.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DecimalMark {
    /// 1.5
    #[default]
    Point,
    /// 1,5
    Comma,
}

impl DecimalMark {
    /// The character itself.
    #[must_use]
    pub const fn character(self) -> char {
        match self {
            Self::Point => '.',
            Self::Comma => ',',
        }
    }
}

/// What a typed text says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Typed {
    /// A bare number.
    Bare(Decimal),
    /// A number followed by a percent sign.
    Percent(Decimal),
    /// A number with a unit of mass, as typed.
    Mass(Decimal, MassUnit),
    /// A number with a unit of volume, as typed.
    Volume(Decimal, VolumeUnit),
    /// `q.s.`, `q.s.p.` or `ad 100`, however dotted.
    QuantumSatis,
}

/// Why a typed text was not understood.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NumberError {
    /// Nothing was typed.
    #[error("nothing typed")]
    Empty,
    /// No number begins here.
    #[error("`{text}` is no number")]
    NotANumber {
        /// What was typed, cut to a readable length.
        text: String,
    },
    /// The mark may group thousands or begin a fraction.
    #[error("`{text}` may be {grouped} or {fraction}")]
    Ambiguous {
        /// What was typed.
        text: String,
        /// The number if the mark groups thousands.
        grouped: Decimal,
        /// The number if the mark begins a fraction.
        fraction: Decimal,
    },
    /// More digits than any scale or formula needs.
    #[error("more than {whole} digits before or {decimals} after the decimal mark")]
    TooLong {
        /// Most digits before the mark.
        whole: usize,
        /// Most digits after the mark.
        decimals: usize,
    },
    /// The unit is not known.
    #[error("`{unit}` is no unit known here")]
    UnknownUnit {
        /// What was typed behind the number.
        unit: String,
    },
    /// The unit is known but does not belong in this field.
    #[error("`{unit}` does not belong here")]
    WrongUnit {
        /// The unit as it is written.
        unit: String,
    },
    /// A volume was typed where a mass is needed and no density is known.
    #[error("a volume becomes a mass only through a density")]
    VolumeNeedsDensity,
    /// A count must be a whole number.
    #[error("{value} is no whole number")]
    NotWhole {
        /// What was typed.
        value: Decimal,
    },
    /// The number lies outside what the field takes.
    #[error("{value} is outside {minimum} to {maximum}")]
    OutOfRange {
        /// What was typed.
        value: Decimal,
        /// Smallest value accepted.
        minimum: Decimal,
        /// Largest value accepted.
        maximum: Decimal,
    },
}

impl NumberError {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Empty => "number.empty",
            Self::NotANumber { .. } => "number.not-a-number",
            Self::Ambiguous { .. } => "number.ambiguous",
            Self::TooLong { .. } => "number.too-long",
            Self::UnknownUnit { .. } => "number.unknown-unit",
            Self::WrongUnit { .. } => "number.wrong-unit",
            Self::VolumeNeedsDensity => "number.volume-needs-density",
            Self::NotWhole { .. } => "number.not-whole",
            Self::OutOfRange { .. } => "number.out-of-range",
        }
    }
}

/// Reads a number with an optional unit, or `q.s.` ([`Typed::QuantumSatis`]).
///
/// Accepts a point or a comma as the decimal mark, spaces or apostrophes between groups of three digits, a leading
/// sign, and any unit of [`MassUnit`] or [`VolumeUnit`].
///
/// # Errors
/// `number.empty`, `number.not-a-number`, `number.ambiguous`, `number.too-long`, `number.unknown-unit`.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::number::{DecimalMark, Typed, read};
/// assert_eq!(read("1,5 %", DecimalMark::Point)?, Typed::Percent(dec!(1.5)));
/// assert_eq!(read("q. s.", DecimalMark::Point)?, Typed::QuantumSatis);
/// assert_eq!(read("1,500", DecimalMark::Point).unwrap_err().code(), "number.ambiguous");
/// # Ok::<(), stillroom_core::number::NumberError>(())
/// ```
pub fn read(text: &str, mark: DecimalMark) -> Result<Typed, NumberError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(NumberError::Empty);
    }
    if is_quantum_satis(text) {
        return Ok(Typed::QuantumSatis);
    }
    let end =
        text.char_indices().find(|(_, character)| !belongs_to_number(*character)).map_or(text.len(), |(at, _)| at);
    let (number, unit) = text.split_at(end);
    let value = read_number(number.trim(), text, mark)?;
    let unit = unit.trim();
    if unit.is_empty() {
        return Ok(Typed::Bare(value));
    }
    if unit == "%" {
        return Ok(Typed::Percent(value));
    }
    if let Some(mass) = MassUnit::from_text(unit) {
        return Ok(Typed::Mass(value, mass));
    }
    if let Some(volume) = VolumeUnit::from_text(unit) {
        return Ok(Typed::Volume(value, volume));
    }
    Err(NumberError::UnknownUnit { unit: shorten(unit) })
}

/// Reads a plain number: no unit but, if typed, `%`.
///
/// # Errors
/// Those of [`read`], `number.wrong-unit` for another unit, `number.out-of-range` outside `minimum` to `maximum`.
pub fn read_plain(text: &str, mark: DecimalMark, minimum: Decimal, maximum: Decimal) -> Result<Decimal, NumberError> {
    let value = match read(text, mark)? {
        Typed::Bare(value) | Typed::Percent(value) => value,
        other => return Err(wrong_unit(other)),
    };
    if value < minimum || value > maximum {
        return Err(NumberError::OutOfRange { value, minimum, maximum });
    }
    Ok(value)
}

/// Reads a temperature of `minimum` to `maximum` degrees Celsius; a bare number is in `unit`, one with °C or °F in that.
/// What it says of the range is in the unit that was typed.
///
/// # Errors
/// Those of [`read_plain`].
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::number::{DecimalMark, read_temperature};
/// use stillroom_core::unit::TemperatureUnit;
/// let range = (dec!(-20), dec!(150));
/// assert_eq!(read_temperature("158 °F", DecimalMark::Point, TemperatureUnit::Celsius, range)?, dec!(70));
/// assert_eq!(read_temperature("70", DecimalMark::Point, TemperatureUnit::Celsius, range)?, dec!(70));
/// # Ok::<(), stillroom_core::number::NumberError>(())
/// ```
pub fn read_temperature(
    text: &str,
    mark: DecimalMark,
    unit: TemperatureUnit,
    (minimum, maximum): (Decimal, Decimal),
) -> Result<Decimal, NumberError> {
    let text = text.trim();
    let number =
        text.trim_end_matches(|letter: char| letter.is_ascii_alphabetic() || matches!(letter, '°' | 'º' | ' '));
    let (number, unit) = match TemperatureUnit::from_text(text[number.len()..].trim_start()) {
        Some(typed) if !number.is_empty() => (number, typed),
        _ => (text, unit),
    };
    let value = read_plain(number, mark, unit.from_celsius(minimum), unit.from_celsius(maximum))?;
    // A hundredth of a degree is more than a thermometer shows.
    Ok(unit.to_celsius(value).round_dp(2).normalize())
}

/// Reads a mass; a bare number is in `unit`, a volume needs a density.
///
/// # Errors
/// Those of [`read`], `number.wrong-unit` for a percent, `number.volume-needs-density`, `number.out-of-range`.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::number::{DecimalMark, read_mass};
/// use stillroom_core::unit::MassUnit;
/// let mass = read_mass("2 oz", DecimalMark::Point, MassUnit::Gram, None)?;
/// assert_eq!(mass.value(), dec!(56.69904625));
/// # Ok::<(), stillroom_core::number::NumberError>(())
/// ```
pub fn read_mass(
    text: &str,
    mark: DecimalMark,
    unit: MassUnit,
    density: Option<Density>,
) -> Result<Grams, NumberError> {
    let typed = read(text, mark)?;
    let (value, grams) = match typed {
        Typed::Bare(value) => (value, unit.to_grams(value)),
        Typed::Mass(value, unit) => (value, unit.to_grams(value)),
        Typed::Volume(value, volume) => {
            let density = density.ok_or(NumberError::VolumeNeedsDensity)?;
            (value, volume.to_millilitres(value).and_then(|volume| volume.mass_at(density)))
        }
        other @ (Typed::Percent(_) | Typed::QuantumSatis) => return Err(wrong_unit(other)),
    };
    grams.ok_or(NumberError::OutOfRange { value, minimum: Grams::MINIMUM, maximum: Grams::MAXIMUM })
}

/// Reads a volume; a bare number is in `unit`.
///
/// # Errors
/// Those of [`read`], `number.wrong-unit` for anything but a volume, `number.out-of-range`.
pub fn read_volume(text: &str, mark: DecimalMark, unit: VolumeUnit) -> Result<Millilitres, NumberError> {
    let (value, unit) = match read(text, mark)? {
        Typed::Bare(value) => (value, unit),
        Typed::Volume(value, unit) => (value, unit),
        other => return Err(wrong_unit(other)),
    };
    unit.to_millilitres(value).ok_or(NumberError::OutOfRange {
        value,
        minimum: Millilitres::MINIMUM,
        maximum: Millilitres::MAXIMUM,
    })
}

fn wrong_unit(typed: Typed) -> NumberError {
    let unit = match typed {
        Typed::Bare(_) => String::new(),
        Typed::Percent(_) => "%".to_owned(),
        Typed::Mass(_, unit) => unit.symbol().to_owned(),
        Typed::Volume(_, unit) => unit.symbol().to_owned(),
        Typed::QuantumSatis => "q.s.".to_owned(),
    };
    NumberError::WrongUnit { unit }
}

/// Whether a text says that this fills up to the whole: `q.s.`, as French and German pharmacies write it `q.s.p.` and `ad`,
/// each with `100` behind it or without.
fn is_quantum_satis(text: &str) -> bool {
    let dropped = |character: char| matches!(character, '.' | ' ' | '\u{a0}' | '\u{202f}');
    let plain: String = text.chars().filter(|character| !dropped(*character)).collect::<String>().to_ascii_lowercase();
    let plain = plain.strip_suffix('%').unwrap_or(&plain);
    matches!(plain.strip_suffix("100").unwrap_or(plain), "qs" | "qsp" | "ad")
}

const fn belongs_to_number(character: char) -> bool {
    character.is_ascii_digit()
        || matches!(
            character,
            '.' | ',' | '+' | '-' | '\'' | ' ' | MINUS | NO_BREAK | FIGURE_SPACE | '\u{2009}' | '\u{202f}' | '\u{2019}'
        )
}

fn shorten(text: &str) -> String {
    text.chars().take(24).collect()
}

fn read_number(number: &str, whole_text: &str, mark: DecimalMark) -> Result<Decimal, NumberError> {
    let not_a_number = || NumberError::NotANumber { text: shorten(whole_text) };
    let (negative, body) = match number.strip_prefix(['-', MINUS]) {
        Some(rest) => (true, rest),
        None => (false, number.strip_prefix('+').unwrap_or(number)),
    };
    let body = body.trim_start();
    if !body.chars().any(|character| character.is_ascii_digit()) {
        return Err(not_a_number());
    }

    // The last point or comma begins the fraction unless it stands more than once.
    let marks: Vec<(usize, char)> =
        body.char_indices().filter(|(_, character)| matches!(character, '.' | ',')).collect();
    let (whole, fraction, fraction_mark) = match marks.last() {
        Some(&(at, last)) if marks.iter().filter(|(_, character)| *character == last).count() == 1 => {
            (&body[..at], &body[at + 1..], Some(last))
        }
        None | Some(_) => (body, "", None),
    };
    if !fraction.chars().all(|character| character.is_ascii_digit()) {
        return Err(not_a_number());
    }
    let groups: Vec<&str> = whole.split(|character: char| !character.is_ascii_digit()).collect();
    let grouped = groups.len() > 1;
    if grouped {
        let (first, rest) = groups.split_first().ok_or_else(not_a_number)?;
        let separators: Vec<char> = whole.chars().filter(|character| !character.is_ascii_digit()).collect();
        let one_kind = separators.windows(2).all(|pair| pair[0] == pair[1]);
        let signs = separators.iter().any(|character| matches!(character, '+' | '-' | '\u{2212}'));
        let same_as_mark = fraction_mark.is_some_and(|mark| separators.contains(&mark));
        let threes = rest.iter().all(|group| group.len() == 3) && (1..=3).contains(&first.len());
        if !one_kind || signs || same_as_mark || !threes {
            return Err(not_a_number());
        }
    }

    let digits: String = groups.concat();
    let significant = digits.trim_start_matches('0');
    if significant.len() > MOST_WHOLE_DIGITS || fraction.len() > MOST_DECIMALS {
        return Err(NumberError::TooLong { whole: MOST_WHOLE_DIGITS, decimals: MOST_DECIMALS });
    }
    let exact = |text: &str| Decimal::from_str_exact(text).map_err(|_| not_a_number());
    let signed = |value: Decimal| if negative { -value } else { value };
    let value = signed(exact(&format!(
        "{}.{}",
        if digits.is_empty() { "0" } else { &digits },
        if fraction.is_empty() { "0" } else { fraction }
    ))?);

    // One mark before exactly three digits, and not the reader's own: thousands or thousandths?
    if let Some(found) = fraction_mark
        && found != mark.character()
        && !grouped
        && fraction.len() == 3
        && !significant.is_empty()
        && digits.len() <= 3
    {
        let as_group = signed(exact(&format!("{digits}{fraction}"))?);
        return Err(NumberError::Ambiguous {
            text: shorten(whole_text),
            grouped: as_group,
            fraction: value.normalize(),
        });
    }
    Ok(value.normalize())
}

/// Writes a number with exactly `decimals` decimals, halves rounded away from zero.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::number::{DecimalMark, write_fixed};
/// assert_eq!(write_fixed(dec!(2.345), 2, DecimalMark::Comma), "2,35");
/// assert_eq!(write_fixed(dec!(-0.001), 2, DecimalMark::Point), "0.00");
/// ```
#[must_use]
pub fn write_fixed(value: Decimal, decimals: u32, mark: DecimalMark) -> String {
    let rounded = value.round_dp_with_strategy(decimals, RoundingStrategy::MidpointAwayFromZero);
    let mut digits = [b'0'; 40];
    let mut at = digits.len();
    let mut rest = rounded.mantissa().unsigned_abs();
    let scale = rounded.scale();
    // Digits from the right: the missing decimals first, then the number's own.
    let missing = decimals.saturating_sub(scale) as usize;
    at -= missing.min(28);
    let mut written = 0;
    while rest > 0 || written <= scale {
        at -= 1;
        // Nearly every number fits 64 bits, and WebAssembly has an instruction to divide those.
        let (tens, digit) = match u64::try_from(rest) {
            Ok(narrow) => (u128::from(narrow / 10), u128::from(narrow % 10)),
            Err(_) => (rest / 10, rest % 10),
        };
        // A digit fits a byte.
        digits[at] = b'0' + u8::try_from(digit).unwrap_or(0);
        rest = tens;
        written += 1;
    }
    let text = &digits[at..];
    let whole_length = text.len() - decimals as usize;
    let mut out = String::with_capacity(text.len() + 4);
    if rounded.is_sign_negative() && !rounded.is_zero() {
        out.push(MINUS);
    }
    out.extend(text[..whole_length].iter().map(|digit| char::from(*digit)));
    if decimals > 0 {
        out.push(mark.character());
        out.extend(text[whole_length..].iter().map(|digit| char::from(*digit)));
    }
    out
}

/// Writes a number with as many decimals as it has, at least `fewest` and at most `most`.
#[must_use]
pub fn write_between(value: Decimal, fewest: u32, most: u32, mark: DecimalMark) -> String {
    write_fixed(value, decimals_of(value).clamp(fewest, most), mark)
}

/// Writes a number followed by its unit, with a space that does not break.
#[must_use]
pub fn with_unit(number: &str, unit: &str) -> String {
    format!("{number}{NO_BREAK}{unit}")
}

/// How many decimals a number really has.
#[must_use]
pub fn decimals_of(value: Decimal) -> u32 {
    value.normalize().scale()
}

/// Fills a number on the right, so that in a column of `most` decimals it stands on the decimal mark.
#[must_use]
pub fn align(mut number: String, decimals: u32, most: u32) -> String {
    if decimals >= most {
        return number;
    }
    if decimals == 0 {
        number.push(PUNCTUATION_SPACE);
    }
    number.extend(core::iter::repeat_n(FIGURE_SPACE, (most - decimals) as usize));
    number
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use rust_decimal::dec;

    fn check(text: &str, mark: DecimalMark, expected: Result<Typed, &str>) {
        let got = read(text, mark);
        match expected {
            Ok(typed) => assert_eq!(got, Ok(typed), "{text:?}"),
            Err(code) => assert_eq!(got.map_err(|error| error.code()), Err(code), "{text:?}"),
        }
    }

    #[test]
    fn numbers_are_read_as_people_type_them() {
        use DecimalMark::{Comma, Point};
        let bare = |value| Ok(Typed::Bare(value));
        for mark in [Point, Comma] {
            check("1.5", mark, bare(dec!(1.5)));
            check("1,5", mark, bare(dec!(1.5)));
            check(" 12 ", mark, bare(dec!(12)));
            check(".5", mark, bare(dec!(0.5)));
            check("5.", mark, bare(dec!(5)));
            check("+3", mark, bare(dec!(3)));
            check("\u{2212}3", mark, bare(dec!(-3)));
            check("0,125", mark, bare(dec!(0.125)));
            check("1 250,5", mark, bare(dec!(1250.5)));
            check("1'250.5", mark, bare(dec!(1250.5)));
            check("1.250,5", mark, bare(dec!(1250.5)));
            check("1,250.5", mark, bare(dec!(1250.5)));
            check("1.250.000", mark, bare(dec!(1_250_000)));
            check("1.5%", mark, Ok(Typed::Percent(dec!(1.5))));
            check("1,5 %", mark, Ok(Typed::Percent(dec!(1.5))));
            check(" 2 g ", mark, Ok(Typed::Mass(dec!(2), MassUnit::Gram)));
            check("0.5 oz", mark, Ok(Typed::Mass(dec!(0.5), MassUnit::Ounce)));
            check("3 fl oz", mark, Ok(Typed::Volume(dec!(3), VolumeUnit::FluidOunceUs)));
            check("30ml", mark, Ok(Typed::Volume(dec!(30), VolumeUnit::Millilitre)));
            for text in ["q.s.", "QS", "q.s.p.", "q. s. p. 100", "ad", "ad 100", "ad 100\u{a0}%", "qsp 100\u{202f}%"] {
                check(text, mark, Ok(Typed::QuantumSatis));
            }
        }
        check("1.234", Point, bare(dec!(1.234)));
        check("1,234", Comma, bare(dec!(1.234)));
    }

    #[test]
    fn what_is_not_understood_is_refused_with_its_reason() {
        use DecimalMark::{Comma, Point};
        for mark in [Point, Comma] {
            check("", mark, Err("number.empty"));
            check("   ", mark, Err("number.empty"));
            check("abc", mark, Err("number.not-a-number"));
            check("qsx", mark, Err("number.not-a-number"));
            check("ad 10", mark, Err("number.not-a-number"));
            check("100 ad", mark, Err("number.unknown-unit"));
            check("-", mark, Err("number.not-a-number"));
            check(",", mark, Err("number.not-a-number"));
            check("1.2.3", mark, Err("number.not-a-number"));
            check("1-2", mark, Err("number.not-a-number"));
            check("12 34", mark, Err("number.not-a-number"));
            check("1e3", mark, Err("number.unknown-unit"));
            check("2 cups", mark, Err("number.unknown-unit"));
            check("NaN", mark, Err("number.not-a-number"));
            check("12345678901", mark, Err("number.too-long"));
            check("0.12345678901", mark, Err("number.too-long"));
            check("١٢", mark, Err("number.not-a-number"));
        }
        check("1,500", Point, Err("number.ambiguous"));
        check("1.500", Comma, Err("number.ambiguous"));
    }

    #[test]
    fn a_volume_becomes_a_mass_only_through_a_density() {
        let mark = DecimalMark::Point;
        let sunflower_oil = Density::new(dec!(0.92)).unwrap();
        let mass = read_mass("30 ml", mark, MassUnit::Gram, Some(sunflower_oil)).unwrap();
        assert_eq!(mass.value(), dec!(27.60));
        let error = read_mass("30 ml", mark, MassUnit::Gram, None).unwrap_err();
        assert_eq!(error.code(), "number.volume-needs-density");
        assert_eq!(read_mass("-1", mark, MassUnit::Gram, None).unwrap_err().code(), "number.out-of-range");
        assert_eq!(read_mass("5 %", mark, MassUnit::Gram, None).unwrap_err().code(), "number.wrong-unit");
    }

    #[test]
    fn numbers_are_written_in_the_readers_style() {
        use DecimalMark::{Comma, Point};
        assert_eq!(write_fixed(dec!(61.2), 2, Point), "61.20");
        assert_eq!(write_fixed(dec!(0), 0, Point), "0");
        assert_eq!(write_fixed(dec!(0.05), 3, Comma), "0,050");
        assert_eq!(write_fixed(dec!(1234567.891), 1, Point), "1234567.9");
        assert_eq!(write_fixed(dec!(-2.5), 0, Point), "\u{2212}3");
        assert_eq!(write_fixed(dec!(1), 28, Point).len(), 30);
        assert_eq!(write_between(dec!(0.0450), 2, 4, Point), "0.045");
        assert_eq!(align("5".into(), 0, 2), "5\u{2008}\u{2007}\u{2007}");
    }

    proptest! {
        #[test]
        fn no_input_text_panics(text in "\\PC{0,40}", comma: bool) {
            let mark = if comma { DecimalMark::Comma } else { DecimalMark::Point };
            let _ = read(&text, mark);
            let _ = read_mass(&text, mark, MassUnit::Pound, None);
        }

        #[test]
        fn no_number_like_text_panics(text in "[-+0-9., '%gozmlkb\u{2212}]{0,24}", comma: bool) {
            let mark = if comma { DecimalMark::Comma } else { DecimalMark::Point };
            let _ = read_volume(&text, mark, VolumeUnit::FluidOunceUk);
            let _ = read_plain(&text, mark, Decimal::ZERO, Decimal::ONE_HUNDRED);
        }

        #[test]
        fn what_is_written_reads_back(mantissa in -999_999_999_999i64..999_999_999_999, scale in 0u32..=9, comma: bool) {
            let mark = if comma { DecimalMark::Comma } else { DecimalMark::Point };
            let value = Decimal::new(mantissa, scale);
            prop_assume!(value.abs() < dec!(1_000_000_000));
            let text = write_between(value, 0, 10, mark);
            prop_assert_eq!(read(&text, mark), Ok(Typed::Bare(value.normalize())));
        }
    }
}
