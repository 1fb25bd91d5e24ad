//! JSON as records use it: fields read by name from what `serde_json` parsed, and writing.
//!
//! Records are read field by field, since a derived reader of every record would be the largest part of what a phone
//! downloads. Numbers are whole and not negative: every measured quantity is kept as exact text.

use core::fmt::{self, Write as _};
use serde::de::value::StrDeserializer;
use serde::{Deserialize, Serialize};
use serde_json::Value as Json;

/// Why reading stopped.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum Damage {
    /// It is no JSON, or nested too deeply.
    #[error("line {line}, column {column}")]
    Syntax {
        /// Line at which reading stopped, from 1; 0 before the first.
        line: usize,
        /// Column at which reading stopped, from 1; 0 before the first.
        column: usize,
    },
    /// What stands in a field is missing or not understood; the record itself has no name.
    #[error("field \"{0}\"")]
    Field(&'static str),
}

/// Parsed JSON.
#[derive(Debug)]
pub struct Document(Json);

impl Document {
    /// Parses a text that holds one value.
    ///
    /// # Errors
    /// The place of what is no JSON, or is nested more than 127 deep.
    pub fn read(text: &str) -> Result<Self, Damage> {
        let content = serde_json::from_str(text);
        content.map(Self).map_err(|error| Damage::Syntax { line: error.line(), column: error.column() })
    }

    /// The value it holds.
    #[must_use]
    pub const fn value(&self) -> Value<'_> {
        Value { name: "", content: &self.0 }
    }
}

/// One value and the field it stands in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Value<'a> {
    name: &'static str,
    content: &'a Json,
}

impl<'a> Value<'a> {
    /// That this value is not understood.
    ///
    /// # Errors
    /// Always.
    pub const fn damaged<T>(self) -> Result<T, Damage> {
        Err(Damage::Field(self.name))
    }

    fn need_some<T>(self, content: Option<T>) -> Result<T, Damage> {
        content.ok_or(Damage::Field(self.name))
    }

    /// A field that may be missing; one that holds `null` is missing.
    ///
    /// # Errors
    /// If this is no object.
    pub fn field(self, name: &'static str) -> Result<Option<Self>, Damage> {
        let fields = self.need_some(self.content.as_object())?;
        Ok(fields.get(name).filter(|content| !content.is_null()).map(|content| Self { name, content }))
    }

    /// A field that must be there.
    ///
    /// # Errors
    /// If it is not.
    pub fn need(self, name: &'static str) -> Result<Self, Damage> {
        self.field(name)?.ok_or(Damage::Field(name))
    }

    /// The only field of an object, with its name: how a choice with content is written.
    ///
    /// # Errors
    /// If this is no object of one field.
    pub fn choice(self) -> Result<(&'a str, Self), Damage> {
        let mut fields = self.need_some(self.content.as_object())?.iter();
        match (fields.next(), fields.next()) {
            (Some((choice, content)), None) => Ok((choice, Self { content, ..self })),
            _ => self.damaged(),
        }
    }

    /// The text.
    ///
    /// # Errors
    /// If this is no text.
    pub fn text(self) -> Result<&'a str, Damage> {
        self.need_some(self.content.as_str())
    }

    /// The whole number.
    ///
    /// # Errors
    /// If this is none, or does not fit.
    pub fn whole<T: TryFrom<u64>>(self) -> Result<T, Damage> {
        self.need_some(self.content.as_u64().and_then(|number| T::try_from(number).ok()))
    }

    /// Yes or no.
    ///
    /// # Errors
    /// If this is neither.
    pub fn flag(self) -> Result<bool, Damage> {
        self.need_some(self.content.as_bool())
    }

    /// The values of a list.
    ///
    /// # Errors
    /// If this is no list.
    pub fn list(self) -> Result<impl ExactSizeIterator<Item = Self>, Damage> {
        let values = self.need_some(self.content.as_array())?;
        Ok(values.iter().map(move |content| Self { content, ..self }))
    }

    /// What its type writes as one text: a name, a reference, a quantity.
    ///
    /// # Errors
    /// If this is no text, or not one of that type.
    pub fn worded<T: Deserialize<'static>>(self) -> Result<T, Damage> {
        T::deserialize(StrDeserializer::<NotUnderstood>::new(self.text()?)).or(self.damaged())
    }

    /// A field whose type writes it as one text, if it is there.
    ///
    /// # Errors
    /// If it is there and not of that type.
    pub fn worded_field<T: Deserialize<'static>>(self, name: &'static str) -> Result<Option<T>, Damage> {
        self.field(name)?.map(Self::worded).transpose()
    }

    /// A text field, empty where it is missing.
    ///
    /// # Errors
    /// If it is there and no text.
    pub fn text_field(self, name: &'static str) -> Result<String, Damage> {
        self.field(name)?.map_or(Ok(""), Self::text).map(str::to_owned)
    }
}

/// A text that its type does not understand. What it says does not matter: its place is reported.
#[derive(Debug)]
struct NotUnderstood;

impl fmt::Display for NotUnderstood {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not understood")
    }
}

impl std::error::Error for NotUnderstood {}

impl serde::de::Error for NotUnderstood {
    fn custom<T: fmt::Display>(_: T) -> Self {
        Self
    }
    fn invalid_type(_: serde::de::Unexpected<'_>, _: &dyn serde::de::Expected) -> Self {
        Self
    }
    fn unknown_variant(_: &str, _: &'static [&'static str]) -> Self {
        Self
    }
}

/// Writes JSON without spaces.
#[derive(Debug, Default)]
pub struct Writer {
    text: String,
}

impl Writer {
    /// What was written.
    #[must_use]
    pub fn finish(self) -> String {
        self.text
    }

    /// A comma, unless this is the first of its list or object or follows its field's name.
    fn part(&mut self) -> &mut String {
        if !matches!(self.text.as_bytes().last(), None | Some(b'{' | b'[' | b':')) {
            self.text.push(',');
        }
        &mut self.text
    }

    /// An object with what `fill` writes into it.
    pub fn object(&mut self, fill: impl FnOnce(&mut Self)) {
        self.part().push('{');
        fill(self);
        self.text.push('}');
    }

    /// A list with what `each` writes of every item.
    pub fn list<T>(&mut self, items: &[T], mut each: impl FnMut(&mut Self, &T)) {
        self.part().push('[');
        for item in items {
            each(self, item);
        }
        self.text.push(']');
    }

    /// Begins a field; its value follows.
    pub fn field(&mut self, name: &str) -> &mut Self {
        self.text(name);
        self.text.push(':');
        self
    }

    /// A text.
    pub fn text(&mut self, text: &str) {
        self.part().push('"');
        for character in text.chars() {
            match character {
                '"' | '\\' => self.text.extend(['\\', character]),
                '\n' => self.text.push_str("\\n"),
                '\0'..' ' => {
                    // Writing to a text cannot fail.
                    let _ = write!(self.text, "\\u{:04x}", u32::from(character));
                }
                _ => self.text.push(character),
            }
        }
        self.text.push('"');
    }

    /// A whole number.
    pub fn whole(&mut self, number: u64) {
        let _ = write!(self.part(), "{number}");
    }

    /// A value that is JSON already.
    pub fn written(&mut self, json: &str) {
        self.part().push_str(json);
    }

    /// Yes or no.
    pub fn flag(&mut self, flag: bool) {
        self.part().push_str(if flag { "true" } else { "false" });
    }

    /// What its type writes as one text: a name, a reference, a quantity.
    pub fn worded(&mut self, value: &impl Serialize) {
        let text = Worded(value).to_string();
        self.text(&text);
    }

    /// A field whose type writes it as one text; nothing if there is none.
    pub fn worded_field(&mut self, name: &str, value: Option<&impl Serialize>) {
        if let Some(value) = value {
            self.field(name).worded(value);
        }
    }

    /// A text field; nothing if it is empty.
    pub fn text_field(&mut self, name: &str, text: &str) {
        if !text.is_empty() {
            self.field(name).text(text);
        }
    }
}

struct Worded<'a, T>(&'a T);

impl<T: Serialize> fmt::Display for Worded<'_, T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.serialize(f)
    }
}
