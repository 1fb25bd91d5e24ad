//! A shared formula worked out for a reader: all that the form of the seam does that other people's pages fetch.

use crate::command::Command;
use crate::history::Slot;
use crate::keeping::{MemoryStore, Surroundings};
use crate::sentences::about_formula;
use crate::sentences_shared as sentences;
use crate::session::Session;
use crate::settings::{SettingName, Settings};
use crate::view::Update;
use crate::view_shared::{ReadingOptions, ReadingView};
use std::rc::Rc;
use stillroom_core::number::DecimalMark;
use stillroom_core::scaling::BatchWay;
use stillroom_core::{MaterialId, Percent};
use stillroom_exchange::link::{self, LinkError};
use stillroom_exchange::parcel::Parcel;
use stillroom_exchange::record::FormulaRecord;

/// Works a link out for a reader, beside any session.
#[must_use]
pub fn read_shared(text: &str, options: &ReadingOptions) -> ReadingView {
    match link::read(text) {
        Ok(parcel) => {
            let settings = Settings { example_shown: true, ..Settings::default() };
            let mut reading = open_parcel(&parcel, settings, options.decimal_mark);
            for (name, text) in
                [(SettingName::MassUnit, &options.mass_unit), (SettingName::MainStep, &options.scale_step)]
            {
                if let Some(text) = text {
                    reading.act(Command::SetSetting { name, text: text.clone() });
                }
            }
            present_reading(&mut reading, &parcel, options.batch.as_deref())
        }
        Err(error) => refuse(error),
    }
}

pub(crate) fn refuse(error: LinkError) -> ReadingView {
    let (error, code) = (sentences::unreadable_link(error), error.code());
    ReadingView { error: Some(error), code: Some(code), ..ReadingView::default() }
}

/// A session in memory that holds a parcel and nothing else.
pub(crate) fn open_parcel(parcel: &Parcel, settings: Settings, mark: DecimalMark) -> Session {
    let mut reading = Session::empty(Box::new(MemoryStore::default()), Box::new(Nowhere), mark);
    reading.place(Slot::Settings(Rc::new(settings)));
    for own in &parcel.materials {
        if let MaterialId::Own(number) = own.material.id {
            reading.place(Slot::Material(number, Some(Rc::new(own.clone()))));
        }
    }
    for (id, formula) in parcel.formulas.iter().chain([&(parcel.id, parcel.formula.clone())]) {
        let record = FormulaRecord { id: *id, revision: 0, changed_at: 0, formula: formula.clone() };
        reading.place(Slot::Formula(*id, Some(Rc::new(record))));
    }
    reading.open = Some(parcel.id);
    reading
}

pub(crate) fn present_reading(reading: &mut Session, parcel: &Parcel, batch: Option<&str>) -> ReadingView {
    let mut update = Update::default();
    if let Some(text) = batch {
        reading.act(Command::SetBatchWay { way: BatchWay::Mass });
        update.answer = Some(reading.act(Command::SetBatchMass { text: text.to_owned() }));
    }
    reading.present_formula(&mut update);
    let materials = parcel.materials.iter().map(|own| {
        let brings = reading.brings(own.material.id, Percent::HUNDRED);
        sentences::material_comes_along(&own.material.name, &brings)
    });
    let materials = materials.collect();
    let about = about_formula(&parcel.formula, &parcel.formula.balance(), reading.mark());
    ReadingView { update, steps: parcel.formula.steps.clone(), about, materials, ..ReadingView::default() }
}

/// No place and no time: nothing that is worked out depends on either.
pub(crate) struct Nowhere;

impl Surroundings for Nowhere {
    fn now(&self) -> u64 {
        0
    }

    fn minutes_ahead(&self) -> i64 {
        0
    }

    /// No day: nothing is past its date where nothing is kept.
    fn today(&self) -> String {
        String::new()
    }
    fn random(&self) -> u64 {
        0
    }
}
