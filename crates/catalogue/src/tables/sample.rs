//! Draws values to be looked up again in their sources by someone else.

use super::check::decimal;
use super::extra::Column;
use super::{EXTRA_TABLES, Lined, Tables};

/// A value and where it is said to stand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Drawn {
    /// File it was drawn from.
    pub file: &'static str,
    /// Line in that file.
    pub line: u64,
    /// What it is of: a name.
    pub subject: String,
    /// Registry numbers of a constituent; may be empty.
    pub cas: String,
    /// Which property.
    pub property: String,
    /// The value as written.
    pub value: String,
    /// Source.
    pub source: String,
    /// Spot in the source.
    pub locator: String,
}

/// Draws `count` of the values marked as published, the same ones for the same seed.
#[must_use]
pub fn sample(tables: &Tables, seed: u64, count: usize) -> Vec<Drawn> {
    let mut all = published(tables);
    let mut state = seed;
    let mut drawn = Vec::new();
    while drawn.len() < count && !all.is_empty() {
        let place = usize::try_from(next(&mut state) % all.len() as u64).unwrap_or(0);
        drawn.push(all.swap_remove(place));
    }
    drawn
}

/// The next number of a sequence (`SplitMix64`, public domain).
const fn next(state: &mut u64) -> u64 {
    *state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let mut mixed = *state;
    mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    mixed ^ (mixed >> 31)
}

fn published(tables: &Tables) -> Vec<Drawn> {
    let named = |number: &str| {
        let found = tables.constituents.iter().find(|row| row.row.number == number);
        found.map_or((String::new(), String::new()), |row| (row.row.inci.clone(), row.row.cas.clone()))
    };
    let mut all = Vec::new();
    for Lined { line, row } in tables.constituents.iter().filter(|row| row.row.basis == "published") {
        if !row.cas.is_empty() {
            all.push(Drawn {
                file: super::row::CONSTITUENTS,
                line: *line,
                subject: row.inci.clone(),
                cas: row.cas.clone(),
                property: "cas".to_owned(),
                value: row.cas.clone(),
                source: row.source.clone(),
                locator: row.locator.clone(),
            });
        }
    }
    for Lined { line, row } in tables.functions.iter().filter(|row| row.row.basis == "published") {
        let (subject, cas) = named(&row.constituent);
        all.push(Drawn {
            file: super::row::FUNCTIONS,
            line: *line,
            subject,
            cas,
            property: "functions".to_owned(),
            value: row.functions.clone(),
            source: row.source.clone(),
            locator: row.locator.clone(),
        });
    }
    for (file, Lined { line, row }) in tables.values().filter(|(_, row)| row.row.basis == "published") {
        let material = tables.materials.iter().find(|material| material.row.number == row.number);
        let (subject, cas) = match (row.subject.as_str(), material) {
            ("material", Some(material)) => (material.row.name.clone(), String::new()),
            _ => named(&row.number),
        };
        let figures = [&row.value, &row.minimum, &row.maximum].map(String::as_str);
        let value = figures.into_iter().filter(|figure| !figure.is_empty()).collect::<Vec<_>>().join(" / ");
        let at = if row.conditions.is_empty() { String::new() } else { format!(" ({})", row.conditions) };
        all.push(Drawn {
            file,
            line: *line,
            subject,
            cas,
            property: row.property.clone(),
            value: format!("{value} {}{at}", row.unit),
            source: row.source.clone(),
            locator: row.locator.clone(),
        });
    }
    for table in EXTRA_TABLES {
        for Lined { line, row } in tables.extra.get(table.file).into_iter().flatten() {
            let cell = |name: &str| row.get(name).map_or("", String::as_str);
            let figure = |column: &Column| matches!(column, Column::Figure(..) | Column::FigureOrEmpty(..));
            for (name, _) in table.columns.iter().filter(|(_, column)| figure(column)) {
                if cell("basis") != "published" || decimal(cell(name)).is_none() {
                    continue;
                }
                let subjects = ["inci", "oil", "name", "subject", "plant"].map(cell);
                let subject = subjects.into_iter().find(|text| !text.is_empty()).unwrap_or_default();
                let beside = ["inside", "acid", "temperature", "cosolvent", "phases"].map(cell);
                let beside = beside.into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>().join(", ");
                all.push(Drawn {
                    file: table.file,
                    line: *line,
                    subject: subject.to_owned(),
                    cas: cell("cas").to_owned(),
                    property: (*name).to_owned(),
                    value: if beside.is_empty() { cell(name).to_owned() } else { format!("{} ({beside})", cell(name)) },
                    source: cell("source").to_owned(),
                    locator: cell("locator").to_owned(),
                });
            }
        }
    }
    all
}
