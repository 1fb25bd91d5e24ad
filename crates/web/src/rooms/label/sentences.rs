//! What is said of a label: its sentences, what its fields take.

use crate::messages::label as says;
use rust_decimal::Decimal;
use stillroom_core::label::{LONGEST_LINK, LinkError, Market, Statement};
use stillroom_core::number::{DecimalMark, write_fixed};

/// A sentence of a label.
pub(crate) fn statement(statement: Statement, market: Market) -> &'static str {
    match statement {
        Statement::ExternalUse => says::say_external_use(),
        Statement::Eyes => says::say_eyes(),
        Statement::SmallChildren => says::say_small_children(),
        Statement::VitaminA => says::say_vitamin_a(),
        Statement::Formaldehyde => says::say_formaldehyde(),
        // In the words that are asked for there.
        Statement::SunburnAlert if market == Market::UnitedStates => SUNBURN_ALERT,
        Statement::SunburnAlert | Statement::Sun => says::say_sun(),
        Statement::Ammonia => says::say_ammonia(),
        Statement::Resorcinol => says::say_resorcinol(),
        Statement::Powder => says::say_powder(),
        Statement::NappyArea => says::say_nappy_area(),
        Statement::UnderTen => says::say_under_ten(),
        Statement::StopIfIrritated => says::say_stop(),
        Statement::OutOfReach => says::say_out_of_reach(),
    }
}

/// *Source*: FDA, guidance for industry, labelling for cosmetics containing alpha hydroxy acids (2005), from memory: a label in
/// the United States carries these words, whatever the language of the page.
const SUNBURN_ALERT: &str = "Sunburn Alert: This product contains an alpha hydroxy acid (AHA) that may increase your skin's sensitivity to the sun and particularly the possibility of sunburn. Use a sunscreen, wear protective clothing, and limit sun exposure while using this product and for a week afterwards.";

/// What a field takes.
pub(crate) fn what_field_takes(field: &str, mark: DecimalMark) -> String {
    match field {
        "label.width" | "label.height" => says::takes_side(&write_fixed(Decimal::new(625, 1), 1, mark)),
        "label.volume" => says::takes_volume().to_owned(),
        "label.opening" => says::takes_months().to_owned(),
        _ => says::takes_count().to_owned(),
    }
}

/// Why a text is no address for a label, and what is taken.
pub(crate) fn wrong_link(error: &LinkError) -> String {
    match error {
        LinkError::Space => says::wrong_link_space().to_owned(),
        LinkError::Letter(letter) => says::wrong_link_letter(&letter.to_string()),
        LinkError::Scheme(scheme) => says::wrong_link_scheme(scheme),
        LinkError::Host(host) if host.is_empty() => says::wrong_link_no_host().to_owned(),
        LinkError::Host(host) => says::wrong_link_host(host),
        LinkError::TooLong(letters) => says::wrong_link_too_long(&letters.to_string(), &LONGEST_LINK.to_string()),
    }
}

/// What a word on a label makes of the product.
pub(crate) fn wording(kind: &str, found: &str, place: &str, source: &str) -> String {
    match kind {
        "medicine" => says::wording_medicine(found, place, source),
        "function" => says::wording_function(found, place, source),
        "biocide" => says::wording_biocide(found, place, source),
        "sun" => says::wording_sun(found, place, source),
        _ => says::wording_claim(found, place, source),
    }
}
