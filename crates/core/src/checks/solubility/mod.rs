//! What stays dissolved in the solvent that is really there.
//!
//! The solvent is water from every source with the glycerin, glycols and ethanol in it. What water dissolves comes from
//! published curves; what the other solvents add from the log-linear rule, which is an estimate; an acid dissolves better
//! the more of it is dissociated; what prefers oil finds room there, where data exist.

mod first_to_crystallise;
mod no_data;
mod oil_over_cap;
mod over_cap;
mod over_cap_cold;

use super::Registered;
use super::contents::{Contents, Present};
use super::facts::{Cosolvent, Facts, OilKind, SaltOf, Trait, WaterSolubility};
use super::finding::{Finding, Step, Value};
use crate::chemistry::Temperature;
use crate::chemistry::dissociation::{undissociated, undissociated_at_saturation};
use crate::chemistry::solubility::{Curve, REACH, cosolvency, cosolvent_power};
use crate::material::ConstituentId;
use crate::source::{Basis, Citation, Cited};
use stillroom_terms::Class;

/// The findings of this family.
pub const FINDINGS: &[Registered] = &[
    Registered { code: over_cap::CODE, check: over_cap::check },
    Registered { code: over_cap_cold::CODE, check: over_cap_cold::check },
    Registered { code: oil_over_cap::CODE, check: oil_over_cap::check },
    Registered { code: first_to_crystallise::CODE, check: first_to_crystallise::check },
    Registered { code: no_data::CODE, check: no_data::check },
];

/// By how much of a logarithm the log-linear rule misses as a matter of course.
const RULE_MISSES: f64 = 0.4;
/// By which factor a coefficient computed from log Kow misses.
const PARTITION_MISSES: f64 = 3.0;
const LEO: Citation = Citation {
    source: "Leo, Hansch and Elkins, Chem. Rev. 71 (1971) 525: partition into vegetable oil, measured or from log Kow",
    locator: "",
    as_of: "1971",
    basis: Basis::Computed,
};
/// Above this octanol-water partition a substance prefers the oil.
const PREFERS_OIL: f64 = 1.0;

/// Li and Yalkowsky's constants, intercept and slope (Ind. Eng. Chem. Res. 37:4470, 1998).
const LOG_LINEAR: [(Cosolvent, f64, f64); 3] =
    [(Cosolvent::Glycerin, 0.28, 0.35), (Cosolvent::Glycol, 0.37, 0.78), (Cosolvent::Ethanol, 0.30, 0.95)];
const LOG_LINEAR_SOURCE: Citation = Citation {
    source: "Li and Yalkowsky, Ind. Eng. Chem. Res. 37 (1998) 4470: constants of the log-linear rule",
    locator: "",
    as_of: "1998",
    basis: Basis::Memory,
};
const HENDERSON_HASSELBALCH: Citation =
    Citation { source: "Henderson-Hasselbalch equation", locator: "", as_of: "", basis: Basis::Computed };

/// Something to be dissolved: a substance, or an acid with its salts counted as acid.
pub(super) struct Solute<'a> {
    /// The substance whose curve counts.
    pub id: ConstituentId,
    /// Substances that count, with the factor to the one above.
    pub members: Vec<(ConstituentId, f64)>,
    /// How much of it there is, in percent.
    pub present: f64,
    curve: Option<&'a Curve>,
    log_kow: Option<f64>,
    /// Mass of a mole of it.
    molar_mass: Option<f64>,
    /// Concentration in a vegetable oil over that in water, measured or computed from log Kow.
    coefficient: Option<f64>,
    /// Whether it is a liquid, which separates as droplets.
    pub liquid: bool,
    /// Dissociation constants, where the pH decides.
    acid: Option<(&'a [f64], Citation)>,
    /// Solubility of a salt that is present, with the factor to acid: more than that never dissolves.
    salt: Option<(&'a Curve, f64)>,
}

/// How much dissolves, and how that was come by.
pub(super) struct Capacity {
    /// Percent of the product.
    pub cap: f64,
    /// Percent of the product at the best the estimate allows.
    pub at_best: f64,
    /// Whether it is an estimate.
    pub estimated: bool,
    /// The arithmetic.
    pub working: Vec<Step>,
    /// Its sources.
    pub citations: Vec<Citation>,
}

/// Why there is no answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Missing {
    /// No figure near this temperature.
    Temperature,
    /// It prefers the oil, and no figure says how much oil takes.
    Oil,
    /// No figure at all.
    Everything,
}

/// Concentration in a vegetable oil over that in water: as measured, or else from log Kow.
fn coefficient_of(facts: &Facts) -> Option<f64> {
    let measured = facts.oil_partition.iter().find(|each| each.kind == OilKind::Triglyceride);
    let computed = || facts.log_kow.map(|log_kow| 10_f64.powf(1.099 * log_kow.value - 1.310));
    measured.map(|each| each.coefficient).or_else(computed)
}

/// Everything to be dissolved in water, most first.
pub(super) fn solutes<'a>(contents: &Contents<'a>) -> Vec<Solute<'a>> {
    let mut found: Vec<Solute<'a>> = Vec::new();
    // A powder or a balm is no solution.
    if contents.is_dry() {
        return found;
    }
    for each in contents.present.iter().filter(|each| asks_for_solvent(contents, each)) {
        if each.facts.acid.is_none() || each.facts.salt_of.is_some() {
            found.push(plain(each));
        }
        let acid = each.facts.salt_of.map_or(each.id, |salt| salt.acid);
        let is_acid = each.facts.acid.is_some() && each.facts.salt_of.is_none();
        if (is_acid || each.facts.salt_of.is_some()) && !found.iter().any(|known| known.id == acid) {
            found.extend(acid_with_salts(contents, acid));
        }
    }
    found
}

fn asks_for_solvent(contents: &Contents<'_>, each: &Present<'_>) -> bool {
    each.dissolving > 0.0
        && !each.is_oil()
        && !matches!(each.class, Class::Water | Class::Emulsifier | Class::Surfactant | Class::Thickener)
        && each.facts.has(Trait::Insoluble).is_none()
        && each.facts.has(Trait::Polymer).is_none()
        && contents.knowledge.cosolvent(each.id).is_none()
}

fn plain<'a>(each: &Present<'a>) -> Solute<'a> {
    Solute {
        id: each.id,
        members: vec![(each.id, 1.0)],
        present: each.dissolving,
        curve: curve_of(each),
        log_kow: each.facts.log_kow.map(|cited| cited.value),
        molar_mass: None,
        coefficient: coefficient_of(each.facts),
        liquid: each.facts.has(Trait::Liquid).is_some(),
        acid: None,
        salt: None,
    }
}

fn curve_of<'a>(each: &Present<'a>) -> Option<&'a Curve> {
    match each.facts.water_solubility.as_ref()? {
        WaterSolubility::Limited(curve) => Some(curve),
        WaterSolubility::Miscible(_) => None,
    }
}

/// An acid with all its salts in the jar, counted as acid. Without a pH only what was added as acid counts: a salt alone
/// stays dissolved as a salt.
fn acid_with_salts<'a>(contents: &Contents<'a>, acid: ConstituentId) -> Option<Solute<'a>> {
    let facts = contents.knowledge.facts(acid)?;
    let WaterSolubility::Limited(curve) = facts.water_solubility.as_ref()? else { return None };
    let ph_counts = contents.ph().is_some();
    let mut solute = Solute {
        id: acid,
        members: vec![(acid, 1.0)],
        present: contents.find(acid).map_or(0.0, |each| each.dissolving),
        curve: Some(curve),
        log_kow: facts.log_kow.map(|cited| cited.value),
        molar_mass: facts.molar_mass.map(|cited| cited.value),
        coefficient: coefficient_of(facts),
        liquid: facts.has(Trait::Liquid).is_some(),
        acid: facts.acid.as_ref().map(|acid| (acid.steps.as_slice(), acid.citation)),
        salt: None,
    };
    if ph_counts {
        for each in &contents.present {
            let Some(factor) = each
                .facts
                .salt_of
                .filter(|salt| salt.acid == acid)
                .and_then(|salt| as_acid(facts.molar_mass?.value, each.facts.molar_mass?.value, &salt))
            else {
                continue;
            };
            solute.members.push((each.id, factor));
            solute.present += each.dissolving * factor;
            solute.salt = curve_of(each).map(|curve| (curve, factor)).or(solute.salt);
        }
    }
    (solute.present > 0.0).then_some(solute)
}

/// What a gram of salt makes as acid.
fn as_acid(acid: f64, own: f64, salt: &SaltOf) -> Option<f64> {
    let factor = acid * salt.equivalents / own;
    factor.is_finite().then_some(factor)
}

/// Logarithm of how much more a pure cosolvent dissolves of a substance than water: as measured, or else by its
/// octanol-water partition.
#[must_use]
pub fn power_of(facts: &Facts, kind: Cosolvent) -> Option<Cited<f64>> {
    let measured = facts.cosolvent_power.iter().find(|(known, _)| *known == kind);
    measured.map(|(_, power)| *power).or_else(|| {
        let (_, intercept, slope) = LOG_LINEAR.iter().find(|(known, ..)| *known == kind)?;
        let value = cosolvent_power(facts.log_kow?.value, *intercept, *slope);
        Some(Cited { value, citation: LOG_LINEAR_SOURCE })
    })
}

impl Solute<'_> {
    /// How much of it dissolves in this formula at a temperature.
    pub fn capacity(&self, contents: &Contents<'_>, temperature: Temperature) -> Result<Capacity, Missing> {
        let curve = self.curve.ok_or(Missing::Everything)?;
        let solubility = curve.at(temperature).map_err(|_| Missing::Temperature)?;
        let celsius = temperature.celsius();
        let mut working = vec![Step {
            template: "work.in-water",
            values: vec![
                ("substance", Value::Substance(self.id)),
                ("solubility", Value::GramsPerHundred(solubility)),
                ("temperature", Value::Celsius(celsius)),
            ],
        }];
        let mut citations: Vec<Citation> = curve.citations(celsius).collect();
        let (power, estimated) = self.cosolvents(contents, &mut working, &mut citations);
        let mut in_solvent = solubility * power;
        let (mut intrinsic, mut likely) = (1.0, 1.0);
        if let (Some((steps, citation)), Some(ph)) = (self.acid, contents.ph()) {
            // A measured total holds what is dissociated in the saturated solution, too: the curve is of both. The acid end of
            // the pH dissolves least.
            let litres = self.molar_mass.map(|mass| solubility * 10.0 / mass);
            let saturated = steps.first().zip(litres).map_or(1.0, |(pka, it)| undissociated_at_saturation(*pka, it));
            let share = undissociated(steps, ph.low());
            intrinsic = saturated;
            let mut times = saturated / share;
            likely = share / undissociated(steps, ph.value);
            // However alkaline it is, no more than the salt dissolves.
            if let Some((salt, factor)) = self.salt
                && let Ok(most) = salt.at(temperature)
            {
                times = times.min((most * factor / solubility).max(1.0));
            }
            in_solvent *= times;
            // Where next to nothing dissociates there is nothing to tell.
            if times > 1.02 {
                working.push(Step {
                    template: "work.acid",
                    values: vec![
                        ("substance", Value::Substance(self.id)),
                        ("ph", Value::Ph(ph.low())),
                        ("pka", Value::Ph(steps.first().copied().unwrap_or(f64::NAN))),
                        ("share", Value::Percent(share * 100.0)),
                        ("times", Value::Times(times)),
                    ],
                });
                citations.extend([citation, HENDERSON_HASSELBALCH]);
            }
        }
        let solvent = contents.solvent();
        let mut cap = in_solvent * solvent / 100.0;
        working.push(Step {
            template: "work.cap",
            values: vec![
                ("solvent", Value::Percent(solvent)),
                ("solubility", Value::GramsPerHundred(in_solvent)),
                ("cap", Value::Percent(cap)),
            ],
        });
        let factor = curve.factor(celsius);
        let best = if estimated { 10_f64.powf(RULE_MISSES) * factor } else { factor };
        let estimated = estimated || factor > 1.0;
        // At the pH as stated, where the worse end lies lower.
        let mut at_best = cap * best * likely;
        let mut estimated = estimated;
        if contents.oil > 0.0 && self.log_kow.is_some_and(|log_kow| log_kow > PREFERS_OIL) {
            if let Some((in_oil, step, citation)) = self.in_oil(contents, temperature) {
                cap += in_oil;
                at_best += in_oil;
                working.push(step);
                citations.push(citation);
            } else if let Some(coefficient) = self.coefficient {
                // Where the water is saturated the oil beside it is, too.
                let in_oil = solubility * intrinsic * coefficient * contents.oil / 100.0;
                cap += in_oil;
                at_best += in_oil * PARTITION_MISSES;
                estimated = true;
                working.push(Step {
                    template: "work.oil-by-partition",
                    values: vec![
                        ("oil", Value::Percent(contents.oil)),
                        ("coefficient", Value::Number(coefficient)),
                        ("cap", Value::Percent(in_oil)),
                    ],
                });
                citations.push(LEO);
            } else if self.present > cap && self.present <= cap + contents.oil {
                return Err(Missing::Oil);
            }
        }
        Ok(Capacity { cap, at_best, estimated, working, citations })
    }

    /// How many times more the mixture dissolves than water, and whether that is an estimate.
    fn cosolvents(
        &self,
        contents: &Contents<'_>,
        working: &mut Vec<Step>,
        citations: &mut Vec<Citation>,
    ) -> (f64, bool) {
        let whole = contents.solvent_volume();
        let mut parts = Vec::with_capacity(contents.cosolvents.len());
        let facts = contents.knowledge.facts(self.id);
        for (kind, _, volume) in &contents.cosolvents {
            let Some(power) = facts.and_then(|facts| power_of(facts, *kind)) else { continue };
            citations.push(power.citation);
            parts.push((power.value, volume / whole));
        }
        if parts.is_empty() {
            return (1.0, false);
        }
        let power = cosolvency(&parts);
        let share: f64 = parts.iter().map(|(_, share)| share).sum();
        working.push(Step {
            template: "work.cosolvent",
            values: vec![("share", Value::Percent(share * 100.0)), ("times", Value::Times(power))],
        });
        (power, share > 0.05)
    }

    /// What the oil of the formula takes, by the lowest figure for an oil near this temperature.
    fn in_oil(&self, contents: &Contents<'_>, temperature: Temperature) -> Option<(f64, Step, Citation)> {
        let facts = contents.knowledge.facts(self.id)?;
        let near = facts.oil_solubility.iter().filter(|each| (each.temperature - temperature.celsius()).abs() <= REACH);
        let lowest = near.min_by(|a, b| a.grams_per_100_g.total_cmp(&b.grams_per_100_g))?;
        let cap = lowest.grams_per_100_g * contents.oil / 100.0;
        let step = Step {
            template: "work.oil",
            values: vec![
                ("oil", Value::Percent(contents.oil)),
                ("solubility", Value::GramsPerHundred(lowest.grams_per_100_g)),
                ("cap", Value::Percent(cap)),
            ],
        };
        Some((cap, step, lowest.citation))
    }

    /// The temperature at which it begins to crystallise on cooling from a room to the cold, where it does.
    pub fn crystallises_at(&self, contents: &Contents<'_>) -> Option<f64> {
        let over = |celsius: f64| {
            let temperature = Temperature::new(celsius).ok()?;
            Some(self.present > self.capacity(contents, temperature).ok()?.cap)
        };
        let (mut cold, mut warm) = (contents.conditions.cold.celsius(), contents.conditions.room.celsius());
        if cold >= warm || !over(cold)? || over(warm)? {
            return None;
        }
        // Half a minute of arc on a kitchen thermometer: a twentieth of a degree.
        while warm - cold > 0.05 {
            let middle = f64::midpoint(cold, warm);
            if over(middle)? { cold = middle } else { warm = middle }
        }
        Some(warm)
    }
}

/// How much of a substance that is not there yet would stay dissolved in a room and in the cold, in percent: nine tenths of
/// the lower cap, since adding it takes the place of water. Of a salt what stays dissolved of its acid at this pH. Nothing where
/// no figure says so.
pub(super) fn most_dissolved(contents: &Contents<'_>, id: ConstituentId) -> Option<f64> {
    let own = contents.knowledge.facts(id)?;
    let salt = own.salt_of.and_then(|salt| {
        let acid = contents.knowledge.facts(salt.acid)?;
        Some((salt.acid, acid, as_acid(acid.molar_mass?.value, own.molar_mass?.value, &salt)?))
    });
    let (id, facts, factor) = salt.filter(|_| contents.ph().is_some()).unwrap_or((id, own, 1.0));
    let WaterSolubility::Limited(curve) = facts.water_solubility.as_ref()? else { return None };
    let acid = facts.acid.as_ref();
    let solute = Solute {
        id,
        members: Vec::new(),
        present: 0.0,
        curve: Some(curve),
        log_kow: facts.log_kow.map(|cited| cited.value),
        molar_mass: facts.molar_mass.map(|cited| cited.value),
        coefficient: coefficient_of(facts),
        liquid: facts.has(Trait::Liquid).is_some(),
        acid: acid.map(|acid| (acid.steps.as_slice(), acid.citation)),
        salt: None,
    };
    let at = |temperature| solute.capacity(contents, temperature).ok().map(|capacity| capacity.cap * 0.9 / factor);
    let (room, cold) = (at(contents.conditions.room)?, at(contents.conditions.cold));
    Some(cold.map_or(room, |cold| cold.min(room)))
}

/// Fills the numbers common to findings about too much of a solute.
pub(super) fn describe(
    finding: Finding,
    contents: &Contents<'_>,
    solute: &Solute<'_>,
    capacity: Capacity,
    temperature: Temperature,
) -> Finding {
    let Capacity { cap, at_best, estimated, working, citations } = capacity;
    let lines = solute.members.iter().filter_map(|(id, _)| contents.find(*id)).flat_map(Present::lines);
    // What is an estimate is shown with two digits and its range.
    let mut finding = finding.with("present", Value::Percent(solute.present));
    if estimated {
        let rough = cap * cap / at_best.max(f64::MIN_POSITIVE);
        finding = finding
            .with("about", Value::Rough(cap))
            .with("least", Value::Rough(rough))
            .with("most", Value::Rough(at_best));
    }
    let mut finding = finding
        .with("cap", Value::Percent(cap))
        .with("comes-out", Value::Word(if solute.liquid { "solid.droplets" } else { "solid.crystals" }))
        .with("temperature", Value::Celsius(temperature.celsius()))
        .fed_by(lines)
        .cite(citations);
    if let Some(batch) = contents.batch() {
        finding = finding.with("grams", Value::Grams(batch * cap / 100.0));
    }
    finding.working = working;
    finding
}
