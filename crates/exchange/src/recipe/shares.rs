//! What the amounts of a recipe come to: percents, or masses where it gives those.

use super::{Unit, Written};
use rust_decimal::Decimal;
use stillroom_core::{Amount, Density, Grams, Percent, WrittenIn};

/// What numbers without a unit are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Meaning {
    /// Percent of the whole.
    Percent,
    /// Grams.
    Grams,
    /// Parts, all of one size.
    Parts,
}

/// What a line has to be looked at for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Doubt {
    /// It has no amount.
    Missing,
    /// Its amount is not understood.
    NotRead,
    /// A measure of the kitchen: to be weighed once.
    NotWeighable,
    /// A volume, and no density is known.
    NoDensity,
    /// A volume, made a mass by the density that is known.
    ByDensity,
    /// A range: its middle was taken.
    Range,
    /// A mass among percents, and nothing says what the whole weighs.
    MassAmongPercents,
    /// A percent among masses.
    PercentAmongMasses,
    /// As much as is needed: no number can be given.
    Enough,
    /// A second line that fills up to the whole.
    SecondRest,
    /// More than any formula has.
    TooLarge,
}

/// What is known of a line beside its amount.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Weighable<'a> {
    /// The amount as written.
    pub written: &'a Written,
    /// Density of the material.
    pub density: Option<Density>,
    /// Whether the material is water, of which `q.s.` means the rest.
    pub is_water: bool,
}

/// The amounts of a recipe.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Weighed {
    /// Whether they are percents or masses.
    pub basis: WrittenIn,
    /// One for each line.
    pub amounts: Vec<Amount>,
    /// What each line has to be looked at for.
    pub doubts: Vec<Option<Doubt>>,
    /// What numbers without a unit were taken for.
    pub meaning: Meaning,
    /// Whether any number has no unit.
    pub has_bare: bool,
    /// What the whole weighs, where the recipe says or its masses add up to.
    pub size: Option<Grams>,
}

/// By how much the sum of numbers without a unit may miss a hundred and still be percents.
const HUNDRED_WITHIN: Decimal = Decimal::from_parts(3, 0, 0, false, 0);

/// Works out the amounts. `asked` is what the maker says that numbers without a unit are; otherwise the recipe decides.
#[must_use]
pub fn weigh(lines: &[Weighable<'_>], asked: Option<Meaning>, size: Option<Grams>) -> Weighed {
    let is = |wanted: fn(&Unit) -> bool| {
        lines.iter().any(|line| matches!(line.written, Written::Number { unit: Some(unit), .. } if wanted(unit)))
    };
    let has_percent = is(|unit| *unit == Unit::Percent);
    let has_mass = is(|unit| matches!(unit, Unit::Mass(_) | Unit::Volume(_)));
    let has_parts = is(|unit| *unit == Unit::Parts);
    let fills_up = |line: &Weighable<'_>| {
        *line.written == Written::Rest || (*line.written == Written::QuantumSatis && line.is_water)
    };
    let has_rest = lines.iter().any(fills_up);
    let bare: Vec<Decimal> = lines
        .iter()
        .filter(|line| matches!(line.written, Written::Number { unit: None, .. }))
        .filter_map(|line| line.written.value())
        .collect();
    let sum = bare.iter().try_fold(Decimal::ZERO, |sum, value| sum.checked_add(*value)).unwrap_or(Decimal::MAX);
    let near = |sum: Decimal, whole: Decimal| sum.checked_sub(whole).is_some_and(|off| off.abs() <= HUNDRED_WITHIN);
    let makes_the_size = size.is_some_and(|size| size.value() != Decimal::ONE_HUNDRED && near(sum, size.value()));
    let meaning = asked.unwrap_or({
        if has_percent && !has_mass {
            Meaning::Percent
        } else if (has_mass && !has_percent) || makes_the_size {
            Meaning::Grams
        } else if near(sum, Decimal::ONE_HUNDRED) || (has_rest && sum < Decimal::ONE_HUNDRED) {
            Meaning::Percent
        } else if has_parts {
            Meaning::Parts
        } else {
            Meaning::Grams
        }
    });
    let has_bare = !bare.is_empty();
    let percents = has_percent || (has_bare && meaning == Meaning::Percent);
    // Masses that are filled up to a hundred are grams of a hundred.
    let whole = size.or_else(|| (has_rest && !percents).then(|| Grams::new(Decimal::ONE_HUNDRED).ok()).flatten());
    let basis = if percents || has_rest || lines.iter().all(|line| line.written.value().is_none()) {
        WrittenIn::Percent
    } else {
        WrittenIn::Grams
    };
    let mut weighed = Weighed { basis, amounts: Vec::new(), doubts: Vec::new(), meaning, has_bare, size };
    let nothing = match basis {
        WrittenIn::Percent => Amount::Percent(Percent::ZERO),
        WrittenIn::Grams => Amount::Grams(Grams::ZERO),
    };
    let mut rest_is_given = false;
    for line in lines {
        let (amount, doubt) = match line.written {
            _ if fills_up(line) => {
                let first = !std::mem::replace(&mut rest_is_given, true);
                if first { (Some(Amount::QuantumSatis), None) } else { (None, Some(Doubt::SecondRest)) }
            }
            Written::Missing => (None, Some(Doubt::Missing)),
            Written::NotRead(_) => (None, Some(Doubt::NotRead)),
            Written::Rest | Written::Enough | Written::QuantumSatis => (None, Some(Doubt::Enough)),
            number @ Written::Number { to, unit, .. } => {
                let range = to.is_some().then_some(Doubt::Range);
                let (amount, doubt) = number.value().map_or((None, Some(Doubt::NotRead)), |value| {
                    weigh_number(value, *unit, meaning, basis, whole, line.density)
                });
                (amount, doubt.or(range))
            }
        };
        weighed.amounts.push(amount.unwrap_or(nothing));
        weighed.doubts.push(doubt);
    }
    if weighed.size.is_none() && basis == WrittenIn::Grams {
        let masses =
            weighed.amounts.iter().map(|amount| if let Amount::Grams(mass) = amount { *mass } else { Grams::ZERO });
        weighed.size = masses.into_iter().try_fold(Grams::ZERO, Grams::checked_add).filter(|sum| !sum.is_zero());
    }
    weighed
}

fn weigh_number(
    value: Decimal,
    unit: Option<Unit>,
    meaning: Meaning,
    basis: WrittenIn,
    whole: Option<Grams>,
    density: Option<Density>,
) -> (Option<Amount>, Option<Doubt>) {
    let percent = |value: Decimal| match (basis, Percent::new(value)) {
        (WrittenIn::Percent, Ok(percent)) if value <= Decimal::ONE_HUNDRED => (Some(Amount::Percent(percent)), None),
        (WrittenIn::Percent, _) => (None, Some(Doubt::TooLarge)),
        (WrittenIn::Grams, _) => (None, Some(Doubt::PercentAmongMasses)),
    };
    let mass = |grams: Option<Grams>, doubt: Option<Doubt>| match (basis, grams) {
        (_, None) => (None, Some(Doubt::TooLarge)),
        (WrittenIn::Grams, Some(grams)) => (Some(Amount::Grams(grams)), doubt),
        (WrittenIn::Percent, Some(grams)) => match whole.and_then(|whole| Percent::from_share(grams, whole)) {
            Some(share) => (Some(Amount::Percent(Percent::new(share.value().round_dp(4)).unwrap_or(share))), doubt),
            None => (None, Some(Doubt::MassAmongPercents)),
        },
    };
    match unit {
        None if meaning == Meaning::Percent => percent(value),
        Some(Unit::Percent) => percent(value),
        None | Some(Unit::Parts) => mass(Grams::new(value).ok(), None),
        Some(Unit::Mass(unit)) => mass(unit.to_grams(value), None),
        Some(Unit::Volume(unit)) => match density {
            Some(density) => {
                mass(unit.to_millilitres(value).and_then(|volume| volume.mass_at(density)), Some(Doubt::ByDensity))
            }
            None => (None, Some(Doubt::NoDensity)),
        },
        Some(Unit::Household(_)) => (None, Some(Doubt::NotWeighable)),
    }
}
