//! The parts of a post that lead back to the formula: the link, its code, and the lines that put it on a page.

use crate::messages::post as says;
use crate::rooms::post::block::paragraph;
use crate::rooms::post::gather::Source;
use crate::rooms::post::parts::Part;
use crate::rooms::post::view::PostBlockView;
use crate::rooms::share::view::LinkView;
use crate::rooms::share::write_up::html;

/// What one of these parts holds; why it holds nothing where the formula is no link.
pub(crate) fn gather_link(part: Part, source: &Source<'_>) -> Vec<PostBlockView> {
    let LinkView { address, code, error, code_problem, name, .. } = source.link;
    if let Some(error) = error {
        return vec![paragraph(error.clone())];
    }
    if address.is_empty() {
        return Vec::new();
    }
    match (part, code) {
        (Part::Link, _) => vec![PostBlockView {
            kind: "link",
            text: says::open_at_bench().to_owned(),
            address: address.clone(),
            ..PostBlockView::default()
        }],
        (Part::Code, Some(code)) => vec![PostBlockView {
            kind: "code",
            text: says::code_is(name),
            code: Some(code.clone()),
            ..PostBlockView::default()
        }],
        (Part::Code, None) => vec![paragraph(code_problem.clone())],
        _ => vec![PostBlockView { kind: "snippet", text: snippet(source), ..PostBlockView::default() }],
    }
}

/// The lines that put the formula on a page: they are HTML, and so is what is escaped in them.
fn snippet(source: &Source<'_>) -> String {
    let LinkView { address, name, .. } = source.link;
    let site = source.site.split(['#', '?']).next().unwrap_or_default();
    let folder = site.rfind('/').map_or(site, |at| &site[..=at]);
    format!(
        "<stillroom-formula><a href=\"{}\">{}</a></stillroom-formula>\n<script type=\"module\" src=\"{}embed/stillroom.js\"></script>",
        html(address),
        html(name),
        html(folder)
    )
}
