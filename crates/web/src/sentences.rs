//! Every sentence the session says, in English: what is wrong, what is accepted, what to do.
//!
//! Sentences are whole. None is built by joining pieces whose order another language would change; another language
//! is another file like this one.

use crate::keeping::StoreError;
use crate::lazy::lazy;
use crate::sentences_extract;
use crate::sentences_run;
use crate::view::{KeepState, LayerView, Origin};
use rust_decimal::Decimal;
use stillroom_core::balance::{Balance, Cure, FormulaProblem};
use stillroom_core::composition::{CompositionError, DensityEstimate};
use stillroom_core::number::{DecimalMark, NumberError, write_between, write_fixed};
use stillroom_core::scaling::ScalingError;
use stillroom_core::weigh_sheet::ScaleError;
use stillroom_core::{Class, Formula, Layer, LineId, Material, MaterialId, Percent, PhaseKind, Purpose, WrittenIn};
use stillroom_exchange::record::RecordError;

/// A space that does not break, between a number and what it counts.
const NB: char = '\u{a0}';

fn percent(value: Decimal, mark: DecimalMark) -> String {
    format!("{}{NB}%", write_between(value.round_dp(4), 2, 4, mark))
}

/// Why a typed text was not understood, and what the field takes.
pub(crate) fn number_error(error: &NumberError, field: &str, mark: DecimalMark) -> String {
    let plain = |value: Decimal| write_between(value, 0, 10, mark);
    let takes = what_field_takes(field, mark);
    match error {
        NumberError::Empty => format!("Empty. Type {takes}; the last good value stays until then."),
        NumberError::NotANumber { text } => format!("“{text}” is not a number. Type {takes}."),
        NumberError::Ambiguous { grouped, fraction, .. } => {
            format!(
                "This could mean {} or {}. Write it without the mark, or with a 0 behind it.",
                plain(*grouped),
                plain(*fraction)
            )
        }
        NumberError::TooLong { whole, decimals } => {
            format!("Too many digits: at most {whole} before and {decimals} after the decimal mark.")
        }
        NumberError::UnknownUnit { unit } => format!("“{unit}” is not a unit known here. Type {takes}."),
        NumberError::WrongUnit { unit } => format!("{unit} does not belong here. Type {takes}."),
        NumberError::VolumeNeedsDensity => {
            "A volume becomes a mass only through a density, and none is known here. Type a mass, for example 12.5 g."
                .to_owned()
        }
        NumberError::NotWhole { value } => format!("{} is not a whole number. Type {takes}.", plain(*value)),
        NumberError::OutOfRange { value, minimum, maximum } => {
            format!("{} is outside {} to {}. Type {takes}.", plain(*value), plain(*minimum), plain(*maximum))
        }
    }
}

fn what_field_takes(field: &str, mark: DecimalMark) -> String {
    let half = write_fixed(Decimal::new(15, 1), 1, mark);
    let kind = field.split(':').next().unwrap_or(field);
    match kind {
        "amount" => format!("a number such as {half}, or q.s. in a formula in percent"),
        "part" => format!("a percent such as {half}, or q.s."),
        "batch.count" => "a whole number from 1".to_owned(),
        "batch.volume" => "a volume such as 30 mL or 1 fl oz".to_owned(),
        "batch.headspace" | "batch.loss" => "a percent from 0 to 90".to_owned(),
        "batch.density" | "material.density" | "holding.density" => {
            format!("a density in g/mL such as {}, or nothing", write_fixed(Decimal::new(98, 2), 2, mark))
        }
        "holding.price" => "a price such as 12.90".to_owned(),
        "formula.ph" => format!("a pH from 0 to 14 such as {}, or nothing", write_fixed(Decimal::new(55, 1), 1, mark)),
        "phase.temperature" => "a temperature in °C such as 70, or nothing".to_owned(),
        "setting.tolerance" => format!("a percent such as {}", write_fixed(Decimal::from(5), 0, mark)),
        kind if kind.starts_with("extract.") || kind.starts_with("run.") => what_field_beyond_takes(kind, field, mark),
        _ => format!("a mass such as {half}, {half} g or 2 oz"),
    }
}

/// What keeps the amounts from being a formula.
pub(crate) fn formula_problem(problem: &FormulaProblem, name: &dyn Fn(LineId) -> String, mark: DecimalMark) -> String {
    let hundred = Decimal::ONE_HUNDRED;
    match problem {
        FormulaProblem::Empty => "No line yet. Add what goes into each phase.".to_owned(),
        FormulaProblem::TotalNotHundred { total } if total.value() > hundred => format!(
            "The lines make {}, {} too much.",
            percent(total.value(), mark),
            percent(total.value() - hundred, mark)
        ),
        FormulaProblem::TotalNotHundred { total } => format!(
            "The lines make {}; {} is missing to 100{NB}%.",
            percent(total.value(), mark),
            percent(hundred - total.value(), mark)
        ),
        FormulaProblem::SeveralQuantumSatis { lines, left } if left.value() > Decimal::ZERO => format!(
            "{} lines are q.s., but only one can take up the {} that is left.",
            lines.len(),
            percent(left.value(), mark)
        ),
        FormulaProblem::SeveralQuantumSatis { lines, .. } => {
            format!("{} lines are q.s., and the others leave nothing for them.", lines.len())
        }
        FormulaProblem::QuantumSatisNegative { line, others } => format!(
            "The other lines make {}: nothing is left for {}, the q.s. line.",
            percent(others.value(), mark),
            name(*line)
        ),
        FormulaProblem::QuantumSatisZero { line } => {
            format!("The other lines make 100{NB}% already: nothing is left for {}, the q.s. line.", name(*line))
        }
        FormulaProblem::NotPositive { line, value } if value.is_zero() => {
            format!("{} stands at 0. Say how much of it goes in, or take the line out.", name(*line))
        }
        FormulaProblem::NotPositive { line, .. } => format!("{} is less than nothing.", name(*line)),
        FormulaProblem::MixedAmounts { .. } => "Some lines are in grams and some in percent.".to_owned(),
        FormulaProblem::TooLarge => "The numbers are too large to be added up.".to_owned(),
    }
}

/// What a cure does, for its button.
pub(crate) fn cure(cure: &Cure, name: &dyn Fn(LineId) -> String, mark: DecimalMark) -> String {
    match cure {
        Cure::Normalise { .. } => format!("Scale every line to total 100{NB}%"),
        Cure::MakeQuantumSatis { line, becomes } => {
            format!("Make {} q.s.: {}", name(*line), percent(becomes.value(), mark))
        }
        Cure::KeepOneQuantumSatis { line, others } => {
            format!("Keep {} q.s., set the other to {}", name(*line), percent(others.value(), mark))
        }
        Cure::MakeRoom { line, .. } => {
            format!("Scale the other lines to 99{NB}% and leave 1{NB}% to {}", name(*line))
        }
        Cure::SetPercent { line, to } => format!("Lower {} to {}", name(*line), percent(to.value(), mark)),
        Cure::RemoveLine { line } => format!("Take {} out", name(*line)),
        Cure::ReadAllAsPercent => "Read every number as a percent".to_owned(),
    }
}

/// Why a material cannot be seen through.
pub(crate) fn composition_error(error: &CompositionError, name: &dyn Fn(MaterialId) -> String) -> String {
    match error {
        CompositionError::UnknownMaterial { .. } => {
            "This material is not on this device any more, so what it brings is missing from the jar. Choose another."
                .to_owned()
        }
        CompositionError::Cycle { path } => {
            let mut names: Vec<String> = path.iter().map(|id| name(*id)).collect();
            names.extend(path.first().map(|id| name(*id)));
            format!("A material cannot be made of itself: {}.", names.join(" \u{2192} "))
        }
        CompositionError::PartsOutOfBalance { material, problem } => {
            let what = match problem {
                FormulaProblem::Empty => "has no parts yet",
                FormulaProblem::TotalNotHundred { .. } => "has parts that do not make 100 %",
                FormulaProblem::SeveralQuantumSatis { .. } => "has more than one q.s. part",
                FormulaProblem::QuantumSatisNegative { .. } | FormulaProblem::QuantumSatisZero { .. } => {
                    "leaves nothing for its q.s. part"
                }
                FormulaProblem::NotPositive { .. } => "has a part at 0",
                FormulaProblem::MixedAmounts { .. } => "mixes grams and percent",
                FormulaProblem::TooLarge => "has numbers that are too large",
            };
            format!("{} {what}, so what it brings is missing from the jar.", name(*material))
        }
        CompositionError::TooDeep { material } => {
            format!("{} is made of composites nested too deeply to follow.", name(*material))
        }
    }
}

/// Why there is no batch.
pub(crate) fn scaling_error(error: &ScalingError, mark: DecimalMark) -> String {
    match error {
        ScalingError::NoBatch => "Nothing to make: say how much.".to_owned(),
        ScalingError::DensityUnknown => {
            "No density is known for these materials. Weigh 100 mL of the product and type its density.".to_owned()
        }
        ScalingError::Allowance { value, largest } => {
            format!("{} is outside 0 to {} %.", write_between(*value, 0, 2, mark), write_between(*largest, 0, 2, mark))
        }
        ScalingError::NothingAtHand => "Choose a material of this formula and say how much of it is left.".to_owned(),
        ScalingError::TooLarge => "The batch is too large to be weighed in grams.".to_owned(),
    }
}

/// Why scales cannot be used together.
pub(crate) fn scale_error(error: &ScaleError) -> String {
    match error {
        ScaleError::NoScale => "At least one scale is needed.".to_owned(),
        ScaleError::Step { finest, coarsest, .. } => {
            format!("A scale's step lies between {finest} and {coarsest} g, such as 0.1.")
        }
        ScaleError::LimitsDoNotRise => {
            "The fine scale needs a finer step than the main scale, and a limit above 0.".to_owned()
        }
    }
}

/// Why there is no sheet although there is a batch.
pub(crate) const fn no_sheet_of_unsound_formula() -> &'static str {
    "The formula does not make 100 % yet, so there is nothing to weigh. See what it says above the phases."
}

/// How the density was come by, when it was not measured.
pub(crate) fn estimated_density(known: Percent, mark: DecimalMark) -> String {
    let known = write_between(known.value().round_dp(1), 0, 1, mark);
    format!(
        "The density is an estimate: volumes are added up over the {known}{NB}% of the formula whose density is known. \
         Mixing shrinks and blending brings in air, so weigh 100{NB}mL of the finished product and type what you find."
    )
}

/// How dense the product is, as far as known.
pub(crate) fn density(estimate: Option<&DensityEstimate>, mark: DecimalMark) -> String {
    estimate.map_or_else(
        || "Density not known".to_owned(),
        |estimate| {
            let density = write_between(estimate.density.value().round_dp(3), 2, 3, mark);
            let known = write_between(estimate.known.value().round_dp(1), 0, 1, mark);
            format!("Density about {density}{NB}g/mL, estimated from {known}{NB}% of the formula")
        },
    )
}

/// Why the sheet makes another batch than was asked for.
pub(crate) fn batch_differs(batch: &str, asked: &str) -> String {
    format!(
        "Your scales make this {batch} instead of {asked}: the coarsest scale used does not show a difference that small."
    )
}

/// Arithmetic of a batch that fills containers.
pub(crate) fn fill_arithmetic(
    count: u32,
    volume: &str,
    headspace: &str,
    density: &str,
    loss: &str,
    mass: &str,
) -> String {
    if headspace == "0" {
        format!("{count} \u{d7} {volume} \u{d7} {density} \u{f7} (100 \u{2212} {loss}){NB}% = {mass}")
    } else {
        format!(
            "{count} \u{d7} {volume} \u{d7} (100 \u{2212} {headspace}){NB}% \u{d7} {density} \u{f7} (100 \u{2212} {loss}){NB}% = {mass}"
        )
    }
}

/// A batch raised so that the scale shows it.
pub(crate) fn raised_to_scale(mass: &str) -> String {
    format!("Raised to the next step of the scale, so that no container runs short: {mass}")
}

/// Arithmetic of a batch that materials at hand allow.
pub(crate) fn stock_arithmetic(name: &str, available: &str, share: &str, mass: &str) -> String {
    format!("{name} runs out first: {available} \u{f7} {share}{NB}% allows {mass}, rounded down to the scale")
}

/// What a batch leaves of a material.
pub(crate) fn left_over(mass: &str) -> String {
    format!("{mass} left over")
}

/// A material at hand that the formula does not use.
pub(crate) const fn not_in_formula() -> &'static str {
    "not in this formula"
}

/// Smallest batch with every line within the tolerance.
pub(crate) fn smallest_batch(mass: &str, tolerance: &str) -> String {
    format!("Smallest batch with every line within {tolerance}{NB}%: {mass}")
}

/// Lines whose rounding error is larger than the maker accepts.
pub(crate) fn lines_too_coarse(names: &[String], tolerance: &str) -> String {
    match names {
        [] => String::new(),
        [name] => format!(
            "The scale rounds {name} by more than {tolerance}{NB}%. Make a larger batch or weigh it on a finer scale."
        ),
        names => format!(
            "The scale rounds {} lines by more than {tolerance}{NB}%: {}. Make a larger batch or weigh them on a finer scale.",
            names.len(),
            names.join(", ")
        ),
    }
}

/// Relative error of a weighed line.
pub(crate) fn relative_error(error: Decimal, mark: DecimalMark) -> String {
    let decimals = if error.abs() < Decimal::ONE { 2 } else { 1 };
    let number = write_fixed(error, decimals, mark);
    if error > Decimal::ZERO { format!("+{number}{NB}%") } else { format!("{number}{NB}%") }
}

/// What a composite brings.
pub(crate) fn brings<'a>(parts: impl Iterator<Item = (&'a str, String)>, more: bool) -> String {
    let list: Vec<String> = parts.map(|(inci, number)| format!("{inci}{NB}{number}")).collect();
    let list = list.join(", ");
    if more { format!("brings {list} and more") } else { format!("brings {list}") }
}

/// What a layer of the jar is called.
pub(crate) const fn layer(layer: Layer) -> &'static str {
    match layer {
        Layer::Water => "Water, all sources",
        Layer::Humectants => "Humectants",
        Layer::Thickeners => "Thickeners",
        Layer::Oils => "Oils",
        Layer::Solids => "Waxes, butters",
        Layer::Emulsifiers => "Emulsifiers",
        Layer::Surfactants => "Surfactants",
        Layer::Actives => "Actives",
        Layer::Preservatives => "Preservatives",
        Layer::Fragrance => "Fragrance",
        Layer::Minerals => "Minerals, colour",
        Layer::Helpers => "Other",
    }
}

/// The jar for those who do not see it.
pub(crate) fn jar_description(layers: &[LayerView]) -> String {
    if layers.is_empty() {
        return "An empty jar".to_owned();
    }
    let list: Vec<String> =
        layers.iter().rev().map(|layer| format!("{} {}{NB}%", layer.label, layer.percent)).collect();
    format!("Jar, from the bottom: {}", list.join(", "))
}

/// An INCI name, or what stands for one that was not given.
pub(crate) fn inci_or_unnamed(inci: &str) -> &str {
    if inci.is_empty() { "(no INCI name given)" } else { inci }
}

/// What a material is.
pub(crate) const fn class(class: Class) -> &'static str {
    match class {
        Class::Water => "Water",
        Class::Humectant => "Humectant",
        Class::Solvent => "Solvent",
        Class::Thickener => "Thickener",
        Class::Oil => "Oil",
        Class::Butter => "Butter",
        Class::Emollient => "Emollient",
        Class::Wax => "Wax",
        Class::FattyAlcohol => "Fatty alcohol",
        Class::FattyAcid => "Fatty acid",
        Class::Emulsifier => "Emulsifier",
        Class::Surfactant => "Surfactant",
        Class::Active => "Active",
        Class::Extract => "Extract",
        Class::Protein => "Protein",
        Class::Preservative => "Preservative",
        Class::Chelator => "Chelator",
        Class::Antioxidant => "Antioxidant",
        Class::PhAdjuster => "pH adjuster",
        Class::Salt => "Salt",
        Class::EssentialOil => "Essential oil",
        Class::Fragrance => "Fragrance",
        Class::Colourant => "Colourant",
        Class::Mineral => "Mineral",
        Class::Exfoliant => "Exfoliant",
        _ => "Other",
    }
}

/// What a phase is called unless the maker calls it otherwise.
pub(crate) const fn phase_name(kind: PhaseKind) -> &'static str {
    match kind {
        PhaseKind::HeatedWater => "Heated water phase",
        PhaseKind::HeatedOil => "Heated oil phase",
        PhaseKind::CoolDown => "Cool-down phase",
        PhaseKind::RoomTemperature => "Room temperature phase",
    }
}

/// What stands before a phase's temperature.
pub(crate) const fn temperature_word(kind: PhaseKind) -> &'static str {
    match kind {
        PhaseKind::HeatedWater | PhaseKind::HeatedOil => "to",
        PhaseKind::CoolDown | PhaseKind::RoomTemperature => "under",
    }
}

/// INCI name, class and origin of a material in a few words.
pub(crate) fn about_material(material: &Material, inci: &str, origin: Origin) -> String {
    let class = class(material.class);
    match origin {
        Origin::Formula => "Another formula on your shelf".to_owned(),
        Origin::Own if inci.is_empty() => format!("Yours \u{b7} {class}"),
        Origin::Own => format!("Yours \u{b7} {inci} \u{b7} {class}"),
        Origin::Catalogue if inci.is_empty() => format!("Composite \u{b7} {class}"),
        Origin::Catalogue => format!("{inci} \u{b7} {class}"),
    }
}

/// Lines, use and state of a formula in a few words.
pub(crate) fn about_formula(formula: &Formula, balance: &Balance, mark: DecimalMark) -> String {
    let lines = match balance.shares.len() {
        0 => return "Nothing in it yet".to_owned(),
        1 => "1 line".to_owned(),
        count => format!("{count} lines"),
    };
    let purpose = match formula.purpose {
        Purpose::LeaveOn => "leave-on",
        Purpose::RinseOff => "rinse-off",
    };
    let ph = formula.target_ph.map(|ph| format!(" \u{b7} pH{NB}{}", write_between(ph.value(), 1, 2, mark)));
    let state = if balance.is_sound() {
        String::new()
    } else {
        format!(" \u{b7} makes {}", percent(balance.total.value(), mark))
    };
    format!("{lines} \u{b7} {purpose}{}{state}", ph.unwrap_or_default())
}

/// Name of a formula nobody has named yet.
pub(crate) const fn name_of_new_formula(written_in: WrittenIn) -> &'static str {
    match written_in {
        WrittenIn::Percent => "New formula",
        WrittenIn::Grams => "An old batch",
    }
}

/// Name of a material nobody has named yet.
pub(crate) const fn name_of_new_material(composite: bool) -> &'static str {
    if composite { "New composite" } else { "New material" }
}

/// Name of a copy.
pub(crate) fn name_of_copy(name: &str) -> String {
    format!("{name}, copy")
}

/// Name of the version of a formula that this page had when another page changed it.
pub(crate) fn this_pages_version(name: &str) -> String {
    format!("{name}, as in the other tab")
}

/// What was deleted.
pub(crate) fn deleted(name: &str) -> String {
    format!("“{name}” is off the shelf.")
}

/// What was taken out.
pub(crate) fn removed(name: &str) -> String {
    format!("{name} is taken out.")
}

/// A material that was deleted and where it was used.
pub(crate) fn material_deleted(name: &str, users: usize) -> String {
    match users {
        0 => format!("“{name}” is deleted."),
        1 => format!("“{name}” is deleted. One formula or composite uses it and misses it now."),
        users => format!("“{name}” is deleted. {users} formulas and composites use it and miss it now."),
    }
}

/// A formula that is full.
/// A text that is longer than its field holds.
pub(crate) fn text_too_long(length: usize, most: usize) -> String {
    format!("This is {length} characters long; up to {most} fit. Nothing was cut: shorten it, and it is kept.")
}

/// A batch that is held against as many materials as it may be.
pub(crate) fn too_many_materials_at_hand(most: usize) -> String {
    format!("A batch is held against at most {most} materials.")
}

/// A blend that is full.
pub(crate) fn too_many_parts(most: usize) -> String {
    format!("A blend takes at most {most} parts.")
}

/// A record that would be too large to be read again.
pub(crate) fn record_too_large() -> &'static str {
    "That is more than one record holds (about 1 MB). Nothing was changed: shorten its notes, or split it in two."
}

pub(crate) fn too_many_lines(most: usize) -> String {
    format!("A formula takes at most {most} lines.")
}

/// A formula that is full.
pub(crate) fn too_many_phases(most: usize) -> String {
    format!("A formula takes at most {most} phases.")
}

/// How keeping stands.
pub(crate) fn keep_state(state: KeepState, at: Option<u64>, minutes_ahead: i64) -> String {
    match state {
        KeepState::Kept => at.map_or_else(
            || "Kept on this device".to_owned(),
            |at| format!("Kept on this device, {}", time_of_day(at, minutes_ahead)),
        ),
        KeepState::Keeping => "Keeping\u{2026}".to_owned(),
        KeepState::Full => store_error(StoreError::Full).to_owned(),
        KeepState::Blocked => store_error(StoreError::Blocked).to_owned(),
        KeepState::Conflict => "Changed in another tab too".to_owned(),
    }
}

/// Where only the browser's own storage keeps, which reaches the disk late.
pub(crate) fn kept_loosely(kept: &str) -> String {
    format!("{kept}; if the browser or the power fails now, the last minute may be lost")
}

const fn store_error(error: StoreError) -> &'static str {
    match error {
        StoreError::Full => {
            "Storage is full: your last changes are on this screen only. Delete a formula you no longer need; keeping goes on by itself."
        }
        StoreError::Blocked => {
            "This browser lets the page keep nothing: what you do is on this screen only. Allow site data, or leave private browsing."
        }
    }
}

fn time_of_day(at: u64, minutes_ahead: i64) -> String {
    let minutes = i64::try_from(at / 60_000).unwrap_or(0).saturating_add(minutes_ahead).rem_euclid(24 * 60);
    format!("{:02}:{:02}", minutes / 60, minutes % 60)
}

/// A record that two pages changed.
pub(crate) fn changed_elsewhere(name: &str) -> String {
    if name.is_empty() {
        "Something kept here was changed in another tab while you changed it in this one. Nothing is overwritten."
            .to_owned()
    } else {
        format!("“{name}” was changed in another tab while you changed it in this one. Nothing is overwritten.")
    }
}

/// A record that cannot be read.
pub(crate) fn unreadable(key: &str, error: &RecordError) -> String {
    match error {
        RecordError::Newer { .. } => {
            format!(
                "A record was written by a later version of Stillroom and is left as it is ({key}). Reload to get that version."
            )
        }
        RecordError::Damaged { .. } | RecordError::TooLong { .. } => {
            format!("A record on this device is damaged and is left as it is ({key}).")
        }
    }
}

/// Label of undo.
pub(crate) fn undo_label(act: &str) -> String {
    format!("Undo: {}", act_name(act))
}

/// Label of redo.
pub(crate) fn redo_label(act: &str) -> String {
    format!("Redo: {}", act_name(act))
}

fn act_name(act: &str) -> &'static str {
    match act {
        "formula.new" => "new formula",
        "formula.duplicate" => "copy of a formula",
        "formula.rename" => "formula name",
        "formula.delete" => "formula deleted",
        "formula.example" => "example put back",
        "formula.purpose" => "use of the product",
        "formula.ph" => "pH",
        "formula.notes" => "notes",
        "formula.steps" => "method",
        "formula.write-in" => "percent and grams",
        "formula.keep-copy" => "copy kept",
        "formula.version" => "earlier version",
        "backup.restore" => "backup restored",
        "formula.cure" | "finding.cure" => "cure applied",
        "finding.set-aside" => "finding set aside",
        "finding.take-back" => "finding taken back",
        "line.suspend" => "solid meant to stay solid",
        "phase.add" => "new phase",
        "phase.rename" => "phase name",
        "phase.kind" => "kind of phase",
        "phase.temperature" => "phase temperature",
        "phase.move" => "phase moved",
        "phase.remove" => "phase taken out",
        "line.add" => "new line",
        "line.amount" => "amount",
        "line.qs" => "q.s. line",
        "line.note" => "note",
        "line.move" => "line moved",
        "line.replace" => "material of a line",
        "line.remove" => "line taken out",
        "batch.way" | "batch.mass" | "batch.count" | "batch.volume" | "batch.headspace" | "batch.loss"
        | "batch.density" => "batch size",
        "batch.stock" | "batch.stock-remove" => "material at hand",
        "settings" => "settings",
        "material.new" => "new material",
        "material.copy" => "copy of a material",
        "material.delete" => "material deleted",
        "material.holding" => "what you have of a material",
        "material.import" => "materials taken in",
        "part.add" | "part.amount" | "part.remove" => "parts of a composite",
        act if act.starts_with("material.") => "material",
        act if act.starts_with("extract.") || act.starts_with("run.") => name_of_act_beyond(act),
        _ => "last change",
    }
}

lazy! {
    whole "06" fn what_field_beyond_takes(kind: &str, field: &str, mark: DecimalMark) -> String {
        if kind.starts_with("run.") {
            sentences_run::what_field_takes(kind, mark)
        } else {
            sentences_extract::what_field_takes(field, mark)
        }
    } else { String::new() }
}

lazy! {
    whole "07" fn name_of_act_beyond(act: &str) -> &'static str {
        if act.starts_with("run.") { sentences_run::act_name(act) } else { sentences_extract::act_name(act) }
    } else { "last change" }
}
