//! Conditions that law or advice sets beside any limit: a purity, a peroxide value, a pH, a warning on the label.
//!
//! One quiet note for all of them. Nothing to cure: the papers of the lot answer.

use crate::checks::contents::{Contents, Present};
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "limits.conditions";

/// Less than this, in percent, is carried in.
const TRACE: f64 = 0.001;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let mut finding = Finding::new(CODE, Severity::Note, "formula");
    let mut subjects = Vec::new();
    for limit in &contents.touched {
        // A row whose bound says nothing of this use has its conditions all the same only where it has no bound at all.
        if limit.leave_on.is_some() || limit.rinse_off.is_some() || limit.conditions.is_empty() {
            continue;
        }
        let inside = |each: &Present<'_>| {
            each.facts.inside.iter().any(|inside| limit.inside_oils.contains(&inside.name)).then_some(each.id)
        };
        let within = contents.present.iter().filter_map(inside);
        let ids: Vec<_> = contents.counting(limit).map(|(id, _)| id).chain(within).collect();
        let there: Vec<&Present<'_>> =
            ids.iter().filter_map(|id| contents.find(*id)).filter(|each| each.percent > TRACE).collect();
        if there.is_empty() {
            continue;
        }
        subjects.push(limit.subject);
        finding = finding.fed_by(there.iter().flat_map(|each| each.lines())).cite([limit.citation]).step(
            "work.condition-of",
            vec![
                ("subject", Value::Name(limit.subject)),
                ("conditions", Value::Name(limit.conditions)),
                ("jurisdiction", Value::Name(limit.jurisdiction)),
                ("entry", Value::Name(limit.entry)),
            ],
        );
    }
    if !subjects.is_empty() {
        found.push(finding.with("subjects", Value::Names(subjects)));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn conditions_without_a_bound_are_one_note() {
        let bench = Bench::new();
        assert!(codes(&bench.check(&bench.water_with(&[("Sodium Hydroxide", "0.1")]))).contains(&super::CODE));
        assert!(!codes(&bench.check(&bench.water_with(&[("Glycerin", "3")]))).contains(&super::CODE));
    }
}
