//! What is answered: amounts with what they meet and miss, or what stands in the way.

use crate::checks::About;
use crate::formula::LineId;
use crate::material::{ConstituentId, MaterialId};
use rust_decimal::Decimal;

/// How much of an offer goes in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Portion {
    /// What is weighed out.
    pub material: MaterialId,
    /// The line of the formula that it is, where it is one already.
    pub line: Option<LineId>,
    /// How much, in the unit of the grid; all of them make its whole exactly.
    pub amount: Decimal,
    /// How much in percent of the product; exact on a grid of percents.
    pub percent: Decimal,
}

/// What became of a wish.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Met {
    /// The substance.
    pub constituent: ConstituentId,
    /// What was wanted, in percent.
    pub wanted: Decimal,
    /// What there is, in percent.
    pub got: Decimal,
    /// What the difference counts.
    pub counts: Decimal,
}

impl Met {
    /// How much more than wanted there is; negative where it is less.
    #[must_use]
    pub fn off(&self) -> Decimal {
        self.got - self.wanted
    }
}

/// A demand with what the amounts make of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Kept {
    /// What it is about.
    pub about: About,
    /// The sum.
    pub sum: Decimal,
    /// Least.
    pub low: Option<Decimal>,
    /// Most.
    pub high: Option<Decimal>,
}

/// The amounts that were looked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    /// How much of each offer goes in, ordered by material; what stays at nothing too.
    pub portions: Vec<Portion>,
    /// What became of each wish, and of what was brought without one; what counts most comes first.
    pub wishes: Vec<Met>,
    /// Every demand with its sum; all are kept.
    pub kept: Vec<Kept>,
    /// What all differences count together, after rounding.
    pub deviation: Decimal,
    /// What it costs, where every price is known.
    pub price: Option<Decimal>,
}

impl Answer {
    /// Wishes that are missed by more than a bound, in percent of the product; what counts most first.
    pub fn missed(&self, by: Decimal) -> impl Iterator<Item = &Met> {
        self.wishes.iter().filter(move |each| each.off().abs() > by)
    }
}

/// One thing that has to hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Bound {
    /// A demand.
    Demand(About),
    /// No more of a material than is at hand or allowed.
    AtHand(MaterialId),
    /// No less of a material than was asked for.
    Needs(MaterialId),
}

/// A bound given way by so much that an answer exists.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct GivingWay {
    /// Which.
    pub bound: Bound,
    /// What it was, in its own unit (percent, for most).
    pub from: Decimal,
    /// What it would have to be.
    pub to: Decimal,
}

/// What stands in the way of any answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Conflict {
    /// Bounds that cannot all be kept; without any one of them the rest can.
    pub in_the_way: Vec<Bound>,
    /// Giving way in one of these is enough, each by itself; least first. Bounds that may not give way are not among them.
    pub ways_out: Vec<GivingWay>,
    /// Where giving way in one is not enough: the least that is, all together.
    pub together: Vec<GivingWay>,
}

/// Why there is no answer.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NoAnswer {
    /// There is nothing to choose from.
    #[error("nothing is at hand")]
    NothingAtHand,
    /// The formula does not make a whole, or something in it cannot be seen through.
    #[error("the formula does not make a whole")]
    Unbalanced,
    /// More was offered than is looked through.
    #[error("more than {most} materials")]
    TooMany {
        /// Most that are.
        most: usize,
    },
    /// So many materials and substances that it is not reckoned.
    #[error("larger than is solved")]
    TooLarge,
    /// Not everything that has to hold can.
    #[error("{} bounds cannot all be kept", .0.in_the_way.len())]
    Conflict(Conflict),
    /// Amounts that hold exist, but none on the steps of the scale.
    #[error("no amounts on these steps keep {} bounds", broken.len())]
    StepTooCoarse {
        /// What is broken on the nearest steps.
        broken: Vec<Bound>,
    },
    /// The arithmetic lost its digits.
    #[error("the arithmetic failed")]
    Failed,
}

impl NoAnswer {
    /// Stable code of this error.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NothingAtHand => "rebuild.nothing-at-hand",
            Self::Unbalanced => "rebuild.unbalanced",
            Self::TooMany { .. } => "rebuild.too-many",
            Self::TooLarge => "rebuild.too-large",
            Self::Conflict(_) => "rebuild.conflict",
            Self::StepTooCoarse { .. } => "rebuild.step-too-coarse",
            Self::Failed => "rebuild.failed",
        }
    }
}
