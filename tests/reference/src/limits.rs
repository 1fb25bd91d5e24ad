//! Limits of the law, row by row, against the table they were read from, and against what the check says just below and above.

use crate::{EvidenceSet, Worst, count_bases, rows};
use rust_decimal::Decimal;
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};
use serde::Deserialize;
use stillroom_catalogue::{Catalogue, knowledge};
use stillroom_core::checks::{Conditions, Contents, Knowledge, check};
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::{Bench, evaluate};
use stillroom_core::quantity::Percent;
use stillroom_core::{Amount, ConstituentId, Formula, MaterialId, PhaseKind, Purpose};

const FIXTURE: &str = include_str!("../data/eu_annex_v.csv");

/// How far below and above a limit a formula is put.
const STEP: f64 = 0.005;

#[derive(Debug, Deserialize)]
struct Row {
    inci: String,
    entry: String,
    leave_on: Decimal,
    rinse_off: Decimal,
    /// The limit as percent of this substance; empty where the law expresses it as the substance itself.
    leave_on_as_substance: Option<Decimal>,
    rinse_off_as_substance: Option<Decimal>,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    expressed_as: String,
    #[allow(dead_code, reason = "a row without its source must not parse")]
    source: String,
    basis: String,
}

/// Every preservative of Annex V that the catalogue has, in both uses: how much of it the limits allow, and that a formula just
/// below raises nothing and one just above does. A check that answers wrongly counts as an infinite deviation.
///
/// # Panics
/// If a row cannot be read, or names what the catalogue has not.
#[must_use]
pub fn evidence() -> Vec<EvidenceSet> {
    let table: Vec<Row> = rows("eu_annex_v.csv", FIXTURE);
    let mut worst = Worst::default();
    for row in &table {
        let constituent = constituent(&row.inci);
        for (purpose, limit, as_substance) in [
            (Purpose::LeaveOn, row.leave_on, row.leave_on_as_substance),
            (Purpose::RinseOff, row.rinse_off, row.rinse_off_as_substance),
        ] {
            let printed = as_substance.unwrap_or(limit);
            let expected = printed.to_f64().expect("a number");
            let allowed = allowed(constituent, purpose, &row.entry)
                .unwrap_or_else(|| panic!("no limit of entry {} for {}", row.entry, row.inci));
            // In units of the last digit that is printed.
            let digit = 10.0_f64.powi(-i32::try_from(printed.normalize().scale()).expect("a few digits"));
            worst.see((allowed - expected) / digit);
            for (percent, should_raise) in [(expected * (1.0 - STEP), false), (expected * (1.0 + STEP), true)] {
                let raises = raises(constituent, purpose, percent);
                worst.see(if raises == should_raise { 0.0 } else { f64::INFINITY });
            }
        }
    }
    let source = format!(
        "European Commission, CosIng export of Annex V to Regulation (EC) No 1223/2009, Feb 2024, and ECHA pages of entries 3, \
         20 and 57 ({})",
        count_bases(table.iter().map(|row| row.basis.as_str()))
    );
    vec![EvidenceSet::of("limits.eu-annex-v", source, worst, 0.5, "of the last printed digit")]
}

fn constituent(inci: &str) -> ConstituentId {
    let mut all = Catalogue::get().constituents();
    all.find(|each| each.inci == inci).unwrap_or_else(|| panic!("the catalogue has no {inci}")).id
}

/// The most of a substance that the limits of an entry allow by itself.
fn allowed(constituent: ConstituentId, purpose: Purpose, entry: &str) -> Option<f64> {
    let limits = knowledge().limits().iter().filter(|limit| limit.preservative && limit.entry == entry);
    limits
        .filter_map(|limit| {
            let (_, factor) = limit.members.iter().find(|(id, _)| *id == constituent)?;
            let most = match purpose {
                Purpose::LeaveOn => limit.leave_on,
                Purpose::RinseOff => limit.rinse_off,
            };
            Some(most? / factor)
        })
        .reduce(f64::min)
}

fn raises(constituent: ConstituentId, purpose: Purpose, percent: f64) -> bool {
    let catalogue = Catalogue::get();
    let mut formula = Formula::with_name("limit");
    formula.purpose = purpose;
    let phase = formula.add_phase("water", PhaseKind::RoomTemperature, None);
    let material = knowledge().material_of(constituent).expect("something a maker weighs out");
    let percent = Percent::new(Decimal::from_f64(percent).expect("a number").round_dp(8)).expect("a percent");
    formula.add_line(phase, MaterialId::Catalogue(1), Amount::QuantumSatis);
    formula.add_line(phase, material, Amount::Percent(percent));
    let evaluation = evaluate(&formula, &Bench::default(), catalogue, &mut Makeups::default());
    let contents = Contents::new(&formula, &evaluation, catalogue, knowledge(), Conditions::default());
    check(&contents).iter().any(|finding| finding.code == "preservation.over-limit")
}

#[cfg(test)]
mod tests {
    #[test]
    fn every_limit_of_annex_v_is_what_the_table_says() {
        crate::hold(&super::evidence(), &[("limits.eu-annex-v", 186)]);
    }
}
