//! How far the pH moves in the jar, and what the checks say once it has: an ester gives off its acid, urea its ammonia, the
//! air its carbon dioxide.

use crate::checks::contents::{Contents, PhBand};
use crate::checks::finding::Severity;
use crate::chemistry::Temperature;
use crate::chemistry::ph::{AcidBase, PhError, Solution, Solver, predict};

/// Mass of a mole of acetic acid, of urea, in g.
const ACETIC: f64 = 60.05;
const UREA: f64 = 60.06;
/// Carbon dioxide that water holds under air, in mol/kg: 420 ppm (about the air of 2024; memory) times Henry's constant at
/// 25 °C, 0.0344 mol/(kg bar) (Plummer and Busenberg, Geochim. Cosmochim. Acta 46 (1982) 1011; memory).
const UNDER_AIR: f64 = 420e-6 * 0.0344;
/// Most carbon dioxide looked for, in mol/kg: alkaline products take it up for years.
const MOST_FROM_AIR: f64 = 0.3;

/// What moves a pH in the jar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Cause {
    /// So much acid, in percent of the product, is given off: acetic acid, of which a gram is the most mols that esters
    /// and oils usually give.
    Acid(f64),
    /// So much urea, in percent of the product, falls into ammonia and carbon dioxide.
    Urea(f64),
    /// The water takes up carbon dioxide until it is in balance with the air.
    Air,
}

/// A finding that comes or goes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Changed {
    /// Its code.
    pub code: &'static str,
    /// What it is about.
    pub subject: String,
    /// How serious it is, before or after.
    pub severity: Severity,
}

/// How the pH moves.
#[derive(Debug, Clone, PartialEq)]
pub struct Drift {
    /// Buffer capacity before, in mol/kg water per unit of pH.
    pub capacity: f64,
    /// The pH before.
    pub before: PhBand,
    /// The pH after.
    pub after: PhBand,
    /// Findings that are there only then, or are more serious then.
    pub appear: Vec<Changed>,
    /// Findings that are there only before, or are less serious then.
    pub go: Vec<Changed>,
}

/// How a cause moves the pH of a formula, and which findings change by it. The start is the pH the checks read.
///
/// `None` without a pH.
///
/// # Errors
/// As [`Solver::solve_mix`] and [`predict::calibrate`].
pub fn drift(contents: &Contents<'_>, cause: Cause) -> Option<Result<Drift, PhError>> {
    let before = contents.ph()?;
    Some(moved(contents, before.value, cause).map(|(capacity, by)| {
        let after = before.moved(by);
        let (old, new) = (listed(contents), listed(&contents.at_ph(after)));
        let only = |in_one: &[Changed], in_other: &[Changed]| -> Vec<Changed> {
            in_one.iter().filter(|each| !in_other.contains(each)).cloned().collect()
        };
        Drift { capacity, before, after, appear: only(&new, &old), go: only(&old, &new) }
    }))
}

fn listed(contents: &Contents<'_>) -> Vec<Changed> {
    let findings = crate::checks::check(contents).into_iter();
    let changed = findings.map(|each| Changed { code: each.code, subject: each.subject, severity: each.severity });
    changed.collect()
}

/// Buffer capacity, and how far the pH moves.
fn moved(contents: &Contents<'_>, ph: f64, cause: Cause) -> Result<(f64, f64), PhError> {
    let at = contents.conditions.room;
    let mut all = contents.dissolved();
    all.unaccounted = Some(predict::calibrate(&all, ph)?);
    let there = all.solution()?;
    let before = Solver::new(&[&there], at)?.solve()?;
    let after = match cause {
        Cause::Acid(percent) => {
            let acetic = AcidBase::at_25(0, &[4.757])?;
            let released = Solution::in_water(0.0).with(&acetic, percent * 10.0 / ACETIC);
            Solver::new(&[&there, &released], at)?.solve_mix(&[1.0, 1.0])?.ph
        }
        Cause::Urea(percent) => {
            let (ammonia, carbonic) = (AcidBase::at_25(1, &[9.244])?, AcidBase::at_25(0, &[6.352, 10.329])?);
            let moles = percent * 10.0 / UREA;
            let released = Solution::in_water(0.0).with(&ammonia, 2.0 * moles).with(&carbonic, moles);
            Solver::new(&[&there, &released], at)?.solve_mix(&[1.0, 1.0])?.ph
        }
        Cause::Air => under_air(&there, at)?,
    };
    Ok((before.capacity, after - before.ph))
}

/// The pH in balance with the carbon dioxide of the air.
fn under_air(there: &Solution<'_>, at: Temperature) -> Result<f64, PhError> {
    let carbonic = AcidBase::at_25(0, &[6.352, 10.329])?;
    let gas = Solution::in_water(0.0).with(&carbonic, there.water());
    let mut solver = Solver::new(&[there, &gas], at)?;
    let (mut low, mut high) = (UNDER_AIR.ln(), MOST_FROM_AIR.ln());
    // More taken up leaves more of it dissolved as such.
    for _ in 0..50 {
        let middle = f64::midpoint(low, high);
        let free = match solver.solve_mix(&[1.0, middle.exp()]) {
            Ok(_) => middle.exp() * solver.share(&carbonic, 0),
            Err(PhError::TooStrong { .. }) => f64::INFINITY,
            Err(other) => return Err(other),
        };
        if free > UNDER_AIR { high = middle } else { low = middle }
    }
    Ok(solver.solve_mix(&[1.0, low.exp()])?.ph)
}
