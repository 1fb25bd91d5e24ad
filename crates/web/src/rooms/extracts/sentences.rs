//! Which message says what in the extract room.

use crate::messages::extracts as says;
use crate::messages::names::word;
use crate::messages::sentences::{key_of_word, list_and, with_unit};
use crate::rooms::extracts::brewing::{Day, Trouble};
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use stillroom_catalogue::reference::PlantWater;
use stillroom_core::chemistry::PhysicsError;
use stillroom_core::extract::keeping::{Basis, Kind, LowRisk, Organism, Spectrum, Step as KeepStep, UseBy};
use stillroom_core::extract::{ExtractError, Part, Reason};
use stillroom_core::number::{DecimalMark, write_between, write_fixed};
use stillroom_exchange::extract::ExtractKind;

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
        "made-on" => says::takes_day().to_owned(),
        "temperature" | "reading-temperature" | "calibrated" => says::takes_temperature().to_owned(),
        "jar-volume" | "finished-volume" | "alcohol-volume" => says::takes_volume().to_owned(),
        "wanted-activity" => says::takes_activity(&number(Decimal::new(75, 2))),
        "menstruum-per-plant" => says::takes_liquid_per_plant(&half),
        "optical-value" => says::takes_refractometer(&number(Decimal::new(14_295, 4))),
        "gravity-value" => says::takes_hydrometer(&write_fixed(Decimal::new(117, 2), 3, mark)),
        "optical-step" | "gravity-step" => says::takes_scale_step(&number(Decimal::new(2, 1))),
        "ph" => says::takes_ph(&number(Decimal::new(55, 1))),
        "plant-mass" | "glycerin" | "added-water" | "solvent-mass" | "evaporation" | "sample-fresh"
        | "sample-dried" | "mass-now" | "total" | "batch" => says::takes_mass(&half),
        field if field.starts_with("blend:") => says::takes_mass_or_all(&half),
        _ => says::takes_percent(&half),
    }
}

/// Acts of the extract room, for the labels of undo.
pub(crate) fn act_name(act: &str) -> &'static str {
    match act {
        "extract.new" => says::act_new(),
        "extract.delete" => says::act_delete(),
        "extract.example" => says::act_example(),
        "extract.step" => says::act_step(),
        "extract.solve" => says::act_solve(),
        "extract.blend" => says::act_blend(),
        "extract.shelve" => says::act_shelve(),
        "extract.use" => says::act_use(),
        _ => says::act_other(),
    }
}

/// A day in words.
pub(crate) fn day((year, month, day): Day) -> String {
    crate::messages::desk::day(&day.to_string(), usize::try_from(month).unwrap_or(1), &year.to_string())
}

// ---- why an extract comes to nothing yet ---------------------------------------------------------------------------

/// Why an extract comes to nothing yet.
pub(crate) fn trouble(trouble: &Trouble, mark: DecimalMark) -> String {
    match trouble {
        Trouble::NoPlantWater => says::no_plant_water().to_owned(),
        Trouble::NothingPlanned => says::nothing_planned().to_owned(),
        Trouble::NoMaterial => says::no_material().to_owned(),
        Trouble::ReadAsWater { planned } => {
            says::read_as_water(&write_between(planned.value().round_dp(1), 0, 1, mark))
        }
        Trouble::Extract(error) => extract_error(error, mark),
    }
}

/// Why the engine has no answer.
pub(crate) fn extract_error(error: &ExtractError, mark: DecimalMark) -> String {
    let number = |value: Decimal| write_between(value.round_dp(2), 0, 2, mark);
    match error {
        ExtractError::Arithmetic(error) if error.code() == "arithmetic.nothing-to-mix" => {
            says::nothing_to_mix().to_owned()
        }
        ExtractError::Quantity(_) | ExtractError::Arithmetic(_) => says::numbers_too_large().to_owned(),
        ExtractError::Physics(error) => physics_error(error, mark),
        ExtractError::NotAShare { quantity, value, minimum, maximum } => says::not_a_share(
            &says::quantity(&key_of_word(quantity), quantity),
            &number(*value),
            &number(*minimum),
            &number(*maximum),
        ),
        ExtractError::NothingLeft { what, taken, available } => says::nothing_left(
            &says::substance(&key_of_word(what), what),
            &number(available.value()),
            &number(taken.value()),
        ),
        ExtractError::OutOfReach { target, nearest, unit, reason } => {
            let reason = match reason {
                Reason::PlantWater => "plant-water",
                Reason::NothingStronger => "nothing-stronger",
                Reason::NothingWeaker => "nothing-weaker",
                Reason::NotEnough => "not-enough",
            };
            if *unit == "water activity" {
                let activity = |value: &Decimal| write_between(value.round_dp(3), 2, 3, mark);
                says::activity_out_of_reach(reason, &activity(target), &activity(nearest))
            } else {
                let with_unit = |value: &Decimal| with_unit(&number(*value), unit);
                says::out_of_reach(reason, &with_unit(target), &with_unit(nearest))
            }
        }
        ExtractError::GainedMass { before, now } => says::gained_mass(&number(now.value()), &number(before.value())),
        ExtractError::ReadingOutside { reading, minimum, maximum } => {
            says::reading_outside(&plain(*reading, mark), &plain(*minimum, mark), &plain(*maximum, mark))
        }
        ExtractError::UnusableReadings { .. } => says::unusable_readings().to_owned(),
    }
}

/// Why physics has no answer.
pub(crate) fn physics_error(error: &PhysicsError, mark: DecimalMark) -> String {
    match error {
        PhysicsError::OutOfRange { quantity, value, minimum, maximum, unit, .. } => {
            let with_unit = |value: f64| match *unit {
                "1" => plain(value, mark),
                "% v/v" => says::unit_percent_by_volume(&plain(value, mark)),
                unit => with_unit(&plain(value, mark), unit),
            };
            says::physics_out_of_range(
                &says::quantity(&key_of_word(quantity), quantity),
                &plain(*minimum, mark),
                &with_unit(*maximum),
                &with_unit(*value),
            )
        }
        PhysicsError::NoData { quantity, with } => says::physics_no_data(
            &says::quantity(&key_of_word(quantity), quantity),
            &says::substance(&key_of_word(with), with),
        ),
    }
}

// ---- plants --------------------------------------------------------------------------------------------------------

/// A plant to choose.
pub(crate) fn plant_choice(row: &PlantWater) -> String {
    let say = if row.range_or_limit == "max" { says::plant_choice_by_limit } else { says::plant_choice };
    say(word(row.plant), word(row.part), word(row.state))
}

/// How much water is in a plant of the catalogue, and where that is from.
pub(crate) fn plant_water(percent: &str, range_or_limit: &str, source: &str) -> String {
    match range_or_limit {
        "" => says::plant_water(percent, word(source)),
        "max" => says::plant_water_at_most(percent, word(source)),
        range => says::plant_water_in_range(percent, word(range), word(source)),
    }
}

// ---- what to expect of a liquid ------------------------------------------------------------------------------------

/// A part of a liquid.
pub(crate) fn part(part: Part) -> &'static str {
    match part {
        Part::Glycerin => says::part_glycerin(),
        Part::Water => says::part_water(),
        Part::PropyleneGlycol => says::part_propylene_glycol(),
        Part::Propanediol => says::part_propanediol(),
        Part::Ethanol => says::part_ethanol(),
        Part::PlantSolids => says::part_plant_solids(),
    }
}

/// What a figure is called, what it rests on and where that was published.
pub(crate) fn figure(name: &str) -> (&'static str, &'static str, &'static str) {
    match name {
        "volume" => (says::figure_volume(), says::figure_volume_how(), ""),
        "density" => (says::figure_density(), says::figure_density_how(), says::figure_density_source()),
        "gravity" => (says::figure_gravity(), says::figure_gravity_how(), says::figure_gravity_source()),
        "index" => (says::figure_index(), says::figure_index_how(), says::figure_index_source()),
        "brix" => (says::figure_brix(), says::figure_brix_how(), says::figure_brix_source()),
        "brix-corrected" => {
            (says::figure_brix_corrected(), says::figure_brix_corrected_how(), says::figure_brix_corrected_source())
        }
        "viscosity" => (says::figure_viscosity(), says::figure_viscosity_how(), says::figure_viscosity_source()),
        "freezing" => (says::figure_freezing(), says::figure_freezing_how(), says::figure_freezing_source()),
        _ => (says::figure_activity(), says::figure_activity_how(), says::figure_activity_source()),
    }
}

// ---- names and the list --------------------------------------------------------------------------------------------

/// Name of an extract nobody has named yet.
pub(crate) fn name_of_new(kind: ExtractKind) -> &'static str {
    match kind {
        ExtractKind::Glycerite => says::new_glycerite(),
        ExtractKind::Solution => says::new_solution(),
        ExtractKind::Alcohol => says::new_alcohol(),
    }
}

/// What an extract is, in a few words.
pub(crate) fn about_glycerite(percent: &str, made_on: &str) -> String {
    match (percent.is_empty(), made_on.is_empty()) {
        (true, _) => says::about_glycerite_unknown().to_owned(),
        (false, true) => says::about_glycerite(percent),
        (false, false) => says::about_glycerite_made(percent, made_on),
    }
}

/// The same of a stock solution.
pub(crate) fn about_solution(percent: &str, substance: &str) -> String {
    if substance.is_empty() {
        says::about_solution_unknown().to_owned()
    } else {
        says::about_solution(percent, substance)
    }
}

// ---- what can be done with it --------------------------------------------------------------------------------------

/// A plan that reaches what is wanted.
pub(crate) fn solved(plant: &str, glycerin: &str, water: &str, solvent: Option<&str>) -> String {
    match solvent {
        None => says::solved(plant, glycerin, water),
        Some(solvent) => says::solved_with_solvent(plant, glycerin, solvent, water),
    }
}

/// Name of the material on the shelf.
pub(crate) fn name_on_shelf(name: &str, lot: &str) -> String {
    if lot.is_empty() { name.to_owned() } else { says::name_on_shelf(name, lot) }
}

/// Note of the material on the shelf: when it was made, until when it should be used, and what the maker noted.
pub(crate) fn note_on_shelf(made_on: Option<Day>, use_by: String, note: &str) -> String {
    let made_on = made_on.map(|made_on| says::made_on(&day(made_on))).unwrap_or_default();
    let sentences = [made_on, use_by, note.to_owned()].into_iter().filter(|sentence| !sentence.is_empty());
    sentences.collect::<Vec<_>>().join(" ")
}

/// The part of the material that the plant gave.
pub(crate) fn name_of_solids(plant: &str) -> String {
    if plant.is_empty() { says::plant_solids().to_owned() } else { says::plant_solids_of(plant) }
}

// ---- whether it keeps ----------------------------------------------------------------------------------------------

/// The verdict.
pub(crate) fn verdict(step: KeepStep) -> &'static str {
    match step {
        KeepStep::NothingMultiplies => says::verdict_nothing_multiplies(),
        KeepStep::OsmophilicYeasts => says::verdict_osmophilic_yeasts(),
        KeepStep::XerophilicMoulds => says::verdict_xerophilic_moulds(),
        KeepStep::ToxinFormingMoulds => says::verdict_toxin_forming_moulds(),
        KeepStep::MostMoulds => says::verdict_most_moulds(),
        KeepStep::ManyYeasts => says::verdict_many_yeasts(),
        KeepStep::ManyBacteria => says::verdict_many_bacteria(),
        KeepStep::NearlyEverything => says::verdict_nearly_everything(),
    }
}

/// Steps of the scale, in a few words.
pub(crate) fn keep_step(step: KeepStep) -> &'static str {
    match step {
        KeepStep::NothingMultiplies => says::keep_nothing_multiplies(),
        KeepStep::OsmophilicYeasts => says::keep_osmophilic_yeasts(),
        KeepStep::XerophilicMoulds => says::keep_xerophilic_moulds(),
        KeepStep::ToxinFormingMoulds => says::keep_toxin_forming_moulds(),
        KeepStep::MostMoulds => says::keep_most_moulds(),
        KeepStep::ManyYeasts => says::keep_many_yeasts(),
        KeepStep::ManyBacteria => says::keep_many_bacteria(),
        KeepStep::NearlyEverything => says::keep_nearly_everything(),
    }
}

/// The scale in words.
pub(crate) fn scale(activity: &str, percent: &str, can: &str, criterion: bool) -> String {
    says::scale_description(if criterion { "met" } else { "missed" }, percent, activity, can)
}

/// What ISO 29621 says of it.
pub(crate) fn low_risk(grounds: &[LowRisk], upper: &str) -> String {
    let ground = |ground: &LowRisk| match ground {
        LowRisk::WaterActivity => says::ground_water_activity(),
        LowRisk::Alcohol => says::ground_alcohol(),
        LowRisk::Acid => says::ground_acid(),
        LowRisk::Alkaline => says::ground_alkaline(),
    };
    if grounds.is_empty() {
        return says::not_low_risk(upper);
    }
    let grounds: Vec<&str> = grounds.iter().map(ground).collect();
    says::low_risk(&list_and(&grounds))
}

/// What a preservative has to work against.
pub(crate) fn needs(spectrum: Spectrum, preserved: bool) -> &'static str {
    match (spectrum, preserved) {
        (Spectrum::Nothing, _) => says::needs_nothing(),
        (Spectrum::FewAndSlow, _) => says::needs_few_and_slow(),
        (Spectrum::YeastsAndMoulds, false) => says::needs_against_yeasts_and_moulds(),
        (Spectrum::BacteriaYeastsAndMoulds, false) => says::needs_against_all(),
        (Spectrum::YeastsAndMoulds, true) => says::preserved_against_yeasts_and_moulds(),
        (Spectrum::BacteriaYeastsAndMoulds, true) => says::preserved_against_all(),
    }
}

/// When to throw it away at the latest.
pub(crate) fn use_by(use_by: UseBy, until: Option<&str>) -> String {
    let place = if use_by.refrigerated { "refrigerated" } else { "cool" };
    match until {
        Some(until) => says::use_by_day(place, until),
        None => says::use_within_days(place, &use_by.days.to_string()),
    }
}

/// What an organism is called.
pub(crate) fn organism_name(organism: &Organism) -> String {
    says::organism_name(&key_of_word(organism.name), organism.name)
}

/// What an organism is, and where its minimum was published.
pub(crate) fn organism(organism: &Organism, mark: DecimalMark) -> String {
    let kind = match organism.kind {
        Kind::Bacterium => "bacterium",
        Kind::Yeast => "yeast",
        Kind::Mould => "mould",
    };
    let minimum = fixed(organism.minimum, 3, mark);
    let minimum = minimum.strip_suffix('0').unwrap_or(&minimum);
    let source = says::organism_source(&key_of_word(organism.source), organism.source);
    match organism.basis {
        Basis::Published => says::organism_published(kind, minimum, &source),
        Basis::Memory => says::organism_from_memory(kind, minimum, &source),
    }
}
