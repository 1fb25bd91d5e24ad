//! Acts on the maker's own materials.

use crate::contract::Answer;
use crate::messages::sentences;
use crate::rooms::formula::edit::{about, cut_name, made};
use crate::rooms::materials::command::MaterialField;
use crate::rooms::materials::command::MaterialsCommand;
use crate::session::Session;
use crate::session::history::Slot;
use std::rc::Rc;
use stillroom_core::number::read_plain;
use stillroom_core::{
    Amount, Class, Constituent, ConstituentId, Density, Makeup, Material, MaterialId, MaterialSource, Part, Percent,
    PhaseKind,
};
use stillroom_exchange::record::OwnMaterial;

/// Most parts of a composite.
const MOST_PARTS: usize = 100;

impl Session {
    pub(crate) fn act_on_materials(&mut self, command: MaterialsCommand) -> Answer {
        match command {
            MaterialsCommand::NewMaterial { composite, name } => self.new_material(composite, &name),
            MaterialsCommand::CopyMaterial { material } => self.copy_material(material),
            MaterialsCommand::OpenMaterial { material } => {
                self.open_material = self.materials.material(material).map(|material| material.id);
                Answer::default()
            }
            MaterialsCommand::CloseMaterial {} => {
                self.open_material = None;
                Answer::default()
            }
            MaterialsCommand::SetMaterialText { field, text } => self.set_material_text(field, &text),
            MaterialsCommand::SetMaterialClass { class } => {
                self.change_own("material.class", None, |own| {
                    own.material.class = class;
                    if let Some(constituent) = &mut own.constituent {
                        constituent.class = class;
                    }
                });
                Answer::default()
            }
            MaterialsCommand::SetMaterialPhase { kind: phase_kind } => {
                self.change_own("material.phase", None, |own| own.material.usual_phase = phase_kind);
                Answer::default()
            }
            MaterialsCommand::AddPart { material } => self.add_part(material),
            MaterialsCommand::SetPartAmount { part, text } => self.set_part_amount(part, &text),
            MaterialsCommand::RemovePart { part } => {
                self.change_own("part.remove", None, |own| {
                    if let Makeup::Composite(parts) = &mut own.material.makeup
                        && part < parts.len()
                    {
                        parts.remove(part);
                    }
                });
                Answer::default()
            }
            MaterialsCommand::DeleteMaterial { material } => self.delete_material(material),
            MaterialsCommand::SetHolding { material, field, text } => self.set_holding(material, field, &text),
            MaterialsCommand::ImportTable {} => self.import_table(),
        }
    }

    /// Number of the open material, if it is the maker's own.
    fn open_own(&self) -> Option<u64> {
        match self.open_material {
            Some(MaterialId::Own(number)) => Some(number),
            _ => None,
        }
    }

    fn change_own(&mut self, act: &'static str, field: Option<&str>, edit: impl FnOnce(&mut OwnMaterial)) {
        let Some(number) = self.open_own() else { return };
        let Some(before) = self.materials.own_material(number).map(Rc::clone) else { return };
        let mut after = (*before).clone();
        edit(&mut after);
        if after != *before {
            let slot = |own| vec![Slot::Material(number, Some(own))];
            self.commit(act, field, self.open, slot(before), slot(Rc::new(after)));
        }
    }

    fn put_material(&mut self, act: &'static str, own: OwnMaterial) -> Answer {
        let MaterialId::Own(number) = own.material.id else { return Answer::default() };
        let id = own.material.id;
        let after = vec![Slot::Material(number, Some(Rc::new(own)))];
        self.commit(act, None, self.open, vec![Slot::Material(number, None)], after);
        self.open_material = Some(id);
        made(&id)
    }

    fn new_material(&mut self, composite: bool, name: &str) -> Answer {
        let number = self.around.random();
        let name = name.trim().to_owned();
        let name = if name.is_empty() { sentences::name_of_new_material(composite).to_owned() } else { name };
        let constituent = Constituent { id: ConstituentId::Own(number), inci: String::new(), class: Class::Other };
        let makeup = if composite { Makeup::Composite(Vec::new()) } else { Makeup::Simple(constituent.id) };
        let own = OwnMaterial {
            material: Material {
                id: MaterialId::Own(number),
                name,
                class: Class::Other,
                usual_phase: PhaseKind::HeatedWater,
                density: None,
                makeup,
            },
            constituent: (!composite).then_some(constituent),
            note: String::new(),
        };
        self.put_material("material.new", own)
    }

    fn copy_material(&mut self, id: MaterialId) -> Answer {
        let Some(material) = self.materials.material(id) else { return Answer::default() };
        let number = self.around.random();
        let mut copy = material.clone();
        copy.id = MaterialId::Own(number);
        copy.name = cut_name(&crate::messages::common::name_of_copy(&copy.name));
        let mut constituent = None;
        if let Makeup::Simple(ConstituentId::Own(_)) = copy.makeup {
            let inci = match &material.makeup {
                Makeup::Simple(of) => self.materials.inci(*of).to_owned(),
                Makeup::Composite(_) => String::new(),
            };
            let own = ConstituentId::Own(number);
            copy.makeup = Makeup::Simple(own);
            constituent = Some(Constituent { id: own, inci, class: copy.class });
        }
        self.put_material("material.copy", OwnMaterial { material: copy, constituent, note: String::new() })
    }

    fn set_material_text(&mut self, which: MaterialField, text: &str) -> Answer {
        let field = match which {
            MaterialField::Name => "material.name",
            MaterialField::Inci => "material.inci",
            MaterialField::Density => "material.density",
            MaterialField::Note => "material.note",
        };
        let mut result = Ok(());
        match which {
            MaterialField::Name => self.change_own(field, Some(field), |own| text.clone_into(&mut own.material.name)),
            MaterialField::Note => self.change_own(field, Some(field), |own| text.clone_into(&mut own.note)),
            MaterialField::Inci => self.set_inci(text),
            MaterialField::Density => {
                let read = if text.trim().is_empty() {
                    Ok(None)
                } else {
                    let text = text.trim().trim_end_matches("g/mL").trim_end_matches("g/ml");
                    read_plain(text, self.mark(), Density::MINIMUM, Density::MAXIMUM)
                        .map(|value| Density::new(value).ok())
                };
                result = read.map(|density| self.change_own(field, Some(field), |own| own.material.density = density));
            }
        }
        about(field, result, self.mark())
    }

    /// Names the substance of a simple material: one the catalogue knows by that INCI name, or a new one.
    fn set_inci(&mut self, inci: &str) {
        let Some(number) = self.open_own() else { return };
        let known = self.materials.catalogue().constituents().find(|each| each.inci.eq_ignore_ascii_case(inci.trim()));
        let known = known.map(|constituent| (constituent.id, constituent.class));
        self.change_own("material.inci", Some("material.inci"), |own| {
            if let Makeup::Composite(_) = own.material.makeup {
                return;
            }
            if let Some((id, class)) = known {
                own.material.makeup = Makeup::Simple(id);
                own.constituent = None;
                if own.material.class == Class::Other {
                    own.material.class = class;
                }
            } else {
                let id = ConstituentId::Own(number);
                own.material.makeup = Makeup::Simple(id);
                own.constituent = Some(Constituent { id, inci: inci.to_owned(), class: own.material.class });
            }
        });
    }

    fn add_part(&mut self, material: MaterialId) -> Answer {
        if self.materials.material(material).is_none() {
            return Answer::default();
        }
        let mut position = None;
        self.change_own("part.add", None, |own| {
            if let Makeup::Composite(parts) = &mut own.material.makeup
                && parts.len() < MOST_PARTS
            {
                let amount = if parts.is_empty() { Amount::QuantumSatis } else { Amount::Percent(Percent::ZERO) };
                position = Some(parts.len());
                parts.push(Part { material, amount });
            }
        });
        if position.is_none() {
            self.notice("part.too-many", crate::messages::common::too_many_parts(&MOST_PARTS.to_string()), false);
        }
        position.map_or_else(Answer::default, |at| made(&at))
    }

    fn set_part_amount(&mut self, part: usize, text: &str) -> Answer {
        let field = format!("part:{part}");
        let result = self.read_percent(text).map(|amount| {
            self.change_own("part.amount", Some(&field), |own| {
                let Makeup::Composite(parts) = &mut own.material.makeup else { return };
                if amount == Amount::QuantumSatis {
                    // One part takes up the rest; another that did waits for its number.
                    for each in parts.iter_mut().filter(|each| each.amount == Amount::QuantumSatis) {
                        each.amount = Amount::Percent(Percent::ZERO);
                    }
                }
                if let Some(part) = parts.get_mut(part) {
                    part.amount = amount;
                }
            });
        });
        about(&field, result, self.mark())
    }

    fn delete_material(&mut self, id: MaterialId) -> Answer {
        let MaterialId::Own(number) = id else { return Answer::default() };
        let Some(own) = self.materials.own_material(number).map(Rc::clone) else { return Answer::default() };
        let name = own.material.name.clone();
        let users = self.users_of(id);
        let before = vec![Slot::Material(number, Some(own))];
        self.commit("material.delete", None, self.open, before, vec![Slot::Material(number, None)]);
        if self.open_material == Some(id) {
            self.open_material = None;
        }
        self.notice("material.deleted", crate::messages::common::material_deleted(users.len(), &name), true);
        Answer::default()
    }

    /// Names of the formulas and own composites that a material is weighed in.
    pub(crate) fn users_of(&self, id: MaterialId) -> Vec<String> {
        let formulas = self.shelf.values().filter(|record| record.formula.lines().any(|line| line.material == id));
        let composites = self.materials.own().filter(|(_, own)| match &own.material.makeup {
            Makeup::Composite(parts) => parts.iter().any(|part| part.material == id),
            Makeup::Simple(_) => false,
        });
        formulas
            .map(|record| record.formula.name.clone())
            .chain(composites.map(|(_, own)| own.material.name.clone()))
            .collect()
    }
}
