//! The uses of the solver on the catalogue's materials: what a maker asks, and what has to come out.

use rust_decimal::{Decimal, dec};
use stillroom_catalogue::{Catalogue, MaterialSource, groups, knowledge};
use stillroom_core::checks::{Conditions, Contents, Finding, Severity, check};
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::{Bench, evaluate};
use stillroom_core::rebuild::substitutes::substitutes;
use stillroom_core::rebuild::{Aim, AtHand, Figure, Grid, NoAnswer, Setting, StandIn, Version};
use stillroom_core::{Amount, Density, Formula, LineId, MaterialId, Percent, PhaseKind};

const QS: &str = "qs";

fn material(name: &str) -> MaterialId {
    let found = Catalogue::get().materials().find(|material| material.name == name);
    found.unwrap_or_else(|| panic!("no material `{name}`")).id
}

fn percent(text: &str) -> Percent {
    Percent::new(text.parse().unwrap()).unwrap()
}

fn formula(lines: &[(PhaseKind, &str, &str)]) -> Formula {
    let mut formula = Formula::with_name("asked");
    for (kind, name, amount) in lines {
        let phase = formula.phases.iter().find(|phase| phase.kind == *kind).map(|phase| phase.id);
        let phase = phase.unwrap_or_else(|| formula.add_phase("phase", *kind, None));
        let amount = if *amount == QS { Amount::QuantumSatis } else { Amount::Percent(percent(amount)) };
        formula.add_line(phase, material(name), amount);
    }
    formula
}

fn setting<'a>(formula: &'a Formula, bench: &'a Bench) -> Setting<'a> {
    Setting {
        formula,
        bench,
        source: Catalogue::get(),
        knowledge: knowledge(),
        conditions: Conditions::default(),
        grid: Grid::PERCENT,
        phase_name: &|_| "phase".to_owned(),
    }
}

fn line_of(formula: &Formula, name: &str) -> LineId {
    formula.lines().find(|line| line.material == material(name)).unwrap_or_else(|| panic!("no line of {name}")).id
}

fn share(formula: &Formula, name: &str) -> Decimal {
    let evaluation = evaluate(formula, &Bench::default(), Catalogue::get(), &mut Makeups::default());
    assert_eq!(evaluation.balance.total, Percent::HUNDRED, "a version makes a whole");
    let found = evaluation.lines.iter().filter(|(_, id)| *id == material(name));
    found.map(|(share, _)| share.percent.value()).sum()
}

fn findings(formula: &Formula) -> Vec<Finding> {
    let evaluation = evaluate(formula, &Bench::default(), Catalogue::get(), &mut Makeups::default());
    check(&Contents::new(formula, &evaluation, Catalogue::get(), knowledge(), Conditions::default()))
}

fn lotion() -> Formula {
    use PhaseKind::{CoolDown, HeatedOil, HeatedWater};
    let mut formula = formula(&[
        (HeatedWater, "Water, distilled", QS),
        (HeatedWater, "Glycerin, vegetable", "3"),
        (HeatedWater, "Xanthan gum", "0.3"),
        (HeatedOil, "Cetearyl olivate and sorbitan olivate", "4"),
        (HeatedOil, "Sweet almond oil", "12"),
        (HeatedOil, "Cetearyl alcohol", "2"),
        (CoolDown, "Cucumber glycerite 65 % glycerin", "5"),
        (CoolDown, "Panthenol 75 % solution", "2"),
        (CoolDown, "Phenoxyethanol 90, ethylhexylglycerin 10", "1"),
    ]);
    formula.target_ph = "5.5".parse().ok().and_then(|ph| stillroom_core::Ph::new(ph).ok());
    formula
}

fn enough(names: &[&str]) -> Vec<AtHand> {
    names.iter().map(|name| AtHand::enough(material(name))).collect()
}

fn swap(formula: &Formula, old: &str, new: &[&str]) -> Result<Version, NoAnswer> {
    let bench = Bench::default();
    setting(formula, &bench).swap(&[line_of(formula, old)], &enough(new), &mut Makeups::default())
}

#[test]
fn another_strength_brings_the_same() {
    let lotion = lotion();
    let version = swap(&lotion, "Panthenol 75 % solution", &["Panthenol, DL powder"]).unwrap();
    assert_eq!(share(&version.formula, "Panthenol, DL powder"), dec!(1.5));
    assert_eq!((version.went.len(), version.came.len()), (1, 1));
    assert!(version.answer.missed(dec!(0.01)).next().is_none(), "{:?}", version.answer.wishes);
    // It stands where the other stood.
    let place = lotion.place_of(line_of(&lotion, "Panthenol 75 % solution"));
    assert_eq!(version.formula.place_of(version.came[0]), place);
}

#[test]
fn the_glycerite_becomes_glycerin_and_water_and_what_the_plant_gave_is_missed() {
    let lotion = lotion();
    let version =
        swap(&lotion, "Cucumber glycerite 65 % glycerin", &["Glycerin, vegetable", "Water, distilled"]).unwrap();
    assert_eq!(share(&version.formula, "Glycerin, vegetable"), dec!(6.25));
    assert!(version.came.is_empty(), "glycerin and water are there already");
    let missed: Vec<_> = version.answer.missed(dec!(0.01)).collect();
    assert!(missed.iter().any(|met| met.off() < Decimal::ZERO), "the extract is gone: {missed:?}");
}

#[test]
fn a_composite_comes_apart_into_what_it_is_made_of_and_together_again() {
    let lotion = lotion();
    let bench = Bench::default();
    let mut makeups = Makeups::default();
    let line = line_of(&lotion, "Cetearyl olivate and sorbitan olivate");
    let apart = setting(&lotion, &bench).take_apart(line, &mut makeups).unwrap();
    assert_eq!(
        (share(&apart.formula, "Cetearyl olivate"), share(&apart.formula, "Sorbitan olivate")),
        (dec!(2.4), dec!(1.6))
    );
    assert!(apart.answer.deviation.is_zero());
    let simples = ["Cetearyl olivate", "Sorbitan olivate"].map(|name| line_of(&apart.formula, name));
    let composite = enough(&["Cetearyl olivate and sorbitan olivate"]);
    let together = setting(&apart.formula, &bench).swap(&simples, &composite, &mut makeups).unwrap();
    assert_eq!(share(&together.formula, "Cetearyl olivate and sorbitan olivate"), dec!(4));
    assert!(together.answer.deviation.is_zero());
}

#[test]
fn a_swap_by_the_same_material_changes_nothing() {
    let lotion = lotion();
    for line in lotion.lines().collect::<Vec<_>>() {
        let name = &Catalogue::get().material(line.material).unwrap().name;
        let version = swap(&lotion, name, &[name]).unwrap();
        assert_eq!(version.formula, lotion, "{name}");
        assert!(version.answer.deviation.is_zero() && version.changed.is_empty());
    }
}

#[test]
fn a_shelf_without_the_emulsifier_gets_one_that_does_its_job() {
    let lotion = lotion();
    let (bench, mut makeups) = (Bench::default(), Makeups::default());
    let shelf = [
        "Water, distilled",
        "Glycerin, vegetable",
        "Xanthan gum",
        "Cetearyl alcohol and cetearyl glucoside",
        "Sweet almond oil",
        "Cetearyl alcohol",
        "Panthenol, DL powder",
        "Phenoxyethanol 90, ethylhexylglycerin 10",
        "Squalane",
        "Lactic acid 80 % solution",
    ];
    let at_hand = enough(&shelf);
    let line = line_of(&lotion, "Cetearyl olivate and sorbitan olivate");
    let old = lotion.line(line).unwrap().material;
    let ranked = substitutes(
        old,
        at_hand.iter().map(|each| each.material),
        Some(5.5),
        Catalogue::get(),
        knowledge(),
        groups(),
        &mut makeups,
    );
    assert_eq!(ranked.first().map(|it| it.material), Some(material("Cetearyl alcohol and cetearyl glucoside")));
    let brings = makeups.see_through(ranked[0].material, Catalogue::get()).unwrap().constituents.clone();
    let stand_in = StandIn { line, material: ranked[0].material, percent: dec!(4), dose: None, brings };
    let version = setting(&lotion, &bench).rebuild(&at_hand, &[stand_in], Aim::Closest, &mut makeups).unwrap();
    let (after, before) = (findings(&version.formula), findings(&lotion));
    assert!(
        share(&version.formula, "Cetearyl alcohol and cetearyl glucoside") >= dec!(3),
        "{:?}",
        version.answer.portions
    );
    assert_eq!(share(&version.formula, "Panthenol, DL powder"), dec!(1.5));
    let bad = |found: &[Finding]| found.iter().filter(|each| each.severity == Severity::Stop).count();
    assert!(bad(&after) <= bad(&before), "{after:#?}");
    assert!(version.formula.lines().all(|line| at_hand.iter().any(|each| each.material == line.material)));
}

#[test]
fn lines_are_brought_to_a_figure() {
    let lotion = lotion();
    let (bench, mut makeups) = (Bench::default(), Makeups::default());
    let setting = setting(&lotion, &bench);
    let glycerin = Catalogue::get().constituents().find(|each| each.inci == "Glycerin").unwrap().id;
    let line = line_of(&lotion, "Glycerin, vegetable");
    let version = setting.hit(Figure::Substance(glycerin, percent("8")), dec!(0.01), &[line], &mut makeups).unwrap();
    assert_eq!(share(&version.formula, "Glycerin, vegetable"), dec!(4.75));
    assert_eq!(version.changed.len(), 2, "glycerin and the water");
    let oil = line_of(&lotion, "Sweet almond oil");
    let version = setting.hit(Figure::Oil(percent("10")), dec!(0.01), &[oil], &mut makeups).unwrap();
    assert!(share(&version.formula, "Sweet almond oil") < dec!(9));
    let density = Figure::Density(Density::new(dec!(1.01)).unwrap());
    let version = setting.hit(density, dec!(0.001), &[line], &mut makeups).unwrap();
    let evaluation = evaluate(&version.formula, &bench, Catalogue::get(), &mut makeups);
    let got = evaluation.density.unwrap().density.value();
    assert!((got - dec!(1.01)).abs() <= dec!(0.0011), "{got}");
    // More than nothing but this line could bring.
    let too_much = setting.hit(Figure::Oil(percent("99")), dec!(0.01), &[oil], &mut makeups);
    assert!(matches!(too_much, Err(NoAnswer::Conflict(_))), "{too_much:?}");
}

#[test]
fn the_balance_of_a_pair_is_set_as_alligation_sets_it() {
    use PhaseKind::{CoolDown, HeatedOil, HeatedWater};
    let formula = formula(&[
        (HeatedWater, "Water, distilled", QS),
        (HeatedOil, "Mineral oil", "20"),
        (HeatedOil, "Polysorbate 80", "2"),
        (HeatedOil, "Sorbitan oleate", "2"),
        (CoolDown, "Phenoxyethanol 90, ethylhexylglycerin 10", "1"),
    ]);
    let (bench, mut makeups) = (Bench::default(), Makeups::default());
    let lines = ["Polysorbate 80", "Sorbitan oleate"].map(|name| line_of(&formula, name));
    // (x 15.0 + y 4.3) / (x + y) = 10.5: about 58 parts to 42 (Griffin).
    let version = setting(&formula, &bench).hit(Figure::Balance(dec!(10.5)), dec!(0.1), &lines, &mut makeups).unwrap();
    let (high, low) = (share(&version.formula, "Polysorbate 80"), share(&version.formula, "Sorbitan oleate"));
    let balance = (high * dec!(15.0) + low * dec!(4.3)) / (high + low);
    assert!((balance - dec!(10.5)).abs() <= dec!(0.1), "{balance}");
}

#[test]
fn an_opposite_or_a_lack_is_named() {
    let lotion = lotion();
    let (bench, mut makeups) = (Bench::default(), Makeups::default());
    // No emulsifier at all on the shelf: that it must hold the oil is in the way.
    let at_hand = enough(&[
        "Water, distilled",
        "Glycerin, vegetable",
        "Sweet almond oil",
        "Phenoxyethanol 90, ethylhexylglycerin 10",
    ]);
    let version = setting(&lotion, &bench).rebuild(&at_hand, &[], Aim::Closest, &mut makeups);
    // Nothing holds oil, so none may be there: the answer leaves it out and says what is missed.
    let missed = version.as_ref().map(|it| it.answer.missed(dec!(1)).count());
    assert!(missed.is_ok_and(|count| count > 0), "{version:?}");
}
