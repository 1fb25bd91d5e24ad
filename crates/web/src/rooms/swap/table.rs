//! The author's table: for each line the substitutions that hold, with numbers, as a part of what is written out.

use crate::lazy::lazy;
use crate::messages::swap as says;
use crate::rooms::share::write_up::{WrittenForm, html, markdown};
use crate::session::Session;
use std::fmt::Write as _;
use std::rc::Rc;
use stillroom_core::checks::can_check;
use stillroom_core::composition::Makeups;
use stillroom_core::rebuild::Version;
use stillroom_core::{FormulaId, LineId};

/// Most substitutions named for a line.
const MOST_WAYS: usize = 3;

/// What can be taken instead of a line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Instead {
    /// Of which line.
    pub(crate) id: LineId,
    line: String,
    /// What its author says.
    note: String,
    /// What was worked out: a name, and what is weighed then.
    pub(crate) ways: Vec<(String, String)>,
}

impl Session {
    /// Writes a formula out with a table of the substitutions that hold; without one where there are none.
    pub fn write_up_with_substitutions(&mut self, id: FormulaId, form: WrittenForm) -> String {
        let written = self.write_up(id, form);
        let table = self.substitutions_of(id);
        if table.is_empty() {
            return written;
        }
        match form {
            WrittenForm::Markdown => format!("{written}\n{}", as_markdown(&table)),
            WrittenForm::Html => format!("{written}{}", as_html(&table)),
            WrittenForm::Text => format!("{written}\n{}", as_text(&table)),
            // A table of amounts holds nothing beside them.
            WrittenForm::Csv => written,
        }
    }

    fn substitutions_of(&mut self, id: FormulaId) -> Vec<Instead> {
        let Some(record) = self.shelf.get(&id).map(Rc::clone) else { return Vec::new() };
        let formula = &record.formula;
        let mut makeups = core::mem::take(&mut self.makeups);
        let evaluation = stillroom_core::evaluation::evaluate(formula, &self.bench, &self.materials, &mut makeups);
        let mut table = Vec::new();
        if can_check(&evaluation) && evaluation.composition.unresolved.is_empty() {
            for line in formula.lines() {
                let ways = if self.is_water(line.material) {
                    Vec::new()
                } else {
                    self.ways_of(formula, &evaluation, line.id, &mut makeups)
                };
                let held = ways.iter().filter(|worked| worked.holds()).filter_map(|worked| {
                    let version = worked.answer.as_ref().ok()?;
                    let material = worked.way.material().map(|id| self.materials.name(id));
                    let name = material.unwrap_or_else(|| says::way_apart().to_owned());
                    Some((name, self.takes(version, &mut makeups)))
                });
                let ways: Vec<(String, String)> = held.take(MOST_WAYS).collect();
                if !ways.is_empty() || !line.substitution.is_empty() {
                    let name = self.materials.name(line.material);
                    table.push(Instead { id: line.id, line: name, note: line.substitution.clone(), ways });
                }
            }
        }
        self.makeups = makeups;
        table
    }

    /// What is weighed in place of a line: what comes, and what becomes more.
    fn takes(&self, version: &Version, makeups: &mut Makeups) -> String {
        let is = stillroom_core::evaluation::evaluate(&version.formula, &self.bench, &self.materials, makeups);
        let named = version.came.iter().chain(&version.changed).filter_map(|line| {
            let line = version.formula.line(*line)?;
            if line.amount == stillroom_core::Amount::QuantumSatis {
                return None;
            }
            let share = is.lines.iter().find(|(share, _)| share.line == line.id)?.0.percent.value().round_dp(4);
            let number = stillroom_core::number::write_between(share, 2, 4, self.mark());
            let percent = crate::messages::sentences::with_unit(&number, "%");
            Some(says::comes(&self.materials.name(line.material), &percent))
        });
        let named: Vec<String> = named.collect();
        if named.is_empty() { says::more_rest().to_owned() } else { crate::messages::sentences::list(&named) }
    }
}

lazy! {
    swap "b8" pub(crate) fn substitutions_for_reader(session: &mut Session, id: FormulaId) -> Vec<Instead> {
        let mut table = session.substitutions_of(id);
        // A reader is told amounts: a way that says of none is left out.
        for each in &mut table {
            each.ways.retain(|(_, takes)| takes != says::more_rest());
        }
        table
    } else { Vec::new() }
}

fn as_markdown(table: &[Instead]) -> String {
    let mut out = format!("## {}\n\n{}\n\n", says::table_title(), says::table_intro());
    // Writing to a text cannot fail, here and below.
    let _ = writeln!(
        out,
        "| {} | {} | {} |\n|:--|:--|:--|",
        says::table_line(),
        says::table_instead(),
        says::table_takes()
    );
    for Instead { line, note, ways, .. } in table {
        let mut name = markdown(line);
        if !note.is_empty() {
            let _ = writeln!(out, "| {} | {} | {} |", std::mem::take(&mut name), says::table_author(), markdown(note));
        }
        for (instead, takes) in ways {
            let _ = writeln!(out, "| {} | {} | {} |", std::mem::take(&mut name), markdown(instead), markdown(takes));
        }
    }
    out
}

fn as_html(table: &[Instead]) -> String {
    let cell = |tag: &str, text: &str| format!("<{tag}>{}</{tag}>", html(text));
    let heads = [says::table_line(), says::table_instead(), says::table_takes()].map(|head| cell("th", head)).concat();
    let mut out = format!(
        "<h3>{}</h3>\n<p>{}</p>\n<table>\n<thead><tr>{heads}</tr></thead>\n<tbody>\n",
        html(says::table_title()),
        html(says::table_intro())
    );
    for Instead { line, note, ways, .. } in table {
        let mut name = line.as_str();
        let author = (says::table_author().to_owned(), note.clone());
        for (instead, takes) in Some(&author).filter(|_| !note.is_empty()).into_iter().chain(ways) {
            let row = [cell("td", std::mem::take(&mut name)), cell("td", instead), cell("td", takes)].concat();
            let _ = writeln!(out, "<tr>{row}</tr>");
        }
    }
    out.push_str("</tbody>\n</table>\n");
    out
}

fn as_text(table: &[Instead]) -> String {
    let mut out = format!("{}\n{}\n\n", says::table_title(), says::table_intro());
    for Instead { line, note, ways, .. } in table {
        let _ = writeln!(out, "{line}");
        if !note.is_empty() {
            let _ = writeln!(out, "  {}: {note}", says::table_author());
        }
        for (instead, takes) in ways {
            let _ = writeln!(out, "  {instead}: {takes}");
        }
    }
    out
}
