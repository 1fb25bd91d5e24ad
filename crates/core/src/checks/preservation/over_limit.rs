//! More of a preservative than the law allows for this use, over all lines and salts, expressed as the law expresses it.
//!
//! A limit of zero means that it is not allowed in this use. A substance that the law also allows for another purpose, up
//! to a higher limit, is only noted: as a preservative it would be too much, and beyond the other limit is another finding.

use super::replace;
use crate::checks::contents::{Contents, Present};
use crate::checks::cure::{Cure, lower};
use crate::checks::facts::{Authority, Limit};
use crate::checks::finding::{Finding, Severity, Value, subject_of};

pub(super) const CODE: &str = "preservation.over-limit";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    for limit in contents.touched.iter().copied().filter(|limit| limit.preservative) {
        let Some(most) = contents.bound_of(limit) else { continue };
        let now = sum(contents, limit);
        if now <= most * resolution(limit) {
            continue;
        }
        let otherwise = allowed_otherwise(contents, limit, most);
        let severity = if otherwise.is_some() { Severity::Note } else { Severity::Stop };
        let subject = match limit.members.as_slice() {
            [(only, _)] => subject_of(*only),
            _ => limit.subject.to_owned(),
        };
        let lines = limit.members.iter().filter_map(|(id, _)| contents.find(*id)).flat_map(Present::lines);
        let mut finding = Finding::new(CODE, severity, subject)
            .with("subject", Value::Name(limit.subject))
            .with("present", Value::Percent(now))
            .with("limit", Value::Percent(most))
            .with("jurisdiction", Value::Name(limit.jurisdiction))
            .with("entry", Value::Name(limit.entry))
            .with("as_of", Value::Name(limit.as_of))
            .with("use", Value::Word(contents.by_purpose("use.leave-on", "use.rinse-off")))
            .fed_by(lines)
            .cured_by(instead(contents, limit, most))
            .cured_by(lower(contents, &contents.counting(limit).collect::<Vec<_>>(), now, most))
            .cite([limit.citation]);
        if let Some(bound) = otherwise {
            finding = finding.with("otherwise", Value::Percent(bound));
        }
        for (id, factor) in &limit.members {
            if let Some(present) = contents.find(*id) {
                finding = finding.step(
                    "work.as-expressed",
                    vec![
                        ("substance", Value::Substance(*id)),
                        ("present", Value::Percent(present.percent)),
                        ("factor", Value::Number(*factor)),
                        ("product", Value::Percent(present.percent * factor)),
                    ],
                );
            }
        }
        if !limit.conditions.is_empty() {
            finding = finding.step("work.conditions", vec![("conditions", Value::Name(limit.conditions))]);
        }
        found.push(finding);
    }
}

/// Another preservative for one that is not allowed at all: taking it out alone would often leave nothing that preserves.
fn instead(contents: &Contents<'_>, limit: &Limit, most: f64) -> Option<Cure> {
    let there = || limit.members.iter().find_map(|(id, _)| contents.find(*id));
    (most <= 0.0).then(there).flatten().and_then(|present| replace(contents, present))
}

/// By which factor a sum must exceed a limit to be over it: molar masses are known to a part in ten thousand, and 0.59 % of
/// sodium benzoate is what every table calls 0.5 % of benzoic acid. What is not converted is compared as it stands.
#[allow(clippy::float_cmp, reason = "a factor of one is written as one")]
fn resolution(limit: &Limit) -> f64 {
    if limit.members.iter().all(|(_, factor)| *factor == 1.0) { 1.0 } else { 1.0001 }
}

/// The weighted sum a limit is about, in percent of the product.
fn sum(contents: &Contents<'_>, limit: &Limit) -> f64 {
    contents.counting(limit).map(|(id, factor)| contents.percent_of(id) * factor).sum()
}

/// Up to how much the law allows what is there for another purpose than preservation, where it does.
fn allowed_otherwise(contents: &Contents<'_>, limit: &Limit, as_preservative: f64) -> Option<f64> {
    let present = |(id, _): &&(crate::ConstituentId, f64)| contents.percent_of(*id) > 0.0;
    let mut least = f64::INFINITY;
    for (id, _) in limit.members.iter().filter(present) {
        let others = contents.touched.iter().copied().filter(|other| {
            !other.preservative
                && other.authority == Authority::Law
                && other.members.iter().any(|(member, _)| member == id)
        });
        least = others.filter_map(|other| contents.bound_of(other)).reduce(f64::min)?.min(least);
    }
    Some(least).filter(|least| least.is_finite() && *least > as_preservative)
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::{Severity, Value};

    #[test]
    fn salts_count_as_acid() {
        let bench = Bench::new();
        // 0.5 % as benzoic acid is 0.59 % of its sodium salt.
        let under = bench.water_with(&[("Sodium Benzoate", "0.59")]);
        assert!(!codes(&bench.check(&under)).contains(&super::CODE));
        let over = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Benzoic Acid", "0.2")]);
        let findings = bench.check(&over);
        let finding = find(&findings, super::CODE);
        let Some(Value::Percent(present)) = finding.value("present") else { panic!() };
        assert!((present - (0.4 * 122.12 / 144.1 + 0.2)).abs() < 1e-9);
        assert_eq!(finding.severity, Severity::Stop);
        bench.every_cure_cures(&over, super::CODE);
    }

    #[test]
    fn exactly_the_limit_is_allowed() {
        let bench = Bench::new();
        assert!(!codes(&bench.check(&bench.water_with(&[("Phenoxyethanol", "1")]))).contains(&super::CODE));
        bench.every_cure_cures(&bench.water_with(&[("Phenoxyethanol", "1.01")]), super::CODE);
    }
}
