//! What could take the place of a material, by what it is and does, best first, with the reasons and what changes.
//!
//! A substitute is judged by function: the same substance at another strength, the same acting acid, a group of the trade
//! that does one job, and within a class by the figures that decide there (balance, melting point, fatty acids, spectrum and pH
//! window). What would do harm is never offered, however alike it looks: a base for an acid, a cationic emulsifier for an
//! anionic one, one acid for a whole preservative system. Weights of the ranking are a choice made here; the evidence holds them to
//! questions of the trade.

use crate::Class;
use crate::checks::facts::{Charge, Facts, Knowledge, Preservative, Span, Strength, Trait};
use crate::chemistry::fat::FatProfile;
use crate::composition::{Inside, Makeups};
use crate::material::{ConstituentId, Material, MaterialId, MaterialSource};
use crate::source::Citation;
use std::rc::Rc;

/// A group of the trade that a material belongs to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Kin {
    /// The group.
    pub group: &'static str,
    /// How much of the job a gram does beside the others of the group.
    pub strength: f64,
    /// How it feels, as a word; may be empty.
    pub feel: &'static str,
    /// What is different about it; may be empty.
    pub note: &'static str,
    /// Where that was found.
    pub citation: Citation,
}

/// Where groups and fats are looked up.
pub trait Kinship {
    /// The groups a material belongs to.
    fn kin(&self, material: MaterialId) -> &[Kin];
    /// The fatty acids of a fat.
    fn fat(&self, material: MaterialId) -> Option<FatProfile>;
}

/// Why something is offered.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Reason {
    /// It brings the same substance, so many percent of it where the other has so many.
    SameSubstance {
        /// The substance.
        substance: ConstituentId,
        /// Percent of it in what is replaced.
        before: f64,
        /// Percent of it in the substitute.
        after: f64,
    },
    /// The same acid acts.
    SameActing {
        /// The acid.
        acid: ConstituentId,
    },
    /// So much of what it is made of is the same, as a share.
    SameInPart {
        /// Share of what is replaced, without water.
        share: f64,
    },
    /// The trade uses both for one job.
    SameGroup {
        /// The group.
        group: &'static str,
    },
    /// Both are of one class.
    SameClass {
        /// The class.
        class: Class,
    },
    /// The balance of both emulsifiers.
    Balance {
        /// Of what is replaced.
        before: f64,
        /// Of the substitute.
        after: f64,
    },
    /// The balance that both oils ask for.
    RequiredBalance {
        /// By what is replaced.
        before: f64,
        /// By the substitute.
        after: f64,
    },
    /// Where both are molten.
    Melting {
        /// What is replaced, in degrees Celsius.
        before: f64,
        /// The substitute.
        after: f64,
    },
    /// How much of the fatty acids is alike, as a share.
    FattyAcids {
        /// The share.
        alike: f64,
    },
    /// It holds every kind of microbe that is held now at least fairly.
    Spectrum,
}

/// What becomes different.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Difference {
    /// It feels otherwise, in words of the table.
    Feel {
        /// Now.
        before: &'static str,
        /// Then.
        after: &'static str,
    },
    /// In words of the table.
    Said(&'static str),
    /// It brings something that was not there.
    Brings(ConstituentId),
    /// Something goes that was there.
    Lacks(ConstituentId),
    /// The pH in which it works.
    Window(Span),
    /// It is dosed by itself, in percent of the product.
    Dose(Span),
    /// It thickens only when it is neutralised.
    NeedsBase,
    /// It must not be heated.
    KeepCool,
    /// It turns rancid sooner.
    RancidSooner,
}

/// Something to take instead.
#[derive(Debug, Clone, PartialEq)]
pub struct Substitute {
    /// What.
    pub material: MaterialId,
    /// The higher, the better it fits; comparable within one list only.
    pub score: f64,
    /// Grams of it for a gram of what is replaced.
    pub ratio: f64,
    /// Its own dose in percent of the product, where gram for gram would be wrong.
    pub dose: Option<Span>,
    /// Why it is offered, the strongest first.
    pub reasons: Vec<Reason>,
    /// What changes.
    pub differences: Vec<Difference>,
    /// Where the figures were found.
    pub citations: Vec<Citation>,
}

/// Scores. The same substance comes before the same acid, that before a group, that before figures alone.
const SUBSTANCE: f64 = 100.0;
const COVERED: f64 = 40.0;
const UNASKED: f64 = 60.0;
const ACTING: f64 = 95.0;
const GROUP: f64 = 40.0;
const FIGURES: f64 = 60.0;
/// For each unit of balance that an emulsifier is off.
const BALANCE: f64 = 6.0;
const IN_PART: f64 = 55.0;
/// What brings less than half of what is replaced is a part of it.
const HALF: f64 = 0.5;
const A_PART: f64 = 60.0;
/// For each further group that both belong to.
const FURTHER_GROUP: f64 = 15.0;
/// For another grade, by what the table says is different.
const ANOTHER_GRADE: f64 = 20.0;
/// For a whole system instead of one emulsifier, or one where there was a whole system.
const OTHER_SYSTEM: f64 = 35.0;
/// For each halving or doubling of what does the job.
const STRENGTH: f64 = 2.0;
/// Fats of one name whose acids are less alike than this are two fats.
const SAME_FAT: f64 = 0.8;
/// Less than this is not worth offering.
const LEAST: f64 = 30.0;
/// Share of a system that has to be the same to be the same system.
const SAME_SYSTEM: f64 = 0.9;
/// Further off in balance than this, an emulsifier is another one.
const FAR_BALANCE: f64 = 4.0;
/// Further off in melting point than this, in kelvins, a fat is another one.
const FAR_MELTING: f64 = 25.0;
/// Molten at room temperature.
const ROOM: f64 = 25.0;

/// A material with what it is made of.
struct Seen<'a> {
    material: &'a Material,
    inside: Rc<Inside>,
    /// The constituent that it is weighed out for.
    main: ConstituentId,
    knowledge: &'a dyn Knowledge,
    source: &'a dyn MaterialSource,
}

impl<'a> Seen<'a> {
    fn of(
        id: MaterialId,
        source: &'a dyn MaterialSource,
        knowledge: &'a dyn Knowledge,
        makeups: &mut Makeups,
    ) -> Option<Self> {
        let material = source.material(id)?;
        let inside = makeups.see_through(id, source).ok()?;
        let class_of = |id: ConstituentId| source.constituent(id).map_or(Class::Other, |it| it.class);
        let most = inside.most_first();
        let own = most.iter().find(|(each, _)| class_of(*each) == material.class);
        let dry = most.iter().find(|(each, _)| class_of(*each) != Class::Water);
        let main = own.or(dry).or(most.first())?.0;
        Some(Self { material, inside, main, knowledge, source })
    }

    fn class_of(&self, id: ConstituentId) -> Class {
        self.source.constituent(id).map_or(Class::Other, |it| it.class)
    }

    fn percent(&self, id: ConstituentId) -> f64 {
        let found = self.inside.constituents.iter().find(|(each, _)| *each == id);
        found.map_or(0.0, |(_, percent)| super::solve::number(*percent))
    }

    fn parts(&self) -> impl Iterator<Item = (ConstituentId, f64)> {
        self.inside.constituents.iter().map(|(id, percent)| (*id, super::solve::number(*percent)))
    }

    /// Without water.
    fn dry(&self) -> impl Iterator<Item = (ConstituentId, f64)> {
        self.parts().filter(|(id, _)| self.class_of(*id) != Class::Water)
    }

    fn facts(&self, id: ConstituentId) -> Option<&'a Facts> {
        self.knowledge.facts(id)
    }

    fn own(&self) -> Option<&'a Facts> {
        self.facts(self.main)
    }

    fn has(&self, wanted: Trait) -> bool {
        self.parts()
            .any(|(id, percent)| percent > 0.0 && self.facts(id).is_some_and(|facts| facts.has(wanted).is_some()))
    }

    /// Charges of what acts in it; nothing said counts as none.
    fn charges(&self) -> Vec<Charge> {
        let charge = |(id, _)| self.facts(id)?.charge.map(|charge| charge.value);
        let mut found: Vec<Charge> = self.parts().filter_map(charge).filter(|it| *it != Charge::NonIonic).collect();
        found.dedup();
        found
    }

    /// The balance of what emulsifies, by mass.
    fn balance(&self) -> Option<f64> {
        let parts: Vec<(f64, f64)> =
            self.parts().filter_map(|(id, percent)| Some((percent, self.facts(id)?.hlb?.value))).collect();
        crate::chemistry::hlb::blend(&parts)
    }

    fn melting(&self) -> Option<f64> {
        let parts = self.parts().filter(|(_, percent)| *percent >= 20.0);
        let found = parts.filter_map(|(id, _)| Some(self.facts(id)?.melting_point?.value));
        found.reduce(f64::max)
    }

    /// The acid that acts in something: itself, or that of a salt.
    fn acting(&self) -> ConstituentId {
        self.own().and_then(|facts| facts.salt_of).map_or(self.main, |salt| salt.acid)
    }

    fn preservatives(&self) -> Vec<(ConstituentId, f64, &'a Preservative)> {
        self.parts().filter_map(|(id, percent)| Some((id, percent, self.facts(id)?.preservative.as_ref()?))).collect()
    }

    /// The best strength against each kind of microbe.
    fn spectrum(&self) -> [Strength; 4] {
        self.preservatives().iter().fold([Strength::None; 4], |best, (_, _, own)| {
            core::array::from_fn(|kind| best[kind].max(own.spectrum[kind]))
        })
    }

    /// The pH in which all that carries works.
    fn window(&self) -> Option<Span> {
        let carrying = self.preservatives().into_iter().filter(|(_, _, own)| own.carries);
        let windows: Vec<Span> = carrying.filter_map(|(_, _, own)| own.ph.map(|ph| ph.value)).collect();
        let joined = windows.into_iter().reduce(|a, b| Span { low: a.low.max(b.low), high: a.high.min(b.high) });
        joined.or_else(|| self.own()?.usual_ph.map(|ph| ph.value))
    }

    /// The dose at which its main part is dosed as usual, in percent of the product.
    fn dose(&self) -> Option<Span> {
        let usual = self.own()?.preservative.as_ref()?.usual?.value;
        let share = self.percent(self.main) / 100.0;
        (share > 0.0).then(|| Span { low: usual.low / share, high: usual.high / share })
    }
}

/// Whether something is weighed out by its own dose rather than gram for gram.
const fn is_dosed(class: Class) -> bool {
    matches!(class, Class::Preservative)
}

/// Classes of which each may stand for the other, with figures that decide.
fn of_one_kind(before: &Seen<'_>, after: &Seen<'_>) -> bool {
    use Class::{Butter, Emollient, Extract, Humectant, Oil, PhAdjuster, Salt, Solvent, Wax};
    let (a, b) = (before.material.class, after.material.class);
    a == b
        || matches!((a, b), (Humectant, Solvent) | (Solvent | Extract, Humectant))
        || matches!(
            (a, b),
            (Oil | Butter, Emollient) | (Emollient, Oil | Butter) | (Butter, Oil | Wax) | (Wax | Oil, Butter)
        )
        || matches!((a, b), (Salt, PhAdjuster) | (PhAdjuster, Salt))
        || after.main == before.main && !matches!(b, Class::Emulsifier | Class::Preservative | Class::Surfactant)
}

/// What must never be offered, however alike it looks.
fn does_harm(before: &Seen<'_>, after: &Seen<'_>) -> bool {
    let differs = |wanted: Trait| before.has(wanted) != after.has(wanted);
    let new = |wanted: Trait| after.has(wanted) && !before.has(wanted);
    let (a, b) = (before.charges(), after.charges());
    let opposite = |a: &[Charge], b: &[Charge]| a.contains(&Charge::Anionic) && b.contains(&Charge::Cationic);
    let class = before.material.class;
    let acid = |seen: &Seen<'_>| {
        let facts = seen.own();
        facts.is_some_and(|it| it.acid.is_some() && it.salt_of.is_none())
            && !seen.has(Trait::Base)
            && !seen.has(Trait::Caustic)
    };
    match class {
        Class::PhAdjuster => acid(before) != acid(after),
        Class::Emulsifier | Class::Surfactant => {
            let ionic = matches!(class, Class::Emulsifier) && a.is_empty() != b.is_empty();
            let far = before.balance().zip(after.balance()).is_some_and(|(a, b)| (a - b).abs() > FAR_BALANCE);
            opposite(&a, &b)
                || opposite(&b, &a)
                || ionic
                || far && before.main != after.main
                || differs(Trait::WaterInOilEmulsifier)
        }
        Class::Emollient => differs(Trait::SiliconeOil),
        Class::Thickener => {
            let salts = new(Trait::SaltSensitiveThickener) || new(Trait::NeedsBase) && before.main != after.main;
            opposite(&a, &b) || opposite(&b, &a) || salts && !before.has(Trait::SaltSensitiveThickener)
        }
        Class::Antioxidant => differs(Trait::OilAntioxidant),
        Class::Preservative => {
            // What holds fewer kinds of microbe, and one part for a whole system.
            let held = before.spectrum().into_iter().zip(after.spectrum());
            let less = held.into_iter().any(|(a, b)| a >= Strength::Fair && b < Strength::Fair);
            let carries = |seen: &Seen<'_>| seen.preservatives().iter().any(|(_, _, own)| own.carries);
            let system = before.preservatives().len() > 1;
            let carried_away = carries(before) && !carries(after);
            less || carried_away || system && after.preservatives().len() < 2 || new(Trait::FormaldehydeReleaser)
        }
        _ => {
            new(Trait::Caustic)
                || new(Trait::Sensitiser) && before.main != after.main
                || new(Trait::Phototoxic)
                || class == Class::Solvent && is_volatile(before) != is_volatile(after)
        }
    }
}

/// Alcohols that evaporate are no glycols.
fn is_volatile(seen: &Seen<'_>) -> bool {
    use crate::checks::facts::Cosolvent;
    seen.knowledge.cosolvent(seen.main).is_some_and(|(kind, _)| kind == Cosolvent::Ethanol)
}

/// Whether a constituent is there to preserve what is replaced, or what takes its place: it comes along, is named among the
/// differences, and is no reason to take one for the other. What a material is weighed for is never only that.
fn only_preserves(before: &Seen<'_>, id: ConstituentId) -> bool {
    id != before.main
        && !is_dosed(before.material.class)
        && before.knowledge.facts(id).is_some_and(|it| it.preservative.is_some())
}

/// How much of what is replaced the substitute brings again at a ratio, and what it brings besides: shares without water.
fn overlap(before: &Seen<'_>, after: &Seen<'_>, ratio: f64) -> (f64, f64) {
    let asked = || before.dry().filter(|(id, _)| !only_preserves(before, *id));
    let whole: f64 = asked().map(|(_, percent)| percent).sum();
    if whole <= 0.0 {
        // A water is itself, and nothing besides.
        return (1.0, 0.0);
    }
    let covered: f64 = asked().map(|(id, percent)| percent.min(ratio * after.percent(id))).sum();
    let besides = after.dry().filter(|(id, _)| !only_preserves(before, *id));
    let besides: f64 = besides.map(|(id, percent)| (ratio * percent - before.percent(id)).max(0.0)).sum();
    (covered / whole, besides / whole)
}

/// Materials that could take the place of another, best first; ties by their reference.
///
/// `among` are the materials to choose from; `ph` is that of the product, where it is known.
#[must_use]
pub fn substitutes(
    of: MaterialId,
    among: impl IntoIterator<Item = MaterialId>,
    ph: Option<f64>,
    source: &dyn MaterialSource,
    knowledge: &dyn Knowledge,
    kinship: &dyn Kinship,
    makeups: &mut Makeups,
) -> Vec<Substitute> {
    let Some(before) = Seen::of(of, source, knowledge, makeups) else { return Vec::new() };
    let mut found = Vec::new();
    for id in among {
        if id == of {
            continue;
        }
        let Some(after) = Seen::of(id, source, knowledge, makeups) else { continue };
        if of_one_kind(&before, &after) && !does_harm(&before, &after) {
            found.extend(judge(&before, &after, ph, kinship));
        }
    }
    found.sort_by(|a: &Substitute, b: &Substitute| b.score.total_cmp(&a.score).then(a.material.cmp(&b.material)));
    found
}

fn judge(before: &Seen<'_>, after: &Seen<'_>, ph: Option<f64>, kinship: &dyn Kinship) -> Option<Substitute> {
    let mut reasons = Vec::new();
    let mut citations = Vec::new();
    let mut score = 0.0_f64;
    let mut ratio = 1.0;
    let both = kinship.kin(before.material.id).iter().filter_map(|kin| {
        let other = kinship.kin(after.material.id).iter().find(|other| other.group == kin.group)?;
        Some((*kin, *other))
    });
    let both: Vec<(Kin, Kin)> = both.collect();
    let shared = both.first().copied();
    let fats = fat_of(before, kinship).zip(fat_of(after, kinship));
    let another_fat = fats.is_some_and(|(a, b)| a.alike(&b) < SAME_FAT);
    let is_system = |seen: &Seen<'_>| seen.dry().count() > 1;
    if before.material.class == Class::Emulsifier && is_system(before) && !is_system(after) && shared.is_none() {
        return None;
    }
    let (a, b) = (before.percent(before.main), after.percent(before.main));
    // The same substance, where it is what the substitute is weighed out for, or all of a system.
    if b > 0.0 && !another_fat && (after.main == before.main || before.acting() == after.acting()) {
        let by_substance = a / b;
        let (covered, besides) = overlap(before, after, by_substance);
        let system = is_system(before) && matches!(before.material.class, Class::Emulsifier | Class::Preservative);
        if !system || covered >= SAME_SYSTEM || shared.is_some() {
            ratio = by_substance;
            let most = if covered < HALF { A_PART } else { SUBSTANCE };
            score = most + COVERED * covered - UNASKED * besides.min(1.0) - 2.0 * by_substance.log10().abs();
            if shared.is_some_and(|(kin, other)| kin.note != other.note) {
                score -= ANOTHER_GRADE;
            }
            reasons.push(Reason::SameSubstance { substance: before.main, before: a, after: b });
        }
    } else if !another_fat && before.acting() == after.acting() {
        let moles = |seen: &Seen<'_>| {
            let facts = seen.own()?;
            Some(seen.percent(seen.main) * facts.salt_of.map_or(1.0, |salt| salt.equivalents) / facts.molar_mass?.value)
        };
        ratio = moles(before).zip(moles(after)).map_or(1.0, |(a, b)| a / b);
        score = ACTING;
        reasons.push(Reason::SameActing { acid: before.acting() });
    } else {
        // The largest part that both have.
        let part = before.inside.most_first().into_iter().find(|(id, _)| {
            before.class_of(*id) != Class::Water && !only_preserves(before, *id) && after.percent(*id) > 0.0
        });
        if let Some((id, percent)) = part {
            let by_part = super::solve::number(percent) / after.percent(id);
            let (covered, besides) = overlap(before, after, by_part);
            // Another plant brings what it does itself.
            let acts = after.dry().any(|(id, _)| {
                before.percent(id) <= 0.0
                    && matches!(after.class_of(id), Class::Extract | Class::Active | Class::EssentialOil)
            });
            if covered >= HALF && !another_fat {
                let own = IN_PART + COVERED * covered - UNASKED * besides.min(1.0) - if acts { 10.0 } else { 0.0 };
                if own > score {
                    (score, ratio) = (own, by_part);
                    reasons.push(Reason::SameInPart { share: covered });
                }
            }
        }
    }
    let figures = figures(before, after, kinship, &mut reasons, &mut citations);
    if let Some((kin, other)) = shared {
        reasons.push(Reason::SameGroup { group: kin.group });
        citations.push(other.citation);
        if score < FIGURES {
            ratio = kin.strength / other.strength;
        }
        let further = f64::from(u8::try_from(both.len() - 1).unwrap_or(u8::MAX)) * FURTHER_GROUP;
        let stronger = STRENGTH * (kin.strength / other.strength).log2().abs();
        let in_group = figures.unwrap_or(FIGURES) + GROUP + further - stronger;
        score = if score >= SUBSTANCE { score } else { (score + GROUP).max(in_group) };
    } else if before.material.class == after.material.class && figures.is_some_and(|own| own > score) {
        score = figures.unwrap_or(score);
        reasons.push(Reason::SameClass { class: after.material.class });
    }
    if before.material.class == Class::Emulsifier {
        if is_system(before) != is_system(after) {
            score -= OTHER_SYSTEM;
        }
        // The same emulsifier beside another one has another balance.
        let off = before.balance().zip(after.balance()).map_or(0.0, |(a, b)| (a - b).abs());
        if matches!(reasons.first(), Some(Reason::SameSubstance { .. })) {
            score -= BALANCE * off;
        }
    }
    let dose = after.dose().filter(|_| is_dosed(before.material.class));
    if is_dosed(before.material.class) {
        score -= narrower(before, after, ph);
        reasons.push(Reason::Spectrum);
        citations.extend(after.preservatives().first().map(|(_, _, own)| own.citation));
    }
    (score >= LEAST && !reasons.is_empty()).then(|| Substitute {
        material: after.material.id,
        score,
        ratio,
        dose,
        differences: differences(before, after, ratio, shared, dose),
        reasons,
        citations,
    })
}

/// The fatty acids of a fat, or of the oil that a macerate is made with.
fn fat_of(seen: &Seen<'_>, kinship: &dyn Kinship) -> Option<FatProfile> {
    kinship.fat(seen.material.id).or_else(|| kinship.fat(seen.knowledge.material_of(seen.main)?))
}

/// What a preservative loses by a narrower pH window, or one that is not the product's.
fn narrower(before: &Seen<'_>, after: &Seen<'_>, ph: Option<f64>) -> f64 {
    let Some(window) = after.window() else { return 0.0 };
    if let Some(ph) = ph {
        return if (window.low..=window.high).contains(&ph) { 0.0 } else { 50.0 };
    }
    let Some(now) = before.window() else { return 0.0 };
    let both = now.high.min(window.high) - now.low.max(window.low);
    30.0 * (1.0 - (both / (now.high - now.low).max(0.1)).clamp(0.0, 1.0))
}

/// How near the figures are that decide in a class; nothing where none is known.
fn figures(
    before: &Seen<'_>,
    after: &Seen<'_>,
    kinship: &dyn Kinship,
    reasons: &mut Vec<Reason>,
    citations: &mut Vec<Citation>,
) -> Option<f64> {
    let class = before.material.class;
    let mut score: Option<f64> = None;
    let mut take = |off: f64| score = Some(score.unwrap_or(FIGURES) - off);
    if class == Class::Emulsifier
        && let Some((a, b)) = before.balance().zip(after.balance())
    {
        take((a - b).abs() * BALANCE);
        reasons.push(Reason::Balance { before: a, after: b });
        citations.extend(after.own().and_then(|facts| facts.hlb).map(|hlb| hlb.citation));
    }
    if matches!(class, Class::Oil | Class::Butter) {
        let alike = fat_of(before, kinship).zip(fat_of(after, kinship)).map(|(a, b)| a.alike(&b));
        if let Some(alike) = alike {
            take((1.0 - alike) * 60.0);
            reasons.push(Reason::FattyAcids { alike });
        }
    }
    if matches!(class, Class::Butter | Class::Wax | Class::FattyAlcohol | Class::FattyAcid)
        && let Some((a, b)) = before.melting().zip(after.melting())
    {
        let solid = |melting: f64| melting > ROOM;
        let off = (a - b).abs();
        take(if off > FAR_MELTING || solid(a) != solid(b) { FIGURES } else { off });
        reasons.push(Reason::Melting { before: a, after: b });
        citations.extend(after.own().and_then(|facts| facts.melting_point).map(|melting| melting.citation));
    }
    if matches!(class, Class::Oil | Class::Emollient)
        && let Some((a, b)) = before.own().zip(after.own()).and_then(|(a, b)| a.required_hlb.zip(b.required_hlb))
    {
        take((a.value - b.value).abs() * 2.0);
        reasons.push(Reason::RequiredBalance { before: a.value, after: b.value });
        citations.push(b.citation);
    }
    score
}

fn differences(
    before: &Seen<'_>,
    after: &Seen<'_>,
    ratio: f64,
    shared: Option<(Kin, Kin)>,
    dose: Option<Span>,
) -> Vec<Difference> {
    let mut found = Vec::new();
    if let Some((kin, other)) = shared {
        if !kin.feel.is_empty() && !other.feel.is_empty() && kin.feel != other.feel {
            found.push(Difference::Feel { before: kin.feel, after: other.feel });
        }
        if !other.note.is_empty() {
            found.push(Difference::Said(other.note));
        }
    }
    for (id, _) in after.dry().filter(|(id, _)| before.percent(*id) <= 0.0) {
        found.push(Difference::Brings(id));
    }
    for (id, percent) in before.dry() {
        if after.percent(id) * ratio < percent * 0.5 {
            found.push(Difference::Lacks(id));
        }
    }
    if is_dosed(before.material.class) {
        found.extend(dose.map(Difference::Dose));
        found.extend(after.window().map(Difference::Window));
    }
    let new = |wanted: Trait| after.has(wanted) && !before.has(wanted);
    if new(Trait::NeedsBase) {
        found.push(Difference::NeedsBase);
    }
    if new(Trait::Unsaturated) {
        found.push(Difference::RancidSooner);
    }
    let cool = |seen: &Seen<'_>| seen.own().is_some_and(|facts| facts.heat_sensitive.is_some());
    if cool(after) && !cool(before) {
        found.push(Difference::KeepCool);
    }
    found
}
