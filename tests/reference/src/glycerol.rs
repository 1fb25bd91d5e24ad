//! Glycerol and water against published tables.
//!
//! What is left out, and why:
//! - Gerke (2023): its strengths are nominal (weighed from 99.5 % glycerol and not corrected), so its refractive index and
//!   viscosity differ from every other table. Only the *change* of its refractive index with temperature is used. How far
//!   its values lie off is printed in the source text of the sets.
//! - Water activities from freezing points: they hold at the freezing temperature, not at 25 °C.
//! - Rows computed with the very equation under test (the model of Volk and Kähler, the pooled curve).
//! - CoolProp outside 15 to 30 °C for density (the equation ends there) and its viscosity (a fit that lies up to 9 % off the
//!   measurements of Segur and Oberstar); the deviation is printed all the same.

use crate::{EvidenceSet, Worst, count_bases, rows};
use serde::Deserialize;
use stillroom_core::chemistry::{MassFraction, Temperature, glycerol, water_activity};

/// One value of a published table.
#[derive(Debug, Deserialize)]
struct Row {
    property: String,
    glycerol_mass_percent: f64,
    #[serde(rename = "temperature_C")]
    temperature: Option<f64>,
    value: f64,
    source: String,
    basis: String,
}

impl Row {
    fn fraction(&self) -> MassFraction {
        MassFraction::from_percent(self.glycerol_mass_percent).expect("a percent")
    }

    fn celsius(&self) -> Temperature {
        Temperature::new(self.temperature.expect("a temperature")).expect("a temperature")
    }

    fn is_from(&self, author: &str) -> bool {
        self.source.contains(author)
    }
}

fn table() -> Vec<Row> {
    rows("glycerol_water.csv", include_str!("../data/glycerol_water.csv"))
}

fn of<'a>(table: &'a [Row], property: &'a str) -> impl Iterator<Item = &'a Row> {
    table.iter().filter(move |row| row.property == property)
}

/// Deviation in percent of the published value.
fn percent(computed: f64, published: f64) -> f64 {
    (computed / published - 1.0) * 100.0
}

/// Compares rows and describes where they come from.
fn compare<'a>(rows: impl Iterator<Item = &'a Row>, deviation: impl Fn(&Row) -> f64) -> (Worst, String) {
    let rows: Vec<_> = rows.collect();
    let mut worst = Worst::default();
    for row in &rows {
        worst.see(deviation(row));
    }
    (worst, count_bases(rows.iter().map(|row| row.basis.as_str())))
}

/// Every set about glycerol.
///
/// # Panics
/// If a row cannot be read.
#[must_use]
pub fn evidence() -> Vec<EvidenceSet> {
    let table = table();
    let mut sets = vec![density(&table), refractive_index(&table), index_with_temperature(&table), viscosity(&table)];
    sets.extend(water_activity_sets(&table));
    sets.extend([freezing_point(&table), specific_heat(&table)]);
    sets.extend(coolprop());
    sets
}

fn density(table: &[Row]) -> EvidenceSet {
    let rows = of(table, "density_g_mL").filter(|row| !row.is_from("model"));
    let (worst, bases) =
        compare(rows, |row| percent(glycerol::density(row.fraction(), row.celsius()).unwrap_or(f64::NAN), row.value));
    EvidenceSet {
        set: "glycerol.density",
        source: format!(
            "Bosart & Snoddy (1927, 1928), CRC Handbook 102nd ed., Lange's Handbook 15th ed. (apparent 15/15 gravity \
             converted): {bases}"
        ),
        cases: worst.cases,
        worst: worst.deviation,
        tolerance: 0.1,
        unit: "%",
    }
}

fn refractive_index(table: &[Row]) -> EvidenceSet {
    let deviation = |row: &Row| glycerol::refractive_index_at_20(row.fraction()) - row.value;
    let (gerke, _) = compare(of(table, "refractive_index_nD20").filter(|row| row.is_from("Gerke")), deviation);
    let (worst, bases) = compare(of(table, "refractive_index_nD20").filter(|row| !row.is_from("Gerke")), deviation);
    EvidenceSet {
        set: "glycerol.refractive-index",
        source: format!(
            "Hoyt (1933, 1934; the curve passes through these rows), CRC Handbook 102nd ed.: {bases}; left out: Gerke \
             (2023), nominal strengths, {} rows, worst {:.4}",
            gerke.cases, gerke.deviation
        ),
        cases: worst.cases,
        worst: worst.deviation,
        tolerance: 0.0005,
        unit: "1",
    }
}

/// The change from 20 °C, so that the nominal strengths of the source cancel out.
fn index_with_temperature(table: &[Row]) -> EvidenceSet {
    let cold: Vec<_> = of(table, "refractive_index_nD20").filter(|row| row.is_from("Gerke")).collect();
    let mut worst = Worst::default();
    for row in of(table, "refractive_index_nD").filter(|row| row.is_from("Gerke")) {
        let same = |other: &&&Row| (other.glycerol_mass_percent - row.glycerol_mass_percent).abs() < 0.01;
        let Some(reference) = cold.iter().find(same) else { continue };
        let at = |celsius| glycerol::refractive_index(row.fraction(), celsius).unwrap_or(f64::NAN);
        worst.see(at(row.celsius()) - at(Temperature::TWENTY) - (row.value - reference.value));
    }
    EvidenceSet {
        set: "glycerol.refractive-index-temperature",
        source:
            "Gerke (2023) open data, change from 20 to 25 and 30 °C at 40 to 75 %: published; the equation was not \
                 fitted to it"
                .to_owned(),
        cases: worst.cases,
        worst: worst.deviation,
        tolerance: 0.0005,
        unit: "1",
    }
}

fn viscosity(table: &[Row]) -> EvidenceSet {
    let deviation =
        |row: &Row| percent(glycerol::viscosity(row.fraction(), row.celsius()).unwrap_or(f64::NAN), row.value);
    let (gerke, _) = compare(of(table, "viscosity_mPa_s").filter(|row| row.is_from("Gerke")), deviation);
    let (worst, bases) = compare(of(table, "viscosity_mPa_s").filter(|row| !row.is_from("Gerke")), deviation);
    EvidenceSet {
        set: "glycerol.viscosity",
        source: format!(
            "Segur & Oberstar (1951), 0 to 100 °C, CRC Handbook 102nd ed.: {bases}; left out: Gerke (2023), nominal \
             strengths, {} rows, worst {:.1} %",
            gerke.cases, gerke.deviation
        ),
        cases: worst.cases,
        worst: worst.deviation,
        tolerance: 5.0,
        unit: "%",
    }
}

/// Forms and measurements at 25 °C that are not the curve under test.
fn independent_activities(table: &[Row]) -> Vec<&Row> {
    of(table, "water_activity")
        .filter(|row| row.temperature == Some(25.0) && !row.is_from("Pooled"))
        // Norrish with one constant is published for water activities from 0.80, that is to 50 %.
        .filter(|row| !row.is_from("Norrish") || row.glycerol_mass_percent <= 50.0)
        .collect()
}

fn water_activity_sets(table: &[Row]) -> [EvidenceSet; 3] {
    let rows = independent_activities(table);
    let (weak, strong): (Vec<&Row>, Vec<&Row>) = rows.iter().partition(|row| row.glycerol_mass_percent <= 60.0);
    let pooled = |row: &Row| water_activity::glycerol_pooled(row.fraction()).unwrap_or(f64::NAN);
    let (near, bases) = compare(weak.iter().copied(), |row| pooled(row) - row.value);

    let mut spread = Worst::default();
    let mut seen = Vec::new();
    for row in &strong {
        if seen.contains(&row.glycerol_mass_percent.to_bits()) {
            continue;
        }
        seen.push(row.glycerol_mass_percent.to_bits());
        let same = |other: &&&Row| other.glycerol_mass_percent.to_bits() == row.glycerol_mass_percent.to_bits();
        let values = || strong.iter().filter(same).map(|other| other.value);
        let (low, high) = (values().fold(f64::INFINITY, f64::min), values().fold(0.0, f64::max));
        let estimate = pooled(row);
        spread.see((low - estimate).max(estimate - high).max(0.0));
    }

    let (dry, all_bases) =
        compare(rows.iter().copied(), |row| (row.value - water_activity::glycerol_band(row.fraction()).high).max(0.0));
    [
        EvidenceSet {
            set: "glycerol.water-activity",
            source: format!(
                "to 60 %, 25 °C: Scott (1957), Zhang et al. (2022), ASTM D5032, Forney & Brandl (1992), Norrish with K = \
                 1.16 to 50 %: {bases} (memory: read as measured; computed: from the published equation); the curve is \
                 fitted to the first four"
            ),
            cases: near.cases,
            worst: near.deviation,
            tolerance: 0.01,
            unit: "1",
        },
        EvidenceSet {
            set: "glycerol.water-activity-strong",
            source:
                "65 to 95 %, 25 °C: how far the estimate lies outside the spread of Zhang et al. (2022), ASTM D5032 \
                     and Forney & Brandl (1992) at each strength; the curve is fitted to them"
                    .to_owned(),
            cases: spread.cases,
            worst: spread.deviation,
            tolerance: 0.0,
            unit: "1",
        },
        EvidenceSet {
            set: "glycerol.water-activity-upper-end",
            source: format!(
                "0 to 95 %, 25 °C: by how much any of these values lies above the upper end of the band, which judgements \
                 use: {all_bases}"
            ),
            cases: dry.cases,
            worst: dry.deviation,
            tolerance: 0.0005,
            unit: "1",
        },
    ]
}

fn freezing_point(table: &[Row]) -> EvidenceSet {
    let deviation = |row: &Row| glycerol::freezing_point(row.fraction()).unwrap_or(f64::NAN) - row.value;
    let below = |row: &&Row| row.glycerol_mass_percent <= glycerol::EUTECTIC * 100.0;
    let (above, _) = compare(
        of(table, "freezing_point_C").filter(|row| !below(row) && row.glycerol_mass_percent <= 98.2),
        deviation,
    );
    let (worst, bases) = compare(of(table, "freezing_point_C").filter(below), deviation);
    EvidenceSet {
        set: "glycerol.freezing-point",
        source: format!(
            "to the eutectic: CRC Handbook 102nd ed. (the curve passes through most of its rows), Lange's Handbook 15th \
             ed., Lane (1925): {bases}; above it {} rows, worst {:.1} °C",
            above.cases, above.deviation
        ),
        cases: worst.cases,
        worst: worst.deviation,
        tolerance: 1.0,
        unit: "°C",
    }
}

fn specific_heat(table: &[Row]) -> EvidenceSet {
    let (worst, bases) = compare(of(table, "specific_heat_kJ_kgK"), |row| {
        percent(glycerol::specific_heat(row.fraction(), row.celsius()).unwrap_or(f64::NAN), row.value)
    });
    EvidenceSet {
        set: "glycerol.specific-heat",
        source: format!("Perry's Handbook (fitted to it), Righetti et al. (1998): {bases}"),
        cases: worst.cases,
        worst: worst.deviation,
        tolerance: 2.0,
        unit: "%",
    }
}

/// One point of CoolProp's aqueous glycerol.
#[derive(Debug, Deserialize)]
struct Point {
    glycerol_mass_fraction: f64,
    #[serde(rename = "temperature_C")]
    temperature: f64,
    #[serde(rename = "density_kg_m3")]
    density: f64,
    #[serde(rename = "viscosity_mPa_s")]
    viscosity: f64,
    #[serde(rename = "freezing_temperature_C")]
    freezing: f64,
}

fn coolprop() -> [EvidenceSet; 2] {
    let points: Vec<Point> = rows("coolprop_glycerol.csv", include_str!("../data/coolprop_glycerol.csv"));
    let (mut density, mut viscosity, mut freezing) = (Worst::default(), Worst::default(), Worst::default());
    for point in &points {
        let fraction = MassFraction::new(point.glycerol_mass_fraction).expect("a fraction");
        let celsius = Temperature::new(point.temperature).expect("a temperature");
        if glycerol::DENSITY_TEMPERATURE.check(point.temperature).is_ok() {
            let computed = glycerol::density(fraction, celsius).unwrap_or(f64::NAN);
            density.see(percent(computed * 1000.0, point.density));
        }
        viscosity.see(percent(glycerol::viscosity(fraction, celsius).unwrap_or(f64::NAN), point.viscosity));
        if point.temperature == 0.0 {
            freezing.see(glycerol::freezing_point(fraction).unwrap_or(f64::NAN) - point.freezing);
        }
    }
    let source = "CoolProp 8.0.0, INCOMP::MGL (after Melinder 2010)";
    [
        EvidenceSet {
            set: "glycerol.coolprop",
            source: format!(
                "{source}: density, 0 to 60 %, 15 to 30 °C; its viscosity is not held to: it lies up to 9 % off Segur & \
                 Oberstar (1951), and ours up to {:.1} % off it in {} points",
                viscosity.deviation, viscosity.cases
            ),
            cases: density.cases,
            worst: density.deviation,
            tolerance: 0.1,
            unit: "%",
        },
        EvidenceSet {
            set: "glycerol.coolprop-freezing-point",
            source: format!("{source}: freezing points, 0 to 60 %; part of the mean our table holds at 45 to 60 %"),
            cases: freezing.cases,
            worst: freezing.deviation,
            tolerance: 1.0,
            unit: "°C",
        },
    ]
}

#[cfg(test)]
mod tests {
    #[test]
    fn glycerol_is_as_the_published_tables_say() {
        crate::hold(
            &super::evidence(),
            &[
                ("glycerol.density", 71),
                ("glycerol.refractive-index", 51),
                ("glycerol.refractive-index-temperature", 13),
                ("glycerol.viscosity", 207),
                ("glycerol.water-activity", 50),
                ("glycerol.water-activity-strong", 7),
                ("glycerol.water-activity-upper-end", 70),
                ("glycerol.freezing-point", 34),
                ("glycerol.specific-heat", 13),
                ("glycerol.coolprop", 52),
                ("glycerol.coolprop-freezing-point", 13),
            ],
        );
    }
}
