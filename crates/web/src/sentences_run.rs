//! The sentences of the bench and the journal, in English.

use rust_decimal::Decimal;
use stillroom_core::PhaseKind;
use stillroom_core::colour::ColourError;
use stillroom_core::day::Day;
use stillroom_core::decay::DecayError;
use stillroom_core::number::{DecimalMark, write_fixed};
use stillroom_core::run::RunError;
use stillroom_core::run::heat::HeatBasis;
use stillroom_core::run::recipe::PourError;
use stillroom_core::run::steps::Step;

/// A space that does not break.
const NB: char = '\u{a0}';

/// What a field at the bench takes.
pub(crate) fn what_field_takes(kind: &str, mark: DecimalMark) -> String {
    let half = write_fixed(Decimal::new(15, 1), 1, mark);
    match kind.trim_start_matches("run.") {
        "temperature" => "what the thermometer shows in °C, from −20 to 150, such as 70".to_owned(),
        "timer" => format!("minutes, such as 3 or {half}"),
        "ph" | "entry" => format!("a pH from 0 to 14 such as {}", write_fixed(Decimal::new(55, 1), 1, mark)),
        "fill" => format!("a whole number of containers, and a mass such as {half} g for each"),
        _ => format!("what the scale shows, such as {half}, {half} g or 2 oz"),
    }
}

/// What an act was, for undo.
pub(crate) fn act_name(act: &str) -> &'static str {
    match act {
        "run.new" => "new batch",
        "run.delete" => "batch deleted",
        "run.lot" => "batch number",
        "run.finish" => "batch finished",
        "run.take-back" => "taking back at the bench",
        act if act.starts_with("run.entry") => "journal",
        _ => "step at the bench",
    }
}

// ---- why not -----------------------------------------------------------------------------------------------------

pub(crate) const fn run_error(error: RunError) -> &'static str {
    match error {
        RunError::UnsoundFormula => {
            "The amounts do not make 100 % yet. Mend the formula first; then it can be weighed."
        }
        RunError::NoBatch => "There is no batch to weigh yet. Say at the bench how large it is to be.",
    }
}

pub(crate) fn too_many_batches(most: usize) -> String {
    format!("{most} batches are kept on this device, which is the most. Delete one that you no longer need.")
}

pub(crate) fn pour_error(error: PourError, other: &str) -> String {
    match error {
        PourError::NoSuchLine => "This line has no share in the batch.".to_owned(),
        PourError::NoRest => "No line of this formula is q.s.".to_owned(),
        PourError::IsTheRest => "This is the q.s. line itself.".to_owned(),
        PourError::RestIsPoured => {
            "The q.s. line is in the beaker already. If you put water back after heating, leave it out there."
                .to_owned()
        }
        PourError::RestTooSmall => "The q.s. line has less than that to give.".to_owned(),
        PourError::OtherTooMuch { .. } => {
            format!("For that batch there would be too much {other} in the beaker already.")
        }
        PourError::TooLarge => "The batch would be too large to weigh.".to_owned(),
    }
}

pub(crate) const fn colour_error(error: ColourError) -> &'static str {
    match error {
        ColourError::NoPixels => "There is nothing to read there. Tap on the photo itself.",
        ColourError::WhiteOverexposed => {
            "The white is overexposed: how white it is cannot be told. Take the photo again in less light."
        }
        ColourError::WhiteTooDark => {
            "The white is too dark. Tap on plain white paper beside the product, in the same light."
        }
        ColourError::LighterThanWhite => {
            "The product is lighter than the white. Tap on the white paper, and then on the product."
        }
    }
}

pub(crate) const fn decay_error(error: DecayError) -> &'static str {
    match error {
        DecayError::TooFew => "Two readings some minutes apart are needed.",
        DecayError::UnderFloor => "A reading is not above the temperature of the room.",
        DecayError::DoesNotFall => "The readings do not fall yet.",
        DecayError::NeverReached => "The room is as warm as that: the batch will not get there by itself.",
    }
}

pub(crate) fn less_than_before(shown: &str, before: &str) -> String {
    format!("The beaker already held {before}; {shown} would be less. Or was the scale set to zero for this line?")
}

pub(crate) const fn nothing_poured() -> &'static str {
    "Nothing went in. To leave the line out, choose that below."
}

pub(crate) fn heavier_than_before(hot: &str, cold: &str) -> String {
    format!("{hot} is more than the {cold} before heating. Is it the same beaker, with nothing in it but this phase?")
}

pub(crate) fn lighter_than_beaker(mass: &str, empty: &str) -> String {
    format!("{mass} is less than the empty beaker, {empty}.")
}

pub(crate) fn batch_deleted(lot: &str) -> String {
    format!("Batch {lot} and its journal were deleted.")
}

pub(crate) const fn entry_removed() -> &'static str {
    "The observation was taken out."
}

pub(crate) fn finished(drawn: usize) -> String {
    match drawn {
        0 => "Finished. No stock was known of these materials, so none was drawn down.".to_owned(),
        1 => "Finished. One material was taken from your stock.".to_owned(),
        count => format!("Finished. {count} materials were taken from your stock."),
    }
}

// ---- the list ----------------------------------------------------------------------------------------------------

pub(crate) fn offer_batch(name: &str, mass: &str) -> String {
    format!("Make {mass} of {name}")
}

pub(crate) fn about_batch(lot: &str, mass: &str, state: &str) -> String {
    format!("{lot} · {mass} · {state}")
}

pub(crate) fn state_running(done: usize, of: usize) -> String {
    format!("step {} of {of}", done + 1)
}

pub(crate) fn state_finished(day: &str) -> String {
    format!("finished {day}")
}

pub(crate) fn expired(name: &str, day: &str, days: i64) -> String {
    let ago = if days == 1 { "yesterday".to_owned() } else { format!("{days} days ago") };
    format!("{name} is past its date: it should have been used by {day}, {ago}.")
}

// ---- steps -------------------------------------------------------------------------------------------------------

pub(crate) fn step_label(step: Step, name: &str) -> String {
    match step {
        Step::Prepare => "Ready the bench".to_owned(),
        Step::Beaker(_) => format!("Empty beaker: {name}"),
        Step::Weigh(_) => name.to_owned(),
        Step::Heat(_) => format!("Heat: {name}"),
        Step::Replace(_) => format!("Weigh again, put water back: {name}"),
        Step::Combine => "Combine the phases".to_owned(),
        Step::Blend => "Blend".to_owned(),
        Step::Cool => "Let it cool".to_owned(),
        Step::Temper(_) => format!("Temper: {name}"),
        Step::Add(_) => format!("Add: {name}"),
        Step::TopUp => "Weigh the batch, last water".to_owned(),
        Step::Ph => "Measure the pH".to_owned(),
        Step::Fill => "Fill".to_owned(),
        Step::Finish => "Look and sign".to_owned(),
    }
}

pub(crate) const fn phase_margin(kind: PhaseKind) -> &'static str {
    match kind {
        PhaseKind::HeatedWater => "heated-water",
        PhaseKind::HeatedOil => "heated-oil",
        PhaseKind::CoolDown => "cool-down",
        PhaseKind::RoomTemperature => "room-temperature",
    }
}

pub(crate) fn place_in_phase(phase: &str, at: usize, of: usize) -> String {
    format!("{phase} · {at} of {of}")
}

pub(crate) fn tolerance(step: &str, scale: &str) -> String {
    format!("give or take {step} on the {}", scale.to_lowercase())
}

pub(crate) fn running_total(before: &str, after: &str) -> String {
    format!("In the beaker: {before} now, {after} afterwards")
}

pub(crate) fn lot_and_day(lot: &str, expiry: &str) -> String {
    match (lot.is_empty(), expiry.is_empty()) {
        (true, true) => String::new(),
        (false, true) => format!("Lot {lot}"),
        (true, false) => format!("use by {expiry}"),
        (false, false) => format!("Lot {lot}, use by {expiry}"),
    }
}

pub(crate) fn too_much(over: &str, poured: &str, target: &str) -> String {
    format!("{over} too much: {poured} is in, {target} was wanted.")
}

pub(crate) fn too_little(poured: &str, target: &str) -> String {
    format!("{poured} of {target} is in.")
}

pub(crate) fn cure_add(mass: &str) -> String {
    format!("Add {mass} more")
}

pub(crate) fn cure_rescale(batch: &str) -> String {
    format!("Bring everything to it: a batch of {batch}")
}

pub(crate) fn add_more(items: &[String]) -> String {
    if items.is_empty() {
        "Every percent stays as it was. Nothing in the beaker has to change.".to_owned()
    } else {
        format!("Every percent stays as it was. Add {} more.", items.join(", "))
    }
}

pub(crate) fn more_of(mass: &str, name: &str) -> String {
    format!("{mass} {name}")
}

pub(crate) fn cure_rest(name: &str) -> String {
    format!("Take it out of {name} (q.s.)")
}

pub(crate) fn rest_becomes(mass: &str) -> String {
    format!("Of it, weigh {mass} in all. The batch keeps its mass.")
}

pub(crate) const fn cure_accept() -> &'static str {
    "Leave it and write it down"
}

pub(crate) fn percent_becomes(percent: &str, planned: &str) -> String {
    format!("It becomes {percent}{NB}% in place of {planned}{NB}%. The record says so.")
}

pub(crate) fn heat_basis(basis: HeatBasis) -> &'static str {
    match basis {
        HeatBasis::OfMaterial => "its own value",
        HeatBasis::OfParts => "from its parts",
        HeatBasis::OfClass => "what its kind usually has",
    }
}

pub(crate) fn under_melting(predicted: &str, name: &str, melts: &str) -> String {
    format!(
        "The phases come together at {predicted}, and {name} melts at up to {melts}: it may set in grains. Heat both \
         phases a little further, or warm the water phase more."
    )
}

pub(crate) fn melts_last(name: &str, melts: &str) -> String {
    format!("{name} melts last, at up to {melts}.")
}

pub(crate) fn melting_unknown(names: &[String]) -> String {
    format!("No melting point is known of {}: look until all is clear.", names.join(", "))
}

pub(crate) fn most_sensitive(name: &str, bears: &str) -> String {
    format!("{name} bears the least heat of what is added: at most {bears}.")
}

pub(crate) fn sensitivity_unknown(names: &[String]) -> String {
    format!("How much heat it bears is not known of {}.", names.join(", "))
}

pub(crate) fn reached_at(time: &str, low: &str, high: &str) -> String {
    format!("{time} ({low} to {high})")
}

/// Seconds as a clock shows them.
pub(crate) fn clock(seconds: u64) -> String {
    format!("{}:{:02}", seconds / 60, seconds % 60)
}

// ---- days --------------------------------------------------------------------------------------------------------

pub(crate) fn day_of_batch(number: i64, date: &str) -> String {
    format!("Day {number} · {date}")
}

/// A day in words.
pub(crate) fn day(day: Day) -> String {
    let text = day.to_string();
    let mut parts = text.split('-').map(|part| part.parse::<u32>().unwrap_or(1));
    let (year, month, number) = (parts.next().unwrap_or(1), parts.next().unwrap_or(1), parts.next().unwrap_or(1));
    crate::sentences_extract::day((i64::from(year), month, number))
}

// ---- the record --------------------------------------------------------------------------------------------------

pub(crate) const FORMULA: &str = "Formula";
pub(crate) const VERSION: &str = "Version";
pub(crate) const LOT: &str = "Batch number";
pub(crate) const MADE_ON: &str = "Made on";
pub(crate) const PLANNED: &str = "Batch planned";
pub(crate) const BEGUN_ENDED: &str = "Begun, finished";
pub(crate) const WEIGHED_IN: &str = "Weighed in";
pub(crate) const THERE: &str = "Batch at the end";
pub(crate) const FILLED: &str = "Filled";
pub(crate) const YIELD: &str = "Yield";
pub(crate) const PH: &str = "pH";
pub(crate) const WATER_BACK: &str = "Water put back";
pub(crate) const DRAWN: &str = "Taken from stock";
pub(crate) const SIGNATURES: [&str; 3] = ["Made by, date", "Checked by, date", "Released by, date"];

pub(crate) fn version(times: u64) -> String {
    if times == 0 { "not kept yet when the run began".to_owned() } else { times.to_string() }
}

pub(crate) fn from_until(from: &str, until: &str) -> String {
    if until.is_empty() { from.to_owned() } else { format!("{from} – {until}") }
}

pub(crate) fn did_start() -> String {
    "Bench ready, begun".to_owned()
}

pub(crate) fn did_put_first(phase: &str) -> String {
    format!("{phase} weighed first")
}

pub(crate) fn did_beaker(phase: &str, mass: &str) -> String {
    format!("{phase}: empty beaker {mass}")
}

pub(crate) fn did_pour(name: &str, mass: &str) -> String {
    format!("{name}: {mass} in")
}

pub(crate) fn did_leave_out(name: &str) -> String {
    format!("{name} left out")
}

pub(crate) fn did_accept(name: &str) -> String {
    format!("{name}: kept as it is, as a deviation")
}

pub(crate) fn did_rescale(name: &str) -> String {
    format!("All brought to what was poured of {name}")
}

pub(crate) fn did_take_from_rest(name: &str) -> String {
    format!("{name}: the q.s. line gave way")
}

pub(crate) fn did_weigh_cold(phase: &str, mass: &str) -> String {
    format!("{phase}: {mass} with its beaker before heating")
}

pub(crate) fn did_weigh_hot(phase: &str, mass: &str) -> String {
    format!("{phase}: {mass} with its beaker after heating")
}

pub(crate) fn did_add_water(to: &str, mass: &str) -> String {
    if to.is_empty() {
        format!("{mass} of water put back into the batch")
    } else {
        format!("{to}: {mass} of water put back")
    }
}

pub(crate) fn did_read(held: &str, degrees: &str) -> String {
    format!("{held}: {degrees}")
}

pub(crate) const THE_BATCH: &str = "Batch";
pub(crate) const THE_ROOM: &str = "Room";

pub(crate) fn did_start_timer(step: &str, minutes: &str) -> String {
    format!("{step}: timer for {minutes} min")
}

pub(crate) fn did_stop_timer(step: &str) -> String {
    format!("{step}: stopped")
}

pub(crate) fn did_resume_timer(step: &str) -> String {
    format!("{step}: went on")
}

pub(crate) fn did_temper(phase: &str, mass: &str) -> String {
    format!("{phase}: {mass} of the batch stirred in first")
}

pub(crate) fn did_weigh_batch(gross: &str, empty: &str) -> String {
    format!("Batch with beaker {gross}, beaker {empty}")
}

pub(crate) fn did_measure_ph(ph: &str) -> String {
    format!("pH {ph}")
}

pub(crate) fn did_fill(count: u32, each: &str) -> String {
    format!("Filled {count} × {each}")
}

pub(crate) fn did_say(label: &str, text: &str) -> String {
    if text.is_empty() { format!("{label}: struck out") } else { format!("{label}: {text}") }
}

pub(crate) const SCALE_READING: &str = "How the scale is read";

pub(crate) fn did_close(step: &str) -> String {
    format!("{step}: done")
}

pub(crate) fn did_finish() -> String {
    "Finished".to_owned()
}

pub(crate) fn deviation_of_mass(name: &str, poured: &str, target: &str, percent: &str) -> String {
    format!("{name}: {poured} weighed, {target} wanted ({percent}{NB}%).")
}

pub(crate) fn deviation_left_out(name: &str) -> String {
    format!("{name} was left out.")
}

pub(crate) fn deviation_batch(planned: &str, now: &str) -> String {
    format!("The batch was brought from {planned} to {now}; every percent stayed as it was.")
}

pub(crate) fn deviation_water(mass: &str) -> String {
    format!("{mass} of water were lost and not put back.")
}

pub(crate) fn deviation_water_more(mass: &str) -> String {
    format!("{mass} more water is in it than the lines brought.")
}

pub(crate) fn deviation_ph(ph: &str, wanted: &str) -> String {
    format!("pH {ph}; the formula aims at {wanted}.")
}

pub(crate) fn deviation_yield(percent: &str) -> String {
    format!("Yield {percent}{NB}%: more than 5 % is missing.")
}

// ---- dates -------------------------------------------------------------------------------------------------------

pub(crate) const BEST_BEFORE: &str = "Best before";
pub(crate) const AFTER_OPENING: &str = "After opening";
pub(crate) const ON_LABEL: &str = "On the label";
pub(crate) const PRACTICE: &str = "common practice";
pub(crate) const THIRTY_MONTHS_SOURCE: &str =
    "Regulation (EC) No 1223/2009, Article 19(1)(c), from memory; local rules decide";
pub(crate) const NO_DAY: &str = "not known";

pub(crate) fn limit_material(name: &str, day: &str) -> String {
    format!("{name} has to be used by {day}, before any other material: no longer than that without a stability test.")
}

pub(crate) fn limit_stated(months: u32) -> String {
    format!("{months} months by the stability test you state, which is earlier than any material.")
}

pub(crate) const LIMIT_UNKNOWN: &str = "No material in it states a last day, and no stability test is stated. Type the days beside the materials you have.";

pub(crate) fn days_unknown(names: &[String]) -> String {
    format!("No last day is known of {}.", names.join(", "))
}

pub(crate) fn months_after_opening(fewest: u32, most: u32) -> String {
    if fewest == most { format!("{most} months") } else { format!("{fewest} to {most} months") }
}

pub(crate) const OPENING_HOW: &str =
    "Usual where no laboratory has tested: 6 to 12 months with water and a preservative, 12 without water.";
pub(crate) const OPENING_NONE: &str = "none";
pub(crate) const OPENING_NONE_HOW: &str =
    "It holds water and no preservative: days, in the refrigerator. There is no such period.";

pub(crate) fn date_on_label(required: bool, months: Option<u32>) -> String {
    match (required, months) {
        (true, None) => "a date, once one is known".to_owned(),
        (true, Some(_)) => "a date".to_owned(),
        (false, _) => "the open jar, with months".to_owned(),
    }
}

pub(crate) fn thirty_months(months: Option<u32>) -> String {
    match months {
        Some(months) => format!(
            "It keeps {months} months from making. Up to 30 months a best-before date stands on the label, above 30 the months after opening."
        ),
        None => "Up to 30 months a best-before date stands on the label, above 30 the months after opening.".to_owned(),
    }
}

/// A run that is full.
pub(crate) fn too_many_deeds(most: usize) -> String {
    format!("This run has {most} entries, and more do not fit. Finish it and begin another.")
}

/// A day of the journal that is full.
pub(crate) fn too_many_photos(most: usize) -> String {
    format!("A day takes {most} photos. Take one out first, or write down another day.")
}

/// A journal that is full.
pub(crate) fn too_many_days(most: usize) -> String {
    format!("A journal takes {most} days.")
}

// ---- the journal -------------------------------------------------------------------------------------------------

pub(crate) fn noted_label(name: &str) -> &'static str {
    match name {
        "ph" => "pH",
        "look" => "Look",
        "separation" => "Separation",
        "smell" => "Smell",
        "viscosity" => "Viscosity",
        "storage" => "Where it stands",
        _ => "Note",
    }
}

pub(crate) fn due_label(number: i64) -> String {
    format!("Day {number}")
}

/// Where a day on which to look stands: looked at, to come, due or past, with the days since.
pub(crate) fn due_state(seen: bool, days_past: i64) -> String {
    match (seen, days_past) {
        (true, _) => "✓ looked at".to_owned(),
        (false, ..0) => "to come".to_owned(),
        (false, 0) => "due today".to_owned(),
        (false, 1) => "overdue by a day".to_owned(),
        (false, days) => format!("overdue by {days} days"),
    }
}

pub(crate) fn colour_in_numbers(lightness: &str, a: &str, b: &str) -> String {
    format!("L* {lightness}, a* {a}, b* {b}")
}

pub(crate) fn colour_difference(numbers: &str, difference: &str) -> String {
    format!("{numbers} · ΔE00 {difference} from the first")
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
        size if size < 2.0 => return "No change that photos can tell.".to_owned(),
        size if size < 5.0 => "Changed, to be seen side by side",
        _ => "Clearly changed",
    };
    let of = |value: f64, up: &'static str, down: &'static str| (value.abs(), if value > 0.0 { up } else { down });
    let mut ways = vec![
        of(shift.lightness, "lighter", "darker"),
        of(shift.red, "redder", "greener"),
        of(shift.yellow, "yellower", "bluer"),
        of(shift.chroma, "stronger", "paler"),
    ];
    ways.retain(|(much, _)| *much >= 1.5);
    ways.sort_by(|one, other| other.0.total_cmp(&one.0));
    let ways: Vec<&str> = ways.into_iter().map(|(_, way)| way).take(3).collect();
    if ways.is_empty() { format!("{size}.") } else { format!("{size}: {}.", ways.join(", ")) }
}

pub(crate) const CHANGE: &str = "Change since the first";
pub(crate) const CHANGE_HOW: &str =
    "CIEDE2000 between the last colour and the first; about 1 can just be seen side by side";
pub(crate) const CHANGE_SOURCE: &str = "CIE 142-2001; Sharma, Wu and Dalal (2005)";
pub(crate) const FADE: &str = "Half the colour is gone after";
pub(crate) const FADE_HOW: &str =
    "chroma falls by the same share each day (first order), fitted to your photos; a photo is taken as good to 1.5";
pub(crate) const FADE_SOURCE: &str = "first-order decay, least squares, 95 % band";
pub(crate) const FADE_CURVE: &str = "Chroma by day, with the fitted fade";

pub(crate) fn half_life(days: &str, low: &str, high: Option<&str>) -> (String, String) {
    let range = match high {
        Some(high) => format!("{low} to {high} days"),
        None => format!("{low} days or longer: that it does not fade at all is not ruled out"),
    };
    (format!("{days} days"), range)
}

/// Why there is no fade to fit, beside what the colour did instead.
pub(crate) fn no_fade(error: DecayError, difference: f64) -> &'static str {
    match error {
        DecayError::TooFew => "Photos of two days are needed.",
        DecayError::UnderFloor => "The colour is grey already.",
        DecayError::DoesNotFall | DecayError::NeverReached if difference < 2.0 => {
            "It holds, as far as photos can tell."
        }
        DecayError::DoesNotFall | DecayError::NeverReached => "It does not get paler, but it changes: see above.",
    }
}

pub(crate) fn reminder(name: &str, lot: &str, number: i64) -> String {
    format!("Look at {name}, batch {lot}: day {number}")
}

pub(crate) const REMINDER_ABOUT: &str =
    "pH, look, separation, smell, viscosity, and a photo beside white paper in the same light.";

pub(crate) fn calendar_name(lot: &str) -> String {
    let plain: String =
        lot.chars().map(|character| if character.is_alphanumeric() { character } else { '-' }).collect();
    format!("stillroom-{plain}.ics")
}
