//! The post without a browser: what is in it, what is left out, and what never gets into it.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used)]

use serde_json::Value;
use stillroom_core::number::DecimalMark;
use stillroom_core::{LineId, MaterialId};
use stillroom_exchange::link;
use stillroom_web::contract::Answer;
use stillroom_web::messages::{Language, speak_natively};
use stillroom_web::rooms::batches::command::BatchesCommand;
use stillroom_web::rooms::bench::command::BenchCommand;
use stillroom_web::rooms::command::{Command, DeskCommand};
use stillroom_web::rooms::findings::command::FindingsCommand;
use stillroom_web::rooms::formula::command::FormulaCommand;
use stillroom_web::rooms::label::command::LabelCommand;
use stillroom_web::rooms::materials::command::{HoldingField, MaterialField, MaterialsCommand};
use stillroom_web::rooms::post::command::PostCommand;
use stillroom_web::rooms::post::view::PostView;
use stillroom_web::rooms::share::command::ShareCommand;
use stillroom_web::rooms::share::view::Standing;
use stillroom_web::rooms::shelf::command::ShelfCommand;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom};

const SITE: &str = "https://maker.example/stillroom/";
/// What can be left out.
const PARTS: [&str; 13] = [
    "notes",
    "formula",
    "sizes",
    "method",
    "why",
    "instead",
    "keeping",
    "findings",
    "ingredients",
    "larger",
    "link",
    "code",
    "embed",
];

/// Somebody who writes about the example.
struct Desk(Session);

impl Desk {
    fn on(store: &MemoryStore) -> Self {
        let room = QuietRoom::at(1_795_824_000_000, 1_000);
        let mut session = Session::open(Box::new(store.clone()), Box::new(room), DecimalMark::Point);
        session.apply(PostCommand::LookAtPost { looking: true, address: SITE.to_owned() });
        Self(session)
    }

    fn open() -> Self {
        Self::on(&MemoryStore::default())
    }

    fn send(&mut self, command: impl Into<Command>) {
        self.0.apply(command);
    }

    fn view(&mut self) -> PostView {
        self.0.show_everything().post.unwrap()
    }

    fn set(&mut self, name: &str, text: &str) -> Answer {
        let field = format!("post.{name}");
        self.0.apply(PostCommand::SetPostField { field, text: text.into() }).answer.unwrap()
    }

    fn first_line(&self) -> (LineId, MaterialId) {
        let line = self.0.formula().unwrap().lines().nth(1).unwrap();
        (line.id, line.material)
    }
}

/// Everything that may leave.
fn outputs(view: &PostView) -> [String; 4] {
    [view.markdown.clone(), view.html.clone(), view.page.clone(), view.picture.as_ref().unwrap().svg.clone()]
}

fn parts_of(view: &PostView) -> Vec<&str> {
    view.sections.iter().map(|section| section.part.as_str()).collect()
}

/// What machines read in a page.
fn how_to(view: &PostView) -> Value {
    let (_, behind) = view.page.split_once("<script type=\"application/ld+json\">").unwrap();
    serde_json::from_str(behind.split_once("</script>").unwrap().0).unwrap()
}

/// The fragment of the link in a page.
fn link_in(view: &PostView) -> String {
    let (_, behind) = view.page.split_once(&format!("href=\"{SITE}#")).unwrap();
    behind.split('"').next().unwrap().to_owned()
}

#[test]
fn the_example_has_every_part_that_has_something_to_say() {
    let mut desk = Desk::open();
    let (line, _) = desk.first_line();
    desk.send(stillroom_web::rooms::swap::command::SwapCommand::SetSubstitution {
        line,
        text: "propanediol, gram for gram".into(),
    });
    desk.send(FormulaCommand::SetNotes { text: "Light, for summer.".into() });
    let view = desk.view();
    assert_eq!(view.problem, "");
    let mut all = PARTS.to_vec();
    all.insert(4, "cautions");
    assert_eq!(parts_of(&view), all);
    for written in [&view.markdown, &view.html, &view.page] {
        for said in ["Cucumber and oat gel cream", "Glycerin", "Light, for summer.", "propanediol, gram for gram"] {
            assert!(written.contains(said), "{said} in {written}");
        }
    }
    // The words of the inventory, and a list that begins as the label's does.
    assert!(view.markdown.contains("humectant") && view.markdown.contains("Ingredients: Aqua, Glycerin, "));
    let svg = &view.picture.as_ref().unwrap().svg;
    assert!(svg.contains("Squalane") && svg.contains("font-family=\"sans-serif\"") && !svg.contains("maker.example"));
    // No style, and no script but the one that machines read.
    assert!(!view.page.contains("style") && view.page.matches("<script").count() == 1, "{}", view.page);
    assert!(view.html.starts_with("<article") && view.page.starts_with("<!DOCTYPE html>"));
    // The lines to embed it hold the link and where its script lies.
    let embed = view.sections.iter().find(|section| section.part == "embed").unwrap();
    let lines = &embed.blocks[0].text;
    assert!(lines.contains(&format!("<a href=\"{SITE}#{}\">", link_in(&view))), "{lines}");
    assert!(lines.contains(&format!("src=\"{SITE}embed/stillroom.js\"")), "{lines}");
}

#[test]
fn each_part_can_be_left_out_and_cautions_cannot() {
    for part in PARTS {
        let mut desk = Desk::open();
        let before = desk.view();
        assert_eq!(desk.set(part, "no").error, None);
        let after = desk.view();
        assert!(!parts_of(&after).contains(&part), "{part}");
        if parts_of(&before).contains(&part) {
            assert_eq!(after.sections.len() + 1, before.sections.len(), "{part}");
            assert!(after.markdown.len() < before.markdown.len() || part == "code", "{part}");
            assert!(after.page.len() < before.page.len(), "{part}");
        }
        desk.send(DeskCommand::Undo {});
        assert_eq!(desk.view(), before, "{part}");
        desk.send(DeskCommand::Redo {});
        assert_eq!(desk.view(), after, "{part}");
    }
    let mut desk = Desk::open();
    desk.set("cautions", "no");
    let view = desk.view();
    assert!(parts_of(&view).contains(&"cautions") && view.parts.iter().any(|part| part.fixed && part.there));
}

#[test]
fn with_every_part_left_out_only_what_can_hurt_is_said() {
    let mut desk = Desk::open();
    for part in PARTS {
        desk.set(part, "no");
    }
    let view = desk.view();
    assert_eq!(parts_of(&view), ["cautions"]);
    assert!(view.markdown.contains("Patch test first") && view.page.contains("Patch test first"));
    // Nothing of the formula is left in what machines read.
    let read = how_to(&view);
    for name in ["supply", "step", "tool", "url", "yield"] {
        assert!(read.get(name).is_none(), "{name}");
    }
    assert!(!view.page.contains("maker.example") && !view.markdown.contains("maker.example"));
}

#[test]
fn handling_a_caustic_and_what_the_checks_stop_at_are_said_whatever_is_left_out() {
    let mut desk = Desk::open();
    assert!(!desk.view().markdown.contains("rinse with running water"));
    let found = desk.0.search("sodium hydroxide", &stillroom_catalogue::Filter::default());
    let material: MaterialId = found.first().unwrap().id.parse().unwrap();
    let phase = desk.0.formula().unwrap().phases[0].id;
    desk.send(FormulaCommand::AddLine { phase, material });
    let line = desk.0.formula().unwrap().lines().find(|line| line.material == material).unwrap().id;
    desk.send(FormulaCommand::SetAmount { line, text: "3".into() });
    // Without what preserves it the checks stop.
    for name in ["Sodium benzoate", "Potassium sorbate", "Oat beta-glucan 1 % solution"] {
        let line = desk.0.show_everything().lines.iter().find(|line| line.name == name).unwrap().id;
        desk.send(FormulaCommand::RemoveLine { line: LineId(line) });
    }
    for part in PARTS {
        desk.set(part, "no");
    }
    let view = desk.view();
    assert_eq!(view.problem, "");
    assert!(view.markdown.contains("rinse with running water") && view.page.contains("goggles"), "{}", view.markdown);
    assert!(view.markdown.contains("**Stop:** "), "{}", view.markdown);
}

#[test]
fn three_batches_are_fields_that_stay_with_the_formula() {
    let store = MemoryStore::default();
    let mut desk = Desk::on(&store);
    let fields = |view: &PostView| view.sizes.iter().map(|field| field.text.clone()).collect::<Vec<_>>();
    assert_eq!(fields(&desk.view()), ["105", "210", "2100"]);
    assert_eq!(desk.set("batch", "0.5 kg").error, None);
    assert_eq!(fields(&desk.view()), ["250", "500", "5000"]);
    assert_eq!(desk.set("small", "20").error, None);
    let before = desk.view();
    let sizes = before.sections.iter().find(|section| section.part == "sizes").unwrap();
    let squalane = sizes.blocks[0].rows.iter().find(|row| row.cells[0] == "Squalane").unwrap();
    let percent = desk.0.show_everything().lines.iter().find(|line| line.name == "Squalane").unwrap().percent.clone();
    let percent: f64 = percent.trim().parse().unwrap();
    for (cell, batch) in squalane.cells[1..].iter().zip([20.0, 500.0, 5000.0]) {
        let mass: f64 = cell.parse().unwrap();
        // Within one step of the kitchen scale.
        assert!((mass - percent * batch / 100.0).abs() <= 0.1 + 1e-9, "{cell} of {batch}");
    }
    // What is not understood says so, and the last good state stays.
    for (text, code) in
        [("a bowlful", "number.not-a-number"), ("0", "number.out-of-range"), ("5 %", "number.wrong-unit")]
    {
        let answer = desk.set("large", text);
        assert_eq!((answer.code, answer.error.is_some()), (Some(code), true), "{text}");
        assert_eq!(desk.view(), before, "{text}");
    }
    desk.0.keep();
    assert_eq!(fields(&Desk::on(&store).view()), ["20", "500", "5000"]);
    // An empty field is what is usual.
    desk.set("batch", "");
    assert_eq!(fields(&desk.view()), ["20", "210", "2100"]);
}

/// Hostile names, in every place a maker can write one.
#[test]
fn nothing_a_maker_writes_becomes_markup() {
    let hostile = "</script><img src=x onerror=alert(1)>\"'&|`*_[x](y) ]]>";
    let mut desk = Desk::open();
    let formula = desk.0.open_formula().unwrap();
    let (line, _) = desk.first_line();
    let phase = desk.0.formula().unwrap().phases[0].id;
    desk.send(ShelfCommand::RenameFormula { formula, name: hostile.into() });
    desk.send(FormulaCommand::RenamePhase { phase, name: hostile.into() });
    desk.send(FormulaCommand::SetLineNote { line, text: hostile.into() });
    desk.send(FormulaCommand::SetNotes { text: format!("1. {hostile}\n# {hostile}") });
    desk.send(FormulaCommand::SetSteps { text: format!("{hostile}\n- {hostile}") });
    desk.send(stillroom_web::rooms::swap::command::SwapCommand::SetSubstitution { line, text: hostile.into() });
    desk.send(LabelCommand::SetLabelField { field: "label.caution".into(), text: hostile.into() });
    let own = desk.0.apply(MaterialsCommand::NewMaterial { composite: false, name: hostile.into() }).answer.unwrap();
    let material: MaterialId = own.made.unwrap().parse().unwrap();
    desk.send(FormulaCommand::AddLine { phase, material });
    let added = desk.0.formula().unwrap().lines().find(|line| line.material == material).unwrap().id;
    desk.send(FormulaCommand::SetAmount { line: added, text: "1".into() });
    desk.set("picture-link", "yes");
    let view = desk.view();
    assert_eq!(view.problem, "");
    for text in [&view.html, &view.page] {
        assert!(!text.contains("<img") && text.matches("<script").count() == 1, "{text}");
        assert_eq!(text.matches("</script>").count(), 1);
    }
    // In Markdown it is text wherever it stands, and between the fences it is HTML that is to be copied, escaped as such.
    let pieces: Vec<&str> = view.markdown.split("```").collect();
    assert_eq!(pieces.len(), 3);
    let text = pieces[0].replace("](<", "");
    assert!(!text.replace("\\<", "").contains('<'), "{text}");
    assert_eq!(text.lines().filter(|line| line.starts_with("# ")).count(), 1, "{text}");
    assert!(text.contains("\n1\\. \\<") && text.contains("\n\\# "), "{text}");
    assert!(!pieces[1].contains("<img") && pieces[1].matches("<script").count() == 1, "{}", pieces[1]);
    let picture = &view.picture.unwrap().svg;
    assert!(!picture.contains("<img") && !picture.contains("<script"));
    // What machines read says what was written, to the letter.
    let read = how_to(&desk.view());
    assert_eq!(read["name"], hostile);
    assert!(read["step"].as_array().unwrap().iter().any(|step| step["text"] == hostile));
    // A name of control characters does not end the drawing.
    desk.send(ShelfCommand::RenameFormula { formula, name: "a\u{0}\u{8}b\u{ffff}".into() });
    let svg = desk.view().picture.unwrap().svg;
    assert!(svg.contains(">ab<") && !svg.contains('\u{0}') && !svg.contains('\u{ffff}'));
}

/// Hands every object in a value over, the outer one first.
fn each(value: &Value, seen: &mut dyn FnMut(&serde_json::Map<String, Value>)) {
    match value {
        Value::Object(members) => {
            seen(members);
            members.values().for_each(|value| each(value, seen));
        }
        Value::Array(values) => values.iter().for_each(|value| each(value, seen)),
        _ => {}
    }
}

/// The properties that schema.org lists for the type `HowTo` (<https://schema.org/HowTo>) and for the types it names, each on a
/// page of its own there; of their own and of what they inherit, as far as they are used here.
#[test]
fn what_machines_read_has_properties_that_schema_org_lists() {
    let listed = |kind: &str| -> &[&str] {
        match kind {
            "HowTo" => &[
                "estimatedCost",
                "performTime",
                "prepTime",
                "step",
                "steps",
                "supply",
                "tool",
                "totalTime",
                "yield",      // own
                "inLanguage", // CreativeWork
                "name",
                "description",
                "url", // Thing
            ],
            "HowToSupply" => &["estimatedCost", "requiredQuantity", "position", "item", "name"],
            "HowToTool" => &["requiredQuantity", "position", "item", "name"],
            "HowToStep" => &["position", "item", "text", "name"],
            "QuantitativeValue" => &["value", "unitCode", "unitText", "minValue", "maxValue"],
            other => panic!("{other} is no type that is used here"),
        }
    };
    let mut desk = Desk::open();
    let read = how_to(&desk.view());
    assert_eq!((read["@context"].as_str(), read["@type"].as_str()), (Some("https://schema.org"), Some("HowTo")));
    let mut count = 0;
    each(&read, &mut |members| {
        let kind = members["@type"].as_str().unwrap();
        for name in members.keys().filter(|name| !name.starts_with('@')) {
            assert!(listed(kind).contains(&name.as_str()), "{kind} has no {name}");
            count += 1;
        }
    });
    assert!(count > 50, "{count}");
    // How long it takes is not known, and what it costs is not told.
    assert!(read.get("totalTime").is_none() && read.get("estimatedCost").is_none());
    // Every line is a supply, and they make the batch; every step is in order.
    let supplies = read["supply"].as_array().unwrap();
    assert_eq!(supplies.len(), desk.0.formula().unwrap().lines().count());
    let sum: f64 = supplies.iter().map(|each| each["requiredQuantity"]["value"].as_f64().unwrap()).sum();
    assert!((sum - 210.0).abs() < 0.06, "{sum}");
    assert!(supplies.iter().all(|each| each["requiredQuantity"]["unitCode"] == "GRM"));
    let places: Vec<u64> =
        read["step"].as_array().unwrap().iter().map(|step| step["position"].as_u64().unwrap()).collect();
    assert!(places.len() > 3 && places == (1..=places.len() as u64).collect::<Vec<_>>());
    assert_eq!(read["url"].as_str().unwrap().split('#').next(), Some(SITE));
}

/// A price, a lot, a supplier, a stock, a batch record, a private note of the journal, the address on the label: planted and looked
/// for in every output, in the link too.
#[test]
fn nothing_private_leaves() {
    let mut desk = Desk::open();
    let (_, material) = desk.first_line();
    let text = |text: &str| text.to_owned();
    for (field, planted) in [
        (HoldingField::Price, "98.76"),
        (HoldingField::Pack, "6543 g"),
        (HoldingField::Stock, "4321 g"),
        (HoldingField::Lot, "PLANTEDLOT"),
        (HoldingField::Expiry, "2027-03-19"),
        (HoldingField::Note, "PLANTEDSUPPLIER of goods"),
    ] {
        let answer =
            desk.0.apply(MaterialsCommand::SetHolding { material, field, text: text(planted) }).answer.unwrap();
        assert_eq!(answer.error, None, "{planted}");
    }
    // An own material in the formula whose note names who sells it.
    let made = desk.0.apply(MaterialsCommand::NewMaterial { composite: false, name: text("Own oil") }).answer.unwrap();
    let own: MaterialId = made.made.unwrap().parse().unwrap();
    desk.send(MaterialsCommand::OpenMaterial { material: own });
    desk.send(MaterialsCommand::SetMaterialText { field: MaterialField::Note, text: text("PLANTEDVENDOR") });
    let phase = desk.0.formula().unwrap().phases[0].id;
    desk.send(FormulaCommand::AddLine { phase, material: own });
    let line = desk.0.formula().unwrap().lines().find(|line| line.material == own).unwrap().id;
    desk.send(FormulaCommand::SetAmount { line, text: text("1") });
    // What is left of it counts for the batch.
    desk.send(BenchCommand::SetBatchWay { way: stillroom_core::batch_plan::BatchWay::Stock });
    desk.send(BenchCommand::SetStock { material: own, text: text("77 g") });
    for (field, planted) in [
        ("lot", "PLANTEDPRODUCTLOT"),
        ("person", "PLANTEDPERSON"),
        ("address", "PLANTEDADDRESS"),
        ("contact", "PLANTEDPHONE"),
    ] {
        desk.send(LabelCommand::SetLabelField { field: format!("label.{field}"), text: text(planted) });
    }
    // A finding set aside, with a reason.
    let findings = desk.0.show_everything().findings.unwrap();
    let key = findings.items.first().unwrap().key.clone();
    desk.send(FindingsCommand::SetAsideFinding { key, text: text("PLANTEDREASON") });
    // A batch with a private note in its journal.
    desk.send(BenchCommand::SetBatchWay { way: stillroom_core::batch_plan::BatchWay::Mass });
    let formula = desk.0.open_formula().unwrap();
    desk.send(BatchesCommand::BeginBatch { formula: Some(formula) });
    desk.send(BatchesCommand::SetLot { text: text("PLANTEDBATCHLOT") });
    desk.send(BatchesCommand::BeginEntry { text: String::new() });
    desk.send(BatchesCommand::NoteEntry { entry: 0, name: text("note"), text: text("PLANTEDJOURNAL") });
    let view = desk.view();
    assert_eq!(view.problem, "");
    let kept = desk.0.write_backup(SITE);
    let read = link::read(&link_in(&view)).unwrap();
    let mut leaves = outputs(&view).to_vec();
    leaves.push(format!("{read:?}"));
    leaves.push(format!("{view:?}"));
    for planted in [
        "98.76",
        "6543",
        "4321",
        "2027-03-19",
        "PLANTEDLOT",
        "PLANTEDSUPPLIER",
        "PLANTEDVENDOR",
        "PLANTEDPRODUCTLOT",
        "PLANTEDPERSON",
        "PLANTEDADDRESS",
        "PLANTEDPHONE",
        "PLANTEDREASON",
        "PLANTEDBATCHLOT",
        "PLANTEDJOURNAL",
    ] {
        assert!(kept.contains(planted), "{planted} was not planted");
        for text in &leaves {
            assert!(!text.contains(planted), "{planted} in {text}");
        }
    }
    // Nor does the link of the share room carry any of it, unless its maker asks for that.
    let shared = desk.0.link_of(formula, SITE, false);
    let carried = link::read(&shared.address).unwrap();
    let text = format!("{carried:?} {shared:?}");
    for planted in ["98.76", "6543", "4321", "PLANTED"] {
        assert!(!text.contains(planted), "{planted} in {text}");
    }
    assert!(shared.kept_back.starts_with("Left out of it"), "{}", shared.kept_back);
    let with_notes = desk.0.link_of(formula, SITE, true);
    let carried = link::read(&with_notes.address).unwrap();
    let text = format!("{carried:?}");
    assert!(text.contains("PLANTEDVENDOR") && text.contains("PLANTEDREASON"), "{text}");
    assert!(!carried.formula.batch.stock.is_empty());
    assert!(with_notes.kept_back.starts_with("It carries"), "{}", with_notes.kept_back);
    // Prices, lots, addresses and batches are in no link whatever is asked for.
    for planted in ["98.76", "PLANTEDLOT", "PLANTEDSUPPLIER", "PLANTEDADDRESS", "PLANTEDJOURNAL", "PLANTEDBATCHLOT"] {
        assert!(!text.contains(planted), "{planted} in {text}");
    }
    // Both links are of the formula that is here: nothing differs, and no second copy is kept.
    for link in [&shared.address, &with_notes.address] {
        assert_eq!(desk.0.read_link(link, None).standing, Standing::Same);
        let kept = desk.0.apply(ShareCommand::KeepCopy { link: link.clone() }).answer.unwrap().made.unwrap();
        assert_eq!(kept, formula.to_string());
    }
    // The link opens the formula with everything it is made of.
    assert_eq!(read.formula.lines().count(), desk.0.formula().unwrap().lines().count());
    assert!(read.materials.iter().any(|own| own.material.name == "Own oil"));
}

#[test]
fn it_is_written_in_every_language() {
    for language in Language::ALL {
        speak_natively(language);
        let mut desk = Desk::open();
        let view = desk.view();
        assert!(parts_of(&view).len() >= 10, "{language:?} {:?}", parts_of(&view));
        let tag = language.tag();
        assert!(view.page.contains(&format!("<html lang=\"{tag}\">")) && how_to(&view)["inLanguage"] == tag);
        // No message is missing, and none is left with its name for a number.
        assert!(view.sections.iter().all(|section| !section.title.is_empty()));
        assert!(!view.markdown.contains("{ $") && !view.page.contains("{ $"));
        let head = match language {
            Language::English => "How long it keeps",
            Language::German => "Wie lange es hält",
            Language::French => "Durée de conservation",
        };
        assert!(view.markdown.contains(head), "{}", view.markdown);
        // Without steps of the author's own, those of the bench are written.
        desk.send(FormulaCommand::SetSteps { text: String::new() });
        let steps = how_to(&desk.view())["step"].as_array().unwrap().len();
        assert!(steps > 6, "{steps}");
    }
    speak_natively(Language::English);
}

#[test]
fn a_formula_that_makes_no_whole_is_not_published() {
    let mut desk = Desk::open();
    let rest = desk.0.formula().unwrap().lines().next().unwrap().id;
    desk.send(FormulaCommand::SetAmount { line: rest, text: "1".into() });
    let view = desk.view();
    assert!(!view.problem.is_empty() && view.page.is_empty() && view.markdown.is_empty() && view.picture.is_none());
    // Nobody looks: nothing is worked out.
    desk.send(PostCommand::LookAtPost { looking: false, address: String::new() });
    assert_eq!(desk.0.show_everything().post, None);
}

/// From the example's 210 g of a cream to ten times that: the third root of ten is 2.15, its inverse 46 %, and 10^(-2/9) 60 %.
#[test]
fn what_changes_in_a_larger_batch_follows_from_its_mass() {
    let mut desk = Desk::open();
    let said = |view: &PostView| {
        let larger = view.sections.iter().find(|section| section.part == "larger");
        let items = larger.map(|section| section.blocks[0].items.clone()).unwrap_or_default();
        items.iter().map(|item| format!("{} {}\n", item.lead, item.text)).collect::<Vec<_>>().concat()
    };
    let text = said(&desk.view());
    for part in
        ["2.2 times as wide", "46\u{a0}% of the turns a minute", "60\u{a0}% of the turns, and as long", "to 70\u{a0}°C"]
    {
        assert!(text.contains(part), "{part} in {text}");
    }
    assert_eq!(text.lines().count(), 4, "{text}");
    // A large batch that is none says nothing.
    desk.set("large", "210");
    assert_eq!(said(&desk.view()), "");
}
