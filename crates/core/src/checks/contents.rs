//! A formula as the checks see it: what is really in the jar, with what is known of each substance.

use super::facts::{Cosolvent, Facts, Knowledge, Limit, Trait};
use crate::chemistry::ph::PhError;
use crate::chemistry::ph::predict::Prediction;
use crate::chemistry::{Band, Temperature};
use crate::composition::Contribution;
use crate::evaluation::Evaluation;
use crate::formula::{Formula, Line, LineId, Phase};
use crate::material::{ConstituentId, Material, MaterialSource};
use crate::quantity::Celsius;
use crate::source::Cited;
use core::cell::OnceCell;
use litemap::LiteMap;
use stillroom_terms::Class;
use stillroom_terms::{PhaseKind, Purpose};

/// What is known of a substance nobody described.
pub(super) static NOTHING: Facts = Facts {
    molar_mass: None,
    log_kow: None,
    water_solubility: None,
    cosolvent_power: Vec::new(),
    oil_solubility: Vec::new(),
    acid: None,
    salt_of: None,
    brings: None,
    usual_percent: None,
    usual_ph: None,
    max_add_temperature: None,
    heat_sensitive: None,
    charge: None,
    melting_point: None,
    hlb: None,
    required_hlb: None,
    required_hlb_water_in_oil: None,
    water_content: None,
    preservative: None,
    oil_partition: Vec::new(),
    micelle_binding: None,
    inside: Vec::new(),
    density: None,
    traits: Vec::new(),
};

/// Density of an oil whose own is not known, in g/mL.
pub(super) const USUAL_OIL_DENSITY: f64 = 0.91;

/// The temperatures a product has to bear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Conditions {
    /// A room.
    pub room: Temperature,
    /// The coldest place it is kept in.
    pub cold: Temperature,
}

impl Conditions {
    /// Cold storage unless the maker sets another: a refrigerator.
    pub const USUAL_COLD: f64 = 5.0;

    /// A room of 25 °C and the given cold storage.
    #[must_use]
    pub fn with_cold(cold: Celsius) -> Self {
        Self { room: Temperature::TWENTY_FIVE, cold: cold.into() }
    }
}

impl Default for Conditions {
    fn default() -> Self {
        let cold = Temperature::new(Self::USUAL_COLD).unwrap_or(Temperature::TWENTY);
        Self { room: Temperature::TWENTY_FIVE, cold }
    }
}

/// One substance in the jar.
#[derive(Debug, Clone, Copy)]
pub struct Present<'a> {
    /// Which.
    pub id: ConstituentId,
    /// What it is.
    pub class: Class,
    /// Percent of the product.
    pub percent: f64,
    /// Percent of the product without what is meant to stay solid.
    pub dissolving: f64,
    /// What is known of it.
    pub facts: &'a Facts,
    /// Which line brings how much.
    pub trail: &'a [Contribution],
}

impl Present<'_> {
    /// The lines that bring it.
    pub fn lines(&self) -> impl Iterator<Item = LineId> {
        self.trail.iter().filter(|each| !each.percent.is_zero()).map(|each| each.line)
    }

    /// Whether it belongs to the oil of an emulsion.
    #[must_use]
    pub const fn is_oil(&self) -> bool {
        is_oil(self.class)
    }
}

/// Whether a class belongs to the oil of an emulsion.
#[must_use]
pub const fn is_oil(class: Class) -> bool {
    matches!(
        class,
        Class::Oil
            | Class::Butter
            | Class::Emollient
            | Class::Wax
            | Class::FattyAlcohol
            | Class::FattyAcid
            | Class::EssentialOil
            | Class::Fragrance
    )
}

/// How a pH is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PhKnown {
    /// The maker aims at it.
    AimedAt,
    /// The maker measured it.
    Measured,
    /// It is computed from what is in the jar.
    Predicted,
}

/// A pH with how far it may be off: a verdict is made at its worse end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PhBand {
    /// The pH.
    pub value: f64,
    /// How it is known.
    pub known: PhKnown,
    low: f64,
    high: f64,
}

impl PhBand {
    /// A pH that is aimed at: it may be off by 0.2 (common practice).
    #[must_use]
    pub const fn aimed_at(value: f64) -> Self {
        Self { value, known: PhKnown::AimedAt, low: value - 0.2, high: value + 0.2 }
    }

    /// A pH measured with a meter: it may be off by 0.1 (common practice).
    #[must_use]
    pub const fn measured(value: f64) -> Self {
        Self { value, known: PhKnown::Measured, low: value - 0.1, high: value + 0.1 }
    }

    /// A predicted pH, which may be off further on one side than on the other.
    #[must_use]
    pub const fn predicted(band: Band) -> Self {
        Self { value: band.estimate, known: PhKnown::Predicted, low: band.low, high: band.high }
    }

    /// The same, moved by so much.
    #[must_use]
    pub const fn moved(self, by: f64) -> Self {
        Self { value: self.value + by, known: self.known, low: self.low + by, high: self.high + by }
    }

    /// The acid end.
    #[must_use]
    pub const fn low(self) -> f64 {
        self.low
    }

    /// The alkaline end.
    #[must_use]
    pub const fn high(self) -> f64 {
        self.high
    }

    /// What a bound from below is held against: what the maker states counts as it is stated, what is predicted at its acid
    /// end.
    #[must_use]
    pub const fn at_least(self) -> f64 {
        match self.known {
            PhKnown::Predicted => self.low,
            PhKnown::AimedAt | PhKnown::Measured => self.value,
        }
    }

    /// What a bound from above is held against, likewise.
    #[must_use]
    pub const fn at_most(self) -> f64 {
        match self.known {
            PhKnown::Predicted => self.high,
            PhKnown::AimedAt | PhKnown::Measured => self.value,
        }
    }

    /// Key of how it is known, for a sentence.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self.known {
            PhKnown::AimedAt => "ph.aimed-at",
            PhKnown::Measured => "ph.measured",
            PhKnown::Predicted => "ph.predicted",
        }
    }
}

/// Less liquid than this, in percent of the product, dissolves nothing to speak of.
const LITTLE_SOLVENT: f64 = 5.0;

/// A formula worked out, with what is known of all that is in it. Sums run over the composition, most first, so that
/// nothing here depends on the order of the lines.
pub struct Contents<'a> {
    /// The formula.
    pub formula: &'a Formula,
    /// What it comes to.
    pub evaluation: &'a Evaluation,
    /// Where materials are looked up.
    pub source: &'a dyn MaterialSource,
    /// Where facts are looked up.
    pub knowledge: &'a dyn Knowledge,
    /// The temperatures it has to bear.
    pub conditions: Conditions,
    /// Whether pictures are wanted.
    pub charts: bool,
    /// What is in the jar, most first.
    pub present: Vec<Present<'a>>,
    /// Water from every source, in percent.
    pub water: f64,
    /// Oil, in percent.
    pub oil: f64,
    /// Cosolvents in percent, and their volume for 100 g of product.
    pub cosolvents: Vec<(Cosolvent, f64, f64)>,
    /// Limits that something in the jar counts towards.
    pub touched: Vec<&'a Limit>,
    places: LiteMap<ConstituentId, usize>,
    pub(super) prediction: OnceCell<Result<Prediction, PhError>>,
    pub(super) ph: OnceCell<Option<PhBand>>,
}

impl<'a> Contents<'a> {
    /// Looks a formula's composition up in what is known.
    #[must_use]
    pub fn new(
        formula: &'a Formula,
        evaluation: &'a Evaluation,
        source: &'a dyn MaterialSource,
        knowledge: &'a dyn Knowledge,
        conditions: Conditions,
    ) -> Self {
        let suspended: Vec<LineId> = formula.lines().filter(|line| line.suspended).map(|line| line.id).collect();
        let present: Vec<Present<'a>> = evaluation
            .composition
            .entries
            .iter()
            .map(|entry| {
                let percent = entry.percent.to_physics();
                let solid = entry.trail.iter().filter(|each| suspended.contains(&each.line));
                let solid: f64 = solid.map(|each| each.percent.to_physics()).sum();
                Present {
                    id: entry.constituent,
                    class: source.constituent(entry.constituent).map_or(Class::Other, |constituent| constituent.class),
                    percent,
                    dissolving: if suspended.is_empty() { percent } else { (percent - solid).max(0.0) },
                    facts: knowledge.facts(entry.constituent).unwrap_or(&NOTHING),
                    trail: &entry.trail,
                }
            })
            .collect();
        let mut contents = Self {
            formula,
            evaluation,
            source,
            knowledge,
            conditions,
            charts: false,
            places: present.iter().enumerate().map(|(place, each)| (each.id, place)).collect(),
            water: present.iter().map(water_of).sum(),
            oil: present.iter().filter(|each| each.is_oil()).map(|each| each.percent).sum(),
            cosolvents: Vec::new(),
            touched: Vec::new(),
            present,
            prediction: OnceCell::new(),
            ph: OnceCell::new(),
        };
        contents.cosolvents = contents.find_cosolvents();
        contents.touched = knowledge.limits().iter().filter(|limit| contents.touches(limit)).collect();
        contents
    }

    /// Whether something in the jar counts towards a limit.
    fn touches(&self, limit: &Limit) -> bool {
        let inside =
            || self.present.iter().any(|oil| oil.facts.inside.iter().any(|it| limit.inside_oils.contains(&it.name)));
        self.counting(limit).any(|(id, _)| self.percent_of(id) > 0.0) || !limit.inside_oils.is_empty() && inside()
    }

    fn find_cosolvents(&self) -> Vec<(Cosolvent, f64, f64)> {
        let mut found: Vec<(Cosolvent, f64, f64)> = Vec::new();
        for each in &self.present {
            let kinds = self.knowledge.cosolvent(each.id);
            let Some((kind, density)) = kinds else { continue };
            let volume = each.percent / density;
            match found.iter_mut().find(|(known, ..)| *known == kind) {
                Some((_, percent, sum)) => {
                    *percent += each.percent;
                    *sum += volume;
                }
                None => found.push((kind, each.percent, volume)),
            }
        }
        found
    }

    /// A substance, if it is in the jar.
    #[must_use]
    pub fn find(&self, id: ConstituentId) -> Option<&Present<'a>> {
        self.places.get(&id).and_then(|place| self.present.get(*place))
    }

    /// Percent of a substance, nothing if it is not there.
    #[must_use]
    pub fn percent_of(&self, id: ConstituentId) -> f64 {
        self.find(id).map_or(0.0, |each| each.percent)
    }

    /// Substances with a trait, most first.
    pub fn with(&self, wanted: Trait) -> impl Iterator<Item = &Present<'a>> {
        self.present.iter().filter(move |each| each.percent > 0.0 && each.facts.has(wanted).is_some())
    }

    /// The maximum of a limit by how the product is used.
    #[must_use]
    pub fn by_purpose<T>(&self, leave_on: T, rinse_off: T) -> T {
        match self.formula.purpose {
            Purpose::LeaveOn => leave_on,
            Purpose::RinseOff => rinse_off,
        }
    }

    /// Volume of an oil in 100 g of product, in millilitres.
    pub(super) fn volume_of(each: &Present<'_>) -> f64 {
        each.percent / each.facts.density.map_or(USUAL_OIL_DENSITY, |density| density.value)
    }

    /// Volume of the oil over volume of the water phase. Nothing without water.
    #[must_use]
    pub fn oil_to_water(&self) -> Option<f64> {
        let oil: f64 = self.present.iter().filter(|each| each.is_oil()).map(Self::volume_of).sum();
        let water = self.solvent_volume();
        (water > 0.0).then(|| oil / water)
    }

    /// Whether there is too little liquid for anything to dissolve in: a powder, a salt, a balm.
    #[must_use]
    pub fn is_dry(&self) -> bool {
        self.solvent() < LITTLE_SOLVENT
    }

    /// Volume of water and cosolvents in 100 g of product, in millilitres.
    #[must_use]
    pub fn solvent_volume(&self) -> f64 {
        self.water + self.cosolvents.iter().map(|(.., volume)| volume).sum::<f64>()
    }

    /// Water and cosolvents, in percent.
    #[must_use]
    pub fn solvent(&self) -> f64 {
        self.water + self.cosolvents.iter().map(|(_, percent, _)| percent).sum::<f64>()
    }

    /// The phase a line stands in.
    #[must_use]
    pub fn phase_of(&self, line: LineId) -> Option<&'a Phase> {
        self.formula.place_of(line).and_then(|place| self.formula.phases.get(place.phase))
    }

    /// The material of a line.
    #[must_use]
    pub fn material_of(&self, line: &Line) -> Option<&'a Material> {
        self.source.material(line.material)
    }

    /// The temperature a phase is brought to, if it is heated: what the maker states, or what such a phase usually is.
    #[must_use]
    pub fn heat_of(&self, phase: &Phase) -> Option<f64> {
        let heated = matches!(phase.kind, PhaseKind::HeatedWater | PhaseKind::HeatedOil);
        heated.then(|| phase.temperature.map_or(USUAL_HEAT, Celsius::to_physics))
    }

    /// Mass of the batch that is planned, in grams.
    #[must_use]
    pub fn batch(&self) -> Option<f64> {
        self.evaluation.batch.as_ref().ok().map(|batch| batch.mass.to_physics())
    }

    /// Percent of the product a line makes.
    #[must_use]
    pub fn share_of(&self, line: LineId) -> f64 {
        let share = self.evaluation.lines.iter().find(|(share, _)| share.line == line);
        share.map_or(0.0, |(share, _)| share.percent.to_physics())
    }
}

/// Temperature of a heated phase of which none is stated, in degrees Celsius: common practice.
pub const USUAL_HEAT: f64 = 70.0;

/// Percent of water a substance brings.
fn water_of(each: &Present<'_>) -> f64 {
    each.percent * water_share(each)
}

/// Share of a substance that is water.
pub(super) fn water_share(each: &Present<'_>) -> f64 {
    match each.facts.water_content {
        Some(Cited { value, .. }) => value / 100.0,
        None if each.class == Class::Water => 1.0,
        None => 0.0,
    }
}
