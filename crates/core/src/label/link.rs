//! An address on a label: what is taken for one, and how large the modules of a code of it have to be.

/// Longest address, in characters. *Source*: common practice; a code of more does not fit beside what a label has to say.
pub const LONGEST_LINK: usize = 200;
/// Modules left empty on every side of a QR code. *Source*: ISO/IEC 18004, the quiet zone.
pub const QUIET_ZONE: u32 = 4;
/// Width of a module that a phone reads with ease, in millimetres. *Source*: common practice for printed codes.
pub const USUAL_MODULE: f64 = 0.4;
/// Least width of a module, in millimetres. *Source*: common practice for printed codes.
pub const LEAST_MODULE: f64 = 0.33;

/// Why a text is no address for a label.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum LinkError {
    /// There is a space in it.
    #[error("a space in an address")]
    Space,
    /// A letter that addresses do not have: readers of codes differ in what they make of it. *Source*: RFC 3986, section 2.
    #[error("`{0}` in an address")]
    Letter(char),
    /// It begins with something that a page of the web does not begin with.
    #[error("`{0}:` is no address of a page")]
    Scheme(String),
    /// What stands where the name of the host belongs is none.
    #[error("`{0}` is no name of a host")]
    Host(String),
    /// It is longer than [`LONGEST_LINK`].
    #[error("{0} characters")]
    TooLong(usize),
}

impl LinkError {
    /// Stable code.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Space => "link.space",
            Self::Letter(_) => "link.letter",
            Self::Scheme(_) => "link.scheme",
            Self::Host(_) => "link.host",
            Self::TooLong(_) => "link.too-long",
        }
    }
}

/// The address that a phone opens, of what somebody typed. What names no scheme is taken as `https`.
///
/// # Errors
/// [`LinkError`] where it is no address of a page.
///
/// ```
/// use stillroom_core::label::{LinkError, read_link};
/// assert_eq!(read_link(" maker.example/balm ").unwrap(), "https://maker.example/balm");
/// assert_eq!(read_link("http://maker.example").unwrap(), "http://maker.example");
/// assert_eq!(read_link("mailto:me@maker.example"), Err(LinkError::Scheme("mailto".to_owned())));
/// assert_eq!(read_link("balm"), Err(LinkError::Host("balm".to_owned())));
/// ```
pub fn read_link(typed: &str) -> Result<String, LinkError> {
    let typed = typed.trim();
    if typed.contains(char::is_whitespace) {
        return Err(LinkError::Space);
    }
    if let Some(letter) = typed.chars().find(|letter| !is_of_address(*letter)) {
        return Err(LinkError::Letter(letter));
    }
    // Every letter is one byte here.
    if typed.len() > LONGEST_LINK {
        return Err(LinkError::TooLong(typed.len()));
    }
    let (scheme, rest) = match typed.split_once("://") {
        Some((scheme, rest)) if ["https", "http"].contains(&scheme.to_ascii_lowercase().as_str()) => (scheme, rest),
        Some((scheme, _)) => return Err(LinkError::Scheme(scheme.to_owned())),
        None => ("https", typed),
    };
    let host = rest.split(['/', '?', '#']).next().unwrap_or_default();
    let (name, port) = host.split_once(':').unwrap_or((host, ""));
    if !port.chars().all(|letter| letter.is_ascii_digit()) {
        return Err(LinkError::Scheme(name.to_owned()));
    }
    let is_part = |part: &str| {
        !part.is_empty()
            && !part.starts_with('-')
            && !part.ends_with('-')
            && part.chars().all(|letter| letter.is_ascii_alphanumeric() || letter == '-')
    };
    if !name.contains('.') || !name.split('.').all(is_part) {
        return Err(LinkError::Host(name.to_owned()));
    }
    Ok(format!("{}://{rest}", scheme.to_ascii_lowercase()))
}

/// The letters of RFC 3986, section 2.
fn is_of_address(letter: char) -> bool {
    letter.is_ascii_alphanumeric() || "-._~:/?#[]@!$&'()*+,;=%".contains(letter)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn what_is_no_address_of_a_page_is_refused_with_its_reason() {
        let code = |typed: &str| read_link(typed).unwrap_err().code();
        assert_eq!(code("maker.example/my balm"), "link.space");
        assert_eq!(code("müller.example"), "link.letter");
        assert_eq!(code("ftp://maker.example"), "link.scheme");
        assert_eq!(code("tel:+491234"), "link.scheme");
        assert_eq!(code("me@maker.example"), "link.host");
        assert_eq!(code("https://"), "link.host");
        assert_eq!(code("https://.example"), "link.host");
        assert_eq!(code("https://-a.example"), "link.host");
        assert_eq!(code(&format!("maker.example/{}", "a".repeat(LONGEST_LINK))), "link.too-long");
        assert_eq!(
            read_link("HTTPS://Maker.Example:8080/a?b=c#d"),
            Ok("https://Maker.Example:8080/a?b=c#d".to_owned())
        );
    }

    proptest! {
        #[test]
        fn what_was_read_is_read_the_same_again(typed in "\\PC{0,40}|(https?://)?[a-z]{1,8}(\\.[a-z0-9-]{1,8}){0,3}(/[a-z%?=#]{0,12})?") {
            if let Ok(address) = read_link(&typed) {
                prop_assert_eq!(read_link(&address).unwrap(), address.clone());
                prop_assert!(address.ends_with(typed.trim().rsplit("://").next().unwrap()));
            }
        }
    }
}
