//! What the checks ask of any mixture, as data: weighted sums of substances with bounds, for whoever looks for amounts.
//!
//! Nothing is decided here. Each demand is made of what its finding computes with: the bound of a limit, what dissolves, what
//! an emulsifier holds. What is no sum of percents is taken as it is in the formula of now (the solvent that dissolves, the
//! balance that the oil asks for): whoever changes that asks again.

use super::contents::{Contents, NOTHING, Present};
use super::emulsion;
use super::facts::{Authority, Facts};
use super::limits::brings_towards;
use super::limits::over_usual::{is_bounded, makes_the_body};
use super::solubility::{most_dissolved, solutes};
use crate::Class;
use crate::material::{ConstituentId, MaterialId};
use crate::source::Citation;
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;

/// What a demand is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum About {
    /// A limit of the law or of advice, by its subject.
    Limit {
        /// What is limited.
        subject: &'static str,
        /// Whose.
        jurisdiction: &'static str,
        /// Whether it is the law.
        law: bool,
    },
    /// What stays dissolved of a substance.
    Dissolves(ConstituentId),
    /// The dose of a preservative.
    Dose(ConstituentId),
    /// The usual amount of a substance.
    Usual(ConstituentId),
    /// That what emulsifies holds the oil.
    Emulsifier,
    /// The balance of the emulsifiers.
    Balance,
    /// The share of oil.
    Oil,
    /// The share of water.
    Water,
    /// A substance that the maker wants at a figure.
    Wanted(ConstituentId),
    /// The density.
    Density,
}

/// A weighted sum that has to stay within bounds.
#[derive(Debug, Clone, PartialEq)]
pub struct Demand {
    /// What it is about.
    pub about: About,
    /// Substances that count, with the factor of a percent of the product.
    pub substances: Vec<(ConstituentId, Decimal)>,
    /// Materials that count as such, likewise.
    pub materials: Vec<(MaterialId, Decimal)>,
    /// Least.
    pub low: Option<Decimal>,
    /// Most.
    pub high: Option<Decimal>,
    /// Whether a maker may choose to give way here. Not with the law.
    pub may_give: bool,
    /// Where the bound was found.
    pub citation: Option<Citation>,
}

/// Decimals of a factor or bound that comes out of physics: finer than any of them is known.
const DECIMALS: u32 = 9;

/// A figure of physics as an exact decimal.
fn exact(value: f64) -> Option<Decimal> {
    Decimal::from_f64(value).map(|decimal| decimal.round_dp(DECIMALS))
}

fn exactly(factors: impl IntoIterator<Item = (ConstituentId, f64)>) -> Vec<(ConstituentId, Decimal)> {
    let exact = factors.into_iter().filter_map(|(id, factor)| Some((id, exact(factor)?)));
    exact.filter(|(_, factor)| !factor.is_zero()).collect()
}

impl Demand {
    /// A demand on substances.
    #[must_use]
    pub fn on(about: About, substances: Vec<(ConstituentId, Decimal)>) -> Self {
        Self { about, substances, materials: Vec::new(), low: None, high: None, may_give: true, citation: None }
    }

    /// At least so much.
    #[must_use]
    pub fn at_least(mut self, low: Decimal) -> Self {
        self.low = Some(low);
        self
    }

    /// At most so much.
    #[must_use]
    pub fn at_most(mut self, high: Decimal) -> Self {
        self.high = Some(high);
        self
    }
}

impl<'a> Contents<'a> {
    /// Everything in the jar and every other substance named, the others at nothing.
    #[must_use]
    pub fn present_or(&self, others: &[ConstituentId]) -> Vec<Present<'a>> {
        let mut all = self.present.clone();
        for id in others {
            if self.find(*id).is_none() && !all.iter().any(|each| each.id == *id) {
                let class = self.source.constituent(*id).map_or(Class::Other, |constituent| constituent.class);
                let facts: &'a Facts = self.knowledge.facts(*id).unwrap_or(&NOTHING);
                all.push(Present { id: *id, class, percent: 0.0, dissolving: 0.0, facts, trail: &[] });
            }
        }
        all
    }

    /// What the checks ask of any mixture of what is in the jar and of `others`.
    #[must_use]
    pub fn demands(&self, others: &[ConstituentId]) -> Vec<Demand> {
        let all = self.present_or(others);
        let mut found = Vec::new();
        self.add_limits(&all, &mut found);
        self.add_doses(&all, &mut found);
        self.add_solubility(&all, &mut found);
        for asks in emulsion::asks(self, &all) {
            let about = if asks.is_balance { About::Balance } else { About::Emulsifier };
            let bounds = (asks.low.and_then(exact), asks.high.and_then(exact));
            let demand = Demand::on(about, exactly(asks.factors));
            found.push(Demand { low: bounds.0, high: bounds.1, citation: Some(Citation::COMMON_PRACTICE), ..demand });
        }
        found.retain(|demand| !demand.substances.is_empty());
        found
    }

    fn add_limits(&self, all: &[Present<'a>], found: &mut Vec<Demand>) {
        for limit in self.knowledge.limits() {
            let weights = all.iter().map(|each| (each.id, brings_towards(self, limit, each.id, each.facts)));
            let weights: Vec<_> = weights.filter(|(_, weight)| *weight > 0.0).collect();
            // A limit that starts later is not one yet, and of another use it says nothing.
            let (false, Some(bound)) = (weights.is_empty(), self.bound_of(limit).and_then(exact)) else { continue };
            let law = limit.authority == Authority::Law;
            let about = About::Limit { subject: limit.subject, jurisdiction: limit.jurisdiction, law };
            let demand = Demand::on(about, exactly(weights)).at_most(bound);
            found.push(Demand { may_give: !law, citation: Some(limit.citation), ..demand });
        }
    }

    /// No more of anything than is usual where that matters, and of a preservative no less either.
    fn add_doses(&self, all: &[Present<'a>], found: &mut Vec<Demand>) {
        for each in all {
            if let Some(usual) = each.facts.preservative.as_ref().and_then(|own| own.usual) {
                let meant = each.percent >= usual.value.low;
                let demand = Demand::on(About::Dose(each.id), vec![(each.id, Decimal::ONE)]);
                let low = exact(usual.value.low).filter(|_| meant);
                found.push(Demand { low, high: exact(usual.value.high), citation: Some(usual.citation), ..demand });
            } else if let Some(usual) =
                each.facts.usual_percent.filter(|_| is_bounded(self, each) && !makes_the_body(each))
            {
                let demand = Demand::on(About::Usual(each.id), vec![(each.id, Decimal::ONE)]);
                found.push(Demand { high: exact(usual.value.high), citation: Some(usual.citation), ..demand });
            }
        }
    }

    fn add_solubility(&self, all: &[Present<'a>], found: &mut Vec<Demand>) {
        let room = self.conditions.room;
        let mut known: Vec<ConstituentId> = Vec::new();
        for solute in solutes(self) {
            known.extend(solute.members.iter().map(|(id, _)| *id));
            let Ok(capacity) = solute.capacity(self, room) else { continue };
            let citation = capacity.citations.first().copied();
            let demand = Demand::on(About::Dissolves(solute.id), exactly(solute.members));
            found.push(Demand { high: exact(capacity.cap), citation, ..demand });
        }
        for each in all.iter().filter(|each| each.percent <= 0.0 && !known.contains(&each.id)) {
            if let Some(most) = self.dissolves_new(each).and_then(exact) {
                found.push(Demand::on(About::Dissolves(each.id), vec![(each.id, Decimal::ONE)]).at_most(most));
            }
        }
    }

    /// How much of a substance that is not there yet would stay dissolved; nothing where it need not, or no figure says so.
    fn dissolves_new(&self, each: &Present<'a>) -> Option<f64> {
        let body = each.is_oil()
            || matches!(each.class, Class::Water | Class::Emulsifier | Class::Surfactant | Class::Thickener);
        if body || self.is_dry() || self.knowledge.cosolvent(each.id).is_some() {
            return None;
        }
        most_dissolved(self, each.id)
    }

    /// Factors of how far the balance of the emulsifiers is from a target, as a sum.
    #[must_use]
    pub fn off_balance(&self, others: &[ConstituentId], target: f64) -> Vec<(ConstituentId, Decimal)> {
        exactly(emulsion::off_balance(&self.present_or(others), target))
    }

    /// Factors that add up to the share of oil.
    #[must_use]
    pub fn oil_factors(&self, others: &[ConstituentId]) -> Vec<(ConstituentId, Decimal)> {
        self.present_or(others).iter().filter(|each| each.is_oil()).map(|each| (each.id, Decimal::ONE)).collect()
    }

    /// Factors that add up to the share of water.
    #[must_use]
    pub fn water_factors(&self, others: &[ConstituentId]) -> Vec<(ConstituentId, Decimal)> {
        let all = self.present_or(others);
        exactly(all.iter().map(|each| (each.id, super::contents::water_share(each))))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::bench::Bench;
    use crate::checks::contents::Conditions;
    use crate::composition::Makeups;
    use crate::evaluation::{self, evaluate};
    use crate::formula::Formula;

    fn demands(bench: &Bench, formula: &Formula, others: &[ConstituentId]) -> Vec<Demand> {
        let evaluation = evaluate(formula, &evaluation::Bench::default(), bench, &mut Makeups::default());
        Contents::new(formula, &evaluation, bench, bench, Conditions::default()).demands(others)
    }

    #[test]
    fn a_limit_is_asked_of_what_is_there_and_of_what_could_come() {
        let bench = Bench::new();
        let kojic = bench.constituent("Kojic Acid");
        let limit = |found: &[Demand]| {
            let about = |each: &&Demand| matches!(each.about, About::Limit { subject: "Kojic Acid", .. });
            found.iter().find(about).map(|each| (each.high, each.may_give))
        };
        let water = bench.water_with(&[]);
        assert_eq!(limit(&demands(&bench, &water, &[])), None);
        assert_eq!(limit(&demands(&bench, &water, &[kojic])), Some((Some(Decimal::ONE), false)));
        assert!(limit(&demands(&bench, &bench.water_with(&[("Kojic Acid", "1")]), &[])).is_some());
    }

    #[test]
    fn an_emulsion_asks_for_its_emulsifier_and_water_does_not() {
        let bench = Bench::new();
        let emulsion = bench.water_with(&[("Helianthus Annuus Seed Oil", "20"), ("Cetearyl Olivate", "3")]);
        let about = |found: Vec<Demand>| found.iter().any(|each| each.about == About::Emulsifier);
        assert!(about(demands(&bench, &emulsion, &[])));
        assert!(!about(demands(&bench, &bench.water_with(&[]), &[])));
    }
}
