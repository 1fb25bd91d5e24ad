//! Extracts and solutions as they are kept on a device.

use crate::json::{Damage, Value, Writer};
use crate::record::Kept;
use litemap::LiteMap;
use serde::{Deserialize, Serialize};
use std::fmt;
use stillroom_core::extract::{Liquid, Solids};
use stillroom_core::{Grams, Percent};

/// Names an extract on this device.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
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
#[cfg_attr(test, derive(schemars::JsonSchema))]
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
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
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
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct Extract {
    /// What is made.
    pub kind: ExtractKind,
    /// What the maker calls it.
    #[cfg_attr(test, schemars(default))]
    pub name: String,
    /// What the fields hold, by the name of the field. Numbers are written with a point, masses in grams, volumes in
    /// millilitres. A field that is absent stands at its usual value.
    #[cfg_attr(test, schemars(with = "Vec<(String, String)>"))]
    pub values: LiteMap<String, String>,
    /// The liquid it began as, where it was blended rather than planned.
    #[cfg_attr(test, schemars(with = "Option<crate::schema::LiquidSchema>"))]
    pub blend: Option<Liquid>,
    /// What was done after pressing, in order.
    #[cfg_attr(test, schemars(with = "Vec<crate::schema::StepSchema>", default))]
    pub steps: Vec<Step>,
}

/// An extract on the shelf.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
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

impl Kept for ExtractRecord {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        let extract = value.need("extract")?;
        let mut values = LiteMap::new();
        // Each field with its text, as a list of two.
        for pair in extract.need("values")?.list()? {
            let mut both = pair.list()?;
            let (Some(field), Some(text), None) = (both.next(), both.next(), both.next()) else {
                return pair.damaged();
            };
            values.insert(field.text()?.to_owned(), text.text()?.to_owned());
        }
        let steps = match extract.field("steps")? {
            Some(steps) => steps.list()?.map(|step| read_step(&step)).collect::<Result<_, _>>()?,
            None => Vec::new(),
        };
        Ok(Self {
            id: value.need("id")?.worded()?,
            revision: value.need("revision")?.whole()?,
            changed_at: value.need("changed_at")?.whole()?,
            extract: Extract {
                kind: extract.need("kind")?.worded()?,
                name: extract.text_field("name")?,
                values,
                blend: extract.field("blend")?.map(|liquid| read_liquid(&liquid)).transpose()?,
                steps,
            },
        })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("id").worded(&self.id);
        writer.field("revision").whole(self.revision);
        writer.field("changed_at").whole(self.changed_at);
        let Extract { kind, name, values, blend, steps } = &self.extract;
        writer.field("extract").object(|writer| {
            writer.field("kind").worded(kind);
            writer.text_field("name", name);
            let values: Vec<_> = values.iter().collect();
            writer.field("values").list(&values, |writer, (field, text)| {
                writer.list(&[field.as_str(), text.as_str()], |writer, each| writer.text(each));
            });
            if let Some(liquid) = blend {
                writer.field("blend").object(|writer| write_liquid(writer, liquid));
            }
            if !steps.is_empty() {
                writer.field("steps").list(steps, |writer, step| writer.object(|writer| write_step(writer, *step)));
            }
        });
    }
}

fn read_step(value: &Value<'_>) -> Result<Step, Damage> {
    match value.choice()? {
        ("glycerin", poured) => Ok(Step::Glycerin(poured.need("mass")?.worded()?, poured.need("purity")?.worded()?)),
        ("water", mass) => mass.worded().map(Step::Water),
        ("weighed-again", mass) => mass.worded().map(Step::WeighedAgain),
        ("measured", percent) => percent.worded().map(Step::Measured),
        (_, unknown) => unknown.damaged(),
    }
}

fn write_step(writer: &mut Writer, step: Step) {
    match step {
        Step::Glycerin(mass, purity) => writer.field("glycerin").object(|writer| {
            writer.field("mass").worded(&mass);
            writer.field("purity").worded(&purity);
        }),
        Step::Water(mass) => writer.field("water").worded(&mass),
        Step::WeighedAgain(mass) => writer.field("weighed-again").worded(&mass),
        Step::Measured(percent) => writer.field("measured").worded(&percent),
    }
}

fn read_liquid(value: &Value<'_>) -> Result<Liquid, Damage> {
    let mass = |name: &'static str| value.worded_field(name).map(|mass| mass.unwrap_or(Grams::ZERO));
    Ok(Liquid {
        glycerin: mass("glycerin")?,
        water: mass("water")?,
        propylene_glycol: mass("propylene-glycol")?,
        propanediol: mass("propanediol")?,
        ethanol: mass("ethanol")?,
        solids: Solids { low: mass("solids-low")?, typical: mass("solids-typical")?, high: mass("solids-high")? },
    })
}

fn write_liquid(writer: &mut Writer, liquid: &Liquid) {
    for (name, mass) in [
        ("glycerin", liquid.glycerin),
        ("water", liquid.water),
        ("propylene-glycol", liquid.propylene_glycol),
        ("propanediol", liquid.propanediol),
        ("ethanol", liquid.ethanol),
        ("solids-low", liquid.solids.low),
        ("solids-typical", liquid.solids.typical),
        ("solids-high", liquid.solids.high),
    ] {
        writer.worded_field(name, Some(mass).filter(|mass| !mass.is_zero()).as_ref());
    }
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
        assert_eq!(record.extract.values.get("plant-mass").map(String::as_str), Some("300"));
        assert_eq!(record.extract.steps.len(), 4);
        let again: ExtractRecord = record::read(&record::write(&record)).unwrap();
        assert_eq!(again, record);
    }

    #[test]
    fn a_mass_that_is_none_is_damage() {
        let golden = include_str!("../golden/extract-1.json").replace("\"95.4\"", "\"-95.4\"");
        assert_eq!(record::read::<ExtractRecord>(&golden).unwrap_err().code(), "record.damaged");
    }
}
