//! The batch, the bench and its settings as the page shows them.

use crate::messages::sentences;
use crate::rooms::bench::view::{AtHandView, BatchView, SettingsView, StockView};
use crate::session::Session;
use rust_decimal::Decimal;
use stillroom_core::batch_plan::{BatchPlan, BatchWay};
use stillroom_core::evaluation::{BatchBasis, Evaluation};
use stillroom_core::number::{DecimalMark, decimals_of, write_between, write_fixed};
use stillroom_core::scaling::StockAnswer;
use stillroom_core::unit::{MassUnit, VolumeUnit};
use stillroom_core::{Density, Formula, Grams, Millilitres};

/// Decimals of a mass that no scale limits.
const MASS_DECIMALS: u32 = 3;
const DENSITY_DECIMALS: (u32, u32) = (2, 4);

impl Session {
    pub(crate) fn present_batch(&mut self, formula: &Formula, evaluation: &Evaluation) -> BatchView {
        let plan = &formula.batch;
        let mark = self.mark();
        let sheet = evaluation.sheet.as_ref();
        let problem = match &evaluation.batch {
            Err(error) => sentences::scaling_error(error, mark),
            Ok(_) if !evaluation.balance.is_sound() => crate::messages::bench::no_sheet().to_owned(),
            Ok(_) => String::new(),
        };
        let mut remarks = Vec::new();
        if let Ok(batch) = &evaluation.batch
            && let BatchBasis::Containers { estimated_from: Some(known), .. } = &batch.basis
        {
            remarks.push(sentences::estimated_density(*known, mark));
        }
        if let Some(sheet) = sheet.filter(|sheet| sheet.batch != sheet.asked) {
            remarks.push(crate::messages::bench::batch_differs(&self.mass(sheet.batch), &self.mass(sheet.asked)));
        }
        let too_coarse: Vec<String> = sheet
            .into_iter()
            .flat_map(|sheet| &sheet.lines)
            .filter(|line| line.relative_error.value().abs() > self.settings.tolerance.value())
            .map(|line| self.name_of_line(formula, line.line))
            .collect();
        let tolerance = write_between(self.settings.tolerance.value(), 0, 2, mark);
        let handling = self.handling_of(evaluation);
        BatchView {
            handling,
            way: plan.way,
            mass: self.mass_number(plan.mass),
            count: plan.containers.count.to_string(),
            volume: self.volume_number(plan.containers.volume),
            headspace: write_between(plan.containers.headspace.value(), 0, 2, mark),
            loss: write_between(plan.containers.loss.value(), 0, 2, mark),
            density: plan.containers.density.map_or_else(String::new, |density| density_number(density, mark)),
            density_estimate: evaluation
                .density
                .as_ref()
                .map_or_else(String::new, |estimate| density_number(estimate.density, mark)),
            stock: self.present_stock(plan, evaluation),
            at_hand: if plan.way == BatchWay::Stock { self.present_at_hand(formula) } else { Vec::new() },
            batch: match (sheet, &evaluation.batch) {
                (Some(sheet), _) => self.mass(sheet.batch),
                (None, Ok(batch)) => self.mass(batch.mass),
                (None, Err(_)) => String::new(),
            },
            arithmetic: self.arithmetic(plan, evaluation),
            remarks,
            problem,
            has_sheet: sheet.is_some(),
            smallest: evaluation
                .smallest_batch
                .map_or_else(String::new, |batch| sentences::smallest_batch(&self.mass(batch), &tolerance)),
            warning: sentences::lines_too_coarse(&too_coarse, &tolerance),
        }
    }

    fn arithmetic(&self, plan: &BatchPlan, evaluation: &Evaluation) -> Vec<String> {
        let mark = self.mark();
        match evaluation.batch.as_ref().map(|batch| (&batch.basis, batch.mass)) {
            Ok((BatchBasis::Containers { needed, density, .. }, mass)) => {
                let containers = &plan.containers;
                let mut lines = vec![sentences::fill_arithmetic(
                    containers.count,
                    &self.volume(containers.volume),
                    &write_between(containers.headspace.value(), 0, 2, mark),
                    &sentences::with_unit(&density_number(*density, mark), Density::UNIT),
                    &write_between(containers.loss.value(), 0, 2, mark),
                    &self.mass(*needed),
                )];
                if mass != *needed {
                    lines.push(crate::messages::bench::raised_to_scale(&self.mass(mass)));
                }
                lines
            }
            Ok((BatchBasis::Stock(StockAnswer { limiting, .. }), mass)) => {
                let available = plan.stock.iter().find(|each| each.material == *limiting).map(|each| each.available);
                let share = evaluation
                    .lines
                    .iter()
                    .filter(|(_, material)| material == limiting)
                    .map(|(share, _)| share.percent.value())
                    .sum();
                vec![crate::messages::bench::stock_arithmetic(
                    &self.materials.name(*limiting),
                    &available.map(|available| self.mass(available)).unwrap_or_default(),
                    &write_between(share, 2, 4, mark),
                    &self.mass(mass),
                )]
            }
            Ok((BatchBasis::Mass, _)) | Err(_) => Vec::new(),
        }
    }

    fn present_stock(&self, plan: &BatchPlan, evaluation: &Evaluation) -> Vec<StockView> {
        let answer = match evaluation.batch.as_ref().map(|batch| &batch.basis) {
            Ok(BatchBasis::Stock(answer)) if plan.way == BatchWay::Stock => Some(answer),
            _ => None,
        };
        plan.stock
            .iter()
            .enumerate()
            .map(|(at, each)| {
                let used = evaluation.lines.iter().any(|(_, material)| *material == each.material);
                let left = answer.and_then(|answer| answer.left_over.get(at)).map(|left| self.mass(left.available));
                StockView {
                    material: each.material.to_string(),
                    name: self.materials.name(each.material),
                    available: self.mass_number(each.available),
                    left: if used {
                        left.map(|left| crate::messages::bench::left_over(&left)).unwrap_or_default()
                    } else {
                        crate::messages::bench::not_in_formula().to_owned()
                    },
                    limiting: answer.is_some_and(|answer| answer.limiting == each.material),
                }
            })
            .collect()
    }

    fn present_at_hand(&self, formula: &Formula) -> Vec<AtHandView> {
        let mut left: Vec<AtHandView> = Vec::new();
        for line in formula.lines() {
            let material = line.material.to_string();
            let is_said = formula.batch.stock.iter().any(|each| each.material == line.material);
            if !is_said && left.iter().all(|each| each.material != material) {
                let recorded = self.materials.holding(line.material).and_then(|holding| holding.stock);
                left.push(AtHandView {
                    material,
                    name: self.materials.name(line.material),
                    recorded: recorded.map(|mass| self.mass(mass)).unwrap_or_default(),
                });
            }
        }
        left
    }

    pub(crate) fn present_settings(&self) -> SettingsView {
        let settings = &self.settings;
        let mark = self.mark();
        let usual = stillroom_core::weigh_sheet::Scales::default();
        let fine = settings.fine_scale().or_else(|| usual.as_slice().first());
        SettingsView {
            decimal_mark: match settings.decimal_mark {
                None => "browser",
                Some(DecimalMark::Point) => "point",
                Some(DecimalMark::Comma) => "comma",
            }
            .to_owned(),
            mass_unit: settings.mass_unit.symbol().to_owned(),
            volume_unit: settings.volume_unit.symbol().to_owned(),
            temperature_unit: settings.temperature_unit.symbol().to_owned(),
            main_step: self.mass_on_scale(settings.main_scale().step),
            fine_scale: settings.fine_scale().is_some(),
            fine_step: fine.map(|fine| self.mass_on_scale(fine.step)).unwrap_or_default(),
            fine_below: fine.and_then(|fine| fine.below).map(|below| self.mass_on_scale(below)).unwrap_or_default(),
            tolerance: write_between(settings.tolerance.value(), 0, 2, mark),
        }
    }

    /// A mass in the maker's unit, as short as it can be said.
    pub(crate) fn mass_number(&self, mass: Grams) -> String {
        write_between(self.settings.mass_unit.from_grams(mass), 0, decimals_in(self.settings.mass_unit), self.mark())
    }

    /// What stands on a scale: in the maker's unit where it is a round number there, else in grams, with the unit.
    fn mass_on_scale(&self, mass: Grams) -> String {
        let unit = self.settings.mass_unit;
        if decimals_of(unit.from_grams(mass)) <= decimals_in(unit) {
            return self.mass_number(mass);
        }
        let grams = write_between(mass.value(), 0, decimals_of(mass.value()), self.mark());
        sentences::with_unit(&grams, MassUnit::Gram.symbol())
    }

    /// A mass in the maker's unit with the unit.
    pub(crate) fn mass(&self, mass: Grams) -> String {
        sentences::with_unit(&self.mass_number(mass), self.settings.mass_unit.symbol())
    }

    /// A temperature in the maker's unit, to a tenth at most.
    pub(crate) fn temperature_number(&self, celsius: Decimal) -> String {
        write_between(self.settings.temperature_unit.from_celsius(celsius).round_dp(1), 0, 1, self.mark())
    }

    pub(crate) fn volume_number(&self, volume: Millilitres) -> String {
        let unit = self.settings.volume_unit;
        let number = volume.value().checked_div(unit.millilitres()).unwrap_or_default();
        let decimals = if unit == VolumeUnit::Millilitre { 2 } else { 4 };
        write_between(number.round_dp(decimals), 0, decimals, self.mark())
    }

    pub(crate) fn volume(&self, volume: Millilitres) -> String {
        sentences::with_unit(&self.volume_number(volume), self.settings.volume_unit.symbol())
    }
}

/// Decimals that show a milligram, and a hundredth of a gram in units that are no decimal part of it.
fn decimals_in(unit: MassUnit) -> u32 {
    match unit {
        MassUnit::Milligram => 1,
        MassUnit::Gram | MassUnit::Ounce => MASS_DECIMALS,
        MassUnit::Pound => MASS_DECIMALS + 1,
        MassUnit::Kilogram => MASS_DECIMALS + 3,
    }
}

fn density_number(density: Density, mark: DecimalMark) -> String {
    let (fewest, most) = DENSITY_DECIMALS;
    let value = density.value().round_dp(most);
    if value.scale() <= fewest { write_fixed(value, fewest, mark) } else { write_between(value, fewest, most, mark) }
}
