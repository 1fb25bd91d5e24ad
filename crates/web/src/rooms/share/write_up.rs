//! A formula written out for people: Markdown and plain text for a blog, a table for a spreadsheet.

use crate::messages::common;
use crate::messages::share as says;
use crate::rooms::formula::view::LineView;
use crate::rooms::update::Update;
use crate::session::Session;
use std::fmt::Write as _;
use std::rc::Rc;
use stillroom_core::number::with_unit;
use stillroom_core::{FormulaId, PhaseKind};
use stillroom_exchange::table::begins_a_formula;

/// Forms a formula can be written out in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WrittenForm {
    /// Markdown (`CommonMark` with tables).
    Markdown,
    /// HTML, to be pasted into a page: no style, no script.
    Html,
    /// Plain text.
    Text,
    /// Comma-separated values (RFC 4180), which a spreadsheet opens.
    Csv,
}

impl WrittenForm {
    /// Reads its name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Some(match name {
            "markdown" => Self::Markdown,
            "html" => Self::Html,
            "text" => Self::Text,
            "csv" => Self::Csv,
            _ => return None,
        })
    }
}

/// A line of the weigh sheet with its phase.
pub(crate) struct Row {
    /// Its phase, with what that is brought to.
    pub(crate) phase: String,
    /// The line.
    pub(crate) line: Rc<LineView>,
}

impl Session {
    /// Writes a formula out as this maker reads it; nothing where it is not on the shelf.
    pub fn write_up(&mut self, id: FormulaId, form: WrittenForm) -> String {
        if !self.shelf.contains_key(&id) {
            return String::new();
        }
        let open = self.open.replace(id);
        let last = std::mem::take(&mut self.shown);
        let mut update = Update::default();
        self.present_formula(&mut update);
        self.shown = last;
        self.open = open;
        match form {
            WrittenForm::Markdown => as_markdown(&update),
            WrittenForm::Html => as_html(&update),
            WrittenForm::Text => as_text(&update),
            WrittenForm::Csv => as_csv(&update),
        }
    }
}

/// The lines with their phases, in the order they are weighed.
pub(crate) fn rows(update: &Update) -> Vec<Row> {
    let phases = update.formula.iter().flat_map(|formula| &formula.phases);
    let rows = phases.flat_map(|phase| {
        let degrees = with_unit(&phase.temperature, phase.temperature_unit);
        let degrees = match (phase.temperature.is_empty(), phase.kind) {
            (true, _) => phase.name.clone(),
            (false, PhaseKind::HeatedWater | PhaseKind::HeatedOil) => says::phase_to(&phase.name, &degrees),
            (false, PhaseKind::CoolDown | PhaseKind::RoomTemperature) => says::phase_under(&phase.name, &degrees),
        };
        phase.lines.iter().filter_map(move |id| {
            let line = update.lines.iter().find(|line| line.id == *id)?;
            Some(Row { phase: degrees.clone(), line: Rc::clone(line) })
        })
    });
    rows.collect()
}

fn as_markdown(update: &Update) -> String {
    let Some(formula) = &update.formula else { return String::new() };
    let mut out = String::new();
    // Writing to a text cannot fail, here and below.
    let _ = writeln!(out, "# {}\n", markdown(&formula.name));
    let _ = writeln!(out, "| {} | % | {} |\n|:--|--:|--:|", says::material(), formula.mass_unit);
    let mut phase = String::new();
    for row in rows(update) {
        if row.phase != phase {
            phase.clone_from(&row.phase);
            let _ = writeln!(out, "| **{}** | | |", markdown(&phase));
        }
        let line = &row.line;
        let _ = writeln!(out, "| {} | {} | {} |", markdown(&line.name), line.percent.trim(), line.mass.trim());
    }
    let _ = writeln!(out, "| **{}** | **{}** | **{}** |\n", says::total(), formula.total, formula.total_mass);
    for (at, step) in formula.steps.lines().filter(|step| !step.trim().is_empty()).enumerate() {
        let _ = writeln!(out, "{}. {}", at + 1, markdown(step));
    }
    if !formula.notes.is_empty() {
        let _ = writeln!(out, "\n{}", formula.notes.lines().map(markdown).collect::<Vec<_>>().join("  \n"));
    }
    let _ = writeln!(out, "\n> {}", says::caution());
    out
}

/// Text that Markdown takes as text: what would begin markup is escaped, and nothing becomes HTML.
pub(crate) fn markdown(text: &str) -> String {
    let mut escaped = String::new();
    for character in text.chars() {
        match character {
            '\\' | '`' | '*' | '_' | '{' | '}' | '[' | ']' | '<' | '>' | '#' | '|' | '!' | '~' | '&' => {
                escaped.push('\\');
                escaped.push(character);
            }
            '\n' | '\r' => escaped.push(' '),
            _ => escaped.push(character),
        }
    }
    escaped
}

fn as_html(update: &Update) -> String {
    let Some(formula) = &update.formula else { return String::new() };
    let mut out = format!("<h2>{}</h2>\n", html(&formula.name));
    let heads = [says::material(), "%", &formula.mass_unit].map(|head| format!("<th>{}</th>", html(head))).concat();
    let _ = writeln!(out, "<table>\n<thead><tr>{heads}</tr></thead>\n<tbody>");
    let mut phase = String::new();
    for row in rows(update) {
        if row.phase != phase {
            phase.clone_from(&row.phase);
            let _ = writeln!(out, "<tr><th colspan=\"3\">{}</th></tr>", html(&phase));
        }
        let cells = [&row.line.name, row.line.percent.trim(), row.line.mass.trim()];
        let _ = writeln!(out, "<tr>{}</tr>", cells.map(|cell| format!("<td>{}</td>", html(cell))).concat());
    }
    let sums = [says::total(), &formula.total, &formula.total_mass].map(|sum| format!("<th>{}</th>", html(sum)));
    let _ = writeln!(out, "</tbody>\n<tfoot><tr>{}</tr></tfoot>\n</table>", sums.concat());
    let steps: Vec<String> = formula
        .steps
        .lines()
        .filter(|step| !step.trim().is_empty())
        .map(|step| format!("<li>{}</li>", html(step)))
        .collect();
    if !steps.is_empty() {
        let _ = writeln!(out, "<ol>\n{}\n</ol>", steps.join("\n"));
    }
    if !formula.notes.is_empty() {
        let _ = writeln!(out, "<p>{}</p>", formula.notes.lines().map(html).collect::<Vec<_>>().join("<br>\n"));
    }
    let _ = writeln!(out, "<p><small>{}</small></p>", html(says::caution().trim()));
    out
}

/// Text that HTML takes as text.
pub(crate) fn html(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;").replace('\'', "&#39;")
}

fn as_text(update: &Update) -> String {
    let Some(formula) = &update.formula else { return String::new() };
    let mut out = format!("{}\n{}\n\n", formula.name, "=".repeat(formula.name.chars().count().min(60)));
    let rows = rows(update);
    let width = rows.iter().map(|row| row.line.name.chars().count()).max().unwrap_or(0).clamp(12, 44);
    let mut phase = String::new();
    for row in &rows {
        if row.phase != phase {
            phase.clone_from(&row.phase);
            let _ = writeln!(out, "{phase}");
        }
        let line = &row.line;
        let _ = writeln!(
            out,
            "  {:<width$} {} {:>10} {}",
            line.name,
            common::percent(&format!("{:>9}", line.percent.trim())),
            line.mass.trim(),
            formula.mass_unit
        );
    }
    let total = says::total();
    let percent = common::percent(&format!("{:>9}", formula.total));
    let _ = writeln!(out, "  {total:<width$} {percent} {:>10} {}\n", formula.total_mass, formula.mass_unit);
    for (at, step) in formula.steps.lines().filter(|step| !step.trim().is_empty()).enumerate() {
        let _ = writeln!(out, "{}. {step}", at + 1);
    }
    if !formula.notes.is_empty() {
        let _ = writeln!(out, "\n{}", formula.notes);
    }
    let _ = writeln!(out, "\n{}", says::caution());
    out
}

fn as_csv(update: &Update) -> String {
    let Some(formula) = &update.formula else { return String::new() };
    // A spreadsheet that reads commas as decimals separates fields by semicolons.
    let uses_comma = update.lines.iter().any(|line| line.percent.contains(','));
    let separator = if uses_comma { ";" } else { "," };
    // The mark at the beginning lets spreadsheets read it as UTF-8.
    let mut out = "\u{feff}".to_owned();
    let mut write = |fields: [&str; 5]| {
        let _ = write!(out, "{}\r\n", fields.map(csv_field).join(separator));
    };
    write([
        says::column_phase(),
        says::column_material(),
        says::column_percent(),
        &says::column_mass(&formula.mass_unit),
        says::column_note(),
    ]);
    for Row { phase, line } in rows(update) {
        write([&phase, &line.name, line.percent.trim(), line.mass.trim(), &line.note]);
    }
    write(["", says::total(), &formula.total, &formula.total_mass, ""]);
    out
}

/// A field in quotes. One that a spreadsheet would take for a formula begins with an apostrophe, as spreadsheets themselves
/// mark text.
fn csv_field(field: &str) -> String {
    format!("\"{}{}\"", if begins_a_formula(field) { "'" } else { "" }, field.replace('"', "\"\""))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_in_a_name_becomes_markup() {
        assert_eq!(markdown("<script>alert(1)</script>"), "\\<script\\>alert(1)\\</script\\>");
        assert_eq!(markdown("a|b\n# c"), "a\\|b \\# c");
        assert_eq!(html("<b class='x'>&\""), "&lt;b class=&#39;x&#39;&gt;&amp;&quot;");
    }

    #[test]
    fn nothing_in_a_field_becomes_a_formula_of_the_spreadsheet() {
        assert_eq!(csv_field("=cmd|' /C calc'!A0"), "\"'=cmd|' /C calc'!A0\"");
        for sign in ['\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}'] {
            assert_eq!(csv_field(&format!("{sign}1+1")), format!("\"'{sign}1+1\""), "full-width signs compute, too");
        }
        assert_eq!(csv_field("\u{feff} \u{a0}=1"), "\"'\u{feff} \u{a0}=1\"", "what nobody sees hides no sign");
        assert_eq!(csv_field("a \"b\", c"), "\"a \"\"b\"\", c\"");
    }
}
