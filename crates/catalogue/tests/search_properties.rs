//! Laws of the search, whatever is typed.

use proptest::prelude::*;
use stillroom_catalogue::{Catalogue, Field, Filter, IndexEntry, MaterialIndex, MaterialSource};
use stillroom_core::{Class, MaterialId, PhaseKind};

#[test]
fn a_digit_and_a_hyphen_begin_a_name() {
    let found = Catalogue::get().search("3-", &Filter::default());
    let catalogue = Catalogue::get();
    let names: Vec<_> = found.iter().filter_map(|hit| catalogue.material(hit.id)).map(|hit| &hit.name).collect();
    assert!(names.iter().any(|name| name.starts_with("3-O-Ethyl")), "{names:?}");
}

proptest! {
    #[test]
    fn no_text_panics(query in "\\PC{0,60}") {
        let catalogue = Catalogue::get();
        for hit in catalogue.search(&query, &Filter::default()) {
            prop_assert!(catalogue.material(hit.id).is_some());
        }
    }

    #[test]
    fn no_name_of_an_own_material_panics(name in "(?s).{0,40}", query in "(?s).{0,20}") {
        let texts = vec![(Field::Name, name.into())];
        let own = IndexEntry { id: MaterialId::Own(1), class: Class::Other, usual_phase: PhaseKind::CoolDown, texts };
        let index = MaterialIndex::build([own]);
        prop_assert!(index.search(&query, &Filter::default()).len() <= 1);
    }

    #[test]
    fn every_start_of_a_name_finds_its_material(place in 0_usize..100_000, letters in 1_usize..40) {
        let catalogue = Catalogue::get();
        let materials: Vec<_> = catalogue.materials().collect();
        let material = materials[place % materials.len()];
        let start: String = material.name.chars().take(letters).collect();
        let hits = catalogue.search(&start, &Filter::default());
        prop_assert!(hits.iter().any(|hit| hit.id == material.id), "{start}");
    }

    #[test]
    fn one_wrong_letter_in_a_long_name_is_forgiven(place in 0_usize..100_000, at in 0_usize..40) {
        let catalogue = Catalogue::get();
        let long: Vec<_> = catalogue
            .materials()
            .filter(|material| material.name.len() >= 6 && material.name.chars().all(|c| c.is_ascii_alphabetic()))
            .collect();
        let material = long[place % long.len()];
        let mut letters: Vec<char> = material.name.chars().collect();
        let at = at % letters.len();
        letters[at] = 'q';
        let typed: String = letters.iter().collect();
        let hits = catalogue.search(&typed, &Filter::default());
        prop_assert!(hits.iter().any(|hit| hit.id == material.id), "{typed}");
    }
}
