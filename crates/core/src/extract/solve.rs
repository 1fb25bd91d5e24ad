//! Backwards: from the liquid that is wanted to what goes into the jar.

use super::describe::estimate_water_activity;
use super::liquid::Solvent;
use super::plan::{AddedSolvent, MarcRetention, Plan, Plant, SolubleShare};
use super::{ExtractError, Reason, Result, check_share, scale_mass, share_of, take};
use crate::arithmetic::ArithmeticError;
use crate::chemistry::interpolation::solve_rising;
use crate::chemistry::{PhysicsError, Temperature};
use crate::extract::Level;
use crate::quantity::{Grams, Millilitres, Percent};
use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};
use serde::{Deserialize, Serialize};

/// Density in g/mL of the dry matter of plants in a jar: cellulose (common practice).
const DRY_MATTER_DENSITY: f64 = 1.5;

/// How strong the liquid shall be.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Strength {
    /// So much glycerin in percent by mass, typical plant solids counted.
    GlycerinPercent(Percent),
    /// A water activity of which not even the upper end of the band lies above this.
    WaterActivity(f64),
}

/// How much of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Size {
    /// So much plant, and so much glycerin, water and other solvent together poured on it.
    Menstruum {
        /// The plant at hand.
        plant: Grams,
        /// All that is poured on it.
        menstruum: Grams,
    },
    /// So much plant and all the glycerin there is; water is asked for.
    GlycerinAtHand {
        /// The plant at hand.
        plant: Grams,
        /// The glycerin at hand.
        glycerin: Grams,
    },
    /// A jar that plant and menstruum fill together.
    Jar {
        /// Volume of the jar to its brim.
        volume: Millilitres,
        /// Part of it left empty.
        headspace: Percent,
        /// Grams of menstruum per gram of plant.
        menstruum_per_plant: Decimal,
    },
    /// So much finished, pressed liquid at 20 °C.
    Finished {
        /// Volume wanted.
        volume: Millilitres,
        /// Grams of menstruum per gram of plant.
        menstruum_per_plant: Decimal,
    },
}

/// What is given whatever is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Circumstances {
    /// Water of the plant in percent of its mass.
    pub plant_water: Percent,
    /// What dissolves of the rest.
    pub soluble: SolubleShare,
    /// How much of the glycerin is glycerin.
    pub glycerin_purity: Percent,
    /// Another solvent: which, its share of the menstruum, its purity.
    pub solvent: Option<(Solvent, Percent, Percent)>,
    /// What the marc holds back.
    pub marc: MarcRetention,
    /// Water that evaporates, in percent of the menstruum.
    pub evaporation: Percent,
}

impl Circumstances {
    /// The plan with so much plant and menstruum, of which so much is glycerin as weighed.
    fn plan(&self, plant: Grams, menstruum: Grams, glycerin: Grams) -> Result<Plan> {
        let solvent = self.solvent.map(|(solvent, share, purity)| {
            let mass = share_of(menstruum, check_share("other solvent", share, Decimal::ZERO)?)?;
            Ok::<_, ExtractError>(AddedSolvent { solvent, mass, purity })
        });
        let solvent = solvent.transpose()?;
        let rest = take("menstruum", menstruum, glycerin)?;
        Ok(Plan {
            plant: Plant { mass: plant, water: self.plant_water, soluble: self.soluble },
            glycerin,
            glycerin_purity: self.glycerin_purity,
            added_water: take("menstruum", rest, solvent.map_or(Grams::ZERO, |added| added.mass))?,
            solvent,
            marc: self.marc,
            evaporation: share_of(menstruum, check_share("evaporation", self.evaporation, Decimal::ZERO)?)?,
        })
    }

    /// The most glycerin that fits into so much menstruum.
    fn most_glycerin(&self, menstruum: Grams) -> Result<Grams> {
        let share = self.solvent.map_or(Percent::ZERO, |(_, share, _)| share);
        take("menstruum", menstruum, share_of(menstruum, check_share("other solvent", share, Decimal::ZERO)?)?)
    }
}

/// Finds what goes into the jar.
///
/// *Source:* closed mass balance for a glycerin percent; halving on [`estimate_water_activity`] for a water activity.
///
/// # Errors
/// `extract.out-of-reach` with the nearest possible where the plant's own water or the purity of the glycerin does not
/// allow it; `extract.not-a-share` for a percent that is none; `physics.out-of-range` for a water activity that is none.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::extract::solve::{Circumstances, Size, Strength, solve};
/// use stillroom_core::extract::{MarcRetention, SolubleShare};
/// use stillroom_core::{Grams, Percent};
/// let given = Circumstances {
///     plant_water: Percent::new(dec!(95))?,
///     soluble: SolubleShare::usual()?,
///     glycerin_purity: Percent::new(dec!(99.5))?,
///     solvent: None,
///     marc: MarcRetention::GramsPerGram(dec!(1.5)),
///     evaporation: Percent::ZERO,
/// };
/// let size = Size::Menstruum { plant: Grams::new(dec!(200))?, menstruum: Grams::new(dec!(600))? };
/// let plan = solve(&given, Strength::GlycerinPercent(Percent::new(dec!(65))?), size)?;
/// assert_eq!(plan.press()?.liquid.glycerin_percent()?.value().round_dp(9), dec!(65));
/// let error = solve(&given, Strength::GlycerinPercent(Percent::new(dec!(90))?), size).unwrap_err();
/// assert_eq!(error.code(), "extract.out-of-reach");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn solve(given: &Circumstances, strength: Strength, size: Size) -> Result<Plan> {
    // Without this a division by nothing would be asked for; one percent is far below any glycerin sold.
    check_share("purity of the glycerin", given.glycerin_purity, Decimal::ONE)?;
    match size {
        Size::Menstruum { plant, menstruum } => solve_menstruum(given, strength, plant, menstruum),
        Size::GlycerinAtHand { plant, glycerin } => solve_water(given, strength, plant, glycerin),
        Size::Jar { volume, headspace, menstruum_per_plant } => {
            let fill = Decimal::ONE_HUNDRED - check_share("headspace", headspace, Decimal::ZERO)?;
            let sample = solve_sample(given, strength, menstruum_per_plant)?;
            let steeped = sample.steep()?;
            let liquid = steeped.masses(Level::Typical).volume(Temperature::TWENTY)?;
            let room = liquid + sample.press()?.dry_marc.to_physics() / DRY_MATTER_DENSITY;
            let filled = volume.to_physics() * fill.to_f64().unwrap_or(f64::NAN) / 100.0;
            scale_plan(&sample, filled / room, RoundingStrategy::ToZero)
        }
        Size::Finished { volume, menstruum_per_plant } => {
            let sample = solve_sample(given, strength, menstruum_per_plant)?;
            let pressed = sample.press()?.liquid.masses(Level::Typical).volume(Temperature::TWENTY)?;
            scale_plan(&sample, volume.to_physics() / pressed, RoundingStrategy::AwayFromZero)
        }
    }
}

/// The same on a hundred grams of plant.
fn solve_sample(given: &Circumstances, strength: Strength, menstruum_per_plant: Decimal) -> Result<Plan> {
    let plant = Grams::new(Decimal::ONE_HUNDRED)?;
    solve_menstruum(given, strength, plant, scale_mass(plant, menstruum_per_plant, Decimal::ONE)?)
}

/// Every mass of a plan times a factor, which is rounded to nine places.
fn scale_plan(plan: &Plan, factor: f64, rounding: RoundingStrategy) -> Result<Plan> {
    let factor = to_decimal(factor)?.round_dp_with_strategy(9, rounding);
    let scale = |mass| scale_mass(mass, factor, Decimal::ONE);
    let solvent = plan.solvent.map(|added| Ok::<_, ExtractError>(AddedSolvent { mass: scale(added.mass)?, ..added }));
    Ok(Plan {
        plant: Plant { mass: scale(plan.plant.mass)?, ..plan.plant },
        glycerin: scale(plan.glycerin)?,
        added_water: scale(plan.added_water)?,
        solvent: solvent.transpose()?,
        evaporation: scale(plan.evaporation)?,
        ..*plan
    })
}

fn to_decimal(value: f64) -> Result<Decimal> {
    Decimal::from_f64_retain(value).ok_or(ExtractError::Arithmetic(ArithmeticError::TooLarge))
}

fn solve_menstruum(given: &Circumstances, strength: Strength, plant: Grams, menstruum: Grams) -> Result<Plan> {
    let most = given.most_glycerin(menstruum)?;
    let glycerin = match strength {
        Strength::GlycerinPercent(target) => {
            let percent = check_share("glycerin", target, Decimal::ZERO)?;
            // The mass of the liquid does not depend on how the menstruum is split.
            let whole = given.plan(plant, menstruum, Grams::ZERO)?.steep()?.mass()?;
            let pure = share_of(whole, percent)?;
            let glycerin = scale_mass(pure, Decimal::ONE_HUNDRED, given.glycerin_purity.value())?;
            if glycerin > most {
                let strongest = given.plan(plant, menstruum, most)?.steep()?;
                let without_plant = scale_mass(most, given.glycerin_purity.value(), Decimal::ONE_HUNDRED)?;
                let would_do = Percent::from_share(without_plant, menstruum).is_some_and(|share| share >= target);
                return Err(ExtractError::OutOfReach {
                    target: percent,
                    nearest: strongest.glycerin_percent()?.value(),
                    unit: Percent::UNIT,
                    reason: if would_do { Reason::PlantWater } else { Reason::NothingStronger },
                });
            }
            glycerin
        }
        Strength::WaterActivity(target) => {
            let share = |share: f64| -> Result<Grams> {
                let glycerin = to_decimal(share)?.checked_mul(most.value()).ok_or(ArithmeticError::TooLarge)?;
                Ok(Grams::new(glycerin.round_dp_with_strategy(6, RoundingStrategy::ToPositiveInfinity))?.min(most))
            };
            let at = |part: f64| given.plan(plant, menstruum, share(part)?);
            share(find_activity(target, at)?)?
        }
    };
    given.plan(plant, menstruum, glycerin)
}

fn solve_water(given: &Circumstances, strength: Strength, plant: Grams, glycerin: Grams) -> Result<Plan> {
    // Menstruum in which this glycerin and so much water leave room for the other solvent.
    let with_water = |water: Grams| -> Result<Plan> {
        let both = super::add(glycerin, water)?;
        let left = given.most_glycerin(Grams::new(Decimal::ONE_HUNDRED)?)?;
        given.plan(plant, scale_mass(both, Decimal::ONE_HUNDRED, left.value())?, glycerin)
    };
    let driest = with_water(Grams::ZERO)?;
    match strength {
        Strength::GlycerinPercent(target) => {
            let percent = check_share("glycerin", target, Decimal::new(1, 1))?;
            let pure = share_of(glycerin, given.glycerin_purity.value())?;
            let wanted = scale_mass(pure, Decimal::ONE_HUNDRED, percent)?;
            let least = driest.steep()?;
            let Some(missing) = wanted.checked_sub(least.mass()?) else {
                return Err(ExtractError::OutOfReach {
                    target: percent,
                    nearest: least.glycerin_percent()?.value(),
                    unit: Percent::UNIT,
                    reason: if target > given.glycerin_purity { Reason::NothingStronger } else { Reason::PlantWater },
                });
            };
            // A gram of menstruum loses its evaporation and holds its share of water.
            let kept = Decimal::ONE_HUNDRED - check_share("evaporation", given.evaporation, Decimal::ZERO)?;
            let water_share = given.most_glycerin(Grams::new(Decimal::ONE_HUNDRED)?)?.value();
            with_water(scale_mass(missing, water_share, kept)?)
        }
        Strength::WaterActivity(target) => {
            // From no water to a thousand times the glycerin; drier for a greater part.
            let water = |part: f64| -> Result<Grams> {
                let ratio = ((1.0 - part) / (part + 0.001)).max(0.0);
                let water = to_decimal(ratio)?.checked_mul(glycerin.value()).ok_or(ArithmeticError::TooLarge)?;
                Ok(Grams::new(water.round_dp_with_strategy(6, RoundingStrategy::ToZero))?)
            };
            let part = find_activity(target, |part| with_water(water(part)?))?;
            with_water(water(part)?)
        }
    }
}

/// The least part, 0 to 1, at which the upper end of the water activity is no higher than the target; the plan must dry
/// as the part grows.
fn find_activity(target: f64, plan: impl Fn(f64) -> Result<Plan>) -> Result<f64> {
    let range = crate::chemistry::Range {
        equation: "extract.solve",
        quantity: "water activity",
        unit: "1",
        minimum: 0.0,
        maximum: 1.0,
    };
    let target = range.check(target)?;
    let upper = |part: f64| -> Result<f64> {
        let liquid = plan(part)?.steep()?;
        Ok(estimate_water_activity(&liquid).map_err(|error: PhysicsError| ExtractError::Physics(error))?.high)
    };
    let (wettest, driest) = (upper(0.0)?, upper(1.0)?);
    if wettest <= target {
        return Ok(0.0);
    }
    let out_of_reach = |nearest: f64| -> Result<f64> {
        Err(ExtractError::OutOfReach {
            target: to_decimal(target)?.round_dp(6),
            nearest: to_decimal(nearest)?.round_dp_with_strategy(4, RoundingStrategy::AwayFromZero),
            unit: "water activity",
            reason: Reason::PlantWater,
        })
    };
    if driest > target {
        return out_of_reach(driest);
    }
    match solve_rising(0.0, 1.0, -target, |part| upper(part).ok().map(|high| -high)) {
        // A hair further, so that the upper end does not lie above the target by the last bit.
        Some(part) => Ok((part + 1e-9).min(1.0)),
        None => out_of_reach(driest),
    }
}

#[cfg(test)]
mod tests {
    use super::super::plan::tests::percents;
    use super::*;
    use proptest::prelude::*;
    use rust_decimal::dec;

    prop_compose! {
        fn circumstances()(
            plant_water in percents(5, 97), purity in percents(90, 100), share in percents(1, 20), which in 0..4_usize,
            ratio in 0_i64..20, evaporation in percents(0, 3),
        ) -> Circumstances {
            let solvent: Option<Solvent> = [None, Some(Solvent::PropyleneGlycol), Some(Solvent::Propanediol), Some(Solvent::Ethanol)][which];
            Circumstances {
                plant_water,
                soluble: SolubleShare::usual().unwrap(),
                glycerin_purity: purity,
                solvent: solvent.map(|solvent| (solvent, share, Percent::HUNDRED)),
                marc: MarcRetention::GramsPerGram(Decimal::new(ratio, 1)),
                evaporation,
            }
        }
    }

    fn sizes() -> impl Strategy<Value = Size> {
        let grams = |low: i64, high: i64| (low..high).prop_map(|number| Grams::new(Decimal::new(number, 1)).unwrap());
        let millilitres = (500_i64..50_000).prop_map(|number| Millilitres::new(Decimal::new(number, 1)).unwrap());
        let ratio = (30_i64..100).prop_map(|number| Decimal::new(number, 1));
        prop_oneof![
            (grams(10, 10_000), 3_i64..10).prop_map(|(plant, times)| Size::Menstruum {
                plant,
                menstruum: Grams::new(plant.value() * Decimal::from(times)).unwrap(),
            }),
            (grams(10, 10_000), 3_i64..10).prop_map(|(plant, times)| Size::GlycerinAtHand {
                plant,
                glycerin: Grams::new(plant.value() * Decimal::from(times)).unwrap(),
            }),
            (millilitres.clone(), percents(0, 20), ratio.clone()).prop_map(
                |(volume, headspace, menstruum_per_plant)| { Size::Jar { volume, headspace, menstruum_per_plant } }
            ),
            (millilitres, ratio)
                .prop_map(|(volume, menstruum_per_plant)| Size::Finished { volume, menstruum_per_plant }),
        ]
    }

    proptest! {
        #[test]
        fn backwards_and_forwards_meets_the_glycerin_percent(given in circumstances(), size in sizes(), target in percents(5, 90)) {
            match solve(&given, Strength::GlycerinPercent(target), size) {
                Ok(plan) => {
                    let met = plan.press().unwrap().liquid.glycerin_percent().unwrap();
                    prop_assert!((met.value() - target.value()).abs() < dec!(0.000000001), "{met:?} for {target:?}");
                }
                Err(ExtractError::OutOfReach { nearest, .. }) => {
                    prop_assert!(nearest < target.value());
                    let nearest = Percent::new(nearest.round_dp_with_strategy(9, RoundingStrategy::ToZero)).unwrap();
                    prop_assert!(solve(&given, Strength::GlycerinPercent(nearest), size).is_ok(), "the nearest is possible");
                }
                Err(ExtractError::NothingLeft { .. }) => {}
                Err(other) => prop_assert!(false, "{other}"),
            }
        }

        #[test]
        fn backwards_and_forwards_meets_the_water_activity(given in circumstances(), size in sizes(), target in 0.5..0.95_f64) {
            match solve(&given, Strength::WaterActivity(target), size) {
                Ok(plan) => {
                    let met = estimate_water_activity(&plan.press().unwrap().liquid).unwrap().high;
                    prop_assert!(met <= target + 1e-6, "{met} for {target}");
                    if !plan.glycerin.is_zero() {
                        prop_assert!(met >= target - 1e-3, "{met} wastes glycerin for {target}");
                    }
                }
                Err(ExtractError::OutOfReach { nearest, .. }) => prop_assert!(nearest.to_f64().unwrap() > target),
                Err(ExtractError::NothingLeft { .. }) => {}
                Err(other) => prop_assert!(false, "{other}"),
            }
        }

        #[test]
        fn the_finished_liquid_has_the_volume_asked_for(given in circumstances(), volume in 50_i64..5_000, target in percents(30, 60)) {
            let volume = Millilitres::new(Decimal::from(volume)).unwrap();
            let size = Size::Finished { volume, menstruum_per_plant: dec!(6) };
            if let Ok(plan) = solve(&given, Strength::GlycerinPercent(target), size) {
                let liquid = plan.press().unwrap().liquid.masses(Level::Typical).volume(Temperature::TWENTY).unwrap();
                prop_assert!((liquid - volume.to_physics()).abs() < 1e-4, "{liquid} for {volume:?}");
            }
        }
    }

    #[test]
    fn a_juicy_plant_says_how_strong_its_extract_can_be() {
        let given = Circumstances {
            plant_water: Percent::new(dec!(95)).unwrap(),
            soluble: SolubleShare::NONE,
            glycerin_purity: Percent::HUNDRED,
            solvent: None,
            marc: MarcRetention::GramsPerGram(Decimal::ONE),
            evaporation: Percent::ZERO,
        };
        let hundred = Grams::new(dec!(100)).unwrap();
        let size = Size::Menstruum { plant: hundred, menstruum: hundred };
        let error = solve(&given, Strength::GlycerinPercent(Percent::new(dec!(65)).unwrap()), size).unwrap_err();
        let ExtractError::OutOfReach { nearest, reason, .. } = error else { panic!("{error}") };
        assert_eq!((nearest.round_dp(2), reason), (dec!(51.28), Reason::PlantWater));
        let error = solve(&given, Strength::WaterActivity(0.70), size).unwrap_err();
        assert_eq!(error.code(), "extract.out-of-reach");
        assert_eq!(solve(&given, Strength::WaterActivity(f64::NAN), size).unwrap_err().code(), "physics.out-of-range");
    }
}
