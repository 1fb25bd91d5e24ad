//! Neutralising what takes up base by the mol and not by a pH: fatty acids, carbomer, and acids to their last proton.
//!
//! Of fatty acids as much is turned to soap as is asked for: a tenth to a third for a cream, nine tenths and more for a
//! soap (common practice). A carbomer takes four parts of sodium hydroxide to ten, or the same mols of another base, to
//! stand at about pH 6.5 to 7.5 (common practice).

use super::setting::{After, Gas, SetError, after, gas, inside, line_of};
use crate::checks::contents::{Contents, Present};
use crate::checks::cure::{Change, Round, weighable};
use crate::checks::facts::Trait;
use crate::chemistry::Band;
use crate::chemistry::ph::{Solution, predict};
use crate::composition::Makeups;
use crate::formula::LineId;
use crate::material::{ConstituentId, MaterialId};
use crate::quantity::Percent;
use crate::source::Citation;
use stillroom_terms::Class;

/// Base that a kilogram of carbomer takes, in mol: 0.4 g of sodium hydroxide to a gram (common practice).
pub const CARBOMER_TAKES: f64 = 10.0;
/// The pH at which a carbomer then stands (common practice).
pub const CARBOMER_STANDS: (f64, f64) = (6.5, 7.5);
/// A proton with a pKa below this is neutralised; one above stays.
const NEUTRALISED: f64 = 7.5;
/// A base whose conjugate acid has a pKa above this takes up acid.
const TAKES_ACID: f64 = 6.0;

/// How much base neutralises something in a formula.
#[derive(Debug, Clone, PartialEq)]
pub struct Neutralising {
    /// What is neutralised.
    pub acid: ConstituentId,
    /// How much base all of it would take, in mol per 100 g of product.
    pub takes: f64,
    /// The base that is weighed.
    pub base: MaterialId,
    /// The line of it that is there; `None` where one is added.
    pub line: Option<LineId>,
    /// Percent of the base, rounded as it is weighed.
    pub percent: Percent,
    /// Where the pH then lies: for a carbomer by common practice, else predicted. Nothing where it cannot be told.
    pub ph: Option<Band>,
    /// Carbon dioxide that is given off.
    pub gas: Option<Gas>,
    /// Whether the base is caustic as it is handled.
    pub caustic: bool,
    /// Where the figure comes from.
    pub citations: Vec<Citation>,
    /// The changes to the formula.
    pub changes: Vec<Change>,
}

/// How much of a base neutralises a substance of a formula to a degree of 0 to 1.
///
/// # Errors
/// `set.no-data` if the substance takes up no base, is not there, or the material is no base; `ph.amount` for a degree
/// that is none; `set.nothing-gives-way`.
pub fn neutralise(
    contents: &Contents<'_>,
    makeups: &mut Makeups,
    acid: ConstituentId,
    base: MaterialId,
    degree: f64,
) -> Result<Neutralising, SetError> {
    if !(0.0..=1.0).contains(&degree) || degree == 0.0 {
        return Err(crate::chemistry::ph::PhError::Amount.into());
    }
    let present = contents.find(acid).filter(|each| each.percent > 0.0).ok_or(SetError::NoData)?;
    let takes = present.percent / 1000.0 * takes_base(present).ok_or(SetError::NoData)?;
    let inside = inside(contents, makeups, base);
    let facts = |id: &ConstituentId| contents.knowledge.facts(*id);
    let per_kilogram: f64 = inside
        .iter()
        .filter_map(|(id, share)| Some(gives_base(&facts(id)?.brings.as_ref()?.per_kilogram) * share / 100.0))
        .sum();
    if per_kilogram <= 0.0 {
        return Err(SetError::NoData);
    }
    let needed = takes * degree * 1000.0 / per_kilogram;
    let percent = weighable(needed, Round::Down).filter(|percent| !percent.is_zero()).ok_or(SetError::TooMuch)?;
    let line = line_of(contents, base);
    let After { changes, contents: there } = after(contents, makeups, &[(line, base, percent)], None)?;
    let polymer = present.facts.has(Trait::NeedsBase);
    let ph = if polymer.is_some() {
        let (low, high) = CARBOMER_STANDS;
        Some(Band { low, estimate: f64::midpoint(low, high), high })
    } else {
        predict::predict(&there).ok().map(|prediction| prediction.ph)
    };
    let carbonate = inside.iter().any(|(id, _)| facts(id).is_some_and(|it| it.has(Trait::Carbonate).is_some()));
    let caustic = inside.iter().any(|(id, _)| facts(id).is_some_and(|it| it.has(Trait::Caustic).is_some()));
    let own = present.facts.brings.as_ref().and_then(|brings| brings.citation);
    let citations = [polymer, Some(Citation::COMMON_PRACTICE).filter(|_| polymer.is_some()), own];
    Ok(Neutralising {
        acid,
        takes,
        base,
        line,
        percent,
        // A carbomer's own figure holds for the whole of it only.
        ph: ph.filter(|_| polymer.is_none() || degree > 0.99),
        gas: carbonate.then(|| gas(takes * degree)),
        caustic,
        citations: citations.into_iter().flatten().collect(),
        changes,
    })
}

/// What can be neutralised in a formula: fatty acids, carbomers and acids, most base first, each with the base it takes
/// in mol per 100 g of product.
#[must_use]
pub fn takers(contents: &Contents<'_>) -> Vec<(ConstituentId, f64)> {
    let each = contents.present.iter().filter(|each| each.percent > 0.0);
    let mut found: Vec<(ConstituentId, f64)> =
        each.filter_map(|each| Some((each.id, each.percent / 1000.0 * takes_base(each)?))).collect();
    found.sort_by(|one, other| other.1.total_cmp(&one.1));
    found
}

/// Base that a kilogram of a substance takes, in mol.
fn takes_base(each: &Present<'_>) -> Option<f64> {
    if each.facts.has(Trait::NeedsBase).is_some() {
        return Some(CARBOMER_TAKES);
    }
    let brings = &each.facts.brings.as_ref()?.per_kilogram;
    let protons: f64 = brings
        .acids()
        .map(|(acid, moles)| {
            let from = usize::try_from(acid.charge()).unwrap_or(0);
            let steps = acid.steps().iter().skip(from);
            let lost = steps.filter(|step| each.class == Class::FattyAcid || -step.log_k < NEUTRALISED).count();
            moles * f64::from(u8::try_from(lost).unwrap_or(u8::MAX))
        })
        .sum();
    let net = protons - brings.strong_charge().max(0.0);
    (net > 1e-9 && gives_base(brings) <= 0.0).then_some(net)
}

/// Base that a kilogram of a substance gives, in mol: hydroxide, what amines and carbonates take up.
fn gives_base(brings: &Solution<'_>) -> f64 {
    let of_acids: f64 = brings
        .acids()
        .map(|(acid, moles)| {
            let neutral = usize::try_from(acid.charge()).unwrap_or(0);
            let steps = acid.steps().iter().enumerate();
            let each = steps.map(|(at, step)| match at < neutral {
                true if -step.log_k > TAKES_ACID => 1.0,
                false if -step.log_k < TAKES_ACID => -1.0,
                _ => 0.0,
            });
            moles * each.sum::<f64>()
        })
        .sum();
    brings.strong_charge() + of_acids
}
