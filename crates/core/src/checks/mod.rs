//! What is wrong with a formula, by how much, why, and what would cure it.
//!
//! Every check reads [`Contents`]: the resolved composition with what is known of each substance. It answers findings:
//! typed numbers under names, with the arithmetic, the sources and computed cures. It words nothing. One file holds one
//! finding: its check, its cure and its tests; what it means is in the file's own words at the top.
//!
//! A check that lacks data says so in a finding of its own: silence never means that all is well.

pub mod acidity;
#[cfg(test)]
pub(crate) mod bench;
mod bounds;
pub mod chart;
pub mod contents;
pub mod cure;
pub mod demands;
pub mod emulsion;
pub mod facts;
pub mod finding;
pub mod limits;
pub mod preservation;
pub mod solubility;
pub mod stability;

use crate::composition::Makeups;
use crate::evaluation::{Bench, Evaluation, evaluate};
use crate::formula::Formula;
use crate::quantity::Percent;

pub use chart::{Axis, Chart, Mark};
pub use contents::{Conditions, Contents, PhBand, PhKnown, Present};
pub use cure::{Change, Cure};
pub use demands::{About, Demand};
pub use facts::{Facts, Knowledge};
pub use finding::{Finding, Severity, Step, Value, Values};

/// A check: reads the contents, adds what it finds.
pub type Check = fn(&Contents<'_>, &mut Vec<Finding>);

/// A finding that there is: its stable code and the check that raises it.
#[derive(Debug, Clone, Copy)]
pub struct Registered {
    /// Stable code.
    pub code: &'static str,
    /// The check.
    pub check: Check,
}

/// Every finding, in the order in which findings of the same severity stand.
pub const FAMILIES: [&[Registered]; 5] =
    [solubility::FINDINGS, preservation::FINDINGS, emulsion::FINDINGS, stability::FINDINGS, limits::FINDINGS];

/// Runs every check.
///
/// Findings are ordered by severity, then as in [`FAMILIES`], then by what they are about: a number that changes moves
/// none of them. Only a formula whose amounts make a whole can be checked: of another the answer is empty.
#[must_use]
pub fn check(contents: &Contents<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    if !can_check(contents.evaluation) {
        return found;
    }
    for registered in FAMILIES.iter().copied().flatten() {
        (registered.check)(contents, &mut found);
    }
    found.sort_by(|a, b| (a.severity, rank(a.code), &a.subject).cmp(&(b.severity, rank(b.code), &b.subject)));
    found
}

/// Code of the one row for all that was not checked.
pub const NOT_CHECKED: &str = "checks.not-checked";

/// Findings that say only that something could not be checked, with the key of what that is.
const SAY_NOT_CHECKED: [(&str, &str); 5] = [
    ("solubility.no-data", "unchecked.solubility"),
    ("preservation.no-data", "unchecked.preservative"),
    ("emulsion.hlb-no-data", "unchecked.balance"),
    ("emulsion.hlb-silent", "unchecked.balance"),
    ("limits.allergens-unknown", "unchecked.allergens"),
];

/// Gathers what was not checked into one quiet row at the end: each stands in its arithmetic. What the maker set aside by
/// itself stays by itself.
#[must_use]
pub fn gather_not_checked(findings: Vec<Finding>, formula: &Formula) -> Vec<Finding> {
    let aside = |each: &Finding| formula.set_aside.iter().any(|it| it.code == each.code && it.subject == each.subject);
    let what = |each: &Finding| SAY_NOT_CHECKED.iter().find(|(code, _)| *code == each.code && !aside(each));
    let (gathered, mut rest): (Vec<Finding>, Vec<Finding>) =
        findings.into_iter().partition(|each| what(each).is_some());
    let mut words: Vec<&'static str> = gathered.iter().filter_map(|each| what(each).map(|(_, word)| *word)).collect();
    words.dedup();
    if !gathered.is_empty() {
        let row = Finding::new(NOT_CHECKED, Severity::Note, "formula").with("what", Value::Words(words));
        rest.push(gathered.into_iter().fold(row, |row, each| {
            let Finding { code, values, working, citations, lines, .. } = each;
            let mut row = row.step(code, values).fed_by(lines).cite(citations);
            row.working.extend(working);
            row
        }));
    }
    rest
}

/// Takes out cures that would not cure: those whose effect reaches beyond their finding (another pH, something added or put
/// in another's place, less of what preserves) are tried on a copy, and one that leaves its finding standing or raises a stop
/// goes.
pub fn keep_cures_that_cure(findings: &mut [Finding], contents: &Contents<'_>, bench: &Bench, makeups: &mut Makeups) {
    let standing: Vec<(&'static str, String)> =
        findings.iter().map(|finding| (finding.code, finding.subject.clone())).collect();
    for finding in findings {
        let (code, severity) = (finding.code, finding.severity);
        let subject = &finding.subject;
        finding.cures.retain(|cure| {
            if !FAR_REACHING.contains(&cure.code) && !reaches_beyond(contents, cure) {
                return true;
            }
            let mut formula = contents.formula.clone();
            formula.make_changes(&cure.changes, |_| String::new());
            let evaluation = evaluate(&formula, bench, contents.source, makeups);
            let after =
                check(&Contents::new(&formula, &evaluation, contents.source, contents.knowledge, contents.conditions));
            // Another pH has to satisfy every finding at once, and what is added must not crystallise.
            let changes_much = FAR_REACHING.contains(&cure.code) && cure.code != "cure.raise";
            let bears = if changes_much { Severity::Note } else { Severity::Caution };
            after.iter().all(|each| {
                let stood =
                    |code: &str| standing.iter().any(|(known, subject)| *known == code && *subject == each.subject);
                // A gap is what is left of having nothing; what is aimed at anew is still to be reached.
                let is_new = !(stood(each.code)
                    || each.code == preservation::GAP && stood(preservation::MISSING)
                    || each.code == stability::OFF_TARGET);
                let still_stands = each.code == code && each.subject == *subject && each.severity <= severity;
                !(still_stands || is_new && each.severity < bears)
            })
        });
    }
}

/// Whether a cure changes a line that brings what others depend on: a preservative, a solvent, or what the pH is predicted
/// from.
fn reaches_beyond(contents: &Contents<'_>, cure: &Cure) -> bool {
    // Where no pH is stated any change of what dissolves may make a prediction out of a guess, or the other way round.
    let predicted = contents.ph().is_none_or(|ph| ph.known == PhKnown::Predicted) && !contents.is_dry();
    let depended_on = |each: &&Present<'_>| {
        predicted
            || each.is_oil()
            || each.facts.preservative.is_some()
            || contents.knowledge.cosolvent(each.id).is_some()
    };
    cure.changes.iter().any(|change| match change {
        Change::SetPercent { line, .. } | Change::RemoveLine { line } => {
            let mut depended_on = contents.present.iter().filter(depended_on);
            depended_on.any(|each| each.trail.iter().any(|brought| brought.line == *line))
        }
        // What is meant to stay solid brings no acid and no base any more.
        _ => predicted,
    })
}

/// Cures whose effect reaches beyond their finding.
const FAR_REACHING: [&str; 9] = [
    "cure.set-ph",
    "cure.set-ph-and-add",
    "cure.add",
    "cure.add-several",
    "cure.replace",
    "cure.put-in-place",
    "cure.blend-with",
    "cure.raise",
    "cure.reach-ph",
];

/// Whether the amounts make a whole: lines that still stand at nothing do not matter.
#[must_use]
pub fn can_check(evaluation: &Evaluation) -> bool {
    evaluation.balance.total == Percent::HUNDRED
}

/// Where a code stands among [`FAMILIES`].
fn rank(code: &str) -> usize {
    FAMILIES.iter().copied().flatten().position(|registered| registered.code == code).unwrap_or(usize::MAX)
}
