//! What machines read beside a post: its supplies, tools and steps in the terms of schema.org.
//!
//! *Source*: schema.org, types `HowTo`, `HowToSupply`, `HowToTool`, `HowToStep` and `QuantitativeValue`
//! (<https://schema.org/HowTo>). The vocabulary has more; how long it takes and what it costs are not known here and are
//! left out.

use std::fmt::Write as _;

/// What is said.
#[derive(Debug, Default)]
pub(crate) struct HowTo<'a> {
    pub(crate) name: &'a str,
    pub(crate) description: &'a str,
    pub(crate) language: &'a str,
    /// The batch that is made, with its unit.
    pub(crate) makes: String,
    /// The link, where it may be told.
    pub(crate) url: Option<&'a str>,
    /// Each material with its mass in grams, as a number of JSON; empty where there is none.
    pub(crate) supplies: Vec<(String, String)>,
    pub(crate) tools: Vec<String>,
    pub(crate) steps: Vec<String>,
}

/// Code of the gram among the units that `unitCode` takes. *Source*: UN/CEFACT Recommendation 20, from memory.
const GRAM: &str = "GRM";

/// As JSON-LD that can stand in a page: nothing in it ends the script.
pub(crate) fn write(how_to: &HowTo<'_>) -> String {
    let HowTo { name, description, language, makes, url, supplies, tools, steps } = how_to;
    let mut members = vec![
        member("@context", &text("https://schema.org")),
        member("@type", &text("HowTo")),
        member("name", &text(name)),
        member("description", &text(description)),
        member("inLanguage", &text(language)),
    ];
    if !makes.is_empty() {
        members.push(member("yield", &text(makes)));
    }
    if let Some(url) = url {
        members.push(member("url", &text(url)));
    }
    if !supplies.is_empty() {
        let supply = |(name, grams): &(String, String)| {
            let mut members = vec![member("@type", &text("HowToSupply")), member("name", &text(name))];
            if !grams.is_empty() {
                let quantity = object(&[
                    member("@type", &text("QuantitativeValue")),
                    member("value", grams),
                    member("unitCode", &text(GRAM)),
                    member("unitText", &text("g")),
                ]);
                members.push(member("requiredQuantity", &quantity));
            }
            object(&members)
        };
        members.push(member("supply", &array(supplies.iter().map(supply))));
    }
    if !tools.is_empty() {
        let tool = |name: &String| object(&[member("@type", &text("HowToTool")), member("name", &text(name))]);
        members.push(member("tool", &array(tools.iter().map(tool))));
    }
    if !steps.is_empty() {
        let step = |(at, said): (usize, &String)| {
            let place = (at + 1).to_string();
            object(&[member("@type", &text("HowToStep")), member("position", &place), member("text", &text(said))])
        };
        members.push(member("step", &array(steps.iter().enumerate().map(step))));
    }
    object(&members)
}

fn member(name: &str, value: &str) -> String {
    format!("{}:{value}", text(name))
}

fn object(members: &[String]) -> String {
    format!("{{{}}}", members.join(","))
}

fn array(items: impl Iterator<Item = String>) -> String {
    format!("[{}]", items.collect::<Vec<_>>().join(","))
}

/// A text of JSON (RFC 8259) in which no character means anything to HTML or to a script.
fn text(text: &str) -> String {
    let mut out = String::from("\"");
    for letter in text.chars() {
        match letter {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '<' | '>' | '&' | '\u{2028}' | '\u{2029}' | '\u{0}'..='\u{1f}' | '\u{7f}' => {
                // Writing to a text cannot fail.
                let _ = write!(out, "\\u{:04x}", u32::from(letter));
            }
            _ => out.push(letter),
        }
    }
    out.push('"');
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn any_text_reads_back_and_ends_no_script(name in "\\PC*|[\"\\\\<>&/!\u{0}-\u{20}script-]{0,30}") {
            let written = write(&HowTo { name: &name, steps: vec![name.clone()], ..HowTo::default() });
            prop_assert!(!written.contains(['<', '>', '&', '\n']));
            let read: serde_json::Value = serde_json::from_str(&written).unwrap();
            prop_assert_eq!(read["name"].as_str(), Some(&*name));
            prop_assert_eq!(read["step"][0]["text"].as_str(), Some(&*name));
        }
    }
}
