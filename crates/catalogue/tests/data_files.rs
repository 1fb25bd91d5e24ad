//! The rules of the data files, each broken once on purpose.

#![cfg(feature = "tables")]
#![allow(clippy::unwrap_used)]

use std::fs;
use std::path::{Path, PathBuf};
use stillroom_catalogue::tables;

fn data() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("data")
}

/// Copies the data files, lets `change` break one of them, and returns the codes of the problems found.
fn codes_after(test: &str, file: &str, change: impl Fn(String) -> String) -> Vec<String> {
    let folder = std::env::temp_dir().join(format!("stillroom-data-{}-{test}", std::process::id()));
    fs::create_dir_all(&folder).unwrap();
    for entry in fs::read_dir(data()).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            continue;
        }
        fs::copy(&path, folder.join(path.file_name().unwrap())).unwrap();
    }
    let text = fs::read_to_string(folder.join(file)).unwrap();
    fs::write(folder.join(file), change(text)).unwrap();
    let (_, problems) = tables::read(&folder);
    fs::remove_dir_all(&folder).unwrap();
    problems.into_iter().map(|problem| problem.code.to_owned()).collect()
}

fn append(row: &'static str) -> impl Fn(String) -> String {
    move |text| text + row + "\n"
}

#[test]
fn the_data_files_obey_every_rule() {
    let (tables, problems) = tables::read(&data());
    let lines: Vec<String> = problems.iter().map(ToString::to_string).collect();
    assert_eq!(lines, Vec::<String>::new());
    assert_eq!(tables::report(&tables).without_source, 0);
}

#[test]
fn a_row_without_source_or_basis_is_refused() {
    let codes = codes_after("source", "properties.csv", append("material,1,shelf-life,12,,,months,,,,,memory"));
    assert_eq!(codes, ["data.no-source"]);
    let codes = codes_after("basis", "properties.csv", append("material,1,shelf-life,12,,,months,,,ph-eur,,"));
    assert_eq!(codes, ["data.no-basis"]);
    let codes =
        codes_after("dangling", "properties.csv", append("material,1,shelf-life,12,,,months,,,no-such,,memory"));
    assert_eq!(codes, ["data.dangling"]);
}

#[test]
fn a_value_outside_its_range_or_in_another_unit_is_refused() {
    let codes = codes_after("range", "properties.csv", append("material,1,hlb,41,,,,99 °C,,ph-eur,,memory"));
    assert_eq!(codes, ["data.range"]);
    let codes = codes_after("unit", "properties.csv", append("material,1,shelf-life,12,,,days,,,ph-eur,,memory"));
    assert_eq!(codes, ["data.unit"]);
    let codes = codes_after("order", "properties.csv", append("material,1,hlb,9,10,11,,99 °C,,ph-eur,,memory"));
    assert_eq!(codes, ["data.range"]);
    let codes = codes_after("word", "properties.csv", append("material,1,charge,ionic,,,,99 °C,,ph-eur,,memory"));
    assert_eq!(codes, ["data.choice"]);
}

#[test]
fn a_source_without_a_licence_or_with_terms_that_forbid_trade_is_refused() {
    let codes = codes_after("no-licence", "sources.csv", |text| text.replace(",CC0-1.0\n", ",\n"));
    assert!(!codes.is_empty() && codes.iter().all(|code| code == "data.no-licence"), "{codes:?}");
    let codes = codes_after("nc", "sources.csv", |text| text.replace(",MIT\n", ",CC-BY-NC-4.0\n"));
    assert!(!codes.is_empty() && codes.iter().all(|code| code == "data.licence"), "{codes:?}");
}

/// A misspelt word takes its row out of whatever reads it; each of these was possible once.
#[test]
fn a_misspelt_word_is_refused() {
    for (file, right, wrong) in [
        ("functions.csv", "; solvent", "; sovlent"),
        ("properties.csv", ",20 °C,", ",20 °F,"),
        ("properties-imported.csv", ",25 °C,", ",25C,"),
        ("partition.csv", ",oil_water_K,", ",oil-water-K,"),
        ("partition.csv", ",soya oil/water,", ",soja oil/water,"),
        ("solubility-cosolvent.csv", ",ethanol,", ",ethanoll,"),
        ("solubility-cosolvent.csv", "g/100 g solvent", "g/100g solvent"),
        ("preservative-limits.csv", ",annex_v,", ",annex-v,"),
        ("preservative-limits.csv", ",EU,", ",EUU,"),
        ("restricted.csv", ",EU,2024-02,", ",EU,Feb 2024,"),
        ("fragrance-allergens.csv", ",EU,", ",E U,"),
        ("plants.csv", ",dried,", ",dryed,"),
        ("fatty-acids.csv", ",18:1,", ",18-1,"),
        ("acid-salts.csv", ",Benzoic Acid,", ",Benzoik Acid,"),
        ("essential-oil-constituents.csv", ",Linalool,molecules", ",Linalol,molecules"),
        ("limit-members.csv", "Parabens, all esters together as acid", "Parabens together"),
        ("sources.csv", ",dataset,", ",data set,"),
    ] {
        let codes = codes_after(&format!("word-{file}"), file, |text| {
            assert!(text.contains(right), "{file} has no `{right}`");
            text.replace(right, wrong)
        });
        let words = ["data.word", "data.source-kind", "data.dangling"];
        assert!(codes.iter().any(|code| words.contains(&code.as_str())), "{file} `{wrong}`: {codes:?}");
    }
}

#[test]
fn a_composite_must_sum_to_the_whole() {
    let codes = codes_after("sum", "composites.csv", append("1,2,40,,typical-composition,,supplier-typical"));
    assert!(codes.contains(&"data.sum".to_owned()) && codes.contains(&"data.ambiguous".to_owned()), "{codes:?}");
}

#[test]
fn a_composite_may_not_contain_itself() {
    let codes = codes_after("cycle", "composites.csv", |text| {
        let own = text.lines().nth(1).unwrap().split(',').next().unwrap().to_owned();
        text + &format!("{own},{own},0.1,,typical-composition,,supplier-typical\n")
    });
    assert!(codes.contains(&"data.cycle".to_owned()), "{codes:?}");
}

#[test]
fn a_number_that_vanishes_or_is_not_listed_is_noticed() {
    let codes = codes_after("vanished", "numbers.csv", append("material,999999,Never there"));
    assert_eq!(codes, ["data.vanished"]);
    let codes = codes_after("unlisted", "numbers.csv", |text| {
        text.split_inclusive('\n').filter(|line| !line.starts_with("material,1,")).collect()
    });
    assert_eq!(codes, ["data.unlisted"]);
}

#[test]
fn a_number_keeps_its_meaning() {
    let codes = codes_after("meaning", "numbers.csv", |text| text.replace(",Caffeine\n", ",Theobromine\n"));
    assert_eq!(codes, ["data.renumbered", "data.renumbered"], "of the constituent and of the material");
}

/// Links that people have shared hold these numbers. New rows are appended and change nothing here; if this test
/// fails, a number was taken back or given another meaning.
#[test]
fn numbers_given_out_at_the_first_release_are_untouched() {
    const RELEASED: [(&str, usize); 2] = [("constituent", 610), ("material", 796)];
    let (tables, _) = tables::read(&data());
    let mut digest = 0xcbf2_9ce4_8422_2325_u64;
    for (kind, released) in RELEASED {
        for number in 1..=released {
            let number = number.to_string();
            let row = tables.numbers.iter().find(|row| row.row.kind == kind && row.row.number == number);
            let row = row.unwrap_or_else(|| panic!("{kind} {number} is not listed"));
            // FNV-1a, 64 bits.
            for byte in format!("{kind},{number},{}\n", row.row.name).bytes() {
                digest = (digest ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
            }
        }
    }
    assert_eq!(digest, 0x1cbd_3218_31e3_e9a5, "digest {digest:#018x}");
}

#[test]
fn a_wrong_check_digit_and_a_duplicate_are_refused() {
    let codes = codes_after("cas", "constituents.csv", |text| text.replace("56-81-5", "56-81-6"));
    assert_eq!(codes, ["data.cas"]);
    let mut codes = codes_after("twice", "constituents.csv", |text| text.replace(",Caffeine,", ",Betaine,"));
    // Other tables name it beside its number.
    codes.retain(|code| code != "data.word");
    assert_eq!(codes, ["data.duplicate", "data.renumbered"]);
}

#[test]
fn a_torn_file_is_named_with_its_line() {
    let codes = codes_after("torn", "materials.csv", append("only,three,cells"));
    assert!(codes.contains(&"data.unreadable".to_owned()), "{codes:?}");
}

#[test]
fn a_limit_that_nothing_can_reach_is_refused() {
    let row = ",Nothing That Is,,,,EU,2024,,III/0,1,1,,,eu-annex-iii-2024,,memory";
    assert_eq!(codes_after("unreachable", "restricted.csv", append(row)), ["data.unreachable"]);
    let named = ",Nothing That Is,,,Nothing That Is,EU,2024,,III/0,1,1,,,eu-annex-iii-2024,,memory";
    assert_eq!(codes_after("reached", "restricted.csv", append(named)), Vec::<String>::new());
    let silent = ",Nothing That Is,,,Nothing That Is,EU,2024,,III/0,,,,,eu-annex-iii-2024,,memory";
    assert_eq!(codes_after("silent", "restricted.csv", append(silent)), ["data.unreachable"]);
    let member = "No Such Row,1,Aqua,,1,,general-handbooks,,computed";
    assert_eq!(codes_after("member", "limit-members.csv", append(member)), ["data.dangling"]);
}

#[test]
fn a_word_that_no_check_knows_is_refused() {
    let codes = codes_after("trait", "traits.csv", append("1,Aqua,wet,,general-handbooks,,memory"));
    assert_eq!(codes, ["data.unknown-word"]);
    let kind = ",Nothing That Is,,elbow,Nothing That Is,EU,2024,,III/0,1,1,,,eu-annex-iii-2024,,memory";
    assert_eq!(codes_after("kind", "restricted.csv", append(kind)), ["data.unknown-word"]);
}

#[test]
fn the_words_of_the_data_files_are_those_of_the_checks() {
    let traits = stillroom_core::checks::facts::Trait::WORDS.map(|(word, _)| word);
    assert_eq!(traits.to_vec(), tables::TRAITS.to_vec());
    let kinds = stillroom_core::ProductKind::ALL.map(stillroom_core::ProductKind::slug);
    assert_eq!(kinds.to_vec(), tables::KINDS.to_vec());
}
