//! The containers of a batch: how many become full, what can be got out of them, what does not go with their walls.

use crate::messages::{batches as says_batches, common, costs as says, sentences as sentences_common};
use crate::rooms::batches::view::RemarkView;
use crate::rooms::costs::kinds::{Filling, KindOf};
use crate::rooms::costs::sentences as sentences_costs;
use crate::rooms::costs::view::{CostSizeView, CostsView};
use crate::rooms::extracts::view::FigureView;
use crate::rooms::findings::sentences as sentences_findings;
use crate::session::Session;
use rust_decimal::{Decimal, RoundingStrategy};
use stillroom_core::batch_plan::Containers;
use stillroom_core::evaluation::Evaluation;
use stillroom_core::number::{with_unit, write_between};
use stillroom_core::packaging::{Walls, fill, misfits};
use stillroom_core::source::Citation;
use stillroom_core::{Class, Formula, Grams, MaterialSource, Millilitres, Percent};

/// Usual sizes of jars and bottles, in millilitres. *Source*: common practice.
const USUAL_SIZES: [i64; 6] = [15, 30, 50, 100, 200, 250];

impl Session {
    pub(crate) fn show_filling(
        &self,
        containers: &Containers,
        out: Grams,
        came: &str,
        filling: Option<&Filling>,
        kinds: &[KindOf],
        view: &mut CostsView,
    ) {
        view.filling.push(FigureView::worked_out(
            says::figure_out(),
            self.shown_mass(out),
            String::new(),
            came.to_owned(),
        ));
        let Some(filling) = filling else {
            view.said.push(RemarkView { tone: "caution", text: says::no_density().to_owned() });
            return;
        };
        let band = &filling.band;
        let density = |value: Decimal| {
            with_unit(&write_between(value.round_dp(3), 2, 3, self.mark()), common::unit_gram_per_millilitre())
        };
        let likely = density(band.likely.value());
        let how = if containers.density.is_some() {
            says::filled_measured(&likely)
        } else {
            says::filled_reckoned(&likely, &density(band.low.value()), &density(band.high.value()))
        };
        match (kinds, filling.shared.kinds.as_slice()) {
            ([one], [filled]) => {
                view.filling.push(FigureView::worked_out(
                    says::figure_full(),
                    says::full_containers(filled.count as usize, &self.volume(containers.volume)),
                    span(filled.fewest, filled.most),
                    how,
                ));
                let takes = says::one_takes(&self.shown_mass(filled.each));
                let left = self.shown_mass(filling.shared.left);
                view.filling.push(FigureView::worked_out(says::figure_left(), left, String::new(), takes));
                let stays = one.kind.stays;
                if !stays.is_zero() {
                    let share = with_unit(&write_between(stays.value(), 0, 2, self.mark()), "%");
                    let how = says::stays_inside(&share);
                    view.filling.push(FigureView::worked_out(
                        says::figure_gives(),
                        self.shown_mass(filled.gives),
                        String::new(),
                        how,
                    ));
                }
            }
            _ => self.show_shared(kinds, filling, how, view),
        }
        for size in USUAL_SIZES {
            let Ok(volume) = Millilitres::new(Decimal::from(size)) else { continue };
            let other = Containers { volume, ..*containers };
            let Ok(filled) = fill(out, &other, band, Percent::ZERO) else { continue };
            view.sizes.push(CostSizeView {
                size: self.volume(volume),
                count: says::size_filled(&filled.count.to_string(), &self.shown_mass(filled.left)),
                range: span(filled.fewest, filled.most),
            });
        }
    }

    /// What does not go with the walls of the containers.
    pub(crate) fn show_misfits(
        &self,
        formula: &Formula,
        evaluation: &Evaluation,
        kinds: &[KindOf],
        view: &mut CostsView,
    ) {
        let mut walls: Vec<(Walls, &str)> = Vec::new();
        for each in kinds {
            // Of several kinds of one wall the first is named.
            if let Some(of) = each.walls.filter(|of| !walls.iter().any(|(known, _)| known == of)) {
                walls.push((of, &each.name));
            }
        }
        if walls.is_empty() {
            return;
        }
        let contents = self.contents_of(formula, evaluation);
        let scents = [Class::EssentialOil, Class::Fragrance];
        let scent = contents.present.iter().filter(|each| scents.contains(&each.class)).map(|each| each.percent).sum();
        let ph = contents.ph().map(|band| (band.low(), band.high()));
        for (walls, name) in walls {
            for (misfit, citation) in misfits(walls, scent, ph, contents.is_dry()) {
                let source = match citation {
                    Citation::COMMON_PRACTICE => says_batches::common_practice().to_owned(),
                    citation => sentences_findings::citation(&citation),
                };
                let text = sentences_costs::misfit(misfit, &source);
                let text = if kinds.len() > 1 { says::misfit_of(name, &text) } else { text };
                view.misfits.push(RemarkView { tone: "caution", text });
            }
        }
        if view.misfits.is_empty() {
            view.misfits.push(RemarkView { tone: "note", text: says::misfit_none().to_owned() });
        }
    }

    /// A mass to a hundredth of a gram: what came out is no more certain.
    pub(crate) fn shown_mass(&self, mass: Grams) -> String {
        let rounded = mass.value().round_dp_with_strategy(2, RoundingStrategy::MidpointAwayFromZero);
        self.mass(Grams::new(rounded).unwrap_or(mass))
    }

    /// Materials by name, as a list.
    pub(crate) fn names_of(&self, materials: &[stillroom_core::MaterialId]) -> String {
        let mut names: Vec<String> = Vec::new();
        for id in materials {
            let name = self.materials.name(*id);
            if !names.contains(&name) {
                names.push(name);
            }
        }
        sentences_common::list(&names)
    }

    /// The layer a material goes into.
    pub(crate) fn layer_of_material(&self, material: stillroom_core::MaterialId) -> stillroom_core::Layer {
        self.materials.material(material).map_or(stillroom_core::Layer::Helpers, |it| it.class.layer())
    }
}

/// How many at least and at most, where that is not the same.
pub(crate) fn span(fewest: u32, most: u32) -> String {
    if fewest == most {
        return String::new();
    }
    says::from_to(&fewest.to_string(), &most.to_string())
}
