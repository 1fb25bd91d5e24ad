//! Settings of this device.

use serde::{Deserialize, Serialize};
use stillroom_core::evaluation::{Bench, Tolerance};
use stillroom_core::number::DecimalMark;
use stillroom_core::unit::{MassUnit, VolumeUnit};
use stillroom_core::weigh_sheet::{Scale, Scales};
use tsify::Tsify;

/// How this maker reads, writes and weighs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Settings {
    /// Mark between whole and fraction; `None` follows the browser.
    #[serde(default)]
    pub decimal_mark: Option<DecimalMark>,
    /// Unit of mass a bare number is in.
    #[serde(default)]
    pub mass_unit: MassUnit,
    /// Unit of volume a bare number is in.
    #[serde(default)]
    pub volume_unit: VolumeUnit,
    /// Scales on the bench, finest first.
    #[serde(default)]
    pub scales: Scales,
    /// Relative error a line may have through rounding, in percent.
    #[serde(default = "usual_tolerance")]
    pub tolerance: stillroom_core::Percent,
    /// Whether the invented example was put on the shelf already.
    #[serde(default)]
    pub example_shown: bool,
}

fn usual_tolerance() -> stillroom_core::Percent {
    Tolerance::default().0
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            decimal_mark: None,
            mass_unit: MassUnit::default(),
            volume_unit: VolumeUnit::default(),
            scales: Scales::default(),
            tolerance: usual_tolerance(),
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
