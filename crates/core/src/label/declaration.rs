//! The list of ingredients.
//!
//! European Union: Regulation (EC) No 1223/2009 Article 19(1)(g): in descending order of weight at the time they are added;
//! those below 1 % in any order after the others; colourants other than for hair in any order after the other
//! ingredients; nanomaterials with the word "nano"; perfume as one word, and beside it each allergen of Annex III above its
//! threshold; impurities and technical aids that are not in the finished product are no ingredients. The United Kingdom kept
//! these words. United States: 21 CFR 701.3(f): in descending order of predominance; those at not more than 1 % without
//! respect to order after the others; colour additives without respect to order after them; fragrance as one word;
//! 701.3(l): incidental ingredients need not be named.
//!
//! So at exactly 1 % an ingredient has its place by weight in the European Union, and is free in the United States.

use crate::material::ConstituentId;
use crate::quantity::Percent;
use core::cmp::Reverse;
use rust_decimal::Decimal;

/// Whose rules a label follows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Market {
    /// Regulation (EC) No 1223/2009.
    EuropeanUnion,
    /// The same regulation as kept in the law of the United Kingdom.
    UnitedKingdom,
    /// Title 21 of the Code of Federal Regulations, part 701.
    UnitedStates,
}

impl Market {
    /// Whether a share may stand anywhere behind the larger ones.
    #[must_use]
    pub fn is_free(self, percent: Percent) -> bool {
        match self {
            Self::EuropeanUnion | Self::UnitedKingdom => percent.value() < Decimal::ONE,
            Self::UnitedStates => percent.value() <= Decimal::ONE,
        }
    }

    /// Whether allergens above their threshold are named beside the perfume. In the United States a rule is still to come
    /// (section 609(b) of the Federal Food, Drug, and Cosmetic Act).
    #[must_use]
    pub const fn names_allergens(self) -> bool {
        matches!(self, Self::EuropeanUnion | Self::UnitedKingdom)
    }
}

/// What an ingredient is in the eyes of the rules.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Role {
    /// Any other.
    Ordinary,
    /// A colourant.
    Colourant,
    /// Perfume, or a raw material of one: named by one word for all.
    Perfume,
    /// Aroma, or a raw material of one: the same for what tastes.
    Aroma,
}

/// Why something that was weighed is no ingredient.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum NotInProduct {
    /// It came along with a raw material and does nothing.
    Impurity,
    /// It helped in the making and is not in the finished product.
    TechnicalAid,
}

/// An ingredient as the composition knows it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ingredient {
    /// Which.
    pub id: ConstituentId,
    /// Percent of the product as added.
    pub percent: Percent,
    /// Least and most of it where it is known as a range only.
    pub range: Option<(Percent, Percent)>,
    /// What it is.
    pub role: Role,
    /// Whether it is a nanomaterial.
    pub is_nano: bool,
    /// Why it is no ingredient, if it is none.
    pub not_in_product: Option<NotInProduct>,
    /// Ingredients of the same number go by one name, as several iron oxides do in the United States.
    pub goes_with: Option<u32>,
}

impl Ingredient {
    /// An ordinary ingredient of which the share is known.
    #[must_use]
    pub const fn new(id: ConstituentId, percent: Percent) -> Self {
        Self { id, percent, range: None, role: Role::Ordinary, is_nano: false, not_in_product: None, goes_with: None }
    }

    fn least(&self) -> Decimal {
        self.range.map_or(self.percent, |(least, _)| least.min(self.percent)).value()
    }

    fn most(&self) -> Decimal {
        self.range.map_or(self.percent, |(_, most)| most.max(self.percent)).value()
    }
}

/// A fragrance allergen that may have to be named.
#[derive(Debug, Clone, PartialEq)]
pub struct Allergen {
    /// Its name in the annex.
    pub name: &'static str,
    /// Ingredients that are it: where one of them stands in the list already, it is named there.
    pub members: Vec<ConstituentId>,
    /// Percent of the product, as oils usually are.
    pub typical: f64,
    /// Percent of the product at most.
    pub most: f64,
    /// Above how many percent it has to be named in this product.
    pub threshold: f64,
}

/// By what an ingredient is named.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Name {
    /// Its own name, or the one it shares with others.
    Own(ConstituentId),
    /// The word for perfume.
    Perfume,
    /// The word for aroma.
    Aroma,
    /// An allergen's name in the annex.
    Allergen(&'static str),
}

/// Where in the list something stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// By weight.
    ByWeight,
    /// In any order behind those.
    AnyOrder,
    /// In any order behind all others.
    Colourants,
}

/// One name in the list.
#[derive(Debug, Clone, PartialEq)]
pub struct Declared {
    /// The name.
    pub name: Name,
    /// Everything that goes by it.
    pub made_of: Vec<ConstituentId>,
    /// Percent of the product; of an allergen within oils what is usual, rounded up to six decimals.
    pub percent: Percent,
    /// Where it stands.
    pub group: Group,
    /// Whether it is a nanomaterial.
    pub is_nano: bool,
    /// What is not certain about it.
    pub doubt: Doubt,
}

/// What is not certain about a name in the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Doubt {
    /// The ranges say nothing about which comes first, this or the one behind it.
    pub may_follow_next: bool,
    /// The range lies on both sides of the 1 % from which the order counts.
    pub may_be_in_other_group: bool,
    /// Only as much of it as the oils may hold at most asks for its name.
    pub perhaps: bool,
}

/// Something that was weighed and is not declared.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LeftOut {
    /// Which.
    pub id: ConstituentId,
    /// Why.
    pub why: NotInProduct,
}

/// The list of ingredients.
#[derive(Debug, Clone, PartialEq)]
pub struct Declaration {
    /// The names in their order.
    pub names: Vec<Declared>,
    /// What is not in it.
    pub left_out: Vec<LeftOut>,
}

impl Declaration {
    /// Whether the order is certain throughout.
    #[must_use]
    pub fn is_certain(&self) -> bool {
        self.names.iter().all(|each| each.doubt == Doubt::default())
    }
}

/// A name while it is gathered.
struct Gathered {
    declared: Declared,
    least: Decimal,
    most: Decimal,
    role: Role,
}

/// The list of ingredients of a product for a market. What comes to nothing is not in it, and every ingredient that is
/// stands in it once.
///
/// ```
/// use stillroom_core::label::{Ingredient, Market, Name, declare};
/// use stillroom_core::{ConstituentId, Percent};
/// let share = |number, percent: &str| {
///     Ingredient::new(ConstituentId::Catalogue(number), Percent::new(percent.parse().unwrap()).unwrap())
/// };
/// let list = declare(&[share(2, "5"), share(1, "94.2"), share(9, "0.8")], &[], Market::EuropeanUnion);
/// assert_eq!(list.names[0].name, Name::Own(ConstituentId::Catalogue(1)));
/// ```
#[must_use]
pub fn declare(ingredients: &[Ingredient], allergens: &[Allergen], market: Market) -> Declaration {
    let mut gathered: Vec<Gathered> = Vec::new();
    let mut left_out = Vec::new();
    for ingredient in ingredients {
        if let Some(why) = ingredient.not_in_product {
            left_out.push(LeftOut { id: ingredient.id, why });
        } else if ingredient.most() > Decimal::ZERO {
            gather(&mut gathered, ingredient, ingredients);
        }
    }
    let mut names: Vec<Gathered> = gathered;
    if market.names_allergens() {
        name_allergens(&mut names, allergens);
    }
    for each in &mut names {
        each.declared.group = if each.role == Role::Colourant {
            Group::Colourants
        } else if market.is_free(each.declared.percent) {
            Group::AnyOrder
        } else {
            Group::ByWeight
        };
        let free = |percent: Decimal| Percent::new(percent).is_ok_and(|percent| market.is_free(percent));
        each.declared.doubt.may_be_in_other_group = each.role != Role::Colourant && free(each.least) != free(each.most);
    }
    // Stable: what weighs the same keeps the order of the composition.
    names.sort_by_key(|each| (each.declared.group, Reverse(each.declared.percent)));
    for at in 1..names.len() {
        let (before, here) = (&names[at - 1], &names[at]);
        let by_weight = before.declared.group == Group::ByWeight && here.declared.group == Group::ByWeight;
        let overlap = here.most > before.least && (here.least != here.most || before.least != before.most);
        names[at - 1].declared.doubt.may_follow_next = by_weight && overlap;
    }
    Declaration { names: names.into_iter().map(|each| each.declared).collect(), left_out }
}

fn gather(gathered: &mut Vec<Gathered>, ingredient: &Ingredient, all: &[Ingredient]) {
    let name = match ingredient.role {
        Role::Perfume => Name::Perfume,
        Role::Aroma => Name::Aroma,
        Role::Ordinary | Role::Colourant => {
            let first = ingredient.goes_with.and_then(|number| all.iter().find(|each| each.goes_with == Some(number)));
            Name::Own(first.map_or(ingredient.id, |first| first.id))
        }
    };
    if let Some(known) = gathered.iter_mut().find(|each| each.declared.name == name) {
        known.least += ingredient.least();
        known.most += ingredient.most();
        known.declared.made_of.push(ingredient.id);
        known.declared.is_nano |= ingredient.is_nano;
        let sum = known.declared.percent.value() + ingredient.percent.value();
        // A sum past 100 % is no composition; the declaration keeps what it has.
        known.declared.percent = Percent::new(sum).unwrap_or(known.declared.percent);
        return;
    }
    gathered.push(Gathered {
        declared: Declared {
            name,
            made_of: vec![ingredient.id],
            percent: ingredient.percent,
            group: Group::AnyOrder,
            is_nano: ingredient.is_nano,
            doubt: Doubt::default(),
        },
        least: ingredient.least(),
        most: ingredient.most(),
        role: ingredient.role,
    });
}

/// Puts the allergens that have to be named among the ingredients, but for those that are named already.
fn name_allergens(names: &mut Vec<Gathered>, allergens: &[Allergen]) {
    for allergen in allergens.iter().filter(|allergen| allergen.most > allergen.threshold) {
        let is_named = |each: &Gathered| matches!(each.declared.name, Name::Own(id) if allergen.members.contains(&id));
        if names.iter().any(is_named) {
            continue;
        }
        let percent = |value: f64| Decimal::try_from(value).unwrap_or_default().round_dp(6).min(Decimal::ONE_HUNDRED);
        let typical = allergen.typical.max(0.0);
        names.push(Gathered {
            declared: Declared {
                name: Name::Allergen(allergen.name),
                made_of: allergen.members.clone(),
                percent: Percent::new(percent(typical)).unwrap_or(Percent::ZERO),
                group: Group::AnyOrder,
                is_nano: false,
                doubt: Doubt { perhaps: typical <= allergen.threshold, ..Doubt::default() },
            },
            least: percent(typical),
            most: percent(allergen.most),
            role: Role::Ordinary,
        });
    }
}
