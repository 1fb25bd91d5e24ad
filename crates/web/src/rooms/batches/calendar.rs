//! Reminders as a calendar file (iCalendar, RFC 5545), for the calendar a phone has already.

use stillroom_core::day::Day;

/// Longest line of a calendar file, in octets without its end (RFC 5545, 3.1).
const LONGEST_LINE: usize = 75;

/// A day to be reminded of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reminder {
    /// Names it among all calendars there are.
    pub uid: String,
    /// The day.
    pub day: Day,
    /// What it is about.
    pub summary: String,
    /// What is to be done.
    pub description: String,
}

/// Writes a calendar file with an all-day event for each reminder, and an alarm at nine in the morning.
///
/// `stamp` is when it is written, in milliseconds since 1970. `None` if that lies outside the calendar.
///
/// ```
/// use stillroom_web::rooms::batches::calendar::{Reminder, write_calendar};
/// let reminder = Reminder {
///     uid: "a1-7@stillroom".to_owned(),
///     day: "2026-12-02".parse()?,
///     summary: "Look at the cream".to_owned(),
///     description: "Colour, smell; separation".to_owned(),
/// };
/// let file = write_calendar(&[reminder], 1_764_054_000_000).unwrap();
/// assert!(file.contains("DTSTART;VALUE=DATE:20261202\r\n"));
/// assert!(file.contains("DESCRIPTION:Colour\\, smell\\; separation\r\n"));
/// # Ok::<(), stillroom_core::day::NotADay>(())
/// ```
#[must_use]
pub fn write_calendar(reminders: &[Reminder], stamp: u64) -> Option<String> {
    let seconds = stamp / 1000 % 86_400;
    let stamp = format!(
        "{}T{:02}{:02}{:02}Z",
        Day::from_moment(stamp, 0)?.compact(),
        seconds / 3600,
        seconds / 60 % 60,
        seconds % 60
    );
    let mut file = String::new();
    let mut line = |text: &str| fold_into(&mut file, text);
    line("BEGIN:VCALENDAR");
    line("VERSION:2.0");
    line("PRODID:-//Stillroom//Journal//EN");
    for reminder in reminders {
        line("BEGIN:VEVENT");
        line(&format!("UID:{}", escape(&reminder.uid)));
        line(&format!("DTSTAMP:{stamp}"));
        line(&format!("DTSTART;VALUE=DATE:{}", reminder.day.compact()));
        line(&format!("DTEND;VALUE=DATE:{}", reminder.day.plus_days(1)?.compact()));
        line("TRANSP:TRANSPARENT");
        line(&format!("SUMMARY:{}", escape(&reminder.summary)));
        line(&format!("DESCRIPTION:{}", escape(&reminder.description)));
        line("BEGIN:VALARM");
        line("ACTION:DISPLAY");
        line("TRIGGER:PT9H");
        line(&format!("DESCRIPTION:{}", escape(&reminder.summary)));
        line("END:VALARM");
        line("END:VEVENT");
    }
    line("END:VCALENDAR");
    Some(file)
}

/// A text as a value (RFC 5545, 3.3.11). Control characters have no place in one.
fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '\\' | ';' | ',' => out.extend(['\\', character]),
            '\n' => out.push_str("\\n"),
            other if other.is_control() => {}
            other => out.push(other),
        }
    }
    out
}

/// Appends a line, folded so that none is longer than allowed; a character is never torn apart.
fn fold_into(file: &mut String, text: &str) {
    let mut length = 0;
    for character in text.chars() {
        if length + character.len_utf8() > LONGEST_LINE {
            file.push_str("\r\n ");
            length = 1;
        }
        file.push(character);
        length += character.len_utf8();
    }
    file.push_str("\r\n");
}

#[cfg(test)]
#[cfg(not(target_arch = "wasm32"))]
mod tests {
    use super::*;
    use icalendar::parser::{read_calendar, unfold};
    use proptest::prelude::*;

    fn reminder(summary: &str) -> Reminder {
        Reminder {
            uid: "ba7c-30@stillroom".to_owned(),
            day: "2026-12-25".parse().unwrap(),
            summary: summary.to_owned(),
            description: "Look, smell; measure, note.\nThen put it back.".to_owned(),
        }
    }

    #[test]
    fn a_calendar_library_reads_what_was_written() {
        let file = write_calendar(&[reminder("Day 30"), reminder("Day 90")], 1_764_054_000_000).unwrap();
        let unfolded = unfold(&file);
        let calendar = read_calendar(&unfolded).unwrap();
        assert_eq!(calendar.components.len(), 2);
        let event = &calendar.components[0];
        assert_eq!(event.name, "VEVENT");
        let value = |name: &str| {
            let found = event.properties.iter().find(|property| property.name == name);
            found.map(|property| property.val.to_string()).unwrap_or_default()
        };
        assert_eq!((value("DTSTART"), value("DTEND")), ("20261225".to_owned(), "20261226".to_owned()));
        assert_eq!(value("DTSTAMP"), "20251125T070000Z");
        assert_eq!(event.components.len(), 1, "the alarm");
    }

    proptest! {
        /// Whatever a maker calls a batch, the file stays one that an independent parser reads, and the text comes back.
        #[test]
        fn any_name_comes_back(summary in "\\PC{0,120}") {
            let file = write_calendar(&[reminder(&summary)], 1_764_054_000_000).unwrap();
            prop_assert!(file.split("\r\n").all(|line| line.len() <= LONGEST_LINE));
            prop_assert!(!file.replace("\r\n", "").contains(['\r', '\n']));
            let unfolded = unfold(&file);
            let calendar = read_calendar(&unfolded).map_err(TestCaseError::fail)?;
            let found = calendar.components[0].properties.iter().find(|property| property.name == "SUMMARY").unwrap();
            // The parser undoes the escapes.
            prop_assert_eq!(found.val.as_str(), summary);
        }
    }
}
