//! A shared formula worked out for a reader: all that the form of the seam does that other people's pages fetch.

use crate::messages::sentences::about_formula;
use crate::rooms::bench::command::BenchCommand;
use crate::rooms::share::sentences;
use crate::rooms::share::view::{ReadingOptions, ReadingView};
use crate::rooms::update::Update;
use crate::session::Session;
use crate::session::history::Slot;
use crate::session::keeping::{MemoryStore, Surroundings};
use crate::session::settings::{SettingName, Settings};
use std::rc::Rc;
use stillroom_core::batch_plan::BatchWay;
use stillroom_core::number::DecimalMark;
use stillroom_core::{MaterialId, Percent};
use stillroom_exchange::link::{self, LinkError};
use stillroom_exchange::parcel::Parcel;
use stillroom_exchange::record::FormulaRecord;

/// Works a link out for a reader, beside any session.
#[must_use]
pub fn read_shared(text: &str, options: &ReadingOptions) -> ReadingView {
    match link::read(text) {
        Ok(parcel) => present_reading(&mut open_reading(&parcel, options), &parcel, options.batch.as_deref()),
        Err(error) => refuse(error),
    }
}

/// A session that holds a parcel, as a reader wants it written.
pub(crate) fn open_reading(parcel: &Parcel, options: &ReadingOptions) -> Session {
    let settings = Settings { example_shown: true, ..Settings::default() };
    let mut reading = open_parcel(parcel, settings, options.decimal_mark);
    for (name, text) in [
        (SettingName::MassUnit, &options.mass_unit),
        (SettingName::TemperatureUnit, &options.temperature_unit),
        (SettingName::MainStep, &options.scale_step),
    ] {
        if let Some(text) = text {
            reading.act_on_bench(BenchCommand::SetSetting { name, text: text.clone() });
        }
    }
    reading
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
        reading.act_on_bench(BenchCommand::SetBatchWay { way: BatchWay::Mass });
        update.answer = Some(reading.act_on_bench(BenchCommand::SetBatchMass { text: text.to_owned() }));
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
