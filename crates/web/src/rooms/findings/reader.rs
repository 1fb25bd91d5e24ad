//! What was found, for somebody who reads the formula and cannot change it.

use crate::rooms::findings::present::is_about;
use crate::rooms::findings::sentences;
use crate::session::Session;
use stillroom_core::Formula;
use stillroom_core::checks::{check, gather_not_checked};
use stillroom_core::evaluation::Evaluation;

/// A finding as a reader is told of it.
pub(crate) struct FoundForReader {
    /// `stop`, `caution` or `note`.
    pub(crate) severity: &'static str,
    /// What was found.
    pub(crate) text: String,
    /// What it means.
    pub(crate) meaning: &'static str,
    /// Whether the maker decided to live with it; why is theirs to tell.
    pub(crate) aside: bool,
}

impl Session {
    /// Everything found in a formula, most serious first, whether or not it was set aside.
    pub(crate) fn findings_for_reader(&self, formula: &Formula, evaluation: &Evaluation) -> Vec<FoundForReader> {
        let found = gather_not_checked(check(&self.contents_of(formula, evaluation)), formula);
        let told = found.iter().map(|finding| FoundForReader {
            severity: finding.severity.slug(),
            text: sentences::say(finding.code, &finding.values, &|value| self.write_value(formula, value)),
            meaning: sentences::meaning(finding.code),
            aside: formula.set_aside.iter().any(|each| is_about(each, finding)),
        });
        told.collect()
    }
}
