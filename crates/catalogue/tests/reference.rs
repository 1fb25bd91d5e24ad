//! The larger tables, decoded, against the files they were made from.

use rust_decimal::Decimal;
use stillroom_catalogue::reference::{
    acid_constants, acid_steps, cosolvent_solubilities, essential_oil_constituents, fragrance_allergens, ion_pairs,
    ionic_makeup, label_conditions, loaded_phrases, partitions, plant_waters, preservative_limits,
    preservative_practice, restrictions, us_names, water_solubilities,
};
use stillroom_catalogue::{Catalogue, MaterialSource};

/// Rows of a data file. No cell holds a line feed: the rules forbid it.
macro_rules! rows_in {
    ($file:literal) => {
        include_str!(concat!("../data/", $file)).lines().count() - 1
    };
}

#[test]
fn every_row_of_every_table_is_decoded() {
    assert_eq!(acid_constants().len(), rows_in!("acid-constants.csv"));
    assert_eq!(acid_steps().len(), rows_in!("acid-steps.csv"));
    assert_eq!(ion_pairs().len(), rows_in!("ion-pairs.csv"));
    assert_eq!(ionic_makeup().len(), rows_in!("ionic-makeup.csv"));
    assert_eq!(cosolvent_solubilities().len(), rows_in!("solubility-cosolvent.csv"));
    assert_eq!(essential_oil_constituents().len(), rows_in!("essential-oil-constituents.csv"));
    assert_eq!(fragrance_allergens().len(), rows_in!("fragrance-allergens.csv"));
    assert_eq!(us_names().len(), rows_in!("us-names.csv"));
    assert_eq!(label_conditions().len(), rows_in!("label-conditions.csv"));
    assert_eq!(loaded_phrases().len(), rows_in!("label-wording.csv"));
    assert_eq!(partitions().len(), rows_in!("partition.csv"));
    assert_eq!(plant_waters().len(), rows_in!("plants.csv"));
    assert_eq!(preservative_limits().len(), rows_in!("preservative-limits.csv"));
    assert_eq!(preservative_practice().len(), rows_in!("preservative-practice.csv"));
    assert_eq!(restrictions().len(), rows_in!("restricted.csv"));
    assert_eq!(water_solubilities().len(), rows_in!("solubility-water.csv"));
}

#[test]
fn a_row_holds_its_cells_and_its_source() {
    // Regulation (EC) No 1223/2009, Annex V, entry 29: phenoxyethanol, 1.0 %.
    let phenoxyethanol = preservative_limits().iter().find(|row| row.inci == "Phenoxyethanol").unwrap();
    assert_eq!(phenoxyethanol.entry, "29");
    assert_eq!(phenoxyethanol.leave_on_limit, Some(Decimal::ONE));
    assert_eq!(phenoxyethanol.jurisdiction, "EU");
    assert_eq!(phenoxyethanol.origin.source.slug, "eu-annex-v-2024");
    let constituent = Catalogue::get().constituent(phenoxyethanol.constituent.unwrap()).unwrap();
    assert_eq!(constituent.inci, "Phenoxyethanol");
    // USDA National Nutrient Database, NDB 11205.
    let cucumber = plant_waters().iter().find(|row| row.plant == "cucumber").unwrap();
    assert_eq!(cucumber.water.unwrap().to_string(), "95.23");
    assert!(cucumber.origin.locator.contains("11205"));
}

#[test]
fn a_limit_converted_to_the_substance_follows_from_the_molar_masses() {
    // limit × molar mass ÷ (molar mass it is expressed as × equivalents), within the rounding of the file (four
    // places).
    for row in preservative_limits() {
        let (Some(mass), Some(as_mass), Some(equivalents)) =
            (row.molar_mass, row.expressed_as_molar_mass, row.equivalents_per_mole)
        else {
            continue;
        };
        for (limit, converted) in [
            (row.leave_on_limit, row.leave_on_limit_as_substance),
            (row.rinse_off_limit, row.rinse_off_limit_as_substance),
        ] {
            let (Some(limit), Some(converted)) = (limit, converted) else { continue };
            let expected = limit * mass / (as_mass * equivalents);
            assert!((expected - converted).abs() <= Decimal::new(1, 3), "{}: {expected} or {converted}", row.inci);
        }
    }
}

#[test]
fn every_source_of_the_larger_tables_is_in_the_bibliography() {
    let known: Vec<_> = Catalogue::get().sources().collect();
    assert!(water_solubilities().iter().all(|row| known.contains(&row.origin.source)));
    assert!(restrictions().iter().all(|row| known.contains(&row.origin.source)));
}

#[cfg(feature = "tables")]
#[test]
fn the_columns_are_read_in_the_order_in_which_they_are_packed() {
    use stillroom_catalogue::reference::{
        AcidConstants, AcidSalt, AcidStep, CosolventSolubility, EssentialOilConstituent, FattyAcidOf,
        FragranceAllergen, ImportedSolubility, InhibitoryConcentration, IonPair, IonicMakeup, LabelCondition,
        LimitMember, LoadedPhrase, MicelleBinding, OilPartitionRow, Partition, PlantWater, PreservativeLimit,
        PreservativePractice, PreservativeSpectrum, Restriction, SubstituteRow, TraitOf, UsName, WaterSolubility,
    };
    let read = [
        WaterSolubility::COLUMNS,
        ImportedSolubility::COLUMNS,
        CosolventSolubility::COLUMNS,
        AcidConstants::COLUMNS,
        AcidStep::COLUMNS,
        IonPair::COLUMNS,
        IonicMakeup::COLUMNS,
        Partition::COLUMNS,
        PreservativeLimit::COLUMNS,
        PreservativePractice::COLUMNS,
        Restriction::COLUMNS,
        FragranceAllergen::COLUMNS,
        UsName::COLUMNS,
        LabelCondition::COLUMNS,
        LoadedPhrase::COLUMNS,
        TraitOf::COLUMNS,
        AcidSalt::COLUMNS,
        PreservativeSpectrum::COLUMNS,
        InhibitoryConcentration::COLUMNS,
        MicelleBinding::COLUMNS,
        OilPartitionRow::COLUMNS,
        SubstituteRow::COLUMNS,
        LimitMember::COLUMNS,
        EssentialOilConstituent::COLUMNS,
        FattyAcidOf::COLUMNS,
        PlantWater::COLUMNS,
    ];
    let packed: Vec<Vec<&str>> = stillroom_catalogue::tables::EXTRA_TABLES
        .iter()
        .map(|table| table.columns.iter().map(|(name, _)| *name).collect())
        .collect();
    assert_eq!(read.map(<[_]>::to_vec).to_vec(), packed);
}

#[test]
fn no_step_pair_or_makeup_is_dropped_on_its_way_to_the_equilibrium() {
    let acids = stillroom_catalogue::acids::acids();
    let steps: usize = acids.values().map(|acid| acid.steps().len()).sum();
    assert_eq!(steps, rows_in!("acid-steps.csv"));
    let pairs: usize = acids.values().map(|acid| acid.pairs().len()).sum();
    assert_eq!(pairs, rows_in!("ion-pairs.csv"));
    // Steps stand in order and each loses one charge.
    for (index, row) in acid_steps().iter().enumerate() {
        let first = acid_steps().iter().position(|other| other.name == row.name).unwrap();
        let step = Decimal::from(index - first + 1);
        assert_eq!(row.step, Some(step), "{}", row.name);
        assert_eq!(row.charge_acid_form.unwrap() + step - Decimal::ONE, acid_steps()[first].charge_acid_form.unwrap());
    }
    for row in ionic_makeup() {
        assert!(row.acid.is_empty() || acids.contains_key(row.acid), "{}: no acid `{}`", row.inci, row.acid);
        let constituent = Catalogue::get().constituent(row.constituent.unwrap()).unwrap();
        assert_eq!(constituent.inci, row.inci);
    }
}
