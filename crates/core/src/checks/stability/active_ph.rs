//! An active outside the pH in which it keeps and works: ascorbic acid dies, its phosphates lose their phosphate, urea
//! releases ammonia, niacinamide turns into nicotinic acid, arbutin into hydroquinone.
//!
//! A note just outside the window, a caution from half a unit on. What preserves, thickens or sets the pH is judged
//! elsewhere. Cured by the nearest pH inside.

use super::TRACE;
use crate::checks::contents::{Contents, Present};
use crate::checks::cure::{Round, set_ph};
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};
use stillroom_terms::Class;

pub(super) const CODE: &str = "stability.active-ph";

/// Where nothing worse is known than that it keeps and works less.
const WEAKER: &str = "why.weaker";
/// So far outside its window it is a caution, where something is known to happen to it.
const FAR: f64 = 0.5;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(ph) = contents.ph().filter(|_| !contents.is_dry()) else { return };
    for each in contents.present.iter().filter(|each| each.percent >= TRACE && is_active(each)) {
        let Some(window) = each.facts.usual_ph else { continue };
        let (low, high) = (window.value.low, window.value.high);
        // Windows are round figures: what the pH may be off by is no difference.
        let outside = (low - ph.high()).max(ph.low() - high);
        if outside <= 1e-9 {
            continue;
        }
        let acid = ph.value < low;
        let why = why(each, acid);
        let far = (low - ph.value).max(ph.value - high) >= FAR && why != WEAKER;
        let severity = if far { Severity::Caution } else { Severity::Note };
        let cure = if acid { set_ph(low, Round::Up) } else { set_ph(high, Round::Down) };
        found.push(
            Finding::about(CODE, severity, each.id)
                .with("ph", Value::Ph(ph.value))
                .with("known", Value::Word(ph.word()))
                .with("low", Value::Ph(low))
                .with("high", Value::Ph(high))
                .with("why", Value::Word(why))
                .fed_by(each.lines())
                .cured_by(cure)
                .cite([window.citation]),
        );
    }
}

/// Whether something is in for what it does on skin.
fn is_active(each: &Present<'_>) -> bool {
    let has = |wanted| each.facts.has(wanted).is_some();
    matches!(each.class, Class::Active | Class::Protein) && each.facts.preservative.is_none() || has(Trait::Ammonia)
}

/// Key of what happens to it.
fn why(each: &Present<'_>, acid: bool) -> &'static str {
    let has = |wanted| each.facts.has(wanted).is_some();
    match acid {
        false if has(Trait::Ascorbate) => "why.ascorbate",
        true if has(Trait::PhosphateEster) => "why.phosphate",
        _ if has(Trait::Ammonia) => "why.ammonia",
        _ if has(Trait::Nicotinamide) => "why.nicotinamide",
        true if has(Trait::Glycoside) => "why.glycoside",
        true if has(Trait::Retinoid) => "why.retinoid",
        _ if each.class == Class::Protein => "why.protein",
        _ => WEAKER,
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::{Severity, Value};

    #[test]
    fn ascorbic_acid_dies_where_it_is_not_acid() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Ascorbic Acid", "5"), ("Phenoxyethanol", "0.9")]);
        formula.target_ph = Some(bench.ph("6.5"));
        let findings = bench.check(&formula);
        let dies = find(&findings, super::CODE);
        assert_eq!((dies.severity, dies.value("why")), (Severity::Caution, Some(&Value::Word("why.ascorbate"))));
        bench.every_cure_cures(&formula, super::CODE);
        // Up to 3.5, and what is aimed at may be off by 0.2.
        formula.target_ph = Some(bench.ph("3.7"));
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
        formula.target_ph = Some(bench.ph("3.8"));
        assert_eq!(find(&bench.check(&formula), super::CODE).severity, Severity::Note);
    }
}
