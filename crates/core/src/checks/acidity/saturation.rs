//! An acid that water does not take up whole: what lies undissolved lowers no pH.
//!
//! Of a saturated acid the undissociated part stands at its intrinsic solubility, whatever the pH. The amount that is
//! dissolved is the one at which the equilibrium says so.

use crate::checks::contents::Contents;
use crate::checks::facts::{Facts, WaterSolubility};
use crate::chemistry::Band;
use crate::chemistry::dissociation::{undissociated, undissociated_at_saturation};
use crate::chemistry::ph::{AcidBase, PhError, Solution, Solver, predict};

/// How much further the pKa counts as uncertain where the solubility decides: figures of solubility differ by a fifth, and
/// alcohol and glycols dissolve more. An assumption of ours.
const SPREAD: f64 = 0.2;

/// Takes out of what is dissolved the acids that are not, where the pH it would have with all of them says so. Whether
/// there was one.
///
/// # Errors
/// As [`Solver::solve_mix`].
pub(super) fn settle(contents: &Contents<'_>, all: &mut predict::Contents<'static>, ph: Band) -> Result<bool, PhError> {
    let mut settled = false;
    let mut seen: Vec<&AcidBase> = Vec::new();
    for present in &contents.present {
        let facts = present.facts.salt_of.and_then(|salt| contents.knowledge.facts(salt.acid)).unwrap_or(present.facts);
        let own = present.facts.brings.as_ref().and_then(|brings| brings.per_kilogram.acids().next());
        let Some((acid, _)) = own else { continue };
        if seen.iter().any(|each| std::ptr::eq(*each, acid)) {
            continue;
        }
        seen.push(acid);
        let Some(intrinsic) = intrinsic(facts, contents) else { continue };
        let known = all.known.iter().flat_map(|known| known.brings.acids());
        let total: f64 = known.filter(|(each, _)| std::ptr::eq(*each, acid)).map(|(_, moles)| moles).sum();
        let most = intrinsic * all.water;
        // Judged by the closed form first: it costs nothing, and is right but for activities.
        let steps: Vec<f64> = acid.steps().iter().map(|step| -step.log_k).collect();
        if acid.charge() != 0 || total * undissociated(&steps, ph.low) <= most {
            continue;
        }
        let share = dissolved_share(all, acid, total, most)?;
        if share < 1.0 {
            settled = true;
            for known in &mut all.known {
                if known.brings.acids().any(|(each, _)| std::ptr::eq(each, acid)) {
                    known.brings.keep_of(acid, share);
                    known.spread = known.spread.max(SPREAD);
                }
            }
        }
    }
    Ok(settled)
}

/// Intrinsic solubility of an acid in mol/kg water.
fn intrinsic(facts: &Facts, contents: &Contents<'_>) -> Option<f64> {
    let acid = facts.acid.as_ref()?;
    let WaterSolubility::Limited(curve) = facts.water_solubility.as_ref()? else { return None };
    let grams = curve.at(contents.conditions.room).ok()?;
    let moles = grams * 10.0 / facts.molar_mass?.value;
    Some(moles * acid.steps.first().map_or(1.0, |pka| undissociated_at_saturation(*pka, moles)))
}

/// Share of an acid that is dissolved.
fn dissolved_share(
    all: &predict::Contents<'static>,
    acid: &'static AcidBase,
    total: f64,
    most: f64,
) -> Result<f64, PhError> {
    let mut rest = all.solution()?;
    rest.keep_of(acid, 0.0);
    let own = Solution::in_water(0.0).with(acid, total);
    let mut solver = Solver::new(&[&rest, &own], all.temperature)?;
    let mut free = |share: f64| match solver.solve_mix(&[1.0, share]) {
        Ok(_) => Ok(total * share * solver.share(acid, 0)),
        // So much of it is beyond the model: less of it is dissolved.
        Err(PhError::TooStrong { .. }) => Ok(f64::INFINITY),
        Err(error) => Err(error),
    };
    if free(1.0)? <= most {
        return Ok(1.0);
    }
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..40 {
        let middle = f64::midpoint(low, high);
        if free(middle)? > most { high = middle } else { low = middle }
    }
    Ok(low)
}
