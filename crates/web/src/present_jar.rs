//! What is in the jar, as layers and as constituents.

use crate::sentences;
use crate::session::Session;
use crate::view::{ConstituentView, JarView, LayerView, TrailView, Update, if_changed};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use std::rc::Rc;
use stillroom_core::composition::{Composition, Entry};
use stillroom_core::evaluation::Evaluation;
use stillroom_core::number::{align, decimals_of, write_fixed};
use stillroom_core::{ConstituentId, Layer, MaterialSource};

/// Layers from the bottom of the jar to its top.
const FROM_BOTTOM: [Layer; 12] = [
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
    pub(crate) fn present_jar(&mut self, evaluation: Evaluation, update: &mut Update) {
        let composition = &evaluation.composition;
        let mark = self.mark();
        let mut decimals = DECIMALS.0;
        for entry in &composition.entries {
            decimals = decimals_of(entry.percent.value()).clamp(decimals, DECIMALS.1);
            if decimals == DECIMALS.1 {
                break;
            }
        }
        let written_with =
            (decimals, evaluation.lines.iter().map(|(share, material)| (share.line, *material)).collect());
        if self.last.constituents_written_with != written_with {
            self.last.entries.clear();
            self.last.constituents_written_with = written_with;
        }
        // An entry that is what it was is written as it was; most are, and writing takes longer than working out.
        let mut constituents = Vec::with_capacity(composition.entries.len());
        for (at, entry) in composition.entries.iter().enumerate() {
            let before = self
                .last
                .position_of(at, entry.constituent)
                .and_then(|at| Some((self.last.entries.get(at)?, self.last.constituents.get(at)?)));
            let view = match before {
                Some((before, view)) if before == entry => Rc::clone(view),
                before => {
                    let view = Rc::new(self.present_constituent(entry, &evaluation, decimals, before));
                    if !self.last.constituents.contains(&view) {
                        update.constituents.push(Rc::clone(&view));
                    }
                    view
                }
            };
            constituents.push(view);
        }
        let layers = self.present_layers(composition);
        let jar = JarView {
            description: sentences::jar_description(&layers),
            layers,
            order: constituents.iter().map(|view| Rc::clone(&view.key)).collect(),
            unresolved: composition
                .unresolved
                .iter()
                .map(|(_, error)| sentences::composition_error(error, &|id| self.materials.name(id)))
                .collect(),
            density: sentences::density(evaluation.density.as_ref(), mark),
        };
        update.jar = if_changed(&mut self.last.jar, jar);
        self.last.constituents = constituents;
        self.last.entries = evaluation.composition.entries;
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

    /// One constituent. What a line brings of it as it did `before` is written as it was.
    fn present_constituent(
        &self,
        entry: &Entry,
        evaluation: &Evaluation,
        decimals: u32,
        before: Option<(&Entry, &Rc<ConstituentView>)>,
    ) -> ConstituentView {
        let mark = self.mark();
        let number = |value: Decimal| align(write_fixed(value, decimals, mark), decimals, decimals);
        let name = |line| {
            let material = evaluation.lines.iter().find(|(share, _)| share.line == line).map(|(_, material)| *material);
            material.map(|material| self.materials.name(material)).unwrap_or_default()
        };
        let trail_before = before.into_iter().flat_map(|(entry, view)| entry.trail.iter().zip(&view.trail));
        ConstituentView {
            key: before.map_or_else(|| key_of(entry.constituent).into(), |(_, view)| Rc::clone(&view.key)),
            inci: sentences::inci_or_unnamed(self.materials.inci(entry.constituent)).to_owned(),
            layer: self.layer_of(entry.constituent),
            percent: number(entry.percent.value()),
            trail: entry
                .trail
                .iter()
                .map(|each| {
                    let unchanged = trail_before.clone().find(|(before, _)| *before == each);
                    unchanged.map_or_else(
                        || {
                            let percent = number(each.percent.value());
                            Rc::new(TrailView { line: each.line.0, name: name(each.line), percent })
                        },
                        |(_, view)| Rc::clone(view),
                    )
                })
                .collect(),
        }
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
    use crate::command::{Command, MaterialField};
    use crate::keeping::{MemoryStore, Surroundings};
    use crate::session::Session;
    use crate::view::{ConstituentView, Update};
    use std::cell::Cell;
    use std::collections::BTreeMap;
    use std::rc::Rc;
    use stillroom_core::number::DecimalMark;
    use stillroom_core::{LineId, MaterialId};

    struct Counting(Cell<u64>);

    impl Surroundings for Counting {
        fn now(&self) -> u64 {
            1
        }
        fn minutes_ahead(&self) -> i64 {
            0
        }
        fn today(&self) -> String {
            String::new()
        }
        fn random(&self) -> u64 {
            self.0.set(self.0.get() + 1);
            self.0.get()
        }
    }

    type Shown = BTreeMap<Rc<str>, Rc<ConstituentView>>;

    fn take(shown: &mut Shown, update: &Update) {
        shown.extend(update.constituents.iter().map(|view| (Rc::clone(&view.key), Rc::clone(view))));
    }

    /// What a page has put together from changes is what a page that asks for everything is told.
    #[test]
    fn changes_add_up_to_everything() {
        let around = Counting(Cell::new(0));
        let mut session = Session::open(Box::new(MemoryStore::default()), Box::new(around), DecimalMark::Point);
        let mut shown = Shown::new();
        take(&mut shown, &session.show_everything());
        let lines: Vec<LineId> = session.formula().map(|f| f.lines().map(|line| line.id).collect()).unwrap_or_default();
        let made = session.apply(Command::NewMaterial { composite: true, name: "First".to_owned() }).answer;
        let material: MaterialId = made.and_then(|answer| answer.made).unwrap().parse().unwrap();
        let text = |text: &str| text.to_owned();
        let acts = [
            Command::OpenMaterial { material },
            Command::AddPart { material: MaterialId::Catalogue(2) },
            Command::ReplaceMaterial { line: lines[1], material: MaterialId::Catalogue(2) },
            // The same constituent from a line of another name.
            Command::ReplaceMaterial { line: lines[1], material },
            Command::SetMaterialText { field: MaterialField::Name, text: text("Second") },
            Command::SetAmount { line: lines[2], text: text("3.21") },
            Command::SetAmount { line: lines[2], text: text("3.2") },
            Command::StepLine { line: lines[1], down: true },
            Command::RemoveLine { line: lines[3] },
            Command::Undo {},
            Command::SetSetting { name: crate::settings::SettingName::DecimalMark, text: text("comma") },
        ];
        for act in acts {
            take(&mut shown, &session.apply(act.clone()));
            let order = session.show_everything();
            let mut told = Shown::new();
            take(&mut told, &order);
            for (key, view) in &told {
                assert_eq!(shown.get(key), Some(view), "after {act:?}");
            }
            shown = told;
        }
    }
}
