//! Which message says what of making it with what one has: why something is offered, what becomes different, what is in the way.

use crate::messages::names::word;
use crate::messages::sentences::{class, key_of_word, list, list_and, with_unit};
use crate::messages::swap as says;
use crate::rooms::findings::present::{write_rounded, write_significant};
use rust_decimal::Decimal;
use stillroom_core::checks::About;
use stillroom_core::checks::facts::Span;
use stillroom_core::number::{DecimalMark, write_between};
use stillroom_core::rebuild::substitutes::{Difference, Reason};
use stillroom_core::rebuild::{Bound, Conflict, GivingWay, NoAnswer};
use stillroom_core::unit::TemperatureUnit;
use stillroom_core::{ConstituentId, Layer, MaterialId};

type Inci<'a> = &'a dyn Fn(ConstituentId) -> String;
type Named<'a> = &'a dyn Fn(MaterialId) -> String;

fn percent(value: f64, mark: DecimalMark) -> String {
    with_unit(&write_significant(value, 3, mark), "%")
}

fn exactly(value: Decimal, mark: DecimalMark) -> String {
    write_between(value.round_dp(3), 0, 3, mark)
}

/// Why something is offered.
pub(crate) fn reason(reason: &Reason, inci: Inci<'_>, unit: TemperatureUnit, mark: DecimalMark) -> String {
    let one = |value: f64| write_rounded(value, 1, mark);
    match reason {
        Reason::SameSubstance { substance, before, after } => {
            says::reason_same_substance(&inci(*substance), &percent(*before, mark), &percent(*after, mark))
        }
        Reason::SameActing { acid } => says::reason_same_acting(&inci(*acid)),
        Reason::SameInPart { share } => says::reason_same_in_part(&percent(share * 100.0, mark)),
        Reason::SameGroup { group } => says::reason_same_group(&says::group(&key_of_word(group))),
        Reason::SameClass { class: of } => says::reason_same_class(class(*of)),
        Reason::Balance { before, after } => says::reason_balance(&one(*before), &one(*after)),
        Reason::RequiredBalance { before, after } => says::reason_required_balance(&one(*before), &one(*after)),
        Reason::Melting { before, after } => {
            let degrees = |value: f64| with_unit(&write_rounded(unit.of_celsius(value), 0, mark), unit.symbol());
            says::reason_melting(&degrees(*before), &degrees(*after))
        }
        Reason::FattyAcids { alike } => {
            says::reason_fatty_acids(&with_unit(&write_rounded(alike * 100.0, 0, mark), "%"))
        }
        Reason::Spectrum => says::reason_spectrum().to_owned(),
    }
}

fn span(span: Span, mark: DecimalMark) -> (String, String) {
    (write_significant(span.low, 3, mark), write_significant(span.high, 3, mark))
}

/// What becomes different.
pub(crate) fn difference(difference: &Difference, inci: Inci<'_>, mark: DecimalMark) -> String {
    match difference {
        Difference::Feel { before, after } => {
            says::feels(&says::feel(&key_of_word(after)), &says::feel(&key_of_word(before)))
        }
        Difference::Said(note) => word(note).to_owned(),
        Difference::Brings(id) => says::brings_also(&inci(*id)),
        Difference::Lacks(id) => says::lacks(&inci(*id)),
        Difference::Window(window) => {
            let (low, high) = span(*window, mark);
            says::window(&low, &high)
        }
        Difference::Dose(dose) => {
            let (low, high) = span(*dose, mark);
            says::dosed(&low, &with_unit(&high, "%"))
        }
        Difference::NeedsBase => says::needs_base().to_owned(),
        Difference::KeepCool => says::keep_cool().to_owned(),
        Difference::RancidSooner => says::rancid_sooner().to_owned(),
    }
}

/// What a hand feels of more or less of a layer.
pub(crate) fn felt(layer: Layer, more: bool, before: &str, after: &str) -> Option<String> {
    let say: fn(&str, &str) -> String = match (layer, more) {
        (Layer::Oils, true) => says::felt_oils_more,
        (Layer::Oils, false) => says::felt_oils_less,
        (Layer::Humectants, true) => says::felt_humectants_more,
        (Layer::Humectants, false) => says::felt_humectants_less,
        (Layer::Solids, true) => says::felt_solids_more,
        (Layer::Solids, false) => says::felt_solids_less,
        (Layer::Thickeners, true) => says::felt_thickeners_more,
        (Layer::Thickeners, false) => says::felt_thickeners_less,
        _ => return None,
    };
    Some(say(after, before))
}

/// What a bound is about.
fn bound(bound: Bound, inci: Inci<'_>, named: Named<'_>) -> String {
    match bound {
        Bound::AtHand(material) => says::bound_at_hand(&named(material)),
        Bound::Needs(material) => says::bound_needs(&named(material)),
        Bound::Demand(about) => match about {
            About::Limit { subject, jurisdiction, law: true } => says::bound_law(word(subject), jurisdiction),
            About::Limit { subject, jurisdiction, law: false } => says::bound_advice(word(subject), jurisdiction),
            About::Dissolves(id) => says::bound_dissolves(&inci(id)),
            About::Dose(id) => says::bound_dose(&inci(id)),
            About::Usual(id) => says::bound_usual(&inci(id)),
            About::Wanted(id) => says::bound_wanted(&inci(id)),
            About::Emulsifier => says::bound_emulsifier().to_owned(),
            About::Balance => says::bound_balance().to_owned(),
            About::Oil => says::bound_oil().to_owned(),
            About::Water => says::bound_water().to_owned(),
            About::Density => says::bound_density().to_owned(),
        },
    }
}

/// A bound that would have to give way, with how far where that is a percent one can read.
fn giving_way(way: &GivingWay, inci: Inci<'_>, named: Named<'_>, mark: DecimalMark) -> String {
    let name = bound(way.bound, inci, named);
    let has_no_percent = matches!(way.bound, Bound::Demand(About::Emulsifier | About::Balance | About::Density));
    if has_no_percent {
        return says::gives_way(&name);
    }
    let with = |value: Decimal| with_unit(&exactly(value, mark), "%");
    says::gives_way_to(&name, &with(way.to), &with(way.from))
}

/// Why there is no answer, and the least that would help.
pub(crate) fn no_answer(error: &NoAnswer, inci: Inci<'_>, named: Named<'_>, mark: DecimalMark) -> Vec<String> {
    match error {
        NoAnswer::NothingAtHand => vec![says::no_nothing_at_hand().to_owned()],
        NoAnswer::Unbalanced => vec![says::no_unbalanced().to_owned()],
        NoAnswer::TooMany { most } => vec![says::no_too_many(&most.to_string())],
        NoAnswer::TooLarge => vec![says::no_too_large().to_owned()],
        NoAnswer::Failed => vec![says::no_failed().to_owned()],
        NoAnswer::StepTooCoarse { broken } => {
            let bounds: Vec<String> = broken.iter().map(|each| bound(*each, inci, named)).collect();
            vec![says::no_step_too_coarse(&list(&bounds))]
        }
        NoAnswer::Conflict(Conflict { in_the_way, ways_out, together }) => {
            let mut bounds: Vec<String> = in_the_way.iter().map(|each| bound(*each, inci, named)).collect();
            bounds.dedup();
            let bounds: Vec<&str> = bounds.iter().map(String::as_str).collect();
            let mut said = vec![says::no_conflict(&list_and(&bounds))];
            if let Some(least) = ways_out.first() {
                said.push(says::least_relaxation(&giving_way(least, inci, named, mark)));
                said.extend(
                    ways_out.iter().skip(1).take(2).map(|way| says::or_else(&giving_way(way, inci, named, mark))),
                );
            } else if together.is_empty() {
                said.push(says::nothing_gives_way().to_owned());
            } else {
                let all: Vec<String> = together.iter().map(|way| giving_way(way, inci, named, mark)).collect();
                said.push(says::least_together(&list(&all)));
            }
            said
        }
    }
}
