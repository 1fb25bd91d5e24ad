//! What is really in the jar: the constituents of the finished product, with the trail of which line brought how much.
//!
//! Composites are seen through to any depth. Mass is conserved exactly: the constituents of a line always make that
//! line's percent, to the last digit. Each contribution is exact while it fits 24 decimals (three levels of composites
//! in four decimals do); past that it is rounded to 24 decimals and the line's largest constituent takes the rest.

use crate::amount::Amount;
use crate::apportion::conserve;
use crate::balance::{FormulaProblem, LineShare, balance};
use crate::formula::LineId;
use crate::material::{ConstituentId, Makeup, MaterialId, MaterialSource};
use crate::quantity::{Density, Percent};
use core::cmp::Reverse;
use litemap::LiteMap;
use rust_decimal::Decimal;
use std::rc::Rc;
use stillroom_terms::WrittenIn;

/// Decimals of a specific volume: far finer than any density is known.
const VOLUME_DECIMALS: u32 = 8;
/// Decimals of an estimated density.
const DENSITY_DECIMALS: u32 = 4;
/// Deepest nesting followed. Far past any real bench; it bounds the work a hostile file can ask for.
pub const DEEPEST_NESTING: usize = 256;

/// The constituents of a product.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Composition {
    /// Constituents, most first; ties by reference.
    pub entries: Vec<Entry>,
    /// Sum over all constituents.
    pub total: Percent,
    /// Lines that could not be seen through, and why. What they would bring is missing above.
    pub unresolved: Vec<(LineId, CompositionError)>,
}

/// One constituent and where it comes from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// The constituent.
    pub constituent: ConstituentId,
    /// How much of it is in the product.
    pub percent: Percent,
    /// What each line brings of it, in the order of the lines.
    pub trail: Vec<Contribution>,
}

/// What one line brings of one constituent.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Contribution {
    /// The line.
    pub line: LineId,
    /// Percent of the product.
    pub percent: Percent,
}

/// Why a material could not be seen through.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum CompositionError {
    /// Nothing is known under this reference.
    #[error("no material {material}")]
    UnknownMaterial {
        /// The reference.
        material: MaterialId,
    },
    /// The material is made of itself.
    #[error("a cycle of {} materials", path.len())]
    Cycle {
        /// The cycle: each material is made with the next, the last with the first.
        path: Vec<MaterialId>,
    },
    /// The parts of a composite are no formula.
    #[error("the parts of {material}: {problem}")]
    PartsOutOfBalance {
        /// The composite.
        material: MaterialId,
        /// What is wrong with its parts; lines are numbered by their position.
        problem: FormulaProblem,
    },
    /// Composites are nested deeper than [`DEEPEST_NESTING`].
    #[error("composites are nested too deeply at {material}")]
    TooDeep {
        /// Where following stopped.
        material: MaterialId,
    },
}

impl CompositionError {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::UnknownMaterial { .. } => "composition.unknown-material",
            Self::Cycle { .. } => "composition.cycle",
            Self::PartsOutOfBalance { .. } => "composition.parts-out-of-balance",
            Self::TooDeep { .. } => "composition.too-deep",
        }
    }
}

/// A material seen through.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Inside {
    /// Percent of each constituent, summing to exactly 100.
    pub constituents: Vec<(ConstituentId, Decimal)>,
    /// Volume of a gram in millilitres, from the stated density or from those of the parts that have one.
    pub specific_volume: Option<Decimal>,
    /// Percent of the material that volume rests on.
    pub volume_known: Decimal,
}

impl Inside {
    /// The largest constituents, most first.
    #[must_use]
    pub fn largest(&self, count: usize) -> Vec<(ConstituentId, Decimal)> {
        let mut largest: Vec<(ConstituentId, Decimal)> = Vec::with_capacity(count + 1);
        for (constituent, percent) in &self.constituents {
            let at = largest.iter().position(|(_, other)| other < percent).unwrap_or(largest.len());
            if at < count {
                largest.insert(at, (*constituent, *percent));
                largest.truncate(count);
            }
        }
        largest
    }

    /// The constituents, most first.
    #[must_use]
    pub fn most_first(&self) -> Vec<(ConstituentId, Decimal)> {
        let mut most = self.constituents.clone();
        most.sort_by_key(|(_, percent)| Reverse(*percent));
        most
    }
}

/// Remembers materials that were seen through already, so that an edit of one line does not walk every composite
/// again. Forget a material's answer with [`Makeups::clear`] when any composite changes.
#[derive(Debug, Default)]
pub struct Makeups {
    known: LiteMap<MaterialId, Result<Rc<Inside>, CompositionError>>,
}

impl Makeups {
    /// Forgets everything.
    pub fn clear(&mut self) {
        self.known.clear();
    }

    /// Forgets one material that no other is made with.
    pub fn forget(&mut self, material: MaterialId) {
        self.known.remove(&material);
    }

    /// Percent of each constituent in a material, summing to exactly 100.
    ///
    /// # Errors
    /// `composition.unknown-material`, `composition.cycle`, `composition.parts-out-of-balance`,
    /// `composition.too-deep`.
    pub fn see_through(
        &mut self,
        material: MaterialId,
        source: &(impl MaterialSource + ?Sized),
    ) -> Result<Rc<Inside>, CompositionError> {
        self.follow(material, source, &mut Vec::new())
    }

    fn follow(
        &mut self,
        id: MaterialId,
        source: &(impl MaterialSource + ?Sized),
        path: &mut Vec<MaterialId>,
    ) -> Result<Rc<Inside>, CompositionError> {
        if let Some(known) = self.known.get(&id) {
            return known.clone();
        }
        if let Some(start) = path.iter().position(|on_path| *on_path == id) {
            return Err(CompositionError::Cycle { path: from_smallest(&path[start..]) });
        }
        if path.len() >= DEEPEST_NESTING {
            return Err(CompositionError::TooDeep { material: id });
        }
        path.push(id);
        let answer = self.follow_parts(id, source, path);
        path.pop();
        // How deep is too deep depends on where one came from; every other answer holds from everywhere.
        if !matches!(answer, Err(CompositionError::TooDeep { .. })) {
            self.known.insert(id, answer.clone());
        }
        answer
    }

    fn follow_parts(
        &mut self,
        id: MaterialId,
        source: &(impl MaterialSource + ?Sized),
        path: &mut Vec<MaterialId>,
    ) -> Result<Rc<Inside>, CompositionError> {
        let material = source.material(id).ok_or(CompositionError::UnknownMaterial { material: id })?;
        let stated_volume = material.density.and_then(specific_volume);
        let parts = match &material.makeup {
            Makeup::Simple(constituent) => {
                return Ok(Rc::new(Inside {
                    constituents: vec![(*constituent, Decimal::ONE_HUNDRED)],
                    specific_volume: stated_volume,
                    volume_known: stated_volume.map_or(Decimal::ZERO, |_| Decimal::ONE_HUNDRED),
                }));
            }
            Makeup::Composite(parts) => parts,
        };
        let amounts: Vec<_> = (0u32..).map(LineId).zip(parts.iter().map(|part| part.amount)).collect();
        let in_grams = parts.iter().any(|part| matches!(part.amount, Amount::Grams(_)));
        let balance = balance(&amounts, if in_grams { WrittenIn::Grams } else { WrittenIn::Percent });
        if let Some(problem) = balance.problems.into_iter().next() {
            return Err(CompositionError::PartsOutOfBalance { material: id, problem });
        }
        let mut sums: LiteMap<ConstituentId, Decimal> = LiteMap::new();
        let mut volumes = Volumes::default();
        for (part, share) in parts.iter().zip(&balance.shares) {
            let inside = self.follow(part.material, source, path)?;
            volumes.add(share.percent, &inside);
            for (constituent, percent) in contributions(share.percent, &inside.constituents) {
                *sums.entry(constituent).or_insert(Decimal::ZERO) += percent;
            }
        }
        let (specific_volume, volume_known) = match stated_volume {
            Some(volume) => (Some(volume), Decimal::ONE_HUNDRED),
            None => (volumes.of_one_gram(), volumes.known.round_dp(VOLUME_DECIMALS)),
        };
        Ok(Rc::new(Inside { constituents: sums.into_tuple_vec(), specific_volume, volume_known }))
    }
}

/// A cycle written from its smallest reference, so that it reads the same wherever it was entered.
fn from_smallest(cycle: &[MaterialId]) -> Vec<MaterialId> {
    let mut path = cycle.to_vec();
    if let Some(smallest) = (0..path.len()).min_by_key(|&at| path[at]) {
        path.rotate_left(smallest);
    }
    path
}

/// Volume of a gram at a density, in millilitres.
fn specific_volume(density: Density) -> Option<Decimal> {
    Some(Decimal::ONE.checked_div(density.value())?.round_dp(VOLUME_DECIMALS))
}

/// Sums the volumes of what goes into a mixture.
#[derive(Debug, Default)]
struct Volumes {
    /// Percent of the mixture whose volume is known.
    known: Decimal,
    /// Its volume, in millilitres for 100 g of mixture.
    volume: Decimal,
}

impl Volumes {
    fn add(&mut self, percent: Percent, inside: &Inside) {
        if let Some(volume) = inside.specific_volume {
            let known = share_of(percent.value(), inside.volume_known);
            self.known += known;
            self.volume += known * volume;
        }
    }

    fn of_one_gram(&self) -> Option<Decimal> {
        Some(self.volume.checked_div(self.known)?.round_dp(VOLUME_DECIMALS))
    }
}

/// What `percent` of a material brings of each of its constituents; sums to exactly `percent`.
fn contributions(
    percent: Percent,
    inside: &[(ConstituentId, Decimal)],
) -> impl Iterator<Item = (ConstituentId, Decimal)> {
    let mut brought: Vec<Decimal> = inside.iter().map(|(_, share)| share_of(percent.value(), *share)).collect();
    if brought.len() > 1 {
        conserve(&mut brought, percent.value());
    }
    inside.iter().map(|(constituent, _)| *constituent).zip(brought)
}

/// `share` percent of `percent`. Both lie between 0 and 100, so the product cannot overflow.
fn share_of(percent: Decimal, share: Decimal) -> Decimal {
    if share == Decimal::ONE_HUNDRED {
        return percent;
    }
    let mut product = percent * share;
    // Dividing by a hundred is moving the decimal mark; a division would be slower and might round.
    if product.scale() + 2 > Decimal::MAX_SCALE || product.set_scale(product.scale() + 2).is_err() {
        product /= Decimal::ONE_HUNDRED;
    }
    product
}

/// The constituents of the finished product.
///
/// *Units*: mass percent of the product. *Valid for* any shares: where they do not make 100 % the constituents make
/// the same total, and a line that cannot be seen through is listed in [`Composition::unresolved`].
#[must_use]
pub fn resolve_composition(
    lines: &[(LineShare, MaterialId)],
    source: &(impl MaterialSource + ?Sized),
    makeups: &mut Makeups,
) -> Composition {
    let mut composition = Composition { entries: Vec::new(), total: Percent::ZERO, unresolved: Vec::new() };
    let mut positions: LiteMap<ConstituentId, usize> = LiteMap::new();
    let mut sums: Vec<Decimal> = Vec::new();
    let mut total = Decimal::ZERO;
    for (share, material) in lines {
        let inside = match makeups.see_through(*material, source) {
            Ok(inside) => inside,
            Err(error) => {
                composition.unresolved.push((share.line, error));
                continue;
            }
        };
        total += share.percent.value();
        for (constituent, percent) in contributions(share.percent, &inside.constituents) {
            let position = *positions.entry(constituent).or_insert_with(|| {
                composition.entries.push(Entry { constituent, percent: Percent::ZERO, trail: Vec::new() });
                sums.push(Decimal::ZERO);
                sums.len() - 1
            });
            sums[position] += percent;
            // Contributions are never negative and their sum is the total, which is a percent already.
            let Ok(percent) = Percent::new(percent) else { continue };
            let trail = &mut composition.entries[position].trail;
            match trail.last_mut() {
                Some(last) if last.line == share.line => {
                    last.percent = last.percent.checked_add(percent).unwrap_or(last.percent);
                }
                _ => trail.push(Contribution { line: share.line, percent }),
            }
        }
    }
    for (entry, sum) in composition.entries.iter_mut().zip(sums) {
        entry.percent = Percent::new(sum).unwrap_or(Percent::ZERO);
    }
    composition.total = Percent::new(total).unwrap_or(Percent::ZERO);
    composition.entries.sort_unstable_by(|a, b| b.percent.cmp(&a.percent).then(a.constituent.cmp(&b.constituent)));
    composition
}

/// A density computed from the lines, and how much of the formula it rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DensityEstimate {
    /// Mass per volume of the mixture.
    pub density: Density,
    /// Percent of the formula whose density is known; the rest is taken to weigh as much as the known part.
    pub known: Percent,
}

/// Estimates the density of a mixture from those of its materials: volumes add.
///
/// *Units*: g/mL at room temperature. *Valid for* a rough plan of how much fills a bottle: mixing shrinks water and
/// glycerin by up to about 1 %, and an emulsion holds air. A measured density is better. *Source*: ideal mixing.
/// `None` where no density is known.
#[must_use]
pub fn estimate_density(
    lines: &[(LineShare, MaterialId)],
    source: &(impl MaterialSource + ?Sized),
    makeups: &mut Makeups,
) -> Option<DensityEstimate> {
    let mut volumes = Volumes::default();
    let mut all = Decimal::ZERO;
    for (share, material) in lines {
        all = all.checked_add(share.percent.value())?;
        if let Ok(inside) = makeups.see_through(*material, source) {
            volumes.add(share.percent, &inside);
        }
    }
    let density = Density::new(volumes.known.checked_div(volumes.volume)?.round_dp(DENSITY_DECIMALS)).ok()?;
    let known = volumes.known.checked_mul(Decimal::ONE_HUNDRED)?.checked_div(all)?.round_dp(VOLUME_DECIMALS);
    Some(DensityEstimate { density, known: Percent::new(known).ok()? })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::material::{Constituent, Material, Part};
    use proptest::prelude::*;
    use rust_decimal::dec;
    use std::collections::HashMap;
    use stillroom_terms::Class;
    use stillroom_terms::PhaseKind;

    /// A handful of materials.
    #[derive(Debug, Default)]
    struct Shelf(HashMap<MaterialId, Material>);

    impl MaterialSource for Shelf {
        fn material(&self, id: MaterialId) -> Option<&Material> {
            self.0.get(&id)
        }
        fn constituent(&self, _: ConstituentId) -> Option<&Constituent> {
            None
        }
    }

    impl Shelf {
        fn put(&mut self, id: MaterialId, makeup: Makeup, density: Option<Decimal>) {
            let density = density.map(|density| Density::new(density).unwrap());
            let (class, usual_phase) = (Class::Other, PhaseKind::HeatedWater);
            self.0.insert(id, Material { id, name: id.to_string(), class, usual_phase, density, makeup });
        }

        fn simple(&mut self, number: u32, density: Option<Decimal>) -> MaterialId {
            let id = MaterialId::Catalogue(number);
            self.put(id, Makeup::Simple(ConstituentId::Catalogue(number)), density);
            id
        }

        fn composite(&mut self, number: u64, parts: &[(MaterialId, Amount)]) -> MaterialId {
            let id = MaterialId::Own(number);
            let parts = parts.iter().map(|&(material, amount)| Part { material, amount }).collect();
            self.put(id, Makeup::Composite(parts), None);
            id
        }
    }

    fn percent(value: Decimal) -> Percent {
        Percent::new(value).unwrap()
    }

    fn lines(shares: &[(MaterialId, Decimal)]) -> Vec<(LineShare, MaterialId)> {
        (0u32..)
            .zip(shares)
            .map(|(at, (material, share))| {
                (LineShare { line: LineId(at), percent: percent(*share), quantum_satis: false }, *material)
            })
            .collect()
    }

    #[test]
    fn a_glycerite_is_seen_through_to_glycerin_and_water_with_its_trail() {
        let mut shelf = Shelf::default();
        let (water, glycerin, extract) = (shelf.simple(1, None), shelf.simple(2, None), shelf.simple(3, None));
        let glycerite = shelf.composite(
            9,
            &[
                (glycerin, Amount::Percent(percent(dec!(65)))),
                (extract, Amount::Percent(percent(dec!(0.8)))),
                (water, Amount::QuantumSatis),
            ],
        );
        let lines = lines(&[(water, dec!(88)), (glycerite, dec!(12))]);
        let composition = resolve_composition(&lines, &shelf, &mut Makeups::default());
        let amounts: Vec<_> = composition.entries.iter().map(|entry| entry.percent.value()).collect();
        assert_eq!(amounts, [dec!(92.104), dec!(7.8), dec!(0.096)]);
        let of_water: Vec<_> =
            composition.entries[0].trail.iter().map(|each| (each.line.0, each.percent.value())).collect();
        assert_eq!(of_water, [(0, dec!(88)), (1, dec!(4.104))]);
        assert_eq!(composition.total, Percent::HUNDRED);
    }

    #[test]
    fn the_largest_come_first_and_equals_keep_their_order() {
        let of = |number: u32, percent: Decimal| (ConstituentId::Catalogue(number), percent);
        let constituents = vec![of(1, dec!(5)), of(2, dec!(60)), of(3, dec!(5)), of(4, dec!(30))];
        let inside = Inside { constituents, specific_volume: None, volume_known: Decimal::ZERO };
        assert_eq!(inside.most_first(), [of(2, dec!(60)), of(4, dec!(30)), of(1, dec!(5)), of(3, dec!(5))]);
        assert_eq!(inside.largest(3), inside.most_first()[..3]);
        assert_eq!(inside.largest(9), inside.most_first());
    }

    #[test]
    fn a_cycle_is_named() {
        let mut shelf = Shelf::default();
        let (a, b) = (MaterialId::Own(1), MaterialId::Own(2));
        let whole = Amount::Percent(Percent::HUNDRED);
        shelf.composite(1, &[(b, whole)]);
        shelf.composite(2, &[(a, whole)]);
        let outside = shelf.composite(3, &[(a, whole)]);
        let mut makeups = Makeups::default();
        let cycle = CompositionError::Cycle { path: vec![a, b] };
        assert_eq!(makeups.see_through(a, &shelf), Err(cycle.clone()));
        assert_eq!(makeups.see_through(outside, &shelf), Err(cycle.clone()));
        assert_eq!(makeups.see_through(b, &shelf), Err(cycle));
    }

    #[test]
    fn a_line_that_cannot_be_seen_through_is_listed_and_the_rest_stands() {
        let mut shelf = Shelf::default();
        let water = shelf.simple(1, None);
        let uneven = shelf.composite(2, &[(water, Amount::Percent(percent(dec!(90))))]);
        let unknown = MaterialId::Catalogue(77);
        let lines = lines(&[(water, dec!(80)), (uneven, dec!(15)), (unknown, dec!(5))]);
        let composition = resolve_composition(&lines, &shelf, &mut Makeups::default());
        assert_eq!(composition.total.value(), dec!(80));
        let codes: Vec<_> = composition.unresolved.iter().map(|(line, error)| (line.0, error.code())).collect();
        assert_eq!(codes, [(1, "composition.parts-out-of-balance"), (2, "composition.unknown-material")]);
    }

    #[test]
    fn nesting_past_the_bound_is_refused_without_walking_for_ever() {
        let mut shelf = Shelf::default();
        let mut inner = shelf.simple(1, Some(dec!(1)));
        for number in 0..400 {
            let half = Amount::Percent(percent(dec!(50)));
            inner = shelf.composite(number, &[(inner, half), (inner, half)]);
        }
        let error = Makeups::default().see_through(inner, &shelf).unwrap_err();
        assert_eq!(error.code(), "composition.too-deep");
    }

    #[test]
    fn volumes_add_and_what_is_not_known_is_said() {
        let mut shelf = Shelf::default();
        let (water, oil, powder) =
            (shelf.simple(1, Some(dec!(1))), shelf.simple(2, Some(dec!(0.8))), shelf.simple(3, None));
        let lines = lines(&[(water, dec!(50)), (oil, dec!(40)), (powder, dec!(10))]);
        let estimate = estimate_density(&lines, &shelf, &mut Makeups::default()).unwrap();
        assert_eq!(estimate.density.value(), dec!(0.9));
        assert_eq!(estimate.known.value(), dec!(90));
        assert_eq!(estimate_density(&lines[2..], &shelf, &mut Makeups::default()), None);
    }

    /// A shelf of composites, each made of anything before it, so any nesting but no cycle.
    fn any_shelf() -> impl Strategy<Value = (Shelf, Vec<MaterialId>)> {
        prop::collection::vec(prop::collection::vec((any::<prop::sample::Index>(), 1u32..100_000), 1..6), 1..40)
            .prop_map(|composites| {
                let mut shelf = Shelf::default();
                let mut known: Vec<MaterialId> = (1..6).map(|number| shelf.simple(number, None)).collect();
                for (number, parts) in (0u64..).zip(composites) {
                    let whole: u32 = parts.iter().map(|(_, weight)| weight).sum();
                    let mut parts: Vec<(MaterialId, Amount)> = parts
                        .iter()
                        .map(|(at, weight)| {
                            let share = Decimal::from(*weight) * dec!(99) / Decimal::from(whole);
                            (*at.get(&known), Amount::Percent(percent(share.round_dp(4).max(dec!(0.0001)))))
                        })
                        .collect();
                    parts.push((known[0], Amount::QuantumSatis));
                    known.push(shelf.composite(number, &parts));
                }
                (shelf, known)
            })
    }

    proptest! {
        #[test]
        fn mass_is_conserved_through_composites_at_any_depth((shelf, known) in any_shelf(), at: prop::sample::Index) {
            let material = *at.get(&known);
            let inside = Makeups::default().see_through(material, &shelf).unwrap();
            let sum: Decimal = inside.constituents.iter().map(|(_, percent)| *percent).sum();
            prop_assert_eq!(sum, dec!(100));
            prop_assert!(inside.constituents.iter().all(|(_, percent)| *percent >= Decimal::ZERO));
            let lines = lines(&[(known[1], dec!(12.34)), (material, dec!(87.66))]);
            let composition = resolve_composition(&lines, &shelf, &mut Makeups::default());
            let sum: Decimal = composition.entries.iter().map(|entry| entry.percent.value()).sum();
            prop_assert_eq!(sum, dec!(100));
            for line in [LineId(0), LineId(1)] {
                let brought: Decimal = composition.entries.iter().flat_map(|entry| &entry.trail)
                    .filter(|each| each.line == line).map(|each| each.percent.value()).sum();
                prop_assert_eq!(brought, lines[line.0 as usize].0.percent.value());
            }
        }

        #[test]
        fn what_is_remembered_does_not_depend_on_the_order_of_asking(
            (shelf, known) in any_shelf(), order in prop::collection::vec(any::<prop::sample::Index>(), 1..8)
        ) {
            let mut remembering = Makeups::default();
            for at in order {
                let material = *at.get(&known);
                prop_assert_eq!(
                    remembering.see_through(material, &shelf),
                    Makeups::default().see_through(material, &shelf)
                );
            }
        }
    }
}
