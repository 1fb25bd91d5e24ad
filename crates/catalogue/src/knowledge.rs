//! What the checks know, made from the tables.
//!
//! Where sources disagree one figure has to be chosen; the choices are made here and nowhere else.

use crate::catalogue::{Catalogue, Origin, Value};
use crate::property::Property;
use crate::reference::{
    LimitMember, acid_constants, acid_salts, cosolvent_solubilities, essential_oil_constituents, fragrance_allergens,
    inhibitory_concentrations, limit_members, micelle_bindings, oil_partitions, partitions, preservative_limits,
    preservative_practice, preservative_spectra, restrictions, traits, water_solubilities,
};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use std::collections::BTreeMap;
use std::sync::OnceLock;
use stillroom_core::checks::facts::{
    Acid, Allergen, Authority, Charge, Cosolvent, Facts, Inhibition, InsideOil, Knowledge, Limit, OilKind,
    OilPartition, OilSolubility, Preservative, Remedies, SaltOf, Span, Strength, Trait, WaterSolubility,
};
use stillroom_core::chemistry::solubility::{Curve, Point};
use stillroom_core::label::{Condition, Statement};
use stillroom_core::source::{Basis, Citation, Cited};
use stillroom_core::{Class, ConstituentId, Makeup, MaterialId, MaterialSource as _, ProductKind, Purpose};

/// The dataset whose figures give way to any other: above 100 g/L it mixes "per litre of water" with "per litre of
/// solution", and some of its figures are lower bounds.
const GIVES_WAY: &str = "aqsoldb";
/// Degrees around room temperature at which a figure for a pure solvent counts.
const ROOM: core::ops::RangeInclusive<f64> = 15.0..=30.0;

/// What the checks know of the catalogue's substances.
#[derive(Debug)]
pub struct Known {
    facts: Vec<(ConstituentId, Facts)>,
    limits: Vec<Limit>,
    allergens: Vec<Allergen>,
    preservatives: Vec<ConstituentId>,
    materials: BTreeMap<ConstituentId, MaterialId>,
    cosolvents: Vec<(ConstituentId, Cosolvent, f64)>,
    remedies: Remedies,
}

/// Everything known, put together at the first call.
#[must_use]
pub fn knowledge() -> &'static Known {
    static KNOWN: OnceLock<Known> = OnceLock::new();
    KNOWN.get_or_init(Known::gather)
}

impl Knowledge for Known {
    fn facts(&self, constituent: ConstituentId) -> Option<&Facts> {
        let place = self.facts.binary_search_by_key(&constituent, |(id, _)| *id).ok()?;
        self.facts.get(place).map(|(_, facts)| facts)
    }

    fn cosolvent(&self, constituent: ConstituentId) -> Option<(Cosolvent, f64)> {
        let found = self.cosolvents.iter().find(|(id, ..)| *id == constituent);
        found.map(|(_, kind, density)| (*kind, *density))
    }

    fn material_of(&self, constituent: ConstituentId) -> Option<MaterialId> {
        self.materials.get(&constituent).copied()
    }

    fn preservatives(&self) -> &[ConstituentId] {
        &self.preservatives
    }

    fn limits(&self) -> &[Limit] {
        &self.limits
    }

    fn allergens(&self) -> &[Allergen] {
        &self.allergens
    }

    fn remedies(&self) -> &Remedies {
        &self.remedies
    }
}

fn number(decimal: Option<Decimal>) -> Option<f64> {
    decimal?.to_f64()
}

/// An origin as a citation.
#[must_use]
pub fn cite(origin: &Origin) -> Citation {
    Citation {
        source: origin.source.citation,
        locator: origin.locator,
        as_of: origin.source.as_of,
        basis: origin.basis,
    }
}

impl Known {
    fn gather() -> Self {
        let catalogue = Catalogue::get();
        let mut facts: BTreeMap<ConstituentId, Facts> = BTreeMap::new();
        let mut materials = BTreeMap::new();
        for constituent in catalogue.constituents() {
            let own = facts.entry(constituent.id).or_default();
            own.brings = crate::acids::brings(constituent);
            for value in catalogue.constituent_values(constituent.id) {
                take(own, &value);
            }
        }
        for material in catalogue.materials() {
            let Makeup::Simple(constituent) = material.makeup else { continue };
            materials.entry(constituent).or_insert(material.id);
            let own = facts.entry(constituent).or_default();
            for value in catalogue.material_values(material.id) {
                take(own, &value);
            }
        }
        add_traits(&mut facts);
        add_water_solubility(&mut facts);
        add_solvents(&mut facts);
        add_acids(&mut facts);
        add_partitions(&mut facts);
        let preservatives = add_preservatives(&mut facts);
        add_oils(&mut facts);
        let cosolvents = find_cosolvents(&facts);
        Self {
            facts: facts.into_iter().collect(),
            limits: gather_limits(),
            allergens: gather_allergens(),
            preservatives,
            materials,
            cosolvents,
            remedies: find_remedies(),
        }
    }
}

/// Takes a value of a property in, unless one is there already.
fn take(facts: &mut Facts, value: &Value) {
    let citation = cite(&value.origin);
    let cited = |figure: Option<Decimal>| number(figure).map(|value| Cited { value, citation });
    let span = || {
        let low = number(value.minimum.or(value.value))?;
        let high = number(value.maximum.or(value.value))?;
        Some(Cited { value: Span { low, high }, citation })
    };
    match value.property {
        Property::MolarMass => put(&mut facts.molar_mass, || cited(value.value)),
        Property::LogKow => put(&mut facts.log_kow, || cited(value.value)),
        Property::UsualPercent => put(&mut facts.usual_percent, span),
        Property::UsualPh => put(&mut facts.usual_ph, span),
        Property::MaxAddTemperature => put(&mut facts.max_add_temperature, || cited(value.value.or(value.maximum))),
        Property::HeatSensitive if value.word() == Some("yes") => put(&mut facts.heat_sensitive, || Some(citation)),
        Property::Charge => put(&mut facts.charge, || {
            let charge = match value.word()? {
                "anionic" => Charge::Anionic,
                "cationic" => Charge::Cationic,
                "amphoteric" => Charge::Amphoteric,
                _ => Charge::NonIonic,
            };
            Some(Cited { value: charge, citation })
        }),
        Property::MeltingPoint => put(&mut facts.melting_point, || cited(value.maximum.or(value.value))),
        Property::Hlb => put(&mut facts.hlb, || cited(value.value)),
        Property::RequiredHlb => put(&mut facts.required_hlb, || cited(value.value)),
        Property::RequiredHlbWaterInOil => put(&mut facts.required_hlb_water_in_oil, || cited(value.value)),
        Property::WaterContent => put(&mut facts.water_content, || cited(value.value)),
        Property::Density => put(&mut facts.density, || cited(value.value)),
        _ => {}
    }
}

fn put<T>(place: &mut Option<T>, value: impl FnOnce() -> Option<T>) {
    if place.is_none() {
        *place = value();
    }
}

fn add_traits(facts: &mut BTreeMap<ConstituentId, Facts>) {
    for row in traits() {
        let (Some(constituent), Some(value)) = (row.constituent, trait_of(row.word)) else { continue };
        let citation = cite(&row.origin);
        facts.entry(constituent).or_default().traits.push(Cited { value, citation });
    }
}

/// The trait behind a word of the data file.
#[must_use]
pub fn trait_of(word: &str) -> Option<Trait> {
    Trait::WORDS.iter().find(|(known, _)| *known == word).map(|(_, value)| *value)
}

/// The published figures, unless they are only those of [`GIVES_WAY`] and another source states less. Recalled figures
/// extend published ones to temperatures they do not reach.
fn add_water_solubility(facts: &mut BTreeMap<ConstituentId, Facts>) {
    let mut rows: BTreeMap<ConstituentId, Vec<(Point, bool)>> = BTreeMap::new();
    let mut miscible: BTreeMap<ConstituentId, Citation> = BTreeMap::new();
    for row in water_solubilities() {
        let Some(constituent) = row.constituent else { continue };
        let citation = cite(&row.origin);
        match (number(row.grams_per_100_g_water), number(row.temperature)) {
            (Some(grams), Some(temperature)) => {
                let factor = number(row.factor).unwrap_or(1.0);
                let point = Point { temperature, grams, factor, citation };
                rows.entry(constituent).or_default().push((point, row.origin.source.slug == GIVES_WAY));
            }
            _ if ["miscible", "very soluble"].contains(&row.described) => {
                miscible.insert(constituent, citation);
            }
            _ => {}
        }
    }
    for (constituent, points) in rows {
        let those = |published: bool, gives_way: bool| -> Vec<Point> {
            let wanted = points.iter().filter(|(point, of_dataset)| {
                (point.citation.basis == Basis::Published) == published && *of_dataset == gives_way
            });
            wanted.map(|(point, _)| *point).collect()
        };
        let (published, dataset, recalled) = (those(true, false), those(true, true), those(false, false));
        let mut chosen = if !published.is_empty() {
            published
        } else if lowest(&recalled) < lowest(&dataset) {
            recalled.clone()
        } else {
            dataset
        };
        let far = |point: &Point| chosen.iter().all(|other| (other.temperature - point.temperature).abs() > 8.0);
        let beyond: Vec<Point> = recalled.iter().filter(|point| far(point)).copied().collect();
        let rising = |point: &Point, others: &[Point]| {
            others.iter().all(|other| (other.temperature < point.temperature) == (other.grams < point.grams))
        };
        let beyond: Vec<Point> = beyond.into_iter().filter(|point| rising(point, &chosen)).collect();
        chosen.extend(beyond);
        let own = facts.entry(constituent).or_default();
        own.water_solubility = Curve::through(chosen).map(WaterSolubility::Limited);
    }
    for (constituent, citation) in miscible {
        put(&mut facts.entry(constituent).or_default().water_solubility, || Some(WaterSolubility::Miscible(citation)));
    }
}

fn lowest(points: &[Point]) -> f64 {
    points.iter().map(|point| point.grams).fold(f64::INFINITY, f64::min)
}

/// What pure cosolvents and oils dissolve at room temperature, the lowest figure of each.
fn add_solvents(facts: &mut BTreeMap<ConstituentId, Facts>) {
    for row in cosolvent_solubilities() {
        let (Some(constituent), Some(value), Some(temperature)) =
            (row.constituent, number(row.value), number(row.temperature))
        else {
            continue;
        };
        if row.record != "solubility" || number(row.cosolvent_percent) != Some(100.0) || value <= 0.0 {
            continue;
        }
        let own = facts.entry(constituent).or_default();
        let citation = cite(&row.origin);
        let kind = match row.cosolvent {
            "glycerin" => Cosolvent::Glycerin,
            "propylene glycol" => Cosolvent::Glycol,
            "ethanol" => Cosolvent::Ethanol,
            oil if oil.ends_with(" oil") => {
                own.oil_solubility.push(OilSolubility { temperature, grams_per_100_g: value, oil, citation });
                continue;
            }
            _ => continue,
        };
        let in_water = match &own.water_solubility {
            Some(WaterSolubility::Limited(curve)) => {
                stillroom_core::chemistry::Temperature::new(temperature).and_then(|at| curve.at(at))
            }
            _ => continue,
        };
        let (Ok(in_water), true) = (in_water, ROOM.contains(&temperature)) else { continue };
        let power = (value / in_water).log10();
        match own.cosolvent_power.iter_mut().find(|(known, _)| *known == kind) {
            Some((_, known)) if known.value <= power => {}
            Some((_, known)) => *known = Cited { value: power, citation },
            None => own.cosolvent_power.push((kind, Cited { value: power, citation })),
        }
    }
}

fn add_acids(facts: &mut BTreeMap<ConstituentId, Facts>) {
    for row in acid_constants() {
        let Some(constituent) = row.constituent else { continue };
        // Bases and zwitterions dissolve the other way round; strong acids are never undissociated here.
        if number(row.charge_fully_protonated) != Some(0.0) || !row.described.is_empty() {
            continue;
        }
        let steps: Vec<f64> = [row.pka_1, row.pka_2, row.pka_3, row.pka_4].into_iter().map_while(number).collect();
        if !steps.is_empty() {
            let citation = cite(&row.origin);
            put(&mut facts.entry(constituent).or_default().acid, || Some(Acid { steps, citation }));
        }
    }
    for row in acid_salts() {
        let (Some(constituent), Some(acid), Some(equivalents)) = (row.constituent, row.acid, number(row.equivalents))
        else {
            continue;
        };
        let salt = SaltOf { acid, equivalents, citation: cite(&row.origin) };
        facts.entry(constituent).or_default().salt_of = Some(salt);
    }
}

fn add_partitions(facts: &mut BTreeMap<ConstituentId, Facts>) {
    for row in partitions() {
        let (Some(constituent), Some(value)) = (row.constituent, number(row.value)) else { continue };
        let citation = cite(&row.origin);
        let own = facts.entry(constituent).or_default();
        if row.record == "logKow" {
            put(&mut own.log_kow, || Some(Cited { value, citation }));
        }
    }
    // Of several figures for one kind of oil the middle one.
    let mut kinds: BTreeMap<(ConstituentId, OilKind), Vec<OilPartition>> = BTreeMap::new();
    for row in oil_partitions() {
        let (Some(constituent), Some(coefficient), Some(kind)) =
            (row.constituent, number(row.coefficient), oil_kind(row.oil_class))
        else {
            continue;
        };
        let partition = OilPartition { kind, oil: row.oil, coefficient, citation: cite(&row.origin) };
        kinds.entry((constituent, kind)).or_default().push(partition);
    }
    for ((constituent, _), mut figures) in kinds {
        figures.sort_by(|a, b| a.coefficient.total_cmp(&b.coefficient));
        let middle = figures.get(figures.len() / 2).copied();
        facts.entry(constituent).or_default().oil_partition.extend(middle);
    }
    for row in micelle_bindings() {
        let (Some(constituent), Some(value)) = (row.constituent, number(row.k_per_percent)) else { continue };
        let binding = Cited { value, citation: cite(&row.origin) };
        put(&mut facts.entry(constituent).or_default().micelle_binding, || Some(binding));
    }
}

/// The kind of oil behind a word of the data file.
#[must_use]
pub fn oil_kind(word: &str) -> Option<OilKind> {
    Some(match word {
        "triglyceride" => OilKind::Triglyceride,
        "ester" => OilKind::Ester,
        "hydrocarbon" => OilKind::Hydrocarbon,
        "silicone" => OilKind::Silicone,
        _ => return None,
    })
}

/// The kind of microbe behind a word of the data file, by its place in `Microbe::ALL`.
#[must_use]
pub fn microbe_of(word: &str) -> Option<usize> {
    ["gram-positive", "gram-negative", "yeast", "mould"].iter().position(|known| *known == word)
}

/// How many times the concentration that stops is taken to kill, and for bacteria of preservatives that only stop them: a
/// choice made here, after published challenge tests of the commonest systems; no standard states one.
const TO_KILL: f64 = 2.0;
const TO_KILL_BACTERIA: f64 = 4.0;
/// Preservatives beside acids that stop bacteria long before they kill them.
const ONLY_STOP: [&str; 7] = [
    "Methylparaben",
    "Ethylparaben",
    "Propylparaben",
    "Butylparaben",
    "Chlorphenesin",
    "Iodopropynyl Butylcarbamate",
    "Caprylhydroxamic Acid",
];

/// What stops each kind of microbe: of one organism the geometric mean of its figures, of several of one kind the hardiest.
fn inhibitions(constituent: ConstituentId, is_acid: bool) -> [Option<Inhibition>; 4] {
    let mut organisms: BTreeMap<(usize, &str), (f64, f64, Citation)> = BTreeMap::new();
    let mut only_stops = is_acid;
    for row in inhibitory_concentrations().iter().filter(|row| row.constituent == Some(constituent)) {
        let (Some(kind), Some(percent)) = (microbe_of(row.group), number(row.acting_percent)) else { continue };
        only_stops |= ONLY_STOP.contains(&row.inci);
        let (sum, count, _) = organisms.entry((kind, row.organism)).or_insert((0.0, 0.0, cite(&row.origin)));
        *sum += percent.ln();
        *count += 1.0;
    }
    let mut found = [None; 4];
    for ((kind, _), (sum, count, citation)) in organisms {
        let percent = (sum / count).exp();
        let to_kill = if kind < 2 && only_stops { TO_KILL_BACTERIA } else { TO_KILL };
        let hardier = found[kind].is_none_or(|known: Inhibition| known.percent < percent);
        if hardier {
            found[kind] = Some(Inhibition { percent, to_kill, citation });
        }
    }
    found
}

fn add_preservatives(facts: &mut BTreeMap<ConstituentId, Facts>) -> Vec<ConstituentId> {
    let mut found = Vec::new();
    for row in preservative_spectra() {
        let Some(constituent) = row.constituent else { continue };
        let practice = preservative_practice().iter().find(|each| each.constituent == row.constituent);
        let span = |low: Option<Decimal>, high: Option<Decimal>, citation| {
            Some(Cited { value: Span { low: number(low)?, high: number(high)? }, citation })
        };
        let strengths = [row.gram_positive, row.gram_negative, row.yeast, row.mould].map(|word| match word {
            "good" => Strength::Good,
            "fair" => Strength::Fair,
            "weak" => Strength::Weak,
            _ => Strength::None,
        });
        found.push(constituent);
        let own = facts.entry(constituent).or_default();
        // A phenol is no acid where microbes grow.
        let is_acid = own.acid.as_ref().is_some_and(|acid| acid.steps.first().is_some_and(|pka| *pka < 7.0));
        own.preservative = Some(Preservative {
            usual: practice
                .and_then(|each| span(each.usual_percent_minimum, each.usual_percent_maximum, cite(&each.origin))),
            ph: practice.and_then(|each| span(each.ph_minimum, each.ph_maximum, cite(&each.origin))),
            max_add_temperature: practice.and_then(|each| {
                Some(Cited { value: number(each.max_add_temperature)?, citation: cite(&each.origin) })
            }),
            carries: row.role == "carrier",
            spectrum: strengths,
            inhibits: inhibitions(constituent, is_acid),
            citation: cite(&row.origin),
        });
    }
    // What cures reach for first: the commonest systems of the trade.
    let place = |id: &ConstituentId| {
        let inci = Catalogue::get().constituent(*id).map_or("", |constituent| constituent.inci.as_str());
        FIRST_CHOICE.iter().position(|first| *first == inci).unwrap_or(FIRST_CHOICE.len())
    };
    found.sort_by_key(|id| (place(id), *id));
    found
}

/// Preservatives in common use, in the order in which cures try them.
const FIRST_CHOICE: [&str; 7] = [
    "Phenoxyethanol",
    "Ethylhexylglycerin",
    "Sodium Benzoate",
    "Potassium Sorbate",
    "Caprylyl Glycol",
    "Benzyl Alcohol",
    "Dehydroacetic Acid",
];

fn add_oils(facts: &mut BTreeMap<ConstituentId, Facts>) {
    for row in essential_oil_constituents() {
        let Some(constituent) = row.constituent else { continue };
        facts.entry(constituent).or_default().inside.push(InsideOil {
            name: row.inside,
            allergen: Some(row.allergen).filter(|name| !name.is_empty()),
            typical: number(row.typical),
            most: number(row.maximum),
            citation: cite(&row.origin),
        });
    }
}

/// Solvents by their INCI names, with their density at 25 °C.
fn find_cosolvents(facts: &BTreeMap<ConstituentId, Facts>) -> Vec<(ConstituentId, Cosolvent, f64)> {
    const NAMES: [(&str, Cosolvent, f64); 8] = [
        ("Glycerin", Cosolvent::Glycerin, 1.258),
        ("Propylene Glycol", Cosolvent::Glycol, 1.033),
        ("Propanediol", Cosolvent::Glycol, 1.050),
        ("Butylene Glycol", Cosolvent::Glycol, 1.000),
        ("Pentylene Glycol", Cosolvent::Glycol, 0.970),
        ("Dipropylene Glycol", Cosolvent::Glycol, 1.020),
        ("Alcohol", Cosolvent::Ethanol, 0.785),
        ("Alcohol Denat.", Cosolvent::Ethanol, 0.785),
    ];
    let constituents = Catalogue::get().constituents();
    constituents
        .filter(|constituent| facts.contains_key(&constituent.id))
        .filter_map(|constituent| {
            let (_, kind, density) = NAMES.iter().find(|(inci, ..)| *inci == constituent.inci)?;
            Some((constituent.id, *kind, *density))
        })
        .collect()
}

/// Substances in common use that cures add, by their INCI names.
fn find_remedies() -> Remedies {
    const EMULSIFIERS: [&str; 6] = [
        "Polysorbate 60",
        "Sorbitan Stearate",
        "Polysorbate 80",
        "Sorbitan Oleate",
        "Polysorbate 20",
        "Sorbitan Laurate",
    ];
    let find = |inci: &str| {
        let mut constituents = Catalogue::get().constituents();
        constituents.find(|constituent| constituent.inci == inci).map(|constituent| constituent.id)
    };
    Remedies {
        emulsifiers: EMULSIFIERS.iter().filter_map(|inci| find(inci)).collect(),
        lamellar_emulsifier: find("Cetearyl Olivate"),
        solubiliser: find("Polysorbate 20"),
        salt_tolerant_thickener: find("Xanthan Gum"),
        dispersant: find("Glycerin"),
        oil_antioxidant: find("Tocopherol"),
        ready_systems: find_ready_systems(),
        acid: find("Citric Acid"),
        base: find("Arginine"),
    }
}

/// Emulsifiers that are sold together: what emulsifies in each composite of emulsifiers that has two of them at least.
fn find_ready_systems() -> Vec<Vec<ConstituentId>> {
    let catalogue = Catalogue::get();
    let mut found = Vec::new();
    for material in catalogue.materials().filter(|material| material.class == Class::Emulsifier) {
        let Makeup::Composite(parts) = &material.makeup else { continue };
        let of_part = |part: &stillroom_core::Part| match catalogue.material(part.material)?.makeup {
            Makeup::Simple(id) => catalogue.constituent(id).filter(|it| it.class == Class::Emulsifier).map(|_| id),
            Makeup::Composite(_) => None,
        };
        let mut system: Vec<ConstituentId> = parts.iter().filter_map(of_part).collect();
        system.sort_unstable();
        if system.len() > 1 {
            found.push(system);
        }
    }
    found
}

fn gather_limits() -> Vec<Limit> {
    let mut limits: Vec<Limit> = Vec::new();
    for row in preservative_limits() {
        if row.leave_on_limit.is_none() && row.rinse_off_limit.is_none() {
            continue;
        }
        let inner = row.expressed_as.split_once('(').map(|(_, inner)| inner.trim_end_matches(')'));
        let converted = (number(row.expressed_as_molar_mass), number(row.molar_mass), number(row.equivalents_per_mole));
        let factor = match converted {
            (Some(target), Some(own), Some(equivalents)) => target * equivalents / own,
            _ => 1.0,
        };
        // Entry 12 limits each ester by itself, entry 12a propyl and butyl together; salts count with their ester.
        let subject = match row.entry {
            "12" => row.inci.strip_prefix("Sodium ").map_or(row.inci, capitalised),
            "12a" => "Propylparaben and Butylparaben",
            _ => inner.map_or(row.inci, capitalised),
        };
        let (members, named) = match row.constituent {
            Some(constituent) => (vec![(constituent, factor)], Vec::new()),
            None => (Vec::new(), vec![(row.inci, factor)]),
        };
        match limits.iter_mut().find(|limit| limit.subject == subject && limit.jurisdiction == row.jurisdiction) {
            Some(limit) => {
                limit.members.extend(members);
                limit.named.extend(named);
            }
            None => limits.push(Limit {
                subject,
                group: "",
                kinds: Vec::new(),
                named,
                from: "",
                members,
                inside_oils: Vec::new(),
                expressed_as: inner.unwrap_or(""),
                leave_on: number(row.leave_on_limit),
                rinse_off: number(row.rinse_off_limit),
                least_ph: None,
                authority: Authority::Law,
                preservative: row.status == "annex_v",
                jurisdiction: row.jurisdiction,
                as_of: row.as_of,
                entry: row.entry,
                conditions: row.conditions,
                citation: cite(&row.origin),
            }),
        }
    }
    // Rows of Annex V by kind of product stand beside the entry they are of.
    let grouped: Vec<&'static str> =
        restrictions().iter().filter(|row| row.entry.starts_with("V/")).map(|row| row.group).collect();
    for limit in &mut limits {
        if grouped.contains(&limit.subject) {
            limit.group = limit.subject;
        }
    }
    for row in restrictions() {
        let of_row = || limit_members().iter().filter(|member| member.subject == row.subject);
        let own = of_row().next().is_some();
        let counts = |member: &&LimitMember| member.subject == if own { row.subject } else { row.group };
        let members = limit_members().iter().filter(counts);
        let substances = members.clone().filter_map(|member| Some((member.constituent?, number(member.factor)?)));
        let inside = members.map(|member| member.inside).filter(|name| !name.is_empty());
        let is_law = !["guidance", "-"].contains(&row.entry) && !row.jurisdiction.contains("guidance");
        limits.push(Limit {
            subject: row.subject,
            group: row.group,
            kinds: row.kinds.split(';').filter_map(ProductKind::from_slug).collect(),
            named: row.named.split(';').filter(|name| !name.is_empty()).map(|name| (name, 1.0)).collect(),
            from: row.from,
            members: substances.collect(),
            inside_oils: inside.collect(),
            expressed_as: "",
            leave_on: number(row.leave_on_limit),
            rinse_off: number(row.rinse_off_limit),
            least_ph: number(row.least_ph),
            authority: if is_law { Authority::Law } else { Authority::Advice },
            preservative: row.entry.starts_with("V/"),
            jurisdiction: row.jurisdiction,
            as_of: row.as_of,
            entry: row.entry,
            conditions: row.conditions,
            citation: cite(&row.origin),
        });
    }
    limits
}

/// The INCI name behind a name in small letters, where there is one.
fn capitalised(name: &'static str) -> &'static str {
    let known = preservative_limits().iter().find(|row| row.inci.eq_ignore_ascii_case(name));
    known.map_or(name, |row| row.inci)
}

fn gather_allergens() -> Vec<Allergen> {
    let named = fragrance_allergens().iter().filter_map(|row| {
        let oils = essential_oil_constituents().iter().filter(|oil| oil.label_name_of_the_oil == row.name);
        let mut members: Vec<ConstituentId> =
            row.constituent.into_iter().chain(oils.filter_map(|oil| oil.constituent)).collect();
        members.sort_unstable();
        members.dedup();
        Some(Allergen {
            name: row.name,
            members,
            leave_on: number(row.leave_on_threshold)?,
            rinse_off: number(row.rinse_off_threshold)?,
            jurisdiction: row.jurisdiction,
            entry: row.entry,
            is_of_2023: row.listed_by.contains("2023/1545"),
            citation: cite(&row.origin),
        })
    });
    named.collect()
}

/// The sentences that the law asks of a label for the sake of a substance.
#[must_use]
pub fn label_conditions() -> &'static [Condition] {
    static CONDITIONS: OnceLock<Vec<Condition>> = OnceLock::new();
    let kinds = |text: &str| text.split(';').filter_map(ProductKind::from_slug).collect();
    CONDITIONS.get_or_init(|| {
        crate::reference::label_conditions()
            .iter()
            .filter_map(|row| {
                Some(Condition {
                    about: row.constituent?,
                    statement: Statement::from_code(row.statement)?,
                    only: kinds(row.only_kinds),
                    except: kinds(row.not_kinds),
                    purpose: match row.used {
                        "leave-on" => Some(Purpose::LeaveOn),
                        "rinse-off" => Some(Purpose::RinseOff),
                        _ => None,
                    },
                    above: number(row.above).unwrap_or(0.0),
                    dry: row.form == "dry",
                    also_uk: row.also_uk == "yes",
                    citation: cite(&row.origin),
                })
            })
            .collect()
    })
}
