//! Containers: how many of what came out can be filled, what can be got out of them again, and what does not go with their
//! walls.

mod several;

pub use several::{Kind, KindFilled, SharedOut, share_out, wanted_in_all};

use crate::batch_plan::{Containers, LARGEST_ALLOWANCE};
use crate::composition::DensityEstimate;
use crate::quantity::{Density, Grams, Percent};
use crate::run::filling::plan_filling;
use crate::scaling::ScalingError;
use crate::source::Citation;
use rust_decimal::Decimal;

/// Density in g/mL that materials of unknown density are taken to have at least and at most: light oils and thick syrups.
/// *Source*: common practice.
const UNKNOWN_DENSITY: (Decimal, Decimal) =
    (Decimal::from_parts(85, 0, 0, false, 2), Decimal::from_parts(130, 0, 0, false, 2));
/// Share by which air that was stirred in makes a product lighter, and by which mixing makes it denser. *Source*: common
/// practice for emulsions; [`crate::composition::estimate_density`] for mixing.
const STIRRED_IN: (Decimal, Decimal) =
    (Decimal::from_parts(95, 0, 0, false, 2), Decimal::from_parts(101, 0, 0, false, 2));
/// What counts of a filling scale, in grams; only what is filled alike depends on it, and nothing here does.
const STEP: Grams = Grams::from_hundredths(1);

/// Density of a product with how far it may be off.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DensityBand {
    /// At least.
    pub low: Density,
    /// Most likely.
    pub likely: Density,
    /// At most.
    pub high: Density,
}

impl DensityBand {
    /// What was measured counts as it is; an estimate may be off by what nobody knows of it, by air and by mixing. `None`
    /// where neither is there.
    ///
    /// ```
    /// use rust_decimal::dec;
    /// use stillroom_core::packaging::DensityBand;
    /// use stillroom_core::{Density, Percent, composition::DensityEstimate};
    /// let one = Density::new(dec!(1))?;
    /// let estimate = DensityEstimate { density: one, known: Percent::HUNDRED };
    /// let band = DensityBand::of(None, Some(estimate)).unwrap();
    /// assert_eq!((band.low.value(), band.likely, band.high.value()), (dec!(0.95), one, dec!(1.01)));
    /// assert_eq!(DensityBand::of(Some(one), Some(estimate)).unwrap().low, one);
    /// # Ok::<(), stillroom_core::QuantityError>(())
    /// ```
    #[must_use]
    pub fn of(measured: Option<Density>, estimate: Option<DensityEstimate>) -> Option<Self> {
        if let Some(likely) = measured {
            return Some(Self { low: likely, likely, high: likely });
        }
        let DensityEstimate { density: likely, known } = estimate?;
        let known = known.value().clamp(Decimal::ZERO, Decimal::ONE_HUNDRED) / Decimal::ONE_HUNDRED;
        // Volumes add, as in the estimate itself.
        let mixed = |unknown: Decimal, off: Decimal| {
            let volume =
                known.checked_div(likely.value())?.checked_add((Decimal::ONE - known).checked_div(unknown)?)?;
            Density::new(Decimal::ONE.checked_div(volume)?.checked_mul(off)?.round_dp(6)).ok()
        };
        let (light, heavy) = UNKNOWN_DENSITY;
        Some(Self {
            low: mixed(light.min(likely.value()), STIRRED_IN.0).unwrap_or(likely),
            likely,
            high: mixed(heavy.max(likely.value()), STIRRED_IN.1).unwrap_or(likely),
        })
    }
}

/// What comes out of a batch of which a share stays on walls and tools. *Units*: grams, percent. *Source*: a loss is a share
/// of what is made, as in [`crate::scaling::mass_to_fill`].
///
/// # Errors
/// `batch.allowance` outside 0 to 90 %.
pub fn comes_out(made: Grams, loss: Percent) -> Result<Grams, ScalingError> {
    let kept = Decimal::ONE_HUNDRED - within(loss)?;
    let out = made.value().checked_mul(kept).map(|it| it / Decimal::ONE_HUNDRED);
    out.and_then(|out| Grams::new(out).ok()).ok_or(ScalingError::TooLarge)
}

pub(crate) fn within(share: Percent) -> Result<Decimal, ScalingError> {
    let value = share.value();
    if (Decimal::ZERO..=LARGEST_ALLOWANCE).contains(&value) {
        Ok(value)
    } else {
        Err(ScalingError::Allowance { value, largest: LARGEST_ALLOWANCE })
    }
}

/// How many containers become full.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Filled {
    /// What one takes, at the likely density.
    pub each: Grams,
    /// So many become full, at the likely density.
    pub count: u32,
    /// So many if the product is as dense as it may be.
    pub fewest: u32,
    /// So many if it is as light as it may be.
    pub most: u32,
    /// What is left over, at the likely density.
    pub left: Grams,
    /// What can be got out of a full one again.
    pub gives: Grams,
}

/// How many containers what came out fills.
///
/// One takes volume × (1 − headspace) × density, and gives that less the share that stays in its dispenser. *Units*: g, mL,
/// g/mL, percent.
///
/// # Errors
/// `batch.nothing` without a container, `batch.allowance`, `batch.too-large`.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::packaging::{DensityBand, fill};
/// use stillroom_core::batch_plan::BatchPlan;
/// use stillroom_core::{Density, Grams, Percent};
/// let jars = BatchPlan::default().containers; // of 30 mL
/// let band = DensityBand::of(Some(Density::new(dec!(1))?), None).unwrap();
/// let filled = fill(Grams::new(dec!(200))?, &jars, &band, Percent::new(dec!(5))?).unwrap();
/// assert_eq!((filled.count, filled.left.value(), filled.gives.value()), (6, dec!(20), dec!(28.5)));
/// # Ok::<(), stillroom_core::QuantityError>(())
/// ```
pub fn fill(out: Grams, containers: &Containers, band: &DensityBand, stays: Percent) -> Result<Filled, ScalingError> {
    let given = Decimal::ONE_HUNDRED - within(stays)?;
    let at = |density| plan_filling(out, containers, density, STEP);
    let (likely, light, dense) = (at(band.likely)?, at(band.low)?, at(band.high)?);
    let gives = likely.each.value().checked_mul(given).map(|it| it / Decimal::ONE_HUNDRED);
    Ok(Filled {
        each: likely.each,
        count: likely.full,
        fewest: dense.full,
        most: light.full,
        left: likely.left,
        gives: gives.and_then(|gives| Grams::new(gives).ok()).ok_or(ScalingError::TooLarge)?,
    })
}

/// What a container is made of where the product touches it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Walls {
    /// Glass.
    Glass,
    /// Polyethylene, high or low density.
    Polyethylene,
    /// Polypropylene.
    Polypropylene,
    /// Poly(ethylene terephthalate).
    Polyester,
    /// Polystyrene, and its copolymers such as SAN.
    Polystyrene,
    /// Aluminium without a lacquer.
    BareAluminium,
    /// Aluminium or tinplate with a lacquer.
    LacqueredMetal,
}

impl Walls {
    /// Every kind, with its stable word.
    pub const ALL: [(&'static str, Self); 7] = [
        ("glass", Self::Glass),
        ("polyethylene", Self::Polyethylene),
        ("polypropylene", Self::Polypropylene),
        ("polyester", Self::Polyester),
        ("polystyrene", Self::Polystyrene),
        ("bare-aluminium", Self::BareAluminium),
        ("lacquered-metal", Self::LacqueredMetal),
    ];

    /// The kind of a word.
    #[must_use]
    pub fn from_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|(each, _)| *each == word).map(|(_, walls)| walls)
    }
}

/// What of a product does not go with its container.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Misfit {
    /// Essential oil or limonene softens polystyrene.
    ScentInPolystyrene,
    /// What is below pH 4 eats bare aluminium.
    AcidOnAluminium,
    /// What is alkaline eats bare aluminium.
    AlkaliOnAluminium,
    /// Strong alkali takes polyester apart.
    AlkaliOnPolyester,
    /// A lacquer that is scratched or not made for acid or alkali gives way.
    LacquerUntested,
    /// The walls ask for the pH, and it is not known.
    PhNotKnown,
}

/// pH below and above which the oxide on aluminium does not hold. *Source*: [`POURBAIX`].
const OXIDE_HOLDS: (f64, f64) = (4.0, 8.5);
/// pH from which a product counts as strong alkali for polyester. *Source*: common practice.
const STRONG_ALKALI: f64 = 10.0;
/// About polystyrene: limonene dissolves it about as well as toluene does (read in the summary of the paper).
const NOGUCHI: Citation = Citation::published("Noguchi et al., Packaging Technology and Science 11 (1998) 19–27");
/// About aluminium: the range of pH in which its oxide does not dissolve, from memory.
const POURBAIX: Citation = Citation::recalled("Pourbaix, Atlas d’équilibres électrochimiques (1963), aluminium");

/// What of a product does not go with its container, each with its source. Nothing said is no proof that they go together: that
/// is tried out, filled and stored (common practice).
///
/// `scent` is the share of essential oils, perfume and limonene in percent, `ph` how low and how high the pH may be, where the
/// product has water; `is_dry` says that it has none.
#[must_use]
pub fn misfits(walls: Walls, scent: f64, ph: Option<(f64, f64)>, is_dry: bool) -> Vec<(Misfit, Citation)> {
    let practice = Citation::COMMON_PRACTICE;
    let acid = ph.is_some_and(|(low, _)| low < OXIDE_HOLDS.0);
    let alkaline = |from: f64| ph.is_some_and(|(_, high)| high > from);
    let asks_for_ph = matches!(walls, Walls::BareAluminium | Walls::LacqueredMetal | Walls::Polyester);
    let mut found = Vec::new();
    let mut note = |is_so: bool, misfit: Misfit, citation: Citation| {
        if is_so {
            found.push((misfit, citation));
        }
    };
    note(walls == Walls::Polystyrene && scent > 0.0, Misfit::ScentInPolystyrene, NOGUCHI);
    // What has no water has no pH, and nothing below is about it.
    if is_dry || !asks_for_ph {
        return found;
    }
    note(walls == Walls::BareAluminium && acid, Misfit::AcidOnAluminium, POURBAIX);
    note(walls == Walls::BareAluminium && alkaline(OXIDE_HOLDS.1), Misfit::AlkaliOnAluminium, POURBAIX);
    note(walls == Walls::LacqueredMetal && (acid || alkaline(OXIDE_HOLDS.1)), Misfit::LacquerUntested, practice);
    note(walls == Walls::Polyester && alkaline(STRONG_ALKALI), Misfit::AlkaliOnPolyester, practice);
    note(ph.is_none(), Misfit::PhNotKnown, practice);
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Millilitres;
    use proptest::prelude::*;
    use rust_decimal::dec;

    fn jars(volume: Decimal, headspace: Decimal) -> Containers {
        Containers {
            count: 1,
            volume: Millilitres::new(volume).unwrap(),
            headspace: Percent::new(headspace).unwrap(),
            loss: Percent::ZERO,
            density: None,
        }
    }

    proptest! {
        #[test]
        fn what_is_filled_never_exceeds_what_came_out(
            out in 0i64..10_000_000,
            volume in 1i64..100_000,
            headspace in 0i64..9000,
            stays in 0i64..9000,
            density in 50i64..200,
            known in 0i64..=100,
        ) {
            let out = Grams::new(Decimal::new(out, 2)).unwrap();
            let containers = jars(Decimal::new(volume, 1), Decimal::new(headspace, 2));
            let density = Density::new(Decimal::new(density, 2)).unwrap();
            let estimate = DensityEstimate { density, known: Percent::new(Decimal::from(known)).unwrap() };
            let band = DensityBand::of(None, Some(estimate)).unwrap();
            let filled = fill(out, &containers, &band, Percent::new(Decimal::new(stays, 2)).unwrap()).unwrap();
            let used = Decimal::from(filled.count) * filled.each.value();
            prop_assert!(used <= out.value());
            prop_assert_eq!(used + filled.left.value(), out.value());
            prop_assert!(filled.left < filled.each, "one more would have become full");
            prop_assert!(filled.fewest <= filled.count && filled.count <= filled.most);
            prop_assert!(filled.gives <= filled.each);
            // The most counts at the lightest, the fewest at the densest: neither holds more than there is.
            let full = |count: u32, density: Density| {
                let each = containers.volume.value() * (dec!(100) - containers.headspace.value()) / dec!(100);
                Decimal::from(count) * each * density.value()
            };
            prop_assert!(full(filled.most, band.low) <= out.value() + dec!(0.000001));
            prop_assert!(full(filled.fewest, band.high) <= out.value() + dec!(0.000001));
        }

        #[test]
        fn a_planned_batch_fills_what_it_was_planned_for(count in 1u32..500, volume in 1i64..5000, loss in 0i64..90) {
            let mut containers = jars(Decimal::new(volume, 1), dec!(5));
            containers.count = count;
            containers.loss = Percent::new(Decimal::from(loss)).unwrap();
            let density = Density::new(dec!(0.97)).unwrap();
            let exact = crate::scaling::mass_to_fill(&containers, density).unwrap();
            let scales = crate::weigh_sheet::Scales::default();
            let made = crate::scaling::round_up_to_scale(exact, &scales).unwrap();
            let out = comes_out(made, containers.loss).unwrap();
            let band = DensityBand::of(Some(density), None).unwrap();
            let filled = fill(out, &containers, &band, Percent::ZERO).unwrap();
            prop_assert!(filled.count >= count, "{} of {count}", filled.count);
        }
    }

    #[test]
    fn what_is_not_known_of_the_density_widens_what_can_be_filled() {
        let estimate =
            |known| DensityEstimate { density: Density::new(dec!(1)).unwrap(), known: Percent::new(known).unwrap() };
        let band = |known| DensityBand::of(None, Some(estimate(known))).unwrap();
        assert!(band(dec!(60)).low < band(dec!(100)).low);
        assert!(band(dec!(60)).high > band(dec!(100)).high);
        // 1 / (0.6 / 1 + 0.4 / 0.85) × 0.95
        assert_eq!(band(dec!(60)).low.value(), dec!(0.887363));
        assert_eq!(DensityBand::of(None, None), None);
    }

    #[test]
    fn what_does_not_go_with_a_container_is_said_with_its_source() {
        let said = |walls, scent, ph, is_dry| -> Vec<Misfit> {
            misfits(walls, scent, ph, is_dry)
                .into_iter()
                .map(|(misfit, citation)| {
                    assert!(!citation.source.is_empty());
                    misfit
                })
                .collect()
        };
        let neutral = Some((5.3, 5.7));
        assert_eq!(said(Walls::Polystyrene, 0.3, neutral, false), [Misfit::ScentInPolystyrene]);
        assert_eq!(said(Walls::Polystyrene, 0.0, neutral, false), []);
        assert_eq!(said(Walls::BareAluminium, 0.3, Some((3.8, 4.2)), false), [Misfit::AcidOnAluminium]);
        assert_eq!(said(Walls::BareAluminium, 0.0, Some((9.0, 10.5)), false), [Misfit::AlkaliOnAluminium]);
        assert_eq!(said(Walls::BareAluminium, 0.0, neutral, false), []);
        assert_eq!(said(Walls::BareAluminium, 0.0, None, false), [Misfit::PhNotKnown]);
        assert_eq!(said(Walls::BareAluminium, 0.0, None, true), []);
        assert_eq!(said(Walls::Polyester, 0.0, Some((9.9, 10.3)), false), [Misfit::AlkaliOnPolyester]);
        assert_eq!(said(Walls::Polyester, 0.3, Some((3.5, 3.9)), false), []);
        assert_eq!(said(Walls::LacqueredMetal, 0.0, Some((3.5, 3.9)), false), [Misfit::LacquerUntested]);
        for walls in [Walls::Glass, Walls::Polyethylene, Walls::Polypropylene] {
            assert_eq!(said(walls, 1.0, Some((3.0, 11.0)), false), []);
        }
        for (word, walls) in Walls::ALL {
            assert_eq!(Walls::from_word(word), Some(walls));
        }
    }

    #[test]
    fn what_cannot_be_filled_is_an_error() {
        let band = DensityBand::of(Some(Density::new(dec!(1)).unwrap()), None).unwrap();
        let out = Grams::new(dec!(100)).unwrap();
        let code = |containers: &Containers, stays| fill(out, containers, &band, stays).unwrap_err().code();
        assert_eq!(code(&jars(dec!(0), dec!(0)), Percent::ZERO), "batch.nothing");
        assert_eq!(code(&jars(dec!(30), dec!(95)), Percent::ZERO), "batch.allowance");
        assert_eq!(code(&jars(dec!(30), dec!(0)), Percent::HUNDRED), "batch.allowance");
        assert_eq!(comes_out(out, Percent::HUNDRED).unwrap_err().code(), "batch.allowance");
    }
}
