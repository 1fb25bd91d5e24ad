//! A page in German and in French: a run, an extract, a share and a backup are walked through, and no English is left in what is
//! said. What nobody translates (INCI names, titles of papers, what a maker typed) holds none of the words that are looked for.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, reason = "what goes wrong in a test is to be seen at once")]

mod hands;

use hands::at_bench;
use std::collections::BTreeSet;
use std::fmt::Debug;
use std::io::Cursor;
use stillroom_catalogue::Catalogue;
use stillroom_catalogue::reference::plant_waters;
use stillroom_core::number::DecimalMark;
use stillroom_core::{FormulaId, LineId, MaterialId, PhaseId, PhaseKind, ProductKind};
use stillroom_exchange::extract::ExtractKind;
use stillroom_web::messages::{Language, speak_natively};
use stillroom_web::rooms::batches::command::BatchesCommand;
use stillroom_web::rooms::batches::view::{CardView, RunView};
use stillroom_web::rooms::command::Command;
use stillroom_web::rooms::costs::command::CostsCommand;
use stillroom_web::rooms::extracts::command::ExtractsCommand;
use stillroom_web::rooms::findings::command::FindingsCommand;
use stillroom_web::rooms::formula::command::FormulaCommand;
use stillroom_web::rooms::materials::command::{HoldingField, MaterialsCommand};
use stillroom_web::rooms::share::command::ShareCommand;
use stillroom_web::rooms::share::write_up::WrittenForm;
use stillroom_web::rooms::shelf::command::ShelfCommand;
use stillroom_web::rooms::swap::command::SwapCommand;
use stillroom_web::rooms::swap::reading::{Lack, Lacks};
use stillroom_web::rooms::update::Update;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom};

/// 25 November 2025, seven o'clock in universal time.
const MORNING: u64 = 1_764_054_000_000;
const BETAINE: MaterialId = MaterialId::Catalogue(3);

/// Words that English can hardly say a sentence without, and that are none in German or French.
const ENGLISH: [&str; 32] = [
    "the", "and", "of", "is", "it", "its", "are", "to", "for", "from", "with", "without", "by", "not", "be", "has",
    "than", "this", "that", "which", "what", "how", "where", "when", "water", "weigh", "weighed", "batch", "nothing",
    "more", "at", "yet",
];

/// The texts in what is printed for people who debug.
fn texts_of(printed: &str) -> Vec<String> {
    let mut texts = Vec::new();
    let mut characters = printed.chars();
    while characters.by_ref().any(|character| character == '"') {
        let mut text = String::new();
        while let Some(character) = characters.next() {
            match character {
                '"' => break,
                '\\' => match characters.next() {
                    Some('u') => {
                        let code: String = characters.by_ref().take_while(|digit| *digit != '}').skip(1).collect();
                        text.extend(u32::from_str_radix(&code, 16).ok().and_then(char::from_u32));
                    }
                    Some('n') => text.push('\n'),
                    Some('r') => text.push('\r'),
                    other => text.extend(other),
                },
                other => text.push(other),
            }
        }
        // A line of a calendar file may be folded within a word.
        texts.push(text.replace("\r\n ", ""));
    }
    texts
}

/// An English word in a text. A key is no text: it has no space, and a sign or lower case throughout, or it is that of a plant.
fn english_in(text: &str) -> Option<&str> {
    let is_word = |text: &str| text.contains(['.', ':', '-']) || text == text.to_lowercase();
    let is_key = !text.contains(char::is_whitespace) && is_word(text);
    let is_plant = || plant_waters().iter().any(|row| text.starts_with(&format!("{}/{}/", row.plant, row.part)));
    // What was published is cited as it was printed.
    let is_cited = || Catalogue::get().sources().any(|source| text.contains(source.citation));
    let mut words = text.split(|character: char| !character.is_alphabetic() && character != '-');
    let found = words.find(|word| ENGLISH.contains(&word.to_lowercase().as_str()));
    found.filter(|_| !is_key && !is_plant() && !is_cited())
}

/// A page that listens to itself.
struct Page {
    session: Session,
    store: MemoryStore,
    bench: QuietRoom,
    language: Language,
    /// How many texts were listened to.
    heard: usize,
}

impl Page {
    fn open(language: Language) -> Self {
        speak_natively(language);
        let (store, bench) = (MemoryStore::default(), QuietRoom::at(MORNING, 20_000).ahead(60));
        let session = Session::open(Box::new(store.clone()), Box::new(bench.clone()), DecimalMark::Comma);
        Self { session, store, bench, language, heard: 0 }
    }

    /// Listens to something that is shown.
    fn hear(&mut self, what: &str, shown: &impl Debug) {
        let texts = texts_of(&format!("{shown:?}"));
        self.heard += texts.len();
        for text in texts {
            if let Some(word) = english_in(&text) {
                panic!("{:?}, {what}: “{word}” in “{text}”", self.language);
            }
        }
    }

    fn apply(&mut self, command: impl Into<Command>) -> Update {
        let update = self.session.apply(command);
        self.hear("an update", &update);
        update
    }

    fn act(&mut self, act: &str, on: &str, text: &str) -> Update {
        self.apply(at_bench(act, on, text).unwrap())
    }

    fn show(&mut self) -> Update {
        let shown = self.session.show_everything();
        self.hear("everything", &shown);
        shown
    }

    fn set(&mut self, field: &str, text: &str) -> Update {
        self.apply(ExtractsCommand::SetExtract { field: field.to_owned(), text: text.to_owned() })
    }

    fn take(&mut self, offer: &str) {
        self.apply(ExtractsCommand::TakeExtractOffer { offer: offer.to_owned() });
    }

    /// Acts as the large area does, with nothing typed.
    fn next(&mut self) {
        let card = self.show().run.unwrap().card;
        self.press(card);
    }

    fn press(&mut self, card: CardView) {
        let command = card.next.command.or_else(|| card.choices.into_iter().find_map(|choice| choice.command));
        self.apply(command.unwrap());
    }

    fn open_formula(&self) -> FormulaId {
        self.session.open_formula().unwrap()
    }
}

fn in_every_other_language(walk: impl Fn(&mut Page)) {
    for language in [Language::German, Language::French] {
        let mut page = Page::open(language);
        walk(&mut page);
        assert!(page.heard > 100, "{language:?}: only {} texts were heard", page.heard);
    }
    speak_natively(Language::English);
}

/// What a maker does at a card, with every mistake there is a sentence for.
fn act_on_card(page: &mut Page, run: &RunView, seen: &mut BTreeSet<&'static str>) {
    let (kind, step) = (run.card.kind, run.card.step.clone());
    let first = seen.insert(kind);
    let on = step.rsplit(':').next().unwrap_or_default().to_owned();
    match kind {
        "beaker" if first => {
            page.act("empty-beaker", &on, "schwer");
            page.act("empty-beaker", &on, "150,5");
        }
        "weigh" if first => {
            page.act("pour", &on, "0");
            page.act("pour", &on, "1,0");
            page.act("say", "scale-reads", "beaker");
            page.act("pour", &on, "0,2");
            page.act("say", "scale-reads", "line");
            page.next();
        }
        "weigh" if run.card.title.starts_with('B') && run.card.choices.len() > 1 => {
            // Too much of it, then as it is.
            page.act("pour", &on, "4,6");
            page.act("accept", &on, "");
        }
        "weigh" if seen.insert("left out") && seen.len() > 4 => {
            page.act("leave-out", &on, "");
            page.act("take-back", "", "");
            page.next();
        }
        "heat" => {
            page.act("temperature", &on, "72");
            page.act("timer", &step, "20");
            page.act("stop", &step, "");
            page.act("resume", &step, "");
            page.next();
        }
        "replace" => {
            page.act("hot", &on, "9999");
            page.act("hot", &on, "1");
            page.act("cold", &on, "300");
            page.act("hot", &on, "295,7");
            page.next();
        }
        "cool" => {
            for degrees in ["60", "52", "46"] {
                page.act("temperature", "batch", degrees);
                page.bench.wait(6 * 60 * 1000);
            }
            page.show();
            page.act("temperature", "batch", "39");
            page.next();
        }
        "top-up" => {
            page.act("weigh-batch", "", "100\n200");
            page.act("weigh-batch", "", "350\n150");
            page.next();
        }
        "ph" if first => titrate(page),
        "ph" => {
            page.apply(BatchesCommand::AcceptPh {});
        }
        "fill" => {
            page.act("fill", "", "3,5\n30");
            page.act("fill", "", "5\n30");
            page.next();
        }
        "finish" => {
            page.act("say", "durability", "1");
            page.act("say", "released", "ok");
            page.next();
        }
        _ => page.press(run.card.clone()),
    }
}

/// A pH that misses its target: a sample is titrated, the batch is corrected and read again.
fn titrate(page: &mut Page) {
    let plan = |name: &str, text: &str| BatchesCommand::PlanTitration { name: name.to_owned(), text: text.to_owned() };
    page.act("ph", "", "6,4");
    page.apply(plan("strength", "10"));
    page.apply(plan("water", "40"));
    page.apply(BatchesCommand::TakePhSample { text: "10".to_owned() });
    page.apply(BatchesCommand::ReadSample { text: "6,4".to_owned() });
    page.apply(BatchesCommand::AddDrops { text: "3".to_owned() });
    page.apply(plan("drop-mass", "1"));
    page.apply(BatchesCommand::AddDrops { text: "2".to_owned() });
    page.apply(BatchesCommand::ReadSample { text: "5,7".to_owned() });
    let choices = page.show().run.unwrap().card.choices;
    let correct = choices.into_iter().find(|choice| choice.about.starts_with("80")).and_then(|choice| choice.command);
    page.apply(correct.unwrap());
    page.act("ph", "", "5,5");
}

/// A journal of three days with their colours, and with what cannot be read.
fn keep_a_journal(page: &mut Page) {
    let pixels = |red: u8, green: u8, blue: u8| [red, green, blue, 255].repeat(64);
    let white = pixels(235, 232, 225);
    for (day, (red, green, blue)) in
        [("2025-11-25", (150, 180, 90)), ("2025-12-02", (165, 182, 120)), ("2025-12-25", (190, 195, 170))]
    {
        let made = page.act("entry-new", "", day).answer.unwrap().made.unwrap();
        let update = page.session.read_colour(made.parse().unwrap(), &pixels(red, green, blue), &white);
        page.hear("a colour", &update);
    }
    for (sample, white) in [
        (pixels(150, 180, 90), pixels(20, 20, 20)),
        (pixels(150, 180, 90), pixels(255, 255, 255)),
        (pixels(240, 240, 240), pixels(200, 200, 200)),
        (Vec::new(), pixels(235, 232, 225)),
    ] {
        let update = page.session.read_colour(0, &sample, &white);
        page.hear("a colour that cannot be read", &update);
    }
    page.act("entry-new", "", "gestern");
    page.act("entry", "0:ph", "15");
    page.act("entry", "0:ph", "5,4");
    let journal = page.show().journal.unwrap();
    let (second, first) = match page.language {
        Language::German => ("Tag 7 · 2.\u{a0}Dezember\u{a0}2025", "Tag 0 · 25.\u{a0}November\u{a0}2025"),
        _ => ("Jour 7 · 2\u{a0}décembre\u{a0}2025", "Jour 0 · 25\u{a0}novembre\u{a0}2025"),
    };
    assert_eq!((journal.entries[0].title.as_str(), journal.entries[1].title.as_str()), (first, second));
    assert!(journal.curve.is_some());
    page.act("entry-remove", "2", "");
}

#[test]
fn a_run_and_its_journal_are_in_the_language_of_the_page() {
    in_every_other_language(|page| {
        page.apply(MaterialsCommand::SetHolding { material: BETAINE, field: HoldingField::Stock, text: "100".into() });
        page.apply(MaterialsCommand::SetHolding { material: BETAINE, field: HoldingField::Lot, text: "B-12".into() });
        page.apply(MaterialsCommand::SetHolding {
            material: BETAINE,
            field: HoldingField::Expiry,
            text: "2025-11-20".into(),
        });
        page.apply(MaterialsCommand::OpenMaterial { material: BETAINE });
        page.act("look", "", "");
        page.act("new", "", "");
        page.act("temperature", "room", "20");
        page.act("temperature", "room", "warm");
        let mut seen = BTreeSet::new();
        for _ in 0..90 {
            let run = page.show().run.unwrap();
            if run.finished {
                break;
            }
            act_on_card(page, &run, &mut seen);
        }
        let run = page.show().run.unwrap();
        assert!(run.finished && run.record.deviations.len() > 3, "{:?}", run.record.deviations);
        assert!(!run.record.dates.is_empty() && run.record.log.len() > 30);

        keep_a_journal(page);
        page.act("delete", &run.id.unwrap(), "");
    });
}

#[test]
fn extracts_are_in_the_language_of_the_page() {
    in_every_other_language(|page| {
        page.apply(ExtractsCommand::LookAtExtracts { looking: true });
        page.apply(ExtractsCommand::NewExtract { kind: ExtractKind::Glycerite });
        let name = page.show().extract.unwrap().name;
        assert_eq!(name, if page.language == Language::German { "Neues Glycerit" } else { "Nouvel extrait glycériné" });
        page.set("plant-mass", "0");
        page.set("glycerin", "0");
        page.set("plant", "blueberry/fruit/fresh");
        page.set("plant-mass", "300");
        page.set("glycerin", "500");
        for (field, text) in [
            ("plant-mass", ""),
            ("plant-mass", "abc"),
            ("glycerin", "-3"),
            ("purity", "120"),
            ("temperature", "heiß"),
            ("made-on", "2026-02-30"),
            ("jar-volume", "x"),
            ("wanted-activity", "2"),
            ("menstruum-per-plant", "x"),
            ("optical-value", "x"),
            ("gravity-value", "x"),
            ("optical-step", "x"),
            ("ph", "15"),
            ("use-percent", "x"),
        ] {
            assert!(page.set(field, text).answer.unwrap().error.is_some(), "{field} {text}");
        }
        for (solvent, temperature) in [("ethanol", "20"), ("propanediol", "20"), ("none", "60"), ("none", "20")] {
            page.set("solvent", solvent);
            page.set("solvent-mass", "60");
            page.set("temperature", temperature);
        }
        for (water, fresh, dried) in
            [("percent", "", ""), ("weighed", "", ""), ("weighed", "100", "12"), ("catalogue", "", "")]
        {
            page.set("water-from", water);
            page.set("sample-fresh", fresh);
            page.set("sample-dried", dried);
        }
        for (wanted, glycerin) in [("plant", "60"), ("glycerin", "95"), ("jar", "95"), ("finished", "60")] {
            page.set("wanted-size", wanted);
            page.set("wanted-glycerin", glycerin);
        }
        page.set("wanted-by", "activity");
        page.set("wanted-activity", "0,2");
        page.set("adjust-target", "65");
        page.take("adjust");
        page.set("adjust-target", "40");
        page.set("mass-now", "9999");
        page.set("mass-now", "700");
        page.take("evaporated");
        page.set("optical-value", "50,8");
        page.set("gravity-value", "1,1");
        page.set("gravity-value", "1,18");
        page.set("optical-value", "99");
        page.set("optical-value", "50,8");
        page.take("verify");
        // Every step of the scale, preserved or not, by pH or not.
        for glycerin in ["10", "120", "300", "700", "2000", "9000"] {
            for (preserved, ph) in [("no", ""), ("yes", "2,8"), ("yes", "10,5"), ("no", "5")] {
                page.set("glycerin", glycerin);
                page.set("preserved", preserved);
                page.set("ph", ph);
            }
        }
        page.set("lot", "8");
        page.take("shelve");
        page.take("shelve");
        page.take("use");
        page.set("blend:c2", "100");
        page.set("blend:c2", "x");
        page.take("blend");

        page.apply(ExtractsCommand::NewExtract { kind: ExtractKind::Solution });
        page.set("substance", "c22");
        page.take("shelve");
        page.apply(ExtractsCommand::NewExtract { kind: ExtractKind::Alcohol });
        page.set("alcohol-volume", "1000 ml");
        let cards = page.show().extracts.unwrap().cards;
        assert!(cards.len() > 3);
        page.apply(ExtractsCommand::DeleteExtract { extract: cards[0].id.clone().try_into().unwrap() });
        page.apply(ExtractsCommand::RestoreExtractExample {});
    });
}

#[test]
fn links_comparisons_and_versions_are_in_the_language_of_the_page() {
    in_every_other_language(|page| {
        let id = page.open_formula();
        let link = page.session.link_of(id, "https://maker.example/", false);
        page.hear("a link", &(&link.about, &link.code_problem, link.code.as_ref().map(|code| &code.about)));
        for form in [WrittenForm::Markdown, WrittenForm::Text, WrittenForm::Csv] {
            let written = page.session.write_up(id, form);
            page.hear("a formula written out", &written);
        }
        // What the reader has is another version.
        let last = page.show().lines.last().unwrap().id;
        page.apply(FormulaCommand::SetAmount { line: LineId(last), text: "0,3".into() });
        page.apply(FormulaCommand::SetTargetPh { text: String::new() });
        page.apply(FormulaCommand::SetNotes { text: "anders".into() });
        page.apply(FormulaCommand::SetSteps { text: "anders".into() });
        for kind in ProductKind::ALL {
            page.apply(FindingsCommand::SetKind { text: kind.slug().to_owned() });
            let reading = page.session.read_link(&link.fragment, Some("1 kg"));
            page.hear("another version", &(&reading.about, &reading.comparison, &reading.materials));
            assert!(reading.comparison.unwrap().others.len() > 3);
        }
        page.apply(ShareCommand::KeepCopy { link: link.fragment.clone() });
        page.apply(ShareCommand::KeepCopy { link: link.fragment.clone() });
        for wrong in [&link.fragment[..link.fragment.len() - 3], "f=AAAA-this-is-nothing", "f=B"] {
            let reading = page.session.read_link(wrong, None);
            page.hear("a link that cannot be read", &reading.error);
            page.apply(ShareCommand::KeepCopy { link: wrong.to_owned() });
        }
        let none = page.session.link_of(FormulaId(1), "https://maker.example/", false);
        page.hear("no formula", &none.error);

        page.session.keep();
        let id = page.open_formula();
        page.bench.wait(60 * 60 * 1000);
        page.apply(FormulaCommand::SetNotes { text: "noch anders".into() });
        let status = page.session.keep();
        page.hear("keeping", &status);
        let versions = page.session.versions_of(id);
        assert!(!versions.is_empty());
        page.hear("versions", &versions);
        let compared = page.session.compare_version(id, &versions[0].version);
        page.hear("a version compared", &compared);
        page.apply(ShareCommand::RestoreVersion { formula: id, version: versions[0].version.clone() });
        page.bench.set_clock(MORNING - 40 * 24 * 60 * 60 * 1000);
        let remarks = page.session.storage_remarks();
        assert!(!remarks.is_empty());
        page.hear("the clock", &remarks);
    });
}

#[test]
fn a_backup_is_in_the_language_of_the_page() {
    in_every_other_language(|page| {
        let batch = page.act("new", "", "").answer.unwrap().made.unwrap();
        let entry = page.act("entry-new", "", "2025-11-25").answer.unwrap().made.unwrap();
        page.act("entry-photo", &entry, "cafe-1");
        page.apply(MaterialsCommand::SetHolding { material: BETAINE, field: HoldingField::Stock, text: "100".into() });
        let mut writer = page.session.begin_backup();
        let mut file = writer.records(&page.session.write_backup("https://maker.example/"));
        for name in ["cafe-1", "cafe-2"] {
            file.extend(writer.photo(name, MORNING, &[0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]));
        }
        file.extend(writer.finish());
        page.session.keep();

        let mut other = Page::open(page.language);
        for here in [vec![], vec!["cafe-2".to_owned()], vec!["cafe-1".to_owned(), "cafe-2".to_owned()]] {
            let view = other.session.read_backup(Box::new(Cursor::new(file.clone())), &here);
            assert_eq!(view.error, None);
            other.hear("a backup", &view);
        }
        other.session.photo_of_backup("cafe-1");
        other.session.photo_of_backup("cafe-9");
        other.apply(ShareCommand::RestoreBackup { differing: "both".to_owned() });
        let view = other.session.read_backup(Box::new(Cursor::new(file.clone())), &[]);
        other.hear("the same once more", &view);
        other.apply(ShareCommand::RestoreBackup { differing: "both".to_owned() });
        let stray = other.session.stray_photos(&["cafe-1".to_owned(), "cafe-7".to_owned(), "cafe-8".to_owned()]);
        other.hear("photos of no batch", &stray);
        let text = page.session.write_backup("https://maker.example/");
        let spoiled = text.replacen(
            "\"records\":{",
            "\"records\":{\"stillroom.formula.0000000000000001\":{\"schema\":9},\"stillroom.moon.1\":{\"schema\":1},",
            1,
        );
        let newer = text.replacen("\"schema\":", "\"schema\":9", 1);
        for wrong in
            [spoiled.as_bytes(), newer.as_bytes(), &text.as_bytes()[..200], b"\xff\xd8\xff", &file[..file.len() - 9]]
        {
            let view = other.session.read_backup(Box::new(Cursor::new(wrong.to_vec())), &[]);
            other.hear("a file that cannot be read", &(&view.error, &view.summary, &view.items, &view.photos));
        }
        page.heard += other.heard;
        page.act("delete", &batch, "");
        for key in stillroom_web::session::keeping::Store::keys(&page.store).unwrap() {
            stillroom_web::session::keeping::Store::remove(&page.store, &key).unwrap();
        }
        page.apply(FormulaCommand::SetNotes { text: "noch da".into() });
        let cleared = page.session.keep();
        page.hear("storage that was cleared", &cleared);
    });
}

#[test]
fn tables_and_cards_of_materials_are_in_the_language_of_the_page() {
    in_every_other_language(|page| {
        for table in [
            "name,class,parts,phase,density\nOne,oil,,,\n",
            "name,class,parts,phase,density\nOne,oil,,,\nTwo,wax,,,\n",
            "name,class,parts,phase,density\n=cmd,oil,,,\nA,soap,,,\nA,oil,,ice,\nB,oil,2 % Unobtainium; q.s. Glycerin,,\n,oil,,,\nC,oil,x Y,,9 x,,,,\n",
            "inci\nAqua\n",
            "name\n",
        ] {
            let view = page.session.read_table(table.as_bytes());
            page.hear("a table", &view);
        }
        let view = page.session.read_table(b"name\n\xff\xfe\n");
        page.hear("a table that is not UTF-8", &view);
        page.session.read_table(b"name,class\nEins,oil\n");
        page.apply(MaterialsCommand::ImportTable {});
        for number in (1..=600).step_by(5) {
            let update = page.session.apply(MaterialsCommand::OpenMaterial { material: MaterialId::Catalogue(number) });
            let Some(values) = update.material.map(|material| material.values) else { continue };
            // The place within a source is cited as it was printed.
            let said: Vec<_> = values.iter().map(|value| (&value.label, &value.value, &value.basis)).collect();
            page.hear("a card", &said);
        }
        page.apply(MaterialsCommand::SetHolding {
            material: BETAINE,
            field: HoldingField::Currency,
            text: "Taler".into(),
        });
        page.apply(MaterialsCommand::SetHolding {
            material: BETAINE,
            field: HoldingField::Expiry,
            text: "bald".into(),
        });
        page.apply(MaterialsCommand::SetHolding {
            material: BETAINE,
            field: HoldingField::Price,
            text: "12,90".into(),
        });
        page.apply(MaterialsCommand::SetHolding { material: BETAINE, field: HoldingField::Pack, text: "250".into() });
    });
}

#[test]
fn the_name_of_a_phase_that_nobody_chose_is_known_in_every_language() {
    for (kept_in, page_in) in [
        (Language::English, Language::German),
        (Language::German, Language::French),
        (Language::French, Language::English),
        (Language::French, Language::French),
    ] {
        let mut page = Page::open(kept_in);
        page.session.apply(ShelfCommand::NewFormula { basis: stillroom_core::WrittenIn::Percent });
        let given: Vec<String> =
            page.session.formula().unwrap().phases.iter().map(|phase| phase.name.clone()).collect();
        speak_natively(page_in);
        let phase = page.session.formula().unwrap().phases[0].id;
        page.session.apply(FormulaCommand::SetPhaseKind { phase, kind: PhaseKind::HeatedOil });
        let followed = page.session.formula().unwrap().phases[0].name.clone();
        assert_ne!(followed, given[0], "{kept_in:?} {page_in:?}");
        if kept_in == page_in {
            assert_eq!(followed, given[1]);
        }
        // One that the maker chose stays.
        let name = "Phase A".to_owned();
        page.session.apply(FormulaCommand::RenamePhase { phase, name: name.clone() });
        page.session.apply(FormulaCommand::SetPhaseKind { phase, kind: PhaseKind::CoolDown });
        assert_eq!(page.session.formula().unwrap().phases[0].name, name);
        assert_eq!(page.session.formula().unwrap().phases[0].id, PhaseId(phase.0));
    }
    speak_natively(Language::English);
}

#[test]
fn an_alcohol_that_evaporates_is_known_by_what_it_is() {
    for language in Language::ALL {
        let mut page = Page::open(language);
        let id = page.session.formula().unwrap().phases[0].id;
        page.session.apply(FormulaCommand::AddLine { phase: id, material: MaterialId::Catalogue(94) });
        let line = page.session.show_everything().lines.iter().find(|line| line.material == "c94").map(|line| line.id);
        page.session.apply(FormulaCommand::SetAmount { line: LineId(line.unwrap()), text: "3".into() });
        page.session.apply(BatchesCommand::LookAtBatches { looking: true });
        page.session.apply(at_bench("new", "", "").unwrap());
        let run = page.session.show_everything().run.unwrap();
        let step = run.steps.iter().find(|step| step.step.starts_with("replace")).unwrap().step.clone();
        page.session.apply(at_bench("focus", &step, "").unwrap());
        let card = page.session.show_everything().run.unwrap().card;
        assert!(card.warnings.iter().any(|warning| warning.tone == "caution"), "{language:?}: {:?}", card.warnings);
    }
    speak_natively(Language::English);
}

#[test]
fn what_one_has_is_worked_out_in_german_and_french() {
    in_every_other_language(|page| {
        page.apply(SwapCommand::LookAtSwap { looking: true });
        let lines: Vec<LineId> = page.session.formula().unwrap().lines().map(|line| line.id).collect();
        for line in &lines {
            page.apply(SwapCommand::SwapLine { line: *line });
        }
        page.apply(SwapCommand::SwapLine { line: lines[1] });
        page.apply(SwapCommand::ChooseWay { way: "apart".to_owned() });
        for wanted in ["shelf", "expiring", "cheapest", "figure"] {
            page.apply(SwapCommand::ChooseSwapUse { wanted: wanted.to_owned() });
        }
        for (field, text) in
            [("swap.target", "viel"), ("swap.target", "9"), ("swap.figure", "oil"), ("swap.target", "99")]
        {
            page.apply(SwapCommand::SetSwapField { field: field.to_owned(), text: text.to_owned() });
        }
        let holding =
            |field, text: &str| MaterialsCommand::SetHolding { material: BETAINE, field, text: text.to_owned() };
        page.apply(holding(HoldingField::Stock, "1"));
        page.apply(holding(HoldingField::Price, "9"));
        page.apply(holding(HoldingField::Currency, "EUR"));
        page.apply(holding(HoldingField::Pack, "100"));
        page.apply(holding(HoldingField::Expiry, "2025-12-24"));
        for wanted in ["cheapest", "expiring", "shelf"] {
            page.apply(SwapCommand::ChooseSwapUse { wanted: wanted.to_owned() });
        }
        for line in &lines {
            page.apply(SwapCommand::MarkLine { line: *line, marked: true });
        }
        page.show();
        let id = page.open_formula();
        let link = page.session.link_of(id, "https://maker.example/", false).fragment;
        let lacks = Lacks { lines: vec![Lack { line: lines[6].0, way: None }] };
        let reading = page.session.read_link_without(&link, None, &lacks);
        page.hear("a reader's version", &reading);
        for form in [WrittenForm::Markdown, WrittenForm::Html, WrittenForm::Text] {
            let written = page.session.write_up_with_substitutions(id, form);
            page.hear("the author's table", &written);
        }
    });
}

#[test]
fn what_a_batch_costs_is_said_in_german_and_french() {
    in_every_other_language(|page| {
        page.apply(CostsCommand::LookAtCosts { looking: true });
        let fill =
            |field: &str, text: &str| CostsCommand::SetCostField { field: field.to_owned(), text: text.to_owned() };
        for (field, text) in [
            ("batch.count", "viel"),
            ("batch.count", "1,5"),
            ("batch.count", "12"),
            ("batch.volume", "50"),
            ("cost.stays", "5"),
            ("cost.minutes", "90"),
            ("cost.hour", "20"),
            ("cost.margin", "viel"),
            ("cost.margin", "60"),
            ("cost.batches", "0,5"),
            ("cost.batches", "3"),
            ("cost.currency", "Taler"),
            ("cost.price", "0,85"),
        ] {
            page.apply(fill(field, text));
        }
        let holding =
            |field, text: &str| MaterialsCommand::SetHolding { material: BETAINE, field, text: text.to_owned() };
        page.apply(holding(HoldingField::Currency, "USD"));
        page.apply(holding(HoldingField::Price, "9"));
        page.apply(holding(HoldingField::Pack, "100"));
        page.apply(holding(HoldingField::Shipping, "2"));
        page.apply(holding(HoldingField::Currency, "USD"));
        page.apply(fill("cost.currency", "EUR"));
        page.apply(fill("cost.currency", "USD"));
        for walls in ["polystyrene", "bare-aluminium", "polyester", "lacquered-metal", "glass"] {
            page.apply(fill("cost.walls", walls));
            for ph in ["3", "5,5", "11"] {
                page.apply(FormulaCommand::SetTargetPh { text: ph.to_owned() });
            }
        }
        page.apply(fill("batch.density", "1"));
        for table in
            ["material,price,currency,shipping,stock_g\nc3,8,EUR,1,50\n", "name,price\nZink,x\nBetain,3\n", "x\n"]
        {
            let read = page.session.read_prices(table.as_bytes());
            page.hear("a table of prices", &read);
            page.apply(CostsCommand::TakePrices {});
        }
        page.show();
    });
}
