//! Whether something keeps microbes from growing in the water that is really there.
//!
//! What a preservative can do is worked out from what is in the jar: carried in by every line, undissociated at the
//! product's pH, and left in the water once the oil has taken its share. No answer here proves that a product is
//! preserved: a challenge test (ISO 11930) decides.

mod gap;
mod incompatible;
mod missing;
mod no_data;
mod not_needed;
mod oil_loss;
mod over_limit;
mod over_usual;
mod ph_unknown;
mod ph_window;
mod releases_formaldehyde;
mod too_hot;
mod under_usual;
mod undissociated;

use super::Registered;
use super::contents::{Contents, Present};
use super::cure::{self, Change, Cure, Round, weighable};
use super::facts::{Authority, Microbe, Preservative, Strength, Trait};
use super::finding::Value;
use super::solubility::most_dissolved;
use crate::chemistry::dissociation::undissociated as share_undissociated;
use crate::chemistry::water_activity::{combine, ethanol_band, glycerol_band, propanediol_band};
use crate::chemistry::{Band, MassFraction};
use crate::extract::keeping::LowRisk;
use crate::formula::PhaseKind;
use crate::material::{ConstituentId, Makeup};
use crate::quantity::Percent;
use crate::source::{Basis, Citation};

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
    Registered { code: no_data::CODE, check: no_data::check },
];

/// Of a usual range only half its lower end is worth counting on; less is a trace carried in.
const WORTH_COUNTING: f64 = 0.5;
/// Less water than this, in percent, is what every oil holds.
const DRY: f64 = 0.5;

const ISO_29621: Citation = Citation {
    source: "ISO 29621:2017, microbiologically low-risk products, in the words of a test institute's summary",
    locator: "",
    as_of: "2017",
    basis: Basis::Published,
};
const CHALLENGE_TEST: Citation = Citation::recalled("ISO 11930, challenge test: it decides, not a computation");

/// A preservative in the jar.
#[derive(Clone, Copy)]
struct Held<'a> {
    present: &'a Present<'a>,
    preservative: &'a Preservative,
}

impl Held<'_> {
    /// Whether there is enough of it to count on.
    fn counts(&self) -> bool {
        let low = self.preservative.usual.map_or(0.0, |usual| usual.value.low);
        self.present.percent > 0.0 && self.present.percent >= low * WORTH_COUNTING
    }
}

/// Preservatives and boosters in the jar, most first.
fn held<'a>(contents: &'a Contents<'a>) -> impl Iterator<Item = Held<'a>> {
    contents.present.iter().filter(|present| present.percent > 0.0).filter_map(|present| {
        let preservative = present.facts.preservative.as_ref()?;
        Some(Held { present, preservative })
    })
}

/// Those that can carry a product and of which there is enough to count on.
fn carriers<'a>(contents: &'a Contents<'a>) -> impl Iterator<Item = Held<'a>> {
    held(contents).filter(|held| held.preservative.carries && held.counts())
}

/// Why a product needs no preservative.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Spared {
    /// There is no water.
    Dry,
    /// What water there is is bound.
    Bound,
    /// There is enough alcohol.
    Alcohol,
    /// It is too acid.
    Acid,
    /// It is too alkaline.
    Alkaline,
}

impl Spared {
    const fn word(self) -> &'static str {
        match self {
            Self::Dry => "spared.dry",
            Self::Bound => "spared.bound",
            Self::Alcohol => "spared.alcohol",
            Self::Acid => "spared.acid",
            Self::Alkaline => "spared.alkaline",
        }
    }
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

/// Why it needs no preservative, if it needs none (ISO 29621).
fn spared(contents: &Contents<'_>) -> Option<Spared> {
    if contents.water <= DRY {
        return Some(Spared::Dry);
    }
    if water_activity(contents).high <= LowRisk::WATER_ACTIVITY {
        return Some(Spared::Bound);
    }
    let alcohol = contents.cosolvents.iter().find(|(kind, ..)| *kind == super::facts::Cosolvent::Ethanol);
    if alcohol.is_some_and(|(_, percent, _)| *percent > LowRisk::ALCOHOL_PERCENT) {
        return Some(Spared::Alcohol);
    }
    match contents.ph()? {
        ph if ph <= LowRisk::ACID_PH => Some(Spared::Acid),
        ph if ph >= LowRisk::ALKALINE_PH => Some(Spared::Alkaline),
        _ => None,
    }
}

/// Whether what water there is is bound, so that the product keeps by that.
pub(super) fn keeps_by_bound_water(contents: &Contents<'_>) -> bool {
    spared(contents) == Some(Spared::Bound)
}

/// Which share of a preservative acts at a pH: all of it, unless it is a weak acid or its salt.
fn acting_share(contents: &Contents<'_>, present: &Present<'_>, ph: f64) -> Option<f64> {
    let steps = &acid_of(contents, present)?.0.steps;
    Some(share_undissociated(steps, ph))
}

/// The acid behind a preservative, and what a percent of it makes as acid.
fn acid_of<'a>(contents: &Contents<'a>, present: &Present<'a>) -> Option<(&'a super::facts::Acid, f64)> {
    if let Some(salt) = present.facts.salt_of {
        let facts = contents.knowledge.facts(salt.acid)?;
        let factor = facts.molar_mass?.value * salt.equivalents / present.facts.molar_mass?.value;
        return Some((facts.acid.as_ref()?, factor));
    }
    Some((present.facts.acid.as_ref()?, 1.0))
}

/// Strength against each kind of microbe, the best of all that count.
fn covered(contents: &Contents<'_>) -> [Strength; 4] {
    let counted = held(contents).filter(Held::counts);
    counted.fold([Strength::None; 4], |best, held| better(best, held.preservative.spectrum))
}

fn better(a: [Strength; 4], b: [Strength; 4]) -> [Strength; 4] {
    core::array::from_fn(|at| a[at].max(b[at]))
}

fn is_covered(strengths: [Strength; 4]) -> bool {
    strengths.iter().all(|strength| *strength >= Strength::Fair)
}

/// Microbes that nothing holds.
fn uncovered(strengths: [Strength; 4]) -> impl Iterator<Item = Microbe> {
    Microbe::ALL.into_iter().zip(strengths).filter(|(_, strength)| *strength < Strength::Fair).map(|(kind, _)| kind)
}

/// One or two preservatives that close every gap beside what is there: inside their pH window, their usual range and every
/// limit, and without formaldehyde or a charge. The first that does it, singles before pairs.
fn closing_gaps(contents: &Contents<'_>, besides: [Strength; 4]) -> Option<Vec<(ConstituentId, Percent)>> {
    let fitting: Vec<(ConstituentId, Percent, [Strength; 4])> =
        contents.knowledge.preservatives().iter().filter_map(|id| fits(contents, *id)).collect();
    let closes = |added: [Strength; 4]| is_covered(better(besides, added));
    if let Some((id, percent, _)) = fitting.iter().find(|(.., spectrum)| closes(*spectrum)) {
        return Some(vec![(*id, *percent)]);
    }
    fitting.iter().enumerate().find_map(|(at, first)| {
        let second = fitting[at + 1..].iter().find(|second| closes(better(first.2, second.2)))?;
        Some(vec![(first.0, first.1), (second.0, second.1)])
    })
}

/// A preservative that could be added, and how much.
fn fits(contents: &Contents<'_>, id: ConstituentId) -> Option<(ConstituentId, Percent, [Strength; 4])> {
    let facts = contents.knowledge.facts(id)?;
    let preservative = facts.preservative.as_ref().filter(|each| each.carries)?;
    contents.knowledge.material_of(id)?;
    if facts.has(Trait::FormaldehydeReleaser).is_some() || facts.has(Trait::CationicActive).is_some() {
        return None;
    }
    let window = preservative.ph?.value;
    // With no pH to go by it has to work anywhere on skin.
    let (lowest, highest) = contents.ph().map_or((4.5, 6.5), |ph| (ph, ph));
    if lowest < window.low || highest > window.high {
        return None;
    }
    let usual = preservative.usual?.value;
    let dissolves = most_dissolved(contents, id).unwrap_or(f64::INFINITY);
    let percent = weighable(f64::midpoint(usual.low, usual.high).min(dissolves), Round::Down)?;
    if percent.to_physics() < usual.low {
        return None;
    }
    let allowed = contents.knowledge.limits().iter().all(|limit| {
        let Some((_, factor)) = limit.members.iter().find(|(member, _)| *member == id) else { return true };
        let most = contents.by_purpose(limit.leave_on, limit.rinse_off);
        let now: f64 = limit.members.iter().map(|(member, factor)| contents.percent_of(*member) * factor).sum();
        limit.authority != Authority::Law || most.is_none_or(|most| now + percent.to_physics() * factor <= most)
    });
    (allowed && contents.percent_of(id) < usual.low * WORTH_COUNTING).then_some((id, percent, preservative.spectrum))
}

/// Takes a preservative out and puts in what closes the gaps it leaves.
fn replace(contents: &Contents<'_>, present: &Present<'_>) -> Option<Cure> {
    let rest = held(contents).filter(|held| held.counts() && held.present.id != present.id);
    let rest = rest.fold([Strength::None; 4], |best, held| better(best, held.preservative.spectrum));
    let lines: Vec<_> = present.lines().collect();
    let simple = lines.iter().all(|line| {
        let material = contents.formula.line(*line).and_then(|line| contents.material_of(line));
        material.is_some_and(|material| matches!(material.makeup, Makeup::Simple(_)))
    });
    if !simple {
        return None;
    }
    let new = closing_gaps(contents, rest)?;
    let added = cure::add(contents, &new, PhaseKind::CoolDown)?;
    let removed = cure::remove(contents, &lines)?;
    // Where no line is q.s. each of the two would set the water: the sum of both is what it has to be.
    let sets_water = |change: &Change| matches!(change, Change::SetPercent { .. });
    if added.changes.iter().chain(&removed.changes).any(sets_water) {
        return None;
    }
    let names = new.iter().map(|(id, _)| *id).collect();
    let changes = removed.changes.into_iter().chain(added.changes).collect();
    let values = vec![("substance", Value::Substance(present.id)), ("substances", Value::Substances(names))];
    Some(Cure::of("cure.replace", values, changes))
}
