//! Laws of the solver over any question, and a few a pharmacist can check by hand.

use super::*;
use crate::checks::{About, Demand};
use crate::material::{ConstituentId, MaterialId};
use crate::quantity::Percent;
use proptest::prelude::*;
use rust_decimal::{Decimal, dec};

fn constituent(number: u32) -> ConstituentId {
    ConstituentId::Catalogue(number)
}

fn offer(number: u32, brings: &[(u32, Decimal)]) -> Offer {
    Offer {
        material: MaterialId::Catalogue(number),
        line: None,
        brings: brings.iter().map(|(id, percent)| (constituent(*id), *percent)).collect(),
        low: Decimal::ZERO,
        high: Decimal::ONE_HUNDRED,
        now: None,
        price: None,
        urgency: Decimal::ZERO,
    }
}

fn wish(number: u32, target: Decimal, weight: Decimal) -> Wish {
    Wish { constituent: constituent(number), target: Percent::new(target).unwrap(), weight }
}

fn question(offers: Vec<Offer>, wishes: Vec<Wish>) -> Question {
    Question { offers, wishes, demands: Vec::new(), grid: Grid::PERCENT, aim: Aim::Closest }
}

fn percent_of(answer: &Answer, number: u32) -> Decimal {
    answer.portions.iter().find(|portion| portion.material == MaterialId::Catalogue(number)).unwrap().percent
}

const WATER: u32 = 1;
const GLYCERIN: u32 = 2;
const ACTIVE: u32 = 3;

/// 5 % of a 1 % solution from a 2 % solution and water.
#[test]
fn half_as_much_of_a_solution_twice_as_strong() {
    let strong = offer(10, &[(ACTIVE, dec!(2)), (WATER, dec!(98))]);
    let water = offer(11, &[(WATER, dec!(100))]);
    let wishes = vec![wish(ACTIVE, dec!(0.05), dec!(20)), wish(WATER, dec!(99.95), dec!(0.1))];
    let answer = question(vec![strong, water], wishes).solve().unwrap();
    assert_eq!((percent_of(&answer, 10), percent_of(&answer, 11)), (dec!(2.50), dec!(97.50)));
    assert!(answer.deviation.is_zero() && answer.missed(Decimal::ZERO).next().is_none());
}

#[test]
fn what_nothing_brings_is_missed_and_said() {
    let glycerin = offer(10, &[(GLYCERIN, dec!(100))]);
    let water = offer(11, &[(WATER, dec!(100))]);
    let wishes =
        vec![wish(GLYCERIN, dec!(65), dec!(1)), wish(WATER, dec!(32), dec!(0.1)), wish(ACTIVE, dec!(3), dec!(1))];
    let answer = question(vec![glycerin, water], wishes).solve().unwrap();
    assert_eq!((percent_of(&answer, 10), percent_of(&answer, 11)), (dec!(65), dec!(35)));
    let missed: Vec<_> = answer.missed(Decimal::ZERO).map(|met| (met.constituent, met.off())).collect();
    assert_eq!(missed, [(constituent(ACTIVE), dec!(-3)), (constituent(WATER), dec!(3))]);
}

#[test]
fn what_is_in_the_way_is_named_with_the_least_that_would_do() {
    let mut oil = offer(10, &[(ACTIVE, dec!(100))]);
    oil.high = dec!(4);
    let water = offer(11, &[(WATER, dec!(100))]);
    let mut question = question(vec![oil, water], vec![wish(WATER, dec!(90), dec!(1))]);
    let active = vec![(constituent(ACTIVE), Decimal::ONE)];
    question.demands = vec![Demand::on(About::Wanted(constituent(ACTIVE)), active.clone()).at_least(dec!(6))];
    let Err(NoAnswer::Conflict(conflict)) = question.solve() else { panic!("there is not so much") };
    let wanted = Bound::Demand(About::Wanted(constituent(ACTIVE)));
    let at_hand = Bound::AtHand(MaterialId::Catalogue(10));
    assert_eq!(conflict.in_the_way, [wanted, at_hand]);
    let mut ways = conflict.ways_out.clone();
    ways.sort_by_key(|way| way.bound);
    assert_eq!(
        ways,
        [
            GivingWay { bound: wanted, from: dec!(6), to: dec!(4) },
            GivingWay { bound: at_hand, from: dec!(4), to: dec!(6) }
        ]
    );
    // The law does not give way: then only more at hand helps.
    question.demands[0].may_give = false;
    let Err(NoAnswer::Conflict(conflict)) = question.solve() else { panic!("there is not so much") };
    assert_eq!(conflict.ways_out.iter().map(|way| way.bound).collect::<Vec<_>>(), [at_hand]);
    // Two that nobody can give by themselves give together.
    question.demands[0].may_give = true;
    question.demands.push(Demand::on(About::Water, vec![(constituent(WATER), Decimal::ONE)]).at_most(dec!(93)));
    question.demands.push(Demand::on(About::Oil, active).at_most(dec!(5)));
    let Err(NoAnswer::Conflict(conflict)) = question.solve() else { panic!("there is not so much") };
    assert!(!conflict.in_the_way.is_empty());
}

#[test]
fn nothing_at_hand_and_too_much_are_said() {
    assert_eq!(question(Vec::new(), Vec::new()).solve(), Err(NoAnswer::NothingAtHand));
    let many = (0..500).map(|number| offer(number, &[(WATER, dec!(100))])).collect();
    assert_eq!(question(many, Vec::new()).solve(), Err(NoAnswer::TooMany { most: MOST_OFFERS }));
    let mut fixed = offer(1, &[(WATER, dec!(100))]);
    (fixed.low, fixed.high) = (dec!(3), dec!(3));
    assert_eq!(question(vec![fixed], Vec::new()).solve(), Err(NoAnswer::NothingAtHand), "three is not a hundred");
}

#[test]
fn the_cheapest_stays_as_near_as_was_allowed_and_what_expires_goes_first() {
    let priced = |mut offer: Offer, price, urgency| {
        offer.price = Some(price);
        offer.urgency = urgency;
        offer
    };
    let dear = priced(offer(10, &[(ACTIVE, dec!(100))]), dec!(9), dec!(0));
    let cheap = priced(offer(11, &[(ACTIVE, dec!(90)), (WATER, dec!(10))]), dec!(2), dec!(1));
    let water = priced(offer(12, &[(WATER, dec!(100))]), dec!(0.1), dec!(0));
    let wishes = vec![wish(ACTIVE, dec!(50), dec!(1)), wish(WATER, dec!(50), dec!(1))];
    let mut question = question(vec![dear, cheap, water], wishes);
    question.aim = Aim::Cheapest { further: Decimal::ZERO };
    let cheapest = question.solve().unwrap();
    assert_eq!(percent_of(&cheapest, 10), Decimal::ZERO);
    question.aim = Aim::Cheapest { further: dec!(20) };
    let further = question.solve().unwrap();
    assert!(further.price < cheapest.price && further.deviation <= dec!(20.1));
    question.aim = Aim::UseUp { further: dec!(20) };
    assert!(percent_of(&question.solve().unwrap(), 11) > percent_of(&cheapest, 11));
}

#[test]
fn grams_on_a_scale_are_whole_steps_and_make_the_batch() {
    let strong = offer(10, &[(ACTIVE, dec!(75)), (WATER, dec!(25))]);
    let water = offer(11, &[(WATER, dec!(100))]);
    let mut question = question(vec![strong, water], vec![wish(ACTIVE, dec!(5), dec!(1))]);
    question.grid = Grid::new(dec!(333), dec!(0.1)).unwrap();
    let answer = question.solve().unwrap();
    let sum: Decimal = answer.portions.iter().map(|portion| portion.amount).sum();
    assert_eq!(sum, dec!(333));
    assert!(answer.portions.iter().all(|portion| (portion.amount % dec!(0.1)).is_zero()), "{:?}", answer.portions);
}

prop_compose! {
    fn any_offer(number: u32)(
        parts in prop::collection::btree_map(1u32..9, 1i64..40, 1..4),
        most in prop_oneof![3 => Just(100i64), 1 => 5i64..60],
        price in 1i64..500,
    ) -> Offer {
        let all: i64 = parts.values().sum();
        let mut left = 10_000;
        let count = parts.len();
        let brings = parts.into_iter().enumerate().map(|(at, (id, part))| {
            let share = if at + 1 == count { left } else { part * 10_000 / all };
            left -= share;
            (id, Decimal::new(share, 2))
        });
        let mut offer = offer(number, &brings.collect::<Vec<_>>());
        offer.high = Decimal::from(most);
        offer.price = Some(Decimal::new(price, 2));
        offer
    }
}

prop_compose! {
    fn any_question()(
        offers in (any_offer(100), any_offer(101), any_offer(102), prop::collection::vec(any_offer(0), 0..5)),
        wishes in prop::collection::btree_map(1u32..9, (0i64..6000, 1i64..40), 1..6),
        bands in prop::collection::vec((prop::collection::btree_map(1u32..9, 1i64..20, 1..4), 0i64..9000, 50i64..4000, any::<bool>()), 0..3),
        fixed in prop::option::of(0i64..1500),
        coarse in 0usize..3,
    ) -> Question {
        let (first, second, third, more) = offers;
        let mut offers = vec![first, second, third];
        offers.extend(more.into_iter().enumerate().map(|(at, offer)| {
            Offer { material: MaterialId::Catalogue(103 + u32::try_from(at).unwrap()), ..offer }
        }));
        if let Some(fixed) = fixed {
            let amount = Decimal::new(fixed, 2).min(offers[0].high);
            (offers[0].low, offers[0].high) = (amount, amount);
        }
        let wishes = wishes.into_iter().map(|(id, (target, weight))| wish(id, Decimal::new(target, 2), Decimal::new(weight, 1)));
        let mut question = question(offers, wishes.collect());
        question.demands = bands.into_iter().enumerate().map(|(at, (factors, low, width, open))| {
            let factors = factors.into_iter().map(|(id, factor)| (constituent(id), Decimal::new(factor, 1))).collect();
            let about = About::Wanted(constituent(u32::try_from(at).unwrap()));
            let demand = Demand::on(about, factors).at_most(Decimal::new(low + width, 2));
            if open { demand } else { demand.at_least(Decimal::new(low, 2)) }
        }).collect();
        question.grid = [Grid::PERCENT, Grid::new(dec!(100), dec!(0.1)).unwrap(), Grid::new(dec!(250), dec!(0.1)).unwrap()][coarse];
        question
    }
}

/// Holds an answer to everything that was asked, in decimals.
fn holds(question: &Question, answer: &Answer) -> Result<(), TestCaseError> {
    let total: Decimal = answer.portions.iter().map(|portion| portion.amount).sum();
    prop_assert_eq!(total, question.grid.whole);
    for offer in &question.offers {
        let portion = answer.portions.iter().find(|portion| portion.material == offer.material).unwrap();
        let grams = |percent: Decimal| percent * question.grid.whole / Decimal::ONE_HUNDRED;
        prop_assert!(portion.amount >= grams(offer.low) && portion.amount <= grams(offer.high));
    }
    for demand in &question.demands {
        let mut sum = Decimal::ZERO;
        for portion in &answer.portions {
            let offer = question.offers.iter().find(|offer| offer.material == portion.material).unwrap();
            for (id, percent) in &offer.brings {
                for (counted, factor) in &demand.substances {
                    if counted == id {
                        sum += percent * factor * portion.amount;
                    }
                }
            }
        }
        prop_assert!(demand.high.is_none_or(|high| sum <= high * question.grid.whole), "{demand:?} {sum}");
        prop_assert!(demand.low.is_none_or(|low| sum >= low * question.grid.whole), "{demand:?} {sum}");
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn an_answer_keeps_everything_after_rounding_and_a_conflict_is_one(question in any_question()) {
        match question.solve() {
            Ok(answer) => holds(&question, &answer)?,
            Err(NoAnswer::Conflict(conflict)) => {
                prop_assert!(!conflict.in_the_way.is_empty());
                // Giving way as it says is enough.
                for way in &conflict.ways_out {
                    let mut eased = question.clone();
                    match way.bound {
                        Bound::AtHand(material) => {
                            eased.offers.iter_mut().find(|offer| offer.material == material).unwrap().high = way.to;
                        }
                        Bound::Needs(material) => {
                            eased.offers.iter_mut().find(|offer| offer.material == material).unwrap().low = way.to;
                        }
                        Bound::Demand(about) => {
                            let demand = eased.demands.iter_mut().find(|demand| demand.about == about).unwrap();
                            if way.to > way.from { demand.high = Some(way.to) } else { demand.low = Some(way.to) }
                        }
                    }
                    prop_assert!(!matches!(eased.solve(), Err(NoAnswer::Conflict(_))), "{way:?} is not enough");
                }
            }
            Err(NoAnswer::StepTooCoarse { broken }) => prop_assert!(!broken.is_empty()),
            Err(NoAnswer::NothingAtHand) => {}
            Err(error) => prop_assert!(false, "{error}"),
        }
    }

    #[test]
    fn the_order_of_what_is_asked_changes_nothing(question in any_question()) {
        let mut turned = question.clone();
        turned.offers.reverse();
        turned.wishes.reverse();
        prop_assert_eq!(question.solve(), turned.solve());
        prop_assert_eq!(question.solve(), question.solve());
    }

    #[test]
    fn relaxing_never_makes_it_worse(question in any_question(), by in 1i64..500) {
        let Ok(before) = question.least_deviation() else { return Ok(()) };
        let by = Decimal::new(by, 2);
        for at in 0..question.demands.len() {
            let mut eased = question.clone();
            eased.demands[at].high = eased.demands[at].high.map(|high| high + by);
            eased.demands[at].low = eased.demands[at].low.map(|low| low - by);
            let after = eased.least_deviation();
            prop_assert!(after.is_ok_and(|after| after <= before + 1e-6 * before.abs().max(1.0)), "{before}");
        }
        for at in 0..question.offers.len() {
            let mut eased = question.clone();
            if eased.offers[at].is_fixed() {
                continue;
            }
            eased.offers[at].high += by;
            let after = eased.least_deviation();
            prop_assert!(after.is_ok_and(|after| after <= before + 1e-6 * before.abs().max(1.0)), "{before}");
        }
    }

    #[test]
    fn a_material_for_itself_changes_nothing(question in any_question()) {
        let mut question = question;
        question.demands.clear();
        question.grid = Grid::PERCENT;
        let Ok(first) = question.solve() else { return Ok(()) };
        // What was answered is what is wanted now, and where it stands.
        for offer in &mut question.offers {
            offer.now = first.portions.iter().find(|portion| portion.material == offer.material).map(|portion| portion.percent);
        }
        question.wishes = first.wishes.iter().map(|met| wish_exactly(met.constituent, met.got)).collect();
        let second = question.solve().unwrap();
        prop_assert_eq!(&second.portions, &first.portions);
        prop_assert!(second.deviation.is_zero());
    }
}

fn wish_exactly(constituent: ConstituentId, target: Decimal) -> Wish {
    Wish { constituent, target: Percent::new(target).unwrap(), weight: Decimal::ONE }
}
