//! Whether what is in the jar lasts and does what it is there for: actives at their pH, pairs that undo each other, polymers
//! that want a base, soaps that want none of an acid, oils that turn rancid.

mod acid_soap;
mod active_ph;
mod carbomer;
mod no_carrier;
mod oxidation;
mod pair;
mod ph_off_target;
mod scrub_dissolves;

use super::Registered;

pub use oxidation::is_unprotected;

/// The findings of this family.
pub const FINDINGS: &[Registered] = &[
    Registered { code: active_ph::CODE, check: active_ph::check },
    Registered { code: pair::CODE, check: pair::check },
    Registered { code: carbomer::CODE, check: carbomer::check },
    Registered { code: acid_soap::CODE, check: acid_soap::check },
    Registered { code: ph_off_target::CODE, check: ph_off_target::check },
    Registered { code: scrub_dissolves::CODE, check: scrub_dissolves::check },
    Registered { code: no_carrier::CODE, check: no_carrier::check },
    Registered { code: oxidation::CODE, check: oxidation::check },
];

/// The finding that the pH is not the one that is aimed at.
pub(super) const OFF_TARGET: &str = ph_off_target::CODE;

/// Less than this, in percent, is carried in or does nothing.
const TRACE: f64 = 0.05;
