//! The sentences of the extract room, in English.

use crate::extracts::{Day, Trouble};
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use stillroom_catalogue::reference::PlantWater;
use stillroom_core::chemistry::PhysicsError;
use stillroom_core::extract::keeping::{Basis, Kind, LowRisk, Organism, Spectrum, Step as KeepStep, UseBy};
use stillroom_core::extract::{ExtractError, Part, Reason};
use stillroom_core::number::{DecimalMark, write_between, write_fixed};
use stillroom_exchange::extract::ExtractKind;

/// A space that does not break.
const NB: char = '\u{a0}';

/// A computed number with so many decimals.
pub(crate) fn fixed(value: f64, decimals: u32, mark: DecimalMark) -> String {
    Decimal::from_f64(value).map_or_else(String::new, |value| write_fixed(value, decimals, mark))
}

fn plain(value: f64, mark: DecimalMark) -> String {
    Decimal::from_f64(value).map_or_else(String::new, |value| write_between(value.round_dp(4), 0, 4, mark))
}

/// What a field of an extract takes.
pub(crate) fn what_field_takes(field: &str, mark: DecimalMark) -> String {
    let number = |value: Decimal| write_between(value, 0, 4, mark);
    let half = number(Decimal::new(15, 1));
    match field.trim_start_matches("extract.") {
        "made-on" => "a day of the calendar, such as 2026-03-01".to_owned(),
        "temperature" | "reading-temperature" | "calibrated" => "a temperature in °C such as 20".to_owned(),
        "jar-volume" | "finished-volume" | "alcohol-volume" => "a volume such as 250 mL".to_owned(),
        "wanted-activity" => format!("a water activity between 0 and 1 such as {}", number(Decimal::new(75, 2))),
        "menstruum-per-plant" => format!("grams of liquid per gram of plant, such as {half}"),
        "optical-value" => format!("what the refractometer shows, such as 50 or {}", number(Decimal::new(14_295, 4))),
        "gravity-value" => format!("what the hydrometer shows, such as {}", write_fixed(Decimal::new(117, 2), 3, mark)),
        "optical-step" | "gravity-step" => {
            format!("the smallest step of the scale, such as {}", number(Decimal::new(2, 1)))
        }
        "ph" => format!("a pH from 0 to 14 such as {}, or nothing", number(Decimal::new(55, 1))),
        "plant-mass" | "glycerin" | "added-water" | "solvent-mass" | "evaporation" | "sample-fresh"
        | "sample-dried" | "mass-now" | "total" | "batch" => format!("a mass such as {half}, {half} g or 2 oz"),
        field if field.starts_with("blend:") => format!("a mass such as {half} g, or nothing for all of it"),
        _ => format!("a percent such as {half}"),
    }
}

/// A day that does not exist.
pub(crate) fn not_a_day(text: &str) -> String {
    format!("“{text}” is not a day. Type {}.", what_field_takes("made-on", DecimalMark::Point))
}

/// A day in words.
pub(crate) fn day((year, month, day): Day) -> String {
    const MONTHS: [&str; 12] = [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ];
    let month = MONTHS.get(month as usize - 1).copied().unwrap_or_default();
    format!("{day}{NB}{month}{NB}{year}")
}

/// Why an extract comes to nothing yet.
pub(crate) fn trouble(trouble: &Trouble, mark: DecimalMark) -> String {
    match trouble {
        Trouble::NoPlantWater => {
            "How much water is in the plant is not known yet. Choose a plant, type its percent of water, or weigh a \
             sample, dry it until it loses no more, and weigh it again."
                .to_owned()
        }
        Trouble::NothingPlanned => "Nothing is in the jar yet. Say how much plant and how much glycerin.".to_owned(),
        Trouble::NoMaterial => "Choose the material first.".to_owned(),
        Trouble::Extract(error) => extract_error(error, mark),
    }
}

/// Why the engine has no answer.
pub(crate) fn extract_error(error: &ExtractError, mark: DecimalMark) -> String {
    let number = |value: Decimal| write_between(value.round_dp(2), 0, 2, mark);
    match error {
        ExtractError::Arithmetic(error) if error.code() == "arithmetic.nothing-to-mix" => {
            "There is nothing to work with: a mass is still at 0.".to_owned()
        }
        ExtractError::Quantity(_) | ExtractError::Arithmetic(_) => {
            "The numbers are too large to be worked with.".to_owned()
        }
        ExtractError::Physics(error) => physics_error(error, mark),
        ExtractError::NotAShare { quantity, value, minimum, maximum } => format!(
            "The {quantity} is {}{NB}%; it lies between {} and {}{NB}%.",
            number(*value),
            number(*minimum),
            number(*maximum)
        ),
        ExtractError::NothingLeft { what, taken, available } => format!(
            "Of the {what} there are {}{NB}g, and {}{NB}g would go: nothing is left to run off.",
            number(available.value()),
            number(taken.value())
        ),
        ExtractError::OutOfReach { target, nearest, unit, reason } => {
            let (target, nearest) = match *unit {
                "water activity" => (
                    format!("A water activity of {}", write_between(target.round_dp(3), 2, 3, mark)),
                    write_between(nearest.round_dp(3), 2, 3, mark),
                ),
                unit => (format!("{}{NB}{unit}", number(*target)), format!("{}{NB}{unit}", number(*nearest))),
            };
            let why = match reason {
                Reason::PlantWater => {
                    "the plant's own water dilutes it further than that. Use more liquid per gram of plant, or dry the plant first"
                }
                Reason::NothingStronger => "nothing here is strong enough",
                Reason::NothingWeaker => "nothing here is weak enough",
                Reason::NotEnough => "there is not enough of it",
            };
            format!("{target} cannot be reached: {why}. The nearest possible is {nearest}.")
        }
        ExtractError::GainedMass { before, now } => format!(
            "It weighs more now ({}{NB}g) than before ({}{NB}g). Water only leaves; weigh again, and take the jar's own mass off.",
            number(now.value()),
            number(before.value())
        ),
        ExtractError::ReadingOutside { reading, minimum, maximum } => format!(
            "No such liquid shows {}: this one could show {} to {}. Check the scale of the instrument and the temperature.",
            plain(*reading, mark),
            plain(*minimum, mark),
            plain(*maximum, mark)
        ),
        ExtractError::UnusableReadings { .. } => "Type what the refractometer or the hydrometer shows.".to_owned(),
    }
}

/// Why physics has no answer.
pub(crate) fn physics_error(error: &PhysicsError, mark: DecimalMark) -> String {
    match error {
        PhysicsError::OutOfRange { quantity, value, minimum, maximum, unit, .. } => format!(
            "No answer: what was published holds for a {quantity} from {} to {}{NB}{unit}, and here it is {}{NB}{unit}.",
            plain(*minimum, mark),
            plain(*maximum, mark),
            plain(*value, mark)
        ),
        PhysicsError::NoData { quantity, with } => {
            format!("No answer: no trustworthy figures are published for the {quantity} of a liquid with {with}.")
        }
    }
}

/// A part of a liquid.
pub(crate) const fn part(part: Part) -> &'static str {
    match part {
        Part::Glycerin => "Glycerin",
        Part::Water => "Water",
        Part::PropyleneGlycol => "Propylene glycol",
        Part::Propanediol => "Propanediol",
        Part::Ethanol => "Alcohol",
        Part::PlantSolids => "Plant solids, about",
    }
}

/// What a figure is called, what it rests on and where that was published.
pub(crate) fn figure(name: &str) -> (&'static str, &'static str, &'static str) {
    match name {
        "volume" => ("Volume", "Mass divided by density.", ""),
        "density" => (
            "Density",
            "Density of glycerin and water with their contraction on mixing; dissolved plant solids are added as sugar.",
            "Volk A and Kähler CJ, Experiments in Fluids 59:75 (2018); known to 0.1 %",
        ),
        "gravity" => (
            "Hydrometer",
            "What a hydrometer made for 20 °C shows: density over that of water, with the glass at this temperature.",
            "Water: Tanaka M et al., Metrologia 38:301 (2001)",
        ),
        "index" => (
            "Refractive index",
            "The index of glycerin in water, and of sugar for the plant solids, added by volume.",
            "Hoyt LF, Oil & Soap 10:43 (1933); known to 0.0005",
        ),
        "brix" => (
            "Refractometer",
            "The index on the Brix scale, which is made for sugar: 65 % glycerin shows about 50.",
            "ICUMSA SPS-3 as printed in OIV-MA-AS2-02",
        ),
        "brix-corrected" => (
            "Refractometer that corrects temperature",
            "The same with the correction for sugar that such an instrument adds.",
            "International Temperature Correction Table 1936",
        ),
        "viscosity" => (
            "Viscosity",
            "Of the glycerin and water alone; plant solids make it thicker.",
            "Cheng N-S, Industrial & Engineering Chemistry Research 47:3285 (2008); within 5 %",
        ),
        "freezing" => (
            "Begins to freeze at",
            "Of the glycerin and water alone; plant solids lower it a little.",
            "CRC Handbook; Lange's Handbook; Lane LB, Industrial & Engineering Chemistry 17:924 (1925)",
        ),
        _ => (
            "Water activity at 25 °C",
            "Glycerin, each other solvent and the plant solids as if alone in all the water, multiplied. The upper end counts no effect of plant solids at all, and what keeps is judged by it.",
            "Scott WJ, Advances in Food Research 7:83 (1957) and later measurements; Ross KD, Food Technology 29:26 (1975)",
        ),
    }
}

/// A range.
pub(crate) fn between(low: &str, high: &str) -> String {
    format!("{low} to {high}")
}

/// A plant to choose.
pub(crate) fn plant_choice(row: &PlantWater) -> String {
    let limit = if row.range_or_limit == "max" { ", by its limit" } else { "" };
    format!("{}, {}, {}{limit}", row.plant, row.part, row.state)
}

/// Where the water of the plant is known from.
pub(crate) fn plant_water(percent: &str, source: &str) -> String {
    format!("{percent}{NB}% of it is water ({source}).")
}

/// Water weighed by the maker.
pub(crate) fn plant_water_weighed(percent: &str) -> String {
    format!("By your weighing {percent}{NB}% of it is water.")
}

/// What limits a figure of the catalogue.
pub(crate) fn water_limit(range: &str, source: &str) -> String {
    match range {
        "" => source.to_owned(),
        "max" => format!("at most; {source}"),
        range => format!("{range} in the sources; {source}"),
    }
}

/// Where the water of a liquid comes from.
pub(crate) fn water_arithmetic(plant: &str, glycerin: &str, added: &str, evaporated: &str) -> String {
    format!(
        "Water: {plant} from the plant + {glycerin} with glycerin and solvent + {added} added \u{2212} {evaporated} evaporated"
    )
}

/// Where the glycerin of a liquid comes from.
pub(crate) fn glycerin_arithmetic(mass: &str, purity: &str, pure: &str) -> String {
    format!("Glycerin: {mass} \u{d7} {purity}{NB}% = {pure}")
}

/// What pressing leaves.
pub(crate) fn pressing(pressed: &str, held: &str) -> String {
    format!("Pressed off: {pressed}; {held} of the same liquid stay in the marc.")
}

/// How the solids are estimated.
pub(crate) const fn solids_arithmetic() -> &'static str {
    "Estimated: 20 to 70 % of the plant's dry matter dissolves, 40 % is counted (common practice). Nobody knows it for a given lot, so it is a range."
}

/// What was done to a liquid after pressing.
pub(crate) fn step_glycerin(mass: &str, purity: &str) -> String {
    format!("{mass} of glycerin {purity}{NB}% poured in")
}
/// The same with water.
pub(crate) fn step_water(mass: &str) -> String {
    format!("{mass} of water poured in")
}
/// The same with evaporation.
pub(crate) fn step_weighed(mass: &str) -> String {
    format!("weighed again after evaporation: {mass}")
}
/// The same with a measured strength.
pub(crate) fn step_measured(percent: &str) -> String {
    format!("measured: {percent}{NB}% glycerin")
}

/// Name of an extract nobody has named yet.
pub(crate) const fn name_of_new(kind: ExtractKind) -> &'static str {
    match kind {
        ExtractKind::Glycerite => "New glycerite",
        ExtractKind::Solution => "New stock solution",
        ExtractKind::Alcohol => "Alcohol, diluted",
    }
}

/// Name of a blend.
pub(crate) fn name_of_blend(name: &str) -> String {
    format!("{name}, blended")
}

/// What an extract is, in a few words.
pub(crate) fn about_glycerite(percent: &str, made_on: &str) -> String {
    match (percent.is_empty(), made_on.is_empty()) {
        (true, _) => "Not worked out yet".to_owned(),
        (false, true) => format!("{percent}{NB}% glycerin"),
        (false, false) => format!("{percent}{NB}% glycerin \u{b7} {made_on}"),
    }
}
/// The same of a stock solution.
pub(crate) fn about_solution(percent: &str, substance: &str) -> String {
    if substance.is_empty() { "Stock solution".to_owned() } else { format!("{percent}{NB}% {substance}") }
}
/// The same of an alcohol.
pub(crate) fn about_alcohol(percent: &str) -> String {
    format!("Alcohol {percent}{NB}% by volume")
}

/// An extract that was deleted.
pub(crate) fn deleted(name: &str) -> String {
    format!("“{name}” is deleted. A material made from it stays on the shelf.")
}

/// A plan that reaches what is wanted.
pub(crate) fn solved(plant: &str, glycerin: &str, water: &str, solvent: Option<&str>) -> String {
    match solvent {
        None => format!("{plant} plant, {glycerin} glycerin, {water} added water"),
        Some(solvent) => format!("{plant} plant, {glycerin} glycerin, {solvent} other solvent, {water} added water"),
    }
}
/// What that gives.
pub(crate) fn solved_gives(mass: &str, percent: &str) -> String {
    format!("Gives {mass} of liquid with {percent}{NB}% glycerin.")
}
/// Its button.
pub(crate) const fn use_amounts() -> &'static str {
    "Use these amounts"
}

/// What brings a liquid to a strength.
pub(crate) fn pour_in(what: &str, mass: &str, percent: &str, whole: &str) -> String {
    format!("Pour in {mass} of {what}: then it is {whole} with {percent}{NB}% glycerin.")
}
/// Glycerin of a purity.
pub(crate) fn glycerin_of(purity: &str) -> String {
    format!("glycerin {purity}{NB}%")
}
/// Nothing to pour in.
pub(crate) fn already(percent: &str) -> String {
    format!("It has {percent}{NB}% already.")
}
/// Its button.
pub(crate) const fn poured_in() -> &'static str {
    "I poured it in"
}

/// What evaporated.
pub(crate) fn evaporated(lost: &str, percent: &str) -> String {
    format!(
        "{lost} of water are gone; what is left has {percent}{NB}% glycerin. Pouring {lost} of water back restores it."
    )
}
/// Its button.
pub(crate) const fn note_evaporation() -> &'static str {
    "Reckon with it from now on"
}

/// What the instruments say.
pub(crate) fn verified(percent: &str, low: &str, high: &str) -> String {
    format!("{percent}{NB}% glycerin, between {low} and {high}{NB}%.")
}
/// How that compares with what was reckoned.
pub(crate) fn agrees_with_plan(percent: &str, inside: bool) -> String {
    if inside {
        format!("The {percent}{NB}% reckoned lie within that.")
    } else {
        format!(
            "The {percent}{NB}% reckoned lie outside that. The reading is the better witness: stir, read once more, then reckon with it."
        )
    }
}
/// What plant solids do to one reading.
pub(crate) fn solids_bias(low: &str, high: &str) -> String {
    format!(
        "Dissolved plant sugars raise both instruments: counted here are {low} to {high}{NB}% of them. A refractometer and a hydrometer together narrow the range."
    )
}
/// What two readings say of plant solids.
pub(crate) fn solids_found(low: &str, high: &str, agrees: bool) -> String {
    if agrees {
        format!("Both readings together leave {low} to {high}{NB}% of plant solids.")
    } else {
        format!(
            "Both readings together ask for {low} to {high}{NB}% of plant solids, which is not what was supposed. One of them may be wrong; the wider range is given."
        )
    }
}
/// Its button.
pub(crate) const fn use_measured() -> &'static str {
    "Reckon with the measured strength"
}

/// What goes into a blend.
pub(crate) fn blend_amount(mass: &str, name: &str) -> String {
    format!("{mass} of {name}")
}
/// What it gives.
pub(crate) fn blend_gives(mass: &str, percent: &str) -> String {
    format!("Together {mass} with {percent}{NB}% glycerin.")
}
/// Its button.
pub(crate) const fn make_blend() -> &'static str {
    "Note the blend as a new extract"
}

/// What the material on the shelf holds.
pub(crate) fn shelf_part(name: &str, percent: &str) -> String {
    format!("{name} {percent}{NB}%")
}
/// Its button.
pub(crate) const fn shelve(there: bool) -> &'static str {
    if there { "Bring the material up to date" } else { "Put it on the shelf of materials" }
}
/// What was shelved.
pub(crate) fn shelved(name: &str) -> String {
    format!("“{name}” is on the shelf of materials.")
}
/// Name of the material on the shelf.
pub(crate) fn name_on_shelf(name: &str, lot: &str) -> String {
    if lot.is_empty() { name.to_owned() } else { format!("{name}, lot {lot}") }
}
/// Note of the material on the shelf.
pub(crate) fn note_on_shelf(made_on: &str, use_by: &str, note: &str) -> String {
    let made = if made_on.is_empty() { String::new() } else { format!("Made on {made_on}. ") };
    let use_by = if use_by.is_empty() { String::new() } else { format!("{use_by} ") };
    format!("{made}{use_by}{note}").trim_end().to_owned()
}
/// The part of the material that the plant gave.
pub(crate) fn name_of_solids(plant: &str) -> String {
    if plant.is_empty() { "Plant solids".to_owned() } else { format!("Plant solids of {plant}") }
}

/// Puts the material into the open formula.
pub(crate) fn add_to(formula: &str, percent: &str) -> String {
    format!("Add {percent}{NB}% to “{formula}”")
}
/// It is in the formula now.
pub(crate) fn added_to(name: &str, formula: &str) -> String {
    format!("{name} is in “{formula}”.")
}
/// Why it cannot be put into a formula.
pub(crate) const fn no_formula() -> &'static str {
    "No formula is open. Open one on the shelf first."
}
/// It has to be a material first.
pub(crate) const fn not_on_shelf() -> &'static str {
    "Put it on the shelf of materials first; then a formula can use it."
}
/// There is no line that makes room.
pub(crate) fn formula_does_not_total(name: &str) -> String {
    format!("“{name}” would not make 100{NB}% with it. Give it a q.s. line first.")
}
/// What is compared.
pub(crate) fn compared(percent: &str, formula: &str) -> String {
    format!("“{formula}” with {percent}{NB}% of this, and with as much glycerin and water in its stead.")
}

/// The verdict.
pub(crate) const fn verdict(step: KeepStep) -> &'static str {
    match step {
        KeepStep::NothingMultiplies => {
            "Dry enough that nothing known multiplies in it. Cells and spores may survive in it all the same."
        }
        KeepStep::OsmophilicYeasts => "Only yeasts and moulds that love sugar and dryness multiply in it.",
        KeepStep::XerophilicMoulds => "Some moulds and yeasts multiply in it; no bacterium known does.",
        KeepStep::ToxinFormingMoulds => {
            "Moulds that form toxins can multiply in it. It does not keep by its glycerin alone."
        }
        KeepStep::MostMoulds => "Most moulds multiply in it, and Staphylococcus may. It does not keep by its glycerin.",
        KeepStep::ManyYeasts => "Moulds, many yeasts and Staphylococcus multiply in it. It does not keep.",
        KeepStep::ManyBacteria => "Many bacteria multiply in it. It spoils within days.",
        KeepStep::NearlyEverything => "Nearly everything multiplies in it. It spoils within days.",
    }
}

/// Steps of the scale, in a few words.
pub(crate) const fn keep_step(step: KeepStep) -> &'static str {
    match step {
        KeepStep::NothingMultiplies => "nothing known",
        KeepStep::OsmophilicYeasts => "yeasts that love sugar",
        KeepStep::XerophilicMoulds => "moulds that love dryness",
        KeepStep::ToxinFormingMoulds => "toxin-forming moulds",
        KeepStep::MostMoulds => "most moulds",
        KeepStep::ManyYeasts => "many yeasts",
        KeepStep::ManyBacteria => "many bacteria",
        KeepStep::NearlyEverything => "nearly everything",
    }
}
/// A mark of the scale.
pub(crate) fn mark(activity: &str, what: &str) -> String {
    format!("{activity} {what}")
}
/// Where this liquid stands.
pub(crate) fn here(activity: &str) -> String {
    format!("\u{2264}{NB}{activity}")
}
/// The scale in words.
pub(crate) fn scale(activity: &str, percent: &str, can: &str, criterion: bool) -> String {
    let iso = if criterion { "It meets" } else { "It does not meet" };
    format!(
        "Scale from water at the foot to pure glycerin at the top. This liquid stands where {percent}{NB}% glycerin would: its water activity is up to {activity}, at which there multiply: {can}. {iso} the criterion of ISO 29621, a water activity of at most 0.75."
    )
}

/// What ISO 29621 says of it.
pub(crate) fn low_risk(grounds: &[LowRisk], upper: &str) -> String {
    let ground = |ground: &LowRisk| match ground {
        LowRisk::WaterActivity => "its water activity is 0.75 or less",
        LowRisk::Alcohol => "it holds more than 20 % alcohol",
        LowRisk::Acid => "its pH is 3.0 or less",
        LowRisk::Alkaline => "its pH is 10.0 or more",
    };
    if grounds.is_empty() {
        return format!(
            "ISO 29621:2017 does not count it as of low microbiological risk: its water activity is up to {upper}, above 0.75."
        );
    }
    let grounds: Vec<&str> = grounds.iter().map(ground).collect();
    format!(
        "ISO 29621:2017 counts it as of low microbiological risk, because {}. That replaces neither clean work nor a test.",
        grounds.join(" and ")
    )
}
/// What a preservative has to work against.
pub(crate) const fn needs(spectrum: Spectrum, preserved: bool) -> &'static str {
    match (spectrum, preserved) {
        (Spectrum::Nothing, _) => {
            "As it stands nothing asks for a preservative. Diluted in a product it needs what the product needs."
        }
        (Spectrum::YeastsAndMoulds, false) => {
            "It needs a preservative against yeasts and moulds, such as potassium sorbate below pH 5.5, or more glycerin."
        }
        (Spectrum::BacteriaYeastsAndMoulds, false) => {
            "It needs a preservative against bacteria, yeasts and moulds within its pH and dose, or more glycerin. Without either: a few days, refrigerated."
        }
        (Spectrum::YeastsAndMoulds, true) => {
            "You say it is preserved: against yeasts and moulds, in its dose and pH, that is what it needs."
        }
        (Spectrum::BacteriaYeastsAndMoulds, true) => {
            "You say it is preserved: it has to work against bacteria, yeasts and moulds, in its dose and pH. Only a challenge test shows whether it does."
        }
    }
}
/// When to throw it away at the latest.
pub(crate) fn use_by(use_by: UseBy, made_on: Option<&str>, until: Option<&str>) -> String {
    let where_kept = if use_by.refrigerated { "refrigerated" } else { "cool and dark" };
    match (made_on, until) {
        (Some(_), Some(until)) => format!("Use by {until}, kept {where_kept}."),
        _ => format!("Use within {}{NB}days of making it, kept {where_kept}.", use_by.days),
    }
}
/// What that rests on.
pub(crate) const fn use_by_basis() -> &'static str {
    "The use-by is common practice on its short side, not a test. Throw it away at the first sign of gas, haze, slime, mould or an odd smell."
}
/// What is not known.
pub(crate) const fn ph_missing() -> &'static str {
    "Its pH is not measured: whether a preservative works in it cannot be said."
}
/// What is not known of a liquid that was only reckoned.
pub(crate) const fn not_measured() -> &'static str {
    "The strength is reckoned, not measured. Read a refractometer or a hydrometer before you rely on it."
}
/// What the minima rest on.
pub(crate) const fn minima_basis() -> &'static str {
    "Most minima were found in food with salt or sugar; in glycerin they can lie lower or higher. Condensation on lid and surface is water: stir, and keep the lid dry."
}
/// An organism and where its minimum was published.
pub(crate) fn organism(organism: &Organism, mark: DecimalMark) -> String {
    let kind = match organism.kind {
        Kind::Bacterium => "bacterium",
        Kind::Yeast => "yeast",
        Kind::Mould => "mould",
    };
    let minimum = fixed(organism.minimum, 3, mark);
    let minimum = minimum.strip_suffix('0').unwrap_or(&minimum);
    match organism.basis {
        Basis::Published => format!("{kind} \u{b7} from {minimum} \u{b7} {}", organism.source),
        Basis::Memory => {
            format!("{kind} \u{b7} from {minimum} \u{b7} {} (from memory, to be checked)", organism.source)
        }
    }
}

/// A stock solution to weigh.
pub(crate) fn weigh(mass: &str, name: &str) -> String {
    format!("{mass} {name}")
}
/// What of it goes into a batch.
pub(crate) fn portion(portion: &str, wanted: &str, batch: &str) -> String {
    format!("{portion} of it bring {wanted}{NB}% into a batch of {batch}.")
}
/// A preservative that is not chosen.
pub(crate) const fn no_preservative() -> &'static str {
    "A solution in water spoils within days. Say which preservative goes in and how much, or make it fresh."
}
/// Two strengths of alcohol.
pub(crate) fn alcohol(volume: &str, mass: &str, strength: &str) -> String {
    format!("{volume} ({mass}) of {strength}")
}
/// A strength by volume.
pub(crate) fn by_volume(percent: &str) -> String {
    format!("alcohol {percent}{NB}% by volume")
}
/// Water.
pub(crate) const fn water() -> &'static str {
    "water"
}
/// What they make.
pub(crate) fn alcohol_makes(volume: &str, contraction: &str) -> String {
    format!(
        "They make {volume} at 20{NB}°C: {contraction} less than both together, because alcohol and water contract. Weigh rather than measure."
    )
}
/// Caution for alcohol.
pub(crate) const fn alcohol_caution() -> &'static str {
    "Strong alcohol and its vapour burn: no flame, fresh air, closed vessel. Densities: OIML R 22 (1975)."
}

/// An extract that is full.
pub(crate) fn too_many_steps(most: usize) -> String {
    format!("An extract takes at most {most} steps. Take one out first, or begin another.")
}

/// Acts of the extract room, for the labels of undo.
pub(crate) fn act_name(act: &str) -> &'static str {
    match act {
        "extract.new" => "new extract",
        "extract.delete" => "extract deleted",
        "extract.example" => "example put back",
        "extract.step" => "change of an extract",
        "extract.solve" => "amounts of an extract",
        "extract.blend" => "blend",
        "extract.shelve" => "extract on the shelf",
        "extract.use" => "extract in a formula",
        _ => "extract",
    }
}
