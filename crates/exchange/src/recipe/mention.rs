//! A line that names a material: the ways to part its name from its amount and from what else it says.

use super::Reading;
use super::amount::{Found, Unit, Written, amounts_in, is_only_separators};
use super::cells::without_bullet;
use stillroom_core::number::DecimalMark;
use stillroom_core::unit::MassUnit;

/// Most readings of a line that are weighed against each other.
const MOST_READINGS: usize = 6;

/// How most lines of a text write their amounts: what decides where one line may be read in two ways.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Habit {
    leading: bool,
    bare: bool,
}

/// How most lines that can be read in one way only write their amounts.
pub(super) fn habit_of(lines: &[String], mark: DecimalMark) -> Habit {
    let (mut leading, mut trailing, mut bare, mut with_unit) = (0, 0, 0, 0);
    for line in lines {
        let text = without_bullet(line);
        let found = amounts_in(text, mark);
        let [one] = found.as_slice() else { continue };
        if text.get(..one.span.0).is_some_and(is_only_separators) {
            leading += 1;
        } else {
            trailing += 1;
        }
        match one.written {
            Written::Number { unit: None, .. } => bare += 1,
            Written::Number { .. } => with_unit += 1,
            _ => {}
        }
    }
    Habit { leading: leading > trailing, bare: bare > with_unit }
}

/// The ways to read a line that names a material, the likeliest first.
pub(super) fn readings_of(text: &str, mark: DecimalMark, habit: Habit) -> Vec<Reading> {
    let found = amounts_in(text, mark);
    if let Some(reading) = read_pair(text, &found) {
        return vec![reading];
    }
    let mut ranked: Vec<(i32, Reading)> = Vec::new();
    for (place, one) in found.iter().enumerate() {
        let before = text.get(..one.span.0).unwrap_or_default();
        let after = text.get(one.span.1..).unwrap_or_default();
        let leads = is_only_separators(before) || is_about(before);
        let trails = is_only_separators(after);
        let is_bare = matches!(one.written, Written::Number { unit: None, .. });
        let mut rank = i32::try_from(place).unwrap_or(0);
        rank += if leads && habit.leading { 40 } else { 0 };
        rank += if trails && !habit.leading { 40 } else { 0 };
        rank += if leads || trails { 20 } else { 0 };
        rank += if is_bare == habit.bare { 15 } else { 0 };
        rank += if is_bare && !habit.bare { -10 } else { 0 };
        rank += if one.in_brackets { 5 } else { 0 };
        ranked.push((rank, split(before, one, after, leads)));
    }
    ranked.sort_by_key(|(rank, _)| -rank);
    let mut readings: Vec<Reading> =
        ranked.into_iter().map(|(_, reading)| reading).filter(|reading| !reading.name.is_empty()).collect();
    readings.truncate(MOST_READINGS);
    // The whole line may be a name, digits and all.
    if readings.is_empty() || found.iter().all(|found| matches!(found.written, Written::Number { unit: None, .. })) {
        let (name, remark) = without_remark(text);
        let (name, also) = without_brackets(&tidy(&name));
        let name = if name.is_empty() { tidy(text) } else { name };
        readings.push(Reading { name, also, amount: Written::Missing, remark, until: 0 });
    }
    readings
}

/// A line with the same amount twice, the second in brackets: `70 % (140 g)`.
fn read_pair(text: &str, found: &[Found]) -> Option<Reading> {
    let [first, second] = found else { return None };
    let between = text.get(first.span.1..second.span.0)?;
    // The number of a name has no unit: `Polysorbate 60 (3 %)`.
    if !second.in_brackets
        || !is_only_separators(between)
        || matches!(first.written, Written::Number { unit: None, .. })
    {
        return None;
    }
    let rank = |written: &Written| match written {
        Written::Number { unit: Some(Unit::Percent), .. } => 3,
        Written::Number { unit: Some(Unit::Mass(MassUnit::Gram)), .. } => 2,
        Written::Number { unit: Some(_), .. } => 1,
        _ => 0,
    };
    let amount = if rank(&second.written) > rank(&first.written) { &second.written } else { &first.written };
    let before = text.get(..first.span.0)?;
    let after = text.get(second.span.1..)?;
    let leads = is_only_separators(before);
    let whole = Found { span: (first.span.0, second.span.1), written: amount.clone(), in_brackets: false };
    Some(split(before, &whole, after, leads)).filter(|reading| !reading.name.is_empty())
}

/// A line parted at its amount: what stands before or behind is the name, and the rest a remark.
fn split(before: &str, found: &Found, after: &str, leads: bool) -> Reading {
    let mut amount = found.written.clone();
    let (name, remark) = if leads {
        let (name, remark) = without_remark(after);
        (without_of(&tidy(&name)), remark)
    } else {
        let said = tidy_remark(after);
        // A word straight behind a bare number is a unit nobody knows: the number counts for nothing then.
        let straight = after.trim_start().starts_with(char::is_alphabetic);
        if straight && matches!(amount, Written::Number { unit: None, .. }) {
            amount = Written::NotRead(after.trim().to_owned());
        }
        (tidy(before.trim_end_matches(['(', '[', ' '])), said)
    };
    let name = without_about(&name).to_owned();
    let (name, also) = without_brackets(&name);
    Reading { name, also, amount, remark, until: found.span.1 }
}

/// A text without signs, dots and stars around it.
fn tidy(text: &str) -> String {
    let signs = |letter: char| {
        letter.is_whitespace()
            || matches!(
                letter,
                '-' | '–'
                    | '—'
                    | ':'
                    | ';'
                    | ','
                    | '.'
                    | '='
                    | '*'
                    | '_'
                    | '|'
                    | '~'
                    | '≈'
                    | '•'
                    | '…'
                    | '`'
                    | '"'
                    | '→'
                    | '>'
                    | '/'
                    | '#'
            )
    };
    let text = text
        .trim_end_matches(|letter: char| signs(letter) || matches!(letter, '(' | '['))
        .trim_start_matches(|letter: char| signs(letter) || matches!(letter, ')' | ']'));
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn tidy_remark(text: &str) -> String {
    let signs = |letter: char| !letter.is_alphanumeric() && !matches!(letter, '%' | '°');
    text.trim_matches(signs).split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Parts off what follows a sign for a remark.
fn without_remark(text: &str) -> (String, String) {
    let at = [" # ", " // ", " - ", " – ", " — ", " *"]
        .iter()
        .filter_map(|sign| {
            text.find(sign).filter(|at| text.get(..*at).is_some_and(|before| before.chars().any(char::is_alphabetic)))
        })
        .min();
    match at {
        Some(at) => (text.get(..at).unwrap_or(text).to_owned(), tidy_remark(text.get(at..).unwrap_or_default())),
        None => (text.to_owned(), String::new()),
    }
}

/// Whether a text says no more than that the number is about right.
fn is_about(text: &str) -> bool {
    let word = text.trim().trim_matches(['~', '≈', '.', ' ']).to_lowercase();
    word.is_empty() || ABOUT.contains(&word.as_str())
}

const ABOUT: [&str; 10] =
    ["approx", "approximately", "about", "ca", "circa", "etwa", "environ", "env", "around", "roughly"];

fn without_about(name: &str) -> &str {
    let Some((rest, last)) = name.rsplit_once(' ') else { return name };
    if is_about(last) { rest.trim_end() } else { name }
}

/// `of sea salt`, `d'huile d'olive`.
fn without_of(name: &str) -> String {
    for opens in ["of ", "de l'", "de la ", "du ", "des ", "de ", "d'", "d’", "von ", "vom "] {
        if let Some(rest) =
            name.get(..opens.len()).filter(|start| start.to_lowercase() == *opens).and_then(|_| name.get(opens.len()..))
        {
            return rest.trim().to_owned();
        }
    }
    name.to_owned()
}

/// A name without what stands in brackets, and that.
pub(super) fn without_brackets(name: &str) -> (String, Vec<String>) {
    let mut outside = String::new();
    let mut inside: Vec<String> = Vec::new();
    let mut open = String::new();
    let mut depth = 0_u32;
    for letter in name.chars() {
        match letter {
            '(' | '[' | '{' => {
                depth += 1;
                if depth > 1 {
                    open.push(letter);
                }
            }
            ')' | ']' | '}' if depth > 0 => {
                depth -= 1;
                if depth == 0 {
                    inside.push(std::mem::take(&mut open));
                } else {
                    open.push(letter);
                }
            }
            _ if depth > 0 => open.push(letter),
            _ => outside.push(letter),
        }
    }
    if !open.is_empty() {
        inside.push(open);
    }
    let inside: Vec<String> = inside.iter().map(|text| tidy(text)).filter(|text| !text.is_empty()).collect();
    let outside = tidy(&outside);
    if outside.is_empty() {
        (inside.first().cloned().unwrap_or_default(), inside.get(1..).unwrap_or_default().to_vec())
    } else {
        (outside, inside)
    }
}
