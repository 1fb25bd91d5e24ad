//! The pH at the bench: what is read and added, and what that comes to for the batch.

use crate::messages::ph as says;
use crate::rooms::batches::command::BatchesCommand;
use crate::rooms::batches::edit::{Read, Refusal};
use crate::rooms::batches::facts::WATER;
use crate::rooms::ph::sentences as sentences_ph;
use crate::session::Session;
use litemap::LiteMap;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use stillroom_catalogue::knowledge;
use stillroom_core::checks::facts::Knowledge as _;
use stillroom_core::checks::{Conditions, Contents};
use stillroom_core::chemistry::Temperature;
use stillroom_core::chemistry::ph::Solution;
use stillroom_core::evaluation::evaluate;
use stillroom_core::number::read_plain;
use stillroom_core::run::state::RunState;
use stillroom_core::run::steps::Step;
use stillroom_core::run::titration::{
    Drops, Miss, OnBench, Outside, PhDeed, PhReading, ReadBy, Standing, Titrant, Titrated, Vessel, Window, by_reading,
    titrate,
};
use stillroom_core::run::{Deed, Event};
use stillroom_core::{Amount, Formula, Grams, MaterialId, Percent, Ph, PhaseKind};
use stillroom_exchange::batch::{Batch, BatchId};

/// How many drops are weighed at once.
const DROPS_WEIGHED: u32 = 20;
/// Most drops of one addition.
const MOST_DROPS: u32 = 10_000;
/// Strength of a dosing solution in percent if nobody says otherwise. Common practice.
pub(super) const USUAL_STRENGTH: u32 = 10;
/// Under which name a run is told what its pH is read with.
pub(crate) const READ_BY: &str = "ph-read-by";

/// What is meant to be added, before any of it is in: it is noted once something is.
#[derive(Debug, Default, Clone)]
pub(crate) struct PhBench {
    of: Option<BatchId>,
    said: LiteMap<String, String>,
}

impl PhBench {
    pub(super) fn said(&self, name: &str) -> Option<&str> {
        self.said.get(name).map(String::as_str)
    }
}

/// What the batch needs of the solution in hand, in g, and the titrated sample it rests on.
pub(super) struct Needed {
    pub(super) all: f64,
    pub(super) now: f64,
    pub(super) sample: Option<Titrated>,
}

impl Session {
    /// What is meant to be added in the open batch.
    pub(crate) fn ph_bench(&mut self) -> PhBench {
        let open = self.at_bench.open;
        let bench = self.waiting.of::<PhBench>();
        if bench.of != open {
            *bench = PhBench { of: open, said: LiteMap::new() };
        }
        bench.clone()
    }

    pub(super) fn planned(&self) -> PhBench {
        let bench = self.waiting.seen::<PhBench>().cloned().unwrap_or_default();
        if bench.of == self.at_bench.open { bench } else { PhBench::default() }
    }

    /// Notes what is meant to be added.
    pub(crate) fn plan_titration(&mut self, name: &str, text: &str) -> Result<(), stillroom_core::number::NumberError> {
        let mark = self.mark();
        let unit = self.settings.mass_unit;
        self.ph_bench();
        let text = text.trim();
        match name {
            "strength" => {
                read_plain(text.trim_end_matches('%').trim(), mark, Decimal::new(1, 1), Decimal::ONE_HUNDRED)?;
            }
            "water" | "drop-mass" if !text.is_empty() => {
                stillroom_core::number::read_mass(text, mark, unit, None)?;
            }
            "material" if text.parse::<MaterialId>().is_err() => return Ok(()),
            "material" | "water" | "drop-mass" => {}
            _ => return Ok(()),
        }
        self.waiting.of::<PhBench>().said.insert(name.to_owned(), text.to_owned());
        Ok(())
    }

    /// The solution that is meant: what was said, or else what was used last, or else what is in common use for the way
    /// the pH has to go.
    pub(super) fn titrant_meant(&self, state: &RunState) -> Option<Titrant> {
        let said = self.planned();
        let last = state.ph_log.titrant;
        let material = said.said("material").and_then(|text| text.parse().ok()).or(last.map(|last| last.material));
        let material = material.or_else(|| self.usual_titrants(state).first().copied())?;
        let known = last.filter(|last| last.material == material);
        let strength = said
            .said("strength")
            .and_then(|text| {
                let text = text.trim_end_matches('%').trim();
                read_plain(text, self.mark(), Decimal::new(1, 1), Decimal::ONE_HUNDRED).ok()
            })
            .and_then(|strength| Percent::new(strength).ok())
            .or(known.map(|last| last.strength));
        let usual = if self.is_simple(material) { Decimal::from(USUAL_STRENGTH) } else { Decimal::ONE_HUNDRED };
        let strength = strength.or_else(|| Percent::new(usual).ok())?;
        let drops = said
            .said("drop-mass")
            .and_then(|text| stillroom_core::number::read_mass(text, self.mark(), self.settings.mass_unit, None).ok())
            .filter(|mass| !mass.is_zero())
            .map(|mass| Drops { count: DROPS_WEIGHED, mass })
            .or(known.and_then(|last| last.drops));
        Some(Titrant { material, strength, drops })
    }

    /// What brings the batch to where it should be: by the way it has to go.
    #[expect(clippy::unused_self, reason = "read beside the others")]
    pub(super) fn usual_titrants(&self, state: &RunState) -> Vec<MaterialId> {
        let lowers = match state.ph_log.standing() {
            Standing::Outside(reading, outside) | Standing::Accepted(reading, outside) => goes_down(&reading, &outside),
            _ => state.ph_log.last_of_batch().zip(state.ph_log.target).is_none_or(|(last, target)| last.ph > target),
        };
        // Citric and lactic acid; arginine, sodium hydroxide, sodium bicarbonate: what recipes use most (common practice).
        let names = if lowers {
            ["Citric Acid", "Lactic Acid"].as_slice()
        } else {
            ["Arginine", "Sodium Hydroxide", "Sodium Bicarbonate"].as_slice()
        };
        let catalogue = stillroom_catalogue::Catalogue::get();
        let of_name = |name: &&str| {
            let found = catalogue.constituents().find(|constituent| constituent.inci == **name)?;
            knowledge().material_of(found.id)
        };
        names.iter().filter_map(of_name).collect()
    }

    // ---- what it comes to -----------------------------------------------------------------------------------------

    /// What the batch needs of a solution to reach the target.
    pub(super) fn needed(
        &mut self,
        batch: &Batch,
        state: &RunState,
        titrant: Titrant,
    ) -> Option<Result<Needed, String>> {
        let target = target_of(state)?.to_physics();
        let log = &state.ph_log;
        let product = self.product_at_bench(batch, state);
        let solution = self.solution_of(titrant)?;
        let there = state.poured().to_physics() - log.taken.to_physics();
        let bench = OnBench { product: &product, titrant: &solution, batch: there, at: Temperature::TWENTY_FIVE };
        let sample = if log.titrant.is_some_and(|known| is_same(known, titrant)) || is_fresh(state) {
            titrate(log, bench, target)
        } else {
            None
        };
        let found = if let Some(found) = sample {
            found.map(|sample| Needed { all: sample.all, now: sample.now, sample: Some(sample) })
        } else {
            log.last_of_batch()?;
            by_reading(log, bench, target).map(|(all, now)| Needed { all, now, sample: None })
        };
        Some(found.map_err(|error| sentences_ph::ph_error(&error, &|ph| self.ph(ph))))
    }

    /// What is known to be in a kilogram of what was poured, without corrections.
    fn product_at_bench(&mut self, batch: &Batch, state: &RunState) -> Solution<'static> {
        let mut uncorrected = state.clone();
        uncorrected.ph_log.corrections.clear();
        let planned = &batch.plan.formula;
        let made = uncorrected.as_made(planned, WATER, |id| self.is_water(id));
        self.dissolved_of(&made.unwrap_or_else(|| planned.clone()))
    }

    /// What is known to be in a kilogram of a dosing solution.
    fn solution_of(&mut self, titrant: Titrant) -> Option<Solution<'static>> {
        let mut formula = Formula::with_name("");
        let phase = formula.add_phase("", PhaseKind::RoomTemperature, None);
        formula.add_line(phase, titrant.material, Amount::Percent(titrant.strength));
        let water = Percent::HUNDRED.checked_sub(titrant.strength)?;
        if !water.is_zero() {
            formula.add_line(phase, WATER, Amount::Percent(water));
        }
        Some(self.dissolved_of(&formula))
    }

    fn dissolved_of(&mut self, formula: &Formula) -> Solution<'static> {
        let evaluation = evaluate(formula, &self.bench, &self.materials, &mut self.makeups);
        let contents = Contents::new(formula, &evaluation, &self.materials, knowledge(), Conditions::default());
        let all = contents.dissolved();
        let mut solution = Solution::in_water(all.water);
        for known in &all.known {
            solution.add_solution(&known.brings, 1.0);
        }
        solution
    }

    // ---- what was typed -------------------------------------------------------------------------------------------

    /// Reads what was done about the pH.
    pub(crate) fn read_ph_deeds(
        &mut self,
        batch: &Batch,
        state: &RunState,
        command: BatchesCommand,
    ) -> Read<Vec<Deed>> {
        let deeds = match command {
            BatchesCommand::NotePh { text } if text.trim().is_empty() => vec![Deed::Closed(Step::Ph)],
            BatchesCommand::NotePh { text } => self.read_batch_ph(batch, state, &text)?,
            BatchesCommand::TakePhSample { text } => self.read_sample(state, &text)?,
            BatchesCommand::AddDrops { text } => self.read_drops(state, &text)?,
            BatchesCommand::AddToSample { text } => {
                sample_of(state)?;
                let mass = self.read_grams(&text)?;
                let mut deeds = self.note_titrant(state)?;
                deeds.push(Deed::Ph(PhDeed::GramsAdded(mass)));
                deeds
            }
            BatchesCommand::ReadSample { text } => {
                sample_of(state)?;
                vec![Deed::Ph(PhDeed::Read(Vessel::Sample, self.read_ph(&text)?, read_by(state)))]
            }
            BatchesCommand::CorrectPh { text } => self.read_correction(batch, state, &text)?,
            BatchesCommand::AcceptPh {} => vec![Deed::Ph(PhDeed::Accepted), Deed::Closed(Step::Ph)],
            _ => return Err(Refusal::Nothing),
        };
        Ok(deeds)
    }

    fn read_ph(&self, text: &str) -> Read<Ph> {
        let value = read_plain(text.trim(), self.mark(), Ph::MINIMUM, Ph::MAXIMUM)?;
        Ph::new(value).map_err(|_| Refusal::Nothing)
    }

    /// A reading of the batch; it closes the step where it lies where it should.
    fn read_batch_ph(&mut self, batch: &Batch, state: &RunState, text: &str) -> Read<Vec<Deed>> {
        let reading = PhDeed::Read(Vessel::Batch, self.read_ph(text)?, read_by(state));
        let mut deeds = Vec::new();
        if state.ph_log.windows.is_empty() {
            let windows = self.windows_of(&batch.plan.formula);
            if !windows.is_empty() {
                deeds.push(Deed::Ph(PhDeed::Windows(windows)));
            }
        }
        deeds.push(Deed::Ph(reading));
        let mut events = batch.events.clone();
        events.extend(deeds.iter().map(|deed| Event { at: 0, deed: deed.clone() }));
        let then = stillroom_core::run::state::replay(&batch.plan, &events);
        if then.is_some_and(|then| matches!(then.ph_log.standing(), Standing::Within(_))) {
            deeds.push(Deed::Closed(Step::Ph));
        }
        Ok(deeds)
    }

    /// The pH in which each preservative of a formula works.
    fn windows_of(&mut self, formula: &Formula) -> Vec<Window> {
        let evaluation = evaluate(formula, &self.bench, &self.materials, &mut self.makeups);
        let contents = Contents::new(formula, &evaluation, &self.materials, knowledge(), Conditions::default());
        let ph = |value: f64| Ph::new(Decimal::try_from(value).ok()?.round_dp(2)).ok();
        let preservatives = contents.present.iter().filter(|each| each.percent > 0.0);
        preservatives
            .filter_map(|each| {
                let window = each.facts.preservative.as_ref()?.ph.as_ref()?.value;
                Some(Window { substance: each.id, low: ph(window.low)?, high: ph(window.high)? })
            })
            .collect()
    }

    fn read_sample(&self, state: &RunState, text: &str) -> Read<Vec<Deed>> {
        let mass = self.read_grams(text)?;
        let left = state.poured().checked_sub(state.ph_log.taken).unwrap_or(Grams::ZERO);
        if mass.is_zero() {
            return Err(Refusal::Nothing);
        }
        if mass >= left {
            return Err(Refusal::Sentence("run.sample-too-large", says::run_too_large_sample().to_owned()));
        }
        let water = self.planned().said("water").filter(|text| !text.is_empty()).map(str::to_owned);
        let water = water.map_or(Ok(Grams::ZERO), |text| self.read_grams(&text))?;
        Ok(vec![Deed::Ph(PhDeed::SampleTaken(mass, water))])
    }

    fn read_drops(&self, state: &RunState, text: &str) -> Read<Vec<Deed>> {
        sample_of(state)?;
        let count = read_plain(text.trim(), self.mark(), Decimal::ONE, Decimal::from(MOST_DROPS))?;
        let Some(count) = count.to_u32().filter(|whole| Decimal::from(*whole) == count) else {
            return Err(Refusal::Sentence("run.drops", says::run_takes_drops().to_owned()));
        };
        if self.titrant_meant(state).is_none_or(|titrant| titrant.drops.is_none()) {
            return Err(Refusal::Sentence("run.no-drops", says::run_no_drops().to_owned()));
        }
        let mut deeds = self.note_titrant(state)?;
        deeds.push(Deed::Ph(PhDeed::DropsAdded(count)));
        Ok(deeds)
    }

    /// The solution, where it is another than the last.
    fn note_titrant(&self, state: &RunState) -> Read<Vec<Deed>> {
        let titrant = self
            .titrant_meant(state)
            .ok_or_else(|| Refusal::Sentence("run.no-titrant", says::run_no_titrant().to_owned()))?;
        let known = state.ph_log.titrant == Some(titrant);
        Ok(if known { Vec::new() } else { vec![Deed::Ph(PhDeed::Titrant(titrant))] })
    }

    /// What went into the batch: what was worked out where nothing was typed.
    fn read_correction(&mut self, batch: &Batch, state: &RunState, text: &str) -> Read<Vec<Deed>> {
        let mass = if text.trim().is_empty() {
            let titrant = self.titrant_meant(state).ok_or(Refusal::Nothing)?;
            let needed = self.needed(batch, state, titrant).and_then(Result::ok).ok_or(Refusal::Nothing)?;
            self.to_weigh(needed.now).ok_or(Refusal::Nothing)?
        } else {
            self.read_grams(text)?
        };
        if mass.is_zero() {
            return Err(Refusal::Nothing);
        }
        let mut deeds = self.note_titrant(state)?;
        deeds.push(Deed::Ph(PhDeed::Corrected(mass)));
        Ok(deeds)
    }

    /// A mass as the finest scale shows it, rounded down: an overshoot cannot be taken out.
    pub(super) fn to_weigh(&self, grams: f64) -> Option<Grams> {
        let step = self.settings.scales.as_slice().iter().map(|scale| scale.step.value()).min()?;
        let exact = Decimal::try_from(grams).ok()?;
        let steps = exact.checked_div(step)?.floor();
        // Less than the scale shows is told to a hundredth of a gram.
        let mass = if steps.is_zero() { exact.round_dp(2) } else { steps.checked_mul(step)? };
        Grams::new(mass).ok()
    }
}

/// What is aimed at; without a target the middle of the windows says where to go.
pub(super) fn target_of(state: &RunState) -> Option<Ph> {
    state.ph_log.target.or_else(|| {
        let window = state.ph_log.windows.first()?;
        Ph::new((window.low.value() + window.high.value()) / Decimal::TWO).ok()
    })
}

fn goes_down(reading: &PhReading, outside: &Outside) -> bool {
    match outside.target {
        Some(Miss::TooHigh) => true,
        Some(Miss::TooLow) => false,
        None => outside.windows.iter().any(|window| reading.ph > window.high),
    }
}

fn is_same(one: Titrant, other: Titrant) -> bool {
    one.material == other.material && one.strength == other.strength
}

/// Whether nothing has gone into the sample: then any solution may.
fn is_fresh(state: &RunState) -> bool {
    state.ph_log.sample.as_ref().is_some_and(|sample| sample.added.is_zero())
}

fn sample_of(state: &RunState) -> Read<()> {
    let sentence = || Refusal::Sentence("run.no-sample", says::run_no_sample().to_owned());
    state.ph_log.sample.as_ref().map(|_| ()).ok_or_else(sentence)
}

/// What the pH is read with, as was said last.
pub(super) fn read_by(state: &RunState) -> ReadBy {
    state.said.get(READ_BY).map_or(ReadBy::Meter, |text| reader(text))
}

pub(super) fn reader(text: &str) -> ReadBy {
    let step = text.strip_prefix("strip:").and_then(|step| step.parse::<Decimal>().ok());
    step.and_then(|step| Ph::new(step).ok()).map_or(ReadBy::Meter, ReadBy::Strip)
}
