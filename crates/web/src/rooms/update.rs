//! What changed, for the page to draw.

use crate::contract::Answer;
use crate::contract::HistoryView;
use crate::contract::Notice;
use crate::contract::StatusView;
use crate::rooms::batches::view::BatchesView;
use crate::rooms::batches::view::JournalView;
use crate::rooms::batches::view::RunView;
use crate::rooms::bench::view::BatchView;
use crate::rooms::bench::view::SettingsView;
use crate::rooms::costs::view::CostsView;
use crate::rooms::extracts::view::ExtractView;
use crate::rooms::extracts::view::ExtractsView;
use crate::rooms::findings::view::FindingsView;
use crate::rooms::formula::view::FormulaView;
use crate::rooms::formula::view::LineView;
use crate::rooms::jar::view::ConstituentView;
use crate::rooms::jar::view::JarView;
use crate::rooms::label::view::LabelView;
use crate::rooms::materials::view::HeldView;
use crate::rooms::materials::view::MaterialHit;
use crate::rooms::materials::view::MaterialView;
use crate::rooms::ph::view::PhView;
use crate::rooms::post::view::PostView;
use crate::rooms::shelf::view::{DueToday, ShelfView};
use crate::rooms::swap::view::SwapView;
use serde::Serialize;
use std::rc::Rc;
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
    /// What the maker has.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub held: Option<Vec<HeldView>>,
    /// What is due today.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub due: Option<Vec<DueToday>>,
    /// The open material; `closed` when there is none.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::material")]
    pub material: Option<MaterialView>,
    /// The maker's extracts.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::extracts")]
    pub extracts: Option<ExtractsView>,
    /// The open extract.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::extract")]
    pub extract: Option<ExtractView>,
    /// The pH of the open formula.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::ph")]
    pub ph: Option<PhView>,
    /// The open formula made with what one has.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::swap")]
    pub swap: Option<SwapView>,
    /// The label of the open formula.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::label")]
    pub label: Option<LabelView>,
    /// The post about the open formula.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::post")]
    pub post: Option<PostView>,
    /// What the open formula costs.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beyond::costs")]
    pub costs: Option<CostsView>,
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

/// Turns what only a piece makes into what the page gets, in that piece: readers of large types need not be in the first
/// file.
mod beyond {
    use super::{
        BatchesView, CostsView, ExtractView, ExtractsView, FindingsView, JournalView, LabelView, MaterialView, PhView,
        PostView, RunView, SwapView,
    };
    use crate::lazy::lazy;
    use serde::Serializer;
    use serde_wasm_bindgen::preserve;
    use tsify::Tsify as _;
    use wasm_bindgen::JsValue;

    macro_rules! in_piece {
        ($($piece:ident $id:literal $name:ident $hand:ident $view:ident,)*) => { $(
            #[expect(clippy::ref_option, reason = "serde hands the field over as it is")]
            pub(super) fn $name<S: Serializer>(view: &Option<$view>, to: S) -> Result<S::Ok, S::Error> {
                view.as_ref().map_or(Ok(JsValue::UNDEFINED), |view| Ok($hand(view))).and_then(|page| preserve::serialize(&page, to))
            }
            lazy! {
                $piece $id fn $hand(view: &$view) -> JsValue {
                    view.into_ts().map_or(JsValue::UNDEFINED, |page| page.js_value().clone())
                } else { JsValue::UNDEFINED }
            }
        )* };
    }
    in_piece! {
        whole "10" findings hand_findings FindingsView,
        whole "11" extracts hand_extracts ExtractsView,
        whole "12" extract hand_extract ExtractView,
        whole "13" batches hand_batches BatchesView,
        whole "14" run hand_run RunView,
        whole "15" journal hand_journal JournalView,
        whole "18" material hand_material MaterialView,
        whole "a1" ph hand_ph PhView,
        whole "a3" label hand_label LabelView,
        whole "a4" post hand_post PostView,
        whole "a5" costs hand_costs CostsView,
        swap "b3" swap hand_swap SwapView,
    }
}
