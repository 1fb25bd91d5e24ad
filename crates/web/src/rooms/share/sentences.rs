//! Which message says what of sharing.

use crate::messages::sentences::list;
use crate::messages::share as says;
use crate::session::history::Slot;
use stillroom_core::day::Day;
use stillroom_core::{ProductKind, Purpose};
use stillroom_exchange::backup::{self, BackupError};
use stillroom_exchange::link::{LinkError, Part};

/// A link that cannot be read.
pub(crate) fn unreadable_link(error: LinkError) -> String {
    match error {
        LinkError::Damaged => says::link_damaged().to_owned(),
        LinkError::CutOff => says::link_cut_off().to_owned(),
        LinkError::Newer { .. } => says::link_newer().to_owned(),
        LinkError::TooLarge { part, most } => says::link_too_large(counted(part), &most.to_string()),
    }
}

/// A formula that is no link.
pub(crate) fn no_link(error: LinkError) -> String {
    match error {
        LinkError::TooLarge { part, most } => says::no_link_too_large(counted(part), &most.to_string()),
        LinkError::Damaged | LinkError::CutOff | LinkError::Newer { .. } => says::no_link().to_owned(),
    }
}

fn counted(part: Part) -> &'static str {
    match part {
        Part::Characters => "characters",
        Part::Text => "text",
        Part::Lines => "lines",
        Part::Phases => "phases",
        Part::Materials => "materials",
        Part::Parts => "parts",
        Part::Steps => "steps",
    }
}

/// How long a link is.
pub(crate) fn link_length(characters: usize) -> String {
    let say = if characters > 2_000 { says::link_length_long } else { says::link_length };
    say(&characters.to_string())
}

/// An own material that comes along.
pub(crate) fn material_comes_along(name: &str, brings: &str) -> String {
    if brings.is_empty() { name.to_owned() } else { says::material_comes_along(name, brings) }
}

// ---- what is different ---------------------------------------------------------------------------------------------

/// How much is different.
pub(crate) fn differences(lines: usize, composition: usize, others: usize) -> String {
    let counts: Vec<String> = [
        (lines, says::count_of_materials as fn(usize) -> String),
        (composition, says::count_of_constituents),
        (others, says::count_of_others),
    ]
    .into_iter()
    .filter(|(count, _)| *count > 0)
    .map(|(count, say)| say(count))
    .collect();
    if counts.is_empty() { says::same().to_owned() } else { says::different(&list(&counts)) }
}

/// How a product is used.
pub(crate) fn use_of_product(purpose: Purpose) -> String {
    says::use_of_product(match purpose {
        Purpose::LeaveOn => "leave-on",
        Purpose::RinseOff => "rinse-off",
    })
}

/// What kind of product it is; nothing where nobody said.
pub(crate) fn kind_of_product(kind: Option<ProductKind>) -> String {
    kind.map_or_else(String::new, |kind| says::kind_of_product(kind.slug()))
}

// ---- backups -------------------------------------------------------------------------------------------------------

/// A file that is no backup.
pub(crate) fn unreadable_backup(error: &BackupError) -> String {
    match error {
        BackupError::NotABackup => says::backup_not_one().to_owned(),
        BackupError::Damaged { line, column } => says::backup_damaged(&line.to_string(), &column.to_string()),
        BackupError::ZipDamaged => says::backup_zip_damaged().to_owned(),
        BackupError::Newer { .. } => says::backup_newer().to_owned(),
        BackupError::TooLarge => says::backup_too_large(
            &backup::MOST_RECORDS.to_string(),
            &(backup::LARGEST_BACKUP / 1_000_000).to_string(),
            &backup::MOST_PHOTOS.to_string(),
            &(backup::LARGEST_PHOTO / 1_000_000).to_string(),
        ),
    }
}

/// How many photos a backup holds, and how many of them are not here.
pub(crate) fn photos_of_backup(all: usize, new: usize) -> String {
    match new {
        0 => says::photos_all_here(all),
        new if new == all => says::photos_all_new(all),
        new => says::photos_some_new(&all.to_string(), &new.to_string()),
    }
}

/// What a record of a backup is.
pub(crate) fn kind_of_record(slot: &Slot) -> &'static str {
    match slot {
        Slot::Formula(..) => says::record_formula(),
        Slot::Material(..) => says::record_material(),
        Slot::Extract(..) => says::record_extract(),
        Slot::Holding(..) => says::record_holding(),
        Slot::Batch(..) => says::record_batch(),
        Slot::Journal(..) => says::record_journal(),
        Slot::Settings(_) => says::record_settings(),
    }
}

/// How many records of a backup are new, here already, different and unreadable.
pub(crate) fn what_a_backup_holds(made: &str, [new, same, differs, unreadable]: [usize; 4]) -> String {
    let holds = says::backup_holds(made, &new.to_string(), &same.to_string(), &differs.to_string());
    if unreadable == 0 { holds } else { [holds, says::backup_unreadable(&unreadable.to_string())].join(" ") }
}

/// A backup was restored: how many records, how many photos, and how many photos could not be kept.
pub(crate) fn restored(records: usize, photos: usize, lost: usize) -> String {
    let said = [
        (records, says::restored_records as fn(usize) -> String),
        (photos, says::restored_photos),
        (lost, says::lost_photos),
    ];
    let said = said.into_iter().filter(|(count, _)| *count > 0).map(|(count, say)| say(count));
    said.collect::<Vec<_>>().join(" ")
}

// ---- moments -------------------------------------------------------------------------------------------------------

/// A time as `2026-11-25 10:34`, where the clock is so many minutes ahead of universal time.
pub(crate) fn day_and_time(milliseconds: u64, minutes_ahead: i64) -> String {
    let minutes = i64::try_from(milliseconds / 60_000).unwrap_or(0).saturating_add(minutes_ahead);
    let minute = minutes.rem_euclid(1440);
    // What lies behind the calendar is no moment that a clock shows.
    let Some(day) = Day::from_moment(milliseconds, minutes_ahead) else { return milliseconds.to_string() };
    crate::messages::desk::day_and_time(
        &format!("{:04}", day.year()),
        &format!("{:02}", day.month()),
        &format!("{:02}", day.of_month()),
        &format!("{:02}", minute / 60),
        &format!("{:02}", minute % 60),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Unix times of the calendar: 2000-02-29 and 2024-12-31 by RFC 3339, 1970 by definition.
    #[test]
    fn days_are_those_of_the_calendar() {
        assert_eq!(day_and_time(0, 0), "1970-01-01 00:00");
        assert_eq!(day_and_time(951_782_400_000, 0), "2000-02-29 00:00");
        assert_eq!(day_and_time(1_735_689_599_000, 0), "2024-12-31 23:59");
        assert_eq!(day_and_time(1_735_689_599_000, 1), "2025-01-01 00:00");
        assert_eq!(day_and_time(0, -60), "1969-12-31 23:00");
        assert!(!day_and_time(u64::MAX, 0).is_empty());
    }
}
