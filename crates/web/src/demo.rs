//! The example on the shelf at the first visit: an invented scenario, marked as invented.

use crate::edit_formula::made;
use crate::history::Slot;
use crate::sentences;
use crate::session::Session;
use crate::view::Answer;
use litemap::LiteMap;
use rust_decimal::{Decimal, dec};
use std::rc::Rc;
use stillroom_core::scaling::{BatchPlan, Stock};
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

fn percent(value: Decimal) -> Amount {
    Percent::new(value).map_or(Amount::QuantumSatis, Amount::Percent)
}

/// A fresh-cucumber glycerite of 65 % glycerin, as this bench made it.
fn glycerite() -> OwnMaterial {
    let part = |number, amount| Part { material: MaterialId::Catalogue(number), amount };
    OwnMaterial {
        material: Material {
            id: MaterialId::Own(GLYCERITE),
            name: "Cucumber glycerite, lot 7 (invented)".to_owned(),
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
        note: "Invented for the example: fresh cucumber steeped in glycerin, pressed after ten days.".to_owned(),
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
        ("note", "Invented for the example: fresh cucumber steeped in glycerin, pressed after ten days."),
    ] {
        values.insert(field.to_owned(), value.to_owned());
    }
    values.insert("material".to_owned(), MaterialId::Own(GLYCERITE).to_string());
    Extract {
        kind: ExtractKind::Glycerite,
        name: "Cucumber glycerite (invented)".to_owned(),
        values,
        blend: None,
        steps: poured.map(|(mass, purity)| Step::Glycerin(mass, purity)).into_iter().collect(),
    }
}

/// The cucumber and oat gel cream.
fn gel_cream() -> Formula {
    let mut formula = Formula::with_name("Cucumber and oat gel cream");
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
        "Scatter the xanthan gum over the glycerite, stir it smooth, then stir in the water, betaine and allantoin.",
        "Heat the water phase and the oil phase to 70 °C in the water bath; weigh the water beaker again and replace what has evaporated.",
        "Pour the oil phase into the water phase and blend for two minutes; stop half-way and scrape the walls.",
        "Stir while it cools; under 40 °C add the cool-down phase, each preservative dissolved in a little of the water first.",
        "Measure the pH and bring it to 4.8 with a few drops of a 10 % citric acid solution.",
    ]
    .map(str::to_owned)
    .to_vec();
    formula.notes.push_str(
        "An invented example. A preservative range is no proof: a product for others needs a challenge test by a \
         laboratory and the assessment the law asks for. Patch test first; keep away from eyes and children.",
    );
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
    /// Puts the example on the shelf and opens it. One that is there already, changed or not, is left as it is.
    pub(crate) fn put_example(&mut self) {
        let id = if self.shelf.contains_key(&EXAMPLE) { self.fresh_formula_id() } else { EXAMPLE };
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
