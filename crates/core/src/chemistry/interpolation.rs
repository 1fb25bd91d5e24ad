//! Values between the rows of a table, and the way back.

/// Rows of a table, first column rising.
pub type Table = &'static [(f64, f64)];

/// The row below `x`, or `None` outside the table.
fn find_row(table: Table, x: f64) -> Option<usize> {
    let (first, last) = (table.first()?.0, table.last()?.0);
    if !(x >= first && x <= last) {
        return None;
    }
    Some(table.partition_point(|row| row.0 <= x).saturating_sub(1).min(table.len().saturating_sub(2)))
}

/// On the straight line between neighbouring rows. `None` outside the table.
#[must_use]
pub fn interpolate_linear(table: Table, x: f64) -> Option<f64> {
    let row = find_row(table, x)?;
    let (x0, y0) = *table.get(row)?;
    let Some(&(x1, y1)) = table.get(row + 1) else { return Some(y0) };
    Some(y0 + (y1 - y0) * (x - x0) / (x1 - x0))
}

/// On a smooth curve through the rows that rises and falls only where they do (Fritsch and Carlson, SIAM J. Numer.
/// Anal. 17:238, 1980). `None` outside the table.
#[must_use]
pub fn interpolate_smooth(table: Table, x: f64) -> Option<f64> {
    let row = find_row(table, x)?;
    let (x0, y0) = *table.get(row)?;
    let Some(&(x1, y1)) = table.get(row + 1) else { return Some(y0) };
    let width = x1 - x0;
    let (slope0, slope1) = (tangent(table, row), tangent(table, row + 1));
    let t = (x - x0) / width;
    let (t2, t3) = (t * t, t * t * t);
    Some(
        y0 * (2.0 * t3 - 3.0 * t2 + 1.0)
            + width * slope0 * (t3 - 2.0 * t2 + t)
            + y1 * (3.0 * t2 - 2.0 * t3)
            + width * slope1 * (t3 - t2),
    )
}

/// Slope of the smooth curve at a row: the weighted harmonic mean of the two chords, nothing where they disagree in sign.
fn tangent(table: Table, row: usize) -> f64 {
    let chord = |from: usize| {
        let ((x0, y0), (x1, y1)) = (table[from], table[from + 1]);
        (x1 - x0, (y1 - y0) / (x1 - x0))
    };
    let last = table.len() - 1;
    if row == 0 || row == last {
        return chord(if row == 0 { 0 } else { last - 1 }).1;
    }
    let ((width0, chord0), (width1, chord1)) = (chord(row - 1), chord(row));
    if chord0 * chord1 <= 0.0 {
        return 0.0;
    }
    let (weight0, weight1) = (2.0 * width1 + width0, width1 + 2.0 * width0);
    (weight0 + weight1) / (weight0 / chord0 + weight1 / chord1)
}

/// Where a rising function reaches `target` between `low` and `high`, by halving, to the last bit that matters. `None`
/// if it does not, or if the function has no value on the way.
pub fn solve_rising(low: f64, high: f64, target: f64, mut rising: impl FnMut(f64) -> Option<f64>) -> Option<f64> {
    let (mut low, mut high) = (low, high);
    let (at_low, at_high) = (rising(low)?, rising(high)?);
    // Written so that a number that is none answers `None`.
    if !(at_low <= target && target <= at_high) {
        return None;
    }
    for _ in 0..100 {
        let middle = low.midpoint(high);
        if middle <= low || middle >= high {
            break;
        }
        if rising(middle)? < target {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(low.midpoint(high))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const CURVE: Table = &[(0.0, 0.0), (1.0, 1.0), (2.0, 4.0), (4.0, 16.0)];

    #[test]
    fn both_curves_pass_through_the_rows_and_end_with_the_table() {
        for interpolate in [interpolate_linear, interpolate_smooth] {
            for (x, y) in CURVE {
                assert_eq!(interpolate(CURVE, *x), Some(*y));
            }
            assert_eq!(interpolate(CURVE, -0.1), None);
            assert_eq!(interpolate(CURVE, 4.1), None);
            assert_eq!(interpolate(CURVE, f64::NAN), None);
            assert_eq!(interpolate(&[], 0.0), None);
            assert_eq!(interpolate(&[(1.0, 5.0)], 1.0), Some(5.0));
        }
        assert_eq!(interpolate_linear(CURVE, 3.0), Some(10.0));
    }

    proptest! {
        #[test]
        fn the_smooth_curve_of_rising_rows_rises(a in 0.0..4.0_f64, b in 0.0..4.0_f64) {
            let (low, high) = (a.min(b), a.max(b));
            let [at_low, at_high] = [low, high].map(|x| interpolate_smooth(CURVE, x).unwrap());
            prop_assert!(at_low <= at_high + 1e-12);
        }

        #[test]
        fn solving_finds_what_was_put_in(x in 0.0..10.0_f64) {
            let found = solve_rising(0.0, 10.0, x.powi(3), |x| Some(x.powi(3))).unwrap();
            prop_assert!((found - x).abs() < 1e-5, "{found} for {x}");
        }
    }

    #[test]
    fn what_is_not_reached_is_not_found() {
        assert_eq!(solve_rising(0.0, 1.0, 2.0, Some), None);
        assert_eq!(solve_rising(0.0, 1.0, f64::NAN, Some), None);
        assert_eq!(solve_rising(0.0, 1.0, 0.5, |_| None), None);
    }
}
