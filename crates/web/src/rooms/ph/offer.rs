//! What can be put into the formula for its pH, worked out beforehand, so that the page shows what a button will do.

use crate::messages::ph as says;
use crate::rooms::extracts::view::ChoiceView;
use crate::rooms::findings::present::{write_rounded, write_significant};
use crate::rooms::ph::edit::PhDesk;
use crate::rooms::ph::sentences;
use crate::rooms::ph::view::{PhFieldView, PhOfferView};
use crate::session::Session;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use stillroom_catalogue::{Catalogue, knowledge};
use stillroom_core::checks::acidity::neutralising::{neutralise, takers};
use stillroom_core::checks::acidity::setting::{self, Gas, SetError, Setting};
use stillroom_core::checks::facts::Knowledge as _;
use stillroom_core::checks::{Change, Contents};
use stillroom_core::composition::Makeups;
use stillroom_core::number::{with_unit, write_between, write_fixed};
use stillroom_core::{Class, ConstituentId, Grams, Makeup, MaterialId, MaterialSource, Percent};

/// Strength of a dosing solution in percent if nobody says otherwise. Common practice.
const USUAL_STRENGTH: u32 = 10;
/// Buffer capacity in thousandths of mol/kg that is designed for if nobody says otherwise: 10 mmol/kg a pH holds a
/// tenth of a percent of an acid to a pH or two. A choice of ours.
const USUAL_CAPACITY: i64 = 10;
/// Above this strength in percent an acid asks for goggles. Common practice.
const STRONG_ACID: u32 = 10;

/// Something worked out.
#[derive(Debug, Default)]
pub(crate) struct Worked {
    pub(crate) lines: Vec<String>,
    pub(crate) cautions: Vec<String>,
    pub(crate) changes: Vec<Change>,
}

type Tried = Result<Worked, String>;

impl Session {
    pub(crate) fn present_ph_offers(
        &self,
        contents: &Contents<'_>,
        makeups: &mut Makeups,
        desk: &PhDesk,
    ) -> Vec<PhOfferView> {
        let offers: [(&'static str, Vec<PhFieldView>); 3] = [
            ("set", self.fields_of_set(contents, desk)),
            ("buffer", self.fields_of_buffer(contents, desk)),
            ("neutralise", self.fields_of_neutralise(contents, desk)),
        ];
        let shown = offers.into_iter().map(|(offer, fields)| {
            let worked = self.try_ph_offer(offer, contents, makeups, desk);
            let (worked, problem) = match worked {
                Ok(worked) => (worked, String::new()),
                Err(problem) => (Worked::default(), problem),
            };
            // What nothing in the formula asks for has no fields either.
            let fields = if offer == "neutralise" && takers(contents).is_empty() { Vec::new() } else { fields };
            let label = if worked.changes.is_empty() { "" } else { says::set_apply() };
            let Worked { lines, cautions, .. } = worked;
            PhOfferView { offer, fields, lines, cautions, label: label.to_owned(), problem }
        });
        shown.collect()
    }

    /// What an offer does, worked out anew.
    pub(crate) fn work_out_ph_offer(&mut self, offer: &str) -> Option<Worked> {
        let desk = self.ph_desk();
        let (record, evaluation) = self.evaluate_open()?;
        let mut makeups = core::mem::take(&mut self.makeups);
        let contents = self.contents_of(&record.formula, &evaluation);
        let worked = self.try_ph_offer(offer, &contents, &mut makeups, &desk).ok();
        drop(contents);
        self.makeups = makeups;
        worked
    }

    fn try_ph_offer(&self, offer: &str, contents: &Contents<'_>, makeups: &mut Makeups, desk: &PhDesk) -> Tried {
        match offer {
            "set" => self.try_to_set(contents, makeups, desk),
            "buffer" => self.try_to_buffer(contents, makeups, desk),
            "neutralise" => self.try_to_neutralise(contents, makeups, desk),
            _ => Err(String::new()),
        }
    }

    // ---- what is filled in, or meant where nothing is ------------------------------------------------------------

    fn target_of(&self, contents: &Contents<'_>, desk: &PhDesk) -> Decimal {
        let typed = desk.number("ph.target", self.mark());
        typed
            .or_else(|| contents.formula.target_ph.map(stillroom_core::Ph::value))
            .unwrap_or_else(|| Decimal::new(50, 1))
    }

    pub(crate) fn strength_of_dose(&self, desk: &PhDesk) -> Percent {
        let typed = desk.number("ph.strength", self.mark()).unwrap_or_else(|| Decimal::from(USUAL_STRENGTH));
        Percent::new(typed).unwrap_or(Percent::HUNDRED)
    }

    /// What brings it to the target: as chosen, or a line that sets the pH, or what is in common use.
    pub(crate) fn adjuster_of(&self, contents: &Contents<'_>, desk: &PhDesk) -> Option<MaterialId> {
        if let Some(chosen) = desk.chosen("ph.material").and_then(|text| text.parse().ok()) {
            return Some(chosen);
        }
        let target = self.target_of(contents, desk).to_f64()?;
        let now =
            contents.calibrated().ok().and_then(|all| stillroom_core::chemistry::ph::predict::predict(&all).ok())?;
        let remedies = contents.knowledge.remedies();
        let wanted = if now.ph.estimate > target { remedies.acid } else { remedies.base };
        let sets = |each: &&stillroom_core::checks::Present<'_>| each.sets_ph();
        let lines = contents.present.iter().filter(sets).flat_map(|each| each.lines().collect::<Vec<_>>());
        let own = lines.filter_map(|line| contents.formula.line(line)).map(|line| line.material);
        let lowers = now.ph.estimate > target;
        own.into_iter()
            .find(|material| self.is_acid(*material) == lowers)
            .or_else(|| wanted.and_then(|id| contents.knowledge.material_of(id)))
    }

    /// Whether what a material brings is acid rather than base.
    fn is_acid(&self, material: MaterialId) -> bool {
        let mut solution = stillroom_core::chemistry::ph::Solution::in_water(1.0);
        for (id, share) in self.inside_of(material) {
            if let Some(brings) = knowledge().facts(id).and_then(|facts| facts.brings.as_ref()) {
                solution.add_solution(&brings.per_kilogram, share / 100.0 * 0.01);
            }
        }
        let at = stillroom_core::chemistry::Temperature::TWENTY_FIVE;
        let solved = stillroom_core::chemistry::ph::Solver::new(&[&solution], at).and_then(|mut solver| solver.solve());
        solved.is_ok_and(|solved| solved.ph < 7.0)
    }

    fn inside_of(&self, material: MaterialId) -> Vec<(ConstituentId, f64)> {
        let mut makeups = Makeups::default();
        let Ok(inside) = makeups.see_through(material, &self.materials) else { return Vec::new() };
        inside.constituents.iter().map(|(id, share)| (*id, share.to_f64().unwrap_or(0.0))).collect()
    }

    /// What can be weighed for the pH: lines of the formula that bring acid or base first, then all that the catalogue has
    /// for it, by name.
    fn adjusters(&self, contents: &Contents<'_>) -> Vec<ChoiceView> {
        let mut found: Vec<MaterialId> = Vec::new();
        for line in contents.formula.lines() {
            let brings = |id: &ConstituentId| {
                let brings = knowledge().facts(*id).and_then(|facts| facts.brings.as_ref());
                brings.is_some_and(|brings| !brings.per_kilogram.is_empty())
            };
            let quantum_satis = matches!(line.amount, stillroom_core::Amount::QuantumSatis);
            let is_in = found.contains(&line.material);
            if !quantum_satis && !is_in && self.inside_of(line.material).iter().any(|(id, _)| brings(id)) {
                found.push(line.material);
            }
        }
        let mut others: Vec<(String, MaterialId)> =
            catalogue_adjusters().filter(|id| !found.contains(id)).map(|id| (self.materials.name(id), id)).collect();
        others.sort();
        let all = found.into_iter().map(|id| (self.materials.name(id), id)).chain(others);
        all.map(|(label, id)| ChoiceView { key: id.to_string(), label }).collect()
    }

    // ---- fields ---------------------------------------------------------------------------------------------------

    fn field_typed(&self, field: &str, label: &str, unit: &str, desk: &PhDesk, usual: Decimal) -> PhFieldView {
        let text = desk.chosen(field).map_or_else(|| write_between(usual, 0, 6, self.mark()), str::to_owned);
        PhFieldView {
            field: field.to_owned(),
            label: label.to_owned(),
            unit: unit.to_owned(),
            text,
            choices: Vec::new(),
        }
    }

    fn fields_of_set(&self, contents: &Contents<'_>, desk: &PhDesk) -> Vec<PhFieldView> {
        let material = self.adjuster_of(contents, desk);
        let choices = self.adjusters(contents);
        let mut fields = vec![
            self.field_typed("ph.target", says::field_target(), "", desk, self.target_of(contents, desk)),
            choice("ph.material", says::field_material(), material.map(|id| id.to_string()), choices),
        ];
        if material.is_some_and(|id| self.is_simple(id)) {
            let usual = Decimal::from(USUAL_STRENGTH);
            fields.push(self.field_typed("ph.strength", says::field_strength(), "%", desk, usual));
        }
        fields
    }

    pub(crate) fn is_simple(&self, material: MaterialId) -> bool {
        self.materials.material(material).is_some_and(|material| matches!(material.makeup, Makeup::Simple(_)))
    }

    #[expect(clippy::unused_self, reason = "read beside the others")]
    fn buffering(&self, contents: &Contents<'_>, desk: &PhDesk) -> Option<[MaterialId; 2]> {
        let chosen = |field: &str| desk.chosen(field).and_then(|text| text.parse::<MaterialId>().ok());
        let remedies = contents.knowledge.remedies();
        let known = |id: Option<ConstituentId>| id.and_then(|id| contents.knowledge.material_of(id));
        let acid = chosen("ph.acid").or_else(|| known(remedies.acid))?;
        Some([acid, chosen("ph.setter").or_else(|| known(remedies.base))?])
    }

    fn fields_of_buffer(&self, contents: &Contents<'_>, desk: &PhDesk) -> Vec<PhFieldView> {
        let Some([acid, setter]) = self.buffering(contents, desk) else { return Vec::new() };
        let choices = self.adjusters(contents);
        let usual = Decimal::new(USUAL_CAPACITY, 3);
        vec![
            choice("ph.acid", says::field_acid(), Some(acid.to_string()), choices.clone()),
            choice("ph.setter", says::field_setter(), Some(setter.to_string()), choices),
            self.field_typed("ph.capacity", says::field_capacity(), "mol/kg", desk, usual),
        ]
    }

    #[expect(clippy::unused_self, reason = "read beside the others")]
    fn neutralising(&self, contents: &Contents<'_>, desk: &PhDesk) -> Option<(ConstituentId, MaterialId)> {
        let takers = takers(contents);
        let chosen = desk.chosen("ph.neutralised");
        let acid = takers.iter().find(|(id, _)| Some(key_of(*id).as_str()) == chosen).or(takers.first())?.0;
        let base = desk.chosen("ph.base").and_then(|text| text.parse().ok());
        let usual = contents.knowledge.remedies().base.and_then(|id| contents.knowledge.material_of(id));
        Some((acid, base.or(usual)?))
    }

    fn fields_of_neutralise(&self, contents: &Contents<'_>, desk: &PhDesk) -> Vec<PhFieldView> {
        let Some((acid, base)) = self.neutralising(contents, desk) else { return Vec::new() };
        let acids = takers(contents)
            .into_iter()
            .map(|(id, _)| ChoiceView { key: key_of(id), label: self.materials.inci(id).to_owned() });
        let mut bases: Vec<(String, MaterialId)> =
            catalogue_adjusters().filter(|id| !self.is_acid(*id)).map(|id| (self.materials.name(id), id)).collect();
        bases.sort();
        let bases = bases.into_iter().map(|(label, id)| ChoiceView { key: id.to_string(), label }).collect();
        vec![
            choice("ph.neutralised", says::field_neutralised(), Some(key_of(acid)), acids.collect()),
            choice("ph.base", says::field_base(), Some(base.to_string()), bases),
            self.field_typed("ph.degree", says::field_degree(), "%", desk, Decimal::ONE_HUNDRED),
        ]
    }

    // ---- working out ---------------------------------------------------------------------------------------------

    fn try_to_set(&self, contents: &Contents<'_>, makeups: &mut Makeups, desk: &PhDesk) -> Tried {
        let target = self.target_of(contents, desk).to_f64().unwrap_or(0.0);
        let material = self.adjuster_of(contents, desk).ok_or_else(|| self.set_problem(&SetError::NoData))?;
        let setting = setting::set(contents, makeups, material, target).map_err(|error| self.set_problem(&error))?;
        let name = self.materials.name(material);
        let (percent, before) = (self.percent_of(setting.percent), self.percent_of(setting.before));
        let mut lines = vec![if setting.percent.is_zero() {
            says::set_out(&name)
        } else if setting.before.is_zero() {
            says::set_line(&name, &percent)
        } else {
            says::set_line_before(&name, &percent, &before)
        }];
        lines.extend(self.lines_of_dose(contents, &setting, desk));
        let reached = &setting.reached.ph;
        lines.push(says::set_reaches(&self.ph(reached.estimate), &self.ph(reached.low), &self.ph(reached.high)));
        let added = setting.percent.value() > setting.before.value();
        let dissolved = self.is_simple(material).then(|| self.strength_of_dose(desk));
        let cautions =
            if added { self.cautions_of(setting.caustic, setting.gas, material, dissolved) } else { Vec::new() };
        Ok(Worked { lines, cautions, changes: setting.changes })
    }

    /// What more of it weighs, as it is and as a solution.
    fn lines_of_dose(&self, contents: &Contents<'_>, setting: &Setting, desk: &PhDesk) -> Vec<String> {
        let batch = contents.evaluation.batch.as_ref().ok().map(|batch| batch.mass);
        let Some(more) = setting.percent.checked_sub(setting.before).filter(|more| !more.is_zero()) else {
            return Vec::new();
        };
        let mut lines = Vec::new();
        if let Some((batch, mass)) = batch.and_then(|batch| Some((batch, more.of(batch)?))) {
            lines.push(says::set_batch(&self.small_mass(mass), &self.mass(batch)));
        }
        let strength = self.strength_of_dose(desk);
        if self.is_simple(setting.material) && strength < Percent::HUNDRED {
            let as_text = self.percent_of(strength);
            let mass = batch.map(|batch| setting.grams_of_solution(strength, batch));
            lines.push(match (setting.as_solution(strength), mass) {
                (Ok(percent), Some(Ok(mass))) => {
                    says::set_solution_mass(&as_text, &self.percent_of(percent), &self.small_mass(mass))
                }
                (Ok(percent), _) => says::set_solution(&as_text, &self.percent_of(percent)),
                (Err(error), _) => self.set_problem(&error),
            });
        }
        lines
    }

    fn try_to_buffer(&self, contents: &Contents<'_>, makeups: &mut Makeups, desk: &PhDesk) -> Tried {
        let both = self.buffering(contents, desk).ok_or_else(|| self.set_problem(&SetError::NoData))?;
        let target = self.target_of(contents, desk).to_f64().unwrap_or(0.0);
        let capacity = desk.number("ph.capacity", self.mark()).unwrap_or_else(|| Decimal::new(USUAL_CAPACITY, 3));
        let found = setting::buffer(contents, makeups, both, target, capacity.to_f64().unwrap_or(0.0));
        let buffer = found.map_err(|error| self.set_problem(&error))?;
        let line =
            |(id, percent): (MaterialId, Percent)| says::set_line(&self.materials.name(id), &self.percent_of(percent));
        let lines = vec![
            line(buffer.acid),
            line(buffer.setter),
            says::buffer_gives(&self.ph(buffer.reached.ph.estimate), &self.significant(buffer.capacity, 2)),
        ];
        let caustic = both.iter().any(|id| self.inside_of(*id).iter().any(|(id, _)| is_caustic(*id)));
        let cautions = self.cautions_of(caustic, None, both[0], None);
        Ok(Worked { lines, cautions, changes: buffer.changes })
    }

    fn try_to_neutralise(&self, contents: &Contents<'_>, makeups: &mut Makeups, desk: &PhDesk) -> Tried {
        let (acid, base) = self.neutralising(contents, desk).ok_or_else(|| says::neutral_none().to_owned())?;
        let degree =
            desk.number("ph.degree", self.mark()).and_then(|percent| percent.to_f64()).unwrap_or(100.0) / 100.0;
        let found = neutralise(contents, makeups, acid, base, degree);
        let found = found.map_err(|error| self.set_problem(&error))?;
        let mut lines = vec![
            says::set_line(&self.materials.name(base), &self.percent_of(found.percent)),
            says::neutral_takes(self.materials.inci(acid), &self.significant(found.takes * 1000.0, 3)),
        ];
        if let Some(ph) = found.ph {
            lines.push(says::neutral_ph(&self.ph(ph.low), &self.ph(ph.high)));
        }
        let dissolved = self.is_simple(base).then_some(Percent::HUNDRED);
        let cautions = self.cautions_of(found.caustic, found.gas, base, dissolved);
        Ok(Worked { lines, cautions, changes: found.changes })
    }

    /// How what is weighed is handled.
    fn cautions_of(
        &self,
        caustic: bool,
        gas: Option<Gas>,
        material: MaterialId,
        strength: Option<Percent>,
    ) -> Vec<String> {
        let mut cautions = Vec::new();
        if caustic {
            cautions.extend(sentences::caustic().map(str::to_owned));
        } else if self.is_acid(material) && strength.is_none_or(|it| it.value() > Decimal::from(STRONG_ACID)) {
            cautions.push(says::acid_caution().to_owned());
        }
        if let Some(Gas { grams, litres }) = gas {
            cautions.push(says::set_gas(&self.significant(grams, 2), &self.significant(litres, 2)));
        }
        cautions
    }

    // ---- numbers --------------------------------------------------------------------------------------------------

    pub(crate) fn set_problem(&self, error: &SetError) -> String {
        sentences::set_error(error, &|ph| self.ph(ph))
    }

    /// A pH, to a tenth.
    pub(crate) fn ph(&self, ph: f64) -> String {
        Decimal::try_from(ph).map_or_else(|_| "?".to_owned(), |ph| write_fixed(ph.round_dp(1), 1, self.mark()))
    }

    pub(crate) fn percent_of(&self, percent: Percent) -> String {
        with_unit(&write_between(percent.value(), 0, 7, self.mark()), "%")
    }

    pub(crate) fn significant(&self, number: f64, figures: u32) -> String {
        write_significant(number, figures, self.mark())
    }

    pub(crate) fn rounded(&self, number: f64, decimals: u32) -> String {
        write_rounded(number, decimals, self.mark())
    }

    /// A mass to three figures: what sets a pH is often a few hundredths of a gram.
    pub(crate) fn small_mass(&self, mass: Grams) -> String {
        let unit = self.settings.mass_unit;
        let number = unit.from_grams(mass).to_f64().unwrap_or(0.0);
        with_unit(&self.significant(number, 3), unit.symbol())
    }
}

/// Names a constituent on the page.
pub(crate) fn key_of(id: ConstituentId) -> String {
    match id {
        ConstituentId::Catalogue(number) => format!("c{number}"),
        ConstituentId::Own(number) => format!("o{number}"),
    }
}

pub(crate) fn is_caustic(id: ConstituentId) -> bool {
    use stillroom_core::checks::facts::Trait;
    knowledge().facts(id).is_some_and(|facts| facts.has(Trait::Caustic).is_some())
}

pub(crate) fn choice(field: &str, label: &str, chosen: Option<String>, choices: Vec<ChoiceView>) -> PhFieldView {
    let text = chosen.unwrap_or_default();
    PhFieldView { field: field.to_owned(), label: label.to_owned(), unit: String::new(), text, choices }
}

/// Pure materials of the catalogue that set a pH and of which is known what they bring.
pub(crate) fn catalogue_adjusters() -> impl Iterator<Item = MaterialId> {
    Catalogue::get().materials().filter_map(|material| {
        let Makeup::Simple(id) = material.makeup else { return None };
        let brings = knowledge().facts(id)?.brings.as_ref()?;
        (material.class == Class::PhAdjuster && !brings.per_kilogram.is_empty()).then_some(material.id)
    })
}
