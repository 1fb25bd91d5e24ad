//! Checks the data files and reports what they hold.
//!
//! `data check` prints every problem, a line each, and ends with 1 if there is one. `data report` prints what the
//! catalogue knows, by file and basis, and two shares, by property and by source: of what can be looked up, and of what is
//! common practice; `--json` prints the same as numbers. `--folder PATH` reads other files than those
//! the catalogue is built from. `data sample` draws published values, the same for the same seed, to be looked up again
//! in their sources. `data pack FOLDER` writes the packed catalogue as a page carries it, for its size to be
//! measured.
#![forbid(unsafe_code)]

use std::collections::BTreeMap;
use std::fmt::Display;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;
use stillroom_catalogue::Basis;
use stillroom_catalogue::tables::{self, Count, Drawn, Report, Share};

fn main() -> ExitCode {
    let mut folder = PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/data"));
    let (mut command, mut operand, mut json) = (None, None, false);
    let (mut seed, mut count) = (1, 100);
    let mut arguments = std::env::args().skip(1);
    while let Some(argument) = arguments.next() {
        match argument.as_str() {
            "--json" => json = true,
            "--seed" => seed = arguments.next().and_then(|text| text.parse().ok()).unwrap_or(seed),
            "--count" => count = arguments.next().and_then(|text| text.parse().ok()).unwrap_or(count),
            "--folder" => folder = arguments.next().map_or(folder, PathBuf::from),
            _ if command.is_none() => command = Some(argument),
            _ => operand = Some(argument),
        }
    }
    let (tables, problems) = tables::read(&folder);
    let (text, code) = match command.as_deref() {
        Some("check") if problems.is_empty() => ("The data files obey every rule.\n".to_owned(), 0),
        Some("check") => (problems.iter().map(|problem| problem.to_string() + "\n").collect(), 1),
        Some("report") if json => (as_json(&tables::report(&tables)), 0),
        Some("report") => (as_table(&tables::report(&tables)), 0),
        Some("sample") => (as_csv(&tables::sample(&tables, seed, count)), 0),
        Some("pack") => pack(&tables, operand.as_deref()),
        _ => ("data check | data report [--json] | data sample [--seed N] [--count N] | data pack FOLDER   [--folder PATH]\n".to_owned(), 2),
    };
    // A reader that has gone away is no failure.
    let _ = std::io::stdout().write_all(text.as_bytes());
    ExitCode::from(code)
}

/// Writes the packed catalogue in both extents.
fn pack(tables: &tables::Tables, folder: Option<&str>) -> (String, u8) {
    let Some(folder) = folder else { return ("data pack needs a folder\n".to_owned(), 2) };
    for (name, extent) in [("main-job", tables::Extent::MainJob), ("cards", tables::Extent::Cards)] {
        let packed = tables::pack_bytes(tables, extent).map_err(|problem| problem.to_string());
        let place = PathBuf::from(folder).join(format!("{name}.postcard"));
        let written = packed.and_then(|bytes| std::fs::write(place, bytes).map_err(|error| error.to_string()));
        if let Err(error) = written {
            return (format!("{error}\n"), 1);
        }
    }
    (String::new(), 0)
}

fn as_json(report: &Report) -> String {
    // Names of properties and sources are plain words: nothing in them needs escaping.
    let counts = |counts: &BTreeMap<String, Count>| {
        let each = counts.iter().map(|(name, Count { values, published })| {
            format!("\"{name}\":{{\"values\":{values},\"published\":{published}}}")
        });
        each.collect::<Vec<_>>().join(",")
    };
    let share = |share: &Share| {
        format!(
            "{{\"values\":{},\"published\":{},\"by_property\":{{{}}},\"by_source\":{{{}}}}}",
            share.all.values,
            share.all.published,
            counts(&share.by_property),
            counts(&share.by_source)
        )
    };
    format!(
        "{{\"materials\":{},\"values\":{},\"published\":{},\"without_source\":{},\"facts\":{},\"practice\":{}}}\n",
        report.materials,
        report.values,
        report.published,
        report.without_source,
        share(&report.facts),
        share(&report.practice)
    )
}

fn as_csv(drawn: &[Drawn]) -> String {
    let quoted = |text: &str| format!("\"{}\"", text.replace('"', "\"\""));
    let mut lines = vec!["file,line,subject,cas,property,value,source,locator\n".to_owned()];
    lines.extend(drawn.iter().map(|drawn| {
        let Drawn { file, line, subject, cas, property, value, source, locator } = drawn;
        let texts = [subject, cas, property, value, source, locator].map(|text| quoted(text));
        format!("{file},{line},{}\n", texts.join(","))
    }));
    lines.concat()
}

fn as_table(report: &Report) -> String {
    let line = |name: &str, all: &dyn Display, by_basis: [String; 4]| {
        let [published, computed, supplier, memory] = by_basis;
        format!("{name:<34}{all:>8}{published:>18}{computed:>18}{supplier:>18}{memory:>18}")
    };
    let mut lines = vec![
        format!(
            "{} materials ({} composites), {} constituents, {} sources\n",
            report.materials, report.composites, report.constituents, report.sources
        ),
        line("values in", &"all", Basis::ALL.map(|basis| basis.slug().to_owned())),
    ];
    for (file, counts) in &report.by_file {
        let count = |basis| counts.get(&basis).unwrap_or(&0).to_string();
        lines.push(line(file, &counts.values().sum::<usize>(), Basis::ALL.map(count)));
    }
    let sum = |basis| report.by_file.values().filter_map(|counts| counts.get(&basis)).sum::<usize>().to_string();
    lines.push(line("together", &report.values, Basis::ALL.map(sum)));
    lines.push(format!("\nwithout a source: {}", report.without_source));
    for (title, share) in [("checkable facts", &report.facts), ("practice values", &report.practice)] {
        lines.push(format!("\n{title}: {}", as_share(&share.all)));
        for (by, counts) in [("property", &share.by_property), ("source", &share.by_source)] {
            lines.push(format!("  by {by}"));
            lines.extend(counts.iter().map(|(name, count)| format!("    {name:<52}{}", as_share(count))));
        }
    }
    lines.push(String::new());
    lines.join("\n")
}

fn as_share(count: &Count) -> String {
    let tenths = count.tenths();
    format!("{} of {} published, {}.{} %", count.published, count.values, tenths / 10, tenths % 10)
}
