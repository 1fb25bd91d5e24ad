//! How a substance parts between oil and water.

/// What a preservative parts between: oil, micelles, and its own dissociated form.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Losses {
    /// Share of it in the water that is not dissociated, 0 to 1.
    pub undissociated: f64,
    /// Volume of the oil over that of the water.
    pub oil_to_water: f64,
    /// Concentration of the undissociated form in oil over that in water.
    pub coefficient: f64,
    /// Percent of surfactant in the water.
    pub surfactant: f64,
    /// Total over free in the water is one and this times the percent of surfactant.
    pub binding: f64,
}

/// Of the dissociated form micelles hold so much of what they hold of the other (an order of magnitude, from memory).
const ION_IS_HELD: f64 = 0.1;

/// Free and undissociated concentration in the water: what acts on microbes.
///
/// `[HA] = a C (φ + 1) / (a K φ + a (1 + k S) + (1 - a)(1 + k_ion S))`, which for what does not dissociate is
/// `C (φ + 1) / (K φ + R)` with `R = 1 + k S`. The answer is in the unit of `overall`, the concentration in the whole.
///
/// *Source:* Bean, J. Soc. Cosmet. Chem. 23:703 (1972); Kazmi and Mitchell, J. Pharm. Sci. 67:1260 (1978) (both from
/// memory).
///
/// ```
/// use stillroom_core::chemistry::partition::{Losses, free_and_undissociated};
/// // Phenoxyethanol at 0.9 % with a quarter of peanut oil and 3 % of polysorbate in the water: about half acts.
/// let losses =
///     Losses { undissociated: 1.0, oil_to_water: 0.25, coefficient: 2.6, surfactant: 3.0, binding: 0.183 };
/// assert!((free_and_undissociated(0.9, losses) - 0.5116).abs() < 1e-4);
/// ```
#[must_use]
pub fn free_and_undissociated(overall: f64, losses: Losses) -> f64 {
    let Losses { undissociated: share, oil_to_water, coefficient, surfactant, binding } = losses;
    let in_oil = share * coefficient * oil_to_water;
    let as_acid = share * (1.0 + binding * surfactant);
    let as_ion = (1.0 - share) * (1.0 + binding * ION_IS_HELD * surfactant);
    share * overall * (oil_to_water + 1.0) / (in_oil + as_acid + as_ion)
}

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
