//! Every material this maker can weigh: the catalogue, their own, and their other formulas.

use crate::messages::names;
use litemap::LiteMap;
use std::rc::Rc;
use stillroom_catalogue::{Catalogue, Confidence, Favour, Field, Filter, IndexEntry, MaterialIndex, Recognised};
use stillroom_core::{
    Class, Constituent, ConstituentId, Formula, FormulaId, Makeup, Material, MaterialId, MaterialSource, Part,
    PhaseKind,
};
use stillroom_exchange::holding::Holding;
use stillroom_exchange::record::OwnMaterial;

/// Most answers a search hands out.
const MOST_HITS: usize = 60;

/// Every material at hand.
pub(crate) struct Materials {
    catalogue: &'static Catalogue,
    own: LiteMap<u64, Rc<OwnMaterial>>,
    formulas: LiteMap<u64, Material>,
    holdings: LiteMap<MaterialId, Rc<Holding>>,
    /// Materials of the catalogue with a density that the maker measured.
    measured: LiteMap<MaterialId, Material>,
    /// Built at the first search after a change.
    index: Option<MaterialIndex>,
}

impl MaterialSource for Materials {
    fn material(&self, id: MaterialId) -> Option<&Material> {
        match id {
            MaterialId::Catalogue(_) => self.measured.get(&id).or_else(|| self.catalogue.material(id)),
            MaterialId::Own(number) => self.own.get(&number).map(|own| &own.material),
            MaterialId::Formula(number) => self.formulas.get(&number),
        }
    }

    fn constituent(&self, id: ConstituentId) -> Option<&Constituent> {
        match id {
            ConstituentId::Catalogue(_) => self.catalogue.constituent(id),
            ConstituentId::Own(number) => self.own.get(&number).and_then(|own| own.constituent.as_ref()),
        }
    }
}

impl Materials {
    pub(crate) fn new() -> Self {
        Self {
            catalogue: Catalogue::for_main_job(),
            own: LiteMap::new(),
            formulas: LiteMap::new(),
            holdings: LiteMap::new(),
            measured: LiteMap::new(),
            index: None,
        }
    }

    /// Takes in cards, and what else a search may look for.
    pub(crate) fn take_whole_catalogue(&mut self) {
        self.catalogue = Catalogue::get();
        self.index = None;
    }

    pub(crate) fn catalogue(&self) -> &'static Catalogue {
        self.catalogue
    }

    pub(crate) fn own(&self) -> impl Iterator<Item = (u64, &Rc<OwnMaterial>)> {
        self.own.iter().map(|(number, own)| (*number, own))
    }

    pub(crate) fn own_material(&self, number: u64) -> Option<&Rc<OwnMaterial>> {
        self.own.get(&number)
    }

    pub(crate) fn set_own(&mut self, number: u64, own: Option<Rc<OwnMaterial>>) {
        match own {
            Some(own) => self.own.insert(number, own),
            None => self.own.remove(&number),
        };
        self.index = None;
    }

    /// What the maker has of a material.
    pub(crate) fn holding(&self, id: MaterialId) -> Option<&Rc<Holding>> {
        self.holdings.get(&id)
    }

    pub(crate) fn holdings(&self) -> impl Iterator<Item = &Holding> {
        self.holdings.values().map(|holding| &**holding)
    }

    /// What the maker has, by material.
    pub(crate) fn kept_holdings(&self) -> impl Iterator<Item = (MaterialId, &Rc<Holding>)> {
        self.holdings.iter().map(|(material, holding)| (*material, holding))
    }

    pub(crate) fn set_holding(&mut self, id: MaterialId, holding: Option<Rc<Holding>>) {
        self.measured.remove(&id);
        let Some(holding) = holding else {
            self.holdings.remove(&id);
            return;
        };
        if let (Some(density), Some(material)) = (holding.density, self.catalogue.material(id)) {
            self.measured.insert(id, Material { density: Some(density), ..material.clone() });
        }
        self.holdings.insert(id, holding);
    }

    /// Takes a formula in as a material of others, or out.
    pub(crate) fn set_formula(&mut self, id: FormulaId, formula: Option<&Formula>) {
        let Some(formula) = formula else {
            self.formulas.remove(&id.0);
            self.index = None;
            return;
        };
        let parts = formula.lines().map(|line| Part { material: line.material, amount: line.amount }).collect();
        match self.formulas.get_mut(&id.0) {
            Some(material) if material.name == formula.name => material.makeup = Makeup::Composite(parts),
            _ => {
                let material = Material {
                    id: id.as_material(),
                    name: formula.name.clone(),
                    class: Class::Other,
                    usual_phase: PhaseKind::RoomTemperature,
                    density: None,
                    makeup: Makeup::Composite(parts),
                };
                self.formulas.insert(id.0, material);
                self.index = None;
            }
        }
    }

    /// Name of a material, or its reference where nothing is known under it.
    pub(crate) fn name(&self, id: MaterialId) -> String {
        let local = match id {
            MaterialId::Catalogue(number) => names::of_material(number),
            MaterialId::Own(_) | MaterialId::Formula(_) => None,
        };
        match (local, self.material(id)) {
            (Some((name, _)), Some(_)) => name.to_owned(),
            (_, Some(material)) => material.name.clone(),
            (_, None) => id.to_string(),
        }
    }

    /// INCI name of a constituent, or nothing where nothing is known under it.
    pub(crate) fn inci(&self, id: ConstituentId) -> &str {
        self.constituent(id).map_or("", |constituent| constituent.inci.as_str())
    }

    /// Materials that answer a query, best first.
    pub(crate) fn search(&mut self, query: &str, filter: &Filter, favour: &Favour) -> Vec<MaterialId> {
        if self.index.is_none() {
            self.index = Some(self.build_index());
        }
        let Some(index) = &self.index else { return Vec::new() };
        index.search_favouring(query, filter, favour).into_iter().take(MOST_HITS).map(|hit| hit.id).collect()
    }

    /// What a name in a recipe may mean.
    pub(crate) fn recognise(&mut self, name: &str) -> Recognised {
        if self.index.is_none() {
            self.index = Some(self.build_index());
        }
        let unknown = Recognised { confidence: Confidence::Unknown, materials: Vec::new() };
        self.index.as_ref().map_or(unknown, |index| index.recognise(name, &|id| self.name(id)))
    }

    fn build_index(&self) -> MaterialIndex {
        let own = self.own.values().map(|own| {
            let mut texts = vec![(Field::Name, own.material.name.as_str().into())];
            match &own.material.makeup {
                Makeup::Simple(constituent) => texts.push((Field::Inci, self.inci(*constituent).into())),
                Makeup::Composite(parts) => {
                    texts.extend(parts.iter().map(|part| (Field::Inside, self.name(part.material).into())));
                }
            }
            let Material { id, class, usual_phase, .. } = own.material;
            IndexEntry { id, class, usual_phase, texts }
        });
        let formulas = self.formulas.values().map(|formula| IndexEntry {
            id: formula.id,
            class: formula.class,
            usual_phase: formula.usual_phase,
            texts: vec![(Field::Name, formula.name.as_str().into())],
        });
        // What a material is called in the language of the page is its name; the English name is found as another.
        let catalogue = self.catalogue.index_entries().map(|mut entry| {
            let MaterialId::Catalogue(number) = entry.id else { return entry };
            let Some((name, others)) = names::of_material(number) else { return entry };
            for (field, _) in &mut entry.texts {
                if *field == Field::Name {
                    *field = Field::OtherName;
                }
            }
            let others = others.split("; ").filter(|name| !name.is_empty());
            entry.texts.extend(others.map(|name| (Field::OtherName, name.into())));
            entry.texts.insert(0, (Field::Name, name.into()));
            entry
        });
        // Of equally good answers the maker's own come first.
        MaterialIndex::build(own.chain(formulas).chain(catalogue))
    }
}
