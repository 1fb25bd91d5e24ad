//! What the maker has of a material, and what they know better than the catalogue.

use crate::json::{Damage, Value, Writer};
use crate::record::Kept;
use stillroom_core::{Currency, Density, Grams, MaterialId, Money};

/// What the maker has of a material.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct Holding {
    /// Price of a pack.
    #[cfg_attr(test, schemars(with = "Option<crate::schema::MoneySchema>"))]
    pub price: Option<Money>,
    /// What a pack holds.
    pub pack: Option<Grams>,
    /// How much is there.
    pub stock: Option<Grams>,
    /// Lot number of what is there.
    #[cfg_attr(test, schemars(default))]
    pub lot: String,
    /// Last day it should be used, as `2027-05-31`.
    #[cfg_attr(test, schemars(default))]
    pub expiry: String,
    /// Density measured by the maker; it takes the place of the catalogue's on this device.
    pub density: Option<Density>,
    /// Usual percent by the maker's own experience; it takes the place of the catalogue's on this device.
    #[cfg_attr(test, schemars(default))]
    pub usual: String,
    /// What the maker notes.
    #[cfg_attr(test, schemars(default))]
    pub note: String,
}

/// What the maker has of a material, as it is kept.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct HoldingRecord {
    /// Counts the times it was written.
    pub revision: u64,
    /// The material.
    pub material: MaterialId,
    /// What there is of it.
    pub holding: Holding,
}

impl Kept for HoldingRecord {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        let holding = value.need("holding")?;
        let price = match holding.field("price")? {
            None => None,
            Some(price) => {
                let currency = price.need("currency")?;
                let code = Currency::new(currency.text()?).or_else(|_| currency.damaged())?;
                Some(Money::new(price.need("amount")?.worded()?, code))
            }
        };
        Ok(Self {
            revision: value.need("revision")?.whole()?,
            material: value.need("material")?.worded()?,
            holding: Holding {
                price,
                pack: holding.worded_field("pack")?,
                stock: holding.worded_field("stock")?,
                lot: holding.text_field("lot")?,
                expiry: holding.text_field("expiry")?,
                density: holding.worded_field("density")?,
                usual: holding.text_field("usual")?,
                note: holding.text_field("note")?,
            },
        })
    }

    fn write(&self, writer: &mut Writer) {
        let Holding { price, pack, stock, lot, expiry, density, usual, note } = &self.holding;
        writer.field("revision").whole(self.revision);
        writer.field("material").worded(&self.material);
        writer.field("holding").object(|writer| {
            if let Some(price) = price {
                writer.field("price").object(|writer| {
                    writer.field("amount").worded(&price.amount());
                    writer.field("currency").text(price.currency().code());
                });
            }
            writer.worded_field("pack", pack.as_ref());
            writer.worded_field("stock", stock.as_ref());
            writer.text_field("lot", lot);
            writer.text_field("expiry", expiry);
            writer.worded_field("density", density.as_ref());
            writer.text_field("usual", usual);
            writer.text_field("note", note);
        });
    }
}

/// Whether a text is a day of the calendar written as `2027-05-31`.
#[must_use]
pub fn is_day(text: &str) -> bool {
    let mut parts = text.split('-');
    let (Some(year), Some(month), Some(day), None) = (parts.next(), parts.next(), parts.next(), parts.next()) else {
        return false;
    };
    let number = |part: &str, length: usize| -> Option<u32> {
        (part.len() == length && part.bytes().all(|byte| byte.is_ascii_digit())).then(|| part.parse().ok())?
    };
    let (Some(year), Some(month), Some(day)) = (number(year, 4), number(month, 2), number(day, 2)) else {
        return false;
    };
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let days = match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => return false,
    };
    (1..=days).contains(&day)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{read, write};
    use rust_decimal::dec;

    #[test]
    fn a_holding_reads_back_as_it_was_written() {
        let holding = Holding {
            price: Some(Money::new(dec!(12.90), Currency::new("EUR").unwrap())),
            pack: Some(Grams::new(dec!(100)).unwrap()),
            stock: None,
            lot: "L-7".into(),
            expiry: "2027-05-31".into(),
            density: Some(Density::new(dec!(0.915)).unwrap()),
            usual: String::new(),
            note: "second shelf".into(),
        };
        let record = HoldingRecord { revision: 2, material: MaterialId::Catalogue(10), holding };
        assert_eq!(read::<HoldingRecord>(&write(&record)), Ok(record));
    }

    #[test]
    fn days_are_those_of_the_calendar() {
        for day in ["2024-02-29", "2026-12-31", "2000-02-29"] {
            assert!(is_day(day), "{day}");
        }
        for wrong in
            ["", "2026-13-01", "2026-02-29", "1900-02-29", "26-01-01", "2026-1-1", "2026-01-00", "2026-01-01-1"]
        {
            assert!(!is_day(wrong), "{wrong}");
        }
    }
}
