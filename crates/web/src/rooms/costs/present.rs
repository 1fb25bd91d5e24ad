//! The costs of the open formula as the page shows them.

use crate::messages::sentences as sentences_common;
use crate::messages::{common, costs as says};
use crate::rooms::batches::sentences as sentences_batches;
use crate::rooms::batches::view::RemarkView;
use crate::rooms::costs::edit::CostsDesk;
use crate::rooms::costs::fields::{Costed, OfBatch, fields};
use crate::rooms::costs::kinds::KindOf;
use crate::rooms::costs::needs::{MadeBatch, MadeOf, fraction};
use crate::rooms::costs::view::{CostLineView, CostsView};
use crate::rooms::extracts::view::FigureView;
use crate::rooms::update::Update;
use crate::session::Session;
use rust_decimal::Decimal;
use stillroom_core::batch_plan::{BatchWay, Containers};
use stillroom_core::checks::can_check;
use stillroom_core::cost::{Cost, CostError, Making, Need, reckon, shared_out};
use stillroom_core::day::Day;
use stillroom_core::evaluation::Evaluation;
use stillroom_core::number::{with_unit, write_between};
use stillroom_core::packaging::comes_out;
use stillroom_core::unit::VolumeUnit;
use stillroom_core::{Grams, Layer, MaterialId};
use stillroom_exchange::record::FormulaRecord;

/// Minutes of an hour.
const HOUR: Decimal = Decimal::from_parts(60, 0, 0, false, 0);

/// What is reckoned with: what goes in, what comes out, and how many units.
struct Basis {
    lines: Vec<MadeOf>,
    out: Grams,
    came: String,
    units: u32,
    about: String,
    /// The day whose prices count; today's where there is none.
    day: Option<Day>,
}

impl Session {
    /// The costs, where they are looked at and changed.
    pub(crate) fn present_costs(&mut self, update: &mut Update) {
        if self.waiting.of::<CostsDesk>().looking {
            let view = self.show_costs();
            update.costs = self.shown.changed(view);
        }
    }

    fn show_costs(&mut self) -> CostsView {
        let Some((record, evaluation)) = self.evaluate_open() else {
            return CostsView { problem: says::none_open().to_owned(), ..CostsView::default() };
        };
        if !can_check(&evaluation) {
            return CostsView { problem: says::unsound().to_owned(), ..CostsView::default() };
        }
        self.show_sound_costs(&record, &evaluation)
    }

    fn show_sound_costs(&self, record: &FormulaRecord, evaluation: &Evaluation) -> CostsView {
        let formula = &record.formula;
        let costed = Costed::of(&formula.costs, &self.settings.maker);
        let made = self.made_last(record);
        let lot = made.as_ref().map(|made| made.lot.clone());
        let mut view = CostsView { name: formula.name.clone(), ..CostsView::default() };
        let kinds = self.kinds_of(formula, &costed);
        let basis = self.basis_of(record, evaluation, made.filter(|_| !costed.by_plan()), &kinds);
        let containers = &formula.batch.containers;
        let plain = |value: Decimal| write_between(value, 0, 4, self.mark());
        let mut of_batch = OfBatch {
            made: lot,
            units: String::new(),
            planned: containers.count.to_string(),
            volume: self.volume_number(containers.volume),
            volume_unit: self.volume_unit_here(),
            headspace: plain(containers.headspace.value()),
            loss: plain(containers.loss.value()),
            density: containers.density.map_or_else(String::new, |density| plain(density.value())),
            first_takes_rest: costed.has_further_kinds().then(|| costed.first_takes_rest(formula)),
        };
        let bought: Vec<(usize, Need)> = basis.as_ref().map_or_else(|_| Vec::new(), |basis| self.flat_needs(basis));
        let needs: Vec<Need> = bought.iter().map(|(_, need)| *need).collect();
        let currency = costed.currency(Self::currency_of_most(&needs));
        let code = currency.map_or_else(String::new, |currency| currency.code().to_owned());
        match &basis {
            Err(why) => view.said.push(RemarkView { tone: "caution", text: why.clone() }),
            Ok(basis) => {
                of_batch.units = basis.units.to_string();
                view.about.clone_from(&basis.about);
                let filling = Self::share_among(containers, evaluation, basis.out, &kinds);
                let counts: Vec<u32> = match &filling {
                    Some(filling) if kinds.len() > 1 => (0..kinds.len()).map(|at| filling.count(at)).collect(),
                    _ => vec![basis.units],
                };
                let making = making(&costed, &kinds, &counts, currency);
                match reckon(&needs, &making) {
                    Ok(cost) => {
                        self.show_lines(basis, &bought, &cost, &making, &mut view);
                        self.say_of_prices(basis, &mut view);
                        let lacking = without_price(&kinds, &counts);
                        self.show_sums(&cost, &making, !lacking.is_empty(), kinds.len() > 1, &mut view);
                        if let Some(filling) = filling.as_ref().filter(|_| kinds.len() > 1) {
                            self.show_unit_of_each(&kinds, filling, &cost, &making, &mut view);
                        }
                        self.say_what_lacks(&cost, &costed, &lacking, &mut view);
                    }
                    Err(error) => view.said.push(RemarkView { tone: "caution", text: why_not(error) }),
                }
                let to_buy = self.needed_of_each(&basis.lines, &costed);
                if let Ok(cost) = reckon(&to_buy, &making) {
                    let containers = Self::containers_to_buy(&kinds, &counts, costed.batches(), cost.currency);
                    self.show_shopping(&to_buy, &containers, &cost, costed.batches(), &mut view);
                }
                self.show_filling(containers, basis.out, &basis.came, filling.as_ref(), &kinds, &mut view);
            }
        }
        self.show_misfits(formula, evaluation, &kinds, &mut view);
        self.show_kinds(formula, evaluation, &costed, &kinds, &code, &mut view);
        view.fields = fields(&costed, &of_batch, &code, self.mark());
        view
    }

    /// How the volume of a container is written here.
    pub(crate) fn volume_unit_here(&self) -> &'static str {
        match self.settings.volume_unit {
            VolumeUnit::Millilitre => common::unit_millilitre(),
            unit => unit.symbol(),
        }
    }

    /// How many containers of all kinds become full; none where no density is known.
    fn share_of_all(containers: &Containers, evaluation: &Evaluation, out: Grams, kinds: &[KindOf]) -> u32 {
        let filling = Self::share_among(containers, evaluation, out, kinds);
        filling.map_or(0, |filling| filling.in_all())
    }

    /// The batch made last where there is one, else the one that is planned; or why there is none.
    fn basis_of(
        &self,
        record: &FormulaRecord,
        evaluation: &Evaluation,
        made: Option<MadeBatch>,
        kinds: &[KindOf],
    ) -> Result<Basis, String> {
        let formula = &record.formula;
        let is_several = kinds.len() > 1;
        let fills = |out| Self::share_of_all(&formula.batch.containers, evaluation, out, kinds);
        let volume = self.volume(formula.batch.containers.volume);
        if let Some(MadeBatch { lot, lines, units, out, day }) = made {
            let units = if units > 0 && !is_several { units } else { fills(out) };
            let poured: Decimal = lines.iter().map(|line| line.mass.value()).sum();
            let mass = Grams::new(poured).unwrap_or(out);
            let about = says::about_made(units as usize, &lot, &self.shown_mass(mass));
            let came = says::came_made(&lot);
            return Ok(Basis { lines, out, came, units, about, day });
        }
        let mark = self.mark();
        let batch = evaluation.batch.as_ref().map_err(|error| sentences_common::scaling_error(error, mark))?;
        let containers = &formula.batch.containers;
        let out = comes_out(batch.mass, containers.loss);
        let out = out.map_err(|error| sentences_common::scaling_error(&error, mark))?;
        let units = match formula.batch.way {
            BatchWay::Containers if !is_several => containers.count,
            _ => fills(out),
        };
        let loss = with_unit(&write_between(containers.loss.value(), 0, 2, mark), "%");
        let mass = self.shown_mass(batch.mass);
        Ok(Basis {
            lines: Self::planned_lines(record, evaluation, batch.mass),
            out,
            day: None,
            came: says::came_planned(&mass, &loss),
            units,
            about: if is_several {
                says::about_planned_kinds(units as usize, &mass)
            } else {
                says::about_planned(units as usize, &mass, &volume)
            },
        })
    }

    /// What each line needs, with the position of the line.
    fn flat_needs(&self, basis: &Basis) -> Vec<(usize, Need)> {
        let lines = basis.lines.iter().enumerate();
        lines
            .flat_map(|(at, line)| {
                let bought = self.bought_for(line.material, line.mass, None, 0);
                bought.into_iter().map(move |each| (at, each))
            })
            .map(|(at, each)| (at, self.need_on(&each, basis.day).0))
            .collect()
    }

    /// Which prices count for a batch that was made, and what had none on its day.
    fn say_of_prices(&self, basis: &Basis, view: &mut CostsView) {
        let Some(day) = basis.day else { return };
        let bought = basis.lines.iter().flat_map(|line| self.bought_for(line.material, line.mass, None, 0));
        let later: Vec<MaterialId> =
            bought.filter(|each| self.need_on(each, basis.day).1).map(|each| each.material).collect();
        let text = if later.is_empty() {
            says::prices_of_day(&sentences_batches::day(day))
        } else {
            says::prices_of_day_but(&sentences_batches::day(day), &self.names_of(&later))
        };
        view.said.push(RemarkView { tone: "note", text });
    }

    fn show_lines(&self, basis: &Basis, bought: &[(usize, Need)], cost: &Cost, making: &Making, view: &mut CostsView) {
        let Some(currency) = cost.currency else { return };
        let mut sums = vec![(Decimal::ZERO, false); basis.lines.len()];
        for ((at, _), line) in bought.iter().zip(&cost.lines) {
            let (sum, unknown) = &mut sums[*at];
            *sum += line.cost.unwrap_or_default();
            *unknown |= line.cost.is_none();
        }
        let mut amounts: Vec<Decimal> = sums.iter().map(|(sum, _)| *sum).collect();
        amounts.extend([cost.packaging, cost.labour]);
        // As they are written they sum to what the batch is written as.
        let written = shared_out(&amounts, currency);
        let is_free = |at: usize| {
            let mut needs = bought.iter().filter(|(of, _)| *of == at).peekable();
            needs.peek().is_some() && needs.all(|(_, need)| need.is_free && need.pack.is_none())
        };
        let free: Vec<bool> = (0..basis.lines.len()).map(is_free).collect();
        let mut line = |name: String, about: String, at: usize, layer: Layer, unknown: bool| {
            let exact = amounts[at];
            let share = exact.checked_mul(Decimal::ONE_HUNDRED).and_then(|it| it.checked_div(cost.batch));
            let share = share.filter(|_| !exact.is_zero()).map(|share| share.round_dp(1));
            let written = self.money(written[at], currency);
            view.lines.push(CostLineView {
                name,
                about,
                cost: match (unknown, exact.is_zero()) {
                    (true, true) => says::price_unknown().to_owned(),
                    (true, false) => says::price_at_least(&written),
                    (false, true) if free.get(at) == Some(&true) => says::price_free().to_owned(),
                    (false, _) => written,
                },
                share: share.map_or_else(String::new, |it| with_unit(&write_between(it, 0, 1, self.mark()), "%")),
                fraction: fraction(exact, cost.batch),
                layer,
                unknown,
            });
        };
        for (at, made) in basis.lines.iter().enumerate() {
            let name = self.materials.name(made.material);
            line(name, self.shown_mass(made.mass), at, self.layer_of_material(made.material), sums[at].1);
        }
        let (packaging, labour) = (basis.lines.len(), basis.lines.len() + 1);
        if basis.units > 0 {
            let about = says::units(basis.units as usize);
            let unknown = making.packaging.is_none() && making.other_packaging.is_zero();
            line(says::line_packaging().to_owned(), about, packaging, Layer::Helpers, unknown);
        }
        if making.labour.is_some() {
            line(says::line_labour().to_owned(), String::new(), labour, Layer::Helpers, false);
        }
    }

    fn show_sums(&self, cost: &Cost, making: &Making, no_container: bool, is_several: bool, view: &mut CostsView) {
        let Some(currency) = cost.currency else { return };
        if cost.batch.is_zero() {
            return;
        }
        let money = |amount| self.money(amount, currency);
        let lacks = !cost.unpriced.is_empty() || !cost.other_currency.is_empty() || no_container;
        let range = || if lacks { says::at_least().to_owned() } else { String::new() };
        let mut figure = |label: &str, amount: Decimal, how: String| {
            view.figures.push(FigureView::worked_out(label, money(amount), range(), how));
        };
        let parts = says::how_batch(&money(cost.materials), &money(cost.packaging), &money(cost.labour));
        if let Some(unit) = cost.unit.filter(|_| !is_several) {
            figure(says::figure_unit(), unit, says::how_unit(&money(cost.batch), &making.units.to_string()));
        }
        figure(says::figure_batch(), cost.batch, parts);
        if let Some(hundred) = cost.hundred_grams {
            figure(says::figure_hundred(), hundred, says::how_hundred().to_owned());
        }
        if let Some(sold_for) = cost.sold_for.filter(|_| !making.margin.is_zero() && !is_several) {
            let margin = with_unit(&write_between(making.margin.value(), 0, 2, self.mark()), "%");
            figure(says::figure_sold(), sold_for, says::how_sold(&margin));
        }
        let (amount, label) = match (cost.unit.filter(|_| !is_several), cost.hundred_grams, lacks) {
            (Some(unit), _, false) => (unit, says::headline_unit()),
            (Some(unit), _, true) => (unit, says::headline_unit_least()),
            (None, Some(hundred), false) => (hundred, says::headline_hundred()),
            (None, Some(hundred), true) => (hundred, says::headline_hundred_least()),
            (None, None, _) => (cost.batch, says::headline_batch()),
        };
        view.headline = money(amount);
        label.clone_into(&mut view.headline_about);
    }

    /// What is missing from the sums, by name.
    fn say_what_lacks(&self, cost: &Cost, costed: &Costed, no_container: &[&str], view: &mut CostsView) {
        let mut say = |tone, text| view.said.push(RemarkView { tone, text });
        if !cost.unpriced.is_empty() {
            say("caution", says::unpriced(&self.names_of(&cost.unpriced)));
        }
        if !cost.other_currency.is_empty() {
            let currency = cost.currency.map_or_else(String::new, |currency| currency.code().to_owned());
            say("caution", says::other_currency(&currency, &self.names_of(&cost.other_currency)));
        }
        if costed.has_further_kinds() && !no_container.is_empty() {
            say("caution", says::kinds_without_price(&sentences_common::list(no_container)));
        } else if !no_container.is_empty() {
            say("caution", says::no_container_price().to_owned());
        }
        match (costed.number("minutes"), costed.number("hour")) {
            (Some(_), Some(_)) => {}
            (Some(minutes), None) if !minutes.is_zero() => say("caution", says::no_hourly().to_owned()),
            _ => say("note", says::no_labour().to_owned()),
        }
        say("note", says::what_is_not_in_it().to_owned());
    }
}

/// What making it adds.
fn making(costed: &Costed, kinds: &[KindOf], counts: &[u32], currency: Option<stillroom_core::Currency>) -> Making {
    let of_all = |(each, count): (&KindOf, &u32)| each.packaging()?.checked_mul(Decimal::from(*count));
    let others = kinds.iter().zip(counts).skip(1).filter_map(of_all);
    let labour = costed.number("minutes").zip(costed.number("hour"));
    Making {
        currency,
        units: counts.first().copied().unwrap_or_default(),
        packaging: kinds.first().and_then(KindOf::packaging),
        other_packaging: others.sum(),
        labour: labour.and_then(|(minutes, hour)| minutes.checked_mul(hour)?.checked_div(HOUR)),
        wastage: costed.percent("wastage"),
        margin: costed.percent("margin"),
    }
}

/// The kinds that come out and whose container has no price.
fn without_price<'a>(kinds: &'a [KindOf], counts: &[u32]) -> Vec<&'a str> {
    let is_one = kinds.len() == 1;
    let lacks = |(each, count): &(&KindOf, &u32)| each.price.is_none() && (is_one || **count > 0);
    kinds.iter().zip(counts).filter(lacks).map(|(each, _)| each.name.as_str()).collect()
}

fn why_not(error: CostError) -> String {
    match error {
        CostError::EmptyPack => says::empty_pack(),
        CostError::TooLarge => says::too_large(),
    }
    .to_owned()
}
