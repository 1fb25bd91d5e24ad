//! Whether the amounts of a formula or composite make 100 %, and what each line comes to.
//!
//! A half-typed formula is a normal state: the answer is always percents *and* a list of problems, each with cures
//! whose numbers are computed.

use crate::amount::Amount;
use crate::apportion::{conserve, round_to_total};
use crate::formula::{Formula, LineId};
use crate::number::decimals_of;
use crate::quantity::Percent;
use rust_decimal::Decimal;
use stillroom_terms::WrittenIn;

/// Decimals a computed cure rounds percents to, unless the formula already has more.
const CURE_DECIMALS: u32 = 2;
/// Percent a computed cure leaves for a q.s. line that had nothing.
const ROOM_FOR_QUANTUM_SATIS: Decimal = Decimal::ONE;
/// Most decimals a computed cure writes.
const MOST_CURE_DECIMALS: u32 = 6;

/// One line's share of the whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LineShare {
    /// The line.
    pub line: LineId,
    /// Its percent; for the q.s. line what is left, and nothing where nothing is left.
    pub percent: Percent,
    /// Whether the line is the one that makes the total 100 %.
    pub quantum_satis: bool,
}

/// What the amounts come to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Balance {
    /// Every line's share, in the order given.
    pub shares: Vec<LineShare>,
    /// Sum of the shares. In a formula written in grams always 100 %.
    pub total: Percent,
    /// Everything that keeps the amounts from being a formula.
    pub problems: Vec<FormulaProblem>,
}

/// What keeps amounts from being a formula.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum FormulaProblem {
    /// There is no line yet.
    #[error("no line")]
    Empty,
    /// No line is q.s. and the percents do not make 100.
    #[error("the lines make {total:?}, not 100 %")]
    TotalNotHundred {
        /// What they make.
        total: Percent,
    },
    /// More than one line is q.s.
    #[error("{} lines are q.s.", lines.len())]
    SeveralQuantumSatis {
        /// Those lines.
        lines: Vec<LineId>,
        /// What is left for all of them.
        left: Percent,
    },
    /// The other lines leave the q.s. line less than nothing.
    #[error("the other lines make {others:?}")]
    QuantumSatisNegative {
        /// The q.s. line.
        line: LineId,
        /// What the others make.
        others: Percent,
    },
    /// The other lines make 100 % already.
    #[error("nothing is left for the q.s. line")]
    QuantumSatisZero {
        /// The q.s. line.
        line: LineId,
    },
    /// A line states nothing or less.
    #[error("a line states {value}")]
    NotPositive {
        /// The line.
        line: LineId,
        /// What it states.
        value: Decimal,
    },
    /// Some lines are in grams and some in percent or q.s.
    #[error("grams and percent are mixed")]
    MixedAmounts {
        /// The lines in grams.
        in_grams: Vec<LineId>,
    },
    /// The numbers are too large to be added up.
    #[error("the numbers are too large")]
    TooLarge,
}

impl FormulaProblem {
    /// Stable code of this problem.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Empty => "formula.empty",
            Self::TotalNotHundred { .. } => "formula.total-not-100",
            Self::SeveralQuantumSatis { .. } => "formula.several-qs",
            Self::QuantumSatisNegative { .. } => "formula.qs-negative",
            Self::QuantumSatisZero { .. } => "formula.qs-zero",
            Self::NotPositive { .. } => "formula.not-positive",
            Self::MixedAmounts { .. } => "formula.mixed-amounts",
            Self::TooLarge => "formula.too-large",
        }
    }
}

/// A change that removes a problem, with its numbers computed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Cure {
    /// Scale every line so that the total is 100 %.
    Normalise {
        /// Decimals the percents are rounded to.
        decimals: u32,
    },
    /// Make a line the q.s. line.
    MakeQuantumSatis {
        /// The line.
        line: LineId,
        /// What it comes to then.
        becomes: Percent,
    },
    /// Keep one q.s. line and give every other an equal part of what is left.
    KeepOneQuantumSatis {
        /// The line that stays q.s.
        line: LineId,
        /// What each of the others is set to.
        others: Percent,
    },
    /// Scale every other line down until one percent is left for the q.s. line.
    MakeRoom {
        /// The q.s. line.
        line: LineId,
        /// Decimals the percents are rounded to.
        decimals: u32,
    },
    /// Set a line to a percent.
    SetPercent {
        /// The line.
        line: LineId,
        /// What it is set to.
        to: Percent,
    },
    /// Take a line out.
    RemoveLine {
        /// The line.
        line: LineId,
    },
    /// Take every number as a percent, as it stands.
    ReadAllAsPercent,
}

impl Cure {
    /// Stable code of this cure.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Normalise { .. } => "cure.normalise",
            Self::MakeQuantumSatis { .. } => "cure.make-qs",
            Self::KeepOneQuantumSatis { .. } => "cure.keep-one-qs",
            Self::MakeRoom { .. } => "cure.make-room",
            Self::SetPercent { .. } => "cure.set-percent",
            Self::RemoveLine { .. } => "cure.remove-line",
            Self::ReadAllAsPercent => "cure.read-all-as-percent",
        }
    }
}

/// Adds the amounts up, gives the q.s. line what is left and says what is wrong.
///
/// *Units*: percent of the whole by mass. In grams, each line's share of the sum, rounded to 24 decimals so that the
/// shares still make exactly 100.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::balance::balance;
/// use stillroom_core::{Amount, LineId, Percent};
/// let amounts = [(LineId(1), Amount::QuantumSatis), (LineId(2), Amount::Percent(Percent::new(dec!(38.8))?))];
/// let balance = balance(&amounts, Default::default());
/// assert_eq!(balance.shares[0].percent.value(), dec!(61.2));
/// assert!(balance.problems.is_empty());
/// # Ok::<(), stillroom_core::QuantityError>(())
/// ```
#[must_use]
pub fn balance(amounts: &[(LineId, Amount)], written_in: WrittenIn) -> Balance {
    if amounts.is_empty() {
        return Balance { shares: Vec::new(), total: Percent::ZERO, problems: vec![FormulaProblem::Empty] };
    }
    let answer = match written_in {
        WrittenIn::Percent => balance_percents(amounts),
        WrittenIn::Grams => balance_grams(amounts),
    };
    answer.unwrap_or_else(|| Balance {
        shares: amounts.iter().map(|&(line, amount)| share(line, Percent::ZERO, amount)).collect(),
        total: Percent::ZERO,
        problems: vec![FormulaProblem::TooLarge],
    })
}

fn share(line: LineId, percent: Percent, amount: Amount) -> LineShare {
    LineShare { line, percent, quantum_satis: amount == Amount::QuantumSatis }
}

fn balance_percents(amounts: &[(LineId, Amount)]) -> Option<Balance> {
    let mut problems = Vec::new();
    let mut stated = Decimal::ZERO;
    let mut in_grams = Vec::new();
    let mut left_open = Vec::new();
    for &(line, amount) in amounts {
        match amount {
            Amount::Percent(percent) => {
                stated = stated.checked_add(percent.value())?;
                if percent.value() <= Decimal::ZERO {
                    problems.push(FormulaProblem::NotPositive { line, value: percent.value() });
                }
            }
            Amount::Grams(_) => in_grams.push(line),
            Amount::QuantumSatis => left_open.push(line),
        }
    }
    if !in_grams.is_empty() {
        problems.push(FormulaProblem::MixedAmounts { in_grams });
    }
    let left = Percent::new(Decimal::ONE_HUNDRED.checked_sub(stated)?).ok()?;
    let mut for_quantum_satis = Percent::ZERO;
    match left_open.as_slice() {
        [] if left.is_zero() => {}
        [] => problems.push(FormulaProblem::TotalNotHundred { total: Percent::new(stated).ok()? }),
        &[line] => {
            if left.value() > Decimal::ZERO {
                for_quantum_satis = left;
            } else if left.is_zero() {
                problems.push(FormulaProblem::QuantumSatisZero { line });
            } else {
                problems.push(FormulaProblem::QuantumSatisNegative { line, others: Percent::new(stated).ok()? });
            }
        }
        lines => problems.push(FormulaProblem::SeveralQuantumSatis { lines: lines.to_vec(), left }),
    }
    let shares: Vec<LineShare> = amounts
        .iter()
        .map(|&(line, amount)| {
            let percent = match amount {
                Amount::Percent(percent) if percent.value() > Decimal::ZERO => percent,
                Amount::Percent(_) | Amount::Grams(_) => Percent::ZERO,
                Amount::QuantumSatis => for_quantum_satis,
            };
            share(line, percent, amount)
        })
        .collect();
    let total = stated.checked_add(for_quantum_satis.value())?;
    Some(Balance { shares, total: Percent::new(total).ok()?, problems })
}

fn balance_grams(amounts: &[(LineId, Amount)]) -> Option<Balance> {
    let mut problems = Vec::new();
    let mut masses = Vec::with_capacity(amounts.len());
    let mut in_grams = Vec::new();
    for &(line, amount) in amounts {
        if let Amount::Grams(mass) = amount {
            in_grams.push(line);
            if mass.is_zero() {
                problems.push(FormulaProblem::NotPositive { line, value: Decimal::ZERO });
            }
            masses.push(mass.value());
        } else {
            masses.push(Decimal::ZERO);
        }
    }
    if in_grams.len() < amounts.len() {
        problems.push(FormulaProblem::MixedAmounts { in_grams });
    }
    let whole = masses.iter().try_fold(Decimal::ZERO, |sum, mass| sum.checked_add(*mass))?;
    let mut percents = vec![Decimal::ZERO; masses.len()];
    if !whole.is_zero() {
        for (percent, mass) in percents.iter_mut().zip(&masses) {
            *percent = mass.checked_mul(Decimal::ONE_HUNDRED)?.checked_div(whole)?;
        }
        conserve(&mut percents, Decimal::ONE_HUNDRED);
    }
    let shares = amounts
        .iter()
        .zip(&percents)
        .map(|(&(line, amount), percent)| Percent::new(*percent).ok().map(|percent| share(line, percent, amount)))
        .collect::<Option<Vec<_>>>()?;
    let total = if whole.is_zero() { Percent::ZERO } else { Percent::HUNDRED };
    Some(Balance { shares, total, problems })
}

impl Balance {
    /// Whether the amounts are a formula: nothing is wrong.
    #[must_use]
    pub fn is_sound(&self) -> bool {
        self.problems.is_empty()
    }

    /// The share of one line.
    #[must_use]
    pub fn share_of(&self, line: LineId) -> Option<Percent> {
        self.shares.iter().find(|share| share.line == line).map(|share| share.percent)
    }

    /// What would remove a problem, computed. `prefer` names the line that should be q.s. where one is wanted,
    /// usually the water line.
    #[must_use]
    pub fn cures(&self, problem: &FormulaProblem, prefer: Option<LineId>) -> Vec<Cure> {
        match problem {
            FormulaProblem::Empty | FormulaProblem::TooLarge => Vec::new(),
            FormulaProblem::TotalNotHundred { total } => self.cures_of_total(*total, prefer),
            FormulaProblem::SeveralQuantumSatis { lines, left } => {
                let count = Decimal::from(lines.len());
                let each = left.value().checked_div(count).map(|each| each.trunc_with_scale(CURE_DECIMALS));
                let Some(others) = each.filter(|each| *each > Decimal::ZERO).and_then(|each| Percent::new(each).ok())
                else {
                    return lines.iter().map(|&line| Cure::RemoveLine { line }).collect();
                };
                let mut lines = lines.clone();
                // The preferred line is offered first.
                lines.sort_by_key(|line| Some(*line) != prefer);
                lines.into_iter().map(|line| Cure::KeepOneQuantumSatis { line, others }).collect()
            }
            FormulaProblem::QuantumSatisNegative { line, others } => {
                let mut cures = Vec::from_iter(self.lower_largest(*line, *others));
                cures.push(Cure::MakeRoom { line: *line, decimals: self.decimals() });
                cures
            }
            FormulaProblem::QuantumSatisZero { line } => {
                let mut cures = vec![Cure::RemoveLine { line: *line }];
                cures.extend(self.lower_largest(*line, Percent::HUNDRED));
                cures
            }
            FormulaProblem::NotPositive { line, .. } => {
                let mut cures = vec![Cure::RemoveLine { line: *line }];
                let no_quantum_satis = !self.shares.iter().any(|share| share.quantum_satis);
                let left = Decimal::ONE_HUNDRED.checked_sub(self.total.value()).filter(|left| *left > Decimal::ZERO);
                if let (true, Some(Ok(becomes))) = (no_quantum_satis, left.map(Percent::new)) {
                    cures.push(Cure::MakeQuantumSatis { line: *line, becomes });
                }
                cures
            }
            FormulaProblem::MixedAmounts { .. } => vec![Cure::ReadAllAsPercent],
        }
    }

    fn cures_of_total(&self, total: Percent, prefer: Option<LineId>) -> Vec<Cure> {
        let mut cures = Vec::new();
        let preferred = prefer.and_then(|line| self.shares.iter().find(|share| share.line == line));
        let candidate = preferred.or_else(|| self.shares.iter().max_by_key(|share| share.percent));
        if let Some(candidate) = candidate {
            let others = total.value().checked_sub(candidate.percent.value());
            let becomes = others.and_then(|others| Decimal::ONE_HUNDRED.checked_sub(others));
            if let Some(Ok(becomes)) = becomes.filter(|becomes| *becomes > Decimal::ZERO).map(Percent::new) {
                cures.push(Cure::MakeQuantumSatis { line: candidate.line, becomes });
            }
        }
        if total.value() > Decimal::ZERO {
            cures.push(Cure::Normalise { decimals: self.decimals() });
        }
        cures
    }

    /// Makes room for the q.s. line: lowers the largest other line until one percent is left.
    fn lower_largest(&self, quantum_satis: LineId, others: Percent) -> Option<Cure> {
        let largest =
            self.shares.iter().filter(|share| share.line != quantum_satis).max_by_key(|share| share.percent)?;
        let excess = others.value().checked_sub(Decimal::ONE_HUNDRED)?.checked_add(ROOM_FOR_QUANTUM_SATIS)?;
        let to = largest.percent.value().checked_sub(excess).filter(|to| *to > Decimal::ZERO)?;
        Some(Cure::SetPercent { line: largest.line, to: Percent::new(to).ok()? })
    }

    fn decimals(&self) -> u32 {
        let most = self.shares.iter().map(|share| decimals_of(share.percent.value())).max().unwrap_or(0);
        most.clamp(CURE_DECIMALS, MOST_CURE_DECIMALS)
    }
}

impl Formula {
    /// What the amounts of this formula come to.
    #[must_use]
    pub fn balance(&self) -> Balance {
        balance(&self.amounts(), self.written_in)
    }

    /// Makes the change a cure describes. A line the formula does not have is left alone.
    pub fn apply(&mut self, cure: &Cure) {
        match cure {
            Cure::Normalise { decimals } => self.normalise(*decimals),
            Cure::MakeQuantumSatis { line, .. } => self.set_amount(*line, Amount::QuantumSatis),
            Cure::KeepOneQuantumSatis { line, others } => {
                for each in self.phases.iter_mut().flat_map(|phase| &mut phase.lines) {
                    if each.amount == Amount::QuantumSatis && each.id != *line {
                        each.amount = Amount::Percent(*others);
                    }
                }
            }
            Cure::MakeRoom { line, decimals } => self.make_room(*line, *decimals),
            Cure::SetPercent { line, to } => self.set_amount(*line, Amount::Percent(*to)),
            Cure::RemoveLine { line } => {
                self.remove_line(*line);
            }
            Cure::ReadAllAsPercent => {
                self.written_in = WrittenIn::Percent;
                for line in self.phases.iter_mut().flat_map(|phase| &mut phase.lines) {
                    if let Amount::Grams(mass) = line.amount {
                        line.amount = Percent::new(mass.value()).map_or(Amount::QuantumSatis, Amount::Percent);
                    }
                }
            }
        }
    }

    /// Scales every line so that the total is exactly 100 %, rounded to `decimals` decimals by largest remainder.
    pub fn normalise(&mut self, decimals: u32) {
        self.scale_to(Decimal::ONE_HUNDRED, None, decimals);
    }

    fn make_room(&mut self, quantum_satis: LineId, decimals: u32) {
        self.scale_to(Decimal::ONE_HUNDRED - ROOM_FOR_QUANTUM_SATIS, Some(quantum_satis), decimals);
    }

    /// Scales the lines, `except` one that stays as it is, so that they make `total` percent.
    fn scale_to(&mut self, total: Decimal, except: Option<LineId>, decimals: u32) {
        let balance = self.balance();
        let scaled: Vec<&LineShare> = balance.shares.iter().filter(|share| Some(share.line) != except).collect();
        let whole: Decimal = scaled.iter().map(|share| share.percent.value()).sum();
        let quotas: Option<Vec<Decimal>> =
            scaled.iter().map(|share| share.percent.value().checked_mul(total)?.checked_div(whole)).collect();
        let Some(percents) = quotas.and_then(|quotas| round_to_total(&quotas, total, decimals)) else { return };
        self.written_in = WrittenIn::Percent;
        for (share, percent) in scaled.iter().zip(percents) {
            if let Ok(percent) = Percent::new(percent) {
                self.set_amount(share.line, Amount::Percent(percent));
            }
        }
    }

    /// Turns a formula written in grams into one in percent, rounded to `decimals` decimals so that it totals exactly
    /// 100 %. Does nothing to a formula that is in percent already or weighs nothing.
    pub fn write_in_percent(&mut self, decimals: u32) {
        if self.written_in == WrittenIn::Grams && !self.balance().total.is_zero() {
            self.normalise(decimals);
        }
    }

    fn set_amount(&mut self, line: LineId, amount: Amount) {
        if let Some(line) = self.line_mut(line) {
            line.amount = amount;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::material::MaterialId;
    use crate::quantity::Grams;
    use proptest::prelude::*;
    use rust_decimal::dec;
    use stillroom_terms::PhaseKind;

    fn formula(amounts: &[Amount]) -> Formula {
        let mut formula = Formula::with_name("test");
        let phase = formula.add_phase("water", PhaseKind::HeatedWater, None);
        for (at, amount) in (0u32..).zip(amounts) {
            formula.add_line(phase, MaterialId::Catalogue(at), *amount);
        }
        formula
    }

    fn percent(value: Decimal) -> Amount {
        Amount::Percent(Percent::new(value).unwrap())
    }

    fn codes(formula: &Formula) -> Vec<&'static str> {
        formula.balance().problems.iter().map(FormulaProblem::code).collect()
    }

    #[test]
    fn the_quantum_satis_line_gets_what_is_left() {
        let balance = formula(&[percent(dec!(38.8)), Amount::QuantumSatis]).balance();
        assert_eq!(balance.shares[1].percent.value(), dec!(61.2));
        assert_eq!(balance.total, Percent::HUNDRED);
        assert!(balance.is_sound());
    }

    #[test]
    fn each_fault_has_its_code() {
        let check = |amounts: &[Amount], code: &str| assert_eq!(codes(&formula(amounts)), [code], "{amounts:?}");
        check(&[], "formula.empty");
        check(&[percent(dec!(60)), percent(dec!(39.9))], "formula.total-not-100");
        check(&[percent(dec!(60)), percent(dec!(40.1))], "formula.total-not-100");
        check(&[percent(dec!(60)), Amount::QuantumSatis, Amount::QuantumSatis], "formula.several-qs");
        check(&[percent(dec!(60)), percent(dec!(41)), Amount::QuantumSatis], "formula.qs-negative");
        check(&[percent(dec!(60)), percent(dec!(40)), Amount::QuantumSatis], "formula.qs-zero");
        check(&[percent(dec!(0)), Amount::QuantumSatis], "formula.not-positive");
        check(&[percent(dec!(-3)), Amount::QuantumSatis], "formula.not-positive");
        check(&[Amount::Grams(Grams::new(dec!(5)).unwrap()), Amount::QuantumSatis], "formula.mixed-amounts");
    }

    #[test]
    fn an_old_batch_in_grams_becomes_percents_that_make_exactly_100() {
        let mut old = formula(&[
            Amount::Grams(Grams::new(dec!(1)).unwrap()),
            Amount::Grams(Grams::new(dec!(1)).unwrap()),
            Amount::Grams(Grams::new(dec!(1)).unwrap()),
        ]);
        old.written_in = WrittenIn::Grams;
        let balance = old.balance();
        assert_eq!(balance.shares.iter().map(|share| share.percent.value()).sum::<Decimal>(), dec!(100));
        old.write_in_percent(2);
        assert_eq!(old.written_in, WrittenIn::Percent);
        let percents: Vec<Amount> = old.lines().map(|line| line.amount).collect();
        assert_eq!(percents, [percent(dec!(33.34)), percent(dec!(33.33)), percent(dec!(33.33))]);
    }

    fn any_amount() -> impl Strategy<Value = Amount> {
        prop_oneof![
            6 => (-500i64..12_000, 0u32..4).prop_map(|(mantissa, scale)| percent(Decimal::new(mantissa, scale))),
            1 => Just(Amount::QuantumSatis),
            1 => (0i64..5000).prop_map(|mass| Amount::Grams(Grams::new(Decimal::new(mass, 1)).unwrap())),
        ]
    }

    proptest! {
        #[test]
        fn a_cure_removes_its_problem(amounts in prop::collection::vec(any_amount(), 1..9), prefer in 0u32..9) {
            let formula = formula(&amounts);
            let balance = formula.balance();
            for problem in &balance.problems {
                for cure in balance.cures(problem, Some(LineId(prefer))) {
                    let mut cured = formula.clone();
                    cured.apply(&cure);
                    prop_assert!(!cured.balance().problems.contains(problem), "{:?} after {:?}", problem, cure);
                }
            }
        }

        #[test]
        fn a_sound_formula_totals_exactly_100(amounts in prop::collection::vec(any_amount(), 1..9)) {
            let balance = formula(&amounts).balance();
            if balance.is_sound() {
                let sum: Decimal = balance.shares.iter().map(|share| share.percent.value()).sum();
                prop_assert_eq!(sum, dec!(100));
                prop_assert!(balance.shares.iter().all(|share| share.percent.value() > Decimal::ZERO));
            }
        }

        #[test]
        fn normalising_totals_exactly_100(masses in prop::collection::vec(1i64..1_000_000, 1..30), decimals in 2u32..5) {
            let amounts: Vec<Amount> = masses.iter().map(|mass| percent(Decimal::new(*mass, 3))).collect();
            let mut formula = formula(&amounts);
            formula.normalise(decimals);
            let sum: Decimal = formula.balance().shares.iter().map(|share| share.percent.value()).sum();
            prop_assert_eq!(sum, dec!(100));
        }
    }
}
