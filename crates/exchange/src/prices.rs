//! Prices of what is in the stores as a table for a spreadsheet, in and out, and what has to be bought as one.
//!
//! Tables follow RFC 4180, with the mark for UTF-8 before them, but for what parts their cells: where the comma is the decimal
//! mark, semicolons do.

use crate::table::{Table, TableError, TableProblem, read_rows, shielded, unshielded, writer_for};
use rust_decimal::Decimal;
use stillroom_core::cost::decimals_of;
use stillroom_core::number::{DecimalMark, read_plain, write_between};
use stillroom_core::{Currency, Grams, Money};

/// The columns, in the order they are written. They may come in any order; a material is found by `material` or by `name`.
pub const PRICE_COLUMNS: [&str; 7] = ["material", "name", "pack_g", "price", "shipping", "currency", "stock_g"];
/// The columns of what has to be bought.
pub const SHOPPING_COLUMNS: [&str; 8] =
    ["name", "needed_g", "stock_g", "missing_g", "packs", "pack_g", "cost", "currency"];
/// Highest amount of money that is taken.
const HIGHEST: Decimal = Decimal::from_parts(1_000_000, 0, 0, false, 0);
/// Largest mass that is taken, in grams.
const HEAVIEST: Decimal = Decimal::from_parts(1_000_000_000, 0, 0, false, 0);
/// Longest name, in characters.
const LONGEST_NAME: usize = 200;

/// The price of one material.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PriceRow {
    /// Line of the file it stood on; 0 in a row that is to be written.
    pub line: u64,
    /// The material, as records write it; may be empty.
    pub material: String,
    /// Its name.
    pub name: String,
    /// What a pack holds.
    pub pack: Option<Grams>,
    /// What it costs.
    pub price: Option<Money>,
    /// What getting it here adds.
    pub shipping: Option<Decimal>,
    /// What is there.
    pub stock: Option<Grams>,
}

/// A table of prices.
pub type PriceTable = Table<PriceRow>;

/// Reads a table of prices. What a cell leaves empty is not said: nothing is taken away by it.
///
/// # Errors
/// `table.too-large`, `table.not-utf8`, `table.no-name-column`, `table.too-many-lines`. What is wrong with single lines is in
/// [`PriceTable::problems`].
///
/// ```
/// use stillroom_core::number::DecimalMark;
/// use stillroom_exchange::prices::read_prices;
/// let table = read_prices(b"name,pack_g,price,currency\nAlmond oil,250,12.90,EUR\nWater,,x,\n", DecimalMark::Point)?;
/// assert_eq!(table.rows[0].price.unwrap().currency().code(), "EUR");
/// assert_eq!((table.problems[0].line, table.problems[0].column), (3, "price"));
/// # Ok::<(), stillroom_exchange::table::TableError>(())
/// ```
pub fn read_prices(bytes: &[u8], mark: DecimalMark) -> Result<PriceTable, TableError> {
    read_rows(bytes, PRICE_COLUMNS, &["material", "name"], |line, cells, table| read_row(line, cells, mark, table))
}

fn read_row(line: u64, cells: [&str; 7], mark: DecimalMark, table: &mut PriceTable) -> PriceRow {
    let [material, name, pack, price, shipping, currency, stock] = cells;
    let mut number = |column: &'static str, cell: &str, most: Decimal| {
        let cell = cell.trim();
        if cell.is_empty() {
            return None;
        }
        read_plain(cell, mark, Decimal::ZERO, most)
            .map_err(|error| table.note(line, column, TableProblem::Number(error)))
            .ok()
    };
    let pack = number("pack_g", pack, HEAVIEST).and_then(|mass| Grams::new(mass).ok());
    let stock = number("stock_g", stock, HEAVIEST).and_then(|mass| Grams::new(mass).ok());
    let (amount, shipping) = (number("price", price, HIGHEST), number("shipping", shipping, HIGHEST));
    let code = match currency.trim() {
        "" => None,
        code => {
            let read = Currency::new(&code.to_ascii_uppercase()).ok();
            if read.is_none() {
                let text = code.chars().take(40).collect();
                table.note(line, "currency", TableProblem::UnknownCurrency { text });
            }
            read
        }
    };
    if amount.is_some() && currency.trim().is_empty() {
        table.note(line, "currency", TableProblem::Incomplete);
    }
    let name = unshielded(name).unwrap_or_else(|| {
        table.note(line, "name", TableProblem::SpreadsheetFormula);
        ""
    });
    if name.chars().count() > LONGEST_NAME {
        table.note(line, "name", TableProblem::TooLong { most: LONGEST_NAME });
    }
    let name: String = name.chars().take(LONGEST_NAME).collect();
    let material = material.trim().to_owned();
    if name.is_empty() && material.is_empty() {
        table.note(line, "name", TableProblem::NoName);
    }
    let price = amount.zip(code).map(|(amount, code)| Money::new(amount, code));
    PriceRow { line, material, name, pack, price, shipping, stock }
}

fn mass(mass: Option<Grams>, mark: DecimalMark) -> String {
    mass.map_or_else(String::new, |mass| write_between(mass.value(), 0, 6, mark))
}

fn amount(amount: Option<Decimal>, mark: DecimalMark) -> String {
    amount.map_or_else(String::new, |amount| write_between(amount, 0, 6, mark))
}

/// Writes a table of prices. A cell at which a spreadsheet would begin to compute gets an apostrophe before it.
#[must_use]
pub fn write_prices(rows: &[PriceRow], mark: DecimalMark) -> String {
    let mut writer = writer_for(mark);
    // Writing into memory cannot fail.
    let _ = writer.write_record(PRICE_COLUMNS);
    for row in rows {
        let _ = writer.write_record([
            row.material.clone(),
            shielded(&row.name),
            mass(row.pack, mark),
            amount(row.price.map(Money::amount), mark),
            amount(row.shipping, mark),
            row.price.map_or_else(String::new, |price| price.currency().code().to_owned()),
            mass(row.stock, mark),
        ]);
    }
    text_from(writer)
}

fn text_from(writer: csv::Writer<Vec<u8>>) -> String {
    let bytes = writer.into_inner().unwrap_or_default();
    // A byte order mark tells spreadsheets that this is UTF-8.
    format!("\u{feff}{}", String::from_utf8(bytes).unwrap_or_default())
}

/// A material that has to be bought.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ShoppingRow {
    /// Its name.
    pub name: String,
    /// What is needed; nothing for what is counted by pieces, which are its packs.
    pub needed: Option<Grams>,
    /// What is there.
    pub stock: Option<Grams>,
    /// What is missing; likewise.
    pub missing: Option<Grams>,
    /// Whole packs; nothing where it is not known what one holds.
    pub packs: Option<u32>,
    /// What a pack holds.
    pub pack: Option<Grams>,
    /// What the packs cost.
    pub cost: Option<Decimal>,
    /// In which currency.
    pub currency: Option<Currency>,
}

/// Writes what has to be bought.
#[must_use]
pub fn write_shopping(rows: &[ShoppingRow], mark: DecimalMark) -> String {
    let mut writer = writer_for(mark);
    let _ = writer.write_record(SHOPPING_COLUMNS);
    for row in rows {
        let _ = writer.write_record([
            shielded(&row.name),
            mass(row.needed, mark),
            mass(row.stock, mark),
            mass(row.missing, mark),
            row.packs.map_or_else(String::new, |packs| packs.to_string()),
            mass(row.pack, mark),
            row.cost
                .zip(row.currency)
                .map_or_else(String::new, |(cost, currency)| write_between(cost, decimals_of(currency), 6, mark)),
            row.currency.map_or_else(String::new, |currency| currency.code().to_owned()),
        ]);
    }
    text_from(writer)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use rust_decimal::dec;

    fn row(name: &str, price: Decimal, currency: &str) -> PriceRow {
        PriceRow {
            line: 0,
            material: "c8".into(),
            name: name.into(),
            pack: Some(Grams::new(dec!(250)).unwrap()),
            price: Some(Money::new(price, Currency::new(currency).unwrap())),
            shipping: Some(dec!(2.5)),
            stock: None,
        }
    }

    proptest! {
        #[test]
        fn prices_read_back_as_they_were_written(
            names in proptest::collection::vec("[^\\r\\n]{0,20}|[=+@-][ -~]{0,12}|[a-z,;\"\n]{1,12}", 1..6),
            cents in 0i64..100_000_000,
            comma: bool,
        ) {
            let mark = if comma { DecimalMark::Comma } else { DecimalMark::Point };
            let rows: Vec<PriceRow> = names
                .iter()
                .map(|name| row(name.trim(), Decimal::new(cents, 2).normalize(), "CHF"))
                .collect();
            let table = read_prices(write_prices(&rows, mark).as_bytes(), mark).unwrap();
            prop_assert!(table.problems.is_empty(), "{:?}", table.problems);
            let read: Vec<PriceRow> = table.rows.into_iter().map(|row| PriceRow { line: 0, ..row }).collect();
            prop_assert_eq!(read, rows);
        }

        #[test]
        fn any_bytes_are_read_or_refused(bytes in proptest::collection::vec(any::<u8>(), 0..300)) {
            let _ = read_prices(&bytes, DecimalMark::Point);
            let _ = read_prices(&[b"name,price,currency\n", bytes.as_slice()].concat(), DecimalMark::Comma);
        }
    }

    #[test]
    fn what_is_wrong_is_told_line_by_line() {
        let text = "name;price;currency;pack_g\nOil;12,90;EUR;250\n;3;EUR;\nWax;-1;EUR;10\nGum;4;euro;10\n=1+1;4;EUR;10\nSalt;4;;10\nClay;4;EUR;10;surplus\n";
        let table = read_prices(text.as_bytes(), DecimalMark::Comma).unwrap();
        let told: Vec<(u64, &str, &str)> =
            table.problems.iter().map(|each| (each.line, each.column, each.problem.code())).collect();
        assert_eq!(
            told,
            [
                (3, "name", "table.no-name"),
                (4, "price", "number.out-of-range"),
                (5, "currency", "table.unknown-currency"),
                (6, "name", "table.spreadsheet-formula"),
                (6, "name", "table.no-name"),
                (7, "currency", "table.incomplete"),
                (8, "name", "table.too-many-cells"),
            ]
        );
        assert_eq!(table.rows[0].price.unwrap().amount(), dec!(12.90));
        // Whatever ends its lines.
        let again = read_prices(text.replace('\n', "\r\n").as_bytes(), DecimalMark::Comma).unwrap();
        assert_eq!(again, table);
        assert_eq!(read_prices(b"price\n1\n", DecimalMark::Point).unwrap_err().code(), "table.no-name-column");
    }

    #[test]
    fn what_has_to_be_bought_is_a_table_of_rfc_4180() {
        let row = ShoppingRow {
            name: "Oil, \"cold\" pressed".into(),
            needed: Some(Grams::new(dec!(40.8)).unwrap()),
            stock: None,
            missing: Some(Grams::new(dec!(40.8)).unwrap()),
            packs: Some(1),
            pack: Some(Grams::new(dec!(250)).unwrap()),
            cost: Some(dec!(12.50)),
            currency: Some(Currency::new("EUR").unwrap()),
        };
        assert_eq!(
            write_shopping(&[row], DecimalMark::Point),
            "\u{feff}name,needed_g,stock_g,missing_g,packs,pack_g,cost,currency\r\n\"Oil, \"\"cold\"\" pressed\",40.8,,40.8,1,250,12.50,EUR\r\n"
        );
    }
}
