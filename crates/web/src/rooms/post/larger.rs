//! What changes from the batch a post is written for to its large one: times, speeds, how much a vessel has to hold.

use crate::messages::post as says;
use crate::rooms::findings::sentences::citation;
use crate::rooms::post::block::{item, list, paragraph};
use crate::rooms::post::gather::Source;
use crate::rooms::post::view::{PostBlockView, PostItemView};
use crate::session::Session;
use rust_decimal::prelude::ToPrimitive;
use stillroom_core::chemistry::{Band, PhysicsError};
use stillroom_core::number::with_unit;
use stillroom_core::run::steps::{early_and_late, is_heated};
use stillroom_core::scale_up::{AGITATION, Bulk, HEAT_TRANSFER, cooling_time, heating_time, minimum_fill, mixing};
use stillroom_core::{Density, Formula, Grams, Line};

/// Power that heats, in watts: a round figure that a reader can scale to what there is.
const POWER: f64 = 1000.0;
/// Temperature of the room, in °C.
const ROOM: f64 = 20.0;
/// Temperature a batch is cooled to where its phases say of none, in °C: as warm as the hand. *Source*: common practice.
const WARM: f64 = 40.0;
/// Width of the head of a hand blender, in metres. *Source*: usual sizes, common practice.
const HEAD: f64 = 0.06;

impl Session {
    /// Estimates for the large batch; nothing where it is no larger, or too small or large to say anything.
    pub(crate) fn gather_larger(&self, source: &Source<'_>) -> Vec<PostBlockView> {
        let [_, from, to] = source.sizes;
        let formula = &source.record.formula;
        if to <= from {
            return Vec::new();
        }
        let measured = formula.batch.containers.density;
        let density = measured.or(source.evaluation.density.map(|estimate| estimate.density));
        let mut items: Vec<PostItemView> = Vec::new();
        if let Some(density) = density {
            items.extend(self.say_heating(source, density).unwrap_or_default());
        }
        items.extend(self.say_mixing(from, to).ok());
        match density {
            Some(density) => items.extend(self.say_fill(source, density).ok()),
            None => items.push(item(says::larger_fill_head(), says::larger_no_density())),
        }
        if items.is_empty() {
            return Vec::new();
        }
        vec![list(items), paragraph(says::larger_source(&citation(&HEAT_TRANSFER), &citation(&AGITATION)))]
    }

    /// Heating and cooling; nothing where nothing is heated.
    fn say_heating(&self, source: &Source<'_>, density: Density) -> Result<Vec<PostItemView>, PhysicsError> {
        let [_, from, to] = source.sizes;
        let formula = &source.record.formula;
        let shares = &source.evaluation.lines;
        let share_of = |line: &Line| {
            let share = shares.iter().find(|(share, _)| share.line == line.id);
            share.map_or(0.0, |(share, _)| share.percent.to_physics() / 100.0)
        };
        let heated = formula.phases.iter().filter(|phase| is_heated(phase.kind));
        let hottest = heated.clone().filter_map(|phase| phase.temperature?.value().to_f64()).fold(f64::NAN, f64::max);
        if hottest.is_nan() {
            return Ok(Vec::new());
        }
        let (share, heat) = self.heat_of(heated.flat_map(|phase| &phase.lines), &share_of);
        let (_, whole) = self.heat_of(formula.lines(), &share_of);
        let part = |batch: Grams| {
            let mass = batch.value().checked_mul(rust_decimal::Decimal::try_from(share).unwrap_or_default());
            let mass = mass.and_then(|mass| Grams::new(mass.round_dp(4)).ok()).unwrap_or(batch);
            Bulk { mass, specific_heat: heat, density }
        };
        let heating = |batch| heating_time(&part(batch), ROOM, hottest, POWER);
        let (batch, large) = (self.mass(from), self.mass(to));
        let [cold, hot, warm] = [ROOM, hottest, warm_enough(formula)].map(|degrees| self.degrees(degrees, 0));
        let mut items = vec![item(
            says::larger_heating_head(),
            says::larger_heating(
                &self.say_time(heating(from)?),
                &batch,
                &self.say_time(heating(to)?),
                &large,
                &cold,
                &hot,
            ),
        )];
        let bulk = |mass| Bulk { mass, specific_heat: whole, density };
        let cooling = |batch| cooling_time(&bulk(batch), hottest, warm_enough(formula), ROOM);
        let times = self.significant(mixing(from, to)?.length, 2);
        items.push(item(
            says::larger_cooling_head(),
            says::larger_cooling(
                &self.say_time(cooling(from)?),
                &batch,
                &self.say_time(cooling(to)?),
                &large,
                &hot,
                &warm,
                &cold,
                &times,
            ),
        ));
        Ok(items)
    }

    /// The share of some lines, and their mean specific heat.
    fn heat_of<'a>(&self, lines: impl Iterator<Item = &'a Line>, share_of: &dyn Fn(&Line) -> f64) -> (f64, f64) {
        let (mut whole, mut heat) = (0.0, 0.0);
        for line in lines {
            let share = share_of(line);
            whole += share;
            heat += share * self.specific_heat(line.material).0;
        }
        (whole, if whole > 0.0 { heat / whole } else { 0.0 })
    }

    fn say_mixing(&self, from: Grams, to: Grams) -> Result<PostItemView, PhysicsError> {
        let larger = mixing(from, to)?;
        let percent = |share: f64| with_unit(&self.significant(share * 100.0, 2), "%");
        let text = says::larger_blending(
            &self.significant(larger.length, 2),
            &percent(larger.turns_at_tip_speed),
            &percent(larger.turns_at_power),
        );
        Ok(item(says::larger_blending_head(), text))
    }

    fn say_fill(&self, source: &Source<'_>, density: Density) -> Result<PostItemView, PhysicsError> {
        let mass = source.sizes[2];
        // The width of a vessel says nothing of what is in it.
        let width = Bulk { mass, specific_heat: 1.0, density }.diameter()?;
        let least = minimum_fill(width, HEAD, density)?;
        let centimetres = |metres: f64| with_unit(&self.significant(metres * 100.0, 2), "cm");
        let grams = |grams: f64| with_unit(&self.significant(rough(grams), 2), "g");
        let text = says::larger_fill(
            &centimetres(width),
            &centimetres(HEAD),
            &grams(least.estimate),
            &grams(least.low),
            &grams(least.high),
        );
        Ok(item(says::larger_fill_head(), text))
    }

    /// A time in minutes with its band.
    fn say_time(&self, seconds: Band) -> String {
        let [estimate, low, high] =
            [seconds.estimate, seconds.low, seconds.high].map(|seconds| self.significant(rough(seconds / 60.0), 2));
        says::larger_time(&estimate, &low, &high)
    }
}

/// The temperature from which on the rest may be added.
fn warm_enough(formula: &Formula) -> f64 {
    let (_, late) = early_and_late(formula, &[]);
    let stated = late.iter().filter_map(|phase| phase.temperature?.value().to_f64());
    let least = stated.fold(f64::INFINITY, f64::min);
    if least.is_finite() { least } else { WARM }
}

/// Two figures of a number: its band says that more would be idle.
fn rough(number: f64) -> f64 {
    if number <= 0.0 {
        return number;
    }
    let step = 10.0_f64.powf(number.log10().floor() - 1.0);
    (number / step).round() * step
}
