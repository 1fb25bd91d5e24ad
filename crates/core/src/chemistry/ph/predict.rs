//! The pH of what is in the jar, as a band, with what decides it and what is not known.
//!
//! Everything that reads a pH reads [`predict`]. What is not known is never left out: an extract or a hydrosol whose
//! acids nobody stated widens the band by what it can bring, and is named with how far it alone can move the pH. A
//! measured pH goes before every reckoning: [`calibrate`] turns it into what the unknown brings, and
//! [`Contents::unaccounted`] keeps that for the next prediction.

use super::{AcidBase, Equilibrium, PhError, Solution, Solver};
use crate::chemistry::{Band, Temperature};
use crate::material::ConstituentId;

/// Least share of the product that is water, by mass, for its pH to mean anything: a choice of ours.
pub const LEAST_WATER: f64 = 0.05;
/// How far the model misses primary buffer standards at most from 0 to 50 °C, with room to spare
/// (`ph.primary-buffers`).
pub const MODEL_SPREAD: f64 = 0.05;
/// Strong acid or base in mol/kg water that water and materials bring unnoticed: carbon dioxide of the air, rests of
/// their making. An assumption; it matters only where hardly anything buffers.
pub const UNNOTICED: f64 = 1e-4;
/// How far the pH may rise for each mass share of alcohol and glycols in the water: the pKa of acetic acid is higher by
/// about 0.36 in 20 % ethanol (Grunwald & Berkowitz, J. Am. Chem. Soc. 73 (1951) 4939; memory). Glycerin does less.
pub const COSOLVENT_RISE: f64 = 1.8;

/// How much further than between its ends a range beyond the model reaches, in pH: a choice of ours, three times
/// [`MODEL_SPREAD`].
pub const BEYOND_SPREAD: f64 = 0.15;

/// A constituent whose acid-base data are known.
#[derive(Debug, Clone, PartialEq)]
pub struct Known<'a> {
    /// Which.
    pub id: ConstituentId,
    /// What it brings, in no water.
    pub brings: Solution<'a>,
    /// How far its pKa may be off: 0.03 for a published constant, 0.2 for one from memory, as the data say.
    pub spread: f64,
}

/// A constituent that brings acid or base nobody stated.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unknown {
    /// Which.
    pub id: ConstituentId,
    /// Most acid it may bring, in mol.
    pub acid: f64,
    /// Most base it may bring, in mol.
    pub base: f64,
}

/// What is in the jar, as far as the pH goes. Masses in kg, amounts in mol, all of the same product.
#[derive(Debug, Clone, PartialEq)]
pub struct Contents<'a> {
    /// All of the product, in kg.
    pub product: f64,
    /// The water in it, in kg.
    pub water: f64,
    /// Alcohol and glycols in it, in kg.
    pub cosolvents: f64,
    /// What is known.
    pub known: Vec<Known<'a>>,
    /// What is not.
    pub unknown: Vec<Unknown>,
    /// Net base (positive) or acid (negative) of the unknown, in mol, from a measured pH: see [`calibrate`].
    pub unaccounted: Option<f64>,
    /// At which temperature.
    pub temperature: Temperature,
}

/// How far one unknown alone can move the pH.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Move {
    /// Which.
    pub id: ConstituentId,
    /// The pH if it brings all the acid it may.
    pub lowest: f64,
    /// The pH if it brings all the base it may.
    pub highest: f64,
}

/// What the band rests on besides the constants.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Caveat {
    /// Alcohol and glycols move the constants; their share of themselves and the water, by mass.
    Cosolvent(f64),
    /// So little buffers that traces decide; capacity in mol/kg water.
    HardlyBuffered(f64),
    /// The ionic strength, about so much in mol/kg water, is beyond the model: only the range means anything.
    TooStrong(f64),
    /// The unknown is reckoned from a measured pH.
    Calibrated,
}

/// A predicted pH.
#[derive(Debug, Clone, PartialEq)]
pub struct Prediction {
    /// The pH.
    pub ph: Band,
    /// The equilibrium of the estimate.
    pub equilibrium: Equilibrium,
    /// What else the band rests on.
    pub caveats: Vec<Caveat>,
}

/// The pH of a product.
///
/// # Errors
/// `ph.hardly-any-water` with less than 5 % water; `ph.too-strong` from an ionic strength of 1 mol/kg, where there is
/// not even a range ([`Caveat::TooStrong`] says when the band is only that); else as [`Solver::solve_mix`].
///
/// ```
/// use stillroom_core::chemistry::{Temperature, ph::{AcidBase, Cation, Solution, predict::{Contents, Known, predict}}};
/// use stillroom_core::ConstituentId;
/// let lactic = AcidBase::at_25(0, &[3.86])?;
/// let brings = Solution::in_water(0.0).with(&lactic, 0.1).with_cation(Cation::Sodium, 0.05);
/// let contents = Contents {
///     product: 1.0, water: 0.9, cosolvents: 0.0, unknown: Vec::new(), unaccounted: None,
///     known: vec![Known { id: ConstituentId::Catalogue(35), brings, spread: 0.03 }],
///     temperature: Temperature::TWENTY_FIVE,
/// };
/// let ph = predict(&contents)?.ph;
/// assert!((ph.estimate - 3.77).abs() < 0.02 && ph.high - ph.low < 0.3);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn predict(contents: &Contents<'_>) -> Result<Prediction, PhError> {
    let whole = whole(contents)?;
    let (acid, base) = one_mole_each();
    let mut solver = Solver::new(&[&whole, &acid, &base], contents.temperature)?;
    let net = contents.unaccounted.unwrap_or(0.0);
    let mixed = |brought: f64| [1.0, (-brought).max(0.0), brought.max(0.0)];
    let unknown = if contents.unaccounted.is_none() { &contents.unknown[..] } else { &[] };
    let unnoticed = UNNOTICED * contents.water;
    let most_acid = unnoticed + unknown.iter().map(|each| each.acid).sum::<f64>();
    let most_base = unnoticed + unknown.iter().map(|each| each.base).sum::<f64>();
    let lowest = found(&mut solver, &mixed(net - most_acid), Solver::solve_roughly)?.low;
    let Found { equilibrium, beyond, .. } = found(&mut solver, &mixed(net), Solver::solve_mix)?;
    // Of the equilibrium last solved: before the other end is.
    let constants = spread(contents, &solver, &equilibrium);
    let highest = found(&mut solver, &mixed(net + most_base), Solver::solve_roughly)?.high;
    let share = contents.cosolvents / (contents.cosolvents + contents.water);
    let mut caveats = Vec::new();
    if share > 0.02 {
        caveats.push(Caveat::Cosolvent(share));
    }
    if equilibrium.capacity < 1e-3 {
        caveats.push(Caveat::HardlyBuffered(equilibrium.capacity));
    }
    if let Some(about) = beyond {
        caveats.push(Caveat::TooStrong(about));
    }
    if contents.unaccounted.is_some() {
        caveats.push(Caveat::Calibrated);
    }
    let about = MODEL_SPREAD.hypot(constants);
    let ph = Band { low: lowest - about, estimate: equilibrium.ph, high: highest + about + COSOLVENT_RISE * share };
    Ok(Prediction { ph, equilibrium, caveats })
}

/// What each unknown alone can do, the one that moves the pH most first. Nothing once a measured pH says what they bring
/// together.
///
/// # Errors
/// As [`predict`].
pub fn moves(contents: &Contents<'_>) -> Result<Vec<Move>, PhError> {
    if contents.unaccounted.is_some() {
        return Ok(Vec::new());
    }
    let whole = whole(contents)?;
    let (acid, base) = one_mole_each();
    let mut solver = Solver::new(&[&whole, &acid, &base], contents.temperature)?;
    let mut with = |acid: f64, base: f64| found(&mut solver, &[1.0, acid, base], Solver::solve_roughly);
    let each = contents
        .unknown
        .iter()
        .map(|each| Ok(Move { id: each.id, lowest: with(each.acid, 0.0)?.low, highest: with(0.0, each.base)?.high }));
    let mut moves = each.collect::<Result<Vec<_>, _>>()?;
    moves.sort_by(|one, other| {
        (other.highest - other.lowest).total_cmp(&(one.highest - one.lowest)).then_with(|| one.id.cmp(&other.id))
    });
    Ok(moves)
}

/// An equilibrium, or the range it lies in.
struct Found {
    equilibrium: Equilibrium,
    low: f64,
    high: f64,
    /// About the ionic strength, where it is beyond the model.
    beyond: Option<f64>,
}

/// As well as needed: [`Solver::solve_mix`] or [`Solver::solve_roughly`].
type Solve<'a> = fn(&mut Solver<'a>, &[f64]) -> Result<Equilibrium, PhError>;

/// Beyond the model, up to an ionic strength of 1 mol/kg, a range instead of an answer: between activities as they are
/// at 0.5 mol/kg and none at all, for there they rise again, and [`BEYOND_SPREAD`] more.
fn found<'a>(solver: &mut Solver<'a>, shares: &[f64], solve: Solve<'a>) -> Result<Found, PhError> {
    match solve(solver, shares) {
        Ok(equilibrium) => Ok(Found { equilibrium, low: equilibrium.ph, high: equilibrium.ph, beyond: None }),
        Err(PhError::TooStrong { about }) if about < 1.0 => {
            let ideal = solver.solve_held(shares, 0.0)?.ph;
            let equilibrium = solver.solve_held(shares, super::MOST_IONIC_STRENGTH)?;
            let (low, high) = (equilibrium.ph.min(ideal) - BEYOND_SPREAD, equilibrium.ph.max(ideal) + BEYOND_SPREAD);
            Ok(Found { equilibrium, low, high, beyond: Some(about) })
        }
        Err(error) => Err(error),
    }
}

/// What a measured pH says of the unknown: net base (positive) or acid (negative) they bring, in mol, for
/// [`Contents::unaccounted`]. With it, [`predict`] returns the measured pH.
///
/// # Errors
/// As [`super::set::reach`]; `ph.hardly-any-water` with less than 5 % water.
pub fn calibrate(contents: &Contents<'_>, measured: f64) -> Result<f64, PhError> {
    let whole = whole(contents)?;
    let (acid, base) = one_mole_each();
    let plain = Solver::new(&[&whole], contents.temperature)?.solve()?;
    if measured < plain.ph {
        super::set::reach(&whole, &acid, measured, contents.temperature).map(|dose| -dose.share)
    } else {
        super::set::reach(&whole, &base, measured, contents.temperature).map(|dose| dose.share)
    }
}

/// A known constituent and how it decides the pH.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Decider {
    /// Which.
    pub id: ConstituentId,
    /// How much higher the pH is with it than without it; negative: it lowers it.
    pub moves: f64,
}

/// What decides the pH, the one that moves it most first.
///
/// # Errors
/// As [`predict`].
pub fn deciders(contents: &Contents<'_>) -> Result<Vec<Decider>, PhError> {
    check(contents)?;
    let mut rest = Solution::in_water(contents.water);
    let net = contents.unaccounted.unwrap_or(0.0);
    rest = rest.with_anion((-net).max(0.0)).with_unpaired_cation(net.max(0.0));
    let mut parts = vec![&rest];
    parts.extend(contents.known.iter().map(|known| &known.brings));
    let mut solver = Solver::new(&parts, contents.temperature)?;
    let mut shares = vec![1.0; parts.len()];
    let all = found(&mut solver, &shares, Solver::solve_roughly)?.equilibrium.ph;
    let mut deciders = Vec::new();
    for (at, known) in contents.known.iter().enumerate() {
        shares[at + 1] = 0.0;
        let without = found(&mut solver, &shares, Solver::solve_roughly)?.equilibrium.ph;
        deciders.push(Decider { id: known.id, moves: all - without });
        shares[at + 1] = 1.0;
    }
    deciders.sort_by(|one, other| other.moves.abs().total_cmp(&one.moves.abs()));
    Ok(deciders)
}

fn check(contents: &Contents<'_>) -> Result<(), PhError> {
    let amounts = contents.unknown.iter().flat_map(|each| [each.acid, each.base]);
    let amounts = amounts.chain(contents.known.iter().map(|known| known.spread));
    if !amounts
        .chain([contents.product, contents.water, contents.cosolvents])
        .all(|amount| (0.0..=1e6).contains(&amount))
    {
        return Err(PhError::Amount);
    }
    if contents.water > 0.0 && contents.water >= LEAST_WATER * contents.product {
        Ok(())
    } else {
        Err(PhError::HardlyAnyWater)
    }
}

impl<'a> Contents<'a> {
    /// All that is known in the water that is there, with what a measured pH said of the unknown.
    ///
    /// # Errors
    /// `ph.hardly-any-water` with less than 5 % water; `ph.amount` for an amount that is none.
    pub fn solution(&self) -> Result<Solution<'a>, PhError> {
        let net = self.unaccounted.unwrap_or(0.0);
        Ok(whole(self)?.with_anion((-net).max(0.0)).with_unpaired_cation(net.max(0.0)))
    }
}

fn whole<'a>(contents: &Contents<'a>) -> Result<Solution<'a>, PhError> {
    check(contents)?;
    let mut whole = Solution::in_water(contents.water);
    for known in &contents.known {
        whole.add_solution(&known.brings, 1.0);
    }
    Ok(whole)
}

fn one_mole_each() -> (Solution<'static>, Solution<'static>) {
    let nothing = Solution::in_water(0.0);
    (nothing.clone().with_anion(1.0), nothing.with_unpaired_cation(1.0))
}

/// How far the constants' spreads move the pH, to first order: each acid by its share of the buffering. They are
/// independent of each other, so their squares add up.
fn spread(contents: &Contents<'_>, solver: &Solver<'_>, at: &Equilibrium) -> f64 {
    let mut seen = Vec::<(&AcidBase, f64)>::new();
    for known in &contents.known {
        for (acid, _) in &known.brings.acids {
            match seen.iter_mut().find(|(other, _)| std::ptr::eq(*other, *acid)) {
                Some((_, spread)) => *spread = spread.max(known.spread),
                None => seen.push((acid, known.spread)),
            }
        }
    }
    let moves = seen.iter().map(|(acid, spread)| spread * solver.capacity_of(acid) / at.capacity);
    moves.map(|by| by * by).sum::<f64>().sqrt()
}

#[cfg(test)]
mod tests {
    use super::super::Cation;
    use super::*;

    fn id(number: u32) -> ConstituentId {
        ConstituentId::Catalogue(number)
    }

    fn contents<'a>(benzoic: &'a AcidBase, citric: &'a AcidBase) -> Contents<'a> {
        let nothing = Solution::in_water(0.0);
        // Per kg: 5 g sodium benzoate, 2 g citric acid, 900 g water.
        let benzoate = nothing.clone().with(benzoic, 0.0347).with_cation(Cation::Sodium, 0.0347);
        Contents {
            product: 1.0,
            water: 0.9,
            cosolvents: 0.0,
            known: vec![
                Known { id: id(26), brings: benzoate, spread: 0.03 },
                Known { id: id(32), brings: nothing.with(citric, 0.0104), spread: 0.03 },
            ],
            unknown: Vec::new(),
            unaccounted: None,
            temperature: Temperature::TWENTY_FIVE,
        }
    }

    fn acids() -> (AcidBase, AcidBase) {
        (AcidBase::at_25(0, &[4.204]).unwrap(), AcidBase::at_25(0, &[3.128, 4.761, 6.396]).unwrap())
    }

    #[test]
    fn the_unknown_is_named_and_widens_the_band_by_what_it_can_bring() {
        let (benzoic, citric) = acids();
        let mut contents = contents(&benzoic, &citric);
        let plain = predict(&contents).unwrap();
        contents.unknown =
            vec![Unknown { id: id(456), acid: 0.001, base: 0.0 }, Unknown { id: id(477), acid: 0.004, base: 0.002 }];
        let wide = predict(&contents).unwrap();
        assert!((wide.ph.estimate - plain.ph.estimate).abs() < 1e-9);
        assert!(wide.ph.low < plain.ph.low && wide.ph.high > plain.ph.high);
        let moves = moves(&contents).unwrap();
        assert_eq!(moves.iter().map(|each| each.id).collect::<Vec<_>>(), [id(477), id(456)]);
        assert!(moves.iter().all(|each| each.lowest >= wide.ph.low && each.highest <= wide.ph.high));
    }

    #[test]
    fn a_measured_ph_overrides_and_narrows() {
        let (benzoic, citric) = acids();
        let mut contents = contents(&benzoic, &citric);
        contents.unknown = vec![Unknown { id: id(456), acid: 0.005, base: 0.005 }];
        let before = predict(&contents).unwrap().ph;
        for measured in [before.estimate - 0.3, before.estimate + 0.4] {
            contents.unaccounted = Some(calibrate(&contents, measured).unwrap());
            let after = predict(&contents).unwrap();
            assert!((after.ph.estimate - measured).abs() < 1e-4, "{}", after.ph.estimate);
            assert!(after.ph.high - after.ph.low < before.high - before.low);
            assert!(moves(&contents).unwrap().is_empty() && after.caveats.contains(&Caveat::Calibrated));
            contents.unaccounted = None;
        }
    }

    #[test]
    fn what_decides_stands_first_and_says_in_which_direction() {
        let (benzoic, citric) = acids();
        let found = deciders(&contents(&benzoic, &citric)).unwrap();
        assert_eq!(found.first().unwrap().id, id(32));
        assert!(found[0].moves < -2.0 && found[1].moves > 0.0);
    }

    #[test]
    fn the_spread_of_a_constant_moves_the_ph_as_solving_anew_says() {
        let (benzoic, citric) = acids();
        let mut one = contents(&benzoic, &citric);
        one.known[0].spread = 0.1;
        one.known[1].spread = 0.0;
        let whole = whole(&one).unwrap();
        let mut solver = Solver::new(&[&whole], one.temperature).unwrap();
        let at = solver.solve().unwrap();
        let first_order = spread(&one, &solver, &at);
        let moved = benzoic.moved(0.1);
        let anew = predict(&contents(&moved, &citric)).unwrap().equilibrium.ph - at.ph;
        assert!((first_order - anew).abs() < 0.01, "{first_order} {anew}");
    }

    #[test]
    fn plain_water_is_said_to_be_unbuffered_and_hardly_any_water_is_an_error() {
        let mut water = contents(&acids().0, &acids().1).cleared();
        let plain = predict(&water).unwrap();
        assert!(plain.ph.low < 5.0 && plain.ph.high > 9.0);
        assert!(matches!(plain.caveats[..], [Caveat::HardlyBuffered(_)]));
        water.water = 0.04;
        assert_eq!(predict(&water).unwrap_err(), PhError::HardlyAnyWater);
        water.water = f64::NAN;
        assert_eq!(predict(&water).unwrap_err(), PhError::Amount);
    }

    #[test]
    fn beyond_the_model_there_is_a_range_and_further_on_an_error() {
        let (benzoic, citric) = acids();
        let mut contents = contents(&benzoic, &citric);
        let plain = predict(&contents).unwrap().ph;
        let salt = |moles: f64| Solution::in_water(0.0).with_cation(Cation::Sodium, moles).with_anion(moles);
        contents.known.push(Known { id: id(429), brings: salt(0.6), spread: 0.03 });
        let range = predict(&contents).unwrap();
        assert!(range.caveats.iter().any(|caveat| matches!(caveat, Caveat::TooStrong(about) if *about > 0.6)));
        assert!(range.ph.high - range.ph.low > 0.3 + plain.high - plain.low);
        assert_eq!(deciders(&contents).unwrap().len(), 3);
        contents.known[2].brings = salt(1.2);
        assert_eq!(predict(&contents).unwrap_err().code(), "ph.too-strong");
    }

    #[test]
    fn alcohol_and_glycols_are_said_and_widen_the_band() {
        let (benzoic, citric) = acids();
        let mut contents = contents(&benzoic, &citric);
        let plain = predict(&contents).unwrap().ph;
        contents.cosolvents = 0.1;
        let mixed = predict(&contents).unwrap();
        assert!(mixed.ph.high > plain.high + 0.1);
        assert!(matches!(mixed.caveats[..], [Caveat::Cosolvent(share)] if (share - 0.1).abs() < 1e-9));
    }

    impl Contents<'_> {
        fn cleared(&self) -> Contents<'static> {
            Contents {
                product: self.product,
                water: self.water,
                cosolvents: self.cosolvents,
                known: Vec::new(),
                unknown: Vec::new(),
                unaccounted: None,
                temperature: self.temperature,
            }
        }
    }
}
