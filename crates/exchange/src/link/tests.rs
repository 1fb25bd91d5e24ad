use super::*;
use crate::record::OwnMaterial;
use proptest::prelude::*;
use rust_decimal::Decimal;
use stillroom_core::batch_plan::{BatchPlan, BatchWay, Containers, Stock};
use stillroom_core::{
    Amount, Celsius, Class, Constituent, ConstituentId, Density, Formula, FormulaId, Grams, Line, LineId, Makeup,
    Material, MaterialId, Millilitres, Percent, Ph, Phase, PhaseId, PhaseKind, ProductKind, Purpose, SetAside,
    WrittenIn,
};

fn text() -> impl Strategy<Value = String> {
    prop_oneof![
        3 => "[a-zA-Z ,.°%é]{0,40}",
        1 => any::<String>(),
        1 => Just("Stir while it cools; under 40 °C add the cool-down phase.".to_owned()),
    ]
}

fn decimal(most: i64) -> impl Strategy<Value = Decimal> {
    (0..=most, 0u32..=28).prop_map(|(digits, scale)| Decimal::new(digits, scale))
}

fn percent() -> impl Strategy<Value = Percent> {
    decimal(100).prop_map(|value| Percent::new(value).unwrap())
}

fn amount() -> impl Strategy<Value = Amount> {
    prop_oneof![
        percent().prop_map(Amount::Percent),
        decimal(100_000).prop_map(|value| Amount::Grams(Grams::new(value).unwrap())),
        Just(Amount::QuantumSatis),
    ]
}

fn kind() -> impl Strategy<Value = PhaseKind> {
    (0usize..4).prop_map(|at| PhaseKind::ALL[at])
}

fn class() -> impl Strategy<Value = Class> {
    (0usize..26).prop_map(|at| Class::ALL[at])
}

/// A reference into the catalogue, to something that comes along, or to something that does not.
fn reference() -> impl Strategy<Value = MaterialId> {
    prop_oneof![
        any::<u32>().prop_map(MaterialId::Catalogue),
        (0u64..6).prop_map(MaterialId::Own),
        (0u64..4).prop_map(MaterialId::Formula),
        any::<u64>().prop_map(MaterialId::Own),
    ]
}

fn line() -> impl Strategy<Value = Line> {
    let note = prop_oneof![3 => Just(String::new()), 1 => text()];
    let substitution = prop_oneof![4 => Just(String::new()), 1 => text()];
    (any::<u32>(), reference(), amount(), note, substitution, any::<bool>()).prop_map(
        |(id, material, amount, note, substitution, suspended)| Line {
            note,
            substitution,
            suspended,
            ..Line::new(LineId(id), material, amount)
        },
    )
}

fn phase() -> impl Strategy<Value = Phase> {
    let temperature = prop::option::of((-20i64..120).prop_map(|degrees| Celsius::new(Decimal::from(degrees)).unwrap()));
    (any::<u32>(), text(), kind(), temperature, prop::collection::vec(line(), 0..6))
        .prop_map(|(id, name, kind, temperature, lines)| Phase { id: PhaseId(id), name, kind, temperature, lines })
}

fn batch() -> impl Strategy<Value = BatchPlan> {
    let way = prop_oneof![Just(BatchWay::Mass), Just(BatchWay::Containers), Just(BatchWay::Stock)];
    let density = prop::option::of((1i64..30).prop_map(|tenths| Density::new(Decimal::new(tenths, 1)).unwrap()));
    let grams = || decimal(1_000_000).prop_map(|value| Grams::new(value).unwrap());
    let containers = (any::<u32>(), decimal(1000), percent(), percent(), density).prop_map(
        |(count, volume, headspace, loss, density)| Containers {
            count,
            volume: Millilitres::new(volume).unwrap(),
            headspace,
            loss,
            density,
        },
    );
    let containers = prop_oneof![Just(BatchPlan::default().containers), containers];
    let stock = (reference(), grams()).prop_map(|(material, available)| Stock { material, available });
    (way, grams(), containers, prop::collection::vec(stock, 0..3))
        .prop_map(|(way, mass, containers, stock)| BatchPlan { way, mass, containers, stock })
}

/// Numbers in order half of the time, as a formula has them that nobody rearranged.
fn formula() -> impl Strategy<Value = Formula> {
    let flags = (any::<bool>(), any::<bool>(), any::<bool>());
    let ph = prop::option::of((0i64..140).prop_map(|tenths| Ph::new(Decimal::new(tenths, 1)).unwrap()));
    let batch = prop_oneof![Just(BatchPlan::default()), batch()];
    let set_aside = (text(), text(), text()).prop_map(|(code, subject, reason)| SetAside { code, subject, reason });
    let set_aside = prop::collection::vec(set_aside, 0..2);
    let steps = prop::collection::vec(text(), 0..4);
    let parts = (prop::collection::vec(phase(), 0..4), steps, text(), any::<u32>(), set_aside);
    let measured = prop::option::of((0i64..1400).prop_map(|hundredths| Ph::new(Decimal::new(hundredths, 2)).unwrap()));
    let kind = prop::option::of(prop::sample::select(ProductKind::ALL.to_vec()));
    let head = (text(), ph, measured, kind);
    (flags, head, parts, batch).prop_map(|((rinse, grams, in_order), head, parts, batch)| {
        let (name, target_ph, measured_ph, kind) = head;
        let (mut phases, steps, notes, mut next_number, set_aside) = parts;
        if in_order {
            next_number = 0;
            for phase in &mut phases {
                phase.id = PhaseId(next_number);
                next_number += 1;
                for line in &mut phase.lines {
                    line.id = LineId(next_number);
                    next_number += 1;
                }
            }
        }
        let purpose = if rinse { Purpose::RinseOff } else { Purpose::LeaveOn };
        let written_in = if grams { WrittenIn::Grams } else { WrittenIn::Percent };
        let mut formula = Formula {
            name,
            purpose,
            kind: None,
            target_ph,
            measured_ph,
            written_in,
            phases,
            steps,
            label: String::new(),
            costs: String::new(),
            tags: String::new(),
            notes,
            batch,
            set_aside,
            next_number,
        };
        formula.set_kind(kind);
        formula
    })
}

fn own_material(number: u64) -> impl Strategy<Value = OwnMaterial> {
    let part = (reference(), amount()).prop_map(|(material, amount)| stillroom_core::Part { material, amount });
    let constituent_id =
        || prop_oneof![any::<u32>().prop_map(ConstituentId::Catalogue), (0u64..6).prop_map(ConstituentId::Own)];
    let makeup = prop_oneof![
        constituent_id().prop_map(Makeup::Simple),
        prop::collection::vec(part, 0..5).prop_map(Makeup::Composite),
    ];
    let constituent = (constituent_id(), text(), class()).prop_map(|(id, inci, class)| Constituent { id, inci, class });
    let density = prop::option::of((1i64..30).prop_map(|tenths| Density::new(Decimal::new(tenths, 1)).unwrap()));
    (text(), class(), kind(), density, makeup, prop::option::of(constituent), text()).prop_map(
        move |(name, class, usual_phase, density, makeup, constituent, note)| OwnMaterial {
            material: Material { id: MaterialId::Own(number), name, class, usual_phase, density, makeup },
            constituent,
            note,
        },
    )
}

prop_compose! {
    fn parcel()(
        formula in formula(),
        materials in (own_material(0), own_material(1), own_material(u64::MAX)),
        other in formula(),
        number in any::<u64>(),
    ) -> Parcel {
        Parcel {
            id: FormulaId(number | 4),
            formula,
            materials: vec![materials.0, materials.1, materials.2],
            formulas: vec![(FormulaId(3), other)],
        }
    }
}

fn small() -> Parcel {
    let mut formula = Formula::with_name("Gel");
    let phase = formula.add_phase("Heated water phase", PhaseKind::HeatedWater, None);
    formula.add_line(phase, MaterialId::Catalogue(1), Amount::QuantumSatis);
    formula.add_line(phase, MaterialId::Own(7), Amount::Percent(Percent::new(Decimal::new(125, 1)).unwrap()));
    Parcel { id: FormulaId(0xfeed), formula, materials: Vec::new(), formulas: Vec::new() }
}

/// The letters of a frame with a right sum: what only a writer can make.
fn framed(version: u8, body: &[u8]) -> String {
    let mut bytes = vec![version];
    bytes::put_whole(&mut bytes, body.len() as u128);
    bytes.extend(body);
    bytes.extend(crc32fast::hash(&bytes).to_le_bytes());
    LETTERS.encode(bytes)
}

proptest! {
    #[test]
    fn a_link_reads_back_as_it_was_written(parcel in parcel()) {
        let link = write(&parcel).unwrap();
        prop_assert!(link.bytes().all(|byte| byte.is_ascii_alphanumeric() || b"-_=".contains(&byte)));
        prop_assert_eq!(read(&link), Ok(parcel));
    }

    #[test]
    fn a_link_that_lost_its_end_is_cut_off(parcel in parcel(), share in 0.0..1.0) {
        let link = write(&parcel).unwrap();
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss)]
        let length = FRAGMENT.len() + (((link.len() - FRAGMENT.len()) as f64) * share) as usize;
        prop_assert_eq!(read(&link[..length]), Err(LinkError::CutOff));
    }

    #[test]
    fn no_changed_letter_goes_unnoticed(parcel in parcel(), at in any::<prop::sample::Index>(), letter in "[A-Za-z0-9_-]") {
        let link = write(&parcel).unwrap();
        let letters = &link[FRAGMENT.len()..];
        let at = at.index(letters.len());
        prop_assume!(letters[at..=at] != letter);
        let changed = format!("{}{letter}{}", &letters[..at], &letters[at + 1..]);
        prop_assert!(read(&changed).is_err());
    }

    #[test]
    fn whatever_stands_in_a_right_frame_is_read_or_refused(body in prop::collection::vec(any::<u8>(), 0..200)) {
        if let Ok(parcel) = read(&framed(VERSION, &body)) {
            // What was understood is written so that it is understood again.
            prop_assert_eq!(read(&write(&parcel).unwrap()), Ok(parcel));
        }
    }
}

#[test]
fn a_link_is_found_in_what_people_paste() {
    let link = write(&small()).unwrap();
    let letters = &link[FRAGMENT.len()..];
    let address = format!("https://maker.example/stillroom/#{link}");
    let wrapped = format!(" {}\r\n  {} ", &link[..20], &link[20..]);
    for text in [&link, letters, &address, &wrapped] {
        assert_eq!(read(text).as_ref(), Ok(&small()), "{text}");
    }
    assert!(is_link(&address) && is_link(&link) && !is_link("#shelf") && !is_link(""));
}

#[test]
fn what_is_no_link_is_refused_with_a_code() {
    let code = |text: &str| read(text).unwrap_err().code();
    assert_eq!(code(""), "link.cut-off");
    assert_eq!(code("#f="), "link.cut-off");
    assert_eq!(code("the formula of my grandmother!"), "link.damaged");
    assert_eq!(code("f=AQ+/"), "link.damaged");
    let link = write(&small()).unwrap();
    assert_eq!(code(&format!("{link}AAAA")), "link.damaged");
    assert_eq!(code(&format!("{link}=")), "link.damaged");
    assert_eq!(code(&"A".repeat(LONGEST_LINK + 1)), "link.too-large");
    assert_eq!(code(&framed(0, &[])), "link.damaged");
}

#[test]
fn a_link_of_a_later_version_is_named_and_not_called_damaged() {
    let link = framed(VERSION + 1, b"in a form nobody knows yet");
    assert_eq!(read(&link), Err(LinkError::Newer { version: VERSION + 1 }));
    assert_eq!(read(&link[..link.len() - 1]), Err(LinkError::CutOff));
}

#[test]
fn what_claims_to_hold_too_much_is_refused_before_it_is_read() {
    for count in [MOST_MATERIALS as u64 + 1, u64::MAX] {
        let mut many = bytes::Packing::default();
        many.name(1);
        many.whole(count);
        let mut body = Vec::new();
        bytes::put_whole(&mut body, many.bytes.len() as u128);
        body.extend(many.bytes);
        body.push(0);
        assert_eq!(read(&framed(1, &body)), Err(LinkError::TooLarge { part: Part::Materials, most: MOST_MATERIALS }));
    }
}

#[test]
fn what_no_link_could_hold_is_not_written() {
    let mut parcel = small();
    parcel.formula.notes = "x".repeat(LONGEST_TEXT + 1);
    assert_eq!(write(&parcel), Err(LinkError::too_much_text()));
    let mut parcel = small();
    parcel.formula.steps = vec![String::new(); MOST_STEPS + 1];
    assert_eq!(write(&parcel).unwrap_err().code(), "link.too-large");
    let mut parcel = small();
    // Letters that have nothing in common with each other.
    parcel.formula.notes =
        (0u32..60_000).filter_map(|at| char::from_u32(at.wrapping_mul(2_654_435_761) >> 18)).collect();
    assert_eq!(write(&parcel), Err(LinkError::TooLarge { part: Part::Characters, most: LONGEST_LINK }));
}

#[test]
fn a_formula_made_of_itself_is_carried_as_it_is() {
    let mut parcel = small();
    let phase = parcel.formula.phases[0].id;
    parcel.formula.add_line(phase, parcel.id.as_material(), Amount::QuantumSatis);
    assert_eq!(read(&write(&parcel).unwrap()), Ok(parcel));
}

/// Every released version is read for ever: the links stand as they were written, beside what they hold.
#[test]
fn every_released_link_is_read_for_ever() {
    let golden = [
        (include_str!("../../golden/link-1-example.txt"), include_str!("../../golden/link-1-example.json")),
        (include_str!("../../golden/link-1-orchard.txt"), include_str!("../../golden/link-1-orchard.json")),
        (include_str!("../../golden/link-1-everything.txt"), include_str!("../../golden/link-1-everything.json")),
        (include_str!("../../golden/link-2-kind.txt"), include_str!("../../golden/link-2-kind.json")),
        (include_str!("../../golden/link-3-substitution.txt"), include_str!("../../golden/link-3-substitution.json")),
    ];
    for (link, expected) in golden {
        let parcel = read(link).unwrap();
        assert_eq!(written_out(&parcel), expected.trim_end());
    }
}

/// A parcel as records, one a line.
fn written_out(parcel: &Parcel) -> String {
    use crate::record::{self, FormulaRecord, MaterialRecord};
    let formulas =
        std::iter::once((parcel.id, &parcel.formula)).chain(parcel.formulas.iter().map(|(id, each)| (*id, each)));
    let formulas = formulas.map(|(id, formula)| {
        record::write(&FormulaRecord { id, revision: 0, changed_at: 0, formula: formula.clone() })
    });
    let materials = parcel
        .materials
        .iter()
        .map(|own| record::write(&MaterialRecord { revision: 0, changed_at: 0, own: own.clone() }));
    formulas.chain(materials).collect::<Vec<_>>().join("\n")
}

/// One of everything a link of version 1 can hold, for the golden links.
fn everything() -> Parcel {
    let percent = |digits, scale| Percent::new(Decimal::new(digits, scale)).unwrap();
    let grams = |digits, scale| Grams::new(Decimal::new(digits, scale)).unwrap();
    let mut formula = Formula::with_name("Élixir d\u{2019}été \u{1f33f}");
    formula.purpose = Purpose::RinseOff;
    formula.written_in = WrittenIn::Grams;
    formula.target_ph = Some(Ph::new(Decimal::new(55, 1)).unwrap());
    for (at, kind) in PhaseKind::ALL.into_iter().enumerate() {
        let degrees = Celsius::new(Decimal::new(-5 + 40 * i64::try_from(at).unwrap(), 0)).ok();
        let phase = formula.add_phase(format!("phase {at}"), kind, degrees.filter(|_| at != 3));
        formula.add_line(phase, MaterialId::Catalogue(u32::MAX), Amount::Grams(grams(1_234_567, 4)));
        formula.add_line(phase, MaterialId::Own(u64::MAX), Amount::Percent(percent(1, 28)));
    }
    let line = formula.add_line(PhaseId(0), MaterialId::Formula(9), Amount::QuantumSatis).unwrap();
    formula.line_mut(line).unwrap().note = "with a note".to_owned();
    formula.line_mut(line).unwrap().suspended = true;
    formula.move_line(line, PhaseId(0), 0);
    formula.steps = vec!["Stir while it cools.".to_owned(), String::new(), "<script>alert(1)</script>".to_owned()];
    formula.notes = "two\nlines".to_owned();
    let set_aside = SetAside { code: "a.b".to_owned(), subject: "c7".to_owned(), reason: "as ever".to_owned() };
    formula.set_aside.push(set_aside);
    formula.batch.way = BatchWay::Stock;
    formula.batch.containers.count = 7;
    formula.batch.containers.density = Density::new(Decimal::new(97, 2)).ok();
    formula.batch.stock.push(Stock { material: MaterialId::Own(3), available: grams(25, 1) });
    let own = |number, makeup, constituent| OwnMaterial {
        material: Material {
            id: MaterialId::Own(number),
            name: format!("own {number}"),
            class: Class::PhAdjuster,
            usual_phase: PhaseKind::CoolDown,
            density: Density::new(Decimal::new(117, 2)).ok(),
            makeup,
        },
        constituent,
        note: "kept cool".to_owned(),
    };
    let part = stillroom_core::Part { material: MaterialId::Formula(9), amount: Amount::Percent(percent(505, 1)) };
    let constituent = Constituent { id: ConstituentId::Own(3), inci: "Nix Alba".to_owned(), class: Class::Mineral };
    let materials = vec![
        own(u64::MAX, Makeup::Composite(vec![part]), None),
        own(3, Makeup::Simple(ConstituentId::Own(3)), Some(constituent)),
    ];
    let formulas = vec![(FormulaId(9), small().formula)];
    Parcel { id: FormulaId(0x0123_4567_89ab_cdef), formula, materials, formulas }
}

/// What version 2 adds, in two formulas of which only one has all of it.
fn with_kinds() -> Parcel {
    let mut parcel = everything();
    parcel.formula.set_kind(Some(ProductKind::Shampoo));
    parcel.formula.measured_ph = Some(Ph::new(Decimal::new(512, 2)).unwrap());
    parcel.formulas[0].1.measured_ph = Some(Ph::new(Decimal::new(47, 1)).unwrap());
    parcel
}

#[test]
fn kind_and_measured_ph_go_round_and_without_them_a_link_stays_what_it_was() {
    let parcel = with_kinds();
    let link = write(&parcel).unwrap();
    assert_eq!(link.trim(), include_str!("../../golden/link-2-kind.txt").trim());
    assert_eq!(read(&link), Ok(parcel));
    assert_eq!(write(&everything()).unwrap(), include_str!("../../golden/link-1-everything.txt").trim());
}

/// What version 3 adds, in a line of each formula.
fn with_substitutions() -> Parcel {
    let mut parcel = with_kinds();
    let say = |formula: &mut Formula, text: &str| {
        formula.phases.iter_mut().flat_map(|phase| &mut phase.lines).last().unwrap().substitution = text.to_owned();
    };
    say(&mut parcel.formula, "Glycerin and water, 2 to 1.");
    say(&mut parcel.formulas[0].1, "Half as much of the 2 % solution; Wasser f\u{fc}r den Rest.");
    parcel
}

#[test]
fn what_to_use_instead_goes_round_and_without_it_a_link_stays_what_it_was() {
    let parcel = with_substitutions();
    let link = write(&parcel).unwrap();
    assert_eq!(link.trim(), include_str!("../../golden/link-3-substitution.txt").trim());
    assert_eq!(read(&link), Ok(parcel));
    assert_eq!(write(&with_kinds()).unwrap(), include_str!("../../golden/link-2-kind.txt").trim());
}

#[test]
fn one_of_everything_goes_round() {
    let parcel = everything();
    assert_eq!(read(&write(&parcel).unwrap()), Ok(parcel));
}
