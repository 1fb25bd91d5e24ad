//! What the lines of a recipe mean: which material each names, what is its title, and which phase each belongs in.

use super::heading::{Heading, Opens, heading_of};
use super::{ColumnFound, Entry, Mentioned, Reading, Recipe, Unit, What, Written};
use rust_decimal::Decimal;
use stillroom_catalogue::{Confidence, Recognised};
use stillroom_core::number::DecimalMark;
use stillroom_core::{Grams, MaterialId, PhaseKind};

/// A recipe with what each of its lines means.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Matched {
    /// What it is called; empty where it has no name.
    pub title: String,
    /// What it makes.
    pub size: Option<Grams>,
    /// The parts that its lines stand under.
    pub groups: Vec<Heading>,
    /// Its materials, in order.
    pub lines: Vec<MatchedLine>,
    /// The steps of its method.
    pub steps: Vec<String>,
    /// Every line that is none of a material, with what it was taken for.
    pub others: Vec<Entry>,
    /// The columns of the table it is; none where it is none.
    pub columns: Vec<ColumnFound>,
    /// Sum of a column of grams that stands beside one of percents.
    pub grams_beside: Option<Grams>,
}

/// A line that names a material.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MatchedLine {
    /// Its line in the text, counted from 1.
    pub line: usize,
    /// As it is written.
    pub raw: String,
    /// The name it gives.
    pub name: String,
    /// How much of it.
    pub amount: Written,
    /// What else it says.
    pub remark: String,
    /// What the name may mean.
    pub recognised: Recognised,
    /// The part it stands under.
    pub group: Option<usize>,
}

impl MatchedLine {
    /// The material, where it is plain which one is meant.
    #[must_use]
    pub fn decided(&self) -> Option<MaterialId> {
        self.recognised.materials.first().copied().filter(|_| self.recognised.confidence >= Confidence::Likely)
    }
}

/// A phase to be made of a part of a recipe.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlannedPhase {
    /// The name it has in the recipe; empty where it has none.
    pub name: String,
    /// How it is handled.
    pub kind: PhaseKind,
    /// Its lines, by their place among [`Matched::lines`].
    pub lines: Vec<usize>,
}

/// By how many percent what a recipe says it makes may miss what its lines make.
const SIZE_WITHIN: i64 = 3;

/// Tells what the lines of a recipe mean. `recognise` says what a name may mean.
pub fn settle(recipe: Recipe, mark: DecimalMark, recognise: &mut dyn FnMut(&str) -> Recognised) -> Matched {
    let mut matched = Matched::default();
    let total = total_of(&recipe);
    let with_amount = |entry: &&Entry| matches!(&entry.what, What::Material(said) if said.readings.iter().any(|reading| reading.amount != Written::Missing));
    let amounts_are_usual = recipe.entries.iter().filter(with_amount).count() * 2
        > recipe.entries.iter().filter(|entry| matches!(entry.what, What::Material(_))).count();
    let mut group: Option<usize> = None;
    matched.columns = recipe.columns;
    matched.grams_beside = recipe.grams_beside;
    for entry in recipe.entries {
        match entry.what {
            What::Title { ref name, size } => {
                matched.title.clone_from(name);
                matched.size = matched.size.or(size);
            }
            What::Size(size) => matched.size = Some(size),
            What::Heading(ref heading) => {
                group = (heading.opens == Opens::Phase).then(|| {
                    matched.groups.push(heading.clone());
                    matched.groups.len() - 1
                });
            }
            What::Step => matched.steps.push(entry.raw.clone()),
            What::Material(said) => {
                let (reading, recognised) = choose(&said, recognise);
                let kept = Entry { line: entry.line, raw: entry.raw.clone(), what: What::Note };
                if said.may_be_title
                    && let Some(size) = title_of(&reading, &recognised, total)
                {
                    matched.title.clone_from(&reading.name);
                    matched.size = matched.size.or(size);
                    matched.others.push(Entry { what: What::Title { name: reading.name, size }, ..kept });
                    continue;
                }
                let words = reading.name.split_whitespace().count();
                let says_little = recognised.confidence == Confidence::Unknown
                    || (recognised.confidence == Confidence::Unsure && words > 4);
                if reading.amount == Written::Missing && says_little && amounts_are_usual {
                    matched.others.push(kept);
                    continue;
                }
                let group = said.phase.map_or(group, |phase| Some(group_called(&mut matched.groups, &phase, mark)));
                let Reading { name, amount, remark, .. } = reading;
                matched.lines.push(MatchedLine {
                    line: entry.line,
                    raw: entry.raw,
                    name,
                    amount,
                    remark,
                    recognised,
                    group,
                });
                continue;
            }
            What::Head | What::Rule | What::Total | What::Note => {}
        }
        matched.others.push(entry);
    }
    matched.size = matched.size.or(matched.grams_beside);
    matched
}

/// The part of that letter or name, which is added if it is new.
fn group_called(groups: &mut Vec<Heading>, phase: &str, mark: DecimalMark) -> usize {
    let is_it = |heading: &Heading| {
        heading.name.eq_ignore_ascii_case(phase)
            || heading.letter.is_some_and(|letter| phase.len() == 1 && phase.starts_with(letter))
    };
    groups.iter().position(is_it).unwrap_or_else(|| {
        let plain = Heading {
            name: phase.to_owned(),
            letter: phase.chars().next().filter(|_| phase.len() <= 2),
            kind: None,
            opens: Opens::Phase,
        };
        groups.push(heading_of(phase, mark).filter(|heading| heading.opens == Opens::Phase).unwrap_or(plain));
        groups.len() - 1
    })
}

/// Of the ways to read a line the one that names a material best; the likeliest, unless another is plainly better.
fn choose(said: &Mentioned, recognise: &mut dyn FnMut(&str) -> Recognised) -> (Reading, Recognised) {
    let mut best: Option<(&Reading, Recognised)> = None;
    for reading in &said.readings {
        let found = recognised(reading, recognise);
        let Some((first, so_far)) = &best else {
            best = Some((reading, found));
            continue;
        };
        let is_bare = matches!(reading.amount, Written::Missing | Written::Number { unit: None, .. });
        let better = if reading.until == first.until {
            found.confidence > so_far.confidence
        } else {
            (found.confidence == Confidence::Sure && so_far.confidence <= Confidence::Unsure && is_bare)
                || (found.confidence >= Confidence::Likely && so_far.confidence == Confidence::Unknown)
        };
        if better {
            best = Some((reading, found));
        }
    }
    let unknown = Recognised { confidence: Confidence::Unknown, materials: Vec::new() };
    best.map_or_else(
        || {
            (
                Reading {
                    name: String::new(),
                    also: Vec::new(),
                    amount: Written::Missing,
                    remark: String::new(),
                    until: 0,
                },
                unknown,
            )
        },
        |(reading, found)| (reading.clone(), found),
    )
}

/// What the names of a reading mean: its own first, then those in brackets, then both together.
fn recognised(reading: &Reading, recognise: &mut dyn FnMut(&str) -> Recognised) -> Recognised {
    let own = recognise(&reading.name);
    if own.confidence >= Confidence::Likely {
        return own;
    }
    for other in &reading.also {
        let mut found = recognise(other);
        // An INCI name that several share, and a name of which several are meant: what both mean.
        found.materials.sort_by_key(|id| !own.materials.contains(id));
        if found.confidence >= Confidence::Likely {
            return found;
        }
        let both: Vec<MaterialId> = found.materials.iter().copied().filter(|id| own.materials.contains(id)).collect();
        if let [one] = both.as_slice() {
            return Recognised { confidence: Confidence::Likely, materials: vec![*one] };
        }
        if own.confidence == Confidence::Unknown && found.confidence == Confidence::Unsure {
            return found;
        }
    }
    own
}

/// Sum of what counts in grams or has no unit, without the first line.
fn total_of(recipe: &Recipe) -> Decimal {
    let materials = recipe.entries.iter().filter_map(|entry| match &entry.what {
        What::Material(said) if !said.may_be_title => said.readings.first(),
        _ => None,
    });
    let in_grams = |reading: &Reading| match &reading.amount {
        Written::Number { value, to: None, unit: None } => Some(*value),
        Written::Number { value, to: None, unit: Some(Unit::Mass(unit)) } => unit.to_grams(*value).map(Grams::value),
        _ => None,
    };
    materials.filter_map(in_grams).fold(Decimal::ZERO, |sum, value| sum.checked_add(value).unwrap_or(sum))
}

/// What a first line makes if it is the title; `None` if it names a material.
#[expect(clippy::option_option, reason = "a title without a size is a title")]
fn title_of(reading: &Reading, recognised: &Recognised, total: Decimal) -> Option<Option<Grams>> {
    let size = match &reading.amount {
        Written::Missing => return (recognised.confidence < Confidence::Sure).then_some(None),
        Written::Number { value, to: None, unit: Some(Unit::Mass(unit)) } => unit.to_grams(*value)?,
        Written::Number { value, to: None, unit: None } => Grams::new(*value).ok()?,
        _ => return None,
    };
    let off = total.checked_sub(size.value())?.abs().checked_mul(Decimal::ONE_HUNDRED)?;
    let within = size.value().checked_mul(Decimal::from(SIZE_WITHIN))?;
    (total > Decimal::ZERO && off <= within && recognised.confidence < Confidence::Sure).then_some(Some(size))
}

impl Matched {
    /// The phases of a formula made of it: the parts of the recipe, or else the phases in which its materials usually go.
    /// `materials` are those of its lines, `usual` the phase each usually goes into.
    #[must_use]
    pub fn phases(
        &self,
        materials: &[Option<MaterialId>],
        usual: &dyn Fn(MaterialId) -> PhaseKind,
    ) -> Vec<PlannedPhase> {
        let of_line = |line: usize| materials.get(line).copied().flatten().map(usual);
        let mut phases: Vec<PlannedPhase> = Vec::new();
        for (number, group) in self.groups.iter().enumerate() {
            let lines: Vec<usize> = (0..self.lines.len())
                .filter(|line| self.lines.get(*line).is_some_and(|line| line.group == Some(number)))
                .collect();
            if lines.is_empty() {
                continue;
            }
            let taken: Vec<PhaseKind> = phases.iter().map(|phase| phase.kind).collect();
            let kind = group.kind.unwrap_or_else(|| most_usual(lines.iter().filter_map(|line| of_line(*line)), &taken));
            phases.push(PlannedPhase { name: group.name.clone(), kind, lines });
        }
        for kind in PhaseKind::ALL {
            let stands_alone = |line: &usize| self.lines.get(*line).is_some_and(|line| line.group.is_none());
            let lines: Vec<usize> = (0..self.lines.len())
                .filter(stands_alone)
                .filter(|line| of_line(*line).unwrap_or(PhaseKind::HeatedWater) == kind)
                .collect();
            if lines.is_empty() {
                continue;
            }
            match phases.iter_mut().find(|phase| phase.kind == kind) {
                Some(phase) => phase.lines.extend(lines),
                None => phases.push(PlannedPhase { name: String::new(), kind, lines }),
            }
        }
        phases
    }
}

/// The phase in which most of the materials usually go; of several the one that no part has taken yet, since a recipe names
/// a part for each way of handling.
fn most_usual(usual: impl Iterator<Item = PhaseKind>, taken: &[PhaseKind]) -> PhaseKind {
    let usual: Vec<PhaseKind> = usual.collect();
    let count = |kind: PhaseKind| usual.iter().filter(|each| **each == kind).count();
    let most = PhaseKind::ALL.into_iter().map(count).max().unwrap_or(0);
    let mut best = PhaseKind::ALL.into_iter().filter(|kind| count(*kind) == most);
    let first = best.clone().next().unwrap_or(PhaseKind::HeatedWater);
    best.find(|kind| !taken.contains(kind)).unwrap_or(first)
}
