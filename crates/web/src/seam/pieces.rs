//! What stands behind the calls of the seam in its pieces: each says, until its piece is there, that it is not.

use super::{BackupPhoto, BackupWriter, Stillroom};
use crate::lazy::lazy;
use crate::rooms::costs::view::PricesView;
use crate::rooms::materials::view::{SourceView, TableView};
use crate::rooms::paste::view::{RecipeFileView, RecipeView};
use crate::rooms::share::view::{ComparisonView, LinkView, ReadingOptions, ReadingView};
use crate::rooms::share::view_backup::{BackupView, StrayPhotos, VersionView};
use crate::rooms::share::write_up::WrittenForm;
use crate::rooms::swap::reading::{Lacks, ReaderView};
use crate::rooms::update::Update;
use crate::seam::browser::PageFile;
use crate::seam::evaluate::{EvaluationOptions, evaluate_record};
use crate::session::keeping::Written;
use js_sys::Uint8Array;
use std::mem::ManuallyDrop;
use stillroom_core::FormulaId;
use stillroom_exchange::archive::{ArchiveWriter, Photo};
use tsify::{Ts, Tsify};
use wasm_bindgen::prelude::*;

pub(super) type Handed<T> = Result<Ts<T>, JsError>;

/// The page asks for a piece before it calls what is in it.
fn not_here() -> JsError {
    JsError::new("this part of the page is not fetched yet")
}

/// What [`Stillroom::take_written`] handed out once.
pub(super) fn read_log(texts: Vec<String>) -> Vec<Written> {
    let mut texts = texts.into_iter();
    let mut log = Vec::new();
    while let (Some(key), Some(revision), Some(text)) = (texts.next(), texts.next(), texts.next()) {
        if let Ok(revision) = revision.parse() {
            log.push(Written { key, revision, text: Some(text).filter(|text| !text.is_empty()) });
        }
    }
    log
}

pub(super) fn formula_id(text: &str) -> Result<FormulaId, JsError> {
    FormulaId::try_from(text.to_owned()).map_err(|_| JsError::new("no such formula"))
}

lazy! {
    whole "20" pub(super) fn read_table(seam: &mut Stillroom, bytes: &[u8]) -> Handed<TableView> {
        Ok(seam.session.read_table(bytes).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "b1" pub(super) fn read_recipe(seam: &mut Stillroom, text: &str, meaning: &str) -> Handed<RecipeView> {
        Ok(seam.session.read_recipe(text, meaning).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "b2" pub(super) fn choose_in_recipe(seam: &mut Stillroom, line: usize, material: &str) -> Handed<RecipeView> {
        Ok(seam.session.choose_in_recipe(line, material).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "d5" pub(super) fn set_recipe_column(seam: &mut Stillroom, place: usize, holds: &str) -> Handed<RecipeView> {
        Ok(seam.session.set_recipe_column(place, holds).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "d6" pub(super) fn read_recipe_file(seam: &Stillroom, bytes: &[u8]) -> Handed<RecipeFileView> {
        Ok(seam.session.read_recipe_file(bytes).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "21" pub(super) fn write_table(seam: &Stillroom) -> String {
        seam.session.write_table()
    } else { String::new() }
}

lazy! {
    whole "a6" pub(super) fn read_prices(seam: &mut Stillroom, bytes: &[u8]) -> Handed<PricesView> {
        Ok(seam.session.read_prices(bytes).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "a7" pub(super) fn write_prices(seam: &Stillroom) -> String {
        seam.session.write_prices()
    } else { String::new() }
}

lazy! {
    whole "22" pub(super) fn read_colour(seam: &mut Stillroom, entry: usize, sample: &[u8], white: &[u8]) -> Handed<Update> {
        Ok(seam.session.read_colour(entry, sample, white).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "23" pub(super) fn rest(seam: &mut Stillroom) -> Handed<Update> {
        Ok(seam.session.rest().into_ts()?)
    } else { Ok(Update::default().into_ts()?) }
}

lazy! {
    whole "24" pub(super) fn count_findings(seam: &mut Stillroom, try_cures: bool) -> usize {
        seam.session.count_findings(try_cures)
    } else { 0 }
}

lazy! {
    whole "a2" pub(super) fn predict_ph(seam: &mut Stillroom, times: u32) -> f64 {
        seam.session.predict_ph(times)
    } else { 0.0 }
}

lazy! {
    whole "25" pub(super) fn sources(seam: &Stillroom) -> Result<Vec<Ts<SourceView>>, JsError> {
        seam.session.sources().iter().map(|source| Ok(source.into_ts()?)).collect()
    } else { Err(not_here()) }
}

lazy! {
    share "26" pub(super) fn read_link(seam: &mut Stillroom, link: &str, batch: Option<&str>) -> Handed<ReadingView> {
        Ok(seam.session.read_link(link, batch).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    share "27" pub(super) fn link_of(
        seam: &Stillroom,
        id: FormulaId,
        address: &str,
        with_notes: bool
    ) -> Handed<LinkView> {
        Ok(seam.session.link_of(id, address, with_notes).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    share "28" pub(super) fn write_up(seam: &mut Stillroom, formula: &str, form: &str) -> String {
        let id = FormulaId::try_from(formula.to_owned()).ok();
        let asked = id.zip(WrittenForm::from_name(form));
        asked.map_or_else(String::new, |(id, form)| seam.session.write_up(id, form))
    } else { String::new() }
}

lazy! {
    swap "b4" pub(super) fn write_up_with_substitutions(seam: &mut Stillroom, formula: &str, form: &str) -> String {
        let id = FormulaId::try_from(formula.to_owned()).ok();
        let asked = id.zip(WrittenForm::from_name(form));
        asked.map_or_else(String::new, |(id, form)| seam.session.write_up_with_substitutions(id, form))
    } else { String::new() }
}

lazy! {
    swap "b5" pub(super) fn read_link_without(seam: &mut Stillroom, link: &str, batch: Option<&str>, lacks: &Ts<Lacks>) -> Handed<ReaderView> {
        Ok(seam.session.read_link_without(link, batch, &lacks.to_rust()?).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    swap "b6" pub(super) fn read_beside_without(link: &str, options: &Ts<ReadingOptions>, lacks: &Ts<Lacks>) -> Handed<ReaderView> {
        Ok(crate::rooms::swap::reading::read_shared_without(link, &options.to_rust()?, &lacks.to_rust()?).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    swap "b7" pub(super) fn solve_by_chance(materials: u32, substances: u32, chance: u32) -> f64 {
        crate::rooms::swap::measured::solve_by_chance(materials, substances, chance)
    } else { -1.0 }
}

lazy! {
    whole "29" pub(super) fn write_backup(seam: &Stillroom, site: &str) -> String {
        seam.session.write_backup(site)
    } else { String::new() }
}

lazy! {
    whole "2a" pub(super) fn read_backup(seam: &mut Stillroom, file: Uint8Array, photos_here: &[String]) -> Handed<BackupView> {
        Ok(seam.session.read_backup(Box::new(PageFile::new(file)), photos_here).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "2b" pub(super) fn photo_of_backup(seam: &mut Stillroom, name: &str) -> Option<BackupPhoto> {
        // Milliseconds since 1970 are far below 2⁵³.
        #[expect(clippy::cast_precision_loss, reason = "a whole number that a double holds")]
        seam.session
            .photo_of_backup(name)
            .map(|Photo { taken_at, bytes }| BackupPhoto { taken_at: taken_at as f64, bytes })
    } else { None }
}

lazy! {
    whole "2c" pub(super) fn photo_was_lost(seam: &mut Stillroom) {
        seam.session.photo_was_lost();
    } else {  }
}

lazy! {
    whole "2d" pub(super) fn stray_photos(seam: &Stillroom, photos_here: &[String]) -> Handed<StrayPhotos> {
        Ok(seam.session.stray_photos(photos_here).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "2e" pub(super) fn begin_backup(seam: &Stillroom, site: &str) -> BackupWriter {
        let archive = ManuallyDrop::new(Some(seam.session.begin_backup()));
        BackupWriter { archive, records: seam.session.write_backup(site) }
    } else { BackupWriter { archive: ManuallyDrop::new(None), records: String::new() } }
}

lazy! {
    share "2f" pub(super) fn versions_of(seam: &Stillroom, id: FormulaId) -> Result<Vec<Ts<VersionView>>, JsError> {
        let versions = seam.session.versions_of(id);
        versions.iter().chain(&seam.session.others_than(id)).map(|version| Ok(version.into_ts()?)).collect()
    } else { Err(not_here()) }
}

lazy! {
    share "30" pub(super) fn compare_version(seam: &mut Stillroom, id: FormulaId, version: &str) -> Result<Option<Ts<ComparisonView>>, JsError> {
        Ok(seam.session.compare_version(id, version).map(|view| view.into_ts()).transpose()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "31" pub(super) fn storage_remarks(seam: &Stillroom) -> Vec<String> {
        seam.session.storage_remarks()
    } else { Vec::new() }
}

lazy! {
    whole "32" pub(super) fn add_records(writer: &mut BackupWriter) -> Vec<u8> {
        let records = std::mem::take(&mut writer.records);
        writer.archive.as_mut().map_or_else(Vec::new, |archive| archive.records(&records))
    } else { Vec::new() }
}

lazy! {
    whole "33" pub(super) fn add_photo(writer: &mut BackupWriter, name: &str, taken_at: f64, bytes: &[u8]) -> Vec<u8> {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "what is no moment becomes 1970")]
        writer.archive.as_mut().map_or_else(Vec::new, |archive| archive.photo(name, taken_at as u64, bytes))
    } else { Vec::new() }
}

lazy! {
    whole "34" pub(super) fn finish(writer: &mut BackupWriter) -> Vec<u8> {
        writer.archive.take().map_or_else(Vec::new, ArchiveWriter::finish)
    } else { Vec::new() }
}

lazy! {
    share "35" pub(super) fn evaluate_beside(formula: &str, own_materials: &[String], options: &EvaluationOptions) -> Handed<Update> {
        Ok(evaluate_record(formula, own_materials, options).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    share "36" pub(super) fn read_beside(link: &str, options: &ReadingOptions) -> Handed<ReadingView> {
        Ok(crate::rooms::share::reading::read_shared(link, options).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "37" pub(super) fn drop_archive(writer: &mut BackupWriter) {
        drop(writer.archive.take());
    } else {  }
}

lazy! {
    whole "38" pub(super) fn forget_backup(seam: &mut Stillroom) {
        seam.session.forget_backup();
    } else {}
}

/// What takes an archive apart lies where it was made.
impl Drop for BackupWriter {
    fn drop(&mut self) {
        drop_archive(self);
    }
}
