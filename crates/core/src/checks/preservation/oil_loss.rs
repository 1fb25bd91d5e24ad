//! The oil takes a preservative out of the water, where microbes live (Bean, J. Soc. Cosmet. Chem. 23:703, 1972).
//!
//! Equation: `C_water = C (φ + 1) / (K φ + 1)`, with φ the volume of oil over that of water and K the partition coefficient of
//! the kind of oil there is most of. Of an acid only the undissociated part parts. Below the lower end of its usual range in
//! the water it is not to be relied on. Cured by more of it where the limit allows.

use super::undissociated::is_allowed;
use super::{Held, acting_share, held, spared};
use crate::checks::contents::{Contents, Present};
use crate::checks::cure::raise;
use crate::checks::facts::{OilKind, OilPartition};
use crate::checks::finding::{Finding, Severity, Value};
use crate::chemistry::partition::in_water;
use crate::source::Citation;

pub(super) const CODE: &str = "preservation.oil-loss";

const BEAN: Citation = Citation::recalled("Bean, J. Soc. Cosmet. Chem. 23 (1972) 703: preservatives in emulsions");

/// Hydrocarbons, by what their names begin with: the rest of the oils dissolve like vegetable oils.
const HYDROCARBONS: [&str; 12] = [
    "Paraffin",
    "Petrolatum",
    "Squalane",
    "Squalene",
    "Isododecane",
    "Isohexadecane",
    "Undecane",
    "Tridecane",
    "C13-15 Alkane",
    "Microcrystalline",
    "Ozokerite",
    "Ceresin",
];

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if spared(contents).is_some() || contents.oil <= 0.0 {
        return;
    }
    let Some(ratio) = contents.oil_to_water() else { return };
    for held in held(contents).filter(|held| held.preservative.carries && held.counts()) {
        let Some(usual) = held.preservative.usual else { continue };
        let Some(partition) = coefficient(contents, &held) else { continue };
        let acts = contents.ph().and_then(|ph| acting_share(contents, held.present, ph)).unwrap_or(1.0);
        let coefficient = partition.coefficient * acts;
        let percent = held.present.percent;
        let left = in_water(percent, coefficient, ratio);
        // What is too little before the oil takes any is another finding.
        if left >= usual.value.low || percent < usual.value.low {
            continue;
        }
        let id = held.present.id;
        let more = usual.value.low * percent / left;
        let cure = is_allowed(contents, id, more).then(|| raise(contents, &[(id, 1.0)], percent, more)).flatten();
        found.push(
            Finding::about(CODE, Severity::Caution, id)
                .with("present", Value::Percent(percent))
                .with("left", Value::Percent(left))
                .with("low", Value::Percent(usual.value.low))
                .with("oil", Value::Name(partition.oil))
                .fed_by(held.present.lines())
                .step(
                    "work.bean",
                    vec![
                        ("present", Value::Percent(percent)),
                        ("ratio", Value::Number(ratio)),
                        ("coefficient", Value::Number(coefficient)),
                        ("left", Value::Percent(left)),
                    ],
                )
                .cured_by(cure)
                .cite([partition.citation, BEAN, usual.citation]),
        );
    }
}

/// The coefficient for the kind of oil there is most of, the highest that was measured.
fn coefficient(contents: &Contents<'_>, held: &Held<'_>) -> Option<OilPartition> {
    let is_hydrocarbon = |each: &&Present<'_>| {
        let constituent = contents.source.constituent(each.id);
        constituent.is_some_and(|it| HYDROCARBONS.iter().any(|name| it.inci.starts_with(name)))
    };
    let hydrocarbons = contents.present.iter().filter(|each| each.is_oil()).filter(is_hydrocarbon);
    let share: f64 = hydrocarbons.map(|each| each.percent).sum::<f64>() / contents.oil;
    let kind = if share > 0.5 { OilKind::Mineral } else { OilKind::Vegetable };
    let facts = match held.present.facts.salt_of {
        Some(salt) => contents.knowledge.facts(salt.acid)?,
        None => held.present.facts,
    };
    let measured = facts.oil_partition.iter().filter(|each| each.kind == kind);
    measured.max_by(|a, b| a.coefficient.total_cmp(&b.coefficient)).copied()
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Value;

    #[test]
    fn the_oil_takes_its_share() {
        let bench = Bench::new();
        let formula = bench.water_with(&[
            ("Helianthus Annuus Seed Oil", "40"),
            ("Methylparaben", "0.15"),
            ("Polysorbate 60", "5"),
        ]);
        let findings = bench.check(&formula);
        let Some(Value::Percent(left)) = find(&findings, super::CODE).value("left") else { panic!() };
        // φ = (40 / 0.92) / 54.85 = 0.793; 0.15 × 1.793 / (7.5 × 0.793 + 1)
        assert!((left - 0.0387).abs() < 0.0005, "{left}");
        let dry = bench.water_with(&[("Methylparaben", "0.15")]);
        assert!(!codes(&bench.check(&dry)).contains(&super::CODE));
    }

    #[test]
    fn more_of_it_cures_where_the_limit_allows() {
        let bench = Bench::new();
        let formula = bench.water_with(&[
            ("Helianthus Annuus Seed Oil", "20"),
            ("Phenoxyethanol", "0.6"),
            ("Polysorbate 60", "4"),
        ]);
        bench.every_cure_cures(&formula, super::CODE);
    }
}
