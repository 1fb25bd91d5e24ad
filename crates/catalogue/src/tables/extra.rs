//! The larger tables, each with its columns declared once.

use super::{Findings, Lined, Problem, Tables};
use crate::property::Basis;
use crate::stored::Figure;
use rust_decimal::prelude::ToPrimitive;
use std::collections::BTreeMap;

/// A row of a larger table: text by column.
pub type ExtraRow = BTreeMap<String, String>;

/// What a column of a larger table holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Column {
    /// Text that may be empty.
    Text,
    /// Text that may not be empty.
    Named,
    /// A number within bounds; counts as one value.
    Figure(f64, f64),
    /// A number within bounds, or empty; counts as one value when there.
    FigureOrEmpty(f64, f64),
    /// A number within bounds that says under what conditions the row holds; no value by itself.
    Condition(f64, f64),
    /// The number of a constituent, or empty.
    Constituent,
    /// CAS registry numbers parted by ` / `, or empty.
    Cas,
}

/// One of the larger tables.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ExtraTable {
    /// File name.
    pub file: &'static str,
    /// Columns beside `source`, `locator` and `basis`, which every table has.
    pub columns: &'static [(&'static str, Column)],
}

/// Columns of the solubilities in water that the import took from a dataset.
const SOLUBILITY: &[(&str, Column)] = &[
    ("constituent", Column::Constituent),
    ("inci", Column::Named),
    ("name", Column::Named),
    ("cas", Column::Cas),
    ("molar_mass", Column::Condition(1.0, 10_000.0)),
    ("temperature", Column::Condition(-20.0, 150.0)),
    ("grams_per_100_g_water", Column::FigureOrEmpty(0.0, 2_000.0)),
    ("described", Column::Text),
    ("note", Column::Text),
];

/// Every larger table.
pub const EXTRA_TABLES: &[ExtraTable] = &[
    ExtraTable {
        file: "solubility-water.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("inci", Column::Named),
            ("name", Column::Named),
            ("cas", Column::Cas),
            ("molar_mass", Column::Condition(1.0, 10_000.0)),
            ("temperature", Column::Condition(-20.0, 150.0)),
            ("grams_per_100_g_water", Column::FigureOrEmpty(0.0, 2_000.0)),
            ("factor", Column::Condition(1.0, 10.0)),
            ("described", Column::Text),
            ("note", Column::Text),
        ],
    },
    ExtraTable { file: "solubility-imported.csv", columns: SOLUBILITY },
    ExtraTable {
        file: "solubility-cosolvent.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("record", Column::Named),
            ("inci", Column::Text),
            ("name", Column::Named),
            ("cosolvent", Column::Named),
            ("cosolvent_percent", Column::Condition(0.0, 100.0)),
            ("temperature", Column::Condition(-20.0, 150.0)),
            ("value", Column::FigureOrEmpty(-20.0, 2_000.0)),
            ("unit", Column::Text),
            ("described", Column::Text),
            ("note", Column::Text),
        ],
    },
    ExtraTable {
        file: "acid-constants.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("inci", Column::Named),
            ("name", Column::Named),
            ("cas", Column::Cas),
            ("molar_mass", Column::Condition(1.0, 10_000.0)),
            ("charge_fully_protonated", Column::Condition(-6.0, 6.0)),
            ("pka_1", Column::FigureOrEmpty(-5.0, 16.0)),
            ("pka_2", Column::FigureOrEmpty(-5.0, 16.0)),
            ("pka_3", Column::FigureOrEmpty(-5.0, 16.0)),
            ("pka_4", Column::FigureOrEmpty(-5.0, 16.0)),
            ("described", Column::Text),
            ("temperature", Column::Condition(0.0, 100.0)),
            ("role", Column::Named),
            ("note", Column::Text),
        ],
    },
    ExtraTable {
        file: "acid-steps.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("inci", Column::Named),
            ("name", Column::Named),
            ("molar_mass", Column::Condition(1.0, 10_000.0)),
            ("step", Column::Condition(1.0, 12.0)),
            ("charge_acid_form", Column::Condition(-12.0, 12.0)),
            ("pka", Column::Figure(-5.0, 16.0)),
            ("enthalpy", Column::FigureOrEmpty(-100.0, 100.0)),
            ("heat_capacity", Column::FigureOrEmpty(-500.0, 500.0)),
            ("valid", Column::Text),
            ("medium", Column::Text),
            ("enthalpy_source", Column::Text),
            ("enthalpy_basis", Column::Text),
            ("note", Column::Text),
        ],
    },
    ExtraTable {
        file: "ion-pairs.csv",
        columns: &[
            ("name", Column::Named),
            ("cation", Column::Named),
            ("cations", Column::Condition(1.0, 2.0)),
            ("lost", Column::Condition(0.0, 12.0)),
            ("log_k", Column::Figure(-5.0, 30.0)),
            ("enthalpy", Column::FigureOrEmpty(-100.0, 100.0)),
            ("reaction", Column::Named),
            ("note", Column::Text),
        ],
    },
    ExtraTable {
        file: "ionic-makeup.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("inci", Column::Named),
            ("molar_mass", Column::Condition(1.0, 10_000.0)),
            ("acid", Column::Text),
            ("acids", Column::Condition(0.0, 6.0)),
            ("sodium", Column::Condition(0.0, 12.0)),
            ("potassium", Column::Condition(0.0, 12.0)),
            ("magnesium", Column::Condition(0.0, 12.0)),
            ("calcium", Column::Condition(0.0, 12.0)),
            ("zinc", Column::Condition(0.0, 12.0)),
            ("anions", Column::Condition(0.0, 12.0)),
            ("note", Column::Text),
        ],
    },
    ExtraTable {
        file: "partition.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("record", Column::Named),
            ("inci", Column::Text),
            ("name", Column::Named),
            ("cas", Column::Cas),
            ("phases", Column::Named),
            ("temperature", Column::Condition(0.0, 100.0)),
            ("value", Column::FigureOrEmpty(-10.0, 5_000.0)),
            ("quantity", Column::Named),
            ("described", Column::Text),
            ("note", Column::Text),
        ],
    },
    ExtraTable {
        file: "preservative-limits.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("inci", Column::Named),
            ("cas", Column::Cas),
            ("jurisdiction", Column::Named),
            ("as_of", Column::Named),
            ("status", Column::Named),
            ("entry", Column::Text),
            ("molar_mass", Column::Condition(1.0, 10_000.0)),
            ("expressed_as", Column::Named),
            ("expressed_as_molar_mass", Column::Condition(1.0, 10_000.0)),
            ("equivalents_per_mole", Column::Condition(1.0, 6.0)),
            ("leave_on_limit", Column::FigureOrEmpty(0.0, 100.0)),
            ("rinse_off_limit", Column::FigureOrEmpty(0.0, 100.0)),
            // Converted from the two limits before them, so not counted again.
            ("leave_on_limit_as_substance", Column::Condition(0.0, 100.0)),
            ("rinse_off_limit_as_substance", Column::Condition(0.0, 100.0)),
            ("conditions", Column::Text),
        ],
    },
    ExtraTable {
        file: "preservative-practice.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("inci", Column::Named),
            // A range counts once, by its upper end.
            ("usual_percent_minimum", Column::Condition(0.0, 100.0)),
            ("usual_percent_maximum", Column::FigureOrEmpty(0.0, 100.0)),
            ("ph_minimum", Column::Condition(0.0, 14.0)),
            ("ph_maximum", Column::FigureOrEmpty(0.0, 14.0)),
            ("pka", Column::FigureOrEmpty(-5.0, 16.0)),
            ("max_add_temperature", Column::FigureOrEmpty(20.0, 150.0)),
            ("active_form", Column::Text),
            ("incompatible_with", Column::Text),
            ("spectrum", Column::Text),
        ],
    },
    ExtraTable {
        file: "restricted.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("subject", Column::Named),
            ("group", Column::Text),
            ("kinds", Column::Text),
            ("named", Column::Text),
            ("jurisdiction", Column::Named),
            ("as_of", Column::Named),
            ("from", Column::Text),
            ("entry", Column::Text),
            ("leave_on_limit", Column::FigureOrEmpty(0.0, 100.0)),
            ("rinse_off_limit", Column::FigureOrEmpty(0.0, 100.0)),
            ("least_ph", Column::Condition(0.0, 14.0)),
            ("conditions", Column::Text),
        ],
    },
    ExtraTable {
        file: "fragrance-allergens.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("name", Column::Named),
            ("cas", Column::Cas),
            ("jurisdiction", Column::Named),
            ("as_of", Column::Named),
            ("leave_on_threshold", Column::FigureOrEmpty(0.0, 1.0)),
            ("rinse_off_threshold", Column::FigureOrEmpty(0.0, 1.0)),
            ("listed_by", Column::Text),
            ("entry", Column::Named),
            ("grouped_members", Column::Text),
            ("conditions", Column::Text),
        ],
    },
    ExtraTable {
        file: "us-names.csv",
        columns: &[("constituent", Column::Constituent), ("inci", Column::Named), ("name", Column::Named)],
    },
    ExtraTable {
        file: "label-conditions.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("inci", Column::Named),
            ("statement", Column::Named),
            ("only_kinds", Column::Text),
            ("not_kinds", Column::Text),
            ("used", Column::Text),
            ("above", Column::FigureOrEmpty(0.0, 100.0)),
            ("form", Column::Text),
            ("also_uk", Column::Text),
            ("entry", Column::Named),
        ],
    },
    ExtraTable {
        file: "label-wording.csv",
        columns: &[
            ("phrase", Column::Named),
            ("language", Column::Named),
            ("kind", Column::Named),
            ("silent_in", Column::Text),
        ],
    },
    ExtraTable {
        file: "traits.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("inci", Column::Named),
            ("word", Column::Named),
            ("note", Column::Text),
        ],
    },
    ExtraTable {
        file: "acid-salts.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("inci", Column::Named),
            ("acid", Column::Constituent),
            ("acid_inci", Column::Named),
            ("equivalents", Column::Condition(1.0, 6.0)),
        ],
    },
    ExtraTable {
        file: "preservative-spectrum.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("inci", Column::Named),
            ("role", Column::Named),
            ("gram_positive", Column::Named),
            ("gram_negative", Column::Named),
            ("yeast", Column::Named),
            ("mould", Column::Named),
        ],
    },
    ExtraTable {
        file: "mic.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("inci", Column::Named),
            ("organism", Column::Named),
            ("group", Column::Named),
            ("acting_percent", Column::Figure(0.0, 20.0)),
            ("note", Column::Text),
        ],
    },
    ExtraTable {
        file: "micelle-binding.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("inci", Column::Named),
            ("surfactant", Column::Named),
            ("k_per_percent", Column::Figure(0.0, 100.0)),
            ("note", Column::Text),
        ],
    },
    ExtraTable {
        file: "oil-partition.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("inci", Column::Named),
            ("oil", Column::Named),
            ("oil_class", Column::Named),
            ("coefficient", Column::Figure(0.0, 5_000.0)),
            ("note", Column::Text),
        ],
    },
    ExtraTable {
        file: "substitutes.csv",
        columns: &[
            ("group", Column::Named),
            ("material", Column::Condition(1.0, 100_000.0)),
            ("name", Column::Named),
            ("strength", Column::Figure(0.01, 1_000.0)),
            ("feel", Column::Text),
            ("note", Column::Text),
        ],
    },
    ExtraTable {
        file: "limit-members.csv",
        columns: &[
            ("subject", Column::Named),
            ("constituent", Column::Constituent),
            ("inci", Column::Text),
            ("inside", Column::Text),
            ("factor", Column::Condition(0.0, 10.0)),
            ("note", Column::Text),
        ],
    },
    ExtraTable {
        file: "essential-oil-constituents.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("oil", Column::Named),
            ("name", Column::Named),
            ("label_name_of_the_oil", Column::Text),
            ("inside", Column::Named),
            ("cas", Column::Cas),
            // The range counts once, by its upper end.
            ("minimum", Column::Condition(0.0, 100.0)),
            ("typical", Column::FigureOrEmpty(0.0, 100.0)),
            ("maximum", Column::FigureOrEmpty(0.0, 100.0)),
            ("allergen", Column::Text),
        ],
    },
    ExtraTable {
        file: "fatty-acids.csv",
        columns: &[
            ("constituent", Column::Constituent),
            ("inci", Column::Named),
            ("material", Column::Condition(1.0, 1_000_000.0)),
            ("acid", Column::Named),
            ("grams_per_100_g", Column::Figure(0.0, 100.0)),
            ("note", Column::Text),
        ],
    },
    ExtraTable {
        file: "plants.csv",
        columns: &[
            ("plant", Column::Named),
            ("part", Column::Named),
            ("state", Column::Named),
            ("water", Column::Figure(0.0, 100.0)),
            ("range_or_limit", Column::Text),
        ],
    },
];

/// Packs a table column by column, in the order in which the columns are declared, then the sources, locators and
/// bases of its rows. The larger tables of the library read the columns in the same order.
///
/// # Errors
/// A [`Problem`] naming the column that cannot be packed.
pub fn pack_table(tables: &Tables, table: &ExtraTable) -> Result<Vec<u8>, Problem> {
    let rows = tables.extra.get(table.file).map_or(&[][..], Vec::as_slice);
    let cells = |name: &'static str| rows.iter().map(move |row| row.row.get(name).map_or("", String::as_str));
    let places = |name: &str| tables.sources.iter().position(|source| source.row.source == *name);
    let mut bytes = Vec::new();
    let mut append = |column: postcard::Result<Vec<u8>>| match column {
        Ok(column) => {
            bytes.extend(column);
            Ok(())
        }
        Err(error) => Err(Problem { file: table.file, line: 1, code: "data.unpackable", message: error.to_string() }),
    };
    for (name, column) in table.columns {
        append(match column {
            Column::Text | Column::Named | Column::Cas => postcard::to_stdvec(&cells(name).collect::<Vec<_>>()),
            Column::Constituent => {
                postcard::to_stdvec(&cells(name).map(|cell| cell.parse::<u32>().ok()).collect::<Vec<_>>())
            }
            Column::Figure(..) | Column::FigureOrEmpty(..) | Column::Condition(..) => {
                let figures = cells(name).map(|cell| super::check::decimal(cell).and_then(Figure::pack));
                postcard::to_stdvec(&figures.map(|f| f.map(|f| (f.digits, f.places))).collect::<Vec<_>>())
            }
        })?;
    }
    append(postcard::to_stdvec(
        &cells("source")
            .map(|name| places(name).and_then(|place| u16::try_from(place).ok()).unwrap_or(u16::MAX))
            .collect::<Vec<_>>(),
    ))?;
    append(postcard::to_stdvec(&cells("locator").collect::<Vec<_>>()))?;
    append(postcard::to_stdvec(&cells("basis").filter_map(Basis::from_slug).collect::<Vec<_>>()))?;
    Ok(bytes)
}

/// Checks the columns a table declares. Sources are checked with those of the other files.
pub fn check(
    table: &ExtraTable,
    rows: &[Lined<ExtraRow>],
    known_constituent: &dyn Fn(&str) -> bool,
    findings: &mut Findings,
) {
    for Lined { line, row } in rows {
        let mut problem = |code, message| findings.add(table.file, *line, code, message);
        for (name, column) in table.columns {
            let Some(text) = row.get(*name) else {
                problem("data.missing-column", format!("column `{name}` is missing"));
                continue;
            };
            let optional = !matches!(column, Column::Named | Column::Figure(..));
            if text.trim().is_empty() {
                if !optional {
                    problem("data.empty", format!("`{name}` is empty"));
                }
                continue;
            }
            match column {
                Column::Text | Column::Named => {}
                Column::Figure(low, high) | Column::FigureOrEmpty(low, high) | Column::Condition(low, high) => {
                    match super::check::decimal(text).and_then(|value| value.to_f64()) {
                        Some(value) if (*low..=*high).contains(&value) => {}
                        _ => problem("data.range", format!("`{name}` is `{text}`, not between {low} and {high}")),
                    }
                }
                Column::Constituent if known_constituent(text) => {}
                Column::Constituent => {
                    problem("data.dangling", format!("there is no constituent with number `{text}`"));
                }
                Column::Cas => {
                    super::check::cas_numbers(text, |message| problem("data.cas", message));
                }
            }
        }
        for name in row.keys() {
            let declared = table.columns.iter().any(|(column, _)| column == name);
            if !declared && !["source", "locator", "basis"].contains(&name.as_str()) {
                problem("data.unknown-column", format!("column `{name}` is not declared"));
            }
        }
    }
}
