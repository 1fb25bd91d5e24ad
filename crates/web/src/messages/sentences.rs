//! Which message says what: sentences that every room shares.

use crate::messages::{bench, common, desk, formula, jar, shelf};
use crate::rooms::jar::view::LayerView;
use crate::rooms::materials::view::Origin;
use rust_decimal::Decimal;
use stillroom_core::balance::{Balance, Cure, FormulaProblem};
use stillroom_core::composition::{CompositionError, DensityEstimate};
use stillroom_core::number::{self, DecimalMark, NumberError, write_between, write_fixed};
use stillroom_core::scaling::ScalingError;
use stillroom_core::weigh_sheet::ScaleError;
use stillroom_core::{Class, Formula, Layer, LineId, Material, MaterialId, Percent, PhaseKind, Purpose, WrittenIn};
use stillroom_exchange::record::RecordError;

/// A percent as people write it.
fn percent(value: Decimal, mark: DecimalMark) -> String {
    common::percent(&write_between(value.round_dp(4), 2, 4, mark))
}

/// Several texts as one list.
pub(crate) fn list(texts: &[impl AsRef<str>]) -> String {
    let texts: Vec<&str> = texts.iter().map(AsRef::as_ref).collect();
    texts.join(common::list_separator())
}

/// Several texts as one list, the last behind an "and".
pub(crate) fn list_and(texts: &[&str]) -> String {
    match texts {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [items @ .., last] => common::list_and(&list(items), last),
    }
}

/// The key that a word of the catalogue or of the core has in a message that selects by it: its letters and digits, with
/// hyphens between. A key begins with a letter.
pub(crate) fn key_of_word(word: &str) -> String {
    let parts = word.split(|character: char| !character.is_ascii_alphanumeric()).filter(|part| !part.is_empty());
    let key = parts.collect::<Vec<_>>().join("-").to_ascii_lowercase();
    if key.starts_with(|first: char| first.is_ascii_digit()) { format!("n{key}") } else { key }
}

/// Why a typed text was not understood, and what the field takes.
pub(crate) fn number_error(error: &NumberError, takes: &str, mark: DecimalMark) -> String {
    let plain = |value: Decimal| write_between(value, 0, 10, mark);
    match error {
        NumberError::Empty => common::number_empty(takes),
        NumberError::NotANumber { text } => common::number_not_a_number(text, takes),
        NumberError::Ambiguous { grouped, fraction, .. } => {
            common::number_ambiguous(&plain(*grouped), &plain(*fraction))
        }
        NumberError::TooLong { whole, decimals } => common::number_too_long(&whole.to_string(), &decimals.to_string()),
        NumberError::UnknownUnit { unit } => common::number_unknown_unit(unit, takes),
        NumberError::WrongUnit { unit } => common::number_wrong_unit(unit, takes),
        NumberError::VolumeNeedsDensity => common::number_volume_needs_density().to_owned(),
        NumberError::NotWhole { value } => common::number_not_whole(&plain(*value), takes),
        NumberError::OutOfRange { value, minimum, maximum } => {
            common::number_out_of_range(&plain(*value), &plain(*minimum), &plain(*maximum), takes)
        }
    }
}

/// What keeps the amounts from being a formula.
pub(crate) fn formula_problem(problem: &FormulaProblem, name: &dyn Fn(LineId) -> String, mark: DecimalMark) -> String {
    let hundred = Decimal::ONE_HUNDRED;
    let written = |value: Decimal| percent(value, mark);
    match problem {
        FormulaProblem::Empty => formula::problem_empty().to_owned(),
        FormulaProblem::TotalNotHundred { total } if total.value() > hundred => {
            formula::problem_too_much(&written(total.value()), &written(total.value() - hundred))
        }
        FormulaProblem::TotalNotHundred { total } => {
            formula::problem_missing(&written(total.value()), &written(hundred - total.value()))
        }
        FormulaProblem::SeveralQuantumSatis { lines, left } if left.value() > Decimal::ZERO => {
            formula::problem_several_rest(&lines.len().to_string(), &written(left.value()))
        }
        FormulaProblem::SeveralQuantumSatis { lines, .. } => {
            formula::problem_several_rest_nothing(&lines.len().to_string())
        }
        FormulaProblem::QuantumSatisNegative { line, others } => {
            formula::problem_rest_negative(&written(others.value()), &name(*line))
        }
        FormulaProblem::QuantumSatisZero { line } => formula::problem_rest_zero(&name(*line)),
        FormulaProblem::NotPositive { line, value } if value.is_zero() => formula::problem_at_zero(&name(*line)),
        FormulaProblem::NotPositive { line, .. } => formula::problem_negative(&name(*line)),
        FormulaProblem::MixedAmounts { .. } => formula::problem_mixed().to_owned(),
        FormulaProblem::TooLarge => formula::problem_too_large().to_owned(),
    }
}

/// What a cure does, for its button.
pub(crate) fn cure(cure: &Cure, name: &dyn Fn(LineId) -> String, mark: DecimalMark) -> String {
    match cure {
        Cure::Normalise { .. } => formula::cure_normalise().to_owned(),
        Cure::MakeQuantumSatis { line, becomes } => {
            formula::cure_make_rest(&name(*line), &percent(becomes.value(), mark))
        }
        Cure::KeepOneQuantumSatis { line, others } => {
            formula::cure_keep_one_rest(&name(*line), &percent(others.value(), mark))
        }
        Cure::MakeRoom { line, .. } => formula::cure_make_room(&name(*line)),
        Cure::SetPercent { line, to } => formula::cure_set_percent(&name(*line), &percent(to.value(), mark)),
        Cure::RemoveLine { line } => formula::cure_remove_line(&name(*line)),
        Cure::ReadAllAsPercent => formula::cure_read_as_percent().to_owned(),
    }
}

/// Why a material cannot be seen through.
pub(crate) fn composition_error(error: &CompositionError, name: &dyn Fn(MaterialId) -> String) -> String {
    match error {
        CompositionError::UnknownMaterial { .. } => common::composition_unknown_material().to_owned(),
        CompositionError::Cycle { path } => {
            let mut names: Vec<String> = path.iter().map(|id| name(*id)).collect();
            names.extend(path.first().map(|id| name(*id)));
            common::composition_cycle(&names.join(" \u{2192} "))
        }
        CompositionError::PartsOutOfBalance { material, problem } => {
            let say = match problem {
                FormulaProblem::Empty => common::composition_no_parts,
                FormulaProblem::TotalNotHundred { .. } => common::composition_parts_not_hundred,
                FormulaProblem::SeveralQuantumSatis { .. } => common::composition_several_rest,
                FormulaProblem::QuantumSatisNegative { .. } | FormulaProblem::QuantumSatisZero { .. } => {
                    common::composition_no_rest
                }
                FormulaProblem::NotPositive { .. } => common::composition_part_at_zero,
                FormulaProblem::MixedAmounts { .. } => common::composition_mixed,
                FormulaProblem::TooLarge => common::composition_too_large,
            };
            say(&name(*material))
        }
        CompositionError::TooDeep { material } => common::composition_too_deep(&name(*material)),
    }
}

/// Why there is no batch.
pub(crate) fn scaling_error(error: &ScalingError, mark: DecimalMark) -> String {
    match error {
        ScalingError::NoBatch => bench::no_batch().to_owned(),
        ScalingError::DensityUnknown => bench::density_needed().to_owned(),
        ScalingError::Allowance { value, largest } => {
            let plain = |value: Decimal| write_between(value, 0, 2, mark);
            bench::allowance_out_of_range(&plain(*value), &plain(*largest))
        }
        ScalingError::NothingAtHand => bench::nothing_at_hand().to_owned(),
        ScalingError::TooLarge => bench::batch_too_large().to_owned(),
    }
}

/// Why scales cannot be used together.
pub(crate) fn scale_error(error: &ScaleError) -> String {
    match error {
        ScaleError::NoScale => bench::scale_needed().to_owned(),
        ScaleError::Step { finest, coarsest, .. } => bench::scale_step(&finest.to_string(), &coarsest.to_string()),
        ScaleError::LimitsDoNotRise => bench::scale_limits().to_owned(),
    }
}

/// How the density was come by, when it was not measured.
pub(crate) fn estimated_density(known: Percent, mark: DecimalMark) -> String {
    bench::density_estimated(&common::percent(&write_between(known.value().round_dp(1), 0, 1, mark)))
}

/// How dense the product is, as far as known.
pub(crate) fn density(estimate: Option<&DensityEstimate>, mark: DecimalMark) -> String {
    estimate.map_or_else(
        || jar::density_unknown().to_owned(),
        |estimate| {
            let density = write_between(estimate.density.value().round_dp(3), 2, 3, mark);
            let known = write_between(estimate.known.value().round_dp(1), 0, 1, mark);
            jar::density_estimate(&density, &common::percent(&known))
        },
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
    let count = count.to_string();
    if headspace == "0" {
        bench::fill_arithmetic_full(&count, volume, density, loss, mass)
    } else {
        bench::fill_arithmetic(&count, volume, headspace, density, loss, mass)
    }
}

/// Smallest batch with every line within the tolerance.
pub(crate) fn smallest_batch(mass: &str, tolerance: &str) -> String {
    bench::smallest_batch(&common::percent(tolerance), mass)
}

/// Lines whose rounding error is larger than the maker accepts.
pub(crate) fn lines_too_coarse(names: &[String], tolerance: &str) -> String {
    if names.is_empty() {
        return String::new();
    }
    bench::lines_too_coarse(names.len(), &list(names), &common::percent(tolerance))
}

/// Relative error of a weighed line.
pub(crate) fn relative_error(error: Decimal, mark: DecimalMark) -> String {
    let decimals = if error.abs() < Decimal::ONE { 2 } else { 1 };
    let number = write_fixed(error, decimals, mark);
    if error > Decimal::ZERO { common::percent(&format!("+{number}")) } else { common::percent(&number) }
}

/// What a composite brings.
pub(crate) fn brings<'a>(parts: impl Iterator<Item = (&'a str, String)>, more: bool) -> String {
    let parts: Vec<String> = parts.map(|(inci, number)| format!("{inci}\u{a0}{number}")).collect();
    let parts = list(&parts);
    if more { common::brings_and_more(&parts) } else { common::brings(&parts) }
}

/// What a layer of the jar is called.
pub(crate) fn layer(layer: Layer) -> &'static str {
    match layer {
        Layer::Water => jar::layer_water(),
        Layer::Humectants => jar::layer_humectants(),
        Layer::Thickeners => jar::layer_thickeners(),
        Layer::Oils => jar::layer_oils(),
        Layer::Solids => jar::layer_solids(),
        Layer::Emulsifiers => jar::layer_emulsifiers(),
        Layer::Surfactants => jar::layer_surfactants(),
        Layer::Actives => jar::layer_actives(),
        Layer::Preservatives => jar::layer_preservatives(),
        Layer::Fragrance => jar::layer_fragrance(),
        Layer::Minerals => jar::layer_minerals(),
        Layer::Helpers => jar::layer_helpers(),
    }
}

/// The jar for those who do not see it.
pub(crate) fn jar_description(layers: &[LayerView]) -> String {
    if layers.is_empty() {
        return jar::empty().to_owned();
    }
    let layers: Vec<String> =
        layers.iter().rev().map(|layer| jar::layer_share(&layer.label, &common::percent(&layer.percent))).collect();
    jar::description(&list(&layers))
}

/// An INCI name, or what stands for one that was not given.
pub(crate) fn inci_or_unnamed(inci: &str) -> &str {
    if inci.is_empty() { common::inci_unnamed() } else { inci }
}

/// What a material is.
pub(crate) fn class(class: Class) -> &'static str {
    match class {
        Class::Water => common::class_water(),
        Class::Humectant => common::class_humectant(),
        Class::Solvent => common::class_solvent(),
        Class::Thickener => common::class_thickener(),
        Class::Oil => common::class_oil(),
        Class::Butter => common::class_butter(),
        Class::Emollient => common::class_emollient(),
        Class::Wax => common::class_wax(),
        Class::FattyAlcohol => common::class_fatty_alcohol(),
        Class::FattyAcid => common::class_fatty_acid(),
        Class::Emulsifier => common::class_emulsifier(),
        Class::Surfactant => common::class_surfactant(),
        Class::Active => common::class_active(),
        Class::Extract => common::class_extract(),
        Class::Protein => common::class_protein(),
        Class::Preservative => common::class_preservative(),
        Class::Chelator => common::class_chelator(),
        Class::Antioxidant => common::class_antioxidant(),
        Class::PhAdjuster => common::class_ph_adjuster(),
        Class::Salt => common::class_salt(),
        Class::EssentialOil => common::class_essential_oil(),
        Class::Fragrance => common::class_fragrance(),
        Class::Colourant => common::class_colourant(),
        Class::Mineral => common::class_mineral(),
        Class::Exfoliant => common::class_exfoliant(),
        Class::Other => common::class_other(),
    }
}

/// What a phase is called unless the maker calls it otherwise.
pub(crate) fn phase_name(kind: PhaseKind) -> &'static str {
    match kind {
        PhaseKind::HeatedWater => formula::default_phase_heated_water(),
        PhaseKind::HeatedOil => formula::default_phase_heated_oil(),
        PhaseKind::CoolDown => formula::default_phase_cool_down(),
        PhaseKind::RoomTemperature => formula::default_phase_room_temperature(),
    }
}

/// Whether a phase has the name that such a phase is given, in whatever language it was made.
pub(crate) fn is_default_phase_name(name: &str, kind: PhaseKind) -> bool {
    let names = match kind {
        PhaseKind::HeatedWater => formula::default_phase_heated_water_anywhere(),
        PhaseKind::HeatedOil => formula::default_phase_heated_oil_anywhere(),
        PhaseKind::CoolDown => formula::default_phase_cool_down_anywhere(),
        PhaseKind::RoomTemperature => formula::default_phase_room_temperature_anywhere(),
    };
    names.contains(&name)
}

/// Which of the usual scales a scale is; none of them, if a record names it otherwise.
pub(crate) fn scale_key(name: &str) -> &'static str {
    match name {
        "Fine scale" => "fine",
        "Kitchen scale" => "kitchen",
        _ => "any",
    }
}

/// What a scale is called.
pub(crate) fn scale_name(name: &str) -> String {
    match scale_key(name) {
        "fine" => bench::scale_fine().to_owned(),
        "kitchen" => bench::scale_kitchen().to_owned(),
        _ => name.to_owned(),
    }
}

/// A number with its unit, as the language of the page writes both.
pub(crate) fn with_unit(number: &str, unit: &str) -> String {
    match unit {
        "" => number.to_owned(),
        "%" => common::percent(number),
        unit => number::with_unit(number, self::unit(unit)),
    }
}

/// A unit as the language of the page writes it.
pub(crate) fn unit(symbol: &str) -> &str {
    match symbol {
        "mL" => common::unit_millilitre(),
        "L" => common::unit_litre(),
        "g/mL" => common::unit_gram_per_millilitre(),
        symbol => symbol,
    }
}

/// What stands before a phase's temperature.
pub(crate) fn temperature_word(kind: PhaseKind) -> &'static str {
    match kind {
        PhaseKind::HeatedWater | PhaseKind::HeatedOil => formula::temperature_to(),
        PhaseKind::CoolDown | PhaseKind::RoomTemperature => formula::temperature_under(),
    }
}

/// INCI name, class and origin of a material in a few words.
pub(crate) fn about_material(material: &Material, inci: &str, origin: Origin) -> String {
    let class = class(material.class);
    match origin {
        Origin::Formula => common::about_formula_material().to_owned(),
        Origin::Own if inci.is_empty() => common::about_own(class),
        Origin::Own => common::about_own_inci(inci, class),
        Origin::Catalogue if inci.is_empty() => common::about_composite(class),
        Origin::Catalogue => common::about_simple(inci, class),
    }
}

/// Lines, use and state of a formula in a few words.
pub(crate) fn about_formula(of: &Formula, balance: &Balance, mark: DecimalMark) -> String {
    if balance.shares.is_empty() {
        return shelf::about_empty().to_owned();
    }
    let purpose = match of.purpose {
        Purpose::LeaveOn => "leave-on",
        Purpose::RinseOff => "rinse-off",
    };
    let mut about = shelf::about(balance.shares.len(), purpose);
    if let Some(ph) = of.measured_ph.or(of.target_ph) {
        about = shelf::about_ph(&about, &write_between(ph.value(), 1, 2, mark));
    }
    if !balance.is_sound() {
        about = shelf::about_unsound(&about, &percent(balance.total.value(), mark));
    }
    about
}

/// Name of a formula nobody has named yet.
pub(crate) fn name_of_new_formula(written_in: WrittenIn) -> &'static str {
    match written_in {
        WrittenIn::Percent => shelf::new_formula(),
        WrittenIn::Grams => shelf::new_old_batch(),
    }
}

/// Name of a material nobody has named yet.
pub(crate) fn name_of_new_material(composite: bool) -> &'static str {
    if composite { common::new_composite() } else { common::new_material() }
}

/// A record that two pages changed.
pub(crate) fn changed_elsewhere(name: &str) -> String {
    if name.is_empty() { desk::something_changed_elsewhere().to_owned() } else { desk::changed_elsewhere(name) }
}

/// A record that cannot be read.
pub(crate) fn unreadable(key: &str, error: &RecordError) -> String {
    match error {
        RecordError::Newer { .. } => desk::record_newer(key),
        RecordError::Damaged { .. } | RecordError::TooLong { .. } => desk::record_damaged(key),
    }
}
