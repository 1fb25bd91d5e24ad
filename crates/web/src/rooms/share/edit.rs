//! Formulas that come from elsewhere as a link, and go there: a reading copy, a comparison, a copy to keep.

use crate::contract::Answer;
use crate::lazy::lazy;
use crate::messages::share as says;
use crate::rooms::formula::edit::{cut_name, cut_text, made};
use crate::rooms::share::command::ShareCommand;
use crate::rooms::share::compare::{Version, compare};
use crate::rooms::share::public::{formula_for_others, material_for_others, parcel_for_others};
use crate::rooms::share::qr;
use crate::rooms::share::reading::{open_parcel, present_reading, refuse};
use crate::rooms::share::sentences;
use crate::rooms::share::view::{ComparisonView, LinkView, ReadingView, Standing};
use crate::session::Session;
use crate::session::history::Slot;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;
use stillroom_core::{Formula, FormulaId, MaterialId};
use stillroom_exchange::link;
use stillroom_exchange::parcel::{Parcel, Shelf, pack, references_of_formula, references_of_material};
use stillroom_exchange::record::{FormulaRecord, OwnMaterial};

impl Shelf for Session {
    fn own_material(&self, number: u64) -> Option<&OwnMaterial> {
        self.materials.own_material(number).map(|own| &**own)
    }

    fn kept_formula(&self, id: FormulaId) -> Option<&Formula> {
        self.shelf.get(&id).map(|record| &record.formula)
    }
}

impl Session {
    /// Reads a link as this maker reads formulas. Nothing is kept, and nothing on the shelf changes.
    #[must_use]
    pub fn read_link(&mut self, text: &str, batch: Option<&str>) -> ReadingView {
        let parcel = match link::read(text) {
            Ok(parcel) => parcel,
            Err(error) => return refuse(error),
        };
        let mut reading = open_parcel(&parcel, (*self.settings).clone(), self.mark());
        let mut view = present_reading(&mut reading, &parcel, batch);
        if let Some(ours) = self.shelf.get(&parcel.id).map(Rc::clone) {
            // What a link leaves out is no difference.
            let is_for_others = formula_for_others(&parcel.formula) == parcel.formula;
            let seen = if is_for_others { formula_for_others(&ours.formula) } else { ours.formula.clone() };
            let comparison = self.compare_with(&seen, &parcel);
            // Only what a link carries can be told apart.
            let written = |ours: Option<Parcel>| ours.and_then(|ours| link::write(&ours).ok());
            let theirs = link::write(&parcel).ok();
            let same = written(pack(parcel.id, self)) == theirs
                || written(parcel_for_others(parcel.id, self, formula_for_others)) == theirs;
            view.standing = if same { Standing::Same } else { Standing::Differs };
            view.comparison = comparison.filter(|_| !same);
        }
        view
    }

    /// What is different in a parcel from a formula of the shelf.
    pub(crate) fn compare_with(&mut self, ours: &Formula, parcel: &Parcel) -> Option<ComparisonView> {
        let mark = self.mark();
        let mut reading = open_parcel(parcel, (*self.settings).clone(), mark);
        let (record, theirs) = reading.evaluate_open()?;
        let evaluation = stillroom_core::evaluation::evaluate(ours, &self.bench, &self.materials, &mut self.makeups);
        let before = Version { formula: ours, evaluation: &evaluation, materials: &self.materials };
        let after = Version { formula: &record.formula, evaluation: &theirs, materials: &reading.materials };
        Some(compare(&before, &after, self.settings.temperature_unit, mark))
    }

    /// A formula of the shelf as a link behind an address, with its code. What its maker keeps to himself is in it only where
    /// that is asked for: what is at hand, notes of own materials, why findings were set aside.
    #[must_use]
    pub fn link_of(&self, id: FormulaId, address: &str, with_notes: bool) -> LinkView {
        let parcels = pack(id, self).zip(parcel_for_others(id, self, formula_for_others));
        let Some((all, seen)) = parcels else {
            return LinkView { error: Some(says::no_formula().to_owned()), ..LinkView::default() };
        };
        let kept_back = match (all == seen, with_notes) {
            (true, _) => "",
            (false, false) => says::notes_left_out(),
            (false, true) => says::notes_carried(),
        };
        let view = write_link(if with_notes { &all } else { &seen }, address);
        LinkView { kept_back: kept_back.to_owned(), ..view }
    }

    /// Puts the formula of a link on the shelf with all it is made of. What is there already stays as it is: whatever
    /// differs gets a name of its own.
    pub(crate) fn act_on_shared(&mut self, command: ShareCommand) -> Answer {
        match command {
            ShareCommand::KeepCopy { link } => self.keep_copy(&link),
            ShareCommand::RestoreVersion { formula, version } => self.restore_version(formula, &version),
            ShareCommand::RestoreBackup { differing } => restore_backup(self, &differing),
        }
    }

    fn keep_copy(&mut self, text: &str) -> Answer {
        let parcel = match link::read(text) {
            Ok(parcel) => parcel,
            Err(error) => {
                let error_text = Some(sentences::unreadable_link(error));
                return Answer { error: error_text, code: Some(error.code()), ..Answer::default() };
            }
        };
        let root = (parcel.id, parcel.formula.clone());
        let formulas: Vec<_> = parcel.formulas.iter().cloned().chain([root]).collect();
        let renamed = names_taken(self, &parcel.materials, &formulas, &CarriedByLinks);
        let is_new_version = renamed.contains_key(&parcel.id.as_material());
        let mut parcel = parcel.with_other_names(&renamed);
        if is_new_version {
            parcel.formula.name = says::name_of_kept_copy(&parcel.formula.name);
        }
        let id = parcel.id;
        if self.shelf.contains_key(&id) {
            self.open = Some(id);
            self.notice("formula.already-kept", says::already_kept(&parcel.formula.name), false);
            return made(&id);
        }
        let name = parcel.formula.name.clone();
        let (before, after) = self.slots_of(parcel);
        self.commit("formula.keep-copy", None, Some(id), before, after);
        self.notice("formula.copy-kept", says::copy_kept(&name), true);
        made(&id)
    }

    /// The records of a parcel that are not on this device, before and after they are put there.
    fn slots_of(&self, parcel: Parcel) -> (Vec<Slot>, Vec<Slot>) {
        let (mut before, mut after) = (Vec::new(), Vec::new());
        for mut own in parcel.materials {
            if let MaterialId::Own(number) = own.material.id
                && self.own_material(number).is_none()
            {
                own.material.name = cut_name(&own.material.name);
                own.note = cut_text(&own.note);
                before.push(Slot::Material(number, None));
                after.push(Slot::Material(number, Some(Rc::new(own))));
            }
        }
        let changed_at = self.around.now();
        for (id, formula) in parcel.formulas.into_iter().chain([(parcel.id, parcel.formula)]) {
            if self.kept_formula(id).is_none() {
                let record = FormulaRecord { id, revision: 0, changed_at, formula: with_usual_lengths(formula) };
                before.push(Slot::Formula(id, None));
                after.push(Slot::Formula(id, Some(Rc::new(record))));
            }
        }
        (before, after)
    }
}

/// A parcel as a link behind an address, with its code.
pub(crate) fn write_link(parcel: &Parcel, address: &str) -> LinkView {
    let name = parcel.formula.name.clone();
    let fragment = match link::write(parcel) {
        Ok(fragment) => fragment,
        Err(error) => return LinkView { error: Some(sentences::no_link(error)), name, ..LinkView::default() },
    };
    let address = format!("{}#{fragment}", address.split('#').next().unwrap_or_default());
    let characters = address.chars().count();
    let code = qr::draw(&address);
    let code_problem = if code.is_none() {
        says::no_code(&characters.to_string(), &qr::MOST_BYTES.to_string())
    } else {
        String::new()
    };
    LinkView {
        error: None,
        name,
        about: sentences::link_length(characters),
        kept_back: String::new(),
        address,
        fragment,
        code,
        code_problem,
    }
}

/// Whether a record that comes in is one that is here.
pub(crate) trait Likeness {
    fn is_material(&self, ours: &OwnMaterial, theirs: &OwnMaterial) -> bool;
    fn is_formula(&self, ours: &Formula, theirs: &Formula) -> bool;
}

/// All of them is the same, as a backup holds all.
pub(crate) struct InFull;

impl Likeness for InFull {
    fn is_material(&self, ours: &OwnMaterial, theirs: &OwnMaterial) -> bool {
        ours == theirs
    }

    fn is_formula(&self, ours: &Formula, theirs: &Formula) -> bool {
        ours == theirs
    }
}

/// What a link says of them is the same, with or without what their maker keeps to himself.
struct CarriedByLinks;

impl Likeness for CarriedByLinks {
    fn is_material(&self, ours: &OwnMaterial, theirs: &OwnMaterial) -> bool {
        ours == theirs || material_for_others(ours) == *theirs
    }

    fn is_formula(&self, ours: &Formula, theirs: &Formula) -> bool {
        // What was filled in for labels, posts and costs is in no link.
        let carried = |formula: Formula| Formula { label: String::new(), costs: String::new(), ..formula };
        let theirs = carried(theirs.clone());
        carried(ours.clone()) == theirs || carried(formula_for_others(ours)) == theirs
    }
}

/// What of records that come in has the name of something else on this device, directly or through what it is made of;
/// each with a fresh name.
pub(crate) fn names_taken(
    session: &Session,
    materials: &[OwnMaterial],
    formulas: &[(FormulaId, Formula)],
    likeness: &impl Likeness,
) -> BTreeMap<MaterialId, MaterialId> {
    let mut taken = BTreeSet::new();
    let mut made_of: Vec<(MaterialId, Vec<MaterialId>)> = Vec::new();
    for own in materials {
        let id = own.material.id;
        if let MaterialId::Own(number) = id
            && session.own_material(number).is_some_and(|ours| !likeness.is_material(ours, own))
        {
            taken.insert(id);
        }
        made_of.push((id, references_of_material(own)));
    }
    for (id, formula) in formulas {
        if session.kept_formula(*id).is_some_and(|ours| !likeness.is_formula(ours, formula)) {
            taken.insert(id.as_material());
        }
        made_of.push((id.as_material(), references_of_formula(formula).collect()));
    }
    let is_here = |id: MaterialId| match id {
        MaterialId::Own(number) => session.own_material(number).is_some(),
        MaterialId::Formula(number) => session.kept_formula(FormulaId(number)).is_some(),
        MaterialId::Catalogue(_) => true,
    };
    // What is made of something that gets another name is another thing than the one this device has under its name.
    loop {
        let count = taken.len();
        for (id, references) in &made_of {
            if is_here(*id) && references.iter().any(|reference| taken.contains(reference)) {
                taken.insert(*id);
            }
        }
        if taken.len() == count {
            break;
        }
    }
    let fresh = |id: MaterialId| match id {
        MaterialId::Formula(_) => MaterialId::Formula(session.around.random()),
        MaterialId::Own(_) | MaterialId::Catalogue(_) => MaterialId::Own(session.around.random()),
    };
    taken.into_iter().map(|id| (id, fresh(id))).collect()
}

/// Texts no longer than the fields of the page take.
fn with_usual_lengths(mut formula: Formula) -> Formula {
    formula.name = cut_name(&formula.name);
    formula.notes = cut_text(&formula.notes);
    for phase in &mut formula.phases {
        phase.name = cut_name(&phase.name);
        for line in &mut phase.lines {
            line.note = cut_text(&line.note);
            line.substitution = cut_text(&line.substitution);
        }
    }
    formula
}

lazy! {
    whole "16" fn restore_backup(session: &mut Session, differing: &str) -> Answer {
        session.restore_backup(differing == "theirs")
    } else { Answer::default() }
}
