//! Making it with what one has, without a browser: the example's glycerite for simples, a shelf that lacks the emulsifier, a
//! figure hit, what stands in the way, a reader who lacks a line, the author's table.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, reason = "what goes wrong in a test is to be seen at once")]

use stillroom_core::number::DecimalMark;
use stillroom_core::{Amount, LineId, MaterialId};
use stillroom_web::lazy::{Piece, set_here};
use stillroom_web::rooms::command::{Command, DeskCommand};
use stillroom_web::rooms::materials::command::{HoldingField, MaterialsCommand};
use stillroom_web::rooms::share::view::ReadingOptions;
use stillroom_web::rooms::share::write_up::WrittenForm;
use stillroom_web::rooms::swap::command::SwapCommand;
use stillroom_web::rooms::swap::reading::{Lack, Lacks, read_shared_without};
use stillroom_web::rooms::swap::view::{SwapView, SwapWayView};
use stillroom_web::rooms::update::Update;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom};

/// Catalogue numbers of what the example is made of, and of what stands in.
const GLYCERIN: MaterialId = MaterialId::Catalogue(2);
const SQUALANE: MaterialId = MaterialId::Catalogue(9);
const SUNFLOWER: MaterialId = MaterialId::Catalogue(8);
const OLIVATES: MaterialId = MaterialId::Catalogue(119);

/// Somebody at the desk with the example open.
struct Desk(Session);

impl Desk {
    fn open() -> Self {
        let store = Box::new(MemoryStore::default());
        let mut session = Session::open(store, Box::new(QuietRoom::at(1_764_054_000_000, 1_000)), DecimalMark::Point);
        session.apply(SwapCommand::LookAtSwap { looking: true });
        Self(session)
    }

    fn send(&mut self, command: impl Into<Command>) -> Update {
        self.0.apply(command)
    }

    fn view(&mut self) -> SwapView {
        self.0.show_everything().swap.unwrap()
    }

    fn line(&self, material: MaterialId) -> LineId {
        self.0.formula().unwrap().lines().find(|line| line.material == material).unwrap().id
    }

    fn own_line(&self) -> LineId {
        let is_own = |id: MaterialId| matches!(id, MaterialId::Own(_));
        self.0.formula().unwrap().lines().find(|line| is_own(line.material)).unwrap().id
    }

    fn ask(&mut self, wanted: &str) {
        self.send(SwapCommand::ChooseSwapUse { wanted: wanted.into() });
    }

    fn fill(&mut self, field: &str, text: &str) {
        let answer = self.send(SwapCommand::SetSwapField { field: field.into(), text: text.into() }).answer.unwrap();
        assert_eq!(answer.error, None, "{field}: {text}");
    }

    fn hold(&mut self, material: MaterialId, field: HoldingField, text: &str) {
        let answer = self.send(MaterialsCommand::SetHolding { material, field, text: text.into() }).answer.unwrap();
        assert_eq!(answer.error, None);
    }

    fn take(&mut self) -> Update {
        let text = self.view().version.unwrap().summary;
        self.send(SwapCommand::TakeSwap { text })
    }

    fn material(&mut self, name: &str) -> MaterialId {
        let hits = self.0.search(name, &stillroom_catalogue::Filter::default());
        hits.into_iter().find(|hit| hit.name == name).unwrap_or_else(|| panic!("no {name}")).id.parse().unwrap()
    }

    /// The percent of a material in the formula.
    fn percent(&self, material: MaterialId) -> String {
        let formula = self.0.formula().unwrap();
        let line = formula.lines().find(|line| line.material == material);
        line.map_or_else(String::new, |line| match line.amount {
            Amount::Percent(percent) => percent.value().normalize().to_string(),
            _ => "rest".to_owned(),
        })
    }
}

fn way<'v>(view: &'v SwapView, key: &str) -> &'v SwapWayView {
    view.ways.iter().find(|way| way.key == key).unwrap_or_else(|| panic!("no {key} in {:#?}", view.ways))
}

#[test]
fn the_glycerite_becomes_its_simples_and_comes_back() {
    let mut desk = Desk::open();
    let line = desk.own_line();
    let before = desk.0.formula().unwrap().clone();
    desk.send(SwapCommand::SwapLine { line });
    let view = desk.view();
    assert_eq!((view.problem.as_str(), view.wanted, view.line), ("", "line", Some(line.0)));
    assert!(view.version.is_none(), "nothing is chosen yet");
    let apart = way(&view, "apart");
    assert_eq!((apart.kind, apart.problem.as_str()), ("parts", ""));
    desk.send(SwapCommand::ChooseWay { way: "apart".into() });
    let version = desk.view().version.unwrap();
    // 12 % of 65 % glycerin and 0.8 % extract, in hundredths of a percent.
    assert!(
        version.summary.contains("7.80\u{a0}%") && version.summary.contains("extract 0.10\u{a0}%"),
        "{}",
        version.summary
    );
    assert_eq!(version.missed, Vec::<String>::new());
    let update = desk.take();
    assert!(update.notices.iter().any(|notice| notice.code == "swap.taken" && notice.undo.is_some()));
    assert_eq!(desk.percent(GLYCERIN), "7.8");
    assert!(desk.0.formula().unwrap().line(line).is_none());
    let history = desk.0.show_everything().history.unwrap();
    assert_eq!(history.undo.as_deref(), Some("Undo: made with what you have"));
    desk.send(DeskCommand::Undo {});
    assert_eq!(desk.0.formula().unwrap(), &before);
}

#[test]
fn what_was_not_shown_is_not_taken() {
    let mut desk = Desk::open();
    let (line, before) = (desk.own_line(), desk.0.formula().unwrap().clone());
    desk.send(SwapCommand::SwapLine { line });
    desk.send(SwapCommand::ChooseWay { way: "apart".into() });
    desk.send(SwapCommand::TakeSwap { text: "another".into() });
    assert_eq!(desk.0.formula().unwrap(), &before);
}

#[test]
fn substitutes_come_with_reasons_sources_and_what_changes() {
    let mut desk = Desk::open();
    let line = desk.line(SQUALANE);
    desk.send(SwapCommand::SwapLine { line });
    let view = desk.view();
    let other: Vec<&SwapWayView> = view.ways.iter().filter(|way| way.kind == "other").collect();
    assert!(other.len() >= 3, "{:#?}", view.ways);
    assert!(other.iter().all(|way| !way.reasons.is_empty() && !way.takes.is_empty()), "{other:#?}");
    assert!(other.iter().any(|way| way.sources.iter().any(|source| source.contains('('))), "{other:#?}");
    // The emulsifier goes by what it holds, a preservative by its dose: said so.
    let benzoate = desk.line(MaterialId::Catalogue(26));
    desk.send(SwapCommand::SwapLine { line: benzoate });
    let dosed = desk.view();
    for each in dosed.ways.iter().filter(|way| way.kind == "other") {
        assert!(each.differences.iter().any(|it| it.contains("not gram for gram")), "{each:#?}");
    }
    assert!(!dosed.ways.is_empty());
}

#[test]
fn the_authors_note_is_kept_shared_and_counted() {
    let mut desk = Desk::open();
    let line = desk.line(SQUALANE);
    desk.send(SwapCommand::SetSubstitution { line, text: "Jojoba oil does as well.".into() });
    desk.send(SwapCommand::SwapLine { line });
    assert_eq!(desk.view().note, "Jojoba oil does as well.");
    let too_long = desk.send(SwapCommand::SetSubstitution { line, text: "x".repeat(20_001) }).answer.unwrap();
    assert_eq!(too_long.code, Some("text.too-long"));
    // Notes of a whole formula that no record could hold are refused, and said.
    let lines: Vec<LineId> = desk.0.formula().unwrap().lines().map(|line| line.id).collect();
    let hard = "\u{1}".repeat(20_000);
    let mut refused = false;
    for line in lines {
        let answer = desk.send(SwapCommand::SetSubstitution { line, text: hard.clone() }).answer.unwrap();
        refused |= answer.code == Some("record.too-large");
    }
    assert!(refused, "thirteen notes of 20,000 signs each take six bytes a sign");
}

#[test]
fn a_shelf_without_the_emulsifier_takes_another_that_is_there() {
    let mut desk = Desk::open();
    let other = desk.material("Cetearyl alcohol and cetearyl glucoside");
    desk.hold(other, HoldingField::Stock, "100 g");
    desk.ask("shelf");
    let line = desk.line(OLIVATES);
    desk.send(SwapCommand::MarkLine { line, marked: true });
    let view = desk.view();
    assert!(view.lines.iter().any(|each| each.line == line.0 && each.marked));
    assert_eq!(view.refused, Vec::<String>::new(), "{view:#?}");
    let version = view.version.unwrap();
    assert!(view.said.iter().any(|said| said.contains("stands in for")), "{:?}", view.said);
    let fate = |name: &str| version.lines.iter().find(|pair| pair.name == name).map(|pair| pair.fate);
    assert_eq!(fate("Cetearyl alcohol and cetearyl glucoside"), Some("new"), "{version:#?}");
    assert!(version.new.iter().all(|finding| finding.tone != "stop"), "{:#?}", version.new);
    desk.take();
    assert!(desk.0.formula().unwrap().lines().any(|line| line.material == other));
    assert_eq!(desk.percent(OLIVATES), "");
}

#[test]
fn a_shelf_with_nothing_that_does_it_names_what_would() {
    let mut desk = Desk::open();
    desk.ask("shelf");
    let line = desk.line(OLIVATES);
    desk.send(SwapCommand::MarkLine { line, marked: true });
    let view = desk.view();
    assert!(view.said.iter().any(|said| said.contains("These would")), "{view:#?}");
}

#[test]
fn a_figure_is_hit_and_what_cannot_be_names_what_is_in_the_way() {
    let mut desk = Desk::open();
    desk.ask("figure");
    let view = desk.view();
    assert_eq!(view.fields[0].field, "swap.figure");
    assert!(view.fields[1].label.contains("7.8"), "glycerin now: {:#?}", view.fields);
    desk.fill("swap.target", "9");
    let version = desk.view().version.unwrap();
    // 9 % from a 65 % glycerite: 13.85 %.
    assert!(version.summary.contains("13.8"), "{}", version.summary);
    desk.fill("swap.figure", "oil");
    desk.fill("swap.target", "99");
    let view = desk.view();
    assert!(view.version.is_none());
    assert!(view.refused[0].starts_with("This cannot all be kept: "), "{:#?}", view.refused);
    assert!(
        view.refused.iter().any(|said| said.starts_with("The smallest change") || said.starts_with("Nothing of it"))
    );
    let wrong =
        desk.send(SwapCommand::SetSwapField { field: "swap.target".into(), text: "much".into() }).answer.unwrap();
    assert!(wrong.error.is_some_and(|error| error.contains("0 to 100")));
}

#[test]
fn the_cheapest_says_what_has_no_price_and_what_expires_is_used_up() {
    let mut desk = Desk::open();
    desk.ask("cheapest");
    assert!(desk.view().said.iter().any(|said| said.contains("No prices are known")));
    for (material, price) in [(SQUALANE, "40"), (SUNFLOWER, "4")] {
        desk.hold(material, HoldingField::Price, price);
        desk.hold(material, HoldingField::Currency, "EUR");
        desk.hold(material, HoldingField::Pack, "100 g");
    }
    desk.fill("swap.further", "somewhat");
    let view = desk.view();
    assert!(view.said.iter().any(|said| said.contains("Without a price")), "{:?}", view.said);
    let version = view.version.unwrap();
    let after = |name: &str| {
        let pair = version.lines.iter().find(|pair| pair.name.starts_with(name)).unwrap();
        pair.after.parse::<f64>().unwrap_or(0.0)
    };
    assert!(after("Sunflower") > 7.0 && after("Squalane") < 4.0, "{:#?}", version.lines);
    desk.ask("expiring");
    assert!(desk.view().said.iter().any(|said| said.contains("expires")));
    desk.hold(SQUALANE, HoldingField::Expiry, "2025-12-24");
    let version = desk.view().version.unwrap();
    let squalane = version.lines.iter().find(|pair| pair.name == "Squalane").unwrap();
    assert!(squalane.after.parse::<f64>().unwrap() > 4.0, "{:#?}", version.lines);
}

#[test]
fn a_reader_who_lacks_a_line_hears_the_author_first_and_weighs_their_own_version() {
    let mut desk = Desk::open();
    let line = desk.line(SQUALANE);
    desk.send(SwapCommand::SetSubstitution { line, text: "Jojoba oil does as well.".into() });
    let id = desk.0.open_formula().unwrap();
    let fragment = desk.0.link_of(id, "https://maker.example/", false).fragment;
    let options = ReadingOptions { batch: Some("50 g".into()), ..ReadingOptions::default() };
    let lacks = |way: Option<&str>| Lacks { lines: vec![Lack { line: line.0, way: way.map(str::to_owned) }] };
    let view = read_shared_without(&fragment, &options, &lacks(None));
    let without = &view.without[0];
    assert_eq!((without.name.as_str(), without.note.as_str()), ("Squalane", "Jojoba oil does as well."));
    assert_eq!(without.ways[0].key, "author");
    assert!(view.whose.contains("your version, not the author"), "{}", view.whose);
    let chosen = without.ways.iter().find(|way| way.chosen).unwrap();
    assert_ne!(chosen.key, "author");
    let lines = &view.reading.update.lines;
    assert!(!lines.iter().any(|line| line.name == "Squalane"));
    // It is weighed in the reader's batch.
    assert!(view.reading.update.formula.as_ref().unwrap().total_mass.trim().starts_with("50.0"));
    // The author's words alone change no amount, and it stays the author's formula.
    let by_author = read_shared_without(&fragment, &options, &lacks(Some("author")));
    assert_eq!(by_author.whose, "");
    assert!(by_author.reading.update.lines.iter().any(|line| line.name == "Squalane"));
    // Another way of those that were offered.
    let other = without.ways.iter().find(|way| !way.chosen && way.key != "author").unwrap();
    let again = read_shared_without(&fragment, &options, &lacks(Some(&other.key)));
    assert!(again.without[0].ways.iter().any(|way| way.chosen && way.key == other.key));
    let mut maker = Desk::open();
    let own = maker.0.read_link_without(&fragment, None, &lacks(None));
    assert_eq!(own.whose, view.whose);
    // What is no link, and lines that are none, are said or passed over.
    assert!(read_shared_without("f=AAAA", &options, &lacks(None)).reading.error.is_some());
    let none = Lacks { lines: vec![Lack { line: 9_999, way: None }] };
    assert_eq!(read_shared_without(&fragment, &options, &none).without.len(), 0);
}

#[test]
fn the_authors_table_is_part_of_what_is_written_out() {
    let mut desk = Desk::open();
    let line = desk.line(SQUALANE);
    desk.send(SwapCommand::SetSubstitution { line, text: "Jojoba <oil> does as well.".into() });
    let id = desk.0.open_formula().unwrap();
    let plain = desk.0.write_up(id, WrittenForm::Markdown);
    let written = desk.0.write_up_with_substitutions(id, WrittenForm::Markdown);
    assert!(written.starts_with(&plain) && written.contains("## If you lack something"));
    assert!(written.contains("| Squalane | as the author says | Jojoba \\<oil\\> does as well. |"), "{written}");
    let rows = written.lines().filter(|line| line.contains('%') && line.starts_with('|')).count();
    assert!(rows > 10, "{written}");
    let html = desk.0.write_up_with_substitutions(id, WrittenForm::Html);
    assert!(html.contains("<h3>If you lack something</h3>") && html.contains("Jojoba &lt;oil&gt;"), "{html}");
}

#[test]
fn without_its_piece_nothing_is_asked_and_nothing_fails() {
    set_here(Piece::Swap, false);
    let mut session =
        Session::open(Box::new(MemoryStore::default()), Box::new(QuietRoom::at(1, 1)), DecimalMark::Point);
    session.apply(SwapCommand::LookAtSwap { looking: true });
    assert!(session.show_everything().swap.is_none());
    set_here(Piece::Swap, true);
}
