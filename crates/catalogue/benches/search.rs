//! Decoding the catalogue, building its index, and each keystroke of typical searches.

use std::hint::black_box;
use std::time::{Duration, Instant};
use stillroom_catalogue::{Catalogue, Filter, MaterialIndex};

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort();
    times.get(times.len() / 2).copied().unwrap_or_default()
}

fn main() {
    let start = Instant::now();
    let catalogue = Catalogue::get();
    println!("{:<44}{:>12.3?}", "decode the catalogue, once", start.elapsed());
    let builds = (0..20).map(|_| {
        let start = Instant::now();
        black_box(MaterialIndex::build(catalogue.index_entries()));
        start.elapsed()
    });
    println!("{:<44}{:>12.3?}", "build the index, median of 20", median(builds.collect()));
    let index = MaterialIndex::build(catalogue.index_entries());
    for query in
        ["g", "gl", "glycerin", "glicerin", "sodium hyaluronat", "phenoxyethanl ethylhexylglycrin", "56-81-5", "oil"]
    {
        let times = (0..200).map(|_| {
            let start = Instant::now();
            black_box(index.search(black_box(query), &Filter::default()));
            start.elapsed()
        });
        println!("search {query:<37}{:>12.3?}", median(times.collect()));
    }
}
