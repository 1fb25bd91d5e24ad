//! What is said of the pH: why there is none, how caustics are handled, what its fields take.

use crate::messages::{bench, named, ph as says};
use rust_decimal::Decimal;
use stillroom_core::checks::acidity::setting::SetError;
use stillroom_core::chemistry::ph::PhError;
use stillroom_core::number::{DecimalMark, write_fixed};

/// Why nothing can be worked out. `ph` writes a pH.
pub(crate) fn ph_error(error: &PhError, ph: &dyn Fn(f64) -> String) -> String {
    match error {
        PhError::Unreachable { ends_at } if ends_at.is_finite() => says::error_ph_unreachable_2(&ph(*ends_at)),
        error => of_code(error.code()),
    }
}

/// Why no amount is offered.
pub(crate) fn set_error(error: &SetError, ph: &dyn Fn(f64) -> String) -> String {
    match error {
        SetError::Ph(error) => ph_error(error, ph),
        error => of_code(error.code()),
    }
}

fn of_code(code: &str) -> String {
    let name = format!("error-{}", code.replace('.', "-"));
    let message = named::find(says::BY_NAME, says::PIECE, &name);
    message.map_or_else(|| code.to_owned(), |message| message.text().to_owned())
}

/// How caustics are handled.
pub(crate) fn caustic() -> [&'static str; 3] {
    [bench::caustic_1(), bench::caustic_2(), bench::caustic_3()]
}

/// What a field takes.
pub(crate) fn what_field_takes(field: &str, mark: DecimalMark) -> String {
    match field {
        "ph.capacity" => says::takes_capacity(&write_fixed(Decimal::new(5, 3), 3, mark)),
        "ph.target" => crate::messages::common::takes_ph(&write_fixed(Decimal::new(55, 1), 1, mark)),
        _ => says::takes_strength().to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::messages::{Language, speak_natively};

    #[test]
    fn every_error_has_a_sentence_in_every_language() {
        for language in Language::ALL {
            speak_natively(language);
            for code in SetError::CODES.into_iter().chain(PhError::CODES) {
                assert_ne!(of_code(code), code, "{language:?}");
            }
        }
        speak_natively(Language::English);
    }
}
