//! What a batch costs and what to buy for it: materials by what is used of their packs, what making it adds, and whole packs.
//!
//! A price that is missing is said and never taken for nothing: [`Cost::unpriced`] names it, and every sum is then what is
//! known at least. Prices in another currency than the one that is reckoned in are not added up: nothing here
//! knows a rate.

use crate::apportion::round_to_total;
use crate::material::MaterialId;
use crate::quantity::{Currency, Grams, Money, Percent};
use rust_decimal::{Decimal, RoundingStrategy};

/// A pack as it is bought.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pack {
    /// What it holds.
    pub holds: Grams,
    /// What it costs.
    pub price: Money,
    /// What getting it here adds, in the currency of the price.
    pub shipping: Decimal,
}

impl Pack {
    /// Price and shipping.
    fn cost(&self) -> Option<Decimal> {
        self.price.amount().checked_add(self.shipping)
    }
}

/// A material that a batch needs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Need {
    /// The material.
    pub material: MaterialId,
    /// How much goes into the batch.
    pub mass: Grams,
    /// How it is sold, where that is known.
    pub pack: Option<Pack>,
    /// Whether it may count as free where no price is known, as water from the tap does.
    pub is_free: bool,
    /// What is there of it.
    pub stock: Option<Grams>,
}

/// What making a batch adds to its materials, in the currency of the materials.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Making {
    /// Currency it is reckoned in; `None` for that of the first price.
    pub currency: Option<Currency>,
    /// Units that come out.
    pub units: u32,
    /// Container and label of a unit; `None` where that is not known.
    pub packaging: Option<Decimal>,
    /// What containers of further kinds cost, all of them.
    pub other_packaging: Decimal,
    /// Labour for the batch; `None` where none is counted.
    pub labour: Option<Decimal>,
    /// Material that is lost on the way, in percent of what is weighed out.
    pub wastage: Percent,
    /// What is added to the cost to sell it, in percent of the cost.
    pub margin: Percent,
}

impl Default for Making {
    /// Materials alone, nothing wasted and nothing added.
    fn default() -> Self {
        Self {
            currency: None,
            units: 0,
            packaging: None,
            other_packaging: Decimal::ZERO,
            labour: None,
            wastage: Percent::ZERO,
            margin: Percent::ZERO,
        }
    }
}

/// What one material costs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LineCost {
    /// The material.
    pub material: MaterialId,
    /// What is used of it costs so much, with what is wasted; `None` where no price is known.
    pub cost: Option<Decimal>,
    /// Whole packs to buy.
    pub buy: Buy,
}

/// Whole packs to buy of a material.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Buy {
    /// What is needed, with what is wasted.
    pub needed: Grams,
    /// What of it is not there.
    pub missing: Grams,
    /// Packs; `None` where it is not known what one holds.
    pub packs: Option<u32>,
    /// What they cost.
    pub cost: Option<Decimal>,
    /// What is left afterwards, of packs and stock.
    pub left: Option<Grams>,
}

/// What a batch costs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cost {
    /// In which currency; `None` where none was said and no price is known.
    pub currency: Option<Currency>,
    /// The materials, in their order.
    pub lines: Vec<LineCost>,
    /// All materials with a price.
    pub materials: Decimal,
    /// Containers and labels.
    pub packaging: Decimal,
    /// Labour.
    pub labour: Decimal,
    /// All of it.
    pub batch: Decimal,
    /// One unit.
    pub unit: Option<Decimal>,
    /// What a unit is sold for with the margin.
    pub sold_for: Option<Decimal>,
    /// 100 g of what is made.
    pub hundred_grams: Option<Decimal>,
    /// Whole packs that have to be bought.
    pub to_buy: Decimal,
    /// Materials without a price: every sum lacks them.
    pub unpriced: Vec<MaterialId>,
    /// Materials with a price in another currency: every sum lacks them, too.
    pub other_currency: Vec<MaterialId>,
}

/// Why nothing can be reckoned.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum CostError {
    /// A pack holds nothing.
    #[error("a pack holds nothing")]
    EmptyPack,
    /// A number is larger than can be reckoned with.
    #[error("a number is too large")]
    TooLarge,
}

impl CostError {
    /// Stable code.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::EmptyPack => "cost.empty-pack",
            Self::TooLarge => "cost.too-large",
        }
    }
}

/// What a batch costs.
///
/// A material costs `mass × (1 + wastage) × (price + shipping) ÷ what a pack holds`; packs to buy are whole. *Units*: grams and
/// percent in; amounts of the currency out, not rounded ([`rounded`] does). *Source*: arithmetic; the margin is on cost, common
/// practice.
///
/// # Errors
/// `cost.empty-pack`, `cost.too-large`.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::cost::{Making, Need, Pack, reckon};
/// use stillroom_core::{Currency, Grams, MaterialId, Money};
/// let grams = |mass| Grams::new(mass).unwrap();
/// let pack = Pack {
///     holds: grams(dec!(250)),
///     price: Money::new(dec!(10), Currency::new("EUR")?),
///     shipping: dec!(2.50),
/// };
/// let oil = Need { material: MaterialId::Catalogue(8), mass: grams(dec!(40)), pack: Some(pack), is_free: false, stock: None };
/// let cost = reckon(&[oil], &Making { units: 4, packaging: Some(dec!(0.80)), ..Making::default() })?;
/// // 40 g of 250 g at 12.50, and four jars.
/// assert_eq!((cost.materials, cost.batch, cost.unit), (dec!(2), dec!(5.20), Some(dec!(1.30))));
/// assert_eq!((cost.lines[0].buy.packs, cost.to_buy), (Some(1), dec!(12.50)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn reckon(needs: &[Need], making: &Making) -> Result<Cost, CostError> {
    let priced = || needs.iter().find_map(|need| need.pack.map(|pack| pack.price.currency()));
    let currency = making.currency.or_else(priced);
    let (mut unpriced, mut other_currency, mut lines) = (Vec::new(), Vec::new(), Vec::new());
    let (mut materials, mut to_buy, mut whole) = (Decimal::ZERO, Decimal::ZERO, Decimal::ZERO);
    let large = CostError::TooLarge;
    let add = |sum: &mut Decimal, amount: Decimal| {
        *sum = sum.checked_add(amount).ok_or(large)?;
        Ok::<(), CostError>(())
    };
    for need in needs {
        if need.pack.is_some_and(|pack| pack.holds.is_zero()) {
            return Err(CostError::EmptyPack);
        }
        add(&mut whole, need.mass.value())?;
        let wasted = need.mass.value().checked_mul(making.wastage.value()).ok_or(large)? / Decimal::ONE_HUNDRED;
        let needed = Grams::new(need.mass.value().checked_add(wasted).ok_or(large)?).map_err(|_| large)?;
        let pack = need.pack.filter(|pack| Some(pack.price.currency()) == currency);
        let cost = match pack {
            Some(pack) => {
                let paid = pack.cost().ok_or(large)?;
                let used = needed.value().checked_mul(paid).and_then(|paid| paid.checked_div(pack.holds.value()));
                Some(used.ok_or(large)?)
            }
            None if need.pack.is_some() => {
                other_currency.push(need.material);
                None
            }
            None if need.is_free => Some(Decimal::ZERO),
            None => {
                unpriced.push(need.material);
                None
            }
        };
        let buy = buy(need, needed, pack)?;
        add(&mut materials, cost.unwrap_or_default())?;
        add(&mut to_buy, buy.cost.unwrap_or_default())?;
        lines.push(LineCost { material: need.material, cost, buy });
    }
    let units = Decimal::from(making.units);
    let packaging = making.packaging.unwrap_or_default().checked_mul(units);
    let packaging = packaging.and_then(|it| it.checked_add(making.other_packaging)).ok_or(large)?;
    let labour = making.labour.unwrap_or_default();
    let batch = [packaging, labour].into_iter().try_fold(materials, Decimal::checked_add).ok_or(large)?;
    let unit = batch.checked_div(units);
    let margin = Decimal::ONE + making.margin.value() / Decimal::ONE_HUNDRED;
    let hundred_grams = match batch.checked_mul(Decimal::ONE_HUNDRED) {
        Some(hundred) => hundred.checked_div(whole),
        None => return Err(large),
    };
    Ok(Cost {
        currency,
        lines,
        materials,
        packaging,
        labour,
        batch,
        unit,
        sold_for: unit.and_then(|unit| unit.checked_mul(margin)),
        hundred_grams,
        to_buy,
        unpriced,
        other_currency,
    })
}

/// Units of a kind, where a batch fills several.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct UnitsOfKind {
    /// So many come out.
    pub count: u32,
    /// What one takes.
    pub each: Grams,
    /// Container and label of one; `None` where that is not known, and lacks then.
    pub packaging: Option<Decimal>,
}

/// What a unit of each kind costs: its part by mass of `content`, which is what materials and labour cost together, and its
/// packaging. What is left over is borne by what was filled. `None` where none of a kind comes out, or past what can be
/// reckoned with.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::Grams;
/// use stillroom_core::cost::{UnitsOfKind, unit_of_each};
/// let kind = |count, each, packaging| UnitsOfKind { count, each: Grams::new(each).unwrap(), packaging: Some(packaging) };
/// // 620 g hold 31: 50 g are 2.50 of it, 30 g are 1.50.
/// let kinds = [kind(10, dec!(50), dec!(0.80)), kind(4, dec!(30), dec!(0.60))];
/// assert_eq!(unit_of_each(dec!(31), &kinds), [Some(dec!(3.30)), Some(dec!(2.10))]);
/// ```
#[must_use]
pub fn unit_of_each(content: Decimal, kinds: &[UnitsOfKind]) -> Vec<Option<Decimal>> {
    let filled = kinds.iter().try_fold(Decimal::ZERO, |sum, kind| {
        sum.checked_add(Decimal::from(kind.count).checked_mul(kind.each.value())?)
    });
    let one = |kind: &UnitsOfKind| {
        let inside = content.checked_mul(kind.each.value())?.checked_div(filled?)?;
        inside.checked_add(kind.packaging.unwrap_or_default()).filter(|_| kind.count > 0)
    };
    kinds.iter().map(one).collect()
}

fn buy(need: &Need, needed: Grams, pack: Option<Pack>) -> Result<Buy, CostError> {
    let stock = need.stock.unwrap_or(Grams::ZERO);
    let missing = needed.checked_sub(stock).unwrap_or(Grams::ZERO);
    let none = Buy { needed, missing, packs: None, cost: None, left: None };
    // Of what was given in another currency the packs are known, though not what they cost here.
    let Some(known) = need.pack else { return Ok(none) };
    let packs = missing.value().checked_div(known.holds.value()).ok_or(CostError::TooLarge)?.ceil();
    let bought = packs.checked_mul(known.holds.value()).ok_or(CostError::TooLarge)?;
    let left = stock.value().checked_add(bought).and_then(|there| there.checked_sub(needed.value()));
    let cost = match pack {
        Some(pack) => {
            let paid = pack.cost().ok_or(CostError::TooLarge)?;
            Some(packs.checked_mul(paid).ok_or(CostError::TooLarge)?)
        }
        None => None,
    };
    Ok(Buy {
        packs: u32::try_from(packs).ok(),
        cost,
        left: left.and_then(|left| Grams::new(left.max(Decimal::ZERO)).ok()),
        ..none
    })
}

/// Decimals of the smallest coin or accounting unit of a currency. *Source*: ISO 4217, minor units (from memory).
#[must_use]
pub fn decimals_of(currency: Currency) -> u32 {
    match currency.code() {
        "BIF" | "CLP" | "DJF" | "GNF" | "ISK" | "JPY" | "KMF" | "KRW" | "PYG" | "RWF" | "UGX" | "VND" | "VUV"
        | "XAF" | "XOF" | "XPF" => 0,
        "BHD" | "IQD" | "JOD" | "KWD" | "LYD" | "OMR" | "TND" => 3,
        _ => 2,
    }
}

/// An amount as the currency writes it; a half goes away from nothing.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::{Currency, cost::rounded};
/// assert_eq!(rounded(dec!(1.005), Currency::new("EUR")?), dec!(1.01));
/// assert_eq!(rounded(dec!(149.5), Currency::new("JPY")?), dec!(150));
/// # Ok::<(), stillroom_core::QuantityError>(())
/// ```
#[must_use]
pub fn rounded(amount: Decimal, currency: Currency) -> Decimal {
    amount.round_dp_with_strategy(decimals_of(currency), RoundingStrategy::MidpointAwayFromZero)
}

/// Amounts as the currency writes them, so that they sum to what their sum is written as.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::{Currency, cost::shared_out};
/// let euro = Currency::new("EUR")?;
/// assert_eq!(shared_out(&[dec!(0.334), dec!(0.333), dec!(0.333)], euro), [dec!(0.34), dec!(0.33), dec!(0.33)]);
/// # Ok::<(), stillroom_core::QuantityError>(())
/// ```
#[must_use]
pub fn shared_out(amounts: &[Decimal], currency: Currency) -> Vec<Decimal> {
    let total = amounts.iter().try_fold(Decimal::ZERO, |sum, amount| sum.checked_add(*amount));
    let shared = total.and_then(|total| round_to_total(amounts, rounded(total, currency), decimals_of(currency)));
    // Past what can be counted in coins each is rounded by itself.
    shared.unwrap_or_else(|| amounts.iter().map(|amount| rounded(*amount, currency)).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use rust_decimal::dec;

    fn grams(mass: Decimal) -> Grams {
        Grams::new(mass).unwrap()
    }

    fn currency(code: &str) -> Currency {
        Currency::new(code).unwrap()
    }

    fn needs() -> impl Strategy<Value = Vec<Need>> {
        let one = (1_i64..500_000, 1_i64..100_000, 0_i64..5_000, 1_i64..2_000_000, 0_u32..5, 0_i64..300_000);
        proptest::collection::vec(one, 1..12).prop_map(|all| {
            all.into_iter()
                .enumerate()
                .map(|(at, (mass, price, shipping, holds, fate, stock))| Need {
                    material: MaterialId::Catalogue(u32::try_from(at).unwrap()),
                    mass: grams(Decimal::new(mass, 2)),
                    pack: (fate > 0).then(|| Pack {
                        holds: grams(Decimal::new(holds, 1)),
                        price: Money::new(Decimal::new(price, 2), currency("EUR")),
                        shipping: Decimal::new(shipping, 2),
                    }),
                    is_free: false,
                    stock: (fate > 2).then(|| grams(Decimal::new(stock, 2))),
                })
                .collect()
        })
    }

    /// Digits lost by dividing, relative to what is reckoned.
    const DIVIDED: Decimal = dec!(0.00000000000000001);

    proptest! {
        #[test]
        fn the_cost_of_materials_is_linear_in_the_size_of_the_batch(needs in needs(), times in 2_u32..50, wastage in 0_i64..20) {
            let making = Making { wastage: Percent::new(Decimal::from(wastage)).unwrap(), ..Making::default() };
            let larger: Vec<Need> = needs
                .iter()
                .map(|need| Need { mass: grams(need.mass.value() * Decimal::from(times)), ..*need })
                .collect();
            let (one, many) = (reckon(&needs, &making).unwrap(), reckon(&larger, &making).unwrap());
            let off = (one.materials * Decimal::from(times) - many.materials).abs();
            prop_assert!(off <= DIVIDED * (Decimal::ONE + many.materials), "{} {}", one.materials, many.materials);
            // What is bought is at least what is missing of each, and less than a pack more.
            for (need, line) in larger.iter().zip(&many.lines) {
                let (Some(pack), Some(packs)) = (need.pack, line.buy.packs) else { continue };
                let bought = Decimal::from(packs) * pack.holds.value();
                prop_assert!(bought >= line.buy.missing.value());
                prop_assert!(bought - pack.holds.value() < line.buy.missing.value() || packs == 0);
                let there = need.stock.map_or(Decimal::ZERO, Grams::value) + bought - line.buy.needed.value();
                prop_assert_eq!(line.buy.left.unwrap().value(), there);
            }
        }

        #[test]
        fn units_of_several_kinds_cost_together_what_the_batch_costs(
            content in 0_i64..10_000_000,
            kinds in proptest::collection::vec((0_u32..200, 1_i64..100_000, 0_i64..1_000), 1..6),
        ) {
            let content = Decimal::new(content, 4);
            let kinds: Vec<UnitsOfKind> = kinds
                .into_iter()
                .map(|(count, each, packaging)| UnitsOfKind {
                    count,
                    each: grams(Decimal::new(each, 3)),
                    packaging: Some(Decimal::new(packaging, 2)),
                })
                .collect();
            let units = unit_of_each(content, &kinds);
            let together: Decimal =
                units.iter().zip(&kinds).filter_map(|(unit, kind)| Some((*unit)? * Decimal::from(kind.count))).sum();
            let packaging: Decimal =
                kinds.iter().filter_map(|kind| Some(kind.packaging? * Decimal::from(kind.count))).sum();
            if kinds.iter().any(|kind| kind.count > 0) {
                let off = (together - content - packaging).abs();
                prop_assert!(off <= DIVIDED * (Decimal::ONE + content), "{} {}", together, content + packaging);
            } else {
                prop_assert!(units.iter().all(Option::is_none));
            }
            let one = Making { units: 3, packaging: Some(dec!(0.5)), other_packaging: packaging, ..Making::default() };
            prop_assert_eq!(reckon(&[], &one).unwrap().packaging, dec!(1.5) + packaging);
        }

        #[test]
        fn what_is_written_sums_to_what_the_sum_is_written_as(
            amounts in proptest::collection::vec(0_i64..10_000_000, 1..20),
            code in prop_oneof![Just("EUR"), Just("JPY"), Just("TND")],
        ) {
            let amounts: Vec<Decimal> = amounts.into_iter().map(|it| Decimal::new(it, 5)).collect();
            let currency = currency(code);
            let written = shared_out(&amounts, currency);
            prop_assert_eq!(written.iter().sum::<Decimal>(), rounded(amounts.iter().sum(), currency));
            for (amount, written) in amounts.iter().zip(&written) {
                prop_assert!((amount - written).abs() < Decimal::ONE / Decimal::from(10_u64.pow(decimals_of(currency))));
            }
        }

        #[test]
        fn no_price_is_lost(needs in needs()) {
            let cost = reckon(&needs, &Making { units: 3, ..Making::default() }).unwrap();
            let sum: Decimal = cost.lines.iter().filter_map(|line| line.cost).sum();
            prop_assert_eq!(sum, cost.materials);
            let without: Vec<MaterialId> =
                needs.iter().filter(|need| need.pack.is_none()).map(|need| need.material).collect();
            prop_assert_eq!(cost.unpriced, without);
        }
    }

    #[test]
    fn a_missing_price_and_another_currency_are_named_and_not_added_up() {
        let pack = |code: &str| Pack {
            holds: grams(dec!(100)),
            price: Money::new(dec!(5), currency(code)),
            shipping: dec!(0),
        };
        let need = |number, pack, is_free| Need {
            material: MaterialId::Catalogue(number),
            mass: grams(dec!(50)),
            pack,
            is_free,
            stock: None,
        };
        let needs = [
            need(1, Some(pack("EUR")), false),
            need(2, None, false),
            need(3, Some(pack("USD")), false),
            need(4, None, true),
        ];
        let cost = reckon(&needs, &Making::default()).unwrap();
        assert_eq!(cost.currency, Some(currency("EUR")));
        assert_eq!(cost.materials, dec!(2.5));
        assert_eq!(
            (cost.unpriced.as_slice(), cost.other_currency.as_slice()),
            ([MaterialId::Catalogue(2)].as_slice(), [MaterialId::Catalogue(3)].as_slice())
        );
        assert_eq!((cost.lines[2].buy.packs, cost.lines[2].buy.cost), (Some(1), None));
        assert_eq!((cost.unit, cost.hundred_grams), (None, Some(dec!(1.25))));
        // In the other currency it is the other way round.
        let cost = reckon(&needs, &Making { currency: Some(currency("USD")), ..Making::default() }).unwrap();
        assert_eq!(
            (cost.materials, cost.other_currency.as_slice()),
            (dec!(2.5), [MaterialId::Catalogue(1)].as_slice())
        );
    }

    #[test]
    fn what_cannot_be_reckoned_is_an_error() {
        let huge =
            Pack { holds: grams(dec!(0.0000001)), price: Money::new(Decimal::MAX, currency("EUR")), shipping: dec!(0) };
        let need = |pack| Need {
            material: MaterialId::Catalogue(1),
            mass: grams(dec!(1000)),
            pack: Some(pack),
            is_free: false,
            stock: None,
        };
        assert_eq!(reckon(&[need(huge)], &Making::default()).unwrap_err().code(), "cost.too-large");
        let empty = Pack { holds: Grams::ZERO, ..huge };
        assert_eq!(reckon(&[need(empty)], &Making::default()).unwrap_err().code(), "cost.empty-pack");
    }
}
