//! An acid preservative in a product of unknown pH: whether it acts at all depends on it. Cured by stating the pH that is
//! aimed at, and then measuring it.

use super::{acid_of, held, spared};
use crate::checks::contents::Contents;
use crate::checks::cure::{Round, set_ph};
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "preservation.ph-unknown";

/// An acid of a higher constant is undissociated at any pH of skin care.
const LATE_ACID: f64 = 7.0;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if contents.ph().is_some() || spared(contents).is_some() {
        return;
    }
    let acids = held(contents).filter(|held| {
        let early = acid_of(contents, held.present).and_then(|(acid, _)| acid.steps.first().copied());
        held.preservative.carries && held.counts() && early.is_some_and(|pka| pka < LATE_ACID)
    });
    let (mut names, mut lines, mut highest, mut sources) = (Vec::new(), Vec::new(), f64::INFINITY, Vec::new());
    for held in acids {
        names.push(held.present.id);
        lines.extend(held.present.lines());
        if let Some(window) = held.preservative.ph {
            highest = highest.min(window.value.high);
            sources.push(window.citation);
        }
    }
    if names.is_empty() {
        return;
    }
    found.push(
        Finding::new(CODE, Severity::Caution, "formula")
            .with("substances", Value::Substances(names))
            .with("high", Value::Ph(highest))
            .fed_by(lines)
            .cured_by(if highest.is_finite() { set_ph(highest, Round::Down) } else { None })
            .cite(sources),
    );
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};

    #[test]
    fn an_acid_without_a_ph_is_asked_about() {
        let bench = Bench::new();
        bench.every_cure_cures(&bench.water_with(&[("Sodium Benzoate", "0.4")]), super::CODE);
        assert!(!codes(&bench.check(&bench.water_with(&[("Methylparaben", "0.3")]))).contains(&super::CODE));
    }
}
