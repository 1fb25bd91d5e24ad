//! The costs without a browser: the example priced, made in units, bought for, and nothing of it in what is shared.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used)]

use rust_decimal::Decimal;
use stillroom_core::MaterialId;
use stillroom_core::batch_plan::BatchWay;
use stillroom_core::number::DecimalMark;
use stillroom_web::contract::Answer;
use stillroom_web::messages::{Language, speak_natively};
use stillroom_web::rooms::bench::command::BenchCommand;
use stillroom_web::rooms::command::{Command, DeskCommand};
use stillroom_web::rooms::costs::command::CostsCommand;
use stillroom_web::rooms::costs::view::{CostBuyView, CostLineView, CostsView};
use stillroom_web::rooms::formula::command::FormulaCommand;
use stillroom_web::rooms::materials::command::{HoldingField, MaterialsCommand};
use stillroom_web::rooms::share::write_up::WrittenForm;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom};

mod hands;

/// Somebody at the costs of the example.
struct Desk(Session);

impl Desk {
    fn on(store: &MemoryStore) -> Self {
        // 28 November 2026.
        let room = QuietRoom::at(1_795_824_000_000, 1_000);
        let mut session = Session::open(Box::new(store.clone()), Box::new(room), DecimalMark::Point);
        session.apply(CostsCommand::LookAtCosts { looking: true });
        Self(session)
    }

    fn open() -> Self {
        Self::on(&MemoryStore::default())
    }

    fn send(&mut self, command: impl Into<Command>) -> Answer {
        self.0.apply(command).answer.unwrap()
    }

    fn view(&mut self) -> CostsView {
        self.0.show_everything().costs.unwrap()
    }

    fn fill(&mut self, field: &str, text: &str) -> Answer {
        self.send(CostsCommand::SetCostField { field: field.into(), text: text.into() })
    }

    fn field(&mut self, name: &str) -> String {
        self.view().fields.into_iter().find(|field| field.field == name).unwrap_or_else(|| panic!("no {name}")).text
    }

    fn bought(&mut self, name: &str) -> CostBuyView {
        self.view().buy.into_iter().find(|each| each.name == name).unwrap_or_else(|| panic!("no {name}"))
    }

    fn line(&mut self, name: &str) -> CostLineView {
        self.view().lines.into_iter().find(|each| each.name == name).unwrap_or_else(|| panic!("no {name}"))
    }

    fn hold(&mut self, name: &str, field: HoldingField, text: &str) -> Answer {
        let material: MaterialId = self.bought(name).material.parse().unwrap();
        self.send(MaterialsCommand::SetHolding { material, field, text: text.into() })
    }

    fn price(&mut self, name: &str, price: &str, pack: &str) {
        assert_eq!(self.hold(name, HoldingField::Price, price).error, None);
        assert_eq!(self.hold(name, HoldingField::Pack, pack).error, None);
    }

    fn said(&mut self) -> String {
        self.view().said.iter().map(|each| each.text.as_str()).collect::<Vec<_>>().join("\n")
    }
}

/// The number of an amount such as `1.50 EUR`.
fn amount(text: &str) -> Decimal {
    text.trim_start_matches("at least ").split_whitespace().next().unwrap().parse().unwrap_or_default()
}

#[test]
fn three_priced_packs_and_twelve_units_say_what_they_cost_and_what_to_buy() {
    let mut desk = Desk::open();
    assert_eq!(desk.fill("batch.count", "12").error, None);
    assert_eq!(desk.fill("batch.volume", "50").error, None);
    desk.price("Betaine", "12", "100");
    desk.price("Squalane", "18.40", "100");
    desk.price("Allantoin", "4.50", "50");
    desk.fill("cost.price", "0.85");
    desk.fill("cost.minutes", "90");
    desk.fill("cost.hour", "20");
    let view = desk.view();
    // What is planned on the bench is what is reckoned here.
    assert_eq!(desk.0.formula().unwrap().batch.containers.count, 12);
    assert!(view.about.starts_with("Planned: 12 units of 50\u{a0}mL, 6"), "{}", view.about);
    // Betaine is 2 % of it: of 625 g 12.5 g, at 12.00 for 100 g.
    let betaine = desk.line("Betaine");
    assert_eq!((betaine.about.as_str(), betaine.cost.as_str()), ("12.5\u{a0}g", "1.50 EUR"));
    assert_eq!(desk.line("Packaging").cost, "10.20 EUR");
    assert_eq!(desk.line("Labour").cost, "30.00 EUR");
    // Written amounts sum to the written batch, and the bars to the whole.
    let sum: Decimal = view.lines.iter().map(|line| amount(&line.cost)).sum();
    let batch = view.figures.iter().find(|each| each.label == "The batch").unwrap();
    assert_eq!(sum, amount(&batch.value), "{}", batch.value);
    let shares: f64 = view.lines.iter().map(|line| line.fraction).sum();
    assert!((shares - 1.0).abs() < 1e-9, "{shares}");
    // What has no price is said by name, and is not nothing.
    assert_eq!(desk.line("Xanthan gum").cost, "no price");
    assert!(desk.line("Xanthan gum").unknown);
    assert!(desk.said().contains("Xanthan gum"), "{}", desk.said());
    assert!(view.headline_about.starts_with("at least"), "{}", view.headline_about);
    assert_eq!(desk.line("Water, distilled").cost, "taken as free");
    // Whole packs: 25 g of squalane out of one of 100 g.
    let squalane = desk.bought("Squalane");
    assert_eq!(squalane.packs, "one pack of 100\u{a0}g; 75\u{a0}g left then");
    assert_eq!(squalane.cost, "18.40 EUR");
    // With enough there, nothing is bought of it.
    desk.hold("Squalane", HoldingField::Stock, "30");
    assert!(!desk.bought("Squalane").lacking);
    desk.fill("cost.batches", "3");
    let squalane = desk.bought("Squalane");
    assert_eq!(squalane.about, "75\u{a0}g needed, 30\u{a0}g there");
    assert_eq!(squalane.packs, "one pack of 100\u{a0}g; 55\u{a0}g left then");
    let view = desk.view();
    assert!(view.buy_text.starts_with("To buy for 3 batches of Cucumber and oat gel cream\n- "), "{}", view.buy_text);
    assert!(view.buy_text.contains("- Squalane: one pack of 100\u{a0}g; 55\u{a0}g left then (18.40 EUR)"));
    assert!(view.buy_table.contains("Squalane,75,30,45,1,100,18.40,EUR\r\n"), "{}", view.buy_table);
}

#[test]
fn what_the_maker_makes_costs_what_it_is_made_of_until_it_has_a_price() {
    let mut desk = Desk::open();
    desk.fill("batch.count", "12");
    // The glycerite of the example has no price: its parts have to be bought.
    let names: Vec<String> = desk.view().buy.into_iter().map(|each| each.name).collect();
    assert!(names.iter().any(|name| name == "Glycerin, vegetable"), "{names:?}");
    assert!(!names.iter().any(|name| name.starts_with("Cucumber glycerite")), "{names:?}");
    let glycerite = |desk: &mut Desk| {
        desk.view().lines.into_iter().find(|line| line.name.starts_with("Cucumber glycerite")).unwrap()
    };
    assert_eq!(glycerite(&mut desk).cost, "no price");
    desk.price("Glycerin, vegetable", "6", "1000");
    let part = glycerite(&mut desk);
    assert!(part.cost.starts_with("at least ") && part.unknown, "{}", part.cost);
    // What is there of it is used up before parts are bought.
    let needed = |desk: &mut Desk| desk.bought("Glycerin, vegetable").about;
    let before = needed(&mut desk);
    let material =
        desk.0.formula().unwrap().lines().find(|line| matches!(line.material, MaterialId::Own(_))).unwrap().material;
    desk.send(MaterialsCommand::SetHolding { material, field: HoldingField::Stock, text: "10".into() });
    assert_ne!(needed(&mut desk), before);
    desk.send(MaterialsCommand::SetHolding { material, field: HoldingField::Price, text: "9".into() });
    desk.send(MaterialsCommand::SetHolding { material, field: HoldingField::Pack, text: "100".into() });
    let names: Vec<String> = desk.view().buy.into_iter().map(|each| each.name).collect();
    assert!(names.iter().any(|name| name.starts_with("Cucumber glycerite")), "{names:?}");
}

#[test]
fn wrong_input_is_said_beside_its_field_and_the_last_good_state_stays() {
    let mut desk = Desk::open();
    desk.fill("cost.margin", "60");
    desk.fill("cost.wastage", "2");
    for (field, text, code) in [
        ("cost.margin", "much", "number.not-a-number"),
        ("cost.price", "-1", "number.out-of-range"),
        ("cost.stays", "95", "number.out-of-range"),
        ("batch.count", "1.5", "number.not-whole"),
        ("batch.count", "0", "number.out-of-range"),
        ("cost.batches", "2.5", "number.not-whole"),
        ("cost.currency", "euro", "quantity.not-a-currency"),
        ("batch.volume", "x", "number.not-a-number"),
    ] {
        let answer = desk.fill(field, text);
        assert_eq!(answer.field.as_deref(), Some(field));
        assert_eq!(answer.code, Some(code), "{field} {text}: {:?}", answer.error);
        assert!(answer.error.unwrap().len() > 20);
    }
    assert_eq!(desk.field("cost.margin"), "60");
    assert_eq!(desk.field("cost.currency"), "EUR");
    for (language, word) in [(Language::German, "Prozent"), (Language::French, "pourcentage")] {
        speak_natively(language);
        let error = desk.fill("cost.margin", "x").error.unwrap();
        assert!(error.contains(word), "{error}");
    }
    speak_natively(Language::English);
}

#[test]
fn it_is_kept_and_every_change_can_be_taken_back() {
    let store = MemoryStore::default();
    let mut desk = Desk::on(&store);
    desk.fill("cost.price", "0.85");
    desk.fill("cost.hour", "20");
    desk.fill("batch.count", "12");
    desk.price("Betaine", "12", "100");
    desk.0.keep();
    let mut again = Desk::on(&store);
    assert_eq!(again.field("cost.price"), "0.85");
    assert_eq!(again.field("cost.hour"), "20");
    assert_eq!(again.field("batch.count"), "12");
    assert_eq!(again.bought("Betaine").holding.pack, "100");
    // Back, one act after the other, and forth again.
    for _ in 0..5 {
        desk.send(DeskCommand::Undo {});
    }
    assert_eq!(desk.field("cost.price"), "");
    assert_eq!(desk.field("cost.hour"), "");
    assert_ne!(desk.field("batch.count"), "12");
    for _ in 0..5 {
        desk.send(DeskCommand::Redo {});
    }
    assert_eq!(desk.field("cost.price"), "0.85");
    assert_eq!(desk.bought("Betaine").holding.price, "12.00");
}

#[test]
fn another_currency_is_said_and_not_added() {
    let mut desk = Desk::open();
    // A currency without a price is not a price of nothing.
    let answer = desk.hold("Allantoin", HoldingField::Currency, "usd");
    assert_eq!(answer.code, Some("holding.no-price"));
    assert_eq!(desk.line("Allantoin").cost, "no price");
    desk.price("Betaine", "12", "100");
    desk.price("Squalane", "20", "100");
    desk.hold("Squalane", HoldingField::Currency, "usd");
    desk.fill("cost.currency", "eur");
    assert!(
        desk.said().contains("Priced in another currency than EUR, and missing from every sum: Squalane."),
        "{}",
        desk.said()
    );
    assert_eq!(desk.line("Squalane").cost, "no price");
    desk.fill("cost.currency", "usd");
    assert!(desk.said().contains("than USD, and missing from every sum: Betaine."), "{}", desk.said());
    // The yen has no smaller coin.
    desk.hold("Squalane", HoldingField::Currency, "jpy");
    desk.hold("Squalane", HoldingField::Price, "2099");
    desk.fill("cost.currency", "jpy");
    assert!(!desk.line("Squalane").cost.contains('.'), "{}", desk.line("Squalane").cost);
}

#[test]
fn containers_are_counted_by_what_comes_out_and_their_walls_are_judged() {
    let mut desk = Desk::open();
    desk.send(BenchCommand::SetBatchWay { way: stillroom_core::batch_plan::BatchWay::Mass });
    desk.send(BenchCommand::SetBatchMass { text: "500".into() });
    desk.fill("batch.volume", "50");
    desk.fill("batch.loss", "4");
    desk.fill("batch.density", "1");
    let figure = |desk: &mut Desk, label: &str| {
        desk.view().filling.into_iter().find(|each| each.label == label).unwrap_or_else(|| panic!("no {label}"))
    };
    assert_eq!(figure(&mut desk, "Comes out").value, "480\u{a0}g");
    assert_eq!(figure(&mut desk, "Full containers").value, "9 of 50\u{a0}mL");
    assert_eq!(figure(&mut desk, "Left over").value, "30\u{a0}g");
    // By mass, the units are those that become full.
    assert_eq!(desk.field("batch.count"), "9");
    desk.fill("cost.stays", "10");
    assert_eq!(figure(&mut desk, "Can be got out of one").value, "45\u{a0}g");
    // Reckoned from what is in it, the count is a range.
    desk.fill("batch.density", "");
    assert!(figure(&mut desk, "Full containers").range.contains(" to "), "{:?}", figure(&mut desk, "Full containers"));
    let misfits = |desk: &mut Desk| desk.view().misfits.iter().map(|each| each.text.clone()).collect::<String>();
    assert_eq!(misfits(&mut desk), "");
    desk.fill("cost.walls", "bare-aluminium");
    desk.send(FormulaCommand::SetTargetPh { text: "3.5".into() });
    assert!(
        misfits(&mut desk).contains("Below pH 4") && misfits(&mut desk).contains("Pourbaix"),
        "{}",
        misfits(&mut desk)
    );
    desk.fill("cost.walls", "polystyrene");
    assert!(misfits(&mut desk).starts_with("Nothing known here"), "{}", misfits(&mut desk));
    let found = desk.0.search("lavender essential oil", &stillroom_catalogue::Filter::default());
    let material: MaterialId = found.first().unwrap().id.parse().unwrap();
    let phase = desk.0.formula().unwrap().phases[0].id;
    desk.send(FormulaCommand::AddLine { phase, material });
    let line = desk.0.formula().unwrap().lines().find(|line| line.material == material).unwrap().id;
    desk.send(FormulaCommand::SetAmount { line, text: "0.3".into() });
    assert!(misfits(&mut desk).contains("Noguchi"), "{}", misfits(&mut desk));
}

#[test]
fn every_price_is_noted_with_its_day() {
    let store = MemoryStore::default();
    let mut desk = Desk::on(&store);
    desk.price("Betaine", "12", "100");
    desk.hold("Betaine", HoldingField::Shipping, "2.50");
    desk.0.keep();
    let remarks = desk.bought("Betaine").holding.remarks.join("\n").replace('\u{a0}', " ");
    assert!(remarks.contains("Price noted on 28 November 2026."), "{remarks}");
    // Two months later it costs more.
    let room = QuietRoom::at(1_801_000_000_000, 1_000);
    let session = Session::open(Box::new(store.clone()), Box::new(room), DecimalMark::Point);
    let mut later = Desk(session);
    later.send(CostsCommand::LookAtCosts { looking: true });
    assert_eq!(later.hold("Betaine", HoldingField::Price, "14").error, None);
    assert_eq!(later.bought("Betaine").holding.price, "14.00");
    let remarks = later.bought("Betaine").holding.remarks.join("\n").replace('\u{a0}', " ");
    assert!(remarks.contains("Before that: 12.00 EUR for 100 g, noted on 28 November 2026."), "{remarks}");
    // With shipping 16.50 a pack: of 100 g, 2 g go into a batch of 100 g.
    later.send(BenchCommand::SetBatchWay { way: stillroom_core::batch_plan::BatchWay::Mass });
    later.send(BenchCommand::SetBatchMass { text: "100".into() });
    assert_eq!(later.line("Betaine").cost, "0.33 EUR");
}

#[test]
fn prices_go_out_as_a_table_and_come_back_with_what_they_would_change() {
    let mut desk = Desk::open();
    desk.price("Betaine", "12", "100");
    desk.hold("Betaine", HoldingField::Stock, "40");
    let table = desk.0.write_prices();
    assert!(table.contains(",Betaine,100,12,,EUR,40\r\n"), "{table}");
    assert_eq!(desk.0.read_prices(table.as_bytes()).summary, "Nothing in this table differs from what is noted.");
    let changed = table.replace(",Betaine,100,12,,EUR,40", ",Betaine,250,24.90,3,EUR,");
    let view = desk.0.read_prices(changed.as_bytes());
    assert_eq!((view.ready, view.problems.len()), (1, 0), "{view:?}");
    assert_eq!(
        view.changes,
        ["Betaine: price 12.00 EUR → 24.90 EUR; pack 100\u{a0}g → 250\u{a0}g; shipping nothing noted → 3.00"]
    );
    // Nothing has changed yet.
    assert_eq!(desk.bought("Betaine").holding.price, "12.00");
    desk.send(CostsCommand::TakePrices {});
    let betaine = desk.bought("Betaine").holding;
    assert_eq!((betaine.price.as_str(), betaine.pack.as_str(), betaine.stock.as_str()), ("24.90", "250", "40"));
    desk.send(DeskCommand::Undo {});
    assert_eq!(desk.bought("Betaine").holding.price, "12.00");
    // By halves nothing is taken in, and each wrong line is told.
    let wrong = "name,price,currency\nBetaine,13,EUR\nUnheard of,1,EUR\nSqualane,x,EUR\nBetaine,14,EUR\n";
    let view = desk.0.read_prices(wrong.as_bytes());
    assert_eq!((view.ready, view.problems.len()), (0, 3), "{:?}", view.problems);
    assert!(view.problems.iter().any(|problem| problem.contains('3') && problem.contains("Unheard of")));
    assert!(view.problems.iter().any(|problem| problem.contains('4') && problem.contains("price")));
    desk.send(CostsCommand::TakePrices {});
    assert_eq!(desk.bought("Betaine").holding.price, "12.00");
}

/// Makes 200 g as planned, fills three jars with 50 g each and finishes.
fn make_a_batch(desk: &mut Desk) {
    desk.send(BenchCommand::SetBatchWay { way: stillroom_core::batch_plan::BatchWay::Mass });
    desk.send(BenchCommand::SetBatchMass { text: "200".into() });
    let act = |desk: &mut Desk, word: &str, on: &str, text: &str| {
        desk.send(hands::at_bench(word, on, text).unwrap_or_else(|| panic!("no act {word}")))
    };
    act(desk, "look", "", "");
    let formula = desk.0.show_everything().formula.unwrap().id.unwrap();
    act(desk, "new", &formula, "");
    act(desk, "start", "", "");
    let lines: Vec<(u32, String)> = {
        let formula = desk.0.formula().unwrap();
        let shares = formula.balance();
        formula
            .lines()
            .map(|line| {
                let percent = shares.share_of(line.id).unwrap().value();
                (line.id.0, (percent * Decimal::TWO).round_dp(2).to_string())
            })
            .collect()
    };
    for (line, mass) in &lines {
        act(desk, "pour", &line.to_string(), mass);
    }
    act(desk, "fill", "", "3\n50");
    act(desk, "finish", "", "");
}

#[test]
fn a_batch_that_was_made_costs_what_its_materials_cost_on_its_day() {
    // 28 November 2026.
    let room = QuietRoom::at(1_795_824_000_000, 1_000);
    let mut session = Session::open(Box::new(MemoryStore::default()), Box::new(room.clone()), DecimalMark::Point);
    session.apply(CostsCommand::LookAtCosts { looking: true });
    let mut desk = Desk(session);
    desk.price("Betaine", "12", "100");
    make_a_batch(&mut desk);
    let then = desk.line("Betaine").cost;
    assert!(desk.said().replace('\u{a0}', " ").contains("noted by 28 November 2026"), "{}", desk.said());
    // Ten days later it costs twice as much, and another material gets its first price.
    room.wait(10 * 24 * 3_600_000);
    desk.price("Betaine", "24", "100");
    desk.price("Squalane", "18.40", "100");
    assert_eq!(desk.line("Betaine").cost, then, "the batch costs what it did");
    let said = desk.said();
    assert!(said.contains("with no price noted by then, at today’s: Squalane"), "{said}");
    // What is bought now, and a batch that is planned, cost what it costs now.
    desk.fill("cost.batches", "100");
    assert!(desk.bought("Betaine").cost.ends_with("EUR") && amount(&desk.bought("Betaine").cost) >= Decimal::from(24));
    desk.fill("cost.basis", "plan");
    let off = amount(&desk.line("Betaine").cost) - amount(&then) * Decimal::TWO;
    assert!(off.abs() <= Decimal::new(2, 2), "{then} {}", desk.line("Betaine").cost);
    assert!(!desk.said().contains("noted by"));
}

#[test]
fn a_batch_that_was_made_is_reckoned_by_what_went_in_and_what_came_out() {
    let mut desk = Desk::open();
    make_a_batch(&mut desk);
    desk.fill("batch.volume", "50");
    desk.fill("batch.density", "1");
    let view = desk.view();
    assert!(view.about.starts_with("Made last: lot "), "{}", view.about);
    assert!(view.about.ends_with("weighed in, 3 units."), "{}", view.about);
    let out = view.filling.iter().find(|each| each.label == "Comes out").unwrap();
    assert_eq!(out.value, "150\u{a0}g");
    let full = view.filling.iter().find(|each| each.label == "Full containers").unwrap();
    assert_eq!(full.value, "3 of 50\u{a0}mL");
    // Other units are another batch: the plan counts then, and one can go back.
    desk.fill("batch.count", "12");
    assert!(desk.view().about.starts_with("Planned: 12 units"), "{}", desk.view().about);
    desk.fill("cost.basis", "");
    assert!(desk.view().about.starts_with("Made last"));
}

#[test]
fn nothing_of_it_is_in_what_is_shared() {
    let mut desk = Desk::open();
    let planted = ["7351.77", "8642.11", "LOT-PLANTED-9", "SUPPLIER-PLANTED", "4321.99", "1357.31"];
    desk.price("Betaine", planted[0], "100");
    desk.hold("Betaine", HoldingField::Shipping, planted[1]);
    desk.hold("Betaine", HoldingField::Lot, planted[2]);
    desk.hold("Betaine", HoldingField::Note, planted[3]);
    desk.fill("cost.price", planted[4]);
    desk.fill("cost.hour", planted[5]);
    desk.fill("cost.minutes", "90");
    let id = desk.0.show_everything().formula.unwrap().id.unwrap();
    let id = stillroom_core::FormulaId::try_from(id).unwrap();
    let link = desk.0.link_of(id, "https://example.org/", false);
    let parcel = stillroom_exchange::link::read(&link.fragment).unwrap();
    let mut shared = vec![("link", format!("{link:?}")), ("parcel", format!("{parcel:?}"))];
    for form in ["markdown", "html", "text", "csv"] {
        let written = desk.0.write_up(id, WrittenForm::from_name(form).unwrap());
        assert!(written.contains("Betaine"), "{form}");
        shared.push((form, written));
    }
    for (what, text) in &shared {
        for planted in planted {
            assert!(!text.contains(planted), "{planted} is in the {what}");
        }
    }
    assert_eq!(parcel.formula.costs, "");
}

#[test]
fn a_batch_goes_into_containers_of_several_kinds_each_counted_priced_and_bought() {
    let mut desk = Desk::open();
    desk.fill("batch.volume", "50");
    desk.fill("batch.headspace", "0");
    desk.fill("batch.loss", "0");
    desk.fill("batch.density", "1");
    desk.price("Betaine", "12", "100");
    desk.send(BenchCommand::SetBatchWay { way: BatchWay::Mass });
    desk.send(BenchCommand::SetBatchMass { text: "640".into() });
    let one = desk.view();
    assert!(one.kinds.is_empty() && one.plan_kinds.is_empty());
    // Four bottles of 30 mL are filled first; jars of 50 mL take the rest: 640 g = 10 × 50 + 4 × 30 + 20.
    desk.send(CostsCommand::AddContainerKind {});
    desk.fill("cost.k2:name", "Bottle");
    desk.fill("cost.k2:count", "4");
    desk.fill("cost.price", "0.80");
    let view = desk.view();
    let figures: Vec<(String, String)> =
        view.filling.iter().map(|each| (each.label.clone(), each.value.replace('\u{a0}', " "))).collect();
    let is = |label: &str, value: &str| assert!(figures.contains(&(label.into(), value.into())), "{figures:?}");
    is("Container of 50\u{a0}mL", "10 of 50 mL");
    is("Bottle", "4 of 30 mL");
    is("Left over", "20 g");
    assert!(desk.said().contains("Containers without a price, which every sum lacks: Bottle"), "{}", desk.said());
    desk.fill("cost.k2:price", "0.60");
    assert!(!desk.said().contains("Containers without a price"));
    // Packaging: 10 × 0.80 + 4 × 0.60; the units cost together what the batch costs.
    assert_eq!(amount(&desk.line("Packaging").cost), Decimal::new(1040, 2));
    let view = desk.view();
    let costs = |label: &str| amount(&view.figures.iter().find(|each| each.label == label).unwrap().value);
    let together =
        costs("One unit: Container of 50\u{a0}mL") * Decimal::TEN + costs("One unit: Bottle") * Decimal::from(4);
    assert!((together - costs("The batch")).abs() <= Decimal::new(7, 2), "{together}");
    assert_eq!(view.headline_about, "at least, for one unit: Container of 50\u{a0}mL");
    // The list counts each, for as many batches as are asked for.
    desk.fill("cost.batches", "2");
    let view = desk.view();
    assert!(view.buy_text.contains("Container of 50\u{a0}mL: 20 pieces (16.00 EUR)"), "{}", view.buy_text);
    assert!(view.buy_text.contains("Bottle: 8 pieces (4.80 EUR)"), "{}", view.buy_text);
    assert!(view.buy_table.contains("Bottle,,,,8,,4.80,EUR"), "{}", view.buy_table);
    // What is short is said, and a batch that fills all is planned at one tap.
    desk.fill("cost.first", "number");
    desk.fill("cost.k2:count", "20");
    desk.send(BenchCommand::SetBatchMass { text: "500".into() });
    let said = desk.view().kinds_said.iter().map(|each| each.text.clone()).collect::<String>();
    assert!(said.contains("short: Bottle"), "{said}");
    desk.send(CostsCommand::PlanContainerKinds {});
    assert!(desk.view().kinds_said.is_empty());
    // A wrong number is said beside its field, and what held stays.
    for (field, wrong) in
        [("cost.k2:count", "half"), ("cost.k2:volume", ""), ("cost.k2:headspace", "95"), ("cost.k2:price", "-1")]
    {
        let before = desk.view();
        let error = desk.fill(field, wrong).error.unwrap_or_else(|| panic!("{field}"));
        assert!(field != "cost.k2:count" || error.contains("empty for the rest"), "{error}");
        assert_eq!(desk.view(), before, "{field}");
    }
    // Walls of each kind are looked at.
    desk.fill("cost.k2:walls", "polyester");
    assert!(!desk.view().misfits.is_empty());
    for key in ["k3", "k4", "k5", "k6"] {
        desk.send(CostsCommand::AddContainerKind {});
        assert_eq!(desk.view().kinds.last().unwrap().key, key);
    }
    assert!(!desk.view().more_kinds);
    for key in ["k2", "k3", "k4", "k5", "k6"] {
        desk.send(CostsCommand::RemoveContainerKind { kind: key.into() });
    }
    let view = desk.view();
    assert!(view.kinds.is_empty() && view.more_kinds);
    desk.send(DeskCommand::Undo {});
    assert_eq!(desk.view().kinds.len(), 1);
}
