//! Rounding that keeps the sum: largest remainder over whole units, and what rounding left of a total.

use rust_decimal::Decimal;

/// Decimals a contribution keeps: with up to three whole digits it fits a [`Decimal`], so sums stay exact.
const MOST_DECIMALS: u32 = 24;

/// Shares out whole units so that they sum to `units` and each share stays within one unit of its quota.
///
/// Every quota first gets its whole part; the units left over go one each to the largest fractions, ties to the
/// earlier quota. A quota that is whole already never changes. If `units` lies outside what whole parts and whole
/// parts plus one can reach, the nearest reachable sum is given.
///
/// *Units*: quotas and result in counts of one unit, for example of a scale's smallest step.
/// *Source*: Hamilton's method of apportionment.
///
/// ```
/// use rust_decimal::dec;
/// use stillroom_core::apportion::largest_remainder;
/// assert_eq!(largest_remainder(&[dec!(33.4), dec!(33.3), dec!(33.3)], dec!(100)), [dec!(34), dec!(33), dec!(33)]);
/// ```
#[must_use]
pub fn largest_remainder(quotas: &[Decimal], units: Decimal) -> Vec<Decimal> {
    let mut shares: Vec<Decimal> = quotas.iter().map(Decimal::floor).collect();
    let mut left = units - shares.iter().sum::<Decimal>();
    if left <= Decimal::ZERO {
        return shares;
    }
    let mut by_fraction: Vec<usize> = (0..quotas.len()).filter(|&at| quotas[at] > shares[at]).collect();
    // A stable sort: ties keep the order of the lines.
    by_fraction.sort_by(|&a, &b| (quotas[b] - shares[b]).cmp(&(quotas[a] - shares[a])));
    for at in by_fraction {
        if left < Decimal::ONE {
            break;
        }
        shares[at] += Decimal::ONE;
        left -= Decimal::ONE;
    }
    shares
}

/// Rounds numbers to `decimals` decimals so that they sum to `total`, each within one step of what it was.
///
/// `None` if a number or the total is too large to be counted in steps.
#[must_use]
pub fn round_to_total(numbers: &[Decimal], total: Decimal, decimals: u32) -> Option<Vec<Decimal>> {
    let steps_per_one = Decimal::from(10u64.checked_pow(decimals)?);
    let quotas: Option<Vec<Decimal>> = numbers.iter().map(|number| number.checked_mul(steps_per_one)).collect();
    let shares = largest_remainder(&quotas?, total.checked_mul(steps_per_one)?);
    shares.into_iter().map(|share| share.checked_div(steps_per_one)).collect()
}

/// Rounds shares to what stays exact in sums and lets the largest take what rounding left, so that they make exactly
/// `total`.
pub(crate) fn conserve(shares: &mut [Decimal], total: Decimal) {
    for share in shares.iter_mut().filter(|share| share.scale() > MOST_DECIMALS) {
        *share = share.round_dp(MOST_DECIMALS);
    }
    let sum: Decimal = shares.iter().sum();
    if sum != total
        && let Some(largest) = shares.iter_mut().rev().max()
    {
        *largest += total - sum;
    }
}
