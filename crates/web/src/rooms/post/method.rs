//! What is done to make it: as its author wrote it, or as the bench would have it step by step.

use crate::messages::post as says;
use crate::messages::sentences::list;
use crate::session::Session;
use stillroom_core::evaluation::Evaluation;
use stillroom_core::number::with_unit;
use stillroom_core::run::steps::{Step, early_and_late, is_heated, steps_of};
use stillroom_core::{Formula, Phase, PhaseId, PhaseKind};

impl Session {
    /// The steps as the author wrote them; none where nobody wrote any.
    pub(crate) fn own_steps(formula: &Formula) -> Vec<String> {
        formula.steps.iter().map(|step| step.trim().to_owned()).filter(|step| !step.is_empty()).collect()
    }

    /// The steps of the bench in sentences, with masses and temperatures.
    pub(crate) fn steps_in_words(&self, formula: &Formula, evaluation: &Evaluation) -> Vec<String> {
        let mut said = Vec::new();
        let phase_of = |id: PhaseId| formula.phases.iter().find(|phase| phase.id == id);
        let (early, _) = early_and_late(formula, &[]);
        let heated = early.iter().any(|phase| is_heated(phase.kind));
        let blends = formula.phases.iter().any(|phase| phase.kind == PhaseKind::HeatedOil && !phase.lines.is_empty());
        for step in steps_of(formula, &[]) {
            let sentence = match step {
                Step::Prepare => says::step_prepare().to_owned(),
                Step::Beaker(id) => match phase_of(id) {
                    Some(phase) => says::step_weigh(&phase.name, &self.lines_of(phase, formula, evaluation)),
                    None => continue,
                },
                Step::Heat(id) => match phase_of(id) {
                    Some(phase) => self.say_heat(phase),
                    None => continue,
                },
                Step::Replace(id) => match phase_of(id) {
                    Some(phase) => says::step_replace(&phase.name),
                    None => continue,
                },
                Step::Combine => {
                    let names: Vec<&str> = early.iter().map(|phase| phase.name.as_str()).collect();
                    says::step_combine(&list(&names))
                }
                Step::Blend if blends => says::step_blend().to_owned(),
                Step::Blend => says::step_stir().to_owned(),
                Step::Cool => self.say_cool(formula),
                Step::TopUp => says::step_top_up().to_owned(),
                Step::Add(id) => match phase_of(id) {
                    Some(phase) => self.say_add(phase, heated),
                    None => continue,
                },
                Step::Ph => formula.target_ph.map_or_else(
                    || says::step_ph().to_owned(),
                    |ph| says::step_ph_to(&stillroom_core::number::write_between(ph.value(), 1, 2, self.mark())),
                ),
                Step::Fill => says::step_fill().to_owned(),
                // Each line is named with its phase; a little of the batch goes into a dish as part of adding it.
                Step::Weigh(_) | Step::Temper(_) | Step::Finish => continue,
            };
            said.push(sentence);
        }
        said
    }

    /// What each phase is brought to, a sentence each: what the author's own steps may not say.
    pub(crate) fn temperatures_of(&self, formula: &Formula) -> Vec<String> {
        let stated = formula.phases.iter().filter(|phase| !phase.lines.is_empty());
        let say = |phase: &Phase| {
            let degrees = self.degrees_of(phase)?;
            let to = is_heated(phase.kind);
            Some(if to { says::degrees_to(&phase.name, &degrees) } else { says::degrees_under(&phase.name, &degrees) })
        };
        stated.filter_map(say).collect()
    }

    fn degrees_of(&self, phase: &Phase) -> Option<String> {
        let unit = self.settings.temperature_unit.symbol();
        phase.temperature.map(|degrees| with_unit(&self.temperature_number(degrees.value()), unit))
    }

    fn say_heat(&self, phase: &Phase) -> String {
        match self.degrees_of(phase) {
            Some(degrees) => says::step_heat_to(&phase.name, &degrees),
            None => says::step_heat(&phase.name),
        }
    }

    /// The batch cools to what the most sensitive phase that is added later bears.
    fn say_cool(&self, formula: &Formula) -> String {
        let (_, late) = early_and_late(formula, &[]);
        let least = late.iter().filter(|phase| phase.temperature.is_some()).min_by_key(|phase| phase.temperature);
        match least.and_then(|phase| self.degrees_of(phase)) {
            Some(degrees) => says::step_cool_under(&degrees),
            None => says::step_cool().to_owned(),
        }
    }

    fn say_add(&self, phase: &Phase, tempered: bool) -> String {
        match (self.degrees_of(phase), tempered) {
            (Some(degrees), true) => says::step_add_under(&phase.name, &degrees),
            (None, true) => says::step_add_tempered(&phase.name),
            (_, false) => says::step_add(&phase.name),
        }
    }

    fn lines_of(&self, phase: &Phase, formula: &Formula, evaluation: &Evaluation) -> String {
        let masses = self.masses_of(evaluation);
        let named = formula.lines().zip(masses).filter(|(line, _)| phase.lines.iter().any(|each| each.id == line.id));
        let named: Vec<String> = named
            .map(|(line, mass)| {
                let name = self.materials.name(line.material);
                if mass.is_empty() { name } else { says::mass_of(&name, &mass) }
            })
            .collect();
        // Names may hold commas.
        named.join(says::between())
    }

    /// What to weigh of each line, with its unit; empty texts where nothing can be weighed.
    pub(crate) fn masses_of(&self, evaluation: &Evaluation) -> Vec<String> {
        let symbol = self.settings.mass_unit.symbol();
        self.mass_numbers_of(evaluation)
            .into_iter()
            .map(|number| if number.is_empty() { number } else { with_unit(&number, symbol) })
            .collect()
    }

    /// The same as numbers alone.
    pub(crate) fn mass_numbers_of(&self, evaluation: &Evaluation) -> Vec<String> {
        let unit = self.settings.mass_unit;
        let Some(sheet) = &evaluation.sheet else { return vec![String::new(); evaluation.lines.len()] };
        let write = |mass, scale| {
            stillroom_core::number::write_fixed(unit.from_grams(mass), self.mass_decimals(scale), self.mark())
        };
        sheet.lines.iter().map(|line| write(line.target, line.scale)).collect()
    }
}
