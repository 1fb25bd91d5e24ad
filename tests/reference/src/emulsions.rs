//! Hydrophilic-lipophilic balances against published tables of blends and worked examples.

use crate::{EvidenceSet, Worst, count_bases, rows};
use serde::Deserialize;
use serde_json::{Map, Value};
use stillroom_core::chemistry::hlb::{blend, of_ester, of_ethoxylate, pair_for_target, share_of_higher};

const FIXTURE: &str = include_str!("../data/hlb_worked_examples.csv");

#[derive(Debug, Deserialize)]
struct Example {
    description: String,
    inputs: String,
    expected: String,
    /// Half the last printed digit, or what the source's own rounding of intermediate figures asks for.
    tolerance: f64,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

/// Shares of two emulsifiers for a target, balances of blends, required balances of oil phases.
///
/// The unit is the tolerance of each row, because the rows print with different precision.
///
/// # Panics
/// If a row cannot be read or computed.
#[must_use]
pub fn evidence() -> Vec<EvidenceSet> {
    let examples: Vec<Example> = rows("hlb_worked_examples.csv", FIXTURE);
    let mut worst = Worst::default();
    for example in &examples {
        let inputs = object(&example.inputs, &example.description);
        for (name, expected) in object(&example.expected, &example.description) {
            let expected = expected.as_f64().expect("a number");
            let found = answer(&inputs, &name).unwrap_or_else(|| panic!("{}: no {name}", example.description));
            worst.see((found - expected) / example.tolerance);
        }
    }
    let source = format!(
        "tables of emulsifier blends in PMC3969497, PMC4137601 and OCL 29 (2022) ocl210096, a university worked example, \
         Griffin 1954 ({})",
        count_bases(examples.iter().map(|row| row.basis.as_str()))
    );
    vec![EvidenceSet::of("emulsion.hlb-blends", source, worst, 1.0, "of the tolerance of its row")]
}

fn object(text: &str, description: &str) -> Map<String, Value> {
    serde_json::from_str(text).unwrap_or_else(|error| panic!("{description}: {error}"))
}

fn answer(inputs: &Map<String, Value>, name: &str) -> Option<f64> {
    let number = |key: &str| inputs.get(key).and_then(Value::as_f64);
    let pair = || Some((number("hlb_high")?, number("hlb_low")?));
    let parts = || -> Option<f64> {
        let parts = inputs.get("parts")?.as_array()?.iter();
        let parts: Option<Vec<(f64, f64)>> = parts.map(|part| Some((part[0].as_f64()?, part[1].as_f64()?))).collect();
        blend(&parts?)
    };
    let target = || number("target_hlb").or_else(parts);
    match name {
        "hlb" if inputs.contains_key("saponification_number") => {
            Some(of_ester(number("saponification_number")?, number("acid_number")?))
        }
        "hlb" if inputs.contains_key("oxyethylene_mass_percent") => {
            Some(of_ethoxylate(number("oxyethylene_mass_percent")?))
        }
        "hlb" | "required_hlb" => parts(),
        "percent_high" | "percent_low" => {
            let (high, low) = pair()?;
            let share = share_of_higher(target()?, high, low)?;
            Some(if name == "percent_high" { share * 100.0 } else { (1.0 - share) * 100.0 })
        }
        "amount_high" | "amount_low" => {
            let (high, low) = pair_for_target(target()?, pair()?, number("total_emulsifier")?, (0.0, 0.0))?;
            Some(if name == "amount_high" { high } else { low })
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn blends_meet_the_published_tables() {
        crate::hold(&super::evidence(), &[("emulsion.hlb-blends", 115)]);
    }
}
