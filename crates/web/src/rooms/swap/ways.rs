//! Ways to do without a line: the same in another strength, what it is made of or makes, and what does its job.

use crate::messages::sentences;
use crate::rooms::findings::present::is_about;
use crate::session::Session;
use rust_decimal::Decimal;
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};
use std::rc::Rc;
use stillroom_catalogue::{groups, knowledge};
use stillroom_core::checks::{Finding, Severity, can_check, check, gather_not_checked};
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::{Evaluation, evaluate};
use stillroom_core::rebuild::substitutes::{Difference, Reason, Substitute, substitutes};
use stillroom_core::rebuild::{AtHand, Grid, NoAnswer, Setting, StandIn, Version};
use stillroom_core::{Formula, LineId, Makeup, MaterialId, MaterialSource, PhaseKind};
use stillroom_exchange::record::FormulaRecord;

/// Most ways of another strength that are worked out.
const MOST_SAME: usize = 4;
/// Most composites that a line makes together with others.
const MOST_TOGETHER: usize = 3;
/// Most substitutes by function that are worked out; what is on the shelf comes besides.
const MOST_OTHER: usize = 6;
/// Most materials of the shelf that come besides.
const MOST_OF_SHELF: usize = 4;
/// What a composite may miss of the lines it stands for, in percent of the product.
const SAME_AS_PARTS: Decimal = Decimal::from_parts(5, 0, 0, false, 2);

/// One way.
#[derive(Debug, Clone)]
pub(crate) enum Way {
    /// What the line is made of.
    Apart,
    /// A composite of which the line is a part, for it and the other parts.
    Together { lines: Vec<LineId>, material: MaterialId },
    /// Another material.
    Material(Substitute),
}

impl Way {
    /// Names it.
    pub(crate) fn key(&self) -> String {
        match self {
            Self::Apart => "apart".to_owned(),
            Self::Together { material, .. } => format!("together:{material}"),
            Self::Material(substitute) => substitute.material.to_string(),
        }
    }

    /// Whether it is the same substance in another strength.
    pub(crate) fn is_same(&self) -> bool {
        let Self::Material(substitute) = self else { return false };
        let same = matches!(substitute.reasons.first(), Some(Reason::SameSubstance { .. }));
        same && !substitute.differences.iter().any(|it| matches!(it, Difference::Lacks(_)))
    }

    /// What is taken instead; nothing for what it is made of.
    pub(crate) const fn material(&self) -> Option<MaterialId> {
        match self {
            Self::Apart => None,
            Self::Together { material, .. } => Some(*material),
            Self::Material(substitute) => Some(substitute.material),
        }
    }
}

/// A way with what comes of it.
#[derive(Debug, Clone)]
pub(crate) struct WorkedWay {
    pub(crate) way: Way,
    pub(crate) answer: Result<Version, NoAnswer>,
    /// What the checks find then and did not before.
    pub(crate) new: Vec<Finding>,
    /// What they found before and do not then.
    pub(crate) gone: Vec<Finding>,
}

impl WorkedWay {
    /// Whether it can be done, and nothing that stops comes of it.
    pub(crate) fn holds(&self) -> bool {
        self.answer.is_ok() && !self.new.iter().any(|finding| finding.severity == Severity::Stop)
    }
}

/// The ways as they were worked out last: while no amount changes they stand.
#[derive(Default)]
pub(crate) struct LastWays {
    of: Option<(Formula, LineId, u64)>,
    pub(crate) ways: Rc<Vec<WorkedWay>>,
}

/// A formula without what is said beside its amounts.
fn without_texts(formula: &Formula) -> Formula {
    let mut bare = formula.clone();
    for line in bare.phases.iter_mut().flat_map(|phase| &mut phase.lines) {
        line.note.clear();
        line.substitution.clear();
    }
    bare
}

/// Says beside the amounts of a version what the formula says now.
pub(super) fn take_texts(version: &mut Formula, formula: &Formula) {
    for line in version.phases.iter_mut().flat_map(|phase| &mut phase.lines) {
        if let Some(now) = formula.line(line.id) {
            line.note.clone_from(&now.note);
            line.substitution.clone_from(&now.substitution);
        }
    }
}

fn name_of_phase(kind: PhaseKind) -> String {
    sentences::phase_name(kind).to_owned()
}

impl Session {
    /// A formula where everything about it is looked up.
    pub(crate) fn setting_of<'a>(&'a self, formula: &'a Formula) -> Setting<'a> {
        Setting {
            formula,
            bench: &self.bench,
            source: &self.materials,
            knowledge: knowledge(),
            conditions: self.conditions(),
            grid: Grid::PERCENT,
            phase_name: &name_of_phase,
        }
    }

    /// What the checks find in a formula, without what its maker has set aside.
    pub(crate) fn found_in(&self, formula: &Formula, makeups: &mut Makeups) -> Vec<Finding> {
        self.found_with(formula, &evaluate(formula, &self.bench, &self.materials, makeups))
    }

    /// The same of one that is worked out already.
    pub(super) fn found_with(&self, formula: &Formula, evaluation: &Evaluation) -> Vec<Finding> {
        if !can_check(evaluation) {
            return Vec::new();
        }
        let contents = self.contents_of(formula, evaluation);
        let mut found = gather_not_checked(check(&contents), formula);
        found.retain(|finding| {
            let aside = formula.set_aside.iter().any(|aside| is_about(aside, finding));
            finding.code != stillroom_core::checks::NOT_CHECKED && !aside
        });
        found
    }

    /// The ways to do without a line of the open formula.
    pub(crate) fn ways_now(
        &mut self,
        record: &Rc<FormulaRecord>,
        evaluation: &Evaluation,
        line: LineId,
    ) -> Rc<Vec<WorkedWay>> {
        let within = self.surroundings_changed;
        let last = self.waiting.of::<LastWays>();
        let bare = without_texts(&record.formula);
        if let Some((of, at, then)) = &last.of
            && (*at, *then) == (line, within)
            && *of == bare
        {
            return Rc::clone(&last.ways);
        }
        let mut makeups = core::mem::take(&mut self.makeups);
        let ways = Rc::new(self.ways_of(&record.formula, evaluation, line, &mut makeups));
        self.makeups = makeups;
        *self.waiting.of() = LastWays { of: Some((bare, line, within)), ways: Rc::clone(&ways) };
        ways
    }

    /// The ways to do without a line of a formula that makes a whole.
    pub(crate) fn ways_of(
        &self,
        formula: &Formula,
        evaluation: &Evaluation,
        line: LineId,
        makeups: &mut Makeups,
    ) -> Vec<WorkedWay> {
        let Some(material) = formula.line(line).map(|line| line.material) else { return Vec::new() };
        let before = self.found_in(formula, makeups);
        let ranked = self.ranked(formula, evaluation, material, self.every_material(), makeups);
        let (same, other): (Vec<Way>, Vec<Way>) = ranked.into_iter().map(Way::Material).partition(Way::is_same);
        let mut ways: Vec<Way> = same.into_iter().take(MOST_SAME).collect();
        let is_composite =
            self.materials.material(material).is_some_and(|it| matches!(it.makeup, Makeup::Composite(_)));
        if is_composite {
            ways.push(Way::Apart);
        }
        ways.extend(self.together(formula, line, makeups));
        let is_on_shelf = |way: &Way| way.material().is_some_and(|id| self.is_at_hand(id));
        let (first, further) = other.split_at(other.len().min(MOST_OTHER));
        let of_shelf = further.iter().filter(|way| is_on_shelf(way)).take(MOST_OF_SHELF);
        ways.extend(first.iter().chain(of_shelf).cloned());
        let mut worked: Vec<WorkedWay> = Vec::new();
        for way in ways {
            let answer = self.work_out_way(formula, evaluation, line, &way, makeups);
            // What does its job and cannot be done is no way; of its own substance and parts the reason is said.
            if answer.is_err() && matches!(way, Way::Material(_)) && !way.is_same() {
                continue;
            }
            let after = answer.as_ref().map(|version| self.found_in(&version.formula, makeups)).unwrap_or_default();
            let (gone, new) = match &answer {
                Ok(_) => differences(&before, &after),
                Err(_) => (Vec::new(), Vec::new()),
            };
            worked.push(WorkedWay { way, answer, new, gone });
        }
        // What raises a stop comes last among those that do its job.
        let start = worked.iter().position(|it| matches!(it.way, Way::Material(_)) && !it.way.is_same());
        if let Some(start) = start {
            worked[start..].sort_by_key(|it| !it.holds());
        }
        worked
    }

    /// Whatever could be weighed: the catalogue and the maker's own.
    fn every_material(&self) -> Vec<MaterialId> {
        let own = self.materials.own().map(|(number, _)| MaterialId::Own(number));
        self.materials.catalogue().materials().map(|material| material.id).chain(own).collect()
    }

    /// What could take the place of a material in a formula, best first.
    pub(crate) fn ranked(
        &self,
        formula: &Formula,
        evaluation: &Evaluation,
        material: MaterialId,
        among: Vec<MaterialId>,
        makeups: &mut Makeups,
    ) -> Vec<Substitute> {
        let contents = self.contents_of(formula, evaluation);
        let ph = contents.ph().map(|ph| ph.value);
        substitutes(material, among, ph, &self.materials, knowledge(), groups(), makeups)
    }

    /// Whether the maker has some of a material.
    pub(crate) fn is_at_hand(&self, material: MaterialId) -> bool {
        self.materials.holding(material).is_some_and(|holding| holding.stock.is_none_or(|stock| !stock.is_zero()))
    }

    /// Composites that a line makes together with other lines, none of them missing anything of it.
    fn together(&self, formula: &Formula, line: LineId, makeups: &mut Makeups) -> Vec<Way> {
        let Some(material) = formula.line(line).map(|line| line.material) else { return Vec::new() };
        let mut found = Vec::new();
        for id in self.every_material() {
            let Some(Makeup::Composite(parts)) = self.materials.material(id).map(|it| &it.makeup) else { continue };
            let own: Vec<MaterialId> =
                parts.iter().map(|part| part.material).filter(|part| !self.is_water(*part)).collect();
            if own.len() < 2 || !own.contains(&material) {
                continue;
            }
            let line_of = |part: &MaterialId| formula.lines().find(|line| line.material == *part).map(|line| line.id);
            let Some(lines) = own.iter().map(line_of).collect::<Option<Vec<LineId>>>() else { continue };
            let version = self.setting_of(formula).swap(&lines, &[AtHand::enough(id)], makeups);
            if version.is_ok_and(|version| version.answer.missed(SAME_AS_PARTS).next().is_none()) {
                found.push(Way::Together { lines, material: id });
            }
            if found.len() == MOST_TOGETHER {
                break;
            }
        }
        found
    }

    /// The formula done this way.
    pub(crate) fn work_out_way(
        &self,
        formula: &Formula,
        evaluation: &Evaluation,
        line: LineId,
        way: &Way,
        makeups: &mut Makeups,
    ) -> Result<Version, NoAnswer> {
        let setting = self.setting_of(formula);
        let substitute = match way {
            Way::Apart => return setting.take_apart(line, makeups),
            Way::Together { lines, material } => return setting.swap(lines, &[AtHand::enough(*material)], makeups),
            Way::Material(substitute) => substitute,
        };
        // What brings the same substance is weighed by what it brings, everything else by what it does.
        let in_part = matches!(substitute.reasons.first(), Some(Reason::SameInPart { .. }));
        if way.is_same() || in_part && substitute.dose.is_none() {
            let version = setting.swap(&[line], &[AtHand::enough(substitute.material)], makeups);
            let comes = |version: &Version| version.formula.lines().any(|it| it.material == substitute.material);
            if way.is_same() || version.as_ref().is_ok_and(comes) {
                return version;
            }
        }
        let stand_in = self.stand_in_for(evaluation, line, substitute, makeups).ok_or(NoAnswer::Unbalanced)?;
        setting.stand_in(&[stand_in], makeups)
    }

    /// A substitute as what does the job of a line: at its ratio, or by its own dose where gram for gram would be wrong.
    pub(crate) fn stand_in_for(
        &self,
        evaluation: &Evaluation,
        line: LineId,
        substitute: &Substitute,
        makeups: &mut Makeups,
    ) -> Option<StandIn> {
        let now = evaluation.lines.iter().find(|(share, _)| share.line == line)?.0.percent.value().to_f64()?;
        let by_ratio = now * substitute.ratio;
        let same_acting = substitute.reasons.iter().any(|it| matches!(it, Reason::SameActing { .. }));
        let percent = match substitute.dose {
            None => by_ratio,
            Some(dose) if same_acting => by_ratio.clamp(dose.low, dose.high.max(dose.low)),
            Some(dose) => f64::midpoint(dose.low, dose.high),
        };
        let exact = |value: f64| Decimal::from_f64(value).map(|value| value.round_dp(2));
        let percent = exact(percent)?.max(Decimal::new(1, 2));
        let dose =
            substitute.dose.and_then(|dose| Some((exact(dose.low)?.min(percent), exact(dose.high)?.max(percent))));
        let brings = makeups.see_through(substitute.material, &self.materials).ok()?.constituents.clone();
        Some(StandIn { line, material: substitute.material, percent, dose, brings })
    }
}

/// Of two lists of findings those that are only in the first, and those that are only in the second.
pub(crate) fn differences(before: &[Finding], after: &[Finding]) -> (Vec<Finding>, Vec<Finding>) {
    let only = |these: &[Finding], those: &[Finding]| {
        these.iter().filter(|each| !those.iter().any(|other| each.says_the_same_as(other))).cloned().collect::<Vec<_>>()
    };
    (only(before, after), only(after, before))
}
