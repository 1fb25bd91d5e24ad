//! What each column of a table holds: by the words of its head, or else by what stands in it.

use super::amount::{Unit, Written, amount_alone, unit_alone};
use super::column_words::{column_of, has_currency, speaks_for_itself, unit_in_head};
use super::heading::{Opens, heading_of, is_total};
use rust_decimal::Decimal;
use std::collections::BTreeMap;
use stillroom_catalogue::folded;
use stillroom_core::number::DecimalMark;

/// Most columns that are told apart; what stands beyond them goes along as a note.
pub const MOST_COLUMNS: usize = 24;
/// Within how many rows the head of a table stands. Titles, dates and names stand before it.
const HEAD_WITHIN: usize = 6;
/// By how much a column of percents may miss a hundred.
const HUNDRED_WITHIN: Decimal = Decimal::from_parts(1, 0, 0, false, 0);
/// By how much a column of shares may miss one.
const ONE_WITHIN: Decimal = Decimal::from_parts(1, 0, 0, false, 2);

/// What a column of a table holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Column {
    /// What the material is called.
    Name,
    /// Its INCI name, or another.
    Inci,
    /// The phase it goes into.
    Phase,
    /// Percent of the whole.
    Percent,
    /// Grams.
    Grams,
    /// An amount whose unit stands beside it, in the head or nowhere.
    Amount,
    /// The unit of an amount.
    Unit,
    /// What goes along with its line.
    Note,
    /// A price or a cost. No formula holds one.
    Price,
    /// What is not needed: a running number, the amounts of another batch.
    LeftOut,
    /// Nothing.
    Empty,
}

impl Column {
    /// Every kind that can be chosen, in the order a list shows them.
    pub const ALL: [Self; 10] = [
        Self::Name,
        Self::Percent,
        Self::Grams,
        Self::Amount,
        Self::Unit,
        Self::Phase,
        Self::Inci,
        Self::Note,
        Self::Price,
        Self::LeftOut,
    ];

    /// Its stable word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Name => "name",
            Self::Inci => "inci",
            Self::Phase => "phase",
            Self::Percent => "percent",
            Self::Grams => "grams",
            Self::Amount => "amount",
            Self::Unit => "unit",
            Self::Note => "note",
            Self::Price => "price",
            Self::LeftOut => "left-out",
            Self::Empty => "empty",
        }
    }

    /// The kind with that word.
    #[must_use]
    pub fn with_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|column| column.word() == word)
    }

    pub(super) const fn is_a_number(self) -> bool {
        matches!(self, Self::Percent | Self::Grams | Self::Amount)
    }
}

/// A column as it was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ColumnFound {
    /// What stands above it; empty where nothing does.
    pub heading: String,
    /// The first of what stands in it.
    pub sample: String,
    /// What it holds.
    pub holds: Column,
    /// Unit of its numbers, where the head says one.
    pub(super) unit: Option<Unit>,
    /// Whether a note out of it needs its heading to be understood.
    pub(super) says_heading: bool,
}

/// The columns of a table.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Sheet {
    /// Which of the lines is its head.
    pub(super) head: Option<usize>,
    pub(super) columns: Vec<ColumnFound>,
    /// Whether its head is in words that are known.
    pub(super) is_worded: bool,
    /// Whether any of it is known by more than the look of its cells.
    pub(super) is_certain: bool,
}

/// Finds out what the columns of a table hold. `rows` are its lines with more than one cell filled, each with its place among
/// all lines; `chosen` is what a maker says of a column.
pub(super) fn columns_in(rows: &[(usize, Vec<String>)], mark: DecimalMark, chosen: &BTreeMap<usize, Column>) -> Sheet {
    let width = rows.iter().map(|(_, cells)| cells.len()).max().unwrap_or(0).min(MOST_COLUMNS);
    let worded = rows.iter().take(HEAD_WITHIN).position(|(_, cells)| is_head(cells, mark));
    let head = worded.or_else(|| has_strange_head(rows, width, mark).then_some(0));
    let body: Vec<&Vec<String>> = rows
        .iter()
        .skip(head.map_or(0, |head| head + 1))
        .map(|(_, cells)| cells)
        .filter(|cells| !cells.iter().any(|cell| is_total(cell)))
        .collect();
    let heads = head.and_then(|head| rows.get(head)).map(|(_, cells)| cells);
    let in_column = |place: usize| -> Vec<&str> {
        body.iter().filter_map(|cells| cells.get(place)).map(String::as_str).filter(|cell| !cell.is_empty()).collect()
    };
    let mut columns: Vec<ColumnFound> = Vec::new();
    let mut looks: Vec<Look> = Vec::new();
    let mut by_word: Vec<Option<Column>> = Vec::new();
    for place in 0..width {
        let cells = in_column(place);
        let heading = heads.and_then(|heads| heads.get(place)).cloned().unwrap_or_default();
        let word = worded.and_then(|_| column_of(&heading, mark));
        looks.push(Look::of(&cells, mark));
        by_word.push(word);
        columns.push(ColumnFound {
            sample: cells.first().copied().unwrap_or_default().to_owned(),
            holds: Column::Empty,
            unit: unit_in_head(&heading),
            says_heading: !(heading.is_empty() || (word == Some(Column::Note) && speaks_for_itself(&heading))),
            heading,
        });
    }
    let holds = settled(&by_word, &looks, worded.is_some(), head.is_some());
    for ((place, column), holds) in columns.iter_mut().enumerate().zip(holds) {
        column.holds = holds;
        if holds == Column::Percent && looks.get(place).is_some_and(Look::is_shares_of_one) {
            column.unit = Some(Unit::Parts);
        }
    }
    make_room_for(&mut columns, chosen);
    Sheet {
        head: head.and_then(|head| rows.get(head)).map(|(line, _)| *line),
        columns,
        is_worded: worded.is_some(),
        is_certain: worded.is_some() || !chosen.is_empty(),
    }
}

/// What a maker says of a column counts, and takes from the others what only one can be.
fn make_room_for(columns: &mut [ColumnFound], chosen: &BTreeMap<usize, Column>) {
    for (place, holds) in chosen {
        let Some(was) = columns.get(*place).map(|column| column.holds) else { continue };
        for (other, column) in columns.iter_mut().enumerate().filter(|(other, _)| !chosen.contains_key(other)) {
            if other == *place {
                continue;
            }
            match (*holds, column.holds) {
                // Only one number counts, and it is the one that was chosen.
                (one, other) if one.is_a_number() && other.is_a_number() => column.holds = Column::LeftOut,
                (Column::Name, Column::Name) => column.holds = if was == Column::Inci { was } else { Column::Note },
                (Column::Phase, Column::Phase) => column.holds = Column::Note,
                (Column::Unit, Column::Unit) => column.holds = Column::LeftOut,
                _ => {}
            }
        }
        if let Some(column) = columns.get_mut(*place) {
            column.holds = *holds;
        }
    }
}

/// What stands in a column.
#[derive(Debug, Clone, Default)]
struct Look {
    filled: usize,
    numbers: Vec<Option<Decimal>>,
    with_percent: usize,
    amounts: usize,
    units: usize,
    prices: usize,
    phases: usize,
}

impl Look {
    fn of(cells: &[&str], mark: DecimalMark) -> Self {
        let mut look = Self { filled: cells.len(), ..Self::default() };
        for cell in cells {
            let amount = amount_alone(cell, mark);
            look.with_percent += usize::from(matches!(amount, Written::Number { unit: Some(Unit::Percent), .. }));
            look.amounts += usize::from(amount.is_read());
            look.units += usize::from(unit_alone(cell).is_some());
            look.prices += usize::from(has_currency(cell));
            look.phases += usize::from(is_phase_letter(cell) || is_phase_name(cell, mark));
            look.numbers.push(match amount {
                Written::Number { value, to: None, .. } => Some(value),
                _ => None,
            });
        }
        look
    }

    const fn mostly(&self, count: usize) -> bool {
        count * 10 >= self.filled * 6 && count > 0
    }

    fn is_number(&self) -> bool {
        self.mostly(self.amounts)
    }

    fn sum(&self) -> Decimal {
        self.numbers
            .iter()
            .flatten()
            .try_fold(Decimal::ZERO, |sum, value| sum.checked_add(*value))
            .unwrap_or(Decimal::MAX)
    }

    fn makes(&self, whole: Decimal, within: Decimal) -> bool {
        self.sum().checked_sub(whole).is_some_and(|off| off.abs() <= within)
    }

    /// Shares of one, as a spreadsheet keeps percents.
    fn is_shares_of_one(&self) -> bool {
        self.with_percent == 0 && self.numbers.len() > 2 && self.makes(Decimal::ONE, ONE_WITHIN)
    }

    /// 1, 2, 3 and so on.
    fn counts_up(&self) -> bool {
        self.numbers.len() > 1 && (1_u32..).zip(&self.numbers).all(|(next, value)| *value == Some(Decimal::from(next)))
    }

    /// Whether another column holds the same amounts in another measure.
    fn goes_with(&self, other: &Self) -> bool {
        let (mine, theirs) = (self.sum(), other.sum());
        let fits = |(mine_one, theirs_one): (&Option<Decimal>, &Option<Decimal>)| {
            let (Some(one), Some(two)) = (mine_one, theirs_one) else { return true };
            let (Some(left), Some(right)) = (one.checked_mul(theirs), two.checked_mul(mine)) else { return false };
            let off = left.checked_sub(right).map(|off| off.abs());
            let within = left.max(right).checked_div(Decimal::from(20));
            off.zip(within).is_some_and(|(off, within)| off <= within)
        };
        self.numbers.len() == other.numbers.len() && self.numbers.iter().zip(&other.numbers).all(fits)
    }
}

/// What each column holds: by its word where it has one, by its look otherwise.
fn settled(by_word: &[Option<Column>], looks: &[Look], is_worded: bool, has_head: bool) -> Vec<Column> {
    let mut holds: Vec<Option<Column>> = Vec::new();
    for (word, look) in by_word.iter().zip(looks) {
        let seen = holds.clone();
        let is_taken = |column: Column| seen.contains(&Some(column));
        holds.push(match word {
            // Nothing, or only a heading.
            _ if look.filled == 0 => Some(Column::Empty),
            Some(Column::Name) if is_taken(Column::Name) => Some(Column::Inci),
            Some(one @ (Column::Percent | Column::Phase)) if is_taken(*one) => Some(Column::Note),
            Some(one @ (Column::Grams | Column::Amount | Column::Unit)) if is_taken(*one) => Some(Column::LeftOut),
            Some(word) => Some(*word),
            None if look.mostly(look.prices) => Some(Column::Price),
            None => None,
        });
    }
    let has = |holds: &[Option<Column>], wanted: Column| holds.contains(&Some(wanted));
    let has_number = |holds: &[Option<Column>]| holds.iter().flatten().any(|column| column.is_a_number());
    // A limit is an amount where there is no other.
    if is_worded && !has_number(&holds) {
        let limit = by_word.iter().zip(looks).position(|(word, look)| {
            *word == Some(Column::Note) && look.with_percent + look.amounts > 0 && look.is_number()
        });
        if let Some(place) = limit.and_then(|place| holds.get_mut(place)) {
            *place = Some(Column::Percent);
        }
    }
    let open = |holds: &[Option<Column>]| -> Vec<usize> {
        holds.iter().enumerate().filter(|(_, column)| column.is_none()).map(|(place, _)| place).collect()
    };
    let look = |place: usize| looks.get(place).cloned().unwrap_or_default();
    let mut numbers = Vec::new();
    for place in open(&holds) {
        let seen = look(place);
        let found = if seen.mostly(seen.units) && !has(&holds, Column::Unit) {
            Column::Unit
        } else if seen.is_number() {
            numbers.push(place);
            continue;
        } else if seen.mostly(seen.phases) && !has(&holds, Column::Phase) {
            Column::Phase
        } else if !has(&holds, Column::Name) {
            Column::Name
        } else if !has_head && !has(&holds, Column::Inci) {
            Column::Inci
        } else {
            Column::Note
        };
        if let Some(column) = holds.get_mut(place) {
            *column = Some(found);
        }
    }
    let known_number = has_number(&holds);
    let mut as_numbers = BTreeMap::new();
    if is_worded && known_number {
        // What a column that nobody knows the word of counts goes along with its heading.
        as_numbers.extend(numbers.iter().map(|place| (*place, Column::Note)));
    } else {
        as_numbers.extend(settled_numbers(&numbers, &look));
    }
    for (place, found) in as_numbers {
        if let Some(column) = holds.get_mut(place) {
            *column = Some(found);
        }
    }
    holds.into_iter().map(|column| column.unwrap_or(Column::Note)).collect()
}

/// Which columns of bare numbers are the amounts.
fn settled_numbers(places: &[usize], look: &dyn Fn(usize) -> Look) -> BTreeMap<usize, Column> {
    let mut found = BTreeMap::new();
    let mut rest: Vec<usize> = places.to_vec();
    if rest.len() > 1
        && let Some(at) = rest.iter().position(|place| look(*place).counts_up())
    {
        found.insert(rest.remove(at), Column::LeftOut);
    }
    let percent = rest.iter().copied().find(|place| look(*place).mostly(look(*place).with_percent)).or_else(|| {
        (rest.len() > 1)
            .then(|| rest.iter().copied().find(|place| look(*place).makes(Decimal::ONE_HUNDRED, HUNDRED_WITHIN)))?
    });
    let mut grams_are_given = false;
    for place in rest.iter().copied() {
        found.insert(
            place,
            match percent {
                Some(percent) if percent == place => Column::Percent,
                Some(percent) if !grams_are_given && look(place).goes_with(&look(percent)) => {
                    grams_are_given = true;
                    Column::Grams
                }
                None if rest.first() == Some(&place) => Column::Amount,
                _ => Column::LeftOut,
            },
        );
    }
    found
}

/// Whether a row holds what columns are called, and no amount but that of a batch.
pub(super) fn is_head(cells: &[String], mark: DecimalMark) -> bool {
    let filled: Vec<&String> = cells.iter().filter(|cell| !cell.is_empty()).collect();
    let words: Vec<Option<Column>> = filled.iter().map(|cell| column_of(cell, mark)).collect();
    let known = words.iter().flatten().count();
    let has_name = words.iter().any(|word| matches!(word, Some(Column::Name | Column::Inci)));
    let is_amount = |cell: &String| amount_alone(cell, mark).is_read();
    let has_amount = filled.iter().zip(&words).any(|(cell, word)| is_amount(cell) && !(has_name && word.is_some()));
    known >= 2 && known * 3 >= filled.len() * 2 && !has_amount
}

/// Whether the first row is a head in words nobody knows: no number in it, though numbers stand under it in every row.
fn has_strange_head(rows: &[(usize, Vec<String>)], width: usize, mark: DecimalMark) -> bool {
    let Some(((_, first), rest)) = rows.split_first() else { return false };
    let no_digit = first.iter().all(|cell| !cell.chars().any(|letter| letter.is_ascii_digit()));
    let mut numbers = 0;
    for place in 0..width {
        let cells: Vec<&str> = rest
            .iter()
            .filter_map(|(_, cells)| cells.get(place))
            .map(String::as_str)
            .filter(|cell| !cell.is_empty())
            .collect();
        let look = Look::of(&cells, mark);
        if look.amounts == look.filled && look.filled > 2 {
            numbers += 1;
            let above = first.get(place).map(String::as_str).unwrap_or_default();
            if !matches!(amount_alone(above, mark), Written::NotRead(_)) {
                return false;
            }
        }
    }
    numbers > 0 && no_digit
}

fn is_phase_letter(cell: &str) -> bool {
    let mut letters = cell.trim_end_matches(['.', ')', ':']).chars();
    letters.next().is_some_and(|letter| matches!(letter, 'A'..='H'))
        && letters.all(|letter| letter.is_ascii_digit())
        && cell.len() <= 3
}

/// Whether a cell names a phase in words. `Aqueous extract` does not.
pub(super) fn is_phase_name(cell: &str, mark: DecimalMark) -> bool {
    let words = folded(cell);
    words.contains("phase") && heading_of(cell, mark).is_some_and(|heading| heading.opens == Opens::Phase)
}
