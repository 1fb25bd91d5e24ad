//! A perfume, or an essential oil, of which nobody wrote down what it holds: which allergens the label has to name cannot be
//! told. The supplier's allergen sheet can.

use super::naming;
use crate::checks::contents::{Contents, Present};
use crate::checks::finding::{Finding, Severity, Value};
use crate::material::ConstituentId;
use stillroom_terms::Class;

pub(super) const CODE: &str = "limits.allergens-unknown";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let unknown = scents_unknown(contents);
    if unknown.is_empty() {
        return;
    }
    let citation = contents.knowledge.allergens().first().map(|allergen| allergen.citation);
    let threshold = contents.knowledge.allergens().first();
    let threshold = threshold.map(|allergen| contents.by_purpose(allergen.leave_on, allergen.rinse_off));
    let mut finding = naming(CODE, Severity::Note, &unknown, citation);
    finding.values.extend(threshold.map(|threshold| ("threshold", Value::Percent(threshold))));
    found.push(finding);
}

/// Perfumes and essential oils in the jar of which nobody wrote down what they hold.
#[must_use]
pub fn scents_unknown<'a, 'b>(contents: &'b Contents<'a>) -> Vec<&'b Present<'a>> {
    let scents = contents.present.iter().filter(|each| each.percent > 0.0 && each.facts.inside.is_empty());
    let unknown = scents.filter(|each| match each.class {
        Class::EssentialOil => true,
        // A single substance that is listed is known.
        Class::Fragrance => !is_listed(contents, each.id),
        _ => false,
    });
    unknown.collect()
}

fn is_listed(contents: &Contents<'_>, id: ConstituentId) -> bool {
    contents.knowledge.allergens().iter().any(|allergen| allergen.members.contains(&id))
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Value;

    #[test]
    fn a_perfume_nobody_described_is_told() {
        let bench = Bench::new();
        let findings = bench.check(&bench.oil_with(&[("Parfum", "0.5"), ("Linalool", "0.1")]));
        let unknown = Value::Substances(vec![bench.constituent("Parfum")]);
        assert_eq!(find(&findings, super::CODE).value("substances"), Some(&unknown));
        let known = bench.oil_with(&[("Lavandula Angustifolia Oil", "0.5"), ("Linalool", "0.1")]);
        assert!(!codes(&bench.check(&known)).contains(&super::CODE));
    }
}
