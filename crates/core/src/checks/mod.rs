//! What is wrong with a formula, by how much, why, and what would cure it.
//!
//! Every check reads [`Contents`]: the resolved composition with what is known of each substance. It answers findings:
//! typed numbers under names, with the arithmetic, the sources and computed cures. It words nothing. One file holds one
//! finding: its check, its cure and its tests; what it means is in the file's own words at the top.
//!
//! A check that lacks data says so in a finding of its own: silence never means that all is well.

#[cfg(test)]
pub(crate) mod bench;
pub mod chart;
pub mod contents;
pub mod cure;
pub mod emulsion;
pub mod facts;
pub mod finding;
pub mod limits;
pub mod preservation;
pub mod solubility;

use crate::evaluation::Evaluation;
use crate::quantity::Percent;

pub use chart::{Axis, Chart, Mark};
pub use contents::{Conditions, Contents, Present};
pub use cure::{Change, Cure};
pub use facts::{Facts, Knowledge};
pub use finding::{Finding, Severity, Step, Value, Values};

use crate::composition::Makeups;
use crate::evaluation::evaluate;

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
pub const FAMILIES: [&[Registered]; 4] =
    [solubility::FINDINGS, preservation::FINDINGS, emulsion::FINDINGS, limits::FINDINGS];

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

/// Whether the amounts make a whole: lines that still stand at nothing do not matter.
#[must_use]
pub fn can_check(evaluation: &Evaluation) -> bool {
    evaluation.balance.total == Percent::HUNDRED
}

/// The cures of a finding that hold: made on the formula, each removes the finding and raises no stop that is not there now.
///
/// A check computes its cures from what it knows itself; that less water no longer dissolves something else only another check
/// knows. Each cure costs a whole evaluation and check: for the finding that is looked at, not for the list.
#[must_use]
pub fn proven_cures(contents: &Contents<'_>, finding: &Finding, now: &[Finding]) -> Vec<Cure> {
    let same = |one: &Finding, other: &Finding| one.code == other.code && one.subject == other.subject;
    let holds = |cure: &&Cure| {
        let mut formula = contents.formula.clone();
        formula.make_changes(&cure.changes, |_| String::new());
        let evaluation =
            evaluate(&formula, &crate::evaluation::Bench::default(), contents.source, &mut Makeups::default());
        let cured = Contents::new(&formula, &evaluation, contents.source, contents.knowledge, contents.conditions);
        let after = check(&cured);
        let stops = after.iter().filter(|each| each.severity == Severity::Stop);
        can_check(&evaluation)
            && !after.iter().any(|each| same(each, finding))
            && stops.into_iter().all(|stop| now.iter().any(|each| same(each, stop)))
    };
    finding.cures.iter().filter(holds).cloned().collect()
}

/// Where a code stands among [`FAMILIES`].
fn rank(code: &str) -> usize {
    FAMILIES.iter().copied().flatten().position(|registered| registered.code == code).unwrap_or(usize::MAX)
}
