//! Recipes as people write them, against what a reader at the bench takes from each line. The samples are invented and in
//! shapes of common practice; what is expected was written before the program. See `tests/reference/data/recipes/README.md`.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use proptest::prelude::*;
use rust_decimal::Decimal;
use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::OnceLock;
use stillroom_catalogue::{Catalogue, Confidence, MaterialIndex, Recognised};
use stillroom_core::number::DecimalMark;
use stillroom_core::{MaterialId, MaterialSource, PhaseKind};
use stillroom_exchange::recipe::matching::{Matched, MatchedLine, settle};
use stillroom_exchange::recipe::{Column, Household, Unit, What, Written, read, read_columns};

fn index() -> &'static MaterialIndex {
    static INDEX: OnceLock<MaterialIndex> = OnceLock::new();
    INDEX.get_or_init(|| MaterialIndex::build(Catalogue::get().index_entries()))
}

fn called(id: MaterialId) -> String {
    Catalogue::get().material(id).map_or_else(String::new, |material| material.name.clone())
}

fn recognise(name: &str) -> Recognised {
    index().recognise(name, &called)
}

fn matched(text: &str) -> Matched {
    let mark = DecimalMark::Point;
    settle(read(text, mark).expect("no sample is too long"), mark, &mut recognise)
}

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../tests/reference/data/recipes")
}

/// A row of `expected.csv`.
struct Expected {
    sample: String,
    line: usize,
    kind: String,
    material: String,
    amount: String,
    unit: String,
    phase: String,
}

fn expected() -> Vec<Expected> {
    let mut reader = csv::Reader::from_path(folder().join("expected.csv")).unwrap();
    let rows = reader.records().map(|row| {
        let row = row.unwrap();
        let cell = |at: usize| row[at].to_owned();
        let line = row[1].parse().unwrap();
        Expected {
            sample: cell(0),
            line,
            kind: cell(2),
            material: cell(3),
            amount: cell(4),
            unit: cell(5),
            phase: cell(6),
        }
    });
    rows.collect()
}

fn unit_word(unit: Unit) -> &'static str {
    match unit {
        Unit::Percent => "%",
        Unit::Mass(unit) => unit.symbol(),
        Unit::Volume(unit) => unit.symbol(),
        Unit::Household(Household::Teaspoon) => "tsp",
        Unit::Household(Household::Tablespoon) => "tbsp",
        Unit::Household(Household::Cup) => "cup",
        Unit::Household(Household::Drop) => "drops",
        Unit::Household(Household::Pinch) => "pinch",
        Unit::Parts => "parts",
    }
}

fn said(written: &Written) -> (String, String) {
    match written {
        Written::Missing => ("none".into(), String::new()),
        Written::Rest => ("rest".into(), String::new()),
        // For anything but water `q.s.` is as much as is needed.
        Written::Enough | Written::QuantumSatis => ("enough".into(), String::new()),
        Written::NotRead(_) => ("not-read".into(), String::new()),
        Written::Number { value, to, unit } => {
            let number = |value: &Decimal| value.normalize().to_string();
            let amount = to.as_ref().map_or_else(|| number(value), |to| format!("{}-{}", number(value), number(to)));
            (amount, unit.map_or(String::new(), |unit| unit_word(unit).to_owned()))
        }
    }
}

fn kind_of(what: &What) -> &'static str {
    match what {
        What::Title { .. } => "title",
        What::Size(_) => "size",
        What::Heading(_) => "heading",
        What::Head => "head",
        What::Rule => "rule",
        What::Total => "total",
        What::Note | What::Step => "note",
        What::Material(_) => "material",
    }
}

fn phase_word(kind: PhaseKind) -> &'static str {
    match kind {
        PhaseKind::HeatedWater => "heated-water",
        PhaseKind::HeatedOil => "heated-oil",
        PhaseKind::CoolDown => "cool-down",
        PhaseKind::RoomTemperature => "room-temperature",
    }
}

/// Whether a line names the material it should: decided without asking where one is meant, asked where several are.
fn is_right_material(wanted: &str, found: &MatchedLine) -> bool {
    let names: Vec<String> = found.recognised.materials.iter().map(|id| called(*id)).collect();
    if wanted == "-" {
        return found.decided().is_none();
    }
    if let Some(choices) = wanted.strip_prefix('?') {
        let offered = choices
            .split(';')
            .filter(|choice| !choice.is_empty())
            .all(|choice| names.iter().any(|name| name == choice));
        return found.recognised.confidence == Confidence::Unsure && offered;
    }
    found.decided().map(called).as_deref() == Some(wanted)
}

#[test]
fn lines_are_read_and_matched_as_a_reader_would() {
    let mut by_sample: BTreeMap<String, Vec<Expected>> = BTreeMap::new();
    for row in expected() {
        by_sample.entry(row.sample.clone()).or_default().push(row);
    }
    assert!(by_sample.len() >= 75 + 15, "{} samples", by_sample.len());
    let (mut lines, mut right, mut offered, mut materials, mut amounts, mut wrong) = (0, 0, 0, 0, 0, 0);
    let mut missed = Vec::new();
    for (sample, rows) in &by_sample {
        let text = std::fs::read_to_string(folder().join(format!("{sample}.txt"))).unwrap();
        let recipe = matched(&text);
        let usual = |id| Catalogue::get().material(id).map_or(PhaseKind::HeatedWater, |material| material.usual_phase);
        let chosen: Vec<Option<MaterialId>> = recipe.lines.iter().map(MatchedLine::decided).collect();
        let phases = recipe.phases(&chosen, &usual);
        let mut nth: BTreeMap<usize, usize> = BTreeMap::new();
        for row in rows {
            if row.kind != "material" {
                let found = recipe.others.iter().find(|entry| entry.line == row.line);
                let mut is_right = found.is_some_and(|entry| kind_of(&entry.what) == row.kind);
                if let Some(What::Heading(heading)) = found.map(|entry| &entry.what) {
                    let kind = heading.kind.map_or("", phase_word);
                    is_right &= kind == row.phase || row.phase == "none";
                }
                if !is_right {
                    missed.push(format!("{sample}:{} should be {} {}; is {found:?}", row.line, row.kind, row.phase));
                }
                continue;
            }
            lines += 1;
            let place = nth.entry(row.line).or_default();
            let found = recipe.lines.iter().filter(|line| line.line == row.line).nth(*place);
            *place += 1;
            let Some(found) = found else {
                missed.push(format!("{sample}:{} `{}` is no material", row.line, row.material));
                continue;
            };
            let material_right = is_right_material(&row.material, found);
            let (amount, unit) = said(&found.amount);
            let wanted = row.amount.replace("1/2", "0.5");
            let amount_right = amount == wanted && unit == row.unit;
            let phase_right = row.phase.is_empty() || {
                let at = recipe.lines.iter().position(|line| std::ptr::eq(line, found)).unwrap();
                phases.iter().any(|phase| phase.lines.contains(&at) && phase_word(phase.kind) == row.phase)
            };
            materials += usize::from(material_right);
            amounts += usize::from(amount_right);
            right += usize::from(material_right && amount_right && phase_right);
            let names: Vec<String> = found.recognised.materials.iter().map(|id| called(*id)).collect();
            let in_offer = names.contains(&row.material);
            offered += usize::from(!material_right && in_offer);
            let decided_wrongly = !material_right && found.decided().is_some();
            wrong += usize::from(decided_wrongly);
            if !(material_right && amount_right && phase_right) {
                missed.push(format!(
                    "{sample}:{} `{}` should be {} | {} {} {}; is {:?} {:?} `{}` {amount} {unit}",
                    row.line,
                    found.raw,
                    row.material,
                    row.amount,
                    row.unit,
                    row.phase,
                    found.recognised.confidence,
                    names,
                    found.name
                ));
            }
        }
    }
    println!("{}", missed.join("\n"));
    let tenths = |part: usize| format!("{}.{} %", part * 1000 / lines / 10, part * 1000 / lines % 10);
    println!("{} samples, {lines} lines with a material", by_sample.len());
    println!("material {} ({materials}), amount {} ({amounts})", tenths(materials), tenths(amounts));
    println!(
        "right in all: {} ({right}); right one among those offered: {offered}; taken for another: {wrong}",
        tenths(right)
    );
    assert!(right * 100 >= lines * 90, "{right} of {lines}\n{}", missed.join("\n"));
    // Worse than to ask is to take one material for another without asking.
    assert!(wrong * 100 <= lines, "{wrong} of {lines} taken for another");
}

/// Lines of a text that hold something to be seen, counted from 1.
fn lines_with_something(text: &str) -> Vec<usize> {
    let unseen = |letter: char| {
        letter.is_whitespace()
            || letter.is_control()
            || matches!(letter, '\u{200b}'..='\u{200f}' | '\u{2060}' | '\u{feff}' | '\u{ad}' | '\u{202a}'..='\u{202e}')
    };
    let lines = text.split('\n').flat_map(|line| line.strip_suffix('\r').unwrap_or(line).split('\r'));
    (1..).zip(lines).filter(|(_, line)| !line.chars().all(unseen)).map(|(number, _)| number).collect()
}

fn lines_that_came_back(recipe: &Matched) -> Vec<usize> {
    let materials = recipe.lines.iter().map(|line| (line.line, &line.raw));
    let others = recipe.others.iter().map(|entry| (entry.line, &entry.raw));
    // A cell in quotes may hold line ends.
    let all = materials.chain(others).flat_map(|(line, raw)| {
        let seen = lines_with_something(raw).into_iter().map(move |within| line + within - 1);
        seen.chain([line]).collect::<Vec<_>>()
    });
    let mut lines: Vec<usize> = all.collect();
    lines.sort_unstable();
    lines.dedup();
    lines
}

#[test]
fn no_line_of_a_sample_is_dropped() {
    for entry in std::fs::read_dir(folder()).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|ending| ending == "txt") {
            let text = std::fs::read_to_string(&path).unwrap();
            assert_eq!(lines_that_came_back(&matched(&text)), lines_with_something(&text), "{}", path.display());
        }
    }
}

#[test]
fn the_columns_of_a_table_are_told_apart_as_a_reader_would() {
    let mut reader = csv::Reader::from_path(folder().join("columns.csv")).unwrap();
    let mut wanted: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for row in reader.records() {
        let row = row.unwrap();
        wanted.entry(row[0].to_owned()).or_default().push(row[2].to_owned());
    }
    let (mut columns, mut right) = (0, 0);
    let mut missed = Vec::new();
    for (sample, wanted) in &wanted {
        let text = std::fs::read_to_string(folder().join(format!("{sample}.txt"))).unwrap();
        let found: Vec<&str> = matched(&text).columns.iter().map(|column| column.holds.word()).collect();
        columns += wanted.len();
        right += wanted.iter().zip(&found).filter(|(wanted, found)| wanted == *found).count();
        if found != *wanted {
            missed.push(format!("{sample} should be {wanted:?}; is {found:?}"));
        }
    }
    println!("{} tables, {columns} columns, {right} told right\n{}", wanted.len(), missed.join("\n"));
    assert!(wanted.len() >= 15 && right == columns && missed.is_empty(), "{missed:?}");
}

#[test]
fn what_a_maker_says_of_a_column_counts() {
    let text = "Distilled water\t70\t12\nGlycerin\t30\t88\n";
    let plain = matched(text);
    assert_eq!(
        plain.columns.iter().map(|column| column.holds).collect::<Vec<_>>(),
        [Column::Name, Column::Percent, Column::LeftOut]
    );
    let mark = DecimalMark::Point;
    let chosen = BTreeMap::from([(2, Column::Percent)]);
    let other = settle(read_columns(text, mark, &chosen).unwrap(), mark, &mut recognise);
    assert_eq!(
        other.columns.iter().map(|column| column.holds).collect::<Vec<_>>(),
        [Column::Name, Column::LeftOut, Column::Percent]
    );
    assert_eq!(said(&other.lines[1].amount), ("88".into(), "%".into()));
    // Nothing that is chosen drops a line.
    for place in 0..3 {
        for holds in Column::ALL {
            let chosen = BTreeMap::from([(place, holds)]);
            let recipe = settle(read_columns(text, mark, &chosen).unwrap(), mark, &mut recognise);
            assert_eq!(lines_that_came_back(&recipe), [1, 2], "{place} {holds:?}");
        }
    }
}

#[test]
fn grams_beside_percents_say_what_the_whole_weighs() {
    let text = "Ingredient\t%\tGrams\nDistilled water\t70\t140\nGlycerin\t30\t60\n";
    assert_eq!(matched(text).grams_beside.map(|grams| grams.value().to_string()), Some("200".into()));
    assert_eq!(matched("Ingredient\t%\nDistilled water\t70\nGlycerin\t30\n").grams_beside, None);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(160))]

    #[test]
    fn any_text_is_read_and_no_line_of_it_is_dropped(text in "(\\PC{0,40}[\\n\\r\\t]{0,2}){0,12}") {
        let recipe = matched(&text);
        prop_assert_eq!(lines_that_came_back(&recipe), lines_with_something(&text));
    }

    #[test]
    fn tables_are_read_and_no_line_of_them_is_dropped(
        lines in prop::collection::vec("((water|Glycerin|oil phase|Total|A|%|INCI|[0-9]{1,3}|€ 2|\"|\"x|)[\t;,]){1,5}(5 g|note)?", 0..10),
    ) {
        let text = lines.join("\n");
        let recipe = matched(&text);
        prop_assert_eq!(lines_that_came_back(&recipe), lines_with_something(&text));
    }

    #[test]
    fn texts_like_recipes_are_read_and_no_line_of_them_is_dropped(
        lines in prop::collection::vec("[-*•#|]{0,2} ?(Phase )?([ABC] )?(water|Glycerin|vit E|öl|½|oil phase|total|method|q\\.s\\.)?[ ,;:|\t(]{0,3}([0-9]{1,4}[.,]?[0-9]{0,3})?( ?(%|g|oz|tsp|ml|to 100|-5|°C))?[)|;]?", 0..14),
    ) {
        let text = lines.join("\n");
        let recipe = matched(&text);
        prop_assert_eq!(lines_that_came_back(&recipe), lines_with_something(&text));
    }
}
