//! Which message says what at the bench and in the journal.

use crate::messages::batches as says;
use crate::messages::sentences::list;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use stillroom_core::PhaseKind;
use stillroom_core::colour::ColourError;
use stillroom_core::day::Day;
use stillroom_core::decay::{DecayError, HalfLife};
use stillroom_core::number::{DecimalMark, write_fixed};
use stillroom_core::run::RunError;
use stillroom_core::run::heat::HeatBasis;
use stillroom_core::run::recipe::PourError;
use stillroom_core::run::steps::Step;
use stillroom_core::shelf_life::Keeping;

/// What a field at the bench takes.
pub(crate) fn what_field_takes(kind: &str, mark: DecimalMark) -> String {
    let half = write_fixed(Decimal::new(15, 1), 1, mark);
    match kind.trim_start_matches("run.") {
        "temperature" => says::takes_temperature().to_owned(),
        "timer" => says::takes_minutes(&half),
        "ph" | "entry" => says::takes_ph(&write_fixed(Decimal::new(55, 1), 1, mark)),
        "fill" => says::takes_filling(&half),
        _ => says::takes_mass(&half),
    }
}

/// What an act was, for undo.
pub(crate) fn act_name(act: &str) -> &'static str {
    match act {
        "run.new" => says::act_new(),
        "run.delete" => says::act_delete(),
        "run.lot" => says::act_lot(),
        "run.finish" => says::act_finish(),
        "run.take-back" => says::act_take_back(),
        act if act.starts_with("run.entry") => says::act_journal(),
        _ => says::act_step(),
    }
}

// ---- why not -----------------------------------------------------------------------------------------------------

pub(crate) fn run_error(error: RunError) -> &'static str {
    match error {
        RunError::UnsoundFormula => says::unsound_formula(),
        RunError::NoBatch => says::no_batch(),
    }
}

pub(crate) fn pour_error(error: PourError, other: &str) -> String {
    match error {
        PourError::NoSuchLine => says::pour_no_such_line().to_owned(),
        PourError::NoRest => says::pour_no_rest().to_owned(),
        PourError::IsTheRest => says::pour_is_the_rest().to_owned(),
        PourError::RestIsPoured => says::pour_rest_is_poured().to_owned(),
        PourError::RestTooSmall => says::pour_rest_too_small().to_owned(),
        PourError::OtherTooMuch { .. } => says::pour_other_too_much(other),
        PourError::TooLarge => says::pour_too_large().to_owned(),
    }
}

pub(crate) fn colour_error(error: ColourError) -> &'static str {
    match error {
        ColourError::NoPixels => says::colour_no_pixels(),
        ColourError::WhiteOverexposed => says::colour_white_overexposed(),
        ColourError::WhiteTooDark => says::colour_white_too_dark(),
        ColourError::LighterThanWhite => says::colour_lighter_than_white(),
    }
}

/// Why it cannot be told when a batch will be cool.
pub(crate) fn cooling_error(error: DecayError) -> &'static str {
    match error {
        DecayError::TooFew => says::cooling_too_few(),
        DecayError::UnderFloor => says::cooling_under_room(),
        DecayError::DoesNotFall => says::cooling_does_not_fall(),
        DecayError::NeverReached => says::cooling_never_reached(),
    }
}

// ---- materials past their day ------------------------------------------------------------------------------------

pub(crate) fn expired(name: &str, last_day: Day, days: i64) -> String {
    says::expired(usize::try_from(days).unwrap_or(0), name, &day(last_day))
}

// ---- steps -------------------------------------------------------------------------------------------------------

pub(crate) fn step_label(step: Step, name: &str) -> String {
    match step {
        Step::Prepare => says::step_prepare().to_owned(),
        Step::Beaker(_) => says::step_beaker(name),
        Step::Weigh(_) => name.to_owned(),
        Step::Heat(_) => says::step_heat(name),
        Step::Replace(_) => says::step_replace(name),
        Step::Combine => says::step_combine().to_owned(),
        Step::Blend => says::step_blend().to_owned(),
        Step::Cool => says::step_cool().to_owned(),
        Step::Temper(_) => says::step_temper(name),
        Step::Add(_) => says::step_add(name),
        Step::TopUp => says::step_top_up().to_owned(),
        Step::Ph => says::step_ph().to_owned(),
        Step::Fill => says::step_fill().to_owned(),
        Step::Finish => says::step_finish().to_owned(),
    }
}

pub(crate) fn phase_margin(kind: PhaseKind) -> &'static str {
    match kind {
        PhaseKind::HeatedWater => "heated-water",
        PhaseKind::HeatedOil => "heated-oil",
        PhaseKind::CoolDown => "cool-down",
        PhaseKind::RoomTemperature => "room-temperature",
    }
}

/// Lot of a material, and the day by which it should be used, as the record has it.
pub(crate) fn lot_and_day(lot: &str, expiry: &str) -> String {
    let expiry = expiry.parse().map_or_else(|_| expiry.to_owned(), day);
    match (lot.is_empty(), expiry.is_empty()) {
        (true, true) => String::new(),
        (false, true) => says::lot(lot),
        (true, false) => says::use_by(&expiry),
        (false, false) => says::lot_and_use_by(lot, &expiry),
    }
}

/// What else goes in where a batch is brought to what was poured.
pub(crate) fn add_more(items: &[String]) -> String {
    if items.is_empty() { says::rescale_adds_nothing().to_owned() } else { says::rescale_adds(&list(items)) }
}

/// The specific heat of a line, and what it rests on.
pub(crate) fn heat_of_line(name: &str, heat: &str, basis: HeatBasis) -> String {
    let basis = match basis {
        HeatBasis::OfMaterial => "material",
        HeatBasis::OfParts => "parts",
        HeatBasis::OfClass => "class",
    };
    says::heat_of_line(basis, name, heat)
}

/// Seconds as a clock shows them.
pub(crate) fn clock(seconds: u64) -> String {
    format!("{}:{:02}", seconds / 60, seconds % 60)
}

/// A day in words.
pub(crate) fn day(day: Day) -> String {
    let (year, month, of_month) = (i64::from(day.year()), u32::from(day.month()), u32::from(day.of_month()));
    crate::rooms::extracts::sentences::day((year, month, of_month))
}

// ---- the record --------------------------------------------------------------------------------------------------

/// Names of what a maker fills in, by their key in the record. They follow what guidance on good manufacturing practice
/// for cosmetics (ISO 22716) asks a batch record to hold.
pub(crate) fn record_fields() -> [(&'static str, &'static str); 17] {
    [
        ("weighed-by", says::field_weighed_by()),
        ("checked-by", says::field_checked_by()),
        ("line-clearance", says::field_line_clearance()),
        ("cleaning", says::field_cleaning()),
        ("equipment", says::field_equipment()),
        ("balance", says::field_balance()),
        ("water", says::field_water()),
        ("look", says::field_look()),
        ("viscosity", says::field_viscosity()),
        ("ph-method", says::field_ph_method()),
        ("packaging", says::field_packaging()),
        ("net-content", says::field_net_content()),
        ("loss", says::field_loss()),
        ("retained", says::field_retained()),
        ("durability", says::field_durability()),
        ("released", says::field_released()),
        ("released-by", says::field_released_by()),
    ]
}

pub(crate) fn cautions() -> [&'static str; 3] {
    [says::caution_patch_test(), says::caution_no_assessment(), says::caution_no_claims()]
}

pub(crate) fn signatures() -> [&'static str; 3] {
    [says::signature_made(), says::signature_checked(), says::signature_released()]
}

/// The steps of a method as its maker wrote them, numbered.
pub(crate) fn numbered_steps(steps: &[String]) -> Vec<String> {
    let written = steps.iter().map(|step| step.trim()).filter(|step| !step.is_empty());
    (1_usize..).zip(written).map(|(number, step)| format!("{number}. {step}")).collect()
}

pub(crate) fn version(times: u64) -> String {
    if times == 0 { says::record_version_not_kept().to_owned() } else { times.to_string() }
}

pub(crate) fn from_until(from: &str, until: &str) -> String {
    if until.is_empty() { from.to_owned() } else { says::record_from_until(from, until) }
}

pub(crate) fn did_say(label: &str, text: &str) -> String {
    if text.is_empty() { says::did_strike_out(label) } else { says::did_say(label, text) }
}

// ---- dates -------------------------------------------------------------------------------------------------------

/// A number of months, days or readings, to be said.
fn counted(number: u32) -> usize {
    usize::try_from(number).unwrap_or(usize::MAX)
}

pub(crate) fn limit_stated(months: u32) -> String {
    says::limit_stated(counted(months))
}

/// How long such a product keeps by itself.
pub(crate) fn limit_keeping(keeping: Keeping) -> &'static str {
    match keeping {
        Keeping::UnpreservedWater => says::limit_unpreserved_water(),
        Keeping::PreservedWater => says::limit_preserved_water(),
        Keeping::BoundWater => says::limit_bound_water(),
        Keeping::Anhydrous => says::limit_anhydrous(),
        Keeping::DelicateOil => says::limit_delicate_oil(),
    }
}

pub(crate) fn months_after_opening(fewest: u32, most: u32) -> String {
    if fewest == most {
        says::opening_months(counted(most))
    } else {
        says::opening_months_range(&fewest.to_string(), &most.to_string())
    }
}

pub(crate) fn date_on_label(required: bool, months: Option<u32>) -> &'static str {
    match (required, months) {
        (true, None) => says::label_date_when_known(),
        (true, Some(_)) => says::label_date(),
        (false, _) => says::label_open_jar(),
    }
}

pub(crate) fn thirty_months(months: Option<u32>) -> String {
    months.map_or_else(|| says::thirty_months_unknown().to_owned(), |months| says::thirty_months(counted(months)))
}

// ---- the journal -------------------------------------------------------------------------------------------------

pub(crate) fn noted_label(name: &str) -> &'static str {
    match name {
        "ph" => says::noted_ph(),
        "look" => says::noted_look(),
        "separation" => says::noted_separation(),
        "smell" => says::noted_smell(),
        "viscosity" => says::noted_viscosity(),
        "storage" => says::noted_storage(),
        _ => says::noted_note(),
    }
}

/// Where a day on which to look stands: looked at, to come, due or past, with the days since.
pub(crate) fn due_state(seen: bool, days_past: i64) -> String {
    match (seen, days_past) {
        (true, _) => says::due_seen().to_owned(),
        (false, ..0) => says::due_to_come().to_owned(),
        (false, 0) => says::due_today().to_owned(),
        (false, days) => says::due_overdue(usize::try_from(days).unwrap_or(usize::MAX)),
    }
}

/// How a colour went from the first look to the last.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct ColourShift {
    /// Lighter above nothing, darker below.
    pub(crate) lightness: f64,
    /// Stronger above nothing, paler below.
    pub(crate) chroma: f64,
    /// Redder above nothing, greener below.
    pub(crate) red: f64,
    /// Yellower above nothing, bluer below.
    pub(crate) yellow: f64,
}

/// The verdict on a colour in words: how large its change is, and where it went. Sizes in ΔE00: what two photos of the
/// same thing may differ by is taken as 2 (common practice); above 5 nobody takes one for the other.
pub(crate) fn colour_verdict(difference: f64, shift: ColourShift) -> String {
    let size = match difference {
        size if size < 2.0 => return says::unchanged().to_owned(),
        size if size < 5.0 => "visibly",
        _ => "clearly",
    };
    let of = |value: f64, up: &'static str, down: &'static str| (value.abs(), if value > 0.0 { up } else { down });
    let mut ways = vec![
        of(shift.lightness, says::way_lighter(), says::way_darker()),
        of(shift.red, says::way_redder(), says::way_greener()),
        of(shift.yellow, says::way_yellower(), says::way_bluer()),
        of(shift.chroma, says::way_stronger(), says::way_paler()),
    ];
    ways.retain(|(much, _)| *much >= 1.5);
    ways.sort_by(|one, other| other.0.total_cmp(&one.0));
    let ways: Vec<&str> = ways.into_iter().map(|(_, way)| way).take(3).collect();
    if ways.is_empty() { says::changed(size) } else { says::changed_ways(size, &list(&ways)) }
}

/// Days after which half the colour is gone, and the range of that; without an end where it may not fade at all.
pub(crate) fn half_life(half: &HalfLife) -> (String, String) {
    let days = |value: f64| value.round().to_usize().unwrap_or(usize::MAX);
    let range = match half.high {
        Some(high) => says::fade_days_range(&days(half.low).to_string(), &days(high).to_string()),
        None => says::fade_days_or_longer(days(half.low)),
    };
    (says::fade_days(days(half.estimate)), range)
}

/// Why there is no fade to fit, beside what the colour did instead.
pub(crate) fn no_fade(error: DecayError, difference: f64) -> &'static str {
    match error {
        DecayError::TooFew => says::fade_too_few(),
        DecayError::UnderFloor => says::fade_grey_already(),
        DecayError::DoesNotFall | DecayError::NeverReached if difference < 2.0 => says::fade_holds(),
        DecayError::DoesNotFall | DecayError::NeverReached => says::fade_otherwise(),
    }
}

/// Name of a calendar file.
pub(crate) fn calendar_name(lot: &str) -> String {
    let plain: String =
        lot.chars().map(|character| if character.is_alphanumeric() { character } else { '-' }).collect();
    format!("stillroom-{plain}.ics")
}
