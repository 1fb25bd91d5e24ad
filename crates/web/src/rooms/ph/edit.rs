//! Acts on the pH: what is filled in, what is put into the formula.

use crate::contract::Answer;
use crate::lazy::lazy;
use crate::messages::bench;
use crate::messages::{ph as says, sentences};
use crate::rooms::formula::edit::about;
use crate::rooms::ph::command::PhCommand;
use crate::session::Session;
use litemap::LiteMap;
use rust_decimal::Decimal;
use std::rc::Rc;
use stillroom_core::evaluation::Evaluation;
use stillroom_core::number::read_plain;
use stillroom_core::{FormulaId, Makeup, MaterialId, MaterialSource, Ph};

/// What was filled in, of one formula.
#[derive(Debug, Default, Clone)]
pub(crate) struct PhDesk {
    /// Whether the page shows the pH.
    pub(crate) looking: bool,
    /// Whether what is shown has not followed the formula yet.
    pub(crate) behind: bool,
    of: Option<FormulaId>,
    /// What was typed or chosen, by field. Only what was understood is in it.
    chosen: LiteMap<String, String>,
}

impl PhDesk {
    /// What a field holds, if anything was filled in.
    pub(crate) fn chosen(&self, field: &str) -> Option<&str> {
        self.chosen.get(field).map(String::as_str)
    }

    /// A number that was filled in.
    pub(crate) fn number(&self, field: &str, mark: stillroom_core::number::DecimalMark) -> Option<Decimal> {
        let (least, most) = bounds_of(field)?;
        read_plain(self.chosen(field)?.trim(), mark, least, most).ok()
    }
}

/// What a field that is typed takes; `None` for a choice.
fn bounds_of(field: &str) -> Option<(Decimal, Decimal)> {
    Some(match field {
        "ph.target" => (Ph::MINIMUM, Ph::MAXIMUM),
        "ph.strength" | "ph.degree" => (Decimal::new(1, 3), Decimal::ONE_HUNDRED),
        "ph.capacity" => (Decimal::new(1, 6), Decimal::ONE),
        _ => return None,
    })
}

/// Choices there are.
const CHOICES: [&str; 6] = ["ph.material", "ph.acid", "ph.setter", "ph.neutralised", "ph.base", "ph.speciation"];

impl Session {
    /// What is filled in for the open formula.
    pub(crate) fn ph_desk(&mut self) -> PhDesk {
        let open = self.open;
        let desk = self.waiting.of::<PhDesk>();
        if desk.of != open {
            *desk = PhDesk { looking: desk.looking, behind: desk.behind, of: open, chosen: LiteMap::new() };
        }
        desk.clone()
    }

    pub(crate) fn act_on_ph(&mut self, command: PhCommand) -> Answer {
        match command {
            PhCommand::LookAtPh { looking } => {
                self.waiting.of::<PhDesk>().looking = looking;
                Answer::default()
            }
            PhCommand::SetPhField { field, text } => self.set_ph_field(field, text),
            PhCommand::TakePhOffer { offer, text } => {
                self.take_ph_offer(&offer, &text);
                Answer::default()
            }
        }
    }

    fn set_ph_field(&mut self, field: String, text: String) -> Answer {
        let mark = self.mark();
        self.ph_desk();
        if CHOICES.contains(&field.as_str()) {
            if text.len() <= 40 {
                self.waiting.of::<PhDesk>().chosen.insert(field, text);
            }
            return Answer::default();
        }
        let Some((least, most)) = bounds_of(&field) else { return Answer::default() };
        let read = read_plain(text.trim(), mark, least, most).map(|_| {
            self.waiting.of::<PhDesk>().chosen.insert(field.clone(), text);
        });
        about(&field, read, mark)
    }

    fn take_ph_offer(&mut self, offer: &str, shown: &str) {
        let Some(worked) = self.work_out_ph_offer(offer) else { return };
        let Some(first) = worked.lines.first().filter(|first| *first == shown).cloned() else { return };
        let act = match offer {
            "buffer" => "ph.buffer",
            "neutralise" => "ph.neutralise",
            _ => "ph.set",
        };
        self.change_formula(act, None, |formula| {
            formula.make_changes(&worked.changes, |kind| sentences::phase_name(kind).to_owned());
        });
        self.checking.prompt = true;
        self.notice("ph.applied", says::set_applied(&first), true);
    }

    /// Whether a material holds something that is caustic as it is handled.
    pub(crate) fn is_caustic(&mut self, material: MaterialId) -> bool {
        use stillroom_core::checks::facts::{Knowledge as _, Trait};
        let Ok(inside) = self.makeups.see_through(material, &self.materials) else { return false };
        if let Some((seen, caustic)) = self.caustic.get(&material)
            && Rc::ptr_eq(seen, &inside)
        {
            return *caustic;
        }
        let facts = |id| stillroom_catalogue::knowledge().facts(id);
        let caustic = inside
            .constituents
            .iter()
            .any(|(id, _)| facts(*id).is_some_and(|facts| facts.has(Trait::Caustic).is_some()));
        self.caustic.insert(material, (inside, caustic));
        caustic
    }

    /// How what stands on a weigh sheet is handled, where something on it is caustic. Until the tables of facts are there,
    /// whatever sets a pH counts as caustic.
    pub(crate) fn handling_of(&mut self, evaluation: &Evaluation) -> Vec<String> {
        let materials: Vec<MaterialId> = evaluation.lines.iter().map(|(_, material)| *material).collect();
        let caustic = materials.into_iter().any(|material| {
            let class = self.materials.material(material).map(|material| (material.class, &material.makeup));
            let may_be = class.is_some_and(|(class, makeup)| {
                class == stillroom_core::Class::PhAdjuster || matches!(makeup, Makeup::Composite(_))
            });
            may_be && holds_caustic(self, material)
        });
        if !caustic {
            return Vec::new();
        }
        let cautions = [bench::caustic_1(), bench::caustic_2(), bench::caustic_3()];
        cautions.map(str::to_owned).to_vec()
    }
}

lazy! {
    whole "a0" fn holds_caustic(session: &mut Session, material: MaterialId) -> bool {
        session.is_caustic(material)
    } else {
        session.materials.material(material).is_some_and(|material| material.class == stillroom_core::Class::PhAdjuster)
    }
}
