//! What really acts: of each preservative the free, undissociated concentration in the water, held against the
//! concentration that stops each kind of microbe.
//!
//! One answer per preservative, which every finding of this family reads: dissociation at the alkaline end of the pH, what
//! the oil takes by its kind, what micelles of ethoxylates hold. How much is enough is the minimum inhibitory concentration
//! times what killing asks for beyond stopping; a preservative never counts for more than practice and literature grant it,
//! because a broth flatters. Several add up by their shares of what would be enough; no synergy is assumed. What micelles
//! of charged surfactants hold is not counted: no published figure was found. A challenge test decides.

use crate::checks::contents::{Contents, Present};
use crate::checks::facts::{Acid, Facts, OilKind, Preservative, Strength, Trait, WaterSolubility};
use crate::chemistry::Temperature;
use crate::chemistry::dissociation::{undissociated, undissociated_at_saturation};
use crate::chemistry::partition::{Losses, free_and_undissociated};
use crate::source::{Basis, Citation};
use stillroom_terms::Class;

pub(super) const BEAN: Citation =
    Citation::recalled("Bean, J. Soc. Cosmet. Chem. 23 (1972) 703: preservatives in emulsions");
pub(super) const KAZMI: Citation =
    Citation::recalled("Kazmi and Mitchell, J. Pharm. Sci. 67 (1978) 1260: preservatives held in micelles");
pub(super) const HENDERSON: Citation =
    Citation { source: "Henderson-Hasselbalch equation", locator: "", as_of: "", basis: Basis::Computed };
const LEO: Citation = Citation {
    source: "Leo, Hansch and Elkins, Chem. Rev. 71 (1971) 525: log K into vegetable oil = 1.099 log Kow - 1.310",
    locator: "",
    as_of: "1971",
    basis: Basis::Computed,
};

/// Score from which a kind of microbe is held.
pub(super) const HELD: f64 = 0.5;
/// Score from which it is held weakly: a challenge test may still pass.
pub(super) const WEAKLY: f64 = 0.25;
/// Of a usual range only half its lower end is worth counting on where no inhibitory concentration is known; less is a
/// trace carried in.
const WORTH_COUNTING: f64 = 0.5;

/// A preservative in the jar and what of it acts.
#[derive(Clone, Copy)]
pub(super) struct Acting<'a> {
    /// The substance.
    pub present: &'a Present<'a>,
    /// How it preserves.
    pub preservative: &'a Preservative,
    /// The acid behind it, where it is one or a salt of one.
    pub acid: Option<&'a Acid>,
    /// What a percent of it makes as the acting form.
    pub makes: f64,
    /// What it parts between.
    pub losses: Losses,
    /// Free and undissociated, in percent of the water.
    pub acts: f64,
    /// What would act if neither oil nor micelles took any.
    pub undisturbed: f64,
    /// Where the partition came from.
    pub partition: Option<Citation>,
    /// Share of what is enough against each kind of microbe.
    pub scores: [f64; 4],
    /// The same if neither oil nor micelles took any.
    pub undisturbed_scores: [f64; 4],
    /// Facts of the acting form.
    facts: &'a Facts,
}

impl<'a> Acting<'a> {
    /// Nothing for what is no preservative.
    pub fn of(contents: &Contents<'a>, present: &'a Present<'a>) -> Option<Self> {
        let preservative = present.facts.preservative.as_ref()?;
        Some(Self::at(contents, present, preservative, contents.ph().map(crate::checks::PhBand::high)))
    }

    /// What acts at a pH; without one an acid as if it were the upper end of its window, a phenol as if it were neutral.
    pub fn at(
        contents: &Contents<'a>,
        present: &'a Present<'a>,
        preservative: &'a Preservative,
        ph: Option<f64>,
    ) -> Self {
        let (facts, makes) = acting_form(contents, present);
        let acid = facts.acid.as_ref();
        let early = acid.is_some_and(|acid| acid.steps.first().is_some_and(|pka| *pka < super::LATE_ACID));
        let ph = ph.or(preservative.ph.filter(|_| early).map(|window| window.value.high));
        let share = acid.zip(ph).map_or(1.0, |(acid, ph)| undissociated(&acid.steps, ph));
        let (coefficient, partition) = coefficient(contents, facts);
        let losses = Losses {
            undissociated: share,
            oil_to_water: contents.oil_to_water().unwrap_or(0.0),
            coefficient,
            surfactant: ethoxylates(contents),
            binding: facts.micelle_binding.map_or(0.0, |binding| binding.value),
        };
        let total = present.percent * makes;
        let dissolves = intrinsic_solubility(facts);
        let acts = free_and_undissociated(total, losses).min(dissolves);
        let undisturbed = (total * share).min(dissolves);
        let mut acting = Self {
            present,
            preservative,
            acid,
            makes,
            losses,
            acts,
            undisturbed,
            partition,
            scores: [0.0; 4],
            undisturbed_scores: [0.0; 4],
            facts,
        };
        acting.scores = acting.score(acts);
        acting.undisturbed_scores = acting.score(undisturbed);
        acting
    }

    /// Share of what is enough against each kind, of so much that acts.
    fn score(&self, acts: f64) -> [f64; 4] {
        let known = self.facts.preservative.as_ref().map_or(self.preservative.inhibits, |own| own.inhibits);
        core::array::from_fn(|kind| {
            let strength = self.preservative.spectrum[kind];
            let score = known[kind].map_or_else(
                || self.by_practice(strength, acts),
                |inhibition| acts / (inhibition.percent * inhibition.to_kill),
            );
            score.min(most(strength))
        })
    }

    /// Where no inhibitory concentration is known: what practice grants it from the lower end of its usual range on, as far as
    /// it is left in the water and undissociated.
    fn by_practice(&self, strength: Strength, acts: f64) -> f64 {
        let granted = match strength {
            Strength::None => 0.0,
            Strength::Weak => 0.35,
            Strength::Fair => 0.75,
            Strength::Good => 1.2,
        };
        let low = self.preservative.usual.map_or(0.0, |usual| usual.value.low) * self.makes;
        // The share that practice itself works with, at the upper end of the pH window.
        let usual =
            self.acid.zip(self.preservative.ph).map_or(1.0, |(acid, ph)| undissociated(&acid.steps, ph.value.high));
        if low <= 0.0 || acts < low * usual * WORTH_COUNTING { 0.0 } else { granted * (acts / (low * usual)).min(1.0) }
    }

    /// Whether there is enough of it in the jar to be meant as a preservative, whatever acts of it.
    pub fn is_meant(&self) -> bool {
        let low = self.preservative.usual.map_or(0.0, |usual| usual.value.low);
        self.present.percent > 0.0 && self.present.percent >= low * WORTH_COUNTING
    }

    /// Where the figures came from.
    pub fn citations(&self) -> Vec<Citation> {
        let inhibits = self.facts.preservative.as_ref().map_or(self.preservative.inhibits, |own| own.inhibits);
        let mut found: Vec<Citation> = inhibits.iter().flatten().map(|each| each.citation).collect();
        found.push(self.preservative.citation);
        if self.acid.is_some() {
            found.extend(self.acid.map(|acid| acid.citation));
            found.push(HENDERSON);
        }
        if self.losses.oil_to_water > 0.0 {
            found.extend(self.partition);
            found.push(BEAN);
        }
        if self.losses.surfactant > 0.0 && self.losses.binding > 0.0 {
            found.extend(self.facts.micelle_binding.map(|binding| binding.citation));
            found.push(KAZMI);
        }
        found
    }
}

/// The most that a strength counts for, so that two weak ones make one that holds and a broth makes none good that is not.
const fn most(strength: Strength) -> f64 {
    match strength {
        Strength::None => 0.24,
        Strength::Weak => 0.49,
        Strength::Fair => 0.99,
        Strength::Good => f64::INFINITY,
    }
}

/// The facts of the form that acts (of a salt its acid), and what a percent of the substance makes of it.
fn acting_form<'a>(contents: &Contents<'a>, present: &'a Present<'a>) -> (&'a Facts, f64) {
    let of_acid = |salt: crate::checks::facts::SaltOf| {
        let facts = contents.knowledge.facts(salt.acid)?;
        Some((facts, facts.molar_mass?.value * salt.equivalents / present.facts.molar_mass?.value))
    };
    present.facts.salt_of.and_then(of_acid).unwrap_or((present.facts, 1.0))
}

/// The intrinsic solubility of the acting form in percent of the water: no more than that acts.
fn intrinsic_solubility(facts: &Facts) -> f64 {
    let Some(WaterSolubility::Limited(curve)) = &facts.water_solubility else { return f64::INFINITY };
    let Ok(grams) = curve.at(Temperature::TWENTY_FIVE) else { return f64::INFINITY };
    grams * saturated_share(facts, grams)
}

/// Share that is undissociated in its own saturated solution of so many grams in 100 g.
fn saturated_share(facts: &Facts, grams: f64) -> f64 {
    let pka = facts.acid.as_ref().and_then(|acid| acid.steps.first());
    let litres = facts.molar_mass.map(|mass| grams * 10.0 / mass.value);
    pka.zip(litres).map_or(1.0, |(pka, saturated)| undissociated_at_saturation(*pka, saturated))
}

/// Ethoxylates in percent of the water that make micelles.
fn ethoxylates(contents: &Contents<'_>) -> f64 {
    let makes_micelles = |each: &&Present<'_>| matches!(each.class, Class::Emulsifier | Class::Surfactant);
    let percent: f64 = contents.with(Trait::Ethoxylate).filter(makes_micelles).map(|each| each.percent).sum();
    let water = contents.solvent_volume();
    if water > 0.0 { percent * 100.0 / water } else { 0.0 }
}

/// Which kind of oil something is, as far as it is one.
pub(super) fn kind_of(each: &Present<'_>) -> OilKind {
    let has = |wanted| each.facts.has(wanted).is_some();
    if has(Trait::HydrocarbonOil) {
        OilKind::Hydrocarbon
    } else if has(Trait::SiliconeOil) {
        OilKind::Silicone
    } else if has(Trait::EsterOil) || matches!(each.class, Class::Wax | Class::FattyAlcohol | Class::FattyAcid) {
        OilKind::Ester
    } else {
        OilKind::Triglyceride
    }
}

/// The coefficient into the oil there is: of each kind by its volume. A kind nobody measured takes that of the next that takes
/// up more: esters that of triglycerides, silicones that of hydrocarbons.
fn coefficient(contents: &Contents<'_>, facts: &Facts) -> (f64, Option<Citation>) {
    let into = |kind: OilKind| facts.oil_partition.iter().find(|each| each.kind == kind);
    let of_kind = |kind: OilKind| -> Option<(f64, Citation)> {
        let measured = match kind {
            OilKind::Triglyceride => into(kind),
            OilKind::Ester => into(kind).or_else(|| into(OilKind::Triglyceride)),
            OilKind::Hydrocarbon => into(kind).or_else(|| into(OilKind::Triglyceride)),
            OilKind::Silicone => into(OilKind::Hydrocarbon).or_else(|| into(OilKind::Triglyceride)),
        };
        let computed = || facts.log_kow.map(|log_kow| (10_f64.powf(1.099 * log_kow.value - 1.310), LEO));
        measured.map(|each| (each.coefficient, each.citation)).or_else(computed)
    };
    let (mut volume, mut taken, mut most) = (0.0, 0.0, (0.0, None));
    for each in contents.present.iter().filter(|each| each.is_oil() && each.percent > 0.0) {
        let own = Contents::volume_of(each);
        volume += own;
        if let Some((coefficient, citation)) = of_kind(kind_of(each)) {
            taken += own * coefficient;
            if own * coefficient > most.0 {
                most = (own * coefficient, Some(citation));
            }
        }
    }
    if volume > 0.0 { (taken / volume, most.1) } else { (0.0, None) }
}
