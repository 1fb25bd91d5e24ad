//! The label without a browser: the example declared and laid out, what is said where something is not certain or missing.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used)]

use stillroom_core::number::DecimalMark;
use stillroom_core::{Amount, MaterialId, Percent, Purpose};
use stillroom_web::contract::Answer;
use stillroom_web::messages::{Language, speak_natively};
use stillroom_web::rooms::command::{Command, DeskCommand};
use stillroom_web::rooms::formula::command::FormulaCommand;
use stillroom_web::rooms::label::command::LabelCommand;
use stillroom_web::rooms::label::view::LabelView;
use stillroom_web::rooms::shelf::command::ShelfCommand;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom};

/// Somebody at the label of the example.
struct Desk(Session);

impl Desk {
    fn on(store: &MemoryStore) -> Self {
        // 28 November 2026.
        let room = QuietRoom::at(1_795_824_000_000, 1_000);
        let mut session = Session::open(Box::new(store.clone()), Box::new(room), DecimalMark::Point);
        session.apply(LabelCommand::LookAtLabel { looking: true });
        Self(session)
    }

    fn open() -> Self {
        Self::on(&MemoryStore::default())
    }

    fn send(&mut self, command: impl Into<Command>) {
        self.0.apply(command);
    }

    fn view(&mut self) -> LabelView {
        self.0.show_everything().label.unwrap()
    }

    fn fill(&mut self, field: &str, text: &str) -> Answer {
        let field = format!("label.{field}");
        self.0.apply(LabelCommand::SetLabelField { field, text: text.into() }).answer.unwrap()
    }

    fn field(&mut self, name: &str) -> String {
        let name = format!("label.{name}");
        self.view().fields.into_iter().find(|field| field.field == name).unwrap().text
    }

    /// Adds a material of the catalogue by the name it is searched by.
    fn add(&mut self, name: &str, percent: &str) {
        let found = self.0.search(name, &stillroom_catalogue::Filter::default());
        let material: MaterialId = found.first().unwrap_or_else(|| panic!("no {name}")).id.parse().unwrap();
        let phase = self.0.formula().unwrap().phases[0].id;
        self.send(FormulaCommand::AddLine { phase, material });
        let line = self.0.formula().unwrap().lines().filter(|line| line.material == material).last().unwrap().id;
        self.send(FormulaCommand::SetAmount { line, text: percent.into() });
        let stated = self.0.formula().unwrap().line(line).unwrap().amount;
        assert_eq!(stated, Amount::Percent(Percent::new(percent.parse().unwrap()).unwrap()), "{name}");
    }
}

fn texts(view: &[stillroom_web::rooms::batches::view::RemarkView]) -> String {
    view.iter().map(|each| each.text.as_str()).collect::<Vec<_>>().join("\n")
}

#[test]
fn the_example_is_declared_by_mass_and_drawn_for_a_jar() {
    let mut desk = Desk::open();
    let view = desk.view();
    assert_eq!(view.problem, "");
    assert!(view.declaration.starts_with("Ingredients: Aqua, Glycerin, "), "{}", view.declaration);
    assert!(view.declaration.ends_with('.'));
    // Every name once, and by falling share as long as it counts.
    let mut names: Vec<&str> = view.names.iter().map(|each| each.name.as_str()).collect();
    let count = names.len();
    assert!(count > 10);
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), count);
    let shares: Vec<f64> = view
        .names
        .iter()
        .filter(|each| each.place == "weight")
        .map(|each| each.percent.split('\u{a0}').next().unwrap().parse().unwrap())
        .collect();
    assert!(shares.len() > 5 && shares.is_sorted_by(|one, next| one >= next), "{shares:?}");
    let art = view.art.unwrap();
    assert_eq!((art.shape, art.width, art.height), ("wrap", 180.0, 30.0));
    let drawn: String = art.runs.iter().map(|run| run.text.as_str()).collect::<Vec<_>>().join(" ");
    for said in ["Ingredients:", "Aqua", "Sorbate", "mL", "external"] {
        assert!(drawn.contains(said), "{said} in {drawn}");
    }
    assert_eq!(view.sheet.unwrap().places.len(), 8);
    // Nothing is said to be there that is not: nobody answers for it yet, and no calculator assesses it.
    let missing = texts(&view.missing);
    assert!(missing.contains("responsible person") && missing.contains("safety report"), "{missing}");
}

#[test]
fn what_is_filled_in_stays_with_the_formula_and_the_device_and_can_be_taken_back() {
    let store = MemoryStore::default();
    let mut desk = Desk::on(&store);
    assert_eq!(desk.fill("person", "Hedgerow Soaps (invented)").error, None);
    desk.fill("address", "1 Invented Lane");
    desk.fill("lot", "A7");
    desk.fill("claims", "Smooth on a little,\nmorning and evening.");
    desk.0.keep();
    let mut again = Desk::on(&store);
    assert_eq!(again.field("person"), "Hedgerow Soaps (invented)");
    assert_eq!(again.field("lot"), "A7");
    assert_eq!(again.field("claims"), "Smooth on a little,\nmorning and evening.");
    assert!(!texts(&again.view().missing).contains("responsible person in"));
    again.fill("lot", "B1");
    again.send(DeskCommand::Undo {});
    assert_eq!(again.field("lot"), "A7");
    // Another formula has the maker and not the lot.
    again.send(ShelfCommand::NewFormula { basis: stillroom_core::WrittenIn::Percent });
    let link = again.0.formula().unwrap().label.clone();
    assert_eq!(link, "");
    // A number that is none is refused beside its field, and the last good one stays.
    let mut desk = Desk::open();
    // Half a month is none: it is said, not cut off.
    desk.fill("opening", "6");
    desk.fill("lot", "A7");
    assert_eq!(desk.fill("opening", "6.5").code, Some("number.not-whole"));
    assert_eq!(desk.field("opening"), "6");
    let refused = desk.fill("width", "wide");
    assert!(refused.error.unwrap().contains("millimetres from 10 to 400"));
    assert_eq!(desk.field("width"), "180");
    desk.fill("width", "120.5");
    assert_eq!(desk.view().art.map(|art| (art.width, art.height)), Some((120.5, 30.0)));
    desk.fill("container", "bottle-100");
    assert_eq!(desk.field("width"), "130");
}

#[test]
fn allergens_are_named_above_their_threshold_by_market_and_use() {
    let mut desk = Desk::open();
    desk.add("lavender essential oil", "0.3");
    let view = desk.view();
    assert!(view.declaration.contains("Linalool"), "{}", view.declaration);
    assert!(view.declaration.contains("Linalyl Acetate"), "{}", view.declaration);
    assert!(
        view.allergens_about.contains("0.001\u{a0}%") && view.allergens_about.contains("31 July 2028"),
        "{}",
        view.allergens_about
    );
    let below = |view: &LabelView| view.allergens.iter().filter(|each| !each.named).count();
    let leave_on = below(&view);
    // Linalyl acetate came with Regulation (EU) 2023/1545: no law in the United Kingdom.
    desk.fill("market", "uk");
    let view = desk.view();
    assert!(view.declaration.contains("Linalool") && !view.declaration.contains("Linalyl Acetate"));
    desk.fill("market", "us");
    let view = desk.view();
    assert!(!view.declaration.contains("Linalool"), "{}", view.declaration);
    assert!(
        view.declaration.contains("Water, Glycerin") && view.declaration.contains("(Sunflower)"),
        "{}",
        view.declaration
    );
    assert!(texts(&view.missing).contains("740.10"));
    desk.fill("market", "eu");
    desk.send(FormulaCommand::SetPurpose { purpose: Purpose::RinseOff });
    assert!(below(&desk.view()) >= leave_on);
    assert!(desk.view().allergens_about.contains("0.01\u{a0}%"));
}

#[test]
fn what_is_not_known_is_said() {
    let mut desk = Desk::open();
    desk.add("perfume oil", "0.2");
    desk.add("zinc oxide", "3");
    let said = texts(&desk.view().said);
    assert!(said.contains("allergen sheet") && said.contains("Parfum"), "{said}");
    assert!(said.contains("nanomaterial") && said.contains("Zinc Oxide"), "{said}");
    let nano = desk.view().fields.into_iter().find(|field| field.group == "nano").unwrap();
    desk.fill(nano.field.strip_prefix("label.").unwrap(), "yes");
    assert!(desk.view().declaration.contains("Zinc Oxide (nano)"));
    // Emulsifying wax is known by its usual composition only.
    desk.add("emulsifying wax NF", "4");
    let view = desk.view();
    assert!(texts(&view.said).contains("usual composition"), "{}", texts(&view.said));
}

#[test]
fn a_label_too_small_for_its_letters_is_not_drawn_and_says_so() {
    let mut desk = Desk::open();
    desk.fill("width", "40");
    desk.fill("height", "15");
    let view = desk.view();
    assert!(view.art.is_none() && view.sheet.is_none());
    assert!(view.too_small.contains("0.9\u{a0}mm"), "{}", view.too_small);
    // The rule of the United States: 1/16 inch from 12 square inches on.
    desk.fill("container", "own");
    desk.fill("width", "120");
    desk.fill("height", "120");
    desk.fill("market", "us");
    let view = desk.view();
    assert!(view.art.is_some(), "{}", view.too_small);
    assert_eq!(view.lettering[0].range, "at least 1.59\u{a0}mm");
    assert!(view.art.unwrap().runs.iter().all(|run| run.size * 0.519 >= 1.5875 - 1e-9));
}

#[test]
fn contents_in_mass_follow_the_density_and_are_rounded_down() {
    let mut desk = Desk::open();
    desk.fill("volume", "50");
    desk.fill("by", "mass");
    let view = desk.view();
    let contents =
        view.art.unwrap().runs.into_iter().find(|run| run.bold && run.text.ends_with("\u{a0}g")).unwrap().text;
    let grams: f64 = contents.split('\u{a0}').next().unwrap().parse().unwrap();
    assert!((45.0..52.0).contains(&grams), "{contents}");
    desk.fill("by", "volume");
    desk.fill("market", "us");
    let texts: Vec<String> = desk.view().art.unwrap().runs.into_iter().map(|run| run.text).collect();
    // 50 / 29.5735 = 1.6907.
    assert!(texts.iter().any(|text| text == "1.69 fl oz (50\u{a0}mL)"), "{texts:?}");
}

/// Names and claims of ten ordinary products, as a sound label says them.
const ORDINARY: [&str; 10] = [
    "Cucumber and oat gel cream. Smooth on a little, morning and evening.",
    "Lavender hand wash. Lather, rinse, dry.",
    "Shea body butter for dry skin. Melts on the skin and leaves it soft.",
    "Rose facial mist. Spray with closed eyes; moisturises and refreshes.",
    "Beeswax lip balm. Keeps lips smooth in wind and cold.",
    "Gentle shampoo for every day. Cleans without drying; leaves hair shiny.",
    "Clay mask for oily skin. Leave on for ten minutes, then rinse.",
    "Calendula baby oil. A few drops after the bath.",
    "Wheat germ and almond night cream. Nourishes while you sleep.",
    "Peppermint foot cream. Cools and cares for tired feet.",
];

/// The same for claims that turn a product into something else, each with what it becomes.
const LOADED: [(&str, &str); 8] = [
    ("Heals eczema overnight", "medicine"),
    ("An anti-inflammatory balm", "medicine"),
    ("Antibacterial hand gel", "biocide"),
    ("Kills bacteria", "biocide"),
    ("Stimulates hair growth", "functions"),
    ("Day cream SPF30", "sun protection"),
    ("Treats acne", "medicine"),
    ("Repels mosquitoes", "biocide"),
];

#[test]
fn ordinary_wording_passes_and_loaded_wording_is_flagged() {
    let mut desk = Desk::open();
    for text in ORDINARY {
        desk.fill("claims", text);
        assert_eq!(texts(&desk.view().wording), "", "{text}");
    }
    for (text, becomes) in LOADED {
        desk.fill("claims", text);
        let said = texts(&desk.view().wording);
        assert!(said.contains(becomes), "{text}: {said}");
    }
    desk.fill("claims", "");
    // A name counts, and the notes do.
    let formula = desk.0.open_formula().unwrap();
    desk.send(ShelfCommand::RenameFormula { formula, name: "Healing cream".into() });
    desk.send(FormulaCommand::SetNotes { text: "for my rosacea".into() });
    let said = texts(&desk.view().wording);
    assert!(said.contains("“Healing” (name)") && said.contains("“rosacea” (notes"), "{said}");
}

#[test]
fn it_is_said_in_every_language() {
    for (language, word) in [(Language::German, "Sicherheitsbericht"), (Language::French, "rapport de sécurité")] {
        speak_natively(language);
        let mut desk = Desk::open();
        let view = desk.view();
        assert!(texts(&view.missing).contains(word), "{}", texts(&view.missing));
        assert!(view.declaration.starts_with("Ingredients: Aqua"), "the list has one heading everywhere");
    }
    speak_natively(Language::English);
}

/// A copy is another product: what names one batch does not go along, or a recall would find two.
#[test]
fn a_copy_takes_what_is_filled_in_along_but_not_its_lot_and_date() {
    let mut desk = Desk::open();
    assert_eq!(desk.fill("lot", "2026-11-28 A").error, None);
    assert_eq!(desk.fill("country", "Portugal").error, None);
    let formula = desk.0.open_formula().unwrap();
    desk.send(ShelfCommand::DuplicateFormula { formula });
    assert_ne!(desk.0.open_formula(), Some(formula));
    assert_eq!(desk.field("country"), "Portugal");
    assert_eq!(desk.field("lot"), "");
    desk.send(ShelfCommand::OpenFormula { formula });
    assert_eq!(desk.field("lot"), "2026-11-28 A");
}

#[test]
fn an_address_stands_on_the_label_as_the_maker_wishes_and_nothing_is_added_to_it() {
    let mut desk = Desk::open();
    let said = |view: &LabelView| texts(&view.link);
    assert_eq!((desk.view().art.unwrap().code, said(&desk.view())), (None, String::new()));
    desk.fill("site-as", "code");
    assert!(said(&desk.view()).contains("Fill in the address"));
    for wrong in ["my page.example", "mailto:me@maker.example", "balm", "müller.example"] {
        let answer = desk.fill("site", wrong);
        assert!(answer.error.is_some_and(|error| error.contains("maker.example/balm")), "{wrong}");
        assert_eq!(desk.field("site"), "");
    }
    desk.fill("site", " Maker.example/balm ");
    let view = desk.view();
    let code = view.art.unwrap().code.unwrap();
    // 26 bytes of an address at correction M are version 2: 25 modules and four on each side (ISO/IEC 18004, tables 1 and 7).
    assert_eq!((code.modules, format!("{:.2}", code.side)), (33, "13.20".to_owned()));
    assert!(texts(&view.link).contains("13.2\u{a0}mm each way"), "{}", texts(&view.link));
    desk.fill("site-as", "text");
    let view = desk.view();
    let art = view.art.unwrap();
    assert_eq!(art.code, None);
    assert!(art.runs.iter().any(|run| run.text.contains("Maker.example/balm")));
    // What does not fit is said, and not drawn.
    desk.fill("site", &format!("maker.example/{}", "balm-".repeat(30)));
    let view = desk.view();
    assert!(texts(&view.link).contains("The address does not fit"), "{}", texts(&view.link));
    assert!(!view.art.unwrap().runs.iter().any(|run| run.text.contains("maker.example")));
    desk.fill("site-as", "code");
    desk.fill("container", "jar-15");
    let view = desk.view();
    assert!(texts(&view.link).contains("does not fit on this label") || view.art.is_none(), "{}", texts(&view.link));
    assert!(view.art.is_none_or(|art| art.code.is_none()));
}

#[test]
fn a_sentence_that_the_law_asks_for_is_not_left_off_in_silence() {
    let mut desk = Desk::open();
    desk.add("salicylic acid", "0.4");
    let sentence = "Not to be used for children under 3 years of age.";
    let of = |view: &LabelView| view.statements.iter().find(|each| each.text == sentence).cloned().unwrap();
    let view = desk.view();
    let stated = of(&view);
    assert!(
        stated.there && stated.why.contains("asked for: Salicylic Acid") && stated.why.contains("III/98"),
        "{}",
        stated.why
    );
    assert!(!texts(&view.missing).contains("Left off"));
    let drawn = |view: &LabelView| {
        let runs = &view.art.as_ref().unwrap().runs;
        runs.iter().map(|run| run.text.as_str()).collect::<Vec<_>>().join(" ")
    };
    assert!(drawn(&view).contains(sentence));
    desk.fill(stated.field.strip_prefix("label.").unwrap(), "yes");
    let view = desk.view();
    assert!(!of(&view).there && !drawn(&view).contains(sentence));
    let missing = texts(&view.missing);
    assert!(missing.contains("Left off") && missing.contains(sentence) && missing.contains("III/98"), "{missing}");
    // What is common practice only may be left off without a word.
    desk.fill("leave:external-use", "yes");
    assert_eq!(texts(&desk.view().missing).matches("Left off").count(), 1);
}
