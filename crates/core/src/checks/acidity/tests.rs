use super::curves::{acts_over_ph, ph_over_added, speciation};
use super::drift::{Cause, drift};
use super::free_acid::free_acids;
use super::neutralising::{neutralise, takers};
use super::setting::{NEAR, Setting, buffer, set};
use crate::checks::bench::Bench;
use crate::checks::contents::{Conditions, Contents, PhKnown};
use crate::chemistry::ph::predict::predict;
use crate::composition::Makeups;
use crate::evaluation::{self, evaluate};
use crate::formula::Formula;
use crate::quantity::{Grams, Percent};
use proptest::prelude::*;
use rust_decimal::{Decimal, dec};

/// Asks something of a formula worked out with the bench's substances.
fn with<T>(bench: &Bench, formula: &Formula, ask: impl FnOnce(&Contents<'_>, &mut Makeups) -> T) -> T {
    let mut makeups = Makeups::default();
    let evaluation = evaluate(formula, &evaluation::Bench::default(), bench, &mut makeups);
    ask(&Contents::new(formula, &evaluation, bench, bench, Conditions::default()), &mut makeups)
}

fn predicted(bench: &Bench, formula: &Formula) -> f64 {
    with(bench, formula, |contents, _| predict(&contents.dissolved()).unwrap().ph.estimate)
}

fn set_with(bench: &Bench, formula: &Formula, inci: &str, target: f64) -> Setting {
    with(bench, formula, |contents, makeups| set(contents, makeups, bench.material(inci), target).unwrap())
}

fn made(formula: &Formula, setting: &Setting) -> Formula {
    let mut formula = formula.clone();
    formula.make_changes(&setting.changes, |_| "phase".to_owned());
    formula
}

#[test]
fn what_is_measured_comes_before_what_is_aimed_at_and_that_before_what_is_predicted() {
    let bench = Bench::new();
    let mut formula = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Citric Acid", "0.2")]);
    let known = |formula: &Formula| with(&bench, formula, |contents, _| contents.ph().unwrap());
    let ph = known(&formula);
    assert!(ph.known == PhKnown::Predicted && ph.low() < ph.value && ph.value < ph.high(), "{ph:?}");
    formula.target_ph = Some(bench.ph("5"));
    assert_eq!(known(&formula).known, PhKnown::AimedAt);
    formula.measured_ph = Some(bench.ph("4.4"));
    assert_eq!(known(&formula).known, PhKnown::Measured);
    // Measured, the unknown is calibrated by it; what it comes to as it is written stands beside.
    with(&bench, &formula, |contents, _| {
        let calibrated = predict(&contents.calibrated().unwrap()).unwrap().ph;
        assert!((calibrated.estimate - 4.4).abs() < 1e-3);
        assert!(contents.prediction().unwrap().ph.high < 4.4);
    });
}

#[test]
fn a_wide_band_decides_nothing() {
    let bench = Bench::new();
    let formula = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Hydrolyzed Oats", "2")]);
    with(&bench, &formula, |contents, _| {
        assert!(contents.ph().is_none());
        let band = contents.prediction().unwrap().ph;
        assert!(band.high - band.low > super::MOST_WIDTH);
    });
}

#[test]
fn what_does_not_dissolve_lowers_no_ph() {
    let bench = Bench::new();
    let at = |percent: &str| {
        let formula = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Citric Acid", percent)]);
        with(&bench, &formula, |contents, _| contents.prediction().unwrap().ph.estimate)
    };
    // All benzoate as acid would be 0.34 %, and 0.34 g dissolve in 100 g of water, of which a part is dissociated there:
    // much citric acid brings benzoic acid out, and what lies undissolved is no acid any more.
    let all = |percent: &str| {
        let formula = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Citric Acid", percent)]);
        with(&bench, &formula, |contents, _| predict(&contents.dissolved()).unwrap().ph.estimate)
    };
    assert!((at("0.1") - all("0.1")).abs() < 1e-9);
    assert!(at("5") > all("5") + 1e-4, "{} {}", at("5"), all("5"));
}

#[test]
fn a_line_that_is_there_changes_and_another_is_added() {
    let bench = Bench::new();
    let formula = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Citric Acid", "0.2")]);
    let less = set_with(&bench, &formula, "Citric Acid", 5.0);
    assert!(less.line.is_some() && less.percent < less.before && (less.reached.ph.estimate - 5.0).abs() <= NEAR);
    let lye = set_with(&bench, &formula, "Sodium Hydroxide", 5.0);
    assert!(lye.line.is_none() && lye.caustic && !less.caustic);
    // 0.2 g of citric acid is 1.04 mmol; at pH 5 it has lost about 1.65 protons less what benzoate takes: 0.05 to 0.07 g.
    let grams = lye.percent.to_physics();
    assert!((0.05..0.07).contains(&grams), "{grams}");
    for setting in [&less, &lye] {
        let after = made(&formula, setting);
        assert!(after.balance().is_sound(), "the q.s. line takes up the difference exactly");
        assert!((predicted(&bench, &after) - 5.0).abs() <= NEAR);
        assert_eq!(after.target_ph, Some(bench.ph("5")));
    }
    // As a 10 % solution it is ten times as much, and in 250 g of batch two and a half times that.
    let ten = Percent::new(dec!(10)).unwrap();
    assert_eq!(lye.as_solution(ten).unwrap().value(), (lye.percent.value() * dec!(10)).round_dp(lye.decimals + 1));
    let batch = Grams::new(dec!(250)).unwrap();
    assert_eq!(lye.grams_of_solution(ten, batch).unwrap().value(), lye.percent.value() * dec!(25));
    assert_eq!(lye.as_solution(Percent::new(dec!(0.01)).unwrap()).unwrap_err().code(), "set.too-much");
}

#[test]
fn what_cannot_set_a_ph_says_why() {
    let bench = Bench::new();
    let formula = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Citric Acid", "0.2")]);
    let code = |inci: &str, target: f64| {
        with(&bench, &formula, |contents, makeups| {
            set(contents, makeups, bench.material(inci), target).map_err(|error| error.code())
        })
    };
    assert_eq!(code("Glycerin", 5.0).unwrap_err(), "set.no-data");
    assert_eq!(code("Sodium Hydroxide", 3.0).unwrap_err(), "ph.unreachable");
    assert_eq!(code("Triethanolamine", 12.5).unwrap_err(), "ph.unreachable");
    assert_eq!(code("Sodium Hydroxide", 15.0).unwrap_err(), "ph.amount");
    let full = bench.formula(&[(crate::PhaseKind::RoomTemperature, &[("Glycerin", "50"), ("Aqua", "50")])]);
    let setting = set_with(&bench, &full, "Sodium Hydroxide", 9.0);
    assert!(made(&full, &setting).balance().is_sound(), "without a q.s. line the water gives way");
}

#[test]
fn bicarbonate_says_its_gas() {
    let bench = Bench::new();
    let formula = bench.water_with(&[("Citric Acid", "1")]);
    let setting = set_with(&bench, &formula, "Sodium Bicarbonate", 5.0);
    let gas = setting.gas.unwrap();
    // A mole of bicarbonate, 84.01 g, gives 44.01 g or 24.5 litres.
    let moles = setting.percent.to_physics() / 84.01;
    assert!((gas.grams - moles * 44.01).abs() < 1e-3 && (gas.litres - moles * 24.5).abs() < 1e-3, "{gas:?}");
    assert!(set_with(&bench, &formula, "Sodium Hydroxide", 5.0).gas.is_none());
}

#[test]
fn a_buffer_in_a_formula_holds_as_it_was_asked_to() {
    let bench = Bench::new();
    let formula = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Glycerin", "3")]);
    let pair = [bench.material("Citric Acid"), bench.material("Sodium Hydroxide")];
    let made = with(&bench, &formula, |contents, makeups| buffer(contents, makeups, pair, 5.0, 0.03).unwrap());
    let mut after = formula;
    after.make_changes(&made.changes, |_| "phase".to_owned());
    assert!(after.balance().is_sound());
    with(&bench, &after, |contents, _| {
        let there = predict(&contents.dissolved()).unwrap();
        assert!((there.ph.estimate - 5.0).abs() <= NEAR, "{there:?}");
        assert!((there.equilibrium.capacity / 0.03 - 1.0).abs() < 0.02, "{there:?}");
    });
}

#[test]
fn a_buffer_that_is_there_already_is_only_set() {
    let bench = Bench::new();
    let formula = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Glycerin", "3")]);
    let pair = [bench.material("Citric Acid"), bench.material("Sodium Hydroxide")];
    let made = with(&bench, &formula, |contents, makeups| buffer(contents, makeups, pair, 4.5, 1e-4).unwrap());
    assert!(made.capacity > 1e-3 && (made.reached.ph.estimate - 4.5).abs() <= NEAR, "{made:?}");
}

#[test]
fn carbomer_takes_four_parts_of_lye_to_ten() {
    let bench = Bench::new();
    let formula = bench.water_with(&[("Carbomer", "0.5"), ("Phenoxyethanol", "0.9")]);
    let carbomer = bench.constituent("Carbomer");
    let by = |inci: &str, degree: f64| {
        with(&bench, &formula, |contents, makeups| {
            neutralise(contents, makeups, carbomer, bench.material(inci), degree)
        })
    };
    let lye = by("Sodium Hydroxide", 1.0).unwrap();
    assert_eq!((lye.percent.value(), lye.caustic), (dec!(0.2), true));
    assert_eq!(lye.ph.map(|band| (band.low, band.high)), Some((6.5, 7.5)));
    // As many mols of triethanolamine: 149.19 / 40 times as much, about one and a half parts to one.
    let amine = by("Triethanolamine", 1.0).unwrap();
    assert_eq!((amine.percent.value(), amine.caustic), (dec!(0.74), false));
    assert!(by("Sodium Hydroxide", 0.5).unwrap().ph.is_none());
    assert_eq!(by("Citric Acid", 1.0).unwrap_err().code(), "set.no-data");
    let water = bench.constituent("Aqua");
    let none = with(&bench, &formula, |contents, makeups| {
        neutralise(contents, makeups, water, bench.material("Sodium Hydroxide"), 1.0)
    });
    assert_eq!(none.unwrap_err().code(), "set.no-data");
    assert_eq!(with(&bench, &formula, |contents, _| takers(contents))[0].0, carbomer);
}

#[test]
fn citric_acid_takes_three_times_its_mols_and_bicarbonate_gives_them_with_gas() {
    let bench = Bench::new();
    let formula = bench.water_with(&[("Citric Acid", "1.9212")]);
    let citric = bench.constituent("Citric Acid");
    let by = |inci: &str| {
        let material = bench.material(inci);
        with(&bench, &formula, |contents, makeups| neutralise(contents, makeups, citric, material, 1.0).unwrap())
    };
    // 10 mmol in 100 g take 30 mmol: 1.2 g of sodium hydroxide, or 2.52 g of bicarbonate and 1.32 g of gas.
    assert_eq!(by("Sodium Hydroxide").percent.value(), dec!(1.2));
    let bicarbonate = by("Sodium Bicarbonate");
    assert_eq!(bicarbonate.percent.value(), dec!(2.52));
    assert!((bicarbonate.gas.unwrap().grams - 1.3203).abs() < 1e-3);
}

#[test]
fn what_is_released_moves_what_hardly_buffers_most_and_findings_come_and_go() {
    let bench = Bench::new();
    let mut plain = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Phenoxyethanol", "0.9")]);
    plain.target_ph = Some(bench.ph("5.6"));
    let mut held = bench.water_with(&[
        ("Sodium Benzoate", "0.4"),
        ("Phenoxyethanol", "0.9"),
        ("Citric Acid", "1"),
        ("Sodium Hydroxide", "0.5"),
    ]);
    held.target_ph = Some(bench.ph("5.6"));
    let drifts =
        |formula: &Formula, cause| with(&bench, formula, |contents, _| drift(contents, cause).unwrap().unwrap());
    let (free, kept) = (drifts(&plain, Cause::Acid(0.1)), drifts(&held, Cause::Acid(0.1)));
    let fall = |drift: &super::drift::Drift| drift.before.value - drift.after.value;
    assert!(fall(&free) > 0.8 && fall(&kept) < 0.35 && fall(&kept) > 0.05, "{} {}", fall(&free), fall(&kept));
    assert!(kept.capacity > 5.0 * free.capacity);
    // More of the benzoate acts then: a gap closes, and nothing gets worse by it.
    assert!(free.go.iter().any(|each| each.code.starts_with("preservation.")), "{free:?}");
    let urea = drifts(&plain, Cause::Urea(0.1));
    assert!(urea.after.value > 6.5 && !urea.appear.is_empty(), "{urea:?}");
    let air = drifts(&plain, Cause::Air);
    assert!(air.after.value <= air.before.value && air.before.value - air.after.value < 0.2, "{air:?}");
}

/// Pure water under air has pH 5.6 (a textbook's number; memory).
#[test]
fn water_under_air_is_where_textbooks_have_it() {
    let bench = Bench::new();
    let mut formula = bench.water_with(&[]);
    formula.measured_ph = Some(bench.ph("7"));
    let air = with(&bench, &formula, |contents, _| drift(contents, Cause::Air).unwrap().unwrap());
    assert!((air.after.value - 5.6).abs() < 0.05, "{air:?}");
}

#[test]
fn free_acid_is_held_against_the_figures() {
    let bench = Bench::new();
    let mut formula = bench.water_with(&[("Glycolic Acid", "8"), ("Sodium Hydroxide", "1.5")]);
    formula.target_ph = Some(bench.ph("3.83"));
    with(&bench, &formula, |contents, _| {
        let found = free_acids(contents);
        let glycolic = &found[0];
        // At its pKa half of it is free.
        assert!((glycolic.free - 4.0).abs() < 1e-9 && glycolic.least < 4.0 && glycolic.most > 4.0, "{glycolic:?}");
        assert!(glycolic.figures.iter().any(|figure| figure.limit.least_ph.is_some()), "{glycolic:?}");
        for figure in &glycolic.figures {
            assert!((figure.counted - 8.0).abs() < 1e-9);
            if let Some(free) = figure.free_at_bound {
                assert!(free > 0.0 && free <= figure.bound);
            }
        }
    });
    let mut salicylic = bench.water_with(&[("Salicylic Acid", "0.2")]);
    salicylic.target_ph = Some(bench.ph("2.97"));
    with(&bench, &salicylic, |contents, _| {
        let found = free_acids(contents);
        assert!((found[0].free - 0.1).abs() < 1e-9);
        assert_eq!(found[0].us_drug.map(|figure| (figure.value.low, figure.value.high)), Some((0.5, 2.0)));
    });
}

#[test]
fn curves_are_points_that_rise_and_fall_as_they_must() {
    let bench = Bench::new();
    let mut formula =
        bench.water_with(&[("Sodium Benzoate", "0.4"), ("Phenoxyethanol", "0.9"), ("Citric Acid", "0.3")]);
    let lye = bench.material("Sodium Hydroxide");
    let half = Percent::new(dec!(0.5)).unwrap();
    let curve = with(&bench, &formula, |contents, makeups| ph_over_added(contents, makeups, lye, half).unwrap());
    assert!(curve.len() > 50 && curve.windows(2).all(|pair| pair[0].0 < pair[1].0 && pair[0].1 < pair[1].1));
    assert!((curve[0].1 - predicted(&bench, &formula)).abs() < 1e-6);
    formula.target_ph = Some(bench.ph("4.2"));
    with(&bench, &formula, |contents, _| {
        let forms = speciation(contents, bench.constituent("Sodium Benzoate")).unwrap();
        assert_eq!((forms.acid, forms.forms.len(), forms.ph), (bench.constituent("Benzoic Acid"), 2, Some(4.2)));
        for (acid, base) in forms.forms[0].iter().zip(&forms.forms[1]) {
            assert!((acid.1 + base.1 - 1.0).abs() < 1e-12);
        }
        assert!((forms.forms[0][42].1 - 0.5).abs() < 1e-9);
        let acts = acts_over_ph(contents);
        assert_eq!(acts.len(), 2);
        let benzoate = acts.iter().find(|each| each.substance == bench.constituent("Sodium Benzoate")).unwrap();
        assert!(benzoate.acts.windows(2).all(|pair| pair[0].1 >= pair[1].1) && benzoate.window.is_some());
    });
}

fn percent(thousandths: u32) -> String {
    Decimal::new(i64::from(thousandths), 3).to_string()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Set and then predicted, the pH is the target within 0.01, and the formula still makes 100 %, whatever stands in it.
    #[test]
    fn what_is_set_in_a_formula_is_predicted(
        benzoate in 0_u32..800,
        citric in 0_u32..2000,
        glycerin in 0_u32..20_000,
        target in 30_u32..90,
        material in prop::sample::select(&["Citric Acid", "Sodium Hydroxide", "Triethanolamine", "Sodium Bicarbonate"][..]),
    ) {
        let bench = Bench::new();
        let (benzoate, citric, glycerin) = (percent(benzoate), percent(citric), percent(glycerin));
        let formula = bench.water_with(&[("Sodium Benzoate", &benzoate), ("Citric Acid", &citric), ("Glycerin", &glycerin)]);
        let target = f64::from(target) / 10.0;
        let setting = with(&bench, &formula, |contents, makeups| set(contents, makeups, bench.material(material), target));
        if let Ok(setting) = setting {
            let after = made(&formula, &setting);
            prop_assert!(after.balance().is_sound());
            let there = predicted(&bench, &after);
            // Where hardly anything buffers the sixth decimal of a percent is too coarse; it says so by its decimals.
            let near = (there - target).abs() <= NEAR + 1e-6 || setting.decimals == 6;
            prop_assert!(near, "{there} for {target}: {setting:?}");
            prop_assert!((there - setting.reached.ph.estimate).abs() < 1e-6);
        }
    }

    /// The order of the lines changes nothing, and neither does the phase they stand in.
    #[test]
    fn the_order_of_lines_changes_no_ph(shuffled in Just(vec![0_usize, 1, 2, 3]).prop_shuffle(), citric in 10_u32..500) {
        let bench = Bench::new();
        let citric = percent(citric);
        let lines = [("Sodium Benzoate", "0.4"), ("Citric Acid", citric.as_str()), ("Glycerin", "3"), ("Phenoxyethanol", "0.9")];
        let straight = predicted(&bench, &bench.water_with(&lines));
        let other: Vec<_> = shuffled.iter().map(|at| lines[*at]).collect();
        prop_assert!((predicted(&bench, &bench.water_with(&other)) - straight).abs() < 1e-9);
    }

    /// More acid among the lines never raises the pH.
    #[test]
    fn more_acid_in_a_formula_never_raises_its_ph(benzoate in 0_u32..800, citric in 0_u32..2000, more in 1_u32..2000) {
        let bench = Bench::new();
        let benzoate = percent(benzoate);
        let at = |citric: u32| {
            let citric = percent(citric);
            predicted(&bench, &bench.water_with(&[("Sodium Benzoate", &benzoate), ("Citric Acid", &citric)]))
        };
        prop_assert!(at(citric + more) <= at(citric) + 1e-9);
    }
}
