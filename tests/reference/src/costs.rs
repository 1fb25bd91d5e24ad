//! What batches cost, worked by hand with the arithmetic written out beside each.
//!
//! `40/250@10+2.50~120 EUR`: 40 g of packs of 250 g at 10 and 2.50 of shipping, 120 g there; `2/? EUR`: 2 g without a price.

use crate::{EvidenceSet, Worst, count_bases, rows};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive as _;
use serde::Deserialize;
use stillroom_core::cost::{Making, Need, Pack, reckon, rounded};
use stillroom_core::{Currency, Grams, MaterialId, Money, Percent};

const FIXTURE: &str = include_str!("../data/costs_worked.csv");

#[derive(Debug, Deserialize)]
struct Case {
    title: String,
    currency: String,
    needs: String,
    units: u32,
    packaging: Option<Decimal>,
    labour: Option<Decimal>,
    wastage: Decimal,
    margin: Decimal,
    materials: Decimal,
    batch: Decimal,
    unit: Decimal,
    sold_for: Decimal,
    hundred_grams: Decimal,
    to_buy: Decimal,
    packs: String,
    left: String,
    missing_price: String,
    #[cfg_attr(not(test), allow(dead_code, reason = "a row without its arithmetic must not parse"))]
    worked: String,
    basis: String,
}

/// Every amount as its currency writes it, every pack and what is left; the unit is the deviation in units of the currency,
/// packs or grams.
///
/// # Panics
/// If a row cannot be read or reckoned.
#[must_use]
pub fn evidence() -> Vec<EvidenceSet> {
    let cases: Vec<Case> = rows("costs_worked.csv", FIXTURE);
    let mut worst = Worst::default();
    for case in &cases {
        for (_, found, expected) in compare(case) {
            worst.see((found - expected).to_f64().unwrap_or(f64::NAN));
        }
    }
    let source = format!(
        "worked by hand, the arithmetic beside each ({})",
        count_bases(cases.iter().map(|row| row.basis.as_str()))
    );
    vec![EvidenceSet::of("costs.worked", source, worst, 0.0, "units, packs or grams")]
}

fn number(text: &str, case: &Case) -> Decimal {
    text.parse().unwrap_or_else(|_| panic!("{}: `{text}` is no number", case.title))
}

fn read_need(text: &str, place: u32, case: &Case) -> Need {
    let grams = |text: &str| Grams::new(number(text, case)).expect("a mass");
    let (text, code) = text.split_once(' ').expect("a currency");
    let (mass, sold) = text.split_once('/').expect("mass and pack");
    let (sold, stock) = sold.split_once('~').map_or((sold, None), |(sold, stock)| (sold, Some(stock)));
    let pack = sold.split_once('@').map(|(holds, price)| {
        let (price, shipping) = price.split_once('+').unwrap_or((price, "0"));
        Pack {
            holds: grams(holds),
            price: Money::new(number(price, case), Currency::new(code).expect("a currency")),
            shipping: number(shipping, case),
        }
    });
    let material = MaterialId::Catalogue(place);
    Need { material, mass: grams(mass), pack, is_free: false, stock: stock.map(grams) }
}

/// What was reckoned of a case beside what was worked.
fn compare(case: &Case) -> Vec<(&'static str, Decimal, Decimal)> {
    let currency = Currency::new(&case.currency).expect("a currency");
    let needs: Vec<Need> = (1..).zip(case.needs.split('|')).map(|(place, text)| read_need(text, place, case)).collect();
    let percent = |value| Percent::new(value).expect("a percent");
    let making = Making {
        currency: Some(currency),
        units: case.units,
        packaging: case.packaging,
        other_packaging: Decimal::ZERO,
        labour: case.labour,
        wastage: percent(case.wastage),
        margin: percent(case.margin),
    };
    let cost = reckon(&needs, &making).unwrap_or_else(|error| panic!("{}: {error}", case.title));
    let mut compared = Vec::new();
    let mut see = |what: &'static str, found: Decimal, expected: Decimal| compared.push((what, found, expected));
    let written = |amount: Option<Decimal>| rounded(amount.expect("an amount"), currency);
    see("materials", written(Some(cost.materials)), case.materials);
    see("batch", written(Some(cost.batch)), case.batch);
    see("unit", written(cost.unit), case.unit);
    see("sold for", written(cost.sold_for), case.sold_for);
    see("100 g", written(cost.hundred_grams), case.hundred_grams);
    see("to buy", written(Some(cost.to_buy)), case.to_buy);
    for ((line, packs), left) in cost.lines.iter().zip(case.packs.split(';')).zip(case.left.split(';')) {
        if packs == "?" {
            assert_eq!((line.buy.packs, line.cost), (None, None), "{}", case.title);
            continue;
        }
        see("packs", Decimal::from(line.buy.packs.expect("packs")), number(packs, case));
        see("left", line.buy.left.expect("what is left").value(), number(left, case));
    }
    let without: Vec<String> = cost
        .unpriced
        .iter()
        .chain(&cost.other_currency)
        .map(|id| match id {
            MaterialId::Catalogue(place) => place.to_string(),
            other => other.to_string(),
        })
        .collect();
    assert_eq!(without.join(";"), case.missing_price, "{}", case.title);
    compared
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_amount_is_as_worked() {
        for case in rows::<Case>("costs_worked.csv", FIXTURE) {
            for (what, found, expected) in compare(&case) {
                assert_eq!(found, expected, "{}: {what}", case.title);
            }
            assert!(case.worked.len() > 30, "{}: its arithmetic is missing", case.title);
        }
        // Sixteen cases, six amounts of each, packs and what is left of each material with a price.
        crate::hold(&evidence(), &[("costs.worked", 130)]);
    }
}
