//! The fields of the costs: what each takes and where it is kept.

use crate::messages::costs as says;
use crate::rooms::costs::sentences as sentences_costs;
use crate::rooms::costs::view::CostFieldView;
use crate::rooms::extracts::view::ChoiceView;
use rust_decimal::Decimal;
use stillroom_core::batch_plan::{BatchWay, MOST_CONTAINERS};
use stillroom_core::number::{DecimalMark, write_between};
use stillroom_core::packaging::Walls;
use stillroom_core::{Currency, Formula, Percent};
use stillroom_exchange::label::LabelFields;

/// Highest amount of money that is taken.
const HIGHEST_AMOUNT: u32 = 1_000_000;
/// Currency until the maker names one and no material has a price.
const USUAL_CURRENCY: &str = "EUR";

/// What a field takes.
pub(crate) enum Takes {
    /// One of the words that this says yes to.
    Choice(fn(&str) -> bool),
    Number {
        most: u32,
        whole: bool,
    },
    Currency,
    Text,
    /// A volume, kept in millilitres.
    Volume,
}

/// What the fields of further kinds of containers begin with.
pub(crate) const FURTHER_KINDS: [&str; 5] = ["k2", "k3", "k4", "k5", "k6"];

/// What a field takes; `None` where there is no such field.
pub(crate) fn takes(name: &str) -> Option<Takes> {
    if let Some((key, name)) = name.split_once(':') {
        return match name {
            _ if !FURTHER_KINDS.contains(&key) => None,
            "volume" => Some(Takes::Volume),
            "count" => Some(Takes::Number { most: MOST_CONTAINERS, whole: true }),
            "headspace" => Some(Takes::Number { most: 90, whole: false }),
            "name" | "stays" | "price" | "further" | "walls" => takes(name),
            _ => None,
        };
    }
    Some(match name {
        "name" => Takes::Text,
        "first" => Takes::Choice(|word| ["number", "rest"].contains(&word)),
        "basis" => Takes::Choice(|word| word == "plan"),
        "walls" => Takes::Choice(|word| Walls::from_word(word).is_some()),
        "price" | "further" | "hour" => Takes::Number { most: HIGHEST_AMOUNT, whole: false },
        "minutes" => Takes::Number { most: 100_000, whole: false },
        "stays" | "wastage" => Takes::Number { most: 90, whole: false },
        "margin" => Takes::Number { most: 10_000, whole: false },
        "batches" => Takes::Number { most: 1_000, whole: true },
        "currency" => Takes::Currency,
        _ => return None,
    })
}

/// Whether a field is the same for every formula of this maker: it is kept with the settings of the device.
pub(crate) fn is_of_maker(name: &str) -> bool {
    ["hour", "currency"].contains(&name)
}

/// What a field of the maker is kept under, beside what their labels say.
pub(crate) fn kept_name(name: &str) -> String {
    if is_of_maker(name) { format!("cost-{name}") } else { name.to_owned() }
}

/// What was filled in.
pub(crate) struct Costed {
    product: LabelFields,
    maker: LabelFields,
}

impl Costed {
    pub(crate) fn of(costs: &str, maker: &str) -> Self {
        Self { product: LabelFields::read(costs), maker: LabelFields::read(maker) }
    }

    pub(crate) fn text(&self, name: &str) -> &str {
        let fields = if is_of_maker(name) { &self.maker } else { &self.product };
        fields.get(&kept_name(name)).map_or("", str::trim)
    }

    pub(crate) fn number(&self, name: &str) -> Option<Decimal> {
        self.text(name).parse().ok()
    }

    pub(crate) fn percent(&self, name: &str) -> Percent {
        self.number(name).and_then(|value| Percent::new(value).ok()).unwrap_or(Percent::ZERO)
    }

    /// Whether as many of the kind of the plan are filled as there is enough for, and not so many.
    pub(crate) fn first_takes_rest(&self, formula: &Formula) -> bool {
        match self.text("first") {
            "number" => false,
            "rest" => true,
            _ => formula.batch.way != BatchWay::Containers,
        }
    }

    /// Whether further kinds of containers are listed.
    pub(crate) fn has_further_kinds(&self) -> bool {
        FURTHER_KINDS.iter().any(|key| !self.text(&format!("{key}:volume")).is_empty())
    }

    /// How often the list of what to buy counts the batch.
    pub(crate) fn batches(&self) -> u32 {
        self.text("batches").parse().ok().filter(|count| *count > 0).unwrap_or(1)
    }

    /// Whether the plan counts although a batch was made.
    pub(crate) fn by_plan(&self) -> bool {
        self.text("basis") == "plan"
    }

    /// The currency the maker named; else the one most prices are in, else a usual one.
    pub(crate) fn currency(&self, most: Option<Currency>) -> Option<Currency> {
        Currency::new(self.text("currency")).ok().or(most).or_else(|| Currency::new(USUAL_CURRENCY).ok())
    }
}

fn field(group: &'static str, kind: &'static str, field: &str, label: &str) -> CostFieldView {
    CostFieldView { field: field.to_owned(), group, kind, label: label.to_owned(), ..CostFieldView::default() }
}

fn choice(group: &'static str, name: &str, label: &str, chosen: &str, choices: Vec<(&str, &str)>) -> CostFieldView {
    let choices = choices.into_iter().map(|(key, label)| ChoiceView { key: key.to_owned(), label: label.to_owned() });
    CostFieldView { text: chosen.to_owned(), choices: choices.collect(), ..field(group, "choice", name, label) }
}

/// What of the batch itself is filled in here, as its fields show it.
pub(crate) struct OfBatch {
    /// Lot of the batch made last, where one was finished.
    pub(crate) made: Option<String>,
    pub(crate) units: String,
    /// How many of the first kind are planned.
    pub(crate) planned: String,
    pub(crate) volume: String,
    pub(crate) volume_unit: &'static str,
    pub(crate) headspace: String,
    pub(crate) loss: String,
    pub(crate) density: String,
    /// Whether the kind of container of the plan takes the rest, where there are further ones.
    pub(crate) first_takes_rest: Option<bool>,
}

/// Every field.
pub(crate) fn fields(costed: &Costed, batch: &OfBatch, currency: &str, mark: DecimalMark) -> Vec<CostFieldView> {
    let number = |group, name: &str, label: &str, unit: &str| {
        let text = costed.number(name).map_or_else(String::new, |value| write_between(value, 0, 6, mark));
        CostFieldView { text, unit: unit.to_owned(), ..field(group, "number", &format!("cost.{name}"), label) }
    };
    let plan = |group, name: &str, label: &str, unit: &str, text: &str| CostFieldView {
        text: text.to_owned(),
        unit: unit.to_owned(),
        ..field(group, "number", name, label)
    };
    let mut all = Vec::new();
    if let Some(lot) = &batch.made {
        let made = says::basis_made(lot);
        let chosen = if costed.by_plan() { "plan" } else { "" };
        let choices = vec![("", made.as_str()), ("plan", says::basis_plan())];
        all.push(choice("batch", "cost.basis", says::field_basis(), chosen, choices));
    }
    all.push(plan("batch", "batch.count", says::field_units(), "", &batch.units));
    all.push(plan("batch", "batch.volume", says::field_volume(), batch.volume_unit, &batch.volume));
    if let Some(takes_rest) = batch.first_takes_rest {
        let chosen = if takes_rest { "rest" } else { "number" };
        let number = says::first_number(&batch.planned);
        let choices = vec![("number", number.as_str()), ("rest", says::first_rest())];
        all.push(choice("container", "cost.first", says::field_first(), chosen, choices));
        let name = costed.text("name").to_owned();
        all.push(CostFieldView { text: name, ..field("container", "line", "cost.name", says::field_name()) });
    }
    all.push(choice("container", "cost.walls", says::field_walls(), costed.text("walls"), walls_choices()));
    all.push(number("container", "price", says::field_price(), currency));
    all.push(number("container", "further", says::field_further(), currency));
    all.push(plan("container", "batch.headspace", says::field_headspace(), "%", &batch.headspace));
    all.push(number("container", "stays", says::field_stays(), "%"));
    all.push(plan("container", "batch.loss", says::field_loss(), "%", &batch.loss));
    all.push(plan("container", "batch.density", says::field_density(), "g/mL", &batch.density));
    all.push(number("work", "wastage", says::field_wastage(), "%"));
    all.push(number("work", "minutes", says::field_minutes(), says::unit_minutes()));
    all.push(number("work", "hour", says::field_hour(), currency));
    all.push(number("work", "margin", says::field_margin(), "%"));
    let typed = costed.text("currency").to_owned();
    let text = if typed.is_empty() { currency.to_owned() } else { typed };
    all.push(CostFieldView { text, ..field("work", "line", "cost.currency", says::field_currency()) });
    let batches = costed.batches().to_string();
    all.push(CostFieldView { text: batches, ..number("buy", "batches", says::field_batches(), "") });
    all
}

fn walls_choices() -> Vec<(&'static str, &'static str)> {
    let all = Walls::ALL.iter().map(|(word, walls)| (*word, sentences_costs::walls(*walls)));
    std::iter::once(("", says::walls_unsaid())).chain(all).collect()
}

/// The fields of a further kind of container.
pub(crate) fn fields_of_kind(
    costed: &Costed,
    key: &str,
    volume: &str,
    volume_unit: &str,
    currency: &str,
    mark: DecimalMark,
) -> Vec<CostFieldView> {
    let named = |name: &str| format!("cost.{key}:{name}");
    let text_of = |name: &str| costed.text(&format!("{key}:{name}"));
    let number = |name: &str, label: &str, unit: &str| {
        let value = text_of(name).parse::<Decimal>();
        let text = value.map_or_else(|_| String::new(), |value| write_between(value, 0, 6, mark));
        CostFieldView { text, unit: unit.to_owned(), ..field("kind", "number", &named(name), label) }
    };
    let held = field("kind", "number", &named("volume"), says::field_volume());
    vec![
        CostFieldView { text: text_of("name").to_owned(), ..field("kind", "line", &named("name"), says::field_name()) },
        CostFieldView { text: volume.to_owned(), unit: volume_unit.to_owned(), ..held },
        number("count", says::field_kind_count(), ""),
        number("price", says::field_price(), currency),
        number("further", says::field_further(), currency),
        number("headspace", says::field_headspace(), "%"),
        number("stays", says::field_stays(), "%"),
        choice("kind", &named("walls"), says::field_walls(), text_of("walls"), walls_choices()),
    ]
}
