use super::*;
use crate::run::RunPlan;
use crate::weigh_sheet::Scales;
use proptest::prelude::*;
use rust_decimal::dec;

fn grams(value: Decimal) -> Grams {
    Grams::new(value).unwrap()
}

/// Water q.s., glycerin 10 %, an oil 20 % and a preservative 1 %, in 100 g.
fn plan() -> RunPlan {
    let mut formula = Formula::with_name("test");
    let percent = |value| Amount::Percent(Percent::new(value).unwrap());
    let water = formula.add_phase("water", PhaseKind::HeatedWater, None);
    formula.add_line(water, MaterialId::Catalogue(1), Amount::QuantumSatis);
    formula.add_line(water, MaterialId::Catalogue(2), percent(dec!(10)));
    let oil = formula.add_phase("oil", PhaseKind::HeatedOil, None);
    formula.add_line(oil, MaterialId::Catalogue(8), percent(dec!(20)));
    let cool = formula.add_phase("cool", PhaseKind::CoolDown, None);
    formula.add_line(cool, MaterialId::Catalogue(79), percent(dec!(1)));
    RunPlan::new(formula, grams(dec!(100)), Scales::default()).unwrap()
}

const WATER: LineId = LineId(1);
const GLYCERIN: LineId = LineId(2);
const OIL: LineId = LineId(4);
const PRESERVATIVE: LineId = LineId(6);

fn log(deeds: &[Deed]) -> Vec<Event> {
    (1u64..).zip(deeds).map(|(at, deed)| Event { at: at * 1000, deed: deed.clone() }).collect()
}

fn state(deeds: &[Deed]) -> RunState {
    replay(&plan(), &log(deeds)).unwrap()
}

#[test]
fn ten_point_four_instead_of_ten_offers_three_cures() {
    let poured = [Deed::Poured(WATER, grams(dec!(69))), Deed::Poured(GLYCERIN, grams(dec!(10.4)))];
    let run = state(&poured);
    assert_eq!(run.line(GLYCERIN).unwrap().status, LineStatus::Over(grams(dec!(0.4))));
    let cures = run.cures(GLYCERIN);
    // 104 g of batch need 71.76 g of water: 2.76 g more.
    assert_eq!(cures[0], Ok(Cure::Rescale(grams(dec!(104)), vec![(WATER, grams(dec!(2.76)))])));
    assert_eq!(cures[1], Err(PourError::RestIsPoured));
    let Ok(Cure::Accept(percent)) = &cures[2] else { panic!("{cures:?}") };
    assert_eq!(percent.value().round_dp(6), dec!(10.358566));

    let rescaled = state(&[&poured[..], &[Deed::Rescaled(GLYCERIN)]].concat());
    assert_eq!(rescaled.line(GLYCERIN).unwrap().status, LineStatus::Done);
    assert_eq!(rescaled.line(WATER).unwrap().status, LineStatus::Short(grams(dec!(2.8))));
    assert_eq!(rescaled.current(), Step::Prepare);
    assert_eq!(rescaled.line(PRESERVATIVE).unwrap().target, grams(dec!(1.04)));
}

#[test]
fn the_rest_gives_way_while_it_is_not_in_the_beaker() {
    let run = state(&[Deed::Poured(GLYCERIN, grams(dec!(10.4))), Deed::TakenFromRest(GLYCERIN)]);
    assert_eq!(run.line(WATER).unwrap().target, grams(dec!(68.6)));
    assert_eq!(run.line(GLYCERIN).unwrap().status, LineStatus::Done);
    assert_eq!(run.recipe.batch(), Some(grams(dec!(100))));
}

#[test]
fn a_smaller_batch_is_refused_where_something_else_is_in_already() {
    let run = state(&[Deed::Poured(WATER, grams(dec!(69))), Deed::Poured(GLYCERIN, grams(dec!(9)))]);
    let cures = run.cures(GLYCERIN);
    assert_eq!(cures[0], Ok(Cure::AddMore(grams(dec!(1)))));
    assert_eq!(cures[1], Err(PourError::OtherTooMuch { line: WATER }));
}

#[test]
fn what_was_taken_back_is_as_if_it_had_never_been() {
    let run = state(&[
        Deed::Poured(WATER, grams(dec!(69))),
        Deed::Poured(GLYCERIN, grams(dec!(12))),
        Deed::Accepted(GLYCERIN),
        Deed::TakenBack,
        Deed::TakenBack,
    ]);
    assert_eq!(run, state(&[Deed::Poured(WATER, grams(dec!(69)))]));
}

#[test]
fn the_water_that_went_is_put_back_by_weight() {
    let water = PhaseId(0);
    let mut deeds = vec![
        Deed::EmptyBeaker(water, grams(dec!(120))),
        Deed::Poured(WATER, grams(dec!(69))),
        Deed::Poured(GLYCERIN, grams(dec!(10))),
        Deed::WeighedHot(water, grams(dec!(196.4))),
    ];
    let plan = plan();
    let run = state(&deeds);
    assert_eq!(run.loss_of(&plan.formula, water), Some(Ok(grams(dec!(2.6)))));
    let made = run.as_made(&plan.formula, MaterialId::Catalogue(1), |id| id == MaterialId::Catalogue(1)).unwrap();
    assert_eq!(made.line(WATER).unwrap().amount, Amount::Grams(grams(dec!(66.4))));
    assert_eq!(made.line(GLYCERIN).unwrap().amount, Amount::Grams(grams(dec!(10))));
    deeds.push(Deed::WaterAdded(Some(water), grams(dec!(2.5))));
    let run = state(&deeds);
    assert_eq!(run.water_owed(&plan.formula, water), Some(grams(dec!(0.1))));
    assert_eq!(run.net_water(&plan.formula), dec!(-0.1));
    // Weighed again afterwards: the water put back is in that weight.
    deeds.push(Deed::WeighedHot(water, grams(dec!(198.9))));
    assert_eq!(state(&deeds).water_owed(&plan.formula, water), Some(grams(dec!(0.1))));
    deeds.push(Deed::WeighedHot(water, grams(dec!(300))));
    assert_eq!(state(&deeds).loss_of(&plan.formula, water).unwrap().unwrap_err().code(), "evaporation.heavier");
    deeds.push(Deed::WeighedHot(water, grams(dec!(3))));
    assert_eq!(
        state(&deeds).loss_of(&plan.formula, water).unwrap().unwrap_err().code(),
        "evaporation.lighter-than-beaker"
    );
}

#[test]
fn a_timer_never_runs_past_its_stop() {
    let event = |at, deed| Event { at, deed };
    let mut events = vec![event(0, Deed::TimerStarted(Step::Blend, 180, vec![90]))];
    let timer = |events: &[Event]| replay(&plan(), events).unwrap().timers.get(&Step::Blend).cloned().unwrap();
    assert_eq!(timer(&events).ran_at(30_000), 30_000);
    assert_eq!(timer(&events).ran_at(9_999_999), 90_000);
    // The phone slept for an hour; whoever comes back finds the timer at its pause.
    events.push(event(3_600_000, Deed::TimerResumed(Step::Blend)));
    assert_eq!(timer(&events).ran_at(3_600_000), 90_000);
    assert!(!timer(&events).is_over(3_650_000));
    assert!(timer(&events).is_over(3_700_000));
}

#[test]
fn the_steps_lead_from_the_bench_to_the_signature() {
    let mut deeds = Vec::new();
    let plan = plan();
    let mut seen = Vec::new();
    loop {
        let run = replay(&plan, &log(&deeds)).unwrap();
        let step = run.current();
        seen.push(step.to_string());
        deeds.push(match step {
            Step::Prepare => Deed::Started,
            Step::Weigh(line) => Deed::Poured(line, run.line(line).unwrap().target),
            Step::Finish => break,
            step => Deed::Closed(step),
        });
        assert!(seen.len() < 40, "{seen:?}");
    }
    let steps: Vec<String> = steps_of(&plan.formula, &[]).iter().map(ToString::to_string).collect();
    assert_eq!(seen, steps);
}

fn any_deed() -> impl Strategy<Value = Deed> {
    let line = prop::sample::select(vec![WATER, GLYCERIN, OIL, PRESERVATIVE, LineId(99)]);
    let mass = (0i64..20_000).prop_map(|mass| grams(Decimal::new(mass, 2)));
    let phase = prop::sample::select(vec![PhaseId(0), PhaseId(3), PhaseId(5)]);
    prop_oneof![
        4 => (line.clone(), mass.clone()).prop_map(|(line, mass)| Deed::Poured(line, mass)),
        1 => line.clone().prop_map(Deed::Rescaled),
        1 => line.clone().prop_map(Deed::TakenFromRest),
        1 => line.clone().prop_map(Deed::Accepted),
        1 => line.prop_map(Deed::LeftOut),
        1 => (phase.clone(), mass.clone()).prop_map(|(phase, mass)| Deed::WeighedHot(phase, mass)),
        1 => (phase.clone(), mass.clone()).prop_map(|(phase, mass)| Deed::EmptyBeaker(phase, mass)),
        1 => (phase.clone(), mass).prop_map(|(phase, mass)| Deed::WaterAdded(Some(phase), mass)),
        1 => phase.prop_map(Deed::PhaseFirst),
        1 => Just(Deed::Closed(Step::Blend)),
        2 => Just(Deed::TakenBack),
    ]
}

proptest! {
    /// A run stopped anywhere and begun again from its log stands where it stood; and whatever happens, nothing panics and
    /// the masses poured are the masses in the log.
    #[test]
    fn a_run_resumed_anywhere_is_the_same_run(deeds in prop::collection::vec(any_deed(), 0..40), stop in 0usize..40) {
        let plan = plan();
        let events = log(&deeds);
        let stop = stop.min(events.len());
        let before = replay(&plan, &events[..stop]).unwrap();
        prop_assert_eq!(&before, &replay(&plan, &log(&deeds[..stop])).unwrap());
        let whole = replay(&plan, &events).unwrap();
        let poured: Decimal = standing(&events).iter().filter_map(|(_, event)| match event.deed {
            Deed::Poured(line, mass) if line != LineId(99) => Some(mass.value()),
            _ => None,
        }).sum();
        prop_assert_eq!(whole.poured().value(), poured);
        let _ = (whole.current(), whole.net_water(&plan.formula), whole.cooling_readings());
        for line in &whole.lines {
            let _ = whole.cures(line.line);
        }
        let _ = whole.as_made(&plan.formula, MaterialId::Catalogue(1), |id| id == MaterialId::Catalogue(1));
    }

    /// After every cure what still lacks is poured, the batch has the percents it set out to have, within what the scale
    /// rounds, and all targets sum to the batch.
    #[test]
    fn a_rescaled_batch_can_be_weighed_to_its_end(over in 1i64..500) {
        let mut deeds = vec![
            Deed::Poured(WATER, grams(dec!(69))),
            Deed::Poured(GLYCERIN, grams(dec!(10) + Decimal::new(over, 2))),
            Deed::Rescaled(GLYCERIN),
        ];
        let plan = plan();
        for _ in 0..12 {
            let run = replay(&plan, &log(&deeds)).unwrap();
            let open = run.lines.iter().find(|line| !line.status.is_settled());
            let Some(line) = open else { break };
            prop_assert!(line.poured <= line.target, "{:?}", line);
            deeds.push(Deed::Poured(line.line, line.target.checked_sub(line.poured).unwrap()));
        }
        let run = replay(&plan, &log(&deeds)).unwrap();
        prop_assert!(run.lines.iter().all(|line| line.status.is_settled()));
        for (line, share) in run.lines.iter().zip(plan.shares().unwrap()) {
            prop_assert_eq!(run.recipe.percent_of(line.line).unwrap().value().round_dp(20), share.percent.value());
            let exact = run.recipe.mass_of(line.line).unwrap().value();
            prop_assert!((line.poured.value() - exact).abs() <= line.tolerance.value() * dec!(2));
        }
    }
}

/// Common practice: water is brought to its weight before what bears no heat is added. Its dish on the bench is in no
/// weight of the batch.
#[test]
fn the_last_water_is_weighed_before_the_cool_down_phase_is_in() {
    let cool = PhaseId(5);
    let weighed_in = [
        Deed::Poured(WATER, grams(dec!(69))),
        Deed::Poured(GLYCERIN, grams(dec!(10))),
        Deed::Poured(OIL, grams(dec!(20))),
    ];
    let dish = [Deed::Poured(PRESERVATIVE, grams(dec!(1)))];
    let weighing = [Deed::BatchWeighed(grams(dec!(296)), grams(dec!(200)))];
    let water = [Deed::WaterAdded(None, grams(dec!(3)))];
    let steps = state(&weighed_in).steps;
    let at = |step: Step| steps.iter().position(|each| *each == step).unwrap();
    assert!(at(Step::Cool) < at(Step::TopUp) && at(Step::TopUp) < at(Step::Beaker(cool)));

    // Whether the dish is weighed before or after makes no difference.
    for deeds in
        [[&weighed_in[..], &weighing, &water, &dish].concat(), [&weighed_in[..], &dish, &weighing, &water].concat()]
    {
        let run = state(&deeds);
        assert_eq!(run.water_missing(), Some(grams(dec!(3))));
        assert_eq!(run.net_water(&plan().formula), Decimal::ZERO);
        assert_eq!(run.batch_there(), grams(dec!(100)));
    }
    // A batch that is weighed once more at the end holds it.
    let added = [Deed::Closed(Step::Add(cool)), Deed::BatchWeighed(grams(dec!(299)), grams(dec!(200)))];
    let run = state(&[&weighed_in[..], &weighing, &water, &dish, &added].concat());
    assert_eq!((run.water_missing(), run.batch_there()), (Some(grams(dec!(1))), grams(dec!(99))));
}
