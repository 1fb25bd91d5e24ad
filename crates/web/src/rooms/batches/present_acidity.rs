//! The pH at the bench as the page shows it: the card of its step, and what the record says of it.

use crate::messages::ph as says;
use crate::rooms::batches::acidity::{READ_BY, USUAL_STRENGTH, read_by, reader, target_of};
use crate::rooms::batches::card::{next, said_field};
use crate::rooms::batches::command::BatchesCommand;
use crate::rooms::batches::view::{CardField, CardView, ChoiceAct, CurveTick, CurveView, PairView, RemarkView};
use crate::rooms::extracts::view::FigureView;
use crate::rooms::ph::offer::is_caustic;
use crate::rooms::ph::sentences as sentences_ph;
use crate::session::Session;
use rust_decimal::Decimal;
use stillroom_core::number::write_between;
use stillroom_core::run::state::RunState;
use stillroom_core::run::titration::{
    Miss, Outside, PhDeed, PhReading, ReadBy, Standing, Titrant, Titrated, Vessel, Window,
};
use stillroom_core::{Grams, Ph};
use stillroom_exchange::batch::Batch;

/// Steps between the colours of strips, in tenths of a pH.
const STRIPS: [i64; 2] = [5, 10];

impl Session {
    // ---- the card -------------------------------------------------------------------------------------------------

    pub(crate) fn card_of_ph(&mut self, batch: &Batch, state: &RunState) -> CardView {
        let standing = state.ph_log.standing();
        let mut about: Vec<String> = target_of(state)
            .map(|ph| crate::messages::batches::card_ph_wanted(&self.exact_ph(ph)))
            .into_iter()
            .collect();
        let mut warnings = Vec::new();
        let asks = state.ph_log.asks_for_an_answer();
        match &standing {
            Standing::Unread if !state.ph_log.corrections.is_empty() => {
                let mass = self.small_mass(state.ph_log.corrected());
                warnings.push(RemarkView { tone: "caution", text: says::run_read_again(&mass) });
            }
            Standing::Unread => about.push(crate::messages::batches::card_ph_about().to_owned()),
            Standing::Within(reading) => {
                warnings.push(RemarkView { tone: "note", text: says::run_within(&self.exact_ph(reading.ph)) });
            }
            Standing::CannotTell(reading) => {
                warnings.push(RemarkView { tone: "caution", text: says::run_cannot_tell(&self.exact_ph(reading.ph)) });
            }
            Standing::Outside(reading, outside) => warnings.extend(self.say_outside(state, reading, outside)),
            Standing::Accepted(reading, outside) => {
                warnings.extend(self.say_outside(state, reading, outside));
                warnings.push(RemarkView { tone: "note", text: says::run_accepted(&self.exact_ph(reading.ph)) });
            }
        }
        about.push(says::run_reads_now(&self.how_read(read_by(state))));
        let last = state.ph_log.last_of_batch();
        let field = CardField {
            field: "run.ph:".into(),
            label: says::run_field_batch().into(),
            placeholder: last.map(|last| self.exact_ph(last.ph)).unwrap_or_default(),
            keyboard: "decimal",
            with_next: true,
            command: Some(BatchesCommand::NotePh { text: String::new() }),
            ..CardField::default()
        };
        let note = BatchesCommand::NotePh { text: String::new() };
        let mut view = CardView {
            title: crate::messages::batches::card_ph().into(),
            about,
            warnings,
            fields: vec![field],
            choices: ways_of_reading(self, state),
            next: if asks { next(says::run_note(), note) } else { next(crate::messages::batches::next_done(), note) },
            ..CardView::default()
        };
        // There is something to correct, or a sample in hand.
        if !matches!(standing, Standing::Within(_)) && last.is_some() && target_of(state).is_some() {
            self.show_titration(batch, state, &mut view);
        }
        if let Standing::Outside(reading, outside) = &standing {
            let mut about = says::run_accept_about(&self.exact_ph(reading.ph));
            if !outside.windows.is_empty() {
                about = format!("{about} {}", says::run_accept_window());
            }
            view.choices.push(ChoiceAct {
                label: says::run_accept().to_owned(),
                about,
                command: Some(BatchesCommand::AcceptPh {}),
                refused: false,
            });
        }
        view.fields.push(said_field(state, "ph-method"));
        view
    }

    fn say_outside(&self, state: &RunState, reading: &PhReading, outside: &Outside) -> Vec<RemarkView> {
        let ph = self.exact_ph(reading.ph);
        let mut said = Vec::new();
        if let (Some(miss), Some(target)) = (outside.target, state.ph_log.target) {
            let target = self.exact_ph(target);
            let text = match miss {
                Miss::TooHigh => says::run_outside_target_above(&ph, &target),
                Miss::TooLow => says::run_outside_target_below(&ph, &target),
            };
            said.push(RemarkView { tone: "caution", text });
        }
        said.extend(
            outside.windows.iter().map(|window| RemarkView { tone: "stop", text: self.say_window(&ph, window) }),
        );
        said
    }

    fn say_window(&self, ph: &str, window: &Window) -> String {
        let name = self.materials.inci(window.substance);
        says::run_outside_window(ph, name, &self.exact_ph(window.low), &self.exact_ph(window.high))
    }

    /// What the sample and the solution ask for.
    fn show_titration(&mut self, batch: &Batch, state: &RunState, view: &mut CardView) {
        let Some(titrant) = self.titrant_meant(state) else { return };
        let unit = self.settings.mass_unit.symbol().to_owned();
        view.about.push(says::run_with_now(&self.materials.name(titrant.material), &self.percent_of(titrant.strength)));
        let is_simple = self.is_simple(titrant.material);
        let caustic = self.is_caustic(titrant.material);
        if caustic {
            let cautions = sentences_ph::caustic().map(|text| RemarkView { tone: "stop", text: text.to_owned() });
            view.warnings.extend(cautions);
        } else if titrant.strength.value() > Decimal::from(USUAL_STRENGTH) {
            view.warnings.push(RemarkView { tone: "caution", text: says::acid_caution().to_owned() });
        }
        let said = self.planned();
        let plan = |name: &str| BatchesCommand::PlanTitration { name: name.to_owned(), text: String::new() };
        let field = |field: &str, label: &str, unit: &str, text: String, button: &str, command| CardField {
            field: format!("run.titrate:{field}"),
            label: label.to_owned(),
            unit: unit.to_owned(),
            text,
            keyboard: "decimal",
            button: button.to_owned(),
            command: Some(command),
            ..CardField::default()
        };
        let text = || String::new();
        if is_simple {
            let strength = write_between(titrant.strength.value(), 0, 4, self.mark());
            view.fields.push(field("strength", says::run_field_strength(), "%", strength, "", plan("strength")));
        }
        let taken = state.ph_log.sample.clone();
        match &taken {
            None => {
                view.about.push(says::run_how().to_owned());
                let water = said.said("water").unwrap_or_default().to_owned();
                view.fields.push(field("water", says::run_field_water(), &unit, water, "", plan("water")));
                let take = BatchesCommand::TakePhSample { text: text() };
                view.fields.push(field("sample", says::run_field_sample(), &unit, text(), says::run_take(), take));
            }
            Some(sample) => {
                let (mass, added) = (self.small_mass(sample.mass), self.small_mass(sample.added));
                view.about.push(if sample.water.is_zero() {
                    says::run_sample_now_undiluted(&mass, &added)
                } else {
                    says::run_sample_now(&mass, &self.small_mass(sample.water), &added)
                });
                let read = BatchesCommand::ReadSample { text: text() };
                view.fields.push(field("reading", says::run_field_sample_ph(), "", text(), says::run_note(), read));
                let drop_mass = titrant.drops.map(|drops| self.mass_number(drops.mass)).unwrap_or_default();
                let label = says::run_field_drop_mass();
                view.fields.push(field("drop-mass", label, &unit, drop_mass, "", plan("drop-mass")));
                let drops = BatchesCommand::AddDrops { text: text() };
                let of_drops = says::run_unit_drops();
                view.fields.push(field("drops", says::run_field_drops(), of_drops, text(), says::run_add(), drops));
                let grams = BatchesCommand::AddToSample { text: text() };
                view.fields.push(field("grams", says::run_field_grams(), &unit, text(), says::run_add(), grams));
            }
        }
        self.show_needed(batch, state, titrant, view);
        for material in self.usual_titrants(state).into_iter().filter(|material| *material != titrant.material) {
            view.choices.push(ChoiceAct {
                label: says::run_with(&self.materials.name(material)),
                command: Some(BatchesCommand::PlanTitration {
                    name: "material".to_owned(),
                    text: material.to_string(),
                }),
                ..ChoiceAct::default()
            });
        }
    }

    fn show_needed(&mut self, batch: &Batch, state: &RunState, titrant: Titrant, view: &mut CardView) {
        let needed = match self.needed(batch, state, titrant) {
            None => return,
            Some(Err(problem)) => {
                view.warnings.push(RemarkView { tone: "caution", text: problem });
                return;
            }
            Some(Ok(needed)) => needed,
        };
        if needed.all <= 0.0 {
            view.warnings.push(RemarkView { tone: "note", text: says::run_nothing_needed().to_owned() });
            return;
        }
        let how = match &needed.sample {
            Some(sample) => says::run_all_how_sample(&sample.points.len().to_string()),
            None => says::run_all_how_reading().to_owned(),
        };
        let figure = |label: &str, grams: f64, how: String| FigureView {
            label: label.to_owned(),
            value: Decimal::try_from(grams)
                .ok()
                .and_then(|grams| Grams::new(grams.round_dp(6)).ok())
                .map(|mass| self.small_mass(mass))
                .unwrap_or_default(),
            range: String::new(),
            how,
            source: says::run_source().to_owned(),
        };
        view.figures.push(figure(says::run_all(), needed.all, how));
        view.figures.push(figure(says::run_now(), needed.now, says::run_now_how().to_owned()));
        if let Some(mass) = self.to_weigh(needed.now).filter(|mass| !mass.is_zero()) {
            // What is worked out comes first: it is what the card is about.
            view.choices.insert(
                0,
                ChoiceAct {
                    label: says::run_correct_now(&self.small_mass(mass)),
                    about: says::run_correct_about().to_owned(),
                    command: Some(BatchesCommand::CorrectPh { text: String::new() }),
                    refused: false,
                },
            );
        }
        let unit = self.settings.mass_unit.symbol().to_owned();
        view.fields.push(CardField {
            field: "run.titrate:correct".into(),
            label: says::run_field_correct().into(),
            unit,
            keyboard: "decimal",
            button: says::run_add().into(),
            command: Some(BatchesCommand::CorrectPh { text: String::new() }),
            ..CardField::default()
        });
        if let Some((sample, target)) = needed.sample.zip(target_of(state)) {
            view.curve = Some(self.draw_titration(&sample, target.to_physics()));
        }
    }

    fn draw_titration(&self, sample: &Titrated, target: f64) -> CurveView {
        let all = || sample.curve.iter().copied().chain(sample.points.iter().map(|(added, ph, _)| (*added, *ph)));
        let end = all().map(|(added, _)| added).fold(1e-6, f64::max);
        let top = all().map(|(_, ph)| ph).fold(target, f64::max) + 0.2;
        let bottom = all().map(|(_, ph)| ph).fold(target, f64::min) - 0.2;
        let along = |added: f64| (added / end * 100.0).clamp(0.0, 100.0);
        let height = |ph: f64| ((top - ph) / (top - bottom) * 100.0).clamp(0.0, 100.0);
        let mass = |grams: f64| {
            let mass = Decimal::try_from(grams).ok().and_then(|grams| Grams::new(grams.round_dp(6)).ok());
            mass.map(|mass| self.small_mass(mass)).unwrap_or_default()
        };
        let said: Vec<String> =
            sample.points.iter().map(|(added, ph, _)| says::plot_point(&mass(*added), &self.ph(*ph))).collect();
        CurveView {
            description: says::run_curve(&said.join("; "), &sample.points.len().to_string()),
            line: sample.curve.iter().map(|(added, ph)| (along(*added), height(*ph))).collect(),
            points: sample.points.iter().map(|(added, ph, _)| (along(*added), height(*ph))).collect(),
            level: height(target),
            level_label: says::plot_target(&self.ph(target)),
            band: None,
            across: vec![CurveTick { at: 0.0, label: mass(0.0) }, CurveTick { at: 100.0, label: mass(end) }],
            up: vec![
                CurveTick { at: height(top - 0.2), label: self.ph(top - 0.2) },
                CurveTick { at: height(bottom + 0.2), label: self.ph(bottom + 0.2) },
            ],
        }
    }

    fn exact_ph(&self, ph: Ph) -> String {
        write_between(ph.value(), 1, 2, self.mark())
    }

    /// What was said of how the pH is read, in words.
    pub(crate) fn reader_in_words(&self, text: &str) -> String {
        says::run_reads_now(&self.how_read(reader(text)))
    }

    fn how_read(&self, by: ReadBy) -> String {
        match by {
            ReadBy::Meter => says::run_meter().to_owned(),
            ReadBy::Strip(step) => says::run_strip(&self.exact_ph(step)),
        }
    }

    // ---- the record -----------------------------------------------------------------------------------------------

    /// What was done about the pH, in words.
    pub(crate) fn ph_deed_in_words(&self, deed: &PhDeed) -> String {
        let mass = |mass: &Grams| self.small_mass(*mass);
        match deed {
            PhDeed::Windows(_) => says::did_windows().to_owned(),
            PhDeed::SampleTaken(taken, water) if water.is_zero() => says::did_sample(&mass(taken)),
            PhDeed::SampleTaken(taken, water) => says::did_sample_water(&mass(taken), &mass(water)),
            PhDeed::Titrant(titrant) => {
                let name = self.materials.name(titrant.material);
                let strength = self.percent_of(titrant.strength);
                match &titrant.drops {
                    None => says::did_titrant(&name, &strength),
                    Some(drops) => {
                        says::did_titrant_drops(&name, &strength, &drops.count.to_string(), &mass(&drops.mass))
                    }
                }
            }
            PhDeed::DropsAdded(count) => says::did_drops(usize::try_from(*count).unwrap_or(usize::MAX)),
            PhDeed::GramsAdded(added) => says::did_grams(&mass(added)),
            PhDeed::Read(Vessel::Batch, ph, by) => says::did_read_batch(&self.exact_ph(*ph), &self.how_read(*by)),
            PhDeed::Read(Vessel::Sample, ph, by) => says::did_read_sample(&self.exact_ph(*ph), &self.how_read(*by)),
            PhDeed::Corrected(added) => says::did_correct(&mass(added)),
            PhDeed::Accepted => says::did_accept().to_owned(),
        }
    }

    /// What came of the pH, for the record: every reading of the batch, what was corrected with what, what was taken out.
    pub(crate) fn results_of_ph(&self, state: &RunState) -> Vec<PairView> {
        let log = &state.ph_log;
        let pair = |label: &str, value: String| PairView { label: label.to_owned(), value };
        let mut results = Vec::new();
        let of_batch: Vec<String> = log
            .readings
            .iter()
            .filter(|reading| reading.vessel == Vessel::Batch)
            .map(|reading| format!("{} {}", self.clock(reading.at), self.exact_ph(reading.ph)))
            .collect();
        if of_batch.len() > 1 {
            results.push(pair(says::record_readings(), of_batch.join(", ")));
        }
        for correction in &log.corrections {
            let Titrant { material, strength, .. } = correction.titrant;
            let name = self.materials.name(material);
            let value =
                says::record_corrected_value(&self.small_mass(correction.mass), &name, &self.percent_of(strength));
            results.push(pair(says::record_corrected(), value));
        }
        if !log.taken.is_zero() {
            results.push(pair(says::record_taken(), self.small_mass(log.taken)));
        }
        results
    }

    /// Preservatives' windows that the pH was left outside of.
    pub(crate) fn deviations_of_ph(&self, state: &RunState) -> Vec<String> {
        match state.ph_log.standing() {
            Standing::Outside(reading, outside) | Standing::Accepted(reading, outside) => {
                outside.windows.iter().map(|window| self.say_window(&self.exact_ph(reading.ph), window)).collect()
            }
            _ => Vec::new(),
        }
    }

    /// Whether a run corrects with something caustic: its record says how that is handled.
    pub(crate) fn corrects_with_caustic(&self, state: &RunState) -> bool {
        state.ph_log.corrections.iter().any(|correction| {
            let mut makeups = stillroom_core::composition::Makeups::default();
            let inside = makeups.see_through(correction.titrant.material, &self.materials);
            inside.is_ok_and(|inside| inside.constituents.iter().any(|(id, _)| is_caustic(*id)))
        })
    }
}

fn ways_of_reading(session: &Session, state: &RunState) -> Vec<ChoiceAct> {
    let now = read_by(state);
    let strips = STRIPS.into_iter().filter_map(|tenths| Ph::new(Decimal::new(tenths, 1)).ok().map(ReadBy::Strip));
    let others = std::iter::once(ReadBy::Meter).chain(strips).filter(|way| *way != now);
    others
        .map(|way| {
            let (label, text) = match way {
                ReadBy::Meter => (says::run_by_meter().to_owned(), "meter".to_owned()),
                ReadBy::Strip(step) => (says::run_by_strip(&session.exact_ph(step)), format!("strip:{}", step.value())),
            };
            let command = BatchesCommand::Say { name: READ_BY.to_owned(), text };
            ChoiceAct { label, command: Some(command), ..ChoiceAct::default() }
        })
        .collect()
}
