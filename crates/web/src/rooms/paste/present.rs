//! A pasted recipe as the page shows it.

use crate::messages::{paste as says, sentences};
use crate::rooms::paste::edit::{Choice, Pasted, meaning_word};
use crate::rooms::paste::view::{
    RecipeChoiceView, RecipeColumnView, RecipeLineView, RecipeOtherView, RecipePhaseView, RecipeView,
};
use crate::session::Session;
use stillroom_catalogue::Confidence;
use stillroom_core::number::{write_between, write_fixed};
use stillroom_core::{Class, Layer, MaterialId, MaterialSource, Percent};
use stillroom_exchange::recipe::matching::Matched;
use stillroom_exchange::recipe::shares::{Doubt, Meaning};
use stillroom_exchange::recipe::{Column, ColumnFound, What};

/// Decimals of percents: recipes are weighed to hundredths.
const DECIMALS: u32 = 2;
const MOST_DECIMALS: u32 = 4;

impl Session {
    pub(super) fn present_recipe(&mut self) -> RecipeView {
        let pasted = std::mem::take(self.waiting.of::<Pasted>());
        let view = self.present_pasted(&pasted);
        *self.waiting.of() = pasted;
        view
    }

    fn present_pasted(&self, pasted: &Pasted) -> RecipeView {
        let mark = self.mark();
        let matched = &pasted.matched;
        // Materials that are still to be described stand for themselves meanwhile.
        let draft = self.draft(pasted, &|line| MaterialId::Own(line as u64));
        let balance = draft.formula.balance();
        let count = matched.lines.len();
        let is_open = |line: usize| pasted.material_of(line).is_none() && pasted.choice_of(line).is_none();
        let open = (0..count).filter(|line| is_open(*line)).count();
        let own = (0..count).filter(|line| pasted.material_of(*line).is_none()).count();
        let line_view = |at: usize| -> Option<RecipeLineView> {
            let line = matched.lines.get(at)?;
            let share = draft.lines.get(at).copied().flatten().and_then(|id| balance.share_of(id));
            let doubt = draft.weighed.doubts.get(at).copied().flatten();
            let has_percent = !matches!(doubt, Some(doubt) if !matches!(doubt, Doubt::Range | Doubt::ByDensity));
            let material = pasted.material_of(at);
            let chosen = match pasted.choice_of(at) {
                Some(Choice::Own) => "own".to_owned(),
                _ => material.map(|id| id.to_string()).unwrap_or_default(),
            };
            let class =
                material.and_then(|id| self.materials.material(id)).map_or(Class::Other, |material| material.class);
            let mut ids = line.recognised.materials.clone();
            if let Some(id) = material.filter(|id| !ids.contains(id)) {
                ids.push(id);
            }
            let choices = ids
                .into_iter()
                .map(|id| RecipeChoiceView { id: id.to_string(), name: self.materials.name(id) })
                .collect();
            let nearly = line.recognised.confidence == Confidence::Likely && pasted.choice_of(at).is_none();
            Some(RecipeLineView {
                key: at,
                raw: line.raw.clone(),
                written: line.name.clone(),
                name: material.map_or_else(String::new, |id| self.materials.name(id)),
                percent: share.filter(|_| has_percent).map_or_else(String::new, |share: Percent| {
                    write_between(share.value().round_dp(MOST_DECIMALS), DECIMALS, MOST_DECIMALS, mark)
                }),
                layer: layer_word(class.layer()),
                remark: doubt
                    .map_or_else(|| if nearly { says::nearly().to_owned() } else { String::new() }, doubt_text),
                choices,
                chosen,
            })
        };
        let phases = draft
            .formula
            .phases
            .iter()
            .map(|phase| {
                let plain = sentences::phase_name(phase.kind);
                let at = |id| draft.lines.iter().position(|line| *line == Some(id));
                let places = phase.lines.iter().filter_map(|line| at(line.id));
                let lines = places
                    .filter(|at| pasted.choice_of(*at).is_some() || pasted.material_of(*at).is_some())
                    .filter_map(line_view)
                    .collect();
                RecipePhaseView {
                    name: phase.name.clone(),
                    about: if phase.name.contains(plain) { String::new() } else { plain.to_owned() },
                    lines,
                }
            })
            .filter(|phase: &RecipePhaseView| !phase.lines.is_empty())
            .collect();
        let unit = self.settings.mass_unit;
        let size = draft.weighed.size.filter(|_| draft.weighed.meaning != Meaning::Parts);
        RecipeView {
            error: None,
            name: draft.formula.name.clone(),
            summary: if count == 0 { String::new() } else { says::found(count, &(count - own).to_string()) },
            to_choose: if open == 0 { String::new() } else { says::to_choose(open) },
            total: write_fixed(balance.total.value(), DECIMALS, mark),
            size: size.map_or_else(String::new, |size| {
                says::in_all(&write_between(unit.from_grams(size).round_dp(2), 0, 2, mark), unit.symbol())
            }),
            meaning: meaning_word(draft.weighed.meaning),
            has_bare: draft.weighed.has_bare,
            asked: (0..count).filter(|at| is_open(*at)).filter_map(line_view).collect(),
            phases,
            others: matched
                .others
                .iter()
                .filter(|entry| !matches!(entry.what, What::Rule))
                .map(|entry| RecipeOtherView { raw: entry.raw.clone(), taken_for: taken_for(&entry.what).to_owned() })
                .collect(),
            left_open: if own == 0 { String::new() } else { says::left_open(own) },
            ready: count > 0,
            columns: columns_of(matched),
            left_out: left_out(matched),
        }
    }
}

/// The columns that hold something; of a text without columns none.
fn columns_of(matched: &Matched) -> Vec<RecipeColumnView> {
    let columns = matched.columns.iter().enumerate().filter(|(_, column)| column.holds != Column::Empty);
    columns
        .map(|(place, column)| RecipeColumnView {
            place,
            name: name_of_column(place, column),
            sample: column.sample.clone(),
            holds: column.holds.word(),
        })
        .collect()
}

fn name_of_column(place: usize, column: &ColumnFound) -> String {
    if column.heading.is_empty() { says::column_number(&(place + 1).to_string()) } else { column.heading.clone() }
}

/// What of a table does not get into the formula, in a sentence for each kind.
fn left_out(matched: &Matched) -> Vec<String> {
    let named = |wanted: Column| -> Vec<String> {
        let columns = matched.columns.iter().enumerate().filter(|(_, column)| column.holds == wanted);
        columns.map(|(place, column)| name_of_column(place, column)).collect()
    };
    let mark = ", ";
    let mut sentences = Vec::new();
    let prices = named(Column::Price);
    if !prices.is_empty() {
        sentences.push(says::prices_left_out(&prices.join(mark)));
    }
    let others = named(Column::LeftOut);
    if !others.is_empty() {
        sentences.push(says::columns_left_out(&others.join(mark)));
    }
    // Of two measures of the same the percents count.
    let grams = named(Column::Grams);
    if !grams.is_empty() && !named(Column::Percent).is_empty() {
        sentences.push(says::grams_beside(&grams.join(mark)));
    }
    sentences
}

fn taken_for(what: &What) -> &'static str {
    match what {
        What::Title { .. } => says::taken_for_title(),
        What::Size(_) => says::taken_for_size(),
        What::Heading(_) => says::taken_for_heading(),
        What::Total => says::taken_for_total(),
        What::Step => says::taken_for_step(),
        What::Head => says::taken_for_head(),
        What::Rule | What::Note | What::Material(_) => says::taken_for_note(),
    }
}

fn doubt_text(doubt: Doubt) -> String {
    match doubt {
        Doubt::Missing => says::doubt_missing(),
        Doubt::NotRead => says::doubt_not_read(),
        Doubt::NotWeighable => says::doubt_not_weighable(),
        Doubt::NoDensity => says::doubt_no_density(),
        Doubt::ByDensity => says::doubt_by_density(),
        Doubt::Range => says::doubt_range(),
        Doubt::MassAmongPercents => says::doubt_mass_among_percents(),
        Doubt::PercentAmongMasses => says::doubt_percent_among_masses(),
        Doubt::Enough => says::doubt_enough(),
        Doubt::SecondRest => says::doubt_second_rest(),
        Doubt::TooLarge => says::doubt_too_large(),
    }
    .to_owned()
}

const fn layer_word(layer: Layer) -> &'static str {
    match layer {
        Layer::Water => "water",
        Layer::Humectants => "humectants",
        Layer::Thickeners => "thickeners",
        Layer::Oils => "oils",
        Layer::Solids => "solids",
        Layer::Emulsifiers => "emulsifiers",
        Layer::Surfactants => "surfactants",
        Layer::Actives => "actives",
        Layer::Preservatives => "preservatives",
        Layer::Fragrance => "fragrance",
        Layer::Minerals => "minerals",
        Layer::Helpers => "helpers",
    }
}
