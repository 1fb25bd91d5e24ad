//! The session's side: a function a message, and a table a piece and language.

use crate::pattern::{Kind, marks};
use crate::{Catalogue, LANGUAGES, Message, PIECES};
use std::fmt::Write as _;

/// What the name of a message begins with whose text is kept as a name that nobody chose: code knows it again in every
/// language, whichever it was kept in.
const DEFAULT: &str = "default-";

/// Whether a message is a fixed text of the page.
pub(crate) fn is_of_page(message: &Message) -> bool {
    message.id.starts_with("page-")
}

/// The functions, and the tables by `LANGUAGE-PIECE`.
#[must_use]
pub fn write_code(catalogue: &Catalogue) -> (String, Vec<(String, String)>) {
    let mut code = String::new();
    let mut tables = Vec::new();
    for (number, piece) in PIECES.iter().enumerate() {
        let mut all: Vec<&Message> = Vec::new();
        for room in piece.rooms {
            let Some(messages) = catalogue.rooms.get(*room) else { continue };
            let messages: Vec<&Message> = messages.iter().filter(|message| !is_of_page(message)).collect();
            write_room(&mut code, room, number, all.len(), &messages);
            all.extend(messages);
        }
        for language in LANGUAGES {
            let packed: Vec<String> =
                all.iter().map(|message| message.in_language(language).pack(&message.arguments)).collect();
            tables.push((format!("{language}-{}", piece.name), packed.join(&marks::MESSAGE.to_string())));
        }
    }
    (code, tables)
}

fn write_room(code: &mut String, room: &str, piece: usize, first: usize, messages: &[&Message]) {
    let _ = writeln!(
        code,
        "/// Messages of the room `{room}`.\n#[allow(dead_code, missing_docs, clippy::too_many_arguments)]\npub mod {room} {{"
    );
    for (at, message) in messages.iter().enumerate() {
        let index = first + at;
        let name = rust_name(&message.id);
        for line in message.in_language(LANGUAGES[0]).shown().lines() {
            let _ = writeln!(code, "    /// `{}`", line.replace('`', "'").trim());
        }
        if message.arguments.is_empty() {
            let _ =
                writeln!(code, "    #[must_use] pub fn {name}() -> &'static str {{ super::text({piece}, {index}) }}");
            if message.id.starts_with(DEFAULT) {
                write_everywhere(code, &name, message);
            }
            continue;
        }
        let mut takes = String::new();
        let mut hands = String::new();
        for argument in &message.arguments {
            let name = rust_name(&argument.name);
            match argument.kind {
                Kind::Text => {
                    let _ = write!(takes, "{name}: &str, ");
                    let _ = write!(hands, "super::Argument::Text({name}), ");
                }
                Kind::Count => {
                    let _ = write!(takes, "{name}: usize, ");
                    let _ = write!(hands, "super::Argument::Count({name}), ");
                }
            }
        }
        let _ = writeln!(
            code,
            "    #[must_use] pub fn {name}({takes}) -> String {{ super::filled({piece}, {index}, &[{hands}]) }}"
        );
    }
    // Messages that are looked up by what a check says, not by who wrote this.
    let _ = writeln!(
        code,
        "    /// The messages by name, with the names of their arguments.\n    pub(crate) static BY_NAME: &[(&str, u16, &[&str])] = &["
    );
    let mut sorted: Vec<(usize, &&Message)> = messages.iter().enumerate().collect();
    sorted.sort_by(|(_, one), (_, other)| one.id.cmp(&other.id));
    for (at, message) in sorted {
        let names: Vec<String> = message.arguments.iter().map(|argument| format!("{:?}", argument.name)).collect();
        let _ = writeln!(code, "        ({:?}, {}, &[{}]),", message.id, first + at, names.join(", "));
    }
    let _ = writeln!(code, "    ];\n    pub(crate) const PIECE: usize = {piece};\n}}");
}

/// A function with what a message says in each language, whichever of them is fetched.
fn write_everywhere(code: &mut String, name: &str, message: &Message) {
    let texts: Vec<String> =
        LANGUAGES.iter().map(|language| format!("{:?}", message.in_language(language).shown())).collect();
    let _ = writeln!(
        code,
        "    /// The same in every language.\n    #[must_use] pub const fn {name}_anywhere() -> [&'static str; {}] {{ [{}] }}",
        LANGUAGES.len(),
        texts.join(", ")
    );
}

/// A name as Rust takes it.
fn rust_name(name: &str) -> String {
    let name = name.replace('-', "_");
    if ["as", "for", "in", "move", "type", "use", "where", "yield"].contains(&name.as_str()) {
        format!("r#{name}")
    } else {
        name
    }
}
