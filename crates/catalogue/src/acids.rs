//! Acids and bases as the equilibrium takes them, made of the tables of steps, ion pairs and ionic makeup.

use crate::knowledge::cite;
use crate::property::Basis;
use crate::reference::{IonicMakeup, acid_steps, ion_pairs, ionic_makeup};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use std::collections::BTreeMap;
use std::sync::OnceLock;
use stillroom_core::checks::facts::Brings;
use stillroom_core::chemistry::ph::{AcidBase, Cation, Constant, Pair, Solution};
use stillroom_core::{Constituent, ConstituentId};

fn figure(value: Option<Decimal>) -> f64 {
    value.and_then(|value| value.to_f64()).unwrap_or(0.0)
}

fn small(value: Option<Decimal>) -> u8 {
    value.and_then(|value| value.to_u8()).unwrap_or(0)
}

/// Every acid, base and ampholyte, by chemical name. A test holds that none of the table is dropped.
#[must_use]
pub fn acids() -> &'static BTreeMap<&'static str, AcidBase> {
    static ACIDS: OnceLock<BTreeMap<&str, AcidBase>> = OnceLock::new();
    ACIDS.get_or_init(|| {
        let mut charges = BTreeMap::<&str, i8>::new();
        let mut steps = BTreeMap::<&str, Vec<Constant>>::new();
        for row in acid_steps() {
            let charge = row.charge_acid_form.and_then(|charge| charge.to_i8()).unwrap_or(0);
            charges.entry(row.name).or_insert(charge);
            let step = Constant::of_acid(figure(row.pka), figure(row.enthalpy), figure(row.heat_capacity));
            steps.entry(row.name).or_default().push(step);
        }
        let mut pairs = BTreeMap::<&str, Vec<Pair>>::new();
        for row in ion_pairs() {
            let constant = Constant { log_k: figure(row.log_k), enthalpy: figure(row.enthalpy), heat_capacity: 0.0 };
            if let Some(cation) = Cation::from_symbol(row.cation) {
                let pair = Pair { cation, cations: small(row.cations), lost: small(row.lost), constant };
                pairs.entry(row.name).or_default().push(pair);
            }
        }
        let make = |(name, steps): (&'static str, Vec<Constant>)| {
            let charge = charges.get(name).copied().unwrap_or(0);
            AcidBase::new(charge, steps, pairs.remove(name).unwrap_or_default()).ok().map(|acid| (name, acid))
        };
        steps.into_iter().filter_map(make).collect()
    })
}

/// The rows of what a mole of a constituent brings to the pH: none where nothing is known of it, two for a salt of an
/// acid and a base.
pub fn makeup_of(constituent: ConstituentId) -> impl Iterator<Item = &'static IonicMakeup> {
    ionic_makeup().iter().filter(move |row| row.constituent == Some(constituent))
}

/// Adds so many grams of a constituent to a solution: its acids, its cations, its anions. Whether anything is known of
/// it.
pub fn dissolve(constituent: ConstituentId, grams: f64, solution: &mut Solution<'static>) -> bool {
    let mut known = false;
    for row in makeup_of(constituent) {
        let molar_mass = figure(row.molar_mass);
        if molar_mass <= 0.0 {
            continue;
        }
        known = true;
        let moles = grams / molar_mass;
        if let Some(acid) = acids().get(row.acid) {
            solution.add(acid, moles * figure(row.acids));
        }
        let each = [row.sodium, row.potassium, row.magnesium, row.calcium, row.zinc];
        for (cation, count) in Cation::ALL.into_iter().zip(each) {
            solution.add_cation(cation, moles * figure(count));
        }
        solution.add_anion(moles * figure(row.anions));
    }
    known
}

/// A kilogram of a solution of a constituent, by its mass percent, the rest water: what is dripped to reach a pH. 100 %
/// is the substance itself.
///
/// `None` if nothing is known of it or the strength is no percent.
///
/// ```
/// use stillroom_catalogue::acids;
/// use stillroom_core::{ConstituentId, chemistry::{Temperature, ph::set}};
/// // Grams of 10 % sodium hydroxide that bring a kilogram of 1 % lactic acid to pH 4.
/// let lye = acids::titrant(ConstituentId::Catalogue(33), 10.0).unwrap();
/// let lactic = acids::titrant(ConstituentId::Catalogue(35), 1.0).unwrap();
/// let dose = set::reach(&lactic, &lye, 4.0, Temperature::TWENTY_FIVE)?;
/// assert!((dose.share * 1000.0 - 28.0).abs() < 1.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn titrant(constituent: ConstituentId, percent: f64) -> Option<Solution<'static>> {
    if !(0.0..=100.0).contains(&percent) {
        return None;
    }
    let mut solution = Solution::in_water(1.0 - percent / 100.0);
    dissolve(constituent, percent * 10.0, &mut solution).then_some(solution)
}

/// How far the constants of what a constituent brings may be off, in pH: 0.03 if every one was read or computed from
/// published data, 0.2 if one is from memory. Figures of ours: sources differ among themselves by about as much.
///
/// Where the constants are apparent, of polymers and of fatty acids in their own drops, the table says by how much they may
/// be off.
#[must_use]
pub fn spread_of(constituent: ConstituentId) -> f64 {
    let acids: Vec<&str> = makeup_of(constituent).map(|row| row.acid).collect();
    let own = |row: &&crate::reference::AcidStep| acids.contains(&row.name);
    let apparent = acid_steps().iter().filter(own).filter_map(|row| row.medium.strip_prefix(APPARENT)?.parse().ok());
    let recalled = acid_steps().iter().filter(own).any(|row| row.origin.basis == Basis::Memory);
    apparent.fold(if recalled { 0.2 } else { 0.03 }, f64::max)
}

/// How the table marks an apparent constant; what it may be off by stands behind it.
const APPARENT: &str = "apparent, off by ";

/// What a constituent brings to the pH, for the checks: nothing where nothing is known of it. Water brings nothing, which
/// is known.
#[must_use]
pub fn brings(constituent: &Constituent) -> Option<Brings> {
    let mut per_kilogram = Solution::in_water(0.0);
    if constituent.inci == "Aqua" {
        return Some(Brings { per_kilogram, spread: 0.0, citation: None });
    }
    dissolve(constituent.id, 1000.0, &mut per_kilogram).then(|| {
        let row = makeup_of(constituent.id).find_map(|row| acid_steps().iter().find(|step| step.name == row.acid));
        let citation = row.map(|row| cite(&row.origin));
        Brings { per_kilogram, spread: spread_of(constituent.id), citation }
    })
}
