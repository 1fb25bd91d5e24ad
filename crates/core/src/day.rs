//! Days of the calendar, and counting with them.

use core::fmt;
use core::str::FromStr;

/// From the first of January of year 1.
const DAYS_TO_1970: i64 = 719_162;
const DAY_MS: i64 = 86_400_000;

/// A day of the Gregorian calendar, written `2026-11-25` (ISO 8601).
///
/// *Valid for* the years 1 to 9999.
///
/// ```
/// use stillroom_core::day::Day;
/// let made: Day = "2026-01-31".parse()?;
/// assert_eq!(made.plus_months(1).unwrap().to_string(), "2026-02-28");
/// assert_eq!(made.plus_days(30).unwrap().to_string(), "2026-03-02");
/// assert!("2026-02-29".parse::<Day>().is_err());
/// # Ok::<(), stillroom_core::day::NotADay>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Day {
    year: u16,
    month: u8,
    of_month: u8,
}

/// A text that is no day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("no day of the calendar")]
pub struct NotADay;

impl NotADay {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        "day.not-a-day"
    }
}

const fn is_leap(year: u16) -> bool {
    year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400))
}

const fn days_of_month(year: u16, month: u8) -> u8 {
    match month {
        2 if is_leap(year) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

impl Day {
    /// A day, if the calendar has it.
    ///
    /// # Errors
    /// `day.not-a-day` outside the years 1 to 9999, the twelve months or the days of that month.
    pub const fn new(year: u16, month: u8, day: u8) -> Result<Self, NotADay> {
        let known = year >= 1 && year <= 9999 && month >= 1 && month <= 12;
        if known && day >= 1 && day <= days_of_month(year, month) {
            Ok(Self { year, month, of_month: day })
        } else {
            Err(NotADay)
        }
    }

    /// The year.
    #[must_use]
    pub const fn year(self) -> u16 {
        self.year
    }

    /// The month, from 1.
    #[must_use]
    pub const fn month(self) -> u8 {
        self.month
    }

    /// The day of its month, from 1.
    #[must_use]
    pub const fn of_month(self) -> u8 {
        self.of_month
    }

    /// Days since the first of January of year 1.
    #[must_use]
    pub fn number(self) -> i64 {
        let before = i64::from(self.year) - 1;
        let months: i64 = (1..self.month).map(|month| i64::from(days_of_month(self.year, month))).sum();
        before * 365 + before / 4 - before / 100 + before / 400 + months + i64::from(self.of_month) - 1
    }

    /// The day of that number. `None` outside the years 1 to 9999.
    #[must_use]
    pub fn from_number(number: i64) -> Option<Self> {
        let mut year = u16::try_from(number.checked_div(366)?.checked_add(1)?).ok()?;
        // The guess is early by at most one year in fifteen hundred days.
        while Self::new(year.checked_add(1)?, 1, 1).is_ok_and(|next| next.number() <= number) {
            year += 1;
        }
        let mut rest = number - Self::new(year, 1, 1).ok()?.number();
        let mut month = 1;
        while month < 12 && rest >= i64::from(days_of_month(year, month)) {
            rest -= i64::from(days_of_month(year, month));
            month += 1;
        }
        Self::new(year, month, u8::try_from(rest + 1).ok()?).ok()
    }

    /// So many days later, or earlier where negative.
    #[must_use]
    pub fn plus_days(self, days: i64) -> Option<Self> {
        Self::from_number(self.number().checked_add(days)?)
    }

    /// So many months later: the same day of that month, or its last where it has no such day.
    #[must_use]
    pub fn plus_months(self, months: u32) -> Option<Self> {
        let count = u32::from(self.year) * 12 + u32::from(self.month) - 1;
        let later = count.checked_add(months)?;
        let (year, month) = (u16::try_from(later / 12).ok()?, u8::try_from(later % 12 + 1).ok()?);
        Self::new(year, month, self.of_month.min(days_of_month(year, month))).ok()
    }

    /// Days from another day to this one.
    #[must_use]
    pub fn since(self, earlier: Self) -> i64 {
        self.number() - earlier.number()
    }

    /// The day it is so many milliseconds after 1970 began, where local time is some minutes ahead of universal time.
    #[must_use]
    pub fn from_moment(milliseconds: u64, minutes_ahead: i64) -> Option<Self> {
        let local = i64::try_from(milliseconds).ok()?.checked_add(minutes_ahead.checked_mul(60_000)?)?;
        Self::from_number(local.div_euclid(DAY_MS) + DAYS_TO_1970)
    }

    /// When it begins in universal time, in milliseconds since 1970. `None` before that.
    #[must_use]
    pub fn begins(self) -> Option<u64> {
        u64::try_from((self.number() - DAYS_TO_1970).checked_mul(DAY_MS)?).ok()
    }

    /// The day as a calendar file writes it: `20261125`.
    #[must_use]
    pub fn compact(self) -> String {
        format!("{:04}{:02}{:02}", self.year, self.month, self.of_month)
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.of_month)
    }
}

impl FromStr for Day {
    type Err = NotADay;
    fn from_str(text: &str) -> Result<Self, NotADay> {
        let mut parts = text.split('-');
        let mut number = |length: usize| -> Result<u16, NotADay> {
            let part = parts.next().ok_or(NotADay)?;
            if part.len() != length || !part.bytes().all(|byte| byte.is_ascii_digit()) {
                return Err(NotADay);
            }
            part.parse().map_err(|_| NotADay)
        };
        let (year, month, day) = (number(4)?, number(2)?, number(2)?);
        if parts.next().is_some() {
            return Err(NotADay);
        }
        let small = |number: u16| u8::try_from(number).map_err(|_| NotADay);
        Self::new(year, small(month)?, small(day)?)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::{Date, date};
    use jiff::{Span, Timestamp, tz};
    use proptest::prelude::*;

    #[test]
    fn only_days_of_the_calendar_are_read() {
        for wrong in ["", "2026-13-01", "2026-02-29", "1900-02-29", "0000-01-01", "26-01-01", "2026-1-1", "2026-01-00"]
        {
            assert_eq!(wrong.parse::<Day>().unwrap_err().code(), "day.not-a-day", "{wrong}");
        }
        assert!("2026-01-01-1".parse::<Day>().is_err());
        assert!("2024-02-29".parse::<Day>().is_ok());
    }

    fn as_day(date: Date) -> Day {
        date.to_string().parse().unwrap()
    }

    proptest! {
        /// Source: the jiff library's proleptic Gregorian calendar.
        #[test]
        fn counting_agrees_with_a_calendar_library(
            year in 1i16..9990, month in 1i8..=12, day in 1i8..=28, days in 0i64..3000, months in 0u32..100,
        ) {
            let there = date(year, month, day);
            let here = as_day(there);
            let later = there.checked_add(Span::new().days(days)).unwrap();
            prop_assert_eq!(here.plus_days(days), Some(as_day(later)));
            prop_assert_eq!(as_day(later).since(here), days);
            prop_assert_eq!(as_day(later).plus_days(-days), Some(here));
            let last = there.last_of_month();
            let by_months = last.checked_add(Span::new().months(months)).unwrap();
            prop_assert_eq!(as_day(last).plus_months(months), Some(as_day(by_months)));
        }

        #[test]
        fn a_moment_falls_on_the_day_the_library_says(seconds in 0i64..250_000_000_000, ahead in -14i64..=14) {
            let zone = tz::TimeZone::fixed(tz::Offset::constant(i8::try_from(ahead).unwrap()));
            let expected = Timestamp::from_second(seconds).unwrap().to_zoned_datetime(zone).date();
            let moment = u64::try_from(seconds).unwrap() * 1000;
            prop_assert_eq!(Day::from_moment(moment, ahead * 60), Some(as_day(expected)));
            let begins = Day::from_moment(moment, 0).and_then(Day::begins).unwrap();
            prop_assert!(begins <= moment && moment - begins < 86_400_000 && begins.is_multiple_of(86_400_000));
        }
    }
}
