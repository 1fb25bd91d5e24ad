//! What a maker fills in for labels and chooses for a post, as it is kept with a formula and with the settings: a line a field,
//! `name=text`.

use litemap::LiteMap;

/// Longest text of one field, in characters.
pub const LONGEST_FIELD: usize = 2_000;
/// Most fields.
pub const MOST_FIELDS: usize = 80;

/// What was filled in, by the name of the field. A field that holds nothing is not there.
///
/// ```
/// use stillroom_exchange::label::LabelFields;
/// let mut fields = LabelFields::read("");
/// fields.set("claims", "Two lines:\nfor the face");
/// let again = LabelFields::read(&fields.write());
/// assert_eq!(again.get("claims"), Some("Two lines:\nfor the face"));
/// assert_eq!(again.get("lot"), None);
/// ```
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct LabelFields(LiteMap<String, String>);

impl LabelFields {
    /// Reads what [`LabelFields::write`] wrote. A line that is none of a field is passed over; of two of one name the later
    /// counts.
    #[must_use]
    pub fn read(text: &str) -> Self {
        let mut fields = Self::default();
        for (name, value) in text.lines().filter_map(|line| line.split_once('=')) {
            fields.set(name, &unescaped(value));
        }
        fields
    }

    /// What a field holds.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&str> {
        self.0.get(name).map(String::as_str)
    }

    /// Fills a field in, or empties it. A name that could not be read again, and a field too many, is not taken.
    pub fn set(&mut self, name: &str, text: &str) {
        if name.is_empty() || name.contains(['=', '\n', '\r']) {
            return;
        }
        if text.is_empty() {
            self.0.remove(name);
        } else if self.0.contains_key(name) || self.0.len() < MOST_FIELDS {
            self.0.insert(name.to_owned(), text.chars().take(LONGEST_FIELD).collect());
        }
    }

    /// Writes the fields, by name.
    #[must_use]
    pub fn write(&self) -> String {
        let lines: Vec<String> = self.0.iter().map(|(name, text)| format!("{name}={}", escaped(text))).collect();
        lines.join("\n")
    }
}

/// What was filled in, as [`LabelFields::write`] wrote it, without what is true of one batch only: its lot and its date.
///
/// ```
/// use stillroom_exchange::label::for_another_batch;
/// assert_eq!(for_another_batch("before=2027-05-01\ncontact=me\nlot=A"), "contact=me");
/// ```
#[must_use]
pub fn for_another_batch(text: &str) -> String {
    let of_one = |line: &&str| ["lot=", "before="].iter().any(|field| line.starts_with(field));
    text.lines().filter(|line| !of_one(line)).collect::<Vec<_>>().join("\n")
}

fn escaped(text: &str) -> String {
    text.replace('\\', "\\\\").replace('\n', "\\n").replace('\r', "\\r")
}

fn unescaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut letters = text.chars();
    while let Some(letter) = letters.next() {
        match letter {
            '\\' => match letters.next() {
                Some('n') => out.push('\n'),
                Some('r') => out.push('\r'),
                Some(other) => out.push(other),
                None => {}
            },
            other => out.push(other),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn fields_read_back_as_they_were_filled_in(
            filled in proptest::collection::vec(("[a-z:0-9-]{1,12}", "\\PC{0,40}|[\\\\\n\r=x]{0,12}"), 0..20),
        ) {
            let mut fields = LabelFields::default();
            for (name, text) in &filled {
                fields.set(name, text);
            }
            prop_assert_eq!(LabelFields::read(&fields.write()), fields);
        }

        #[test]
        fn any_text_is_read_as_something(text in "\\PC*|[=\\\\\n a]{0,60}") {
            let fields = LabelFields::read(&text);
            prop_assert_eq!(LabelFields::read(&fields.write()), fields);
        }
    }
}
