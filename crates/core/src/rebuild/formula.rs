//! The uses: a formula in which lines are swapped, taken apart, put together, rebuilt from a shelf or brought to a figure.
//!
//! Each makes a [`Question`] of the formula: what is in the jar now is what is wanted, what the checks ask has to hold, and a
//! line that nobody touches stays as it is. What checks ask depends on the answer itself (what dissolves on the solvent), so
//! the answer is asked again until it keeps what is asked of it.

use super::answer::{Answer, NoAnswer};
use super::question::{Aim, Grid, Offer, Question, Wish};
use super::stand_in::StandIn;
use crate::amount::Amount;
use crate::checks::facts::Cosolvent;
use crate::checks::{About, Conditions, Contents, Demand, Knowledge};
use crate::composition::Makeups;
use crate::evaluation::{Bench, Evaluation, evaluate};
use crate::formula::{Formula, Line, LineId};
use crate::material::{ConstituentId, Makeup, MaterialId, MaterialSource};
use crate::quantity::{Density, Grams, Percent};
use crate::{Class, PhaseKind, WrittenIn};
use rust_decimal::Decimal;

/// Rounds in which what the checks ask is asked again of the answer.
const ROUNDS: usize = 4;
/// What a percent of water or glycerin off counts beside one of what acts.
const FILLER: Decimal = Decimal::from_parts(1, 0, 0, false, 1);
/// What a percent counts at most of something of which there is little: as much as if all of it were a hundredth.
const MOST_WEIGHT: Decimal = Decimal::ONE_HUNDRED;

/// A formula and where everything about it is looked up.
pub struct Setting<'a> {
    /// The formula.
    pub formula: &'a Formula,
    /// What the bench is like.
    pub bench: &'a Bench,
    /// Where materials are looked up.
    pub source: &'a dyn MaterialSource,
    /// Where facts are looked up.
    pub knowledge: &'a dyn Knowledge,
    /// The temperatures it has to bear.
    pub conditions: Conditions,
    /// In which steps it is weighed.
    pub grid: Grid,
    /// What a phase is called that has to be made.
    pub phase_name: &'a dyn Fn(PhaseKind) -> String,
}

/// A material at hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AtHand {
    /// What.
    pub material: MaterialId,
    /// How much of the product it can be at most; nothing where there is enough.
    pub most: Option<Percent>,
    /// Price of a gram, in one currency for all.
    pub price: Option<Decimal>,
    /// How much better each percent used up is; nothing for what keeps.
    pub urgency: Decimal,
}

impl AtHand {
    /// As much as one likes of a material, at no price.
    #[must_use]
    pub const fn enough(material: MaterialId) -> Self {
        Self { material, most: None, price: None, urgency: Decimal::ZERO }
    }

    /// No more than there is for a batch of this mass. `None` for a batch of nothing.
    #[must_use]
    pub fn in_stock(material: MaterialId, stock: Grams, batch: Grams) -> Option<Self> {
        let most = Percent::from_share(stock, batch)?.min(Percent::HUNDRED);
        Some(Self { most: Some(most), ..Self::enough(material) })
    }
}

/// A figure that lines are brought to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Figure {
    /// Percent of a substance, whichever lines bring it.
    Substance(ConstituentId, Percent),
    /// Share of oil.
    Oil(Percent),
    /// Share of water, from every source.
    Water(Percent),
    /// Hydrophilic-lipophilic balance of the emulsifiers that have one.
    Balance(Decimal),
    /// Density by the materials, as [`crate::composition::estimate_density`] has it.
    Density(Density),
}

/// Another version of a formula.
#[derive(Debug, Clone, PartialEq)]
pub struct Version {
    /// The formula with its new amounts.
    pub formula: Formula,
    /// How the amounts were found, with what they meet and miss.
    pub answer: Answer,
    /// Lines of before that are gone.
    pub went: Vec<LineId>,
    /// Lines that are new.
    pub came: Vec<LineId>,
    /// Lines whose amount is another.
    pub changed: Vec<LineId>,
}

/// What one use asks for.
struct Plan<'p> {
    /// Lines that go.
    out: Vec<LineId>,
    /// Lines whose amount may change.
    vary: Vec<LineId>,
    /// Materials that may come, each into the place of a line where one is named.
    come: Vec<AtHand>,
    /// How much there is of what lines bring.
    stock: &'p [AtHand],
    /// What is wanted besides.
    demands: Vec<Demand>,
    /// Substances that are wanted at another percent than now.
    wanted: Vec<(ConstituentId, Decimal)>,
    /// What stands in for lines that go.
    stand_ins: Vec<StandIn>,
    aim: Aim,
    /// Whether what is broken now has to be put right as well.
    strict: bool,
}

impl Default for Plan<'_> {
    fn default() -> Self {
        Self {
            out: Vec::new(),
            vary: Vec::new(),
            come: Vec::new(),
            stock: &[],
            demands: Vec::new(),
            wanted: Vec::new(),
            stand_ins: Vec::new(),
            aim: Aim::Closest,
            strict: false,
        }
    }
}

impl Setting<'_> {
    /// Swaps lines for other materials; water, glycerin and what is q.s. make room. The new ones stand where the first of the
    /// old stood. Also puts simples together into a composite.
    ///
    /// # Errors
    /// [`NoAnswer`].
    pub fn swap(&self, lines: &[LineId], new: &[AtHand], makeups: &mut Makeups) -> Result<Version, NoAnswer> {
        self.make(Plan { out: lines.to_vec(), come: new.to_vec(), ..Plan::default() }, makeups)
    }

    /// Swaps lines for what stands in for them by what it does: at its ratio, inside its dose.
    ///
    /// # Errors
    /// [`NoAnswer`].
    pub fn stand_in(&self, stand_ins: &[StandIn], makeups: &mut Makeups) -> Result<Version, NoAnswer> {
        let out = stand_ins.iter().map(|each| each.line).collect();
        let come = stand_ins.iter().map(|each| AtHand::enough(each.material)).collect();
        self.make(Plan { out, come, stand_ins: stand_ins.to_vec(), ..Plan::default() }, makeups)
    }

    /// Replaces a composite by what it is made of, one level deep.
    ///
    /// # Errors
    /// [`NoAnswer`]; `rebuild.nothing-at-hand` for a line that is no composite.
    pub fn take_apart(&self, line: LineId, makeups: &mut Makeups) -> Result<Version, NoAnswer> {
        let material = self.formula.line(line).and_then(|line| self.source.material(line.material));
        let Some(Makeup::Composite(parts)) = material.map(|material| &material.makeup) else {
            return Err(NoAnswer::NothingAtHand);
        };
        let parts: Vec<AtHand> = parts.iter().map(|part| AtHand::enough(part.material)).collect();
        self.swap(&[line], &parts, makeups)
    }

    /// Rebuilds the formula from a shelf: every line varies, lines of materials that are not at hand go, what is at hand may
    /// come, and `stand_ins` take the place of what nothing at hand brings.
    ///
    /// # Errors
    /// [`NoAnswer`].
    pub fn rebuild(
        &self,
        at_hand: &[AtHand],
        stand_ins: &[StandIn],
        aim: Aim,
        makeups: &mut Makeups,
    ) -> Result<Version, NoAnswer> {
        let has = |line: &&Line| at_hand.iter().any(|each| each.material == line.material);
        let (vary, out): (Vec<&Line>, Vec<&Line>) = self.formula.lines().partition(has);
        let plan = Plan {
            out: out.iter().map(|line| line.id).collect(),
            vary: vary.iter().map(|line| line.id).collect(),
            come: at_hand.to_vec(),
            stock: at_hand,
            stand_ins: stand_ins.to_vec(),
            aim,
            strict: true,
            ..Plan::default()
        };
        self.make(plan, makeups)
    }

    /// Brings lines to a figure: they and what is q.s. (or else the water) change as little as that takes.
    ///
    /// # Errors
    /// [`NoAnswer`].
    pub fn hit(
        &self,
        figure: Figure,
        within: Decimal,
        lines: &[LineId],
        makeups: &mut Makeups,
    ) -> Result<Version, NoAnswer> {
        let evaluation = evaluate(self.formula, self.bench, self.source, makeups);
        let contents = self.contents(self.formula, &evaluation);
        let brings: Vec<ConstituentId> = contents.present.iter().map(|each| each.id).collect();
        let band = |about, factors, target: Percent| {
            vec![Demand::on(about, factors).at_least(target.value() - within).at_most(target.value() + within)]
        };
        let mut wanted = Vec::new();
        let demands = match figure {
            Figure::Substance(id, percent) => {
                wanted.push((id, percent.value()));
                band(About::Wanted(id), vec![(id, Decimal::ONE)], percent)
            }
            Figure::Oil(percent) => band(About::Oil, contents.oil_factors(&brings), percent),
            Figure::Water(percent) => band(About::Water, contents.water_factors(&brings), percent),
            Figure::Balance(target) => {
                let off = |target: Decimal| contents.off_balance(&brings, super::solve::number(target));
                vec![
                    Demand::on(About::Balance, off(target + within)).at_most(Decimal::ZERO),
                    Demand::on(About::Balance, off(target - within)).at_least(Decimal::ZERO),
                ]
            }
            Figure::Density(density) => self.of_density(density.value(), within, makeups),
        };
        self.make(Plan { vary: lines.to_vec(), demands, wanted, ..Plan::default() }, makeups)
    }

    /// Volumes add: what is known of them times the density is what is known of the mass.
    fn of_density(&self, density: Decimal, within: Decimal, makeups: &mut Makeups) -> Vec<Demand> {
        let mut side = |target: Decimal| {
            let mut factors: Vec<(MaterialId, Decimal)> = Vec::new();
            for line in self.formula.lines() {
                let Ok(inside) = makeups.see_through(line.material, self.source) else { continue };
                let known = inside.volume_known / Decimal::ONE_HUNDRED;
                let volume = inside.specific_volume.and_then(|volume| volume.checked_mul(target));
                if let (Some(volume), false) = (volume, factors.iter().any(|(id, _)| *id == line.material)) {
                    factors.push((line.material, (known * (Decimal::ONE - volume)).round_dp(12)));
                }
            }
            Demand { materials: factors, ..Demand::on(About::Density, Vec::new()) }
        };
        vec![side(density - within).at_least(Decimal::ZERO), side(density + within).at_most(Decimal::ZERO)]
    }

    fn contents<'c>(&'c self, formula: &'c Formula, evaluation: &'c Evaluation) -> Contents<'c> {
        Contents::new(formula, evaluation, self.source, self.knowledge, self.conditions)
    }

    /// Lines that make room: what is q.s., the largest water, and glycerin by itself.
    fn fillers(&self, evaluation: &Evaluation, out: &[LineId], with_glycerin: bool) -> Vec<LineId> {
        let lines = || evaluation.lines.iter().filter(|(share, _)| !out.contains(&share.line));
        let mut found: Vec<LineId> =
            lines().filter(|(share, _)| share.quantum_satis).map(|(share, _)| share.line).collect();
        let is_water = |id: &MaterialId| self.source.material(*id).is_some_and(|it| it.class == Class::Water);
        if found.is_empty() || with_glycerin {
            let waters = lines().filter(|(_, material)| is_water(material));
            found.extend(waters.max_by(|a, b| a.0.percent.cmp(&b.0.percent)).map(|(share, _)| share.line));
        }
        if with_glycerin {
            let is_glycerin = |id: &MaterialId| match self.source.material(*id).map(|material| &material.makeup) {
                Some(Makeup::Simple(inside)) => self.is_glycerin(*inside),
                _ => false,
            };
            found.extend(lines().filter(|(_, material)| is_glycerin(material)).map(|(share, _)| share.line));
        }
        found.sort_unstable();
        found.dedup();
        found
    }

    fn is_glycerin(&self, id: ConstituentId) -> bool {
        self.knowledge.cosolvent(id).is_some_and(|(kind, _)| kind == Cosolvent::Glycerin)
    }

    /// Everything that is in the jar as it is wanted: a percent of what acts counts more the less there is of it.
    fn wishes(&self, contents: &Contents<'_>, plan: &Plan<'_>) -> Vec<Wish> {
        let mut targets: Vec<(ConstituentId, Decimal)> = contents
            .evaluation
            .composition
            .entries
            .iter()
            .map(|entry| (entry.constituent, entry.percent.value()))
            .collect();
        for stand_in in &plan.stand_ins {
            stand_in.turn(&mut targets, contents);
        }
        for (id, percent) in &plan.wanted {
            match targets.iter_mut().find(|(known, _)| known == id) {
                Some((_, target)) => *target = *percent,
                None => targets.push((*id, *percent)),
            }
        }
        let wish = |(constituent, target): (ConstituentId, Decimal)| {
            let class = self.source.constituent(constituent).map_or(Class::Other, |it| it.class);
            let filler = class == Class::Water || self.is_glycerin(constituent);
            let weight = Decimal::ONE.checked_div(target).unwrap_or(Decimal::ONE).clamp(Decimal::ONE, MOST_WEIGHT);
            let asked_for = plan.wanted.iter().any(|(id, _)| *id == constituent);
            let weight = match (asked_for, filler) {
                (true, _) => MOST_WEIGHT,
                (false, true) => FILLER,
                (false, false) => weight.round_dp(6),
            };
            Some(Wish { constituent, target: Percent::new(target).ok()?, weight })
        };
        targets.into_iter().filter_map(wish).collect()
    }

    /// The percent of a demand now, with its materials.
    fn now(demand: &Demand, evaluation: &Evaluation) -> Option<Decimal> {
        let mut sum = Decimal::ZERO;
        for entry in &evaluation.composition.entries {
            if let Some((_, factor)) = demand.substances.iter().find(|(id, _)| *id == entry.constituent) {
                sum = sum.checked_add(entry.percent.value().checked_mul(*factor)?)?;
            }
        }
        for (share, material) in &evaluation.lines {
            if let Some((_, factor)) = demand.materials.iter().find(|(id, _)| id == material) {
                sum = sum.checked_add(share.percent.value().checked_mul(*factor)?)?;
            }
        }
        Some(sum)
    }

    fn make(&self, mut plan: Plan<'_>, makeups: &mut Makeups) -> Result<Version, NoAnswer> {
        let evaluation = evaluate(self.formula, self.bench, self.source, makeups);
        if !crate::checks::can_check(&evaluation) || !evaluation.composition.unresolved.is_empty() {
            return Err(NoAnswer::Unbalanced);
        }
        // What comes and is there already is that line, and not another beside it.
        let material_of = |line: LineId| self.formula.line(line).map(|line| line.material);
        let mut stays = Vec::new();
        for each in &plan.come {
            let there = self.formula.lines().filter(|line| line.material == each.material);
            stays.extend(there.map(|line| line.id).take(1));
        }
        plan.out.retain(|line| !stays.contains(line));
        plan.vary.extend(stays.iter().copied());
        let is_there = |each: &AtHand| stays.iter().any(|line| material_of(*line) == Some(each.material));
        let come: Vec<AtHand> = plan.come.iter().filter(|each| !is_there(each)).copied().collect();
        let hits = !plan.demands.is_empty();
        plan.vary.extend(self.fillers(&evaluation, &plan.out, !hits));
        let offers = self.offers(&plan, &come, &evaluation, makeups)?;
        let contents = self.contents(self.formula, &evaluation);
        let others: Vec<ConstituentId> =
            offers.iter().flat_map(|offer| offer.brings.iter().map(|(id, _)| *id)).collect();
        let mut demands = contents.demands(&others);
        if !plan.strict {
            // What is broken now is no reason against another change: it only must not get worse.
            for demand in &mut demands {
                let Some(now) = Self::now(demand, &evaluation) else { continue };
                demand.high = demand.high.map(|high| high.max(now));
                demand.low = demand.low.map(|low| low.min(now));
                // Who takes a preservative out says with what it is to be preserved: the findings judge that.
                if matches!(demand.about, About::Dose(id) if contents.find(id).is_some_and(|it| it.lines().all(|line| plan.out.contains(&line))))
                {
                    demand.low = None;
                }
            }
        }
        for stand_in in &plan.stand_ins {
            demands.retain(|demand| !stand_in.frees(demand, &contents));
            demands.extend(stand_in.doses());
        }
        let own = demands.clone();
        demands.extend(plan.demands.iter().cloned());
        let wishes = self.wishes(&contents, &plan);
        let mut question = Question { offers, wishes, demands, grid: self.grid, aim: plan.aim };
        let mut version = self.version(&question, &plan, makeups)?;
        for _ in 0..ROUNDS {
            let after = evaluate(&version.formula, self.bench, self.source, makeups);
            let asked = self.contents(&version.formula, &after).demands(&others);
            let broken = asked.into_iter().filter(|demand| {
                // A limit is the same in every mixture, and what was tolerated stays so.
                let depends = matches!(demand.about, About::Dissolves(_) | About::Balance | About::Emulsifier);
                let known = own.iter().any(|known| known.about == demand.about);
                let Some(sum) = Self::now(demand, &after).filter(|_| depends && known) else { return false };
                demand.high.is_some_and(|high| sum > high) || demand.low.is_some_and(|low| sum < low)
            });
            let mut broken: Vec<Demand> = broken.collect();
            if !plan.strict {
                broken.retain(|demand| {
                    let Some(before) = Self::now(demand, &evaluation) else { return true };
                    demand.high.is_none_or(|high| before <= high) && demand.low.is_none_or(|low| before >= low)
                });
            }
            if broken.is_empty() {
                break;
            }
            question.demands.extend(broken);
            // Where the answer cannot keep what it changes itself, the findings of the version say so.
            let Ok(next) = self.version(&question, &plan, makeups) else { break };
            version = next;
        }
        Ok(version)
    }

    fn offers(
        &self,
        plan: &Plan<'_>,
        come: &[AtHand],
        evaluation: &Evaluation,
        makeups: &mut Makeups,
    ) -> Result<Vec<Offer>, NoAnswer> {
        let mut offers = Vec::new();
        let stock = |id: MaterialId| plan.stock.iter().chain(&plan.come).find(|each| each.material == id);
        for (share, material) in &evaluation.lines {
            if plan.out.contains(&share.line) {
                continue;
            }
            let inside = makeups.see_through(*material, self.source).map_err(|_| NoAnswer::Unbalanced)?;
            let (now, varies) = (share.percent.value(), plan.vary.contains(&share.line));
            let at_hand = stock(*material);
            let most = at_hand.and_then(|each| each.most).map_or(Decimal::ONE_HUNDRED, Percent::value);
            offers.push(Offer {
                material: *material,
                line: Some(share.line),
                brings: inside.constituents.clone(),
                low: if varies { Decimal::ZERO } else { now },
                high: if varies { most } else { now },
                now: Some(now),
                price: at_hand.and_then(|each| each.price),
                urgency: at_hand.map_or(Decimal::ZERO, |each| each.urgency),
            });
        }
        for each in come {
            let Ok(inside) = makeups.see_through(each.material, self.source) else { continue };
            offers.push(Offer {
                material: each.material,
                line: None,
                brings: inside.constituents.clone(),
                low: Decimal::ZERO,
                high: each.most.map_or(Decimal::ONE_HUNDRED, Percent::value),
                // Of several ways as near the one with fewer new lines is taken.
                now: Some(Decimal::ZERO),
                price: each.price,
                urgency: each.urgency,
            });
        }
        Ok(offers)
    }

    /// The formula with the amounts of an answer.
    fn version(&self, question: &Question, plan: &Plan<'_>, makeups: &mut Makeups) -> Result<Version, NoAnswer> {
        let answer = question.solve()?;
        let mut formula = self.formula.clone();
        let evaluation = evaluate(self.formula, self.bench, self.source, makeups);
        if formula.written_in == WrittenIn::Grams {
            formula.written_in = WrittenIn::Percent;
            for (share, _) in &evaluation.lines {
                if let Some(line) = formula.line_mut(share.line) {
                    line.amount = Amount::Percent(share.percent);
                }
            }
        }
        let (mut came, mut went, mut changed) = (Vec::new(), plan.out.clone(), Vec::new());
        let place = plan.out.first().and_then(|line| self.formula.place_of(*line));
        let mut next = place;
        for portion in &answer.portions {
            let percent = Percent::new(portion.percent).map_err(|_| NoAnswer::Failed)?;
            let Some(id) = portion.line else {
                if !percent.is_zero() {
                    came.push(self.add(&mut formula, portion.material, percent, &mut next).ok_or(NoAnswer::Failed)?);
                }
                continue;
            };
            let now = evaluation.lines.iter().find(|(share, _)| share.line == id).map(|(share, _)| share);
            let Some(now) = now.filter(|now| now.percent != percent) else { continue };
            changed.push(id);
            if percent.is_zero() {
                went.push(id);
            } else if let Some(line) = formula.line_mut(id).filter(|_| !now.quantum_satis) {
                line.amount = Amount::Percent(percent);
            }
        }
        changed.retain(|line| !went.contains(line));
        for line in &went {
            formula.remove_line(*line);
        }
        // What was measured was another product.
        formula.measured_ph = None;
        Ok(Version { formula, answer, went, came, changed })
    }

    /// A new line: where the one stood that it is for, unless it must not be heated and that is; else in its usual phase.
    fn add(
        &self,
        formula: &mut Formula,
        material: MaterialId,
        percent: Percent,
        next: &mut Option<crate::formula::Place>,
    ) -> Option<LineId> {
        let usual = self.source.material(material).map_or(PhaseKind::RoomTemperature, |it| it.usual_phase);
        let heated = |kind: PhaseKind| matches!(kind, PhaseKind::HeatedWater | PhaseKind::HeatedOil);
        if let Some(place) = next {
            let phase = formula.phases.get(place.phase)?;
            if !(heated(phase.kind) && usual == PhaseKind::CoolDown) {
                let phase = phase.id;
                let id = formula.add_line(phase, material, Amount::Percent(percent))?;
                formula.move_line(id, phase, place.line + 1);
                place.line += 1;
                return Some(id);
            }
        }
        let known = formula.phases.iter().find(|phase| phase.kind == usual).map(|phase| phase.id);
        let phase = known.unwrap_or_else(|| formula.add_phase((self.phase_name)(usual), usual, None));
        formula.add_line(phase, material, Amount::Percent(percent))
    }
}
