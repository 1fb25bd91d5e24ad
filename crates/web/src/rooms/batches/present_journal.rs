//! The journal of a batch as the page shows it.

use crate::messages::batches as says;
use crate::rooms::batches::calendar::{Reminder, write_calendar};
use crate::rooms::batches::command::BatchesCommand;
use crate::rooms::batches::edit_journal::{NOTED, patch_of};
use crate::rooms::batches::sentences::{self as sentences, ColourShift};
use crate::rooms::batches::view::{CardField, CurveView, DueView, EntryView, JournalView};
use crate::rooms::extracts::view::FigureView;
use crate::session::Session;
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use stillroom_core::colour::{Colour, fit_fade, read_against_white};
use stillroom_core::day::Day;
use stillroom_core::decay::{Decay, ReadingAt};
use stillroom_core::number::{write_between, write_fixed};
use stillroom_core::run::state::replay;
use stillroom_exchange::batch::{BatchRecord, Entry, Journal};

/// Days of a batch on which to look. Common practice; a stability test by a laboratory follows its own plan.
const DUE: [i64; 5] = [0, 1, 7, 30, 90];

impl Session {
    pub(crate) fn present_journal(&self, record: &BatchRecord) -> JournalView {
        let batch = &record.batch;
        let journal = self.journal_of(record.id);
        let state = replay(&batch.plan, &batch.events);
        let begun = state.and_then(|state| state.started_at).and_then(|at| self.day_at(at));
        let Some(made) = begun.or_else(|| self.around.today().parse().ok()) else { return JournalView::default() };
        let colours = read_colours(&journal, made);
        let (colour, curve) = self.present_fade(&colours);
        let today: Option<Day> = self.around.today().parse().ok();
        let due = DUE.iter().enumerate().filter_map(|(at, number)| {
            let day = made.plus_days(*number)?;
            let seen = was_looked_at(&journal, made, at);
            let past = today.map_or(-1, |today| today.since(day));
            Some(DueView {
                label: says::due_day(&number.to_string()),
                date: sentences::day(day),
                about: sentences::due_state(seen, past),
                state: match past {
                    _ if seen => "seen",
                    ..0 => "to-come",
                    0 => "due",
                    _ => "overdue",
                },
                day: day.to_string(),
            })
        });
        let reminders: Vec<Reminder> = DUE
            .iter()
            .enumerate()
            .filter_map(|(at, number)| {
                let day = made.plus_days(*number)?;
                let seen = was_looked_at(&journal, made, at);
                (!seen && *number > 0).then(|| Reminder {
                    uid: format!("{}-{number}@stillroom", record.id),
                    day,
                    summary: says::reminder(&batch.plan.formula.name, &batch.lot, &number.to_string()),
                    description: says::reminder_about().to_owned(),
                })
            })
            .collect();
        JournalView {
            id: Some(record.id.to_string()),
            entries: journal
                .entries
                .iter()
                .enumerate()
                .map(|(at, entry)| self.present_entry(at, entry, made, &colours))
                .collect(),
            due: due.collect(),
            colour,
            curve,
            // When the record last changed: the same journal always writes the same file.
            calendar: write_calendar(&reminders, record.changed_at).unwrap_or_default(),
            calendar_name: sentences::calendar_name(&batch.lot),
        }
    }

    fn present_entry(&self, at: usize, entry: &Entry, made: Day, colours: &[(f64, Colour)]) -> EntryView {
        let mark = self.mark();
        let fields = core::iter::once("ph").chain(NOTED).map(|name| {
            let text = entry.texts.get(name).cloned().unwrap_or_default();
            let text = match (name, text.parse::<Decimal>()) {
                ("ph", Ok(ph)) => write_between(ph, 0, 2, mark),
                _ => text,
            };
            CardField {
                field: format!("run.entry:{at}:{name}"),
                label: sentences::noted_label(name).to_owned(),
                text,
                keyboard: match name {
                    "ph" => "decimal",
                    "note" => "long",
                    _ => "text",
                },
                command: Some(BatchesCommand::NoteEntry { entry: at, name: name.to_owned(), text: String::new() }),
                ..CardField::default()
            }
        });
        let colour = colour_of(entry);
        let number = |value: f64| write_fixed(Decimal::from_f64(value).unwrap_or_default(), 1, mark);
        let in_numbers = colour.map(|colour| {
            let numbers = says::colour_in_numbers(&number(colour.lightness), &number(colour.a), &number(colour.b));
            match colours.first() {
                Some((_, first)) if *first != colour => {
                    says::colour_difference(&numbers, &number(colour.difference(*first)))
                }
                _ => numbers,
            }
        });
        let swatch = colour.map(|colour| {
            let [red, green, blue] = colour.on_screen();
            format!("#{red:02x}{green:02x}{blue:02x}")
        });
        EntryView {
            entry: at,
            title: says::day_of_batch(&entry.day.since(made).to_string(), &sentences::day(entry.day)),
            fields: fields.collect(),
            swatch: swatch.unwrap_or_default(),
            colour: in_numbers.unwrap_or_default(),
            photos: entry.photos.clone(),
        }
    }

    fn present_fade(&self, colours: &[(f64, Colour)]) -> (Vec<FigureView>, Option<CurveView>) {
        let (Some((_, first)), Some((_, last))) = (colours.first(), colours.last()) else { return (Vec::new(), None) };
        let number =
            |value: f64, decimals| write_fixed(Decimal::from_f64(value).unwrap_or_default(), decimals, self.mark());
        let mut figures = Vec::new();
        let difference = first.difference(*last);
        if colours.len() > 1 {
            figures.push(FigureView {
                label: says::change().to_owned(),
                value: format!("ΔE00 {}", number(difference, 1)),
                range: sentences::colour_verdict(
                    difference,
                    ColourShift {
                        lightness: last.lightness - first.lightness,
                        chroma: last.chroma() - first.chroma(),
                        red: last.a - first.a,
                        yellow: last.b - first.b,
                    },
                ),
                how: says::change_how().to_owned(),
                source: says::change_source().to_owned(),
            });
        }
        let fade = fit_fade(colours);
        let (value, range, curve) = match &fade {
            Ok(fade) => {
                let (value, range) = sentences::half_life(&fade.half_life());
                (value, range, self.draw_fade(fade, colours))
            }
            Err(error) => (String::new(), sentences::no_fade(*error, difference).to_owned(), None),
        };
        figures.push(FigureView {
            label: says::fade().to_owned(),
            value,
            range,
            how: says::fade_how().to_owned(),
            source: says::fade_source().to_owned(),
        });
        (figures, curve)
    }

    fn draw_fade(&self, fade: &Decay, colours: &[(f64, Colour)]) -> Option<CurveView> {
        let readings: Vec<ReadingAt> =
            colours.iter().map(|(day, colour)| ReadingAt { time: *day, value: colour.chroma() }).collect();
        let half = fade.at(0.0) / 2.0;
        let reached = fade.time_to(half).ok()?;
        let time = |day: f64| write_fixed(Decimal::from_f64(day).unwrap_or_default(), 0, self.mark());
        Some(self.draw_decay(fade, &readings, half, reached, says::fade_curve().to_owned(), &|day| {
            says::due_day(&time(day))
        }))
    }
}

/// Whether a look counts for the day on which one was due: on that day or later, before the next is due.
fn was_looked_at(journal: &Journal, made: Day, due: usize) -> bool {
    let from = DUE.get(due).copied().unwrap_or_default();
    let until = DUE.get(due + 1).copied().unwrap_or(i64::MAX);
    journal.entries.iter().map(|entry| entry.day.since(made)).any(|day| (from..until).contains(&day))
}

/// The colour of an entry, if one was read.
fn colour_of(entry: &Entry) -> Option<Colour> {
    let read = entry.colour?;
    read_against_white(patch_of(read.sample), patch_of(read.white)).ok()
}

/// Colours by day of the batch.
fn read_colours(journal: &Journal, made: Day) -> Vec<(f64, Colour)> {
    let day = |entry: &Entry| i32::try_from(entry.day.since(made)).ok().map(f64::from);
    journal.entries.iter().filter_map(|entry| Some((day(entry)?, colour_of(entry)?))).collect()
}
