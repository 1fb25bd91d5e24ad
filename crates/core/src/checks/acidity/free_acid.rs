//! What of an alpha hydroxy acid or of salicylic acid is free at the pH, beside the figures of law and advice.
//!
//! The figures count all of it, as acid. What acts on skin is the free acid: the part that keeps its proton at the pH. Where
//! advice names a pH, its bound at that pH says how much free acid it bears.

use crate::checks::contents::{Contents, PhBand};
use crate::checks::facts::{Limit, Span, Trait};
use crate::chemistry::dissociation::undissociated;
use crate::material::ConstituentId;
use crate::source::{Basis, Citation, Cited};

/// Salicylic acid in a drug against acne in the United States, in percent: a cosmetic that claims to act on acne is one.
pub const US_ACNE: Cited<Span> = Cited {
    value: Span { low: 0.5, high: 2.0 },
    citation: Citation {
        source: "21 CFR 333.310: acne active ingredients",
        locator: "(d), 75 FR 9776, March 4, 2010",
        as_of: "2023-12",
        basis: Basis::Published,
    },
};
/// The substance [`US_ACNE`] is about, by its INCI name.
const SALICYLIC: &str = "Salicylic Acid";

/// An acid in a product, and what of it is free.
#[derive(Debug, Clone, PartialEq)]
pub struct FreeAcid<'a> {
    /// The acid.
    pub acid: ConstituentId,
    /// All of it with its salts, as acid, in percent of the product.
    pub total: f64,
    /// The pH it was worked out at.
    pub ph: PhBand,
    /// Free acid in percent of the product, at that pH.
    pub free: f64,
    /// The least it may be: at the alkaline end of the pH.
    pub least: f64,
    /// The most it may be: at the acid end.
    pub most: f64,
    /// Figures of law and advice.
    pub figures: Vec<Figure<'a>>,
    /// What the drug law of the United States has for it.
    pub us_drug: Option<Cited<Span>>,
    /// Where the constants were found.
    pub citation: Citation,
}

/// A figure of law or advice that an acid counts towards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure<'a> {
    /// The limit.
    pub limit: &'a Limit,
    /// The most it allows this product, in percent as it counts.
    pub bound: f64,
    /// What counts towards it here.
    pub counted: f64,
    /// Free acid that so much would be at the lowest pH it names, in percent; nothing where it names none.
    pub free_at_bound: Option<f64>,
}

/// Every alpha hydroxy acid and salicylic acid, most first. Empty where the pH is not known.
#[must_use]
pub fn free_acids<'a>(contents: &Contents<'a>) -> Vec<FreeAcid<'a>> {
    let Some(ph) = contents.ph() else { return Vec::new() };
    let mut acids: Vec<ConstituentId> = Vec::new();
    for each in &contents.present {
        let acid = each.facts.salt_of.map_or(each.id, |salt| salt.acid);
        if !acids.contains(&acid) {
            acids.push(acid);
        }
    }
    let mut found: Vec<FreeAcid<'a>> = acids.into_iter().filter_map(|acid| free_acid(contents, acid, ph)).collect();
    found.sort_by(|one, other| other.total.total_cmp(&one.total));
    found
}

fn free_acid<'a>(contents: &Contents<'a>, acid: ConstituentId, ph: PhBand) -> Option<FreeAcid<'a>> {
    let facts = contents.knowledge.facts(acid)?;
    let steps = facts.acid.as_ref()?;
    let salicylic = contents.source.constituent(acid).is_some_and(|own| own.inci == SALICYLIC);
    if facts.has(Trait::AlphaHydroxyAcid).is_none() && !salicylic {
        return None;
    }
    let as_acid = |each: &crate::checks::Present<'_>| -> Option<f64> {
        if each.id == acid {
            return Some(each.percent);
        }
        let salt = each.facts.salt_of.filter(|salt| salt.acid == acid)?;
        Some(each.percent * facts.molar_mass?.value * salt.equivalents / each.facts.molar_mass?.value)
    };
    let total: f64 = contents.present.iter().filter_map(as_acid).sum();
    let share = |ph: f64| undissociated(&steps.steps, ph);
    let counts = |limit: &Limit| limit.members.iter().any(|(member, _)| *member == acid);
    let figures = contents.touched.iter().copied().filter(|limit| !limit.preservative && counts(limit));
    let figures = figures.filter_map(|limit| {
        let bound = contents.bound_of(limit)?;
        let counted = contents.counting(limit).map(|(id, factor)| contents.percent_of(id) * factor).sum();
        let free_at_bound = limit.least_ph.map(|least| bound * share(least));
        Some(Figure { limit, bound, counted, free_at_bound })
    });
    (total > 0.0).then(|| FreeAcid {
        acid,
        total,
        ph,
        free: total * share(ph.value),
        least: total * share(ph.high()),
        most: total * share(ph.low()),
        figures: figures.collect(),
        us_drug: salicylic.then_some(US_ACNE),
        citation: steps.citation,
    })
}
