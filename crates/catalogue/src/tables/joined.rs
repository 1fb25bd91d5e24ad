//! Values that stand in a larger table and belong on a card as well: packed twice, written down once.

use super::check::decimal;
use super::pack::origin;
use super::{ExtraRow, Lined, Problem, Tables};
use crate::property::Property;
use crate::stored::{Figure, StoredValue, Subject};

/// Columns of a table that become a value: property, value, minimum, maximum; an empty name for none.
type Columns = (Property, &'static str, &'static str, &'static str);

const PRACTICE: &[Columns] = &[
    (Property::UsualPercent, "", "usual_percent_minimum", "usual_percent_maximum"),
    (Property::UsualPh, "", "ph_minimum", "ph_maximum"),
    (Property::MaxAddTemperature, "max_add_temperature", "", ""),
];
const ACIDS: &[Columns] = &[
    (Property::Pka1, "pka_1", "", ""),
    (Property::Pka2, "pka_2", "", ""),
    (Property::Pka3, "pka_3", "", ""),
    (Property::Pka4, "pka_4", "", ""),
];

/// The values of the larger tables that cards show.
pub fn values(tables: &Tables) -> Result<Vec<StoredValue<'_>>, Problem> {
    let mut values = Vec::new();
    collect(tables, "preservative-practice.csv", PRACTICE, |_| Some(""), &mut values)?;
    collect(tables, "acid-constants.csv", ACIDS, |row| Some(room_temperature(row).unwrap_or("")), &mut values)?;
    let octanol = |row: &ExtraRow| (cell(row, "record") == "logKow").then_some("");
    collect(tables, "partition.csv", &[(Property::LogKow, "value", "", "")], octanol, &mut values)?;
    let dissolved = [(Property::WaterSolubility, "grams_per_100_g_water", "", "")];
    for file in ["solubility-water.csv", "solubility-imported.csv"] {
        collect(tables, file, &dissolved, room_temperature, &mut values)?;
    }
    Ok(values)
}

fn cell<'a>(row: &'a ExtraRow, name: &str) -> &'a str {
    row.get(name).map_or("", String::as_str)
}

/// The condition a card shows, of rows at 20 or 25 °C.
fn room_temperature(row: &ExtraRow) -> Option<&'static str> {
    match cell(row, "temperature") {
        "20" => Some("20 °C"),
        "25" => Some("25 °C"),
        _ => None,
    }
}

/// Adds the values of a table. `conditions` says under which conditions a row holds, or leaves the row out.
fn collect<'a>(
    tables: &'a Tables,
    file: &'static str,
    columns: &[Columns],
    conditions: impl Fn(&ExtraRow) -> Option<&'static str>,
    values: &mut Vec<StoredValue<'a>>,
) -> Result<(), Problem> {
    const EMPTY: &String = &String::new();
    for Lined { line, row } in tables.extra.get(file).into_iter().flatten() {
        let (Ok(constituent), Some(conditions)) = (cell(row, "constituent").parse(), conditions(row)) else { continue };
        let text = |name| row.get(name).unwrap_or(EMPTY);
        for (property, value, minimum, maximum) in columns {
            let figure = |name: &str| decimal(cell(row, name)).and_then(Figure::pack);
            let [value, minimum, maximum] = [figure(value), figure(minimum), figure(maximum)];
            if value.is_none() && minimum.is_none() && maximum.is_none() {
                continue;
            }
            // The spot in the source is left to the larger table: a card says which source, and that is enough.
            let origin = origin(tables, file, *line, [text("source"), EMPTY, text("basis")])?;
            let subject = Subject::Constituent(constituent);
            values.push(StoredValue {
                subject,
                property: *property,
                value,
                minimum,
                maximum,
                conditions,
                note: "",
                origin,
            });
        }
    }
    Ok(())
}
