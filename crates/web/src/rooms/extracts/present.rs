//! Extracts as the page shows them.

use crate::messages::common;
use crate::messages::extracts as says;
use crate::messages::sentences::with_unit;
use crate::rooms::extracts::brewing::{
    ALCOHOL, BLENDED, Brew, Day, Fields, GLYCERITE, SOLUTION, Takes, Trouble, brew, day_of, days_since_1970,
    key_of_plant, plant_of, plant_water, read_day, rule, water_from, write_day,
};
use crate::rooms::extracts::sentences;
use crate::rooms::extracts::view::{
    ChoiceView, ExtractCard, ExtractView, ExtractsView, FieldText, FigureView, KeepingView, MarkView, ScaleView,
};
use crate::session::Session;
use rust_decimal::Decimal;
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};
use std::rc::Rc;
use stillroom_catalogue::folded;
use stillroom_catalogue::reference::plant_waters;
use stillroom_core::chemistry::{Band, PhysicsError, Temperature};
use stillroom_core::extract::describe::{Description, describe, estimate_water_activity};
use stillroom_core::extract::keeping::{
    Conditions, Keeping, LowRisk, ORGANISMS, Organism, Spectrum, Step as KeepStep, find_glycerin_percent, judge_keeping,
};
use stillroom_core::extract::{ExtractError, Level, Liquid, Part};
use stillroom_core::number::{write_between, write_fixed};
use stillroom_core::{Grams, Millilitres, Percent};
use stillroom_exchange::extract::{Extract, ExtractKind, ExtractRecord, Step};

/// Room a label takes, in percent of the scale's height.
const ROOM_FOR_LABEL: f64 = 5.0;

impl Session {
    pub(crate) fn present_extracts(&self) -> ExtractsView {
        let mut records: Vec<&Rc<ExtractRecord>> = self.extracts.values().collect();
        records.sort_by(|a, b| b.changed_at.cmp(&a.changed_at).then(a.id.cmp(&b.id)));
        let cards = records.into_iter().map(|record| ExtractCard {
            id: record.id.to_string(),
            name: record.extract.name.clone(),
            about: self.about_extract(&record.extract),
            open: self.open_extract == Some(record.id),
        });
        let mut plants: Vec<ChoiceView> = plant_waters()
            .iter()
            .map(|row| ChoiceView { key: key_of_plant(row), label: sentences::plant_choice(row) })
            .collect();
        plants.sort_by_cached_key(|plant| folded(&plant.label));
        ExtractsView { cards: cards.collect(), plants }
    }

    fn about_extract(&self, extract: &Extract) -> String {
        let percent = |percent: Percent| write_fixed(percent.value(), 1, self.mark());
        match extract.kind {
            ExtractKind::Glycerite => {
                let strength = brew(extract).ok().and_then(|brew| brew.liquid.glycerin_percent().ok());
                let made_on = read_day(extract.text("made-on")).map(sentences::day);
                sentences::about_glycerite(&strength.map(percent).unwrap_or_default(), &made_on.unwrap_or_default())
            }
            ExtractKind::Solution => {
                let substance = extract.material("substance").map(|id| self.materials.name(id));
                sentences::about_solution(&self.typed(extract, "strength"), &substance.unwrap_or_default())
            }
            ExtractKind::Alcohol => says::about_alcohol(&self.typed(extract, "target")),
        }
    }

    /// What a field shows: numbers in the maker's units and with their decimal mark.
    pub(crate) fn typed(&self, extract: &Extract, field: &str) -> String {
        let number = extract.number(field);
        match (rule(field), number) {
            (Some((Takes::Mass, _)), Some(mass)) => {
                Grams::new(mass).map(|mass| self.mass_number(mass)).unwrap_or_default()
            }
            (Some((Takes::Volume, _)), Some(volume)) => {
                Millilitres::new(volume).map(|volume| self.volume_number(volume)).unwrap_or_default()
            }
            (Some((Takes::Temperature(..), _)), Some(celsius)) => {
                // A hydrometer may be made for 60 °F, which is 15.56 °C.
                let value = self.settings.temperature_unit.from_celsius(celsius).round_dp(2);
                write_between(value, 0, 2, self.mark())
            }
            (Some((Takes::Number(..), _)), Some(number)) => write_between(number, 0, 6, self.mark()),
            (Some((Takes::Mass | Takes::Volume | Takes::Number(..) | Takes::Temperature(..), _)), None) => {
                String::new()
            }
            (Some((Takes::Material, _)), _) => {
                extract.material(field).map(|id| self.materials.name(id)).unwrap_or_default()
            }
            _ => extract.text(field).to_owned(),
        }
    }

    /// A computed mass, as fine as a fine scale shows it.
    pub(crate) fn about_mass(&self, mass: Grams) -> String {
        self.mass(Grams::new(mass.value().round_dp(2)).unwrap_or(mass))
    }

    pub(crate) fn about_volume(&self, millilitres: f64) -> String {
        let volume = Decimal::from_f64(millilitres).map(|volume| volume.round_dp(u32::from(millilitres < 100.0)));
        volume.and_then(|volume| Millilitres::new(volume).ok()).map(|volume| self.volume(volume)).unwrap_or_default()
    }

    pub(crate) fn percent_text(&self, percent: Percent) -> String {
        write_fixed(percent.value(), 1, self.mark())
    }

    pub(crate) fn present_open_extract(&mut self) -> ExtractView {
        let Some(record) = self.open_extract.and_then(|id| self.extracts.get(&id)).map(Rc::clone) else {
            return ExtractView::default();
        };
        let extract = &record.extract;
        let (kind, fields) = match extract.kind {
            ExtractKind::Glycerite => ("glycerite", GLYCERITE),
            ExtractKind::Solution => ("solution", SOLUTION),
            ExtractKind::Alcohol => ("alcohol", ALCOHOL),
        };
        let mut view = ExtractView {
            id: Some(record.id.to_string()),
            kind,
            name: extract.name.clone(),
            blended: extract.blend.is_some(),
            fields: fields
                .iter()
                .map(|field| FieldText { field: (*field).to_owned(), text: self.typed(extract, field) })
                .collect(),
            plant: self.sentence_of_plant(extract),
            ..ExtractView::default()
        };
        if extract.kind == ExtractKind::Glycerite {
            if let Some(field) = view.fields.iter_mut().find(|field| field.field == "water-from") {
                water_from(extract).clone_into(&mut field.text);
            }
            match brew(extract) {
                Ok(brew) => self.present_brew(extract, &brew, &mut view),
                Err(trouble) => view.problem = sentences::trouble(&trouble, self.mark()),
            }
            view.steps = extract.steps.iter().map(|step| self.present_step(step)).collect();
            self.present_blend(record.id, extract, &mut view);
        }
        view.offers = self.present_offers(&record);
        self.present_comparison(extract, &mut view);
        view
    }

    fn sentence_of_plant(&self, extract: &Extract) -> String {
        let Ok(water) = plant_water(extract) else { return String::new() };
        let percent = write_between(water.value().round_dp(2), 0, 2, self.mark());
        match (water_from(extract), plant_of(extract)) {
            ("catalogue", Some(row)) => {
                sentences::plant_water(&percent, row.range_or_limit, row.origin.source.citation)
            }
            ("weighed", _) => says::plant_water_weighed(&percent),
            _ => String::new(),
        }
    }

    fn present_step(&self, step: &Step) -> String {
        match step {
            Step::Glycerin(mass, purity) => {
                says::step_glycerin(&self.about_mass(*mass), &write_between(purity.value(), 0, 2, self.mark()))
            }
            Step::Water(mass) => says::step_water(&self.about_mass(*mass)),
            Step::WeighedAgain(mass) => says::step_weighed(&self.about_mass(*mass)),
            Step::Measured(percent) => says::step_measured(&self.percent_text(*percent)),
        }
    }

    fn present_brew(&self, extract: &Extract, brew: &Brew, view: &mut ExtractView) {
        let mark = self.mark();
        let temperature = match Temperature::new(extract.physics("temperature")) {
            Ok(temperature) => temperature,
            Err(error) => {
                view.problem = sentences::physics_error(&error, mark);
                return;
            }
        };
        let description = match describe(&brew.liquid, temperature) {
            Ok(description) => description,
            Err(error) => {
                view.problem = sentences::extract_error(&error, mark);
                return;
            }
        };
        view.parts = self.present_parts_of(extract, brew, &description);
        view.figures = self.present_figures(&description);
        if let Some((activity, keeping)) = Self::judge(extract, brew) {
            view.scale = Some(self.present_scale(activity, &keeping));
            view.keeping = Some(self.present_keeping(extract, brew.measured, &keeping));
        }
    }

    fn present_parts_of(&self, extract: &Extract, brew: &Brew, description: &Description) -> Vec<FigureView> {
        let mark = self.mark();
        let arithmetic = |part: Part| -> String {
            let Some((plan, pressed)) = &brew.planned else { return String::new() };
            let pure = |mass: Grams, purity: Percent| purity.of(mass).unwrap_or(Grams::ZERO);
            match part {
                Part::Glycerin => says::glycerin_arithmetic(
                    &self.about_mass(plan.glycerin),
                    &self.typed(extract, "purity"),
                    &self.about_mass(pure(plan.glycerin, plan.glycerin_purity)),
                ),
                Part::Water => {
                    let rest = |mass: Grams, purity| mass.checked_sub(pure(mass, purity)).unwrap_or(Grams::ZERO);
                    let solvent = plan.solvent.map_or(Grams::ZERO, |added| rest(added.mass, added.purity));
                    let with = rest(plan.glycerin, plan.glycerin_purity).checked_add(solvent).unwrap_or(Grams::ZERO);
                    let water = says::water_arithmetic(
                        &self.about_mass(pure(plan.plant.mass, plan.plant.water)),
                        &self.about_mass(with),
                        &self.about_mass(plan.added_water),
                        &self.about_mass(plan.evaporation),
                    );
                    let held = pressed.held_back.mass().unwrap_or(Grams::ZERO);
                    let ran = pressed.liquid.mass().unwrap_or(Grams::ZERO);
                    [water, says::pressing(&self.about_mass(ran), &self.about_mass(held))].join(" ")
                }
                Part::PlantSolids => says::solids_arithmetic().to_owned(),
                _ => String::new(),
            }
        };
        let view = |(part, percent): &(Part, Percent)| FigureView {
            label: sentences::part(*part).to_owned(),
            value: common::percent(&self.percent_text(*percent)),
            range: if *part == Part::PlantSolids {
                let share = |level| {
                    let masses = brew.liquid.masses(level);
                    sentences::fixed(100.0 * masses.solids / masses.total(), 1, mark)
                };
                says::range(&share(Level::Low), &share(Level::High))
            } else {
                self.about_mass(brew.liquid.mass_of(*part))
            },
            how: arithmetic(*part),
            source: String::new(),
        };
        description.composition.iter().map(view).collect()
    }

    fn present_figures(&self, description: &Description) -> Vec<FigureView> {
        let mark = self.mark();
        let number = |value: f64, decimals: u32, unit: &str| with_unit(&sentences::fixed(value, decimals, mark), unit);
        let figure = |name: &str, answer: Result<(String, String), PhysicsError>| {
            let (label, how, source) = sentences::figure(name);
            let (value, range) = answer.unwrap_or_else(|error| (String::new(), sentences::physics_error(&error, mark)));
            FigureView { label: label.to_owned(), value, range, how: how.to_owned(), source: source.to_owned() }
        };
        let band = |answer: Result<Band, PhysicsError>, decimals: u32, unit: &str| {
            answer.map(|band| {
                // Outwards, so that rounding never narrows a range.
                let step = 10_f64.powi(i32::try_from(decimals).unwrap_or(0));
                let low = number((band.low * step).floor() / step, decimals, "");
                let high = number((band.high * step).ceil() / step, decimals, "");
                let range = if low == high { String::new() } else { says::range(&low, &high) };
                (number(band.estimate, decimals, unit), range)
            })
        };
        let degrees = self.settings.temperature_unit;
        let one = |answer: Result<f64, PhysicsError>, unit: &str| {
            answer.map(|value| (number(value, u32::from(value.abs() < 100.0), unit), String::new()))
        };
        let volume = description.volume.map(|band| (self.about_volume(band.estimate), String::new()));
        let mass = self.about_mass(description.mass);
        vec![
            figure("activity", band(description.water_activity, 2, "")),
            figure("volume", volume.map(|(volume, _)| (volume, mass))),
            figure("brix", band(description.brix, 1, "°Bx")),
            figure("brix-corrected", band(description.brix_corrected, 1, "°Bx")),
            figure("index", band(description.refractive_index, 4, "")),
            figure("gravity", band(description.specific_gravity, 3, "")),
            figure("density", band(description.density, 3, "g/mL")),
            figure("viscosity", one(description.viscosity, "mPa·s")),
            figure(
                "freezing",
                one(description.freezing_point.map(|celsius| degrees.of_celsius(celsius)), degrees.symbol()),
            ),
        ]
    }

    fn present_scale(&self, activity: Band, keeping: &Keeping) -> ScaleView {
        let mark = self.mark();
        // Above what is claimed for, all stand at the top of it.
        let percent = |activity: f64| find_glycerin_percent(activity).unwrap_or(95.0);
        let place = |activity: f64| 100.0 - percent(activity);
        let label = |activity: f64| sentences::fixed(activity, 2, mark);
        let marks = KeepStep::ALL[1..].iter().map(|(step, from)| {
            let criterion = (*from - LowRisk::WATER_ACTIVITY).abs() < f64::EPSILON;
            let label = says::scale_mark(&label(*from), sentences::keep_step(*step));
            MarkView { at: place(*from), label, criterion }
        });
        let mut ticks: Vec<f64> = ORGANISMS.iter().map(|organism| place(organism.minimum)).collect();
        ticks.dedup();
        let strengths = [20.0, 40.0, 60.0, 80.0];
        let upper = keeping.upper;
        let (top, foot) = (place(activity.low), place(upper));
        let outward = label((upper * 100.0).ceil() / 100.0);
        let here = MarkView { at: foot.clamp(0.0, 100.0), label: says::scale_here(&outward), criterion: false };
        ScaleView {
            description: sentences::scale(
                &outward,
                &sentences::fixed(percent(upper), 0, mark),
                sentences::keep_step(keeping.step),
                keeping.low_risk.contains(&LowRisk::WaterActivity),
            ),
            marks: marks.collect(),
            ticks,
            percents: strengths
                .into_iter()
                .filter(|strength| (100.0 - strength - here.at).abs() > ROOM_FOR_LABEL)
                .map(|strength| MarkView {
                    at: 100.0 - strength,
                    label: common::percent(&sentences::fixed(strength, 0, mark)),
                    criterion: false,
                })
                .collect(),
            here,
            top: top.min(foot),
            height: (foot - top).abs().max(0.4),
        }
    }

    /// Whether an extract keeps, as far as its water activity is known.
    fn judge(extract: &Extract, brew: &Brew) -> Option<(Band, Keeping)> {
        let activity = estimate_water_activity(&brew.liquid).ok()?;
        let alcohol_percent = brew.liquid.percent_of(Part::Ethanol).map_or(0.0, Percent::to_physics);
        let ph = extract.number("ph").and_then(|ph| ph.to_f64());
        let preserved = extract.text("preserved") == "yes";
        Some((activity, judge_keeping(activity, &Conditions { alcohol_percent, ph, preserved })))
    }

    /// Last day a glycerite should be used, by when it was made.
    pub(crate) fn last_day_of(extract: &Extract) -> Option<String> {
        if extract.kind != ExtractKind::Glycerite {
            return None;
        }
        let (_, keeping) = Self::judge(extract, &brew(extract).ok()?)?;
        last_day(extract, &keeping).map(write_day)
    }

    fn present_keeping(&self, extract: &Extract, measured: bool, keeping: &Keeping) -> KeepingView {
        let mark = self.mark();
        let until = last_day(extract, keeping).map(sentences::day);
        let preserved = extract.text("preserved") == "yes";
        let upper = sentences::fixed((keeping.upper * 1000.0).ceil() / 1000.0, 3, mark);
        let mut remarks = vec![
            sentences::needs(keeping.needs, preserved).to_owned(),
            sentences::low_risk(&keeping.low_risk, &upper),
            says::use_by_basis().to_owned(),
        ];
        if extract.number("ph").is_none() {
            remarks.push(says::ph_missing().to_owned());
        }
        if !measured {
            remarks.push(says::not_measured().to_owned());
        }
        remarks.push(says::minima_basis().to_owned());
        let organisms = |list: &[&Organism]| {
            list.iter()
                .map(|each| ChoiceView { key: sentences::organism_name(each), label: sentences::organism(each, mark) })
                .collect()
        };
        KeepingView {
            verdict: sentences::verdict(keeping.step).to_owned(),
            tone: match keeping.needs {
                Spectrum::Nothing | Spectrum::FewAndSlow => "note",
                Spectrum::YeastsAndMoulds => "caution",
                Spectrum::BacteriaYeastsAndMoulds => "stop",
            },
            use_by: sentences::use_by(keeping.use_by, until.as_deref()),
            remarks,
            multiply: organisms(&keeping.multiply),
            held_back: organisms(&keeping.held_back),
        }
    }

    fn present_blend(&self, id: stillroom_exchange::extract::ExtractId, extract: &Extract, view: &mut ExtractView) {
        let mut fields = Vec::new();
        view.blend = extract
            .values
            .keys()
            .filter_map(|field| Some((field, field.strip_prefix(BLENDED)?)))
            .map(|(field, batch)| {
                fields.push(FieldText { field: field.clone(), text: self.typed(extract, field) });
                ChoiceView { key: field.clone(), label: self.name_of_batch(batch) }
            })
            .collect();
        view.fields.append(&mut fields);
        view.others = self
            .extracts
            .values()
            .filter(|other| other.id != id && other.extract.kind == ExtractKind::Glycerite)
            .map(|other| ChoiceView { key: format!("{BLENDED}x{}", other.id), label: other.extract.name.clone() })
            .filter(|other| !extract.values.contains_key(&other.key))
            .collect();
    }

    pub(crate) fn trouble(&self, trouble: &Trouble) -> String {
        sentences::trouble(trouble, self.mark())
    }

    pub(crate) fn extract_error(&self, error: &ExtractError) -> String {
        sentences::extract_error(error, self.mark())
    }

    /// Strength of a liquid as the page writes it.
    pub(crate) fn strength_of(&self, liquid: &Liquid) -> String {
        liquid.glycerin_percent().map(|percent| self.percent_text(percent)).unwrap_or_default()
    }
}

fn last_day(extract: &Extract, keeping: &Keeping) -> Option<Day> {
    let made_on = read_day(extract.text("made-on")).and_then(days_since_1970)?;
    Some(day_of(made_on.saturating_add(i64::from(keeping.use_by.days))))
}
