//! The label of the open formula as the page shows it.

use crate::messages::{label as says, named};
use crate::rooms::batches::view::RemarkView;
use crate::rooms::findings::sentences as sentences_findings;
use crate::rooms::label::contents::usual_volume;
use crate::rooms::label::dates::Lasting;
use crate::rooms::label::edit::LabelDesk;
use crate::rooms::label::fields::{Filled, LEAVE, Usual, fields};
use crate::rooms::label::naming::place_of;
use crate::rooms::label::remarks::{left_off, loaded_wording, missing_on_label};
use crate::rooms::label::sentences;
use crate::rooms::label::view::{LabelNameView, LabelStatementView, LabelView};
use crate::rooms::ph::offer::key_of;
use crate::rooms::update::Update;
use crate::session::Session;
use stillroom_catalogue::Catalogue;
use stillroom_catalogue::knowledge::label_conditions;
use stillroom_core::checks::{Contents, can_check};
use stillroom_core::evaluation::Evaluation;
use stillroom_core::label::{
    Asked, Declaration, Doubt, ForLabel, LabelText, Paragraph, Stated, declare, read_for_label, statements,
};
use stillroom_core::number::with_unit;
use stillroom_core::source::Basis;
use stillroom_core::{Formula, MaterialId};
use stillroom_exchange::record::FormulaRecord;

impl Session {
    /// The label, where it is looked at and changed.
    pub(crate) fn present_label(&mut self, update: &mut Update) {
        if self.waiting.of::<LabelDesk>().looking {
            let view = self.show_label();
            update.label = self.shown.changed(view);
        }
    }

    fn show_label(&mut self) -> LabelView {
        let Some((record, evaluation)) = self.evaluate_open() else {
            return LabelView { problem: says::none_open().to_owned(), ..LabelView::default() };
        };
        if !can_check(&evaluation) || !evaluation.composition.unresolved.is_empty() {
            return LabelView { problem: says::unsound().to_owned(), ..LabelView::default() };
        }
        let lasting = self.lasting(&record);
        self.show_sound_label(&record, &evaluation, &lasting)
    }

    /// What of the jar the list is made of, and the list in its order, as they are in the market that was chosen.
    pub(crate) fn list_for_label<'a>(&self, contents: &Contents<'a>, filled: &Filled) -> (ForLabel<'a>, Declaration) {
        let market = filled.market();
        let asked = Asked {
            market,
            is_nano: &|id| filled.is_nano(&key_of(id)),
            is_typical: &is_typical,
            name: &|id| self.label_name(id, market),
        };
        let reading = read_for_label(contents, &asked);
        let list = declare(&reading.ingredients, &reading.allergens, market);
        (reading, list)
    }

    fn show_sound_label(&self, record: &FormulaRecord, evaluation: &Evaluation, lasting: &Lasting) -> LabelView {
        let formula = &record.formula;
        let filled = self.label_filled(formula);
        let market = filled.market();
        let contents = self.contents_of(formula, evaluation);
        let (reading, list) = self.list_for_label(&contents, &filled);
        let declared = self.declaration_text(&list, market);
        let held = self.held_by_container(formula, evaluation, &filled);
        let usual = Usual {
            function: usual_function(formula),
            volume: usual_volume(formula, &filled),
            lot: lasting.lot.clone(),
            before: lasting.before(),
            opening: lasting.opening(),
        };
        let function = filled.text_or("function", &usual.function);
        let stated = statements(&contents, market, label_conditions());
        let (allergens, allergens_about) = self.show_allergens(&reading, market);
        let mut said = self.say_of_list(&contents, &reading, &list, market);
        if !held.how.is_empty() {
            said.push(RemarkView { tone: "note", text: held.how.clone() });
        }
        said.push(RemarkView { tone: "note", text: lasting.rule(&filled) });
        let text = LabelText {
            name: formula.name.clone(),
            function: function.clone(),
            contents: held.text.clone(),
            opening: filled_opening(&filled, &usual),
            paragraphs: paragraphs(&filled, &usual, &stated, &declared),
            code: None,
        };
        let mut view = LabelView {
            fields: fields(&filled, &usual, &self.may_be_nano(&reading, &filled), self.mark()),
            declaration: says::declaration(&declared),
            names: list
                .names
                .iter()
                .map(|each| LabelNameView {
                    name: self.declared_name(each, market),
                    percent: with_unit(&self.significant(each.percent.to_physics(), 3), "%"),
                    place: place_of(each.group),
                    doubtful: each.doubt != Doubt::default(),
                })
                .collect(),
            said,
            allergens,
            allergens_about,
            statements: stated.iter().map(|each| self.show_statement(each, &filled)).collect(),
            missing: left_off(&stated, &filled)
                .into_iter()
                .chain(missing_on_label(&filled, lasting, &held.text, &function))
                .collect(),
            wording: loaded_wording(formula, &filled, &function),
            ..LabelView::default()
        };
        self.draw_label(&filled, &held, &text, &mut view);
        view
    }

    fn show_statement(&self, each: &Stated, filled: &Filled) -> LabelStatementView {
        let code = each.statement.code();
        let names: Vec<&str> = each.about.iter().map(|id| self.materials.inci(*id)).collect();
        let source = sentences_findings::citation(&each.citation);
        let about = crate::messages::sentences::list(&names);
        let why = match (each.is_asked, about.is_empty()) {
            (true, _) => says::statement_asked(&about, &source),
            (false, false) => says::statement_advised_for(&about),
            (false, true) => says::statement_advised().to_owned(),
        };
        LabelStatementView {
            field: format!("label.{LEAVE}{code}"),
            text: sentences::statement(each.statement, filled.market()).to_owned(),
            why,
            there: !filled.leaves_off(code),
        }
    }

    /// What may be a nanomaterial, by its key and name: what nobody spoke of, and what somebody did.
    fn may_be_nano(&self, reading: &ForLabel<'_>, filled: &Filled) -> Vec<(String, String)> {
        let ids = reading.ingredients.iter().map(|each| each.id);
        let asked = ids.filter(|id| reading.nano_unknown.contains(id) || filled.is_nano(&key_of(*id)).is_some());
        asked.map(|id| (key_of(id), self.materials.inci(id).to_owned())).collect()
    }
}

/// Whether a material is a composite of which only what sellers usually state is known.
fn is_typical(id: MaterialId) -> bool {
    let card = Catalogue::get().card(id);
    card.is_some_and(|card| card.parts.iter().any(|part| part.origin.basis == Basis::SupplierTypical))
}

/// What a product of its kind is called.
fn usual_function(formula: &Formula) -> String {
    let Some(kind) = formula.kind else { return String::new() };
    let name = format!("function-{}", kind.slug());
    named::find(says::BY_NAME, says::PIECE, &name).map_or_else(String::new, |message| message.text().to_owned())
}

/// What stands in the open jar.
fn filled_opening(filled: &Filled, usual: &Usual) -> String {
    let months = filled.opening().map_or_else(|| usual.opening.clone(), |months| months.to_string());
    if months.is_empty() || months == "0" { String::new() } else { format!("{months}M") }
}

fn paragraphs(filled: &Filled, usual: &Usual, stated: &[Stated], declared: &str) -> Vec<Paragraph> {
    let paragraph = |lead: &str, text: String| Paragraph { lead: lead.to_owned(), text };
    let market = filled.market();
    let mut all = vec![paragraph(says::lead_ingredients(), format!("{declared}."))];
    let claims = filled.text("claims");
    if !claims.is_empty() {
        all.push(paragraph("", claims.to_owned()));
    }
    let there = stated.iter().filter(|each| !filled.leaves_off(each.statement.code()));
    let mut cautions: Vec<&str> = there.map(|each| sentences::statement(each.statement, market)).collect();
    cautions.push(filled.text("caution"));
    let cautions = cautions.join(" ");
    if !cautions.trim().is_empty() {
        all.push(paragraph("", cautions.trim().to_owned()));
    }
    let before = filled.text_or("before", &usual.before);
    if !before.is_empty() {
        all.push(paragraph(says::lead_before(), before));
    }
    let lot = filled.text_or("lot", &usual.lot);
    if !lot.is_empty() {
        all.push(paragraph(says::lead_lot(), lot));
    }
    let maker: Vec<&str> = ["person", "address", "contact"]
        .into_iter()
        .map(|name| filled.text(name))
        .filter(|text| !text.is_empty())
        .collect();
    if !maker.is_empty() {
        all.push(paragraph("", maker.join(", ")));
    }
    let country = filled.text("country");
    if !country.is_empty() {
        all.push(paragraph("", says::made_in(country)));
    }
    all
}
