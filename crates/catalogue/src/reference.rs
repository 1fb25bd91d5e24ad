//! The larger tables: solubility, acids, partition, limits, allergens, plants.
//!
//! Each table is its own constant, decoded at the first call of its function. A page that does not call the function
//! does not carry the table.

use crate::catalogue::{Catalogue, Origin};
use crate::property::Basis;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde::Deserialize;
use std::sync::OnceLock;
use stillroom_core::chemistry::fat::{FatProfile, FattyAcid};
use stillroom_core::{ConstituentId, Makeup, MaterialId, MaterialSource};

/// What a column holds in a row.
macro_rules! cell {
    (text) => { &'static str };
    (number) => { Option<Decimal> };
    (constituent) => { Option<ConstituentId> };
}

/// What a column holds in the packed table: a number as its digits and how many of them stand after the point.
macro_rules! packed {
    (text) => { &'static str };
    (number) => { Option<(i64, u8)> };
    (constituent) => { Option<u32> };
}

/// From packed to cell.
macro_rules! unpack {
    (text $value:expr) => {
        $value
    };
    (number $value:expr) => {
        $value.and_then(|(digits, places)| Decimal::try_new(digits, u32::from(places)).ok())
    };
    (constituent $value:expr) => {
        $value.map(ConstituentId::Catalogue)
    };
}

macro_rules! tables {
    ($($(#[$about:meta])* $row:ident $function:ident $file:literal {
        $($(#[$column_about:meta])* $column:ident: $type:ident,)*
    })*) => {$(
        $(#[$about])*
        #[derive(Debug, Clone, PartialEq)]
        pub struct $row {
            $($(#[$column_about])* pub $column: cell!($type),)*
            /// Where it was found.
            pub origin: Origin,
        }

        impl $row {
            /// The columns, in the order in which they are packed.
            pub const COLUMNS: &'static [&'static str] = &[$(stringify!($column),)*];
        }

        $(#[$about])*
        ///
        /// Every row of the table, decoded at the first call.
        #[must_use]
        pub fn $function() -> &'static [$row] {
            // In the order of the columns in the data file.
            #[derive(Default, Deserialize)]
            #[serde(bound(deserialize = "'de: 'static"))]
            struct Columns {
                $($column: Vec<packed!($type)>,)*
                sources: Vec<u16>,
                locators: Vec<&'static str>,
                bases: Vec<Basis>,
            }
            static ROWS: OnceLock<Vec<$row>> = OnceLock::new();
            ROWS.get_or_init(|| {
                let packed: &'static [u8] = include_bytes!(concat!(env!("OUT_DIR"), "/", $file, ".postcard"));
                // The build packed what is decoded here; a test decodes every table.
                let columns: Columns = postcard::from_bytes(packed).unwrap_or_default();
                $(let mut $column = columns.$column.into_iter();)*
                let origins = columns.sources.into_iter().zip(columns.locators).zip(columns.bases);
                let catalogue = Catalogue::get();
                origins
                    .map_while(|((source, locator), basis)| {
                        let source = catalogue.source(source)?;
                        Some($row {
                            $($column: unpack!($type $column.next()?),)*
                            origin: Origin { source, locator, basis },
                        })
                    })
                    .collect()
            })
        }
    )*};
}

tables! {
    /// Solubility of a substance in water at a temperature.
    WaterSolubility water_solubilities "solubility-water.csv" {
        /// The constituent, where the catalogue has it.
        constituent: constituent,
        /// INCI name, or the substance's own where it has none.
        inci: text,
        /// Chemical name.
        name: text,
        /// CAS registry number.
        cas: text,
        /// Molar mass in g/mol.
        molar_mass: number,
        /// Temperature in °C.
        temperature: number,
        /// Grams per 100 g of water.
        grams_per_100_g_water: number,
        /// By which factor an estimate may be off either way; none for a measured figure.
        factor: number,
        /// Said in words where there is no figure: `miscible`.
        described: text,
        /// Remark.
        note: text,
    }
    /// Solubility in water that the import took from a dataset, of substances with no other figure. Read for the card and
    /// as evidence; the findings compute with [`water_solubilities`].
    ImportedSolubility imported_solubilities "solubility-imported.csv" {
        /// The constituent, where the catalogue has it.
        constituent: constituent,
        /// INCI name, or the substance's own where it has none.
        inci: text,
        /// Chemical name.
        name: text,
        /// CAS registry number.
        cas: text,
        /// Molar mass in g/mol.
        molar_mass: number,
        /// Temperature in °C.
        temperature: number,
        /// Grams per 100 g of water.
        grams_per_100_g_water: number,
        /// Said in words where there is no figure: `miscible`.
        described: text,
        /// Remark.
        note: text,
    }
    /// Solubility of a substance in other solvents and mixtures, and the constants of log-linear cosolvency.
    CosolventSolubility cosolvent_solubilities "solubility-cosolvent.csv" {
        /// The constituent, where the catalogue has it.
        constituent: constituent,
        /// What the row holds: `solubility` or a kind of constant.
        record: text,
        /// INCI name.
        inci: text,
        /// Chemical name.
        name: text,
        /// The other solvent.
        cosolvent: text,
        /// Percent of it in water, where it is a mixture with water.
        cosolvent_percent: number,
        /// Temperature in °C.
        temperature: number,
        /// The figure.
        value: number,
        /// Its unit.
        unit: text,
        /// Said in words where there is no figure.
        described: text,
        /// Remark.
        note: text,
    }
    /// Dissociation constants of an acid or base. A substance may have several rows, for different conditions.
    AcidConstants acid_constants "acid-constants.csv" {
        /// The constituent, where the catalogue has it.
        constituent: constituent,
        /// INCI name.
        inci: text,
        /// Chemical name.
        name: text,
        /// CAS registry number.
        cas: text,
        /// Molar mass in g/mol.
        molar_mass: number,
        /// Charge with every proton on.
        charge_fully_protonated: number,
        /// First constant.
        pka_1: number,
        /// Second constant.
        pka_2: number,
        /// Third constant.
        pka_3: number,
        /// Fourth constant.
        pka_4: number,
        /// Said in words where a constant is none: `strong`, `none`.
        described: text,
        /// Temperature in °C.
        temperature: number,
        /// What it is used for.
        role: text,
        /// Remark.
        note: text,
    }
    /// A step of an acid, base or ampholyte at zero ionic strength and 25 °C, with what moves it with temperature.
    AcidStep acid_steps "acid-steps.csv" {
        /// The constituent, where the catalogue has it.
        constituent: constituent,
        /// INCI name.
        inci: text,
        /// Chemical name of the whole substance.
        name: text,
        /// Molar mass in g/mol: of the free acid or base, or of one unit of a polymer.
        molar_mass: number,
        /// Which step, from 1.
        step: number,
        /// Charge of the form that loses the proton.
        charge_acid_form: number,
        /// pKa at 25 °C.
        pka: number,
        /// Enthalpy of losing the proton in kJ/mol.
        enthalpy: number,
        /// Heat capacity of losing the proton in J/(mol K).
        heat_capacity: number,
        /// Temperatures the source vouches for, in °C.
        valid: text,
        /// Ionic strength the constant holds for.
        medium: text,
        /// Where the enthalpy was found.
        enthalpy_source: text,
        /// Basis of the enthalpy.
        enthalpy_basis: text,
        /// Remark.
        note: text,
    }
    /// An ion pair of a cation with a form of an acid, at zero ionic strength and 25 °C.
    IonPair ion_pairs "ion-pairs.csv" {
        /// Chemical name of the acid, as among its steps.
        name: text,
        /// Symbol of the cation.
        cation: text,
        /// How many of it.
        cations: number,
        /// Protons the form has lost.
        lost: number,
        /// log10 of the constant of making the pair.
        log_k: number,
        /// Enthalpy of making the pair in kJ/mol.
        enthalpy: number,
        /// The reaction.
        reaction: text,
        /// Remark.
        note: text,
    }
    /// What a mole of a constituent brings to an acid-base equilibrium.
    IonicMakeup ionic_makeup "ionic-makeup.csv" {
        /// The constituent, where the catalogue has it.
        constituent: constituent,
        /// INCI name.
        inci: text,
        /// Molar mass in g/mol.
        molar_mass: number,
        /// Chemical name of the acid, as among its steps; empty for none.
        acid: text,
        /// Moles of the acid.
        acids: number,
        /// Moles of sodium.
        sodium: number,
        /// Moles of potassium.
        potassium: number,
        /// Moles of magnesium.
        magnesium: number,
        /// Moles of calcium.
        calcium: number,
        /// Moles of zinc.
        zinc: number,
        /// Moles of anions of charge -1 that take no proton, as chloride.
        anions: number,
        /// Remark.
        note: text,
    }
    /// Partition of a substance between two phases.
    Partition partitions "partition.csv" {
        /// The constituent, where the catalogue has it.
        constituent: constituent,
        /// What the row holds: `logKow`, a coefficient, a worked example.
        record: text,
        /// INCI name.
        inci: text,
        /// Chemical name.
        name: text,
        /// CAS registry number.
        cas: text,
        /// The two phases.
        phases: text,
        /// Temperature in °C.
        temperature: number,
        /// The figure.
        value: number,
        /// What the figure is.
        quantity: text,
        /// Said in words where there is no figure.
        described: text,
        /// Remark.
        note: text,
    }
    /// Legal limit of a preservative. No figure means that the law names none, not that any amount is allowed.
    PreservativeLimit preservative_limits "preservative-limits.csv" {
        /// The constituent, where the catalogue has it.
        constituent: constituent,
        /// INCI name.
        inci: text,
        /// CAS registry number.
        cas: text,
        /// Whose law.
        jurisdiction: text,
        /// The state of the law that was read.
        as_of: text,
        /// `annex_v`, `prohibited`, `not_annexed` or `not_a_preservative`.
        status: text,
        /// Entry in the law.
        entry: text,
        /// Molar mass in g/mol.
        molar_mass: number,
        /// What the limit is expressed as.
        expressed_as: text,
        /// Molar mass of that, in g/mol.
        expressed_as_molar_mass: number,
        /// Moles of that in a mole of the substance.
        equivalents_per_mole: number,
        /// Limit in percent in products that stay on; 0 where it is not allowed.
        leave_on_limit: number,
        /// Limit in percent in products that are rinsed off; 0 where it is not allowed.
        rinse_off_limit: number,
        /// The leave-on limit converted to this substance.
        leave_on_limit_as_substance: number,
        /// The rinse-off limit converted to this substance.
        rinse_off_limit_as_substance: number,
        /// Conditions and warnings.
        conditions: text,
    }
    /// How a preservative is usually used.
    PreservativePractice preservative_practice "preservative-practice.csv" {
        /// The constituent, where the catalogue has it.
        constituent: constituent,
        /// INCI name.
        inci: text,
        /// Lower end of the usual percent.
        usual_percent_minimum: number,
        /// Upper end of the usual percent.
        usual_percent_maximum: number,
        /// Lower end of the pH window.
        ph_minimum: number,
        /// Upper end of the pH window.
        ph_maximum: number,
        /// Acid dissociation constant of the active form.
        pka: number,
        /// Highest temperature in °C at which to add it.
        max_add_temperature: number,
        /// Which form is active.
        active_form: text,
        /// What it does not go with.
        incompatible_with: text,
        /// What it acts on.
        spectrum: text,
    }
    /// A substance whose use is restricted, or advised to be.
    Restriction restrictions "restricted.csv" {
        /// The constituent, where the catalogue has it and the row is about it alone.
        constituent: constituent,
        /// Substance or group, with the use it is about.
        subject: text,
        /// What the rows of one entry share that differ by the kind of product.
        group: text,
        /// Kinds of product it is for, parted by `;`; empty for all, or for all that no other row of the group names.
        kinds: text,
        /// Names on a label that count, parted by `;`, of what the catalogue does not have.
        named: text,
        /// Whose law or guidance.
        jurisdiction: text,
        /// The state that was read.
        as_of: text,
        /// The day from which it applies, where that lies ahead.
        from: text,
        /// Entry in the law.
        entry: text,
        /// Limit in percent in products that stay on.
        leave_on_limit: number,
        /// Limit in percent in products that are rinsed off.
        rinse_off_limit: number,
        /// pH below which it may not be used.
        least_ph: number,
        /// Conditions and warnings.
        conditions: text,
    }
    /// A fragrance substance that must be named on the label above a threshold.
    FragranceAllergen fragrance_allergens "fragrance-allergens.csv" {
        /// The constituent, where the catalogue has it.
        constituent: constituent,
        /// Name on the label.
        name: text,
        /// CAS registry numbers.
        cas: text,
        /// Whose law.
        jurisdiction: text,
        /// The state of the law that was read.
        as_of: text,
        /// Threshold in percent in products that stay on.
        leave_on_threshold: number,
        /// Threshold in percent in products that are rinsed off.
        rinse_off_threshold: number,
        /// Which list brought it in.
        listed_by: text,
        /// Entry in the law.
        entry: text,
        /// Substances named together under this name.
        grouped_members: text,
        /// Limits and conditions beside the label.
        conditions: text,
    }
    /// What an ingredient is called on a label in the United States, where that is not its name elsewhere.
    UsName us_names "us-names.csv" {
        /// The constituent.
        constituent: constituent,
        /// Its INCI name.
        inci: text,
        /// Its name there.
        name: text,
    }
    /// A sentence that the law asks of a label for the sake of a substance.
    LabelCondition label_conditions "label-conditions.csv" {
        /// The substance.
        constituent: constituent,
        /// Its INCI name.
        inci: text,
        /// The sentence, by its code.
        statement: text,
        /// Kinds of product it is asked of, parted by `;`; empty for all.
        only_kinds: text,
        /// Kinds of product it is not asked of, likewise.
        not_kinds: text,
        /// `leave-on` or `rinse-off` where it is asked of one of them only.
        used: text,
        /// Percent of the substance above which it is asked; empty for any.
        above: number,
        /// `dry` where it is asked of what has no water.
        form: text,
        /// `yes` where the United Kingdom kept it.
        also_uk: text,
        /// Entry in the law.
        entry: text,
    }
    /// A word that makes of a cosmetic something else in the eyes of the law, or promises what has to be shown.
    LoadedPhrase loaded_phrases "label-wording.csv" {
        /// The phrase, in small letters; a star stands for whatever goes on or leads up to it.
        phrase: text,
        /// Its language.
        language: text,
        /// `medicine`, `function`, `biocide`, `sun` or `claim`.
        kind: text,
        /// Where it claims nothing: `caution`, as who warns of a wound does; `notes`, as who cleans tools does. Several have a
        /// space between them.
        silent_in: text,
    }
    /// Something about a substance that checks ask for.
    TraitOf traits "traits.csv" {
        /// The constituent.
        constituent: constituent,
        /// Its INCI name.
        inci: text,
        /// The trait, by its word.
        word: text,
        /// Remark.
        note: text,
    }
    /// Which acid a salt is of.
    AcidSalt acid_salts "acid-salts.csv" {
        /// The salt.
        constituent: constituent,
        /// Its INCI name.
        inci: text,
        /// The acid.
        acid: constituent,
        /// Its INCI name.
        acid_inci: text,
        /// Moles of acid in a mole of the salt.
        equivalents: number,
    }
    /// What a preservative acts on, in words from `none` to `good`.
    PreservativeSpectrum preservative_spectra "preservative-spectrum.csv" {
        /// The constituent.
        constituent: constituent,
        /// Its INCI name.
        inci: text,
        /// `carrier` or `booster`.
        role: text,
        /// Gram-positive bacteria.
        gram_positive: text,
        /// Gram-negative bacteria.
        gram_negative: text,
        /// Yeasts.
        yeast: text,
        /// Moulds.
        mould: text,
    }
    /// Minimum inhibitory concentration of a preservative.
    InhibitoryConcentration inhibitory_concentrations "mic.csv" {
        /// The preservative; of salts the acid.
        constituent: constituent,
        /// Its INCI name.
        inci: text,
        /// The organism.
        organism: text,
        /// `gram-positive`, `gram-negative`, `yeast` or `mould`.
        group: text,
        /// Percent of the acting form: of an acid undissociated.
        acting_percent: number,
        /// Remark.
        note: text,
    }
    /// What micelles of an ethoxylate hold of a preservative.
    MicelleBinding micelle_bindings "micelle-binding.csv" {
        /// The preservative.
        constituent: constituent,
        /// Its INCI name.
        inci: text,
        /// The ethoxylate.
        surfactant: text,
        /// Total over free in water is one and this times the percent of surfactant.
        k_per_percent: number,
        /// Remark.
        note: text,
    }
    /// Partition of a preservative between an oil and water.
    OilPartitionRow oil_partitions "oil-partition.csv" {
        /// The preservative.
        constituent: constituent,
        /// Its INCI name.
        inci: text,
        /// The oil.
        oil: text,
        /// `triglyceride`, `ester`, `hydrocarbon` or `silicone`.
        oil_class: text,
        /// Concentration in oil over that in water.
        coefficient: number,
        /// Remark.
        note: text,
    }
    /// Materials that do the same job, a group at a time.
    SubstituteRow substitute_rows "substitutes.csv" {
        /// What they share, as a word.
        group: text,
        /// Number of the material.
        material: number,
        /// Its name.
        name: text,
        /// How much of the job a gram does, beside the others of its group.
        strength: number,
        /// How it feels, as a word; empty where that says nothing.
        feel: text,
        /// What is different about it.
        note: text,
    }
    /// Which substances count towards a limit of [`restrictions`], with the factor to what it is expressed as.
    LimitMember limit_members "limit-members.csv" {
        /// Subject of the restriction.
        subject: text,
        /// The constituent that counts.
        constituent: constituent,
        /// Its INCI name.
        inci: text,
        /// A substance inside essential oils that counts, instead of a constituent.
        inside: text,
        /// What a percent of it makes in what the limit is expressed as.
        factor: number,
        /// Remark.
        note: text,
    }
    /// What an essential oil or absolute contains.
    EssentialOilConstituent essential_oil_constituents "essential-oil-constituents.csv" {
        /// The oil as a constituent of the catalogue.
        constituent: constituent,
        /// INCI name of the oil.
        oil: text,
        /// Common name of the oil.
        name: text,
        /// Label name of the oil itself, where it is a listed allergen.
        label_name_of_the_oil: text,
        /// Substance inside.
        inside: text,
        /// Its CAS registry number.
        cas: text,
        /// Lower end of its percent.
        minimum: number,
        /// Typical percent.
        typical: number,
        /// Upper end of its percent.
        maximum: number,
        /// Its label name, where it is a listed allergen.
        allergen: text,
    }
    /// A fatty acid of a fat or oil.
    FattyAcidOf fatty_acids "fatty-acids.csv" {
        /// The fat.
        constituent: constituent,
        /// Its INCI name.
        inci: text,
        /// Number of the material where the constituent is sold in several kinds: high-oleic sunflower oil.
        material: number,
        /// The acid by carbons and double bonds, as `18:1`.
        acid: text,
        /// Grams in 100 g, of the fat or of its fatty acids: only the shares of the sum count.
        grams_per_100_g: number,
        /// Remark.
        note: text,
    }
    /// Water in a plant part.
    PlantWater plant_waters "plants.csv" {
        /// Plant.
        plant: text,
        /// Part.
        part: text,
        /// Fresh or dried.
        state: text,
        /// Percent of water by mass.
        water: number,
        /// Range, or a remark that the figure is a limit.
        range_or_limit: text,
    }
}

/// The fatty acids of a material, where they are known: of the material itself if it is sold in several kinds, else of its
/// constituent; with the weakest basis of the figures. `None` for what is no fat of which they are known.
///
/// ```
/// use stillroom_catalogue::reference::fat_profile;
/// use stillroom_core::MaterialId;
/// use stillroom_core::chemistry::fat::OxidationClass;
/// let (linseed, _) = fat_profile(MaterialId::Catalogue(178)).expect("linseed oil");
/// assert_eq!(linseed.oxidation_class(), OxidationClass::VeryFast);
/// assert!(fat_profile(MaterialId::Catalogue(1)).is_none());
/// ```
#[must_use]
pub fn fat_profile(material: MaterialId) -> Option<(FatProfile, Basis)> {
    let MaterialId::Catalogue(number) = material else { return None };
    let Makeup::Simple(constituent) = Catalogue::get().material(material)?.makeup else { return None };
    let of = |kind: Option<Decimal>| {
        fatty_acids().iter().filter(move |row| row.constituent == Some(constituent) && row.material == kind)
    };
    let own = Some(Decimal::from(number));
    let rows: Vec<&FattyAcidOf> = if of(own).next().is_some() { of(own).collect() } else { of(None).collect() };
    let basis = rows.iter().map(|row| row.origin.basis).max()?;
    let masses: Vec<(FattyAcid, f64)> =
        rows.iter().filter_map(|row| Some((FattyAcid::parse(row.acid)?, row.grams_per_100_g?.to_f64()?))).collect();
    Some((FatProfile::new(&masses).ok()?, basis))
}
