//! Declarations of ingredients worked out by hand from the rules, each with its article.
//!
//! `Aqua > Glycerin / Xanthan Gum & Tocopherol / CI 77491`: by weight, then in any order, then colourants in any order.
//! `~` instead of `>`: the ranges say nothing about which is first; `*` the range lies on both sides of 1 %; `?` named only if
//! the oil holds the most it may.

use crate::{EvidenceSet, Worst, count_bases, rows};
use serde::Deserialize;
use stillroom_core::label::{
    Allergen, Declaration, Declared, Group, Ingredient, Market, Name, NotInProduct, Role, declare,
};
use stillroom_core::{ConstituentId, Percent};

const FIXTURE: &str = include_str!("../data/label_worked.csv");

#[derive(Debug, Deserialize)]
struct Case {
    title: String,
    market: String,
    added: String,
    allergens: String,
    expected: String,
    left_out: String,
    #[allow(dead_code, reason = "a row without its article must not parse")]
    article: String,
    basis: String,
}

/// Every declaration, compared name by name and place by place; the unit is a declaration that is not as worked out.
///
/// # Panics
/// If a row cannot be read.
#[must_use]
pub fn evidence() -> Vec<EvidenceSet> {
    let cases: Vec<Case> = rows("label_worked.csv", FIXTURE);
    let mut worst = Worst::default();
    for case in &cases {
        worst.see(if wrong(case).is_none() { 0.0 } else { 1.0 });
    }
    let source = format!(
        "worked by hand from Regulation (EC) 1223/2009 Art. 19(1)(g) and Annex III, and 21 CFR 701.3 ({})",
        count_bases(cases.iter().map(|row| row.basis.as_str()))
    );
    vec![EvidenceSet::of("label.worked", source, worst, 0.0, "declarations that differ")]
}

/// What is wrong with the declaration of a case, if anything is.
fn wrong(case: &Case) -> Option<String> {
    let (names, ingredients) = read_added(&case.added);
    let id_of = |name: &str| {
        let place = names.iter().position(|known| known == name).unwrap_or_else(|| panic!("{}: no {name}", case.title));
        ConstituentId::Catalogue(u32::try_from(place).expect("few ingredients"))
    };
    let allergens: Vec<Allergen> =
        case.allergens.split_terminator(';').map(|text| read_allergen(text, &id_of)).collect();
    let market = match case.market.as_str() {
        "EU" => Market::EuropeanUnion,
        "UK" => Market::UnitedKingdom,
        "US" => Market::UnitedStates,
        other => panic!("{}: no market {other}", case.title),
    };
    let list = declare(&ingredients, &allergens, market);
    let found = write(&list, &names);
    let left_out: Vec<_> = list.left_out.iter().map(|each| name_of(each.id, &names)).collect();
    let found_whole = (in_any_order(&found), left_out.join(";"));
    let expected = (in_any_order(&case.expected), case.left_out.clone());
    (found_whole != expected)
        .then(|| format!("{} ({}): {found_whole:?}, expected {expected:?}", case.title, case.market))
}

fn read_added(text: &str) -> (Vec<String>, Vec<Ingredient>) {
    let mut names = Vec::new();
    let mut ingredients = Vec::new();
    for part in text.split(';') {
        let (name, amount) = part.split_once('=').unwrap_or_else(|| panic!("no amount in {part}"));
        let (name, flags) = name.split_once('|').unwrap_or((name, ""));
        let (amount, range) = amount.split_once('[').map_or((amount, None), |(amount, range)| (amount, Some(range)));
        let percent = |text: &str| Percent::new(text.parse().expect("a number")).expect("a percent");
        let mut ingredient =
            Ingredient::new(ConstituentId::Catalogue(u32::try_from(names.len()).expect("few")), percent(amount));
        ingredient.range = range.map(|range| {
            let (low, high) = range.trim_end_matches(']').split_once('-').expect("a range");
            (percent(low), percent(high))
        });
        let mut flags = flags.chars();
        while let Some(flag) = flags.next() {
            match flag {
                'c' => ingredient.role = Role::Colourant,
                'p' => ingredient.role = Role::Perfume,
                'a' => ingredient.role = Role::Aroma,
                'n' => ingredient.is_nano = true,
                'i' => ingredient.not_in_product = Some(NotInProduct::Impurity),
                't' => ingredient.not_in_product = Some(NotInProduct::TechnicalAid),
                'g' => ingredient.goes_with = flags.next().and_then(|digit| digit.to_digit(10)),
                other => panic!("no flag {other}"),
            }
        }
        names.push(name.to_owned());
        ingredients.push(ingredient);
    }
    (names, ingredients)
}

/// `Linalool 0.001 0.002 0.001 Member`: typical, most, threshold, the ingredients that are it.
fn read_allergen(text: &str, id_of: &impl Fn(&str) -> ConstituentId) -> Allergen {
    let first_digit = text.find(|c: char| c.is_ascii_digit()).expect("numbers");
    let name = text[..first_digit].trim();
    let mut rest = text[first_digit..].splitn(4, ' ');
    let mut number = || rest.next().and_then(|text| text.parse::<f64>().ok()).expect("a number");
    let (typical, most, threshold) = (number(), number(), number());
    let members = rest.next().map(id_of).into_iter().collect();
    Allergen { name: String::leak(name.to_owned()), members, typical, most, threshold }
}

fn name_of(id: ConstituentId, names: &[String]) -> &str {
    match id {
        ConstituentId::Catalogue(number) => &names[number as usize],
        ConstituentId::Own(_) => "own",
    }
}

fn write(list: &Declaration, names: &[String]) -> String {
    let mut text = String::new();
    for (at, each) in list.names.iter().enumerate() {
        if let Some(before) = at.checked_sub(1).map(|before| &list.names[before]) {
            text.push_str(between(before, each));
        }
        text.push_str(match each.name {
            Name::Own(id) => name_of(id, names),
            Name::Perfume => "Parfum",
            Name::Aroma => "Aroma",
            Name::Allergen(name) => name,
        });
        text.push_str(if each.is_nano { " (nano)" } else { "" });
        text.push_str(if each.doubt.perhaps { "?" } else { "" });
        text.push_str(if each.doubt.may_be_in_other_group { "*" } else { "" });
    }
    text
}

fn between(before: &Declared, here: &Declared) -> &'static str {
    match (before.group == here.group, here.group) {
        (false, _) => " / ",
        (true, Group::ByWeight) if before.doubt.may_follow_next => " ~ ",
        (true, Group::ByWeight) => " > ",
        (true, _) => " & ",
    }
}

/// The groups, with those sorted in which the order is free.
fn in_any_order(text: &str) -> Vec<Vec<String>> {
    let sorted = |group: &str| {
        let mut names: Vec<_> = group.split(" & ").map(str::to_owned).collect();
        names.sort();
        names
    };
    text.split(" / ").map(sorted).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn declarations_are_as_worked_out_by_hand() {
        let cases: Vec<Case> = rows("label_worked.csv", FIXTURE);
        let wrong: Vec<_> = cases.iter().filter_map(wrong).collect();
        assert!(wrong.is_empty(), "{wrong:#?}");
        crate::hold(&evidence(), &[("label.worked", 47)]);
    }
}
