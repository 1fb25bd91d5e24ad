//! Earlier versions of a formula: kept when the maker comes back to it, compared, and put beside it again.

use crate::compare::{Version, compare};
use crate::edit_formula::{cut_name, made};
use crate::history::Slot;
use crate::sentences_shared as sentences;
use crate::session::Session;
use crate::view::Answer;
use crate::view_backup::VersionView;
use crate::view_shared::ComparisonView;
use std::rc::Rc;
use stillroom_core::FormulaId;
use stillroom_core::evaluation::evaluate;
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

    /// Earlier versions of a formula, last first.
    #[must_use]
    pub fn versions_of(&self, id: FormulaId) -> Vec<VersionView> {
        let view = |version: &FormulaRecord| VersionView {
            version: version.changed_at.to_string(),
            text: sentences::version(
                &sentences::day_and_time(version.changed_at, self.around.minutes_ahead()),
                &version.formula.name,
                version.formula.lines().count(),
            ),
        };
        self.versions(id).versions.iter().rev().map(view).collect()
    }

    fn version(&self, id: FormulaId, version: &str) -> Option<FormulaRecord> {
        self.versions(id).versions.into_iter().find(|each| each.changed_at.to_string() == version)
    }

    /// What changed in a formula since an earlier version, with the materials as they are now.
    pub fn compare_version(&mut self, id: FormulaId, version: &str) -> Option<ComparisonView> {
        let before = self.version(id, version)?.formula;
        let after = self.shelf.get(&id).map(Rc::clone)?;
        let was = evaluate(&before, &self.bench, &self.materials, &mut self.makeups);
        let is = evaluate(&after.formula, &self.bench, &self.materials, &mut self.makeups);
        let before = Version { formula: &before, evaluation: &was, materials: &self.materials };
        let after = Version { formula: &after.formula, evaluation: &is, materials: &self.materials };
        Some(compare(&before, &after, self.mark()))
    }

    /// Puts an earlier version on the shelf as a formula of its own.
    pub(crate) fn restore_version(&mut self, id: FormulaId, version: &str) -> Answer {
        let Some(mut record) = self.version(id, version) else { return Answer::default() };
        let when = sentences::day_and_time(record.changed_at, self.around.minutes_ahead());
        record.id = self.fresh_formula_id();
        record.revision = 0;
        record.changed_at = self.around.now();
        record.formula.name = cut_name(&sentences::name_of_version(&record.formula.name, &when));
        let id = record.id;
        let after = vec![Slot::Formula(id, Some(Rc::new(record)))];
        self.commit("formula.version", None, Some(id), vec![Slot::Formula(id, None)], after);
        made(&id)
    }
}
