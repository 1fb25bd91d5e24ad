//! Lines of a table taken apart.

/// What parts the cells of a text, where it is a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Parted {
    Tab,
    Bar,
    Semicolon,
    Comma,
}

/// What parts the cells of a text; `None` where it is none of a table.
pub(super) fn parted(lines: &[&str]) -> Option<Parted> {
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
    let head = lines.first().map(|line| cells(line, Parted::Comma)).unwrap_or_default();
    let is_head = head.len() > 1 && head.iter().all(|cell| super::heading::column_of(cell).is_some());
    let is_quoted = lines.iter().any(|line| line.contains("\",") || line.contains(",\""));
    (most(Parted::Comma, 1) && (is_head || is_quoted)).then_some(Parted::Comma)
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
