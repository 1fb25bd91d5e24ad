//! Groups of materials that do one job, as the ranking of substitutes asks for them.

use crate::knowledge::cite;
use crate::reference::{fat_profile, substitute_rows};
use rust_decimal::prelude::ToPrimitive;
use std::collections::BTreeMap;
use std::sync::OnceLock;
use stillroom_core::MaterialId;
use stillroom_core::chemistry::fat::FatProfile;
use stillroom_core::rebuild::substitutes::{Kin, Kinship};

/// The groups of the catalogue's materials.
#[derive(Debug)]
pub struct Groups {
    of: BTreeMap<MaterialId, Vec<Kin>>,
}

/// Every group, put together at the first call.
#[must_use]
pub fn groups() -> &'static Groups {
    static GROUPS: OnceLock<Groups> = OnceLock::new();
    GROUPS.get_or_init(|| {
        let mut of: BTreeMap<MaterialId, Vec<Kin>> = BTreeMap::new();
        for row in substitute_rows() {
            let number = row.material.and_then(|number| number.to_u32());
            let (Some(number), Some(strength)) = (number, row.strength.and_then(|it| it.to_f64())) else { continue };
            let kin = Kin { group: row.group, strength, feel: row.feel, note: row.note, citation: cite(&row.origin) };
            of.entry(MaterialId::Catalogue(number)).or_default().push(kin);
        }
        Groups { of }
    })
}

impl Kinship for Groups {
    fn kin(&self, material: MaterialId) -> &[Kin] {
        self.of.get(&material).map_or(&[], Vec::as_slice)
    }

    fn fat(&self, material: MaterialId) -> Option<FatProfile> {
        fat_profile(material).map(|(profile, _)| profile)
    }
}
