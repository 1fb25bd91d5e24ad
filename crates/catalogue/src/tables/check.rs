//! Every rule the data files must obey.

use super::row::{COMPOSITES, CONSTITUENTS, FUNCTIONS, FURTHER_NAMES, MATERIALS, NUMBERS, SOURCES};
use super::{EXTRA_TABLES, Findings, Lined, PropertyRow, Tables, extra};
use crate::property::{Basis, Kind, Property};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Deserialize;
use serde::de::value::{Error as ValueError, StrDeserializer};
use std::collections::{BTreeMap, BTreeSet};
use stillroom_terms::{Class, PhaseKind};

/// Reads a class or phase by the word core uses for it.
pub fn word<'de, T: Deserialize<'de>>(text: &'de str) -> Option<T> {
    T::deserialize(StrDeserializer::<ValueError>::new(text)).ok()
}

/// Reads a number as a person would write it down: digits, one point, perhaps a sign.
pub fn decimal(text: &str) -> Option<Decimal> {
    let plain = |character: char| character.is_ascii_digit() || character == '.' || character == '-';
    if text.chars().all(plain) { Decimal::from_str_exact(text).ok() } else { None }
}

/// Checks the form and the check digit of every CAS registry number in a cell.
pub fn cas_numbers(cell: &str, mut problem: impl FnMut(String)) {
    for cas in cell.split(" / ").filter(|cas| !cas.is_empty()) {
        if packed_cas(cas).is_none() {
            problem(format!("`{cas}` is no CAS registry number: form or check digit is wrong"));
        }
    }
}

/// A CAS registry number without its hyphens. `None` if its form or check digit is wrong.
pub fn packed_cas(cas: &str) -> Option<u32> {
    let mut groups = cas.split('-');
    let (long, short, check) = (groups.next()?, groups.next()?, groups.next()?);
    if groups.next().is_some() || !(2..=7).contains(&long.len()) || short.len() != 2 || check.len() != 1 {
        return None;
    }
    let digits: Vec<u32> = long.chars().chain(short.chars()).map(|digit| digit.to_digit(10)).collect::<Option<_>>()?;
    // The check digit is the sum of the others, each times its place counted from the right, modulo ten.
    let sum: u32 = digits.iter().rev().zip(1..).map(|(digit, place)| digit * place).sum();
    (check.parse() == Ok(sum % 10)).then(|| format!("{long}{short}{check}").parse().ok())?
}

/// Parts of a list cell.
pub fn listed(cell: &str) -> impl Iterator<Item = &str> {
    cell.split(';').map(str::trim).filter(|part| !part.is_empty())
}

/// Checks all tables.
pub fn check(tables: &Tables, findings: &mut Findings) {
    sources(tables, findings);
    let constituents = constituents(tables, findings);
    let materials = materials(tables, &constituents, findings);
    functions(tables, &constituents, findings);
    composites(tables, &materials, findings);
    further_names(tables, &materials, findings);
    properties(tables, &materials, &constituents, findings);
    numbers(tables, findings);
    limits(tables, findings);
    words(tables, findings);
    for table in EXTRA_TABLES {
        if let Some(rows) = tables.extra.get(table.file) {
            extra::check(table, rows, &|number| constituents.contains(number), findings);
        }
    }
}

fn rows_of<'a>(tables: &'a Tables, file: &str) -> &'a [Lined<super::ExtraRow>] {
    tables.extra.get(file).map_or(&[], Vec::as_slice)
}

fn cell<'a>(row: &'a super::ExtraRow, column: &str) -> &'a str {
    row.get(column).map_or("", String::as_str)
}

/// Every row that limits something must be reached by a substance of the catalogue, by what an essential oil holds, or by a
/// name on a label; and say something: a bound or a condition.
fn limits(tables: &Tables, findings: &mut Findings) {
    let members = rows_of(tables, "limit-members.csv");
    let inside: BTreeSet<&str> =
        rows_of(tables, "essential-oil-constituents.csv").iter().map(|row| cell(&row.row, "inside")).collect();
    let rows = rows_of(tables, "restricted.csv");
    for Lined { line, row } in rows {
        let subject = cell(row, "subject");
        let counts = |wanted: &str| {
            !wanted.is_empty()
                && members.iter().filter(|member| cell(&member.row, "subject") == wanted).any(|member| {
                    !cell(&member.row, "constituent").is_empty() || inside.contains(cell(&member.row, "inside"))
                })
        };
        if !counts(subject) && !counts(cell(row, "group")) && cell(row, "named").is_empty() {
            let message = format!("nothing can reach `{subject}`: no member, no name");
            findings.add("restricted.csv", *line, "data.unreachable", message);
        }
        let says = ["leave_on_limit", "rinse_off_limit", "conditions"];
        if says.iter().all(|column| cell(row, column).is_empty()) {
            findings.add("restricted.csv", *line, "data.unreachable", format!("`{subject}` says nothing"));
        }
    }
    for Lined { line, row } in members {
        let subject = cell(row, "subject");
        let known = rows.iter().any(|each| [cell(&each.row, "subject"), cell(&each.row, "group")].contains(&subject));
        if !known {
            let message = format!("no row of restricted.csv is about `{subject}`");
            findings.add("limit-members.csv", *line, "data.dangling", message);
        }
    }
    for Lined { line, row } in rows_of(tables, "preservative-limits.csv") {
        if cell(row, "constituent").is_empty() && cell(row, "inci").is_empty() {
            findings.add("preservative-limits.csv", *line, "data.unreachable", "no substance, no name".to_owned());
        }
    }
}

/// A word that no check knows says nothing.
fn words(tables: &Tables, findings: &mut Findings) {
    let listed: [(&'static str, &str, &[&str]); 10] = [
        ("traits.csv", "word", &super::words::TRAITS),
        ("restricted.csv", "kinds", &super::words::KINDS),
        ("label-conditions.csv", "only_kinds", &super::words::KINDS),
        ("label-conditions.csv", "not_kinds", &super::words::KINDS),
        ("label-conditions.csv", "used", &["leave-on", "rinse-off"]),
        ("label-conditions.csv", "form", &["dry"]),
        ("label-conditions.csv", "also_uk", &["yes"]),
        ("mic.csv", "group", &["gram-positive", "gram-negative", "yeast", "mould"]),
        ("oil-partition.csv", "oil_class", &["triglyceride", "ester", "hydrocarbon", "silicone"]),
        ("preservative-spectrum.csv", "role", &["carrier", "booster"]),
    ];
    for (file, column, known) in listed {
        for Lined { line, row } in rows_of(tables, file) {
            for word in cell(row, column).split(';').filter(|word| !word.is_empty() && !known.contains(word)) {
                findings.add(file, *line, "data.unknown-word", format!("no check knows the {column} `{word}`"));
            }
        }
    }
}

fn sources(tables: &Tables, findings: &mut Findings) {
    let mut known = BTreeSet::new();
    for Lined { line, row } in &tables.sources {
        let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        if row.source.is_empty() || !row.source.chars().all(plain) {
            findings.add(SOURCES, *line, "data.source-name", format!("`{}` is no short name", row.source));
        }
        if !known.insert(row.source.as_str()) {
            findings.add(SOURCES, *line, "data.duplicate", format!("source `{}` is there twice", row.source));
        }
        if row.citation.trim().is_empty() {
            findings.add(SOURCES, *line, "data.empty", "the citation is empty");
        }
        if row.as_of.trim().is_empty() {
            findings.add(SOURCES, *line, "data.empty", "year or as-of date is empty");
        }
    }
    let mut used = BTreeSet::new();
    for (file, line, source, basis) in origins(tables) {
        if source.is_empty() {
            findings.add(file, line, "data.no-source", "no source is named");
        } else if !known.contains(source) {
            findings.add(file, line, "data.dangling", format!("source `{source}` is not in {SOURCES}"));
        }
        if Basis::from_slug(basis).is_none() {
            findings.add(file, line, "data.no-basis", format!("`{basis}` is no basis"));
        }
        used.insert(source);
    }
    for Lined { line, row } in &tables.sources {
        if !used.contains(row.source.as_str()) {
            findings.add(SOURCES, *line, "data.orphan", format!("nothing refers to source `{}`", row.source));
        }
    }
}

/// File, line, source and basis of every row that states a fact.
pub fn origins(tables: &Tables) -> Vec<(&'static str, u64, &str, &str)> {
    let mut origins = Vec::new();
    macro_rules! collect {
        ($($rows:ident $file:expr;)*) => {$(
            for Lined { line, row } in &tables.$rows {
                origins.push(($file, *line, row.source.as_str(), row.basis.as_str()));
            }
        )*};
    }
    collect! {
        constituents CONSTITUENTS; functions FUNCTIONS; materials MATERIALS; composites COMPOSITES;
        further_names FURTHER_NAMES;
    }
    origins.extend(tables.values().map(|(file, Lined { line, row })| (file, *line, &*row.source, &*row.basis)));
    for (file, rows) in &tables.extra {
        for Lined { line, row } in rows {
            let cell = |name| row.get(name).map_or("", String::as_str);
            origins.push((file, *line, cell("source"), cell("basis")));
        }
    }
    origins
}

fn constituents<'a>(tables: &'a Tables, findings: &mut Findings) -> BTreeSet<&'a str> {
    let mut numbers = BTreeSet::new();
    let mut names = BTreeSet::new();
    let mut shared: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
    let used: BTreeSet<&str> = tables.materials.iter().map(|material| material.row.constituent.as_str()).collect();
    for (place, Lined { line, row }) in tables.constituents.iter().enumerate() {
        let mut problem = |code, message| findings.add(CONSTITUENTS, *line, code, message);
        if row.number.parse::<u32>().map_or(true, |number| number == 0 || number.to_string() != row.number) {
            problem("data.number", format!("`{}` is no number of a constituent", row.number));
        }
        if !numbers.insert(row.number.as_str()) {
            problem("data.duplicate", format!("constituent {} is there twice", row.number));
        }
        if row.inci.trim().is_empty() || row.inci.trim() != row.inci {
            problem("data.empty", format!("the INCI name is empty or padded: `{}`", row.inci));
        }
        if !names.insert(row.inci.to_lowercase()) {
            problem("data.duplicate", format!("INCI name `{}` is there twice", row.inci));
        }
        if word::<Class>(&row.class).is_none() {
            problem("data.class", format!("`{}` is no class", row.class));
        }
        if !row.formula.chars().all(|c| c.is_ascii_alphanumeric() || "().".contains(c)) {
            problem("data.formula", format!("`{}` is no molecular formula", row.formula));
        }
        if !used.contains(row.number.as_str()) {
            problem("data.orphan", format!("no material is constituent {} ({})", row.number, row.inci));
        }
        cas_numbers(&row.cas, |message| problem("data.cas", message));
        for cas in row.cas.split(" / ").filter(|cas| !cas.is_empty()) {
            shared.entry(cas).or_default().push(place);
        }
    }
    for (cas, places) in shared.iter().filter(|(_, places)| places.len() > 1) {
        for place in places {
            let Lined { line, row } = &tables.constituents[*place];
            if row.note.is_empty() {
                let message = format!("CAS number {cas} is shared with another constituent: say why in `note`");
                findings.add(CONSTITUENTS, *line, "data.duplicate", message);
            }
        }
    }
    numbers
}

fn functions(tables: &Tables, constituents: &BTreeSet<&str>, findings: &mut Findings) {
    let mut seen = BTreeSet::new();
    for Lined { line, row } in &tables.functions {
        if !constituents.contains(row.constituent.as_str()) {
            findings.add(FUNCTIONS, *line, "data.dangling", format!("there is no constituent {}", row.constituent));
        }
        if !seen.insert(row.constituent.as_str()) {
            findings.add(FUNCTIONS, *line, "data.duplicate", format!("constituent {} twice", row.constituent));
        }
        if listed(&row.functions).next().is_none() {
            findings.add(FUNCTIONS, *line, "data.empty", "no function is named");
        }
    }
}

fn materials<'a>(tables: &'a Tables, constituents: &BTreeSet<&str>, findings: &mut Findings) -> BTreeSet<&'a str> {
    let composites: BTreeSet<&str> = tables.composites.iter().map(|part| part.row.material.as_str()).collect();
    let mut numbers = BTreeSet::new();
    let mut names = BTreeSet::new();
    for Lined { line, row } in &tables.materials {
        let mut problem = |code, message| findings.add(MATERIALS, *line, code, message);
        if row.number.parse::<u32>().map_or(true, |number| number == 0 || number.to_string() != row.number) {
            problem("data.number", format!("`{}` is no number of a material", row.number));
        }
        if !numbers.insert(row.number.as_str()) {
            problem("data.duplicate", format!("material {} is there twice", row.number));
        }
        if row.name.trim().is_empty() || row.name.trim() != row.name {
            problem("data.empty", format!("the name is empty or padded: `{}`", row.name));
        }
        if !names.insert(row.name.to_lowercase()) {
            problem("data.duplicate", format!("the name `{}` is there twice", row.name));
        }
        if word::<Class>(&row.class).is_none() {
            problem("data.class", format!("`{}` is no class", row.class));
        }
        if word::<PhaseKind>(&row.phase).is_none() {
            problem("data.phase", format!("`{}` is no phase", row.phase));
        }
        match (row.constituent.is_empty(), composites.contains(row.number.as_str())) {
            (true, true) => {}
            (true, false) => {
                problem("data.orphan", format!("`{}` names no constituent and has no parts", row.name));
            }
            (false, true) => problem("data.ambiguous", format!("`{}` has a constituent and parts", row.name)),
            (false, false) if constituents.contains(row.constituent.as_str()) => {}
            (false, false) => problem("data.dangling", format!("there is no constituent {}", row.constituent)),
        }
    }
    numbers
}

fn composites(tables: &Tables, materials: &BTreeSet<&str>, findings: &mut Findings) {
    let mut parts: BTreeMap<&str, Vec<&Lined<super::CompositeRow>>> = BTreeMap::new();
    for part in &tables.composites {
        let Lined { line, row } = part;
        for number in [&row.material, &row.part] {
            if !materials.contains(number.as_str()) {
                findings.add(COMPOSITES, *line, "data.dangling", format!("there is no material {number}"));
            }
        }
        let siblings = parts.entry(&row.material).or_default();
        if siblings.iter().any(|sibling| sibling.row.part == row.part) {
            findings.add(COMPOSITES, *line, "data.duplicate", format!("part {} is there twice", row.part));
        }
        siblings.push(part);
    }
    for (material, parts) in &parts {
        let mut sum = Decimal::ZERO;
        let mut rests = 0;
        for Lined { line, row } in parts {
            match decimal(&row.percent) {
                _ if row.percent == "qs" => rests += 1,
                Some(percent) if percent > Decimal::ZERO && percent <= Decimal::ONE_HUNDRED => {
                    sum += percent;
                }
                _ => {
                    let message = format!("`{}` is neither `qs` nor a percent above 0", row.percent);
                    findings.add(COMPOSITES, *line, "data.range", message);
                }
            }
        }
        let first = parts.first().map_or(0, |part| part.line);
        let complete = match rests {
            0 => sum == Decimal::ONE_HUNDRED,
            1 => sum < Decimal::ONE_HUNDRED,
            _ => false,
        };
        if !complete {
            let message = format!("material {material} sums to {sum} % with {rests} parts `qs`");
            findings.add(COMPOSITES, first, "data.sum", message);
        }
        if let Some(cycle) = find_cycle(material, &mut Vec::new(), &|number| parts_of(tables, number).collect()) {
            let message = format!("material {material} contains itself: {}", cycle.join(" > "));
            findings.add(COMPOSITES, first, "data.cycle", message);
        }
    }
}

fn further_names(tables: &Tables, materials: &BTreeSet<&str>, findings: &mut Findings) {
    for Lined { line, row } in &tables.further_names {
        let mut problem = |code, message| findings.add(FURTHER_NAMES, *line, code, message);
        if !materials.contains(row.material.as_str()) {
            problem("data.dangling", format!("there is no material {}", row.material));
        }
        if !["en", "de", "fr"].contains(&row.language.as_str()) {
            problem("data.word", format!("`{}` is no language", row.language));
        }
        if listed(&row.names).next().is_none() {
            problem("data.empty", "no name is there".to_owned());
        }
    }
}

fn parts_of<'a>(tables: &'a Tables, material: &'a str) -> impl Iterator<Item = &'a str> {
    tables.composites.iter().filter(move |part| part.row.material == material).map(|part| part.row.part.as_str())
}

fn find_cycle<'a>(
    material: &'a str,
    path: &mut Vec<&'a str>,
    parts: &dyn Fn(&'a str) -> Vec<&'a str>,
) -> Option<Vec<&'a str>> {
    let seen_before = path.contains(&material);
    path.push(material);
    let cycle = if seen_before {
        Some(path.clone())
    } else {
        parts(material).into_iter().find_map(|part| find_cycle(part, path, parts))
    };
    path.pop();
    cycle
}

fn properties(tables: &Tables, materials: &BTreeSet<&str>, constituents: &BTreeSet<&str>, findings: &mut Findings) {
    let mut seen = BTreeSet::new();
    for (file, Lined { line, row }) in tables.values() {
        let mut problem = |code, message| findings.add(file, *line, code, message);
        let known = match row.subject.as_str() {
            "material" => materials.contains(row.number.as_str()),
            "constituent" => constituents.contains(row.number.as_str()),
            _ => false,
        };
        if !known {
            problem("data.dangling", format!("there is no {} {}", row.subject, row.number));
        }
        let Some(property) = Property::from_slug(&row.property) else {
            problem("data.property", format!("`{}` is no property", row.property));
            continue;
        };
        if row.unit != property.unit() {
            problem("data.unit", format!("the unit of {} is `{}`, not `{}`", row.property, property.unit(), row.unit));
        }
        let identity = (&row.subject, &row.number, &row.property, &row.conditions, &row.source, &row.locator);
        if !seen.insert(identity) {
            problem("data.duplicate", format!("{} of {} {} is there twice", row.property, row.subject, row.number));
        }
        value(row, property, &mut problem);
    }
}

fn value(row: &PropertyRow, property: Property, problem: &mut dyn FnMut(&'static str, String)) {
    let cells = [&row.value, &row.minimum, &row.maximum];
    if cells.iter().all(|cell| cell.is_empty()) {
        problem("data.empty", format!("{} has no value", row.property));
    }
    match property.kind() {
        Kind::Choice(words) => {
            if !words.contains(&row.value.as_str()) || !row.minimum.is_empty() || !row.maximum.is_empty() {
                problem("data.choice", format!("`{}` is none of {}", row.value, words.join(", ")));
            }
        }
        Kind::Number { minimum, maximum, .. } => {
            let mut figures = Vec::new();
            for cell in cells.into_iter().filter(|cell| !cell.is_empty()) {
                match decimal(cell).and_then(|figure| figure.to_f64()) {
                    Some(figure) if (minimum..=maximum).contains(&figure) => figures.push(figure),
                    _ => problem(
                        "data.range",
                        format!("{} is `{cell}`, not between {minimum} and {maximum}", row.property),
                    ),
                }
            }
            let [Some(value), Some(low), Some(high)] =
                cells.map(|cell| if cell.is_empty() { Some(None) } else { decimal(cell).map(Some) })
            else {
                return;
            };
            let ordered = |low: Option<Decimal>, high: Option<Decimal>| low.zip(high).is_none_or(|(l, h)| l <= h);
            if !(ordered(low, value) && ordered(value, high) && ordered(low, high)) {
                problem("data.range", format!("{}: the value does not lie in its own range", row.property));
            }
        }
    }
}

fn numbers(tables: &Tables, findings: &mut Findings) {
    let mut present: BTreeMap<(&str, &str), (&'static str, u64, &str)> = BTreeMap::new();
    for Lined { line, row } in &tables.constituents {
        present.insert(("constituent", &row.number), (CONSTITUENTS, *line, &row.inci));
    }
    for Lined { line, row } in &tables.materials {
        present.insert(("material", &row.number), (MATERIALS, *line, &row.name));
    }
    let mut given = BTreeSet::new();
    for Lined { line, row } in &tables.numbers {
        if !given.insert((row.kind.as_str(), row.number.as_str())) {
            findings.add(NUMBERS, *line, "data.duplicate", format!("{} {} is there twice", row.kind, row.number));
        }
        let Some((_, _, name)) = present.get(&(row.kind.as_str(), row.number.as_str())) else {
            let gone = format!("{} {} ({}) has vanished: a number is never taken back", row.kind, row.number, row.name);
            findings.add(NUMBERS, *line, "data.vanished", gone);
            continue;
        };
        // A material may get a better name; then the old one stays among its other names.
        let also = tables.materials.iter().filter(|_| row.kind == "material").find(|m| m.row.number == row.number);
        let kept = also.is_some_and(|material| listed(&material.row.other_names).any(|other| other == row.name));
        if *name != row.name && !kept {
            let message = format!("{} {} meant `{}` and now means `{name}`", row.kind, row.number, row.name);
            findings.add(NUMBERS, *line, "data.renumbered", message);
        }
    }
    for (key, (file, line, name)) in &present {
        if !given.contains(key) {
            let message = format!("{} {} ({name}) is not in {NUMBERS}: append it", key.0, key.1);
            findings.add(file, *line, "data.unlisted", message);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{decimal, find_cycle, packed_cas};

    #[test]
    fn a_cas_number_is_known_by_its_check_digit() {
        // 7732-18-5 (water) and 58-08-2 (caffeine) are the examples with which the registry explains its check digit.
        for (written, packed) in [("7732-18-5", 7_732_185), ("58-08-2", 58_082), ("56-81-5", 56_815)] {
            assert_eq!(packed_cas(written), Some(packed));
            for (place, digit) in written.char_indices().filter(|(_, digit)| digit.is_ascii_digit()) {
                let other = char::from(b'0' + (digit as u8 - b'0' + 1) % 10);
                let wrong: String = format!("{}{other}{}", &written[..place], &written[place + 1..]);
                assert_eq!(packed_cas(&wrong), None, "{wrong}");
            }
        }
        for wrong in
            ["", "-", "--", "7732-18", "7732-18-55", "7732-1-5", "7732185", "7-18-5", "7732-18-5-1", "а732-18-5"]
        {
            assert_eq!(packed_cas(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn a_number_is_written_plainly() {
        assert!(decimal("-0.5").is_some() && decimal("12").is_some());
        for wrong in ["", "1,5", "1e3", "1_000", " 1", "+1", "ten", "0x1", "1.2.3", "99999999999999999999999999999999"]
        {
            assert_eq!(decimal(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn a_composite_inside_itself_is_found_at_any_depth() {
        let parts = |number: &'static str| match number {
            "1" => vec!["2", "3"],
            "3" => vec!["4"],
            "4" => vec!["1"],
            _ => vec![],
        };
        assert_eq!(find_cycle("1", &mut Vec::new(), &parts), Some(vec!["1", "3", "4", "1"]));
        assert_eq!(find_cycle("2", &mut Vec::new(), &parts), None);
    }
}
