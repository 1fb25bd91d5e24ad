//! What a post says, part by part. Called on a session that holds the formula and nothing else of its maker's.

use crate::messages::sentences::{self, list as spoken_list};
use crate::messages::{batches, names, post as says, share};
use crate::rooms::batches::sentences as sentences_run;
use crate::rooms::ph::sentences as sentences_ph;
use crate::rooms::post::block::{item, list, paragraph, row, steps, table};
use crate::rooms::post::links::gather_link;
use crate::rooms::post::parts::{Chosen, Part};
use crate::rooms::post::titles::title_of;
use crate::rooms::post::view::{PostBlockView, PostItemView, PostRowView, PostSectionView};
use crate::rooms::share::view::LinkView;
use crate::rooms::share::write_up::rows;
use crate::rooms::swap::table::Instead;
use crate::rooms::update::Update;
use crate::session::Session;
use std::rc::Rc;
use stillroom_core::batch_plan::{BatchPlan, BatchWay};
use stillroom_core::checks::facts::Trait;
use stillroom_core::evaluation::{Evaluation, evaluate};
use stillroom_core::number::{with_unit, write_fixed};
use stillroom_core::run::steps::is_heated;
use stillroom_core::shelf_life::usual_months_after_opening;
use stillroom_core::{Class, Formula, Grams, MaterialId, MaterialSource, PhaseKind};
use stillroom_exchange::record::FormulaRecord;

/// What a post is written from.
pub(crate) struct Source<'a> {
    pub(crate) record: Rc<FormulaRecord>,
    pub(crate) evaluation: Rc<Evaluation>,
    pub(crate) chosen: &'a Chosen,
    /// The three batches.
    pub(crate) sizes: [Grams; 3],
    /// The link; with an error where it cannot be one.
    pub(crate) link: &'a LinkView,
    /// Address of the site.
    pub(crate) site: &'a str,
    /// What can be taken instead of each line; nothing where that was not worked out.
    pub(crate) swaps: &'a [Instead],
}

impl Session {
    /// The parts of a post that are chosen and have something to say, in the order of the page.
    pub(crate) fn gather_post(&mut self, source: &Source<'_>) -> Vec<PostSectionView> {
        let mut sections = Vec::new();
        for part in Part::ALL {
            if !source.chosen.has(part) {
                continue;
            }
            let blocks = self.gather_part(part, source);
            if !blocks.is_empty() {
                sections.push(PostSectionView {
                    part: part.word().to_owned(),
                    title: title_of(part).to_owned(),
                    blocks,
                });
            }
        }
        sections
    }

    fn gather_part(&mut self, part: Part, source: &Source<'_>) -> Vec<PostBlockView> {
        let (formula, evaluation) = (&source.record.formula, &*source.evaluation);
        match part {
            Part::Notes => formula.notes.lines().map(str::trim).filter(|it| !it.is_empty()).map(paragraph).collect(),
            Part::Formula => self.gather_formula(source),
            Part::Sizes => self.gather_sizes(source),
            Part::Method => self.gather_method(formula, evaluation),
            Part::Cautions => self.gather_cautions(source),
            Part::Why => self.gather_why(formula),
            Part::Instead => gather_instead(self, formula, source.swaps),
            Part::Keeping => self.gather_keeping(formula, evaluation),
            Part::Findings => self.gather_findings(formula, evaluation),
            Part::Ingredients => self.gather_ingredients(formula, evaluation),
            Part::Larger => self.gather_larger(source),
            Part::Link | Part::Code | Part::Embed => gather_link(part, source),
        }
    }

    fn gather_formula(&mut self, source: &Source<'_>) -> Vec<PostBlockView> {
        let mut update = Update::default();
        // What was shown before says nothing here: all of it is written.
        self.shown = crate::contract::shown::Shown::default();
        self.present_formula(&mut update);
        let Some(head) = &update.formula else { return Vec::new() };
        let mut lines: Vec<PostRowView> = Vec::new();
        let mut phase = String::new();
        for each in rows(&update) {
            if each.phase != phase {
                phase.clone_from(&each.phase);
                lines.push(row("phase", vec![phase.clone()]));
            }
            let line = &each.line;
            lines.push(row("line", vec![line.name.clone(), line.percent.trim().into(), line.mass.trim().into()]));
        }
        lines.push(row("total", vec![share::total().into(), head.total.clone(), head.total_mass.clone()]));
        let heads = vec![share::material().to_owned(), "%".to_owned(), head.mass_unit.clone()];
        vec![table(says::formula_for(&self.mass(source.sizes[1])), heads, lines)]
    }

    fn gather_sizes(&mut self, source: &Source<'_>) -> Vec<PostBlockView> {
        let formula = &source.record.formula;
        let mut columns: Vec<Vec<String>> = Vec::new();
        let mut heads = vec![share::material().to_owned()];
        let mut totals = vec![share::total().to_owned()];
        for mass in source.sizes {
            let mut sized = formula.clone();
            sized.batch = BatchPlan { way: BatchWay::Mass, mass, ..sized.batch };
            let evaluation = evaluate(&sized, &self.bench, &self.materials, &mut self.makeups);
            heads.push(self.mass(mass));
            columns.push(self.mass_numbers_of(&evaluation));
            totals.push(evaluation.sheet.as_ref().map_or_else(String::new, |sheet| {
                let unit = self.settings.mass_unit;
                let decimals = sheet.lines.iter().map(|line| self.mass_decimals(line.scale)).max().unwrap_or(0);
                write_fixed(unit.from_grams(sheet.batch), decimals, self.mark())
            }));
        }
        if columns.iter().flatten().all(String::is_empty) {
            return Vec::new();
        }
        let mut lines: Vec<PostRowView> = Vec::new();
        for (at, line) in formula.lines().enumerate() {
            let mut cells = vec![self.materials.name(line.material)];
            cells.extend(columns.iter().map(|column| column.get(at).cloned().unwrap_or_default()));
            lines.push(row("line", cells));
        }
        lines.push(row("total", totals));
        let about = says::sizes_about(self.settings.mass_unit.symbol());
        vec![table(about, heads, lines), paragraph(says::sizes_larger())]
    }

    fn gather_method(&self, formula: &Formula, evaluation: &Evaluation) -> Vec<PostBlockView> {
        let own = Self::own_steps(formula);
        if own.is_empty() {
            return vec![steps(self.steps_in_words(formula, evaluation))];
        }
        let mut blocks = vec![steps(own)];
        let degrees = self.temperatures_of(formula);
        if !degrees.is_empty() {
            blocks.push(list(degrees.into_iter().map(|text| item("", text)).collect()));
        }
        blocks
    }

    fn gather_cautions(&mut self, source: &Source<'_>) -> Vec<PostBlockView> {
        let formula = &source.record.formula;
        let plain = |text: &str| item("", text);
        let mut items = vec![plain(share::caution()), plain(batches::card_caustics())];
        let materials: Vec<MaterialId> = formula.lines().map(|line| line.material).collect();
        if materials.into_iter().any(|material| self.is_caustic(material)) {
            items.extend(sentences_ph::caustic().map(plain));
        }
        let declared = self.declare_for_reader(formula, &source.evaluation);
        items.extend(declared.statements.iter().map(|text| plain(text)));
        // What would hurt is said even where the findings are left out.
        if !source.chosen.has(Part::Findings) {
            let found = self.findings_for_reader(formula, &source.evaluation);
            let stops = found.into_iter().filter(|each| each.severity == "stop");
            items.extend(stops.map(|each| item(says::tone("stop"), each.text)));
        }
        vec![list(items)]
    }

    fn gather_why(&mut self, formula: &Formula) -> Vec<PostBlockView> {
        let lines: Vec<_> = formula.lines().map(|line| (line.material, line.note.trim().to_owned())).collect();
        let mut items: Vec<PostItemView> = Vec::new();
        for (material, note) in lines {
            let mut said: Vec<String> = Vec::new();
            if !note.is_empty() {
                said.push(note);
            }
            said.push(self.what_it_is_for(material));
            items.push(item(self.materials.name(material), said.join(" \u{2013} ")));
        }
        vec![list(items), paragraph(says::why_source())]
    }

    /// What the inventory lists a material for, or what it is where the inventory lists nothing.
    fn what_it_is_for(&mut self, material: MaterialId) -> String {
        let card = self.materials.catalogue().card(material);
        let functions: Vec<&str> = card.map(|card| card.functions).unwrap_or_default();
        if !functions.is_empty() {
            let words: Vec<&str> = functions.into_iter().map(names::word).collect();
            return spoken_list(&words);
        }
        let class =
            self.materials.material(material).map_or("", |material| sentences::class(material.class)).to_owned();
        let brings = self.brings(material, stillroom_core::Percent::HUNDRED);
        if brings.is_empty() { class } else { says::class_that_brings(&class, &brings) }
    }

    fn gather_keeping(&mut self, formula: &Formula, evaluation: &Evaluation) -> Vec<PostBlockView> {
        let keeping = self.keeping_of(formula);
        let mut items = vec![item(says::keeping_whole(), sentences_run::limit_keeping(keeping))];
        items.push(match usual_months_after_opening(keeping) {
            Some((fewest, most)) => {
                let months = sentences_run::months_after_opening(fewest, most);
                item(says::keeping_open(), says::keeping_months(&months, batches::opening_how()))
            }
            None => item(says::keeping_open(), batches::opening_none_how()),
        });
        let contents = self.contents_of(formula, evaluation);
        let named = |class: Class| {
            let there = contents.present.iter().filter(|each| each.class == class);
            let named = there.map(|each| {
                let percent = with_unit(&self.significant(each.percent, 2), "%");
                says::mass_of(sentences::inci_or_unnamed(self.materials.inci(each.id)), &percent)
            });
            spoken_list(&named.collect::<Vec<_>>())
        };
        let water = with_unit(&self.significant(contents.water, 2), "%");
        let preserves = named(Class::Preservative);
        items.push(item(
            says::keeping_water(),
            match (contents.water > 0.0, preserves.is_empty()) {
                (false, _) => says::water_none().to_owned(),
                (true, false) => says::water_preserved(&water, &preserves),
                (true, true) => says::water_unpreserved(&water),
            },
        ));
        let antioxidants = named(Class::Antioxidant);
        if !antioxidants.is_empty() {
            items.push(item(says::keeping_oils(), antioxidants));
        }
        vec![list(items), paragraph(says::keeping_practice())]
    }

    fn gather_findings(&mut self, formula: &Formula, evaluation: &Evaluation) -> Vec<PostBlockView> {
        let found = self.findings_for_reader(formula, evaluation);
        if found.is_empty() {
            return vec![paragraph(says::findings_none())];
        }
        let items = found.into_iter().map(|each| {
            let lead = if each.aside { says::tone_aside(each.severity) } else { says::tone(each.severity) };
            item(lead, [each.text.as_str(), each.meaning].join(" ").trim().to_owned())
        });
        vec![list(items.collect())]
    }

    fn gather_ingredients(&self, formula: &Formula, evaluation: &Evaluation) -> Vec<PostBlockView> {
        let declared = self.declare_for_reader(formula, evaluation);
        let mut blocks = vec![paragraph(declared.declaration)];
        if !declared.said.is_empty() {
            blocks.push(list(declared.said.into_iter().map(|text| item("", text)).collect()));
        }
        blocks
    }

    /// What one needs at hand besides the materials.
    pub(crate) fn tools_of(&self, formula: &Formula, evaluation: &Evaluation) -> Vec<String> {
        let there = |kind: PhaseKind| formula.phases.iter().any(|each| each.kind == kind && !each.lines.is_empty());
        let heated = formula.phases.iter().any(|each| is_heated(each.kind) && !each.lines.is_empty());
        let contents = self.contents_of(formula, evaluation);
        let mut tools = vec![says::tool_scale(), says::tool_beakers()];
        if heated {
            tools.extend([says::tool_bath(), says::tool_thermometer()]);
        }
        tools.push(if there(PhaseKind::HeatedOil) { says::tool_blender() } else { says::tool_stirrer() });
        if contents.water > 0.0 {
            tools.push(says::tool_ph());
        }
        if contents.with(Trait::Caustic).next().is_some() {
            tools.push(says::tool_guards());
        }
        tools.into_iter().map(str::to_owned).collect()
    }
}

/// What can be taken instead of a line: what the author notes, and what was worked out, where it was.
fn gather_instead(session: &Session, formula: &Formula, swaps: &[Instead]) -> Vec<PostBlockView> {
    let mut items: Vec<PostItemView> = Vec::new();
    for line in formula.lines() {
        let worked = swaps.iter().find(|each| each.id == line.id);
        let ways = worked.map_or(&[][..], |each| &each.ways);
        let name = session.materials.name(line.material);
        if !line.substitution.trim().is_empty() {
            items.push(item(name.clone(), says::instead_author(line.substitution.trim())));
        }
        // Most are weighed under their own name, which is said once then.
        let said = |(way, takes): &(String, String)| {
            if takes.starts_with(way.as_str()) { takes.clone() } else { says::instead_way(way, takes) }
        };
        let said: Vec<String> = ways.iter().map(said).collect();
        if !said.is_empty() {
            items.push(item(name, says::instead_ways(&said.join(says::between()))));
        }
    }
    if items.is_empty() {
        return Vec::new();
    }
    let mut blocks = vec![list(items)];
    if swaps.iter().any(|each| !each.ways.is_empty()) {
        blocks.push(paragraph(says::instead_source()));
    }
    blocks
}
