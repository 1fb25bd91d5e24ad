//! The sentences of sharing, in English.

use crate::history::Slot;
use std::fmt::Write as _;
use stillroom_exchange::backup::{self, BackupError};
use stillroom_exchange::link::{LinkError, Part};

/// A link that cannot be read.
pub(crate) fn unreadable_link(error: LinkError) -> String {
    match error {
        LinkError::Damaged => {
            "This link is damaged: a character of it was lost or changed on its way, or it is no formula of Stillroom. \
             Nothing was opened and nothing of yours was touched. Ask for the link once more."
                .to_owned()
        }
        LinkError::CutOff => {
            "This link is cut off: its end is missing, as happens when a long address is broken across two lines. Copy \
             all of it and open it again. Nothing of yours was touched."
                .to_owned()
        }
        LinkError::Newer { .. } => {
            "This link was made by a later version of Stillroom. Reload the page to get that version, then open the link \
             again. Nothing of yours was touched."
                .to_owned()
        }
        LinkError::TooLarge { part, most } => {
            format!("This link holds more than a link may: at most {most} {}. It was not opened.", counted(part))
        }
    }
}

/// A formula that is no link.
pub(crate) fn no_link(error: LinkError) -> String {
    match error {
        LinkError::TooLarge { part, most } => format!(
            "This formula is too large for a link, which holds at most {most} {}. Write a backup file instead.",
            counted(part)
        ),
        LinkError::Damaged | LinkError::CutOff | LinkError::Newer { .. } => {
            "This formula cannot be made a link. Write a backup file instead.".to_owned()
        }
    }
}

const fn counted(part: Part) -> &'static str {
    match part {
        Part::Characters => "characters",
        Part::Text => "bytes of text",
        Part::Lines => "lines in a phase",
        Part::Phases => "phases",
        Part::Materials => "own materials",
        Part::Parts => "parts in a material",
        Part::Steps => "steps",
    }
}

/// A formula that is not there.
pub(crate) const fn no_formula() -> &'static str {
    "There is no such formula on this device."
}

/// How long a link is.
pub(crate) fn link_length(characters: usize) -> String {
    let remark = if characters > 2_000 {
        " Some programs cut off addresses longer than about 2000 characters: try it before you publish it."
    } else {
        ""
    };
    format!("{characters} characters. The formula itself is in the link: no server sees or keeps it.{remark}")
}

/// How wide a code has to be.
pub(crate) fn code_width(millimetres: u32) -> String {
    format!(
        "On paper make it at least {millimetres}\u{a0}mm wide, flat and with its white margin, so that a phone reads it."
    )
}

/// A link too long for a code.
pub(crate) fn no_code(characters: usize, most: usize) -> String {
    format!(
        "Too long for a code that a phone reads from a label: {characters} characters, and such a code holds {most}. \
         Shorter notes and steps help, or share the link itself."
    )
}

/// An own material that comes along.
pub(crate) fn material_comes_along(name: &str, brings: &str) -> String {
    if brings.is_empty() { name.to_owned() } else { format!("{name}: {brings}") }
}

/// Name of a copy that stands beside another version.
pub(crate) fn name_of_kept_copy(name: &str) -> String {
    format!("{name} (from a link)")
}

/// A copy was kept.
pub(crate) fn copy_kept(name: &str) -> String {
    format!("“{name}” is on your shelf now.")
}

/// The same is there already.
pub(crate) fn already_kept(name: &str) -> String {
    format!("“{name}” is on your shelf already, unchanged.")
}

/// How much is different.
pub(crate) fn differences(lines: usize, composition: usize, others: usize) -> String {
    if lines + composition + others == 0 {
        return "Nothing is different.".to_owned();
    }
    let count = |count: usize, one: &str, many: &str| match count {
        0 => None,
        1 => Some(format!("1 {one}")),
        count => Some(format!("{count} {many}")),
    };
    let counts = [
        count(lines, "material", "materials"),
        count(composition, "constituent of the product", "constituents of the product"),
        count(others, "other thing", "other things"),
    ];
    let counts: Vec<String> = counts.into_iter().flatten().collect();
    format!("Different: {}.", counts.join(", "))
}

/// A text that is different.
pub(crate) fn text_differs(what: &str, before: &str, after: &str) -> String {
    let or_none = |text: &str| if text.is_empty() { "none".to_owned() } else { text.to_owned() };
    format!("{what}: {} → {}", or_none(before), or_none(after))
}

/// The method is different.
pub(crate) const METHOD_DIFFERS: &str = "The method reads differently.";
/// Notes are different.
pub(crate) const NOTES_DIFFER: &str = "The notes read differently.";
/// The batch is different.
pub(crate) const BATCH_DIFFERS: &str = "Another batch is asked for.";

/// A file that is no backup.
pub(crate) fn unreadable_backup(error: &BackupError) -> String {
    match error {
        BackupError::NotABackup => {
            "This file is no backup of Stillroom. A backup ends in .json or .zip and was written here with “Write a \
             backup file”. Nothing was changed."
                .to_owned()
        }
        BackupError::Damaged { line, column } => format!(
            "This backup is damaged or cut off: reading stopped at line {line}, column {column}. Nothing was changed. Try \
             another copy of it."
        ),
        BackupError::ZipDamaged => {
            "This zip file is damaged or cut off and cannot be read. Nothing was changed. Try another copy of it; if you \
             can open it with another program, take out backup.json and read that."
                .to_owned()
        }
        BackupError::Newer { .. } => {
            "This backup was written by a later version of Stillroom. Reload the page to get that version, then read it \
             again. Nothing was changed."
                .to_owned()
        }
        BackupError::TooLarge => format!(
            "This file is larger than a backup can be: at most {} records in {} MB, and {} photos of up to {} MB. Nothing \
             was changed.",
            backup::MOST_RECORDS,
            backup::LARGEST_BACKUP / 1_000_000,
            backup::MOST_PHOTOS,
            backup::LARGEST_PHOTO / 1_000_000,
        ),
    }
}

/// How many photos a backup holds, and how many of them are not here.
pub(crate) fn photos_of_backup(all: usize, new: usize) -> String {
    match (all, new) {
        (1, 0) => "One photo is in it, which is on this device already.".to_owned(),
        (1, _) => "One photo is in it, which is not on this device yet.".to_owned(),
        (_, 0) => format!("{all} photos are in it, all of them on this device already."),
        _ if all == new => format!("{all} photos are in it, none of them on this device yet."),
        _ => format!("{all} photos are in it, {new} of them not on this device yet."),
    }
}

/// How many photos belong to nothing.
pub(crate) fn stray_photos(count: usize) -> String {
    if count == 1 {
        "One photo on this device belongs to no batch any more. Once removed it cannot be brought back.".to_owned()
    } else {
        format!("{count} photos on this device belong to no batch any more. Once removed they cannot be brought back.")
    }
}

/// What a record of a backup is.
pub(crate) const fn kind_of_record(slot: &Slot) -> &'static str {
    match slot {
        Slot::Formula(..) => "Formula",
        Slot::Material(..) => "Material",
        Slot::Extract(..) => "Extract",
        Slot::Holding(..) => "Stock and price",
        Slot::Batch(..) => "Batch record",
        Slot::Journal(..) => "Journal",
        Slot::Settings(_) => "Settings",
    }
}

/// A record of a kind this version does not know.
pub(crate) const fn unknown_record() -> &'static str {
    "left out: this version does not know what it is"
}

/// A record that cannot be read.
pub(crate) const fn unreadable_record(newer: bool) -> &'static str {
    if newer { "left out: a later version wrote it" } else { "left out: it is damaged" }
}

/// How many records of a backup are new, here already, different and unreadable.
pub(crate) fn what_a_backup_holds(made: &str, [new, same, differs, unreadable]: [usize; 4]) -> String {
    let mut text = format!("Made on {made}. {new} new, {same} here already, {differs} different here.");
    if unreadable > 0 {
        let _ = write!(text, " {unreadable} cannot be read and will be left out.");
    }
    text
}

/// Name of a record that stands beside another one.
pub(crate) fn name_from_backup(name: &str) -> String {
    format!("{name} (from the backup)")
}

/// A backup was restored: how many records, how many photos, and how many photos could not be kept.
pub(crate) fn restored(records: usize, photos: usize, lost: usize) -> String {
    let records = match records {
        0 => String::new(),
        1 => "One record is on this device now. ".to_owned(),
        _ => format!("{records} records are on this device now. "),
    };
    let photos = match photos {
        0 => String::new(),
        1 => "One photo is on this device now. ".to_owned(),
        _ => format!("{photos} photos are on this device now. "),
    };
    let lost = match lost {
        0 => String::new(),
        1 => "One photo is damaged or found no room. ".to_owned(),
        _ => format!("{lost} photos are damaged or found no room. "),
    };
    format!("{records}{photos}{lost}").trim_end().to_owned()
}

/// A backup held nothing that is not here.
pub(crate) const fn nothing_to_restore() -> &'static str {
    "Everything in the file is on this device already."
}

/// An earlier version in a list.
pub(crate) fn version(when: &str, name: &str, lines: usize) -> String {
    let lines = if lines == 1 { "1 line".to_owned() } else { format!("{lines} lines") };
    format!("{when}: “{name}”, {lines}")
}

/// Name of an earlier version that stands beside the formula.
pub(crate) fn name_of_version(name: &str, when: &str) -> String {
    format!("{name} ({when})")
}

/// A time as `2026-11-25 10:34`, where the clock is so many minutes ahead of universal time.
pub(crate) fn day_and_time(milliseconds: u64, minutes_ahead: i64) -> String {
    let minutes = i64::try_from(milliseconds / 60_000).unwrap_or(0).saturating_add(minutes_ahead);
    let (day, minute) = (minutes.div_euclid(1440), minutes.rem_euclid(1440));
    // Days since 1970-01-01 to the proleptic Gregorian calendar, counted in eras of 400 years from the 1st of March.
    let day = day + 719_468;
    let (era, day_of_era) = (day.div_euclid(146_097), day.rem_euclid(146_097));
    let year_of_era = (day_of_era - day_of_era / 1460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
    let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let month = (5 * day_of_year + 2) / 153;
    let day_of_month = day_of_year - (153 * month + 2) / 5 + 1;
    let month = if month < 10 { month + 3 } else { month - 9 };
    let year = year_of_era + era * 400 + i64::from(month <= 2);
    format!("{year:04}-{month:02}-{day_of_month:02} {:02}:{:02}", minute / 60, minute % 60)
}

/// Head of the column of materials.
pub(crate) const MATERIAL: &str = "Material";
/// The sum of a table.
pub(crate) const TOTAL: &str = "Total";
/// What goes along with a formula that is written out.
pub(crate) const CAUTION: &str = "Patch test first; keep away from eyes and out of the reach of children. A preservative \
range is no proof: a product for others needs a challenge test by a laboratory and the safety assessment the law asks for. \
Caustics need goggles and gloves and go into the water. No medical claims; local rules decide.";

/// The storage was emptied while or before the page was open.
pub(crate) const fn storage_cleared() -> &'static str {
    "The browser cleared what this page kept on this device. What is open here was kept again; if formulas are missing, \
     read your last backup file (Share and keep)."
}

/// The clock stands before the last change.
pub(crate) fn clock_went_back(last: &str) -> String {
    format!(
        "This device's clock stands before your last change ({last}). Nothing is lost; the order of the shelf and of \
         versions may be off until it is right."
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
