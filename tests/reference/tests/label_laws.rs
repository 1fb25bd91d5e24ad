//! Laws of the list of ingredients, over random formulas made of the whole catalogue.

use proptest::prelude::*;
use rust_decimal::Decimal;
use std::collections::BTreeMap;
use stillroom_catalogue::{Catalogue, knowledge};
use stillroom_core::checks::{Conditions, Contents};
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::{Bench, evaluate};
use stillroom_core::label::{Asked, Group, Market, Name, Role, TYPICAL_SPREAD, declare, read_for_label};
use stillroom_core::source::Basis;
use stillroom_core::{Amount, ConstituentId, Formula, MaterialId, MaterialSource, Percent, PhaseKind, Purpose};

/// A formula of any materials, the rest water.
fn formulas() -> impl Strategy<Value = Formula> {
    let materials: Vec<MaterialId> = Catalogue::get().materials().map(|material| material.id).collect();
    let count = materials.len();
    let lines = proptest::collection::vec((1..count, 1_i64..80_000), 1..14);
    (lines, any::<bool>()).prop_map(move |(lines, stays)| {
        let mut formula = Formula::with_name("any");
        formula.set_purpose(if stays { Purpose::LeaveOn } else { Purpose::RinseOff });
        let phase = formula.add_phase("one", PhaseKind::RoomTemperature, None);
        formula.add_line(phase, MaterialId::Catalogue(1), Amount::QuantumSatis);
        for (place, thousandths) in lines {
            let percent = Percent::new(Decimal::new(thousandths / 14, 3)).unwrap();
            formula.add_line(phase, materials[place], Amount::Percent(percent));
        }
        formula
    })
}

fn is_typical(id: MaterialId) -> bool {
    let card = Catalogue::get().card(id);
    card.is_some_and(|card| card.parts.iter().any(|part| part.origin.basis == Basis::SupplierTypical))
}

fn inci(id: ConstituentId) -> String {
    Catalogue::get().constituent(id).map(|constituent| constituent.inci.clone()).unwrap_or_default()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    #[test]
    fn every_constituent_of_the_composition_stands_once_and_in_the_order_of_its_mass(
        formula in formulas(),
        market in prop_oneof![Just(Market::EuropeanUnion), Just(Market::UnitedKingdom), Just(Market::UnitedStates)],
    ) {
        let evaluation = evaluate(&formula, &Bench::default(), Catalogue::get(), &mut Makeups::default());
        prop_assume!(stillroom_core::checks::can_check(&evaluation));
        let contents = Contents::new(&formula, &evaluation, Catalogue::get(), knowledge(), Conditions::default());
        let asked = Asked { market, is_nano: &|_| None, is_typical: &is_typical, name: &inci };
        let reading = read_for_label(&contents, &asked);
        let list = declare(&reading.ingredients, &reading.allergens, market);
        let masses: BTreeMap<ConstituentId, Decimal> =
            evaluation.composition.entries.iter().map(|entry| (entry.constituent, entry.percent.value())).collect();
        let is_own = |name: &Name| !matches!(name, Name::Allergen(_));
        for (id, mass) in masses.iter().filter(|(_, mass)| **mass > Decimal::ZERO) {
            let stands = list.names.iter().filter(|each| is_own(&each.name) && each.made_of.contains(id)).count();
            prop_assert_eq!(stands, 1, "{} with {}", inci(*id), mass);
        }
        // What is added up under a name is what the composition holds of it, to the last digit.
        let sum = |each: &stillroom_core::label::Declared| -> Decimal { each.made_of.iter().map(|id| masses[id]).sum() };
        for each in list.names.iter().filter(|each| is_own(&each.name)) {
            prop_assert_eq!(sum(each), each.percent.value());
        }
        for pair in list.names.windows(2) {
            let [one, next] = pair else { unreachable!() };
            if one.group == Group::ByWeight && next.group == Group::ByWeight && is_own(&next.name) && is_own(&one.name) {
                prop_assert!(sum(one) >= sum(next));
                // Where it is said to be certain, no lot whose blends differ by the spread turns it round.
                let bound = |each: &stillroom_core::label::Declared, way: Decimal| -> Decimal {
                    let loosely = each.made_of.iter().map(|id| {
                        let lines = reading.loose.iter().find(|(loose, _)| loose == id).map(|(_, lines)| lines);
                        let entry = evaluation.composition.entries.iter().find(|entry| entry.constituent == *id);
                        let trail = entry.into_iter().flat_map(|entry| &entry.trail);
                        let ours = trail.filter(|each| lines.is_some_and(|lines| lines.contains(&each.line)));
                        ours.map(|each| each.percent.value()).sum::<Decimal>()
                    });
                    sum(each) + way * TYPICAL_SPREAD * loosely.sum::<Decimal>()
                };
                let certain = bound(one, -Decimal::ONE) >= bound(next, Decimal::ONE);
                prop_assert_eq!(!one.doubt.may_follow_next, certain || bound(one, Decimal::ONE) == sum(one) && bound(next, Decimal::ONE) == sum(next));
            }
        }
        // Perfume goes by one word, colourants stand last, and every allergen above its threshold is named.
        let roles = |role: Role| reading.ingredients.iter().filter(|each| each.role == role).count();
        prop_assert_eq!(list.names.iter().filter(|each| each.name == Name::Perfume).count(), roles(Role::Perfume).min(1));
        for each in &reading.allergens {
            let named = list.names.iter().any(|name| match name.name {
                Name::Allergen(known) => known == each.name,
                Name::Own(id) => each.members.contains(&id),
                Name::Perfume | Name::Aroma => false,
            });
            prop_assert!(named || each.most <= each.threshold, "{}", each.name);
        }
    }
}
