//! Reading the command line: `--flag`, `--option value` and plain words.

use anyhow::{Context, Result, bail};
use std::collections::VecDeque;
use std::str::FromStr;

/// What is left of a command line.
#[derive(Debug)]
pub struct Arguments(VecDeque<String>);

impl Arguments {
    /// The words after the program's name.
    pub fn new(words: impl IntoIterator<Item = String>) -> Self {
        Self(words.into_iter().collect())
    }

    /// Takes the first word, unless it is an option.
    pub fn word(&mut self) -> Option<String> {
        if self.0.front()?.starts_with('-') {
            return None;
        }
        self.0.pop_front()
    }

    /// Takes a flag and says whether it was there.
    pub fn flag(&mut self, name: &str) -> bool {
        let place = self.0.iter().position(|word| word == name);
        place.and_then(|place| self.0.remove(place)).is_some()
    }

    /// Takes an option with its value, written `--name value` or `--name=value`.
    pub fn option<T: FromStr>(&mut self, name: &str) -> Result<Option<T>> {
        let joined = format!("{name}=");
        let Some(place) = self.0.iter().position(|word| word == name || word.starts_with(&joined)) else {
            return Ok(None);
        };
        let word = self.0.remove(place).unwrap_or_default();
        let value = match word.strip_prefix(&joined) {
            Some(value) => value.to_owned(),
            None => self.0.remove(place).with_context(|| format!("{name} needs a value"))?,
        };
        match value.parse() {
            Ok(value) => Ok(Some(value)),
            Err(_) => bail!("{name} does not understand `{value}`"),
        }
    }

    /// Fails if anything is left that nobody asked for.
    pub fn finish(self) -> Result<()> {
        match self.0.front() {
            Some(word) => {
                bail!("`{word}` is not understood here; `cargo xtask help` lists what is")
            }
            None => Ok(()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn arguments(line: &str) -> Arguments {
        Arguments::new(line.split_whitespace().map(str::to_owned))
    }

    #[test]
    fn options_flags_and_words_are_taken_apart() {
        let mut line = arguments("serve --debug --port 9000 --only=fmt,tidy");
        assert_eq!(line.word().as_deref(), Some("serve"));
        assert_eq!(line.option::<u16>("--port").unwrap(), Some(9000));
        assert_eq!(line.option::<String>("--only").unwrap().as_deref(), Some("fmt,tidy"));
        assert!(line.flag("--debug"));
        assert!(!line.flag("--debug"));
        line.finish().unwrap();
    }

    #[test]
    fn what_is_not_understood_is_named() {
        assert!(arguments("--port many").option::<u16>("--port").unwrap_err().to_string().contains("many"));
        assert!(arguments("--port").option::<u16>("--port").is_err());
        assert!(arguments("--prot 1").finish().unwrap_err().to_string().contains("--prot"));
    }
}
