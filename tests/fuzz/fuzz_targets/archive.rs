//! A zip of a backup with photos: read whole, each photo taken out, and what was understood written again.
#![no_main]

use libfuzzer_sys::fuzz_target;
use std::io::Cursor;
use stillroom_exchange::archive::{ArchiveWriter, Photo, open};
use stillroom_exchange::backup;
use stillroom_fuzz as _;

fuzz_target!(|file: &[u8]| {
    let Ok((read, mut photos)) = open(Box::new(Cursor::new(file.to_vec()))) else { return };
    let names: Vec<String> = photos.names().map(str::to_owned).collect();
    let sound: Vec<(String, Photo)> = names.into_iter().filter_map(|name| photos.read(&name).map(|it| (name, it))).collect();
    let mut writer = ArchiveWriter::new(read.made_at);
    let mut again = writer.records(&backup::write(&read, None));
    for (name, photo) in &sound {
        again.extend(writer.photo(name, photo.taken_at, &photo.bytes));
    }
    again.extend(writer.finish());
    let (records, mut photos) = open(Box::new(Cursor::new(again))).expect("what was written is read");
    assert_eq!(records, read);
    for (name, photo) in sound {
        assert_eq!(photos.read(&name).map(|it| it.bytes), Some(photo.bytes));
    }
});
