//! Amounts as recipes write them, wherever in a line they stand.

use rust_decimal::Decimal;
use stillroom_core::number::{DecimalMark, Typed, read};
use stillroom_core::unit::{MassUnit, VolumeUnit};

/// A measure of the kitchen. Nobody weighs by it, and no table says what it holds of a given material.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Household {
    /// A teaspoon.
    Teaspoon,
    /// A tablespoon.
    Tablespoon,
    /// A cup.
    Cup,
    /// A drop.
    Drop,
    /// A pinch.
    Pinch,
}

/// What an amount is counted in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// Percent of the whole.
    Percent,
    /// A mass.
    Mass(MassUnit),
    /// A volume.
    Volume(VolumeUnit),
    /// A measure of the kitchen.
    Household(Household),
    /// Parts of any size, all the same.
    Parts,
}

/// An amount as it is written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Written {
    /// None is written.
    Missing,
    /// A number.
    Number {
        /// The number, or the lower end of a range.
        value: Decimal,
        /// The upper end of a range.
        to: Option<Decimal>,
        /// Its unit; none of a bare number.
        unit: Option<Unit>,
    },
    /// What fills up to the whole.
    Rest,
    /// What is added until something is reached: a pH, a thickness.
    Enough,
    /// `q.s.` and no more: for water the rest, for anything else as much as is needed.
    QuantumSatis,
    /// Something like an amount that is not understood, as it is written.
    NotRead(String),
}

impl Written {
    /// Whether an amount was read, in numbers or in words such as `q.s.`
    pub(super) const fn is_read(&self) -> bool {
        !matches!(self, Self::NotRead(_) | Self::Missing)
    }

    /// The number to go on with: of a range its middle.
    #[must_use]
    pub fn value(&self) -> Option<Decimal> {
        match self {
            Self::Number { value, to: None, .. } => Some(*value),
            Self::Number { value, to: Some(to), .. } => value.checked_add(*to)?.checked_div(Decimal::TWO),
            _ => None,
        }
    }
}

/// An amount in a line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Found {
    /// Where it begins and ends, in bytes.
    pub(super) span: (usize, usize),
    /// What is written there.
    pub(super) written: Written,
    /// Whether it stands in brackets.
    pub(super) in_brackets: bool,
}

/// How units are written, the longest first of those that begin alike. Common practice in three languages.
const UNITS: [(&str, Unit); 76] = {
    use Household::{Cup, Drop, Tablespoon, Teaspoon};
    use MassUnit::{Gram, Kilogram, Milligram, Ounce, Pound};
    use Unit::{Household as H, Mass as M, Parts, Percent, Volume as V};
    use VolumeUnit::{FluidOunceUk, FluidOunceUs, Litre, Millilitre};
    [
        ("% w/w", Percent),
        ("% (w/w)", Percent),
        ("%", Percent),
        ("percent", Percent),
        ("per cent", Percent),
        ("prozent", Percent),
        ("pour cent", Percent),
        ("us fl oz", V(FluidOunceUs)),
        ("uk fl oz", V(FluidOunceUk)),
        ("fl. oz.", V(FluidOunceUs)),
        ("fl. oz", V(FluidOunceUs)),
        ("fl oz", V(FluidOunceUs)),
        ("floz", V(FluidOunceUs)),
        ("fluid ounces", V(FluidOunceUs)),
        ("fluid ounce", V(FluidOunceUs)),
        ("milligrams", M(Milligram)),
        ("milligramm", M(Milligram)),
        ("mg", M(Milligram)),
        ("kilograms", M(Kilogram)),
        ("kilogramm", M(Kilogram)),
        ("kilogram", M(Kilogram)),
        ("kilos", M(Kilogram)),
        ("kilo", M(Kilogram)),
        ("kg", M(Kilogram)),
        ("grammes", M(Gram)),
        ("gramme", M(Gram)),
        ("gramm", M(Gram)),
        ("grams", M(Gram)),
        ("gram", M(Gram)),
        ("gms", M(Gram)),
        ("gm", M(Gram)),
        ("gr", M(Gram)),
        ("g", M(Gram)),
        ("ounces", M(Ounce)),
        ("ounce", M(Ounce)),
        ("onces", M(Ounce)),
        ("unzen", M(Ounce)),
        ("oz", M(Ounce)),
        ("pounds", M(Pound)),
        ("pound", M(Pound)),
        ("lbs", M(Pound)),
        ("lb", M(Pound)),
        ("millilitres", V(Millilitre)),
        ("milliliters", V(Millilitre)),
        ("milliliter", V(Millilitre)),
        ("ml", V(Millilitre)),
        ("cc", V(Millilitre)),
        ("litres", V(Litre)),
        ("litre", V(Litre)),
        ("liter", V(Litre)),
        ("l", V(Litre)),
        ("teaspoons", H(Teaspoon)),
        ("teaspoon", H(Teaspoon)),
        ("tsps", H(Teaspoon)),
        ("tsp", H(Teaspoon)),
        ("teelöffel", H(Teaspoon)),
        ("tl", H(Teaspoon)),
        ("c. à c", H(Teaspoon)),
        ("cuillères à café", H(Teaspoon)),
        ("cuillère à café", H(Teaspoon)),
        ("tablespoons", H(Tablespoon)),
        ("tablespoon", H(Tablespoon)),
        ("tbsp", H(Tablespoon)),
        ("esslöffel", H(Tablespoon)),
        ("el", H(Tablespoon)),
        ("c. à s", H(Tablespoon)),
        ("cups", H(Cup)),
        ("cup", H(Cup)),
        ("tassen", H(Cup)),
        ("tasse", H(Cup)),
        ("drops", H(Drop)),
        ("drop", H(Drop)),
        ("tropfen", H(Drop)),
        ("tr", H(Drop)),
        ("gouttes", H(Drop)),
        ("parts", Parts),
    ]
};
const MORE_UNITS: [(&str, Unit); 10] = {
    use Household::{Drop, Pinch};
    use Unit::{Household as H, Parts};
    [
        ("goutte", H(Drop)),
        ("gtt", H(Drop)),
        ("pinches", H(Pinch)),
        ("pinch", H(Pinch)),
        ("prise", H(Pinch)),
        ("pincée", H(Pinch)),
        ("part", Parts),
        ("teile", Parts),
        ("teil", Parts),
        ("parties", Parts),
    ]
};

/// Words behind a number that say that it is none of an amount.
const NO_AMOUNT: [&str; 17] = [
    "°", "º", "c", "f", "min", "mins", "minutes", "minute", "minuten", "hours", "hour", "h", "stunden", "heures",
    "rpm", "days", "x",
];

/// Words that say that what stands before them fills up to the whole, each with a number behind it.
const UP_TO: [&str; 13] = [
    "q.s. to", "q.s. ad", "q.s to", "qs to", "qs ad", "q.s.p.", "q.s.p", "qsp", "qs", "q.s.", "up to", "ad", "jusqu'à",
];
/// Words for the rest, without a number.
const REST: [&str; 14] = [
    "the balance",
    "balance",
    "the remainder",
    "remainder",
    "the rest",
    "rest",
    "le reste",
    "reste",
    "complément",
    "q.s.p.",
    "qsp",
    "auffüllen",
    "der rest",
    "to make 100",
];
/// Words by which as much goes in as is needed.
const ENOUGH: [&str; 19] = [
    "q.s. to ph",
    "qs to ph",
    "q.s. ph",
    "qs ph",
    "to adjust ph",
    "to adjust the ph",
    "to ph",
    "for ph",
    "as needed",
    "as required",
    "if needed",
    "nach bedarf",
    "bei bedarf",
    "bis ph",
    "zum einstellen",
    "au besoin",
    "si besoin",
    "pour ajuster le ph",
    "to taste",
];
const QUANTUM_SATIS: [&str; 5] = ["q.s.", "q. s.", "q.s", "qs", "quantum satis"];

/// Everything in a text that may be an amount, in the order in which it stands there.
pub(super) fn amounts_in(text: &str, mark: DecimalMark) -> Vec<Found> {
    if let Some(found) = words_for_an_amount(text) {
        return vec![found];
    }
    let mut found = Vec::new();
    let letters: Vec<(usize, char)> = text.char_indices().collect();
    let mut at = 0;
    while at < letters.len() {
        if !begins_a_number(&letters, at) {
            at += 1;
            continue;
        }
        let number = number_at(&letters, at);
        if let Some(amount) = amount_of(text, &letters, at, number.end, mark) {
            found.push(amount);
        }
        // Groups of a thousand parted by a space may be one number, or the end of a name and a number.
        if let Some(end) = group_behind(&letters, at, number.end)
            && let Some(amount) = amount_of(text, &letters, at, end, mark)
        {
            found.push(amount);
        }
        at = number.end.max(at + 1);
    }
    found
}

/// A text that is an amount and nothing else: a cell of a table.
pub(super) fn amount_alone(text: &str, mark: DecimalMark) -> Written {
    let text = text.trim();
    if text.is_empty() || text.chars().all(|letter| matches!(letter, '-' | '–' | '—' | '/' | '.')) {
        return Written::Missing;
    }
    let whole = |found: &&Found| {
        text.get(..found.span.0).is_some_and(is_only_separators)
            && text.get(found.span.1..).is_some_and(is_only_separators)
    };
    let found = amounts_in(text, mark);
    found.iter().rev().find(whole).map_or_else(|| Written::NotRead(text.to_owned()), |found| found.written.clone())
}

/// A unit that stands alone in a cell.
pub(super) fn unit_alone(text: &str) -> Option<Unit> {
    let text = text.trim().trim_matches(['(', ')', '[', ']']).trim().to_lowercase();
    let (unit, length) = unit_at(&text)?;
    text.get(length..).is_some_and(is_only_separators).then_some(unit)
}

pub(super) fn is_only_separators(text: &str) -> bool {
    text.chars().all(|letter| !letter.is_alphanumeric() && letter != '%')
}

fn is_fraction(letter: char) -> Option<(i64, i64)> {
    Some(match letter {
        '½' => (1, 2),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '⅛' => (1, 8),
        _ => return None,
    })
}

fn letter_at(letters: &[(usize, char)], at: usize) -> Option<char> {
    letters.get(at).map(|(_, letter)| *letter)
}

fn is_digit_at(letters: &[(usize, char)], at: usize) -> bool {
    letter_at(letters, at).is_some_and(|letter| letter.is_ascii_digit())
}

/// Whether a number of its own begins here: not inside a name such as `PEG-40` or `E415`.
fn begins_a_number(letters: &[(usize, char)], at: usize) -> bool {
    let Some(letter) = letter_at(letters, at) else { return false };
    let is_number = letter.is_ascii_digit()
        || is_fraction(letter).is_some()
        || (matches!(letter, '.' | ',') && is_digit_at(letters, at + 1));
    if !is_number {
        return false;
    }
    let before = |back: usize| at.checked_sub(back).and_then(|at| letter_at(letters, at));
    match before(1) {
        None => true,
        Some(sign)
            if sign.is_whitespace()
                || matches!(
                    sign,
                    '(' | '[' | '{' | ':' | '|' | '=' | '~' | '≈' | '*' | '>' | ';' | '.' | '±' | '<'
                ) =>
        {
            // The end of a sentence, or of leading dots, but no fraction of another number.
            sign != '.' || !before(2).is_some_and(|letter| letter.is_ascii_digit())
        }
        Some('-' | '–' | '—' | '+') => before(2).is_none_or(char::is_whitespace),
        Some(',') => before(2).is_some_and(|letter| !letter.is_ascii_digit()),
        Some(_) => false,
    }
}

struct Number {
    end: usize,
}

/// Where the number ends that begins here.
fn number_at(letters: &[(usize, char)], at: usize) -> Number {
    let mut end = at;
    while letter_at(letters, end)
        .is_some_and(|letter| letter.is_ascii_digit() || matches!(letter, '.' | ',' | '\'' | '’'))
    {
        end += 1;
    }
    while end > at && letter_at(letters, end - 1).is_some_and(|letter| matches!(letter, '.' | ',' | '\'' | '’')) {
        end -= 1;
    }
    if letter_at(letters, end) == Some('/') && is_digit_at(letters, end + 1) {
        end += 1;
        while is_digit_at(letters, end) {
            end += 1;
        }
        return Number { end };
    }
    // A fraction behind a whole number, or alone.
    let fraction = if letter_at(letters, end) == Some(' ') && end > at { end + 1 } else { end };
    if letter_at(letters, fraction).and_then(is_fraction).is_some() {
        return Number { end: fraction + 1 };
    }
    if fraction > end && is_digit_at(letters, fraction) {
        let mut slash = fraction;
        while is_digit_at(letters, slash) {
            slash += 1;
        }
        if letter_at(letters, slash) == Some('/') && is_digit_at(letters, slash + 1) {
            let mut last = slash + 1;
            while is_digit_at(letters, last) {
                last += 1;
            }
            return Number { end: last };
        }
    }
    Number { end }
}

/// The end of the groups of three digits that follow with a space between.
fn group_behind(letters: &[(usize, char)], at: usize, end: usize) -> Option<usize> {
    let plain = (at..end).all(|at| is_digit_at(letters, at)) && end - at <= 3;
    let mut last = end;
    while plain
        && letter_at(letters, last) == Some(' ')
        && (1..=3).all(|next| is_digit_at(letters, last + next))
        && !is_digit_at(letters, last + 4)
    {
        last += 4;
    }
    if last == end {
        return None;
    }
    if matches!(letter_at(letters, last), Some('.' | ',')) && is_digit_at(letters, last + 1) {
        last += 1;
        while is_digit_at(letters, last) {
            last += 1;
        }
    }
    Some(last)
}

/// The amount whose number stands between two places; `None` where what follows says that it is none.
fn amount_of(text: &str, letters: &[(usize, char)], at: usize, end: usize, mark: DecimalMark) -> Option<Found> {
    let byte = |at: usize| letters.get(at).map_or(text.len(), |(byte, _)| *byte);
    let start = byte(at);
    let mut stop = byte(end);
    let first = value_of(text.get(start..stop)?, mark);
    let mut to = None;
    if let Some((value, last)) = range_behind(text, letters, end, mark) {
        to = Some(value);
        stop = byte(last);
    }
    let rest = text.get(stop..)?;
    let gap = rest.len() - rest.trim_start().len();
    let lower = rest.trim_start().to_lowercase();
    let mut unit = None;
    if let Some((found, length)) = unit_at(&lower) {
        unit = Some(found);
        // Lower case may be longer or shorter than what is written; the letters are as many.
        let count = lower.get(..length)?.chars().count();
        let written: usize = rest.trim_start().chars().take(count).map(char::len_utf8).sum();
        stop += gap + written;
    } else {
        let word: String =
            lower.chars().take_while(|letter| letter.is_alphabetic() || matches!(letter, '°' | 'º')).collect();
        let is_temperature = word.starts_with(['°', 'º']);
        if is_temperature || NO_AMOUNT.contains(&word.as_str()) {
            return None;
        }
        // Part of a name: `2-phenoxyethanol`, `200:1`, `3rd`.
        let mut behind = rest.chars();
        match behind.next() {
            Some(letter) if letter.is_alphanumeric() || letter == '°' => return None,
            Some('-' | '–' | ':' | '/' | ',' | '\'') if behind.next().is_some_and(char::is_alphanumeric) => {
                return None;
            }
            _ => {}
        }
    }
    let written = match (first, to) {
        (Some(value), None) => Written::Number { value, to: None, unit },
        (Some(value), Some(Some(to))) => Written::Number { value, to: Some(to), unit },
        _ => Written::NotRead(text.get(start..stop)?.to_owned()),
    };
    let in_brackets = text.get(..start)?.trim_end().ends_with(['(', '[']);
    Some(Found { span: (start, stop), written, in_brackets })
}

/// The number at the other end of a range, and where it ends; `Some(None)` for one that is not understood.
fn range_behind(
    text: &str,
    letters: &[(usize, char)],
    end: usize,
    mark: DecimalMark,
) -> Option<(Option<Decimal>, usize)> {
    let mut at = end;
    while letter_at(letters, at).is_some_and(char::is_whitespace) {
        at += 1;
    }
    let spaced = at > end;
    let byte = |at: usize| letters.get(at).map_or(text.len(), |(byte, _)| *byte);
    let rest = text.get(byte(at)..)?.to_lowercase();
    if matches!(letter_at(letters, at), Some('-' | '–' | '—')) {
        at += 1;
        let space_behind = letter_at(letters, at).is_some_and(char::is_whitespace);
        if spaced != space_behind {
            return None;
        }
    } else if let Some(word) = ["to ", "bis ", "à "].into_iter().find(|word| spaced && rest.starts_with(word)) {
        at += word.chars().count() - 1;
    } else {
        return None;
    }
    while letter_at(letters, at).is_some_and(char::is_whitespace) {
        at += 1;
    }
    if !is_digit_at(letters, at) {
        return None;
    }
    let last = number_at(letters, at).end;
    Some((value_of(text.get(byte(at)..byte(last))?, mark), last))
}

/// The value of a number, a fraction, or a whole number with a fraction.
fn value_of(text: &str, mark: DecimalMark) -> Option<Decimal> {
    let part = |over: i64, under: i64| Decimal::from(over).checked_div(Decimal::from(under));
    if let Some(sign) = text.chars().last()
        && let Some((over, under)) = is_fraction(sign)
    {
        let whole = text.strip_suffix(sign)?.trim();
        let whole = if whole.is_empty() { Decimal::ZERO } else { value_of(whole, mark)? };
        return whole.checked_add(part(over, under)?);
    }
    if let Some((over, under)) = text.split_once('/') {
        let (whole, over) = over.rsplit_once(' ').unwrap_or(("0", over));
        let whole: i64 = whole.parse().ok()?;
        return Decimal::from(whole).checked_add(part(over.parse().ok()?, under.parse().ok()?)?);
    }
    match read(text, mark) {
        Ok(Typed::Bare(value)) if value >= Decimal::ZERO => Some(value),
        _ => None,
    }
}

/// The unit at the start of a lower-case text, with its length.
fn unit_at(lower: &str) -> Option<(Unit, usize)> {
    UNITS.iter().chain(&MORE_UNITS).find_map(|(word, unit)| {
        let rest = lower.strip_prefix(word)?;
        let ends = rest.chars().next().is_none_or(|letter| !letter.is_alphanumeric()) && !rest.starts_with('-');
        let dot = usize::from(rest.starts_with('.') && !matches!(unit, Unit::Percent));
        ends.then_some((*unit, word.len() + dot))
    })
}

/// An amount in words: the rest, as much as is needed, or a measure of the kitchen without a number.
fn words_for_an_amount(text: &str) -> Option<Found> {
    // A lower case of the same length in bytes: only what is ASCII is folded, and the words are.
    let lower = text.to_ascii_lowercase();
    let found = |start: usize, end: usize, written| {
        Some(Found { span: (start, end), written, in_brackets: text.get(..start)?.trim_end().ends_with('(') })
    };
    for phrase in ENOUGH {
        if let Some(at) = word_in(&lower, phrase) {
            return found(at, text.len(), Written::Enough);
        }
    }
    for phrase in UP_TO.iter().chain(&["to", "auf", "jusqu’à"]) {
        let Some(at) = word_in(&lower, phrase) else { continue };
        let behind = lower.get(at + phrase.len()..)?;
        let number = behind.trim_start();
        // `5 to 8` is a range.
        let is_behind_a_number =
            lower.get(..at)?.trim_end().ends_with(|letter: char| letter.is_ascii_digit() || letter == '%');
        let Some(rest) = number.strip_prefix("100").filter(|_| !is_behind_a_number) else { continue };
        let rest = rest.trim_start();
        let rest = ["%", "g", "ml"].into_iter().find_map(|unit| rest.strip_prefix(unit)).unwrap_or(rest);
        if rest.starts_with(|letter: char| letter.is_alphanumeric() || matches!(letter, '.' | ',')) {
            continue;
        }
        return found(at, text.len() - rest.len(), Written::Rest);
    }
    for (phrases, written) in [(&REST[..], Written::Rest), (&QUANTUM_SATIS[..], Written::QuantumSatis)] {
        for phrase in phrases {
            let Some(at) = word_in(&lower, phrase) else { continue };
            let end = at + phrase.len();
            let opens = lower.get(..at).is_some_and(is_only_separators);
            let closes = lower.get(end..).is_some_and(is_only_separators);
            if opens != closes {
                return found(at, end, written);
            }
        }
    }
    // `A pinch of salt`.
    let (first, rest) = lower.split_once(' ')?;
    if matches!(first, "a" | "an" | "one" | "ein" | "eine" | "einen" | "une" | "un") {
        let (unit, length) = unit_at(rest.trim_start()).filter(|(unit, _)| matches!(unit, Unit::Household(_)))?;
        let end = text.len() - rest.trim_start().len() + length;
        return found(0, end, Written::Number { value: Decimal::ONE, to: None, unit: Some(unit) });
    }
    None
}

/// Where a phrase stands in a text as words of their own.
fn word_in(lower: &str, phrase: &str) -> Option<usize> {
    let is_part = |letter: Option<char>| letter.is_some_and(char::is_alphanumeric);
    lower.match_indices(phrase).map(|(at, _)| at).find(|at| {
        let before = lower.get(..*at).and_then(|text| text.chars().last());
        let after = lower.get(at + phrase.len()..).and_then(|text| text.chars().next());
        !is_part(before) && !is_part(after)
    })
}
