//! A post written out: as Markdown, as HTML to paste, as a page of its own.

use crate::messages::language;
use crate::rooms::post::view::{PostBlockView, PostItemView, PostSectionView};
use crate::rooms::share::view::CodeView;
use crate::rooms::share::write_up::{html, markdown};
use std::fmt::Write as _;

/// What is written.
pub(crate) struct Post<'a> {
    pub(crate) title: &'a str,
    pub(crate) about: &'a str,
    pub(crate) sections: &'a [PostSectionView],
    /// What machines read beside it, as `how_to` writes it.
    pub(crate) how_to: &'a str,
}

// Writing to a text cannot fail, here and below.

/// All of it as Markdown (`CommonMark` with tables). A code is a drawing, which Markdown does not hold: it is left to the
/// other forms.
pub(crate) fn as_markdown(post: &Post<'_>) -> String {
    let mut out = format!("# {}\n\n{}\n", markdown(post.title), line(post.about));
    for section in post.sections {
        let blocks: Vec<String> = section.blocks.iter().map(markdown_block).filter(|text| !text.is_empty()).collect();
        if !blocks.is_empty() {
            let _ = write!(out, "\n## {}\n\n{}", markdown(&section.title), blocks.join("\n"));
        }
    }
    out
}

fn markdown_block(block: &PostBlockView) -> String {
    let mut out = String::new();
    match block.kind {
        "list" => {
            for item in &block.items {
                let _ = writeln!(out, "- {}", markdown_item(item));
            }
        }
        "steps" => {
            for (at, item) in block.items.iter().enumerate() {
                let _ = writeln!(out, "{}. {}", at + 1, markdown_item(item));
            }
        }
        "table" => markdown_table(&mut out, block),
        "link" => {
            // The address holds letters, figures and a few marks that a link's brackets take as they are.
            let _ = writeln!(out, "[{}](<{}>)", markdown(&block.text), block.address.replace(['<', '>'], ""));
        }
        "snippet" => {
            let _ = writeln!(out, "{}", fenced(&block.text));
        }
        "code" => {}
        _ => {
            let _ = writeln!(out, "{}", line(&block.text));
        }
    }
    out
}

/// Lines to copy, between fences longer than any in them.
fn fenced(text: &str) -> String {
    let mut fence = "```".to_owned();
    while text.contains(&fence) {
        fence.push('`');
    }
    format!("{fence}html\n{text}\n{fence}")
}

fn markdown_item(item: &PostItemView) -> String {
    if item.lead.is_empty() {
        line(&item.text)
    } else {
        format!("**{}** {}", markdown(&item.lead), markdown(&item.text))
    }
}

fn markdown_table(out: &mut String, block: &PostBlockView) {
    if !block.text.is_empty() {
        let _ = writeln!(out, "{}\n", line(&block.text));
    }
    let cell = |text: &String| markdown(text);
    let heads: Vec<String> = block.heads.iter().map(cell).collect();
    let numbers = "--:|".repeat(heads.len().saturating_sub(1));
    let _ = writeln!(out, "| {} |\n|:--|{numbers}", heads.join(" | "));
    for row in &block.rows {
        let mut cells: Vec<String> = row.cells.iter().map(cell).collect();
        if row.kind != "line" {
            cells = cells.into_iter().map(|text| format!("**{text}**")).collect();
        }
        cells.resize(heads.len(), String::new());
        let _ = writeln!(out, "| {} |", cells.join(" | "));
    }
}

/// A text that begins a line: nothing in it becomes a list, a heading or a rule.
fn line(text: &str) -> String {
    let text = markdown(text.trim());
    let digits = text.chars().take_while(char::is_ascii_digit).count();
    let mark = text[digits..].strip_prefix(['.', ')']);
    if digits > 0 && mark.is_some_and(|rest| rest.is_empty() || rest.starts_with(char::is_whitespace)) {
        return format!("{}\\{}", &text[..digits], &text[digits..]);
    }
    if text.starts_with(['-', '+', '=']) { format!("\\{text}") } else { text }
}

/// All of it as HTML to paste into a page, below a heading of that page.
pub(crate) fn as_html(post: &Post<'_>) -> String {
    body(post, 2)
}

/// All of it as a page of its own: no style, and no script but what machines read.
pub(crate) fn as_page(post: &Post<'_>) -> String {
    format!(
        "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>{}</title>\n</head>\n\
         <body>\n<main>\n{}</main>\n</body>\n</html>\n",
        language().tag(),
        html(titled(post.title)),
        body(post, 1)
    )
}

/// A page needs a title even where the formula has none.
fn titled(title: &str) -> &str {
    if title.trim().is_empty() { "Stillroom" } else { title }
}

fn body(post: &Post<'_>, level: u8) -> String {
    let mut out =
        format!("<article lang=\"{}\">\n<h{level}>{}</h{level}>\n", language().tag(), html(titled(post.title)));
    let _ = writeln!(out, "<p>{}</p>", html(post.about));
    let below = level + 1;
    for section in post.sections {
        let _ = writeln!(out, "<section>\n<h{below}>{}</h{below}>", html(&section.title));
        for block in &section.blocks {
            html_block(&mut out, block);
        }
        out.push_str("</section>\n");
    }
    let _ = writeln!(out, "</article>\n<script type=\"application/ld+json\">\n{}\n</script>", post.how_to);
    out
}

fn html_block(out: &mut String, block: &PostBlockView) {
    match block.kind {
        "list" | "steps" => {
            let tag = if block.kind == "steps" { "ol" } else { "ul" };
            let _ = writeln!(out, "<{tag}>");
            for PostItemView { lead, text } in &block.items {
                let lead = if lead.is_empty() { String::new() } else { format!("<strong>{}</strong> ", html(lead)) };
                let _ = writeln!(out, "<li>{lead}{}</li>", html(text));
            }
            let _ = writeln!(out, "</{tag}>");
        }
        "table" => html_table(out, block),
        "link" => {
            let _ = writeln!(out, "<p><a href=\"{}\">{}</a></p>", html(&block.address), html(&block.text));
        }
        "snippet" => {
            let _ = writeln!(out, "<pre><code>{}</code></pre>", html(&block.text));
        }
        "code" => {
            if let Some(code) = &block.code {
                let _ = writeln!(out, "<p>{}</p>", svg_of_code(code, &block.text));
            }
        }
        _ => {
            let _ = writeln!(out, "<p>{}</p>", html(&block.text));
        }
    }
}

fn html_table(out: &mut String, block: &PostBlockView) {
    let _ = writeln!(out, "<table>");
    if !block.text.is_empty() {
        let _ = writeln!(out, "<caption>{}</caption>", html(&block.text));
    }
    let heads: Vec<String> = block.heads.iter().map(|head| format!("<th scope=\"col\">{}</th>", html(head))).collect();
    let heads = heads.concat();
    let _ = writeln!(out, "<thead><tr>{heads}</tr></thead>\n<tbody>");
    let mut foot = String::new();
    for row in &block.rows {
        let rest: Vec<String> = row.cells.iter().skip(1).map(|cell| format!("<td>{}</td>", html(cell))).collect();
        let rest = rest.concat();
        let first = row.cells.first().map(|cell| html(cell)).unwrap_or_default();
        match row.kind {
            "phase" => {
                let _ = writeln!(out, "<tr><th colspan=\"{}\" scope=\"colgroup\">{first}</th></tr>", block.heads.len());
            }
            "total" => {
                let _ = writeln!(foot, "<tr><th scope=\"row\">{first}</th>{rest}</tr>");
            }
            _ => {
                let _ = writeln!(out, "<tr><th scope=\"row\">{first}</th>{rest}</tr>");
            }
        }
    }
    let _ = writeln!(out, "</tbody>");
    if !foot.is_empty() {
        let _ = write!(out, "<tfoot>\n{foot}</tfoot>\n");
    }
    let _ = writeln!(out, "</table>");
}

/// A code as a drawing that is as wide as it has to be on paper.
fn svg_of_code(code: &CodeView, about: &str) -> String {
    let CodeView { side, path, millimetres, .. } = code;
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{millimetres}mm\" height=\"{millimetres}mm\" \
         viewBox=\"0 0 {side} {side}\" role=\"img\" aria-label=\"{}\" shape-rendering=\"crispEdges\">\
         <path fill=\"#fff\" d=\"M0 0h{side}v{side}H0z\"/><path fill=\"#000\" d=\"{path}\"/></svg>",
        html(about)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// `CommonMark` 0.31.2, sections 4 and 5: what these begin with is a list, a heading or a rule.
    #[test]
    fn nothing_that_begins_a_line_becomes_markup() {
        for (text, written) in [
            ("1. stir", "1\\. stir"),
            ("20) stir", "20\\) stir"),
            ("- a", "\\- a"),
            ("+ a", "\\+ a"),
            ("=== a", "\\=== a"),
            ("# a", "\\# a"),
            ("  20 g", "20 g"),
            ("2.5 g", "2.5 g"),
        ] {
            assert_eq!(line(text), written);
        }
    }

    #[test]
    fn fences_are_longer_than_any_inside() {
        assert_eq!(fenced("a ```` b"), "`````html\na ```` b\n`````");
    }
}
