//! What the page shows of the post.

use crate::rooms::ph::view::PhFieldView;
use crate::rooms::share::view::CodeView;
use serde::Serialize;
use tsify::Tsify;

/// The post about the open formula.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct PostView {
    /// Why there is none; then all below is empty.
    pub problem: String,
    /// Its parts, each with whether it is in.
    pub parts: Vec<PostPartView>,
    /// The sizes of batch, each a field.
    pub sizes: Vec<PhFieldView>,
    /// Whether what can be taken instead was worked out; until then only what the author notes is there.
    pub swaps_known: bool,
    /// Name of the formula.
    pub title: String,
    /// What it is, in a few words.
    pub about: String,
    /// The parts that are in, in the order of the page.
    pub sections: Vec<PostSectionView>,
    /// All of it as Markdown.
    pub markdown: String,
    /// All of it as HTML to paste into a page.
    pub html: String,
    /// All of it as a page of its own.
    pub page: String,
    /// The formula as a picture.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub picture: Option<PostPictureView>,
}

/// A part of the post, to be left out or taken in.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
pub struct PostPartView {
    /// The field that leaves it out.
    pub field: String,
    /// What it is called.
    pub label: String,
    /// What there is to know of it; may be empty.
    pub about: String,
    /// Whether it is in.
    pub there: bool,
    /// Whether it stays in whatever one wants.
    pub fixed: bool,
}

/// A part of the post as it is read.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
pub struct PostSectionView {
    /// Its word.
    pub part: String,
    /// Its heading.
    pub title: String,
    /// What stands below.
    pub blocks: Vec<PostBlockView>,
}

/// A paragraph, a list, a table, a link, lines to copy or a code.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct PostBlockView {
    /// Which of these it is.
    #[tsify(type = "\"text\" | \"list\" | \"steps\" | \"table\" | \"link\" | \"snippet\" | \"code\"")]
    pub kind: &'static str,
    /// Its text; of a link what is pressed, of a table what it is of, of a code what it opens.
    pub text: String,
    /// Of a link, where it leads.
    pub address: String,
    /// The items of a list, and steps.
    pub items: Vec<PostItemView>,
    /// Heads of the columns of a table.
    pub heads: Vec<String>,
    /// The rows of a table.
    pub rows: Vec<PostRowView>,
    /// The code.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub code: Option<CodeView>,
}

/// An item of a list.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
pub struct PostItemView {
    /// What stands before it in bold; may be empty.
    pub lead: String,
    /// Its text.
    pub text: String,
}

/// A row of a table.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
pub struct PostRowView {
    /// A line, the head of a phase, or the total.
    #[tsify(type = "\"line\" | \"phase\" | \"total\"")]
    pub kind: &'static str,
    /// Its cells; of a head one.
    pub cells: Vec<String>,
}

/// The formula as a picture.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Tsify)]
pub struct PostPictureView {
    /// The drawing as a file.
    pub svg: String,
    /// How wide it is, in its own units.
    pub width: u32,
    /// How high.
    pub height: u32,
    /// In a sentence, for those who do not see it.
    pub description: String,
    /// The field that takes the link in.
    pub field: String,
    /// Whether it carries the link.
    pub linked: bool,
}
