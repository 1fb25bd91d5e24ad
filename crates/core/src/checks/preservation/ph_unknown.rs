//! An acid preservative in a product of unknown pH: whether it acts at all depends on it. Cured by stating the pH that is
//! aimed at, and then measuring it.

use super::{Acting, LATE_ACID, acting, asks_for_one, is_held, sum};
use crate::checks::contents::Contents;
use crate::checks::cure::{Round, set_ph};
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "preservation.ph-unknown";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if contents.ph().is_some() || !asks_for_one(contents) {
        return;
    }
    let is_acid = |each: &Acting<'_>| {
        let early = each.acid.and_then(|acid| acid.steps.first().copied());
        each.preservative.carries && each.is_meant() && early.is_some_and(|pka| pka < LATE_ACID)
    };
    let (acids, others): (Vec<_>, Vec<_>) = acting(contents).into_iter().partition(is_acid);
    let (mut names, mut lines, mut highest, mut sources) = (Vec::new(), Vec::new(), f64::INFINITY, Vec::new());
    for each in &acids {
        names.push(each.present.id);
        lines.extend(each.present.lines());
        if let Some(window) = each.preservative.ph {
            highest = highest.min(window.value.high);
            sources.push(window.citation);
        }
    }
    if names.is_empty() {
        return;
    }
    // Where others hold the product it is worth a word only.
    let severity = if is_held(contents, sum(&others)) { Severity::Note } else { Severity::Caution };
    found.push(
        Finding::new(CODE, severity, "formula")
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
