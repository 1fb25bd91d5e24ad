//! The kinds of containers a batch goes into: the one it is planned for, and further ones.

use crate::contract::Answer;
use crate::messages::costs as says;
use crate::rooms::batches::view::RemarkView;
use crate::rooms::costs::containers::span;
use crate::rooms::costs::fields::{Costed, FURTHER_KINDS, fields_of_kind};
use crate::rooms::costs::view::{CostKindView, CostsView};
use crate::rooms::extracts::view::FigureView;
use crate::session::Session;
use rust_decimal::Decimal;
use stillroom_core::batch_plan::{BatchWay, Containers};
use stillroom_core::cost::{Cost, Making, UnitsOfKind, unit_of_each};
use stillroom_core::evaluation::Evaluation;
use stillroom_core::packaging::{DensityBand, Kind, SharedOut, Walls, share_out, wanted_in_all};
use stillroom_core::scaling::round_up_to_scale;
use stillroom_core::{Currency, Formula, Grams, Millilitres};
use stillroom_exchange::label::LabelFields;

/// What a further kind holds until somebody says otherwise, in millilitres. *Source*: common practice.
const USUAL_FURTHER: i64 = 30;

/// A kind of container, with what was noted of it.
pub(crate) struct KindOf {
    /// What its fields begin with; nothing for the kind a batch is planned for.
    pub(crate) key: &'static str,
    /// What it is called.
    pub(crate) name: String,
    pub(crate) kind: Kind,
    pub(crate) price: Option<Decimal>,
    pub(crate) further: Option<Decimal>,
    pub(crate) walls: Option<Walls>,
}

impl KindOf {
    /// Container and label of one. Without the price of the container what is known of a unit counts, and that it lacks is said.
    pub(crate) fn packaging(&self) -> Option<Decimal> {
        self.price.map(|price| price + self.further.unwrap_or_default()).or(self.further)
    }
}

/// Containers to buy.
pub(crate) struct Pieces {
    pub(crate) name: String,
    pub(crate) count: u32,
    pub(crate) cost: Option<(Decimal, Currency)>,
}

/// What of each kind there is, and at which density.
pub(crate) struct Filling {
    pub(crate) band: DensityBand,
    pub(crate) shared: SharedOut,
}

impl Filling {
    pub(crate) fn count(&self, at: usize) -> u32 {
        self.shared.kinds.get(at).map_or(0, |kind| kind.count)
    }

    pub(crate) fn in_all(&self) -> u32 {
        self.shared.kinds.iter().map(|kind| kind.count).fold(0, u32::saturating_add)
    }
}

impl Session {
    /// Every kind, that of the plan first.
    pub(crate) fn kinds_of(&self, formula: &Formula, costed: &Costed) -> Vec<KindOf> {
        let containers = &formula.batch.containers;
        // One kind alone takes all there is.
        let is_counted = costed.has_further_kinds() && !costed.first_takes_rest(formula);
        let further = FURTHER_KINDS.iter().filter_map(|key| {
            let volume = costed.number(&format!("{key}:volume")).and_then(|it| Millilitres::new(it).ok())?;
            Some((*key, volume))
        });
        let first = std::iter::once(("", containers.volume));
        let one = |(key, volume): (&'static str, Millilitres)| {
            let named = |name: &str| if key.is_empty() { name.to_owned() } else { format!("{key}:{name}") };
            let name = costed.text(&named("name"));
            KindOf {
                key,
                name: if name.is_empty() { says::kind_of_volume(&self.volume(volume)) } else { name.to_owned() },
                kind: Kind {
                    volume,
                    headspace: if key.is_empty() { containers.headspace } else { costed.percent(&named("headspace")) },
                    stays: costed.percent(&named("stays")),
                    wanted: if key.is_empty() {
                        is_counted.then_some(containers.count)
                    } else {
                        costed.text(&named("count")).parse().ok()
                    },
                },
                price: costed.number(&named("price")),
                further: costed.number(&named("further")),
                walls: Walls::from_word(costed.text(&named("walls"))),
            }
        };
        first.chain(further).map(one).collect()
    }

    /// What came out shared out among the kinds; `None` where no density is known.
    pub(crate) fn share_among(
        containers: &Containers,
        evaluation: &Evaluation,
        out: Grams,
        kinds: &[KindOf],
    ) -> Option<Filling> {
        let band = DensityBand::of(containers.density, evaluation.density)?;
        let kinds: Vec<Kind> = kinds.iter().map(|each| each.kind).collect();
        Some(Filling { band, shared: share_out(out, &kinds, &band).ok()? })
    }

    /// The further kinds with their fields, and the batch that would fill what is wanted.
    pub(crate) fn show_kinds(
        &self,
        formula: &Formula,
        evaluation: &Evaluation,
        costed: &Costed,
        kinds: &[KindOf],
        currency: &str,
        view: &mut CostsView,
    ) {
        let mark = self.mark();
        for each in kinds.iter().filter(|each| !each.key.is_empty()) {
            view.kinds.push(CostKindView {
                key: each.key.to_owned(),
                name: each.name.clone(),
                fields: fields_of_kind(
                    costed,
                    each.key,
                    &self.volume_number(each.kind.volume),
                    self.volume_unit_here(),
                    currency,
                    mark,
                ),
            });
        }
        view.more_kinds = kinds.len() <= FURTHER_KINDS.len();
        if kinds.len() > 1
            && let Some(mass) = self.batch_for(formula, evaluation, kinds)
        {
            view.plan_kinds = says::plan_kinds(&self.shown_mass(mass));
        }
    }

    /// The batch that fills as many of each kind as are wanted, on a step of the scale.
    fn batch_for(&self, formula: &Formula, evaluation: &Evaluation, kinds: &[KindOf]) -> Option<Grams> {
        let containers = &formula.batch.containers;
        let density = DensityBand::of(containers.density, evaluation.density)?.likely;
        let kinds: Vec<Kind> = kinds.iter().map(|each| each.kind).collect();
        let out = wanted_in_all(&kinds, density).ok().filter(|out| !out.is_zero())?;
        let kept = Decimal::ONE_HUNDRED - containers.loss.value();
        let made = out.value().checked_mul(Decimal::ONE_HUNDRED)?.checked_div(kept)?;
        round_up_to_scale(Grams::new(made).ok()?, &self.settings.scales)
    }

    pub(crate) fn add_kind(&mut self) -> Answer {
        self.change_formula("cost.kind-add", None, |formula| {
            let mut fields = LabelFields::read(&formula.costs);
            let free = FURTHER_KINDS.iter().find(|key| fields.get(&format!("{key}:volume")).is_none());
            if let Some(key) = free {
                fields.set(&format!("{key}:volume"), &USUAL_FURTHER.to_string());
                fields.set(&format!("{key}:count"), "1");
            }
            formula.costs = fields.write();
        });
        Answer::default()
    }

    pub(crate) fn remove_kind(&mut self, key: &str) -> Answer {
        if let Some(key) = FURTHER_KINDS.iter().find(|each| **each == key) {
            self.change_formula("cost.kind-remove", None, |formula| {
                let begin = format!("{key}:");
                let kept: Vec<&str> = formula.costs.lines().filter(|line| !line.starts_with(&begin)).collect();
                formula.costs = kept.join("\n");
            });
        }
        Answer::default()
    }

    /// Plans the batch that fills as many of each kind as are wanted.
    pub(crate) fn plan_kinds(&mut self) -> Answer {
        let Some((record, evaluation)) = self.evaluate_open() else { return Answer::default() };
        let costed = Costed::of(&record.formula.costs, &self.settings.maker);
        let kinds = self.kinds_of(&record.formula, &costed);
        let Some(mass) = self.batch_for(&record.formula, &evaluation, &kinds) else { return Answer::default() };
        let first = if kinds.first().is_some_and(|first| first.kind.wanted.is_some()) { "number" } else { "rest" };
        self.change_formula("cost.kinds-plan", None, |formula| {
            formula.batch.way = BatchWay::Mass;
            formula.batch.mass = mass;
            let mut fields = LabelFields::read(&formula.costs);
            fields.set("first", first);
            fields.set("basis", "plan");
            formula.costs = fields.write();
        });
        Answer::default()
    }

    /// How many of each kind become full, what is short and what is left.
    pub(crate) fn show_shared(&self, kinds: &[KindOf], filling: &Filling, how: String, view: &mut CostsView) {
        let mut how = Some(how);
        for (each, filled) in kinds.iter().zip(&filling.shared.kinds) {
            let takes = says::one_takes(&self.shown_mass(filled.each));
            let takes = match (each.kind.stays.is_zero(), how.take()) {
                (true, None) => takes,
                (true, Some(density)) => [density, takes].join(" "),
                (false, density) => {
                    let gives =
                        says::one_takes_and_gives(&self.shown_mass(filled.each), &self.shown_mass(filled.gives));
                    density.into_iter().chain([gives]).collect::<Vec<_>>().join(" ")
                }
            };
            view.filling.push(FigureView::worked_out(
                &each.name,
                says::full_containers(filled.count as usize, &self.volume(each.kind.volume)),
                span(filled.fewest, filled.most),
                takes,
            ));
            if filled.short > 0 {
                let text = says::kind_short(filled.short as usize, &each.name);
                view.kinds_said.push(RemarkView { tone: "caution", text });
            }
        }
        let takes_rest = kinds.iter().any(|each| each.kind.wanted.is_none());
        let smallest = filling.shared.kinds.iter().map(|kind| kind.each).min();
        if !takes_rest && smallest.is_some_and(|smallest| filling.shared.left >= smallest) {
            view.kinds_said.push(RemarkView { tone: "note", text: says::no_kind_takes_rest().to_owned() });
        }
        let left = self.shown_mass(filling.shared.left);
        view.filling.push(FigureView::worked_out(
            says::figure_left(),
            left,
            String::new(),
            says::left_of_kinds().to_owned(),
        ));
    }

    /// What a unit of each kind costs; the headline is the first one's that comes out.
    pub(crate) fn show_unit_of_each(
        &self,
        kinds: &[KindOf],
        filling: &Filling,
        cost: &Cost,
        making: &Making,
        view: &mut CostsView,
    ) {
        let Some(currency) = cost.currency else { return };
        let units: Vec<UnitsOfKind> = kinds
            .iter()
            .zip(&filling.shared.kinds)
            .map(|(each, filled)| UnitsOfKind { count: filled.count, each: filled.each, packaging: each.packaging() })
            .collect();
        let content = cost.materials.checked_add(cost.labour).unwrap_or_default();
        let lacks = !cost.unpriced.is_empty() || !cost.other_currency.is_empty();
        let margin = Decimal::ONE + making.margin.value() / Decimal::ONE_HUNDRED;
        let mut shown = Vec::new();
        for ((each, unit), of) in kinds.iter().zip(unit_of_each(content, &units)).zip(&units) {
            let Some(unit) = unit else { continue };
            let packaging = of.packaging.unwrap_or_default();
            let money = |amount: Decimal| self.money(amount, currency);
            let how = says::how_unit_of(&money(unit.checked_sub(packaging).unwrap_or_default()), &money(packaging));
            let lacks = lacks || each.price.is_none();
            let sold = unit.checked_mul(margin).filter(|_| !making.margin.is_zero());
            let range = if lacks { says::at_least().to_owned() } else { String::new() };
            let how = match sold {
                Some(sold) => [how, says::how_unit_sold(&money(sold))].join(" "),
                None => how,
            };
            let label = says::figure_unit_of(&each.name);
            let figure = FigureView::worked_out(&label, money(unit), range, how);
            if shown.is_empty() {
                view.headline = money(unit);
                view.headline_about =
                    if lacks { says::headline_unit_of_least(&each.name) } else { says::headline_unit_of(&each.name) };
            }
            shown.push(figure);
        }
        view.figures.splice(0..0, shown);
    }

    /// The containers to buy, for so many batches; what they cost together as far as prices are known.
    pub(crate) fn containers_to_buy(
        kinds: &[KindOf],
        counts: &[u32],
        batches: u32,
        currency: Option<Currency>,
    ) -> Vec<Pieces> {
        let is_several = kinds.len() > 1;
        kinds
            .iter()
            .zip(counts)
            // As many as are wanted are bought, also where what comes out does not fill them all.
            .map(|(each, count)| (each, each.kind.wanted.unwrap_or(*count)))
            .filter(|(each, count)| *count > 0 && (is_several || each.price.is_some()))
            .map(|(each, count)| {
                let count = count.saturating_mul(batches);
                let cost = each.price.and_then(|price| price.checked_mul(Decimal::from(count)));
                Pieces { name: each.name.clone(), count, cost: cost.zip(currency) }
            })
            .collect()
    }
}
