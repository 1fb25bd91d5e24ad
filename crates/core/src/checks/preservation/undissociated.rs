//! Too little of an acid preservative is undissociated at this pH: only that part passes into a cell and acts.
//!
//! Asked for is what the lower end of the usual range leaves undissociated at the upper end of the pH window: that is the
//! least that practice trusts. Equation: share = 1 / (1 + 10^(pH - pKa)). Cured by a lower pH, or by more of it where the
//! limit allows.

use super::{Held, acid_of, acting_share, held, spared};
use crate::checks::chart::{Axis, Chart, Mark};
use crate::checks::contents::Contents;
use crate::checks::cure::{Round, raise, set_ph};
use crate::checks::facts::Authority;
use crate::checks::finding::{Finding, Severity, Value};
use crate::chemistry::dissociation::{ph_for_undissociated, undissociated};
use crate::source::Citation;

pub(super) const CODE: &str = "preservation.undissociated";

/// What acts of an acid preservative here, and the least that should.
pub(super) struct Acting {
    /// Share that is undissociated.
    pub share: f64,
    /// That in percent of the product, as acid.
    pub acts: f64,
    /// The least that should, in the same.
    pub wanted: f64,
    /// What a percent of it makes as acid.
    as_acid: f64,
}

/// Works out what acts. Nothing for preservatives that are no acids, and without a pH.
pub(super) fn acting(contents: &Contents<'_>, held: &Held<'_>) -> Option<Acting> {
    let ph = contents.ph()?;
    let (_, as_acid) = acid_of(contents, held.present)?;
    let share = acting_share(contents, held.present, ph)?;
    let usual = held.preservative.usual?.value;
    let least = acting_share(contents, held.present, held.preservative.ph?.value.high)?;
    Some(Acting { share, acts: held.present.percent * as_acid * share, wanted: usual.low * as_acid * least, as_acid })
}

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    let Some(ph) = contents.ph() else { return };
    if spared(contents).is_some() {
        return;
    }
    for held in held(contents).filter(|held| held.preservative.carries && held.counts()) {
        let Some(acting) = acting(contents, &held) else { continue };
        if acting.acts >= acting.wanted {
            continue;
        }
        let Some((acid, _)) = acid_of(contents, held.present) else { continue };
        let pka = acid.steps.first().copied().unwrap_or(f64::NAN);
        let (id, percent) = (held.present.id, held.present.percent);
        let lower = ph_for_undissociated(pka, acting.wanted / (percent * acting.as_acid));
        let more = acting.wanted / (acting.as_acid * acting.share);
        let by_more = is_allowed(contents, id, more).then(|| raise(contents, &[(id, 1.0)], percent, more)).flatten();
        let mut finding = Finding::about(CODE, Severity::Caution, id)
            .with("share", Value::Percent(acting.share * 100.0))
            .with("ph", Value::Ph(ph))
            .with("acts", Value::Percent(acting.acts))
            .with("wanted", Value::Percent(acting.wanted))
            .fed_by(held.present.lines())
            .step(
                "work.undissociated",
                vec![
                    ("substance", Value::Substance(id)),
                    ("ph", Value::Ph(ph)),
                    ("pka", Value::Ph(pka)),
                    ("share", Value::Percent(acting.share * 100.0)),
                ],
            )
            .step(
                "work.acts",
                vec![
                    ("present", Value::Percent(percent * acting.as_acid)),
                    ("share", Value::Percent(acting.share * 100.0)),
                    ("acts", Value::Percent(acting.acts)),
                ],
            )
            .cured_by(if lower.is_finite() { set_ph(lower, Round::Down) } else { None })
            .cured_by(by_more)
            .cite([acid.citation])
            .cite(held.preservative.usual.map(|usual| usual.citation))
            .cite([Citation {
                basis: crate::source::Basis::Computed,
                ..Citation::recalled("Henderson-Hasselbalch equation")
            }]);
        finding.chart = contents.charts.then(|| picture(&acid.steps, ph, &held));
        found.push(finding);
    }
}

/// Whether every limit allows so much of a substance.
pub(super) fn is_allowed(contents: &Contents<'_>, id: crate::ConstituentId, percent: f64) -> bool {
    contents.knowledge.limits().iter().all(|limit| {
        let Some((_, factor)) = limit.members.iter().find(|(member, _)| *member == id) else { return true };
        let others = limit.members.iter().filter(|(member, _)| *member != id);
        let others: f64 = others.map(|(member, factor)| contents.percent_of(*member) * factor).sum();
        let most = contents.by_purpose(limit.leave_on, limit.rinse_off);
        limit.authority != Authority::Law || most.is_none_or(|most| others + percent * factor <= most)
    })
}

/// Share that is undissociated over the pH, with the window and this formula's point.
fn picture(steps: &[f64], ph: f64, held: &Held<'_>) -> Chart {
    let share = |ph: f64| undissociated(steps, ph) * 100.0;
    let curve = (8_u8..=40).map(|quarter| f64::from(quarter) / 4.0).map(|ph| (ph, share(ph))).collect();
    Chart {
        x: (Axis::Ph, 2.0, 10.0),
        y: Some((Axis::Undissociated, 0.0, 100.0)),
        curve,
        band: held.preservative.ph.map(|window| (window.value.low, window.value.high)),
        marks: vec![Mark { x: ph, y: Some(share(ph)), label: "mark.this-formula", value: Value::Ph(ph) }],
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Value;

    #[test]
    fn an_acid_at_too_high_a_ph_acts_too_little() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Sodium Benzoate", "0.4"), ("Phenoxyethanol", "0.9")]);
        formula.target_ph = Some(bench.ph("6.0"));
        let findings = bench.check(&formula);
        let Some(Value::Percent(share)) = find(&findings, super::CODE).value("share") else { panic!() };
        // 1 / (1 + 10^(6.0 - 4.2))
        assert!((share - 1.56).abs() < 0.01, "{share}");
        bench.every_cure_cures(&formula, super::CODE);
        formula.target_ph = Some(bench.ph("4.8"));
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
    }
}
