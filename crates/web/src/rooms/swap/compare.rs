//! Before and after: lines, layers, findings, cost, what to expect on skin.

use crate::messages::sentences::{list, with_unit};
use crate::messages::swap as says;
use crate::rooms::batches::view::RemarkView;
use crate::rooms::findings::sentences as sentences_findings;
use crate::rooms::swap::sentences;
use crate::rooms::swap::view::{BandView, BarView, SwapPairView, SwapVersionView};
use crate::rooms::swap::ways::differences;
use crate::session::Session;
use rust_decimal::Decimal;
use std::collections::BTreeMap;
use stillroom_core::checks::{Finding, Value};
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::{Evaluation, evaluate};
use stillroom_core::number::write_between;
use stillroom_core::rebuild::Version;
use stillroom_core::rebuild::substitutes::Difference;
use stillroom_core::{ConstituentId, Currency, Formula, Layer, LineId, MaterialId, MaterialSource};

/// A percent of the product less than this off is not missed.
const NOT_MISSED: Decimal = Decimal::from_parts(1, 0, 0, false, 2);
/// Most substances named that are missed, and most lines named that change.
const MOST_NAMED: usize = 6;
/// From these changes of a layer in percent of the product on, a hand feels it. Common practice, roughly.
const FELT: [(Layer, i64); 4] =
    [(Layer::Oils, 150), (Layer::Humectants, 250), (Layer::Solids, 50), (Layer::Thickeners, 10)];

/// A percent as people read it.
fn percent_of(evaluation: &Evaluation, line: LineId) -> Option<Decimal> {
    evaluation.lines.iter().find(|(share, _)| share.line == line).map(|(share, _)| share.percent.value())
}

impl Session {
    fn written(&self, value: Decimal) -> String {
        write_between(value.round_dp(4), 2, 4, self.mark())
    }

    fn exact_percent(&self, value: Decimal) -> String {
        with_unit(&self.written(value), "%")
    }

    /// What changes, in a sentence: what goes, what comes, what becomes more or less. The q.s. line gives way and is not
    /// named.
    pub(crate) fn summary_of(&mut self, before: &Formula, version: &Version) -> String {
        let mut makeups = core::mem::take(&mut self.makeups);
        let said = self.changes_of(before, version, &mut makeups);
        self.makeups = makeups;
        said
    }

    pub(super) fn changes_of(&self, before: &Formula, version: &Version, makeups: &mut Makeups) -> String {
        let was = evaluate(before, &self.bench, &self.materials, makeups);
        let is = evaluate(&version.formula, &self.bench, &self.materials, makeups);
        self.say_changes(before, version, &was, &is)
    }

    fn say_changes(&self, before: &Formula, version: &Version, was: &Evaluation, is: &Evaluation) -> String {
        let name = |formula: &Formula, line: LineId| {
            formula.line(line).map(|line| self.materials.name(line.material)).unwrap_or_default()
        };
        let mut said: Vec<String> = version.went.iter().map(|line| says::goes(&name(before, *line))).collect();
        for line in version.came.iter().chain(&version.changed) {
            let now = percent_of(is, *line).unwrap_or_default();
            let percent = self.exact_percent(now);
            let name = name(&version.formula, *line);
            said.push(match percent_of(was, *line) {
                Some(then) if version.changed.contains(line) => {
                    if gives_way(&version.formula, *line) {
                        continue;
                    }
                    says::becomes(&name, &percent, &self.exact_percent(then))
                }
                _ => says::comes(&name, &percent),
            });
        }
        let more = said.len().saturating_sub(MOST_NAMED);
        said.truncate(MOST_NAMED);
        if more > 0 {
            said.push(says::and_more(more));
        }
        if said.is_empty() {
            says::stays().to_owned()
        } else {
            said.join(crate::messages::common::list_of_lists_separator())
        }
    }

    /// Everything before and after.
    pub(super) fn show_version(
        &self,
        before: &Formula,
        version: &Version,
        feel: &[Difference],
        must_cost: bool,
        makeups: &mut Makeups,
    ) -> SwapVersionView {
        let was = evaluate(before, &self.bench, &self.materials, makeups);
        let is = evaluate(&version.formula, &self.bench, &self.materials, makeups);
        let (gone, new) = differences(&self.found_with(before, &was), &self.found_with(&version.formula, &is));
        let layers = self.show_layers(&was, &is);
        let changes = *before != version.formula;
        SwapVersionView {
            summary: self.say_changes(before, version, &was, &is),
            lines: self.show_pairs(before, version, &was, &is),
            before: self.show_bar(&was, says::bar_before()),
            after: self.show_bar(&is, says::bar_after()),
            gone: self.remarks_of(before, &gone),
            new: self.remarks_of(&version.formula, &new),
            cost: self.say_cost(before, &version.formula, &was, &is, must_cost),
            expect: self.say_expect(&was, &is, feel),
            missed: self.say_missed(version),
            layers,
            label: if changes { says::take().to_owned() } else { String::new() },
        }
    }

    /// Line by line: those of now in their order with what takes their place behind, then what is new.
    fn show_pairs(&self, before: &Formula, version: &Version, was: &Evaluation, is: &Evaluation) -> Vec<SwapPairView> {
        let pair = |material: MaterialId, old: Option<Decimal>, new: Option<Decimal>, line: LineId| {
            let fate = match (old, new) {
                (Some(_), None) => "gone",
                (None, _) => "new",
                (Some(old), Some(new)) if old.round_dp(4) == new.round_dp(4) => "same",
                _ => "changed",
            };
            let weighed = is.sheet.as_ref().and_then(|sheet| sheet.lines.iter().find(|each| each.line == line));
            SwapPairView {
                name: self.materials.name(material),
                layer: None,
                before: old.map(|old| self.written(old)).unwrap_or_default(),
                after: new.map(|new| self.written(new)).unwrap_or_default(),
                mass: weighed.map(|line| self.mass(line.target)).unwrap_or_default(),
                fate,
            }
        };
        let mut pairs = Vec::new();
        for line in before.lines().filter(|line| version.went.contains(&line.id)) {
            pairs.push(pair(line.material, percent_of(was, line.id), None, line.id));
        }
        for line in version.formula.lines() {
            let old = percent_of(was, line.id).filter(|_| !version.came.contains(&line.id));
            pairs.push(pair(line.material, old, percent_of(is, line.id), line.id));
        }
        // What goes and what comes is what somebody looks for.
        pairs.sort_by_key(|pair| match pair.fate {
            "gone" => 0,
            "new" => 1,
            "changed" => 2,
            _ => 3,
        });
        pairs
    }

    fn show_layers(&self, was: &Evaluation, is: &Evaluation) -> Vec<SwapPairView> {
        let (before, after) = (self.present_layers(&was.composition), self.present_layers(&is.composition));
        let mut order: Vec<Layer> = before.iter().map(|layer| layer.layer).collect();
        order.extend(after.iter().map(|layer| layer.layer).filter(|layer| !before.iter().any(|it| it.layer == *layer)));
        let rows = order.into_iter().rev().map(|layer| {
            let of = |layers: &[crate::rooms::jar::view::LayerView]| {
                layers.iter().find(|each| each.layer == layer).map(|each| each.percent.clone()).unwrap_or_default()
            };
            let (old, new) = (of(&before), of(&after));
            let fate = match (old.is_empty(), new.is_empty(), old == new) {
                (true, ..) => "new",
                (_, true, _) => "gone",
                (.., true) => "same",
                _ => "changed",
            };
            let name = crate::messages::sentences::layer(layer).to_owned();
            SwapPairView { name, layer: Some(layer), before: old, after: new, mass: String::new(), fate }
        });
        rows.collect()
    }

    fn show_bar(&self, evaluation: &Evaluation, said: &str) -> BarView {
        let layers = self.present_layers(&evaluation.composition);
        let named: Vec<String> =
            layers.iter().rev().map(|it| format!("{} {}", it.label, with_unit(&it.percent, "%"))).collect();
        // The jar counts from its top; a bar begins with what lies at the bottom.
        let bands = layers.iter().rev().map(|it| BandView {
            layer: it.layer,
            from: (1.0 - it.top - it.height).max(0.0),
            length: it.height,
        });
        BarView { description: says::bar(said, &list(&named)), bands: bands.collect() }
    }

    /// Findings in their sentences.
    pub(super) fn remarks_of(&self, formula: &Formula, findings: &[Finding]) -> Vec<RemarkView> {
        let write = |value: &Value| self.write_value(formula, value);
        let remark = |finding: &Finding| RemarkView {
            tone: finding.severity.slug(),
            text: sentences_findings::say(finding.code, &finding.values, &write),
        };
        findings.iter().map(remark).collect()
    }

    /// Price of what a formula takes for a hundred percent, or what has none.
    fn price_of_formula(&self, evaluation: &Evaluation, currency: Currency) -> Result<Decimal, Vec<MaterialId>> {
        let (mut sum, mut missing) = (Some(Decimal::ZERO), Vec::new());
        for (share, material) in &evaluation.lines {
            match self.price_of(*material).filter(|(_, of)| *of == currency) {
                Some((price, _)) => {
                    let cost = price.checked_mul(share.percent.value());
                    sum = sum.zip(cost).and_then(|(sum, cost)| sum.checked_add(cost));
                }
                // Water costs next to nothing, and nobody prices it.
                None if missing.contains(material) || self.is_water(*material) => {}
                None => missing.push(*material),
            }
        }
        if missing.is_empty() { sum.ok_or(missing) } else { Err(missing) }
    }

    /// What the materials of the batch cost before and after, where that is known.
    fn say_cost(&self, before: &Formula, after: &Formula, was: &Evaluation, is: &Evaluation, must: bool) -> String {
        let materials = before.lines().chain(after.lines()).map(|line| line.material);
        let Some(currency) = self.currency_of(materials) else {
            return if must { says::no_prices().to_owned() } else { String::new() };
        };
        let batch = is.batch.as_ref().map(|batch| batch.mass).ok();
        let (old, new) = (self.price_of_formula(was, currency), self.price_of_formula(is, currency));
        let (Ok(old), Ok(new), Some(batch)) = (&old, &new, batch) else {
            let mut missing: Vec<MaterialId> = old.err().into_iter().chain(new.err()).flatten().collect();
            missing.sort_unstable();
            missing.dedup();
            let names: Vec<String> = missing.iter().map(|id| self.materials.name(*id)).take(MOST_NAMED).collect();
            return says::cost_unknown(&list(&names));
        };
        let money = |price: Decimal| {
            let cost = price.checked_mul(batch.value()).map(|cost| (cost / Decimal::ONE_HUNDRED).round_dp(2));
            cost.map_or_else(String::new, |cost| write_between(cost, 2, 2, self.mark()))
        };
        says::cost(&self.mass(batch), &money(*old), &money(*new), currency.code())
    }

    /// What a hand will feel: by layers, and by what was taken instead.
    fn say_expect(&self, was: &Evaluation, is: &Evaluation, feel: &[Difference]) -> Vec<String> {
        let layers = |evaluation: &Evaluation| {
            let mut sums: BTreeMap<Layer, Decimal> = BTreeMap::new();
            for entry in &evaluation.composition.entries {
                let layer = self.materials.constituent(entry.constituent).map_or(Layer::Helpers, |it| it.class.layer());
                *sums.entry(layer).or_default() += entry.percent.value();
            }
            sums
        };
        let (old, new) = (layers(was), layers(is));
        let of = |sums: &BTreeMap<Layer, Decimal>, layer| sums.get(&layer).copied().unwrap_or_default();
        let mut said: Vec<String> = Vec::new();
        for (layer, least) in FELT {
            let (before, after) = (of(&old, layer), of(&new, layer));
            let by = after - before;
            if by.abs() >= Decimal::new(least, 2) {
                let (before, after) = (self.exact_percent(before), self.exact_percent(after));
                said.extend(sentences::felt(layer, by > Decimal::ZERO, &before, &after));
            }
        }
        let inci = |id: ConstituentId| self.inci_of(id);
        let is_felt = |it: &&Difference| !matches!(it, Difference::Brings(_) | Difference::Lacks(_));
        said.extend(feel.iter().filter(is_felt).map(|it| sentences::difference(it, &inci, self.mark())));
        said.dedup();
        said
    }

    /// What of the formula is there no more, or more of, than it was; the water makes room and is not missed.
    fn say_missed(&self, version: &Version) -> Vec<String> {
        let missed = version.answer.missed(NOT_MISSED).filter(|met| !self.is_water_constituent(met.constituent));
        missed
            .take(MOST_NAMED)
            .map(|met| {
                let (got, wanted) = (self.exact_percent(met.got), self.exact_percent(met.wanted));
                says::missed(&self.inci_of(met.constituent), &got, &wanted)
            })
            .collect()
    }

    /// INCI name of a substance, or that nobody gave one.
    pub(super) fn inci_of(&self, id: ConstituentId) -> String {
        crate::messages::sentences::inci_or_unnamed(self.materials.inci(id)).to_owned()
    }
}

/// Whether a line takes whatever is left.
fn gives_way(formula: &Formula, line: LineId) -> bool {
    formula.line(line).is_some_and(|line| line.amount == stillroom_core::Amount::QuantumSatis)
}
