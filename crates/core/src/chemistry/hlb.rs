//! Hydrophilic-lipophilic balance: blends of non-ionic emulsifiers, by mass (Griffin, J. Soc. Cosmet. Chem. 1:311, 1949).

/// Mean of balances weighted by mass: `Σ m HLB / Σ m`. `None` without a mass.
#[must_use]
pub fn blend(parts: &[(f64, f64)]) -> Option<f64> {
    let mass: f64 = parts.iter().map(|(mass, _)| mass).sum();
    (mass > 0.0).then(|| parts.iter().map(|(mass, balance)| mass * balance).sum::<f64>() / mass)
}

/// Share of the emulsifier of higher balance in a pair that meets a target, 0 to 1. `None` where the pair cannot.
///
/// ```
/// use stillroom_core::chemistry::hlb::share_of_higher;
/// let share = share_of_higher(10.0, 15.0, 4.3).expect("it lies between");
/// assert!((share - 0.533).abs() < 0.001);
/// assert!(share_of_higher(16.0, 15.0, 4.3).is_none());
/// ```
#[must_use]
pub fn share_of_higher(target: f64, higher: f64, lower: f64) -> Option<f64> {
    let share = (target - lower) / (higher - lower);
    (0.0..=1.0).contains(&share).then_some(share)
}

/// The masses of two emulsifiers that bring a blend to a target while the sum of their masses stays `together`; the other
/// emulsifiers bring `other_mass` at `other_balance`. `None` where the pair cannot.
#[must_use]
pub fn pair_for_target(
    target: f64,
    (higher, lower): (f64, f64),
    together: f64,
    (other_mass, other_balance): (f64, f64),
) -> Option<(f64, f64)> {
    let wanted = (target * (together + other_mass) - other_balance * other_mass) / together;
    let share = share_of_higher(wanted, higher, lower)?;
    Some((share * together, (1.0 - share) * together))
}

/// Balance of a fatty ester of a polyol by its saponification number and the acid number of its acid: `20 (1 − S / A)`
/// (Griffin, J. Soc. Cosmet. Chem. 5:249, 1954).
#[must_use]
pub fn of_ester(saponification_number: f64, acid_number: f64) -> f64 {
    20.0 * (1.0 - saponification_number / acid_number)
}

/// Balance of an ethoxylate whose only hydrophilic part is oxyethylene, by the percent of it: `E / 5` (Griffin, 1954).
#[must_use]
pub fn of_ethoxylate(oxyethylene_percent: f64) -> f64 {
    oxyethylene_percent / 5.0
}
