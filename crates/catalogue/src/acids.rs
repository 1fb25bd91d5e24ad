//! Acids and bases as the equilibrium takes them, made of the tables of steps, ion pairs and ionic makeup.

use crate::reference::{IonicMakeup, acid_steps, ion_pairs, ionic_makeup};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use std::collections::BTreeMap;
use std::sync::OnceLock;
use stillroom_core::ConstituentId;
use stillroom_core::chemistry::ph::{AcidBase, Cation, Constant, Pair, Solution};

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

/// What a mole of a constituent brings to the pH; `None` where nothing is known of it.
#[must_use]
pub fn makeup_of(constituent: ConstituentId) -> Option<&'static IonicMakeup> {
    ionic_makeup().iter().find(|row| row.constituent == Some(constituent))
}

/// Adds so many moles of a constituent to a solution: its acid, its cations, its anions.
pub fn dissolve(makeup: &IonicMakeup, moles: f64, solution: &mut Solution<'static>) {
    if let Some(acid) = acids().get(makeup.acid) {
        solution.add(acid, moles * figure(makeup.acids));
    }
    let each = [makeup.sodium, makeup.potassium, makeup.magnesium, makeup.calcium, makeup.zinc];
    for (cation, count) in Cation::ALL.into_iter().zip(each) {
        solution.add_cation(cation, moles * figure(count));
    }
    solution.add_anion(moles * figure(makeup.anions));
}

/// A kilogram of a solution of a constituent, by its mass percent, the rest water: what is dripped to reach a pH. 100 %
/// is the substance itself.
///
/// `None` if its molar mass is not known or the strength is no percent.
///
/// ```
/// use stillroom_catalogue::acids;
/// use stillroom_core::{ConstituentId, chemistry::{Temperature, ph::{Solution, set}}};
/// // Grams of 10 % sodium hydroxide that bring a kilogram of 1 % lactic acid to pH 4.
/// let lye = acids::titrant(acids::makeup_of(ConstituentId::Catalogue(33)).unwrap(), 10.0).unwrap();
/// let lactic = acids::titrant(acids::makeup_of(ConstituentId::Catalogue(35)).unwrap(), 1.0).unwrap();
/// let dose = set::reach(&lactic, &lye, 4.0, Temperature::TWENTY_FIVE)?;
/// assert!((dose.share * 1000.0 - 28.0).abs() < 1.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn titrant(makeup: &IonicMakeup, percent: f64) -> Option<Solution<'static>> {
    let molar_mass = figure(makeup.molar_mass);
    if molar_mass <= 0.0 || !(0.0..=100.0).contains(&percent) {
        return None;
    }
    let mut solution = Solution::in_water(1.0 - percent / 100.0);
    dissolve(makeup, percent * 10.0 / molar_mass, &mut solution);
    Some(solution)
}
