//! The closed words of the trade that data files, formulas and pages share: what a material is, how a phase is handled, how
//! far a value may be trusted.
//!
//! **Owns** the words and what follows from a word alone. **Must not know** anything else: it depends on `serde` only, so that
//! what reads the data files at build time need not compile the core.

#![forbid(unsafe_code)]

use serde::{Deserialize, Serialize};

/// What a material or constituent is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Class {
    /// Water and aqueous distillates.
    Water,
    /// Binds water: glycerin, betaine, sodium lactate.
    Humectant,
    /// Carries or dissolves: ethanol, propanediol, triacetin.
    Solvent,
    /// Gums, polymers and clays that thicken water.
    Thickener,
    /// Liquid vegetable oils.
    Oil,
    /// Solid or soft vegetable fats.
    Butter,
    /// Emollient esters, hydrocarbons and silicones that flow.
    Emollient,
    /// Waxes.
    Wax,
    /// Cetyl alcohol and its kin.
    FattyAlcohol,
    /// Stearic acid and its kin.
    FattyAcid,
    /// Emulsifiers and solubilisers.
    Emulsifier,
    /// Cleansing and foaming surfactants.
    Surfactant,
    /// What the product is made for.
    Active,
    /// Botanical extracts.
    Extract,
    /// Proteins and their hydrolysates.
    Protein,
    /// Preservatives and what is used to boost them.
    Preservative,
    /// Binds metal ions.
    Chelator,
    /// Slows rancidity.
    Antioxidant,
    /// Acids, bases and buffers.
    PhAdjuster,
    /// Salts that are none of the above.
    Salt,
    /// Essential oils.
    EssentialOil,
    /// Other fragrance.
    Fragrance,
    /// Pigments and dyes.
    Colourant,
    /// Clays, powders and other minerals.
    Mineral,
    /// Scrub particles.
    Exfoliant,
    /// None of the above.
    Other,
}

/// A layer of the jar: classes a maker reads together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Layer {
    /// Water from every source.
    Water,
    /// Humectants and solvents that mix with water.
    Humectants,
    /// What thickens water.
    Thickeners,
    /// Oils and liquid emollients.
    Oils,
    /// Butters, waxes, fatty alcohols and acids.
    Solids,
    /// Emulsifiers and solubilisers.
    Emulsifiers,
    /// Cleansing surfactants.
    Surfactants,
    /// Actives, extracts and proteins.
    Actives,
    /// Preservatives.
    Preservatives,
    /// Essential oils and fragrance.
    Fragrance,
    /// Minerals, colourants and scrubs.
    Minerals,
    /// Chelators, antioxidants, acids, salts and the rest.
    Helpers,
}

impl Class {
    /// Every class, in the order a list shows them.
    pub const ALL: [Self; 26] = [
        Self::Water,
        Self::Humectant,
        Self::Solvent,
        Self::Thickener,
        Self::Oil,
        Self::Butter,
        Self::Emollient,
        Self::Wax,
        Self::FattyAlcohol,
        Self::FattyAcid,
        Self::Emulsifier,
        Self::Surfactant,
        Self::Active,
        Self::Extract,
        Self::Protein,
        Self::Preservative,
        Self::Chelator,
        Self::Antioxidant,
        Self::PhAdjuster,
        Self::Salt,
        Self::EssentialOil,
        Self::Fragrance,
        Self::Colourant,
        Self::Mineral,
        Self::Exfoliant,
        Self::Other,
    ];

    /// The layer of the jar this class is drawn in.
    #[must_use]
    pub const fn layer(self) -> Layer {
        match self {
            Self::Water => Layer::Water,
            Self::Humectant | Self::Solvent => Layer::Humectants,
            Self::Thickener => Layer::Thickeners,
            Self::Oil | Self::Emollient => Layer::Oils,
            Self::Butter | Self::Wax | Self::FattyAlcohol | Self::FattyAcid => Layer::Solids,
            Self::Emulsifier => Layer::Emulsifiers,
            Self::Surfactant => Layer::Surfactants,
            Self::Active | Self::Extract | Self::Protein => Layer::Actives,
            Self::Preservative => Layer::Preservatives,
            Self::EssentialOil | Self::Fragrance => Layer::Fragrance,
            Self::Colourant | Self::Mineral | Self::Exfoliant => Layer::Minerals,
            Self::Chelator | Self::Antioxidant | Self::PhAdjuster | Self::Salt | Self::Other => Layer::Helpers,
        }
    }
}

/// What the numbers of a formula are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum WrittenIn {
    /// Percent by mass: a formula.
    #[default]
    Percent,
    /// Grams: an old batch, on its way to become a formula.
    Grams,
}

/// How the product is used; limits depend on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Purpose {
    /// Stays on the skin.
    #[default]
    LeaveOn,
    /// Is rinsed off.
    RinseOff,
}

/// What is done with a phase.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum PhaseKind {
    /// Heated with the water.
    HeatedWater,
    /// Heated with the oil.
    HeatedOil,
    /// Added once the batch has cooled.
    CoolDown,
    /// Made and kept at room temperature.
    RoomTemperature,
}

impl PhaseKind {
    /// Every kind, in the order a formula usually has them.
    pub const ALL: [Self; 4] = [Self::HeatedWater, Self::HeatedOil, Self::CoolDown, Self::RoomTemperature];
}

/// How far a value may be trusted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Basis {
    /// The figure was read in a copy of the named source.
    Published,
    /// The figure was computed from a published equation or by a named program.
    Computed,
    /// What sellers of this material usually state; another lot may differ.
    SupplierTypical,
    /// Recalled from the named source and not read again: to be checked before it decides anything.
    Memory,
}

impl Basis {
    /// Every basis, the most trusted first.
    pub const ALL: [Self; 4] = [Self::Published, Self::Computed, Self::SupplierTypical, Self::Memory];

    /// The word used in the data files and on screen.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::Computed => "computed",
            Self::SupplierTypical => "supplier-typical",
            Self::Memory => "memory",
        }
    }

    /// The basis behind a word of the data files.
    #[must_use]
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|basis| basis.slug() == slug)
    }
}

/// A fatty acid by its carbons and double bonds, as `18:2`; `18:1 OH` has a hydroxyl group as well.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FattyAcid {
    carbons: u8,
    double_bonds: u8,
    hydroxyls: u8,
}

impl FattyAcid {
    /// Reads the usual shorthand: carbons, a colon, double bonds, and ` OH` for a hydroxyl group.
    ///
    /// ```
    /// use stillroom_terms::FattyAcid;
    /// let oleic = FattyAcid::parse("18:1").unwrap();
    /// assert!((oleic.molar_mass() - 282.47).abs() < 0.01);
    /// assert!(FattyAcid::parse("18").is_none() && FattyAcid::parse("3:2").is_none());
    /// ```
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let (plain, hydroxyls) = text.strip_suffix(" OH").map_or((text, 0), |plain| (plain, 1));
        let (carbons, double_bonds) = plain.split_once(':')?;
        let (carbons, double_bonds) = (carbons.parse().ok()?, double_bonds.parse().ok()?);
        let believable = (2..=30).contains(&carbons) && u16::from(double_bonds) * 2 < u16::from(carbons);
        believable.then_some(Self { carbons, double_bonds, hydroxyls })
    }

    /// Mass of a mole in g/mol: `CnH(2n−2d)O2`. *Source*: IUPAC abridged standard atomic weights 2021.
    #[must_use]
    pub fn molar_mass(self) -> f64 {
        let (carbons, double_bonds) = (f64::from(self.carbons), f64::from(self.double_bonds));
        carbons * 12.011 + (2.0 * carbons - 2.0 * double_bonds) * 1.008 + (2.0 + f64::from(self.hydroxyls)) * 15.999
    }

    /// How many double bonds it has.
    #[must_use]
    pub const fn double_bonds(self) -> u8 {
        self.double_bonds
    }
}
