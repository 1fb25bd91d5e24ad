//! What the page shows of batches: the list, the run with its card, the record and the journal.

use crate::rooms::batches::command::BatchesCommand;
use crate::rooms::extracts::view::FigureView;
use serde::Serialize;
use tsify::Tsify;

/// The maker's batches.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct BatchesView {
    /// Each of them, the last begun first.
    pub cards: Vec<BatchCard>,
    /// What a batch of the open formula would be, for the button that begins it; empty where none can be begun.
    pub offer: String,
    /// Why none can be begun.
    pub problem: String,
}

/// One batch in the list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct BatchCard {
    /// Names it.
    pub id: String,
    /// The formula it was made of.
    pub name: String,
    /// Number and state in a few words.
    pub about: String,
    /// Whether it is still being made.
    pub running: bool,
    /// Whether it asks before it is deleted: it holds what cannot be made again.
    pub asks: bool,
}

/// The open batch.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RunView {
    /// Names it; absent when none is open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub id: Option<String>,
    /// The formula it is made of.
    pub name: String,
    /// Its number.
    pub lot: String,
    /// Whether all is done.
    pub finished: bool,
    /// Steps that are done with.
    pub done: usize,
    /// All steps.
    pub of: usize,
    /// What is wrong before anything is weighed: a material past its day.
    pub warnings: Vec<RemarkView>,
    /// Every step.
    pub steps: Vec<StepView>,
    /// The one in sight.
    pub card: CardView,
    /// What the next taking back takes back; empty where there is nothing.
    pub take_back: String,
    /// The record.
    pub record: RecordView,
}

/// One step in the list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
pub struct StepView {
    /// Names it.
    pub step: String,
    /// What is done.
    pub label: String,
    /// What came of it.
    pub about: String,
    /// Whether it is done with.
    pub done: bool,
    /// Whether it is in sight.
    pub here: bool,
    /// Margin of its phase; empty where it belongs to none.
    pub phase: String,
}

/// A sentence with a tone.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
pub struct RemarkView {
    /// Tone.
    #[tsify(type = "\"stop\" | \"caution\" | \"note\"")]
    pub tone: &'static str,
    /// The sentence.
    pub text: String,
}

/// One thing to do, in large type.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CardView {
    /// Names the step.
    pub step: String,
    /// What kind of step it is.
    pub kind: &'static str,
    /// Margin of its phase; empty where it belongs to none.
    pub phase: String,
    /// Where it stands.
    pub eyebrow: String,
    /// What to do.
    pub title: String,
    /// The one number that matters now; may be empty.
    pub big: String,
    /// Its unit.
    pub unit: String,
    /// What else is to be said, a line each.
    pub about: Vec<String>,
    /// What is wrong.
    pub warnings: Vec<RemarkView>,
    /// Fields to fill in.
    pub fields: Vec<CardField>,
    /// Things to choose: cures, ways out, what comes first.
    pub choices: Vec<ChoiceAct>,
    /// Figures with their arithmetic.
    pub figures: Vec<FigureView>,
    /// A timer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub timer: Option<TimerView>,
    /// A curve.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub curve: Option<CurveView>,
    /// What the large area does.
    pub next: ChoiceAct,
}

/// A field of a card.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CardField {
    /// Names it; what is wrong with its text comes back under this name.
    pub field: String,
    /// What it is called.
    pub label: String,
    /// Unit behind it.
    pub unit: String,
    /// What it holds.
    pub text: String,
    /// What it would be if nothing is typed.
    pub placeholder: String,
    /// What is typed: `decimal`, `numeric`, `text`, `long` or `day`.
    #[tsify(type = "\"decimal\" | \"numeric\" | \"text\" | \"long\" | \"day\"")]
    pub keyboard: &'static str,
    /// Whether it goes along with the large area; if not, it has a button of its own, or is sent when it is left.
    pub with_next: bool,
    /// What its own button says; empty where it is sent when it is left.
    pub button: String,
    /// What is sent, where it does not go along with the large area.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub command: Option<BatchesCommand>,
    /// Under which name its text goes into what is sent.
    #[tsify(type = "\"text\" | \"gross\" | \"empty\" | \"count\" | \"each\"")]
    pub key: &'static str,
}

impl Default for CardField {
    fn default() -> Self {
        let empty = String::new;
        Self {
            field: empty(),
            label: empty(),
            unit: empty(),
            text: empty(),
            placeholder: empty(),
            keyboard: "text",
            with_next: false,
            button: empty(),
            command: None,
            key: "text",
        }
    }
}

/// Something to choose.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
pub struct ChoiceAct {
    /// What it says; empty where there is nothing to choose.
    pub label: String,
    /// What it comes to.
    pub about: String,
    /// What is sent; of the large area, with what was typed in the fields that go along with it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub command: Option<BatchesCommand>,
    /// Whether it cannot be chosen; `about` says why.
    pub refused: bool,
}

/// A timer.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct TimerView {
    /// Its step.
    pub step: String,
    /// Whether it runs.
    pub running: bool,
    /// What is left to its next stop, as a clock shows it.
    pub clock: String,
    /// How much of the whole has run, in percent.
    pub share: f64,
    /// What is to be done at that stop.
    pub at_stop: String,
    /// Whether it has run to its end.
    pub over: bool,
    /// Whether it stands at a pause.
    pub at_pause: bool,
}

/// A curve with its points. Places are in percent of its width and height, from the top left.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CurveView {
    /// The curve in words.
    pub description: String,
    /// The curve.
    pub line: Vec<(f64, f64)>,
    /// What was read.
    pub points: Vec<(f64, f64)>,
    /// A height that matters, and what it is.
    pub level: f64,
    /// What that height is.
    pub level_label: String,
    /// From where to where along the width the curve meets that height.
    pub band: Option<(f64, f64)>,
    /// Marks along the width.
    pub across: Vec<CurveTick>,
    /// Marks along the height.
    pub up: Vec<CurveTick>,
}

/// A mark of a curve.
#[derive(Debug, Clone, PartialEq, Serialize, Tsify)]
pub struct CurveTick {
    /// Its place.
    pub at: f64,
    /// What stands beside it.
    pub label: String,
}

/// The record of a batch.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RecordView {
    /// Head: what stands for the whole batch.
    pub head: Vec<PairView>,
    /// The materials.
    pub materials: Vec<RecordLine>,
    /// Sum of the masses, wanted and weighed.
    pub total: PairView,
    /// What was done, in order.
    pub log: Vec<LogLine>,
    /// What went otherwise than planned.
    pub deviations: Vec<String>,
    /// What came out.
    pub results: Vec<PairView>,
    /// What is really in it, where it differs from the plan.
    pub composition: Vec<PairView>,
    /// What the checks find in it that they do not find in the plan.
    pub findings: Vec<RemarkView>,
    /// Dates and why.
    pub dates: Vec<FigureView>,
    /// Fields the maker fills in.
    pub fields: Vec<CardField>,
    /// What is to be signed.
    pub signatures: Vec<String>,
    /// What is to be said of all this.
    pub cautions: Vec<String>,
}

/// What something is called and what it is.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
pub struct PairView {
    /// What it is called.
    pub label: String,
    /// What it is.
    pub value: String,
}

/// One material of a record.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
pub struct RecordLine {
    /// Its phase, on the first line of each.
    pub phase: String,
    /// Its common name.
    pub name: String,
    /// Its INCI names.
    pub inci: String,
    /// Lot.
    pub lot: String,
    /// Last day.
    pub expiry: String,
    /// Percent by the formula.
    pub percent: String,
    /// Mass wanted.
    pub target: String,
    /// Mass weighed.
    pub weighed: String,
    /// How far apart they are.
    pub deviation: String,
    /// Whether that is more than the scale's step, or its day is past.
    pub odd: bool,
}

/// One line of the log.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LogLine {
    /// When.
    pub time: String,
    /// What.
    pub text: String,
    /// Whether it was taken back: then it is crossed out, not left out.
    pub taken_back: bool,
}

/// The journal of the open batch.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct JournalView {
    /// Names the batch; absent when none is open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub id: Option<String>,
    /// What was seen, by day.
    pub entries: Vec<EntryView>,
    /// Days on which to look, and whether that was done.
    pub due: Vec<DueView>,
    /// How the colour changed.
    pub colour: Vec<FigureView>,
    /// The fade, plotted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub curve: Option<CurveView>,
    /// Days to look again, as a calendar file.
    pub calendar: String,
    /// Name of that file.
    pub calendar_name: String,
}

/// One observation.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct EntryView {
    /// Its position.
    pub entry: usize,
    /// Which day of the batch it is, and the date.
    pub title: String,
    /// What was noted.
    pub fields: Vec<CardField>,
    /// The colour as a screen shows it, `#aabbcc`; empty where none was read.
    pub swatch: String,
    /// The colour in numbers, and how far it is from day 0.
    pub colour: String,
    /// Names of its photos.
    pub photos: Vec<String>,
}

/// A day on which to look.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
pub struct DueView {
    /// Which day.
    pub label: String,
    /// The date.
    pub date: String,
    /// Where it stands, in words.
    pub about: String,
    /// The same: `seen`, `to-come`, `due` or `overdue`.
    #[tsify(type = "\"seen\" | \"to-come\" | \"due\" | \"overdue\"")]
    pub state: &'static str,
    /// The day as a record writes it.
    pub day: String,
}
