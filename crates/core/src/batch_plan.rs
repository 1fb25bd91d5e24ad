//! How large a batch the maker asks for: what is noted of it. [`crate::scaling`] works it out.

use crate::material::MaterialId;
use crate::quantity::{Density, Grams, Millilitres, Percent};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// Most containers in one batch.
pub const MOST_CONTAINERS: u32 = 100_000;
/// Largest share of a container left empty, and largest share of a batch lost, in percent.
pub const LARGEST_ALLOWANCE: Decimal = Decimal::from_parts(90, 0, 0, false, 0);

/// What the maker asks for. The numbers of every way are kept, so that going back and forth loses none.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BatchPlan {
    /// Which of the ways counts.
    pub way: BatchWay,
    /// Batch mass asked for.
    pub mass: Grams,
    /// Containers to fill.
    pub containers: Containers,
    /// What is left of materials.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stock: Vec<Stock>,
}

/// The ways a maker asks for a batch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum BatchWay {
    /// So many grams.
    #[default]
    Mass,
    /// Enough to fill so many containers.
    Containers,
    /// As much as the materials at hand allow.
    Stock,
}

/// Containers to fill.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Containers {
    /// How many.
    pub count: u32,
    /// Volume of each.
    pub volume: Millilitres,
    /// Share of each left empty.
    pub headspace: Percent,
    /// Share of the batch that stays on walls and tools.
    pub loss: Percent,
    /// Density of the product if the maker measured it; else it is estimated.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub density: Option<Density>,
}

/// What is left of a material.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Stock {
    /// The material.
    pub material: MaterialId,
    /// How much of it.
    pub available: Grams,
}

impl Default for BatchPlan {
    fn default() -> Self {
        Self {
            way: BatchWay::Mass,
            mass: Grams::from_hundredths(10_000),
            containers: Containers {
                count: 4,
                volume: Millilitres::from_hundredths(3_000),
                headspace: Percent::ZERO,
                loss: Percent::from_hundredths(400),
                density: None,
            },
            stock: Vec::new(),
        }
    }
}
