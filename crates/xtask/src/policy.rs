//! What the page may do, said once: the Content-Security-Policy that the build writes into the page and `serve` sends.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

/// What holds wherever the policy stands, before and after where its style sheets may come from.
const DIRECTIVES: [&str; 2] = [
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'",
    "; img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; \
     frame-src 'self'; base-uri 'none'; form-action 'none'",
];
/// How the tag in a page begins.
const TAG: &str = "<meta http-equiv=\"Content-Security-Policy\" content=\"";

/// The policy as a response header for whatever is no page.
pub fn header() -> String {
    format!("{}; frame-ancestors 'self'", DIRECTIVES.concat())
}

/// The policy as a response header for a page: what its own tag says, and who may frame it, which only a header can say.
pub fn header_of(page: &str) -> String {
    let own = page.split_once(TAG).and_then(|(_, rest)| rest.split_once('"'));
    own.map_or_else(header, |(directives, _)| format!("{directives}; frame-ancestors 'self'"))
}

/// The policy of a page that other people's pages may frame.
pub fn header_of_frame() -> String {
    format!("{}; frame-ancestors *", DIRECTIVES.concat())
}

/// The policy as a tag for the head of a page. A page cannot say who may frame it: that directive is left out.
pub fn meta_tag() -> String {
    format!("{TAG}{}\">", DIRECTIVES.concat())
}

/// The policy of a page in which this style sheet stands, and no other may: named by its hash, as CSP level 2 has it.
pub fn meta_tag_for(style: &str) -> String {
    let hash = STANDARD.encode(Sha256::digest(style));
    format!("{TAG}{}\">", DIRECTIVES.join(&format!(" 'sha256-{hash}'")))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_inline_and_no_other_host_is_allowed() {
        for policy in [header(), meta_tag(), meta_tag_for("a { b: c; }")] {
            assert!(!policy.contains("unsafe-inline") && !policy.contains("'unsafe-eval'"));
            assert!(!policy.contains("http:") && !policy.contains("https:") && !policy.contains('*'));
            assert!(policy.contains("default-src 'none'"));
        }
        assert!(!meta_tag().contains("frame-ancestors"));
        assert_eq!(meta_tag().matches('"').count(), 4, "the policy must not end its attribute");
    }

    #[test]
    fn a_style_sheet_in_a_page_is_named_by_its_hash_in_its_tag_and_its_header() {
        // The digest of nothing: FIPS 180-4 as published by NIST, e3b0c442…b855, in base64.
        let tag = meta_tag_for("");
        let hash = "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='";
        assert!(tag.contains(&format!("style-src 'self' {hash}; img-src")), "{tag}");
        let header = header_of(&format!("<head>{tag}</head>"));
        assert!(header.contains(hash) && header.ends_with("; frame-ancestors 'self'"), "{header}");
        assert_eq!(header_of("a page without a tag"), super::header());
    }
}
