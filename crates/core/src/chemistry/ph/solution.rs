//! What is dissolved in how much water.

use super::{AcidBase, Cation, PhError};

/// What is dissolved, in mol, in a mass of water, in kg.
///
/// Salts are written as what they fall into: sodium benzoate is benzoic acid and sodium, with no proton to neutralise
/// it; sodium hydroxide is sodium alone; hydrochloric acid is [`Solution::with_anion`] alone. The charge balance does
/// the rest.
///
/// ```
/// use stillroom_core::chemistry::ph::{AcidBase, Cation, Solution, Solver};
/// use stillroom_core::chemistry::Temperature;
/// let acetic = AcidBase::at_25(0, &[4.757])?;
/// let half = Solution::in_water(1.0).with(&acetic, 0.1).with_cation(Cation::Sodium, 0.05);
/// let ph = Solver::new(&[&half], Temperature::TWENTY_FIVE)?.solve()?.ph;
/// assert!((ph - 4.66).abs() < 0.02);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Solution<'a> {
    pub(super) water: f64,
    pub(super) acids: Vec<(&'a AcidBase, f64)>,
    pub(super) cations: [f64; 5],
    pub(super) anion: f64,
    pub(super) cation: f64,
}

impl<'a> Solution<'a> {
    /// Nothing in a mass of water in kg.
    #[must_use]
    pub const fn in_water(kilograms: f64) -> Self {
        Self { water: kilograms, acids: Vec::new(), cations: [0.0; 5], anion: 0.0, cation: 0.0 }
    }

    /// The same with so many mol of an acid, base or ampholyte, in its fully protonated, uncharged or any other form:
    /// what balances its charge is added with [`Solution::with_cation`] or [`Solution::with_anion`].
    #[must_use]
    pub fn with(mut self, acid: &'a AcidBase, moles: f64) -> Self {
        self.add(acid, moles);
        self
    }

    /// The same with so many mol of a cation.
    #[must_use]
    pub fn with_cation(mut self, cation: Cation, moles: f64) -> Self {
        self.add_cation(cation, moles);
        self
    }

    /// The same with so many mol of anions of charge -1 that take no proton and no partner: chloride, nitrate.
    #[must_use]
    pub fn with_anion(mut self, moles: f64) -> Self {
        self.add_anion(moles);
        self
    }

    /// The same with so many mol of cations of charge +1 that pair with nothing.
    #[must_use]
    pub fn with_unpaired_cation(mut self, moles: f64) -> Self {
        self.cation += moles;
        self
    }

    /// Adds so many mol of an acid, base or ampholyte.
    pub fn add(&mut self, acid: &'a AcidBase, moles: f64) {
        match self.acids.iter_mut().find(|(known, _)| std::ptr::eq(*known, acid)) {
            Some((_, amount)) => *amount += moles,
            None => self.acids.push((acid, moles)),
        }
    }

    /// Adds so many mol of a cation.
    pub fn add_cation(&mut self, cation: Cation, moles: f64) {
        self.cations[cation.index()] += moles;
    }

    /// Adds so many mol of anions of charge -1 that take no proton and no partner.
    pub fn add_anion(&mut self, moles: f64) {
        self.anion += moles;
    }

    /// Adds so many kg of water.
    pub fn add_water(&mut self, kilograms: f64) {
        self.water += kilograms;
    }

    /// Adds so much of another solution: 1 is all of it.
    pub fn add_solution(&mut self, other: &Self, share: f64) {
        self.water += other.water * share;
        for (acid, moles) in &other.acids {
            self.add(acid, moles * share);
        }
        for (own, moles) in self.cations.iter_mut().zip(other.cations) {
            *own += moles * share;
        }
        self.anion += other.anion * share;
        self.cation += other.cation * share;
    }

    /// Leaves only a share of an acid in, 0 to 1; its ions stay: the rest lies undissolved.
    pub fn keep_of(&mut self, acid: &AcidBase, share: f64) {
        for (_, moles) in self.acids.iter_mut().filter(|(own, _)| std::ptr::eq(*own, acid)) {
            *moles *= share;
        }
    }

    /// Whether nothing is dissolved.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        let amounts = self.acids.iter().map(|(_, moles)| *moles).chain(self.cations);
        amounts.chain([self.anion, self.cation]).all(|amount| amount <= 0.0)
    }

    /// The acids, bases and ampholytes in it, each with its mol.
    pub fn acids(&self) -> impl Iterator<Item = (&'a AcidBase, f64)> {
        self.acids.iter().copied()
    }

    /// What is in it that is no acid: cations in equivalents, less anions, in mol of charge.
    #[must_use]
    pub fn strong_charge(&self) -> f64 {
        let paired: f64 = Cation::ALL.iter().map(|each| f64::from(each.charge()) * self.cations[each.index()]).sum();
        paired + self.cation - self.anion
    }

    /// The water in kg.
    #[must_use]
    pub const fn water(&self) -> f64 {
        self.water
    }

    pub(super) fn check(&self) -> Result<(), PhError> {
        let amounts = self.acids.iter().map(|(_, moles)| *moles).chain(self.cations);
        let good = amounts.chain([self.anion, self.cation, self.water]).all(|amount| (0.0..=1e6).contains(&amount));
        if good { Ok(()) } else { Err(PhError::Amount) }
    }
}
