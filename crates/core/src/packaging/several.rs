//! Containers of several kinds in one batch: what came out is shared out among them.
//!
//! Kinds of which so many are wanted are filled first, in their order; what is left then goes into those that take the rest,
//! in their order. Nothing is filled by halves.

use super::{DensityBand, within};
use crate::quantity::{Density, Grams, Millilitres, Percent};
use crate::scaling::ScalingError;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive as _;

/// Most changes of what becomes full that are followed through what is not known of the density.
const MOST_CHANGES: u32 = 100_000;

/// A kind of container.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Kind {
    /// What one holds.
    pub volume: Millilitres,
    /// Share of it that stays empty.
    pub headspace: Percent,
    /// Share of what is filled that stays in its dispenser.
    pub stays: Percent,
    /// So many are to be filled; `None` for as many as there is enough for.
    pub wanted: Option<u32>,
}

/// How many of a kind become full.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct KindFilled {
    /// What one takes, at the likely density.
    pub each: Grams,
    /// So many become full, at the likely density.
    pub count: u32,
    /// So many at least, whatever the density within its band.
    pub fewest: u32,
    /// So many at most.
    pub most: u32,
    /// So many of those wanted stay empty.
    pub short: u32,
    /// What can be got out of a full one again.
    pub gives: Grams,
}

/// What came out, shared out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SharedOut {
    /// Each kind, in the order of the kinds.
    pub kinds: Vec<KindFilled>,
    /// What is left over, at the likely density.
    pub left: Grams,
}

/// Shares out what came out among kinds of containers. *Units*: g, mL, g/mL, percent.
///
/// # Errors
/// `batch.nothing` without a kind or with one that holds nothing, `batch.allowance`, `batch.too-large`.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::packaging::{DensityBand, Kind, share_out};
/// use stillroom_core::{Density, Grams, Millilitres, Percent};
/// let kind = |volume, wanted| Kind {
///     volume: Millilitres::new(volume).unwrap(),
///     headspace: Percent::ZERO,
///     stays: Percent::ZERO,
///     wanted,
/// };
/// let band = DensityBand::of(Some(Density::new(dec!(1))?), None).unwrap();
/// // Of 640 g four bottles of 30 mL are filled first, and jars of 50 mL take the rest.
/// let shared = share_out(Grams::new(dec!(640))?, &[kind(dec!(50), None), kind(dec!(30), Some(4))], &band).unwrap();
/// let counts: Vec<u32> = shared.kinds.iter().map(|kind| kind.count).collect();
/// assert_eq!((counts, shared.left.value()), (vec![10, 4], dec!(20)));
/// # Ok::<(), stillroom_core::QuantityError>(())
/// ```
pub fn share_out(out: Grams, kinds: &[Kind], band: &DensityBand) -> Result<SharedOut, ScalingError> {
    if kinds.is_empty() || kinds.iter().any(|kind| kind.volume.is_zero()) {
        return Err(ScalingError::NoBatch);
    }
    let mut nets = Vec::new();
    for kind in kinds {
        let full = Decimal::ONE_HUNDRED - within(kind.headspace)?;
        let net = kind.volume.value().checked_mul(full).map(|net| net / Decimal::ONE_HUNDRED);
        nets.push(net.filter(|net| !net.is_zero()).ok_or(ScalingError::TooLarge)?);
    }
    let masses: Option<Vec<Decimal>> = nets.iter().map(|net| net.checked_mul(band.likely.value())).collect();
    let masses = masses.filter(|all| all.iter().all(|each| !each.is_zero())).ok_or(ScalingError::TooLarge)?;
    let likely = fill_in_order(out.value(), kinds, &masses)?;
    let (fewest, most) = range(out, kinds, &nets, band, &likely.counts)?;
    let grams = |mass: Decimal| Grams::new(mass).map_err(|_| ScalingError::TooLarge);
    let mut filled = Vec::new();
    for (at, kind) in kinds.iter().enumerate() {
        let given = Decimal::ONE_HUNDRED - within(kind.stays)?;
        let count = likely.counts[at];
        let gives = masses[at].checked_mul(given).ok_or(ScalingError::TooLarge)? / Decimal::ONE_HUNDRED;
        filled.push(KindFilled {
            each: grams(masses[at])?,
            count,
            fewest: fewest[at],
            most: most[at],
            short: kind.wanted.map_or(0, |wanted| wanted.saturating_sub(count)),
            gives: grams(gives)?,
        });
    }
    Ok(SharedOut { kinds: filled, left: grams(likely.left)? })
}

/// What has to come out so that as many become full as are wanted; those that take the rest need nothing.
///
/// # Errors
/// `batch.allowance`, `batch.too-large`.
pub fn wanted_in_all(kinds: &[Kind], density: Density) -> Result<Grams, ScalingError> {
    let mut sum = Decimal::ZERO;
    for kind in kinds {
        let full = Decimal::ONE_HUNDRED - within(kind.headspace)?;
        let all = Decimal::from(kind.wanted.unwrap_or(0)).checked_mul(kind.volume.value());
        let mass = all.and_then(|all| all.checked_mul(full)?.checked_mul(density.value()));
        sum = mass.and_then(|mass| sum.checked_add(mass / Decimal::ONE_HUNDRED)).ok_or(ScalingError::TooLarge)?;
    }
    Grams::new(sum).map_err(|_| ScalingError::TooLarge)
}

/// Counts of each kind.
struct InOrder {
    counts: Vec<u32>,
    left: Decimal,
    /// How much more there has to be until more of some kind become full.
    until_more: Option<Decimal>,
}

fn fill_in_order(there: Decimal, kinds: &[Kind], sizes: &[Decimal]) -> Result<InOrder, ScalingError> {
    let mut counts = vec![0; kinds.len()];
    let mut left = there;
    let mut until_more: Option<Decimal> = None;
    let wanted_first = (0..kinds.len()).filter(|at| kinds[*at].wanted.is_some());
    let then_the_rest = (0..kinds.len()).filter(|at| kinds[*at].wanted.is_none());
    for at in wanted_first.chain(then_the_rest) {
        let size = sizes[at];
        let enough_for = left.checked_div(size).ok_or(ScalingError::TooLarge)?.floor();
        let most = Decimal::from(kinds[at].wanted.unwrap_or(u32::MAX));
        let count = enough_for.min(most);
        let filled = count.checked_mul(size).ok_or(ScalingError::TooLarge)?;
        left -= filled;
        counts[at] = count.to_u32().ok_or(ScalingError::TooLarge)?;
        if count < most {
            let more = size - left;
            until_more = Some(until_more.map_or(more, |known| known.min(more)));
        }
    }
    Ok(InOrder { counts, left, until_more })
}

/// How few and how many become full within the band. More of one kind may leave less for another, so every change between the
/// ends of the band is followed.
fn range(
    out: Grams,
    kinds: &[Kind],
    nets: &[Decimal],
    band: &DensityBand,
    likely: &[u32],
) -> Result<(Vec<u32>, Vec<u32>), ScalingError> {
    let (mut fewest, mut most) = (likely.to_vec(), likely.to_vec());
    if band.low == band.high {
        return Ok((fewest, most));
    }
    let volume = |density: Density| out.value().checked_div(density.value()).ok_or(ScalingError::TooLarge);
    let (mut there, end) = (volume(band.high)?, volume(band.low)?);
    for _ in 0..MOST_CHANGES {
        let filled = fill_in_order(there, kinds, nets)?;
        for (at, count) in filled.counts.iter().enumerate() {
            fewest[at] = fewest[at].min(*count);
            most[at] = most[at].max(*count);
        }
        match filled.until_more.and_then(|more| there.checked_add(more)) {
            Some(next) if next <= end => there = next,
            _ => return Ok((fewest, most)),
        }
    }
    Err(ScalingError::TooLarge)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::batch_plan::Containers;
    use crate::composition::DensityEstimate;
    use crate::packaging::{comes_out, fill};
    use proptest::prelude::*;
    use rust_decimal::dec;

    fn kinds() -> impl Strategy<Value = Vec<Kind>> {
        let one = (50i64..3000, 0i64..2000, 0i64..1000, proptest::option::of(1u32..30));
        proptest::collection::vec(one, 1..6).prop_map(|all| {
            all.into_iter()
                .map(|(volume, headspace, stays, wanted)| Kind {
                    volume: Millilitres::new(Decimal::new(volume, 1)).unwrap(),
                    headspace: Percent::new(Decimal::new(headspace, 2)).unwrap(),
                    stays: Percent::new(Decimal::new(stays, 2)).unwrap(),
                    wanted,
                })
                .collect()
        })
    }

    fn band(density: i64, known: i64) -> DensityBand {
        let density = Density::new(Decimal::new(density, 2)).unwrap();
        let known = Percent::new(Decimal::from(known)).unwrap();
        DensityBand::of(None, Some(DensityEstimate { density, known })).unwrap()
    }

    proptest! {
        #[test]
        fn what_is_filled_left_over_and_lost_is_what_was_made(
            made in 0i64..2_000_000,
            loss in 0i64..3000,
            kinds in kinds(),
            density in 80i64..140,
            known in 0i64..=100,
        ) {
            let made = Grams::new(Decimal::new(made, 2)).unwrap();
            let out = comes_out(made, Percent::new(Decimal::new(loss, 2)).unwrap()).unwrap();
            let lost = made.value() * Decimal::new(loss, 2) / dec!(100);
            let shared = share_out(out, &kinds, &band(density, known)).unwrap();
            let filled: Decimal = shared.kinds.iter().map(|each| Decimal::from(each.count) * each.each.value()).sum();
            prop_assert_eq!(filled + shared.left.value() + lost, made.value());
            for (kind, each) in kinds.iter().zip(&shared.kinds) {
                prop_assert_eq!(each.short, kind.wanted.map_or(0, |wanted| wanted - each.count));
                // What is left would not have filled one more of those that still lack, or of those that take the rest.
                if kind.wanted.is_none() || each.short > 0 {
                    prop_assert!(shared.left < each.each);
                }
                prop_assert!(each.fewest <= each.count && each.count <= each.most);
                prop_assert!(each.gives <= each.each);
            }
        }

        #[test]
        fn whatever_the_density_within_its_band_no_fewer_and_no_more_become_full(
            out in 0i64..1_000_000,
            kinds in kinds(),
            density in 80i64..140,
            known in 0i64..=100,
            at in 0i64..=1000,
        ) {
            let out = Grams::new(Decimal::new(out, 2)).unwrap();
            let band = band(density, known);
            let share = Decimal::new(at, 3);
            let between = band.low.value() + (band.high.value() - band.low.value()) * share;
            let one = DensityBand::of(Some(Density::new(between.round_dp(6)).unwrap()), None).unwrap();
            let (shared, there) = (share_out(out, &kinds, &band).unwrap(), share_out(out, &kinds, &one).unwrap());
            for (each, there) in shared.kinds.iter().zip(&there.kinds) {
                prop_assert!(each.fewest <= there.count && there.count <= each.most, "{:?} {:?}", each, there);
            }
        }

        #[test]
        fn one_kind_that_takes_the_rest_is_filled_as_ever(
            out in 0i64..1_000_000,
            volume in 1i64..3000,
            headspace in 0i64..9000,
            density in 80i64..140,
            known in 0i64..=100,
        ) {
            let out = Grams::new(Decimal::new(out, 2)).unwrap();
            let band = band(density, known);
            let (volume, headspace) = (Decimal::new(volume, 1), Decimal::new(headspace, 2));
            let volume = Millilitres::new(volume).unwrap();
            let headspace = Percent::new(headspace).unwrap();
            let containers = Containers { count: 1, volume, headspace, loss: Percent::ZERO, density: None };
            let one = fill(out, &containers, &band, Percent::ZERO).unwrap();
            let kind = Kind { volume, headspace, stays: Percent::ZERO, wanted: None };
            let shared = share_out(out, &[kind], &band).unwrap();
            let it = shared.kinds[0];
            prop_assert_eq!((one.each, one.count, one.left), (it.each, it.count, shared.left));
            // Where a container becomes full to the last digit, division decides.
            prop_assert!(one.fewest.abs_diff(it.fewest) <= 1 && one.most.abs_diff(it.most) <= 1);
        }

        #[test]
        fn a_batch_that_is_planned_for_what_is_wanted_fills_it(kinds in kinds(), density in 80i64..140) {
            let density = Density::new(Decimal::new(density, 2)).unwrap();
            let band = DensityBand::of(Some(density), None).unwrap();
            let shared = share_out(wanted_in_all(&kinds, density).unwrap(), &kinds, &band).unwrap();
            prop_assert!(shared.kinds.iter().all(|each| each.short == 0));
            prop_assert_eq!(shared.left, Grams::ZERO);
        }
    }

    #[test]
    fn what_is_short_is_said_and_what_still_fits_is_filled() {
        let kind = |volume, wanted| Kind {
            volume: Millilitres::new(volume).unwrap(),
            headspace: Percent::ZERO,
            stays: Percent::ZERO,
            wanted,
        };
        let band = DensityBand::of(Some(Density::new(dec!(1)).unwrap()), None).unwrap();
        let shared =
            share_out(Grams::new(dec!(540)).unwrap(), &[kind(dec!(50), Some(12)), kind(dec!(30), Some(4))], &band)
                .unwrap();
        let told: Vec<(u32, u32)> = shared.kinds.iter().map(|each| (each.count, each.short)).collect();
        assert_eq!((told, shared.left.value()), (vec![(10, 2), (1, 3)], dec!(10)));
        let out = Grams::new(dec!(1)).unwrap();
        assert_eq!(share_out(out, &[], &band).unwrap_err().code(), "batch.nothing");
        assert_eq!(share_out(out, &[kind(dec!(0), None)], &band).unwrap_err().code(), "batch.nothing");
        let no_room = Kind { headspace: Percent::new(dec!(95)).unwrap(), ..kind(dec!(30), None) };
        assert_eq!(share_out(out, &[no_room], &band).unwrap_err().code(), "batch.allowance");
    }
}
