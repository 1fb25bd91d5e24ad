//! Earlier versions of a formula: kept when the maker comes back to it, compared, and put beside it again.

use crate::contract::Answer;
use crate::messages::share as says;
use crate::rooms::formula::edit::{cut_name, made};
use crate::rooms::share::compare::{Version, compare};
use crate::rooms::share::sentences;
use crate::rooms::share::view::ComparisonView;
use crate::rooms::share::view_backup::VersionView;
use crate::session::Session;
use crate::session::history::Slot;
use std::rc::Rc;
use stillroom_core::FormulaId;
use stillroom_core::evaluation::evaluate;
use stillroom_exchange::label::for_another_batch;
use stillroom_exchange::record::{self, FormulaRecord};
use stillroom_exchange::versions::VersionsRecord;

/// What the key of a formula's versions begins with.
pub(crate) const VERSIONS_KEY: &str = "stillroom.versions.";
/// Typing on within this time is the same version.
const SAME_VERSION_MS: u64 = 10 * 60 * 1000;

impl Session {
    /// Keeps what is about to be replaced as a version, if the maker left it standing for a while. That it could not be
    /// kept is no reason not to keep what replaces it.
    pub(crate) fn keep_version(&self, id: FormulaId, replaced: &str) {
        let Ok(version) = record::read::<FormulaRecord>(replaced) else { return };
        if self.around.now().saturating_sub(version.changed_at) < SAME_VERSION_MS {
            return;
        }
        self.add_version(id, version);
    }

    /// Keeps what a batch is made from as a version, however soon it is replaced.
    pub(crate) fn keep_version_made(&self, made: &FormulaRecord) {
        self.add_version(made.id, FormulaRecord { revision: self.revision_of(made.id), ..made.clone() });
    }

    fn add_version(&self, id: FormulaId, version: FormulaRecord) {
        let mut versions = self.versions(id);
        if versions.versions.last().is_some_and(|last| last.formula == version.formula) {
            return;
        }
        versions.revision += 1;
        versions.add(version);
        self.store_beside(&format!("{VERSIONS_KEY}{id}"), &record::write(&versions));
    }

    fn versions(&self, id: FormulaId) -> VersionsRecord {
        let text = self.stored_text(&format!("{VERSIONS_KEY}{id}"));
        text.and_then(|text| record::read(&text).ok()).unwrap_or_default()
    }

    /// Earlier versions of a formula, last first, with the lots that were made from each.
    #[must_use]
    pub fn versions_of(&self, id: FormulaId) -> Vec<VersionView> {
        let view = |version: &FormulaRecord| {
            let batches = self.batches.values().map(|record| &record.batch);
            let made = batches.filter(|batch| batch.of == id && batch.version == version.revision);
            let lots = made.map(|batch| batch.lot.as_str()).collect::<Vec<_>>().join(", ");
            let text = says::version(
                version.formula.lines().count(),
                &version.revision.to_string(),
                &sentences::day_and_time(version.changed_at, self.around.minutes_ahead()),
                &version.formula.name,
            );
            VersionView {
                version: version.changed_at.to_string(),
                text: if lots.is_empty() { text } else { says::version_made(&text, &lots) },
                is_other: false,
            }
        };
        self.versions(id).versions.iter().rev().map(view).collect()
    }

    /// The other formulas on the shelf, to compare one with, by name.
    #[must_use]
    pub fn others_than(&self, id: FormulaId) -> Vec<VersionView> {
        let others = self.shelf.iter().filter(|(other, _)| **other != id);
        let mut views: Vec<VersionView> = others
            .map(|(other, record)| VersionView {
                version: other.to_string(),
                text: record.formula.name.clone(),
                is_other: true,
            })
            .collect();
        views.sort_by(|one, other| one.text.cmp(&other.text));
        views
    }

    fn version(&self, id: FormulaId, version: &str) -> Option<FormulaRecord> {
        self.versions(id).versions.into_iter().find(|each| each.changed_at.to_string() == version)
    }

    /// What is different between a formula and an earlier version of it, or another formula on the shelf, with the materials
    /// as they are now. A version is named by when it was made, a formula by its identifier.
    pub fn compare_version(&mut self, id: FormulaId, other: &str) -> Option<ComparisonView> {
        let before = match self.version(id, other) {
            Some(version) => version.formula,
            None => self.shelf.get(&FormulaId::try_from(other.to_owned()).ok()?)?.formula.clone(),
        };
        let after = self.shelf.get(&id).map(Rc::clone)?;
        let was = evaluate(&before, &self.bench, &self.materials, &mut self.makeups);
        let is = evaluate(&after.formula, &self.bench, &self.materials, &mut self.makeups);
        let before = Version { formula: &before, evaluation: &was, materials: &self.materials };
        let after = Version { formula: &after.formula, evaluation: &is, materials: &self.materials };
        Some(compare(&before, &after, self.settings.temperature_unit, self.mark()))
    }

    /// Puts an earlier version on the shelf as a formula of its own.
    pub(crate) fn restore_version(&mut self, id: FormulaId, version: &str) -> Answer {
        let Some(mut record) = self.version(id, version) else { return Answer::default() };
        let when = sentences::day_and_time(record.changed_at, self.around.minutes_ahead());
        record.id = self.fresh_formula_id();
        record.revision = 0;
        record.changed_at = self.around.now();
        record.formula.label = for_another_batch(&record.formula.label);
        record.formula.name = cut_name(&says::name_of_version(&record.formula.name, &when));
        let id = record.id;
        let after = vec![Slot::Formula(id, Some(Rc::new(record)))];
        self.commit("formula.version", None, Some(id), vec![Slot::Formula(id, None)], after);
        made(&id)
    }
}
