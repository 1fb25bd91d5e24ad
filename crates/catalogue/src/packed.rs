//! The packed form of the catalogue: one column after the other.
//!
//! Rows side by side compress badly: a class stands between two names. Column by column, like lies beside like, and the
//! packed catalogue takes a third less room after compression. Texts of a column are joined by line feeds, numbers
//! that grow are stored as steps.

use crate::property::{Basis, Property};
use crate::stored::{
    Figure, Stored, StoredConstituent, StoredMaterial, StoredOrigin, StoredPart, StoredSource, StoredValue, Subject,
};
use serde::{Deserialize, Serialize};
use stillroom_terms::{Class, PhaseKind};

fn split(texts: &str) -> impl Iterator<Item = &str> {
    texts.split('\n')
}

/// The numbers behind steps.
fn sums(steps: Vec<u32>) -> impl Iterator<Item = u32> {
    let mut last = 0_u32;
    steps.into_iter().map(move |step| {
        last = last.wrapping_add(step);
        last
    })
}

/// Figures that may be missing: digits and places apart.
#[derive(Debug, Default, Serialize, Deserialize)]
pub struct Figures {
    /// Places, one more than there are; 0 for a missing figure.
    pub places: Vec<u8>,
    pub digits: Vec<i64>,
}

impl Figures {
    fn unpack(self) -> impl Iterator<Item = Option<Figure>> {
        let mut digits = self.digits.into_iter();
        self.places.into_iter().map(move |places| {
            let places = places.checked_sub(1)?;
            Some(Figure { digits: digits.next()?, places })
        })
    }
}

/// Where the facts of a column were found.
#[derive(Debug, Default, Serialize, Deserialize)]
pub struct Origins<T> {
    pub sources: Vec<u16>,
    pub bases: Vec<Basis>,
    pub locators: T,
}

impl<'a> Origins<&'a str> {
    fn unpack(self) -> impl Iterator<Item = StoredOrigin<'a>> {
        let rows = self.sources.into_iter().zip(self.bases).zip(split(self.locators));
        rows.map(|((source, basis), locator)| StoredOrigin { source, locator, basis })
    }
}

/// The packed form. `T` is `String` while packing and `&str` into the packed bytes while unpacking.
#[derive(Debug, Default, Serialize, Deserialize)]
pub struct Packed<T> {
    pub source_texts: [T; 4],
    pub functions: T,
    pub constituent_numbers: Vec<u32>,
    pub constituent_texts: [T; 2],
    pub constituent_classes: Vec<Class>,
    pub cas_counts: Vec<u8>,
    pub cas: Vec<u32>,
    pub function_counts: Vec<u8>,
    pub function_places: Vec<u8>,
    pub constituent_origins: Origins<T>,
    pub material_numbers: Vec<u32>,
    pub material_texts: [T; 3],
    pub material_classes: Vec<Class>,
    pub phases: Vec<PhaseKind>,
    /// Steps between constituents, 0 standing for none.
    pub material_constituents: Vec<u32>,
    pub material_origins: Origins<T>,
    pub part_materials: Vec<u32>,
    pub parts: Vec<u32>,
    pub percents: Figures,
    pub part_notes: T,
    pub part_origins: Origins<T>,
    /// How many of the values belong to materials; the rest belong to constituents.
    pub values_of_materials: u32,
    pub value_numbers: Vec<u32>,
    pub properties: Vec<Property>,
    pub figures: [Figures; 3],
    pub value_texts: [T; 2],
    pub value_origins: Origins<T>,
}

impl<'a> Packed<&'a str> {
    /// Unpacks. What does not fit together is left out; the build and a test see to it that nothing is.
    pub fn unpack(self) -> Stored<'a> {
        let [slugs, citations, dates, kinds] = self.source_texts;
        let sources = split(slugs).zip(split(citations)).zip(split(dates)).zip(split(kinds));
        let [inci, formulas] = self.constituent_texts;
        let mut cas = self.cas.into_iter();
        let mut places = self.function_places.into_iter();
        let constituents = (sums(self.constituent_numbers).zip(split(inci)).zip(split(formulas)))
            .zip(self.constituent_classes)
            .zip(self.cas_counts.into_iter().zip(self.function_counts))
            .zip(self.constituent_origins.unpack());
        let [names, other_names, further_names] = self.material_texts;
        let materials =
            (sums(self.material_numbers).zip(split(names)).zip(split(other_names)).zip(split(further_names)))
                .zip(self.material_classes.into_iter().zip(self.phases))
                .zip(sums(self.material_constituents))
                .zip(self.material_origins.unpack());
        let parts = (sums(self.part_materials).zip(self.parts).zip(self.percents.unpack()))
            .zip(split(self.part_notes))
            .zip(self.part_origins.unpack());
        let [conditions, notes] = self.value_texts;
        let [value, minimum, maximum] = self.figures;
        let values = ((0..).zip(sums(self.value_numbers)).zip(self.properties))
            .zip(value.unpack().zip(minimum.unpack()).zip(maximum.unpack()))
            .zip(split(conditions).zip(split(notes)))
            .zip(self.value_origins.unpack());
        let of_materials = self.values_of_materials;
        Stored {
            sources: sources
                .map(|(((slug, citation), as_of), kind)| StoredSource { slug, citation, as_of, kind })
                .collect(),
            functions: split(self.functions).collect(),
            constituents: constituents
                .map(|(((((number, inci), formula), class), (cas_count, function_count)), origin)| StoredConstituent {
                    number,
                    inci,
                    cas: cas.by_ref().take(cas_count.into()).collect(),
                    class,
                    formula,
                    functions: places.by_ref().take(function_count.into()).collect(),
                    origin,
                })
                .collect(),
            materials: materials
                .map(|((((((number, name), other_names), further_names), (class, phase)), constituent), origin)| {
                    StoredMaterial {
                        number,
                        name,
                        other_names,
                        further_names: further_names.into(),
                        class,
                        phase,
                        constituent: Some(constituent).filter(|number| *number > 0),
                        origin,
                    }
                })
                .collect(),
            parts: parts
                .map(|((((material, part), percent), note), origin)| StoredPart {
                    material,
                    part,
                    percent,
                    note,
                    origin,
                })
                .collect(),
            values: values
                .map(|(((((place, number), property), figures), (conditions, note)), origin)| StoredValue {
                    subject: if place < of_materials {
                        Subject::Material(number)
                    } else {
                        Subject::Constituent(number)
                    },
                    property,
                    value: figures.0.0,
                    minimum: figures.0.1,
                    maximum: figures.1,
                    conditions,
                    note,
                    origin,
                })
                .collect(),
        }
    }
}
