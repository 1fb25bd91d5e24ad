//! What a label has to warn of, and what it does well to say.

use super::declaration::Market;
use crate::checks::contents::Contents;
use crate::checks::facts::Trait;
use crate::checks::finding::{Finding, Value};
use crate::checks::{Registered, limits, preservation};
use crate::material::ConstituentId;
use crate::product::ProductKind;
use crate::source::Citation;
use stillroom_terms::Purpose;

/// A sentence of a label, to be worded elsewhere.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Statement {
    /// It is for the outside of the body.
    ExternalUse,
    /// It is kept from the eyes.
    Eyes,
    /// It is not for children under three.
    SmallChildren,
    /// It contains vitamin A, which adds to what is eaten.
    VitaminA,
    /// It releases formaldehyde.
    Formaldehyde,
    /// It contains fruit acid and skin burns in the sun more easily: the alert that is asked for in the United States.
    SunburnAlert,
    /// Skin becomes more sensitive to the sun.
    Sun,
    /// It contains ammonia.
    Ammonia,
    /// It contains resorcinol.
    Resorcinol,
    /// As a powder it is kept from nose and mouth of children.
    Powder,
    /// It is not for the nappy area.
    NappyArea,
    /// It is not for children under ten.
    UnderTen,
    /// Who reacts stops using it.
    StopIfIrritated,
    /// It is kept out of reach of children.
    OutOfReach,
}

impl Statement {
    /// Those that a row of data may ask for.
    const BY_DATA: [Self; 7] = [
        Self::Eyes,
        Self::SmallChildren,
        Self::Ammonia,
        Self::Resorcinol,
        Self::Powder,
        Self::NappyArea,
        Self::UnderTen,
    ];

    /// The sentence of a code, where a row of data may ask for it.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Self> {
        Self::BY_DATA.into_iter().find(|each| each.code() == code)
    }

    /// Stable code, by which it is worded.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::ExternalUse => "external-use",
            Self::Eyes => "eyes",
            Self::SmallChildren => "small-children",
            Self::VitaminA => "vitamin-a",
            Self::Formaldehyde => "formaldehyde",
            Self::SunburnAlert => "sunburn-alert",
            Self::Sun => "sun",
            Self::Ammonia => "ammonia",
            Self::Resorcinol => "resorcinol",
            Self::Powder => "powder",
            Self::NappyArea => "nappy-area",
            Self::UnderTen => "under-ten",
            Self::StopIfIrritated => "stop-if-irritated",
            Self::OutOfReach => "out-of-reach",
        }
    }
}

/// A sentence of a label with what asks for it.
#[derive(Debug, Clone, PartialEq)]
pub struct Stated {
    /// The sentence.
    pub statement: Statement,
    /// Whether the law of the market or its authority asks for it; otherwise it is common practice.
    pub is_asked: bool,
    /// What in the jar it is about; empty for what stands on every label.
    pub about: Vec<ConstituentId>,
    /// Where it was found.
    pub citation: Citation,
}

/// What has to be so that the law of the European Union asks for a sentence for the sake of a substance: column i of the
/// annexes to Regulation (EC) No 1223/2009.
#[derive(Debug, Clone, PartialEq)]
pub struct Condition {
    /// The substance.
    pub about: ConstituentId,
    /// The sentence.
    pub statement: Statement,
    /// Kinds of product it is asked of; none for all.
    pub only: Vec<ProductKind>,
    /// Kinds of product it is not asked of.
    pub except: Vec<ProductKind>,
    /// Whether it is asked of what stays on, or is rinsed off, only.
    pub purpose: Option<Purpose>,
    /// Percent above which it is asked.
    pub above: f64,
    /// Whether it is asked of what has no water only.
    pub dry: bool,
    /// Whether the United Kingdom kept it.
    pub also_uk: bool,
    /// Where it was found.
    pub citation: Citation,
}

impl Condition {
    /// Whether it is so.
    fn holds(&self, contents: &Contents<'_>, market: Market) -> bool {
        let formula = contents.formula;
        let is_law = match market {
            Market::EuropeanUnion => true,
            Market::UnitedKingdom => self.also_uk,
            Market::UnitedStates => false,
        };
        // A kind that nobody stated may be one it is asked of, unless it is asked of few.
        let is_kind = match formula.kind {
            Some(kind) => (self.only.is_empty() || self.only.contains(&kind)) && !self.except.contains(&kind),
            None => self.only.is_empty(),
        };
        is_law
            && is_kind
            && self.purpose.is_none_or(|purpose| purpose == formula.purpose)
            && (!self.dry || contents.is_dry())
            && contents.find(self.about).is_some_and(|each| each.percent > self.above)
    }
}

/// The sentences of a label in a market, those that are asked for first. `conditions` are those of the annexes.
///
/// Regulation (EU) 2024/996: vitamin A. Regulation (EU) 2022/1181: formaldehyde released above 0.001 % in all; how much a
/// preservative releases is not reckoned here, so that it is said of each that does. FDA guidance of 2005: fruit acids. The
/// United Kingdom keeps an annex of its own: there these are advice.
#[must_use]
pub fn statements(contents: &Contents<'_>, market: Market, conditions: &[Condition]) -> Vec<Stated> {
    let mut found = Vec::new();
    let checks = [limits::FINDINGS, preservation::FINDINGS].into_iter().flatten();
    for Registered { check, .. } in checks.filter(|it| CODES.contains(&it.code)) {
        check(contents, &mut found);
    }
    let mut stated: Vec<Stated> = Vec::new();
    for finding in &found {
        let about = about(finding);
        let holds_acid = about.iter().filter_map(|id| contents.find(*id));
        let holds_acid = holds_acid.filter(|each| each.facts.has(Trait::AlphaHydroxyAcid).is_some()).count() > 0;
        let Some((statement, is_asked, citation)) = say(finding.code, market, holds_acid) else { continue };
        match stated.iter_mut().find(|it| it.statement == statement) {
            Some(known) => known.about.extend(about),
            None => stated.push(Stated { statement, is_asked, about, citation }),
        }
    }
    for condition in conditions.iter().filter(|each| each.holds(contents, market)) {
        let Condition { about, statement, citation, .. } = *condition;
        match stated.iter_mut().find(|it| it.statement == statement) {
            Some(known) if known.is_asked => known.about.push(about),
            // What the law asks for is no mere advice any more, and is about what the law names.
            Some(known) => *known = Stated { statement, is_asked: true, about: vec![about], citation },
            None => stated.push(Stated { statement, is_asked: true, about: vec![about], citation }),
        }
    }
    let goes_in_the_mouth = matches!(contents.formula.kind, Some(ProductKind::Lips | ProductKind::Oral));
    for (statement, there) in [
        (Statement::ExternalUse, !goes_in_the_mouth),
        (Statement::StopIfIrritated, true),
        (Statement::OutOfReach, true),
    ] {
        if there {
            let citation = Citation::COMMON_PRACTICE;
            stated.push(Stated { statement, is_asked: false, about: Vec::new(), citation });
        }
    }
    stated.sort_by_key(|it| (!it.is_asked, it.statement));
    stated
}

/// Findings that a label has a sentence for.
const CODES: [&str; 5] =
    ["limits.eyes", "limits.children", "limits.pregnancy", "limits.sun", "preservation.releases-formaldehyde"];

/// Which sentence a finding asks for, whether the market does, and where that was found.
fn say(code: &str, market: Market, holds_acid: bool) -> Option<(Statement, bool, Citation)> {
    let practice = Citation::COMMON_PRACTICE;
    let in_union = market == Market::EuropeanUnion;
    Some(match code {
        "limits.eyes" => (Statement::Eyes, false, practice),
        "limits.children" => (Statement::SmallChildren, false, practice),
        "limits.pregnancy" => (Statement::VitaminA, in_union, Citation::published("Regulation (EU) 2024/996")),
        "preservation.releases-formaldehyde" => {
            (Statement::Formaldehyde, in_union, Citation::published("Regulation (EU) 2022/1181"))
        }
        "limits.sun" if market == Market::UnitedStates && holds_acid => (
            Statement::SunburnAlert,
            true,
            Citation::published("FDA, guidance on labelling for cosmetics containing alpha hydroxy acids, 2005"),
        ),
        "limits.sun" => (Statement::Sun, false, practice),
        _ => return None,
    })
}

fn about(finding: &Finding) -> Vec<ConstituentId> {
    let values = finding.values.iter().flat_map(|(_, value)| match value {
        Value::Substances(several) => several.clone(),
        Value::Substance(one) => vec![*one],
        _ => Vec::new(),
    });
    values.collect()
}
