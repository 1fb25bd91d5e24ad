//! What a check says: typed numbers under names, never a sentence.

use super::chart::Chart;
use super::cure::Cure;
use crate::formula::{LineId, PhaseId};
use crate::material::{ConstituentId, MaterialId};
use crate::quantity::Percent;
use crate::source::Citation;

/// How serious a finding is. The order is the order on screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Would hurt, spoil or break a cited limit.
    Stop,
    /// Likely to fail, or out of the usual range.
    Caution,
    /// Worth knowing.
    Note,
}

impl Severity {
    /// The word used in the view and in tests.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Stop => "stop",
            Self::Caution => "caution",
            Self::Note => "note",
        }
    }
}

/// One number or name in a finding; the presenter writes it in the reader's locale with its unit.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// Percent of the product or of what the sentence names.
    Percent(f64),
    /// A percent that a line states, exactly.
    Exact(Percent),
    /// Degrees Celsius.
    Celsius(f64),
    /// A pH or pKa.
    Ph(f64),
    /// Percent that is an estimate: two significant figures.
    Rough(f64),
    /// A bare number with two or three significant figures.
    Number(f64),
    /// A factor: `3.1 times`.
    Times(f64),
    /// Grams in 100 g of solvent.
    GramsPerHundred(f64),
    /// Grams in the batch that is planned.
    Grams(f64),
    /// A substance.
    Substance(ConstituentId),
    /// Several substances.
    Substances(Vec<ConstituentId>),
    /// What is weighed out.
    Material(MaterialId),
    /// What is weighed out, each with the percent it comes to.
    Amounts(Vec<(MaterialId, Percent)>),
    /// A phase of this formula.
    Phase(PhaseId),
    /// A name that is the same in every language: an INCI name, an entry of a law, a jurisdiction.
    Name(&'static str),
    /// Several such names.
    Names(Vec<&'static str>),
    /// A word that the presenter translates, by its key.
    Word(&'static str),
    /// Several such words.
    Words(Vec<&'static str>),
}

/// Named values.
pub type Values = Vec<(&'static str, Value)>;

/// One line of the arithmetic: which sentence of it, with its numbers.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Names the sentence.
    pub template: &'static str,
    /// Its numbers.
    pub values: Values,
}

/// One result of a check.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// Stable code.
    pub code: &'static str,
    /// How serious it is.
    pub severity: Severity,
    /// What it is about: a constituent as `c79`, a group's name, or `formula`. With the code it names the finding, so
    /// that it keeps its place and stays set aside while the numbers change.
    pub subject: String,
    /// The lines behind it.
    pub lines: Vec<LineId>,
    /// The numbers of its sentence.
    pub values: Values,
    /// The arithmetic, line by line.
    pub working: Vec<Step>,
    /// What would remove it, best first.
    pub cures: Vec<Cure>,
    /// Where its limit and its equation come from.
    pub citations: Vec<Citation>,
    /// A picture, where a person would rather look; only made when asked for.
    pub chart: Option<Chart>,
}

impl Finding {
    /// Whether another says the same of the same, as gravely: its numbers may differ.
    #[must_use]
    pub fn says_the_same_as(&self, other: &Self) -> bool {
        self.code == other.code && self.subject == other.subject && self.severity == other.severity
    }

    /// A finding about something, to be filled in.
    #[must_use]
    pub fn new(code: &'static str, severity: Severity, subject: impl Into<String>) -> Self {
        Self {
            code,
            severity,
            subject: subject.into(),
            lines: Vec::new(),
            values: Vec::new(),
            working: Vec::new(),
            cures: Vec::new(),
            citations: Vec::new(),
            chart: None,
        }
    }

    /// A finding about one substance.
    #[must_use]
    pub fn about(code: &'static str, severity: Severity, constituent: ConstituentId) -> Self {
        Self::new(code, severity, subject_of(constituent)).with("substance", Value::Substance(constituent))
    }

    /// Adds a number of the sentence.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: Value) -> Self {
        self.values.push((name, value));
        self
    }

    /// Adds a line of the arithmetic.
    #[must_use]
    pub fn step(mut self, template: &'static str, values: Values) -> Self {
        self.working.push(Step { template, values });
        self
    }

    /// Adds the lines behind it.
    #[must_use]
    pub fn fed_by(mut self, lines: impl IntoIterator<Item = LineId>) -> Self {
        for line in lines {
            if !self.lines.contains(&line) {
                self.lines.push(line);
            }
        }
        self
    }

    /// Adds cures.
    #[must_use]
    pub fn cured_by(mut self, cures: impl IntoIterator<Item = Cure>) -> Self {
        self.cures.extend(cures);
        self
    }

    /// Adds sources; one that is there already is not added again.
    #[must_use]
    pub fn cite(mut self, citations: impl IntoIterator<Item = Citation>) -> Self {
        for citation in citations {
            if !self.citations.contains(&citation) {
                self.citations.push(citation);
            }
        }
        self
    }

    /// The number of a name in its sentence.
    #[must_use]
    pub fn value(&self, name: &str) -> Option<&Value> {
        self.values.iter().find(|(each, _)| *each == name).map(|(_, value)| value)
    }
}

/// A constituent as the subject of a finding.
#[must_use]
pub fn subject_of(constituent: ConstituentId) -> String {
    match constituent {
        ConstituentId::Catalogue(number) => format!("c{number}"),
        ConstituentId::Own(number) => format!("o{number:016x}"),
    }
}
