//! How much of something a formula or a composite states.

use crate::quantity::{Grams, Percent};
use serde::{Deserialize, Serialize};

/// How much of a material a line or part states.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Amount {
    /// A percent of the whole.
    Percent(Percent),
    /// A mass, in a formula written down from an old batch.
    Grams(Grams),
    /// Quantum satis: as much as makes the total 100 %.
    QuantumSatis,
}
