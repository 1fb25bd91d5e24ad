//! A message in a form that is quickly filled.

/// What an argument is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A text.
    Text,
    /// A whole number whose plural category selects.
    Count,
}

/// An argument of a message.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Argument {
    /// Its name.
    pub name: String,
    /// What it is.
    pub kind: Kind,
}

/// A part of a message.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Part {
    /// Text as it stands.
    Text(String),
    /// An argument.
    Argument(String),
    /// One of several patterns, by what an argument is. The last is for all that is not named.
    Selection {
        /// The argument.
        on: String,
        /// Whether it is a count.
        kind: Kind,
        /// Keys and patterns; the key of the last is not looked at.
        variants: Vec<(String, Pattern)>,
    },
}

/// A message.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Pattern(pub Vec<Part>);

/// Marks in a packed pattern. None of them can be typed into a message file.
pub mod marks {
    /// An argument follows, by its position.
    pub const ARGUMENT: char = '\u{1}';
    /// A selection follows: the position of its argument, then its variants.
    pub const SELECTION: char = '\u{2}';
    /// Between the key of a variant and its pattern.
    pub const KEY: char = '\u{3}';
    /// Behind each variant.
    pub const VARIANT: char = '\u{4}';
    /// Behind the last variant.
    pub const END: char = '\u{5}';
    /// Between messages.
    pub const MESSAGE: char = '\u{0}';
    /// Position 0 of an argument; the others follow.
    pub const FIRST_POSITION: char = '0';
}

impl Pattern {
    /// The arguments, in the order in which they first occur.
    #[must_use]
    pub fn arguments(&self) -> Vec<Argument> {
        let mut all: Vec<Argument> = Vec::new();
        self.gather(&mut all);
        all
    }

    fn gather(&self, all: &mut Vec<Argument>) {
        let add =
            |name: &str, kind: Kind, all: &mut Vec<Argument>| match all.iter_mut().find(|known| known.name == name) {
                Some(known) if kind == Kind::Count => known.kind = kind,
                Some(_) => {}
                None => all.push(Argument { name: name.to_owned(), kind }),
            };
        for part in &self.0 {
            match part {
                Part::Text(_) => {}
                Part::Argument(name) => add(name, Kind::Text, all),
                Part::Selection { on, kind, variants } => {
                    add(on, *kind, all);
                    for (_, pattern) in variants {
                        pattern.gather(all);
                    }
                }
            }
        }
    }

    /// Packs it, its arguments at the positions that they have in `order`.
    #[must_use]
    pub fn pack(&self, order: &[Argument]) -> String {
        let mut packed = String::new();
        self.pack_into(order, &mut packed);
        packed
    }

    fn pack_into(&self, order: &[Argument], packed: &mut String) {
        let position = |name: &str| {
            let at = order.iter().position(|argument| argument.name == name).unwrap_or(0);
            char::from_u32(u32::from(marks::FIRST_POSITION) + u32::try_from(at).unwrap_or(0)).unwrap_or('0')
        };
        for part in &self.0 {
            match part {
                Part::Text(text) => packed.push_str(text),
                Part::Argument(name) => packed.extend([marks::ARGUMENT, position(name)]),
                Part::Selection { on, variants, .. } => {
                    packed.extend([marks::SELECTION, position(on)]);
                    for (key, pattern) in variants {
                        packed.push_str(key);
                        packed.push(marks::KEY);
                        pattern.pack_into(order, packed);
                        packed.push(marks::VARIANT);
                    }
                    packed.push(marks::END);
                }
            }
        }
    }

    /// The message with its arguments as they are written in a message file, for people who read code.
    #[must_use]
    pub fn shown(&self) -> String {
        self.0
            .iter()
            .map(|part| match part {
                Part::Text(text) => text.clone(),
                Part::Argument(name) => format!("{{ ${name} }}"),
                Part::Selection { variants, .. } => {
                    variants.last().map(|(_, pattern)| pattern.shown()).unwrap_or_default()
                }
            })
            .collect()
    }
}
