//! Reads the data files, checks them, and packs what the page needs.
//!
//! The build runs this and fails on the first problem it finds; the `data` program runs the same code to print every
//! problem. The files are plain CSV with a header row, UTF-8, one fact a row.

mod check;
mod extra;
mod joined;
mod pack;
mod report;
mod row;
mod sample;
mod vocabulary;
mod words;

use std::collections::BTreeMap;
use std::fmt;
use std::path::Path;

pub use extra::{EXTRA_TABLES, ExtraRow, ExtraTable, pack_table};
pub use pack::{Extent, pack_bytes};
pub use report::{Count, Report, Share, report};
pub use row::{
    CompositeRow, ConstituentRow, FunctionRow, FurtherNameRow, MaterialRow, NumberRow, PropertyRow, SourceRow,
};
pub use sample::{Drawn, sample};
pub use words::{KINDS, TRAITS};

/// One thing wrong with the data files.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Problem {
    /// File name.
    pub file: &'static str,
    /// Line in that file, 1 for the header.
    pub line: u64,
    /// Stable code.
    pub code: &'static str,
    /// What is wrong, naming the offending text.
    pub message: String,
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}: {} [{}]", self.file, self.line, self.message, self.code)
    }
}

/// A row and the line it stands on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lined<R> {
    /// Line in the file, 1 for the header.
    pub line: u64,
    /// The row.
    pub row: R,
}

/// Every data file, as read.
#[derive(Debug, Clone, Default)]
pub struct Tables {
    /// Bibliography.
    pub sources: Vec<Lined<SourceRow>>,
    /// Constituents.
    pub constituents: Vec<Lined<ConstituentRow>>,
    /// What constituents are used for.
    pub functions: Vec<Lined<FunctionRow>>,
    /// Materials.
    pub materials: Vec<Lined<MaterialRow>>,
    /// What materials are called besides.
    pub further_names: Vec<Lined<FurtherNameRow>>,
    /// Parts of composites.
    pub composites: Vec<Lined<CompositeRow>>,
    /// Values of materials and constituents.
    pub properties: Vec<Lined<PropertyRow>>,
    /// Values that the import took out of open tables; it writes the whole file.
    pub imported: Vec<Lined<PropertyRow>>,
    /// Numbers given out so far.
    pub numbers: Vec<Lined<NumberRow>>,
    /// The larger tables, by file name.
    pub extra: BTreeMap<&'static str, Vec<Lined<ExtraRow>>>,
}

impl Tables {
    /// Every row of values with the file it stands in.
    pub fn values(&self) -> impl Iterator<Item = (&'static str, &Lined<PropertyRow>)> {
        let own = self.properties.iter().map(|row| (row::PROPERTIES, row));
        own.chain(self.imported.iter().map(|row| (row::IMPORTED, row)))
    }
}

/// Collects problems while files are read and checked.
#[derive(Debug, Default)]
pub struct Findings(Vec<Problem>);

impl Findings {
    fn add(&mut self, file: &'static str, line: u64, code: &'static str, message: impl Into<String>) {
        self.0.push(Problem { file, line, code, message: message.into() });
    }
}

/// Reads every file of `folder` and checks it. The problems come sorted by file and line; none means the tables can
/// be packed.
#[must_use]
pub fn read(folder: &Path) -> (Tables, Vec<Problem>) {
    let mut findings = Findings::default();
    let mut tables = Tables {
        sources: read_file(folder, row::SOURCES, &mut findings),
        constituents: read_file(folder, row::CONSTITUENTS, &mut findings),
        functions: read_file(folder, row::FUNCTIONS, &mut findings),
        materials: read_file(folder, row::MATERIALS, &mut findings),
        further_names: read_file(folder, row::FURTHER_NAMES, &mut findings),
        composites: read_file(folder, row::COMPOSITES, &mut findings),
        properties: read_file(folder, row::PROPERTIES, &mut findings),
        imported: read_file(folder, row::IMPORTED, &mut findings),
        numbers: read_file(folder, row::NUMBERS, &mut findings),
        extra: BTreeMap::new(),
    };
    for table in EXTRA_TABLES {
        tables.extra.insert(table.file, read_file(folder, table.file, &mut findings));
    }
    check::check(&tables, &mut findings);
    vocabulary::check(&tables, &mut findings);
    findings.0.sort();
    (tables, findings.0)
}

fn read_file<R: serde::de::DeserializeOwned>(
    folder: &Path,
    file: &'static str,
    findings: &mut Findings,
) -> Vec<Lined<R>> {
    let mut rows = Vec::new();
    let mut reader = match csv::Reader::from_path(folder.join(file)) {
        Ok(reader) => reader,
        Err(error) => {
            findings.add(file, 1, "data.unreadable", error.to_string());
            return rows;
        }
    };
    let headers = match reader.headers() {
        Ok(headers) => headers.clone(),
        Err(error) => {
            findings.add(file, 1, "data.unreadable", error.to_string());
            return rows;
        }
    };
    for record in reader.records() {
        let line = record.as_ref().ok().and_then(csv::StringRecord::position).map_or(0, csv::Position::line);
        // The packed form joins texts by line feeds.
        let torn = record.iter().flatten().any(|cell| cell.contains('\n'));
        let row = record.and_then(|record| record.deserialize(Some(&headers)).map(|row| Lined { line, row }));
        match row {
            Ok(_) if torn => findings.add(file, line, "data.line-feed", "a cell holds a line feed"),
            Ok(row) => rows.push(row),
            Err(error) => {
                let line = error.position().map_or(0, csv::Position::line);
                findings.add(file, line, "data.unreadable", error.to_string());
            }
        }
    }
    rows
}
