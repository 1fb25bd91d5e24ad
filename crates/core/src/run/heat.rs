//! Heat at the bench: what temperature phases come to when they are combined, and how much of the batch tempers what is
//! added to it.

use crate::chemistry::{Band, PhysicsError, Range};
use crate::decay::{Decay, DecayError, ReadingAt, fit};
use crate::quantity::Grams;
use stillroom_terms::Class;

/// Standard deviation of one reading of a kitchen thermometer, in kelvin. *Source*: common practice (such a thermometer
/// is sold as accurate to 1 °C).
pub const THERMOMETER_ACCURACY: f64 = 0.5;

/// Specific heats that are understood, in kJ/(kg K): from below the lightest mineral to above water.
const SPECIFIC_HEAT: Range =
    Range { equation: "mixing", quantity: "specific heat", unit: "kJ/(kg K)", minimum: 0.3, maximum: 5.0 };
/// Temperatures of liquids at the bench.
const BENCH_TEMPERATURE: Range = Range::temperature("mixing", -20.0, 150.0);

/// What one line brings to a mixture.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Warm {
    /// Its mass.
    pub mass: Grams,
    /// Its specific heat in kJ/(kg K).
    pub specific_heat: f64,
    /// Its temperature in °C.
    pub temperature: f64,
}

/// What a specific heat rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HeatBasis {
    /// A value of that material.
    OfMaterial,
    /// Worked out from what a composite is made of.
    OfParts,
    /// What its class usually has.
    OfClass,
}

/// Specific heat a class of materials usually has, in kJ/(kg K), for a material of which none is known.
///
/// *Valid for* liquids and solids near room temperature; within about a fifth of what a material has.
/// *Source*: round figures over the gathered table of liquids (mostly recalled from handbooks); for powders and salts
/// common practice.
#[must_use]
pub const fn specific_heat_of_class(class: Class) -> f64 {
    match class {
        Class::Water | Class::Extract => 4.0,
        Class::Humectant | Class::Solvent => 2.5,
        Class::Surfactant | Class::Protein => 3.4,
        Class::Oil
        | Class::Butter
        | Class::Emollient
        | Class::Emulsifier
        | Class::Preservative
        | Class::Antioxidant
        | Class::Active => 2.0,
        Class::Wax => 2.1,
        Class::FattyAlcohol | Class::FattyAcid => 2.2,
        Class::EssentialOil | Class::Fragrance => 1.8,
        Class::Thickener | Class::Exfoliant | Class::Chelator | Class::PhAdjuster | Class::Other => 1.4,
        Class::Salt | Class::Mineral | Class::Colourant => 0.9,
    }
}

/// Temperature of a mixture before it loses heat to the beaker or the room.
///
/// T = Σ m·c·T ÷ Σ m·c.
///
/// *Units*: g, kJ/(kg K), °C. *Valid for* −20 to 150 °C, nothing melting, setting or boiling: for
/// what melts or sets see [`mixing_temperature_with_fusion`]. *Source*: conservation of energy.
///
/// # Errors
/// `physics.out-of-range`; `physics.no-data` for no mass at all.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::Grams;
/// use stillroom_core::run::heat::{Warm, mixing_temperature};
/// let part = |mass, specific_heat, temperature| Warm { mass: Grams::new(mass).unwrap(), specific_heat, temperature };
/// let mixed = mixing_temperature(&[part(dec!(150), 4.18, 75.0), part(dec!(50), 2.0, 70.0)])?;
/// assert!((mixed - 74.31).abs() < 0.01);
/// assert!(mixing_temperature(&[]).is_err());
/// # Ok::<(), stillroom_core::chemistry::PhysicsError>(())
/// ```
pub fn mixing_temperature(parts: &[Warm]) -> Result<f64, PhysicsError> {
    let (mut heat, mut capacity) = (0.0, 0.0);
    for part in parts {
        let own = part.mass.to_physics() * SPECIFIC_HEAT.check(part.specific_heat)?;
        heat += own * BENCH_TEMPERATURE.check(part.temperature)?;
        capacity += own;
    }
    if capacity > 0.0 { Ok(heat / capacity) } else { Err(PhysicsError::NoData { quantity: "mass", with: "nothing" }) }
}

/// What melts or sets in a mixture.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fusion {
    /// Temperature in °C at which it melts and sets.
    pub melts_at: f64,
    /// Heat that melting takes up and setting gives off, in kJ/kg.
    pub heat: f64,
}

/// Heats of fusion that are understood, in kJ/kg: from fats that hardly crystallise to ice.
const HEAT_OF_FUSION: Range =
    Range { equation: "mixing", quantity: "heat of fusion", unit: "kJ/kg", minimum: 0.0, maximum: 500.0 };

/// Temperature of a mixture in which something melts or sets, before it loses heat to the beaker or the room.
///
/// The heat that each part holds, `m·c·T` and `m·L` where it is molten, is the same before and after. A part begins molten
/// if it is as warm as it melts. Where the sum is met at a melting point, that much of the part stays solid and the mixture
/// stands at that temperature.
///
/// *Units*: g, kJ/(kg K), kJ/kg, °C. *Valid for* −20 to 150 °C; parts that melt alone at their own temperature: dissolved in
/// an oil they melt lower, and supercooled ones set later. The same specific heat is used solid and molten. *Source*:
/// conservation of energy; a worked example of a textbook is among the tests.
///
/// # Errors
/// Those of [`mixing_temperature`]; `physics.out-of-range` for a heat of fusion or a melting point.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::Grams;
/// use stillroom_core::run::heat::{Fusion, Warm, mixing_temperature_with_fusion};
/// let part = |mass, specific_heat, temperature| Warm { mass: Grams::new(mass).unwrap(), specific_heat, temperature };
/// let acid = Fusion { melts_at: 69.3, heat: 199.0 };
/// // Stearic acid at room temperature, melted in hot oil: nine degrees cooler than without its heat of fusion.
/// let parts = [(part(dec!(80), 2.0, 90.0), None), (part(dec!(20), 2.0, 20.0), Some(acid))];
/// let mixed = mixing_temperature_with_fusion(&parts)?;
/// assert!((mixed - 69.3).abs() < 1e-6, "part of it stays solid: {mixed}");
/// # Ok::<(), stillroom_core::chemistry::PhysicsError>(())
/// ```
pub fn mixing_temperature_with_fusion(parts: &[(Warm, Option<Fusion>)]) -> Result<f64, PhysicsError> {
    let warm: Vec<Warm> = parts.iter().map(|(part, _)| *part).collect();
    let without = mixing_temperature(&warm)?;
    let mut fusing = Vec::new();
    for (part, fusion) in parts {
        if let Some(fusion) = fusion {
            let melts_at = BENCH_TEMPERATURE.check(fusion.melts_at)?;
            let latent = part.mass.to_physics() * HEAT_OF_FUSION.check(fusion.heat)?;
            fusing.push((melts_at, latent, part.temperature >= melts_at));
        }
    }
    let capacity: f64 = warm.iter().map(|part| part.mass.to_physics() * part.specific_heat).sum();
    // Heat to be found above what the parts hold at the plain mixing temperature: molten beforehand gives, molten afterwards
    // takes.
    let given: f64 = fusing.iter().filter(|(.., molten)| *molten).map(|(_, latent, _)| latent).sum();
    let mut steps: Vec<(f64, f64)> = fusing.iter().map(|(melts_at, latent, _)| (*melts_at, *latent)).collect();
    steps.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut taken = 0.0;
    for (melts_at, latent) in steps {
        // Where the mixture would stand if all that melts below were molten and this were solid.
        let solid = without + (given - taken) / capacity;
        if solid < melts_at {
            return Ok(solid);
        }
        taken += latent;
        if without + (given - taken) / capacity < melts_at {
            return Ok(melts_at);
        }
    }
    Ok(without + (given - taken) / capacity)
}

/// Specific heat of a mixture: Σ m·c ÷ Σ m.
///
/// *Units*: kJ/(kg K). *Source*: ideal mixing; a real mixture of glycerin and water has up to 3 % more (evidence set
/// `heat.specific-heat`).
///
/// # Errors
/// Those of [`mixing_temperature`].
pub fn specific_heat_of(parts: &[Warm]) -> Result<f64, PhysicsError> {
    let (mut sum, mut mass) = (0.0, 0.0);
    for part in parts {
        sum += part.mass.to_physics() * SPECIFIC_HEAT.check(part.specific_heat)?;
        mass += part.mass.to_physics();
    }
    if mass > 0.0 { Ok(sum / mass) } else { Err(PhysicsError::NoData { quantity: "mass", with: "nothing" }) }
}

/// How much of the warm batch to stir into a dish first, so that the dish comes to a temperature between the two.
///
/// `m = m_dish·c_dish·(T − T_dish) ÷ (c_batch·(T_batch − T))`.
///
/// *Units*: g, kJ/(kg K), °C. *Source*: conservation of energy.
///
/// # Errors
/// `physics.out-of-range` unless the wanted temperature lies between dish and batch.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::Grams;
/// use stillroom_core::run::heat::{Warm, mass_to_temper};
/// let dish = Warm { mass: Grams::new(dec!(12)).unwrap(), specific_heat: 3.0, temperature: 20.0 };
/// let taken = mass_to_temper(dish, 3.6, 40.0, 30.0)?;
/// assert!((taken - 10.0).abs() < 1e-9);
/// # Ok::<(), stillroom_core::chemistry::PhysicsError>(())
/// ```
pub fn mass_to_temper(dish: Warm, batch_specific_heat: f64, batch: f64, wanted: f64) -> Result<f64, PhysicsError> {
    let between = |minimum, maximum| Range::temperature("tempering", minimum, maximum);
    let batch = BENCH_TEMPERATURE.check(batch)?;
    let cold = BENCH_TEMPERATURE.check(dish.temperature)?;
    between(cold, batch).check(wanted)?;
    // Nearer to the batch than this, the mass wanted grows past any batch.
    between(cold, batch - 0.5).check(wanted)?;
    let takes_up = dish.mass.to_physics() * SPECIFIC_HEAT.check(dish.specific_heat)? * (wanted - cold);
    Ok(takes_up / (SPECIFIC_HEAT.check(batch_specific_heat)? * (batch - wanted)))
}

/// A batch that cools, and when it will be cool enough.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cooling {
    /// The curve.
    pub curve: Decay,
    /// Minutes after the first reading at which the wanted temperature is reached, with its band.
    pub reached: Band,
}

/// When a batch reaches a temperature, from readings of a thermometer.
///
/// *Units*: minutes since the first reading, °C. *Valid for* a stirred batch in a room of constant temperature, nothing
/// setting. *Source*: Newton's law of cooling, held by the evidence set `cooling.exact`.
///
/// # Errors
/// Those of [`fit`] and [`Decay::time_to`]: `decay.too-few`, `decay.under-floor`, `decay.does-not-fall`,
/// `decay.never-reached`.
pub fn predict_cooling(readings: &[ReadingAt], room: f64, wanted: f64) -> Result<Cooling, DecayError> {
    let curve = fit(readings, room, THERMOMETER_ACCURACY)?;
    Ok(Cooling { curve, reached: curve.time_to(wanted)? })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use rust_decimal::Decimal;

    fn any_part() -> impl Strategy<Value = Warm> {
        (1i64..100_000, 0.8..4.2f64, 0.0..90.0f64).prop_map(|(mass, specific_heat, temperature)| Warm {
            mass: Grams::new(Decimal::new(mass, 2)).unwrap(),
            specific_heat,
            temperature,
        })
    }

    #[test]
    fn a_temperature_no_bench_has_is_refused() {
        let part = Warm { mass: Grams::new(Decimal::TEN).unwrap(), specific_heat: 4.18, temperature: 400.0 };
        assert_eq!(mixing_temperature(&[part]).unwrap_err().code(), "physics.out-of-range");
        assert_eq!(
            mass_to_temper(Warm { temperature: 20.0, ..part }, 4.0, 40.0, 41.0).unwrap_err().code(),
            "physics.out-of-range"
        );
        assert_eq!(mixing_temperature(&[]).unwrap_err().code(), "physics.no-data");
    }

    /// Three ice cubes of 6 g at 0 °C in 0.25 kg of soda water at 20 °C come to 13 °C: `OpenStax`, College Physics,
    /// example 14.4 (from memory), with 334 kJ/kg and 4.186 kJ/(kg K).
    #[test]
    fn ice_cools_a_drink_as_the_textbook_says() {
        let part = |grams: i64, temperature| Warm {
            mass: Grams::new(Decimal::from(grams)).unwrap(),
            specific_heat: 4.186,
            temperature,
        };
        let ice = Fusion { melts_at: 0.0, heat: 334.0 };
        // A hair below its melting point it is ice.
        let mixed = mixing_temperature_with_fusion(&[(part(250, 20.0), None), (part(18, -0.001), Some(ice))]).unwrap();
        assert!((mixed - 13.0).abs() < 0.5, "{mixed}");
        let too_hot = Fusion { melts_at: 300.0, heat: 334.0 };
        let refused = mixing_temperature_with_fusion(&[(part(1, 20.0), Some(too_hot))]).unwrap_err();
        assert_eq!(refused.code(), "physics.out-of-range");
    }

    proptest! {
        #[test]
        fn heat_is_neither_made_nor_lost_when_something_melts(
            parts in prop::collection::vec((any_part(), prop::option::of((25.0..85.0f64, 50.0..300.0f64))), 1..6),
        ) {
            let parts: Vec<(Warm, Option<Fusion>)> = parts
                .into_iter()
                .map(|(part, fusion)| (part, fusion.map(|(melts_at, heat)| Fusion { melts_at, heat })))
                .collect();
            let mixed = mixing_temperature_with_fusion(&parts).unwrap();
            // What the parts hold at a temperature, once with everything that melts there solid and once molten.
            let held = |temperature: Option<f64>, melts: bool| -> f64 {
                parts.iter().map(|(part, fusion)| {
                    let at = temperature.unwrap_or(part.temperature);
                    let molten = fusion.filter(|f| at > f.melts_at + 1e-9 || (melts && at >= f.melts_at - 1e-9));
                    part.mass.to_physics() * (part.specific_heat * at + molten.map_or(0.0, |f| f.heat))
                }).sum()
            };
            let before = held(None, true);
            let slack = before.abs() * 1e-9 + 1e-6;
            prop_assert!(held(Some(mixed), false) - slack <= before && before <= held(Some(mixed), true) + slack);
        }

        #[test]
        fn a_mixture_lies_between_its_coldest_and_its_warmest(parts in prop::collection::vec(any_part(), 1..8)) {
            let mixed = mixing_temperature(&parts).unwrap();
            let coldest = parts.iter().map(|part| part.temperature).fold(f64::INFINITY, f64::min);
            let warmest = parts.iter().map(|part| part.temperature).fold(f64::NEG_INFINITY, f64::max);
            prop_assert!(mixed >= coldest - 1e-9 && mixed <= warmest + 1e-9);
        }

        #[test]
        fn what_is_taken_out_to_temper_a_dish_brings_it_to_that_temperature(
            dish in any_part(), batch in 25.0..80.0f64, share in 0.05..0.9f64, specific_heat in 1.5..4.2f64,
        ) {
            let dish = Warm { temperature: 18.0, ..dish };
            let wanted = 18.0 + share * (batch - 18.0);
            prop_assume!(batch - wanted > 0.5);
            let taken = mass_to_temper(dish, specific_heat, batch, wanted).unwrap();
            prop_assume!(taken < 1e6 && taken > 1e-3);
            let mass = Grams::new(Decimal::from_f64_retain(taken).unwrap()).unwrap();
            let mixed = mixing_temperature(&[dish, Warm { mass, specific_heat, temperature: batch }]).unwrap();
            prop_assert!((mixed - wanted).abs() < 1e-6);
        }
    }
}
