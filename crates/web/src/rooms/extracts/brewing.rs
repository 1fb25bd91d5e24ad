//! What the maker's extracts hold and what they come to.

use litemap::LiteMap;
use rust_decimal::{Decimal, dec};
use stillroom_catalogue::reference::{PlantWater, plant_waters};
use stillroom_core::extract::liquid::Solvent;
use stillroom_core::extract::plan::{AddedSolvent, measure_plant_water};
use stillroom_core::extract::verify::{Reading, Scale};
use stillroom_core::extract::{
    Addition, Circumstances, ExtractError, Liquid, MarcRetention, Part, Plan, Plant, Pressed, Size, SolubleShare,
    Strength, adjust,
};
use stillroom_core::{Grams, MaterialId, Millilitres, Percent};
use stillroom_exchange::extract::{Extract, ExtractKind, Step};

/// What a field takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Takes {
    /// A mass, kept in grams.
    Mass,
    /// A volume, kept in millilitres.
    Volume,
    /// A number in a range.
    Number(Decimal, Decimal),
    /// A temperature between these, in °C.
    Temperature(Decimal, Decimal),
    /// One of a few words, the first unless chosen otherwise.
    Choice(&'static [&'static str]),
    /// A material.
    Material,
    /// A day, written year-month-day.
    Day,
    /// Any text.
    Text,
}

/// What a field takes and where it stands until it is filled in; an empty text means that it may stay empty. `None`
/// where there is no such field.
#[expect(clippy::match_same_arms, reason = "fields stand in the order of the page, whatever they take")]
pub(crate) fn rule(field: &str) -> Option<(Takes, &'static str)> {
    const PERCENT: Takes = Takes::Number(Decimal::ZERO, Decimal::ONE_HUNDRED);
    const TEMPERATURE: Takes = Takes::Temperature(dec!(-20), dec!(100));
    Some(match field {
        "plant" | "plant-name" | "lot" | "note" => (Takes::Text, ""),
        "made-on" => (Takes::Day, ""),
        "water-from" => (Takes::Choice(&["catalogue", "percent", "weighed"]), ""),
        "plant-water" => (PERCENT, ""),
        "sample-fresh" | "sample-dried" | "solvent-mass" | "added-water" | "evaporation" | "mass-now" => {
            (Takes::Mass, "")
        }
        "plant-mass" => (Takes::Mass, "100"),
        "glycerin" => (Takes::Mass, "300"),
        "purity" => (Takes::Number(dec!(50), Decimal::ONE_HUNDRED), "99.5"),
        "solvent" => (Takes::Choice(&["none", "propanediol", "propylene-glycol", "ethanol"]), ""),
        "solvent-purity" => (Takes::Number(Decimal::ONE, Decimal::ONE_HUNDRED), "100"),
        "press" => (Takes::Choice(&["hand", "press", "yield"]), ""),
        "press-yield" => (PERCENT, "85"),
        "temperature" | "reading-temperature" => (TEMPERATURE, "20"),
        "wanted-by" => (Takes::Choice(&["glycerin", "activity"]), ""),
        "wanted-glycerin" | "adjust-target" => (PERCENT, "65"),
        "wanted-activity" => (Takes::Number(dec!(0.1), Decimal::ONE), "0.75"),
        "wanted-size" => (Takes::Choice(&["plant", "glycerin", "jar", "finished"]), ""),
        "menstruum-per-plant" => (Takes::Number(dec!(0.1), dec!(100)), "3"),
        "jar-volume" => (Takes::Volume, "500"),
        "headspace" => (Takes::Number(Decimal::ZERO, dec!(90)), "5"),
        "finished-volume" => (Takes::Volume, "250"),
        "optical" => (Takes::Choice(&["brix", "brix-corrected", "index"]), ""),
        "optical-value" | "gravity-value" => (Takes::Number(Decimal::ZERO, dec!(100)), ""),
        "optical-step" => (Takes::Number(dec!(0.00001), dec!(10)), "0.2"),
        "gravity-step" => (Takes::Number(dec!(0.00001), dec!(1)), "0.001"),
        "calibrated" => (TEMPERATURE, "20"),
        "ph" => (Takes::Number(Decimal::ZERO, dec!(14)), ""),
        "preserved" => (Takes::Choice(&["no", "yes"]), ""),
        "use-percent" => (Takes::Number(dec!(0.01), Decimal::ONE_HUNDRED), "12"),
        "material" | "plant-material" | "substance" | "solvent-material" | "preservative-material" => {
            (Takes::Material, "")
        }
        "strength" => (PERCENT, "1"),
        "wanted-percent" => (PERCENT, "0.2"),
        "substance-purity" => (Takes::Number(Decimal::ONE, Decimal::ONE_HUNDRED), "100"),
        "preservative" => (PERCENT, "0"),
        "total" | "batch" => (Takes::Mass, "250"),
        "strong" => (PERCENT, "96"),
        "weak" => (PERCENT, "0"),
        "target" => (PERCENT, "70"),
        "alcohol-volume" => (Takes::Volume, "250"),
        "alcohol-of" => (Takes::Choice(&["mixture", "strong", "weak"]), ""),
        field if field.starts_with(BLENDED) => (Takes::Mass, ""),
        _ => return None,
    })
}

/// Fields of a glycerite, in the order of the page.
pub(crate) const GLYCERITE: &[&str] = &[
    "plant",
    "plant-name",
    "water-from",
    "plant-water",
    "sample-fresh",
    "sample-dried",
    "plant-mass",
    "glycerin",
    "purity",
    "added-water",
    "solvent",
    "solvent-mass",
    "solvent-purity",
    "press",
    "press-yield",
    "evaporation",
    "temperature",
    "wanted-by",
    "wanted-glycerin",
    "wanted-activity",
    "wanted-size",
    "menstruum-per-plant",
    "jar-volume",
    "headspace",
    "finished-volume",
    "adjust-target",
    "mass-now",
    "optical",
    "optical-value",
    "optical-step",
    "gravity-value",
    "gravity-step",
    "calibrated",
    "reading-temperature",
    "ph",
    "preserved",
    "made-on",
    "lot",
    "note",
    "use-percent",
    "material",
];
/// Fields of a stock solution.
pub(crate) const SOLUTION: &[&str] = &[
    "substance",
    "solvent-material",
    "preservative-material",
    "strength",
    "substance-purity",
    "preservative",
    "total",
    "wanted-percent",
    "batch",
    "made-on",
    "lot",
    "note",
    "use-percent",
    "material",
];
/// Fields of an alcohol.
pub(crate) const ALCOHOL: &[&str] =
    &["strong", "weak", "target", "alcohol-of", "alcohol-volume", "made-on", "lot", "note", "use-percent", "material"];

/// Begins the field of a batch that goes into a blend.
pub(crate) const BLENDED: &str = "blend:";

/// What an extract's fields hold.
pub(crate) trait Fields {
    /// What a field holds, as it is kept.
    fn text(&self, field: &str) -> &str;
    /// A number; `None` where the field is empty.
    fn number(&self, field: &str) -> Option<Decimal>;
    /// A mass, nothing where the field is empty.
    fn grams(&self, field: &str) -> Result<Grams, ExtractError>;
    /// A percent, nothing where the field is empty.
    fn percent(&self, field: &str) -> Result<Percent, ExtractError>;
    /// A number for physics; no number where the field is empty.
    fn physics(&self, field: &str) -> f64;
    /// A material.
    fn material(&self, field: &str) -> Option<MaterialId>;
}

impl Fields for Extract {
    fn text(&self, field: &str) -> &str {
        let usual = || match rule(field) {
            Some((Takes::Choice(choices), _)) => choices[0],
            Some((_, usual)) => usual,
            None => "",
        };
        self.values.get(field).map_or_else(usual, String::as_str)
    }

    fn number(&self, field: &str) -> Option<Decimal> {
        Decimal::from_str_exact(self.text(field)).ok()
    }

    fn grams(&self, field: &str) -> Result<Grams, ExtractError> {
        Ok(Grams::new(self.number(field).unwrap_or_default())?)
    }

    fn percent(&self, field: &str) -> Result<Percent, ExtractError> {
        Ok(Percent::new(self.number(field).unwrap_or_default())?)
    }

    fn physics(&self, field: &str) -> f64 {
        use rust_decimal::prelude::ToPrimitive;
        self.number(field).and_then(|number| number.to_f64()).unwrap_or(f64::NAN)
    }

    fn material(&self, field: &str) -> Option<MaterialId> {
        self.text(field).parse().ok()
    }
}

/// Why an extract comes to nothing yet.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Trouble {
    /// The water of the plant is not said.
    NoPlantWater,
    /// Neither plant nor glycerin is said.
    NothingPlanned,
    /// A material is to be chosen.
    NoMaterial,
    /// A reading shows no glycerin at all in what holds it by the plan.
    ReadAsWater {
        /// What the plan says, in percent.
        planned: Percent,
    },
    /// The engine says why.
    Extract(ExtractError),
}

impl From<ExtractError> for Trouble {
    fn from(error: ExtractError) -> Self {
        Self::Extract(error)
    }
}

/// What an extract comes to.
pub(crate) struct Brew {
    /// The plan and what its pressing gives, unless the extract was blended.
    pub(crate) planned: Option<(Plan, Pressed)>,
    /// What stands in the bottle now.
    pub(crate) liquid: Liquid,
    /// Whether its strength was measured, and nothing but that is known of what was done since.
    pub(crate) measured: bool,
}

/// The name of a row of the catalogue's plants. Of some there is a measured value and the limit of a pharmacopoeia.
pub(crate) fn key_of_plant(row: &PlantWater) -> String {
    let limit = if row.range_or_limit == "max" { "/limit" } else { "" };
    format!("{}/{}/{}{limit}", row.plant, row.part, row.state)
}

/// The row of the catalogue an extract is made of.
pub(crate) fn plant_of(extract: &Extract) -> Option<&'static PlantWater> {
    let key = extract.text("plant");
    plant_waters().iter().find(|row| !key.is_empty() && key_of_plant(row) == key)
}

/// Where the water of the plant is taken from: the catalogue knows only its own plants.
pub(crate) fn water_from(extract: &Extract) -> &str {
    match extract.text("water-from") {
        "catalogue" if plant_of(extract).is_none() => "percent",
        from => from,
    }
}

/// Water of the plant in percent.
pub(crate) fn plant_water(extract: &Extract) -> Result<Percent, Trouble> {
    let value = match water_from(extract) {
        "weighed" => {
            let (fresh, dried) = (extract.grams("sample-fresh")?, extract.grams("sample-dried")?);
            if fresh.is_zero() || dried.is_zero() {
                return Err(Trouble::NoPlantWater);
            }
            return Ok(measure_plant_water(fresh, dried)?);
        }
        "percent" => extract.number("plant-water"),
        _ => plant_of(extract).and_then(|row| row.water),
    };
    let value = value.ok_or(Trouble::NoPlantWater)?;
    Ok(Percent::new(value).map_err(ExtractError::from)?)
}

fn solvent(extract: &Extract) -> Option<Solvent> {
    match extract.text("solvent") {
        "propanediol" => Some(Solvent::Propanediol),
        "propylene-glycol" => Some(Solvent::PropyleneGlycol),
        "ethanol" => Some(Solvent::Ethanol),
        _ => None,
    }
}

fn marc(extract: &Extract) -> Result<MarcRetention, ExtractError> {
    Ok(match extract.text("press") {
        "hand" => MarcRetention::GramsPerGram(dec!(1.5)),
        "press" => MarcRetention::GramsPerGram(dec!(0.7)),
        _ => {
            let held = Decimal::ONE_HUNDRED - extract.percent("press-yield")?.value();
            MarcRetention::ShareOfLiquid(Percent::new(held)?)
        }
    })
}

/// What goes into the jar.
pub(crate) fn plan_of(extract: &Extract) -> Result<Plan, Trouble> {
    let (plant, glycerin) = (extract.grams("plant-mass")?, extract.grams("glycerin")?);
    if plant.is_zero() && glycerin.is_zero() {
        return Err(Trouble::NothingPlanned);
    }
    let (mass, purity) = (extract.grams("solvent-mass")?, extract.percent("solvent-purity")?);
    let added = solvent(extract).map(|solvent| AddedSolvent { solvent, mass, purity });
    Ok(Plan {
        plant: Plant { mass: plant, water: plant_water(extract)?, soluble: SolubleShare::usual()? },
        glycerin,
        glycerin_purity: extract.percent("purity")?,
        added_water: extract.grams("added-water")?,
        solvent: added.filter(|added| !added.mass.is_zero()),
        marc: marc(extract)?,
        evaporation: extract.grams("evaporation")?,
    })
}

/// What an extract comes to: planned, pressed and everything that was done to it since.
pub(crate) fn brew(extract: &Extract) -> Result<Brew, Trouble> {
    let (planned, mut liquid) = if let Some(liquid) = &extract.blend {
        (None, *liquid)
    } else {
        let plan = plan_of(extract)?;
        let pressed = plan.press()?;
        (Some((plan, pressed)), pressed.liquid)
    };
    let mut measured = false;
    for step in &extract.steps {
        liquid = take_step(&liquid, step)?;
        measured |= matches!(step, Step::Measured(_));
    }
    Ok(Brew { planned, liquid, measured })
}

/// A liquid after one more step.
fn take_step(liquid: &Liquid, step: &Step) -> Result<Liquid, ExtractError> {
    match step {
        Step::Glycerin(mass, purity) => {
            let glycerin = purity.of(*mass).unwrap_or(Grams::ZERO);
            let water = mass.checked_sub(glycerin).unwrap_or(Grams::ZERO);
            liquid.checked_add(&Liquid::of_glycerin_and_water(glycerin, water))
        }
        Step::Water(mass) => liquid.checked_add(&Liquid::of_glycerin_and_water(Grams::ZERO, *mass)),
        Step::WeighedAgain(mass) => Ok(adjust::account_for_evaporation(liquid, *mass)?.liquid),
        Step::Measured(percent) => {
            let whole = liquid.mass()?;
            let glycerin = percent.of(whole).unwrap_or(Grams::ZERO);
            let rest = Liquid { glycerin, water: Grams::ZERO, ..*liquid }.mass()?;
            let water = whole.checked_sub(rest).ok_or(ExtractError::NothingLeft {
                what: "water",
                taken: rest,
                available: whole,
            })?;
            Ok(Liquid { glycerin, water, ..*liquid })
        }
    }
}

/// What to pour in to reach the strength that is wanted.
pub(crate) fn addition_towards(liquid: &Liquid, extract: &Extract) -> Result<(Percent, Addition), ExtractError> {
    let target = extract.percent("adjust-target")?;
    let weak = liquid.glycerin_percent()? < target;
    Ok((target, if weak { Addition::Glycerin(extract.percent("purity")?) } else { Addition::Water }))
}

/// What is wanted of a plan, and under which circumstances.
pub(crate) fn wish_of(extract: &Extract) -> Result<(Circumstances, Strength, Size), Trouble> {
    let plant = extract.grams("plant-mass")?;
    let glycerin = extract.grams("glycerin")?;
    // Solvent and evaporation keep their share of what is poured on the plant.
    let added = solvent(extract).map(|solvent| Ok::<_, ExtractError>((solvent, extract.grams("solvent-mass")?)));
    let added = added.transpose()?.filter(|(_, mass)| !mass.is_zero());
    let poured = [Some(glycerin), Some(extract.grams("added-water")?), added.map(|(_, mass)| mass)]
        .into_iter()
        .flatten()
        .try_fold(Grams::ZERO, Grams::checked_add)
        .unwrap_or(Grams::ZERO);
    let share = |mass| Percent::from_share(mass, poured).unwrap_or(Percent::ZERO);
    let purity = extract.percent("solvent-purity")?;
    let given = Circumstances {
        plant_water: plant_water(extract)?,
        soluble: SolubleShare::usual()?,
        glycerin_purity: extract.percent("purity")?,
        solvent: added.map(|(solvent, mass)| (solvent, share(mass), purity)),
        marc: marc(extract)?,
        evaporation: share(extract.grams("evaporation")?),
    };
    let strength = if extract.text("wanted-by") == "activity" {
        Strength::WaterActivity(extract.physics("wanted-activity"))
    } else {
        Strength::GlycerinPercent(extract.percent("wanted-glycerin")?)
    };
    let menstruum_per_plant = extract.number("menstruum-per-plant").unwrap_or(dec!(3));
    let millilitres = |field| Millilitres::new(extract.number(field).unwrap_or_default()).map_err(ExtractError::from);
    let size = match extract.text("wanted-size") {
        "glycerin" => Size::GlycerinAtHand { plant, glycerin },
        "jar" => Size::Jar {
            volume: millilitres("jar-volume")?,
            headspace: extract.percent("headspace")?,
            menstruum_per_plant,
        },
        "finished" => Size::Finished { volume: millilitres("finished-volume")?, menstruum_per_plant },
        _ => {
            let menstruum = plant.value().checked_mul(menstruum_per_plant).and_then(|mass| Grams::new(mass).ok());
            Size::Menstruum { plant, menstruum: menstruum.unwrap_or(plant) }
        }
    };
    Ok((given, strength, size))
}

/// What the instruments show.
pub(crate) fn readings_of(extract: &Extract) -> Vec<Reading> {
    let temperature = extract.physics("reading-temperature");
    let reading = |scale, value, resolution| Reading {
        scale,
        value: extract.physics(value),
        resolution: extract.physics(resolution),
        temperature,
    };
    let mut readings = Vec::new();
    if extract.number("optical-value").is_some() {
        let scale = match extract.text("optical") {
            "index" => Scale::RefractiveIndex,
            which => Scale::Brix { corrects_temperature: which == "brix-corrected" },
        };
        readings.push(reading(scale, "optical-value", "optical-step"));
    }
    if extract.number("gravity-value").is_some() {
        let scale = Scale::SpecificGravity { calibrated: extract.physics("calibrated") };
        readings.push(reading(scale, "gravity-value", "gravity-step"));
    }
    readings
}

/// Catalogue numbers of what liquids are made of.
pub(crate) mod number {
    pub(crate) const WATER: u32 = 1;
    pub(crate) const GLYCERIN: u32 = 2;
    pub(crate) const PROPANEDIOL: u32 = 38;
    pub(crate) const ETHANOL: u32 = 94;
    pub(crate) const PROPYLENE_GLYCOL: u32 = 366;
}

/// The catalogue's material for a part of a liquid; the plant's own is asked for.
pub(crate) const fn material_of_part(part: Part) -> Option<MaterialId> {
    Some(MaterialId::Catalogue(match part {
        Part::Glycerin => number::GLYCERIN,
        Part::Water => number::WATER,
        Part::PropyleneGlycol => number::PROPYLENE_GLYCOL,
        Part::Propanediol => number::PROPANEDIOL,
        Part::Ethanol => number::ETHANOL,
        Part::PlantSolids => return None,
    }))
}

/// The catalogue's extract of a plant, where it has one of the same part.
pub(crate) fn catalogue_extract(extract: &Extract) -> Option<MaterialId> {
    let row = plant_of(extract)?;
    let number = match (row.plant, row.part) {
        ("cucumber", _) => 39,
        ("calendula", "flower") => 112,
        ("tea" | "green tea", _) => 493,
        ("chamomile" | "chamomile (matricaria)", _) => 494,
        ("liquorice", "root") => 496,
        ("stinging nettle" | "nettle", _) => 506,
        ("marshmallow", "root") => 508,
        ("turmeric", _) => 512,
        ("spirulina", _) => 513,
        ("pomegranate", _) => 515,
        ("lemon balm" | "lemon balm (melissa)", _) => 517,
        ("elder", "flower") => 518,
        ("plantain (ribwort)", "leaf") => 519,
        ("raspberry", "fruit") => 524,
        ("flaxseed", "seed") => 527,
        ("oat", "grain") => 528,
        ("rose", "petal") => 529,
        _ => return None,
    };
    Some(MaterialId::Catalogue(number))
}

/// An extract with nothing typed yet.
pub(crate) fn fresh(kind: ExtractKind, name: String, made_on: String) -> Extract {
    let mut values = LiteMap::new();
    values.insert("made-on".to_owned(), made_on);
    if kind == ExtractKind::Solution {
        values.insert("solvent-material".to_owned(), MaterialId::Catalogue(number::WATER).to_string());
    }
    Extract { kind, name, values, blend: None, steps: Vec::new() }
}

/// A day as year, month and day.
pub(crate) type Day = (i64, u32, u32);

/// Reads a day written year-month-day.
pub(crate) fn read_day(text: &str) -> Option<Day> {
    let mut numbers = text.split('-');
    let year: i64 = numbers.next()?.parse().ok().filter(|year| (1900..=2200).contains(year))?;
    let month: u32 = numbers.next()?.parse().ok()?;
    let day: u32 = numbers.next()?.parse().ok()?;
    let read = (year, month, day);
    // A day that does not exist does not come back as itself.
    (numbers.next().is_none() && day_of(days_since_1970(read)?) == read).then_some(read)
}

/// Days since 1 January 1970 in the Gregorian calendar.
pub(crate) fn days_since_1970((year, month, day): Day) -> Option<i64> {
    if !(1..=12).contains(&month) || !(1..=31).contains(&day) {
        return None;
    }
    // Years begin in March, so that the leap day is the last.
    let (year, month) = if month > 2 { (year, month - 3) } else { (year - 1, month + 9) };
    let (era, of_era) = (year.div_euclid(400), year.rem_euclid(400));
    let of_year = i64::from((153 * month + 2) / 5 + day - 1);
    Some(era * 146_097 + of_era * 365 + of_era / 4 - of_era / 100 + of_year - 719_468)
}

/// The day so many days after 1 January 1970.
pub(crate) fn day_of(days: i64) -> Day {
    let days = days + 719_468;
    let (era, of_era) = (days.div_euclid(146_097), days.rem_euclid(146_097));
    let year = (of_era - of_era / 1_460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year + year / 4 - year / 100);
    let month = (5 * of_year + 2) / 153;
    let day = of_year - (153 * month + 2) / 5 + 1;
    let (month, next) = if month < 10 { (month + 3, 0) } else { (month - 9, 1) };
    let small = |number: i64| u32::try_from(number).unwrap_or(1);
    (era * 400 + year + next, small(month), small(day))
}

/// A day as it is kept.
pub(crate) fn write_day((year, month, day): Day) -> String {
    format!("{year:04}-{month:02}-{day:02}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillroom_catalogue::Catalogue;
    use stillroom_core::{Class, MaterialSource};

    #[test]
    fn every_extract_of_a_plant_is_in_the_catalogue() {
        let mut found = 0;
        for row in plant_waters() {
            let mut extract = fresh(ExtractKind::Glycerite, String::new(), String::new());
            extract.values.insert("plant".to_owned(), key_of_plant(row));
            assert_eq!(plant_of(&extract).unwrap().water, row.water, "names of plants are unique: {}", row.plant);
            let Some(id) = catalogue_extract(&extract) else { continue };
            let material = Catalogue::get().material(id).unwrap();
            assert_eq!(material.class, Class::Extract, "{}", material.name);
            found += 1;
        }
        assert!(found > 20, "{found}");
        for (part, name) in [
            (Part::Water, "Water, distilled"),
            (Part::Glycerin, "Glycerin, vegetable"),
            (Part::Propanediol, "Propanediol"),
            (Part::PropyleneGlycol, "Propylene glycol"),
            (Part::Ethanol, "Ethanol, absolute"),
        ] {
            let material = Catalogue::get().material(material_of_part(part).unwrap()).unwrap();
            assert_eq!(material.name, name);
        }
    }

    /// Days counted by hand from the calendar: 1 March 2024 follows a leap day; 19 000 days is 8 January 2022.
    #[test]
    fn days_are_counted_as_the_calendar_counts_them() {
        for (day, days) in [((1970, 1, 1), 0), ((2000, 3, 1), 11_017), ((2022, 1, 8), 19_000), ((2024, 2, 29), 19_782)]
        {
            assert_eq!(days_since_1970(day), Some(days));
            assert_eq!(day_of(days), day);
        }
        for wrong in ["", "2026", "2026-02-30", "2025-02-29", "2026-13-01", "1-1-1", "2026-01-01-01", "a-b-c"] {
            assert_eq!(read_day(wrong), None, "{wrong}");
        }
        assert_eq!(read_day("2026-03-09").map(write_day).as_deref(), Some("2026-03-09"));
    }
}
