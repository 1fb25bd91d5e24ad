//! The JSON Schema of a backup, generated from the types of its records and kept in `schema/backup-1.json`.

use crate::backup::{FORMAT, VERSION};
use crate::batch::{BatchRecord, JournalRecord};
use crate::extract::ExtractRecord;
use crate::holding::HoldingRecord;
use crate::record::{FormulaRecord, MaterialRecord, SCHEMA};
use crate::versions::VersionsRecord;
use schemars::generate::SchemaSettings;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Value, json};
use stillroom_core::{Celsius, ConstituentId, Formula, Grams, MaterialId, Percent, Ph};

/// A price as it is written.
#[derive(JsonSchema)]
#[expect(dead_code, reason = "only its shape counts")]
pub(crate) struct MoneySchema {
    /// In the currency.
    #[schemars(regex(pattern = r"^-?[0-9]+(\.[0-9]+)?$"))]
    amount: String,
    /// Three letters of ISO 4217.
    #[schemars(regex(pattern = "^[A-Z]{3}$"))]
    currency: String,
}

/// A liquid as it is written: grams of each part; what is absent is nothing.
#[derive(JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[expect(dead_code, reason = "only its shape counts")]
pub(crate) struct LiquidSchema {
    glycerin: Option<Grams>,
    water: Option<Grams>,
    propylene_glycol: Option<Grams>,
    propanediol: Option<Grams>,
    ethanol: Option<Grams>,
    solids_low: Option<Grams>,
    solids_typical: Option<Grams>,
    solids_high: Option<Grams>,
}

/// What was done to a liquid, as it is written.
#[derive(JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[expect(dead_code, reason = "only its shape counts")]
pub(crate) enum StepSchema {
    /// Glycerin was poured in.
    Glycerin { mass: Grams, purity: Percent },
    /// Water was poured in.
    Water(Grams),
    /// It was weighed again.
    WeighedAgain(Grams),
    /// Its glycerin was measured.
    Measured(Percent),
}

/// What a run set out to make, as it is written.
#[derive(JsonSchema)]
#[expect(dead_code, reason = "only its shape counts")]
pub(crate) struct PlanSchema {
    formula: Formula,
    asked: Grams,
    scales: Vec<ScaleSchema>,
}

/// A scale, finest first; masses under `below` go on it.
#[derive(JsonSchema)]
#[expect(dead_code, reason = "only its shape counts")]
pub(crate) struct ScaleSchema {
    #[schemars(default)]
    name: String,
    step: Grams,
    below: Option<Grams>,
}

/// A day of the calendar (ISO 8601).
#[derive(JsonSchema)]
#[schemars(transparent)]
#[expect(dead_code, reason = "only its shape counts")]
pub(crate) struct DaySchema(#[schemars(regex(pattern = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"))] String);

/// What was done at the bench and when, in milliseconds since 1970.
#[derive(JsonSchema)]
#[expect(dead_code, reason = "only its shape counts")]
pub(crate) struct EventSchema {
    at: u64,
    #[serde(flatten)]
    deed: DeedSchema,
}

/// What was done. Masses are in grams, lines and phases are named by their numbers in the formula.
#[derive(JsonSchema)]
#[serde(tag = "did", rename_all = "kebab-case")]
#[expect(dead_code, reason = "only its shape counts")]
enum DeedSchema {
    Started {},
    PhaseFirst { phase: u32 },
    EmptyBeaker { phase: u32, mass: Grams },
    Poured { line: u32, mass: Grams },
    LeftOut { line: u32 },
    Accepted { line: u32 },
    Rescaled { line: u32 },
    TakenFromRest { line: u32 },
    WeighedCold { phase: u32, mass: Grams },
    WeighedHot { phase: u32, mass: Grams },
    WaterAdded { phase: Option<u32>, mass: Grams },
    Temperature { held: HeldSchema, phase: Option<u32>, celsius: Celsius },
    TimerStarted { step: String, seconds: u32, stops: Vec<u32> },
    TimerStopped { step: String },
    TimerResumed { step: String },
    Tempered { phase: u32, mass: Grams },
    BatchWeighed { mass: Grams, beaker: Grams },
    PhMeasured { ph: Ph },
    PhWindows { windows: Vec<WindowSchema> },
    PhSample { mass: Grams, water: Grams },
    PhTitrant { material: MaterialId, strength: Percent, drops: Option<u32>, mass: Option<Grams> },
    PhDrops { count: u32 },
    PhGrams { mass: Grams },
    PhRead { vessel: VesselSchema, ph: Ph, by: ReadBySchema, step: Option<Ph> },
    PhCorrected { mass: Grams },
    PhAccepted {},
    Filled { count: u32, mass: Grams },
    Said { name: String, text: Option<String> },
    Closed { step: String },
    Finished { drawn: Vec<DrawnSchema> },
    TakenBack {},
}

/// What was held into.
#[derive(JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[expect(dead_code, reason = "only its shape counts")]
enum HeldSchema {
    Phase,
    Batch,
    Room,
}

/// The pH in which a preservative works.
#[derive(JsonSchema)]
#[expect(dead_code, reason = "only its shape counts")]
struct WindowSchema {
    substance: ConstituentId,
    low: Ph,
    high: Ph,
}

/// Where a pH was read.
#[derive(JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[expect(dead_code, reason = "only its shape counts")]
enum VesselSchema {
    Sample,
    Batch,
}

/// What a pH was read with; of a strip `step` is what lies between its colours.
#[derive(JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[expect(dead_code, reason = "only its shape counts")]
enum ReadBySchema {
    Meter,
    Strip,
}

/// What a batch took of a material in stock.
#[derive(JsonSchema)]
#[expect(dead_code, reason = "only its shape counts")]
struct DrawnSchema {
    material: MaterialId,
    mass: Grams,
}

/// A record of a type: its fields, its schema version, and the check sum it may carry.
fn record<T: JsonSchema>(generator: &mut SchemaGenerator) -> Schema {
    let fields = generator.subschema_for::<T>();
    json_schema!({
        "allOf": [fields],
        "type": "object",
        "properties": {
            "schema": { "type": "integer", "minimum": 1, "maximum": SCHEMA },
            "check": { "type": "string", "pattern": "^[0-9a-f]{8}$" },
        },
        "required": ["schema"],
    })
}

fn generate() -> String {
    let mut generator = SchemaSettings::draft2020_12().into_generator();
    let records = json!({
        "^stillroom\\.formula\\.[0-9a-f]{16}$": record::<FormulaRecord>(&mut generator),
        "^stillroom\\.material\\.[0-9a-f]{16}$": record::<MaterialRecord>(&mut generator),
        "^stillroom\\.holding\\.[cof][0-9a-f]+$": record::<HoldingRecord>(&mut generator),
        "^stillroom\\.extract\\.[0-9a-f]{16}$": record::<ExtractRecord>(&mut generator),
        "^stillroom\\.batch\\.[0-9a-f]{16}$": record::<BatchRecord>(&mut generator),
        "^stillroom\\.journal\\.[0-9a-f]{16}$": record::<JournalRecord>(&mut generator),
        "^stillroom\\.versions\\.[0-9a-f]{16}$": record::<VersionsRecord>(&mut generator),
    });
    let schema = json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A backup of Stillroom",
        "description": "Every record of a device by the key it is kept under. Masses are in grams, shares in percent; every measured number is text, so that no digit of it is lost.",
        "type": "object",
        "properties": {
            "$schema": { "type": "string", "format": "uri-reference", "description": "Where this description lies." },
            "format": { "const": FORMAT },
            "version": { "const": VERSION },
            "made_at": { "type": "integer", "minimum": 0, "description": "Milliseconds since 1970." },
            "records": {
                "type": "object",
                "patternProperties": records,
                "additionalProperties": {
                    "type": "object",
                    "description": "Settings of the page, and records of kinds that came later.",
                    "properties": { "schema": { "type": "integer", "minimum": 1 } },
                    "required": ["schema"],
                },
            },
        },
        "required": ["format", "version", "made_at", "records"],
        "$defs": Value::Object(generator.take_definitions(true)),
    });
    let mut text = serde_json::to_string_pretty(&schema).unwrap_or_default();
    text.push('\n');
    text
}

fn kept() -> Value {
    serde_json::from_str(include_str!("../schema/backup-1.json")).unwrap_or_default()
}

/// With `STILLROOM_WRITE_SCHEMA` set, writes the kept copy anew instead.
#[test]
fn the_kept_schema_is_the_generated_one() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/schema/backup-1.json");
    if std::env::var_os("STILLROOM_WRITE_SCHEMA").is_some() {
        std::fs::write(path, generate()).expect("the schema can be written");
    }
    let kept = std::fs::read_to_string(path).unwrap_or_default();
    assert!(kept == generate(), "set STILLROOM_WRITE_SCHEMA, run this test and commit {path}");
}

/// A backup of every golden record, as a device would write it.
fn golden_backup() -> Value {
    let lines = |text: &str| text.lines().map(str::to_owned).collect::<Vec<_>>();
    let everything = lines(include_str!("../golden/link-1-everything.json"));
    let records = [
        ("stillroom.formula.000000000000feed", include_str!("../golden/formula-1.json").to_owned()),
        ("stillroom.formula.0123456789abcdef", everything[0].clone()),
        ("stillroom.material.ffffffffffffffff", everything[2].clone()),
        ("stillroom.material.0000000000000003", everything[3].clone()),
        ("stillroom.extract.000000000cc00e71", include_str!("../golden/extract-1.json").to_owned()),
        ("stillroom.batch.000000000000ba7c", include_str!("../golden/batch-1.json").to_owned()),
        ("stillroom.batch.000000000000ba7d", include_str!("../golden/batch-1-titrated.json").to_owned()),
        ("stillroom.journal.000000000000ba7c", include_str!("../golden/journal-1.json").to_owned()),
        ("stillroom.versions.0000000000000007", include_str!("../golden/versions-1.json").to_owned()),
        ("stillroom.holding.c2", crate::record::write(&holding())),
        ("stillroom.settings", r#"{"schema":1,"revision":1,"settings":{"mass_unit":"oz"}}"#.to_owned()),
    ];
    let records = records.into_iter().map(|(key, text)| (key.to_owned(), text)).collect();
    let backup = crate::backup::Backup { made_at: 1_764_000_000_000, records };
    let written = crate::backup::write(&backup, Some("https://maker.example/"));
    serde_json::from_str(&written).expect("a backup is JSON")
}

fn holding() -> HoldingRecord {
    let text = include_str!("../golden/holding-1-prices.json");
    crate::record::read(text).expect("a holding")
}

#[test]
fn golden_backups_are_what_the_schema_says() {
    let validator = jsonschema::validator_for(&kept()).expect("the schema itself is sound");
    let backup = golden_backup();
    let errors: Vec<String> =
        validator.iter_errors(&backup).map(|error| format!("{}: {error}", error.instance_path())).collect();
    assert!(errors.is_empty(), "{errors:#?}");
}

#[test]
fn the_schema_refuses_what_is_none() {
    let validator = jsonschema::validator_for(&kept()).expect("the schema itself is sound");
    let spoil = |change: fn(&mut Value)| {
        let mut backup = golden_backup();
        change(&mut backup);
        validator.is_valid(&backup)
    };
    assert!(!spoil(|backup| backup["version"] = json!(2)));
    assert!(!spoil(|backup| backup["records"]["stillroom.formula.000000000000feed"]["schema"] = json!("one")));
    assert!(!spoil(|backup| backup["records"]["stillroom.formula.000000000000feed"]["formula"]["phases"] = json!({})));
    assert!(!spoil(|backup| {
        backup["records"]["stillroom.formula.000000000000feed"]["formula"]["phases"][0]["lines"][0]["amount"] =
            json!({ "percent": 12.0 });
    }));
    assert!(!spoil(|backup| {
        backup["records"]["stillroom.batch.000000000000ba7c"]["batch"]["events"][3]["did"] = json!("spilled");
    }));
    assert!(!spoil(|backup| {
        backup["records"]["stillroom.batch.000000000000ba7c"]["batch"]["events"][3]["line"] = json!("one");
    }));
    assert!(!spoil(|backup| {
        backup["records"]["stillroom.journal.000000000000ba7c"]["entries"][0]["day"] = json!("yesterday");
    }));
    assert!(!spoil(|backup| backup["records"]["stillroom.holding.c2"]["holding"]["price"]["currency"] = json!("euro")));
}
