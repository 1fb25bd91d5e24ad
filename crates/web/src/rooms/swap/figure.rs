//! Lines brought to a figure: a substance, the oil, the water, the balance of the emulsifiers, the density.

use crate::rooms::swap::edit::SwapDesk;
use crate::session::Session;
use rust_decimal::Decimal;
use std::collections::BTreeSet;
use stillroom_catalogue::knowledge;
use stillroom_core::checks::facts::{Cosolvent, Knowledge as _};
use stillroom_core::composition::Makeups;
use stillroom_core::evaluation::Evaluation;
use stillroom_core::number::write_between;
use stillroom_core::rebuild::{Figure, NoAnswer, Version};
use stillroom_core::{Class, ConstituentId, Density, Formula, LineId, Percent};

/// What lines can be brought to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Aimed {
    Substance(ConstituentId),
    Oil,
    Water,
    Balance,
    Density,
}

impl Aimed {
    /// Its key.
    pub(super) fn key(self) -> String {
        match self {
            Self::Substance(ConstituentId::Catalogue(number)) => format!("c{number}"),
            Self::Substance(ConstituentId::Own(number)) => format!("o{number:x}"),
            Self::Oil => "oil".to_owned(),
            Self::Water => "water".to_owned(),
            Self::Balance => "balance".to_owned(),
            Self::Density => "density".to_owned(),
        }
    }

    /// Unit of its figure.
    pub(super) const fn unit(self) -> &'static str {
        match self {
            Self::Substance(_) | Self::Oil | Self::Water => "%",
            Self::Balance => "",
            Self::Density => Density::UNIT,
        }
    }

    /// How near is near enough, in its unit.
    fn within(self) -> Decimal {
        match self {
            Self::Substance(_) | Self::Oil | Self::Water => Decimal::new(1, 2),
            Self::Balance => Decimal::new(1, 1),
            Self::Density => Decimal::new(1, 3),
        }
    }
}

impl Session {
    /// What the lines of a formula can be brought to: glycerin first where there is some, then the shares, then every
    /// substance.
    pub(super) fn figures_of(&self, evaluation: &Evaluation) -> Vec<Aimed> {
        let is_glycerin =
            |id: ConstituentId| knowledge().cosolvent(id).is_some_and(|(kind, _)| kind == Cosolvent::Glycerin);
        let is_water = |id: ConstituentId| {
            use stillroom_core::MaterialSource as _;
            self.materials.constituent(id).is_some_and(|it| it.class == Class::Water)
        };
        let all: Vec<ConstituentId> =
            evaluation.composition.entries.iter().map(|entry| entry.constituent).filter(|id| !is_water(*id)).collect();
        let (first, others): (Vec<_>, Vec<_>) = all.into_iter().partition(|id| is_glycerin(*id));
        let shares = [Aimed::Oil, Aimed::Water, Aimed::Balance, Aimed::Density];
        first.into_iter().map(Aimed::Substance).chain(shares).chain(others.into_iter().map(Aimed::Substance)).collect()
    }

    /// Which figure is meant.
    pub(super) fn figure_asked(&self, evaluation: &Evaluation, desk: &SwapDesk) -> Aimed {
        let all = self.figures_of(evaluation);
        let asked = desk.chosen("swap.figure").and_then(|key| all.iter().find(|it| it.key() == key));
        asked.or(all.first()).copied().unwrap_or(Aimed::Oil)
    }

    /// What it stands at, as it is written; nothing where that is not known.
    pub(super) fn figure_now(&self, formula: &Formula, evaluation: &Evaluation, figure: Aimed) -> String {
        let contents = self.contents_of(formula, evaluation);
        let sum = |factors: Vec<(ConstituentId, Decimal)>| -> Decimal {
            let of = |id: ConstituentId| evaluation.composition.entries.iter().find(|it| it.constituent == id);
            factors.iter().filter_map(|(id, factor)| of(*id)?.percent.value().checked_mul(*factor)).sum()
        };
        let value = match figure {
            Aimed::Substance(id) => sum(vec![(id, Decimal::ONE)]),
            Aimed::Oil => sum(contents.oil_factors(&[])),
            Aimed::Water => sum(contents.water_factors(&[])),
            Aimed::Density => match evaluation.density {
                Some(estimate) => return write_between(estimate.density.value().round_dp(3), 2, 3, self.mark()),
                None => return String::new(),
            },
            Aimed::Balance => {
                let parts: Vec<(f64, f64)> = contents
                    .present
                    .iter()
                    .filter_map(|each| Some((each.percent, each.facts.hlb.as_ref()?.value)))
                    .collect();
                return stillroom_core::chemistry::hlb::blend(&parts).map_or_else(String::new, |hlb| {
                    crate::rooms::findings::present::write_rounded(hlb, 1, self.mark())
                });
            }
        };
        write_between(value.round_dp(2), 0, 2, self.mark())
    }

    /// The lines that may vary: as was said, or where they bring what is aimed at.
    pub(super) fn varying(&self, formula: &Formula, evaluation: &Evaluation, desk: &SwapDesk) -> Vec<LineId> {
        let contents = self.contents_of(formula, evaluation);
        let figure = self.figure_asked(evaluation, desk);
        let counts = contents.present.iter().filter(|each| {
            match figure {
                Aimed::Substance(id) => each.id == id,
                // The q.s. line, or else the water, gives way by itself; something has to make room for it.
                Aimed::Oil | Aimed::Water => each.is_oil(),
                Aimed::Balance => each.facts.hlb.is_some() && each.class == Class::Emulsifier,
                Aimed::Density => knowledge().cosolvent(each.id).is_some(),
            }
        });
        let brings: BTreeSet<LineId> = counts.flat_map(|each| each.trail.iter().map(|brought| brought.line)).collect();
        let varies = |line: &LineId| desk.varies.get(line).copied().unwrap_or_else(|| brings.contains(line));
        formula.lines().map(|line| line.id).filter(varies).collect()
    }

    /// The formula with its lines brought to the figure; nothing while none is typed.
    pub(super) fn work_out_figure(
        &self,
        formula: &Formula,
        evaluation: &Evaluation,
        desk: &SwapDesk,
        makeups: &mut Makeups,
    ) -> Option<Result<Version, NoAnswer>> {
        let target = desk.number("swap.target", self.mark())?;
        let aimed = self.figure_asked(evaluation, desk);
        let percent = Percent::new(target).ok()?;
        let figure = match aimed {
            Aimed::Substance(id) => Figure::Substance(id, percent),
            Aimed::Oil => Figure::Oil(percent),
            Aimed::Water => Figure::Water(percent),
            Aimed::Balance => Figure::Balance(target),
            Aimed::Density => Figure::Density(Density::new(target).ok()?),
        };
        let lines = self.varying(formula, evaluation, desk);
        Some(self.setting_of(formula).hit(figure, aimed.within(), &lines, makeups))
    }
}
