//! The equilibrium: charge and mass balances, solved together.
//!
//! With activity coefficients held, the balances are the gradient of a convex function of `ln a(H+)` and the `ln a` of
//! the cations (a sum of logarithms of sums of exponentials), so there is one equilibrium. A bracketed Newton's method on
//! the charge alone, with every cation held as active as it is, comes near it for a fraction of the work. Newton's method
//! on everything at once, the ionic strength among it, ends nearly always in a handful of steps from there: `-ln γ` of a
//! single charge is one more unknown, of which a form of charge z holds z². Where it does not, the sure way is gone:
//! Newton's method with activity coefficients held, its steps shortened until the convex function falls, and around it a
//! bracketed iteration on the ionic strength. Both end only where every balance closes, or, for an end of a range, with a
//! step so short that what it leaves is less than is asked for. No library for roots is used: those at hand solve one
//! equation in one unknown and know nothing of the derivatives that are had here for nothing; what is left of them, a
//! bracket, is a few lines.

mod balance;
mod linear;

use self::balance::{Balance, held};
use self::linear::{factorise, substitute};
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
/// The same for an end of a range, which is read to a tenth.
const ROUGH_RESIDUAL: f64 = 1e-7;
/// How far the ionic strength may be off, as a share of it.
const STRENGTH_PRECISION: f64 = 1e-9;
/// The same for an end of a range: it moves a pH by less than a thousandth.
const ROUGH_STRENGTH_PRECISION: f64 = 1e-3;
/// Steps of Newton's method on everything, after which the sure way is gone.
const QUICK_STEPS: usize = 24;
/// Longest step in `ln a` that is taken as it is, by that method.
const LONGEST_QUICK_STEP: f64 = 2.0;
/// Ionic strength at which everything begins.
const FIRST_STRENGTH: f64 = 0.1;
/// Steps towards the pH with every cation held, at most; steps on everything go on from wherever they led.
const MOST_APPROACHES: usize = 12;
/// Longest of them, in `ln a`.
const LONGEST_APPROACH: f64 = 3.0;
/// The last of them, in `ln a`.
const NEAR_ENOUGH: f64 = 0.4;
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

/// How well an equilibrium is solved.
#[derive(Debug, Clone, Copy)]
struct Accuracy {
    residual: f64,
    strength: f64,
    /// A step of Newton's method so short, in `ln a`, is the last and needs no look at where it leads: what it misses is
    /// about its square.
    last_step: f64,
}

impl Accuracy {
    const FULL: Self = Self { residual: RESIDUAL, strength: STRENGTH_PRECISION, last_step: 0.0 };
    const ROUGH: Self = Self { residual: ROUGH_RESIDUAL, strength: ROUGH_STRENGTH_PRECISION, last_step: 0.01 };
}

/// One form of an acid, or one ion pair of a form, beside the acid's other forms.
#[derive(Debug, Clone, Copy)]
struct Form {
    /// Constant of its making from the fully protonated form.
    beta: f64,
    /// The same over its activity coefficient.
    weight: f64,
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
    /// mol/kg water.
    total: f64,
    /// Its forms: from, to.
    forms: (usize, usize),
    /// Whether some of them hold a cation.
    pairs: bool,
}

/// What is mixed, without its acids.
#[derive(Debug, Clone, Copy)]
struct Part {
    water: f64,
    cations: [f64; 5],
    anion: f64,
    cation: f64,
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
    /// What is left of the charge balance, in mol/kg: how well it is solved; for an end of a range, before its last step.
    pub residual: f64,
}

/// Finds the equilibrium of one solution, or of several mixed in any shares.
///
/// Built once, it is asked for as many mixtures as one likes without allocating; each takes microseconds.
#[derive(Debug, Clone)]
pub struct Solver<'a> {
    ligands: Vec<Ligand<'a>>,
    forms: Vec<Form>,
    parts: Vec<Part>,
    /// mol of each ligand in each part, ligand by ligand.
    moles: Vec<f64>,
    totals: [f64; 5],
    strong_charge: f64,
    strong_ions: f64,
    water_constant: f64,
    hydroxides: [f64; 5],
    slope: f64,
    /// The unknowns that are there, and how many: cations in their order, the proton last.
    unknowns: ([usize; UNKNOWNS], usize),
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
        let constant = |constant: &super::Constant| power_of_ten(constant.log_k_at(temperature));
        // Memory is asked for once: asking is a good part of the work.
        let acids = parts.iter().flat_map(|part| &part.acids);
        let (most_acids, most_forms) = acids
            .fold((0, 0), |(acids, forms), (acid, _)| (acids + 1, forms + 1 + acid.steps().len() + acid.pairs().len()));
        let as_part = |part: &&Solution<'a>| Part {
            water: part.water,
            cations: part.cations,
            anion: part.anion,
            cation: part.cation,
        };
        let mut solver = Self {
            ligands: Vec::with_capacity(most_acids),
            forms: Vec::with_capacity(most_forms),
            parts: parts.iter().map(as_part).collect(),
            moles: Vec::with_capacity(most_acids * parts.len()),
            totals: [0.0; 5],
            strong_charge: 0.0,
            strong_ions: 0.0,
            water_constant: constant(&medium.water),
            hydroxides: medium.hydroxides.map(|pair| pair.map_or(0.0, |pair| constant(&pair))),
            slope: match activity {
                Activity::Davies => debye_huckel(temperature),
                Activity::Ideal => 0.0,
            },
            unknowns: ([UNKNOWNS - 1; UNKNOWNS], 1),
            point: [0.0; UNKNOWNS],
            powers: [1.0; MOST_STEPS + 1],
            gammas: [1.0; CHARGES],
            last_ionic_strength: None,
        };
        for (index, part) in parts.iter().enumerate() {
            for (acid, moles) in &part.acids {
                let place = solver.place_of(acid, temperature);
                solver.moles[place * parts.len() + index] += moles;
            }
        }
        Ok(solver)
    }

    /// Where an acid stands among the ligands; it is taken up if it is new.
    fn place_of(&mut self, acid: &'a AcidBase, temperature: Temperature) -> usize {
        if let Some(place) = self.ligands.iter().position(|ligand| std::ptr::eq(ligand.acid, acid)) {
            return place;
        }
        let from = self.forms.len();
        let brought: [bool; 5] = std::array::from_fn(|at| self.parts.iter().any(|part| part.cations[at] > 0.0));
        let mut log_betas = [0.0; MOST_STEPS + 1];
        let mut log_beta = 0.0;
        let steps = std::iter::once(None).chain(acid.steps().iter().map(Some));
        for ((lost, step), kept) in (0_u8..).zip(steps).zip(&mut log_betas) {
            log_beta += step.map_or(0.0, |step| step.log_k_at(temperature));
            *kept = log_beta;
            let charge = acid.charge().saturating_sub_unsigned(lost);
            let beta = power_of_ten(log_beta);
            self.forms.push(Form { beta, weight: beta, lost, cation: 0, held: 0, charge });
        }
        // A pair with a cation that nobody brings is in no mixture.
        for pair in acid.pairs().iter().filter(|pair| brought[pair.cation.index()]) {
            let log_beta = log_betas[usize::from(pair.lost)] + pair.constant.log_k_at(temperature);
            let beta = power_of_ten(log_beta);
            self.forms.push(Form {
                beta,
                weight: beta,
                lost: pair.lost,
                cation: pair.cation.index(),
                held: pair.cations,
                charge: AcidBase::pair_charge(acid.charge(), pair),
            });
        }
        let forms = (from, self.forms.len());
        self.moles.resize(self.moles.len() + self.parts.len(), 0.0);
        let pairs = forms.1 - forms.0 > acid.steps().len() + 1;
        self.ligands.push(Ligand { acid, total: 0.0, forms, pairs });
        self.ligands.len() - 1
    }

    /// The equilibrium of all parts together.
    ///
    /// # Errors
    /// As [`Solver::solve_mix`].
    pub fn solve(&mut self) -> Result<Equilibrium, PhError> {
        self.mix(|_| 1.0)?;
        self.equilibrium(Accuracy::FULL)
    }

    /// The equilibrium of so much of each part: 1 is all of it, a missing share is 0.
    ///
    /// # Errors
    /// `ph.too-strong` beyond an ionic strength of 0.5 mol/kg; `ph.hardly-any-water` without water; `ph.amount` for a
    /// share that is negative or no number; `ph.unsolved` if the balances do not close.
    pub fn solve_mix(&mut self, shares: &[f64]) -> Result<Equilibrium, PhError> {
        self.mix(|index| shares.get(index).copied().unwrap_or(0.0))?;
        self.equilibrium(Accuracy::FULL)
    }

    /// The same to a thousandth of a pH, in half the time: for an end of a range.
    ///
    /// # Errors
    /// As [`Solver::solve_mix`].
    pub fn solve_roughly(&mut self, shares: &[f64]) -> Result<Equilibrium, PhError> {
        self.mix(|index| shares.get(index).copied().unwrap_or(0.0))?;
        self.equilibrium(Accuracy::ROUGH)
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
        self.begin_anew();
        self.approach_ph();
        let balance = self.newton(RESIDUAL)?;
        self.report(&balance)
    }

    fn mix(&mut self, share: impl Fn(usize) -> f64) -> Result<(), PhError> {
        if !(0..self.parts.len()).all(|index| (0.0..=1e9).contains(&share(index))) {
            return Err(PhError::Amount);
        }
        let sum = |amount: &dyn Fn(&Part) -> f64| {
            self.parts.iter().zip(0..).map(|(part, index)| amount(part) * share(index)).sum::<f64>()
        };
        let water = sum(&|part| part.water);
        if water <= 1e-9 {
            return Err(PhError::HardlyAnyWater);
        }
        let (positive, negative) = (sum(&|part| part.cation) / water, sum(&|part| part.anion) / water);
        self.totals = std::array::from_fn(|at| sum(&|part| part.cations[at]) / water);
        for (ligand, moles) in self.ligands.iter_mut().zip(self.moles.chunks_exact(self.parts.len())) {
            ligand.total = moles.iter().zip(0..).map(|(moles, index)| moles * share(index)).sum::<f64>() / water;
        }
        self.unknowns = ([UNKNOWNS - 1; UNKNOWNS], 0);
        for (at, _) in self.totals.iter().enumerate().filter(|(_, total)| **total > 0.0) {
            self.unknowns.0[self.unknowns.1] = at;
            self.unknowns.1 += 1;
        }
        self.unknowns.1 += 1;
        self.strong_ions = positive + negative;
        let paired: f64 = Cation::ALL.iter().map(|c| self.totals[c.index()] * f64::from(c.charge())).sum();
        self.strong_charge = paired + positive - negative;
        // What no water can hold is refused before it is computed with.
        let most = self.ligands.iter().map(|ligand| ligand.total).chain(self.totals).fold(self.strong_ions, f64::max);
        if most > 100.0 { Err(PhError::TooStrong { about: TRIED_IONIC_STRENGTH }) } else { Ok(()) }
    }

    /// The equilibrium of what is mixed: from the one last solved, which is not far, and if that leads nowhere from the
    /// start.
    fn equilibrium(&mut self, accuracy: Accuracy) -> Result<Equilibrium, PhError> {
        if self.slope == 0.0 {
            self.set_activity(0.0);
            self.begin_anew();
            self.approach_ph();
            let balance = self.newton(RESIDUAL)?;
            return self.report(&balance);
        }
        if let Some(strength) = self.last_ionic_strength.take() {
            self.set_activity(strength);
            self.release_cations();
            self.approach_ph();
            if let Some(found) = self.solve_quickly(strength, accuracy) {
                return found;
            }
        }
        self.set_activity(FIRST_STRENGTH);
        self.begin_anew();
        self.approach_ph();
        if let Some(found) = self.solve_quickly(FIRST_STRENGTH, accuracy) {
            return found;
        }
        self.set_activity(FIRST_STRENGTH);
        self.begin_anew();
        self.approach_ph();
        self.find_ionic_strength(accuracy)
    }

    /// Newton's method on all balances and the ionic strength together; nothing where it does not close them soon.
    fn solve_quickly(&mut self, start: f64, accuracy: Accuracy) -> Option<Result<Equilibrium, PhError>> {
        let mut strength = start;
        let scale = self.scale();
        for _ in 0..QUICK_STEPS {
            let here = self.balance(false);
            let miss = here.ionic_strength - strength;
            if miss.abs() <= accuracy.strength * strength + 1e-15 && self.closes(&here, accuracy.residual, scale) {
                return Some(if strength > MOST_IONIC_STRENGTH {
                    Err(PhError::TooStrong { about: strength })
                } else {
                    self.last_ionic_strength = Some(strength);
                    self.report(&here)
                });
            }
            let there = self.there();
            let factor = factorise(&here.curvature, there)?;
            let of_balances = substitute(&factor, &here.gradient, there);
            let of_strength = substitute(&factor, &here.strength_slope, there);
            let product = |one: &[f64; UNKNOWNS]| one.iter().zip(&here.strength_slope).map(|(a, b)| a * b).sum::<f64>();
            let turn = 0.5 * self.activity_slope(strength);
            let more =
                (miss - 0.5 * product(&of_balances)) / (1.0 - turn * (here.strength_curvature - product(&of_strength)));
            let mut step = [0.0; UNKNOWNS];
            for (at, part) in step.iter_mut().enumerate() {
                *part = of_balances[at] + 2.0 * turn * more * of_strength[at];
            }
            let longest = step.iter().fold(0.0_f64, |most, part| most.max(part.abs()));
            let length = if longest > LONGEST_QUICK_STEP { LONGEST_QUICK_STEP / longest } else { 1.0 };
            for (value, part) in self.point.iter_mut().zip(&step) {
                *value -= length * part;
            }
            let next = (strength + length * more).clamp(0.1 * strength, 10.0 * strength);
            if !next.is_finite() || next > TRIED_IONIC_STRENGTH {
                return None;
            }
            if longest < accuracy.last_step
                && (next - strength).abs() < accuracy.last_step * strength
                && next <= MOST_IONIC_STRENGTH
            {
                self.last_ionic_strength = Some(next);
                return Some(self.report(&here));
            }
            strength = next;
            self.set_activity(strength);
        }
        None
    }

    /// How `-ln γ` of a single charge moves with the ionic strength.
    fn activity_slope(&self, strength: f64) -> f64 {
        let root = strength.sqrt();
        self.slope * LN_10 * (0.5 / (root * (1.0 + root).powi(2)) - 0.3)
    }

    /// What a charge is held against.
    fn scale(&self) -> f64 {
        let ligands: f64 = self.ligands.iter().map(|ligand| ligand.total).sum();
        1e-7 + ligands + self.strong_ions + self.totals.iter().sum::<f64>()
    }

    fn closes(&self, balance: &Balance, residual: f64, scale: f64) -> bool {
        let each = |(miss, total): (&f64, &f64)| miss.abs() <= residual * (total + 1e-9);
        balance.gradient[UNKNOWNS - 1].abs() <= residual * scale && balance.gradient.iter().zip(&self.totals).all(each)
    }

    /// The iteration on the ionic strength: a secant kept inside a bracket.
    fn find_ionic_strength(&mut self, accuracy: Accuracy) -> Result<Equilibrium, PhError> {
        let mut strength = FIRST_STRENGTH;
        let (mut low, mut high) = (0.0_f64, TRIED_IONIC_STRENGTH);
        let mut before: Option<(f64, f64)> = None;
        let mut top_seen = false;
        for _ in 0..80 {
            self.set_activity(strength);
            let balance = self.newton(accuracy.residual)?;
            let miss = balance.ionic_strength - strength;
            if miss.abs() <= accuracy.strength * strength + 1e-15 {
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
        let factor = factorise(&balance.curvature, self.there()).ok_or(PhError::Unsolved)?;
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
        let unit = power_of_ten(-self.slope * (root / (1.0 + root) - 0.3 * strength));
        // γ of charge z is that of charge 1 to the power z², and z² grows by 2 z - 1.
        let mut step = unit;
        self.gammas[0] = 1.0;
        for charge in 1..CHARGES {
            self.gammas[charge] = self.gammas[charge - 1] * step;
            step *= unit * unit;
        }
        let inverse = self.gammas.map(|gamma| 1.0 / gamma);
        for form in &mut self.forms {
            form.weight = form.beta * inverse[usize::from(form.charge.unsigned_abs()).min(CHARGES - 1)];
        }
    }

    fn there(&self) -> &[usize] {
        &self.unknowns.0[..self.unknowns.1]
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

    /// Begins anew: neutral, with every cation free.
    fn begin_anew(&mut self) {
        for cation in Cation::ALL {
            let at = cation.index();
            self.point[at] = (self.totals[at] * self.gamma(cation.charge())).max(1e-300).ln();
        }
        self.point[UNKNOWNS - 1] = -7.0 * LN_10;
    }

    /// The pH at which the charge closes while every cation stays as active as it is: near enough for a start, and a
    /// fraction of the work of a step on everything. The charge falls as the pH rises, so there is one.
    fn approach_ph(&mut self) {
        let mut activities = [0.0; 5];
        for (activity, point) in activities.iter_mut().zip(&self.point) {
            *activity = point.exp();
        }
        let (mut low, mut high) = (-PH_BOUNDS.1 * LN_10, -PH_BOUNDS.0 * LN_10);
        let mut at = self.point[UNKNOWNS - 1].clamp(low, high);
        for _ in 0..MOST_APPROACHES {
            let (charge, slope) = self.charge_with_cations_held(at, &activities);
            if charge > 0.0 {
                high = at;
            } else {
                low = at;
            }
            let next = at - (charge / slope).clamp(-LONGEST_APPROACH, LONGEST_APPROACH);
            let next = if next > low && next < high { next } else { f64::midpoint(low, high) };
            let moved = (next - at).abs();
            at = next;
            if moved < NEAR_ENOUGH {
                break;
            }
        }
        self.point[UNKNOWNS - 1] = at;
    }

    /// The charge at `ln a(H+)`, and how it moves with that, with every cation held.
    fn charge_with_cations_held(&mut self, at: f64, activities: &[f64; 5]) -> (f64, f64) {
        let proton = at.exp();
        let hydroxide = self.water_constant / proton;
        self.set_powers(1.0 / proton);
        let (free_proton, free_hydroxide) = (proton / self.gammas[1], hydroxide / self.gammas[1]);
        let mut charge = self.strong_charge + free_proton - free_hydroxide;
        let mut slope = free_proton + free_hydroxide;
        for &cation in self.there().iter().filter(|&&at| at < UNKNOWNS - 1) {
            let pair =
                self.hydroxides[cation] * activities[cation] * hydroxide / self.gamma(Cation::ALL[cation].charge() - 1);
            charge -= pair;
            slope += pair;
        }
        for ligand in &self.ligands {
            let (mut weight, mut mean, mut square) = (0.0, 0.0, 0.0);
            for form in &self.forms[ligand.forms.0..ligand.forms.1] {
                let lost = f64::from(form.lost);
                let mut share = form.weight * self.powers[usize::from(form.lost)];
                if form.held > 0 {
                    share *= held(form, activities);
                }
                weight += share;
                mean += share * lost;
                square += share * lost * lost;
            }
            mean /= weight;
            charge += ligand.total * (f64::from(ligand.acid.charge()) - mean);
            slope += ligand.total * (square / weight - mean * mean).max(0.0);
        }
        (charge, slope)
    }

    fn set_powers(&mut self, hydroxyl_like: f64) {
        for lost in 1..=MOST_STEPS {
            self.powers[lost] = self.powers[lost - 1] * hydroxyl_like;
        }
    }

    /// Newton's method on all balances, each step shortened until the potential falls.
    fn newton(&mut self, residual: f64) -> Result<Balance, PhError> {
        let scale = self.scale();
        let mut here = self.balance(true);
        for _ in 0..100 {
            if self.closes(&here, residual, scale) {
                return Ok(here);
            }
            let there = self.there();
            let factor = factorise(&here.curvature, there).ok_or(PhError::Unsolved)?;
            let step = substitute(&factor, &here.gradient, there);
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
                let there = self.balance(true);
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
            (form, form.weight * self.powers[usize::from(form.lost)] * held)
        })
    }
}

/// Ten to a power, to the last digits but one: several times as fast as `powf`, which a browser's machine has no instruction for.
fn power_of_ten(power: f64) -> f64 {
    (power * LN_10).exp()
}
