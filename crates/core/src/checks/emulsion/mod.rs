//! Whether oil and water stay together, and whether the making of it can work.
//!
//! What is oil and what emulsifies comes from the composition, so that the emulsifier inside a bought blend counts as what it
//! is. The hydrophilic-lipophilic balance (Griffin, 1949) speaks only of simple non-ionic emulsifiers: where polymers, liquid
//! crystals or charges carry the emulsion, the checks say so instead of computing.

mod close_packing;
mod disperse_first;
mod emulsifier_short;
mod heat_sensitive;
mod hlb_no_data;
mod hlb_off;
mod hlb_silent;
mod lecithin;
mod melting;
mod no_emulsifier;
mod salt_thickener;
mod unmelted;

use super::Registered;
use super::contents::{Contents, Present};
use super::facts::{Charge, Cosolvent, Facts, Trait};
use crate::chemistry::hlb::blend;
use crate::material::ConstituentId;
use crate::source::{Basis, Citation};
use stillroom_terms::Class;

/// The findings of this family.
pub const FINDINGS: &[Registered] = &[
    Registered { code: no_emulsifier::CODE, check: no_emulsifier::check },
    Registered { code: hlb_off::CODE, check: hlb_off::check },
    Registered { code: emulsifier_short::CODE, check: emulsifier_short::check },
    Registered { code: lecithin::CODE, check: lecithin::check },
    Registered { code: close_packing::CODE, check: close_packing::check },
    Registered { code: melting::CODE, check: melting::check },
    Registered { code: unmelted::CODE, check: unmelted::check },
    Registered { code: heat_sensitive::CODE, check: heat_sensitive::check },
    Registered { code: salt_thickener::CODE, check: salt_thickener::check },
    Registered { code: disperse_first::CODE, check: disperse_first::check },
    Registered { code: hlb_no_data::CODE, check: hlb_no_data::check },
    Registered { code: hlb_silent::CODE, check: hlb_silent::check },
];

/// Less oil than this, in percent, is taken up rather than emulsified.
const LITTLE_OIL: f64 = 1.0;
/// Less oil or essential oil than this, in percent, is what water takes up or a hydrosol brings.
const TRACE: f64 = 0.05;
/// From this much of it essential oil has to be counted as oil, in percent.
const LITTLE_SCENT: f64 = 2.0;
/// Ethanol in the solvent that dissolves essential oils, as a share.
const STRONG_ALCOHOL: f64 = 0.5;
/// Less water than this, in percent, is no phase of its own.
const LITTLE_WATER: f64 = 1.0;
/// Share of the oil, or of the emulsifiers, of which figures must be known for the balance to be computed.
const ENOUGH_KNOWN: f64 = 0.75;
/// Share of emulsifiers of another kind that the balance bears.
const STRANGERS: f64 = 0.1;
/// Fatty alcohol, in times the emulsifier, from which both build a gel of liquid crystals.
const GEL_NETWORK: f64 = 2.0;
/// Fatty alcohol, in times the emulsifier, up to which it builds with it: bought blends have three to four.
const MOST_BUILDERS: f64 = 4.5;
/// Up to this balance a blend of non-ionic emulsifiers favours water in oil (Griffin: 3 to 6).
const FAVOURS_WATER_IN_OIL: f64 = 6.0;
/// Share of oil in oil and water from which such a blend is taken to be meant for water in oil.
const MUCH_OIL: f64 = 0.4;

const GRIFFIN: Citation =
    Citation::recalled("Griffin, J. Soc. Cosmet. Chem. 1 (1949) 311: balances add up by mass; water in oil at 3 to 6");
const ECCLESTON: Citation = Citation::recalled(
    "Eccleston, Colloids Surf. A 123-124 (1997) 169: fatty alcohol and emulsifier build a lamellar gel network",
);
const BY_MASS: Citation =
    Citation { source: "Mean of balances weighted by mass (Griffin)", locator: "", as_of: "", basis: Basis::Computed };

/// How an emulsifier works.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Work {
    /// A simple non-ionic emulsifier with its balance.
    Balanced(f64),
    /// Of unknown kind.
    Unknown,
    /// By a film of polymer.
    Polymeric,
    /// A gum that emulsifies weakly.
    Gum,
    /// By liquid crystals.
    Lamellar,
    /// By charge; soap, too.
    Ionic,
    /// A cleansing surfactant.
    Surfactant,
    /// Holds water in oil.
    WaterInOil,
}

impl Work {
    /// Grams of oil that a gram is commonly taken to hold: common practice.
    const fn holds(self) -> f64 {
        match self {
            Self::Balanced(_) | Self::Unknown | Self::Lamellar => 7.0,
            Self::Surfactant | Self::WaterInOil => 10.0,
            Self::Ionic => 25.0,
            Self::Polymeric => 100.0,
            Self::Gum => 4.0,
        }
    }

    /// Key of its name.
    const fn word(self) -> &'static str {
        match self {
            Self::Balanced(_) => "emulsifier.non-ionic",
            Self::Unknown => "emulsifier.unknown",
            Self::Polymeric => "emulsifier.polymeric",
            Self::Gum => "emulsifier.gum",
            Self::Lamellar => "emulsifier.lamellar",
            Self::Ionic => "emulsifier.ionic",
            Self::Surfactant => "emulsifier.surfactant",
            Self::WaterInOil => "emulsifier.water-in-oil",
        }
    }
}

/// What a substance does for an emulsion, if it does anything.
fn work_of(each: &Present<'_>) -> Option<Work> {
    let Facts { charge, hlb, .. } = each.facts;
    let has = |wanted| each.facts.has(wanted).is_some();
    if !matches!(each.class, Class::Emulsifier | Class::Surfactant | Class::Thickener) {
        return None;
    }
    if has(Trait::PolymericEmulsifier) {
        return Some(Work::Polymeric);
    }
    if has(Trait::LamellarEmulsifier) {
        return Some(Work::Lamellar);
    }
    if has(Trait::IonicEmulsifier) {
        return Some(Work::Ionic);
    }
    if has(Trait::WaterInOilEmulsifier) {
        return Some(Work::WaterInOil);
    }
    match (each.class, hlb) {
        (Class::Thickener, hlb) => hlb.map(|_| Work::Gum),
        // What gives pearl, not foam.
        (Class::Surfactant, Some(hlb)) if hlb.value < 3.0 => None,
        (Class::Surfactant, _) => Some(Work::Surfactant),
        _ if charge.is_some_and(|charge| charge.value != Charge::NonIonic) => Some(Work::Ionic),
        (_, Some(hlb)) => Some(Work::Balanced(hlb.value)),
        (_, None) => Some(Work::Unknown),
    }
}

/// Which of the two is inside.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    /// Drops of oil in water.
    OilInWater,
    /// Drops of water in oil.
    WaterInOil,
}

impl Kind {
    const fn word(self) -> &'static str {
        match self {
            Self::OilInWater => "emulsion.oil-in-water",
            Self::WaterInOil => "emulsion.water-in-oil",
        }
    }
}

/// Oil, water and what holds them together.
struct System<'c, 'a> {
    emulsifiers: Vec<(&'c Present<'a>, Work)>,
    /// Percent of everything that emulsifies.
    total: f64,
    /// Percent of those with a balance.
    balanced: f64,
    /// Fatty alcohols that build liquid crystals.
    builders: Vec<&'c Present<'a>>,
    kind: Kind,
}

impl<'c, 'a> System<'c, 'a> {
    /// Nothing where there is no water or no oil to speak of, or only a little essential oil.
    fn of(contents: &'c Contents<'a>) -> Option<Self> {
        if contents.water < LITTLE_WATER || contents.oil < LITTLE_OIL || is_only_scent(contents) {
            return None;
        }
        let mut emulsifiers = Vec::new();
        let mut builders = Vec::new();
        let base = contents.present.iter().any(makes_soap);
        for each in contents.present.iter().filter(|each| each.percent > 0.0) {
            if let Some(work) = work_of(each) {
                emulsifiers.push((each, work));
            } else if each.class == Class::FattyAcid && base {
                emulsifiers.push((each, Work::Ionic));
            } else if each.class == Class::FattyAlcohol && each.facts.has(Trait::LamellarEmulsifier).is_some() {
                builders.push(each);
            }
        }
        if emulsifiers.is_empty() {
            // Lanolin and its kin hold water where nothing else emulsifies; beside an emulsifier they are oil.
            emulsifiers.extend(contents.with(Trait::WaterInOilEmulsifier).map(|each| (each, Work::WaterInOil)));
        }
        let sum = |wanted: &dyn Fn(Work) -> bool| -> f64 {
            emulsifiers.iter().filter(|(_, work)| wanted(*work)).map(|(each, _)| each.percent).sum()
        };
        let total = sum(&|_| true);
        let balanced = sum(&|work| matches!(work, Work::Balanced(_)));
        let water_in_oil = sum(&|work| work == Work::WaterInOil);
        let mut system = Self { total, balanced, builders, kind: Kind::OilInWater, emulsifiers };
        let low = system.only_balanced() && system.supplied().is_some_and(|hlb| hlb <= FAVOURS_WATER_IN_OIL);
        let much_oil = contents.oil / (contents.oil + contents.solvent()) >= MUCH_OIL;
        if water_in_oil * 2.0 > total || (low && much_oil) {
            system.kind = Kind::WaterInOil;
        }
        Some(system)
    }

    /// Fatty alcohol that builds liquid crystals, in percent.
    fn fatty_alcohol(&self) -> f64 {
        self.builders.iter().map(|each| each.percent).sum()
    }

    /// Whether emulsifier and fatty alcohol build a gel of liquid crystals.
    fn is_gel_network(&self) -> bool {
        self.total > 0.0 && self.fatty_alcohol() >= self.total * GEL_NETWORK
    }

    /// Whether all but a few emulsifiers are non-ionic, or of unknown kind.
    fn only_balanced(&self) -> bool {
        let strangers = self.strangers();
        let mut bound = 0.0;
        for (each, work) in strangers {
            // A trace of polymer holds an emulsion by itself.
            if work == Work::Polymeric {
                return false;
            }
            bound += each.percent;
        }
        self.total > 0.0 && bound <= self.total * STRANGERS
    }

    /// Emulsifiers of which the balance does not speak.
    fn strangers(&self) -> impl Iterator<Item = (&'c Present<'a>, Work)> {
        self.emulsifiers.iter().copied().filter(|(_, work)| !matches!(work, Work::Balanced(_) | Work::Unknown))
    }

    /// Emulsifiers with their balances.
    fn with_balance(&self) -> impl Iterator<Item = (&'c Present<'a>, f64)> {
        self.emulsifiers.iter().filter_map(|(each, work)| match work {
            Work::Balanced(hlb) => Some((*each, *hlb)),
            _ => None,
        })
    }

    /// Whether the balance speaks of this emulsion at all.
    fn balance_speaks(&self) -> bool {
        self.only_balanced() && !self.is_gel_network()
    }

    /// Balance of the emulsifiers that have one.
    fn supplied(&self) -> Option<f64> {
        let parts: Vec<(f64, f64)> = self.with_balance().map(|(each, hlb)| (each.percent, hlb)).collect();
        blend(&parts)
    }

    /// Emulsifiers that should have a balance and state none, in percent.
    fn unknown(&self) -> f64 {
        self.emulsifiers.iter().filter(|(_, work)| *work == Work::Unknown).map(|(each, _)| each.percent).sum()
    }
}

const fn is_scent(each: &Present<'_>) -> bool {
    matches!(each.class, Class::EssentialOil | Class::Fragrance)
}

/// Whether all the oil there is is a little essential oil or perfume, which is solubilised rather than emulsified.
fn is_only_scent(contents: &Contents<'_>) -> bool {
    let mut oils = contents.present.iter().filter(|each| each.is_oil() && each.percent > 0.0);
    contents.oil <= LITTLE_SCENT && oils.all(is_scent)
}

/// Whether ethanol dissolves essential oils here.
fn is_strong_alcohol(contents: &Contents<'_>) -> bool {
    let ethanol = contents.cosolvents.iter().find(|(kind, ..)| *kind == Cosolvent::Ethanol);
    ethanol.is_some_and(|(_, percent, _)| *percent >= contents.solvent() * STRONG_ALCOHOL)
}

/// Whether a substance is a base strong enough to turn fatty acid into soap.
fn makes_soap(each: &Present<'_>) -> bool {
    each.percent > 0.0 && (each.facts.has(Trait::Base).is_some() || each.facts.has(Trait::Caustic).is_some())
}

/// The balance an oil asks for in a kind of emulsion.
fn required_of(each: &Present<'_>, kind: Kind) -> Option<f64> {
    let cited = match kind {
        Kind::OilInWater => each.facts.required_hlb,
        Kind::WaterInOil => each.facts.required_hlb_water_in_oil,
    };
    cited.map(|cited| cited.value)
}

/// A sum over substances that has to stay within bounds so that oil and water stay together.
pub(super) struct Asks {
    /// Whether it is about the balance rather than the amount.
    pub is_balance: bool,
    /// Factors of percents of the product.
    pub factors: Vec<(ConstituentId, f64)>,
    /// Least.
    pub low: Option<f64>,
    /// Most.
    pub high: Option<f64>,
}

/// What the emulsion asks of any mixture of some substances: that what emulsifies holds the oil, and that its balance is near
/// what the oil of now asks for. The balance is a mean; multiplied by the mass of its emulsifiers it is a sum.
pub(super) fn asks<'a>(contents: &Contents<'a>, of: &[Present<'a>]) -> Vec<Asks> {
    let Some(system) = System::of(contents) else { return Vec::new() };
    // In a gel of liquid crystals fatty alcohol holds oil as long as there is enough of the true emulsifier.
    let gel = system.is_gel_network() && system.fatty_alcohol() <= system.total * MOST_BUILDERS;
    let builds = |each: &Present<'_>| gel && system.builders.iter().any(|builder| builder.id == each.id);
    let (mut holding, mut building) = (Vec::new(), Vec::new());
    for each in of {
        if let Some(work) = work_of(each) {
            holding.push((each.id, work.holds()));
            building.push((each.id, -MOST_BUILDERS));
        } else if builds(each) {
            holding.push((each.id, Work::Lamellar.holds()));
            building.push((each.id, 1.0));
        } else if each.is_oil() {
            holding.push((each.id, -1.0));
        }
    }
    let mut found = vec![Asks { is_balance: false, factors: holding, low: Some(0.0), high: None }];
    if gel {
        found.push(Asks { is_balance: false, factors: building, low: None, high: Some(0.0) });
    }
    let required = required(contents, system.kind).filter(|required| required.known >= ENOUGH_KNOWN);
    if let Some(required) = required.filter(|_| system.balance_speaks()) {
        let off = |by: f64| off_balance(of, required.balance + by);
        found.push(Asks { is_balance: true, factors: off(hlb_off::SPREAD), low: None, high: Some(0.0) });
        found.push(Asks { is_balance: true, factors: off(-hlb_off::SPREAD), low: Some(0.0), high: None });
    }
    found
}

/// Factors that make a sum of how far the balance of what emulsifies is from a target; nothing where nothing has a balance.
pub(super) fn off_balance(of: &[Present<'_>], target: f64) -> Vec<(ConstituentId, f64)> {
    let balanced = of.iter().filter_map(|each| match work_of(each)? {
        Work::Balanced(hlb) => Some((each.id, hlb - target)),
        _ => None,
    });
    balanced.collect()
}

/// What the oil asks for, and of which share of it that is known.
struct Required {
    balance: f64,
    known: f64,
    unknown: Vec<ConstituentId>,
}

fn required(contents: &Contents<'_>, kind: Kind) -> Option<Required> {
    let (mut parts, mut unknown) = (Vec::new(), Vec::new());
    for each in contents.present.iter().filter(|each| each.is_oil() && each.percent > 0.0) {
        match required_of(each, kind) {
            Some(balance) => parts.push((each.percent, balance)),
            None => unknown.push(each.id),
        }
    }
    let known: f64 = parts.iter().map(|(percent, _)| percent).sum();
    Some(Required { balance: blend(&parts)?, known: known / contents.oil, unknown })
}
