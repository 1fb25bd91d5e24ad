//! The pH of what is in the jar: what it is known by, and what it comes to as it is written.
//!
//! [`Contents::ph`] is the one answer every check reads: what was measured, or else what is aimed at, or else what the
//! equilibrium says. [`Contents::prediction`] stands beside a target, so that it can be said where a formula comes to as
//! it is written. [`setting`] says what brings it to a target, [`neutralising`] what opens polymers and makes soap,
//! [`drift`] how it moves in the jar, [`free_acid`] what of an acid is free, [`curves`] draws all of it.

pub mod curves;
pub mod drift;
pub mod free_acid;
pub mod neutralising;
mod saturation;
pub mod setting;
#[cfg(test)]
mod tests;

use super::contents::{Contents, PhBand, Present};
use super::facts::Trait;
use crate::chemistry::ph::predict::{self, Decider, Known, Move, Prediction, Unknown};
use crate::chemistry::ph::{PhError, Solution};
use stillroom_terms::Class;

/// A predicted band wider than this, in pH, decides nothing: checks then ask for the pH instead. A choice of ours.
pub const MOST_WIDTH: f64 = 1.5;

/// Most acid and base, in mol per kg, that a substance without data may bring, by its class. Assumptions of ours, wide on
/// purpose; a measured pH goes before them.
///
/// Soaps are bases of fatty acids, about 4 mol/kg. Hydrosols of pH 3.5 hold about 0.005 mol/kg of weak acid. Dry
/// extracts hold fruit acids and their potassium salts, hydrolysed proteins carboxyl and amino groups, about 1 mol/kg.
/// What should set a pH or bind metals and is not known may do so with 5 mol/kg. The rest of what dissolves brings
/// traces.
const fn may_bring(class: Class, soap: bool) -> (f64, f64) {
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

impl Contents<'_> {
    /// What is in a kilogram of the product, as far as the pH goes. What is meant to stay solid counts for nothing
    /// unless it is an acid,
    /// distillates as water that brings a little acid, solvents that are no water as cosolvents.
    #[must_use]
    pub fn dissolved(&self) -> predict::Contents<'static> {
        let mut all = predict::Contents {
            product: 1.0,
            water: self.water / 100.0,
            cosolvents: 0.0,
            known: Vec::new(),
            unknown: Vec::new(),
            unaccounted: None,
            temperature: self.conditions.room,
        };
        for each in &self.present {
            // Of an acid that is meant to stay solid as much dissolves as water takes up: see `saturation`.
            let dissolves = if each.facts.acid.is_some() { each.percent } else { each.dissolving };
            if dissolves <= 0.0 {
                continue;
            }
            let kilograms = dissolves / 100.0;
            match &each.facts.brings {
                Some(own) if own.per_kilogram.is_empty() => {}
                Some(own) => {
                    let mut brings = Solution::in_water(0.0);
                    brings.add_solution(&own.per_kilogram, kilograms);
                    all.known.push(Known { id: each.id, brings, spread: own.spread });
                }
                None => {
                    if each.class == Class::Solvent {
                        all.cosolvents += kilograms;
                    }
                    let (acid, base) = may_bring(each.class, each.facts.has(Trait::Soap).is_some());
                    if acid + base > 0.0 {
                        all.unknown.push(Unknown { id: each.id, acid: acid * kilograms, base: base * kilograms });
                    }
                }
            }
        }
        all
    }

    /// The same with what a measured pH says of the unknown, where one was measured.
    ///
    /// # Errors
    /// As [`predict::calibrate`].
    pub fn calibrated(&self) -> Result<predict::Contents<'static>, PhError> {
        let mut all = self.dissolved();
        if let Some(measured) = self.formula.measured_ph {
            all.unaccounted = Some(predict::calibrate(&all, measured.to_physics())?);
        }
        Ok(all)
    }

    /// The pH of the formula as it is written, whatever is aimed at or was measured.
    ///
    /// # Errors
    /// As [`predict::predict`].
    pub fn prediction(&self) -> Result<&Prediction, PhError> {
        let predict = || {
            let mut all = self.dissolved();
            let plain = predict::predict(&all)?;
            if saturation::settle(self, &mut all, plain.ph)? { predict::predict(&all) } else { Ok(plain) }
        };
        self.prediction.get_or_init(predict).as_ref().map_err(|error| *error)
    }

    /// What decides the pH of the formula as it is written, the one that moves it most first.
    ///
    /// # Errors
    /// As [`predict::deciders`].
    pub fn deciders(&self) -> Result<Vec<Decider>, PhError> {
        predict::deciders(&self.settled()?)
    }

    /// What each constituent whose acids nobody stated can do to the pH, the one that moves it most first.
    ///
    /// # Errors
    /// As [`predict::moves`].
    pub fn moves(&self) -> Result<Vec<Move>, PhError> {
        predict::moves(&self.settled()?)
    }

    /// What is dissolved, without what does not dissolve.
    fn settled(&self) -> Result<predict::Contents<'_>, PhError> {
        let mut all = self.dissolved();
        let plain = predict::predict(&all)?;
        saturation::settle(self, &mut all, plain.ph)?;
        Ok(all)
    }

    /// The pH the product has: what the maker measured, or else aims at, or else what it comes to as it is written. Every
    /// check asks here. Nothing where none is stated and the prediction is wider than [`MOST_WIDTH`].
    #[must_use]
    pub fn ph(&self) -> Option<PhBand> {
        *self.ph.get_or_init(|| {
            let measured = self.formula.measured_ph.map(|ph| PhBand::measured(ph.to_physics()));
            let aimed_at = || self.formula.target_ph.map(|ph| PhBand::aimed_at(ph.to_physics()));
            let predicted = || {
                let band = self.prediction().ok()?.ph;
                (band.high - band.low <= MOST_WIDTH).then(|| PhBand::predicted(band))
            };
            measured.or_else(aimed_at).or_else(predicted)
        })
    }

    /// The same formula as it would be at another pH.
    #[must_use]
    pub fn at_ph(&self, ph: PhBand) -> Self {
        let there = Self::new(self.formula, self.evaluation, self.source, self.knowledge, self.conditions);
        // Nothing was asked of it yet, so that it is empty.
        let _ = there.ph.set(Some(ph));
        there
    }
}

impl Present<'_> {
    /// Whether it is weighed to set the pH and what it brings is known.
    #[must_use]
    pub fn sets_ph(&self) -> bool {
        self.class == Class::PhAdjuster && self.facts.brings.is_some()
    }
}
