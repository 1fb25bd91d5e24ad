//! A formula as the maker writes it: phases in order, each with lines.

use crate::material::MaterialId;
use crate::quantity::{Grams, Percent};
use serde::{Deserialize, Serialize};

/// Names a line within its formula; never reused there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct LineId(pub u32);

/// Names a phase within its formula; never reused there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct PhaseId(pub u32);

/// How much of a material a line or part states.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Amount {
    /// A percent of the whole.
    Percent(Percent),
    /// A mass, in a formula written down from an old batch.
    Grams(Grams),
    /// Quantum satis: as much as makes the total 100 %.
    QuantumSatis,
}

/// What is done with a phase.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PhaseKind {
    /// Heated with the water.
    HeatedWater,
    /// Heated with the oil.
    HeatedOil,
    /// Added once the batch has cooled.
    CoolDown,
    /// Made and kept at room temperature.
    RoomTemperature,
}

/// One line: a material and how much of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Line {
    /// Names the line within its formula.
    pub id: LineId,
    /// What is weighed out.
    pub material: MaterialId,
    /// How much.
    pub amount: Amount,
    /// What the maker notes beside it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
}

/// Lines handled together.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Phase {
    /// Names the phase within its formula.
    pub id: PhaseId,
    /// What the maker calls it.
    pub name: String,
    /// What is done with it.
    pub kind: PhaseKind,
    /// The lines, in the order they are weighed.
    pub lines: Vec<Line>,
}

/// A formula: phases in order, each with lines.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Formula {
    /// What the maker calls it.
    pub name: String,
    /// The phases, in the order they are made.
    pub phases: Vec<Phase>,
}
