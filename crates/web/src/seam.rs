//! The seam: the handful of functions the page calls. Types cross it as plain objects; what is not understood comes
//! back as data, and only a call that no page of ours makes can throw.

use crate::browser::PageFile;
use crate::browser::{BrowserSurroundings, LocalStorage};
use crate::command::Command;
use crate::evaluate::{EvaluationOptions, evaluate_record};
use crate::keeping::{LoggedStore, MemoryStore, Written};
use crate::lazy::{self, Piece, lazy};
use crate::session::Session;
use crate::view::{MaterialHit, TrailView, Update};
use crate::view::{SourceView, TableView};
use crate::view_backup::{BackupView, StrayPhotos, VersionView};
use crate::view_shared::{ComparisonView, LinkView, ReadingOptions, ReadingView};
use crate::write_up::WrittenForm;
use js_sys::Uint8Array;
use serde::{Deserialize, Serialize};
use std::mem::ManuallyDrop;
use stillroom_catalogue::Filter;
use stillroom_core::FormulaId;
use stillroom_core::number::DecimalMark;
use stillroom_core::{Class, PhaseKind};
use stillroom_exchange::archive::{ArchiveWriter, Photo};
use tsify::{Ts, Tsify};
use wasm_bindgen::prelude::*;

/// What a page says of itself when it opens a session.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct Reader {
    /// Decimal mark of the browser's language.
    #[tsify(type = "\"point\" | \"comma\"")]
    pub decimal_mark: DecimalMark,
    /// Keep nothing: for a page that only shows.
    #[serde(default)]
    pub keep_nothing: bool,
}

/// Which materials a search may return.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, Tsify)]
#[serde(rename_all = "camelCase", default)]
pub struct SearchFilter {
    /// Only these classes; all when empty.
    #[tsify(type = "Class[]")]
    pub classes: Vec<Class>,
    /// Only these phases; all when empty.
    #[tsify(type = "PhaseKind[]")]
    pub phases: Vec<PhaseKind>,
    /// The phase of the line it is for: what usually goes there stands first.
    #[tsify(type = "PhaseKind", optional)]
    pub line_of: Option<PhaseKind>,
}

/// The session of one page.
#[wasm_bindgen]
pub struct Stillroom {
    session: Session,
}

#[wasm_bindgen]
#[expect(clippy::needless_pass_by_value, reason = "what crosses the seam is handed over")]
impl Stillroom {
    /// Opens the session, reading what this device keeps, after putting there what a log of earlier pages holds: key,
    /// revision and text of each record, as [`take_written`](Self::take_written) hands them out.
    ///
    /// # Errors
    /// If `reader` is not what its type says.
    #[wasm_bindgen(constructor)]
    pub fn open(reader: Ts<Reader>, log: Option<Vec<String>>) -> Result<Stillroom, JsError> {
        let reader = reader.to_rust()?;
        let around = Box::new(BrowserSurroundings);
        let mut session = match log {
            _ if reader.keep_nothing => Session::open(Box::new(MemoryStore::default()), around, reader.decimal_mark),
            None => Session::open(Box::new(LocalStorage::open()), around, reader.decimal_mark),
            Some(log) => {
                let store = LoggedStore::new(LocalStorage::open(), &read_log(log));
                Session::open_logged(store, around, reader.decimal_mark)
            }
        };
        session.check_at_rest();
        Ok(Self { session })
    }

    /// Everything there is to show.
    ///
    /// # Errors
    /// Never by what a person did.
    #[wasm_bindgen(js_name = showEverything)]
    pub fn show_everything(&mut self) -> Result<Ts<Update>, JsError> {
        Ok(self.session.show_everything().into_ts()?)
    }

    /// Acts, and says what of the view changed.
    ///
    /// # Errors
    /// If `command` is not what its type says.
    pub fn apply(&mut self, command: Ts<Command>) -> Result<Ts<Update>, JsError> {
        let command = Command::from_page(&command.js_value())?;
        Ok(self.session.apply(command).into_ts()?)
    }

    /// Which lines bring a constituent of the open formula, and how much; nothing of one that is not in it.
    ///
    /// # Errors
    /// Never by what a person did.
    #[wasm_bindgen(js_name = trailOf)]
    pub fn trail_of(&self, constituent: &str) -> Result<Vec<Ts<TrailView>>, JsError> {
        self.session.trail_of(constituent).iter().map(|line| Ok(line.into_ts()?)).collect()
    }

    /// Keeps what is not kept yet. To be called once a change is drawn.
    ///
    /// # Errors
    /// Never by what a person did.
    pub fn keep(&mut self) -> Result<Ts<Update>, JsError> {
        Ok(self.session.keep().into_ts()?)
    }

    /// What was written since the last time, for a log: key, revision and text of each record; no text where it is gone.
    #[wasm_bindgen(js_name = takeWritten)]
    #[must_use]
    pub fn take_written(&mut self) -> Vec<String> {
        let written = self.session.take_written();
        written
            .into_iter()
            .flat_map(|Written { key, revision, text }| [key, revision.to_string(), text.unwrap_or_default()])
            .collect()
    }

    /// Says that all that was handed out is on the disk, or that it could not be put there.
    ///
    /// # Errors
    /// Never by what a person did.
    pub fn committed(&mut self, is_on_disk: bool) -> Result<Ts<Update>, JsError> {
        Ok(self.session.committed(is_on_disk).into_ts()?)
    }

    /// Whether something is still to be kept.
    #[wasm_bindgen(js_name = hasUnkept)]
    #[must_use]
    pub fn has_unkept(&self) -> bool {
        self.session.has_unkept()
    }

    /// Takes in what lies beyond the main job, once it was fetched, and says what changed by it.
    ///
    /// # Errors
    /// Never by what a person did.
    #[wasm_bindgen(js_name = wholeArrived)]
    pub fn whole_arrived(&mut self) -> Result<Ts<Update>, JsError> {
        self.session.whole_arrived();
        Ok(self.session.show_changes().into_ts()?)
    }

    /// Materials that answer a query, best first.
    ///
    /// # Errors
    /// If `filter` is not what its type says.
    pub fn search(&mut self, query: &str, filter: Ts<SearchFilter>) -> Result<Vec<Ts<MaterialHit>>, JsError> {
        let SearchFilter { classes, phases, line_of } = filter.to_rust()?;
        self.session
            .search_for(query, &Filter { classes, phases }, line_of)
            .iter()
            .map(|hit| Ok(hit.into_ts()?))
            .collect()
    }
}

#[wasm_bindgen]
impl Stillroom {
    /// Reads a table of materials and says, line by line, what is wrong with it. Nothing is taken in yet.
    ///
    /// # Errors
    /// Never by what a file holds.
    #[wasm_bindgen(js_name = readTable)]
    pub fn read_table(&mut self, bytes: &[u8]) -> Result<Ts<TableView>, JsError> {
        read_table(self, bytes)
    }

    /// The maker's own materials as a table for a spreadsheet.
    #[wasm_bindgen(js_name = writeTable)]
    #[must_use]
    pub fn write_table(&self) -> String {
        write_table(self)
    }

    /// Reads the colour of an entry of the open journal from pixels of the product and of a white beside it: red, green,
    /// blue and opacity of each.
    ///
    /// # Errors
    /// Never by what a photo holds.
    #[wasm_bindgen(js_name = readColour)]
    pub fn read_colour(&mut self, entry: &str, sample: &[u8], white: &[u8]) -> Result<Ts<Update>, JsError> {
        read_colour(self, entry, sample, white)
    }

    /// Checks the open formula if it changed since, and says what changed by it. To be called once a change is drawn.
    ///
    /// # Errors
    /// Never by what a person did.
    pub fn rest(&mut self) -> Result<Ts<Update>, JsError> {
        rest(self)
    }

    /// Works the open formula out and checks it anew, and says how much was found. Shows nothing: for measuring.
    #[wasm_bindgen(js_name = countFindings)]
    #[must_use]
    pub fn count_findings(&mut self, try_cures: bool) -> usize {
        count_findings(self, try_cures)
    }

    /// Every source a value of the catalogue rests on.
    ///
    /// # Errors
    /// Never by what a person did.
    pub fn sources(&self) -> Result<Vec<Ts<SourceView>>, JsError> {
        sources(self)
    }
}

#[wasm_bindgen]
#[expect(clippy::needless_pass_by_value, reason = "what crosses the seam is handed over")]
impl Stillroom {
    /// A shared formula for reading, with a batch as typed if the reader wants another. Nothing is kept.
    ///
    /// # Errors
    /// Never by what a link holds.
    #[wasm_bindgen(js_name = readLink)]
    pub fn read_link(&mut self, link: &str, batch: Option<String>) -> Result<Ts<ReadingView>, JsError> {
        read_link(self, link, batch.as_deref())
    }

    /// A formula as a link behind the page's address, with its code.
    ///
    /// # Errors
    /// Never by what a person did.
    #[wasm_bindgen(js_name = linkOf)]
    pub fn link_of(&self, formula: &str, address: &str) -> Result<Ts<LinkView>, JsError> {
        link_of(self, formula_id(formula)?, address)
    }
}

#[wasm_bindgen]
impl Stillroom {
    /// A formula written out as `markdown`, `text` or `csv`; nothing for another form.
    #[wasm_bindgen(js_name = writeUp)]
    #[must_use]
    pub fn write_up(&mut self, formula: &str, form: &str) -> String {
        write_up(self, formula, form)
    }

    /// Everything on this device as one file, written by the site at an address.
    #[wasm_bindgen(js_name = writeBackup)]
    #[must_use]
    pub fn write_backup(&self, site: &str) -> String {
        write_backup(self, site)
    }

    /// Reads a backup and says what restoring it would do, on a device that has photos of these names. Nothing is put
    /// anywhere yet.
    ///
    /// # Errors
    /// Never by what a file holds.
    #[wasm_bindgen(js_name = readBackup)]
    #[expect(clippy::needless_pass_by_value, reason = "what crosses the seam is handed over")]
    pub fn read_backup(&mut self, file: Uint8Array, photos_here: Vec<String>) -> Result<Ts<BackupView>, JsError> {
        read_backup(self, file, &photos_here)
    }

    /// A photo of the backup that was read, for the page to keep; nothing if it is damaged.
    #[wasm_bindgen(js_name = photoOfBackup)]
    pub fn photo_of_backup(&mut self, name: &str) -> Option<BackupPhoto> {
        photo_of_backup(self, name)
    }

    /// Says that the photo handed out last could not be kept.
    #[wasm_bindgen(js_name = photoWasLost)]
    pub fn photo_was_lost(&mut self) {
        photo_was_lost(self);
    }

    /// Puts the backup that was read away: nothing of it is restored.
    #[wasm_bindgen(js_name = forgetBackup)]
    pub fn forget_backup(&mut self) {
        forget_backup(self);
    }

    /// Which of the photos on this device no batch has any more.
    ///
    /// # Errors
    /// Never by what a person did.
    #[wasm_bindgen(js_name = strayPhotos)]
    #[expect(clippy::needless_pass_by_value, reason = "what crosses the seam is handed over")]
    pub fn stray_photos(&self, photos_here: Vec<String>) -> Result<Ts<StrayPhotos>, JsError> {
        stray_photos(self, &photos_here)
    }

    /// Begins a backup with photos, written by the site at an address.
    #[wasm_bindgen(js_name = beginBackup)]
    #[must_use]
    pub fn begin_backup(&self, site: &str) -> BackupWriter {
        begin_backup(self, site)
    }

    /// Earlier versions of a formula, last first.
    ///
    /// # Errors
    /// Never by what a person did.
    #[wasm_bindgen(js_name = versionsOf)]
    pub fn versions_of(&self, formula: &str) -> Result<Vec<Ts<VersionView>>, JsError> {
        versions_of(self, formula_id(formula)?)
    }

    /// What changed in a formula since an earlier version; nothing if there is no such version.
    ///
    /// # Errors
    /// Never by what a person did.
    #[wasm_bindgen(js_name = compareVersion)]
    pub fn compare_version(&mut self, formula: &str, version: &str) -> Result<Option<Ts<ComparisonView>>, JsError> {
        compare_version(self, formula_id(formula)?, version)
    }

    /// What the maker should know about the storage of this device, a sentence each.
    #[wasm_bindgen(js_name = storageRemarks)]
    #[must_use]
    pub fn storage_remarks(&self) -> Vec<String> {
        storage_remarks(self)
    }
}

/// A photo of a backup.
#[wasm_bindgen(getter_with_clone)]
#[derive(Debug)]
pub struct BackupPhoto {
    /// When it was taken, in milliseconds since 1970.
    #[wasm_bindgen(js_name = takenAt, readonly)]
    pub taken_at: f64,
    /// The JPEG file.
    #[wasm_bindgen(readonly)]
    pub bytes: Vec<u8>,
}

/// A backup with photos while it is written. Every call hands out the next piece of the file.
#[wasm_bindgen]
#[derive(Debug)]
pub struct BackupWriter {
    /// Taken out and dropped by the piece that made it.
    archive: ManuallyDrop<Option<ArchiveWriter>>,
    records: String,
}

#[wasm_bindgen]
impl BackupWriter {
    /// Adds the records of this device.
    pub fn records(&mut self) -> Vec<u8> {
        add_records(self)
    }

    /// Adds a photo taken at a moment, in milliseconds since 1970.
    pub fn photo(&mut self, name: &str, taken_at: f64, bytes: &[u8]) -> Vec<u8> {
        add_photo(self, name, taken_at, bytes)
    }

    /// Ends the file.
    #[must_use]
    pub fn finish(mut self) -> Vec<u8> {
        finish(&mut self)
    }
}

/// Works out one formula beside any session: its head, lines, jar, constituents and batch. Nothing is kept, and no page
/// is needed. Takes records as they are kept, so materials of the maker's own that the formula uses come along.
///
/// # Errors
/// If `options` is not what its type says. A record that cannot be read is an error in the update's `answer`.
#[wasm_bindgen]
#[expect(clippy::needless_pass_by_value, reason = "what crosses the seam is handed over")]
pub fn evaluate(
    formula: &str,
    own_materials: Vec<String>,
    options: Ts<EvaluationOptions>,
) -> Result<Ts<Update>, JsError> {
    evaluate_beside(formula, &own_materials, &options.to_rust()?)
}

/// The version of this build.
#[wasm_bindgen]
#[must_use]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}

/// Works out the formula of a link beside any session: for a page that embeds it. Nothing is kept.
///
/// # Errors
/// If `options` is not what its type says. A link that cannot be read is an error in the view.
#[wasm_bindgen(js_name = readShared)]
#[expect(clippy::needless_pass_by_value, reason = "what crosses the seam is handed over")]
pub fn read_shared(link: &str, options: Ts<ReadingOptions>) -> Result<Ts<ReadingView>, JsError> {
    read_beside(link, &options.to_rust()?)
}

/// Fetches a piece of the seam and calls `done` with whether it came.
///
/// # Errors
/// If there is no piece of that name.
#[wasm_bindgen(js_name = fetchPiece)]
pub fn fetch_piece(
    #[wasm_bindgen(unchecked_param_type = "\"share\" | \"whole\"")] piece: &str,
    done: js_sys::Function,
) -> Result<(), JsError> {
    lazy::fetch(Piece::from_name(piece).ok_or_else(|| JsError::new("no such piece"))?, done);
    Ok(())
}

// ---- what lies in pieces ----------------------------------------------------------------------------------------------

type Handed<T> = Result<Ts<T>, JsError>;

/// The page asks for a piece before it calls what is in it.
fn not_here() -> JsError {
    JsError::new("this part of the page is not fetched yet")
}

/// What [`Stillroom::take_written`] handed out once.
fn read_log(texts: Vec<String>) -> Vec<Written> {
    let mut texts = texts.into_iter();
    let mut log = Vec::new();
    while let (Some(key), Some(revision), Some(text)) = (texts.next(), texts.next(), texts.next()) {
        if let Ok(revision) = revision.parse() {
            log.push(Written { key, revision, text: Some(text).filter(|text| !text.is_empty()) });
        }
    }
    log
}

fn formula_id(text: &str) -> Result<FormulaId, JsError> {
    FormulaId::try_from(text.to_owned()).map_err(|_| JsError::new("no such formula"))
}

lazy! {
    whole "20" fn read_table(seam: &mut Stillroom, bytes: &[u8]) -> Handed<TableView> {
        Ok(seam.session.read_table(bytes).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "21" fn write_table(seam: &Stillroom) -> String {
        seam.session.write_table()
    } else { String::new() }
}

lazy! {
    whole "22" fn read_colour(seam: &mut Stillroom, entry: &str, sample: &[u8], white: &[u8]) -> Handed<Update> {
        Ok(seam.session.read_colour(entry, sample, white).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "23" fn rest(seam: &mut Stillroom) -> Handed<Update> {
        Ok(seam.session.rest().into_ts()?)
    } else { Ok(Update::default().into_ts()?) }
}

lazy! {
    whole "24" fn count_findings(seam: &mut Stillroom, try_cures: bool) -> usize {
        seam.session.count_findings(try_cures)
    } else { 0 }
}

lazy! {
    whole "25" fn sources(seam: &Stillroom) -> Result<Vec<Ts<SourceView>>, JsError> {
        seam.session.sources().iter().map(|source| Ok(source.into_ts()?)).collect()
    } else { Err(not_here()) }
}

lazy! {
    share "26" fn read_link(seam: &mut Stillroom, link: &str, batch: Option<&str>) -> Handed<ReadingView> {
        Ok(seam.session.read_link(link, batch).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    share "27" fn link_of(seam: &Stillroom, id: FormulaId, address: &str) -> Handed<LinkView> {
        Ok(seam.session.link_of(id, address).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    share "28" fn write_up(seam: &mut Stillroom, formula: &str, form: &str) -> String {
        let id = FormulaId::try_from(formula.to_owned()).ok();
        let asked = id.zip(WrittenForm::from_name(form));
        asked.map_or_else(String::new, |(id, form)| seam.session.write_up(id, form))
    } else { String::new() }
}

lazy! {
    whole "29" fn write_backup(seam: &Stillroom, site: &str) -> String {
        seam.session.write_backup(site)
    } else { String::new() }
}

lazy! {
    whole "2a" fn read_backup(seam: &mut Stillroom, file: Uint8Array, photos_here: &[String]) -> Handed<BackupView> {
        Ok(seam.session.read_backup(Box::new(PageFile::new(file)), photos_here).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "2b" fn photo_of_backup(seam: &mut Stillroom, name: &str) -> Option<BackupPhoto> {
        // Milliseconds since 1970 are far below 2⁵³.
        #[expect(clippy::cast_precision_loss, reason = "a whole number that a double holds")]
        seam.session
            .photo_of_backup(name)
            .map(|Photo { taken_at, bytes }| BackupPhoto { taken_at: taken_at as f64, bytes })
    } else { None }
}

lazy! {
    whole "2c" fn photo_was_lost(seam: &mut Stillroom) {
        seam.session.photo_was_lost();
    } else {  }
}

lazy! {
    whole "2d" fn stray_photos(seam: &Stillroom, photos_here: &[String]) -> Handed<StrayPhotos> {
        Ok(seam.session.stray_photos(photos_here).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "2e" fn begin_backup(seam: &Stillroom, site: &str) -> BackupWriter {
        let archive = ManuallyDrop::new(Some(seam.session.begin_backup()));
        BackupWriter { archive, records: seam.session.write_backup(site) }
    } else { BackupWriter { archive: ManuallyDrop::new(None), records: String::new() } }
}

lazy! {
    share "2f" fn versions_of(seam: &Stillroom, id: FormulaId) -> Result<Vec<Ts<VersionView>>, JsError> {
        seam.session.versions_of(id).iter().map(|version| Ok(version.into_ts()?)).collect()
    } else { Err(not_here()) }
}

lazy! {
    share "30" fn compare_version(seam: &mut Stillroom, id: FormulaId, version: &str) -> Result<Option<Ts<ComparisonView>>, JsError> {
        Ok(seam.session.compare_version(id, version).map(|view| view.into_ts()).transpose()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "31" fn storage_remarks(seam: &Stillroom) -> Vec<String> {
        seam.session.storage_remarks()
    } else { Vec::new() }
}

lazy! {
    whole "32" fn add_records(writer: &mut BackupWriter) -> Vec<u8> {
        let records = std::mem::take(&mut writer.records);
        writer.archive.as_mut().map_or_else(Vec::new, |archive| archive.records(&records))
    } else { Vec::new() }
}

lazy! {
    whole "33" fn add_photo(writer: &mut BackupWriter, name: &str, taken_at: f64, bytes: &[u8]) -> Vec<u8> {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "what is no moment becomes 1970")]
        writer.archive.as_mut().map_or_else(Vec::new, |archive| archive.photo(name, taken_at as u64, bytes))
    } else { Vec::new() }
}

lazy! {
    whole "34" fn finish(writer: &mut BackupWriter) -> Vec<u8> {
        writer.archive.take().map_or_else(Vec::new, ArchiveWriter::finish)
    } else { Vec::new() }
}

lazy! {
    share "35" fn evaluate_beside(formula: &str, own_materials: &[String], options: &EvaluationOptions) -> Handed<Update> {
        Ok(evaluate_record(formula, own_materials, options).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    share "36" fn read_beside(link: &str, options: &ReadingOptions) -> Handed<ReadingView> {
        Ok(crate::reading::read_shared(link, options).into_ts()?)
    } else { Err(not_here()) }
}

lazy! {
    whole "37" fn drop_archive(writer: &mut BackupWriter) {
        drop(writer.archive.take());
    } else {  }
}

lazy! {
    whole "38" fn forget_backup(seam: &mut Stillroom) {
        seam.session.forget_backup();
    } else {}
}

/// What takes an archive apart lies where it was made.
impl Drop for BackupWriter {
    fn drop(&mut self) {
        drop_archive(self);
    }
}
