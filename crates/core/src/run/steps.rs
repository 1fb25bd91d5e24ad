//! The steps of a run, in the order a bench has them.

use crate::formula::{Formula, LineId, Phase, PhaseId};
use core::fmt;
use core::str::FromStr;
use stillroom_terms::PhaseKind;

/// One thing to do. Written `weigh:3`, for records and pages.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Step {
    /// Clear and clean the bench, lay out the materials.
    Prepare,
    /// Weigh the empty beaker of a phase.
    Beaker(PhaseId),
    /// Weigh a line.
    Weigh(LineId),
    /// Bring a phase to its temperature.
    Heat(PhaseId),
    /// Weigh a heated phase again and put the water back.
    Replace(PhaseId),
    /// Bring the phases together.
    Combine,
    /// Blend, with a stop to scrape the walls.
    Blend,
    /// Let the batch cool.
    Cool,
    /// Stir some of the batch into the dish of a phase.
    Temper(PhaseId),
    /// Add a phase to the batch.
    Add(PhaseId),
    /// Weigh the batch and put the last water back.
    TopUp,
    /// Measure the pH.
    Ph,
    /// Fill the containers.
    Fill,
    /// Look, sign, be done.
    Finish,
}

/// A text that names no step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("no such step")]
pub struct NoSuchStep;

impl fmt::Display for Step {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Prepare => f.write_str("prepare"),
            Self::Beaker(phase) => write!(f, "beaker:{}", phase.0),
            Self::Weigh(line) => write!(f, "weigh:{}", line.0),
            Self::Heat(phase) => write!(f, "heat:{}", phase.0),
            Self::Replace(phase) => write!(f, "replace:{}", phase.0),
            Self::Combine => f.write_str("combine"),
            Self::Blend => f.write_str("blend"),
            Self::Cool => f.write_str("cool"),
            Self::Temper(phase) => write!(f, "temper:{}", phase.0),
            Self::Add(phase) => write!(f, "add:{}", phase.0),
            Self::TopUp => f.write_str("top-up"),
            Self::Ph => f.write_str("ph"),
            Self::Fill => f.write_str("fill"),
            Self::Finish => f.write_str("finish"),
        }
    }
}

impl FromStr for Step {
    type Err = NoSuchStep;
    fn from_str(text: &str) -> Result<Self, NoSuchStep> {
        let (name, number) = match text.split_once(':') {
            Some((name, number)) => (name, Some(number.parse::<u32>().map_err(|_| NoSuchStep)?)),
            None => (text, None),
        };
        Ok(match (name, number) {
            ("prepare", None) => Self::Prepare,
            ("beaker", Some(phase)) => Self::Beaker(PhaseId(phase)),
            ("weigh", Some(line)) => Self::Weigh(LineId(line)),
            ("heat", Some(phase)) => Self::Heat(PhaseId(phase)),
            ("replace", Some(phase)) => Self::Replace(PhaseId(phase)),
            ("combine", None) => Self::Combine,
            ("blend", None) => Self::Blend,
            ("cool", None) => Self::Cool,
            ("temper", Some(phase)) => Self::Temper(PhaseId(phase)),
            ("add", Some(phase)) => Self::Add(PhaseId(phase)),
            ("top-up", None) => Self::TopUp,
            ("ph", None) => Self::Ph,
            ("fill", None) => Self::Fill,
            ("finish", None) => Self::Finish,
            _ => return Err(NoSuchStep),
        })
    }
}

/// Whether a phase is brought to a temperature.
#[must_use]
pub const fn is_heated(kind: PhaseKind) -> bool {
    matches!(kind, PhaseKind::HeatedWater | PhaseKind::HeatedOil)
}

/// The phases in the order they are weighed: those the maker put first, then the formula's own order. Phases without a
/// line are left out.
#[must_use]
pub fn order_of_phases<'a>(formula: &'a Formula, first: &[PhaseId]) -> Vec<&'a Phase> {
    let mut phases: Vec<&Phase> = formula.phases.iter().filter(|phase| !phase.lines.is_empty()).collect();
    // The phase put first last stands before those put first earlier.
    let rank = |phase: &Phase| first.iter().rev().position(|id| *id == phase.id).unwrap_or(usize::MAX);
    phases.sort_by_key(|phase| rank(phase));
    phases
}

/// The phases the batch is made of at first, and those that are added to it later, as they are weighed.
#[must_use]
pub fn early_and_late<'a>(formula: &'a Formula, first: &[PhaseId]) -> (Vec<&'a Phase>, Vec<&'a Phase>) {
    let phases = order_of_phases(formula, first);
    let any_heated = phases.iter().any(|phase| is_heated(phase.kind));
    let begins = |phase: &&Phase| if any_heated { is_heated(phase.kind) } else { phase.kind != PhaseKind::CoolDown };
    let (early, late): (Vec<&Phase>, Vec<&Phase>) = phases.into_iter().partition(begins);
    if early.is_empty() { (late, early) } else { (early, late) }
}

/// The steps of a formula.
///
/// Heated phases are weighed and heated first, then combined and blended. Once the batch has cooled it is weighed and the
/// last water put back, warm as it is: what is added after that bears no heat. Without a heated phase everything is
/// weighed and stirred together.
#[must_use]
pub fn steps_of(formula: &Formula, first: &[PhaseId]) -> Vec<Step> {
    let (early, late) = early_and_late(formula, first);
    let heated: Vec<&Phase> = early.iter().copied().filter(|phase| is_heated(phase.kind)).collect();

    let mut steps = vec![Step::Prepare];
    let weigh = |steps: &mut Vec<Step>, phase: &Phase| {
        steps.push(Step::Beaker(phase.id));
        steps.extend(phase.lines.iter().map(|line| Step::Weigh(line.id)));
    };
    for phase in &early {
        weigh(&mut steps, phase);
    }
    for phase in &heated {
        steps.push(Step::Heat(phase.id));
    }
    for phase in heated.iter().filter(|phase| phase.kind == PhaseKind::HeatedWater) {
        steps.push(Step::Replace(phase.id));
    }
    if early.len() > 1 {
        steps.push(Step::Combine);
    }
    steps.push(Step::Blend);
    if !heated.is_empty() {
        steps.extend([Step::Cool, Step::TopUp]);
    }
    for phase in &late {
        weigh(&mut steps, phase);
        if !heated.is_empty() {
            steps.push(Step::Temper(phase.id));
        }
        steps.push(Step::Add(phase.id));
    }
    steps.extend([Step::Ph, Step::Fill, Step::Finish]);
    steps
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::amount::Amount;
    use crate::material::MaterialId;

    fn formula(kinds: &[PhaseKind]) -> Formula {
        let mut formula = Formula::with_name("test");
        for kind in kinds {
            let phase = formula.add_phase("phase", *kind, None);
            formula.add_line(phase, MaterialId::Catalogue(1), Amount::QuantumSatis);
        }
        formula
    }

    fn written(formula: &Formula, first: &[PhaseId]) -> String {
        steps_of(formula, first).iter().map(ToString::to_string).collect::<Vec<_>>().join(" ")
    }

    #[test]
    fn an_emulsion_is_heated_combined_cooled_and_finished() {
        let formula = formula(&[PhaseKind::HeatedWater, PhaseKind::HeatedOil, PhaseKind::CoolDown]);
        assert_eq!(
            written(&formula, &[]),
            "prepare beaker:0 weigh:1 beaker:2 weigh:3 heat:0 heat:2 replace:0 combine blend cool top-up beaker:4 \
             weigh:5 temper:4 add:4 ph fill finish"
        );
        assert!(
            written(&formula, &[PhaseId(2)]).starts_with("prepare beaker:2 weigh:3 beaker:0 weigh:1 heat:2 heat:0")
        );
    }

    #[test]
    fn a_cold_gel_is_only_weighed_and_stirred() {
        let one = formula(&[PhaseKind::RoomTemperature]);
        assert_eq!(written(&one, &[]), "prepare beaker:0 weigh:1 blend ph fill finish");
        let cool = formula(&[PhaseKind::CoolDown]);
        assert_eq!(written(&cool, &[]), "prepare beaker:0 weigh:1 blend ph fill finish");
    }

    #[test]
    fn a_step_reads_back_as_it_was_written() {
        for step in steps_of(&formula(&[PhaseKind::HeatedWater, PhaseKind::HeatedOil, PhaseKind::CoolDown]), &[]) {
            assert_eq!(step.to_string().parse(), Ok(step));
        }
        for wrong in ["", "weigh", "weigh:x", "prepare:1", "boil:2"] {
            assert!(wrong.parse::<Step>().is_err(), "{wrong}");
        }
    }
}
