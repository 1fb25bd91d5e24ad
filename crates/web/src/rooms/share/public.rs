//! What of a formula others may see: the formula with all it is made of, without what its maker keeps to himself.

use std::collections::BTreeMap;
use stillroom_core::batch_plan::BatchWay;
use stillroom_core::{Formula, FormulaId, MaterialId};
use stillroom_exchange::parcel::{Parcel, Shelf, pack};
use stillroom_exchange::record::OwnMaterial;

/// Copies that may be seen.
struct Copies {
    formulas: BTreeMap<FormulaId, Formula>,
    materials: BTreeMap<u64, OwnMaterial>,
}

impl Shelf for Copies {
    fn own_material(&self, number: u64) -> Option<&OwnMaterial> {
        self.materials.get(&number)
    }

    fn kept_formula(&self, id: FormulaId) -> Option<&Formula> {
        self.formulas.get(&id)
    }
}

/// A formula without what is at hand and why findings were set aside.
pub(crate) fn formula_for_others(formula: &Formula) -> Formula {
    let mut copy = formula.clone();
    copy.batch.stock.clear();
    if copy.batch.way == BatchWay::Stock {
        copy.batch.way = BatchWay::Mass;
    }
    for aside in &mut copy.set_aside {
        aside.reason.clear();
    }
    copy
}

/// An own material without its notes: who sells it is noted there.
pub(crate) fn material_for_others(own: &OwnMaterial) -> OwnMaterial {
    OwnMaterial { note: String::new(), ..own.clone() }
}

/// What of a formula, and of all it is made of, may be seen; `seen` makes of each formula what of it may.
pub(crate) fn parcel_for_others(
    id: FormulaId,
    shelf: &impl Shelf,
    seen: impl Fn(&Formula) -> Formula,
) -> Option<Parcel> {
    let all = pack(id, shelf)?;
    let mut copies = Copies { formulas: BTreeMap::new(), materials: BTreeMap::new() };
    for (id, formula) in all.formulas.iter().chain([&(all.id, all.formula.clone())]) {
        copies.formulas.insert(*id, seen(formula));
    }
    for own in &all.materials {
        if let MaterialId::Own(number) = own.material.id {
            copies.materials.insert(number, material_for_others(own));
        }
    }
    // What only the stock referred to is not met this time.
    pack(id, &copies)
}
