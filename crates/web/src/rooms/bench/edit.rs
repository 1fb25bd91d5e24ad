//! Acts on the batch and on the settings of the bench.

use crate::contract::Answer;
use crate::messages::sentences;
use crate::rooms::bench::command::BenchCommand;
use crate::rooms::formula::edit::about;
use crate::session::Session;
use crate::session::history::Slot;
use crate::session::settings::{SettingName, Settings};
use rust_decimal::Decimal;
use std::rc::Rc;
use stillroom_core::batch_plan::{BatchPlan, LARGEST_ALLOWANCE, MOST_CONTAINERS, Stock};
use stillroom_core::number::{DecimalMark, NumberError, read_mass, read_plain, read_volume};
use stillroom_core::unit::{MassUnit, TemperatureUnit, VolumeUnit};
use stillroom_core::weigh_sheet::{Scale, ScaleError, Scales};
use stillroom_core::{Density, Grams, MaterialId, MaterialSource, Percent};

/// Most materials at hand that one batch is held against.
const MOST_STOCK: usize = 50;

impl Session {
    pub(crate) fn act_on_bench(&mut self, command: BenchCommand) -> Answer {
        let mark = self.mark();
        match command {
            BenchCommand::SetBatchWay { way } => {
                self.plan_batch("batch.way", None, |plan| plan.way = way);
                Answer::default()
            }
            BenchCommand::SetBatchMass { text } => {
                let read = read_mass(&text, mark, self.settings.mass_unit, self.density_of_product());
                self.plan_field("batch.mass", read, |plan, mass| plan.mass = mass)
            }
            BenchCommand::SetContainerCount { text } => {
                let read = read_plain(&text, mark, Decimal::ONE, Decimal::from(MOST_CONTAINERS));
                let read = read.and_then(|count| whole(count, &text));
                self.plan_field("batch.count", read, |plan, count| plan.containers.count = count)
            }
            BenchCommand::SetContainerVolume { text } => {
                let read = read_volume(&text, mark, self.settings.volume_unit);
                self.plan_field("batch.volume", read, |plan, volume| plan.containers.volume = volume)
            }
            BenchCommand::SetHeadspace { text } => {
                let read = read_allowance(&text, mark);
                self.plan_field("batch.headspace", read, |plan, share| plan.containers.headspace = share)
            }
            BenchCommand::SetLoss { text } => {
                let read = read_allowance(&text, mark);
                self.plan_field("batch.loss", read, |plan, share| plan.containers.loss = share)
            }
            BenchCommand::SetDensity { text } => {
                let read = if text.trim().is_empty() {
                    Ok(None)
                } else {
                    let text = text.trim().trim_end_matches("g/mL").trim_end_matches("g/ml");
                    read_plain(text, mark, Density::MINIMUM, Density::MAXIMUM).map(|value| Density::new(value).ok())
                };
                self.plan_field("batch.density", read, |plan, density| plan.containers.density = density)
            }
            BenchCommand::SetStock { material, text } => self.set_stock(material, &text),
            BenchCommand::RemoveStock { material } => {
                self.plan_batch("batch.stock-remove", None, |plan| plan.stock.retain(|each| each.material != material));
                Answer::default()
            }
            BenchCommand::SetSetting { name, text } => self.set_setting(name, &text),
        }
    }

    fn plan_batch(&mut self, act: &'static str, field: Option<&str>, edit: impl FnOnce(&mut BatchPlan)) {
        self.change_formula(act, field, |formula| edit(&mut formula.batch));
    }

    /// Puts what was read into the plan, or answers why it was not understood.
    fn plan_field<T>(
        &mut self,
        field: &'static str,
        read: Result<T, NumberError>,
        edit: impl FnOnce(&mut BatchPlan, T),
    ) -> Answer {
        let result = read.map(|value| self.plan_batch(field, Some(field), |plan| edit(plan, value)));
        about(field, result, self.mark())
    }

    /// Measured density of the product, or the estimate.
    pub(crate) fn density_of_product(&mut self) -> Option<Density> {
        let (record, evaluation) = self.evaluate_open()?;
        let measured = record.formula.batch.containers.density;
        measured.or(evaluation.density.map(|estimate| estimate.density))
    }

    fn set_stock(&mut self, material: MaterialId, text: &str) -> Answer {
        let field = format!("stock:{material}");
        let mark = self.mark();
        let density = self.materials.material(material).and_then(|material| material.density);
        // Of a material just chosen there is what the maker's record says, or no mass yet.
        let read = if text.trim().is_empty() {
            let is_said = self.formula().is_some_and(|it| it.batch.stock.iter().any(|each| each.material == material));
            let recorded = self.materials.holding(material).filter(|_| !is_said).and_then(|holding| holding.stock);
            Ok(recorded.unwrap_or(Grams::ZERO))
        } else {
            read_mass(text, mark, self.settings.mass_unit, density)
        };
        let mut full = false;
        let result = read.map(|available| {
            self.plan_batch("batch.stock", Some(&field), |plan| {
                if let Some(each) = plan.stock.iter_mut().find(|each| each.material == material) {
                    each.available = available;
                } else if plan.stock.len() < MOST_STOCK {
                    plan.stock.push(Stock { material, available });
                } else {
                    full = true;
                }
            });
        });
        if full {
            self.notice(
                "batch.too-many-materials",
                crate::messages::bench::too_many_materials_at_hand(&MOST_STOCK.to_string()),
                false,
            );
        }
        about(&field, result, mark)
    }

    fn set_setting(&mut self, name: SettingName, text: &str) -> Answer {
        let mark = self.mark();
        let mut after = (*self.settings).clone();
        let field = setting_field(name);
        let result = self.read_setting(name, text, &mut after);
        let answer = match result {
            Ok(()) => Answer { field: Some(field.clone()), ..Answer::default() },
            Err(SettingError::Number(error)) => about(&field, Err(error), mark),
            Err(SettingError::Scale(error)) => Answer {
                field: Some(field.clone()),
                error: Some(sentences::scale_error(&error)),
                code: Some(error.code()),
                made: None,
            },
        };
        if answer.error.is_none() {
            self.commit_settings(after, &field);
        }
        answer
    }

    /// Puts other settings in place as one act that can be undone.
    pub(crate) fn commit_settings(&mut self, after: Settings, field: &str) {
        if after != *self.settings {
            let before = Slot::Settings(Rc::clone(&self.settings));
            self.commit("settings", Some(field), self.open, vec![before], vec![Slot::Settings(Rc::new(after))]);
        }
    }

    fn read_setting(&self, name: SettingName, text: &str, after: &mut Settings) -> Result<(), SettingError> {
        let mark = self.mark();
        let mass = |text: &str| read_mass(text, mark, self.settings.mass_unit, None).map_err(SettingError::Number);
        match name {
            SettingName::DecimalMark => {
                after.decimal_mark = match text {
                    "point" => Some(DecimalMark::Point),
                    "comma" => Some(DecimalMark::Comma),
                    _ => None,
                };
            }
            SettingName::MassUnit => after.mass_unit = MassUnit::from_text(text).unwrap_or_default(),
            SettingName::TemperatureUnit => {
                after.temperature_unit = TemperatureUnit::from_text(text).unwrap_or_default();
            }
            SettingName::VolumeUnit => after.volume_unit = VolumeUnit::from_text(text).unwrap_or_default(),
            SettingName::MainStep => {
                let step = mass(text)?;
                change_scales(after, |scales| {
                    if let Some(main) = scales.last_mut() {
                        main.step = step;
                    }
                })?;
            }
            SettingName::FineScale => {
                let wanted = text == "yes";
                let usual = Scales::default();
                change_scales(after, |scales| {
                    if wanted && scales.len() == 1 {
                        scales.splice(0..0, usual.as_slice().first().cloned());
                    } else if !wanted {
                        scales.drain(..scales.len().saturating_sub(1));
                    }
                })?;
            }
            SettingName::FineStep => {
                let step = mass(text)?;
                change_scales(after, |scales| {
                    if let [fine, _, ..] = scales.as_mut_slice() {
                        fine.step = step;
                    }
                })?;
            }
            SettingName::FineBelow => {
                let below = mass(text)?;
                change_scales(after, |scales| {
                    if let [fine, _, ..] = scales.as_mut_slice() {
                        fine.below = Some(below);
                    }
                })?;
            }
            SettingName::Tolerance => {
                let value =
                    read_plain(text, mark, Decimal::new(1, 2), Decimal::from(50)).map_err(SettingError::Number)?;
                after.tolerance = Percent::new(value).unwrap_or(after.tolerance);
            }
        }
        Ok(())
    }
}

enum SettingError {
    Number(NumberError),
    Scale(ScaleError),
}

fn change_scales(settings: &mut Settings, edit: impl FnOnce(&mut Vec<Scale>)) -> Result<(), SettingError> {
    let mut scales = settings.scales.as_slice().to_vec();
    edit(&mut scales);
    settings.scales = Scales::new(scales).map_err(SettingError::Scale)?;
    Ok(())
}

/// Key of the field a setting is typed in.
pub(crate) fn setting_field(name: SettingName) -> String {
    let name = match name {
        SettingName::DecimalMark => "decimal-mark",
        SettingName::MassUnit => "mass-unit",
        SettingName::VolumeUnit => "volume-unit",
        SettingName::TemperatureUnit => "temperature-unit",
        SettingName::MainStep => "main-step",
        SettingName::FineScale => "fine-scale",
        SettingName::FineStep => "fine-step",
        SettingName::FineBelow => "fine-below",
        SettingName::Tolerance => "tolerance",
    };
    format!("setting.{name}")
}

fn read_allowance(text: &str, mark: DecimalMark) -> Result<Percent, NumberError> {
    let value = read_plain(text, mark, Decimal::ZERO, LARGEST_ALLOWANCE)?;
    Percent::new(value).map_err(|_| NumberError::OutOfRange {
        value,
        minimum: Decimal::ZERO,
        maximum: LARGEST_ALLOWANCE,
    })
}

fn whole(count: Decimal, text: &str) -> Result<u32, NumberError> {
    if count.fract().is_zero() {
        u32::try_from(count).map_err(|_| NumberError::NotANumber { text: text.to_owned() })
    } else {
        Err(NumberError::NotWhole { value: count })
    }
}
