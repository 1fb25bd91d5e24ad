//! Recipes as people write and send them, read line by line: a text with a material to a line, a list, a table, a few columns of
//! a spreadsheet.
//!
//! **Owns** what a line says: heading, material, amount, remark. Nothing is dropped: every line with something in it comes back
//! as one of them. **Must not know** what becomes of it. What cannot be told by the text alone, [`matching`] tells by the
//! catalogue.

mod amount;
mod cells;
mod column_words;
mod columns;
pub mod file;
pub mod heading;
pub mod matching;
pub mod shares;

use amount::{Found, amount_alone, amounts_in, is_only_separators, unit_alone};
pub use amount::{Household, Unit, Written};
use cells::{Parted, cleaned, parted, rows, without_bullet};
use column_words::column_of;
pub use columns::{Column, ColumnFound, MOST_COLUMNS};
use columns::{Sheet, columns_in, is_phase_name};
pub use heading::Heading;
use heading::{Opens, bare, heading_of, is_rule, is_total};
use rust_decimal::Decimal;
use std::collections::BTreeMap;
use stillroom_core::Grams;
use stillroom_core::number::DecimalMark;
use stillroom_core::unit::MassUnit;

/// Longest text read, in bytes.
pub const LONGEST_TEXT: usize = 100_000;
/// Most lines read. No formula has more than some dozens.
pub const MOST_LINES: usize = 400;
/// Most readings of a line that are weighed against each other.
const MOST_READINGS: usize = 6;

/// Why a text is not read at all.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum RecipeError {
    /// It is longer than is read.
    #[error("{bytes} bytes")]
    TooLong {
        /// Its length.
        bytes: usize,
    },
    /// It has more lines than are read.
    #[error("{lines} lines")]
    TooManyLines {
        /// How many.
        lines: usize,
    },
}

impl RecipeError {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::TooLong { .. } => "recipe.too-long",
            Self::TooManyLines { .. } => "recipe.too-many-lines",
        }
    }
}

/// A line of a recipe, or a part of one that names several materials.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// Its line in the text, counted from 1.
    pub line: usize,
    /// As it is written.
    pub raw: String,
    /// What it says.
    pub what: What,
}

/// What a line says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum What {
    /// What the recipe is called, with what it makes.
    Title {
        /// The name.
        name: String,
        /// The mass it makes, where it says one.
        size: Option<Grams>,
    },
    /// How much it makes, and no name.
    Size(Grams),
    /// The name of a part.
    Heading(Heading),
    /// The head of a table.
    Head,
    /// Signs that part.
    Rule,
    /// A sum.
    Total,
    /// A sentence, or what is not understood.
    Note,
    /// A step of the method.
    Step,
    /// A material.
    Material(Mentioned),
}

/// A material as a line mentions it: the ways to read the line, the likeliest first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mentioned {
    /// The ways to read it; never empty.
    pub readings: Vec<Reading>,
    /// Letter or name of the phase, where a column or the line itself says one.
    pub phase: Option<String>,
    /// Whether it is the first line and may be the name of the recipe.
    pub may_be_title: bool,
}

/// One way to read a line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reading {
    /// Name of the material.
    pub name: String,
    /// Other names of it: what stands in brackets, or in the column for INCI names.
    pub also: Vec<String>,
    /// How much of it.
    pub amount: Written,
    /// What else the line says.
    pub remark: String,
    /// Where its amount ends: readings that end alike differ in where the name does.
    pub(super) until: usize,
}

/// A recipe as its lines say it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Recipe {
    /// Every line with something in it, in order.
    pub entries: Vec<Entry>,
    /// The columns of the table it is; none where it is none.
    pub columns: Vec<ColumnFound>,
    /// Sum of a column of grams that stands beside one of percents.
    pub grams_beside: Option<Grams>,
}

/// How most lines of a text write their amounts: what decides where one line may be read in two ways.
#[derive(Debug, Clone, Copy, Default)]
struct Habit {
    leading: bool,
    bare: bool,
}

/// Reads a recipe.
///
/// # Errors
/// `recipe.too-long`, `recipe.too-many-lines`.
pub fn read(text: &str, mark: DecimalMark) -> Result<Recipe, RecipeError> {
    read_columns(text, mark, &BTreeMap::new())
}

/// Reads a recipe, where a maker says what some columns of the table hold.
///
/// # Errors
/// `recipe.too-long`, `recipe.too-many-lines`.
pub fn read_columns(text: &str, mark: DecimalMark, chosen: &BTreeMap<usize, Column>) -> Result<Recipe, RecipeError> {
    if text.len() > LONGEST_TEXT {
        return Err(RecipeError::TooLong { bytes: text.len() });
    }
    let raw = rows(text);
    let lines = raw.last().map_or(0, |(number, last)| number + last.matches('\n').count());
    if lines > MOST_LINES {
        return Err(RecipeError::TooManyLines { lines });
    }
    let clean: Vec<String> = raw.iter().map(|(_, line)| cleaned(line)).collect();
    let table = parted(&clean.iter().map(String::as_str).collect::<Vec<_>>(), mark);
    let sheet = table.map(|parting| {
        let parts = clean.iter().enumerate().filter(|(_, line)| !is_rule(line));
        let cells = parts.map(|(place, line)| (place, cells::cells(line, parting)));
        let rows: Vec<(usize, Vec<String>)> =
            cells.filter(|(_, cells)| cells.iter().filter(|cell| !cell.is_empty()).count() > 1).collect();
        columns_in(&rows, mark, chosen)
    });
    let letters_before = table.is_none() && letters_before_names(&clean);
    let habit = habit_of(&clean, mark);
    let mut reader = Reader {
        mark,
        habit,
        table: table.zip(sheet),
        letters_before,
        section: Opens::Materials,
        phase: None,
        seen: 0,
        grams: Vec::new(),
    };
    let mut recipe = Recipe::default();
    for (place, ((number, raw), line)) in raw.iter().zip(&clean).enumerate() {
        if line.trim().is_empty() {
            // What nobody sees is no line, but anything else is.
            continue;
        }
        for what in reader.read_line(place, line) {
            recipe.entries.push(Entry { line: *number, raw: raw.trim().to_owned(), what });
        }
    }
    recipe.grams_beside = reader.grams_beside();
    recipe.columns = reader.table.map(|(_, sheet)| sheet.columns).unwrap_or_default();
    Ok(recipe)
}

struct Reader {
    mark: DecimalMark,
    habit: Habit,
    table: Option<(Parted, Sheet)>,
    letters_before: bool,
    section: Opens,
    /// The phase that the last row of the table named.
    phase: Option<String>,
    /// How many lines were read.
    seen: usize,
    /// What stands in the column of grams, line by line.
    grams: Vec<Option<Decimal>>,
}

impl Reader {
    fn read_line(&mut self, place: usize, line: &str) -> Vec<What> {
        self.seen += 1;
        if is_rule(line) {
            return vec![What::Rule];
        }
        let Some((parting, sheet)) = &self.table else { return self.read_free(line) };
        if sheet.head == Some(place) {
            return vec![What::Head];
        }
        let cells = cells::cells(line, *parting);
        let filled = cells.iter().filter(|cell| !cell.is_empty()).count();
        if filled > 1 {
            return vec![self.read_row(&cells)];
        }
        let only: String = cells.concat();
        // What stands above a head is what the table is called, when it was made, for whom.
        let is_above = sheet.is_worded && sheet.head.is_some_and(|head| place < head);
        if is_above && self.seen > 1 {
            let read = self.read_free(&only);
            return read
                .into_iter()
                .map(|what| if matches!(what, What::Material(_)) { What::Note } else { what })
                .collect();
        }
        // A number alone under the others is their sum.
        let is_sum = self.seen > 2 && matches!(amount_alone(&only, self.mark), Written::Number { to: None, .. });
        if is_sum && cells.first().is_none_or(String::is_empty) { vec![What::Total] } else { self.read_free(&only) }
    }

    /// What the whole weighs, where a column of grams stands beside one of percents and no line lacks its own.
    fn grams_beside(&self) -> Option<Grams> {
        let (_, sheet) = self.table.as_ref()?;
        let has = |wanted| sheet.columns.iter().any(|column| column.holds == wanted);
        let sum = self.grams.iter().try_fold(Decimal::ZERO, |sum, grams| sum.checked_add((*grams)?))?;
        (has(Column::Percent) && has(Column::Grams)).then(|| Grams::new(sum).ok())?.filter(|sum| !sum.is_zero())
    }

    fn read_free(&mut self, line: &str) -> Vec<What> {
        if let Some(heading) = heading_of(without_bullet(line), self.mark) {
            self.section = heading.opens;
            self.phase = None;
            return vec![What::Heading(heading)];
        }
        if self.section == Opens::Method {
            return vec![What::Step];
        }
        if is_total(line) {
            return vec![What::Total];
        }
        if self.is_head(line) {
            return vec![What::Head];
        }
        if line.starts_with('#') {
            let name = bare(line);
            return vec![if self.seen == 1 { What::Title { name, size: None } } else { What::Note }];
        }
        let text = without_bullet(line).replace("**", " ").replace("__", " ");
        let text = text.trim();
        if let Some(size) = size_of(text, self.mark) {
            return vec![What::Size(size)];
        }
        let (phase, text) = if self.letters_before { letter_before(text) } else { (None, text) };
        if is_sentence(text) {
            return vec![What::Note];
        }
        if let Some(parts) = several(text, self.mark) {
            return parts.into_iter().map(|part| self.mention(&part, None)).collect();
        }
        vec![self.mention(text, phase)]
    }

    fn mention(&self, text: &str, phase: Option<String>) -> What {
        let readings = readings_of(text, self.mark, self.habit);
        What::Material(Mentioned { readings, phase, may_be_title: self.seen == 1 })
    }

    /// Whether a line without cells holds nothing but what columns are called.
    fn is_head(&self, line: &str) -> bool {
        let words: Vec<&str> = line.split_whitespace().collect();
        words.len() > 1 && self.seen <= 6 && words.iter().all(|word| column_of(word, self.mark).is_some())
    }

    fn read_row(&mut self, cells: &[String]) -> What {
        let columns = self.columns_of(cells);
        let of = |wanted: Column| {
            let places = columns.iter().enumerate().filter(move |(_, column)| column.holds == wanted);
            places
                .filter_map(|(place, column)| Some((cells.get(place)?.as_str(), column)))
                .filter(|(cell, _)| !cell.is_empty())
                .collect::<Vec<_>>()
        };
        let first = |wanted: Column| of(wanted).first().copied();
        let name = first(Column::Name).or_else(|| first(Column::Inci)).map(|(cell, _)| cell).unwrap_or_default();
        if let Some((phase, _)) = first(Column::Phase).filter(|(phase, _)| !is_total(phase)) {
            self.phase = Some(phase.to_owned());
        }
        if is_total(name) || (name.is_empty() && self.sums_up(cells)) || cells.iter().any(|cell| is_total(cell)) {
            return What::Total;
        }
        if name.is_empty() {
            return What::Note;
        }
        if self.section == Opens::Method {
            return What::Step;
        }
        if is_phase_name(name, self.mark)
            && let Some(heading) = heading_of(name, self.mark)
        {
            self.phase = None;
            return What::Heading(heading);
        }
        let read = |cell: Option<(&str, &ColumnFound)>, unit: Option<Unit>| {
            let (cell, column) = cell?;
            match amount_alone(cell, self.mark) {
                Written::Number { value, to, unit: None } => {
                    Some(Written::Number { value, to, unit: unit.or(column.unit) })
                }
                Written::Missing => None,
                other => Some(other),
            }
        };
        let unit = first(Column::Unit).and_then(|(cell, _)| unit_alone(cell));
        let in_percent = |column: &ColumnFound| column.unit.filter(|unit| *unit == Unit::Parts).or(Some(Unit::Percent));
        let grams = read(first(Column::Grams), Some(Unit::Mass(MassUnit::Gram)));
        let amount = read(first(Column::Percent), first(Column::Percent).and_then(|(_, column)| in_percent(column)))
            .or_else(|| read(first(Column::Amount), unit))
            .or_else(|| grams.clone());
        self.grams.push(match grams {
            Some(Written::Number { value, to: None, unit: Some(Unit::Mass(MassUnit::Gram)) }) => Some(value),
            _ => None,
        });
        let (name, brackets) = without_brackets(name);
        let mut also: Vec<String> =
            of(Column::Inci).into_iter().map(|(cell, _)| cell.to_owned()).filter(|inci| *inci != name).collect();
        also.extend(brackets);
        let notes = of(Column::Note).into_iter().map(|(cell, column)| {
            if column.says_heading { format!("{}: {cell}", column.heading) } else { cell.to_owned() }
        });
        let beyond = cells.iter().skip(columns.len()).filter(|cell| !cell.is_empty()).cloned();
        let remark = notes.chain(beyond).collect::<Vec<_>>().join("; ");
        let amount = amount.unwrap_or(Written::Missing);
        // A name may hold its own amount where no column does.
        let mut readings = vec![Reading {
            name: name.clone(),
            also: also.clone(),
            amount: amount.clone(),
            remark: remark.clone(),
            until: 0,
        }];
        if amount == Written::Missing && !columns.iter().any(|column| column.holds.is_a_number()) {
            readings = readings_of(&cells.join(" "), self.mark, self.habit);
        }
        What::Material(Mentioned { readings, phase: self.phase.clone(), may_be_title: false })
    }

    /// Whether a row without a name holds nothing but numbers, under lines that have some.
    fn sums_up(&self, cells: &[String]) -> bool {
        let is_amount =
            |cell: &String| !matches!(amount_alone(cell, self.mark), Written::NotRead(_) | Written::Missing);
        self.seen > 2 && cells.iter().filter(|cell| !cell.is_empty()).all(is_amount)
    }

    /// What the cells of a row hold: by the columns of the table, or by the row itself where it does not fit them.
    fn columns_of(&self, cells: &[String]) -> Vec<ColumnFound> {
        let Some((_, sheet)) = &self.table else { return Vec::new() };
        let held = |wanted: fn(Column) -> bool| {
            let places = sheet.columns.iter().zip(cells).filter(move |(column, _)| wanted(column.holds));
            places.map(|(_, cell)| cell).find(|cell| !cell.is_empty())
        };
        let is_amount =
            |cell: &String| !matches!(amount_alone(cell, self.mark), Written::NotRead(_) | Written::Missing);
        let name_is_none = held(|column| column == Column::Name).is_none_or(is_amount);
        let amount_is_elsewhere =
            held(Column::is_a_number).is_none_or(|cell| !is_amount(cell)) && cells.iter().any(is_amount);
        if sheet.is_certain || !(name_is_none || amount_is_elsewhere) {
            return sheet.columns.clone();
        }
        columns_in(&[(0, cells.to_vec())], self.mark, &BTreeMap::new()).columns
    }
}

/// How most lines that can be read in one way only write their amounts.
fn habit_of(lines: &[String], mark: DecimalMark) -> Habit {
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

/// Whether lines begin with the letter of their phase: most of them, with two letters at least.
fn letters_before_names(lines: &[String]) -> bool {
    let lines: Vec<&String> = lines.iter().filter(|line| !line.trim().is_empty()).collect();
    let letters: Vec<String> = lines.iter().filter_map(|line| letter_before(without_bullet(line)).0).collect();
    letters.len() > 2 && letters.len() * 10 >= lines.len() * 6
}

fn letter_before(text: &str) -> (Option<String>, &str) {
    let mut letters = text.char_indices();
    let Some((_, first @ 'A'..='H')) = letters.next() else { return (None, text) };
    let mut name = String::from(first);
    for (at, letter) in letters {
        if letter.is_ascii_digit() && name.len() == 1 {
            name.push(letter);
        } else if matches!(letter, ' ' | '\t' | '.' | ')' | ':') {
            let rest = text.get(at..).unwrap_or_default().trim_start_matches([' ', '\t', '.', ')', ':', '-', '–']);
            return if rest.chars().any(char::is_alphabetic) { (Some(name), rest) } else { (None, text) };
        } else {
            return (None, text);
        }
    }
    (None, text)
}

/// How much a line says the recipe makes, where it says nothing else.
fn size_of(text: &str, mark: DecimalMark) -> Option<Grams> {
    let lower = text.to_lowercase();
    let opens = [
        "for ",
        "makes ",
        "yield",
        "batch size",
        "batch:",
        "batch ",
        "für ",
        "ergibt ",
        "pour ",
        "total batch",
        "ansatz",
    ];
    if !opens.iter().any(|word| lower.starts_with(word)) {
        return None;
    }
    let found = amounts_in(text, mark);
    found.iter().find_map(|found| mass_of(&found.written))
}

fn mass_of(written: &Written) -> Option<Grams> {
    match written {
        Written::Number { value, to: None, unit: Some(Unit::Mass(unit)) } => unit.to_grams(*value),
        _ => None,
    }
}

/// Whether a line is a sentence about what to do, and no material: long, and ended like one.
fn is_sentence(text: &str) -> bool {
    let words = text.split_whitespace().count();
    (words >= 6 && text.ends_with(['.', '!', '?'])) || words > 16
}

/// The parts of a line that names several materials, with a comma between.
fn several(text: &str, mark: DecimalMark) -> Option<Vec<String>> {
    let (before, listed) = text.split_once(':').unwrap_or(("", text));
    let is_list = heading_of(before, mark).is_some_and(|heading| heading.opens == Opens::Materials);
    let listed = if before.is_empty() || is_list { listed } else { text };
    let parts: Vec<&str> = listed.split(", ").map(str::trim).filter(|part| !part.is_empty()).collect();
    let named = |part: &&str| part.chars().any(char::is_alphabetic);
    if parts.len() < 2 || !parts.iter().all(named) {
        return None;
    }
    let amounts: Vec<usize> = parts.iter().map(|part| amounts_in(part, mark).len()).collect();
    let one_each = amounts.iter().all(|count| *count > 0);
    let no_amount = amounts.iter().all(|count| *count == 0) && (is_list || parts.len() >= 4);
    (one_each || no_amount).then(|| parts.into_iter().map(str::to_owned).collect())
}

/// The ways to read a line that names a material, the likeliest first.
fn readings_of(text: &str, mark: DecimalMark, habit: Habit) -> Vec<Reading> {
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
fn without_brackets(name: &str) -> (String, Vec<String>) {
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

/// A number as a recipe writes it, for tests and pages.
impl Written {
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
