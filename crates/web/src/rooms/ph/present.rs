//! The pH of the open formula as the page shows it.

use crate::messages::ph as says;
use crate::rooms::batches::view::RemarkView;
use crate::rooms::extracts::view::FigureView;
use crate::rooms::findings::sentences as sentences_findings;
use crate::rooms::ph::edit::PhDesk;
use crate::rooms::ph::sentences;
use crate::rooms::ph::view::{DriftView, PhView};
use crate::rooms::update::Update;
use crate::session::Session;
use stillroom_core::checks::acidity::drift::{Cause, Changed, drift};
use stillroom_core::checks::acidity::free_acid::{Figure, FreeAcid, free_acids};
use stillroom_core::checks::{Contents, Finding, PhBand, PhKnown, Value, can_check, check};
use stillroom_core::chemistry::ph::PhError;
use stillroom_core::chemistry::ph::predict::{Caveat, Prediction, predict};
use stillroom_core::composition::Makeups;
use stillroom_core::number::{with_unit, write_between};

/// What decides is named down to this move.
const MOVES: f64 = 0.05;
/// Most constituents named that decide.
const MOST_DECIDERS: usize = 8;
/// Acid in percent that is given off: what the issue of esters and oils is reckoned with. Common practice.
const GIVEN_OFF: f64 = 0.1;

impl Session {
    /// The pH, where it is looked at and changed.
    pub(crate) fn present_ph(&mut self, update: &mut Update) {
        let desk = self.ph_desk();
        if !desk.looking {
            return;
        }
        let view = self.show_ph(&desk);
        update.ph = self.shown.changed(view);
    }

    /// What the open formula comes to, predicted so many times; 0 where it comes to nothing.
    pub(crate) fn predict_ph(&mut self, times: u32) -> f64 {
        let Some((record, evaluation)) = self.evaluate_open() else { return 0.0 };
        let contents = self.contents_of(&record.formula, &evaluation);
        let dissolved = contents.dissolved();
        let mut ph = 0.0;
        for _ in 0..times {
            ph = predict(&dissolved).map_or(0.0, |prediction| prediction.ph.estimate);
        }
        ph
    }

    fn show_ph(&mut self, desk: &PhDesk) -> PhView {
        let Some((record, evaluation)) = self.evaluate_open() else {
            return PhView { problem: says::none_open().to_owned(), ..PhView::default() };
        };
        let stated = |ph: Option<stillroom_core::Ph>| {
            ph.map_or_else(String::new, |ph| write_between(ph.value(), 1, 2, self.mark()))
        };
        let formula = &record.formula;
        let head =
            PhView { target: stated(formula.target_ph), measured: stated(formula.measured_ph), ..PhView::default() };
        if !can_check(&evaluation) {
            return PhView { problem: says::unsound().to_owned(), ..head };
        }
        let mut makeups = core::mem::take(&mut self.makeups);
        let contents = self.contents_of(formula, &evaluation);
        let view = self.show_contents(&contents, &mut makeups, desk, head);
        drop(contents);
        self.makeups = makeups;
        view
    }

    fn show_contents(&self, contents: &Contents<'_>, makeups: &mut Makeups, desk: &PhDesk, head: PhView) -> PhView {
        let prediction = match contents.prediction() {
            Ok(prediction) => prediction,
            Err(error @ PhError::HardlyAnyWater) => return PhView { problem: self.ph_problem(error), ..head },
            // Where the model ends the rest may still be said.
            Err(error) => return PhView { counts: self.say_counts(contents), problem: self.ph_problem(error), ..head },
        };
        let (capacity, drifts) = self.show_drifts(contents);
        let (plots, species) = self.show_plots(contents, makeups, desk);
        PhView {
            predicted: Some(self.show_prediction(prediction)),
            counts: self.say_counts(contents),
            deciders: self.show_deciders(contents),
            unknown: self.show_unknown(contents),
            rests: prediction.caveats.iter().map(|caveat| self.say_caveat(*caveat)).collect(),
            offers: self.present_ph_offers(contents, makeups, desk),
            free_acids: free_acids(contents).iter().map(|acid| self.show_free_acid(acid)).collect(),
            capacity,
            drifts,
            plots,
            species,
            ..head
        }
    }

    fn ph_problem(&self, error: PhError) -> String {
        sentences::ph_error(&error, &|ph| self.ph(ph))
    }

    fn show_prediction(&self, prediction: &Prediction) -> FigureView {
        let band = &prediction.ph;
        FigureView {
            label: says::predicted().to_owned(),
            value: self.ph(band.estimate),
            range: says::predicted_range(&self.ph(band.low), &self.ph(band.high)),
            how: says::predicted_how(&self.significant(prediction.equilibrium.ionic_strength, 2)),
            source: says::predicted_source().to_owned(),
        }
    }

    fn say_counts(&self, contents: &Contents<'_>) -> String {
        match contents.ph() {
            None => says::counts_nothing().to_owned(),
            Some(PhBand { value, known, .. }) => {
                let ph = self.ph(value);
                match known {
                    PhKnown::Measured => says::counts_measured(&ph),
                    PhKnown::AimedAt => says::counts_aimed(&ph),
                    PhKnown::Predicted => says::counts_predicted(&ph),
                }
            }
        }
    }

    fn show_deciders(&self, contents: &Contents<'_>) -> Vec<FigureView> {
        let deciders = contents.deciders().unwrap_or_default();
        let heard = deciders.into_iter().filter(|each| each.moves.abs() >= MOVES).take(MOST_DECIDERS);
        heard
            .map(|each| {
                let brings = contents.find(each.id).and_then(|present| present.facts.brings.as_ref());
                let source = brings.and_then(|brings| brings.citation.as_ref()).map(sentences_findings::citation);
                let moves = self.rounded(each.moves, 1);
                FigureView {
                    label: self.materials.inci(each.id).to_owned(),
                    value: if each.moves > 0.0 { format!("+{moves}") } else { moves },
                    range: String::new(),
                    how: says::decides_how().to_owned(),
                    source: source.unwrap_or_default(),
                }
            })
            .collect()
    }

    fn show_unknown(&self, contents: &Contents<'_>) -> Vec<FigureView> {
        let moves = contents.moves().unwrap_or_default();
        moves
            .into_iter()
            .filter(|each| each.highest - each.lowest >= MOVES)
            .map(|each| FigureView {
                label: crate::messages::sentences::inci_or_unnamed(self.materials.inci(each.id)).to_owned(),
                value: says::predicted_range(&self.ph(each.lowest), &self.ph(each.highest)),
                range: String::new(),
                how: says::unknown_how().to_owned(),
                source: String::new(),
            })
            .collect()
    }

    fn say_caveat(&self, caveat: Caveat) -> String {
        match caveat {
            Caveat::Cosolvent(share) => says::rests_cosolvent(&self.about_percent(share * 100.0)),
            Caveat::HardlyBuffered(_) => says::rests_hardly_buffered().to_owned(),
            Caveat::TooStrong(about) => says::rests_too_strong(&self.significant(about, 2)),
            Caveat::Calibrated => says::rests_calibrated().to_owned(),
        }
    }

    fn about_percent(&self, percent: f64) -> String {
        with_unit(&self.significant(percent, 2), "%")
    }

    // ---- free acid --------------------------------------------------------------------------------------------------

    fn show_free_acid(&self, acid: &FreeAcid<'_>) -> FigureView {
        let mut how = vec![says::free_how(&self.ph(acid.ph.value))];
        how.extend(acid.figures.iter().map(|figure| self.say_figure(figure)));
        let source = acid.us_drug.as_ref().map(|figure| {
            how.push(says::free_us(&self.about_percent(figure.value.low), &self.about_percent(figure.value.high)));
            sentences_findings::citation(&figure.citation)
        });
        let mut sources: Vec<String> =
            acid.figures.iter().map(|figure| sentences_findings::citation(&figure.limit.citation)).collect();
        sources.extend(source);
        sources.push(sentences_findings::citation(&acid.citation));
        sources.dedup();
        FigureView {
            label: self.materials.inci(acid.acid).to_owned(),
            value: says::free_value(&self.about_percent(acid.free), &self.about_percent(acid.total)),
            range: says::predicted_range(&self.about_percent(acid.least), &self.about_percent(acid.most)),
            how: how.join(" "),
            source: sources.join("; "),
        }
    }

    fn say_figure(&self, figure: &Figure<'_>) -> String {
        let (bound, counted) = (self.about_percent(figure.bound), self.about_percent(figure.counted));
        match figure.free_at_bound.zip(figure.limit.least_ph) {
            Some((free, ph)) => says::free_figure_ph(
                figure.limit.jurisdiction,
                &bound,
                &self.ph(ph),
                &self.about_percent(free),
                &counted,
            ),
            None => says::free_figure(figure.limit.jurisdiction, &bound, &counted),
        }
    }

    // ---- drift ------------------------------------------------------------------------------------------------------

    fn show_drifts(&self, contents: &Contents<'_>) -> (Option<FigureView>, Vec<DriftView>) {
        let urea = contents.present.iter().find(|each| self.materials.inci(each.id) == "Urea").map(|each| each.percent);
        let causes = [Some(Cause::Acid(GIVEN_OFF)), urea.map(|percent| Cause::Urea(percent / 10.0)), Some(Cause::Air)];
        let now = check(contents);
        let mut capacity = None;
        let mut drifts = Vec::new();
        for cause in causes.into_iter().flatten() {
            let label = match cause {
                Cause::Acid(_) => says::drift_acid(),
                Cause::Urea(_) => says::drift_urea(),
                Cause::Air => says::drift_air(),
            };
            let found = match drift(contents, cause) {
                None => break,
                Some(Err(error)) => {
                    drifts.push(DriftView {
                        label: label.to_owned(),
                        value: self.ph_problem(error),
                        changes: Vec::new(),
                    });
                    continue;
                }
                Some(Ok(found)) => found,
            };
            capacity.get_or_insert(found.capacity);
            let then = check(&contents.at_ph(found.after));
            let mut changes = self.say_changed(contents, &found.appear, &then, says::drift_appears);
            changes.extend(self.say_changed(contents, &found.go, &now, says::drift_goes));
            if changes.is_empty() {
                changes.push(RemarkView { tone: "note", text: says::drift_same().to_owned() });
            }
            let value = says::drift_from_to(&self.ph(found.before.value), &self.ph(found.after.value));
            drifts.push(DriftView { label: label.to_owned(), value, changes });
        }
        let capacity = capacity.map(|capacity| FigureView {
            label: says::capacity().to_owned(),
            value: with_unit(&self.significant(capacity, 2), "mol/kg"),
            range: String::new(),
            how: says::capacity_how().to_owned(),
            source: says::predicted_source().to_owned(),
        });
        (capacity, drifts)
    }

    fn say_changed(
        &self,
        contents: &Contents<'_>,
        changed: &[Changed],
        among: &[Finding],
        say: fn(&str) -> String,
    ) -> Vec<RemarkView> {
        let write = |value: &Value| self.write_value(contents.formula, value);
        let is_it = |each: &Changed, finding: &Finding| {
            finding.code == each.code && finding.subject == each.subject && finding.severity == each.severity
        };
        changed
            .iter()
            .filter_map(|each| among.iter().find(|finding| is_it(each, finding)))
            .map(|finding| RemarkView {
                tone: finding.severity.slug(),
                text: say(&sentences_findings::say(finding.code, &finding.values, &write)),
            })
            .collect()
    }
}
