//! The maker's own materials as a table for a spreadsheet: written so that opening it runs nothing, read line by line
//! with a report, and never by halves.

use rust_decimal::Decimal;
use std::collections::HashMap;
use stillroom_core::number::{DecimalMark, NumberError, Typed, read, read_plain, write_between};
use stillroom_core::{Amount, Class, Density, Percent, PhaseKind};

/// Largest table read, in bytes.
pub const LARGEST_TABLE: usize = 2_000_000;
/// Most lines read. A bench has some dozens of materials of its own.
pub const MOST_LINES: usize = 2_000;
/// Most problems listed; the rest are counted.
pub const MOST_PROBLEMS: usize = 200;
/// Longest text of a cell that is taken, in characters.
const LONGEST_CELL: usize = 2_000;
/// Longest name, in characters.
const LONGEST_NAME: usize = 200;
/// Signs at which a spreadsheet begins to compute; some read their full-width forms the same.
const STARTS_A_FORMULA: [char; 8] = ['=', '+', '-', '@', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}'];

/// Whether a spreadsheet may take a cell for something to compute. What nobody sees before a sign does not hide it.
#[must_use]
pub fn begins_a_formula(cell: &str) -> bool {
    let unseen =
        |letter: char| letter.is_whitespace() || matches!(letter, '\u{200b}'..='\u{200f}' | '\u{2060}' | '\u{feff}');
    cell.starts_with(['\t', '\r', '\n']) || cell.trim_start_matches(unseen).starts_with(STARTS_A_FORMULA)
}

/// The columns, in the order they are written. They may come in any order and only `name` is needed.
pub const COLUMNS: [&str; 7] = ["name", "inci", "class", "phase", "density", "parts", "note"];

/// One material of a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MaterialRow {
    /// Line of the file it stood on; 0 in a row that is to be written.
    pub line: u64,
    /// Common name.
    pub name: String,
    /// INCI name of a simple material.
    pub inci: String,
    /// What it is.
    pub class: Class,
    /// Phase it usually goes into.
    pub phase: PhaseKind,
    /// Its density.
    pub density: Option<Density>,
    /// Parts of a composite by the name of the material; a simple material has none.
    pub parts: Vec<(Amount, String)>,
    /// What the maker notes about it.
    pub note: String,
}

/// A table that was read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Table<Row> {
    /// Its rows.
    pub rows: Vec<Row>,
    /// What is wrong, line by line, at most [`MOST_PROBLEMS`].
    pub problems: Vec<LineProblem>,
    /// How many more problems there are.
    pub more_problems: usize,
}

/// A table of materials.
pub type MaterialTable = Table<MaterialRow>;

impl<Row> Default for Table<Row> {
    fn default() -> Self {
        Self { rows: Vec::new(), problems: Vec::new(), more_problems: 0 }
    }
}

impl<Row> Table<Row> {
    /// Notes a problem.
    pub fn note(&mut self, line: u64, column: &'static str, problem: TableProblem) {
        if self.problems.len() < MOST_PROBLEMS {
            self.problems.push(LineProblem { line, column, problem });
        } else {
            self.more_problems += 1;
        }
    }
}

/// What is wrong with a line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LineProblem {
    /// Line of the file, counted from 1.
    pub line: u64,
    /// Column, by its name.
    pub column: &'static str,
    /// What is wrong.
    pub problem: TableProblem,
}

/// What can be wrong with a cell.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum TableProblem {
    /// A name is needed.
    #[error("no name")]
    NoName,
    /// Two lines have the same name.
    #[error("the name stands on line {first}, too")]
    NameTwice {
        /// Where it stands first.
        first: u64,
    },
    /// A text is longer than is taken.
    #[error("longer than {most} characters")]
    TooLong {
        /// Most characters.
        most: usize,
    },
    /// A cell begins like a formula of a spreadsheet.
    #[error("begins like a formula of a spreadsheet")]
    SpreadsheetFormula,
    /// The class is none that is known.
    #[error("`{text}` is no class")]
    UnknownClass {
        /// What the cell holds.
        text: String,
    },
    /// The phase is none that is known.
    #[error("`{text}` is no phase")]
    UnknownPhase {
        /// What the cell holds.
        text: String,
    },
    /// A number is not understood.
    #[error("{0}")]
    Number(NumberError),
    /// A part names no material.
    #[error("no material is called `{name}`")]
    UnknownMaterial {
        /// The name.
        name: String,
    },
    /// The parts do not make 100 %.
    #[error("the parts do not make 100 %")]
    PartsOutOfBalance,
    /// There are more cells than columns.
    #[error("more cells than columns")]
    TooManyCells,
    /// No currency is written in three letters.
    #[error("`{text}` is no currency")]
    UnknownCurrency {
        /// What the cell holds.
        text: String,
    },
    /// A price stands without a currency, or a shipping without a price.
    #[error("an amount without what it needs")]
    Incomplete,
}

impl TableProblem {
    /// Stable code of this problem.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoName => "table.no-name",
            Self::NameTwice { .. } => "table.name-twice",
            Self::TooLong { .. } => "table.too-long",
            Self::SpreadsheetFormula => "table.spreadsheet-formula",
            Self::UnknownClass { .. } => "table.unknown-class",
            Self::UnknownPhase { .. } => "table.unknown-phase",
            Self::Number(error) => error.code(),
            Self::UnknownMaterial { .. } => "table.unknown-material",
            Self::PartsOutOfBalance => "table.parts-out-of-balance",
            Self::TooManyCells => "table.too-many-cells",
            Self::UnknownCurrency { .. } => "table.unknown-currency",
            Self::Incomplete => "table.incomplete",
        }
    }
}

/// Why a file is no table at all.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum TableError {
    /// It is larger than is read.
    #[error("{bytes} bytes")]
    TooLarge {
        /// Its size.
        bytes: usize,
    },
    /// It is not written in UTF-8.
    #[error("not UTF-8 at line {line}")]
    NotUtf8 {
        /// Line at which reading stopped.
        line: u64,
    },
    /// It has no line with the names of the columns, or none is `name`.
    #[error("no column `name`")]
    NoNameColumn,
    /// It has more lines than are read.
    #[error("more than {most} lines")]
    TooManyLines {
        /// Most lines.
        most: usize,
    },
}

impl TableError {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::TooLarge { .. } => "table.too-large",
            Self::NotUtf8 { .. } => "table.not-utf8",
            Self::NoNameColumn => "table.no-name-column",
            Self::TooManyLines { .. } => "table.too-many-lines",
        }
    }
}

/// Reads a table of materials. Commas, semicolons or tabs may part its cells.
///
/// # Errors
/// `table.too-large`, `table.not-utf8`, `table.no-name-column`, `table.too-many-lines`. What is wrong with single lines
/// is in [`MaterialTable::problems`].
pub fn read_materials(bytes: &[u8], mark: DecimalMark) -> Result<MaterialTable, TableError> {
    let mut first_lines: HashMap<String, u64> = HashMap::new();
    read_rows(bytes, COLUMNS, &["name"], |line, cells, table| {
        let row = read_row(line, cells, mark, table);
        if !row.name.is_empty() {
            if let Some(&first) = first_lines.get(&row.name.to_lowercase()) {
                table.note(line, "name", TableProblem::NameTwice { first });
            } else {
                first_lines.insert(row.name.to_lowercase(), line);
            }
        }
        row
    })
}

/// Reads a table row by row: the cells of `columns`, in their order wherever they stand, one that is not there empty. It is
/// a table if one of the columns that name something is there; empty lines are passed over.
pub(crate) fn read_rows<Row, const N: usize>(
    bytes: &[u8],
    columns: [&str; N],
    naming: &[&str],
    mut read: impl FnMut(u64, [&str; N], &mut Table<Row>) -> Row,
) -> Result<Table<Row>, TableError> {
    let text = text_of(bytes)?;
    let mut reader = reader_of(text);
    // The text is UTF-8 and the reader flexible: what is left that could fail is no table.
    let head = reader.headers().map_err(|_| TableError::NoNameColumn)?.clone();
    let place = |column: &str| head.iter().position(|cell| cell.trim().eq_ignore_ascii_case(column));
    if naming.iter().all(|column| place(column).is_none()) {
        return Err(TableError::NoNameColumn);
    }
    let places = columns.map(place);
    let mut table = Table::default();
    let mut record = csv::StringRecord::new();
    let mut count = 0;
    while reader.read_record(&mut record).map_err(|_| TableError::NoNameColumn)? {
        count += 1;
        if count > MOST_LINES {
            return Err(TableError::TooManyLines { most: MOST_LINES });
        }
        if record.iter().all(|cell| cell.trim().is_empty()) {
            continue;
        }
        let line = line_of(text, &record);
        if record.len() > head.len() {
            table.note(line, "name", TableProblem::TooManyCells);
        }
        let cells = places.map(|place| place.and_then(|place| record.get(place)).unwrap_or_default());
        let row = read(line, cells, &mut table);
        table.rows.push(row);
    }
    Ok(table)
}

/// The text of a table, without the mark that some spreadsheets put first.
fn text_of(bytes: &[u8]) -> Result<&str, TableError> {
    if bytes.len() > LARGEST_TABLE {
        return Err(TableError::TooLarge { bytes: bytes.len() });
    }
    let text = core::str::from_utf8(bytes).map_err(|error| {
        let before = &bytes[..error.valid_up_to()];
        TableError::NotUtf8 { line: count_lines(before) }
    })?;
    Ok(text.strip_prefix('\u{feff}').unwrap_or(text))
}

/// Reads a table line by line, whichever of the three marks parts its cells.
fn reader_of(text: &str) -> csv::Reader<&[u8]> {
    csv::ReaderBuilder::new()
        .delimiter(delimiter_of(text))
        .flexible(true)
        .has_headers(true)
        .from_reader(text.as_bytes())
}

/// The line a record begins on. The reader places one that follows a line end of two signs, or an empty line, before it.
fn line_of(text: &str, record: &csv::StringRecord) -> u64 {
    let Some(position) = record.position() else { return 0 };
    let from = usize::try_from(position.byte()).unwrap_or(usize::MAX);
    let ends = text.as_bytes().get(from..).unwrap_or_default().iter().take_while(|byte| b"\r\n".contains(byte));
    position.line() + ends.map(|byte| u64::from(*byte == b'\n')).sum::<u64>()
}

/// Writes a table. Where the comma is the decimal mark, spreadsheets part cells by semicolons.
pub(crate) fn writer_for(mark: DecimalMark) -> csv::Writer<Vec<u8>> {
    let delimiter = if mark == DecimalMark::Comma { b';' } else { b',' };
    csv::WriterBuilder::new().delimiter(delimiter).terminator(csv::Terminator::CRLF).from_writer(Vec::new())
}

/// Whether a cell gets an apostrophe before it: a spreadsheet would compute, or it looks as if it had got one already.
fn needs_a_shield(cell: &str) -> bool {
    begins_a_formula(cell.trim_start_matches('\''))
}

/// A cell at which no spreadsheet begins to compute.
pub(crate) fn shielded(cell: &str) -> String {
    if needs_a_shield(cell) { format!("'{cell}") } else { cell.to_owned() }
}

/// What was written by [`shielded`]; `None` where a cell begins like a formula of a spreadsheet.
pub(crate) fn unshielded(cell: &str) -> Option<&str> {
    let cell = cell.trim();
    match cell.strip_prefix('\'').filter(|rest| needs_a_shield(rest)) {
        Some(rest) => Some(rest),
        None if begins_a_formula(cell) => None,
        None => Some(cell),
    }
}

fn count_lines(bytes: &[u8]) -> u64 {
    1 + bytes.iter().map(|byte| u64::from(*byte == b'\n')).sum::<u64>()
}

/// What parts the cells: of the three, the one that stands most often in the first line.
fn delimiter_of(text: &str) -> u8 {
    let head = text.lines().next().unwrap_or_default();
    let count = |delimiter: u8| head.bytes().filter(|byte| *byte == delimiter).count();
    [b',', b';', b'\t'].into_iter().rev().max_by_key(|delimiter| count(*delimiter)).unwrap_or(b',')
}

fn read_row(line: u64, cells: [&str; 7], mark: DecimalMark, table: &mut MaterialTable) -> MaterialRow {
    let [name, inci, class, phase, density, parts, note] = cells;
    let mut text = |column: &'static str, cell: &str, most: usize| {
        let cell = cell.trim();
        // What this table was written with a mark against formulas is read without it.
        let cell = unshielded(cell).unwrap_or_else(|| {
            table.note(line, column, TableProblem::SpreadsheetFormula);
            cell
        });
        if cell.chars().count() > most {
            table.note(line, column, TableProblem::TooLong { most });
        }
        cell.chars().take(most).collect::<String>()
    };
    let name = text("name", name, LONGEST_NAME);
    let inci = text("inci", inci, LONGEST_NAME);
    let note = text("note", note, LONGEST_CELL);
    let parts_text = text("parts", parts, LONGEST_CELL);
    if name.is_empty() {
        table.note(line, "name", TableProblem::NoName);
    }
    let class = match class.trim() {
        "" => Class::Other,
        word => class_of(word).unwrap_or_else(|| {
            table.note(line, "class", TableProblem::UnknownClass { text: word.chars().take(40).collect() });
            Class::Other
        }),
    };
    let phase = match phase.trim() {
        "" => PhaseKind::HeatedWater,
        word => phase_of(word).unwrap_or_else(|| {
            table.note(line, "phase", TableProblem::UnknownPhase { text: word.chars().take(40).collect() });
            PhaseKind::HeatedWater
        }),
    };
    let density = match density.trim() {
        "" => None,
        number => match read_plain(number, mark, Density::MINIMUM, Density::MAXIMUM) {
            Ok(value) => Density::new(value).ok(),
            Err(error) => {
                table.note(line, "density", TableProblem::Number(error));
                None
            }
        },
    };
    let parts = read_parts(line, &parts_text, mark, table);
    MaterialRow { line, name, inci, class, phase, density, parts, note }
}

/// Reads parts such as `65 % Glycerin, vegetable; q.s. Water, distilled`.
fn read_parts(line: u64, text: &str, mark: DecimalMark, table: &mut MaterialTable) -> Vec<(Amount, String)> {
    let mut parts = Vec::new();
    for part in text.split(';').map(str::trim).filter(|part| !part.is_empty()) {
        let (amount, name) = split_part(part);
        let amount = match read(amount, mark) {
            Ok(Typed::QuantumSatis) => Ok(Amount::QuantumSatis),
            Ok(Typed::Bare(value) | Typed::Percent(value)) => {
                if (Decimal::ZERO..=Decimal::ONE_HUNDRED).contains(&value) {
                    // A number from 0 to 100 is a percent.
                    Ok(Percent::new(value).map_or(Amount::QuantumSatis, Amount::Percent))
                } else {
                    let (minimum, maximum) = (Decimal::ZERO, Decimal::ONE_HUNDRED);
                    Err(NumberError::OutOfRange { value, minimum, maximum })
                }
            }
            Ok(_) => Err(NumberError::WrongUnit { unit: amount.to_owned() }),
            Err(error) => Err(error),
        };
        match amount {
            Ok(amount) => parts.push((amount, name.to_owned())),
            Err(error) => table.note(line, "parts", TableProblem::Number(error)),
        }
    }
    parts
}

/// Parts an amount from the name behind it.
fn split_part(part: &str) -> (&str, &str) {
    if let Some(at) = part.find('%') {
        return (part[..=at].trim(), part[at + 1..].trim());
    }
    let at = part.find(char::is_whitespace).unwrap_or(part.len());
    (part[..at].trim(), part[at..].trim())
}

/// The word of a class in a table, which is also its word in a record.
#[must_use]
pub const fn class_word(class: Class) -> &'static str {
    match class {
        Class::Water => "water",
        Class::Humectant => "humectant",
        Class::Solvent => "solvent",
        Class::Thickener => "thickener",
        Class::Oil => "oil",
        Class::Butter => "butter",
        Class::Emollient => "emollient",
        Class::Wax => "wax",
        Class::FattyAlcohol => "fatty-alcohol",
        Class::FattyAcid => "fatty-acid",
        Class::Emulsifier => "emulsifier",
        Class::Surfactant => "surfactant",
        Class::Active => "active",
        Class::Extract => "extract",
        Class::Protein => "protein",
        Class::Preservative => "preservative",
        Class::Chelator => "chelator",
        Class::Antioxidant => "antioxidant",
        Class::PhAdjuster => "ph-adjuster",
        Class::Salt => "salt",
        Class::EssentialOil => "essential-oil",
        Class::Fragrance => "fragrance",
        Class::Colourant => "colourant",
        Class::Mineral => "mineral",
        Class::Exfoliant => "exfoliant",
        Class::Other => "other",
    }
}

fn class_of(word: &str) -> Option<Class> {
    let word = word.to_lowercase().replace(' ', "-");
    Class::ALL.into_iter().find(|class| class_word(*class) == word)
}

/// The word of a phase in a table.
#[must_use]
pub const fn phase_word(phase: PhaseKind) -> &'static str {
    match phase {
        PhaseKind::HeatedWater => "heated-water",
        PhaseKind::HeatedOil => "heated-oil",
        PhaseKind::CoolDown => "cool-down",
        PhaseKind::RoomTemperature => "room-temperature",
    }
}

fn phase_of(word: &str) -> Option<PhaseKind> {
    let word = word.to_lowercase().replace(' ', "-");
    PhaseKind::ALL.into_iter().find(|phase| phase_word(*phase) == word)
}

/// Writes a table of materials. A cell at which a spreadsheet would begin to compute gets an apostrophe before it.
#[must_use]
pub fn write_materials(rows: &[MaterialRow], mark: DecimalMark) -> String {
    // Parts are quoted where semicolons part the cells.
    let mut writer = writer_for(mark);
    let shield = shielded;
    // Writing into memory cannot fail.
    let _ = writer.write_record(COLUMNS);
    for row in rows {
        let parts: Vec<String> = row
            .parts
            .iter()
            .map(|(amount, name)| match amount {
                Amount::Percent(percent) => format!("{} % {name}", write_between(percent.value(), 0, 10, mark)),
                Amount::QuantumSatis | Amount::Grams(_) => format!("q.s. {name}"),
            })
            .collect();
        let density = row.density.map(|density| write_between(density.value(), 0, 10, mark)).unwrap_or_default();
        let _ = writer.write_record([
            shield(&row.name),
            shield(&row.inci),
            class_word(row.class).to_owned(),
            phase_word(row.phase).to_owned(),
            density,
            shield(&parts.join("; ")),
            shield(&row.note),
        ]);
    }
    let bytes = writer.into_inner().unwrap_or_default();
    // A byte order mark tells spreadsheets that this is UTF-8.
    format!("\u{feff}{}", String::from_utf8(bytes).unwrap_or_default())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use rust_decimal::dec;

    fn read_text(text: &str) -> MaterialTable {
        read_materials(text.as_bytes(), DecimalMark::Point).unwrap()
    }

    fn codes(text: &str) -> Vec<(u64, &'static str, &'static str)> {
        let table = read_text(text);
        table.problems.iter().map(|each| (each.line, each.column, each.problem.code())).collect()
    }

    #[test]
    fn a_table_is_read_whatever_parts_its_cells() {
        for text in [
            "name,inci,class,density,parts\nStock,,active,1.01,\"2 % Caffeine; q.s. Water, distilled\"\n",
            "\u{feff}Name;INCI;Class;Density;Parts\r\nStock;;Active;1,01;\"2 % Caffeine; q.s. Water, distilled\"\r\n",
            "parts\tname\tdensity\tclass\n2 % Caffeine; q.s. Water, distilled\tStock\t1.01\tactive\n",
        ] {
            let table = read_text(text);
            assert_eq!(table.problems, [], "{text}");
            let row = &table.rows[0];
            assert_eq!((row.name.as_str(), row.class), ("Stock", Class::Active));
            assert_eq!(row.density, Some(Density::new(dec!(1.01)).unwrap()));
            let caffeine = (Amount::Percent(Percent::new(dec!(2)).unwrap()), "Caffeine".to_owned());
            assert_eq!(row.parts, [caffeine, (Amount::QuantumSatis, "Water, distilled".to_owned())]);
        }
    }

    #[test]
    fn each_bad_line_is_named_with_its_column() {
        let text = "name,class,phase,density,parts,note\n\
                    ,oil,,,,\n\
                    A,soap,,,,\n\
                    B,,oven,,,\n\
                    C,,,heavy,,\n\
                    a,,,,,\n\
                    =cmd|' /C calc'!A0,,,,,\n\
                    D,,,,150 % Water,\n\
                    E,,,,,,,\n";
        assert_eq!(
            codes(text),
            [
                (2, "name", "table.no-name"),
                (3, "class", "table.unknown-class"),
                (4, "phase", "table.unknown-phase"),
                (5, "density", "number.not-a-number"),
                (6, "name", "table.name-twice"),
                (7, "name", "table.spreadsheet-formula"),
                (8, "parts", "number.out-of-range"),
                (9, "name", "table.too-many-cells"),
            ]
        );
    }

    #[test]
    fn what_is_no_table_is_refused_whole() {
        let code = |bytes: &[u8]| read_materials(bytes, DecimalMark::Point).unwrap_err().code();
        assert_eq!(code(b"name\nCaf\xe9\n"), "table.not-utf8");
        assert_eq!(code(b""), "table.no-name-column");
        assert_eq!(code(b"inci,density\nAqua,1\n"), "table.no-name-column");
        assert_eq!(code(format!("name\n{}", "a\n".repeat(100_000)).as_bytes()), "table.too-many-lines");
        assert_eq!(code(&vec![b'a'; LARGEST_TABLE + 1]), "table.too-large");
        let many = format!("name\n{}", "\u{20ac},\n".repeat(MOST_LINES));
        let table = read_text(&many);
        assert_eq!(table.problems.len(), MOST_PROBLEMS);
        assert!(table.more_problems > MOST_PROBLEMS);
    }

    #[test]
    fn a_written_table_runs_nothing_in_a_spreadsheet() {
        let row = MaterialRow {
            line: 0,
            name: "=HYPERLINK(\"x\")".into(),
            inci: "+1".into(),
            class: Class::Other,
            phase: PhaseKind::CoolDown,
            density: None,
            parts: Vec::new(),
            note: "@SUM(A1)".into(),
        };
        let text = write_materials(std::slice::from_ref(&row), DecimalMark::Point);
        assert!(text.contains("\"'=HYPERLINK(\"\"x\"\")\",'+1,") && text.contains(",'@SUM(A1)"), "{text}");
        let back = read_text(&text);
        assert_eq!(back.problems, []);
        assert_eq!(back.rows, [MaterialRow { line: 2, ..row }]);
    }

    fn any_row() -> impl Strategy<Value = MaterialRow> {
        let part = (prop::option::of(0i64..100_000), "[A-Za-z][A-Za-z ,0-9]{0,12}[a-z]");
        (
            "[^\\p{C}\\p{Z}][^\\p{C}]{0,20}",
            "[A-Z][a-z ]{0,20}",
            prop::sample::select(Class::ALL.to_vec()),
            prop::sample::select(PhaseKind::ALL.to_vec()),
            prop::option::of(10i64..20_000),
            prop::collection::vec(part, 0..4),
            "[^\\p{C}]{0,30}",
        )
            .prop_map(|(name, inci, class, phase, density, parts, note)| MaterialRow {
                line: 2,
                name: name.trim().to_owned(),
                inci: inci.trim().to_owned(),
                class,
                phase,
                density: density.map(|density| Density::new(Decimal::new(density, 3)).unwrap()),
                parts: parts
                    .into_iter()
                    .map(|(amount, name)| {
                        let percent = amount.map(|amount| Percent::new(Decimal::new(amount, 3)).unwrap());
                        (percent.map_or(Amount::QuantumSatis, Amount::Percent), name.trim().to_owned())
                    })
                    .collect(),
                note: note.trim().to_owned(),
            })
            // An apostrophe before a formula is the shield itself.
            .prop_filter("shielded", |row| ![&row.name, &row.note].iter().any(|text| text.starts_with('\'')))
    }

    #[test]
    fn what_a_spreadsheet_would_compute_is_known_in_any_width() {
        for cell in
            ["=1", "+1", "-1", "@a", "\t1", "\r1", "＝1", "＋1", "－1", "＠a", " =1", "\u{feff}＝1", "\u{200b}=1"]
        {
            assert!(begins_a_formula(cell), "{cell:?}");
        }
        for cell in ["", "a=1", "1-2", "“=”", "−1"] {
            assert!(!begins_a_formula(cell), "{cell:?}");
        }
    }

    proptest! {
        #[test]
        fn what_is_written_reads_back(row in any_row(), comma: bool) {
            let mark = if comma { DecimalMark::Comma } else { DecimalMark::Point };
            let text = write_materials(std::slice::from_ref(&row), mark);
            let table = read_materials(text.as_bytes(), mark).unwrap();
            prop_assert_eq!(table.problems, []);
            prop_assert_eq!(table.rows, [row]);
        }

        #[test]
        fn no_bytes_panic(bytes in prop::collection::vec(any::<u8>(), 0..400), head: bool) {
            let mut file = if head { b"name,inci,class,phase,density,parts,note\n".to_vec() } else { Vec::new() };
            file.extend(bytes);
            let _ = read_materials(&file, DecimalMark::Comma);
        }
    }
}
