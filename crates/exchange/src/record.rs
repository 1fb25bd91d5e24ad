//! Records as they are kept on a device: JSON with a schema version.
//!
//! A record of a newer schema is reported, never guessed at and never overwritten by what could not read it.

use crate::json::{Damage, Document, Value, Writer};
use stillroom_core::batch_plan::{BatchPlan, Containers, Stock};
use stillroom_core::{
    Amount, Constituent, ConstituentId, Formula, FormulaId, Line, LineId, Makeup, Material, Part, Phase, PhaseId,
    ProductKind, Purpose, SetAside,
};

/// Schema version written today.
pub const SCHEMA: u32 = 1;

/// Longest record read, in bytes. A formula of a hundred lines with notes takes about 20 000.
pub const LONGEST_RECORD: usize = 1_000_000;

/// A formula on the shelf.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct FormulaRecord {
    /// Names it on this device.
    pub id: FormulaId,
    /// Counts the times it was written, so that two open pages notice each other.
    pub revision: u64,
    /// When it was last changed, in milliseconds since 1970.
    pub changed_at: u64,
    /// The formula.
    pub formula: Formula,
}

/// A material the maker described.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct MaterialRecord {
    /// Counts the times it was written.
    pub revision: u64,
    /// When it was last changed, in milliseconds since 1970.
    pub changed_at: u64,
    /// The material.
    pub own: OwnMaterial,
}

/// A material of the maker's own, with the substance it is where the catalogue has none.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct OwnMaterial {
    /// The material.
    pub material: Material,
    /// The constituent of a simple material that the catalogue does not know.
    pub constituent: Option<Constituent>,
    /// What the maker notes about it.
    #[cfg_attr(test, schemars(default))]
    pub note: String,
}

/// Why a record cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum RecordError {
    /// It is longer than any record this version writes.
    #[error("a record of {length} bytes")]
    TooLong {
        /// Its length.
        length: usize,
    },
    /// It is no record, or a damaged one.
    #[error("damaged at {place}")]
    Damaged {
        /// Where reading stopped.
        place: Damage,
    },
    /// A later version of Stillroom wrote it.
    #[error("schema {schema} is newer than {SCHEMA}")]
    Newer {
        /// Its schema.
        schema: u32,
    },
}

impl From<Damage> for RecordError {
    fn from(place: Damage) -> Self {
        Self::Damaged { place }
    }
}

impl RecordError {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::TooLong { .. } => "record.too-long",
            Self::Damaged { .. } => "record.damaged",
            Self::Newer { .. } => "record.newer",
        }
    }
}

/// What a record keeps as a JSON object.
pub trait Kept: Sized {
    /// Reads it.
    ///
    /// # Errors
    /// The place of what is missing or not understood.
    fn read(value: &Value<'_>) -> Result<Self, Damage>;

    /// Writes its fields.
    fn write(&self, writer: &mut Writer);
}

/// Writes a record.
#[must_use]
pub fn write(body: &impl Kept) -> String {
    let mut writer = Writer::default();
    writer.object(|writer| {
        writer.field("schema").whole(u64::from(SCHEMA));
        body.write(writer);
    });
    writer.finish()
}

/// Reads a record.
///
/// # Errors
/// `record.too-long`, `record.damaged`, `record.newer`.
pub fn read<T: Kept>(text: &str) -> Result<T, RecordError> {
    Ok(T::read(&parse(text)?.value())?)
}

/// Reads how often a record was written, whatever it holds.
///
/// # Errors
/// `record.too-long`, `record.damaged`, `record.newer`.
pub fn read_revision(text: &str) -> Result<u64, RecordError> {
    Ok(parse(text)?.value().need("revision")?.whole()?)
}

fn parse(text: &str) -> Result<Document, RecordError> {
    if text.len() > LONGEST_RECORD {
        return Err(RecordError::TooLong { length: text.len() });
    }
    let document = Document::read(text)?;
    // The schema first: a newer record may hold what this version cannot read, and that is not damage.
    let schema = document.value().need("schema")?.whole()?;
    if schema > SCHEMA { Err(RecordError::Newer { schema }) } else { Ok(document) }
}

/// Reads every item of a list.
fn read_list<T>(value: &Value<'_>, read: fn(&Value<'_>) -> Result<T, Damage>) -> Result<Vec<T>, Damage> {
    value.list()?.map(|each| read(&each)).collect()
}

fn write_list<T: Kept>(writer: &mut Writer, items: &[T]) {
    writer.list(items, |writer, item| writer.object(|writer| item.write(writer)));
}

impl Kept for FormulaRecord {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        Ok(Self {
            id: value.need("id")?.worded()?,
            revision: value.need("revision")?.whole()?,
            changed_at: value.need("changed_at")?.whole()?,
            formula: Formula::read(&value.need("formula")?)?,
        })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("id").worded(&self.id);
        writer.field("revision").whole(self.revision);
        writer.field("changed_at").whole(self.changed_at);
        writer.field("formula").object(|writer| self.formula.write(writer));
    }
}

impl Kept for MaterialRecord {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        let own = value.need("own")?;
        Ok(Self {
            revision: value.need("revision")?.whole()?,
            changed_at: value.need("changed_at")?.whole()?,
            own: OwnMaterial {
                material: Material::read(&own.need("material")?)?,
                constituent: own.field("constituent")?.map(|value| Constituent::read(&value)).transpose()?,
                note: own.text_field("note")?,
            },
        })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("revision").whole(self.revision);
        writer.field("changed_at").whole(self.changed_at);
        writer.field("own").object(|writer| {
            writer.field("material").object(|writer| self.own.material.write(writer));
            if let Some(constituent) = &self.own.constituent {
                writer.field("constituent").object(|writer| constituent.write(writer));
            }
            writer.text_field("note", &self.own.note);
        });
    }
}

impl Kept for Formula {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        let kind: Option<ProductKind> = value.worded_field("kind")?;
        let purpose: Option<Purpose> = value.worded_field("purpose")?;
        Ok(Self {
            name: value.need("name")?.text()?.to_owned(),
            // The kind says how it is used, whatever else is written.
            purpose: kind.map(ProductKind::purpose).or(purpose).unwrap_or_default(),
            kind,
            target_ph: value.worded_field("target_ph")?,
            measured_ph: value.worded_field("measured_ph")?,
            written_in: value.worded_field("written_in")?.unwrap_or_default(),
            phases: read_list(&value.need("phases")?, Phase::read)?,
            steps: match value.field("steps")? {
                Some(steps) => read_list(&steps, |step| step.text().map(str::to_owned))?,
                None => Vec::new(),
            },
            notes: value.text_field("notes")?,
            label: value.text_field("label")?,
            costs: value.text_field("costs")?,
            tags: value.text_field("tags")?,
            batch: value.field("batch")?.map(|value| BatchPlan::read(&value)).transpose()?.unwrap_or_default(),
            set_aside: match value.field("set_aside")? {
                Some(set_aside) => read_list(&set_aside, SetAside::read)?,
                None => Vec::new(),
            },
            next_number: value.field("next_number")?.map_or(Ok(0), Value::whole)?,
        })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("name").text(&self.name);
        writer.field("purpose").worded(&self.purpose);
        writer.worded_field("kind", self.kind.as_ref());
        writer.worded_field("target_ph", self.target_ph.as_ref());
        writer.worded_field("measured_ph", self.measured_ph.as_ref());
        writer.field("written_in").worded(&self.written_in);
        write_list(writer.field("phases"), &self.phases);
        if !self.steps.is_empty() {
            writer.field("steps").list(&self.steps, |writer, step| writer.text(step));
        }
        writer.text_field("notes", &self.notes);
        writer.text_field("label", &self.label);
        writer.text_field("costs", &self.costs);
        writer.text_field("tags", &self.tags);
        writer.field("batch").object(|writer| self.batch.write(writer));
        if !self.set_aside.is_empty() {
            write_list(writer.field("set_aside"), &self.set_aside);
        }
        writer.field("next_number").whole(u64::from(self.next_number));
    }
}

impl Kept for Phase {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        Ok(Self {
            id: PhaseId(value.need("id")?.whole()?),
            name: value.need("name")?.text()?.to_owned(),
            kind: value.need("kind")?.worded()?,
            temperature: value.worded_field("temperature")?,
            lines: read_list(&value.need("lines")?, Line::read)?,
        })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("id").whole(u64::from(self.id.0));
        writer.field("name").text(&self.name);
        writer.field("kind").worded(&self.kind);
        writer.worded_field("temperature", self.temperature.as_ref());
        write_list(writer.field("lines"), &self.lines);
    }
}

impl Kept for Line {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        Ok(Self {
            id: LineId(value.need("id")?.whole()?),
            material: value.need("material")?.worded()?,
            amount: read_amount(&value.need("amount")?)?,
            note: value.text_field("note")?,
            substitution: value.text_field("substitution")?,
            suspended: value.field("suspended")?.map_or(Ok(false), Value::flag)?,
        })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("id").whole(u64::from(self.id.0));
        writer.field("material").worded(&self.material);
        write_amount(writer, self.amount);
        writer.text_field("note", &self.note);
        writer.text_field("substitution", &self.substitution);
        if self.suspended {
            writer.field("suspended").flag(true);
        }
    }
}

impl Kept for SetAside {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        Ok(Self {
            code: value.need("code")?.text()?.to_owned(),
            subject: value.need("subject")?.text()?.to_owned(),
            reason: value.text_field("reason")?,
        })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("code").text(&self.code);
        writer.field("subject").text(&self.subject);
        writer.text_field("reason", &self.reason);
    }
}

fn read_amount(&value: &Value<'_>) -> Result<Amount, Damage> {
    if value.text() == Ok("quantum-satis") {
        return Ok(Amount::QuantumSatis);
    }
    match value.choice()? {
        ("percent", percent) => percent.worded().map(Amount::Percent),
        ("grams", mass) => mass.worded().map(Amount::Grams),
        (_, unknown) => unknown.damaged(),
    }
}

fn write_amount(writer: &mut Writer, amount: Amount) {
    writer.field("amount");
    match amount {
        Amount::QuantumSatis => writer.text("quantum-satis"),
        Amount::Percent(percent) => writer.object(|writer| writer.field("percent").worded(&percent)),
        Amount::Grams(mass) => writer.object(|writer| writer.field("grams").worded(&mass)),
    }
}

impl Kept for BatchPlan {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        let containers = value.need("containers")?;
        Ok(Self {
            way: value.need("way")?.worded()?,
            mass: value.need("mass")?.worded()?,
            containers: Containers {
                count: containers.need("count")?.whole()?,
                volume: containers.need("volume")?.worded()?,
                headspace: containers.need("headspace")?.worded()?,
                loss: containers.need("loss")?.worded()?,
                density: containers.worded_field("density")?,
            },
            stock: value.field("stock")?.map_or_else(|| Ok(Vec::new()), |stock| read_list(&stock, Stock::read))?,
        })
    }

    fn write(&self, writer: &mut Writer) {
        let Self { way, mass, containers, stock } = self;
        writer.field("way").worded(way);
        writer.field("mass").worded(mass);
        writer.field("containers").object(|writer| {
            writer.field("count").whole(u64::from(containers.count));
            writer.field("volume").worded(&containers.volume);
            writer.field("headspace").worded(&containers.headspace);
            writer.field("loss").worded(&containers.loss);
            writer.worded_field("density", containers.density.as_ref());
        });
        if !stock.is_empty() {
            write_list(writer.field("stock"), stock);
        }
    }
}

impl Kept for Stock {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        Ok(Self { material: value.need("material")?.worded()?, available: value.need("available")?.worded()? })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("material").worded(&self.material);
        writer.field("available").worded(&self.available);
    }
}

impl Kept for Material {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        Ok(Self {
            id: value.need("id")?.worded()?,
            name: value.need("name")?.text()?.to_owned(),
            class: value.need("class")?.worded()?,
            usual_phase: value.need("usual_phase")?.worded()?,
            density: value.worded_field("density")?,
            makeup: match value.need("makeup")?.choice()? {
                ("Simple", constituent) => Makeup::Simple(read_constituent_id(&constituent)?),
                ("Composite", parts) => Makeup::Composite(read_list(&parts, Part::read)?),
                (_, unknown) => return unknown.damaged(),
            },
        })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("id").worded(&self.id);
        writer.field("name").text(&self.name);
        writer.field("class").worded(&self.class);
        writer.field("usual_phase").worded(&self.usual_phase);
        writer.worded_field("density", self.density.as_ref());
        writer.field("makeup").object(|writer| match &self.makeup {
            Makeup::Simple(constituent) => write_constituent_id(writer.field("Simple"), *constituent),
            Makeup::Composite(parts) => write_list(writer.field("Composite"), parts),
        });
    }
}

impl Kept for Part {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        Ok(Self { material: value.need("material")?.worded()?, amount: read_amount(&value.need("amount")?)? })
    }

    fn write(&self, writer: &mut Writer) {
        writer.field("material").worded(&self.material);
        write_amount(writer, self.amount);
    }
}

impl Kept for Constituent {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        Ok(Self {
            id: read_constituent_id(&value.need("id")?)?,
            inci: value.need("inci")?.text()?.to_owned(),
            class: value.need("class")?.worded()?,
        })
    }

    fn write(&self, writer: &mut Writer) {
        write_constituent_id(writer.field("id"), self.id);
        writer.field("inci").text(&self.inci);
        writer.field("class").worded(&self.class);
    }
}

pub(crate) fn read_constituent_id(value: &Value<'_>) -> Result<ConstituentId, Damage> {
    match value.choice()? {
        ("Catalogue", number) => number.whole().map(ConstituentId::Catalogue),
        ("Own", number) => number.whole().map(ConstituentId::Own),
        (_, unknown) => unknown.damaged(),
    }
}

pub(crate) fn write_constituent_id(writer: &mut Writer, id: ConstituentId) {
    writer.object(|writer| match id {
        ConstituentId::Catalogue(number) => writer.field("Catalogue").whole(u64::from(number)),
        ConstituentId::Own(number) => writer.field("Own").whole(number),
    });
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use rust_decimal::Decimal;
    use stillroom_core::{Class, Density, Grams, MaterialId, Percent, Ph, PhaseKind};

    fn record() -> FormulaRecord {
        let mut formula = Formula::with_name("Gel \u{1f952} \"quoted\"");
        let phase = formula.add_phase("water", PhaseKind::HeatedWater, None);
        formula.add_line(phase, MaterialId::Catalogue(1), Amount::QuantumSatis);
        FormulaRecord { id: FormulaId(0xfeed), revision: 3, changed_at: 1_700_000_000_000, formula }
    }

    #[test]
    fn a_record_reads_back_as_it_was_written() {
        let text = write(&record());
        assert_eq!(read::<FormulaRecord>(&text), Ok(record()));
    }

    #[test]
    fn what_a_later_version_wrote_is_named_and_not_called_damaged() {
        let text = write(&record()).replacen("\"schema\":1", "\"schema\":2", 1);
        assert_eq!(read::<FormulaRecord>(&text), Err(RecordError::Newer { schema: 2 }));
        let unreadable = r#"{"schema": 9, "formula": "in another form"}"#;
        assert_eq!(read::<FormulaRecord>(unreadable), Err(RecordError::Newer { schema: 9 }));
    }

    #[test]
    fn damage_is_reported_with_its_place() {
        for text in ["", "{", "[]", "null", "{\"schema\":1}", "{\"schema\":1,\"id\":\"zz\"}"] {
            let error = read::<FormulaRecord>(text).unwrap_err();
            assert_eq!(error.code(), "record.damaged", "{text}");
        }
        let long = " ".repeat(LONGEST_RECORD + 1);
        assert_eq!(read::<FormulaRecord>(&long).unwrap_err().code(), "record.too-long");
    }

    #[test]
    fn the_first_schema_is_read_for_ever() {
        let golden = include_str!("../golden/formula-1.json");
        let record: FormulaRecord = read(golden).unwrap();
        assert_eq!(record.formula.name, "Cucumber and oat gel cream");
        assert_eq!(record.formula.lines().count(), 2);
        assert_eq!(record.formula.costs, "");
        // What a maker reckons with came later.
        let golden = include_str!("../golden/formula-1-costs.json");
        let record: FormulaRecord = read(golden).unwrap();
        assert_eq!(record.formula.costs, "labour-minutes=90\nmargin=60\nprice=0.85\nwastage=3");
        assert_eq!((read::<FormulaRecord>(&write(&record)), record.formula.tags.as_str()), (Ok(record.clone()), ""));
        // And then what it is filed under.
        let golden = include_str!("../golden/formula-1-tags.json");
        let record: FormulaRecord = read(golden).unwrap();
        assert_eq!(record.formula.tags, "winter, for gifts");
        assert_eq!(read::<FormulaRecord>(&write(&record)), Ok(record));
    }

    /// The derived reader of `serde_json` understands what is written, and what it writes is understood here.
    #[test]
    fn records_are_what_serde_json_makes_of_them() {
        let mut formula = record().formula;
        formula.target_ph = Some(Ph::new(Decimal::new(55, 1)).unwrap());
        formula.measured_ph = Some(Ph::new(Decimal::new(562, 2)).unwrap());
        formula.set_kind(Some(ProductKind::Shampoo));
        formula.steps = vec!["Heat to 70 \u{b0}C.\n\tStir. \u{1} \\ \"end\"".to_owned(), String::new()];
        formula.set_aside.push(SetAside {
            code: "a.b".to_owned(),
            subject: "c7".to_owned(),
            reason: "\u{e9}".to_owned(),
        });
        formula.phases[0].lines[0].suspended = true;
        formula.phases[0].lines[0].substitution = "the same \u{fc}ber all, at half".to_owned();
        formula.batch.stock.push(Stock { material: MaterialId::Own(u64::MAX), available: Grams::ZERO });
        let text = write(&FormulaRecord { formula: formula.clone(), ..record() });
        let json: serde_json::Value = serde_json::from_str(&text).unwrap();
        assert_eq!(serde_json::from_value::<Formula>(json["formula"].clone()).unwrap(), formula);
        let ascii: String = serde_json::to_string(&formula).unwrap().chars().flat_map(escape_past_ascii).collect();
        assert_eq!(Formula::read(&Document::read(&ascii).unwrap().value()), Ok(formula));

        let part = |amount| Part { material: MaterialId::Formula(9), amount };
        let parts = [Amount::QuantumSatis, Amount::Grams(Grams::ZERO), Amount::Percent(Percent::HUNDRED)].map(part);
        for makeup in [Makeup::Simple(ConstituentId::Own(7)), Makeup::Composite(parts.to_vec())] {
            let (class, usual_phase) = (Class::PhAdjuster, PhaseKind::CoolDown);
            let (id, density) = (MaterialId::Own(4), Some(Density::new(Decimal::ONE).unwrap()));
            let material = Material { id, name: "\u{fc}".to_owned(), class, usual_phase, density, makeup };
            let constituent = Some(Constituent { id: ConstituentId::Catalogue(3), inci: "Aqua".to_owned(), class });
            let own = OwnMaterial { material: material.clone(), constituent, note: "a\nb".to_owned() };
            let record = MaterialRecord { revision: 1, changed_at: 2, own };
            let text = write(&record);
            let json: serde_json::Value = serde_json::from_str(&text).unwrap();
            assert_eq!(serde_json::from_value::<Material>(json["own"]["material"].clone()).unwrap(), material);
            assert_eq!(read::<MaterialRecord>(&text), Ok(record));
            let text = serde_json::to_string(&material).unwrap();
            assert_eq!(Material::read(&Document::read(&text).unwrap().value()), Ok(material));
        }
    }

    fn escape_past_ascii(character: char) -> Vec<char> {
        if character.is_ascii() {
            return vec![character];
        }
        character
            .encode_utf16(&mut [0; 2])
            .iter()
            .flat_map(|unit| format!("\\u{unit:04X}").chars().collect::<Vec<_>>())
            .collect()
    }

    proptest! {
        #[test]
        fn no_damaged_record_is_read_or_panics(at in 0usize..1000, byte in 0u8..128) {
            // Without the line end at the end of the file, which a record can do without.
            let mut bytes = include_str!("../golden/formula-1.json").trim_end().as_bytes().to_vec();
            let at = at % bytes.len();
            bytes[at] = byte;
            let text = String::from_utf8_lossy(&bytes);
            if let Err(RecordError::Damaged { place: Damage::Syntax { line, .. } }) = read::<FormulaRecord>(&text) {
                prop_assert!(line >= 1);
            }
            prop_assert!(read::<FormulaRecord>(&String::from_utf8_lossy(&bytes[..at])).is_err());
        }
    }

    #[test]
    fn the_place_of_what_is_not_understood_is_told() {
        let text = write(&record()).replacen("heated-water", "cold-fire", 1);
        assert_eq!(read::<FormulaRecord>(&text), Err(RecordError::Damaged { place: Damage::Field("kind") }));
        let text = write(&record()).replacen(",\"revision\":3", "", 1);
        assert_eq!(read::<FormulaRecord>(&text), Err(RecordError::Damaged { place: Damage::Field("revision") }));
        let text = write(&record()).replacen("\"formula\"", "\n\"formula\" ", 1).replacen("\" :", "\" ;", 1);
        let column = "\"formula\" ;".len();
        assert_eq!(
            read::<FormulaRecord>(&text),
            Err(RecordError::Damaged { place: Damage::Syntax { line: 2, column } })
        );
        let deep = "[".repeat(100_000);
        assert_eq!(read::<FormulaRecord>(&deep).unwrap_err().code(), "record.damaged");
    }
}
