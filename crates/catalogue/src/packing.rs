//! Packing of the catalogue's rows, column by column. The build does this, and the test that unpacks again.

use crate::packed::{Figures, Origins, Packed};
use crate::stored::{Figure, Stored, StoredOrigin, Subject};
use rust_decimal::Decimal;

/// Joins the texts of a column. A text that holds a line feed cannot be packed; the rules of the data files forbid it.
fn join<'a>(texts: impl Iterator<Item = &'a str>) -> String {
    texts.collect::<Vec<_>>().join("\n")
}

/// Steps between growing numbers.
fn steps(numbers: impl Iterator<Item = u32>) -> Vec<u32> {
    let mut last = 0;
    numbers
        .map(|number| {
            let step = number.wrapping_sub(last);
            last = number;
            step
        })
        .collect()
}

impl Figure {
    /// Packs a number. `None` if it has more than 18 digits.
    pub fn pack(value: Decimal) -> Option<Self> {
        let value = value.normalize();
        Some(Self { digits: i64::try_from(value.mantissa()).ok()?, places: u8::try_from(value.scale()).ok()? })
    }
}

impl Figures {
    fn pack(figures: impl Iterator<Item = Option<Figure>>) -> Self {
        let mut packed = Self::default();
        for figure in figures {
            packed.places.push(figure.map_or(0, |figure| figure.places.saturating_add(1)));
            packed.digits.extend(figure.map(|figure| figure.digits));
        }
        packed
    }
}

impl Origins<String> {
    fn pack<'a, 'b: 'a>(origins: impl Iterator<Item = &'a StoredOrigin<'b>> + Clone) -> Self {
        Self {
            sources: origins.clone().map(|origin| origin.source).collect(),
            bases: origins.clone().map(|origin| origin.basis).collect(),
            locators: join(origins.map(|origin| origin.locator)),
        }
    }
}

impl Packed<String> {
    /// Packs a catalogue whose values are sorted by subject.
    pub fn pack(stored: &Stored<'_>) -> Self {
        let Stored { sources, functions, constituents, materials, parts, values } = stored;
        Self {
            source_texts: [
                join(sources.iter().map(|row| row.slug)),
                join(sources.iter().map(|row| row.citation)),
                join(sources.iter().map(|row| row.as_of)),
                join(sources.iter().map(|row| row.kind)),
            ],
            functions: join(functions.iter().copied()),
            constituent_numbers: steps(constituents.iter().map(|row| row.number)),
            constituent_texts: [
                join(constituents.iter().map(|row| row.inci)),
                join(constituents.iter().map(|row| row.formula)),
            ],
            constituent_classes: constituents.iter().map(|row| row.class).collect(),
            cas_counts: constituents.iter().map(|row| count(row.cas.len())).collect(),
            cas: constituents.iter().flat_map(|row| row.cas.iter().copied()).collect(),
            function_counts: constituents.iter().map(|row| count(row.functions.len())).collect(),
            function_places: constituents.iter().flat_map(|row| row.functions.iter().copied()).collect(),
            constituent_origins: Origins::pack(constituents.iter().map(|row| &row.origin)),
            material_numbers: steps(materials.iter().map(|row| row.number)),
            material_texts: [
                join(materials.iter().map(|row| row.name)),
                join(materials.iter().map(|row| row.other_names)),
                join(materials.iter().map(|row| &*row.further_names)),
            ],
            material_classes: materials.iter().map(|row| row.class).collect(),
            phases: materials.iter().map(|row| row.phase).collect(),
            material_constituents: steps(materials.iter().map(|row| row.constituent.unwrap_or(0))),
            material_origins: Origins::pack(materials.iter().map(|row| &row.origin)),
            part_materials: steps(parts.iter().map(|row| row.material)),
            parts: parts.iter().map(|row| row.part).collect(),
            percents: Figures::pack(parts.iter().map(|row| row.percent)),
            part_notes: join(parts.iter().map(|row| row.note)),
            part_origins: Origins::pack(parts.iter().map(|row| &row.origin)),
            values_of_materials: values.iter().map(|row| u32::from(matches!(row.subject, Subject::Material(_)))).sum(),
            value_numbers: steps(values.iter().map(|row| match row.subject {
                Subject::Material(number) | Subject::Constituent(number) => number,
            })),
            properties: values.iter().map(|row| row.property).collect(),
            figures: [
                Figures::pack(values.iter().map(|row| row.value)),
                Figures::pack(values.iter().map(|row| row.minimum)),
                Figures::pack(values.iter().map(|row| row.maximum)),
            ],
            value_texts: [join(values.iter().map(|row| row.conditions)), join(values.iter().map(|row| row.note))],
            value_origins: Origins::pack(values.iter().map(|row| &row.origin)),
        }
    }
}

fn count(length: usize) -> u8 {
    u8::try_from(length).unwrap_or(u8::MAX)
}
