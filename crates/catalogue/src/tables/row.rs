//! The rows of the data files, as text: meaning is checked afterwards, so that a problem can name its line.

use serde::Deserialize;

pub const SOURCES: &str = "sources.csv";
pub const CONSTITUENTS: &str = "constituents.csv";
pub const FUNCTIONS: &str = "functions.csv";
pub const MATERIALS: &str = "materials.csv";
pub const COMPOSITES: &str = "composites.csv";
pub const PROPERTIES: &str = "properties.csv";
pub const IMPORTED: &str = "properties-imported.csv";
pub const FURTHER_NAMES: &str = "further-names.csv";
pub const NUMBERS: &str = "numbers.csv";

macro_rules! rows {
    ($($(#[$about:meta])* $name:ident { $($(#[$field_about:meta])* $field:ident,)* })*) => {$(
        $(#[$about])*
        #[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
        #[serde(deny_unknown_fields)]
        pub struct $name { $($(#[$field_about])* pub $field: String,)* }
    )*};
}

rows! {
    /// A row of `sources.csv`: the bibliography.
    SourceRow {
        /// Short name other files refer to.
        source,
        /// Citation, long enough to find it.
        citation,
        /// Year, or the day to which it was valid.
        as_of,
        /// What it is: law, standard, handbook, dataset, paper, practice.
        kind,
        /// Terms under which its figures may be used; one of [`super::vocabulary::LICENCES`].
        licence,
    }
    /// A row of `constituents.csv`.
    ConstituentRow {
        /// Stable number, never reused.
        number,
        /// INCI name.
        inci,
        /// CAS registry numbers, parted by ` / `.
        cas,
        /// Class, which also decides the layer of the jar.
        class,
        /// Molecular formula, where the substance has one.
        formula,
        /// Remark; must be there where a CAS number is shared.
        note,
        /// Source.
        source,
        /// Spot in the source.
        locator,
        /// Basis.
        basis,
    }
    /// A row of `functions.csv`.
    FunctionRow {
        /// Number of the constituent.
        constituent,
        /// Functions, parted by `;`.
        functions,
        /// Source.
        source,
        /// Spot in the source.
        locator,
        /// Basis.
        basis,
    }
    /// A row of `materials.csv`.
    MaterialRow {
        /// Stable number, never reused.
        number,
        /// Common name.
        name,
        /// Other names, parted by `;`.
        other_names,
        /// Class.
        class,
        /// Usual phase.
        phase,
        /// Number of the one constituent; empty for a composite.
        constituent,
        /// Source.
        source,
        /// Spot in the source.
        locator,
        /// Basis.
        basis,
    }
    /// A row of `further-names.csv`: what a material is called in another language or in a kitchen. Searched, not shown.
    FurtherNameRow {
        /// Number of the material.
        material,
        /// Language: `en`, `de`, `fr`.
        language,
        /// The names, parted by `;`.
        names,
        /// Source.
        source,
        /// Spot in the source.
        locator,
        /// Basis.
        basis,
    }
    /// A row of `composites.csv`.
    CompositeRow {
        /// Number of the composite material.
        material,
        /// Number of the material that goes in.
        part,
        /// Percent by mass, or `qs`.
        percent,
        /// Remark.
        note,
        /// Source.
        source,
        /// Spot in the source.
        locator,
        /// Basis.
        basis,
    }
    /// A row of `properties.csv` or `properties-imported.csv`.
    PropertyRow {
        /// `material` or `constituent`.
        subject,
        /// Its number.
        number,
        /// Property.
        property,
        /// Value, where one is stated.
        value,
        /// Lower end of the range, where one is stated.
        minimum,
        /// Upper end of the range, where one is stated.
        maximum,
        /// Unit, as declared for the property.
        unit,
        /// Temperature and the like.
        conditions,
        /// Remark.
        note,
        /// Source.
        source,
        /// Spot in the source.
        locator,
        /// Basis.
        basis,
    }
    /// A row of `numbers.csv`: a number once given out, and what it meant.
    NumberRow {
        /// `material` or `constituent`.
        kind,
        /// The number.
        number,
        /// Name of the material or INCI name of the constituent when the number was given out.
        name,
    }
}
