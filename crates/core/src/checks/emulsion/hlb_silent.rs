//! Here the hydrophilic-lipophilic balance says nothing: the emulsion is held by a polymer, by liquid crystals, by charges, by
//! a cleansing surfactant, or by an emulsifier made for water in oil. The usual amount of the maker of the emulsifier decides.
//!
//! Only noted, so that nobody takes a missing balance for a sound one.

use super::{ECCLESTON, GRIFFIN, System};
use crate::checks::contents::{Contents, Present};
use crate::checks::finding::{Finding, Severity, Value};
use crate::source::Citation;

pub(super) const CODE: &str = "emulsion.hlb-silent";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(system) = System::of(contents) else { return };
    if system.total <= 0.0 || system.balance_speaks() {
        return;
    }
    let mut words: Vec<&'static str> = Vec::new();
    let mut substances = Vec::new();
    for (each, work) in system.strangers() {
        substances.push(each.id);
        if !words.contains(&work.word()) {
            words.push(work.word());
        }
    }
    let gel = system.is_gel_network();
    if gel {
        words.push("emulsifier.gel-network");
        substances.extend(system.with_balance().map(|(each, _)| each.id));
        substances.extend(system.builders.iter().map(|each| each.id));
    }
    words.sort_unstable();
    let lines = substances.iter().filter_map(|id| contents.find(*id)).flat_map(Present::lines);
    found.push(
        Finding::new(CODE, Severity::Note, "formula")
            .fed_by(lines)
            .with("substances", Value::Substances(substances))
            .with("works_by", Value::Words(words))
            .with("kind", Value::Word(system.kind.word()))
            .cite([GRIFFIN, if gel { ECCLESTON } else { Citation::COMMON_PRACTICE }]),
    );
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Value;

    #[test]
    fn liquid_crystals_polymers_and_charges_are_named() {
        let bench = Bench::new();
        let oil = ("Helianthus Annuus Seed Oil", "20");
        for (emulsifier, word) in [
            ("Cetearyl Olivate", "emulsifier.lamellar"),
            ("Sodium Stearoyl Glutamate", "emulsifier.ionic"),
            ("Polyacrylate Crosspolymer-6", "emulsifier.polymeric"),
            ("Polyglyceryl-3 Polyricinoleate", "emulsifier.water-in-oil"),
        ] {
            let findings = bench.check(&bench.water_with(&[oil, (emulsifier, "4")]));
            assert_eq!(find(&findings, super::CODE).value("works_by"), Some(&Value::Words(vec![word])));
        }
        let gel = [oil, ("Polysorbate 60", "1"), ("Cetearyl Alcohol", "4")];
        assert_eq!(
            find(&bench.check(&bench.water_with(&gel)), super::CODE).value("works_by"),
            Some(&Value::Words(vec!["emulsifier.gel-network"]))
        );
    }

    #[test]
    fn simple_non_ionic_emulsifiers_are_left_to_the_balance() {
        let bench = Bench::new();
        let formula = bench.water_with(&[("Helianthus Annuus Seed Oil", "20"), ("Polysorbate 60", "4")]);
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
    }
}
