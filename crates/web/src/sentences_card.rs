//! What stands on the cards of a run, in English: one thing to do, and why.

/// A space that does not break.
const NB: char = '\u{a0}';

/// Names of what a maker fills in, by their key in the record. They follow what guidance on good manufacturing practice
/// for cosmetics (ISO 22716) asks a batch record to hold.
pub(crate) const RECORD_FIELDS: [(&str, &str); 17] = [
    ("weighed-by", "Weighed by"),
    ("checked-by", "Checked by"),
    ("line-clearance", "Bench clear of other batches"),
    ("cleaning", "Cleaned and sanitised: who, when, with what"),
    ("equipment", "Equipment: pots, mixer, thermometer, pH meter"),
    ("balance", "Scale and when it was last checked"),
    ("water", "Water: source, purified, boiled"),
    ("look", "Look, colour, smell"),
    ("viscosity", "Viscosity, in your words or by an instrument"),
    ("ph-method", "How the pH was measured, what it was adjusted with"),
    ("packaging", "Lots of containers, closures and labels"),
    ("net-content", "Net content checked: units weighed"),
    ("loss", "Why more than 5 % is missing"),
    ("retained", "Where the retained sample is kept"),
    ("durability", "Months it keeps by your stability test, if there is one"),
    ("released", "Released, rejected or to be reworked"),
    ("released-by", "Released by, on"),
];

pub(crate) const NEXT_BACK: &str = "Back to what comes next";
pub(crate) const NEXT_CHOOSE: &str = "Choose one of these";
pub(crate) const NEXT_BEGIN: &str = "Begin";
pub(crate) const NEXT_DONE: &str = "Done";
pub(crate) const NEXT_SKIP: &str = "Go on without";
pub(crate) const NEXT_FINISH: &str = "Finish and draw down the stock";
pub(crate) const NEXT_NOTE: &str = "Note it";

pub(crate) const PREPARE: &str = "Ready the bench";
pub(crate) const PREPARE_ABOUT: [&str; 2] = [
    "Clear the bench, clean the pots and tools, wash your hands, tie back your hair.",
    "Lay out the materials and read each label.",
];
pub(crate) const CAUSTICS: &str = "Goggles and gloves for acids above 10 %, for caustics and for fine powders. Caustics go into water, never water onto them.";
pub(crate) const LOT: &str = "Batch number";
pub(crate) const ROOM: &str = "Room";

pub(crate) fn weigh_first(phase: &str) -> String {
    format!("Weigh first: {phase}")
}

pub(crate) const BEAKER: &str = "Weigh the empty beaker";
pub(crate) const BEAKER_ABOUT: &str =
    "Its weight tells later how much water has evaporated. Write it on tape on the beaker, too.";
pub(crate) const BEAKER_FIELD: &str = "Empty beaker";

pub(crate) const POUR_FIELD: &str = "What the scale shows";
pub(crate) const READS_LINE: &str = "The scale was set to zero for this line";
pub(crate) const READS_BEAKER: &str = "The scale shows all that is in the beaker";
pub(crate) const LEAVE_OUT: &str = "Leave it out";

pub(crate) fn next_pour(mass: &str) -> String {
    format!("{mass} is in")
}

pub(crate) fn already_in(mass: &str) -> String {
    format!("{mass} is in.")
}

pub(crate) const LEFT_OUT: &str = "It was left out.";

pub(crate) fn heat_to(degrees: &str) -> String {
    format!("Heat it to {degrees}")
}

pub(crate) const HEAT: &str = "Heat it";
pub(crate) const HEAT_ABOUT: &str = "In a water bath, covered, stirred now and then: less evaporates.";
pub(crate) const THERMOMETER: &str = "Thermometer";
pub(crate) const HOLD: &str =
    "Hold it there for 20 minutes: common practice, to hydrate gums and to begin with few germs. No proof of anything.";
pub(crate) const HEAT_OVER: &str = "The time is up.";

pub(crate) const REPLACE: &str = "Weigh the beaker again";
pub(crate) const COLD_FIELD: &str = "Before heating, with its beaker";
pub(crate) const HOT_FIELD: &str = "Now, with its beaker";
pub(crate) const EVAPORATED: &str = "Evaporated";
pub(crate) const EVAPORATED_HOW: &str = "before − now";
pub(crate) const TRADE: &str = "common practice";
pub(crate) const BY_WEIGHT: &str = "conservation of mass";

pub(crate) fn put_back(mass: &str) -> String {
    format!("Put {mass} of water back, hot")
}

pub(crate) fn water_is_in(mass: &str) -> String {
    format!("{mass} of water is in")
}

pub(crate) fn forecast(loss: &str, percent: &str) -> String {
    format!(
        "If it is not weighed: an open beaker may lose some {percent}{NB}% of its water, {loss}. Then the finished product would hold:"
    )
}

pub(crate) fn from_to(from: &str, to: &str) -> String {
    format!("{from} → {to}{NB}%")
}

pub(crate) const FORECAST_HOW: &str = "percent × batch ÷ (batch − loss); nothing but water goes";
pub(crate) const ALCOHOL: &str =
    "There is alcohol in it: that evaporates faster than water, so the loss is not water alone. Keep it covered.";

pub(crate) const COMBINE: &str = "Bring the phases together";
pub(crate) const COMBINE_COLD: &str = "Stir the phases together";
pub(crate) const TOGETHER: &str = "Temperature together";
pub(crate) const TOGETHER_SOURCE: &str =
    "conservation of energy; no heat lost to beaker or room, no heat given off by what sets";

pub(crate) fn mixing_how(lines: &str) -> String {
    format!("Σ m·c·T ÷ Σ m·c over {lines}")
}

/// What the temperature of a mixture comes to if all that can set in it, or melt, has done so.
pub(crate) fn if_it_sets(degrees: &str) -> String {
    format!("{degrees} if all that can set or melt has")
}

pub(crate) fn heat_of_line(name: &str, heat: &str, basis: &str) -> String {
    format!("{name} {heat}{NB}kJ/(kg K), {basis}")
}

pub(crate) const ASSUMED: &str = "No thermometer was read: the temperatures of the formula are taken.";

pub(crate) const BLEND: &str = "Blend";
pub(crate) const STIR: &str = "Stir until it is even";
pub(crate) const BLEND_ABOUT: &str = "It stops half-way: scrape the walls, then go on.";
pub(crate) const MINUTES: &str = "Minutes";
pub(crate) const SCRAPE: &str = "Stop. Scrape the walls, then go on.";
pub(crate) const BLEND_OVER: &str = "Blended.";
pub(crate) const TIMER_GO: &str = "Start the timer";

pub(crate) fn cool_to(degrees: &str) -> String {
    format!("Stir while it cools to {degrees}")
}

pub(crate) const BATCH_FIELD: &str = "Batch";
pub(crate) const COOL_ENOUGH: &str = "Cool enough at";
pub(crate) const COOL_SOURCE: &str = "Newton's law of cooling, least squares; 95 % band from a thermometer good to 0.5 K; a stirred batch in a still room";

pub(crate) fn cooling_how(room: &str, half: &str) -> String {
    format!("Fitted to your readings in a room of {room}: every {half} min it loses half of what it is warmer.")
}

pub(crate) const COOL_NOW: &str = "It is cool enough now.";
pub(crate) fn cooling_curve(readings: usize, wanted: &str) -> String {
    format!("Cooling curve through {readings} readings, down to {wanted}")
}
pub(crate) const ROOM_ASSUMED: &str = "The room is taken as 21 °C. Type what it is.";

pub(crate) const TEMPER: &str = "Temper the cool-down dish";
pub(crate) const TEMPER_FIELD: &str = "Stirred into the dish";

pub(crate) fn temper_about(mass: &str, wanted: &str) -> String {
    format!(
        "Stir {mass} of the batch into the dish, a spoon at a time: it comes to {wanted}. Then it goes in without lumps, \
         and nothing in it is scorched."
    )
}

pub(crate) const TEMPER_UNKNOWN: &str =
    "Stir a few spoons of the batch into the dish first, about as much as is in it.";
pub(crate) const TEMPER_LABEL: &str = "To take out";
pub(crate) const TEMPER_HOW: &str = "m_dish·c_dish·(T − T_dish) ÷ (c_batch·(T_batch − T)), half-way between the two";

pub(crate) const ADD: &str = "Add it to the batch";

pub(crate) fn too_warm(batch: &str, bears: &str, name: &str) -> String {
    format!("The batch is at {batch}, and {name} bears {bears} at most. Wait.")
}

pub(crate) const TOP_UP: &str = "Weigh the batch";
pub(crate) const GROSS_FIELD: &str = "Batch with its beaker";
pub(crate) const EMPTY_FIELD: &str = "That beaker empty";
pub(crate) const MISSING: &str = "Missing";
pub(crate) const MISSING_HOW: &str = "all that was weighed in − what is there";
pub(crate) const MISSING_ABOUT: &str = "What stuck to other beakers and tools is missing too. Scrape them out first: only what evaporated is to be replaced by water.";
pub(crate) const HEAVIER_ABOUT: &str =
    "It weighs more than was weighed in: water that was put back has not evaporated. There is nothing to add.";

pub(crate) const PH: &str = "Measure the pH";
pub(crate) const PH_FIELD: &str = "pH";

pub(crate) fn ph_wanted(ph: &str) -> String {
    format!("The formula aims at {ph}.")
}

pub(crate) const PH_ABOUT: &str =
    "In the cooled batch, with a meter set today. Adjust a drop at a time, stir, and measure again.";

pub(crate) const FILL: &str = "Fill";
pub(crate) const COUNT_FIELD: &str = "Containers";
pub(crate) const EACH_FIELD: &str = "In each";

pub(crate) fn fill_plan(full: u32, each: &str, left: &str) -> String {
    format!("{full} full at {each}, and {left} are left.")
}

pub(crate) fn fill_alike(count: u32, each: &str) -> String {
    format!("Or all {count} alike: {each} in each.")
}

pub(crate) fn filled(count: u32, each: &str) -> String {
    format!("{count} × {each}")
}

pub(crate) const FILL_DENSITY: &str = "By the density estimated from the materials.";
pub(crate) const FILL_DENSITY_MEASURED: &str = "By the density you measured.";
pub(crate) const FILL_NO_DENSITY: &str =
    "No density is known: what a container takes cannot be worked out. Fill one and weigh it.";

pub(crate) const FINISH: &str = "Look at it and sign";
pub(crate) const YIELD: &str = "Yield";
pub(crate) const YIELD_HOW: &str = "filled ÷ weighed in";

pub(crate) fn yield_value(percent: &str, filled: &str, of: &str) -> String {
    format!("{percent}{NB}%, {filled} of {of}")
}

pub(crate) const EXPLAIN_LOSS: &str = "More than 5 % is missing: write down why.";

pub(crate) const CAUTIONS: [&str; 3] = [
    "Patch test for 24 to 48 hours first; stop on redness, itching or swelling. Keep away from eyes and children.",
    "This record is no safety assessment. A product for others needs a challenge test by a laboratory and the assessment \
     the law asks for; local rules decide.",
    "No medical claims.",
];

pub(crate) fn will_draw(items: &str) -> String {
    format!("From your stock: {items}.")
}
