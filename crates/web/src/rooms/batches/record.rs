//! The record of a batch, as it is shown and printed.

use crate::messages::batches as says;
use crate::messages::sentences::list;
use crate::rooms::batches::acidity::READ_BY;
use crate::rooms::batches::card::said_field;
use crate::rooms::batches::edit::{ALL_IN_BEAKER, SCALE_READS};
use crate::rooms::batches::facts::WATER;
use crate::rooms::batches::present::{name_at, name_of_line};
use crate::rooms::batches::sentences;
use crate::rooms::batches::view::{LogLine, PairView, RecordLine, RecordView, RemarkView};
use crate::rooms::extracts::view::FigureView;
use crate::rooms::findings::sentences as sentences_findings;
use crate::session::Session;
use rust_decimal::Decimal;
use stillroom_catalogue::knowledge;
use stillroom_core::checks::{Contents, Finding, Severity, Value, check};
use stillroom_core::day::Day;
use stillroom_core::evaluation::evaluate;
use stillroom_core::number::{write_between, write_fixed};
use stillroom_core::run::filling::work_out_yield;
use stillroom_core::run::state::{LineStatus, RunState};
use stillroom_core::run::{Deed, Held, standing};
use stillroom_core::shelf_life::{Dates, Limit, work_out_dates};
use stillroom_core::{ConstituentId, Formula, Grams, MaterialId, Percent, PhaseId};
use stillroom_exchange::batch::{Batch, BatchRecord, UsedMaterial};

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
            fields: sentences::record_fields().iter().map(|(name, _)| said_field(state, name)).collect(),
            signatures: sentences::signatures().map(str::to_owned).to_vec(),
            cautions: self.cautions_of_record(state),
        }
    }

    fn cautions_of_record(&self, state: &RunState) -> Vec<String> {
        let caustic = self.corrects_with_caustic(state).then(crate::rooms::ph::sentences::caustic);
        sentences::cautions().into_iter().chain(caustic.into_iter().flatten()).map(str::to_owned).collect()
    }

    fn head_of_record(&self, batch: &Batch, state: &RunState) -> Vec<PairView> {
        let made_on = state.started_at.and_then(|at| self.day_at(at));
        let times = sentences::from_until(
            &state.started_at.map(|at| self.clock(at)).unwrap_or_default(),
            &state.finished_at.map(|at| self.clock(at)).unwrap_or_default(),
        );
        [
            (says::record_lot(), batch.lot.clone()),
            (says::record_formula(), batch.plan.formula.name.clone()),
            (says::record_version(), sentences::version(batch.version)),
            (says::record_made_on(), made_on.map(sentences::day).unwrap_or_default()),
            (says::record_times(), times),
            (says::record_planned(), self.mass(batch.plan.asked)),
            (says::record_method(), sentences::numbered_steps(&batch.plan.formula.steps).join(" ")),
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
            Deed::Started => says::did_start().to_owned(),
            Deed::PhaseFirst(id) => says::did_put_first(&phase(id)),
            Deed::EmptyBeaker(id, empty) => says::did_beaker(&phase(id), &mass(empty)),
            Deed::Poured(id, poured) => says::did_pour(line(*id), &mass(poured)),
            Deed::LeftOut(id) => says::did_leave_out(line(*id)),
            Deed::Accepted(id) => says::did_accept(line(*id)),
            Deed::Rescaled(id) => says::did_rescale(line(*id)),
            Deed::TakenFromRest(id) => says::did_take_from_rest(line(*id)),
            Deed::WeighedCold(id, cold) => says::did_weigh_cold(&phase(id), &mass(cold)),
            Deed::WeighedHot(id, hot) => says::did_weigh_hot(&phase(id), &mass(hot)),
            Deed::WaterAdded(Some(id), added) => says::did_add_water_to_phase(&phase(id), &mass(added)),
            Deed::WaterAdded(None, added) => says::did_add_water(&mass(added)),
            Deed::Temperature(held, celsius) => {
                let degrees = self.degrees(celsius.to_physics(), 1);
                match held {
                    Held::Phase(id) => says::did_read_phase(&phase(id), &degrees),
                    Held::Batch => says::did_read_batch(&degrees),
                    Held::Room => says::did_read_room(&degrees),
                }
            }
            Deed::TimerStarted(of, seconds, _) => {
                let minutes = Decimal::from(*seconds) / Decimal::from(60);
                says::did_start_timer(&step(*of), &write_between(minutes.round_dp(1), 0, 1, self.mark()))
            }
            Deed::TimerStopped(of) => says::did_stop_timer(&step(*of)),
            Deed::TimerResumed(of) => says::did_resume_timer(&step(*of)),
            Deed::Tempered(id, taken) => says::did_temper(&phase(id), &mass(taken)),
            Deed::BatchWeighed(gross, empty) => says::did_weigh_batch(&mass(gross), &mass(empty)),
            Deed::PhMeasured(ph) => says::did_measure_ph(&write_between(ph.value(), 1, 2, self.mark())),
            Deed::Ph(deed) => self.ph_deed_in_words(deed),
            Deed::Filled(count, each) => says::did_fill(&count.to_string(), &mass(each)),
            Deed::Said(name, text) if name == READ_BY => self.reader_in_words(text),
            Deed::Said(name, text) => {
                if name == SCALE_READS {
                    let whole = text == ALL_IN_BEAKER;
                    return if whole { says::did_read_whole() } else { says::did_read_line() }.to_owned();
                }
                let known = sentences::record_fields().iter().find(|(key, _)| key == name).map(|(_, label)| *label);
                sentences::did_say(known.unwrap_or(name), text)
            }
            Deed::Closed(of) => says::did_close(&step(*of)),
            Deed::Finished(_) => says::did_finish().to_owned(),
            Deed::TakenBack => String::new(),
        }
    }

    // ---- what came of it ----------------------------------------------------------------------------------------

    fn results_of(&self, batch: &Batch, state: &RunState) -> Vec<PairView> {
        let step = self.settings.main_scale().step;
        let mut results = vec![pair(says::result_weighed_in(), self.weight(state.poured(), step))];
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
            results.push(pair(says::result_water_back(), self.weight(mass, step)));
        }
        results.extend(state.batch_mass().map(|_| pair(says::result_there(), self.weight(state.batch_there(), step))));
        results.extend(state.ph.map(|ph| pair(says::result_ph(), write_between(ph.value(), 1, 2, self.mark()))));
        results.extend(self.results_of_ph(state));
        if !state.filled.is_empty() {
            let filled: Vec<String> = state
                .filled
                .iter()
                .map(|(count, each)| says::card_filled(&count.to_string(), &self.weight(*each, step)))
                .collect();
            results.push(pair(says::result_filled(), list(&filled)));
        }
        let found = state.filled_mass().filter(|mass| !mass.is_zero());
        if let Some(found) = found.and_then(|filled| work_out_yield(state.poured(), filled)) {
            let (filled, of) = (self.weight(found.filled, step), self.weight(found.weighed_in, step));
            results.push(pair(
                says::result_yield(),
                says::card_yield_value(&self.short_percent(found.percent, 1), &filled, &of),
            ));
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
                state.drawn.iter().map(|(id, mass)| says::mass_of_material(&self.mass(*mass), name(*id))).collect();
            results.push(pair(says::result_drawn(), list(&drawn)));
        }
        results
    }

    fn deviations_of(&self, batch: &Batch, state: &RunState) -> Vec<String> {
        let mut deviations = Vec::new();
        let name = |id: MaterialId| {
            batch.materials.iter().find(|used| used.material == id).map(|used| used.name.as_str()).unwrap_or_default()
        };
        for past in self.expired_in(batch, state) {
            deviations.push(sentences::expired(name(past.material), past.last_day, past.days));
        }
        let step = self.settings.main_scale().step;
        if let Some(now) = state.recipe.batch().filter(|now| *now != batch.plan.asked) {
            let now = Grams::new(now.value().round_dp(2)).unwrap_or(now);
            deviations.push(says::deviation_batch(&self.mass(batch.plan.asked), &self.mass(now)));
        }
        for line in &state.lines {
            let of = name_of_line(batch, line.line);
            match line.status {
                LineStatus::LeftOut => deviations.push(says::deviation_left_out(of)),
                LineStatus::Accepted | LineStatus::Over(_) => {
                    let off = line.deviation().map(|off| self.signed_percent(off)).unwrap_or_default();
                    let (poured, target) =
                        (self.weight(line.poured, line.tolerance), self.weight(line.target, line.tolerance));
                    deviations.push(says::deviation_mass(of, &poured, &target, &off));
                }
                _ => {}
            }
        }
        for (id, percent, now) in state.recipe.moved_shares(&batch.plan) {
            // The q.s. line gave way, or a line took from it.
            let (from, to) = (self.short_percent(percent, 2), self.short_percent(now, 2));
            deviations.push(says::deviation_share(name_of_line(batch, id), &from, &to));
        }
        let net = state.net_water(&batch.plan.formula);
        let size = Grams::new(net.abs()).unwrap_or(Grams::ZERO);
        if size > step {
            let mass = self.weight(size, step);
            let lost = net < Decimal::ZERO;
            deviations.push(if lost { says::deviation_water(&mass) } else { says::deviation_water_more(&mass) });
        }
        if let (Some(ph), Some(wanted)) = (state.ph, batch.plan.formula.target_ph)
            && (ph.value() - wanted.value()).abs() > Decimal::new(3, 1)
        {
            let write = |ph: stillroom_core::Ph| write_between(ph.value(), 1, 2, self.mark());
            deviations.push(says::deviation_ph(&write(ph), &write(wanted)));
        }
        deviations.extend(self.deviations_of_ph(state));
        let filled = state.filled_mass().filter(|mass| !mass.is_zero());
        if let Some(found) =
            filled.and_then(|filled| work_out_yield(state.poured(), filled)).filter(|found| found.to_explain)
        {
            deviations.push(says::deviation_yield(&self.short_percent(found.percent, 1)));
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
            .map(|(_, id, from, to)| pair(self.materials.inci(id), says::card_from_to(&text(from), &text(to))))
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
        let conditions = self.conditions();
        let (before, after) = [planned, made]
            .map(|formula| {
                let evaluation = evaluate(formula, &self.bench, &self.materials, &mut self.makeups);
                check(&Contents::new(formula, &evaluation, &self.materials, knowledge(), conditions))
            })
            .into();
        let known = |finding: &Finding| before.iter().any(|each: &Finding| each.says_the_same_as(finding));
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

    /// Until when a formula made of these materials keeps: from the day the run began, or from today. `None` where the device
    /// does not know the day.
    pub(crate) fn work_out_dates_of(
        &mut self,
        formula: &Formula,
        used: &[UsedMaterial],
        state: Option<&RunState>,
    ) -> Option<Dates> {
        let began = state.and_then(|state| state.started_at).and_then(|at| self.day_at(at));
        let made = began.or_else(|| self.around.today().parse().ok())?;
        let materials: Vec<(MaterialId, Option<Day>)> =
            used.iter().map(|each| (each.material, each.expiry.parse().ok())).collect();
        let tested = state.and_then(|state| state.said.get("durability"));
        let months = tested.and_then(|text| text.split(|c: char| !c.is_ascii_digit()).find_map(|it| it.parse().ok()));
        let keeping = self.keeping_of(formula);
        Some(work_out_dates(made, &materials, months.filter(|months| (1..=120).contains(months)), keeping))
    }

    fn dates_of(&mut self, batch: &Batch, state: &RunState) -> Vec<FigureView> {
        let Some(dates) = self.work_out_dates_of(&batch.plan.formula, &batch.materials, Some(state)) else {
            return Vec::new();
        };
        let used = |id: MaterialId| {
            batch.materials.iter().find(|used| used.material == id).map(|used| used.name.clone()).unwrap_or_default()
        };
        let mut why = vec![match &dates.limit {
            Limit::Material(id, day) => says::limit_material(&used(*id), &sentences::day(*day)),
            Limit::Stated(months) => sentences::limit_stated(*months),
            Limit::Keeping(keeping) => sentences::limit_keeping(*keeping).to_owned(),
            Limit::Unknown => says::limit_unknown().to_owned(),
        }];
        if !dates.unknown.is_empty() && dates.best_before.is_some() {
            let names: Vec<String> = dates.unknown.iter().map(|id| used(*id)).collect();
            why.push(says::days_unknown(&list(&names)));
        }
        let figure = |label: &str, value: String, how: String, source: &str| FigureView {
            label: label.to_owned(),
            value,
            range: String::new(),
            how,
            source: source.to_owned(),
        };
        let (opening, opening_how) = match dates.after_opening {
            Some((fewest, most)) => (sentences::months_after_opening(fewest, most), says::opening_how()),
            None => (says::opening_none().to_owned(), says::opening_none_how()),
        };
        vec![
            figure(
                says::best_before(),
                dates.best_before.map_or_else(|| says::day_unknown().to_owned(), sentences::day),
                why.join(" "),
                says::common_practice(),
            ),
            figure(says::after_opening(), opening, opening_how.to_owned(), says::common_practice()),
            figure(
                says::on_label(),
                sentences::date_on_label(dates.date_required, dates.months).to_owned(),
                sentences::thirty_months(dates.months),
                says::thirty_months_source(),
            ),
        ]
    }
}

fn pair(label: &str, value: String) -> PairView {
    PairView { label: label.to_owned(), value }
}
