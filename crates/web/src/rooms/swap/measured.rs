//! A question of a given size drawn by chance, for measuring how long an answer takes.

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use stillroom_core::checks::{About, Demand};
use stillroom_core::rebuild::{Aim, Grid, Offer, Question, Wish};
use stillroom_core::{ConstituentId, MaterialId, Percent};

/// The same numbers every time (Knuth's multiplier of a linear congruence).
struct Draw(u64);

impl Draw {
    fn below(&mut self, most: u32) -> u32 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        u32::try_from((self.0 >> 33) % u64::from(most.max(1))).unwrap_or(0)
    }
}

/// How far the nearest amounts of so many materials of so many substances are off; less than nothing where there are none.
pub(crate) fn solve_by_chance(materials: u32, substances: u32, chance: u32) -> f64 {
    let mut draw = Draw(u64::from(chance));
    let offers = (0..materials.min(400)).map(|number| {
        let parts = 1 + draw.below(4);
        let mut left = 10_000;
        let mut brings: Vec<(ConstituentId, Decimal)> = Vec::new();
        for part in 0..parts {
            let share = if part + 1 == parts { left } else { draw.below(5_000).min(left) };
            left -= share;
            brings.push((ConstituentId::Catalogue(draw.below(substances)), Decimal::new(i64::from(share), 2)));
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
    let wishes = (0..substances.min(400)).filter_map(|number| {
        let target = Percent::new(Decimal::new(i64::from(draw.below(500)), 2)).ok()?;
        Some(Wish { constituent: ConstituentId::Catalogue(number), target, weight: Decimal::ONE })
    });
    let wishes = wishes.collect();
    let demands = (0..20).map(|_| {
        let id = ConstituentId::Catalogue(draw.below(substances));
        Demand::on(About::Usual(id), vec![(id, Decimal::ONE)]).at_most(Decimal::from(2 + draw.below(10)))
    });
    let demands = demands.collect();
    let question = Question { offers, wishes, demands, grid: Grid::PERCENT, aim: Aim::Closest };
    question.solve().ok().and_then(|answer| answer.deviation.to_f64()).unwrap_or(-1.0)
}
