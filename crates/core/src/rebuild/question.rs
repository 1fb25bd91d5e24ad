//! What is asked: which amounts of what is at hand come nearest to what is wanted, within what has to hold.

use crate::checks::Demand;
use crate::formula::LineId;
use crate::material::{ConstituentId, MaterialId};
use crate::quantity::Percent;
use rust_decimal::Decimal;

/// Most materials one question may offer; far past any shelf.
pub const MOST_OFFERS: usize = 400;

/// A material that may go in, and how much of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Offer {
    /// What is weighed out.
    pub material: MaterialId,
    /// The line of the formula that it is, where it is one already.
    pub line: Option<LineId>,
    /// Percent of each constituent in it, summing to 100.
    pub brings: Vec<(ConstituentId, Decimal)>,
    /// Least percent of the product.
    pub low: Decimal,
    /// Most percent of the product: what is at hand, or a hundred.
    pub high: Decimal,
    /// Percent of the product now; of several answers as near the one is taken that changes least.
    pub now: Option<Decimal>,
    /// Price of one percent of the product, in any currency as long as it is one.
    pub price: Option<Decimal>,
    /// How much better each percent used up is, for what expires; nothing otherwise.
    pub urgency: Decimal,
}

impl Offer {
    /// Whether its amount is not to be changed.
    #[must_use]
    pub fn is_fixed(&self) -> bool {
        self.low == self.high
    }

    /// What orders offers: nothing of an answer depends on the order in which they come.
    pub(super) fn key(&self) -> (MaterialId, Option<LineId>) {
        (self.material, self.line)
    }
}

/// How much of a substance is wanted, and how much a percent off counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wish {
    /// The substance.
    pub constituent: ConstituentId,
    /// Percent of the product.
    pub target: Percent,
    /// What a percent too much or too little counts.
    pub weight: Decimal,
}

/// What a percent counts of a substance that is brought and nobody asked for.
pub const UNASKED: Decimal = Decimal::ONE;
/// What a percent of change in a line counts that could as well stay as it is.
pub(super) const LEAVE_ALONE: Decimal = Decimal::from_parts(1, 0, 0, false, 4);

/// In which steps amounts are weighed. Both in the same unit: percent, or grams of the batch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Grid {
    /// The whole: a hundred percent, or the mass of the batch.
    pub whole: Decimal,
    /// The smallest step.
    pub step: Decimal,
}

impl Grid {
    /// Hundredths of a percent.
    pub const PERCENT: Self = Self { whole: Decimal::ONE_HUNDRED, step: Decimal::from_parts(1, 0, 0, false, 2) };

    /// Steps of a scale in a batch. `None` unless the step is more than nothing and fits a million times at most.
    ///
    /// ```
    /// use rust_decimal::dec;
    /// use stillroom_core::rebuild::Grid;
    /// assert!(Grid::new(dec!(250), dec!(0.1)).is_some());
    /// assert!(Grid::new(dec!(250), dec!(0)).is_none());
    /// ```
    #[must_use]
    pub fn new(whole: Decimal, step: Decimal) -> Option<Self> {
        let steps = whole.checked_div(step)?;
        (step > Decimal::ZERO && steps >= Decimal::ONE && steps <= Decimal::from(1_000_000))
            .then_some(Self { whole, step })
    }

    /// A percent of the product in the unit of this grid.
    pub(super) fn of_percent(&self, percent: Decimal) -> Option<Decimal> {
        if self.whole == Decimal::ONE_HUNDRED {
            return Some(percent);
        }
        percent.checked_mul(self.whole)?.checked_div(Decimal::ONE_HUNDRED)
    }

    /// An amount of this grid in percent of the product.
    pub(super) fn to_percent(self, amount: Decimal) -> Option<Decimal> {
        if self.whole == Decimal::ONE_HUNDRED {
            return Some(amount);
        }
        amount.checked_mul(Decimal::ONE_HUNDRED)?.checked_div(self.whole)
    }
}

/// What is looked for among the amounts that satisfy every demand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Aim {
    /// What comes nearest to the wishes.
    #[default]
    Closest,
    /// The cheapest, at most so much further from the wishes than the nearest.
    Cheapest {
        /// How much further, in weighted percent.
        further: Decimal,
    },
    /// What uses up most of what is urgent, at most so much further from the wishes than the nearest.
    UseUp {
        /// How much further, in weighted percent.
        further: Decimal,
    },
}

/// What is asked.
#[derive(Debug, Clone, PartialEq)]
pub struct Question {
    /// What may go in.
    pub offers: Vec<Offer>,
    /// What is wanted.
    pub wishes: Vec<Wish>,
    /// What has to hold.
    pub demands: Vec<Demand>,
    /// In which steps it is weighed.
    pub grid: Grid,
    /// What is looked for.
    pub aim: Aim,
}
