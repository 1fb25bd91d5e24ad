//! Acts on making it with what one has: what is asked, what is filled in, what is put into the formula.

use crate::contract::Answer;
use crate::messages::swap as says;
use crate::rooms::formula::edit::about;
use crate::rooms::swap::command::SwapCommand;
use crate::session::Session;
use litemap::LiteMap;
use rust_decimal::Decimal;
use stillroom_core::number::{DecimalMark, read_plain};
use stillroom_core::{FormulaId, LineId};

/// What can be asked.
#[derive(Debug, Default, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Use {
    /// What could take the place of a line.
    #[default]
    Line,
    /// The formula from the shelf.
    Shelf,
    /// Whatever expires first is used up.
    Expiring,
    /// The cheapest within limits.
    Cheapest,
    /// Lines brought to a figure.
    Figure,
}

impl Use {
    const ALL: [Self; 5] = [Self::Line, Self::Shelf, Self::Expiring, Self::Cheapest, Self::Figure];

    /// Its word.
    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Line => "line",
            Self::Shelf => "shelf",
            Self::Expiring => "expiring",
            Self::Cheapest => "cheapest",
            Self::Figure => "figure",
        }
    }
}

/// What is asked of one formula.
#[derive(Debug, Default, Clone)]
pub(crate) struct SwapDesk {
    /// Whether the page shows it.
    pub(crate) looking: bool,
    of: Option<FormulaId>,
    pub(crate) wanted: Use,
    pub(crate) line: Option<LineId>,
    /// The way that is looked at, by its key.
    pub(crate) way: Option<String>,
    /// Lines the shelf lacks, where somebody said so or said otherwise.
    pub(crate) lacks: LiteMap<LineId, bool>,
    /// Lines that may vary, likewise.
    pub(crate) varies: LiteMap<LineId, bool>,
    /// What was typed or chosen, by field. Only what was understood is in it.
    chosen: LiteMap<String, String>,
}

impl SwapDesk {
    /// What a field holds, if anything was filled in.
    pub(crate) fn chosen(&self, field: &str) -> Option<&str> {
        self.chosen.get(field).map(String::as_str)
    }

    /// A number that was filled in.
    pub(crate) fn number(&self, field: &str, mark: DecimalMark) -> Option<Decimal> {
        read_plain(self.chosen(field)?.trim(), mark, Decimal::ZERO, Decimal::ONE_HUNDRED).ok()
    }
}

/// Fields in which something is chosen; in every other a number from 0 to 100 is typed.
const CHOICES: [&str; 3] = ["swap.count", "swap.further", "swap.figure"];
const TYPED: &str = "swap.target";

impl Session {
    /// What is asked of the open formula.
    pub(crate) fn swap_desk(&mut self) -> SwapDesk {
        let open = self.open;
        let desk = self.waiting.of::<SwapDesk>();
        if desk.of != open {
            *desk = SwapDesk { looking: desk.looking, of: open, wanted: desk.wanted, ..SwapDesk::default() };
        }
        desk.clone()
    }

    pub(crate) fn act_on_swap(&mut self, command: SwapCommand) -> Answer {
        self.swap_desk();
        let formula = self.open;
        let desk = self.waiting.of::<SwapDesk>();
        match command {
            SwapCommand::LookAtSwap { looking } => desk.looking = looking,
            SwapCommand::ChooseSwapUse { wanted } => {
                desk.wanted = Use::ALL.into_iter().find(|each| each.word() == wanted).unwrap_or(desk.wanted);
            }
            SwapCommand::SwapLine { line } => {
                (desk.wanted, desk.line, desk.way) = (Use::Line, Some(line), None);
            }
            SwapCommand::ChooseWay { way } => desk.way = Some(way).filter(|way| way.len() <= 40),
            SwapCommand::MarkLine { line, marked } => {
                // Of lines that are not there nothing is remembered.
                let known =
                    formula.and_then(|id| self.shelf.get(&id)).is_some_and(|it| it.formula.line(line).is_some());
                let desk = self.waiting.of::<SwapDesk>();
                let marks = if desk.wanted == Use::Figure { &mut desk.varies } else { &mut desk.lacks };
                if known {
                    marks.insert(line, marked);
                }
            }
            SwapCommand::SetSwapField { field, text } => return self.set_swap_field(&field, text),
            SwapCommand::SetSubstitution { line, text } => {
                let field = format!("line.substitution:{}", line.0);
                self.change_formula("swap.note", Some(&field), |formula| {
                    if let Some(line) = formula.line_mut(line) {
                        line.substitution = text;
                    }
                });
            }
            SwapCommand::TakeSwap { text } => self.take_swap(&text),
        }
        Answer::default()
    }

    fn set_swap_field(&mut self, field: &str, text: String) -> Answer {
        let mark = self.mark();
        if CHOICES.contains(&field) {
            if text.len() <= 40 {
                let desk = self.waiting.of::<SwapDesk>();
                if field == "swap.figure" && desk.chosen(field) != Some(&text) {
                    // What was typed and marked is about another figure.
                    desk.chosen.remove(TYPED);
                    desk.varies = LiteMap::new();
                }
                desk.chosen.insert(field.to_owned(), text);
            }
            return Answer::default();
        }
        if field != TYPED {
            return Answer::default();
        }
        let read = read_plain(text.trim(), mark, Decimal::ZERO, Decimal::ONE_HUNDRED).map(|_| {
            self.waiting.of::<SwapDesk>().chosen.insert(field.to_owned(), text);
        });
        about(field, read, mark)
    }

    /// Puts the version in place of the open formula, as it was shown.
    fn take_swap(&mut self, shown: &str) {
        let desk = self.swap_desk();
        let Some((record, evaluation)) = self.evaluate_open() else { return };
        let worked = self.work_out_swap(&desk, &record, &evaluation);
        let Some(Ok(version)) = worked.answer else { return };
        let summary = self.summary_of(&record.formula, &version);
        if summary != shown {
            return;
        }
        self.change_formula("swap.take", None, |formula| *formula = version.formula);
        // The line that was swapped is gone, and so is what was said of it.
        let desk = self.waiting.of::<SwapDesk>();
        (desk.line, desk.way) = (None, None);
        self.checking.prompt = true;
        self.notice("swap.taken", says::taken(&summary), true);
    }
}
