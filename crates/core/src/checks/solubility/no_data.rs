//! Substances of which nobody says how much dissolves here: not known is not the same as well.
//!
//! One finding for a room and one for the cold, each naming them all.

use super::{Missing, asks_for_solvent, solutes};
use crate::checks::contents::{Contents, Present};
use crate::checks::facts::{Trait, WaterSolubility};
use crate::checks::finding::{Finding, Severity, Value};
use crate::material::ConstituentId;
use stillroom_terms::Class;

pub(super) const CODE: &str = "solubility.no-data";

/// Classes of solids that a maker expects to dissolve.
const SOLIDS: [Class; 7] = [
    Class::Active,
    Class::Preservative,
    Class::Salt,
    Class::Chelator,
    Class::PhAdjuster,
    Class::Antioxidant,
    Class::Humectant,
];

/// Less of a substance than this, in percent, is not worth a word.
const WORTH_A_WORD: f64 = 0.05;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if contents.water <= 0.0 || contents.is_dry() {
        return;
    }
    let unknown = contents.present.iter().filter(|each| {
        asks_for_solvent(contents, each)
            && SOLIDS.contains(&each.class)
            && each.dissolving >= WORTH_A_WORD
            && !is_known(contents, each)
    });
    let mut in_a_room: Vec<ConstituentId> = unknown.map(|each| each.id).collect();
    let mut in_the_cold = Vec::new();
    for solute in solutes(contents).iter().filter(|solute| solute.present >= WORTH_A_WORD) {
        let room = solute.capacity(contents, contents.conditions.room);
        match (room, solute.capacity(contents, contents.conditions.cold)) {
            (Err(Missing::Temperature | Missing::Oil), _) => in_a_room.push(solute.id),
            // What stays far below its cap in a room stays dissolved in the cold, too.
            (Ok(room), Err(_)) if !solute.liquid && solute.present > room.cap / FAR_BELOW => {
                in_the_cold.push(solute.id);
            }
            _ => {}
        }
    }
    for (subject, mut substances, temperature) in
        [("room", in_a_room, contents.conditions.room), ("cold", in_the_cold, contents.conditions.cold)]
    {
        substances.sort_unstable();
        substances.dedup();
        if substances.is_empty() {
            continue;
        }
        let lines = substances.iter().filter_map(|id| contents.find(*id)).flat_map(Present::lines);
        found.push(
            Finding::new(CODE, Severity::Note, subject)
                .fed_by(lines)
                .with("temperature", Value::Celsius(temperature.celsius()))
                .with("substances", Value::Substances(substances)),
        );
    }
}

/// How many times a cap in a room must exceed what is there for the cold not to matter: no common solid loses more than
/// this from 25 to 5 °C (benzoic acid halves, caffeine and boric acid lose two thirds).
const FAR_BELOW: f64 = 4.0;

fn is_known(contents: &Contents<'_>, each: &Present<'_>) -> bool {
    let has_figure = |facts: &crate::checks::Facts| facts.water_solubility.is_some();
    has_figure(each.facts)
        || each.facts.salt_of.is_some_and(|salt| contents.knowledge.facts(salt.acid).is_some_and(has_figure))
        || matches!(each.facts.water_solubility, Some(WaterSolubility::Miscible(_)))
        || each.facts.has(Trait::Liquid).is_some()
        || each.facts.has(Trait::OilSoluble).is_some()
        || contents.oil > 0.0 && each.facts.log_kow.is_some_and(|log_kow| log_kow.value > super::PREFERS_OIL)
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, find, has};
    use crate::checks::finding::Value;

    #[test]
    fn what_is_not_known_is_said() {
        let bench = Bench::new();
        let findings = bench.check(&bench.water_with(&[("Mystery Active", "1"), ("Allantoin", "0.1")]));
        let unknown = find(&findings, super::CODE);
        assert_eq!(unknown.value("substances"), Some(&Value::Substances(vec![bench.constituent("Mystery Active")])));
    }

    #[test]
    fn a_figure_for_a_room_says_nothing_of_the_cold() {
        let bench = Bench::new();
        assert!(has(&bench.check(&bench.water_with(&[("Allantoin", "0.4")])), super::CODE, "cold"));
        assert!(!has(&bench.check(&bench.water_with(&[("Allantoin", "0.1")])), super::CODE, "cold"));
    }
}
