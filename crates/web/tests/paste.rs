//! A recipe pasted and made a formula, without a browser.
#![cfg(not(target_arch = "wasm32"))]
#![expect(clippy::expect_used, reason = "what goes wrong in a test is to be seen at once")]

use rust_decimal::{Decimal, dec};
use stillroom_core::number::DecimalMark;
use stillroom_core::{Formula, Percent, PhaseKind};
use stillroom_web::rooms::command::DeskCommand;
use stillroom_web::rooms::paste::command::PasteCommand;
use stillroom_web::rooms::paste::view::RecipeView;
use stillroom_web::session::Session;
use stillroom_web::session::keeping::{MemoryStore, QuietRoom};

const GEL_CREAM: &str = "Gel cream, 200 g\n\nPhase A\ndistilled water 124.8\nbetaine 4\nallantoin .6\nxanthan 0.8\nveg glycerin 24\n\n\
    Phase B\nsunflower oil 14\nsqualane 8\nolive emulsifier 8\ncetyl alc. 2.6\n\n\
    Phase C\noat beta glucan 1% 10\nrose hip oil 2\nsodium benzoate 0.8\nk sorbate 0.4\n";

fn open() -> Session {
    let around = Box::new(QuietRoom::at(1_764_000_000_000, 10_000));
    Session::open(Box::new(MemoryStore::default()), around, DecimalMark::Point)
}

fn made(session: &mut Session) -> Formula {
    let answer = session.apply(PasteCommand::MakeOfRecipe {}).answer.expect("an answer");
    assert!(answer.made.is_some(), "{answer:?}");
    session.formula().expect("it is open").clone()
}

fn percent_of(view: &RecipeView, name: &str) -> String {
    let lines = view.phases.iter().flat_map(|phase| &phase.lines);
    lines.filter(|line| line.name == name).map(|line| line.percent.clone()).collect::<Vec<_>>().join(" and ")
}

#[test]
fn grams_become_percents_in_their_phases() {
    let mut session = open();
    let view = session.read_recipe(GEL_CREAM, "");
    assert_eq!((view.name.as_str(), view.meaning, view.total.as_str()), ("Gel cream", "grams", "100.00"));
    assert_eq!(view.summary, "13 of 13 lines found");
    assert_eq!((view.to_choose.as_str(), view.asked.len(), view.size.as_str()), ("", 0, "200 g in all"));
    assert_eq!(percent_of(&view, "Water, distilled"), "62.40");
    assert_eq!(percent_of(&view, "Oat beta-glucan 1 % solution"), "5.00");
    let formula = made(&mut session);
    assert_eq!(formula.name, "Gel cream");
    let kinds: Vec<(PhaseKind, usize)> = formula.phases.iter().map(|phase| (phase.kind, phase.lines.len())).collect();
    assert_eq!(kinds, [(PhaseKind::HeatedWater, 5), (PhaseKind::HeatedOil, 4), (PhaseKind::CoolDown, 4)]);
    assert_eq!(formula.batch.mass.value(), dec!(200));
    let balance = formula.balance();
    assert!(balance.is_sound(), "{:?}", balance.problems);
    let sum: Decimal = balance.shares.iter().map(|share| share.percent.value()).sum();
    assert_eq!(Percent::new(sum).unwrap(), Percent::HUNDRED);
}

#[test]
fn what_is_made_is_taken_back_as_one_act_with_its_materials() {
    let mut session = open();
    let before = session.show_everything();
    session.read_recipe("water 70 %\ngrandmother's marigold salve 20 %\nglycerin 10 %", "");
    let formula = made(&mut session);
    assert_eq!(formula.lines().count(), 3);
    let own = session.show_everything().own_materials.unwrap();
    assert!(own.iter().any(|material| material.name == "grandmother's marigold salve"), "{own:?}");
    session.apply(DeskCommand::Undo {});
    let after = session.show_everything();
    assert_eq!(after.own_materials, before.own_materials);
    assert_eq!(after.shelf.unwrap().cards.len(), before.shelf.unwrap().cards.len());
}

#[test]
fn a_line_that_is_not_plain_is_asked_and_the_answer_stays() {
    let mut session = open();
    let text = "water 94 %\npreservative 1 %\nglycerin 5 %";
    let view = session.read_recipe(text, "");
    assert_eq!((view.summary.as_str(), view.to_choose.as_str()), ("2 of 3 lines found", "1 to choose"));
    let asked = &view.asked[0];
    assert_eq!((asked.written.as_str(), asked.chosen.as_str()), ("preservative", ""));
    let chosen = asked.choices[0].clone();
    let view = session.choose_in_recipe(asked.key, &chosen.id);
    assert_eq!((view.asked.len(), view.summary.as_str()), (0, "3 of 3 lines found"));
    // More is typed; what was chosen stays chosen.
    let view = session.read_recipe("water 93 %\nurea 1 %\npreservative 1 %\nglycerin 5 %", "");
    assert_eq!(percent_of(&view, &chosen.name), "1.00");
    let formula = made(&mut session);
    assert!(formula.lines().any(|line| line.material.to_string() == chosen.id));
}

#[test]
fn what_cannot_be_weighed_is_said_and_kept_beside_its_line() {
    let mut session = open();
    let view = session.read_recipe("40 g olive oil\n10 g beeswax\n10 drops lavender EO\n2 tsp vit E", "");
    let remarks: Vec<&str> =
        view.phases.iter().flat_map(|phase| &phase.lines).map(|line| line.remark.as_str()).collect();
    assert_eq!(remarks.iter().filter(|remark| remark.contains("no weight")).count(), 2, "{remarks:?}");
    let formula = made(&mut session);
    let notes: Vec<&str> = formula.lines().map(|line| line.note.as_str()).filter(|note| !note.is_empty()).collect();
    assert_eq!(notes.len(), 2, "{notes:?}");
    assert!(notes.iter().any(|note| note.contains("10 drops lavender EO")), "{notes:?}");
}

#[test]
fn the_line_that_fills_up_fills_up() {
    let mut session = open();
    let view = session.read_recipe("Rosenwasser ad 100\nGlycerin 3 %\nPanthenol 1,5 %\nMilchsäure q.s.", "");
    assert_eq!((view.meaning, view.total.as_str()), ("percent", "100.00"));
    assert_eq!(percent_of(&view, "Rose hydrosol"), "95.50");
    let formula = made(&mut session);
    assert_eq!(formula.lines().filter(|line| line.amount == stillroom_core::Amount::QuantumSatis).count(), 1);
}

#[test]
fn steps_and_notes_go_along() {
    let mut session = open();
    session.read_recipe("water 90 %\nglycerin 10 %\nMethod\nStir and bottle.", "");
    assert_eq!(made(&mut session).steps, ["Stir and bottle."]);
}

#[test]
fn a_maker_says_what_bare_numbers_are() {
    let mut session = open();
    let text = "water 60\nglycerin 20";
    assert_eq!(session.read_recipe(text, "").meaning, "grams");
    let view = session.read_recipe(text, "percent");
    assert_eq!((view.meaning, percent_of(&view, "Water, distilled").as_str()), ("percent", "60.00"));
    let view = session.read_recipe(text, "grams");
    assert_eq!(percent_of(&view, "Water, distilled"), "75.00");
}

const SHEET: &str = "Phase\tIngredient\t%\tGrams\tCost\nA\tDistilled water\t70\t140\t\u{a3}0.06\nA\tGlycerin\t5\t10\t\u{a3}0.05\n\
    B\tSunflower oil\t25\t50\t\u{a3}0.40\nTotal\t\t100\t200\t\u{a3}0.51\n";

#[test]
fn a_table_says_what_its_columns_were_taken_for_and_what_is_left_out() {
    let mut session = open();
    let view = session.read_recipe(SHEET, "");
    let holds: Vec<(&str, &str)> = view.columns.iter().map(|column| (column.name.as_str(), column.holds)).collect();
    assert_eq!(
        holds,
        [("Phase", "phase"), ("Ingredient", "name"), ("%", "percent"), ("Grams", "grams"), ("Cost", "price")]
    );
    assert!(view.left_out[0].ends_with("Cost") && view.left_out[1].ends_with("Grams"), "{:?}", view.left_out);
    assert_eq!((view.summary.as_str(), view.size.as_str()), ("3 of 3 lines found", "200 g in all"));
    let others: Vec<(&str, &str)> =
        view.others.iter().map(|other| (&other.raw[..5], other.taken_for.as_str())).collect();
    assert_eq!(others, [("Phase", "head of the table"), ("Total", "sum, not needed")]);
    let formula = made(&mut session);
    assert_eq!(formula.batch.mass.value(), dec!(200));
    assert!(formula.lines().all(|line| line.note.is_empty()), "no price is noted");
}

#[test]
fn a_column_is_set_right_and_stays_so_while_the_table_is_the_same() {
    let mut session = open();
    let text = "water\t70\t60\nglycerin\t30\t40\n";
    assert_eq!(percent_of(&session.read_recipe(text, ""), "Water, distilled"), "70.00");
    let view = session.set_recipe_column(2, "percent");
    assert_eq!(percent_of(&view, "Water, distilled"), "60.00");
    assert_eq!(view.columns.iter().map(|column| column.holds).collect::<Vec<_>>(), ["name", "left-out", "percent"]);
    let view = session.read_recipe("water\t70\t55\nglycerin\t30\t45\n", "");
    assert_eq!(percent_of(&view, "Water, distilled"), "55.00");
    // Another table is another question.
    let view = session.read_recipe("water\t70\nglycerin\t30\n", "");
    assert_eq!(percent_of(&view, "Water, distilled"), "70.00");
    let view = session.set_recipe_column(0, "no such thing");
    assert_eq!(view.columns[0].holds, "name");
}

#[test]
fn a_file_is_read_in_its_own_letters_or_refused_by_what_it_is() {
    let session = open();
    let wide: Vec<u8> = "\u{feff}Mandel\u{f6}l 30".encode_utf16().flat_map(u16::to_le_bytes).collect();
    let view = session.read_recipe_file(&wide);
    assert_eq!(view.text.as_deref(), Some("Mandel\u{f6}l 30"));
    assert!(view.said.contains("UTF-16"), "{}", view.said);
    let view = session.read_recipe_file(b"Mandel\xf6l 30");
    assert_eq!(view.text.as_deref(), Some("Mandel\u{f6}l 30"));
    assert!(view.said.contains("Latin-1"), "{}", view.said);
    let too_large = vec![b'a'; 300_000];
    for (bytes, word) in
        [(&b"PK\x03\x04"[..], "workbook"), (b"\x00\x01\x02", "no text"), (b"", "empty"), (&too_large, "larger")]
    {
        let view = session.read_recipe_file(bytes);
        assert!(view.text.is_none() && view.said.contains(word), "{word}: {}", view.said);
    }
}
