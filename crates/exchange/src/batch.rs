//! Batches as they are kept on a device: the formula that was used, what was weighed and done, and how it was watched
//! afterwards.

mod ph;

use crate::json::{Damage, Value, Writer};
use crate::record::Kept;
use litemap::LiteMap;
use serde::{Deserialize, Serialize};
use std::fmt;
use stillroom_core::day::Day;
use stillroom_core::run::steps::Step;
use stillroom_core::run::{Deed, Event, Held, LONGEST_TEXT, MOST_EVENTS, RunPlan};
use stillroom_core::weigh_sheet::{Scale, Scales};
use stillroom_core::{Formula, FormulaId, Grams, LineId, MaterialId, PhaseId};

/// Most observations of one batch.
pub const MOST_ENTRIES: usize = 500;

/// Names a batch on this device.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct BatchId(#[cfg_attr(test, schemars(with = "String"))] pub u64);

impl fmt::Display for BatchId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:016x}", self.0)
    }
}

impl TryFrom<String> for BatchId {
    type Error = core::num::ParseIntError;
    fn try_from(text: String) -> Result<Self, Self::Error> {
        u64::from_str_radix(&text, 16).map(Self)
    }
}

impl From<BatchId> for String {
    fn from(id: BatchId) -> Self {
        id.to_string()
    }
}

/// A material that went into a batch, as it was when the run began.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct UsedMaterial {
    /// The line it was weighed for.
    pub line: LineId,
    /// The material.
    pub material: MaterialId,
    /// Its common name.
    pub name: String,
    /// Its INCI name, or those of its constituents; empty where none is known.
    #[cfg_attr(test, schemars(default))]
    pub inci: String,
    /// Lot number of what was on the shelf.
    #[cfg_attr(test, schemars(default))]
    pub lot: String,
    /// Last day it should be used, as `2027-05-31`; empty where none is known.
    #[cfg_attr(test, schemars(default))]
    pub expiry: String,
}

/// A batch: what was set out to be made, of what, and everything that was done.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct Batch {
    /// Number on the label.
    pub lot: String,
    /// The formula it was made of.
    pub of: FormulaId,
    /// How often that formula had been written when the run began: its version.
    pub version: u64,
    /// The plan, with the formula as it stood.
    #[cfg_attr(test, schemars(with = "crate::schema::PlanSchema"))]
    pub plan: RunPlan,
    /// The materials.
    pub materials: Vec<UsedMaterial>,
    /// What was done.
    #[cfg_attr(test, schemars(with = "Vec<crate::schema::EventSchema>"))]
    pub events: Vec<Event>,
}

/// A batch, as it is kept.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct BatchRecord {
    /// Names it on this device.
    pub id: BatchId,
    /// Counts the times it was written.
    pub revision: u64,
    /// When it was last changed, in milliseconds since 1970.
    pub changed_at: u64,
    /// The batch.
    pub batch: Batch,
}

/// Colours read from a photo, each channel in hundredths of a step of 0 to 255.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct ReadColour {
    /// Red, green and blue of the product.
    pub sample: [u32; 3],
    /// Red, green and blue of the white beside it.
    pub white: [u32; 3],
}

/// What was seen on a day.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct Entry {
    /// The day.
    #[cfg_attr(test, schemars(with = "crate::schema::DaySchema"))]
    pub day: Day,
    /// What was noted, by the name of the field. The pH is written with a point.
    #[cfg_attr(test, schemars(with = "Vec<(String, String)>", default))]
    pub texts: LiteMap<String, String>,
    /// Colour read from a photo.
    pub colour: Option<ReadColour>,
    /// Names of photos, which are kept apart from records.
    #[cfg_attr(test, schemars(default))]
    pub photos: Vec<String>,
}

/// How a batch was watched.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Journal {
    /// What was seen, in the order it was written down.
    pub entries: Vec<Entry>,
}

/// A journal, as it is kept.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct JournalRecord {
    /// The batch that is watched.
    pub batch: BatchId,
    /// Counts the times it was written.
    pub revision: u64,
    /// When it was last changed, in milliseconds since 1970.
    pub changed_at: u64,
    /// The journal.
    #[cfg_attr(test, schemars(with = "Vec<Entry>", rename = "entries"))]
    pub journal: Journal,
}

impl Kept for BatchRecord {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        let batch = value.need("batch")?;
        let plan = batch.need("plan")?;
        let formula = Formula::read(&plan.need("formula")?)?;
        let scales = plan.need("scales")?;
        let list: Vec<Scale> = scales.list()?.map(|scale| read_scale(&scale)).collect::<Result<_, _>>()?;
        let scales = Scales::new(list).or_else(|_| scales.damaged())?;
        let plan = RunPlan::new(formula, plan.need("asked")?.worded()?, scales).or_else(|_| plan.damaged())?;
        let events = batch.need("events")?;
        if events.list()?.len() > MOST_EVENTS {
            return events.damaged();
        }
        Ok(Self {
            id: value.need("id")?.worded()?,
            revision: value.need("revision")?.whole()?,
            changed_at: value.need("changed_at")?.whole()?,
            batch: Batch {
                lot: batch.text_field("lot")?,
                of: batch.need("of")?.worded()?,
                version: batch.need("version")?.whole()?,
                plan,
                materials: batch
                    .need("materials")?
                    .list()?
                    .map(|material| UsedMaterial::read(&material))
                    .collect::<Result<_, _>>()?,
                events: events.list()?.map(|event| read_event(&event)).collect::<Result<_, _>>()?,
            },
        })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("id").worded(&self.id);
        writer.field("revision").whole(self.revision);
        writer.field("changed_at").whole(self.changed_at);
        let Batch { lot, of, version, plan, materials, events } = &self.batch;
        writer.field("batch").object(|writer| {
            writer.text_field("lot", lot);
            writer.field("of").worded(of);
            writer.field("version").whole(*version);
            writer.field("plan").object(|writer| {
                writer.field("formula").object(|writer| plan.formula.write(writer));
                writer.field("asked").worded(&plan.asked);
                writer.field("scales").list(plan.scales.as_slice(), |writer, scale| {
                    writer.object(|writer| write_scale(writer, scale));
                });
            });
            let each = |writer: &mut Writer, material: &UsedMaterial| writer.object(|writer| material.write(writer));
            writer.field("materials").list(materials, each);
            writer.field("events").list(events, |writer, event| writer.object(|writer| write_event(writer, event)));
        });
    }
}

fn read_scale(value: &Value<'_>) -> Result<Scale, Damage> {
    Ok(Scale {
        name: value.text_field("name")?,
        step: value.need("step")?.worded()?,
        below: value.worded_field("below")?,
    })
}

fn write_scale(writer: &mut Writer, scale: &Scale) {
    writer.text_field("name", &scale.name);
    writer.field("step").worded(&scale.step);
    writer.worded_field("below", scale.below.as_ref());
}

impl Kept for UsedMaterial {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        Ok(Self {
            line: LineId(value.need("line")?.whole()?),
            material: value.need("material")?.worded()?,
            name: value.text_field("name")?,
            inci: value.text_field("inci")?,
            lot: value.text_field("lot")?,
            expiry: value.text_field("expiry")?,
        })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("line").whole(u64::from(self.line.0));
        writer.field("material").worded(&self.material);
        writer.text_field("name", &self.name);
        writer.text_field("inci", &self.inci);
        writer.text_field("lot", &self.lot);
        writer.text_field("expiry", &self.expiry);
    }
}

fn read_event(value: &Value<'_>) -> Result<Event, Damage> {
    let did = value.need("did")?;
    let line = || value.need("line")?.whole().map(LineId);
    let phase = || value.need("phase")?.whole().map(PhaseId);
    let mass = || -> Result<Grams, Damage> { value.need("mass")?.worded() };
    let step = || read_step(&value.need("step")?);
    let deed = match did.text()? {
        "started" => Deed::Started,
        "phase-first" => Deed::PhaseFirst(phase()?),
        "empty-beaker" => Deed::EmptyBeaker(phase()?, mass()?),
        "poured" => Deed::Poured(line()?, mass()?),
        "left-out" => Deed::LeftOut(line()?),
        "accepted" => Deed::Accepted(line()?),
        "rescaled" => Deed::Rescaled(line()?),
        "taken-from-rest" => Deed::TakenFromRest(line()?),
        "weighed-cold" => Deed::WeighedCold(phase()?, mass()?),
        "weighed-hot" => Deed::WeighedHot(phase()?, mass()?),
        "water-added" => {
            let phase = value.field("phase")?.map(|phase| phase.whole().map(PhaseId)).transpose()?;
            Deed::WaterAdded(phase, mass()?)
        }
        "temperature" => Deed::Temperature(read_held(value)?, value.need("celsius")?.worded()?),
        "timer-started" => {
            let stops = value.need("stops")?.list()?.map(Value::whole).collect::<Result<_, _>>()?;
            Deed::TimerStarted(step()?, value.need("seconds")?.whole()?, stops)
        }
        "timer-stopped" => Deed::TimerStopped(step()?),
        "timer-resumed" => Deed::TimerResumed(step()?),
        "tempered" => Deed::Tempered(phase()?, mass()?),
        "batch-weighed" => Deed::BatchWeighed(mass()?, value.need("beaker")?.worded()?),
        "ph-measured" => Deed::PhMeasured(value.need("ph")?.worded()?),
        "filled" => Deed::Filled(value.need("count")?.whole()?, mass()?),
        "said" => {
            let (name, text) = (value.need("name")?, value.text_field("text")?);
            if text.len() > LONGEST_TEXT || name.text()?.len() > LONGEST_TEXT {
                return name.damaged();
            }
            Deed::Said(name.text()?.to_owned(), text)
        }
        "closed" => Deed::Closed(step()?),
        "finished" => {
            let drawn = value
                .need("drawn")?
                .list()?
                .map(|each| Ok((each.need("material")?.worded()?, each.need("mass")?.worded()?)));
            Deed::Finished(drawn.collect::<Result<_, Damage>>()?)
        }
        "taken-back" => Deed::TakenBack,
        word => match ph::read(word, value)? {
            Some(deed) => Deed::Ph(deed),
            None => return did.damaged(),
        },
    };
    Ok(Event { at: value.need("at")?.whole()?, deed })
}

fn read_step(value: &Value<'_>) -> Result<Step, Damage> {
    value.text()?.parse().or_else(|_| value.damaged())
}

fn read_held(value: &Value<'_>) -> Result<Held, Damage> {
    let held = value.need("held")?;
    match held.text()? {
        "phase" => Ok(Held::Phase(PhaseId(value.need("phase")?.whole()?))),
        "batch" => Ok(Held::Batch),
        "room" => Ok(Held::Room),
        _ => held.damaged(),
    }
}

fn write_event(writer: &mut Writer, event: &Event) {
    writer.field("at").whole(event.at);
    writer.field("did").text(name_of(&event.deed));
    let of_line = |writer: &mut Writer, line: LineId| writer.field("line").whole(u64::from(line.0));
    let of_phase = |writer: &mut Writer, phase: PhaseId| writer.field("phase").whole(u64::from(phase.0));
    let of_step = |writer: &mut Writer, step: Step| writer.field("step").text(&step.to_string());
    match &event.deed {
        Deed::Started | Deed::TakenBack => {}
        Deed::PhaseFirst(phase) => of_phase(writer, *phase),
        Deed::EmptyBeaker(phase, mass)
        | Deed::WeighedCold(phase, mass)
        | Deed::WeighedHot(phase, mass)
        | Deed::Tempered(phase, mass) => {
            of_phase(writer, *phase);
            writer.field("mass").worded(mass);
        }
        Deed::Poured(line, mass) => {
            of_line(writer, *line);
            writer.field("mass").worded(mass);
        }
        Deed::LeftOut(line) | Deed::Accepted(line) | Deed::Rescaled(line) | Deed::TakenFromRest(line) => {
            of_line(writer, *line);
        }
        Deed::WaterAdded(phase, mass) => {
            if let Some(phase) = phase {
                of_phase(writer, *phase);
            }
            writer.field("mass").worded(mass);
        }
        Deed::Temperature(held, celsius) => {
            writer.field("held").text(match held {
                Held::Phase(_) => "phase",
                Held::Batch => "batch",
                Held::Room => "room",
            });
            if let Held::Phase(phase) = held {
                of_phase(writer, *phase);
            }
            writer.field("celsius").worded(celsius);
        }
        Deed::TimerStarted(step, seconds, stops) => {
            of_step(writer, *step);
            writer.field("seconds").whole(u64::from(*seconds));
            writer.field("stops").list(stops, |writer, stop| writer.whole(u64::from(*stop)));
        }
        Deed::TimerStopped(step) | Deed::TimerResumed(step) | Deed::Closed(step) => of_step(writer, *step),
        Deed::BatchWeighed(mass, beaker) => {
            writer.field("mass").worded(mass);
            writer.field("beaker").worded(beaker);
        }
        Deed::PhMeasured(ph) => writer.field("ph").worded(ph),
        Deed::Ph(deed) => ph::write(writer, deed),
        Deed::Filled(count, mass) => {
            writer.field("count").whole(u64::from(*count));
            writer.field("mass").worded(mass);
        }
        Deed::Said(name, text) => {
            writer.field("name").text(name);
            writer.text_field("text", text);
        }
        Deed::Finished(drawn) => writer.field("drawn").list(drawn, |writer, (material, mass)| {
            writer.object(|writer| {
                writer.field("material").worded(material);
                writer.field("mass").worded(mass);
            });
        }),
    }
}

/// The word a record has for a deed.
#[must_use]
pub const fn name_of(deed: &Deed) -> &'static str {
    match deed {
        Deed::Started => "started",
        Deed::PhaseFirst(_) => "phase-first",
        Deed::EmptyBeaker(..) => "empty-beaker",
        Deed::Poured(..) => "poured",
        Deed::LeftOut(_) => "left-out",
        Deed::Accepted(_) => "accepted",
        Deed::Rescaled(_) => "rescaled",
        Deed::TakenFromRest(_) => "taken-from-rest",
        Deed::WeighedCold(..) => "weighed-cold",
        Deed::WeighedHot(..) => "weighed-hot",
        Deed::WaterAdded(..) => "water-added",
        Deed::Temperature(..) => "temperature",
        Deed::TimerStarted(..) => "timer-started",
        Deed::TimerStopped(_) => "timer-stopped",
        Deed::TimerResumed(_) => "timer-resumed",
        Deed::Tempered(..) => "tempered",
        Deed::BatchWeighed(..) => "batch-weighed",
        Deed::PhMeasured(_) => "ph-measured",
        Deed::Ph(deed) => ph::name_of(deed),
        Deed::Filled(..) => "filled",
        Deed::Said(..) => "said",
        Deed::Closed(_) => "closed",
        Deed::Finished(_) => "finished",
        Deed::TakenBack => "taken-back",
    }
}

impl Kept for JournalRecord {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        let entries = value.need("entries")?;
        if entries.list()?.len() > MOST_ENTRIES {
            return entries.damaged();
        }
        Ok(Self {
            batch: value.need("batch")?.worded()?,
            revision: value.need("revision")?.whole()?,
            changed_at: value.need("changed_at")?.whole()?,
            journal: Journal { entries: entries.list()?.map(|entry| Entry::read(&entry)).collect::<Result<_, _>>()? },
        })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("batch").worded(&self.batch);
        writer.field("revision").whole(self.revision);
        writer.field("changed_at").whole(self.changed_at);
        writer
            .field("entries")
            .list(&self.journal.entries, |writer, entry| writer.object(|writer| entry.write(writer)));
    }
}

impl Kept for Entry {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        let day = value.need("day")?;
        let mut texts = LiteMap::new();
        if let Some(list) = value.field("texts")? {
            for pair in list.list()? {
                let mut both = pair.list()?;
                let (Some(field), Some(text), None) = (both.next(), both.next(), both.next()) else {
                    return pair.damaged();
                };
                texts.insert(field.text()?.to_owned(), text.text()?.to_owned());
            }
        }
        let colour = value.field("colour")?.map(|colour| {
            let channels = |name| read_channels(&colour.need(name)?);
            Ok::<_, Damage>(ReadColour { sample: channels("sample")?, white: channels("white")? })
        });
        let photos = value
            .field("photos")?
            .map(|photos| photos.list()?.map(|photo| photo.text().map(str::to_owned)).collect::<Result<Vec<_>, _>>());
        Ok(Self {
            day: day.text()?.parse().or_else(|_| day.damaged())?,
            texts,
            colour: colour.transpose()?,
            photos: photos.transpose()?.unwrap_or_default(),
        })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("day").text(&self.day.to_string());
        if !self.texts.is_empty() {
            let texts: Vec<_> = self.texts.iter().collect();
            writer.field("texts").list(&texts, |writer, (field, text)| {
                writer.list(&[field.as_str(), text.as_str()], |writer, each| writer.text(each));
            });
        }
        if let Some(ReadColour { sample, white }) = &self.colour {
            writer.field("colour").object(|writer| {
                for (name, channels) in [("sample", sample), ("white", white)] {
                    writer.field(name).list(channels, |writer, channel| writer.whole(u64::from(*channel)));
                }
            });
        }
        if !self.photos.is_empty() {
            writer.field("photos").list(&self.photos, |writer, photo| writer.text(photo));
        }
    }
}

fn read_channels(value: &Value<'_>) -> Result<[u32; 3], Damage> {
    let channels: Vec<u32> = value.list()?.map(Value::whole).collect::<Result<_, _>>()?;
    match <[u32; 3]>::try_from(channels) {
        Ok(channels) if channels.iter().all(|channel| *channel <= 25_500) => Ok(channels),
        _ => value.damaged(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{read, write};
    use stillroom_core::run::state::replay;

    const BATCH: &str = include_str!("../golden/batch-1.json");
    const JOURNAL: &str = include_str!("../golden/journal-1.json");

    #[test]
    fn the_first_schema_of_a_batch_is_read_for_ever() {
        let record: BatchRecord = read(BATCH).unwrap();
        assert_eq!(record.id, BatchId(0xba7c));
        assert_eq!(record.batch.lot, "2026-11-25 A");
        assert_eq!(record.batch.materials[1].expiry, "2027-05-31");
        // Every deed there is, once at least, and each comes back.
        assert_eq!(record.batch.events.len(), 27);
        let names: std::collections::BTreeSet<_> =
            record.batch.events.iter().map(|event| name_of(&event.deed)).collect();
        assert_eq!(names.len(), 23);
        assert_eq!(read::<BatchRecord>(&write(&record)).unwrap(), record);
        let state = replay(&record.batch.plan, &record.batch.events).unwrap();
        assert_eq!(state.ph.map(|ph| ph.value().to_string()), Some("5.1".to_owned()));
    }

    #[test]
    fn the_first_schema_of_a_journal_is_read_for_ever() {
        let record: JournalRecord = read(JOURNAL).unwrap();
        assert_eq!(record.journal.entries.len(), 2);
        assert_eq!(record.journal.entries[1].colour.unwrap().sample, [18_000, 17_550, 12_025]);
        assert_eq!(read::<JournalRecord>(&write(&record)).unwrap(), record);
    }

    #[test]
    fn a_record_that_makes_no_sense_is_damage() {
        let damaged = |from: &str, to: &str| {
            assert!(BATCH.contains(from) || JOURNAL.contains(from), "{from}");
            let batch = read::<BatchRecord>(&BATCH.replace(from, to)).map(drop);
            let journal = read::<JournalRecord>(&JOURNAL.replace(from, to)).map(drop);
            let error = batch.and(journal).unwrap_err();
            assert_eq!(error.code(), "record.damaged", "{from} → {to}");
        };
        damaged("\"did\": \"poured\"", "\"did\": \"spilled\"");
        damaged("\"step\": \"blend\"", "\"step\": \"boil\"");
        damaged("\"asked\": \"100\"", "\"asked\": \"0\"");
        damaged("\"quantum-satis\"", "{\"percent\":\"50\"}");
        damaged("\"2026-12-02\"", "\"2026-13-02\"");
        damaged("12025", "99999");
        damaged("\"held\": \"room\"", "\"held\": \"cellar\"");
    }
}
