//! Beyond the kitchen: what changes when the same formula is made in a larger vessel. Percent do not; times and speeds do.
//!
//! Each answer is an estimate with a band. The vessels are taken to be of one shape, upright cylinders as high as they are wide,
//! so that lengths grow as the third root of the volume; a maker who measures knows better.

use crate::chemistry::{Band, PhysicsError, Range};
use crate::quantity::{Density, Grams};
use crate::source::{Basis, Citation};
use core::f64::consts::PI;

/// Where the energy balance and cooling stand.
///
/// *Source*: Incropera, `DeWitt`, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, 6th edition 2007, from memory:
/// sections 1.3 (conservation of energy) and 5.1 (lumped capacitance), table 1.1 (coefficients).
pub const HEAT_TRANSFER: Citation = Citation {
    source: "Incropera, DeWitt, Bergman, Lavine: Fundamentals of Heat and Mass Transfer",
    locator: "1.3, 5.1, table 1.1",
    as_of: "2007",
    basis: Basis::Memory,
};
/// Where the rules of stirred vessels stand.
///
/// *Source*: `McCabe`, Smith, Harriott, Unit Operations of Chemical Engineering, 7th edition 2005, chapter 9 (agitation and
/// mixing of liquids), from memory.
pub const AGITATION: Citation = Citation {
    source: "McCabe, Smith, Harriott: Unit Operations of Chemical Engineering",
    locator: "chapter 9",
    as_of: "2005",
    basis: Basis::Memory,
};

/// Share of the power of a hot plate or a water bath that reaches what is in the beaker. *Source*: common practice.
pub const EFFICIENCY: Band = Band { estimate: 0.6, low: 0.4, high: 0.8 };
/// Film coefficient from a vessel to still air, in W/(m² K). *Source*: the range of free convection in gases in
/// [`HEAT_TRANSFER`] is 2 to 25; what a vessel radiates at these temperatures adds about 5, so that less than 5 is not found.
pub const TO_STILL_AIR: Band = Band { estimate: 10.0, low: 5.0, high: 25.0 };
/// Depth that covers the head of a blender so that it draws no air, in diameters of the head. *Source*: common practice.
pub const COVER: Band = Band { estimate: 1.5, low: 1.0, high: 2.0 };

const SPECIFIC_HEAT: Range =
    Range { equation: "scale-up", quantity: "specific heat", unit: "kJ/(kg K)", minimum: 0.3, maximum: 5.0 };
const POWER: Range = Range { equation: "scale-up", quantity: "power", unit: "W", minimum: 1.0, maximum: 1e6 };
const MASS: Range = Range { equation: "scale-up", quantity: "mass", unit: "kg", minimum: 1e-3, maximum: 1e4 };
const TEMPERATURE: Range = Range::temperature("scale-up", -20.0, 150.0);
const LENGTH: Range = Range { equation: "scale-up", quantity: "length", unit: "m", minimum: 1e-3, maximum: 10.0 };

/// A batch as heat sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bulk {
    /// How much of it.
    pub mass: Grams,
    /// Its specific heat in kJ/(kg K).
    pub specific_heat: f64,
    /// Its density.
    pub density: Density,
}

impl Bulk {
    fn kilograms(&self) -> Result<f64, PhysicsError> {
        MASS.check(self.mass.to_physics() / 1000.0)
    }

    /// Volume in cubic metres.
    fn volume(&self) -> Result<f64, PhysicsError> {
        // 1 g/mL is 1000 kg/m³.
        Ok(self.kilograms()? / (self.density.to_physics() * 1000.0))
    }

    /// Inner diameter in metres of a cylinder as high as it is wide that this fills.
    ///
    /// V = π D³ ÷ 4.
    ///
    /// # Errors
    /// `physics.out-of-range` for a mass that is no batch.
    pub fn diameter(&self) -> Result<f64, PhysicsError> {
        Ok((4.0 * self.volume()? / PI).cbrt())
    }
}

/// Seconds it takes to heat a batch.
///
/// t = m c (T₂ − T₁) ÷ (P η), nothing melting or evaporating.
///
/// *Units*: °C, W. *Valid for* −20 to 150 °C, 1 g to 10 t. *Source*: conservation of energy ([`HEAT_TRANSFER`]); η see
/// [`EFFICIENCY`].
///
/// # Errors
/// `physics.out-of-range`.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::scale_up::{Bulk, heating_time};
/// use stillroom_core::{Density, Grams};
/// let bulk = |mass| Bulk { mass: Grams::new(mass).unwrap(), specific_heat: 3.8, density: Density::new(dec!(1)).unwrap() };
/// // 10 kg · 3.8 kJ/(kg K) · 50 K ÷ (1 kW · 0.6) = 3167 s.
/// let time = heating_time(&bulk(dec!(10000)), 20.0, 70.0, 1000.0)?;
/// assert!((time.estimate - 3166.7).abs() < 0.1 && time.low < time.estimate && time.estimate < time.high);
/// # Ok::<(), stillroom_core::chemistry::PhysicsError>(())
/// ```
pub fn heating_time(bulk: &Bulk, from: f64, to: f64, power: f64) -> Result<Band, PhysicsError> {
    let rise = TEMPERATURE.check(to)? - TEMPERATURE.check(from)?;
    let joules = bulk.kilograms()? * SPECIFIC_HEAT.check(bulk.specific_heat)? * 1000.0 * rise.max(0.0);
    let seconds = |efficiency: f64| Ok(joules / (POWER.check(power)? * efficiency));
    Ok(Band { estimate: seconds(EFFICIENCY.estimate)?, low: seconds(EFFICIENCY.high)?, high: seconds(EFFICIENCY.low)? })
}

/// Seconds in which a stirred batch cools in still air.
///
/// t = m c ÷ (h A) · ln((T₁ − T₀) ÷ (T₂ − T₀)), A = 3⁄2 π D², the side and both ends of the cylinder: Newton's law of
/// cooling. In vessels of one shape the time grows as the volume by its surface, which is as the length.
///
/// *Units*: °C. *Valid for* −20 to 150 °C, above the air; stirred, so that the batch is of one temperature. *Source*:
/// [`HEAT_TRANSFER`]; h see [`TO_STILL_AIR`].
///
/// # Errors
/// `physics.out-of-range`; also where it never gets as cold as that.
pub fn cooling_time(bulk: &Bulk, from: f64, to: f64, air: f64) -> Result<Band, PhysicsError> {
    let [from, to, air] = [TEMPERATURE.check(from)?, TEMPERATURE.check(to)?, TEMPERATURE.check(air)?];
    if to <= air {
        return Err(PhysicsError::NoData { quantity: "cooling", with: "air as warm as that" });
    }
    let ratio = ((from.max(to) - air) / (to - air)).ln();
    let area = 1.5 * PI * bulk.diameter()?.powi(2);
    let capacity = bulk.kilograms()? * SPECIFIC_HEAT.check(bulk.specific_heat)? * 1000.0;
    let seconds = |film: f64| capacity / (film * area) * ratio;
    Ok(Band {
        estimate: seconds(TO_STILL_AIR.estimate),
        low: seconds(TO_STILL_AIR.high),
        high: seconds(TO_STILL_AIR.low),
    })
}

/// How a larger blender is driven so that it does the same, each as a multiple of what it was.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mixing {
    /// The diameter of its head and of the vessel.
    pub length: f64,
    /// Turns a minute at an equal speed of the tip: shear as it was.
    pub turns_at_tip_speed: f64,
    /// Time for as much energy in each gram at that speed.
    pub time_at_tip_speed: f64,
    /// Turns a minute at an equal power per volume: drops as they were. As much energy in each gram takes as long as before.
    pub turns_at_power: f64,
}

/// Scales mixing up between vessels of one shape.
///
/// Lengths grow as the third root of the volume, D₂ ÷ D₁ = (m₂ ÷ m₁)^⅓. The tip is as fast at N₂ = N₁ D₁ ÷ D₂. In turbulent
/// flow P ~ ρ N³ D⁵, so that P ÷ V ~ N³ D²: it is equal at N₂ = N₁ (D₁ ÷ D₂)^⅔, and at an equal tip speed it falls as D₁ ÷ D₂,
/// so that as much energy for each gram takes D₂ ÷ D₁ times as long.
///
/// *Valid for* turbulent flow and one shape; thick creams are stirred far below that, where it is a rough guide. *Source*:
/// [`AGITATION`].
///
/// # Errors
/// `physics.out-of-range`.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::Grams;
/// use stillroom_core::scale_up::mixing;
/// // From 100 g to 10 kg: 100^⅓ = 4.6416, and 4.6416^⅔ = 2.7826.
/// let larger = mixing(Grams::new(dec!(100))?, Grams::new(dec!(10000))?)?;
/// assert!((larger.length - 4.6416).abs() < 1e-4);
/// assert!((1.0 / larger.turns_at_tip_speed - 4.6416).abs() < 1e-4);
/// assert!((1.0 / larger.turns_at_power - 2.7826).abs() < 1e-4);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn mixing(from: Grams, to: Grams) -> Result<Mixing, PhysicsError> {
    let kilograms = |mass: Grams| MASS.check(mass.to_physics() / 1000.0);
    let length = (kilograms(to)? / kilograms(from)?).cbrt();
    Ok(Mixing {
        length,
        turns_at_tip_speed: 1.0 / length,
        time_at_tip_speed: length,
        turns_at_power: length.powf(-2.0 / 3.0),
    })
}

/// Least mass in grams that a blender can work on in a vessel: its head has to be covered.
///
/// m = ρ · π ÷ 4 · D² · k d, D the vessel, d the head.
///
/// *Units*: m. *Source*: volume of a cylinder; k see [`COVER`].
///
/// # Errors
/// `physics.out-of-range`.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::Density;
/// use stillroom_core::scale_up::minimum_fill;
/// // A head of 6 cm in a vessel of 24 cm: 1.0 g/mL · π ÷ 4 · 24² cm² · 1.5 · 6 cm = 4072 g.
/// let least = minimum_fill(0.24, 0.06, Density::new(dec!(1))?)?;
/// assert!((least.estimate - 4071.5).abs() < 0.1);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn minimum_fill(vessel: f64, head: f64, density: Density) -> Result<Band, PhysicsError> {
    let floor = PI / 4.0 * LENGTH.check(vessel)?.powi(2);
    let head = LENGTH.check(head)?;
    // 1 g/mL is 10⁶ g/m³.
    let grams = |cover: f64| floor * head * cover * density.to_physics() * 1e6;
    Ok(Band { estimate: grams(COVER.estimate), low: grams(COVER.low), high: grams(COVER.high) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use rust_decimal::{Decimal, dec};

    fn bulk(grams: Decimal) -> Bulk {
        Bulk { mass: Grams::new(grams).unwrap(), specific_heat: 3.8, density: Density::new(dec!(1)).unwrap() }
    }

    /// Worked by hand. 100 g fill a cylinder of V = 10⁻⁴ m³, D = (4·10⁻⁴ ÷ π)^⅓ = 0.05031 m, A = 3⁄2 π D² = 0.011927 m².
    /// From 70 to 40 °C in air of 20 °C: 0.1 · 3800 ÷ (10 · 0.011927) · ln(50 ÷ 20) = 3186 · 0.91629 = 2919 s.
    #[test]
    fn a_hundred_grams_cool_as_worked_by_hand() {
        let small = bulk(dec!(100));
        assert!((small.diameter().unwrap() - 0.050_308).abs() < 1e-5);
        let time = cooling_time(&small, 70.0, 40.0, 20.0).unwrap();
        assert!((time.estimate - 2919.0).abs() < 2.0, "{time:?}");
        assert!((time.low - time.estimate * 0.4).abs() < 1e-6 && (time.high - time.estimate * 2.0).abs() < 1e-6);
        // A hundred times as much has 100^⅓ as much volume for its surface.
        let large = cooling_time(&bulk(dec!(10000)), 70.0, 40.0, 20.0).unwrap();
        assert!((large.estimate / time.estimate - 4.6416).abs() < 1e-3);
        // As much power takes a hundred times as long.
        let heat = |grams| heating_time(&bulk(grams), 20.0, 70.0, 1000.0).unwrap().estimate;
        assert!((heat(dec!(10000)) / heat(dec!(100)) - 100.0).abs() < 1e-9);
    }

    #[test]
    fn what_never_happens_or_is_no_batch_is_refused() {
        assert!(cooling_time(&bulk(dec!(100)), 70.0, 20.0, 20.0).is_err());
        assert!(cooling_time(&bulk(dec!(0.1)), 70.0, 40.0, 20.0).is_err());
        assert!(heating_time(&bulk(dec!(100)), 20.0, 900.0, 1000.0).is_err());
        assert!(heating_time(&bulk(dec!(100)), 20.0, 70.0, 0.0).is_err());
        assert!(mixing(Grams::ZERO, Grams::new(dec!(100)).unwrap()).is_err());
        // What is as cold as wanted already needs no time.
        assert!(cooling_time(&bulk(dec!(100)), 30.0, 40.0, 20.0).unwrap().estimate.abs() < 1e-9);
        assert!(heating_time(&bulk(dec!(100)), 80.0, 70.0, 1000.0).unwrap().estimate.abs() < 1e-9);
    }

    proptest! {
        /// What the rules say of a larger blender holds in their own terms: N D and N³ D² are what they were.
        #[test]
        fn speeds_keep_what_they_are_to_keep(from in 1_u32..10_000, to in 1_u32..10_000_000) {
            let larger = mixing(Grams::new(from.into()).unwrap(), Grams::new(to.into()).unwrap()).unwrap();
            prop_assert!((larger.turns_at_tip_speed * larger.length - 1.0).abs() < 1e-9);
            prop_assert!((larger.turns_at_power.powi(3) * larger.length.powi(2) - 1.0).abs() < 1e-9);
        }
    }
}
