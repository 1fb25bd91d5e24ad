//! Least cost of linear programs against another solver, mixtures of pharmacy calculations, and what the trade takes instead.

use crate::{EvidenceSet, Worst, count_bases, rows};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Deserialize;
use stillroom_catalogue::{Catalogue, MaterialSource, groups, knowledge};
use stillroom_core::checks::{About, Demand};
use stillroom_core::composition::Makeups;
use stillroom_core::rebuild::program::{Column, NoOptimum, Program, Row};
use stillroom_core::rebuild::substitutes::{Substitute, substitutes};
use stillroom_core::rebuild::{Aim, Grid, Offer, Question};
use stillroom_core::{ConstituentId, MaterialId};

const PROGRAMS: &str = include_str!("../data/linear_programs.csv");
const ALLIGATION: &str = include_str!("../data/alligation.csv");
const SUBSTITUTIONS: &str = include_str!("../data/substitutions.csv");

#[derive(Debug, Deserialize)]
struct Case {
    #[cfg_attr(not(test), expect(dead_code, reason = "names a row that does not agree"))]
    family: String,
    columns: String,
    rows: String,
    status: String,
    cost: Option<f64>,
    source: String,
    basis: String,
}

fn number(text: &str) -> f64 {
    text.parse().unwrap_or_else(|error| panic!("`{text}`: {error}"))
}

impl Case {
    fn program(&self) -> Program {
        let columns = self.columns.split('|').map(|column| {
            let cells: Vec<f64> = column.split(' ').map(number).collect();
            let [cost, low, high] = cells[..] else { panic!("a column is cost, low and high: `{column}`") };
            Column { cost, low, high }
        });
        let rows = self.rows.split('|').map(|row| {
            let mut cells = row.split(' ');
            let mut bound = || number(cells.next().unwrap_or_default());
            let (low, high) = (bound(), bound());
            let term = |cell: &str| {
                let (at, factor) = cell.split_once(':').unwrap_or_else(|| panic!("no term: `{cell}`"));
                (at.parse().unwrap_or_else(|error| panic!("`{at}`: {error}")), number(factor))
            };
            Row { terms: cells.map(term).collect(), low, high }
        });
        Program { columns: columns.collect(), rows: rows.collect() }
    }

    /// Relative difference of the least cost; infinite where one finds an answer and the other none, or for another reason.
    fn deviation(&self) -> f64 {
        match (self.program().solve(), self.status.as_str(), self.cost) {
            (Ok(found), "optimal", Some(cost)) => (found.cost - cost) / cost.abs().max(1.0),
            (Err(NoOptimum::Infeasible), "infeasible", None) | (Err(NoOptimum::Unbounded), "unbounded", None) => 0.0,
            _ => f64::INFINITY,
        }
    }
}

#[derive(Debug, Deserialize)]
struct Mixture {
    question: String,
    strengths: String,
    /// Grams of a strength that are to be used up, where some are.
    held: String,
    wanted: Decimal,
    /// Grams wanted, where no strength says how much there will be.
    batch: Option<Decimal>,
    amounts: String,
    basis: String,
}

fn decimals(text: &str) -> Vec<Option<Decimal>> {
    text.split(';')
        .map(|cell| (!cell.is_empty()).then(|| cell.parse().unwrap_or_else(|_| panic!("`{cell}`"))))
        .collect()
}

impl Mixture {
    /// Largest difference of an amount from the published one, in hundredths of the batch.
    fn deviation(&self) -> f64 {
        let (active, base) = (ConstituentId::Catalogue(1), ConstituentId::Catalogue(2));
        let amounts: Vec<Decimal> = decimals(&self.amounts).into_iter().flatten().collect();
        let held = if self.held.is_empty() { Vec::new() } else { decimals(&self.held) };
        // Where one lot is used up the batch is what the answer is about: the program works in shares of it.
        let batch = self.batch.unwrap_or_else(|| amounts.iter().sum());
        let strengths = decimals(&self.strengths).into_iter().flatten();
        let offers = strengths.enumerate().map(|(at, strength)| Offer {
            material: MaterialId::Catalogue(u32::try_from(at).unwrap_or(u32::MAX)),
            line: None,
            brings: vec![(active, strength), (base, Decimal::ONE_HUNDRED - strength)],
            low: Decimal::ZERO,
            high: Decimal::ONE_HUNDRED,
            now: None,
            price: None,
            urgency: Decimal::ZERO,
        });
        let offers: Vec<Offer> = offers.collect();
        let step = Decimal::new(1, 4);
        let within = Decimal::new(1, 4);
        let wanted = Demand::on(About::Wanted(active), vec![(active, Decimal::ONE)]);
        let mut demands = vec![wanted.at_least(self.wanted - within).at_most(self.wanted + within)];
        if offers.len() == 3 {
            // Of three lots two are taken alike.
            let alike = vec![(offers[0].material, Decimal::ONE), (offers[1].material, Decimal::NEGATIVE_ONE)];
            let demand = Demand::on(About::Density, Vec::new()).at_least(-step).at_most(step);
            demands.push(Demand { materials: alike, ..demand });
        }
        let grid = Grid::new(Decimal::ONE_HUNDRED, step).expect("a grid");
        let question = Question { offers, wishes: Vec::new(), demands, grid, aim: Aim::Closest };
        let answer = question.solve().unwrap_or_else(|error| panic!("{}: {error}", self.question));
        let held_at = held.iter().position(Option::is_some);
        let share = |at: usize| answer.portions[at].percent;
        let batch = held_at.map_or(batch, |at| held[at].unwrap_or_default() * Decimal::ONE_HUNDRED / share(at));
        let off = |(at, amount): (usize, &Decimal)| {
            ((share(at) * batch / Decimal::ONE_HUNDRED - amount) / amount).abs().to_f64().unwrap_or(f64::NAN)
        };
        amounts.iter().enumerate().map(off).fold(0.0, f64::max)
    }
}

#[derive(Debug, Deserialize)]
struct Asked {
    question: String,
    material: String,
    first: String,
    never: String,
    basis: String,
}

fn material(name: &str) -> MaterialId {
    let found = Catalogue::get().materials().find(|material| material.name == name);
    found.unwrap_or_else(|| panic!("no material `{name}`")).id
}

fn name(id: MaterialId) -> &'static str {
    Catalogue::get().material(id).map_or("", |material| material.name.as_str())
}

impl Asked {
    fn answer(&self, makeups: &mut Makeups) -> Vec<Substitute> {
        let all = Catalogue::get().materials().map(|material| material.id);
        substitutes(material(&self.material), all, None, Catalogue::get(), knowledge(), groups(), makeups)
    }

    /// What is wrong with the answer; nothing where it is right.
    fn wrong(&self, makeups: &mut Makeups) -> Vec<String> {
        let answer = self.answer(makeups);
        let mut wrong = Vec::new();
        let first = answer.first().map(|it| it.material);
        if !self.first.split(';').any(|wanted| Some(material(wanted)) == first) {
            let found: Vec<String> =
                answer.iter().take(5).map(|it| format!("{} ({:.0})", name(it.material), it.score)).collect();
            wrong.push(format!("{}: first is {}, not {}", self.material, found.join(", "), self.first));
        }
        for never in self.never.split(';') {
            if answer.iter().any(|it| it.material == material(never)) {
                wrong.push(format!("{}: {never} is offered ({})", self.material, self.question));
            }
        }
        wrong
    }
}

/// What the sets of this module found.
#[must_use]
pub fn evidence() -> Vec<EvidenceSet> {
    let cases: Vec<Case> = rows("linear_programs.csv", PROGRAMS);
    let mut worst = Worst::default();
    for case in &cases {
        worst.see(case.deviation());
    }
    let source = format!(
        "{}; {}",
        cases.first().map_or("", |case| case.source.as_str()),
        count_bases(cases.iter().map(|case| case.basis.as_str()))
    );
    let mixtures: Vec<Mixture> = rows("alligation.csv", ALLIGATION);
    let mut alligation = Worst::default();
    for mixture in &mixtures {
        alligation.see(mixture.deviation());
    }
    let bases = count_bases(mixtures.iter().map(|mixture| mixture.basis.as_str()));
    let pharmacy = format!("Worked alligations of pharmacy calculations, each named in its row; {bases}");
    let questions: Vec<Asked> = rows("substitutions.csv", SUBSTITUTIONS);
    let (mut answers, mut makeups) = (Worst::default(), Makeups::default());
    for asked in &questions {
        #[expect(clippy::cast_precision_loss, reason = "a handful")]
        answers.see(asked.wrong(&mut makeups).len() as f64);
    }
    let bases = count_bases(questions.iter().map(|asked| asked.basis.as_str()));
    let trade = format!("Questions of the trade with what ranks first and what is never offered; {bases}");
    vec![
        EvidenceSet::of("solver.reference-lp", source, worst, 1e-6, "of the cost"),
        EvidenceSet::of("solver.alligation", pharmacy, alligation, 1e-3, "of the amount"),
        EvidenceSet::of("solver.substitutions", trade, answers, 0.0, "wrong answers"),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_sets_hold() {
        crate::hold(
            &evidence(),
            &[("solver.reference-lp", 641), ("solver.alligation", 12), ("solver.substitutions", 84)],
        );
    }

    #[test]
    fn each_question_of_the_trade_is_answered_as_the_trade_does() {
        let mut makeups = Makeups::default();
        let questions: Vec<Asked> = rows("substitutions.csv", SUBSTITUTIONS);
        let wrong: Vec<String> = questions.iter().flat_map(|asked| asked.wrong(&mut makeups)).collect();
        assert!(wrong.is_empty(), "{} wrong:\n{}", wrong.len(), wrong.join("\n"));
    }

    #[test]
    fn each_program_agrees_by_itself() {
        let cases: Vec<Case> = rows("linear_programs.csv", PROGRAMS);
        let odd = |(at, case): (usize, &Case)| {
            let found = case.program().solve().map(|found| found.cost);
            let agrees = case.deviation().abs() <= 1e-6;
            (!agrees)
                .then(|| format!("row {}, {}: {} {:?}, not {found:?}", at + 2, case.family, case.status, case.cost))
        };
        let odd: Vec<String> = cases.iter().enumerate().filter_map(odd).collect();
        assert!(odd.is_empty(), "{}", odd.join("\n"));
    }
}
