//! Texts that are too long to be kept, refused before anything changes.

use crate::contract::Answer;
use crate::rooms::command::Command;
use crate::rooms::extracts::command::ExtractsCommand;
use crate::rooms::findings::command::FindingsCommand;
use crate::rooms::formula::command::FormulaCommand;
use crate::rooms::label::command::LabelCommand;
use crate::rooms::materials::command::{HoldingField, MaterialField, MaterialsCommand};
use crate::rooms::ph::command::PhCommand;
use crate::rooms::post::command::PostCommand;
use crate::rooms::shelf::command::ShelfCommand;
use crate::rooms::swap::command::SwapCommand;
use crate::session::limits::{LONGEST_NAME, LONGEST_REASON, LONGEST_TEXT};

/// Longest text of what a product does and how it is used, in characters.
const LONGEST_CLAIMS: usize = stillroom_exchange::label::LONGEST_FIELD;

/// What of a command is too long, if something is: the answer that says so beside its field.
pub(crate) fn refuse_long_text(command: &Command) -> Option<Answer> {
    let (field, text, most) = text_of(command)?;
    let length = text.chars().count();
    (length > most).then(|| Answer {
        field: Some(field).filter(|field| !field.is_empty()),
        error: Some(crate::messages::common::text_too_long(&length.to_string(), &most.to_string())),
        code: Some("text.too-long"),
        made: None,
    })
}

/// The text of a command with the name of its field and how long it may be. Numbers are judged where they are read.
fn text_of(command: &Command) -> Option<(String, &str, usize)> {
    Some(match command {
        Command::Formula(FormulaCommand::SetNotes { text }) => ("formula.notes".to_owned(), text, LONGEST_TEXT),
        Command::Formula(FormulaCommand::SetSteps { text }) => ("formula.steps".to_owned(), text, LONGEST_TEXT),
        Command::Shelf(ShelfCommand::RenameFormula { formula, name }) => {
            (format!("formula.name:{formula}"), name, LONGEST_NAME)
        }
        Command::Formula(FormulaCommand::RenamePhase { phase, name }) => {
            (format!("phase.name:{}", phase.0), name, LONGEST_NAME)
        }
        Command::Formula(FormulaCommand::SetLineNote { line, text }) => {
            (format!("line.note:{}", line.0), text, LONGEST_TEXT)
        }
        Command::Materials(MaterialsCommand::NewMaterial { name, .. }) => (String::new(), name, LONGEST_NAME),
        Command::Materials(MaterialsCommand::SetMaterialText { field, text }) => match field {
            MaterialField::Name => ("material.name".to_owned(), text, LONGEST_NAME),
            MaterialField::Inci => ("material.inci".to_owned(), text, LONGEST_NAME),
            MaterialField::Note => ("material.note".to_owned(), text, LONGEST_TEXT),
            MaterialField::Density => return None,
        },
        Command::Materials(MaterialsCommand::SetHolding { field, text, .. }) => match field {
            HoldingField::Lot => ("holding.lot".to_owned(), text, LONGEST_NAME),
            HoldingField::Usual => ("holding.usual".to_owned(), text, LONGEST_NAME),
            HoldingField::Note => ("holding.note".to_owned(), text, LONGEST_TEXT),
            _ => return None,
        },
        Command::Extracts(ExtractsCommand::SetExtract { field, text }) => {
            let most = if field == "note" { LONGEST_TEXT } else { LONGEST_NAME };
            (format!("extract.{field}"), text, most)
        }
        Command::Swap(SwapCommand::SetSubstitution { line, text }) => {
            (format!("line.substitution:{}", line.0), text, LONGEST_TEXT)
        }
        Command::Ph(PhCommand::SetPhField { field, text })
        | Command::Swap(SwapCommand::SetSwapField { field, text })
        | Command::Post(PostCommand::SetPostField { field, text }) => (field.clone(), text, LONGEST_NAME),
        Command::Label(LabelCommand::SetLabelField { field, text }) => {
            let most = if field == "label.claims" { LONGEST_CLAIMS } else { LONGEST_NAME };
            (field.clone(), text, most)
        }
        Command::Batches(command) => {
            let (text, most) = command.text()?;
            (command.field().unwrap_or_default(), text, most)
        }
        Command::Findings(FindingsCommand::SetAsideFinding { key, text }) => {
            (format!("finding.reason:{key}"), text, LONGEST_REASON)
        }
        _ => return None,
    })
}
