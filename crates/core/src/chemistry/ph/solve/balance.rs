//! What the balances are at one point: sums over everything that is dissolved.

use super::{Form, Ligand, Solver, UNKNOWNS};
use crate::chemistry::ph::Cation;

/// What the balances are at one point.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Balance {
    /// The convex function, if it was asked for: its logarithms are much of the work.
    pub(super) potential: f64,
    /// Its gradient: charge, then each cation, in mol/kg.
    pub(super) gradient: [f64; UNKNOWNS],
    /// Its curvature.
    pub(super) curvature: [[f64; UNKNOWNS]; UNKNOWNS],
    pub(super) ionic_strength: f64,
    /// How twice the ionic strength, and with it the gradient, moves with each unknown and with `-ln γ` of a single charge.
    pub(super) strength_slope: [f64; UNKNOWNS],
    pub(super) strength_curvature: f64,
}

impl Solver<'_> {
    /// The convex function, its gradient and curvature, and the ionic strength, at the point.
    pub(super) fn balance(&mut self, with_potential: bool) -> Balance {
        const H: usize = UNKNOWNS - 1;
        let mut all = Balance::default();
        let proton = self.point[H].exp();
        let hydroxide = self.water_constant / proton;
        self.set_powers(1.0 / proton);
        let (free_proton, free_hydroxide) = (proton / self.gammas[1], hydroxide / self.gammas[1]);
        let mut ions = free_proton + free_hydroxide + self.strong_ions;
        all.gradient[H] = self.strong_charge + free_proton - free_hydroxide;
        all.curvature[H][H] = free_proton + free_hydroxide;
        all.potential = free_proton + free_hydroxide + self.strong_charge * self.point[H];
        all.strength_slope[H] = free_proton - free_hydroxide;
        all.strength_curvature = free_proton + free_hydroxide;
        let mut activities = [0.0; 5];
        for cation in Cation::ALL {
            let (at, charge) = (cation.index(), cation.charge());
            if self.totals[at] <= 0.0 {
                continue;
            }
            let activity = self.point[at].exp();
            activities[at] = activity;
            let free = activity / self.gamma(charge);
            let pair = self.hydroxides[at] * activity * hydroxide / self.gamma(charge - 1);
            all.gradient[at] += free + pair - self.totals[at];
            all.curvature[at][at] += free + pair;
            all.gradient[H] -= pair;
            all.curvature[H][H] += pair;
            all.curvature[H][at] -= pair;
            all.potential += free + pair - self.totals[at] * self.point[at];
            let (of_free, of_pair) = (f64::from(charge).powi(2), f64::from(charge - 1).powi(2));
            ions += free * of_free + pair * of_pair;
            all.strength_slope[at] += free * of_free + pair * of_pair;
            all.strength_slope[H] -= pair * of_pair;
            all.strength_curvature += free * of_free * of_free + pair * of_pair * of_pair;
        }
        for ligand in self.ligands.iter().filter(|ligand| ligand.total > 0.0) {
            ions += self.add_ligand(ligand, &activities, &mut all, with_potential);
        }
        for row in 0..UNKNOWNS {
            for column in row + 1..UNKNOWNS {
                all.curvature[row][column] = all.curvature[column][row];
            }
        }
        all.ionic_strength = ions / 2.0;
        all
    }

    /// Adds what a ligand is in, and says what it adds to twice the ionic strength.
    fn add_ligand(&self, ligand: &Ligand<'_>, activities: &[f64; 5], all: &mut Balance, with_potential: bool) -> f64 {
        const H: usize = UNKNOWNS - 1;
        // Means and products of what the forms hold: cations, and protons counted as lost (so with a minus).
        let mut weight = 0.0;
        let mut mean = [0.0; UNKNOWNS];
        let mut square = [0.0; UNKNOWNS];
        let mut with_proton = [0.0; UNKNOWNS];
        let mut with_strength = [0.0; UNKNOWNS];
        let (mut charges, mut charges_square) = (0.0, 0.0);
        for form in &self.forms[ligand.forms.0..ligand.forms.1] {
            let mut share = form.weight * self.powers[usize::from(form.lost)];
            let (lost, charge) = (f64::from(form.lost), f64::from(form.charge));
            let squared = charge * charge;
            if form.held > 0 {
                share *= held(form, activities);
                let held = share * f64::from(form.held);
                mean[form.cation] += held;
                square[form.cation] += held * f64::from(form.held);
                with_proton[form.cation] += held * lost;
                with_strength[form.cation] += held * squared;
            }
            weight += share;
            mean[H] += share * lost;
            square[H] += share * lost * lost;
            with_strength[H] += share * lost * squared;
            charges += share * squared;
            charges_square += share * squared * squared;
        }
        let (total, over) = (ligand.total, 1.0 / weight);
        mean = mean.map(|sum| sum * over);
        if with_potential {
            all.potential += total * (weight.ln() + f64::from(ligand.acid.charge()) * self.point[H]);
        }
        all.gradient[H] += total * (f64::from(ligand.acid.charge()) - mean[H]);
        all.curvature[H][H] += total * (square[H] * over - mean[H] * mean[H]).max(0.0);
        charges *= over;
        all.strength_slope[H] -= total * (with_strength[H] * over - mean[H] * charges);
        all.strength_curvature += total * (charges_square * over - charges * charges).max(0.0);
        if !ligand.pairs {
            return total * charges;
        }
        for (place, &at) in self.there().iter().enumerate().filter(|(_, at)| **at < H) {
            all.gradient[at] += total * mean[at];
            all.curvature[H][at] -= total * (with_proton[at] * over - mean[at] * mean[H]);
            all.curvature[at][at] += total * (square[at] * over - mean[at] * mean[at]).max(0.0);
            all.strength_slope[at] += total * (with_strength[at] * over - mean[at] * charges);
            for &other in &self.there()[..place] {
                // No form holds two kinds of cation.
                all.curvature[at][other] -= total * mean[at] * mean[other];
            }
        }
        total * charges
    }
}

/// What the cations that a form holds make of its share.
pub(super) fn held(form: &Form, activities: &[f64; 5]) -> f64 {
    let activity = activities[form.cation];
    if form.held == 2 { activity * activity } else { activity }
}
