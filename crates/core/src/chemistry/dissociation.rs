//! Weak acids: which share of them is not dissociated at a pH.

/// Share of an acid that keeps every proton at a pH, 0 to 1 (Henderson and Hasselbalch, with every step).
///
/// `steps` are the dissociation constants, first to last. Without activity corrections: ionic strength moves a constant by
/// 0.1 to 0.3.
///
/// ```
/// use stillroom_core::chemistry::dissociation::undissociated;
/// // Benzoic acid, pKa 4.20, at its pKa: one half.
/// assert!((undissociated(&[4.2], 4.2) - 0.5).abs() < 1e-12);
/// ```
#[must_use]
pub fn undissociated(steps: &[f64], ph: f64) -> f64 {
    let mut sum = 1.0;
    let mut exponent = 0.0;
    for step in steps {
        exponent += ph - step;
        sum += 10_f64.powf(exponent);
    }
    1.0 / sum
}

/// Share of a weak acid of one step that is undissociated in its own saturated solution in water, 0 to 1: by it a
/// measured total solubility becomes the intrinsic one.
///
/// `saturated` is the measured total in moles per litre. With `x` of it dissociated, `Ka = x² / (S − x)`.
///
/// ```
/// use stillroom_core::chemistry::dissociation::undissociated_at_saturation;
/// // Salicylic acid, pKa 2.97, 0.23 g in 100 g: 78 %.
/// assert!((undissociated_at_saturation(2.97, 0.0166) - 0.776).abs() < 0.002);
/// ```
#[must_use]
pub fn undissociated_at_saturation(pka: f64, saturated: f64) -> f64 {
    let ka = 10_f64.powf(-pka);
    let dissociated = (ka * ka + 4.0 * ka * saturated).sqrt().midpoint(-ka);
    1.0 - dissociated / saturated
}

/// The pH at which an acid of one step keeps a share of its protons.
#[must_use]
pub fn ph_for_undissociated(pka: f64, share: f64) -> f64 {
    pka + (1.0 / share - 1.0).log10()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn less_is_undissociated_the_higher_the_ph() {
        let citric = [3.128, 4.761, 6.396];
        let shares: Vec<f64> = (0..=14).map(|ph| undissociated(&citric, f64::from(ph))).collect();
        assert!(shares.windows(2).all(|pair| pair[0] > pair[1]));
        assert!(shares.iter().all(|share| (0.0..=1.0).contains(share)));
        let ph = ph_for_undissociated(4.2, 0.1);
        assert!((undissociated(&[4.2], ph) - 0.1).abs() < 1e-12);
    }
}
