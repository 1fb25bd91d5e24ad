//! What checks know about substances. Plain data: the catalogue fills it in, a test writes down its own.

use crate::chemistry::ph::Solution;
use crate::chemistry::solubility::Curve;
use crate::material::{ConstituentId, MaterialId};
use crate::product::ProductKind;
use crate::source::{Citation, Cited};

/// From least to most.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// Least.
    pub low: f64,
    /// Most.
    pub high: f64,
}

/// How much of a substance water dissolves.
#[derive(Debug, Clone, PartialEq)]
pub enum WaterSolubility {
    /// As much as one likes.
    Miscible(Citation),
    /// So much, by temperature.
    Limited(Curve),
}

/// Solvents that mix with water and change what it dissolves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Cosolvent {
    /// Glycerin.
    Glycerin,
    /// Propylene glycol; propanediol and butylene glycol are taken as it.
    Glycol,
    /// Ethanol.
    Ethanol,
}

/// How much of a substance an oil dissolves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OilSolubility {
    /// In degrees Celsius.
    pub temperature: f64,
    /// Grams in 100 g of oil.
    pub grams_per_100_g: f64,
    /// Which oil.
    pub oil: &'static str,
    /// Where it was found.
    pub citation: Citation,
}

/// A weak acid that is neutral with every proton on.
#[derive(Debug, Clone, PartialEq)]
pub struct Acid {
    /// Its dissociation constants, first to last.
    pub steps: Vec<f64>,
    /// Where they were found.
    pub citation: Citation,
}

/// A salt of a weak acid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SaltOf {
    /// The acid.
    pub acid: ConstituentId,
    /// Moles of acid in a mole of the salt.
    pub equivalents: f64,
    /// Where that was found.
    pub citation: Citation,
}

/// What a substance brings to the pH.
#[derive(Debug, Clone, PartialEq)]
pub struct Brings {
    /// Acids, bases and ions of a kilogram of it, in no water.
    pub per_kilogram: Solution<'static>,
    /// How far the pKa of what it brings may be off.
    pub spread: f64,
    /// Where its constants were found; nothing for what brings neither acid nor base.
    pub citation: Option<Citation>,
}

/// Charge of what is active in a substance.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Charge {
    /// None.
    NonIonic,
    /// Negative.
    Anionic,
    /// Positive.
    Cationic,
    /// Both.
    Amphoteric,
}

/// Kinds of oil that take up substances alike.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum OilKind {
    /// Triglycerides: vegetable oils and butters, medium-chain triglycerides.
    Triglyceride,
    /// Esters of one alcohol, ethers and fatty alcohols.
    Ester,
    /// Hydrocarbons.
    Hydrocarbon,
    /// Silicones.
    Silicone,
}

/// How a substance parts between oil and water.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OilPartition {
    /// Which kind of oil.
    pub kind: OilKind,
    /// The oil it was measured with, or computed for.
    pub oil: &'static str,
    /// Concentration in oil over concentration in water, of the undissociated form.
    pub coefficient: f64,
    /// Where it was found.
    pub citation: Citation,
}

/// How well a preservative acts on a kind of microbe.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Strength {
    /// Nothing to rely on.
    None,
    /// A little.
    Weak,
    /// Some.
    Fair,
    /// Well.
    Good,
}

/// Kinds of microbe a preservative system has to hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Microbe {
    /// Gram-positive bacteria.
    GramPositive,
    /// Gram-negative bacteria.
    GramNegative,
    /// Yeasts.
    Yeast,
    /// Moulds.
    Mould,
}

impl Microbe {
    /// Every kind.
    pub const ALL: [Self; 4] = [Self::GramPositive, Self::GramNegative, Self::Yeast, Self::Mould];

    /// Key of its name.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::GramPositive => "microbe.gram-positive",
            Self::GramNegative => "microbe.gram-negative",
            Self::Yeast => "microbe.yeast",
            Self::Mould => "microbe.mould",
        }
    }
}

/// How much of a preservative stops a kind of microbe.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Inhibition {
    /// Minimum inhibitory concentration of the acting form (of an acid the undissociated one), in percent of the water.
    pub percent: f64,
    /// How many times that a product holds to kill, not only to stop.
    pub to_kill: f64,
    /// Where it was found.
    pub citation: Citation,
}

/// What a preservative does and how it is usually used.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Preservative {
    /// Usual percent.
    pub usual: Option<Cited<Span>>,
    /// pH in which it works.
    pub ph: Option<Cited<Span>>,
    /// Highest temperature at which to add it.
    pub max_add_temperature: Option<Cited<f64>>,
    /// Whether it can carry a product at all, rather than help another.
    pub carries: bool,
    /// How well it acts at best on each kind of [`Microbe::ALL`], as practice and literature judge it.
    pub spectrum: [Strength; 4],
    /// How much of it stops each kind of [`Microbe::ALL`], where that was found.
    pub inhibits: [Option<Inhibition>; 4],
    /// Where the spectrum was found.
    pub citation: Citation,
}

/// Something about a substance that a check asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Trait {
    /// Ethoxylated: binds phenolic preservatives.
    Ethoxylate,
    /// Emulsifier that works by a polymer film: the balance says nothing of it.
    PolymericEmulsifier,
    /// Emulsifier that works by liquid crystals.
    LamellarEmulsifier,
    /// Emulsifier or soap with a charge.
    IonicEmulsifier,
    /// Emulsifier of water in oil.
    WaterInOilEmulsifier,
    /// Thickener that salts thin.
    SaltSensitiveThickener,
    /// Powder that clumps unless it is dispersed in oil or glycerin first.
    ClumpingPowder,
    /// Salt that counts as electrolyte.
    Electrolyte,
    /// Base: neutralises polymers and turns fatty acids into soap.
    Base,
    /// Releases formaldehyde.
    FormaldehydeReleaser,
    /// Reacts with formaldehyde and isothiazolinones: amines, proteins, sulfites, thiols.
    TakesFormaldehyde,
    /// Ascorbic acid and its kin, which with benzoate can make traces of benzene.
    Ascorbate,
    /// Benzoic acid and its salts.
    Benzoate,
    /// Coloured or inactivated by iron.
    IronSensitive,
    /// Brings iron.
    Iron,
    /// Alpha hydroxy acid.
    AlphaHydroxyAcid,
    /// Retinoid.
    Retinoid,
    /// Citrus oil that can burn skin in sunlight.
    Phototoxic,
    /// Kept from children under three.
    NotForSmallChildren,
    /// Acts on the eyes.
    KeepFromEyes,
    /// Dissolves in nothing here: pigment, clay, scrub.
    Insoluble,
    /// Caustic as it is handled.
    Caustic,
    /// Salts lower its solubility, or it is inactivated by anionic matter: a cationic active.
    CationicActive,
    /// Cationic polymer that is meant to meet cleansing surfactants: it settles on skin and hair with them.
    ConditioningPolymer,
    /// Oil that is an ester, an ether or an alcohol.
    EsterOil,
    /// Oil that is a hydrocarbon.
    HydrocarbonOil,
    /// Oil that is a silicone.
    SiliconeOil,
    /// Liquid at room temperature: what does not dissolve separates as droplets.
    Liquid,
    /// Polymer of acid groups that thickens only once it is neutralised.
    NeedsBase,
    /// Copper that acts on what oxidises.
    Copper,
    /// Carbonate or bicarbonate.
    Carbonate,
    /// Acid strong enough to free carbon dioxide.
    AcidOfCarbonate,
    /// Alginate, pectin or gellan, which calcium sets.
    SetByCalcium,
    /// Brings calcium.
    Calcium,
    /// Soap of a fatty acid, which turns back into it below pH 8.
    Soap,
    /// Surfactant of an amino acid, which comes out below pH 5.
    AcylAminoAcid,
    /// Oil with so many double bonds that it turns rancid within months.
    Unsaturated,
    /// Keeps oils from turning rancid.
    OilAntioxidant,
    /// Dissolves in oil alone.
    OilSoluble,
    /// Sensitises skin.
    Sensitiser,
    /// Filters ultraviolet light.
    UvFilter,
    /// Liquid lecithin: makes water in oil by itself.
    PlainLecithin,
    /// Polymer that swells or dissolves without a limit.
    Polymer,
    /// Food for microbes: honey, juices, flours, proteins.
    FeedsMicrobes,
    /// Releases ammonia where it is not near pH 6: urea.
    Ammonia,
    /// Ester of phosphoric acid that acid splits.
    PhosphateEster,
    /// Niacinamide, which turns into nicotinic acid far from pH 6.
    Nicotinamide,
    /// Glycoside that acid splits: arbutin into hydroquinone.
    Glycoside,
}

impl Trait {
    /// Every trait with its word in the data files.
    pub const WORDS: [(&'static str, Self); 48] = [
        ("ethoxylate", Self::Ethoxylate),
        ("polymeric-emulsifier", Self::PolymericEmulsifier),
        ("lamellar-emulsifier", Self::LamellarEmulsifier),
        ("ionic-emulsifier", Self::IonicEmulsifier),
        ("water-in-oil-emulsifier", Self::WaterInOilEmulsifier),
        ("salt-sensitive-thickener", Self::SaltSensitiveThickener),
        ("clumping-powder", Self::ClumpingPowder),
        ("electrolyte", Self::Electrolyte),
        ("base", Self::Base),
        ("formaldehyde-releaser", Self::FormaldehydeReleaser),
        ("takes-formaldehyde", Self::TakesFormaldehyde),
        ("ascorbate", Self::Ascorbate),
        ("benzoate", Self::Benzoate),
        ("iron-sensitive", Self::IronSensitive),
        ("iron", Self::Iron),
        ("alpha-hydroxy-acid", Self::AlphaHydroxyAcid),
        ("retinoid", Self::Retinoid),
        ("phototoxic", Self::Phototoxic),
        ("not-for-small-children", Self::NotForSmallChildren),
        ("keep-from-eyes", Self::KeepFromEyes),
        ("insoluble", Self::Insoluble),
        ("caustic", Self::Caustic),
        ("cationic-active", Self::CationicActive),
        ("conditioning-polymer", Self::ConditioningPolymer),
        ("ester-oil", Self::EsterOil),
        ("hydrocarbon-oil", Self::HydrocarbonOil),
        ("silicone-oil", Self::SiliconeOil),
        ("liquid", Self::Liquid),
        ("needs-base", Self::NeedsBase),
        ("copper", Self::Copper),
        ("carbonate", Self::Carbonate),
        ("acid-of-carbonate", Self::AcidOfCarbonate),
        ("set-by-calcium", Self::SetByCalcium),
        ("calcium", Self::Calcium),
        ("soap", Self::Soap),
        ("acyl-amino-acid", Self::AcylAminoAcid),
        ("unsaturated", Self::Unsaturated),
        ("oil-antioxidant", Self::OilAntioxidant),
        ("oil-soluble", Self::OilSoluble),
        ("sensitiser", Self::Sensitiser),
        ("uv-filter", Self::UvFilter),
        ("plain-lecithin", Self::PlainLecithin),
        ("polymer", Self::Polymer),
        ("feeds-microbes", Self::FeedsMicrobes),
        ("ammonia", Self::Ammonia),
        ("phosphate-ester", Self::PhosphateEster),
        ("nicotinamide", Self::Nicotinamide),
        ("glycoside", Self::Glycoside),
    ];
}

/// A substance inside an essential oil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InsideOil {
    /// The substance.
    pub name: &'static str,
    /// Its name on a label, where it is a listed allergen.
    pub allergen: Option<&'static str>,
    /// Typical percent of the oil.
    pub typical: Option<f64>,
    /// Most it may be.
    pub most: Option<f64>,
    /// Where it was found.
    pub citation: Citation,
}

/// A fragrance substance to be named on the label above a threshold.
#[derive(Debug, Clone, PartialEq)]
pub struct Allergen {
    /// Its name on the label.
    pub name: &'static str,
    /// Constituents that are it.
    pub members: Vec<ConstituentId>,
    /// Threshold in percent in products that stay on.
    pub leave_on: f64,
    /// Threshold in percent in products that are rinsed off.
    pub rinse_off: f64,
    /// Whose law.
    pub jurisdiction: &'static str,
    /// Entry of the law.
    pub entry: &'static str,
    /// Whether Regulation (EU) 2023/1545 brought it in, with dates of its own; the others were listed before.
    pub is_of_2023: bool,
    /// Where it was found.
    pub citation: Citation,
}

/// What a limit rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Authority {
    /// The law.
    Law,
    /// Advice of a committee or an industry body.
    Advice,
}

/// A bound on the weighted sum of substances: at most so much, by use. Data, so that a solver can keep to it too.
#[derive(Debug, Clone, PartialEq)]
pub struct Limit {
    /// What is limited, as the law names it.
    pub subject: &'static str,
    /// What rows of one entry share that differ by the kind of product. A row of no kind is for all the others.
    pub group: &'static str,
    /// Kinds of product it is for; empty for all.
    pub kinds: Vec<ProductKind>,
    /// Names on a label that count for what the maker described, each with its factor: the catalogue has none of them.
    pub named: Vec<(&'static str, f64)>,
    /// The day from which it applies, where that lies ahead of the state that was read.
    pub from: &'static str,
    /// The substances that count, each with the factor that converts a percent of it into what the limit is expressed as.
    pub members: Vec<(ConstituentId, f64)>,
    /// Substances inside essential oils that count.
    pub inside_oils: Vec<&'static str>,
    /// What the limit is expressed as.
    pub expressed_as: &'static str,
    /// Most, in percent, in products that stay on; nothing where none is stated. Zero where it is not allowed.
    pub leave_on: Option<f64>,
    /// Most, in percent, in products that are rinsed off.
    pub rinse_off: Option<f64>,
    /// pH below which what is limited may not be used, where one is stated.
    pub least_ph: Option<f64>,
    /// Law or advice.
    pub authority: Authority,
    /// Whether it is the limit of a preservative used as one.
    pub preservative: bool,
    /// Whose.
    pub jurisdiction: &'static str,
    /// The day to which it was valid.
    pub as_of: &'static str,
    /// Entry.
    pub entry: &'static str,
    /// Conditions and warnings, as the data file words them.
    pub conditions: &'static str,
    /// Where it was found.
    pub citation: Citation,
}

/// Everything checks know about one substance.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Facts {
    /// Mass of a mole.
    pub molar_mass: Option<Cited<f64>>,
    /// Logarithm of the octanol-water partition coefficient.
    pub log_kow: Option<Cited<f64>>,
    /// What water dissolves of it.
    pub water_solubility: Option<WaterSolubility>,
    /// Logarithm of how much more a pure cosolvent dissolves than water, where it was measured.
    pub cosolvent_power: Vec<(Cosolvent, Cited<f64>)>,
    /// What oils dissolve of it.
    pub oil_solubility: Vec<OilSolubility>,
    /// As a weak acid.
    pub acid: Option<Acid>,
    /// As a salt of a weak acid.
    pub salt_of: Option<SaltOf>,
    /// What it brings to the pH, where that is known.
    pub brings: Option<Brings>,
    /// Usual percent of the product.
    pub usual_percent: Option<Cited<Span>>,
    /// pH in which it works and keeps.
    pub usual_ph: Option<Cited<Span>>,
    /// Highest temperature at which it may be added.
    pub max_add_temperature: Option<Cited<f64>>,
    /// Whether heat spoils it, where that is stated.
    pub heat_sensitive: Option<Citation>,
    /// Its charge.
    pub charge: Option<Cited<Charge>>,
    /// Where it is molten throughout.
    pub melting_point: Option<Cited<f64>>,
    /// Balance of an emulsifier.
    pub hlb: Option<Cited<f64>>,
    /// Balance an oil asks for as the inner phase.
    pub required_hlb: Option<Cited<f64>>,
    /// Balance an oil asks for as the outer phase.
    pub required_hlb_water_in_oil: Option<Cited<f64>>,
    /// Water it brings although it is named as one constituent, in percent.
    pub water_content: Option<Cited<f64>>,
    /// As a preservative.
    pub preservative: Option<Preservative>,
    /// How it parts between oil and water.
    pub oil_partition: Vec<OilPartition>,
    /// What micelles of ethoxylates hold of it: total over free in water is one and this times their percent.
    pub micelle_binding: Option<Cited<f64>>,
    /// What an essential oil holds.
    pub inside: Vec<InsideOil>,
    /// Density in g/mL.
    pub density: Option<Cited<f64>>,
    /// What checks ask for.
    pub traits: Vec<Cited<Trait>>,
}

impl Facts {
    /// Where a trait was found, if the substance has it.
    #[must_use]
    pub fn has(&self, wanted: Trait) -> Option<Citation> {
        self.traits.iter().find(|each| each.value == wanted).map(|each| each.citation)
    }
}

/// What cures reach for when something has to be added: substances in common use.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Remedies {
    /// Non-ionic emulsifiers with a balance, the first preferred.
    pub emulsifiers: Vec<ConstituentId>,
    /// Emulsifier for oils that state no balance.
    pub lamellar_emulsifier: Option<ConstituentId>,
    /// Takes a little essential oil into water.
    pub solubiliser: Option<ConstituentId>,
    /// Thickener that salts do not thin.
    pub salt_tolerant_thickener: Option<ConstituentId>,
    /// What powders are dispersed in before they meet water.
    pub dispersant: Option<ConstituentId>,
    /// Keeps oils from turning rancid.
    pub oil_antioxidant: Option<ConstituentId>,
    /// Emulsifiers that the trade sells together, each set in the order of its numbers.
    pub ready_systems: Vec<Vec<ConstituentId>>,
    /// Lowers a pH.
    pub acid: Option<ConstituentId>,
    /// Raises a pH and is not caustic.
    pub base: Option<ConstituentId>,
}

static NO_REMEDIES: Remedies = Remedies {
    emulsifiers: Vec::new(),
    lamellar_emulsifier: None,
    solubiliser: None,
    salt_tolerant_thickener: None,
    dispersant: None,
    oil_antioxidant: None,
    ready_systems: Vec::new(),
    acid: None,
    base: None,
};

/// Where checks look substances and limits up.
pub trait Knowledge {
    /// What is known of a substance.
    fn facts(&self, constituent: ConstituentId) -> Option<&Facts>;
    /// A solvent that mixes with water: which kind, and its density in g/mL.
    fn cosolvent(&self, constituent: ConstituentId) -> Option<(Cosolvent, f64)>;
    /// What a maker weighs out to bring a substance, where there is such a material.
    fn material_of(&self, constituent: ConstituentId) -> Option<MaterialId>;
    /// Every preservative.
    fn preservatives(&self) -> &[ConstituentId];
    /// Every limit.
    fn limits(&self) -> &[Limit];
    /// Every fragrance substance to be named on a label.
    fn allergens(&self) -> &[Allergen];
    /// What cures may add.
    fn remedies(&self) -> &Remedies {
        &NO_REMEDIES
    }
}
