//! What the page shows: texts and numbers formatted for the reader, and what was not understood.

use crate::view_extract::{ExtractView, ExtractsView};
use crate::view_findings::FindingsView;
use crate::view_run::{BatchesView, JournalView, RunView};
use serde::Serialize;
use std::rc::Rc;
use stillroom_core::balance::LineShare;
use stillroom_core::composition::Entry;
use stillroom_core::scaling::BatchWay;
use stillroom_core::weigh_sheet::WeighedLine;
use stillroom_core::{Class, ConstituentId, Layer, Line, PhaseKind, Purpose, WrittenIn};
use tsify::Tsify;

/// The parts of the view that changed. A part that is absent stands as it was.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct Update {
    /// What became of the command.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub answer: Option<Answer>,
    /// What is kept where.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub status: Option<StatusView>,
    /// What can be undone.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub history: Option<HistoryView>,
    /// Settings of this device.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub settings: Option<SettingsView>,
    /// The shelf.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shelf: Option<ShelfView>,
    /// Head, phases and problems of the open formula.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub formula: Option<FormulaView>,
    /// Lines of the open formula that changed; [`PhaseView::lines`] says where each stands.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[tsify(type = "LineView[]", optional)]
    pub lines: Vec<Rc<LineView>>,
    /// Layers of the jar.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub jar: Option<JarView>,
    /// Constituents that changed; [`Update::constituent_order`] says which there are.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[tsify(type = "ConstituentView[]", optional)]
    pub constituents: Vec<Rc<ConstituentView>>,
    /// Every constituent by key, most first, if that is another order than before.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[tsify(type = "string[]")]
    pub constituent_order: Option<Vec<Rc<str>>>,
    /// What the checks found.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::findings")]
    pub findings: Option<FindingsView>,
    /// The batch and how it was come by.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub batch: Option<BatchView>,
    /// The maker's own materials.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub own_materials: Option<Vec<MaterialHit>>,
    /// The open material; `closed` when there is none.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::material")]
    pub material: Option<MaterialView>,
    /// The maker's extracts.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::extracts")]
    pub extracts: Option<ExtractsView>,
    /// The open extract.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::extract")]
    pub extract: Option<ExtractView>,
    /// The maker's batches.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::batches")]
    pub batches: Option<BatchesView>,
    /// The open batch.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::run")]
    pub run: Option<RunView>,
    /// Its journal.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::journal")]
    pub journal: Option<JournalView>,
    /// What the maker should hear once.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[tsify(optional)]
    pub notices: Vec<Notice>,
}

/// What became of a command.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct Answer {
    /// The field the command came from.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub field: Option<String>,
    /// Why its text was not understood; absent if it was. The last good value stays.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub error: Option<String>,
    /// Stable code of the error.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[tsify(type = "string")]
    pub code: Option<&'static str>,
    /// What the command made, for the page to go to: a formula, line, phase or material.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub made: Option<String>,
}

/// Something the maker should hear once.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct Notice {
    /// Stable code.
    #[tsify(type = "string")]
    pub code: &'static str,
    /// The sentence.
    pub text: String,
    /// The change that [`UndoAct`](crate::command::Command::UndoAct) takes back from here, while nothing was done since.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub undo: Option<u32>,
}

/// What is kept where.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct StatusView {
    /// How it stands.
    pub state: KeepState,
    /// In a sentence.
    pub text: String,
    /// Records that were changed elsewhere too.
    pub conflicts: Vec<ConflictView>,
    /// Records that could not be read, and why.
    pub unreadable: Vec<String>,
}

/// How keeping stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum KeepState {
    /// All is kept.
    Kept,
    /// Something is still to be kept.
    Keeping,
    /// The storage is full.
    Full,
    /// The browser allows no storage.
    Blocked,
    /// Another page changed the same record.
    Conflict,
}

/// One record changed in two places.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ConflictView {
    /// Key of the record.
    pub key: String,
    /// In a sentence.
    pub text: String,
}

/// What can be undone.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct HistoryView {
    /// Label of undo, if there is something to undo.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub undo: Option<String>,
    /// Number of the change that undo takes back.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub undoes: Option<u32>,
    /// Label of redo, if there is something to redo.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub redo: Option<String>,
}

/// Settings of this device.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct SettingsView {
    /// `point`, `comma` or `browser`.
    pub decimal_mark: String,
    /// Unit of mass, by its symbol.
    pub mass_unit: String,
    /// Unit of volume, by its symbol.
    pub volume_unit: String,
    /// Step of the main scale.
    pub main_step: String,
    /// Whether there is a fine scale.
    pub fine_scale: bool,
    /// Step of the fine scale.
    pub fine_step: String,
    /// Mass under which the fine scale is used.
    pub fine_below: String,
    /// Relative error a line may have.
    pub tolerance: String,
}

/// The shelf.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ShelfView {
    /// The formulas that are shown, last changed first.
    #[tsify(type = "ShelfCard[]")]
    pub cards: Vec<Rc<ShelfCard>>,
    /// How many more there are.
    pub more: usize,
    /// The one that is open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub open: Option<String>,
}

/// One formula on the shelf.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ShelfCard {
    /// Names it.
    pub id: String,
    /// What the maker calls it.
    pub name: String,
    /// Lines, use and state in a few words.
    pub about: String,
    /// Whether its amounts make a formula.
    pub sound: bool,
    /// Layers of its jar.
    pub layers: Vec<LayerView>,
}

/// Head, phases and problems of the open formula.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct FormulaView {
    /// Names it; absent when no formula is open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub id: Option<String>,
    /// What the maker calls it.
    pub name: String,
    /// How the product is used.
    #[tsify(type = "\"leave-on\" | \"rinse-off\"")]
    pub purpose: Purpose,
    /// Target pH as text.
    pub target_ph: String,
    /// The maker's notes.
    pub notes: String,
    /// Method, one step a line.
    pub steps: String,
    /// Whether the numbers are percent or grams.
    #[tsify(type = "\"percent\" | \"grams\"")]
    pub written_in: WrittenIn,
    /// Unit behind the typed numbers.
    pub amount_unit: String,
    /// Unit behind the masses.
    pub mass_unit: String,
    /// Sum of the lines, in percent.
    pub total: String,
    /// Sum of the typed masses, in a formula written in grams.
    pub total_typed: String,
    /// Sum of the weigh sheet.
    pub total_mass: String,
    /// Whether the amounts make a formula.
    pub sound: bool,
    /// The phases.
    pub phases: Vec<PhaseView>,
    /// What keeps the amounts from being a formula.
    pub problems: Vec<ProblemView>,
}

/// One phase.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct PhaseView {
    /// Names it.
    pub id: u32,
    /// What the maker calls it.
    pub name: String,
    /// What is done with it.
    #[tsify(type = "PhaseKind")]
    pub kind: PhaseKind,
    /// What the temperature means here: `to` or `under`.
    pub temperature_word: String,
    /// Temperature as text.
    pub temperature: String,
    /// Its share of the formula.
    pub percent: String,
    /// Its mass on the weigh sheet.
    pub mass: String,
    /// Its lines, in order.
    pub lines: Vec<u32>,
}

/// One line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LineView {
    /// Names it.
    pub id: u32,
    /// The material.
    pub material: String,
    /// Its name.
    pub name: String,
    /// What a composite brings, in a few words.
    pub brings: String,
    /// What the field holds.
    pub amount: String,
    /// Whether it is the q.s. line.
    pub quantum_satis: bool,
    /// Its percent, aligned.
    pub percent: String,
    /// Mass to weigh, aligned.
    pub mass: String,
    /// Name of the scale, where it is not the main one.
    pub scale: String,
    /// How far rounding moves the mass.
    pub error: String,
    /// Whether that is more than the maker accepts.
    pub error_large: bool,
    /// The maker's note.
    pub note: String,
    /// What is wrong with the line.
    pub problem: String,
}

/// A problem and its cures.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ProblemView {
    /// Stable code.
    #[tsify(type = "string")]
    pub code: &'static str,
    /// In a sentence.
    pub text: String,
    /// What would remove it, computed.
    pub cures: Vec<String>,
}

/// Layers of the jar.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct JarView {
    /// The layers, top first.
    pub layers: Vec<LayerView>,
    /// The jar in a sentence, for those who do not see it.
    pub description: String,
    /// Lines that could not be seen through.
    pub unresolved: Vec<String>,
    /// How dense the product is, as far as known.
    pub density: String,
}

/// One layer.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LayerView {
    /// Which.
    #[tsify(type = "Layer")]
    pub layer: Layer,
    /// What it is called.
    pub label: String,
    /// Its percent.
    pub percent: String,
    /// Where it begins from the top, from 0 to 1 of the jar.
    pub top: f64,
    /// How high it is, from 0 to 1 of the jar.
    pub height: f64,
}

/// One constituent.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ConstituentView {
    /// Names it.
    #[tsify(type = "string")]
    pub key: Rc<str>,
    /// Its INCI name.
    pub inci: String,
    /// The layer it is drawn in.
    #[tsify(type = "Layer")]
    pub layer: Layer,
    /// Its percent, aligned.
    pub percent: String,
    /// Which line brings how much. Only `evaluate` hands it out: a page asks `trailOf` for the few that are open.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[tsify(optional)]
    pub trail: Vec<TrailView>,
}

/// What one line brings.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct TrailView {
    /// The line; [`LineView::name`] says what is weighed there.
    pub line: u32,
    /// What it brings, aligned.
    pub percent: String,
}

/// The batch and how it was come by.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct BatchView {
    /// Which way counts.
    #[tsify(type = "\"mass\" | \"containers\" | \"stock\"")]
    pub way: BatchWay,
    /// Batch mass asked for.
    pub mass: String,
    /// How many containers.
    pub count: String,
    /// What each holds.
    pub volume: String,
    /// Share left empty.
    pub headspace: String,
    /// Share lost.
    pub loss: String,
    /// Measured density; empty if it is estimated.
    pub density: String,
    /// The estimate, for the empty field.
    pub density_estimate: String,
    /// What is left of materials.
    pub stock: Vec<StockView>,
    /// The batch the sheet makes.
    pub batch: String,
    /// How it was come by, a line each.
    pub arithmetic: Vec<String>,
    /// What the maker should know about it.
    pub remarks: Vec<String>,
    /// Why there is no batch or no sheet.
    pub problem: String,
    /// Whether there is a sheet.
    pub has_sheet: bool,
    /// Smallest batch with every line within the tolerance, in a sentence.
    pub smallest: String,
    /// Lines whose rounding error is larger than the maker accepts, in a sentence.
    pub warning: String,
}

/// What is left of a material.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct StockView {
    /// The material.
    pub material: String,
    /// Its name.
    pub name: String,
    /// How much is there.
    pub available: String,
    /// What the batch leaves of it, or why it does not count.
    pub left: String,
    /// Whether it sets the batch.
    pub limiting: bool,
}

/// One answer of a search.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct MaterialHit {
    /// The material.
    pub id: String,
    /// Its name.
    pub name: String,
    /// INCI, class and phase in a few words.
    pub about: String,
    /// Whether it is the maker's own, a formula, or of the catalogue.
    pub origin: Origin,
}

/// Where a material comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum Origin {
    /// The catalogue.
    Catalogue,
    /// The maker's own.
    Own,
    /// Another formula on the shelf.
    Formula,
}

/// The open material.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct MaterialView {
    /// The material; absent when none is open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub id: Option<String>,
    /// Whether the maker can change it.
    pub own: bool,
    /// Whether it is made of others.
    pub composite: bool,
    /// Its name.
    pub name: String,
    /// Its INCI name, where it is simple.
    pub inci: String,
    /// What it is.
    #[tsify(type = "Class")]
    #[serde(skip_serializing_if = "Option::is_none")]
    pub class: Option<Class>,
    /// What that is called.
    pub class_label: String,
    /// Phase it usually goes into.
    #[tsify(type = "PhaseKind")]
    #[serde(skip_serializing_if = "Option::is_none")]
    pub phase_kind: Option<PhaseKind>,
    /// What that is called.
    pub phase_label: String,
    /// Its density.
    pub density: String,
    /// The maker's note.
    pub note: String,
    /// Its parts.
    pub parts: Vec<PartView>,
    /// Sum of the parts.
    pub parts_total: String,
    /// What is wrong with it.
    pub problems: Vec<String>,
    /// What it brings, most first.
    pub constituents: Vec<BringsView>,
    /// Known values, each with its source.
    pub values: Vec<ValueView>,
    /// Formulas that use it.
    pub used_in: Vec<String>,
    /// What the maker has of it.
    pub holding: HoldingView,
}

/// What the maker has of a material, as its fields hold it.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct HoldingView {
    /// Price of a pack.
    pub price: String,
    /// Its currency.
    pub currency: String,
    /// What a pack holds.
    pub pack: String,
    /// How much is there.
    pub stock: String,
    /// Lot number.
    pub lot: String,
    /// Last day it should be used, as `2027-05-31`.
    pub expiry: String,
    /// Density as measured.
    pub density: String,
    /// Usual percent by experience.
    pub usual: String,
    /// Notes.
    pub note: String,
    /// Price per 100 of the maker's unit and whether the material is past its date, in sentences.
    pub remarks: Vec<String>,
}

/// A table of materials that was read.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct TableView {
    /// What was read, in a sentence.
    pub summary: String,
    /// What is wrong, line by line, in sentences.
    pub problems: Vec<String>,
    /// How many materials can be taken in; none if anything is wrong.
    pub ready: usize,
}

/// A row of the bibliography.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct SourceView {
    /// Citation.
    pub citation: String,
    /// What it is, and to which day it was valid.
    pub about: String,
}

/// One part of a composite.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct PartView {
    /// The material.
    pub material: String,
    /// Its name.
    pub name: String,
    /// What the field holds.
    pub amount: String,
    /// Its percent.
    pub percent: String,
    /// Whether it is the q.s. part.
    pub quantum_satis: bool,
}

/// One constituent of a material.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct BringsView {
    /// INCI name.
    pub inci: String,
    /// Percent of the material.
    pub percent: String,
}

/// One known value of a material.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ValueView {
    /// What it is.
    pub label: String,
    /// The value with its unit and conditions.
    pub value: String,
    /// Where it comes from.
    pub source: String,
    /// How sure: published, supplier-typical, memory.
    pub basis: String,
}

/// Every part of the view as it was last handed out, so that only what changed is handed out again.
#[derive(Debug, Default)]
pub struct LastView {
    pub(crate) status: Option<StatusView>,
    pub(crate) history: Option<HistoryView>,
    pub(crate) settings: Option<SettingsView>,
    pub(crate) shelf: Option<ShelfView>,
    pub(crate) formula: Option<FormulaView>,
    pub(crate) lines: Vec<Rc<LineView>>,
    /// What each of `lines` was written from; empty where they have to be written anew.
    pub(crate) line_inputs: Vec<LineInput>,
    /// Decimals of percents and masses that `lines` were written with.
    pub(crate) lines_written_with: (u32, u32),
    pub(crate) jar: Option<JarView>,
    pub(crate) constituents: Vec<Rc<ConstituentView>>,
    /// What each of `constituents` was written from; empty where they have to be written anew.
    pub(crate) entries: Vec<Entry>,
    /// Decimals that `constituents` were written with.
    pub(crate) constituent_decimals: u32,
    pub(crate) batch: Option<BatchView>,
    pub(crate) own_materials: Option<Vec<MaterialHit>>,
    /// Whether an own material changed since.
    pub(crate) own_materials_stale: bool,
    pub(crate) material: Option<MaterialView>,
    pub(crate) findings: Option<FindingsView>,
    pub(crate) extracts: Option<ExtractsView>,
    pub(crate) extract: Option<ExtractView>,
    pub(crate) batches: Option<BatchesView>,
    pub(crate) run: Option<RunView>,
    pub(crate) journal: Option<JournalView>,
}

/// What a line is written from, names and settings apart.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct LineInput {
    pub(crate) line: Line,
    pub(crate) share: LineShare,
    pub(crate) weighed: Option<WeighedLine>,
}

impl LastView {
    /// Where a constituent stood, looking first where it stands now.
    pub(crate) fn position_of(&self, at: usize, constituent: ConstituentId) -> Option<usize> {
        let is_it = |entry: &Entry| entry.constituent == constituent;
        if self.entries.get(at).is_some_and(is_it) { Some(at) } else { self.entries.iter().position(is_it) }
    }

    /// Where what a line is written from stood, looking first where it stands now.
    pub(crate) fn position_of_line(&self, at: usize, input: &LineInput) -> Option<usize> {
        let before = &self.line_inputs;
        if before.get(at) == Some(input) { Some(at) } else { before.iter().position(|each| each == input) }
    }

    /// Has lines and constituents written anew: names, units or marks may have changed.
    pub(crate) fn forget_inputs(&mut self) {
        self.entries.clear();
        self.line_inputs.clear();
    }
}

/// Remembers a part; returns it if it differs from what was handed out last.
pub(crate) fn if_changed<T: PartialEq + Clone>(last: &mut Option<T>, now: T) -> Option<T> {
    if last.as_ref() == Some(&now) {
        return None;
    }
    *last = Some(now.clone());
    Some(now)
}

/// Turns what only a piece makes into what the page gets, in that piece: readers of large types need not be in the first
/// file.
mod beyond {
    use super::{BatchesView, ExtractView, ExtractsView, FindingsView, JournalView, MaterialView, RunView};
    use crate::lazy::lazy;
    use serde::Serializer;
    use serde_wasm_bindgen::preserve;
    use tsify::Tsify as _;
    use wasm_bindgen::JsValue;

    macro_rules! in_piece {
        ($($id:literal $name:ident $hand:ident $view:ident,)*) => { $(
            #[expect(clippy::ref_option, reason = "serde hands the field over as it is")]
            pub(super) fn $name<S: Serializer>(view: &Option<$view>, to: S) -> Result<S::Ok, S::Error> {
                view.as_ref().map_or(Ok(JsValue::UNDEFINED), |view| Ok($hand(view))).and_then(|page| preserve::serialize(&page, to))
            }
            lazy! {
                whole $id fn $hand(view: &$view) -> JsValue {
                    view.into_ts().map_or(JsValue::UNDEFINED, |page| page.js_value().clone())
                } else { JsValue::UNDEFINED }
            }
        )* };
    }
    in_piece! {
        "10" findings hand_findings FindingsView,
        "11" extracts hand_extracts ExtractsView,
        "12" extract hand_extract ExtractView,
        "13" batches hand_batches BatchesView,
        "14" run hand_run RunView,
        "15" journal hand_journal JournalView,
        "18" material hand_material MaterialView,
    }
}
