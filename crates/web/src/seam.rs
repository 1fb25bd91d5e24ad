//! The seam: the handful of functions the page calls. Types cross it as plain objects; what is not understood comes
//! back as data, and only a call that no page of ours makes can throw.

#[cfg(feature = "whole")]
use crate::browser::PageFile;
use crate::browser::{BrowserSurroundings, LocalStorage};
use crate::command::Command;
#[cfg(feature = "whole")]
use crate::evaluate::{EvaluationOptions, evaluate_record};
use crate::keeping::{MemoryStore, Store};
use crate::session::Session;
use crate::view::{MaterialHit, TrailView, Update};
#[cfg(feature = "whole")]
use crate::view::{SourceView, TableView};
#[cfg(feature = "whole")]
use crate::view_backup::{BackupView, StrayPhotos, VersionView};
#[cfg(feature = "whole")]
use crate::view_shared::{ComparisonView, LinkView, ReadingView};
#[cfg(feature = "whole")]
use crate::write_up::WrittenForm;
#[cfg(feature = "whole")]
use js_sys::Uint8Array;
use serde::{Deserialize, Serialize};
use stillroom_catalogue::Filter;
#[cfg(feature = "whole")]
use stillroom_core::FormulaId;
use stillroom_core::number::DecimalMark;
use stillroom_core::{Class, PhaseKind};
#[cfg(feature = "whole")]
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
}

/// The session of one page.
#[wasm_bindgen]
pub struct Stillroom {
    session: Session,
}

#[wasm_bindgen]
#[expect(clippy::needless_pass_by_value, reason = "what crosses the seam is handed over")]
impl Stillroom {
    /// Opens the session, reading what this device keeps.
    ///
    /// # Errors
    /// If `reader` is not what its type says.
    #[wasm_bindgen(constructor)]
    pub fn open(reader: Ts<Reader>) -> Result<Stillroom, JsError> {
        let reader = reader.to_rust()?;
        let store: Box<dyn Store> =
            if reader.keep_nothing { Box::new(MemoryStore::default()) } else { Box::new(LocalStorage::open()) };
        #[cfg_attr(not(feature = "whole"), expect(unused_mut, reason = "only the whole seam checks"))]
        let mut session = Session::open(store, Box::new(BrowserSurroundings), reader.decimal_mark);
        #[cfg(feature = "whole")]
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

    /// Whether something is still to be kept.
    #[wasm_bindgen(js_name = hasUnkept)]
    #[must_use]
    pub fn has_unkept(&self) -> bool {
        self.session.has_unkept()
    }

    /// Records that are not kept yet and what can be undone, for the seam that takes this one's place.
    #[wasm_bindgen(js_name = handOver)]
    #[must_use]
    pub fn hand_over(&self) -> Vec<String> {
        self.session.hand_over()
    }

    /// Takes the place of a seam that handed over.
    #[wasm_bindgen(js_name = takeOver)]
    pub fn take_over(&mut self, texts: Vec<String>) {
        self.session.take_over(texts);
    }

    /// Materials that answer a query, best first.
    ///
    /// # Errors
    /// If `filter` is not what its type says.
    pub fn search(&mut self, query: &str, filter: Ts<SearchFilter>) -> Result<Vec<Ts<MaterialHit>>, JsError> {
        let filter = filter.to_rust()?;
        let filter = Filter { classes: filter.classes, phases: filter.phases };
        self.session.search(query, &filter).iter().map(|hit| Ok(hit.into_ts()?)).collect()
    }
}

#[cfg(feature = "whole")]
#[wasm_bindgen]
impl Stillroom {
    /// Reads a table of materials and says, line by line, what is wrong with it. Nothing is taken in yet.
    ///
    /// # Errors
    /// Never by what a file holds.
    #[wasm_bindgen(js_name = readTable)]
    pub fn read_table(&mut self, bytes: &[u8]) -> Result<Ts<TableView>, JsError> {
        Ok(self.session.read_table(bytes).into_ts()?)
    }

    /// The maker's own materials as a table for a spreadsheet.
    #[wasm_bindgen(js_name = writeTable)]
    #[must_use]
    pub fn write_table(&self) -> String {
        self.session.write_table()
    }

    /// Reads the colour of an entry of the open journal from pixels of the product and of a white beside it: red, green,
    /// blue and opacity of each.
    ///
    /// # Errors
    /// Never by what a photo holds.
    #[wasm_bindgen(js_name = readColour)]
    pub fn read_colour(&mut self, entry: &str, sample: &[u8], white: &[u8]) -> Result<Ts<Update>, JsError> {
        Ok(self.session.read_colour(entry, sample, white).into_ts()?)
    }

    /// Checks the open formula if it changed since, and says what changed by it. To be called once a change is drawn.
    ///
    /// # Errors
    /// Never by what a person did.
    pub fn rest(&mut self) -> Result<Ts<Update>, JsError> {
        Ok(self.session.rest().into_ts()?)
    }

    /// Works the open formula out and checks it anew, and says how much was found. Shows nothing: for measuring.
    #[wasm_bindgen(js_name = countFindings)]
    #[must_use]
    pub fn count_findings(&mut self, try_cures: bool) -> usize {
        self.session.count_findings(try_cures)
    }

    /// Every source a value of the catalogue rests on.
    ///
    /// # Errors
    /// Never by what a person did.
    pub fn sources(&self) -> Result<Vec<Ts<SourceView>>, JsError> {
        self.session.sources().iter().map(|source| Ok(source.into_ts()?)).collect()
    }
}

#[cfg(feature = "whole")]
#[wasm_bindgen]
#[expect(clippy::needless_pass_by_value, reason = "what crosses the seam is handed over")]
impl Stillroom {
    /// A shared formula for reading, with a batch as typed if the reader wants another. Nothing is kept.
    ///
    /// # Errors
    /// Never by what a link holds.
    #[wasm_bindgen(js_name = readLink)]
    pub fn read_link(&mut self, link: &str, batch: Option<String>) -> Result<Ts<ReadingView>, JsError> {
        Ok(self.session.read_link(link, batch.as_deref()).into_ts()?)
    }

    /// A formula as a link behind the page's address, with its code.
    ///
    /// # Errors
    /// Never by what a person did.
    #[wasm_bindgen(js_name = linkOf)]
    pub fn link_of(&self, formula: &str, address: &str) -> Result<Ts<LinkView>, JsError> {
        let id = FormulaId::try_from(formula.to_owned()).map_err(|_| JsError::new("no such formula"))?;
        Ok(self.session.link_of(id, address).into_ts()?)
    }
}

#[cfg(feature = "whole")]
#[wasm_bindgen]
impl Stillroom {
    /// A formula written out as `markdown`, `text` or `csv`; nothing for another form.
    #[wasm_bindgen(js_name = writeUp)]
    #[must_use]
    pub fn write_up(&mut self, formula: &str, form: &str) -> String {
        let id = FormulaId::try_from(formula.to_owned()).ok();
        let asked = id.zip(WrittenForm::from_name(form));
        asked.map_or_else(String::new, |(id, form)| self.session.write_up(id, form))
    }

    /// Everything on this device as one file, written by the site at an address.
    #[wasm_bindgen(js_name = writeBackup)]
    #[must_use]
    pub fn write_backup(&self, site: &str) -> String {
        self.session.write_backup(site)
    }

    /// Reads a backup and says what restoring it would do, on a device that has photos of these names. Nothing is put
    /// anywhere yet.
    ///
    /// # Errors
    /// Never by what a file holds.
    #[wasm_bindgen(js_name = readBackup)]
    #[expect(clippy::needless_pass_by_value, reason = "what crosses the seam is handed over")]
    pub fn read_backup(&mut self, file: Uint8Array, photos_here: Vec<String>) -> Result<Ts<BackupView>, JsError> {
        Ok(self.session.read_backup(Box::new(PageFile::new(file)), &photos_here).into_ts()?)
    }

    /// A photo of the backup that was read, for the page to keep; nothing if it is damaged.
    #[wasm_bindgen(js_name = photoOfBackup)]
    pub fn photo_of_backup(&mut self, name: &str) -> Option<BackupPhoto> {
        // Milliseconds since 1970 are far below 2⁵³.
        #[expect(clippy::cast_precision_loss, reason = "a whole number that a double holds")]
        self.session
            .photo_of_backup(name)
            .map(|Photo { taken_at, bytes }| BackupPhoto { taken_at: taken_at as f64, bytes })
    }

    /// Says that the photo handed out last could not be kept.
    #[wasm_bindgen(js_name = photoWasLost)]
    pub fn photo_was_lost(&mut self) {
        self.session.photo_was_lost();
    }

    /// Puts the backup that was read away: nothing of it is restored.
    #[wasm_bindgen(js_name = forgetBackup)]
    pub fn forget_backup(&mut self) {
        self.session.forget_backup();
    }

    /// Which of the photos on this device no batch has any more.
    ///
    /// # Errors
    /// Never by what a person did.
    #[wasm_bindgen(js_name = strayPhotos)]
    #[expect(clippy::needless_pass_by_value, reason = "what crosses the seam is handed over")]
    pub fn stray_photos(&self, photos_here: Vec<String>) -> Result<Ts<StrayPhotos>, JsError> {
        Ok(self.session.stray_photos(&photos_here).into_ts()?)
    }

    /// Begins a backup with photos, written by the site at an address.
    #[wasm_bindgen(js_name = beginBackup)]
    #[must_use]
    pub fn begin_backup(&self, site: &str) -> BackupWriter {
        BackupWriter { archive: self.session.begin_backup(), records: self.session.write_backup(site) }
    }

    /// Earlier versions of a formula, last first.
    ///
    /// # Errors
    /// Never by what a person did.
    #[wasm_bindgen(js_name = versionsOf)]
    pub fn versions_of(&self, formula: &str) -> Result<Vec<Ts<VersionView>>, JsError> {
        let id = FormulaId::try_from(formula.to_owned()).map_err(|_| JsError::new("no such formula"))?;
        self.session.versions_of(id).iter().map(|version| Ok(version.into_ts()?)).collect()
    }

    /// What changed in a formula since an earlier version; nothing if there is no such version.
    ///
    /// # Errors
    /// Never by what a person did.
    #[wasm_bindgen(js_name = compareVersion)]
    pub fn compare_version(&mut self, formula: &str, version: &str) -> Result<Option<Ts<ComparisonView>>, JsError> {
        let id = FormulaId::try_from(formula.to_owned()).map_err(|_| JsError::new("no such formula"))?;
        Ok(self.session.compare_version(id, version).map(|view| view.into_ts()).transpose()?)
    }

    /// What the maker should know about the storage of this device, a sentence each.
    #[wasm_bindgen(js_name = storageRemarks)]
    #[must_use]
    pub fn storage_remarks(&self) -> Vec<String> {
        self.session.storage_remarks()
    }
}

/// A photo of a backup.
#[cfg(feature = "whole")]
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
#[cfg(feature = "whole")]
#[wasm_bindgen]
#[derive(Debug)]
pub struct BackupWriter {
    archive: ArchiveWriter,
    records: String,
}

#[cfg(feature = "whole")]
#[wasm_bindgen]
impl BackupWriter {
    /// Adds the records of this device.
    pub fn records(&mut self) -> Vec<u8> {
        self.archive.records(&std::mem::take(&mut self.records))
    }

    /// Adds a photo taken at a moment, in milliseconds since 1970.
    pub fn photo(&mut self, name: &str, taken_at: f64, bytes: &[u8]) -> Vec<u8> {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "what is no moment becomes 1970")]
        self.archive.photo(name, taken_at as u64, bytes)
    }

    /// Ends the file.
    #[must_use]
    pub fn finish(self) -> Vec<u8> {
        self.archive.finish()
    }
}

/// Works out one formula beside any session: its head, lines, jar, constituents and batch. Nothing is kept, and no page
/// is needed. Takes records as they are kept, so materials of the maker's own that the formula uses come along.
///
/// # Errors
/// If `options` is not what its type says. A record that cannot be read is an error in the update's `answer`.
#[cfg(feature = "whole")]
#[wasm_bindgen]
#[expect(clippy::needless_pass_by_value, reason = "what crosses the seam is handed over")]
pub fn evaluate(
    formula: &str,
    own_materials: Vec<String>,
    options: Ts<EvaluationOptions>,
) -> Result<Ts<Update>, JsError> {
    Ok(evaluate_record(formula, &own_materials, &options.to_rust()?).into_ts()?)
}

/// The version of this build.
#[wasm_bindgen]
#[must_use]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}
