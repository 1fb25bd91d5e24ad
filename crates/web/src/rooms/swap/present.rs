//! Making the open formula with what one has, as the page shows it.

use crate::messages::sentences::with_unit;
use crate::messages::swap as says;
use crate::rooms::extracts::view::ChoiceView;
use crate::rooms::findings::sentences as sentences_findings;
use crate::rooms::ph::view::PhFieldView;
use crate::rooms::swap::edit::{SwapDesk, Use};
use crate::rooms::swap::figure::Aimed;
use crate::rooms::swap::sentences;
use crate::rooms::swap::shelf::FURTHER;
use crate::rooms::swap::view::{SwapLineView, SwapView, SwapWayView};
use crate::rooms::swap::ways::{Way, WorkedWay};
use crate::rooms::update::Update;
use crate::session::Session;
use std::rc::Rc;
use stillroom_core::checks::{Severity, can_check};
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::Evaluation;
use stillroom_core::number::write_between;
use stillroom_core::rebuild::NoAnswer;
use stillroom_core::{ConstituentId, Formula, LineId, MaterialId};
use stillroom_exchange::record::FormulaRecord;

impl Session {
    /// What is asked and what comes of it, where it is looked at and changed.
    pub(crate) fn present_swap(&mut self, update: &mut Update) {
        let desk = self.swap_desk();
        if !desk.looking {
            return;
        }
        let view = self.show_swap(&desk);
        update.swap = self.shown.changed(view);
    }

    fn show_swap(&mut self, desk: &SwapDesk) -> SwapView {
        let wanted = desk.wanted.word();
        let Some((record, evaluation)) = self.evaluate_open() else {
            return SwapView { problem: says::none_open().to_owned(), wanted, ..SwapView::default() };
        };
        if !can_check(&evaluation) || !evaluation.composition.unresolved.is_empty() {
            return SwapView { problem: says::no_unbalanced().to_owned(), wanted, ..SwapView::default() };
        }
        let worked = self.work_out_swap(desk, &record, &evaluation);
        let formula = &record.formula;
        let lines = self.show_swap_lines(formula, &evaluation, desk);
        let (ways, line) = match desk.line.filter(|line| desk.wanted == Use::Line && formula.line(*line).is_some()) {
            Some(line) => (self.show_ways(&record, &evaluation, line, desk), Some(line)),
            None => (Vec::new(), None),
        };
        let mut makeups = core::mem::take(&mut self.makeups);
        let version = worked.answer.as_ref().and_then(|answer| answer.as_ref().ok()).map(|version| {
            self.show_version(formula, version, &worked.feel, desk.wanted == Use::Cheapest, &mut makeups)
        });
        self.makeups = makeups;
        let refused = worked.answer.and_then(Result::err).map(|error| self.say_no_answer(&error)).unwrap_or_default();
        let of_line = line.and_then(|line| formula.line(line));
        SwapView {
            problem: String::new(),
            wanted,
            lines,
            line: line.map(|line| line.0),
            name: of_line.map(|line| self.materials.name(line.material)).unwrap_or_default(),
            note: of_line.map(|line| line.substitution.clone()).unwrap_or_default(),
            ways,
            fields: self.swap_fields(formula, &evaluation, desk),
            said: worked.said,
            refused,
            version,
        }
    }

    pub(super) fn say_no_answer(&self, error: &NoAnswer) -> Vec<String> {
        let inci = |id: ConstituentId| self.inci_of(id);
        let named = |id: MaterialId| self.materials.name(id);
        sentences::no_answer(error, &inci, &named, self.mark())
    }

    fn show_swap_lines(&self, formula: &Formula, evaluation: &Evaluation, desk: &SwapDesk) -> Vec<SwapLineView> {
        let found = match desk.wanted {
            Use::Shelf | Use::Expiring | Use::Cheapest => self.on_shelf(formula, evaluation, desk),
            Use::Line | Use::Figure => Vec::new(),
        };
        let varying = match desk.wanted {
            Use::Figure => self.varying(formula, evaluation, desk),
            Use::Line | Use::Shelf | Use::Expiring | Use::Cheapest => Vec::new(),
        };
        let lines = formula.lines().zip(&evaluation.balance.shares).map(|(line, share)| {
            let on_shelf = found.iter().find(|it| it.line == line.id);
            let marked = match desk.wanted {
                Use::Line => desk.line == Some(line.id),
                Use::Figure => varying.contains(&line.id),
                Use::Shelf | Use::Expiring | Use::Cheapest => on_shelf.is_some_and(|it| it.lacking),
            };
            SwapLineView {
                line: line.id.0,
                name: self.materials.name(line.material),
                percent: with_unit(&write_between(share.percent.value().round_dp(4), 2, 4, self.mark()), "%"),
                marked,
                remark: on_shelf.map(|it| it.remark.clone()).unwrap_or_default(),
            }
        });
        lines.collect()
    }

    fn show_ways(
        &mut self,
        record: &Rc<FormulaRecord>,
        evaluation: &Evaluation,
        line: LineId,
        desk: &SwapDesk,
    ) -> Vec<SwapWayView> {
        let ways = self.ways_now(record, evaluation, line);
        let mut makeups = core::mem::take(&mut self.makeups);
        let views = ways
            .iter()
            .map(|worked| SwapWayView {
                chosen: desk.way.as_deref() == Some(&worked.way.key()),
                ..self.show_way(&record.formula, worked, &mut makeups)
            })
            .collect();
        self.makeups = makeups;
        views
    }

    /// A way as the page shows it.
    pub(super) fn show_way(&self, formula: &Formula, worked: &WorkedWay, makeups: &mut Makeups) -> SwapWayView {
        let mark = self.mark();
        let inci = |id: ConstituentId| self.inci_of(id);
        let way = &worked.way;
        let degrees = self.settings.temperature_unit;
        let kind = match way {
            Way::Apart | Way::Together { .. } => "parts",
            Way::Material(_) if way.is_same() => "same",
            Way::Material(_) => "other",
        };
        let (mut reasons, mut differences, mut sources) = (Vec::new(), Vec::new(), Vec::new());
        let name = match way {
            Way::Apart => {
                reasons.push(says::reason_apart().to_owned());
                says::way_apart().to_owned()
            }
            Way::Together { lines, material } => {
                let names: Vec<String> = lines.iter().map(|line| self.name_of_line(formula, *line)).collect();
                reasons.push(says::reason_together(&crate::messages::sentences::list(&names)));
                self.materials.name(*material)
            }
            Way::Material(substitute) => {
                reasons.extend(substitute.reasons.iter().map(|it| sentences::reason(it, &inci, degrees, mark)));
                differences.extend(substitute.differences.iter().map(|it| sentences::difference(it, &inci, mark)));
                sources.extend(substitute.citations.iter().map(|citation| {
                    let basis = sentences_findings::basis(citation.basis);
                    says::source(&sentences_findings::citation(citation), basis)
                }));
                self.materials.name(substitute.material)
            }
        };
        sources.dedup();
        let serious = |findings: &[stillroom_core::checks::Finding]| {
            let heard = findings.iter().filter(|it| it.severity != Severity::Note);
            heard.cloned().collect::<Vec<_>>()
        };
        let mut findings = Vec::new();
        let (takes, problem) = match &worked.answer {
            Ok(version) => {
                for mut remark in self.remarks_of(&version.formula, &serious(&worked.new)) {
                    remark.text = says::finds_also(&remark.text);
                    findings.push(remark);
                }
                for mut remark in self.remarks_of(formula, &serious(&worked.gone)) {
                    (remark.tone, remark.text) = ("note", says::finds_no_more(&remark.text));
                    findings.push(remark);
                }
                (self.changes_of(formula, version, makeups), String::new())
            }
            Err(error) => (String::new(), self.say_no_answer(error).join(" ")),
        };
        SwapWayView {
            key: way.key(),
            kind,
            name,
            takes,
            at_hand: way.material().is_some_and(|id| self.is_at_hand(id)),
            chosen: false,
            reasons,
            differences,
            findings,
            sources,
            problem,
        }
    }

    fn swap_fields(&self, formula: &Formula, evaluation: &Evaluation, desk: &SwapDesk) -> Vec<PhFieldView> {
        let choice = |key: &str, label: &str| ChoiceView { key: key.to_owned(), label: label.to_owned() };
        let field = |name: &str, label: &str, text: &str, choices: Vec<ChoiceView>| PhFieldView {
            field: name.to_owned(),
            label: label.to_owned(),
            unit: String::new(),
            text: text.to_owned(),
            choices,
        };
        let count = || {
            let choices = vec![choice("marked", says::count_marked()), choice("stores", says::count_stores())];
            field("swap.count", says::field_count(), desk.chosen("swap.count").unwrap_or("marked"), choices)
        };
        let further = || {
            let label = |word: &str| match word {
                "hardly" => says::further_hardly(),
                "somewhat" => says::further_somewhat(),
                _ => says::further_freely(),
            };
            let choices = FURTHER.iter().map(|(word, _)| choice(word, label(word))).collect();
            field("swap.further", says::field_further(), desk.chosen("swap.further").unwrap_or("somewhat"), choices)
        };
        match desk.wanted {
            Use::Line => Vec::new(),
            Use::Shelf => vec![count()],
            Use::Expiring | Use::Cheapest => vec![count(), further()],
            Use::Figure => {
                let figure = self.figure_asked(evaluation, desk);
                let choices = self.figures_of(evaluation).into_iter().map(|each| {
                    let label = match each {
                        Aimed::Substance(id) => self.inci_of(id),
                        Aimed::Oil => says::figure_oil().to_owned(),
                        Aimed::Water => says::figure_water().to_owned(),
                        Aimed::Balance => says::figure_balance().to_owned(),
                        Aimed::Density => says::figure_density().to_owned(),
                    };
                    choice(&each.key(), &label)
                });
                let now = self.figure_now(formula, evaluation, figure);
                let label = if now.is_empty() { says::field_target().to_owned() } else { says::field_target_now(&now) };
                let target = desk.chosen("swap.target").unwrap_or_default();
                let target =
                    PhFieldView { unit: figure.unit().to_owned(), ..field("swap.target", &label, target, Vec::new()) };
                vec![field("swap.figure", says::field_figure(), &figure.key(), choices.collect()), target]
            }
        }
    }
}
