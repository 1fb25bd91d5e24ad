//! JSON as records use it: reading with the place of every value, so that damage can be pointed at, and writing.
//!
//! Written by hand, since a derived reader of every record would be the largest part of what a phone downloads. Numbers
//! are whole and not negative: every measured quantity is kept as exact text.

use core::fmt::{self, Write as _};
use serde::de::value::StrDeserializer;
use serde::{Deserialize, Serialize};
use std::borrow::Cow;

/// Deepest nesting read. Records nest six deep.
const DEEPEST: usize = 32;

/// Where reading stopped, in bytes from the start.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Damage(pub usize);

/// One value and where it begins.
#[derive(Debug, Clone, PartialEq)]
pub struct Value<'a> {
    at: usize,
    content: Content<'a>,
}

#[derive(Debug, Clone, PartialEq)]
enum Content<'a> {
    Null,
    Flag(bool),
    Whole(u64),
    /// A number no record holds: negative, with a fraction, or too large.
    OtherNumber,
    Text(Cow<'a, str>),
    List(Vec<Value<'a>>),
    Object(Vec<(Cow<'a, str>, Value<'a>)>),
}

impl<'a> Value<'a> {
    /// Reads a text that holds one value.
    ///
    /// # Errors
    /// The place of what is no JSON, or is nested more than 32 deep.
    pub fn read(text: &'a str) -> Result<Self, Damage> {
        let mut reader = Reader { text, at: 0 };
        let value = reader.value(0)?;
        reader.skip_space();
        if reader.at < text.len() { Err(Damage(reader.at)) } else { Ok(value) }
    }

    /// That this value is not understood.
    ///
    /// # Errors
    /// Always.
    pub fn damaged<T>(&self) -> Result<T, Damage> {
        Err(Damage(self.at))
    }

    /// A field that may be missing; one that holds `null` is missing.
    ///
    /// # Errors
    /// If this is no object.
    pub fn field(&self, name: &str) -> Result<Option<&Self>, Damage> {
        let Content::Object(fields) = &self.content else { return self.damaged() };
        let found = fields.iter().find(|(each, _)| each == name).map(|(_, value)| value);
        Ok(found.filter(|value| value.content != Content::Null))
    }

    /// A field that must be there.
    ///
    /// # Errors
    /// If it is not.
    pub fn need(&self, name: &str) -> Result<&Self, Damage> {
        self.field(name)?.ok_or(Damage(self.at))
    }

    /// The only field of an object, with its name: how a choice with content is written.
    ///
    /// # Errors
    /// If this is no object of one field.
    pub fn choice(&self) -> Result<(&str, &Self), Damage> {
        match &self.content {
            Content::Object(fields) if let [(name, value)] = fields.as_slice() => Ok((name, value)),
            _ => self.damaged(),
        }
    }

    /// The text.
    ///
    /// # Errors
    /// If this is no text.
    pub fn text(&self) -> Result<&str, Damage> {
        if let Content::Text(text) = &self.content { Ok(text) } else { self.damaged() }
    }

    /// The whole number.
    ///
    /// # Errors
    /// If this is none, or does not fit.
    pub fn whole<T: TryFrom<u64>>(&self) -> Result<T, Damage> {
        let Content::Whole(number) = self.content else { return self.damaged() };
        T::try_from(number).or(self.damaged())
    }

    /// Yes or no.
    ///
    /// # Errors
    /// If this is neither.
    pub fn flag(&self) -> Result<bool, Damage> {
        if let Content::Flag(flag) = self.content { Ok(flag) } else { self.damaged() }
    }

    /// The values of a list.
    ///
    /// # Errors
    /// If this is no list.
    pub fn list(&self) -> Result<&[Self], Damage> {
        if let Content::List(values) = &self.content { Ok(values) } else { self.damaged() }
    }

    /// What its type writes as one text: a name, a reference, a quantity.
    ///
    /// # Errors
    /// If this is no text, or not one of that type.
    pub fn worded<T: Deserialize<'static>>(&self) -> Result<T, Damage> {
        T::deserialize(StrDeserializer::<NotUnderstood>::new(self.text()?)).or(self.damaged())
    }

    /// A field whose type writes it as one text, if it is there.
    ///
    /// # Errors
    /// If it is there and not of that type.
    pub fn worded_field<T: Deserialize<'static>>(&self, name: &str) -> Result<Option<T>, Damage> {
        self.field(name)?.map(Self::worded).transpose()
    }

    /// A text field, empty where it is missing.
    ///
    /// # Errors
    /// If it is there and no text.
    pub fn text_field(&self, name: &str) -> Result<String, Damage> {
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

struct Reader<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Reader<'a> {
    fn next(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    fn take(&mut self, byte: u8) -> bool {
        let found = self.next() == Some(byte);
        self.at += usize::from(found);
        found
    }

    fn expect(&mut self, byte: u8) -> Result<(), Damage> {
        if self.take(byte) { Ok(()) } else { Err(Damage(self.at)) }
    }

    fn skip_space(&mut self) {
        while let Some(b' ' | b'\n' | b'\r' | b'\t') = self.next() {
            self.at += 1;
        }
    }

    fn value(&mut self, depth: usize) -> Result<Value<'a>, Damage> {
        self.skip_space();
        let at = self.at;
        if depth > DEEPEST {
            return Err(Damage(at));
        }
        let content = match self.next() {
            Some(b'{') => {
                let mut fields = Vec::new();
                self.each(b'}', |reader| {
                    reader.skip_space();
                    let name = reader.string()?;
                    reader.skip_space();
                    reader.expect(b':')?;
                    fields.push((name, reader.value(depth + 1)?));
                    Ok(())
                })?;
                Content::Object(fields)
            }
            Some(b'[') => {
                let mut values = Vec::new();
                self.each(b']', |reader| {
                    values.push(reader.value(depth + 1)?);
                    Ok(())
                })?;
                Content::List(values)
            }
            Some(b'"') => Content::Text(self.string()?),
            Some(b'-' | b'0'..=b'9') => self.number(),
            _ => self.word()?,
        };
        Ok(Value { at, content })
    }

    /// Reads what stands between an opening mark and its closing one, parted by commas.
    fn each(&mut self, close: u8, mut read_one: impl FnMut(&mut Self) -> Result<(), Damage>) -> Result<(), Damage> {
        self.at += 1;
        self.skip_space();
        if self.take(close) {
            return Ok(());
        }
        loop {
            read_one(self)?;
            self.skip_space();
            if self.take(close) {
                return Ok(());
            }
            self.expect(b',')?;
        }
    }

    fn word(&mut self) -> Result<Content<'a>, Damage> {
        let rest = &self.text.as_bytes()[self.at..];
        for (word, content) in [("null", Content::Null), ("true", Content::Flag(true)), ("false", Content::Flag(false))]
        {
            if rest.starts_with(word.as_bytes()) {
                self.at += word.len();
                return Ok(content);
            }
        }
        Err(Damage(self.at))
    }

    /// A number. Its shape is checked only as far as a record may hold it.
    fn number(&mut self) -> Content<'a> {
        let start = self.at;
        while let Some(b'0'..=b'9' | b'+' | b'-' | b'.' | b'e' | b'E') = self.next() {
            self.at += 1;
        }
        let digits = &self.text[start..self.at];
        let whole = digits.bytes().all(|byte| byte.is_ascii_digit());
        if whole { digits.parse().map_or(Content::OtherNumber, Content::Whole) } else { Content::OtherNumber }
    }

    fn string(&mut self) -> Result<Cow<'a, str>, Damage> {
        self.expect(b'"')?;
        let mut start = self.at;
        let mut unescaped = String::new();
        loop {
            match self.next() {
                Some(b'"') => {
                    let rest = &self.text[start..self.at];
                    self.at += 1;
                    return Ok(if unescaped.is_empty() { Cow::Borrowed(rest) } else { Cow::Owned(unescaped + rest) });
                }
                Some(b'\\') => {
                    unescaped.push_str(&self.text[start..self.at]);
                    self.at += 1;
                    unescaped.push(self.escaped()?);
                    start = self.at;
                }
                Some(0x20..) => self.at += 1,
                Some(_) | None => return Err(Damage(self.at)),
            }
        }
    }

    fn escaped(&mut self) -> Result<char, Damage> {
        let mark = self.next().ok_or(Damage(self.at))?;
        self.at += 1;
        Ok(match mark {
            b'"' | b'\\' | b'/' => char::from(mark),
            b'b' => '\u{8}',
            b'f' => '\u{c}',
            b'n' => '\n',
            b'r' => '\r',
            b't' => '\t',
            b'u' => {
                let damage = Damage(self.at);
                let first = self.code_unit()?;
                // A character past the first 65 536 is written as two halves.
                let code = if (0xD800..0xDC00).contains(&first) {
                    self.expect(b'\\')?;
                    self.expect(b'u')?;
                    let second = self.code_unit()?.checked_sub(0xDC00).filter(|low| *low < 0x400).ok_or(damage)?;
                    0x1_0000 + ((first - 0xD800) << 10) + second
                } else {
                    first
                };
                char::from_u32(code).ok_or(damage)?
            }
            _ => return Err(Damage(self.at - 1)),
        })
    }

    fn code_unit(&mut self) -> Result<u32, Damage> {
        let digits =
            self.text.get(self.at..self.at + 4).filter(|text| text.bytes().all(|byte| byte.is_ascii_hexdigit()));
        let unit = digits.and_then(|digits| u32::from_str_radix(digits, 16).ok()).ok_or(Damage(self.at))?;
        self.at += 4;
        Ok(unit)
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
