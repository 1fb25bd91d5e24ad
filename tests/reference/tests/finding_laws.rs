//! Laws of findings, over the written formulas and over random ones made of the whole catalogue.

use proptest::prelude::*;
use rust_decimal::Decimal;
use std::sync::OnceLock;
use stillroom_catalogue::{Catalogue, knowledge};
use stillroom_core::checks::facts::Cosolvent;
use stillroom_core::checks::facts::Knowledge as _;
use stillroom_core::checks::finding::subject_of;
use stillroom_core::checks::{Conditions, Contents, Cure, Finding, Severity, Value, check};
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::{Bench, evaluate};
use stillroom_core::{
    Amount, Class, Constituent, ConstituentId, Formula, Makeup, Material, MaterialId, MaterialSource, Part, Percent,
    Ph, PhaseKind, ProductKind, Purpose,
};
use stillroom_reference::formulas::{findings_of, written};

/// The catalogue and one composite beside it.
struct WithComposite(Material);

impl MaterialSource for WithComposite {
    fn material(&self, id: MaterialId) -> Option<&Material> {
        if id == self.0.id { Some(&self.0) } else { Catalogue::get().material(id) }
    }
    fn constituent(&self, id: ConstituentId) -> Option<&Constituent> {
        Catalogue::get().constituent(id)
    }
}

fn findings_with(formula: &Formula, source: &impl MaterialSource) -> Vec<Finding> {
    let evaluation = evaluate(formula, &Bench::default(), source, &mut Makeups::default());
    check(&Contents::new(formula, &evaluation, source, knowledge(), Conditions::default()))
}

fn cured(formula: &Formula, cure: &Cure) -> Formula {
    let mut formula = formula.clone();
    formula.make_changes(&cure.changes, |_| "phase".to_owned());
    formula
}

/// What a finding says, without the numbers of its lines.
fn gist(findings: &[Finding]) -> Vec<(&'static str, String, Severity, String)> {
    findings.iter().map(|each| (each.code, each.subject.clone(), each.severity, rounded(each))).collect()
}

/// Its numbers to nine figures: a sum in another order may differ in the last.
fn rounded(finding: &Finding) -> String {
    let number = |value: &Value| match value {
        Value::Percent(it) | Value::Celsius(it) | Value::Ph(it) | Value::Number(it) | Value::Times(it) => {
            Some(format!("{it:.7e}"))
        }
        _ => None,
    };
    finding.values.iter().filter_map(|(name, value)| Some(format!("{name} {}", number(value)?))).collect()
}

/// Families of which a cure leaves nothing.
const GONE: [&str; 2] = ["emulsion.", "limits."];
/// Of a kept or bought solution nothing clumps any more, so that spelling it out makes a difference.
const OF_THE_MAKING: &str = "emulsion.disperse-first";

/// Applies every cure: each removes its finding and raises no stop that was not there.
fn hold_cures(name: &str, formula: &Formula) -> Result<usize, String> {
    let before = findings_of(formula);
    let mut cures = 0;
    for finding in &before {
        for cure in &finding.cures {
            cures += 1;
            let after = findings_of(&cured(formula, cure));
            let same = |each: &&Finding| (each.code, &each.subject) == (finding.code, &finding.subject);
            // Where what is found is one amount it is gone; where it is a matter of degree, it is less serious.
            let all_gone = GONE.iter().any(|family| finding.code.starts_with(family));
            if after.iter().find(same).is_some_and(|each| all_gone || each.severity <= finding.severity) {
                return Err(format!("{name}: {} does not remove {} {}", cure.code, finding.code, finding.subject));
            }
            let new = after.iter().find(|each| {
                each.severity == Severity::Stop
                    && !before.iter().any(|old| (old.code, &old.subject) == (each.code, &each.subject))
            });
            if let Some(new) = new {
                return Err(format!("{name}: {} for {} raises {} {}", cure.code, finding.code, new.code, new.subject));
            }
        }
    }
    Ok(cures)
}

#[test]
fn every_cure_of_the_written_formulas_cures_and_raises_no_new_stop() {
    let mut cures = 0;
    let mut problems = Vec::new();
    for each in written() {
        match hold_cures(&each.name, &each.formula) {
            Ok(count) => cures += count,
            Err(problem) => problems.push(problem),
        }
    }
    assert!(problems.is_empty(), "{problems:#?}");
    assert!(cures >= 30, "only {cures} cures");
}

#[test]
fn a_stop_of_a_written_formula_has_a_cure() {
    for each in written() {
        for finding in findings_of(&each.formula).iter().filter(|finding| finding.severity == Severity::Stop) {
            assert!(!finding.cures.is_empty(), "{}: {} {} has no cure", each.name, finding.code, finding.subject);
        }
    }
}

/// Simple materials that are not water.
fn simple() -> &'static [MaterialId] {
    static SIMPLE: OnceLock<Vec<MaterialId>> = OnceLock::new();
    SIMPLE.get_or_init(|| {
        let materials = Catalogue::get().materials();
        let simple = materials.filter(|each| matches!(each.makeup, Makeup::Simple(_)) && each.class != Class::Water);
        simple.map(|each| each.id).collect()
    })
}

fn water() -> MaterialId {
    let aqua = Catalogue::get().constituents().find(|each| each.inci == "Aqua").unwrap();
    knowledge().material_of(aqua.id).unwrap()
}

/// Materials with hundredths of a percent, in phases; water takes up the rest.
fn parts() -> impl Strategy<Value = Vec<(usize, u32, usize)>> {
    prop::collection::vec((0..simple().len(), 1..800_u32, 0..4_usize), 1..10)
}

fn formula_of(parts: &[(usize, u32, usize)], ph: Option<u32>, rinse_off: bool) -> Formula {
    let mut formula = Formula::with_name("random");
    formula.purpose = if rinse_off { Purpose::RinseOff } else { Purpose::LeaveOn };
    formula.target_ph = ph.map(|tenths| Ph::new(Decimal::new(tenths.into(), 1)).unwrap());
    let phases = PhaseKind::ALL.map(|kind| formula.add_phase("phase", kind, None));
    formula.add_line(phases[0], water(), Amount::QuantumSatis);
    for (material, hundredths, phase) in parts {
        let percent = Percent::new(Decimal::new((*hundredths).into(), 2)).unwrap();
        formula.add_line(phases[*phase], simple()[*material], Amount::Percent(percent));
    }
    formula
}

/// A formula made of anything the catalogue has.
#[derive(Debug, Clone)]
struct Recipe {
    /// Material, percent in hundredths, phase.
    lines: Vec<(MaterialId, u32, PhaseKind)>,
    ph: Option<u32>,
    measured: bool,
    kind: Option<ProductKind>,
    rinsed_off: bool,
    /// Whether water takes up the rest, or oil.
    water: bool,
}

fn recipes() -> impl Strategy<Value = Recipe> {
    let all: Vec<MaterialId> = Catalogue::get().materials().map(|material| material.id).collect();
    let phase = prop::sample::select(PhaseKind::ALL.to_vec());
    let line = (prop::sample::select(all), prop_oneof![1_u32..100, 100_u32..1200], phase);
    let lines = prop::collection::vec(line, 1..8);
    let kind = prop::option::of(prop::sample::select(ProductKind::ALL.to_vec()));
    (lines, prop::option::of(15_u32..115), any::<bool>(), kind, any::<bool>(), prop::bool::weighted(0.8)).prop_map(
        |(lines, ph, measured, kind, rinsed_off, water)| Recipe { lines, ph, measured, kind, rinsed_off, water },
    )
}

fn made(recipe: &Recipe) -> Formula {
    let mut formula = Formula::with_name("random");
    formula.purpose = if recipe.rinsed_off { Purpose::RinseOff } else { Purpose::LeaveOn };
    formula.set_kind(recipe.kind);
    let ph = recipe.ph.map(|tenths| Ph::new(Decimal::new(tenths.into(), 1)).unwrap());
    (formula.target_ph, formula.measured_ph) = if recipe.measured { (None, ph) } else { (ph, None) };
    let phases = PhaseKind::ALL.map(|kind| (kind, formula.add_phase("phase", kind, None)));
    let phase_of = |kind| phases.iter().find(|(each, _)| *each == kind).unwrap().1;
    let sunflower = Catalogue::get().constituents().find(|each| each.inci == "Helianthus Annuus Seed Oil").unwrap();
    let oil = knowledge().material_of(sunflower.id).unwrap();
    let (rest, kind) = if recipe.water { (water(), PhaseKind::HeatedWater) } else { (oil, PhaseKind::HeatedOil) };
    formula.add_line(phase_of(kind), rest, Amount::QuantumSatis);
    for (material, hundredths, kind) in &recipe.lines {
        let percent = Percent::new(Decimal::new((*hundredths).into(), 2)).unwrap();
        formula.add_line(phase_of(*kind), *material, Amount::Percent(percent));
    }
    formula
}

/// The formula with every composite replaced by its parts, once.
fn spelled_out(formula: &Formula) -> Formula {
    let mut spelled = formula.clone();
    for phase in &formula.phases {
        for line in &phase.lines {
            let (Some(material), Amount::Percent(whole)) = (Catalogue::get().material(line.material), line.amount)
            else {
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
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_cure_removes_its_finding_and_raises_no_new_stop(recipe in recipes()) {
        if let Err(problem) = hold_cures("random", &made(&recipe)) {
            prop_assert!(false, "{problem}");
        }
    }

    #[test]
    fn findings_do_not_depend_on_the_order_of_lines(recipe in recipes(), turn in 0..10_usize) {
        let formula = made(&recipe);
        let mut other = formula.clone();
        for phase in &mut other.phases {
            phase.lines.reverse();
            let count = phase.lines.len().max(1);
            phase.lines.rotate_left(turn % count);
        }
        other.phases.reverse();
        prop_assert_eq!(gist(&findings_of(&formula)), gist(&findings_of(&other)));
    }

    #[test]
    fn findings_do_not_depend_on_whether_a_composite_of_the_catalogue_is_spelled_out(recipe in recipes()) {
        let formula = made(&recipe);
        let told = |formula: &Formula| {
            let mut told = gist(&findings_of(formula));
            told.retain(|(code, ..)| *code != OF_THE_MAKING);
            told
        };
        prop_assert_eq!(told(&formula), told(&spelled_out(&formula)));
    }

    /// What can only be said of a pH that is known is never said less of one aimed at than of one measured.
    #[test]
    fn a_ph_aimed_at_is_judged_no_milder_than_the_same_measured(recipe in recipes()) {
        let worst = |measured: bool, code: &str| {
            let findings = findings_of(&made(&Recipe { measured, ..recipe.clone() }));
            findings.iter().filter(|each| each.code == code).map(|each| each.severity).min()
        };
        for code in ["limits.skin-ph", "preservation.missing"] {
            if let Some(measured) = worst(true, code) {
                prop_assert!(worst(false, code).is_some_and(|aimed_at| aimed_at <= measured), "{code}");
            }
        }
    }

    #[test]
    fn findings_do_not_depend_on_whether_a_composite_is_nested_or_spelled_out(
        parts in prop::collection::vec((0..simple().len(), 1..800_u32, Just(3_usize)), 2..8), ph in prop::option::of(25..90_u32)
    ) {
        // A composite of the maker's own at a fifth of the formula, its first part q.s.; and the same, part by part.
        let fifth = |hundredths: u32| Percent::new(Decimal::new(i64::from(hundredths) * 2, 3)).unwrap();
        let others: u32 = parts.iter().skip(1).map(|(_, hundredths, _)| hundredths).sum();
        let amounts = |whole: &dyn Fn(u32) -> Amount, first: Amount| -> Vec<(MaterialId, Amount)> {
            let rest = parts.iter().skip(1).map(|(material, hundredths, _)| (simple()[*material], whole(*hundredths)));
            std::iter::once((simple()[parts[0].0], first)).chain(rest).collect()
        };
        let percent = |hundredths: u32| Amount::Percent(Percent::new(Decimal::new(hundredths.into(), 2)).unwrap());
        let inner = amounts(&percent, Amount::QuantumSatis).into_iter().map(|(material, amount)| Part { material, amount });
        let id = MaterialId::Own(7);
        let composite = WithComposite(Material {
            id,
            name: "blend".to_owned(),
            class: Class::Other,
            usual_phase: PhaseKind::RoomTemperature,
            density: None,
            makeup: Makeup::Composite(inner.collect()),
        });
        let empty = || {
            let mut formula = Formula::with_name("random");
            formula.target_ph = ph.map(|tenths| Ph::new(Decimal::new(tenths.into(), 1)).unwrap());
            let phase = formula.add_phase("phase", PhaseKind::RoomTemperature, None);
            formula.add_line(phase, water(), Amount::QuantumSatis);
            (formula, phase)
        };
        let (mut nested, phase) = empty();
        nested.add_line(phase, id, Amount::Percent(Percent::new(Decimal::from(20)).unwrap()));
        let (mut spelled_out, phase) = empty();
        let lines = amounts(&|hundredths| Amount::Percent(fifth(hundredths)), Amount::Percent(fifth(10_000 - others)));
        for (material, amount) in lines {
            spelled_out.add_line(phase, material, amount);
        }
        prop_assert_eq!(gist(&findings_of(&spelled_out)), gist(&findings_with(&nested, &composite)));
    }

    /// Where other solvents hold a substance in solution, water can bring it out again: that is chemistry, and a test beside
    /// this one holds it. Without them, more water never dissolves less.
    #[test]
    fn more_water_never_raises_a_solubility_finding(parts in parts(), ph in prop::option::of(25..90_u32), keep in 10..99_u32) {
        let parts: Vec<_> = parts.into_iter().filter(|(material, ..)| !is_cosolvent(simple()[*material])).collect();
        let before = findings_of(&formula_of(&parts, ph, false));
        let diluted: Vec<_> =
            parts.iter().map(|(material, hundredths, phase)| (*material, (hundredths * keep / 100).max(1), *phase)).collect();
        let after = findings_of(&formula_of(&diluted, ph, false));
        let codes = ["solubility.over-cap", "solubility.over-cap-cold"];
        for finding in after.iter().filter(|each| codes.contains(&each.code)) {
            // What nobody knew before, for want of a figure for the oil, is not raised by the water.
            let unknown = |each: &Finding| match each.value("substances") {
                Some(Value::Substances(substances)) => each.code == "solubility.no-data" && names(substances, finding),
                _ => false,
            };
            let known = before.iter().any(|each| {
                each.subject == finding.subject && each.code.starts_with("solubility.") || unknown(each)
            });
            prop_assert!(known, "{} {} is new", finding.code, finding.subject);
        }
    }
}

fn names(substances: &[ConstituentId], finding: &Finding) -> bool {
    substances.iter().any(|id| subject_of(*id) == finding.subject)
}

fn is_cosolvent(id: MaterialId) -> bool {
    let Some(Material { makeup: Makeup::Simple(constituent), .. }) = Catalogue::get().material(id) else {
        return false;
    };
    knowledge().cosolvent(*constituent).is_some()
}

/// Salicylic acid that alcohol holds in solution comes out when water is added: the one way in which water takes away.
#[test]
fn water_brings_out_what_alcohol_holds() {
    let of = |inci: &str| {
        let constituent = Catalogue::get().constituents().find(|each| each.inci == inci).unwrap();
        knowledge().material_of(constituent.id).unwrap()
    };
    let over = |alcohol: u32, acid: u32| {
        let mut formula = Formula::with_name("tonic");
        let phase = formula.add_phase("phase", PhaseKind::RoomTemperature, None);
        formula.add_line(phase, water(), Amount::QuantumSatis);
        for (material, tenths) in [(of("Alcohol"), alcohol), (of("Salicylic Acid"), acid)] {
            let percent = Percent::new(Decimal::new(tenths.into(), 1)).unwrap();
            formula.add_line(phase, material, Amount::Percent(percent));
        }
        findings_of(&formula).iter().any(|finding| finding.code == "solubility.over-cap")
    };
    assert!(knowledge().cosolvent(ConstituentId::Catalogue(94)).is_some_and(|(kind, _)| kind == Cosolvent::Ethanol));
    assert!(!over(600, 30), "three percent in sixty percent of alcohol");
    assert!(over(200, 10), "the same with twice as much of water beside it");
}
