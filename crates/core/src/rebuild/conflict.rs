//! Which bounds cannot all be kept, and by how much one of them would have to give.
//!
//! An elastic filter finds bounds that matter, a deletion filter leaves those that all matter (Chinneck and Dravnieks, ORSA
//! J. Comput. 3 (1991) 157, recalled). For each that may give way a program of its own finds the least that is enough.

use super::answer::{Bound, Conflict, GivingWay, NoAnswer};
use super::program::{NoOptimum, Program};
use super::solve::Ready;
use crate::source::Citation;
use rust_decimal::prelude::FromPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};

/// Elastic filtering published under this title; recalled.
pub const METHOD: Citation = Citation::recalled("Chinneck and Dravnieks, ORSA J. Comput. 3 (1991) 157");

/// Less than this, in the unit of the grid, is no giving way.
const NOTHING: f64 = 1e-7;
/// Decimals to which a bound that gives way is rounded, outward.
const DECIMALS: u32 = 2;

/// One side of one bound, as a row that may be made to stretch.
struct Side {
    bound: Bound,
    may_give: bool,
    terms: Vec<(usize, f64)>,
    /// Least of the sum, or else most, less what fixed offers bring.
    low: f64,
    high: f64,
    /// The bound as it was stated.
    stated: Decimal,
    /// What a step of one is worth when several give way together.
    size: f64,
}

impl Side {
    /// +1 where giving way means more, -1 where it means less.
    fn sign(&self) -> f64 {
        if self.high.is_finite() { 1.0 } else { -1.0 }
    }
}

fn sides(ready: &Ready<'_>, columns: &[Option<usize>]) -> Vec<Side> {
    let mut found = Vec::new();
    let mut add = |bound, may_give, terms: &[(usize, f64)], (low, high): (f64, f64), stated: Option<Decimal>| {
        let Some(stated) = stated else { return };
        let size = ready.unit(stated.abs().max(Decimal::ONE));
        found.push(Side { bound, may_give, terms: terms.to_vec(), low, high, stated, size });
    };
    for (at, demand) in ready.question.demands.iter().enumerate() {
        let (terms, low, high) = ready.demand_row(columns, at);
        let bound = Bound::Demand(demand.about);
        add(bound, demand.may_give, &terms, (low, f64::INFINITY), demand.low);
        add(bound, demand.may_give, &terms, (f64::NEG_INFINITY, high), demand.high);
    }
    for (offer, column) in ready.offers.iter().zip(columns) {
        let Some(column) = column else { continue };
        let terms = [(*column, 1.0)];
        if offer.low > Decimal::ZERO {
            add(Bound::Needs(offer.material), true, &terms, (ready.unit(offer.low), f64::INFINITY), Some(offer.low));
        }
        if offer.high < Decimal::ONE_HUNDRED {
            let high = ready.unit(offer.high);
            add(Bound::AtHand(offer.material), true, &terms, (f64::NEG_INFINITY, high), Some(offer.high));
        }
    }
    found
}

/// How each side is taken in a trial.
#[derive(Clone, Copy, PartialEq)]
enum Taken {
    Kept,
    Stretches,
    Left,
}

/// The least stretch of each side, or nothing where even that does not help.
fn stretch(ready: &Ready<'_>, sides: &[Side], taken: impl Fn(usize) -> Taken) -> Option<Vec<f64>> {
    let mut program = Program::default();
    let columns = ready.columns(&mut program, false);
    ready.add_total(&mut program, &columns);
    let mut by = vec![None; sides.len()];
    for (at, side) in sides.iter().enumerate() {
        let mut terms = side.terms.clone();
        match taken(at) {
            Taken::Left => continue,
            Taken::Kept => {}
            Taken::Stretches => {
                let column = program.column(1.0 / side.size, 0.0, f64::INFINITY);
                terms.push((column, -side.sign()));
                by[at] = Some(column);
            }
        }
        program.row(terms, side.low, side.high);
    }
    match program.solve() {
        Ok(found) => Some(by.into_iter().map(|column| column.map_or(0.0, |column| found.amounts[column])).collect()),
        Err(NoOptimum::Infeasible | NoOptimum::Unbounded | NoOptimum::Failed | NoOptimum::TooLarge) => None,
    }
}

/// A bound that gave way, outward to a figure one reads.
fn given(ready: &Ready<'_>, side: &Side, by: f64) -> Option<GivingWay> {
    let by = Decimal::from_f64(by * 100.0 / ready.whole())?;
    let up = side.sign() > 0.0;
    let to = if up { side.stated.checked_add(by)? } else { side.stated.checked_sub(by)? };
    // The last digits of a program are no reason for another step.
    let nudge = Decimal::new(if up { -1 } else { 1 }, 7);
    let outward = if up { RoundingStrategy::ToPositiveInfinity } else { RoundingStrategy::ToNegativeInfinity };
    let to = to.checked_add(nudge)?.round_dp_with_strategy(DECIMALS, outward);
    Some(GivingWay { bound: side.bound, from: side.stated, to })
}

/// What stands in the way of a question that has no answer.
pub(super) fn conflict(ready: &Ready<'_>) -> NoAnswer {
    let columns = ready.columns(&mut Program::default(), false);
    let sides = sides(ready, &columns);
    let Some(first) = stretch(ready, &sides, |_| Taken::Stretches) else {
        // Not even without any bound: nothing at hand makes a whole.
        return NoAnswer::NothingAtHand;
    };
    let mut met = vec![false; sides.len()];
    let mut now = Some(first.clone());
    while let Some(by) = now {
        let new: Vec<usize> = (0..sides.len()).filter(|at| by[*at] > NOTHING && !met[*at]).collect();
        if new.is_empty() {
            return NoAnswer::Failed;
        }
        for at in new {
            met[at] = true;
        }
        now = stretch(ready, &sides, |at| if met[at] { Taken::Kept } else { Taken::Stretches });
    }
    for at in 0..sides.len() {
        if met[at] {
            let without =
                stretch(ready, &sides, |other| if met[other] && other != at { Taken::Kept } else { Taken::Left });
            met[at] = without.is_some();
        }
    }
    let mut ways_out: Vec<(f64, GivingWay)> = Vec::new();
    for (at, side) in sides.iter().enumerate().filter(|(at, side)| met[*at] && side.may_give) {
        let by = stretch(ready, &sides, |other| if other == at { Taken::Stretches } else { Taken::Kept });
        let Some(by) = by.map(|by| by[at]) else { continue };
        if let Some(given) = given(ready, side, by) {
            ways_out.push((by / side.size, given));
        }
    }
    ways_out.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.bound.cmp(&b.1.bound)));
    let together = if ways_out.is_empty() {
        let by = stretch(ready, &sides, |at| if sides[at].may_give { Taken::Stretches } else { Taken::Kept });
        let by = by.unwrap_or_default();
        let gave = sides.iter().zip(&by).filter(|(_, by)| **by > NOTHING);
        gave.filter_map(|(side, by)| given(ready, side, *by)).collect()
    } else {
        Vec::new()
    };
    let mut in_the_way: Vec<Bound> =
        sides.iter().zip(&met).filter(|(_, met)| **met).map(|(side, _)| side.bound).collect();
    in_the_way.dedup();
    NoAnswer::Conflict(Conflict { in_the_way, ways_out: ways_out.into_iter().map(|(_, way)| way).collect(), together })
}
