//! What evaporates while a batch is hot, what to put back, and what the loss does if nobody puts it back.

use crate::composition::Composition;
use crate::material::ConstituentId;
use crate::quantity::{Grams, Percent};
use rust_decimal::Decimal;

/// Share of a heated water phase that evaporates in half an hour in an open beaker at 70 to 75 °C, in percent, for a
/// forecast where nothing was weighed. *Source*: common practice; surface, draught and time decide. Weigh it.
pub const USUAL_LOSS: Percent = Percent::from_hundredths(300);

/// Why a loss cannot be worked out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum EvaporationError {
    /// It weighs more than before.
    #[error("it weighs {more:?} more than before")]
    Heavier {
        /// How much more.
        more: Grams,
    },
    /// The beaker with its contents weighs less than the empty beaker.
    #[error("lighter than the empty beaker")]
    LighterThanBeaker,
    /// More is lost than there was water.
    #[error("more was lost than there was water")]
    MoreThanWater,
    /// A sum leaves the range of a mass.
    #[error("too large")]
    TooLarge,
}

impl EvaporationError {
    /// Every code of this error.
    pub const CODES: [&'static str; 4] = [
        "evaporation.heavier",
        "evaporation.lighter-than-beaker",
        "evaporation.more-than-water",
        "evaporation.too-large",
    ];

    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Heavier { .. } => "evaporation.heavier",
            Self::LighterThanBeaker => "evaporation.lighter-than-beaker",
            Self::MoreThanWater => "evaporation.more-than-water",
            Self::TooLarge => "evaporation.too-large",
        }
    }
}

/// What was lost between two weighings of the same beaker.
///
/// *Units*: grams.
///
/// # Errors
/// `evaporation.heavier` if it weighs more afterwards.
pub fn loss_between(before: Grams, after: Grams) -> Result<Grams, EvaporationError> {
    before
        .checked_sub(after)
        .ok_or_else(|| EvaporationError::Heavier { more: after.checked_sub(before).unwrap_or(Grams::ZERO) })
}

/// What is in a beaker: water, and everything that stays when water evaporates.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Contents {
    /// Water from every source.
    pub water: Grams,
    /// The rest, by constituent.
    pub others: Vec<(ConstituentId, Grams)>,
}

impl Contents {
    /// The constituents of a composition in a batch. `None` if a mass leaves its range.
    #[must_use]
    pub fn of(composition: &Composition, batch: Grams, is_water: impl Fn(ConstituentId) -> bool) -> Option<Self> {
        let mut contents = Self { water: Grams::ZERO, others: Vec::with_capacity(composition.entries.len()) };
        for entry in &composition.entries {
            let mass = entry.percent.of(batch)?;
            if is_water(entry.constituent) {
                contents.water = contents.water.checked_add(mass)?;
            } else {
                contents.others.push((entry.constituent, mass));
            }
        }
        Some(contents)
    }

    /// Mass of all of it.
    #[must_use]
    pub fn mass(&self) -> Option<Grams> {
        self.others.iter().try_fold(self.water, |sum, (_, mass)| sum.checked_add(*mass))
    }

    /// What is left when water evaporates. Everything else stays, to the last digit.
    ///
    /// *Valid for* a loss of water alone: alcohol and fragrance go faster, and what sticks to a wall is no evaporation.
    ///
    /// # Errors
    /// `evaporation.more-than-water`.
    pub fn evaporate(&self, loss: Grams) -> Result<Self, EvaporationError> {
        let water = self.water.checked_sub(loss).ok_or(EvaporationError::MoreThanWater)?;
        Ok(Self { water, others: self.others.clone() })
    }

    /// What it becomes with water put back.
    ///
    /// # Errors
    /// `evaporation.too-large`.
    pub fn add_water(&self, added: Grams) -> Result<Self, EvaporationError> {
        let water = self.water.checked_add(added).ok_or(EvaporationError::TooLarge)?;
        Ok(Self { water, others: self.others.clone() })
    }

    /// Percent of each constituent but water.
    #[must_use]
    pub fn percents(&self) -> Option<Vec<(ConstituentId, Percent)>> {
        let whole = self.mass()?;
        self.others.iter().map(|(constituent, mass)| Some((*constituent, Percent::from_share(*mass, whole)?))).collect()
    }

    /// By what every percent but that of water is multiplied when so much is lost. `None` if nothing would be left.
    #[must_use]
    pub fn concentration_factor(&self, loss: Grams) -> Option<Decimal> {
        let whole = self.mass()?;
        whole.value().checked_div(whole.checked_sub(loss)?.value())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use rust_decimal::dec;

    fn grams(value: Decimal) -> Grams {
        Grams::new(value).unwrap()
    }

    fn any_contents() -> impl Strategy<Value = Contents> {
        (1i64..100_000, prop::collection::vec(1i64..50_000, 1..12)).prop_map(|(water, others)| Contents {
            water: grams(Decimal::new(water, 2)),
            others: (0u32..)
                .zip(others)
                .map(|(at, mass)| (ConstituentId::Catalogue(at), grams(Decimal::new(mass, 3))))
                .collect(),
        })
    }

    #[test]
    fn a_preservative_of_one_percent_grows_with_the_loss() {
        let preservative = ConstituentId::Catalogue(9);
        let contents = Contents { water: grams(dec!(99)), others: vec![(preservative, grams(dec!(1)))] };
        let left = contents.evaporate(grams(dec!(20))).unwrap();
        assert_eq!(left.percents().unwrap(), [(preservative, Percent::new(dec!(1.25)).unwrap())]);
        assert_eq!(contents.concentration_factor(grams(dec!(20))), Some(dec!(1.25)));
        assert_eq!(contents.evaporate(grams(dec!(99.5))).unwrap_err().code(), "evaporation.more-than-water");
        assert_eq!(loss_between(grams(dec!(1)), grams(dec!(2))).unwrap_err().code(), "evaporation.heavier");
    }

    proptest! {
        #[test]
        fn evaporation_and_adding_back_conserve_every_non_volatile(contents in any_contents(), share in 0i64..=100, back in 0i64..100_000) {
            let loss = grams(contents.water.value() * Decimal::new(share, 2));
            let left = contents.evaporate(loss).unwrap();
            prop_assert_eq!(&left.others, &contents.others);
            prop_assert_eq!(left.mass().unwrap().checked_add(loss), contents.mass());
            let other = left.add_water(grams(Decimal::new(back, 2))).unwrap();
            prop_assert_eq!(&other.others, &contents.others);
            // What was lost put back makes the batch it was, to the last digit.
            prop_assert_eq!(left.add_water(loss).unwrap(), contents);
        }
    }
}
