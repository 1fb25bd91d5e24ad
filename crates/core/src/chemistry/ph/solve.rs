//! The equilibrium: charge and mass balances, solved together.
//!
//! With activity coefficients held, the balances are the gradient of a convex function of `ln a(H+)` and the `ln a` of
//! the cations (a sum of logarithms of sums of exponentials), so there is one equilibrium. It is found in three steps:
//! a bracketed bisection on the pH with every cation free, which cannot fail; Newton's method on everything at once,
//! whose steps are shortened until the convex function falls; and around both a bracketed iteration on the ionic
//! strength. No library for roots is used: those at hand solve one equation in one unknown and know nothing of the
//! derivatives that are had here for nothing; what is left of them, a bisection, is ten lines.

use super::constants::MOST_STEPS;
use super::{MOST_IONIC_STRENGTH, Medium, PhError, Solution, TEMPERATURES, debye_huckel};
use crate::chemistry::Temperature;
use crate::chemistry::ph::{AcidBase, Cation};
use std::f64::consts::LN_10;

/// Largest charge of a form or pair, for the table of activity coefficients.
const CHARGES: usize = 13;
/// Largest ionic strength tried, in mol/kg: beyond [`MOST_IONIC_STRENGTH`] only to say about how much it is.
const TRIED_IONIC_STRENGTH: f64 = 1.0;
/// Unknowns: the proton and five cations.
const UNKNOWNS: usize = 6;
/// Largest residual accepted, as a share of what is balanced.
const RESIDUAL: f64 = 1e-11;
/// Bounds of the pH in which an equilibrium is looked for.
const PH_BOUNDS: (f64, f64) = (-3.0, 17.0);

/// How activity coefficients are reckoned.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Activity {
    /// By Davies, to an ionic strength of 0.5 mol/kg.
    #[default]
    Davies,
    /// All 1: for comparing with textbooks. Misses buffer standards by up to 0.3.
    Ideal,
}

/// One form of an acid, or one ion pair of a form, beside the acid's other forms.
#[derive(Debug, Clone, Copy)]
struct Form {
    /// Constant of its making from the fully protonated form.
    beta: f64,
    /// Protons lost.
    lost: u8,
    /// Cation held, as its index, and how many of it.
    cation: usize,
    held: u8,
    /// Its charge.
    charge: i8,
}

#[derive(Debug, Clone)]
struct Ligand<'a> {
    acid: &'a AcidBase,
    /// mol per part.
    parts: Vec<f64>,
    /// mol/kg water.
    total: f64,
    /// Its forms: from, to.
    forms: (usize, usize),
}

/// What the balances are at one point.
#[derive(Debug, Clone, Copy, Default)]
struct Balance {
    /// The convex function.
    potential: f64,
    /// Its gradient: charge, then each cation, in mol/kg.
    gradient: [f64; UNKNOWNS],
    /// Its curvature.
    curvature: [[f64; UNKNOWNS]; UNKNOWNS],
    ionic_strength: f64,
}

/// A solved equilibrium.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Equilibrium {
    /// `-log10 a(H+)`.
    pub ph: f64,
    /// Ionic strength in mol/kg water.
    pub ionic_strength: f64,
    /// Buffer capacity: mol of strong base per kg of water that raise the pH by 1, as a slope here (Van Slyke, J. Biol.
    /// Chem. 52 (1922) 525), at the ionic strength that is.
    pub capacity: f64,
    /// What is left of the charge balance, in mol/kg: how well it is solved.
    pub residual: f64,
}

/// Finds the equilibrium of one solution, or of several mixed in any shares.
///
/// Built once, it is asked for as many mixtures as one likes without allocating; each takes microseconds.
#[derive(Debug, Clone)]
pub struct Solver<'a> {
    ligands: Vec<Ligand<'a>>,
    forms: Vec<Form>,
    water: Vec<f64>,
    cations: Vec<[f64; 5]>,
    unpaired: Vec<f64>,
    strong: Vec<f64>,
    totals: [f64; 5],
    strong_charge: f64,
    strong_ions: f64,
    water_constant: f64,
    hydroxides: [f64; 5],
    slope: f64,
    point: [f64; UNKNOWNS],
    powers: [f64; MOST_STEPS + 1],
    gammas: [f64; CHARGES],
    last_ionic_strength: Option<f64>,
}

impl<'a> Solver<'a> {
    /// A solver for these solutions in water as it is, with activity coefficients by Davies.
    ///
    /// # Errors
    /// `ph.amount` for an amount that is negative or no number; `ph.temperature` outside 0 to 50 °C.
    pub fn new(parts: &[&Solution<'a>], temperature: Temperature) -> Result<Self, PhError> {
        Self::in_medium(parts, temperature, Activity::Davies, &Medium::standard())
    }

    /// A solver for these solutions in a medium of one's own.
    ///
    /// # Errors
    /// As [`Solver::new`].
    pub fn in_medium(
        parts: &[&Solution<'a>],
        temperature: Temperature,
        activity: Activity,
        medium: &Medium,
    ) -> Result<Self, PhError> {
        TEMPERATURES
            .check(temperature.celsius())
            .map_err(|_| PhError::Temperature { celsius: temperature.celsius() })?;
        for part in parts {
            part.check()?;
        }
        let constant = |constant: &super::Constant| 10_f64.powf(constant.log_k_at(temperature));
        let mut solver = Self {
            ligands: Vec::new(),
            forms: Vec::new(),
            water: parts.iter().map(|part| part.water).collect(),
            cations: parts.iter().map(|part| part.cations).collect(),
            unpaired: parts.iter().map(|part| part.cation).collect(),
            strong: parts.iter().map(|part| part.anion).collect(),
            totals: [0.0; 5],
            strong_charge: 0.0,
            strong_ions: 0.0,
            water_constant: constant(&medium.water),
            hydroxides: medium.hydroxides.map(|pair| pair.map_or(0.0, |pair| constant(&pair))),
            slope: match activity {
                Activity::Davies => debye_huckel(temperature),
                Activity::Ideal => 0.0,
            },
            point: [0.0; UNKNOWNS],
            powers: [1.0; MOST_STEPS + 1],
            gammas: [1.0; CHARGES],
            last_ionic_strength: None,
        };
        for (index, part) in parts.iter().enumerate() {
            for (acid, moles) in &part.acids {
                let place = solver.place_of(acid, parts.len(), temperature);
                solver.ligands[place].parts[index] += moles;
            }
        }
        Ok(solver)
    }

    /// Where an acid stands among the ligands; it is taken up if it is new.
    fn place_of(&mut self, acid: &'a AcidBase, parts: usize, temperature: Temperature) -> usize {
        if let Some(place) = self.ligands.iter().position(|ligand| std::ptr::eq(ligand.acid, acid)) {
            return place;
        }
        let from = self.forms.len();
        let mut log_betas = [0.0; MOST_STEPS + 1];
        let mut log_beta = 0.0;
        let steps = std::iter::once(None).chain(acid.steps().iter().map(Some));
        for ((lost, step), kept) in (0_u8..).zip(steps).zip(&mut log_betas) {
            log_beta += step.map_or(0.0, |step| step.log_k_at(temperature));
            *kept = log_beta;
            let charge = acid.charge().saturating_sub_unsigned(lost);
            self.forms.push(Form { beta: 10_f64.powf(log_beta), lost, cation: 0, held: 0, charge });
        }
        for pair in acid.pairs() {
            let log_beta = log_betas[usize::from(pair.lost)] + pair.constant.log_k_at(temperature);
            self.forms.push(Form {
                beta: 10_f64.powf(log_beta),
                lost: pair.lost,
                cation: pair.cation.index(),
                held: pair.cations,
                charge: AcidBase::pair_charge(acid.charge(), pair),
            });
        }
        let forms = (from, self.forms.len());
        self.ligands.push(Ligand { acid, parts: vec![0.0; parts], total: 0.0, forms });
        self.ligands.len() - 1
    }

    /// The equilibrium of all parts together.
    ///
    /// # Errors
    /// As [`Solver::solve_mix`].
    pub fn solve(&mut self) -> Result<Equilibrium, PhError> {
        self.mix(|_| 1.0)?;
        self.equilibrium()
    }

    /// The equilibrium of so much of each part: 1 is all of it, a missing share is 0.
    ///
    /// # Errors
    /// `ph.too-strong` beyond an ionic strength of 0.5 mol/kg; `ph.hardly-any-water` without water; `ph.amount` for a
    /// share that is negative or no number; `ph.unsolved` if the balances do not close.
    pub fn solve_mix(&mut self, shares: &[f64]) -> Result<Equilibrium, PhError> {
        self.mix(|index| shares.get(index).copied().unwrap_or(0.0))?;
        self.equilibrium()
    }

    /// The equilibrium of so much of each part with activity coefficients held as they are at an ionic strength in
    /// mol/kg water, whatever it really is: for an end of a range where the model has no answer, never for an answer.
    ///
    /// # Errors
    /// As [`Solver::solve_mix`], but for `ph.too-strong`; `ph.amount` for a strength outside 0 to 0.5.
    pub fn solve_held(&mut self, shares: &[f64], strength: f64) -> Result<Equilibrium, PhError> {
        if !(0.0..=MOST_IONIC_STRENGTH).contains(&strength) {
            return Err(PhError::Amount);
        }
        self.mix(|index| shares.get(index).copied().unwrap_or(0.0))?;
        self.set_activity(strength);
        self.bisect_ph();
        let balance = self.newton()?;
        self.report(&balance)
    }

    fn mix(&mut self, share: impl Fn(usize) -> f64) -> Result<(), PhError> {
        let sum = |amounts: &[f64]| amounts.iter().enumerate().map(|(at, amount)| amount * share(at)).sum::<f64>();
        if !(0..self.water.len()).all(|index| (0.0..=1e9).contains(&share(index))) {
            return Err(PhError::Amount);
        }
        let water = sum(&self.water);
        if water <= 1e-9 {
            return Err(PhError::HardlyAnyWater);
        }
        for ligand in &mut self.ligands {
            ligand.total = sum(&ligand.parts) / water;
        }
        for (at, total) in self.totals.iter_mut().enumerate() {
            *total = self.cations.iter().enumerate().map(|(part, all)| all[at] * share(part)).sum::<f64>() / water;
        }
        let (positive, negative) = (sum(&self.unpaired) / water, sum(&self.strong) / water);
        self.strong_ions = positive + negative;
        let paired: f64 = Cation::ALL.iter().map(|c| self.totals[c.index()] * f64::from(c.charge())).sum();
        self.strong_charge = paired + positive - negative;
        // What no water can hold is refused before it is computed with.
        let most = self.ligands.iter().map(|ligand| ligand.total).chain(self.totals).fold(self.strong_ions, f64::max);
        if most > 100.0 { Err(PhError::TooStrong { about: TRIED_IONIC_STRENGTH }) } else { Ok(()) }
    }

    /// The equilibrium of what is mixed: from the one last solved, which is not far, and if that leads nowhere from the
    /// start.
    fn equilibrium(&mut self) -> Result<Equilibrium, PhError> {
        if self.slope == 0.0 {
            self.set_activity(0.0);
            self.bisect_ph();
            let balance = self.newton()?;
            return self.report(&balance);
        }
        if let Some(strength) = self.last_ionic_strength.take() {
            self.set_activity(strength);
            self.release_cations();
            match self.find_ionic_strength(strength) {
                Err(PhError::Unsolved) => {}
                found => return found,
            }
        }
        self.set_activity(0.1);
        self.bisect_ph();
        self.find_ionic_strength(0.1)
    }

    /// The iteration on the ionic strength: a secant kept inside a bracket.
    fn find_ionic_strength(&mut self, start: f64) -> Result<Equilibrium, PhError> {
        let mut strength = start;
        let (mut low, mut high) = (0.0_f64, TRIED_IONIC_STRENGTH);
        let mut before: Option<(f64, f64)> = None;
        let mut top_seen = false;
        for _ in 0..80 {
            self.set_activity(strength);
            let balance = self.newton()?;
            let miss = balance.ionic_strength - strength;
            if miss.abs() <= 1e-9 * strength + 1e-15 {
                if strength > MOST_IONIC_STRENGTH {
                    return Err(PhError::TooStrong { about: strength });
                }
                self.last_ionic_strength = Some(strength);
                return self.report(&balance);
            }
            if miss > 0.0 {
                low = low.max(strength);
            } else {
                high = high.min(strength);
            }
            if strength >= TRIED_IONIC_STRENGTH && miss > 0.0 {
                return Err(PhError::TooStrong { about: TRIED_IONIC_STRENGTH });
            }
            let secant = before.map(|(at, missed)| strength - miss * (strength - at) / (miss - missed));
            before = Some((strength, miss));
            let next = secant.unwrap_or(balance.ionic_strength);
            let inside = next > low && next < high;
            strength = if inside {
                next
            } else if !top_seen && (next >= high || !next.is_finite()) && high >= TRIED_IONIC_STRENGTH {
                top_seen = true;
                TRIED_IONIC_STRENGTH
            } else {
                f64::midpoint(low, high)
            };
        }
        Err(PhError::Unsolved)
    }

    fn report(&self, balance: &Balance) -> Result<Equilibrium, PhError> {
        // The capacity lets the cations answer: Schur's complement of the proton in the curvature.
        let factor = factorise(&balance.curvature).ok_or(PhError::Unsolved)?;
        let last = factor[UNKNOWNS - 1][UNKNOWNS - 1];
        Ok(Equilibrium {
            ph: -self.point[UNKNOWNS - 1] / LN_10,
            ionic_strength: balance.ionic_strength,
            capacity: LN_10 * last * last,
            residual: balance.gradient[UNKNOWNS - 1],
        })
    }

    fn set_activity(&mut self, strength: f64) {
        let root = strength.sqrt();
        let unit = 10_f64.powf(-self.slope * (root / (1.0 + root) - 0.3 * strength));
        // γ of charge z is that of charge 1 to the power z², and z² grows by 2 z - 1.
        let mut step = unit;
        self.gammas[0] = 1.0;
        for charge in 1..CHARGES {
            self.gammas[charge] = self.gammas[charge - 1] * step;
            step *= unit * unit;
        }
    }

    fn gamma(&self, charge: i8) -> f64 {
        self.gammas[usize::from(charge.unsigned_abs()).min(CHARGES - 1)]
    }

    /// Frees a little of every cation that was not there before.
    fn release_cations(&mut self) {
        for cation in Cation::ALL {
            let at = cation.index();
            if self.point[at] < -600.0 && self.totals[at] > 0.0 {
                self.point[at] = (self.totals[at] * self.gamma(cation.charge())).ln();
            }
        }
    }

    /// pH from a bisection with every cation free: the charge falls as the pH rises, so there is one.
    fn bisect_ph(&mut self) {
        for cation in Cation::ALL {
            let at = cation.index();
            self.point[at] = (self.totals[at] * self.gamma(cation.charge())).max(1e-300).ln();
        }
        let (mut low, mut high) = PH_BOUNDS;
        for _ in 0..12 {
            let middle = f64::midpoint(low, high);
            self.point[UNKNOWNS - 1] = -middle * LN_10;
            if self.charge_only() > 0.0 { low = middle } else { high = middle }
        }
        self.point[UNKNOWNS - 1] = -f64::midpoint(low, high) * LN_10;
    }

    /// The charge with every cation free and no pairs: cheap, and enough for a start.
    fn charge_only(&mut self) -> f64 {
        let proton = self.point[UNKNOWNS - 1].exp();
        self.set_powers(1.0 / proton);
        let mut charge = self.strong_charge + (proton - self.water_constant / proton) / self.gammas[1];
        for ligand in &self.ligands {
            let (mut weight, mut lost) = (0.0, 0.0);
            for form in self.forms[ligand.forms.0..ligand.forms.1].iter().filter(|form| form.held == 0) {
                let share = form.beta * self.powers[usize::from(form.lost)] / self.gamma(form.charge);
                weight += share;
                lost += share * f64::from(form.lost);
            }
            charge += ligand.total * (f64::from(ligand.acid.charge()) - lost / weight);
        }
        charge
    }

    fn set_powers(&mut self, hydroxyl_like: f64) {
        for lost in 1..=MOST_STEPS {
            self.powers[lost] = self.powers[lost - 1] * hydroxyl_like;
        }
    }

    /// Newton's method on all balances, each step shortened until the potential falls.
    fn newton(&mut self) -> Result<Balance, PhError> {
        let scale = 1e-7 + self.ligands.iter().map(|ligand| ligand.total).sum::<f64>() + self.strong_ions;
        let scale = scale + self.totals.iter().sum::<f64>();
        let mut here = self.balance();
        for _ in 0..100 {
            let each = |(miss, total): (&f64, &f64)| miss.abs() <= RESIDUAL * (total + 1e-9);
            if here.gradient[UNKNOWNS - 1].abs() <= RESIDUAL * scale && here.gradient.iter().zip(&self.totals).all(each)
            {
                return Ok(here);
            }
            let factor = factorise(&here.curvature).ok_or(PhError::Unsolved)?;
            let step = substitute(&factor, &here.gradient);
            let longest = step.iter().fold(0.0_f64, |most, part| most.max(part.abs()));
            let mut length = if longest > 4.0 { 4.0 / longest } else { 1.0 };
            let from = self.point;
            let falls: f64 = step.iter().zip(&here.gradient).map(|(part, slope)| part * slope).sum();
            if longest < 1e-13 {
                return if here.gradient[UNKNOWNS - 1].abs() <= 1e-9 * scale {
                    Ok(here)
                } else {
                    Err(PhError::Unsolved)
                };
            }
            loop {
                for (at, value) in self.point.iter_mut().enumerate() {
                    *value = from[at] - length * step[at];
                }
                let there = self.balance();
                let noise = 1e-14 * (here.potential.abs() + scale);
                if there.potential <= here.potential - 1e-4 * length * falls + noise || length < 1e-6 {
                    here = there;
                    break;
                }
                length *= 0.5;
            }
        }
        Err(PhError::Unsolved)
    }

    /// The convex function, its gradient and curvature, and the ionic strength, at the point.
    fn balance(&mut self) -> Balance {
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
        let mut activities = [0.0; 5];
        for cation in Cation::ALL {
            let (at, charge) = (cation.index(), cation.charge());
            if self.totals[at] <= 0.0 {
                all.curvature[at][at] = 1.0;
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
            ions += free * f64::from(charge).powi(2) + pair * f64::from(charge - 1).powi(2);
        }
        for ligand in self.ligands.iter().filter(|ligand| ligand.total > 0.0) {
            self.add_ligand(ligand, &activities, &mut all, &mut ions);
        }
        for row in 0..UNKNOWNS {
            for column in row + 1..UNKNOWNS {
                all.curvature[row][column] = all.curvature[column][row];
            }
        }
        all.ionic_strength = ions / 2.0;
        all
    }

    fn add_ligand(&self, ligand: &Ligand<'_>, activities: &[f64; 5], all: &mut Balance, ions: &mut f64) {
        const H: usize = UNKNOWNS - 1;
        // Means and products of what the forms hold: cations, and protons counted as lost (so with a minus).
        let mut weight = 0.0;
        let mut mean = [0.0; UNKNOWNS];
        let mut square = [0.0; UNKNOWNS];
        let mut with_proton = [0.0; UNKNOWNS];
        let mut charges = 0.0;
        for form in &self.forms[ligand.forms.0..ligand.forms.1] {
            let mut share = form.beta * self.powers[usize::from(form.lost)] / self.gamma(form.charge);
            let lost = f64::from(form.lost);
            if form.held > 0 {
                let activity = activities[form.cation];
                let held = f64::from(form.held);
                share *= if form.held == 2 { activity * activity } else { activity };
                mean[form.cation] += share * held;
                square[form.cation] += share * held * held;
                with_proton[form.cation] += share * held * lost;
            }
            weight += share;
            mean[H] += share * lost;
            square[H] += share * lost * lost;
            charges += share * f64::from(form.charge).powi(2);
        }
        let total = ligand.total;
        mean = mean.map(|sum| sum / weight);
        all.potential += total * (weight.ln() + f64::from(ligand.acid.charge()) * self.point[H]);
        all.gradient[H] += total * (f64::from(ligand.acid.charge()) - mean[H]);
        all.curvature[H][H] += total * (square[H] / weight - mean[H] * mean[H]).max(0.0);
        *ions += total * charges / weight;
        for at in 0..H {
            if activities[at] <= 0.0 {
                continue;
            }
            all.gradient[at] += total * mean[at];
            all.curvature[H][at] -= total * (with_proton[at] / weight - mean[at] * mean[H]);
            all.curvature[at][at] += total * (square[at] / weight - mean[at] * mean[at]).max(0.0);
            for other in 0..at {
                // No form holds two kinds of cation.
                all.curvature[at][other] -= total * mean[at] * mean[other];
            }
        }
    }

    /// Share of an acid that stands in a form that lost so many protons, pairs counted with it; 0 for one that is not
    /// there. Of the equilibrium last solved.
    #[must_use]
    pub fn share(&self, acid: &AcidBase, lost: u8) -> f64 {
        let weights = self.weights(acid);
        let whole: f64 = weights.clone().map(|(_, weight)| weight).sum();
        let part: f64 = weights.filter(|(form, _)| form.lost == lost).map(|(_, weight)| weight).sum();
        if whole > 0.0 { part / whole } else { 0.0 }
    }

    /// Share of an acid that stands in ion pairs, of the equilibrium last solved.
    #[must_use]
    pub fn paired_share(&self, acid: &AcidBase) -> f64 {
        let weights = self.weights(acid);
        let whole: f64 = weights.clone().map(|(_, weight)| weight).sum();
        let part: f64 = weights.filter(|(form, _)| form.held > 0).map(|(_, weight)| weight).sum();
        if whole > 0.0 { part / whole } else { 0.0 }
    }

    /// What an acid alone adds to the buffer capacity with its cations held, in mol/kg water per unit of pH, of the
    /// equilibrium last solved.
    #[must_use]
    pub fn capacity_of(&self, acid: &AcidBase) -> f64 {
        let total = self.ligands.iter().find(|ligand| std::ptr::eq(ligand.acid, acid)).map_or(0.0, |at| at.total);
        let (mut whole, mut mean, mut square) = (0.0, 0.0, 0.0);
        for (form, weight) in self.weights(acid) {
            let lost = f64::from(form.lost);
            whole += weight;
            mean += weight * lost;
            square += weight * lost * lost;
        }
        if whole > 0.0 { LN_10 * total * (square / whole - (mean / whole).powi(2)).max(0.0) } else { 0.0 }
    }

    /// What the pair of a cation with hydroxide holds, in mol/kg water, of the equilibrium last solved.
    #[must_use]
    pub fn hydroxide_pair(&self, cation: Cation) -> f64 {
        let at = cation.index();
        if self.totals[at] <= 0.0 {
            return 0.0;
        }
        let activities = (self.point[at] - self.point[UNKNOWNS - 1]).exp();
        self.hydroxides[at] * activities * self.water_constant / self.gamma(cation.charge() - 1)
    }

    fn weights(&self, acid: &AcidBase) -> impl Iterator<Item = (&Form, f64)> + Clone {
        let place = self.ligands.iter().find(|ligand| std::ptr::eq(ligand.acid, acid)).map_or((0, 0), |at| at.forms);
        self.forms[place.0..place.1].iter().map(|form| {
            let held = if form.held == 0 {
                1.0
            } else if self.totals[form.cation] > 0.0 {
                (self.point[form.cation] * f64::from(form.held)).exp()
            } else {
                0.0
            };
            (form, form.beta * self.powers[usize::from(form.lost)] * held / self.gamma(form.charge))
        })
    }
}

type Matrix = [[f64; UNKNOWNS]; UNKNOWNS];

/// Cholesky's factor of a positive definite matrix, worked out with its diagonal brought to 1 so that large and small
/// amounts stand beside each other.
fn factorise(matrix: &Matrix) -> Option<Matrix> {
    let mut scaling = [0.0; UNKNOWNS];
    for (at, scale) in scaling.iter_mut().enumerate() {
        *scale = if matrix[at][at] > 0.0 { matrix[at][at].sqrt() } else { return None };
    }
    let mut factor = [[0.0; UNKNOWNS]; UNKNOWNS];
    for row in 0..UNKNOWNS {
        for column in 0..=row {
            let known: f64 = (0..column).map(|at| factor[row][at] * factor[column][at]).sum();
            let left = matrix[row][column] / (scaling[row] * scaling[column]) - known;
            factor[row][column] = if row == column { left.max(1e-14).sqrt() } else { left / factor[column][column] };
        }
    }
    // Rows are brought back to the scale of the matrix.
    for (row, scale) in factor.iter_mut().zip(scaling) {
        for cell in row {
            *cell *= scale;
        }
    }
    Some(factor)
}

/// Solves with a factor of [`factorise`].
fn substitute(factor: &Matrix, right: &[f64; UNKNOWNS]) -> [f64; UNKNOWNS] {
    let mut half = [0.0; UNKNOWNS];
    for row in 0..UNKNOWNS {
        let known: f64 = (0..row).map(|at| factor[row][at] * half[at]).sum();
        half[row] = (right[row] - known) / factor[row][row];
    }
    let mut whole = [0.0; UNKNOWNS];
    for row in (0..UNKNOWNS).rev() {
        let known: f64 = (row + 1..UNKNOWNS).map(|at| factor[at][row] * whole[at]).sum();
        whole[row] = (half[row] - known) / factor[row][row];
    }
    whole
}
