//! What acts of each preservative over the pH, for a picture.

use super::{Acting, meant};
use crate::checks::contents::Contents;
use crate::checks::facts::Span;
use crate::material::ConstituentId;

/// What acts of one preservative over the pH.
#[derive(Debug, Clone, PartialEq)]
pub struct ActsOverPh {
    /// Which.
    pub substance: ConstituentId,
    /// The pH, and what is free and undissociated there in percent of the water.
    pub acts: Vec<(f64, f64)>,
    /// The pH, and the best share of what is enough that it reaches against any kind of microbe: 1 is enough.
    pub reaches: Vec<(f64, f64)>,
    /// The pH in which it works, as practice has it.
    pub window: Option<Span>,
}

/// What acts of each preservative that is meant as one, from pH 2 to 10.
#[must_use]
pub fn acts_over_ph(contents: &Contents<'_>) -> Vec<ActsOverPh> {
    let each = |at_ph: Acting<'_>| {
        let mut curves = ActsOverPh {
            substance: at_ph.present.id,
            acts: Vec::new(),
            reaches: Vec::new(),
            window: at_ph.preservative.ph.map(|window| window.value),
        };
        for tenth in 20..=100_u32 {
            let ph = f64::from(tenth) / 10.0;
            let there = Acting::at(contents, at_ph.present, at_ph.preservative, Some(ph));
            curves.acts.push((ph, there.acts));
            curves.reaches.push((ph, there.scores.into_iter().fold(0.0, f64::max)));
        }
        curves
    };
    meant(contents).map(each).collect()
}
