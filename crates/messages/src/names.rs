//! The words of the catalogue in other languages: names of materials, and texts that stand in its tables.

use crate::read::MessageError;
use std::path::Path;

/// Between columns of a packed table.
const COLUMN: char = '\t';
/// Between rows of a packed table.
const ROW: char = '\n';

/// The names of materials in a language: number, name and other names of each, in the order of the numbers.
///
/// # Errors
/// If `material-names.csv` cannot be read, or lacks a column.
pub fn pack_names(data: &Path, language: &str) -> Result<String, MessageError> {
    let other = format!("other_names_{language}");
    let mut rows = read(&data.join("material-names.csv"), &["number", language, &other])?;
    rows.retain(|row| !row[1].is_empty());
    rows.sort_by_key(|row| row[0].parse::<u32>().unwrap_or(u32::MAX));
    Ok(packed(&rows))
}

/// The texts of the catalogue's tables in a language, by the English text, in its order.
///
/// # Errors
/// If `words.csv` cannot be read, or lacks a column.
pub fn pack_words(data: &Path, language: &str) -> Result<String, MessageError> {
    let mut rows = read(&data.join("words.csv"), &["en", language])?;
    rows.retain(|row| !row[1].is_empty());
    rows.sort();
    Ok(packed(&rows))
}

fn packed(rows: &[Vec<String>]) -> String {
    let rows: Vec<String> = rows.iter().map(|row| row.join(&COLUMN.to_string())).collect();
    rows.join(&ROW.to_string())
}

fn read(path: &Path, columns: &[&str]) -> Result<Vec<Vec<String>>, MessageError> {
    let wrong = |why: String| MessageError::File { path: path.to_owned(), why };
    let mut reader = csv::Reader::from_path(path).map_err(|error| wrong(error.to_string()))?;
    let head = reader.headers().map_err(|error| wrong(error.to_string()))?.clone();
    let places: Vec<usize> = columns
        .iter()
        .map(|column| head.iter().position(|each| each == *column).ok_or_else(|| wrong(format!("no column {column}"))))
        .collect::<Result<_, _>>()?;
    let mut rows = Vec::new();
    for record in reader.records() {
        let record = record.map_err(|error| wrong(error.to_string()))?;
        let row: Vec<String> =
            places.iter().map(|at| record.get(*at).unwrap_or_default().replace([COLUMN, ROW], " ")).collect();
        rows.push(row);
    }
    Ok(rows)
}
