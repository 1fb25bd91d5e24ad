//! Questions of the size of a shelf: 60 materials of 40 constituents, and what an infeasible one costs.

use rust_decimal::Decimal;
use std::hint::black_box;
use std::time::{Duration, Instant};
use stillroom_core::checks::{About, Demand};
use stillroom_core::rebuild::{Aim, Grid, Offer, Question, Wish};
use stillroom_core::{ConstituentId, MaterialId, Percent};

/// The same numbers every time (Knuth's multiplier of a linear congruence).
struct Draw(u64);

impl Draw {
    fn below(&mut self, most: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % most
    }

    fn place(&mut self, most: u32) -> u32 {
        u32::try_from(self.below(u64::from(most))).unwrap_or(0)
    }
}

fn question(materials: u32, constituents: u32, seed: u64) -> Question {
    let mut draw = Draw(seed);
    let offers = (0..materials).map(|number| {
        let parts = 1 + draw.below(4);
        let mut left = 10_000_i64;
        let mut brings: Vec<(ConstituentId, Decimal)> = Vec::new();
        for part in 0..parts {
            let share = if part + 1 == parts { left } else { i64::try_from(draw.below(5_000)).unwrap_or(0).min(left) };
            left -= share;
            brings.push((ConstituentId::Catalogue(draw.place(constituents)), Decimal::new(share, 2)));
        }
        Offer {
            material: MaterialId::Catalogue(number),
            line: None,
            brings,
            low: Decimal::ZERO,
            high: Decimal::from(40),
            now: None,
            price: Some(Decimal::from(draw.below(50))),
            urgency: Decimal::ZERO,
        }
    });
    let offers: Vec<Offer> = offers.collect();
    let wishes = (0..constituents).filter_map(|number| {
        let target = Percent::new(Decimal::new(i64::try_from(draw.below(500)).ok()?, 2)).ok()?;
        Some(Wish { constituent: ConstituentId::Catalogue(number), target, weight: Decimal::ONE })
    });
    let wishes = wishes.collect();
    let demands = (0..20).map(|_| {
        let id = ConstituentId::Catalogue(draw.place(constituents));
        Demand::on(About::Usual(id), vec![(id, Decimal::ONE)]).at_most(Decimal::from(2 + draw.below(10)))
    });
    let demands = demands.collect();
    Question { offers, wishes, demands, grid: Grid::PERCENT, aim: Aim::Closest }
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort();
    times.get(times.len() / 2).copied().unwrap_or_default()
}

fn main() {
    for (materials, constituents) in [(10, 10), (20, 15), (60, 40), (120, 60)] {
        let questions: Vec<Question> = (1..=20).map(|seed| question(materials, constituents, seed)).collect();
        // The quickest of five: what else the machine does is not what is measured.
        let time = |asked: &Question| {
            let once = || {
                let start = Instant::now();
                let answer = black_box(black_box(asked).solve());
                (start.elapsed(), answer.is_ok())
            };
            (0..5).map(|_| once()).min().unwrap_or_default()
        };
        let times: Vec<(Duration, bool)> = questions.iter().map(time).collect();
        let answered = times.iter().filter(|(_, ok)| *ok).count();
        let worst = times.iter().map(|(time, _)| *time).max().unwrap_or_default();
        let middle = median(times.into_iter().map(|(time, _)| time).collect());
        println!(
            "solve {materials:>3} materials × {constituents:>2} constituents {middle:>12.3?}, worst {worst:>10.3?}, {answered} of 20 answered"
        );
        let mut impossible = questions.clone();
        for asked in &mut impossible {
            let id = ConstituentId::Catalogue(0);
            asked.demands.push(Demand::on(About::Wanted(id), vec![(id, Decimal::ONE)]).at_least(Decimal::from(99)));
        }
        let middle = median(impossible.iter().map(|asked| time(asked).0).collect());
        println!("name what is in the way of {materials:>3} × {constituents:>2} {middle:>12.3?}");
    }
}
