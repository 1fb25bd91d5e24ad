//! Acids and bases as the equilibrium takes them, made of the tables of steps, ion pairs and ionic makeup.

use crate::catalogue::Catalogue;
use crate::property::Basis;
use crate::reference::{IonicMakeup, acid_steps, ion_pairs, ionic_makeup};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use std::collections::BTreeMap;
use std::sync::OnceLock;
use stillroom_core::chemistry::Temperature;
use stillroom_core::chemistry::ph::predict::{Contents, Known, Unknown};
use stillroom_core::chemistry::ph::{AcidBase, Cation, Constant, Pair, Solution};
use stillroom_core::{Class, ConstituentId, MaterialSource};

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
#[must_use]
pub fn spread_of(constituent: ConstituentId) -> f64 {
    let acids: Vec<&str> = makeup_of(constituent).map(|row| row.acid).collect();
    let recalled = acid_steps().iter().any(|row| row.origin.basis == Basis::Memory && acids.contains(&row.name));
    if recalled { 0.2 } else { 0.03 }
}

/// Most acid and base, in mol per kg, that a constituent without data may bring, by its class. Assumptions of ours,
/// wide on purpose; a measured pH goes before them.
///
/// Soaps are bases of fatty acids, about 4 mol/kg. Hydrosols of pH 3.5 hold about 0.005 mol/kg of weak acid. Dry
/// extracts hold fruit acids and their potassium salts, hydrolysed proteins carboxyl and amino groups, about 1 mol/kg.
/// What should set a pH or bind metals and is not known may do so with 5 mol/kg. The rest of what dissolves brings
/// traces.
fn may_bring(class: Class, inci: &str) -> (f64, f64) {
    let soap = ["Sodium ", "Potassium "].iter().any(|salt| inci.starts_with(salt))
        && ["Cocoate", "Olivate", "Palmate", "Stearate"].iter().any(|acid| inci.ends_with(acid));
    match class {
        _ if soap => (0.0, 4.0),
        Class::Water => (0.005, 0.0),
        Class::Extract => (1.0, 0.3),
        Class::Protein => (1.0, 1.0),
        Class::PhAdjuster | Class::Chelator => (5.0, 5.0),
        Class::Active | Class::Surfactant | Class::Thickener | Class::Mineral | Class::Salt | Class::Other => {
            (0.05, 0.05)
        }
        Class::Preservative | Class::Antioxidant | Class::Emulsifier => (0.02, 0.02),
        _ => (0.0, 0.0),
    }
}

/// What is in a kilogram of a product, for [`stillroom_core::chemistry::ph::predict::predict`], from its constituents
/// in mass percent.
///
/// Distillates count as water that brings a little acid; solvents that are no water count as cosolvents.
#[must_use]
pub fn contents_of(
    constituents: impl IntoIterator<Item = (ConstituentId, f64)>,
    temperature: Temperature,
) -> Contents<'static> {
    let mut contents = Contents {
        product: 1.0,
        water: 0.0,
        cosolvents: 0.0,
        known: Vec::new(),
        unknown: Vec::new(),
        unaccounted: None,
        temperature,
    };
    for (id, percent) in constituents {
        let kilograms = percent / 100.0;
        let mut brings = Solution::in_water(0.0);
        if dissolve(id, kilograms * 1000.0, &mut brings) {
            contents.known.push(Known { id, brings, spread: spread_of(id) });
            continue;
        }
        // What the catalogue does not have may be anything; it counts as what dissolves and brings traces.
        let (class, inci) =
            Catalogue::get().constituent(id).map_or((Class::Other, ""), |found| (found.class, found.inci.as_str()));
        match class {
            Class::Water => contents.water += kilograms,
            Class::Solvent => contents.cosolvents += kilograms,
            _ => {}
        }
        let (acid, base) = if inci == "Aqua" { (0.0, 0.0) } else { may_bring(class, inci) };
        if acid + base > 0.0 {
            contents.unknown.push(Unknown { id, acid: acid * kilograms, base: base * kilograms });
        }
    }
    contents
}
