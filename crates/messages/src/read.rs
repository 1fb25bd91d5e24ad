//! Reading the message files.

use crate::pattern::{Argument, Kind, Part, Pattern};
use crate::{LANGUAGES, PIECES};
use fluent_syntax::ast;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// What is wrong with the message files.
#[derive(Debug, thiserror::Error, PartialEq, Eq)]
pub enum MessageError {
    /// A file could not be read.
    #[error("{path}: {why}")]
    File {
        /// Which.
        path: PathBuf,
        /// Why.
        why: String,
    },
    /// A file is not Fluent syntax.
    #[error("{path}:{line}: {why}")]
    Syntax {
        /// Which.
        path: PathBuf,
        /// Where.
        line: usize,
        /// Why.
        why: String,
    },
    /// A message uses what is not taken from Fluent here.
    #[error("{path}: {id}: {why}")]
    Message {
        /// Which file.
        path: PathBuf,
        /// Which message.
        id: String,
        /// What it uses.
        why: String,
    },
    /// No piece has a room of this name.
    #[error("no piece names the message file {0}")]
    Homeless(String),
    /// A language lacks a message that another has.
    #[error("{language}/{room}.ftl: {id} is missing")]
    Missing {
        /// The language.
        language: String,
        /// The room.
        room: String,
        /// The message.
        id: String,
    },
    /// A language has a message that the first has not, or another with its arguments.
    #[error("{language}/{room}.ftl: {id} takes {found} instead of {wanted}")]
    Arguments {
        /// The language.
        language: String,
        /// The room.
        room: String,
        /// The message.
        id: String,
        /// Its arguments there.
        found: String,
        /// Its arguments in the first language.
        wanted: String,
    },
}

/// A message in the first language, and what it takes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Message {
    /// Its name.
    pub id: String,
    /// Its arguments, in the order in which they first occur in the first language.
    pub arguments: Vec<Argument>,
    /// The message by language.
    pub patterns: BTreeMap<String, Pattern>,
}

impl Message {
    /// The message in a language; in the first one, where that lacks it.
    #[must_use]
    pub fn in_language(&self, language: &str) -> &Pattern {
        self.patterns.get(language).unwrap_or_else(|| &self.patterns[LANGUAGES[0]])
    }
}

/// Every message of every room, in the order of the first language's files.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Catalogue {
    /// Rooms and their messages.
    pub rooms: BTreeMap<String, Vec<Message>>,
    /// What the languages do not agree in. It does not keep the messages from being compiled.
    pub disagreements: Vec<String>,
}

/// Reads every language below a folder.
///
/// # Errors
/// If a file cannot be read or is not what is taken from Fluent here. What languages do not agree in is no error but stands in
/// [`Catalogue::disagreements`].
pub fn read(folder: &Path) -> Result<Catalogue, MessageError> {
    let mut catalogue = Catalogue::default();
    for (at, language) in LANGUAGES.into_iter().enumerate() {
        for room in rooms_of(&folder.join(language))? {
            if !PIECES.iter().any(|piece| piece.rooms.contains(&room.as_str())) {
                return Err(MessageError::Homeless(room));
            }
            let messages = read_file(&folder.join(language).join(format!("{room}.ftl")))?;
            let known = catalogue.rooms.entry(room.clone()).or_default();
            for (id, pattern) in messages {
                let found = pattern.arguments();
                match known.iter_mut().find(|message| message.id == id) {
                    None if at == 0 => {
                        let patterns = BTreeMap::from([(language.to_owned(), pattern)]);
                        known.push(Message { id, arguments: found, patterns });
                    }
                    None => {
                        catalogue.disagreements.push(format!("{language}/{room}.ftl: {id} is not in {}", LANGUAGES[0]));
                    }
                    Some(message) if at == 0 => {
                        return Err(MessageError::Message {
                            path: folder.join(language).join(format!("{room}.ftl")),
                            id: message.id.clone(),
                            why: "stands there twice".to_owned(),
                        });
                    }
                    Some(message) => {
                        if !agree(&message.arguments, &found) {
                            catalogue.disagreements.push(
                                MessageError::Arguments {
                                    language: language.to_owned(),
                                    room: room.clone(),
                                    id: id.clone(),
                                    found: named(&found),
                                    wanted: named(&message.arguments),
                                }
                                .to_string(),
                            );
                            continue;
                        }
                        message.patterns.insert(language.to_owned(), pattern);
                    }
                }
            }
        }
    }
    for (room, messages) in &catalogue.rooms {
        for message in messages {
            for language in LANGUAGES.iter().filter(|language| !message.patterns.contains_key(**language)) {
                let (language, room, id) = ((*language).to_owned(), room.clone(), message.id.clone());
                catalogue.disagreements.push(MessageError::Missing { language, room, id }.to_string());
            }
        }
    }
    Ok(catalogue)
}

/// The same names; a language whose plural has one form only need not select.
fn agree(wanted: &[Argument], found: &[Argument]) -> bool {
    let has = |all: &[Argument], argument: &Argument| all.iter().any(|other| other.name == argument.name);
    wanted.iter().all(|argument| argument.kind == Kind::Count || has(found, argument))
        && found.iter().all(|argument| has(wanted, argument))
}

fn named(arguments: &[Argument]) -> String {
    arguments.iter().map(|argument| argument.name.as_str()).collect::<Vec<_>>().join(", ")
}

fn rooms_of(folder: &Path) -> Result<Vec<String>, MessageError> {
    let Ok(entries) = std::fs::read_dir(folder) else { return Ok(Vec::new()) };
    let mut rooms = Vec::new();
    for entry in entries {
        let entry = entry.map_err(|error| MessageError::File { path: folder.to_owned(), why: error.to_string() })?;
        if let Some(room) = entry.file_name().to_str().and_then(|name| name.strip_suffix(".ftl")) {
            rooms.push(room.to_owned());
        }
    }
    rooms.sort();
    Ok(rooms)
}

fn read_file(path: &Path) -> Result<Vec<(String, Pattern)>, MessageError> {
    let text = std::fs::read_to_string(path)
        .map_err(|error| MessageError::File { path: path.to_owned(), why: error.to_string() })?;
    let resource = fluent_syntax::parser::parse(text.as_str()).map_err(|(_, errors)| {
        let at = errors.first().map_or(0, |error| error.pos.start);
        let line = text.get(..at).map_or(0, |before| before.matches('\n').count()) + 1;
        let why = errors.first().map(ToString::to_string).unwrap_or_default();
        MessageError::Syntax { path: path.to_owned(), line, why }
    })?;
    let mut messages = Vec::new();
    for entry in resource.body {
        let ast::Entry::Message(message) = entry else { continue };
        let id = message.id.name.to_owned();
        let refuse = |why: String| MessageError::Message { path: path.to_owned(), id: id.clone(), why };
        let value = message.value.ok_or_else(|| refuse("says nothing".to_owned()))?;
        let pattern = pattern_of(&value).map_err(refuse)?;
        messages.push((id, pattern));
    }
    Ok(messages)
}

fn pattern_of(pattern: &ast::Pattern<&str>) -> Result<Pattern, String> {
    let mut parts: Vec<Part> = Vec::new();
    for element in &pattern.elements {
        match element {
            ast::PatternElement::TextElement { value } => push_text(&mut parts, value),
            ast::PatternElement::Placeable { expression } => match expression {
                ast::Expression::Inline(inline) => match inline {
                    ast::InlineExpression::StringLiteral { value } => push_text(&mut parts, &unescaped(value)),
                    ast::InlineExpression::NumberLiteral { value } => push_text(&mut parts, value),
                    ast::InlineExpression::VariableReference { id } => parts.push(Part::Argument(id.name.to_owned())),
                    _ => return Err("only texts, variables and selections are taken here".to_owned()),
                },
                ast::Expression::Select { selector, variants } => parts.push(selection_of(selector, variants)?),
            },
        }
    }
    Ok(Pattern(parts))
}

fn push_text(parts: &mut Vec<Part>, text: &str) {
    if let Some(Part::Text(last)) = parts.last_mut() {
        last.push_str(text);
    } else {
        parts.push(Part::Text(text.to_owned()));
    }
}

/// A string literal with its escapes read.
fn unescaped(value: &str) -> String {
    let mut read = String::new();
    fluent_syntax::unicode::unescape_unicode(&mut read, value).map_or_else(|_| value.to_owned(), |()| read)
}

const PLURAL: [&str; 6] = ["zero", "one", "two", "few", "many", "other"];

fn selection_of(selector: &ast::InlineExpression<&str>, variants: &[ast::Variant<&str>]) -> Result<Part, String> {
    let ast::InlineExpression::VariableReference { id } = selector else {
        return Err("only a variable can be selected on".to_owned());
    };
    let key_of = |variant: &ast::Variant<&str>| match &variant.key {
        ast::VariantKey::Identifier { name } => (*name).to_owned(),
        ast::VariantKey::NumberLiteral { value } => (*value).to_owned(),
    };
    let is_count = |key: &String| PLURAL.contains(&key.as_str()) || key.parse::<u32>().is_ok();
    let kind = if variants.iter().map(key_of).all(|key| is_count(&key)) { Kind::Count } else { Kind::Text };
    let mut read = Vec::new();
    let mut last = None;
    for variant in variants {
        let each = (key_of(variant), pattern_of(&variant.value)?);
        if variant.default { last = Some(each) } else { read.push(each) }
    }
    read.extend(last);
    Ok(Part::Selection { on: id.name.to_owned(), kind, variants: read })
}
