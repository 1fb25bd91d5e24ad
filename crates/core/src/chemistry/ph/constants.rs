//! What the equilibrium is computed from: dissociation steps, ion pairs, and how they move with temperature.

use super::PhError;
use crate::chemistry::Temperature;

/// Gas constant in J/(mol K) (CODATA 2018).
const GAS_CONSTANT: f64 = 8.314_462_618;
/// 25 °C in kelvin.
const REFERENCE_KELVIN: f64 = 298.15;

/// Most steps of one acid: phytic acid has twelve.
pub const MOST_STEPS: usize = 12;
/// Largest charge, of either sign, that a form of an acid may carry.
pub const MOST_CHARGE: i8 = 12;

/// A constant at 25 °C and zero ionic strength, and how it moves with temperature.
///
/// `log10 K` of the reaction as written; what is not known of the enthalpy and heat capacity counts as 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Constant {
    /// log10 of the constant at 25 °C and zero ionic strength.
    pub log_k: f64,
    /// Enthalpy of the reaction in kJ/mol.
    pub enthalpy: f64,
    /// Heat capacity of the reaction in J/(mol K).
    pub heat_capacity: f64,
}

impl Constant {
    /// A constant without temperature data.
    #[must_use]
    pub const fn at_25(log_k: f64) -> Self {
        Self { log_k, enthalpy: 0.0, heat_capacity: 0.0 }
    }

    /// The constant of an acid's step from its pKa, with enthalpy in kJ/mol and heat capacity in J/(mol K).
    #[must_use]
    pub const fn of_acid(pka: f64, enthalpy: f64, heat_capacity: f64) -> Self {
        Self { log_k: -pka, enthalpy, heat_capacity }
    }

    /// log10 K at a temperature (van 't Hoff with a constant heat capacity):
    /// `ln K(T) = ln K(T0) + dH/R (1/T0 - 1/T) + dCp/R (T0/T - 1 + ln(T/T0))`.
    ///
    /// ```
    /// use stillroom_core::chemistry::{Temperature, ph::Constant};
    /// // Tromethamine: pKa 8.072 at 25 °C, 0.028 less with every degree.
    /// let step = Constant::of_acid(8.072, 47.45, -59.0);
    /// let at_35 = step.log_k_at(Temperature::new(35.0)?);
    /// assert!((at_35 + 7.80).abs() < 0.01);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn log_k_at(&self, temperature: Temperature) -> f64 {
        let kelvin = temperature.kelvin();
        // Most are asked for at the temperature they are given at, and a logarithm each is most of the work then.
        if (kelvin - REFERENCE_KELVIN).abs() < f64::EPSILON {
            return self.log_k;
        }
        let by_enthalpy = self.enthalpy * 1000.0 / GAS_CONSTANT * (1.0 / REFERENCE_KELVIN - 1.0 / kelvin);
        let ratio = REFERENCE_KELVIN / kelvin;
        let by_capacity = self.heat_capacity / GAS_CONSTANT * (ratio - 1.0 - ratio.ln());
        self.log_k + (by_enthalpy + by_capacity) / std::f64::consts::LN_10
    }

    fn is_finite(&self) -> bool {
        self.log_k.abs() <= 40.0 && self.enthalpy.abs() <= 500.0 && self.heat_capacity.abs() <= 2000.0
    }
}

/// Cations that form pairs with the anions of acids.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Cation {
    /// Na+.
    Sodium,
    /// K+.
    Potassium,
    /// Mg2+.
    Magnesium,
    /// Ca2+.
    Calcium,
    /// Zn2+.
    Zinc,
}

impl Cation {
    /// Every cation, in the order of arrays by cation.
    pub const ALL: [Self; 5] = [Self::Sodium, Self::Potassium, Self::Magnesium, Self::Calcium, Self::Zinc];

    /// Its charge.
    #[must_use]
    pub const fn charge(self) -> i8 {
        match self {
            Self::Sodium | Self::Potassium => 1,
            Self::Magnesium | Self::Calcium | Self::Zinc => 2,
        }
    }

    /// The cation whose symbol is given: `Na`, `K`, `Mg`, `Ca` or `Zn`.
    #[must_use]
    pub fn from_symbol(symbol: &str) -> Option<Self> {
        Some(match symbol {
            "Na" => Self::Sodium,
            "K" => Self::Potassium,
            "Mg" => Self::Magnesium,
            "Ca" => Self::Calcium,
            "Zn" => Self::Zinc,
            _ => return None,
        })
    }

    pub(super) const fn index(self) -> usize {
        self as usize
    }
}

/// An ion pair: one or two cations with one form of an acid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pair {
    /// Which cation.
    pub cation: Cation,
    /// How many of it: 1 or 2.
    pub cations: u8,
    /// Which form of the acid: how many protons it has lost.
    pub lost: u8,
    /// Constant of `cations · cation + form = pair`.
    pub constant: Constant,
}

/// An acid, base or ampholyte: the charge of its fully protonated form, its steps, and its ion pairs.
///
/// A base is written as the acid it becomes: ammonia is NH4+ (charge 1) with one step of pKa 9.25.
#[derive(Debug, Clone, PartialEq)]
pub struct AcidBase {
    charge: i8,
    steps: Vec<Constant>,
    pairs: Vec<Pair>,
}

impl AcidBase {
    /// An acid, base or ampholyte.
    ///
    /// # Errors
    /// `ph.constants` if there is no step or more than twelve, a charge lies beyond ±12, a constant is not a number or
    /// beyond belief, or a pair names a form that does not exist or more than two cations.
    pub fn new(charge: i8, steps: Vec<Constant>, pairs: Vec<Pair>) -> Result<Self, PhError> {
        let count = steps.len();
        let lowest = i32::from(charge) - i32::try_from(count).unwrap_or(i32::MAX);
        let charges = charge <= MOST_CHARGE && lowest >= -i32::from(MOST_CHARGE);
        let right = |pair: &Pair| {
            usize::from(pair.lost) <= count
                && (1..=2).contains(&pair.cations)
                && pair.constant.is_finite()
                && Self::pair_charge(charge, pair) <= MOST_CHARGE
        };
        let good = (1..=MOST_STEPS).contains(&count)
            && charges
            && steps.iter().all(Constant::is_finite)
            && pairs.iter().all(right);
        if good { Ok(Self { charge, steps, pairs }) } else { Err(PhError::Constants) }
    }

    /// One whose steps are known at 25 °C only.
    ///
    /// # Errors
    /// As [`AcidBase::new`].
    ///
    /// ```
    /// use stillroom_core::chemistry::ph::AcidBase;
    /// let benzoic = AcidBase::at_25(0, &[4.202])?;
    /// let arginine = AcidBase::at_25(2, &[1.82, 8.99, 13.8])?;
    /// # assert!(benzoic != arginine);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn at_25(charge: i8, pkas: &[f64]) -> Result<Self, PhError> {
        Self::new(charge, pkas.iter().map(|pka| Constant::at_25(-pka)).collect(), Vec::new())
    }

    /// Charge of the form that keeps every proton.
    #[must_use]
    pub const fn charge(&self) -> i8 {
        self.charge
    }

    /// The steps, first proton lost first.
    #[must_use]
    pub fn steps(&self) -> &[Constant] {
        &self.steps
    }

    /// The ion pairs.
    #[must_use]
    pub fn pairs(&self) -> &[Pair] {
        &self.pairs
    }

    /// The same with every pKa moved by as much.
    #[must_use]
    pub fn moved(&self, by: f64) -> Self {
        let mut moved = self.clone();
        for step in &mut moved.steps {
            step.log_k -= by;
        }
        moved
    }

    /// Charge of a pair with an acid whose fully protonated form has this charge.
    pub(super) fn pair_charge(charge: i8, pair: &Pair) -> i8 {
        let brought = pair.cation.charge() * if pair.cations == 2 { 2 } else { 1 };
        charge.saturating_sub_unsigned(pair.lost).saturating_add(brought)
    }
}

/// The water an equilibrium is in: its own ionisation and the pairs of cations with hydroxide.
#[derive(Debug, Clone, PartialEq)]
pub struct Medium {
    /// Constant of `H2O = H+ + OH-`.
    pub water: Constant,
    /// Constant of `cation + OH- = pair`, by cation; `None` leaves the pair out.
    pub hydroxides: [Option<Constant>; 5],
}

impl Medium {
    /// Water as the solver uses it.
    ///
    /// pKw 13.995 at 25 °C (IAPWS R11-07, 2007, computed), enthalpy 55.81 kJ/mol (PHREEQC minteq.v4.dat, USGS), heat
    /// capacity -224 J/(mol K) (from the IAPWS values at 0–50 °C). Hydroxide pairs of sodium and potassium from
    /// Thermoddem 1.10 (BRGM), of magnesium, calcium and zinc from minteq.v4.dat, each as its hydrolysis constant plus
    /// 13.997.
    #[must_use]
    pub const fn standard() -> Self {
        const fn pair(log_k: f64, enthalpy: f64) -> Constant {
            Constant { log_k, enthalpy, heat_capacity: 0.0 }
        }
        Self {
            water: Constant::of_acid(13.995, 55.81, -224.0),
            hydroxides: [
                Some(pair(-0.75, -2.4)),
                Some(pair(-0.46, 10.6)),
                Some(pair(2.6, 12.0)),
                Some(pair(1.3, 8.3)),
                Some(pair(5.0, 0.0)),
            ],
        }
    }

    /// The same without hydroxide pairs: for comparing with sources that leave them out.
    #[must_use]
    pub const fn without_pairs() -> Self {
        Self { hydroxides: [None; 5], ..Self::standard() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn water_ionises_as_published_over_temperature() {
        // CRC Handbook, "Ionization constant of water": pKw 14.95 (0), 14.17 (20), 13.53 (40 °C); memory.
        for (degrees, published) in [(0.0, 14.95), (20.0, 14.17), (40.0, 13.53)] {
            let pkw = -Medium::standard().water.log_k_at(Temperature::new(degrees).unwrap());
            assert!((pkw - published).abs() < 0.02, "{degrees}: {pkw}");
        }
    }

    #[test]
    fn constants_beyond_belief_are_refused() {
        assert_eq!(AcidBase::at_25(0, &[]).unwrap_err(), PhError::Constants);
        assert_eq!(AcidBase::at_25(0, &[f64::NAN]).unwrap_err(), PhError::Constants);
        assert_eq!(AcidBase::at_25(0, &[5.0; 13]).unwrap_err(), PhError::Constants);
        assert_eq!(AcidBase::at_25(-9, &[5.0; 4]).unwrap_err(), PhError::Constants);
        let pair = Pair { cation: Cation::Sodium, cations: 1, lost: 2, constant: Constant::at_25(1.0) };
        assert!(AcidBase::new(0, vec![Constant::at_25(-4.0)], vec![pair]).is_err());
    }
}
