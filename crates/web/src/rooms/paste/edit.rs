//! Reading a pasted recipe, choosing what its lines mean, and making it a formula as one act.

use crate::contract::Answer;
use crate::messages::{paste as says, sentences};
use crate::rooms::formula::edit::{cut_name, cut_text, decimals_for, made};
use crate::rooms::paste::command::PasteCommand;
use crate::rooms::paste::view::{RecipeFileView, RecipeView};
use crate::session::Session;
use crate::session::history::Slot;
use std::collections::BTreeMap;
use std::rc::Rc;
use stillroom_catalogue::Recognised;
use stillroom_core::batch_plan::BatchWay;
use stillroom_core::{
    Amount, Celsius, Class, Constituent, ConstituentId, Formula, Grams, LineId, Makeup, Material, MaterialId,
    MaterialSource, Percent, PhaseKind, WrittenIn,
};
use stillroom_exchange::recipe::file::{FileError, Letters, text_of};
use stillroom_exchange::recipe::matching::{Matched, settle};
use stillroom_exchange::recipe::shares::{Doubt, Meaning, Weighable, Weighed, weigh};
use stillroom_exchange::recipe::{Column, RecipeError, What, read_columns};
use stillroom_exchange::record::{FormulaRecord, OwnMaterial};

/// Most materials of a recipe. A formula takes no more lines either.
const MOST_MATERIALS: usize = 400;
/// Degrees to which phases are heated, and under which the last is added, where a recipe does not say: common practice.
const HEATED: i64 = 70;
const COOLED: i64 = 40;

/// What a maker chose for a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Choice {
    /// A material.
    Material(MaterialId),
    /// One of their own, to be described.
    Own,
}

/// The recipe that was read last.
#[derive(Default)]
pub(super) struct Pasted {
    pub(super) matched: Matched,
    /// What was chosen for a name, however often the text is read anew.
    pub(super) chosen: BTreeMap<String, Choice>,
    meaning: Option<Meaning>,
    /// The text, so that it can be read anew when a column is said to hold something else.
    text: String,
    /// What columns are said to hold, and of which table.
    columns: BTreeMap<usize, Column>,
    columns_of: Vec<String>,
    /// What names were recognised as, and among which materials.
    known: BTreeMap<String, Recognised>,
    known_within: u64,
}

impl Pasted {
    /// The material of a line, where it is plain or chosen.
    pub(super) fn material_of(&self, line: usize) -> Option<MaterialId> {
        let line = self.matched.lines.get(line)?;
        match self.chosen.get(&line.name.to_lowercase()) {
            Some(Choice::Material(id)) => Some(*id),
            Some(Choice::Own) => None,
            None => line.decided(),
        }
    }

    pub(super) fn choice_of(&self, line: usize) -> Option<Choice> {
        self.matched.lines.get(line).and_then(|line| self.chosen.get(&line.name.to_lowercase())).copied()
    }
}

/// The formula to be, with the number of each line in it and what has to be looked at.
pub(super) struct Draft {
    pub(super) formula: Formula,
    /// The line of the formula for each line of the recipe.
    pub(super) lines: Vec<Option<LineId>>,
    pub(super) weighed: Weighed,
}

impl Session {
    pub(crate) fn act_on_paste(&mut self, command: &PasteCommand) -> Answer {
        match command {
            PasteCommand::MakeOfRecipe {} => self.make_of_recipe(),
        }
    }

    /// Reads a recipe; nothing is kept. `meaning` says what numbers without a unit are; empty where the recipe decides.
    pub fn read_recipe(&mut self, text: &str, meaning: &str) -> RecipeView {
        let mark = self.mark();
        let mut pasted = std::mem::take(self.waiting.of::<Pasted>());
        if pasted.known_within != self.surroundings_changed {
            pasted.known.clear();
            pasted.known_within = self.surroundings_changed;
        }
        pasted.meaning = match meaning {
            "percent" => Some(Meaning::Percent),
            "grams" => Some(Meaning::Grams),
            "parts" => Some(Meaning::Parts),
            _ => None,
        };
        let recipe = read_columns(text, mark, &BTreeMap::new()).and_then(|plain| {
            let headings: Vec<String> = plain.columns.iter().map(|column| column.heading.clone()).collect();
            if pasted.columns_of != headings {
                pasted.columns.clear();
                pasted.columns_of = headings;
            }
            if pasted.columns.is_empty() { Ok(plain) } else { read_columns(text, mark, &pasted.columns) }
        });
        text.clone_into(&mut pasted.text);
        let recipe = match recipe {
            Ok(recipe) => recipe,
            Err(error) => {
                pasted.matched = Matched::default();
                *self.waiting.of() = pasted;
                let text = match error {
                    RecipeError::TooLong { bytes } => says::too_long(&bytes.to_string()),
                    RecipeError::TooManyLines { lines } => says::too_many_lines(&lines.to_string()),
                };
                return RecipeView { error: Some(text), ..RecipeView::default() };
            }
        };
        let known = &mut pasted.known;
        pasted.matched = settle(recipe, mark, &mut |name| {
            known.entry(name.to_owned()).or_insert_with(|| self.materials.recognise(name)).clone()
        });
        pasted.matched.lines.truncate(MOST_MATERIALS);
        *self.waiting.of() = pasted;
        self.present_recipe()
    }

    /// Says what a column of the table holds: the word of a [`Column`]; anything else leaves it as it is found.
    pub fn set_recipe_column(&mut self, place: usize, holds: &str) -> RecipeView {
        let pasted = self.waiting.of::<Pasted>();
        match Column::with_word(holds) {
            Some(column) => pasted.columns.insert(place, column),
            None => pasted.columns.remove(&place),
        };
        let text = pasted.text.clone();
        let meaning = pasted.meaning.map_or("", meaning_word);
        self.read_recipe(&text, meaning)
    }

    /// Reads the text of a file; nothing is kept, and no recipe is read.
    #[must_use]
    pub fn read_recipe_file(&self, bytes: &[u8]) -> RecipeFileView {
        match text_of(bytes) {
            Ok(file) => RecipeFileView {
                text: Some(file.text),
                said: match file.letters {
                    Letters::Utf8 => String::new(),
                    Letters::Utf16 => says::file_utf16().to_owned(),
                    Letters::Latin1 => says::file_latin1().to_owned(),
                },
            },
            Err(error) => RecipeFileView {
                text: None,
                said: match error {
                    FileError::TooLarge { bytes } => says::file_too_large(&bytes.to_string()),
                    FileError::Packed => says::file_packed().to_owned(),
                    FileError::NoText => says::file_no_text().to_owned(),
                    FileError::Empty => says::file_empty().to_owned(),
                },
            },
        }
    }

    /// Says what a line means: a material, `own` for one to be described, nothing to have it open again.
    pub fn choose_in_recipe(&mut self, line: usize, material: &str) -> RecipeView {
        let pasted = self.waiting.of::<Pasted>();
        if let Some(name) = pasted.matched.lines.get(line).map(|line| line.name.to_lowercase()) {
            match (material, material.parse()) {
                ("own", _) => pasted.chosen.insert(name, Choice::Own),
                (_, Ok(id)) => pasted.chosen.insert(name, Choice::Material(id)),
                (_, Err(_)) => pasted.chosen.remove(&name),
            };
        }
        self.present_recipe()
    }

    /// The formula that the recipe makes, with materials of the maker's own where none is chosen: `own` numbers them.
    pub(super) fn draft(&self, pasted: &Pasted, own: &dyn Fn(usize) -> MaterialId) -> Draft {
        let matched = &pasted.matched;
        let materials: Vec<Option<MaterialId>> =
            (0..matched.lines.len()).map(|line| pasted.material_of(line)).collect();
        let of = |id: &Option<MaterialId>| id.and_then(|id| self.materials.material(id));
        let weighables: Vec<Weighable<'_>> = matched
            .lines
            .iter()
            .zip(&materials)
            .map(|(line, id)| Weighable {
                written: &line.amount,
                density: of(id).and_then(|material| material.density),
                is_water: of(id).is_some_and(|material| material.class == Class::Water),
            })
            .collect();
        let weighed = weigh(&weighables, pasted.meaning, matched.size);
        let usual = |id: MaterialId| {
            self.materials.material(id).map_or(PhaseKind::HeatedWater, |material| material.usual_phase)
        };
        let name = if matched.title.is_empty() { says::default_name() } else { &matched.title };
        let mut formula = Formula::with_name(cut_name(name));
        formula.written_in = weighed.basis;
        let mut lines = vec![None; matched.lines.len()];
        for planned in matched.phases(&materials, &usual) {
            let plain = sentences::phase_name(planned.kind);
            let letter_alone = planned.name.chars().count() <= 2
                || planned.name.split_whitespace().count() == 2 && planned.name.chars().rev().nth(1) == Some(' ');
            let name = if planned.name.is_empty() {
                plain.to_owned()
            } else if letter_alone {
                says::lettered_phase(&planned.name, plain)
            } else {
                planned.name.clone()
            };
            let degrees = match planned.kind {
                PhaseKind::HeatedWater | PhaseKind::HeatedOil => Some(HEATED),
                PhaseKind::CoolDown => Some(COOLED),
                PhaseKind::RoomTemperature => None,
            };
            let temperature = degrees.and_then(|degrees| Celsius::new(degrees.into()).ok());
            let phase = formula.add_phase(cut_name(&name), planned.kind, temperature);
            for at in planned.lines {
                let (Some(line), Some(amount)) = (matched.lines.get(at), weighed.amounts.get(at)) else { continue };
                let material = materials.get(at).copied().flatten().unwrap_or_else(|| own(at));
                let id = formula.add_line(phase, material, *amount);
                if let Some(place) = lines.get_mut(at) {
                    *place = id;
                }
                // What its number does not say stays beside it.
                let doubt = weighed.doubts.get(at).copied().flatten();
                let note = match doubt {
                    None | Some(Doubt::Missing) => line.remark.clone(),
                    Some(_) => says::as_written(&line.raw),
                };
                if let Some(line) = id.and_then(|id| formula.line_mut(id)) {
                    line.note = cut_text(&note);
                }
            }
        }
        formula.steps = matched.steps.iter().map(|step| cut_text(step)).collect();
        let notes = matched.others.iter().filter(|entry| entry.what == What::Note).map(|entry| entry.raw.as_str());
        formula.notes = cut_text(&notes.collect::<Vec<_>>().join("\n"));
        if weighed.basis == WrittenIn::Grams {
            let decimals = decimals_for(&formula.balance().shares);
            formula.write_in_percent(decimals);
            formula.written_in = WrittenIn::Percent;
            for line in formula.phases.iter_mut().flat_map(|phase| &mut phase.lines) {
                if matches!(line.amount, Amount::Grams(_)) {
                    line.amount = Amount::Percent(Percent::ZERO);
                }
            }
        }
        if let Some(size) = weighed.size.filter(|size| {
            *size != Grams::ZERO && pasted.meaning != Some(Meaning::Parts) && weighed.meaning != Meaning::Parts
        }) {
            formula.batch.mass = size;
            formula.batch.way = BatchWay::Mass;
        }
        Draft { formula, lines, weighed }
    }

    fn make_of_recipe(&mut self) -> Answer {
        let pasted = std::mem::take(self.waiting.of::<Pasted>());
        let count = pasted.matched.lines.len();
        if count == 0 {
            return Answer::default();
        }
        let numbers: Vec<u64> = (0..count).map(|_| self.around.random()).collect();
        let own_id = |line: usize| MaterialId::Own(numbers.get(line).copied().unwrap_or_default());
        let draft = self.draft(&pasted, &own_id);
        let (mut before, mut after) = (Vec::new(), Vec::new());
        let mut described = 0;
        for (at, line) in pasted.matched.lines.iter().enumerate() {
            let MaterialId::Own(number) = own_id(at) else { continue };
            if pasted.material_of(at).is_some() {
                continue;
            }
            let place = draft.lines.get(at).copied().flatten().and_then(|id| draft.formula.place_of(id));
            let kind = place
                .and_then(|place| draft.formula.phases.get(place.phase))
                .map_or(PhaseKind::HeatedWater, |phase| phase.kind);
            let constituent = Constituent { id: ConstituentId::Own(number), inci: String::new(), class: Class::Other };
            let material = Material {
                id: MaterialId::Own(number),
                name: cut_name(&line.name),
                class: Class::Other,
                usual_phase: kind,
                density: None,
                makeup: Makeup::Simple(constituent.id),
            };
            let own =
                OwnMaterial { material, constituent: Some(constituent), note: cut_text(&says::own_note(&line.raw)) };
            before.push(Slot::Material(number, None));
            after.push(Slot::Material(number, Some(Rc::new(own))));
            described += 1;
        }
        let id = self.fresh_formula_id();
        let name = draft.formula.name.clone();
        let record = FormulaRecord { id, revision: 0, changed_at: self.around.now(), formula: draft.formula };
        before.push(Slot::Formula(id, None));
        after.push(Slot::Formula(id, Some(Rc::new(record))));
        self.commit("paste.formula", None, Some(id), before, after);
        let text = if described == 0 { says::made(&name) } else { says::made_with_own(described, &name) };
        self.notice("recipe.made", text, true);
        made(&id)
    }
}

pub(super) const fn meaning_word(meaning: Meaning) -> &'static str {
    match meaning {
        Meaning::Percent => "percent",
        Meaning::Grams => "grams",
        Meaning::Parts => "parts",
    }
}
