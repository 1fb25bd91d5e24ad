//! Acts on the maker's extracts and solutions.

use crate::contract::Answer;
use crate::messages::extracts as says;
use crate::rooms::extracts::brewing::{BLENDED, Fields, Takes, brew, fresh, read_day, rule};
use crate::rooms::extracts::command::ExtractsCommand;
use crate::rooms::extracts::offer::{Effect, plant_name};
use crate::rooms::extracts::sentences;
use crate::rooms::formula::edit::{about, cut_name, cut_text, made};
use crate::session::Session;
use crate::session::history::Slot;
use std::rc::Rc;
use stillroom_core::extract::{Liquid, Plan};
use stillroom_core::number::{read_mass, read_plain, read_temperature, read_volume};
use stillroom_core::{
    Amount, Class, Constituent, ConstituentId, Density, Formula, Grams, Makeup, Material, MaterialId, MaterialSource,
    Part, Percent, PhaseId, PhaseKind,
};
use stillroom_exchange::extract::{Extract, ExtractId, ExtractKind, ExtractRecord};
use stillroom_exchange::record::OwnMaterial;

/// Most batches of a blend.
const MOST_BLENDED: usize = 20;
/// Most things done to one extract.
const MOST_STEPS: usize = 100;

impl Session {
    pub(crate) fn act_on_extracts(&mut self, command: ExtractsCommand) -> Answer {
        match command {
            ExtractsCommand::LookAtExtracts { looking } => {
                self.in_sight.extracts = looking;
                if looking && self.open_extract.is_none() {
                    self.open_extract =
                        self.extracts.values().max_by_key(|record| record.changed_at).map(|record| record.id);
                }
                Answer::default()
            }
            ExtractsCommand::NewExtract { kind } => {
                let extract = fresh(kind, sentences::name_of_new(kind).to_owned(), self.around.today());
                self.put_extract("extract.new", extract)
            }
            ExtractsCommand::OpenExtract { extract } => {
                self.open_extract = Some(extract).filter(|id| self.extracts.contains_key(id));
                Answer::default()
            }
            ExtractsCommand::DeleteExtract { extract } => self.delete_extract(extract),
            ExtractsCommand::RestoreExtractExample {} => self.put_extract_example(),
            ExtractsCommand::SetExtract { field, text } => self.set_extract(&field, &text),
            ExtractsCommand::RemoveFromBlend { field } => {
                self.change_extract("extract.set", None, |extract| {
                    if field.starts_with(BLENDED) {
                        extract.values.remove(&field);
                    }
                });
                Answer::default()
            }
            ExtractsCommand::RemoveExtractStep { step } => {
                self.change_extract("extract.step", None, |extract| {
                    if step < extract.steps.len() {
                        extract.steps.remove(step);
                    }
                });
                Answer::default()
            }
            ExtractsCommand::TakeExtractOffer { offer } => self.take_offer(&offer),
        }
    }

    fn put_extract(&mut self, act: &'static str, extract: Extract) -> Answer {
        let id = ExtractId(self.around.random());
        let record = ExtractRecord { id, revision: 0, changed_at: self.around.now(), extract };
        let after = vec![Slot::Extract(id, Some(Rc::new(record)))];
        self.commit(act, None, self.open, vec![Slot::Extract(id, None)], after);
        self.open_extract = Some(id);
        made(&id)
    }

    fn delete_extract(&mut self, id: ExtractId) -> Answer {
        let Some(record) = self.extracts.get(&id).map(Rc::clone) else { return Answer::default() };
        let name = record.extract.name.clone();
        let before = vec![Slot::Extract(id, Some(record))];
        self.commit("extract.delete", None, self.open, before, vec![Slot::Extract(id, None)]);
        self.notice("extract.deleted", says::deleted(&name), true);
        Answer::default()
    }

    /// Changes the open extract as one act that can be undone.
    fn change_extract(&mut self, act: &'static str, field: Option<&str>, edit: impl FnOnce(&mut Extract)) {
        let Some((before, after)) = self.changed_extract(edit) else { return };
        self.commit(act, field, self.open, vec![before], vec![after]);
    }

    /// The open extract before and after a change; `None` where nothing changes.
    fn changed_extract(&self, edit: impl FnOnce(&mut Extract)) -> Option<(Slot, Slot)> {
        let before = self.open_extract.and_then(|id| self.extracts.get(&id)).map(Rc::clone)?;
        let mut after = (*before).clone();
        edit(&mut after.extract);
        if after.extract == before.extract {
            return None;
        }
        after.changed_at = self.around.now();
        let id = before.id;
        Some((Slot::Extract(id, Some(before)), Slot::Extract(id, Some(Rc::new(after)))))
    }

    fn set_extract(&mut self, field: &str, text: &str) -> Answer {
        let typed_in = format!("extract.{field}");
        if field == "name" {
            self.change_extract("extract.set", Some(&typed_in), |extract| text.clone_into(&mut extract.name));
            return Answer { field: Some(typed_in), ..Answer::default() };
        }
        let Some((takes, usual)) = rule(field) else { return Answer::default() };
        let mark = self.mark();
        let trimmed = text.trim();
        let may_be_empty = usual.is_empty() && trimmed.is_empty();
        let read =
            match takes {
                Takes::Mass | Takes::Volume | Takes::Number(..) | Takes::Temperature(..) if may_be_empty => {
                    Ok(String::new())
                }
                Takes::Mass => read_mass(text, mark, self.settings.mass_unit, None)
                    .map(|mass| mass.value().normalize().to_string()),
                Takes::Volume => read_volume(text, mark, self.settings.volume_unit)
                    .map(|volume| volume.value().normalize().to_string()),
                Takes::Number(minimum, maximum) => {
                    let text = trimmed.trim_end_matches("°Bx").trim_end();
                    read_plain(text, mark, minimum, maximum).map(|number| number.normalize().to_string())
                }
                Takes::Temperature(minimum, maximum) => {
                    read_temperature(text, mark, self.settings.temperature_unit, (minimum, maximum))
                        .map(|celsius| celsius.to_string())
                }
                Takes::Day if !trimmed.is_empty() && read_day(trimmed).is_none() => {
                    return Answer {
                        field: Some(typed_in),
                        error: Some(says::not_a_day(trimmed)),
                        code: Some("extract.not-a-day"),
                        made: None,
                    };
                }
                Takes::Choice(choices) if !choices.contains(&text) => return Answer::default(),
                Takes::Material if !trimmed.is_empty() && trimmed.parse::<MaterialId>().is_err() => {
                    return Answer::default();
                }
                Takes::Text => Ok(text.to_owned()),
                Takes::Day | Takes::Choice(_) | Takes::Material => Ok(trimmed.to_owned()),
            };
        let result = read.map(|value| self.put_value(field, &typed_in, value));
        about(&typed_in, result, mark)
    }

    fn put_value(&mut self, field: &str, typed_in: &str, value: String) {
        let blended = field.starts_with(BLENDED);
        let mut full = false;
        self.change_extract("extract.set", Some(typed_in), |extract| {
            // Where the step of a refractometer was never said, it follows the scale it is read in.
            if field == "optical" && !extract.values.contains_key("optical-step") && value == "index" {
                extract.values.insert("optical-step".to_owned(), "0.0005".to_owned());
            }
            if field == "plant" && !value.is_empty() {
                extract.values.remove("water-from");
                // Another plant, another substance that it gives.
                extract.values.remove("plant-material");
            }
            if blended {
                let chosen = extract.values.keys().filter(|key| key.starts_with(BLENDED)).count();
                full = chosen >= MOST_BLENDED && !extract.values.contains_key(field);
                if full {
                    return;
                }
            }
            if value.is_empty() && !blended && rule(field).is_some_and(|(_, usual)| usual.is_empty()) {
                extract.values.remove(field);
            } else {
                extract.values.insert(field.to_owned(), value);
            }
        });
        if full {
            self.notice(
                "extract.too-many-batches",
                crate::messages::common::too_many_parts(&MOST_BLENDED.to_string()),
                false,
            );
        }
    }

    // ---- taking an offer --------------------------------------------------------------------------------------

    fn take_offer(&mut self, offer: &str) -> Answer {
        let opened = |session: &Self| session.open_extract.and_then(|id| session.extracts.get(&id)).map(Rc::clone);
        let Some(record) = opened(self) else { return Answer::default() };
        // What is used is a material first: one act of the hand, and one that is taken back.
        if offer == "use" && self.formula().is_some() && self.shelved(&record.extract).is_none() {
            return self.shelve_and_use(&record);
        }
        match self.effect_of(&record, offer) {
            Some(Effect::Amounts(plan)) => {
                self.change_extract("extract.solve", None, |extract| fill_in(extract, &plan));
                Answer::default()
            }
            Some(Effect::Step(_)) if record.extract.steps.len() >= MOST_STEPS => {
                self.notice("extract.too-many-steps", says::too_many_steps(&MOST_STEPS.to_string()), false);
                Answer::default()
            }
            Some(Effect::Step(step)) => {
                self.change_extract("extract.step", None, |extract| {
                    extract.steps.push(step);
                    extract.values.remove("mass-now");
                });
                Answer::default()
            }
            Some(Effect::Blend(liquid)) => self.note_blend(&record.extract, liquid),
            Some(Effect::Shelve { parts, density }) => {
                let Shelving { number, name, before, after } = self.shelving(&record.extract, parts, density);
                self.commit("extract.shelve", None, self.open, before, after);
                self.notice("extract.shelved", says::shelved(&name), true);
                made(&MaterialId::Own(number))
            }
            Some(Effect::Use(material, percent)) => self.use_in_formula(material, percent),
            None => Answer::default(),
        }
    }

    fn note_blend(&mut self, extract: &Extract, liquid: Liquid) -> Answer {
        let mut blend = fresh(extract.kind, cut_name(&says::name_of_blend(&extract.name)), self.around.today());
        blend.blend = Some(liquid);
        for field in ["plant", "plant-name", "temperature", "purity"] {
            if let Some(value) = extract.values.get(field) {
                blend.values.insert(field.to_owned(), value.clone());
            }
        }
        self.put_extract("extract.blend", blend)
    }

    /// Puts the extract among the maker's own materials and a line of it into the open formula.
    fn shelve_and_use(&mut self, record: &ExtractRecord) -> Answer {
        let Some(Effect::Shelve { parts, density }) = self.effect_of(record, "shelve") else {
            return Answer::default();
        };
        let Ok(percent) = record.extract.percent("use-percent") else { return Answer::default() };
        let Some(formula) = self.open.and_then(|id| self.shelf.get(&id)).map(Rc::clone) else {
            return Answer::default();
        };
        let Some(phase) = phase_for(&formula.formula, Some(USUAL_PHASE)) else { return Answer::default() };
        let Shelving { number, name, mut before, mut after } = self.shelving(&record.extract, parts, density);
        let mut changed = (*formula).clone();
        let line = changed.formula.add_line(phase, MaterialId::Own(number), Amount::Percent(percent));
        changed.changed_at = self.around.now();
        before.push(Slot::Formula(formula.id, Some(Rc::clone(&formula))));
        after.push(Slot::Formula(formula.id, Some(Rc::new(changed))));
        self.commit("extract.use", None, self.open, before, after);
        self.notice("extract.used", says::added_to(&name, &formula.formula.name), true);
        line.map_or_else(Answer::default, |line| made(&line.0))
    }

    /// What puts the extract among the maker's own materials, or brings the one that is there up to date.
    fn shelving(
        &mut self,
        extract: &Extract,
        parts: Vec<(Option<MaterialId>, Percent)>,
        density: Option<Density>,
    ) -> Shelving {
        let own = |id: Option<MaterialId>| match id {
            Some(MaterialId::Own(number)) => Some(number),
            _ => None,
        };
        let there = own(extract.material("material")).filter(|number| self.materials.own_material(*number).is_some());
        let number = there.unwrap_or_else(|| self.around.random());
        let (mut before, mut after) = (Vec::new(), Vec::new());
        let mut solids = None;
        if parts.iter().any(|(id, _)| id.is_none()) {
            let there = own(extract.material("plant-material"));
            let there = there.filter(|number| self.materials.own_material(*number).is_some());
            let number = there.unwrap_or_else(|| self.around.random());
            solids = Some(MaterialId::Own(number));
            if there.is_none() {
                before.push(Slot::Material(number, None));
                after.push(Slot::Material(number, Some(Rc::new(plant_solids(number, extract)))));
            }
        }
        let part = |(id, percent): (Option<MaterialId>, Percent)| {
            id.or(solids).map(|material| Part { material, amount: Amount::Percent(percent) })
        };
        let parts: Vec<Part> = parts.into_iter().filter_map(part).collect();
        let name = cut_name(&sentences::name_on_shelf(&extract.name, extract.text("lot")));
        let shelved = Rc::new(OwnMaterial {
            material: Material {
                id: MaterialId::Own(number),
                name: name.clone(),
                class: if extract.kind == ExtractKind::Glycerite { Class::Extract } else { class_of(extract, self) },
                usual_phase: USUAL_PHASE,
                density,
                makeup: Makeup::Composite(parts),
            },
            constituent: None,
            note: cut_text(&self.note_for_shelf(extract)),
        });
        let on_shelf = self.materials.own_material(number).map(Rc::clone);
        before.push(Slot::Material(number, on_shelf));
        after.push(Slot::Material(number, Some(shelved)));
        let id = MaterialId::Own(number);
        let holding = self.materials.holding(id).map(Rc::clone);
        let mut held = holding.as_deref().cloned().unwrap_or_default();
        extract.text("lot").clone_into(&mut held.lot);
        held.expiry = Self::last_day_of(extract).unwrap_or(held.expiry);
        if extract.kind == ExtractKind::Glycerite {
            let mass = brew(extract).ok().and_then(|brew| brew.liquid.mass().ok());
            held.stock = mass.and_then(|mass| Grams::new(mass.value().round_dp(2)).ok()).or(held.stock);
        }
        before.push(Slot::Holding(id, holding));
        after.push(Slot::Holding(id, Some(Rc::new(held))));
        let changed = self.changed_extract(|extract| {
            extract.values.insert("material".to_owned(), MaterialId::Own(number).to_string());
            if let Some(solids) = solids {
                extract.values.insert("plant-material".to_owned(), solids.to_string());
            }
        });
        if let Some((was, is)) = changed {
            before.push(was);
            after.push(is);
        }
        Shelving { number, name, before, after }
    }

    fn note_for_shelf(&mut self, extract: &Extract) -> String {
        let made_on = read_day(extract.text("made-on"));
        let use_by = self.present_open_extract().keeping.map(|keeping| keeping.use_by).unwrap_or_default();
        sentences::note_on_shelf(made_on, use_by, extract.text("note"))
    }

    fn use_in_formula(&mut self, material: MaterialId, percent: Percent) -> Answer {
        let Some(formula) = self.formula() else { return Answer::default() };
        let name = formula.name.clone();
        let usual = self.materials.material(material).map(|material| material.usual_phase);
        let Some(phase) = phase_for(formula, usual) else { return Answer::default() };
        let mut line = None;
        self.change_formula("extract.use", None, |formula| {
            line = formula.add_line(phase, material, Amount::Percent(percent));
        });
        self.notice("extract.used", says::added_to(&self.materials.name(material), &name), true);
        line.map_or_else(Answer::default, |line| made(&line.0))
    }
}

/// What was drawn from a plant loses by heat what it was drawn for: it is added when the batch has cooled.
const USUAL_PHASE: PhaseKind = PhaseKind::CoolDown;

/// An extract about to stand among the maker's own materials.
struct Shelving {
    /// The material.
    number: u64,
    name: String,
    before: Vec<Slot>,
    after: Vec<Slot>,
}

/// The phase of a formula that a material goes into, by the one it usually does.
fn phase_for(formula: &Formula, usual: Option<PhaseKind>) -> Option<PhaseId> {
    let phases = &formula.phases;
    phases.iter().find(|phase| Some(phase.kind) == usual).or(phases.first()).map(|phase| phase.id)
}

/// Fills the amounts of a plan in, to a hundredth of a gram.
fn fill_in(extract: &mut Extract, plan: &Plan) {
    let solvent = plan.solvent.map(|added| added.mass);
    for (field, mass) in [
        ("plant-mass", Some(plan.plant.mass)),
        ("glycerin", Some(plan.glycerin)),
        ("added-water", Some(plan.added_water)),
        ("solvent-mass", solvent),
        ("evaporation", Some(plan.evaporation)),
    ] {
        match mass {
            Some(mass) => {
                let text = mass.value().round_dp(2).normalize().to_string();
                extract.values.insert(field.to_owned(), text);
            }
            None => drop(extract.values.remove(field)),
        }
    }
}

/// What the plant gave, as a material of its own: its INCI name is the maker's to say.
fn plant_solids(number: u64, extract: &Extract) -> OwnMaterial {
    let id = ConstituentId::Own(number);
    OwnMaterial {
        material: Material {
            id: MaterialId::Own(number),
            name: cut_name(&sentences::name_of_solids(&plant_name(extract))),
            class: Class::Extract,
            usual_phase: PhaseKind::CoolDown,
            density: None,
            makeup: Makeup::Simple(id),
        },
        constituent: Some(Constituent { id, inci: String::new(), class: Class::Extract }),
        note: String::new(),
    }
}

/// A solution is what its substance is; diluted alcohol is a solvent.
fn class_of(extract: &Extract, session: &Session) -> Class {
    let substance = extract.material("substance").and_then(|id| session.materials.material(id));
    substance.map_or(Class::Solvent, |material| material.class)
}
