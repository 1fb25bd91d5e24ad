//! The formula from what is on the shelf: what there is of each line, what stands in for what is missing, what is used up
//! first, what is cheapest.

use crate::messages::swap as says;
use crate::rooms::swap::edit::{SwapDesk, Use};
use crate::rooms::swap::offer::Worked;
use crate::session::Session;
use rust_decimal::Decimal;
use std::collections::BTreeSet;
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::Evaluation;
use stillroom_core::rebuild::substitutes::Reason;
use stillroom_core::rebuild::{Aim, AtHand, StandIn};
use stillroom_core::{Class, ConstituentId, Currency, Formula, Grams, LineId, MaterialId, MaterialSource};

/// Days within which what expires is in a hurry. A choice of ours.
const HURRY: i64 = 365;
/// How much further from the formula the cheapest, or what is used up, may lie: the choices, in weighted percent.
pub(super) const FURTHER: [(&str, i64); 3] = [("hardly", 2), ("somewhat", 10), ("freely", 40)];
/// What would do the job of a line and is nowhere on the shelf: so many are named.
const MOST_NAMED: usize = 3;

/// What there is of a line.
pub(super) struct OnShelf {
    pub(super) line: LineId,
    pub(super) material: MaterialId,
    pub(super) lacking: bool,
    pub(super) remark: String,
}

impl Session {
    /// Price of a gram, where one is known.
    pub(super) fn price_of(&self, material: MaterialId) -> Option<(Decimal, Currency)> {
        let holding = self.materials.holding(material)?;
        let (price, pack) = (holding.price?, holding.pack?);
        Some((price.amount().checked_div(pack.value())?, price.currency()))
    }

    /// The currency that most prices of some materials are in.
    pub(super) fn currency_of(&self, materials: impl Iterator<Item = MaterialId>) -> Option<Currency> {
        let mut counts: Vec<(Currency, usize)> = Vec::new();
        for (_, currency) in materials.filter_map(|id| self.price_of(id)) {
            match counts.iter_mut().find(|(known, _)| *known == currency) {
                Some((_, count)) => *count += 1,
                None => counts.push((currency, 1)),
            }
        }
        counts.into_iter().max_by(|a, b| a.1.cmp(&b.1).then_with(|| b.0.code().cmp(a.0.code()))).map(|(it, _)| it)
    }

    fn is_past(&self, material: MaterialId) -> bool {
        self.materials.holding(material).and_then(|holding| self.days_left(holding)).is_some_and(|days| days < 0)
    }

    /// What there is of each line. Water is always at hand; what the stores say nothing of counts as at hand unless only they
    /// count.
    pub(super) fn on_shelf(&self, formula: &Formula, evaluation: &Evaluation, desk: &SwapDesk) -> Vec<OnShelf> {
        let only_stores = desk.chosen("swap.count") == Some("stores");
        let batch = evaluation.batch.as_ref().map(|batch| batch.mass).ok();
        let shares = formula.lines().zip(&evaluation.balance.shares);
        let each = shares.map(|(line, share)| {
            let holding = self.materials.holding(line.material);
            let is_water = self.is_water(line.material);
            let needed = batch.and_then(|batch| share.percent.of(batch));
            let (lacking, remark) = match holding {
                Some(holding) if holding.stock.is_some_and(Grams::is_zero) => {
                    (true, says::shelf_none_left().to_owned())
                }
                Some(holding) if self.days_left(holding).is_some_and(|days| days < 0) => {
                    let day = holding.expiry.parse().map(crate::rooms::batches::sentences::day);
                    (false, says::shelf_past(&day.unwrap_or_else(|_| holding.expiry.clone())))
                }
                Some(holding) => match (holding.stock, needed) {
                    (Some(stock), Some(needed)) if stock < needed => {
                        (false, says::shelf_short(&self.mass(stock), &self.mass(needed)))
                    }
                    (Some(stock), _) => (false, says::shelf_stock(&self.mass(stock))),
                    (None, _) => (false, says::shelf_some().to_owned()),
                },
                None if is_water => (false, String::new()),
                None => (only_stores, if only_stores { says::shelf_not_noted().to_owned() } else { String::new() }),
            };
            let lacking = desk.lacks.get(&line.id).copied().unwrap_or(lacking);
            OnShelf { line: line.id, material: line.material, lacking, remark }
        });
        each.collect()
    }

    /// The formula from the shelf, as it is asked for.
    pub(super) fn work_out_shelf(
        &self,
        formula: &Formula,
        evaluation: &Evaluation,
        desk: &SwapDesk,
        makeups: &mut Makeups,
    ) -> Worked {
        let mut worked = Worked::default();
        let lines = self.on_shelf(formula, evaluation, desk);
        let missing: Vec<&OnShelf> = lines.iter().filter(|it| it.lacking).collect();
        let kept: BTreeSet<MaterialId> = lines.iter().filter(|it| !it.lacking).map(|it| it.material).collect();
        let gone: BTreeSet<MaterialId> = missing.iter().map(|it| it.material).filter(|id| !kept.contains(id)).collect();
        let held: Vec<MaterialId> = self
            .materials
            .kept_holdings()
            .map(|(id, _)| id)
            .filter(|id| !kept.contains(id) && !gone.contains(id) && self.is_at_hand(*id) && !self.is_past(*id))
            .collect();
        let currency = self.currency_of(kept.iter().chain(&held).copied());
        let mut at_hand: Vec<AtHand> = kept.iter().map(|id| self.as_at_hand(*id, evaluation, desk, currency)).collect();
        let newcomers = self.newcomers(evaluation, &held, desk, makeups);
        at_hand.extend(newcomers.into_iter().map(|id| self.as_at_hand(id, evaluation, desk, currency)));
        // A line of which nothing is known to cost anything does not grow because it seems to cost nothing; and to add water is
        // no way to save.
        if desk.wanted == Use::Cheapest {
            for each in at_hand.iter_mut().filter(|each| each.price.is_none() || self.is_water(each.material)) {
                let now = evaluation.lines.iter().filter(|(_, id)| *id == each.material);
                let now: Decimal = now.map(|(share, _)| share.percent.value()).sum();
                each.most = stillroom_core::Percent::new(now).ok();
            }
            at_hand.retain(|each| each.price.is_some() || kept.contains(&each.material));
            let unpriced: Vec<String> = kept
                .iter()
                .filter(|id| !self.is_water(**id) && !self.price_of(**id).is_some_and(|(_, of)| Some(of) == currency))
                .map(|id| self.materials.name(*id))
                .collect();
            if currency.is_none() {
                worked.said.push(says::no_prices().to_owned());
                return worked;
            }
            if !unpriced.is_empty() {
                worked.said.push(says::unpriced(&crate::messages::sentences::list(&unpriced)));
            }
        }
        if desk.wanted == Use::Expiring && !at_hand.iter().any(|each| each.urgency > Decimal::ZERO) {
            worked.said.push(says::nothing_expires().to_owned());
            return worked;
        }
        let mut stand_ins: Vec<StandIn> = Vec::new();
        for line in &missing {
            self.stand_in_from(formula, evaluation, line, &kept, &held, &mut stand_ins, &mut worked, makeups);
        }
        for stand_in in &stand_ins {
            if !at_hand.iter().any(|each| each.material == stand_in.material) {
                at_hand.push(self.as_at_hand(stand_in.material, evaluation, desk, currency));
            }
        }
        let further = FURTHER.iter().find(|(word, _)| desk.chosen("swap.further") == Some(word)).unwrap_or(&FURTHER[1]);
        let further = Decimal::from(further.1);
        let aim = match desk.wanted {
            Use::Expiring => Aim::UseUp { further },
            Use::Cheapest => Aim::Cheapest { further },
            Use::Line | Use::Shelf | Use::Figure => Aim::Closest,
        };
        worked.answer = Some(self.setting_of(formula).rebuild(&at_hand, &stand_ins, aim, makeups));
        worked
    }

    /// How much of a material there is for the batch, what it costs, and how soon it expires.
    fn as_at_hand(
        &self,
        id: MaterialId,
        evaluation: &Evaluation,
        desk: &SwapDesk,
        currency: Option<Currency>,
    ) -> AtHand {
        let holding = self.materials.holding(id);
        let batch = evaluation.batch.as_ref().map(|batch| batch.mass).ok();
        // What somebody says is at hand is, whatever the stores say.
        let insists =
            evaluation.lines.iter().any(|(share, of)| *of == id && desk.lacks.get(&share.line) == Some(&false));
        let stock = holding.and_then(|holding| holding.stock).filter(|_| !insists).zip(batch);
        let mut found =
            stock.and_then(|(stock, batch)| AtHand::in_stock(id, stock, batch)).unwrap_or_else(|| AtHand::enough(id));
        found.price = self.price_of(id).filter(|(_, of)| Some(*of) == currency).map(|(price, _)| price);
        if found.price.is_none() && self.is_water(id) {
            found.price = Some(Decimal::ZERO);
        }
        if desk.wanted == Use::Expiring {
            let days = holding.and_then(|holding| self.days_left(holding)).filter(|days| (0..HURRY).contains(days));
            found.urgency = days.map_or(Decimal::ZERO, |days| Decimal::new((HURRY - days) * 100 / HURRY, 2));
        }
        found
    }

    /// What of the shelf may come: what brings something of the formula; where something else is looked for than the nearest,
    /// whatever is of a kind that can go gram for gram.
    fn newcomers(
        &self,
        evaluation: &Evaluation,
        held: &[MaterialId],
        desk: &SwapDesk,
        makeups: &mut Makeups,
    ) -> Vec<MaterialId> {
        let is_there = |id: ConstituentId| evaluation.composition.entries.iter().any(|entry| entry.constituent == id);
        let classes: BTreeSet<Class> =
            evaluation.lines.iter().filter_map(|(_, id)| self.materials.material(*id)).map(|it| it.class).collect();
        let mut found = held.to_vec();
        found.retain(|id| {
            let Some(material) = self.materials.material(*id) else { return false };
            let Ok(inside) = makeups.see_through(*id, &self.materials) else { return false };
            let is_water = |id: ConstituentId| {
                self.materials.constituent(id).is_none_or(|constituent| constituent.class == Class::Water)
            };
            let shares = inside.constituents.iter().any(|(id, _)| !is_water(*id) && is_there(*id));
            let gram_for_gram = matches!(
                material.class,
                Class::Oil | Class::Butter | Class::Emollient | Class::Humectant | Class::Solvent | Class::Wax
            );
            let of_a_kind = classes.contains(&material.class);
            shares || desk.wanted != Use::Shelf && gram_for_gram && of_a_kind
        });
        found
    }

    /// What of the shelf does the job of a line that is missing; where nothing does, what would is said.
    #[expect(clippy::too_many_arguments, reason = "one line of a shelf that is looked through")]
    fn stand_in_from(
        &self,
        formula: &Formula,
        evaluation: &Evaluation,
        line: &OnShelf,
        kept: &BTreeSet<MaterialId>,
        held: &[MaterialId],
        stand_ins: &mut Vec<StandIn>,
        worked: &mut Worked,
        makeups: &mut Makeups,
    ) {
        let among: Vec<MaterialId> = kept.iter().chain(held).copied().collect();
        let ranked = self.ranked(formula, evaluation, line.material, among, makeups);
        let name = self.materials.name(line.material);
        if let Some(best) = ranked.first() {
            // What brings the same substance is found by what is wanted itself.
            if !matches!(best.reasons.first(), Some(Reason::SameSubstance { .. })) {
                stand_ins.extend(self.stand_in_for(evaluation, line.line, best, makeups));
            }
            worked.feel.extend(best.differences.iter().copied());
            worked.said.push(says::stands_in(&self.materials.name(best.material), &name));
            return;
        }
        let everything: Vec<MaterialId> = self.materials.catalogue().materials().map(|it| it.id).collect();
        let would = self.ranked(formula, evaluation, line.material, everything, makeups);
        let names: Vec<String> = would.iter().take(MOST_NAMED).map(|each| self.materials.name(each.material)).collect();
        worked.said.push(if names.is_empty() {
            says::nothing_stands_in(&name)
        } else {
            says::nothing_on_shelf(&name, &crate::messages::sentences::list(&names))
        });
    }
}
