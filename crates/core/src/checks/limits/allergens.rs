//! Fragrance allergens to be named on the label: above a threshold that differs for what stays on and what is rinsed off.
//!
//! Summed over essential oils by what they hold, over single perfume substances, and over oils that are listed as a whole.
//! Those over the threshold with typical oils have to be named; those only the most would bring over it probably, unless the
//! papers of the lot say otherwise. There is nothing to cure: naming them is what the law asks for.

use crate::checks::contents::{Contents, Present};
use crate::checks::facts::Allergen;
use crate::checks::finding::{Finding, Severity, Step, Value};
use crate::formula::LineId;
use crate::source::Citation;

pub(super) const CODE: &str = "limits.allergens";

/// What a product holds of one allergen, in percent of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Brought<'a> {
    /// Which.
    pub allergen: &'a Allergen,
    /// With what essential oils typically hold.
    pub typical: f64,
    /// With the most they may hold.
    pub most: f64,
    /// Above how much of it the product has to name it, by how it is used.
    pub threshold: f64,
}

/// What a product holds of each allergen that it holds any of, in the order of the law: what is weighed as such and what
/// essential oils bring.
#[must_use]
pub fn brought<'a>(contents: &Contents<'a>) -> Vec<Brought<'a>> {
    let inside = inside_oils(contents);
    let sums = contents.knowledge.allergens().iter().map(|allergen| {
        let direct: f64 = allergen.members.iter().map(|id| contents.percent_of(*id)).sum();
        let oils = inside.iter().find(|each| each.name == allergen.name);
        Brought {
            allergen,
            typical: direct + oils.map_or(0.0, |each| each.typical),
            most: direct + oils.map_or(0.0, |each| each.most),
            threshold: contents.by_purpose(allergen.leave_on, allergen.rinse_off),
        }
    });
    sums.filter(|sum| sum.most > 0.0).collect()
}

/// What all essential oils together bring of one allergen, in percent of the product.
struct Inside {
    name: &'static str,
    typical: f64,
    most: f64,
}

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let (mut named, mut perhaps, mut steps) = (Vec::new(), Vec::new(), Vec::new());
    let (mut lines, mut citations) = (Vec::<LineId>::new(), Vec::<Citation>::new());
    let mut threshold_used = None;
    for Brought { allergen, typical, most, threshold } in brought(contents) {
        if most <= threshold {
            continue;
        }
        if typical > threshold {
            named.push(allergen.name);
        } else {
            perhaps.push(allergen.name);
        }
        threshold_used = Some((threshold, allergen.jurisdiction));
        steps.push(Step {
            template: "work.allergen",
            values: vec![
                ("allergen", Value::Name(allergen.name)),
                ("typical", Value::Percent(typical)),
                ("most", Value::Percent(most)),
                ("threshold", Value::Percent(threshold)),
                ("entry", Value::Name(allergen.entry)),
            ],
        });
        lines.extend(allergen.members.iter().filter_map(|id| contents.find(*id)).flat_map(Present::lines));
        let oils = contents
            .present
            .iter()
            .filter(|oil| oil.facts.inside.iter().any(|each| each.allergen == Some(allergen.name)));
        lines.extend(oils.flat_map(Present::lines));
        citations.push(allergen.citation);
    }
    let Some((threshold, jurisdiction)) = threshold_used else { return };
    named.sort_unstable();
    perhaps.sort_unstable();
    let mut finding = Finding::new(CODE, Severity::Note, "formula")
        .with("named", Value::Names(named))
        .with("perhaps", Value::Names(perhaps))
        .with("threshold", Value::Percent(threshold))
        .with("jurisdiction", Value::Name(jurisdiction))
        .with("use", Value::Word(contents.by_purpose("use.leave-on", "use.rinse-off")))
        .fed_by(lines)
        .cite(citations);
    finding.working = steps;
    found.push(finding);
}

fn inside_oils(contents: &Contents<'_>) -> Vec<Inside> {
    let mut sums: Vec<Inside> = Vec::new();
    for oil in contents.present.iter().filter(|oil| oil.percent > 0.0) {
        for part in &oil.facts.inside {
            let Some(name) = part.allergen else { continue };
            let typical = oil.percent * part.typical.unwrap_or(0.0) / 100.0;
            let most = oil.percent * part.most.or(part.typical).unwrap_or(0.0) / 100.0;
            match sums.iter_mut().find(|sum| sum.name == name) {
                Some(sum) => {
                    sum.typical += typical;
                    sum.most += most;
                }
                None => sums.push(Inside { name, typical, most }),
            }
        }
    }
    sums
}

#[cfg(test)]
mod tests {
    use crate::Purpose;
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Value;

    #[test]
    fn what_oils_and_single_substances_bring_is_summed_and_named() {
        let bench = Bench::new();
        // 0.003 % of an oil that typically holds 31.5 % linalool, and 0.0002 % of it neat: 0.00115 % in all.
        let lines = [("Lavandula Angustifolia Oil", "0.003"), ("Linalool", "0.0002")];
        let mut formula = bench.oil_with(&lines);
        let findings = bench.check(&formula);
        let note = find(&findings, super::CODE);
        assert_eq!(note.value("named"), Some(&Value::Names(vec!["Linalool"])));
        assert_eq!(note.value("perhaps"), Some(&Value::Names(Vec::new())));
        formula.purpose = Purpose::RinseOff;
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
    }

    #[test]
    fn what_only_the_most_would_bring_is_told_apart() {
        let bench = Bench::new();
        let findings = bench.check(&bench.oil_with(&[("Lavandula Angustifolia Oil", "0.003")]));
        let note = find(&findings, super::CODE);
        assert_eq!(note.value("perhaps"), Some(&Value::Names(vec!["Linalool"])));
        assert!(
            !codes(&bench.check(&bench.oil_with(&[("Lavandula Angustifolia Oil", "0.002")]))).contains(&super::CODE)
        );
    }
}
