//! A formula together with everything of the maker's own that it is made of: what a link carries and a reader gets.

use crate::record::OwnMaterial;
use std::collections::BTreeMap;
use stillroom_core::{ConstituentId, Formula, FormulaId, Makeup, MaterialId};

/// A formula with the own materials and other formulas it is made of, however deep they are nested.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Parcel {
    /// Names the formula on the device it comes from.
    pub id: FormulaId,
    /// The formula.
    pub formula: Formula,
    /// Own materials it is made of, directly or through others, in the order they are met.
    pub materials: Vec<OwnMaterial>,
    /// Other formulas it is made of, in the order they are met.
    pub formulas: Vec<(FormulaId, Formula)>,
}

/// Where a maker's own materials and formulas are looked up.
pub trait Shelf {
    /// An own material by its number.
    fn own_material(&self, number: u64) -> Option<&OwnMaterial>;
    /// A formula by its number.
    fn kept_formula(&self, id: FormulaId) -> Option<&Formula>;
}

/// What a formula refers to: materials of its lines and of what is at hand.
pub fn references_of_formula(formula: &Formula) -> impl Iterator<Item = MaterialId> {
    let stock = formula.batch.stock.iter().map(|stock| stock.material);
    formula.lines().map(|line| line.material).chain(stock)
}

/// What an own material refers to.
#[must_use]
pub fn references_of_material(own: &OwnMaterial) -> Vec<MaterialId> {
    let constituent = |id: ConstituentId| match id {
        ConstituentId::Own(number) => Some(MaterialId::Own(number)),
        ConstituentId::Catalogue(_) => None,
    };
    let mut references = vec![own.material.id];
    match &own.material.makeup {
        Makeup::Simple(id) => references.extend(constituent(*id)),
        Makeup::Composite(parts) => references.extend(parts.iter().map(|part| part.material)),
    }
    references.extend(own.constituent.as_ref().and_then(|own| constituent(own.id)));
    references
}

/// Packs a formula with everything it is made of. What it refers to and the shelf does not have stays a reference.
/// `None` if the shelf does not have the formula itself.
#[must_use]
pub fn pack(id: FormulaId, shelf: &impl Shelf) -> Option<Parcel> {
    let formula = shelf.kept_formula(id)?.clone();
    let mut parcel = Parcel { id, formula, materials: Vec::new(), formulas: Vec::new() };
    let mut waiting: std::collections::VecDeque<MaterialId> = references_of_formula(&parcel.formula).collect();
    let mut met = std::collections::BTreeSet::from([id.as_material()]);
    while let Some(reference) = waiting.pop_front() {
        if !met.insert(reference) {
            continue;
        }
        match reference {
            MaterialId::Catalogue(_) => {}
            MaterialId::Own(number) => {
                if let Some(own) = shelf.own_material(number) {
                    waiting.extend(references_of_material(own));
                    parcel.materials.push(own.clone());
                }
            }
            MaterialId::Formula(number) => {
                if let Some(formula) = shelf.kept_formula(FormulaId(number)) {
                    waiting.extend(references_of_formula(formula));
                    parcel.formulas.push((FormulaId(number), formula.clone()));
                }
            }
        }
    }
    Some(parcel)
}

impl Parcel {
    /// Gives everything in it other numbers: whatever `renamed` names is called so from then on, wherever it is used.
    #[must_use]
    pub fn with_other_names(mut self, renamed: &BTreeMap<MaterialId, MaterialId>) -> Self {
        let name = |id: MaterialId| renamed.get(&id).copied().unwrap_or(id);
        let constituent = |id: ConstituentId| match id {
            ConstituentId::Own(number) => match name(MaterialId::Own(number)) {
                MaterialId::Own(number) => ConstituentId::Own(number),
                MaterialId::Catalogue(_) | MaterialId::Formula(_) => id,
            },
            ConstituentId::Catalogue(_) => id,
        };
        let rename_formula = |formula: &mut Formula| {
            for line in formula.phases.iter_mut().flat_map(|phase| &mut phase.lines) {
                line.material = name(line.material);
            }
            for stock in &mut formula.batch.stock {
                stock.material = name(stock.material);
            }
            for finding in &mut formula.set_aside {
                if let Ok(subject) = finding.subject.parse::<MaterialId>() {
                    finding.subject = name(subject).to_string();
                }
            }
        };
        let formula_name = |id: FormulaId| match name(id.as_material()) {
            MaterialId::Formula(number) => FormulaId(number),
            MaterialId::Catalogue(_) | MaterialId::Own(_) => id,
        };
        self.id = formula_name(self.id);
        rename_formula(&mut self.formula);
        for (id, formula) in &mut self.formulas {
            *id = formula_name(*id);
            rename_formula(formula);
        }
        for own in &mut self.materials {
            own.material.id = name(own.material.id);
            match &mut own.material.makeup {
                Makeup::Simple(id) => *id = constituent(*id),
                Makeup::Composite(parts) => {
                    for part in parts {
                        part.material = name(part.material);
                    }
                }
            }
            if let Some(own) = &mut own.constituent {
                own.id = constituent(own.id);
            }
        }
        self
    }
}
