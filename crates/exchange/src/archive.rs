//! A backup with photos: a zip that holds the backup as `backup.json` and every photo as `photos/NAME.jpg`.
//!
//! Nothing in it is packed, since a photo is packed already; so a maker can take a photo out with any program. One that
//! was packed anew by another program is read all the same. Times in it are universal time, to two seconds.

use crate::backup::{self, Backup, BackupError, LARGEST_BACKUP, LARGEST_PHOTO, MOST_PHOTOS};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::fmt;
use std::io::{self, Cursor, Read, Seek, SeekFrom, Write};
use std::rc::Rc;
use stillroom_core::day::Day;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, ZipArchive, ZipWriter};

/// Longest name of a photo, in bytes.
pub const LONGEST_PHOTO_NAME: usize = 80;
/// Largest file read, in bytes: what a browser can hold in memory at once.
pub const LARGEST_ARCHIVE: u64 = 1_000_000_000;

/// By how much records can be packed at most: some fifteenfold is usual.
const MOST_PACKED: u64 = 100;

/// How every zip begins that holds something.
const ZIP_BEGINS: &[u8] = b"PK\x03\x04";
/// How every photo begins (ISO/IEC 10918-1: start of image, then a marker).
const JPEG_BEGINS: &[u8] = &[0xff, 0xd8, 0xff];
const RECORDS: &str = "backup.json";
const PHOTOS: &str = "photos/";
const ENDING: &str = ".jpg";
const SECOND_MS: u64 = 1000;
const DAY_S: u64 = 24 * 60 * 60;

/// A file that can be read from anywhere in it.
pub trait Source: Read + Seek {}
impl<T: Read + Seek> Source for T {}

/// A photo with what is kept of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Photo {
    /// When it was taken, in milliseconds since 1970.
    pub taken_at: u64,
    /// The JPEG file.
    pub bytes: Vec<u8>,
}

/// The photos of a backup file, read one at a time.
#[derive(Default)]
pub struct Photos {
    zip: Option<ZipArchive<Box<dyn Source>>>,
    /// Where each stands in the zip.
    places: BTreeMap<String, usize>,
}

impl fmt::Debug for Photos {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_tuple("Photos").field(&self.places).finish()
    }
}

impl Photos {
    /// The names of all photos in the file.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.places.keys().map(String::as_str)
    }

    /// A photo. `None` if there is none of that name, or if it is damaged.
    pub fn read(&mut self, name: &str) -> Option<Photo> {
        let mut file = self.zip.as_mut()?.by_index(*self.places.get(name)?).ok()?;
        let taken_at = file.last_modified().and_then(moment).unwrap_or(0);
        let size = file.size();
        let bytes = read_at_most(&mut file, size).filter(|bytes| bytes.starts_with(JPEG_BEGINS))?;
        Some(Photo { taken_at, bytes })
    }
}

/// Reads a backup file, with photos or without.
///
/// # Errors
/// Those of [`backup::read`], and `backup.zip-damaged`.
pub fn open(mut source: Box<dyn Source>) -> Result<(Backup, Photos), BackupError> {
    let damaged = |_: io::Error| BackupError::ZipDamaged;
    let length = source.seek(SeekFrom::End(0)).map_err(damaged)?;
    if length > LARGEST_ARCHIVE {
        return Err(BackupError::TooLarge);
    }
    source.rewind().map_err(damaged)?;
    let mut begins = Vec::new();
    (&mut source).take(ZIP_BEGINS.len() as u64).read_to_end(&mut begins).map_err(damaged)?;
    source.rewind().map_err(damaged)?;
    if begins != ZIP_BEGINS {
        if length > LARGEST_BACKUP as u64 {
            return Err(BackupError::TooLarge);
        }
        let bytes = read_at_most(&mut source, length).ok_or(BackupError::ZipDamaged)?;
        return Ok((backup::read(&bytes)?, Photos::default()));
    }
    let mut zip = ZipArchive::new(source).map_err(|_| BackupError::ZipDamaged)?;
    let places = places(&zip, length)?;
    // A photo that shares its bytes with another is how a small file becomes a large one.
    if zip.has_overlapping_files().map_err(|_| BackupError::ZipDamaged)? {
        return Err(BackupError::ZipDamaged);
    }
    let records = {
        let mut file = zip.by_name(RECORDS).map_err(|_| BackupError::NotABackup)?;
        let size = file.size();
        if size > LARGEST_BACKUP as u64 || size / MOST_PACKED > file.compressed_size() {
            return Err(BackupError::TooLarge);
        }
        read_at_most(&mut file, size).ok_or(BackupError::ZipDamaged)?
    };
    Ok((backup::read(&records)?, Photos { zip: Some(zip), places }))
}

/// The photos among the files of a zip. What else lies in it is passed over.
fn places(zip: &ZipArchive<Box<dyn Source>>, length: u64) -> Result<BTreeMap<String, usize>, BackupError> {
    let mut places = BTreeMap::new();
    let mut together = 0_u64;
    for at in 0..zip.len() {
        let file = zip.by_index_data(at).map_err(|_| BackupError::ZipDamaged)?;
        let Ok(name) = file.name() else { continue };
        let Some(name) = name.strip_prefix(PHOTOS).and_then(|name| name.strip_suffix(ENDING)) else { continue };
        if !is_photo_name(name) || file.size() > LARGEST_PHOTO {
            continue;
        }
        together = together.saturating_add(file.size());
        places.entry(name.to_owned()).or_insert(at);
    }
    // Packing makes a JPEG smaller by a few percent at most.
    if places.len() > MOST_PHOTOS || together > length.saturating_mul(2) {
        return Err(BackupError::TooLarge);
    }
    Ok(places)
}

/// Whether a photo can have this name: letters, digits and hyphens of ASCII.
#[must_use]
pub fn is_photo_name(name: &str) -> bool {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || byte == b'-';
    !name.is_empty() && name.len() <= LONGEST_PHOTO_NAME && name.bytes().all(plain)
}

/// Everything that is left to read; `None` if that is more than `most` or cannot be read.
fn read_at_most(source: &mut impl Read, most: u64) -> Option<Vec<u8>> {
    // Room for all of it at once: growing would take twice as much for a moment.
    let mut bytes = Vec::with_capacity(usize::try_from(most).ok()?.checked_add(1)?);
    source.take(most + 1).read_to_end(&mut bytes).ok()?;
    (bytes.len() as u64 <= most).then_some(bytes)
}

/// Writes a backup with photos, handing out the file piece by piece, so that no more than one photo is held at a time.
///
/// ```
/// use stillroom_exchange::archive::{ArchiveWriter, open};
/// use stillroom_exchange::backup::Backup;
/// let photo = [0xff, 0xd8, 0xff, 0xe0];
/// let mut writer = ArchiveWriter::new(1_764_000_000_000);
/// let mut file = writer.records(&stillroom_exchange::backup::write(&Backup::default(), None));
/// file.extend(writer.photo("ba7c-1", 1_764_000_000_000, &photo));
/// file.extend(writer.finish());
/// let (_, mut photos) = open(Box::new(std::io::Cursor::new(file)))?;
/// assert_eq!(photos.read("ba7c-1").map(|photo| photo.bytes), Some(photo.to_vec()));
/// # Ok::<(), stillroom_exchange::backup::BackupError>(())
/// ```
#[derive(Debug)]
pub struct ArchiveWriter {
    zip: ZipWriter<Pieces>,
    pieces: Pieces,
    made_at: u64,
}

impl ArchiveWriter {
    /// Begins a file made at a moment, in milliseconds since 1970.
    #[must_use]
    pub fn new(made_at: u64) -> Self {
        let pieces = Pieces::default();
        Self { zip: ZipWriter::new(pieces.clone()), pieces, made_at }
    }

    /// Adds the records, as [`backup::write`] wrote them. Returns the next piece of the file.
    pub fn records(&mut self, records: &str) -> Vec<u8> {
        self.add(RECORDS, self.made_at, records.as_bytes())
    }

    /// Adds a photo. Returns the next piece of the file. One that could not be read again (a name or a form no photo has,
    /// or that name a second time) is left out.
    pub fn photo(&mut self, name: &str, taken_at: u64, bytes: &[u8]) -> Vec<u8> {
        let sound = is_photo_name(name) && bytes.starts_with(JPEG_BEGINS) && bytes.len() as u64 <= LARGEST_PHOTO;
        if !sound {
            return Vec::new();
        }
        self.add(&format!("{PHOTOS}{name}{ENDING}"), taken_at, bytes)
    }

    fn add(&mut self, name: &str, at: u64, bytes: &[u8]) -> Vec<u8> {
        let before = self.pieces.end();
        let options = SimpleFileOptions::default()
            .compression_method(CompressionMethod::Stored)
            .last_modified_time(time_of(at).unwrap_or_default());
        // Writing to memory fails for a name that is there already, and for nothing else.
        if self.zip.start_file(name, options).is_ok() {
            let _ = self.zip.write_all(bytes);
        }
        // The head of a file is filled in when the next one starts; what lies before it is final.
        self.pieces.take_until(before)
    }

    /// The last piece of the file.
    #[must_use]
    pub fn finish(self) -> Vec<u8> {
        let end = self.zip.finish().map_or(0, |pieces| pieces.end());
        self.pieces.take_until(end)
    }
}

/// What was written and not handed out yet. Clones share it.
#[derive(Debug, Clone, Default)]
struct Pieces(Rc<RefCell<Held>>);

#[derive(Debug, Default)]
struct Held {
    /// Bytes handed out already.
    gone: u64,
    rest: Cursor<Vec<u8>>,
}

impl Pieces {
    fn end(&self) -> u64 {
        let held = self.0.borrow();
        held.gone + held.rest.get_ref().len() as u64
    }

    fn take_until(&self, end: u64) -> Vec<u8> {
        let mut held = self.0.borrow_mut();
        let held = &mut *held;
        let position = held.rest.position();
        let count = usize::try_from(end.saturating_sub(held.gone)).unwrap_or(usize::MAX);
        let count = count.min(held.rest.get_ref().len());
        let taken: Vec<u8> = held.rest.get_mut().drain(..count).collect();
        held.gone += count as u64;
        held.rest.set_position(position.saturating_sub(count as u64));
        taken
    }
}

impl Write for Pieces {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0.borrow_mut().rest.write(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

impl Seek for Pieces {
    fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
        let mut held = self.0.borrow_mut();
        let gone = held.gone;
        let to = match to {
            SeekFrom::Start(at) => {
                let at = at.checked_sub(gone);
                SeekFrom::Start(at.ok_or_else(|| io::Error::from(io::ErrorKind::InvalidInput))?)
            }
            other => other,
        };
        Ok(gone + held.rest.seek(to)?)
    }
}

/// A moment as a zip writes it; `None` before 1980.
fn time_of(milliseconds: u64) -> Option<DateTime> {
    let day = Day::from_moment(milliseconds, 0)?;
    let seconds = milliseconds / SECOND_MS % DAY_S;
    let part = |number: u64| u8::try_from(number).ok();
    DateTime::from_date_and_time(
        day.year(),
        day.month(),
        day.of_month(),
        part(seconds / 3600)?,
        part(seconds / 60 % 60)?,
        part(seconds % 60)?,
    )
    .ok()
}

fn moment(time: DateTime) -> Option<u64> {
    let day = Day::new(time.year(), time.month(), time.day()).ok()?;
    let seconds = u64::from(time.hour()) * 3600 + u64::from(time.minute()) * 60 + u64::from(time.second());
    Some(day.begins()?.saturating_add(seconds * SECOND_MS))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const MADE: u64 = 1_764_000_000_000;

    fn records() -> Backup {
        let formula = include_str!("../golden/formula-1.json").trim_end();
        Backup { made_at: MADE, records: vec![("stillroom.formula.000000000000feed".to_owned(), formula.to_owned())] }
    }

    fn jpeg(filling: &[u8]) -> Vec<u8> {
        [JPEG_BEGINS, filling].concat()
    }

    fn written(photos: &[(&str, u64, Vec<u8>)]) -> Vec<u8> {
        let mut writer = ArchiveWriter::new(MADE);
        let mut file = writer.records(&backup::write(&records(), None));
        for (name, taken_at, bytes) in photos {
            file.extend(writer.photo(name, *taken_at, bytes));
        }
        file.extend(writer.finish());
        file
    }

    fn opened(file: Vec<u8>) -> Result<(Backup, Photos), BackupError> {
        open(Box::new(Cursor::new(file)))
    }

    /// A zip as another program might write it.
    fn zip_of(method: CompressionMethod, files: &[(&str, &[u8])]) -> Vec<u8> {
        let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
        for (name, bytes) in files {
            zip.start_file(*name, SimpleFileOptions::default().compression_method(method)).unwrap();
            zip.write_all(bytes).unwrap();
        }
        zip.finish().unwrap().into_inner()
    }

    fn code(file: Vec<u8>) -> &'static str {
        opened(file).unwrap_err().code()
    }

    #[test]
    fn a_plain_backup_is_read_as_one_without_photos() {
        let (backup, mut photos) = opened(backup::write(&records(), None).into_bytes()).unwrap();
        assert_eq!((backup, photos.names().count(), photos.read("a")), (records(), 0, None));
    }

    #[test]
    fn a_photo_comes_back_with_its_time_to_two_seconds() {
        let taken = MADE + 3 * 3_600_000 + 61_999;
        let (backup, mut photos) = opened(written(&[("ba7c-1", taken, jpeg(b"rest"))])).unwrap();
        assert_eq!(backup, records());
        let photo = photos.read("ba7c-1").unwrap();
        assert_eq!(photo.bytes, jpeg(b"rest"));
        assert!(taken - photo.taken_at < 2 * SECOND_MS, "{}", photo.taken_at);
        assert_eq!(photos.read("ba7c-2"), None);
    }

    #[test]
    fn what_is_handed_out_at_once_is_one_photo_at_most() {
        let mut writer = ArchiveWriter::new(MADE);
        let _ = writer.records("{}");
        let photo = jpeg(&[7; 1000]);
        let largest = (0..50).map(|number| writer.photo(&format!("p{number}"), MADE, &photo).len()).max();
        assert!(largest.unwrap() < 1200, "{largest:?}");
    }

    #[test]
    fn what_no_reader_would_take_is_not_written() {
        let photos = [
            ("../../evil", MADE, jpeg(b"")),
            ("page", MADE, b"<svg onload=alert(1)>".to_vec()),
            ("twice", MADE, jpeg(b"first")),
            ("twice", MADE, jpeg(b"second")),
        ];
        let (_, mut photos) = opened(written(&photos)).unwrap();
        assert_eq!(photos.names().collect::<Vec<_>>(), ["twice"]);
        assert_eq!(photos.read("twice").unwrap().bytes, jpeg(b"first"));
    }

    #[test]
    fn a_zip_that_was_packed_anew_is_read() {
        let text = backup::write(&records(), None);
        let photo = jpeg(&[5; 4000]);
        let files: [(&str, &[u8]); 3] =
            [("photos/a.jpg", &photo), ("backup.json", text.as_bytes()), ("__MACOSX/x", b"")];
        // Packed, the photo is a hundred times as large as the file: such a file is refused as a bomb.
        assert_eq!(code(zip_of(CompressionMethod::Deflated, &files[..2])), "backup.too-large");
        let grain: Vec<u8> = (0..4000_u32).map(|at| (at.wrapping_mul(2_654_435_761) >> 24) as u8).collect();
        let photo = jpeg(&grain);
        let (backup, mut photos) =
            opened(zip_of(CompressionMethod::Deflated, &[("photos/a.jpg", &photo), files[1], files[2]])).unwrap();
        assert_eq!((backup, photos.read("a").map(|photo| photo.bytes)), (records(), Some(photo)));
    }

    #[test]
    fn a_zip_of_something_else_is_told_from_a_damaged_one() {
        assert_eq!(code(zip_of(CompressionMethod::Stored, &[("letter.txt", b"hello")])), "backup.not-one");
        assert_eq!(code(zip_of(CompressionMethod::Stored, &[("backup.json", b"{}")])), "backup.not-one");
        let whole = written(&[("a", MADE, jpeg(&[1; 500]))]);
        assert_eq!(code(whole[..whole.len() - 30].to_vec()), "backup.zip-damaged");
        assert_eq!(code(whole[..100].to_vec()), "backup.zip-damaged");
    }

    /// One flipped bit in a photo loses that photo and nothing else.
    #[test]
    fn a_damaged_photo_takes_no_other_along() {
        let mut file = written(&[("a", MADE, jpeg(&[0xa5; 500])), ("b", MADE, jpeg(&[0x5a; 500]))]);
        let at = file.windows(100).position(|window| window == [0xa5; 100]).unwrap();
        file[at] ^= 1;
        let (backup, mut photos) = opened(file).unwrap();
        assert_eq!((backup, photos.read("a")), (records(), None));
        assert_eq!(photos.read("b").unwrap().bytes, jpeg(&[0x5a; 500]));
    }

    #[test]
    fn bombs_are_refused() {
        // One large file of nothing, packed a thousandfold.
        let nothing = vec![b' '; LARGEST_BACKUP + 1];
        let bomb = zip_of(CompressionMethod::Deflated, &[("backup.json", &nothing)]);
        assert!(bomb.len() < 100_000);
        assert_eq!(code(bomb), "backup.too-large");
        // A head that says it is small: no more is read than it says.
        let mut lying = zip_of(CompressionMethod::Deflated, &[("backup.json", &nothing)]);
        let size = u32::try_from(nothing.len()).unwrap().to_le_bytes();
        while let Some(at) = lying.windows(4).position(|window| window == size) {
            lying[at..at + 4].copy_from_slice(&10_u32.to_le_bytes());
        }
        assert_eq!(code(lying), "backup.zip-damaged");
        // Many names for the same bytes.
        let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
        let stored = SimpleFileOptions::default().compression_method(CompressionMethod::Stored);
        zip.start_file("backup.json", stored).unwrap();
        zip.write_all(backup::write(&records(), None).as_bytes()).unwrap();
        zip.start_file("photos/a.jpg", stored).unwrap();
        zip.write_all(&jpeg(&[3; 100])).unwrap();
        for number in 0..5 {
            zip.shallow_copy_file("photos/a.jpg", &format!("photos/b{number}.jpg")).unwrap();
        }
        assert_eq!(code(zip.finish().unwrap().into_inner()), "backup.zip-damaged");
    }

    proptest! {
        #[test]
        fn photos_come_back_as_they_were_put_in(
            photos in prop::collection::btree_map("[a-z0-9-]{1,20}", prop::collection::vec(any::<u8>(), 0..2000), 0..8),
            taken in 315_532_800_000..4_000_000_000_000_u64,
        ) {
            let list: Vec<_> = photos.iter().map(|(name, rest)| (name.as_str(), taken, jpeg(rest))).collect();
            let (backup, mut read) = opened(written(&list)).unwrap();
            prop_assert_eq!(backup, records());
            prop_assert_eq!(read.names().count(), photos.len());
            for (name, taken, bytes) in &list {
                let photo = read.read(name).unwrap();
                prop_assert_eq!(&photo.bytes, bytes);
                prop_assert!(taken - photo.taken_at < 2 * SECOND_MS);
            }
        }

        #[test]
        fn whatever_stands_in_a_zip_is_read_or_refused(at in 0..1500_usize, byte: u8, end in 0..1500_usize) {
            let mut file = written(&[("a", MADE, jpeg(&[9; 300])), ("b", MADE, jpeg(&[8; 300]))]);
            let at = at % file.len();
            file[at] = byte;
            file.truncate(file.len() - end % file.len() / 3);
            if let Ok((_, mut photos)) = opened(file) {
                let names: Vec<String> = photos.names().map(str::to_owned).collect();
                for name in names {
                    let _ = photos.read(&name);
                }
            }
        }
    }
}
