//! The post as the page shows it.

use crate::lazy::{Piece, is_here};
use crate::messages::sentences::about_formula;
use crate::messages::{label, language, post as says, share};
use crate::rooms::ph::view::PhFieldView;
use crate::rooms::post::card::{Card, CardRow, WIDTH, draw};
use crate::rooms::post::gather::Source;
use crate::rooms::post::how_to::{HowTo, write};
use crate::rooms::post::parts::{Chosen, PICTURE_LINK, Part, Size};
use crate::rooms::post::public::{link_for_others, open_for_others, public_parcel};
use crate::rooms::post::titles::{about_part, name_of_size, title_of};
use crate::rooms::post::view::{PostPartView, PostPictureView, PostView};
use crate::rooms::post::written::{Post, as_html, as_markdown, as_page};
use crate::rooms::share::view::LinkView;
use crate::rooms::share::write_up::rows;
use crate::rooms::swap::table::{Instead, substitutions_for_reader};
use crate::rooms::update::Update;
use crate::session::Session;
use std::rc::Rc;
use stillroom_core::Formula;
use stillroom_core::checks::can_check;
use stillroom_exchange::record::FormulaRecord;

/// What the room waits with.
#[derive(Debug, Default)]
pub(crate) struct PostDesk {
    /// Whether the page shows the post.
    pub(crate) looking: bool,
    /// Address of the site, which the link begins with.
    pub(crate) site: String,
    /// What can be taken instead, and of what: looking for it takes longer than all the rest.
    swaps: Option<(Formula, u64, Rc<Vec<Instead>>)>,
}

impl Session {
    /// The post, where it is looked at and changed.
    pub(crate) fn present_post(&mut self, update: &mut Update) {
        if self.waiting.of::<PostDesk>().looking {
            let view = self.show_post();
            update.post = self.shown.changed(view);
        }
    }

    fn show_post(&mut self) -> PostView {
        let Some((record, evaluation)) = self.evaluate_open() else {
            return PostView { problem: label::none_open().to_owned(), ..PostView::default() };
        };
        if !can_check(&evaluation) || !evaluation.composition.unresolved.is_empty() {
            return PostView { problem: label::unsound().to_owned(), ..PostView::default() };
        }
        let chosen = Chosen::read(&record.formula.label);
        let asked = evaluation.batch.as_ref().ok().map(|batch| batch.mass);
        let sizes = Size::ALL.map(|size| chosen.size(size, asked));
        let Some(parcel) = public_parcel(record.id, self, sizes[1]) else { return PostView::default() };
        let site = self.waiting.of::<PostDesk>().site.clone();
        let link = link_for_others(&parcel, &site);
        let mut reading = open_for_others(&parcel, &self.settings, self.mark());
        let swaps_known = is_here(Piece::Swap);
        let swaps = if swaps_known && chosen.has(Part::Instead) {
            self.swaps_for_reader(&parcel.formula, &mut reading)
        } else {
            Rc::default()
        };
        let Some((open, worked)) = reading.evaluate_open() else { return PostView::default() };
        let source = Source {
            record: open,
            evaluation: worked,
            chosen: &chosen,
            sizes,
            link: &link,
            site: &site,
            swaps: &swaps,
        };
        let field_of = |size: Size, mass| PhFieldView {
            field: format!("post.{}", size.word()),
            label: name_of_size(size).to_owned(),
            unit: self.settings.mass_unit.symbol().to_owned(),
            text: self.mass_number(mass),
            choices: Vec::new(),
        };
        PostView {
            parts: show_parts(&chosen, swaps_known),
            sizes: Size::ALL.into_iter().zip(sizes).map(|(size, mass)| field_of(size, mass)).collect(),
            swaps_known,
            ..reading.write_post(&source)
        }
    }

    /// What can be taken instead of each line, looked for once.
    fn swaps_for_reader(&mut self, formula: &Formula, reading: &mut Session) -> Rc<Vec<Instead>> {
        let within = self.surroundings_changed;
        // What is filled in for a label or chosen for a post changes no amount.
        let bare = Formula { label: String::new(), notes: String::new(), ..formula.clone() };
        if let Some((of, seen, swaps)) = &self.waiting.of::<PostDesk>().swaps
            && *of == bare
            && *seen == within
        {
            return Rc::clone(swaps);
        }
        let found = reading.open.map(|id| substitutions_for_reader(reading, id)).unwrap_or_default();
        let swaps = Rc::new(found);
        self.waiting.of::<PostDesk>().swaps = Some((bare, within, Rc::clone(&swaps)));
        swaps
    }

    /// All that is written, by a session that holds the formula and nothing else.
    fn write_post(&mut self, source: &Source<'_>) -> PostView {
        let record: &FormulaRecord = &source.record;
        let formula = &record.formula;
        let about = about_formula(formula, &source.evaluation.balance, self.mark());
        let sections = self.gather_post(source);
        let how_to = self.write_how_to(source, &about);
        let post = Post { title: &formula.name, about: &about, sections: &sections, how_to: &how_to };
        let (markdown, html, page) = (as_markdown(&post), as_html(&post), as_page(&post));
        let picture = self.draw_picture(source, &about);
        PostView {
            title: formula.name.clone(),
            about,
            sections,
            markdown,
            html,
            page,
            picture: Some(picture),
            ..PostView::default()
        }
    }

    fn write_how_to(&self, source: &Source<'_>, about: &str) -> String {
        let (formula, chosen) = (&source.record.formula, source.chosen);
        let evaluation = &source.evaluation;
        let with_amounts = chosen.has(Part::Formula) || chosen.has(Part::Sizes);
        let supplies = formula.lines().enumerate().map(|(at, line)| {
            let weighed = evaluation.sheet.as_ref().and_then(|sheet| sheet.lines.get(at));
            let grams = weighed.map(|line| line.target.value().normalize().to_string()).unwrap_or_default();
            (self.materials.name(line.material), grams)
        });
        let steps = || {
            let own = Self::own_steps(formula);
            if own.is_empty() { self.steps_in_words(formula, evaluation) } else { own }
        };
        let has_method = chosen.has(Part::Method);
        write(&HowTo {
            name: &formula.name,
            description: about,
            language: language().tag(),
            makes: if with_amounts { self.mass(source.sizes[1]) } else { String::new() },
            url: Some(source.link.address.as_str()).filter(|url| chosen.has(Part::Link) && !url.is_empty()),
            supplies: if with_amounts { supplies.collect() } else { Vec::new() },
            tools: if has_method { self.tools_of(formula, evaluation) } else { Vec::new() },
            steps: if has_method { steps() } else { Vec::new() },
        })
    }

    fn draw_picture(&mut self, source: &Source<'_>, about: &str) -> PostPictureView {
        let mut update = Update::default();
        self.shown = crate::contract::shown::Shown::default();
        self.present_formula(&mut update);
        let mut drawn: Vec<CardRow> = Vec::new();
        let mut phase = String::new();
        for each in rows(&update) {
            if each.phase != phase {
                phase.clone_from(&each.phase);
                drawn.push(CardRow::Phase(phase.clone()));
            }
            let cell = |text: &str| text.trim().to_owned();
            drawn.push(CardRow::Line([each.line.name.clone(), cell(&each.line.percent), cell(&each.line.mass)]));
        }
        let (total, mass) =
            update.formula.as_ref().map(|head| (head.total.clone(), head.total_mass.clone())).unwrap_or_default();
        drawn.push(CardRow::Total([share::total().to_owned(), total, mass]));
        let layers = self.present_layers(&source.evaluation.composition);
        let LinkView { code, address, .. } = source.link;
        let linked = source.chosen.link_in_picture();
        let name = &source.record.formula.name;
        let description = says::picture_description(name);
        // What stands behind the mark is for machines: the code carries it.
        let site = address.split('#').next().unwrap_or_default();
        let (svg, height) = draw(&Card {
            title: name,
            about,
            layers: &layers,
            unit: self.settings.mass_unit.symbol(),
            rows: &drawn,
            caution: says::picture_caution(),
            code: code.as_ref().filter(|_| linked).map(|code| (code, site)),
            description: &description,
        });
        PostPictureView { svg, width: WIDTH, height, description, field: format!("post.{PICTURE_LINK}"), linked }
    }
}

fn show_parts(chosen: &Chosen, swaps_known: bool) -> Vec<PostPartView> {
    let show = |part: Part| PostPartView {
        field: format!("post.{}", part.word()),
        label: title_of(part).to_owned(),
        about: about_part(part, swaps_known).to_owned(),
        there: chosen.has(part),
        fixed: part == Part::Cautions,
    };
    Part::ALL.into_iter().map(show).collect()
}
