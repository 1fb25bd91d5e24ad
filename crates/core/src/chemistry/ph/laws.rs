//! Laws every equilibrium obeys, tried on random mixtures.

use super::*;
use proptest::prelude::*;
use std::sync::LazyLock;

fn pairs(cations: &[(Cation, u8, u8, f64)]) -> Vec<Pair> {
    let pair = |&(cation, cations, lost, log_k)| Pair { cation, cations, lost, constant: Constant::at_25(log_k) };
    cations.iter().map(pair).collect()
}

fn steps(pkas: &[f64]) -> Vec<Constant> {
    pkas.iter().map(|pka| Constant::of_acid(*pka, 3.0, -150.0)).collect()
}

/// Acids and bases of every kind; constants of the size of published ones.
static KINDS: LazyLock<Vec<AcidBase>> = LazyLock::new(|| {
    use Cation::{Calcium, Magnesium, Potassium, Sodium, Zinc};
    let citrate = [
        (Sodium, 1, 3, 1.03),
        (Sodium, 2, 3, 1.5),
        (Sodium, 1, 2, 0.054),
        (Potassium, 1, 3, 1.1),
        (Magnesium, 1, 3, 4.89),
        (Calcium, 1, 3, 4.87),
        (Zinc, 1, 3, 6.21),
    ];
    let edta = [
        (Sodium, 1, 5, 2.7),
        (Potassium, 1, 5, 1.7),
        (Magnesium, 1, 5, 10.57),
        (Calcium, 1, 5, 12.42),
        (Calcium, 1, 4, 4.952),
        (Zinc, 1, 5, 18.0),
    ];
    vec![
        AcidBase::new(0, steps(&[3.128, 4.761, 6.396]), pairs(&citrate)).unwrap(),
        AcidBase::new(1, steps(&[1.5, 2.16, 3.119, 6.273, 10.948]), pairs(&edta)).unwrap(),
        AcidBase::at_25(0, &[3.86]).unwrap(),
        AcidBase::at_25(0, &[2.148, 7.198, 12.375]).unwrap(),
        AcidBase::at_25(2, &[1.82, 8.994, 13.8]).unwrap(),
        AcidBase::at_25(1, &[7.762]).unwrap(),
        AcidBase::at_25(1, &[2.35, 9.778]).unwrap(),
        AcidBase::at_25(0, &[1.1, 1.5, 1.5, 1.8, 2.1, 2.1, 5.7, 6.85, 7.6, 10.0, 10.0, 12.0]).unwrap(),
    ]
});

#[derive(Debug, Clone)]
struct Mixture {
    acids: Vec<(usize, f64)>,
    cations: [f64; 5],
    anion: f64,
    celsius: f64,
}

impl Mixture {
    fn solution(&self, reversed: bool) -> Solution<'static> {
        let mut solution = Solution::in_water(1.0).with_anion(self.anion);
        let mut order: Vec<_> = self.acids.iter().collect();
        if reversed {
            order.reverse();
        }
        for (kind, moles) in order {
            solution.add(&KINDS[*kind], *moles);
        }
        for (cation, moles) in Cation::ALL.into_iter().zip(self.cations) {
            solution.add_cation(cation, moles);
        }
        solution
    }

    fn temperature(&self) -> Temperature {
        Temperature::new(self.celsius).unwrap()
    }

    /// The equilibrium, unless the mixture is beyond the model. Any other error breaks the law that all are solved.
    fn solve(&self, solution: &Solution<'_>) -> Option<Equilibrium> {
        match Solver::new(&[solution], self.temperature()).unwrap().solve() {
            Err(PhError::TooStrong { .. }) => None,
            solved => Some(solved.unwrap()),
        }
    }
}

/// From a trace to what a jar holds, evenly over the decades; often nothing.
fn amount() -> impl Strategy<Value = f64> {
    prop_oneof![Just(0.0), (-6.0..-1.0_f64).prop_map(|power| 10_f64.powf(power))]
}

fn mixture() -> impl Strategy<Value = Mixture> {
    let acids = prop::collection::vec((0_usize..8, amount()), 1..6);
    let cations = prop::array::uniform5(amount());
    (acids, cations, amount(), 0.0..=50.0_f64).prop_map(|(acids, cations, anion, celsius)| Mixture {
        acids,
        cations,
        anion,
        celsius,
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1500))]

    /// The charge of every species, counted anew from the shares that are shown, is nothing; and cations are not lost.
    #[test]
    fn the_charge_balance_closes(mixture in mixture()) {
        let solution = mixture.solution(false);
        if let Some(solved) = mixture.solve(&solution) {
            let scale = 1e-7 + solution.acids.iter().map(|(_, moles)| moles).sum::<f64>()
                + mixture.cations.iter().sum::<f64>() + mixture.anion;
            prop_assert!(solved.residual.abs() <= 1e-9 * scale, "{}", solved.residual);
            let mut solver = Solver::new(&[&solution], mixture.temperature()).unwrap();
            let again = solver.solve().unwrap();
            let root = again.ionic_strength.sqrt();
            let gamma = 10_f64.powf(
                -debye_huckel(mixture.temperature()) * (root / (1.0 + root) - 0.3 * again.ionic_strength),
            );
            let hydroxide = 10_f64.powf(Medium::standard().water.log_k_at(mixture.temperature()) + again.ph);
            let mut charge = (10_f64.powf(-again.ph) - hydroxide) / gamma - mixture.anion;
            for (cation, moles) in Cation::ALL.into_iter().zip(mixture.cations) {
                charge += moles * f64::from(cation.charge());
            }
            for (acid, moles) in &solution.acids {
                for lost in 0..=u8::try_from(acid.steps().len()).unwrap() {
                    charge += moles * solver.share(acid, lost) * (f64::from(acid.charge()) - f64::from(lost));
                }
            }
            // What hydroxide pairs hold is charge of OH- that the sum above leaves out.
            let pairs: f64 = Cation::ALL.into_iter().map(|cation| solver.hydroxide_pair(cation)).sum();
            prop_assert!((charge - pairs).abs() <= 1e-8 * scale, "{charge} {pairs}");
        }
    }

    #[test]
    fn adding_acid_never_raises_the_ph(mixture in mixture(), more in 1e-6..0.05_f64) {
        let before = mixture.solution(false);
        let after = before.clone().with_anion(more);
        if let (Some(before), Some(after)) = (mixture.solve(&before), mixture.solve(&after)) {
            prop_assert!(after.ph <= before.ph + 1e-9, "{} to {}", before.ph, after.ph);
        }
    }

    /// A solver asked for one mixture after the other answers as one that is new.
    #[test]
    fn what_was_solved_before_changes_nothing(
        one in mixture(),
        other in mixture(),
        shares in prop::collection::vec((0.0..1.0_f64, 0.0..1.0_f64), 1..6),
    ) {
        let (first, second) = (one.solution(false), other.solution(false));
        let mut used = Solver::new(&[&first, &second], one.temperature()).unwrap();
        for (part, rest) in shares {
            let mix = [part + 0.01, rest];
            let again = used.solve_mix(&mix);
            let fresh = Solver::new(&[&first, &second], one.temperature()).unwrap().solve_mix(&mix);
            match (again, fresh) {
                (Ok(again), Ok(fresh)) => prop_assert!((again.ph - fresh.ph).abs() < 1e-7, "{} {}", again.ph, fresh.ph),
                (Err(PhError::TooStrong { .. }), Err(PhError::TooStrong { .. })) => {}
                different => prop_assert!(false, "{different:?}"),
            }
        }
    }

    /// An end of a range stands within a thousandth of where all digits would put it, wherever it is come from.
    #[test]
    fn what_is_solved_roughly_is_off_by_less_than_a_thousandth(
        one in mixture(),
        other in mixture(),
        shares in prop::collection::vec((0.0..1.0_f64, 0.0..1.0_f64), 1..4),
    ) {
        let (first, second) = (one.solution(false), other.solution(false));
        let mut rough = Solver::new(&[&first, &second], one.temperature()).unwrap();
        for (part, rest) in shares {
            let mix = [part + 0.01, rest];
            let exact = Solver::new(&[&first, &second], one.temperature()).unwrap().solve_mix(&mix);
            if let (Ok(rough), Ok(exact)) = (rough.solve_roughly(&mix), exact) {
                prop_assert!((rough.ph - exact.ph).abs() < 1e-3, "{} {}", rough.ph, exact.ph);
            }
        }
    }

    #[test]
    fn the_order_of_what_is_dissolved_changes_nothing(mixture in mixture()) {
        if let Some(forward) = mixture.solve(&mixture.solution(false)) {
            let backward = mixture.solve(&mixture.solution(true)).unwrap();
            prop_assert!((forward.ph - backward.ph).abs() < 1e-9);
        }
    }

    /// Setting a pH and predicting the mixture give the same, whatever is set with whatever.
    #[test]
    fn what_is_set_is_predicted(mixture in mixture(), target in 2.5..11.5_f64, kind in 0_usize..8) {
        let base = mixture.solution(false);
        let Some(start) = mixture.solve(&base) else { return Ok(()) };
        let titrant = if target > start.ph {
            Solution::in_water(0.9).with_cation(Cation::Sodium, 2.5)
        } else if kind == 3 || kind == 0 {
            Solution::in_water(0.5).with(&KINDS[kind], 1.0)
        } else {
            Solution::in_water(0.9).with_anion(1.0)
        };
        match set::reach(&base, &titrant, target, mixture.temperature()) {
            Ok(dose) => {
                let mut all = base.clone();
                all.add_solution(&titrant, dose.share);
                let ph = mixture.solve(&all).unwrap().ph;
                prop_assert!((ph - target).abs() < 0.01, "{ph} for {target}");
            }
            Err(error) => prop_assert!(
                matches!(error, PhError::TooStrong { .. } | PhError::Unreachable { .. }), "{error}"
            ),
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    /// A single acid or base, alone or with strong ions: more water brings the pH nearer to that of water, or leaves
    /// it.
    #[test]
    fn dilution_moves_the_ph_towards_neutral(kind in 0_usize..8, moles in 1e-5..0.1_f64, more in 1.1..100.0_f64) {
        let at = Temperature::TWENTY_FIVE;
        let neutral = Solver::new(&[&Solution::in_water(1.0)], at).unwrap().solve().unwrap().ph;
        let solution = Solution::in_water(1.0).with(&KINDS[kind], moles);
        let water = Solution::in_water(1.0);
        let mut solver = Solver::new(&[&solution, &water], at).unwrap();
        let before = solver.solve_mix(&[1.0, 0.0]);
        let after = solver.solve_mix(&[1.0, more]);
        if let (Ok(before), Ok(after)) = (before, after) {
            let (near, far) = ((after.ph - neutral).abs(), (before.ph - neutral).abs());
            prop_assert!(near <= far + 1e-6, "{kind}: {} to {}", before.ph, after.ph);
        }
    }

    /// Any mixture, where ions do not feel each other: with activities the law is not one (the 1:1 phosphate standard
    /// rises past neutral by its half-dilution's +0.08).
    #[test]
    fn diluting_any_ideal_mixture_moves_the_ph_towards_neutral(
        acids in prop::collection::vec((2_usize..8, amount()), 1..6),
        sodium in amount(),
        anion in amount(),
        more in 1.01..1000.0_f64,
    ) {
        let mut solution = Solution::in_water(1.0).with_cation(Cation::Sodium, sodium).with_anion(anion);
        for (kind, moles) in acids {
            solution.add(&KINDS[kind], moles);
        }
        let water = Solution::in_water(1.0);
        let medium = Medium::without_pairs();
        let parts = [&solution, &water];
        let mut solver = Solver::in_medium(&parts, Temperature::TWENTY_FIVE, Activity::Ideal, &medium).unwrap();
        let neutral = solver.solve_mix(&[0.0, 1.0]).unwrap().ph;
        let (before, after) = (solver.solve_mix(&[1.0, 0.0]).unwrap().ph, solver.solve_mix(&[1.0, more]).unwrap().ph);
        prop_assert!((before - neutral) * (after - neutral) >= -1e-9, "{before} {after}");
        prop_assert!((after - neutral).abs() <= (before - neutral).abs() + 1e-9, "{before} {after}");
    }

    /// From what no instrument sees to what no water holds: an equilibrium or a refusal, never a failure.
    #[test]
    fn whatever_is_dissolved_is_solved_or_refused(
        acids in prop::collection::vec((0_usize..8, -30.0..1.0_f64), 0..8),
        cations in prop::array::uniform5(-30.0..1.0_f64),
        anion in -30.0..1.0_f64,
        water in 0.01..1.0_f64,
        celsius in 0.0..=50.0_f64,
    ) {
        let mut solution = Solution::in_water(water).with_anion(10_f64.powf(anion));
        for (kind, power) in acids {
            solution.add(&KINDS[kind], 10_f64.powf(power));
        }
        for (cation, power) in Cation::ALL.into_iter().zip(cations) {
            solution.add_cation(cation, 10_f64.powf(power));
        }
        let at = Temperature::new(celsius).unwrap();
        match Solver::new(&[&solution], at).unwrap().solve() {
            Ok(solved) => prop_assert!(solved.ph.is_finite() && solved.capacity > 0.0 && solved.ionic_strength <= 0.5),
            Err(error) => prop_assert!(matches!(error, PhError::TooStrong { .. }), "{error}"),
        }
    }
}

/// The free acid of a peel or a preservative at its pH, by the closed form where ions do not feel each other.
#[test]
fn the_free_acid_is_what_the_closed_form_says() {
    let salicylic = AcidBase::at_25(0, &[2.985]).unwrap();
    for sodium in [0.0, 0.005, 0.01, 0.014] {
        let solution = Solution::in_water(1.0).with(&salicylic, 0.0145).with_cation(Cation::Sodium, sodium);
        let medium = Medium::without_pairs();
        let at = Temperature::TWENTY_FIVE;
        let mut solver = Solver::in_medium(&[&solution], at, Activity::Ideal, &medium).unwrap();
        let ph = solver.solve().unwrap().ph;
        let closed = crate::chemistry::dissociation::undissociated(&[2.985], ph);
        assert!((solver.share(&salicylic, 0) - closed).abs() < 1e-9);
        assert!((solver.share(&salicylic, 0) + solver.share(&salicylic, 1) - 1.0).abs() < 1e-12);
    }
}
