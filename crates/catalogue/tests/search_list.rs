//! What hobbyists type: common names, abbreviations, spelling variants, kitchen words, numbers of food additives, German
//! and French names. The right material has to come first for at least 95 of 100.

#![allow(clippy::unwrap_used)]

use std::collections::BTreeMap;
use stillroom_catalogue::{Catalogue, Favour, Filter, MaterialIndex};
use stillroom_core::{MaterialId, MaterialSource, PhaseKind};

const LIST: &str = include_str!("search_list.csv");

#[test]
fn the_right_material_comes_first() {
    let catalogue = Catalogue::get();
    let mut by_kind: BTreeMap<String, (usize, usize)> = BTreeMap::new();
    let mut missed = Vec::new();
    let mut reader = csv::Reader::from_reader(LIST.as_bytes());
    for row in reader.records() {
        let row = row.unwrap();
        let (query, wanted, kind) = (&row[0], &row[1], &row[2]);
        assert!(catalogue.materials().any(|material| material.name == wanted), "{wanted} is no material");
        let hits = catalogue.search(query, &Filter::default());
        let name = |id| catalogue.material(id).map_or("", |material| material.name.as_str());
        let first = hits.first().map_or("nothing", |hit| name(hit.id));
        let (all, found) = by_kind.entry(kind.to_owned()).or_default();
        *all += 1;
        if first == wanted {
            *found += 1;
        } else {
            let place = hits.iter().position(|hit| name(hit.id) == wanted).map_or(0, |place| place + 1);
            missed.push(format!("`{query}` ({kind}) finds `{first}`; `{wanted}` is at place {place}"));
        }
    }
    let (all, found) = by_kind.values().fold((0, 0), |sum, each| (sum.0 + each.0, sum.1 + each.1));
    for (kind, (all, found)) in &by_kind {
        println!("{kind:<14}{found:>4} of {all}");
    }
    let tenths = found * 1000 / all;
    println!("together      {found:>4} of {all}, {}.{} %", tenths / 10, tenths % 10);
    println!("{}", missed.join("\n"));
    assert!(all >= 300 && found * 100 >= all * 95, "{found} of {all}\n{}", missed.join("\n"));
}

#[test]
fn what_the_maker_used_before_comes_before_its_like() {
    let catalogue = Catalogue::get();
    let index = MaterialIndex::build(catalogue.index_entries());
    let names = |favour: &Favour| -> Vec<MaterialId> {
        index.search_favouring("polysorbate", &Filter::default(), favour).iter().map(|hit| hit.id).collect()
    };
    let plain = names(&Favour::default());
    let last = *plain.iter().rfind(|id| catalogue.material(**id).unwrap().name.starts_with("Polysorbate")).unwrap();
    assert_ne!(plain[0], last);
    let favoured = names(&Favour { used: vec![last], phase: None });
    assert_eq!(favoured[0], last);
    assert_eq!(plain.len(), favoured.len(), "a favour adds nothing");
}

#[test]
fn the_phase_of_the_line_decides_between_equals() {
    let index = MaterialIndex::build(Catalogue::get().index_entries());
    let first = |phase| {
        let hits = index.search_favouring("oat", &Filter::default(), &Favour { used: vec![], phase });
        Catalogue::get().material(hits[0].id).unwrap().usual_phase
    };
    for phase in [PhaseKind::HeatedWater, PhaseKind::HeatedOil, PhaseKind::CoolDown] {
        assert_eq!(first(Some(phase)), phase);
    }
}

#[test]
fn a_favour_never_lifts_a_worse_kind_of_match_over_a_better_one() {
    let index = MaterialIndex::build(Catalogue::get().index_entries());
    // Borax is none of ours; what merely holds water must not come before water itself.
    let dispersed: Vec<MaterialId> = Catalogue::get().materials().map(|material| material.id).skip(1).collect();
    let hits = index.search_favouring("water", &Filter::default(), &Favour { used: dispersed, phase: None });
    assert_eq!(hits[0].id, MaterialId::Catalogue(1));
}

/// What a hand reaches for in a phase stands first before anything is typed, and is what a beginning means.
#[test]
fn a_picker_opens_on_what_is_usual_in_the_phase() {
    let index = MaterialIndex::build(Catalogue::get().index_entries());
    let first = |query: &str, phase| {
        let hits = index.search_favouring(query, &Filter::default(), &Favour { used: vec![], phase: Some(phase) });
        Catalogue::get().material(hits[0].id).unwrap().name.clone()
    };
    assert_eq!(first("", PhaseKind::HeatedWater), "Water, distilled");
    assert_eq!(first("", PhaseKind::HeatedOil), "Sunflower seed oil");
    assert_eq!(first("", PhaseKind::CoolDown), "Tocopherol, mixed");
    assert_eq!(first("glyc", PhaseKind::HeatedWater), "Glycerin, vegetable");
    // Nothing is lost by it: every material is there, once.
    let all =
        index.search_favouring("", &Filter::default(), &Favour { used: vec![], phase: Some(PhaseKind::CoolDown) });
    let mut ids: Vec<MaterialId> = all.iter().map(|hit| hit.id).collect();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!((ids.len(), all.len()), (index.len(), index.len()));
}
