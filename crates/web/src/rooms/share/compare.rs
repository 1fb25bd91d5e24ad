//! What is different between two versions of a formula: in percent of what is weighed, and of what is in the jar.

use crate::messages::sentences::{list, with_unit};
use crate::messages::share as says;
use crate::rooms::share::sentences;
use crate::rooms::share::view::{ChangeView, ComparisonView};
use crate::session::materials::Materials;
use rust_decimal::Decimal;
use std::collections::BTreeMap;
use stillroom_core::evaluation::Evaluation;
use stillroom_core::number::{DecimalMark, write_between};
use stillroom_core::unit::TemperatureUnit;
use stillroom_core::{Formula, Ph};

/// Decimals in which percents are compared and shown: finer differences come from rounding alone.
const DECIMALS: u32 = 4;
/// Most differences shown of each kind.
const MOST: usize = 200;

/// A sentence on what was before and what is after.
type Differs = fn(&str, &str) -> String;

/// One version, with what its references mean.
pub(crate) struct Version<'a> {
    pub(crate) formula: &'a Formula,
    pub(crate) evaluation: &'a Evaluation,
    pub(crate) materials: &'a Materials,
}

/// Percents by name, in the order they are first met.
type Percents = (Vec<String>, BTreeMap<String, Decimal>);

impl Version<'_> {
    fn lines(&self) -> Percents {
        let lines = self.evaluation.lines.iter();
        sum(lines.map(|(share, material)| (self.materials.name(*material), share.percent.value())))
    }

    fn constituents(&self) -> Percents {
        let entries = self.evaluation.composition.entries.iter();
        sum(entries.map(|entry| (self.materials.inci(entry.constituent).to_owned(), entry.percent.value())))
    }
}

/// Compares two versions.
pub(crate) fn compare(before: &Version, after: &Version, unit: TemperatureUnit, mark: DecimalMark) -> ComparisonView {
    let lines = differences(before.lines(), after.lines(), mark);
    let mut composition = differences(before.constituents(), after.constituents(), mark);
    composition.sort_by_key(|(size, _)| std::cmp::Reverse(*size));
    let views = |changes: Vec<(Decimal, ChangeView)>| changes.into_iter().map(|(_, view)| view).take(MOST).collect();
    let others = other_differences(before.formula, after.formula, unit, mark);
    ComparisonView {
        summary: sentences::differences(lines.len(), composition.len(), others.len()),
        lines: views(lines),
        composition: views(composition),
        others,
    }
}

fn sum(percents: impl Iterator<Item = (String, Decimal)>) -> Percents {
    let (mut names, mut sums) = (Vec::new(), BTreeMap::new());
    for (name, percent) in percents {
        let sum = sums.entry(name.clone()).or_insert_with(|| {
            names.push(name);
            Decimal::ZERO
        });
        *sum = sum.checked_add(percent).unwrap_or(*sum);
    }
    (names, sums)
}

/// Every name with another percent, with how large the difference is.
fn differences(before: Percents, after: Percents, mark: DecimalMark) -> Vec<(Decimal, ChangeView)> {
    let (mut names, after) = after;
    let gone = before.0.into_iter().filter(|name| !after.contains_key(name));
    names.extend(gone);
    let before = before.1;
    let rounded =
        |percents: &BTreeMap<String, Decimal>, name: &str| percents.get(name).map(|value| value.round_dp(DECIMALS));
    let written =
        |value: Option<Decimal>| value.map_or_else(String::new, |value| write_between(value, 2, DECIMALS, mark));
    names
        .into_iter()
        .filter_map(|name| {
            let (was, is) = (rounded(&before, &name), rounded(&after, &name));
            if was == is {
                return None;
            }
            let difference = is.unwrap_or_default() - was.unwrap_or_default();
            let sign = if difference.is_sign_negative() { '\u{2212}' } else { '+' };
            let size = difference.abs();
            let difference = format!("{sign}{}", write_between(size, 2, DECIMALS, mark));
            Some((size, ChangeView { name, before: written(was), after: written(is), difference }))
        })
        .collect()
}

fn other_differences(before: &Formula, after: &Formula, unit: TemperatureUnit, mark: DecimalMark) -> Vec<String> {
    let written = |ph: Option<Ph>| ph.map_or_else(String::new, |ph| write_between(ph.value(), 1, 2, mark));
    let phases = |formula: &Formula| {
        let phases = formula.phases.iter().map(|phase| match phase.temperature {
            Some(degrees) => {
                let degrees = with_unit(
                    &write_between(unit.from_celsius(degrees.value()).round_dp(1), 0, 1, mark),
                    unit.symbol(),
                );
                format!("{} ({degrees})", phase.name)
            }
            None => phase.name.clone(),
        });
        list(&phases.collect::<Vec<_>>())
    };
    let both = |text: &dyn Fn(&Formula) -> String| (text(before), text(after));
    let short: [(Differs, (String, String)); 6] = [
        (says::name_differs, both(&|formula| formula.name.clone())),
        (says::use_differs, both(&|formula| sentences::use_of_product(formula.purpose))),
        (says::kind_differs, both(&|formula| sentences::kind_of_product(formula.kind))),
        (says::ph_differs, both(&|formula| written(formula.target_ph))),
        (says::measured_ph_differs, both(&|formula| written(formula.measured_ph))),
        (says::phases_differ, both(&phases)),
    ];
    let or_nothing = |text: String| if text.is_empty() { says::nothing_there().to_owned() } else { text };
    let mut others: Vec<String> = short
        .into_iter()
        .filter(|(_, (before, after))| before != after)
        .map(|(say, (before, after))| say(&or_nothing(before), &or_nothing(after)))
        .collect();
    let notes_of_lines = |formula: &Formula| {
        formula.lines().map(|line| (line.note.clone(), line.substitution.clone())).collect::<Vec<_>>()
    };
    let long = [
        (says::method_differs(), before.steps != after.steps),
        (says::notes_differ(), before.notes != after.notes || notes_of_lines(before) != notes_of_lines(after)),
        (says::batch_differs(), before.batch != after.batch),
    ];
    others.extend(long.into_iter().filter(|(_, differs)| *differs).map(|(sentence, _)| sentence.to_owned()));
    others
}
