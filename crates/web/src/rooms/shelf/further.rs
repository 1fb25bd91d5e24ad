//! The examples beyond the one of the first visit: invented scenarios, marked as invented, each of which teaches one thing. What
//! the checks should say of each stands in `crates/web/tests/examples.rs`.

use crate::messages::{examples as says, sentences};
use crate::rooms::shelf::command::Example;
use crate::rooms::shelf::example::percent;
use rust_decimal::{Decimal, dec};
use stillroom_core::batch_plan::BatchPlan;
use stillroom_core::{Amount, Celsius, Formula, Grams, MaterialId, Ph, PhaseKind, Purpose};

/// Catalogue numbers of what the examples are made of.
mod number {
    pub(super) const WATER: u32 = 1;
    pub(super) const GLYCERIN: u32 = 2;
    pub(super) const JOJOBA_OIL: u32 = 11;
    pub(super) const SHEA_BUTTER: u32 = 12;
    pub(super) const SODIUM_BENZOATE: u32 = 26;
    pub(super) const POTASSIUM_SORBATE: u32 = 27;
    pub(super) const TOCOPHEROL: u32 = 36;
    pub(super) const ROSE_HYDROSOL: u32 = 40;
    pub(super) const SWEET_ALMOND_OIL: u32 = 46;
    pub(super) const BEESWAX: u32 = 56;
    pub(super) const PENTYLENE_GLYCOL: u32 = 74;
    pub(super) const CITRIC_ACID_50: u32 = 128;
    pub(super) const CITRIC_ACID_10: u32 = 129;
    pub(super) const PANTHENOL_75: u32 = 133;
    pub(super) const XANTHAN_SLURRY: u32 = 138;
    pub(super) const COCO_GLUCOSIDE_51: u32 = 161;
    pub(super) const COCAMIDOPROPYL_BETAINE_30: u32 = 163;
}

/// Percent of a line, or the rest.
const REST: Option<Decimal> = None;

/// A phase: its name where it has one of its own, how it is handled, its temperature, its lines.
type Told<'a> = (Option<&'static str>, PhaseKind, Option<Decimal>, &'a [(u32, Option<Decimal>)]);

/// The formula of a further example; of the first, an empty one of no name.
pub(super) fn further_example(example: Example) -> Formula {
    match example {
        Example::GelCream => Formula::default(),
        Example::Balm => balm(),
        Example::Toner => toner(),
        Example::CleansingGel => cleansing_gel(),
    }
}

fn balm() -> Formula {
    let melted: &[_] = &[
        (number::SWEET_ALMOND_OIL, REST),
        (number::JOJOBA_OIL, Some(dec!(15))),
        (number::SHEA_BUTTER, Some(dec!(20))),
        (number::BEESWAX, Some(dec!(16))),
    ];
    let cooled: &[_] = &[(number::TOCOPHEROL, Some(dec!(0.5)))];
    let mut formula = formula(
        says::balm(),
        &[(None, PhaseKind::HeatedOil, Some(dec!(70)), melted), (None, PhaseKind::CoolDown, Some(dec!(50)), cooled)],
    );
    tell(&mut formula, &[says::balm_melt(), says::balm_cool(), says::balm_fill()], says::balm_notes(), dec!(120));
    formula
}

fn toner() -> Formula {
    let water: &[_] = &[
        (number::WATER, REST),
        (number::ROSE_HYDROSOL, Some(dec!(20))),
        (number::GLYCERIN, Some(dec!(3))),
        (number::PENTYLENE_GLYCOL, Some(dec!(3))),
        (number::PANTHENOL_75, Some(dec!(1))),
        (number::SODIUM_BENZOATE, Some(dec!(0.4))),
        (number::POTASSIUM_SORBATE, Some(dec!(0.2))),
    ];
    let acid: &[_] = &[(number::CITRIC_ACID_10, Some(dec!(1.8)))];
    let mut formula = formula(
        says::toner(),
        &[
            (None, PhaseKind::RoomTemperature, None, water),
            (Some(says::toner_phase_acid()), PhaseKind::RoomTemperature, None, acid),
        ],
    );
    formula.target_ph = Ph::new(dec!(4.6)).ok();
    tell(
        &mut formula,
        &[says::toner_dissolve(), says::toner_acid(), says::toner_fill()],
        says::toner_notes(),
        dec!(200),
    );
    formula
}

fn cleansing_gel() -> Formula {
    let gel: &[_] = &[
        (number::WATER, REST),
        (number::SODIUM_BENZOATE, Some(dec!(0.5))),
        (number::POTASSIUM_SORBATE, Some(dec!(0.2))),
        (number::XANTHAN_SLURRY, Some(dec!(5))),
    ];
    let surfactants: &[_] =
        &[(number::COCAMIDOPROPYL_BETAINE_30, Some(dec!(15))), (number::COCO_GLUCOSIDE_51, Some(dec!(10)))];
    let finish: &[_] = &[(number::PANTHENOL_75, Some(dec!(0.7))), (number::CITRIC_ACID_50, Some(dec!(0.4)))];
    let mut formula = formula(
        says::gel(),
        &[
            (Some(says::gel_phase_gel()), PhaseKind::RoomTemperature, None, gel),
            (Some(says::gel_phase_surfactants()), PhaseKind::RoomTemperature, None, surfactants),
            (Some(says::gel_phase_finish()), PhaseKind::RoomTemperature, None, finish),
        ],
    );
    formula.purpose = Purpose::RinseOff;
    formula.target_ph = Ph::new(dec!(4.8)).ok();
    tell(&mut formula, &[says::gel_swell(), says::gel_fold(), says::gel_ph()], says::gel_notes(), dec!(250));
    formula
}

/// A formula of a name with its phases.
fn formula(name: &str, phases: &[Told]) -> Formula {
    let mut formula = Formula::with_name(name);
    for (name, kind, temperature, lines) in phases {
        let name = name.unwrap_or_else(|| sentences::phase_name(*kind));
        let id = formula.add_phase(name, *kind, temperature.and_then(|degrees| Celsius::new(degrees).ok()));
        for (number, share) in *lines {
            let amount = share.map_or(Amount::QuantumSatis, percent);
            formula.add_line(id, MaterialId::Catalogue(*number), amount);
        }
    }
    formula
}

/// Its method, its notes and how much of it is made.
fn tell(formula: &mut Formula, steps: &[&str], notes: &str, grams: Decimal) {
    formula.steps = steps.iter().map(|step| (*step).to_owned()).collect();
    notes.clone_into(&mut formula.notes);
    formula.batch = BatchPlan { mass: Grams::new(grams).unwrap_or(Grams::ZERO), ..BatchPlan::default() };
}
