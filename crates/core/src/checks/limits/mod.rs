//! What the law and advice allow, what is usual, and what a label or a jar has to say.
//!
//! A limit is a bound on a weighted sum over all lines: salts count as what the law expresses them as, and a substance inside
//! an essential oil counts by what such an oil typically and at most holds. The figures are in the tables; nothing here is one.
//! Whether a product may be sold is for the safety assessment that the law asks for.

mod aha;
mod aha_no_ph;
pub(super) mod aha_ph;
pub mod allergens;
pub mod allergens_unknown;
mod caustic;
mod children;
mod conditions;
mod eyes;
mod humectants;
mod kind;
mod no_spf;
mod over_legal;
pub(super) mod over_usual;
mod phototoxic;
mod pregnancy;
mod retinoid;
mod retinoid_kind;
mod sensitiser;
pub(super) mod skin_ph;
mod sun;
mod surfactant_active;
mod under_usual;

use super::Registered;
use super::contents::{Contents, Present};
use super::cure::{Cure, LAST_DIGITS, lower};
use super::facts::{Authority, Facts, Limit, Trait};
use super::finding::{Finding, Severity, Value};
use crate::formula::LineId;
use crate::material::ConstituentId;
use crate::source::{Basis, Citation};

/// The findings of this family.
pub const FINDINGS: &[Registered] = &[
    Registered { code: skin_ph::CODE, check: skin_ph::check },
    Registered { code: over_legal::CODE, check: over_legal::check },
    Registered { code: retinoid::CODE, check: retinoid::check },
    Registered { code: aha::CODE, check: aha::check },
    Registered { code: aha_ph::CODE, check: aha_ph::check },
    Registered { code: aha_no_ph::CODE, check: aha_no_ph::check },
    Registered { code: phototoxic::CODE, check: phototoxic::check },
    Registered { code: caustic::CODE, check: caustic::check },
    Registered { code: sensitiser::CODE, check: sensitiser::check },
    Registered { code: no_spf::CODE, check: no_spf::check },
    Registered { code: kind::CODE, check: kind::check },
    Registered { code: conditions::CODE, check: conditions::check },
    Registered { code: retinoid_kind::CODE, check: retinoid_kind::check },
    Registered { code: surfactant_active::CODE, check: surfactant_active::check },
    Registered { code: over_usual::CODE, check: over_usual::check },
    Registered { code: under_usual::CODE, check: under_usual::check },
    Registered { code: humectants::CODE, check: humectants::check },
    Registered { code: allergens::CODE, check: allergens::check },
    Registered { code: allergens_unknown::CODE, check: allergens_unknown::check },
    Registered { code: sun::CODE, check: sun::check },
    Registered { code: pregnancy::CODE, check: pregnancy::check },
    Registered { code: children::CODE, check: children::check },
    Registered { code: eyes::CODE, check: eyes::check },
];

/// Molar masses are known to a part in ten thousand: a sum that was converted must exceed a limit by more to be over it.
const CONVERTED: f64 = 1.0001;

const INSIDE_OILS: Citation = Citation {
    source: "Percent of the oil in the product multiplied by what the oil holds",
    locator: "",
    as_of: "",
    basis: Basis::Computed,
};

/// What counts towards a limit, in percent of the product.
#[derive(Debug, Clone, Copy, Default)]
struct Counted {
    /// With what essential oils typically hold.
    typical: f64,
    /// With the most they hold.
    most: f64,
}

fn count(contents: &Contents<'_>, limit: &Limit) -> Counted {
    let direct: f64 = contents.counting(limit).map(|(id, factor)| contents.percent_of(id) * factor).sum();
    let mut counted = Counted { typical: direct, most: direct };
    if !limit.inside_oils.is_empty() {
        for oil in &contents.present {
            for inside in oil.facts.inside.iter().filter(|inside| limit.inside_oils.contains(&inside.name)) {
                counted.typical += oil.percent * inside.typical.unwrap_or(0.0) / 100.0;
                counted.most += oil.percent * inside.most.or(inside.typical).unwrap_or(0.0) / 100.0;
            }
        }
    }
    counted
}

/// The strictest row of a limit that this product would break if it were of its kind, where nobody says what kind it is.
fn broken_by_another_kind<'c>(contents: &'c Contents<'_>, limit: &'c Limit) -> Option<(&'c Limit, f64, Counted)> {
    let bound = contents.bound_of(limit)?;
    let counted = count(contents, limit);
    if counted.most <= 0.0 || counted.most > tolerated(limit, bound) {
        return None;
    }
    let (stricter, least) = contents.stricter_than(limit)?;
    let counted = count(contents, stricter);
    (counted.most > tolerated(stricter, least)).then_some((stricter, least, counted))
}

/// What must be exceeded for a sum to be over a limit.
#[allow(clippy::float_cmp, reason = "a factor of one is written as one")]
fn tolerated(limit: &Limit, bound: f64) -> f64 {
    let exact = limit.inside_oils.is_empty() && limit.members.iter().all(|(_, factor)| *factor == 1.0);
    if exact { bound + LAST_DIGITS } else { bound * CONVERTED }
}

/// Everything that counts, with the most it brings: what a cure has to bring down.
fn weights(contents: &Contents<'_>, limit: &Limit) -> Vec<(ConstituentId, f64)> {
    let weights = contents.present.iter().map(|each| (each.id, brings_towards(contents, limit, each.id, each.facts)));
    weights.filter(|(_, weight)| *weight > 0.0).collect()
}

/// What a percent of a substance brings towards a limit, with the most it may hold; nothing where it does not count.
pub(super) fn brings_towards(contents: &Contents<'_>, limit: &Limit, id: ConstituentId, facts: &Facts) -> f64 {
    let inside = facts.inside.iter().filter(|inside| limit.inside_oils.contains(&inside.name));
    let most: f64 = inside.filter_map(|inside| inside.most.or(inside.typical)).sum();
    contents.counts_towards(limit, id).unwrap_or(0.0) + most / 100.0
}

/// The cure that brings what counts down to a bound.
fn keep(contents: &Contents<'_>, limit: &Limit, counted: Counted, bound: f64) -> Option<Cure> {
    lower(contents, &weights(contents, limit), counted.most, bound)
}

/// Fills in what every finding about a limit says.
fn describe(finding: Finding, contents: &Contents<'_>, limit: &Limit, counted: Counted, bound: f64) -> Finding {
    let mut finding = finding
        .with("subject", Value::Name(limit.subject))
        .with("present", Value::Percent(counted.typical))
        .with("limit", Value::Percent(bound))
        .with("jurisdiction", Value::Name(limit.jurisdiction))
        .with("as_of", Value::Name(limit.as_of))
        .with("use", Value::Word(contents.by_purpose("use.leave-on", "use.rinse-off")))
        .with(
            "authority",
            Value::Word(match limit.authority {
                Authority::Law => "authority.law",
                Authority::Advice => "authority.advice",
            }),
        )
        .cite([limit.citation]);
    // Advice has no entry.
    if !["-", "guidance", ""].contains(&limit.entry) {
        finding = finding.with("entry", Value::Name(limit.entry));
    }
    for (id, factor) in contents.counting(limit) {
        let Some(present) = contents.find(id).filter(|present| present.percent > 0.0) else { continue };
        finding = finding.fed_by(present.lines()).step(
            "work.as-expressed",
            vec![
                ("substance", Value::Substance(id)),
                ("present", Value::Percent(present.percent)),
                ("factor", Value::Number(factor)),
                ("product", Value::Percent(present.percent * factor)),
            ],
        );
    }
    for oil in contents.present.iter().filter(|oil| oil.percent > 0.0) {
        for inside in oil.facts.inside.iter().filter(|inside| limit.inside_oils.contains(&inside.name)) {
            let most = inside.most.or(inside.typical).unwrap_or(0.0);
            finding = finding.fed_by(oil.lines()).cite([inside.citation, INSIDE_OILS]).step(
                "work.inside-oil",
                vec![
                    ("substance", Value::Substance(oil.id)),
                    ("present", Value::Percent(oil.percent)),
                    ("inside", Value::Name(inside.name)),
                    ("typical", Value::Percent(inside.typical.unwrap_or(0.0))),
                    ("most", Value::Percent(most)),
                    ("product", Value::Percent(oil.percent * inside.typical.unwrap_or(0.0) / 100.0)),
                    ("product_most", Value::Percent(oil.percent * most / 100.0)),
                ],
            );
        }
    }
    if !limit.conditions.is_empty() {
        finding = finding.step("work.conditions", vec![("conditions", Value::Name(limit.conditions))]);
    }
    finding
}

/// Whether every substance of a limit has a trait.
fn all_have(contents: &Contents<'_>, limit: &Limit, wanted: Trait) -> bool {
    let has = |id: ConstituentId| contents.knowledge.facts(id).is_some_and(|facts| facts.has(wanted).is_some());
    !limit.members.is_empty() && limit.members.iter().all(|(id, _)| has(*id))
}

/// Whether a limit is about fruit acids: it states a pH.
fn is_of_fruit_acid(contents: &Contents<'_>, limit: &Limit) -> bool {
    let acid = |id: ConstituentId| {
        contents.knowledge.facts(id).is_some_and(|facts| facts.has(Trait::AlphaHydroxyAcid).is_some())
    };
    limit.least_ph.is_some() && limit.members.iter().any(|(id, _)| acid(*id))
}

/// Limits of one kind that this use has, with their bound and what counts, where something does.
fn limits_of<'a>(contents: &Contents<'a>, wanted: impl Fn(&Limit) -> bool) -> Vec<(&'a Limit, f64, Counted)> {
    let mut found = Vec::new();
    for limit in contents.touched.iter().copied() {
        let Some(bound) = contents.bound_of(limit) else { continue };
        let counted = count(contents, limit);
        if counted.most > 0.0 && !limit.preservative && wanted(limit) {
            found.push((limit, bound, counted));
        }
    }
    found
}

/// A finding that only names substances, most first: a caution for the label or the person.
fn naming(
    code: &'static str,
    severity: Severity,
    substances: &[&Present<'_>],
    citations: impl IntoIterator<Item = Citation>,
) -> Finding {
    let lines: Vec<LineId> = substances.iter().flat_map(|each| each.lines()).collect();
    Finding::new(code, severity, "formula")
        .with("substances", Value::Substances(substances.iter().map(|each| each.id).collect()))
        .with("total", Value::Percent(substances.iter().map(|each| each.percent).sum()))
        .fed_by(lines)
        .cite(citations)
}

/// Substances with a trait, with where that was found.
fn traced<'c, 'a>(contents: &'c Contents<'a>, wanted: Trait) -> (Vec<&'c Present<'a>>, Vec<Citation>) {
    let found: Vec<&Present<'a>> = contents.with(wanted).collect();
    let citations = found.iter().filter_map(|each| each.facts.has(wanted)).collect();
    (found, citations)
}
