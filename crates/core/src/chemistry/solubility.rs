//! How much dissolves: between published temperatures, in mixtures of water with other solvents, at a pH.

use super::{PhysicsError, Temperature};
use crate::source::Citation;

/// How far past its last published temperature a curve may be asked, in kelvin. Tables that give one figure "at room
/// temperature" mean about so much.
pub const REACH: f64 = 6.0;

/// One published figure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// In degrees Celsius.
    pub temperature: f64,
    /// Grams of the substance in 100 g of solvent.
    pub grams: f64,
    /// By which factor it may be off either way; 1 for a measured figure.
    pub factor: f64,
    /// Where it was found.
    pub citation: Citation,
}

/// Solubility by temperature.
///
/// Between two points the logarithm of the solubility is a straight line over the reciprocal of the absolute temperature
/// (van 't Hoff). Up to [`REACH`] colder than the first point the line of the first two goes on; up to [`REACH`] warmer
/// than the last the last holds, which is too little rather than too much. Beyond that there is no answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve {
    points: Vec<Point>,
}

impl Curve {
    /// A curve through published points. Of several at one temperature the middle one counts, of two the lower. `None` without
    /// a point.
    #[must_use]
    pub fn through(mut points: Vec<Point>) -> Option<Self> {
        points.retain(|point| point.grams > 0.0 && point.temperature.is_finite() && point.grams.is_finite());
        points.sort_by(|a, b| a.temperature.total_cmp(&b.temperature).then(a.grams.total_cmp(&b.grams)));
        let mut curve: Vec<Point> = Vec::new();
        let mut rest = points.as_slice();
        while let Some(first) = rest.first() {
            let same = rest.partition_point(|point| point.temperature - first.temperature < 0.5);
            let (together, others) = rest.split_at(same);
            let mut together = together.to_vec();
            together.sort_by(|a, b| a.grams.total_cmp(&b.grams));
            curve.extend(together.get((together.len() - 1) / 2));
            rest = others;
        }
        (!curve.is_empty()).then_some(Self { points: curve })
    }

    /// The points, coldest first.
    #[must_use]
    pub fn points(&self) -> &[Point] {
        &self.points
    }

    /// Coldest and warmest temperature it answers for, in degrees Celsius.
    #[must_use]
    pub fn range(&self) -> (f64, f64) {
        let reach = |point: Option<&Point>, by: f64| point.map_or(f64::NAN, |point| point.temperature + by);
        // One figure alone says nothing of how it changes: colder than it there is no answer but the nearest one.
        (reach(self.points.first(), -REACH), reach(self.points.last(), REACH))
    }

    /// Grams of the substance that 100 g of the solvent dissolves.
    ///
    /// # Errors
    /// `physics.out-of-range` further than [`REACH`] from the published temperatures.
    pub fn at(&self, temperature: Temperature) -> Result<f64, PhysicsError> {
        let (coldest, warmest) = self.range();
        let asked = super::Range::temperature("solubility", coldest, warmest).check(temperature.celsius())?;
        let after = self.points.partition_point(|point| point.temperature <= asked);
        let [first, .., last] = self.points.as_slice() else {
            return Ok(self.points.first().map_or(f64::NAN, |only| only.grams));
        };
        if asked >= last.temperature {
            return Ok(last.grams);
        }
        let from = after.saturating_sub(1);
        let (low, high) = (self.points.get(from).unwrap_or(first), self.points.get(from + 1).unwrap_or(last));
        Ok(van_t_hoff((low.temperature, low.grams), (high.temperature, high.grams), asked))
    }

    /// The figures that an answer at a temperature rests on: the one at it, or those on both sides.
    fn around(&self, temperature: f64) -> impl Iterator<Item = &Point> {
        let after = self.points.partition_point(|point| point.temperature <= temperature);
        let exact = |point: &Point| (point.temperature - temperature).abs() < 1e-9;
        let count = if self.points.get(after.saturating_sub(1)).is_some_and(exact) { 1 } else { 2 };
        self.points.iter().skip(after.saturating_sub(1)).take(count)
    }

    /// Where the figures were found that an answer at a temperature rests on.
    pub fn citations(&self, temperature: f64) -> impl Iterator<Item = Citation> {
        self.around(temperature).map(|point| point.citation)
    }

    /// By which factor an answer at a temperature may be off either way.
    #[must_use]
    pub fn factor(&self, temperature: f64) -> f64 {
        self.around(temperature).map(|point| point.factor).fold(1.0, f64::max)
    }
}

/// The straight line of `ln s` over `1 / T` through two points.
fn van_t_hoff((t0, s0): (f64, f64), (t1, s1): (f64, f64), t: f64) -> f64 {
    let reciprocal = |celsius: f64| 1.0 / (celsius + 273.15);
    let share = (reciprocal(t) - reciprocal(t0)) / (reciprocal(t1) - reciprocal(t0));
    (s0.ln() + share * (s1.ln() - s0.ln())).exp()
}

/// How many times more a mixture dissolves than water: `10 ^ Σ σ f`, the log-linear rule of Yalkowsky.
///
/// `parts` are the power σ of each pure cosolvent and its share f of the solvent by volume, 0 to 1. The rule misses by
/// 0.3 to 0.5 of a logarithm as a matter of course; what is made with it is an estimate.
#[must_use]
pub fn cosolvency(parts: &[(f64, f64)]) -> f64 {
    10_f64.powf(parts.iter().map(|(power, share)| power * share).sum())
}

/// The power σ of a pure cosolvent from the octanol-water partition: `intercept + slope × log Kow` (Li and Yalkowsky,
/// Ind. Eng. Chem. Res. 37:4470, 1998).
#[must_use]
pub fn cosolvent_power(log_kow: f64, intercept: f64, slope: f64) -> f64 {
    intercept + slope * log_kow
}

#[cfg(test)]
mod tests {
    use super::*;

    fn curve(points: &[(f64, f64)]) -> Curve {
        let citation = Citation::published("a table");
        let points =
            points.iter().map(|&(temperature, grams)| Point { temperature, grams, factor: 1.0, citation }).collect();
        Curve::through(points).unwrap()
    }

    fn at(curve: &Curve, celsius: f64) -> Result<f64, PhysicsError> {
        curve.at(Temperature::new(celsius)?)
    }

    #[test]
    fn a_curve_meets_its_points_and_rises_between_them() {
        let benzoic = curve(&[(0.0, 0.17), (18.0, 0.27), (25.0, 0.344), (50.0, 0.95)]);
        assert!((at(&benzoic, 18.0).unwrap() - 0.27).abs() < 1e-12);
        let between = at(&benzoic, 10.0).unwrap();
        assert!(between > 0.17 && between < 0.27);
        assert!(at(&benzoic, -3.0).unwrap() < 0.17);
        assert!((at(&benzoic, 54.0).unwrap() - 0.95).abs() < 1e-12);
        assert_eq!(at(&benzoic, 60.0).unwrap_err().code(), "physics.out-of-range");
        assert_eq!(at(&benzoic, -7.0).unwrap_err().code(), "physics.out-of-range");
    }

    #[test]
    fn of_several_figures_at_one_temperature_the_middle_counts_and_of_two_the_lower() {
        let methylparaben = curve(&[(25.0, 0.25), (25.0, 0.203), (25.2, 0.227)]);
        assert!((at(&methylparaben, 25.0).unwrap() - 0.227).abs() < 1e-12);
        let caffeine = curve(&[(25.0, 2.389), (25.0, 2.174)]);
        assert!((at(&caffeine, 25.0).unwrap() - 2.174).abs() < 1e-12);
        assert!(at(&caffeine, 5.0).is_err());
    }

    #[test]
    fn no_points_make_no_curve() {
        assert!(Curve::through(Vec::new()).is_none());
        let citation = Citation::published("a table");
        assert!(Curve::through(vec![Point { temperature: 20.0, grams: f64::NAN, factor: 1.0, citation }]).is_none());
    }
}
