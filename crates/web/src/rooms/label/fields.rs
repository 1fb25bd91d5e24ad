//! The fields of a label: what each takes, what stands in it, and the containers there are.

use crate::messages::{common, label as says};
use crate::rooms::extracts::view::ChoiceView;
use crate::rooms::label::view::LabelFieldView;
use rust_decimal::Decimal;
use stillroom_core::label::{MOST_LABELS, Market, Outline, Paper, Shape};
use stillroom_core::number::{DecimalMark, write_between};
use stillroom_exchange::label::LabelFields;

/// How the fields begin in which somebody says whether an ingredient is a nanomaterial.
pub(crate) const NANO: &str = "nano:";
/// How those begin that leave a sentence off.
pub(crate) const LEAVE: &str = "leave:";

/// What was filled in.
pub(crate) struct Filled {
    pub(crate) product: LabelFields,
    pub(crate) maker: LabelFields,
}

/// What a field takes.
pub(crate) enum Takes {
    Text,
    /// One of the words that this says yes to.
    Choice(fn(&str) -> bool),
    /// The address of a page.
    Address,
    Number {
        least: u32,
        most: u32,
        whole: bool,
    },
}

/// How an address stands on a label.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum LinkAs {
    Nothing,
    Text,
    Code,
}

const LINKS_AS: [(&str, LinkAs); 3] = [("nothing", LinkAs::Nothing), ("text", LinkAs::Text), ("code", LinkAs::Code)];

const MARKETS: [(&str, Market); 3] =
    [("eu", Market::EuropeanUnion), ("uk", Market::UnitedKingdom), ("us", Market::UnitedStates)];
const SHAPES: [(&str, Shape); 3] = [("flat", Shape::Flat), ("wrap", Shape::Wrap), ("round", Shape::Round)];
const PAPERS: [(&str, Paper); 2] = [("a4", Paper::A4), ("letter", Paper::Letter)];

/// A container: its key, what it holds in millilitres, and the label that goes on it in millimetres.
///
/// *Source*: usual sizes of stock jars and bottles, common practice; they differ by a few millimetres from maker to maker.
struct Container(&'static str, u32, Shape, u32, u32);

const CONTAINERS: [Container; 12] = [
    Container("jar-15", 15, Shape::Wrap, 115, 18),
    Container("jar-30", 30, Shape::Wrap, 150, 24),
    Container("jar-50", 50, Shape::Wrap, 180, 30),
    Container("jar-100", 100, Shape::Wrap, 215, 38),
    Container("lid-50", 50, Shape::Round, 62, 62),
    Container("tin-50", 50, Shape::Round, 60, 60),
    Container("bottle-30", 30, Shape::Wrap, 98, 45),
    Container("bottle-50", 50, Shape::Wrap, 108, 55),
    Container("bottle-100", 100, Shape::Wrap, 130, 65),
    Container("bottle-200", 200, Shape::Wrap, 165, 85),
    Container("tube-50", 50, Shape::Flat, 42, 90),
    Container("own", 50, Shape::Flat, 60, 90),
];
/// The one that counts until another is chosen.
const USUAL: usize = 2;
/// Labels printed unless somebody says otherwise.
const USUAL_COUNT: u32 = 8;

/// What a field takes; `None` where there is no such field.
pub(crate) fn takes(name: &str) -> Option<Takes> {
    Some(match name {
        "person" | "address" | "country" | "contact" | "function" | "claims" | "caution" | "lot" | "before" => {
            Takes::Text
        }
        "site" => Takes::Address,
        "site-as" => Takes::Choice(|word| is_one_of(&LINKS_AS, word)),
        "market" => Takes::Choice(|word| is_one_of(&MARKETS, word)),
        "paper" => Takes::Choice(|word| is_one_of(&PAPERS, word)),
        "shape" => Takes::Choice(|word| is_one_of(&SHAPES, word)),
        "by" => Takes::Choice(|word| ["volume", "mass"].contains(&word)),
        "container" => Takes::Choice(|word| CONTAINERS.iter().any(|each| each.0 == word)),
        "width" | "height" => Takes::Number { least: 10, most: 400, whole: false },
        "volume" => Takes::Number { least: 1, most: 10_000, whole: false },
        "count" => Takes::Number { least: 1, most: MOST_LABELS, whole: true },
        "opening" => Takes::Number { least: 0, most: 120, whole: true },
        name if name.starts_with(NANO) && name.len() <= 40 => Takes::Choice(|word| ["yes", "no"].contains(&word)),
        name if name.starts_with(LEAVE) && name.len() <= 40 => Takes::Choice(|word| word == "yes"),
        _ => return None,
    })
}

fn is_one_of<T>(all: &[(&str, T)], word: &str) -> bool {
    all.iter().any(|(each, _)| *each == word)
}

/// Whether a field is the same on every label of this maker: it is kept with the settings of the device.
pub(crate) fn is_of_maker(name: &str) -> bool {
    ["market", "paper", "person", "address", "country", "contact", "site"].contains(&name)
}

impl Filled {
    pub(crate) fn text(&self, name: &str) -> &str {
        let fields = if is_of_maker(name) { &self.maker } else { &self.product };
        fields.get(name).map_or("", str::trim)
    }

    /// What a field holds, or what is worked out where it is empty.
    pub(crate) fn text_or(&self, name: &str, usual: &str) -> String {
        let text = self.text(name);
        if text.is_empty() { usual.to_owned() } else { text.to_owned() }
    }

    fn number(&self, name: &str) -> Option<Decimal> {
        self.text(name).parse().ok()
    }

    fn among<T: Copy>(&self, name: &str, all: &[(&'static str, T)], usual: usize) -> (&'static str, T) {
        let text = self.text(name);
        *all.iter().find(|(word, _)| *word == text).unwrap_or(&all[usual])
    }

    pub(crate) fn market(&self) -> Market {
        self.among("market", &MARKETS, 0).1
    }

    pub(crate) fn paper(&self) -> (&'static str, Paper) {
        self.among("paper", &PAPERS, usize::from(self.market() == Market::UnitedStates))
    }

    fn container(&self) -> &'static Container {
        let key = self.text("container");
        CONTAINERS.iter().find(|each| each.0 == key).unwrap_or(&CONTAINERS[USUAL])
    }

    /// What the container holds, in millilitres, where nobody says how much is filled.
    pub(crate) fn usual_volume(&self) -> Decimal {
        Decimal::from(self.container().1)
    }

    pub(crate) fn volume(&self) -> Option<Decimal> {
        self.number("volume")
    }

    pub(crate) fn by_mass(&self) -> bool {
        self.text("by") == "mass"
    }

    /// Months after opening as filled in.
    pub(crate) fn opening(&self) -> Option<Decimal> {
        self.number("opening")
    }

    pub(crate) fn count(&self) -> u32 {
        self.text("count").parse().unwrap_or(USUAL_COUNT)
    }

    fn shape(&self) -> (&'static str, Shape) {
        let usual = SHAPES.iter().position(|(_, shape)| *shape == self.container().2).unwrap_or(0);
        self.among("shape", &SHAPES, usual)
    }

    fn side(&self, name: &str) -> Decimal {
        let Container(_, _, _, width, height) = self.container();
        self.number(name).unwrap_or_else(|| Decimal::from(if name == "width" { *width } else { *height }))
    }

    /// The outline, and the word of its shape.
    pub(crate) fn outline(&self) -> (&'static str, Option<Outline>) {
        use rust_decimal::prelude::ToPrimitive as _;
        let (word, shape) = self.shape();
        let side = |name| self.side(name).to_f64().unwrap_or(0.0);
        (word, Outline::new(shape, side("width"), side("height")))
    }

    /// How the address stands on the label.
    pub(crate) fn link_as(&self) -> LinkAs {
        self.among("site-as", &LINKS_AS, 0).1
    }

    pub(crate) fn leaves_off(&self, code: &str) -> bool {
        self.text(&format!("{LEAVE}{code}")) == "yes"
    }

    pub(crate) fn is_nano(&self, key: &str) -> Option<bool> {
        match self.text(&format!("{NANO}{key}")) {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        }
    }
}

/// What is worked out where a field is empty.
pub(crate) struct Usual {
    pub(crate) function: String,
    pub(crate) volume: Decimal,
    pub(crate) lot: String,
    pub(crate) before: String,
    pub(crate) opening: String,
}

fn field(group: &'static str, kind: &'static str, name: &str, label: &str, text: String) -> LabelFieldView {
    LabelFieldView {
        field: format!("label.{name}"),
        group,
        kind,
        label: label.to_owned(),
        text,
        ..LabelFieldView::default()
    }
}

fn choice(
    group: &'static str,
    name: &str,
    label: &str,
    chosen: &str,
    choices: impl IntoIterator<Item = (&'static str, String)>,
) -> LabelFieldView {
    let choices = choices.into_iter().map(|(key, label)| ChoiceView { key: key.to_owned(), label }).collect();
    LabelFieldView { choices, ..field(group, "choice", name, label, chosen.to_owned()) }
}

fn number(
    group: &'static str,
    name: &str,
    label: &str,
    value: Decimal,
    unit: &str,
    mark: DecimalMark,
) -> LabelFieldView {
    let unit = unit.to_owned();
    LabelFieldView { unit, ..field(group, "number", name, label, write_between(value, 0, 3, mark)) }
}

/// Every field with what it holds; `nano` pairs what may be a nanomaterial with its key.
pub(crate) fn fields(
    filled: &Filled,
    usual: &Usual,
    nano: &[(String, String)],
    mark: DecimalMark,
) -> Vec<LabelFieldView> {
    let mut all = fields_of_product(filled, usual, mark);
    all.extend([
        field("maker", "line", "person", says::field_person(), filled.text("person").to_owned()),
        field("maker", "line", "address", says::field_address(), filled.text("address").to_owned()),
        field("maker", "line", "country", says::field_country(), filled.text("country").to_owned()),
        field("maker", "line", "contact", says::field_contact(), filled.text("contact").to_owned()),
    ]);
    all.extend(fields_of_link(filled));
    all.extend(fields_of_print(filled, mark));
    all.extend(nano.iter().map(|(key, name)| field_of_nano(filled, key, name)));
    all
}

fn fields_of_product(filled: &Filled, usual: &Usual, mark: DecimalMark) -> Vec<LabelFieldView> {
    let mut all = vec![
        choice(
            "product",
            "market",
            says::field_market(),
            filled.among("market", &MARKETS, 0).0,
            [
                ("eu", says::market_eu().to_owned()),
                ("uk", says::market_uk().to_owned()),
                ("us", says::market_us().to_owned()),
            ],
        ),
        choice(
            "product",
            "container",
            says::field_container(),
            filled.container().0,
            CONTAINERS.iter().map(|each| (each.0, container_name(each))),
        ),
        number(
            "product",
            "volume",
            says::field_volume(),
            filled.volume().unwrap_or(usual.volume),
            common::unit_millilitre(),
            mark,
        ),
        choice(
            "product",
            "by",
            says::field_by(),
            if filled.by_mass() { "mass" } else { "volume" },
            [("volume", says::by_volume().to_owned()), ("mass", says::by_mass().to_owned())],
        ),
        field("product", "line", "function", says::field_function(), filled.text_or("function", &usual.function)),
        field("product", "lines", "claims", says::field_claims(), filled.text_or("claims", "")),
        field("product", "line", "caution", says::field_caution(), filled.text_or("caution", "")),
        field("product", "line", "lot", says::field_lot(), filled.text_or("lot", &usual.lot)),
        field("product", "line", "before", says::field_before(), filled.text_or("before", &usual.before)),
    ];
    all.push(LabelFieldView {
        unit: says::unit_months().to_owned(),
        ..field("product", "number", "opening", says::field_opening(), filled.text_or("opening", &usual.opening))
    });
    all
}

fn fields_of_print(filled: &Filled, mark: DecimalMark) -> Vec<LabelFieldView> {
    let is_round = filled.shape().1 == Shape::Round;
    let mut all = vec![
        choice(
            "print",
            "shape",
            says::field_shape(),
            filled.shape().0,
            [
                ("flat", says::shape_flat().to_owned()),
                ("wrap", says::shape_wrap().to_owned()),
                ("round", says::shape_round().to_owned()),
            ],
        ),
        number(
            "print",
            "width",
            if is_round { says::field_diameter() } else { says::field_width() },
            filled.side("width"),
            "mm",
            mark,
        ),
    ];
    if !is_round {
        all.push(number("print", "height", says::field_height(), filled.side("height"), "mm", mark));
    }
    all.extend([
        choice(
            "print",
            "paper",
            says::field_paper(),
            filled.paper().0,
            [("a4", says::paper_a4().to_owned()), ("letter", says::paper_letter().to_owned())],
        ),
        number("print", "count", says::field_count(), Decimal::from(filled.count()), "", mark),
    ]);
    all
}

fn fields_of_link(filled: &Filled) -> [LabelFieldView; 2] {
    [
        field("link", "line", "site", says::field_site(), filled.text("site").to_owned()),
        choice(
            "link",
            "site-as",
            says::field_site_as(),
            filled.among("site-as", &LINKS_AS, 0).0,
            [
                ("nothing", says::site_as_nothing().to_owned()),
                ("text", says::site_as_text().to_owned()),
                ("code", says::site_as_code().to_owned()),
            ],
        ),
    ]
}

fn field_of_nano(filled: &Filled, key: &str, name: &str) -> LabelFieldView {
    let chosen = match filled.is_nano(key) {
        Some(true) => "yes",
        Some(false) => "no",
        None => "",
    };
    choice(
        "nano",
        &super::edit::nano_field(key),
        &says::field_nano(name),
        chosen,
        [
            ("", says::nano_not_known().to_owned()),
            ("no", says::nano_no().to_owned()),
            ("yes", says::nano_yes().to_owned()),
        ],
    )
}

fn container_name(Container(key, volume, ..): &Container) -> String {
    let volume = volume.to_string();
    match key.split_once('-').map_or(*key, |(kind, _)| kind) {
        "jar" => says::container_jar(&volume),
        "lid" => says::container_lid(&volume),
        "tin" => says::container_tin(&volume),
        "bottle" => says::container_bottle(&volume),
        "tube" => says::container_tube(&volume),
        _ => says::container_own().to_owned(),
    }
}
