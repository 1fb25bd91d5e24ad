//! A formula as the maker writes it: phases in order, each with lines.

use crate::amount::Amount;
use crate::batch_plan::BatchPlan;
use crate::material::MaterialId;
use crate::product::ProductKind;
use crate::quantity::{Celsius, Ph};
use core::fmt;
use serde::{Deserialize, Serialize};
use stillroom_terms::{PhaseKind, Purpose, WrittenIn};

/// Names a formula on this device; drawn at random, so that two devices do not give the same.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(try_from = "String", into = "String")]
pub struct FormulaId(pub u64);

impl FormulaId {
    /// This formula as a material of another.
    #[must_use]
    pub const fn as_material(self) -> MaterialId {
        MaterialId::Formula(self.0)
    }
}

impl fmt::Display for FormulaId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:016x}", self.0)
    }
}

impl TryFrom<String> for FormulaId {
    type Error = core::num::ParseIntError;
    fn try_from(text: String) -> Result<Self, Self::Error> {
        u64::from_str_radix(&text, 16).map(Self)
    }
}

impl From<FormulaId> for String {
    fn from(id: FormulaId) -> Self {
        id.to_string()
    }
}

/// Names a line within its formula; never reused there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(transparent)]
pub struct LineId(pub u32);

/// Names a phase within its formula; never reused there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(transparent)]
pub struct PhaseId(pub u32);

/// One line: a material and how much of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Line {
    /// Names the line within its formula.
    pub id: LineId,
    /// What is weighed out.
    pub material: MaterialId,
    /// How much.
    pub amount: Amount,
    /// What the maker notes beside it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// What the author says to use instead where somebody has not got it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub substitution: String,
    /// Whether it is meant to stay an undissolved solid: a pigment, a scrub, a powder. What dissolves is not asked then.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub suspended: bool,
}

impl Line {
    /// A line of which nothing more is said.
    #[must_use]
    pub const fn new(id: LineId, material: MaterialId, amount: Amount) -> Self {
        Self { id, material, amount, note: String::new(), substitution: String::new(), suspended: false }
    }
}

/// A finding the maker looked at and decided to live with.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SetAside {
    /// Stable code of the finding.
    pub code: String,
    /// What it is about, as [`crate::checks::Finding::subject`] writes it.
    pub subject: String,
    /// Why, in the maker's words.
    pub reason: String,
}

/// Lines handled together.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Phase {
    /// Names the phase within its formula.
    pub id: PhaseId,
    /// What the maker calls it.
    pub name: String,
    /// What is done with it.
    pub kind: PhaseKind,
    /// Temperature it is brought to (heated) or added under (cool-down).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature: Option<Celsius>,
    /// The lines, in the order they are weighed.
    pub lines: Vec<Line>,
}

/// A formula: phases in order, each with lines, and what is to be done with them.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Formula {
    /// What the maker calls it.
    pub name: String,
    /// How the product is used.
    #[serde(default)]
    pub purpose: Purpose,
    /// What kind of product it is, where that is stated; it agrees with the purpose ([`Formula::set_kind`]).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kind: Option<ProductKind>,
    /// pH the maker aims at.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub target_ph: Option<Ph>,
    /// pH the maker measured in the finished product.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured_ph: Option<Ph>,
    /// Whether the numbers are percent or grams.
    #[serde(default)]
    pub written_in: WrittenIn,
    /// The phases, in the order they are made.
    pub phases: Vec<Phase>,
    /// Method, one step a paragraph.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub steps: Vec<String>,
    /// What the maker notes about it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub notes: String,
    /// What the maker filled in for its label and chose for its post, as `exchange::label` writes it. It stays on the device: no link carries it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub label: String,
    /// What the maker filled in for its cost, written as the label is. It stays on the device: no link carries it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub costs: String,
    /// What the maker files it under, parted by a comma and a space. It stays on the device: no link carries it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub tags: String,
    /// How large a batch is wanted.
    #[serde(default)]
    pub batch: BatchPlan,
    /// Findings set aside, each with a reason.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub set_aside: Vec<SetAside>,
    /// The number the next line or phase gets, unless it is in use already.
    #[serde(default)]
    pub next_number: u32,
}

/// Where a line stands: position of its phase, position within it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Place {
    /// Position of the phase.
    pub phase: usize,
    /// Position of the line in the phase.
    pub line: usize,
}

impl Formula {
    /// Says what kind of product it is; whether it stays on or is rinsed off follows.
    pub fn set_kind(&mut self, kind: Option<ProductKind>) {
        self.kind = kind;
        self.purpose = kind.map_or(self.purpose, ProductKind::purpose);
    }

    /// Says how it is used; a kind that is used otherwise is forgotten.
    pub fn set_purpose(&mut self, purpose: Purpose) {
        self.purpose = purpose;
        self.kind = self.kind.filter(|kind| kind.purpose() == purpose);
    }

    /// A formula with a name and nothing in it yet.
    #[must_use]
    pub fn with_name(name: impl Into<String>) -> Self {
        Self { name: name.into(), ..Self::default() }
    }

    /// Every line, in the order it is weighed.
    pub fn lines(&self) -> impl Iterator<Item = &Line> {
        self.phases.iter().flat_map(|phase| &phase.lines)
    }

    /// The line of that number.
    #[must_use]
    pub fn line(&self, id: LineId) -> Option<&Line> {
        self.lines().find(|line| line.id == id)
    }

    /// The line of that number, to change it.
    pub fn line_mut(&mut self, id: LineId) -> Option<&mut Line> {
        self.phases.iter_mut().flat_map(|phase| &mut phase.lines).find(|line| line.id == id)
    }

    /// The phase of that number, to change it.
    pub fn phase_mut(&mut self, id: PhaseId) -> Option<&mut Phase> {
        self.phases.iter_mut().find(|phase| phase.id == id)
    }

    /// Where a line stands.
    #[must_use]
    pub fn place_of(&self, id: LineId) -> Option<Place> {
        self.phases.iter().enumerate().find_map(|(phase, each)| {
            each.lines.iter().position(|line| line.id == id).map(|line| Place { phase, line })
        })
    }

    /// Appends an empty phase.
    pub fn add_phase(&mut self, name: impl Into<String>, kind: PhaseKind, temperature: Option<Celsius>) -> PhaseId {
        let id = PhaseId(self.take_number());
        self.phases.push(Phase { id, name: name.into(), kind, temperature, lines: Vec::new() });
        id
    }

    /// Appends a line to a phase. `None` if there is no such phase.
    pub fn add_line(&mut self, phase: PhaseId, material: MaterialId, amount: Amount) -> Option<LineId> {
        let position = self.phases.iter().position(|each| each.id == phase)?;
        let id = LineId(self.take_number());
        self.phases[position].lines.push(Line::new(id, material, amount));
        Some(id)
    }

    /// Takes a line out. Returns it, or `None` if there is no such line.
    pub fn remove_line(&mut self, id: LineId) -> Option<Line> {
        let place = self.place_of(id)?;
        Some(self.phases[place.phase].lines.remove(place.line))
    }

    /// Moves a line to a position within a phase; a position past the end means the end. Returns whether it moved.
    pub fn move_line(&mut self, id: LineId, to_phase: PhaseId, position: usize) -> bool {
        if !self.phases.iter().any(|phase| phase.id == to_phase) {
            return false;
        }
        let Some(line) = self.remove_line(id) else { return false };
        if let Some(phase) = self.phase_mut(to_phase) {
            let position = position.min(phase.lines.len());
            phase.lines.insert(position, line);
        }
        true
    }

    /// Moves a phase to a position among the phases; past the end means the end. Returns whether it moved.
    pub fn move_phase(&mut self, id: PhaseId, position: usize) -> bool {
        let Some(from) = self.phases.iter().position(|phase| phase.id == id) else { return false };
        let phase = self.phases.remove(from);
        self.phases.insert(position.min(self.phases.len()), phase);
        true
    }

    /// The amounts as line numbers and what they state, for [`crate::balance::balance`].
    #[must_use]
    pub fn amounts(&self) -> Vec<(LineId, Amount)> {
        self.lines().map(|line| (line.id, line.amount)).collect()
    }

    fn take_number(&mut self) -> u32 {
        let used = self
            .phases
            .iter()
            .map(|phase| phase.id.0)
            .chain(self.lines().map(|line| line.id.0))
            .max()
            .map_or(0, |most| most.saturating_add(1));
        // A record written by hand may lack the counter: never give a number that is in use.
        let number = self.next_number.max(used);
        self.next_number = number.saturating_add(1);
        number
    }
}
