//! How long a product and its materials keep: best-before, period after opening, the rule of 30 months, materials past
//! their day.

use crate::day::Day;
use crate::material::MaterialId;

/// Durability in months above which European law asks for a period after opening instead of a date.
///
/// *Source*: Regulation (EC) No 1223/2009, Article 19(1)(c) (from memory of the text). Local rules decide.
pub const MONTHS_TO_OPENING: u32 = 30;

/// What the product is, as far as keeping goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Keeping {
    /// Holds water and what acts enough to preserve it.
    PreservedWater,
    /// Holds water and nothing that acts enough.
    UnpreservedWater,
    /// Holds water that is bound, or strong alcohol: nothing grows, or a few things slowly.
    BoundWater,
    /// Holds no water.
    Anhydrous,
    /// Holds no water, and oils that turn rancid soon with nothing that keeps them from it.
    DelicateOil,
}

impl Keeping {
    /// The last day anybody should count on, whatever the materials bear: a week in the cold where nothing preserves, else so
    /// many months where no test of the product says otherwise. Where one does, only what is unpreserved is capped.
    ///
    /// *Source*: common practice: preserved and untested 12 months, bound water 6, oils 24, oils with many double bonds 6.
    #[must_use]
    pub fn last_day(self, made: Day, tested: bool) -> Option<Day> {
        let months = match self {
            Self::UnpreservedWater => return made.plus_days(7),
            _ if tested => return None,
            Self::PreservedWater => 12,
            Self::BoundWater | Self::DelicateOil => 6,
            Self::Anhydrous => 24,
        };
        made.plus_months(months)
    }
}

/// Months after opening that are usual where no laboratory has tested.
///
/// *Source*: common practice: water with a preservative 6 to 12 months, without water 12. Without a preservative it is
/// days, in the cold, and there is no such period.
#[must_use]
pub const fn usual_months_after_opening(keeping: Keeping) -> Option<(u32, u32)> {
    match keeping {
        Keeping::PreservedWater => Some((6, 12)),
        Keeping::BoundWater | Keeping::DelicateOil => Some((3, 6)),
        Keeping::Anhydrous => Some((12, 12)),
        Keeping::UnpreservedWater => None,
    }
}

/// What limits how long a product keeps.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Limit {
    /// The material that has to be used first, and its last day.
    Material(MaterialId, Day),
    /// What the maker states from a stability test, in months.
    Stated(u32),
    /// How such a product keeps.
    Keeping(Keeping),
    /// Nothing is known: no material states a day, and nothing was tested.
    Unknown,
}

/// What a label may say of how long a product keeps.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Dates {
    /// Last day it should be used, unopened; `None` where nothing is known.
    pub best_before: Option<Day>,
    /// What set that day.
    pub limit: Limit,
    /// Materials of which no day is known: the answer is silent about them.
    pub unknown: Vec<MaterialId>,
    /// Whole months from making to that day.
    pub months: Option<u32>,
    /// Whether a date has to stand on the label (30 months or less), by the rule of 30 months.
    pub date_required: bool,
    /// Usual months after opening, fewest and most.
    pub after_opening: Option<(u32, u32)>,
}

/// Works out the dates of a product.
///
/// Best-before is the earliest last day of any material, or what a stability test of the product allows if that is
/// earlier, and never later than such a product keeps ([`Keeping::last_day`]). *Source*: common practice (no longer than the
/// earliest material unless stability data say so); the rule of 30 months: see [`MONTHS_TO_OPENING`].
///
/// ```
/// use stillroom_core::MaterialId;
/// use stillroom_core::shelf_life::{Keeping, work_out_dates};
/// let made = "2026-03-01".parse()?;
/// let materials = [(MaterialId::Catalogue(1), None), (MaterialId::Catalogue(2), Some("2027-05-31".parse()?))];
/// let dates = work_out_dates(made, &materials, Some(24), Keeping::PreservedWater);
/// assert_eq!(dates.best_before, Some("2027-05-31".parse()?));
/// assert!(dates.date_required);
/// // Untested it keeps a year, and unpreserved a week in the cold.
/// let untested = work_out_dates(made, &materials, None, Keeping::PreservedWater);
/// assert_eq!(untested.best_before, Some("2027-03-01".parse()?));
/// let unpreserved = work_out_dates(made, &materials, Some(24), Keeping::UnpreservedWater);
/// assert_eq!(unpreserved.best_before, Some("2026-03-08".parse()?));
/// # Ok::<(), stillroom_core::day::NotADay>(())
/// ```
#[must_use]
pub fn work_out_dates(
    made: Day,
    materials: &[(MaterialId, Option<Day>)],
    stated_months: Option<u32>,
    keeping: Keeping,
) -> Dates {
    let earliest = materials.iter().filter_map(|(id, day)| Some((*id, (*day)?))).min_by_key(|(_, day)| *day);
    let stated = stated_months.and_then(|months| Some((months, made.plus_months(months)?)));
    let (best_before, limit) = match (earliest, stated) {
        (Some((_, day)), Some((months, tested))) if tested < day => (Some(tested), Limit::Stated(months)),
        (Some((id, day)), _) => (Some(day), Limit::Material(id, day)),
        (None, Some((months, tested))) => (Some(tested), Limit::Stated(months)),
        (None, None) => (None, Limit::Unknown),
    };
    let capped = keeping.last_day(made, stated.is_some()).filter(|cap| best_before.is_none_or(|day| *cap < day));
    let (best_before, limit) = capped.map_or((best_before, limit), |cap| (Some(cap), Limit::Keeping(keeping)));
    let months = best_before.map(|day| whole_months(made, day));
    Dates {
        best_before,
        limit,
        unknown: materials.iter().filter(|(_, day)| day.is_none()).map(|(id, _)| *id).collect(),
        months,
        // A day past thirty months after making, not a month begun: to be on the careful side.
        date_required: best_before
            .is_none_or(|day| made.plus_months(MONTHS_TO_OPENING).is_none_or(|limit| day <= limit)),
        after_opening: usual_months_after_opening(keeping),
    }
}

/// Whole months from a day to a later one; none if it is earlier.
fn whole_months(from: Day, to: Day) -> u32 {
    (1..=1200).take_while(|months| from.plus_months(*months).is_some_and(|day| day <= to)).last().unwrap_or(0)
}

/// A material past its last day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Expired {
    /// The material.
    pub material: MaterialId,
    /// Its last day.
    pub last_day: Day,
    /// Days since then.
    pub days: i64,
}

/// Stable code of the finding that a material is past its day.
pub const EXPIRED_CODE: &str = "material.expired";

/// Which materials are past their last day, the longest first; each once.
///
/// `last_days` pairs each material with its last day where one is known: silence means nothing is known of it.
///
/// ```
/// use stillroom_core::MaterialId;
/// use stillroom_core::shelf_life::expired;
/// let oil = MaterialId::Catalogue(8);
/// let past = expired([(oil, Some("2026-03-01".parse()?))], "2026-03-11".parse()?);
/// assert_eq!((past[0].material, past[0].days), (oil, 10));
/// // On its last day it may still be used.
/// assert!(expired([(oil, Some("2026-03-01".parse()?))], "2026-03-01".parse()?).is_empty());
/// # Ok::<(), stillroom_core::day::NotADay>(())
/// ```
#[must_use]
pub fn expired(last_days: impl IntoIterator<Item = (MaterialId, Option<Day>)>, today: Day) -> Vec<Expired> {
    let mut past: Vec<Expired> = last_days
        .into_iter()
        .filter_map(|(material, day)| {
            let last_day = day.filter(|day| *day < today)?;
            Some(Expired { material, last_day, days: today.since(last_day) })
        })
        .collect();
    past.sort_by_key(|each| (each.last_day, each.material));
    past.dedup_by_key(|each| each.material);
    past
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> Day {
        text.parse().unwrap()
    }

    #[test]
    fn the_rule_of_thirty_months_turns_on_the_day() {
        let made = day("2026-03-01");
        let oil = MaterialId::Catalogue(8);
        let until = |text: &str| work_out_dates(made, &[(oil, Some(day(text)))], Some(60), Keeping::Anhydrous);
        assert!(until("2028-09-01").date_required);
        assert!(!until("2028-09-02").date_required);
        assert_eq!(until("2028-09-02").months, Some(30));
    }

    #[test]
    fn a_test_of_the_product_counts_only_where_it_is_earlier() {
        let made = day("2026-03-01");
        let materials = [(MaterialId::Catalogue(8), Some(day("2027-06-30"))), (MaterialId::Catalogue(1), None)];
        let short = work_out_dates(made, &materials, Some(12), Keeping::PreservedWater);
        assert_eq!((short.best_before, short.limit), (Some(day("2027-03-01")), Limit::Stated(12)));
        assert_eq!(short.unknown, [MaterialId::Catalogue(1)]);
        let long = work_out_dates(made, &materials, Some(36), Keeping::PreservedWater);
        assert_eq!(long.limit, Limit::Material(MaterialId::Catalogue(8), day("2027-06-30")));
        let nothing = work_out_dates(made, &materials[1..], None, Keeping::UnpreservedWater);
        assert_eq!((nothing.best_before, nothing.after_opening), (Some(day("2026-03-08")), None));
        assert_eq!(nothing.limit, Limit::Keeping(Keeping::UnpreservedWater));
        assert!(nothing.date_required);
    }

    #[test]
    fn no_product_keeps_longer_than_its_kind() {
        let made = day("2026-03-01");
        let until =
            |keeping| work_out_dates(made, &[(MaterialId::Catalogue(8), Some(day("2031-01-01")))], None, keeping);
        for (keeping, months) in [
            (Keeping::PreservedWater, 12),
            (Keeping::BoundWater, 6),
            (Keeping::Anhydrous, 24),
            (Keeping::DelicateOil, 6),
        ] {
            assert_eq!((until(keeping).months, until(keeping).limit), (Some(months), Limit::Keeping(keeping)));
        }
    }
}
