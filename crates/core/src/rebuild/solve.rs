//! From a question to amounts: the linear program, the steps of the scale, and every demand put back in decimals.

use super::answer::{Answer, Bound, Kept, Met, NoAnswer, Portion};
use super::conflict::conflict;
use super::program::{NoOptimum, Program};
use super::question::{Aim, LEAVE_ALONE, MOST_OFFERS, Offer, Question, UNASKED};
use crate::apportion::largest_remainder;
use crate::checks::Demand;
use crate::material::ConstituentId;
use litemap::LiteMap;
use rust_decimal::Decimal;
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};

/// A free amount this near to a whole number of steps, in steps, is meant to be one.
const ON_STEP: f64 = 1e-5;
/// How often demands are drawn in where steps do not keep them.
const MOST_INSETS: usize = 4;
/// Steps moved from one material to another, at most, until every demand holds after rounding.
const MOST_MOVES: usize = 400;

/// A question made ready: offers in their order, numbers as the program needs them.
pub(super) struct Ready<'q> {
    pub question: &'q Question,
    /// Offers, ordered by what they are.
    pub offers: Vec<&'q Offer>,
    /// Percent brought by a percent of each offer to each demand.
    pub factors: Vec<Vec<Decimal>>,
    /// Wishes, the unasked among them at nothing.
    pub wishes: Vec<(ConstituentId, Decimal, Decimal)>,
    /// Share brought by each offer to each wish.
    pub shares: Vec<Vec<Decimal>>,
}

/// A decimal for the program.
pub(super) fn number(value: Decimal) -> f64 {
    value.to_f64().unwrap_or(f64::NAN)
}

fn divided(value: Decimal) -> Decimal {
    value.checked_div(Decimal::ONE_HUNDRED).unwrap_or(Decimal::MAX)
}

impl<'q> Ready<'q> {
    fn new(question: &'q Question) -> Result<Self, NoAnswer> {
        let mut offers: Vec<&Offer> = question.offers.iter().collect();
        offers.sort_by_key(|offer| offer.key());
        if offers.is_empty() {
            return Err(NoAnswer::NothingAtHand);
        }
        if offers.len() > MOST_OFFERS {
            return Err(NoAnswer::TooMany { most: MOST_OFFERS });
        }
        let mut places: LiteMap<ConstituentId, usize> = LiteMap::new();
        let mut wishes: Vec<(ConstituentId, Decimal, Decimal)> = Vec::new();
        let mut asked: Vec<_> = question.wishes.iter().collect();
        asked.sort_by_key(|wish| wish.constituent);
        for wish in asked {
            if places.get(&wish.constituent).is_none() {
                places.insert(wish.constituent, wishes.len());
                wishes.push((wish.constituent, wish.target.value(), wish.weight));
            }
        }
        for (id, _) in offers.iter().flat_map(|offer| &offer.brings) {
            if places.get(id).is_none() {
                places.insert(*id, wishes.len());
                wishes.push((*id, Decimal::ZERO, UNASKED));
            }
        }
        let shares = offers.iter().map(|offer| {
            let mut own = vec![Decimal::ZERO; wishes.len()];
            for (id, percent) in &offer.brings {
                if let Some(place) = places.get(id) {
                    own[*place] += divided(*percent);
                }
            }
            own
        });
        let shares: Vec<Vec<Decimal>> = shares.collect();
        let factors = offers.iter().zip(&shares).map(|(offer, shares)| {
            let factor = |demand: &Demand| -> Option<Decimal> {
                let as_such = demand.materials.iter().find(|(id, _)| *id == offer.material);
                let mut sum = as_such.map_or(Decimal::ZERO, |(_, factor)| *factor);
                for (id, factor) in &demand.substances {
                    if let Some(place) = places.get(id) {
                        sum = sum.checked_add(shares[*place].checked_mul(*factor)?)?;
                    }
                }
                Some(sum)
            };
            question.demands.iter().map(factor).collect::<Option<Vec<_>>>()
        });
        let factors: Option<Vec<Vec<Decimal>>> = factors.collect();
        Ok(Self { question, offers, factors: factors.ok_or(NoAnswer::Failed)?, wishes, shares })
    }

    /// In the unit of the grid.
    pub fn whole(&self) -> f64 {
        number(self.question.grid.whole)
    }

    pub fn unit(&self, percent: Decimal) -> f64 {
        number(percent) * self.whole() / 100.0
    }

    /// Columns for the free offers, with where each stands; fixed ones are constants.
    pub fn columns(&self, program: &mut Program, bounded: bool) -> Vec<Option<usize>> {
        let columns = self.offers.iter().map(|offer| {
            let most = self.unit(offer.high).min(self.whole());
            let (low, high) = if bounded { (self.unit(offer.low), most) } else { (0.0, self.whole()) };
            (!offer.is_fixed()).then(|| program.column(0.0, low, high))
        });
        columns.collect()
    }

    /// A sum over offers as a row: what the free ones bring, and what the fixed ones do already.
    pub fn sum(&self, columns: &[Option<usize>], factor: impl Fn(usize) -> Decimal) -> (Vec<(usize, f64)>, f64) {
        let (mut terms, mut constant) = (Vec::new(), 0.0);
        for (at, offer) in self.offers.iter().enumerate() {
            let factor = number(factor(at));
            match columns[at] {
                Some(column) if factor != 0.0 => terms.push((column, factor)),
                Some(_) => {}
                None => constant += factor * self.unit(offer.low),
            }
        }
        (terms, constant)
    }

    /// The row that makes the whole.
    pub fn add_total(&self, program: &mut Program, columns: &[Option<usize>]) {
        let (terms, constant) = self.sum(columns, |_| Decimal::ONE);
        program.row(terms, self.whole() - constant, self.whole() - constant);
    }

    /// A demand as a row.
    pub fn demand_row(&self, columns: &[Option<usize>], at: usize) -> (Vec<(usize, f64)>, f64, f64) {
        let demand = &self.question.demands[at];
        let (terms, constant) = self.sum(columns, |offer| self.factors[offer][at]);
        let low = demand.low.map_or(f64::NEG_INFINITY, |low| self.unit(low) - constant);
        let high = demand.high.map_or(f64::INFINITY, |high| self.unit(high) - constant);
        (terms, low, high)
    }

    /// The program of the wishes: the weighted sum of how far each is off, in percent, and a little for each line that changes.
    ///
    /// `inset`: by how much each demand is drawn in, so that steps have room.
    fn program(&self, inset: &[f64]) -> (Program, Vec<Option<usize>>, Vec<(usize, f64)>) {
        let mut program = Program::default();
        let columns = self.columns(&mut program, true);
        self.add_total(&mut program, &columns);
        for (at, inset) in inset.iter().enumerate() {
            let (terms, low, high) = self.demand_row(&columns, at);
            // Never past the middle.
            let by = inset.min((high - low).max(0.0) / 2.0);
            program.row(terms, low + by, high - by);
        }
        let percent = 100.0 / self.whole();
        let mut costs = Vec::new();
        for (at, (_, target, weight)) in self.wishes.iter().enumerate() {
            let (mut terms, constant) = self.sum(&columns, |offer| self.shares[offer][at]);
            let rest = self.unit(*target) - constant;
            if terms.is_empty() {
                continue;
            }
            let cost = number(*weight) * percent;
            for sign in [-1.0, 1.0] {
                let off = program.column(cost, 0.0, f64::INFINITY);
                costs.push((off, cost));
                terms.push((off, sign));
            }
            program.row(terms, rest, rest);
        }
        let leave = number(LEAVE_ALONE) * percent;
        for (offer, column) in self.offers.iter().zip(&columns) {
            if let (Some(now), Some(column)) = (offer.now, column) {
                let up = program.column(leave, 0.0, f64::INFINITY);
                let down = program.column(leave, 0.0, f64::INFINITY);
                program.row(vec![(*column, 1.0), (up, -1.0), (down, 1.0)], self.unit(now), self.unit(now));
            }
        }
        (program, columns, costs)
    }

    /// The amounts of the program, in the unit of the grid: of fixed offers what they are.
    fn amounts(&self, inset: &[f64]) -> Result<Vec<f64>, NoOptimum> {
        let (mut program, columns, costs) = self.program(inset);
        let mut optimum = program.solve()?;
        let further = match self.question.aim {
            Aim::Closest => None,
            Aim::Cheapest { further } => Some((further, 1.0)),
            Aim::UseUp { further } => Some((further, -1.0)),
        };
        if let Some((further, sign)) = further {
            let nearest: f64 = costs.iter().map(|(column, cost)| optimum.amounts[*column] * cost).sum();
            // A little room for the last digits of the nearest.
            program.row(costs, f64::NEG_INFINITY, nearest + number(further).max(0.0) + 1e-7);
            // What is near stays better where the price is the same.
            for column in &mut program.columns {
                column.cost *= 1e-4;
            }
            for (offer, column) in self.offers.iter().zip(&columns) {
                let value = if sign > 0.0 { offer.price.unwrap_or_default() } else { offer.urgency };
                if let Some(column) = column {
                    program.columns[*column].cost += sign * number(value) * 100.0 / self.whole();
                }
            }
            optimum = program.solve()?;
        }
        let of = |(offer, column): (&&Offer, &Option<usize>)| match column {
            Some(column) => optimum.amounts[*column],
            None => self.unit(offer.low),
        };
        Ok(self.offers.iter().zip(&columns).map(of).collect())
    }

    /// Amounts on the steps of the grid that make the whole: free ones whole numbers of steps, but for one that takes what
    /// fixed ones leave over.
    fn on_steps(&self, amounts: &[f64]) -> Option<Vec<Decimal>> {
        let grid = self.question.grid;
        let free: Vec<usize> = (0..self.offers.len()).filter(|at| !self.offers[*at].is_fixed()).collect();
        let mut rounded: Vec<Decimal> = Vec::with_capacity(amounts.len());
        for offer in &self.offers {
            rounded.push(if offer.is_fixed() { grid.of_percent(offer.low)? } else { Decimal::ZERO });
        }
        let fixed = rounded.iter().try_fold(Decimal::ZERO, |sum, each| sum.checked_add(*each))?;
        let left = grid.whole.checked_sub(fixed)?;
        let units = left.checked_div(grid.step)?.floor();
        let step = number(grid.step);
        let quota = |at: &usize| {
            let steps = (amounts[*at] / step).max(0.0);
            let near = steps.round();
            Decimal::from_f64(if (steps - near).abs() <= ON_STEP { near } else { steps })
        };
        let quotas: Vec<Decimal> = free.iter().map(quota).collect::<Option<_>>()?;
        for (at, units) in free.iter().zip(largest_remainder(&quotas, units)) {
            rounded[*at] = units.checked_mul(grid.step)?;
        }
        let sum = rounded.iter().try_fold(Decimal::ZERO, |sum, each| sum.checked_add(*each))?;
        let rest = grid.whole.checked_sub(sum)?;
        if !rest.is_zero() {
            // What fixed amounts leave over between two steps, and what could not be shared out.
            let largest = free.iter().copied().max_by(|a, b| rounded[*a].cmp(&rounded[*b]).then(b.cmp(a)))?;
            rounded[largest] = rounded[largest].checked_add(rest)?;
        }
        Some(rounded)
    }

    /// What each demand is over or under its bounds by, in the unit of the grid: exact.
    fn broken(&self, amounts: &[Decimal]) -> Option<Vec<Decimal>> {
        let mut found = Vec::with_capacity(self.question.demands.len());
        for (at, demand) in self.question.demands.iter().enumerate() {
            let mut sum = Decimal::ZERO;
            for (offer, amount) in amounts.iter().enumerate() {
                sum = sum.checked_add(self.factors[offer][at].checked_mul(*amount)?)?;
            }
            // Bounds are in percent: compared without a division, which would round.
            let sum = sum.checked_mul(Decimal::ONE_HUNDRED)?;
            let over = |bound: Decimal, sign: Decimal| -> Option<Decimal> {
                sum.checked_sub(bound.checked_mul(self.question.grid.whole)?)?.checked_mul(sign)
            };
            let high = demand.high.map_or(Some(Decimal::ZERO), |high| over(high, Decimal::ONE))?;
            let low = demand.low.map_or(Some(Decimal::ZERO), |low| over(low, Decimal::NEGATIVE_ONE))?;
            found.push(high.max(low).max(Decimal::ZERO));
        }
        Some(found)
    }

    /// Offers whose amount lies outside their own bounds.
    fn outside(&self, amounts: &[Decimal]) -> Option<Vec<Bound>> {
        let grid = self.question.grid;
        let mut found = Vec::new();
        for (offer, amount) in self.offers.iter().zip(amounts).filter(|(offer, _)| !offer.is_fixed()) {
            if *amount > grid.of_percent(offer.high)? {
                found.push(Bound::AtHand(offer.material));
            } else if *amount < grid.of_percent(offer.low)? {
                found.push(Bound::Needs(offer.material));
            }
        }
        Some(found)
    }

    /// Whether everything that has to hold does, exactly.
    fn all_holds(&self, amounts: &[Decimal]) -> Option<bool> {
        Some(self.outside(amounts)?.is_empty() && self.broken(amounts)?.iter().all(Decimal::is_zero))
    }

    /// Moves steps from one material to another until everything holds, the best move first. Which move is best is found with
    /// binary fractions, whether all holds with decimals.
    fn mend(&self, amounts: &mut [Decimal]) -> Option<()> {
        let step = self.question.grid.step;
        let free: Vec<usize> = (0..self.offers.len()).filter(|at| !self.offers[*at].is_fixed()).collect();
        let factors: Vec<Vec<f64>> = self.factors.iter().map(|own| own.iter().copied().map(number).collect()).collect();
        let bounds: Vec<(f64, f64)> = self
            .question
            .demands
            .iter()
            .map(|demand| {
                let low = demand.low.map_or(f64::NEG_INFINITY, |low| self.unit(low));
                (low, demand.high.map_or(f64::INFINITY, |high| self.unit(high)))
            })
            .collect();
        let own: Vec<(f64, f64)> =
            self.offers.iter().map(|offer| (self.unit(offer.low), self.unit(offer.high))).collect();
        let over = |value: f64, (low, high): (f64, f64)| (value - high).max(low - value).max(0.0);
        let mut moves = 0;
        // Several steps at once first: a bound may lie far from the nearest steps.
        for by in [64, 16, 4, 1] {
            let by = step.checked_mul(Decimal::from(by))?;
            let move_by = number(by);
            while moves < MOST_MOVES && !self.all_holds(amounts)? {
                moves += 1;
                let now: Vec<f64> = amounts.iter().copied().map(number).collect();
                let sum = |at: usize| now.iter().zip(&factors).map(|(amount, own)| amount * own[at]).sum::<f64>();
                let sums: Vec<f64> = (0..bounds.len()).map(sum).collect();
                let total: f64 = sums.iter().zip(&bounds).map(|(sum, bound)| over(*sum, *bound)).sum();
                let outside: f64 = now.iter().zip(&own).map(|(amount, bound)| over(*amount, *bound)).sum();
                let mut best: Option<(f64, usize, usize)> = None;
                for &from in free.iter().filter(|at| amounts[**at] >= by) {
                    for &to in free.iter().filter(|to| **to != from) {
                        let mut after: f64 = (0..bounds.len())
                            .map(|at| over(sums[at] + (factors[to][at] - factors[from][at]) * move_by, bounds[at]))
                            .sum();
                        after += outside - over(now[from], own[from]) - over(now[to], own[to])
                            + over(now[from] - move_by, own[from])
                            + over(now[to] + move_by, own[to]);
                        if after < total + outside - 1e-12 && best.is_none_or(|(least, ..)| after < least - 1e-12) {
                            best = Some((after, from, to));
                        }
                    }
                }
                let Some((_, from, to)) = best else { break };
                amounts[from] = amounts[from].checked_sub(by)?;
                amounts[to] = amounts[to].checked_add(by)?;
            }
        }
        Some(())
    }

    /// Amounts on steps, as near to holding as moving steps makes them.
    fn rounded(&self, inset: &[f64]) -> Result<Vec<Decimal>, NoOptimum> {
        let amounts = self.amounts(inset)?;
        let mut rounded = self.on_steps(&amounts).ok_or(NoOptimum::Failed)?;
        self.mend(&mut rounded).ok_or(NoOptimum::Failed)?;
        Ok(rounded)
    }

    /// Draws demands in that do not hold on steps, by what they are off and half a step of what counts most.
    fn draw_in(&self, amounts: &[Decimal], inset: &mut [f64]) -> Option<()> {
        let step = number(self.question.grid.step);
        for (at, by) in self.broken(amounts)?.iter().enumerate().filter(|(_, by)| **by > Decimal::ZERO) {
            let largest = self.factors.iter().map(|own| number(own[at]).abs()).fold(0.0, f64::max);
            inset[at] += number(*by) / 100.0 + largest * step / 2.0;
        }
        Some(())
    }

    /// What each wish comes to, in percent.
    fn got(&self, amounts: &[Decimal]) -> Option<Vec<Decimal>> {
        let mut got = vec![Decimal::ZERO; self.wishes.len()];
        for (shares, amount) in self.shares.iter().zip(amounts).filter(|(_, amount)| !amount.is_zero()) {
            for (sum, share) in got.iter_mut().zip(shares).filter(|(_, share)| !share.is_zero()) {
                *sum = sum.checked_add(share.checked_mul(*amount)?)?;
            }
        }
        got.into_iter().map(|sum| self.question.grid.to_percent(sum)).collect()
    }

    fn bound_of(&self, at: usize) -> Bound {
        Bound::Demand(self.question.demands[at].about)
    }

    fn answer(&self, amounts: &[Decimal]) -> Option<Answer> {
        let grid = self.question.grid;
        let portion = |(offer, amount): (&&Offer, &Decimal)| {
            let percent = grid.to_percent(*amount)?;
            Some(Portion { material: offer.material, line: offer.line, amount: *amount, percent })
        };
        let portions = self.offers.iter().zip(amounts).map(portion).collect::<Option<Vec<_>>>()?;
        let met = |((constituent, wanted, weight), got): (&(ConstituentId, Decimal, Decimal), Decimal)| {
            let counts = weight.checked_mul((got - *wanted).abs())?;
            Some(Met { constituent: *constituent, wanted: *wanted, got, counts })
        };
        let mut wishes = self.wishes.iter().zip(self.got(amounts)?).map(met).collect::<Option<Vec<_>>>()?;
        wishes.sort_by(|a, b| b.counts.cmp(&a.counts).then(a.constituent.cmp(&b.constituent)));
        let mut kept = Vec::with_capacity(self.question.demands.len());
        for (at, demand) in self.question.demands.iter().enumerate() {
            let mut sum = Decimal::ZERO;
            for (offer, amount) in amounts.iter().enumerate() {
                sum = sum.checked_add(self.factors[offer][at].checked_mul(*amount)?)?;
            }
            let sum = grid.to_percent(sum)?;
            kept.push(Kept { about: demand.about, sum, low: demand.low, high: demand.high });
        }
        let priced = self.offers.iter().zip(&portions).filter(|(_, portion)| !portion.amount.is_zero());
        let price = priced.into_iter().try_fold(Decimal::ZERO, |sum, (offer, portion)| {
            sum.checked_add(offer.price?.checked_mul(portion.percent)?)
        });
        let deviation = wishes.iter().try_fold(Decimal::ZERO, |sum, each| sum.checked_add(each.counts))?;
        Some(Answer { portions, wishes, kept, deviation, price })
    }
}

impl Question {
    /// The amounts on the steps of the grid that come nearest to the wishes and keep every demand.
    ///
    /// *Method*: least weighted sum of absolute deviations by linear programming, rounded by largest remainder, steps moved
    /// from one material to another until every bound holds in decimals. The same question always has the same answer,
    /// whatever the order of its materials and wishes.
    ///
    /// # Errors
    /// [`NoAnswer`]: what stands in the way, and by how much it would have to give.
    pub fn solve(&self) -> Result<Answer, NoAnswer> {
        let ready = Ready::new(self)?;
        let mut inset = vec![0.0; self.demands.len()];
        let mut rounded = ready.rounded(&inset).map_err(|error| match error {
            NoOptimum::Infeasible => conflict(&ready),
            NoOptimum::TooLarge => NoAnswer::TooLarge,
            NoOptimum::Unbounded | NoOptimum::Failed => NoAnswer::Failed,
        })?;
        for _ in 0..MOST_INSETS {
            if ready.all_holds(&rounded).ok_or(NoAnswer::Failed)? {
                break;
            }
            ready.draw_in(&rounded, &mut inset).ok_or(NoAnswer::Failed)?;
            // Drawn in too far there may be no answer: the steps of before are the nearest then.
            let Ok(next) = ready.rounded(&inset) else { break };
            rounded = next;
        }
        let broken = ready.broken(&rounded).ok_or(NoAnswer::Failed)?;
        let mut bounds: Vec<Bound> = ready.outside(&rounded).ok_or(NoAnswer::Failed)?;
        bounds
            .extend(broken.iter().enumerate().filter(|(_, by)| **by > Decimal::ZERO).map(|(at, _)| ready.bound_of(at)));
        bounds.sort_unstable();
        bounds.dedup();
        if !bounds.is_empty() {
            return Err(NoAnswer::StepTooCoarse { broken: bounds });
        }
        ready.answer(&rounded).ok_or(NoAnswer::Failed)
    }

    /// The least that the wishes, and lines left alone, cost before amounts are brought to steps, in weighted percent: what
    /// relaxing a demand never makes more.
    ///
    /// # Errors
    /// As [`Question::solve`].
    pub fn least_deviation(&self) -> Result<f64, NoAnswer> {
        let ready = Ready::new(self)?;
        let (program, ..) = ready.program(&vec![0.0; self.demands.len()]);
        match program.solve() {
            Ok(optimum) => Ok(optimum.cost),
            Err(NoOptimum::Infeasible) => Err(conflict(&ready)),
            Err(NoOptimum::TooLarge) => Err(NoAnswer::TooLarge),
            Err(NoOptimum::Unbounded | NoOptimum::Failed) => Err(NoAnswer::Failed),
        }
    }
}
