//! Packs the tables a page needs at once.

use super::check::{decimal, listed, packed_cas, word};
use super::joined;
use super::row::{COMPOSITES, CONSTITUENTS, MATERIALS};
use super::{CompositeRow, ConstituentRow, Lined, MaterialRow, Problem, PropertyRow, Tables};
use crate::packed::Packed;
use crate::property::{Basis, Kind, Property};
use crate::stored::{
    Figure, Stored, StoredConstituent, StoredMaterial, StoredOrigin, StoredPart, StoredSource, StoredValue, Subject,
};

/// How much of the catalogue a page carries.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Extent {
    /// What the main job needs: names, compositions, densities.
    MainJob,
    /// Every value with its source, too.
    Cards,
}

/// Packs checked tables into the bytes that are compiled in. After [`super::read`] found no problem there is none here.
///
/// # Errors
/// A [`Problem`] naming the row that cannot be packed.
pub fn pack_bytes(tables: &Tables, extent: Extent) -> Result<Vec<u8>, Problem> {
    let mut stored = pack(tables)?;
    if extent == Extent::MainJob {
        keep_for_main_job(&mut stored);
    }
    let packed = Packed::pack(&stored);
    postcard::to_stdvec(&packed).map_err(|error| Problem {
        file: MATERIALS,
        line: 1,
        code: "data.unpackable",
        message: error.to_string(),
    })
}

/// Takes away what only the card of a material shows.
fn keep_for_main_job(stored: &mut Stored<'_>) {
    let nowhere = StoredOrigin { source: 0, locator: "", basis: Basis::Memory };
    stored.sources.clear();
    // Registry numbers and functions are searched for and shown once the whole catalogue is there.
    stored.functions.clear();
    for constituent in &mut stored.constituents {
        constituent.formula = "";
        constituent.cas.clear();
        constituent.functions.clear();
        constituent.origin = nowhere.clone();
    }
    for material in &mut stored.materials {
        // The rest of the names is searched once the whole catalogue is there, a moment later.
        material.other_names = material.other_names.split(';').next().unwrap_or_default();
        material.further_names = "".into();
        material.origin = nowhere.clone();
    }
    for part in &mut stored.parts {
        part.note = "";
        part.origin = nowhere.clone();
    }
    // The one density that is computed with, of each subject.
    let mut last = None;
    stored.values.retain(|value| {
        let first =
            value.property == Property::Density && value.is_at_room_temperature() && last != Some(value.subject);
        if first {
            last = Some(value.subject);
        }
        first
    });
    for value in &mut stored.values {
        (value.minimum, value.maximum, value.note) = (None, None, "");
        // All that are left were read in a room.
        value.conditions = "20 °C";
        value.origin = nowhere.clone();
    }
}

fn pack(tables: &Tables) -> Result<Stored<'_>, Problem> {
    let mut functions: Vec<&str> = tables.functions.iter().flat_map(|row| listed(&row.row.functions)).collect();
    functions.sort_unstable();
    functions.dedup();
    let sources = tables.sources.iter().map(|Lined { row, .. }| StoredSource {
        slug: &row.source,
        citation: &row.citation,
        as_of: &row.as_of,
        kind: &row.kind,
    });
    let mut stored = Stored {
        sources: sources.collect(),
        constituents: tables
            .constituents
            .iter()
            .map(|row| constituent(tables, &functions, row))
            .collect::<Result<_, _>>()?,
        functions,
        materials: tables.materials.iter().map(|row| material(tables, row)).collect::<Result<_, _>>()?,
        parts: tables.composites.iter().map(|row| part(tables, row)).collect::<Result<_, _>>()?,
        values: tables.values().map(|(file, row)| value(tables, file, row)).collect::<Result<_, _>>()?,
    };
    stored.values.extend(joined::values(tables)?);
    // Looked up by number; and in order the numbers grow by one and repeat, which compresses.
    stored.constituents.sort_by_key(|constituent| constituent.number);
    stored.materials.sort_by_key(|material| material.number);
    stored.values.sort_by_key(|value| (value.subject, value.property));
    Ok(stored)
}

fn constituent<'a>(
    tables: &Tables,
    functions: &[&str],
    Lined { line, row }: &'a Lined<ConstituentRow>,
) -> Result<StoredConstituent<'a>, Problem> {
    let used_for = tables.functions.iter().find(|functions| functions.row.constituent == row.number);
    let places = used_for.iter().flat_map(|used_for| listed(&used_for.row.functions));
    Ok(StoredConstituent {
        number: needed(CONSTITUENTS, *line, row.number.parse().ok())?,
        inci: &row.inci,
        cas: row.cas.split(" / ").filter_map(packed_cas).collect(),
        class: needed(CONSTITUENTS, *line, word(&row.class))?,
        formula: &row.formula,
        functions: places.filter_map(|name| functions.binary_search(&name).ok()?.try_into().ok()).collect(),
        origin: origin(tables, CONSTITUENTS, *line, [&row.source, &row.locator, &row.basis])?,
    })
}

fn material<'a>(tables: &Tables, Lined { line, row }: &'a Lined<MaterialRow>) -> Result<StoredMaterial<'a>, Problem> {
    let further_names = tables.further_names.iter().filter(|names| names.row.material == row.number);
    let further_names = further_names.map(|names| names.row.names.as_str());
    Ok(StoredMaterial {
        number: needed(MATERIALS, *line, row.number.parse().ok())?,
        name: &row.name,
        other_names: &row.other_names,
        further_names: further_names.collect::<Vec<_>>().join("; ").into(),
        class: needed(MATERIALS, *line, word(&row.class))?,
        phase: needed(MATERIALS, *line, word(&row.phase))?,
        constituent: row.constituent.parse().ok(),
        origin: origin(tables, MATERIALS, *line, [&row.source, &row.locator, &row.basis])?,
    })
}

fn part<'a>(tables: &Tables, Lined { line, row }: &'a Lined<CompositeRow>) -> Result<StoredPart<'a>, Problem> {
    Ok(StoredPart {
        material: needed(COMPOSITES, *line, row.material.parse().ok())?,
        part: needed(COMPOSITES, *line, row.part.parse().ok())?,
        percent: decimal(&row.percent).and_then(Figure::pack),
        note: &row.note,
        origin: origin(tables, COMPOSITES, *line, [&row.source, &row.locator, &row.basis])?,
    })
}

fn value<'a>(
    tables: &Tables,
    file: &'static str,
    Lined { line, row }: &'a Lined<PropertyRow>,
) -> Result<StoredValue<'a>, Problem> {
    let number = needed(file, *line, row.number.parse().ok())?;
    let property = needed(file, *line, Property::from_slug(&row.property))?;
    let value = match property.kind() {
        Kind::Number { .. } => decimal(&row.value),
        Kind::Choice(words) => words.iter().position(|word| *word == row.value).map(Into::into),
    };
    Ok(StoredValue {
        subject: if row.subject == "material" { Subject::Material(number) } else { Subject::Constituent(number) },
        property,
        value: value.and_then(Figure::pack),
        minimum: decimal(&row.minimum).and_then(Figure::pack),
        maximum: decimal(&row.maximum).and_then(Figure::pack),
        conditions: &row.conditions,
        note: &row.note,
        origin: origin(tables, file, *line, [&row.source, &row.locator, &row.basis])?,
    })
}

fn needed<T>(file: &'static str, line: u64, value: Option<T>) -> Result<T, Problem> {
    let message = || "this row cannot be packed".to_owned();
    value.ok_or_else(|| Problem { file, line, code: "data.unpackable", message: message() })
}

pub fn origin<'a>(
    tables: &Tables,
    file: &'static str,
    line: u64,
    [source, locator, basis]: [&'a String; 3],
) -> Result<StoredOrigin<'a>, Problem> {
    let place = tables.sources.iter().position(|row| row.row.source == *source);
    Ok(StoredOrigin {
        source: needed(file, line, place.and_then(|place| place.try_into().ok()))?,
        locator,
        basis: needed(file, line, Basis::from_slug(basis))?,
    })
}

#[cfg(test)]
mod tests {
    use super::{Extent, pack, pack_bytes};
    use crate::catalogue::density_of;
    use crate::packed::Packed;
    use crate::stored::Stored;
    use std::path::Path;

    #[test]
    fn what_is_packed_unpacks_to_the_same_rows() {
        let (tables, problems) = crate::tables::read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("data"));
        assert!(problems.is_empty());
        let bytes = pack_bytes(&tables, Extent::Cards).unwrap();
        let unpacked = postcard::from_bytes::<Packed<&str>>(&bytes).unwrap().unpack();
        assert_eq!(unpacked, pack(&tables).unwrap());
        assert!(unpacked.materials.len() >= 300);
    }

    #[test]
    fn the_main_job_knows_every_name_composition_and_density_that_the_cards_know() {
        let (tables, _) = crate::tables::read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("data"));
        let [short, long] = [Extent::MainJob, Extent::Cards].map(|extent| pack_bytes(&tables, extent).unwrap());
        let unpack = |bytes| postcard::from_bytes::<Packed<&str>>(bytes).unwrap().unpack();
        let (short, long) = (unpack(&short), unpack(&long));
        let names = |stored: &Stored<'_>| {
            let materials = stored.materials.iter();
            materials.map(|each| (each.number, each.name.to_owned(), each.class, each.constituent)).collect::<Vec<_>>()
        };
        assert_eq!(names(&short), names(&long));
        let parts = |stored: &Stored<'_>| {
            stored.parts.iter().map(|each| (each.material, each.part, each.percent)).collect::<Vec<_>>()
        };
        assert_eq!(parts(&short), parts(&long));
        let densities = |stored: &Stored<'_>| {
            let materials = stored.materials.iter();
            materials.map(|each| density_of(stored, each.number, each.constituent)).collect::<Vec<_>>()
        };
        assert!(densities(&long).iter().flatten().count() > 150);
        assert_eq!(densities(&short), densities(&long));
    }
}
