//! The oil and the micelles take a preservative out of the water, where microbes live (Bean, J. Soc. Cosmet. Chem. 23:703,
//! 1972; Kazmi and Mitchell, J. Pharm. Sci. 67:1260, 1978).
//!
//! Each kind of oil takes by its own coefficient; of an acid only the undissociated part parts. Said where what is left no longer
//! holds what it would hold without them: a caution where nothing else holds it, a note where most of it is lost and others do.
//! Cured by more of it where the limit allows.

use super::acting::HELD;
use super::{MARGIN, acting, asks_for_one, below, is_allowed, is_serious, meant, raise_preservative, sum};
use crate::checks::contents::Contents;
use crate::checks::facts::{Microbe, Strength};
use crate::checks::finding::{Finding, Severity, Value};

pub(super) const CODE: &str = "preservation.oil-loss";

/// Coefficients are known to a tenth at best: a smaller shortfall is none.
const TOLERANCE: f64 = 0.9;

/// Share left below which it is worth a word even where others hold the product.
const MOST_IS_LOST: f64 = 0.5;

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if !asks_for_one(contents) {
        return;
    }
    let scores = sum(&acting(contents));
    let short = if is_serious(contents, scores) { below(contents, scores, HELD) } else { Vec::new() };
    for each in meant(contents) {
        let mostly = each.acts < each.undisturbed * MOST_IS_LOST;
        let lost = |(at, kind): (usize, Microbe)| {
            let useful = each.preservative.spectrum[at] >= Strength::Fair;
            let falls = each.undisturbed_scores[at] >= HELD && each.scores[at] < HELD * TOLERANCE;
            (useful && falls && (mostly || short.contains(&kind))).then(|| (short.contains(&kind), each.scores[at]))
        };
        let lost: Vec<(bool, f64)> = Microbe::ALL.into_iter().enumerate().filter_map(lost).collect();
        let Some(least) = lost.iter().map(|(_, score)| *score).reduce(f64::min) else { continue };
        let severity = if lost.iter().any(|(short, _)| *short) { Severity::Caution } else { Severity::Note };
        let (id, percent) = (each.present.id, each.present.percent);
        let more = percent * HELD * MARGIN / least;
        let cure = is_allowed(contents, id, more).then(|| raise_preservative(contents, &each, more)).flatten();
        let losses = each.losses;
        found.push(
            Finding::about(CODE, severity, id)
                .with("present", Value::Percent(percent))
                .with("left", Value::Percent(each.acts))
                .with("part", Value::Percent(100.0 * each.acts / each.undisturbed))
                .fed_by(each.present.lines())
                .step(
                    "work.bean",
                    vec![
                        ("present", Value::Percent(percent * each.makes)),
                        ("ratio", Value::Number(losses.oil_to_water)),
                        ("coefficient", Value::Number(losses.coefficient)),
                        ("held", Value::Number(1.0 + losses.binding * losses.surfactant)),
                        ("share", Value::Percent(losses.undissociated * 100.0)),
                        ("left", Value::Percent(each.acts)),
                    ],
                )
                .cured_by(cure)
                .cite(each.citations()),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Value;

    #[test]
    fn the_oil_takes_its_share() {
        let bench = Bench::new();
        let formula = bench.water_with(&[
            ("Helianthus Annuus Seed Oil", "40"),
            ("Methylparaben", "0.2"),
            ("Sorbitan Stearate", "5"),
        ]);
        let findings = bench.check(&formula);
        let Some(Value::Percent(left)) = find(&findings, super::CODE).value("left") else { panic!() };
        // φ = (40 / 0.92) / 54.8 = 0.793; K 7.5: 0.2 × 1.793 / (7.5 × 0.793 + 1)
        assert!((left - 0.0516).abs() < 0.0005, "{left}");
        let dry = bench.water_with(&[("Methylparaben", "0.2")]);
        assert!(!codes(&bench.check(&dry)).contains(&super::CODE));
    }
}
