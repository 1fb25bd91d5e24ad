//! Whether something keeps microbes from growing in the water that is really there.
//!
//! What a preservative can do is worked out from what is in the jar: carried in by every line, undissociated at the
//! product's pH, and left in the water once the oil has taken its share. No answer here proves that a product is
//! preserved: a challenge test (ISO 11930) decides.

mod acting;
mod gap;
mod incompatible;
mod missing;
mod no_data;
mod not_needed;
mod oil_loss;
mod over_limit;
pub mod over_ph;
mod over_usual;
mod ph_unknown;
mod ph_window;
mod releases_formaldehyde;
mod slow;
mod too_hot;
mod under_usual;
mod undissociated;

use super::Registered;
use super::contents::{Contents, Present};
use super::cure::{self, Change, Cure, Round, weighable};
use super::facts::{Authority, Microbe, Trait};
use super::finding::Value;
use super::solubility::most_dissolved;
use super::stability::is_unprotected;
use crate::chemistry::water_activity::{combine, ethanol_band, glycerol_band, propanediol_band};
use crate::chemistry::{Band, MassFraction};
use crate::extract::keeping::{Conditions, LowRisk, Spectrum, what_it_needs};
use crate::material::{ConstituentId, Makeup};
use crate::quantity::Percent;
use crate::shelf_life::Keeping;
use crate::source::{Basis, Citation};
use acting::{Acting, HELD, WEAKLY};
use stillroom_terms::Class;
use stillroom_terms::PhaseKind;

/// The findings of this family.
pub const FINDINGS: &[Registered] = &[
    Registered { code: missing::CODE, check: missing::check },
    Registered { code: over_limit::CODE, check: over_limit::check },
    Registered { code: gap::CODE, check: gap::check },
    Registered { code: undissociated::CODE, check: undissociated::check },
    Registered { code: oil_loss::CODE, check: oil_loss::check },
    Registered { code: ph_window::CODE, check: ph_window::check },
    Registered { code: ph_unknown::CODE, check: ph_unknown::check },
    Registered { code: incompatible::CODE, check: incompatible::check },
    Registered { code: too_hot::CODE, check: too_hot::check },
    Registered { code: under_usual::CODE, check: under_usual::check },
    Registered { code: over_usual::CODE, check: over_usual::check },
    Registered { code: releases_formaldehyde::CODE, check: releases_formaldehyde::check },
    Registered { code: not_needed::CODE, check: not_needed::check },
    Registered { code: slow::CODE, check: slow::check },
    Registered { code: no_data::CODE, check: no_data::check },
];

/// Code of the finding that nothing acts enough.
pub(super) const MISSING: &str = missing::CODE;
/// Code of the finding that something is not held.
pub(super) const GAP: &str = gap::CODE;
/// Less water than this, in percent, is what every oil holds.
const DRY: f64 = 0.5;
/// An acid of a higher constant is undissociated at any pH of skin care.
const LATE_ACID: f64 = 7.0;

const ISO_29621: Citation = Citation {
    source: "ISO 29621:2017, microbiologically low-risk products, in the words of a test institute's summary",
    locator: "",
    as_of: "2017",
    basis: Basis::Published,
};
const CHALLENGE_TEST: Citation = Citation::recalled("ISO 11930, challenge test: it decides, not a computation");

/// Preservatives and boosters in the jar with what of each acts, most first.
fn acting<'a>(contents: &'a Contents<'a>) -> Vec<Acting<'a>> {
    let present = contents.present.iter().filter(|present| present.percent > 0.0);
    present.filter_map(|present| Acting::of(contents, present)).collect()
}

/// Preservatives that can carry a product and of which enough is in the jar to be meant as one.
fn meant<'a>(contents: &'a Contents<'a>) -> impl Iterator<Item = Acting<'a>> {
    acting(contents).into_iter().filter(|each| each.preservative.carries && each.is_meant())
}

/// Shares of what is enough against each kind of microbe, added up.
fn sum(acting: &[Acting<'_>]) -> [f64; 4] {
    acting.iter().fold([0.0; 4], |sum, each| plus(sum, each.scores))
}

fn plus(a: [f64; 4], b: [f64; 4]) -> [f64; 4] {
    core::array::from_fn(|at| a[at] + b[at])
}

/// Water activity by glycerin, glycols and ethanol alone. Sugars and salts would lower it further: what is left out makes
/// the answer too wet, never too dry.
fn water_activity(contents: &Contents<'_>) -> Band {
    use super::facts::Cosolvent::{Ethanol, Glycerin, Glycol};
    let band = |(kind, percent, _): &(super::facts::Cosolvent, f64, f64)| match kind {
        Glycerin => MassFraction::of(*percent, contents.water).ok().map(glycerol_band),
        Glycol => propanediol_band(*percent, contents.water).ok(),
        Ethanol => ethanol_band(*percent, contents.water).ok(),
    };
    let bands: Vec<Band> = contents.cosolvents.iter().filter_map(band).collect();
    combine(&bands)
}

/// Against what a preservative has to work here: the verdict that an extract gets, too.
fn needs(contents: &Contents<'_>) -> Spectrum {
    // An acid that may be a little weaker than stated, and a base likewise: the worse end.
    needs_at(contents, contents.ph().map(|ph| if ph.value < 7.0 { ph.high() } else { ph.low() }))
}

/// The same at both ends of what the pH may be.
fn needs_at_either_end(contents: &Contents<'_>) -> [Spectrum; 2] {
    let ph = contents.ph();
    [ph.map(crate::checks::PhBand::low), ph.map(crate::checks::PhBand::high)].map(|ph| needs_at(contents, ph))
}

fn needs_at(contents: &Contents<'_>, ph: Option<f64>) -> Spectrum {
    if contents.water <= DRY {
        return Spectrum::Nothing;
    }
    what_it_needs(
        water_activity(contents).high,
        &Conditions { alcohol_percent: alcohol(contents), ph, preserved: false },
    )
}

fn alcohol(contents: &Contents<'_>) -> f64 {
    let alcohol = contents.cosolvents.iter().find(|(kind, ..)| *kind == super::facts::Cosolvent::Ethanol);
    alcohol.map_or(0.0, |(_, percent, _)| *percent)
}

/// Whether a preservative has to hold anything.
fn asks_for_one(contents: &Contents<'_>) -> bool {
    matches!(needs(contents), Spectrum::YeastsAndMoulds | Spectrum::BacteriaYeastsAndMoulds)
}

/// How such a product keeps, by the verdict of these checks.
#[must_use]
pub fn keeping(contents: &Contents<'_>) -> Keeping {
    if contents.water <= DRY {
        return if is_unprotected(contents) { Keeping::DelicateOil } else { Keeping::Anhydrous };
    }
    if !asks_for_one(contents) {
        return Keeping::BoundWater;
    }
    if missing::is_missing(contents, &acting(contents)) { Keeping::UnpreservedWater } else { Keeping::PreservedWater }
}

/// Whether what water there is is bound, so that the product keeps by that.
pub(super) fn keeps_by_bound_water(contents: &Contents<'_>) -> bool {
    contents.water > DRY && water_activity(contents).high <= LowRisk::WATER_ACTIVITY
}

/// Kinds of microbe that have to be held and reach less than a score.
fn below(contents: &Contents<'_>, scores: [f64; 4], score: f64) -> Vec<Microbe> {
    below_of(needs(contents), contents, scores, score)
}

/// Kinds of microbe of a spectrum that reach less than a score.
fn below_of(needs: Spectrum, contents: &Contents<'_>, scores: [f64; 4], score: f64) -> Vec<Microbe> {
    let only_fungi = needs == Spectrum::YeastsAndMoulds;
    let asked = |kind: Microbe| !only_fungi || matches!(kind, Microbe::Yeast | Microbe::Mould);
    let score = score * demand(contents);
    let short = Microbe::ALL.into_iter().zip(scores).filter(|(kind, reached)| asked(*kind) && *reached < score);
    short.map(|(kind, _)| kind).collect()
}

/// Whether what is short is serious: a kind is hardly held, or Gram-negative bacteria, which hurt, are held weakly only.
fn is_serious(contents: &Contents<'_>, scores: [f64; 4]) -> bool {
    !below(contents, scores, WEAKLY).is_empty() || below(contents, scores, HELD).contains(&Microbe::GramNegative)
}

/// How many times as much is asked for where there is food for microbes: honey, juices, flours, proteins (common practice).
fn demand(contents: &Contents<'_>) -> f64 {
    let food: f64 = contents.with(Trait::FeedsMicrobes).map(|each| each.percent).sum();
    if food >= MUCH_FOOD { 1.5 } else { 1.0 }
}

/// Food for microbes, in percent of the product, from which more is asked for.
const MUCH_FOOD: f64 = 0.3;

/// Whether everything that has to be held is.
fn is_held(contents: &Contents<'_>, scores: [f64; 4]) -> bool {
    below(contents, scores, HELD).is_empty()
}

/// With what margin a cure lands above what is enough.
const MARGIN: f64 = 1.1;

/// One or two preservatives that close every gap beside what is there: inside their pH window, their usual range and every
/// limit, and without formaldehyde or a charge. Never one alone as a whole system.
fn closing_gaps(contents: &Contents<'_>, besides: [f64; 4]) -> Option<Vec<(ConstituentId, Percent)>> {
    let fitting: Vec<(ConstituentId, Percent, [f64; 4])> =
        contents.knowledge.preservatives().iter().filter_map(|id| fits(contents, *id)).collect();
    let closes = |added: [f64; 4]| below(contents, plus(besides, added), HELD * MARGIN).is_empty();
    let is_beside_something = besides.iter().any(|score| *score >= WEAKLY);
    let single = fitting.iter().find(|(.., scores)| is_beside_something && closes(*scores));
    if let Some((id, percent, _)) = single {
        return Some(vec![(*id, *percent)]);
    }
    fitting.iter().enumerate().find_map(|(at, first)| {
        let second = fitting[at + 1..].iter().find(|second| closes(plus(first.2, second.2)))?;
        Some(vec![(first.0, first.1), (second.0, second.1)])
    })
}

/// A preservative that could be added, and how much: nine tenths of the most that is usual, allowed and dissolved.
fn fits(contents: &Contents<'_>, id: ConstituentId) -> Option<(ConstituentId, Percent, [f64; 4])> {
    let facts = contents.knowledge.facts(id)?;
    let preservative = facts.preservative.as_ref()?;
    contents.knowledge.material_of(id)?;
    if facts.has(Trait::FormaldehydeReleaser).is_some() || facts.has(Trait::CationicActive).is_some() {
        return None;
    }
    let window = preservative.ph?.value;
    // With no pH to go by it has to work anywhere on skin.
    let (lowest, highest) = contents.ph().map_or((4.5, 6.5), |ph| (ph.at_least(), ph.at_most()));
    if lowest < window.low || highest > window.high {
        return None;
    }
    let usual = preservative.usual?.value;
    let dissolves = most_dissolved(contents, id).unwrap_or(f64::INFINITY);
    let percent = weighable((usual.high * 0.9).min(dissolves), Round::Down)?;
    if percent.to_physics() < usual.low || contents.percent_of(id) >= usual.low * 0.5 {
        return None;
    }
    if !is_allowed(contents, id, percent.to_physics()) {
        return None;
    }
    let class = contents.source.constituent(id)?.class;
    let present =
        Present { id, class, percent: percent.to_physics(), dissolving: percent.to_physics(), facts, trail: &[] };
    let ph = contents.ph().map_or(highest, crate::checks::PhBand::high);
    let scores = Acting::at(contents, &present, preservative, Some(ph)).scores;
    Some((id, percent, scores))
}

/// Whether every limit of the law allows so much of a substance.
fn is_allowed(contents: &Contents<'_>, id: ConstituentId, percent: f64) -> bool {
    contents.knowledge.limits().iter().filter(|limit| limit.authority == Authority::Law).all(|limit| {
        let Some((_, factor)) = limit.members.iter().find(|(member, _)| *member == id) else { return true };
        let others = limit.members.iter().filter(|(member, _)| *member != id);
        let others: f64 = others.map(|(member, factor)| contents.percent_of(*member) * factor).sum();
        contents.bound_of(limit).is_none_or(|most| others + percent * factor <= most)
    })
}

/// Aims at another pH, and adds what preserves there where nothing would: a product that only its pH kept.
pub(super) fn set_ph_and_preserve(contents: &Contents<'_>, ph: f64, round: Round) -> Option<Cure> {
    let aim = cure::set_ph(ph, round)?;
    let mut formula = contents.formula.clone();
    formula.make_changes(&aim.changes, |_| String::new());
    let there = Contents::new(&formula, contents.evaluation, contents.source, contents.knowledge, contents.conditions);
    let acts = acting(&there);
    if !asks_for_one(&there) || !missing::is_missing(&there, &acts) || asks_for_one(contents) {
        return Some(aim);
    }
    let new = closing_gaps(&there, sum(&acts))?;
    let added = cure::add(&there, &new, PhaseKind::CoolDown)?;
    let values = vec![
        ("ph", Value::Ph(formula.target_ph?.to_physics())),
        ("substances", Value::Substances(new.iter().map(|(id, _)| *id).collect())),
    ];
    Some(Cure::of("cure.set-ph-and-add", values, aim.changes.into_iter().chain(added.changes).collect()))
}

/// More of a preservative, by a line that is weighed for it: of an extract that brings a little nobody adds more to preserve.
fn raise_preservative(contents: &Contents<'_>, each: &Acting<'_>, wanted: f64) -> Option<Cure> {
    let is_for_it = |line| {
        let material = contents.formula.line(line).and_then(|line| contents.material_of(line));
        material.is_some_and(|it| it.class == Class::Preservative || matches!(it.makeup, Makeup::Simple(_)))
    };
    let largest = each.present.trail.iter().max_by(|a, b| a.percent.cmp(&b.percent).then(b.line.cmp(&a.line)))?;
    let (id, percent) = (each.present.id, each.present.percent);
    is_for_it(largest.line).then(|| cure::raise(contents, &[(id, 1.0)], percent, wanted)).flatten()
}

/// Takes a preservative out, alone or with the blend that brings it, and puts in what closes the gaps this leaves.
fn replace(contents: &Contents<'_>, present: &Present<'_>) -> Option<Cure> {
    let lines: Vec<_> = present.lines().collect();
    let material_of = |line| contents.formula.line(line).and_then(|line| contents.material_of(line));
    let is_for_it = |line| {
        material_of(line).is_some_and(|it| it.class == Class::Preservative || matches!(it.makeup, Makeup::Simple(_)))
    };
    if !lines.iter().all(|line| is_for_it(*line)) {
        return None;
    }
    let goes = |each: &Acting<'_>| each.present.lines().any(|line| lines.contains(&line));
    let rest: Vec<Acting<'_>> = acting(contents).into_iter().filter(|each| !goes(each)).collect();
    let material = material_of(*lines.first()?)?.id;
    let new = closing_gaps(contents, sum(&rest))?;
    let added = cure::add(contents, &new, PhaseKind::CoolDown)?;
    let removed = cure::remove(contents, &lines)?;
    // Where no line is q.s. each of the two would set the water: the sum of both is what it has to be.
    let sets_water = |change: &Change| matches!(change, Change::SetPercent { .. });
    if added.changes.iter().chain(&removed.changes).any(sets_water) {
        return None;
    }
    let names = new.iter().map(|(id, _)| *id).collect();
    let changes = removed.changes.into_iter().chain(added.changes).collect();
    let values = vec![("material", Value::Material(material)), ("substances", Value::Substances(names))];
    Some(Cure::of("cure.replace", values, changes))
}
