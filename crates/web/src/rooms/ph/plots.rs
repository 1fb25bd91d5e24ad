//! Pictures of the pH: over what is added, the forms of an acid, what acts of each preservative.

use crate::messages::ph as says;
use crate::rooms::extracts::view::ChoiceView;
use crate::rooms::findings::present::{share_of, tick_step};
use crate::rooms::findings::view::TickView;
use crate::rooms::ph::edit::PhDesk;
use crate::rooms::ph::offer::{choice, key_of};
use crate::rooms::ph::view::{PhFieldView, PlotBand, PlotCurve, PlotLine, PlotView};
use crate::session::Session;
use rust_decimal::Decimal;
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};
use stillroom_core::checks::Contents;
use stillroom_core::checks::acidity::curves::{acts_over_ph, ph_over_added, speciation};
use stillroom_core::checks::acidity::setting;
use stillroom_core::composition::Makeups;
use stillroom_core::{ConstituentId, Percent};

/// How much further than what reaches the target a curve is drawn.
const BEYOND: f64 = 2.0;
/// Percent of the product a curve is drawn to where nothing says how much.
const USUAL_MOST: f64 = 0.5;
/// Times of what is enough to which a picture of preservatives is drawn.
const MOST_TIMES: f64 = 2.0;
/// Points named in words.
const SAID: usize = 5;

/// From where to where an axis runs.
#[derive(Clone, Copy)]
struct Scale {
    from: f64,
    to: f64,
}

impl Scale {
    fn share(self, value: f64) -> f64 {
        share_of(value, self.from, self.to)
    }
}

impl Session {
    pub(crate) fn show_plots(
        &self,
        contents: &Contents<'_>,
        makeups: &mut Makeups,
        desk: &PhDesk,
    ) -> (Vec<PlotView>, Option<PhFieldView>) {
        let species = self.species(contents, desk);
        let acid = species.as_ref().and_then(|(acid, _)| self.plot_species(contents, *acid));
        let plots = [self.plot_added(contents, makeups, desk), acid, self.plot_acts(contents)];
        (plots.into_iter().flatten().collect(), species.map(|(_, field)| field))
    }

    fn ticks(&self, scale: Scale) -> Vec<TickView> {
        let step = tick_step(scale.from, scale.to);
        let first = (scale.from / step).ceil();
        let decimals = if step >= 1.0 {
            0
        } else if step >= 0.1 {
            1
        } else {
            3
        };
        (0..=8_u8)
            .map(|number| (first + f64::from(number)) * step)
            .take_while(|at| *at <= scale.to + step * 1e-6)
            .map(|at| TickView { at: scale.share(at), text: self.rounded(at, decimals) })
            .collect()
    }

    /// The pH over what is added, with the target, the windows of the preservatives and what was measured.
    fn plot_added(&self, contents: &Contents<'_>, makeups: &mut Makeups, desk: &PhDesk) -> Option<PlotView> {
        let material = self.adjuster_of(contents, desk)?;
        let target =
            desk.number("ph.target", self.mark()).or_else(|| contents.formula.target_ph.map(stillroom_core::Ph::value));
        let target = target.and_then(|target| target.to_f64()).unwrap_or(5.0);
        let more = setting::set(contents, makeups, material, target)
            .ok()
            .map(|setting| setting.percent.to_physics() - setting.before.to_physics())
            .filter(|more| *more > 0.0);
        let most = more.map_or(USUAL_MOST, |more| more * BEYOND);
        let most = Percent::new(Decimal::from_f64(most)?.round_dp(6)).ok()?;
        let curve = ph_over_added(contents, makeups, material, most).ok()?;
        // By mass of the solution in the batch where there is a batch, else in percent of the product.
        let strength = if self.is_simple(material) { self.strength_of_dose(desk) } else { Percent::HUNDRED };
        let unit = self.settings.mass_unit;
        let batch = contents.evaluation.batch.as_ref().ok().and_then(|batch| unit.from_grams(batch.mass).to_f64());
        let scale = batch.map_or(1.0, |batch| batch / strength.to_physics());
        let across = Scale { from: 0.0, to: curve.last()?.0 * scale };
        let measured = contents.formula.measured_ph.map(stillroom_core::Ph::to_physics);
        let heights = curve.iter().map(|(_, ph)| *ph).chain([target]).chain(measured);
        let low = heights.clone().fold(f64::INFINITY, f64::min);
        let high = heights.fold(f64::NEG_INFINITY, f64::max);
        let up = Scale { from: (low - 0.3).floor(), to: (high + 0.3).ceil() };
        let windows = self.windows(contents);
        let bands = windows.iter().map(|(label, low, high)| PlotBand {
            level: true,
            from: up.share(*low),
            to: up.share(*high),
            label: label.clone(),
        });
        let mut lines =
            vec![PlotLine { level: true, at: up.share(target), label: says::plot_target(&self.ph(target)) }];
        let mut points = Vec::new();
        if let Some(measured) = measured {
            lines.push(PlotLine {
                level: true,
                at: up.share(measured),
                label: says::plot_measured(&self.ph(measured)),
            });
            points.push((0.0, up.share(measured)));
        }
        let title = says::plot_added(&self.materials.name(material));
        let unit = if batch.is_some() { unit.symbol() } else { "%" };
        let label = |added: f64| format!("{}\u{a0}{unit}", self.significant(added * scale, 2));
        let said = every(&curve, SAID).map(|(added, ph)| says::plot_point(&label(*added), &self.ph(*ph)));
        let mut said: Vec<String> = said.collect();
        said.extend(lines.iter().map(|line| line.label.clone()));
        said.extend(windows.iter().map(|(label, ..)| label.clone()));
        Some(PlotView {
            plot: "added",
            description: says::plot_said(&title, &said.join("; ")),
            title,
            across: (if batch.is_some() { says::plot_added_across() } else { says::plot_added_percent() }).to_owned(),
            up: says::plot_ph().to_owned(),
            across_ticks: self.ticks(across),
            up_ticks: self.ticks(up),
            curves: vec![PlotCurve {
                label: String::new(),
                points: curve.iter().map(|(added, ph)| (across.share(added * scale), up.share(*ph))).collect(),
            }],
            bands: bands.collect(),
            lines,
            points,
        })
    }

    /// The windows of the preservatives in words, with their ends.
    fn windows(&self, contents: &Contents<'_>) -> Vec<(String, f64, f64)> {
        let curves = acts_over_ph(contents).into_iter();
        let named = curves.filter_map(|each| {
            let window = each.window?;
            let label =
                says::plot_window(self.materials.inci(each.substance), &self.ph(window.low), &self.ph(window.high));
            Some((label, window.low, window.high))
        });
        named.collect()
    }

    /// Which acid's forms are drawn, and the choice among those in the formula.
    fn species(&self, contents: &Contents<'_>, desk: &PhDesk) -> Option<(ConstituentId, PhFieldView)> {
        let mut acids: Vec<ConstituentId> = Vec::new();
        for each in &contents.present {
            if let Some(found) = speciation(contents, each.id)
                && !acids.contains(&found.acid)
            {
                acids.push(found.acid);
            }
        }
        let chosen = desk.chosen("ph.speciation");
        let acid = acids.iter().find(|id| Some(key_of(**id).as_str()) == chosen).or(acids.first()).copied()?;
        let choices =
            acids.iter().map(|id| ChoiceView { key: key_of(*id), label: self.materials.inci(*id).to_owned() });
        Some((acid, choice("ph.speciation", says::field_speciation(), Some(key_of(acid)), choices.collect())))
    }

    fn plot_species(&self, contents: &Contents<'_>, acid: ConstituentId) -> Option<PlotView> {
        let found = speciation(contents, acid)?;
        let (across, up) = (Scale { from: 0.0, to: 14.0 }, Scale { from: 0.0, to: 100.0 });
        let name = |lost: usize| match lost {
            0 => says::plot_form_whole().to_owned(),
            lost => says::plot_form_lost(&lost.to_string()),
        };
        let curves: Vec<PlotCurve> = found
            .forms
            .iter()
            .enumerate()
            .map(|(lost, form)| PlotCurve {
                label: name(lost),
                points: form.iter().map(|(ph, share)| (across.share(*ph), *share)).collect(),
            })
            .collect();
        let lines = self.line_at(found.ph, across);
        let title = says::plot_species(self.materials.inci(found.acid));
        let mut said: Vec<String> = lines.iter().map(|line: &PlotLine| line.label.clone()).collect();
        let at = found.ph.unwrap_or(7.0);
        for (lost, form) in found.forms.iter().enumerate() {
            let nearest = form.iter().min_by(|(one, _), (other, _)| (one - at).abs().total_cmp(&(other - at).abs()));
            if let Some((_, share)) = nearest {
                let share = format!("{}\u{a0}%", self.significant(share * 100.0, 2));
                said.push(says::plot_point(&name(lost), &share));
            }
        }
        Some(PlotView {
            plot: "species",
            description: says::plot_said(&title, &said.join("; ")),
            title,
            across: says::plot_ph().to_owned(),
            up: says::plot_share_up().to_owned(),
            across_ticks: self.ticks(across),
            up_ticks: self.ticks(up),
            curves,
            lines,
            ..PlotView::default()
        })
    }

    fn line_at(&self, ph: Option<f64>, across: Scale) -> Vec<PlotLine> {
        let line = |ph: f64| PlotLine { level: false, at: across.share(ph), label: says::plot_now(&self.ph(ph)) };
        ph.map(line).into_iter().collect()
    }

    fn plot_acts(&self, contents: &Contents<'_>) -> Option<PlotView> {
        let found = acts_over_ph(contents);
        let (across, up) = (Scale { from: 2.0, to: 10.0 }, Scale { from: 0.0, to: MOST_TIMES });
        if found.is_empty() {
            return None;
        }
        let now = contents.ph().map(|ph| ph.value);
        let mut lines = self.line_at(now, across);
        lines.push(PlotLine { level: true, at: up.share(1.0), label: says::plot_enough().to_owned() });
        let title = says::plot_acts().to_owned();
        let mut said: Vec<String> = lines.iter().take(usize::from(now.is_some())).map(|it| it.label.clone()).collect();
        let mut curves = Vec::new();
        let mut bands = Vec::new();
        for each in &found {
            let name = self.materials.inci(each.substance);
            let at = now.unwrap_or(5.0);
            let here = each.reaches.iter().min_by(|(a, _), (b, _)| (a - at).abs().total_cmp(&(b - at).abs()));
            if let Some((_, reach)) = here {
                let text = format!("{} {}", self.significant(*reach, 2), says::plot_acts_up());
                said.push(says::plot_point(name, &text));
            }
            if let Some(window) = each.window {
                bands.push(PlotBand {
                    level: false,
                    from: across.share(window.low),
                    to: across.share(window.high),
                    label: says::plot_window(name, &self.ph(window.low), &self.ph(window.high)),
                });
            }
            curves.push(PlotCurve {
                label: name.to_owned(),
                points: each.reaches.iter().map(|(ph, reach)| (across.share(*ph), up.share(*reach))).collect(),
            });
        }
        said.extend(bands.iter().map(|band| band.label.clone()));
        Some(PlotView {
            plot: "acts",
            description: says::plot_said(&title, &said.join("; ")),
            title,
            across: says::plot_ph().to_owned(),
            up: says::plot_acts_up().to_owned(),
            across_ticks: self.ticks(across),
            up_ticks: self.ticks(up),
            curves,
            bands,
            lines,
            points: Vec::new(),
        })
    }
}

/// So many of the points, evenly, with the first and the last.
fn every<T>(points: &[T], count: usize) -> impl Iterator<Item = &T> {
    let step = (points.len().saturating_sub(1) / (count - 1)).max(1);
    points.iter().step_by(step)
}
