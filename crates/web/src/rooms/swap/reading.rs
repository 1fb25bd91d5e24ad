//! A shared formula for a reader who lacks something: what its author says to take instead, what was worked out, and the
//! formula with it.

use crate::messages::swap as says;
use crate::rooms::batches::view::RemarkView;
use crate::rooms::share::reading::{open_parcel, open_reading, present_reading, refuse};
use crate::rooms::share::view::{ReadingOptions, ReadingView};
use crate::rooms::swap::view::SwapWayView;
use crate::rooms::swap::ways::{WorkedWay, differences};
use crate::session::Session;
use crate::session::history::Slot;
use serde::{Deserialize, Serialize};
use std::rc::Rc;
use stillroom_core::checks::can_check;
use stillroom_core::evaluation::evaluate;
use stillroom_core::{Formula, LineId};
use stillroom_exchange::link;
use stillroom_exchange::parcel::Parcel;
use stillroom_exchange::record::FormulaRecord;
use tsify::Tsify;

/// Most lines a reader may lack: more is another formula.
const MOST_LACKS: usize = 12;
/// The way that follows the author's own words: the amounts stay as they are.
const BY_AUTHOR: &str = "author";

/// What a reader lacks.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, Tsify)]
#[serde(rename_all = "camelCase", default)]
pub struct Lacks {
    /// Each line.
    pub lines: Vec<Lack>,
}

/// A line a reader lacks.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, Tsify)]
#[serde(rename_all = "camelCase", default)]
pub struct Lack {
    /// Which.
    pub line: u32,
    /// What to take instead, by the key of a way; the first that holds without one.
    pub way: Option<String>,
}

/// A shared formula as a reader can make it. Nothing of it is kept.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ReaderView {
    /// The formula with what is taken instead.
    pub reading: ReadingView,
    /// Whose version it is, in a sentence; empty while it is the author's.
    pub whose: String,
    /// Line by line what is lacking.
    pub without: Vec<WithoutView>,
    /// What the checks find in this version and not in the author's.
    pub new: Vec<RemarkView>,
}

/// A line a reader lacks, with what can be done.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct WithoutView {
    /// Which.
    pub line: u32,
    /// What is weighed in it.
    pub name: String,
    /// What its author says to take instead; may be empty.
    pub note: String,
    /// What was worked out.
    pub ways: Vec<SwapWayView>,
    /// What is said where nothing was.
    pub problem: String,
}

/// Works a link out for a reader who lacks something, beside any session.
#[must_use]
pub fn read_shared_without(text: &str, options: &ReadingOptions, lacks: &Lacks) -> ReaderView {
    match link::read(text) {
        Ok(parcel) => work_out(open_reading(&parcel, options), &parcel, options.batch.as_deref(), lacks),
        Err(error) => ReaderView { reading: refuse(error), ..ReaderView::default() },
    }
}

impl Session {
    /// The same as this maker reads formulas. Nothing is kept.
    #[must_use]
    pub fn read_link_without(&mut self, text: &str, batch: Option<&str>, lacks: &Lacks) -> ReaderView {
        match link::read(text) {
            Ok(parcel) => {
                let mut reading = open_parcel(&parcel, (*self.settings).clone(), self.mark());
                // What this maker has is offered as such.
                for (material, holding) in self.materials.kept_holdings() {
                    reading.place(Slot::Holding(material, Some(Rc::clone(holding))));
                }
                work_out(reading, &parcel, batch, lacks)
            }
            Err(error) => ReaderView { reading: refuse(error), ..ReaderView::default() },
        }
    }
}

fn work_out(mut reading: Session, parcel: &Parcel, batch: Option<&str>, lacks: &Lacks) -> ReaderView {
    let mut formula = parcel.formula.clone();
    let mut makeups = core::mem::take(&mut reading.makeups);
    let before = reading.found_in(&formula, &mut makeups);
    let (mut without, mut taken) = (Vec::new(), Vec::new());
    for lack in lacks.lines.iter().take(MOST_LACKS) {
        let line = LineId(lack.line);
        // A line that went with another one is not lacking any more.
        let Some(of) = parcel.formula.line(line).filter(|_| formula.line(line).is_some()) else { continue };
        let name = reading.materials.name(of.material);
        let mut view =
            WithoutView { line: line.0, name: name.clone(), note: of.substitution.clone(), ..WithoutView::default() };
        let evaluation = evaluate(&formula, &reading.bench, &reading.materials, &mut makeups);
        if !can_check(&evaluation) || !evaluation.composition.unresolved.is_empty() {
            says::no_unbalanced().clone_into(&mut view.problem);
            without.push(view);
            continue;
        }
        let mut ways = reading.ways_of(&formula, &evaluation, line, &mut makeups);
        ways.retain(|it| it.answer.is_ok());
        let chosen = choose(&ways, lack.way.as_deref(), &view.note);
        view.ways = ways.iter().map(|it| reading.show_way(&formula, it, &mut makeups)).collect();
        if !view.note.is_empty() {
            view.ways.insert(0, by_author());
        }
        if view.ways.is_empty() {
            view.problem = says::reader_nothing(&name);
        }
        let key = chosen.map_or_else(|| BY_AUTHOR.to_owned(), |it| it.way.key());
        for way in &mut view.ways {
            way.chosen = way.key == key;
        }
        without.push(view);
        if let Some(Ok(version)) = chosen.map(|it| &it.answer) {
            formula = version.formula.clone();
            taken.push(name);
        }
    }
    let after = reading.found_in(&formula, &mut makeups);
    let new = reading.remarks_of(&formula, &differences(&before, &after).1);
    reading.makeups = makeups;
    let whose =
        if taken.is_empty() { String::new() } else { says::readers_version(&crate::messages::sentences::list(&taken)) };
    put_in(&mut reading, parcel, formula);
    ReaderView { reading: present_reading(&mut reading, parcel, batch), whose, without, new }
}

/// The way that was asked for, or the first that holds; nothing where the author's words are followed.
fn choose<'w>(ways: &'w [WorkedWay], asked: Option<&str>, note: &str) -> Option<&'w WorkedWay> {
    if asked == Some(BY_AUTHOR) && !note.is_empty() {
        return None;
    }
    let asked = asked.and_then(|key| ways.iter().find(|it| it.way.key() == key));
    asked.or_else(|| ways.iter().find(|it| it.holds())).or(ways.first())
}

/// What the author says, followed by hand.
fn by_author() -> SwapWayView {
    SwapWayView {
        key: BY_AUTHOR.to_owned(),
        kind: "other",
        name: says::reader_by_author().to_owned(),
        takes: says::reader_by_author_takes().to_owned(),
        ..SwapWayView::default()
    }
}

fn put_in(reading: &mut Session, parcel: &Parcel, formula: Formula) {
    let record = FormulaRecord { id: parcel.id, revision: 0, changed_at: 0, formula };
    reading.place(Slot::Formula(parcel.id, Some(Rc::new(record))));
}
