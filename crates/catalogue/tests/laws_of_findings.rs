//! Laws that hold for the findings of every formula that can be made from the catalogue.

#![allow(clippy::unwrap_used, reason = "a test may stop where what it is made of is wrong")]

use proptest::prelude::*;
use rust_decimal::Decimal;
use stillroom_catalogue::{Catalogue, MaterialSource, knowledge};
use stillroom_core::checks::{Conditions, Contents, Finding, Severity, check, keep_cures_that_cure};
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::{Bench, evaluate};
use stillroom_core::quantity::{Percent, Ph};
use stillroom_core::{Amount, Formula, Makeup, MaterialId, PhaseKind, Purpose};

/// The families held to the laws here.
const FAMILIES: [&str; 2] = ["emulsion.", "limits."];
/// Of a kept or bought solution nothing clumps any more, so that spelling it out makes a difference.
const OF_THE_MAKING: &str = "emulsion.disperse-first";

#[derive(Debug, Clone)]
struct Recipe {
    /// Material number, percent in hundredths, phase.
    lines: Vec<(MaterialId, u32, PhaseKind)>,
    ph: Option<u32>,
    rinsed_off: bool,
    /// Whether water takes up the rest, or oil.
    water: bool,
}

fn recipes() -> impl Strategy<Value = Recipe> {
    let numbers: Vec<MaterialId> = Catalogue::get().materials().map(|material| material.id).collect();
    let phase = prop::sample::select(PhaseKind::ALL.to_vec());
    let line = (prop::sample::select(numbers), prop_oneof![1_u32..100, 100_u32..1200], phase);
    (prop::collection::vec(line, 1..8), prop::option::of(25_u32..80), any::<bool>(), prop::bool::weighted(0.8))
        .prop_map(|(lines, ph, rinsed_off, water)| Recipe { lines, ph, rinsed_off, water })
}

fn formula(recipe: &Recipe) -> Formula {
    let mut formula = Formula::with_name("recipe");
    formula.purpose = if recipe.rinsed_off { Purpose::RinseOff } else { Purpose::LeaveOn };
    formula.target_ph = recipe.ph.map(|tenths| Ph::new(Decimal::new(tenths.into(), 1)).unwrap());
    let phases = PhaseKind::ALL.map(|kind| (kind, formula.add_phase("phase", kind, None)));
    let phase_of = |kind| phases.iter().find(|(each, _)| *each == kind).unwrap().1;
    // Water and sunflower oil.
    let (rest, kind) = if recipe.water { (1, PhaseKind::HeatedWater) } else { (8, PhaseKind::HeatedOil) };
    formula.add_line(phase_of(kind), MaterialId::Catalogue(rest), Amount::QuantumSatis);
    for (material, hundredths, kind) in &recipe.lines {
        let percent = Percent::new(Decimal::new((*hundredths).into(), 2)).unwrap();
        formula.add_line(phase_of(*kind), *material, Amount::Percent(percent));
    }
    formula
}

fn findings(formula: &Formula) -> Vec<Finding> {
    let catalogue = Catalogue::get();
    let (bench, mut makeups) = (Bench::default(), Makeups::default());
    let evaluation = evaluate(formula, &bench, catalogue, &mut makeups);
    let contents = Contents::new(formula, &evaluation, catalogue, knowledge(), Conditions::default());
    let mut findings = check(&contents);
    keep_cures_that_cure(&mut findings, &contents, &bench, &mut makeups);
    findings
}

fn ours(findings: &[Finding]) -> impl Iterator<Item = &Finding> {
    findings.iter().filter(|finding| FAMILIES.iter().any(|family| finding.code.starts_with(family)))
}

fn is_same(one: &Finding, other: &Finding) -> bool {
    one.code == other.code && one.subject == other.subject
}

/// What a formula is told, apart from which lines are behind it.
fn told(findings: &[Finding]) -> Vec<(&'static str, String, Severity)> {
    let mut told: Vec<_> =
        ours(findings).map(|finding| (finding.code, finding.subject.clone(), finding.severity)).collect();
    told.sort_unstable();
    told
}

/// The formula with every composite replaced by its parts, once.
fn spelled_out(formula: &Formula) -> Formula {
    let catalogue = Catalogue::get();
    let mut spelled = formula.clone();
    for phase in &formula.phases {
        for line in &phase.lines {
            let (Some(material), Amount::Percent(whole)) = (catalogue.material(line.material), line.amount) else {
                continue;
            };
            let Makeup::Composite(parts) = &material.makeup else { continue };
            let stated_of = |amount| match amount {
                Amount::Percent(percent) => Some(percent.value()),
                _ => None,
            };
            let stated: Decimal = parts.iter().filter_map(|part| stated_of(part.amount)).sum();
            spelled.remove_line(line.id);
            for part in parts {
                let percent = stated_of(part.amount).unwrap_or(Decimal::ONE_HUNDRED - stated);
                let percent = Percent::new(whole.value() * percent / Decimal::ONE_HUNDRED).unwrap();
                spelled.add_line(phase.id, part.material, Amount::Percent(percent));
            }
        }
    }
    spelled
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 192, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_cure_removes_its_finding(recipe in recipes()) {
        let formula = formula(&recipe);
        for finding in ours(&findings(&formula)) {
            for cure in &finding.cures {
                let mut cured = formula.clone();
                cured.make_changes(&cure.changes, |_| "phase".to_owned());
                let after = findings(&cured);
                let left = after.iter().find(|each| is_same(each, finding));
                prop_assert!(left.is_none(), "{} leaves {} {}: {left:?}", cure.code, finding.code, finding.subject);
            }
        }
    }

    #[test]
    fn findings_do_not_depend_on_the_order_of_the_lines(recipe in recipes()) {
        let mut turned = recipe.clone();
        turned.lines.reverse();
        prop_assert_eq!(told(&findings(&formula(&recipe))), told(&findings(&formula(&turned))));
    }

    #[test]
    fn findings_do_not_depend_on_whether_a_composite_is_spelled_out(recipe in recipes()) {
        let formula = formula(&recipe);
        let without = |mut told: Vec<(&'static str, String, Severity)>| {
            told.retain(|(code, ..)| *code != OF_THE_MAKING);
            told
        };
        prop_assert_eq!(without(told(&findings(&formula))), without(told(&findings(&spelled_out(&formula)))));
    }
}
