//! What a container holds, as its label says it.

use crate::messages::{common, label as says};
use crate::rooms::label::fields::Filled;
use crate::session::Session;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive as _;
use stillroom_core::batch_plan::BatchWay;
use stillroom_core::evaluation::Evaluation;
use stillroom_core::label::{Market, NetContents};
use stillroom_core::number::{with_unit, write_between};
use stillroom_core::unit::{MassUnit, VolumeUnit};
use stillroom_core::{Density, Formula};

/// What is in a container.
pub(crate) struct Held {
    /// As the label says it; empty where it is to be a mass and no density is known.
    pub(crate) text: String,
    /// In grams or millilitres, as the label says it.
    pub(crate) amount: NetContents,
    /// How the mass was come by, if it is one.
    pub(crate) how: String,
}

/// What is filled where nobody says how much: what the batch is planned for, without the part left empty; else what the
/// container holds.
pub(crate) fn usual_volume(formula: &Formula, filled: &Filled) -> Decimal {
    let plan = &formula.batch;
    if plan.way != BatchWay::Containers || !filled.text("container").is_empty() {
        return filled.usual_volume();
    }
    let full = Decimal::ONE_HUNDRED - plan.containers.headspace.value();
    plan.containers
        .volume
        .value()
        .checked_mul(full)
        .map_or_else(|| filled.usual_volume(), |it| down(it / Decimal::ONE_HUNDRED))
}

/// Rounded down, so that nothing is promised that is not there.
fn down(value: Decimal) -> Decimal {
    let decimals = u32::from(value < Decimal::ONE_HUNDRED);
    let ten = if decimals == 1 { Decimal::TEN } else { Decimal::ONE };
    ((value * ten).floor() / ten).normalize()
}

impl Session {
    pub(crate) fn held_by_container(&self, formula: &Formula, evaluation: &Evaluation, filled: &Filled) -> Held {
        let volume = filled.volume().unwrap_or_else(|| usual_volume(formula, filled));
        let is_us = filled.market() == Market::UnitedStates;
        let write = |value: Decimal, most: u32| write_between(value, 0, most, self.mark());
        let amount = |value: Decimal| NetContents(value.to_f64().unwrap_or(0.0));
        if !filled.by_mass() {
            let metric = with_unit(&write(volume, 1), common::unit_millilitre());
            let ounces = hundredths_down(volume, VolumeUnit::FluidOunceUs.millilitres());
            let text = if is_us { says::contents_fluid_ounces(&write(ounces, 2), &metric) } else { metric };
            return Held { text, amount: amount(volume), how: String::new() };
        }
        let measured = formula.batch.containers.density;
        let estimated = evaluation.density.map(|estimate| estimate.density);
        let Some(density) = measured.or(estimated) else {
            return Held { text: String::new(), amount: amount(volume), how: says::contents_no_density().to_owned() };
        };
        let grams = volume.checked_mul(density.value()).map_or(Decimal::ZERO, down);
        let metric = with_unit(&write(grams, 1), "g");
        let ounces = hundredths_down(grams, MassUnit::Ounce.grams());
        let text = if is_us { says::contents_ounces(&write(ounces, 2), &metric) } else { metric };
        Held { text, amount: amount(grams), how: self.how_mass(volume, density, measured.is_some()) }
    }

    fn how_mass(&self, volume: Decimal, density: Density, measured: bool) -> String {
        let volume = with_unit(&write_between(volume, 0, 1, self.mark()), common::unit_millilitre());
        let density = with_unit(
            &write_between(density.value().round_dp(3), 2, 3, self.mark()),
            common::unit_gram_per_millilitre(),
        );
        if measured { says::contents_measured(&volume, &density) } else { says::contents_reckoned(&volume, &density) }
    }
}

fn hundredths_down(value: Decimal, unit: Decimal) -> Decimal {
    let hundred = Decimal::ONE_HUNDRED;
    let ratio = value.checked_div(unit).unwrap_or_default();
    ratio.checked_mul(hundred).map_or(Decimal::ZERO, |it| it.floor() / hundred).normalize()
}
