//! What a run at the bench rests on: colour differences, cooling, specific heats.

use crate::{EvidenceSet, Worst, count_bases, rows};
use rust_decimal::Decimal;
use serde::Deserialize;
use stillroom_core::colour::Colour;
use stillroom_core::decay::ReadingAt;
use stillroom_core::run::heat::{
    THERMOMETER_ACCURACY, Warm, predict_cooling, specific_heat_of, specific_heat_of_class,
};
use stillroom_core::{Class, Grams};

/// Every set about a run.
///
/// # Panics
/// If a row cannot be read.
#[must_use]
pub fn evidence() -> Vec<EvidenceSet> {
    vec![colour_differences(), exact_cooling(), noisy_cooling(), mixed_heat(), heat_of_classes()]
}

#[derive(Debug, Deserialize)]
struct PairRow {
    #[serde(rename = "L1")]
    lightness: f64,
    a1: f64,
    b1: f64,
    #[serde(rename = "L2")]
    other_lightness: f64,
    a2: f64,
    b2: f64,
    delta_e_2000: f64,
    basis: String,
}

/// The printed differences have four decimals: 0.0001 is one unit of the last.
fn colour_differences() -> EvidenceSet {
    let table: Vec<PairRow> = rows("ciede2000.csv", include_str!("../data/ciede2000.csv"));
    let mut worst = Worst::default();
    for row in &table {
        let one = Colour { lightness: row.lightness, a: row.a1, b: row.b1 };
        let other = Colour { lightness: row.other_lightness, a: row.a2, b: row.b2 };
        worst.see(one.difference(other) - row.delta_e_2000);
        worst.see(other.difference(one) - row.delta_e_2000);
    }
    let source = format!(
        "Sharma, Wu and Dalal, Color Res. Appl. 30:21 (2005), table 1, each pair both ways: {} pairs",
        count_bases(table.iter().map(|row| row.basis.as_str()))
    );
    EvidenceSet::of("colour.ciede2000", source, worst, 0.0001, "ΔE00")
}

/// Batches that cool: room, first temperature, half-time in minutes, wanted temperature.
fn batches() -> impl Iterator<Item = (f64, f64, f64, f64)> {
    [16.0, 21.0, 27.0].into_iter().flat_map(|room| {
        [60.0, 72.0, 80.0].into_iter().flat_map(move |first| {
            [9.0, 18.0, 40.0]
                .into_iter()
                .flat_map(move |half| [45.0, 40.0, 35.0].into_iter().map(move |wanted| (room, first, half, wanted)))
        })
    })
}

fn exact_temperature(room: f64, first: f64, half: f64, minutes: f64) -> f64 {
    room + (first - room) * (-core::f64::consts::LN_2 / half * minutes).exp()
}

fn exact_time(room: f64, first: f64, half: f64, wanted: f64) -> f64 {
    ((first - room) / (wanted - room)).ln() * half / core::f64::consts::LN_2
}

/// Readings without noise give the time of the exact solution.
fn exact_cooling() -> EvidenceSet {
    let mut worst = Worst::default();
    for (room, first, half, wanted) in batches() {
        for times in [&[0.0, 5.0][..], &[0.0, 4.0, 9.0], &[0.0, 2.0, 5.0, 9.0, 15.0]] {
            let readings: Vec<ReadingAt> = times
                .iter()
                .map(|&time| ReadingAt { time, value: exact_temperature(room, first, half, time) })
                .collect();
            let found = predict_cooling(&readings, room, wanted).map_or(f64::NAN, |cooling| cooling.reached.estimate);
            worst.see((found / exact_time(room, first, half, wanted) - 1.0) * 100.0);
        }
    }
    let source = "Newton's law of cooling, its exact solution; 2, 3 and 5 readings without noise".to_owned();
    EvidenceSet::of("cooling.exact", source, worst, 0.001, "% of the time")
}

/// A stream of numbers with the normal distribution, the same in every run: a linear congruential generator (Knuth's
/// constants, MMIX) and the transformation of Box and Muller.
struct Noise(u64);

impl Noise {
    fn uniform(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        #[expect(clippy::cast_precision_loss, reason = "53 of its bits make the number")]
        let upper = (self.0 >> 11) as f64;
        (upper + 0.5) / 9_007_199_254_740_992.0
    }

    fn normal(&mut self) -> f64 {
        let (one, other) = (self.uniform(), self.uniform());
        (-2.0 * one.ln()).sqrt() * (core::f64::consts::TAU * other).cos()
    }
}

/// Of bands that are to hold the exact time in 95 of 100 cases, at most 8 in 100 may miss it.
fn noisy_cooling() -> EvidenceSet {
    const ROUNDS: u32 = 40;
    let mut noise = Noise(20_261_125);
    let (mut fitted, mut missed) = (0u32, 0u32);
    for (room, first, half, wanted) in batches() {
        for times in [&[0.0, 4.0, 9.0][..], &[0.0, 3.0, 6.0, 10.0, 15.0]] {
            for _ in 0..ROUNDS {
                let readings: Vec<ReadingAt> = times
                    .iter()
                    .map(|&time| {
                        let exact = exact_temperature(room, first, half, time);
                        ReadingAt { time, value: exact + THERMOMETER_ACCURACY * noise.normal() }
                    })
                    .collect();
                let exact = exact_time(room, first, half, wanted);
                // A fit that is refused (readings that rise by chance) promises nothing, and counts as missed.
                let held = predict_cooling(&readings, room, wanted)
                    .is_ok_and(|found| found.reached.low <= exact && exact <= found.reached.high);
                fitted += 1;
                missed += u32::from(!held);
            }
        }
    }
    let rate = f64::from(missed) / f64::from(fitted) * 100.0;
    let worst = Worst { cases: fitted as usize, deviation: rate };
    let source =
        "Newton's law of cooling, its exact solution with a thermometer's noise of 0.5 K; 3 and 5 readings".to_owned();
    EvidenceSet::of("cooling.noise", source, worst, 8.0, "% of 95 % bands that miss")
}

#[derive(Debug, Deserialize)]
struct GlycerolRow {
    property: String,
    #[serde(rename = "glycerol_mass_percent")]
    percent: Option<f64>,
    value: f64,
    basis: String,
}

/// The rule of mixtures against measured mixtures of glycerin and water; both pure values as the catalogue has them.
fn mixed_heat() -> EvidenceSet {
    let table: Vec<GlycerolRow> = rows("glycerol_water.csv", include_str!("../data/glycerol_water.csv"));
    let table: Vec<&GlycerolRow> = table.iter().filter(|row| row.property == "specific_heat_kJ_kgK").collect();
    let mut worst = Worst::default();
    for row in &table {
        let percent = row.percent.expect("a percent");
        let part = |percent: f64, specific_heat| Warm {
            mass: Grams::new(Decimal::try_from(percent).expect("a percent")).expect("a mass"),
            specific_heat,
            temperature: 20.0,
        };
        let mixed = specific_heat_of(&[part(percent, 2.387), part(100.0 - percent, 4.182)]).unwrap_or(f64::NAN);
        worst.see((mixed / row.value - 1.0) * 100.0);
    }
    let source = format!(
        "Perry's Chemical Engineers' Handbook, glycerol solutions; Righetti et al., Thermochim. Acta 316:193 (1998): {}",
        count_bases(table.iter().map(|row| row.basis.as_str()))
    );
    EvidenceSet::of("heat.specific-heat", source, worst, 4.0, "%")
}

#[derive(Debug, Deserialize)]
struct HeatRow {
    kind: String,
    #[serde(rename = "specific_heat_kJ_kgK")]
    specific_heat: f64,
    basis: String,
}

/// What a class usually has against what its materials have: it stands in only where nothing is known of a material.
fn heat_of_classes() -> EvidenceSet {
    let table: Vec<HeatRow> = rows("specific_heats.csv", include_str!("../data/specific_heats.csv"));
    let mut worst = Worst::default();
    for row in &table {
        let class = match row.kind.as_str() {
            "oil" | "liquid wax" => Class::Oil,
            "fat" => Class::Butter,
            "wax" => Class::Wax,
            "fatty alcohol" => Class::FattyAlcohol,
            "fatty acid" => Class::FattyAcid,
            "ester" | "hydrocarbon" | "silicone" => Class::Emollient,
            "humectant" => Class::Humectant,
            "solvent" if row.specific_heat > 4.0 => Class::Water,
            "solvent" => Class::Solvent,
            "preservative" => Class::Preservative,
            "essential oil" | "terpene" => Class::EssentialOil,
            // A syrup of lactic acid is no powder, as most of its class are.
            "acid" => continue,
            other => panic!("no class for {other}"),
        };
        worst.see(specific_heat_of_class(class) - row.specific_heat);
    }
    let source = format!(
        "gathered table of liquids (IAPWS-95, Bosart and Snoddy, handbook figures); mostly round estimates: {}",
        count_bases(table.iter().map(|row| row.basis.as_str()))
    );
    EvidenceSet::of("heat.class-value", source, worst, 0.7, "kJ/(kg K)")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_run_agrees_with_published_values() {
        crate::hold(
            &evidence(),
            &[
                ("colour.ciede2000", 68),
                ("cooling.exact", 243),
                ("cooling.noise", 6480),
                ("heat.specific-heat", 13),
                ("heat.class-value", 75),
            ],
        );
    }
}
