//! Within the limit of one kind of product and over that of another, and nobody says which this is.
//!
//! Vitamin A has a finding of its own. Only a note: the product may well be of the kind that allows it. Stating the kind
//! settles it; the lower limit keeps it in either.

use super::{all_have, broken_by_another_kind, describe, is_of_fruit_acid, keep};
use crate::checks::contents::Contents;
use crate::checks::facts::{Authority, Trait};
use crate::checks::finding::{Finding, Severity, Value};
use crate::product::ProductKind;

pub(super) const CODE: &str = "limits.kind";

pub(super) fn check(contents: &Contents<'_>, found: &mut Vec<Finding>) {
    if contents.formula.kind.is_some() {
        return;
    }
    let limits = contents.touched.iter().copied().filter(|limit| limit.authority == Authority::Law);
    for limit in limits.filter(|limit| !limit.group.is_empty()) {
        if all_have(contents, limit, Trait::Retinoid) || is_of_fruit_acid(contents, limit) {
            continue;
        }
        let Some((stricter, least, counted)) = broken_by_another_kind(contents, limit) else { continue };
        let mut finding = describe(Finding::new(CODE, Severity::Note, limit.group), contents, stricter, counted, least);
        if !stricter.kinds.is_empty() {
            finding = finding.with("kinds", Value::Words(stricter.kinds.iter().map(|kind| word(*kind)).collect()));
        }
        found.push(finding.cured_by(keep(contents, stricter, counted, least)));
    }
}

/// Key of the name of a kind.
const fn word(kind: ProductKind) -> &'static str {
    match kind {
        ProductKind::Face => "kind.face",
        ProductKind::FaceWash => "kind.face-wash",
        ProductKind::Eyes => "kind.eyes",
        ProductKind::Lips => "kind.lips",
        ProductKind::Body => "kind.body",
        ProductKind::BodyWash => "kind.body-wash",
        ProductKind::Hand => "kind.hand",
        ProductKind::HandWash => "kind.hand-wash",
        ProductKind::Bath => "kind.bath",
        ProductKind::Hair => "kind.hair",
        ProductKind::Shampoo => "kind.shampoo",
        ProductKind::Conditioner => "kind.conditioner",
        ProductKind::Deodorant => "kind.deodorant",
        ProductKind::DeodorantSpray => "kind.deodorant-spray",
        ProductKind::Mist => "kind.mist",
        ProductKind::Oral => "kind.oral",
        ProductKind::Child => "kind.child",
        ProductKind::ChildWash => "kind.child-wash",
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes};
    use crate::product::ProductKind;

    #[test]
    fn a_limit_that_hangs_on_the_kind_is_noted_until_it_is_stated() {
        let bench = Bench::new();
        let mut formula = bench.water_with(&[("Alpha-Arbutin", "1")]);
        bench.every_cure_cures(&formula, super::CODE);
        formula.set_kind(Some(ProductKind::Face));
        assert!(!codes(&bench.check(&formula)).contains(&super::CODE));
        formula.set_kind(Some(ProductKind::Body));
        assert!(codes(&bench.check(&formula)).contains(&"limits.over-legal"));
    }
}
