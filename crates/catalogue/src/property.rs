//! What the catalogue can say about a material, and how far each statement may be trusted.

use serde::{Deserialize, Serialize};
pub use stillroom_terms::Basis;

/// What a value of a property looks like.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Kind {
    /// A number in a unit, believable between two bounds.
    Number {
        /// Unit, empty for a bare number.
        unit: &'static str,
        /// Smallest believable value.
        minimum: f64,
        /// Largest believable value.
        maximum: f64,
    },
    /// One of a few words.
    Choice(&'static [&'static str]),
}

macro_rules! properties {
    ($($(#[$about:meta])* $name:ident $slug:literal $kind:expr;)*) => {
        /// A property of a material or a constituent. Name, unit and believable range are declared once, here.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[non_exhaustive]
        pub enum Property {
            $($(#[$about])* $name,)*
        }

        impl Property {
            /// Every property, in the order a card shows them.
            pub const ALL: &'static [Self] = &[$(Self::$name,)*];

            /// The word used in the data files; also its stable code.
            #[must_use]
            pub const fn slug(self) -> &'static str {
                match self { $(Self::$name => $slug,)* }
            }

            /// What its values look like.
            #[must_use]
            pub const fn kind(self) -> Kind {
                match self { $(Self::$name => $kind,)* }
            }
        }
    };
}

const fn number(unit: &'static str, minimum: f64, maximum: f64) -> Kind {
    Kind::Number { unit, minimum, maximum }
}

properties! {
    /// Percent of the finished product it is usually used at.
    UsualPercent "usual-percent" number("%", 0.0001, 100.0);
    /// pH of the product in which it works and keeps.
    UsualPh "usual-ph" number("pH", 0.0, 14.0);
    /// Highest temperature of the batch at which it may be added.
    MaxAddTemperature "max-add-temperature" number("°C", 20.0, 200.0);
    /// Whether heat spoils it.
    HeatSensitive "heat-sensitive" Kind::Choice(&["no", "yes"]);
    /// Charge of its active part: opposite charges may precipitate.
    Charge "charge" Kind::Choice(&["non-ionic", "anionic", "cationic", "amphoteric"]);
    /// Mass per volume.
    Density "density" number("g/mL", 0.01, 20.0);
    /// Melting range.
    MeltingPoint "melting-point" number("°C", -150.0, 900.0);
    /// Refractive index at the sodium line.
    RefractiveIndex "refractive-index" number("", 1.3, 1.7);
    /// Heat needed to warm it.
    SpecificHeat "specific-heat" number("kJ/(kg K)", 0.5, 5.0);
    /// Boiling point at normal pressure.
    BoilingPoint "boiling-point" number("°C", -50.0, 600.0);
    /// Lowest temperature at which its vapour catches fire from a flame.
    FlashPoint "flash-point" number("°C", -60.0, 350.0);
    /// Least share of its vapour in air that burns on.
    LowerFlammableLimit "lower-flammable-limit" number("% by volume", 0.1, 30.0);
    /// Heat it takes up when it evaporates.
    HeatOfVaporization "heat-of-vaporization" number("kJ/kg", 50.0, 3000.0);
    /// Heat it takes up when it melts.
    HeatOfFusion "heat-of-fusion" number("kJ/kg", 20.0, 500.0);
    /// Relative permittivity (dielectric constant).
    Permittivity "permittivity" number("", 1.5, 200.0);
    /// Hansen solubility parameter of dispersion.
    HansenDispersion "hansen-dispersion" number("MPa^0.5", 10.0, 25.0);
    /// Hansen solubility parameter of dipoles.
    HansenPolar "hansen-polar" number("MPa^0.5", 0.0, 30.0);
    /// Hansen solubility parameter of hydrogen bonds.
    HansenHydrogen "hansen-hydrogen" number("MPa^0.5", 0.0, 45.0);
    /// Hydrophilic-lipophilic balance of an emulsifier.
    Hlb "hlb" number("", 0.0, 40.0);
    /// Hydrophilic-lipophilic balance an oil needs to become the inner phase of an oil-in-water emulsion.
    RequiredHlb "required-hlb" number("", 1.0, 20.0);
    /// Hydrophilic-lipophilic balance an oil needs to become the outer phase of a water-in-oil emulsion.
    RequiredHlbWaterInOil "required-hlb-water-in-oil" number("", 1.0, 20.0);
    /// Potassium hydroxide needed to saponify a gram.
    SaponificationValue "saponification-value" number("mg KOH/g", 0.0, 400.0);
    /// Iodine taken up by its double bonds.
    IodineValue "iodine-value" number("g I2/100 g", 0.0, 260.0);
    /// Mass of a mole.
    MolarMass "molar-mass" number("g/mol", 1.0, 10_000_000.0);
    /// Solubility in water.
    WaterSolubility "water-solubility" number("g/100 g water", 0.0, 1000.0);
    /// Logarithm of the octanol-water partition coefficient.
    LogKow "log-kow" number("", -10.0, 20.0);
    /// First acid dissociation constant.
    Pka1 "pka-1" number("", -5.0, 16.0);
    /// Second acid dissociation constant.
    Pka2 "pka-2" number("", -5.0, 16.0);
    /// Third acid dissociation constant.
    Pka3 "pka-3" number("", -5.0, 16.0);
    /// Fourth acid dissociation constant.
    Pka4 "pka-4" number("", -5.0, 16.0);
    /// Water it brings although it is named as one constituent: a juice, honey.
    WaterContent "water-content" number("%", 0.0, 100.0);
    /// Time an unopened package usually keeps, cool and dark.
    ShelfLife "shelf-life" number("months", 1.0, 120.0);
}

impl Property {
    /// The property behind a word of the data files.
    #[must_use]
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|property| property.slug() == slug)
    }

    /// Unit of its values, empty for a bare number and for words.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self.kind() {
            Kind::Number { unit, .. } => unit,
            Kind::Choice(_) => "",
        }
    }
}
