//! What of a formula the list of ingredients is made of.

use super::declaration::{Allergen, Ingredient, Market, Role};
use crate::checks::contents::{Contents, Present};
use crate::checks::facts::Trait;
use crate::checks::limits::allergens::{Brought, brought};
use crate::checks::limits::allergens_unknown::scents_unknown;
use crate::day::Day;
use crate::formula::LineId;
use crate::material::{ConstituentId, Makeup, MaterialId};
use crate::quantity::Percent;
use rust_decimal::Decimal;
use stillroom_terms::Class;

/// By how much, of itself, what a bought composite brings may differ from what such composites usually hold.
///
/// *Source*: common practice: safety data sheets state the parts of a blend in spans about as wide. What the supplier states
/// of the lot comes first.
pub const TYPICAL_SPREAD: Decimal = Decimal::from_parts(2, 0, 0, false, 1);

/// What has to be known beside the formula to read it for a label.
pub struct Asked<'a> {
    /// Whose rules.
    pub market: Market,
    /// Whether an ingredient is a nanomaterial, where the maker knows.
    pub is_nano: &'a dyn Fn(ConstituentId) -> Option<bool>,
    /// Whether a material is a composite of which only the usual composition is known.
    pub is_typical: &'a dyn Fn(MaterialId) -> bool,
    /// By what name an ingredient goes in this market: those of one name stand in the list once.
    pub name: &'a dyn Fn(ConstituentId) -> String,
}

/// A formula read for its label.
pub struct ForLabel<'a> {
    /// The ingredients, most first.
    pub ingredients: Vec<Ingredient>,
    /// Allergens that the market's rules ask for above their thresholds.
    pub allergens: Vec<Allergen>,
    /// What the product holds of every allergen of the law that it holds any of.
    pub brought: Vec<Brought<'a>>,
    /// Perfumes and essential oils of which nobody knows what they hold.
    pub scents_unknown: Vec<ConstituentId>,
    /// What may be a nanomaterial, and nobody said whether it is.
    pub nano_unknown: Vec<ConstituentId>,
    /// Minerals that also go by a colour index number where they are there to colour.
    pub may_colour: Vec<ConstituentId>,
    /// What is there in an amount that only the usual composition of a bought composite tells, with the lines that bring it.
    pub loose: Vec<(ConstituentId, Vec<LineId>)>,
}

/// Reads a formula for its label.
#[must_use]
pub fn read_for_label<'a>(contents: &Contents<'a>, asked: &Asked<'_>) -> ForLabel<'a> {
    let names: Vec<String> = contents.present.iter().map(|each| (asked.name)(each.id).to_lowercase()).collect();
    let mut loose = Vec::new();
    let mut nano_unknown = Vec::new();
    let mut ingredients = Vec::new();
    for (at, (present, entry)) in contents.present.iter().zip(&contents.evaluation.composition.entries).enumerate() {
        if entry.percent.is_zero() {
            continue;
        }
        let mut ingredient = Ingredient::new(present.id, entry.percent);
        ingredient.role = role_of(contents, present);
        let is_nano = (asked.is_nano)(present.id);
        ingredient.is_nano = is_nano == Some(true);
        if may_be_nano(present) && is_nano.is_none() {
            nano_unknown.push(present.id);
        }
        let alike = names.iter().position(|name| *name == names[at]).unwrap_or(at);
        let is_shared = names.iter().filter(|name| **name == names[at]).count() > 1;
        ingredient.goes_with = u32::try_from(alike).ok().filter(|_| is_shared && !names[at].is_empty());
        let typical = |line: LineId| {
            let material = contents.formula.line(line).map(|line| line.material);
            material.is_some_and(|material| holds_typical(contents, material, asked.is_typical, 0))
        };
        let lines = entry.trail.iter().filter(|each| !each.percent.is_zero() && typical(each.line));
        let lines: Vec<_> = lines.collect();
        if !lines.is_empty() {
            let share: Decimal = lines.iter().map(|each| each.percent.value()).sum();
            let give = share * TYPICAL_SPREAD;
            let bound = |value: Decimal| Percent::new(value.clamp(Decimal::ZERO, Decimal::ONE_HUNDRED)).ok();
            let value = entry.percent.value();
            ingredient.range = bound(value - give).zip(bound(value + give));
            loose.push((present.id, lines.iter().map(|each| each.line).collect()));
        }
        ingredients.push(ingredient);
    }
    let brought = brought(contents);
    let may_colour = contents.present.iter().filter(|each| each.percent > 0.0 && is_white_or_pearl(contents, each.id));
    ForLabel {
        ingredients,
        allergens: brought.iter().filter(|each| is_asked_for(asked.market, each)).map(as_declared).collect(),
        scents_unknown: scents_unknown(contents).iter().map(|each| each.id).collect(),
        brought,
        nano_unknown,
        may_colour: may_colour.map(|each| each.id).collect(),
        loose,
    }
}

/// Whether a market's rules name an allergen at all. The United Kingdom kept the annex as it stood at the end of 2020, with
/// the allergens listed first; those of 2023 are no law there by what is known here.
#[must_use]
pub fn is_asked_for(market: Market, each: &Brought<'_>) -> bool {
    match market {
        Market::EuropeanUnion => true,
        Market::UnitedKingdom => !each.allergen.is_of_2023,
        Market::UnitedStates => false,
    }
}

fn as_declared(each: &Brought<'_>) -> Allergen {
    Allergen {
        name: each.allergen.name,
        members: each.allergen.members.clone(),
        typical: each.typical,
        most: each.most,
        threshold: each.threshold,
    }
}

fn role_of(contents: &Contents<'_>, present: &Present<'_>) -> Role {
    let is_aroma = || contents.source.constituent(present.id).is_some_and(|it| it.inci.eq_ignore_ascii_case("Aroma"));
    match present.class {
        Class::Colourant => Role::Colourant,
        Class::Fragrance if is_aroma() => Role::Aroma,
        Class::Fragrance => Role::Perfume,
        _ => Role::Ordinary,
    }
}

/// Whether such matter is sold as a nanomaterial, too: pigments, minerals and filters that dissolve in nothing.
fn may_be_nano(present: &Present<'_>) -> bool {
    let is_solid = matches!(present.class, Class::Mineral | Class::Colourant);
    is_solid && present.facts.has(Trait::Insoluble).is_some() || present.facts.has(Trait::UvFilter).is_some()
}

/// Minerals of Annex IV that are also used otherwise: as a filter, an opacifier, a filler.
///
/// *Source*: Annex IV of Regulation (EC) No 1223/2009: titanium dioxide CI 77891, zinc oxide CI 77947, mica CI 77019 (from
/// memory).
fn is_white_or_pearl(contents: &Contents<'_>, id: ConstituentId) -> bool {
    let inci = contents.source.constituent(id).map_or("", |it| it.inci.as_str());
    ["Titanium Dioxide", "Zinc Oxide", "Mica"].contains(&inci)
}

/// Deepest nesting followed; beyond it a material counts as known.
const DEEPEST: usize = 16;

/// Whether a material is, or holds, a composite of which only the usual composition is known.
fn holds_typical(
    contents: &Contents<'_>,
    material: MaterialId,
    is_typical: &dyn Fn(MaterialId) -> bool,
    depth: usize,
) -> bool {
    if is_typical(material) {
        return true;
    }
    if depth > DEEPEST {
        return false;
    }
    match contents.source.material(material).map(|it| &it.makeup) {
        Some(Makeup::Composite(parts)) => {
            parts.iter().any(|part| holds_typical(contents, part.material, is_typical, depth + 1))
        }
        _ => false,
    }
}

/// Whether the allergens that Regulation (EU) 2023/1545 brought in have to be named.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NewAllergens {
    /// Not yet.
    NotYet,
    /// In products that come to market from now on; those that were there before have time.
    InNewProducts,
    /// In every product.
    InEveryProduct,
}

impl NewAllergens {
    /// The day from which new products name them.
    ///
    /// *Source*: Regulation (EU) 2023/1545 (summary read): three years after it came into force.
    pub const NEW_PRODUCTS: &str = "2026-07-31";
    /// The day from which every product names them. *Source*: as above, five years.
    pub const EVERY_PRODUCT: &str = "2028-07-31";

    /// How it stands on a day.
    ///
    /// ```
    /// use stillroom_core::label::NewAllergens;
    /// assert_eq!(NewAllergens::on("2026-07-30".parse()?), NewAllergens::NotYet);
    /// assert_eq!(NewAllergens::on("2026-11-28".parse()?), NewAllergens::InNewProducts);
    /// assert_eq!(NewAllergens::on("2028-07-31".parse()?), NewAllergens::InEveryProduct);
    /// # Ok::<(), stillroom_core::day::NotADay>(())
    /// ```
    #[must_use]
    pub fn on(day: Day) -> Self {
        let has_come = |text: &str| text.parse::<Day>().is_ok_and(|limit| day >= limit);
        match (has_come(Self::NEW_PRODUCTS), has_come(Self::EVERY_PRODUCT)) {
            (_, true) => Self::InEveryProduct,
            (true, false) => Self::InNewProducts,
            (false, false) => Self::NotYet,
        }
    }
}
