//! What is to be said of a label: what is not certain, what is missing, which words make something else of the product.

use crate::messages::label as says;
use crate::messages::sentences::list;
use crate::messages::{Language, language};
use crate::rooms::batches::view::RemarkView;
use crate::rooms::findings::sentences as sentences_findings;
use crate::rooms::label::dates::Lasting;
use crate::rooms::label::fields::Filled;
use crate::rooms::label::sentences;
use crate::rooms::label::view::LabelAllergenView;
use crate::session::Session;
use stillroom_catalogue::knowledge::cite;
use stillroom_catalogue::reference::loaded_phrases;
use stillroom_core::checks::Contents;
use stillroom_core::checks::facts::Trait;
use stillroom_core::label::{
    Declaration, Declared, ForLabel, Loaded, Market, Name, NewAllergens, Stated, flag, is_asked_for,
};
use stillroom_core::{ConstituentId, Formula};

pub(crate) fn note(text: impl Into<String>) -> RemarkView {
    RemarkView { tone: "note", text: text.into() }
}

pub(crate) fn caution(text: impl Into<String>) -> RemarkView {
    RemarkView { tone: "caution", text: text.into() }
}

impl Session {
    fn inci_list(&self, ids: &[ConstituentId]) -> String {
        let names: Vec<&str> = ids.iter().map(|id| self.materials.inci(*id)).filter(|name| !name.is_empty()).collect();
        list(&names)
    }

    /// What of the list is not certain, and why; what is to be known of it.
    pub(crate) fn say_of_list(
        &self,
        contents: &Contents<'_>,
        reading: &ForLabel<'_>,
        declaration: &Declaration,
        market: Market,
    ) -> Vec<RemarkView> {
        let mut said = Vec::new();
        let formula = contents.formula;
        let name = |each: &Declared| self.declared_name(each, market);
        for (at, each) in declaration.names.iter().enumerate() {
            let next = declaration.names.get(at + 1);
            if let Some(next) = next.filter(|_| each.doubt.may_follow_next) {
                let why = self.loose_materials(formula, reading, &[each, next]);
                said.push(caution(says::doubt_order(&name(each), &name(next), &why)));
            }
            if each.doubt.may_be_in_other_group && matches!(each.name, Name::Own(_)) {
                let why = self.loose_materials(formula, reading, &[each]);
                said.push(caution(says::doubt_group(&name(each), &why)));
            }
        }
        let unnamed =
            contents.present.iter().filter(|each| each.percent > 0.0 && self.materials.inci(each.id).is_empty());
        let unnamed: Vec<String> = unnamed
            .flat_map(|each| each.lines().filter_map(|line| formula.line(line)))
            .map(|line| self.materials.name(line.material))
            .collect();
        if !unnamed.is_empty() {
            said.insert(0, RemarkView { tone: "stop", text: says::no_inci(&list(&unnamed)) });
        }
        let perhaps: Vec<String> = declaration.names.iter().filter(|each| each.doubt.perhaps).map(name).collect();
        if !perhaps.is_empty() {
            said.push(caution(says::doubt_allergens(&list(&perhaps))));
        }
        if !reading.scents_unknown.is_empty() && market.names_allergens() {
            said.push(caution(says::scents_unknown(&self.inci_list(&reading.scents_unknown))));
        }
        if !reading.nano_unknown.is_empty() {
            said.push(caution(says::nano_unknown(&self.inci_list(&reading.nano_unknown))));
        }
        if !reading.may_colour.is_empty() {
            said.push(note(says::may_colour(&self.inci_list(&reading.may_colour))));
        }
        let loose = self.all_loose_materials(formula, reading);
        if !loose.is_empty() {
            said.push(note(says::typical(&list(&loose))));
        }
        if contents.with(Trait::Caustic).next().is_some() {
            said.push(note(says::neutralised()));
        }
        if market == Market::UnitedStates {
            said.push(note(says::us_names()));
        }
        said
    }

    /// The bought composites that leave the amount of some names open.
    fn loose_materials(&self, formula: &Formula, reading: &ForLabel<'_>, of: &[&Declared]) -> String {
        let ours = reading.loose.iter().filter(|(id, _)| of.iter().any(|each| each.made_of.contains(id)));
        let lines = ours.flat_map(|(_, lines)| lines).filter_map(|line| formula.line(*line));
        let mut names: Vec<String> = lines.map(|line| self.materials.name(line.material)).collect();
        names.sort();
        names.dedup();
        list(&names)
    }

    fn all_loose_materials(&self, formula: &Formula, reading: &ForLabel<'_>) -> Vec<String> {
        let lines = reading.loose.iter().flat_map(|(_, lines)| lines).filter_map(|line| formula.line(*line));
        let mut names: Vec<String> = lines.map(|line| self.materials.name(line.material)).collect();
        names.sort();
        names.dedup();
        names
    }

    /// Every allergen in the product with what the label does about it; and what is above them.
    pub(crate) fn show_allergens(&self, reading: &ForLabel<'_>, market: Market) -> (Vec<LabelAllergenView>, String) {
        let percent = |number: f64| stillroom_core::number::with_unit(&self.significant(number, 2), "%");
        let mut shown: Vec<LabelAllergenView> = Vec::new();
        let mut is_new = false;
        for each in &reading.brought {
            let asked = is_asked_for(market, each);
            let named = asked && each.most > each.threshold;
            is_new |= named && each.allergen.is_of_2023;
            let fate = if !asked && each.most > each.threshold && market == Market::UnitedKingdom {
                says::allergen_not_in_uk()
            } else if !asked {
                says::allergen_not_asked()
            } else if !named {
                says::allergen_below()
            } else if each.typical <= each.threshold {
                says::allergen_perhaps()
            } else {
                says::allergen_named()
            };
            let amount = if (each.most - each.typical).abs() < 1e-12 {
                percent(each.typical)
            } else {
                says::allergen_amount(&percent(each.typical), &percent(each.most))
            };
            shown.push(LabelAllergenView { name: each.allergen.name.to_owned(), amount, fate: fate.to_owned(), named });
        }
        shown.sort_by_key(|each| !each.named);
        let threshold = reading.brought.first().map(|each| percent(each.threshold));
        let about = match (market, threshold) {
            (Market::UnitedStates, _) => says::allergens_us().to_owned(),
            (_, None) => says::allergens_none().to_owned(),
            (_, Some(threshold)) => {
                let mut about = vec![says::allergens_above(&threshold)];
                if market == Market::EuropeanUnion && is_new {
                    let today = self.around.today().parse().map(NewAllergens::on);
                    about.push(
                        match today {
                            Ok(NewAllergens::NotYet) => says::new_allergens_not_yet(),
                            Ok(NewAllergens::InEveryProduct) => says::new_allergens_every(),
                            _ => says::new_allergens_new(),
                        }
                        .to_owned(),
                    );
                }
                if market == Market::UnitedKingdom {
                    about.push(says::allergens_uk().to_owned());
                }
                about.join(" ")
            }
        };
        (shown, about)
    }
}

/// Sentences that the law asks for and that the maker left off.
pub(crate) fn left_off(stated: &[Stated], filled: &Filled) -> Vec<RemarkView> {
    let market = filled.market();
    let off = stated.iter().filter(|each| each.is_asked && filled.leaves_off(each.statement.code()));
    off.map(|each| {
        let source = sentences_findings::citation(&each.citation);
        caution(says::missing_sentence(sentences::statement(each.statement, market), &source))
    })
    .collect()
}

/// What is still missing on the label, and what no calculator can put there.
pub(crate) fn missing_on_label(filled: &Filled, lasting: &Lasting, contents: &str, function: &str) -> Vec<RemarkView> {
    let market = filled.market();
    let is_us = market == Market::UnitedStates;
    let mut missing = Vec::new();
    if filled.text("person").is_empty() || filled.text("address").is_empty() {
        missing.push(caution(match market {
            Market::EuropeanUnion => says::missing_person_eu(),
            Market::UnitedKingdom => says::missing_person_uk(),
            Market::UnitedStates => says::missing_person_us(),
        }));
    }
    if is_us && filled.text("contact").is_empty() {
        missing.push(caution(says::missing_contact()));
    }
    if !is_us && filled.text("country").is_empty() {
        missing.push(note(says::missing_country()));
    }
    if function.is_empty() {
        missing.push(note(says::missing_function()));
    }
    if contents.is_empty() {
        missing.push(caution(says::missing_contents()));
    }
    if filled.text("lot").is_empty() && lasting.lot.is_empty() {
        missing.push(caution(says::missing_lot()));
    }
    let has_date = !filled.text("before").is_empty() || !lasting.before().is_empty();
    let has_opening = filled.opening().is_some() || !lasting.opening().is_empty();
    if !has_date && !has_opening {
        missing.push(caution(says::missing_date()));
    }
    missing.push(note(match market {
        Market::EuropeanUnion => says::missing_assessment_eu(),
        Market::UnitedKingdom => says::missing_assessment_uk(),
        Market::UnitedStates => says::missing_assessment_us(),
    }));
    missing
}

/// Words on the label, and in the notes, that would make something else of the product.
pub(crate) fn loaded_wording(formula: &Formula, filled: &Filled, function: &str) -> Vec<RemarkView> {
    let tag = match language() {
        Language::English => "en",
        Language::German => "de",
        Language::French => "fr",
    };
    let rows: Vec<_> = loaded_phrases().iter().filter(|row| row.language == tag).collect();
    let phrases: Vec<Loaded<'_>> = rows.iter().map(|row| Loaded { phrase: row.phrase, kind: row.kind }).collect();
    let texts = [
        ("name", says::place_name(), formula.name.as_str(), true),
        ("function", says::place_function(), function, true),
        ("claims", says::place_claims(), filled.text("claims"), true),
        ("caution", says::place_caution(), filled.text("caution"), false),
        ("notes", says::place_notes(), formula.notes.as_str(), false),
    ];
    let mut said: Vec<RemarkView> = Vec::new();
    for (key, place, text, is_claim) in texts {
        for found in flag(text, &phrases) {
            // What a caution or a note says is no promise, and what is not printed claims nothing.
            let row = rows.get(found.place);
            let is_silent = row.is_some_and(|row| row.silent_in.split(' ').any(|place| place == key));
            if is_silent || (found.kind == "claim" && !is_claim) {
                continue;
            }
            let source = row.map(|row| sentences_findings::citation(&cite(&row.origin)));
            let text = sentences::wording(found.kind, &found.found, place, &source.unwrap_or_default());
            said.push(if found.kind == "claim" { note(text) } else { caution(text) });
        }
    }
    said
}
