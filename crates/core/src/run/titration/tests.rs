use super::*;
use crate::amount::Amount;
use crate::chemistry::ph::{AcidBase, Cation, Solver};
use crate::formula::Formula;
use crate::run::state::{RunState, replay};
use crate::run::steps::Step;
use crate::run::{Deed, Event, RunPlan};
use crate::weigh_sheet::Scales;
use rust_decimal::dec;
use stillroom_terms::PhaseKind;

const AT: Temperature = Temperature::TWENTY_FIVE;
const CITRIC: MaterialId = MaterialId::Catalogue(32);

fn grams(value: Decimal) -> Grams {
    Grams::new(value).unwrap()
}

fn ph(value: Decimal) -> Ph {
    Ph::new(value).unwrap()
}

fn plan() -> RunPlan {
    let mut formula = Formula::with_name("test");
    let water = formula.add_phase("water", PhaseKind::RoomTemperature, None);
    formula.add_line(water, MaterialId::Catalogue(1), Amount::QuantumSatis);
    formula.add_line(water, MaterialId::Catalogue(26), Amount::Percent(Percent::new(dec!(0.5)).unwrap()));
    formula.target_ph = Some(ph(dec!(5.5)));
    RunPlan::new(formula, grams(dec!(100)), Scales::default()).unwrap()
}

fn state(deeds: &[Deed]) -> RunState {
    let events: Vec<Event> =
        (1u64..).zip(deeds).map(|(at, deed)| Event { at: at * 1000, deed: deed.clone() }).collect();
    replay(&plan(), &events).unwrap()
}

fn read(vessel: Vessel, value: Decimal) -> Deed {
    Deed::Ph(PhDeed::Read(vessel, ph(value), ReadBy::Meter))
}

fn by_strip(value: Decimal, step: Decimal) -> Deed {
    Deed::Ph(PhDeed::Read(Vessel::Batch, ph(value), ReadBy::Strip(ph(step))))
}

fn citric() -> Deed {
    let strength = Percent::new(dec!(10)).unwrap();
    let drops = Some(Drops { count: 20, mass: grams(dec!(0.9)) });
    Deed::Ph(PhDeed::Titrant(Titrant { material: CITRIC, strength, drops }))
}

fn windows() -> Deed {
    let window = Window { substance: ConstituentId::Catalogue(26), low: ph(dec!(2.5)), high: ph(dec!(5)) };
    Deed::Ph(PhDeed::Windows(vec![window]))
}

#[test]
fn a_reading_beside_the_target_asks_for_an_answer_and_the_step_stays_open() {
    let closed = Deed::Closed(Step::Ph);
    let run = state(&[windows(), read(Vessel::Batch, dec!(6.4)), closed.clone()]);
    let Standing::Outside(reading, outside) = run.ph_log.standing() else { panic!("{:?}", run.ph_log) };
    assert_eq!((reading.ph, outside.target, outside.windows.len()), (ph(dec!(6.4)), Some(Miss::TooHigh), 1));
    assert!(!run.is_done(Step::Ph), "it was read 0.9 beside the target");
    // Accepted it is a deviation, and the run goes on.
    let deeds = [windows(), read(Vessel::Batch, dec!(6.4)), Deed::Ph(PhDeed::Accepted), closed.clone()];
    let run = state(&deeds);
    assert!(matches!(run.ph_log.standing(), Standing::Accepted(..)) && run.is_done(Step::Ph));
    // Corrected it has to be read again.
    let corrected = [read(Vessel::Batch, dec!(6.4)), citric(), Deed::Ph(PhDeed::Corrected(grams(dec!(1.2))))];
    let run = state(&[&corrected[..], std::slice::from_ref(&closed)].concat());
    assert!(run.ph_log.standing() == Standing::Unread && !run.is_done(Step::Ph));
    let run = state(&[&corrected[..], &[read(Vessel::Batch, dec!(5.6)), closed]].concat());
    assert!(matches!(run.ph_log.standing(), Standing::Within(_)) && run.is_done(Step::Ph));
    assert_eq!(run.ph, Some(ph(dec!(5.6))));
}

#[test]
fn a_record_from_before_there_were_answers_stays_closed() {
    let run = state(&[Deed::PhMeasured(ph(dec!(6.4))), Deed::Closed(Step::Ph)]);
    assert!(run.is_done(Step::Ph));
    assert!(matches!(run.ph_log.standing(), Standing::Outside(..)), "what it says of the batch is said all the same");
}

#[test]
fn a_coarse_strip_cannot_tell() {
    assert!(matches!(state(&[by_strip(dec!(6), dec!(0.5))]).ph_log.standing(), Standing::CannotTell(_)));
    assert!(matches!(state(&[by_strip(dec!(7), dec!(1))]).ph_log.standing(), Standing::Outside(..)));
    let near = [Deed::Ph(PhDeed::Read(Vessel::Batch, ph(dec!(5.7)), ReadBy::Meter))];
    assert!(matches!(state(&near).ph_log.standing(), Standing::Within(_)));
}

#[test]
fn drops_weigh_what_they_were_weighed_and_another_solution_asks_for_another_sample() {
    let deeds = [
        Deed::Ph(PhDeed::SampleTaken(grams(dec!(10)), grams(dec!(20)))),
        citric(),
        read(Vessel::Sample, dec!(6.4)),
        Deed::Ph(PhDeed::DropsAdded(3)),
        read(Vessel::Sample, dec!(5.8)),
    ];
    let run = state(&deeds);
    let sample = run.ph_log.sample.as_ref().unwrap();
    assert_eq!(sample.readings.iter().map(|each| each.added).collect::<Vec<_>>(), [Grams::ZERO, grams(dec!(0.135))]);
    let lye = Titrant { material: MaterialId::Catalogue(33), strength: Percent::new(dec!(10)).unwrap(), drops: None };
    let run = state(&[&deeds[..], &[Deed::Ph(PhDeed::Titrant(lye))]].concat());
    assert!(run.ph_log.sample.is_none());
    // Taken back, it stands again.
    let run = state(&[&deeds[..], &[Deed::Ph(PhDeed::Titrant(lye)), Deed::TakenBack]].concat());
    assert_eq!(run.ph_log.sample.unwrap().readings.len(), 2);
}

/// A batch of 100 g that holds a protein nobody stated reads 6.4. A diluted sample is titrated, the batch corrected in
/// under-shoot steps by what that says, and ends within the tolerance. The readings come from the whole truth.
#[test]
fn a_titrated_sample_brings_the_batch_to_its_target() {
    let benzoic = AcidBase::at_25(0, &[4.204]).unwrap();
    let citric_acid = AcidBase::at_25(0, &[3.128, 4.761, 6.396]).unwrap();
    let hidden = AcidBase::at_25(1, &[3.6, 6.3]).unwrap();
    let known = Solution::in_water(0.8).with(&benzoic, 0.0347).with_cation(Cation::Sodium, 0.0347);
    let truth = known.clone().with(&hidden, 0.02).with_cation(Cation::Sodium, 0.011);
    let titrant = Solution::in_water(0.9).with(&citric_acid, 100.0 / 192.12);
    let meter = |water: f64, mass: f64, added: f64| {
        let mut there = Solution::in_water(water / 1000.0);
        there.add_solution(&truth, mass / 1000.0);
        there.add_solution(&titrant, added / 1000.0);
        let solved = Solver::new(&[&there], AT).unwrap().solve().unwrap().ph;
        ph(Decimal::try_from((solved * 100.0).round() / 100.0).unwrap())
    };
    let mut deeds = vec![
        Deed::Ph(PhDeed::Read(Vessel::Batch, meter(0.0, 100.0, 0.0), ReadBy::Meter)),
        Deed::Ph(PhDeed::SampleTaken(grams(dec!(10)), grams(dec!(20)))),
        citric(),
        Deed::Ph(PhDeed::Read(Vessel::Sample, meter(20.0, 10.0, 0.0), ReadBy::Meter)),
    ];
    for drops in 1..=4_u32 {
        deeds.push(Deed::Ph(PhDeed::DropsAdded(1)));
        let added = 0.045 * f64::from(drops);
        deeds.push(Deed::Ph(PhDeed::Read(Vessel::Sample, meter(20.0, 10.0, added), ReadBy::Meter)));
    }
    let bench = OnBench { product: &known, titrant: &titrant, batch: 90.0, at: AT };
    let mut added = 0.0;
    for step in 0..3 {
        let run = state(&deeds);
        let titrated = titrate(&run.ph_log, bench, 5.5).unwrap().unwrap();
        assert!((titrated.now - 0.8 * titrated.all).abs() < 1e-9);
        assert!(titrated.points.len() == 5 && titrated.curve.windows(2).all(|pair| pair[0].1 >= pair[1].1));
        if step == 0 {
            assert!(titrated.all > 0.3, "{titrated:?}");
        }
        let mass = Decimal::try_from((titrated.now * 100.0).round() / 100.0).unwrap();
        added += mass.try_into().unwrap_or(0.0);
        deeds.push(Deed::Ph(PhDeed::Corrected(grams(mass))));
        deeds.push(Deed::Ph(PhDeed::Read(Vessel::Batch, meter(0.0, 90.0, added), ReadBy::Meter)));
        let there = state(&deeds).ph_log.last_of_batch().unwrap().ph.to_physics();
        assert!(there >= 5.45, "under-shot, not over: {there}");
        if matches!(state(&deeds).ph_log.standing(), Standing::Within(_)) {
            return;
        }
    }
    panic!("{:?}", state(&deeds).ph_log.readings);
}

#[test]
fn what_corrected_the_batch_is_in_what_was_made_and_a_sample_is_no_lost_water() {
    let plan = plan();
    let lines: Vec<_> = plan.formula.lines().map(|line| line.id).collect();
    let deeds = [
        Deed::Poured(lines[0], grams(dec!(99.5))),
        Deed::Poured(lines[1], grams(dec!(0.5))),
        Deed::Ph(PhDeed::SampleTaken(grams(dec!(10)), Grams::ZERO)),
        citric(),
        Deed::Ph(PhDeed::Corrected(grams(dec!(2)))),
        Deed::BatchWeighed(grams(dec!(192)), grams(dec!(100))),
    ];
    let run = state(&deeds);
    assert_eq!(run.water_missing(), Some(Grams::ZERO));
    let made = run.as_made(&plan.formula, MaterialId::Catalogue(1), |id| id == MaterialId::Catalogue(1)).unwrap();
    let of = |material: MaterialId| -> Decimal {
        let lines = made.lines().filter(|line| line.material == material);
        lines.map(|line| if let Amount::Grams(mass) = line.amount { mass.value() } else { Decimal::ZERO }).sum()
    };
    assert_eq!((of(CITRIC), of(MaterialId::Catalogue(1))), (dec!(0.2), dec!(101.3)));
}
