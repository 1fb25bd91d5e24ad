//! Acts on the journal of a batch: what was seen on which day, its photos and colours.

use crate::contract::Answer;
use crate::messages::batches as says;
use crate::rooms::batches::sentences;
use crate::rooms::formula::edit::about;
use crate::rooms::update::Update;
use crate::session::Session;
use crate::session::history::Slot;
use litemap::LiteMap;
use rust_decimal::prelude::ToPrimitive;
use std::rc::Rc;
use stillroom_core::Ph;
use stillroom_core::colour::{ColourError, Patch, mean_of_pixels, read_against_white};
use stillroom_core::day::Day;
use stillroom_core::number::read_plain;
use stillroom_exchange::archive::LONGEST_PHOTO_NAME;
use stillroom_exchange::batch::{BatchId, Entry, Journal, JournalRecord, MOST_ENTRIES, ReadColour};

/// What is noted in words on a day.
pub(crate) const NOTED: [&str; 6] = ["look", "separation", "smell", "viscosity", "storage", "note"];
/// Most photos of one day.
const MOST_PHOTOS: usize = 6;

impl Session {
    pub(crate) fn add_photo(&mut self, at: usize, name: &str) -> Answer {
        let mut full = name.is_empty() || name.chars().count() > LONGEST_PHOTO_NAME;
        self.change_entry("run.entry-photo", None, at, |entry| {
            full |= entry.photos.len() >= MOST_PHOTOS;
            if !full && !entry.photos.iter().any(|photo| photo == name) {
                entry.photos.push(name.to_owned());
            }
        });
        if !full {
            return Answer::default();
        }
        let error = Some(says::too_many_photos(&MOST_PHOTOS.to_string()));
        Answer { field: Some(format!("run.entry-photo:{at}")), error, code: Some("run.too-many-photos"), made: None }
    }

    pub(crate) fn remove_entry(&mut self, at: usize) -> Answer {
        self.change_journal("run.entry-remove", None, |journal| {
            if at < journal.entries.len() {
                journal.entries.remove(at);
            }
        });
        self.notice("run.entry-removed", says::entry_removed().to_owned(), true);
        Answer::default()
    }

    /// The journal of a batch.
    pub(crate) fn journal_of(&self, id: BatchId) -> Journal {
        self.journals.get(&id).map(|record| record.journal.clone()).unwrap_or_default()
    }

    pub(crate) fn begin_entry(&mut self, text: &str) -> Answer {
        let text = text.trim();
        let typed = if text.is_empty() { self.around.today() } else { text.to_owned() };
        let Ok(day) = typed.parse::<Day>() else {
            return Answer {
                field: Some("run.entry-new".to_owned()),
                error: Some(crate::messages::materials::not_a_day().to_owned()),
                code: Some("day.not-a-day"),
                made: None,
            };
        };
        let mut position = None;
        self.change_journal("run.entry-new", None, |journal| {
            if journal.entries.len() < MOST_ENTRIES && !journal.entries.iter().any(|entry| entry.day == day) {
                journal.entries.push(Entry { day, texts: LiteMap::new(), colour: None, photos: Vec::new() });
                journal.entries.sort_by_key(|entry| entry.day);
            }
            position = journal.entries.iter().position(|entry| entry.day == day);
        });
        if position.is_none() {
            let id = self.at_bench.open;
            position = id.and_then(|id| self.journal_of(id).entries.iter().position(|entry| entry.day == day));
        }
        if position.is_none() && self.at_bench.open.is_some() {
            return Answer {
                field: Some("run.entry-new".to_owned()),
                error: Some(says::too_many_days(&MOST_ENTRIES.to_string())),
                code: Some("run.too-many-days"),
                made: None,
            };
        }
        Answer {
            field: Some("run.entry-new".to_owned()),
            made: position.map(|position| position.to_string()),
            ..Answer::default()
        }
    }

    pub(crate) fn note_entry(&mut self, at: usize, name: &str, text: &str) -> Answer {
        let field = format!("run.entry:{at}:{name}");
        let text = text.trim();
        let kept = if name == "ph" && !text.is_empty() {
            match read_plain(text, self.mark(), Ph::MINIMUM, Ph::MAXIMUM) {
                Ok(ph) => ph.normalize().to_string(),
                Err(error) => return about(&field, Err(error), self.mark()),
            }
        } else {
            text.to_owned()
        };
        if name == "ph" || NOTED.contains(&name) {
            self.change_entry("run.entry", Some(&field), at, |entry| {
                if kept.is_empty() {
                    entry.texts.remove(name);
                } else {
                    entry.texts.insert(name.to_owned(), kept);
                }
            });
        }
        Answer { field: Some(field), ..Answer::default() }
    }

    fn change_entry(&mut self, act: &'static str, field: Option<&str>, at: usize, edit: impl FnOnce(&mut Entry)) {
        self.change_journal(act, field, |journal| {
            if let Some(entry) = journal.entries.get_mut(at) {
                edit(entry);
            }
        });
    }

    /// Changes the journal of the open batch as one act that can be undone, and keeps it there and then.
    fn change_journal(&mut self, act: &'static str, field: Option<&str>, edit: impl FnOnce(&mut Journal)) {
        let Some(id) = self.at_bench.open else { return };
        let before = self.journals.get(&id).map(Rc::clone);
        let mut journal = self.journal_of(id);
        edit(&mut journal);
        if before.as_ref().map_or(journal == Journal::default(), |before| before.journal == journal) {
            return;
        }
        let revision = before.as_ref().map_or(0, |before| before.revision);
        let after = JournalRecord { batch: id, revision, changed_at: self.around.now(), journal };
        let (before, after) = (Slot::Journal(id, before), Slot::Journal(id, Some(Rc::new(after))));
        self.commit(act, field, self.open, vec![before], vec![after]);
        self.keep_unkept();
    }

    /// Reads the colour of an entry from the pixels of the product and of a white beside it, four bytes each.
    pub fn read_colour(&mut self, entry: usize, sample: &[u8], white: &[u8]) -> Update {
        let read = mean_of_pixels(sample).and_then(|sample| {
            let white = mean_of_pixels(white)?;
            // Refused here, while the photo is still in sight.
            read_against_white(sample, white)?;
            Ok(ReadColour { sample: hundredths(sample), white: hundredths(white) })
        });
        let answer = match read {
            Ok(colour) => {
                self.change_entry("run.entry-colour", None, entry, |entry| entry.colour = Some(colour));
                Answer { field: Some("run.colour".to_owned()), ..Answer::default() }
            }
            Err(error) => Self::about_colour(error),
        };
        self.present_answer(answer)
    }

    fn about_colour(error: ColourError) -> Answer {
        Answer {
            field: Some("run.colour".to_owned()),
            error: Some(sentences::colour_error(error).to_owned()),
            code: Some(error.code()),
            made: None,
        }
    }
}

fn hundredths(patch: Patch) -> [u32; 3] {
    patch.channels.map(|channel| (channel * 100.0).round().clamp(0.0, 25_500.0).to_u32().unwrap_or(0))
}

/// The patch behind hundredths.
pub(crate) fn patch_of(channels: [u32; 3]) -> Patch {
    Patch { channels: channels.map(|channel| f64::from(channel) / 100.0) }
}
