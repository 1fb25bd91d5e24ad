//! The pH of formulas made of the catalogue: predicted, set, and what checks then say.

use rust_decimal::Decimal;
use stillroom_catalogue::{Catalogue, knowledge};
use stillroom_core::checks::acidity::neutralising::neutralise;
use stillroom_core::checks::acidity::setting::{NEAR, set};
use stillroom_core::checks::facts::Knowledge as _;
use stillroom_core::checks::{Conditions, Contents, Finding, PhKnown, check};
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::{Bench, evaluate};
use stillroom_core::{Amount, ConstituentId, Formula, MaterialId, Percent, Ph, PhaseKind};

fn constituent(inci: &str) -> ConstituentId {
    let found = Catalogue::get().constituents().find(|constituent| constituent.inci.as_str() == inci);
    found.unwrap_or_else(|| panic!("no {inci}")).id
}

fn material(inci: &str) -> MaterialId {
    knowledge().material_of(constituent(inci)).unwrap_or_else(|| panic!("nothing brings {inci}"))
}

fn formula(lines: &[(&str, &str)]) -> Formula {
    let mut formula = Formula::with_name("test");
    let phase = formula.add_phase("water", PhaseKind::RoomTemperature, None);
    formula.add_line(phase, material("Aqua"), Amount::QuantumSatis);
    for (inci, percent) in lines {
        let percent = Percent::new(Decimal::from_str_exact(percent).unwrap()).unwrap();
        formula.add_line(phase, material(inci), Amount::Percent(percent));
    }
    formula
}

fn with<T>(formula: &Formula, ask: impl FnOnce(&Contents<'_>, &mut Makeups) -> T) -> T {
    let mut makeups = Makeups::default();
    let evaluation = evaluate(formula, &Bench::default(), Catalogue::get(), &mut makeups);
    ask(&Contents::new(formula, &evaluation, Catalogue::get(), knowledge(), Conditions::default()), &mut makeups)
}

fn ph(text: &str) -> Option<Ph> {
    Ph::new(Decimal::from_str_exact(text).unwrap()).ok()
}

fn codes(formula: &Formula) -> Vec<(&'static str, String)> {
    let findings: Vec<Finding> = with(formula, |contents, _| check(contents));
    findings.into_iter().map(|finding| (finding.code, finding.subject)).collect()
}

const GEL_CREAM: [(&str, &str); 8] = [
    ("Sodium Benzoate", "0.5"),
    ("Potassium Sorbate", "0.3"),
    ("Citric Acid", "0.1"),
    ("Niacinamide", "3"),
    ("Glycerin", "4"),
    ("Rosa Damascena Flower Water", "10"),
    ("Calendula Officinalis Flower Extract", "0.1"),
    ("Prunus Amygdalus Dulcis Oil", "10"),
];

#[test]
fn a_gel_cream_is_predicted_its_unknowns_named_and_its_target_reached() {
    let mut cream = formula(&GEL_CREAM);
    with(&cream, |contents, _| {
        let before = contents.prediction().unwrap();
        assert!((4.5..6.0).contains(&before.ph.estimate), "{:?}", before.ph);
        assert!(before.ph.low < before.ph.estimate && before.ph.estimate < before.ph.high);
        let named: Vec<ConstituentId> = contents.moves().unwrap().iter().map(|each| each.id).collect();
        for inci in ["Rosa Damascena Flower Water", "Calendula Officinalis Flower Extract"] {
            assert!(named.contains(&constituent(inci)), "{inci}");
        }
    });
    cream.target_ph = ph("4.5");
    let setting = with(&cream, |contents, makeups| set(contents, makeups, material("Citric Acid"), 4.5).unwrap());
    cream.make_changes(&setting.changes, |_| String::new());
    assert!(cream.balance().is_sound());
    with(&cream, |contents, _| {
        let after = contents.prediction().unwrap().ph;
        assert!((after.estimate - 4.5).abs() <= NEAR, "{after:?}");
    });
}

/// Measured at 6.4 the benzoate hardly acts; brought to 5.0 it does, and what was said of it is gone.
#[test]
fn brought_to_its_ph_a_preservative_acts() {
    let mut cream = formula(&GEL_CREAM);
    (cream.target_ph, cream.measured_ph) = (ph("5"), ph("6.4"));
    let before = codes(&cream);
    assert!(before.iter().any(|(code, _)| *code == "stability.ph-off-target"), "{before:?}");
    assert!(before.iter().any(|(code, _)| *code == "preservation.undissociated"), "{before:?}");
    let setting = with(&cream, |contents, makeups| set(contents, makeups, material("Citric Acid"), 5.0).unwrap());
    assert!(setting.percent > setting.before);
    cream.make_changes(&setting.changes, |_| String::new());
    assert_eq!((cream.target_ph, cream.measured_ph), (ph("5"), None));
    let after = codes(&cream);
    let acts = |all: &[(&str, String)]| all.iter().filter(|(code, _)| *code == "preservation.undissociated").count();
    assert!(acts(&after) < acts(&before), "{after:?}");
}

/// Stock solutions that the catalogue has set a pH as their substance does: ten times as much of 10 %.
#[test]
fn a_stock_solution_sets_a_ph_as_what_is_in_it() {
    let toner = formula(&[("Lactic Acid", "2"), ("Glycerin", "3")]);
    let lye = Catalogue::get().materials().find(|each| each.name == "Sodium hydroxide 10 % solution").unwrap().id;
    let (pure, dissolved) = with(&toner, |contents, makeups| {
        let mut with = |material| set(contents, makeups, material, 4.0).unwrap();
        (with(material("Sodium Hydroxide")), with(lye))
    });
    assert!((dissolved.exact / pure.exact - 10.0).abs() < 1e-3, "{} {}", dissolved.exact, pure.exact);
    assert!(pure.caustic && dissolved.caustic);
}

/// Acid value of stearic acid: 197 mg of potassium hydroxide to a gram (56.106 / 284.48, molar masses of IUPAC's standard
/// atomic weights). A cream in which a fifth of it is turned to soap takes a fifth of that.
#[test]
fn stearic_acid_takes_its_acid_value() {
    let cream = formula(&[("Stearic Acid", "15"), ("Glycerin", "5")]);
    let by = |base: &str, degree: f64| {
        with(&cream, |contents, makeups| {
            neutralise(contents, makeups, constituent("Stearic Acid"), material(base), degree).unwrap()
        })
    };
    let grams = |base: &str, degree: f64| by(base, degree).percent.to_physics();
    let potash = 15.0 * 0.197_22 * 0.2;
    assert!((grams("Potassium Hydroxide", 0.2) - potash).abs() <= 0.01);
    for (base, molar_mass) in [
        ("Sodium Hydroxide", 39.997),
        ("Triethanolamine", 149.19),
        ("Tromethamine", 121.14),
        ("Arginine", 174.2),
        ("Sodium Bicarbonate", 84.007),
    ] {
        let expected = potash / 56.106 * molar_mass;
        assert!((grams(base, 0.2) - expected).abs() <= 0.011, "{base}: {} for {expected}", grams(base, 0.2));
    }
    let bicarbonate = by("Sodium Bicarbonate", 0.2);
    assert!(bicarbonate.gas.is_some_and(|gas| gas.grams > 0.4));
    // A vanishing cream stands between pH 6 and 10.
    assert!(by("Triethanolamine", 0.2).ph.is_some_and(|band| band.low > 5.0 && band.high < 10.5));
}

#[test]
fn without_a_stated_ph_a_peel_is_judged_by_what_it_comes_to() {
    let peel = formula(&[("Glycolic Acid", "9"), ("Phenoxyethanol", "0.9")]);
    with(&peel, |contents, _| assert_eq!(contents.ph().unwrap().known, PhKnown::Predicted));
    let found = codes(&peel);
    assert!(found.iter().any(|(code, _)| *code == "limits.aha-ph"), "{found:?}");
    assert!(found.iter().all(|(code, _)| *code != "limits.aha-no-ph"), "{found:?}");
}

/// A saturated solution of salicylic acid has pH 2.4 (Merck Index; memory), however much of it lies at the bottom.
#[test]
fn what_lies_undissolved_lowers_no_ph() {
    let at =
        |percent: &str| with(&formula(&[("Salicylic Acid", percent)]), |contents, _| contents.prediction().unwrap().ph);
    for percent in ["0.5", "2", "10"] {
        let band = at(percent);
        assert!((band.estimate - 2.4).abs() < 0.1 && band.low < 2.4 && 2.4 < band.high, "{percent}: {band:?}");
    }
    assert!(at("0.05").estimate > 2.6);
}

/// Every acid, base and salt of the catalogue with data sets a pH, or says why it cannot, without a failure.
#[test]
fn whatever_the_catalogue_has_sets_a_ph_or_says_why_not() {
    let cream = formula(&GEL_CREAM);
    let mut set_it = 0;
    for constituent in Catalogue::get().constituents() {
        let Some(material) = knowledge().material_of(constituent.id) else { continue };
        if knowledge().facts(constituent.id).is_none_or(|facts| facts.brings.is_none()) {
            continue;
        }
        for target in [3.5, 5.0, 7.0] {
            let answer = with(&cream, |contents, makeups| set(contents, makeups, material, target));
            if let Ok(setting) = answer {
                set_it += 1;
                let reached = setting.reached.ph.estimate;
                assert!((reached - target).abs() <= NEAR + 1e-6, "{}: {reached} for {target}", constituent.inci);
            }
        }
    }
    assert!(set_it >= 40, "{set_it}");
}
