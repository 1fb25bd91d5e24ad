//! The catalogue as other crates see it.

use std::collections::BTreeSet;
use stillroom_catalogue::{
    Catalogue, Field, Filter, IndexEntry, Kind, MaterialIndex, MaterialSource, Property, catalogue_bytes,
};
use stillroom_core::{Class, Makeup, MaterialId, PhaseKind};

fn first(query: &str) -> String {
    let catalogue = Catalogue::get();
    let hits = catalogue.search(query, &Filter::default());
    hits.first().and_then(|hit| catalogue.material(hit.id)).map_or(String::new(), |material| material.name.clone())
}

#[test]
fn every_material_resolves_to_constituents() {
    fn resolve(id: MaterialId, depth: usize) {
        assert!(depth < 10, "{id} is nested too deep");
        let catalogue = Catalogue::get();
        let material = catalogue.material(id).unwrap_or_else(|| panic!("{id} is dangling"));
        match &material.makeup {
            Makeup::Simple(constituent) => assert!(catalogue.constituent(*constituent).is_some(), "{id}"),
            Makeup::Composite(parts) => {
                assert!(!parts.is_empty(), "{id} has no parts");
                for part in parts {
                    resolve(part.material, depth + 1);
                }
            }
        }
    }
    let catalogue = Catalogue::get();
    assert!(catalogue.materials().len() >= 60);
    assert!(catalogue_bytes() > 0);
    for material in catalogue.materials() {
        resolve(material.id, 0);
    }
}

/// What heat spoils is added cool, also where it stands in a mixture: common practice. Of waters and oils that carry it
/// the batch is made, and those are warmed gently instead.
#[test]
fn a_composite_that_heat_spoils_goes_to_the_cool_down_phase() {
    fn spoils(id: MaterialId) -> bool {
        let catalogue = Catalogue::get();
        let material = catalogue.material(id).unwrap();
        let says_so = |value: stillroom_catalogue::Value| {
            value.property == Property::HeatSensitive && value.word() == Some("yes")
        };
        catalogue.material_values(id).any(says_so)
            || match &material.makeup {
                Makeup::Simple(constituent) => catalogue.constituent_values(*constituent).any(says_so),
                Makeup::Composite(parts) => parts.iter().any(|part| spoils(part.material)),
            }
    }
    let catalogue = Catalogue::get();
    let composites = catalogue.materials().filter(|material| matches!(material.makeup, Makeup::Composite(_)));
    let (mut held, mut heated) = (0, Vec::new());
    for material in composites.filter(|material| spoils(material.id)) {
        held += 1;
        if material.usual_phase != PhaseKind::CoolDown && !matches!(material.class, Class::Water | Class::Oil) {
            heated.push(material.name.as_str());
        }
    }
    assert!(held > 5 && heated.is_empty(), "{held}, of them heated: {heated:?}");
}

#[test]
fn every_fact_on_every_card_names_its_source() {
    let catalogue = Catalogue::get();
    for material in catalogue.materials() {
        let card = catalogue.card(material.id).expect("a material has a card");
        let origins = card.values.iter().map(|value| value.origin);
        for origin in origins.chain(card.parts.iter().map(|part| part.origin)).chain([card.details.origin]) {
            assert!(!origin.source.citation.is_empty(), "{}", material.name);
        }
        for value in &card.values {
            let stated = value.value.is_some() || value.minimum.is_some() || value.maximum.is_some();
            assert!(stated, "{} {}", material.name, value.property.slug());
            assert_eq!(matches!(value.property.kind(), Kind::Choice(_)), value.word().is_some());
        }
    }
    let slugs: BTreeSet<_> = catalogue.sources().map(|source| source.slug).collect();
    assert_eq!(slugs.len(), catalogue.sources().len());
}

#[test]
fn a_card_holds_what_the_maker_needs() {
    let catalogue = Catalogue::get();
    let id = catalogue.search("sunflower seed oil", &Filter::default())[0].id;
    let card = catalogue.card(id).unwrap();
    assert_eq!(card.constituent.unwrap().inci, "Helianthus Annuus Seed Oil");
    assert_eq!(card.cas, ["8001-21-6"]);
    let density = card.material.density.unwrap();
    assert_eq!(density.value().to_string(), "0.9178");
    assert!(card.values.iter().any(|value| value.property.slug() == "saponification-value"));
    assert!(catalogue.card(MaterialId::Own(1)).is_none());
}

#[test]
fn search_finds_by_any_name_and_forgives_typing() {
    for (query, name) in [
        ("glycerin", "Glycerin, vegetable"),
        ("glyceri", "Glycerin, vegetable"),
        ("GLYCEROL", "Glycerin, vegetable"),
        ("glicerin", "Glycerin, vegetable"),
        ("vitamin b3", "Niacinamide"),
        ("niacinamid", "Niacinamide"),
        ("naicinamide", "Niacinamide"),
        ("56-81-5", "Glycerin, vegetable"),
        ("rosa canina", "Rosehip seed oil"),
        ("rosehp", "Rosehip seed oil"),
        ("sheabutter", "Shea butter"),
        ("phénoxyéthanol", "Phenoxyethanol"),
        ("cocoa", "Cocoa butter"),
        ("xanthane gum", "Xanthan gum"),
        ("beta glucan", "Oat beta-glucan powder"),
        ("wtaer", "Water, distilled"),
    ] {
        assert_eq!(first(query), name, "{query}");
    }
    assert!(Catalogue::get().search("zzzzzz", &Filter::default()).is_empty());
}

#[test]
fn an_empty_query_lists_everything_by_name_and_the_filter_holds() {
    let catalogue = Catalogue::get();
    assert_eq!(catalogue.search(" ", &Filter::default()).len(), catalogue.materials().len());
    let filter = Filter { classes: vec![Class::Preservative], phases: vec![PhaseKind::CoolDown] };
    let hits = catalogue.search("", &filter);
    assert!(hits.len() > 3);
    for hit in hits {
        let material = catalogue.material(hit.id).unwrap();
        assert_eq!((material.class, material.usual_phase), (Class::Preservative, PhaseKind::CoolDown));
    }
}

#[test]
fn the_makers_own_materials_are_searched_along() {
    let own = IndexEntry {
        id: MaterialId::Own(7),
        class: Class::Oil,
        usual_phase: PhaseKind::HeatedOil,
        texts: vec![(Field::Name, "Sunflower oil from the neighbour".into())],
    };
    let index = MaterialIndex::build(Catalogue::get().index_entries().chain([own]));
    let hits = index.search("sunfl neighb", &Filter::default());
    assert_eq!(hits.iter().map(|hit| hit.id).collect::<Vec<_>>(), [MaterialId::Own(7)]);
    assert_eq!(hits[0].field, Field::Name);
}
