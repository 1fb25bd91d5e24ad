//! A recipe read line by line: what a line is, where it stands in the text, and the row of a table it may be.

use super::amount::{Unit, Written, amount_alone, amounts_in, unit_alone};
use super::cells::{self, Parted, without_bullet};
use super::column_words::column_of;
use super::columns::{Column, ColumnFound, Sheet, columns_in, is_phase_name};
use super::heading::{Opens, bare, heading_of, is_rule, is_total};
use super::mention::{Habit, habit_of, readings_of, without_brackets};
use super::{Mentioned, Reading, What};
use rust_decimal::Decimal;
use std::collections::BTreeMap;
use stillroom_core::Grams;
use stillroom_core::number::DecimalMark;
use stillroom_core::unit::MassUnit;

/// Reads lines in their order, and remembers what those before said of those that follow.
pub(super) struct Reader {
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
    /// A reader of these lines, where they are a table with its columns.
    pub(super) fn new(lines: &[String], mark: DecimalMark, table: Option<(Parted, Sheet)>) -> Self {
        Self {
            mark,
            habit: habit_of(lines, mark),
            letters_before: table.is_none() && letters_before_names(lines),
            table,
            section: Opens::Materials,
            phase: None,
            seen: 0,
            grams: Vec::new(),
        }
    }

    /// The columns of the table that was read; none where it was none.
    pub(super) fn into_columns(self) -> Vec<ColumnFound> {
        self.table.map(|(_, sheet)| sheet.columns).unwrap_or_default()
    }

    /// What the next line says, which stands at a place among all.
    pub(super) fn read_line(&mut self, place: usize, line: &str) -> Vec<What> {
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
    pub(super) fn grams_beside(&self) -> Option<Grams> {
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
        let readings = if amount == Written::Missing && !columns.iter().any(|column| column.holds.is_a_number()) {
            readings_of(&cells.join(" "), self.mark, self.habit)
        } else {
            vec![Reading { name, also, amount, remark, until: 0 }]
        };
        What::Material(Mentioned { readings, phase: self.phase.clone(), may_be_title: false })
    }

    /// Whether a row without a name holds nothing but numbers, under lines that have some.
    fn sums_up(&self, cells: &[String]) -> bool {
        self.seen > 2 && cells.iter().filter(|cell| !cell.is_empty()).all(|cell| self.is_amount(cell))
    }

    fn is_amount(&self, cell: &str) -> bool {
        amount_alone(cell, self.mark).is_read()
    }

    /// What the cells of a row hold: by the columns of the table, or by the row itself where it does not fit them.
    fn columns_of(&self, cells: &[String]) -> Vec<ColumnFound> {
        let Some((_, sheet)) = &self.table else { return Vec::new() };
        let held = |wanted: fn(Column) -> bool| {
            let places = sheet.columns.iter().zip(cells).filter(move |(column, _)| wanted(column.holds));
            places.map(|(_, cell)| cell).find(|cell| !cell.is_empty())
        };
        let is_amount = |cell: &String| self.is_amount(cell);
        let name_is_none = held(|column| column == Column::Name).is_none_or(is_amount);
        let amount_is_elsewhere =
            held(Column::is_a_number).is_none_or(|cell| !is_amount(cell)) && cells.iter().any(is_amount);
        if sheet.is_certain || !(name_is_none || amount_is_elsewhere) {
            return sheet.columns.clone();
        }
        columns_in(&[(0, cells.to_vec())], self.mark, &BTreeMap::new()).columns
    }
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
