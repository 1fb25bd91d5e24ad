//! The sentences of sharing, in English.

use stillroom_exchange::link::{LinkError, Part};

/// A link that cannot be read.
pub(crate) fn unreadable_link(error: LinkError) -> String {
    match error {
        LinkError::Damaged => {
            "This link is damaged: a character of it was lost or changed on its way, or it is no formula of Stillroom. \
             Nothing was opened and nothing of yours was touched. Ask for the link once more."
                .to_owned()
        }
        LinkError::CutOff => {
            "This link is cut off: its end is missing, as happens when a long address is broken across two lines. Copy \
             all of it and open it again. Nothing of yours was touched."
                .to_owned()
        }
        LinkError::Newer { .. } => {
            "This link was made by a later version of Stillroom. Reload the page to get that version, then open the link \
             again. Nothing of yours was touched."
                .to_owned()
        }
        LinkError::TooLarge { part, most } => {
            format!("This link holds more than a link may: at most {most} {}. It was not opened.", counted(part))
        }
    }
}

/// A formula that is no link.
pub(crate) fn no_link(error: LinkError) -> String {
    match error {
        LinkError::TooLarge { part, most } => format!(
            "This formula is too large for a link, which holds at most {most} {}. Write a backup file instead.",
            counted(part)
        ),
        LinkError::Damaged | LinkError::CutOff | LinkError::Newer { .. } => {
            "This formula cannot be made a link. Write a backup file instead.".to_owned()
        }
    }
}

const fn counted(part: Part) -> &'static str {
    match part {
        Part::Characters => "characters",
        Part::Text => "bytes of text",
        Part::Lines => "lines in a phase",
        Part::Phases => "phases",
        Part::Materials => "own materials",
        Part::Parts => "parts in a material",
        Part::Steps => "steps",
    }
}

/// A formula that is not there.
pub(crate) const fn no_formula() -> &'static str {
    "There is no such formula on this device."
}

/// How long a link is.
pub(crate) fn link_length(characters: usize) -> String {
    let remark = if characters > 2_000 {
        " Some programs cut off addresses longer than about 2000 characters: try it before you publish it."
    } else {
        ""
    };
    format!("{characters} characters. The formula itself is in the link: no server sees or keeps it.{remark}")
}

/// How wide a code has to be.
pub(crate) fn code_width(millimetres: u32) -> String {
    format!(
        "On paper make it at least {millimetres}\u{a0}mm wide, flat and with its white margin, so that a phone reads it."
    )
}

/// A link too long for a code.
pub(crate) fn no_code(characters: usize, most: usize) -> String {
    format!(
        "Too long for a code that a phone reads from a label: {characters} characters, and such a code holds {most}. \
         Shorter notes and steps help, or share the link itself."
    )
}

/// An own material that comes along.
pub(crate) fn material_comes_along(name: &str, brings: &str) -> String {
    if brings.is_empty() { name.to_owned() } else { format!("{name}: {brings}") }
}

/// Name of a copy that stands beside another version.
pub(crate) fn name_of_kept_copy(name: &str) -> String {
    format!("{name} (from a link)")
}

/// A copy was kept.
pub(crate) fn copy_kept(name: &str) -> String {
    format!("“{name}” is on your shelf now.")
}

/// The same is there already.
pub(crate) fn already_kept(name: &str) -> String {
    format!("“{name}” is on your shelf already, unchanged.")
}

/// How much is different.
pub(crate) fn differences(lines: usize, composition: usize, others: usize) -> String {
    if lines + composition + others == 0 {
        return "Nothing is different.".to_owned();
    }
    let count = |count: usize, one: &str, many: &str| match count {
        0 => None,
        1 => Some(format!("1 {one}")),
        count => Some(format!("{count} {many}")),
    };
    let counts = [
        count(lines, "material", "materials"),
        count(composition, "constituent of the product", "constituents of the product"),
        count(others, "other thing", "other things"),
    ];
    let counts: Vec<String> = counts.into_iter().flatten().collect();
    format!("Different: {}.", counts.join(", "))
}

/// A text that is different.
pub(crate) fn text_differs(what: &str, before: &str, after: &str) -> String {
    let or_none = |text: &str| if text.is_empty() { "none".to_owned() } else { text.to_owned() };
    format!("{what}: {} → {}", or_none(before), or_none(after))
}

/// A long text that is different.
pub(crate) fn long_text_differs(what: &str) -> String {
    format!("{what} reads differently.")
}
