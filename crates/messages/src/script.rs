//! The page's side: its fixed texts as a script a piece and language, and their types.

use crate::code::is_of_page;
use crate::pattern::{Kind, Part, Pattern};
use crate::{Catalogue, Message, PIECES};
use std::fmt::Write as _;

/// The rooms that have fixed texts on the page.
#[must_use]
pub fn rooms_of_page(catalogue: &Catalogue) -> Vec<&'static str> {
    let rooms = PIECES.iter().flat_map(|piece| piece.rooms.iter().copied());
    rooms.filter(|room| !of_page(catalogue, room).is_empty()).collect()
}

fn of_page<'a>(catalogue: &'a Catalogue, room: &str) -> Vec<&'a Message> {
    let messages = catalogue.rooms.get(room).into_iter().flatten();
    messages.filter(|message| is_of_page(message)).collect()
}

/// A message of the page under the path of its name: `page-title` is `title`, `page-units--fl_oz` is `fl oz` of `units`.
fn path_of(id: &str) -> (String, Option<String>) {
    let id = id.strip_prefix("page-").unwrap_or(id);
    match id.split_once("--") {
        Some((group, key)) => (group.to_owned(), Some(key.replace('_', " "))),
        None => (id.to_owned(), None),
    }
}

/// A group of texts by its name, each with its name in the group; a text by itself has none.
type Group<'a> = (String, Vec<(Option<String>, &'a Message)>);

/// Messages by the path of their names: those of a group follow one another.
fn grouped<'a>(messages: &[&'a Message]) -> Vec<Group<'a>> {
    let mut groups: Vec<Group> = Vec::new();
    for message in messages {
        let (group, key) = path_of(&message.id);
        match groups.iter_mut().find(|(name, _)| *name == group) {
            Some((_, members)) => members.push((key, message)),
            None => groups.push((group, vec![(key, message)])),
        }
    }
    groups
}

/// The script of a room in a language: a text, or a function of an object, a message.
#[must_use]
pub fn write_script(catalogue: &Catalogue, room: &str, language: &str) -> String {
    let mut plural = false;
    let mut write = |message: &Message| {
        let pattern = message.in_language(language);
        if message.arguments.is_empty() {
            return quoted(&flat(pattern));
        }
        let names: Vec<&str> = message.arguments.iter().map(|argument| argument.name.as_str()).collect();
        format!("({{ {} }}) => {}", names.join(", "), template(pattern, &mut plural))
    };
    let mut script = String::new();
    for (group, members) in grouped(&of_page(catalogue, room)) {
        if let [(None, message)] = members.as_slice() {
            let _ = writeln!(script, "  {group}: {},", write(message));
            continue;
        }
        let _ = writeln!(script, "  {group}: {{");
        for (key, message) in members {
            let _ = writeln!(script, "    {}: {},", quoted(&key.unwrap_or_default()), write(message));
        }
        script.push_str("  },\n");
    }
    let rules = if plural { format!("const rules = new Intl.PluralRules('{language}');\n") } else { String::new() };
    format!("{rules}export const words = {{\n{script}}};\n")
}

/// The types of the scripts: an interface a room.
#[must_use]
pub fn write_script_types(catalogue: &Catalogue) -> String {
    let mut types = String::from("// Generated from the message files by `cargo xtask build`.\n\n");
    let kind = |message: &Message| {
        let takes: Vec<String> = message
            .arguments
            .iter()
            .map(|argument| {
                let kind = if argument.kind == Kind::Count { "number" } else { "string | number" };
                format!("{}: {kind}", argument.name)
            })
            .collect();
        if takes.is_empty() { "string".to_owned() } else { format!("(values: {{ {} }}) => string", takes.join("; ")) }
    };
    for room in rooms_of_page(catalogue) {
        let mut name = room.to_owned();
        if let Some(first) = name.get_mut(..1) {
            first.make_ascii_uppercase();
        }
        let _ = writeln!(types, "export interface {name}Words {{");
        for (group, members) in grouped(&of_page(catalogue, room)) {
            if let [(None, message)] = members.as_slice() {
                let _ = writeln!(types, "  {group}: {};", kind(message));
                continue;
            }
            let _ = writeln!(types, "  {group}: {{");
            for (key, message) in members {
                let _ = writeln!(types, "    {}: {};", quoted(&key.unwrap_or_default()), kind(message));
            }
            types.push_str("  };\n");
        }
        types.push_str("}\n");
    }
    types
}

fn flat(pattern: &Pattern) -> String {
    pattern.0.iter().map(|part| if let Part::Text(text) = part { text.as_str() } else { "" }).collect()
}

fn quoted(text: &str) -> String {
    let escaped = text.replace('\\', "\\\\").replace('\'', "\\'").replace('\n', "\\n");
    format!("'{escaped}'")
}

fn template(pattern: &Pattern, plural: &mut bool) -> String {
    let mut script = String::from("`");
    for part in &pattern.0 {
        match part {
            Part::Text(text) => script.push_str(&text.replace('\\', "\\\\").replace('`', "\\`").replace("${", "\\${")),
            Part::Argument(name) => {
                let _ = write!(script, "${{{name}}}");
            }
            Part::Selection { on, kind, variants } => {
                script.push_str("${");
                for (at, (key, pattern)) in variants.iter().enumerate() {
                    if at + 1 < variants.len() {
                        let is = match (kind, key.parse::<u32>()) {
                            (Kind::Count, Ok(number)) => format!("{on} === {number}"),
                            (Kind::Count, Err(_)) => {
                                *plural = true;
                                format!("rules.select({on}) === '{key}'")
                            }
                            (Kind::Text, _) => format!("{on} === '{key}'"),
                        };
                        let _ = write!(script, "{is} ? {} : ", template(pattern, plural));
                    } else {
                        script.push_str(&template(pattern, plural));
                    }
                }
                script.push('}');
            }
        }
    }
    script.push('`');
    script
}
