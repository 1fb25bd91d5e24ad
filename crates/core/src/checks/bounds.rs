//! Which bound of a limit counts for this product: by its use, and by its kind where that is stated.

use super::contents::Contents;
use super::facts::Limit;
use crate::material::ConstituentId;

impl Contents<'_> {
    /// The most that a limit allows here, in percent; nothing where it says nothing of this product.
    ///
    /// A row for this kind of product comes before the row for all the others. Of a product whose kind nobody stated the most
    /// lenient row of its use counts: [`Contents::stricter_than`] says what it could be instead.
    #[must_use]
    pub fn bound_of(&self, limit: &Limit) -> Option<f64> {
        let own = self.by_purpose(limit.leave_on, limit.rinse_off);
        if limit.group.is_empty() && limit.kinds.is_empty() {
            return own;
        }
        match self.formula.kind {
            Some(kind) if limit.kinds.contains(&kind) => own,
            Some(kind) if limit.kinds.is_empty() => {
                own.filter(|_| !self.rows_beside(limit).any(|row| row.kinds.contains(&kind)))
            }
            Some(_) => None,
            None => {
                let mut most: Option<(&Limit, f64)> = None;
                for row in self.rows_beside(limit).filter(|row| self.could_be_of(row)) {
                    let Some(bound) = self.by_purpose(row.leave_on, row.rinse_off) else { continue };
                    if most.is_none_or(|(_, highest)| bound > highest) {
                        most = Some((row, bound));
                    }
                }
                most.filter(|(row, _)| core::ptr::eq(*row, limit)).map(|(_, bound)| bound)
            }
        }
    }

    /// The strictest row beside a limit, where the kind of product is not stated and one is stricter.
    #[must_use]
    pub fn stricter_than<'b>(&'b self, limit: &'b Limit) -> Option<(&'b Limit, f64)> {
        if self.formula.kind.is_some() {
            return None;
        }
        let bound = self.bound_of(limit)?;
        let rows = self.rows_beside(limit).filter(|row| self.could_be_of(row));
        let bounds = rows.filter_map(|row| Some((row, self.by_purpose(row.leave_on, row.rinse_off)?)));
        bounds.filter(|(_, each)| *each < bound).min_by(|a, b| a.1.total_cmp(&b.1))
    }

    /// The rows of one entry.
    fn rows_beside<'b>(&'b self, limit: &'b Limit) -> impl Iterator<Item = &'b Limit> {
        let alone = limit.group.is_empty();
        let rows = self.knowledge.limits().iter();
        rows.filter(move |row| if alone { core::ptr::eq(*row, limit) } else { row.group == limit.group })
    }

    /// Whether a row may be about this product, as far as its use says.
    fn could_be_of(&self, row: &Limit) -> bool {
        row.kinds.is_empty() || row.kinds.iter().any(|kind| kind.purpose() == self.formula.purpose)
    }

    /// What counts towards a limit by itself, in percent of the product: its substances, and what the maker described under
    /// one of its names. Each with its factor.
    pub fn counting<'b>(&'b self, limit: &'b Limit) -> impl Iterator<Item = (ConstituentId, f64)> {
        let own = self.present.iter().filter(|each| matches!(each.id, ConstituentId::Own(_)));
        let named = own.filter_map(|each| Some((each.id, self.named_factor(limit, each.id)?)));
        limit.members.iter().copied().chain(named)
    }

    /// The factor with which a substance counts towards a limit by itself, whether it is in the jar or not.
    #[must_use]
    pub fn counts_towards(&self, limit: &Limit, id: ConstituentId) -> Option<f64> {
        let member = limit.members.iter().find(|(member, _)| *member == id).map(|(_, factor)| *factor);
        member.or_else(|| self.named_factor(limit, id))
    }

    /// The factor of what the maker described under a name that a limit lists.
    fn named_factor(&self, limit: &Limit, id: ConstituentId) -> Option<f64> {
        if limit.named.is_empty() || !matches!(id, ConstituentId::Own(_)) {
            return None;
        }
        let inci = self.source.constituent(id)?.inci.trim();
        limit.named.iter().find(|(name, _)| name.eq_ignore_ascii_case(inci)).map(|(_, factor)| *factor)
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::bench::{Bench, codes, find};
    use crate::checks::finding::Severity;
    use crate::product::ProductKind;

    #[test]
    fn the_kind_of_product_says_which_row_counts() {
        let bench = Bench::new();
        let mut formula = bench.oil_with(&[("Retinol", "0.2")]);
        formula.set_kind(Some(ProductKind::Face));
        assert!(!codes(&bench.check(&formula)).contains(&"limits.retinoid"));
        formula.set_kind(Some(ProductKind::Body));
        assert_eq!(find(&bench.check(&formula), "limits.retinoid").severity, Severity::Stop);
        formula.set_kind(None);
        let findings = bench.check(&formula);
        assert!(!codes(&findings).contains(&"limits.retinoid") && codes(&findings).contains(&"limits.retinoid-kind"));
    }
}
