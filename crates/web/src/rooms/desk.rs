//! The one way in: a command goes to its room, and what changed in any room comes back.

use crate::contract::shown::Shown;
use crate::contract::{Answer, ConflictView, HistoryView, KeepState, StatusView};
use crate::lazy::lazy;
use crate::messages::sentences;
use crate::rooms::bench::command::BenchCommand;
use crate::rooms::command::{Command, DeskCommand};
use crate::rooms::formula::command::FormulaCommand;
use crate::rooms::long_text::refuse_long_text;
use crate::rooms::materials::view::MaterialHit;
use crate::rooms::said;
use crate::rooms::share::command::ShareCommand;
use crate::rooms::swap::command::SwapCommand;
use crate::rooms::update::Update;
use crate::session::Session;
use stillroom_catalogue::{Favour, Filter};
use stillroom_core::{MaterialId, PhaseKind};

/// How many of the formulas that changed last say what a maker uses.
const USED_LATELY: usize = 20;

impl Session {
    /// Acts, and says what of the view changed.
    pub fn apply(&mut self, command: impl Into<Command>) -> Update {
        let answer = self.act_or_refuse(command.into());
        self.present(Some(answer))
    }

    /// Says what became of something, and what of the view changed.
    pub(crate) fn present_answer(&mut self, answer: Answer) -> Update {
        self.present(Some(answer))
    }

    /// Shows what changed without anybody having acted.
    pub fn show_changes(&mut self) -> Update {
        self.present(None)
    }

    /// Everything there is to show, for a page that shows nothing yet.
    pub fn show_everything(&mut self) -> Update {
        self.shown = Shown::default();
        self.present(None)
    }

    /// Acts, unless that would make something larger than can be kept: then nothing changes, and the answer says why.
    fn act_or_refuse(&mut self, command: Command) -> Answer {
        if let Some(refusal) = refuse_long_text(&command) {
            return self.as_notice_without_field(refusal);
        }
        let said = self.notices.len();
        let answer = self.act(command);
        if !std::mem::take(&mut self.too_large) {
            if let (Some(field), Some(_)) = (&answer.field, &answer.error) {
                self.take_back_typing(field);
            }
            return answer;
        }
        // What was to be said of it did not come about.
        self.notices.truncate(said);
        let error = Some(crate::messages::common::record_too_large().to_owned());
        self.as_notice_without_field(Answer { error, code: Some("record.too-large"), made: None, ..answer })
    }

    /// An error that belongs beside no field is said as a notice.
    pub(crate) fn as_notice_without_field(&mut self, answer: Answer) -> Answer {
        if let (None, Some(error), Some(code)) = (&answer.field, &answer.error, answer.code) {
            self.notice(code, error.clone(), false);
        }
        answer
    }

    pub(crate) fn act(&mut self, command: Command) -> Answer {
        match command {
            Command::Desk(command) => self.act_on_desk(command),
            Command::Shelf(command) => self.act_on_shelf(command),
            Command::Formula(command) => act_on_formula(self, command),
            Command::Bench(command) => act_on_bench(self, command),
            Command::Share(command) => act_on_shared(self, command),
            Command::Swap(command) => act_on_swap(self, command),
            beyond => act_beyond(self, beyond),
        }
    }

    fn act_on_desk(&mut self, command: DeskCommand) -> Answer {
        match command {
            DeskCommand::Undo {} => self.undo(),
            DeskCommand::UndoAct { change } => {
                if self.history.next_undo().is_some_and(|next| next.number == change) {
                    self.undo()
                } else {
                    Answer::default()
                }
            }
            DeskCommand::Redo {} => self.redo(),
            DeskCommand::ChangedElsewhere { key } => self.changed_elsewhere(&key),
            DeskCommand::TakeTheirs { key } => self.take_theirs(&key),
            DeskCommand::KeepBoth { key } => self.keep_both(&key),
        }
    }

    fn present(&mut self, answer: Option<Answer>) -> Update {
        if !self.unkept.is_empty() && self.keep_state == KeepState::Kept {
            self.keep_state = KeepState::Keeping;
        }
        let mut update = Update { answer, notices: std::mem::take(&mut self.notices), ..Update::default() };
        present_formula(self, &mut update);
        if self.shown.seen() != Some(&OwnMaterialsWithin(self.surroundings_changed)) {
            *self.shown.of() = OwnMaterialsWithin(self.surroundings_changed);
            let own = self.present_own_materials();
            update.own_materials = self.shown.changed(own);
        }
        present_material(self, &mut update);
        let settings = self.present_settings();
        update.settings = self.shown.changed(settings);
        if self.in_sight.shelf {
            let cards = self.present_shelf();
            update.shelf = self.shown.changed(cards);
        }
        present_beyond(self, &mut update);
        present_swap(self, &mut update);
        let history = HistoryView {
            undo: self.history.next_undo().map(|change| crate::messages::desk::undo(said::act_name(change.act))),
            undoes: self.history.next_undo().map(|change| change.number),
            redo: self.history.next_redo().map(|change| crate::messages::desk::redo(said::act_name(change.act))),
        };
        update.history = self.shown.changed(history);
        let status = self.present_status();
        update.status = self.shown.changed(status);
        update
    }

    /// Keeps what is not kept yet, and says how that went. Called once the page has drawn a change.
    pub fn keep(&mut self) -> Update {
        self.keep_unkept();
        let status = self.present_status();
        let notices = std::mem::take(&mut self.notices);
        Update { status: self.shown.changed(status), notices, ..Update::default() }
    }

    /// All that was handed out is on the disk, or could not be put there: then the store alone has it.
    pub fn committed(&mut self, is_on_disk: bool) -> Update {
        self.note_commit(is_on_disk);
        let status = self.present_status();
        Update { status: self.shown.changed(status), ..Update::default() }
    }

    pub(crate) fn present_status(&self) -> StatusView {
        let mut text = said::keep_state(self.keep_state, self.kept_at, self.around.minutes_ahead());
        if self.keep_state == KeepState::Kept && self.logging.failed {
            text = crate::messages::desk::kept_loosely(&text);
        }
        let conflict = |(key, name): (&String, &String)| ConflictView {
            key: key.clone(),
            text: sentences::changed_elsewhere(name),
        };
        StatusView {
            state: self.keep_state,
            text,
            conflicts: self.conflicts.iter().map(conflict).collect(),
            unreadable: self.unreadable.iter().map(|(key, error)| sentences::unreadable(key, error)).collect(),
        }
    }

    /// Materials that answer a query, for the page to choose from.
    pub fn search(&mut self, query: &str, filter: &Filter) -> Vec<MaterialHit> {
        self.search_for(query, filter, None)
    }

    /// The same for a line of a phase: of what answers about equally well, what this maker has or used lately and what
    /// usually goes into that phase stand first.
    pub fn search_for(&mut self, query: &str, filter: &Filter, phase: Option<PhaseKind>) -> Vec<MaterialHit> {
        search(self, query, filter, phase)
    }

    /// What is in the formulas that changed last, and what the maker has.
    fn used_lately(&self) -> Vec<MaterialId> {
        let lately = self.records_by_change();
        let lines = lately.iter().take(USED_LATELY).flat_map(|record| record.formula.lines().map(|line| line.material));
        lines.chain(self.materials.kept_holdings().map(|(material, _)| material)).collect()
    }
}

/// [`Session::surroundings_changed`] when the own materials were shown.
#[derive(Default, PartialEq)]
struct OwnMaterialsWithin(u64);

/// [`Session::surroundings_changed`] when what the maker has was shown.
#[derive(Default, PartialEq)]
struct HeldWithin(u64);

/// During which visit to the shelf, and within what surroundings, it was last said what is due.
#[derive(Default, PartialEq)]
struct DueAt(usize, u64);

lazy! {
    desk "d1" fn act_on_formula(session: &mut Session, command: FormulaCommand) -> Answer {
        session.act_on_formula(command)
    } else { Answer::default() }
}

lazy! {
    desk "d2" fn act_on_bench(session: &mut Session, command: BenchCommand) -> Answer {
        session.act_on_bench(command)
    } else { Answer::default() }
}

lazy! {
    desk "d3" fn present_formula(session: &mut Session, update: &mut Update) {
        session.present_formula(update);
    } else {}
}

lazy! {
    desk "d4" fn search(session: &mut Session, query: &str, filter: &Filter, phase: Option<PhaseKind>) -> Vec<MaterialHit> {
        // Where it is for no line, the order is that of the answers alone.
        let favour =
            phase.map_or_else(Favour::default, |phase| Favour { used: session.used_lately(), phase: Some(phase) });
        let found = session.materials.search(query, filter, &favour);
        found.into_iter().map(|id| session.present_hit(id)).collect()
    } else { Vec::new() }
}

lazy! {
    whole "01" fn act_beyond(session: &mut Session, command: Command) -> Answer {
        match command {
            Command::Materials(command) => session.act_on_materials(command),
            Command::Extracts(command) => session.act_on_extracts(command),
            Command::Findings(command) => session.act_on_findings(command),
            Command::Ph(command) => session.act_on_ph(command),
            Command::Batches(command) => session.act_on_batches(command),
            Command::Paste(command) => session.act_on_paste(&command),
            Command::Label(command) => session.act_on_label(command),
            Command::Post(command) => session.act_on_post(command),
            Command::Costs(command) => session.act_on_costs(command),
            // The first file has acted on the others.
            _ => Answer::default(),
        }
    } else { Answer::default() }
}

lazy! {
    share "02" fn act_on_shared(session: &mut Session, command: ShareCommand) -> Answer {
        session.act_on_shared(command)
    } else { Answer::default() }
}

lazy! {
    whole "17" fn present_material(session: &mut Session, update: &mut Update) {
        let material = session.present_open_material();
        update.material = session.shown.changed(material);
    } else {}
}

lazy! {
    whole "03" fn present_beyond(session: &mut Session, update: &mut Update) {
        if session.shown.seen() != Some(&HeldWithin(session.surroundings_changed)) {
            *session.shown.of() = HeldWithin(session.surroundings_changed);
            let held = session.present_held();
            update.held = session.shown.changed(held);
        }
        let visit = (session.in_sight.visits, session.surroundings_changed);
        if session.in_sight.shelf && session.shown.seen() != Some(&DueAt(visit.0, visit.1)) {
            *session.shown.of() = DueAt(visit.0, visit.1);
            let due = session.present_due();
            update.due = session.shown.changed(due);
        }
        if session.in_sight.extracts {
            let extracts = session.present_extracts();
            update.extracts = session.shown.changed(extracts);
            let extract = session.present_open_extract();
            update.extract = session.shown.changed(extract);
        }
        session.present_ph_in_time(update);
        session.present_at_bench(update);
        session.present_label(update);
        session.present_post(update);
        session.present_costs(update);
    } else {}
}

lazy! {
    swap "b1" fn act_on_swap(session: &mut Session, command: SwapCommand) -> Answer {
        session.act_on_swap(command)
    } else { Answer::default() }
}

lazy! {
    swap "b2" fn present_swap(session: &mut Session, update: &mut Update) {
        session.present_swap(update);
    } else {}
}
