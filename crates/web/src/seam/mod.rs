//! The seam: the handful of functions the page calls. Types cross it as plain objects; what is not understood comes
//! back as data, and only a call that no page of ours makes can throw.

pub mod browser;
pub mod evaluate;
mod pieces;

use crate::lazy::{self, Piece};
use crate::messages::{self, Language};
use crate::rooms::command::Command;
use crate::rooms::costs::view::PricesView;
use crate::rooms::jar::view::TrailView;
use crate::rooms::materials::view::MaterialHit;
use crate::rooms::materials::view::{SourceView, TableView};
use crate::rooms::paste::view::{RecipeFileView, RecipeView};
use crate::rooms::share::view::{ComparisonView, LinkView, ReadingOptions, ReadingView};
use crate::rooms::share::view_backup::{BackupView, StrayPhotos, VersionView};
use crate::rooms::swap::reading::{Lacks, ReaderView};
use crate::rooms::update::Update;
use crate::seam::browser::{BrowserSurroundings, LocalStorage};
use crate::seam::evaluate::EvaluationOptions;
use crate::seam::pieces::{
    add_photo, add_records, begin_backup, choose_in_recipe, compare_version, count_findings, evaluate_beside, finish,
    forget_backup, formula_id, link_of, photo_of_backup, photo_was_lost, predict_ph, read_backup, read_beside,
    read_beside_without, read_colour, read_link, read_link_without, read_log, read_prices, read_recipe,
    read_recipe_file, read_table, rest, set_recipe_column, solve_by_chance, sources, storage_remarks, stray_photos,
    versions_of, write_backup, write_prices, write_table, write_up, write_up_with_substitutions,
};
use crate::session::Session;
use crate::session::keeping::{LoggedStore, MemoryStore, Written};
use js_sys::Uint8Array;
use serde::{Deserialize, Serialize};
use std::mem::ManuallyDrop;
use stillroom_catalogue::Filter;
use stillroom_core::number::DecimalMark;
use stillroom_core::{Class, PhaseKind};
use stillroom_exchange::archive::ArchiveWriter;
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

/// Says in which language the page is, by its tag; English where the texts are not written in it. To be said before a session
/// is opened.
#[wasm_bindgen]
pub fn speak(language: &str) {
    messages::speak(Language::from_tag(language).unwrap_or_default(), browser::plural_category);
}

/// Unpacks the names and compositions of materials. Opening a session does it if nobody did; done before, it is a slice of
/// its own of a page's first moments, in which a hand is heard.
#[wasm_bindgen(js_name = unpackMaterials)]
pub fn unpack_materials() {
    let _ = stillroom_catalogue::Catalogue::for_main_job();
}

/// Takes in the texts of a piece of the seam in the language of the page, as the page fetched them.
#[wasm_bindgen(js_name = takeTexts)]
pub fn take_texts(
    #[wasm_bindgen(unchecked_param_type = "'main' | 'share' | 'whole' | 'swap' | 'names' | 'words'")] piece: &str,
    texts: String,
) {
    if let Some(piece) = ["main", "share", "whole", "swap", "names", "words"].iter().position(|known| *known == piece) {
        messages::take_table(piece, texts);
    }
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

    /// Tells the session that the desk is there.
    ///
    /// # Errors
    /// Never, but what crosses the seam might fail to.
    #[wasm_bindgen(js_name = deskArrived)]
    pub fn desk_arrived(&mut self) -> Result<Ts<Update>, JsError> {
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

    /// Reads a recipe as people write them. Nothing is kept. `meaning` says what numbers without a unit are; empty where the
    /// recipe decides.
    ///
    /// # Errors
    /// Never by what a text holds.
    #[wasm_bindgen(js_name = readRecipe)]
    pub fn read_recipe(
        &mut self,
        text: &str,
        #[wasm_bindgen(unchecked_param_type = "'percent' | 'grams' | 'parts' | ''")] meaning: &str,
    ) -> Result<Ts<RecipeView>, JsError> {
        read_recipe(self, text, meaning)
    }

    /// Says what a column of that recipe's table holds.
    ///
    /// # Errors
    /// Never by what a person did.
    #[wasm_bindgen(js_name = setRecipeColumn)]
    pub fn set_recipe_column(&mut self, place: usize, holds: &str) -> Result<Ts<RecipeView>, JsError> {
        set_recipe_column(self, place, holds)
    }

    /// Reads the text of a file that holds a recipe.
    ///
    /// # Errors
    /// Never by what a file holds.
    #[wasm_bindgen(js_name = readRecipeFile)]
    pub fn read_recipe_file(&self, bytes: &[u8]) -> Result<Ts<RecipeFileView>, JsError> {
        read_recipe_file(self, bytes)
    }

    /// Says what a line of that recipe means: a material, `own` for one to be described, nothing to have it open again.
    ///
    /// # Errors
    /// Never by what a person did.
    #[wasm_bindgen(js_name = chooseInRecipe)]
    pub fn choose_in_recipe(&mut self, line: usize, material: &str) -> Result<Ts<RecipeView>, JsError> {
        choose_in_recipe(self, line, material)
    }

    /// The maker's own materials as a table for a spreadsheet.
    #[wasm_bindgen(js_name = writeTable)]
    #[must_use]
    pub fn write_table(&self) -> String {
        write_table(self)
    }

    /// Reads a table of prices and says what it would change, and line by line what is wrong with it. Nothing is taken in yet.
    ///
    /// # Errors
    /// Never by what a file holds.
    #[wasm_bindgen(js_name = readPrices)]
    pub fn read_prices(&mut self, bytes: &[u8]) -> Result<Ts<PricesView>, JsError> {
        read_prices(self, bytes)
    }

    /// Prices and stock of what the maker has as a table for a spreadsheet.
    #[wasm_bindgen(js_name = writePrices)]
    #[must_use]
    pub fn write_prices(&self) -> String {
        write_prices(self)
    }

    /// Reads the colour of an entry of the open journal from pixels of the product and of a white beside it: red, green,
    /// blue and opacity of each.
    ///
    /// # Errors
    /// Never by what a photo holds.
    #[wasm_bindgen(js_name = readColour)]
    pub fn read_colour(&mut self, entry: usize, sample: &[u8], white: &[u8]) -> Result<Ts<Update>, JsError> {
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

    /// Looks the open formula up and predicts its pH so many times, and says what it comes to; 0 where it comes to nothing.
    /// Shows nothing: for measuring.
    #[wasm_bindgen(js_name = predictPh)]
    #[must_use]
    pub fn predict_ph(&mut self, times: u32) -> f64 {
        predict_ph(self, times)
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
    pub fn link_of(&self, formula: &str, address: &str, with_notes: bool) -> Result<Ts<LinkView>, JsError> {
        link_of(self, formula_id(formula)?, address, with_notes)
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

    /// The same with a table of the substitutions that hold for each line.
    #[wasm_bindgen(js_name = writeUpWithSubstitutions)]
    #[must_use]
    pub fn write_up_with_substitutions(&mut self, formula: &str, form: &str) -> String {
        write_up_with_substitutions(self, formula, form)
    }

    /// A shared formula for a reader who lacks some of its lines. Nothing is kept.
    ///
    /// # Errors
    /// If `lacks` is not what its type says.
    #[expect(clippy::needless_pass_by_value, reason = "what crosses the seam is handed over")]
    #[wasm_bindgen(js_name = readLinkWithout)]
    pub fn read_link_without(
        &mut self,
        link: &str,
        batch: Option<String>,
        lacks: Ts<Lacks>,
    ) -> Result<Ts<ReaderView>, JsError> {
        read_link_without(self, link, batch.as_deref(), &lacks)
    }

    /// Looks for the amounts of so many materials of so many substances, drawn by chance, and says how far they are off;
    /// less than nothing where there are none. Shows nothing: for measuring.
    #[wasm_bindgen(js_name = solveByChance)]
    #[must_use]
    pub fn solve_by_chance(&mut self, materials: u32, substances: u32, chance: u32) -> f64 {
        solve_by_chance(materials, substances, chance)
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

    /// Earlier versions of a formula, last first, and then the other formulas it can be compared with.
    ///
    /// # Errors
    /// Never by what a person did.
    #[wasm_bindgen(js_name = versionsOf)]
    pub fn versions_of(&self, formula: &str) -> Result<Vec<Ts<VersionView>>, JsError> {
        versions_of(self, formula_id(formula)?)
    }

    /// What is different between a formula and an earlier version or another formula; nothing if there is no such thing.
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

/// The same for a reader who lacks some of its lines.
///
/// # Errors
/// If `options` or `lacks` is not what its type says.
#[wasm_bindgen(js_name = readSharedWithout)]
#[expect(clippy::needless_pass_by_value, reason = "what crosses the seam is handed over")]
pub fn read_shared_without(
    link: &str,
    options: Ts<ReadingOptions>,
    lacks: Ts<Lacks>,
) -> Result<Ts<ReaderView>, JsError> {
    read_beside_without(link, &options, &lacks)
}

/// Fetches a piece of the seam and calls `done` with whether it came.
///
/// # Errors
/// If there is no piece of that name.
#[wasm_bindgen(js_name = fetchPiece)]
pub fn fetch_piece(
    #[wasm_bindgen(unchecked_param_type = "\"desk\" | \"share\" | \"whole\" | \"swap\"")] piece: &str,
    done: js_sys::Function,
) -> Result<(), JsError> {
    lazy::fetch(Piece::from_name(piece).ok_or_else(|| JsError::new("no such piece"))?, done);
    Ok(())
}
