//! What a part of the post is made of.

use crate::messages::post as says;
use crate::rooms::post::view::{PostBlockView, PostItemView, PostRowView};

/// A paragraph.
pub(crate) fn paragraph(text: impl Into<String>) -> PostBlockView {
    PostBlockView { kind: "text", text: text.into(), ..PostBlockView::default() }
}

/// An item with what it is about before it, or nothing.
pub(crate) fn item(about: impl AsRef<str>, text: impl Into<String>) -> PostItemView {
    let about = about.as_ref();
    let lead = if about.is_empty() { String::new() } else { says::item_about(about) };
    PostItemView { lead, text: text.into() }
}

/// A list.
pub(crate) fn list(items: Vec<PostItemView>) -> PostBlockView {
    PostBlockView { kind: "list", items, ..PostBlockView::default() }
}

/// Steps, numbered.
pub(crate) fn steps(texts: Vec<String>) -> PostBlockView {
    let items = texts.into_iter().map(|text| item("", text)).collect();
    PostBlockView { kind: "steps", items, ..PostBlockView::default() }
}

/// A table.
pub(crate) fn table(about: impl Into<String>, heads: Vec<String>, rows: Vec<PostRowView>) -> PostBlockView {
    PostBlockView { kind: "table", text: about.into(), heads, rows, ..PostBlockView::default() }
}

/// A row of a table.
pub(crate) fn row(kind: &'static str, cells: Vec<String>) -> PostRowView {
    PostRowView { kind, cells }
}
