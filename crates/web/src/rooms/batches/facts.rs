//! What a run needs to know of materials: their heat, what they bear, what they are.

use crate::session::Session;
use rust_decimal::prelude::ToPrimitive;
use stillroom_catalogue::{Property, Value};
use stillroom_core::run::heat::{Fusion, HeatBasis, specific_heat_of_class};
use stillroom_core::{
    Amount, Class, ConstituentId, Formula, Grams, Line, Makeup, MaterialId, MaterialSource, PhaseKind,
};
use stillroom_exchange::batch::UsedMaterial;

/// Water of the catalogue: what is put back.
pub(crate) const WATER: MaterialId = MaterialId::Catalogue(1);
/// Composites in composites that are looked into for a specific heat.
const DEEPEST_HEAT: usize = 8;
/// Constituents named for a composite.
const MOST_NAMED: usize = 8;
/// What melts under this is liquid on a warm day, and asks for no warning.
const SOLID_FROM: f64 = 30.0;

impl Session {
    /// A value of a material: the catalogue's.
    fn value_of(&self, material: MaterialId, property: Property) -> Option<Value> {
        let card = self.materials.catalogue().card(material)?;
        card.values.into_iter().find(|value| value.property == property)
    }

    /// Specific heat of a material in kJ/(kg K), and what it rests on.
    pub(crate) fn specific_heat(&self, material: MaterialId) -> (f64, HeatBasis) {
        let class = self.materials.material(material).map_or(Class::Other, |material| material.class);
        match self.known_specific_heat(material, DEEPEST_HEAT) {
            Some(known) => known,
            None => (specific_heat_of_class(class), HeatBasis::OfClass),
        }
    }

    fn known_specific_heat(&self, material: MaterialId, deepest: usize) -> Option<(f64, HeatBasis)> {
        let own = self.value_of(material, Property::SpecificHeat).and_then(|value| value.value?.to_f64());
        if let Some(own) = own {
            return Some((own, HeatBasis::OfMaterial));
        }
        let Makeup::Composite(parts) = &self.materials.material(material)?.makeup else { return None };
        if deepest == 0 {
            return None;
        }
        let typed: f64 = parts.iter().filter_map(|part| typed_percent(part.amount)).sum();
        let mut heat = 0.0;
        for part in parts {
            let share = typed_percent(part.amount).unwrap_or(100.0 - typed) / 100.0;
            let inside = self.known_specific_heat(part.material, deepest - 1).map(|(heat, _)| heat);
            let class = self.materials.material(part.material).map_or(Class::Other, |material| material.class);
            heat += share * inside.unwrap_or_else(|| specific_heat_of_class(class));
        }
        Some((heat, HeatBasis::OfParts))
    }

    /// Highest temperature of the batch at which a material may be added, in °C.
    pub(crate) fn most_bearable(&self, material: MaterialId) -> Option<f64> {
        let value = self.value_of(material, Property::MaxAddTemperature)?;
        value.value.or(value.maximum).or(value.minimum)?.to_f64()
    }

    /// Temperature at which all of a solid material is liquid, in °C.
    pub(crate) fn melts_at(&self, material: MaterialId) -> Option<f64> {
        let value = self.value_of(material, Property::MeltingPoint)?;
        value.maximum.or(value.value)?.to_f64()
    }

    /// What melting a material takes up, where its heat of fusion and its melting point are known.
    pub(crate) fn fusion(&self, material: MaterialId) -> Option<Fusion> {
        let heat = self.value_of(material, Property::HeatOfFusion)?.value?.to_f64()?;
        // Of salts and sugars the phase holds a solution: nothing of them melts at the bench.
        let melts_at = self.melts_at(material).filter(|melts| (SOLID_FROM..100.0).contains(melts))?;
        Some(Fusion { melts_at, heat })
    }

    /// The line of the oil phases that melts last, with its melting point; and lines that are solid by what they are and of
    /// which no melting point is known.
    pub(crate) fn last_to_melt<'a>(&self, formula: &'a Formula) -> (Option<(&'a Line, f64)>, Vec<&'a Line>) {
        let mut last: Option<(&Line, f64)> = None;
        let mut unknown = Vec::new();
        for line in
            formula.phases.iter().filter(|phase| phase.kind == PhaseKind::HeatedOil).flat_map(|phase| &phase.lines)
        {
            match self.melts_at(line.material) {
                Some(melts) if melts > SOLID_FROM && last.is_none_or(|(_, so_far)| melts > so_far) => {
                    last = Some((line, melts));
                }
                None if self.is_solid(line.material) => unknown.push(line),
                Some(_) | None => {}
            }
        }
        (last, unknown)
    }

    fn is_solid(&self, material: MaterialId) -> bool {
        self.materials.material(material).is_some_and(|material| {
            matches!(
                material.class,
                Class::Butter | Class::Wax | Class::FattyAlcohol | Class::FattyAcid | Class::Emulsifier
            )
        })
    }

    /// The line added cool that bears the least heat, and how much; and lines of which nothing is known.
    pub(crate) fn most_sensitive<'a>(&self, formula: &'a Formula) -> (Option<(&'a Line, f64)>, Vec<&'a Line>) {
        let mut least: Option<(&Line, f64)> = None;
        let mut unknown = Vec::new();
        for line in
            formula.phases.iter().filter(|phase| phase.kind == PhaseKind::CoolDown).flat_map(|phase| &phase.lines)
        {
            match self.most_bearable(line.material) {
                Some(bears) if least.is_none_or(|(_, so_far)| bears < so_far) => least = Some((line, bears)),
                Some(_) => {}
                None => unknown.push(line),
            }
        }
        (least, unknown)
    }

    /// Whether a material is water.
    pub(crate) fn is_water(&self, material: MaterialId) -> bool {
        self.materials.material(material).is_some_and(|material| material.class == Class::Water)
    }

    pub(crate) fn is_water_constituent(&self, constituent: ConstituentId) -> bool {
        self.materials.constituent(constituent).is_some_and(|constituent| constituent.class == Class::Water)
    }

    /// The materials of a formula as they stand on the shelf now.
    pub(crate) fn materials_to_use(&mut self, formula: &Formula) -> Vec<UsedMaterial> {
        let lines: Vec<Line> = formula.lines().cloned().collect();
        lines
            .iter()
            .map(|line| {
                let inside = self.makeups.see_through(line.material, &self.materials);
                let inci: Vec<&str> = inside.as_ref().map_or_else(
                    |_| Vec::new(),
                    |inside| inside.largest(MOST_NAMED).iter().map(|(id, _)| self.materials.inci(*id)).collect(),
                );
                let holding = self.materials.holding(line.material);
                UsedMaterial {
                    line: line.id,
                    material: line.material,
                    name: self.materials.name(line.material),
                    inci: inci.join(", "),
                    lot: holding.map(|holding| holding.lot.clone()).unwrap_or_default(),
                    expiry: holding.map(|holding| holding.expiry.clone()).unwrap_or_default(),
                }
            })
            .collect()
    }

    /// How what a formula makes keeps, by the verdict of the checks.
    pub(crate) fn keeping_of(&mut self, formula: &Formula) -> stillroom_core::shelf_life::Keeping {
        use stillroom_core::checks::{Conditions, Contents, preservation};
        let evaluation = stillroom_core::evaluation::evaluate(formula, &self.bench, &self.materials, &mut self.makeups);
        let conditions = Conditions::default();
        let knowledge = stillroom_catalogue::knowledge();
        preservation::keeping(&Contents::new(formula, &evaluation, &self.materials, knowledge, conditions))
    }
}

fn typed_percent(amount: Amount) -> Option<f64> {
    match amount {
        Amount::Percent(percent) => Some(percent.to_physics()),
        Amount::Grams(_) | Amount::QuantumSatis => None,
    }
}

/// A mass computed by physics, in hundredths of a gram.
pub(crate) fn grams_of(value: f64) -> Option<Grams> {
    let value = rust_decimal::Decimal::try_from(value).ok()?;
    Grams::new(value.round_dp(2)).ok()
}
