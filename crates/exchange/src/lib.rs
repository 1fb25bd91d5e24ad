#![forbid(unsafe_code)]
//! Placeholder.
