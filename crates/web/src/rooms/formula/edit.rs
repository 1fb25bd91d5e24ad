//! Acts on the shelf and on the open formula.

use crate::contract::Answer;
use crate::messages::sentences;
use crate::rooms::formula::command::FormulaCommand;
use crate::rooms::said::what_field_takes;
use crate::session::Session;
use crate::session::limits::{LONGEST_NAME, LONGEST_TEXT};
use rust_decimal::Decimal;
use stillroom_core::number::{NumberError, Typed, read, read_mass, read_plain, read_temperature};
use stillroom_core::{
    Amount, Celsius, Formula, FormulaId, Grams, LineId, MaterialId, MaterialSource, Percent, Ph, PhaseId, WrittenIn,
};

/// Most lines a formula takes. Real ones have ten to forty.
const MOST_LINES: usize = 500;
/// Most phases a formula takes.
const MOST_PHASES: usize = 50;

/// An answer about one field.
pub(crate) fn about(field: &str, result: Result<(), NumberError>, mark: stillroom_core::number::DecimalMark) -> Answer {
    let error = result.err();
    Answer {
        field: Some(field.to_owned()),
        error: error.as_ref().map(|error| sentences::number_error(error, &what_field_takes(field, mark), mark)),
        code: error.as_ref().map(NumberError::code),
        made: None,
    }
}

/// An answer that names what was made.
pub(crate) fn made(what: &impl ToString) -> Answer {
    Answer { made: Some(what.to_string()), ..Answer::default() }
}

/// A text as long as is kept.
pub(crate) fn cut(text: &str, longest: usize) -> String {
    text.chars().take(longest).collect()
}

pub(crate) fn cut_name(text: &str) -> String {
    cut(text, LONGEST_NAME)
}

pub(crate) fn cut_text(text: &str) -> String {
    cut(text, LONGEST_TEXT)
}

impl Session {
    pub(crate) fn act_on_formula(&mut self, command: FormulaCommand) -> Answer {
        match command {
            FormulaCommand::SetPurpose { purpose } => {
                self.change_formula("formula.purpose", None, |formula| formula.set_purpose(purpose));
            }
            FormulaCommand::SetTargetPh { text } => {
                return self.set_ph("formula.ph", &text, |formula| &mut formula.target_ph);
            }
            FormulaCommand::SetNotes { text } => {
                self.change_formula("formula.notes", Some("formula.notes"), |formula| formula.notes = text);
            }
            FormulaCommand::SetSteps { text } => {
                let steps = text.lines().map(str::to_owned).collect();
                self.change_formula("formula.steps", Some("formula.steps"), |formula| formula.steps = steps);
            }
            FormulaCommand::WriteIn { basis: written_in } => self.write_in(written_in),
            FormulaCommand::ApplyCure { code, problem, cure } => self.apply_cure(&code, problem, cure),
            FormulaCommand::SetAmount { line, text } => return self.set_amount(line, &text),
            FormulaCommand::SetQuantumSatis { line } => self.set_quantum_satis(line),
            FormulaCommand::AddLine { phase, material } => return self.add_line(phase, material),
            FormulaCommand::SetLineNote { line, text } => {
                let field = format!("line.note:{}", line.0);
                self.change_formula("line.note", Some(&field), |formula| {
                    if let Some(line) = formula.line_mut(line) {
                        line.note = text;
                    }
                });
            }
            FormulaCommand::ReplaceMaterial { line, material } => self.replace_material(line, material),
            FormulaCommand::MoveLine { line, phase, position } => self.change_formula("line.move", None, |formula| {
                formula.move_line(line, phase, position);
            }),
            FormulaCommand::StepLine { line, down } => self.step_line(line, down),
            FormulaCommand::RemoveLine { line } => self.remove_line(line),
            other => return self.act_on_phase(other),
        }
        Answer::default()
    }

    fn act_on_phase(&mut self, command: FormulaCommand) -> Answer {
        match command {
            FormulaCommand::AddPhase { kind: phase_kind } => {
                if self.formula().is_some_and(|formula| formula.phases.len() >= MOST_PHASES) {
                    self.notice(
                        "phase.too-many",
                        crate::messages::formula::too_many_phases(&MOST_PHASES.to_string()),
                        false,
                    );
                    return Answer::default();
                }
                let mut id = None;
                self.change_formula("phase.add", None, |formula| {
                    id = Some(formula.add_phase(sentences::phase_name(phase_kind), phase_kind, None));
                });
                return id.map_or_else(Answer::default, |id| made(&id.0));
            }
            FormulaCommand::RenamePhase { phase, name } => {
                let field = format!("phase.name:{}", phase.0);
                self.change_formula("phase.rename", Some(&field), |formula| {
                    if let Some(phase) = formula.phase_mut(phase) {
                        phase.name = name;
                    }
                });
            }
            FormulaCommand::SetPhaseKind { phase, kind: phase_kind } => {
                self.change_formula("phase.kind", None, |formula| {
                    if let Some(phase) = formula.phase_mut(phase) {
                        // A name the maker did not choose follows the kind.
                        if sentences::is_default_phase_name(&phase.name, phase.kind) {
                            sentences::phase_name(phase_kind).clone_into(&mut phase.name);
                        }
                        phase.kind = phase_kind;
                    }
                });
            }
            FormulaCommand::SetPhaseTemperature { phase, text } => return self.set_phase_temperature(phase, &text),
            FormulaCommand::MovePhase { phase, position } => self.change_formula("phase.move", None, |formula| {
                formula.move_phase(phase, position);
            }),
            FormulaCommand::RemovePhase { phase } => {
                let name = self.formula().and_then(|formula| formula.phases.iter().find(|each| each.id == phase));
                let Some(name) = name.map(|phase| phase.name.clone()) else { return Answer::default() };
                self.change_formula("phase.remove", None, |formula| formula.phases.retain(|each| each.id != phase));
                self.notice("phase.removed", crate::messages::formula::removed(&name), true);
            }
            _ => {}
        }
        Answer::default()
    }

    pub(crate) fn set_ph(
        &mut self,
        field: &'static str,
        text: &str,
        of: fn(&mut Formula) -> &mut Option<Ph>,
    ) -> Answer {
        let mark = self.mark();
        let read = if text.trim().is_empty() {
            Ok(None)
        } else {
            read_plain(text, mark, Ph::MINIMUM, Ph::MAXIMUM).map(|value| Ph::new(value).ok())
        };
        about(field, read.map(|ph| self.change_formula(field, Some(field), |formula| *of(formula) = ph)), mark)
    }

    fn set_phase_temperature(&mut self, phase: PhaseId, text: &str) -> Answer {
        let field = format!("phase.temperature:{}", phase.0);
        let mark = self.mark();
        let read = if text.trim().is_empty() {
            Ok(None)
        } else {
            let range = (Celsius::MINIMUM, Celsius::MAXIMUM);
            read_temperature(text, mark, self.settings.temperature_unit, range).map(|value| Celsius::new(value).ok())
        };
        let result = read.map(|temperature| {
            self.change_formula("phase.temperature", Some(&field), |formula| {
                if let Some(phase) = formula.phase_mut(phase) {
                    phase.temperature = temperature;
                }
            });
        });
        about(&field, result, mark)
    }

    fn write_in(&mut self, written_in: WrittenIn) {
        let Some((record, evaluation)) = self.evaluate_open() else { return };
        let formula = &record.formula;
        if formula.written_in == written_in {
            return;
        }
        match written_in {
            WrittenIn::Grams => {
                let batch = evaluation.batch.as_ref().map_or(Grams::ZERO, |batch| batch.mass);
                let masses: Vec<(LineId, Grams)> = match &evaluation.sheet {
                    Some(sheet) => sheet.lines.iter().map(|line| (line.line, line.target)).collect(),
                    None => evaluation
                        .lines
                        .iter()
                        .map(|(share, _)| (share.line, share.percent.of(batch).unwrap_or(Grams::ZERO)))
                        .collect(),
                };
                self.change_formula("formula.write-in", None, |formula| {
                    formula.written_in = WrittenIn::Grams;
                    for (line, mass) in masses {
                        if let Some(line) = formula.line_mut(line) {
                            line.amount = Amount::Grams(mass);
                        }
                    }
                });
            }
            WrittenIn::Percent => {
                let whole: Option<Decimal> = formula.lines().try_fold(Decimal::ZERO, |sum, line| match line.amount {
                    Amount::Grams(mass) => sum.checked_add(mass.value()),
                    Amount::Percent(_) | Amount::QuantumSatis => Some(sum),
                });
                let decimals = decimals_for(&evaluation.balance.shares);
                self.change_formula("formula.write-in", None, |formula| {
                    formula.write_in_percent(decimals);
                    // A formula with nothing in it has no percents to compute: only its numbers mean something else.
                    formula.written_in = WrittenIn::Percent;
                    for line in formula.phases.iter_mut().flat_map(|phase| &mut phase.lines) {
                        if matches!(line.amount, Amount::Grams(_)) {
                            line.amount = Amount::Percent(Percent::ZERO);
                        }
                    }
                    if let Some(Ok(mass)) = whole.map(Grams::new)
                        && !mass.is_zero()
                    {
                        formula.batch.mass = mass;
                        formula.batch.way = stillroom_core::batch_plan::BatchWay::Mass;
                    }
                });
            }
        }
    }

    /// The line that should be q.s. where one is wanted: the largest line of water.
    pub(crate) fn preferred_quantum_satis(&self, formula: &Formula) -> Option<LineId> {
        let balance = formula.balance();
        let is_water = |material: MaterialId| {
            self.materials.material(material).is_some_and(|material| material.class == stillroom_core::Class::Water)
        };
        let water = formula.lines().filter(|line| is_water(line.material));
        water.max_by_key(|line| balance.share_of(line.id)).map(|line| line.id)
    }

    fn apply_cure(&mut self, code: &str, problem: usize, cure: usize) {
        let Some(formula) = self.formula() else { return };
        let balance = formula.balance();
        let Some(problem) = balance.problems.get(problem).filter(|problem| problem.code() == code) else { return };
        let cures = balance.cures(problem, self.preferred_quantum_satis(formula));
        if let Some(cure) = cures.get(cure) {
            self.change_formula("formula.cure", None, |formula| formula.apply(cure));
        }
    }

    fn set_amount(&mut self, line: LineId, text: &str) -> Answer {
        let field = format!("amount:{}", line.0);
        let mark = self.mark();
        let Some(formula) = self.formula() else { return Answer::default() };
        let Some(material) = formula.line(line).map(|line| line.material) else { return Answer::default() };
        let result = match formula.written_in {
            WrittenIn::Percent => self.read_percent(text),
            WrittenIn::Grams => {
                let density = self.materials.material(material).and_then(|material| material.density);
                read_mass(text, mark, self.settings.mass_unit, density).map(Amount::Grams)
            }
        };
        let result = result.map(|amount| {
            self.change_formula("line.amount", Some(&field), |formula| {
                if amount == Amount::QuantumSatis {
                    make_quantum_satis(formula, line);
                } else if let Some(line) = formula.line_mut(line) {
                    line.amount = amount;
                }
            });
        });
        about(&field, result, mark)
    }

    /// Reads a percent of 0 to 100, or `q.s.`.
    pub(crate) fn read_percent(&self, text: &str) -> Result<Amount, NumberError> {
        let mark = self.mark();
        if read(text, mark)? == Typed::QuantumSatis {
            return Ok(Amount::QuantumSatis);
        }
        let value = read_plain(text, mark, Decimal::ZERO, Decimal::ONE_HUNDRED)?;
        // The value lies between 0 and 100, which every percent may be.
        Ok(Percent::new(value).map_or(Amount::QuantumSatis, Amount::Percent))
    }

    fn set_quantum_satis(&mut self, line: LineId) {
        self.change_formula("line.qs", None, |formula| make_quantum_satis(formula, line));
    }

    fn add_line(&mut self, phase: PhaseId, material: MaterialId) -> Answer {
        let Some(formula) = self.formula() else { return Answer::default() };
        if self.materials.material(material).is_none() {
            return Answer::default();
        }
        if formula.lines().count() >= MOST_LINES {
            self.notice("line.too-many", crate::messages::formula::too_many_lines(&MOST_LINES.to_string()), false);
            return Answer::default();
        }
        // The first line of a formula takes up the rest; every later one waits for its number.
        let amount = match formula.written_in {
            WrittenIn::Grams => Amount::Grams(Grams::ZERO),
            WrittenIn::Percent if formula.lines().next().is_none() => Amount::QuantumSatis,
            WrittenIn::Percent => Amount::Percent(Percent::ZERO),
        };
        let mut id = None;
        self.change_formula("line.add", None, |formula| id = formula.add_line(phase, material, amount));
        id.map_or_else(Answer::default, |id| made(&id.0))
    }

    fn replace_material(&mut self, line: LineId, material: MaterialId) {
        if self.materials.material(material).is_some() {
            self.change_formula("line.replace", None, |formula| {
                if let Some(line) = formula.line_mut(line) {
                    line.material = material;
                }
            });
        }
    }

    fn step_line(&mut self, line: LineId, down: bool) {
        self.change_formula("line.move", None, |formula| {
            let Some(place) = formula.place_of(line) else { return };
            let last_phase = formula.phases.len() - 1;
            let (phase, position) = match (down, place.line) {
                (false, 0) if place.phase == 0 => return,
                (false, 0) => (place.phase - 1, usize::MAX),
                (false, at) => (place.phase, at - 1),
                (true, at) if at + 1 < formula.phases[place.phase].lines.len() => (place.phase, at + 1),
                (true, _) if place.phase == last_phase => return,
                (true, _) => (place.phase + 1, 0),
            };
            let phase = formula.phases[phase].id;
            formula.move_line(line, phase, position);
        });
    }

    fn remove_line(&mut self, line: LineId) {
        let material = self.formula().and_then(|formula| formula.line(line)).map(|line| line.material);
        let Some(material) = material else { return };
        self.change_formula("line.remove", None, |formula| {
            formula.remove_line(line);
        });
        let name = self.materials.name(material);
        self.notice("line.removed", crate::messages::formula::removed(&name), true);
    }

    /// Formula of that number, for tests and callers that hold one.
    #[must_use]
    pub fn formula_of(&self, id: FormulaId) -> Option<&Formula> {
        self.shelf.get(&id).map(|record| &record.formula)
    }
}

/// Makes a line the q.s. line; a line that was it keeps the percent it came to.
fn make_quantum_satis(formula: &mut Formula, line: LineId) {
    if formula.line(line).is_none() || formula.written_in == WrittenIn::Grams {
        return;
    }
    let balance = formula.balance();
    for each in formula.phases.iter_mut().flat_map(|phase| &mut phase.lines) {
        if each.id == line {
            each.amount = Amount::QuantumSatis;
        } else if each.amount == Amount::QuantumSatis {
            let share = balance.shares.iter().find(|share| share.line == each.id).map(|share| share.percent);
            each.amount = Amount::Percent(share.unwrap_or(Percent::ZERO));
        }
    }
}

/// Decimals in which the smallest share still has two figures.
pub(crate) fn decimals_for(shares: &[stillroom_core::balance::LineShare]) -> u32 {
    let smallest = shares.iter().map(|share| share.percent.value()).filter(|percent| !percent.is_zero()).min();
    match smallest {
        Some(smallest) if smallest < Decimal::new(1, 2) => 4,
        Some(smallest) if smallest < Decimal::new(1, 1) => 3,
        _ => 2,
    }
}
