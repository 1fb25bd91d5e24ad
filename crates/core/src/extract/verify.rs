//! From a reading to the strength that is really in the bottle.
//!
//! Dissolved plant solids raise the reading of a refractometer and of a hydrometer alike, so one reading alone leaves a
//! range. The two instruments weigh sugar and glycerin differently: together they tell them apart, within their accuracy.

use super::describe::{DENSITY_ACCURACY, INDEX_ACCURACY};
use super::liquid::{Level, Liquid};
use super::{ExtractError, Result};
use crate::chemistry::interpolation::solve_rising;
use crate::chemistry::mixture::Masses;
use crate::chemistry::{Band, PhysicsError, Range, Temperature, sucrose, water};
use serde::{Deserialize, Serialize};

/// The scale an instrument shows.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Scale {
    /// Refractometer in Brix.
    Brix {
        /// Whether it corrects for temperature (as for sugar).
        corrects_temperature: bool,
    },
    /// Refractometer in refractive index, read at the temperature of the liquid.
    RefractiveIndex,
    /// Hydrometer in specific gravity.
    SpecificGravity {
        /// Temperature in °C it is calibrated for; of its water too.
        calibrated: f64,
    },
}

/// One reading.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Reading {
    /// What the instrument shows.
    pub scale: Scale,
    /// The number read.
    pub value: f64,
    /// How far off the number may be: the smallest step of the scale, or what its maker states.
    pub resolution: f64,
    /// Temperature of the liquid in °C.
    pub temperature: f64,
}

/// What else is in the liquid, in percent by mass.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Besides {
    /// Plant solids, least to most.
    pub solids: Band,
    /// 1,2-propanediol.
    pub propylene_glycol: f64,
    /// 1,3-propanediol.
    pub propanediol: f64,
    /// Ethanol.
    pub ethanol: f64,
}

impl Besides {
    /// Nothing but glycerin and water.
    pub const NOTHING: Self = Self { solids: Band::exact(0.0), propylene_glycol: 0.0, propanediol: 0.0, ethanol: 0.0 };

    /// What is besides glycerin and water in a liquid as planned.
    ///
    /// # Errors
    /// `physics.out-of-range` for an empty liquid.
    pub fn planned(liquid: &Liquid) -> Result<Self> {
        let shares = |level| {
            let masses = liquid.masses(level);
            let share = |mass: f64| Range { quantity: "share", ..PERCENT }.check(100.0 * mass / masses.total());
            Ok::<_, PhysicsError>((
                share(masses.solids)?,
                share(masses.propylene_glycol)?,
                share(masses.propanediol)?,
                share(masses.ethanol)?,
            ))
        };
        let (typical, propylene_glycol, propanediol, ethanol) = shares(Level::Typical)?;
        let solids = Band { low: shares(Level::Low)?.0, estimate: typical, high: shares(Level::High)?.0 };
        Ok(Self { solids, propylene_glycol, propanediol, ethanol })
    }

    fn others(&self) -> f64 {
        self.propylene_glycol + self.propanediol + self.ethanol
    }

    /// A hundred grams of liquid with so much glycerin and solids; the rest is water.
    fn liquid(&self, glycerin: f64, solids: f64) -> Masses {
        Masses {
            // The top of the range may miss nothing by a rounding.
            water: (100.0 - glycerin - solids - self.others()).max(0.0),
            glycerol: glycerin,
            propylene_glycol: self.propylene_glycol,
            propanediol: self.propanediol,
            ethanol: self.ethanol,
            solids,
        }
    }

    /// The most glycerin there is room for beside so many solids.
    fn most_glycerin(&self, solids: f64) -> f64 {
        (100.0 - solids - self.others()).max(0.0)
    }
}

/// A share in percent.
const PERCENT: Range = Range { equation: "extract.verify", quantity: "share", unit: "%", minimum: 0.0, maximum: 100.0 };
/// What a resolution can be.
const RESOLUTION: Range =
    Range { equation: "extract.verify", quantity: "resolution", unit: "1", minimum: 0.0, maximum: 100.0 };
/// Most plant solids two readings are searched for, in percent.
const MOST_SOLIDS: f64 = 40.0;

/// What the readings say.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Verified {
    /// Glycerin in percent by mass.
    pub glycerin_percent: Band,
    /// Plant solids in percent by mass: what was supposed, or what two readings show.
    pub solids_percent: Band,
    /// Whether two readings agree with the solids supposed. One reading cannot disagree.
    pub agrees: bool,
}

/// Finds the strength behind one reading, or behind one of a refractometer and one of a hydrometer.
///
/// The band reaches over the resolution of the instrument, the accuracy of the equations (0.0005 in refractive index,
/// 0.1 % in density) and the plant solids supposed. Two readings are solved for glycerin and solids at once; where that
/// agrees with what was supposed the narrower range is given.
///
/// *Valid for* liquids of 15 to 30 °C.
///
/// *Source:* [`crate::chemistry::mixture`], solved by halving.
///
/// # Errors
/// `extract.reading-outside` if no such liquid shows this reading, `extract.unusable-readings` for none, more than two,
/// or two of one kind, `physics.out-of-range` for a temperature, resolution or share that is none.
///
/// ```
/// use stillroom_core::extract::verify::{Besides, Reading, Scale, verify};
/// let brix = Scale::Brix { corrects_temperature: false };
/// let reading = Reading { scale: brix, value: 50.2, resolution: 0.2, temperature: 20.0 };
/// let found = verify(&[reading], &Besides::NOTHING)?;
/// assert!((found.glycerin_percent.estimate - 65.0).abs() < 0.2);
/// let impossible = Reading { value: 80.0, ..reading };
/// assert_eq!(verify(&[impossible], &Besides::NOTHING).unwrap_err().code(), "extract.reading-outside");
/// # Ok::<(), stillroom_core::extract::ExtractError>(())
/// ```
pub fn verify(readings: &[Reading], besides: &Besides) -> Result<Verified> {
    check_besides(besides)?;
    let kinds = usize::from(readings.iter().any(Reading::is_optical))
        + usize::from(readings.iter().any(|reading| !reading.is_optical()));
    let single = |reading: &Reading| verify_one(&Signal::of(reading)?, besides);
    match readings {
        [one] => Ok(Verified { glycerin_percent: single(one)?, solids_percent: besides.solids, agrees: true }),
        [a, b] if kinds == 2 => {
            let (optical, gravity) = if a.is_optical() { (a, b) } else { (b, a) };
            verify_two(&Signal::of(optical)?, &Signal::of(gravity)?, besides)
        }
        _ => Err(ExtractError::UnusableReadings { count: readings.len(), kinds }),
    }
}

fn check_besides(besides: &Besides) -> Result<()> {
    let Band { low, estimate, high } = besides.solids;
    PERCENT.check(low)?;
    Range { minimum: low, ..PERCENT }.check(estimate)?;
    Range { minimum: estimate, ..PERCENT }.check(high)?;
    for share in [besides.propylene_glycol, besides.propanediol, besides.ethanol, high + besides.others()] {
        PERCENT.check(share)?;
    }
    Ok(())
}

impl Reading {
    const fn is_optical(&self) -> bool {
        !matches!(self.scale, Scale::SpecificGravity { .. })
    }
}

/// A reading as the physics sees it: a refractive index or a hydrometer's number, with how far off it may be.
struct Signal {
    scale: Scale,
    temperature: Temperature,
    read: f64,
    value: Band,
}

impl Signal {
    fn of(reading: &Reading) -> Result<Self> {
        let temperature = Temperature::new(reading.temperature)?;
        RESOLUTION.check(reading.resolution)?;
        let (low, high) = (reading.value - reading.resolution, reading.value + reading.resolution);
        let value = match reading.scale {
            Scale::RefractiveIndex => {
                Band { low: low - INDEX_ACCURACY, estimate: reading.value, high: high + INDEX_ACCURACY }
            }
            Scale::Brix { corrects_temperature } => {
                let index = |brix: f64| {
                    let shown = if corrects_temperature { undo_correction(brix, temperature)? } else { brix };
                    sucrose::index_from_brix(shown)
                };
                // The scale has no marks below water or above its end: there the band stops.
                let estimate = index(reading.value)?;
                let low = index(low).map_or(estimate, |low| low.min(estimate));
                let high = index(high).map_or(estimate, |high| high.max(estimate));
                Band { low: low - INDEX_ACCURACY, estimate, high: high + INDEX_ACCURACY }
            }
            Scale::SpecificGravity { .. } => Band {
                low: low * (1.0 - DENSITY_ACCURACY),
                estimate: reading.value,
                high: high * (1.0 + DENSITY_ACCURACY),
            },
        };
        Ok(Self { scale: reading.scale, temperature, read: reading.value, value })
    }

    /// What such a liquid would give, in the terms of [`Self::value`].
    fn predict(&self, liquid: &Masses) -> core::result::Result<f64, PhysicsError> {
        match self.scale {
            Scale::SpecificGravity { calibrated } => {
                let density = liquid.density(self.temperature)?;
                water::read_hydrometer(density, self.temperature, Temperature::new(calibrated)?)
            }
            Scale::Brix { .. } | Scale::RefractiveIndex => liquid.refractive_index(self.temperature),
        }
    }

    /// The same as the instrument shows it.
    fn show(&self, signal: f64) -> f64 {
        match self.scale {
            Scale::Brix { corrects_temperature } => sucrose::brix_from_index(signal).map_or(f64::NAN, |brix| {
                let correction = sucrose::temperature_correction(brix, self.temperature).unwrap_or(0.0);
                if corrects_temperature { brix + correction } else { brix }
            }),
            Scale::RefractiveIndex | Scale::SpecificGravity { .. } => signal,
        }
    }

    /// The glycerin at which a liquid with so many solids gives this signal: none or all of it beyond the ends.
    fn glycerin_at(&self, signal: f64, solids: f64, besides: &Besides) -> Result<f64> {
        let most = besides.most_glycerin(solids);
        let at = |glycerin: f64| self.predict(&besides.liquid(glycerin, solids));
        if signal <= at(0.0)? {
            return Ok(0.0);
        }
        if signal >= at(most)? {
            return Ok(most);
        }
        Ok(solve_rising(0.0, most, signal, |glycerin| at(glycerin).ok()).unwrap_or(most))
    }
}

/// The reading, before a refractometer added the correction of sugar for this temperature.
fn undo_correction(brix: f64, temperature: Temperature) -> core::result::Result<f64, PhysicsError> {
    let corrected = |shown: f64| Some(shown + sucrose::temperature_correction(shown, temperature).ok()?);
    // Nothing is corrected at 20 °C, where the table need not reach.
    let correction = sucrose::temperature_correction(brix.clamp(0.0, sucrose::CORRECTION_BRIX.maximum), temperature)?;
    if correction == 0.0 {
        return Ok(brix);
    }
    let range = sucrose::CORRECTION_BRIX;
    solve_rising(range.minimum, range.maximum, brix, corrected).ok_or(PhysicsError::OutOfRange {
        equation: range.equation,
        quantity: range.quantity,
        value: brix,
        minimum: corrected(range.minimum).unwrap_or(range.minimum),
        maximum: corrected(range.maximum).unwrap_or(range.maximum),
        unit: range.unit,
    })
}

fn verify_one(signal: &Signal, besides: &Besides) -> Result<Band> {
    let Band { low: fewest, estimate: typical, high: most } = besides.solids;
    let ends = [
        signal.predict(&besides.liquid(0.0, fewest))?,
        signal.predict(&besides.liquid(besides.most_glycerin(fewest), fewest))?,
        signal.predict(&besides.liquid(besides.most_glycerin(most), most))?,
    ];
    let (least, greatest) = (ends[0], ends[1].max(ends[2]));
    // Written so that a reading that is no number is outside.
    if !(signal.value.high >= least && signal.value.low <= greatest) {
        return Err(ExtractError::ReadingOutside {
            reading: signal.read,
            minimum: signal.show(least),
            maximum: signal.show(greatest),
        });
    }
    let estimate = signal.glycerin_at(signal.value.estimate, typical, besides)?;
    let low = signal.glycerin_at(signal.value.low, most, besides)?;
    let high = signal.glycerin_at(signal.value.high, fewest, besides)?;
    Ok(Band::around(estimate, &[low, high]))
}

/// Glycerin and solids at which both signals are met. On the line of liquids that bend light alike, more solids for less
/// glycerin are denser; so one halving finds them. Beyond the ends: none, or the most.
fn solve_both(optical: &Signal, index: f64, gravity: &Signal, shown: f64, besides: &Besides) -> Result<(f64, f64)> {
    let most = MOST_SOLIDS.min(100.0 - besides.others());
    let glycerin = |solids: f64| optical.glycerin_at(index, solids, besides);
    let density = |solids: f64| -> Result<f64> { Ok(gravity.predict(&besides.liquid(glycerin(solids)?, solids))?) };
    let solids = if shown <= density(0.0)? {
        0.0
    } else if shown >= density(most)? {
        most
    } else {
        solve_rising(0.0, most, shown, |solids| density(solids).ok()).unwrap_or(most)
    };
    Ok((glycerin(solids)?, solids))
}

fn verify_two(optical: &Signal, gravity: &Signal, besides: &Besides) -> Result<Verified> {
    // Each alone first: it says when a reading is impossible.
    let [by_light, by_weight] = [verify_one(optical, besides)?, verify_one(gravity, besides)?];
    let (glycerin, solids) = solve_both(optical, optical.value.estimate, gravity, gravity.value.estimate, besides)?;
    let mut corners = Vec::with_capacity(4);
    for index in [optical.value.low, optical.value.high] {
        for shown in [gravity.value.low, gravity.value.high] {
            corners.push(solve_both(optical, index, gravity, shown, besides)?);
        }
    }
    let (by_both, solids): (Vec<f64>, Vec<f64>) = corners.into_iter().chain([(glycerin, solids)]).unzip();
    let both = Band::around(glycerin, &by_both);
    let solids = Band::around(solids[4], &solids);
    let supposed = besides.solids;
    let low = both.low.max(by_light.low).max(by_weight.low);
    let high = both.high.min(by_light.high).min(by_weight.high);
    let agrees = solids.low <= supposed.high && supposed.low <= solids.high && low <= high;
    if !agrees {
        return Ok(Verified { glycerin_percent: both, solids_percent: solids, agrees });
    }
    let narrowed = Band {
        low: solids.low.max(supposed.low),
        estimate: solids.estimate.clamp(supposed.low, supposed.high),
        high: solids.high.min(supposed.high),
    };
    // With the solids held inside what was supposed the refractometer, the sharper of the two, decides.
    let estimate = if (narrowed.estimate - solids.estimate).abs() > 0.0 {
        optical.glycerin_at(optical.value.estimate, narrowed.estimate, besides)?
    } else {
        glycerin
    };
    let glycerin_percent = Band { low, estimate: estimate.clamp(low, high), high };
    Ok(Verified { glycerin_percent, solids_percent: narrowed, agrees })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const UNCORRECTED: Scale = Scale::Brix { corrects_temperature: false };
    const CORRECTED: Scale = Scale::Brix { corrects_temperature: true };
    const GRAVITY: Scale = Scale::SpecificGravity { calibrated: 20.0 };

    /// What an instrument shows of a liquid.
    fn read(scale: Scale, liquid: &Masses, temperature: f64, resolution: f64) -> Reading {
        let celsius = Temperature::new(temperature).unwrap();
        let value = match scale {
            Scale::RefractiveIndex => liquid.refractive_index(celsius).unwrap(),
            Scale::Brix { corrects_temperature } => liquid.brix(celsius, corrects_temperature).unwrap(),
            Scale::SpecificGravity { calibrated } => {
                let density = liquid.density(celsius).unwrap();
                water::read_hydrometer(density, celsius, Temperature::new(calibrated).unwrap()).unwrap()
            }
        };
        // As it is read off: to the nearest step.
        let value = if resolution > 0.0 { (value / resolution).round() * resolution } else { value };
        Reading { scale, value, resolution, temperature }
    }

    fn besides(typical: f64) -> Besides {
        let solids = Band { low: typical / 2.0, estimate: typical, high: typical * 1.75 };
        Besides { solids, ..Besides::NOTHING }
    }

    proptest! {
        #[test]
        fn what_is_predicted_is_verified(
            glycerin in 1.0..80.0_f64, typical in 0.0..8.0_f64, t in 15.0..=30.0_f64, which in 0..4_usize,
        ) {
            let besides = besides(typical);
            let scale = [UNCORRECTED, CORRECTED, Scale::RefractiveIndex, GRAVITY][which];
            let liquid = besides.liquid(glycerin, typical);
            let exact = verify(&[read(scale, &liquid, t, 0.0)], &besides).unwrap();
            prop_assert!((exact.glycerin_percent.estimate - glycerin).abs() < 1e-4, "{exact:?}");
            // Read off in steps, it is met within what half a step is worth, and the band holds it.
            let (step, worth) = [(0.2, 0.16), (0.2, 0.16), (0.0002, 0.09), (0.002, 0.5)][which];
            let found = verify(&[read(scale, &liquid, t, step)], &besides).unwrap().glycerin_percent;
            prop_assert!((found.estimate - glycerin).abs() <= worth, "{found:?} for {glycerin}");
            prop_assert!(found.low <= glycerin && glycerin <= found.high);
        }

        #[test]
        fn two_instruments_find_the_solids_nobody_supposed(
            glycerin in 20.0..75.0_f64, solids in 0.0..10.0_f64, t in 18.0..=25.0_f64,
        ) {
            let supposed = Besides { solids: Band { low: 0.0, estimate: 2.0, high: 12.0 }, ..Besides::NOTHING };
            let liquid = supposed.liquid(glycerin, solids);
            let readings = [read(UNCORRECTED, &liquid, t, 0.0), read(GRAVITY, &liquid, t, 0.0)];
            let both = verify(&readings, &supposed).unwrap();
            prop_assert!(both.agrees);
            prop_assert!((both.glycerin_percent.estimate - glycerin).abs() < 1e-3, "{both:?}");
            prop_assert!((both.solids_percent.estimate - solids).abs() < 1e-3, "{both:?}");
            let width = |band: Band| band.high - band.low;
            for reading in readings {
                let one = verify(&[reading], &supposed).unwrap();
                prop_assert!(width(both.glycerin_percent) <= width(one.glycerin_percent) + 1e-9);
            }
            prop_assert!(both.glycerin_percent.low <= glycerin + 1e-6 && glycerin <= both.glycerin_percent.high + 1e-6);
        }

        #[test]
        fn no_reading_panics(value in -10.0..110.0_f64, resolution in -1.0..5.0_f64, t in -20.0..60.0_f64, solids in -5.0..60.0_f64) {
            let besides = besides(solids);
            for scale in [UNCORRECTED, CORRECTED, Scale::RefractiveIndex, GRAVITY] {
                let reading = Reading { scale, value, resolution, temperature: t };
                let _ = verify(&[reading], &besides);
                let _ = verify(&[reading, Reading { scale: GRAVITY, value: value / 50.0, ..reading }], &besides);
            }
        }
    }

    #[test]
    fn two_readings_narrow_what_one_leaves_open() {
        let supposed = Besides { solids: Band { low: 0.0, estimate: 3.0, high: 10.0 }, ..Besides::NOTHING };
        let liquid = supposed.liquid(60.0, 4.0);
        let brix = read(UNCORRECTED, &liquid, 20.0, 0.1);
        let gravity = read(GRAVITY, &liquid, 20.0, 0.0005);
        let width = |readings: &[Reading]| {
            let band = verify(readings, &supposed).unwrap().glycerin_percent;
            band.high - band.low
        };
        assert!(width(&[brix]) > 10.0);
        assert!(width(&[brix, gravity]) < 0.6 * width(&[brix]), "{}", width(&[brix, gravity]));
    }

    #[test]
    fn solids_nobody_supposed_are_said() {
        let liquid = Besides::NOTHING.liquid(50.0, 9.0);
        let readings = [read(UNCORRECTED, &liquid, 20.0, 0.0), read(GRAVITY, &liquid, 20.0, 0.0)];
        let found = verify(&readings, &Besides::NOTHING).unwrap();
        assert!(!found.agrees);
        assert!((found.solids_percent.estimate - 9.0).abs() < 0.01, "{found:?}");
    }

    #[test]
    fn readings_that_cannot_be_used_are_refused() {
        let brix = Reading { scale: UNCORRECTED, value: 50.0, resolution: 0.2, temperature: 20.0 };
        let code = |readings: &[Reading]| verify(readings, &Besides::NOTHING).unwrap_err().code();
        assert_eq!(code(&[]), "extract.unusable-readings");
        assert_eq!(code(&[brix, brix]), "extract.unusable-readings");
        assert_eq!(code(&[Reading { value: 78.0, ..brix }]), "extract.reading-outside");
        assert_eq!(
            code(&[Reading { scale: GRAVITY, value: 0.90, resolution: 0.001, ..brix }]),
            "extract.reading-outside"
        );
        assert_eq!(code(&[Reading { temperature: 5.0, ..brix }]), "physics.out-of-range");
        assert_eq!(code(&[Reading { value: f64::NAN, scale: GRAVITY, ..brix }]), "extract.reading-outside");
    }
}
