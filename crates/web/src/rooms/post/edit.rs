//! Acts on the post: what is left out, and how large its batches are.

use crate::contract::Answer;
use crate::rooms::formula::edit::about;
use crate::rooms::post::command::PostCommand;
use crate::rooms::post::parts::{PICTURE_LINK, POST, Part, Size};
use crate::rooms::post::present::PostDesk;
use crate::session::Session;
use stillroom_core::Grams;
use stillroom_core::number::{NumberError, read_mass};
use stillroom_exchange::label::LabelFields;

impl Session {
    pub(crate) fn act_on_post(&mut self, command: PostCommand) -> Answer {
        match command {
            PostCommand::LookAtPost { looking, address } => {
                let desk = self.waiting.of::<PostDesk>();
                desk.looking = looking;
                desk.site = address;
                Answer::default()
            }
            PostCommand::SetPostField { field, text } => self.set_post_field(&field, &text),
        }
    }

    fn set_post_field(&mut self, field: &str, text: &str) -> Answer {
        let Some(name) = field.strip_prefix("post.") else { return Answer::default() };
        let is_word = text.is_empty() || ["yes", "no"].contains(&text);
        if Size::from_word(name).is_some() {
            return self.set_post_size(field, name, text);
        }
        let is_part = Part::from_word(name).is_some_and(|part| part != Part::Cautions);
        if (is_part || name == PICTURE_LINK) && is_word {
            self.choose_for_post(field, name, text);
        }
        about(field, Ok(()), self.mark())
    }

    fn set_post_size(&mut self, field: &str, name: &str, text: &str) -> Answer {
        let mark = self.mark();
        if text.trim().is_empty() {
            self.choose_for_post(field, name, "");
            return about(field, Ok(()), mark);
        }
        let density = self.density_of_product();
        match read_mass(text, mark, self.settings.mass_unit, density) {
            Ok(mass) if mass.is_zero() => {
                let (value, minimum, maximum) = (mass.value(), rust_decimal::Decimal::new(1, 2), Grams::MAXIMUM);
                about(field, Err(NumberError::OutOfRange { value, minimum, maximum }), mark)
            }
            Ok(mass) => {
                // Written with a point whatever the mark: the maker may choose another one.
                self.choose_for_post(field, name, &mass.value().normalize().to_string());
                about(field, Ok(()), mark)
            }
            Err(error) => about(field, Err(error), mark),
        }
    }

    fn choose_for_post(&mut self, field: &str, name: &str, text: &str) {
        self.change_formula("post.set", Some(field), |formula| {
            let mut fields = LabelFields::read(&formula.label);
            fields.set(&format!("{POST}{name}"), text);
            formula.label = fields.write();
        });
    }
}
