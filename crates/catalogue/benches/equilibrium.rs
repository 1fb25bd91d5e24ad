//! The pH of formulas: an equilibrium, the band, what decides it, and an amount that reaches a target.

use rust_decimal::Decimal;
use std::hint::black_box;
use std::time::{Duration, Instant};
use stillroom_catalogue::acids::acids;
use stillroom_catalogue::{Catalogue, knowledge};
use stillroom_core::checks::facts::Knowledge as _;
use stillroom_core::checks::{self, Conditions};
use stillroom_core::chemistry::Temperature;
use stillroom_core::chemistry::ph::predict::{Contents, Known, deciders, predict};
use stillroom_core::chemistry::ph::{Cation, Solution, Solver, set};
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::{Bench, evaluate};
use stillroom_core::{Amount, ConstituentId, Formula, Percent, PhaseKind};

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort();
    times.get(times.len() / 2).copied().unwrap_or_default()
}

fn time<T>(what: &str, mut work: impl FnMut() -> T) {
    // Twenty at a time: one alone is not much longer than reading the clock.
    let times = (0..200).map(|_| {
        let start = Instant::now();
        for _ in 0..20 {
            black_box(work());
        }
        start.elapsed() / 20
    });
    println!("{what:<60}{:>12.3?}", median(times.collect()));
}

fn main() {
    let acid = |name: &str| acids().get(name).unwrap_or_else(|| panic!("no acid `{name}`"));
    let nothing = || Solution::in_water(0.0);
    // A gel cream per kg: benzoate and sorbate, citric acid, EDTA, PCA, lactate, niacinamide.
    let known: Vec<_> = [
        nothing().with(acid("benzoic acid"), 0.0347).with_cation(Cation::Sodium, 0.0347),
        nothing().with(acid("sorbic acid"), 0.02).with_cation(Cation::Potassium, 0.02),
        nothing().with(acid("citric acid"), 0.0104),
        nothing().with(acid("EDTA"), 0.003).with_cation(Cation::Sodium, 0.006),
        nothing().with(acid("PCA"), 0.1).with_cation(Cation::Sodium, 0.1),
        nothing().with(acid("lactic acid"), 0.05).with_cation(Cation::Sodium, 0.04),
        nothing().with(acid("niacinamide"), 0.3),
    ]
    .into_iter()
    .zip(0..)
    .map(|(brings, number)| Known { id: ConstituentId::Catalogue(number), brings, spread: 0.03 })
    .collect();
    let contents = Contents {
        product: 1.0,
        water: 0.8,
        cosolvents: 0.03,
        known,
        unknown: Vec::new(),
        unaccounted: None,
        temperature: Temperature::TWENTY_FIVE,
    };
    let mut whole = Solution::in_water(contents.water);
    for known in &contents.known {
        whole.add_solution(&known.brings, 1.0);
    }
    let lye = Solution::in_water(0.9).with_cation(Cation::Sodium, 2.5);
    let room = Temperature::TWENTY_FIVE;
    time("prepare and solve seven constituents", || Solver::new(&[&whole], room).and_then(|mut solver| solver.solve()));
    if let Ok(mut solver) = Solver::new(&[&whole, &lye], room) {
        let mut turn = 0_u32;
        time("solve again with a little more lye", || {
            turn = (turn + 1) % 20;
            solver.solve_mix(&[1.0, f64::from(turn) * 1e-4])
        });
    }
    time("predict: estimate and band", || predict(&contents));
    time("what decides it", || deciders(&contents));
    time("lye to reach pH 5.5", || set::reach(&whole, &lye, 5.5, room));
    time_a_formula();
}

/// A gel cream of the catalogue, from its lines on.
fn time_a_formula() {
    let material = |inci: &str| {
        let found = Catalogue::get().constituents().find(|constituent| constituent.inci == inci);
        found.and_then(|constituent| knowledge().material_of(constituent.id)).unwrap_or_else(|| panic!("no {inci}"))
    };
    let mut formula = Formula::with_name("gel cream");
    let phase = formula.add_phase("water", PhaseKind::RoomTemperature, None);
    formula.add_line(phase, material("Aqua"), Amount::QuantumSatis);
    let lines = [
        ("Sodium Benzoate", 5),
        ("Potassium Sorbate", 3),
        ("Citric Acid", 1),
        ("Niacinamide", 30),
        ("Glycerin", 40),
        ("Sodium PCA", 20),
        ("Xanthan Gum", 3),
        ("Prunus Amygdalus Dulcis Oil", 100),
    ];
    for (inci, tenths) in lines {
        let percent = Percent::new(Decimal::new(tenths, 1)).unwrap_or(Percent::ZERO);
        formula.add_line(phase, material(inci), Amount::Percent(percent));
    }
    let mut makeups = Makeups::default();
    let evaluation = evaluate(&formula, &Bench::default(), Catalogue::get(), &mut makeups);
    let new = || checks::Contents::new(&formula, &evaluation, Catalogue::get(), knowledge(), Conditions::default());
    time("look a formula up", || new().present.len());
    time("look it up and predict its pH", || new().prediction().map(|prediction| prediction.ph));
    let contents = new();
    time("citric acid to bring it to pH 5", || {
        checks::acidity::setting::set(&contents, &mut makeups, material("Citric Acid"), 5.0).map(|found| found.percent)
    });
}
