//! Oils and fats of the catalogue against the Codex standard and measured densities.

use crate::{EvidenceSet, Worst, count_bases, rows};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Deserialize;
use stillroom_catalogue::reference::{fat_profile, fatty_acids};
use stillroom_catalogue::{Basis, Catalogue, MaterialCard, Property, Value};

const CODEX: &str = include_str!("../data/codex_oils.csv");
const MEASURED: &str = include_str!("../data/oil_density_temperature.csv");

/// Density of water at 20 °C in g/mL (IAPWS-95): what a relative density is multiplied by.
const WATER_AT_20: f64 = 0.9982;

#[derive(Debug, Deserialize)]
struct CodexRow {
    inci: String,
    /// Name of the material, where one constituent is sold as several.
    material: String,
    quantity: String,
    minimum: Option<f64>,
    maximum: Option<f64>,
    /// Temperature of the oil, for a relative density against water at 20 °C.
    temperature: String,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

#[derive(Debug, Deserialize)]
struct MeasuredRow {
    inci: String,
    temperature: f64,
    density: f64,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

/// Density, saponification value and iodine value inside the ranges of Codex CXS 210-1999, Table 2; densities against
/// measurements of Noureddini, Teoh and Clements (1992).
///
/// # Panics
/// If a row cannot be read or names no material of the catalogue.
#[must_use]
pub fn evidence() -> Vec<EvidenceSet> {
    vec![inside_codex(), computed_from_profiles(), measured_densities()]
}

/// Every end of every range and every single value the catalogue states must lie inside the standard's range. The
/// deviation is how far outside it lies, as a share of the nearest end.
fn inside_codex() -> EvidenceSet {
    let standard: Vec<CodexRow> = rows("codex_oils.csv", CODEX);
    let mut worst = Worst::default();
    for row in &standard {
        let (property, factor) = match row.quantity.as_str() {
            "relative density" => (Property::Density, WATER_AT_20),
            "saponification value" => (Property::SaponificationValue, 1.0),
            "iodine value" => (Property::IodineValue, 1.0),
            other => panic!("{other} is no quantity of the standard"),
        };
        let card = card_of(&row.inci, &row.material);
        let conditions = format!("{} °C", row.temperature);
        let stated: Vec<&Value> = card
            .values
            .iter()
            .filter(|value| {
                value.property == property && (row.temperature.is_empty() || value.conditions == conditions)
            })
            .collect();
        assert!(!stated.is_empty(), "{} states no {}", card.material.name, row.quantity);
        for figure in stated.iter().flat_map(|value| [value.value, value.minimum, value.maximum]).flatten() {
            let figure = to_physics(figure);
            let below = row.minimum.map_or(0.0, |minimum| 1.0 - figure / (minimum * factor));
            let above = row.maximum.map_or(0.0, |maximum| figure / (maximum * factor) - 1.0);
            worst.see(below.max(above).max(0.0));
        }
    }
    EvidenceSet {
        set: "oils.codex",
        source: format!(
            "Codex Alimentarius CXS 210-1999, Table 2: density, saponification value, iodine value ({})",
            count_bases(standard.iter().map(|row| row.basis.as_str()))
        ),
        cases: worst.cases,
        worst: worst.deviation,
        // Half of the last digit in which the catalogue writes a density.
        tolerance: 0.000_06,
        unit: "share outside the range",
    }
}

/// An oil of the database whose fatty acids the standard would not call by its name: 11.4 % oleic acid against 12.0 to
/// 19.0 % in Table 1 (recalled). What is computed from it cannot be held to Table 2.
const OUTSIDE_THE_STANDARD: &str = "Elaeis Guineensis Kernel Oil";

/// Whether the fatty acids of an oil were read of the kernel it is pressed from.
fn is_of_a_kernel(inci: &str) -> bool {
    fatty_acids().iter().any(|row| row.inci == inci && !row.note.is_empty())
}

/// What core computes from the fatty acids of an oil must lie inside the standard's range, or in the tolerance outside it.
fn computed_from_profiles() -> EvidenceSet {
    let standard: Vec<CodexRow> = rows("codex_oils.csv", CODEX);
    let mut worst = Worst::default();
    let mut oils = std::collections::BTreeSet::new();
    for row in &standard {
        let card = card_of(&row.inci, &row.material);
        let Some((profile, basis)) = fat_profile(card.material.id) else { continue };
        // A profile that was recalled is no evidence for the arithmetic, nor is that of a whole kernel for its oil.
        if basis != Basis::Published || is_of_a_kernel(&row.inci) || row.inci == OUTSIDE_THE_STANDARD {
            continue;
        }
        let computed = match row.quantity.as_str() {
            "saponification value" => profile.saponification_value(),
            "iodine value" => profile.iodine_value(),
            _ => continue,
        };
        oils.insert((&row.inci, &row.material));
        let below = row.minimum.map_or(0.0, |minimum| 1.0 - computed / minimum);
        let above = row.maximum.map_or(0.0, |maximum| computed / maximum - 1.0);
        let outside = below.max(above).max(0.0);
        worst.see(outside);
    }
    EvidenceSet::of(
        "oils.profile",
        format!(
            "Codex Alimentarius CXS 210-1999, Table 2 (recalled in part), against values computed from the fatty acids of \
             {} oils in the USDA database SR28; {OUTSIDE_THE_STANDARD} set aside: its oleic acid lies below the \
             standard's own range",
            oils.len()
        ),
        worst,
        // The database describes other lots than the standard, and what does not saponify is left out of account.
        0.05,
        "share outside the range",
    )
}

/// The density of the catalogue against the line through the two measurements nearest to its temperature.
fn measured_densities() -> EvidenceSet {
    let measured: Vec<MeasuredRow> = rows("oil_density_temperature.csv", MEASURED);
    let mut oils: Vec<&str> = measured.iter().map(|row| row.inci.as_str()).collect();
    oils.dedup();
    let mut worst = Worst::default();
    for oil in oils {
        let card = card_of(oil, "");
        for value in card.values.iter().filter(|value| value.property == Property::Density) {
            let temperature: f64 = value.conditions.trim_end_matches(" °C").parse().expect("a temperature in °C");
            let mut nearest: Vec<&MeasuredRow> = measured.iter().filter(|row| row.inci == oil).collect();
            nearest.sort_by(|a, b| (a.temperature - temperature).abs().total_cmp(&(b.temperature - temperature).abs()));
            let (a, b) = (nearest[0], nearest[1]);
            let slope = (b.density - a.density) / (b.temperature - a.temperature);
            let expected = a.density + slope * (temperature - a.temperature);
            worst.see(to_physics(value.value.expect("a density")) - expected);
        }
    }
    EvidenceSet {
        set: "oils.measured-density",
        source: format!(
            "Noureddini, Teoh and Clements, JAOCS 69:1184-1188 (1992), on the line through the two nearest \
             temperatures ({})",
            count_bases(measured.iter().map(|row| row.basis.as_str()))
        ),
        cases: worst.cases,
        worst: worst.deviation,
        // The spread of lots: the ranges of the standard are up to 0.013 g/mL wide.
        tolerance: 0.008,
        unit: "g/mL",
    }
}

/// The card of the material of that name, or of the first material of that constituent.
fn card_of(inci: &str, material: &str) -> MaterialCard<'static> {
    let catalogue = Catalogue::get();
    let mut cards = catalogue.materials().filter_map(|material| catalogue.card(material.id));
    cards
        .find(|card| {
            let named = material.is_empty() || card.material.name == material;
            named && card.constituent.is_some_and(|constituent| constituent.inci == inci)
        })
        .unwrap_or_else(|| panic!("the catalogue has no {inci} {material}"))
}

fn to_physics(value: Decimal) -> f64 {
    value.to_f64().expect("a number of the catalogue")
}

#[cfg(test)]
mod tests {
    #[test]
    fn oils_lie_inside_the_standard_and_near_the_measurements() {
        crate::hold(&super::evidence(), &[("oils.codex", 150), ("oils.profile", 38), ("oils.measured-density", 5)]);
    }
}
