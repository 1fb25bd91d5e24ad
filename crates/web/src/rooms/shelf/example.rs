//! The example on the shelf at the first visit: an invented scenario, marked as invented, in the language the page had when it
//! was put there.

use crate::contract::Answer;
use crate::lazy::lazy;
use crate::messages::sentences;
use crate::messages::shelf as says;
use crate::rooms::formula::edit::made;
use crate::rooms::shelf::command::Example;
use crate::rooms::shelf::further::further_example;
use crate::session::Session;
use crate::session::history::Slot;
use litemap::LiteMap;
use rust_decimal::{Decimal, dec};
use std::rc::Rc;
use stillroom_core::batch_plan::{BatchPlan, Stock};
use stillroom_core::{
    Amount, Celsius, Class, Density, Formula, FormulaId, Grams, Makeup, Material, MaterialId, Part, Percent, Ph,
    PhaseKind,
};
use stillroom_exchange::extract::{Extract, ExtractId, ExtractKind, ExtractRecord, Step};
use stillroom_exchange::record::{FormulaRecord, OwnMaterial};

/// Numbers of the example's records, the same on every device.
const EXAMPLE: FormulaId = FormulaId(0x0000_0000_0cc0_0a7e);
const GLYCERITE: u64 = 0x0000_0000_0cc0_0007;
const EXTRACT: ExtractId = ExtractId(0x0000_0000_0cc0_0e71);

/// Catalogue numbers of what the example is made of.
mod number {
    pub(super) const WATER: u32 = 1;
    pub(super) const GLYCERIN: u32 = 2;
    pub(super) const BETAINE: u32 = 3;
    pub(super) const ALLANTOIN: u32 = 5;
    pub(super) const SUNFLOWER_OIL: u32 = 8;
    pub(super) const SQUALANE: u32 = 9;
    pub(super) const ROSEHIP_OIL: u32 = 10;
    pub(super) const CETYL_ALCOHOL: u32 = 13;
    pub(super) const XANTHAN_GUM: u32 = 22;
    pub(super) const SODIUM_BENZOATE: u32 = 26;
    pub(super) const POTASSIUM_SORBATE: u32 = 27;
    pub(super) const CUCUMBER_EXTRACT: u32 = 39;
    pub(super) const OLIVATES: u32 = 119;
    pub(super) const BETA_GLUCAN_SOLUTION: u32 = 134;
}

pub(super) fn percent(value: Decimal) -> Amount {
    Percent::new(value).map_or(Amount::QuantumSatis, Amount::Percent)
}

/// A fresh-cucumber glycerite of 65 % glycerin, as this bench made it.
fn glycerite() -> OwnMaterial {
    let part = |number, amount| Part { material: MaterialId::Catalogue(number), amount };
    OwnMaterial {
        material: Material {
            id: MaterialId::Own(GLYCERITE),
            name: says::example_glycerite().to_owned(),
            class: Class::Extract,
            usual_phase: PhaseKind::HeatedWater,
            density: Density::new(dec!(1.17)).ok(),
            makeup: Makeup::Composite(vec![
                part(number::GLYCERIN, percent(dec!(65))),
                part(number::CUCUMBER_EXTRACT, percent(dec!(0.8))),
                part(number::WATER, Amount::QuantumSatis),
            ]),
        },
        constituent: None,
        note: says::example_extract_note().to_owned(),
    }
}

/// How that glycerite was made: fresh cucumber in glycerin, then strengthened to 65 %.
fn glycerite_made() -> Extract {
    let poured = Grams::new(dec!(48.2)).ok().zip(Percent::new(dec!(99.5)).ok());
    let mut values = LiteMap::new();
    for (field, value) in [
        ("plant", "cucumber/fruit with peel/fresh"),
        ("plant-mass", "300"),
        ("glycerin", "500"),
        ("made-on", "2026-03-01"),
        ("lot", "7"),
        ("optical-value", "50.2"),
        ("note", says::example_extract_note()),
    ] {
        values.insert(field.to_owned(), value.to_owned());
    }
    values.insert("material".to_owned(), MaterialId::Own(GLYCERITE).to_string());
    Extract {
        kind: ExtractKind::Glycerite,
        name: says::example_extract().to_owned(),
        values,
        blend: None,
        steps: poured.map(|(mass, purity)| Step::Glycerin(mass, purity)).into_iter().collect(),
    }
}

/// The cucumber and oat gel cream.
fn gel_cream() -> Formula {
    let mut formula = Formula::with_name(says::example_formula());
    let degrees = |value| Celsius::new(value).ok();
    let mut phase = |kind, temperature, lines: &[(MaterialId, Amount)]| {
        let id = formula.add_phase(sentences::phase_name(kind), kind, degrees(temperature));
        for (material, amount) in lines {
            formula.add_line(id, *material, *amount);
        }
    };
    let catalogue = MaterialId::Catalogue;
    phase(
        PhaseKind::HeatedWater,
        dec!(70),
        &[
            (catalogue(number::WATER), Amount::QuantumSatis),
            (MaterialId::Own(GLYCERITE), percent(dec!(12))),
            (catalogue(number::BETAINE), percent(dec!(2))),
            (catalogue(number::ALLANTOIN), percent(dec!(0.3))),
            (catalogue(number::XANTHAN_GUM), percent(dec!(0.4))),
        ],
    );
    phase(
        PhaseKind::HeatedOil,
        dec!(70),
        &[
            (catalogue(number::SUNFLOWER_OIL), percent(dec!(7))),
            (catalogue(number::SQUALANE), percent(dec!(4))),
            (catalogue(number::OLIVATES), percent(dec!(4))),
            (catalogue(number::CETYL_ALCOHOL), percent(dec!(1.3))),
        ],
    );
    phase(
        PhaseKind::CoolDown,
        dec!(40),
        &[
            (catalogue(number::BETA_GLUCAN_SOLUTION), percent(dec!(5))),
            (catalogue(number::ROSEHIP_OIL), percent(dec!(1))),
            (catalogue(number::SODIUM_BENZOATE), percent(dec!(0.4))),
            (catalogue(number::POTASSIUM_SORBATE), percent(dec!(0.2))),
        ],
    );
    formula.target_ph = Ph::new(dec!(4.8)).ok();
    formula.steps = [
        says::example_step_gum(),
        says::example_step_heat(),
        says::example_step_blend(),
        says::example_step_cool(),
        says::example_step_ph(),
    ]
    .map(str::to_owned)
    .to_vec();
    formula.notes.push_str(says::example_notes());
    formula.batch = BatchPlan {
        mass: Grams::new(dec!(210)).unwrap_or(Grams::ZERO),
        stock: Grams::new(dec!(8.5))
            .map(|available| vec![Stock { material: catalogue(number::ROSEHIP_OIL), available }])
            .unwrap_or_default(),
        ..BatchPlan::default()
    };
    formula
}

impl Session {
    /// Opens an example. One that is not on the shelf is put there; one that is, changed or not, is left as it is.
    pub(crate) fn see_example(&mut self, example: Example) -> Answer {
        let id = match example {
            Example::GelCream => EXAMPLE,
            Example::Balm => FormulaId(0x0000_0000_0cc0_0a7f),
            Example::Toner => FormulaId(0x0000_0000_0cc0_0a80),
            Example::CleansingGel => FormulaId(0x0000_0000_0cc0_0a81),
        };
        if self.shelf.contains_key(&id) {
            self.open = Some(id);
        } else if example == Example::GelCream {
            self.put_example();
        } else {
            put_further(self, id, example);
        }
        self.open.map_or_else(Answer::default, |id| made(&id))
    }

    /// Puts the first example on the shelf and opens it.
    pub(crate) fn put_example(&mut self) {
        let id = EXAMPLE;
        let glycerite_before = self.materials.own_material(GLYCERITE).map(Rc::clone);
        let glycerite_after = glycerite_before.clone().unwrap_or_else(|| Rc::new(glycerite()));
        let extract_before = self.extracts.get(&EXTRACT).map(Rc::clone);
        let extract_after = extract_before.clone().unwrap_or_else(|| self.example_extract());
        let record = FormulaRecord { id, revision: 0, changed_at: self.around.now(), formula: gel_cream() };
        let mut settings = (*self.settings).clone();
        settings.example_shown = true;
        self.commit(
            "formula.example",
            None,
            Some(id),
            vec![
                Slot::Material(GLYCERITE, glycerite_before),
                Slot::Extract(EXTRACT, extract_before),
                Slot::Formula(id, None),
                Slot::Settings(Rc::clone(&self.settings)),
            ],
            vec![
                Slot::Material(GLYCERITE, Some(glycerite_after)),
                Slot::Extract(EXTRACT, Some(extract_after)),
                Slot::Formula(id, Some(Rc::new(record))),
                Slot::Settings(Rc::new(settings)),
            ],
        );
    }
    fn example_extract(&self) -> Rc<ExtractRecord> {
        let (changed_at, extract) = (self.around.now(), glycerite_made());
        Rc::new(ExtractRecord { id: EXTRACT, revision: 0, changed_at, extract })
    }

    /// Puts the example among the extracts and opens it. One that is there already is left as it is.
    pub(crate) fn put_extract_example(&mut self) -> Answer {
        if !self.extracts.contains_key(&EXTRACT) {
            let after = vec![Slot::Extract(EXTRACT, Some(self.example_extract()))];
            self.commit("extract.example", None, self.open, vec![Slot::Extract(EXTRACT, None)], after);
        }
        self.open_extract = Some(EXTRACT);
        made(&EXTRACT)
    }
}

lazy! {
    whole "0b" fn put_further(session: &mut Session, id: FormulaId, example: Example) {
        let record = FormulaRecord { id, revision: 0, changed_at: session.around.now(), formula: further_example(example) };
        let after = vec![Slot::Formula(id, Some(Rc::new(record)))];
        session.commit("formula.example", None, Some(id), vec![Slot::Formula(id, None)], after);
    } else {}
}
