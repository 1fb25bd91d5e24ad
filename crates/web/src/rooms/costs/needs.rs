//! What a batch needs of each material: of a line what goes in, of what the maker makes themselves what that is made of.

use crate::rooms::costs::fields::Costed;
use crate::session::Session;
use litemap::LiteMap;
use rust_decimal::Decimal;
use stillroom_core::balance::balance;
use stillroom_core::cost::{Need, Pack};
use stillroom_core::day::Day;
use stillroom_core::evaluation::Evaluation;
use stillroom_core::run::state::{LineStatus, RunState, replay};
use stillroom_core::{Amount, Currency, Grams, LineId, Makeup, MaterialId, MaterialSource, Percent, WrittenIn};
use stillroom_exchange::record::FormulaRecord;

/// How deep a material made of others is followed.
const DEEPEST: usize = 12;

/// A line of what is made.
pub(crate) struct MadeOf {
    pub(crate) material: MaterialId,
    pub(crate) mass: Grams,
}

/// A batch that was made.
pub(crate) struct MadeBatch {
    pub(crate) lot: String,
    pub(crate) lines: Vec<MadeOf>,
    /// Containers that were filled; none where that was not noted.
    pub(crate) units: u32,
    /// What came out.
    pub(crate) out: Grams,
    /// The day it was finished.
    pub(crate) day: Option<Day>,
}

/// What is there of a material, less what was taken of it already.
type Remaining = LiteMap<MaterialId, Decimal>;

impl Session {
    /// The batch of a formula that was finished last.
    pub(crate) fn made_last(&self, record: &FormulaRecord) -> Option<MadeBatch> {
        let of_it = self.batches.values().filter(|batch| batch.batch.of == record.id);
        let mut runs: Vec<_> = of_it.collect();
        runs.sort_by_key(|batch| std::cmp::Reverse(batch.changed_at));
        runs.into_iter().find_map(|kept| {
            let state = replay(&kept.batch.plan, &kept.batch.events).filter(|state| state.finished_at.is_some())?;
            let lines = kept.batch.plan.formula.lines().filter_map(|line| weighed(&state, line.id, line.material));
            let filled = state.filled_mass().filter(|mass| !mass.is_zero());
            Some(MadeBatch {
                lot: kept.batch.lot.clone(),
                lines: lines.collect(),
                units: state.filled.iter().map(|(count, _)| *count).fold(0, u32::saturating_add),
                out: filled.unwrap_or_else(|| state.batch_there()),
                day: state.finished_at.and_then(|at| Day::from_moment(at, self.around.minutes_ahead())),
            })
        })
    }

    /// The lines of the batch that is planned.
    pub(crate) fn planned_lines(record: &FormulaRecord, evaluation: &Evaluation, batch: Grams) -> Vec<MadeOf> {
        let lines = record.formula.lines();
        lines
            .filter_map(|line| {
                let share = evaluation.balance.share_of(line.id)?;
                Some(MadeOf { material: line.material, mass: share.of(batch)? })
            })
            .collect()
    }

    /// How a material is sold, where price and pack are known.
    fn pack_of(&self, material: MaterialId) -> Option<Pack> {
        let holding = self.materials.holding(material)?;
        let holds = holding.pack.filter(|pack| !pack.is_zero())?;
        Some(Pack { holds, price: holding.price?, shipping: holding.shipping.unwrap_or_default() })
    }

    /// How a material was sold on a day, where price and pack were noted by then.
    fn pack_on(&self, material: MaterialId, day: Day) -> Option<Pack> {
        let noted = self.materials.holding(material)?.price_on(&day.to_string())?;
        let holds = noted.pack.filter(|pack| !pack.is_zero())?;
        Some(Pack { holds, price: noted.price, shipping: noted.shipping.unwrap_or_default() })
    }

    /// A material as it is reckoned with at the prices of a day; whether only those of today are known.
    pub(crate) fn need_on(&self, each: &MadeOf, day: Option<Day>) -> (Need, bool) {
        let today = self.need_of(each);
        let Some(day) = day else { return (today, false) };
        match self.pack_on(each.material, day) {
            Some(pack) => (Need { pack: Some(pack), ..today }, false),
            None => (today, today.pack.is_some()),
        }
    }

    /// What of a mass of a material is bought: itself, or the parts of what the maker makes and nobody sells. Where `stock`
    /// is given, what is there of such a material is used up first.
    pub(crate) fn bought_for(
        &self,
        material: MaterialId,
        mass: Grams,
        mut stock: Option<&mut Remaining>,
        depth: usize,
    ) -> Vec<MadeOf> {
        let itself = |mass| vec![MadeOf { material, mass }];
        if depth >= DEEPEST || self.pack_of(material).is_some() || matches!(material, MaterialId::Catalogue(_)) {
            return itself(mass);
        }
        let Some(Makeup::Composite(parts)) = self.materials.material(material).map(|material| &material.makeup) else {
            return itself(mass);
        };
        let amounts: Vec<(LineId, Amount)> = (0u32..).map(LineId).zip(parts.iter().map(|part| part.amount)).collect();
        let in_grams = parts.iter().any(|part| matches!(part.amount, Amount::Grams(_)));
        let shares = balance(&amounts, if in_grams { WrittenIn::Grams } else { WrittenIn::Percent });
        if !shares.is_sound() {
            return itself(mass);
        }
        let mut mass = mass;
        if let Some(stock) = stock.as_deref_mut() {
            let there = self.materials.holding(material).and_then(|holding| holding.stock);
            let left = stock.get(&material).copied().or(there.map(Grams::value)).unwrap_or_default();
            let taken = left.min(mass.value());
            stock.insert(material, left - taken);
            mass = Grams::new(mass.value() - taken).unwrap_or(Grams::ZERO);
            if mass.is_zero() {
                return Vec::new();
            }
        }
        let mut bought = Vec::new();
        for (part, share) in parts.iter().zip(&shares.shares) {
            let Some(mass) = share.percent.of(mass) else { continue };
            bought.extend(self.bought_for(part.material, mass, stock.as_deref_mut(), depth + 1));
        }
        bought
    }

    /// A material as it is reckoned with.
    pub(crate) fn need_of(&self, each: &MadeOf) -> Need {
        Need {
            material: each.material,
            mass: each.mass,
            pack: self.pack_of(each.material),
            is_free: self.is_water(each.material),
            stock: self.materials.holding(each.material).and_then(|holding| holding.stock),
        }
    }

    /// What several batches need of each material, every material once, in the order of the lines.
    pub(crate) fn needed_of_each(&self, lines: &[MadeOf], costed: &Costed) -> Vec<Need> {
        let times = Decimal::from(costed.batches());
        let mut stock = Remaining::new();
        let mut needs: Vec<Need> = Vec::new();
        for line in lines {
            let Some(mass) = line.mass.value().checked_mul(times).and_then(|mass| Grams::new(mass).ok()) else {
                continue;
            };
            for bought in self.bought_for(line.material, mass, Some(&mut stock), 0) {
                match needs.iter_mut().find(|need| need.material == bought.material) {
                    Some(need) => need.mass = need.mass.checked_add(bought.mass).unwrap_or(need.mass),
                    None => needs.push(self.need_of(&bought)),
                }
            }
        }
        needs
    }

    /// The currency that most prices of some materials are in.
    pub(crate) fn currency_of_most(needs: &[Need]) -> Option<Currency> {
        let mut counts: Vec<(Currency, usize)> = Vec::new();
        for currency in needs.iter().filter_map(|need| need.pack.map(|pack| pack.price.currency())) {
            match counts.iter_mut().find(|(known, _)| *known == currency) {
                Some((_, count)) => *count += 1,
                None => counts.push((currency, 1)),
            }
        }
        counts.into_iter().max_by(|a, b| a.1.cmp(&b.1).then_with(|| b.0.code().cmp(a.0.code()))).map(|(it, _)| it)
    }
}

/// What went into a line; what was never poured counts as planned unless it was left out.
fn weighed(state: &RunState, line: LineId, material: MaterialId) -> Option<MadeOf> {
    let line = state.line(line)?;
    let mass = match line.status {
        LineStatus::LeftOut => return None,
        _ if line.poured.is_zero() => line.target,
        _ => line.poured,
    };
    Some(MadeOf { material, mass })
}

/// A share from 0 to 1 of a part in a whole.
pub(crate) fn fraction(part: Decimal, whole: Decimal) -> f64 {
    let share = part.checked_mul(Decimal::ONE_HUNDRED).and_then(|part| part.checked_div(whole));
    let percent = share.and_then(|share| Percent::new(share).ok());
    percent.map_or(0.0, |percent| (percent.to_physics() / 100.0).clamp(0.0, 1.0))
}
