//! Citrus oils pressed from peel carry furocoumarins: in sunlight they burn skin.
//!
//! Industry guidance bounds each oil in what stays on, and several add up: the shares that they take of their bounds must not
//! exceed one in all. More than that is a caution; so is an oil of which no bound is known. Distilled oils, and those freed of
//! furocoumarins, are other materials. Cured by less of them. Within the bounds only the sun is mentioned.

use super::{all_have, naming, traced};
use crate::checks::contents::{Contents, Present};
use crate::checks::cure::lower;
use crate::checks::facts::{Limit, Trait};
use crate::checks::finding::{Finding, Severity, Value};
use crate::material::ConstituentId;
use crate::source::Citation;
use stillroom_terms::Purpose;

pub(super) const CODE: &str = "limits.phototoxic";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if contents.formula.purpose == Purpose::RinseOff {
        return;
    }
    let (oils, citations) = traced(contents, Trait::Phototoxic);
    if oils.is_empty() {
        return;
    }
    let bounds: Vec<(&Present<'_>, Option<&Limit>)> =
        oils.iter().map(|oil| (*oil, bound_of(contents, oil.id))).collect();
    let weights: Vec<(ConstituentId, f64)> = bounds
        .iter()
        .filter_map(|(oil, limit)| Some((oil.id, 1.0 / (*limit)?.leave_on.filter(|bound| *bound > 0.0)?)))
        .collect();
    let taken: f64 = weights.iter().map(|(id, weight)| contents.percent_of(*id) * weight).sum();
    let unbounded = weights.len() < oils.len();
    let over = taken > 1.0 + 1e-6;
    if !over && !unbounded {
        return;
    }
    let from: Vec<Citation> =
        bounds.iter().filter_map(|(_, limit)| Some((*limit)?.citation)).chain(citations).collect();
    let mut finding = naming(CODE, Severity::Caution, &oils, from)
        .with("taken", Value::Percent(taken * 100.0))
        .with("state", Value::Word(if over { "phototoxic.over" } else { "phototoxic.unbounded" }));
    for (oil, limit) in &bounds {
        let Some(bound) = limit.and_then(|limit| limit.leave_on) else { continue };
        finding = finding.step(
            "work.share-of-bound",
            vec![
                ("substance", Value::Substance(oil.id)),
                ("present", Value::Percent(oil.percent)),
                ("limit", Value::Percent(bound)),
                ("share", Value::Percent(oil.percent / bound * 100.0)),
            ],
        );
    }
    if !unbounded {
        finding = finding.cured_by(lower(contents, &weights, taken, 1.0));
    }
    found.push(finding);
}

/// The bound of one oil by itself.
fn bound_of<'a>(contents: &Contents<'a>, oil: ConstituentId) -> Option<&'a Limit> {
    let limits = contents.touched.iter().copied().filter(|limit| limit.leave_on.is_some());
    let mut about = limits.filter(|limit| matches!(limit.members.as_slice(), [(only, _)] if *only == oil));
    about.find(|limit| all_have(contents, limit, Trait::Phototoxic))
}

#[cfg(test)]
mod tests {
    use crate::Purpose;
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Severity;

    #[test]
    fn too_much_pressed_bergamot_is_found_and_cured() {
        let bench = Bench::new();
        let little = bench.check(&bench.oil_with(&[("Citrus Aurantium Bergamia Peel Oil", "0.3")]));
        assert!(!codes(&little).contains(&super::CODE) && codes(&little).contains(&"limits.sun"));
        let mut much = bench.oil_with(&[("Citrus Aurantium Bergamia Peel Oil", "0.9")]);
        assert_eq!(find(&bench.check(&much), super::CODE).severity, Severity::Caution);
        bench.every_cure_cures(&much, super::CODE);
        much.purpose = Purpose::RinseOff;
        assert!(!codes(&bench.check(&much)).contains(&super::CODE));
    }
}
