//! Will it keep: what multiplies at a water activity, and what that asks for.
//!
//! The judgement rests on the upper end of the water activity alone, and says what it cannot say: below a minimum nothing
//! of that kind *multiplies*, but cells and spores survive, and a drop of condensate on the surface is water.

use crate::chemistry::interpolation::solve_rising;
use crate::chemistry::water_activity::glycerol_band;
use crate::chemistry::{Band, MassFraction};
use serde::{Deserialize, Serialize};

/// Kind of organism.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// Bacteria.
    Bacterium,
    /// Yeasts.
    Yeast,
    /// Moulds.
    Mould,
}

/// How far a value can be traced.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Basis {
    /// Read in a public copy of the source.
    Published,
    /// Recalled from the source and not read again.
    Memory,
}

/// An organism and the least water activity at which it was seen to multiply.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Organism {
    /// Scientific name.
    pub name: &'static str,
    /// Kind.
    pub kind: Kind,
    /// Least water activity for growth.
    pub minimum: f64,
    /// Where it was published.
    pub source: &'static str,
    /// How far it can be traced.
    pub basis: Basis,
}

const BAD_BUG_BOOK: &str = "FDA Bad Bug Book (1992), table of growth factors";
const PATHOGENS: &str = "food pathogen control data summary citing Hauschild (1989) and NZFSA (2001)";
const ICMSF: &str = "ICMSF, Microorganisms in Foods 5 (1996), as cited in the FDA Bad Bug Book";
const BEUCHAT: &str = "Beuchat LR, Cereal Foods World 26:345 (1981)";
const REVIEW: &str = "review chapter (2019), doi 10.1016/B978-0-12-816333-7.00009-6, Table 9.3";
const USP_1112: &str = "USP general chapter <1112>, representative microorganisms";
const QUALITY_NOTE: &str = "note of a maker of laboratory equipment on water activity in quality control (2024)";

/// The organisms judged by, with the lowest minimum found for each. Bacteria that need brine (*Halobacterium*, 0.75) are
/// left out: there is no brine in an extract.
pub const ORGANISMS: [Organism; 36] = {
    use Basis::{Memory, Published};
    use Kind::{Bacterium, Mould, Yeast};
    const fn organism(name: &'static str, kind: Kind, minimum: f64, source: &'static str, basis: Basis) -> Organism {
        Organism { name, kind, minimum, source, basis }
    }
    [
        organism("Pseudomonas aeruginosa", Bacterium, 0.97, USP_1112, Memory),
        organism("Clostridium botulinum, non-proteolytic", Bacterium, 0.97, PATHOGENS, Published),
        organism("Clostridium botulinum E", Bacterium, 0.965, BAD_BUG_BOOK, Published),
        organism("Burkholderia cepacia complex", Bacterium, 0.95, QUALITY_NOTE, Published),
        organism("Salmonella spp.", Bacterium, 0.95, BAD_BUG_BOOK, Published),
        organism("Bacillus cereus", Bacterium, 0.95, BAD_BUG_BOOK, Published),
        organism("Vibrio cholerae O1", Bacterium, 0.95, BAD_BUG_BOOK, Published),
        organism("Lactobacillus viridescens", Bacterium, 0.95, USP_1112, Memory),
        organism("Yersinia enterocolitica", Bacterium, 0.945, PATHOGENS, Published),
        organism("Vibrio parahaemolyticus", Bacterium, 0.94, BAD_BUG_BOOK, Published),
        organism("Enterobacter aerogenes", Bacterium, 0.94, USP_1112, Memory),
        organism("Escherichia coli", Bacterium, 0.935, BAD_BUG_BOOK, Published),
        organism("Clostridium botulinum A and B", Bacterium, 0.93, BAD_BUG_BOOK, Published),
        organism("Clostridium perfringens", Bacterium, 0.93, BAD_BUG_BOOK, Published),
        organism("Micrococcus lysodekticus", Bacterium, 0.93, USP_1112, Memory),
        organism("Rhizopus nigricans", Mould, 0.93, USP_1112, Memory),
        organism("Listeria monocytogenes", Bacterium, 0.92, ICMSF, Published),
        organism("Mucor plumbeus", Mould, 0.92, USP_1112, Memory),
        organism("Rhodotorula mucilaginosa", Yeast, 0.92, USP_1112, Memory),
        organism("Bacillus subtilis", Bacterium, 0.90, USP_1112, Memory),
        organism("Saccharomyces cerevisiae", Yeast, 0.90, USP_1112, Memory),
        organism("Torulopsis spp.", Yeast, 0.88, REVIEW, Published),
        organism("Candida albicans", Yeast, 0.87, BEUCHAT, Published),
        organism("Staphylococcus aureus", Bacterium, 0.86, BAD_BUG_BOOK, Published),
        organism("Paecilomyces variotii", Mould, 0.84, USP_1112, Memory),
        organism("Penicillium chrysogenum", Mould, 0.83, USP_1112, Memory),
        organism("Aspergillus fumigatus", Mould, 0.82, USP_1112, Memory),
        organism("Penicillium glabrum", Mould, 0.81, USP_1112, Memory),
        organism("Aspergillus flavus", Mould, 0.78, USP_1112, Memory),
        organism("Fusarium and Penicillium that form mycotoxins", Mould, 0.78, REVIEW, Published),
        organism("Aspergillus brasiliensis", Mould, 0.77, USP_1112, Memory),
        organism("Aspergillus chevalieri, Wallemia sebi", Mould, 0.65, BEUCHAT, Published),
        organism("Saccharomyces bisporus", Yeast, 0.65, BEUCHAT, Published),
        organism("Zygosaccharomyces rouxii", Yeast, 0.60, BEUCHAT, Published),
        organism("Xeromyces bisporus", Mould, 0.61, USP_1112, Memory),
        organism("Monascus bisporus", Mould, 0.60, BEUCHAT, Published),
    ]
};

/// How much can multiply. Each step is named after what joins in at and above its water activity.
///
/// *Source:* Beuchat LR, Cereal Foods World 26:345 (1981).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Step {
    /// Below 0.60: nothing multiplies; cells and spores may survive.
    NothingMultiplies,
    /// From 0.60: osmophilic yeasts, few moulds.
    OsmophilicYeasts,
    /// From 0.65: xerophilic moulds.
    XerophilicMoulds,
    /// From 0.75: moulds that form mycotoxins; bacteria that live in brine.
    ToxinFormingMoulds,
    /// From 0.80: most moulds, *Staphylococcus aureus* a little above.
    MostMoulds,
    /// From 0.87: many yeasts.
    ManyYeasts,
    /// From 0.91: many bacteria.
    ManyBacteria,
    /// From 0.95: nearly everything.
    NearlyEverything,
}

impl Step {
    /// Every step with the water activity it begins at, from dry to wet.
    pub const ALL: [(Self, f64); 8] = [
        (Self::NothingMultiplies, 0.0),
        (Self::OsmophilicYeasts, 0.60),
        (Self::XerophilicMoulds, 0.65),
        (Self::ToxinFormingMoulds, 0.75),
        (Self::MostMoulds, 0.80),
        (Self::ManyYeasts, 0.87),
        (Self::ManyBacteria, 0.91),
        (Self::NearlyEverything, 0.95),
    ];

    /// The step a water activity stands on. What is no number stands on the wettest.
    #[must_use]
    pub fn at(water_activity: f64) -> Self {
        Self::ALL
            .iter()
            .rev()
            .find(|(_, from)| water_activity >= *from || water_activity.is_nan())
            .map_or(Self::NearlyEverything, |(step, _)| *step)
    }
}

/// Why ISO 29621:2017 counts a product as of low microbiological risk.
///
/// *Source:* ISO 29621:2017, in the words of a test institute's summary.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LowRisk {
    /// Water activity of 0.75 or less.
    WaterActivity,
    /// More than 20 % alcohol.
    Alcohol,
    /// pH of 3.0 or less.
    Acid,
    /// pH of 10.0 or more.
    Alkaline,
}

impl LowRisk {
    /// Greatest water activity of the criterion.
    pub const WATER_ACTIVITY: f64 = 0.75;
    /// Percent of alcohol the criterion asks to exceed. The summary does not say whether by volume or by mass; by mass is
    /// taken, which asks for more.
    pub const ALCOHOL_PERCENT: f64 = 20.0;
    /// Greatest acid pH.
    pub const ACID_PH: f64 = 3.0;
    /// Least alkaline pH.
    pub const ALKALINE_PH: f64 = 10.0;
}

/// Against what a preservative has to work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Spectrum {
    /// Nothing multiplies: none for this liquid as it stands. Diluted in a product it needs what the product needs.
    Nothing,
    /// Few yeasts and moulds, and those slowly: low risk, but not none.
    FewAndSlow,
    /// Yeasts and moulds.
    YeastsAndMoulds,
    /// Bacteria, yeasts and moulds.
    BacteriaYeastsAndMoulds,
}

/// How long to keep it before it is thrown away (common practice, deliberately short; no published rule).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct UseBy {
    /// Days from the day it is made.
    pub days: u32,
    /// Whether only refrigerated.
    pub refrigerated: bool,
}

/// What is known of a liquid beside its water activity.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct Conditions {
    /// Ethanol in percent by mass.
    pub alcohol_percent: f64,
    /// Measured pH.
    pub ph: Option<f64>,
    /// Whether it holds a preservative, in its range, that works against what [`Keeping::needs`] names.
    pub preserved: bool,
}

/// The judgement.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Keeping {
    /// The water activity judged by: the upper end of the band.
    pub upper: f64,
    /// How much can multiply there.
    pub step: Step,
    /// Organisms that can multiply there, the hardiest first.
    pub multiply: Vec<&'static Organism>,
    /// Organisms whose minimum lies above, the nearest first.
    pub held_back: Vec<&'static Organism>,
    /// Against what a preservative has to work.
    pub needs: Spectrum,
    /// Grounds on which ISO 29621 counts it as low risk; none of them replaces clean work.
    pub low_risk: Vec<LowRisk>,
    /// Cautious use-by.
    pub use_by: UseBy,
}

/// Against what a preservative has to work in a liquid of a water activity, an ethanol content and a pH. The one verdict
/// that an extract and a formula share.
///
/// Below 0.60 nothing multiplies. Up to 0.75 (ISO 29621) a few yeasts and moulds do, slowly. Below what *Staphylococcus
/// aureus* asks for no bacterium does, and at pH 3 or less bacteria are held, but no yeast or mould.
#[must_use]
pub fn what_it_needs(water_activity: f64, conditions: &Conditions) -> Spectrum {
    let driest = |wanted: fn(Kind) -> bool| {
        let of_kind = ORGANISMS.iter().filter(|organism| wanted(organism.kind));
        of_kind.map(|organism| organism.minimum).fold(f64::INFINITY, f64::min)
    };
    let alkaline = conditions.ph.is_some_and(|ph| ph >= LowRisk::ALKALINE_PH);
    if water_activity < driest(|_| true) || conditions.alcohol_percent > LowRisk::ALCOHOL_PERCENT {
        Spectrum::Nothing
    } else if water_activity <= LowRisk::WATER_ACTIVITY || alkaline {
        Spectrum::FewAndSlow
    } else if water_activity < driest(|kind| kind == Kind::Bacterium)
        || conditions.ph.is_some_and(|ph| ph <= LowRisk::ACID_PH)
    {
        Spectrum::YeastsAndMoulds
    } else {
        Spectrum::BacteriaYeastsAndMoulds
    }
}

/// Judges whether a liquid keeps, by the upper end of its water activity.
///
/// *Source:* [`ORGANISMS`], [`Step`], [`LowRisk`]; the use-by is common practice.
///
/// ```
/// use stillroom_core::chemistry::{MassFraction, water_activity::glycerol_band};
/// use stillroom_core::extract::keeping::{Conditions, LowRisk, Spectrum, judge_keeping};
/// let at = |w| judge_keeping(glycerol_band(MassFraction::new(w).unwrap()), &Conditions::default());
/// assert_eq!(at(0.30).needs, Spectrum::BacteriaYeastsAndMoulds);
/// assert_eq!(at(0.65).low_risk, [LowRisk::WaterActivity]);
/// assert_eq!(at(0.65).needs, Spectrum::FewAndSlow);
/// assert_eq!(at(0.55).needs, Spectrum::YeastsAndMoulds);
/// assert_eq!(at(0.80).needs, Spectrum::Nothing);
/// ```
#[must_use]
pub fn judge_keeping(water_activity: Band, conditions: &Conditions) -> Keeping {
    // No number counts as water.
    let upper = if water_activity.high.is_nan() { 1.0 } else { water_activity.high };
    let (mut multiply, mut held_back): (Vec<_>, Vec<_>) =
        ORGANISMS.iter().partition(|organism| organism.minimum <= upper);
    for list in [&mut multiply, &mut held_back] {
        list.sort_by(|a: &&Organism, b: &&Organism| a.minimum.total_cmp(&b.minimum));
    }
    let step = Step::at(upper);
    let needs = what_it_needs(upper, conditions);
    let mut low_risk = Vec::new();
    if upper <= LowRisk::WATER_ACTIVITY {
        low_risk.push(LowRisk::WaterActivity);
    }
    if conditions.alcohol_percent > LowRisk::ALCOHOL_PERCENT {
        low_risk.push(LowRisk::Alcohol);
    }
    if let Some(ph) = conditions.ph {
        if ph <= LowRisk::ACID_PH {
            low_risk.push(LowRisk::Acid);
        }
        if ph >= LowRisk::ALKALINE_PH {
            low_risk.push(LowRisk::Alkaline);
        }
    }
    let use_by = be_cautious(step, conditions.preserved || low_risk.contains(&LowRisk::Alcohol));
    Keeping { upper, step, multiply, held_back, needs, low_risk, use_by }
}

/// Common practice, on the short side of it.
const fn be_cautious(step: Step, preserved: bool) -> UseBy {
    let (days, refrigerated) = match step {
        Step::NearlyEverything | Step::ManyBacteria => (3, true),
        Step::ManyYeasts => (7, true),
        Step::MostMoulds => (14, true),
        Step::ToxinFormingMoulds => (30, true),
        Step::XerophilicMoulds => (90, false),
        Step::OsmophilicYeasts => (180, false),
        Step::NothingMultiplies => (365, false),
    };
    if preserved && days < 90 { UseBy { days: 90, refrigerated: false } } else { UseBy { days, refrigerated } }
}

/// The weakest glycerin in water, in percent by mass, whose water activity is at its upper end no higher than this: where
/// a mark stands on the scale from water to pure glycerin. `None` outside 0 to 1.
///
/// ```
/// use stillroom_core::extract::keeping::find_glycerin_percent;
/// let percent = find_glycerin_percent(0.75).unwrap();
/// assert!((59.0..60.0).contains(&percent));
/// assert_eq!(find_glycerin_percent(1.0), Some(0.0));
/// assert_eq!(find_glycerin_percent(-0.1), None);
/// ```
#[must_use]
pub fn find_glycerin_percent(water_activity: f64) -> Option<f64> {
    if !(0.0..=1.0).contains(&water_activity) {
        return None;
    }
    let dried = |w: f64| Some(-glycerol_band(MassFraction::new(w).ok()?).high);
    // Above 95 % the upper end no longer falls: nothing is claimed there.
    solve_rising(0.0, 0.95, -water_activity, dried).map(|w| if w < 1e-9 { 0.0 } else { 100.0 * w })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn drier_never_lets_more_multiply(a in 0.0..=1.0_f64, b in 0.0..=1.0_f64) {
            let (dry, wet) = (a.min(b), a.max(b));
            let judge = |activity| judge_keeping(Band::exact(activity), &Conditions::default());
            let (dry, wet) = (judge(dry), judge(wet));
            prop_assert!(dry.multiply.len() <= wet.multiply.len());
            prop_assert!(dry.step <= wet.step && dry.needs <= wet.needs);
            prop_assert!(dry.use_by.days >= wet.use_by.days);
            prop_assert_eq!(dry.multiply.len() + dry.held_back.len(), ORGANISMS.len());
        }

        #[test]
        fn only_the_upper_end_counts(low in 0.0..0.5_f64, high in 0.5..=1.0_f64) {
            let band = Band { low, estimate: f64::midpoint(low, high), high };
            let judged = judge_keeping(band, &Conditions::default());
            prop_assert_eq!(judged, judge_keeping(Band::exact(high), &Conditions::default()));
        }
    }

    #[test]
    fn steps_and_organisms_tell_the_same_story() {
        for organism in &ORGANISMS {
            assert!((0.60..1.0).contains(&organism.minimum), "{organism:?}");
            assert!(!organism.source.is_empty());
        }
        let mut names: Vec<_> = ORGANISMS.iter().map(|organism| organism.name).collect();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), ORGANISMS.len());
        assert_eq!(Step::at(0.5999), Step::NothingMultiplies);
        assert_eq!(Step::at(0.60), Step::OsmophilicYeasts);
        assert_eq!(Step::at(f64::NAN), Step::NearlyEverything);
    }

    #[test]
    fn what_is_not_known_is_judged_as_water() {
        let unknown = judge_keeping(Band::exact(f64::NAN), &Conditions::default());
        assert_eq!(unknown.needs, Spectrum::BacteriaYeastsAndMoulds);
        assert_eq!(unknown.multiply.len(), ORGANISMS.len());
    }

    #[test]
    fn other_grounds_of_the_standard_are_counted() {
        let wet = Band::exact(0.98);
        let judge =
            |alcohol_percent, ph| judge_keeping(wet, &Conditions { alcohol_percent, ph, preserved: false }).low_risk;
        assert_eq!(judge(20.0, Some(7.0)), []);
        assert_eq!(judge(20.1, Some(3.0)), [LowRisk::Alcohol, LowRisk::Acid]);
        assert_eq!(judge(0.0, Some(10.0)), [LowRisk::Alkaline]);
    }
}
