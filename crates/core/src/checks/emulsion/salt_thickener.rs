//! Salt beside a thickener that salt thins: carbomer and its kin, gellan, smectite clays. The ions screen the charges that hold
//! the gel open.
//!
//! A tenth of a percent of salts is noticed, half a percent thins a carbomer gel markedly (common practice). Cured by less of
//! the salts that are not needed as preservatives, or by xanthan gum, which bears salt, in place of the thickener.

use crate::checks::contents::{Contents, Present};
use crate::checks::cure::{Cure, LAST_DIGITS, lower, replace};
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Severity, Value};
use crate::formula::LineId;
use crate::material::{ConstituentId, Makeup};
use crate::source::Citation;

pub(super) const CODE: &str = "emulsion.salt-thickener";

/// Salt that is noticed, in percent of the product.
const NOTICED: f64 = 0.1;
/// Salt that thins markedly, in percent.
const THINS: f64 = 0.5;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let thickeners: Vec<&Present<'_>> = contents.with(Trait::SaltSensitiveThickener).collect();
    if thickeners.is_empty() {
        return;
    }
    let salts: Vec<&Present<'_>> = contents.with(Trait::Electrolyte).collect();
    let salt: f64 = salts.iter().map(|each| each.percent).sum();
    if salt <= NOTICED + LAST_DIGITS {
        return;
    }
    let severity = if salt > THINS { Severity::Caution } else { Severity::Note };
    let names = |those: &[&Present<'_>]| Value::Substances(those.iter().map(|each| each.id).collect());
    let all = thickeners.iter().chain(&salts).filter_map(|each| each.facts.has(Trait::Electrolyte));
    let citations: Vec<Citation> = all.take(1).chain([Citation::COMMON_PRACTICE]).collect();
    found.push(
        Finding::new(CODE, severity, "formula")
            .with("salt", Value::Percent(salt))
            .with("noticed", Value::Percent(NOTICED))
            .with("thins", Value::Percent(THINS))
            .with("salts", names(&salts))
            .with("thickeners", names(&thickeners))
            .fed_by(thickeners.iter().chain(&salts).flat_map(|each| each.lines()))
            .cured_by(less_salt(contents, &salts, salt))
            .cured_by(other_thickener(contents, &thickeners))
            .cite(citations),
    );
}

fn less_salt(contents: &Contents<'_>, salts: &[&Present<'_>], salt: f64) -> Option<Cure> {
    let spare = salts.iter().filter(|each| each.facts.preservative.is_none());
    let members: Vec<(ConstituentId, f64)> = spare.clone().map(|each| (each.id, 1.0)).collect();
    let now: f64 = spare.map(|each| each.percent).sum();
    let needed = salt - now;
    (needed < NOTICED).then(|| lower(contents, &members, now, NOTICED - needed)).flatten()
}

fn other_thickener(contents: &Contents<'_>, thickeners: &[&Present<'_>]) -> Option<Cure> {
    let other = contents.knowledge.remedies().salt_tolerant_thickener?;
    // One that also holds the emulsion cannot simply go.
    if thickeners.iter().any(|each| each.facts.has(Trait::PolymericEmulsifier).is_some()) {
        return None;
    }
    let lines: Vec<LineId> = thickeners.iter().flat_map(|each| each.lines()).collect();
    let simple = lines.iter().all(|line| {
        let material = contents.formula.line(*line).and_then(|line| contents.material_of(line));
        material.is_some_and(|material| matches!(material.makeup, Makeup::Simple(_)))
    });
    if simple { replace(contents, &lines, other) } else { None }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Severity;

    #[test]
    fn salt_thins_carbomer_and_xanthan_bears_it() {
        let bench = Bench::new();
        let formula = bench.water_with(&[("Carbomer", "0.4"), ("Sodium Chloride", "1")]);
        let findings = bench.check(&formula);
        assert_eq!(find(&findings, super::CODE).severity, Severity::Caution);
        assert_eq!(find(&findings, super::CODE).cures.len(), 2);
        bench.every_cure_cures(&formula, super::CODE);
        for sound in
            [[("Xanthan Gum", "0.4"), ("Sodium Chloride", "1")], [("Carbomer", "0.4"), ("Sodium Chloride", "0.1")]]
        {
            assert!(!codes(&bench.check(&bench.water_with(&sound))).contains(&super::CODE));
        }
    }
}
