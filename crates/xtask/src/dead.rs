//! What the page no longer uses: words that nothing says, and what a script exports and no other imports. What a script keeps
//! to itself, the type check looks at.

use std::collections::BTreeSet;

/// A script of the page: its path and its text.
pub type Script<'f> = (&'f str, &'f str);

/// Words that no script says. A group of words that is handed on whole, as the choices of a field are, is said.
pub fn unsaid_words(scripts: &[Script]) -> Vec<String> {
    let is_words = |path: &str| ["/words.js", "/trade.js"].iter().any(|ending| path.ends_with(ending));
    let folder_of = |path: &str| path.rsplit_once('/').map_or(String::new(), |(folder, _)| format!("{folder}/"));
    let mut unsaid = Vec::new();
    for (path, text) in scripts.iter().filter(|(path, _)| is_words(path)) {
        // The words of a room are said there, those that belong to no room anywhere.
        let folder = folder_of(path);
        let says = |other: &str| !is_words(other) && (folder.ends_with("/dom/") || other.starts_with(&folder));
        let said: String = scripts.iter().filter(|(path, _)| says(path)).map(|(_, text)| *text).collect();
        // The groups around a line, outermost first, by how far they are indented.
        let mut groups: Vec<(usize, &str)> = Vec::new();
        for (number, line) in text.lines().enumerate() {
            let depth = line.len() - line.trim_start().len();
            let Some((key, rest)) = line.trim_start().split_once(':') else { continue };
            let key = key.trim_matches('\'');
            if depth == 0 || key.starts_with(['/', '*', '`', '(']) || key.contains(' ') {
                continue;
            }
            groups.retain(|(outer, _)| *outer < depth);
            let is_said = is_named(&said, key) || groups.iter().any(|(_, group)| is_handed_on(&said, group));
            if !is_said {
                unsaid.push(format!("{path}:{}: {key}", number + 1));
            }
            if rest.trim() == "{" {
                groups.push((depth, key));
            }
        }
    }
    unsaid
}

/// The texts that follow each `.name` in a script.
fn after_each<'t>(text: &'t str, name: &str) -> impl Iterator<Item = (&'t str, &'t str)> {
    let dotted = format!(".{name}");
    let places: Vec<usize> = text.match_indices(&dotted).map(|(at, _)| at).collect();
    let length = dotted.len();
    places
        .into_iter()
        .map(move |at| (&text[..at], &text[at + length..]))
        .filter(|(_, after)| !after.starts_with(|next: char| next.is_alphanumeric() || next == '_'))
}

fn is_named(text: &str, name: &str) -> bool {
    after_each(text, name).next().is_some()
}

/// Whether something is done with a group of words as a whole, other than to give it a shorter name.
fn is_handed_on(text: &str, group: &str) -> bool {
    after_each(text, group).any(|(before, after)| {
        let line = before.rsplit('\n').next().unwrap_or_default();
        let is_renamed = line.trim_start().starts_with("const ") && line.ends_with("= words") && after.starts_with(';');
        !after.starts_with('.') && !after.starts_with("?.") && !is_renamed
    })
}

/// What a script exports and no other names. Rooms and embedded scripts are asked for by the page itself.
pub fn unused_exports(scripts: &[Script]) -> Vec<String> {
    let mut unused = Vec::new();
    for (path, text) in scripts {
        for (number, line) in text.lines().enumerate() {
            let Some(exported) = line.strip_prefix("export ") else { continue };
            let words: BTreeSet<&str> = ["async", "function", "class", "const", "let", "default"].into();
            let name = exported.split_whitespace().find(|word| !words.contains(word)).unwrap_or_default();
            let name = name.split(|letter: char| !letter.is_alphanumeric() && letter != '_').next().unwrap_or_default();
            let is_ours = |other: &&Script| other.0 != *path;
            let is_used = name == "furnish" || scripts.iter().filter(is_ours).any(|(_, other)| names(other, name));
            if !is_used {
                unused.push(format!("{path}:{}: {name}", number + 1));
            }
        }
    }
    unused
}

/// Whether a script names something, as a word of its own.
fn names(text: &str, name: &str) -> bool {
    let is_part = |letter: Option<char>| letter.is_some_and(|letter| letter.is_alphanumeric() || letter == '_');
    text.match_indices(name)
        .any(|(at, _)| !is_part(text[..at].chars().next_back()) && !is_part(text[at + name.len()..].chars().next()))
}

#[cfg(test)]
mod tests {
    use super::*;

    const WORDS: &str = "export const words = Object.freeze({\n  title: 'Jar',\n  gone: 'Gone',\n  ways: {\n    mass: 'By mass',\n    'to-fill': 'To fill',\n  },\n  link: {\n    copy: 'Copy',\n    old: 'Old',\n  },\n});\n";

    #[test]
    fn a_word_that_nothing_says_is_found() {
        let room = "const text = words.link;\nmake('h2', {}, words.title);\nchooser({ choices: words.ways });\nbutton(text.copy);\n";
        let scripts = [("www/rooms/jar/words.js", WORDS), ("www/rooms/jar/room.js", room)];
        assert_eq!(unsaid_words(&scripts), ["www/rooms/jar/words.js:3: gone", "www/rooms/jar/words.js:10: old"]);
    }

    #[test]
    fn what_is_exported_for_nobody_is_found() {
        let list = "export function keyed() {}\nexport const texts = 1;\nexport async function furnish() {}\n";
        let room = "import { keyed } from './list.js';\nconst contexts = 2;\n";
        let scripts = [("www/dom/list.js", list), ("www/rooms/jar/room.js", room)];
        assert_eq!(unused_exports(&scripts), ["www/dom/list.js:2: texts"]);
    }
}
