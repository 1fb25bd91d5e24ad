//! What is in the jar, as layers and as constituents.

use crate::messages::sentences;
use crate::rooms::jar::view::{ConstituentView, JarView, LastConstituents, LayerView, TrailView};
use crate::rooms::update::Update;
use crate::session::Session;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use std::rc::Rc;
use stillroom_core::composition::{Composition, Entry};
use stillroom_core::evaluation::Evaluation;
use stillroom_core::number::{align, decimals_of, write_fixed};
use stillroom_core::{ConstituentId, Layer, MaterialSource, Percent};

/// Layers from the bottom of the jar to its top.
pub(crate) const FROM_BOTTOM: [Layer; 12] = [
    Layer::Water,
    Layer::Humectants,
    Layer::Thickeners,
    Layer::Surfactants,
    Layer::Oils,
    Layer::Solids,
    Layer::Emulsifiers,
    Layer::Minerals,
    Layer::Actives,
    Layer::Fragrance,
    Layer::Preservatives,
    Layer::Helpers,
];
/// A layer is drawn at least this high, as a share of the jar, so that it can be seen and tapped.
const LOWEST_LAYER: f64 = 0.022;
/// Decimals of a constituent.
const DECIMALS: (u32, u32) = (2, 4);

impl Session {
    pub(crate) fn present_jar(&mut self, evaluation: &Rc<Evaluation>, update: &mut Update) {
        let composition = &evaluation.composition;
        let mark = self.mark();
        let mut decimals = DECIMALS.0;
        for entry in &composition.entries {
            decimals = decimals_of(entry.percent.value()).clamp(decimals, DECIMALS.1);
            if decimals == DECIMALS.1 {
                break;
            }
        }
        let mut last = std::mem::take(self.shown.of::<LastConstituents>());
        let written_with = (decimals, self.surroundings_changed);
        if last.written_with != written_with {
            last.of = None;
            last.written_with = written_with;
        }
        // A constituent whose percent is what it was is written as it was; writing takes longer than working out.
        let mut constituents = Vec::with_capacity(composition.entries.len());
        for (at, entry) in composition.entries.iter().enumerate() {
            let before = last
                .position_of(at, entry.constituent)
                .and_then(|at| Some((last.entries().get(at)?, last.views.get(at)?)));
            let view = match before {
                Some((before, view)) if before.percent == entry.percent => Rc::clone(view),
                before => {
                    let key = before.map(|(_, view)| Rc::clone(&view.key));
                    let view = Rc::new(self.present_constituent(entry, key, decimals));
                    if !last.views.contains(&view) {
                        update.constituents.push(Rc::clone(&view));
                    }
                    view
                }
            };
            constituents.push(view);
        }
        let keys = |views: &[Rc<ConstituentView>]| views.iter().map(|view| Rc::clone(&view.key)).collect::<Vec<_>>();
        let order = keys(&constituents);
        if self.shown.seen::<Option<JarView>>().is_none() || order != keys(&last.views) {
            update.constituent_order = Some(order);
        }
        let layers = self.present_layers(composition);
        let jar = JarView {
            description: sentences::jar_description(&layers),
            layers,
            unresolved: composition
                .unresolved
                .iter()
                .map(|(_, error)| sentences::composition_error(error, &|id| self.materials.name(id)))
                .collect(),
            density: sentences::density(evaluation.density.as_ref(), mark),
        };
        update.jar = self.shown.changed(jar);
        *self.shown.of() = LastConstituents { views: constituents, of: Some(Rc::clone(evaluation)), written_with };
    }

    /// The layers of a composition, top first, high enough to be seen.
    pub(crate) fn present_layers(&self, composition: &Composition) -> Vec<LayerView> {
        let mark = self.mark();
        let mut sums = [Decimal::ZERO; FROM_BOTTOM.len()];
        for entry in &composition.entries {
            let layer = self.layer_of(entry.constituent);
            if let Some(at) = FROM_BOTTOM.iter().position(|each| *each == layer) {
                sums[at] += entry.percent.value();
            }
        }
        let present: Vec<(Layer, Decimal)> =
            FROM_BOTTOM.into_iter().zip(sums).filter(|(_, sum)| *sum > Decimal::ZERO).rev().collect();
        // Thin layers are drawn thicker than they are, at the cost of the thick ones; the numbers beside them are true.
        let whole = present.iter().map(|(_, sum)| to_share(*sum)).sum::<f64>().max(1.0);
        let heights: Vec<f64> = present.iter().map(|(_, sum)| (to_share(*sum) / whole).max(LOWEST_LAYER)).collect();
        let filled = present.iter().map(|(_, sum)| to_share(*sum)).sum::<f64>() / whole;
        let shrink = if heights.is_empty() { 1.0 } else { filled / heights.iter().sum::<f64>() };
        let mut top = 1.0 - filled;
        present
            .into_iter()
            .zip(heights)
            .map(|((layer, sum), height)| {
                let height = height * shrink;
                let view = LayerView {
                    layer,
                    label: sentences::layer(layer).to_owned(),
                    percent: write_fixed(sum, DECIMALS.0, mark),
                    top,
                    height,
                };
                top += height;
                view
            })
            .collect()
    }

    fn present_constituent(&self, entry: &Entry, key: Option<Rc<str>>, decimals: u32) -> ConstituentView {
        ConstituentView {
            key: key.unwrap_or_else(|| key_of(entry.constituent).into()),
            inci: sentences::inci_or_unnamed(self.materials.inci(entry.constituent)).to_owned(),
            layer: self.layer_of(entry.constituent),
            percent: self.constituent_percent(entry.percent, decimals),
            trail: if self.hands_out_trails { self.present_trail(entry, decimals) } else { Vec::new() },
        }
    }

    fn present_trail(&self, entry: &Entry, decimals: u32) -> Vec<TrailView> {
        let percent = |percent| self.constituent_percent(percent, decimals);
        entry.trail.iter().map(|each| TrailView { line: each.line.0, percent: percent(each.percent) }).collect()
    }

    fn constituent_percent(&self, percent: Percent, decimals: u32) -> String {
        align(write_fixed(percent.value(), decimals, self.mark()), decimals, decimals)
    }

    /// Which lines bring a constituent of the jar that was handed out last, and how much, in the order of the lines.
    #[must_use]
    pub fn trail_of(&self, constituent: &str) -> Vec<TrailView> {
        let Some(last) = self.shown.seen::<LastConstituents>() else { return Vec::new() };
        let at = last.views.iter().position(|view| *view.key == *constituent);
        let entry = at.and_then(|at| last.entries().get(at));
        entry.map(|entry| self.present_trail(entry, last.written_with.0)).unwrap_or_default()
    }

    fn layer_of(&self, constituent: ConstituentId) -> Layer {
        self.materials.constituent(constituent).map_or(Layer::Helpers, |constituent| constituent.class.layer())
    }
}

fn to_share(percent: Decimal) -> f64 {
    percent.to_f64().unwrap_or(0.0) / 100.0
}

fn key_of(constituent: ConstituentId) -> String {
    match constituent {
        ConstituentId::Catalogue(number) => format!("c{number}"),
        ConstituentId::Own(number) => format!("o{number:x}"),
    }
}

#[cfg(test)]
mod tests {
    use crate::rooms::bench::command::BenchCommand;
    use crate::rooms::command::Command;
    use crate::rooms::command::DeskCommand;
    use crate::rooms::formula::command::FormulaCommand;
    use crate::rooms::jar::view::ConstituentView;
    use crate::rooms::materials::command::MaterialField;
    use crate::rooms::materials::command::MaterialsCommand;
    use crate::rooms::update::Update;
    use crate::session::Session;
    use crate::session::keeping::{MemoryStore, QuietRoom};
    use std::collections::BTreeMap;
    use std::rc::Rc;
    use stillroom_core::number::DecimalMark;
    use stillroom_core::{LineId, MaterialId};

    type Shown = BTreeMap<Rc<str>, Rc<ConstituentView>>;

    fn take(shown: &mut Shown, update: &Update) {
        shown.extend(update.constituents.iter().map(|view| (Rc::clone(&view.key), Rc::clone(view))));
    }

    /// A trail says what each line brings, and the lines make the constituent.
    #[test]
    fn a_trail_makes_its_constituent() {
        let mut session =
            Session::open(Box::new(MemoryStore::default()), Box::new(QuietRoom::at(1, 0)), DecimalMark::Point);
        let everything = session.show_everything();
        let hundredths = |text: &str| text.trim().replace('.', "").parse::<i64>().unwrap();
        for view in &everything.constituents {
            assert!(view.trail.is_empty(), "{} is handed out with its trail", view.inci);
            let trail = session.trail_of(&view.key);
            let sum: i64 = trail.iter().map(|each| hundredths(&each.percent)).sum();
            // Each line is rounded to its last digit, so the sum may be as many halves of a digit off.
            let off = (sum - hundredths(&view.percent)).abs();
            assert!(2 * off <= i64::try_from(trail.len()).unwrap() + 1, "{}: {trail:?}", view.inci);
            for each in trail {
                assert!(everything.lines.iter().any(|line| line.id == each.line), "no line {}", each.line);
            }
        }
        assert!(session.trail_of("c0").is_empty());
    }

    /// What a page has put together from changes is what a page that asks for everything is told.
    #[test]
    fn changes_add_up_to_everything() {
        let around = QuietRoom::at(1, 0);
        let mut session = Session::open(Box::new(MemoryStore::default()), Box::new(around), DecimalMark::Point);
        let mut shown = Shown::new();
        let first = session.show_everything();
        take(&mut shown, &first);
        let mut order = first.constituent_order.unwrap();
        let lines: Vec<LineId> = session.formula().map(|f| f.lines().map(|line| line.id).collect()).unwrap_or_default();
        let made = session.apply(MaterialsCommand::NewMaterial { composite: true, name: "First".to_owned() }).answer;
        let material: MaterialId = made.and_then(|answer| answer.made).unwrap().parse().unwrap();
        let text = |text: &str| text.to_owned();
        let acts: [Command; 11] = [
            MaterialsCommand::OpenMaterial { material }.into(),
            MaterialsCommand::AddPart { material: MaterialId::Catalogue(2) }.into(),
            FormulaCommand::ReplaceMaterial { line: lines[1], material: MaterialId::Catalogue(2) }.into(),
            // The same constituent from a line of another name.
            FormulaCommand::ReplaceMaterial { line: lines[1], material }.into(),
            MaterialsCommand::SetMaterialText { field: MaterialField::Name, text: text("Second") }.into(),
            FormulaCommand::SetAmount { line: lines[2], text: text("3.21") }.into(),
            FormulaCommand::SetAmount { line: lines[2], text: text("3.2") }.into(),
            FormulaCommand::StepLine { line: lines[1], down: true }.into(),
            FormulaCommand::RemoveLine { line: lines[3] }.into(),
            DeskCommand::Undo {}.into(),
            BenchCommand::SetSetting { name: crate::session::settings::SettingName::DecimalMark, text: text("comma") }
                .into(),
        ];
        for act in acts {
            let update = session.apply(act.clone());
            take(&mut shown, &update);
            order = update.constituent_order.unwrap_or(order);
            let trails: Vec<_> = order.iter().map(|key| session.trail_of(key)).collect();
            let everything = session.show_everything();
            assert_eq!(everything.constituent_order.as_ref(), Some(&order), "after {act:?}");
            let mut told = Shown::new();
            take(&mut told, &everything);
            for (key, trail) in order.iter().zip(trails) {
                assert_eq!(shown.get(key), told.get(key), "after {act:?}");
                assert_eq!(trail, session.trail_of(key), "after {act:?}");
                assert!(!trail.is_empty(), "nothing brings {key} after {act:?}");
            }
            shown = told;
        }
    }
}
