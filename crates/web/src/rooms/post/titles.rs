//! What the parts of a post and its batches are called.

use crate::messages::post as says;
use crate::rooms::post::parts::{Part, Size};

/// The heading of a part.
pub(crate) fn title_of(part: Part) -> &'static str {
    match part {
        Part::Notes => says::title_notes(),
        Part::Formula => says::title_formula(),
        Part::Sizes => says::title_sizes(),
        Part::Method => says::title_method(),
        Part::Cautions => says::title_cautions(),
        Part::Why => says::title_why(),
        Part::Instead => says::title_instead(),
        Part::Keeping => says::title_keeping(),
        Part::Findings => says::title_findings(),
        Part::Ingredients => says::title_ingredients(),
        Part::Larger => says::title_larger(),
        Part::Link => says::title_link(),
        Part::Code => says::title_code(),
        Part::Embed => says::title_embed(),
    }
}

/// What there is to know of a part before it is taken in.
pub(crate) fn about_part(part: Part, swaps_known: bool) -> &'static str {
    match part {
        Part::Notes => says::about_notes(),
        Part::Why => says::about_why(),
        Part::Instead if !swaps_known => says::about_instead_waiting(),
        Part::Cautions => says::about_cautions(),
        Part::Larger => says::about_larger(),
        Part::Code => says::about_code(),
        Part::Embed => says::about_embed(),
        _ => "",
    }
}

/// The name of a size of batch.
pub(crate) fn name_of_size(size: Size) -> &'static str {
    match size {
        Size::Small => says::size_small(),
        Size::Usual => says::size_usual(),
        Size::Large => says::size_large(),
    }
}
