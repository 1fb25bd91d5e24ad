//! Materials as the page shows them.

use crate::contract::ValueView;
use crate::lazy::lazy;
use crate::messages::names::word;
use crate::messages::sentences;
use crate::rooms::materials::sentences as sentences_material;
use crate::rooms::materials::view::{BringsView, MaterialHit, MaterialView, Origin, PartView};
use crate::session::Session;
use rust_decimal::Decimal;
use stillroom_catalogue::{Basis, MaterialCard, Property, Value};
use stillroom_core::balance::{Balance, balance};
use stillroom_core::number::{align, write_between, write_fixed};

use stillroom_core::{Amount, LineId, Makeup, Material, MaterialId, MaterialSource, Part, WrittenIn};

/// Decimals of a part or constituent.
const DECIMALS: (u32, u32) = (2, 4);

impl Session {
    pub(crate) fn present_hit(&self, id: MaterialId) -> MaterialHit {
        let origin = match id {
            MaterialId::Catalogue(_) => Origin::Catalogue,
            MaterialId::Own(_) => Origin::Own,
            MaterialId::Formula(_) => Origin::Formula,
        };
        let about = self.materials.material(id).map_or_else(String::new, |material| {
            let inci = match &material.makeup {
                Makeup::Simple(constituent) => self.materials.inci(*constituent),
                Makeup::Composite(_) => "",
            };
            sentences::about_material(material, inci, origin)
        });
        MaterialHit { id: id.to_string(), name: self.materials.name(id), about, origin }
    }

    pub(crate) fn present_own_materials(&self) -> Vec<MaterialHit> {
        let mut own: Vec<MaterialHit> =
            self.materials.own().map(|(number, _)| self.present_hit(MaterialId::Own(number))).collect();
        own.sort_by_key(|hit| hit.name.to_ascii_lowercase());
        own
    }

    pub(crate) fn present_open_material(&mut self) -> MaterialView {
        let Some(id) = self.open_material else { return MaterialView::default() };
        let Some(material) = self.materials.material(id).cloned() else { return MaterialView::default() };
        let mark = self.mark();
        let own = match id {
            MaterialId::Own(number) => self.materials.own_material(number).cloned(),
            MaterialId::Catalogue(_) | MaterialId::Formula(_) => None,
        };
        let card = self.materials.catalogue().card(id);
        let mut problems = Vec::new();
        let mut constituents = Vec::new();
        match self.makeups.see_through(id, &self.materials) {
            Ok(inside) if matches!(material.makeup, Makeup::Composite(_)) => {
                constituents = inside
                    .most_first()
                    .into_iter()
                    .map(|(constituent, percent)| BringsView {
                        inci: sentences::inci_or_unnamed(self.materials.inci(constituent)).to_owned(),
                        percent: align(write_fixed(percent, DECIMALS.1, mark), DECIMALS.1, DECIMALS.1),
                    })
                    .collect();
            }
            Ok(_) => {}
            Err(error) => problems.push(sentences::composition_error(&error, &|id| self.materials.name(id))),
        }
        let (parts, parts_total) = self.present_parts(&material);
        MaterialView {
            id: Some(id.to_string()),
            own: own.is_some(),
            composite: matches!(material.makeup, Makeup::Composite(_)),
            name: self.materials.name(id),
            inci: match &material.makeup {
                Makeup::Simple(constituent) => self.materials.inci(*constituent).to_owned(),
                Makeup::Composite(_) => String::new(),
            },
            class: Some(material.class),
            class_label: sentences::class(material.class).to_owned(),
            phase_kind: Some(material.usual_phase),
            phase_label: sentences::phase_name(material.usual_phase).to_owned(),
            density: material.density.map_or_else(String::new, |density| write_between(density.value(), 2, 4, mark)),
            note: own.as_ref().map(|own| own.note.clone()).unwrap_or_default(),
            parts,
            parts_total,
            problems,
            constituents,
            values: self.present_own_values(id, card.map(|card| self.present_values(&card)).unwrap_or_default()),
            used_in: self.users_of(id),
            holding: self.present_holding(id),
        }
    }

    fn present_parts(&self, material: &Material) -> (Vec<PartView>, String) {
        let Makeup::Composite(parts) = &material.makeup else { return (Vec::new(), String::new()) };
        let mark = self.mark();
        let Balance { shares, total, .. } = balance_of(parts);
        let number = |value: Decimal| write_between(value, DECIMALS.0, DECIMALS.1, mark);
        let views = parts
            .iter()
            .zip(&shares)
            .map(|(part, share)| PartView {
                material: part.material.to_string(),
                name: self.materials.name(part.material),
                amount: match part.amount {
                    Amount::Percent(percent) => number(percent.value()),
                    Amount::QuantumSatis | Amount::Grams(_) => number(share.percent.value()),
                },
                percent: number(share.percent.value()),
                quantum_satis: share.quantum_satis,
            })
            .collect();
        (views, number(total.value()))
    }

    fn present_values(&self, card: &MaterialCard<'_>) -> Vec<ValueView> {
        let mut values: Vec<ValueView> = card.values.iter().map(|value| self.present_value(value)).collect();
        if !card.cas.is_empty() {
            values.insert(0, present_identity("CAS", card.cas.join(", "), card));
        }
        values.extend(present_fat(self, card.material.id));
        values
    }

    /// What the fatty acids of a fat say of it, where they are known.
    fn present_fatty_acids(&self, material: MaterialId) -> Vec<ValueView> {
        use rust_decimal::prelude::FromPrimitive;
        let Some((fat, basis)) = stillroom_catalogue::reference::fat_profile(material) else { return Vec::new() };
        let number = |value: f64, unit| {
            let text = write_fixed(Decimal::from_f64(value).unwrap_or_default(), 0, self.mark());
            sentences_material::with_unit(&text, unit)
        };
        let lines = [
            (Property::SaponificationValue, number(fat.saponification_value(), Property::SaponificationValue.unit())),
            (Property::IodineValue, number(fat.iodine_value(), Property::IodineValue.unit())),
        ];
        let line = |label: String, value: String| ValueView {
            label,
            value,
            source: crate::messages::materials::from_fatty_acids().to_owned(),
            // No better than the recalled profile it rests on.
            basis: sentences_material::basis(basis.max(Basis::Computed)).to_owned(),
        };
        let mut views: Vec<ValueView> =
            lines.into_iter().map(|(property, value)| line(sentences_material::property(property), value)).collect();
        let class = sentences_material::oxidation(fat.oxidation_class());
        views.push(line(crate::messages::materials::takes_up_oxygen().to_owned(), class.to_owned()));
        views
    }

    fn present_value(&self, value: &Value) -> ValueView {
        let mark = self.mark();
        let number = |number: Decimal| write_between(number.round_dp(6), 0, 6, mark);
        let figure = match (value.word(), value.value, value.minimum, value.maximum) {
            (Some(said), ..) => word(said).to_owned(),
            (None, Some(figure), None, None) => number(figure),
            (None, Some(figure), Some(low), Some(high)) => {
                crate::messages::materials::figure_in_range(&number(figure), &number(low), &number(high))
            }
            (None, None, Some(low), Some(high)) => crate::messages::materials::range(&number(low), &number(high)),
            (None, figure, low, high) => {
                [figure, low, high].into_iter().flatten().map(number).collect::<Vec<_>>().join(" \u{2026} ")
            }
        };
        let figure = sentences_material::with_unit(&figure, value.property.unit());
        ValueView {
            label: sentences_material::property(value.property),
            value: sentences_material::value_with_conditions(&figure, value.conditions, value.note),
            source: sentences_material::source(value.origin.source.citation, value.origin.locator),
            basis: sentences_material::basis(value.origin.basis).to_owned(),
        }
    }
}

// The table of fatty acids is fetched with the cards, not with the page.
lazy! {
    whole "97" fn present_fat(session: &Session, material: MaterialId) -> Vec<ValueView> {
        session.present_fatty_acids(material)
    } else { Vec::new() }
}

fn balance_of(parts: &[Part]) -> Balance {
    let amounts: Vec<(LineId, Amount)> = (0u32..).map(LineId).zip(parts.iter().map(|part| part.amount)).collect();
    balance(&amounts, WrittenIn::Percent)
}

fn present_identity(label: &str, value: String, card: &MaterialCard<'_>) -> ValueView {
    let origin = card.details.origin;
    ValueView {
        label: label.to_owned(),
        value,
        source: sentences_material::source(origin.source.citation, origin.locator),
        basis: sentences_material::basis(origin.basis).to_owned(),
    }
}
