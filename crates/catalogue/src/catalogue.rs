//! The decoded catalogue.

use crate::packed::Packed;
use crate::property::{Basis, Kind, Property};
use crate::search::{Field, Filter, Hit, IndexEntry, MaterialIndex};
use crate::stored::{Figure, Stored, StoredOrigin, StoredSource, Subject};
use rust_decimal::Decimal;
use std::collections::BTreeMap;
use std::sync::OnceLock;
use stillroom_core::{
    Amount, Class, Constituent, ConstituentId, Density, Makeup, Material, MaterialId, MaterialSource, Part, Percent,
};

static PACKED: &[u8] = include_bytes!(concat!(env!("OUT_DIR"), "/catalogue.postcard"));
static PACKED_FOR_MAIN_JOB: &[u8] = include_bytes!(concat!(env!("OUT_DIR"), "/main-job.postcard"));

/// Size of the packed catalogue in bytes, before compression.
#[must_use]
pub const fn catalogue_bytes() -> usize {
    PACKED.len()
}

/// A row of the bibliography.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Source {
    /// Short name, stable.
    pub slug: &'static str,
    /// Citation.
    pub citation: &'static str,
    /// Year, or the day to which it was valid.
    pub as_of: &'static str,
    /// What it is: law, standard, handbook, dataset, paper, practice.
    pub kind: &'static str,
}

/// Where a fact was found, and how far it may be trusted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Origin {
    /// The source.
    pub source: Source,
    /// The spot in it: a table, an entry. May be empty.
    pub locator: &'static str,
    /// How far to trust it.
    pub basis: Basis,
}

/// A value of a property.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Value {
    /// Which property.
    pub property: Property,
    /// Whether it belongs to the constituent wherever it comes from, and not to this material as sold.
    pub of_constituent: bool,
    /// The number in [`Property::unit`], or the place of the word in its choices.
    pub value: Option<Decimal>,
    /// Lower end of the stated range.
    pub minimum: Option<Decimal>,
    /// Upper end of the stated range.
    pub maximum: Option<Decimal>,
    /// Temperature and the like. May be empty.
    pub conditions: &'static str,
    /// Remark. May be empty.
    pub note: &'static str,
    /// Where it was found.
    pub origin: Origin,
}

impl Value {
    /// The word, for a property whose values are words.
    #[must_use]
    pub fn word(&self) -> Option<&'static str> {
        let Kind::Choice(words) = self.property.kind() else {
            return None;
        };
        let place: usize = self.value?.try_into().ok()?;
        words.get(place).copied()
    }
}

/// What the catalogue knows of a material beside what [`Material`] holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MaterialDetails {
    /// Other names, for search and for the card.
    pub other_names: Vec<&'static str>,
    /// Where its identity was found.
    pub origin: Origin,
}

/// A part of a composite and where its amount was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ComponentOfComposite {
    /// The part.
    pub part: Part,
    /// Remark. May be empty.
    pub note: &'static str,
    /// Where the amount was found.
    pub origin: Origin,
}

/// Everything a card shows.
#[derive(Debug, Clone, PartialEq)]
pub struct MaterialCard<'a> {
    /// The material.
    pub material: &'a Material,
    /// Other names and the origin of the identity.
    pub details: &'a MaterialDetails,
    /// The one constituent, of a simple material.
    pub constituent: Option<&'a Constituent>,
    /// CAS registry numbers of that constituent.
    pub cas: Vec<String>,
    /// Molecular formula of that constituent. May be empty.
    pub formula: &'static str,
    /// What that constituent is used for.
    pub functions: Vec<&'static str>,
    /// The parts, of a composite.
    pub parts: &'a [ComponentOfComposite],
    /// Values of the material as sold, then of its constituent.
    pub values: Vec<Value>,
}

/// The materials and constituents that come with Stillroom.
#[derive(Debug)]
pub struct Catalogue {
    /// Materials and constituents by number, values by subject: so the build packs them.
    stored: Stored<'static>,
    materials: Vec<Material>,
    details: Vec<MaterialDetails>,
    parts: BTreeMap<u32, Vec<ComponentOfComposite>>,
    constituents: Vec<Constituent>,
    index: OnceLock<MaterialIndex>,
}

impl Catalogue {
    /// The catalogue, decoded at the first call.
    ///
    /// ```
    /// use stillroom_catalogue::{Catalogue, MaterialSource};
    /// use stillroom_core::MaterialId;
    /// let catalogue = Catalogue::get();
    /// let first = catalogue.search("glycerin", &Default::default());
    /// let glycerin = catalogue.material(first[0].id).expect("a hit names a material");
    /// assert_eq!(glycerin.name, "Glycerin, vegetable");
    /// assert!(catalogue.material(MaterialId::Catalogue(u32::MAX)).is_none());
    /// ```
    #[must_use]
    pub fn get() -> &'static Self {
        static CATALOGUE: OnceLock<Catalogue> = OnceLock::new();
        CATALOGUE.get_or_init(|| Self::decode(PACKED))
    }

    /// The part of the catalogue that a first visit waits for: names, compositions and densities, with the same numbers
    /// as in the whole. It has no cards, and its search knows no registry number and no function.
    #[must_use]
    pub fn for_main_job() -> &'static Self {
        static CATALOGUE: OnceLock<Catalogue> = OnceLock::new();
        CATALOGUE.get_or_init(|| Self::decode(PACKED_FOR_MAIN_JOB))
    }

    fn decode(bytes: &'static [u8]) -> Self {
        // The build packed what is decoded here; a test decodes it.
        let packed: Packed<&'static str> = postcard::from_bytes(bytes).unwrap_or_default();
        Self::from_stored(packed.unpack())
    }

    fn from_stored(stored: Stored<'static>) -> Self {
        let origin = |origin: &StoredOrigin<'static>| origin_of(&stored, origin);
        let mut parts: BTreeMap<u32, Vec<ComponentOfComposite>> = BTreeMap::new();
        for part in &stored.parts {
            let percent = part.percent.and_then(|percent| Percent::new(percent.unpack()).ok());
            parts.entry(part.material).or_default().push(ComponentOfComposite {
                part: Part {
                    material: MaterialId::Catalogue(part.part),
                    amount: percent.map_or(Amount::QuantumSatis, Amount::Percent),
                },
                note: part.note,
                origin: origin(&part.origin),
            });
        }
        let constituents = stored
            .constituents
            .iter()
            .map(|constituent| Constituent {
                id: ConstituentId::Catalogue(constituent.number),
                inci: constituent.inci.to_owned(),
                class: constituent.class,
            })
            .collect();
        let materials = stored
            .materials
            .iter()
            .map(|material| Material {
                id: MaterialId::Catalogue(material.number),
                name: material.name.to_owned(),
                class: material.class,
                usual_phase: material.phase,
                density: density_of(&stored, material.number, material.constituent),
                makeup: match material.constituent {
                    Some(number) => Makeup::Simple(ConstituentId::Catalogue(number)),
                    None => Makeup::Composite(
                        parts.get(&material.number).into_iter().flatten().map(|component| component.part).collect(),
                    ),
                },
            })
            .collect();
        let details = stored
            .materials
            .iter()
            .map(|material| MaterialDetails {
                other_names: listed(material.other_names).collect(),
                origin: origin(&material.origin),
            })
            .collect();
        Self { materials, details, parts, constituents, stored, index: OnceLock::new() }
    }

    /// Every material, by number.
    pub fn materials(&self) -> impl ExactSizeIterator<Item = &Material> {
        self.materials.iter()
    }

    /// Every constituent, by number.
    pub fn constituents(&self) -> impl ExactSizeIterator<Item = &Constituent> {
        self.constituents.iter()
    }

    /// The bibliography.
    pub fn sources(&self) -> impl ExactSizeIterator<Item = Source> {
        self.stored.sources.iter().map(source_of)
    }

    /// The source at a place of the bibliography.
    pub(crate) fn source(&self, place: u16) -> Option<Source> {
        self.stored.sources.get(usize::from(place)).map(source_of)
    }

    /// Everything known of a material of the catalogue. `None` for other references and for numbers not given out.
    #[must_use]
    pub fn card(&self, id: MaterialId) -> Option<MaterialCard<'_>> {
        let MaterialId::Catalogue(number) = id else {
            return None;
        };
        let place = self.place_of_material(number)?;
        let material = self.materials.get(place)?;
        let constituent_number = self.stored.materials.get(place)?.constituent;
        let stored = constituent_number.and_then(|number| self.place_of_constituent(number));
        let stored = stored.and_then(|place| self.stored.constituents.get(place));
        let mut values: Vec<Value> = self.values_of(Subject::Material(number)).collect();
        values.extend(constituent_number.into_iter().flat_map(|number| self.values_of(Subject::Constituent(number))));
        let functions = stored.into_iter().flat_map(|constituent| &constituent.functions);
        Some(MaterialCard {
            material,
            details: self.details.get(place)?,
            constituent: constituent_number.and_then(|number| self.constituent(ConstituentId::Catalogue(number))),
            cas: stored.into_iter().flat_map(|constituent| &constituent.cas).map(|cas| written_cas(*cas)).collect(),
            formula: stored.map_or("", |constituent| constituent.formula),
            functions: functions.filter_map(|place| self.stored.functions.get(usize::from(*place)).copied()).collect(),
            parts: self.parts.get(&number).map_or(&[], Vec::as_slice),
            values,
        })
    }

    /// Every value of a constituent, wherever it comes from.
    pub fn constituent_values(&self, id: ConstituentId) -> impl Iterator<Item = Value> {
        let number = match id {
            ConstituentId::Catalogue(number) => number,
            // Numbers start at 1: nothing is found for a substance of the maker's own.
            ConstituentId::Own(_) => 0,
        };
        self.values_of(Subject::Constituent(number))
    }

    /// Every value of a material as it is sold.
    pub fn material_values(&self, id: MaterialId) -> impl Iterator<Item = Value> {
        let number = match id {
            MaterialId::Catalogue(number) => number,
            // Numbers start at 1: nothing is found for what the maker described.
            MaterialId::Own(_) | MaterialId::Formula(_) => 0,
        };
        self.values_of(Subject::Material(number))
    }

    /// The molecular formula of a constituent, where it has one.
    #[must_use]
    pub fn molecular_formula(&self, id: ConstituentId) -> Option<&'static str> {
        let ConstituentId::Catalogue(number) = id else {
            return None;
        };
        let stored = self.stored.constituents.get(self.place_of_constituent(number)?)?;
        Some(stored.formula).filter(|formula| !formula.is_empty())
    }

    /// Searches the materials of the catalogue. See [`MaterialIndex::search`]. The first call builds the index, which
    /// takes some milliseconds: a page does well to make it, with an empty query, before anyone types.
    #[must_use]
    pub fn search(&self, query: &str, filter: &Filter) -> Vec<Hit> {
        self.index.get_or_init(|| MaterialIndex::build(self.index_entries())).search(query, filter)
    }

    /// What an index needs to know of each material, to be joined with the maker's own materials.
    pub fn index_entries(&self) -> impl Iterator<Item = IndexEntry<'_>> {
        self.materials.iter().zip(&self.details).zip(&self.stored.materials).map(|((material, details), stored)| {
            let mut texts = vec![(Field::Name, material.name.as_str().into())];
            texts.extend(details.other_names.iter().map(|name| (Field::OtherName, (*name).into())));
            let further = stored.further_names.split(';').map(str::trim).filter(|name| !name.is_empty());
            texts.extend(further.map(|name| (Field::FurtherName, name.into())));
            let parts = self.parts.get(&stored.number).into_iter().flatten();
            let inside = parts.filter_map(|component| self.material(component.part.material)).map(|part| &part.makeup);
            for (makeup, own) in inside.map(|makeup| (makeup, false)).chain([(&material.makeup, true)]) {
                let Makeup::Simple(ConstituentId::Catalogue(number)) = makeup else {
                    continue;
                };
                let place = self.place_of_constituent(*number);
                let Some(constituent) = place.and_then(|place| self.stored.constituents.get(place)) else {
                    continue;
                };
                texts.push((if own { Field::Inci } else { Field::Inside }, constituent.inci.into()));
                if own {
                    texts.extend(constituent.cas.iter().map(|cas| (Field::Cas, written_cas(*cas).into())));
                    let functions = constituent.functions.iter();
                    let names = functions.filter_map(|place| self.stored.functions.get(usize::from(*place)));
                    texts.extend(names.map(|name| (Field::Function, (*name).into())));
                }
            }
            IndexEntry { id: material.id, class: material.class, usual_phase: material.usual_phase, texts }
        })
    }

    fn values_of(&self, subject: Subject) -> impl Iterator<Item = Value> {
        let values = &self.stored.values;
        let start = values.partition_point(|value| value.subject < subject);
        values.iter().skip(start).take_while(move |value| value.subject == subject).map(move |value| Value {
            property: value.property,
            of_constituent: matches!(subject, Subject::Constituent(_)),
            value: value.value.map(Figure::unpack),
            minimum: value.minimum.map(Figure::unpack),
            maximum: value.maximum.map(Figure::unpack),
            conditions: value.conditions,
            note: value.note,
            origin: origin_of(&self.stored, &value.origin),
        })
    }

    fn place_of_material(&self, number: u32) -> Option<usize> {
        self.stored.materials.binary_search_by_key(&number, |material| material.number).ok()
    }

    fn place_of_constituent(&self, number: u32) -> Option<usize> {
        self.stored.constituents.binary_search_by_key(&number, |constituent| constituent.number).ok()
    }
}

impl MaterialSource for Catalogue {
    fn material(&self, id: MaterialId) -> Option<&Material> {
        let MaterialId::Catalogue(number) = id else {
            return None;
        };
        self.materials.get(self.place_of_material(number)?)
    }

    fn constituent(&self, id: ConstituentId) -> Option<&Constituent> {
        let ConstituentId::Catalogue(number) = id else {
            return None;
        };
        self.constituents.get(self.place_of_constituent(number)?)
    }
}

fn listed(cell: &'static str) -> impl Iterator<Item = &'static str> {
    cell.split(';').map(str::trim).filter(|part| !part.is_empty())
}

const fn source_of(source: &StoredSource<'static>) -> Source {
    Source { slug: source.slug, citation: source.citation, as_of: source.as_of, kind: source.kind }
}

fn origin_of(stored: &Stored<'static>, origin: &StoredOrigin<'static>) -> Origin {
    // The build refuses a dangling source, so that there always is one.
    let none = Source { slug: "", citation: "", as_of: "", kind: "" };
    let source = stored.sources.get(usize::from(origin.source)).map_or(none, source_of);
    Origin { source, locator: origin.locator, basis: origin.basis }
}

/// The first density stated for room temperature, of the material as sold or else of its constituent.
pub(crate) fn density_of(stored: &Stored<'_>, material: u32, constituent: Option<u32>) -> Option<Density> {
    let subjects = [Some(Subject::Material(material)), constituent.map(Subject::Constituent)];
    subjects.into_iter().flatten().find_map(|subject| {
        let start = stored.values.partition_point(|value| value.subject < subject);
        let own = stored.values.iter().skip(start).take_while(|value| value.subject == subject);
        let mut densities = own.filter(|value| value.property == Property::Density);
        densities.find_map(|value| Density::new(value.value?.unpack()).ok().filter(|_| value.is_at_room_temperature()))
    })
}

/// Writes a CAS registry number with its hyphens.
fn written_cas(packed: u32) -> String {
    format!("{}-{:02}-{}", packed / 1000, packed / 10 % 100, packed % 10)
}

/// A class as a word to search for: what its name says, and what a maker may say instead.
pub const fn class_words(class: Class) -> &'static str {
    match class {
        Class::Water => "water",
        Class::Humectant => "humectant moisturiser",
        Class::Solvent => "solvent",
        Class::Thickener => "thickener gum gelling stabiliser",
        Class::Oil => "oil",
        Class::Butter => "butter",
        Class::Emollient => "emollient ester",
        Class::Wax => "wax",
        Class::FattyAlcohol => "fatty alcohol",
        Class::FattyAcid => "fatty acid",
        Class::Emulsifier => "emulsifier solubiliser",
        Class::Surfactant => "surfactant cleansing",
        Class::Active => "active",
        Class::Extract => "extract botanical",
        Class::Protein => "protein",
        Class::Preservative => "preservative",
        Class::Chelator => "chelator",
        Class::Antioxidant => "antioxidant",
        Class::PhAdjuster => "ph adjuster acid base buffer",
        Class::Salt => "salt",
        Class::EssentialOil => "essential oil",
        Class::Fragrance => "fragrance",
        Class::Colourant => "colourant pigment",
        Class::Mineral => "mineral clay powder",
        Class::Exfoliant => "exfoliant scrub",
        Class::Other => "other",
    }
}
