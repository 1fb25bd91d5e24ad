//! What the page sees of the jar.

use serde::Serialize;
use std::rc::Rc;
use stillroom_core::ConstituentId;
use stillroom_core::Layer;
use stillroom_core::composition::Entry;
use stillroom_core::evaluation::Evaluation;
use tsify::Tsify;

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

/// The constituents as they were handed out last.
#[derive(Debug, Default)]
pub(crate) struct LastConstituents {
    pub(crate) views: Vec<Rc<ConstituentView>>,
    /// What they were written from; `None` where they have to be written anew.
    pub(crate) of: Option<Rc<Evaluation>>,
    /// Decimals they were written with, and `Session::surroundings_changed` then: names or marks may have changed since.
    pub(crate) written_with: (u32, u64),
}

impl LastConstituents {
    /// What each view was written from.
    pub(crate) fn entries(&self) -> &[Entry] {
        self.of.as_ref().map_or(&[], |evaluation| &evaluation.composition.entries)
    }

    /// Where a constituent stood, looking first where it stands now.
    pub(crate) fn position_of(&self, at: usize, constituent: ConstituentId) -> Option<usize> {
        let entries = self.entries();
        let is_it = |entry: &Entry| entry.constituent == constituent;
        if entries.get(at).is_some_and(is_it) { Some(at) } else { entries.iter().position(is_it) }
    }
}
