//! TODO

use super::Registered;

/// The findings of this family.
pub const FINDINGS: &[Registered] = &[];
