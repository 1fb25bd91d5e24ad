//! A titration at the bench: what readings of a small sample say of the whole batch.
//!
//! What is known of the product is computed; what is not shows as the base or acid that would have to be there for each
//! reading. Of several readings that is a straight line over pH: its height is the acid or base of the unknown, its
//! slope what the unknown buffers. The line, not the curve, is fitted, so two readings are enough, and one still says
//! something.

use super::{PhError, Solution, set};
use crate::chemistry::Temperature;

/// Share of the computed amount to add at first: stir, measure again, and add the rest. Common practice.
pub const FIRST_STEP: f64 = 0.8;

/// One reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// How much of the titrant is in, as a share of the solution handed in, per sample.
    pub added: f64,
    /// What the meter or strip shows.
    pub ph: f64,
}

/// What readings say of the unknown in the sample.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fit {
    /// Mean pH of the readings.
    pub middle: f64,
    /// Net base (positive) or acid (negative) of the unknown there, in mol per sample.
    pub net: f64,
    /// How much more acid the unknown shows for each pH higher, in mol per sample: what it buffers. Never negative.
    pub buffers: f64,
    /// Largest difference of a reading from the fitted curve, in mol of base or acid per sample.
    pub worst: f64,
    /// How many readings it rests on.
    pub readings: usize,
}

impl Fit {
    /// Net base or acid of the unknown at a pH, in mol per sample.
    #[must_use]
    pub fn net_at(&self, ph: f64) -> f64 {
        self.net - self.buffers * (ph - self.middle)
    }

    /// A solution with the unknown in it, as it is at a pH. `samples` is how many samples' worth: batch over sample.
    fn complete<'a>(&self, known: &Solution<'a>, ph: f64, samples: f64) -> Solution<'a> {
        let net = self.net_at(ph) * samples;
        known.clone().with_anion((-net).max(0.0)).with_unpaired_cation(net.max(0.0))
    }
}

/// Fits readings of a sample. `sample` is what is known to be in it, with the water it was diluted with.
///
/// # Errors
/// `ph.amount` without a reading, or for one that is no pH; else as [`set::reach`] for a reading that nothing explains.
pub fn fit(
    sample: &Solution<'_>,
    titrant: &Solution<'_>,
    readings: &[Reading],
    at: Temperature,
) -> Result<Fit, PhError> {
    let nothing = Solution::in_water(0.0);
    let (acid, base) = (nothing.clone().with_anion(1.0), nothing.with_unpaired_cation(1.0));
    let mut nets = Vec::with_capacity(readings.len());
    for reading in readings {
        if !(0.0..=14.0).contains(&reading.ph) || !(0.0..=1e6).contains(&reading.added) {
            return Err(PhError::Amount);
        }
        let mut there = sample.clone();
        there.add_solution(titrant, reading.added);
        let plain = super::Solver::new(&[&there], at)?.solve()?.ph;
        let net = if reading.ph < plain {
            -set::reach(&there, &acid, reading.ph, at)?.share
        } else {
            set::reach(&there, &base, reading.ph, at)?.share
        };
        nets.push((reading.ph, net));
    }
    if nets.is_empty() {
        return Err(PhError::Amount);
    }
    #[allow(clippy::cast_precision_loss, reason = "a bench has a handful of readings")]
    let count = nets.len() as f64;
    let middle = nets.iter().map(|(ph, _)| ph).sum::<f64>() / count;
    let net = nets.iter().map(|(_, net)| net).sum::<f64>() / count;
    let square: f64 = nets.iter().map(|(ph, _)| (ph - middle).powi(2)).sum();
    let product: f64 = nets.iter().map(|(ph, there)| (ph - middle) * (there - net)).sum();
    // Nothing buffers backwards: a slope the other way is an error of reading.
    let buffers = if square > 1e-6 { (-product / square).max(0.0) } else { 0.0 };
    let mut fit = Fit { middle, net, buffers, worst: 0.0, readings: nets.len() };
    fit.worst = nets.iter().map(|(ph, net)| (net - fit.net_at(*ph)).abs()).fold(0.0, f64::max);
    Ok(fit)
}

/// What to add to the batch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scaled {
    /// All of it, as a share of the titrant handed in.
    pub all: f64,
    /// What to add first: [`FIRST_STEP`] of it.
    pub first: f64,
}

/// How much titrant brings the batch to a pH. `batch` is what is known to be in it, `samples` its mass over the
/// sample's.
///
/// # Errors
/// As [`set::reach`].
pub fn scale(
    fit: &Fit,
    batch: &Solution<'_>,
    samples: f64,
    titrant: &Solution<'_>,
    target: f64,
    at: Temperature,
) -> Result<Scaled, PhError> {
    if !(0.0..=1e9).contains(&samples) {
        return Err(PhError::Amount);
    }
    let all = set::reach(&fit.complete(batch, target, samples), titrant, target, at)?.share;
    Ok(Scaled { all, first: FIRST_STEP * all })
}

#[cfg(test)]
mod tests {
    use super::super::{AcidBase, Cation, Solver};
    use super::*;

    const AT: Temperature = Temperature::TWENTY_FIVE;

    fn solved(solution: &Solution<'_>) -> f64 {
        Solver::new(&[solution], AT).unwrap().solve().unwrap().ph
    }

    /// A batch of 1 kg that reads 6.4 for it holds a protein nobody stated; 10 g of it are diluted with 20 g of water
    /// and titrated with citric acid. The amounts come from the whole truth, which the fit does not see.
    #[test]
    fn a_titrated_sample_says_what_the_batch_needs() {
        let benzoic = AcidBase::at_25(0, &[4.204]).unwrap();
        let citric = AcidBase::at_25(0, &[3.128, 4.761, 6.396]).unwrap();
        let hidden = AcidBase::at_25(1, &[3.6, 6.3]).unwrap();
        let known = |mass: f64, more: f64| {
            Solution::in_water(0.8 * mass + more)
                .with(&benzoic, 0.0347 * mass)
                .with_cation(Cation::Sodium, 0.0347 * mass)
        };
        let truth = |mass: f64, more: f64| {
            known(mass, more).with(&hidden, 0.02 * mass).with_cation(Cation::Sodium, 0.011 * mass)
        };
        // A kilogram of citric acid of 10 %.
        let titrant = Solution::in_water(0.9).with(&citric, 100.0 / 192.12);
        let start = solved(&truth(1.0, 0.0));
        assert!((start - 6.4).abs() < 0.1, "{start}");
        let (sample, dilution) = (0.01, 0.02);
        let readings: Vec<Reading> = [0.0, 0.0001, 0.0002, 0.0003]
            .into_iter()
            .map(|added| {
                let mut there = truth(sample, dilution);
                there.add_solution(&titrant, added);
                // A meter with two decimals.
                Reading { added, ph: (solved(&there) * 100.0).round() / 100.0 }
            })
            .collect();
        assert!(readings.first().unwrap().ph > 5.5 && readings.last().unwrap().ph < 5.6, "{readings:?}");
        let fit = fit(&known(sample, dilution), &titrant, &readings, AT).unwrap();
        assert!(fit.buffers > 0.0 && fit.readings == 4);
        let dose = scale(&fit, &known(1.0, 0.0), 1.0 / sample, &titrant, 5.5, AT).unwrap();
        let after = |share: f64| {
            let mut batch = truth(1.0, 0.0);
            batch.add_solution(&titrant, share);
            solved(&batch)
        };
        assert!((after(dose.all) - 5.5).abs() < 0.15, "{}", after(dose.all));
        assert!(after(dose.first) > 5.5 && after(dose.first) < start);
        // What is known alone would miss by far more.
        let blind = set::reach(&known(1.0, 0.0), &titrant, 5.5, AT).unwrap().share;
        assert!((after(blind) - 5.5).abs() > 0.4, "{}", after(blind));
    }

    #[test]
    fn readings_that_are_none_are_refused() {
        let water = Solution::in_water(1.0);
        assert_eq!(fit(&water, &water, &[], AT).unwrap_err(), PhError::Amount);
        let reading = Reading { added: 0.0, ph: f64::NAN };
        assert_eq!(fit(&water, &water, &[reading], AT).unwrap_err(), PhError::Amount);
    }
}
