//! What the first visit costs: bytes per file of the built site, held against a budget.
//!
//! The first load is what the page needs before its first view stands. The rooms, the pieces of the seam and the icons come
//! later; they are shown apart.

use crate::compress;
use crate::site::{self, Built, Files};
use crate::texts;
use crate::workspace::{Workspace, ending, files_below, run};
use anyhow::{Context, Result};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::fmt::Write as _;

/// The budget's file, beside this crate.
const BUDGET: &str = "crates/xtask/budget.toml";

/// What may be used, in bytes as sent with brotli.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Budget {
    /// More than this fails.
    total: usize,
    /// What is aimed at; more than this is said but does not fail.
    aim: usize,
    /// What everything beyond the first load may cost.
    later: usize,
    /// The same per kind of file; kinds are file endings, and `other`.
    kinds: BTreeMap<String, usize>,
}

/// One file of the site.
#[derive(Debug, Serialize)]
pub struct FileSize {
    path: String,
    raw: usize,
    brotli: usize,
    /// Whether it is not part of the first load.
    later: bool,
    /// Whether only a page in another language than the first fetches it.
    other_language: bool,
}

/// The whole site against its budget.
#[derive(Debug, Serialize)]
pub struct SizeReport {
    files: Vec<FileSize>,
    /// Of the first load.
    total_brotli: usize,
    /// Of what comes later, in the background, to a page in the first language.
    later_brotli: usize,
    /// Of the texts of the other languages; a page fetches those of one.
    other_languages_brotli: usize,
    budget: usize,
    later_budget: usize,
    #[serde(skip)]
    aim: usize,
    #[serde(skip)]
    kinds: Vec<(String, usize, usize)>,
    #[serde(skip)]
    wasm_before_shrinking: BTreeMap<String, usize>,
    /// What the packed catalogue costs inside each form of the seam: name, bytes, bytes with brotli on its own.
    #[serde(skip)]
    catalogue: Vec<(&'static str, usize, usize)>,
}

/// Measures `dist/`.
pub fn measure(workspace: &Workspace, built: &Built) -> Result<SizeReport> {
    let budget = read_budget(&std::fs::read_to_string(workspace.path(BUDGET)).context(BUDGET)?)?;
    let dist = workspace.dist();
    let mut site = Files::new();
    for path in files_below(&dist)? {
        site.insert(path.clone(), std::fs::read(dist.join(&path))?);
    }
    let first = site::first_load(&site);
    let mut files = Vec::new();
    for (path, content) in site {
        // What no host compresses is sent as it is.
        let brotli = if compress::is_worthwhile(&path) { compress::brotli(&content, 11)?.len() } else { content.len() };
        let later = !first.contains(&path);
        let other_language = texts::is_of_another_language(&path);
        files.push(FileSize { path, raw: content.len(), brotli, later, other_language });
    }
    let mut report = compare(files, &budget, built.wasm_before_shrinking.clone());
    report.catalogue = measure_catalogue(workspace)?;
    Ok(report)
}

/// Packs the catalogue as the build does and measures it on its own: its share of a seam.
fn measure_catalogue(workspace: &Workspace) -> Result<Vec<(&'static str, usize, usize)>> {
    let folder = workspace.target.join("xtask/catalogue");
    std::fs::create_dir_all(&folder)?;
    let mut data = workspace.cargo("run");
    data.args(["--quiet", "--package", "stillroom-catalogue", "--bin", "data", "--", "pack"]).arg(&folder);
    run(&mut data)?;
    [("main-job.postcard", "catalogue in the first load"), ("cards.postcard", "catalogue with every card")]
        .into_iter()
        .map(|(file, name)| {
            let bytes = std::fs::read(folder.join(file))?;
            Ok((name, bytes.len(), compress::brotli(&bytes, 11)?.len()))
        })
        .collect()
}

fn read_budget(text: &str) -> Result<Budget> {
    toml::from_str(text).with_context(|| format!("{BUDGET} is not understood"))
}

fn compare(files: Vec<FileSize>, budget: &Budget, wasm_before_shrinking: BTreeMap<String, usize>) -> SizeReport {
    let first = || files.iter().filter(|file| !file.later);
    let kind_of = |path: &str| {
        let ending = ending(path);
        if budget.kinds.contains_key(ending) { ending.to_owned() } else { "other".to_owned() }
    };
    let kinds = budget
        .kinds
        .iter()
        .map(|(kind, limit)| {
            let used = first().filter(|file| kind_of(&file.path) == *kind).map(|file| file.brotli).sum();
            (kind.clone(), used, *limit)
        })
        .collect();
    SizeReport {
        total_brotli: first().map(|file| file.brotli).sum(),
        later_brotli: files.iter().filter(|file| file.later && !file.other_language).map(|file| file.brotli).sum(),
        other_languages_brotli: files.iter().filter(|file| file.other_language).map(|file| file.brotli).sum(),
        files,
        budget: budget.total,
        later_budget: budget.later,
        aim: budget.aim,
        kinds,
        wasm_before_shrinking,
        catalogue: Vec::new(),
    }
}

impl SizeReport {
    /// Whether everything is within its limit.
    pub fn is_within_budget(&self) -> bool {
        self.total_brotli <= self.budget
            && self.later_brotli <= self.later_budget
            && self.kinds.iter().all(|(_, used, limit)| used <= limit)
    }

    /// The report as a table. Wasm is shown as generated and as shrunk by `wasm-opt`.
    pub fn table(&self) -> String {
        let width = self.files.iter().map(|file| file.path.len()).max().unwrap_or(0).max(14);
        let mut table = format!("{:<width$} {:>9} {:>9} {:>9}\n", "file", "raw", "wasm-opt", "brotli");
        for file in &self.files {
            let name = file.path.rsplit('/').next().unwrap_or_default();
            let before = self.wasm_before_shrinking.get(name);
            let shrunk = before.map_or_else(String::new, |_| file.raw.to_string());
            let raw = before.unwrap_or(&file.raw);
            let mark = match (file.later, file.other_language) {
                (_, true) => "  another language",
                (true, false) => "  later",
                (false, false) => "",
            };
            let _ = writeln!(table, "{:<width$} {raw:>9} {shrunk:>9} {:>9}{mark}", file.path, file.brotli);
        }
        table.push('\n');
        for (kind, used, limit) in &self.kinds {
            let mark = if used > limit { "  OVER" } else { "" };
            let _ = writeln!(table, "{kind:<width$} {used:>9} of {limit:>9}{mark}");
        }
        let mark = if self.total_brotli > self.budget {
            "  OVER".to_owned()
        } else if self.total_brotli > self.aim {
            format!("  (aim {})", self.aim)
        } else {
            String::new()
        };
        let _ = writeln!(table, "{:<width$} {:>9} of {:>9}{mark}", "first load", self.total_brotli, self.budget);
        let mark = if self.later_brotli > self.later_budget { "  OVER" } else { "" };
        let _ = writeln!(table, "{:<width$} {:>9} of {:>9}{mark}", "later", self.later_brotli, self.later_budget);
        let _ = writeln!(table, "{:<width$} {:>9}", "other languages", self.other_languages_brotli);
        for (name, raw, brotli) in &self.catalogue {
            let _ = writeln!(table, "{name:<width$} {brotli:>9}, {raw} before brotli");
        }
        table
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "total = 100\naim = 80\nlater = 99\n[kinds]\nwasm = 60\njs = 30\nother = 20\n";

    fn file(path: &str, brotli: usize) -> FileSize {
        FileSize { path: path.to_owned(), raw: brotli * 3, brotli, later: false, other_language: false }
    }

    fn report(files: Vec<FileSize>) -> SizeReport {
        compare(files, &read_budget(TEXT).unwrap(), BTreeMap::from([("stillroom_bg.wasm".to_owned(), 400)]))
    }

    #[test]
    fn the_total_and_each_kind_have_a_limit() {
        let within = report(vec![file("a.wasm", 60), file("b.js", 30), file("sw.js", 0), file("LICENSE", 10)]);
        assert!(within.is_within_budget() && within.total_brotli == 100);
        let over_in_all = report(vec![file("a.wasm", 60), file("b.js", 30), file("c.css", 11)]);
        assert!(!over_in_all.is_within_budget(), "the total is over");
        let over_in_kind = report(vec![file("b.js", 20), file("c.js", 11)]);
        assert!(!over_in_kind.is_within_budget() && over_in_kind.table().contains("OVER"), "scripts are over");
    }

    #[test]
    fn what_comes_later_is_counted_apart() {
        let report = report(vec![
            file("v-1/seam/stillroom_bg.wasm", 50),
            FileSize { later: true, ..file("v-1/seam/split_whole.wasm", 90) },
            FileSize { later: true, ..file("icons/a.png", 9) },
        ]);
        assert_eq!((report.total_brotli, report.later_brotli), (50, 99));
        assert!(report.is_within_budget());
        let over = self::report(vec![FileSize { later: true, ..file("icons/a.png", 100) }]);
        assert!(!over.is_within_budget() && over.table().contains("OVER"), "what comes later has a limit, too");
    }

    #[test]
    fn the_wasm_row_shows_both_sizes() {
        let table = report(vec![file("seam/stillroom_bg.wasm", 60)]).table();
        assert!(table.lines().any(|line| line.contains("400") && line.contains("180") && line.contains("60")));
    }

    #[test]
    fn the_json_form_is_the_promised_one() {
        let json = serde_json::to_value(report(vec![file("b.js", 20)])).unwrap();
        let expected = serde_json::json!({
            "files": [{ "path": "b.js", "raw": 60, "brotli": 20, "later": false, "other_language": false }],
            "total_brotli": 20, "later_brotli": 0, "other_languages_brotli": 0, "budget": 100, "later_budget": 99,
        });
        assert_eq!(json, expected);
    }

    #[test]
    fn a_budget_with_a_misspelt_key_is_refused() {
        assert!(read_budget("total = 1\naim = 1\nlater = 1\nlimit = 3\n[kinds]\n").is_err());
        assert!(read_budget("total = 1\n[kinds]\n").is_err());
    }

    #[test]
    fn the_kept_budget_is_understood() {
        let budget = read_budget(include_str!("../budget.toml")).unwrap();
        assert_eq!(budget.total, 188_000);
        assert!(budget.aim < budget.total && budget.kinds.contains_key("other"));
        assert!(budget.kinds.values().sum::<usize>() <= budget.total, "the kinds promise more than the whole");
    }
}
