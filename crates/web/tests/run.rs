//! A run at the bench without a browser: every act kept at once, broken off and taken up again, finished and taken back.
#![cfg(not(target_arch = "wasm32"))]
// The hands of these tests fail a test as it would itself.
#![allow(clippy::unwrap_used)]

mod hands;

use hands::at_bench;
use stillroom_core::MaterialId;
use stillroom_core::number::DecimalMark;
use stillroom_web::rooms::batches::command::BatchesCommand;
use stillroom_web::rooms::batches::view::{CardField, CardView, RunView};
use stillroom_web::rooms::command::DeskCommand;
use stillroom_web::rooms::materials::command::HoldingField;
use stillroom_web::rooms::materials::command::MaterialsCommand;
use stillroom_web::rooms::update::Update;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom};

/// A page of a browser that may be killed: the store outlives it.
struct Page {
    store: MemoryStore,
    bench: QuietRoom,
    session: Session,
}

impl Page {
    fn open(store: MemoryStore, bench: QuietRoom) -> Self {
        let mut session = Session::open(Box::new(store.clone()), Box::new(bench.clone()), DecimalMark::Point);
        session.apply(BatchesCommand::LookAtBatches { looking: true });
        Self { store, bench, session }
    }

    fn begin() -> Self {
        let mut page = Self::open(MemoryStore::default(), QuietRoom::at(1_764_054_000_000, 1_000));
        let made = page.act("new", "", "").answer.unwrap();
        assert_eq!(made.error, None);
        page
    }

    fn act(&mut self, act: &str, on: &str, text: &str) -> Update {
        self.session.apply(at_bench(act, on, text).unwrap())
    }

    fn send(&mut self, command: BatchesCommand) -> Update {
        self.session.apply(command)
    }

    /// Acts as the large area does.
    fn next(&mut self, text: &str) -> Update {
        let card = self.run().card;
        assert!(!card.next.refused, "{card:?}");
        self.send(with_text(card.next.command.unwrap(), text))
    }

    /// Kills the tab without a word and opens it again.
    fn kill(&mut self) {
        let (store, bench) = (self.store.clone(), self.bench.clone());
        *self = Self::open(store, bench);
    }

    fn run(&mut self) -> RunView {
        self.session.show_everything().run.unwrap()
    }

    fn card(&mut self) -> CardView {
        self.run().card
    }

    fn go_to(&mut self, title: &str) {
        for _ in 0..60 {
            if self.card().title.starts_with(title) {
                return;
            }
            self.next("");
        }
        panic!("no card “{title}”; the last was {:?}", self.card().title);
    }

    fn hold(&mut self, material: u32, field: HoldingField, text: &str) {
        let material = MaterialId::Catalogue(material);
        self.session.apply(MaterialsCommand::SetHolding { material, field, text: text.into() });
    }

    fn stock(&mut self, material: u32) -> String {
        self.session.apply(MaterialsCommand::OpenMaterial { material: MaterialId::Catalogue(material) });
        self.session.show_everything().material.unwrap().holding.stock
    }
}

fn field<'a>(card: &'a CardView, begins: &str) -> &'a CardField {
    card.fields.iter().find(|field| field.field.starts_with(begins)).unwrap()
}

/// A command with what was typed.
fn with_text(mut command: BatchesCommand, typed: &str) -> BatchesCommand {
    match &mut command {
        BatchesCommand::WeighBatch { gross: text, .. }
        | BatchesCommand::Fill { count: text, .. }
        | BatchesCommand::WeighEmptyBeaker { text, .. }
        | BatchesCommand::Pour { text, .. }
        | BatchesCommand::PutBackWater { text, .. }
        | BatchesCommand::Temper { text, .. }
        | BatchesCommand::WeighHot { text, .. }
        | BatchesCommand::NotePh { text } => typed.clone_into(text),
        other => assert!(typed.is_empty(), "{other:?} takes no text"),
    }
    command
}

/// What of a view says where the run stands; the clock ticks on.
fn standing(view: &RunView) -> (String, String, Vec<String>, usize, Vec<(String, String)>) {
    let card = &view.card;
    let materials = view.record.materials.iter().map(|line| (line.weighed.clone(), line.target.clone())).collect();
    (
        card.step.clone(),
        card.big.clone(),
        view.steps.iter().map(|step| format!("{step:?}")).collect(),
        view.done,
        materials,
    )
}

#[test]
fn a_run_killed_at_every_step_stands_where_it_stood() {
    let mut page = Page::begin();
    let mut steps = 0;
    while !page.run().finished {
        let before = page.run();
        page.kill();
        let after = page.run();
        assert_eq!(standing(&before), standing(&after));
        assert_eq!(before.record.log, after.record.log);
        page.next("");
        steps += 1;
        assert!(steps < 60, "{:?}", page.card());
    }
    // The example has thirteen lines in three phases.
    assert!(steps > 25, "{steps}");
    page.kill();
    let view = page.session.show_everything();
    assert!(!view.batches.unwrap().cards[0].running);
}

#[test]
fn ten_percent_too_much_betaine_is_answered_in_three_ways() {
    let mut page = Page::begin();
    page.go_to("Betaine");
    // 2 % of 210 g.
    assert_eq!(page.card().big, "4.2");
    page.next("4.4");
    let card = page.card();
    assert!(card.next.refused && card.warnings[0].text.starts_with("0.2\u{a0}g too much"), "{card:?}");
    let labels: Vec<&str> = card.choices.iter().map(|choice| choice.label.as_str()).collect();
    assert_eq!(labels.len(), 3, "{labels:?}");
    assert!(labels[0].contains("batch of 220"), "{labels:?}");
    // The water is in the beaker already: it cannot give way.
    assert!(card.choices[1].refused, "{card:?}");
    page.send(card.choices[0].command.clone().unwrap());
    let card = page.card();
    assert_eq!(card.title, "Water, distilled");
    assert!(card.next.label.ends_with("is in"), "{card:?}");
    // What was poured before is topped up first, then it goes on.
    page.next("");
    page.next("");
    assert_eq!(page.card().title, "Allantoin");
    assert!(page.run().record.deviations[0].contains("from 210\u{a0}g to 220\u{a0}g"));
    page.act("take-back", "", "");
    page.act("take-back", "", "");
    page.act("take-back", "", "");
    // What is over still stands: that is all.
    assert_eq!(page.run().record.deviations, ["Betaine: 4.4\u{a0}g weighed, 4.2\u{a0}g wanted (+4.8\u{a0}%)."]);
    // What was taken back stays in the log, crossed out.
    assert_eq!(page.run().record.log.iter().filter(|line| line.taken_back).count(), 3);
}

#[test]
fn water_that_evaporated_is_put_back_and_stands_in_the_record() {
    let mut page = Page::begin();
    page.go_to("Weigh the empty beaker");
    page.next("150.5");
    page.go_to("Weigh the beaker again");
    let card = page.card();
    assert!(card.figures.iter().any(|figure| figure.value.contains('→')), "a forecast: {card:?}");
    let hot = field(&card, "run.hot:").command.clone().unwrap();
    let cold: f64 = field(&card, "run.cold:").text.parse().unwrap();
    let refused = page.send(with_text(hot.clone(), &format!("{}", cold + 5.0))).answer.unwrap();
    assert_eq!(refused.code, Some("evaporation.heavier"));
    page.send(with_text(hot, &format!("{:.1}", cold - 4.3)));
    let card = page.card();
    assert_eq!(card.big, "4.3");
    assert!(matches!(card.next.command, Some(BatchesCommand::PutBackWater { .. })), "{card:?}");
    page.next("");
    assert!(page.run().record.results.iter().any(|pair| pair.value.starts_with("4.3")));
    assert!(page.run().record.deviations.iter().all(|line| !line.contains("water")));
}

#[test]
fn what_is_typed_wrong_says_what_is_accepted_and_changes_nothing() {
    let mut page = Page::begin();
    page.go_to("Weigh the empty beaker");
    let before = page.run();
    let answer = page.next("heavy").answer.unwrap();
    assert_eq!(answer.code, Some("number.not-a-number"));
    assert!(answer.error.unwrap().contains("what the scale shows"));
    page.go_to("Water");
    let answer = page.next("0").answer.unwrap();
    assert_eq!(answer.code, Some("run.nothing-poured"));
    let card = page.card();
    assert_eq!(page.act("temperature", "batch", "900").answer.unwrap().code, Some("number.out-of-range"));
    assert_eq!(page.card().step, card.step);
    assert_ne!(before.card.step, card.step);
    for nonsense in [("pour", "999", "3"), ("hot", "77", "3"), ("temper", "99", ""), ("say", "", "x")] {
        let before = page.run().record.log;
        page.act(nonsense.0, nonsense.1, nonsense.2);
        assert_eq!(page.run().record.log, before, "{nonsense:?}");
    }
}

#[test]
fn a_finished_batch_draws_the_stock_and_gives_it_back() {
    const BETAINE: u32 = 4;
    let mut page = Page::open(MemoryStore::default(), QuietRoom::at(1_764_054_000_000, 1_000));
    let hit = page.session.search("betaine", &stillroom_catalogue::Filter::default());
    let betaine = hit.iter().find(|hit| hit.name == "Betaine").map(|hit| hit.id.clone()).unwrap();
    let number: u32 = betaine.trim_start_matches('c').parse().unwrap_or(BETAINE);
    page.hold(number, HoldingField::Stock, "100");
    page.hold(number, HoldingField::Lot, "B-12");
    page.hold(number, HoldingField::Expiry, "2025-11-20");
    page.act("new", "", "");
    let warnings = page.run().warnings;
    assert!(warnings.len() == 1 && warnings[0].text.contains("5 days ago"), "{warnings:?}");
    page.go_to("Look at it and sign");
    page.act("say", "released-by", "A maker");
    page.next("");
    assert_eq!(page.stock(number), "95.8");
    let run = page.run();
    let line = run.record.materials.iter().find(|line| line.name == "Betaine").unwrap();
    assert_eq!((line.lot.as_str(), line.weighed.as_str(), line.odd), ("B-12", "4.2", true));
    // Undone, even after the page was killed.
    page.kill();
    page.act("open", &run.id.unwrap(), "");
    page.act("take-back", "", "");
    assert_eq!(page.stock(number), "100");
    assert!(!page.run().finished);
    // And with the page's own undo: finished once more, then undone.
    page.next("");
    assert_eq!(page.stock(number), "95.8");
    page.session.apply(DeskCommand::Undo {});
    assert_eq!(page.stock(number), "100");
}

#[test]
fn a_journal_notes_a_day_reads_a_colour_and_fits_the_fade() {
    let mut page = Page::begin();
    page.next("");
    let pixels = |red: u8, green: u8, blue: u8| [red, green, blue, 255].repeat(64);
    let white = pixels(235, 232, 225);
    for (day, (red, green, blue)) in
        [("2025-11-25", (150, 180, 90)), ("2025-12-02", (165, 182, 120)), ("2025-12-25", (190, 195, 170))]
    {
        let made = page.act("entry-new", "", day).answer.unwrap().made.unwrap();
        let update = page.session.read_colour(made.parse().unwrap(), &pixels(red, green, blue), &white);
        assert_eq!(update.answer.unwrap().error, None);
    }
    page.act("entry", "1:ph", "5,2");
    page.act("entry", "1:look", "a ring of water at the rim");
    let refused = page.act("entry", "0:ph", "15").answer.unwrap();
    assert_eq!(refused.code, Some("number.out-of-range"));
    let refused = page.act("entry-new", "", "yesterday").answer.unwrap();
    assert_eq!(refused.code, Some("day.not-a-day"));
    page.kill();
    let journal = page.session.show_everything().journal.unwrap();
    assert_eq!(journal.entries[1].title, "Day 7 · 2\u{a0}December\u{a0}2025");
    assert_eq!(journal.entries[1].fields[0].text, "5.2");
    assert!(journal.entries[1].swatch.starts_with('#') && journal.entries[1].colour.contains("ΔE00"));
    assert!(journal.colour[1].range.contains("days"), "{:?}", journal.colour);
    assert!(journal.curve.is_some());
    assert!(journal.calendar.contains("DTSTART;VALUE=DATE:20251126\r\n"));
    assert!(!journal.calendar.contains("VALUE=DATE:20251202"), "that day was looked at already");
    let dark = page.session.read_colour(0, &pixels(150, 180, 90), &pixels(20, 20, 20));
    assert_eq!(dark.answer.unwrap().code, Some("colour.white-too-dark"));
}

#[test]
fn the_verdict_on_a_colour_never_says_other_than_its_numbers() {
    let mut page = Page::begin();
    page.next("");
    let pixels = |red: u8, green: u8, blue: u8| [red, green, blue, 255].repeat(64);
    let white = pixels(245, 245, 245);
    let read = |page: &mut Page, day: &str, (red, green, blue)| {
        let made = page.act("entry-new", "", day).answer.unwrap().made.unwrap();
        let update = page.session.read_colour(made.parse().unwrap(), &pixels(red, green, blue), &white);
        assert_eq!(update.answer.unwrap().error, None);
    };
    // A cream that turned tan: its chroma rose, so that there is no fade to speak of, and yet it changed for all to see.
    read(&mut page, "2025-11-25", (232, 224, 205));
    read(&mut page, "2025-12-02", (205, 180, 140));
    let figures = page.session.show_everything().journal.unwrap().colour;
    assert!(figures[0].range.starts_with("Clearly changed:"), "{figures:?}");
    assert!(figures[0].range.contains("darker") && figures[0].range.contains("yellower"), "{figures:?}");
    assert!(!figures[1].range.contains("does not fade") && !figures[1].range.contains("holds"), "{figures:?}");
    // One that stayed as it was.
    let mut page = Page::begin();
    page.next("");
    read(&mut page, "2025-11-25", (232, 224, 205));
    read(&mut page, "2025-12-02", (232, 224, 205));
    let figures = page.session.show_everything().journal.unwrap().colour;
    assert_eq!(figures[0].range, "No change that photos can tell.");
    assert!(figures[1].range.starts_with("It holds"), "{figures:?}");
}

#[test]
fn a_look_that_is_due_or_overdue_is_not_to_come() {
    let mut page = Page::begin();
    page.next("");
    let due = |page: &mut Page| {
        let due = page.session.show_everything().journal.unwrap().due;
        due.iter().map(|each| format!("{} {}", each.state, each.about)).collect::<Vec<_>>()
    };
    let day = 24 * 60 * 60 * 1000;
    assert_eq!(due(&mut page)[..2], ["due due today", "to-come to come"]);
    page.bench.wait(day);
    assert_eq!(due(&mut page)[..3], ["overdue overdue by a day", "due due today", "to-come to come"]);
    page.bench.wait(8 * day);
    page.act("entry-new", "", "");
    assert_eq!(due(&mut page)[1..4], ["overdue overdue by 8 days", "seen ✓ looked at", "to-come to come"]);
}

#[test]
fn the_makers_own_method_is_in_the_run_and_in_the_record() {
    let mut page = Page::begin();
    let first = "1. Scatter the xanthan gum";
    let card = page.card();
    assert!(card.about.iter().any(|line| line.starts_with(first)), "{card:?}");
    let head = page.run().record.head;
    assert!(head.iter().any(|pair| pair.label == "Method" && pair.value.contains(first)), "{head:?}");
}
