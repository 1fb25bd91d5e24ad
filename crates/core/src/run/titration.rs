//! The pH at the bench: readings of the batch, a weighed sample titrated with drops or grams of a solution, what that says
//! of the batch, and what a reading beside the target or outside a preservative's window asks for.

use crate::chemistry::Temperature;
use crate::chemistry::ph::titration::{FIRST_STEP, Fit, Reading, fit, scale};
use crate::chemistry::ph::{PhError, Solution};
use crate::material::{ConstituentId, MaterialId};
use crate::quantity::{Grams, Percent, Ph};
use rust_decimal::Decimal;

/// How far a pH may be from the one that is aimed at: common practice.
pub const TOLERANCE: f64 = 0.2;
/// What a meter may be off by: common practice.
pub const METER: f64 = 0.1;

/// What a pH is read with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ReadBy {
    /// A meter.
    Meter,
    /// A strip with such a step between its colours.
    Strip(Ph),
}

impl ReadBy {
    /// How far a reading may be off: 0.1 by a meter; by a strip its step, since neighbouring colours are told apart with
    /// doubt (usual errors of strips are 0.5 to 1: a laboratory supplier's article on meters and strips).
    #[must_use]
    pub fn coarseness(self) -> f64 {
        match self {
            Self::Meter => METER,
            Self::Strip(step) => step.to_physics().max(METER),
        }
    }
}

/// Where it is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Vessel {
    /// In the sample.
    Sample,
    /// In the batch.
    Batch,
}

/// The pH in which a preservative works.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Window {
    /// The preservative.
    pub substance: ConstituentId,
    /// Least.
    pub low: Ph,
    /// Most.
    pub high: Ph,
}

/// So many drops weigh so much.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Drops {
    /// How many were weighed.
    pub count: u32,
    /// What they weigh.
    pub mass: Grams,
}

impl Drops {
    /// What so many of them weigh.
    #[must_use]
    pub fn weigh(self, count: u32) -> Option<Grams> {
        let all = self.mass.value().checked_mul(Decimal::from(count))?;
        Grams::new(all.checked_div(Decimal::from(self.count))?.round_dp(6)).ok()
    }
}

/// The solution that is added.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Titrant {
    /// What is dissolved in it.
    pub material: MaterialId,
    /// How much of that, in mass percent; the rest is water. 100 is the material itself.
    pub strength: Percent,
    /// What its drops weigh, where drops are counted.
    pub drops: Option<Drops>,
}

/// Something done about the pH.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PhDeed {
    /// The windows of the preservatives, as they were known when the pH was first looked at.
    Windows(Vec<Window>),
    /// So much was weighed out of the batch, and diluted with so much water; nothing: undiluted.
    SampleTaken(Grams, Grams),
    /// What is added.
    Titrant(Titrant),
    /// So many drops went into the sample.
    DropsAdded(u32),
    /// So much went into the sample.
    GramsAdded(Grams),
    /// The pH was read.
    Read(Vessel, Ph, ReadBy),
    /// So much of the solution went into the batch.
    Corrected(Grams),
    /// The batch stays as it was last read, as a deviation.
    Accepted,
}

/// A reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PhReading {
    /// When, in milliseconds since 1970.
    pub at: u64,
    /// Where.
    pub vessel: Vessel,
    /// What it showed.
    pub ph: Ph,
    /// With what.
    pub by: ReadBy,
    /// Of a sample, how much of the solution was in it; of the batch, how much had gone into that.
    pub added: Grams,
}

/// A sample of the batch.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sample {
    /// What was weighed out of the batch.
    pub mass: Grams,
    /// The water it was diluted with.
    pub water: Grams,
    /// What had gone into the batch for its pH when it was taken.
    pub corrected: Grams,
    /// What has gone in.
    pub added: Grams,
    /// Its readings.
    pub readings: Vec<PhReading>,
}

/// A correction of the batch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Correction {
    /// When, in milliseconds since 1970.
    pub at: u64,
    /// Of what.
    pub titrant: Titrant,
    /// How much.
    pub mass: Grams,
}

/// Everything about the pH of a run.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PhLog {
    /// What is aimed at.
    pub target: Option<Ph>,
    /// The windows of the preservatives.
    pub windows: Vec<Window>,
    /// Every reading of the batch and of samples, in order.
    pub readings: Vec<PhReading>,
    /// The sample in hand.
    pub sample: Option<Sample>,
    /// The solution in hand.
    pub titrant: Option<Titrant>,
    /// What went into the batch.
    pub corrections: Vec<Correction>,
    /// What was taken out of the batch for samples.
    pub taken: Grams,
    /// Which reading of the batch was accepted as it is, by its place among the readings.
    pub accepted: Option<usize>,
    /// Whether the pH was read in a way that asks for an answer: records older than that do not.
    answerable: bool,
}

/// Which way a pH misses its target.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Miss {
    /// It is too acid.
    TooLow,
    /// It is too alkaline.
    TooHigh,
}

/// How the pH of the batch stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Standing {
    /// It was not read yet, or the batch was corrected since.
    Unread,
    /// It is where it should be, as far as the reading tells.
    Within(PhReading),
    /// The strip is too coarse to tell.
    CannotTell(PhReading),
    /// It is not.
    Outside(PhReading, Outside),
    /// It is not, and stays so as a deviation.
    Accepted(PhReading, Outside),
}

/// What a reading lies outside of.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Outside {
    /// Of the target, and which way.
    pub target: Option<Miss>,
    /// Of these preservatives' windows.
    pub windows: Vec<Window>,
}

impl PhLog {
    pub(super) const fn aiming_at(target: Option<Ph>) -> Self {
        Self {
            target,
            windows: Vec::new(),
            readings: Vec::new(),
            sample: None,
            titrant: None,
            corrections: Vec::new(),
            taken: Grams::ZERO,
            accepted: None,
            answerable: false,
        }
    }

    pub(super) fn play(&mut self, at: u64, deed: &PhDeed) {
        match deed {
            PhDeed::Windows(windows) => self.windows.clone_from(windows),
            PhDeed::SampleTaken(mass, water) => {
                self.taken = self.taken.checked_add(*mass).unwrap_or(self.taken);
                let corrected = self.corrected();
                let (mass, water) = (*mass, *water);
                self.sample = Some(Sample { mass, water, corrected, added: Grams::ZERO, readings: Vec::new() });
            }
            PhDeed::Titrant(titrant) => {
                // A sample that holds one solution tells nothing of another.
                if self.titrant.is_some_and(|known| !known.is_same_solution(titrant))
                    && self.sample.as_ref().is_some_and(|sample| !sample.added.is_zero())
                {
                    self.sample = None;
                }
                self.titrant = Some(*titrant);
            }
            PhDeed::DropsAdded(count) => {
                if let Some(mass) = self.titrant.and_then(|titrant| titrant.drops?.weigh(*count)) {
                    self.add_to_sample(mass);
                }
            }
            PhDeed::GramsAdded(mass) => self.add_to_sample(*mass),
            PhDeed::Read(vessel, ph, by) => {
                self.answerable = true;
                self.read(at, *vessel, *ph, *by);
            }
            PhDeed::Corrected(mass) => {
                if let Some(titrant) = self.titrant {
                    self.corrections.push(Correction { at, titrant, mass: *mass });
                    self.accepted = None;
                }
            }
            PhDeed::Accepted => {
                self.accepted = self.readings.iter().rposition(|reading| reading.vessel == Vessel::Batch);
            }
        }
    }

    /// A reading of the batch by a meter, as records had it before there were others.
    pub(super) fn read_batch(&mut self, at: u64, ph: Ph) {
        self.read(at, Vessel::Batch, ph, ReadBy::Meter);
    }

    fn read(&mut self, at: u64, vessel: Vessel, ph: Ph, by: ReadBy) {
        let added = match vessel {
            Vessel::Sample => self.sample.as_ref().map(|sample| sample.added),
            Vessel::Batch => Some(self.corrected()),
        };
        let Some(added) = added else { return };
        let reading = PhReading { at, vessel, ph, by, added };
        if let (Vessel::Sample, Some(sample)) = (vessel, &mut self.sample) {
            sample.readings.push(reading);
        }
        self.readings.push(reading);
    }

    fn add_to_sample(&mut self, mass: Grams) {
        if let Some(sample) = &mut self.sample {
            sample.added = sample.added.checked_add(mass).unwrap_or(sample.added);
        }
    }

    /// What has gone into the batch.
    #[must_use]
    pub fn corrected(&self) -> Grams {
        let add = |sum: Grams, each: &Correction| sum.checked_add(each.mass).unwrap_or(sum);
        self.corrections.iter().fold(Grams::ZERO, add)
    }

    /// The last reading of the batch.
    #[must_use]
    pub fn last_of_batch(&self) -> Option<PhReading> {
        self.readings.iter().rev().find(|reading| reading.vessel == Vessel::Batch).copied()
    }

    /// How the pH of the batch stands.
    #[must_use]
    pub fn standing(&self) -> Standing {
        let Some(place) = self.readings.iter().rposition(|reading| reading.vessel == Vessel::Batch) else {
            return Standing::Unread;
        };
        let reading = self.readings[place];
        if reading.added != self.corrected() {
            return Standing::Unread;
        }
        let outside = self.outside(&reading, reading.by.coarseness());
        let is_outside = outside.target.is_some() || !outside.windows.is_empty();
        if is_outside {
            return if self.accepted == Some(place) {
                Standing::Accepted(reading, outside)
            } else {
                Standing::Outside(reading, outside)
            };
        }
        let may_be = self.outside(&reading, -reading.by.coarseness());
        match reading.by {
            ReadBy::Strip(_) if may_be.target.is_some() || !may_be.windows.is_empty() => Standing::CannotTell(reading),
            _ => Standing::Within(reading),
        }
    }

    /// What a reading lies outside of, granted that it may be off by so much; less than nothing: by its worse end.
    fn outside(&self, reading: &PhReading, granted: f64) -> Outside {
        let ph = reading.ph.to_physics();
        let target = self.target.and_then(|target| {
            let miss = ph - target.to_physics();
            // The last digits of a difference are none.
            let far = miss.abs() > (TOLERANCE + granted).max(0.0) + 1e-9;
            far.then_some(if miss > 0.0 { Miss::TooHigh } else { Miss::TooLow })
        });
        let granted = match reading.by {
            ReadBy::Meter => 0.0,
            ReadBy::Strip(_) => granted,
        };
        let is_outside = |window: &&Window| {
            ph > window.high.to_physics() + granted + 1e-9 || ph < window.low.to_physics() - granted - 1e-9
        };
        Outside { target, windows: self.windows.iter().filter(is_outside).copied().collect() }
    }

    /// Whether the pH asks for an answer before the run goes on: it was read outside, and neither corrected and read again
    /// nor accepted; or corrected and not read since.
    #[must_use]
    pub fn asks_for_an_answer(&self) -> bool {
        self.answerable
            && match self.standing() {
                Standing::Outside(..) => true,
                Standing::Unread => !self.corrections.is_empty(),
                Standing::Within(_) | Standing::CannotTell(_) | Standing::Accepted(..) => false,
            }
    }
}

impl Titrant {
    fn is_same_solution(&self, other: &Self) -> bool {
        self.material == other.material && self.strength == other.strength
    }
}

/// What is on the bench, as far as the equilibrium goes.
#[derive(Debug, Clone, Copy)]
pub struct OnBench<'a> {
    /// What is known to be in a kilogram of the product as it was poured, with its water.
    pub product: &'a Solution<'a>,
    /// What is known to be in a kilogram of the solution that is added.
    pub titrant: &'a Solution<'a>,
    /// Mass of the batch without what was corrected, in g.
    pub batch: f64,
    /// The temperature.
    pub at: Temperature,
}

/// What a titrated sample says of the batch.
#[derive(Debug, Clone, PartialEq)]
pub struct Titrated {
    /// The fit through the readings, per sample.
    pub fit: Fit,
    /// What the batch needs in all to reach the target, in g of the solution, beyond what has gone in. Less than nothing
    /// counts as nothing.
    pub all: f64,
    /// What to add now: [`FIRST_STEP`] of it; then stir, and read again.
    pub now: f64,
    /// The fitted curve of the sample: grams added, and the pH.
    pub curve: Vec<(f64, f64)>,
    /// The readings: grams added, the pH, and how far it may be off.
    pub points: Vec<(f64, f64, f64)>,
}

/// Points of a fitted curve.
const POINTS: u32 = 48;

/// Reads a titrated sample: the curve through its readings, and what the batch needs.
///
/// `None` without a reading of the sample. What has gone into the batch since the sample was taken is counted; a reading of
/// the batch after that sets the height of the curve, for it is of the whole.
///
/// # Errors
/// As [`fit`] and [`scale`].
#[must_use]
pub fn titrate(log: &PhLog, bench: OnBench<'_>, target: f64) -> Option<Result<Titrated, PhError>> {
    let sample = log.sample.as_ref().filter(|sample| !sample.readings.is_empty() && !sample.mass.is_zero())?;
    Some(titrate_sample(log, sample, bench, target))
}

fn titrate_sample(log: &PhLog, sample: &Sample, bench: OnBench<'_>, target: f64) -> Result<Titrated, PhError> {
    let kilograms = |grams: Grams| grams.to_physics() / 1000.0;
    let corrected = kilograms(sample.corrected);
    let mut batch = Solution::in_water(0.0);
    batch.add_solution(bench.product, bench.batch / 1000.0);
    batch.add_solution(bench.titrant, corrected);
    let samples = (bench.batch / 1000.0 + corrected) / kilograms(sample.mass);
    let mut known = Solution::in_water(kilograms(sample.water));
    known.add_solution(&batch, 1.0 / samples);
    let readings: Vec<Reading> = sample
        .readings
        .iter()
        .map(|reading| Reading { added: kilograms(reading.added), ph: reading.ph.to_physics() })
        .collect();
    let fitted = fit(&known, bench.titrant, &readings, bench.at)?;
    let since = kilograms(log.corrected()) - corrected;
    let all = needed(log, (&fitted, samples), &batch, since, bench, target)?;
    let phs = readings.iter().map(|reading| reading.ph).chain([target]);
    let (low, high) = phs.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), ph| (low.min(ph), high.max(ph)));
    let (low, high) = (low - 0.5, high + 0.5);
    let at = |point: u32| low + (high - low) * f64::from(point) / f64::from(POINTS);
    let on_curve = |point: u32| {
        let added = scale(&fitted, &known, 1.0, bench.titrant, at(point), bench.at).ok()?.all;
        Some((added * 1000.0, at(point)))
    };
    let mut curve: Vec<(f64, f64)> = (0..=POINTS).filter_map(on_curve).collect();
    curve.sort_by(|one, other| one.0.total_cmp(&other.0));
    let point = |reading: &PhReading| (reading.added.to_physics(), reading.ph.to_physics(), reading.by.coarseness());
    let points = sample.readings.iter().map(point).collect();
    Ok(Titrated { fit: fitted, all, now: all * FIRST_STEP, curve, points })
}

/// Grams of the solution that the batch still needs. `batch` is as it was when the sample was taken, `since` what has gone in
/// after that, in kg.
fn needed(
    log: &PhLog,
    (of_sample, samples): (&Fit, f64),
    batch: &Solution<'_>,
    since: f64,
    bench: OnBench<'_>,
    target: f64,
) -> Result<f64, PhError> {
    let last = log.last_of_batch().filter(|reading| since > 0.0 && reading.added == log.corrected());
    let Some(last) = last else {
        let all = reach_or_nothing(scale(of_sample, batch, samples, bench.titrant, target, bench.at))?;
        return Ok((all - since).max(0.0) * 1000.0);
    };
    // The height from the batch itself, the slope from the sample.
    let mut there = batch.clone();
    there.add_solution(bench.titrant, since);
    let reading = Reading { added: 0.0, ph: last.ph.to_physics() };
    let mut whole = fit(&there, bench.titrant, &[reading], bench.at)?;
    whole.buffers = of_sample.buffers * samples;
    Ok(reach_or_nothing(scale(&whole, &there, 1.0, bench.titrant, target, bench.at))? * 1000.0)
}

/// A target that lies on the other side already needs nothing more of this solution.
fn reach_or_nothing(scaled: Result<crate::chemistry::ph::titration::Scaled, PhError>) -> Result<f64, PhError> {
    match scaled {
        Ok(scaled) => Ok(scaled.all),
        Err(PhError::Unreachable { .. }) => Ok(0.0),
        Err(error) => Err(error),
    }
}

/// What the batch needs by its last reading alone, where no sample was titrated, in g of the solution: all, and what to add
/// now.
///
/// # Errors
/// As [`fit`]; `ph.amount` if the batch was not read.
pub fn by_reading(log: &PhLog, bench: OnBench<'_>, target: f64) -> Result<(f64, f64), PhError> {
    let last = log.last_of_batch().ok_or(PhError::Amount)?;
    let mut batch = Solution::in_water(0.0);
    batch.add_solution(bench.product, bench.batch / 1000.0);
    batch.add_solution(bench.titrant, last.added.to_physics() / 1000.0);
    let reading = Reading { added: 0.0, ph: last.ph.to_physics() };
    let whole = fit(&batch, bench.titrant, &[reading], bench.at)?;
    let all = scale(&whole, &batch, 1.0, bench.titrant, target, bench.at)?.all * 1000.0;
    Ok((all, all * FIRST_STEP))
}

#[cfg(test)]
mod tests;
