//! Every sentence about findings, in English: what was found, what it means, how it was worked out, what would cure it.
//!
//! A sentence is a whole with names for its numbers; another language is another file like this one. Of several sentences
//! for one code the first counts whose numbers are all there.

use crate::sentences_findings_words::WORDS;
use crate::view_findings::MarkView;
use stillroom_core::checks::{Axis, Value, Values};
use stillroom_core::source::{Basis, Citation};

/// What stands for a number in a sentence.
pub(crate) enum Words {
    /// One text.
    One(String),
    /// A list.
    Several(Vec<String>),
}

/// Fills the sentence of a code with its numbers.
pub(crate) fn say(code: &str, values: &Values, write: &dyn Fn(&Value) -> Words) -> String {
    let sentences = SENTENCES.iter().filter(|(of, _)| *of == code).map(|(_, sentence)| *sentence);
    sentences.into_iter().find_map(|sentence| fill(sentence, values, write)).unwrap_or_else(|| code.to_owned())
}

/// Whether every number of a sentence is there, and the sentence with them. An empty list is not there.
fn fill(sentence: &str, values: &Values, write: &dyn Fn(&Value) -> Words) -> Option<String> {
    let mut filled = String::with_capacity(sentence.len() * 2);
    let mut rest = sentence;
    while let Some((before, after)) = rest.split_once('{') {
        let (name, after) = after.split_once('}')?;
        let (_, value) = values.iter().find(|(each, _)| *each == name)?;
        filled.push_str(before);
        match write(value) {
            Words::One(text) => filled.push_str(&text),
            Words::Several(texts) if texts.is_empty() => return None,
            Words::Several(texts) => filled.push_str(&list(&texts)),
        }
        rest = after;
    }
    filled.push_str(rest);
    Some(filled)
}

/// A list as it is spoken.
fn list(texts: &[String]) -> String {
    match texts {
        [] => String::new(),
        [only] => only.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// Sentences of findings, of lines of arithmetic, of cures and of marks in pictures, by their codes.
const SENTENCES: &[(&str, &str)] = &[
    // Solubility
    (
        "solubility.over-cap",
        "{substance}: {present} is in; about {about} ({least} to {most}) dissolves at {temperature}. The rest {comes-out}.",
    ),
    (
        "solubility.over-cap",
        "{substance}: {present} is in, but only {cap} dissolves at {temperature} ({grams} in this batch). The rest {comes-out}.",
    ),
    (
        "solubility.over-cap",
        "{substance}: {present} is in, but only {cap} dissolves at {temperature}. The rest {comes-out}.",
    ),
    (
        "solubility.over-cap-cold",
        "{substance}: in the cold ({temperature}) about {about} ({least} to {most}) of its {present} stays dissolved. Crystals may begin at {begins}.",
    ),
    (
        "solubility.over-cap-cold",
        "{substance}: in the cold ({temperature}) about {about} ({least} to {most}) of its {present} stays dissolved. The rest {comes-out}.",
    ),
    (
        "solubility.over-cap-cold",
        "{substance}: in the cold ({temperature}) only {cap} of its {present} stays dissolved. Crystals begin at about {begins}.",
    ),
    (
        "solubility.over-cap-cold",
        "{substance}: in the cold ({temperature}) only {cap} of its {present} stays dissolved. The rest {comes-out}.",
    ),
    (
        "solubility.oil-over-cap",
        "{substance}: {present} is in, but the oil here ({oil}) dissolves only {cap} at {temperature}.",
    ),
    (
        "solubility.first-to-crystallise",
        "On cooling, {substance} comes out first, at about {temperature}; {second} follows at about {then}.",
    ),
    (
        "solubility.no-data",
        "No figure says how much of this dissolves here at {temperature}: {substances}. Not checked.",
    ),
    ("work.in-water", "Water dissolves {solubility} of {substance} in 100 g at {temperature}."),
    (
        "work.cosolvent",
        "Other solvents make {share} of the solvent by volume: it dissolves {times} times as much as water does (log-linear rule; an estimate, often off by a factor of two).",
    ),
    (
        "work.acid",
        "At pH {ph}, {share} of {substance} is undissociated (pKa {pka}); {times} times as much dissolves in all.",
    ),
    (
        "work.cap",
        "{solvent} of the formula is water and solvents: {solubility} in 100 g of it makes {cap} of the formula.",
    ),
    ("work.oil", "{oil} of the formula is oil: {solubility} in 100 g of it makes {cap} of the formula."),
    // Preservation
    ("preservation.missing", "Not preserved: at pH {ph} ({known}) too little of {weak} acts."),
    ("preservation.missing", "Not preserved: too little of {weak} acts in the water."),
    ("preservation.missing", "Not preserved: {water} of this is water, and nothing in it keeps microbes from growing."),
    ("preservation.not-needed", "No preservative is needed as it stands: {why}. Water that gets in later undoes that."),
    (
        "preservation.over-limit",
        "{subject}: as a preservative at most {limit} ({jurisdiction}, entry {entry}); for another purpose up to {otherwise}. Here it is {present}.",
    ),
    (
        "preservation.over-limit",
        "{subject}: {present} is in; the law allows {limit} in products that are {use} ({jurisdiction}, entry {entry}, as of {as_of}).",
    ),
    (
        "preservation.over-usual",
        "{substance}: {present} is more than is usual ({low} to {high}). It irritates sooner and rarely preserves better.",
    ),
    ("preservation.under-usual", "{substance}: {present} is less than is known to work ({low} to {high})."),
    ("preservation.gap", "{how} {microbes} at pH {ph} ({known}). A challenge test decides."),
    ("preservation.gap", "{how} {microbes}. A challenge test decides."),
    (
        "preservation.undissociated",
        "{substance}: at pH {ph} ({known}) only {share} of it works. That is {reached} of what is needed.",
    ),
    (
        "preservation.oil-loss",
        "{substance}: oil and emulsifier take it up. {left} is left in the water, {part} of what would be there without them: too little by itself.",
    ),
    ("preservation.ph-outside", "{substance} works between pH {low} and {high}; this is pH {ph}."),
    (
        "preservation.ph-unknown",
        "State the pH: whether {substances} acts depends on it. Below pH {high} it can be counted on.",
    ),
    ("preservation.incompatible", "{substance} with {partners}: {what}"),
    ("preservation.too-hot", "{substance} goes into a phase of {heat}, but bears no more than {most}."),
    (
        "preservation.releases-formaldehyde",
        "{substance} works by releasing formaldehyde. People who are sensitised react to it, and above a threshold the label has to say so.",
    ),
    ("preservation.no-data", "Nothing is known of how these preserve: {substances}. Not counted."),
    (
        "work.water-activity",
        "{water} water with what binds it: water activity of at most {activity}; microbes grow down to about 0.75.",
    ),
    ("work.not-carrying", "In it, but not enough by themselves or too little to count: {substances}."),
    ("work.as-expressed", "{substance}: {present} × {factor} = {product} as the law expresses it."),
    ("work.conditions", "Conditions of the entry: {conditions}."),
    (
        "work.spectrum",
        "{substance}, share of what is enough: Gram-positive bacteria {positive}, Gram-negative bacteria {negative}, yeasts {yeast}, moulds {mould}.",
    ),
    ("work.undissociated", "{substance}: 1 / (1 + 10^({ph} − {pka})) = {share} undissociated."),
    (
        "work.acts",
        "{substance}: {present}, {share} of it undissociated; oil {ratio} times the water at a partition of {coefficient}; micelles hold it back {held} times: {acts} acts in the water.",
    ),
    (
        "work.bean",
        "{present}, {share} of it undissociated; oil {ratio} times the water at a partition of {coefficient}; micelles hold it back {held} times: {left} is left in the water.",
    ),
    // Emulsion
    ("emulsion.no-emulsifier", "{oil} of oil and {water} of water part: nothing keeps them together.{what}"),
    (
        "emulsion.hlb-off",
        "The oil asks for an HLB of about {required} ({kind}); the emulsifiers supply {supplied}: {direction}.",
    ),
    ("emulsion.emulsifier-short", "{emulsifier} of emulsifier holds about {holds} of oil; there is {oil}."),
    (
        "emulsion.close-packing",
        "The inner drops ({kind}) fill {inner} of the volume. At {random} they touch, at {close} they cannot lie closer.",
    ),
    ("emulsion.melting", "{substance} melts at up to {melting}, but {phase} is brought to {heat} only ({stated})."),
    (
        "emulsion.unmelted",
        "{substance} melts at up to {melting}, but stands in a phase of about {temperature}. It stays a lump.",
    ),
    (
        "emulsion.heat-sensitive",
        "{substance} goes into a phase of {heat}; heat spoils it above about {most} ({basis}).",
    ),
    (
        "emulsion.salt-thickener",
        "{salt} of salts ({salts}) beside {thickeners}: {noticed} is noticed, {thins} thins the gel markedly.",
    ),
    (
        "emulsion.disperse-first",
        "{substance} clumps where it meets water dry. Wet {percent} of it with about {liquid} of glycerin or oil first.",
    ),
    ("emulsion.hlb-no-data", "No HLB is stated for {share} of what counts ({what}): {substances}. Not checked."),
    (
        "emulsion.hlb-silent",
        "The HLB says nothing here: held by {works_by} ({substances}). The usual amount of their maker decides.",
    ),
    ("work.hlb-of-oil", "Oil: {percent} {substance}, asks for {hlb}."),
    ("work.hlb-of-emulsifier", "Emulsifier: {percent} {substance}, HLB {hlb}."),
    ("work.hlb-required", "Mean of the oils weighted by mass: {required} ({known} of the oil states a figure)."),
    ("work.hlb-supplied", "Mean of the emulsifiers weighted by mass: {supplied}."),
    ("work.holds-oil", "{percent} {substance} ({works_by}) × {per_gram} g of oil for a gram = {holds} of oil."),
    (
        "work.volumes",
        "By volume, oil is {ratio} times the water with what mixes with it: {oil} of both; the inner drops are {inner}.",
    ),
    // Limits
    ("limits.over-legal", "{subject}: from {from} {jurisdiction} {authority} at most {limit}. Here it is {present}."),
    (
        "limits.over-legal",
        "{subject}: not for this kind of product ({jurisdiction} {authority} none, as of {as_of}).{banned}",
    ),
    (
        "limits.over-legal",
        "{subject}: up to {most}, if the oils hold the most they can; {jurisdiction} {authority} at most {limit} in products that are {use} (as of {as_of}).",
    ),
    (
        "limits.over-legal",
        "{subject}: {present} is in; {jurisdiction} {authority} at most {limit} in products that are {use} (entry {entry}, as of {as_of}).",
    ),
    (
        "limits.over-legal",
        "{subject}: {present} is in; {jurisdiction} {authority} at most {limit} in products that are {use} (as of {as_of}).",
    ),
    (
        "limits.retinoid",
        "Vitamin A: {present} counted as retinol is in; the law allows {limit} in this product ({jurisdiction}, entry {entry}, as of {as_of}).",
    ),
    (
        "limits.retinoid-kind",
        "Vitamin A: {present} counted as retinol. Body lotion may have {limit}, other products {other_limit}. Say what kind it is.",
    ),
    (
        "limits.aha",
        "Fruit acids: {present} counted as acid is more than the {limit} that is advised at pH {least_ph} or higher ({jurisdiction}, as of {as_of}).",
    ),
    (
        "limits.aha",
        "Fruit acids: {present} counted as acid is more than the {limit} that is advised ({jurisdiction}, as of {as_of}).",
    ),
    (
        "limits.aha-ph",
        "Fruit acids at pH {ph}: advised is pH {least_ph} or higher ({jurisdiction}, as of {as_of}). The lower, the more it stings and peels.",
    ),
    (
        "limits.aha-no-ph",
        "Fruit acids: {present} counted as acid, and no pH is stated. Advised is pH {least_ph} or higher ({jurisdiction}, as of {as_of}).",
    ),
    (
        "limits.phototoxic",
        "Pressed citrus oils in what stays on the skin ({substances}): {state}. In sunlight they burn.",
    ),
    (
        "limits.caustic",
        "A caustic is weighed: {substances}. Goggles and gloves; it goes into the water, never the water onto it; children and pets out of the room.",
    ),
    (
        "limits.surfactant-active",
        "{total} of cleansing surfactant as active matter ({substances}): more than {limit} is unusual in products that are {use}.",
    ),
    ("limits.over-usual", "{substance}: {present} is more than is usual ({low} to {high})."),
    ("limits.under-usual", "{substance}: {present} is less than is usual ({low} to {high})."),
    (
        "limits.humectants",
        "{total} of humectants in all ({substances}): above {limit} a product that stays on feels sticky.",
    ),
    (
        "limits.allergens",
        "Above {threshold} the label names fragrance allergens ({jurisdiction}). To be named: {named}. Perhaps, unless the papers of the lot say otherwise: {perhaps}.",
    ),
    (
        "limits.allergens",
        "Above {threshold} the label names fragrance allergens ({jurisdiction}). To be named: {named}.",
    ),
    (
        "limits.allergens",
        "Above {threshold} the label names fragrance allergens ({jurisdiction}). Perhaps, unless the papers of the lot say otherwise: {perhaps}.",
    ),
    (
        "limits.allergens-unknown",
        "Which allergens these hold is not known here: {substances}. The supplier's allergen sheet says which the label has to name.",
    ),
    ("limits.sun", "Makes skin more sensitive to the sun: {substances}. Say on the label to wear sun protection."),
    (
        "limits.pregnancy",
        "Vitamin A: {substances}. It adds to what is taken in with food; who is pregnant or nursing leaves it out.",
    ),
    (
        "limits.children",
        "Kept from children under three: {substances}. Say so on the label, and ask a doctor in doubt.",
    ),
    ("limits.eyes", "Keep away from the eyes: {substances}."),
    (
        "work.inside-oil",
        "{present} {substance} holds {inside}: typically {typical}, at most {most}; that is {product} of the product, at most {product_most}.",
    ),
    ("work.share-of-bound", "{substance}: {present} of {limit} advised = {share} of its bound."),
    (
        "work.allergen",
        "{allergen}: typically {typical}, at most {most}; to be named above {threshold} (entry {entry}).",
    ),
    // Cures
    ("cure.lower", "Lower {material} to {to}"),
    ("cure.lower-all", "Lower {lines}"),
    ("cure.raise", "Raise {material} to {to}"),
    ("cure.remove", "Take out {material}"),
    ("cure.remove-lines", "Take out the {count} lines that bring it"),
    ("cure.add", "Add {to} {substance}"),
    ("cure.add-several", "Add {substances} in their usual amounts"),
    ("cure.put-in-place", "Put {to} {substance} in place of {material}"),
    ("cure.replace", "Put {substances} in place of {material}"),
    ("cure.set-ph", "Aim at pH {ph}, then measure it"),
    ("cure.set-ph-and-add", "Aim at pH {ph} and add {substances}"),
    ("cure.move-to-cool-down", "Move {material} to the cool-down phase"),
    ("cure.move-to-oil", "Move {material} to the heated oil phase"),
    ("cure.move-to-water", "Move {material} to the heated water phase"),
    ("cure.move-to-room", "Move {material} to a phase at room temperature"),
    ("cure.set-phase-temperature", "Bring {phase} to {temperature}"),
    ("cure.blend", "{first}: {first_percent}; {second}: {second_percent}"),
    ("cure.blend-with", "{material}: {to}, with {added} {substance} beside it"),
    ("cure.suspend", "{substance} is meant to stay solid"),
    // Pictures
    ("mark.this-formula", "this formula, {value}"),
    ("mark.room", "room, {value}"),
    ("mark.cold", "cold, {value}"),
    ("mark.hlb-required", "asked for, {value}"),
    ("mark.hlb-supplied", "supplied, {value}"),
    ("mark.emulsifier", "{value}"),
    // Beside the families
    (
        "preservation.slow",
        "Keeps, but not for ever: a few yeasts and moulds grow in it slowly (water activity {activity}). Work clean and use it within months.",
    ),
    (
        "work.oil-by-partition",
        "{oil} of the formula is oil; it takes up {coefficient} times as much as water: about {cap} of the formula (an estimate, often off by a factor of three).",
    ),
    ("work.ph-takes", "Such a product usually has pH {low} to {high}."),
    ("work.condition-of", "{subject} ({jurisdiction}, entry {entry}): {conditions}."),
    ("emulsion.lecithin", "Liquid lecithin ({lecithin}) alone makes water in oil. With {water} of water it parts."),
    ("stability.active-ph", "{substance} keeps between pH {low} and {high}; at pH {ph} ({known}) {why}."),
    ("stability.pair", "{substances} with {partners}: {what}"),
    ("stability.carbomer", "Stays thin and cloudy at pH {ph}: {substances} is not neutralised. Bring it above pH 5.5."),
    ("stability.carbomer", "Stays thin and cloudy: no base neutralises {substances}."),
    ("stability.acid-soap", "{substance} comes out at pH {ph}. It needs pH {least} or more."),
    (
        "stability.scrub-dissolves",
        "{substance}: {dissolves} of its {solid} dissolves in the {water} of water. It scrubs no more.",
    ),
    (
        "stability.no-carrier",
        "{substance} dissolves in oil only, and nothing here carries it. It floats up or settles.",
    ),
    ("stability.oxidation", "Turns rancid within months: {substances}, and no antioxidant."),
    ("limits.skin-ph", "pH {ph} ({known}) {does}. Bring it {direction} {bound}."),
    ("limits.kind", "{subject}: {present} is more than the {limit} for {kinds}. Say what kind of product this is."),
    (
        "limits.kind",
        "{subject}: {present} is more than the {limit} that most kinds of product may have. Say what kind this is.",
    ),
    ("limits.sensitiser", "Sensitises skin: {substances}, {total} in all. Once sensitised, a person reacts for life."),
    ("limits.no-spf", "No sun protection factor can be claimed: it is measured on skin, never computed.{claimed}"),
    (
        "limits.no-spf",
        "{total} of a UV filter ({substances}): no sun protection factor can be computed or claimed at a bench.",
    ),
    ("limits.conditions", "The law or its advisers set conditions: {subjects}."),
    ("checks.not-checked", "Not checked here: {what}."),
];

/// What a finding means and why it matters.
pub(crate) fn meaning(code: &str) -> &'static str {
    MEANINGS.iter().find(|(of, _)| *of == code).map_or("", |(_, meaning)| meaning)
}

const MEANINGS: &[(&str, &str)] = &[
    (
        "solubility.over-cap",
        "What does not dissolve scratches, settles and is missing where it should act. Water from every line counts, glycerites and hydrosols included.",
    ),
    (
        "solubility.over-cap-cold",
        "A cold bathroom, the post and a refrigerator are colder than the bench. Crystals that grew once are slow to dissolve again.",
    ),
    ("solubility.oil-over-cap", "Without water there is only the oil to dissolve it; what is too much falls out."),
    ("solubility.first-to-crystallise", "If you find crystals in the cold, these are the ones to expect."),
    (
        "solubility.no-data",
        "Not known is not the same as well. Make a small batch and leave it in the cold for a week.",
    ),
    (
        "preservation.missing",
        "Bacteria, yeasts and moulds grow in anything that holds free water, often unseen. Antioxidants, essential oils and extracts do not preserve.",
    ),
    (
        "preservation.not-needed",
        "The international standard for cosmetics of low microbiological risk names the grounds. Clean work and a clean container are still needed.",
    ),
    (
        "preservation.over-limit",
        "The limit counts every line and every salt of the same acid. Local rules decide; a limit that is kept proves nothing about the product.",
    ),
    ("preservation.over-usual", "The usual range is what makers of preservatives have tested."),
    (
        "preservation.under-usual",
        "Too little preservative lets microbes get used to it. A challenge test (ISO 11930) decides what is enough.",
    ),
    (
        "preservation.gap",
        "Each preservative acts on some kinds of microbes. Together they have to hold bacteria, yeasts and moulds; a challenge test (ISO 11930) decides whether they do.",
    ),
    (
        "preservation.undissociated",
        "Only the undissociated part of an acid passes into a cell. Asked for is what published inhibitory concentrations say.",
    ),
    (
        "preservation.oil-loss",
        "Microbes live in the water. What oil and micelles take up is lost to preservation. Each kind of oil counts by its own coefficient; yours may differ.",
    ),
    ("preservation.ph-outside", "Outside its window a preservative breaks down or does not act."),
    ("preservation.ph-unknown", "State the pH you aim at, and measure it in the finished product with a meter."),
    ("preservation.incompatible", "Each may be fine alone."),
    ("preservation.too-hot", "It evaporates, breaks down or reacts. Add it when the batch has cooled."),
    (
        "preservation.releases-formaldehyde",
        "Say on the label that it releases formaldehyde where your rules ask for it.",
    ),
    (
        "preservation.no-data",
        "What you described yourself, or what the tables lack. Ask the supplier for its range, pH and spectrum.",
    ),
    ("emulsion.no-emulsifier", "They part within minutes. Gums slow that down and do not prevent it."),
    (
        "emulsion.hlb-off",
        "A blend of simple non-ionic emulsifiers that misses what the oil asks for gives coarse drops, and the emulsion parts sooner. Published figures of oils and emulsifiers spread by two units together.",
    ),
    (
        "emulsion.emulsifier-short",
        "How much oil a gram of emulsifier holds is common practice; the figure of its maker comes first.",
    ),
    (
        "emulsion.close-packing",
        "Drops pressed against each other make a very thick cream, and one more drop can turn it over.",
    ),
    ("emulsion.melting", "What does not melt makes grains. Five degrees above the highest melting point is usual."),
    ("emulsion.unmelted", "Waxes, fatty alcohols and fatty acids belong into the heated oil."),
    ("emulsion.heat-sensitive", "Heat breaks down vitamins, drives off scent and makes delicate oils rancid sooner."),
    ("emulsion.salt-thickener", "The ions of a salt screen the charges that hold such a gel open."),
    ("emulsion.disperse-first", "Lumps with dry hearts do not dissolve by stirring."),
    ("emulsion.hlb-no-data", "Not known is not the same as well. A trial batch decides."),
    (
        "emulsion.hlb-silent",
        "The hydrophilic-lipophilic balance speaks of simple non-ionic emulsifiers only. A missing figure is no sound one.",
    ),
    (
        "limits.over-legal",
        "Counted over all lines and inside essential oils. Law carries jurisdiction and date; local rules decide, and the safety assessment the law asks for.",
    ),
    ("limits.retinoid", "Retinol, its acetate and its palmitate count together, each by how much retinol it makes."),
    ("limits.retinoid-kind", "A body lotion covers more skin than a face cream, so the law allows less."),
    ("limits.aha", "Advice differs between authorities. Acids and their salts count together."),
    ("limits.aha-ph", "The lower the pH, the more of the acid is undissociated and goes into the skin."),
    ("limits.aha-no-ph", "State the pH you aim at, and measure it with a meter."),
    (
        "limits.phototoxic",
        "Furocoumarins from the peel burn skin in sunlight. Distilled oils and those freed of them are other materials.",
    ),
    ("limits.caustic", "It blinds and burns. This is a caution for the bench."),
    ("limits.surfactant-active", "More cleanses no better, and dries and irritates the skin."),
    ("limits.over-usual", "Usual ranges are what sellers state and makers keep to."),
    ("limits.under-usual", "Usual ranges are what sellers state and makers keep to."),
    ("limits.humectants", "Common practice; you may want it so."),
    (
        "limits.allergens",
        "Summed over oils, perfume substances and single substances. A supplier's allergen sheet comes first.",
    ),
    ("limits.allergens-unknown", "Not known is not the same as none."),
    ("limits.sun", "Fruit acids and vitamin A make skin more sensitive to sunlight."),
    ("limits.pregnancy", "A caution for the label."),
    ("limits.children", "A caution for the label. Local rules name further limits."),
    ("limits.eyes", "A caution for the label."),
    (
        "preservation.slow",
        "Below a water activity of 0.75 the international standard counts it as low risk, not as none.",
    ),
    (
        "emulsion.lecithin",
        "Hydrogenated lecithin and lysolecithin hold oil in water; liquid lecithin holds water in oil.",
    ),
    (
        "stability.active-ph",
        "Outside its window an active breaks down or does nothing. Measure the pH with a meter, and again after a month.",
    ),
    ("stability.pair", "Each may be fine alone."),
    (
        "stability.carbomer",
        "Carbomer opens between pH 5 and 9. About four parts of sodium hydroxide, or ten of triethanolamine, to ten of carbomer.",
    ),
    ("stability.acid-soap", "Soap is the salt of a fatty acid: an acid takes the salt apart."),
    ("stability.scrub-dissolves", "Grains stay in oil, or in a syrup that is full already."),
    ("stability.no-carrier", "Oil, strong alcohol or a solubiliser carries it."),
    ("stability.oxidation", "Many double bonds take up oxygen. Tocopherol slows it, and so do cold and dark."),
    (
        "limits.skin-ph",
        "Skin is slightly acid, about pH 5. Acid and alkali at the ends burn it, whatever the product is for.",
    ),
    ("limits.sensitiser", "A sensitised person reacts to traces for life. Patch test; leave it out for children."),
    (
        "limits.no-spf",
        "How a filter is spread decides more than how much there is. Home-made sun protection must not be trusted.",
    ),
    ("limits.kind", "The law allows different amounts on face, body, hair, lips and for children."),
    ("limits.conditions", "The papers of the lot answer most of them."),
    ("checks.not-checked", "Not known is not the same as well. A small batch and a few weeks of waiting tell more."),
];

/// A word in a sentence.
pub(crate) fn word(key: &str) -> &'static str {
    WORDS.iter().find(|(of, _)| *of == key).map_or("", |(_, word)| word)
}

/// What a finding is a matter of.
pub(crate) fn family(code: &str) -> &'static str {
    match code.split_once('.').map_or(code, |(family, _)| family) {
        "solubility" => "Solubility",
        "preservation" => "Preservation",
        "emulsion" => "Emulsion",
        "stability" => "Stability",
        "checks" => "Not checked",
        _ => "Limits",
    }
}

/// How many findings there are, most serious first.
pub(crate) fn summary([stops, cautions, notes]: [usize; 3], waiting: bool) -> String {
    if waiting {
        return "Checked again once the amounts make 100\u{a0}%.".to_owned();
    }
    match (stops, cautions, notes) {
        (0, 0, 0) => "The checks found nothing. That is no proof: what they do not know they cannot find.".to_owned(),
        (0, 0, notes) => format!("Notes: {notes}"),
        (0, cautions, notes) => format!("Cautions: {cautions} · Notes: {notes}"),
        (stops, cautions, notes) => format!("Stops: {stops} · Cautions: {cautions} · Notes: {notes}"),
    }
}

/// A source as a line.
pub(crate) fn citation(citation: &Citation) -> String {
    let Citation { source, locator, as_of, .. } = citation;
    match (locator.is_empty(), as_of.is_empty()) {
        (true, true) => (*source).to_owned(),
        (false, true) => format!("{source}, {locator}"),
        (true, false) => format!("{source} ({as_of})"),
        (false, false) => format!("{source}, {locator} ({as_of})"),
    }
}

/// How far a source may be trusted.
pub(crate) const fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::Published => "read in the source",
        Basis::Computed => "computed",
        Basis::SupplierTypical => "typical; your lot may differ",
        Basis::Memory => "from memory, to be checked",
    }
}

/// What an axis measures.
pub(crate) const fn axis(axis: Axis) -> &'static str {
    match axis {
        Axis::Temperature => "temperature",
        Axis::Percent => "dissolves, % of the formula",
        Axis::Ph => "pH",
        Axis::Undissociated => "undissociated",
        Axis::Hlb => "HLB",
    }
}

/// A picture for those who do not see it.
pub(crate) fn chart(across: Axis, up: Option<Axis>, marks: &[MarkView]) -> String {
    let points = marks.iter().map(|mark| mark.text.as_str()).collect::<Vec<_>>().join("; ");
    match up {
        Some(up) => format!("Chart of {} over {}. Marked: {points}.", axis(up), axis(across)),
        None => format!("Chart along {}. Marked: {points}.", axis(across)),
    }
}

/// A material and the percent it comes to.
pub(crate) fn amount(material: &str, to: &str) -> String {
    format!("{material} to {to}")
}

/// Said once a cure is applied.
pub(crate) fn cured(cure: &str) -> String {
    format!("Done: {cure}.")
}

/// Asks for a reason.
pub(crate) const fn reason_wanted() -> &'static str {
    "Write why you set this aside; the reason stays with the formula."
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillroom_core::checks::FAMILIES;

    #[test]
    fn every_finding_has_a_sentence_and_a_meaning() {
        for registered in FAMILIES.iter().copied().flatten() {
            assert!(SENTENCES.iter().any(|(code, _)| *code == registered.code), "{} has no sentence", registered.code);
            assert!(!meaning(registered.code).is_empty(), "{} has no meaning", registered.code);
        }
    }

    #[test]
    fn a_sentence_without_its_numbers_gives_way_to_the_next() {
        let write = |value: &Value| match value {
            Value::Name(name) => Words::One((*name).to_owned()),
            _ => Words::Several(vec!["a".to_owned(), "b".to_owned()]),
        };
        let values = vec![("material", Value::Name("Allantoin")), ("to", Value::Names(Vec::new()))];
        assert_eq!(say("cure.lower", &values, &write), "Lower Allantoin to a and b");
        assert_eq!(say("cure.lower", &Vec::new(), &write), "cure.lower");
    }

    #[test]
    fn no_sentence_says_that_something_is_safe() {
        let all = SENTENCES.iter().map(|(_, text)| text).chain(MEANINGS.iter().map(|(_, text)| text));
        assert!(all.into_iter().all(|text| !text.to_lowercase().replace("safety assessment", "").contains("safe")));
    }
}
