//! Sentences that the law asks of a label: formulas with what column i of the annexes to Regulation (EC) No 1223/2009 says of
//! them, written down before any of it was run. Ten of them are ordinary, and nothing may be asked of those.

use rust_decimal::Decimal;
use std::collections::BTreeMap;
use stillroom_catalogue::{Catalogue, knowledge};
use stillroom_core::checks::{Conditions, Contents};
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::{Bench, evaluate};
use stillroom_core::label::{Market, statements};
use stillroom_core::{
    Amount, Formula, Makeup, MaterialId, MaterialSource as _, Percent, PhaseKind, ProductKind, Purpose,
};

const TABLE: &str = include_str!("../data/label_conditions.csv");

#[test]
fn a_label_is_asked_for_what_the_annexes_ask_and_nothing_else() {
    let catalogue = Catalogue::get();
    let mut by_inci: BTreeMap<&str, MaterialId> = BTreeMap::new();
    for material in catalogue.materials() {
        if let Makeup::Simple(id) = material.makeup
            && let Some(constituent) = catalogue.constituent(id)
        {
            by_inci.entry(&constituent.inci).or_insert(material.id);
        }
    }
    let mut rows = csv::Reader::from_reader(TABLE.as_bytes());
    let (mut silent, mut asked) = (0, 0);
    for row in rows.records() {
        let row = row.unwrap();
        let mut formula = Formula::with_name(&row[0]);
        formula.set_purpose(if &row[2] == "leave-on" { Purpose::LeaveOn } else { Purpose::RinseOff });
        formula.set_kind(ProductKind::from_slug(&row[1]));
        let phase = formula.add_phase("one", PhaseKind::RoomTemperature, None);
        let mut sum = Decimal::ZERO;
        for part in row[3].split(';') {
            let (inci, percent) = part.split_once('=').unwrap();
            let percent: Decimal = percent.parse().unwrap();
            sum += percent;
            let material = *by_inci.get(inci).unwrap_or_else(|| panic!("no {inci}"));
            formula.add_line(phase, material, Amount::Percent(Percent::new(percent).unwrap()));
        }
        if sum < Decimal::ONE_HUNDRED {
            // What is left is water, and starch in a powder.
            let rest = if row[0].contains("powder") { "Zea Mays Starch" } else { "Aqua" };
            formula.add_line(phase, by_inci[rest], Amount::QuantumSatis);
        }
        let evaluation = evaluate(&formula, &Bench::default(), catalogue, &mut Makeups::default());
        let contents = Contents::new(&formula, &evaluation, catalogue, knowledge(), Conditions::default());
        let market = match &row[4] {
            "EU" => Market::EuropeanUnion,
            "UK" => Market::UnitedKingdom,
            _ => Market::UnitedStates,
        };
        let stated = statements(&contents, market, stillroom_catalogue::knowledge::label_conditions());
        let codes: Vec<&str> = stated.iter().filter(|each| each.is_asked).map(|each| each.statement.code()).collect();
        let expected: Vec<&str> = row[5].split(';').filter(|code| !code.is_empty()).collect();
        assert_eq!(codes, expected, "{}: {}", &row[0], &row[6]);
        for each in stated.iter().filter(|each| each.is_asked) {
            assert!(!each.about.is_empty() && !each.citation.source.is_empty(), "{}", &row[0]);
        }
        if expected.is_empty() { silent += 1 } else { asked += 1 }
    }
    assert_eq!((silent, asked), (14, 13));
}
