//! The crates of other people: whether the lock keeps to `supply.toml`, and the notices of those that are shipped.

use crate::policy;
use crate::toolchain::TARGET;
use crate::workspace::{Workspace, capture};
use anyhow::{Context, Result, bail, ensure};
use serde::Deserialize;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::path::Path;

/// What crates must keep to, beside this crate.
const RULES: &str = "crates/xtask/supply.toml";
/// The lock of the fuzz targets, which is one of its own.
const FUZZ_MANIFEST: &str = "tests/fuzz/Cargo.toml";
/// The only place a crate may come from.
const REGISTRY: &str = "registry+";

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Rules {
    licences: Vec<String>,
    duplicates: BTreeMap<String, String>,
}

/// A crate of somebody else.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
struct Crate {
    name: String,
    version: String,
    licence: String,
    source: String,
    manifest: String,
}

/// Holds both locks against the rules and names what breaks them.
pub fn check(workspace: &Workspace) -> Result<Vec<String>> {
    let rules = rules(workspace)?;
    let mut crates = crates_in(&metadata(workspace, &[])?);
    crates.extend(crates_in(&metadata(workspace, &["--manifest-path", FUZZ_MANIFEST])?));
    ensure!(crates.len() > 50, "cargo names too few crates: {}", crates.len());
    Ok(broken(&rules, &crates))
}

fn rules(workspace: &Workspace) -> Result<Rules> {
    let text = std::fs::read_to_string(workspace.path(RULES)).context(RULES)?;
    toml::from_str(&text).with_context(|| format!("{RULES} is not understood"))
}

fn metadata(workspace: &Workspace, arguments: &[&str]) -> Result<Value> {
    let mut command = workspace.cargo("metadata");
    command.args(["--format-version", "1"]).args(arguments);
    serde_json::from_str(&capture(&mut command)?).context("`cargo metadata` did not answer with JSON")
}

/// Every crate that is not of a workspace of ours.
fn crates_in(metadata: &Value) -> BTreeSet<Crate> {
    let word = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    let packages = metadata["packages"].as_array().into_iter().flatten();
    packages
        .filter(|package| !package["source"].is_null())
        .map(|package| Crate {
            name: word(&package["name"]),
            version: word(&package["version"]),
            licence: word(&package["license"]),
            source: word(&package["source"]),
            manifest: word(&package["manifest_path"]),
        })
        .collect()
}

fn broken(rules: &Rules, crates: &BTreeSet<Crate>) -> Vec<String> {
    let mut broken = Vec::new();
    let mut versions: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
    for Crate { name, version, licence, source, .. } in crates {
        versions.entry(name).or_default().insert(version);
        if !source.starts_with(REGISTRY) {
            broken.push(format!("{name} {version} comes from {source}, not from the registry"));
        }
        if let Err(error) = chosen(licence, &rules.licences) {
            broken.push(format!("{name} {version}: {error}"));
        }
    }
    for (name, versions) in &versions {
        let list = versions.iter().copied().collect::<Vec<_>>().join(", ");
        match (versions.len() > 1, rules.duplicates.contains_key(*name)) {
            (true, false) => broken.push(format!("{name} is there more than once: {list}")),
            (false, true) => broken.push(format!("{name} is there once ({list}): take it off the list in {RULES}")),
            _ => {}
        }
    }
    let gone = rules.duplicates.keys().filter(|name| !versions.contains_key(name.as_str()));
    broken.extend(gone.map(|name| format!("{name} is not there: take it off the list in {RULES}")));
    broken
}

/// The licences to keep to of an expression that may leave a choice: of each choice the first that is allowed.
fn chosen(expression: &str, allowed: &[String]) -> Result<BTreeSet<String>> {
    // Before there were expressions, a stroke stood for `OR`.
    let spaced = expression.replace('(', " ( ").replace(')', " ) ").replace('/', " OR ");
    let mut words: Vec<&str> = spaced.split_whitespace().rev().collect();
    let found = either(&mut words, allowed).filter(|_| words.is_empty());
    let Some(found) = found else { bail!("`{expression}` is no licence that can be read") };
    found.with_context(|| format!("`{expression}` leaves no licence that is allowed"))
}

/// What a part of an expression comes to; `None` inside where nothing of it is allowed, `None` outside where it is none.
type Choice = Option<Option<BTreeSet<String>>>;

fn either(words: &mut Vec<&str>, allowed: &[String]) -> Choice {
    let rank = |choice: &BTreeSet<String>| {
        choice.iter().filter_map(|name| allowed.iter().position(|each| each == name)).max().unwrap_or(usize::MAX)
    };
    let mut best = both(words, allowed)?;
    while words.pop_if(|word| *word == "OR").is_some() {
        let other = both(words, allowed)?;
        best = match (best, other) {
            (Some(first), Some(second)) => Some(if rank(&second) < rank(&first) { second } else { first }),
            (first, second) => first.or(second),
        };
    }
    Some(best)
}

fn both(words: &mut Vec<&str>, allowed: &[String]) -> Choice {
    let mut all = one(words, allowed)?;
    while words.pop_if(|word| *word == "AND").is_some() {
        let more = one(words, allowed)?;
        all = all.zip(more).map(|(first, second)| first.into_iter().chain(second).collect());
    }
    Some(all)
}

fn one(words: &mut Vec<&str>, allowed: &[String]) -> Choice {
    let word = words.pop()?;
    if word == "(" {
        let inner = either(words, allowed)?;
        return (words.pop()? == ")").then_some(inner);
    }
    if [")", "AND", "OR", "WITH"].contains(&word) {
        return None;
    }
    let mut name = word.to_owned();
    if words.pop_if(|word| *word == "WITH").is_some() {
        name = format!("{name} WITH {}", words.pop()?);
    }
    Some(allowed.contains(&name).then(|| BTreeSet::from([name])))
}

/// The page that names every crate in what is shipped, with the licence we keep to and its text.
pub fn notices(workspace: &Workspace) -> Result<String> {
    let rules = rules(workspace)?;
    let metadata = metadata(workspace, &["--filter-platform", TARGET])?;
    let shipped = shipped(&metadata, crate::site::SEAM_PACKAGE)?;
    let mut texts: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for each in crates_in(&metadata).iter().filter(|each| shipped.contains(&(each.name.clone(), each.version.clone())))
    {
        let licences = chosen(&each.licence, &rules.licences)?;
        let folder = Path::new(&each.manifest).parent().context("a manifest lies in no folder")?;
        let text = licence_text(folder, &licences)?;
        let names = licences.iter().cloned().collect::<Vec<_>>().join(", ");
        texts.entry(text).or_default().push(format!("{} {} ({names})", each.name, each.version));
    }
    ensure!(texts.len() > 5, "too few notices: {}", texts.len());
    let mut sections: Vec<(Vec<String>, String)> = texts.into_iter().map(|(text, names)| (names, text)).collect();
    sections.sort();
    sections.insert(0, (vec![OF_THE_COMPILER.to_owned()], MIT.to_owned()));
    Ok(page(&sections))
}

/// What every build holds beside the crates of the lock.
const OF_THE_COMPILER: &str =
    "Rust standard library and the crates in it, copyright The Rust Project contributors (MIT)";

/// Names and versions of the crates that are compiled into a package. What only runs while building is not.
fn shipped(metadata: &Value, package: &str) -> Result<BTreeSet<(String, String)>> {
    let packages: BTreeMap<&str, &Value> = metadata["packages"]
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(|each| Some((each["id"].as_str()?, each)))
        .collect();
    let nodes: BTreeMap<&str, &Value> = metadata["resolve"]["nodes"]
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(|node| Some((node["id"].as_str()?, node)))
        .collect();
    let root = packages.iter().find(|(_, each)| each["name"] == package).map(|(id, _)| *id);
    let mut waiting = vec![root.with_context(|| format!("{package} is not in the graph"))?];
    let mut seen = BTreeSet::new();
    let mut found = BTreeSet::new();
    while let Some(id) = waiting.pop() {
        let (Some(each), Some(node)) = (packages.get(id), nodes.get(id)) else { continue };
        let is_macro = each["targets"].as_array().into_iter().flatten().any(|target| target["kind"][0] == "proc-macro");
        if is_macro || !seen.insert(id) {
            continue;
        }
        let word = |name: &str| each[name].as_str().unwrap_or_default().to_owned();
        found.insert((word("name"), word("version")));
        let compiled = |dependency: &&Value| {
            dependency["dep_kinds"].as_array().into_iter().flatten().any(|kind| kind["kind"].is_null())
        };
        let dependencies = node["deps"].as_array().into_iter().flatten().filter(compiled);
        waiting.extend(dependencies.filter_map(|dependency| dependency["pkg"].as_str()));
    }
    Ok(found)
}

/// The text of the licences chosen and every notice a crate carries along.
fn licence_text(folder: &Path, licences: &BTreeSet<String>) -> Result<String> {
    let mut files: Vec<String> = std::fs::read_dir(folder)?
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| {
            let name = name.to_ascii_uppercase();
            ["LICENSE", "LICENCE", "COPYING", "COPYRIGHT", "NOTICE", "UNLICENSE"].iter().any(|word| name.contains(word))
        })
        .collect();
    files.sort();
    let is_named_by = |file: &str| {
        let file = file.to_ascii_uppercase();
        licences.iter().any(|licence| {
            let word = licence.split(['-', ' ']).next().unwrap_or_default().to_ascii_uppercase();
            file.contains(&word) && !(word != "APACHE" && file.contains("APACHE"))
        })
    };
    let of_the_choice: Vec<&String> = files.iter().filter(|file| is_named_by(file)).collect();
    // A file that names no licence holds the only one, or all.
    let taken: Vec<&String> = if of_the_choice.is_empty() {
        files.iter().collect()
    } else {
        files.iter().filter(|file| is_named_by(file) || is_notice(file)).collect()
    };
    let mut text = String::new();
    for file in taken {
        let _ = writeln!(text, "{}\n", std::fs::read_to_string(folder.join(file))?.replace("\r\n", "\n").trim());
    }
    if text.is_empty() {
        // Some crates carry no text of their own: that of the licence stands for it.
        let licence = licences.first().context("a crate without a licence")?;
        ensure!(licence == "MIT", "{} carries no text of {licence}", folder.display());
        MIT.clone_into(&mut text);
    }
    Ok(text.trim().to_owned())
}

fn is_notice(file: &str) -> bool {
    let file = file.to_ascii_uppercase();
    file.contains("NOTICE") || file.contains("COPYRIGHT")
}

fn page(sections: &[(Vec<String>, String)]) -> String {
    let mut html = format!(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n{}\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <meta name=\"color-scheme\" content=\"light dark\">\n<title>What Stillroom is made of</title>\n\
         <link rel=\"stylesheet\" href=\"./embed/pages.css\">\n</head>\n<body>\n<main>\n\
         <p class=\"quiet\"><a href=\"../\">Stillroom</a></p>\n<h1>What Stillroom is made of</h1>\n\
         <p>Stillroom is licensed under MIT or Apache-2.0, at your choice. It holds work of other people, which they gave \
         under these licences.</p>\n",
        policy::meta_tag()
    );
    for (names, text) in sections {
        html.push_str("<h2>");
        html.push_str(&names.iter().map(|name| escaped(name)).collect::<Vec<_>>().join("<br>"));
        let _ = write!(html, "</h2>\n<pre>{}</pre>\n", escaped(text));
    }
    html.push_str("</main>\n</body>\n</html>\n");
    html
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}

/// The text of the licence `MIT`.
const MIT: &str = "\
Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated \
documentation files (the \"Software\"), to deal in the Software without restriction, including without limitation the \
rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit \
persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the \
Software.

THE SOFTWARE IS PROVIDED \"AS IS\", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE \
WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR \
COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR \
OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.";

#[cfg(test)]
mod tests {
    use super::*;

    fn allowed() -> Vec<String> {
        ["MIT", "ISC", "Apache-2.0", "Apache-2.0 WITH LLVM-exception"].map(str::to_owned).into()
    }

    fn choose(expression: &str) -> String {
        chosen(expression, &allowed())
            .map_or_else(|error| error.to_string(), |names| names.into_iter().collect::<Vec<_>>().join("+"))
    }

    #[test]
    fn of_a_choice_the_first_allowed_is_taken() {
        assert_eq!(choose("Apache-2.0 OR MIT"), "MIT");
        assert_eq!(choose("Apache-2.0/MIT"), "MIT");
        assert_eq!(choose("LGPL-2.1-or-later OR Apache-2.0"), "Apache-2.0");
        assert_eq!(choose("(MIT OR Apache-2.0) AND ISC"), "ISC+MIT");
        assert_eq!(choose("Apache-2.0 WITH LLVM-exception"), "Apache-2.0 WITH LLVM-exception");
    }

    #[test]
    fn a_licence_that_is_not_allowed_is_refused() {
        for expression in ["GPL-3.0-only", "MIT AND GPL-3.0-only", "(GPL-3.0-only OR AGPL-3.0-only) AND MIT"] {
            assert!(choose(expression).contains("no licence that is allowed"), "{expression}: {}", choose(expression));
        }
        for expression in ["", "MIT OR", "(MIT", "MIT Apache-2.0", "MIT)", "AND MIT"] {
            assert!(choose(expression).contains("can be read"), "{expression}: {}", choose(expression));
        }
    }

    fn of(name: &str, version: &str, licence: &str, source: &str) -> Crate {
        let [name, version, licence, source] = [name, version, licence, source].map(str::to_owned);
        Crate { name, version, licence, source, manifest: String::new() }
    }

    #[test]
    fn what_breaks_a_rule_is_named() {
        let rules = |duplicates: &[&str]| Rules {
            licences: allowed(),
            duplicates: duplicates.iter().map(|name| ((*name).to_owned(), "because".to_owned())).collect(),
        };
        let good = BTreeSet::from([of("a", "1", "MIT", "registry+x"), of("b", "1", "ISC", "registry+x")]);
        assert_eq!(broken(&rules(&[]), &good), Vec::<String>::new());
        let mut bad = good.clone();
        bad.insert(of("a", "2", "MIT", "registry+x"));
        assert_eq!(broken(&rules(&["a"]), &bad), Vec::<String>::new());
        assert!(broken(&rules(&[]), &bad)[0].contains("a is there more than once: 1, 2"));
        assert!(broken(&rules(&["b", "a"]), &bad)[0].contains("b is there once"));
        assert!(broken(&rules(&["c"]), &good)[0].contains("c is not there"));
        assert!(broken(&rules(&[]), &BTreeSet::from([of("a", "1", "MIT", "git+x")]))[0].contains("git+x"));
        assert!(broken(&rules(&[]), &BTreeSet::from([of("a", "1", "GPL-3.0-only", "registry+x")]))[0].contains("GPL"));
    }

    #[test]
    fn what_only_builds_is_not_shipped() {
        let package = |name: &str, kind: &str| serde_json::json!({ "id": name, "name": name, "version": "1", "targets": [{ "kind": [kind] }] });
        let on = |name: &str, kind: Value| serde_json::json!({ "pkg": name, "dep_kinds": [{ "kind": kind }] });
        let metadata = serde_json::json!({
            "packages": [package("ours", "lib"), package("in", "lib"), package("deep", "lib"), package("derive", "proc-macro"), package("test", "lib"), package("build", "lib")],
            "resolve": { "nodes": [
                { "id": "ours", "deps": [on("in", Value::Null), on("derive", Value::Null), on("test", "dev".into()), on("build", "build".into())] },
                { "id": "in", "deps": [on("deep", Value::Null)] },
                { "id": "deep", "deps": [] }, { "id": "derive", "deps": [] }, { "id": "test", "deps": [] }, { "id": "build", "deps": [] },
            ] },
        });
        let names: Vec<String> = shipped(&metadata, "ours").unwrap().into_iter().map(|(name, _)| name).collect();
        assert_eq!(names, ["deep", "in", "ours"]);
        assert!(shipped(&metadata, "nothing").is_err());
    }

    #[test]
    fn a_notice_holds_text_as_text() {
        let html = page(&[(vec!["a 1 (MIT)".to_owned()], "<b> & co".to_owned())]);
        assert!(html.contains("<pre>&lt;b&gt; &amp; co</pre>") && html.contains("Content-Security-Policy"));
    }
}
