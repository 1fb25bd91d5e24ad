//! What was done about the pH of a batch, as it is written.

use crate::json::{Damage, Value, Writer};
use crate::record::{read_constituent_id, write_constituent_id};
use stillroom_core::Ph;
use stillroom_core::run::titration::{Drops, PhDeed, ReadBy, Titrant, Vessel, Window};

/// Most preservatives of one batch.
const MOST_WINDOWS: usize = 100;

/// Reads a deed by its word; nothing for a word that is none of these.
pub(super) fn read(word: &str, value: &Value<'_>) -> Result<Option<PhDeed>, Damage> {
    let mass = || value.need("mass")?.worded();
    Ok(Some(match word {
        "ph-windows" => {
            let windows = value.need("windows")?;
            if windows.list()?.len() > MOST_WINDOWS {
                return windows.damaged();
            }
            PhDeed::Windows(windows.list()?.map(|window| read_window(&window)).collect::<Result<_, _>>()?)
        }
        "ph-sample" => PhDeed::SampleTaken(mass()?, value.need("water")?.worded()?),
        "ph-titrant" => {
            let drops = value.field("drops")?.map(|drops| {
                let count = drops.whole::<u32>()?;
                if count == 0 { drops.damaged() } else { Ok(Drops { count, mass: mass()? }) }
            });
            PhDeed::Titrant(Titrant {
                material: value.need("material")?.worded()?,
                strength: value.need("strength")?.worded()?,
                drops: drops.transpose()?,
            })
        }
        "ph-drops" => PhDeed::DropsAdded(value.need("count")?.whole()?),
        "ph-grams" => PhDeed::GramsAdded(mass()?),
        "ph-read" => {
            let (vessel, by) = (value.need("vessel")?, value.need("by")?);
            let vessel = match vessel.text()? {
                "sample" => Vessel::Sample,
                "batch" => Vessel::Batch,
                _ => return vessel.damaged(),
            };
            let by = match by.text()? {
                "meter" => ReadBy::Meter,
                "strip" => ReadBy::Strip(value.need("step")?.worded()?),
                _ => return by.damaged(),
            };
            PhDeed::Read(vessel, value.need("ph")?.worded()?, by)
        }
        "ph-corrected" => PhDeed::Corrected(mass()?),
        "ph-accepted" => PhDeed::Accepted,
        _ => return Ok(None),
    }))
}

fn read_window(value: &Value<'_>) -> Result<Window, Damage> {
    let ph = |name| -> Result<Ph, Damage> { value.need(name)?.worded() };
    Ok(Window { substance: read_constituent_id(&value.need("substance")?)?, low: ph("low")?, high: ph("high")? })
}

pub(super) fn write(writer: &mut Writer, deed: &PhDeed) {
    match deed {
        PhDeed::Windows(windows) => writer.field("windows").list(windows, |writer, window| {
            writer.object(|writer| {
                write_constituent_id(writer.field("substance"), window.substance);
                writer.field("low").worded(&window.low);
                writer.field("high").worded(&window.high);
            });
        }),
        PhDeed::SampleTaken(mass, water) => {
            writer.field("mass").worded(mass);
            writer.field("water").worded(water);
        }
        PhDeed::Titrant(Titrant { material, strength, drops }) => {
            writer.field("material").worded(material);
            writer.field("strength").worded(strength);
            if let Some(Drops { count, mass }) = drops {
                writer.field("drops").whole(u64::from(*count));
                writer.field("mass").worded(mass);
            }
        }
        PhDeed::DropsAdded(count) => writer.field("count").whole(u64::from(*count)),
        PhDeed::GramsAdded(mass) | PhDeed::Corrected(mass) => writer.field("mass").worded(mass),
        PhDeed::Read(vessel, ph, by) => {
            writer.field("vessel").text(match vessel {
                Vessel::Sample => "sample",
                Vessel::Batch => "batch",
            });
            writer.field("ph").worded(ph);
            match by {
                ReadBy::Meter => writer.field("by").text("meter"),
                ReadBy::Strip(step) => {
                    writer.field("by").text("strip");
                    writer.field("step").worded(step);
                }
            }
        }
        PhDeed::Accepted => {}
    }
}

/// The word a record has for it.
pub(super) const fn name_of(deed: &PhDeed) -> &'static str {
    match deed {
        PhDeed::Windows(_) => "ph-windows",
        PhDeed::SampleTaken(..) => "ph-sample",
        PhDeed::Titrant(_) => "ph-titrant",
        PhDeed::DropsAdded(_) => "ph-drops",
        PhDeed::GramsAdded(_) => "ph-grams",
        PhDeed::Read(..) => "ph-read",
        PhDeed::Corrected(_) => "ph-corrected",
        PhDeed::Accepted => "ph-accepted",
    }
}

#[cfg(test)]
mod tests {
    use crate::batch::{BatchRecord, name_of};
    use crate::record::{read, write};
    use stillroom_core::run::state::replay;
    use stillroom_core::run::steps::Step;
    use stillroom_core::run::titration::Standing;

    const TITRATED: &str = include_str!("../../golden/batch-1-titrated.json");

    #[test]
    fn a_titrated_batch_is_read_for_ever() {
        let record: BatchRecord = read(TITRATED).unwrap();
        // Every deed about the pH, once at least, and each comes back.
        let words: std::collections::BTreeSet<_> = record
            .batch
            .events
            .iter()
            .map(|event| name_of(&event.deed))
            .filter(|word| word.starts_with("ph-"))
            .collect();
        assert_eq!(words.len(), 8, "{words:?}");
        assert_eq!(read::<BatchRecord>(&write(&record)).unwrap(), record);
        let state = replay(&record.batch.plan, &record.batch.events).unwrap();
        assert!(matches!(state.ph_log.standing(), Standing::Accepted(..)) && state.is_done(Step::Ph));
        assert_eq!(state.ph_log.readings.len(), 7);
        assert_eq!(state.ph_log.corrected().value().to_string(), "0.48");
    }

    #[test]
    fn a_ph_that_makes_no_sense_is_damage() {
        for (from, to) in [
            ("\"vessel\": \"sample\"", "\"vessel\": \"bucket\""),
            ("\"by\": \"strip\", \"step\": \"0.5\"", "\"by\": \"strip\""),
            ("\"by\": \"meter\"", "\"by\": \"tongue\""),
            ("\"drops\": 20", "\"drops\": 0"),
            ("\"ph\": \"6.4\"", "\"ph\": \"64\""),
            ("{ \"Catalogue\": 26 }", "{ \"Catalog\": 26 }"),
            ("\"did\": \"ph-corrected\"", "\"did\": \"ph-guessed\""),
        ] {
            assert!(TITRATED.contains(from), "{from}");
            let error = read::<BatchRecord>(&TITRATED.replace(from, to)).unwrap_err();
            assert_eq!(error.code(), "record.damaged", "{from} to {to}");
        }
    }
}
