//! What can be done with an extract, worked out beforehand, so that the page shows what a button will do.

use crate::messages::extracts as says;
use crate::messages::names::word;
use crate::rooms::extracts::brewing::{
    BLENDED, Brew, Fields, Trouble, addition_towards, brew, catalogue_extract, material_of_part, number, plant_of,
    readings_of, wish_of,
};
use crate::rooms::extracts::sentences;
use crate::rooms::extracts::view::{ComparedView, ExtractView, OfferView};
use crate::session::Session;
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use stillroom_core::balance::LineShare;
use stillroom_core::chemistry::{Temperature, ethanol};
use stillroom_core::composition::{Composition, Makeups, resolve_composition};
use stillroom_core::extract::stock::{AlcoholAmount, StockSolution, mix_alcohol};
use stillroom_core::extract::verify::{Besides, verify};
use stillroom_core::extract::{Addition, ExtractError, Level, Liquid, Plan, Solids, adjust, solve};
use stillroom_core::number::{align, write_fixed};
use stillroom_core::{Amount, ConstituentId, Density, Formula, Grams, LineId, MaterialId, MaterialSource, Percent};
use stillroom_exchange::extract::{Extract, ExtractId, ExtractKind, ExtractRecord, Step};

/// Decimals of a percent in a comparison.
const DECIMALS: u32 = 2;

/// What an offer does.
pub(crate) enum Effect {
    /// Fills in the amounts of a plan.
    Amounts(Box<Plan>),
    /// Does something to the liquid.
    Step(Step),
    /// Notes a blend.
    Blend(Liquid),
    /// Puts the material on the shelf.
    Shelve {
        /// What it is made of; `None` is what the plant gave.
        parts: Vec<(Option<MaterialId>, Percent)>,
        /// Its density at 20 °C.
        density: Option<Density>,
    },
    /// Puts it into the open formula.
    Use(MaterialId, Percent),
}

/// Something that can be done, or why not.
struct Offer {
    name: &'static str,
    lines: Vec<String>,
    worked: Result<(&'static str, Effect), Trouble>,
}

/// Glycerin in percent under which a reading is that of water, and what the plan has to hold for that to be no strength of it.
const AS_WATER: f64 = 1.0;
const PLAINLY_GLYCERIN: f64 = 5.0;

impl Session {
    pub(crate) fn present_offers(&self, record: &ExtractRecord) -> Vec<OfferView> {
        let offers = self.offers(record.id, &record.extract);
        let can_be_shelved = offers.iter().any(|offer| offer.name == "shelve" && offer.worked.is_ok());
        let offers = offers.into_iter().map(|offer| OfferView {
            offer: offer.name,
            lines: offer.lines,
            label: offer.worked.as_ref().map(|(label, _)| (*label).to_owned()).unwrap_or_default(),
            problem: offer.worked.err().map(|trouble| self.trouble(&trouble)).unwrap_or_default(),
        });
        offers.chain([self.present_use(&record.extract, can_be_shelved)]).collect()
    }

    /// What an offer does, worked out anew.
    pub(crate) fn effect_of(&self, record: &ExtractRecord, name: &str) -> Option<Effect> {
        if name == "use" {
            return self.use_of(&record.extract);
        }
        let offer = self.offers(record.id, &record.extract).into_iter().find(|offer| offer.name == name)?;
        offer.worked.ok().map(|(_, effect)| effect)
    }

    fn offers(&self, id: ExtractId, extract: &Extract) -> Vec<Offer> {
        let offer = |name, worked: Result<(Vec<String>, &'static str, Effect), Trouble>| match worked {
            Ok((lines, label, effect)) => Offer { name, lines, worked: Ok((label, effect)) },
            Err(trouble) => Offer { name, lines: Vec::new(), worked: Err(trouble) },
        };
        let shelve = match extract.kind {
            ExtractKind::Glycerite => brew(extract).and_then(|brew| self.shelve_glycerite(extract, &brew)),
            ExtractKind::Solution => self.shelve_solution(extract),
            ExtractKind::Alcohol => self.shelve_alcohol(extract),
        };
        let mut offers = vec![offer("shelve", shelve)];
        if extract.kind != ExtractKind::Glycerite {
            return offers;
        }
        if extract.blend.is_none() {
            offers.push(offer("solve", self.solve_plan(extract)));
        }
        let Ok(brew) = brew(extract) else { return offers };
        offers.push(offer("adjust", self.bring_to_strength(extract, &brew.liquid)));
        if extract.number("mass-now").is_some() {
            offers.push(offer("evaporated", self.reckon_evaporation(extract, &brew.liquid)));
        }
        if !readings_of(extract).is_empty() {
            offers.push(offer("verify", self.verify_readings(extract, &brew.liquid)));
        }
        if extract.values.keys().any(|field| field.starts_with(BLENDED)) {
            offers.push(offer("blend", self.blend_batches(id, extract, &brew.liquid)));
        }
        offers
    }

    fn solve_plan(&self, extract: &Extract) -> Result<(Vec<String>, &'static str, Effect), Trouble> {
        let (given, strength, size) = wish_of(extract)?;
        let plan = solve::solve(&given, strength, size)?;
        let liquid = plan.press()?.liquid;
        let solvent = plan.solvent.map(|added| self.about_mass(added.mass));
        let mut lines = vec![sentences::solved(
            &self.about_mass(plan.plant.mass),
            &self.about_mass(plan.glycerin),
            &self.about_mass(plan.added_water),
            solvent.as_deref(),
        )];
        let mass = liquid.mass()?;
        // Of nothing there is no strength.
        if !mass.is_zero() {
            lines.push(says::solved_gives(&self.about_mass(mass), &self.strength_of(&liquid)));
        }
        Ok((lines, says::use_amounts(), Effect::Amounts(Box::new(plan))))
    }

    fn bring_to_strength(
        &self,
        extract: &Extract,
        liquid: &Liquid,
    ) -> Result<(Vec<String>, &'static str, Effect), Trouble> {
        let (target, addition) = addition_towards(liquid, extract)?;
        let adjusted = adjust::bring_to(liquid, target, addition)?;
        // What no scale shows is not poured.
        let added = Grams::new(adjusted.added.value().round_dp(2)).unwrap_or(adjusted.added);
        if added.is_zero() || self.strength_of(liquid) == self.percent_text(target) {
            return Ok((vec![says::already(&self.strength_of(liquid))], "", Effect::Step(Step::Water(added))));
        }
        let (mass, whole) = (self.about_mass(added), self.about_mass(adjusted.liquid.mass()?));
        let target = self.percent_text(target);
        let (line, step) = match addition {
            Addition::Water => (says::pour_in_water(&mass, &whole, &target), Step::Water(added)),
            Addition::Glycerin(purity) => {
                let line = says::pour_in_glycerin(&mass, &self.typed(extract, "purity"), &whole, &target);
                (line, Step::Glycerin(added, purity))
            }
        };
        Ok((vec![line], says::poured_in(), Effect::Step(step)))
    }

    fn reckon_evaporation(
        &self,
        extract: &Extract,
        liquid: &Liquid,
    ) -> Result<(Vec<String>, &'static str, Effect), Trouble> {
        let now = extract.grams("mass-now")?;
        let evaporated = adjust::account_for_evaporation(liquid, now)?;
        let line = says::evaporated(&self.about_mass(evaporated.lost_water), &self.strength_of(&evaporated.liquid));
        Ok((vec![line], says::note_evaporation(), Effect::Step(Step::WeighedAgain(now))))
    }

    fn verify_readings(
        &self,
        extract: &Extract,
        liquid: &Liquid,
    ) -> Result<(Vec<String>, &'static str, Effect), Trouble> {
        let readings = readings_of(extract);
        let besides = Besides::planned(liquid)?;
        let found = verify(&readings, &besides)?;
        let mark = self.mark();
        let number = |value| sentences::fixed(value, 1, mark);
        let band = found.glycerin_percent;
        let reckoned = liquid.glycerin_percent()?;
        // The instrument was not zeroed, the drop was water, or it is another bottle: that is no strength to go on with.
        if band.estimate < AS_WATER && reckoned.to_physics() > PLAINLY_GLYCERIN {
            return Err(Trouble::ReadAsWater { planned: reckoned });
        }
        let inside = (band.low..=band.high).contains(&reckoned.to_physics());
        let solids = found.solids_percent;
        let lines = vec![
            says::verified(&number(band.estimate), &number(band.low), &number(band.high)),
            if inside { says::agrees_with_plan } else { says::differs_from_plan }(&self.percent_text(reckoned)),
            match (readings.len() > 1, found.agrees) {
                (true, true) => says::solids_found,
                (true, false) => says::solids_disagree,
                (false, _) => says::solids_counted,
            }(&number(solids.low), &number(solids.high)),
        ];
        let percent = Decimal::from_f64(band.estimate).and_then(|percent| Percent::new(percent.round_dp(1)).ok());
        let measured = Step::Measured(percent.unwrap_or(reckoned));
        Ok((lines, says::use_measured(), Effect::Step(measured)))
    }

    fn blend_batches(
        &self,
        id: ExtractId,
        extract: &Extract,
        liquid: &Liquid,
    ) -> Result<(Vec<String>, &'static str, Effect), Trouble> {
        let mut names = vec![extract.name.clone()];
        let mut batches = vec![*liquid];
        for field in extract.values.keys() {
            let Some(batch) = field.strip_prefix(BLENDED) else { continue };
            let mass = extract.number(field).and_then(|mass| Grams::new(mass).ok());
            if let Some(liquid) = self.liquid_of_batch(id, batch, mass)? {
                names.push(self.name_of_batch(batch));
                batches.push(liquid);
            }
        }
        let target = extract.percent("adjust-target")?;
        let blend = adjust::blend_to(&batches, target, None)?;
        let poured = names.iter().zip(&blend.amounts).filter(|(_, amount)| !amount.is_zero());
        let mut lines: Vec<String> =
            poured.map(|(name, amount)| says::blend_amount(&self.about_mass(*amount), name)).collect();
        let whole = self.about_mass(blend.liquid.mass()?);
        lines.push(says::blend_gives(&whole, &self.strength_of(&blend.liquid)));
        Ok((lines, says::make_blend(), Effect::Blend(blend.liquid)))
    }

    /// What a batch of a blend is called.
    pub(crate) fn name_of_batch(&self, batch: &str) -> String {
        match batch.strip_prefix('x') {
            Some(id) => ExtractId::try_from(id.to_owned())
                .ok()
                .and_then(|id| self.extracts.get(&id))
                .map(|record| record.extract.name.clone())
                .unwrap_or_default(),
            None => batch.parse().map(|id| self.materials.name(id)).unwrap_or_default(),
        }
    }

    /// A batch as a liquid: all of another extract or so much of it, or so much of a material. What of a material is
    /// neither glycerin, water nor a solvent counts as solids.
    fn liquid_of_batch(&self, own: ExtractId, batch: &str, mass: Option<Grams>) -> Result<Option<Liquid>, Trouble> {
        if let Some(id) = batch.strip_prefix('x') {
            let other = ExtractId::try_from(id.to_owned()).ok().filter(|id| *id != own);
            let Some(record) = other.and_then(|id| self.extracts.get(&id)) else { return Ok(None) };
            let whole = brew(&record.extract)?.liquid;
            return Ok(Some(match mass {
                Some(mass) => whole.split(mass)?.0,
                None => whole,
            }));
        }
        let (Ok(id), Some(mass)) = (batch.parse::<MaterialId>(), mass) else { return Ok(None) };
        let mut makeups = Makeups::default();
        let Ok(inside) = makeups.see_through(id, &self.materials) else { return Ok(None) };
        let mut liquid = Liquid::EMPTY;
        for (constituent, percent) in &inside.constituents {
            let share = Percent::new(*percent).ok().and_then(|percent| percent.of(mass)).unwrap_or(Grams::ZERO);
            let part = match constituent {
                ConstituentId::Catalogue(1) => &mut liquid.water,
                ConstituentId::Catalogue(2) => &mut liquid.glycerin,
                ConstituentId::Catalogue(38) => &mut liquid.propanediol,
                ConstituentId::Catalogue(94) => &mut liquid.ethanol,
                ConstituentId::Catalogue(317) => &mut liquid.propylene_glycol,
                _ => &mut liquid.solids.typical,
            };
            *part = part.checked_add(share).unwrap_or(*part);
        }
        let typical = liquid.solids.typical;
        liquid.solids = Solids { low: typical, typical, high: typical };
        Ok(Some(liquid))
    }

    // ---- the shelf of materials -------------------------------------------------------------------------------

    fn shelve_glycerite(&self, extract: &Extract, brew: &Brew) -> Result<(Vec<String>, &'static str, Effect), Trouble> {
        let composition = brew.liquid.composition()?;
        let plant = catalogue_extract(extract);
        let parts: Vec<_> =
            composition.iter().map(|(part, percent)| (material_of_part(*part).or(plant), *percent)).collect();
        let density = brew.liquid.masses(Level::Typical).density(Temperature::TWENTY).ok();
        let named = |(id, percent): &(Option<MaterialId>, Percent)| {
            let name = id.map_or_else(|| sentences::name_of_solids(&plant_name(extract)), |id| self.materials.name(id));
            says::shelf_part(&name, &write_fixed(percent.value(), 2, self.mark()))
        };
        let lines = parts.iter().map(named).collect();
        Ok((lines, self.label_of_shelving(extract), Effect::Shelve { parts, density: density.and_then(to_density) }))
    }

    fn label_of_shelving(&self, extract: &Extract) -> &'static str {
        if self.shelved(extract).is_some() { says::shelve_again() } else { says::shelve() }
    }

    fn shelve_solution(&self, extract: &Extract) -> Result<(Vec<String>, &'static str, Effect), Trouble> {
        let (Some(substance), Some(solvent)) = (extract.material("substance"), extract.material("solvent-material"))
        else {
            return Err(Trouble::NoMaterial);
        };
        let preservative = extract.material("preservative-material");
        let mut stock = StockSolution {
            strength: extract.percent("strength")?,
            purity: extract.percent("substance-purity")?,
            preservative: extract.percent("preservative")?,
        };
        if preservative.is_none() {
            stock.preservative = Percent::ZERO;
        }
        let total = extract.grams("total")?;
        let weigh = stock.make(total)?;
        let mut lines = Vec::new();
        for (mass, id) in
            [(weigh.raw_material, Some(substance)), (weigh.preservative, preservative), (weigh.solvent, Some(solvent))]
        {
            if let (false, Some(id)) = (mass.is_zero(), id) {
                lines.push(says::weigh_out(&self.about_mass(mass), &self.materials.name(id)));
            }
        }
        let (wanted, batch) = (extract.percent("wanted-percent")?, extract.grams("batch")?);
        lines.push(match stock.portion_for(wanted, batch) {
            Ok(portion) => says::portion(
                &self.about_mass(portion),
                &self.typed(extract, "wanted-percent"),
                &self.about_mass(batch),
            ),
            Err(error) => self.extract_error(&error),
        });
        if stock.preservative.is_zero() && self.holds_water(solvent) {
            lines.push(says::no_preservative().to_owned());
        }
        let hundred = stock.make(Grams::new(Decimal::ONE_HUNDRED).map_err(ExtractError::from)?)?;
        let percent = |mass: Grams| Percent::new(mass.value().round_dp(6)).map_err(ExtractError::from);
        let (raw, preserving) = (percent(hundred.raw_material)?, percent(hundred.preservative)?);
        // The solvent takes up what the last digit leaves, so that they make 100 exactly.
        let rest = Percent::HUNDRED.checked_sub(raw).and_then(|rest| rest.checked_sub(preserving));
        let parts =
            [(Some(substance), raw), (preservative, preserving), (Some(solvent), rest.unwrap_or(Percent::ZERO))];
        let parts = parts.into_iter().filter(|(_, percent)| !percent.is_zero()).collect();
        Ok((lines, self.label_of_shelving(extract), Effect::Shelve { parts, density: None }))
    }

    fn holds_water(&self, id: MaterialId) -> bool {
        let water = ConstituentId::Catalogue(number::WATER);
        let mut makeups = Makeups::default();
        makeups
            .see_through(id, &self.materials)
            .is_ok_and(|inside| inside.constituents.iter().any(|(constituent, _)| *constituent == water))
    }

    fn shelve_alcohol(&self, extract: &Extract) -> Result<(Vec<String>, &'static str, Effect), Trouble> {
        let [strong, weak, target] = ["strong", "weak", "target"].map(|field| extract.physics(field));
        let volume = extract.physics("alcohol-volume");
        let amount = match extract.text("alcohol-of") {
            "strong" => AlcoholAmount::Strong(volume),
            "weak" => AlcoholAmount::Weak(volume),
            _ => AlcoholAmount::Mixture(volume),
        };
        let mixture = mix_alcohol(strong, weak, target, amount)?;
        let mass = |grams: f64| {
            let grams = Decimal::from_f64(grams).and_then(|grams| Grams::new(grams.round_dp(1)).ok());
            self.about_mass(grams.unwrap_or(Grams::ZERO))
        };
        let part = |volume, grams, percent: f64, field| {
            let (volume, mass) = (self.about_volume(volume), mass(grams));
            if percent > 0.0 {
                says::alcohol_amount(&volume, &mass, &self.typed(extract, field))
            } else {
                says::water_amount(&volume, &mass)
            }
        };
        let lines = vec![
            part(mixture.strong_volume, mixture.strong_mass, strong, "strong"),
            part(mixture.weak_volume, mixture.weak_mass, weak, "weak"),
            says::alcohol_makes(&self.about_volume(mixture.volume), &self.about_volume(mixture.contraction)),
            says::alcohol_caution().to_owned(),
        ];
        let share = ethanol::fraction_from_volume_percent(target).map_err(ExtractError::from)?;
        let density = ethanol::density(share, Temperature::TWENTY).ok().and_then(to_density);
        let alcohol = Decimal::from_f64(share.percent()).and_then(|percent| Percent::new(percent.round_dp(4)).ok());
        let alcohol = alcohol.unwrap_or(Percent::ZERO);
        let water = Percent::HUNDRED.checked_sub(alcohol).unwrap_or(Percent::ZERO);
        let parts = [(number::ETHANOL, alcohol), (number::WATER, water)]
            .into_iter()
            .filter(|(_, percent)| !percent.is_zero())
            .map(|(id, percent)| (Some(MaterialId::Catalogue(id)), percent))
            .collect();
        Ok((lines, self.label_of_shelving(extract), Effect::Shelve { parts, density }))
    }

    // ---- the open formula -------------------------------------------------------------------------------------

    /// The material an extract was put on the shelf as, if it is still there.
    pub(crate) fn shelved(&self, extract: &Extract) -> Option<MaterialId> {
        extract.material("material").filter(|id| self.materials.material(*id).is_some())
    }

    fn use_of(&self, extract: &Extract) -> Option<Effect> {
        self.formula()?;
        Some(Effect::Use(self.shelved(extract)?, extract.percent("use-percent").ok()?))
    }

    fn present_use(&self, extract: &Extract, can_be_shelved: bool) -> OfferView {
        let mut view = OfferView { offer: "use", lines: Vec::new(), problem: String::new(), label: String::new() };
        match (self.shelved(extract), self.formula()) {
            (None, Some(formula)) if can_be_shelved => {
                view.label = says::shelve_and_add(&self.typed(extract, "use-percent"), &formula.name);
            }
            (None, _) => says::not_on_shelf().clone_into(&mut view.problem),
            (Some(_), None) => says::no_formula().clone_into(&mut view.problem),
            (Some(_), Some(formula)) => {
                view.label = says::add_to(&self.typed(extract, "use-percent"), &formula.name);
            }
        }
        view
    }

    pub(crate) fn present_comparison(&self, extract: &Extract, view: &mut ExtractView) {
        let (Some(material), Some(formula)) = (self.shelved(extract), self.formula()) else { return };
        let Ok(percent) = extract.percent("use-percent") else { return };
        let Some(with) = shares_with(formula, material, percent) else {
            view.compared = says::formula_does_not_total(&formula.name);
            return;
        };
        let mut makeups = Makeups::default();
        let Ok(inside) = makeups.see_through(material, &self.materials) else { return };
        let glycerin = ConstituentId::Catalogue(number::GLYCERIN);
        let glycerin =
            inside.constituents.iter().find(|(each, _)| *each == glycerin).map_or(Decimal::ZERO, |each| each.1);
        let mut used = Decimal::ZERO;
        let mut without = Vec::with_capacity(with.len() + 1);
        for (share, id) in &with {
            if *id != material {
                without.push((*share, *id));
                continue;
            }
            used += share.percent.value();
            let of_glycerin = share.percent.value() * glycerin / Decimal::ONE_HUNDRED;
            for (id, percent) in [(number::GLYCERIN, of_glycerin), (number::WATER, share.percent.value() - of_glycerin)]
            {
                if let Ok(percent) = Percent::new(percent) {
                    let share = LineShare { line: LineId(u32::MAX), percent, quantum_satis: false };
                    without.push((share, MaterialId::Catalogue(id)));
                }
            }
        }
        let [with, without] = [with, without].map(|lines| resolve_composition(&lines, &self.materials, &mut makeups));
        let mark = self.mark();
        let text = |composition: &Composition, id: ConstituentId| {
            let entry = composition.entries.iter().find(|entry| entry.constituent == id);
            let percent = entry.map_or(Decimal::ZERO, |entry| entry.percent.value());
            align(write_fixed(percent, DECIMALS, mark), DECIMALS, DECIMALS)
        };
        let ids: Vec<ConstituentId> = inside.constituents.iter().map(|(id, _)| *id).collect();
        view.comparison = ids
            .into_iter()
            .map(|id| ComparedView {
                inci: crate::messages::sentences::inci_or_unnamed(self.materials.inci(id)).to_owned(),
                with: text(&with, id),
                without: text(&without, id),
            })
            .collect();
        view.compared =
            says::compared(&formula.name, &write_fixed(used.normalize(), used.normalize().scale().min(2), mark));
    }
}

/// The plant as the maker calls it.
pub(crate) fn plant_name(extract: &Extract) -> String {
    plant_of(extract).map_or_else(|| extract.text("plant-name").to_owned(), |row| word(row.plant).to_owned())
}

fn to_density(density: f64) -> Option<Density> {
    Decimal::from_f64(density).and_then(|density| Density::new(density.round_dp(3)).ok())
}

/// Shares of the open formula with the material in it: as it stands where it holds the material, else with so many
/// percent of it more, for which the q.s. line makes room.
fn shares_with(formula: &Formula, material: MaterialId, percent: Percent) -> Option<Vec<(LineShare, MaterialId)>> {
    let mut with = formula.clone();
    if !with.lines().any(|line| line.material == material) {
        let phase = with.phases.first()?.id;
        with.add_line(phase, material, Amount::Percent(percent));
    }
    let balance = with.balance();
    balance.is_sound().then(|| balance.shares.into_iter().zip(with.lines().map(|line| line.material)).collect())
}
