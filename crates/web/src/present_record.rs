//! The record of a batch, as it is shown and printed.

use crate::edit_run::SCALE_READS;
use crate::present_card::{batch_there, said_field};
use crate::present_run::{name_at, name_of_line};
use crate::run_facts::WATER;
use crate::sentences_card as card;
use crate::sentences_findings;
use crate::sentences_run as sentences;
use crate::session::Session;
use crate::view_extract::FigureView;
use crate::view_run::{LogLine, PairView, RecordLine, RecordView, RemarkView};
use rust_decimal::Decimal;
use stillroom_catalogue::knowledge;
use stillroom_core::checks::{Conditions, Contents, Finding, Severity, Value, check};
use stillroom_core::day::Day;
use stillroom_core::evaluation::evaluate;
use stillroom_core::number::{write_between, write_fixed};
use stillroom_core::run::filling::work_out_yield;
use stillroom_core::run::state::{LineStatus, RunState};
use stillroom_core::run::{Deed, Held, standing};
use stillroom_core::shelf_life::{Keeping, Limit, work_out_dates};
use stillroom_core::{ConstituentId, Formula, Grams, MaterialId, Percent, PhaseId};
use stillroom_exchange::batch::{Batch, BatchRecord};

/// Constituents named where the jar differs from the plan.
const MOST_DIFFERENT: usize = 8;
/// Relative difference in percent under which a constituent counts as it was planned.
const DIFFERS_FROM: Decimal = Decimal::from_parts(5, 0, 0, false, 1);

impl Session {
    pub(crate) fn present_record(&mut self, record: &BatchRecord, state: &RunState) -> RecordView {
        let batch = &record.batch;
        let step = self.settings.main_scale().step;
        // While a run is on nobody reads these, and every look at the timer would work them out.
        let done = state.finished_at.is_some();
        let target = state.lines.iter().map(|line| line.target.value()).sum::<Decimal>();
        let total = Grams::new(target).map_or_else(|_| String::new(), |mass| self.weight(mass, step));
        RecordView {
            head: self.head_of_record(batch, state),
            materials: self.materials_of_record(batch, state),
            total: PairView { label: total, value: self.weight(state.poured(), step) },
            log: self.log_of_record(batch),
            deviations: self.deviations_of(batch, state),
            results: self.results_of(batch, state),
            composition: if done { self.compare_with_plan(batch, state) } else { Vec::new() },
            findings: if done { self.findings_in_beaker(batch, state) } else { Vec::new() },
            dates: if done { self.dates_of(batch, state) } else { Vec::new() },
            fields: card::RECORD_FIELDS.iter().map(|(name, _)| said_field(state, name)).collect(),
            signatures: sentences::SIGNATURES.map(str::to_owned).to_vec(),
            cautions: card::CAUTIONS.map(str::to_owned).to_vec(),
        }
    }

    fn head_of_record(&self, batch: &Batch, state: &RunState) -> Vec<PairView> {
        let made_on = state.started_at.and_then(|at| self.day_at(at));
        let times = sentences::from_until(
            &state.started_at.map(|at| self.clock(at)).unwrap_or_default(),
            &state.finished_at.map(|at| self.clock(at)).unwrap_or_default(),
        );
        [
            (sentences::LOT, batch.lot.clone()),
            (sentences::FORMULA, batch.plan.formula.name.clone()),
            (sentences::VERSION, sentences::version(batch.version)),
            (sentences::MADE_ON, made_on.map(sentences::day).unwrap_or_default()),
            (sentences::BEGUN_ENDED, times),
            (sentences::PLANNED, self.mass(batch.plan.asked)),
        ]
        .into_iter()
        .filter(|(_, value)| !value.is_empty())
        .map(|(label, value)| pair(label, value))
        .collect()
    }

    fn materials_of_record(&self, batch: &Batch, state: &RunState) -> Vec<RecordLine> {
        let past = self.expired_in(batch, state);
        let mut lines = Vec::new();
        for phase in &batch.plan.formula.phases {
            for (at, line) in phase.lines.iter().enumerate() {
                let (Some(run), Some(used)) =
                    (state.line(line.id), batch.materials.iter().find(|used| used.line == line.id))
                else {
                    continue;
                };
                let planned = state.recipe.percent_of(line.id);
                let off = run.deviation().filter(|off| !off.is_zero() && !run.poured.is_zero());
                let is_past = past.iter().any(|past| past.material == line.material);
                lines.push(RecordLine {
                    phase: if at == 0 { phase.name.clone() } else { String::new() },
                    name: used.name.clone(),
                    inci: used.inci.clone(),
                    lot: used.lot.clone(),
                    expiry: used.expiry.clone(),
                    percent: planned.map(|planned| self.short_percent(planned, 4)).unwrap_or_default(),
                    target: self.weight_number(run.target, run.tolerance),
                    weighed: if run.poured.is_zero() {
                        String::new()
                    } else {
                        self.weight_number(run.poured, run.tolerance)
                    },
                    deviation: off.map(|off| self.signed_percent(off)).unwrap_or_default(),
                    odd: is_past
                        || matches!(run.status, LineStatus::Accepted | LineStatus::LeftOut | LineStatus::Over(_)),
                });
            }
        }
        lines
    }

    fn signed_percent(&self, percent: Percent) -> String {
        let text = write_fixed(percent.value(), 1, self.mark());
        if percent.value() > Decimal::ZERO { format!("+{text}") } else { text }
    }

    // ---- the log ------------------------------------------------------------------------------------------------

    /// All that was done, in order. What was taken back stays, crossed out.
    fn log_of_record(&self, batch: &Batch) -> Vec<LogLine> {
        let standing = standing(&batch.events);
        let stands = |at: usize| standing.iter().any(|(place, _)| *place == at);
        batch
            .events
            .iter()
            .enumerate()
            .filter(|(_, event)| event.deed != Deed::TakenBack)
            .map(|(at, event)| LogLine {
                time: self.clock(event.at),
                text: self.deed_in_words(batch, &event.deed),
                taken_back: !stands(at),
            })
            .collect()
    }

    pub(crate) fn deed_in_words(&self, batch: &Batch, deed: &Deed) -> String {
        let mass = |mass: &Grams| self.mass(*mass);
        let line = |id| name_of_line(batch, id);
        let phase = |id: &PhaseId| {
            let found = batch.plan.formula.phases.iter().find(|phase| phase.id == *id);
            found.map(|phase| phase.name.clone()).unwrap_or_default()
        };
        let step = |step| sentences::step_label(step, &name_at(batch, step));
        match deed {
            Deed::Started => sentences::did_start(),
            Deed::PhaseFirst(id) => sentences::did_put_first(&phase(id)),
            Deed::EmptyBeaker(id, empty) => sentences::did_beaker(&phase(id), &mass(empty)),
            Deed::Poured(id, poured) => sentences::did_pour(line(*id), &mass(poured)),
            Deed::LeftOut(id) => sentences::did_leave_out(line(*id)),
            Deed::Accepted(id) => sentences::did_accept(line(*id)),
            Deed::Rescaled(id) => sentences::did_rescale(line(*id)),
            Deed::TakenFromRest(id) => sentences::did_take_from_rest(line(*id)),
            Deed::WeighedCold(id, cold) => sentences::did_weigh_cold(&phase(id), &mass(cold)),
            Deed::WeighedHot(id, hot) => sentences::did_weigh_hot(&phase(id), &mass(hot)),
            Deed::WaterAdded(id, added) => {
                sentences::did_add_water(&id.as_ref().map(phase).unwrap_or_default(), &mass(added))
            }
            Deed::Temperature(held, celsius) => {
                let held = match held {
                    Held::Phase(id) => phase(id),
                    Held::Batch => sentences::THE_BATCH.to_owned(),
                    Held::Room => sentences::THE_ROOM.to_owned(),
                };
                sentences::did_read(&held, &self.degrees(celsius.to_physics(), 1))
            }
            Deed::TimerStarted(of, seconds, _) => {
                let minutes = Decimal::from(*seconds) / Decimal::from(60);
                sentences::did_start_timer(&step(*of), &write_between(minutes.round_dp(1), 0, 1, self.mark()))
            }
            Deed::TimerStopped(of) => sentences::did_stop_timer(&step(*of)),
            Deed::TimerResumed(of) => sentences::did_resume_timer(&step(*of)),
            Deed::Tempered(id, taken) => sentences::did_temper(&phase(id), &mass(taken)),
            Deed::BatchWeighed(gross, empty) => sentences::did_weigh_batch(&mass(gross), &mass(empty)),
            Deed::PhMeasured(ph) => sentences::did_measure_ph(&write_between(ph.value(), 1, 2, self.mark())),
            Deed::Filled(count, each) => sentences::did_fill(*count, &mass(each)),
            Deed::Said(name, text) => {
                let known = card::RECORD_FIELDS.iter().find(|(key, _)| key == name).map(|(_, label)| *label);
                let label = if name == SCALE_READS { sentences::SCALE_READING } else { known.unwrap_or(name) };
                sentences::did_say(label, text)
            }
            Deed::Closed(of) => sentences::did_close(&step(*of)),
            Deed::Finished(_) => sentences::did_finish(),
            Deed::TakenBack => String::new(),
        }
    }

    // ---- what came of it ----------------------------------------------------------------------------------------

    fn results_of(&self, batch: &Batch, state: &RunState) -> Vec<PairView> {
        let step = self.settings.main_scale().step;
        let mut results = vec![pair(sentences::WEIGHED_IN, self.weight(state.poured(), step))];
        let put_back: Decimal = standing(&batch.events)
            .iter()
            .filter_map(|(_, event)| match &event.deed {
                Deed::WaterAdded(_, mass) => Some(mass.value()),
                _ => None,
            })
            .sum();
        if let Ok(mass) = Grams::new(put_back)
            && !mass.is_zero()
        {
            results.push(pair(sentences::WATER_BACK, self.weight(mass, step)));
        }
        results.extend(state.batch_mass().map(|_| pair(sentences::THERE, self.weight(batch_there(state), step))));
        results.extend(state.ph.map(|ph| pair(sentences::PH, write_between(ph.value(), 1, 2, self.mark()))));
        if !state.filled.is_empty() {
            let filled: Vec<String> =
                state.filled.iter().map(|(count, each)| card::filled(*count, &self.weight(*each, step))).collect();
            results.push(pair(sentences::FILLED, filled.join(", ")));
        }
        let found = state.filled_mass().filter(|mass| !mass.is_zero());
        if let Some(found) = found.and_then(|filled| work_out_yield(state.poured(), filled)) {
            let (filled, of) = (self.weight(found.filled, step), self.weight(found.weighed_in, step));
            results
                .push(pair(sentences::YIELD, card::yield_value(&self.short_percent(found.percent, 1), &filled, &of)));
        }
        if !state.drawn.is_empty() {
            let name = |id: MaterialId| {
                batch
                    .materials
                    .iter()
                    .find(|used| used.material == id)
                    .map(|used| used.name.as_str())
                    .unwrap_or_default()
            };
            let drawn: Vec<String> =
                state.drawn.iter().map(|(id, mass)| sentences::more_of(&self.mass(*mass), name(*id))).collect();
            results.push(pair(sentences::DRAWN, drawn.join(", ")));
        }
        results
    }

    fn deviations_of(&self, batch: &Batch, state: &RunState) -> Vec<String> {
        let mut deviations = Vec::new();
        let name = |id: MaterialId| {
            batch.materials.iter().find(|used| used.material == id).map(|used| used.name.as_str()).unwrap_or_default()
        };
        for past in self.expired_in(batch, state) {
            deviations.push(sentences::expired(name(past.material), &sentences::day(past.last_day), past.days));
        }
        let step = self.settings.main_scale().step;
        if let Some(now) = state.recipe.batch().filter(|now| *now != batch.plan.asked) {
            let now = Grams::new(now.value().round_dp(2)).unwrap_or(now);
            deviations.push(sentences::deviation_batch(&self.mass(batch.plan.asked), &self.mass(now)));
        }
        for line in &state.lines {
            let of = name_of_line(batch, line.line);
            match line.status {
                LineStatus::LeftOut => deviations.push(sentences::deviation_left_out(of)),
                LineStatus::Accepted | LineStatus::Over(_) => {
                    let off = line.deviation().map(|off| self.signed_percent(off)).unwrap_or_default();
                    let (poured, target) =
                        (self.weight(line.poured, line.tolerance), self.weight(line.target, line.tolerance));
                    deviations.push(sentences::deviation_of_mass(of, &poured, &target, &off));
                }
                _ => {}
            }
        }
        for (id, percent, now) in state.recipe.moved_shares(&batch.plan) {
            // The q.s. line gave way, or a line took from it.
            let text = card::from_to(&self.short_percent(percent, 2), &self.short_percent(now, 2));
            deviations.push(sentences::did_read(name_of_line(batch, id), &text));
        }
        let net = state.net_water(&batch.plan.formula);
        let size = Grams::new(net.abs()).unwrap_or(Grams::ZERO);
        if size > step {
            let mass = self.weight(size, step);
            let lost = net < Decimal::ZERO;
            deviations.push(if lost {
                sentences::deviation_water(&mass)
            } else {
                sentences::deviation_water_more(&mass)
            });
        }
        if let (Some(ph), Some(wanted)) = (state.ph, batch.plan.formula.target_ph)
            && (ph.value() - wanted.value()).abs() > Decimal::new(3, 1)
        {
            let write = |ph: stillroom_core::Ph| write_between(ph.value(), 1, 2, self.mark());
            deviations.push(sentences::deviation_ph(&write(ph), &write(wanted)));
        }
        let filled = state.filled_mass().filter(|mass| !mass.is_zero());
        if let Some(found) =
            filled.and_then(|filled| work_out_yield(state.poured(), filled)).filter(|found| found.to_explain)
        {
            deviations.push(sentences::deviation_yield(&self.short_percent(found.percent, 1)));
        }
        deviations
    }

    /// Constituents of what is really in the beaker that differ from the plan, the most different first.
    fn compare_with_plan(&mut self, batch: &Batch, state: &RunState) -> Vec<PairView> {
        // Half a batch differs from the whole in everything: there is nothing to say yet.
        if !state.lines.iter().all(|line| line.status.is_settled()) {
            return Vec::new();
        }
        let Some(made) = state.as_made(&batch.plan.formula, WATER, |id| self.is_water(id)) else { return Vec::new() };
        let planned = evaluate(&batch.plan.formula, &self.bench, &self.materials, &mut self.makeups).composition;
        let made = evaluate(&made, &self.bench, &self.materials, &mut self.makeups).composition;
        let percent_in = |composition: &stillroom_core::composition::Composition, id: ConstituentId| {
            let found = composition.entries.iter().find(|entry| entry.constituent == id);
            found.map_or(Decimal::ZERO, |entry| entry.percent.value())
        };
        let mut ids: Vec<ConstituentId> =
            planned.entries.iter().chain(&made.entries).map(|entry| entry.constituent).collect();
        ids.sort_unstable();
        ids.dedup();
        let mut rows: Vec<(Decimal, ConstituentId, Decimal, Decimal)> = ids
            .into_iter()
            .filter_map(|id| {
                let (from, to) = (percent_in(&planned, id), percent_in(&made, id));
                let relative = ((to - from) * Decimal::ONE_HUNDRED).checked_div(from.max(Decimal::new(1, 4)))?.abs();
                (relative > DIFFERS_FROM && (to - from).abs() > Decimal::new(5, 4)).then_some((relative, id, from, to))
            })
            .collect();
        rows.sort_by_key(|row| core::cmp::Reverse(row.0));
        let text =
            |value: Decimal| Percent::new(value).map_or_else(|_| String::new(), |value| self.fixed_percent(value));
        rows.into_iter()
            .take(MOST_DIFFERENT)
            .map(|(_, id, from, to)| pair(self.materials.inci(id), card::from_to(&text(from), &text(to))))
            .collect()
    }

    /// What the checks find in what is really in the beaker and not in the plan.
    fn findings_in_beaker(&mut self, batch: &Batch, state: &RunState) -> Vec<RemarkView> {
        if !state.lines.iter().all(|line| line.status.is_settled()) {
            return Vec::new();
        }
        let made = state.as_made(&batch.plan.formula, WATER, |id| self.is_water(id));
        made.map(|made| self.findings_beside(&batch.plan.formula, &made)).unwrap_or_default()
    }

    /// Findings of one formula that another does not have.
    pub(crate) fn findings_beside(&mut self, planned: &Formula, made: &Formula) -> Vec<RemarkView> {
        let conditions = Conditions::with_cold(self.settings.cold_storage);
        let (before, after) = [planned, made]
            .map(|formula| {
                let evaluation = evaluate(formula, &self.bench, &self.materials, &mut self.makeups);
                check(&Contents::new(formula, &evaluation, &self.materials, knowledge(), conditions))
            })
            .into();
        let known = |finding: &Finding| {
            before.iter().any(|each: &Finding| {
                each.code == finding.code && each.subject == finding.subject && each.severity == finding.severity
            })
        };
        let write = |value: &Value| self.write_value(made, value);
        after
            .iter()
            .filter(|finding| finding.severity != Severity::Note && !known(finding))
            .map(|finding| RemarkView {
                tone: finding.severity.slug(),
                text: sentences_findings::say(finding.code, &finding.values, &write),
            })
            .collect()
    }

    // ---- dates --------------------------------------------------------------------------------------------------

    fn dates_of(&mut self, batch: &Batch, state: &RunState) -> Vec<FigureView> {
        let today = || self.around.today().parse::<Day>().ok();
        let Some(made) = state.started_at.and_then(|at| self.day_at(at)).or_else(today) else { return Vec::new() };
        let used = |id: MaterialId| {
            batch.materials.iter().find(|used| used.material == id).map(|used| used.name.clone()).unwrap_or_default()
        };
        let materials: Vec<(MaterialId, Option<Day>)> =
            batch.materials.iter().map(|used| (used.material, used.expiry.parse().ok())).collect();
        let stated = state
            .said
            .get("durability")
            .and_then(|text| text.split(|c: char| !c.is_ascii_digit()).find_map(|number| number.parse::<u32>().ok()));
        let keeping: Keeping = self.keeping_of(&batch.plan.formula);
        let dates = work_out_dates(made, &materials, stated.filter(|months| (1..=120).contains(months)), keeping);
        let mut why = vec![match &dates.limit {
            Limit::Material(id, day) => sentences::limit_material(&used(*id), &sentences::day(*day)),
            Limit::Stated(months) => sentences::limit_stated(*months),
            Limit::Keeping(keeping) => sentences::limit_keeping(*keeping).to_owned(),
            Limit::Unknown => sentences::LIMIT_UNKNOWN.to_owned(),
        }];
        if !dates.unknown.is_empty() && dates.best_before.is_some() {
            let names: Vec<String> = dates.unknown.iter().map(|id| used(*id)).collect();
            why.push(sentences::days_unknown(&names));
        }
        let figure = |label: &str, value: String, how: String, source: &str| FigureView {
            label: label.to_owned(),
            value,
            range: String::new(),
            how,
            source: source.to_owned(),
        };
        let (opening, opening_how) = match dates.after_opening {
            Some((fewest, most)) => (sentences::months_after_opening(fewest, most), sentences::OPENING_HOW),
            None => (sentences::OPENING_NONE.to_owned(), sentences::OPENING_NONE_HOW),
        };
        vec![
            figure(
                sentences::BEST_BEFORE,
                dates.best_before.map_or_else(|| sentences::NO_DAY.to_owned(), sentences::day),
                why.join(" "),
                sentences::PRACTICE,
            ),
            figure(sentences::AFTER_OPENING, opening, opening_how.to_owned(), sentences::PRACTICE),
            figure(
                sentences::ON_LABEL,
                sentences::date_on_label(dates.date_required, dates.months),
                sentences::thirty_months(dates.months),
                sentences::THIRTY_MONTHS_SOURCE,
            ),
        ]
    }
}

fn pair(label: &str, value: String) -> PairView {
    PairView { label: label.to_owned(), value }
}
