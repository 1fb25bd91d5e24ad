//! The pH of solutions: an independent equilibrium program, primary buffer standards, worked examples.

use crate::{EvidenceSet, Worst, count_bases, rows};
use serde::Deserialize;
use std::collections::BTreeMap;
use stillroom_catalogue::acids::acids;
use stillroom_core::chemistry::Temperature;
use stillroom_core::chemistry::ph::{AcidBase, Activity, Cation, Equilibrium, Medium, PhError, Solution, Solver, set};

/// Every set about pH.
///
/// # Panics
/// If a row cannot be read.
#[must_use]
pub fn evidence() -> Vec<EvidenceSet> {
    let mut sets = equilibria();
    sets.extend(buffers());
    sets.extend(worked_examples());
    sets
}

fn celsius(degrees: f64) -> Temperature {
    Temperature::new(degrees).expect("a temperature")
}

fn acid(name: &str) -> &'static AcidBase {
    acids().get(name).unwrap_or_else(|| panic!("no acid `{name}`"))
}

#[derive(Debug, Deserialize)]
struct EquilibriumRow {
    case: String,
    #[serde(rename = "temperature_C")]
    temperature: f64,
    acids: String,
    ions: String,
    #[serde(rename = "pH")]
    ph: f64,
    ionic_strength: f64,
    basis: String,
}

fn amounts(text: &str) -> impl Iterator<Item = (&str, f64)> {
    text.split(';').filter(|part| !part.is_empty()).map(|part| {
        let (name, moles) = part.split_once('=').unwrap_or_else(|| panic!("`{part}` is no amount"));
        (name, moles.parse().unwrap_or_else(|_| panic!("`{part}` is no amount")))
    })
}

fn solution_of(row: &EquilibriumRow) -> Solution<'static> {
    let mut solution = Solution::in_water(1.0);
    for (name, moles) in amounts(&row.acids) {
        solution.add(acid(name), moles);
    }
    for (ion, moles) in amounts(&row.ions) {
        match Cation::from_symbol(ion) {
            Some(cation) => solution.add_cation(cation, moles),
            None if ion == "Cl" => solution.add_anion(moles),
            None => panic!("`{ion}` is no ion"),
        }
    }
    solution
}

/// 0.05 pH was the tolerance before the first comparison; it was then tightened to 0.01, for both solve one set of
/// equations and nothing but the slope of Debye and Hückel differs.
fn equilibria() -> Vec<EvidenceSet> {
    let table: Vec<EquilibriumRow> = rows("ph_equilibrium.csv", include_str!("../data/ph_equilibrium.csv"));
    let (mut room, mut other, mut beyond) = (Worst::default(), Worst::default(), Worst::default());
    for row in &table {
        let solved = Solver::new(&[&solution_of(row)], celsius(row.temperature)).and_then(|mut solver| solver.solve());
        if row.ionic_strength > 0.5 {
            // An answer where there may be none counts as infinitely wrong.
            beyond.see(if matches!(solved, Err(PhError::TooStrong { .. })) { 0.0 } else { f64::INFINITY });
            continue;
        }
        let miss = solved.map_or(f64::NAN, |solved| solved.ph - row.ph);
        if std::env::var_os("STILLROOM_PH_TRACE").is_some() {
            eprintln!("{miss:+.4} {} {} {} | {}", row.ph, row.ionic_strength, row.temperature, row.case);
        }
        if (row.temperature - 25.0).abs() < 0.1 { room.see(miss) } else { other.see(miss) }
    }
    assert!(table.iter().all(|row| row.basis == "computed"));
    let source =
        |what: &str| format!("PHREEQC through phreeqpython 1.6.2 on the catalogue's constants, {what}: computed");
    vec![
        EvidenceSet::of("ph.equilibrium", source("25 °C, ionic strength to 0.5"), room, 0.01, "pH"),
        EvidenceSet::of("ph.equilibrium-temperature", source("15 to 40 °C"), other, 0.01, "pH"),
        EvidenceSet::of("ph.refused", source("beyond ionic strength 0.5: refused"), beyond, 0.0, "answers"),
    ]
}

#[derive(Debug, Deserialize)]
struct BufferRow {
    buffer: String,
    #[serde(rename = "temperature_C")]
    temperature: f64,
    #[serde(rename = "pH")]
    ph: f64,
    basis: String,
}

/// The recipes of the standards, in mol/kg water.
fn standard(buffer: &str) -> Solution<'static> {
    use Cation::{Potassium, Sodium};
    let water = Solution::in_water(1.0);
    match buffer {
        "tetroxalate" => water.with(acid("oxalic acid"), 0.1).with_cation(Potassium, 0.05),
        "tartrate" => water.with(acid("tartaric acid"), 0.034).with_cation(Potassium, 0.034),
        "citrate" => water.with(acid("citric acid"), 0.05).with_cation(Potassium, 0.05),
        "phthalate" => water.with(acid("phthalic acid"), 0.05).with_cation(Potassium, 0.05),
        "phosphate_1_1" => {
            water.with(acid("phosphoric acid"), 0.05).with_cation(Potassium, 0.025).with_cation(Sodium, 0.05)
        }
        "phosphate_1_3.5" => water
            .with(acid("phosphoric acid"), 0.008_695 + 0.030_43)
            .with_cation(Potassium, 0.008_695)
            .with_cation(Sodium, 2.0 * 0.030_43),
        "borax" => water.with(acid("boric acid"), 0.04).with_cation(Sodium, 0.02),
        "carbonate" => water.with(acid("carbonic acid"), 0.05).with_cation(Sodium, 0.075),
        unknown => panic!("`{unknown}` is no buffer"),
    }
}

fn buffers() -> Vec<EvidenceSet> {
    let table: Vec<BufferRow> = rows("ph_buffers.csv", include_str!("../data/ph_buffers.csv"));
    let (mut primary, mut outer) = (Worst::default(), Worst::default());
    let mut bases = [Vec::new(), Vec::new()];
    for row in &table {
        let solution = standard(&row.buffer);
        let solved = Solver::new(&[&solution], celsius(row.temperature)).and_then(|mut solver| solver.solve());
        let miss = solved.map_or(f64::NAN, |solved| solved.ph - row.ph);
        let at_bench = (15.0..=40.0).contains(&row.temperature);
        if at_bench {
            primary.see(miss);
        } else {
            outer.see(miss);
        }
        bases[usize::from(!at_bench)].push(row.basis.as_str());
    }
    let source = |range: &str, bases: &[&str]| {
        format!(
            "NBS/NIST and IUPAC standards (Buck et al., Pure Appl. Chem. 74 (2002) 2169; J. Res. NBS; JIS Z 8802), \
             {range}: {}",
            count_bases(bases.iter().copied())
        )
    };
    vec![
        EvidenceSet::of("ph.primary-buffers", source("15 to 40 °C", &bases[0]), primary, 0.05, "pH"),
        EvidenceSet::of("ph.primary-buffers-outer", source("0 to 14 and 41 to 50 °C", &bases[1]), outer, 0.05, "pH"),
    ]
}

#[derive(Debug, Deserialize)]
struct WorkedRow {
    id: String,
    quantity: String,
    inputs: String,
    expected: f64,
    tolerance: f64,
    activity_model: String,
    basis: String,
}

#[derive(Debug, Default, Deserialize)]
#[serde(default)]
struct Inputs {
    #[serde(rename = "pKw")]
    pkw: Option<f64>,
    strong_ions: BTreeMap<String, f64>,
    #[serde(rename = "temperature_C")]
    temperature: Option<f64>,
    totals: BTreeMap<String, f64>,
    weak: Vec<Weak>,
    titrant: String,
    #[serde(rename = "titrant_pKa")]
    titrant_pka: Vec<f64>,
    titrant_charge_fully_protonated: i8,
    #[serde(rename = "target_pH")]
    target_ph: Option<f64>,
    #[serde(rename = "pH")]
    ph: Option<f64>,
    #[serde(rename = "pKa")]
    pka: Vec<f64>,
}

#[derive(Debug, Deserialize)]
struct Weak {
    charge_fully_protonated: i8,
    #[serde(rename = "pKa")]
    pka: Vec<f64>,
    total: f64,
}

fn put_ion(solution: &mut Solution<'_>, ion: &str, moles: f64) {
    match ion.trim_end_matches(['+', '-', '2']) {
        "Cl" => solution.add_anion(moles),
        symbol => match Cation::from_symbol(symbol) {
            Some(cation) => solution.add_cation(cation, moles),
            None => panic!("`{ion}` is no ion"),
        },
    }
}

/// How far off a worked example is, in units of its own tolerance.
fn work(row: &WorkedRow) -> f64 {
    let inputs: Inputs = serde_json::from_str(&row.inputs).unwrap_or_else(|error| panic!("{}: {error}", row.id));
    if let Some(ph) = inputs.ph {
        let share = stillroom_core::chemistry::dissociation::undissociated(&inputs.pka, ph);
        return (share - row.expected) / row.tolerance;
    }
    let temperature = celsius(inputs.temperature.unwrap_or(25.0));
    let activity = if row.activity_model == "ideal" { Activity::Ideal } else { Activity::Davies };
    // Rows of the models "ideal" and "davies" bring constants of their own and know no pairs.
    let own = ["ideal", "davies"].contains(&row.activity_model.as_str());
    let mut medium = if own { Medium::without_pairs() } else { Medium::standard() };
    if let Some(pkw) = inputs.pkw {
        medium.water.log_k = -pkw;
    }
    let at_25 =
        |charge, pka: &[f64]| AcidBase::at_25(charge, pka).unwrap_or_else(|error| panic!("{}: {error}", row.id));
    let weak: Vec<(AcidBase, f64)> =
        inputs.weak.iter().map(|weak| (at_25(weak.charge_fully_protonated, &weak.pka), weak.total)).collect();
    let mut solution = Solution::in_water(1.0);
    for (acid, moles) in &weak {
        solution.add(acid, *moles);
    }
    for (ion, moles) in &inputs.strong_ions {
        put_ion(&mut solution, ion, *moles);
    }
    for (name, moles) in &inputs.totals {
        match name.as_str() {
            "P" => solution.add(acid("phosphoric acid"), *moles),
            "B" => solution.add(acid("boric acid"), *moles),
            "tartaric acid (L)" => solution.add(acid("tartaric acid"), *moles),
            name if acids().contains_key(name) => solution.add(acid(name), *moles),
            ion => put_ion(&mut solution, ion, *moles),
        }
    }
    let solve = |parts: &[&Solution<'_>], shares: &[f64]| -> Result<Equilibrium, PhError> {
        Solver::in_medium(parts, temperature, activity, &medium)?.solve_mix(shares)
    };
    let Some(target) = inputs.target_ph else {
        return solve(&[&solution], &[1.0]).map_or(f64::NAN, |solved| solved.ph - row.expected) / row.tolerance;
    };
    let titrant_acid =
        (!inputs.titrant_pka.is_empty()).then(|| at_25(inputs.titrant_charge_fully_protonated, &inputs.titrant_pka));
    let mut titrant = Solution::in_water(0.0);
    match (&titrant_acid, inputs.titrant.as_str()) {
        (Some(acid), _) => titrant.add(acid, 1.0),
        (None, "NaOH") => titrant.add_cation(Cation::Sodium, 1.0),
        (None, "KOH") => titrant.add_cation(Cation::Potassium, 1.0),
        (None, "HCl") => titrant.add_anion(1.0),
        (None, unknown) => panic!("{}: `{unknown}` is not known", row.id),
    }
    let dose = set::reach_in(&solution, &titrant, target, temperature, activity, &medium);
    dose.map_or(f64::NAN, |dose| dose.share - row.expected) / row.tolerance
}

/// The one example left out: 0.05 mol/kg disodium phosphate by phreeqc.dat, 9.225, where the core says 9.278. That file
/// has activity coefficients of its own for each ion; with Davies' no ion pair mends the difference of 0.053.
const OTHER_MODEL: &str = "ph161";

fn worked_examples() -> Vec<EvidenceSet> {
    let table: Vec<WorkedRow> = rows("ph_worked_examples.csv", include_str!("../data/ph_worked_examples.csv"));
    let (mut ph, mut amounts, mut shares) = (Worst::default(), Worst::default(), Worst::default());
    for row in table.iter().filter(|row| row.id != OTHER_MODEL) {
        let miss = work(row);
        if std::env::var_os("STILLROOM_PH_TRACE").is_some() && (miss.abs() > 0.5 || miss.is_nan()) {
            eprintln!("{miss:+.3} of {} | {} {} {}", row.tolerance, row.id, row.activity_model, row.inputs);
        }
        match row.quantity.as_str() {
            "fraction" => shares.see(miss),
            "titrant mol/kg water" => amounts.see(miss),
            _ => ph.see(miss),
        }
    }
    let bases = |wanted: &[&str]| {
        count_bases(table.iter().filter(|row| wanted.contains(&row.quantity.as_str())).map(|row| row.basis.as_str()))
    };
    let unit = "of each example's own tolerance";
    vec![
        EvidenceSet::of(
            "ph.worked-examples",
            format!(
                "pHcalc 0.2.0, PHREEQC and standards: {}; left out: 0.05 Na2HPO4, whose source has another activity \
                 model (0.053 apart)",
                bases(&["pH", "pH = -log10 a(H+)", "pH(S)"])
            ),
            ph,
            1.0,
            unit,
        ),
        EvidenceSet::of(
            "ph.worked-amounts",
            format!("bisection confirmed with pHcalc 0.2.0: {}", bases(&["titrant mol/kg water"])),
            amounts,
            1.0,
            unit,
        ),
        EvidenceSet::of("ph.worked-shares", format!("closed form: {}", bases(&["fraction"])), shares, 1.0, unit),
    ]
}

#[cfg(test)]
mod tests {
    #[test]
    fn every_set_about_ph_holds() {
        crate::hold(
            &super::evidence(),
            &[
                ("ph.equilibrium", 179),
                ("ph.equilibrium-temperature", 126),
                ("ph.refused", 12),
                ("ph.primary-buffers", 96),
                ("ph.primary-buffers-outer", 70),
                ("ph.worked-examples", 125),
                ("ph.worked-amounts", 11),
                ("ph.worked-shares", 37),
            ],
        );
    }
}
