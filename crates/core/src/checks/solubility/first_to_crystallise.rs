//! Of several substances that come out in the cold, which comes first and at what temperature: the one to lower first, and
//! the crystals to look for.

use super::solutes;
use crate::checks::contents::{Contents, Present};
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "solubility.first-to-crystallise";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let solutes = solutes(contents);
    let beginning = solutes.iter().filter_map(|solute| Some((solute.crystallises_at(contents)?, solute)));
    let mut beginning: Vec<_> = beginning.collect();
    beginning.sort_by(|(a, first), (b, second)| b.total_cmp(a).then(first.id.cmp(&second.id)));
    let [(begins, first), (next, second), ..] = beginning.as_slice() else { return };
    let lines = contents.find(first.id).into_iter().flat_map(Present::lines);
    found.push(
        Finding::new(CODE, Severity::Note, "formula")
            .with("substance", Value::Substance(first.id))
            .with("temperature", Value::Celsius(*begins))
            .with("second", Value::Substance(second.id))
            .with("then", Value::Celsius(*next))
            .fed_by(lines),
    );
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Value;

    #[test]
    fn the_first_to_come_out_is_named_where_several_do() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Benzoic Acid", "0.28"), ("Salicylic Acid", "0.14")]);
        formula.target_ph = Some(bench.ph("2.3"));
        let findings = bench.check(&formula);
        let first = find(&findings, super::CODE);
        let (Some(Value::Celsius(begins)), Some(Value::Celsius(then))) =
            (first.value("temperature"), first.value("then"))
        else {
            panic!()
        };
        assert!(begins > then);
        formula = bench.water_with(&[("Benzoic Acid", "0.28")]);
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
    }
}
