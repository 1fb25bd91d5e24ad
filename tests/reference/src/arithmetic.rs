//! Pharmaceutical arithmetic against worked examples of textbooks and courses.

use crate::{EvidenceSet, Worst, count_bases, rows};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Deserialize;
use serde_json::{Map, Value};
use std::collections::BTreeMap;
use stillroom_core::arithmetic::{
    ArithmeticError, Portion, alligate, alligate_to_total, amount_in, dilute_stock, diluted_strength, dilution_yield,
    fortify, mass_of_volume, milligrams_per_millilitre, minimum_weight, mix_strength, percent_from_ratio,
    quantum_satis, ratio_from_percent, rescale_amount, scale_factor, specific_gravity, specific_volume, total_holding,
    volume_of_mass, weigh_pycnometer,
};

const FIXTURE: &str = include_str!("../data/batch_worked_examples.csv");

#[derive(Debug, Deserialize)]
struct Example {
    topic: String,
    description: String,
    inputs: String,
    expected: String,
    tolerance: f64,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

/// Named answers of one example.
type Answers = BTreeMap<String, Decimal>;

/// The inputs of one example.
struct Inputs(Map<String, Value>);

impl Inputs {
    fn has(&self, name: &str) -> bool {
        self.0.contains_key(name)
    }

    fn number(&self, name: &str) -> Decimal {
        to_decimal(&self.0[name])
    }

    fn entries(&self, name: &str) -> impl Iterator<Item = (&String, Decimal)> {
        self.0[name].as_object().expect("an object").iter().map(|(name, value)| (name, to_decimal(value)))
    }
}

/// The number as the fixture writes it.
fn to_decimal(value: &Value) -> Decimal {
    value.to_string().parse().unwrap_or_else(|error| panic!("{value}: {error}"))
}

/// Pharmaceutical arithmetic held to every row of the fixture.
///
/// The unit is the tolerance of each row, because the rows differ in what they print: an exact answer has a tolerance
/// of a billionth, a rounded one half its last printed digit.
///
/// # Panics
/// If a row cannot be read or is of a topic unknown here.
#[must_use]
pub fn evidence() -> Vec<EvidenceSet> {
    let examples: Vec<Example> = rows("batch_worked_examples.csv", FIXTURE);
    let mut worst = Worst::default();
    for example in &examples {
        let deviation = compare(example);
        worst.see(deviation / example.tolerance);
    }
    let rule = check_minimum_weight();
    worst.cases += rule.cases;
    worst.deviation = worst.deviation.max(rule.deviation);
    vec![EvidenceSet {
        set: "arithmetic.worked-examples",
        source: format!(
            "worked examples of pharmaceutical calculation textbooks and courses ({}); USP <41> minimum weights (3 \
             published)",
            count_bases(examples.iter().map(|example| example.basis.as_str()))
        ),
        cases: worst.cases,
        worst: worst.deviation,
        tolerance: 1.0,
        unit: "of the tolerance of its row",
    }]
}

/// The largest deviation among the expected answers of one example.
fn compare(example: &Example) -> f64 {
    let about = &example.description;
    let inputs = Inputs(serde_json::from_str(&example.inputs).unwrap_or_else(|error| panic!("{about}: {error}")));
    let expected: Map<String, Value> =
        serde_json::from_str(&example.expected).unwrap_or_else(|error| panic!("{about}: {error}"));
    assert!(!expected.is_empty(), "{about}: nothing is expected");
    let answers = compute(&example.topic, &inputs).unwrap_or_else(|error| panic!("{about}: {error}"));
    expected
        .iter()
        .map(|(name, value)| {
            let answer = *answers.get(name).unwrap_or_else(|| panic!("{about}: `{name}` is not computed"));
            let expected = value.as_str().map_or_else(|| to_decimal(value), read_ratio);
            (answer - expected).abs().to_f64().unwrap_or(f64::INFINITY)
        })
        .fold(0.0, f64::max)
}

/// The quotient of a ratio written `3:17`.
fn read_ratio(text: &str) -> Decimal {
    let (high, low) = text.split_once(':').expect("a ratio");
    high.parse::<Decimal>().expect("a number") / low.parse::<Decimal>().expect("a number")
}

fn compute(topic: &str, inputs: &Inputs) -> Result<Answers, ArithmeticError> {
    let answers: Vec<(&str, Decimal)> = match topic {
        "alligation_medial" => vec![("percent", mix_strength(&read_portions(inputs))?)],
        "alligation_alternate" => compute_alternate(inputs)?,
        "fortify" => {
            let [mass, percent, target] = ["mass", "percent", "target"].map(|name| inputs.number(name));
            vec![("add", fortify(mass, percent, target, inputs.number("added_percent"))?)]
        }
        "dilution_c1v1" => compute_dilution(inputs)?,
        "dilution_mass" => {
            let [stock, mass, target] = ["c1_percent", "m1", "c2_percent"].map(|name| inputs.number(name));
            vec![("m2", dilution_yield(stock, mass, target)?)]
        }
        "percent_strength" => compute_percent_strength(inputs)?,
        "ratio_strength" => vec![("percent", percent_from_ratio(inputs.number("ratio"))?)],
        "reduce_enlarge" => return compute_rescaled(inputs),
        "density" => compute_density(inputs)?,
        unknown => panic!("no sum is known for the topic `{unknown}`"),
    };
    Ok(answers.into_iter().map(|(name, value)| (name.to_owned(), value)).collect())
}

fn read_portions(inputs: &Inputs) -> Vec<Portion> {
    let parts = inputs.0["parts"].as_array().expect("a list of portions");
    parts.iter().map(|part| Portion { amount: to_decimal(&part[0]), percent: to_decimal(&part[1]) }).collect()
}

fn compute_alternate(inputs: &Inputs) -> Result<Vec<(&'static str, Decimal)>, ArithmeticError> {
    let [high, low, target] = ["high", "low", "target"].map(|name| inputs.number(name));
    if inputs.has("total") {
        let amounts = alligate_to_total(high, low, target, inputs.number("total"))?;
        return Ok(vec![("amount_high", amounts.high), ("amount_low", amounts.low)]);
    }
    let parts = alligate(high, low, target)?;
    Ok(vec![("parts_high", parts.high), ("parts_low", parts.low), ("ratio_high_to_low", parts.high / parts.low)])
}

fn compute_dilution(inputs: &Inputs) -> Result<Vec<(&'static str, Decimal)>, ArithmeticError> {
    let strength = |percent: &str, ratio: &str| {
        if inputs.has(percent) { Ok(inputs.number(percent)) } else { percent_from_ratio(inputs.number(ratio)) }
    };
    let stock = strength("c1_percent", "ratio1")?;
    match (inputs.has("v1"), inputs.has("v2")) {
        (false, true) => {
            let dilution = dilute_stock(stock, strength("c2_percent", "ratio2")?, inputs.number("v2"))?;
            Ok(vec![("v1", dilution.stock), ("diluent", dilution.diluent)])
        }
        (true, false) => {
            let target = strength("c2_percent", "ratio2")?;
            Ok(vec![("v2", dilution_yield(stock, inputs.number("v1"), target)?)])
        }
        (true, true) => {
            let percent = diluted_strength(stock, inputs.number("v1"), inputs.number("v2"))?;
            Ok(vec![("percent2", percent), ("ratio2", ratio_from_percent(percent)?)])
        }
        (false, false) => panic!("a dilution without a volume"),
    }
}

fn compute_percent_strength(inputs: &Inputs) -> Result<Vec<(&'static str, Decimal)>, ArithmeticError> {
    if inputs.has("ratio") {
        let per_millilitre = milligrams_per_millilitre(percent_from_ratio(inputs.number("ratio"))?)?;
        return Ok(vec![("mg", mass_of_volume(inputs.number("volume"), per_millilitre)?)]);
    }
    let percent = inputs.number("percent");
    if inputs.has("total") {
        return Ok(vec![("amount", amount_in(inputs.number("total"), percent)?)]);
    }
    if inputs.has("amount") {
        return Ok(vec![("total", total_holding(inputs.number("amount"), percent)?)]);
    }
    Ok(vec![("mg_per_mL", milligrams_per_millilitre(percent)?)])
}

fn compute_rescaled(inputs: &Inputs) -> Result<Answers, ArithmeticError> {
    let mut answers = Answers::new();
    // One example is in fluid drachms to a total in fluid ounces: eight of them to the ounce.
    let (amounts, written, total, divisor) = if inputs.has("formula_fl_dr") {
        ("formula_fl_dr", "formula_total_fl_oz", "make_fl_oz", Decimal::from(8))
    } else {
        ("formula", "formula_total", "make", Decimal::ONE)
    };
    let (written, total) = (inputs.number(written), inputs.number(total));
    answers.insert("factor".to_owned(), scale_factor(written, total)?);
    for (name, amount) in inputs.entries(amounts) {
        let amount = rescale_amount(amount, written, total)? / divisor;
        let suffix = if divisor == Decimal::ONE { String::new() } else { "_fl_oz".to_owned() };
        let name = if suffix.is_empty() { name.clone() } else { name.replace(' ', "_") + &suffix };
        answers.insert(name, amount);
    }
    Ok(answers)
}

fn compute_density(inputs: &Inputs) -> Result<Vec<(&'static str, Decimal)>, ArithmeticError> {
    if inputs.has("water") {
        let [empty, water, liquid] = ["empty", "water", "liquid"].map(|name| inputs.number(name));
        return Ok(vec![("specific_gravity", weigh_pycnometer(empty, water, liquid)?)]);
    }
    match (inputs.has("mass"), inputs.has("volume")) {
        (true, true) => {
            Ok(vec![("specific_gravity", specific_gravity(inputs.number("mass"), inputs.number("volume"))?)])
        }
        (true, false) => {
            Ok(vec![("volume", volume_of_mass(inputs.number("mass"), inputs.number("specific_gravity"))?)])
        }
        (false, true) => {
            let mass = mass_of_volume(inputs.number("volume"), inputs.number("specific_gravity"))?;
            let mut answers = vec![("mass", mass)];
            if inputs.has("total") {
                let missing = quantum_satis(inputs.number("total"), &[mass, inputs.number("other_mass")])?;
                answers.push(("qs", missing));
            }
            Ok(answers)
        }
        (false, false) => Ok(vec![("specific_volume", specific_volume(inputs.number("specific_gravity"))?)]),
    }
}

/// The least masses that two makers of balances print for three readabilities under USP <41> (0.10 %).
fn check_minimum_weight() -> Worst {
    let mut worst = Worst::default();
    for (readability, least) in [("0.1", "82"), ("0.01", "8.2"), ("0.001", "0.82")] {
        let [readability, least] = [readability, least].map(|text| text.parse::<Decimal>().expect("a number"));
        let computed = minimum_weight(readability, Decimal::new(10, 2)).expect("a positive readability");
        worst.see(((computed - least) / least).to_f64().unwrap_or(f64::INFINITY) / 1e-9);
    }
    worst
}

#[cfg(test)]
mod tests {
    #[test]
    fn every_worked_example_is_reproduced_within_what_it_prints() {
        crate::hold(&super::evidence(), &[("arithmetic.worked-examples", 41)]);
    }
}
