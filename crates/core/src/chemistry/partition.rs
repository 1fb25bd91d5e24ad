//! How a substance parts between oil and water.

/// Concentration in the water of an emulsion (Bean, J. Soc. Cosmet. Chem. 23:703, 1972): `C (φ + 1) / (K φ + 1)`.
///
/// `overall` is the concentration in the whole by volume, `coefficient` the concentration in oil over that in water, and
/// `oil_to_water` the volume of oil over that of water. The answer is in the unit of `overall`.
///
/// ```
/// use stillroom_core::chemistry::partition::in_water;
/// // What parts evenly is the same in both.
/// assert!((in_water(0.3, 1.0, 0.25) - 0.3).abs() < 1e-12);
/// ```
#[must_use]
pub fn in_water(overall: f64, coefficient: f64, oil_to_water: f64) -> f64 {
    overall * (oil_to_water + 1.0) / (coefficient * oil_to_water + 1.0)
}
