//! What the maker has of a material, and what they know better than the catalogue.

use crate::json::{Damage, Value, Writer};
use crate::record::Kept;
use rust_decimal::Decimal;
use stillroom_core::{Currency, Density, Grams, MaterialId, Money};

/// Most prices that are remembered of a material. The oldest go first.
pub const MOST_PRICES: usize = 60;

/// What the maker has of a material.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct Holding {
    /// Price of a pack.
    #[cfg_attr(test, schemars(with = "Option<crate::schema::MoneySchema>"))]
    pub price: Option<Money>,
    /// What a pack holds.
    pub pack: Option<Grams>,
    /// What getting a pack here adds, in the currency of its price.
    #[cfg_attr(test, schemars(with = "Option<String>"))]
    pub shipping: Option<Decimal>,
    /// Every price that was noted, a line each and the oldest first: day, price, currency, what a pack held, shipping; as
    /// `2026-11-28 12.90 EUR 100 2.50`, with `-` for what was not said.
    #[cfg_attr(test, schemars(default))]
    pub prices: String,
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

/// What a pack cost on a day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotedPrice {
    /// The day it was noted on, as `2026-11-28`.
    pub day: String,
    /// Price of a pack.
    pub price: Money,
    /// What a pack held.
    pub pack: Option<Grams>,
    /// What getting it here added.
    pub shipping: Option<Decimal>,
}

impl NotedPrice {
    /// Reads a line; `None` if it is none of a price.
    fn read(line: &str) -> Option<Self> {
        let words: Vec<&str> = line.split(' ').collect();
        let [day, amount, currency, pack, shipping] = words.as_slice() else { return None };
        let said = |word: &str| match word {
            "-" => Some(None),
            word => word.parse::<Decimal>().ok().map(Some),
        };
        Some(Self {
            day: (*day).to_owned(),
            price: Money::new(amount.parse().ok()?, Currency::new(currency).ok()?),
            pack: said(pack)?.map(Grams::new).transpose().ok()?,
            shipping: said(shipping)?,
        })
    }

    fn write(&self) -> String {
        let said = |number: Option<Decimal>| number.map_or_else(|| "-".to_owned(), |number| number.to_string());
        let (amount, currency) = (self.price.amount(), self.price.currency());
        let (pack, shipping) = (said(self.pack.map(Grams::value)), said(self.shipping));
        format!("{} {amount} {} {pack} {shipping}", self.day, currency.code())
    }
}

impl Holding {
    /// Notes what a pack costs as it stands now, if that is news. What is noted twice on a day is corrected: somebody is still
    /// typing. Nothing is noted where there is no price.
    ///
    /// ```
    /// use rust_decimal::dec;
    /// use stillroom_core::{Currency, Money};
    /// use stillroom_exchange::holding::Holding;
    /// let euro = Currency::new("EUR")?;
    /// let mut oil = Holding { price: Some(Money::new(dec!(9), euro)), ..Holding::default() };
    /// oil.note_price("2026-11-01");
    /// oil.price = Some(Money::new(dec!(11), euro));
    /// oil.note_price("2026-11-28");
    /// oil.note_price("2026-11-30");
    /// assert_eq!(oil.prices, "2026-11-01 9 EUR - -\n2026-11-28 11 EUR - -");
    /// # Ok::<(), stillroom_core::QuantityError>(())
    /// ```
    pub fn note_price(&mut self, day: &str) {
        let Some(price) = self.price else { return };
        let now = NotedPrice { day: day.to_owned(), price, pack: self.pack, shipping: self.shipping };
        let mut noted = self.noted_prices();
        if noted.last().is_some_and(|last| last.day == now.day) {
            noted.pop();
        }
        let is_as_before =
            |last: &NotedPrice| (last.price, last.pack, last.shipping) == (now.price, now.pack, now.shipping);
        if noted.last().is_none_or(|last| !is_as_before(last)) {
            noted.push(now);
        }
        let beyond = noted.len().saturating_sub(MOST_PRICES);
        let lines: Vec<String> = noted.iter().skip(beyond).map(NotedPrice::write).collect();
        self.prices = lines.join("\n");
    }

    /// What a pack cost on a day, written as `2026-11-28`: what was noted last by then. `None` where nothing was.
    ///
    /// ```
    /// use stillroom_exchange::holding::Holding;
    /// let prices = "2026-11-01 9 EUR 100 -\n2026-11-28 11 EUR 100 -".to_owned();
    /// let oil = Holding { prices, ..Holding::default() };
    /// let on = |day| oil.price_on(day).map(|noted| noted.price.amount().to_string());
    /// assert_eq!((on("2026-10-31"), on("2026-11-27"), on("2026-11-28")), (None, Some("9".into()), Some("11".into())));
    /// ```
    #[must_use]
    pub fn price_on(&self, day: &str) -> Option<NotedPrice> {
        self.noted_prices().into_iter().rev().find(|noted| noted.day.as_str() <= day)
    }

    /// Every price that was noted, oldest first; the last is what counts now. A line that is none is passed over.
    #[must_use]
    pub fn noted_prices(&self) -> Vec<NotedPrice> {
        self.prices.lines().filter_map(NotedPrice::read).collect()
    }
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
                shipping: holding.worded_field("shipping")?,
                prices: holding.text_field("prices")?,
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
        let Holding { price, pack, shipping, prices, stock, lot, expiry, density, usual, note } = &self.holding;
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
            writer.worded_field("shipping", shipping.as_ref());
            writer.text_field("prices", prices);
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
        let euro = |amount| Money::new(amount, Currency::new("EUR").unwrap());
        let holding = Holding {
            price: Some(euro(dec!(12.90))),
            pack: Some(Grams::new(dec!(100)).unwrap()),
            shipping: Some(dec!(2.5)),
            prices: "2026-01-05 11 EUR 100 -\n2026-11-28 12.90 EUR 100 2.5".into(),
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
    fn holdings_of_either_age_are_read_for_ever() {
        for (golden, noted) in
            [(include_str!("../golden/holding-1.json"), 0), (include_str!("../golden/holding-1-prices.json"), 2)]
        {
            let record: HoldingRecord = read(golden.trim_end()).unwrap();
            assert_eq!(record.holding.price.unwrap().amount(), dec!(4.50));
            assert_eq!(record.holding.noted_prices().len(), noted);
            assert_eq!(read::<HoldingRecord>(&write(&record)), Ok(record));
        }
    }

    #[test]
    fn as_many_prices_are_remembered_as_fit() {
        let mut holding = Holding::default();
        for count in 0..100u32 {
            holding.price = Some(Money::new(count.into(), Currency::new("EUR").unwrap()));
            holding.note_price(&format!("day-{count}"));
        }
        assert_eq!(holding.noted_prices().len(), MOST_PRICES);
        assert_eq!(holding.noted_prices().last().unwrap().day, "day-99");
        // The same day is corrected, also back to what it was before.
        holding.price = Some(Money::new(dec!(98), Currency::new("EUR").unwrap()));
        holding.note_price("day-99");
        assert_eq!(holding.noted_prices().last().unwrap().day, "day-98");
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
