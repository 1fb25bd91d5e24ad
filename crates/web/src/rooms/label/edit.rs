//! Acts on the label: what is filled in.

use crate::contract::Answer;
use crate::rooms::formula::edit::about;
use crate::rooms::label::command::LabelCommand;
use crate::rooms::label::fields::{Filled, NANO, Takes, is_of_maker, takes};
use crate::rooms::label::sentences;
use crate::session::Session;
use rust_decimal::Decimal;
use stillroom_core::label::{LinkError, read_link};
use stillroom_core::number::{NumberError, read_plain};
use stillroom_exchange::label::LabelFields;

/// Whether the page shows the label.
#[derive(Debug, Default, Clone, Copy)]
pub(crate) struct LabelDesk {
    pub(crate) looking: bool,
}

impl Session {
    pub(crate) fn act_on_label(&mut self, command: LabelCommand) -> Answer {
        match command {
            LabelCommand::LookAtLabel { looking } => {
                self.waiting.of::<LabelDesk>().looking = looking;
                Answer::default()
            }
            LabelCommand::SetLabelField { field, text } => self.set_label_field(&field, &text),
        }
    }

    fn set_label_field(&mut self, field: &str, text: &str) -> Answer {
        let Some(name) = field.strip_prefix("label.") else { return Answer::default() };
        let mark = self.mark();
        let kept = match takes(name) {
            Some(Takes::Text) => text.to_owned(),
            Some(Takes::Choice(takes)) if text.is_empty() || takes(text) => text.to_owned(),
            Some(Takes::Number { .. } | Takes::Address) if text.trim().is_empty() => String::new(),
            Some(Takes::Address) => match read_link(text) {
                Ok(_) => text.trim().to_owned(),
                Err(error) => return about_link(field, &error),
            },
            Some(Takes::Choice(_)) | None => return Answer::default(),
            Some(Takes::Number { least, most, whole }) => {
                match read_plain(text.trim(), mark, Decimal::from(least), Decimal::from(most)) {
                    Ok(value) if whole && !value.is_integer() => {
                        return about(field, Err(NumberError::NotWhole { value }), mark);
                    }
                    // Written with a point whatever the mark: the maker may choose another one.
                    Ok(number) => number.normalize().to_string(),
                    Err(error) => return about(field, Err(error), mark),
                }
            }
        };
        if is_of_maker(name) {
            let mut after = (*self.settings).clone();
            let mut fields = LabelFields::read(&after.maker);
            fields.set(name, &kept);
            after.maker = fields.write();
            self.commit_settings(after, field);
        } else {
            self.change_formula("label.set", Some(field), |formula| {
                let mut fields = LabelFields::read(&formula.label);
                fields.set(name, &kept);
                if name == "container" {
                    // The sizes of another container say nothing of this one.
                    for size in ["shape", "width", "height", "volume"] {
                        fields.set(size, "");
                    }
                }
                formula.label = fields.write();
            });
        }
        about(field, Ok(()), mark)
    }

    /// What was filled in for the label of a formula, and for every label.
    pub(crate) fn label_filled(&self, formula: &stillroom_core::Formula) -> Filled {
        Filled { product: LabelFields::read(&formula.label), maker: LabelFields::read(&self.settings.maker) }
    }
}

/// An answer about an address that is none.
fn about_link(field: &str, error: &LinkError) -> Answer {
    Answer {
        field: Some(field.to_owned()),
        error: Some(sentences::wrong_link(error)),
        code: Some(error.code()),
        made: None,
    }
}

/// Names the field in which somebody says whether an ingredient is a nanomaterial.
pub(crate) fn nano_field(key: &str) -> String {
    format!("{NANO}{key}")
}
