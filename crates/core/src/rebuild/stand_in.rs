//! What takes the place of a line by what it does, where nothing brings the same substance.

use crate::checks::{About, Contents, Demand};
use crate::formula::LineId;
use crate::material::{ConstituentId, MaterialId};
use rust_decimal::Decimal;

/// A material that does the job of a line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StandIn {
    /// The line whose job it does.
    pub line: LineId,
    /// What does it.
    pub material: MaterialId,
    /// How much of it does the job of the line, in percent of the product.
    pub percent: Decimal,
    /// Its dose in percent of the product, where it has one: a preservative, an emulsifier.
    pub dose: Option<(Decimal, Decimal)>,
    /// Percent of each constituent in it.
    pub brings: Vec<(ConstituentId, Decimal)>,
}

impl StandIn {
    /// Wants what the stand-in brings instead of what the line brought.
    pub(super) fn turn(&self, targets: &mut Vec<(ConstituentId, Decimal)>, contents: &Contents<'_>) {
        for (id, target) in targets.iter_mut() {
            let brought = contents.find(*id).and_then(|each| each.trail.iter().find(|part| part.line == self.line));
            if let Some(brought) = brought {
                *target = (*target - brought.percent.value()).max(Decimal::ZERO);
            }
        }
        for (id, share) in &self.brings {
            let Some(brought) = share.checked_mul(self.percent).map(|brought| brought / Decimal::ONE_HUNDRED) else {
                continue;
            };
            match targets.iter_mut().find(|(known, _)| known == id) {
                Some((_, target)) => *target = target.checked_add(brought).unwrap_or(*target),
                None => targets.push((*id, brought)),
            }
        }
    }

    /// Whether a demand is about the dose of what only the line brought.
    pub(super) fn frees(&self, demand: &Demand, contents: &Contents<'_>) -> bool {
        let About::Dose(id) = demand.about else { return false };
        contents.find(id).is_some_and(|each| each.trail.iter().all(|part| part.line == self.line))
    }

    /// Its own dose as a demand.
    pub(super) fn doses(&self) -> Option<Demand> {
        let (low, high) = self.dose?;
        let main = self.brings.iter().max_by_key(|(_, share)| *share)?.0;
        let demand = Demand::on(About::Dose(main), Vec::new()).at_least(low).at_most(high);
        Some(Demand { materials: vec![(self.material, Decimal::ONE)], ..demand })
    }
}
