//! Lines of a table taken apart.

use super::amount::{Written, amount_alone};
use stillroom_core::number::DecimalMark;

/// What parts the cells of a text, where it is a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Parted {
    Tab,
    Bar,
    Semicolon,
    Comma,
}

/// What parts the cells of a text; `None` where it is none of a table.
pub(super) fn parted(lines: &[&str], mark: DecimalMark) -> Option<Parted> {
    let lines: Vec<&str> = lines.iter().copied().filter(|line| line.chars().any(char::is_alphanumeric)).collect();
    if lines.is_empty() {
        return None;
    }
    // Titles and headings stand between the rows of many tables.
    let most = |parting: Parted, least: usize| {
        lines.iter().filter(|line| cells(line, parting).len() > least).count() * 2 >= lines.len()
    };
    if most(Parted::Tab, 1) {
        return Some(Parted::Tab);
    }
    if most(Parted::Bar, 1) {
        return Some(Parted::Bar);
    }
    if most(Parted::Semicolon, 1) {
        return Some(Parted::Semicolon);
    }
    // Commas part sentences and decimals as well: only where the text is plainly a table.
    let is_head = lines.iter().take(6).any(|line| super::columns::is_head(&cells(line, Parted::Comma), mark));
    let is_quoted = lines.iter().any(|line| line.contains("\",") || line.contains(",\""));
    let is_plain = lines.len() > 1 && lines.iter().all(|line| is_name_and_number(&cells(line, Parted::Comma), mark));
    (most(Parted::Comma, 1) && (is_head || is_quoted || is_plain)).then_some(Parted::Comma)
}

/// Whether cells are a name without a number in it and one that is nothing else: `Wasser,61,5` may be two of them or one.
fn is_name_and_number(cells: &[String], mark: DecimalMark) -> bool {
    let [name, amount] = cells else { return false };
    let is_amount = matches!(amount_alone(amount, mark), Written::Number { to: None, .. });
    is_amount && name.chars().any(char::is_alphabetic) && !name.chars().any(|letter| letter.is_ascii_digit())
}

/// The lines of a text, each with its number, counted from 1. A cell in quotes may hold line ends: its lines are one.
pub(super) fn rows(text: &str) -> Vec<(usize, String)> {
    let lines: Vec<&str> =
        text.split('\n').flat_map(|line| line.strip_suffix('\r').unwrap_or(line).split('\r')).collect();
    let mut rows = Vec::new();
    let mut at = 0;
    while let Some(line) = lines.get(at) {
        let closes = opens_a_quote(line)
            .then(|| {
                (at + 1..lines.len().min(at + LONGEST_CELL))
                    .find(|last| closes_a_quote(lines.get(*last).copied().unwrap_or_default()))
            })
            .flatten();
        let last = closes.unwrap_or(at);
        rows.push((at + 1, lines.get(at..=last).unwrap_or_default().join("\n")));
        at = last + 1;
    }
    rows
}

/// Most lines that a cell has.
const LONGEST_CELL: usize = 8;

/// Whether a cell begins with a quote that the line does not end.
fn opens_a_quote(line: &str) -> bool {
    let is_open = line.matches('"').count() % 2 == 1;
    let begins_a_cell = line
        .match_indices('"')
        .any(|(at, _)| line.get(..at).is_some_and(|before| before.is_empty() || before.ends_with(['\t', ';', ','])));
    is_open && begins_a_cell
}

/// Whether a line ends a quote that was open before it, and a cell with it.
fn closes_a_quote(line: &str) -> bool {
    let ends_a_cell = line.match_indices('"').any(|(at, _)| {
        line.get(at + 1..).is_some_and(|after| after.trim_end().is_empty() || after.starts_with(['\t', ';', ',']))
    });
    line.matches('"').count() % 2 == 1 && ends_a_cell
}

/// The cells of a line.
pub(super) fn cells(line: &str, parting: Parted) -> Vec<String> {
    match parting {
        Parted::Tab => line.split('\t').map(|cell| unquoted(cell.trim())).collect(),
        Parted::Bar => {
            let inside = line.trim();
            let inside = inside.strip_prefix('|').unwrap_or(inside);
            let inside = inside.strip_suffix('|').unwrap_or(inside);
            inside.split('|').map(|cell| cell.trim().to_owned()).collect()
        }
        Parted::Semicolon => split_outside_quotes(line, ';'),
        Parted::Comma => split_outside_quotes(line, ','),
    }
}

fn unquoted(cell: &str) -> String {
    let inside = cell.strip_prefix('"').and_then(|cell| cell.strip_suffix('"'));
    inside.map_or_else(|| cell.to_owned(), |inside| inside.replace("\"\"", "\"").trim().to_owned())
}

fn split_outside_quotes(line: &str, sign: char) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut quoted = false;
    for letter in line.chars() {
        if letter == '"' {
            quoted = !quoted;
        }
        if letter == sign && !quoted {
            cells.push(String::new());
        } else if let Some(cell) = cells.last_mut() {
            cell.push(letter);
        }
    }
    cells.iter().map(|cell| unquoted(cell.trim())).collect()
}

/// A line as it is read: without signs nobody sees, and every space a plain one. Tabs stay.
pub(super) fn cleaned(line: &str) -> String {
    let seen = line.chars().filter(|letter| !matches!(letter, '\u{200b}'..='\u{200f}' | '\u{2060}' | '\u{feff}' | '\u{ad}' | '\u{202a}'..='\u{202e}'));
    let plain =
        seen.map(|letter| if letter != '\t' && (letter.is_whitespace() || letter.is_control()) { ' ' } else { letter });
    plain.collect::<String>().trim_matches(' ').to_owned()
}

/// A line without the sign or number of a list before it.
pub(super) fn without_bullet(line: &str) -> &str {
    let mut rest = line.trim();
    loop {
        let before = rest;
        for sign in [
            "[ ]", "[x]", "[X]", "[]", "☐", "☑", "☒", "✓", "✔", "•", "‣", "◦", "▪", "●", "·", "*", "-", "–", "—", "+",
            ">", "o ",
        ] {
            if let Some(inside) = rest.strip_prefix(sign) {
                // `-5` and `**bold**` are none of a list; a bullet has a space behind it, most of the time.
                let is_sign =
                    inside.starts_with([' ', '\t']) || sign == "o " || !matches!(sign, "*" | "-" | "–" | "—" | "+");
                if is_sign && inside.chars().any(char::is_alphanumeric) {
                    rest = inside.trim_start();
                }
            }
        }
        let digits = rest.chars().take_while(char::is_ascii_digit).count();
        if (1..=2).contains(&digits)
            && let Some(inside) = rest.get(digits..).and_then(|inside| inside.strip_prefix(['.', ')']))
            && inside.starts_with(' ')
            && inside.chars().any(char::is_alphabetic)
        {
            rest = inside.trim_start();
        }
        if rest == before {
            return rest;
        }
    }
}
