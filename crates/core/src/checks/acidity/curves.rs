//! Curves of the pH as plain points: over what is added, the forms of an acid, and what acts of each preservative.

use super::setting::{SetError, after, line_of, share};
use crate::checks::contents::Contents;
use crate::chemistry::ph::Solver;
use crate::composition::Makeups;
use crate::material::{ConstituentId, MaterialId};
use crate::quantity::Percent;

pub use crate::checks::preservation::over_ph::{ActsOverPh, acts_over_ph};

/// Points of a curve over an axis.
const POINTS: u32 = 60;

/// The pH over what is added of a material: percent of the product on top of what is there, and the pH. Where the model
/// ends the curve ends.
///
/// # Errors
/// As [`super::setting::set`].
pub fn ph_over_added(
    contents: &Contents<'_>,
    makeups: &mut Makeups,
    material: MaterialId,
    most: Percent,
) -> Result<Vec<(f64, f64)>, SetError> {
    let line = line_of(contents, material);
    let before = line.map_or(Percent::ZERO, |line| share(contents, line));
    let unaccounted = contents.calibrated()?.unaccounted;
    let all = before.checked_add(most).filter(|_| !most.is_zero()).ok_or(SetError::TooMuch)?;
    let mut at = |percent| after(contents, makeups, &[(line, material, percent)], unaccounted);
    let (none, all) = (at(before)?.contents.solution()?, at(all)?.contents.solution()?);
    let mut solver = Solver::new(&[&none, &all], contents.conditions.room)?;
    let share = |at: u32| f64::from(at) / f64::from(POINTS);
    let points = (0..=POINTS).map_while(|at| {
        let there = solver.solve_mix(&[1.0 - share(at), share(at)]).ok()?;
        Some((share(at) * most.to_physics(), there.ph))
    });
    Ok(points.collect())
}

/// The forms of an acid over the pH.
#[derive(Debug, Clone, PartialEq)]
pub struct Speciation {
    /// The acid.
    pub acid: ConstituentId,
    /// Its dissociation constants.
    pub steps: Vec<f64>,
    /// Of each form, the one with every proton first: the pH and the share of it, 0 to 1.
    pub forms: Vec<Vec<(f64, f64)>>,
    /// The pH of the formula, where it is known.
    pub ph: Option<f64>,
}

/// The forms of an acid, or of the acid behind a salt, from pH 0 to 14; nothing where its constants are not known.
///
/// Constants at zero ionic strength, as every finding takes them.
#[must_use]
pub fn speciation(contents: &Contents<'_>, substance: ConstituentId) -> Option<Speciation> {
    let own = contents.knowledge.facts(substance)?;
    let acid = own.salt_of.map_or(substance, |salt| salt.acid);
    let steps = contents.knowledge.facts(acid)?.acid.as_ref()?.steps.clone();
    let mut forms = vec![Vec::new(); steps.len() + 1];
    for tenth in 0..=140_u32 {
        let ph = f64::from(tenth) / 10.0;
        for (form, share) in forms.iter_mut().zip(shares(&steps, ph)) {
            form.push((ph, share));
        }
    }
    Some(Speciation { acid, steps, forms, ph: contents.ph().map(|ph| ph.value) })
}

/// Shares of the forms of an acid at a pH, the one with every proton first.
fn shares(steps: &[f64], ph: f64) -> Vec<f64> {
    // In logarithms, and less the largest, so that nothing runs out of range.
    let mut logs = vec![0.0];
    for pka in steps {
        logs.push(logs.last().copied().unwrap_or(0.0) + ph - pka);
    }
    let largest = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let weights: Vec<f64> = logs.iter().map(|log| 10_f64.powf(log - largest)).collect();
    let sum: f64 = weights.iter().sum();
    weights.into_iter().map(|weight| weight / sum).collect()
}
