//! The extract room: plan a plant extract in glycerin, adjust it, verify it, judge whether it keeps, and make up
//! solutions.
//!
//! ```text
//! Plan ── press ──▶ Liquid ── describe ──▶ readings to expect, water activity
//!  ▲                 │  ▲
//!  └─ solve ─ wanted │  └─ adjust: strengthen, dilute, blend, evaporated
//!                    └─ verify: a reading ──▶ glycerin percent
//! ```
//!
//! Masses are [`Decimal`] and conserved: what goes in comes out, as liquid or held back. Physics is `f64`, entered through
//! [`Liquid::masses`].

pub mod adjust;
pub mod describe;
pub mod keeping;
pub mod liquid;
pub mod plan;
pub mod solve;
pub mod stock;
pub mod verify;

pub use adjust::{Addition, Adjusted, Blend, Evaporated};
pub use describe::Description;
pub use keeping::{Keeping, judge_keeping};
pub use liquid::{Level, Liquid, Part, Solids, Solvent};
pub use plan::{MarcRetention, Plan, Plant, Pressed, SolubleShare};
pub use solve::{Circumstances, Size, Strength};
pub use verify::{Reading, Scale, Verified};

use crate::arithmetic::ArithmeticError;
use crate::chemistry::PhysicsError;
use crate::quantity::{Grams, Percent, QuantityError};
use rust_decimal::Decimal;

/// Why the extract room has no answer.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ExtractError {
    /// A result is no quantity any more.
    #[error(transparent)]
    Quantity(#[from] QuantityError),
    /// A sum has no answer.
    #[error(transparent)]
    Arithmetic(#[from] ArithmeticError),
    /// An equation does not reach there.
    #[error(transparent)]
    Physics(#[from] PhysicsError),
    /// A share must lie between nothing and the whole.
    #[error("{quantity} is {value} %, outside {minimum} to {maximum} %")]
    NotAShare {
        /// Which share.
        quantity: &'static str,
        /// What was given.
        value: Decimal,
        /// Least it may be.
        minimum: Decimal,
        /// Most it may be.
        maximum: Decimal,
    },
    /// The marc or the air takes all the liquid there is.
    #[error("{taken:?} are taken from {available:?} of {what}")]
    NothingLeft {
        /// Of what.
        what: &'static str,
        /// How much is taken.
        taken: Grams,
        /// How much there is.
        available: Grams,
    },
    /// The target cannot be reached with what there is.
    #[error("{target} {unit} cannot be reached ({reason:?}); nearest possible is {nearest} {unit}")]
    OutOfReach {
        /// What was asked for.
        target: Decimal,
        /// The nearest that can be had.
        nearest: Decimal,
        /// Unit of both.
        unit: &'static str,
        /// What stands in the way.
        reason: Reason,
    },
    /// A liquid that stood open cannot weigh more than before.
    #[error("{now:?} now is more than {before:?} before")]
    GainedMass {
        /// Mass before.
        before: Grams,
        /// Mass now.
        now: Grams,
    },
    /// No such liquid shows this reading.
    #[error("the reading {reading} lies outside {minimum} to {maximum}, which such a liquid can show")]
    ReadingOutside {
        /// What was read.
        reading: f64,
        /// Least reading such a liquid shows.
        minimum: f64,
        /// Greatest reading such a liquid shows.
        maximum: f64,
    },
    /// Two readings are needed from two kinds of instrument.
    #[error("{count} readings of {kinds} kinds; one reading, or one of each kind, is wanted")]
    UnusableReadings {
        /// How many readings were given.
        count: usize,
        /// Of how many kinds.
        kinds: usize,
    },
}

/// What stands in the way of a target.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reason {
    /// The plant's own water dilutes more than that, even if none is added.
    PlantWater,
    /// Nothing here is strong enough.
    NothingStronger,
    /// Nothing here is weak enough.
    NothingWeaker,
    /// There is not enough of it.
    NotEnough,
}

impl Reason {
    /// Stable code of this reason.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::PlantWater => "plant-water",
            Self::NothingStronger => "nothing-stronger",
            Self::NothingWeaker => "nothing-weaker",
            Self::NotEnough => "not-enough",
        }
    }
}

impl ExtractError {
    /// Every code of this module's own; those of quantity, arithmetic and physics pass through.
    pub const CODES: [&'static str; 6] = [
        "extract.not-a-share",
        "extract.nothing-left",
        "extract.out-of-reach",
        "extract.gained-mass",
        "extract.reading-outside",
        "extract.unusable-readings",
    ];

    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Quantity(error) => error.code(),
            Self::Arithmetic(error) => error.code(),
            Self::Physics(error) => error.code(),
            Self::NotAShare { .. } => "extract.not-a-share",
            Self::NothingLeft { .. } => "extract.nothing-left",
            Self::OutOfReach { .. } => "extract.out-of-reach",
            Self::GainedMass { .. } => "extract.gained-mass",
            Self::ReadingOutside { .. } => "extract.reading-outside",
            Self::UnusableReadings { .. } => "extract.unusable-readings",
        }
    }
}

type Result<T> = core::result::Result<T, ExtractError>;

/// A share between `minimum` and the whole.
fn check_share(quantity: &'static str, share: Percent, minimum: Decimal) -> Result<Decimal> {
    let (value, maximum) = (share.value(), Decimal::ONE_HUNDRED);
    if value < minimum || value > maximum {
        return Err(ExtractError::NotAShare { quantity, value, minimum, maximum });
    }
    Ok(value)
}

/// A share of a mass; the share is known to lie in 0 to 100 %.
fn share_of(mass: Grams, percent: Decimal) -> Result<Grams> {
    scale_mass(mass, percent, Decimal::ONE_HUNDRED)
}

/// Decimal places a computed mass is kept to: with these every sum of masses fits into a decimal, and is exact.
const MASS_PLACES: u32 = 15;

/// `mass · numerator / denominator`, to [`MASS_PLACES`].
fn scale_mass(mass: Grams, numerator: Decimal, denominator: Decimal) -> Result<Grams> {
    let scaled = mass.value().checked_mul(numerator).and_then(|product| product.checked_div(denominator));
    Ok(Grams::new(scaled.ok_or(ArithmeticError::TooLarge)?.round_dp(MASS_PLACES))?)
}

fn add(a: Grams, b: Grams) -> Result<Grams> {
    a.checked_add(b).ok_or(ExtractError::Arithmetic(ArithmeticError::TooLarge))
}

/// What is left of `available` when `taken` goes.
fn take(what: &'static str, available: Grams, taken: Grams) -> Result<Grams> {
    available.checked_sub(taken).ok_or(ExtractError::NothingLeft { what, taken, available })
}

#[cfg(test)]
mod tests {
    use super::plan::AddedSolvent;
    use super::solve::solve;
    use super::verify::{Besides, verify};
    use super::*;
    use crate::chemistry::Temperature;
    use crate::quantity::Millilitres;
    use proptest::prelude::*;
    use rust_decimal::dec;

    /// Any decimal at all, often one a person could have typed.
    fn any_decimal() -> impl Strategy<Value = Decimal> {
        prop_oneof![
            (any::<u32>(), any::<u32>(), any::<u32>(), any::<bool>(), 0_u32..=28).prop_map(
                |(low, middle, high, negative, scale)| Decimal::from_parts(low, middle, high, negative, scale)
            ),
            (-1_000_i64..100_000, 0_u32..4).prop_map(|(number, scale)| Decimal::new(number, scale)),
        ]
    }

    fn any_grams() -> impl Strategy<Value = Grams> {
        prop_oneof![
            any_decimal().prop_map(|value| Grams::new(value).unwrap_or(Grams::ZERO)),
            Just(Grams::new(Grams::MAXIMUM).unwrap()),
        ]
    }

    fn any_percent() -> impl Strategy<Value = Percent> {
        prop_oneof![
            any_decimal().prop_map(|value| Percent::new(value).unwrap_or(Percent::HUNDRED)),
            (0_i64..=100).prop_map(|value| Percent::new(Decimal::from(value)).unwrap()),
        ]
    }

    prop_compose! {
        fn any_plan()(
            mass in any_grams(), shares in prop::array::uniform6(any_percent()), glycerin in any_grams(),
            added_water in any_grams(), solvent_mass in any_grams(), retention in any_decimal(), evaporation in any_grams(),
        ) -> Plan {
            let soluble = SolubleShare { low: shares[1], typical: shares[2], high: shares[3] };
            Plan {
                plant: Plant { mass, water: shares[0], soluble },
                glycerin,
                glycerin_purity: shares[4],
                added_water,
                solvent: Some(AddedSolvent { solvent: Solvent::Ethanol, mass: solvent_mass, purity: shares[5] }),
                marc: MarcRetention::GramsPerGram(retention),
                evaporation,
            }
        }
    }

    proptest! {
        #[test]
        fn nothing_a_person_can_type_panics(
            plan in any_plan(), target in any_percent(), activity in -1.0..2.0_f64, ratio in any_decimal(), t in -300.0..1e6_f64,
        ) {
            if let Ok(pressed) = plan.press() {
                if let Ok(temperature) = Temperature::new(t) {
                    let _ = describe::describe(&pressed.liquid, temperature);
                }
                let _ = describe::alcohol_by_volume(&pressed.liquid);
                let _ = adjust::blend_to(&[pressed.liquid, pressed.held_back], target, Some(plan.glycerin));
                let _ = Besides::planned(&pressed.liquid);
            }
            let given = Circumstances {
                plant_water: plan.plant.water,
                soluble: plan.plant.soluble,
                glycerin_purity: plan.glycerin_purity,
                solvent: plan.solvent.map(|added| (added.solvent, added.purity, target)),
                marc: plan.marc,
                evaporation: target,
            };
            let volume = Millilitres::new(plan.added_water.value()).unwrap_or(Millilitres::ZERO);
            for size in [
                Size::Menstruum { plant: plan.plant.mass, menstruum: plan.added_water },
                Size::GlycerinAtHand { plant: plan.plant.mass, glycerin: plan.glycerin },
                Size::Jar { volume, headspace: target, menstruum_per_plant: ratio },
                Size::Finished { volume, menstruum_per_plant: ratio },
            ] {
                let _ = solve(&given, Strength::GlycerinPercent(target), size);
                let _ = solve(&given, Strength::WaterActivity(activity), size);
            }
        }
    }

    /// The whole path of a maker: plan, adjust, read, shelve.
    #[test]
    fn a_cucumber_glycerite_is_planned_adjusted_verified_and_shelved() {
        let grams = |value| Grams::new(value).unwrap();
        let percent = |value| Percent::new(value).unwrap();
        let plan = Plan {
            plant: Plant {
                mass: grams(dec!(300)),
                water: percent(dec!(95.2)),
                soluble: SolubleShare::usual().unwrap(),
            },
            glycerin: grams(dec!(500)),
            glycerin_purity: percent(dec!(99.5)),
            added_water: Grams::ZERO,
            solvent: None,
            marc: MarcRetention::GramsPerGram(dec!(1.5)),
            evaporation: Grams::ZERO,
        };
        let pressed = plan.press().unwrap().liquid;
        assert!(pressed.glycerin_percent().unwrap() < percent(dec!(65)), "the cucumber dilutes it");
        let adjusted = adjust::bring_to(&pressed, percent(dec!(65)), Addition::Glycerin(percent(dec!(99.5)))).unwrap();
        let expected = describe::describe(&adjusted.liquid, Temperature::TWENTY).unwrap();

        let brix = (expected.brix.unwrap().estimate * 5.0).round() / 5.0;
        let scale = Scale::Brix { corrects_temperature: false };
        let reading = Reading { scale, value: brix, resolution: 0.2, temperature: 20.0 };
        let found = verify(&[reading], &Besides::planned(&adjusted.liquid).unwrap()).unwrap().glycerin_percent;
        assert!((found.estimate - 65.0).abs() < 0.2 && found.low < 65.0 && found.high > 65.0, "{found:?}");

        let keeping = judge_keeping(expected.water_activity.unwrap(), &keeping::Conditions::default());
        assert!(keeping.upper < 0.75, "{}", keeping.upper);
        let composition = adjusted.liquid.composition().unwrap();
        assert_eq!(composition[0], (Part::Glycerin, percent(dec!(65.000000))));
    }

    #[test]
    fn codes_are_unique_and_name_their_module() {
        let mut codes = ExtractError::CODES.to_vec();
        assert!(codes.iter().all(|code| code.starts_with("extract.")));
        codes.sort_unstable();
        codes.dedup();
        assert_eq!(codes.len(), ExtractError::CODES.len());
    }
}
