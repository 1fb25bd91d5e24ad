//! What the page may do, said once: the Content-Security-Policy that the build writes into the page and `serve` sends.

/// What holds wherever the policy stands.
const DIRECTIVES: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
     img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; \
     frame-src 'self'; \
     base-uri 'none'; form-action 'none'";

/// The policy as a response header.
pub fn header() -> String {
    format!("{DIRECTIVES}; frame-ancestors 'self'")
}

/// The policy of a page that other people's pages may frame.
pub fn header_of_frame() -> String {
    format!("{DIRECTIVES}; frame-ancestors *")
}

/// The policy as a tag for the head of a page. A page cannot say who may frame it: that directive is left out.
pub fn meta_tag() -> String {
    format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{DIRECTIVES}\">")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_inline_and_no_other_host_is_allowed() {
        for policy in [header(), meta_tag()] {
            assert!(!policy.contains("unsafe-inline") && !policy.contains("'unsafe-eval'"));
            assert!(!policy.contains("http:") && !policy.contains("https:") && !policy.contains('*'));
            assert!(policy.contains("default-src 'none'"));
        }
        assert!(!meta_tag().contains("frame-ancestors"));
        assert_eq!(meta_tag().matches('"').count(), 4, "the policy must not end its attribute");
    }
}
