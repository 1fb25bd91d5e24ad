//! The pH of the product on the skin it meets.
//!
//! At 2 or below and at 11 or above it burns: a stop, whatever keeps in it. Outside what its kind of product takes it stings,
//! dries or swells the skin: a caution. Judged at the worse end of the pH. Cured by a pH well inside.

use crate::checks::contents::{Contents, PhBand};
use crate::checks::cure::Round;
use crate::checks::finding::{Finding, Severity, Value};
use crate::checks::preservation::set_ph_and_preserve;
use crate::chemistry::Band;
use crate::product::ProductKind;
use crate::source::Citation;
use stillroom_terms::Purpose;

pub(in crate::checks) const CODE: &str = "limits.skin-ph";

/// Where an acid burns; the law on classification names 2 for corrosion.
const BURNS_ACID: f64 = 2.0;
/// Where a base burns; the law lets hydroxides bring a product to 11 at most.
const BURNS_ALKALINE: f64 = 11.0;
/// How far inside its bounds a cure lands.
const INSIDE: f64 = 0.3;

const CLP: Citation = Citation::recalled(
    "Regulation (EC) No 1272/2008, Annex I, 3.2: pH of 2 or less and of 11.5 or more counts as corrosive to skin",
);
const HYDROXIDES: Citation = Citation::recalled(
    "Regulation (EC) No 1223/2009, Annex III, entry 15a: as pH adjuster sodium and potassium hydroxide up to pH 11",
);

/// The pH that a kind of product usually has and skin takes: common practice.
const fn takes(kind: Option<ProductKind>, purpose: Purpose) -> (f64, f64) {
    match kind {
        Some(ProductKind::Eyes) => (4.5, 8.0),
        Some(ProductKind::Child) => (4.5, 7.5),
        Some(ProductKind::ChildWash) => (4.5, 8.5),
        Some(ProductKind::Lips | ProductKind::Body | ProductKind::Hand | ProductKind::Mist) => (3.0, 8.5),
        Some(ProductKind::Face | ProductKind::Hair | ProductKind::Conditioner) => (3.0, 8.0),
        Some(ProductKind::Deodorant | ProductKind::DeodorantSpray) => (3.5, 9.5),
        Some(ProductKind::FaceWash | ProductKind::Shampoo) => (3.0, 9.7),
        Some(ProductKind::Oral) => (5.0, 10.0),
        Some(ProductKind::BodyWash | ProductKind::HandWash | ProductKind::Bath) => (3.0, 10.5),
        None => match purpose {
            Purpose::LeaveOn => (3.0, 8.5),
            Purpose::RinseOff => (3.0, 10.5),
        },
    }
}

/// How serious the pH of a product is for skin, if it is at all.
fn verdict(contents: &Contents<'_>) -> Option<(PhBand, Severity, (f64, f64))> {
    let ph = contents.ph().filter(|_| contents.water > 0.0)?;
    let (low, high) = takes(contents.formula.kind, contents.formula.purpose);
    // The last digits of a difference are none.
    let (acid, alkaline) = (ph.low() + 1e-9, ph.high() - 1e-9);
    let severity = if ph.low() <= BURNS_ACID + 1e-9 || ph.high() >= BURNS_ALKALINE - 1e-9 {
        Severity::Stop
    } else if acid < low || alkaline > high {
        Severity::Caution
    } else {
        return None;
    };
    Some((ph, severity, (low, high)))
}

/// Whether a pH would be worth a word wherever in its band it lies.
pub(in crate::checks) fn hurts_throughout(contents: &Contents<'_>, band: Band) -> bool {
    let (low, high) = takes(contents.formula.kind, contents.formula.purpose);
    band.high < low || band.low > high
}

/// Whether the pH hurts: then nothing is said of what it is good for.
pub(in crate::checks) fn hurts(contents: &Contents<'_>) -> bool {
    verdict(contents).is_some()
}

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some((ph, severity, (low, high))) = verdict(contents) else { return };
    let acid = ph.value < f64::midpoint(low, high);
    let (to, round) = if acid { (low + INSIDE, Round::Up) } else { (high - INSIDE, Round::Down) };
    let (direction, does) = match (acid, severity) {
        (true, Severity::Stop) => ("ph.above", "ph.burns"),
        (true, _) => ("ph.above", "ph.stings"),
        (false, Severity::Stop) => ("ph.below", "ph.burns"),
        (false, _) => ("ph.below", "ph.dries"),
    };
    found.push(
        Finding::new(CODE, severity, "formula")
            .with("ph", Value::Ph(ph.value))
            .with("known", Value::Word(ph.word()))
            .with("does", Value::Word(does))
            .with("direction", Value::Word(direction))
            .with("bound", Value::Ph(if acid { low } else { high }))
            .step("work.ph-takes", vec![("low", Value::Ph(low)), ("high", Value::Ph(high))])
            .cured_by(set_ph_and_preserve(contents, to, round))
            .cite([Citation::COMMON_PRACTICE, CLP, HYDROXIDES]),
    );
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Severity;
    use crate::product::ProductKind;

    #[test]
    fn a_ph_that_burns_is_a_stop_and_one_that_stings_a_caution() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Glycerin", "5"), ("Phenoxyethanol", "0.9")]);
        for (ph, severity) in [("12", Severity::Stop), ("1.9", Severity::Stop), ("10", Severity::Caution)] {
            formula.target_ph = Some(bench.ph(ph));
            assert_eq!(find(&bench.check(&formula), super::CODE).severity, severity, "{ph}");
            bench.every_cure_cures(&formula, super::CODE);
        }
        // Stated as 10.9 it may as well be 11.1; measured it may not.
        formula.target_ph = Some(bench.ph("10.85"));
        assert_eq!(find(&bench.check(&formula), super::CODE).severity, Severity::Stop);
        formula.measured_ph = Some(bench.ph("10.85"));
        assert_eq!(find(&bench.check(&formula), super::CODE).severity, Severity::Caution);
    }

    #[test]
    fn the_kind_of_product_says_what_is_usual() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Phenoxyethanol", "0.9")]);
        formula.measured_ph = Some(bench.ph("9.8"));
        formula.set_kind(Some(ProductKind::HandWash));
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
        formula.set_kind(Some(ProductKind::Face));
        assert!(codes(&bench.check(&formula)).contains(&super::CODE));
    }
}
