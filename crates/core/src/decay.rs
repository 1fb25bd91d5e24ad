//! What dies away in proportion to how much is left: a batch that cools, a colour that fades.
//!
//! y(t) = floor + (y₀ − floor)·e^(−kt): Newton's law of cooling and first-order decay are the same equation.

use crate::chemistry::Band;

/// Fewest readings a fit can be made from.
pub const FEWEST_READINGS: usize = 2;
/// Steps after which a fit that has not settled is given up.
const MOST_STEPS: usize = 60;

/// Two-sided 95 % quantiles of Student's distribution for 1 to 10 degrees of freedom.
///
/// *Source*: Student's t table, as in NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2 (from memory).
const STUDENT: [f64; 10] = [12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228];
/// The same of the normal distribution.
const NORMAL: f64 = 1.960;

/// A reading at a time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReadingAt {
    /// When, in a unit of the caller's.
    pub time: f64,
    /// What was read.
    pub value: f64,
}

/// Why readings give no curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum DecayError {
    /// There are fewer than two readings at different times.
    #[error("fewer than two readings at different times")]
    TooFew,
    /// A reading is not above the value it all dies away to.
    #[error("a reading is not above the floor")]
    UnderFloor,
    /// The readings do not fall.
    #[error("the readings do not fall")]
    DoesNotFall,
    /// The value asked for is never reached, or is passed already at every time.
    #[error("the value is not between the floor and the first reading")]
    NeverReached,
}

impl DecayError {
    /// Every code of this error.
    pub const CODES: [&'static str; 4] =
        ["decay.too-few", "decay.under-floor", "decay.does-not-fall", "decay.never-reached"];

    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::TooFew => "decay.too-few",
            Self::UnderFloor => "decay.under-floor",
            Self::DoesNotFall => "decay.does-not-fall",
            Self::NeverReached => "decay.never-reached",
        }
    }
}

/// A curve fitted to readings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Decay {
    /// Value it all dies away to.
    pub floor: f64,
    /// Height above the floor at time nothing.
    pub height: f64,
    /// Rate per unit of time.
    pub rate: f64,
    /// Covariance of height and rate: variances and covariance.
    covariance: [f64; 3],
    /// Standard deviations that hold 95 %.
    spread: f64,
}

/// Fits a curve by least squares.
///
/// `accuracy` is the standard deviation of one reading that the instrument is known to have. If the readings scatter
/// more than that around the curve, their own scatter counts instead, with Student's factor for so few.
///
/// *Units*: time and value as the caller has them. *Valid for* a constant floor: constant surroundings, no change of
/// phase. *Source*: Newton's law of cooling; Gauss-Newton least squares with the usual linear covariance.
///
/// # Errors
/// `decay.too-few`, `decay.under-floor`, `decay.does-not-fall`.
///
/// ```
/// use stillroom_core::decay::{ReadingAt, fit};
/// // 70 °C falling towards 20 °C, at half the difference after 10 minutes.
/// let readings = [ReadingAt { time: 0.0, value: 70.0 }, ReadingAt { time: 10.0, value: 45.0 }];
/// let cooling = fit(&readings, 20.0, 0.5)?;
/// assert!((cooling.time_to(32.5)?.estimate - 20.0).abs() < 1e-9);
/// # Ok::<(), stillroom_core::decay::DecayError>(())
/// ```
pub fn fit(readings: &[ReadingAt], floor: f64, accuracy: f64) -> Result<Decay, DecayError> {
    let first = readings.first().ok_or(DecayError::TooFew)?;
    if readings.len() < FEWEST_READINGS || readings.iter().all(|each| each.time.total_cmp(&first.time).is_eq()) {
        return Err(DecayError::TooFew);
    }
    // Not “<=”: what is not a number is no reading above the floor either.
    if !readings.iter().all(|each| each.value > floor && each.time.is_finite() && each.value.is_finite()) {
        return Err(DecayError::UnderFloor);
    }
    let (mut height, mut rate) = through_logarithms(readings, floor);
    let mut sum = squares(readings, floor, height, rate);
    for _ in 0..MOST_STEPS {
        let normal = Normal::of(readings, floor, height, rate);
        let Some((up, faster)) = normal.solve() else { break };
        // Half the step until it helps: far from the solution a whole one may overshoot.
        let mut share = 1.0;
        let mut better = false;
        while share > 1e-6 {
            let (tried_height, tried_rate) = (height + share * up, rate + share * faster);
            let tried = squares(readings, floor, tried_height, tried_rate);
            if tried_height > 0.0 && tried < sum {
                (height, rate, sum, better) = (tried_height, tried_rate, tried, true);
                break;
            }
            share /= 2.0;
        }
        if !better || (up.abs() < 1e-12 * height.abs() && faster.abs() < 1e-12 * rate.abs()) {
            break;
        }
    }
    // A fall too small for any instrument is what rounding makes of none.
    let longest = readings.iter().map(|each| (each.time - first.time).abs()).fold(0.0, f64::max);
    let falls = rate * longest > 1e-9;
    if !falls || !rate.is_finite() || !height.is_finite() {
        return Err(DecayError::DoesNotFall);
    }
    let inverse = Normal::of(readings, floor, height, rate).inverse().ok_or(DecayError::TooFew)?;
    let freedom = readings.len() - 2;
    // A count of readings fits an f64 exactly.
    #[expect(clippy::cast_precision_loss)]
    let scatter = if freedom == 0 { 0.0 } else { (sum / freedom as f64).sqrt() };
    let (deviation, spread) = if scatter > accuracy && freedom > 0 {
        (scatter, STUDENT.get(freedom - 1).copied().unwrap_or(NORMAL))
    } else {
        (accuracy, NORMAL)
    };
    let covariance = inverse.map(|each| each * deviation * deviation);
    Ok(Decay { floor, height, rate, covariance, spread })
}

/// A straight line through the logarithms: where the search begins.
fn through_logarithms(readings: &[ReadingAt], floor: f64) -> (f64, f64) {
    let [mut count, mut times, mut logs, mut squared, mut products] = [0.0; 5];
    for each in readings {
        let log = (each.value - floor).ln();
        count += 1.0;
        times += each.time;
        logs += log;
        squared += each.time * each.time;
        products += each.time * log;
    }
    let slope = (count * products - times * logs) / (count * squared - times * times);
    (((logs - slope * times) / count).exp(), -slope)
}

fn squares(readings: &[ReadingAt], floor: f64, height: f64, rate: f64) -> f64 {
    let off = |each: &ReadingAt| each.value - floor - height * (-rate * each.time).exp();
    readings.iter().map(|each| off(each) * off(each)).sum()
}

/// The normal equations of one step.
struct Normal {
    heights: f64,
    both: f64,
    rates: f64,
    by_height: f64,
    by_rate: f64,
}

impl Normal {
    fn of(readings: &[ReadingAt], floor: f64, height: f64, rate: f64) -> Self {
        let mut normal = Self { heights: 0.0, both: 0.0, rates: 0.0, by_height: 0.0, by_rate: 0.0 };
        for each in readings {
            let left = (-rate * each.time).exp();
            let (per_height, per_rate) = (left, -height * each.time * left);
            let off = each.value - floor - height * left;
            normal.heights += per_height * per_height;
            normal.both += per_height * per_rate;
            normal.rates += per_rate * per_rate;
            normal.by_height += per_height * off;
            normal.by_rate += per_rate * off;
        }
        normal
    }

    fn determinant(&self) -> f64 {
        self.heights * self.rates - self.both * self.both
    }

    fn solve(&self) -> Option<(f64, f64)> {
        let [heights, both, rates] = self.inverse()?;
        Some((heights * self.by_height + both * self.by_rate, both * self.by_height + rates * self.by_rate))
    }

    fn inverse(&self) -> Option<[f64; 3]> {
        let determinant = self.determinant();
        let sound = determinant.is_finite() && determinant > f64::EPSILON * self.heights * self.rates;
        sound.then(|| [self.rates / determinant, -self.both / determinant, self.heights / determinant])
    }
}

impl Decay {
    /// The value at a time.
    #[must_use]
    pub fn at(&self, time: f64) -> f64 {
        self.floor + self.height * (-self.rate * time).exp()
    }

    /// When a value is reached, with the band that holds it in 95 of 100 cases.
    ///
    /// # Errors
    /// `decay.never-reached` for a value that is not above the floor.
    pub fn time_to(&self, value: f64) -> Result<Band, DecayError> {
        let above = value - self.floor;
        if above.is_nan() || above <= 0.0 {
            return Err(DecayError::NeverReached);
        }
        let estimate = (self.height / above).ln() / self.rate;
        let (per_height, per_rate) = (1.0 / (self.height * self.rate), -estimate / self.rate);
        let [heights, both, rates] = self.covariance;
        let variance =
            per_height * per_height * heights + 2.0 * per_height * per_rate * both + per_rate * per_rate * rates;
        let half = self.spread * variance.max(0.0).sqrt();
        Ok(Band { low: estimate - half, estimate, high: estimate + half })
    }

    /// Time in which half of what is above the floor is gone. Its upper end is `None` where the readings do not rule out
    /// that nothing fades at all.
    #[must_use]
    pub fn half_life(&self) -> HalfLife {
        let half = self.spread * self.covariance[2].max(0.0).sqrt();
        let of = |rate: f64| core::f64::consts::LN_2 / rate;
        HalfLife {
            low: of(self.rate + half),
            estimate: of(self.rate),
            high: (self.rate > half).then(|| of(self.rate - half)),
        }
    }
}

/// A half-life and its band.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HalfLife {
    /// Shortest it may be.
    pub low: f64,
    /// Most likely.
    pub estimate: f64,
    /// Longest it may be; `None` if it may be endless.
    pub high: Option<f64>,
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn readings(of: &[(f64, f64)]) -> Vec<ReadingAt> {
        of.iter().map(|&(time, value)| ReadingAt { time, value }).collect()
    }

    #[test]
    fn what_gives_no_curve_says_why() {
        let code = |of: &[(f64, f64)]| fit(&readings(of), 20.0, 0.5).unwrap_err().code();
        assert_eq!(code(&[]), "decay.too-few");
        assert_eq!(code(&[(0.0, 70.0)]), "decay.too-few");
        assert_eq!(code(&[(3.0, 70.0), (3.0, 60.0)]), "decay.too-few");
        assert_eq!(code(&[(0.0, 70.0), (5.0, 20.0)]), "decay.under-floor");
        assert_eq!(code(&[(0.0, f64::NAN), (5.0, 30.0)]), "decay.under-floor");
        assert_eq!(code(&[(0.0, 50.0), (5.0, 60.0)]), "decay.does-not-fall");
        assert_eq!(code(&[(0.0, 50.0), (5.0, 50.0)]), "decay.does-not-fall");
        let cooling = fit(&readings(&[(0.0, 70.0), (5.0, 60.0)]), 20.0, 0.5).unwrap();
        assert_eq!(cooling.time_to(20.0).unwrap_err().code(), "decay.never-reached");
    }

    #[test]
    fn a_fade_within_the_noise_has_no_longest_half_life() {
        let fade = fit(&readings(&[(0.0, 30.0), (7.0, 29.8), (30.0, 29.5)]), 0.0, 1.0).unwrap();
        assert_eq!(fade.half_life().high, None);
        let fade = fit(&readings(&[(0.0, 30.0), (7.0, 22.0), (30.0, 8.0)]), 0.0, 1.0).unwrap();
        let half = fade.half_life();
        assert!(half.low < half.estimate && half.high.is_some_and(|high| half.estimate < high));
    }

    proptest! {
        /// Source: the exact solution of Newton's law of cooling.
        #[test]
        fn exact_readings_give_the_curve_back(
            floor in 0.0..30.0f64, height in 5.0..70.0f64, minutes in 5.0..120.0f64,
            times in prop::collection::vec(0.5..30.0f64, 1..8),
        ) {
            let rate = core::f64::consts::LN_2 / minutes;
            let mut at: Vec<f64> = times.iter().scan(0.0, |now, step| { *now += step; Some(*now) }).collect();
            at.insert(0, 0.0);
            // Readings of a batch that has reached the room carry no information.
            prop_assume!(rate * at[at.len() - 1] < 8.0);
            let exact: Vec<ReadingAt> =
                at.iter().map(|&time| ReadingAt { time, value: floor + height * (-rate * time).exp() }).collect();
            let found = fit(&exact, floor, 0.1).unwrap();
            prop_assert!((found.rate / rate - 1.0).abs() < 1e-6, "{} {}", found.rate, rate);
            let wanted = floor + height / 3.0;
            let time = found.time_to(wanted).unwrap();
            prop_assert!((time.estimate / (3f64.ln() / rate) - 1.0).abs() < 1e-6);
            prop_assert!(time.low < time.estimate && time.estimate < time.high);
        }
    }
}
