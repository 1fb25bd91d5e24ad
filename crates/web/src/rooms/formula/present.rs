//! The open formula as the page shows it.

use crate::lazy::lazy;
use crate::messages::sentences;
use crate::rooms::formula::view::{FormulaView, LastLines, LineInput, LineView, PhaseView, ProblemView};
use crate::rooms::update::Update;
use crate::session::Session;
use rust_decimal::Decimal;
use std::rc::Rc;
use stillroom_core::balance::LineShare;
use stillroom_core::evaluation::Evaluation;
use stillroom_core::number::{align, decimals_of, write_between, write_fixed};
use stillroom_core::unit::MassUnit;
use stillroom_core::weigh_sheet::WeighedLine;
use stillroom_core::{Amount, Formula, Grams, Layer, Makeup, MaterialId, MaterialSource, Percent, Phase, WrittenIn};

/// Decimals of percents: at least so many, and at most.
const FEWEST_DECIMALS: u32 = 2;
const MOST_DECIMALS: u32 = 6;
/// Decimals of what a composite brings.
const MOST_BRINGS_DECIMALS: u32 = 4;
/// Constituents named in what a composite brings.
const MOST_BRINGS: usize = 3;
/// Decimals of a mass in a unit its scale does not show.
const MOST_MASS_DECIMALS: u32 = 4;

impl Session {
    pub(crate) fn present_formula(&mut self, update: &mut Update) {
        let Some((record, evaluation)) = self.evaluate_open() else {
            update.formula = self.shown.changed(FormulaView::default());
            *self.shown.of() = LastLines::default();
            forget_findings(self, update);
            return;
        };
        let formula = &record.formula;
        let id = record.id.to_string();
        let head = self.present_head(id.clone(), formula, &evaluation);
        update.formula = self.shown.changed(head);
        self.present_lines(id, formula, &evaluation, update);
        let batch = self.present_batch(formula, &evaluation);
        update.batch = self.shown.changed(batch);
        check_in_time(self, formula, &evaluation, update);
        self.present_jar(&evaluation, update);
    }

    fn present_head(&self, id: String, formula: &Formula, evaluation: &Evaluation) -> FormulaView {
        let mark = self.mark();
        let balance = &evaluation.balance;
        let prefer = if balance.is_sound() { None } else { self.preferred_quantum_satis(formula) };
        let problems = balance
            .problems
            .iter()
            .map(|problem| ProblemView {
                code: problem.code(),
                text: sentences::formula_problem(problem, &|line| self.name_of_line(formula, line), mark),
                cures: balance
                    .cures(problem, prefer)
                    .iter()
                    .map(|cure| sentences::cure(cure, &|line| self.name_of_line(formula, line), mark))
                    .collect(),
            })
            .collect();
        let decimals = percent_decimals(&balance.shares);
        let typed_total = formula.lines().fold(Decimal::ZERO, |sum, line| match line.amount {
            Amount::Grams(mass) => sum.checked_add(mass.value()).unwrap_or(sum),
            Amount::Percent(_) | Amount::QuantumSatis => sum,
        });
        let unit = self.settings.mass_unit;
        let mut at = 0;
        let phases = formula
            .phases
            .iter()
            .map(|phase| {
                let range = at..at + phase.lines.len();
                at = range.end;
                let weighed = evaluation.sheet.as_ref().map(|sheet| &sheet.lines[range.clone()]);
                self.present_phase(phase, &balance.shares[range], weighed, decimals)
            })
            .collect();
        FormulaView {
            id: Some(id),
            name: formula.name.clone(),
            purpose: formula.purpose,
            target_ph: formula.target_ph.map_or_else(String::new, |ph| write_between(ph.value(), 1, 2, mark)),
            notes: formula.notes.clone(),
            steps: formula.steps.join("\n"),
            written_in: formula.written_in,
            amount_unit: match formula.written_in {
                WrittenIn::Percent => "%".to_owned(),
                WrittenIn::Grams => unit.symbol().to_owned(),
            },
            mass_unit: unit.symbol().to_owned(),
            total: write_fixed(balance.total.value(), decimals, mark),
            total_typed: Grams::new(typed_total).map_or_else(
                |_| String::new(),
                |mass| write_between(unit.from_grams(mass), 0, MOST_MASS_DECIMALS, mark),
            ),
            total_mass: evaluation.sheet.as_ref().map_or_else(String::new, |sheet| {
                let finest = sheet.lines.iter().map(|line| self.mass_decimals(line.scale)).max().unwrap_or(0);
                write_fixed(unit.from_grams(sheet.batch), finest, mark)
            }),
            sound: balance.is_sound(),
            phases,
            problems,
        }
    }

    fn present_phase(
        &self,
        phase: &Phase,
        shares: &[LineShare],
        weighed: Option<&[WeighedLine]>,
        decimals: u32,
    ) -> PhaseView {
        let mark = self.mark();
        let percent: Decimal = shares.iter().map(|share| share.percent.value()).sum();
        let mass = weighed.map_or_else(String::new, |lines| {
            let mass: Decimal = lines.iter().map(|line| line.target.value()).sum();
            let finest = lines.iter().map(|line| self.mass_decimals(line.scale)).max().unwrap_or(0);
            Grams::new(mass).map_or_else(
                |_| String::new(),
                |mass| write_fixed(self.settings.mass_unit.from_grams(mass), finest, mark),
            )
        });
        PhaseView {
            id: phase.id.0,
            name: phase.name.clone(),
            kind: phase.kind,
            temperature_word: sentences::temperature_word(phase.kind).to_owned(),
            temperature: phase
                .temperature
                .map_or_else(String::new, |temperature| self.temperature_number(temperature.value())),
            temperature_unit: self.settings.temperature_unit.symbol(),
            percent: write_fixed(percent, decimals, mark),
            mass,
            lines: phase.lines.iter().map(|line| line.id.0).collect(),
        }
    }

    /// The lines. One that is written from what it was is what it was; most are, and writing takes longer than comparing.
    fn present_lines(&mut self, of: String, formula: &Formula, evaluation: &Evaluation, update: &mut Update) {
        let decimals = percent_decimals(&evaluation.balance.shares);
        let sheet = evaluation.sheet.as_ref();
        let most_mass_decimals =
            sheet.and_then(|sheet| sheet.lines.iter().map(|line| self.mass_decimals(line.scale)).max()).unwrap_or(0);
        let written_with = (decimals, most_mass_decimals, self.surroundings_changed);
        let mut last = std::mem::take(self.shown.of::<LastLines>());
        if last.of != of {
            // Line numbers mean something within their formula only.
            last = LastLines { of, ..LastLines::default() };
        }
        if last.written_with != written_with {
            last.inputs.clear();
            last.written_with = written_with;
        }
        let count = evaluation.balance.shares.len();
        let (mut lines, mut inputs) = (Vec::with_capacity(count), Vec::with_capacity(count));
        for (at, (line, share)) in formula.lines().zip(&evaluation.balance.shares).enumerate() {
            let weighed = sheet.and_then(|sheet| sheet.lines.get(at)).copied();
            let input = LineInput { line: line.clone(), share: *share, weighed };
            let before = last.position_of(at, &input).and_then(|at| last.lines.get(at));
            let view = if let Some(before) = before {
                Rc::clone(before)
            } else {
                let view = Rc::new(self.present_line(&input, evaluation, (decimals, most_mass_decimals)));
                if !last.lines.contains(&view) {
                    update.lines.push(Rc::clone(&view));
                }
                view
            };
            lines.push(view);
            inputs.push(input);
        }
        *self.shown.of() = LastLines { lines, inputs, ..last };
    }

    fn present_line(
        &mut self,
        input: &LineInput,
        evaluation: &Evaluation,
        (decimals, most_mass_decimals): (u32, u32),
    ) -> LineView {
        let LineInput { line, share, weighed } = input;
        let mark = self.mark();
        let main_scale = self.settings.scales.as_slice().len() - 1;
        let error = weighed.map(|line| line.relative_error.value());
        let unresolved = evaluation.composition.unresolved.iter().find(|(each, _)| *each == line.id);
        LineView {
            id: line.id.0,
            material: line.material.to_string(),
            name: self.materials.name(line.material),
            layer: self.materials.material(line.material).map_or(Layer::Helpers, |material| material.class.layer()),
            brings: self.brings(line.material, share.percent),
            amount: self.amount_text(line.amount, share.percent, decimals),
            quantum_satis: share.quantum_satis,
            percent: align(write_fixed(share.percent.value(), decimals, mark), decimals, decimals),
            mass: weighed.map_or_else(String::new, |line| {
                let decimals = self.mass_decimals(line.scale);
                let mass = self.settings.mass_unit.from_grams(line.target);
                align(write_fixed(mass, decimals, mark), decimals, most_mass_decimals)
            }),
            scale: weighed
                .filter(|line| line.scale != main_scale)
                .and_then(|line| self.settings.scales.as_slice().get(line.scale))
                .map_or_else(String::new, |scale| sentences::scale_name(&scale.name)),
            error: error
                .filter(|error| !error.is_zero())
                .map_or_else(String::new, |error| sentences::relative_error(error, mark)),
            error_large: error.is_some_and(|error| error.abs() > self.settings.tolerance.value()),
            note: line.note.clone(),
            problem: unresolved.map_or_else(
                || self.past_its_date(line.material),
                |(_, error)| sentences::composition_error(error, &|id| self.materials.name(id)),
            ),
        }
    }

    /// That what there is of a material should have been used by now; empty where it need not.
    fn past_its_date(&self, material: MaterialId) -> String {
        let expiry = self.materials.holding(material).map_or("", |holding| holding.expiry.as_str());
        // Days written year first sort as texts do.
        if expiry.is_empty() || *expiry >= *self.around.today() {
            String::new()
        } else {
            let day = expiry.parse().map_or_else(|_| expiry.to_owned(), crate::rooms::batches::sentences::day);
            crate::messages::formula::past_its_date(&day)
        }
    }

    fn amount_text(&self, amount: Amount, share: Percent, decimals: u32) -> String {
        let mark = self.mark();
        match amount {
            // A q.s. line shows what it comes to.
            Amount::QuantumSatis => write_fixed(share.value(), decimals, mark),
            Amount::Percent(percent) => write_between(percent.value(), decimals, MOST_DECIMALS, mark),
            Amount::Grams(mass) => write_between(self.settings.mass_unit.from_grams(mass), 0, MOST_MASS_DECIMALS, mark),
        }
    }

    /// What a composite brings to the product, in a few words; nothing for a simple material.
    pub(crate) fn brings(&mut self, material: MaterialId, share: Percent) -> String {
        let composite =
            self.materials.material(material).is_some_and(|material| matches!(material.makeup, Makeup::Composite(_)));
        if !composite {
            return String::new();
        }
        let Ok(inside) = self.makeups.see_through(material, &self.materials) else { return String::new() };
        let most = inside.largest(MOST_BRINGS);
        let mark = self.mark();
        let parts = most.iter().filter_map(|(constituent, percent)| {
            let brought = percent.checked_mul(share.value())?.checked_div(Decimal::ONE_HUNDRED)?;
            let brought = brought.round_dp(MOST_BRINGS_DECIMALS);
            let number = write_between(brought, FEWEST_DECIMALS, MOST_BRINGS_DECIMALS, mark);
            Some((self.materials.inci(*constituent), number))
        });
        sentences::brings(parts, inside.constituents.len() > MOST_BRINGS)
    }

    pub(crate) fn name_of_line(&self, formula: &Formula, line: stillroom_core::LineId) -> String {
        formula.line(line).map(|line| self.materials.name(line.material)).unwrap_or_default()
    }

    /// Decimals a mass on a scale is shown with, in the maker's unit.
    pub(crate) fn mass_decimals(&self, scale: usize) -> u32 {
        let step = self.settings.scales.as_slice().get(scale).map_or(Grams::ZERO, |scale| scale.step);
        step_decimals(step, self.settings.mass_unit)
    }
}

/// Decimals that show a step of a scale in a unit: those of the step where it is a round number, else as many as tell
/// two steps apart, and no more: 0.1 g are 0.0035 oz, and a scale that shows ounces has three decimals.
pub(crate) fn step_decimals(step: Grams, unit: MassUnit) -> u32 {
    let step = unit.from_grams(step);
    let exact = decimals_of(step);
    if exact <= MOST_MASS_DECIMALS {
        return exact;
    }
    (0..MOST_MASS_DECIMALS).find(|decimals| Decimal::new(1, *decimals) <= step).unwrap_or(MOST_MASS_DECIMALS)
}

/// Decimals that show every share of a formula alike.
fn percent_decimals(shares: &[LineShare]) -> u32 {
    let most = shares.iter().map(|share| decimals_of(share.percent.value())).max().unwrap_or(0);
    // Shares of a formula in grams run on for ever: four decimals say enough.
    if most > MOST_DECIMALS { 4 } else { most.max(FEWEST_DECIMALS) }
}

lazy! {
    whole "04" fn check_in_time(session: &mut Session, formula: &Formula, evaluation: &Evaluation, update: &mut Update) {
        session.check_in_time(formula, evaluation, update);
    } else {}
}

lazy! {
    whole "05" fn forget_findings(session: &mut Session, update: &mut Update) {
        session.forget_findings(update);
    } else {}
}
