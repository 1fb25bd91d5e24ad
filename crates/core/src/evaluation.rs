//! One formula worked out: percents, composition, batch and weigh sheet.

use crate::balance::{Balance, LineShare};
use crate::batch_plan::BatchWay;
use crate::composition::{Composition, DensityEstimate, Makeups, estimate_density, resolve_composition};
use crate::formula::Formula;
use crate::material::{MaterialId, MaterialSource};
use crate::quantity::{Density, Grams, Percent};
use crate::scaling::{ScalingError, StockAnswer, mass_to_fill, most_from_stock, round_up_to_scale};
use crate::weigh_sheet::{Scales, WeighSheet, lay_out, smallest_batch};

/// What the bench is like.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Bench {
    /// The scales on it.
    pub scales: Scales,
    /// Relative error a line may have through rounding.
    pub tolerance: Tolerance,
}

/// Relative error a line may have through rounding, in percent.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tolerance(pub Percent);

impl Default for Tolerance {
    fn default() -> Self {
        Self(crate::weigh_sheet::USUAL_TOLERANCE)
    }
}

/// A formula worked out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Evaluation {
    /// Every line's share and what material it is, in the order of the formula.
    pub lines: Vec<(LineShare, MaterialId)>,
    /// Whether the amounts make a formula.
    pub balance: Balance,
    /// What is in the jar.
    pub composition: Composition,
    /// Density of the product by its materials.
    pub density: Option<DensityEstimate>,
    /// The batch asked for.
    pub batch: Result<Batch, ScalingError>,
    /// What to weigh; only of a sound formula with a batch.
    pub sheet: Option<WeighSheet>,
    /// Smallest batch with every line within the tolerance.
    pub smallest_batch: Option<Grams>,
}

/// A batch and how it was come by.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Batch {
    /// The mass to make.
    pub mass: Grams,
    /// How it was come by.
    pub basis: BatchBasis,
}

/// How a batch was come by.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum BatchBasis {
    /// The maker said so.
    Mass,
    /// It fills containers.
    Containers {
        /// Mass before it was raised to the scale.
        needed: Grams,
        /// Density that was used.
        density: Density,
        /// Where the density was estimated: how much of the formula that rests on.
        estimated_from: Option<Percent>,
    },
    /// It is what materials at hand allow.
    Stock(StockAnswer),
}

/// Works a formula out.
#[must_use]
pub fn evaluate(
    formula: &Formula,
    bench: &Bench,
    source: &(impl MaterialSource + ?Sized),
    makeups: &mut Makeups,
) -> Evaluation {
    let balance = formula.balance();
    let lines: Vec<(LineShare, MaterialId)> =
        balance.shares.iter().copied().zip(formula.lines().map(|line| line.material)).collect();
    let composition = resolve_composition(&lines, source, makeups);
    let density = estimate_density(&lines, source, makeups);
    let batch = ask_for_batch(formula, &lines, density, &bench.scales);
    let sheet = match &batch {
        Ok(batch) if balance.is_sound() => lay_out(&balance.shares, batch.mass, &bench.scales),
        _ => None,
    };
    let smallest_batch =
        balance.is_sound().then(|| smallest_batch(&balance.shares, &bench.scales, bench.tolerance.0)).flatten();
    Evaluation { lines, balance, composition, density, batch, sheet, smallest_batch }
}

fn ask_for_batch(
    formula: &Formula,
    lines: &[(LineShare, MaterialId)],
    estimate: Option<DensityEstimate>,
    scales: &Scales,
) -> Result<Batch, ScalingError> {
    let plan = &formula.batch;
    match plan.way {
        BatchWay::Mass if plan.mass.is_zero() => Err(ScalingError::NoBatch),
        BatchWay::Mass => Ok(Batch { mass: plan.mass, basis: BatchBasis::Mass }),
        BatchWay::Containers => {
            let measured = plan.containers.density;
            let density = measured.or(estimate.map(|estimate| estimate.density)).ok_or(ScalingError::DensityUnknown)?;
            let estimated_from = if measured.is_some() { None } else { estimate.map(|estimate| estimate.known) };
            let needed = mass_to_fill(&plan.containers, density)?;
            let mass = round_up_to_scale(needed, scales).ok_or(ScalingError::TooLarge)?;
            Ok(Batch { mass, basis: BatchBasis::Containers { needed, density, estimated_from } })
        }
        BatchWay::Stock => {
            let answer = most_from_stock(lines, &plan.stock, scales)?;
            Ok(Batch { mass: answer.batch, basis: BatchBasis::Stock(answer) })
        }
    }
}
