//! What holds of every label, whatever is in the jar.

use super::*;
use crate::material::ConstituentId;
use crate::quantity::Percent;
use proptest::prelude::*;
use rust_decimal::Decimal;

fn percent(millionths: i64) -> Percent {
    Percent::new(Decimal::new(millionths, 6)).unwrap()
}

fn markets() -> impl Strategy<Value = Market> {
    prop_oneof![Just(Market::EuropeanUnion), Just(Market::UnitedKingdom), Just(Market::UnitedStates)]
}

/// Ingredients of any share and role; a span around some, some that go by one name, some that are not in the product.
fn products() -> impl Strategy<Value = Vec<Ingredient>> {
    let one = (0_i64..3_000_000, 0_u32..6, any::<bool>(), 0_i64..400_000, 0_u32..8, 0_u32..12);
    proptest::collection::vec(one, 1..30).prop_map(|all| {
        all.into_iter()
            .enumerate()
            .map(|(at, (share, role, is_nano, spread, group, fate))| {
                let id = ConstituentId::Catalogue(u32::try_from(at).unwrap());
                let mut each = Ingredient::new(id, percent(share));
                each.role = match role {
                    0 => Role::Colourant,
                    1 => Role::Perfume,
                    _ => Role::Ordinary,
                };
                each.is_nano = is_nano;
                each.range = (spread > 200_000).then(|| (percent((share - spread).max(0)), percent(share + spread)));
                each.goes_with = (role > 2 && group < 2).then_some(group);
                each.not_in_product = (fate == 0).then_some(NotInProduct::TechnicalAid);
                each
            })
            .collect()
    })
}

proptest! {
    #[test]
    fn every_ingredient_stands_exactly_once(all in products(), market in markets()) {
        let list = declare(&all, &[], market);
        for each in &all {
            let named = list.names.iter().filter(|name| name.made_of.contains(&each.id)).count();
            let left_out = list.left_out.iter().filter(|out| out.id == each.id).count();
            let is_there = each.range.map_or(each.percent, |(_, most)| most.max(each.percent)) > Percent::ZERO;
            let expected = if each.not_in_product.is_some() { (0, 1) } else { (usize::from(is_there), 0) };
            prop_assert_eq!((named, left_out), expected, "{:?}", each);
        }
        let mut names: Vec<Name> = list.names.iter().map(|each| each.name).collect();
        let count = names.len();
        names.sort_by_key(|name| format!("{name:?}"));
        names.dedup();
        prop_assert_eq!(names.len(), count);
    }

    #[test]
    fn the_order_is_that_of_mass_wherever_it_is_certain(all in products(), market in markets()) {
        let list = declare(&all, &[], market);
        // What each name comes to, summed anew, and what it may come to.
        let sums = |name: &Declared| {
            let own = || all.iter().filter(|each| name.made_of.contains(&each.id));
            let least: Decimal =
                own().map(|each| each.range.map_or(each.percent, |(least, _)| least.min(each.percent)).value()).sum();
            let most: Decimal =
                own().map(|each| each.range.map_or(each.percent, |(_, most)| most.max(each.percent)).value()).sum();
            (least, own().map(|each| each.percent.value()).sum::<Decimal>(), most)
        };
        for pair in list.names.windows(2) {
            let [before, after] = pair else { unreachable!() };
            prop_assert!(before.group <= after.group);
            if before.group != Group::ByWeight || after.group != Group::ByWeight {
                continue;
            }
            let ((least, mass, _), (_, next, most)) = (sums(before), sums(after));
            prop_assert!(mass >= next);
            // Certain means that no mass within the spans turns it round.
            prop_assert!(before.doubt.may_follow_next || least >= most, "{:?} {:?}", before, after);
        }
        for name in list.names.iter().filter(|name| name.group == Group::ByWeight && !name.doubt.may_be_in_other_group) {
            let (least, ..) = sums(name);
            prop_assert!(!market.is_free(Percent::new(least).unwrap()), "{:?}", name);
        }
    }

    #[test]
    fn what_is_laid_out_lies_within_its_label_word_for_word_and_large_enough(
        words in proptest::collection::vec("[A-Za-zéü]{1,14}", 1..160),
        name in "[A-Z][a-z]{2,9}( [a-z]{2,9}){0,3}",
        opening in prop_oneof![Just(String::new()), Just("12 M".to_owned())],
        shape in prop_oneof![Just(Shape::Flat), Just(Shape::Wrap), Just(Shape::Round)],
        width in 30.0_f64..200.0,
        height in 15.0_f64..120.0,
        market in markets(),
        // Codes have 17 + 4 × version modules, and four empty ones on each side.
        code in proptest::option::of((1_u32..10).prop_map(|version| 17 + 4 * version + 2 * QUIET_ZONE)),
    ) {
        let outline = Outline::new(shape, width, height).unwrap();
        let letters = lettering(market, outline.area(), outline.panel(), NetContents(50.0));
        let text = LabelText {
            name: name.clone(),
            function: "Cream for the face".to_owned(),
            contents: "50 mL".to_owned(),
            opening,
            paragraphs: vec![Paragraph { lead: "Ingredients:".to_owned(), text: words.join(" ") }],
            code,
        };
        let Some(layout) = lay_out(outline, &text, &letters) else { return Ok(()) };
        prop_assert!(layout.small_letter >= letters.text.millimetres);
        prop_assert!(layout.figure >= letters.contents.millimetres);
        let mut said: Vec<&str> = Vec::new();
        for run in &layout.runs {
            let corners = [(run.x, run.y), (run.x + run.width, run.y), (run.x, run.y - run.size * 0.72)];
            for (x, y) in corners {
                let inside = match shape {
                    Shape::Round => (x - width / 2.0).hypot(y - width / 2.0) <= width / 2.0,
                    Shape::Flat | Shape::Wrap => x >= 0.0 && x <= width && y >= 0.0 && y <= outline.height,
                };
                prop_assert!(inside, "{:?} of {:?}", run, outline);
            }
            prop_assert!(run.size * SMALL_LETTER >= letters.text.millimetres - 1e-9);
            said.extend(run.text.split(' '));
        }
        if let Some(square) = layout.code {
            let CodeSquare { x: left, y: top, side, module } = square;
            prop_assert!((side - f64::from(code.unwrap()) * module).abs() < 1e-9 && module >= LEAST_MODULE);
            for (x, y) in [(left, top), (left + side, top), (left, top + side), (left + side, top + side)] {
                let inside = match shape {
                    Shape::Round => (x - width / 2.0).hypot(y - width / 2.0) <= width / 2.0,
                    Shape::Flat | Shape::Wrap => x >= 0.0 && x <= width && y >= 0.0 && y <= outline.height,
                };
                prop_assert!(inside, "{:?} of {:?}", square, outline);
            }
            // Nothing reaches into its empty edge: neither letters nor the open jar.
            let letters = layout.runs.iter().map(|run| (run.x, run.y - run.size * 0.72, run.width, run.size * 0.72));
            for (x, y, wide, high) in letters.chain(layout.open_jar.map(|jar| (jar.x, jar.y, jar.side, jar.side))) {
                let apart = x + wide <= left + 1e-6 || left + side <= x + 1e-6;
                let above = y + high <= top + 1e-6 || top + side <= y + 1e-6;
                prop_assert!(apart || above, "{:?} over {:?}", (x, y, wide, high), square);
            }
        }
        // What does not fit with a code is there without it.
        prop_assert!(code.is_some() || layout.code.is_none());
        // Runs that share a line do not lie over one another.
        for (at, one) in layout.runs.iter().enumerate() {
            for other in &layout.runs[at + 1..] {
                let apart = one.x + one.width <= other.x + 1e-6 || other.x + other.width <= one.x + 1e-6;
                let above = (one.y - other.y).abs() >= 0.7 * one.size.min(other.size);
                prop_assert!(apart || above, "{:?} over {:?}", one, other);
            }
        }
        let mut expected: Vec<&str> = name.split(' ').chain(words.iter().map(String::as_str)).collect();
        expected.extend(["Cream", "for", "the", "face", "50", "mL", "Ingredients:"]);
        expected.extend(text.opening.split(' ').filter(|word| !word.is_empty()));
        said.sort_unstable();
        expected.sort_unstable();
        prop_assert_eq!(said, expected);
    }

    #[test]
    fn labels_on_a_sheet_lie_on_it_and_apart(width in 10.0_f64..300.0, height in 10.0_f64..300.0, count in 1_u32..600) {
        let label = Outline::new(Shape::Flat, width, height).unwrap();
        for paper in [Paper::A4, Paper::Letter] {
            let (across, down) = paper.size();
            let Some(sheet) = lay_sheets(label, paper, count) else {
                prop_assert!(count > MOST_LABELS || width > across - 16.0 || height > down - 16.0);
                continue;
            };
            let per_sheet = u32::try_from(sheet.places.len()).unwrap();
            prop_assert_eq!((sheet.sheets - 1) * per_sheet + sheet.on_last, count);
            prop_assert!(sheet.on_last >= 1 && sheet.on_last <= per_sheet);
            for (at, (x, y)) in sheet.places.iter().enumerate() {
                prop_assert!(*x >= 5.0 && *y >= 5.0 && x + width <= across - 5.0 && y + height <= down - 5.0);
                for (left, top) in &sheet.places[at + 1..] {
                    prop_assert!((x - left).abs() >= width || (y - top).abs() >= height);
                }
            }
        }
    }
}

#[test]
fn a_label_that_is_too_small_is_refused_rather_than_set_in_smaller_letters() {
    let text = LabelText {
        name: "Cream".to_owned(),
        paragraphs: vec![Paragraph { lead: String::new(), text: "Aqua, Glycerin. ".repeat(60) }],
        ..LabelText::default()
    };
    let outline = Outline::new(Shape::Flat, 30.0, 30.0).unwrap();
    let letters = lettering(Market::EuropeanUnion, outline.area(), outline.panel(), NetContents(50.0));
    assert_eq!(lay_out(outline, &text, &letters), None);
    let larger = Outline::new(Shape::Flat, 90.0, 90.0).unwrap();
    assert!(lay_out(larger, &text, &letters).is_some());
}

#[test]
fn a_code_that_does_not_fit_is_left_out_and_the_label_stands_without_it() {
    let text = |code| LabelText {
        name: "Cream".to_owned(),
        contents: "15 mL".to_owned(),
        paragraphs: vec![Paragraph { lead: String::new(), text: "Aqua, Glycerin. ".repeat(12) }],
        code,
        ..LabelText::default()
    };
    let set = |width, height, code| {
        let outline = Outline::new(Shape::Wrap, width, height).unwrap();
        let letters = lettering(Market::EuropeanUnion, outline.area(), outline.panel(), NetContents(15.0));
        lay_out(outline, &text(Some(code)), &letters).unwrap().code
    };
    // 41 modules are 16.4 mm at 0.4, and 13.53 at 0.33; 1.5 mm stay free above and below.
    assert_eq!(set(115.0, 20.0, 41).map(|code| code.module), Some(USUAL_MODULE));
    assert_eq!(set(115.0, 17.0, 41).map(|code| code.module), Some(LEAST_MODULE));
    assert_eq!(set(115.0, 16.0, 41), None);
}
