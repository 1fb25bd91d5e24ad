//! House rules that no compiler knows, each a function from what it looks at to the places that break it.

use crate::dead;
use crate::texts;
use crate::workspace::{Workspace, capture};
use anyhow::Result;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::process::Command;

/// What each crate of ours may depend on among ours. The arrows run one way.
const ARROWS: [(&str, &[&str]); 6] = [
    ("stillroom-terms", &[]),
    ("stillroom-messages", &[]),
    ("stillroom-core", &["stillroom-terms"]),
    ("stillroom-catalogue", &["stillroom-terms", "stillroom-core"]),
    ("stillroom-exchange", &["stillroom-core", "stillroom-catalogue"]),
    ("stillroom-web", &["stillroom-core", "stillroom-catalogue", "stillroom-exchange"]),
];

/// Crates that know the browser. Only the web crate may use them.
const BROWSER_CRATES: [&str; 6] =
    ["js-sys", "serde-wasm-bindgen", "tsify", "wasm-bindgen", "wasm-bindgen-futures", "web-sys"];

/// Crates that hold no unsafe code and open with what they are for.
const FOUNDATIONS: [&str; 5] = ["terms", "messages", "core", "catalogue", "exchange"];

/// A rule: what it asks for, and the places that break it.
#[derive(Debug)]
pub struct Verdict {
    /// What the rule asks for.
    pub rule: &'static str,
    /// Where it is broken, in words.
    pub broken: Vec<String>,
}

/// A tracked text file.
#[derive(Debug)]
struct TextFile {
    path: String,
    content: String,
}

/// Looks at the whole repository.
pub fn check(workspace: &Workspace) -> Result<Vec<Verdict>> {
    let packages: Vec<Value> = workspace.packages().cloned().collect();
    let files = tracked_files(workspace)?;
    let verdict = |rule, broken| Verdict { rule, broken };
    Ok(vec![
        verdict("crates depend on each other one way", wrong_arrows(&packages)),
        verdict("the modules of core need each other one way", circles_in_core(&files)),
        verdict("only the web crate knows the browser", browser_knowledge(&packages)),
        verdict("the bindings generator and the bindings have one version", unequal_pins(&packages)),
        verdict("foundations forbid unsafe code and say what they own", careless_foundations(&files)),
        verdict("no test is ignored", ignored_tests(&files)),
        verdict("no file names a path of one machine or a registry's host", machine_paths(&files)),
        verdict("pages hold no inline script or style", inline_code(&files)),
        verdict("scripts treat text as text", text_as_code(&files)),
        verdict("scripts are checked for types", unchecked_scripts(&files)),
        verdict("every word of the page is said", unsaid_words(workspace, &files)?),
        verdict("what a script exports another imports", dead::unused_exports(&page_scripts(&files))),
        verdict("no script is longer than what one person holds in mind", long_scripts(&files)),
        verdict("what continuous integration runs of others is named by commit", unpinned_actions(&files)),
    ])
}

fn tracked_files(workspace: &Workspace) -> Result<Vec<TextFile>> {
    let mut git = Command::new("git");
    // A checkout that belongs to somebody else, as in a container, may still be listed.
    git.current_dir(&workspace.root).args([
        "-c",
        "safe.directory=*",
        "ls-files",
        "-z",
        "--cached",
        "--others",
        "--exclude-standard",
    ]);
    let listed = capture(&mut git)?;
    let files = listed.split('\0').filter(|path| !path.is_empty()).filter_map(|path| {
        // Pictures are no text, and a file deleted a moment ago is no file.
        let content = std::fs::read_to_string(workspace.path(path)).ok()?;
        Some(TextFile { path: path.to_owned(), content })
    });
    Ok(files.collect())
}

/// The names a package depends on, of one kind: `""` for the ordinary ones.
fn dependencies<'p>(package: &'p Value, kind: &'p str) -> impl Iterator<Item = &'p str> {
    package["dependencies"]
        .as_array()
        .into_iter()
        .flatten()
        .filter(move |dependency| dependency["kind"].as_str().unwrap_or_default() == kind)
        .filter_map(|dependency| dependency["name"].as_str())
}

fn wrong_arrows(packages: &[Value]) -> Vec<String> {
    let mut broken = Vec::new();
    for (name, allowed) in ARROWS {
        let Some(package) = packages.iter().find(|package| package["name"] == name) else {
            broken.push(format!("{name} is missing from the workspace"));
            continue;
        };
        for dependency in dependencies(package, "") {
            let is_ours = packages.iter().any(|package| package["name"] == dependency);
            if is_ours && !allowed.contains(&dependency) {
                broken.push(format!("{name} depends on {dependency}"));
            }
        }
    }
    broken
}

/// Modules of core, by the name that stands below `crate::`, that need each other in a circle. Tests may look anywhere.
fn circles_in_core(files: &[TextFile]) -> Vec<String> {
    let mut needs: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
    for file in files {
        let Some(path) = file.path.strip_prefix("crates/core/src/").and_then(|path| path.strip_suffix(".rs")) else {
            continue;
        };
        if path == "lib" || path.ends_with("/tests") {
            continue;
        }
        let module = path.split('/').next().unwrap_or_default();
        let code = file.content.split("#[cfg(test)]").next().unwrap_or_default();
        let code = code.lines().filter(|line| !line.trim_start().starts_with("//"));
        let named = code.flat_map(|line| line.split("crate::").skip(1)).map(|rest| {
            let end = rest.find(|letter: char| !letter.is_ascii_lowercase() && letter != '_').unwrap_or(rest.len());
            &rest[..end]
        });
        needs.entry(module).or_default().extend(named.filter(|other| *other != module));
    }
    // What needs nothing that is left stands below all others: taken away, again and again, it leaves the circles.
    loop {
        let left: BTreeSet<&str> = needs.keys().copied().collect();
        let before = needs.len();
        needs.retain(|_, others| others.iter().any(|other| left.contains(other)));
        if needs.len() == before {
            return needs.into_keys().map(str::to_owned).collect();
        }
    }
}

fn browser_knowledge(packages: &[Value]) -> Vec<String> {
    let mut broken = Vec::new();
    for package in packages {
        let name = package["name"].as_str().unwrap_or_default();
        if name == "stillroom-web" {
            continue;
        }
        for dependency in dependencies(package, "") {
            if BROWSER_CRATES.contains(&dependency) {
                broken.push(format!("{name} depends on {dependency}"));
            }
        }
    }
    broken
}

fn unequal_pins(packages: &[Value]) -> Vec<String> {
    let requirement = |package: &str, dependency: &str| {
        packages
            .iter()
            .filter(|found| found["name"] == package)
            .flat_map(|found| found["dependencies"].as_array().into_iter().flatten())
            .find(|found| found["name"] == dependency)
            .and_then(|found| found["req"].as_str())
            .unwrap_or("nothing")
            .to_owned()
    };
    let bindings = requirement("stillroom-web", "wasm-bindgen");
    let mut broken = Vec::new();
    if !bindings.starts_with('=') {
        broken.push(format!("stillroom-web asks for wasm-bindgen {bindings}, not for one exact version"));
    }
    let generator = requirement("xtask", "wasm-bindgen-cli-support");
    if generator != bindings {
        broken.push(format!("wasm-bindgen-cli-support {generator} is not wasm-bindgen {bindings}"));
    }
    broken
}

fn careless_foundations(files: &[TextFile]) -> Vec<String> {
    let mut broken = Vec::new();
    for name in FOUNDATIONS {
        let path = format!("crates/{name}/src/lib.rs");
        let Some(file) = files.iter().find(|file| file.path == path) else {
            broken.push(format!("{path} is missing"));
            continue;
        };
        if !file.content.lines().any(|line| line == "#![forbid(unsafe_code)]") {
            broken.push(format!("{path} does not forbid unsafe code"));
        }
        let words: usize = file
            .content
            .lines()
            .filter_map(|line| line.strip_prefix("//!"))
            .map(|line| line.split_whitespace().count())
            .sum();
        if words < 20 {
            broken.push(format!("{path} does not say what the crate owns and must not know"));
        }
    }
    broken
}

/// The places in files of some kinds whose line answers to a rule.
fn lines_where(files: &[TextFile], endings: &[&str], breaks: impl Fn(&str) -> bool) -> Vec<String> {
    let mut broken = Vec::new();
    for file in files.iter().filter(|file| endings.iter().any(|ending| file.path.ends_with(ending))) {
        for (number, line) in file.content.lines().enumerate() {
            if breaks(line) {
                broken.push(format!("{}:{}", file.path, number + 1));
            }
        }
    }
    broken
}

fn ignored_tests(files: &[TextFile]) -> Vec<String> {
    let mut broken = lines_where(files, &[".rs"], |line| {
        let line = line.trim_start();
        line.starts_with("#[ignore") || (line.starts_with("#[cfg_attr") && line.contains(concat!("ign", "ore")))
    });
    broken.extend(lines_where(files, &[".spec.js", ".test.js", ".test.mjs"], |line| {
        ["test", "describe", "it"]
            .iter()
            .any(|call| [".skip(", ".only(", ".fixme("].iter().any(|suffix| line.contains(&format!("{call}{suffix}"))))
    }));
    broken
}

fn machine_paths(files: &[TextFile]) -> Vec<String> {
    // Put together here, so that this file does not break its own rule.
    let folders = ["work", "root", "home", "Users", "tmp"].map(|name| format!("/{name}/"));
    let hosts = [
        ["registry.npmjs", ".org"],
        ["index.crates", ".io"],
        ["static.crates", ".io"],
        ["deb.debian", ".org"],
        ["files.pythonhosted", ".org"],
    ]
    .map(|parts| parts.concat());
    let names_a_folder = |line: &str| {
        folders.iter().any(|folder| {
            line.match_indices(folder.as_str()).any(|(place, _)| {
                // Part of a longer path or of an address is something else.
                let before = line[..place].chars().next_back();
                !before.is_some_and(|before| before.is_alphanumeric() || matches!(before, '.' | '-' | '_' | '/' | '*'))
            })
        })
    };
    lines_where(files, &[""], |line| names_a_folder(line) || hosts.iter().any(|host| line.contains(host.as_str())))
}

/// Attributes that hold code, and elements that hold code or style themselves.
fn inline_code(files: &[TextFile]) -> Vec<String> {
    lines_where(files, &[".html"], |line| {
        let line = line.to_ascii_lowercase();
        let has_handler = line.split([' ', '\t']).any(|word| {
            word.strip_prefix("on").is_some_and(|rest| {
                rest.split_once('=').is_some_and(|(name, _)| name.chars().all(|letter| letter.is_ascii_lowercase()))
            })
        });
        let has_script = line.contains("<script") && !line.contains("src=");
        has_handler || has_script || line.contains("<style") || line.contains(" style=") || line.contains("javascript:")
    })
}

fn text_as_code(files: &[TextFile]) -> Vec<String> {
    let page: Vec<_> = files.iter().filter(|file| file.path.starts_with("www/")).collect();
    let calls = ["innerHTML", "outerHTML", "insertAdjacentHTML", "document.write", "eval(", "new Function("];
    let mut broken = Vec::new();
    for file in page.into_iter().filter(|file| is_script(&file.path)) {
        for (number, line) in file.content.lines().enumerate() {
            if calls.iter().any(|call| line.contains(call)) {
                broken.push(format!("{}:{}", file.path, number + 1));
            }
        }
    }
    broken
}

fn unchecked_scripts(files: &[TextFile]) -> Vec<String> {
    files
        .iter()
        .filter(|file| is_script(&file.path) && (file.path.starts_with("www/") || file.path.starts_with("tests/")))
        .filter(|file| !file.content.starts_with("// @ts-check\n") || file.content.contains(concat!("@ts-", "nocheck")))
        .map(|file| file.path.clone())
        .collect()
}

/// The scripts of the page, without the service worker.
fn page_scripts(files: &[TextFile]) -> Vec<dead::Script<'_>> {
    files
        .iter()
        .filter(|file| is_script(&file.path) && file.path.starts_with("www/") && file.path != "www/sw.js")
        .map(|file| (file.path.as_str(), file.content.as_str()))
        .collect()
}

/// Words of the message files that no script says.
fn unsaid_words(workspace: &Workspace, files: &[TextFile]) -> Result<Vec<String>> {
    let words = texts::words_of_rooms(&texts::read(workspace)?);
    let is_loader = |path: &str| words.iter().any(|(place, _)| place == path);
    let mut scripts = page_scripts(files);
    scripts.retain(|(path, _)| !is_loader(path));
    scripts.extend(words.iter().map(|(path, text)| (path.as_str(), text.as_str())));
    Ok(dead::unsaid_words(&scripts))
}

/// Lines that a script of the page may have.
const LONGEST_SCRIPT: usize = 400;

fn long_scripts(files: &[TextFile]) -> Vec<String> {
    page_scripts(files)
        .into_iter()
        .map(|(path, text)| (path, text.lines().count()))
        .filter(|(_, lines)| *lines > LONGEST_SCRIPT)
        .map(|(path, lines)| format!("{path}: {lines} lines"))
        .collect()
}

/// A tag can be moved to other code; a commit cannot.
fn unpinned_actions(files: &[TextFile]) -> Vec<String> {
    let workflows: Vec<_> = files.iter().filter(|file| file.path.starts_with(".github/")).collect();
    let mut broken = Vec::new();
    for file in workflows {
        for (number, line) in file.content.lines().enumerate() {
            let Some((_, named)) = line.split_once("uses:") else { continue };
            let named = named.split_whitespace().next().unwrap_or_default();
            let commit = named.split_once('@').map_or("", |(_, commit)| commit);
            let is_commit = commit.len() == 40 && commit.bytes().all(|byte| byte.is_ascii_hexdigit());
            if !named.starts_with("./") && !is_commit {
                broken.push(format!("{}:{}", file.path, number + 1));
            }
        }
    }
    broken
}

fn is_script(path: &str) -> bool {
    [".js", ".mjs"].iter().any(|ending| path.ends_with(ending))
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn file(path: &str, content: &str) -> Vec<TextFile> {
        vec![TextFile { path: path.to_owned(), content: content.to_owned() }]
    }

    fn package(name: &str, dependencies: &[(&str, &str)]) -> Value {
        let dependencies: Vec<_> =
            dependencies.iter().map(|(name, req)| json!({ "name": name, "req": req, "kind": null })).collect();
        json!({ "name": name, "dependencies": dependencies })
    }

    fn workspace() -> Vec<Value> {
        vec![
            package("stillroom-core", &[("serde", "^1")]),
            package("stillroom-terms", &[]),
            package("stillroom-messages", &[]),
            package("stillroom-catalogue", &[("stillroom-core", "*")]),
            package("stillroom-exchange", &[("stillroom-catalogue", "*")]),
            package("stillroom-web", &[("stillroom-exchange", "*"), ("wasm-bindgen", "=0.2.130")]),
            package("xtask", &[("wasm-bindgen-cli-support", "=0.2.130")]),
        ]
    }

    #[test]
    fn arrows_run_one_way() {
        assert_eq!(wrong_arrows(&workspace()), Vec::<String>::new());
        let mut turned = workspace();
        turned[0] = package("stillroom-core", &[("stillroom-catalogue", "*")]);
        assert_eq!(wrong_arrows(&turned), ["stillroom-core depends on stillroom-catalogue"]);
        turned.remove(0);
        assert_eq!(wrong_arrows(&turned), ["stillroom-core is missing from the workspace"]);
    }

    #[test]
    fn modules_that_need_each_other_are_found() {
        let files = |third: &str| -> Vec<TextFile> {
            [
                ("formula", "use crate::amount::Amount;\nfn f(x: &crate::batch::Plan) {}"),
                ("amount", "/// As in [`crate::formula`].\n#[cfg(test)]\nuse crate::formula;"),
                ("batch/plan", third),
            ]
            .into_iter()
            .flat_map(|(module, content)| file(&format!("crates/core/src/{module}.rs"), content))
            .collect()
        };
        assert_eq!(circles_in_core(&files("use crate::amount::Amount;")), Vec::<String>::new());
        assert_eq!(circles_in_core(&files("use crate::formula::Formula;")), ["batch", "formula"]);
    }

    #[test]
    fn a_test_may_depend_on_what_the_code_may_not() {
        let mut packages = workspace();
        packages[0]["dependencies"] = json!([{ "name": "stillroom-catalogue", "req": "*", "kind": "dev" }]);
        assert_eq!(wrong_arrows(&packages), Vec::<String>::new());
    }

    #[test]
    fn only_the_web_crate_knows_the_browser() {
        assert_eq!(browser_knowledge(&workspace()), Vec::<String>::new());
        let mut packages = workspace();
        packages[4] = package("stillroom-exchange", &[("js-sys", "^0.3")]);
        assert_eq!(browser_knowledge(&packages), ["stillroom-exchange depends on js-sys"]);
    }

    #[test]
    fn bindings_and_generator_are_pinned_to_one_version() {
        assert_eq!(unequal_pins(&workspace()), Vec::<String>::new());
        let mut packages = workspace();
        packages[5] = package("stillroom-web", &[("wasm-bindgen", "^0.2.131")]);
        assert_eq!(unequal_pins(&packages).len(), 2);
    }

    #[test]
    fn a_foundation_says_what_it_owns() {
        let good = |name: &str| TextFile {
            path: format!("crates/{name}/src/lib.rs"),
            content: format!("//! {}\n#![forbid(unsafe_code)]\n", "word ".repeat(20)),
        };
        let mut files: Vec<_> = FOUNDATIONS.map(good).into();
        assert_eq!(careless_foundations(&files), Vec::<String>::new());
        files[1].content = "//! Placeholder.\n".to_owned();
        assert_eq!(careless_foundations(&files).len(), 2);
        files.pop();
        assert_eq!(careless_foundations(&files).len(), 3);
    }

    #[test]
    fn an_ignored_test_is_found() {
        for (path, content) in [
            ("a.rs", concat!("    #[ign", "ore]\n")),
            ("a.rs", concat!("#[ign", "ore = \"slow\"]")),
            ("a.rs", concat!("#[cfg_attr(x, ign", "ore)]")),
            ("a.spec.js", concat!("test.sk", "ip('x', () => {})")),
            ("a.spec.js", concat!("test.describe.on", "ly('x', () => {})")),
        ] {
            assert_eq!(ignored_tests(&file(path, content)).len(), 1, "{content}");
        }
        assert_eq!(ignored_tests(&file("a.rs", "// nothing to ignore here")), Vec::<String>::new());
    }

    #[test]
    fn a_path_of_one_machine_is_found() {
        for content in [
            format!("see {}work/main", '/'),
            format!("\"{}home/somebody/x\"", '/'),
            format!("https://registry.npmjs{}", ".org/x"),
        ] {
            assert_eq!(machine_paths(&file("README.md", &format!("first line\n{content}"))), ["README.md:2"]);
        }
        for content in [
            format!("https://example.org{}home/1", '/'),
            format!("benches{}home/", '/'),
            "from work to home".to_owned(),
            "/usr/bin/chromium".to_owned(),
        ] {
            assert_eq!(machine_paths(&file("README.md", &content)), Vec::<String>::new(), "{content}");
        }
    }

    #[test]
    fn inline_code_is_found() {
        for content in [
            "<script>alert(1)</script>",
            "<p style=\"color: red\">",
            "<button onclick=\"go()\">",
            "<style>",
            "<a href=\"javascript:go()\">",
        ] {
            assert_eq!(inline_code(&file("www/index.html", content)).len(), 1, "{content}");
        }
        let page = "<script type=\"module\" src=\"./assets/main.js\"></script>\n<p>one = two</p>";
        assert_eq!(inline_code(&file("www/index.html", page)), Vec::<String>::new());
    }

    #[test]
    fn markup_made_of_text_is_found() {
        assert_eq!(text_as_code(&file("www/jar.js", "place.innerHTML = name;")), ["www/jar.js:1"]);
        assert_eq!(text_as_code(&file("www/jar.js", "place.textContent = name;")), Vec::<String>::new());
    }

    #[test]
    fn an_action_named_by_a_tag_is_found() {
        let commit = "0123456789abcdef0123456789abcdef01234567";
        for content in ["- uses: a/b@v4", "uses: a/b", "uses: a/b@main # 0123456789abcdef0123456789abcdef01234567"] {
            assert_eq!(unpinned_actions(&file(".github/workflows/ci.yml", content)).len(), 1, "{content}");
        }
        for content in [format!("- uses: a/b@{commit} # v4"), "uses: ./.github/workflows/ci.yml".to_owned()] {
            assert_eq!(unpinned_actions(&file(".github/workflows/ci.yml", &content)), Vec::<String>::new());
        }
    }

    #[test]
    fn every_script_asks_for_a_type_check() {
        assert_eq!(unchecked_scripts(&file("www/jar.js", "export {};\n")), ["www/jar.js"]);
        assert_eq!(unchecked_scripts(&file("www/jar.js", "// @ts-check\nexport {};\n")), Vec::<String>::new());
    }
}
