//! A backup file as a maker picks it, through to putting it on the device.
#![no_main]

use libfuzzer_sys::fuzz_target;
use std::io::Cursor;
use stillroom_core::number::DecimalMark;
use stillroom_exchange::backup;
use stillroom_fuzz as _;
use stillroom_web::rooms::share::command::ShareCommand;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom};
use stillroom_web::session::Session;

fuzz_target!(|input: &[u8]| {
    let Some((&form, file)) = input.split_first() else { return };
    if let Ok(read) = backup::read(file) {
        assert_eq!(backup::read(backup::write(&read, None).as_bytes()), Ok(read));
    }
    // What a page does with it costs more: every sixty-fourth input goes through.
    if form % 64 == 63 {
        let mut session = Session::open(Box::new(MemoryStore::default()), Box::new(QuietRoom::at(1_764_000_000_000, 0)), DecimalMark::Point);
        let _ = session.read_backup(Box::new(Cursor::new(file.to_vec())), &[]);
        let differing = if form % 128 == 63 { "both" } else { "theirs" };
        session.apply(ShareCommand::RestoreBackup { differing: differing.to_owned() });
        session.keep();
        let _ = session.show_everything();
        let _ = session.write_backup("https://maker.example/");
    }
});
