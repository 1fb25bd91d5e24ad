//! Settings of this device.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use stillroom_core::Celsius;
use stillroom_core::evaluation::{Bench, Tolerance};
use stillroom_core::number::DecimalMark;
use stillroom_core::unit::{MassUnit, TemperatureUnit, VolumeUnit};
use stillroom_core::weigh_sheet::{Scale, Scales};
use stillroom_exchange::json::{Damage, Value, Writer};
use stillroom_exchange::record::Kept;
use tsify::Tsify;

/// How this maker reads, writes and weighs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Settings {
    /// Mark between whole and fraction; `None` follows the browser.
    pub decimal_mark: Option<DecimalMark>,
    /// Unit of mass a bare number is in.
    pub mass_unit: MassUnit,
    /// Unit of volume a bare number is in.
    pub volume_unit: VolumeUnit,
    /// Unit of temperature a bare number is in.
    pub temperature_unit: TemperatureUnit,
    /// Scales on the bench, finest first.
    pub scales: Scales,
    /// Relative error a line may have through rounding, in percent.
    pub tolerance: stillroom_core::Percent,
    /// The coldest place products are kept in.
    pub cold_storage: Celsius,
    /// What every label of this maker says, as `exchange::label` writes it.
    pub maker: String,
    /// Whether the invented example was put on the shelf already.
    pub example_shown: bool,
}

fn usual_tolerance() -> stillroom_core::Percent {
    Tolerance::default().0
}

fn usual_cold() -> Celsius {
    Celsius::new(Decimal::from(5)).unwrap_or(Celsius::ZERO)
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            decimal_mark: None,
            mass_unit: MassUnit::default(),
            volume_unit: VolumeUnit::default(),
            temperature_unit: TemperatureUnit::default(),
            scales: Scales::default(),
            tolerance: usual_tolerance(),
            cold_storage: usual_cold(),
            maker: String::new(),
            example_shown: false,
        }
    }
}

impl Settings {
    /// The bench these settings describe.
    #[must_use]
    pub fn bench(&self) -> Bench {
        Bench { scales: self.scales.clone(), tolerance: Tolerance(self.tolerance) }
    }

    /// The fine scale, if there are two.
    #[must_use]
    pub fn fine_scale(&self) -> Option<&Scale> {
        let scales = self.scales.as_slice();
        if scales.len() > 1 { scales.first() } else { None }
    }

    /// The scale that takes everything the fine one does not.
    #[must_use]
    pub fn main_scale(&self) -> &Scale {
        let scales = self.scales.as_slice();
        // Scales are never empty.
        &scales[scales.len() - 1]
    }
}

/// Settings as they are kept.
pub(crate) struct SettingsRecord {
    pub(crate) revision: u64,
    pub(crate) settings: Settings,
}

impl Kept for SettingsRecord {
    fn read(value: &Value<'_>) -> Result<Self, Damage> {
        let settings = value.need("settings")?;
        let scales = match settings.field("scales")? {
            Some(scales) => {
                let each = scales.list()?.map(|scale| read_scale(&scale)).collect::<Result<_, _>>()?;
                Scales::new(each).or_else(|_| scales.damaged())?
            }
            None => Scales::default(),
        };
        Ok(Self {
            revision: value.need("revision")?.whole()?,
            settings: Settings {
                decimal_mark: settings.worded_field("decimal_mark")?,
                mass_unit: settings.worded_field("mass_unit")?.unwrap_or_default(),
                volume_unit: settings.worded_field("volume_unit")?.unwrap_or_default(),
                temperature_unit: if settings.field("fahrenheit")?.map_or(Ok(false), Value::flag)? {
                    TemperatureUnit::Fahrenheit
                } else {
                    TemperatureUnit::Celsius
                },
                scales,
                tolerance: settings.worded_field("tolerance")?.unwrap_or_else(usual_tolerance),
                cold_storage: settings.worded_field("cold_storage")?.unwrap_or_else(usual_cold),
                maker: settings.text_field("maker")?,
                example_shown: settings.field("example_shown")?.map_or(Ok(false), Value::flag)?,
            },
        })
    }

    fn write(&self, writer: &mut Writer) {
        let Settings {
            decimal_mark,
            mass_unit,
            volume_unit,
            temperature_unit,
            scales,
            tolerance,
            cold_storage,
            maker,
            example_shown,
        } = &self.settings;
        writer.field("revision").whole(self.revision);
        writer.field("settings").object(|writer| {
            writer.worded_field("decimal_mark", decimal_mark.as_ref());
            writer.field("mass_unit").worded(mass_unit);
            writer.field("volume_unit").worded(volume_unit);
            writer.field("fahrenheit").flag(*temperature_unit == TemperatureUnit::Fahrenheit);
            writer.field("scales").list(scales.as_slice(), |writer, scale| {
                writer.object(|writer| {
                    writer.field("name").text(&scale.name);
                    writer.field("step").worded(&scale.step);
                    writer.worded_field("below", scale.below.as_ref());
                });
            });
            writer.field("tolerance").worded(tolerance);
            writer.field("cold_storage").worded(cold_storage);
            writer.text_field("maker", maker);
            writer.field("example_shown").flag(*example_shown);
        });
    }
}

fn read_scale(value: &Value<'_>) -> Result<Scale, Damage> {
    Ok(Scale {
        name: value.need("name")?.text()?.to_owned(),
        step: value.need("step")?.worded()?,
        below: value.worded_field("below")?,
    })
}

/// The settings the page can change.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum SettingName {
    /// Mark between whole and fraction: `point`, `comma` or `browser`.
    DecimalMark,
    /// Unit of mass: `gram`, `ounce`, …
    MassUnit,
    /// Unit of volume: `millilitre`, …
    VolumeUnit,
    /// Unit of temperature: `celsius` or `fahrenheit`.
    TemperatureUnit,
    /// Step of the main scale.
    MainStep,
    /// Whether there is a fine scale: `yes` or `no`.
    FineScale,
    /// Step of the fine scale.
    FineStep,
    /// Mass under which the fine scale is used.
    FineBelow,
    /// Relative error a line may have.
    Tolerance,
}
