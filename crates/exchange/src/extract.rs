//! Extracts and solutions as they are kept on a device.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::fmt;
use stillroom_core::extract::Liquid;
use stillroom_core::{Grams, Percent};

/// Names an extract on this device.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct ExtractId(pub u64);

impl fmt::Display for ExtractId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:016x}", self.0)
    }
}

impl TryFrom<String> for ExtractId {
    type Error = core::num::ParseIntError;
    fn try_from(text: String) -> Result<Self, Self::Error> {
        u64::from_str_radix(&text, 16).map(Self)
    }
}

impl From<ExtractId> for String {
    fn from(id: ExtractId) -> Self {
        id.to_string()
    }
}

/// What is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ExtractKind {
    /// A plant in glycerin and water.
    Glycerite,
    /// A substance in a solvent, kept in stock.
    Solution,
    /// Alcohol brought from one strength to another.
    Alcohol,
}

/// What was done to a liquid after pressing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Step {
    /// Glycerin was poured in: its mass and purity.
    Glycerin(Grams, Percent),
    /// Water was poured in.
    Water(Grams),
    /// It was weighed again after water had evaporated.
    WeighedAgain(Grams),
    /// Its glycerin was measured.
    Measured(Percent),
}

/// A plan and what became of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Extract {
    /// What is made.
    pub kind: ExtractKind,
    /// What the maker calls it.
    pub name: String,
    /// What the fields hold, by the name of the field. Numbers are written with a point, masses in grams, volumes in
    /// millilitres. A field that is absent stands at its usual value.
    #[serde(default)]
    pub values: BTreeMap<String, String>,
    /// The liquid it began as, where it was blended rather than planned.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blend: Option<Liquid>,
    /// What was done after pressing, in order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub steps: Vec<Step>,
}

/// An extract on the shelf.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ExtractRecord {
    /// Names it on this device.
    pub id: ExtractId,
    /// Counts the times it was written.
    pub revision: u64,
    /// When it was last changed, in milliseconds since 1970.
    pub changed_at: u64,
    /// The extract.
    pub extract: Extract,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record;

    #[test]
    fn the_first_schema_is_read_for_ever() {
        let golden = include_str!("../golden/extract-1.json");
        let record: ExtractRecord = record::read(golden).unwrap();
        assert_eq!(record.id, ExtractId(0x0cc0_0e71));
        assert_eq!(record.extract.kind, ExtractKind::Glycerite);
        assert_eq!(record.extract.values["plant-mass"], "300");
        assert_eq!(record.extract.steps.len(), 4);
        let again: ExtractRecord = record::read(&record::write(&record).unwrap()).unwrap();
        assert_eq!(again, record);
    }

    #[test]
    fn a_mass_that_is_none_is_damage() {
        let golden = include_str!("../golden/extract-1.json").replace("\"95.4\"", "\"-95.4\"");
        assert_eq!(record::read::<ExtractRecord>(&golden).unwrap_err().code(), "record.damaged");
    }
}
