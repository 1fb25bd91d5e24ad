//! Findings of the open formula: checking, opening, curing, setting aside.

use crate::contract::Answer;
use crate::messages::findings as says;
use crate::messages::sentences;
use crate::rooms::findings::command::FindingsCommand;
use crate::rooms::findings::sentences::{self as sentences_findings, Words};
use crate::rooms::findings::view::{
    ChartView, FindingDetail, FindingSource, FindingView, FindingsView, MarkView, SetAsideView, SuspendedView, TickView,
};
use crate::rooms::formula::edit::about;
use crate::rooms::ph::edit::PhDesk;
use crate::rooms::update::Update;
use crate::session::Session;
use rust_decimal::Decimal;
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};
use std::rc::Rc;
use stillroom_catalogue::knowledge;
use stillroom_core::checks::{
    Axis, Chart, Conditions, Contents, Cure, Finding, Mark, Severity, Step, Value, Values, can_check, check,
    gather_not_checked, keep_cures_that_cure,
};
use stillroom_core::evaluation::Evaluation;
use stillroom_core::number::{DecimalMark, read_temperature, with_unit, write_between};
use stillroom_core::unit::TemperatureUnit;
use stillroom_core::{Celsius, Formula, Grams, ProductKind, SetAside};

impl Session {
    /// Lets the checks follow when the page is at rest ([`Session::rest`]), so that what was typed is drawn first.
    pub fn check_at_rest(&mut self) {
        self.checking.at_rest = true;
    }

    /// Does what waited for the page to be at rest, and says what changed by it.
    pub fn rest(&mut self) -> Update {
        let mut update = Update::default();
        if self.checking.behind
            && let Some((record, evaluation)) = self.evaluate_open()
        {
            self.present_findings(&record.formula, &evaluation, &mut update);
        }
        if std::mem::take(&mut self.waiting.of::<PhDesk>().behind) {
            self.present_ph(&mut update);
        }
        update
    }

    /// Works the pH out now or, where the checks follow at rest, then.
    pub(crate) fn present_ph_in_time(&mut self, update: &mut Update) {
        if self.checking.at_rest {
            self.waiting.of::<PhDesk>().behind = true;
        } else {
            self.present_ph(update);
        }
    }

    /// Checks the open formula now or, where the checks follow, at rest.
    pub(crate) fn check_in_time(&mut self, formula: &Formula, evaluation: &Evaluation, update: &mut Update) {
        if self.checking.at_rest && !std::mem::take(&mut self.checking.prompt) {
            self.checking.behind = true;
        } else {
            self.present_findings(formula, evaluation, update);
        }
    }

    /// Checks the open formula and hands out what changed.
    fn present_findings(&mut self, formula: &Formula, evaluation: &Evaluation, update: &mut Update) {
        self.check(formula, evaluation);
        let view = self.show_findings(formula, !can_check(evaluation));
        update.findings = self.shown.changed(view);
    }

    /// Nothing is found where no formula is open, and nothing is said to be in order.
    pub(crate) fn forget_findings(&mut self, update: &mut Update) {
        self.checking.found.clear();
        self.checking.behind = false;
        let cold_storage = self.write_cold_storage();
        update.findings = self.shown.changed(FindingsView { cold_storage, ..FindingsView::default() });
    }

    fn write_cold_storage(&self) -> String {
        self.temperature_number(self.settings.cold_storage.value())
    }

    /// How a product is kept, as the settings say.
    pub(crate) fn conditions(&self) -> Conditions {
        Conditions::with_cold(self.settings.cold_storage)
    }

    /// A formula as the checks read it.
    pub(crate) fn contents_of<'a>(&'a self, formula: &'a Formula, evaluation: &'a Evaluation) -> Contents<'a> {
        Contents::new(formula, evaluation, &self.materials, knowledge(), self.conditions())
    }

    fn check(&mut self, formula: &Formula, evaluation: &Evaluation) {
        let conditions = self.conditions();
        let mut contents = Contents::new(formula, evaluation, &self.materials, knowledge(), conditions);
        // A picture is only made while somebody may look at it.
        contents.charts = !self.checking.opened.is_empty();
        let mut findings = check(&contents);
        keep_cures_that_cure(&mut findings, &contents, &self.bench, &mut self.makeups);
        self.checking.found = gather_not_checked(findings, formula);
        self.checking.behind = false;
    }

    /// How much the checks find in the open formula, with every far-reaching cure tried out or not.
    pub(crate) fn count_findings(&mut self, try_cures: bool) -> usize {
        let Some((record, evaluation)) = self.evaluate_open() else { return 0 };
        let conditions = self.conditions();
        let contents = Contents::new(&record.formula, &evaluation, &self.materials, knowledge(), conditions);
        let mut findings = check(&contents);
        if try_cures {
            keep_cures_that_cure(&mut findings, &contents, &self.bench, &mut self.makeups);
        }
        findings.len()
    }

    fn show_findings(&self, formula: &Formula, waiting: bool) -> FindingsView {
        let aside = |finding: &Finding| formula.set_aside.iter().any(|each| is_about(each, finding));
        let standing: Vec<&Finding> = self.checking.found.iter().filter(|finding| !aside(finding)).collect();
        let count = |severity| standing.iter().filter(|finding| finding.severity == severity).count();
        let counts = [count(Severity::Stop), count(Severity::Caution), count(Severity::Note)];
        // What was found of amounts that no longer stand can be read, and nothing can be cured by it.
        let item = |finding: &&Finding| {
            let mut view = self.show_finding(formula, finding);
            if waiting {
                view.cures.clear();
            }
            Rc::new(view)
        };
        FindingsView {
            waiting,
            summary: sentences_findings::summary(counts, waiting),
            worst: standing.first().filter(|_| !waiting).map_or("", |finding| finding.severity.slug()).to_owned(),
            items: standing.iter().map(item).collect(),
            set_aside: formula.set_aside.iter().map(|each| self.show_set_aside(formula, each)).collect(),
            suspended: formula
                .lines()
                .filter(|line| line.suspended)
                .map(|line| SuspendedView { line: line.id.0, name: self.materials.name(line.material) })
                .collect(),
            kind: formula.kind.map_or_else(String::new, |kind| kind.slug().to_owned()),
            measured_ph: formula
                .measured_ph
                .map_or_else(String::new, |ph| write_between(ph.value(), 1, 2, self.mark())),
            cold_storage: self.write_cold_storage(),
        }
    }

    fn show_finding(&self, formula: &Formula, finding: &Finding) -> FindingView {
        let key = key_of(finding);
        let write = |value: &Value| self.write_value(formula, value);
        let say = |template: &str, values: &Values| sentences_findings::say(template, values, &write);
        let cure = |cure: &Cure| say(cure.code, &cure.values);
        let open = self.checking.opened.contains(&key).then(|| FindingDetail {
            meaning: sentences_findings::meaning(finding.code).to_owned(),
            working: finding.working.iter().map(|Step { template, values }| say(template, values)).collect(),
            sources: finding
                .citations
                .iter()
                .map(|citation| FindingSource {
                    text: sentences_findings::citation(citation),
                    basis: sentences_findings::basis(citation.basis).to_owned(),
                })
                .collect(),
            chart: finding.chart.as_ref().map(|chart| self.show_chart(formula, chart)),
        });
        FindingView {
            severity: finding.severity.slug(),
            text: say(finding.code, &finding.values),
            family: sentences_findings::family(finding.code).to_owned(),
            lines: finding.lines.iter().map(|line| line.0).collect(),
            cures: finding.cures.iter().map(cure).collect(),
            open,
            key,
        }
    }

    fn show_set_aside(&self, formula: &Formula, each: &SetAside) -> SetAsideView {
        let finding = self.checking.found.iter().find(|finding| is_about(each, finding));
        let write = |value: &Value| self.write_value(formula, value);
        let text = finding.map(|finding| sentences_findings::say(finding.code, &finding.values, &write));
        SetAsideView {
            key: format!("{}/{}", each.code, each.subject),
            text: text.unwrap_or_default(),
            reason: each.reason.clone(),
        }
    }

    /// A value as the reader reads it, with its unit.
    pub(crate) fn write_value(&self, formula: &Formula, value: &Value) -> Words {
        let mark = self.mark();
        let significant = |number: f64, figures: u32| write_significant(number, figures, mark);
        let one = |text: String| Words::One(text);
        let inci = |id| sentences::inci_or_unnamed(self.materials.inci(id)).to_owned();
        match value {
            Value::Percent(percent) => one(with_unit(&significant(*percent, 3), "%")),
            Value::Exact(percent) => one(with_unit(&write_between(percent.value(), 0, 6, mark), "%")),
            Value::Celsius(celsius) => {
                let unit = self.settings.temperature_unit;
                one(with_unit(&significant(unit.of_celsius(*celsius), 3), unit.symbol()))
            }
            Value::Ph(number) => one(write_rounded(*number, 2, mark)),
            Value::Number(number) => one(significant(*number, 3)),
            Value::Times(times) => one(significant(*times, 2)),
            Value::GramsPerHundred(grams) => one(with_unit(&significant(*grams, 3), "g")),
            Value::Grams(grams) => {
                let unit = self.settings.mass_unit;
                let mass = Decimal::from_f64(*grams).and_then(|grams| Grams::new(grams.round_dp(9)).ok());
                let number = mass.and_then(|mass| unit.from_grams(mass).to_f64()).unwrap_or_default();
                one(with_unit(&significant(number, 3), unit.symbol()))
            }
            Value::Substance(id) => one(inci(*id)),
            Value::Substances(ids) => Words::Several(ids.iter().map(|id| inci(*id)).collect()),
            Value::Rough(percent) => one(with_unit(&significant(*percent, 2), "%")),
            Value::Material(material) => one(self.materials.name(*material)),
            Value::Amounts(amounts) => Words::Several(
                amounts
                    .iter()
                    .map(|(material, to)| {
                        let to = with_unit(&write_between(to.value(), 0, 6, mark), "%");
                        says::amount(&self.materials.name(*material), &to)
                    })
                    .collect(),
            ),
            Value::Phase(phase) => {
                one(formula.phases.iter().find(|each| each.id == *phase).map_or_else(String::new, |it| it.name.clone()))
            }
            Value::Name(name) => one((*name).to_owned()),
            Value::Names(names) => Words::Several(names.iter().map(|name| (*name).to_owned()).collect()),
            Value::Word(word) => one(sentences_findings::word(word).to_owned()),
            Value::Words(words) => {
                Words::Several(words.iter().map(|word| sentences_findings::word(word).to_owned()).collect())
            }
        }
    }

    fn show_chart(&self, formula: &Formula, chart: &Chart) -> ChartView {
        let mark = self.mark();
        let unit = self.settings.temperature_unit;
        let (x_axis, x_from, x_to) = chart.x;
        let across = |x: f64| share_of(x, x_from, x_to);
        let up = |y: f64| chart.y.map_or(0.5, |(_, from, to)| share_of(y, from, to));
        let ticks = |axis: Axis, from: f64, to: f64| -> Vec<TickView> {
            let step = tick_step(from, to);
            let first = (from / step).ceil();
            (0..=8_u8)
                .map(|number| (first + f64::from(number)) * step)
                .take_while(|at| *at <= to + step * 1e-6)
                .map(|at| TickView { at: share_of(at, from, to), text: write_tick(axis, at, step, unit, mark) })
                .collect()
        };
        let text_of = |each: &Mark| {
            let write = |value: &Value| self.write_value(formula, value);
            sentences_findings::say(each.label, &vec![("value", each.value.clone())], &write)
        };
        let marks: Vec<MarkView> = chart
            .marks
            .iter()
            .map(|each| MarkView { x: across(each.x), y: each.y.map(up), text: text_of(each) })
            .collect();
        ChartView {
            description: sentences_findings::chart(x_axis, chart.y.map(|(axis, ..)| axis), &marks),
            across: sentences_findings::axis(x_axis).to_owned(),
            up: chart.y.map_or("", |(axis, ..)| sentences_findings::axis(axis)).to_owned(),
            across_ticks: ticks(x_axis, x_from, x_to),
            up_ticks: chart.y.map_or_else(Vec::new, |(axis, from, to)| ticks(axis, from, to)),
            curve: chart.curve.iter().map(|(x, y)| (across(*x), up(*y))).collect(),
            band: chart.band.map(|(from, to)| (across(from), across(to))),
            marks,
        }
    }

    // ---- acting -----------------------------------------------------------------------------------------------

    pub(crate) fn act_on_findings(&mut self, command: FindingsCommand) -> Answer {
        // What is acted on is what stands now, and its answer is waited for.
        if self.checking.behind
            && let Some((record, evaluation)) = self.evaluate_open()
        {
            self.check(&record.formula, &evaluation);
        }
        self.checking.prompt = true;
        match command {
            FindingsCommand::OpenFinding { key, open } => {
                self.checking.opened.retain(|each| *each != key);
                if open {
                    self.checking.opened.push(key);
                }
            }
            FindingsCommand::CureFinding { key, cure, text } => self.cure_finding(&key, cure, &text),
            FindingsCommand::SetAsideFinding { key, text } => return self.set_aside(&key, &text),
            FindingsCommand::TakeFindingBack { key } => {
                self.change_formula("finding.take-back", None, |formula| {
                    formula.set_aside.retain(|each| format!("{}/{}", each.code, each.subject) != key);
                });
            }
            FindingsCommand::SetSuspended { line, suspended } => self.change_formula("line.suspend", None, |formula| {
                if let Some(line) = formula.line_mut(line) {
                    line.suspended = suspended;
                }
            }),
            FindingsCommand::SetKind { text } => {
                let kind = ProductKind::from_slug(&text);
                self.change_formula("formula.kind", None, |formula| formula.set_kind(kind));
            }
            FindingsCommand::SetMeasuredPh { text } => {
                return self.set_ph("formula.measured-ph", &text, |formula| &mut formula.measured_ph);
            }
            FindingsCommand::SetColdStorage { text } => return self.set_cold_storage(&text),
        }
        Answer::default()
    }

    /// Applies a cure as it was shown; one whose numbers changed meanwhile is not applied unseen.
    fn cure_finding(&mut self, key: &str, cure: usize, shown: &str) {
        let Some(record) = self.open.and_then(|id| self.shelf.get(&id)).map(Rc::clone) else { return };
        let finding = self.checking.found.iter().find(|finding| key_of(finding) == key);
        let Some(cure) = finding.and_then(|finding| finding.cures.get(cure)).cloned() else { return };
        let write = |value: &Value| self.write_value(&record.formula, value);
        if sentences_findings::say(cure.code, &cure.values, &write) != shown {
            return;
        }
        self.change_formula("finding.cure", None, |formula| {
            formula.make_changes(&cure.changes, |kind| sentences::phase_name(kind).to_owned());
        });
        self.notice("finding.cured", says::cured(shown), true);
    }

    fn set_aside(&mut self, key: &str, text: &str) -> Answer {
        let field = format!("finding.reason:{key}");
        let reason = text.trim().to_owned();
        if reason.is_empty() {
            return Answer {
                field: Some(field),
                error: Some(says::reason_wanted().to_owned()),
                code: Some("finding.no-reason"),
                made: None,
            };
        }
        let Some(finding) = self.checking.found.iter().find(|finding| key_of(finding) == key) else {
            return Answer::default();
        };
        let aside = SetAside { code: finding.code.to_owned(), subject: finding.subject.clone(), reason };
        self.change_formula("finding.set-aside", None, |formula| {
            formula.set_aside.retain(|each| (&each.code, &each.subject) != (&aside.code, &aside.subject));
            formula.set_aside.push(aside);
        });
        Answer { field: Some(field), ..Answer::default() }
    }

    fn set_cold_storage(&mut self, text: &str) -> Answer {
        let field = "findings.cold";
        let mark = self.mark();
        let range = (Decimal::from(COLDEST), Decimal::from(WARMEST_COLD));
        let read = read_temperature(text, mark, self.settings.temperature_unit, range);
        let result = read.map(|celsius| {
            let mut after = (*self.settings).clone();
            after.cold_storage = Celsius::new(celsius).unwrap_or(after.cold_storage);
            self.commit_settings(after, field);
        });
        about(field, result, mark)
    }
}

/// Coldest and warmest temperature of cold storage, in degrees Celsius.
const COLDEST: i32 = -20;
const WARMEST_COLD: i32 = 25;

pub(crate) fn is_about(aside: &SetAside, finding: &Finding) -> bool {
    aside.code == finding.code && aside.subject == finding.subject
}

/// Names a finding on the page.
fn key_of(finding: &Finding) -> String {
    format!("{}/{}", finding.code, finding.subject)
}

pub(crate) fn share_of(value: f64, from: f64, to: f64) -> f64 {
    if to > from { ((value - from) / (to - from)).clamp(0.0, 1.0) } else { 0.5 }
}

/// A round step that makes four to eight marks.
pub(crate) fn tick_step(from: f64, to: f64) -> f64 {
    let rough = (to - from).max(f64::MIN_POSITIVE) / 5.0;
    let power = 10_f64.powf(rough.log10().floor());
    match rough / power {
        ratio if ratio < 1.5 => power,
        ratio if ratio < 3.5 => 2.0 * power,
        ratio if ratio < 7.5 => 5.0 * power,
        _ => 10.0 * power,
    }
}

fn write_tick(axis: Axis, at: f64, step: f64, unit: TemperatureUnit, mark: DecimalMark) -> String {
    let decimals = if step >= 1.0 { 0 } else { 2 };
    let at = if axis == Axis::Temperature { unit.of_celsius(at) } else { at };
    let number = write_rounded(at, decimals, mark);
    match axis {
        Axis::Temperature => with_unit(&number, unit.symbol()),
        Axis::Percent | Axis::Undissociated => with_unit(&number, "%"),
        Axis::Ph | Axis::Hlb => number,
    }
}

pub(crate) fn write_rounded(number: f64, decimals: u32, mark: DecimalMark) -> String {
    Decimal::from_f64(number)
        .map_or_else(|| "?".to_owned(), |it| write_between(it.round_dp(decimals), 0, decimals, mark))
}

/// A number with so many significant figures, never fewer before the mark.
pub(crate) fn write_significant(number: f64, figures: u32, mark: DecimalMark) -> String {
    let size = if number == 0.0 { 0.0 } else { number.abs().log10().floor() };
    let decimals = (f64::from(figures) - 1.0 - size).clamp(0.0, 8.0);
    // A whole number from 0 to 8.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let decimals = decimals as u32;
    write_rounded(number, decimals, mark)
}
