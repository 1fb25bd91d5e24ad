//! The balance would say whether the emulsifiers suit the oil, but too much of the oil, or of the emulsifiers, states none.
//!
//! Noted where more than a quarter is unknown, with what is. A trial batch decides.

use super::{ENOUGH_KNOWN, GRIFFIN, Kind, System, Work, required};
use crate::checks::contents::{Contents, Present};
use crate::checks::finding::{Finding, Severity, Value};
use crate::material::ConstituentId;

pub(super) const CODE: &str = "emulsion.hlb-no-data";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(system) = System::of(contents).filter(System::balance_speaks) else { return };
    if system.unknown() > system.total * (1.0 - ENOUGH_KNOWN) {
        let unknown = system.emulsifiers.iter().filter(|(_, work)| *work == Work::Unknown);
        let unknown: Vec<ConstituentId> = unknown.map(|(each, _)| each.id).collect();
        report(contents, found, ("emulsifier", system.kind), unknown, system.unknown() / system.total);
    }
    match required(contents, system.kind) {
        None => {
            let oils = contents.present.iter().filter(|each| each.is_oil() && each.percent > 0.0);
            report(contents, found, ("oil", system.kind), oils.map(|each| each.id).collect(), 1.0);
        }
        Some(required) if required.known < ENOUGH_KNOWN => {
            report(contents, found, ("oil", system.kind), required.unknown, 1.0 - required.known);
        }
        Some(_) => {}
    }
}

fn report(
    contents: &Contents<'_>,
    found: &mut Vec<Finding>,
    (subject, kind): (&'static str, Kind),
    unknown: Vec<ConstituentId>,
    share: f64,
) {
    let lines = unknown.iter().filter_map(|id| contents.find(*id)).flat_map(Present::lines);
    let what = if subject == "oil" { "hlb.of-the-oil" } else { "hlb.of-the-emulsifiers" };
    found.push(
        Finding::new(CODE, Severity::Note, subject)
            .fed_by(lines)
            .with("what", Value::Word(what))
            .with("share", Value::Percent(share * 100.0))
            .with("substances", Value::Substances(unknown))
            .with("kind", Value::Word(kind.word()))
            .cite([GRIFFIN]),
    );
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, has};

    #[test]
    fn oils_and_emulsifiers_without_a_figure_are_named() {
        let bench = Bench::new();
        let oil = bench.water_with(&[
            ("Helianthus Annuus Seed Oil", "10"),
            ("Argania Spinosa Kernel Oil", "10"),
            ("Polysorbate 60", "4"),
        ]);
        assert!(has(&bench.check(&oil), super::CODE, "oil"));
        let emulsifier = bench.water_with(&[("Helianthus Annuus Seed Oil", "10"), ("Unknown Emulsifier", "2")]);
        assert!(has(&bench.check(&emulsifier), super::CODE, "emulsifier"));
    }

    #[test]
    fn a_little_that_is_unknown_does_not_matter() {
        let bench = Bench::new();
        let oils = [
            ("Helianthus Annuus Seed Oil", "18"),
            ("Argania Spinosa Kernel Oil", "2"),
            ("Polysorbate 60", "1.5"),
            ("Sorbitan Stearate", "2.5"),
        ];
        assert!(!codes(&bench.check(&bench.water_with(&oils))).contains(&super::CODE));
    }
}
